//! The rules of the day as rows of choices.

use super::now::local_clock;
use super::weights::{guess_in, short, units, usual_mark};
use super::{MatchInput, MatchKey, MatchLine};
use crate::{
    Action, Arg, Choice, ChoiceRow, MatchTap, RuleTap, Signal, TypedField, TypedInto, UsualClass, Wording,
};
use restwater_log::{Side, WeightUnit};
use restwater_match_day::clock::MINUTE_MS;
use restwater_match_day::rules::{MatchRules, NetHolds, NetRule, OverLimit, same_name};
use restwater_match_day::weight::Weight;
use restwater_session::{ClassGuess, MatchSetup, Section, Stamp};

/// Alarms that can be chosen, minutes before all-out (common practice, no source).
const ALARMS_MIN: &[u16] = &[120, 60, 30, 15, 10, 5];
/// The classes a match starts with.
const FIRST_CLASSES: [UsualClass; 4] =
    [UsualClass::Silver, UsualClass::Skimmer, UsualClass::Stockie, UsualClass::Carp];
/// The assumed length of a match until all-out is set (common practice, no source).
const USUAL_LENGTH_MIN: i64 = 300;
/// The first all-in proposed falls on a multiple of this many minutes of the clock.
const ROUND_MIN: i64 = 30;
/// Minutes by which a time can be moved.
const TIME_STEPS: &[i32] = &[-60, -15, -5, 5, 15, 60];
/// Limits in pounds and in kilograms; 0 is none (common practice, no source).
const LIMITS_LB: &[i64] = &[0, 20, 30, 40, 50, 60, 80, 100, 120];
const LIMITS_KG: &[i64] = &[0, 10, 15, 20, 25, 30, 40, 50, 60];
/// Minutes to land a hooked fish after all-out; 0 is none (common practice, no source).
const LANDINGS_MIN: &[u16] = &[0, 5, 10, 15, 20, 30];
/// Most pegs of a section that can be chosen on one side (common practice, no source).
const MOST_SIDE: u8 = 12;
/// Marks of scales in drams and grams (common practice, no source).
const MARKS_DR: &[i64] = &[1, 4, 8, 16, 32, 64];
const MARKS_G: &[i64] = &[1, 5, 10, 20, 50, 100];
/// Weights that a class can be assumed to have, in ounces and grams.
const GUESSES_OZ: &[i64] = &[2, 4, 8, 12, 16, 24, 32, 48, 64, 80, 96, 128, 160, 192, 256, 320];
const GUESSES_G: &[i64] =
    &[50, 100, 200, 350, 500, 750, 1_000, 1_500, 2_000, 2_500, 3_000, 4_000, 5_000, 7_500, 10_000];

/// The match that the first tap sets: all-in at the next half hour after the session's start, or from now if that match would be over
/// already, five hours, one net without a limit, and scales of the unit that the phone weighs in.
pub fn first_match(words: &Wording, unit: WeightUnit, now: &Stamp) -> MatchSetup {
    let round = ROUND_MIN * MINUTE_MS;
    let length = USUAL_LENGTH_MIN * MINUTE_MS;
    let next_round = |ms: i64| (ms.div_euclid(round) + 1).saturating_mul(round);
    let (from_start, wall_ms) = (next_round(now.wall_at(0)), now.wall_at(now.at_ms));
    let over = from_start.saturating_add(length) <= wall_ms;
    let all_in_ms = if over { next_round(wall_ms) } else { from_start };
    let class =
        |class: UsualClass| ClassGuess { name: words.say(class.id()), guess: guess_in(class.guess(), unit) };
    MatchSetup {
        all_in_ms,
        all_out_ms: all_in_ms + length,
        offset_ms: 0,
        unit,
        mark: usual_mark(unit),
        rules: MatchRules {
            nets: vec![NetRule { name: net_name(words, 1), limit: None, holds: NetHolds::Anything }],
            landing_min: 15,
            alarms_min: vec![30, 10],
            ..MatchRules::default()
        },
        classes: FIRST_CLASSES.map(class).to_vec(),
    }
}

