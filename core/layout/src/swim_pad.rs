//! Where the Swim screen's things lie: the fan above, keys to pick a spot, step and cast below, in millimetres; on a
//! glass on its side beside each other. The further keys behind MORE have a page like any other screen's.

use super::{GAP_MM, Glass, PRIMARY_MM, Rect, SECONDARY_MM, on_its_side};
use restwater_screen::{SwimKey, SwimPad};
use serde::{Deserialize, Serialize};

/// What the layout is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SwimPadAsk {
    /// What the keys do.
    pub pad: SwimPad,
    /// How many rays or cells there are to pick from.
    pub picks: u8,
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

/// Where the Swim screen's things lie, in px.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SwimLayout {
    /// Title and area.
    pub head: Rect,
    /// The fan.
    pub canvas: Rect,
    /// Where next and its reasons.
    pub words: Rect,
    /// Keys that stand always.
    pub keys: Vec<SwimKeyPlace>,
    /// Places of the rays or cells to pick from, in their order.
    pub picks: Vec<Rect>,
    /// Further keys and rows are behind this one; none while a cell is picked.
    pub more: Option<Rect>,
    /// Back: to the rays, or to the Bank.
    pub back: Rect,
}

/// Space between the edge of the glass and what stands on it, mm.
const EDGE_MM: f64 = 2.0;
/// The same at top and bottom of a glass on its side, mm.
const SIDE_EDGE_MM: f64 = 0.6;
/// Cells that three columns hold on a glass on its side.
const CELLS_IN_THREE: u8 = 8;
/// Height of the title, mm, at plain text.
const HEAD_MM: f64 = 7.0;
/// Height of headline and reasons, mm, at plain text.
const WORDS_MM: f64 = 14.5;
/// A fan lower than this stands beside title and words instead of between them where it is wider there than it would
/// be high, mm.
const CANVAS_MM: f64 = 35.0;
/// Share of the width that words beside the fan have.
const SIDE_WORDS: f64 = 0.42;

/// Rows and columns of keys, px.
struct Pad<'a> {
    glass: &'a Glass,
    left: f64,
    columns: usize,
    column: f64,
    /// Height of the lowest row.
    large: f64,
    bottom: f64,
    on_its_side: bool,
}

