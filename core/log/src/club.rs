//! The start for advice that a club gives its anglers, in the form of the log. It is a choice of the phone that took it,
//! and no day: it stands in the angler's own kit.

use serde::{Deserialize, Serialize};

/// Which days weights were fitted to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "of", rename_all = "snake_case")]
pub enum ClubDays {
    /// All of them.
    All,
    /// Those on one water.
    Water {
        /// Its name.
        water: String,
    },
    /// Those of one month.
    Month {
        /// From 1 to 12.
        month: u8,
    },
    /// Those on which the water was so cold, in tenths of a degree Celsius.
    WaterTemperature {
        /// From here.
        from: i16,
        /// To below here.
        until: i16,
    },
}

/// What was fitted to some of a club's days.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ClubWeights {
    /// To which.
    #[serde(flatten)]
    pub days_of: ClubDays,
    /// Anglers who fished them.
    pub anglers: u32,
    /// How many they are.
    pub days: u32,
    /// The weight of each kind of shape in millionths, in the order of the version of the shapes.
    pub weights: Vec<u32>,
}

/// A club's start, as the file had it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ClubStart {
    /// The name of the club as typed; may be empty.
    pub name: String,
    /// Version of the shapes that the weights are for.
    pub shapes: u32,
    /// Anglers whose days it is made of.
    pub anglers: u32,
    /// Days.
    pub days: u32,
    /// Waters.
    pub waters: u32,
    /// The weights: those of all days, and those of some of them.
    pub fitted: Vec<ClubWeights>,
    /// SHA-256 of the file's record, in hexadecimal digits.
    pub sha256: String,
}
