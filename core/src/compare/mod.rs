//! Did a change matter: exact tests, rates, multiplicity, alternation plans.
//!
//! Everything here is pure: rows of casts and a seed come in, findings come out.

pub mod binomial;
pub mod chance;
mod error;
pub mod fisher;
pub mod gamma_poisson;
pub mod log_rank;
pub mod permutation;
pub mod poisson_rates;
pub(crate) mod tails;

pub use binomial::Limits;
pub use error::CompareError;
