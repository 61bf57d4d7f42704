//! Two rates: conditional test, exact limits; one rate: Garwood's limits.

use super::Topic;
use restwater_compare::Limits;
use restwater_compare::poisson_rates::{Tally, conditional_test, garwood, rate_ratio};
use serde_json::{Value, json};

/// See [`Topic`].
pub const TOPIC: Topic = Topic { name: "poisson_rates", compute, tolerance: |_| None };

fn compute(case: &Value) -> Result<Value, String> {
    let input = &case["input"];
    if let Some(k) = input["k"].as_u64() {
        return one_rate(k);
    }
    let tally = |k: &str, t: &str| -> Result<Tally, String> {
        let bites = input[k].as_u64().ok_or(format!("no {k}"))?;
        Ok(Tally { bites, time: input[t].as_f64().ok_or(format!("no {t}"))? })
    };
    two_rates(tally("k1", "t1")?, tally("k2", "t2")?)
}

/// Infinite limits are null in the check data.
pub fn pair(limits: Limits) -> Value {
    json!([limits.low, limits.high])
}

fn one_rate(k: u64) -> Result<Value, String> {
    let limits = |level| garwood(k, level).map(pair).map_err(|e| e.to_string());
    Ok(json!({
        "ci95": limits(0.95)?,
        "ci90": limits(0.90)?,
    }))
}

fn two_rates(a: Tally, b: Tally) -> Result<Value, String> {
    let c = conditional_test(a, b).map_err(|e| e.to_string())?;
    let ratio = rate_ratio(a, b, 0.95).map_err(|e| e.to_string())?;
    Ok(json!({
        "binomial_n": c.trials,
        "binomial_p": c.share,
        "c_test_p_greater": c.greater,
        "c_test_p_less": c.less,
        "c_test_p_two_sided_doubled": c.two_sided,
        "c_test_p_two_sided_minlike": c.two_sided_min_likelihood,
        "midp_greater": c.mid_greater,
        "midp_less": c.mid_less,
        "rate_ratio": ratio.ratio,
        "rate_ratio_ci95_exact": pair(ratio.limits),
    }))
}
