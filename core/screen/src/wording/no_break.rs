//! Where a line must not break inside a quantity or a name with its number.
//!
//! Both shells keep a figure and the short word after it on one line, usually its unit: they see only the finished text. What they
//! can't tell there is a sign after a figure, a word before a number that belongs to it, and the second part of a weight; these
//! are bound here, once for the messages of every language as they are read, and once where a weight is put together.

/// The space at which a line doesn't break.
const NO_BREAK: char = '\u{a0}';

/// Words that belong to the number after them, in any language. A name that is kept in the log, such as that of a net, isn't one:
/// it has to be found again as it was written.
const BEFORE_A_NUMBER: [&str; 7] = ["Peg", "peg", "size", "Platz", "Place", "place", "p"];

/// The messages of a file as they are read.
pub(super) fn messages(text: &str) -> String {
    let mut bound = String::with_capacity(text.len() + 256);
    let mut copied = 0;
    for (at, space) in text.match_indices(' ') {
        let next = at + space.len();
        // Few spaces are before such a sign, and all messages of a language are read at each start.
        let Some(b'%' | b'{' | b'0'..=b'9') = text.as_bytes().get(next) else { continue };
        let (before, after) = (&text[..at], &text[next..]);
        if sign_follows(before, after) || number_follows(before, after) {
            bound.push_str(&text[copied..at]);
            bound.push(NO_BREAK);
            copied = next;
        }
    }
    bound.push_str(&text[copied..]);
    bound
}

/// "95 %"
fn sign_follows(before: &str, after: &str) -> bool {
    after.starts_with('%') && before.ends_with(|c: char| c == '}' || c.is_ascii_digit())
}

/// "Peg 14", "size { $size }"
fn number_follows(before: &str, after: &str) -> bool {
    let word = before.rsplit([' ', '\n', '(', '"']).next().unwrap_or_default();
    after.starts_with(|c: char| c == '{' || c.is_ascii_digit()) && BEFORE_A_NUMBER.contains(&word)
}

/// The parts of one quantity, "6 lb" and "12 oz".
pub(crate) fn quantity(parts: &[String]) -> String {
    parts.join("\u{a0}")
}
