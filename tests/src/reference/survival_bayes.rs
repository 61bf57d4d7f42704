//! Posteriors of exponential and Weibull waits.

use super::Topic;
use super::case::{number, numbers, text, waits};
use restwater_waits::{
    Accuracy, GammaPosterior, Law, PRIORS, Priors, Record, ScalePrior, Settings, WaitLaw, WaitPosterior,
};
use serde_json::{Value, json};

pub const TOPIC: Topic = Topic { name: "survival_bayes", compute, tolerance: |_| None };

fn compute(case: &Value) -> Result<Value, String> {
    match text(case, "model")? {
        "weibull" => weibull(case),
        "exponential" => conjugate(case, 1.0),
        "weibull_known_shape" => conjugate(case, number(case, "shape")?),
        other => Err(format!("no model {other}")),
    }
}

/// The times at which the case asks for the predictive survival.
fn times(case: &Value) -> Result<Vec<f64>, String> {
    numbers(&case["expected"]["predictive_survival"], "t")
}

fn conjugate(case: &Value, power: f64) -> Result<Value, String> {
    let (shape, rate) = (number(case, "prior_gamma_shape")?, number(case, "prior_gamma_rate")?);
    let found = GammaPosterior::new(shape, rate, power, &waits(case)?).map_err(|e| e.to_string())?;
    let (low, high) = found.interval(0.95).map_err(|e| e.to_string())?;
    let t = times(case)?;
    let s: Vec<f64> = t.iter().map(|&t| found.survival(t)).collect();
    Ok(json!({
        "posterior_shape": found.shape,
        "posterior_rate": found.rate,
        "sum_t_pow_k": found.rate - rate,
        "posterior_mean_rate": found.mean(),
        "rate_ci95": [low, high],
        "predictive_survival": {"t": t, "s": s},
        "predictive_median": found.median(),
    }))
}

fn weibull(case: &Value) -> Result<Value, String> {
    let pair = |key: &str| {
        let list = numbers(&case["input"]["prior"], key)?;
        <[f64; 2]>::try_from(list).map_err(|_| format!("{key} is not a pair"))
    };
    let [shape_mean, shape_sd] = pair("log_shape_normal")?;
    let [mean, sd] = pair("log_scale_normal")?;
    let priors = Priors {
        scale: ScalePrior::LogNormal { mean, sd },
        concentration: (shape_mean, shape_sd),
        somebody_always: [1.0; 4],
        models: [0.0, 1.0, 0.0, 0.0],
        ..PRIORS
    };
    let settings = Settings { priors, accuracy: Accuracy::Reference, ..Settings::default() };
    let waits = waits(case)?;
    let found = WaitPosterior::new(&Record::of_today(&waits), &settings).map_err(|e| e.to_string())?;
    let weibull = |of: fn(f64, f64) -> f64| {
        found.expect(|law, _| match law {
            Law::Weibull { shape, scale } => of(*shape, *scale),
            _ => f64::NAN,
        })
    };
    let spread = |mean: f64, square: f64| (square - mean * mean).sqrt();
    let (log_shape, log_scale) = (weibull(|k, _| k.ln()), weibull(|_, s| s.ln()));
    let t = times(case)?;
    let s: Vec<f64> = t.iter().map(|&t| found.expect(|law, _| 1.0 - law.bitten_by(t))).collect();
    Ok(json!({
        "mean_shape": weibull(|k, _| k),
        "mean_scale": weibull(|_, s| s),
        "mean_log_shape": log_shape,
        "sd_log_shape": spread(log_shape, weibull(|k, _| k.ln() * k.ln())),
        "mean_log_scale": log_scale,
        "sd_log_scale": spread(log_scale, weibull(|_, s| s.ln() * s.ln())),
        "mean_median": found.expect(|law, _| law.quantile(0.5)),
        "predictive_survival": {"t": t, "s": s},
        "log_evidence": found.ln_evidence(),
    }))
}
