//! Kaplan-Meier and log-rank of many waits compared with R's survival and Python's lifelines,
//! and the exact tests compared with R's stats, all in the same run on the same data.

use crate::bench_row::{Row, timed};
use restwater_compare::binomial::{Alternative, binomial_test, clopper_pearson};
use restwater_compare::chance::Chance;
use restwater_compare::log_rank::log_rank;
use restwater_compare::poisson_rates::{Tally, conditional_test, rate_ratio};
use restwater_waits::{Limits, SurvivalCurve, Wait};
use std::collections::BTreeMap;
use std::path::Path;
use std::process::Command;
use std::time::Duration;

/// The sizes that are compared.
pub const SIZES: [usize; 3] = [1_000, 100_000, 1_000_000];

/// A time in seconds and the value that was computed in it.
#[derive(Debug, Clone, Copy)]
pub struct Timed {
    /// Best of three, seconds.
    pub seconds: f64,
    /// The computed value.
    pub figure: f64,
}

/// Tables of small counts on which the exact tests are run.
pub const TABLES: u64 = 300;

/// The time of each job.
pub type Jobs = BTreeMap<String, Timed>;

/// Waits of two sides: Weibull times, wound in at a leave time, seeded.
pub struct Data {
    waits: Vec<Wait>,
    second: Vec<bool>,
}

impl Data {
    /// `n` waits.
    pub fn new(n: usize) -> Self {
        let mut chance = Chance::new(7, n as u64);
        let mut data = Self { waits: Vec::with_capacity(n), second: Vec::with_capacity(n) };
        while data.waits.len() < n {
            let second = chance.happens(0.5);
            let scale = if second { 16.0 } else { 15.0 };
            let bite_at = scale * chance.exponential().powf(1.0 / 1.6);
            let out = 5.0 + 20.0 * chance.uniform();
            // Whole milliseconds, as in the log: R treats times closer than 1.5e-8 as ties.
            let minutes = (bite_at.min(out) * 60_000.0).ceil() / 60_000.0;
            if let Ok(wait) = Wait::new(minutes, bite_at <= out) {
                data.waits.push(wait);
                data.second.push(second);
            }
        }
        data
    }

    /// Three runs of little-endian doubles: minutes, bite, side.
    fn bytes(&self) -> Vec<u8> {
        let minutes = self.waits.iter().map(|w| w.minutes());
        let bites = self.waits.iter().map(|w| f64::from(u8::from(w.is_bite())));
        let sides = self.second.iter().map(|&s| if s { 2.0 } else { 1.0 });
        minutes.chain(bites).chain(sides).flat_map(f64::to_le_bytes).collect()
    }

    fn side(&self, second: bool) -> Vec<Wait> {
        self.waits.iter().zip(&self.second).filter(|(_, s)| **s == second).map(|(w, _)| *w).collect()
    }
}

fn best(mut run: impl FnMut() -> Result<f64, String>) -> Result<Timed, String> {
    let mut best = Timed { seconds: f64::INFINITY, figure: 0.0 };
    for _ in 0..3 {
        let (time, figure) = timed(&mut run);
        best = Timed { seconds: best.seconds.min(time.as_secs_f64()), figure: figure? };
    }
    Ok(best)
}

/// Our jobs. The curve with its limits, as R and lifelines compute them by default; the log-rank test from
/// two unsorted lists.
pub fn ours(data: &Data) -> Result<Jobs, String> {
    let (a, b) = (data.side(false), data.side(true));
    let curve = best(|| {
        let curve = SurvivalCurve::new(&data.waits).map_err(|e| e.to_string())?;
        std::hint::black_box(curve.limits(Limits::LogLog, 0.95).map_err(|e| e.to_string())?);
        Ok(curve.steps().iter().map(|s| s.survival).sum())
    })?;
    let rank = best(|| {
        let test = log_rank(&a, &b).map_err(|e| e.to_string())?;
        test.chi_square().ok_or("no chi-square".into())
    })?;
    let named = [("Kaplan-Meier", curve), ("log-rank", rank)];
    Ok(named.into_iter().map(|(name, timed)| (name.to_owned(), timed)).collect())
}

