//! Common practice at the bench: cutting down ties, and the lead rule.

use super::case::{numbers, text};
use restwater_bench::cut_down::{CutDownError, Need, plan};
use restwater_bench::hooklength::Hooklength;
use restwater_bench::material::Material;
use restwater_bench::units::{LineLength, OUNCE_G};
use restwater_caution::lead_rule::lead_rule;
use restwater_caution::table::Region;
use serde_json::{Value, json};

/// The cases give only lengths, so all hooklengths have the same line and hook.
fn plain(length: LineLength) -> Hooklength {
    Hooklength { length, diameter_um: 120, hook_size: 16, hair_mm: None }
}

/// Kind `cut_down`: lengths in inches.
pub fn cut_down(case: &Value) -> Result<Value, String> {
    let inches = |key: &str| -> Result<Vec<LineLength>, String> {
        numbers(&case["input"], key)?
            .into_iter()
            .map(|i| LineLength::from_inches(i).map_err(|e| e.to_string()))
            .collect()
    };
    let ties: Vec<Hooklength> = inches("ties_in")?.into_iter().map(plain).collect();
    let needs: Vec<Need> = inches("needs_in")?
        .into_iter()
        .map(|length| Need { length, diameter_um: None, hook_size: None })
        .collect();
    match plan(&ties, &needs, LineLength::default()) {
        Ok(plan) => {
            let mut used: Vec<f64> = plan.cuts.iter().map(|c| c.tie.length.inches()).collect();
            used.sort_by(f64::total_cmp);
            Ok(json!({"waste_in": plan.waste.inches(), "used_ties_in": used}))
        }
        Err(why) => says(case, why),
    }
}

/// The words of the error before its colon, after checking that it names a need of the case.
fn says(case: &Value, why: CutDownError) -> Result<Value, String> {
    let (CutDownError::NoTieLongEnough { need, .. }
    | CutDownError::NoTieOfThatKind { need }
    | CutDownError::NotEnoughTies { need, .. }) = why
    else {
        return Err(why.to_string());
    };
    let asked = numbers(&case["input"], "needs_in")?;
    let message = why.to_string();
    let named = asked.contains(&need.length.inches()) && message.contains(&need.length.to_string());
    let words = message.split(':').next().filter(|_| named);
    words.map(|w| json!({"error": w})).ok_or_else(|| format!("names no need of the case: {message}"))
}

/// "2/3", or a whole number.
fn fraction(text: &str) -> Result<f64, String> {
    let (top, bottom) = text.split_once('/').unwrap_or((text, "1"));
    let number = |part: &str| part.parse::<f64>().map_err(|e| format!("{text}: {e}"));
    Ok(number(top)? / number(bottom)?)
}

/// Kind `lead_rule`: ounces as a fraction, a material and a region.
pub fn lead(case: &Value) -> Result<Value, String> {
    let grams = fraction(text(case, "oz")?)? * OUNCE_G;
    let material = match text(case, "material")? {
        "lead" => Material::Lead,
        "tungsten" => Material::Tungsten,
        other => return Err(format!("no material {other}")),
    };
    let regions = match text(case, "region")? {
        "England and Wales" => [Region::England, Region::Wales],
        other => return Err(format!("no region {other}")),
    };
    let mut caution = None;
    for region in regions {
        let says = lead_rule(grams, material, region).map_err(|e| e.to_string())?.id().is_some();
        if caution.is_some_and(|other| other != says) {
            return Err("the two countries differ".into());
        }
        caution = Some(says);
    }
    Ok(json!({"g": grams, "caution": caution}))
}
