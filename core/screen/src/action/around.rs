//! Taps of the smaller screens: Waits, Conditions, Cautions, Mend, Files, Phone.

use super::files::{FormChoice, Span};
use crate::{Alarm, Whose};
use restwater_caution::table::Region;
use restwater_compare::FactorValue;
use restwater_log::{EndSaid, FeedKind, FeedMeasure, WeightUnit};
use restwater_sky::conditions::{Answer, Question};
use serde::{Deserialize, Serialize};

/// Which casts count on the Waits screen, and how much time is left there.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "tap", rename_all = "snake_case", deny_unknown_fields)]
pub enum WaitsTap {
    /// The casts of one rod.
    Rod {
        /// Which; none takes all.
        rod: Option<u8>,
    },
    /// The casts to one spot.
    Spot {
        /// Which; none takes all.
        spot: Option<FactorValue>,
    },
    /// The casts with one bait.
    Bait {
        /// Which; none takes all.
        bait: Option<String>,
    },
    /// Whether earlier sessions count.
    TodayOnly {
        /// Whether they are left out.
        only: bool,
    },
    /// Whose earlier sessions the advice uses, here and on every other screen.
    Whose {
        /// Whose.
        whose: Whose,
    },
    /// How much time is left.
    TimeLeft {
        /// In minutes.
        minutes: u32,
    },
}

/// A key of the Conditions screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "tap", rename_all = "snake_case", deny_unknown_fields)]
pub enum ConditionsTap {
    /// The question is answered.
    Answer {
        /// How.
        answer: Answer,
    },
    /// The question is skipped.
    Skip {
        /// What.
        question: Question,
    },
    /// All questions are asked again.
    Again,
}

/// A choice or a key of the Cautions screen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "tap", rename_all = "snake_case", deny_unknown_fields)]
pub enum CautionsTap {
    /// Where the water lies.
    Region {
        /// Which.
        region: Region,
    },
    /// One caution was read at this peg.
    Seen {
        /// Its id in the table of cautions.
        caution: String,
    },
    /// All of them were.
    AllSeen,
}

/// One correction of a doubtful entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "tap", rename_all = "snake_case", deny_unknown_fields)]
pub enum MendTap {
    /// The entry is right.
    Confirm,
    /// What ended the cast.
    End {
        /// What.
        end: EndSaid,
    },
    /// How long after the splash that was.
    After {
        /// In minutes.
        minutes: u32,
    },
    /// It happened earlier than it was tapped.
    Back {
        /// By this many minutes.
        minutes: u32,
    },
    /// A cast in the gap before it was forgotten.
    AddCast,
    /// The angler was away from the rods in that gap.
    WasAway,
    /// The entry is removed. This is offered only for feed and sightings, on which no other entry depends.
    Remove,
}

/// A choice on the Files screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "tap", rename_all = "snake_case", deny_unknown_fields)]
pub enum FilesTap {
    /// Which sessions go out.
    Span {
        /// Which.
        span: Span,
    },
    /// What kind of file goes out.
    Form {
        /// Which.
        form: FormChoice,
    },
    /// Whether the position of the peg is included.
    Position {
        /// Whether it does.
        included: bool,
    },
    /// Whether texts that a spreadsheet would take for formulas stay as typed.
    Formulas {
        /// Whether they do.
        as_typed: bool,
    },
    /// Leaves the club: advice begins with the usual weights again.
    LeaveClub,
}

/// A choice on the Phone screen, besides hand and scheme.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "tap", rename_all = "snake_case", deny_unknown_fields)]
pub enum PhoneTap {
    /// When the alarm for a cast rings.
    Alarm {
        /// When.
        alarm: Alarm,
    },
    /// Whether the screen stays on.
    Awake {
        /// Whether it does.
        on: bool,
    },
    /// The unit in which fish are weighed if no match sets one.
    Weights {
        /// The unit.
        unit: WeightUnit,
    },
    /// The assumed weight of a measure of feed from now on.
    Feed {
        /// How it goes in.
        what: FeedKind,
        /// The measure.
        measure: FeedMeasure,
        /// In milligrams.
        mg: u32,
    },
    /// The day scheme, with the night scheme from dusk to dawn at the peg.
    NightAtDusk,
}

impl WaitsTap {
    pub(super) fn texts(&self) -> Vec<(&'static str, &str)> {
        match self {
            Self::Bait { bait: Some(bait) } => vec![("bait", bait)],
            Self::Spot { spot: Some(spot) } => spot.text().map(|text| ("spot", text)).into_iter().collect(),
            _ => Vec::new(),
        }
    }
}

impl CautionsTap {
    pub(super) fn texts(&self) -> Vec<(&'static str, &str)> {
        match self {
            Self::Seen { caution } => vec![("caution", caution)],
            _ => Vec::new(),
        }
    }
}
