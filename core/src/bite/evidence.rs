//! The record of waits in the form in which a likelihood wants it: sums for the bites, ln times in
//! groups of equal weight for the casts without one.

use super::error::share;
use super::{BiteError, Wait};
use libm::log;

/// A bite logged at once is taken at six seconds, which no tap is more exact than.
pub const SHORTEST_BITE_MIN: f64 = 0.1;

/// Weighted sums over the bites, and the waits that ended without one.
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
    /// Weighted number of casts without a bite.
    pub without: f64,
    /// Weighted mean of ln t over all casts.
    sum_ln_all: f64,
}

impl Evidence {
    /// Adds one session's waits, their likelihood to the power `weight` (power prior; Ibrahim and
    /// Chen 2000).
    pub fn add_session(&mut self, waits: &[Wait], weight: f64) -> Result<(), BiteError> {
        share("the weight of an earlier day", weight)?;
        if weight > 0.0 {
            for &wait in waits {
                self.add(wait, weight);
            }
        }
        Ok(())
    }

    /// Adds one wait.
    pub fn add(&mut self, wait: Wait, weight: f64) {
        let t = wait.minutes();
        if wait.is_bite() {
            let t = t.max(SHORTEST_BITE_MIN);
            let y = log(t);
            self.bites += weight;
            self.sum_ln += weight * y;
            self.sum_ln_squared += weight * y * y;
            self.sum += weight * t;
            self.bite_times.push((y, weight));
            self.sum_ln_all += weight * y;
        } else if t > 0.0 {
            let y = log(t);
            self.without += weight;
            self.sum_ln_all += weight * y;
            match self.censored.iter_mut().find(|(w, _)| *w == weight) {
                Some((_, times)) => times.push(y),
                None => self.censored.push((weight, vec![y])),
            }
        }
    }

    /// Weighted mean of ln t over the bites, or over all casts where there are none.
    pub fn typical_ln(&self) -> Option<f64> {
        let casts = self.bites + self.without;
        if self.bites > 0.0 {
            Some(self.sum_ln / self.bites)
        } else {
            (casts > 0.0).then(|| self.sum_ln_all / casts)
        }
    }
}
