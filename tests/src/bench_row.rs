//! Rows of the benches: one line each on standard output, which `./dev bench` collects into its table.
//!
//! `bench`, name, ours, peer, ratio, goal, outcome, separated by tabs; the outcome is `held`, `missed`, or
//! `noted` if a figure has no goal. `tests/bench/rows.py` and the desktop app's `Bench.kt` write the same
//! line.
#![allow(clippy::print_stdout)] // that is its purpose

use std::fmt::Display;
use std::time::{Duration, Instant};

/// A measured value for the table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    name: String,
    ours: String,
    peer: String,
    ratio: String,
}

impl Row {
    /// A value as text.
    pub fn new(name: impl Display, ours: impl Display) -> Self {
        Self { name: name.to_string(), ours: ours.to_string(), peer: "-".into(), ratio: "-".into() }
    }

    /// A time.
    pub fn time(name: impl Display, ours: Duration) -> Self {
        Self::new(name, shown(ours))
    }

    /// With a peer, or a bare limit, measured in the same run; the ratio is ours to theirs.
    #[must_use]
    pub fn beside(mut self, peer: &str, theirs: impl Display, ratio: f64) -> Self {
        self.peer = format!("{theirs} {peer}");
        self.ratio = format!("{ratio:.2}");
        self
    }

    /// A time with a peer's time.
    #[must_use]
    pub fn against(self, peer: &str, ours: Duration, theirs: Duration) -> Self {
        self.beside(peer, shown(theirs), ours.as_secs_f64() / theirs.as_secs_f64())
    }

    /// Prints it with its goal and whether that is met.
    pub fn judged(&self, goal: &str, held: bool) {
        println!("{}", self.line(goal, if held { "held" } else { "missed" }));
    }

    /// Prints it without a goal.
    pub fn noted(&self) {
        println!("{}", self.line("-", "noted"));
    }

    fn line(&self, goal: &str, outcome: &str) -> String {
        ["bench", &self.name, &self.ours, &self.peer, &self.ratio, goal, outcome].join("\t")
    }
}

/// A time in the unit that suits it.
pub fn shown(time: Duration) -> String {
    let s = time.as_secs_f64();
    match s {
        s if s < 1e-3 => format!("{:.2} us", s * 1e6),
        s if s < 1.0 => format!("{:.3} ms", s * 1e3),
        s => format!("{s:.2} s"),
    }
}

/// The time of one run.
pub fn timed<T>(work: impl FnOnce() -> T) -> (Duration, T) {
    let start = Instant::now();
    let result = std::hint::black_box(work());
    (start.elapsed(), result)
}

/// The middle one of several times.
pub fn median(times: &mut [Duration]) -> Duration {
    times.sort();
    times.get(times.len() / 2).copied().unwrap_or_default()
}

/// The power of the size with which a cost grows: the slope of the straight line through the logarithms, by
/// least squares.
pub fn exponent(costs: &[(f64, Duration)]) -> f64 {
    let logs: Vec<(f64, f64)> =
        costs.iter().map(|(size, cost)| (size.ln(), cost.as_secs_f64().ln())).collect();
    let n = logs.len() as f64;
    let (x, y) = logs.iter().fold((0.0, 0.0), |(x, y), (a, b)| (x + a / n, y + b / n));
    let rise: f64 = logs.iter().map(|(a, b)| (a - x) * (b - y)).sum();
    let run: f64 = logs.iter().map(|(a, _)| (a - x).powi(2)).sum();
    rise / run
}

/// Linux: resets the highest resident size so far (proc(5), clear_refs).
pub fn reset_peak() {
    let _ = std::fs::write("/proc/self/clear_refs", "5");
}

/// Linux: the highest resident size since then, in MB; `None` elsewhere.
pub fn peak_mb() -> Option<f64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|line| line.starts_with("VmHWM:"))?;
    let kb: f64 = line.split_whitespace().nth(1)?.parse().ok()?;
    Some(kb / 1_024.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_row_has_seven_parts() {
        let ms = Duration::from_millis;
        let row = Row::time("opening", ms(3)).against("bare SQLite", ms(3), ms(2));
        assert_eq!(
            row.line("<= 3 x", "held"),
            "bench\topening\t3.000 ms\t2.000 ms bare SQLite\t1.50\t<= 3 x\theld"
        );
        assert_eq!(Row::new("size", "8 MB").line("-", "noted"), "bench\tsize\t8 MB\t-\t-\t-\tnoted");
    }

    #[test]
    fn the_exponent_is_the_slope_of_the_logarithms() {
        let costs = |power: f64| {
            [10.0_f64, 100.0, 1_000.0].map(|n| (n, Duration::from_secs_f64(1e-6 * n.powf(power))))
        };
        for power in [0.0, 1.0, 2.0] {
            assert!((exponent(&costs(power)) - power).abs() < 1e-3, "{power}");
        }
    }
}
