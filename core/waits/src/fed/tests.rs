use super::super::advice::in_no_order;
use super::super::shapes::{SHAPE_PRIORS, ShapePriors};
use super::super::{CurveKind, EarlierDay, Record, Settings, WaitPosterior};
use super::*;
use proptest::prelude::*;

fn plan(day: &[(Wait, bool)], prior: FedPrior) -> WaitPosterior {
    let (waits, fed): (Vec<Wait>, Vec<bool>) = day.iter().copied().unzip();
    let settings = Settings { fed: prior, ..Settings::default() };
    WaitPosterior::new(&Record { fed: &fed, ..Record::of_today(&waits) }, &settings).unwrap()
}

fn as_it_is(day: &[(Wait, bool)]) -> WaitPosterior {
    let (waits, fed): (Vec<Wait>, Vec<bool>) = day.iter().copied().unzip();
    let settings = Settings { changing: 0.0, ..Settings::default() };
    WaitPosterior::new(&Record { fed: &fed, ..Record::of_today(&waits) }, &settings).unwrap()
}

fn wait(minutes: f64, bite: bool) -> Wait {
    Wait::new(minutes, bite).unwrap()
}

/// Casts that are wound in at 20 min, waits spread evenly over a constant rate in no order; every other one
/// in fed water. Bites come in the middle of the half minutes to which shapes are known.
fn steady(casts: usize, mean: f64, fed_times: f64) -> Vec<(Wait, bool)> {
    let order = in_no_order(0..casts / 2);
    let one = |i: usize| {
        let fed = i % 2 == 1;
        let mean = if fed { mean / fed_times } else { mean };
        let t = -mean * libm::log1p(-(order[i / 2] as f64 + 0.5) / (casts / 2) as f64);
        let t = 0.5 * libm::floor(2.0 * t) + 0.25;
        (wait(t.min(20.0), t < 20.0), fed)
    };
    (0..casts).map(one).collect()
}

#[test]
fn the_powers_are_powers_and_the_values_mirror_each_other() {
    for share in [0.0_f32, 1e-6, 0.01, 0.3, 0.77, 0.999, 1.0] {
        for (powered, eighths) in bitten_with_powers(share).into_iter().zip(EIGHTHS) {
            let exact = 1.0 - libm::pow(1.0 - f64::from(share), f64::from(eighths) / 8.0);
            assert!((f64::from(powered) - exact).abs() < 5e-7, "{share} {eighths}: {powered} {exact}");
        }
    }
    let ln = ln_times();
    for (j, ln_r) in ln.iter().enumerate() {
        assert!((ln_r + ln[FED_TIMES - 1 - j]).abs() < 1e-15);
    }
    assert_eq!(ln[NO_EFFECT], 0.0);
    assert!((exp(ln[6]) - 2.6).abs() < 1e-12);
}

/// For exponential waits the likelihood is a gamma density in the rate, so with a gamma prior the evidence
/// for each r is the ratio of the gamma functions' normalisers in closed form (conjugate prior; Gelman and
/// others, Bayesian Data Analysis, section 2.6).
#[test]
fn two_groups_of_exponential_waits_come_to_the_closed_form() {
    let (shape, rate) = (3.0, 40.0);
    let only_constant =
        ShapePriors { constant: 1.0, broad: 0.0, even: 0.0, two: 0.0, stray: 0.0, ..SHAPE_PRIORS };
    let mut shapes = Shapes::new(&only_constant);
    for (p, at) in shapes.prior.iter_mut().zip(shapes.families[0].keenness.clone()) {
        // The means lie at equal steps of their ln.
        let lambda = exp(-at[0]);
        *p = exp(shape * log(lambda) - rate * lambda);
    }
    shapes.prior[shapes.constant..].fill(0.0);
    let flat = FedPrior([0.1; FED_TIMES]);
    for day in [steady(24, 12.0, 1.0), steady(24, 12.0, 2.0), steady(10, 9.0, 0.5)] {
        let (waits, fed): (Vec<Wait>, Vec<bool>) = day.iter().copied().unzip();
        let record = Record { fed: &fed, ..Record::of_today(&waits) };
        let settings = Settings { fed: flat, changing: 0.0, ..Settings::default() };
        let mut priors = Shapes::new(&only_constant);
        priors.prior.clone_from(&shapes.prior);
        let found =
            WaitPosterior::with_shapes(&record, &settings, Arc::new(priors)).unwrap().fed_times().unwrap();
        let side = |side: bool| {
            let of = || day.iter().filter(|(_, fed)| *fed == side).map(|(wait, _)| wait);
            (of().filter(|w| w.is_bite()).count() as f64, of().map(|w| w.minutes()).sum::<f64>())
        };
        let ((n1, t1), (n0, t0)) = (side(true), side(false));
        let ln: Vec<f64> = (0..FED_TIMES)
            .map(|j| {
                let (fed, other) = (f64::from(EIGHTHS[j]) / 8.0, f64::from(EIGHTHS[FED_TIMES - 1 - j]) / 8.0);
                n1 * log(fed) + n0 * log(other) - (shape + n1 + n0) * log(rate + fed * t1 + other * t0)
            })
            .collect();
        let top = ln.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let sum: f64 = ln.iter().map(|l| exp(l - top)).sum();
        for ((r, p), l) in found.into_iter().zip(ln) {
            let exact = exp(l - top) / sum;
            assert!((p - exact).abs() < 0.004, "r {r}: {p} for {exact}");
        }
    }
}

