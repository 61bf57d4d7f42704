//! Exploring: leaving a cast for longer than the best time so far, for what it may show.
//!
//! What a cast shows changes how long later casts are left. One step ahead this can be computed: for each
//! time that the next cast may be left, and for each minute at which its bite may or may not have come, the
//! best rate that would then be expected (the knowledge gradient; Frazier, Powell and Dayanik 2008). The gain
//! over the fishing still to come is compared with the bites that the longer cast costs now. Since later
//! casts can explore too and one step sees too little, only a part of the gain is credited
//! ([`crate::Settings::exploring_credit`]).

use super::posterior::{DAY_MIN, WaitPosterior};
use super::sums::{Sums, top};

/// No cast is left longer than this for exploring, minutes.
const LONGEST_MIN: f64 = 60.0;
/// The most leave times among which one is chosen.
const STEPS: usize = 32;

/// A figure for each of these times.
type Row = [f32; STEPS];

impl WaitPosterior {
    /// The index of the time for which to leave the next cast, at least the best so far.
    pub(crate) fn explore(&self, sums: &Sums) -> usize {
        let mean = &sums.rate;
        let best = top(&mean[..self.horizon()]);
        let steps = self.steps(best);
        let (after_bite, waiting) = self.one_step_ahead(&steps, sums);
        let highest = |row: &Row| row[..steps.len()].iter().copied().fold(0.0, f32::max);
        let credit = self.settings.exploring_credit * self.minutes_ahead();
        // `after_none`: the expected rates if there was no bite yet. `told`: the expected best rate after a
        // bite up to here.
        let mut after_none: Row = std::array::from_fn(|t| steps.get(t).map_or(0.0, |&i| mean[i]));
        let mut told = 0.0;
        let mut pick = (0.0, best);
        for ((bite, &i), waited) in after_bite.iter().zip(&steps).zip(waiting) {
            told += highest(bite);
            for (none, bite) in after_none.iter_mut().zip(bite) {
                *none -= bite;
            }
            let gain = f64::from(told + highest(&after_none) - mean[best]).max(0.0);
            let cost = f64::from(mean[best] - mean[i]) * (f64::from(waited) + self.costs.turn_round_min);
            let net = credit * gain - cost;
            // A shorter cast than the best shows less and earns less.
            if i >= best && net > pick.0 {
                pick = (net, i);
            }
        }
        pick.1
    }

    /// For a bite between each time and the previous one: the rate then expected for every leave time, times
    /// the probability of that bite. Also, for each time, how long a cast left for it waits on average.
    fn one_step_ahead(&self, steps: &[usize], sums: &Sums) -> (Vec<Row>, Row) {
        let mut after_bite = vec![[0.0; STEPS]; steps.len()];
        for of in &sums.curves {
            let (bitten, mut before) = (sums.curve(of), 0.0);
            let rates: Row = std::array::from_fn(|t| steps.get(t).map_or(0.0, |&i| of.rates[i]));
            for (row, &i) in after_bite.iter_mut().zip(steps) {
                let chance = bitten[i] - before;
                before = bitten[i];
                // Most curves are flat except for a few minutes.
                if chance != 0.0 {
                    row.iter_mut().zip(&rates).for_each(|(sum, rate)| *sum += chance * rate);
                }
            }
        }
        let waiting = sums.exploring_waiting(&self.shapes.times);
        (after_bite, std::array::from_fn(|t| steps.get(t).map_or(0.0, |&i| waiting[i] as f32)))
    }

    /// Every minute up to twenty, then longer and longer steps to the longest time worth exploring, always
    /// including the best time.
    fn steps(&self, best: usize) -> Vec<usize> {
        let is_step = |t: f64| match t {
            t if t <= 20.0 => t.fract() == 0.0,
            t if t <= 30.0 => t % 2.0 == 0.0,
            t => t % 5.0 == 0.0,
        };
        let end = self.shapes.times.partition_point(|&t| t <= LONGEST_MIN);
        let mut steps: Vec<usize> = (1..end).filter(|&i| is_step(self.shapes.times[i])).collect();
        if let Err(place) = steps.binary_search(&best) {
            steps.insert(place, best);
        }
        steps.truncate(STEPS);
        steps
    }

    /// Minutes of future fishing for which it is useful to learn now: the rest of today and, if there is a
    /// book, some more days, since an angler who keeps one will be back.
    fn minutes_ahead(&self) -> f64 {
        (DAY_MIN - self.used_min()).max(0.0)
            + self.settings.days_to_come * DAY_MIN * self.days.min(1.0 / self.days.max(1.0))
    }
}

#[cfg(test)]
mod tests;
