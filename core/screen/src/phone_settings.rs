//! Settings of the phone that are not part of the log: hand, scheme, alarm, whether the screen stays on and
//! turns dark at dusk.

use super::Whose;
use super::feed_ways::{FEED_WAYS, FeedWay, feed_way};
use restwater_log::WeightUnit;
use serde::{Deserialize, Serialize};

/// Which thumb taps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Hand {
    /// The right one.
    #[default]
    Right,
    /// The left one: everything is mirrored.
    Left,
}

/// Dark on light or light on dark.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Scheme {
    /// Dark on light.
    #[default]
    Day,
    /// Light on dark.
    Night,
}

/// Hand and scheme.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Settings {
    /// Which thumb taps.
    pub hand: Hand,
    /// Dark on light or light on dark.
    pub scheme: Scheme,
}

/// When a cast that is out rings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum Alarm {
    /// Never.
    Off,
    /// At the end of "hold until".
    Hold,
    /// At "recast by".
    #[default]
    Recast,
    /// This many minutes after the splash.
    After(u16),
}

/// What belongs to the phone besides hand and scheme.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct PhoneChoices {
    /// When a cast that is out rings.
    pub alarm: Alarm,
    /// Whether the screen stays on.
    pub awake: bool,
    /// The unit in which fish are weighed if no match sets one.
    pub weights: WeightUnit,
    /// Whether the night scheme switches on at dusk, whichever scheme is chosen.
    pub night_at_dusk: bool,
    /// Whose earlier sessions the advice uses.
    pub whose: Whose,
    /// The assumed weights of measures of feed.
    pub feed: FeedGuesses,
}

/// The assumed weight of a measure for each of [`FEED_WAYS`], in mg. Each is a guess until the angler has
/// weighed one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct FeedGuesses([u32; FEED_WAYS.len()]);

impl Default for FeedGuesses {
    fn default() -> Self {
        Self(FEED_WAYS.map(|way| way.guess_mg))
    }
}

impl FeedGuesses {
    /// The assumed weight of one measure, in mg.
    pub fn of(&self, way: &FeedWay) -> u32 {
        feed_way(way.what, way.measure).and_then(|place| self.0.get(place)).copied().unwrap_or(way.guess_mg)
    }

    /// The same with another weight for the way at this index of [`FEED_WAYS`].
    #[must_use]
    pub fn with(mut self, place: usize, mg: u32) -> Self {
        if let Some(guess) = self.0.get_mut(place) {
            *guess = mg;
        }
        self
    }
}

impl Default for PhoneChoices {
    /// The screen stays on, since a cold thumb has trouble waking it and a wait is looked at from afar.
    fn default() -> Self {
        Self {
            alarm: Alarm::default(),
            awake: true,
            weights: WeightUnit::default(),
            night_at_dusk: false,
            whose: Whose::Me,
            feed: FeedGuesses::default(),
        }
    }
}
