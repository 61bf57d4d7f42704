//! Light and weather at the water: sunrise, sunset, civil twilight, and conditions logged in few taps.

pub mod conditions;
pub mod daylight;
pub mod meeus;
