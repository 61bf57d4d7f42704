//! What each screen shows, as plain records made from the session, with its wording.
//!
//! A shell draws these and taps; it decides nothing. Text is ready to show; numbers that are drawn
//! (the strip, the fan) cross as numbers too.

mod bank;
mod key;
mod setup;
mod tackle;

pub use bank::{
    AdviceTone, AdviceView, BankState, BankView, HeaderView, RodView, StripMark, StripMarkShape, StripView,
};
pub use key::{Key, KeyView, KeyWeight};
pub use setup::SetupView;
pub use tackle::{Choice, ChoiceRow, TackleView};
