//! Whole-app acceptance: reference checks, laws, crash tests, the simulated bank.
#![forbid(unsafe_code)]

pub mod bench_stats;
pub mod r_agreement;
pub mod reference;
