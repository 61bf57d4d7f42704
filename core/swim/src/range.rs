//! Ranges as the trade measures them: wraps of line round two sticks, yards and metres.

/// Metres in a yard, exact (international yard, 1959).
pub const METRES_PER_YARD: f64 = 0.9144;
/// Metres in a foot, exact: a third of a yard.
pub const METRES_PER_FOOT: f64 = 0.3048;

/// Why a range can't be computed.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum RangeError {
    /// A span that isn't a positive length.
    #[error("the span between the sticks must be a positive length, not {0} m: measure it once and enter it")]
    Span(f64),
    /// A range or number of wraps below zero or not a number.
    #[error("a range must be a number of zero or more, not {0}")]
    NotARange(f64),
}

/// The span between two distance sticks; stored with every figure in wraps, since spans differ.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    metres: f64,
}

impl Span {
    /// A span in metres.
    pub fn from_metres(metres: f64) -> Result<Self, RangeError> {
        if metres.is_finite() && metres > 0.0 { Ok(Self { metres }) } else { Err(RangeError::Span(metres)) }
    }

    /// A span in feet: 12 ft, four yards a wrap, is common practice (no source).
    pub fn from_feet(feet: f64) -> Result<Self, RangeError> {
        Self::from_metres(feet * METRES_PER_FOOT)
    }

    /// The span in metres.
    pub fn metres(self) -> f64 {
        self.metres
    }

    /// Range in metres of a number of wraps.
    pub fn range_of(self, wraps: f64) -> Result<f64, RangeError> {
        checked(wraps).map(|wraps| wraps * self.metres)
    }

    /// Wraps for a range in metres.
    pub fn wraps_for(self, metres: f64) -> Result<f64, RangeError> {
        checked(metres).map(|metres| metres / self.metres)
    }
}

/// Metres to yards.
pub fn yards(metres: f64) -> f64 {
    metres / METRES_PER_YARD
}

/// Yards to metres.
pub fn metres(yards: f64) -> f64 {
    yards * METRES_PER_YARD
}

fn checked(value: f64) -> Result<f64, RangeError> {
    if value.is_finite() && value >= 0.0 { Ok(value) } else { Err(RangeError::NotARange(value)) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bad_figures_are_refused_by_name() {
        assert_eq!(Span::from_feet(0.0), Err(RangeError::Span(0.0)));
        assert!(Span::from_metres(f64::NAN).is_err());
        assert_eq!(Span::from_metres(2.0).unwrap().range_of(-1.0), Err(RangeError::NotARange(-1.0)));
    }

    #[test]
    fn ten_wraps_of_two_metres_are_twenty() {
        let span = Span::from_metres(2.0).unwrap();
        assert_eq!(span.range_of(10.0), Ok(20.0));
        assert_eq!(span.wraps_for(20.0), Ok(10.0));
        assert!((metres(yards(31.7)) - 31.7).abs() < 1e-14);
    }
}
