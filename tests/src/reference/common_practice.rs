//! Habits of the trade as arithmetic; the kind of a case says which part of the core answers.

use super::case::text;
use super::{Topic, tackle};
use serde_json::Value;

pub const TOPIC: Topic = Topic { name: "common_practice", compute, tolerance: |_| None };

fn compute(case: &Value) -> Result<Value, String> {
    match text(case, "kind")? {
        "cut_down" => tackle::cut_down(case),
        "lead_rule" => tackle::lead(case),
        other => Err(format!("no answer to {other}")),
    }
}
