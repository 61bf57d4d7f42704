//! What belongs to the phone, not to the log: hand, scheme, the set-up last used.

use super::{AppError, PhoneChoices};
use crate::log::SessionSetup;
use crate::store::Store;
use serde::{Deserialize, Serialize};

/// Which thumb taps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Hand {
    /// The right one.
    #[default]
    Right,
    /// The left one: everything is mirrored.
    Left,
}

/// Ink on paper or chalk on ink.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Scheme {
    /// Ink on paper.
    #[default]
    Day,
    /// Chalk on ink.
    Night,
}

/// Hand and scheme.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Settings {
    /// Which thumb taps.
    pub hand: Hand,
    /// Ink on paper or chalk on ink.
    pub scheme: Scheme,
}

const SETTINGS: &str = "settings";
const PHONE: &str = "phone";
const DRAFT: &str = "setup";

impl Settings {
    pub(super) fn load(store: &Store) -> Result<Self, AppError> {
        Ok(read(store, SETTINGS)?)
    }

    pub(super) fn save(self, store: &mut Store) -> Result<(), AppError> {
        write(store, SETTINGS, &self)
    }
}

pub(super) fn load_phone(store: &Store) -> Result<PhoneChoices, AppError> {
    Ok(read(store, PHONE)?)
}

pub(super) fn save_phone(store: &mut Store, phone: PhoneChoices) -> Result<(), AppError> {
    write(store, PHONE, &phone)
}

/// The set-up as it was last chosen, for the next session.
pub(super) fn load_draft(store: &Store) -> Result<SessionSetup, AppError> {
    Ok(read(store, DRAFT)?)
}

pub(super) fn save_draft(store: &mut Store, draft: &SessionSetup) -> Result<(), AppError> {
    write(store, DRAFT, draft)
}

/// A setting that can't be read (an older form) falls back to its default: nothing hangs on it.
pub(super) fn read<T: Default + for<'a> Deserialize<'a>>(
    store: &Store,
    key: &str,
) -> Result<T, crate::store::StoreError> {
    Ok(store.setting(key)?.and_then(|text| serde_json::from_str(&text).ok()).unwrap_or_default())
}

pub(super) fn write<T: Serialize>(store: &mut Store, key: &str, value: &T) -> Result<(), AppError> {
    let text =
        serde_json::to_string(value).map_err(|e| crate::log::CanonicalError::Unwritable(e.to_string()))?;
    Ok(store.set_setting(key, &text)?)
}
