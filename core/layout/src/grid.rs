//! Grids of keys, in millimetres: the keys of a screen of choices, of a leaf, of the list of screens.
//!
//! The rows are at the bottom of their place and in the order they are read. Within a row the first key is the one used most, so it
//! is at the thumb's side for either hand, and a row that is not full is at the thumb; a key that is alone fills it. Only keys
//! that name values, sides or moments keep their order from left to right for either hand: LEFT stays left of RIGHT, EARLIER of
//! LATER, and lengths are read as figures are.
//!
//! With large text the keys take what room there is: as few columns as need no further page, even fewer on a last page with fewer
//! keys, and higher rows.

use super::{GAP_MM, Rect, SECONDARY_MM};
use serde::{Deserialize, Serialize};

/// What a grid of keys depends on.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct GridAsk {
    /// Where it is, px.
    pub place: Rect,
    /// How many keys there are on all pages.
    pub keys: u32,
    /// Which page is open, from 0; beyond the end, the last.
    pub page: u32,
    /// Keys in a row: [`super::BankLayout::columns`].
    pub columns: u8,
    /// Pixels in a real millimetre.
    pub px_per_mm: f64,
    /// Whether it is for the left thumb.
    pub left_handed: bool,
    /// Whether the text is so large that the keys grow into the room there is: [`super::BankLayout::apart`].
    pub large: bool,
    /// Width of the widest label in letters of the size that is asked for, px: large text has no more columns than leave it most of
    /// that size. 0 if pages are more precious than the size of the letters.
    pub widest: f64,
    /// Whether labels may be broken between words, as on a page of choices; [`Self::widest`] is then the width of the widest word.
    pub breaks: bool,
    /// Of each key, whether it is read from left to right by either hand with those beside it that are too; a key that is
    /// missing here is not.
    pub reads: Vec<bool>,
}

/// One page of a grid.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct GridPage {
    /// The first key on it, from 0.
    pub first: u32,
    /// The places of its keys, in their order, px.
    pub places: Vec<Rect>,
    /// How many pages there are, at least one.
    pub pages: u32,
}

/// A key grows up to this height for large text, mm.
const ROOMY_MM: f64 = 22.0;

/// A label of large text may be this share of the size that is asked for before it is given a wider key.
const LEAST_SIZE: f64 = 0.75;
/// What the edges of a key take of its width, mm.
const EDGES_MM: f64 = 2.0;

/// A label of this share of the width of a page still leaves it two columns.
const TWO_COLUMNS: f64 = 0.55;

impl GridAsk {
    /// The width that a key needs for its label. A page of choices keeps two columns, so that it doesn't become a long list, and on a
    /// screen on its side, which has few rows, it keeps all of them.
    fn widest(&self) -> f64 {
        if !self.breaks {
            self.widest
        } else if self.place.width > self.place.height {
            0.0
        } else {
            self.widest.min(self.place.width * TWO_COLUMNS)
        }
    }
}

