//! The match: clock, casts left, forecast, running weight, nets.
