//! Where the parts of the other screens lie: a title, a notice, the rest, BACK.
//!
//! Upright the keys stand below the page. On a glass on its side they stand in a column at the thumb, and the page has
//! all the height beside them.

use super::keys::{MARGIN_MM, Rows};
use super::{GAP_MM, Millimetres, Rect};
use serde::{Deserialize, Serialize};

/// Height of a title, mm.
const TITLE_MM: f64 = 6.0;
/// Height of a notice, mm.
const NOTICE_MM: f64 = 4.5;
/// Between the notice and the rest, mm.
const BELOW_NOTICE_MM: f64 = 0.5;
/// Between the rest and the keys, mm.
const ABOVE_KEYS_MM: f64 = 2.0;
/// Between the top of the glass and the title, mm.
const HEAD_MM: f64 = 0.5;
/// Width at which a grid takes one more key beside the others, mm.
const GRID_KEY_MM: f64 = 21.0;

/// One page.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PagePlace {
    /// What it is called.
    pub title: Rect,
    /// What was done, or refused.
    pub notice: Rect,
    /// Everything else.
    pub rest: Rect,
}

impl PagePlace {
    /// Title and notice at the top of a place, this many pixels (or whatever it is measured in) a millimetre.
    pub(crate) fn in_place(place: Rect, mm: f64) -> Self {
        let title = Rect { height: TITLE_MM * mm, ..place };
        let notice = Rect { top: title.bottom(), height: NOTICE_MM * mm, ..place };
        let top = notice.bottom() + BELOW_NOTICE_MM * mm;
        Self { title, notice, rest: Rect { top, height: place.bottom() - top, ..place } }
    }

    /// Title and notice in the column of the keys, the whole height for the rest.
    fn beside(column: Rect, rest: Rect) -> Self {
        let notice_top = column.top + column.height * TITLE_MM / (TITLE_MM + NOTICE_MM);
        let title = Rect { height: notice_top - column.top, ..column };
        let notice = Rect { top: notice_top, height: column.bottom() - notice_top, ..column };
        Self { title, notice, rest }
    }

    pub(super) fn parts(&mut self) -> [&mut Rect; 3] {
        [&mut self.title, &mut self.notice, &mut self.rest]
    }
}

/// The pages in millimetres of glass.
pub(super) struct Pages {
    pub(super) back: Rect,
    pub(super) page: PagePlace,
    pub(super) columns: u8,
    pub(super) start: Rect,
    pub(super) set_up: PagePlace,
}

/// Lays the pages.
pub(super) fn lay(glass: &Millimetres) -> Pages {
    let top = glass.top + HEAD_MM;
    let rows = Rows::on(glass);
    if glass.on_its_side() {
        let (back, start) = (rows.corner(), rows.above_corner());
        let rest = Rect { top, height: back.bottom() - top, ..rows.beside_column() };
        let column = |below: &Rect| Rect { top, height: below.top - ABOVE_KEYS_MM - top, ..back };
        return Pages {
            back,
            start,
            columns: columns(rest.width),
            page: PagePlace::beside(column(&back), rest),
            set_up: PagePlace::in_place(rest, 1.0),
        };
    }
    let whole = Rect { left: MARGIN_MM, top, width: glass.width - 2.0 * MARGIN_MM, height: 0.0 };
    let above =
        |key: &Rect| PagePlace::in_place(Rect { height: key.top - ABOVE_KEYS_MM - top, ..whole }, 1.0);
    let (back, start) = (rows.beside_cast(), rows.pair_row());
    Pages { back, start, columns: columns(whole.width), page: above(&back), set_up: above(&start) }
}

/// Keys beside each other in a grid so wide, mm.
fn columns(width: f64) -> u8 {
    ((width + GAP_MM) / (GRID_KEY_MM + GAP_MM)).floor().clamp(3.0, 9.0) as u8
}

#[cfg(test)]
mod tests {
    use super::super::phones::PHONES;
    use super::super::{PRIMARY_MM, PadAsk, bank_layout};
    use super::*;
    use restwater_screen::BankState;

    #[test]
    fn pages_keep_off_their_keys_and_have_room_on_every_glass_both_ways() {
        for (phone, left) in PHONES.iter().flat_map(|p| [(p, false), (p, true)]) {
            for glass in phone.both_ways(1.0, left) {
                let layout = bank_layout(&glass, PadAsk { state: BankState::Out, rods: 1, page: 0 }).unwrap();
                let (px, hair) = (glass.px_per_mm, 1e-6);
                for (mut page, keys) in
                    [(layout.page, vec![layout.back]), (layout.set_up, vec![layout.back, layout.start])]
                {
                    let parts: Vec<Rect> = page.parts().map(|part| *part).into_iter().chain(keys).collect();
                    for (i, part) in parts.iter().enumerate() {
                        let inside = part.left >= 0.0
                            && part.right() <= glass.width_px + hair
                            && part.top >= glass.inset_top_px
                            && part.bottom() <= glass.height_px - glass.inset_bottom_px + hair;
                        assert!(inside, "{} {part:?}", phone.name);
                        assert!(parts[i + 1..].iter().all(|other| !part.overlaps(other)), "{}", phone.name);
                    }
                    // Two rows of keys and a sentence above them.
                    let (width, height) = (page.rest.width / px, page.rest.height / px);
                    assert!(width >= 51.0 && height >= 38.0, "{}: {width} x {height}", phone.name);
                }
                for key in [layout.back, layout.start] {
                    assert!(key.width.min(key.height) >= PRIMARY_MM * px - hair, "{}", phone.name);
                }
            }
        }
    }
}