/// Places the keys of one page of a grid.
pub fn key_grid(ask: &GridAsk) -> GridPage {
    let (gap, least) = (GAP_MM * ask.px_per_mm, SECONDARY_MM * ask.px_per_mm);
    let rows = (((ask.place.height + gap) / (least + gap)).floor() as u32).max(1);
    let pages_of = |columns: u32| ask.keys.div_ceil(columns * rows).max(1);
    let width_of = |columns: u32| (ask.place.width - f64::from(columns - 1) * gap) / f64::from(columns);
    let widest = ask.widest();
    let wide = |columns: &u32| width_of(*columns) >= LEAST_SIZE * widest + EDGES_MM * ask.px_per_mm;
    let usual = u32::from(ask.columns.max(1));
    let most = if ask.large && widest > 0.0 { (1..=usual).rev().find(wide).unwrap_or(1) } else { usual };
    let fewest = (1..most).find(|columns| pages_of(*columns) == pages_of(most));
    // A key that is alone has the whole row, so that it reads as a line of the page.
    let columns = if ask.keys == 1 { 1 } else { fewest.filter(|_| ask.large).unwrap_or(most) };
    let fits = columns * rows;
    let pages = pages_of(columns);
    let first = ask.page.min(pages - 1) * fits;
    let shown = (ask.keys - first).min(fits);
    // A last page with fewer keys has wider ones.
    let columns = (1..columns).find(|fewer| ask.large && shown <= fewer * rows).unwrap_or(columns);
    // Without that, all pages have the row height of the fullest; a gap stays above it.
    let fullest = if ask.large { shown } else { ask.keys.min(fits) };
    let full = f64::from(fullest.div_ceil(columns).max(1));
    let roomy = (ask.place.height / full - gap).min(ROOMY_MM * ask.px_per_mm);
    let height = if ask.large { roomy.max(least) } else { least };
    let rows = shown.div_ceil(columns);
    let width = width_of(columns);
    let top = ask.place.bottom() - f64::from(rows) * (height + gap) + gap;
    let places = (0..shown).map(|i| {
        let along = i % columns;
        let column = if ask.left_handed { along } else { columns - 1 - along };
        let left = ask.place.left + f64::from(column) * (width + gap);
        Rect { left, top: top + f64::from(i / columns) * (height + gap), width, height }
    });
    let mut places: Vec<Rect> = places.collect();
    let reads = |i: usize| ask.reads.get(first as usize + i).is_some_and(|reads| *reads);
    for (row, keys) in places.chunks_mut(columns as usize).enumerate() {
        read_in_order(keys, |i| reads(row * columns as usize + i));
    }
    GridPage { first, places, pages }
}

/// Within a row, keys beside each other that are read from left to right share their places out in that order.
fn read_in_order(row: &mut [Rect], reads: impl Fn(usize) -> bool) {
    let mut begin = 0;
    while begin < row.len() {
        let end = (begin..row.len()).find(|i| !reads(*i)).unwrap_or(row.len());
        if row[begin..end].windows(2).any(|two| two[0].left > two[1].left) {
            row[begin..end].reverse();
        }
        begin = end + 1;
    }
}

#[cfg(test)]
mod tests {
    use super::super::phones::PHONES;
    use super::super::{PadAsk, bank_layout};
    use super::*;
    use restwater_screen::BankState;

    /// Every phone both ways for either hand, with up to 30 keys in the whole page and in the height of one row.
    fn all() -> impl Iterator<Item = (GridAsk, GridPage)> {
        let hands = PHONES.iter().flat_map(|p| [(p, false), (p, true)]);
        let glasses = hands.flat_map(|(p, left)| p.both_ways(1.0, left));
        glasses.flat_map(|glass| {
            let layout = bank_layout(&glass, PadAsk { state: BankState::Out, rods: 1, page: 0 }).unwrap();
            let px_per_mm = glass.px_per_mm;
            let whole = layout.page.rest;
            let one_row = Rect { height: SECONDARY_MM * px_per_mm, ..whole };
            let each = [whole, one_row].into_iter().flat_map(|place| (0..30).map(move |keys| (place, keys)));
            each.flat_map(move |(place, keys)| {
                [(false, false), (true, false), (false, true), (true, true)].map(|(values, large)| {
                    let columns = layout.columns;
                    let left_handed = glass.left_handed;
                    let reads = vec![values; keys as usize];
                    let ask = GridAsk {
                        place,
                        keys,
                        page: 0,
                        columns,
                        px_per_mm,
                        left_handed,
                        large,
                        widest: 0.0,
                        breaks: false,
                        reads,
                    };
                    let grid = key_grid(&ask);
                    (ask, grid)
                })
            })
        })
    }

