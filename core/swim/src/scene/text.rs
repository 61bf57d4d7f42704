//! The width of a text in the app's typeface. It is the sum of its letters, since the cuts that ship have no
//! kerning and no ligatures (`core/face/README.md`), so a text is as wide on every phone as it is here.

use super::widths::{BOLD, CLOCKS, MEDIUM};
use serde::{Deserialize, Serialize};

/// Width of a character that the face doesn't have, in thousandths of the size: the phone's own face draws
/// it. Full-width scripts take one em; the rest is a reserve.
const OTHER: u16 = 1200;

/// Width of a text in pixels at a size in pixels, in the bold cut.
pub(crate) fn width(text: &str, size: f64) -> f64 {
    let thousandths: u32 = text.chars().map(|c| u32::from(advance(&BOLD, c))).sum();
    f64::from(thousandths) / 1000.0 * size
}

fn advance(cut: &[(u32, u16)], c: char) -> u16 {
    cut.binary_search_by_key(&u32::from(c), |known| known.0).map_or(OTHER, |at| cut[at].1)
}

/// Width of a character in both cuts, thousandths of the text size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct LetterWidth {
    /// The character as its code point.
    pub code: u32,
    /// In the medium cut.
    pub medium: u16,
    /// In the bold cut.
    pub bold: u16,
}

/// One of the cuts of the clock, of figures only.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ClockCut {
    /// Its width, per cent of the usual one; it is part of the file's name.
    pub percent: u32,
    /// Width of every digit, thousandths of the text size.
    pub digit: u16,
    /// Width of the colon.
    pub colon: u16,
}

/// The app's typeface in figures.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct FaceWidths {
    /// Every character that it has.
    pub letters: Vec<LetterWidth>,
    /// Width of any other character: the phone's own face draws it.
    pub other: u16,
    /// The cuts of the clock, the widest first.
    pub clocks: Vec<ClockCut>,
}

/// The widths of the letters of the app's typeface.
pub fn face_widths() -> FaceWidths {
    let letter = |(i, (code, medium)): (usize, &(u32, u16))| LetterWidth {
        code: *code,
        medium: *medium,
        bold: BOLD[i].1,
    };
    FaceWidths {
        letters: MEDIUM.iter().enumerate().map(letter).collect(),
        other: OTHER,
        clocks: CLOCKS.iter().map(|&(percent, digit, colon)| ClockCut { percent, digit, colon }).collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn widths_add_up() {
        assert_eq!(width("", 14.0), 0.0);
        assert!((width("12 min", 10.0) - (width("12", 10.0) + width(" min", 10.0))).abs() < 1e-9);
        assert_eq!(width("\u{6c60}", 10.0), 12.0);
        assert!(width("W", 10.0) > width("i", 10.0));
    }

    #[test]
    fn both_cuts_have_the_same_letters_in_order_and_digits_of_one_width() {
        assert!(MEDIUM.iter().zip(&BOLD).all(|(a, b)| a.0 == b.0));
        assert!(BOLD.windows(2).all(|w| w[0].0 < w[1].0));
        for cut in [&MEDIUM[..], &BOLD[..]] {
            assert!("0123456789".chars().all(|d| advance(cut, d) == advance(cut, '0')));
            // English, German and French.
            assert!("AZaz\u{e4}\u{f6}\u{fc}\u{df}\u{c4}\u{d6}\u{dc}\u{e9}\u{e8}\u{ea}\u{eb}\u{e7}\u{f4}\u{f9}\u{0153}\u{b0}\u{d7}\u{2212}"
                .chars()
                .all(|c| advance(cut, c) < OTHER));
        }
        assert!(CLOCKS.windows(2).all(|w| w[0].1 > w[1].1), "the widest first");
    }
}
