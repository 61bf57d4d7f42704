//! The parts of a page of choices: the caution above them, what the open row is, where it is from, its typed field, and the
//! place of its keys.
//!
//! The keys always keep at least one row. What is said above them takes what it asks for as far as that costs no row of keys, and
//! on a screen on its side the field is beside the words of its row if there is no room for it below them.

use super::{GAP_MM, Rect, SECONDARY_MM};
use serde::{Deserialize, Serialize};

/// A caution takes at most this share of the page.
const CAUTION_SHARE: f64 = 0.3;
/// Of what an open row is, and of where that is from, mm: what each has at least.
const LINE_MM: f64 = 4.5;
/// Height of the typed field with its key, and of the gap below it, mm.
const FIELD_MM: f64 = 11.0;
/// The part of the width that the words of a row have beside its field.
const WORDS_SHARE: f64 = 0.5;

/// What the parts of a page of choices depend on.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct RowAsk {
    /// Where the page is, px.
    pub place: Rect,
    /// Pixels in a real millimetre.
    pub px_per_mm: f64,
    /// Whether a row is open; otherwise the keys are the rows.
    pub open: bool,
    /// Whether the row has a typed field.
    pub typed: bool,
    /// Rows of keys that there are at 100 %: no more are kept free.
    pub rows: u32,
    /// Height of the caution at its size, px; 0 without one.
    pub caution: f64,
    /// Height of what the row is, at its size over the width of the page, px.
    pub says: f64,
    /// Height of where that is from, at its size over the width of the page, px; 0 if that is not said.
    pub source: f64,
    /// Height of what the row is at 100 %, px.
    pub says_usual: f64,
    /// Height of where that is from at 100 %, px; 0 if that is not said.
    pub source_usual: f64,
}

/// The parts of a page of choices, from the top, px; a part without a height is not there.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct RowPlace {
    /// The caution.
    pub caution: Rect,
    /// What the row is.
    pub says: Rect,
    /// Where that is from.
    pub source: Rect,
    /// The typed field with its key.
    pub field: Rect,
    /// The place of the keys.
    pub keys: Rect,
}

/// Shares the page out.
pub fn row_place(ask: &RowAsk) -> RowPlace {
    let (place, gap) = (ask.place, GAP_MM * ask.px_per_mm);
    let Heights { caution, says, source, field, beside } = Heights::of(ask);
    let width = if beside { place.width * WORDS_SHARE } else { place.width };
    let at = |top: f64, height: f64| Rect { top, height, ..place };
    let caution = at(place.top, caution);
    let says = Rect { width, ..at(caution.bottom(), says) };
    let source = Rect { width, ..at(says.bottom(), source) };
    let field = if beside {
        Rect { left: says.right() + gap, width: place.width - width - gap, ..at(caution.bottom(), field) }
    } else {
        at(source.bottom(), field)
    };
    let top = field.bottom().max(source.bottom());
    let keys = at(top, (place.bottom() - top).max(0.0));
    RowPlace { caution, says, source, field, keys }
}

/// Heights of the parts, px.
struct Heights {
    caution: f64,
    says: f64,
    source: f64,
    field: f64,
    /// Whether the field is beside the words, whose lines share its height.
    beside: bool,
}

impl Heights {
    fn of(ask: &RowAsk) -> Self {
        let least = Self::least(ask);
        if !least.beside {
            return least.grown(ask);
        }
        let lines = least.field - GAP_MM / 2.0 * ask.px_per_mm;
        let (says, source) = if least.source > 0.0 { (lines / 2.0, lines / 2.0) } else { (lines, 0.0) };
        Self { says, source, ..least }
    }

    /// What each part has at least. A row of keys is left free.
    fn least(ask: &RowAsk) -> Self {
        let (place, mm) = (ask.place, ask.px_per_mm);
        let if_there = |there: bool, height_mm: f64| if there { height_mm * mm } else { 0.0 };
        let says = if_there(ask.open, LINE_MM);
        let source = if_there(ask.open && ask.source > 0.0, LINE_MM);
        let field = if_there(ask.open && ask.typed, FIELD_MM);
        let caution = ask.caution.clamp(0.0, place.height * CAUTION_SHARE);
        let room = place.height - SECONDARY_MM * mm;
        let stacked = says + source + field;
        let beside = field > 0.0 && place.width > place.height && caution + stacked > room;
        let head = if beside { field } else { stacked };
        Self { caution: caution.min((room - head).max(0.0)), says, source, field, beside }
    }

    /// With what the words ask for, as far as that costs no row of keys.
    fn grown(mut self, ask: &RowAsk) -> Self {
        if !ask.open {
            return self;
        }
        let (gap, row) = (GAP_MM * ask.px_per_mm, (SECONDARY_MM + GAP_MM) * ask.px_per_mm);
        let left = ask.place.height - self.caution - self.says - self.source - self.field + gap;
        let rows = (left / row).floor().min(f64::from(ask.rows)).max(1.0);
        let mut spare = (left - rows * row).max(0.0);
        let mut grow = |part: &mut f64, asked: f64| {
            let by = (asked - *part).clamp(0.0, spare);
            *part += by;
            spare -= by;
        };
        // First what each has at 100 %, so that neither is smaller with large text; then the details are served first.
        grow(&mut self.says, ask.says_usual);
        grow(&mut self.source, ask.source_usual);
        grow(&mut self.source, ask.source);
        grow(&mut self.says, ask.says);
        self
    }
}

#[cfg(test)]
mod tests {
    use super::super::phones::PHONES;
    use super::super::{PadAsk, bank_layout};
    use super::*;
    use restwater_screen::BankState;

