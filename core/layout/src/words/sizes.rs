//! How large the words can be, and how high their parts: at the text size that the phone is set to as far as there is room.

use super::super::{DIGITS_MM, PadAsk, SECONDARY_MM, TextSizes};

/// Sums of heights round within this, mm.
pub(super) const HAIR_MM: f64 = 1e-9;
/// Between two parts, mm.
pub(super) const LEAD_MM: f64 = 0.5;
/// Smallest height of the header, mm: the three keys of the top are in it.
pub(super) const HEADER_MM: f64 = 6.3;
/// Height of the strip at its least, mm.
const STRIP_MM: f64 = 6.6;
/// By how much the place of the digits is higher than they must be, mm: faces differ slightly.
const DIGITS_SPARE_MM: f64 = 0.2;
/// Room around the digits of one rod among several, mm: those of the chosen one are in a box of solid ink.
pub(super) const CELL_EDGE_MM: f64 = 0.45;
/// Height of the name of a rod under its digits at its most, mm: more goes to the digits.
pub(super) const NAME_MM: f64 = 3.0;
/// Em of the texts at 100 %, mm.
const HEADLINE_EM: f64 = 3.6;
const BODY_EM: f64 = 2.7;
const HEADER_EM: f64 = 2.8;
const FIGURES_EM: f64 = 2.4;
/// The smaller line on a key at 100 %, and at larger text at the least, mm.
pub const SUB_EM: f64 = 2.4;
/// Where even 100 % leaves no room for two sentences, on the smallest phones, the words are made smaller down to this.
const SMALLEST_SCALE: f64 = 0.8;
/// Where that does not fit either, the first sentence is made smaller and the second keeps this em, mm.
const LEAST_BODY_MM: f64 = 2.1;
/// Part of the strip's height that its figures have at the most, as in the shells.
const FIGURES_SHARE: f64 = 0.26;
/// Height of a line relative to its em.
pub(super) const LINE: f64 = 1.22;

/// Em of the words, mm: the scale of all of them, and the size of the first sentence, which gives way before the second does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Sizes {
    pub(super) scale: f64,
    headline: f64,
}

impl Sizes {
    pub(super) fn at(scale: f64) -> Self {
        Self { scale, headline: HEADLINE_EM * scale }
    }

    /// Height of the first sentence with the given number of lines below it.
    pub(super) fn lines(&self, below: u32) -> f64 {
        (self.headline + f64::from(below) * BODY_EM * self.scale) * LINE
    }
}

/// Room for the words: its height, and whether its lines are short, as beside the pad.
#[derive(Debug, Clone, Copy)]
pub(super) struct Room {
    pub(super) height: f64,
    pub(super) short_lines: bool,
}

/// Heights of the parts, from the top, mm; 0 where a part has no room.
#[derive(Debug, Clone, Copy)]
pub(super) struct Heights {
    pub(super) header: f64,
    pub(super) digits: f64,
    pub(super) since: f64,
    pub(super) strip: f64,
    pub(super) advice: f64,
    pub(super) spot: f64,
    pub(super) rig: f64,
}

impl Heights {
    fn total(&self) -> f64 {
        let Self { header, digits, since, strip, advice, spot, rig } = *self;
        [header, digits, since, strip, advice, spot, rig]
            .iter()
            .filter(|h| **h > 0.0)
            .map(|h| h + LEAD_MM)
            .sum()
    }

    /// Whether the words of `other` at that scale have their room here too, or as much as they have there.
    fn has_room_for(&self, other: &Self, scale: f64, ask: PadAsk) -> bool {
        let name = |h: &Self| {
            if ask.rods > 1 { (h.digits - 2.0 * CELL_EDGE_MM - DIGITS_MM).min(NAME_MM) } else { 0.0 }
        };
        let (header, body) = (2.0 * HEADER_EM * LINE * scale, BODY_EM * LINE * scale);
        self.header >= other.header.min(header) - HAIR_MM
            && self.advice >= other.advice - HAIR_MM
            && name(self) >= name(other).min(body) - HAIR_MM
            && self.since >= other.since - HAIR_MM
            && self.spot >= other.spot - HAIR_MM
            && self.rig >= other.rig - HAIR_MM
            && self.strip >= other.strip.min(FIGURES_EM / FIGURES_SHARE) - HAIR_MM
    }

    /// Takes a change where it still fits.
    fn take(&mut self, room: f64, change: impl FnOnce(&mut Self)) {
        let mut tried = *self;
        change(&mut tried);
        if tried.total() <= room + HAIR_MM {
            *self = tried;
        }
    }
}

