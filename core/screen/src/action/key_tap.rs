//! What the shell has to do when a key is tapped, and the taps of the Bank's keys.

use super::{Action, FishTap, Key, Which};
use restwater_log::RodNumber;
use serde::{Deserialize, Serialize};

/// What the shell has to do when a key is tapped.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum KeyTap {
    /// To send this action.
    Send {
        /// The action.
        action: Action,
    },
    /// To open a screen.
    Open {
        /// Which.
        which: Which,
    },
    /// To turn to another leaf of the same screen.
    Leaf {
        /// Its id.
        id: String,
    },
    /// To pass a text on to another app.
    Share {
        /// The text.
        text: String,
    },
    /// To ask the phone's receiver for its position.
    AskReceiver,
}

impl KeyTap {
    /// The action that it sends, if any.
    pub fn action(&self) -> Option<&Action> {
        match self {
            Self::Send { action } => Some(action),
            _ => None,
        }
    }
}

impl From<Action> for KeyTap {
    fn from(action: Action) -> Self {
        Self::Send { action }
    }
}

impl Action {
    /// What a key of the Bank does for a rod.
    pub fn of_key(key: Key, rod: RodNumber) -> KeyTap {
        KeyTap::from(match key {
            Key::Tackle => return KeyTap::Open { which: Which::Tackle },
            Key::Swim => return KeyTap::Open { which: Which::Swim },
            Key::FishClass | Key::Fish => return KeyTap::Open { which: Which::Fish },
            Key::Weigh => return KeyTap::Open { which: Which::Weight },
            Key::PutBack => Self::Fish { cast: None, tap: FishTap::PutBack { back: true } },
            Key::Feed | Key::FeedOther => return KeyTap::Open { which: Which::Feed },
            Key::Seen | Key::NeighbourLeft | Key::NeighbourRight | Key::NeighbourAcross => {
                return KeyTap::Open { which: Which::Seen };
            }
            Key::Start => return KeyTap::Open { which: Which::Setup },
            Key::Cast => Self::Cast { rod },
            Key::Bite => Self::Bite { rod },
            Key::WoundIn => Self::WoundIn { rod },
            Key::Liner => Self::Liner { rod },
            Key::Landed | Key::LandedLate => Self::Landed { rod, fish: None },
            Key::Lost | Key::LostLate => Self::Lost { rod },
            Key::Missed => Self::Missed { rod },
            Key::TimeBack => Self::TimeBack { minutes: 1 },
            Key::TimeBackFive => Self::TimeBack { minutes: 5 },
            Key::Undo => Self::Undo,
            Key::Redo => Self::Redo,
            Key::Twitch => Self::Twitch { rod },
            Key::Indication => Self::Indication { rod },
            Key::Away => Self::Away,
            Key::End => Self::EndSession,
        })
    }
}
