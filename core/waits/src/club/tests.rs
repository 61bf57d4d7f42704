use super::super::likelihood::Likelihood;
use super::super::{Record, Settings, WaitPosterior};
use super::*;
use proptest::prelude::*;

/// Both kinds of days that weights may be fitted to.
const BOTH: [FittedTo; 2] = [FittedTo::ThisWater, FittedTo::AllWaters];

fn day(of: impl Fn(usize) -> (f64, bool), casts: usize) -> Vec<Wait> {
    (0..casts).map(of).map(|(minutes, bite)| Wait::new(minutes, bite).unwrap()).collect()
}

/// Bites between half a minute and five, of every second cast.
fn early() -> Vec<Wait> {
    day(|i| if i % 2 == 0 { (0.7 + 0.35 * (i as f64), true) } else { (15.0, false) }, 12)
}

#[test]
fn the_kinds_are_few_named_once_and_weigh_one_together() {
    let shapes = Shapes::usual();
    let (names, usual) = (shapes.kind_names(), shapes.kind_weights());
    assert_eq!(names.len(), usual.len());
    assert!((60..=130).contains(&names.len()), "{} {names:?}", names.len());
    assert!(names.iter().collect::<std::collections::BTreeSet<_>>().len() == names.len());
    assert!((usual.iter().sum::<f64>() - 1.0).abs() < 1e-12);
    assert!(usual.iter().all(|w| *w > 0.0));
    assert_eq!(
        (names[0].as_str(), &*names[names.len() - 1]),
        ("constant 0-2.5 70-100", "two 12- 28- 70-100")
    );
}

/// The list is part of the form of a file: a change here needs a new version.
#[test]
fn the_list_of_kinds_is_that_of_its_version() {
    let shapes = Shapes::usual();
    let names = shapes.kind_names().join("\n");
    let sum = names
        .bytes()
        .fold(0xCBF2_9CE4_8422_2325_u64, |h, b| (h ^ u64::from(b)).wrapping_mul(0x0100_0000_01B3));
    assert_eq!((CLUB_SHAPES, shapes.kind_names().len(), sum), (1, 123, 1_268_154_154_390_631_326));
}

/// As it is defined: the sum over the shapes of a kind of prior times likelihood, over that of all.
#[test]
fn a_day_by_kind_is_the_mean_over_the_shapes_of_each() {
    let (shapes, waits) = (Shapes::usual(), early());
    let sum: f64 = shapes.prior.iter().sum();
    let mut by_kind = vec![[0.0, 0.0]; shapes.kind_names().len()];
    for shape in 0..shapes.count() {
        let likely: f64 = waits
            .iter()
            .map(|&wait| {
                let likelihood = Likelihood::new(&shapes, wait);
                let (before, after) = likelihood.rows(&shapes);
                likelihood.of(before[shape], after[shape])
            })
            .product();
        let [l, p] = &mut by_kind[shapes.kinds().of[shape]];
        *l += likely * shapes.prior[shape] / sum;
        *p += shapes.prior[shape] / sum;
    }
    let all: f64 = by_kind.iter().map(|[l, _]| l).sum();
    for ([l, p], found) in by_kind.iter().zip(shapes.day_by_kind(&waits)) {
        let wanted = (l / p / all).ln().max(LEAST_LN);
        assert!((found - wanted).abs() < 1e-9, "{found} {wanted}");
    }
    // So the usual prior as a whole has a factor of one.
    let whole: f64 =
        shapes.day_by_kind(&waits).iter().zip(shapes.kind_weights()).map(|(ln, w)| w * ln.exp()).sum();
    assert!((whole - 1.0).abs() < 1e-9);
}

#[test]
fn the_usual_weights_change_nothing() {
    let shapes = Shapes::usual();
    for fitted in BOTH {
        let same = shapes.of_club(shapes.kind_weights(), fitted).unwrap();
        for (a, b) in shapes.prior.iter().zip(&same.prior) {
            assert!((a - b).abs() < 1e-12);
        }
    }
}

