//! Everything above the pad: header, clocks, strip and sentences.
//!
//! Parts are taken in the order of what an angler can't do without, each at the text size that the phone is set to, as long as
//! there is room (above the pad, or beside it on a screen on its side). The room left goes to the digits, the strip and further
//! sentences. Where that size leaves no room for the first of them, the words are made smaller before any is lost. Large text
//! asks for its full size everywhere, and each place gives what it can; on a screen too low for that the second sentence takes the
//! line of the notice between the keys.

mod sizes;

use super::keys::Pad;
use super::{
    DIGITS_MM, GAP_MM, Millimetres, PadAsk, Rect, RodPlace, SECONDARY_MM, ScreenKeyPlace, TextSizes,
};
use restwater_screen::{BankState, TOP_SCREEN_KEYS};
pub use sizes::SUB_EM;
use sizes::{
    CELL_EDGE_MM, HAIR_MM, HEADER_MM, LEAD_MM, NAME_MM, Room, Sizes, asked, heights, sizes_that_fit,
    text_sizes,
};

/// Between the words and the pad, mm.
const ABOVE_PAD_MM: f64 = 1.0;
/// Between the header and the clock, mm.
const BELOW_HEADER_MM: f64 = 0.7;
/// Width of a rod's number beside its digits, where its name has no room, and height of it in the corner of its clock, mm.
const NUMBER_MM: f64 = 3.2;
const NUMBER_HEIGHT_MM: f64 = 5.0;
/// Height of the mark of the rod that is due first, below its number, mm.
const FIRST_MM: f64 = 3.2;
/// The same between the number and the seconds of a narrow cell, and the height of the number above it, mm.
const LOW_FIRST_MM: f64 = 1.9;
const LOW_NUMBER_MM: f64 = 4.2;
/// A narrower place has no room for "Rod 3: due first", mm: there the number and the mark stand for it.
const NAME_WIDTH_MM: f64 = 15.0;
/// Between that number and the digits, or they read as one figure, mm.
const BESIDE_NUMBER_MM: f64 = 1.2;
/// Digits are not made narrower than this for the sake of the number, mm.
const DIGITS_BESIDE_NUMBER_MM: f64 = 18.0;
/// Between the fan and what is beside it, mm.
const SIDE_GAP_MM: f64 = 1.5;
/// The fan beside the sentences is at most this large, mm.
const FAN_MM: f64 = 18.0;
/// Width that "12:34" takes at the least height of digits, mm.
const DIGITS_WIDTH_MM: f64 = 33.0;
/// Between the keys of the top, mm.
const TOP_GAP_MM: f64 = 1.5;
/// If the words have not grown to this, the second sentence goes into the line of the notice, where a line of this size fits.
const ROOMY_SCALE: f64 = 1.35;

/// The words in millimetres of glass.
pub(super) struct Words {
    pub(super) header: Rect,
    pub(super) screens: Rect,
    pub(super) screen_keys: Vec<ScreenKeyPlace>,
    pub(super) rods: Vec<RodPlace>,
    pub(super) since: Option<Rect>,
    pub(super) fan: Option<Rect>,
    pub(super) strip: Rect,
    pub(super) advice: Rect,
    pub(super) detail: Option<Rect>,
    pub(super) further: Option<Rect>,
    pub(super) spot: Option<Rect>,
    pub(super) rig: Option<Rect>,
    pub(super) text: TextSizes,
    pub(super) page_text: TextSizes,
}

/// Lines of full width, taken from the top down.
struct Column {
    left: f64,
    width: f64,
    y: f64,
}

impl Column {
    fn next(&mut self, height: f64) -> Option<Rect> {
        if height <= 0.0 {
            return None;
        }
        let rect = Rect { left: self.left, top: self.y, width: self.width, height };
        self.y += height + LEAD_MM;
        Some(rect)
    }

    fn always(&mut self, height: f64) -> Rect {
        self.next(height).unwrap_or(Rect { left: self.left, top: self.y, width: self.width, height: 0.0 })
    }
}

