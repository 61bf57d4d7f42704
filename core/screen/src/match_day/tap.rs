//! What the keys of the Match screen do.

use restwater_log::WeightUnit;
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
    /// One of the choices of the rules; the first one begins the match.
    Choose {
        /// The row's field.
        field: String,
        /// The choice's value.
        value: String,
    },
    /// The organiser's signal was heard now: the two clocks are set against each other.
    Heard {
        /// Which signal.
        signal: Signal,
    },
    /// Another of the landed fish is meant.
    Fish {
        /// How many landings before the latest; 0 is the latest.
        back: u32,
    },
    /// The figure of the fish's weight goes up or down.
    Step {
        /// By so many drams or grams, the unit of the match.
        by: i64,
    },
    /// The figure is what the scales show.
    Weighed,
    /// The figure is a guess by eye.
    Guessed,
    /// The weight of the fish, figure and all.
    Weight {
        /// The unit.
        unit: WeightUnit,
        /// How many of it.
        count: i64,
        /// Whether it is a guess by eye.
        guessed: bool,
    },
    /// The fish is one of this size class.
    Class {
        /// Its name.
        name: String,
    },
    /// The fish went into this net, and so do the next ones.
    Net {
        /// Its name.
        name: String,
    },
    /// The fish went back into the water, or it did not.
    PutBack {
        /// Whether it went back.
        back: bool,
    },
    /// This net hangs on the scales.
    ScalesNet {
        /// Its name.
        name: String,
    },
    /// The figure of the scales goes up or down.
    ScalesStep {
        /// By so many drams or grams, the unit of the match.
        by: i64,
    },
    /// The figure is what the net weighed.
    WeighIn,
    /// What a net weighed, figure and all.
    WeighedIn {
        /// Name of the net.
        net: String,
        /// The unit.
        unit: WeightUnit,
        /// How many of it.
        count: i64,
    },
}

impl MatchTap {
    /// Whether it steps a figure: such taps follow each other fast, and a step too many is stepped back.
    pub fn steps(&self) -> bool {
        matches!(self, Self::Step { .. } | Self::ScalesStep { .. })
    }

    /// The texts in it with the field they are for.
    pub fn texts(&self) -> Vec<(&'static str, &str)> {
        match self {
            Self::Choose { value, .. } => vec![("value", value)],
            Self::Class { name } => vec![("class", name)],
            Self::Net { name } | Self::ScalesNet { name } | Self::WeighedIn { net: name, .. } => {
                vec![("net", name)]
            }
            Self::Set { setup } => {
                let nets = setup.rules.nets.iter().map(|net| ("net", net.name.as_str()));
                nets.chain(setup.classes.iter().map(|class| ("class", class.name.as_str()))).collect()
            }
            _ => Vec::new(),
        }
    }
}
