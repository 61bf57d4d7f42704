//! The uniffi surface of the core: one long-lived object, long work off the caller's thread, and flattened
//! errors. The records derive uniffi in the crates that own them. There are no rules here.

mod days;
mod entropy;
mod error;
mod files;
mod object;
mod shell;

pub use error::RestwaterError;
pub use files::{Work, after_transfer, salvage};
pub use object::{
    Restwater, bank_layout, face_widths, key_action, key_grid, line_says, list_page, match_layout, pad_words,
    pager_words, palm_mm, read_day, row_place, sub_mm, swim_layout, swim_legend,
};
pub use shell::{position_words, shell_words};

uniffi::setup_scaffolding!("restwater");

/// Version of the core that the shell was loaded with, as `major.minor.patch`.
#[uniffi::export]
#[must_use]
pub fn core_version() -> String {
    env!("CARGO_PKG_VERSION").to_owned()
}
