//! Did a change matter: exact tests, rates, multiplicity, alternation plans.
//!
//! Everything here is pure: the input is rows of casts and a seed, the output is findings.
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

pub mod alternation;
mod any_look;
mod belief;
mod beside_others;
pub mod binomial;
mod blocks;
mod cast_row;
pub mod chance;
mod changes;
mod error;
mod factor;
mod factor_value;
mod finding;
mod holm;
mod hours;
pub mod log_rank;
mod more_casts;
#[cfg(test)]
mod no_effect;
mod order;
pub mod over_days;
pub mod permutation;
pub mod poisson_rates;
pub mod sets;
pub mod tails;
mod verdict;

pub use alternation::{AlternationPlan, Side};
pub use any_look::any_look_p;
pub use belief::{Belief, belief, belief_of_waits, spell_variance};
pub use beside_others::{BesideOthers, BesideVerdict, beside_others};
pub use binomial::Limits;
pub use blocks::SidedCast;
pub use cast_row::CastRow;
pub use changes::{Change, find_changes};
pub use error::CompareError;
pub use factor::Factor;
pub use factor_value::FactorValue;
pub use finding::{ChangeFinding, SideRecord, change_findings, change_findings_without_power};
pub use hours::{ByHours, DaySoFar, TimedWait, against_earlier, hour_clusters, over_the_day};
pub use more_casts::{DAY_CASTS, Looks, MOST_CASTS, MoreCasts, more_casts};
pub use order::Order;
pub use verdict::{
    CLEAR_BELOW, Evidence, FEWEST_BITES, FEWEST_CASTS, FEWEST_SWITCHES, LEANS_FROM, Reason, Verdict, verdict,
};
