//! Exploring: leaving a cast for longer than the best time so far, for what it may show.
//!
//! What a cast shows changes how long later casts are left. One step ahead this can be computed: for each
//! time that the next cast may be left, and for each minute at which its bite may or may not have come, the
//! best rate that would then be expected (the knowledge gradient; Frazier, Powell and Dayanik 2008). The gain
//! over the fishing still to come is compared with the bites that the longer cast costs now. Since later
//! casts can explore too and one step sees too little, only a part of the gain is credited, which is the only
//! tuning parameter of the plan.

use super::plan::{DAY_MIN, LeavePlan, Reckoned};

/// How many future days exploring pays for at the beginning of a book, fewer the more days it contains, since
/// what several days have not shown is less likely to appear. A guess, set by simulation (docs/advice.md).
const DAYS_TO_COME: f64 = 32.0;
/// No cast is left longer than this for exploring, minutes.
const LONGEST_MIN: f64 = 60.0;
/// Shapes below this weight hardly matter for what exploring would show.
const LIGHTEST: f32 = 3e-5;
/// The most leave times among which one is chosen.
const STEPS: usize = 32;

/// A figure for each of these times.
type Row = [f32; STEPS];

impl LeavePlan {
    /// The index of the time for which to leave the next cast, at least `best`.
    pub(crate) fn look(&self, best: usize, reckoned: &Reckoned) -> usize {
        let (steps, mean) = (self.steps(best), &reckoned.rate);
        let (after_bite, waiting) = self.one_step_ahead(&steps, reckoned);
        let highest = |row: &Row| row[..steps.len()].iter().copied().fold(0.0, f32::max);
        let credit = self.settings.look_credit * self.minutes_ahead();
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
    fn one_step_ahead(&self, steps: &[usize], reckoned: &Reckoned) -> (Vec<Row>, Row) {
        let rows = self.rows(reckoned.own.as_deref());
        let mut after_bite = vec![[0.0; STEPS]; steps.len()];
        let mut waiting = [0.0; STEPS];
        for &(shape, weight) in reckoned.likely.iter().filter(|(_, weight)| *weight > LIGHTEST) {
            let (bitten, waits, rates) = (rows.bitten(shape), rows.waiting(shape), rows.rates(shape));
            let rates: Row = std::array::from_fn(|t| steps.get(t).map_or(0.0, |&i| rates[i]));
            let mut before = 0.0;
            for ((row, waited), &i) in after_bite.iter_mut().zip(&mut waiting).zip(steps) {
                let chance = weight * (bitten[i] - before);
                before = bitten[i];
                *waited += weight * waits[i];
                for (sum, rate) in row.iter_mut().zip(rates) {
                    *sum += chance * rate;
                }
            }
        }
        (after_bite, waiting)
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
            + DAYS_TO_COME * DAY_MIN * self.days.min(1.0 / self.days.max(1.0))
    }
}

#[cfg(test)]
mod tests {
    use super::super::plan::top;
    use super::super::shapes::POINTS;
    use super::*;
    use crate::{Record, Settings, Wait};

    /// Computed independently, shape by shape and outcome by outcome, by the definition: the best rate
    /// expected after the cast, less the best rate expected now.
    fn gain_by_definition(plan: &LeavePlan, steps: &[usize], until: usize) -> f64 {
        let likely = &plan.reckoned().likely;
        let best_after = |chance: &dyn Fn(&[f32]) -> f64| {
            let of = |t: usize| -> f64 {
                let part = |&(shape, weight): &(usize, f32)| {
                    let bitten = &plan.shapes.bitten[shape * POINTS..][..POINTS];
                    f64::from(weight) * chance(bitten) * f64::from(plan.rows(None).rates(shape)[t])
                };
                likely.iter().map(part).sum()
            };
            steps.iter().map(|&t| of(t)).fold(0.0, f64::max)
        };
        let mut expected = best_after(&|bitten| 1.0 - f64::from(bitten[until]));
        let mut before = 0;
        for &i in steps.iter().filter(|&&i| i <= until) {
            expected += best_after(&|bitten| f64::from(bitten[i]) - f64::from(bitten[before]));
            before = i;
        }
        expected - best_after(&|_| 1.0)
    }

    #[test]
    fn the_gain_agrees_with_its_definition_and_never_falls_with_the_time() {
        let list = [(6.0, false), (8.0, true), (15.0, true), (10.0, false)];
        let waits: Vec<Wait> = list.iter().map(|&(m, bite)| Wait::new(m, bite).unwrap()).collect();
        let plan = LeavePlan::new(&Record::of_today(&waits), &Settings::default()).unwrap();
        let mean = plan.reckoned().rate;
        let steps = plan.steps(top(&mean));
        let (after_bite, _) = plan.one_step_ahead(&steps, plan.reckoned());
        let highest = |row: &Row| f64::from(row[..steps.len()].iter().copied().fold(0.0, f32::max));
        let mut none: Row = std::array::from_fn(|t| steps.get(t).map_or(0.0, |&i| mean[i]));
        let now = highest(&none);
        let (mut told, mut last) = (0.0, -1e-6);
        for (bite, &i) in after_bite.iter().zip(&steps) {
            told += highest(bite);
            none.iter_mut().zip(bite).for_each(|(none, bite)| *none -= bite);
            let gain = told + highest(&none) - now;
            let wanted = gain_by_definition(&plan, &steps, i);
            assert!((gain - wanted).abs() < 2e-5, "{i}: {gain} {wanted}");
            assert!(gain >= last - 1e-6, "{i}: {gain} after {last}");
            last = gain;
        }
        assert!(last > 1e-4, "a look past the hour shows something: {last}");
    }

    #[test]
    fn without_credit_there_is_no_exploring() {
        let settings = Settings { look_credit: 0.0, ..Settings::default() };
        let plan = LeavePlan::new(&Record::of_today(&[]), &settings).unwrap();
        assert_eq!(plan.next_leave(), plan.shapes.times[top(&plan.reckoned().rate[..plan.horizon()])]);
    }
}
