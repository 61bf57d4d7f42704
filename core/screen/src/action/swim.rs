//! Taps of the Swim screen.

use restwater_log::{FeedKind, FeedMeasure, FishSign};
use restwater_swim::{CellId, FeatureKind};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// A choice on the Swim screen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "tap", rename_all = "snake_case", deny_unknown_fields)]
pub enum SwimTap {
    /// A cell is aimed at.
    Cell {
        /// Which.
        cell: CellId,
    },
    /// The keys that move the aim from cell to cell.
    Steps {
        /// Whether they are shown or hidden.
        open: bool,
    },
    /// How long water is left to rest.
    RestTarget {
        /// In minutes.
        minutes: u32,
    },
    /// The next peg to the left.
    LeftPeg {
        /// Its distance in centimetres, or `None` if nobody is there.
        cm: Option<u32>,
    },
    /// The next peg to the right.
    RightPeg {
        /// Its distance in centimetres, or `None` if nobody is there.
        cm: Option<u32>,
    },
    /// The far bank.
    FarBank {
        /// Its distance in centimetres, or `None` if it isn't known.
        cm: Option<u32>,
    },
    /// Whether somebody fishes from the far bank.
    FarBankPegged {
        /// Whether they do.
        pegged: bool,
    },
    /// Width of a band.
    Band {
        /// In centimetres; `None` for the usual width.
        cm: Option<u32>,
    },
    /// There is a feature at the aim.
    Feature {
        /// Of which kind.
        feature: FeatureKind,
    },
    /// There is a hazard at the aim.
    Hazard {
        /// Of which kind.
        hazard: HazardKind,
    },
    /// Fish showed at the cell that is aimed at.
    Seen {
        /// How.
        sign: FishSign,
    },
    /// The chosen number of this measure is fed to the cell that is aimed at.
    Feed {
        /// How it goes in.
        what: FeedKind,
        /// The measure.
        measure: FeedMeasure,
    },
    /// A mark, feature or hazard gets the name that was typed.
    Rename {
        /// Which.
        id: Uuid,
    },
    /// Something that was set earlier is removed.
    Remove {
        /// What.
        thing: SwimThing,
    },
}

/// Something on the swim that can be removed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum SwimThing {
    /// A mark, a feature or a hazard.
    Set {
        /// The entry that set it.
        id: Uuid,
    },
    /// The outline of the water.
    Outline,
}

/// A kind of hazard.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum HazardKind {
    /// Something to get snagged on.
    Snag,
    /// A line in the water.
    Line,
    /// A branch.
    Branch,
    /// A rope.
    Rope,
    /// Shallow water.
    Shallow,
}

impl HazardKind {
    /// All.
    pub const ALL: [Self; 5] = [Self::Snag, Self::Line, Self::Branch, Self::Rope, Self::Shallow];

    /// The message that names it.
    pub fn id(self) -> &'static str {
        match self {
            Self::Snag => "hazard-snag",
            Self::Line => "hazard-line",
            Self::Branch => "hazard-branch",
            Self::Rope => "hazard-rope",
            Self::Shallow => "hazard-shallow",
        }
    }
}
