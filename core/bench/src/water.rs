//! Density of water from its temperature.

use super::iapws95;

/// Pressure at the surface, Pa (one standard atmosphere).
const SURFACE_PRESSURE: f64 = 101_325.0;

/// Why a water temperature can't be used.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum WaterError {
    /// Not a number, or infinite.
    #[error("the water temperature must be a number of degrees Celsius")]
    NotANumber,
    /// Frozen, or warmer than the formulas hold for.
    #[error("{0} C is outside 0 to 40 C, where the density of water is known here")]
    OutOfRange(f64),
}

fn checked(celsius: f64) -> Result<f64, WaterError> {
    if !celsius.is_finite() {
        return Err(WaterError::NotANumber);
    }
    if !(0.0..=40.0).contains(&celsius) {
        return Err(WaterError::OutOfRange(celsius));
    }
    Ok(celsius)
}

/// Density of fresh water, kg/m3, at `celsius` (0 to 40) and one atmosphere, by the international standard IAPWS
/// R6-95(2018).
pub fn density(celsius: f64) -> Result<f64, WaterError> {
    let t = checked(celsius)?;
    Ok(iapws95::liquid_density(t + 273.15, SURFACE_PRESSURE, tanaka(t)))
}

/// Tanaka, Girard, Davis, Peuto and Bignell, Metrologia 38:301-309 (2001), air-free water: near enough to begin the search.
fn tanaka(t: f64) -> f64 {
    let warm = t - 3.983_035;
    999.974_950 * (1.0 - warm * warm * (t + 301.797) / (522_528.9 * (t + 69.348_81)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Kell, J. Chem. Eng. Data 20:97-105 (1975).
    fn kell(t: f64) -> f64 {
        let top = 999.839_52
            + t * (16.945_176
                + t * (-7.987_040_1e-3 + t * (-46.170_461e-6 + t * (105.563_02e-9 + t * -280.542_53e-12))));
        top / (1.0 + 16.879_85e-3 * t)
    }

    /// The three equations were fitted by different people to different measurements.
    #[test]
    fn the_three_formulas_agree_on_a_cold_lake() {
        for tenth in 0..=300 {
            let t = f64::from(tenth) / 10.0;
            let standard = density(t).unwrap();
            assert!((standard - tanaka(t)).abs() < 0.003, "{t}");
            assert!((standard - kell(t)).abs() < 0.012, "{t}");
        }
    }

    #[test]
    fn water_is_heaviest_near_four_degrees() {
        let at = |t| density(t).unwrap();
        assert!(at(3.98) > at(3.0) && at(3.98) > at(5.0));
    }

    #[test]
    fn temperatures_that_no_lake_has_are_refused() {
        assert_eq!(density(-1.0), Err(WaterError::OutOfRange(-1.0)));
        assert_eq!(density(f64::NAN), Err(WaterError::NotANumber));
        assert_eq!(density(55.0), Err(WaterError::OutOfRange(55.0)));
    }
}
