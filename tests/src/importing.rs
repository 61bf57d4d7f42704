//! What the stores of tests need to take a file in.

use restwater_log::Moment;
use uuid::Uuid;

/// A moment of which only the wall time is of interest.
pub fn imported_at(wall_ms: i64) -> Moment {
    Moment { wall_ms, offset_min: 0, zone: String::new(), mono_ms: 0, boot: String::new(), approx_s: 0 }
}

/// For a log in which no import was taken back: an import needs ids only to say that it brings one back.
pub fn no_ids() -> Uuid {
    Uuid::nil()
}
