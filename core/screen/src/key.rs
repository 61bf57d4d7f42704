//! A key, ready to draw.

use super::{Key, KeyTap};
use serde::{Deserialize, Serialize};

/// How a key is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum KeyWeight {
    /// Solid ink: most likely the next one.
    Solid,
    /// Outlined.
    Outline,
    /// What is chosen of several, or switched on: outlined, with a head of ink and a tick in it. Only the next key is solid.
    Chosen,
}

impl KeyWeight {
    /// Of a key that may be the one chosen.
    pub(crate) fn chosen(is: bool) -> Self {
        if is { Self::Chosen } else { Self::Outline }
    }
}

/// One key, ready to draw.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct KeyView {
    /// What it does.
    pub key: Key,
    /// Its word.
    pub label: String,
    /// A smaller line below.
    pub sub: Option<String>,
    /// What a screen reader says.
    pub spoken: String,
    /// Solid, outlined or chosen.
    pub weight: KeyWeight,
    /// Whether it can be tapped now.
    pub enabled: bool,
    /// What a tap on it does.
    pub tap: KeyTap,
}
