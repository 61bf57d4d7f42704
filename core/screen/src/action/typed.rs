//! What can be typed by hand, and with which keyboard. Nothing has to be typed while fishing.

use crate::Wording;
use restwater_log::RodNumber;
use serde::{Deserialize, Serialize};

/// The target of a typed text, which decides what kind of text it is. The app parses each kind in one place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum TypedInto {
    /// The water of the set-up.
    Water,
    /// Its peg.
    Peg,
    /// The water of a session that has begun, which was wrong.
    SessionWater,
    /// The peg of one.
    SessionPeg,
    /// The depth of the set-up, a length.
    Depth,
    /// A name for the next mark, feature or hazard, or for an old one.
    SwimName,
    /// Latitude of the peg.
    PegLatitude,
    /// Its longitude.
    PegLongitude,
    /// The bearing of straight out.
    PegBearing,
    /// A bait that is not on the list.
    Bait {
        /// Which rod.
        rod: RodNumber,
    },
    /// A colour that is not on the list.
    Colour {
        /// Which rod.
        rod: RodNumber,
    },
    /// Height of the pop-up, a length.
    PopUp {
        /// Which rod.
        rod: RodNumber,
    },
    /// The hooklength, a length.
    Hooklength {
        /// Which rod.
        rod: RodNumber,
    },
    /// The lead or feeder, a weight.
    Lead {
        /// Which rod.
        rod: RodNumber,
    },
    /// A note on the session.
    Note,
    /// What to do next time.
    Plan,
    /// The match rule on fish that die or go back.
    MatchRule,
    /// A peg hoped for, and what to do there.
    PlanPeg,
    /// The mark to start at.
    PlanMark,
    /// When to move into kept-back water: a time of day, or minutes after all-in.
    PlanMove,
}

/// The keyboard that a typed line opens with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum Keyboard {
    /// Letters, for a name.
    Name,
    /// Letters, for sentences.
    Text,
    /// Figures and a unit.
    Figure,
    /// Degrees.
    Degrees,
}

impl TypedInto {
    /// The keyboard it is typed with.
    pub fn keyboard(self) -> Keyboard {
        match self {
            Self::Water
            | Self::Peg
            | Self::SessionWater
            | Self::SessionPeg
            | Self::SwimName
            | Self::Bait { .. }
            | Self::Colour { .. }
            | Self::PlanMark => Keyboard::Name,
            Self::Note | Self::Plan | Self::MatchRule | Self::PlanPeg | Self::PlanMove => Keyboard::Text,
            Self::Depth | Self::PopUp { .. } | Self::Hooklength { .. } | Self::Lead { .. } => {
                Keyboard::Figure
            }
            Self::PegLatitude | Self::PegLongitude | Self::PegBearing => Keyboard::Degrees,
        }
    }
}

/// A line to type into. The shell passes its target back with the text.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct TypedField {
    /// A name for tests.
    pub tag: String,
    /// What it is called.
    pub label: String,
    /// Its present text.
    pub value: String,
    /// The word on the key that sends the text; empty if each change is sent at once.
    pub send: String,
    /// The same with what it sends, for a screen reader.
    pub send_spoken: String,
    /// What it is typed into.
    pub into: TypedInto,
    /// The keyboard it opens with.
    pub keyboard: Keyboard,
}

impl TypedField {
    /// A line whose changes are sent at once.
    pub(crate) fn new(tag: &str, label: String, value: String, into: TypedInto) -> Self {
        let (send, send_spoken) = (String::new(), String::new());
        Self { tag: tag.into(), label, value, send, send_spoken, into, keyboard: into.keyboard() }
    }

    /// An empty line whose text is sent by its key.
    pub(crate) fn sent(words: &Wording, tag: &str, label: String, into: TypedInto) -> Self {
        Self { send: words.say("type-send"), ..Self::new(tag, label, String::new(), into) }
    }
}
