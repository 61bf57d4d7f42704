//! Yards and metres.

/// Metres in a yard, exact (international yard, 1959).
pub const METRES_PER_YARD: f64 = 0.9144;

/// Yards to metres.
pub fn metres(yards: f64) -> f64 {
    yards * METRES_PER_YARD
}
