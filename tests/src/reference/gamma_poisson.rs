//! Gamma posteriors of rates and the counts they predict.

use super::Topic;
use super::poisson_rates::pair;
use restwater_compare::gamma_poisson::{Foretold, GammaRate, probability_greater, who_has_more};
use restwater_compare::poisson_rates::Tally;
use serde_json::{Value, json};

/// See [`Topic`].
pub const TOPIC: Topic = Topic { name: "gamma_poisson", compute, tolerance: |_| None };

fn compute(case: &Value) -> Result<Value, String> {
    let input = &case["input"];
    if !input["k_a"].is_null() {
        two_rates(input)
    } else if !input["prior"].is_null() {
        one_rate(input)
    } else if !input["kmax"].is_null() {
        foretell(input, &case["expected"])
    } else {
        more_often(input)
    }
}

fn number(value: &Value) -> Result<f64, String> {
    value.as_f64().ok_or_else(|| format!("{value} is no number"))
}

fn law(shape: &Value, rate: &Value) -> Result<GammaRate, String> {
    GammaRate::new(number(shape)?, number(rate)?).map_err(|e| e.to_string())
}

fn after(prior: GammaRate, bites: &Value, time: &Value) -> Result<GammaRate, String> {
    let bites = bites.as_u64().ok_or("a count that is none")?;
    prior.after(Tally { bites, time: number(time)? }).map_err(|e| e.to_string())
}

fn two_rates(input: &Value) -> Result<Value, String> {
    let prior = law(&input["prior_shape"], &input["prior_rate"])?;
    let a = after(prior, &input["k_a"], &input["t_a"])?;
    let b = after(prior, &input["k_b"], &input["t_b"])?;
    let interval = |law: GammaRate| law.interval(0.95).map(pair).map_err(|e| e.to_string());
    Ok(json!({
        "posterior_a": [a.shape(), a.rate()],
        "posterior_b": [b.shape(), b.rate()],
        "prob_a_gt_b": probability_greater(a, b),
        "mean_a": a.mean(),
        "mean_b": b.mean(),
        "ci95_a": interval(a)?,
        "ci95_b": interval(b)?,
    }))
}

fn one_rate(input: &Value) -> Result<Value, String> {
    let prior = law(&input["prior"][0], &input["prior"][1])?;
    let posterior = after(prior, &input["y"], &input["exposure"])?;
    Ok(json!({
        "posterior": [posterior.shape(), posterior.rate()],
        "mean": posterior.mean(),
        "prob_gt_1": posterior.above(1.0),
        "ci95": posterior.interval(0.95).map(pair).map_err(|e| e.to_string())?,
    }))
}

fn foretold(shape: &Value, rate: &Value, exposure: &Value) -> Result<Foretold, String> {
    law(shape, rate)?.foretell(number(exposure)?).map_err(|e| e.to_string())
}

fn foretell(input: &Value, expected: &Value) -> Result<Value, String> {
    let count = foretold(&input["posterior_shape"], &input["posterior_rate"], &input["exposure"])?;
    let most = input["kmax"].as_u64().ok_or("no kmax")?;
    let points = expected["quantiles"]["p"].as_array().ok_or("no points")?;
    let quantiles: Vec<u64> = points
        .iter()
        .map(|p| count.quantile(number(p)?).map_err(|e| e.to_string()))
        .collect::<Result<_, _>>()?;
    Ok(json!({
        "mean": count.mean(),
        "variance": count.variance(),
        "pmf": (0..=most).map(|k| count.pmf(k)).collect::<Vec<_>>(),
        "prob_at_least_1": count.at_least(1),
        "quantiles": { "p": points, "k": quantiles },
    }))
}

fn more_often(input: &Value) -> Result<Value, String> {
    let side = |key: &str| foretold(&input[key][0], &input[key][1], &input["exposure"]);
    let [a, same, b] = who_has_more(side("a")?, side("b")?);
    Ok(json!({ "prob_ya_gt_yb": a, "prob_equal": same, "prob_yb_gt_ya": b }))
}
