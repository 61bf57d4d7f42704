//! The layout of the Match screen's keys, in millimetres. Below them are BACK and a wide key, in the place of
//! the other screens' pager. On a screen on its side BACK and that key are in the thumb's column, as on every
//! page, the other keys are beside them, and the page has the rest of the width.
//!
//! Class keys are used while fishing: they are 20 mm in both directions, two side by side; on the smallest
//! phones, where they have one row, there are three of at least 15 mm by 20. Weights are entered at the mat
//! or the scales, so those keys are secondary ones, and in the lower part if the screen is large enough.

use super::{
    BankLayout, GAP_MM, Glass, GlassError, PRIMARY_MM, PadAsk, PagePlace, Rect, SECONDARY_MM, bank_layout,
    on_its_side,
};
use restwater_screen::BankState;
use serde::{Deserialize, Serialize};

/// The places of the keys, in px; BACK is where it is on every page.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct MatchLayout {
    /// The wide key beside BACK.
    pub wide: Rect,
    /// Three small keys above them, counted from the thumb.
    pub small: Vec<Rect>,
    /// The page beside those.
    pub now: PagePlace,
    /// Two, three or four large keys above BACK, counted from the thumb.
    pub classes: Vec<Rect>,
    /// Three small keys above those.
    pub above_classes: Vec<Rect>,
    /// The same places from left to right for either hand, for keys that name sides.
    pub above_classes_read: Vec<Rect>,
    /// The page beside classes and small keys.
    pub fish: PagePlace,
    /// The number pad: the digits 1 to 9 row by row as they are read, then a side key, 0, and the side key that is nearest to the
    /// thumb.
    pub pad: Vec<Rect>,
    /// BACK of the number pad for a weight that may be guessed, beside which there are two keys instead of the wide one.
    pub pad_back: Rect,
    /// The two: the guess, and the weight on the scales.
    pub pad_takes: Vec<Rect>,
    /// The page beside it. With little room only the title is left, and a notice replaces the title.
    pub typing: PagePlace,
    /// The figure that is typed.
    pub figure: Rect,
}

/// Height that words keep above the keys before a row of large keys is dropped, mm.
const WORDS_MM: f64 = 30.0;
/// Between a page and the keys below it, mm.
const ABOVE_KEYS_MM: f64 = 2.0;
/// Between a typed figure and the number pad, mm.
const ABOVE_PAD_MM: f64 = 1.0;
/// Height from which the page of a typed figure has lines of their own for title, notice and figure, mm.
const ROOMY_PAGE_MM: f64 = 20.0;
/// A page lower than this has no room for a readable line, mm.
const LEAST_PAGE_MM: f64 = 4.0;
/// A column narrower than this breaks every word, mm: even a low line above the pad reads better.
const LEAST_COLUMN_MM: f64 = 13.0;
/// Height of the figure at its most at 100 % text, mm.
const FIGURE_MM: f64 = 11.0;
/// Width of the title beside the figure, as a share of the page, and the room between them: a title that ends
/// with a number and the figure would read as one.
const TITLE_SHARE: f64 = 0.5;
const BESIDE_TITLE_MM: f64 = 5.0;
/// Width that a page keeps beside four classes, mm.
const PAGE_MM: f64 = 45.0;

/// Places the keys. A screen that is too small for the Bank is too small for this.
pub fn match_layout(glass: &Glass) -> Result<MatchLayout, GlassError> {
    let bank = bank_layout(glass, PadAsk { state: BankState::Ready, rods: 1, page: 0 })?;
    Ok(if on_its_side(glass)? { beside(glass, &bank) } else { below(glass, &bank) })
}

