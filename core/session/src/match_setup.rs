//! A match as it was set, and whether it can be set so.

use super::Logged;
use restwater_log as log;
use restwater_log::WeightUnit;
use restwater_match_day::class::{ClassError, STARTING_SPREAD, SizeClass};
use restwater_match_day::clock::{ClockError, MatchClock};
use restwater_match_day::rules::{MatchRules, RulesError, same_name};
use restwater_match_day::weight::{Weight, WeightError};
use serde::{Deserialize, Serialize};

/// A size class as the angler set it.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ClassGuess {
    /// The angler's name for it; the rules use the same name for the kind of fish.
    pub name: String,
    /// Guessed mean weight of one fish, until some are weighed.
    pub guess: Weight,
}

/// A complete match set-up; the last one in force counts. Times are UTC ms by the organiser's clock.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct MatchSetup {
    /// All-in.
    pub all_in_ms: i64,
    /// All-out.
    pub all_out_ms: i64,
    /// What to add to the phone's time to read the organiser's.
    #[serde(default)]
    pub offset_ms: i64,
    /// The unit of the scales.
    pub unit: WeightUnit,
    /// The finest mark of the scales at the weigh-in.
    pub mark: Weight,
    /// Nets, limits, kinds that count, landing after all-out, alarms.
    #[serde(default)]
    pub rules: MatchRules,
    /// The size classes, in the order of their keys.
    #[serde(default)]
    pub classes: Vec<ClassGuess>,
}

/// Why part of a match set-up is refused.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum MatchError {
    /// All-in, all-out, offset, landing or alarms.
    #[error(transparent)]
    Clock(#[from] ClockError),
    /// Nets, limits or kinds.
    #[error(transparent)]
    Rules(#[from] RulesError),
    /// A size class.
    #[error(transparent)]
    Class(#[from] ClassError),
    /// A weight.
    #[error(transparent)]
    Weight(#[from] WeightError),
    /// Nothing to keep fish in.
    #[error("a match needs a net")]
    NoNet,
    /// Two classes of one name.
    #[error("two size classes are called \"{0}\"")]
    DuplicateClass(String),
    /// A class that the match doesn't have.
    #[error("there is no size class \"{0}\"")]
    NoSuchClass(String),
    /// A weigh-in before anything was fished.
    #[error("the match has not begun")]
    WeighInBeforeAllIn,
}

impl Logged for ClassGuess {
    type Wire = log::ClassGuess;

    fn logged(&self) -> log::ClassGuess {
        log::ClassGuess { name: self.name.clone(), guess: self.guess.logged() }
    }

    fn from_logged(wire: &log::ClassGuess) -> Self {
        Self { name: wire.name.clone(), guess: Weight::from_logged(&wire.guess) }
    }
}

impl Logged for MatchSetup {
    type Wire = log::MatchSetup;

    fn logged(&self) -> log::MatchSetup {
        log::MatchSetup {
            all_in_ms: self.all_in_ms,
            all_out_ms: self.all_out_ms,
            offset_ms: self.offset_ms,
            unit: self.unit,
            mark: self.mark.logged(),
            rules: self.rules.logged(),
            classes: self.classes.iter().map(ClassGuess::logged).collect(),
        }
    }

    fn from_logged(wire: &log::MatchSetup) -> Self {
        Self {
            all_in_ms: wire.all_in_ms,
            all_out_ms: wire.all_out_ms,
            offset_ms: wire.offset_ms,
            unit: wire.unit,
            mark: Weight::from_logged(&wire.mark),
            rules: MatchRules::from_logged(&wire.rules),
            classes: wire.classes.iter().map(ClassGuess::from_logged).collect(),
        }
    }
}

impl MatchSetup {
    /// The match clock.
    pub fn clock(&self) -> Result<MatchClock, ClockError> {
        MatchClock::new(self.all_in_ms, self.all_out_ms, self.rules.landing_min, self.offset_ms)
    }

    /// Checks the whole set-up; if it passes, the own count can be computed with it.
    pub fn check(&self) -> Result<(), MatchError> {
        self.clock()?.alarms(&self.rules.alarms_min, i64::MIN)?;
        self.rules.check()?;
        if self.rules.nets.is_empty() {
            return Err(MatchError::NoNet);
        }
        for (i, class) in self.classes.iter().enumerate() {
            class.size_class().learn(&[])?;
            if self.classes[..i].iter().any(|other| same_name(&other.name, &class.name)) {
                return Err(MatchError::DuplicateClass(class.name.trim().to_owned()));
            }
        }
        self.mark.of_a_fish()?;
        Ok(())
    }

    /// The index of a class in the list.
    pub fn class(&self, name: &str) -> Option<usize> {
        self.classes.iter().position(|c| same_name(&c.name, name))
    }
}

impl ClassGuess {
    /// The class with the spread that every class starts with.
    pub(crate) fn size_class(&self) -> SizeClass {
        SizeClass { name: self.name.clone(), guess: self.guess, spread: STARTING_SPREAD }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use restwater_log::WeightUnit;
    use restwater_match_day::rules::{MatchRules, NetHolds, NetRule};
    use restwater_match_day::weight::Weight;

    const HOUR: i64 = 3_600_000;

    fn setup() -> MatchSetup {
        let net =
            NetRule { name: "Net 1".into(), limit: Some(Weight::Drams(12_800)), holds: NetHolds::Anything };
        MatchSetup {
            all_in_ms: 1_768_642_200_000,
            all_out_ms: 1_768_642_200_000 + 5 * HOUR,
            offset_ms: 0,
            unit: WeightUnit::Drams,
            mark: Weight::Drams(16),
            rules: MatchRules { nets: vec![net], alarms_min: vec![30, 10], ..MatchRules::default() },
            classes: vec![ClassGuess { name: "Carp".into(), guess: Weight::Drams(1_280) }],
        }
    }

    #[test]
    fn a_match_as_usual_passes() {
        assert_eq!(setup().check(), Ok(()));
        assert_eq!(setup().class(" carp"), Some(0));
    }

    #[test]
    fn an_impossible_match_is_refused() {
        let refused = |change: &dyn Fn(&mut MatchSetup)| {
            let mut bad = setup();
            change(&mut bad);
            bad.check().unwrap_err()
        };
        let backwards = refused(&|m| m.all_out_ms = m.all_in_ms - HOUR);
        assert_eq!(backwards, MatchError::Clock(ClockError::OutBeforeIn(60)));
        assert_eq!(refused(&|m| m.rules.nets.clear()), MatchError::NoNet);
        let twice = refused(&|m| m.rules.nets.push(m.rules.nets[0].clone()));
        assert_eq!(twice, MatchError::Rules(RulesError::DuplicateNet("Net 1".into())));
        let twice = refused(&|m| m.classes.push(m.classes[0].clone()));
        assert_eq!(twice, MatchError::DuplicateClass("Carp".into()));
        let below = refused(&|m| m.classes[0].guess = Weight::Drams(-3));
        assert!(
            matches!(below, MatchError::Class(ClassError::Weight(WeightError::Negative(_)))),
            "{below:?}"
        );
        let absurd = refused(&|m| m.rules.nets[0].limit = Some(Weight::Grams(9_000_000)));
        assert!(matches!(absurd, MatchError::Rules(RulesError::Limit { .. })), "{absurd:?}");
        let early = refused(&|m| m.rules.alarms_min.push(600));
        assert_eq!(early, MatchError::Clock(ClockError::AlarmTooEarly(600)));
        assert_eq!(refused(&|m| m.mark = Weight::Drams(0)), MatchError::Weight(WeightError::Zero));
    }
}
