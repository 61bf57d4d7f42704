//! Balancing a pop-up: what the counterweight has to hold down, and the shot for it.

use super::material::{self, Material, MaterialError};
use super::shot::{self, ShotChoice, ShotError, ShotSize};
use super::units::LineLength;
use serde::{Deserialize, Serialize};

/// A pop-up above its counterweight.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct PopUp {
    /// Lift of the bait in grams, measured in a bowl of water as cold as the lake: the weight under water
    /// that just sinks it. It decreases as the bait takes up water, so it belongs to `soaked_min`.
    pub lift_g: f64,
    /// Minutes the bait had soaked when its lift was measured.
    pub soaked_min: u16,
    /// Weight of the hook in air, grams.
    pub hook_g: f64,
    /// What the hook is made of.
    pub hook: Material,
    /// Pop-up height: counterweight to hook.
    pub height: LineLength,
    /// Diameter of that line in millimetres.
    pub line_mm: f64,
    /// What the line is made of.
    pub line: Material,
}

/// What balances it.
#[derive(Debug, Clone, PartialEq)]
pub struct Balance {
    /// Grams of lift left after hook and line: what the counterweight has to exceed under water.
    pub net_lift_g: f64,
    /// Weight of the hook under water, grams.
    pub hook_g: f64,
    /// Weight of the line above the counterweight under water, grams; negative if it floats.
    pub line_g: f64,
    /// The shot.
    pub shot: ShotChoice,
}

/// Why there is no balance.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum BalanceError {
    /// An impossible lift.
    #[error("the lift of the bait must be above 0 g")]
    BadLift,
    /// An impossible diameter.
    #[error("a line diameter of {0} mm can't be used: it goes from 0.04 to 1 mm")]
    BadDiameter(f64),
    /// Hook and line are too heavy for it.
    #[error("the bait lifts {lift_g} g but hook and line weigh {held_g} g under water")]
    Sinks {
        /// Lift of the bait.
        lift_g: f64,
        /// Hook and line under water.
        held_g: f64,
    },
    /// A material can't be used.
    #[error(transparent)]
    Material(#[from] MaterialError),
    /// No shot could be chosen.
    #[error(transparent)]
    Shot(#[from] ShotError),
}

/// Weight in air of a piece of line, grams: density x pi d^2 / 4 x length.
fn line_grams(diameter_mm: f64, length: LineLength, line: Material) -> Result<f64, BalanceError> {
    if !(0.04..=1.0).contains(&diameter_mm) {
        return Err(BalanceError::BadDiameter(diameter_mm));
    }
    let d = diameter_mm / 1000.0;
    Ok(line.density() * std::f64::consts::FRAC_PI_4 * d * d * length.metres() * 1000.0)
}

/// The counterweight for a pop-up in water at `water_c`: the fewest shot that under water weigh at
/// least its net lift and at most `tolerance_g` more.
pub fn balance(
    pop_up: &PopUp,
    water_c: f64,
    table: &[ShotSize],
    shot_material: Material,
    tolerance_g: f64,
) -> Result<Balance, BalanceError> {
    if !(pop_up.lift_g.is_finite() && pop_up.lift_g > 0.0) {
        return Err(BalanceError::BadLift);
    }
    let hook_g = material::weight_in_water(pop_up.hook_g, pop_up.hook, water_c)?;
    let line_air = line_grams(pop_up.line_mm, pop_up.height, pop_up.line)?;
    let line_g =
        if line_air > 0.0 { material::weight_in_water(line_air, pop_up.line, water_c)? } else { 0.0 };
    let net_lift_g = pop_up.lift_g - hook_g - line_g;
    if net_lift_g <= 0.0 {
        return Err(BalanceError::Sinks { lift_g: pop_up.lift_g, held_g: hook_g + line_g });
    }
    let shot = shot::fewest(table, shot_material, water_c, net_lift_g, tolerance_g)?;
    Ok(Balance { net_lift_g, hook_g, line_g, shot })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pop_up() -> PopUp {
        PopUp {
            lift_g: 0.5,
            soaked_min: 20,
            hook_g: 0.1,
            hook: Material::Steel,
            height: LineLength::from_cm(45.0).unwrap(),
            line_mm: 0.16,
            line: Material::Nylon,
        }
    }

    #[test]
    fn the_net_lift_is_the_lift_less_hook_and_line_under_water() {
        let found = balance(&pop_up(), 5.0, &shot::starting_table(), Material::Tungsten, 0.05).unwrap();
        // Closed form: 0.1 g of steel weighs 0.1 (1 - 999.97/7850) = 0.08726 g; 45 cm of 0.16 mm nylon
        // is 1140 x pi/4 x (0.00016)^2 x 0.45 = 0.010315 g, of which 12.3 % = 0.001267 g is left.
        assert!((found.hook_g - 0.087_262).abs() < 1e-5);
        assert!((found.line_g - 0.001_267).abs() < 1e-5);
        assert!((found.net_lift_g - 0.411_471).abs() < 1e-5);
        assert!(found.shot.under_water >= found.net_lift_g);
        assert!(found.shot.under_water <= found.net_lift_g + 0.05);
    }

    #[test]
    fn a_bait_that_will_not_pop_up_says_so() {
        let heavy = PopUp { lift_g: 0.05, ..pop_up() };
        let found = balance(&heavy, 5.0, &shot::starting_table(), Material::Tungsten, 0.05);
        assert!(matches!(found, Err(BalanceError::Sinks { .. })));
    }

    #[test]
    fn bad_measurements_are_refused() {
        let table = shot::starting_table();
        let refused = |p: PopUp| balance(&p, 5.0, &table, Material::Tungsten, 0.05).unwrap_err();
        assert_eq!(refused(PopUp { lift_g: -1.0, ..pop_up() }), BalanceError::BadLift);
        assert_eq!(refused(PopUp { line_mm: 0.0, ..pop_up() }), BalanceError::BadDiameter(0.0));
        assert!(matches!(refused(PopUp { hook_g: 0.0, ..pop_up() }), BalanceError::Material(_)));
    }
}
