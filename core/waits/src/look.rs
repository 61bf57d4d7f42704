//! Leaving a cast longer to see what comes later.
//!
//! A cast left long shows all that a short one would have shown; a short one never shows what comes
//! after it. So beyond the best leave time so far, waiting on buys knowledge: should a bite come, the
//! casts after it can be left for it. That is worth it where the bites so won over the fishing still
//! to come exceed the bites that the minutes cost now.

use super::plan::{DAY_MIN, LeavePlan};
use super::shapes::POINTS;

/// Share of the gain in sight that one look is credited with: a single bite seldom settles the matter,
/// and later casts could look as well. Found by simulation (docs/advice.md).
const CREDIT: f64 = 0.05;
/// Days to come that the first days of a book speak for, fewer the more it holds: what several days have not
/// shown, a look is less likely to. A guess, set by simulation (docs/advice.md).
const DAYS_TO_COME: f64 = 32.0;
/// No cast is left beyond this for the sake of looking, minutes.
const LONGEST_MIN: f64 = 60.0;

impl LeavePlan {
    /// The point in time to leave the next cast for, at least `best`.
    pub(crate) fn look(&self, best: usize, likely: &[(usize, f32)], mean: &[f32; POINTS]) -> usize {
        let times = &self.shapes.times;
        let end = times.partition_point(|&t| t <= LONGEST_MIN);
        if best + 1 >= end {
            return best;
        }
        let mut gain = [0.0_f64; POINTS];
        for &(shape, weight) in likely.iter().filter(|(_, w)| *w > 3e-5) {
            let rates = self.rates(shape);
            let bitten = &self.shapes.bitten[shape * POINTS..][..POINTS];
            let mut better = rates[best];
            for i in best + 1..end {
                better = better.max(rates[i]);
                gain[i] += f64::from(weight * (bitten[i] - bitten[best]) * (better - rates[best]));
            }
        }
        let ahead = self.minutes_ahead();
        let mut pick = (0.0, best);
        for i in best + 1..end {
            let cost = f64::from(mean[best] - mean[i]) * (times[i] + self.costs.turn_round_min);
            let net = CREDIT * ahead * gain[i] - cost;
            if net > pick.0 {
                pick = (net, i);
            }
        }
        pick.1
    }

    /// Minutes of fishing to come to which what is learned now is of use: the rest of today, and some
    /// days more where there is a book: who has kept one will be back.
    fn minutes_ahead(&self) -> f64 {
        (DAY_MIN - self.used_min()).max(0.0)
            + DAYS_TO_COME * DAY_MIN * self.days.min(1.0 / self.days.max(1.0))
    }
}
