//! Compound laws: total weight of a random number of fish.

use super::Topic;
use crate::second_methods::compound::{CountLaw, GammaWeight, compound_gamma_cdf, compound_moments, panjer};
use restwater_compare::gamma_poisson::Foretold;
use serde_json::{Value, json};

/// See [`Topic`].
pub const TOPIC: Topic = Topic { name: "compound", compute, tolerance: |_| None };

fn compute(case: &Value) -> Result<Value, String> {
    let input = &case["input"];
    let count = count(&input["count"])?;
    if input["severity_pmf"].is_null() { gamma_weights(count, input) } else { tabled(count, input) }
}

fn count(value: &Value) -> Result<CountLaw, String> {
    if let Some(mean) = value["poisson"].as_f64() {
        return CountLaw::poisson(mean).map_err(|e| e.to_string());
    }
    let law = &value["negative_binomial"];
    let size = law["size"].as_f64().ok_or("no size")?;
    let prob = law["prob"].as_f64().ok_or("no prob")?;
    Foretold::negative_binomial(size, prob).map(CountLaw::NegativeBinomial).map_err(|e| e.to_string())
}

fn numbers(value: &Value) -> Result<Vec<f64>, String> {
    serde_json::from_value(value.clone()).map_err(|e| e.to_string())
}

fn tabled(count: CountLaw, input: &Value) -> Result<Value, String> {
    let severity = numbers(&input["severity_pmf"])?;
    let most = input["max"].as_u64().ok_or("no max")?;
    let moment =
        |power: i32| -> f64 { severity.iter().enumerate().map(|(j, p)| (j as f64).powi(power) * p).sum() };
    let (mean, variance) = compound_moments(count, moment(1), moment(2) - moment(1).powi(2));
    let most = usize::try_from(most).map_err(|e| e.to_string())?;
    let pmf = panjer(count, &severity, most).map_err(|e| e.to_string())?;
    Ok(json!({ "pmf": pmf, "mean": mean, "variance": variance }))
}

fn gamma_weights(count: CountLaw, input: &Value) -> Result<Value, String> {
    let weight = &input["weight_gamma"];
    let shape = weight["shape"].as_f64().ok_or("no shape")?;
    let scale = weight["scale"].as_f64().ok_or("no scale")?;
    let one = GammaWeight::new(shape, scale).map_err(|e| e.to_string())?;
    let (mean, variance) = compound_moments(count, one.moments().0, one.moments().1);
    let cdf: Vec<f64> = numbers(&input["x"])?.iter().map(|&x| compound_gamma_cdf(count, one, x)).collect();
    Ok(json!({ "prob_zero": count.pmf(0), "cdf": cdf, "mean": mean, "variance": variance }))
}
