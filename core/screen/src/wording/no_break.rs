//! Where a line must not break inside a quantity or a name with its number.
//!
//! A shell asks for the finished text with its figures bound, [`unbroken`], before it draws it: a figure stays with its unit or with
//! what it counts, and a short word with a hyphen stays whole. What can't be told from the finished text is a sign after a figure, a word before a number that belongs to it,
//! and the second part of a weight; these are bound once for the messages of every language as they are read, and once where a
//! weight is put together.

use std::borrow::Cow;

/// The space, and the hyphen, at which a line doesn't break.
const NO_BREAK: char = '\u{a0}';
const NO_BREAK_HYPHEN: char = '\u{2011}';

/// Words that belong to the number after them, in any language. A name that is kept in the log, such as that of a net, isn't one:
/// it has to be found again as it was written.
const BEFORE_A_NUMBER: [&str; 7] = ["Peg", "peg", "size", "Platz", "Place", "place", "p"];

/// Names that a number belongs to, in any language: what follows the number is not counted by it, as in "Net 2 weighed in".
const NUMBERED: [&str; 19] = [
    "Net",
    "Rod",
    "Fish",
    "Spool",
    "Peg",
    "Left",
    "Right",
    "Across",
    "Netz",
    "Rute",
    "Fisch",
    "Spule",
    "Platz",
    "Gegenüber",
    "Bourriche",
    "Canne",
    "Poisson",
    "Bobine",
    "face",
];
/// The longest word that is kept with the figure before it. A longer one, such as a German compound, would force a key to smaller
/// letters.
const LONGEST_COUNTED: usize = 8;
/// The most letters on either side of a hyphen that is kept: "weigh-in", "turn-round".
const SHORT_PART: usize = 5;

/// The same text with no-break spaces between each figure and its unit, or the word it counts: "13 bites", "18 in", "15 °C"; and
/// with no-break hyphens within short words: "pop-up", "all-out".
pub fn unbroken(text: &str) -> Cow<'_, str> {
    let mut bound: Option<String> = None;
    let mut copied = 0;
    for (at, sign) in text.match_indices([' ', '-']) {
        let next = at + sign.len();
        let (before, after) = (&text[..at], &text[next..]);
        let kept = match sign {
            " " if is_counted(before, after) => NO_BREAK,
            "-" if is_short(before, after) => NO_BREAK_HYPHEN,
            _ => continue,
        };
        let all = bound.get_or_insert_with(|| String::with_capacity(text.len() + 8));
        all.push_str(&text[copied..at]);
        all.push(kept);
        copied = next;
    }
    match bound {
        None => Cow::Borrowed(text),
        Some(mut all) => {
            all.push_str(&text[copied..]);
            Cow::Owned(all)
        }
    }
}

/// Whether the letters on both sides of a hyphen are few: a line of large text gains nothing by ending between them.
fn is_short(before: &str, after: &str) -> bool {
    let short = |letters: usize| (1..=SHORT_PART).contains(&letters);
    short(before.chars().rev().take_while(|c| c.is_alphabetic()).count())
        && short(after.chars().take_while(|c| c.is_alphabetic()).count())
}

/// Whether the first word of `after` is a unit, or what the figure at the end of `before` counts.
fn is_counted(before: &str, after: &str) -> bool {
    let word = after.split(|c: char| !c.is_alphabetic() && c != '°').next().unwrap_or_default();
    let letters = word.chars().count();
    if letters == 0 || letters > LONGEST_COUNTED || !before.ends_with(|c: char| c.is_ascii_digit()) {
        return false;
    }
    let figure =
        before.rsplit(|c: char| c.is_whitespace() || matches!(c, '(' | '"')).next().unwrap_or_default();
    // A time, or a date: nothing is counted by it.
    let is_time = figure.contains([':', '/']) || figure.matches('-').count() > 1;
    let ahead = before[..before.len() - figure.len()].trim_end();
    let name = ahead.rsplit(|c: char| !c.is_alphabetic()).next().unwrap_or_default();
    let is_name = NUMBERED.contains(&name) && ahead.ends_with(name);
    !(is_time || is_name)
}

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

#[cfg(test)]
mod tests {
    use super::super::{Arg, Wording};
    use super::*;

    fn bound(text: &str) -> String {
        unbroken(text).replace(NO_BREAK, "_").replace(NO_BREAK_HYPHEN, "=")
    }

    #[test]
    fn a_figure_stays_with_its_unit_or_with_what_it_counts() {
        for (text, said) in [
            ("Gate, 38 yd (34.7 m), clipped up", "Gate, 38_yd (34.7_m), clipped up"),
            ("Water below 15 °C takes your breath.", "Water below 15_°C takes your breath."),
            ("With 13 bites it could be 9 or 51.", "With 13_bites it could be 9_or 51."),
            ("White: 8 bites in 14 casts, 217 min.", "White: 8_bites in 14_casts, 217_min."),
            ("13 Bisse in 18 Würfen", "13_Bisse in 18_Würfen"),
            ("Tout : 13 touches", "Tout : 13_touches"),
            ("40 Hakenvorfächer", "40 Hakenvorfächer"),
            (
                "At 15:30 the nets come out, on 2026-12-12 again.",
                "At 15:30 the nets come out, on 2026-12-12 again.",
            ),
            ("10 to 15 min, -3 °C", "10_to 15_min, -3_°C"),
            ("Pop-up height, landing after all-out", "Pop=up height, landing after all=out"),
            ("Pop-up-Montage, peut-être, close-season", "Pop=up-Montage, peut=être, close-season"),
            ("14", "14"),
            ("", ""),
        ] {
            assert_eq!(bound(text), said);
            assert_eq!(bound(&unbroken(text)), said, "bound twice");
        }
    }

    #[test]
    fn what_follows_a_name_with_its_number_is_not_counted_by_it() {
        for (tag, after) in [("en-GB", "weighed in"), ("de-DE", "gewogen"), ("fr-FR", "pesée")] {
            let words = Wording::shared(tag);
            let number = [("number", Arg::Text("2")), ("place", Arg::Text("2")), ("rod", Arg::Text("2"))];
            for id in ["match-net", "rod", "match-peg-across"] {
                let text = format!("{} {after}", words.say_with(id, &number));
                assert_eq!(bound(&text).matches('_').count(), text.matches(NO_BREAK).count(), "{tag} {text}");
            }
        }
    }
}
