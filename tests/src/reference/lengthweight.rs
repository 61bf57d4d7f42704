//! Length-weight curves by least squares on logarithms, and a published standard weight.

use super::Topic;
use super::case::numbers;
use crate::second_methods::length_weight::{LengthWeight, fit};
use serde_json::{Value, json};

pub const TOPIC: Topic = Topic { name: "lengthweight", compute, tolerance: |_| None };

fn compute(case: &Value) -> Result<Value, String> {
    if case["input"]["total_length_mm"].is_array() {
        return standard_weight(case);
    }
    let weights = numbers(&case["input"], "weight_g")?;
    let one = |lengths: &str| -> Result<Value, String> {
        let fit = fit(&numbers(&case["input"], lengths)?, &weights).map_err(|e| e.to_string())?;
        Ok(json!({
            "a": fit.curve.a,
            "b": fit.curve.b,
            "residual_sd_log": fit.residual_sd_log,
            "r2": fit.r2,
            "range_cm": fit.range_cm,
        }))
    };
    Ok(json!({"fork_length_cm": one("fork_length_cm")?, "total_length_cm": one("total_length_cm")?}))
}

/// The published curve is in grams and millimetres, to base ten.
fn standard_weight(case: &Value) -> Result<Value, String> {
    let printed = |key: &str| case["published"][key].as_f64().ok_or_else(|| format!("no printed {key}"));
    let curve = LengthWeight::from_log10_mm(printed("log10a")?, printed("b")?);
    let weights: Result<Vec<f64>, String> = numbers(&case["input"], "total_length_mm")?
        .into_iter()
        .map(|mm| curve.grams(mm / 10.0).map_err(|e| e.to_string()))
        .collect();
    Ok(json!({"standard_weight_g": weights?, "a_cm_g": curve.a, "b": curve.b}))
}
