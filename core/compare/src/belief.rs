//! The probability that a change matters, with a sceptical prior.
//!
//! Half of the prior weight is on no difference between the two sides; in the other half the logarithm of the
//! ratio of their rates is normal with mean zero (a spike and a slab: Mitchell and Beauchamp 1988; sceptical
//! priors: Spiegelhalter, Freedman and Parmar 1994). A flat prior would call nearly any run of luck a lean,
//! since it gives no weight to "no difference".
//!
//! Fish feed in spells, so side A need not be the cause of what happened while it was out. How far spells
//! alone could have pulled the two sides apart follows from when each was out ([`spell_variance`]): hardly at
//! all if they were alternated, a great deal if one had the morning. This scatter is allowed for before a
//! difference is believed.

use super::alternation::Side;
use super::blocks::SidedCast;
use super::chance::Chance;
use super::poisson_rates::Tally;
use super::tails::normal_below;
use libm::{exp, expm1, log as ln, log1p, sqrt};
use restwater_waits::Wait;

/// Standard deviations of ln r if the sides differ: half of that weight is on slight differences, half on
/// differences up to large ones, so that a large one is not explained away. An assumption, not a fact.
pub(crate) const LN_RATIO_SD: [f64; 2] = [0.4, 1.2];
/// Prior probability that they do not differ. An assumption, not a fact.
pub(crate) const NO_DIFFERENCE: f64 = 0.5;
/// Log-sd of how keen the fish are from spell to spell, and the minutes over which a spell fades.
/// Assumptions, not facts.
const SPELL_SD: f64 = 0.5;
const SPELL_MIN: f64 = 40.0;
/// Steps of each mean on either side, a tenth of a standard deviation each.
const STEPS: i32 = 45;

/// The posterior probabilities of two sides; the rest, up to one, is that they do not differ.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Belief {
    /// Probability that A is better.
    pub a: f64,
    /// Probability that B is better.
    pub b: f64,
}

impl Belief {
    /// The prior.
    const BEFORE: Self = Self { a: 0.5 * (1.0 - NO_DIFFERENCE), b: 0.5 * (1.0 - NO_DIFFERENCE) };

    /// Probability that they do not differ.
    pub fn same(self) -> f64 {
        (1.0 - self.a - self.b).max(0.0)
    }

    /// The side that is more probably the better one, with that probability.
    pub fn better(self) -> (Side, f64) {
        if self.a >= self.b { (Side::A, self.a) } else { (Side::B, self.b) }
    }

    /// Probability that A is better, if they differ at all.
    pub fn a_if_any(self) -> f64 {
        self.a / (self.a + self.b)
    }

    /// Combines two posteriors by taking the smaller claim for each side.
    pub(crate) fn more_cautious(self, other: Self) -> Self {
        Self { a: self.a.min(other.a), b: self.b.min(other.b) }
    }
}

/// The posterior after these bites in these times. `scatter` is the variance that ln r has for other reasons.
pub fn belief(a: Tally, b: Tally, scatter: f64) -> Belief {
    if !(a.time > 0.0 && b.time > 0.0) {
        return Belief::BEFORE;
    }
    believed(&|u| ln_likelihood(a, b, u), scatter, &LN_RATIO_SD)
}

/// The same at equal waits: by the partial likelihood of the waits, each stratum a list of side A and one of
/// side B (Cox 1972; ties by Efron 1977).
pub fn belief_of_waits(strata: &[(Vec<Wait>, Vec<Wait>)], scatter: f64) -> Belief {
    let sets: Vec<RiskSet> = strata.iter().flat_map(|(a, b)| risk_sets(a, b)).collect();
    if sets.is_empty() {
        return Belief::BEFORE;
    }
    believed(&|u| sets.iter().map(|set| set.ln_likelihood(u)).sum(), scatter, &LN_RATIO_SD)
}

/// The number of bites on A among all bites is binomial with odds r T_A : T_B. Returns the log-likelihood
/// without the terms that do not depend on u = ln r.
pub(crate) fn ln_likelihood(a: Tally, b: Tally, u: f64) -> f64 {
    a.bites as f64 * u - (a.bites + b.bites) as f64 * log1p(a.time / (a.time + b.time) * expm1(u))
}

/// One moment of the wait at which there were bites: how many on A and B, out of how many still out.
pub(crate) struct RiskSet {
    bites: [f64; 2],
    out: [f64; 2],
}

impl RiskSet {
    fn ln_likelihood(&self, u: f64) -> f64 {
        self.bites_on_a() * u - self.taken_of(exp(u)).map(ln).sum::<f64>()
    }