impl Pad<'_> {
    fn of(glass: &Glass, ask: SwimPadAsk) -> Pad<'_> {
        let mm = glass.px_per_mm;
        // A glass that is too small for the Bank is laid out upright as far as it goes.
        if on_its_side(glass).unwrap_or(false) {
            return Self::beside(glass, ask);
        }
        let column = (glass.width_px - 2.0 * (EDGE_MM + GAP_MM) * mm) / 3.0;
        Pad {
            glass,
            left: EDGE_MM * mm,
            columns: 3,
            column,
            large: PRIMARY_MM * mm,
            bottom: glass.height_px - glass.inset_bottom_px - EDGE_MM * mm,
            on_its_side: false,
        }
    }

    /// At the thumb, as high as the glass: three rows, the lowest as large as there is room for.
    fn beside(glass: &Glass, ask: SwimPadAsk) -> Pad<'_> {
        let mm = glass.px_per_mm;
        let columns = if ask.pad == SwimPad::Cells && ask.picks > CELLS_IN_THREE { 4 } else { 3 };
        let gaps = (columns - 1) as f64 * GAP_MM * mm;
        let half = (glass.width_px / 2.0 - gaps) / columns as f64;
        let column = half.clamp(SECONDARY_MM * mm, PRIMARY_MM * mm);
        let width = columns as f64 * column + gaps;
        let height = glass.height_px - glass.inset_top_px - glass.inset_bottom_px - 2.0 * SIDE_EDGE_MM * mm;
        let large = height - 2.0 * (SECONDARY_MM + GAP_MM) * mm;
        Pad {
            glass,
            left: if glass.left_handed { EDGE_MM * mm } else { glass.width_px - EDGE_MM * mm - width },
            columns,
            column,
            large: large.clamp(SECONDARY_MM * mm, PRIMARY_MM * mm),
            bottom: glass.height_px - glass.inset_bottom_px - SIDE_EDGE_MM * mm,
            on_its_side: true,
        }
    }

    fn width(&self) -> f64 {
        self.columns as f64 * (self.column + self.mm(GAP_MM)) - self.mm(GAP_MM)
    }

    /// What the keys leave for title, fan and words; upright as far down as the highest of them.
    fn free(&self, highest: f64) -> Rect {
        let (glass, edge) = (self.glass, self.mm(EDGE_MM));
        let top = glass.inset_top_px + if self.on_its_side { self.mm(SIDE_EDGE_MM) } else { edge };
        let width = glass.width_px - 2.0 * edge;
        if !self.on_its_side {
            return Rect { left: edge, top, width, height: highest - self.mm(GAP_MM) - top };
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
        self.bottom - self.large - row as f64 * self.mm(SECONDARY_MM + GAP_MM)
    }

    /// A place counted from the left, whatever the hand: keys that say where in the water.
    fn place_at(&self, row: usize, place: usize) -> Rect {
        let height = if row == 0 { self.large } else { self.mm(SECONDARY_MM) };
        let left = self.left + place as f64 * (self.column + self.mm(GAP_MM));
        Rect { left, top: self.top(row), width: self.column, height }
    }

    /// A place counted from the thumb's side, so that the left hand has the mirror image.
    fn thumb_place(&self, row: usize, place: usize) -> Rect {
        self.place_at(row, if self.glass.left_handed { place } else { self.columns - 1 - place })
    }

    /// CAST HERE: two places of the lowest row on the thumb's side.
    fn wide(&self) -> Rect {
        let from = usize::from(!self.glass.left_handed);
        Rect { width: 2.0 * self.column + self.mm(GAP_MM), ..self.place_at(0, from) }
    }

    fn more(&self) -> Rect {
        self.thumb_place(1, 2)
    }

    /// On the far side of the lowest row.
    fn back(&self) -> Rect {
        self.thumb_place(0, self.columns - 1)
    }

    fn row(&self, row: usize) -> Vec<Rect> {
        (0..self.columns).map(|place| self.place_at(row, place)).collect()
    }

    /// The places of a row but that of MORE or BACK.
    fn but(&self, row: usize, stands: Rect) -> Vec<Rect> {
        self.row(row).into_iter().filter(|place| *place != stands).collect()
    }

    fn keys(&self, pad: SwimPad) -> Vec<SwimKeyPlace> {
        let place = |key, rect| SwimKeyPlace { key, rect };
        match pad {
            SwimPad::Rays => vec![place(SwimKey::CastHere, self.wide())],
            SwimPad::Cells => Vec::new(),
            // LEFT and RIGHT never change sides: they say where the ring goes.
            SwimPad::Steps => vec![
                place(SwimKey::StepLeft, self.place_at(2, 0)),
                place(SwimKey::StepOut, self.place_at(2, 1)),
                place(SwimKey::StepRight, self.place_at(2, 2)),
                place(SwimKey::StepIn, self.place_at(1, 1)),
                place(SwimKey::Keep, self.thumb_place(1, 0)),
                place(SwimKey::CastHere, self.wide()),
            ],
        }
    }

    /// Rays from the left as they lie in the water; cells from the peg outwards, the nearest lowest. More of them than
    /// have room beside MORE take its place, then a third row, then the place of CAST HERE.
    fn picks(&self, ask: SwimPadAsk) -> Vec<Rect> {
        let count = usize::from(ask.picks);
        let beside_more = self.but(1, self.more());
        let mut places = match ask.pad {
            SwimPad::Steps => Vec::new(),
            SwimPad::Rays => [self.row(2), beside_more].concat(),
            SwimPad::Cells if count <= beside_more.len() + 3 => [beside_more, self.row(2)].concat(),
            SwimPad::Cells if self.on_its_side => {
                [self.but(0, self.back()), self.row(1), self.row(2)].concat()
            }
            SwimPad::Cells if count <= 9 => [self.row(1), self.row(2), self.row(3)].concat(),
            SwimPad::Cells => {
                let lowest = self.but(0, self.back());
                [lowest, self.row(1), self.row(2), self.row(3)].concat()
            }
        };
        places.truncate(count);
        places
    }
}

/// Lays the Swim screen out. The keys keep their size on any glass; fan and words share what is left.
pub fn swim_layout(glass: &Glass, ask: SwimPadAsk) -> SwimLayout {
    let pad = Pad::of(glass, ask);
    let (keys, picks) = (pad.keys(ask.pad), pad.picks(ask));
    let highest = picks.iter().map(|r| r.top).fold(pad.top(2), f64::min);
    let (head, canvas, words) = head_picture_words(glass, pad.free(highest));
    let more = (ask.pad != SwimPad::Cells).then(|| pad.more());
    SwimLayout { head, canvas, words, keys, picks, more, back: pad.back() }
}

