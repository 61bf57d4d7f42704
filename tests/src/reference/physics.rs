//! Water, exact units, weights under water and the nominal tables.

use super::Topic;
use super::case::number;
use restwater_bench::material::{Material, weight_in_water};
use restwater_bench::shot;
use restwater_bench::units::{self, LineLength};
use restwater_bench::water::density;
use restwater_match_day::weight::Weight;
use restwater_swim::range::{METRES_PER_YARD, metres};
use serde_json::{Value, json};

pub const TOPIC: Topic = Topic { name: "physics", compute, tolerance };

fn tolerance(path: &str) -> Option<&'static str> {
    path.starts_with("density_").then_some("abs_density_same_formula")
}

fn compute(case: &Value) -> Result<Value, String> {
    match case["input"]["kind"].as_str() {
        None => water(case),
        Some("exact_units") => exact_units(case),
        Some("sphere_of_mass") => sphere(case),
        Some("nominal_density") => Ok(densities()),
        Some("nominal_shot_grams") => Ok(shots()),
        Some(other) => Err(format!("no answer to {other}")),
    }
}

fn water(case: &Value) -> Result<Value, String> {
    Ok(json!({"density_iapws95": density(number(case, "temperature_c")?).map_err(|e| e.to_string())?}))
}

/// The masses of the examples are read from `expected`; everything else about them is computed.
fn exact_units(case: &Value) -> Result<Value, String> {
    let asked = |key: &str, part: &str| {
        case["expected"][key][part].as_f64().ok_or_else(|| format!("no {part} in {key}"))
    };
    let (lb, oz) = (asked("lb_oz_example", "lb")?, asked("lb_oz_example", "oz")?);
    let entered = Weight::lb_oz_dr(lb as i64, oz as i64, 0).map_err(|e| e.to_string())?;
    let kg = asked("kg_to_lb_oz", "kg")?;
    let grams: Weight = format!("{kg} kg").parse().map_err(|e| format!("{e}"))?;
    let ounces = grams.grams() / units::OUNCE_G;
    Ok(json!({
        "yard_m": METRES_PER_YARD,
        "foot_m": LineLength::from_inches(12.0).map_err(|e| e.to_string())?.metres(),
        "inch_m": units::INCH_M,
        "pound_kg": units::POUND_KG,
        "ounce_g": units::OUNCE_G,
        "dram_g": Weight::Drams(1).grams(),
        "lb_oz_example": {"lb": lb, "oz": oz, "kg": entered.grams() / 1000.0},
        "kg_to_lb_oz": {"kg": grams.grams() / 1000.0, "lb": (ounces / 16.0).floor(), "oz": ounces % 16.0},
        "40_yd_m": metres(40.0),
    }))
}

fn sphere(case: &Value) -> Result<Value, String> {
    let (grams, material) = (number(case, "mass_g")?, Material::Other(number(case, "density")?));
    let under = weight_in_water(grams, material, 10.0).map_err(|e| e.to_string())?;
    Ok(json!({"weight_in_water_g_at_10c": under}))
}

fn densities() -> Value {
    json!({
        "lead": Material::Lead.density(),
        "tungsten": Material::Tungsten.density(),
        "nylon": Material::Nylon.density(),
        "fluorocarbon_pvdf": Material::Fluorocarbon.density(),
        "uhmwpe_braid": Material::Braid.density(),
        "brass": Material::Brass.density(),
    })
}

fn shots() -> Value {
    let sizes = shot::starting_table();
    sizes.iter().map(|s| (s.name.replace(". ", ""), json!(s.grams))).collect::<serde_json::Map<_, _>>().into()
}
