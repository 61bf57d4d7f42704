//! Water, exact units, spheres under water and the nominal tables.

use super::Topic;
use super::case::number;
use crate::second_methods::sink;
use restwater_bench::material::{Material, weight_in_water};
use restwater_bench::water::{DensityFormula, density, dynamic_viscosity};
use restwater_bench::{shot, units};
use restwater_match_day::weight::Weight;
use serde_json::{Value, json};

pub const TOPIC: Topic = Topic { name: "physics", compute, tolerance };

fn tolerance(path: &str) -> Option<&'static str> {
    match path {
        _ if path.starts_with("density_") => Some("abs_density_same_formula"),
        "dynamic_viscosity_pa_s" => Some("rel_viscosity"),
        _ => None,
    }
}

fn compute(case: &Value) -> Result<Value, String> {
    match case["input"]["kind"].as_str() {
        None => water(case),
        Some("exact_units") => exact_units(case),
        Some("sphere_of_mass") => sphere(case),
        Some("sphere_terminal_speed") => terminal(case),
        Some("nominal_density") => Ok(densities()),
        Some("nominal_shot_grams") => Ok(shots()),
        Some(other) => Err(format!("no answer to {other}")),
    }
}

fn water(case: &Value) -> Result<Value, String> {
    let t = number(case, "temperature_c")?;
    let at = |formula| density(t, formula).map_err(|e| e.to_string());
    Ok(json!({
        "density_iapws95": at(DensityFormula::Iapws95)?,
        "density_kell": at(DensityFormula::Kell)?,
        "density_tanaka": at(DensityFormula::Tanaka)?,
        "dynamic_viscosity_pa_s": dynamic_viscosity(t).map_err(|e| e.to_string())?,
    }))
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
        "yard_m": units::YARD_M,
        "foot_m": units::FOOT_M,
        "inch_m": units::INCH_M,
        "pound_kg": units::POUND_KG,
        "ounce_g": units::OUNCE_G,
        "dram_g": units::DRAM_G,
        "lb_oz_example": {"lb": lb, "oz": oz, "kg": entered.grams() / 1000.0},
        "kg_to_lb_oz": {"kg": grams.grams() / 1000.0, "lb": (ounces / 16.0).floor(), "oz": ounces % 16.0},
        "40_yd_m": 40.0 * units::YARD_M,
    }))
}

fn material(case: &Value) -> Result<(f64, Material), String> {
    Ok((number(case, "mass_g")?, Material::Other(number(case, "density")?)))
}

fn sphere(case: &Value) -> Result<Value, String> {
    let (grams, material) = material(case)?;
    let sphere = sink::sphere(grams, material).map_err(|e| e.to_string())?;
    Ok(json!({
        "diameter_mm": sphere.diameter_mm,
        "volume_ml": sphere.volume_ml,
        "weight_in_water_g_at_10c": weight_in_water(grams, material, 10.0).map_err(|e| e.to_string())?,
    }))
}

fn terminal(case: &Value) -> Result<Value, String> {
    let (grams, material) = material(case)?;
    let fall = sink::terminal(grams, material, number(case, "water_c")?).map_err(|e| e.to_string())?;
    Ok(json!({"speed_m_s": fall.speed, "reynolds": fall.reynolds}))
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
