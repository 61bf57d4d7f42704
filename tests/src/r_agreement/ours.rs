//! Our side of the comparison, with the names that `agree.R` uses.

use super::data::Set;
use restwater_compare::Limits;
use restwater_compare::binomial::{Alternative, binomial_test, clopper_pearson};
use restwater_compare::log_rank::log_rank;
use restwater_compare::poisson_rates::{Tally, conditional_test, garwood, rate_ratio};
use restwater_waits::{Limits as CurveLimits, Step, SurvivalCurve, Wait};
use std::collections::BTreeMap;

struct Figures(BTreeMap<String, f64>);

impl Figures {
    fn put(&mut self, name: &str, value: f64) {
        self.0.insert(name.to_owned(), value);
    }

    fn list(&mut self, name: &str, values: &[f64]) {
        if let [one] = values {
            return self.put(name, *one);
        }
        for (i, value) in values.iter().enumerate() {
            self.put(&format!("{name}.{i}"), *value);
        }
    }

    fn pair(&mut self, name: &str, limits: Limits) {
        self.list(name, &[limits.low, limits.high]);
    }
}

/// All figures of a set.
pub fn figures(set: &Set) -> Result<BTreeMap<String, f64>, String> {
    let mut out = Figures(BTreeMap::new());
    ranks(set, &mut out)?;
    curve(&set.waits(), &mut out)?;
    rates(set, &mut out)?;
    shares(set, &mut out)?;
    Ok(out.0)
}

fn words(e: impl std::fmt::Display) -> String {
    e.to_string()
}

fn ranks(set: &Set, out: &mut Figures) -> Result<(), String> {
    let test = log_rank(&set.side(1), &set.side(2)).map_err(words)?;
    out.list("logrank.observed", &test.observed);
    out.list("logrank.expected", &test.expected);
    out.put("logrank.variance", test.variance);
    out.put("logrank.chisq", test.chi_square().ok_or("no chi-square")?);
    Ok(())
}

fn curve(waits: &[Wait], out: &mut Figures) -> Result<(), String> {
    let curve = SurvivalCurve::new(waits).map_err(words)?;
    let steps = curve.steps();
    let of = |f: fn(&Step) -> f64| steps.iter().map(f).collect::<Vec<_>>();
    out.list("km.minutes", &of(|s| s.minutes));
    out.list("km.survival", &of(|s| s.survival));
    out.list("km.error", &steps.iter().filter_map(Step::standard_error).collect::<Vec<_>>());
    let limits = curve.limits(CurveLimits::LogLog, 0.95).map_err(words)?;
    let end = |f: fn((f64, f64)) -> f64| limits.iter().flatten().map(|&l| f(l)).collect::<Vec<_>>();
    out.list("km.low", &end(|l| l.0));
    out.list("km.high", &end(|l| l.1));
    if steps.iter().all(|s| (s.survival - 0.5).abs() > 1e-8) {
        out.put("km.median", curve.quantile(0.5).unwrap_or(f64::NAN));
    }
    Ok(())
}

fn tally(waits: &[Wait]) -> Tally {
    let bites = waits.iter().filter(|w| w.is_bite()).count() as u64;
    Tally { bites, time: waits.iter().map(|w| w.minutes()).sum() }
}

fn rates(set: &Set, out: &mut Figures) -> Result<(), String> {
    let (a, b) = (tally(&set.side(1)), tally(&set.side(2)));
    out.put("poisson.p", conditional_test(a, b).map_err(words)?.two_sided_min_likelihood);
    out.pair("poisson.ratio", rate_ratio(a, b, 0.95).map_err(words)?.limits);
    let one = garwood(a.bites, 0.95).map_err(words)?;
    out.list("poisson.one", &[one.low / a.time, one.high / a.time]);
    Ok(())
}

fn shares(set: &Set, out: &mut Figures) -> Result<(), String> {
    let waits = set.waits();
    let (bites, casts) = (waits.iter().filter(|w| w.is_bite()).count() as u64, waits.len() as u64);
    out.put("binomial.p", binomial_test(bites, casts, 0.37, Alternative::TwoSided).map_err(words)?);
    out.pair("binomial.limits", clopper_pearson(bites, casts, 0.95).map_err(words)?);
    Ok(())
}
