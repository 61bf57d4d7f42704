//! Taps of the set-up screen and of the tackle screen.

use restwater_bench::pack::Item;
use restwater_log::{LeadMaterial, Reach};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// A choice on the set-up screen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "tap", rename_all = "snake_case", deny_unknown_fields)]
pub enum SetupTap {
    /// How many rods.
    Rods {
        /// From 1.
        rods: u8,
    },
    /// Span of the distance sticks.
    Span {
        /// In tenths of a millimetre.
        tenth_mm: u32,
    },
    /// Depth of the water.
    Depth {
        /// In centimetres, or `None` if it isn't known.
        cm: Option<u32>,
    },
    /// How long the bait takes to settle, which is when the wait begins after the splash.
    Settle {
        /// In seconds.
        seconds: u32,
    },
    /// Whether a twitch restarts the wait.
    TwitchRestarts {
        /// Whether it does.
        restarts: bool,
    },
    /// One more digit of the peg's number.
    DrawDigit {
        /// 0 to 9.
        digit: u8,
    },
    /// The drawn number is cleared.
    ClearDraw,
    /// The set-up of the last session is copied.
    CopyLast,
    /// Nothing is copied.
    CopyNothing,
    /// An item of the pack list is marked as packed or not packed.
    Pack {
        /// Which.
        item: Item,
    },
}

/// One thing changed on a rod.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "tap", rename_all = "snake_case", deny_unknown_fields)]
pub enum TackleTap {
    /// How far out.
    Reach {
        /// In the unit it is counted in.
        reach: Reach,
    },
    /// In this direction.
    Bearing {
        /// Degrees clockwise from straight out, in hundredths.
        cdeg: i32,
    },
    /// At an aiming mark.
    Mark {
        /// Which.
        mark: Uuid,
    },
    /// Whether the line is in the clip.
    Clip {
        /// Whether it is.
        clipped: bool,
    },
    /// The bait.
    Bait {
        /// Its name.
        name: String,
    },
    /// The bait's colour.
    Colour {
        /// Its name.
        name: String,
    },
    /// Height of the pop-up.
    PopUp {
        /// In millimetres.
        mm: u32,
    },
    /// Length of the hooklength.
    Hooklength {
        /// In millimetres.
        mm: u32,
    },
    /// The hook.
    HookSize {
        /// Its size: the bigger the number the smaller the hook.
        size: u8,
    },
    /// Weight of the lead or feeder.
    Lead {
        /// In milligrams.
        mg: u32,
    },
    /// Whether it is a feeder, which feeds with each cast.
    Feeder {
        /// The assumed weight of a fill in milligrams; `None` for a plain lead.
        mg: Option<u32>,
    },
    /// What that weight is made of.
    Material {
        /// Lead or not.
        material: LeadMaterial,
    },
}

impl SetupTap {
    /// Whether it types a digit, which may be repeated fast.
    pub fn steps(&self) -> bool {
        matches!(self, Self::DrawDigit { .. })
    }

    pub(super) fn texts(&self) -> Vec<(&'static str, &str)> {
        match self {
            Self::Pack { item: Item::Shot(name) | Item::Leads(name) | Item::Bait(name) } => {
                vec![("item", name)]
            }
            _ => Vec::new(),
        }
    }
}

impl TackleTap {
    pub(super) fn texts(&self) -> Vec<(&'static str, &str)> {
        match self {
            Self::Bait { name } => vec![("bait", name)],
            Self::Colour { name } => vec![("colour", name)],
            _ => Vec::new(),
        }
    }
}