/// Least and wanted heights at a text scale, grown into the room there is.
pub(super) fn heights(room: Room, sizes: Sizes, ask: PadAsk) -> Heights {
    let (body, headline) = (BODY_EM * LINE * sizes.scale, sizes.headline * LINE);
    let Room { height: room, short_lines } = room;
    let several = ask.rods > 1;
    let digits = least_digits(ask);
    let (since, spot, rig) = (0.0, 0.0, 0.0);
    let mut h = Heights { header: HEADER_MM, digits, since, strip: STRIP_MM, advice: headline, spot, rig };
    h.take(room, |h| h.advice += body);
    if short_lines {
        // Beside the pad a line is short.
        h.take(room, |h| h.spot = 2.0 * body);
    }
    h.take(room, |h| h.strip = 10.0);
    if several {
        // A target of 15 mm, with the name of the rod under its digits.
        h.take(room, |h| h.digits = SECONDARY_MM + 0.5);
        h.take(room, |h| h.digits = DIGITS_MM + 2.0 * CELL_EDGE_MM + NAME_MM);
    }
    h.take(room, |h| h.spot = h.spot.max(body));
    if several {
        // Beside the fan a line is short: the spot and when it was fed take two.
        h.take(room, |h| h.spot = 2.0 * body);
    }
    h.take(room, |h| h.since = body);
    h.take(room, |h| h.header = 8.0);
    h.take(room, |h| h.strip = 12.0);
    h.take(room, |h| h.advice += body);
    h.take(room, |h| h.rig = body);
    h.take(room, |h| h.spot = 2.0 * body);
    h.take(room, |h| h.digits += 2.0);
    h.take(room, |h| h.strip = 14.5);
    h.take(room, |h| h.header = 10.0);
    let left = (room - h.total()).max(0.0);
    // A thin strip can't be read: it comes before larger digits.
    let thin = left.min((10.0 - h.strip).max(0.0));
    h.strip += thin;
    let left = left - thin;
    let (digits, strip) = ((left * 0.4).min(if several { 3.0 } else { 5.0 }), (left * 0.3).min(3.5));
    h.digits += digits;
    h.strip += strip;
    h.advice += left - digits - strip;
    h
}

/// Height of the digits at its least.
fn least_digits(ask: PadAsk) -> f64 {
    DIGITS_MM + if ask.rods > 1 { 2.0 * CELL_EDGE_MM } else { DIGITS_SPARE_MM }
}

/// The largest sizes up to that of the phone at which the first sentence and the second fit, and no other words have less
/// room than at 100 %.
pub(super) fn sizes_that_fit(room: Room, asked: f64, ask: PadAsk) -> Sizes {
    if asked > 1.0 {
        let once = sizes_that_fit(room, 1.0, ask);
        if once.scale < 1.0 {
            return once;
        }
        let least = heights(room, once, ask);
        return scales_down(asked, 1.0)
            .map(Sizes::at)
            .find(|&sizes| {
                both_fit(room, sizes, ask) && heights(room, sizes, ask).has_room_for(&least, once.scale, ask)
            })
            .unwrap_or(once);
    }
    scales_down(asked, SMALLEST_SCALE)
        .map(Sizes::at)
        .find(|&sizes| both_fit(room, sizes, ask))
        .unwrap_or_else(|| smallest(room, ask))
}

/// The sizes that are asked of the places: those of 100 %, times the scale that the phone is set to. A shell makes a text smaller
/// only where its own place is too small for it.
pub(super) fn asked(room: Room, scale: f64, ask: PadAsk) -> Sizes {
    let Sizes { scale: once, headline } = sizes_that_fit(room, scale.min(1.0), ask);
    let by = scale.max(1.0);
    Sizes { scale: once * by, headline: headline * by }
}

/// Both sentences in what the least heights leave: the second as large as it must be, the first in the rest.
fn smallest(room: Room, ask: PadAsk) -> Sizes {
    let others = HEADER_MM + least_digits(ask) + STRIP_MM + 4.0 * LEAD_MM;
    let both = ((room.height - others) / LINE).max(0.0);
    let body = LEAST_BODY_MM.min(both / 2.0);
    let scale = body / BODY_EM;
    Sizes { scale, headline: (both - body).min(HEADLINE_EM * scale) }
}

/// Scales from one down to another. Fourteen steps halve a size, as in the shells: so 100 % is one of the steps from 200 %.
fn scales_down(from: f64, above: f64) -> impl Iterator<Item = f64> {
    (0..)
        .map(move |step| from * libm::exp2(-f64::from(step) / 14.0))
        .take_while(move |&scale| scale > above + HAIR_MM)
}

/// Whether the first sentence and the second have a line each.
fn both_fit(room: Room, sizes: Sizes, ask: PadAsk) -> bool {
    let h = heights(room, sizes, ask);
    // All that is left is shared out, so the sum may exceed it by a rounding error.
    let both = (sizes.headline + BODY_EM * sizes.scale) * LINE;
    h.total() <= room.height + HAIR_MM && h.advice >= both - HAIR_MM
}

/// Of the word in place of the clock's digits, mm: large text leaves the clock less room, and no word may be smaller with it.
const CLOCK_WORD_EM: f64 = 10.0;

pub(super) fn text_sizes(sizes: Sizes, keys: f64) -> TextSizes {
    let scale = sizes.scale;
    TextSizes {
        header: HEADER_EM * scale,
        clock_word: CLOCK_WORD_EM,
        headline: sizes.headline,
        body: BODY_EM * scale,
        figures: FIGURES_EM * scale.min(1.3),
        primary: 5.0 * keys,
        secondary: 3.3 * keys,
        sub: SUB_EM * keys,
    }
}
