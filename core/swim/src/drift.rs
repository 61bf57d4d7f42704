//! Drift of the fish: whether the bites move out or in, left or right over the day.
//!
//! An observation with its evidence, never a forecast: Kendall's rank correlation of range (or bearing) with
//! time over the bites, and a p of their order that may be read at any moment. Bites can only come where
//! casts went, so the correlation of all casts is given beside it: if the casts drifted too, the bites say
//! little about the fish. Consecutive bites on one spot are one observation, since they only show where the
//! angler stayed.

use super::cells::Swim;
use super::fished::known_by;
use super::input::CastAt;
use restwater_compare::Order;
use serde::{Deserialize, Serialize};

/// Above this many bites the normal approximation with ties replaces the exact distribution.
const EXACT_UP_TO: usize = 60;

/// How a p-value was found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum PMethod {
    /// Every order of the same values counted, ties and all.
    Exact,
    /// Normal approximation with tied values (Kendall, Rank Correlation Methods, 4th ed. 1970, ch. 4).
    Normal,
}

/// Kendall's rank correlation of values with their order in time.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct RankTrend {
    /// Number of observations (moments; values of the same moment are averaged).
    pub n: u32,
    /// tau-b: 1 rises all the way, -1 falls all the way.
    pub tau_b: f64,
    /// Two-sided p: how often random orders are at least as far from no trend.
    pub p: f64,
    /// How p was found.
    pub method: PMethod,
    /// Mean of the earlier half (without the middle one where n is odd).
    pub early: f64,
    /// Mean of the later half.
    pub late: f64,
}

/// The conclusion about one direction.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum DriftLean {
    /// Not enough evidence; the usual answer.
    CantTellYet,
    /// Bites moved, and so did the casts, the same way: it may be the angler who moved.
    WithTheCasts,
    /// Bites moved further out, or to the right.
    Up,
    /// Bites moved further in, or to the left.
    Down,
}

/// Drift in one direction with its evidence.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct DriftAlong {
    /// Over bites; `None` with fewer than three or with all in one place.
    pub bites: Option<RankTrend>,
    /// Over all casts.
    pub casts: Option<RankTrend>,
    /// Anytime-valid p for the hypothesis that the places of the bites are in random order.
    pub any_look_p: f64,
    /// The conclusion: a lean if the anytime-valid p is below 0.05.
    pub lean: DriftLean,
}

/// Drift of the bites up to a moment.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Drift {
    /// Range in metres: up is out.
    pub out: DriftAlong,
    /// Bearing in degrees: up is right.
    pub across: DriftAlong,
}

impl Swim {
    /// Drift of the bites up to a moment.
    pub fn drift(&self, at_ms: i64) -> Drift {
        let casts: Vec<&CastAt> = self.casts_until(at_ms).collect();
        let bitten: Vec<&CastAt> =
            casts.iter().copied().filter(|c| c.bites > 0 && known_by(c, at_ms)).collect();
        let along = |value: fn(&CastAt) -> f64| {
            let bites: Vec<(i64, f64)> = bitten.iter().map(|c| (c.bite_time(), value(c))).collect();
            let all: Vec<(i64, f64)> = casts.iter().map(|c| (c.start_ms, value(c))).collect();
            drift_along(&bites, &all)
        };
        Drift { out: along(|c| c.spot.range_m), across: along(|c| c.spot.bearing_deg) }
    }
}

/// The drift in one direction. Each bite and cast is a time in milliseconds and a place in that direction.
pub fn drift_along(bites: &[(i64, f64)], casts: &[(i64, f64)]) -> DriftAlong {
    judge(rank_trend(bites), rank_trend(casts), moves(bites))
}

/// The order of the places where bites came; one place several times in a row is one observation.
fn moves(bites: &[(i64, f64)]) -> Order {
    let mut places = by_moment(bites);
    places.dedup();
    Order::of(&places)
}

fn judge(bites: Option<RankTrend>, casts: Option<RankTrend>, moves: Order) -> DriftAlong {
    let (any_look_p, up) = (moves.p(), moves.rises());
    let with_the_casts = |c: RankTrend| c.p < 0.05 && (c.tau_b > 0.0) == up;
    let lean = if bites.is_none() || any_look_p >= 0.05 {
        DriftLean::CantTellYet
    } else if casts.is_some_and(with_the_casts) {
        DriftLean::WithTheCasts
    } else if up {
        DriftLean::Up
    } else {
        DriftLean::Down
    };
    DriftAlong { bites, casts, any_look_p, lean }
}

