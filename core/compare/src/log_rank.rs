//! The log-rank test of two groups of waits (Mantel 1966; Peto and Peto 1972).

use super::error::CompareError;
use super::tails::normal_two_sided;
use restwater_waits::Wait;

/// One distinct time of bites: casts still out and bites, on each side.
#[derive(Debug, Clone, Copy, PartialEq)]
struct BiteTime {
    out: [f64; 2],
    bites: [f64; 2],
}

/// One comparison of two groups of waits.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct LogRank {
    /// Bites seen on each side.
    pub observed: [f64; 2],
    /// Bites expected on each side if both shared one hazard, by the casts still out.
    pub expected: [f64; 2],
    /// Hypergeometric variance of observed less expected (Mantel).
    pub variance: f64,
}

impl LogRank {
    /// Observed less expected bites on side A; side B has the same with the sign turned.
    pub fn excess(&self) -> f64 {
        self.observed[0] - self.expected[0]
    }

    /// Excess over its standard deviation; `None` when the groups never were out together at a bite.
    pub fn z(&self) -> Option<f64> {
        (self.variance > 0.0).then(|| self.excess() / libm::sqrt(self.variance))
    }

    /// The square of z: chi-square on 1 degree of freedom.
    pub fn chi_square(&self) -> Option<f64> {
        self.z().map(|z| z * z)
    }

    /// Two-sided p of the chi-square.
    pub fn p(&self) -> Option<f64> {
        self.z().map(normal_two_sided)
    }
}

/// Compares two groups of waits. Bites come before other ends at equal times. Cost: one sort.
pub fn log_rank(a: &[Wait], b: &[Wait]) -> Result<LogRank, CompareError> {
    if a.is_empty() || b.is_empty() {
        return Err(CompareError::EmptyGroup);
    }
    Ok(sum_up(&[Side::new(a), Side::new(b)]))
}

/// The waits of one side as sorted keys: the bits of a non-negative float sort as the float does.
struct Side {
    bites: Vec<u64>,
    others: Vec<u64>,
}

impl Side {
    fn new(waits: &[Wait]) -> Self {
        let mut side = Self { bites: Vec::with_capacity(waits.len()), others: Vec::new() };
        for wait in waits {
            // Adding zero turns a negative zero, whose bits would sort last, into a plain one.
            let key = (wait.minutes() + 0.0).to_bits();
            if wait.is_bite() { side.bites.push(key) } else { side.others.push(key) }
        }
        side.bites.sort_unstable();
        side.others.sort_unstable();
        side
    }
}

/// The state of one side in the walk through time.
struct Walk<'a> {
    side: &'a Side,
    bite: usize,
    other: usize,
}

impl Walk<'_> {
    fn next_bite(&self) -> u64 {
        self.side.bites.get(self.bite).copied().unwrap_or(u64::MAX)
    }

    /// Casts out just before `key`, once all ends before it are passed.
    fn out_at(&mut self, key: u64) -> f64 {
        while self.side.others.get(self.other).is_some_and(|&k| k < key) {
            self.other += 1;
        }
        (self.side.bites.len() - self.bite + self.side.others.len() - self.other) as f64
    }

    fn take_bites(&mut self, key: u64) -> f64 {
        let from = self.bite;
        while self.next_bite() == key {
            self.bite += 1;
        }
        (self.bite - from) as f64
    }
}

fn sum_up(sides: &[Side; 2]) -> LogRank {
    let mut walks = [0, 1].map(|i| Walk { side: &sides[i], bite: 0, other: 0 });
    let mut total = LogRank::default();
    loop {
        let key = walks[0].next_bite().min(walks[1].next_bite());
        if key == u64::MAX {
            return total;
        }
        let out = [walks[0].out_at(key), walks[1].out_at(key)];
        let bites = [walks[0].take_bites(key), walks[1].take_bites(key)];
        total.take(&BiteTime { out, bites });
    }
}

