//! The sheet behind MORE: every key of the Bank that has no place on the pad, all at once.
//!
//! ```text
//!   More keys
//!             +-------+ +-------+
//!             |  END  | | REDO  |
//!   +-------+ +-------+ +-------+
//!   | KNOCK | |5 MIN..| | ...   |      least used above
//!   +-------+ +-------+ +-------+
//!   ...
//!   +-------+ +-------+ +-------+
//!   | LEFT  | | FEED  | | BACK  |      most used at the thumb
//!   +-------+ +-------+ +-------+
//! ```
//!
//! Each further key is two taps from the Bank, so the sheet has pages only where its keys don't fit on one: with large text, which
//! needs wider keys, and on some screens on their side. The pager is then where MORE was, which turns round. The keys are at least
//! 15 mm each way, but the last of them are farther from the thumb than those of the pad: they are the least used.

use super::keys::{Rows, further_keys};
use super::least::{FOOT_MM, HEAD_MM, MARGIN_MM};
use super::page::PagePlace;
use super::{APART_ABOVE_SCALE, GAP_MM, KeyPlace, Millimetres, PRIMARY_MM, PadAsk, Rect, SECONDARY_MM};
use restwater_screen::Key;

/// Least width of a key with large text, mm.
const WIDE_MM: f64 = 21.0;
/// Width of the words beside the keys of a screen on its side, mm.
const ASIDE_MM: f64 = 22.0;
/// Height of the title, whose place is also that of the notice, mm.
const TITLE_MM: f64 = 6.0;
/// Columns are not made wider than this many allow as long as all keys fit: a higher stack is farther from the thumb.
const USUAL_COLUMNS: usize = 3;

/// One page of the sheet, in millimetres.
pub(super) struct Sheet {
    pub(super) keys: Vec<KeyPlace>,
    pub(super) back: Rect,
    pub(super) pager: Option<Rect>,
    pub(super) head: PagePlace,
    pub(super) pages: u8,
}

/// The sheet behind MORE, at its open page or its first; `None` if there is nothing on it.
pub(super) fn sheet(glass: &Millimetres, ask: PadAsk) -> Option<Sheet> {
    let keys = further_keys(ask.state, ask.rods > 1, Rows::on(glass).three_fit(), glass.left_handed);
    (!keys.is_empty()).then(|| Sheet::of(glass, &keys, usize::from(ask.page.saturating_sub(1))))
}

impl Sheet {
    /// The page that is open, from 0; counts round.
    pub(super) fn of(glass: &Millimetres, keys: &[Key], page: usize) -> Self {
        let place = Place::on(glass);
        let on_one = place.columns * place.rows - 1;
        if keys.len() <= on_one {
            let columns = (USUAL_COLUMNS.min(place.columns)..=place.columns)
                .find(|columns| (keys.len() + 1).div_ceil(*columns) <= place.rows)
                .unwrap_or(place.columns);
            let cells = place.cells(columns, (keys.len() + 1).div_ceil(columns));
            let keys = pegs_in_a_row(keys, columns - 1, columns);
            return Self::filled(&place, &keys, cells.back, None, &cells.others, 1);
        }
        // BACK and the pager are on each page.
        let at_once = (on_one - 1).max(1);
        let pages = keys.len().div_ceil(at_once);
        let page = page % pages;
        let Cells { back, mut others } = place.cells(place.columns, place.rows);
        let pager = others.remove(place.columns.saturating_sub(2));
        let shown = keys.iter().skip(page * at_once).take(at_once).copied().collect::<Vec<_>>();
        let shown = pegs_in_a_row(&shown, place.columns.saturating_sub(2), place.columns);
        Self::filled(&place, &shown, back, Some(pager), &others, pages)
    }

    fn filled(
        place: &Place,
        keys: &[Key],
        back: Rect,
        pager: Option<Rect>,
        cells: &[Rect],
        pages: usize,
    ) -> Self {
        let keys = keys.iter().zip(cells).map(|(&key, &rect)| KeyPlace { key, rect }).collect();
        let (title, rest) = (place.title, place.rest);
        let head = PagePlace { title, notice: title, rest };
        Self { keys, back, pager, head, pages: u8::try_from(pages).unwrap_or(1) }
    }
}

