//! Published check data: every case is computed by the core and compared with its source.
//!
//! A topic computes an object with the same keys as the case's `expected`; a key that it does not compute, an
//! unknown topic and a case with an error all count as failed, never as skipped.

mod binomial_fisher;
mod case;
mod common_practice;
mod compare;
mod compound;
mod fed_casts;
mod gamma_poisson;
mod geodesy;
mod lengthweight;
mod logrank;
mod over_days;
mod physics;
mod planar;
mod poisson_rates;
mod renewal;
mod sun;
mod survival_bayes;
mod survival_km;
mod survival_parametric;
mod tackle;
mod topics;

use serde_json::Value;
use std::fmt::Write as _;
use std::path::Path;

/// One topic of check data and how the core answers it.
pub struct Topic {
    /// The `topic` field of the file.
    pub name: &'static str,
    /// Computes the answer to one whole case, with the keys of its `expected`, which may be read only for the
    /// points at which a curve is to be evaluated.
    pub compute: fn(case: &Value) -> Result<Value, String>,
    /// The tolerance that applies to the field at `path` (for example `cov_log_shape_log_scale.0.1`), if it
    /// is not the plain `rel` / `abs`.
    pub tolerance: fn(path: &str) -> Option<&'static str>,
}

/// The results of one run over folders of check files.
#[derive(Debug, Default)]
pub struct Outcome {
    /// Cases whose fields all agreed.
    pub passed: usize,
    /// Cases with a field that did not agree.
    pub failed: usize,
    /// One or more lines per case, for reading.
    pub text: String,
}

/// Runs every `*.json` in the folders, in the order of their names; `only` limits it to topics.
pub fn run(dirs: &[&Path], only: &[&str]) -> Result<Outcome, String> {
    let mut outcome = Outcome::default();
    for dir in dirs {
        let listing = std::fs::read_dir(dir).map_err(|e| format!("{}: {e}", dir.display()))?;
        let mut files: Vec<_> = listing
            .filter_map(|entry| entry.ok().map(|e| e.path()))
            .filter(|path| path.extension().is_some_and(|x| x == "json"))
            .collect();
        files.sort();
        if files.is_empty() {
            return Err(format!("{}: no check files (*.json) here", dir.display()));
        }
        for file in files {
            run_file(&file, only, &mut outcome)?;
        }
    }
    Ok(outcome)
}

fn run_file(file: &Path, only: &[&str], outcome: &mut Outcome) -> Result<(), String> {
    let bytes = std::fs::read(file).map_err(|e| format!("{}: {e}", file.display()))?;
    let data: Value = serde_json::from_slice(&bytes).map_err(|e| format!("{}: {e}", file.display()))?;
    let name = data["topic"].as_str().unwrap_or("(no topic)");
    if !only.is_empty() && !only.contains(&name) {
        return Ok(());
    }
    let cases = data["cases"].as_array().ok_or_else(|| format!("{}: no cases", file.display()))?;
    for case in cases {
        let (ok, text) = run_case(name, case);
        if ok {
            outcome.passed += 1;
        } else {
            outcome.failed += 1;
        }
        outcome.text.push_str(&text);
    }
    Ok(())
}

fn run_case(name: &str, case: &Value) -> (bool, String) {
    let id = case["id"].as_str().unwrap_or("(no id)");
    let mut text = String::new();
    let Some(topic) = topics::ALL.iter().find(|t| t.name == name) else {
        let _ = writeln!(text, "FAILED {name}/{id}: no such topic here");
        return (false, text);
    };
    let computed = match (topic.compute)(case) {
        Ok(value) => value,
        Err(why) => {
            let _ = writeln!(text, "FAILED {name}/{id}: {why}");
            return (false, text);
        }
    };
    let fields = compare::fields(topic, &computed, &case["expected"], &case["tolerance"]);
    let ok = !fields.is_empty() && fields.iter().all(|f| f.ok);
    let _ = writeln!(text, "{} {name}/{id}", if ok { "ok    " } else { "FAILED" });
    for field in fields {
        let _ = writeln!(text, "    {field}");
    }
    (ok, text)
}
