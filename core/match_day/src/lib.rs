//! Match day: the clock, the casts it leaves, the weight in the nets and the weigh-in.
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

pub mod class;
pub mod clock;
pub mod forecast;
pub mod rules;
pub mod running;
pub mod section;
pub mod typed;
pub mod weigh_in;
pub mod weight;
