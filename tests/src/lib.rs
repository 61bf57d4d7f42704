//! Whole-app acceptance: reference checks, properties, crash tests, the simulated bank.
// One file uses SQLite's VFS interface and allows it: powercut/vfs.rs.
#![deny(unsafe_code)]

pub mod bench_row;
pub mod bench_stats;
pub mod crash;
pub mod fuzz;
pub mod importing;
pub mod invented;
pub mod merge;
pub mod model;
pub mod phone;
pub mod pooled;
pub mod powercut;
pub mod r_agreement;
pub mod record;
pub mod reference;
pub mod second_methods;
#[path = "../sim/mod.rs"]
pub mod sim;
