//! How much faster one group of casts gets bites: the ratio of hazards in the model of waits.

use super::Topic;
use super::case::{number, numbers, text, waits};
use restwater_waits::{
    FED_TIMES, FedPrior, Record, SHAPE_PRIORS, Settings, ShapePriors, Shapes, WaitPosterior,
};
use serde_json::{Value, json};
use std::sync::Arc;

pub const TOPIC: Topic = Topic { name: "fed_casts", compute, tolerance: |_| None };

fn compute(case: &Value) -> Result<Value, String> {
    let times = plan(case)?.fed_times().ok_or("too few casts on a side")?;
    match text(case, "model")? {
        "constant" => Ok(json!({"chances": times.map(|(_, chance)| chance)})),
        "shapes" => {
            let ratio = times.iter().map(|(ratio, chance)| chance * ratio.ln()).sum::<f64>().exp();
            Ok(json!({"ratio": ratio}))
        }
        other => Err(format!("no model {other}")),
    }
}

fn plan(case: &Value) -> Result<WaitPosterior, String> {
    let (waits, groups) = (waits(case)?, numbers(&case["input"], "fed")?);
    let fed: Vec<bool> = groups.iter().map(|group| *group != 0.0).collect();
    let prior = <[f64; FED_TIMES]>::try_from(numbers(&case["input"], "prior")?)
        .map_err(|prior| format!("{} weights of a ratio, not {FED_TIMES}", prior.len()))?;
    // The cases are for days that do not change.
    let settings = Settings { fed: FedPrior(prior), changing: 0.0, ..Settings::default() };
    let record = Record { fed: &fed, ..Record::of_today(&waits) };
    let plan = if text(case, "model")? == "constant" {
        let pace = (number(case, "mean_wait")?, number(case, "ln_sd")?);
        let only =
            ShapePriors { constant: 1.0, broad: 0.0, even: 0.0, two: 0.0, stray: 0.0, pace, ..SHAPE_PRIORS };
        WaitPosterior::with_shapes(&record, &settings, Arc::new(Shapes::new(&only)))
    } else {
        WaitPosterior::new(&record, &settings)
    };
    plan.map_err(|e| e.to_string())
}
