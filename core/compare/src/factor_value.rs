//! A value of a factor, and the fixed form in which the log stores it.

use crate::Factor;
use serde::{Deserialize, Serialize};

/// The value of a factor on a cast.
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "factor", rename_all = "snake_case", deny_unknown_fields)]
pub enum FactorValue {
    /// A spot: direction and range. The clip and the name of a mark don't move it.
    Spot {
        /// Degrees clockwise from straight out, in hundredths.
        bearing_cdeg: i32,
        /// Range in centimetres.
        range_cm: u32,
    },
    /// A bait.
    Bait {
        /// Its name.
        name: String,
    },
    /// A colour.
    Colour {
        /// Its name.
        name: String,
    },
    /// Height of the pop-up.
    Height {
        /// In millimetres.
        mm: u32,
    },
    /// Length of the hooklength.
    Hooklength {
        /// In millimetres.
        mm: u32,
    },
    /// Hook size.
    HookSize {
        /// As on the packet.
        size: u8,
    },
    /// Weight of the lead or feeder.
    Lead {
        /// In milligrams.
        mg: u32,
    },
    /// A leader.
    Leader {
        /// Its name.
        name: String,
    },
}

impl FactorValue {
    /// The factor that it is a value of.
    pub fn factor(&self) -> Factor {
        match self {
            Self::Spot { .. } => Factor::Spot,
            Self::Bait { .. } => Factor::Bait,
            Self::Colour { .. } => Factor::Colour,
            Self::Height { .. } => Factor::Height,
            Self::Hooklength { .. } => Factor::Hooklength,
            Self::HookSize { .. } => Factor::HookSize,
            Self::Lead { .. } => Factor::Lead,
            Self::Leader { .. } => Factor::Leader,
        }
    }

    /// The fixed form in which entries keep it: "45.7 cm", "30 g", "-12.5° 2200 cm", or the name.
    pub fn written(&self) -> String {
        let figure = |value: u32, per: f64, unit: &str| format!("{}{unit}", f64::from(value) / per);
        match self {
            Self::Spot { bearing_cdeg, range_cm } => {
                format!("{}° {range_cm} cm", f64::from(*bearing_cdeg) / 100.0)
            }
            Self::Bait { name } | Self::Colour { name } | Self::Leader { name } => name.clone(),
            Self::Height { mm } | Self::Hooklength { mm } => figure(*mm, 10.0, " cm"),
            Self::HookSize { size } => size.to_string(),
            Self::Lead { mg } => figure(*mg, 1_000.0, " g"),
        }
    }

    /// Reads that form, or `None` if it is not a value of the factor.
    pub fn read(factor: Factor, written: &str) -> Option<Self> {
        let figure = |unit: &str, per: f64| -> Option<u32> {
            let value: f64 = written.strip_suffix(unit)?.parse().ok()?;
            (0.0..=1_000_000.0).contains(&value).then(|| libm::round(value * per) as u32)
        };
        let name = || written.to_owned();
        Some(match factor {
            Factor::Spot => {
                let (degrees, range) = written.split_once("° ")?;
                let degrees: f64 = degrees.parse().ok().filter(|d: &f64| d.abs() <= 360.0)?;
                let range_cm = range.strip_suffix(" cm")?.parse().ok()?;
                Self::Spot { bearing_cdeg: libm::round(degrees * 100.0) as i32, range_cm }
            }
            Factor::Bait => Self::Bait { name: name() },
            Factor::Colour => Self::Colour { name: name() },
            Factor::Height => Self::Height { mm: figure(" cm", 10.0)? },
            Factor::Hooklength => Self::Hooklength { mm: figure(" cm", 10.0)? },
            Factor::HookSize => Self::HookSize { size: written.parse().ok()? },
            Factor::Lead => Self::Lead { mg: figure(" g", 1_000.0)? },
            Factor::Leader => Self::Leader { name: name() },
            // What was fed for one cast is still there for the next, so a test can't alternate it.
            Factor::Feed | Factor::FeedAmount => return None,
        })
    }

    /// Its name, if it is in the angler's own words.
    pub fn text(&self) -> Option<&str> {
        match self {
            Self::Bait { name } | Self::Colour { name } | Self::Leader { name } => Some(name),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_written_form_is_read_back() {
        let values = [
            (FactorValue::Spot { bearing_cdeg: -1_250, range_cm: 3_475 }, "-12.5° 3475 cm"),
            (FactorValue::Spot { bearing_cdeg: 0, range_cm: 2_200 }, "0° 2200 cm"),
            (FactorValue::Bait { name: "bread".into() }, "bread"),
            (FactorValue::Colour { name: "pink".into() }, "pink"),
            (FactorValue::Height { mm: 457 }, "45.7 cm"),
            (FactorValue::Hooklength { mm: 1_219 }, "121.9 cm"),
            (FactorValue::HookSize { size: 16 }, "16"),
            (FactorValue::Lead { mg: 28_350 }, "28.35 g"),
            (FactorValue::Leader { name: "braid".into() }, "braid"),
        ];
        for (value, written) in values {
            assert_eq!(value.written(), written);
            assert_eq!(FactorValue::read(value.factor(), written), Some(value));
        }
        assert_eq!(FactorValue::read(Factor::Height, "tall"), None);
        assert_eq!(FactorValue::read(Factor::Spot, "45 cm"), None);
        assert_eq!(FactorValue::read(Factor::HookSize, "300"), None);
    }

    #[test]
    fn every_figure_survives_being_written() {
        for (n, bearing_cdeg) in (0..200_000).zip((0..36_000).cycle()).step_by(7) {
            for value in [
                FactorValue::Height { mm: n },
                FactorValue::Lead { mg: n },
                FactorValue::Spot { bearing_cdeg, range_cm: n },
            ] {
                assert_eq!(FactorValue::read(value.factor(), &value.written()), Some(value));
            }
        }
    }
}
