//! The layout of the Swim screen, in millimetres: the map at the top over the whole width, the verdict under
//! it, and two rows of keys below; on a screen on its side they are side by side. The further keys behind MORE
//! have a page like those of other screens.

use super::{GAP_MM, Glass, PRIMARY_MM, Rect, SECONDARY_MM, on_its_side};
use restwater_screen::{SwimKey, SwimPad};
use serde::{Deserialize, Serialize};

/// What the layout depends on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SwimPadAsk {
    /// What the keys do.
    pub pad: SwimPad,
}

/// A key of the Swim screen and its place.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SwimKeyPlace {
    /// Which.
    pub key: SwimKey,
    /// Where, in px.
    pub rect: Rect,
}

/// The layout of the Swim screen, in px.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SwimLayout {
    /// Title.
    pub title: Rect,
    /// How much of the water was fished, or `None` if the map needs its line.
    pub area: Option<Rect>,
    /// Opens the legend; not used while fishing.
    pub legend: Rect,
    /// The map.
    pub canvas: Rect,
    /// Where next and its reasons.
    pub words: Rect,
    /// Keys that are always shown.
    pub keys: Vec<SwimKeyPlace>,
    /// Opens the further keys and rows; `None` while the step keys are open.
    pub more: Option<Rect>,
    /// BACK, in the corner of the thumb: hides the step keys, or goes to the Bank.
    pub back: Rect,
}

/// Space between the edge of the screen and what is on it, mm.
const EDGE_MM: f64 = 2.0;
/// The same at top and bottom of a screen on its side, mm.
const SIDE_EDGE_MM: f64 = 0.6;
/// Columns of keys.
const COLUMNS: usize = 3;
/// Height of title and area, mm, at plain text.
const HEAD_MM: f64 = 7.5;
/// Height of the title alone.
const TITLE_MM: f64 = 5.5;
/// Width of the key of the legend, mm.
const LEGEND_MM: f64 = 21.0;
/// Height of headline and reasons, mm, at plain text.
const WORDS_MM: f64 = 14.5;
/// The same on a screen so low that the map would have less than [`MAP_MM`].
const FEW_WORDS_MM: f64 = 11.5;
/// Height that the map gets before title and words get their full height, mm.
const MAP_MM: f64 = 40.0;
/// At large text the map shrinks to this height, to leave room for the words: its own names are then still as large as at 100 %.
const LEAST_MAP_MM: f64 = 26.1;
/// On a screen on its side, the share of the width beside the keys that the words have.
const SIDE_WORDS: f64 = 0.42;

/// Rows and columns of keys, px.
struct Pad<'a> {
    glass: &'a Glass,
    left: f64,
    column: f64,
    bottom: f64,
    on_its_side: bool,
}

