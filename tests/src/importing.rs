//! What tests with a store need to import a file.

use restwater_log::Moment;
use uuid::Uuid;

/// A moment of which only the wall time matters.
pub fn imported_at(wall_ms: i64) -> Moment {
    Moment { wall_ms, offset_min: 0, zone: String::new(), mono_ms: 0, boot: String::new(), approx_s: 0 }
}

/// For a log in which no import was undone: an import needs ids only to record that it restores one.
pub fn no_ids() -> Uuid {
    Uuid::nil()
}
