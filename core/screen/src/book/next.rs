//! What to do next time: what the record supports, and what it can't tell.

use super::{Day, SetFilter};
use crate::date::day_words;
use crate::figures::{sentence_case, whole, whole_bound};
use crate::leave_words::leave_words;
use crate::{Arg, ChangesView, Leaf, LeafLine, Temperature, TypedInto, VerdictTone, Wording};
use restwater_bench::ladder::Rung;
use restwater_compare::sets::set_rates;
use restwater_session::Summary;
use restwater_waits::{Advice, AdviceState};

/// The input of this page.
pub struct NextInput<'a> {
    /// The session it is based on; `None` before the first.
    pub day: Option<&'a Summary>,
    /// The sessions on its water, itself among them, newest first.
    pub like: &'a [Day<'a>],
    /// The advice on leaving a cast.
    pub advice: Option<Advice>,
    /// How many earlier sessions the advice uses.
    pub earlier: usize,
    /// How many of these are another angler's.
    pub of_another: usize,
    /// The changes of that session.
    pub changes: &'a ChangesView,
    /// Heights tried on that water.
    pub rungs: &'a [Rung],
}

pub(super) fn next(words: &Wording, input: &NextInput) -> Leaf {
    let mut leaf = Leaf::new(words, "book", "next");
    let Some(day) = input.day else {
        leaf.says = words.say("next-none");
        return leaf;
    };
    let after = day_words(words, day);
    let says = words.say_with("next-says", &[("day", Arg::Text(&after))]);
    leaf.says = words.sentences(&[&says, &words.say("next-how")]);
    leaf.typing = Some(super::typing(words, "plan", TypedInto::Plan));
    if let Some(plan) = &day.next_time {
        leaf.lines.push(LeafLine::new(words.say("next-own"), plan.clone()));
    }
    let mut plan = Plan { words, supports: Vec::new(), cannot: Vec::new() };
    plan.leave(input);
    plan.changes(input.changes);
    plan.heights(input.rungs);
    plan.water(input.like);
    plan.cold(input.like);
    if plan.supports.is_empty() {
        plan.supports.push((words.say("next-nothing"), String::new()));
    }
    leaf.lines.push(LeafLine::heading(words.say("next-supports")));
    leaf.lines.extend(plan.supports.into_iter().map(line));
    leaf.lines.push(LeafLine::heading(words.say("next-cannot")));
    leaf.lines.extend(plan.cannot.into_iter().map(line));
    leaf
}

/// A sentence with its reason below it.
fn line((text, why): (String, String)) -> LeafLine {
    LeafLine { detail: why, ..LeafLine::new(sentence_case(&text), String::new()) }
}

/// What the record says of the time for which casts were left: "10 to 16 min is near-best so far".
fn best_of_the_tried(words: &Wording, advice: &Advice) -> Option<String> {
    let longest = whole(advice.longest_wait_min);
    if advice.state == AdviceState::LengthHardlyMatters {
        return Some(words.say_with("next-hardly", &[("longest", Arg::Text(&longest))]));
    }
    let middle = advice.best_min.filter(|_| advice.is_early).or(advice.hold_until_min)?;
    let hold = whole(middle.min(advice.longest_wait_min));
    let recast = advice.recast_by_min.map(|recast| whole(recast.min(advice.longest_wait_min)));
    Some(match recast.filter(|recast| *recast != hold && !advice.is_early) {
        Some(recast) => {
            words.say_with("next-near-best", &[("hold", Arg::Text(&hold)), ("recast", Arg::Text(&recast))])
        }
        None => words.say_with("next-about-best", &[("hold", Arg::Text(&hold))]),
    })
}

struct Plan<'a> {
    words: &'a Wording,
    supports: Vec<(String, String)>,
    cannot: Vec<(String, String)>,
}

impl Plan<'_> {
    fn leave(&mut self, input: &NextInput) {
        let words = self.words;
        let Some(advice) = input.advice else { return };
        let counts = words.say_with(
            "next-leave-why",
            &[
                ("bites", Arg::Count(advice.bites)),
                ("casts", Arg::Count(input.day.map_or(advice.casts, |day| day.made as usize))),
                ("earlier", Arg::Count(input.earlier)),
            ],
        );
        let counts = match input.of_another {
            0 => counts,
            count => {
                words.sentences(&[&counts, &words.say_with("whose-counted", &[("count", Arg::Count(count))])])
            }
        };
        match advice.state {
            AdviceState::CantTellYet => self.cannot.push((words.say("next-cant-leave"), counts)),
            // What was never tried is not supported by the record, however likely it is.
            _ if advice.asks_for_longer => {
                let leave = leave_words(words, &advice);
                let why = words.say("next-longer-why");
                self.cannot.push((words.say_with("next-try-leave", &[("leave", Arg::Text(&leave))]), why));
                self.supports.extend(best_of_the_tried(words, &advice).map(|text| (text, counts)));
            }
            _ => self.supports.push((leave_words(words, &advice), counts)),
        }
        if advice.asks_for_longer {
            let longest = whole_bound(advice.longest_wait_min);
            let text = words.say_with("next-longer", &[("minutes", Arg::Text(&longest))]);
            self.cannot.push((text, words.say("next-longer-why")));
        }
    }

    fn changes(&mut self, changes: &ChangesView) {
        for change in &changes.changes {
            match change.tone {
                VerdictTone::Unknown => {
                    let why =
                        if change.more.is_empty() { change.counts.clone() } else { change.more.clone() };
                    self.cannot.push((change.title.clone(), why));
                }
                VerdictTone::Leans | VerdictTone::Clear => {
                    let why = self.words.say_with("next-one-day", &[("why", Arg::Text(&change.probability))]);
                    let said =
                        [("change", Arg::Text(&change.title)), ("verdict", Arg::Text(&change.verdict))];
                    self.supports.push((self.words.say_with("next-supported", &said), why));
                }
            }
        }
    }

    fn heights(&mut self, rungs: &[Rung]) {
        let height = |rung: &Rung| self.words.decimals(&rung.height.to_string());
        let open: Vec<String> = rungs.iter().filter(|r| r.casts == 0).map(height).collect();
        if !open.is_empty() && open.len() < rungs.len() {
            let open = self.words.listed(&open);
            let text = self.words.say_with("next-heights", &[("open", Arg::Text(&open))]);
            self.cannot.push((text, self.words.say("next-heights-why")));
        }
    }

    fn water(&mut self, like: &[Day]) {
        let tallies: Vec<_> = like.iter().map(|day| super::tally(day.gist)).collect();
        let set = set_rates(&tallies);
        let args = [("count", Arg::Count(set.days))];
        if set.days < restwater_compare::sets::FEWEST_DAYS {
            self.cannot
                .push((self.words.say_with("next-few-days", &args), self.words.say("next-few-days-why")));
        }
    }

    fn cold(&mut self, like: &[Day]) {
        let none = SetFilter { temperature: Some(Temperature::NotLogged), ..SetFilter::default() };
        let without = like.iter().filter(|day| none.takes_gist(day.gist)).count();
        if without > 0 {
            let args = [("count", Arg::Count(without)), ("all", Arg::Count(like.len()))];
            let id = if without == like.len() { "next-cold-none" } else { "next-cold" };
            self.cannot.push((self.words.say_with(id, &args), self.words.say("next-cold-why")));
        }
    }
}
