//! Density and viscosity of water from its temperature.

use super::iapws95::{self, CRITICAL_DENSITY, CRITICAL_TEMPERATURE};

/// Pressure at the surface, Pa (one standard atmosphere).
pub const SURFACE_PRESSURE: f64 = 101_325.0;

/// Which published equation gives the density; they agree to 0.015 kg/m3 from 0 to 40 C.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DensityFormula {
    /// The international standard, IAPWS R6-95(2018), at one atmosphere.
    Iapws95,
    /// Tanaka, Girard, Davis, Peuto and Bignell, Metrologia 38:301-309 (2001), air-free water.
    Tanaka,
    /// Kell, J. Chem. Eng. Data 20:97-105 (1975).
    Kell,
}

/// Why a water temperature can't be used.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum WaterError {
    /// Not a number, or infinite.
    #[error("the water temperature must be a number of degrees Celsius: enter it again")]
    NotANumber,
    /// Frozen, or warmer than the formulas hold for.
    #[error("{0} C is outside 0 to 40 C, where the density of water is known here: check the thermometer")]
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

/// Density of fresh water, kg/m3, at `celsius` (0 to 40) and one atmosphere.
pub fn density(celsius: f64, formula: DensityFormula) -> Result<f64, WaterError> {
    let t = checked(celsius)?;
    Ok(match formula {
        DensityFormula::Iapws95 => iapws95::liquid_density(t + 273.15, SURFACE_PRESSURE, tanaka(t)),
        DensityFormula::Tanaka => tanaka(t),
        DensityFormula::Kell => kell(t),
    })
}

fn tanaka(t: f64) -> f64 {
    let warm = t - 3.983_035;
    999.974_950 * (1.0 - warm * warm * (t + 301.797) / (522_528.9 * (t + 69.348_81)))
}

fn kell(t: f64) -> f64 {
    let top = 999.839_52
        + t * (16.945_176
            + t * (-7.987_040_1e-3 + t * (-46.170_461e-6 + t * (105.563_02e-9 + t * -280.542_53e-12))));
    top / (1.0 + 16.879_85e-3 * t)
}

/// Dynamic viscosity of fresh water, Pa s, at `celsius` (0 to 40) and one atmosphere.
///
/// Source: IAPWS R12-08, Release on the IAPWS Formulation 2008 for the Viscosity of Ordinary
/// Water Substance, equations 11 and 12; the critical enhancement is 1 for cold liquid water.
pub fn dynamic_viscosity(celsius: f64) -> Result<f64, WaterError> {
    let density = density(celsius, DensityFormula::Iapws95)?;
    Ok(viscosity_at(celsius + 273.15, density))
}

/// Coefficients H of equation 11.
const DILUTE: [f64; 4] = [1.677_52, 2.204_62, 0.636_656_4, -0.241_605];

/// Coefficients of equation 12: (i, j, H).
const DENSE: [(i32, i32, f64); 21] = [
    (0, 0, 5.200_94e-1),
    (1, 0, 8.508_95e-2),
    (2, 0, -1.083_74),
    (3, 0, -2.895_55e-1),
    (0, 1, 2.225_31e-1),
    (1, 1, 9.991_15e-1),
    (2, 1, 1.887_97),
    (3, 1, 1.266_13),
    (5, 1, 1.205_73e-1),
    (0, 2, -2.813_78e-1),
    (1, 2, -9.068_51e-1),
    (2, 2, -7.724_79e-1),
    (3, 2, -4.898_37e-1),
    (4, 2, -2.570_40e-1),
    (0, 3, 1.619_13e-1),
    (1, 3, 2.573_99e-1),
    (0, 4, -3.253_72e-2),
    (3, 4, 6.984_52e-2),
    (4, 5, 8.721_02e-3),
    (3, 6, -4.356_73e-3),
    (5, 6, -5.932_64e-4),
];

fn viscosity_at(kelvin: f64, density: f64) -> f64 {
    let inverse = CRITICAL_TEMPERATURE / kelvin;
    let reduced = density / CRITICAL_DENSITY;
    let below: f64 = DILUTE.iter().rev().fold(0.0, |sum, h| sum * inverse + h);
    let dilute = 100.0 / (inverse.sqrt() * below);
    let dense: f64 = DENSE
        .iter()
        .map(|&(i, j, h)| h * libm::pow(inverse - 1.0, f64::from(i)) * libm::pow(reduced - 1.0, f64::from(j)))
        .sum();
    dilute * libm::exp(reduced * dense) * 1e-6
}

#[cfg(test)]
mod tests {
    use super::*;

    /// IAPWS R12-08, table 4: 298.15 K and 998 kg/m3 give 889.735 100 uPa s.
    #[test]
    fn printed_viscosity_of_the_release() {
        assert!((viscosity_at(298.15, 998.0) * 1e6 - 889.735_100).abs() < 1e-6);
        assert!((viscosity_at(298.15, 1200.0) * 1e6 - 1_437.649_467).abs() < 1e-6);
    }

    /// The three equations were fitted by different people to different measurements.
    #[test]
    fn the_three_formulas_agree_on_a_cold_lake() {
        for tenth in 0..=300 {
            let t = f64::from(tenth) / 10.0;
            let standard = density(t, DensityFormula::Iapws95).unwrap();
            assert!((standard - density(t, DensityFormula::Tanaka).unwrap()).abs() < 0.003, "{t}");
            assert!((standard - density(t, DensityFormula::Kell).unwrap()).abs() < 0.012, "{t}");
        }
    }

    #[test]
    fn water_is_heaviest_near_four_degrees() {
        let at = |t| density(t, DensityFormula::Iapws95).unwrap();
        assert!(at(3.98) > at(3.0) && at(3.98) > at(5.0));
    }

    #[test]
    fn temperatures_that_no_lake_has_are_refused() {
        assert_eq!(density(-1.0, DensityFormula::Tanaka), Err(WaterError::OutOfRange(-1.0)));
        assert_eq!(density(f64::NAN, DensityFormula::Kell), Err(WaterError::NotANumber));
        assert_eq!(dynamic_viscosity(55.0), Err(WaterError::OutOfRange(55.0)));
    }
}
