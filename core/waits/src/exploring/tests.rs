use super::*;
use crate::{EarlierDay, Record, Settings, Wait};

fn plan(list: &[(f64, bool)]) -> WaitPosterior {
    let waits: Vec<Wait> = list.iter().map(|&(m, bite)| Wait::new(m, bite).unwrap()).collect();
    WaitPosterior::new(&Record::of_today(&waits), &Settings::default()).unwrap()
}

fn sums(plan: &WaitPosterior) -> Sums<'_> {
    Sums::new(plan.rows(None), plan.costs, &plan.derived().likely)
}

/// Computed independently, shape by shape and outcome by outcome, by the definition: the best rate
/// expected after the cast, less the best rate expected now.
fn gain_by_definition(plan: &WaitPosterior, steps: &[usize], until: usize) -> f64 {
    let likely = &plan.derived().likely;
    let best_after = |chance: &dyn Fn(&[f32]) -> f64| {
        let of = |t: usize| -> f64 {
            let part = |&(shape, weight): &(usize, f32)| {
                let rows = plan.rows(None);
                f64::from(weight) * chance(rows.bitten(shape)) * f64::from(rows.rates(shape, plan.costs)[t])
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
    let plan = plan(&[(6.0, false), (8.0, true), (15.0, true), (10.0, false)]);
    let sums = sums(&plan);
    let mean = sums.rate;
    let steps = plan.steps(top(&mean));
    let (after_bite, _) = plan.one_step_ahead(&steps, &sums);
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
    assert!(last > 1e-4, "a cast past the hour shows something: {last}");
}

#[test]
fn without_credit_there_is_no_exploring() {
    let settings = Settings { exploring_credit: 0.0, ..Settings::default() };
    let plan = WaitPosterior::new(&Record::of_today(&[]), &settings).unwrap();
    let rate = sums(&plan).rate;
    assert_eq!(plan.next_leave(), plan.shapes.times[top(&rate[..plan.horizon()])]);
}

/// Six casts, wound in at ten minutes or bitten before: what comes later is worth more to an angler who will be back.
#[test]
fn in_a_match_a_cast_is_left_no_longer_for_the_sake_of_other_days() {
    let waits: Vec<Wait> = [(6.0, true), (10.0, false), (8.0, true), (10.0, false), (7.0, true), (9.0, true)]
        .map(|(minutes, bite)| Wait::new(minutes, bite).unwrap())
        .to_vec();
    let earlier = [EarlierDay { waits: &waits, weight: 1.0 }];
    let record = Record { earlier: &earlier, ..Record::of_today(&waits) };
    let [day, of_match] = [Settings::default(), Settings::of_a_match()]
        .map(|settings| WaitPosterior::new(&record, &settings).unwrap().next_leave());
    assert!(of_match < day, "{of_match} in a match, {day} otherwise");
}
