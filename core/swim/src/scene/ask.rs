//! A shell's request for a picture: its canvas and what to draw.

use crate::cells::CellId;
use crate::error::{SwimError, positive};
use crate::frame::Spot;
use serde::{Deserialize, Serialize};

/// The thumb that taps. The picture of the water is the same for both; only the preferred places of labels
/// and the slant of the hatching differ.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Hand {
    /// Right thumb.
    #[default]
    Right,
    /// Left thumb.
    Left,
}

/// How much is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Detail {
    /// Everything: the Swim screen.
    #[default]
    Full,
    /// Outline, hatching, bites and the ring, without words: the fan on the Bank screen.
    Small,
}

/// The canvas and what to draw on it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct SceneAsk {
    /// Width, pixels.
    pub width_px: f64,
    /// Height, pixels.
    pub height_px: f64,
    /// Pixels per millimetre of the screen.
    pub px_per_mm: f64,
    /// The system's text scale: 1 is 100 %, 2 is 200 %.
    pub text_scale: f64,
    /// Which thumb.
    pub hand: Hand,
    /// How much is drawn.
    pub detail: Detail,
    /// The proposed next spot, ringed in accent.
    pub next: Option<CellId>,
    /// The spot in the proposed cell at which the ring is, if it isn't its middle.
    pub spot: Option<Spot>,
    /// The spot to stay at, if that is what is proposed: the ring is round it and says so.
    pub stay: Option<Spot>,
    /// The cell that taps and step keys have chosen, marked in ink if it is not the next one.
    pub chosen: Option<CellId>,
}

impl SceneAsk {
    /// A full scene for a canvas, nothing ringed.
    pub fn new(width_px: f64, height_px: f64, px_per_mm: f64, text_scale: f64) -> Result<Self, SwimError> {
        let ask = Self {
            width_px,
            height_px,
            px_per_mm,
            text_scale,
            hand: Hand::Right,
            detail: Detail::Full,
            next: None,
            spot: None,
            stay: None,
            chosen: None,
        };
        ask.check().map(|()| ask)
    }

    /// Refuses a canvas that can't hold a picture: sizes that are not numbers, or under 10 mm.
    pub fn check(&self) -> Result<(), SwimError> {
        positive("the text scale", self.text_scale)?;
        positive("the pixels per millimetre", self.px_per_mm)?;
        for (what, value) in [("a width", self.width_px), ("a height", self.height_px)] {
            let fits = value.is_finite() && value >= 10.0 * self.px_per_mm && value <= 20_000.0;
            if !fits {
                return Err(SwimError::NoRoomToDraw { what, value });
            }
        }
        Ok(())
    }

    /// The size of a design pixel (1/160 inch) in pixels.
    pub(crate) fn dp(&self) -> f64 {
        self.px_per_mm * 25.4 / 160.0
    }

    /// 1 for the right thumb, -1 for the left.
    pub(crate) fn side(&self) -> f64 {
        match self.hand {
            Hand::Right => 1.0,
            Hand::Left => -1.0,
        }
    }
}

/// The few words on the picture; defaults are English, the app passes its own.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SceneWords {
    /// After minutes: "12 min".
    pub minutes: String,
    /// After hours: "1 h 10".
    pub hours: String,
    /// Inside kept-back water: "KEPT".
    pub kept: String,
    /// Before the time kept back, in the key: "kept back 2 h 26".
    pub kept_back: String,
    /// At the ring of the next cast: "NEXT".
    pub next: String,
    /// At the ring of the spot to stay at: "STAY".
    pub stay: String,
    /// After a range: "30 m".
    pub unit: String,
    /// That unit in metres.
    pub unit_m: f64,
    /// Before the number of bites, in the key.
    pub bites: String,
    /// Before the number of lost fish, in the key.
    pub lost: String,
    /// Before the number of liners, in the key.
    pub liners: String,
    /// For fed water, in the key.
    pub fed: String,
    /// Before the number of times that fish showed themselves, in the key.
    pub shown: String,
    /// Between a label and its meaning, in the key: ": ".
    pub colon: String,
}

impl Default for SceneWords {
    fn default() -> Self {
        let s = str::to_owned;
        Self {
            minutes: s("min"),
            hours: s("h"),
            kept: s("KEPT"),
            kept_back: s("kept back"),
            next: s("NEXT"),
            stay: s("STAY"),
            unit: s("m"),
            unit_m: 1.0,
            bites: s("bites"),
            lost: s("lost"),
            liners: s("liners"),
            fed: s("fed"),
            shown: s("fish showed"),
            colon: s(": "),
        }
    }
}

impl SceneWords {
    /// "12 min", "1 h 10".
    pub(crate) fn time(&self, minutes: f64) -> String {
        let whole = minutes.max(0.0).floor() as u64;
        if whole < 60 {
            format!("{whole} {}", self.minutes)
        } else {
            format!("{} {} {:02}", whole / 60, self.hours, whole % 60)
        }
    }
}
