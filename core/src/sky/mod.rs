//! Daylight at the water.
