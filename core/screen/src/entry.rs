//! Words for an entry that undo would undo, with its time.

use super::figures::clock_of;
use super::{Arg, Wording};
use restwater_log::Entry;

/// "bite 12:46".
pub fn entry_words(words: &Wording, entry: &Entry) -> String {
    let time = clock_of(entry.wall_ms, entry.offset_min);
    words.say_with(
        "entry",
        &[("what", Arg::Text(&kind_words(words, &entry.kind))), ("time", Arg::Text(&time))],
    )
}

/// "bite".
pub fn kind_words(words: &Wording, kind: &str) -> String {
    let id = format!("entry-{kind}");
    words.say(if words.has(&id) { &id } else { "entry-other" })
}
