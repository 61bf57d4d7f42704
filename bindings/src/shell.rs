//! The words that a shell shows for the phone's system.
//!
//! The core's own type, declared again for uniffi: the compiler refuses one that differs.

use restwater_screen::{ShellWords, Wording};

/// Words for what the phone's system shows: channels, permissions, files and the position.
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