    /// Bites on A.
    pub(crate) fn bites_on_a(&self) -> f64 {
        self.bites[0]
    }

    /// The risk set's weight for each bite at the ratio `r`: all casts that were out, less the share of the
    /// tied bites counted before it.
    pub(crate) fn taken_of(&self, r: f64) -> impl Iterator<Item = f64> {
        let all = self.bites[0] + self.bites[1];
        let out = r * self.out[0] + self.out[1];
        let bitten = r * self.bites[0] + self.bites[1];
        (0..all as u32).map(move |i| out - f64::from(i) / all * bitten)
    }
}

/// The waiting times of bites at which both sides had a bait out, so that the bite is evidence.
pub(crate) fn risk_sets(a: &[Wait], b: &[Wait]) -> Vec<RiskSet> {
    let mut moments: Vec<f64> = a.iter().chain(b).filter(|w| w.is_bite()).map(|w| w.minutes()).collect();
    restwater_sorting::by(&mut moments, f64::total_cmp);
    moments.dedup();
    let count = |side: &[Wait], is: &dyn Fn(&Wait) -> bool| side.iter().filter(|w| is(w)).count() as f64;
    let set = |t: f64| RiskSet {
        bites: [a, b].map(|side| count(side, &|w| w.is_bite() && w.minutes() == t)),
        out: [a, b].map(|side| count(side, &|w| w.minutes() >= t)),
    };
    moments.into_iter().map(set).filter(|set| set.out.iter().all(|n| *n > 0.0)).collect()
}

fn believed(ln_likelihood: &dyn Fn(f64) -> f64, scatter: f64, slabs: &[f64]) -> Belief {
    let scatter = scatter.max(0.0);
    let widest = slabs.iter().copied().fold(0.0, f64::max);
    let reach = 0.1 * f64::from(STEPS) * sqrt(widest * widest + scatter);
    let top = (-STEPS..=STEPS)
        .map(|i| ln_likelihood(reach * f64::from(i) / f64::from(STEPS)))
        .fold(ln_likelihood(0.0), f64::max);
    let mean = |variance: f64, of: &dyn Fn(f64) -> f64| {
        let (mut sum, mut weights) = (0.0, 0.0);
        for i in -STEPS..=STEPS {
            let z = 0.1 * f64::from(i);
            let (weight, u) = (exp(-0.5 * z * z), z * sqrt(variance));
            weights += weight;
            sum += weight * exp(ln_likelihood(u) - top) * of(u);
        }
        sum / weights
    };
    let none = NO_DIFFERENCE * mean(scatter, &|_| 1.0);
    let (mut a, mut b) = (0.0, 0.0);
    for sd in slabs {
        let wide = sd * sd + scatter;
        // ln r given its apparent value u is normal with mean sd^2 u / wide and variance sd^2 scatter / wide.
        let above =
            |u: f64| if scatter > 0.0 { normal_below(u * sd / sqrt(wide * scatter)) } else { step(u) };
        let half = (1.0 - NO_DIFFERENCE) / slabs.len() as f64;
        a += half * mean(wide, &above);
        b += half * mean(wide, &|u| 1.0 - above(u));
    }
    let all = none + a + b;
    Belief { a: a / all, b: b / all }
}

fn step(u: f64) -> f64 {
    if u == 0.0 { 0.5 } else { f64::from(u8::from(u > 0.0)) }
}

/// Variance of ln r that spells alone would cause. How keen the fish are is modelled as a process whose
/// correlation fades with time, and each side is affected where its minutes were.
pub fn spell_variance(casts: &[SidedCast]) -> f64 {
    let time = |side| casts.iter().filter(|c| c.side == side).map(|c| c.wait.minutes()).sum::<f64>();
    let (in_a, in_b) = (time(Side::A), time(Side::B));
    if !(in_a > 0.0 && in_b > 0.0) {
        return 0.0;
    }
    let share = |c: &SidedCast| c.wait.minutes() * if c.side == Side::A { 1.0 / in_a } else { -1.0 / in_b };
    let mut parts: Vec<(f64, f64)> =
        casts.iter().map(|c| (c.at_min + 0.5 * c.wait.minutes(), share(c))).collect();
    restwater_sorting::by(&mut parts, |x, y| x.0.total_cmp(&y.0));
    // In chronological order, everything earlier fades by the same factor from one cast to the next.
    let (mut variance, mut before, mut last) = (0.0, 0.0, f64::NAN);
    for (at, share) in parts {
        before *= if last.is_nan() { 0.0 } else { exp((last - at) / SPELL_MIN) };
        variance += share * (share + 2.0 * before);
        (before, last) = (before + share, at);
    }
    (SPELL_SD * SPELL_SD * variance).max(0.0)
}