/// Rank correlation of values with time (milliseconds). Values of one moment are averaged. `None` with
/// fewer than three moments or with all values the same.
fn rank_trend(observations: &[(i64, f64)]) -> Option<RankTrend> {
    let values = by_moment(observations);
    let n = values.len();
    let groups = tie_groups(&values);
    if n < 3 || groups.len() < 2 {
        return None;
    }
    let mut s = 0i64;
    for (i, a) in values.iter().enumerate() {
        s += values[i + 1..].iter().map(|b| i64::from(b > a) - i64::from(b < a)).sum::<i64>();
    }
    let pairs = (n * (n - 1) / 2) as f64;
    let tied: f64 = groups.iter().map(|&g| (g * (g - 1) / 2) as f64).sum();
    let method = if n <= EXACT_UP_TO { PMethod::Exact } else { PMethod::Normal };
    let p = match method {
        PMethod::Exact => exact_p(s.unsigned_abs() as usize, &groups),
        PMethod::Normal => normal_p(s.unsigned_abs() as f64, n as f64, &groups),
    };
    let mean = |part: &[f64]| part.iter().sum::<f64>() / part.len() as f64;
    Some(RankTrend {
        n: n as u32,
        tau_b: s as f64 / (pairs * (pairs - tied)).sqrt(),
        p,
        method,
        early: mean(&values[..n / 2]),
        late: mean(&values[n - n / 2..]),
    })
}