/// Places the words in the room that the pad leaves.
pub(super) fn place(glass: &Millimetres, pad: &Pad, ask: PadAsk) -> Words {
    let free = pad.words;
    let narrow = glass.on_its_side();
    // Beside the pad the three keys of the top have a line of their own.
    let own_line = if narrow { HEADER_MM + LEAD_MM } else { 0.0 };
    let height = free.height - ABOVE_PAD_MM - BELOW_HEADER_MM - own_line;
    let room = Room { height, short_lines: narrow };
    let sizes = sizes_that_fit(room, glass.text, ask);
    let cramped = glass.text > super::APART_ABOVE_SCALE && sizes.scale < ROOMY_SCALE;
    let h = heights(room, sizes, ask);
    // With one line below the first sentence, a plan that is due and the counts would hide one another there.
    let tight = h.advice < sizes.lines(2) - HAIR_MM;
    // Beside the pad that line is short, and the counts would be the smallest text of the screen.
    let apart = cramped || tight && narrow;
    let mut column = Column { left: free.left, width: free.width, y: free.top + LEAD_MM };
    let (header, tops) = if narrow {
        let header = column.always(h.header);
        (header, three(column.always(HEADER_MM), glass.left_handed))
    } else {
        top(column.always(h.header), glass.left_handed)
    };
    column.y += BELOW_HEADER_MM;
    let digits = column.always(h.digits);
    let since = column.next(h.since);
    let (strip, advice) = (column.always(h.strip), column.always(h.advice));
    let (spot, rig) = (column.next(h.spot), column.next(h.rig));
    let mut words = Words {
        header,
        screens: tops[0],
        screen_keys: TOP_SCREEN_KEYS
            .into_iter()
            .zip(tops[1..].iter())
            .map(|(which, &rect)| ScreenKeyPlace { which, rect })
            .collect(),
        rods: clocks(digits, ask.rods),
        since,
        fan: None,
        strip,
        advice,
        detail: apart.then_some(pad.notice),
        further: (tight && !apart).then_some(pad.notice),
        spot,
        rig,
        text: text_sizes(asked(room, glass.text, ask), glass.text),
        page_text: text_sizes(Sizes::at(glass.text), glass.text),
    };
    if matches!(ask.state, BankState::Ready | BankState::Away | BankState::Over) {
        // With nothing out, spot and rig are in the pair's row beside the key of the swim, and the advice has
        // their lines; nothing else moves from one state to the next.
        words.advice.height = column.y - LEAD_MM - words.advice.top;
        let half = pad.beside_thumb.height / 2.0;
        words.spot = Some(Rect { height: half, ..pad.beside_thumb });
        words.rig = Some(Rect { top: pad.beside_thumb.top + half, height: half, ..pad.beside_thumb });
    }
    if ask.rods > 1 {
        beside_the_sentences(&mut words, column.y, glass.left_handed);
    } else if free.width >= DIGITS_WIDTH_MM + SIDE_GAP_MM + SECONDARY_MM {
        let beside = match ask.state {
            _ if h.spot > 0.0 => Beside::Fan,
            BankState::Landed => Beside::SpotAndSince { gap: if cramped { LEAD_MM } else { 0.0 } },
            _ if cramped => Beside::OneLine { most: f64::INFINITY },
            // Larger text has no less room there, where it has smaller digits.
            _ => Beside::OneLine { most: DIGITS_MM },
        };
        beside_the_clock(&mut words, digits, beside, glass.left_handed);
    }
    words
}

/// The header and beside it the three keys that are not used while fishing: the list of screens and two of its screens.
fn top(row: Rect, left_handed: bool) -> (Rect, [Rect; 3]) {
    let header = row.width * 0.34;
    let mut keys = row;
    narrow(&mut keys, header + TOP_GAP_MM, !left_handed);
    (cut(&row, header, !left_handed), three(keys, left_handed))
}

/// Three keys beside each other, the last nearest to the hand.
fn three(row: Rect, left_handed: bool) -> [Rect; 3] {
    let width = (row.width - 2.0 * TOP_GAP_MM) / 3.0;
    let order = if left_handed { [2.0, 1.0, 0.0] } else { [0.0, 1.0, 2.0] };
    order.map(|i| Rect { left: row.left + i * (width + TOP_GAP_MM), width, ..row })
}

/// The clocks: one across, or a cell for each rod.
fn clocks(row: Rect, rods: u8) -> Vec<RodPlace> {
    if rods == 1 {
        let (target, digits) = (row, row);
        return vec![RodPlace { rod: 1, target, digits, name: None, number: None, first: None, word: None }];
    }
    let width = (row.width - GAP_MM * f64::from(rods - 1)) / f64::from(rods);
    (0..rods)
        .map(|i| {
            let target = Rect { left: row.left + f64::from(i) * (width + GAP_MM), width, ..row };
            let inner = row.height - 2.0 * CELL_EDGE_MM;
            let name_h = (inner - DIGITS_MM).min(NAME_MM);
            let mut digits = Rect {
                left: target.left + 1.0,
                top: target.top + CELL_EDGE_MM,
                width: width - 2.0,
                height: if name_h >= 1.7 { inner - name_h } else { inner },
            };
            let below =
                (name_h >= 1.7).then(|| Rect { top: digits.bottom() + 0.2, height: name_h - 0.2, ..digits });
            if let Some(below) = below.filter(|below| below.width < NAME_WIDTH_MM) {
                let number = Rect { width: NUMBER_MM, ..below };
                let first = Rect { left: number.right() + 0.5, ..number };
                let (number, first, word) = (Some(number), Some(first), Some(digits));
                return RodPlace { rod: i + 1, target, digits, name: None, number, first, word };
            }
            let number = below.is_none().then(|| number(&mut digits));
            let word = number.map(|number| clear_of(digits, &number));
            let first = number.map(|number| mark_below(&number, &digits));
            RodPlace { rod: i + 1, target, digits, name: below, number, first, word }
        })
        .collect()
}

