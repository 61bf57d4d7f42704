//! The forward filter: from one event of a spot to the next.

use super::super::shapes::POINTS;
use super::{Columns, DIFFER_LEAST, EVERYWHERE, Spot, SpotBeliefs, World};

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
pub(super) fn weigh(
    weights: &mut [f32],
    here: &mut [f32],
    home: &[f32],
    kept: f32,
    likely: &(Vec<f32>, f32),
) {
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

impl SpotBeliefs {
    /// Chance of fish at a spot in a world at a moment, by shape: it goes back to the chance for any spot.
    pub(super) fn here_at<'a>(
        &'a self,
        spot: &'a Spot,
        world: usize,
        kept: f32,
    ) -> impl Iterator<Item = f32> + 'a {
        let here = &spot.here[world];
        self.at.iter().zip(&self.home).map(move |(&at, home)| home + (here[at] - home) * kept)
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
    /// better of the explanations without: that it is drawn again for every cast whether it meets fish, or that fish are
    /// everywhere. Bayes factors.
    #[inline(never)]
    pub fn differ(&self) -> f64 {
        let (mut differ, mut again, mut everywhere) = (0.0, 0.0, 0.0);
        for (world, weights) in self.followed.worlds.iter().zip(&self.weights) {
            for (weight, home) in weights.iter().zip(&self.home) {
                let weight = f64::from(*weight);
                match (f64::from(*home) > EVERYWHERE, world.lasting_min > 0.0) {
                    (true, _) => everywhere += weight,
                    (false, true) => differ += weight,
                    (false, false) => again += weight,
                }
            }
        }
        let [differ, again, everywhere] = [(differ, 0), (again, 1), (everywhere, 2)]
            .map(|(sum, i)| sum / self.before[i].max(f64::MIN_POSITIVE));
        differ / again.max(everywhere).max(f64::MIN_POSITIVE)
    }

    /// Whether the record supports that spots differ, so that they tell how long to leave a cast.
    pub fn tell(&self) -> bool {
        self.differ() >= DIFFER_LEAST
    }

    /// A spot of the record, or the one that was never fished.
    pub(super) fn spot(&self, spot: Option<usize>) -> Option<&Spot> {
        spot.map_or(Some(&self.followed.untouched), |spot| self.followed.spots.get(spot))
    }
}
