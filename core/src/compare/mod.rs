//! Did a change matter: exact tests, rates, multiplicity, alternation plans.
//!
//! Everything here is pure: rows of casts and a seed come in, findings come out.

pub mod alternation;
pub mod binomial;
pub mod blocks;
mod cast_row;
pub mod chance;
mod error;
pub mod fisher;
pub mod gamma_poisson;
mod holm;
pub mod log_rank;
pub mod permutation;
pub mod poisson_rates;
pub(crate) mod tails;
mod verdict;

pub use alternation::{AlternationPlan, Side};
pub use binomial::Limits;
pub use cast_row::{BiteOutcome, CastRow, Factor};
pub use error::CompareError;
pub use holm::holm;
pub use verdict::{Evidence, Reason, Verdict, verdict};