/// Draws truths from the posterior: the logarithm of the ratio of the rates, and its apparent value in these
/// casts.
pub(crate) struct Believed {
    /// The apparent ln r, the sd of the slab it came from (0: no difference), and the cumulative weight.
    steps: Vec<(f64, f64, f64)>,
    scatter: f64,
}

impl Believed {
    /// The posterior after these bites in these times (both above zero).
    pub(crate) fn new(a: Tally, b: Tally, scatter: f64) -> Self {
        let scatter = scatter.max(0.0);
        let part = |sd: f64, weight: f64| {
            (-STEPS..=STEPS).map(move |i| {
                let z = 0.1 * f64::from(i);
                let u = z * sqrt(sd * sd + scatter);
                (u, sd, ln(weight) - 0.5 * z * z + ln_likelihood(a, b, u))
            })
        };
        let slab = (1.0 - NO_DIFFERENCE) / LN_RATIO_SD.len() as f64;
        let mut steps: Vec<(f64, f64, f64)> =
            part(0.0, NO_DIFFERENCE).chain(LN_RATIO_SD.into_iter().flat_map(|sd| part(sd, slab))).collect();
        let top = steps.iter().map(|s| s.2).fold(f64::NEG_INFINITY, f64::max);
        let mut sum = 0.0;
        for step in &mut steps {
            sum += exp(step.2 - top);
            step.2 = sum;
        }
        Self { steps, scatter }
    }