    /// Every row that there can be on the pages of every phone, with texts of any height.
    fn all() -> impl Iterator<Item = (RowAsk, RowPlace)> {
        let hands = PHONES.iter().flat_map(|p| [(p, false), (p, true)]);
        let glasses = hands.flat_map(|(p, left)| p.both_ways(2.0, left));
        glasses.flat_map(|glass| {
            let layout = bank_layout(&glass, PadAsk { state: BankState::Out, rods: 1, page: 0 }).unwrap();
            let px_per_mm = glass.px_per_mm;
            let texts = [0.0, 4.0, 9.0, 30.0].map(|mm| mm * px_per_mm);
            let kinds = [(false, false), (true, false), (true, true)];
            kinds.into_iter().flat_map(move |(open, typed)| {
                texts.into_iter().flat_map(move |caution| {
                    texts.into_iter().map(move |source| {
                        let says = source.max(4.0 * px_per_mm);
                        let place = layout.page.rest;
                        let (says_usual, source_usual) = (says / 2.0, source / 2.0);
                        let ask = RowAsk {
                            place,
                            px_per_mm,
                            open,
                            typed,
                            rows: 30,
                            caution,
                            says,
                            source,
                            says_usual,
                            source_usual,
                        };
                        (ask, row_place(&ask))
                    })
                })
            })
        })
    }

    #[test]
    fn no_part_covers_another_and_the_keys_keep_a_row_on_every_phone() {
        for (ask, parts) in all() {
            let hair = 1e-6;
            let RowPlace { caution, says, source, field, keys } = parts;
            let each = [caution, says, source, field, keys];
            for (i, part) in each.iter().enumerate().filter(|(_, part)| part.height > 0.0) {
                let inside = part.top >= ask.place.top - hair
                    && part.bottom() <= ask.place.bottom() + hair
                    && part.left >= ask.place.left - hair
                    && part.right() <= ask.place.right() + hair;
                assert!(inside, "{ask:?}: {part:?}");
                for other in each[i + 1..].iter().filter(|other| other.height > 0.0) {
                    let over = part.left < other.right() - hair
                        && other.left < part.right() - hair
                        && part.top < other.bottom() - hair
                        && other.top < part.bottom() - hair;
                    assert!(!over, "{ask:?}: {part:?} covers {other:?}");
                }
            }
            assert!(keys.height >= SECONDARY_MM * ask.px_per_mm - hair, "{ask:?}: {keys:?}");
            assert_eq!(field.height > 0.0, ask.open && ask.typed);
            assert_eq!(source.height > 0.0, ask.open && ask.source > 0.0);
        }
    }

    #[test]
    fn every_part_can_be_read_and_a_longer_text_costs_no_row_of_keys() {
        let rows =
            |keys: &Rect, mm: f64| ((keys.height / mm + GAP_MM + 1e-9) / (SECONDARY_MM + GAP_MM)).floor();
        for (ask, parts) in all() {
            let mm = ask.px_per_mm;
            // Three lines of the least size in a frame, if it asks for as much.
            let least = 10.0_f64.min(ask.caution / mm);
            assert!(parts.caution.height >= least * mm - 1e-6, "{ask:?}: {parts:?}");
            assert!(!ask.open || parts.says.height >= LINE_MM * mm - 1e-6, "{ask:?}: {parts:?}");
            let usual = row_place(&RowAsk { says: ask.says_usual, source: ask.source_usual, ..ask });
            assert_eq!(rows(&parts.keys, mm), rows(&usual.keys, mm), "{ask:?}");
            let no_less = parts.says.height >= usual.says.height - 1e-6
                && parts.source.height >= usual.source.height - 1e-6;
            assert!(no_less, "{ask:?}: {parts:?}");
        }
    }

    /// A doubtful entry of large text has two keys, and what is said about it two lines each.
    #[test]
    fn few_keys_leave_the_rest_of_the_page_to_the_words() {
        let place = Rect { left: 2.0, top: 15.0, width: 54.0, height: 64.0 };
        let (caution, says, source, says_usual, source_usual) = (0.0, 14.0, 13.0, 8.0, 7.0);
        let ask = RowAsk {
            place,
            px_per_mm: 1.0,
            open: true,
            typed: false,
            rows: 1,
            caution,
            says,
            source,
            says_usual,
            source_usual,
        };
        let parts = row_place(&ask);
        let near = |a: f64, b: f64| (a - b).abs() < 1e-9;
        assert!(near(parts.says.height, 14.0) && near(parts.source.height, 13.0), "{parts:?}");
        assert!(near(parts.keys.height, 37.0), "{parts:?}");
    }

    /// 4.7 in on its side: the caution of the weight, its field and a row of its choices are on one page.
    #[test]
    fn on_its_side_the_field_is_beside_the_words_of_its_row() {
        let place = Rect { left: 2.0, top: 15.0, width: 77.0, height: 42.0 };
        let (caution, says, source) = (20.0, 9.0, 9.0);
        let ask = RowAsk {
            place,
            px_per_mm: 1.0,
            open: true,
            typed: true,
            rows: 3,
            caution,
            says,
            source,
            says_usual: 4.0,
            source_usual: 4.0,
        };
        let parts = row_place(&ask);
        assert_eq!((parts.says.top, parts.field.top), (parts.caution.bottom(), parts.caution.bottom()));
        assert!(parts.field.left > parts.says.right() && parts.field.width > 35.0, "{parts:?}");
        assert!((parts.caution.height - 0.3 * 42.0).abs() < 1e-6 && parts.keys.height >= 18.0, "{parts:?}");
    }
}
