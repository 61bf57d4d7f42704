//! The plan for a coming day. All its lines are optional.

use super::{BenchInput, Part};
use crate::place::{bearing_words, rig_words};
use crate::plan::{line_words, move_words, plan_day_words, start_words};
use crate::tackle::{BEARING_STEPS, WRAP_STEPS, first_reach, rig_rows, step_words, stepped};
use crate::{
    Action, Arg, Choice, ChoiceRow, Leaf, LeafKey, LeafLine, PlanTap, TypedField, TypedInto, Wording,
};
use restwater_log::{MoveAt, PlanLine, PlanSpot, Rig, RodNumber};
use restwater_session::{Plan, Session, TakenPlan};

/// What the plan is made from.
pub struct PlanInput<'a> {
    /// The day that is planned, counted from 1 January 1970 in local time.
    pub day: i32,
    /// Today.
    pub today: i32,
    /// What is planned for that day, if anything is.
    pub plan: Option<&'a Plan>,
    /// The day of the plan that START would adopt now, even if that plan was dropped for today.
    pub nearest: Option<i32>,
    /// Whether it was dropped for today.
    pub put_aside: bool,
    /// The plan that the running session follows.
    pub taken: Option<&'a TakenPlan>,
    /// Whether a session is running.
    pub open: bool,
    /// The session last shown: its marks and baits are offered.
    pub last: &'a Session,
    /// Rods of the set-up.
    pub rods: RodNumber,
    /// Span of the sticks, in tenths of a millimetre.
    pub span_tenth_mm: u32,
}

/// Days ahead that can be planned with one tap.
const DAYS_AHEAD: i32 = 7;
/// Minutes to leave the first casts (common practice, no source).
const LEAVE_MIN: &[u16] = &[5, 10, 15, 20, 25, 30, 45, 60];
/// Minutes after all-in at which to move (common practice, no source).
const MOVE_MIN: &[u16] = &[30, 60, 90, 120, 150, 180, 240];

/// The leaves: the plan itself, and one for each part of it.
pub(super) fn plan(input: &BenchInput) -> (Part, Vec<Leaf>) {
    let make = Make { words: input.words, plan: input.plan, wallet: input };
    let parts: Vec<Leaf> = [make.pegs(), make.start()]
        .into_iter()
        .chain((1..=input.plan.rods.clamp(1, 3)).map(|rod| make.rig(rod)))
        .collect();
    let leaf = make.whole(&parts);
    let sub = make.sub();
    ((leaf, sub), parts)
}

struct Make<'a> {
    words: &'a Wording,
    plan: &'a PlanInput<'a>,
    wallet: &'a BenchInput<'a>,
}

