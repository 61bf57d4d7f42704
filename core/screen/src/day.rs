//! The card of the day: bites, fish, waits, places, and what to try next. It can be shared as text.

use super::date::session_day_words;
use super::figures::{sentence_case, whole, whole_reached};
use super::fish::of_a_fish;
use super::leave_words::{habit_of_the_day_words, leave_words};
use super::match_day::{TotalFrom, total};
use super::place::spot_words;
use super::plan::plan_words;
use super::seen::beside_words;
use super::{Arg, ChangesView, KeyTap, Leaf, LeafKey, LeafLine, LeavesView, VerdictTone, WaitsView, Wording};
use restwater_log::FishWeight;
use restwater_match_day::rules::same_name;
use restwater_session::own_count::{entered, own_count};
use restwater_session::{
    CaughtFish, HabitBeforeBites, Session, casts_ended, catch, habit_before_bites, waits_of,
};
use restwater_waits::{Advice, AdviceState, Wait};

/// What the card is made from.
pub struct DayInput<'a> {
    /// The session, if any was begun.
    pub session: Option<&'a Session>,
    /// What the waits of all its casts say.
    pub waits: &'a WaitsView,
    /// Its changes.
    pub changes: &'a ChangesView,
    /// How long to leave a cast, as the Bank shows it; `None` before the first cast.
    pub advice: Option<Advice>,
    /// The sentences.
    pub words: &'a Wording,
}

/// Makes the card.
pub fn day(input: &DayInput) -> LeavesView {
    let words = input.words;
    let mut leaf = Leaf::new(words, "day", "card");
    let Some(session) = input.session else {
        leaf.says = words.say("day-none");
        leaf.keys = vec![LeafKey::start(words)];
        return LeavesView { leaves: vec![leaf] };
    };
    let card = Card { words, session, waits: waits_of(session), habit: habit_before_bites(session) };
    leaf.title = card.title();
    leaf.says = card.says();
    leaf.lines.extend(card.fish());
    leaf.lines.extend(card.weight());
    let next = card.next(input);
    leaf.lines.push(LeafLine { detail: card.wait(input.waits, &next), ..card.heading("day-wait") });
    leaf.lines.extend(card.place());
    leaf.lines.extend(card.beside());
    leaf.lines.extend(card.plan());
    leaf.lines.push(LeafLine { detail: next, ..card.heading("day-next") });
    let share = LeafKey::new("share-", words.say("day-share"), KeyTap::Share { text: text(words, &leaf) });
    leaf.keys.push(LeafKey { sub: words.say("day-share-sub"), solid: true, ..share });
    LeavesView { leaves: vec![leaf] }
}

/// The card as lines of text.
fn text(words: &Wording, leaf: &Leaf) -> String {
    let line = |line: &LeafLine| {
        let after = if line.detail.is_empty() { &line.value } else { &line.detail };
        words.labelled(&line.label, after)
    };
    let head = [leaf.title.clone(), leaf.says.clone()];
    head.into_iter().chain(leaf.lines.iter().map(line)).collect::<Vec<_>>().join("\n")
}

struct Card<'a> {
    words: &'a Wording,
    session: &'a Session,
    waits: Vec<Wait>,
    habit: Option<HabitBeforeBites>,
}

