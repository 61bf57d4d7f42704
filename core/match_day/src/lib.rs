//! Match day: the clock, the casts it leaves, the weight in the nets and the weigh-in.
// What uniffi generates for the boundary is unsafe; everything written by hand is held to this without that feature.
#![cfg_attr(not(feature = "uniffi"), forbid(unsafe_code))]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp))]

/// What uniffi's derives name. Its scaffolding would export a runtime beside it, which only the crate `bindings` needs.
#[cfg(feature = "uniffi")]
#[doc(hidden)]
pub struct UniFfiTag;

pub mod casts_left;
pub mod class;
pub mod clock;
pub mod forecast;
pub mod rules;
pub mod running;
pub mod section;
pub mod typed;
pub mod weigh_in;
pub mod weight;
