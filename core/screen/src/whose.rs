//! Whose sessions count: the angler's, those imported from another angler, or both.

use serde::{Deserialize, Serialize};

/// Whose sessions count.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Whose {
    /// The angler's own, unless chosen otherwise.
    #[default]
    Me,
    /// Those of other anglers.
    Them,
    /// All of them.
    Both,
}

impl Whose {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 3] = [Self::Me, Self::Them, Self::Both];

    /// Whether a session counts, given whether it is the angler's own.
    pub fn takes(self, mine: bool) -> bool {
        match self {
            Self::Me => mine,
            Self::Them => !mine,
            Self::Both => true,
        }
    }

    pub(crate) fn tag(self) -> &'static str {
        match self {
            Self::Me => "me",
            Self::Them => "them",
            Self::Both => "both",
        }
    }
}