/// The exact tests of rates and shares, with their limits, on this many tables; the value is the sum of p-values
/// and lower limits.
pub fn ours_exact(tables: u64) -> Result<Jobs, String> {
    let sum = |of: &dyn Fn(u64) -> Result<f64, String>| best(|| (1..=tables).map(of).sum());
    let text = |e: restwater_compare::CompareError| e.to_string();
    // The same small counts as in exact.R.
    let counts = |i: u64| (1 + i % 8, 3 + i % 7, i % 5);
    let binomial = sum(&|i| {
        let (a, b, _) = counts(i);
        let p = binomial_test(a, a + b, 0.3, Alternative::TwoSided).map_err(text)?;
        Ok(p + clopper_pearson(a, a + b, 0.95).map_err(text)?.low)
    })?;
    let poisson = sum(&|i| {
        let (a, _, c) = counts(i);
        let (a, c) = (Tally { bites: a, time: 60.0 + i as f64 }, Tally { bites: c, time: 90.0 });
        let p = conditional_test(a, c).map_err(text)?.two_sided_min_likelihood;
        Ok(p + rate_ratio(a, c, 0.95).map_err(text)?.limits.low)
    })?;
    let named = [("binomial test", binomial), ("Poisson rates", poisson)];
    Ok(named.into_iter().map(|(name, timed)| (name.to_owned(), timed)).collect())
}

/// A peer's jobs on waits.
pub fn peer(program: &str, script: &Path, data: &Data, dir: &Path) -> Result<Jobs, String> {
    let file = dir.join("waits.bin");
    std::fs::write(&file, data.bytes()).map_err(|e| e.to_string())?;
    jobs(Command::new(program).args([script, &file]).arg(data.waits.len().to_string()))
}

/// R's jobs on tables of small counts.
pub fn peer_exact(script: &Path, tables: u64) -> Result<Jobs, String> {
    jobs(Command::new("Rscript").arg(script).arg(tables.to_string()))
}

/// Reads what a peer prints: one job per line, with its name, its seconds and its value separated by tabs.
fn jobs(command: &mut Command) -> Result<Jobs, String> {
    let ran = command.output().map_err(|e| format!("{command:?}: {e}"))?;
    if !ran.status.success() {
        return Err(format!("{command:?}: {}", String::from_utf8_lossy(&ran.stderr)));
    }
    String::from_utf8_lossy(&ran.stdout).lines().map(job).collect()
}

fn job(line: &str) -> Result<(String, Timed), String> {
    let parts: Vec<&str> = line.split('\t').collect();
    let number = |text: &str| text.trim().parse::<f64>().map_err(|e| format!("{line}: {e}"));
    match parts[..] {
        [name, seconds, figure] => {
            Ok((name.to_owned(), Timed { seconds: number(seconds)?, figure: number(figure)? }))
        }
        _ => Err(format!("not a name and two numbers: {line}")),
    }
}

/// Relative difference up to which a peer's value counts as the same as ours: they stop their searches
/// earlier than we do.
const SAME_FIGURE: f64 = 1e-3;

/// Prints one row per job. The goal is met if ours takes less time and gives the same value.
pub fn rows(size: u64, name: &str, ours: &Jobs, theirs: &Jobs) {
    for (job, mine) in ours {
        let title = format!("stats: {job} of {size}");
        let time = Duration::from_secs_f64(mine.seconds);
        let Some(other) = theirs.get(job) else {
            Row::time(title, time).beside(name, "nothing by", f64::NAN).judged("< 1 x", false);
            continue;
        };
        let row = Row::time(title, time).against(name, time, Duration::from_secs_f64(other.seconds));
        let same = same(mine, other);
        row.judged(if same { "< 1 x" } else { "the same figure" }, is_ahead(mine, other));
    }
}

fn same(mine: &Timed, other: &Timed) -> bool {
    (mine.figure - other.figure).abs() <= SAME_FIGURE * mine.figure.abs()
}

fn is_ahead(mine: &Timed, other: &Timed) -> bool {
    mine.seconds < other.seconds && same(mine, other)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slower_or_a_different_result_is_missed() {
        let of = |seconds, figure| Timed { seconds, figure };
        assert!(is_ahead(&of(1.0, 5.0), &of(2.0, 5.0)));
        assert!(!is_ahead(&of(1.0, 5.0), &of(0.5, 5.0)));
        assert!(!is_ahead(&of(1.0, 5.0), &of(2.0, 6.0)));
    }

    #[test]
    fn our_side_has_all_jobs() {
        let jobs = ours(&Data::new(200)).unwrap_or_default();
        assert_eq!(jobs.keys().collect::<Vec<_>>(), ["Kaplan-Meier", "log-rank"]);
        assert!(jobs.values().all(|t| t.figure > 0.0));
        let exact = ours_exact(20).unwrap_or_default();
        assert_eq!(exact.keys().collect::<Vec<_>>(), ["Poisson rates", "binomial test"]);
        assert!(exact.values().all(|t| t.figure > 0.0));
    }

    #[test]
    fn a_peers_line_is_read() {
        let read = job("log-rank\t0.25\t3.5").ok().map(|(name, timed)| (name, timed.seconds, timed.figure));
        assert_eq!(read, Some(("log-rank".to_owned(), 0.25, 3.5)));
        assert!(job("log-rank 0.25").is_err());
    }
}
