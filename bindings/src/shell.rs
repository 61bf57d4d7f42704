//! The words that a shell shows for the phone's system.
//!
//! The core's own type, declared again for uniffi: the compiler refuses one that differs.

use restwater_screen::{ShellWords, Wording};

/// Words for what the phone's system shows: channels, permissions, files and the position, in the language that tags of BCP 47
/// ask for, as when the log is opened.
#[uniffi::export]
#[must_use]
pub fn shell_words(language: &str) -> ShellWords {
    ShellWords::of(Wording::shared(language))
}

/// A label with its value, as the language joins them: for rows that only the shell's system knows.
#[uniffi::export]
#[must_use]
pub fn labelled(label: &str, value: &str, language: &str) -> String {
    Wording::shared(language).labelled(label, value)
}

/// The sentences of a text: large text divides it between two of them.
#[uniffi::export]
#[must_use]
pub fn sentences_of(text: &str) -> Vec<String> {
    restwater_screen::sentences_of(text)
}

/// The clauses of a sentence that is higher than a page.
#[uniffi::export]
#[must_use]
pub fn clauses_of(text: &str) -> Vec<String> {
    restwater_screen::clauses_of(text)
}

/// A text as it is drawn: no line breaks between a figure and its unit or what it counts.
#[uniffi::export]
#[must_use]
pub fn unbroken(text: &str) -> String {
    restwater_screen::unbroken(text).into_owned()
}

/// What is said of a position that the phone gave, with the accuracy it stated for it in metres.
#[uniffi::export]
#[must_use]
pub fn position_words(accuracy_m: f64, language: &str) -> String {
    restwater_screen::position_words(Wording::shared(language), accuracy_m)
}
