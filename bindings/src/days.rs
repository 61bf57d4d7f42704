//! Day files and screens as JSON, with which the shells' tests and `./dev play` drive the app. The readers
//! and writers of every action and record are a megabyte that no angler uses, so a phone's library is built
//! without the feature `days`. The functions still exist, since the generated code refers to them by name,
//! and return an error that says why.

use crate::error::RestwaterError;
use restwater_app::{DayTap, ErrorKind, Screen};

#[cfg(feature = "days")]
pub(crate) fn read(text: &str) -> Result<Vec<DayTap>, RestwaterError> {
    restwater_app::read_day(text).map_err(|error| RestwaterError::plain(ErrorKind::BadFile, &error))
}

#[cfg(feature = "days")]
pub(crate) fn screen_json(screen: &Screen) -> Result<String, RestwaterError> {
    serde_json::to_string(screen).map_err(|error| RestwaterError::plain(ErrorKind::Internal, &error))
}

#[cfg(not(feature = "days"))]
pub(crate) fn read(_: &str) -> Result<Vec<DayTap>, RestwaterError> {
    Err(refused())
}

#[cfg(not(feature = "days"))]
pub(crate) fn screen_json(_: &Screen) -> Result<String, RestwaterError> {
    Err(refused())
}

#[cfg(not(feature = "days"))]
fn refused() -> RestwaterError {
    RestwaterError::plain(ErrorKind::BadInput, &NoDays)
}

#[cfg(not(feature = "days"))]
#[derive(Debug, thiserror::Error)]
#[error("This is a phone's library. Build it with the feature `days` to play day files.")]
struct NoDays;
