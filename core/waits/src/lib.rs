//! Waits: how long from splash to bite, and how long to leave the next cast.
#![forbid(unsafe_code)]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp))]

mod advice;
mod book;
#[cfg(test)]
mod calibrated;
mod club;
mod conjugate;
mod curve;
mod curves;
mod day_effects;
mod drift;
mod error;
mod evidence;
mod fed;
mod fed_water;
mod fit;
mod grid;
mod kaplan_meier;
mod kinds;
mod laplace;
mod laws;
mod leave_time;
mod likelihood;
mod location_scale;
mod look;
mod matrix;
mod normal_table;
mod plan;
mod posterior;
mod prior;
mod reckoned;
mod record;
mod renewal;
mod shapes;
mod special;
mod spots;
mod sums;
mod table;
mod wait;
mod wait_law;

pub use advice::{Advice, AdviceState, BITES_TO_TELL, WaitingOn, advise};
pub use club::{CLUB_SHAPES, ClubError, OWN_SHARE};
pub use conjugate::GammaPosterior;
pub use curve::{CurveKind, CurvePoint};
pub use error::BiteError;
pub use evidence::SHORTEST_BITE_MIN;
pub use fed::{FED_PRIOR, FED_TIMES, FedEffect, FedPrior};
pub use fit::{Fit, Model, TwoGroupFit, fit, fit_two_groups};
pub use kaplan_meier::{Limits, RestrictedMean, Step, SurvivalCurve};
pub use laws::ShapeLaw;
pub use plan::LeavePlan;
pub use posterior::{ModelShare, WaitPosterior};
pub use prior::{
    BITE_EXTRA_GUESS_MIN, LIKE_DAY_WEIGHT, OTHER_DAY_WEIGHT, PRIORS, Priors, ScalePrior, TURN_ROUND_GUESS_MIN,
};
pub use record::{Accuracy, EarlierDay, Record, Settings};
pub use renewal::{BestLeave, Costs, best_empirical, best_leave, empirical_rates, rate_at};
pub use shapes::{SHAPE_PRIORS, ShapePriors, Shapes};
pub use spots::{SpotBeliefs, SpotCast, SpotEvent, SpotLeave, SpotWorth, Then};
pub use wait::{Wait, WaitError};
pub use wait_law::{Always, Even, Law, Lomax, TwoRates, WaitLaw, WithNobodyHome};