/// The page above the keys.
fn below(glass: &Glass, bank: &BankLayout) -> MatchLayout {
    let (back, wide) = (bank.back, bank.pager);
    let mm = glass.px_per_mm;
    let gap = GAP_MM * mm;
    let (left, right) = (back.left.min(wide.left), back.right().max(wide.right()));
    let columns = Columns { left, width: right - left, gap, left_handed: glass.left_handed };
    let small = |bottom: f64| columns.row(3, bottom, SECONDARY_MM * mm);
    let foot = back.top - gap;
    let large = PRIMARY_MM * mm;
    let room = foot - glass.inset_top_px;
    let two_rows = room - 2.0 * (large + gap) - SECONDARY_MM * mm >= WORDS_MM * mm;
    // The smallest phones have only one row, of three keys; with two, all but one would be the pager.
    let mut classes = columns.row(if two_rows { 2 } else { 3 }, foot, large);
    if two_rows {
        // Counted from the thumb: the lower row is the nearer one.
        classes.extend(columns.row(2, foot - large - gap, large));
    }
    let class_rows = if two_rows { 2.0 } else { 1.0 };
    let plain = Columns { left_handed: true, ..columns };
    let (small_keys, above_classes) = (small(foot), small(foot - class_rows * (large + gap)));
    let page = |keys: &[Rect]| {
        let title = bank.page.title;
        let height = keys[0].top - ABOVE_KEYS_MM * mm - title.top;
        PagePlace::in_place(Rect { height, ..title }, mm)
    };
    let (now, fish) = (page(&small_keys), page(&above_classes));
    let mut pad: Vec<Rect> = (0..4)
        .rev()
        .flat_map(|row| plain.row(3, foot - f64::from(row) * (SECONDARY_MM + GAP_MM) * mm, SECONDARY_MM * mm))
        .collect();
    // The digits stay where they are read; the last key, the unit, which every weight needs, is at the thumb.
    if glass.left_handed {
        pad.swap(9, 11);
    }
    let (typing, figure) = typing_page(page_above(bank, pad[0].top, mm), glass);
    let mut low = columns.row(3, back.bottom(), back.height);
    let pad_back = low.remove(0);
    let above_classes_read = from_left(&above_classes);
    MatchLayout {
        wide,
        small: small_keys,
        now,
        classes,
        above_classes,
        above_classes_read,
        fish,
        pad,
        pad_back,
        pad_takes: low,
        typing,
        figure,
    }
}

/// A row of keys from left to right.
fn from_left(row: &[Rect]) -> Vec<Rect> {
    let mut row = row.to_vec();
    row.sort_by(|a, b| a.left.total_cmp(&b.left));
    row
}

/// What is left above some keys.
fn page_above(bank: &BankLayout, top: f64, mm: f64) -> Rect {
    let title = bank.page.title;
    Rect { height: (top - ABOVE_PAD_MM * mm - title.top).max(0.0), ..title }
}

/// The page for typing a figure, with the figure in its lowest lines or, if there is little room, beside the
/// title.
fn typing_page(place: Rect, glass: &Glass) -> (PagePlace, Rect) {
    let mm = glass.px_per_mm;
    if place.height >= ROOMY_PAGE_MM * mm {
        let mut page = PagePlace::in_place(place, mm);
        let height = (FIGURE_MM * glass.text_scale.max(1.0) * mm).min(0.5 * page.rest.height);
        page.rest.height -= height;
        return (page, Rect { top: page.rest.bottom(), height, ..page.rest });
    }
    let title = Rect { width: place.width * TITLE_SHARE, ..place };
    let rest = Rect { top: place.bottom(), height: 0.0, ..place };
    let beside = BESIDE_TITLE_MM * mm;
    let figure = Rect { left: title.right() + beside, width: place.width - title.width - beside, ..place };
    (PagePlace { title, notice: title, rest }, figure)
}