impl Pad<'_> {
    fn of(glass: &Glass) -> Pad<'_> {
        let mm = glass.px_per_mm;
        // A screen too small for the Bank gets the upright layout, as far as it fits.
        if on_its_side(glass).unwrap_or(false) {
            return Self::beside(glass);
        }
        let column = (glass.width_px - 2.0 * (EDGE_MM + GAP_MM) * mm) / COLUMNS as f64;
        let bottom = glass.height_px - glass.inset_bottom_px - EDGE_MM * mm;
        Pad { glass, left: EDGE_MM * mm, column, bottom, on_its_side: false }
    }

    /// At the thumb.
    fn beside(glass: &Glass) -> Pad<'_> {
        let mm = glass.px_per_mm;
        let gaps = (COLUMNS - 1) as f64 * GAP_MM * mm;
        let half = (glass.width_px / 2.0 - gaps) / COLUMNS as f64;
        let column = half.clamp(SECONDARY_MM * mm, PRIMARY_MM * mm);
        let width = COLUMNS as f64 * column + gaps;
        let left = if glass.left_handed { EDGE_MM * mm } else { glass.width_px - EDGE_MM * mm - width };
        let bottom = glass.height_px - glass.inset_bottom_px - SIDE_EDGE_MM * mm;
        Pad { glass, left, column, bottom, on_its_side: true }
    }

    fn width(&self) -> f64 {
        COLUMNS as f64 * (self.column + self.mm(GAP_MM)) - self.mm(GAP_MM)
    }

    /// The space that the keys leave for title, map and words.
    fn free(&self) -> Rect {
        let (glass, edge) = (self.glass, self.mm(EDGE_MM));
        let top = glass.inset_top_px + if self.on_its_side { self.mm(SIDE_EDGE_MM) } else { edge };
        let width = glass.width_px - 2.0 * edge;
        if !self.on_its_side {
            return Rect { left: edge, top, width, height: self.top(1) - self.mm(GAP_MM) - top };
        }
        let pad = self.width() + self.mm(GAP_MM);
        let left = edge + if glass.left_handed { pad } else { 0.0 };
        Rect { left, top, width: width - pad, height: self.bottom - top }
    }

    fn mm(&self, n: f64) -> f64 {
        n * self.glass.px_per_mm
    }

    /// Top of a row; 0 is the lowest, of large keys.
    fn top(&self, row: usize) -> f64 {
        self.bottom - self.mm(PRIMARY_MM) - row as f64 * self.mm(SECONDARY_MM + GAP_MM)
    }

    /// A place counted from the left, whatever the hand: keys that say where in the water.
    fn place_at(&self, row: usize, place: usize) -> Rect {
        let height = self.mm(if row == 0 { PRIMARY_MM } else { SECONDARY_MM });
        let left = self.left + place as f64 * (self.column + self.mm(GAP_MM));
        Rect { left, top: self.top(row), width: self.column, height }
    }

    /// A place counted from the thumb's side, so that the left hand has the mirror image.
    fn thumb_place(&self, row: usize, place: usize) -> Rect {
        self.place_at(row, if self.glass.left_handed { place } else { COLUMNS - 1 - place })
    }

    /// Two places of the lowest row beside BACK.
    fn wide(&self) -> Rect {
        let from = usize::from(self.glass.left_handed);
        Rect { width: 2.0 * self.column + self.mm(GAP_MM), ..self.place_at(0, from) }
    }

    fn keys(&self, pad: SwimPad) -> Vec<SwimKeyPlace> {
        let place = |key, rect| SwimKeyPlace { key, rect };
        match pad {
            SwimPad::Plain => vec![
                place(SwimKey::Steps, self.thumb_place(1, 0)),
                place(SwimKey::Keep, self.thumb_place(1, 1)),
                place(SwimKey::CastHere, self.wide()),
            ],
            // LEFT and RIGHT never change sides: they say where the aim goes.
            SwimPad::Steps => vec![
                place(SwimKey::StepLeft, self.place_at(1, 0)),
                place(SwimKey::StepOut, self.place_at(1, 1)),
                place(SwimKey::StepRight, self.place_at(1, 2)),
                place(SwimKey::StepIn, self.place_at(0, 1)),
                place(SwimKey::CastHere, self.thumb_place(0, COLUMNS - 1)),
            ],
        }
    }
}

/// Places everything of the Swim. The keys keep their size on every screen; map and words share what is left.
pub fn swim_layout(glass: &Glass, ask: SwimPadAsk) -> SwimLayout {
    let pad = Pad::of(glass);
    let (head, canvas, words) = head_picture_words(&pad);
    let (head, legend) = with_legend(glass, head);
    let two_lines = head.height > f64::midpoint(TITLE_MM, HEAD_MM) * pad.mm(text_growth(glass));
    let title = if two_lines { Rect { height: 0.58 * head.height, ..head } } else { head };
    let area = two_lines.then(|| Rect { top: title.bottom(), height: head.height - title.height, ..head });
    let more = (ask.pad == SwimPad::Plain).then(|| pad.thumb_place(1, 2));
    let back = pad.thumb_place(0, 0);
    SwimLayout { title, area, legend, canvas, words, keys: pad.keys(ask.pad), more, back }
}

/// The key of the legend at the end of the head on the thumb's side.
fn with_legend(glass: &Glass, head: Rect) -> (Rect, Rect) {
    let (mm, gap) = (glass.px_per_mm, GAP_MM / 2.0 * glass.px_per_mm);
    let width = (LEGEND_MM * mm).min(0.4 * head.width);
    let rest = Rect { width: head.width - width - gap, ..head };
    let height = head.height - 0.6 * mm;
    if glass.left_handed {
        (Rect { left: head.left + width + gap, ..rest }, Rect { width, height, ..head })
    } else {
        (rest, Rect { left: head.right() - width, width, height, ..head })
    }
}

