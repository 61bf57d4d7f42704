//! The layout of the Bank screen and the others, in one place for every shell.
//!
//! The rules are in millimetres, since thumbs are; only the result is in pixels. Sizes and reach are based on
//! human-factors figures (20 mm targets for a standing or impaired hand, 19 mm for mittens, spacing for
//! gloves), but the values here are the project's own choice, not a published standard.
//!
//! * [`keys`] places the thumb pad in the bottom corner of the chosen hand,
//! * [`sheet`] places the keys behind MORE,
//! * [`words`] places the clock, the strip and the sentences above it, or beside it on a screen on its side,
//! * [`page`] places what is on the screens that have no keys of their own,
//! * [`grid`] places the keys of choices and leaves on them,
//! * [`rules`] measures the result again, from the rectangles alone, and says which rules a screen is too small
//!   for, and by how many millimetres.
//!
//! If a screen is too small for all rules, the sizes and gaps of the keys are kept and the row of small keys
//! is above the lower part: a key that is a little too high can be found, one that is too small is missed.
//! Words are dropped before keys.
// The code that uniffi generates is unsafe; builds without that feature forbid it for everything written by
// hand.
#![cfg_attr(not(feature = "uniffi"), forbid(unsafe_code))]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp))]

/// The type that uniffi's derives refer to. It is declared by hand because uniffi's scaffolding would also
/// export a runtime, which only the crate `bindings` needs.
#[cfg(feature = "uniffi")]
#[doc(hidden)]
pub struct UniFfiTag;

mod glass;
mod grid;
mod keys;
mod least;
mod list;
mod match_pad;
mod open_row;
mod page;
mod rules;
mod said;
mod sheet;
mod swim_pad;
mod words;

#[cfg(test)]
mod phone_laws;
#[cfg(any(test, feature = "testing"))]
pub mod phones;

use restwater_screen::{BankState, Key, Which};
use serde::{Deserialize, Serialize};

pub use glass::{Glass, GlassError};
pub(crate) use glass::{Millimetres, on_its_side};
pub use grid::{GridAsk, GridPage, key_grid};
pub use list::{line_says, list_page};
pub use match_pad::{MatchLayout, match_layout};
pub use open_row::{RowAsk, RowPlace, row_place};
pub use page::PagePlace;
pub use rules::{BrokenRule, PadRule};
pub use said::{PadWords, PagerWords, Said};
pub use swim_pad::{SwimKeyPlace, SwimLayout, SwimPadAsk, swim_layout};
pub use words::SUB_EM;

/// Least size of a key used while fishing, mm.
pub const PRIMARY_MM: f64 = 20.0;
/// Least size of a secondary key, mm.
pub const SECONDARY_MM: f64 = 15.0;
/// Least gap between two keys, mm.
pub const GAP_MM: f64 = 3.0;
/// Least gap between keys that mean the opposite, mm.
pub const OPPOSITE_GAP_MM: f64 = 6.0;
/// How far a thumb reaches from the bottom corner of its hand, mm.
pub const REACH_MM: f64 = 70.0;
/// The part of the screen, from the bottom, that contains everything tapped while fishing.
pub const LOWER_PART: f64 = 0.6;
/// Least height of the digits of a running clock, mm.
pub const DIGITS_MM: f64 = 12.0;
/// A contact wider than this is a palm or a sleeve, not a tap, mm. The project's own choice, like the others.
pub const PALM_MM: f64 = 40.0;
/// Above this text scale words come before pictures: see [`BankLayout::apart`].
pub const APART_ABOVE_SCALE: f64 = 1.3;

/// What has to be placed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PadAsk {
    /// What the chosen rod is doing.
    pub state: BankState,
    /// How many rods are in use, 1 to 3; 0 counts as 1 and more than 3 as 3.
    pub rods: u8,
    /// Which page of the sheet behind MORE is open, from 1; after the last comes the first again. 0 while it is closed.
    pub page: u8,
}

/// A rectangle on the screen, pixels from the upper left corner.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Rect {
    /// Left edge.
    pub left: f64,
    /// Upper edge.
    pub top: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}

impl Rect {
    /// Right edge.
    pub fn right(&self) -> f64 {
        self.left + self.width
    }

    /// Lower edge.
    pub fn bottom(&self) -> f64 {
        self.top + self.height
    }

    /// The distance between two rectangles; 0 if they touch or overlap.
    pub fn gap_to(&self, other: &Self) -> f64 {
        let x = (other.left - self.right()).max(self.left - other.right()).max(0.0);
        let y = (other.top - self.bottom()).max(self.top - other.bottom()).max(0.0);
        libm::hypot(x, y)
    }

    /// Whether they share more than an edge.
    pub fn overlaps(&self, other: &Self) -> bool {
        let hair = 1e-6;
        self.left < other.right() - hair
            && other.left < self.right() - hair
            && self.top < other.bottom() - hair
            && other.top < self.bottom() - hair
    }

