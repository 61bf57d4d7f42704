//! Shares: Clopper-Pearson limits, the binomial test.

use super::Topic;
use super::poisson_rates::pair;
use restwater_compare::binomial::{Alternative, binomial_test, clopper_pearson};
use serde_json::{Value, json};

/// See [`Topic`].
pub const TOPIC: Topic = Topic { name: "binomial", compute, tolerance: |_| None };

fn compute(case: &Value) -> Result<Value, String> {
    let input = &case["input"];
    let x = input["x"].as_u64().ok_or("no x")?;
    let n = input["n"].as_u64().ok_or("no n")?;
    if let Some(p0) = input["p0"].as_f64() {
        let p = binomial_test(x, n, p0, alternative(input)?).map_err(|e| e.to_string())?;
        return Ok(json!({ "p_value": p }));
    }
    let confidence = input["confidence"].as_f64().unwrap_or(0.95);
    let limits = clopper_pearson(x, n, confidence).map_err(|e| e.to_string())?;
    Ok(json!({ "clopper_pearson": pair(limits) }))
}

fn alternative(input: &Value) -> Result<Alternative, String> {
    match input["alternative"].as_str() {
        Some("two-sided") | None => Ok(Alternative::TwoSided),
        Some("greater") => Ok(Alternative::Greater),
        Some("less") => Ok(Alternative::Less),
        Some(other) => Err(format!("unknown alternative {other}")),
    }
}
