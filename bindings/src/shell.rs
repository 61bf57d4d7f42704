//! Words for a shell that speaks for the phone's system.
//!
//! The core's own type, declared again for uniffi: the compiler refuses one that differs.

use restwater_screen::{ShellWords, Wording};

/// The words.
#[uniffi::remote(Record)]
pub struct ShellWords {
    /// The channel of the running wait.
    pub channel_wait: String,
    /// The channel of alarms.
    pub channel_alarm: String,
    /// Notifications are not allowed, so nothing can ring.
    pub no_notifications: String,
    /// Exact alarms are not allowed, so one may ring late.
    pub late_alarms: String,
    /// Access to a file or folder was taken away, or never given.
    pub file_not_allowed: String,
    /// The file or folder is no longer there.
    pub file_gone: String,
    /// There is no space left.
    pub file_no_space: String,
    /// Something else went wrong with it.
    pub file_failed: String,
    /// A file was handed on or saved.
    pub file_saved: String,
    /// The log is damaged: what the key for it does.
    pub salvage: String,
    /// This device has no receiver to ask for its position.
    pub no_receiver: String,
    /// The position may not be read.
    pub position_not_allowed: String,
    /// The receiver is switched off, or gave none in time.
    pub position_not_found: String,
}

/// What a shell says where it speaks for the phone's system.
#[uniffi::export]
#[must_use]
pub fn shell_words() -> ShellWords {
    ShellWords::of(&Wording::new())
}

/// What is said of a position that the phone gave, with the accuracy it stated for it in metres.
#[uniffi::export]
#[must_use]
pub fn position_words(accuracy_m: f64) -> String {
    restwater_screen::position_words(&Wording::new(), accuracy_m)
}
