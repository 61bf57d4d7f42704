//! Where things lie on the glass.
//!
//! Each is the core's own type, declared again for uniffi: the compiler refuses one that differs.

use restwater_layout::{
    BankLayout, BrokenRule, Glass, KeyPlace, PadAsk, PadRule, PadWords, PagePlace, Rect, RodPlace, Said,
    TextSizes,
};
use restwater_screen::{BankState, Key};

/// The glass a shell draws on.
#[uniffi::remote(Record)]
pub struct Glass {
    /// Width, pixels.
    pub width_px: f64,
    /// Height, pixels.
    pub height_px: f64,
    /// Pixels in a millimetre of real glass.
    pub px_per_mm: f64,
    /// Text size the user asked the phone for; 1 is the usual one, 2 is 200 %.
    pub text_scale: f64,
    /// Whether the pad is for the left thumb.
    pub left_handed: bool,
    /// Pixels at the top that belong to the system.
    pub inset_top_px: f64,
    /// Pixels at the bottom that belong to the system.
    pub inset_bottom_px: f64,
}

/// What has to find a place.
#[uniffi::remote(Record)]
pub struct PadAsk {
    /// What the chosen rod is doing.
    pub state: BankState,
    /// How many rods are in use, 1 to 3; 0 counts as 1 and more than 3 as 3.
    pub rods: u8,
    /// Which page of small keys is open, from 0; counts round.
    pub page: u8,
}

/// A rectangle on the glass, pixels from the upper left corner.
#[uniffi::remote(Record)]
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

/// Where a key lies.
#[uniffi::remote(Record)]
pub struct KeyPlace {
    /// What it does.
    pub key: Key,
    /// Where it lies.
    pub rect: Rect,
}

/// Where one rod's clock lies.
#[uniffi::remote(Record)]
pub struct RodPlace {
    /// Which rod, from 1.
    pub rod: u8,
    /// A tap in here chooses the rod; [`BankLayout::next_rod`] does so within reach.
    pub target: Rect,
    /// The digits fill this height.
    pub digits: Rect,
    /// Its name and state, where there is room.
    pub name: Option<Rect>,
}

/// Text sizes (em), pixels. A shell makes a line smaller where it would not fit its rectangle.
#[uniffi::remote(Record)]
pub struct TextSizes {
    /// Header.
    pub header: f64,
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

/// One page of a screen.
#[uniffi::remote(Record)]
pub struct PagePlace {
    /// What it is called.
    pub title: Rect,
    /// What was done, or refused.
    pub notice: Rect,
    /// Everything else.
    pub rest: Rect,
}

/// The whole screen, laid out. Rectangles are pixels.
#[uniffi::remote(Record)]
pub struct BankLayout {
    /// Place, time of day and length of the session.
    pub header: Rect,
    /// Opens the list of screens; not used while fishing.
    pub screens: Rect,
    /// Changes between day and night.
    pub scheme: Rect,
    /// Changes the hand.
    pub hand: Rect,
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
    /// Where the cast lies or the next one goes.
    pub spot: Option<Rect>,
    /// What is on the line.
    pub rig: Option<Rect>,
    /// A free place on the pad, for the last tap in words. Tapping it does nothing.
    pub latest: Option<Rect>,
    /// One line between the rows of the pad: "second tap ignored".
    pub notice: Rect,
    /// The keys. One that the screen record does not hold stays blank.
    pub keys: Vec<KeyPlace>,
    /// Turns to the next page of small keys.
    pub more: Option<Rect>,
    /// Chooses the next rod, where there are two or three.
    pub next_rod: Option<Rect>,
    /// How many pages of small keys there are.
    pub pages: u8,
    /// BACK of every other screen: beside CAST, the same in every state.
    pub back: Rect,
    /// A screen with no key of its own but BACK.
    pub page: PagePlace,
    /// Keys beside each other in a grid of such a screen: three, or as many as are 21 mm wide.
    pub columns: u8,
    /// START of the set-up.
    pub start: Rect,
    /// The set-up, which has BACK and START.
    pub set_up: PagePlace,
    /// Text sizes.
    pub text: TextSizes,
    /// Whether the smaller line on a key is drawn.
    pub show_subs: bool,
    /// Rules this glass is too small for, each with the worst shortfall; mostly empty.
    pub broken: Vec<BrokenRule>,
}

/// A rule of the pad.
#[uniffi::remote(Enum)]
pub enum PadRule {
    /// Keys used while fishing are at least 20 mm each way.
    PrimarySize,
    /// Secondary keys are at least 15 mm each way.
    SecondarySize,
    /// Keys are at least 3 mm apart.
    Gap,
    /// Keys of opposite meaning are at least 6 mm apart.
    OppositeGap,
    /// Everything tapped while fishing lies in the lower 60 % of the glass.
    LowerPart,
    /// The nearest point of each key is within 70 mm of the hand's bottom corner.
    Reach,
    /// Digits are at least 12 mm high.
    Digits,
}

/// A rule that a glass is too small for.
#[uniffi::remote(Record)]
pub struct BrokenRule {
    /// Which.
    pub rule: PadRule,
    /// By how much at the worst place, mm.
    pub by_mm: f64,
}

/// A word on a key, with what a screen reader says.
#[uniffi::remote(Record)]
pub struct Said {
    /// The word on the key.
    pub label: String,
    /// What a screen reader says.
    pub spoken: String,
}

/// The words of the glass.
#[uniffi::remote(Record)]
pub struct PadWords {
    /// Opens the list of screens.
    pub screens: Said,
    /// Changes to the day scheme.
    pub day: Said,
    /// Changes to the night scheme.
    pub night: Said,
    /// Changes to the left hand.
    pub left: Said,
    /// Changes to the right hand.
    pub right: Said,
    /// Turns to the next page of small keys.
    pub more: Said,
    /// The small swim fan.
    pub swim: Said,
    /// Turns to the next part of a long leaf.
    pub read_on: Said,
    /// Back to the Bank screen.
    pub back: Said,
    /// Opens the Waits screen.
    pub waits: Said,
    /// Opens "Did it matter?".
    pub changes: Said,
    /// Opens the Match screen.
    pub match_day: Said,
    /// Opens the Files screen.
    pub files: Said,
    /// Opens the Mend screen.
    pub mend: Said,
    /// Opens the Phone screen.
    pub phone: Said,
}