/// Values in order of time, one for each moment.
fn by_moment(observations: &[(i64, f64)]) -> Vec<f64> {
    let mut sorted = observations.to_vec();
    restwater_sorting::by(&mut sorted, |a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    sorted
        .chunk_by(|a, b| a.0 == b.0)
        .map(|same| same.iter().map(|o| o.1).sum::<f64>() / same.len() as f64)
        .collect()
}

fn tie_groups(values: &[f64]) -> Vec<usize> {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    sorted.chunk_by(|a, b| a == b).map(<[f64]>::len).collect()
}

/// P(|S| >= s) over all orders of values tied in these groups.
///
/// Inversions of a random order of a multiset: each group is shuffled into what went before, and the
/// inversions of a random mix of a zeros and b ones have the Gaussian binomial distribution.
fn exact_p(s: usize, groups: &[usize]) -> f64 {
    let mut distribution = vec![1.0];
    let mut before = 0;
    for &group in groups {
        distribution = convolve(&distribution, &inversions(before, group));
        before += group;
    }
    // S = untied pairs - 2 inversions.
    let untied = distribution.len() - 1;
    let far = |inversions: usize| untied.abs_diff(2 * inversions) >= s;
    let p: f64 = distribution.iter().enumerate().filter(|(i, _)| far(*i)).map(|(_, p)| p).sum();
    p.min(1.0)
}

/// Distribution of inversions in a random order of `a` zeros and `b` ones: the last one drawn is a zero with
/// probability a / (a + b) and then comes after all b ones.
fn inversions(a: usize, b: usize) -> Vec<f64> {
    // rows[j]: distribution with i zeros and j ones, i growing.
    let mut rows: Vec<Vec<f64>> = (0..=b).map(|_| vec![1.0]).collect();
    for i in 1..=a {
        for j in 1..=b {
            let mut mixed = vec![0.0; i * j + 1];
            let all = (i + j) as f64;
            for (k, p) in rows[j].iter().enumerate() {
                mixed[k + j] += p * i as f64 / all;
            }
            for (k, p) in rows[j - 1].iter().enumerate() {
                mixed[k] += p * j as f64 / all;
            }
            rows[j] = mixed;
        }
    }
    rows.pop().unwrap_or_default()
}

fn convolve(a: &[f64], b: &[f64]) -> Vec<f64> {
    let mut out = vec![0.0; a.len() + b.len() - 1];
    for (i, x) in a.iter().enumerate() {
        for (j, y) in b.iter().enumerate() {
            out[i + j] += x * y;
        }
    }
    out
}

/// Continuity-corrected normal p for S with ties in the values only.
fn normal_p(s: f64, n: f64, groups: &[usize]) -> f64 {
    let term = |m: f64| m * (m - 1.0) * (2.0 * m + 5.0);
    let tied: f64 = groups.iter().map(|&g| term(g as f64)).sum();
    let sd = ((term(n) - tied) / 18.0).sqrt();
    libm::erfc((s - 1.0).max(0.0) / (sd * std::f64::consts::SQRT_2)).min(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn in_time(values: &[f64]) -> Vec<(i64, f64)> {
        (0i64..).zip(values.iter().copied()).collect()
    }

    #[test]
    fn exact_p_without_ties_agrees_with_scipy() {
        // scipy.stats.kendalltau(range(n), values, method="exact") (SciPy 1.x), run once by hand.
        let rising = rank_trend(&in_time(&[1.0, 2.0, 3.0, 4.0, 5.0])).unwrap();
        assert_eq!(rising.tau_b, 1.0);
        assert!((rising.p - 2.0 / 120.0).abs() < 1e-15);
        let mixed = rank_trend(&in_time(&[20.0, 25.0, 22.0, 31.0, 28.0, 40.0, 35.0])).unwrap();
        assert!((mixed.tau_b - 15.0 / 21.0).abs() < 1e-15);
        assert!((mixed.p - 0.030_158_730_158_730_16).abs() < 1e-12);
    }

    /// Every order of the values, counted one by one.
    fn counted_p(values: &[f64]) -> f64 {
        fn s_of(v: &[f64]) -> i64 {
            let mut s = 0;
            for i in 0..v.len() {
                for j in i + 1..v.len() {
                    s += i64::from(v[j] > v[i]) - i64::from(v[j] < v[i]);
                }
            }
            s
        }
        fn orders(v: &mut Vec<f64>, k: usize, out: &mut Vec<i64>) {
            if k == v.len() {
                out.push(s_of(v));
                return;
            }
            for i in k..v.len() {
                v.swap(k, i);
                orders(v, k + 1, out);
                v.swap(k, i);
            }
        }
        let mut all = Vec::new();
        orders(&mut values.to_vec(), 0, &mut all);
        let seen = s_of(values).abs();
        all.iter().filter(|s| s.abs() >= seen).count() as f64 / all.len() as f64
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(60))]
        #[test]
        fn exact_p_is_the_share_of_orders(values in proptest::collection::vec(1u8..5, 3..8)) {
            let values: Vec<f64> = values.into_iter().map(f64::from).collect();
            if let Some(trend) = rank_trend(&in_time(&values)) {
                prop_assert!((trend.p - counted_p(&values)).abs() < 1e-12);
            }
        }
    }

    #[test]
    fn the_normal_approximation_is_near_the_exact_one() {
        let values: Vec<f64> = (0..40).map(|i| f64::from((i * 17) % 40 / 2 + i / 4)).collect();
        let groups = tie_groups(&values);
        let exact = rank_trend(&in_time(&values)).unwrap();
        let s = (exact.tau_b
            * (780.0 * (780.0 - groups.iter().map(|&g| (g * (g - 1) / 2) as f64).sum::<f64>())).sqrt())
        .round()
        .abs();
        assert!((normal_p(s, 40.0, &groups) - exact.p).abs() < 0.01);
    }

    #[test]
    fn too_few_observations_give_no_trend() {
        assert!(rank_trend(&in_time(&[1.0, 2.0])).is_none());
        assert!(rank_trend(&in_time(&[2.0, 2.0, 2.0, 2.0])).is_none());
        assert!(rank_trend(&[(5, 1.0), (5, 2.0), (5, 3.0)]).is_none());
    }

    #[test]
    fn bites_that_moved_with_the_casts_are_reported_as_such() {
        let trend = |tau_b: f64, p: f64| {
            Some(RankTrend { n: 9, tau_b, p, method: PMethod::Exact, early: 0.0, late: 1.0 })
        };
        let up = Order::of(&[1.0, 2.0, 3.0, 4.0, 5.0, 6.0]);
        let down = Order::of(&[6.0, 5.0, 4.0, 3.0, 2.0, 1.0]);
        let lean = |casts, moves| judge(trend(0.8, 0.01), casts, moves).lean;
        assert_eq!(lean(trend(0.9, 0.001), up), DriftLean::WithTheCasts);
        assert_eq!(lean(trend(0.1, 0.6), up), DriftLean::Up);
        assert_eq!(lean(trend(0.9, 0.001), down), DriftLean::Down);
        assert_eq!(lean(None, Order::default()), DriftLean::CantTellYet);
        assert_eq!(judge(None, None, up).lean, DriftLean::CantTellYet);
    }

    /// Nine bites further and further out have a p of 0.001 at a single look, but five of them are on one
    /// spot and count once.
    #[test]
    fn bites_on_the_spot_where_the_angler_stayed_are_one_observation() {
        let stayed = [30.0, 30.0, 30.0, 34.0, 34.0, 34.0, 38.0, 38.0, 38.0];
        let all = drift_along(&in_time(&stayed), &[]);
        assert!(all.bites.unwrap().p < 0.005 && all.any_look_p > 0.2, "{all:?}");
        assert_eq!(all.lean, DriftLean::CantTellYet);
        let moved = drift_along(&in_time(&[30.0, 31.0, 33.0, 34.0, 36.0, 37.0]), &[]);
        assert_eq!(moved.lean, DriftLean::Up);
    }
}
