//! Units used on the bench. Every factor here is exact by definition: the international yard and pound
//! agreement of 1959, Weights and Measures Act 1985 schedule 1.

use serde::{Deserialize, Serialize};

/// Metres in an inch.
pub const INCH_M: f64 = 0.0254;
/// Kilograms in a pound.
pub const POUND_KG: f64 = 0.453_592_37;
/// Grams in an ounce.
pub const OUNCE_G: f64 = 28.349_523_125;
/// Grams in a dram.
pub const DRAM_G: f64 = 1.771_845_195_312_5;

/// A length of line in tenths of a millimetre: whole for inches (254) and centimetres (100) alike, so showing
/// a length in the other unit doesn't change it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
pub struct LineLength(u32);

#[cfg(feature = "uniffi")]
uniffi::custom_type!(LineLength, u32, {
    lower: |length| length.0,
    try_lift: |tenths| Ok(LineLength(tenths)),
});

/// Why a length can't be used.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum LengthError {
    /// Not a number, negative, zero.
    #[error("a length must be above 0")]
    NotPositive,
    /// Longer than a spool of line.
    #[error("{0} m is more than any spool holds")]
    Absurd(f64),
}

/// No spool of line is longer, metres.
const LONGEST_M: f64 = 10_000.0;

impl LineLength {
    /// From tenths of a millimetre.
    pub const fn from_tenths_mm(tenths: u32) -> Self {
        Self(tenths)
    }

    /// From whole millimetres, as a rig stores a length: if they are rounded inches, those inches are used.
    /// Whole centimetres are kept, except if they are whole feet.
    pub const fn from_rounded_mm(mm: u32) -> Self {
        let inches = (mm.saturating_mul(10).saturating_add(127)) / 254;
        let rounded = (inches * 254 + 5) / 10;
        if inches > 0 && rounded == mm && (!mm.is_multiple_of(10) || inches.is_multiple_of(12)) {
            Self(inches * 254)
        } else {
            Self(mm.saturating_mul(10))
        }
    }

    /// From inches, rounded to a tenth of a millimetre.
    pub fn from_inches(inches: f64) -> Result<Self, LengthError> {
        Self::from_metres(inches * INCH_M)
    }

    /// From centimetres, rounded to a tenth of a millimetre.
    pub fn from_cm(cm: f64) -> Result<Self, LengthError> {
        Self::from_metres(cm / 100.0)
    }

    /// From metres, rounded to a tenth of a millimetre.
    pub fn from_metres(metres: f64) -> Result<Self, LengthError> {
        if metres > LONGEST_M && metres.is_finite() {
            return Err(LengthError::Absurd(metres));
        }
        let tenths = libm::round(metres * 10_000.0);
        if tenths.is_finite() && tenths >= 1.0 {
            Ok(Self(tenths as u32))
        } else {
            Err(LengthError::NotPositive)
        }
    }

    /// Tenths of a millimetre.
    pub const fn tenths_mm(self) -> u32 {
        self.0
    }

    /// Inches.
    pub fn inches(self) -> f64 {
        f64::from(self.0) / 254.0
    }

    /// Centimetres.
    pub fn cm(self) -> f64 {
        f64::from(self.0) / 100.0
    }

    /// Metres.
    pub fn metres(self) -> f64 {
        f64::from(self.0) / 10_000.0
    }
}

/// For display: inches if the length is a whole number of them, otherwise centimetres to the millimetre, which is as finely as a
/// hooklength is tied or measured.
impl std::fmt::Display for LineLength {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        if self.0.is_multiple_of(254) && self.0 > 0 {
            write!(f, "{} in", self.0 / 254)
        } else {
            let mm = self.0.saturating_add(5) / 10;
            match mm % 10 {
                0 => write!(f, "{} cm", mm / 10),
                tenth => write!(f, "{}.{tenth} cm", mm / 10),
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn inches_and_centimetres_are_both_whole() {
        assert_eq!(LineLength::from_inches(18.0), Ok(LineLength::from_tenths_mm(4572)));
        assert_eq!(LineLength::from_cm(45.7), Ok(LineLength::from_tenths_mm(4570)));
        assert_eq!(LineLength::from_tenths_mm(4572).to_string(), "18 in");
        assert_eq!(LineLength::from_tenths_mm(4570).to_string(), "45.7 cm");
        // 12 in and what a tie uses beyond it.
        assert_eq!(LineLength::from_tenths_mm(4248).to_string(), "42.5 cm");
        assert_eq!(LineLength::from_tenths_mm(4296).to_string(), "43 cm");
    }

    #[test]
    fn a_rounded_length_becomes_the_inches_that_were_meant() {
        let said = [51, 152, 305, 450, 457, 610, 330, 100, 914, 1_524, 455, 0];
        let said = said.map(|mm| LineLength::from_rounded_mm(mm).to_string());
        let meant = [
            "2 in", "6 in", "12 in", "45 cm", "18 in", "24 in", "33 cm", "10 cm", "36 in", "60 in",
            "45.5 cm", "0 cm",
        ];
        assert_eq!(said, meant);
        for mm in [0, 1, 5_000, 10_000, u32::MAX] {
            let off = LineLength::from_rounded_mm(mm).tenths_mm().abs_diff(mm.saturating_mul(10));
            assert!(off <= 5, "{mm}: {off}");
        }
    }

    #[test]
    fn impossible_lengths_are_refused() {
        for bad in [0.0, -3.0, f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert_eq!(LineLength::from_cm(bad), Err(LengthError::NotPositive), "{bad}");
        }
        assert!(matches!(LineLength::from_metres(20_000.0), Err(LengthError::Absurd(_))));
    }
}
