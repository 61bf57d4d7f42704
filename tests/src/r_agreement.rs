//! Agreement with R's survival and stats packages on random censored waits.
//!
//! The sets are generated here (seeded), `tests/r/agree.R` computes R's figures from them, and every figure
//! is compared with ours: a figure that either side lacks counts as a disagreement.

mod data;
mod ours;

pub use data::{SETS, Set, sets};
pub use ours::figures;

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::process::Command;

/// What a comparison found.
#[derive(Debug, Default)]
pub struct Agreement {
    /// Figures that agreed.
    pub agreed: usize,
    /// Figures that did not, one line each.
    pub differing: Vec<String>,
    /// Worst relative difference by kind of figure.
    pub worst: BTreeMap<String, f64>,
}

/// Whether R can be run here.
pub fn have_r() -> bool {
    Command::new("Rscript").arg("--version").output().is_ok_and(|o| o.status.success())
}

fn script() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("r/agree.R")
}

/// Writes the sets into `dir`, runs R on them and compares.
pub fn compare_with_r(dir: &Path, sets: &[Set]) -> Result<Agreement, String> {
    let (input, output) = (dir.join("waits.csv"), dir.join("figures.csv"));
    std::fs::write(&input, data::csv(sets)).map_err(|e| format!("{}: {e}", input.display()))?;
    let ran = Command::new("Rscript")
        .args(["--vanilla"])
        .args([&script(), &input, &output])
        .output()
        .map_err(|e| format!("Rscript: {e}"))?;
    if !ran.status.success() {
        return Err(format!("Rscript failed: {}", String::from_utf8_lossy(&ran.stderr)));
    }
    let text = std::fs::read_to_string(&output).map_err(|e| format!("{}: {e}", output.display()))?;
    let theirs = parse(&text)?;
    let mut agreement = Agreement::default();
    for (i, set) in sets.iter().enumerate() {
        let theirs = theirs.get(&i).ok_or(format!("R gave nothing for set {i}"))?;
        compare_set(i, &figures(set)?, theirs, &mut agreement);
    }
    Ok(agreement)
}

type Figures = BTreeMap<String, f64>;

fn parse(text: &str) -> Result<BTreeMap<usize, Figures>, String> {
    let mut all: BTreeMap<usize, Figures> = BTreeMap::new();
    for line in text.lines().skip(1) {
        let mut parts = line.split(',');
        let (Some(set), Some(figure), Some(value)) = (parts.next(), parts.next(), parts.next()) else {
            return Err(format!("not three fields: {line}"));
        };
        let set = set.parse().map_err(|e| format!("{line}: {e}"))?;
        let value = match value {
            "NA" => f64::NAN,
            other => other.parse().map_err(|e| format!("{line}: {e}"))?,
        };
        all.entry(set).or_default().insert(figure.to_owned(), value);
    }
    Ok(all)
}

fn compare_set(set: usize, ours: &Figures, theirs: &Figures, agreement: &mut Agreement) {
    let names = ours.keys().chain(theirs.keys().filter(|k| !ours.contains_key(*k)));
    for name in names {
        let (Some(&x), Some(&y)) = (ours.get(name), theirs.get(name)) else {
            agreement.differing.push(format!("set {set} {name}: ours or R's alone"));
            continue;
        };
        let kind = kind(name);
        let (difference, limit) = difference(x, y);
        let worst = agreement.worst.entry(kind).or_default();
        *worst = worst.max(difference);
        if difference <= limit {
            agreement.agreed += 1;
        } else {
            agreement.differing.push(format!("set {set} {name}: ours {x:e} R {y:e} ({difference:e})"));
        }
    }
}

/// The name without the number at its end.
fn kind(name: &str) -> String {
    name.trim_end_matches(|c: char| c.is_ascii_digit()).trim_end_matches('.').to_owned()
}

/// How far two figures differ, and how far they may differ.
///
/// Relative 1e-8, or absolute 1e-9 near zero. The exact p-values of R's binom.test and poisson.test carry 1e-7 relative slack, which
/// does not touch their sums.
fn difference(x: f64, y: f64) -> (f64, f64) {
    if x == y || (x.is_nan() && y.is_nan()) {
        return (0.0, 0.0);
    }
    let difference = (x - y).abs() / y.abs().max(0.1);
    (if difference.is_nan() { f64::INFINITY } else { difference }, 1e-8)
}

/// The agreement as a table for reading.
pub fn table(agreement: &Agreement) -> String {
    let mut text = String::new();
    for (kind, worst) in &agreement.worst {
        let _ = writeln!(text, "{kind:<24} worst difference {worst:.1e}");
    }
    for line in &agreement.differing {
        let _ = writeln!(text, "DIFFERS {line}");
    }
    let _ = writeln!(text, "{} agree, {} differ", agreement.agreed, agreement.differing.len());
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_figure_only_one_side_has_is_a_disagreement() {
        let one = Figures::from([("a".to_owned(), 1.0)]);
        let two = Figures::from([("a".to_owned(), 1.0), ("b.0".to_owned(), 2.0)]);
        for (x, y) in [(&one, &two), (&two, &one)] {
            let mut agreement = Agreement::default();
            compare_set(0, x, y, &mut agreement);
            assert_eq!((agreement.agreed, agreement.differing.len()), (1, 1));
        }
    }

    #[test]
    fn a_wrong_figure_differs_and_infinities_agree() {
        assert!(difference(1.0, 1.0 + 1e-7).0 > 1e-8);
        assert_eq!(difference(f64::INFINITY, f64::INFINITY), (0.0, 0.0));
        let (far, limit) = difference(f64::INFINITY, 1.0);
        assert!(far > limit);
        let (far, limit) = difference(f64::NAN, 1.0);
        assert!(far > limit);
    }
}
