//! The uniffi surface of restwater-core: records in and out, one long-lived object, errors flattened.
//! No rule lives here.

mod entropy;
mod error;
mod files;
mod layout;
mod leaf;
mod learning;
mod match_day;
mod object;
mod peg_place;
mod scene;
mod screens;
mod shell;
mod taps;
mod watch;

pub use error::{Kind, RestwaterError};
pub use files::{Work, salvage};
pub use object::{
    DayTap, Restwater, bank_layout, key_action, match_layout, pad_words, palm_mm, read_day, swim_layout,
};
pub use shell::{position_words, shell_words};

use uuid::Uuid;

uniffi::setup_scaffolding!("restwater");

uniffi::custom_type!(Uuid, String, {
    remote,
    lower: |id| id.to_string(),
    try_lift: |text| Ok(Uuid::parse_str(&text)?),
});

/// Version of the core that the shell was loaded with, as `major.minor.patch`.
#[uniffi::export]
#[must_use]
pub fn core_version() -> String {
    env!("CARGO_PKG_VERSION").to_owned()
}
