//! What the keys of the Match screen do.

use restwater_log::{OtherPeg, Side, WeightUnit};
use restwater_match_day::rules::OverLimit;
use restwater_match_day::weight::Weight;
use restwater_session::MatchSetup;
use serde::{Deserialize, Serialize};

/// A signal of the organiser.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Signal {
    /// All-in.
    AllIn,
    /// All-out.
    AllOut,
}

/// One tap on the Match screen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "tap", rename_all = "snake_case", deny_unknown_fields)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum MatchTap {
    /// The whole match at once.
    Set {
        /// As it is to be.
        setup: MatchSetup,
    },
    /// One of the rules of the day; the first one sets the match.
    Rule {
        /// Which.
        rule: RuleTap,
    },
    /// The match is called off.
    Off,
    /// The organiser's signal was heard now, which gives the difference between the two clocks.
    Heard {
        /// Which signal.
        signal: Signal,
    },
    /// This net is on the scales.
    ScalesNet {
        /// Its name.
        name: String,
    },
    /// Another angler's nets are on the scales, or are guessed.
    ScalesPeg {
        /// Whose.
        peg: OtherPeg,
    },
    /// How far the section reaches.
    Section {
        /// Pegs to the left.
        left: u8,
        /// Pegs to the right.
        right: u8,
    },
    /// How far the section reaches on one side. It has no extent until the other side is known too.
    SectionSide {
        /// Which: left or right. A section does not reach across the water.
        side: Side,
        /// Pegs on it.
        pegs: u8,
    },
    /// A digit of its weight was typed.
    ScalesDigit {
        /// From 0 to 9.
        digit: u8,
    },
    /// The unit was typed: the next digits are ounces, drams, or decimals of a kilogram. After the last unit
    /// the figure is cleared.
    ScalesUnit,
    /// Erases the last digit typed.
    ScalesRubOut,
    /// The figure typed is the weight of the net; for another angler's before all-out it is a guess.
    WeighIn,
    /// A net with a given weight.
    WeighedIn {
        /// Name of the net.
        net: String,
        /// The unit.
        unit: WeightUnit,
        /// How many of it.
        count: i64,
    },
}

/// One of the rules of the day.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "rule", rename_all = "snake_case", deny_unknown_fields)]
pub enum RuleTap {
    /// The match is set with the rules shown.
    Begin,
    /// All-in is moved.
    MoveAllIn {
        /// By this many minutes.
        minutes: i32,
    },
    /// All-out is moved.
    MoveAllOut {
        /// By this many minutes.
        minutes: i32,
    },
    /// The organiser's clock is ahead of the phone's by more than was set.
    MoveClock {
        /// By this many seconds.
        seconds: i32,
    },
    /// Both clocks show the same.
    SameClock,
    /// How many nets there are.
    Nets {
        /// From 1.
        count: u8,
    },
    /// The limit of a net.
    Limit {
        /// Its name.
        net: String,
        /// `None` if it has no limit.
        limit: Option<Weight>,
    },
    /// What happens to a net over its limit.
    Over {
        /// What.
        over: OverLimit,
    },
    /// Time to land a hooked fish after all-out.
    Landing {
        /// In minutes.
        minutes: u16,
    },
    /// An alarm is set or removed.
    Alarm {
        /// Minutes before all-out.
        minutes: u16,
    },
    /// One of the usual classes is added to the list or removed from it.
    Class {
        /// Which.
        class: UsualClass,
    },
    /// Whether the fish of a class count.
    Counting {
        /// Its name.
        class: String,
    },
    /// The assumed weight of a fish of a class until one was weighed.
    Guess {
        /// Its name.
        class: String,
        /// How much.
        weight: Weight,
    },
    /// The unit of the scales.
    Unit {
        /// Which.
        unit: WeightUnit,
    },
    /// The smallest mark of the scales.
    Mark {
        /// How much.
        mark: Weight,
    },
}

/// A size class that is offered, with its first assumed weight (guesses, which a tap changes).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum UsualClass {
    /// Silvers.
    Silver,
    /// Roach.
    Roach,
    /// Perch.
    Perch,
    /// Skimmers.
    Skimmer,
    /// Bream.
    Bream,
    /// Tench.
    Tench,
    /// Stocked carp.
    Stockie,
    /// Carp.
    Carp,
    /// Pike.
    Pike,
}

impl UsualClass {
    /// All, in the order they are offered.
    pub const ALL: [Self; 9] = [
        Self::Silver,
        Self::Roach,
        Self::Perch,
        Self::Skimmer,
        Self::Bream,
        Self::Tench,
        Self::Stockie,
        Self::Carp,
        Self::Pike,
    ];

    /// The message that names it.
    pub fn id(self) -> &'static str {
        match self {
            Self::Silver => "kind-silver",
            Self::Roach => "kind-roach",
            Self::Perch => "kind-perch",
            Self::Skimmer => "kind-skimmer",
            Self::Bream => "kind-bream",
            Self::Tench => "kind-tench",
            Self::Stockie => "kind-stockie",
            Self::Carp => "kind-carp",
            Self::Pike => "kind-pike",
        }
    }

    /// The weight that one is first assumed to have.
    pub fn guess(self) -> Weight {
        Weight::Drams(match self {
            Self::Silver => 64,
            Self::Roach => 96,
            Self::Perch => 128,
            Self::Skimmer => 192,
            Self::Bream | Self::Tench => 768,
            Self::Stockie => 384,
            Self::Carp => 1_280,
            Self::Pike => 1_536,
        })
    }
}

impl RuleTap {
    fn texts(&self) -> Vec<(&'static str, &str)> {
        match self {
            Self::Limit { net, .. } => vec![("net", net)],
            Self::Counting { class } | Self::Guess { class, .. } => vec![("class", class)],
            _ => Vec::new(),
        }
    }
}

impl MatchTap {
    /// Whether it types or steps a figure: such taps follow each other fast, and a step too many can be
    /// stepped back.
    pub fn steps(&self) -> bool {
        match self {
            Self::ScalesDigit { .. } | Self::ScalesUnit | Self::ScalesRubOut => true,
            Self::Rule { rule } => {
                matches!(
                    rule,
                    RuleTap::MoveAllIn { .. } | RuleTap::MoveAllOut { .. } | RuleTap::MoveClock { .. }
                )
            }
            _ => false,
        }
    }

    /// The texts in it with the field they are for.
    pub fn texts(&self) -> Vec<(&'static str, &str)> {
        match self {
            Self::Rule { rule } => rule.texts(),
            Self::ScalesNet { name } | Self::WeighedIn { net: name, .. } => vec![("net", name)],
            Self::Set { setup } => {
                let nets = setup.rules.nets.iter().map(|net| ("net", net.name.as_str()));
                nets.chain(setup.classes.iter().map(|class| ("class", class.name.as_str()))).collect()
            }
            _ => Vec::new(),
        }
    }
}