impl LogRank {
    fn take(&mut self, at: &BiteTime) {
        let out = at.out[0] + at.out[1];
        let bites = at.bites[0] + at.bites[1];
        let share = at.out[0] / out;
        for side in 0..2 {
            self.observed[side] += at.bites[side];
            self.expected[side] += bites * at.out[side] / out;
        }
        if out > 1.0 {
            self.variance += share * (1.0 - share) * bites * (out - bites) / (out - 1.0);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn waits(list: &[(f64, bool)]) -> Vec<Wait> {
        list.iter().map(|&(t, e)| Wait::new(t, e).unwrap()).collect()
    }

    #[test]
    fn an_empty_side_is_refused() {
        let some = waits(&[(1.0, true)]);
        assert_eq!(log_rank(&some, &[]), Err(CompareError::EmptyGroup));
    }

    #[test]
    fn without_a_bite_while_both_are_out_there_is_no_evidence() {
        let a = waits(&[(5.0, true), (9.0, false)]);
        let b = waits(&[(1.0, false), (2.0, false)]);
        let test = log_rank(&a, &b).unwrap();
        assert_eq!((test.z(), test.p()), (None, None));
        assert_eq!(test.excess(), 0.0);
    }

    #[test]
    fn a_bite_at_the_time_another_was_wound_in_comes_first() {
        // At 4 min both are still out: expected 1/2 on each side.
        let test = log_rank(&waits(&[(4.0, true)]), &waits(&[(4.0, false)])).unwrap();
        assert_eq!(test.expected, [0.5, 0.5]);
    }

    #[test]
    fn a_negative_zero_is_a_zero() {
        let a = waits(&[(-0.0, true), (3.0, true)]);
        let b = waits(&[(0.0, true), (2.0, true)]);
        let plain = waits(&[(0.0, true), (3.0, true)]);
        assert_eq!(log_rank(&a, &b), log_rank(&plain, &b));
    }

    /// The sum directly from the definition, time by time.
    fn slow(a: &[Wait], b: &[Wait]) -> (f64, f64) {
        let mut times: Vec<f64> = a.iter().chain(b).filter(|w| w.is_bite()).map(|w| w.minutes()).collect();
        times.sort_by(f64::total_cmp);
        times.dedup();
        let out = |g: &[Wait], t: f64| g.iter().filter(|w| w.minutes() >= t).count() as f64;
        let bites = |g: &[Wait], t: f64| g.iter().filter(|w| w.is_bite() && w.minutes() == t).count() as f64;
        let (mut excess, mut variance) = (0.0, 0.0);
        for t in times {
            let (n1, n2) = (out(a, t), out(b, t));
            let (n, d) = (n1 + n2, bites(a, t) + bites(b, t));
            excess += bites(a, t) - d * n1 / n;
            if n > 1.0 {
                variance += d * n1 * n2 * (n - d) / (n * n * (n - 1.0));
            }
        }
        (excess, variance)
    }

    fn any_waits() -> impl Strategy<Value = Vec<Wait>> {
        // Quarter minutes, so that ties are common.
        prop::collection::vec((0u32..60, any::<bool>()), 1..40).prop_map(|list| {
            list.into_iter().map(|(q, e)| Wait::new(f64::from(q) / 4.0, e).unwrap()).collect()
        })
    }

    proptest! {
        #[test]
        fn one_sort_equals_the_definition(a in any_waits(), b in any_waits()) {
            let fast = log_rank(&a, &b).unwrap();
            let (excess, variance) = slow(&a, &b);
            prop_assert!((fast.excess() - excess).abs() < 1e-10);
            prop_assert!((fast.variance - variance).abs() < 1e-10);
            let seen = a.iter().filter(|w| w.is_bite()).count();
            prop_assert_eq!(fast.observed[0], seen as f64);
        }

        #[test]
        fn swapping_sides_changes_the_sign(a in any_waits(), b in any_waits()) {
            let (one, two) = (log_rank(&a, &b).unwrap(), log_rank(&b, &a).unwrap());
            prop_assert!((one.excess() + two.excess()).abs() < 1e-9);
            prop_assert!((one.variance - two.variance).abs() < 1e-9);
            prop_assert!(one.p().is_none_or(|p| (0.0..=1.0).contains(&p)));
        }
    }
}