/// Title, map, words below each other; on a screen on its side that is wide enough the map has the whole height and the
/// others are beside it, on the thumb's side.
fn head_picture_words(pad: &Pad) -> (Rect, Rect, Rect) {
    let (glass, free, growth) = (pad.glass, pad.free(), text_growth(pad.glass));
    let low = free.height - pad.mm(HEAD_MM + WORDS_MM) * growth < pad.mm(MAP_MM);
    let (head, words) = if low { (TITLE_MM, FEW_WORDS_MM) } else { (HEAD_MM, WORDS_MM) };
    let head_height = pad.mm(head) * growth;
    // Above that growth only the words have more, as far as the map has it to give.
    let to_give = (free.height - head_height - pad.mm(LEAST_MAP_MM)).max(pad.mm(words) * growth);
    let words_height = (pad.mm(words) * glass.text_scale.clamp(1.0, 2.0)).min(to_give);
    let gap = pad.mm(1.0);
    let width = SIDE_WORDS * free.width;
    let picture = free.width - width - gap;
    if !pad.on_its_side || picture < 0.75 * free.height {
        let height = free.height - head_height - words_height;
        let canvas = Rect { top: free.top + head_height, height, ..free };
        let words = Rect { top: canvas.bottom(), height: words_height, ..free };
        return (Rect { height: head_height, ..free }, canvas, words);
    }
    let (left_of_words, left_of_picture) = if glass.left_handed {
        (free.left + picture + gap, free.left)
    } else {
        (free.left, free.left + width + gap)
    };
    let beside = Rect { left: left_of_words, width, ..free };
    let head = Rect { height: pad.mm(HEAD_MM) * growth, ..beside };
    let words = Rect { top: head.bottom(), height: free.height - head.height, ..beside };
    (head, Rect { left: left_of_picture, width: picture, ..free }, words)
}

/// The head grows with the text, within reason: the map needs its room.
fn text_growth(glass: &Glass) -> f64 {
    glass.text_scale.clamp(1.0, 1.4)
}

#[cfg(test)]
mod tests {
    use super::super::phones::PHONES;
    use super::*;

    const PADS: [SwimPad; 2] = [SwimPad::Plain, SwimPad::Steps];

    fn keys(l: &SwimLayout) -> Vec<Rect> {
        l.keys.iter().map(|k| k.rect).chain(l.more).chain([l.back]).collect()
    }

    /// Every phone both ways, at three sizes of text, for both hands, with both pads.
    fn all() -> impl Iterator<Item = (String, Glass, bool, SwimLayout)> {
        let ways = |left| [1.0, 1.3, 2.0].map(move |scale| (scale, left));
        let each =
            PHONES.iter().flat_map(move |p| ways(false).into_iter().chain(ways(true)).map(move |w| (p, w)));
        each.flat_map(|(phone, (scale, left))| {
            let [upright, aside] = phone.both_ways(scale, left);
            [(upright, false), (aside, true)].into_iter().flat_map(move |(glass, aside)| {
                PADS.map(|pad| {
                    let which = format!("{} {scale} {left} {aside} {pad:?}", phone.name);
                    (which, glass, aside, swim_layout(&glass, SwimPadAsk { pad }))
                })
            })
        })
    }

    #[test]
    fn keys_are_15_mm_and_3_mm_apart_and_nothing_overlaps() {
        for (which, glass, aside, l) in all() {
            let (mm, hair) = (glass.px_per_mm, 1e-6);
            let keys = keys(&l);
            let words: Vec<Rect> = [l.title, l.legend, l.canvas, l.words].into_iter().chain(l.area).collect();
            for (i, a) in keys.iter().enumerate() {
                assert!(a.width.min(a.height) >= 15.0 * mm - hair, "{which}: {a:?}");
                assert!(aside || a.top >= 0.4 * glass.height_px, "{which}: {a:?} is in the upper part");
                for b in &keys[i + 1..] {
                    assert!(a.gap_to(b) >= 3.0 * mm - hair, "{which}: {a:?} {b:?}");
                }
                assert!(words.iter().all(|b| !a.overlaps(b)), "{which}: {a:?}");
            }
            for (i, a) in words.iter().enumerate() {
                assert!(words[i + 1..].iter().all(|b| !a.overlaps(b)), "{which}: {a:?}");
            }
            for r in keys.iter().chain(&words) {
                let bottom = glass.height_px - glass.inset_bottom_px + hair;
                assert!(r.left >= 0.0 && r.right() <= glass.width_px + hair, "{which}: {r:?}");
                assert!(r.top >= glass.inset_top_px && r.bottom() <= bottom, "{which}: {r:?}");
            }
        }
    }

