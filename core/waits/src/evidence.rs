//! The record of waits in the form that a likelihood needs: sums for the bites, and ln times in groups of
//! equal weight for the casts without one.

use super::error::share;
use super::{BiteError, Wait};
use libm::log;

/// A bite logged at once counts as after six seconds, since no tap is more exact than that.
pub const SHORTEST_BITE_MIN: f64 = 0.1;

/// One wait with its weight.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Weighed {
    minutes: f64,
    bite: bool,
    weight: f64,
}

/// The waits of a record in their original order.
#[derive(Debug, Clone, Default)]
pub(crate) struct WeighedWaits(Vec<Weighed>);

impl WeighedWaits {
    /// Adds one session's waits, their likelihood to the power `weight` (power prior; Ibrahim and
    /// Chen 2000).
    pub fn add_session(&mut self, waits: &[Wait], weight: f64) -> Result<(), BiteError> {
        share("the weight of an earlier day", weight)?;
        if weight > 0.0 {
            self.0.extend(waits.iter().filter_map(|&wait| weighed(wait, weight)));
        }
        Ok(())
    }

    /// Adds one wait.
    pub fn add(&mut self, wait: Wait, weight: f64) {
        self.0.extend(weighed(wait, weight));
    }

    /// What a likelihood needs from them, sorted by time, so that their original order can't change a single
    /// bit of any answer.
    pub fn evidence(&self) -> Evidence {
        let key = |w: &Weighed| (w.weight, w.minutes, w.bite);
        let mut waits = self.0.clone();
        waits.sort_unstable_by(|a, b| {
            let ((aw, am, ab), (bw, bm, bb)) = (key(a), key(b));
            aw.total_cmp(&bw).then(am.total_cmp(&bm)).then(ab.cmp(&bb))
        });
        let mut evidence = Evidence::default();
        let (mut casts, mut sum_ln) = (0.0, 0.0);
        for Weighed { minutes, bite, weight } in waits {
            let y = log(minutes);
            casts += weight;
            sum_ln += weight * y;
            if bite {
                evidence.bites += weight;
                evidence.sum_ln += weight * y;
                evidence.sum_ln_squared += weight * y * y;
                evidence.sum += weight * minutes;
                evidence.bite_times.push((y, weight));
            } else {
                match evidence.censored.last_mut().filter(|(w, _)| *w == weight) {
                    Some((_, times)) => times.push(y),
                    None => evidence.censored.push((weight, vec![y])),
                }
            }
        }
        evidence.typical_ln = if evidence.bites > 0.0 {
            Some(evidence.sum_ln / evidence.bites)
        } else {
            (casts > 0.0).then(|| sum_ln / casts)
        };
        evidence
    }
}

/// The sums over a record that a likelihood needs.
#[derive(Debug, Clone, Default)]
pub(crate) struct Evidence {
    /// Weighted number of bites.
    pub bites: f64,
    /// Weighted sums over bites of ln t, (ln t)^2 and t.
    pub sum_ln: f64,
    pub sum_ln_squared: f64,
    pub sum: f64,
    /// (ln t, weight) of each bite.
    pub bite_times: Vec<(f64, f64)>,
    /// By weight: ln t of the casts without a bite.
    pub censored: Vec<(f64, Vec<f64>)>,
    /// Weighted mean of ln t over the bites, or over all casts where there are none.
    pub typical_ln: Option<f64>,
}

/// A wait as evidence; `None` for a cast wound in at once, which is no evidence.
fn weighed(wait: Wait, weight: f64) -> Option<Weighed> {
    let bite = wait.is_bite();
    let minutes = if bite { wait.minutes().max(SHORTEST_BITE_MIN) } else { wait.minutes() };
    (minutes > 0.0).then_some(Weighed { minutes, bite, weight })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_order_of_waits_does_not_change_a_single_bit() {
        let waits: Vec<Wait> =
            (0..40).map(|i| Wait::new(f64::from(i * 17 % 23) + 0.1, i % 3 == 0).unwrap()).collect();
        let (mut a, mut b) = (WeighedWaits::default(), WeighedWaits::default());
        a.add_session(&waits, 1.0).unwrap();
        for &wait in waits.iter().rev() {
            b.add(wait, 1.0);
        }
        let (a, b) = (a.evidence(), b.evidence());
        assert_eq!(
            (a.sum_ln, a.sum, &a.bite_times, &a.censored),
            (b.sum_ln, b.sum, &b.bite_times, &b.censored)
        );
    }

    #[test]
    fn a_bite_at_once_counts_and_a_wind_in_at_once_does_not() {
        let mut waits = WeighedWaits::default();
        waits.add(Wait::new(0.0, true).unwrap(), 1.0);
        waits.add(Wait::new(0.0, false).unwrap(), 1.0);
        let e = waits.evidence();
        assert_eq!((e.bites, e.sum, e.censored.len()), (1.0, SHORTEST_BITE_MIN, 0));
    }

    #[test]
    fn weights_outside_zero_to_one_are_refused() {
        assert!(WeighedWaits::default().add_session(&[], 1.01).is_err());
        assert!(WeighedWaits::default().add_session(&[], -0.1).is_err());
    }
}
