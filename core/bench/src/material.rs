//! The materials of a rig, and their weight under water.

use super::water::{self, WaterError};
use serde::{Deserialize, Serialize};

/// A material of the rig. Densities are common handbook values from memory, unverified: shown as
/// such and editable ([`Material::Other`]).
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Material {
    /// Lead, 11 340 kg/m3.
    Lead,
    /// Solid tungsten, 19 250 kg/m3. Putty is less: measure it and use `Other`.
    Tungsten,
    /// Tin, 7 290 kg/m3.
    Tin,
    /// Steel (hooks), 7 850 kg/m3.
    Steel,
    /// Brass, 8 500 kg/m3.
    Brass,
    /// Nylon 6, 1 140 kg/m3.
    Nylon,
    /// Fluorocarbon (PVDF), 1 780 kg/m3.
    Fluorocarbon,
    /// Braid of polyethylene (UHMWPE), 970 kg/m3: it floats.
    Braid,
    /// As the angler has measured it, kg/m3.
    Other(f64),
}

impl Material {
    /// Density in kg/m3.
    pub fn density(self) -> f64 {
        match self {
            Self::Lead => 11_340.0,
            Self::Tungsten => 19_250.0,
            Self::Tin => 7_290.0,
            Self::Steel => 7_850.0,
            Self::Brass => 8_500.0,
            Self::Nylon => 1_140.0,
            Self::Fluorocarbon => 1_780.0,
            Self::Braid => 970.0,
            Self::Other(density) => density,
        }
    }
}

/// Why a weight under water can't be given.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum MaterialError {
    /// An impossible mass.
    #[error("a mass must be above 0 g")]
    BadMass,
    /// An impossible density.
    #[error("a density must be above 0 kg/m3")]
    BadDensity,
    /// The water temperature can't be used.
    #[error(transparent)]
    Water(#[from] WaterError),
}

/// The weight under water at `water_c` of `grams` of `material`: m (1 - rho_w / rho) (Archimedes), in grams;
/// negative if it floats.
pub fn weight_in_water(grams: f64, material: Material, water_c: f64) -> Result<f64, MaterialError> {
    check(grams, material)?;
    let water = water::density(water_c)?;
    Ok(grams * (1.0 - water / material.density()))
}

/// Refuses an impossible mass or density.
pub fn check(grams: f64, material: Material) -> Result<(), MaterialError> {
    if !(grams.is_finite() && grams > 0.0) {
        return Err(MaterialError::BadMass);
    }
    let density = material.density();
    if density.is_finite() && density > 0.0 { Ok(()) } else { Err(MaterialError::BadDensity) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lead_loses_a_twelfth_under_water_and_braid_floats() {
        let lead = weight_in_water(0.8, Material::Lead, 10.0).unwrap();
        assert!((lead - 0.729_474).abs() < 1e-6, "closed form 0.8 (1 - 999.7025 / 11340)");
        assert!(weight_in_water(0.8, Material::Braid, 10.0).unwrap() < 0.0);
    }

    #[test]
    fn impossible_masses_and_densities_are_refused() {
        assert_eq!(weight_in_water(0.0, Material::Tin, 5.0), Err(MaterialError::BadMass));
        assert_eq!(weight_in_water(f64::NAN, Material::Tin, 5.0), Err(MaterialError::BadMass));
        assert_eq!(weight_in_water(1.0, Material::Other(-1.0), 5.0), Err(MaterialError::BadDensity));
        assert!(matches!(weight_in_water(1.0, Material::Tin, -5.0), Err(MaterialError::Water(_))));
    }
}
