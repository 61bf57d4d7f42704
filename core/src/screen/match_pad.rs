//! Where the keys of the Match screen lie, in millimetres of glass: below them BACK and a wide key, where the Bank
//! screen has MORE and CAST.
//!
//! Classes are the keys used while fishing: 20 mm each way, two beside each other. Entering a weight is done at the
//! mat or the scales: its keys are secondary ones and stand within the lower part wherever the glass is large enough.

use super::pad::{
    GAP_MM, Glass, GlassError, LOWER_PART, OPPOSITE_GAP_MM, PRIMARY_MM, PadAsk, Rect, SECONDARY_MM,
    bank_layout,
};
use super::{BankState, Key};
use serde::{Deserialize, Serialize};

/// Where the keys lie, in px.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct MatchLayout {
    /// BACK.
    pub back: Rect,
    /// The wide key beside it.
    pub wide: Rect,
    /// Three small keys above them, counted from the thumb.
    pub small: Vec<Rect>,
    /// Two or four large keys above BACK, counted from the thumb.
    pub classes: Vec<Rect>,
    /// Three small keys above those.
    pub above_classes: Vec<Rect>,
    /// Steps of a figure: three up, three down below them, from left to right.
    pub steps: Vec<Rect>,
    /// Three small keys above those, from left to right.
    pub above_steps: Vec<Rect>,
}

/// Height that words keep above the keys before a row of large keys goes, mm.
const WORDS_MM: f64 = 30.0;

/// Lays the keys out; a glass too small for the Bank screen is too small for this one.
pub fn match_layout(glass: &Glass) -> Result<MatchLayout, GlassError> {
    let bank = bank_layout(glass, PadAsk { state: BankState::Ready, rods: 1, page: 0 })?;
    let cast = bank.keys.iter().find(|place| place.key == Key::Cast).map(|place| place.rect);
    let (Some(back), Some(wide)) = (bank.more, cast) else { return Err(GlassError::NoSize) };
    let mm = glass.px_per_mm;
    let (gap, opposite) = (GAP_MM * mm, OPPOSITE_GAP_MM * mm);
    let (left, right) = (back.left.min(wide.left), back.right().max(wide.right()));
    let columns = Columns { left, width: right - left, gap, left_handed: glass.left_handed };
    let small = |bottom: f64| columns.row(3, bottom, SECONDARY_MM * mm);
    let foot = back.top - gap;
    let large = PRIMARY_MM * mm;
    let room = foot - glass.inset_top_px;
    let two_rows = room - 2.0 * (large + gap) - SECONDARY_MM * mm >= WORDS_MM * mm;
    let mut classes = columns.row(2, foot, large);
    if two_rows {
        // Counted from the thumb: the lower row is the nearer one.
        classes.extend(columns.row(2, foot - large - gap, large));
    }
    let class_rows = if two_rows { 2.0 } else { 1.0 };
    // What the lower part leaves for two rows of steps and the small row, but a step is never made too small.
    let lower = foot - (1.0 - LOWER_PART) * glass.height_px;
    let each = ((lower - opposite - gap - SECONDARY_MM * mm) / 2.0).clamp(SECONDARY_MM * mm, large);
    let plain = Columns { left_handed: true, ..columns };
    let mut steps = plain.row(3, foot - each - opposite, each);
    steps.extend(plain.row(3, foot, each));
    Ok(MatchLayout {
        back,
        wide,
        small: small(foot),
        classes,
        above_classes: small(foot - class_rows * (large + gap)),
        above_steps: plain.row(3, foot - 2.0 * each - opposite - gap, SECONDARY_MM * mm),
        steps,
    })
}

#[derive(Clone, Copy)]
struct Columns {
    left: f64,
    width: f64,
    gap: f64,
    left_handed: bool,
}

impl Columns {
    /// So many keys beside each other that stand on `bottom`, the one at the thumb first.
    fn row(self, count: usize, bottom: f64, height: f64) -> Vec<Rect> {
        let width = (self.width - (count - 1) as f64 * self.gap) / count as f64;
        let place = |i: usize| if self.left_handed { i } else { count - 1 - i };
        let at = |i: usize| Rect {
            left: self.left + place(i) as f64 * (width + self.gap),
            top: bottom - height,
            width,
            height,
        };
        (0..count).map(at).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::super::pad::phones::PHONES;
    use super::*;

    fn pages(l: &MatchLayout) -> Vec<(Vec<Rect>, Vec<Rect>)> {
        let with = |large: &[Rect], small: &[Rect]| (large.to_vec(), small.to_vec());
        vec![
            with(&[l.back, l.wide], &l.small),
            with(&[vec![l.back, l.wide], l.classes.clone()].concat(), &l.above_classes),
            with(&[l.back, l.wide], &[l.steps.clone(), l.above_steps.clone()].concat()),
        ]
    }

    #[test]
    fn keys_keep_their_size_and_their_gaps_on_every_glass_for_either_hand() {
        for phone in PHONES {
            for (scale, left) in [(1.0, false), (1.0, true), (2.0, false)] {
                let glass = phone.glass(scale, left);
                let layout = match_layout(&glass).unwrap();
                let mm = glass.px_per_mm;
                let hair = 1e-6 * mm;
                for (large, small) in pages(&layout) {
                    for r in &large {
                        assert!(
                            r.width >= PRIMARY_MM * mm - hair && r.height >= PRIMARY_MM * mm - hair,
                            "{r:?}"
                        );
                    }
                    for r in &small {
                        assert!(
                            r.width >= SECONDARY_MM * mm - hair && r.height >= SECONDARY_MM * mm - hair,
                            "{r:?}"
                        );
                    }
                    let all = [large, small].concat();
                    for (i, a) in all.iter().enumerate() {
                        assert!(a.left >= 0.0 && a.right() <= glass.width_px && a.top > glass.inset_top_px);
                        for b in &all[i + 1..] {
                            assert!(a.gap_to(b) >= GAP_MM * mm - hair, "{a:?} {b:?}");
                        }
                    }
                }
            }
        }
    }

    #[test]
    fn steps_up_and_down_stand_apart_as_opposites_do() {
        for phone in PHONES {
            let glass = phone.glass(1.0, false);
            let steps = match_layout(&glass).unwrap().steps;
            for (up, down) in steps[..3].iter().zip(&steps[3..]) {
                assert!(up.gap_to(down) >= OPPOSITE_GAP_MM * glass.px_per_mm - 1e-6);
                assert!(up.left == down.left && up.bottom() < down.top);
            }
        }
    }

    #[test]
    fn the_left_hand_has_the_mirror_image_but_figures_read_from_left_to_right() {
        let phone = &PHONES[7];
        let of = |left| match_layout(&phone.glass(1.0, left)).unwrap();
        let (right, left) = (of(false), of(true));
        let width = phone.glass(1.0, false).width_px;
        for (r, l) in right.classes.iter().zip(&left.classes).chain(right.small.iter().zip(&left.small)) {
            assert!((width - r.left - r.width - l.left).abs() < 1e-6);
        }
        assert_eq!(right.steps, left.steps);
        assert!(left.steps[0].left < left.steps[1].left);
    }
}
