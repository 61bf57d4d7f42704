//! Kaplan-Meier, Greenwood, quantiles.

use super::Topic;
use super::case::{or_null, waits};
use restwater_waits::{Limits, Step, SurvivalCurve};
use serde_json::{Value, json};

pub const TOPIC: Topic = Topic { name: "survival_km", compute, tolerance: |_| None };

fn compute(case: &Value) -> Result<Value, String> {
    let curve = SurvivalCurve::new(&waits(case)?).map_err(|e| e.to_string())?;
    let list = |of: &dyn Fn(&Step) -> Value| curve.steps().iter().map(of).collect::<Vec<Value>>();
    let limits = curve.limits(Limits::LogLog, 0.95).map_err(|e| e.to_string())?;
    let end = |of: fn((f64, f64)) -> f64| limits.iter().map(|l| or_null(l.map(of))).collect::<Vec<_>>();
    let median = curve.quantile_limits(0.5, Limits::LogLog, 0.95).map_err(|e| e.to_string())?;
    let quantiles = [0.25, 0.5, 0.75].map(|p| or_null(curve.quantile(p)));
    Ok(json!({
        "time": list(&|s| json!(s.minutes)),
        "n_at_risk": list(&|s| json!(s.at_risk)),
        "n_events": list(&|s| json!(s.bites)),
        "survival": list(&|s| json!(s.survival)),
        "greenwood_se": list(&|s| or_null(s.standard_error())),
        "loglog_lower": end(|l| l.0),
        "loglog_upper": end(|l| l.1),
        "quantile_25_50_75": quantiles,
        "median_ci_loglog": [or_null(median.0), or_null(median.1)],
    }))
}
