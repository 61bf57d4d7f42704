//! Records of the lock screen, of alarms and of the Phone screen.
//!
//! Each is the core's own type, declared again for uniffi: the compiler refuses one that differs.

use restwater_screen::{ChoiceRow, Key, PhoneView, WatchAlarm, WatchKey, WatchView};

/// A key on the lock screen.
#[uniffi::remote(Record)]
pub struct WatchKey {
    /// What it does.
    pub key: Key,
    /// Its word.
    pub label: String,
}

/// Something that is to ring.
#[uniffi::remote(Record)]
pub struct WatchAlarm {
    /// The same for the same cast, or for the same minute of the match: a later answer replaces it.
    pub id: String,
    /// When, by the phone's wall clock, ms since 1970 UTC.
    pub at_wall_ms: i64,
    /// What it says first.
    pub title: String,
    /// What it says below.
    pub text: String,
}

/// What a lock screen shows and when the phone rings.
#[uniffi::remote(Record)]
pub struct WatchView {
    /// Whether a session is open; without one nothing is shown and nothing rings.
    pub open: bool,
    /// Whether the screen is to stay on.
    pub keep_awake: bool,
    /// The rod the keys act on.
    pub rod: u8,
    /// What that rod is doing, in words.
    pub title: String,
    /// What the record says of it.
    pub text: String,
    /// From when a clock counts up; none where there is nothing to count.
    pub since_wall_ms: Option<i64>,
    /// At most three keys.
    pub keys: Vec<WatchKey>,
    /// What is to ring, soonest first.
    pub alarms: Vec<WatchAlarm>,
}

/// The Phone screen: what belongs to this phone and not to the log.
#[uniffi::remote(Record)]
pub struct PhoneView {
    /// What it is about.
    pub title: String,
    /// Alarm, screen, hand, scheme.
    pub rows: Vec<ChoiceRow>,
}
