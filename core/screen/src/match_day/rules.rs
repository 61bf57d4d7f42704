//! The rules of the day as rows of choices.

use super::now::local_clock;
use super::weights::{short, units};
use super::{MatchInput, MatchKey, MatchLine, MatchTap};
use crate::{Arg, Choice, ChoiceRow, Wording};
use restwater_log::WeightUnit;
use restwater_match_day::clock::MINUTE_MS;
use restwater_match_day::rules::{MatchRules, NetHolds, NetRule, OverLimit};
use restwater_match_day::weight::Weight;
use restwater_session::{ClassGuess, MatchSetup, Stamp};

/// Alarms that can be chosen, minutes before all-out (common practice, no source).
const ALARMS_MIN: &[u16] = &[120, 60, 30, 15, 10, 5];
/// Size classes by message id with the weight they are first taken for, drams (guesses, changed by a tap).
pub const CLASSES: &[(&str, i64)] = &[
    ("kind-silver", 64),
    ("kind-roach", 96),
    ("kind-perch", 128),
    ("kind-skimmer", 192),
    ("kind-bream", 768),
    ("kind-tench", 768),
    ("kind-stockie", 384),
    ("kind-carp", 1_280),
    ("kind-pike", 1_536),
];
/// The classes a match starts with, as places in [`CLASSES`].
const FIRST_CLASSES: [usize; 4] = [0, 3, 6, 7];
/// How long a match is taken to last until all-out is set (common practice, no source).
const USUAL_LENGTH_MIN: i64 = 300;
/// All-in is first taken at the next so many minutes of the clock.
const ROUND_MIN: i64 = 30;
/// Minutes by which a time can be moved.
const TIME_STEPS: &[i64] = &[-60, -15, -5, 5, 15, 60];
/// Limits in pounds and in kilograms; 0 is none (common practice, no source).
const LIMITS_LB: &[i64] = &[0, 20, 30, 40, 50, 60, 80, 100, 120];
const LIMITS_KG: &[i64] = &[0, 10, 15, 20, 25, 30, 40, 50, 60];
/// Minutes to land a hooked fish after all-out; 0 is none (common practice, no source).
const LANDINGS_MIN: &[u16] = &[0, 5, 10, 15, 20, 30];
/// Marks of scales in drams and grams (common practice, no source).
const MARKS_DR: &[i64] = &[1, 4, 8, 16, 32, 64];
const MARKS_G: &[i64] = &[1, 5, 10, 20, 50, 100];
/// Weights that a class can be taken for: ounces and grams.
const GUESSES_OZ: &[i64] = &[2, 4, 8, 12, 16, 24, 32, 48, 64, 80, 96, 128, 160, 192, 256, 320];
const GUESSES_G: &[i64] =
    &[50, 100, 200, 350, 500, 750, 1_000, 1_500, 2_000, 2_500, 3_000, 4_000, 5_000, 7_500, 10_000];

