//! Settings that belong to the phone, not to the log: hand, scheme, the set-up last used.

use super::AppError;
use restwater_log::SessionSetup;
use restwater_screen::{PhoneChoices, Settings};
use restwater_store::Store;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

const SETTINGS: &str = "settings";
const PHONE: &str = "phone";
const DRAFT: &str = "setup";
const OTHER_PHONES: &str = "my_other_phones";

/// Hand and scheme as last chosen.
pub(super) fn load_settings(store: &Store) -> Result<Settings, AppError> {
    Ok(read(store, SETTINGS)?)
}

/// Stores them with the choices of the phone, all or nothing, since both contain the scheme.
pub(super) fn save_looks(store: &Store, settings: Settings, phone: PhoneChoices) -> Result<(), AppError> {
    let (settings, phone) = (text_of(&settings)?, text_of(&phone)?);
    Ok(store.set_settings(&[(SETTINGS, &settings), (PHONE, &phone)])?)
}

pub(super) fn load_phone(store: &Store) -> Result<PhoneChoices, AppError> {
    Ok(read(store, PHONE)?)
}

pub(super) fn save_phone(store: &Store, phone: PhoneChoices) -> Result<(), AppError> {
    write(store, PHONE, &phone)
}

/// The phones whose sessions are the angler's: this one, and those that the angler has claimed.
pub(super) fn load_mine(store: &Store) -> Result<Vec<Uuid>, AppError> {
    let others: Vec<Uuid> = read(store, OTHER_PHONES)?;
    let others = others.into_iter().filter(|phone| *phone != store.device());
    Ok(std::iter::once(store.device()).chain(others).collect())
}

/// One more phone is the angler's, whatever this one is.
pub(super) fn add_mine(store: &Store, phone: Uuid) -> Result<(), AppError> {
    let mut others: Vec<Uuid> = read(store, OTHER_PHONES)?;
    if !others.contains(&phone) {
        others.push(phone);
        write(store, OTHER_PHONES, &others)?;
    }
    Ok(())
}

/// Stores them without this phone, which the log knows.
pub(super) fn save_mine(store: &Store, mine: &[Uuid]) -> Result<(), AppError> {
    let others: Vec<&Uuid> = mine.iter().filter(|phone| **phone != store.device()).collect();
    write(store, OTHER_PHONES, &others)
}

/// The set-up as it was last chosen, for the next session.
pub(super) fn load_draft(store: &Store) -> Result<SessionSetup, AppError> {
    Ok(read(store, DRAFT)?)
}

pub(super) fn save_draft(store: &Store, draft: &SessionSetup) -> Result<(), AppError> {
    write(store, DRAFT, draft)
}

/// Stores the set-up together with the setting that names the session it is copied from, all or nothing.
pub(super) fn save_copied(store: &Store, draft: &SessionSetup, copy: (&str, &str)) -> Result<(), AppError> {
    Ok(store.set_settings(&[(DRAFT, &text_of(draft)?), copy])?)
}

/// A setting that can't be read (an older form) falls back to its default, since nothing important depends on
/// it.
pub(super) fn read<T: Default + for<'a> Deserialize<'a>>(
    store: &Store,
    key: &str,
) -> Result<T, restwater_store::StoreError> {
    Ok(store.setting(key)?.and_then(|text| serde_json::from_str(&text).ok()).unwrap_or_default())
}

pub(super) fn write<T: Serialize>(store: &Store, key: &str, value: &T) -> Result<(), AppError> {
    Ok(store.set_setting(key, &text_of(value)?)?)
}

pub(super) fn text_of<T: Serialize>(value: &T) -> Result<String, AppError> {
    Ok(serde_json::to_string(value).map_err(|e| restwater_log::CanonicalError::Unwritable(e.to_string()))?)
}
