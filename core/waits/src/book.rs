//! What earlier days imply for today: days differ, and the book shows by how much.
//!
//! Every day has a true behaviour of its own, which varies about that of its water: the rate, or the odds of a bite, by a normal
//! effect on the log scale (a meta-analytic-predictive prior; Neuenschwander and others 2010). How much days vary is learned from
//! the book, over the few values of [`SCATTERS`]. In addition, any day may be of another kind altogether, drawn from the prior
//! without a book: an earlier one with one minus its weight, today with probability [`UNLIKE_TODAY`] (the robust mixture of
//! Schmidli and others 2014, Biometrics 70). So similar days help, and the influence of others fades as today's casts contradict
//! them.
//!
//! All shapes of one form that differ in how many bites they bring are a family; a day effect moves within it.

use super::day_effects::SCATTERS;
use super::likelihood::Likelihood;
use super::record::EarlierDay;
use super::shapes::Shapes;

/// Probability that today is of another kind than all earlier days. A guess, checked by simulation.
pub(crate) const UNLIKE_TODAY: f64 = 0.1;

/// The prior weights of today's shapes given the days of a book; they sum to 1.
pub(crate) fn after(shapes: &Shapes, days: &[EarlierDay]) -> Vec<f64> {
    let sum: f64 = shapes.prior.iter().sum();
    let prior: Vec<f64> = shapes.prior.iter().map(|p| p / sum).collect();
    let likely: Vec<(f64, Vec<f64>)> = days
        .iter()
        .filter(|day| day.weight > 0.0)
        .map(|day| (day.weight, likelihoods(shapes, day, &prior)))
        .collect();
    if likely.is_empty() {
        return prior;
    }
    let mut today = vec![0.0; prior.len()];
    let effects = shapes.day_effects();
    for (scatter, (_, believed)) in SCATTERS.iter().enumerate() {
        // The weight of each shape for the water, including the evidence for this scatter.
        let mut water: Vec<f64> = prior.iter().map(|p| believed * p).collect();
        for (weight, day) in &likely {
            for (w, l) in water.iter_mut().zip(effects.means(scatter, day)) {
                *w *= weight * l + 1.0 - weight;
            }
        }
        today.iter_mut().zip(effects.moved(scatter, water)).for_each(|(t, w)| *t += w);
    }
    let sum: f64 = today.iter().sum();
    today.iter().zip(&prior).map(|(t, p)| (1.0 - UNLIKE_TODAY) * t / sum + UNLIKE_TODAY * p).collect()
}

/// The likelihood of a day under each shape, relative to its expectation without a book.
pub(crate) fn likelihoods(shapes: &Shapes, day: &EarlierDay, prior: &[f64]) -> Vec<f64> {
    let mut likely = vec![1.0_f64; prior.len()];
    let mut doublings = vec![0_i32; prior.len()];
    // Sixteen factors of at least one in a million stay far from the smallest number.
    for waits in day.waits.chunks(16) {
        for &wait in waits {
            Likelihood::new(shapes, wait).weigh(shapes, &mut likely, &mut []);
        }
        for (l, doublings) in likely.iter_mut().zip(&mut doublings) {
            let (significand, exponent) = split(*l);
            *l = significand;
            *doublings += exponent;
        }
    }
    let top = doublings.iter().copied().max().unwrap_or(0);
    for (l, doublings) in likely.iter_mut().zip(doublings) {
        *l *= libm::exp2(f64::from(doublings - top));
    }
    let expected: f64 = likely.iter().zip(prior).map(|(l, p)| l * p).sum();
    for l in &mut likely {
        *l /= expected;
    }
    likely
}

/// A number above 0 as one from 1 to 2 and how often that is doubled (IEEE 754: a sign, 11 bits of exponent, 52 of the rest).
fn split(x: f64) -> (f64, i32) {
    let bits = x.to_bits();
    let exponent = (bits >> 52) as i32 - 1023;
    (f64::from_bits(bits & ((1 << 52) - 1) | (1023 << 52)), exponent)
}

#[cfg(test)]
mod tests {
    use super::super::Wait;
    use super::super::shapes::SHAPE_PRIORS;
    use super::*;