/// The same keys, with what the pegs on either side land in one row, as one sees them from the peg, and between them the bank
/// opposite if the row has room for three. `first_row`: how many keys are in the row of BACK.
fn pegs_in_a_row(keys: &[Key], first_row: usize, columns: usize) -> Vec<Key> {
    let sides = [Key::NeighbourLeft, Key::NeighbourAcross, Key::NeighbourRight];
    let wanted = |key: &Key| sides.contains(key) && (columns > 2 || *key != Key::NeighbourAcross);
    let (group, mut others): (Vec<Key>, Vec<Key>) = keys.iter().copied().partition(wanted);
    let row = |i: usize| if i < first_row { 0 } else { 1 + (i - first_row) / columns };
    let place = |key: Key| keys.iter().position(|other| *other == key);
    let (Some(left), Some(right)) = (place(Key::NeighbourLeft), place(Key::NeighbourRight)) else {
        return keys.to_vec();
    };
    if row(left) == row(right) {
        return keys.to_vec();
    }
    let begin = left.min(right);
    let fits = |at: &usize| row(*at) == row(at + group.len() - 1);
    let Some(at) = (begin..=others.len()).find(fits) else { return keys.to_vec() };
    // FEED stays behind them: it opens a screen, so it is not to be beside BACK.
    let feed = others[..at].iter().position(|key| *key == Key::Feed).filter(|_| at < others.len());
    let feed = feed.map(|feed| others.remove(feed));
    let behind = feed.map_or(at, |_| at.min(others.len()));
    others.splice(behind..behind, group.into_iter().chain(feed));
    others
}

/// The cells of a page.
struct Cells {
    /// In the corner of the thumb.
    back: Rect,
    /// The others, row by row from the bottom, each from the hand.
    others: Vec<Rect>,
}

/// What the sheet has room for.
struct Place {
    title: Rect,
    rest: Rect,
    columns: usize,
    rows: usize,
    left_handed: bool,
}

impl Place {
    fn on(glass: &Millimetres) -> Self {
        let whole = Rect {
            left: MARGIN_MM,
            top: glass.top + HEAD_MM,
            width: glass.width - 2.0 * MARGIN_MM,
            height: glass.free_height() - HEAD_MM - FOOT_MM,
        };
        let large = glass.text > APART_ABOVE_SCALE;
        let (title, rest) = if glass.on_its_side() {
            let width = whole.width - ASIDE_MM - GAP_MM;
            let [words, keys] =
                if glass.left_handed { [width + GAP_MM, 0.0] } else { [0.0, ASIDE_MM + GAP_MM] };
            (
                Rect { left: whole.left + words, width: ASIDE_MM, ..whole },
                Rect { left: whole.left + keys, width, ..whole },
            )
        } else {
            let title = Rect { height: TITLE_MM, ..whole };
            let top = title.bottom() + HEAD_MM;
            (title, Rect { top, height: whole.bottom() - top, ..whole })
        };
        let fit =
            |room: f64, least: f64| ((room + GAP_MM) / (least + GAP_MM) + 1e-9).floor().max(1.0) as usize;
        Self {
            title,
            rest,
            columns: fit(rest.width, if large { WIDE_MM } else { SECONDARY_MM }),
            rows: fit(rest.height, SECONDARY_MM),
            left_handed: glass.left_handed,
        }
    }

    fn cells(&self, columns: usize, rows: usize) -> Cells {
        let each = |room: f64, count: usize| (room - GAP_MM * (count as f64 - 1.0)) / count as f64;
        let (width, height) = (each(self.rest.width, columns), each(self.rest.height, rows).min(PRIMARY_MM));
        let cell = |row: usize, column: usize| {
            let column = if self.left_handed { column } else { columns - 1 - column };
            Rect {
                left: self.rest.left + column as f64 * (width + GAP_MM),
                top: self.rest.bottom() - height - row as f64 * (height + GAP_MM),
                width,
                height,
            }
        };
        let mut all = (0..rows).flat_map(|row| (0..columns).map(move |column| (row, column)));
        let back = all.next().map_or(self.rest, |(row, column)| cell(row, column));
        Cells { back, others: all.map(|(row, column)| cell(row, column)).collect() }
    }
}

#[cfg(test)]
mod tests;
