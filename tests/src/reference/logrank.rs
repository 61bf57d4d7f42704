//! Log-rank test and its permutation p-values.

use super::Topic;
use restwater_compare::log_rank::{LogRank, log_rank};
use restwater_compare::permutation::{Stratum, arrangements, log_rank_scores, permutation_p};
use restwater_waits::Wait;
use serde_json::{Value, json};

/// See [`Topic`].
pub const TOPIC: Topic = Topic { name: "logrank", compute, tolerance: |_| None };

/// Reads `{"time": [...], "event": [...]}`.
pub fn waits(group: &Value) -> Result<Vec<Wait>, String> {
    let times = group["time"].as_array().ok_or("no times")?;
    let events = group["event"].as_array().ok_or("no events")?;
    if times.len() != events.len() {
        return Err("times and events differ in number".into());
    }
    let one = |(t, e): (&Value, &Value)| {
        let minutes = t.as_f64().ok_or("a time that is no number")?;
        let event = e.as_u64().ok_or("an event that is not 0 or 1")?;
        Wait::new(minutes, event == 1).map_err(|e| e.to_string())
    };
    times.iter().zip(events).map(one).collect()
}

fn compute(case: &Value) -> Result<Value, String> {
    let a = waits(&case["input"]["a"])?;
    let b = waits(&case["input"]["b"])?;
    let mut answer = tests(&a, &b)?;
    // Going through all arrangements takes long, so it is done only for the cases that need it.
    if case["id"].as_str().is_some_and(|id| id.starts_with("permutation")) {
        let more = permutations(&a, &b)?;
        if let (Some(all), Some(more)) = (answer.as_object_mut(), more.as_object()) {
            all.extend(more.clone());
        }
    }
    Ok(answer)
}

fn tests(a: &[Wait], b: &[Wait]) -> Result<Value, String> {
    let test = log_rank(a, b).map_err(|e| e.to_string())?;
    Ok(json!({
        "observed_a": test.observed[0],
        "observed_b": test.observed[1],
        "expected_a": test.expected[0],
        "expected_b": test.expected[1],
        "variance": test.variance,
        "chisq": test.chi_square(),
        "z": test.z(),
        "p": test.p(),
        "chisq_conservative_oe": conservative(&test),
    }))
}

/// The sum of (O - E)^2 / E over both sides, which some papers print in place of the chi-square.
fn conservative(test: &LogRank) -> f64 {
    let term = |side: usize| (test.observed[side] - test.expected[side]).powi(2) / test.expected[side];
    term(0) + term(1)
}

fn permutations(a: &[Wait], b: &[Wait]) -> Result<Value, String> {
    let pooled: Vec<Wait> = a.iter().chain(b).copied().collect();
    let all = Stratum { scores: log_rank_scores(&pooled), on_a: a.len() };
    let exact = permutation_p(&[all], 1).map_err(|e| e.to_string())?;
    Ok(json!({
        "n_perm": arrangements(a.len() + b.len(), a.len()),
        "o_minus_e": exact.observed,
        "p_two_sided_abs_o_minus_e": exact.two_sided,
        "p_lower": exact.lower,
        "p_upper": exact.upper,
        "count_two_sided": (exact.two_sided * exact.arrangements as f64).round(),
        "coin_mid_ranks": exact.two_sided,
    }))
}
