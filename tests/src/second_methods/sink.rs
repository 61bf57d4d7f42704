//! A smooth sphere falling freely in still water: an upper bound for a bare lead, since a rig on a line sinks
//! more slowly. The angler's own fall times ([`restwater_bench::fall`]) come first.

use restwater_bench::material;
use restwater_bench::material::{Material, MaterialError};
use restwater_bench::water;
use restwater_bench::water::DensityFormula;

/// Standard acceleration of free fall, m/s2 (3rd CGPM, 1901).
pub const FREE_FALL: f64 = 9.806_65;

/// A sphere of known mass.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sphere {
    /// Millimetres.
    pub diameter_mm: f64,
    /// Millilitres.
    pub volume_ml: f64,
}

/// Its terminal speed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Terminal {
    /// Metres per second; positive sinks, negative rises.
    pub speed: f64,
    /// Reynolds number on the diameter.
    pub reynolds: f64,
}

/// The sphere of `grams` of `material`.
pub fn sphere(grams: f64, material: Material) -> Result<Sphere, MaterialError> {
    material::check(grams, material)?;
    let volume_ml = grams / material.density() * 1000.0;
    let diameter_mm = 10.0 * libm::cbrt(6.0 * volume_ml / std::f64::consts::PI);
    Ok(Sphere { diameter_mm, volume_ml })
}

/// Drag coefficient at a Reynolds number: Schiller and Naumann, Z. VDI 77:318 (1933) up to 1 000,
/// above that Newton's plateau of 0.44.
fn drag(reynolds: f64) -> f64 {
    if reynolds < 1000.0 { 24.0 / reynolds * (1.0 + 0.15 * libm::pow(reynolds, 0.687)) } else { 0.44 }
}

/// Terminal speed in water at `water_c`: weight minus buoyancy = drag, solved by bisection to the last bit.
pub fn terminal(grams: f64, material: Material, water_c: f64) -> Result<Terminal, MaterialError> {
    let d = sphere(grams, material)?.diameter_mm / 1000.0;
    let water = water::density(water_c, DensityFormula::Iapws95)?;
    let viscosity = water::dynamic_viscosity(water_c)?;
    let heavier = material.density() / water - 1.0;
    let wanted = 4.0 / 3.0 * FREE_FALL * d * heavier.abs();
    let excess = |v: f64| drag(water * v * d / viscosity) * v * v - wanted;
    let (mut low, mut high) = (1e-12, 100.0);
    for _ in 0..200 {
        let middle = 0.5 * (low + high);
        if excess(middle) > 0.0 {
            high = middle;
        } else {
            low = middle;
        }
    }
    let speed = 0.5 * (low + high);
    Ok(Terminal { speed: speed.copysign(heavier), reynolds: water * speed * d / viscosity })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp)]
mod tests {
    use super::*;

    /// Stokes, Trans. Camb. Phil. Soc. 9:8 (1851): for a very small sphere v = g d^2 (rho - rho_w) / (18 mu).
    #[test]
    fn a_speck_obeys_stokes() {
        let grams = 1e-9;
        let d = sphere(grams, Material::Nylon).unwrap().diameter_mm / 1000.0;
        let water = water::density(10.0, DensityFormula::Iapws95).unwrap();
        let stokes = FREE_FALL * d * d * (1140.0 - water) / (18.0 * water::dynamic_viscosity(10.0).unwrap());
        let found = terminal(grams, Material::Nylon, 10.0).unwrap();
        assert!(found.reynolds < 0.01 && (found.speed / stokes - 1.0).abs() < 0.01);
    }

    /// On the plateau the speed has a closed form: v = sqrt(4 g d (rho / rho_w - 1) / (3 x 0.44)).
    #[test]
    fn a_lead_sinks_on_the_plateau() {
        let d = sphere(28.35, Material::Lead).unwrap().diameter_mm / 1000.0;
        let water = water::density(5.0, DensityFormula::Iapws95).unwrap();
        let closed = (4.0 * FREE_FALL * d * (11_340.0 / water - 1.0) / (3.0 * 0.44)).sqrt();
        let found = terminal(28.35, Material::Lead, 5.0).unwrap();
        assert!(found.reynolds > 1000.0 && (found.speed / closed - 1.0).abs() < 1e-12);
    }

    #[test]
    fn what_floats_rises() {
        assert!(terminal(0.1, Material::Braid, 10.0).unwrap().speed < 0.0);
    }
}
