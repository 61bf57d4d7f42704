//! The last cast worth making.

use super::{ForecastError, WaitSurvival, time, total_weight};

/// Latest start of a useful cast, in minutes before all-out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LastCast {
    /// Minutes before all-out by the mean law: start no later than this.
    pub before_all_out: f64,
    /// Lower end of the range over the single laws that contains 80 % of their weight.
    pub low: f64,
    /// Upper end of that range.
    pub high: f64,
    /// Chance of a bite in a full cast, by the mean law.
    pub full_cast: f64,
}

/// Latest start whose chance of a bite before all-out is at least half of a full cast's, a full cast
/// being left for `leave_min`: the smallest m with F(m) >= F(leave) / 2. `None` when even a full cast
/// has no chance of a bite.
pub fn last_useful_cast<L: WaitSurvival>(
    laws: &[(f64, L)],
    leave_min: f64,
) -> Result<Option<LastCast>, ForecastError> {
    let total = total_weight(laws)?;
    if time(leave_min)? <= 0.0 {
        return Err(ForecastError::NoCastTime);
    }
    let mean = |m: f64| laws.iter().map(|(w, law)| w / total * (1.0 - law.survival(m))).sum::<f64>();
    let full_cast = mean(leave_min);
    let Some(before_all_out) = half_way(mean, leave_min) else { return Ok(None) };
    let mut single: Vec<(f64, f64)> = laws
        .iter()
        .filter_map(|(w, law)| Some((half_way(|m| 1.0 - law.survival(m), leave_min)?, *w)))
        .collect();
    restwater_sorting::by(&mut single, |x, y| x.0.total_cmp(&y.0));
    let at = |p: f64| weighted_quantile(&single, p).unwrap_or(before_all_out);
    Ok(Some(LastCast { before_all_out, low: at(0.1), high: at(0.9), full_cast }))
}

/// The smallest m in 0..=leave with f(m) >= f(leave) / 2, by bisection to a millionth of a minute.
fn half_way(f: impl Fn(f64) -> f64, leave_min: f64) -> Option<f64> {
    let half = 0.5 * f(leave_min);
    if half.is_nan() || half <= 0.0 {
        return None;
    }
    let (mut low, mut high) = (0.0, leave_min);
    while high - low > 1e-6 {
        let middle = 0.5 * (low + high);
        if f(middle) >= half { high = middle } else { low = middle }
    }
    Some(high)
}

/// The value at which the running weight of sorted (value, weight) pairs reaches share `p`.
fn weighted_quantile(sorted: &[(f64, f64)], p: f64) -> Option<f64> {
    let target = p * sorted.iter().map(|v| v.1).sum::<f64>();
    let mut so_far = 0.0;
    for &(value, weight) in sorted {
        so_far += weight;
        if so_far >= target {
            return Some(value);
        }
    }
    sorted.last().map(|v| v.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn exponential(rate: f64) -> impl Fn(f64) -> f64 {
        move |t| libm::exp(-rate * t)
    }

    #[test]
    fn with_a_fixed_window_half_of_the_window_is_needed() {
        // Bites evenly between 13 and 15 min after the splash, else never: F reaches half at 14.
        let window = |t: f64| 1.0 - 0.6 * ((t - 13.0) / 2.0).clamp(0.0, 1.0);
        let last = last_useful_cast(&[(1.0, window)], 17.0).unwrap().unwrap();
        assert!((last.before_all_out - 14.0).abs() < 1e-5);
        assert!((last.full_cast - 0.6).abs() < 1e-12);
        assert_eq!((last.low, last.high), (last.before_all_out, last.before_all_out));
    }

    #[test]
    fn no_chance_at_all_has_no_last_cast() {
        assert_eq!(last_useful_cast(&[(1.0, |_: f64| 1.0)], 10.0), Ok(None));
    }

    #[test]
    fn bad_input_is_refused() {
        let mut none = vec![(1.0, exponential(0.1))];
        none.clear();
        assert_eq!(last_useful_cast(&none, 10.0), Err(ForecastError::NoLaw));
        assert!(last_useful_cast(&[(-1.0, exponential(0.1))], 10.0).is_err());
        assert_eq!(last_useful_cast(&[(1.0, exponential(0.1))], 0.0), Err(ForecastError::NoCastTime));
        assert!(last_useful_cast(&[(1.0, exponential(0.1))], f64::NAN).is_err());
    }

    proptest! {
        #[test]
        fn exponential_waits_in_closed_form(rate in 0.005f64..0.5, leave in 2.0f64..30.0) {
            let last = last_useful_cast(&[(2.0, exponential(rate))], leave).unwrap().unwrap();
            let closed = -(0.5 * (1.0 + (-rate * leave).exp())).ln() / rate;
            prop_assert!((last.before_all_out - closed).abs() < 1e-4);
        }

        #[test]
        fn the_range_is_within_a_cast(a in 0.005f64..0.5, b in 0.005f64..0.5, leave in 2.0f64..30.0) {
            let last = last_useful_cast(&[(1.0, exponential(a)), (1.0, exponential(b))], leave).unwrap().unwrap();
            prop_assert!(0.0 <= last.low && last.low <= last.high && last.high <= leave);
        }
    }
}
