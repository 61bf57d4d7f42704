//! The bench, on the evening before a day: hooklengths to tie and to cut down, the pop-up and its shot, depth
//! from fall time, what to pack.
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
