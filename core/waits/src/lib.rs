//! Waits: how long from splash to bite, and how long to leave the next cast.
#![forbid(unsafe_code)]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp))]

mod advice;
mod book;
#[cfg(test)]
mod calibrated;
mod club;
mod costs;
mod curve;
mod curves;
mod day_effects;
mod derived;
mod drift;
mod error;
mod exploring;
mod fed;
mod guesses;
mod habit;
mod kaplan_meier;
mod kinds;
mod laws;
mod leave_time;
mod likelihood;
mod posterior;
mod record;
mod shapes;
mod special;
mod spots;
mod sums;
mod wait;
mod wait_law;

pub use advice::{Advice, AdviceState, BITES_TO_TELL, EARLY_BITES, WaitingOn};
pub use club::{CLUB_SHAPES, ClubError, FittedTo};
pub use costs::Costs;
pub use curve::{CurveKind, CurvePoint};
pub use error::BiteError;
pub use fed::{FED_PRIOR, FED_TIMES, FedEffect, FedPrior};
pub use guesses::{BITE_EXTRA_GUESS_MIN, LIKE_DAY_WEIGHT, OTHER_DAY_WEIGHT, TURN_ROUND_GUESS_MIN};
pub use habit::Habit;
pub use kaplan_meier::{Limits, Step, SurvivalCurve};
pub use laws::ShapeLaw;
pub use posterior::WaitPosterior;
pub use record::{EarlierDay, Record, Settings};
pub use shapes::{SHAPE_PRIORS, ShapePriors, Shapes};
pub use spots::{SpotBeliefs, SpotCast, SpotEvent, SpotLeave, SpotWorth, SpotsKept, Then};
pub use wait::{Wait, WaitError};
