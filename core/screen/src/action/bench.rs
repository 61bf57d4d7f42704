//! Taps of the Bench.

use restwater_bench::hooklength::Hooklength;
use restwater_log::{LineMaterial, ShotMetal};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// A choice or a key of the Bench. Counts, lengths and weights are whole numbers of their unit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "tap", rename_all = "snake_case", deny_unknown_fields)]
pub enum BenchTap {
    /// The keys act on this hooklength.
    Kind {
        /// Which.
        hooklength: Hooklength,
    },
    /// Its length.
    Length {
        /// In tenths of a millimetre.
        tenth_mm: u32,
    },
    /// Its line.
    Diameter {
        /// In thousandths of a millimetre.
        um: u16,
    },
    /// Its hook.
    HookSize {
        /// The bigger the number the smaller the hook.
        size: u8,
    },
    /// Its hair.
    Hair {
        /// In millimetres, or `None` if it has no hair.
        mm: Option<u16>,
    },
    /// This many were tied.
    Tied {
        /// How many.
        count: u16,
    },
    /// This many are in the wallet.
    Counted {
        /// How many.
        count: u16,
    },
    /// This many were taken out of the wallet.
    TakenOut {
        /// How many.
        count: u16,
    },
    /// This many are to be carried.
    Wanted {
        /// How many.
        count: u16,
    },
    /// Some of them were cut down.
    CutDown {
        /// To this length, in tenths of a millimetre.
        tenth_mm: u32,
        /// How many.
        count: u16,
    },
    /// Everything was cut down as planned.
    CutAll,
    /// Everything was tied as planned.
    TieAll,
    /// Line of the spool to be added.
    SpoolDiameter {
        /// In thousandths of a millimetre.
        um: u16,
    },
    /// The length of line on it.
    SpoolLength {
        /// In tenths of a millimetre.
        tenth_mm: u32,
    },
    /// That spool is added to the bench.
    AddSpool,
    /// A spool is used up or gone.
    SpoolGone {
        /// Which.
        spool: Uuid,
    },
    /// Line that the knot at the hook takes.
    HookKnot {
        /// In tenths of a millimetre.
        tenth_mm: u32,
    },
    /// Line that the loop takes.
    LoopLength {
        /// In tenths of a millimetre.
        tenth_mm: u32,
    },
    /// Line that the tags take.
    Tags {
        /// In tenths of a millimetre.
        tenth_mm: u32,
    },
    /// The lift of the pop-up.
    Lift {
        /// In milligrams.
        mg: u32,
    },
    /// How long it was soaked when it was measured.
    Soaked {
        /// In minutes.
        minutes: u16,
    },
    /// The weight of the hook.
    HookWeight {
        /// In milligrams.
        mg: u32,
    },
    /// The height of the pop-up off the bottom.
    Height {
        /// In tenths of a millimetre.
        tenth_mm: u32,
    },
    /// The line below the pop-up.
    LineDiameter {
        /// In thousandths of a millimetre.
        um: u16,
    },
    /// What that line is made of.
    Line {
        /// The material.
        material: LineMaterial,
    },
    /// What the shot is made of.
    Metal {
        /// The metal.
        metal: ShotMetal,
    },
    /// Temperature of the water for the balance.
    Water {
        /// In tenths of a degree Celsius.
        tenth_c: i16,
    },
    /// The size of shot whose weight is entered.
    ShotSize {
        /// Its name.
        name: String,
    },
    /// The weight of one shot of that size.
    ShotWeight {
        /// In milligrams; 0 removes the size from the box.
        mg: u32,
    },
    /// The lead hit the water: a fall is timed.
    Splash,
    /// The line fell slack.
    Bottom,
    /// The fall just timed is used to calibrate the speed.
    Calibrate,
    /// The depth it was timed at.
    Plumbed {
        /// In centimetres.
        cm: u32,
    },
    /// A height is added to the ladder or removed from it.
    Rung {
        /// In tenths of a millimetre.
        tenth_mm: u32,
    },
    /// Which sessions the ladder counts.
    HeightsOf {
        /// All of them, or the one shown.
        all: bool,
    },
    /// The kit that is used.
    UseKit {
        /// Which.
        kit: Uuid,
    },
}

impl BenchTap {
    pub(super) fn texts(&self) -> Vec<(&'static str, &str)> {
        match self {
            Self::ShotSize { name } => vec![("size", name)],
            _ => Vec::new(),
        }
    }
}
