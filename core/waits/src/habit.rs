//! How long an angler leaves casts, and what that brings.

use super::costs::Costs;
use super::kaplan_meier::SurvivalCurve;
use super::leave_time::{Means, at};
use super::wait::Wait;

/// The leave times of an angler. A cast that gets its bite would have been left longer, so the minutes of the casts wound in
/// alone say too little: a habit of 20 min that mostly ends in bites after 15 shows few wind-ins, and those are the early ones.
#[derive(Debug, Clone, PartialEq)]
pub struct Habit {
    /// Minutes, with the share of casts that are left so long. The shares add up to 1.
    leaves: Vec<(f64, f64)>,
}

impl Habit {
    /// From casts with their minutes, each with whether the angler chose to end it; any other end, a bite above all, came first.
    /// The shares are those of the Kaplan-Meier estimate; what it leaves beyond the longest cast is put there (Efron 1967).
    /// `None` if no cast was ended by choice.
    pub fn of(casts: &[Wait]) -> Option<Self> {
        let curve = SurvivalCurve::new(casts).ok()?;
        let mut leaves = Vec::new();
        let mut left = 1.0;
        for step in curve.steps() {
            leaves.push((step.minutes, left - step.survival));
            left = step.survival;
        }
        if leaves.is_empty() {
            return None;
        }
        if left > 0.0 {
            leaves.push((curve.longest_min(), left));
        }
        Some(Self { leaves })
    }

    /// The minute by which half of the casts would have been wound in if none had had a bite.
    pub fn median_min(&self) -> f64 {
        let mut wound_in = 0.0;
        let by = self.leaves.iter().find(|(_, share)| {
            wound_in += share;
            wound_in >= 0.5
        });
        by.or(self.leaves.last()).map_or(0.0, |(minutes, _)| *minutes)
    }

    /// Bites per minute of an angler who leaves casts so: bites per cast over minutes per cast, each over all leave times
    /// (renewal-reward theorem).
    pub(crate) fn rate(&self, means: &Means, costs: &Costs) -> f64 {
        let (mut bites, mut minutes) = (0.0, 0.0);
        for (leave, share) in &self.leaves {
            let mean = |of: &[f64]| at(&means.times, of, *leave);
            let cycle =
                mean(&means.waiting) + costs.turn_round_min + costs.bite_extra_min * mean(&means.bitten);
            bites += share * mean(&means.rate) * cycle;
            minutes += share * cycle;
        }
        bites / minutes
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn left(minutes: f64) -> Wait {
        Wait::new(minutes, true).unwrap()
    }

    fn bitten(minutes: f64) -> Wait {
        Wait::new(minutes, false).unwrap()
    }

    /// By hand: of six casts one is wound in at 10; of the four still out at 12 one; two more at 20 and 22.
    #[test]
    fn casts_that_got_a_bite_would_have_been_left_longer() {
        let casts = [left(10.0), bitten(11.0), left(12.0), bitten(14.0), left(20.0), left(22.0)];
        let habit = Habit::of(&casts).unwrap();
        let shares = [(10.0, 1.0 / 6.0), (12.0, 5.0 / 24.0), (20.0, 5.0 / 16.0), (22.0, 5.0 / 16.0)];
        assert_eq!(habit.leaves.len(), shares.len());
        for ((minutes, share), (by_hand, of_all)) in habit.leaves.iter().zip(shares) {
            assert!((minutes - by_hand).abs() < 1e-12 && (share - of_all).abs() < 1e-12, "{habit:?}");
        }
        assert_eq!(habit.median_min(), 20.0, "the median of the wind-ins alone would be 16");
    }

    #[test]
    fn what_lies_beyond_the_longest_cast_is_put_there() {
        let habit = Habit::of(&[left(10.0), bitten(15.0)]).unwrap();
        assert_eq!(habit.leaves, [(10.0, 0.5), (15.0, 0.5)]);
        assert_eq!(Habit::of(&[bitten(15.0)]), None);
    }
}