    #[test]
    fn keys_keep_their_size_and_gaps_and_stay_in_their_place_and_each_is_on_one_page() {
        for (ask, first) in all() {
            let (mm, hair) = (ask.px_per_mm, 1e-6);
            let mut next = 0;
            for page in 0..first.pages {
                let grid = key_grid(&GridAsk { page, ..ask.clone() });
                assert_eq!(grid.first, next);
                next += u32::try_from(grid.places.len()).unwrap();
                for (i, key) in grid.places.iter().enumerate() {
                    assert!(key.width.min(key.height) >= SECONDARY_MM * mm - hair, "{ask:?} {key:?}");
                    let inside = key.left >= ask.place.left - hair
                        && key.right() <= ask.place.right() + hair
                        && key.top >= ask.place.top - hair
                        && key.bottom() <= ask.place.bottom() + hair;
                    assert!(inside, "{ask:?} {key:?}");
                    for other in &grid.places[i + 1..] {
                        assert!(key.gap_to(other) >= GAP_MM * mm - hair, "{ask:?}");
                    }
                }
            }
            assert_eq!(next, ask.keys);
            assert_eq!(
                key_grid(&GridAsk { page: first.pages + 5, ..ask.clone() }).first,
                key_grid(&GridAsk { page: first.pages - 1, ..ask }).first
            );
        }
    }

    #[test]
    fn the_first_key_of_each_row_is_at_either_thumb_and_values_are_read_from_left_to_right() {
        for (ask, grid) in all() {
            let hair = 1e-6;
            let columns = grid.places.iter().filter(|at| at.top == grid.places[0].top).count().max(1);
            let values = ask.reads.contains(&true);
            let thumb = |key: &Rect| {
                if ask.left_handed { key.left - ask.place.left } else { ask.place.right() - key.right() }
            };
            for row in grid.places.chunks(columns) {
                let nearest = if values && !ask.left_handed { row.last() } else { row.first() };
                assert!(thumb(nearest.unwrap()).abs() < hair, "{ask:?} {row:?}");
                for two in row.windows(2) {
                    if values {
                        assert!(two[0].left < two[1].left, "{ask:?}");
                    } else {
                        assert!(thumb(&two[0]) < thumb(&two[1]), "{ask:?}");
                    }
                }
            }
        }
    }

    #[test]
    fn keys_of_large_text_are_no_smaller_need_no_further_page_and_fill_their_place() {
        for (ask, large) in all().filter(|(ask, _)| ask.large && ask.keys > 0) {
            let usual = key_grid(&GridAsk { large: false, ..ask.clone() });
            assert_eq!(large.pages, usual.pages, "{ask:?}");
            let (was, is) = (usual.places[0], large.places[0]);
            assert!(
                is.width >= was.width - 1e-6 && is.height >= was.height - 1e-6,
                "{ask:?}: {was:?} to {is:?}"
            );
            let top = large.places.iter().map(|at| at.top).fold(f64::MAX, f64::min);
            let (gap, mm) = (GAP_MM * ask.px_per_mm, ask.px_per_mm);
            let one_column_less = large.pages == 1 && ask.keys == 1;
            let high = is.height >= ROOMY_MM * mm - 1e-6 || is.height <= SECONDARY_MM * mm + 1e-6;
            let full = top - ask.place.top <= gap + 1e-6;
            assert!(one_column_less || high || full, "{ask:?}: {is:?}");
        }
        let place = Rect { left: 0.0, top: 0.0, width: 54.0, height: 64.0 };
        let reads = Vec::new();
        // Eleven settings of the phone on the smallest screen: two pages as before, but two columns and rows of 18.3 mm.
        let ask = GridAsk {
            place,
            keys: 11,
            page: 0,
            columns: 3,
            px_per_mm: 1.0,
            left_handed: false,
            large: true,
            widest: 0.0,
            breaks: false,
            reads,
        };
        let grid = key_grid(&ask);
        assert_eq!((grid.pages, grid.places.len()), (2, 6));
        assert!(
            (grid.places[0].width - 25.5).abs() < 1e-6
                && (grid.places[0].height - (64.0 / 3.0 - 3.0)).abs() < 1e-6
        );
    }

