//! The bench, the evening before: hooklengths to tie and to cut down, the pop-up and its shot,
//! how deep the lead fell, what to pack.
// What uniffi generates for the boundary is unsafe; everything written by hand is held to this without that feature.
#![cfg_attr(not(feature = "uniffi"), forbid(unsafe_code))]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp))]

/// What uniffi's derives name. Its scaffolding would export a runtime beside it, which only the crate `bindings` needs.
#[cfg(feature = "uniffi")]
#[doc(hidden)]
pub struct UniFfiTag;

pub mod balance;
pub mod cut_down;
mod error;
pub mod fall;
pub mod hooklength;
mod iapws95;
pub mod ladder;
pub mod material;
pub mod pack;
pub mod shot;
pub mod tie_up;
pub mod units;
pub mod water;

pub use error::BenchError;
