//! Whole-app acceptance: reference checks, laws, crash tests, the simulated bank.
#![forbid(unsafe_code)]

pub mod reference;
#[path = "../sim/mod.rs"]
pub mod sim;