/// The page beside the keys.
fn beside(glass: &Glass, bank: &BankLayout) -> MatchLayout {
    let mm = glass.px_per_mm;
    // The pages have titles of their own beside their keys, so they can use the whole height.
    let page = bank.page;
    let whole = Rect { top: page.title.top, height: page.rest.bottom() - page.title.top, ..page.rest };
    let side = Side { rest: whole, gap: GAP_MM * mm, left_handed: glass.left_handed };
    let (small, large) = (SECONDARY_MM * mm, PRIMARY_MM * mm);
    let smalls = |x: f64| (0..3).map(|i| side.key(x, i, small, small)).collect::<Vec<_>>();
    let two_columns = side.rest.width >= 2.0 * (large + side.gap) + small + (PAGE_MM * mm);
    let columns = if two_columns { 2 } else { 1 };
    let column = |i: usize| i as f64 * (large + side.gap);
    // Counted from the thumb: the lower row is the nearer one.
    let classes = (0..2).flat_map(|row| (0..columns).map(move |i| (row, i)));
    let classes = classes.map(|(row, i)| side.key(column(i), row, large, large)).collect();
    let beyond = column(columns);
    // Four keys in a row: the digits form three rows, and the keys that are below them upright are beside
    // them.
    let key_width = small.min((side.rest.width - 3.0 * side.gap) / 4.0).max(0.0);
    let key_at = |i: usize| {
        let (row, column) = if i < 9 { (2 - i / 3, i % 3) } else { (2 - (i - 9), 3) };
        // The digits are read from left to right by either hand; the keys beside them are at the thumb.
        let from_hand = if side.left_handed { (column + 1) % 4 } else { 3 - column };
        side.rect(
            from_hand as f64 * (key_width + side.gap),
            row as f64 * (small + side.gap),
            key_width,
            small,
        )
    };
    let pad_height = 3.0 * small + 2.0 * side.gap;
    let beside_pad = side.beyond(4.0 * key_width + 3.0 * side.gap);
    let above_pad = side.rect(0.0, pad_height, side.rest.width, side.rest.height - pad_height);
    let low = above_pad.height < LEAST_PAGE_MM * mm;
    let wide = if low { LEAST_COLUMN_MM } else { PAGE_MM };
    let page = if beside_pad.width >= wide * mm { beside_pad } else { above_pad };
    let (typing, figure) = typing_page(page, glass);
    // The thumb's column has three keys there instead of two.
    let (top, low) = (bank.pager.top.min(bank.back.top), bank.back.bottom());
    let height = (low - top - 2.0 * side.gap) / 3.0;
    let in_column =
        |i: usize| Rect { top: low - height - i as f64 * (height + side.gap), height, ..bank.back };
    MatchLayout {
        pad_back: in_column(0),
        pad_takes: vec![in_column(1), in_column(2)],
        pad: (0..12).map(key_at).collect(),
        typing,
        figure,
        wide: bank.pager,
        small: smalls(0.0),
        now: PagePlace::in_place(side.beyond(small), mm),
        classes,
        above_classes: smalls(beyond),
        // They are above each other here.
        above_classes_read: smalls(beyond),
        fish: PagePlace::in_place(side.beyond(beyond + small), mm),
    }
}

/// What is left beside the thumb's column on a screen on its side.
#[derive(Clone, Copy)]
struct Side {
    rest: Rect,
    gap: f64,
    left_handed: bool,
}

impl Side {
    /// A rectangle at this distance from the thumb's column and from the bottom.
    fn rect(self, x: f64, y: f64, width: f64, height: f64) -> Rect {
        let left = if self.left_handed { self.rest.left + x } else { self.rest.right() - x - width };
        Rect { left, top: self.rest.bottom() - y - height, width, height }
    }

    /// Key number `row` from the bottom.
    fn key(self, x: f64, row: usize, width: f64, height: f64) -> Rect {
        self.rect(x, row as f64 * (height + self.gap), width, height)
    }

    /// Everything beyond this width of keys.
    fn beyond(self, keys: f64) -> Rect {
        let x = keys + self.gap;
        self.rect(x, 0.0, self.rest.width - x, self.rest.height)
    }
}

#[derive(Clone, Copy)]
struct Columns {
    left: f64,
    width: f64,
    gap: f64,
    left_handed: bool,
}

impl Columns {
    /// This many keys side by side on `bottom`, the one at the thumb first.
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
    use super::super::phones::PHONES;
    use super::*;

    /// Large keys, small ones, and the page beside them.
    fn pages(l: &MatchLayout, back: Rect) -> Vec<(Vec<Rect>, Vec<Rect>, PagePlace)> {
        let with = |large: &[Rect], small: &[Rect], page| (large.to_vec(), small.to_vec(), page);
        vec![
            with(&[back, l.wide], &l.small, l.now),
            with(&[vec![back, l.wide], l.classes.clone()].concat(), &l.above_classes, l.fish),
            with(&[back, l.wide], &l.pad, l.typing),
            with(&[], &[l.pad.clone(), l.pad_takes.clone(), vec![l.pad_back]].concat(), l.typing),
        ]
    }