    fn scaled(self, by: f64) -> Self {
        Self { left: self.left * by, top: self.top * by, width: self.width * by, height: self.height * by }
    }
}

/// The place of a key.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct KeyPlace {
    /// What it does.
    pub key: Key,
    /// Where it lies.
    pub rect: Rect,
}

/// The place of the key of a screen.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ScreenKeyPlace {
    /// Which screen it opens.
    pub which: Which,
    /// Where it lies.
    pub rect: Rect,
}

/// The place of one rod's clock.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct RodPlace {
    /// Which rod, from 1.
    pub rod: u8,
    /// A tap in here chooses the rod; [`BankLayout::next_rod`] does the same within reach of the thumb.
    pub target: Rect,
    /// The digits fill this height.
    pub digits: Rect,
    /// Its name and state, if there is room.
    pub name: Option<Rect>,
    /// Its number beside the digits, if several rods have no room for their names.
    pub number: Option<Rect>,
    /// Where a mark says that it is the one to recast first: below or beside its number.
    pub first: Option<Rect>,
    /// Where a word such as FISH ON is shown instead of the digits, if there is no room for the state beside them. It keeps clear
    /// of the number, as the digits do: small ones may be below it, a word can't.
    pub word: Option<Rect>,
}

/// Text sizes (em), pixels, as the phone is set. A shell makes a line smaller if it would not fit its rectangle.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct TextSizes {
    /// Header.
    pub header: f64,
    /// The most for the word in place of the digits of a rod that is in.
    pub clock_word: f64,
    /// The first sentence of the advice.
    pub headline: f64,
    /// Other sentences, spot and rig.
    pub body: f64,
    /// Figures on the strip.
    pub figures: f64,
    /// Word on a key used while fishing.
    pub primary: f64,
    /// Word on a secondary key.
    pub secondary: f64,
    /// Smaller line on a key.
    pub sub: f64,
}

impl TextSizes {
    fn each(&mut self) -> [&mut f64; 8] {
        let Self { header, clock_word, headline, body, figures, primary, secondary, sub } = self;
        [header, clock_word, headline, body, figures, primary, secondary, sub]
    }
}

/// The layout of the whole screen. Rectangles are pixels.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct BankLayout {
    /// Place, time of day and length of the session.
    pub header: Rect,
    /// Opens the list of screens; not used while fishing.
    pub screens: Rect,
    /// Beside it, the screens that an angler opens most while fishing; a place without a key in the screen
    /// record stays blank.
    pub screen_keys: Vec<ScreenKeyPlace>,
    /// The clocks, in the order of the rods.
    pub rods: Vec<RodPlace>,
    /// What the digits of the chosen rod count.
    pub since: Option<Rect>,
    /// The small swim fan.
    pub fan: Option<Rect>,
    /// The wait strip.
    pub strip: Rect,
    /// The advice: the first sentence large, then as many of the others as fit.
    pub advice: Rect,
    /// The second sentence of the advice, where large text leaves no room for it below the first: the place of the notice, which
    /// is shown instead while there is one. Otherwise it is part of `advice`.
    pub detail: Option<Rect>,
    /// The third sentence, where the advice has one line below its first and the second takes it: the place of the notice again.
    pub further: Option<Rect>,
    /// Where the cast is or the next one goes.
    pub spot: Option<Rect>,
    /// What is on the line.
    pub rig: Option<Rect>,
    /// A free place on the pad, for the last tap in words. Tapping it does nothing.
    pub latest: Option<Rect>,
    /// One line between the rows of the pad: "second tap ignored".
    pub notice: Rect,
    /// The keys of the pad, or of the open page of the sheet; a place without a key in the screen record stays blank.
    pub keys: Vec<KeyPlace>,
    /// Opens the sheet behind MORE, or turns to its next page, if there is one.
    pub more: Option<Rect>,
    /// The open sheet, with its title and notice in one place; its keys and its BACK are in `keys` and `back`. Nothing else of the
    /// Bank is to be seen then.
    pub sheet: Option<PagePlace>,
    /// Chooses the next rod, if there are two or three.
    pub next_rod: Option<Rect>,
    /// How many pages of keys there are: the pad, and those of the sheet.
    pub pages: u8,
    /// BACK of every other screen, in the corner of the thumb, the same in every state. An accidental second
    /// tap would hit CAST, so the core ignores it.
    pub back: Rect,
    /// The pager of such a screen, beside BACK, the same everywhere.
    pub pager: Rect,
    /// A screen with no key of its own but BACK and the pager.
    pub page: PagePlace,
    /// The number of columns in a grid of keys on such a screen: three, or as many as are 21 mm wide.
    pub columns: u8,
    /// START of the set-up.
    pub start: Rect,
    /// The set-up, which has BACK, START and its own pager.
    pub set_up: PagePlace,
    /// The pager of the set-up.
    pub set_up_pager: Rect,
    /// Text sizes of the Bank, whose words all have to fit on one screen.
    pub text: TextSizes,
    /// Text sizes of the other screens, which have pages: those the phone is set to.
    pub page_text: TextSizes,
    /// Whether the text is so large that a sentence and its picture have pages of their own where one page is too small for both,
    /// and that a page is filled to its last line.
    pub apart: bool,
    /// Whether the keys are for the left thumb.
    pub left_handed: bool,
    /// Rules for which this screen is too small, each with the worst shortfall; usually empty.
    pub broken: Vec<BrokenRule>,
}

