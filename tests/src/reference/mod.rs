//! Check data: every case names what it checks, is computed, and is compared with its expected figures, which come from
//! general libraries (`verified_by`), and with the figures printed in its source where the case has them (`published`).
//!
//! `checks` is a function of the core that ships, or one of the second methods of these tests, which is counted apart. A
//! topic computes an object with the keys of `expected` and `published`; a key that it does not compute, an unknown topic,
//! a case that doesn't say what it checks and a case with an error all count as failed, never as skipped.

mod binomial;
mod case;
mod common_practice;
mod compare;
mod fed_casts;
mod geodesy;
mod logrank;
mod meeus;
mod over_days;
mod physics;
mod planar;
mod poisson_rates;
mod sun;
mod survival_km;
mod tackle;
mod topics;
mod wait_shapes;

use serde_json::Value;
use std::fmt::Write as _;
use std::path::Path;

/// The beginning of `checks` of a case that checks a second method.
const SECOND_METHODS: &str = "second_methods::";

/// One topic of check data and how it is answered.
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
    /// Of all cases, those that check a second method, not what ships.
    pub second_methods: usize,
    /// Those that were also compared with figures printed in their source.
    pub published: usize,
    /// Those whose source was recalled from memory.
    pub from_memory: usize,
    /// One or more lines per case, for reading.
    pub text: String,
}

impl Outcome {
    /// The kinds of cases in one line.
    pub fn kinds(&self) -> String {
        let all = self.passed + self.failed;
        format!(
            "{} cases check what ships, {} second methods; {} were also compared with printed figures, the others with \
             general libraries only; the source of {} was recalled from memory",
            all - self.second_methods,
            self.second_methods,
            self.published,
            self.from_memory
        )
    }

    fn count(&mut self, case: &Value, ok: bool) {
        *(if ok { &mut self.passed } else { &mut self.failed }) += 1;
        self.second_methods += usize::from(checks(case).is_some_and(|name| name.starts_with(SECOND_METHODS)));
        self.published += usize::from(case["published"].is_object());
        self.from_memory += usize::from(case["from_memory"] == true);
    }
}

/// What a case checks.
fn checks(case: &Value) -> Option<&str> {
    case["checks"].as_str()
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
        outcome.count(case, ok);
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
    let Some(checks) = checks(case) else {
        let _ = writeln!(text, "FAILED {name}/{id}: does not say what it checks");
        return (false, text);
    };
    let computed = match (topic.compute)(case) {
        Ok(value) => value,
        Err(why) => {
            let _ = writeln!(text, "FAILED {name}/{id}: {why}");
            return (false, text);
        }
    };
    let mut fields = compare::fields(topic, &computed, &case["expected"], &case["tolerance"]);
    let expected = !fields.is_empty();
    if case["published"].is_object() {
        fields.extend(compare::printed(topic, &computed, &case["published"], &case["tolerance"]));
    }
    let ok = expected && fields.iter().all(|f| f.ok);
    let memory = if case["from_memory"] == true { " (from memory)" } else { "" };
    let _ = writeln!(text, "{} {name}/{id}: {checks}{memory}", if ok { "ok    " } else { "FAILED" });
    for field in fields {
        let _ = writeln!(text, "    {field}");
    }
    (ok, text)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
mod tests;