    /// Draws a truth and its apparent value.
    pub(crate) fn draw(&self, chance: &mut Chance) -> (f64, f64) {
        let at = chance.uniform() * self.steps.last().map_or(0.0, |s| s.2);
        let place = self.steps.partition_point(|s| s.2 < at).min(self.steps.len() - 1);
        let (u, sd, _) = self.steps[place];
        let wide = sd * sd + self.scatter;
        if sd == 0.0 {
            return (0.0, u);
        }
        (sd * sd / wide * u + sd * sqrt(self.scatter / wide) * chance.normal(), u)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::any_look::any_look_p;
    use proptest::prelude::*;

    fn tally(bites: u64, time: f64) -> Tally {
        Tally { bites, time }
    }

    /// With half of the prior on either hypothesis, the odds of a difference are the e-value, which is a
    /// Bayes factor with a slab of sd 1.
    #[test]
    fn the_odds_of_a_difference_are_the_bayes_factor() {
        for (a, b) in [
            (tally(9, 50.0), tally(2, 60.0)),
            (tally(7, 90.0), tally(1, 40.0)),
            (tally(3, 9.0), tally(3, 8.0)),
        ] {
            let found = believed(&|u| ln_likelihood(a, b, u), 0.0, &[1.0]);
            let odds = (found.a + found.b) / found.same();
            let e_value = any_look_p(a, b).recip();
            assert!(e_value < 1.0 + 1e-9 || (odds / e_value - 1.0).abs() < 1e-9, "{odds} {e_value}");
        }
    }

    /// Both means computed independently over ln r and the scatter, on a fine grid.
    #[test]
    fn the_scatter_is_integrated_correctly() {
        let (a, b, scatter, sd) = (tally(9, 50.0), tally(2, 60.0), 0.2_f64, 0.8);
        let likelihood = |u: f64| exp(ln_likelihood(a, b, u));
        let (mut none, mut up, mut down) = (0.0, 0.0, 0.0);
        let grid = || (-120..120).map(|i| 0.04 * (f64::from(i) + 0.5)).map(|z| (z, exp(-0.5 * z * z)));
        let total: f64 = grid().map(|(_, w)| w).sum();
        for (z, weight) in grid() {
            none += weight / total * likelihood(z * scatter.sqrt());
            for (y, other) in grid() {
                let here = weight * other / (total * total) * likelihood(sd * y + z * scatter.sqrt());
                *(if y > 0.0 { &mut up } else { &mut down }) += here;
            }
        }
        let found = believed(&|u| ln_likelihood(a, b, u), scatter, &[sd]);
        let all = none + up + down;
        assert!(
            (found.a - up / all).abs() < 1e-3 && (found.b - down / all).abs() < 1e-3,
            "{found:?} {}",
            up / all
        );
    }

    /// Remission of leukaemia, in weeks (Freireich and others 1963; the example of Cox 1972): R's coxph gives
    /// a coefficient of 1.572 with Efron's ties.
    #[test]
    fn the_partial_likelihood_has_its_maximum_at_the_published_estimate() {
        let read = |list: &[i32]| -> Vec<Wait> {
            list.iter().map(|&t| Wait::new(f64::from(t.abs()), t > 0).unwrap()).collect()
        };
        let drug =
            read(&[6, 6, 6, -6, 7, -9, 10, -10, -11, 13, 16, -17, -19, -20, 22, 23, -25, -32, -32, -34, -35]);
        let placebo = read(&[1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23]);
        let sets = risk_sets(&placebo, &drug);
        let at = |u: f64| -> f64 { sets.iter().map(|set| set.ln_likelihood(u)).sum() };
        let best = (0..4_000).map(|i| 0.001 * f64::from(i)).max_by(|x, y| at(*x).total_cmp(&at(*y))).unwrap();
        assert!((best - 1.572).abs() < 0.0011, "{best}");
        assert!(belief_of_waits(&[(placebo, drug)], 0.0).a > 0.99);
        assert_eq!(belief_of_waits(&[], 0.0), Belief::BEFORE);
    }

    #[test]
    fn spells_matter_if_one_side_had_the_morning_and_hardly_if_alternated() {
        let day = |is_b: fn(usize) -> bool| -> Vec<SidedCast> {
            let cast = |i: usize| SidedCast {
                rod: 1,
                at_min: 15.0 * i as f64,
                wait: Wait::new(12.0, i.is_multiple_of(2)).unwrap(),
                side: if is_b(i) { Side::B } else { Side::A },
                stratum: 0,
            };
            (0..20).map(cast).collect()
        };
        let alternated = spell_variance(&day(|i| matches!(i % 4, 1 | 2)));
        let morning = spell_variance(&day(|i| i >= 10));
        assert!(
            alternated < 0.03 && morning > 0.15 && morning < 2.0 * SPELL_SD * SPELL_SD,
            "{alternated} {morning}"
        );
        let (a, b) = (tally(9, 120.0), tally(2, 120.0));
        assert!(belief(a, b, alternated).a > belief(a, b, morning).a + 0.1);
        assert_eq!(spell_variance(&[]), 0.0);
    }

    #[test]
    fn draws_follow_the_posterior() {
        let (a, b, scatter) = (tally(12, 60.0), tally(4, 60.0), 0.1);
        let (believed, found) = (Believed::new(a, b, scatter), belief(a, b, scatter));
        let mut chance = Chance::new(3, 0);
        let draws: Vec<f64> = (0..40_000).map(|_| believed.draw(&mut chance).0).collect();
        let share = |of: fn(&f64) -> bool| draws.iter().filter(|r| of(r)).count() as f64 / draws.len() as f64;
        assert!((share(|r| *r > 0.0) - found.a).abs() < 0.01 && (share(|r| *r < 0.0) - found.b).abs() < 0.01);
    }

    #[test]
    fn few_bites_are_weak_evidence_and_many_are_strong() {
        // Binomial likelihood and both slabs integrated by scipy 1.17 (integrate.quad), from the priors above alone.
        let of = |x, y| belief(tally(x, 60.0), tally(y, 60.0), 0.0);
        let near = |found: f64, by_scipy: f64| assert!((found - by_scipy).abs() < 2e-3, "{found} {by_scipy}");
        near(of(3, 1).a, 0.3469); // a flat prior says 0.83
        near(of(3, 1).b, 0.1399);
        near(of(30, 6).a, 0.9979);
        near(of(20, 20).same(), 0.6950);
        near(belief(tally(12, 60.0), tally(4, 60.0), 0.1).a, 0.5311);
        let nothing = belief(tally(0, 0.0), tally(3, 9.0), 0.0);
        assert_eq!((nothing.a, nothing.b), (0.25, 0.25));
    }

    proptest! {
        #[test]
        fn exchanging_the_sides_exchanges_the_probabilities_and_they_sum_to_one(x in 0u64..60, y in 0u64..60, t in 1.0f64..300.0, u in 1.0f64..300.0, s in 0.0f64..0.5) {
            let (one, two) = (belief(tally(x, t), tally(y, u), s), belief(tally(y, u), tally(x, t), s));
            prop_assert!((one.a - two.b).abs() < 1e-9 && (one.b - two.a).abs() < 1e-9);
            prop_assert!(one.a >= 0.0 && one.b >= 0.0 && one.a + one.b <= 1.0 + 1e-12);
        }
    }
}