/// The number of a rod whose name has no room. In the upper corner beside the digits; in a narrow cell above the seconds, which are
/// small there.
fn number(digits: &mut Rect) -> Rect {
    let corner = Rect { width: NUMBER_MM, height: NUMBER_HEIGHT_MM, ..*digits };
    let beside = NUMBER_MM + BESIDE_NUMBER_MM;
    if digits.width - beside < DIGITS_BESIDE_NUMBER_MM {
        return Rect { left: digits.right() - NUMBER_MM, height: LOW_NUMBER_MM, ..corner };
    }
    digits.left += beside;
    digits.width -= beside;
    corner
}

/// The mark of the rod due first, below its number. In a narrow cell it is between the number and the seconds, which take no more
/// than the lower half.
fn mark_below(number: &Rect, digits: &Rect) -> Rect {
    if number.left < digits.left {
        return Rect { top: digits.bottom() - FIRST_MM, height: FIRST_MM, ..*number };
    }
    let height = LOW_FIRST_MM.min(digits.bottom() - digits.height / 2.0 - number.bottom());
    Rect { top: number.bottom(), height, ..*number }
}

/// What is left of the digits' place before a number in its far corner.
fn clear_of(digits: Rect, number: &Rect) -> Rect {
    let is_inside = number.left > digits.left;
    Rect { width: if is_inside { number.left - digits.left } else { digits.width }, ..digits }
}

/// A strip of `width` cut off on the far side of a rectangle.
fn cut(rect: &Rect, width: f64, left_handed: bool) -> Rect {
    Rect { left: if left_handed { rect.left } else { rect.right() - width }, width, ..*rect }
}

/// What is left of a rectangle when such a strip goes.
fn narrow(rect: &mut Rect, by: f64, left_handed: bool) {
    rect.width -= by;
    if left_handed {
        rect.left += by;
    }
}

/// What is beside the clock of one rod.
#[derive(Clone, Copy)]
enum Beside {
    Fan,
    /// One text has the whole place, or it would be too small for an arm's length: the spot if it is shown here, otherwise what the
    /// digits count, which UNDO says as well.
    OneLine {
        most: f64,
    },
    /// Digits that count from a landed fish say so with large text too, which may have a gap below that is free otherwise.
    SpotAndSince {
        gap: f64,
    },
}

/// With one rod: the fan beside the clock, or spot and since on a screen too small for lines of their own.
fn beside_the_clock(words: &mut Words, digits: Rect, beside: Beside, left_handed: bool) {
    let bottom = words.since.map_or(digits.bottom(), |s| s.bottom());
    let block = Rect { height: bottom - digits.top, ..digits };
    let width = block.height.min(digits.width * 0.33).max(SECONDARY_MM);
    for rod in &mut words.rods {
        narrow(&mut rod.target, width + SIDE_GAP_MM, left_handed);
        rod.digits = rod.target;
    }
    if let Some(since) = &mut words.since {
        narrow(since, width + SIDE_GAP_MM, left_handed);
    }
    let side = cut(&block, width, left_handed);
    match beside {
        Beside::Fan => words.fan = Some(side),
        Beside::OneLine { most } => {
            let place = if words.spot.is_none() { &mut words.spot } else { &mut words.since };
            *place = place.or(Some(Rect { height: side.height.min(most), ..side }));
        }
        Beside::SpotAndSince { gap } => {
            let all = side.height + gap;
            let half = all * 0.55;
            words.spot = words.spot.or(Some(Rect { height: half, ..side }));
            words.since = words.since.or(Some(Rect { top: side.top + half, height: all - half, ..side }));
        }
    }
}

/// With several rods: the fan beside the sentences, where they are high enough.
fn beside_the_sentences(words: &mut Words, bottom: f64, left_handed: bool) {
    let block = Rect { height: bottom - words.advice.top, ..words.advice };
    if block.height < SECONDARY_MM {
        return;
    }
    let width = block.height.min(FAN_MM);
    words.fan = Some(Rect { height: width, ..cut(&block, width, left_handed) });
    narrow(&mut words.advice, width + SIDE_GAP_MM, left_handed);
    let lines = [&mut words.spot, &mut words.rig];
    // On the pad they are beside other keys.
    for line in lines.into_iter().flatten().filter(|line| line.overlaps(&block)) {
        narrow(line, width + SIDE_GAP_MM, left_handed);
    }
}

#[cfg(test)]
mod tests;
