//! What undo names: an entry in words and the time it was made.

use super::figures::clock;
use super::{Arg, Wording};
use crate::log::{Entry, Moment};

/// "bite 12:46".
pub(crate) fn entry_words(words: &Wording, entry: &Entry) -> String {
    let at = Moment {
        wall_ms: entry.wall_ms,
        offset_min: entry.offset_min,
        zone: String::new(),
        mono_ms: 0,
        boot: String::new(),
        approx_s: 0,
    };
    words.say_with(
        "entry",
        &[("what", Arg::Text(&kind_words(words, &entry.kind))), ("time", Arg::Text(&clock(&at)))],
    )
}

/// "bite".
pub(crate) fn kind_words(words: &Wording, kind: &str) -> String {
    let id = format!("entry-{kind}");
    words.say(if words.has(&id) { &id } else { "entry-other" })
}
