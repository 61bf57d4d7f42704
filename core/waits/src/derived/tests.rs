use super::super::shapes::POINTS;
use super::super::sums::{LIGHTEST, OfCurve, top};
use super::super::{Record, Settings, Wait};
use super::*;
use proptest::prelude::*;

/// The means shape by shape, as they are defined.
fn by_shape(plan: &WaitPosterior, derived: &Derived) -> [[f64; POINTS]; 3] {
    let rows = plan.rows(derived.own.as_deref());
    let best = top(&Sums::new(rows, plan.costs, &derived.likely).rate);
    let mut sums = [[0.0; POINTS]; 3];
    for &(shape, weight) in &derived.likely {
        let weight = f64::from(weight);
        let fresh = weight * f64::from(rows.rates(shape, plan.costs)[best]);
        for (i, (bitten, waiting)) in rows.bitten(shape).iter().zip(rows.waiting(shape)).enumerate() {
            sums[0][i] += weight * f64::from(*bitten);
            sums[1][i] += weight * f64::from(*waiting);
            sums[2][i] += fresh * (1.0 - f64::from(*bitten));
        }
    }
    sums
}

/// For a bite between each time and the one before: the rate of each leave time, times the chance of that bite; and the wait.
fn explored_by_shape(plan: &WaitPosterior, derived: &Derived, until: usize) -> (Vec<f64>, f64) {
    let rows = plan.rows(derived.own.as_deref());
    let (mut after, mut waited) = (vec![0.0; POINTS], 0.0);
    for &(shape, weight) in derived.likely.iter().filter(|(_, weight)| *weight > LIGHTEST) {
        let (weight, bitten) = (f64::from(weight), rows.bitten(shape));
        let chance = weight * f64::from(bitten[until] - bitten[until - 2]);
        after
            .iter_mut()
            .zip(rows.rates(shape, plan.costs))
            .for_each(|(sum, r)| *sum += chance * f64::from(r));
        waited += weight * f64::from(rows.waiting(shape)[until]);
    }
    (after, waited)
}

fn any_cast() -> impl Strategy<Value = (f64, bool, bool)> {
    (0.1..45.0_f64, any::<bool>(), any::<bool>())
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-5 * b.abs() + 1e-9
}

fn means_hold(plan: &WaitPosterior, derived: &Derived) {
    let [bitten, waiting, fresh] = by_shape(plan, derived);
    for i in 1..POINTS {
        let means = &derived.means;
        assert!(close(means.bitten[i - 1], bitten[i]), "{i}: {} {}", means.bitten[i - 1], bitten[i]);
        assert!(close(means.waiting[i - 1], waiting[i]), "{i}: {} {}", means.waiting[i - 1], waiting[i]);
        assert!(close(means.fresh[i - 1], fresh[i]), "{i}: {} {}", means.fresh[i - 1], fresh[i]);
    }
}

fn exploring_holds(plan: &WaitPosterior, derived: &Derived) {
    let sums = Sums::new(plan.rows(derived.own.as_deref()), plan.costs, &derived.likely);
    let waiting = sums.exploring_waiting(&plan.shapes.times);
    for until in [4, 16, 30, 60, 90] {
        let (wanted, waited) = explored_by_shape(plan, derived, until);
        assert!(close(waiting[until], waited), "{until}: {} {waited}", waiting[until]);
        for (t, wanted) in wanted.iter().enumerate().skip(1) {
            let of = |of: &OfCurve| {
                let bitten = sums.curve(of);
                f64::from(bitten[until] - bitten[until - 2]) * f64::from(of.rates[t])
            };
            let sum: f64 = sums.curves.iter().map(of).sum();
            assert!(close(sum, *wanted), "{until} {t}: {sum} {wanted}");
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    #[test]
    fn sums_by_curve_are_those_shape_by_shape(casts in prop::collection::vec(any_cast(), 0..40), turn in 0.5..6.0_f64) {
        let waits: Vec<Wait> = casts.iter().map(|&(m, bite, _)| Wait::new(m, bite).unwrap()).collect();
        let fed: Vec<bool> = casts.iter().map(|cast| cast.2).collect();
        let record = Record { fed: &fed, turn_round_min: turn, ..Record::of_today(&waits) };
        let plan = WaitPosterior::new(&record, &Settings::default()).unwrap();
        for side in [false, true] {
            means_hold(&plan, plan.derived_of(side));
            exploring_holds(&plan, plan.derived_of(side));
        }
        let plan = WaitPosterior::new(&Record { fed: &[], ..record }, &Settings::default()).unwrap();
        means_hold(&plan, plan.derived());
        exploring_holds(&plan, plan.derived());
    }
}