/// "Net 2".
pub fn net_name(words: &Wording, number: usize) -> String {
    words.say_with("match-net", &[("number", Arg::Text(&number.to_string()))])
}

/// Whether a net has the name of that number in any language.
pub fn is_net_number(name: &str, number: usize) -> bool {
    let number = number.to_string();
    let names = Wording::in_every_language("match-net", &[("number", Arg::Text(&number))]);
    names.iter().any(|known| same_name(known, name))
}

/// The place of a net by its name, or by the name of its number in any language.
pub fn net_place(rules: &MatchRules, name: &str) -> Option<usize> {
    let number = name.rsplit(char::is_whitespace).next().and_then(|number| number.parse().ok());
    let numbered =
        |net: &NetRule| number.is_some_and(|n| is_net_number(name, n) && is_net_number(&net.name, n));
    let named = rules.nets.iter().position(|net| same_name(&net.name, name));
    named.or_else(|| rules.nets.iter().position(numbered))
}

/// The place of a class by its name, or as one of the usual kinds in any language.
pub fn class_place(setup: &MatchSetup, name: &str) -> Option<usize> {
    let usual = |class: &ClassGuess| crate::same_usual_class(&class.name, name);
    setup.class(name).or_else(|| setup.classes.iter().position(usual))
}

/// The place of a usual class among those of the match, by its word in any language.
pub fn usual_class(setup: &MatchSetup, class: UsualClass) -> Option<usize> {
    Wording::in_every_language(class.id(), &[]).iter().find_map(|name| setup.class(name))
}

/// Sets the first match.
pub(super) fn begin_key(input: &MatchInput) -> MatchKey {
    MatchKey {
        tag: "match-begin".into(),
        label: input.say("match-begin", &[]),
        sub: input.say("match-begin-sub", &[]),
        spoken: input.say("match-begin-spoken", &[]),
        solid: true,
        enabled: true,
        tap: MatchTap::Rule { rule: RuleTap::Begin },
    }
}

/// The rows; if no match is set, those of a first match.
pub(super) fn rows(input: &MatchInput, setup: Option<MatchSetup>) -> Vec<ChoiceRow> {
    let setup = setup.unwrap_or_else(|| first_match(input.words, input.phone_unit, input.now));
    let setup = &setup;
    let make = Rows { input, setup };
    let nets = u16::try_from(setup.rules.nets.len()).unwrap_or(0);
    let mut rows = vec![
        make.time("all-in", setup.all_in_ms, |minutes| RuleTap::MoveAllIn { minutes }),
        make.time("all-out", setup.all_out_ms, |minutes| RuleTap::MoveAllOut { minutes }),
        make.clock(),
        make.counted(
            "nets",
            nets,
            &[1, 2, 3, 4, 5, 6],
            |n| n.to_string(),
            |n| RuleTap::Nets { count: n as u8 },
        ),
    ];
    rows.extend(setup.rules.nets.iter().enumerate().map(|(i, net)| make.limit(i, net)));
    rows.push(make.over());
    let landing = setup.rules.landing_min;
    rows.push(make.counted(
        "landing",
        landing,
        LANDINGS_MIN,
        |m| make.minutes(m),
        |minutes| RuleTap::Landing { minutes },
    ));
    rows.push(make.alarms());
    rows.push(make.classes());
    rows.push(make.counting());
    rows.extend(setup.classes.iter().map(|class| make.guess(class)));
    if input.setup().is_some() {
        rows.extend([make.section(Side::Left), make.section(Side::Right), make.said()]);
    }
    rows.push(make.unit());
    rows.push(make.mark());
    rows.push(make.off());
    rows
}

/// What the first tap would set if there is no match.
pub(super) fn first_lines(rows: &[ChoiceRow]) -> Vec<MatchLine> {
    let told = ["all-in", "all-out", "nets", "landing", "alarms"];
    let line = |row: &ChoiceRow| MatchLine::new(row.label.clone(), row.value.clone());
    rows.iter().filter(|row| told.contains(&row.tag.as_str())).map(line).collect()
}

