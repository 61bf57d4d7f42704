//! Light and weather at the water: sunrise, sunset, civil twilight, and conditions logged in few taps.
#![forbid(unsafe_code)]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp))]

pub mod conditions;
pub mod daylight;