impl Card<'_> {
    /// "17 Jan 2026, Alder Pool, Peg 14".
    fn title(&self) -> String {
        session_day_words(self.words, self.session)
    }

    fn heading(&self, id: &str) -> LeafLine {
        LeafLine { heads: true, ..LeafLine::new(self.words.say(id), String::new()) }
    }

    fn bites(&self) -> usize {
        self.waits.iter().filter(|wait| wait.is_bite()).count()
    }

    /// "9 bites in 15 casts, 1 still out, 7 fish landed."
    fn says(&self) -> String {
        let out = self.session.casts.iter().filter(|cast| cast.wait_end().is_none()).count();
        let args = [
            ("bites", Arg::Count(self.bites())),
            ("casts", Arg::Count(casts_ended(self.session))),
            ("out", Arg::Count(out)),
            ("landed", Arg::Count(catch(self.session).len())),
        ];
        self.words.say_with("day-says", &args)
    }

    /// The fish by class, and the best of them.
    fn fish(&self) -> Option<LeafLine> {
        let words = self.words;
        let caught = catch(self.session);
        let mut classes: Vec<(&str, usize)> = Vec::new();
        for name in caught.iter().filter_map(|fish| fish.class.as_deref()) {
            match classes.iter_mut().find(|(known, _)| same_name(known, name)) {
                Some((_, count)) => *count += 1,
                None => classes.push((name, 1)),
            }
        }
        let class = |(name, count): (&str, usize)| {
            words.say_with("day-class", &[("name", Arg::Text(name)), ("count", Arg::Count(count))])
        };
        let named: usize = classes.iter().map(|(_, count)| count).sum();
        let rest = Some(caught.len() - named).filter(|rest| *rest > 0 && named > 0);
        let rest = rest.map(|rest| words.say_with("day-class-none", &[("count", Arg::Count(rest))]));
        let best = best(&caught).and_then(|weight| of_a_fish(words, weight));
        let best = best.map(|weight| words.say_with("day-best", &[("weight", Arg::Text(&weight))]));
        let classes: Vec<String> = classes.into_iter().map(class).chain(rest).collect();
        let all =
            [Some(words.listed(&classes)).filter(|classes| !classes.is_empty()), best].into_iter().flatten();
        // The best of all fish, not of those that were named last.
        let all = words.apart(&all.collect::<Vec<_>>());
        (!all.is_empty()).then(|| LeafLine { detail: all, ..self.heading("day-fish") })
    }

    /// What a match was fished to: what the scales showed, the own count of what they have not.
    fn weight(&self) -> Option<LeafLine> {
        let setup = &self.session.match_day.as_ref()?.setup;
        let own = own_count(setup, &catch(self.session)).ok()?;
        let (from, weight) = total(self.words, self.session, setup, &own)?;
        let id = match from {
            TotalFrom::OwnCount => "day-weight-own",
            TotalFrom::Both => "day-weight-both",
            TotalFrom::Scales => "day-weight-scales",
        };
        let weight = self.words.say_with(id, &[("weight", Arg::Text(&weight))]);
        let unknown = Some(own.unknown).filter(|count| *count > 0 && from == TotalFrom::OwnCount);
        let count = |count: u32| [("count", Arg::Count(count as usize))];
        let unknown = unknown.map(|unknown| self.words.say_with("match-unknown", &count(unknown)));
        let detail = self.words.sentences(&[&weight, unknown.as_deref().unwrap_or_default()]);
        Some(LeafLine { detail, ..self.heading("day-weight") })
    }

    /// What the waits show: the habit if there is enough evidence, otherwise the verdict of the Waits screen, unless it is what `next`
    /// says too.
    fn wait(&self, waits: &WaitsView, next: &str) -> String {
        if let Some(habit) = self.habit {
            return habit_of_the_day_words(self.words, habit);
        }
        let Some(chart) = waits.charts.first() else { return waits.counts.clone() };
        let says = Some(chart.says.as_str()).filter(|says| *says != next);
        let said: Vec<&str> = says.into_iter().chain(chart.notes.first().map(String::as_str)).collect();
        self.words.sentences(&said)
    }

    /// The spot with most of the bites, if that is more than its share of the casts.
    fn place(&self) -> Option<LeafLine> {
        let mut places: Vec<(String, usize, usize)> = Vec::new();
        let casts = || self.session.casts.iter().filter(|cast| cast.end.is_some() || cast.bite.is_some());
        for cast in casts() {
            let Some(spot) = &cast.spot else { continue };
            let spot = spot_words(self.words, self.session, Some(spot));
            let bite = usize::from(cast.bite.is_some());
            match places.iter_mut().find(|(known, ..)| *known == spot) {
                Some((_, bites, casts)) => (*bites, *casts) = (*bites + bite, *casts + 1),
                None => places.push((spot, bite, 1)),
            }
        }
        // If several spots have equally many, the first of them.
        let (spot, bites, here) =
            places.into_iter().reduce(|best, other| if other.1 > best.1 { other } else { best })?;
        let (all, made) = (casts().filter(|cast| cast.bite.is_some()).count(), casts().count());
        if bites * made <= here * all {
            return None;
        }
        let args = [
            ("spot", Arg::Text(&spot)),
            ("bites", Arg::Count(bites)),
            ("all", Arg::Count(all)),
            ("casts", Arg::Count(here)),
            ("made", Arg::Count(made)),
        ];
        Some(LeafLine { detail: self.words.say_with("day-place-most", &args), ..self.heading("day-place") })
    }

    /// The angler's fish compared with the neighbours': the verdict and its evidence.
    fn beside(&self) -> Option<LeafLine> {
        let says = beside_words(self.words, self.session, self.session.ended.as_ref()?);
        (!says.is_empty())
            .then(|| LeafLine { detail: says[..2.min(says.len())].join(" "), ..self.heading("day-beside") })
    }

    /// The plan compared with what happened, a sentence for each line.
    fn plan(&self) -> Option<LeafLine> {
        let lines: Vec<String> =
            plan_words(self.words, self.session).iter().map(|line| sentence_case(line)).collect();
        (!lines.is_empty()).then(|| LeafLine { detail: lines.join(" "), ..self.heading("day-plan") })
    }

    /// The one thing from which the angler would learn most. How long to leave a cast is worded as on the Bank, also on a day
    /// without a bite: what earlier sessions say of it is on the card, and this must not contradict it.
    fn next(&self, input: &DayInput) -> String {
        let words = self.words;
        let longest = self.waits.iter().map(|wait| wait.minutes()).fold(0.0, f64::max);
        if self.waits.is_empty() {
            return words.say("day-next-cast");
        }
        if self.bites() == 0 {
            let reached = whole_reached(longest);
            let minutes = [("minutes", Arg::Text(&reached))];
            let known = input.advice.filter(|advice| advice.state != AdviceState::CantTellYet);
            return known.map_or_else(
                || words.say_with("day-next-none", &minutes),
                |advice| {
                    let elsewhere = words.say_with("day-next-elsewhere", &minutes);
                    words.sentences(&[&elsewhere, &leave_words(words, &advice)])
                },
            );
        }
        let leave = input.advice.map(|advice| leave_words(words, &advice));
        if let (Some(_), Some(leave)) = (self.habit, &leave) {
            return leave.clone();
        }
        let mut open = input.changes.changes.iter().filter(|change| change.tone == VerdictTone::Unknown);
        let test = open.find(|change| !change.find_out.is_empty()).map(|change| change.find_out.clone());
        test.or(leave)
            .unwrap_or_else(|| words.say_with("day-next-past", &[("minutes", Arg::Text(&whole(longest)))]))
    }
}

/// The heaviest fish with a weight.
fn best(caught: &[CaughtFish]) -> Option<&FishWeight> {
    let grams = |weight: &FishWeight| match weight {
        FishWeight::Weighed { unit, count } | FishWeight::Guessed { unit, count } => {
            Some(entered(*unit, *count).grams())
        }
        FishWeight::Class { .. } => None,
    };
    let known = caught.iter().filter_map(|fish| fish.weight.as_ref()).filter_map(|w| Some((w, grams(w)?)));
    known.reduce(|best, other| if other.1 > best.1 { other } else { best }).map(|(weight, _)| weight)
}