#[test]
fn a_doubling_is_found_and_raises_the_chance_of_fed_casts_only() {
    let day = steady(60, 14.0, 2.0);
    let mut found = plan(&day, FED_PRIOR);
    let effect = found.fed_effect(0.8).unwrap().unwrap();
    assert!(effect.low > 1.0 && effect.times > 1.5 && effect.high < 3.2, "{effect:?}");
    let five = |fed| found.waiting_on_where(fed, 5.0).unwrap().bite_in_five;
    let truth = |mean: f64| 1.0 - exp(-5.0 / mean);
    assert!((five(true) - truth(7.0)).abs() < 0.06, "{} {}", five(true), truth(7.0));
    assert!((five(false) - truth(14.0)).abs() < 0.06, "{} {}", five(false), truth(14.0));
    assert_eq!(found.waiting_on(5.0), found.waiting_on_where(false, 5.0));
    let other = found.advice();
    found.next_is_fed(true);
    assert_eq!(found.waiting_on(5.0), found.waiting_on_where(true, 5.0));
    assert!(found.advice().best_rate_per_hour > 1.3 * other.best_rate_per_hour);
    let laws =
        |plan: &WaitPosterior| -> f64 { plan.laws(200).iter().map(|(w, l)| w * l.bitten_by(10.0)).sum() };
    let fed_by_ten = laws(&found);
    found.next_is_fed(false);
    assert!((fed_by_ten - (1.0 - exp(-10.0 / 7.0))).abs() < 0.08, "{fed_by_ten}");
    assert!((laws(&found) - (1.0 - exp(-10.0 / 14.0))).abs() < 0.08, "{}", laws(&found));
}

#[test]
fn the_interval_narrows_with_more_casts_and_contains_one_if_feed_does_nothing() {
    let width = |casts| {
        let effect = plan(&steady(casts, 12.0, 1.0), FED_PRIOR).fed_effect(0.95).unwrap().unwrap();
        assert!(effect.low < 1.0 && effect.high > 1.0 && (effect.times - 1.0).abs() < 0.1, "{effect:?}");
        effect.high / effect.low
    };
    assert!(width(8) > width(40) && width(40) > width(400));
}

/// The weights for r = 1 are those of a record that knows nothing about feed.
#[test]
fn for_r_of_one_each_shape_has_its_weight_without_feed() {
    let found = plan(&steady(40, 12.0, 1.0), FED_PRIOR);
    let row = &found.by_feed.weights.as_ref().unwrap()[NO_EFFECT];
    let [ours, plain] = [row, &found.weights].map(|weights| weights.iter().sum::<f64>());
    for (a, b) in row.iter().zip(&found.weights) {
        assert!((a / ours - b / plain).abs() < 1e-12);
    }
}

#[test]
fn each_cast_needs_a_group_and_prior_weights_must_be_shares() {
    let waits = [wait(3.0, true), wait(4.0, false)];
    let record = Record { fed: &[true], ..Record::of_today(&waits) };
    let refused = WaitPosterior::new(&record, &Settings::default()).map(|_| ());
    assert_eq!(refused, Err(BiteError::GroupsDontMatch { waits: 2, groups: 1 }));
    for wrong in [[0.0; FED_TIMES], [-0.1; FED_TIMES], [f64::NAN; FED_TIMES]] {
        let settings = Settings { fed: FedPrior(wrong), ..Settings::default() };
        assert!(WaitPosterior::new(&Record::of_today(&waits), &settings).is_err());
    }
}

#[test]
fn a_book_narrows_the_shape_in_the_middle_between_the_sides() {
    let before: Vec<Wait> = steady(40, 10.0, 1.0).into_iter().map(|(wait, _)| wait).collect();
    let days = [EarlierDay { waits: &before, weight: 0.8 }];
    let day = steady(10, 10.0, 1.0);
    let (waits, fed): (Vec<Wait>, Vec<bool>) = day.iter().copied().unzip();
    let band = |earlier| {
        let record = Record { fed: &fed, earlier, ..Record::of_today(&waits) };
        let posterior = WaitPosterior::new(&record, &Settings::default()).unwrap();
        assert!(posterior.feed_counts());
        let point = posterior.curve(CurveKind::Survival, &[10.0], 0.9).unwrap()[0];
        point.high - point.low
    };
    assert!(band(&days) < 0.9 * band(&[]));
}