    /// At 200 % a word of ten letters needs the whole width of the smallest screen.
    #[test]
    fn a_few_keys_of_large_text_have_the_whole_width_and_a_last_page_shares_it_among_its_own() {
        let place = Rect { left: 0.0, top: 0.0, width: 54.0, height: 64.0 };
        let of = |keys, page, large| {
            let (columns, px_per_mm, left_handed) = (3, 1.0, false);
            key_grid(&GridAsk {
                place,
                keys,
                page,
                columns,
                px_per_mm,
                left_handed,
                large,
                widest: 0.0,
                breaks: false,
                reads: Vec::new(),
            })
        };
        assert!(of(3, 0, true).places.iter().all(|at| at.width == 54.0), "a line for each of three");
        // Nine keys fill the first page in three columns; three are left for the second.
        let (first, second) = (of(12, 0, true), of(12, 1, true));
        assert_eq!((first.pages, first.places.len(), second.places.len()), (2, 6, 6));
        let second = of(16, 1, true);
        assert_eq!((second.first, second.places.len()), (9, 7));
        let last = of(11, 1, true);
        assert_eq!((last.first, last.places.len(), last.places[0].width), (6, 5, 25.5));
        let last = of(20, 2, true);
        assert_eq!((last.first, last.places.len(), last.places[0].width), (18, 2, 54.0));
        assert_eq!(of(20, 2, false).places[0].width, 16.0, "unless the text is small");
    }

    #[test]
    fn a_wide_label_of_large_text_has_fewer_columns_and_more_pages() {
        let upright = Rect { left: 0.0, top: 0.0, width: 54.0, height: 64.0 };
        let asked = |widest, large, breaks, place| {
            let (columns, px_per_mm, left_handed) = (3, 1.0, false);
            let ask = GridAsk {
                place,
                keys: 9,
                page: 0,
                columns,
                px_per_mm,
                left_handed,
                large,
                widest,
                breaks,
                reads: Vec::new(),
            };
            let grid = key_grid(&ask);
            (grid.pages, grid.places[0].width)
        };
        let of = |widest, large| asked(widest, large, false, upright);
        assert_eq!(of(0.0, true), (1, 16.0));
        // Three columns have 14 mm for words, two 23.5.
        assert_eq!(of(14.0 / 0.75, true), (1, 16.0));
        assert_eq!(of(15.0 / 0.75, true), (2, 25.5));
        assert_eq!(of(24.0 / 0.75, true), (3, 54.0));
        assert_eq!(of(900.0, true), (3, 54.0));
        assert_eq!(of(900.0, false), (1, 16.0), "unless the text is small");
        let words = |widest, place| asked(widest, true, true, place);
        assert_eq!(words(15.0 / 0.75, upright), (2, 25.5));
        assert_eq!(words(900.0, upright), (2, 25.5), "words may be broken apart: two columns are kept");
        let on_its_side = Rect { width: 77.0, height: 54.0, ..upright };
        assert_eq!(words(900.0, on_its_side).0, asked(0.0, true, false, on_its_side).0, "no further page");
    }

    #[test]
    fn keys_that_name_sides_or_moments_keep_their_order_for_either_hand() {
        let place = Rect { left: 0.0, top: 0.0, width: 600.0, height: 1_200.0 };
        // MARK, EARLIER, LATER | NOW, LIST, REST | LEFT, RIGHT, FAR, and keys without words.
        let reads = [false, true, true, true, false, false, true, true, true, false].to_vec();
        for columns in 2..=4 {
            for left_handed in [false, true] {
                let ask = GridAsk {
                    place,
                    keys: 12,
                    page: 0,
                    columns,
                    px_per_mm: 8.0,
                    left_handed,
                    large: false,
                    widest: 0.0,
                    breaks: false,
                    reads: reads.clone(),
                };
                let grid = key_grid(&ask);
                for i in 0..11 {
                    let (a, b) = (grid.places[i], grid.places[i + 1]);
                    if a.top == b.top {
                        let in_order = reads.get(i) == Some(&true) && reads.get(i + 1) == Some(&true);
                        assert_eq!(a.left < b.left, left_handed || in_order, "{columns} {i}");
                    }
                }
                let row: Vec<f64> = grid.places.iter().map(|at| at.top).collect();
                assert!(row.windows(2).all(|two| two[0] <= two[1]), "rows stay in order");
            }
        }
    }
}