/// Places everything of the Bank on a screen of this size.
pub fn bank_layout(glass: &Glass, ask: PadAsk) -> Result<BankLayout, GlassError> {
    let mm = Millimetres::of(glass)?;
    let ask = PadAsk { rods: ask.rods.clamp(1, 3), ..ask };
    let pad = keys::place(&mm, ask);
    let words = words::place(&mm, &pad, ask);
    let pages = page::place(&mm);
    let sheet = sheet::sheet(&mm, ask);
    let mut layout = BankLayout {
        header: words.header,
        screens: words.screens,
        screen_keys: words.screen_keys,
        rods: words.rods,
        since: words.since,
        fan: words.fan,
        strip: words.strip,
        advice: words.advice,
        detail: words.detail,
        further: words.further,
        spot: words.spot,
        rig: words.rig,
        latest: pad.latest,
        notice: pad.notice,
        keys: pad.keys,
        more: pad.more,
        next_rod: pad.next_rod,
        sheet: None,
        pages: 1 + sheet.as_ref().map_or(0, |sheet| sheet.pages),
        back: pages.back,
        pager: pages.pager,
        page: pages.page,
        columns: pages.columns,
        start: pages.start,
        set_up: pages.set_up,
        set_up_pager: pages.set_up_pager,
        text: words.text,
        page_text: words.page_text,
        apart: mm.text > APART_ABOVE_SCALE,
        left_handed: glass.left_handed,
        broken: Vec::new(),
    };
    layout.broken = rules::broken(&layout, &mm);
    if let Some(sheet) = sheet.filter(|_| ask.page > 0) {
        (layout.keys, layout.back, layout.more) = (sheet.keys, sheet.back, sheet.pager);
        (layout.next_rod, layout.sheet) = (None, Some(sheet.head));
    }
    layout.scale_to_pixels(glass.px_per_mm);
    Ok(layout)
}

impl BankLayout {
    fn scale_to_pixels(&mut self, px: f64) {
        let single = [
            &mut self.header,
            &mut self.screens,
            &mut self.strip,
            &mut self.advice,
            &mut self.notice,
            &mut self.back,
            &mut self.pager,
            &mut self.start,
            &mut self.set_up_pager,
        ];
        let pages = [&mut self.page, &mut self.set_up].into_iter().chain(&mut self.sheet);
        let pages = pages.flat_map(PagePlace::parts);
        let maybe = [
            &mut self.since,
            &mut self.fan,
            &mut self.detail,
            &mut self.further,
            &mut self.spot,
            &mut self.rig,
            &mut self.latest,
            &mut self.more,
            &mut self.next_rod,
        ];
        let keys = self.keys.iter_mut().map(|k| &mut k.rect);
        let screen_keys = self.screen_keys.iter_mut().map(|key| &mut key.rect);
        let rods = self.rods.iter_mut().flat_map(|r| {
            let maybe = [r.name.as_mut(), r.number.as_mut(), r.first.as_mut(), r.word.as_mut()];
            [Some(&mut r.target), Some(&mut r.digits)].into_iter().chain(maybe)
        });
        let all = single
            .into_iter()
            .chain(pages)
            .chain(maybe.into_iter().flatten())
            .chain(keys)
            .chain(screen_keys)
            .chain(rods.flatten());
        for rect in all {
            *rect = rect.scaled(px);
        }
        for size in [&mut self.text, &mut self.page_text].into_iter().flat_map(TextSizes::each) {
            *size *= px;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_glass_without_a_size_is_refused_with_advice() {
        let ask = PadAsk { state: BankState::Out, rods: 1, page: 0 };
        let good = phones::PHONES[7].glass(1.0, false);
        for spoil in [f64::NAN, f64::INFINITY, 0.0, -3.0] {
            let bad = Glass { px_per_mm: spoil, ..good };
            assert_eq!(bank_layout(&bad, ask), Err(GlassError::NoSize));
        }
        let half = Glass { height_px: good.height_px / 2.0, ..good };
        let said = bank_layout(&half, ask).unwrap_err().to_string();
        assert!(said.contains("make it larger"), "{said}");
    }

    #[test]
    fn more_than_three_rods_count_as_three_and_none_as_one() {
        let glass = phones::PHONES[7].glass(1.0, false);
        let layout = |rods| bank_layout(&glass, PadAsk { state: BankState::Out, rods, page: 0 }).unwrap();
        assert_eq!(layout(0), layout(1));
        assert_eq!(layout(9), layout(3));
    }
}
