//! Bites per minute for a leave time, and the best leave time, for given distributions of the wait.

use super::Topic;
use super::case::{number, numbers, text, waits};
use restwater_waits::{
    Always, BestLeave, Costs, Even, Law, Lomax, SurvivalCurve, TwoRates, WaitLaw, WithNobodyHome,
    best_empirical, best_leave, empirical_rates, rate_at,
};
use serde_json::{Value, json};

pub const TOPIC: Topic = Topic {
    name: "renewal",
    compute,
    tolerance: |path| match path {
        "tau_opt" => Some("rel_tau"),
        "rate_opt" | "F_at_opt" | "mean_time_at_opt" => Some("rel_rate"),
        _ => None,
    },
};

fn compute(case: &Value) -> Result<Value, String> {
    // The cases have no extra time for a bite.
    let costs = Costs::new(number(case, "turnaround")?, 0.0).map_err(|e| e.to_string())?;
    if case["input"].get("dist").is_none() {
        return empirical(case, costs);
    }
    let n = |key| number(case, key);
    let cure = |law| Ok::<_, String>(WithNobodyHome { law, never: 1.0 - n("p")? });
    match text(case, "dist")? {
        "exponential" => answer(case, costs, &Law::Exponential { rate: n("rate")? }),
        "weibull" => answer(case, costs, &Law::Weibull { shape: n("shape")?, scale: n("scale")? }),
        "lognormal" => answer(case, costs, &Law::LogNormal { mu: n("mu")?, sigma: n("sigma")? }),
        "cure_exponential" => answer(case, costs, &cure(Law::Exponential { rate: n("rate")? })?),
        "cure_weibull" => {
            answer(case, costs, &cure(Law::Weibull { shape: n("shape")?, scale: n("scale")? })?)
        }
        "lomax" => {
            let law = Lomax { shape: n("shape")?, scale: n("scale")? };
            let mut out = answer(case, costs, &law)?;
            if law.shape == 2.0 {
                lomax_closed_form(&law, costs, &mut out)?;
            }
            Ok(out)
        }
        "hyperexponential" => {
            answer(case, costs, &TwoRates { weight: n("w")?, first: n("r1")?, second: n("r2")? })
        }
        "uniform" => answer(case, costs, &Even { low: n("low")?, high: n("high")? }),
        "deterministic" => answer(case, costs, &Always { minutes: n("value")? }),
        other => Err(format!("no law {other}")),
    }
}

fn answer(case: &Value, costs: Costs, law: &impl WaitLaw) -> Result<Value, String> {
    let mut out = match best_leave(law, costs) {
        BestLeave::Interior { minutes, rate } => json!({
            "kind": "interior",
            "tau_opt": minutes,
            "rate_opt": rate,
            "F_at_opt": law.bitten_by(minutes),
            "mean_time_at_opt": law.mean_until(minutes),
        }),
        BestLeave::AtTheLast { minutes, rate } => {
            json!({"kind": "boundary", "tau_opt": minutes, "rate_opt": rate})
        }
        BestLeave::Never { limit } => json!({"kind": "none_monotone_increasing", "rate_limit": limit}),
    };
    if case["input"].get("tau").is_some() {
        let times = numbers(&case["input"], "tau")?;
        out["rate_at_tau"] = times.iter().map(|&t| rate_at(law, costs, t)).collect();
    }
    Ok(out)
}

/// The case gives its closed form in words; it is repeated only if the search agrees with it.
fn lomax_closed_form(law: &Lomax, costs: Costs, out: &mut Value) -> Result<(), String> {
    let k = costs.turn_round_min / law.scale;
    let tau = law.scale * (k + (k * k + 2.0 * k).sqrt());
    let rate = 2.0 / (law.scale + tau);
    let agrees = |key: &str, closed: f64| {
        out[key].as_f64().is_some_and(|searched| (searched / closed - 1.0).abs() < 1e-9)
    };
    if !agrees("tau_opt", tau) || !agrees("rate_opt", rate) {
        return Err(format!("the search disagrees with the closed form: {tau}, {rate}"));
    }
    out["closed_form"] = json!("tau = sigma*(k+sqrt(k^2+2k)), k=c/sigma; rate = 2/(sigma+tau)");
    Ok(())
}

fn empirical(case: &Value, costs: Costs) -> Result<Value, String> {
    let curve = SurvivalCurve::new(&waits(case)?).map_err(|e| e.to_string())?;
    let rates = empirical_rates(&curve, costs);
    let best = best_empirical(&curve, costs).ok_or("no bites")?;
    Ok(json!({
        "kind": "empirical",
        "event_times": rates.iter().map(|r| r.0).collect::<Vec<_>>(),
        "rate_at_event_times": rates.iter().map(|r| r.1).collect::<Vec<_>>(),
        "tau_opt": best.0,
        "rate_opt": best.1,
    }))
}
