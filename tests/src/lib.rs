//! Whole-app acceptance: reference checks, laws, crash tests, the simulated bank.
#![forbid(unsafe_code)]

pub mod invented;
pub mod reference;
