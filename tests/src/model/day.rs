//! A day as a file: one JSON object per line, written by the model and read again by `./dev model --replay
//! FILE`.
//!
//! The first line is `{"model": "two phones", "seed": 7}`. Each other line is one step: the phone (0 or 1),
//! the milliseconds of true time before it, and either a tap in the form of `tests/README.md` (`"do": "cast",
//! "rod": 1`) or something that happens to the phone (`"event": "boot"`).

use serde_json::{Map, Value, json};
use std::fmt::Write as _;

/// One step.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// Which phone.
    pub phone: usize,
    /// True time before it.
    pub after_ms: i64,
    /// `do` and the fields of a tap, or `event` and its fields.
    pub what: Map<String, Value>,
}

/// A whole day.
#[derive(Debug, Clone, PartialEq)]
pub struct Day {
    /// Seeds the ids.
    pub seed: u64,
    /// Its steps.
    pub steps: Vec<Step>,
}

impl Step {
    /// A step from a JSON object without `phone` and `after_ms`.
    pub fn new(phone: usize, after_ms: i64, what: Value) -> Self {
        let what = if let Value::Object(what) = what { what } else { Map::new() };
        Self { phone, after_ms, what }
    }

    /// The name of a step that is not a tap.
    pub fn name(&self) -> Option<&str> {
        self.what.get("event").and_then(Value::as_str)
    }

    /// A whole number in it; 0 if it is missing.
    pub fn number(&self, field: &str) -> i64 {
        self.what.get(field).and_then(Value::as_i64).unwrap_or(0)
    }

    /// A text in it.
    pub fn text(&self, field: &str) -> &str {
        self.what.get(field).and_then(Value::as_str).unwrap_or_default()
    }

    /// The steps within it.
    pub fn within(&self) -> Vec<Step> {
        let steps = self.what.get("steps").and_then(Value::as_array);
        steps.into_iter().flatten().filter_map(|value| of_value(value.clone())).collect()
    }

    /// The same step with other steps within it.
    #[must_use]
    pub fn with_within(&self, steps: &[Step]) -> Self {
        let mut one = self.clone();
        one.what.insert("steps".into(), Value::Array(steps.iter().map(to_value).collect()));
        one
    }
}

/// A step as a JSON object.
pub fn to_value(step: &Step) -> Value {
    let mut line = step.what.clone();
    line.insert("phone".into(), json!(step.phone));
    line.insert("after_ms".into(), json!(step.after_ms));
    Value::Object(line)
}

fn of_value(value: Value) -> Option<Step> {
    let Value::Object(mut what) = value else { return None };
    let phone = what.remove("phone").and_then(|p| p.as_u64()).filter(|p| *p < 2)?;
    let after_ms = what.remove("after_ms").and_then(|ms| ms.as_i64()).filter(|ms| *ms >= 0)?;
    Some(Step { phone: usize::try_from(phone).ok()?, after_ms, what })
}

/// The day as the text of a file.
pub fn write(day: &Day) -> String {
    let mut text = format!("{}\n", json!({"model": "two phones", "seed": day.seed}));
    for step in &day.steps {
        let _ = writeln!(text, "{}", to_value(step));
    }
    text
}

/// A day from the text of a file; empty lines and lines that begin with `#` are skipped.
pub fn read(text: &str) -> Result<Day, String> {
    let lines = text.lines().zip(1..).filter(|(line, _)| !line.trim().is_empty() && !line.starts_with('#'));
    let mut day: Option<Day> = None;
    for (line, number) in lines {
        let value: Value = serde_json::from_str(line).map_err(|e| format!("line {number}: {e}"))?;
        match &mut day {
            None => {
                let seed = value.get("seed").and_then(Value::as_u64).filter(|_| value.get("model").is_some());
                let seed = seed
                    .ok_or_else(|| format!("line {number}: {{\"model\": ..., \"seed\": n}} is expected"))?;
                day = Some(Day { seed, steps: Vec::new() });
            }
            Some(day) => day.steps.push(of_value(value).ok_or_else(|| format!("line {number} is no step"))?),
        }
    }
    day.ok_or_else(|| "the file holds no day".into())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_day_is_read_as_it_was_written() {
        let inner = Step::new(1, 5, json!({"do": "cast", "rod": 1}));
        let outer =
            Step::new(1, 9, json!({"event": "disk", "room": 100})).with_within(std::slice::from_ref(&inner));
        assert_eq!(outer.within(), std::slice::from_ref(&inner));
        let day = Day { seed: 3, steps: vec![inner, outer] };
        assert_eq!(read(&write(&day)), Ok(day));
        assert!(
            read("").is_err()
                && read("{\"model\": 1, \"seed\": 1}\n{\"phone\": 2, \"after_ms\": 1}").is_err()
        );
    }
}
