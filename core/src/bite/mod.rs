//! Waits: how long from splash to bite, and how long to leave the next cast.

mod error;
mod fit;
mod kaplan_meier;
mod location_scale;
mod matrix;
mod renewal;
mod special;
mod wait;
mod wait_law;

pub use error::BiteError;
pub use fit::{Fit, Model, TwoGroupFit, fit, fit_two_groups};
pub use kaplan_meier::{Limits, RestrictedMean, Step, SurvivalCurve};
pub use renewal::{BestLeave, Costs, best_empirical, best_leave, empirical_rates, rate_at};
pub use wait::{Wait, WaitError};
pub use wait_law::{Always, Even, Law, Lomax, TwoRates, WaitLaw, WithNobodyHome};
