//! Bites to come as a negative binomial count: exactly so where bites come at a constant rate that is gamma-distributed and no
//! time is lost (any textbook of Bayesian statistics). The forecast of a match is simulated; here it is computed.

use statrs::distribution::NegativeBinomial;

/// The bites in `ahead` minutes to come, if the rate per minute is gamma-distributed with this shape and rate; `None` for
/// figures that are no gamma law.
pub fn bites_to_come(shape: f64, rate: f64, ahead: f64) -> Option<NegativeBinomial> {
    NegativeBinomial::new(shape, rate / (rate + ahead)).ok()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp)]
mod tests {
    use super::*;
    use restwater_match_day::forecast::{FishKind, Landing, Plan, TimeLeft, forecast};
    use statrs::distribution::{ContinuousCDF, Discrete, DiscreteCDF, Gamma};

    const SHAPE: f64 = 9.0;
    const RATE: f64 = 4.7 * 60.0;
    const AHEAD: f64 = 90.0;

    /// Laws of exponential waits at 400 evenly spaced quantiles of the gamma law of their rate.
    fn laws() -> Vec<(f64, impl Fn(f64) -> f64)> {
        let gamma = Gamma::new(SHAPE, RATE).unwrap();
        (0..400)
            .map(|i| {
                let rate = gamma.inverse_cdf((f64::from(i) + 0.5) / 400.0);
                (1.0, move |t: f64| libm::exp(-rate * t))
            })
            .collect()
    }

    #[test]
    fn the_forecast_of_exponential_waits_is_the_negative_binomial() {
        let plan = Plan {
            first: 15.0,
            leave: 15.0,
            turn_round: 0.0,
            turn_round_guessed: false,
            settle: 0.0,
            bite_extra: 0.0,
            reserve: 0.0,
        };
        let landing = Landing { landed: 8, not_landed: 2, kinds: vec![FishKind::alike(1.0)] };
        let left = TimeLeft { minutes: AHEAD, rods: vec![None] };
        let found = forecast(&laws(), &left, &plan, &landing, 3).unwrap();
        let futures = found.futures as f64;
        let count = bites_to_come(SHAPE, RATE, AHEAD).unwrap();
        let (mean, variance) = (SHAPE * AHEAD / RATE, SHAPE * AHEAD / RATE * (1.0 + AHEAD / RATE));
        let error = (variance / futures).sqrt();
        assert!((found.mean_bites - mean).abs() < 4.0 * error, "{} {mean}", found.mean_bites);
        for (k, chance) in found.bite_counts.iter().enumerate() {
            let wanted = count.pmf(k as u64);
            let limit = 4.5 * (wanted / futures).sqrt() + 1e-3;
            assert!((chance - wanted).abs() < limit, "{k}: {chance} {wanted}");
        }
        let any = 1.0 - count.pmf(0);
        assert!((found.any_bite - any).abs() < 4.0 * (any * (1.0 - any) / futures).sqrt());
        for (p, k) in [(0.1, found.bites.low), (0.5, found.bites.likely), (0.9, found.bites.high)] {
            assert!((count.inverse_cdf(p) as f64 - k).abs() <= 1.0, "{p}");
        }
    }
}
