//! What earlier days imply for today: days differ, and the book shows by how much.
//!
//! Every day has a truth of its own, which varies about that of its water: the rate, or the odds of a bite,
//! by a normal effect on the log scale (a meta-analytic-predictive prior; Neuenschwander and others 2010).
//! How much days vary is learned from the book, over the few values of [`SCATTERS`]. In addition, any day may
//! be of another kind altogether, drawn from the prior without a book: an earlier one with one minus its
//! weight, today with probability [`UNLIKE_TODAY`] (the robust mixture of Schmidli and others 2014,
//! Biometrics 70). So similar days help, and the influence of others fades as today's casts contradict them.
//!
//! All shapes of one form that differ in how many bites they bring are a family; a day effect moves within it.

use super::day_effects::SCATTERS;
use super::likelihood::Likelihood;
use super::record::EarlierDay;
use super::shapes::Shapes;
use libm::{exp, log};

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
    for ((_, believed), steps) in SCATTERS.iter().zip(&shapes.day_effects().0) {
        // The weight of each shape for the water, including the evidence for this scatter.
        let mut water: Vec<f64> = prior.iter().map(|p| believed * p).collect();
        for (weight, day) in &likely {
            let from_water = steps.as_ref().map(|steps| along_rows(shapes, steps, day));
            let from_water = from_water.as_ref().unwrap_or(day);
            for (w, l) in water.iter_mut().zip(from_water) {
                *w *= weight * l + 1.0 - weight;
            }
        }
        match steps {
            None => today.iter_mut().zip(&water).for_each(|(t, w)| *t += w),
            Some(steps) => add_along_columns(shapes, steps, &water, &mut today),
        }
    }
    let sum: f64 = today.iter().sum();
    today.iter().zip(&prior).map(|(t, p)| (1.0 - UNLIKE_TODAY) * t / sum + UNLIKE_TODAY * p).collect()
}

/// The likelihood of a day under each shape, relative to its expectation without a book.
fn likelihoods(shapes: &Shapes, day: &EarlierDay, prior: &[f64]) -> Vec<f64> {
    let mut product = vec![1.0_f64; prior.len()];
    let mut ln = vec![0.0_f64; prior.len()];
    for (i, &wait) in day.waits.iter().enumerate() {
        let likelihood = Likelihood::new(shapes, wait);
        let (before, after) = likelihood.rows(shapes);
        for ((p, a), b) in product.iter_mut().zip(before).zip(after) {
            *p *= likelihood.of(*a, *b);
        }
        // Sixteen factors of at least one in a million stay far from the smallest number.
        if i % 16 == 15 || i + 1 == day.waits.len() {
            for (l, p) in ln.iter_mut().zip(&mut product) {
                *l += log(*p);
                *p = 1.0;
            }
        }
    }
    let top = ln.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let mut likely: Vec<f64> = ln.iter().map(|l| exp(l - top)).collect();
    let expected: f64 = likely.iter().zip(prior).map(|(l, p)| l * p).sum();
    for l in &mut likely {
        *l /= expected;
    }
    likely
}

/// For each shape, the mean of `values` over the shapes to which a day effect may take it.
fn along_rows(shapes: &Shapes, steps: &[Vec<f32>], values: &[f64]) -> Vec<f64> {
    let mut out = Vec::with_capacity(values.len());
    for (family, steps) in shapes.families.iter().zip(steps) {
        let n = family.keenness.len();
        let here = &values[family.first..][..n];
        out.extend(
            steps.chunks(n).map(|row| row.iter().zip(here).map(|(p, v)| f64::from(*p) * v).sum::<f64>()),
        );
    }
    out
}

/// Moves the weights of the water by the day effect and adds them to `today`.
fn add_along_columns(shapes: &Shapes, steps: &[Vec<f32>], water: &[f64], today: &mut [f64]) {
    for (family, steps) in shapes.families.iter().zip(steps) {
        let n = family.keenness.len();
        let (from, to) = (&water[family.first..][..n], &mut today[family.first..][..n]);
        for (row, w) in steps.chunks(n).zip(from) {
            to.iter_mut().zip(row).for_each(|(t, p)| *t += w * f64::from(*p));
        }
    }
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
