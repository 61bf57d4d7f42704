//! What each screen shows, as plain records made from the session, with its wording.
//!
//! A shell draws these and taps; it decides nothing. Text is ready to show; numbers that are drawn
//! (the strip, the fan) cross as numbers too.

mod bank;
mod key;
mod pad;
mod setup;
mod tackle;
mod wording;

pub use bank::{
    AdviceTone, AdviceView, BankState, BankView, HeaderView, RodView, StripMark, StripMarkShape, StripView,
};
pub use key::{Key, KeyView, KeyWeight};
pub use pad::{
    BankLayout, BrokenRule, Glass, GlassError, KeyPlace, PadAsk, PadRule, Rect, RodPlace, TextSizes,
    bank_layout,
};
pub use setup::SetupView;
pub use tackle::{Choice, ChoiceRow, TackleView};
pub use wording::{Arg, Wording};