/// By hand: a club that gives all weight to one kind. Of the prior of every other kind only its own share stays.
#[test]
fn a_club_that_knows_the_water_leaves_three_tenths_of_the_prior_and_another_seven() {
    let shapes = Shapes::usual();
    let kind = 40;
    let mut weights = vec![0.0; shapes.kind_names().len()];
    weights[kind] = 1.0;
    for (fitted, own) in [(FittedTo::ThisWater, 0.3), (FittedTo::AllWaters, 0.7)] {
        let club = shapes.of_club(&weights, fitted).unwrap();
        let sum: f64 = club.prior.iter().sum();
        let mut by_kind = vec![0.0; weights.len()];
        for (of, prior) in shapes.kinds().of.iter().zip(&club.prior) {
            by_kind[*of] += prior / sum;
        }
        for (i, (found, usual)) in by_kind.iter().zip(shapes.kind_weights()).enumerate() {
            let wanted = own * usual + if i == kind { 1.0 - own } else { 0.0 };
            assert!((found - wanted).abs() < 1e-12, "{fitted:?} {i}: {found} {wanted}");
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, ..ProptestConfig::default() })]
    /// The law of a mixture: whatever the club and whatever comes, its start makes a day at least the own share times as
    /// likely as the usual start does, so that no club can cost more evidence than that.
    #[test]
    fn no_club_makes_a_day_less_likely_than_its_own_share_allows(
        raw in prop::collection::vec(prop_oneof![3 => Just(0.0), 1 => 0.0..1.0_f64], 123),
        casts in prop::collection::vec((0.5..60.0_f64, any::<bool>()), 0..25),
        knows_the_water in any::<bool>(),
    ) {
        let shapes = Shapes::usual();
        let fitted = if knows_the_water { FittedTo::ThisWater } else { FittedTo::AllWaters };
        let sum: f64 = raw.iter().sum();
        prop_assume!(sum > 0.0);
        let weights: Vec<f64> = raw.iter().map(|w| w / sum).collect();
        let club = shapes.of_club(&weights, fitted).unwrap();
        let waits = day(|i| casts[i], casts.len());
        let prior = |shapes: &Shapes| {
            let sum: f64 = shapes.prior.iter().sum();
            shapes.prior.iter().map(|p| p / sum).collect::<Vec<f64>>()
        };
        let likely = likelihoods(&shapes, &EarlierDay { waits: &waits, weight: 1.0 }, &prior(&shapes));
        let times: f64 = likely.iter().zip(prior(&club)).map(|(likely, p)| likely * p).sum();
        prop_assert!(times >= fitted.own_share() - 1e-9, "{times}");
    }
}

#[test]
fn a_club_of_early_bites_shortens_the_first_cast_and_the_casts_decide() {
    let shapes = Shapes::usual();
    let ln = shapes.day_by_kind(&early());
    let top = ln.iter().copied().fold(f64::MIN, f64::max);
    let best: Vec<f64> = ln.iter().map(|l| if *l > top - 1.0 { 1.0 } else { 0.0 }).collect();
    let count: f64 = best.iter().sum();
    let weights: Vec<f64> = best.iter().map(|b| b / count).collect();
    let plan = |today: &[Wait], shapes: &Arc<Shapes>| {
        let record = Record::of_today(today);
        WaitPosterior::with_shapes(&record, &Settings::default(), Arc::clone(shapes)).unwrap()
    };
    let [here, all] = BOTH.map(|fitted| shapes.of_club(&weights, fitted).unwrap());
    let first = [&here, &all, &shapes].map(|shapes| plan(&[], shapes).next_leave());
    assert!(first[0] < 0.5 * first[2], "{first:?}");
    // A club that doesn't know the water moves the first cast less.
    assert!(first[0] < first[1] && first[1] <= first[2], "{first:?}");
    // On a day with its bites near twenty minutes the club is soon forgotten.
    let late = day(|i| (19.0 + 0.2 * (i as f64), true), 10);
    let then = [&here, &all, &shapes].map(|shapes| plan(&late, shapes).next_leave());
    assert!(then.iter().all(|leave| (leave - then[2]).abs() <= 1.0), "{then:?}");
}

#[test]
fn weights_that_are_none_are_refused() {
    let shapes = Shapes::usual();
    let usual = shapes.kind_weights().to_vec();
    let with = |i: usize, w: f64| {
        let mut weights = usual.clone();
        weights[i] = w;
        shapes.of_club(&weights, FittedTo::ThisWater).map(|_| ())
    };
    let kinds = usual.len();
    assert_eq!(shapes.check_club(&usual[1..]), Err(ClubError::Count { found: kinds - 1, kinds }));
    for wrong in [f64::NAN, f64::INFINITY, -0.01] {
        assert_eq!(with(3, wrong), Err(ClubError::NotAWeight));
    }
    assert!(matches!(with(0, 0.9), Err(ClubError::Sum(_))));
    assert_eq!(with(0, usual[0] + 1e-5), Ok(()));
}
