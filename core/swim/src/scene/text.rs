//! How wide a text is, near enough to keep labels apart.
//!
//! The core can't ask the phone's font, so it measures with a table of advance widths of a wide, bold
//! sans face (DejaVu Sans Bold, in thousandths of the text size). The faces phones set labels in are
//! narrower, so a label takes less room than is kept for it. Shells must not use a wider face.

/// Advance widths of the printable ASCII characters from the space on, thousandths of the size.
#[rustfmt::skip]
const ASCII: [u16; 95] = [
    349, 457, 521, 838, 696, 1002, 873, 307, 458, 458,
    523, 838, 380, 416, 380, 366, 696, 696, 696, 696,
    696, 696, 696, 696, 696, 696, 400, 400, 838, 838,
    838, 581, 1000, 774, 763, 734, 831, 684, 684, 821,
    837, 373, 373, 775, 638, 996, 837, 851, 733, 851,
    771, 721, 683, 813, 774, 1104, 771, 725, 726, 458,
    366, 458, 838, 500, 500, 675, 716, 593, 716, 679,
    436, 716, 712, 343, 343, 666, 343, 1042, 712, 688,
    716, 716, 494, 596, 479, 712, 652, 924, 646, 652,
    583, 712, 366, 712, 838,
];
/// For accented Latin letters and signs up to U+017F: more than the widest of them in the same face (1167).
const LATIN: u16 = 1200;
/// For everything else: full-width scripts are one em, and a fifth to spare.
const OTHER: u16 = 1200;

/// Width of a text in pixels at a size in pixels; never less than it will take.
pub(crate) fn width(text: &str, size: f64) -> f64 {
    let thousandths: u32 = text.chars().map(|c| u32::from(advance(c))).sum();
    f64::from(thousandths) / 1000.0 * size
}

fn advance(c: char) -> u16 {
    match u32::from(c) {
        n @ 32..=126 => ASCII[(n - 32) as usize],
        160..=383 => LATIN,
        _ => OTHER,
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
}