    #[test]
    fn the_map_has_the_width_of_the_screen_and_room_on_every_phone() {
        for (which, glass, aside, l) in all() {
            let (width, height) = (l.canvas.width / glass.px_per_mm, l.canvas.height / glass.px_per_mm);
            if aside {
                assert!(width >= 30.0 && height >= 24.0, "{which}: {width} x {height}");
                continue;
            }
            assert!(l.canvas.width >= 0.9 * glass.width_px, "{which}: {width}");
            let least = if glass.text_scale > 1.0 { 26.0 } else { 33.0 };
            assert!(height >= least, "{which}: {height}");
        }
    }

    /// The words have their share of large text, unless the map has no more to give.
    #[test]
    fn at_twice_the_text_the_words_grow_by_half_unless_the_map_is_at_its_least() {
        for phone in &PHONES {
            let at = |scale| swim_layout(&phone.glass(scale, false), SwimPadAsk::default());
            let (once, twice, mm) = (at(1.0), at(2.0), phone.px_per_mm());
            let (grown, map) = (twice.words.height / once.words.height, twice.canvas.height / mm);
            // A low screen has fewer words at large text, which then grow from those.
            assert!(grown >= 1.55 || map <= LEAST_MAP_MM + 1e-6, "{}: {grown}, map {map}", phone.name);
            assert!(grown >= 1.1, "{}: {grown}", phone.name);
        }
    }

    #[test]
    fn the_left_hand_has_the_mirror_image_but_left_stays_left() {
        let glass = |left| PHONES[6].glass(1.0, left);
        let mirrored = |r: Rect| glass(false).width_px - r.left - r.width;
        let of = |pad, left, key| {
            let l = swim_layout(&glass(left), SwimPadAsk { pad });
            l.keys.iter().find(|k| k.key == key).map(|k| k.rect).unwrap()
        };
        for (pad, key) in [
            (SwimPad::Plain, SwimKey::Keep),
            (SwimPad::Plain, SwimKey::Steps),
            (SwimPad::Plain, SwimKey::CastHere),
            (SwimPad::Steps, SwimKey::CastHere),
        ] {
            assert!((of(pad, true, key).left - mirrored(of(pad, false, key))).abs() < 1e-6);
        }
        assert_eq!(of(SwimPad::Steps, true, SwimKey::StepLeft), of(SwimPad::Steps, false, SwimKey::StepLeft));
    }

    /// The laws of the scene are tested on this table in a crate that doesn't know the layout.
    #[test]
    fn the_canvases_used_in_tests_of_the_scene_are_those_of_this_layout() {
        for phone in restwater_swim::canvases::PHONE_CANVASES {
            let (px, (width, height)) = (phone.px_per_mm, phone.screen_mm);
            // On its side the system keeps nothing at top and bottom.
            let (top, bottom) = if width > height { (0.0, 0.0) } else { (4.0, 3.0) };
            for left_handed in [false, true] {
                let glass = Glass {
                    width_px: width * px,
                    height_px: height * px,
                    px_per_mm: px,
                    text_scale: phone.text_scale,
                    left_handed,
                    inset_top_px: top * px,
                    inset_bottom_px: bottom * px,
                };
                let canvas = swim_layout(&glass, SwimPadAsk::default()).canvas;
                let given = (canvas.width / px, canvas.height / px);
                let close = |a: f64, b: f64| (a - b).abs() < 1e-6;
                assert!(
                    close(given.0, phone.canvas_mm.0) && close(given.1, phone.canvas_mm.1),
                    "{phone:?}: {given:?}"
                );
            }
        }
    }
}
