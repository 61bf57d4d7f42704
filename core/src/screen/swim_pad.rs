//! Where the Swim screen's things lie: the fan above, keys for steps and the next cast below, in millimetres.

use super::pad::{GAP_MM, Glass, PRIMARY_MM, Rect, SECONDARY_MM};
use super::swim::SwimKey;
use serde::{Deserialize, Serialize};

/// A key of the Swim screen and its place.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct SwimKeyPlace {
    /// Which.
    pub key: SwimKey,
    /// Where, in px.
    pub rect: Rect,
}

/// Where the Swim screen's things lie, in px.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SwimLayout {
    /// Title and area.
    pub head: Rect,
    /// The fan.
    pub canvas: Rect,
    /// Where next and its reasons.
    pub words: Rect,
    /// Keys that stand always.
    pub keys: Vec<SwimKeyPlace>,
    /// Further keys and rows are behind this one.
    pub more: Rect,
    /// Back to the Bank.
    pub back: Rect,
}

/// Space between the edge of the glass and what stands on it, mm.
const EDGE_MM: f64 = 2.0;
/// Height of the title, mm, at plain text.
const HEAD_MM: f64 = 7.0;
/// Height of headline and reasons, mm, at plain text.
const WORDS_MM: f64 = 14.5;
/// A fan lower than this stands beside the words instead of above them, mm.
const CANVAS_MM: f64 = 35.0;
/// Share of the width that words beside the fan have.
const SIDE_WORDS: f64 = 0.42;

/// Lays the Swim screen out. The keys keep their size on any glass; fan and words share what is left.
pub fn swim_layout(glass: &Glass) -> SwimLayout {
    let mm = glass.px_per_mm;
    let (top, bottom) =
        (glass.inset_top_px + EDGE_MM * mm, glass.height_px - glass.inset_bottom_px - EDGE_MM * mm);
    let (left, width) = (EDGE_MM * mm, glass.width_px - 2.0 * EDGE_MM * mm);
    let column = (width - 2.0 * GAP_MM * mm) / 3.0;
    let (small, large, gap) = (SECONDARY_MM * mm, PRIMARY_MM * mm, GAP_MM * mm);
    let rows = [bottom - large - 2.0 * (small + gap), bottom - large - small - gap, bottom - large];
    // Columns count from the thumb's side, so that the left hand has the mirror image.
    let x = |place: usize| {
        let from_left = if glass.left_handed { place } else { 2 - place };
        left + from_left as f64 * (column + gap)
    };
    let cell =
        |row: usize, place: usize| Rect { left: x(place), top: rows[row], width: column, height: small };
    // LEFT and RIGHT never change sides: they say where the ring goes.
    let side = |row: usize, from_left: f64| Rect {
        left: left + from_left * (column + gap),
        top: rows[row],
        width: column,
        height: small,
    };
    let wide_left = if glass.left_handed { left } else { left + column + gap };
    let wide = Rect { left: wide_left, top: rows[2], width: 2.0 * column + gap, height: large };
    let place = |key, rect| SwimKeyPlace { key, rect };
    let keys = vec![
        place(SwimKey::StepLeft, side(0, 0.0)),
        place(SwimKey::StepOut, side(0, 1.0)),
        place(SwimKey::StepRight, side(0, 2.0)),
        place(SwimKey::StepIn, side(1, 1.0)),
        place(SwimKey::Keep, cell(1, 0)),
        place(SwimKey::CastHere, wide),
    ];
    let back = Rect { left: x(2), top: rows[2], width: column, height: large };
    let head = Rect { left, top, width, height: HEAD_MM * mm * text_growth(glass) };
    let top = head.top + head.height;
    let (canvas, words) = picture_and_words(glass, Rect { left, top, width, height: rows[0] - gap - top });
    SwimLayout { head, canvas, words, keys, more: cell(1, 2), back }
}

/// The fan above the words; on a low glass beside them, on the thumb's side, so that each has the whole height.
fn picture_and_words(glass: &Glass, free: Rect) -> (Rect, Rect) {
    let mm = glass.px_per_mm;
    let words_height = WORDS_MM * mm * text_growth(glass);
    let height = free.height - words_height;
    if height >= CANVAS_MM * mm {
        let words = Rect { top: free.top + height, height: words_height, ..free };
        return (Rect { height, ..free }, words);
    }
    let width = SIDE_WORDS * free.width;
    let picture = free.width - width - mm;
    let (left_of_words, left_of_picture) = if glass.left_handed {
        (free.left + picture + mm, free.left)
    } else {
        (free.left, free.left + width + mm)
    };
    (Rect { left: left_of_picture, width: picture, ..free }, Rect { left: left_of_words, width, ..free })
}

/// Words grow with the text, within reason: the fan needs its room.
fn text_growth(glass: &Glass) -> f64 {
    glass.text_scale.clamp(1.0, 1.4)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Common glasses, mm: 4.7 in, 5 in, 6.1 in, 6.7 in (public spec sheets, from memory).
    const GLASSES: [(f64, f64); 4] = [(58.4, 103.8), (62.1, 110.4), (64.6, 139.8), (71.0, 154.0)];

    fn layout(width: f64, height: f64, text_scale: f64, left_handed: bool) -> SwimLayout {
        let px = 16.0;
        swim_layout(&Glass {
            width_px: width * px,
            height_px: height * px,
            px_per_mm: px,
            text_scale,
            left_handed,
            inset_top_px: 0.0,
            inset_bottom_px: 0.0,
        })
    }

    #[test]
    fn keys_are_15_mm_and_3_mm_apart_and_the_fan_has_room_on_every_glass() {
        for (width, height) in GLASSES {
            for scale in [1.0, 2.0] {
                for left in [false, true] {
                    let l = layout(width, height, scale, left);
                    let mut rects: Vec<Rect> = l.keys.iter().map(|k| k.rect).collect();
                    rects.extend([l.more, l.back]);
                    for (i, a) in rects.iter().enumerate() {
                        assert!(a.width >= 15.0 * 16.0 && a.height >= 15.0 * 16.0, "{width}: {a:?}");
                        assert!(a.right() <= width * 16.0 && a.bottom() <= height * 16.0);
                        assert!(a.top >= height * 16.0 * 0.4, "in the lower 60 %");
                        for b in &rects[i + 1..] {
                            assert!(a.gap_to(b) >= 3.0 * 16.0 - 1e-6, "{a:?} {b:?}");
                        }
                    }
                    assert!(
                        l.canvas.height >= 28.0 * 16.0 - 1e-6,
                        "{width} x {height}: {}",
                        l.canvas.height / 16.0
                    );
                    assert!(!l.canvas.overlaps(&l.words) || l.words.height == 0.0);
                }
            }
        }
    }

    #[test]
    fn the_left_hand_has_the_mirror_image_but_left_stays_left() {
        let (right, left) = (layout(64.6, 139.8, 1.0, false), layout(64.6, 139.8, 1.0, true));
        let of = |l: &SwimLayout, key| l.keys.iter().find(|k| k.key == key).map(|k| k.rect).unwrap();
        let mirrored = |r: Rect| 64.6 * 16.0 - r.left - r.width;
        for key in [SwimKey::Keep, SwimKey::CastHere] {
            assert!((of(&left, key).left - mirrored(of(&right, key))).abs() < 1e-6);
        }
        assert_eq!(of(&left, SwimKey::StepLeft), of(&right, SwimKey::StepLeft));
    }
}
