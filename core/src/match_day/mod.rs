//! The match: clock, casts left, forecast, running weight, nets.
pub mod forecast;