fn any_day() -> impl Strategy<Value = Vec<(Wait, bool)>> {
    proptest::collection::vec((1u32..400, any::<bool>(), any::<bool>()), 0..24)
        .prop_map(|v| v.iter().map(|&(m, bite, fed)| (wait(f64::from(m) * 0.1, bite), fed)).collect())
}

/// All answers of a posterior as text.
fn said(plan: &WaitPosterior) -> String {
    let on = [0.0, 7.0, 30.0].map(|so_far| plan.waiting_on(so_far).unwrap());
    let laws: Vec<(f64, f64)> = plan.laws(50).iter().map(|(w, law)| (*w, law.bitten_by(9.0))).collect();
    format!("{:?} {on:?} {laws:?}", plan.advice())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// If 1 is the only value of r, treating the sides separately changes nothing, to the bit.
    #[test]
    fn if_feed_is_known_to_do_nothing_the_answer_is_the_same_as_without_sides(day in any_day()) {
        let only_one = FedPrior([0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0]);
        let alike: Vec<(Wait, bool)> = day.iter().map(|&(wait, _)| (wait, false)).collect();
        let (apart, alike) = (plan(&day, only_one), plan(&alike, only_one));
        prop_assert_eq!(said(&apart), said(&alike));
        prop_assert!(!alike.feed_counts());
    }

    /// A record of one side alone gives the same answer as without feed, to the bit, and so does one with too
    /// few casts on the other side.
    #[test]
    fn a_record_of_one_side_gives_the_answer_without_feed(day in any_day(), others in 0usize..CASTS_A_SIDE, fed in any::<bool>()) {
        let one: Vec<(Wait, bool)> = day.iter().enumerate().map(|(i, &(wait, _))| (wait, (i < others) != fed)).collect();
        let alike: Vec<(Wait, bool)> = day.iter().map(|&(wait, _)| (wait, false)).collect();
        let mut found = plan(&one, FED_PRIOR);
        prop_assert!(!found.feed_counts() && found.fed_effect(0.9).unwrap().is_none());
        let alike = said(&plan(&alike, FED_PRIOR));
        prop_assert_eq!(&said(&found), &alike);
        found.next_is_fed(true);
        prop_assert_eq!(&said(&found), &alike);
    }

    /// Exchanging the names of the sides inverts r and exchanges the answers for the two.
    #[test]
    fn exchanging_the_sides_mirrors_their_ratio(day in any_day()) {
        let turned: Vec<(Wait, bool)> = day.iter().map(|&(wait, fed)| (wait, !fed)).collect();
        let (found, turned) = (plan(&day, FED_PRIOR), plan(&turned, FED_PRIOR));
        prop_assert_eq!(found.feed_counts(), turned.feed_counts());
        if let (Some(found), Some(mut turned)) = (found.fed_times(), turned.fed_times()) {
            turned.reverse();
            for ((r, a), (mirrored, b)) in found.into_iter().zip(turned) {
                prop_assert!((a - b).abs() < 1e-12 && (r * mirrored - 1.0).abs() < 1e-12);
            }
        }
        for so_far in [0.0, 11.0] {
            let a = found.waiting_on_where(true, so_far).unwrap();
            let b = turned.waiting_on_where(false, so_far).unwrap();
            prop_assert!((a.bite_in_five - b.bite_in_five).abs() < 1e-4);
            prop_assert!((a.rate_per_hour - b.rate_per_hour).abs() < 1e-3 * a.rate_per_hour);
        }
    }

    #[test]
    fn on_an_unchanging_day_the_order_of_casts_does_not_change_the_effect_of_feed(day in any_day()) {
        let turned: Vec<(Wait, bool)> = day.iter().rev().copied().collect();
        let times = |day: &[(Wait, bool)]| as_it_is(day).fed_times();
        let (found, turned) = (times(&day), times(&turned));
        prop_assert_eq!(found.is_some(), turned.is_some());
        for ((_, a), (_, b)) in found.into_iter().flatten().zip(turned.into_iter().flatten()) {
            prop_assert!((a - b).abs() < 1e-9);
        }
    }

    #[test]
    fn the_shapes_of_both_sides_are_distributions(day in any_day(), fed in any::<bool>()) {
        let found = plan(&day, FED_PRIOR);
        let derived = found.derived_of(fed);
        let rows = found.rows(derived.own.as_deref());
        prop_assert!((derived.likely.iter().map(|l| f64::from(l.1)).sum::<f64>() - 1.0).abs() < 1e-3);
        for &(shape, _) in derived.likely.iter().step_by(17) {
            let (bitten, waiting) = (rows.bitten(shape), rows.waiting(shape));
            prop_assert!(bitten.windows(2).all(|w| w[1] >= w[0] - 1e-6));
            prop_assert!(bitten[0].abs() < 1e-6 && bitten[POINTS - 1] <= 1.0);
            prop_assert!(waiting.iter().zip(&found.shapes.times).all(|(w, t)| f64::from(*w) <= t + 2e-3));
        }
    }
}
