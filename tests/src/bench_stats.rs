//! Kaplan-Meier, log-rank and Weibull fit of many waits beside R's survival and Python's lifelines,
//! all in the same run on the same data.

use restwater_core::bite::{Law, Limits, Model, SurvivalCurve, Wait, fit};
use restwater_core::compare::chance::Chance;
use restwater_core::compare::log_rank::{Weighting, log_rank};
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::Path;
use std::process::Command;
use std::time::Instant;

/// Sizes that are compared.
pub const SIZES: [usize; 3] = [1_000, 100_000, 1_000_000];

/// A time in seconds and the figure that was computed in it.
#[derive(Debug, Clone, Copy)]
pub struct Timed {
    /// Best of three, seconds.
    pub seconds: f64,
    /// What came out.
    pub figure: f64,
}

/// What each of the three jobs took.
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
            // Whole milliseconds, as the log keeps them: R takes times closer than 1.5e-8 for ties.
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
    let mut timed = Timed { seconds: f64::INFINITY, figure: 0.0 };
    for _ in 0..3 {
        let start = Instant::now();
        timed.figure = std::hint::black_box(run()?);
        timed.seconds = timed.seconds.min(start.elapsed().as_secs_f64());
    }
    Ok(timed)
}

/// Ours. The curve with its limits, as R and lifelines make them by default; the log-rank test from
/// two unsorted lists.
pub fn ours(data: &Data) -> Result<Jobs, String> {
    let (a, b) = (data.side(false), data.side(true));
    let curve = best(|| {
        let curve = SurvivalCurve::new(&data.waits).map_err(|e| e.to_string())?;
        std::hint::black_box(curve.limits(Limits::LogLog, 0.95).map_err(|e| e.to_string())?);
        Ok(curve.steps().iter().map(|s| s.survival).sum())
    })?;
    let rank = best(|| {
        let test = log_rank(&a, &b, Weighting::LogRank).map_err(|e| e.to_string())?;
        test.chi_square().ok_or("no chi-square".into())
    })?;
    let weibull = best(|| match fit(Model::Weibull, &data.waits).map_err(|e| e.to_string())?.law {
        Law::Weibull { shape, .. } => Ok(shape),
        other => Err(format!("not a Weibull law: {other:?}")),
    })?;
    let named = [("kaplan_meier", curve), ("log_rank", rank), ("weibull", weibull)];
    Ok(named.into_iter().map(|(name, timed)| (name.to_owned(), timed)).collect())
}

/// A peer's jobs: `program script data n`, lines "name seconds figure".
pub fn peer(program: &str, script: &Path, data: &Data, dir: &Path) -> Result<Jobs, String> {
    let file = dir.join("waits.bin");
    std::fs::write(&file, data.bytes()).map_err(|e| e.to_string())?;
    let ran = Command::new(program)
        .args([script, &file])
        .arg(data.waits.len().to_string())
        .output()
        .map_err(|e| format!("{program}: {e}"))?;
    if !ran.status.success() {
        return Err(format!("{program}: {}", String::from_utf8_lossy(&ran.stderr)));
    }
    String::from_utf8_lossy(&ran.stdout).lines().map(job).collect()
}

fn job(line: &str) -> Result<(String, Timed), String> {
    let parts: Vec<&str> = line.split_whitespace().collect();
    let number = |text: &str| text.parse::<f64>().map_err(|e| format!("{line}: {e}"));
    match parts[..] {
        [name, seconds, figure] => {
            Ok((name.to_owned(), Timed { seconds: number(seconds)?, figure: number(figure)? }))
        }
        _ => Err(format!("not a name and two numbers: {line}")),
    }
}

/// Relative difference up to which a peer's figure is the same as ours: they stop their searches
/// earlier than we do.
const SAME_FIGURE: f64 = 1e-3;

/// One line a job; returns how many held and missed. Ahead means taking less time for the same figure.
pub fn lines(size: usize, name: &str, ours: &Jobs, theirs: &Jobs, text: &mut String) -> (usize, usize) {
    let (mut held, mut missed) = (0, 0);
    for (job, mine) in ours {
        let Some(other) = theirs.get(job) else {
            missed += 1;
            let _ = writeln!(text, "{job} {size} v {name}: missed (the peer gave nothing)");
            continue;
        };
        let ratio = other.seconds / mine.seconds;
        let same = (mine.figure - other.figure).abs() <= SAME_FIGURE * mine.figure.abs();
        let ok = ratio > 1.0 && same;
        held += usize::from(ok);
        missed += usize::from(!ok);
        let verdict = if ok { "held" } else { "missed" };
        let note = if same { "" } else { "  (figures differ)" };
        let _ = writeln!(
            text,
            "{:<36} {:>12} {:>12} {ratio:>9.1} {:>7} {verdict}{note}",
            format!("{job} {size} v {name}"),
            time(mine.seconds),
            time(other.seconds),
            "> 1",
        );
    }
    (held, missed)
}

fn time(seconds: f64) -> String {
    if seconds < 1e-3 { format!("{:.1} us", seconds * 1e6) } else { format!("{:.2} ms", seconds * 1e3) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn jobs(seconds: f64, figure: f64) -> Jobs {
        Jobs::from([("log_rank".to_owned(), Timed { seconds, figure })])
    }

    #[test]
    fn slower_other_or_missing_is_missed() {
        let mut text = String::new();
        assert_eq!(lines(1, "R", &jobs(1.0, 5.0), &jobs(2.0, 5.0), &mut text), (1, 0));
        assert_eq!(lines(1, "R", &jobs(1.0, 5.0), &jobs(0.5, 5.0), &mut text), (0, 1));
        assert_eq!(lines(1, "R", &jobs(1.0, 5.0), &jobs(2.0, 6.0), &mut text), (0, 1));
        assert_eq!(lines(1, "R", &jobs(1.0, 5.0), &Jobs::new(), &mut text), (0, 1));
        assert!(text.contains("figures differ"));
    }

    #[test]
    fn ours_gives_all_three_jobs() {
        let jobs = ours(&Data::new(200)).unwrap_or_default();
        assert_eq!(jobs.keys().collect::<Vec<_>>(), ["kaplan_meier", "log_rank", "weibull"]);
        assert!(jobs.values().all(|t| t.figure > 0.0));
    }
}