    fn steady(mean: f64, casts: usize, stop: f64) -> Vec<Wait> {
        (0..casts)
            .map(|i| -mean * libm::log1p(-(i as f64 + 0.5) / casts as f64))
            .map(|t| Wait::new(t.min(stop), t < stop).unwrap())
            .collect()
    }

    fn spread_of_ln_rate(shapes: &Shapes, weights: &[f64]) -> f64 {
        let of = |i: usize| shapes.families[0].keenness[i][0];
        let sum: f64 = weights[..shapes.constant].iter().sum();
        let mean = (0..shapes.constant).map(|i| weights[i] * of(i)).sum::<f64>() / sum;
        ((0..shapes.constant).map(|i| weights[i] * (of(i) - mean).powi(2)).sum::<f64>() / sum).sqrt()
    }

    /// As they are defined: the sum of the logs of how likely each wait is, in units of what was to be expected.
    #[test]
    fn likelihoods_are_the_products_over_the_waits() {
        let shapes = Shapes::new(&SHAPE_PRIORS);
        let sum: f64 = shapes.prior.iter().sum();
        let prior: Vec<f64> = shapes.prior.iter().map(|p| p / sum).collect();
        // Two hundred waits of a day that some shapes make all but impossible.
        for casts in [1, 15, 16, 17, 200] {
            let waits = steady(9.0, casts, 12.0);
            let mut ln = vec![0.0; prior.len()];
            for &wait in &waits {
                let likelihood = Likelihood::new(&shapes, wait);
                let (before, after) = likelihood.rows(&shapes);
                for (shape, ln) in ln.iter_mut().enumerate() {
                    *ln += libm::log(likelihood.of(before[shape], after[shape]));
                }
            }
            let top = ln.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            let expected: f64 = ln.iter().zip(&prior).map(|(l, p)| libm::exp(l - top) * p).sum();
            let found = likelihoods(&shapes, &EarlierDay { waits: &waits, weight: 1.0 }, &prior);
            for (found, ln) in found.iter().zip(&ln) {
                let wanted = libm::exp(ln - top) / expected;
                // The smallest numbers have fewer digits.
                assert!((found - wanted).abs() <= 1e-9 * wanted + 1e-300, "{casts}: {found} {wanted}");
            }
        }
    }

    #[test]
    fn numbers_are_split_into_doublings() {
        for (x, wanted) in
            [(1.0, (1.0, 0)), (0.75, (1.5, -1)), (12.0, (1.5, 3)), (1e-96, (1e-96 * 2.0_f64.powi(319), -319))]
        {
            assert_eq!(split(x), wanted);
        }
    }

    #[test]
    fn families_contain_every_shape_once() {
        let shapes = Shapes::new(&SHAPE_PRIORS);
        let mut next = 0;
        for family in &shapes.families {
            assert_eq!(family.first, next);
            next += family.keenness.len();
        }
        assert_eq!(next, shapes.count());
        assert_eq!(shapes.families[0].keenness.len(), shapes.constant);
    }

    #[test]
    fn without_a_book_the_prior_stays_as_it_is() {
        let shapes = Shapes::new(&SHAPE_PRIORS);
        let sum: f64 = shapes.prior.iter().sum();
        let nothing = [EarlierDay { waits: &steady(9.0, 8, 20.0), weight: 0.0 }];
        for (after, before) in after(&shapes, &nothing).iter().zip(&shapes.prior) {
            assert_eq!(*after, before / sum);
        }
    }

    #[test]
    fn similar_days_narrow_todays_rate_and_dissimilar_ones_do_not() {
        let shapes = Shapes::new(&SHAPE_PRIORS);
        let day = |waits| EarlierDay { waits, weight: 0.8 };
        let (slow, usual, quick) = (steady(30.0, 12, 40.0), steady(15.0, 12, 40.0), steady(7.5, 12, 40.0));
        let alike = after(&shapes, &[day(&usual), day(&usual), day(&usual), day(&usual), day(&usual)]);
        let unlike = after(&shapes, &[day(&slow), day(&quick), day(&slow), day(&quick), day(&usual)]);
        let (alike, unlike) = (spread_of_ln_rate(&shapes, &alike), spread_of_ln_rate(&shapes, &unlike));
        assert!(alike < 0.4 && unlike > 1.3 * alike, "{alike} {unlike}");
    }
}