impl Make<'_> {
    fn lines(&self) -> impl Iterator<Item = &PlanLine> {
        self.plan.plan.into_iter().flat_map(Plan::lines)
    }

    fn day_words(&self, day: i32) -> String {
        plan_day_words(self.words, day, self.plan.today)
    }

    /// The day that is planned.
    fn day(&self) -> String {
        self.day_words(self.plan.day)
    }

    /// "For tomorrow: bread, 18 in pop-up": a page on its own may come up again hours later.
    fn of_day(&self, what: &str) -> String {
        self.words.say_with("plan-for", &[("day", Arg::Text(&self.day())), ("what", Arg::Text(what))])
    }

    /// "tomorrow: 4 lines".
    fn sub(&self) -> String {
        let day = self.day();
        let args = [("day", Arg::Text(&day)), ("count", Arg::Count(self.lines().count()))];
        self.words.say_with("plan-sub", &args)
    }

    fn whole(&self, parts: &[Leaf]) -> Leaf {
        let (words, input) = (self.words, self.plan);
        let mut leaf = Leaf::new(words, "bench", "plan");
        let says = match (input.open, input.taken) {
            (true, Some(_)) => "plan-says-taken",
            _ if self.lines().next().is_none() => "plan-says-none",
            _ => "plan-says",
        };
        leaf.says = words.say_with(says, &[("day", Arg::Text(&self.day()))]);
        leaf.lines = self.lines().map(|line| self.line(line)).collect();
        leaf.rows.push(self.days());
        leaf.list = parts.iter().map(|part| part.opener(String::new())).collect();
        leaf.keys.extend(self.today());
        leaf
    }

    fn line(&self, line: &PlanLine) -> LeafLine {
        let (label, value) = line_words(self.words, line);
        LeafLine { detail: value, ..LeafLine::new(label, String::new()) }
    }

    fn days(&self) -> ChoiceRow {
        let input = self.plan;
        let mut days: Vec<i32> = (0..=DAYS_AHEAD).map(|ahead| input.today.saturating_add(ahead)).collect();
        if !days.contains(&input.day) {
            days.insert(0, input.day);
        }
        let choice = |day: i32| {
            let tag = day.saturating_sub(input.today).to_string();
            plan_choice(tag, self.day_words(day), day == input.day, PlanTap::Day { day })
        };
        let choices = days.into_iter().map(choice).collect();
        ChoiceRow::of("plan-day", self.words.say("plan-row-day"), choices, String::new())
    }

    /// NOT TODAY if a session follows a plan, or would follow the one for today; TODAY if that was dropped.
    fn today(&self) -> Option<LeafKey> {
        let input = self.plan;
        let (takes, any) = if input.open {
            (input.taken.is_none(), input.taken.is_some() || input.nearest.is_some())
        } else {
            (input.put_aside, input.nearest == Some(input.today))
        };
        if !any {
            return None;
        }
        let id = if takes { "plan-key-today" } else { "plan-key-not-today" };
        let key =
            LeafKey::new("plan-today-", self.words.say(id), Action::Plan { tap: PlanTap::Today { takes } });
        Some(LeafKey { sub: self.words.say(&format!("{id}-sub")), ..key })
    }

    fn pegs(&self) -> Leaf {
        let words = self.words;
        let mut leaf = Leaf::new(words, "bench", "plan-pegs");
        leaf.says = words.say_with("plan-pegs-says", &[("day", Arg::Text(&self.day()))]);
        let pegs = self.lines().filter(|line| matches!(line, PlanLine::Peg { .. }));
        leaf.lines = pegs.map(|line| self.line(line)).collect();
        let into = TypedInto::PlanPeg;
        leaf.typing = Some(TypedField::sent(words, "plan-peg", words.say("plan-type-peg"), into));
        let out = self.lines().filter_map(|line| match line {
            PlanLine::Peg { peg, .. } => {
                let label = crate::peg_words(words, peg);
                Some(plan_choice(peg.clone(), label, false, PlanTap::NoPeg { peg: peg.clone() }))
            }
            _ => None,
        });
        let out: Vec<Choice> = out.collect();
        if !out.is_empty() {
            leaf.rows.push(ChoiceRow::of("plan-out", words.say("plan-row-out"), out, String::new()));
        }
        leaf
    }

    fn start(&self) -> Leaf {
        let words = self.words;
        let mut leaf = Leaf::new(words, "bench", "plan-start");
        let spot = self.lines().find_map(|line| match line {
            PlanLine::Start { spot } => Some(spot.clone()),
            _ => None,
        });
        leaf.says = match &spot {
            None => words.say_with("plan-start-says", &[("day", Arg::Text(&self.day()))]),
            Some(spot) => self.of_day(&start_words(words, spot)),
        };
        let set = spot.is_some();
        let spot = spot.unwrap_or_default();
        leaf.rows = vec![self.reach(&spot), self.aim(&spot), self.leave(), self.moves()];
        if set {
            let action = Action::Plan { tap: PlanTap::NoStart };
            leaf.keys.push(LeafKey::new("plan-no-start-", words.say("plan-key-no-start"), action));
        }
        leaf
    }

    fn reach(&self, spot: &PlanSpot) -> ChoiceRow {
        let now = spot.reach.unwrap_or_else(|| first_reach(self.plan.span_tenth_mm));
        let here = plan_choice("0", crate::place::reach_words(self.words, now), spot.reach.is_some(), {
            PlanTap::Reach { reach: now }
        });
        let step = |step: &i64| {
            let reach = stepped(now, *step);
            plan_choice(step.to_string(), step_words(self.words, *step), false, PlanTap::Reach { reach })
        };
        let choices = std::iter::once(here).chain(WRAP_STEPS.iter().map(step)).collect();
        let row = ChoiceRow::of("plan-reach", self.words.say("tackle-reach"), choices, String::new());
        self.or_open(row)
    }

    fn aim(&self, spot: &PlanSpot) -> ChoiceRow {
        let words = self.words;
        let mut names: Vec<&str> = self.plan.last.marks.iter().map(|mark| mark.name.as_str()).collect();
        names.extend(
            spot.mark.as_deref().filter(|name| !self.plan.last.marks.iter().any(|m| m.name == **name)),
        );
        let now = spot.bearing_cdeg.unwrap_or(0);
        let bearings =
            [0].iter().chain(BEARING_STEPS).map(|step| now.saturating_add(*step).clamp(-8_500, 8_500));
        let marks = names.into_iter().enumerate().map(|(i, name)| {
            let chosen = spot.mark.as_deref() == Some(name);
            plan_choice(format!("mark-{i}"), name.to_owned(), chosen, PlanTap::Mark { name: name.into() })
        });
        let bearings = bearings.map(|cdeg| {
            let chosen = spot.bearing_cdeg == Some(cdeg);
            plan_choice(cdeg.to_string(), bearing_words(words, cdeg), chosen, PlanTap::Bearing { cdeg })
        });
        let mut choices: Vec<Choice> = marks.chain(bearings).collect();
        // A step at the edge leads to a value that is already in the row.
        choices.dedup_by(|a, b| a.tag == b.tag);
        let label = words.say("plan-row-aim");
        let row = self.or_open(ChoiceRow::of("plan-aim", label.clone(), choices, String::new()));
        ChoiceRow { typing: Some(TypedField::sent(words, "plan-mark", label, TypedInto::PlanMark)), ..row }
    }

    /// Makes a row without a value say that it is left open.
    fn or_open(&self, mut row: ChoiceRow) -> ChoiceRow {
        if row.value.is_empty() {
            row.value = self.words.say("plan-open");
        }
        row
    }

    fn leave(&self) -> ChoiceRow {
        let words = self.words;
        let now = self.lines().find_map(|line| match line {
            PlanLine::Leave { minutes } => Some(*minutes),
            _ => None,
        });
        let none =
            plan_choice("none", words.say("plan-open"), now.is_none(), PlanTap::Leave { minutes: None });
        let say = |n: u16| words.say_with("plan-minutes", &[("minutes", Arg::Text(&n.to_string()))]);
        let choice = |n: &u16| {
            plan_choice(n.to_string(), say(*n), now == Some(*n), PlanTap::Leave { minutes: Some(*n) })
        };
        let choices = std::iter::once(none).chain(LEAVE_MIN.iter().map(choice)).collect();
        let row = ChoiceRow::of("plan-leave", words.say("plan-leave"), choices, words.say("source-common"));
        ChoiceRow { value: now.map_or_else(|| words.say("plan-open"), say), ..row }
    }

    fn moves(&self) -> ChoiceRow {
        let words = self.words;
        let now = self.lines().find_map(|line| match line {
            PlanLine::Move { at } => Some(*at),
            _ => None,
        });
        let none = plan_choice("none", words.say("plan-open"), now.is_none(), PlanTap::Move { at: None });
        let choice = |minutes: &u16| {
            let at = MoveAt::AllIn { minutes: *minutes };
            let chosen = now == Some(at);
            plan_choice(minutes.to_string(), move_words(words, at), chosen, PlanTap::Move { at: Some(at) })
        };
        let choices = std::iter::once(none).chain(MOVE_MIN.iter().map(choice)).collect();
        let label = words.say("plan-move");
        let row = ChoiceRow::of("plan-move", label, choices, words.say("source-common"));
        let typing = TypedField::sent(words, "plan-move", words.say("plan-type-move"), TypedInto::PlanMove);
        let value = now.map_or_else(|| words.say("plan-open"), |at| move_words(words, at));
        ChoiceRow { value, typing: Some(typing), ..row }
    }

    fn rig(&self, rod: RodNumber) -> Leaf {
        let words = self.words;
        let rig = self.lines().find_map(|line| match line {
            PlanLine::Rig { rod: of, rig } if *of == rod => Some(rig.clone()),
            _ => None,
        });
        let name = words.say_with("rod", &[("rod", Arg::Text(&rod.to_string()))]);
        let mut leaf = Leaf::new(words, "bench", "plan-rig");
        leaf.id = format!("plan-rig-{rod}");
        leaf.title = words.say_with("plan-rig-of", &[("rod", Arg::Text(&name))]);
        leaf.says = self.of_day(&rig_words(words, rig.as_ref().unwrap_or(&Rig::default())));
        let send = |rod, change| Action::Plan { tap: PlanTap::Rig { rod, change } };
        let now = rig.clone().unwrap_or_default();
        let wallet = self.wallet.kit.wallet.tied();
        leaf.rows = rig_rows(words, self.plan.last, rod, &now, wallet, send);
        if rig.is_some() {
            let action = Action::Plan { tap: PlanTap::NoRig { rod } };
            leaf.keys.push(LeafKey::new("plan-no-rig-", words.say("plan-key-no-rig"), action));
        }
        leaf
    }
}

fn plan_choice(tag: impl Into<String>, label: String, chosen: bool, tap: PlanTap) -> Choice {
    Choice::new(tag, label, chosen, Action::Plan { tap })
}
