//! How casts scatter round the spot they were meant for, and how far a lead disturbs the water.
//!
//! Every default here is a guess (no source was found for any of them); the app has no key that changes them.

use super::error::{SwimError, finite, positive};
use serde::{Deserialize, Serialize};

/// Standard deviations of where casts land round their spot.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Scatter {
    /// For the bearing, degrees.
    pub bearing_sd_deg: f64,
    /// For the range with the line clipped up, metres.
    pub clipped_range_sd_m: f64,
    /// For the range without the clip, as a share of the range.
    pub free_range_sd_share: f64,
    /// Whether these are guesses rather than the angler's own measurement.
    pub is_guess: bool,
}

impl Default for Scatter {
    /// 1.5 degrees; 0.5 m clipped up; 5 % of the range otherwise. Guesses.
    fn default() -> Self {
        Self { bearing_sd_deg: 1.5, clipped_range_sd_m: 0.5, free_range_sd_share: 0.05, is_guess: true }
    }
}

impl Scatter {
    /// Refuses what is not above 0.
    pub fn check(&self) -> Result<(), SwimError> {
        positive("the scatter of bearings", self.bearing_sd_deg)?;
        positive("the scatter of clipped ranges", self.clipped_range_sd_m)?;
        positive("the scatter of free ranges", self.free_range_sd_share)?;
        Ok(())
    }

    /// Standard deviation of the range of a cast meant for `range_m` metres, metres.
    pub fn range_sd_m(&self, clipped: bool, range_m: f64) -> f64 {
        if clipped { self.clipped_range_sd_m } else { self.free_range_sd_share * range_m }
    }
}

/// One line of the table of disturbance: up to this weight, this radius.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct DisturbanceRow {
    /// Weight of the lead or loaded feeder, grams, up to and including.
    pub up_to_g: f64,
    /// Radius of the water disturbed, metres.
    pub radius_m: f64,
}

/// Radius of the water that a lead or feeder disturbs, by its weight.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Disturbance {
    /// Lines in order of weight; the last one also applies to anything heavier.
    pub rows: Vec<DisturbanceRow>,
    /// Radius if the weight was not logged, metres.
    pub unknown_m: f64,
    /// Whether the table is a guess.
    pub is_guess: bool,
}

impl Default for Disturbance {
    /// 1 m up to 10 g, 1.5 m to 20 g, 2 m to 30 g, 2.5 m to 50 g, 3 m above; 2 m where not logged. Guesses.
    fn default() -> Self {
        let rows = [(10.0, 1.0), (20.0, 1.5), (30.0, 2.0), (50.0, 2.5), (1000.0, 3.0)];
        Self {
            rows: rows.iter().map(|&(up_to_g, radius_m)| DisturbanceRow { up_to_g, radius_m }).collect(),
            unknown_m: 2.0,
            is_guess: true,
        }
    }
}

impl Disturbance {
    /// Refuses radii and weights that are not above 0.
    pub fn check(&self) -> Result<(), SwimError> {
        positive("the radius of disturbance", self.unknown_m)?;
        for row in &self.rows {
            positive("the radius of disturbance", row.radius_m)?;
            positive("a weight in the table of disturbance", row.up_to_g)?;
        }
        Ok(())
    }

    /// Radius for a weight in grams, metres: that of the first line whose weight is not exceeded, and for
    /// heavier weights that of the last line.
    pub fn radius_m(&self, lead_g: Option<f64>) -> f64 {
        let Some(g) = lead_g else { return self.unknown_m };
        let fits = |row: &&DisturbanceRow| g <= row.up_to_g;
        let by_weight = |a: &&DisturbanceRow, b: &&DisturbanceRow| a.up_to_g.total_cmp(&b.up_to_g);
        let row = self.rows.iter().filter(fits).min_by(by_weight);
        row.or_else(|| self.rows.iter().max_by(by_weight)).map_or(self.unknown_m, |r| r.radius_m)
    }
}

/// Refuses a weight that is not a number above 0.
pub(crate) fn check_lead(lead_g: Option<f64>) -> Result<(), SwimError> {
    lead_g
        .map_or(Ok(()), |g| positive("the weight of a lead", finite("the weight of a lead", g)?).map(|_| ()))
}

/// Probability that a normal variable is between two limits.
pub(crate) fn normal_between(mean: f64, sd: f64, from: f64, to: f64) -> f64 {
    // Upper tails on the right of the mean keep small probabilities exact.
    let tail = |x: f64| 0.5 * libm::erfc((x - mean) / (sd * std::f64::consts::SQRT_2));
    if from > mean { tail(from) - tail(to) } else { lower(mean, sd, to) - lower(mean, sd, from) }
}

fn lower(mean: f64, sd: f64, x: f64) -> f64 {
    0.5 * libm::erfc((mean - x) / (sd * std::f64::consts::SQRT_2))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_is_read_by_weight_in_any_order() {
        let mut d = Disturbance::default();
        d.rows.reverse();
        assert_eq!(d.radius_m(Some(28.35)), 2.0);
        assert_eq!(d.radius_m(Some(10.0)), 1.0);
        assert_eq!(d.radius_m(Some(5000.0)), 3.0);
        assert_eq!(d.radius_m(None), 2.0);
        d.rows.clear();
        assert_eq!(d.radius_m(Some(20.0)), 2.0);
    }

    #[test]
    fn normal_probabilities_agree_with_the_tables() {
        // Standard normal: 0.682689492137086 within one sd, 1.349898031630095e-3 above three
        // (NIST/SEMATECH e-Handbook 1.3.6.7.1 gives four digits; the rest by libm's erfc and checked
        // against scipy.stats.norm).
        assert!((normal_between(0.0, 1.0, -1.0, 1.0) - 0.682_689_492_137_086).abs() < 1e-14);
        let tail = normal_between(5.0, 2.0, 11.0, f64::INFINITY);
        assert!((tail / 1.349_898_031_630_095e-3 - 1.0).abs() < 1e-12);
    }

    #[test]
    fn nonsense_is_refused() {
        assert!(Scatter { bearing_sd_deg: 0.0, ..Scatter::default() }.check().is_err());
        assert!(Disturbance { unknown_m: f64::NAN, ..Disturbance::default() }.check().is_err());
        assert!(check_lead(Some(-1.0)).is_err());
        assert!(check_lead(None).is_ok());
    }
}