fn head_height(glass: &Glass) -> f64 {
    HEAD_MM * glass.px_per_mm * text_growth(glass)
}

/// Title, fan, words below each other; on a low glass the fan has the whole height and the others stand beside it, on
/// the thumb's side.
fn head_picture_words(glass: &Glass, free: Rect) -> (Rect, Rect, Rect) {
    let mm = glass.px_per_mm;
    let (head_height, words_height) = (head_height(glass), WORDS_MM * mm * text_growth(glass));
    let height = free.height - head_height - words_height;
    let picture = (1.0 - SIDE_WORDS) * free.width - mm;
    if height >= CANVAS_MM * mm || picture < height {
        let canvas = Rect { top: free.top + head_height, height, ..free };
        let words = Rect { top: canvas.bottom(), height: words_height, ..free };
        return (Rect { height: head_height, ..free }, canvas, words);
    }
    let width = SIDE_WORDS * free.width;
    let (left_of_words, left_of_picture) = if glass.left_handed {
        (free.left + picture + mm, free.left)
    } else {
        (free.left, free.left + width + mm)
    };
    let beside = Rect { left: left_of_words, width, ..free };
    let head = Rect { height: head_height.min(free.height / 3.0), ..beside };
    let words = Rect { top: head.bottom(), height: free.height - head.height, ..beside };
    (head, Rect { left: left_of_picture, width: picture, ..free }, words)
}

/// Words grow with the text, within reason: the fan needs its room.
fn text_growth(glass: &Glass) -> f64 {
    glass.text_scale.clamp(1.0, 1.4)
}

#[cfg(test)]
mod tests {
    use super::super::phones::PHONES;
    use super::*;
    use restwater_swim::{CELL_KEYS, RAY_KEYS};

    fn asks() -> Vec<SwimPadAsk> {
        let ask = |pad, picks: usize| SwimPadAsk { pad, picks: picks as u8 };
        let rays = (0..=RAY_KEYS).map(|n| ask(SwimPad::Rays, n));
        let cells = (1..=CELL_KEYS).map(|n| ask(SwimPad::Cells, n));
        rays.chain(cells).chain([ask(SwimPad::Steps, 0)]).collect()
    }

    fn all(l: &SwimLayout) -> Vec<Rect> {
        let keys = l.keys.iter().map(|k| k.rect).chain(l.picks.iter().copied());
        keys.chain(l.more).chain([l.back]).collect()
    }

    #[test]
    fn keys_are_15_mm_and_3_mm_apart_and_the_fan_has_room_on_every_glass() {
        for phone in &PHONES {
            for (scale, left, ask) in [1.0, 2.0]
                .iter()
                .flat_map(|s| [false, true].map(|l| (*s, l)))
                .flat_map(|(s, l)| asks().into_iter().map(move |a| (s, l, a)))
            {
                let glass = phone.glass(scale, left);
                let (mm, name) = (glass.px_per_mm, phone.name);
                let l = swim_layout(&glass, ask);
                assert_eq!(l.picks.len(), usize::from(ask.picks), "{name} {ask:?}");
                let rects = all(&l);
                for (i, a) in rects.iter().enumerate() {
                    assert!(a.width >= 15.0 * mm && a.height >= 15.0 * mm, "{name}: {a:?}");
                    assert!(a.right() <= glass.width_px && a.bottom() <= glass.height_px);
                    for b in &rects[i + 1..] {
                        assert!(a.gap_to(b) >= 3.0 * mm - 1e-6, "{name} {ask:?}: {a:?} {b:?}");
                    }
                }
                // The third row of cells, for swims of many, may reach above the lower 60 % of the lowest glasses.
                let lower = if ask.pad == SwimPad::Cells && ask.picks > 6 { 0.2 } else { 0.4 };
                let highest = rects.iter().map(|r| r.top).fold(f64::INFINITY, f64::min);
                assert!(highest >= glass.height_px * lower, "{name} {ask:?}: {}", highest / glass.height_px);
                let least = if ask.pad == SwimPad::Cells && ask.picks > 6 { 10.5 } else { 28.0 };
                assert!(l.canvas.height >= least * mm, "{name} {ask:?}: {}", l.canvas.height / mm);
                assert!(l.canvas.width >= 30.0 * mm);
                for (a, b) in [(l.head, l.canvas), (l.head, l.words), (l.canvas, l.words)] {
                    assert!(!a.overlaps(&b), "{name} {ask:?}: {a:?} {b:?}");
                }
            }
        }
    }

