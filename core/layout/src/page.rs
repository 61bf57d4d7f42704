//! The layout of the other screens: a title, a notice, the rest, BACK and the pager.
//!
//! Upright the keys are below the page, BACK in the corner of the thumb and the pager beside it. On a screen
//! on its side they are in a column at the thumb, and the page has the whole height beside them.

use super::keys::Rows;
use super::least::MARGIN_MM;
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
/// Between the top of the screen and the title, mm.
const HEAD_MM: f64 = 0.5;
/// Width at which a grid takes one more key beside the others, mm.
const GRID_KEY_MM: f64 = 21.0;

/// One page.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PagePlace {
    /// What it is called.
    pub title: Rect,
    /// The notice of what was done or refused.
    pub notice: Rect,
    /// Everything else.
    pub rest: Rect,
}

impl PagePlace {
    /// Title and notice at the top of a place, with this many pixels (or whatever it is measured in) to the
    /// millimetre.
    pub(crate) fn in_place(place: Rect, mm: f64) -> Self {
        let title = Rect { height: TITLE_MM * mm, ..place };
        let notice = Rect { top: title.bottom(), height: NOTICE_MM * mm, ..place };
        let top = notice.bottom() + BELOW_NOTICE_MM * mm;
        Self { title, notice, rest: Rect { top, height: place.bottom() - top, ..place } }
    }

    pub(super) fn parts(&mut self) -> [&mut Rect; 3] {
        [&mut self.title, &mut self.notice, &mut self.rest]
    }
}

/// The pages, in millimetres.
pub(super) struct Pages {
    pub(super) back: Rect,
    pub(super) pager: Rect,
    pub(super) page: PagePlace,
    pub(super) columns: u8,
    pub(super) start: Rect,
    pub(super) set_up: PagePlace,
    pub(super) set_up_pager: Rect,
}

/// Places what pages share.
pub(super) fn place(glass: &Millimetres) -> Pages {
    let top = glass.top + HEAD_MM;
    let rows = Rows::on(glass);
    if glass.on_its_side() {
        let (back, above) = (rows.corner(), rows.above_corner());
        let high = |beside: Rect| Rect { top, height: back.bottom() - top, ..beside };
        let rest = high(rows.beside_column());
        return Pages {
            back,
            pager: above,
            start: above,
            columns: columns(rest.width),
            page: PagePlace::in_place(rest, 1.0),
            set_up: PagePlace::in_place(high(rows.beyond_small()), 1.0),
            set_up_pager: rows.small_beside_column(),
        };
    }
    let whole = Rect { left: MARGIN_MM, top, width: glass.width - 2.0 * MARGIN_MM, height: 0.0 };
    let above =
        |key: &Rect| PagePlace::in_place(Rect { height: key.top - ABOVE_KEYS_MM - top, ..whole }, 1.0);
    let (back, pager, start) = (rows.corner(), rows.beside_corner(), rows.pair_row());
    let (page, set_up) = (above(&back), above(&start));
    Pages { back, pager, start, columns: columns(whole.width), page, set_up, set_up_pager: pager }
}

/// How many keys are beside each other in a grid of this width, mm.
fn columns(width: f64) -> u8 {
    ((width + GAP_MM) / (GRID_KEY_MM + GAP_MM)).floor().clamp(3.0, 9.0) as u8
}

#[cfg(test)]
mod tests {
    use super::super::phones::PHONES;
    use super::super::{PRIMARY_MM, PadAsk, SECONDARY_MM, bank_layout};
    use super::*;
    use restwater_screen::BankState;

    #[test]
    fn pages_do_not_touch_their_keys_and_have_room_on_every_glass_both_ways() {
        for (phone, left) in PHONES.iter().flat_map(|p| [(p, false), (p, true)]) {
            for glass in phone.both_ways(1.0, left) {
                let layout = bank_layout(&glass, PadAsk { state: BankState::Out, rods: 1, page: 0 }).unwrap();
                let (px, hair) = (glass.px_per_mm, 1e-6);
                let set_up = vec![layout.back, layout.start, layout.set_up_pager];
                for (mut page, keys) in
                    [(layout.page, vec![layout.back, layout.pager]), (layout.set_up, set_up)]
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
                for key in [layout.back, layout.pager, layout.start] {
                    assert!(key.width.min(key.height) >= PRIMARY_MM * px - hair, "{}", phone.name);
                }
                let small = layout.set_up_pager;
                assert!(small.width.min(small.height) >= SECONDARY_MM * px - hair, "{}", phone.name);
                // BACK has the corner of the thumb.
                let across = if left { layout.back.left } else { glass.width_px - layout.back.right() };
                assert!(across <= 2.0 * px + hair, "{} {across}", phone.name);
            }
        }
    }
}