/// The match that the first tap sets: all-in at the next half hour after the session's start, five hours, one net
/// without a limit.
pub fn first_match(words: &Wording, now: &Stamp) -> MatchSetup {
    let round = ROUND_MIN * MINUTE_MS;
    let all_in_ms = now.wall_at(0).saturating_add(round - 1).div_euclid(round) * round;
    let class = |i: usize| {
        let (id, drams) = CLASSES[i];
        ClassGuess { name: words.say(id), guess: Weight::Drams(drams) }
    };
    MatchSetup {
        all_in_ms,
        all_out_ms: all_in_ms + USUAL_LENGTH_MIN * MINUTE_MS,
        offset_ms: 0,
        unit: WeightUnit::Drams,
        mark: Weight::Drams(16),
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

/// Sets the first match.
pub(super) fn begin_key(input: &MatchInput) -> MatchKey {
    MatchKey {
        label: input.say("match-begin", &[]),
        sub: input.say("match-begin-sub", &[]),
        spoken: input.say("match-begin-spoken", &[]),
        solid: true,
        enabled: true,
        tap: MatchTap::Choose { field: "begin".into(), value: "1".into() },
    }
}

/// The rows; those of a first match where none is set.
pub(super) fn rows(input: &MatchInput, setup: Option<&MatchSetup>) -> Vec<ChoiceRow> {
    let setup = setup.cloned().unwrap_or_else(|| first_match(input.words, input.now));
    let setup = &setup;
    let make = Rows { input, setup };
    let mut rows = vec![
        make.time("all-in", setup.all_in_ms),
        make.time("all-out", setup.all_out_ms),
        make.clock(),
        make.counted(
            "nets",
            i64::try_from(setup.rules.nets.len()).unwrap_or(0),
            &[1, 2, 3, 4, 5, 6],
            i64::to_string,
        ),
    ];
    rows.extend(setup.rules.nets.iter().enumerate().map(|(i, net)| make.limit(i, net)));
    rows.push(make.over());
    rows.push(make.counted(
        "landing",
        i64::from(setup.rules.landing_min),
        &LANDINGS_MIN.iter().map(|m| i64::from(*m)).collect::<Vec<_>>(),
        |m| make.minutes(*m),
    ));
    rows.push(make.alarms());
    rows.push(make.classes());
    rows.push(make.counting());
    rows.extend(setup.classes.iter().map(|class| make.guess(class)));
    rows.push(make.unit());
    rows.push(make.mark());
    rows.push(make.off());
    rows
}

/// What the first tap would set, where no match is.
pub(super) fn first_lines(rows: &[ChoiceRow]) -> Vec<MatchLine> {
    let told = ["all-in", "all-out", "nets", "landing", "alarms"];
    let line = |row: &ChoiceRow| MatchLine { label: row.label.clone(), value: row.value.clone() };
    rows.iter().filter(|row| told.contains(&row.field.as_str())).map(line).collect()
}

struct Rows<'a> {
    input: &'a MatchInput<'a>,
    setup: &'a MatchSetup,
}

impl Rows<'_> {
    fn row(&self, field: &str, value: String, choices: Vec<Choice>, usual: bool) -> ChoiceRow {
        let label = self.input.say(&format!("match-row-{field}"), &[]);
        let source = if usual { self.input.say("source-common", &[]) } else { String::new() };
        ChoiceRow { field: field.into(), label, value, choices, source }
    }

    fn minutes(&self, minutes: i64) -> String {
        let id = if minutes == 0 { "match-no-minutes" } else { "match-minutes" };
        self.input.say(id, &[("minutes", &minutes.to_string())])
    }

    fn time(&self, field: &str, ms: i64) -> ChoiceRow {
        let say = |ms: i64| local_clock(self.input.now, ms);
        let choice = |step: &i64| {
            let time = say(ms + step * MINUTE_MS);
            Choice { label: time, value: step.to_string(), chosen: false }
        };
        self.row(field, say(ms), TIME_STEPS.iter().map(choice).collect(), false)
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
        let named = |value: &str| Choice {
            label: self.input.say(&format!("match-clock-{value}"), &[]),
            value: value.into(),
            chosen: false,
        };
        let by = |s: i64| Choice {
            label: self.input.say(
                if s < 0 { "match-clock-less" } else { "match-clock-more" },
                &[("seconds", &s.abs().to_string())],
            ),
            value: s.to_string(),
            chosen: false,
        };
        let choices =
            vec![named("heard-in"), named("heard-out"), named("same-now"), by(-60), by(-10), by(10), by(60)];
        self.row("clock", value, choices, false)
    }

    fn counted(&self, field: &str, now: i64, all: &[i64], say: impl Fn(&i64) -> String) -> ChoiceRow {
        let choice = |n: &i64| Choice { label: say(n), value: n.to_string(), chosen: *n == now };
        self.row(field, say(&now), all.iter().map(choice).collect(), true)
    }

    fn limit(&self, i: usize, net: &NetRule) -> ChoiceRow {
        let (all, per) = match self.setup.unit {
            WeightUnit::Drams => (LIMITS_LB, 256),
            WeightUnit::Grams => (LIMITS_KG, 1_000),
        };
        let none = || self.input.say("match-no-limit", &[]);
        let say = |weight: Weight| short(weight);
        let choice = |n: &i64| {
            let weight = units(self.setup.unit, n * per);
            let limit = Some(weight).filter(|_| *n > 0);
            let label = limit.map_or_else(none, say);
            Choice { label, value: (n * per).to_string(), chosen: limit == net.limit }
        };
        let mut row =
            self.row("limit", net.limit.map_or_else(none, say), all.iter().map(choice).collect(), true);
        row.field = format!("limit-{}", i + 1);
        row.label = self.input.say("match-row-limit", &[("net", &net.name)]);
        row
    }

    fn over(&self) -> ChoiceRow {
        let all = [(OverLimit::CountsToTheLimit, "to-limit"), (OverLimit::DoesNotCount, "nothing")];
        self.named("over", &all, self.setup.rules.over_limit)
    }

    fn named<T: PartialEq + Copy>(&self, field: &str, all: &[(T, &str)], now: T) -> ChoiceRow {
        let say = |name: &str| self.input.say(&format!("match-{field}-{name}"), &[]);
        let choice = |(value, name): &(T, &str)| Choice {
            label: say(name),
            value: (*name).to_owned(),
            chosen: *value == now,
        };
        let value =
            all.iter().find(|(value, _)| *value == now).map_or_else(String::new, |(_, name)| say(name));
        self.row(field, value, all.iter().map(choice).collect(), false)
    }

    fn alarms(&self) -> ChoiceRow {
        let on = |m: &u16| self.setup.rules.alarms_min.contains(m);
        let choice =
            |m: &u16| Choice { label: self.minutes(i64::from(*m)), value: m.to_string(), chosen: on(m) };
        let mut set = self.setup.rules.alarms_min.clone();
        set.sort_unstable_by(|a, b| b.cmp(a));
        let value = set.iter().map(u16::to_string).collect::<Vec<_>>().join(", ");
        let value = if value.is_empty() {
            self.input.say("match-no-alarm", &[])
        } else {
            self.input.say("match-minutes", &[("minutes", &value)])
        };
        self.row("alarms", value, ALARMS_MIN.iter().map(choice).collect(), true)
    }

    fn classes(&self) -> ChoiceRow {
        let has = |name: &str| self.setup.class(name).is_some();
        let choice = |(id, _): &(&str, i64)| {
            let name = self.input.say(id, &[]);
            Choice { chosen: has(&name), value: (*id).to_owned(), label: name }
        };
        let names: Vec<&str> = self.setup.classes.iter().map(|c| c.name.as_str()).collect();
        self.row("classes", names.join(", "), CLASSES.iter().map(choice).collect(), true)
    }

    fn counting(&self) -> ChoiceRow {
        let counts = |class: &ClassGuess| self.setup.rules.counts(&class.name);
        let choice = |class: &ClassGuess| Choice {
            label: class.name.clone(),
            value: class.name.clone(),
            chosen: counts(class),
        };
        let not: Vec<&str> =
            self.setup.classes.iter().filter(|c| !counts(c)).map(|c| c.name.as_str()).collect();
        let value = if not.is_empty() {
            self.input.say("match-all-count", &[])
        } else {
            self.input.say("match-all-but", &[("classes", &not.join(", "))])
        };
        self.row("counting", value, self.setup.classes.iter().map(choice).collect(), false)
    }

    fn guess(&self, class: &ClassGuess) -> ChoiceRow {
        let all: Vec<Weight> = match self.setup.unit {
            WeightUnit::Drams => GUESSES_OZ.iter().map(|oz| Weight::Drams(oz * 16)).collect(),
            WeightUnit::Grams => GUESSES_G.iter().map(|g| Weight::Grams(*g)).collect(),
        };
        let choice = |weight: &Weight| {
            let value = match weight {
                Weight::Drams(n) | Weight::Grams(n) => n.to_string(),
            };
            Choice { label: short(*weight), value, chosen: *weight == class.guess }
        };
        let mut row = self.row("guess", short(class.guess), all.iter().map(choice).collect(), true);
        row.field = format!("guess-{}", class.name);
        row.label = self.input.say("match-row-guess", &[("class", &class.name)]);
        row.source = self.input.say("match-guess-source", &[]);
        row
    }

    fn unit(&self) -> ChoiceRow {
        let all = [(WeightUnit::Drams, "drams"), (WeightUnit::Grams, "grams")];
        self.named("unit", &all, self.setup.unit)
    }

    fn mark(&self) -> ChoiceRow {
        let all = if self.setup.unit == WeightUnit::Drams { MARKS_DR } else { MARKS_G };
        let choice = |n: &i64| {
            let weight = units(self.setup.unit, *n);
            Choice { label: short(weight), value: n.to_string(), chosen: weight == self.setup.mark }
        };
        self.row("mark", short(self.setup.mark), all.iter().map(choice).collect(), true)
    }

    fn off(&self) -> ChoiceRow {
        let choice =
            Choice { label: self.input.say("match-off-yes", &[]), value: "yes".into(), chosen: false };
        self.row("off", String::new(), vec![choice], false)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use restwater_session::written::stamp;

    #[test]
    fn the_first_match_can_be_set_as_it_stands() {
        let words = Wording::new();
        let setup = first_match(&words, &stamp(90 * 60));
        assert_eq!(setup.check(), Ok(()));
        assert_eq!(local_clock(&stamp(0), setup.all_in_ms), "22:30", "the day of the tests begins at 22:13");
        assert_eq!(
            setup.classes.iter().map(|c| c.name.as_str()).collect::<Vec<_>>(),
            ["Silver", "Skimmer", "Stockie", "Carp"]
        );
        for (id, drams) in CLASSES {
            assert!(words.has(id) && Weight::Drams(*drams).of_a_fish().is_ok());
        }
    }
}