struct Rows<'a> {
    input: &'a MatchInput<'a>,
    setup: &'a MatchSetup,
}

impl Rows<'_> {
    fn row(&self, tag: &str, value: String, choices: Vec<Choice>, usual: bool) -> ChoiceRow {
        let label = self.input.say(&format!("match-row-{tag}"), &[]);
        let source = if usual { self.input.say("source-common", &[]) } else { String::new() };
        ChoiceRow { value, ..ChoiceRow::of(tag, label, choices, source) }
    }

    fn minutes(&self, minutes: u16) -> String {
        let id = if minutes == 0 { "match-no-minutes" } else { "match-minutes" };
        self.input.say(id, &[("minutes", &minutes.to_string())])
    }

    fn time(&self, tag: &str, ms: i64, rule: fn(i32) -> RuleTap) -> ChoiceRow {
        let say = |ms: i64| local_clock(self.input.now, ms);
        let choice =
            |step: &i32| choice(step.to_string(), say(ms + i64::from(*step) * MINUTE_MS), false, rule(*step));
        self.row(tag, say(ms), TIME_STEPS.iter().map(choice).collect(), false)
    }

    /// The two clocks: set by a signal, or by hand.
    fn clock(&self) -> ChoiceRow {
        let seconds = self.setup.offset_ms / 1_000;
        let id = match seconds.signum() {
            0 => "match-clock-same",
            1 => "match-clock-ahead-short",
            _ => "match-clock-behind-short",
        };
        let value = self.input.say(id, &[("seconds", &seconds.abs().to_string())]);
        let named = |tag: &str, tap| {
            Choice::new(tag, self.input.say(&format!("match-clock-{tag}"), &[]), false, Action::Match { tap })
        };
        let by = |seconds: i32| {
            let id = if seconds < 0 { "match-clock-less" } else { "match-clock-more" };
            let label = self.input.say(id, &[("seconds", &seconds.abs().to_string())]);
            choice(seconds.to_string(), label, false, RuleTap::MoveClock { seconds })
        };
        let choices = vec![
            named("heard-in", MatchTap::Heard { signal: Signal::AllIn }),
            named("heard-out", MatchTap::Heard { signal: Signal::AllOut }),
            named("same-now", MatchTap::Rule { rule: RuleTap::SameClock }),
            by(-60),
            by(-10),
            by(10),
            by(60),
        ];
        self.row("clock", value, choices, false)
    }

    fn counted(
        &self,
        tag: &str,
        now: u16,
        all: &[u16],
        say: impl Fn(u16) -> String,
        rule: fn(u16) -> RuleTap,
    ) -> ChoiceRow {
        let choices = all.iter().map(|n| choice(n.to_string(), say(*n), *n == now, rule(*n))).collect();
        self.row(tag, say(now), choices, true)
    }

    fn limit(&self, i: usize, net: &NetRule) -> ChoiceRow {
        let (all, per) = match self.setup.unit {
            WeightUnit::Drams => (LIMITS_LB, 256),
            WeightUnit::Grams => (LIMITS_KG, 1_000),
        };
        let none = || self.input.say("match-no-limit", &[]);
        let limit_of = |n: &i64| {
            let limit = Some(units(self.setup.unit, n * per)).filter(|_| *n > 0);
            let rule = RuleTap::Limit { net: net.name.clone(), limit };
            choice(
                (n * per).to_string(),
                limit.map_or_else(none, |weight| short(self.input.words, weight)),
                limit == net.limit,
                rule,
            )
        };
        let value = net.limit.map_or_else(none, |weight| short(self.input.words, weight));
        let row = self.row("limit", value, all.iter().map(limit_of).collect(), true);
        // The number stays on the line of its net.
        let net_name = net.name.replace(' ', "\u{a0}");
        let label = self.input.say("match-row-limit", &[("net", &net_name)]);
        ChoiceRow { tag: format!("limit-{}", i + 1), label, ..row }
    }

    fn over(&self) -> ChoiceRow {
        let all = [("to-limit", OverLimit::CountsToTheLimit), ("nothing", OverLimit::DoesNotCount)];
        self.named("over", all, self.setup.rules.over_limit, |over| RuleTap::Over { over })
    }

    fn named<T: PartialEq + Copy, const N: usize>(
        &self,
        row: &str,
        all: [(&str, T); N],
        now: T,
        rule: fn(T) -> RuleTap,
    ) -> ChoiceRow {
        let one = |(tag, value): (&str, T)| {
            choice(tag, self.input.say(&format!("match-{row}-{tag}"), &[]), value == now, rule(value))
        };
        let choices = all.map(one).to_vec();
        ChoiceRow::of(row, self.input.say(&format!("match-row-{row}"), &[]), choices, String::new())
    }

    fn alarms(&self) -> ChoiceRow {
        let on = |m: &u16| self.setup.rules.alarms_min.contains(m);
        let alarm = |m: &u16| choice(m.to_string(), self.minutes(*m), on(m), RuleTap::Alarm { minutes: *m });
        let mut set = self.setup.rules.alarms_min.clone();
        set.sort_unstable_by(|a, b| b.cmp(a));
        let value = self.input.words.listed(&set.iter().map(u16::to_string).collect::<Vec<_>>());
        let value = if value.is_empty() {
            self.input.say("match-no-alarm", &[])
        } else {
            self.input.say("match-minutes", &[("minutes", &value)])
        };
        self.row("alarms", value, ALARMS_MIN.iter().map(alarm).collect(), true)
    }

    fn classes(&self) -> ChoiceRow {
        let own = UsualClass::ALL.map(|class| self.input.say(class.id(), &[]));
        let is_own = |class: &ClassGuess| own.iter().any(|name| same_name(name, &class.name));
        // The other languages are read only if a class has a name that is not one of this language.
        let all_own = self.setup.classes.iter().all(is_own);
        let class = |class: UsualClass| {
            let name = self.input.say(class.id(), &[]);
            let chosen =
                self.setup.class(&name).is_some() || (!all_own && usual_class(self.setup, class).is_some());
            choice(class.id(), name, chosen, RuleTap::Class { class })
        };
        let names: Vec<&str> = self.setup.classes.iter().map(|c| c.name.as_str()).collect();
        self.row("classes", self.input.words.listed(&names), UsualClass::ALL.map(class).to_vec(), true)
    }

    fn counting(&self) -> ChoiceRow {
        let counts = |class: &ClassGuess| self.setup.rules.counts(&class.name);
        let one = |class: &ClassGuess| {
            let rule = RuleTap::Counting { class: class.name.clone() };
            choice(class.name.clone(), class.name.clone(), counts(class), rule)
        };
        let not: Vec<&str> =
            self.setup.classes.iter().filter(|c| !counts(c)).map(|c| c.name.as_str()).collect();
        let value = if not.is_empty() {
            self.input.say("match-all-count", &[])
        } else {
            self.input.say("match-all-but", &[("classes", &self.input.words.listed(&not))])
        };
        self.row("counting", value, self.setup.classes.iter().map(one).collect(), false)
    }

    fn guess(&self, class: &ClassGuess) -> ChoiceRow {
        let all: Vec<Weight> = match self.setup.unit {
            WeightUnit::Drams => GUESSES_OZ.iter().map(|oz| Weight::Drams(oz * 16)).collect(),
            WeightUnit::Grams => GUESSES_G.iter().map(|g| Weight::Grams(*g)).collect(),
        };
        let one = |weight: &Weight| {
            let (Weight::Drams(n) | Weight::Grams(n)) = weight;
            let rule = RuleTap::Guess { class: class.name.clone(), weight: *weight };
            choice(n.to_string(), short(self.input.words, *weight), *weight == class.guess, rule)
        };
        let row =
            self.row("guess", short(self.input.words, class.guess), all.iter().map(one).collect(), false);
        ChoiceRow {
            tag: format!("guess-{}", class.name),
            label: self.input.say("match-row-guess", &[("class", &class.name)]),
            source: self.input.say("match-guess-source", &[]),
            ..row
        }
    }

    /// Pegs of the section on one side.
    fn section(&self, side: Side) -> ChoiceRow {
        let known = self.input.session.and_then(|session| session.section);
        let of = |section: Section| if side == Side::Left { section.left } else { section.right };
        let half = self.input.section_side.filter(|(said, _)| known.is_none() && *said == side);
        let here = known.map(of).or(half.map(|(_, pegs)| pegs));
        let one = |n: u8| {
            let tap = MatchTap::SectionSide { side, pegs: n };
            Choice::new(n.to_string(), n.to_string(), here == Some(n), Action::Match { tap })
        };
        let tag = if side == Side::Left { "section-left" } else { "section-right" };
        let row = ChoiceRow::of(
            tag,
            self.input.say(&format!("match-row-{tag}"), &[]),
            (0..=MOST_SIDE).map(one).collect(),
            half.map_or_else(String::new, |_| self.input.say("match-section-half", &[])),
        );
        let value = if row.value.is_empty() {
            self.input.say("match-section-unknown", &[])
        } else {
            row.value.clone()
        };
        ChoiceRow { value, reads: true, ..row }
    }

    /// The rule on fish that die or go back, typed in the organiser's words.
    fn said(&self) -> ChoiceRow {
        let said = self.input.session.map_or("", |session| session.match_rule.as_str());
        let value = if said.is_empty() { self.input.say("match-said-nothing", &[]) } else { said.to_owned() };
        let none = Action::Typed { into: TypedInto::MatchRule, text: String::new() };
        let none = Choice::new("none", self.input.say("match-said-nothing", &[]), said.is_empty(), none);
        let row = self.row("said", value, vec![none], false);
        let field = TypedField::sent(self.input.words, "said", row.label.clone(), TypedInto::MatchRule);
        ChoiceRow { typing: Some(field), ..row }
    }

    fn unit(&self) -> ChoiceRow {
        let all = [("drams", WeightUnit::Drams), ("grams", WeightUnit::Grams)];
        self.named("unit", all, self.setup.unit, |unit| RuleTap::Unit { unit })
    }

    fn mark(&self) -> ChoiceRow {
        let all = if self.setup.unit == WeightUnit::Drams { MARKS_DR } else { MARKS_G };
        let one = |n: &i64| {
            let mark = units(self.setup.unit, *n);
            choice(
                n.to_string(),
                short(self.input.words, mark),
                mark == self.setup.mark,
                RuleTap::Mark { mark },
            )
        };
        self.row("mark", short(self.input.words, self.setup.mark), all.iter().map(one).collect(), true)
    }

    fn off(&self) -> ChoiceRow {
        let off = Action::Match { tap: MatchTap::Off };
        let choice = Choice::new("yes", self.input.say("match-off-yes", &[]), false, off);
        self.row("off", String::new(), vec![choice], false)
    }
}

/// A choice of a rule.
fn choice(tag: impl Into<String>, label: String, chosen: bool, rule: RuleTap) -> Choice {
    Choice::new(tag, label, chosen, Action::Match { tap: MatchTap::Rule { rule } })
}

#[cfg(test)]
mod tests {
    use super::*;
    use restwater_session::written::stamp;

    #[test]
    fn the_first_match_can_be_set_as_proposed() {
        let words = Wording::new();
        let setup = first_match(&words, WeightUnit::Drams, &stamp(90 * 60));
        assert_eq!(setup.check(), Ok(()));
        assert_eq!(first_match(&words, WeightUnit::Grams, &stamp(0)).check(), Ok(()));
        assert_eq!(local_clock(&stamp(0), setup.all_in_ms), "22:30", "the day of the tests begins at 22:13");
        assert_eq!(
            setup.classes.iter().map(|c| c.name.as_str()).collect::<Vec<_>>(),
            ["Silver", "Skimmer", "Stockie", "Carp"]
        );
        for class in UsualClass::ALL {
            assert!(words.has(class.id()) && class.guess().of_a_fish().is_ok());
        }
    }
}
