//! Taps in the Book.

use crate::Whose;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// A choice or a key of the Book.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "tap", rename_all = "snake_case", deny_unknown_fields)]
pub enum BookTap {
    /// A session is opened to read.
    Open {
        /// Which.
        session: Uuid,
    },
    /// It is closed again.
    Close,
    /// Which sessions count.
    Filter {
        /// In which set.
        set: BookSet,
        /// One condition they have to meet.
        by: FilterTap,
    },
    /// Latitude of the place for which the light is computed.
    Latitude {
        /// In 1e-7 degrees.
        e7: i64,
    },
    /// Longitude of that place.
    Longitude {
        /// In 1e-7 degrees.
        e7: i64,
    },
    /// The place becomes the position of the open session's peg.
    KeepPlace,
    /// The phone that began the session opened is, or is not, another phone of the same angler.
    PhoneIsMine {
        /// Whether it is.
        mine: bool,
    },
    /// END of the session opened, which another phone of the angler's left open.
    End,
}

/// One of the sets of sessions that are chosen in the Book.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum BookSet {
    /// The sessions that are shown.
    Shown,
    /// The first set of the comparison.
    A,
    /// The second.
    B,
}

/// One condition a session has to meet to count.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "on", rename_all = "snake_case", deny_unknown_fields)]
pub enum FilterTap {
    /// Whose they are.
    Whose {
        /// Whose.
        whose: Whose,
    },
    /// The water.
    Water {
        /// Which.
        water: WaterChoice,
    },
    /// The months.
    Season {
        /// Which; none takes all.
        season: Option<Season>,
    },
    /// How cold the water was.
    Temperature {
        /// Which; none takes all.
        temperature: Option<Temperature>,
    },
}

/// Which waters count.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum WaterChoice {
    /// All of them.
    #[default]
    Any,
    /// Those without a name.
    Unnamed,
    /// The one of this name.
    Named {
        /// The name.
        name: String,
    },
}

impl BookTap {
    pub(super) fn texts(&self) -> Vec<(&'static str, &str)> {
        match self {
            Self::Filter { by: FilterTap::Water { water: WaterChoice::Named { name } }, .. } => {
                vec![("water", name)]
            }
            _ => Vec::new(),
        }
    }
}

/// Three months, by the local date a session began on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum Season {
    /// December to February.
    DecToFeb,
    /// March to May.
    MarToMay,
    /// June to August.
    JunToAug,
    /// September to November.
    SepToNov,
}

/// How cold the water was, as last logged.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum Temperature {
    /// Below 4 °C, where water is densest.
    Below4,
    /// 4 to below 7 °C.
    From4,
    /// 7 to below 10 °C.
    From7,
    /// 10 to below 15 °C.
    From10,
    /// 15 °C and above.
    From15,
    /// Not logged.
    NotLogged,
}
