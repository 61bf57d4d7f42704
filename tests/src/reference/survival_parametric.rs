//! Maximum likelihood with right censoring.

use super::Topic;
use super::case::{numbers, text, waits};
use restwater_waits::{Fit, Law, Model, WaitLaw, fit, fit_two_groups};
use serde_json::{Value, json};

pub const TOPIC: Topic = Topic {
    name: "survival_parametric",
    compute,
    tolerance: |path| path.starts_with("cov_").then_some("rel_cov"),
};

fn compute(case: &Value) -> Result<Value, String> {
    if case["input"].get("group_is_6mp").is_some() {
        return two_groups(case);
    }
    let model = match text(case, "dist")? {
        "exponential" => Model::Exponential,
        "weibull" => Model::Weibull,
        "lognormal" => Model::LogNormal,
        "gamma" => Model::Gamma,
        "loglogistic" => Model::LogLogistic,
        other => return Err(format!("no model {other}")),
    };
    let found = fit(model, &waits(case)?).map_err(|e| e.to_string())?;
    let mut out = parameters(&found);
    out["loglik"] = json!(found.ln_likelihood);
    out["median"] = json!(found.law.quantile(0.5));
    out["quantile_90"] = json!(found.law.quantile(0.9));
    out["mean"] = json!(found.law.mean());
    Ok(out)
}

fn parameters(found: &Fit) -> Value {
    match found.law {
        Law::Exponential { rate } => {
            json!({"rate": rate, "se_log_rate": found.covariance[0][0].sqrt()})
        }
        Law::Weibull { shape, scale } => json!({
            "shape": shape,
            "scale": scale,
            "survreg_intercept": scale.ln(),
            "survreg_scale": 1.0 / shape,
            "cov_log_shape_log_scale": found.covariance,
        }),
        Law::LogNormal { mu, sigma } => json!({"mu": mu, "sigma": sigma}),
        Law::Gamma { shape, rate } => json!({"shape": shape, "rate": rate}),
        Law::LogLogistic { alpha, beta } => json!({"alpha": alpha, "beta": beta}),
    }
}

fn two_groups(case: &Value) -> Result<Value, String> {
    let second: Vec<bool> = numbers(&case["input"], "group_is_6mp")?.iter().map(|&g| g != 0.0).collect();
    let found = fit_two_groups(&waits(case)?, &second).map_err(|e| e.to_string())?;
    Ok(json!({
        "intercept": found.intercept,
        "beta_6mp": found.effect,
        "survreg_scale": found.spread,
        "loglik": found.ln_likelihood,
        "se_intercept": found.intercept_error,
        "se_beta": found.effect_error,
        "time_ratio": found.time_ratio(),
        "hazard_ratio": found.hazard_ratio(),
        "lr_chisq_vs_common": found.likelihood_ratio,
    }))
}
