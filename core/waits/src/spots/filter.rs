//! The forward filter: from one event of a spot to the next.

use super::super::Wait;
use super::super::likelihood::Likelihood;
use super::super::shapes::POINTS;
use super::{Columns, DIFFER_LEAST, EVERYWHERE, Spot, SpotBeliefs, SpotCast, SpotEvent, World, sum};

impl World {
    /// How much of what was known about a spot remains after some minutes.
    pub(super) fn kept(&self, minutes: f64) -> f32 {
        if self.lasting_min > 0.0 { libm::exp(-minutes.max(0.0) / self.lasting_min) as f32 } else { 0.0 }
    }

    /// Minutes until fish are back at a spot.
    pub(super) fn back_in(&self, disturbed_min: f64, at_min: f64) -> f64 {
        (disturbed_min + self.rest_min - at_min).max(0.0)
    }
}

/// Bayes' rule in one world: how likely each shape makes a cast, and the chance of fish after it. `likely` is how likely the cast is
/// among fish, by shape, and where there are none.
fn weigh(weights: &mut [f32], here: &mut [f32], home: &[f32], kept: f32, likely: &(Vec<f32>, f32)) {
    let (among, without) = likely;
    for (((weight, here), home), among) in weights.iter_mut().zip(here).zip(home).zip(among) {
        let chance = home + (*here - home) * kept;
        let with = chance * among;
        let likely = with + (1.0 - chance) * without;
        // Both bounds are single instructions, unlike `f32::max`, which has to look for what isn't a number.
        let after = with / if likely > f32::MIN_POSITIVE { likely } else { f32::MIN_POSITIVE };
        *here = if after < 1.0 { after } else { 1.0 };
        *weight *= likely;
    }
}

impl Spot {
    /// Chance of fish in a world at a moment, by shape: it goes back to the chance for any spot.
    pub(super) fn here_at<'a>(
        &'a self,
        world: usize,
        kept: f32,
        home: &'a [f32],
    ) -> impl Iterator<Item = f32> + 'a {
        self.here[world].iter().zip(home).map(move |(here, home)| home + (here - home) * kept)
    }
}

impl SpotBeliefs {
    pub(super) fn take(&mut self, event: &SpotEvent) {
        match event {
            SpotEvent::Fished(cast) => self.fished(cast),
            SpotEvent::Disturbed { spot, at_min } => {
                if let Some(spot) = self.spots.get_mut(*spot) {
                    spot.disturbed_min = spot.disturbed_min.max(*at_min);
                }
            }
        }
    }

    /// A cast: the weight of each shape in each world by how likely it makes the cast, and the chance of fish by Bayes' rule.
    fn fished(&mut self, cast: &SpotCast) {
        let Some(spot) = self.spots.get(cast.spot) else { return };
        let (known_min, disturbed_min) = (spot.known_min, spot.disturbed_min);
        let (mut weights, mut total) = (self.weights.clone(), 0.0);
        // Worlds in which fish are back at the same time make the cast equally likely among fish.
        let mut likely: Vec<(f64, (Vec<f32>, f32))> = Vec::new();
        for (w, world) in self.worlds.iter().enumerate() {
            let back_in = world.back_in(disturbed_min, cast.at_min);
            let known = likely.iter().position(|(of, _)| *of == back_in).unwrap_or_else(|| {
                likely.push((back_in, self.likely(cast, back_in)));
                likely.len() - 1
            });
            let kept = world.kept(cast.at_min - known_min);
            let here = &mut self.spots[cast.spot].here[w];
            weigh(&mut weights[w], here, &self.home, kept, &likely[known].1);
            total += sum(&weights[w]);
        }
        // A record that no shape can have produced leaves the beliefs unchanged.
        if total > 0.0 {
            weights.iter_mut().flatten().for_each(|w| *w /= total);
            self.weights = weights;
        }
        let spot = &mut self.spots[cast.spot];
        spot.known_min = known_min.max(cast.at_min + cast.wait.minutes());
    }

    /// How likely the cast is among fish that come back after some minutes, by shape, and where there are none.
    pub(super) fn likely(&self, cast: &SpotCast, back_in: f64) -> (Vec<f32>, f32) {
        let minutes = cast.wait.minutes() - back_in;
        let wait = Wait::new(minutes.max(0.0), cast.wait.is_bite()).unwrap_or(cast.wait);
        let likelihood = Likelihood::new(&self.shapes, wait);
        let without = likelihood.of(0.0, 0.0) as f32;
        if minutes <= 0.0 {
            return (vec![without; self.kinds.len()], without);
        }
        let (before, after) = likelihood.rows(&self.shapes);
        let rows = (self.of_kinds(before), self.of_kinds(after));
        (likelihood.among(&rows.0, &rows.1, &self.over_home), without)
    }

    /// Of a row with a figure for every shape, those of the shapes that are weighed.
    fn of_kinds(&self, row: &[f32]) -> Vec<f32> {
        self.kinds.iter().map(|&k| row[k]).collect()
    }

    fn columns(&self) -> &Columns {
        self.columns.get_or_init(|| Columns::new(&self.shapes, &self.kinds))
    }

    /// Share of casts with a bite by a point in time, by shape.
    pub(super) fn row(&self, point: usize) -> &[f32] {
        let n = self.kinds.len();
        &self.columns().bitten[point.min(POINTS - 1) * n..][..n]
    }

    /// Mean of the smaller of wait and time at a point in time, by shape.
    pub(super) fn waits_at(&self, point: usize) -> &[f32] {
        let n = self.kinds.len();
        &self.columns().waiting[point.min(POINTS - 1) * n..][..n]
    }

    /// How much better the record is explained by spots that differ, some holding fish and some not for a while, than by the
    /// better of the explanations without: that every cast draws anew whether it meets fish, or that fish are everywhere.
    /// Bayes factors.
    pub fn differ(&self) -> f64 {
        let (mut differ, mut anew, mut everywhere) = (0.0, 0.0, 0.0);
        for (world, weights) in self.worlds.iter().zip(&self.weights) {
            for (weight, home) in weights.iter().zip(&self.home) {
                let weight = f64::from(*weight);
                match (f64::from(*home) > EVERYWHERE, world.lasting_min > 0.0) {
                    (true, _) => everywhere += weight,
                    (false, true) => differ += weight,
                    (false, false) => anew += weight,
                }
            }
        }
        let [differ, anew, everywhere] = [(differ, 0), (anew, 1), (everywhere, 2)]
            .map(|(sum, i)| sum / self.before[i].max(f64::MIN_POSITIVE));
        differ / anew.max(everywhere).max(f64::MIN_POSITIVE)
    }

    /// Whether the record supports that spots differ, so that they tell how long to leave a cast.
    pub fn tell(&self) -> bool {
        self.differ() >= DIFFER_LEAST
    }

    /// A spot of the record, or the one that was never fished.
    pub(super) fn spot(&self, spot: Option<usize>) -> Option<&Spot> {
        spot.map_or_else(|| self.spots.last(), |spot| self.spots.get(spot))
    }
}