    #[test]
    fn on_its_side_the_keys_keep_their_size_and_the_fan_stands_beside_them() {
        for (phone, left) in PHONES.iter().flat_map(|p| [(p, false), (p, true)]) {
            for (ask, scale) in asks().into_iter().flat_map(|ask| [(ask, 1.0), (ask, 2.0)]) {
                let glass = phone.on_its_side(scale, left);
                let (mm, name, hair) = (glass.px_per_mm, phone.name, 1e-6);
                let l = swim_layout(&glass, ask);
                assert_eq!(l.picks.len(), usize::from(ask.picks), "{name} {ask:?}");
                let rects = all(&l);
                let words = [l.head, l.canvas, l.words];
                for (i, a) in rects.iter().enumerate() {
                    assert!(a.width.min(a.height) >= 15.0 * mm - hair, "{name}: {a:?}");
                    assert!(a.left >= 0.0 && a.right() <= glass.width_px && a.top >= glass.inset_top_px);
                    assert!(a.bottom() <= glass.height_px - glass.inset_bottom_px, "{name}: {a:?}");
                    for b in &rects[i + 1..] {
                        assert!(a.gap_to(b) >= 3.0 * mm - hair, "{name} {ask:?}: {a:?} {b:?}");
                    }
                    assert!(words.iter().all(|b| !a.overlaps(b)), "{name} {ask:?}: {a:?}");
                }
                // Of the lowest glass, 54 mm, the key that casts gets what is left beside two rows.
                let cast = l.keys.iter().find(|k| k.key == SwimKey::CastHere).map(|k| k.rect.height / mm);
                assert!(cast.is_none_or(|h| h >= if name.starts_with("5.4") { 16.5 } else { 20.0 - hair }));
                let least = if ask.picks > CELLS_IN_THREE { 22.0 } else { 28.0 };
                let (width, height) = (l.canvas.width / mm, l.canvas.height / mm);
                assert!(width >= least && height >= 22.0, "{name} {ask:?}: {width} x {height}");
            }
        }
    }

    #[test]
    fn the_left_hand_has_the_mirror_image_but_left_stays_left() {
        let ask = SwimPadAsk { pad: SwimPad::Steps, picks: 0 };
        let glass = |left| PHONES[6].glass(1.0, left);
        let (right, left) = (swim_layout(&glass(false), ask), swim_layout(&glass(true), ask));
        let of = |l: &SwimLayout, key| l.keys.iter().find(|k| k.key == key).map(|k| k.rect).unwrap();
        let mirrored = |r: Rect| glass(false).width_px - r.left - r.width;
        for key in [SwimKey::Keep, SwimKey::CastHere] {
            assert!((of(&left, key).left - mirrored(of(&right, key))).abs() < 1e-6);
        }
        assert_eq!(of(&left, SwimKey::StepLeft), of(&right, SwimKey::StepLeft));
        for left_handed in [false, true] {
            let rays = swim_layout(&glass(left_handed), SwimPadAsk { pad: SwimPad::Rays, picks: 5 }).picks;
            assert!(
                rays[0].left < rays[1].left && rays[1].left < rays[2].left && rays[3].left < rays[4].left
            );
        }
    }

    #[test]
    fn further_bands_stand_higher() {
        for (picks, left) in (1..=CELL_KEYS).flat_map(|n| [(n, false), (n, true)]) {
            let ask = SwimPadAsk { pad: SwimPad::Cells, picks: picks as u8 };
            let places = swim_layout(&PHONES[0].glass(1.0, left), ask).picks;
            assert!(places.windows(2).all(|w| w[1].top < w[0].top || w[1].left > w[0].left), "{picks}");
        }
    }

    /// The laws of the scene are tried on this table, in a crate that knows no layout.
    #[test]
    fn the_canvases_that_the_scene_is_tried_on_are_those_given_here() {
        for phone in restwater_swim::canvases::PHONE_CANVASES {
            let (px, (width, height)) = (phone.px_per_mm, phone.screen_mm);
            for left_handed in [false, true] {
                let glass = Glass {
                    width_px: width * px,
                    height_px: height * px,
                    px_per_mm: px,
                    text_scale: phone.text_scale,
                    left_handed,
                    inset_top_px: 4.0 * px,
                    inset_bottom_px: 3.0 * px,
                };
                let canvas = swim_layout(&glass, SwimPadAsk { pad: SwimPad::Rays, picks: 5 }).canvas;
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