    #[test]
    fn keys_keep_their_size_and_their_gaps_on_every_glass_for_either_hand() {
        for phone in PHONES {
            for glass in
                [(1.0, false), (1.0, true), (2.0, false)].map(|(s, l)| phone.both_ways(s, l)).concat()
            {
                let layout = match_layout(&glass).unwrap();
                let ask = PadAsk { state: BankState::Ready, rods: 1, page: 0 };
                let back = bank_layout(&glass, ask).unwrap().back;
                let mm = glass.px_per_mm;
                let hair = 1e-6 * mm;
                for (large, small, page) in pages(&layout, back) {
                    for r in &large {
                        let one_row = layout.classes.len() == 3 && layout.classes.contains(r);
                        let least = if one_row { SECONDARY_MM } else { PRIMARY_MM };
                        assert!(r.width >= least * mm - hair && r.height >= PRIMARY_MM * mm - hair, "{r:?}");
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
                            assert!(a.gap_to(b) >= GAP_MM * mm - hair, "{} {a:?} {b:?}", phone.name);
                        }
                        let parts = [page.title, page.notice, page.rest];
                        assert!(parts.iter().all(|part| !part.overlaps(a)), "{} {a:?}", phone.name);
                        let figure = layout.figure;
                        assert!(page != layout.typing || !figure.overlaps(a), "{} {a:?}", phone.name);
                    }
                    let (room, least) = if page == layout.typing {
                        (layout.figure, [3.5, 13.0])
                    } else {
                        (page.rest, [6.5, 28.0])
                    };
                    assert!(
                        room.height >= least[0] * mm && room.width >= least[1] * mm,
                        "{} {room:?}",
                        phone.name
                    );
                    assert!(page.title.height >= 3.5 * mm, "{} {page:?}", phone.name);
                }
            }
        }
    }

    #[test]
    fn the_figure_that_is_typed_is_as_large_as_the_text_where_there_is_room() {
        for phone in PHONES {
            let high = |scale| match_layout(&phone.glass(scale, false)).unwrap().figure.height;
            assert_eq!(high(0.85), high(1.0), "{}: never smaller than at 100 %", phone.name);
            assert!(high(2.0) >= high(1.0), "{}", phone.name);
        }
        let most = |phone: &super::super::phones::Phone| {
            let high = |scale| match_layout(&phone.glass(scale, false)).unwrap().figure.height;
            high(2.0) / high(1.0)
        };
        let most = PHONES.iter().map(most).fold(0.0, f64::max);
        assert!(most > 1.5, "{most}");
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
        // Digits are read from left to right; the keys beside 0 change sides.
        assert_eq!((&right.pad[..9], right.pad[10]), (&left.pad[..9], left.pad[10]));
        assert_eq!((right.pad[9], right.pad[11]), (left.pad[11], left.pad[9]));
        assert!(left.pad[0].left < left.pad[1].left && left.pad[11].left < left.pad[9].left);
    }

    #[test]
    fn keys_that_name_sides_are_read_from_left_to_right_by_either_hand() {
        for phone in PHONES {
            for glass in [false, true].map(|left| phone.both_ways(1.0, left)).concat() {
                let layout = match_layout(&glass).unwrap();
                let read = &layout.above_classes_read;
                let below_each_other = read.windows(2).all(|two| two[0].left == two[1].left);
                let in_order = read.windows(2).all(|two| two[0].right() < two[1].left);
                assert!(in_order || below_each_other, "{} {read:?}", phone.name);
                assert!(read.iter().all(|at| layout.above_classes.contains(at)), "{}", phone.name);
            }
        }
    }

    #[test]
    fn on_its_side_the_keys_beside_the_digits_are_at_either_thumb() {
        for phone in PHONES {
            for left_handed in [false, true] {
                let pad = match_layout(&phone.on_its_side(1.0, left_handed)).unwrap().pad;
                assert!(pad[0].left < pad[1].left && pad[1].left < pad[2].left, "{}", phone.name);
                for beside in &pad[9..] {
                    let at_the_thumb =
                        if left_handed { beside.right() < pad[0].left } else { beside.left > pad[2].right() };
                    assert!(at_the_thumb, "{} {beside:?}", phone.name);
                }
            }
        }
    }
}
