//! Weights in words.

use crate::figures::trimmed;
use crate::wording::Wording;
use restwater_bench::units::OUNCE_G;
use restwater_log::WeightUnit;
use restwater_match_day::typed::{Scales, TypedWeight};
use restwater_match_day::weight::Weight;
use restwater_session::MatchSetup;

/// Metric estimates are rounded to this many grams.
const ROUND_G: f64 = 10.0;
/// Estimates of this many pounds or more are said in whole pounds.
const ROUGH_LB: f64 = 10.0;
/// Estimates of this many grams or more are said in half kilos.
const ROUGH_KG_G: f64 = 5_000.0;
const POUND_G: f64 = 16.0 * OUNCE_G;

/// A number of a unit as a weight, limited to the range of a log entry.
pub fn units(unit: WeightUnit, count: i64) -> Weight {
    match unit {
        WeightUnit::Drams => Weight::Drams(count),
        WeightUnit::Grams => Weight::Grams(count),
    }
}

/// A guess in a unit: one in the other unit is converted, to the ounce or to ten grams. Never used for a weight that was read
/// on scales.
pub fn guess_in(weight: Weight, unit: WeightUnit) -> Weight {
    match (weight, unit) {
        (Weight::Drams(_), WeightUnit::Drams) | (Weight::Grams(_), WeightUnit::Grams) => weight,
        (_, WeightUnit::Grams) => Weight::Grams((libm::round(weight.grams() / 10.0) as i64 * 10).max(10)),
        (_, WeightUnit::Drams) => {
            Weight::Drams((libm::round(weight.grams() / Weight::Drams(16).grams()) as i64 * 16).max(16))
        }
    }
}

/// The usual smallest mark of scales of a unit (common practice, no source).
pub(super) fn usual_mark(unit: WeightUnit) -> Weight {
    match unit {
        WeightUnit::Drams => Weight::Drams(16),
        WeightUnit::Grams => Weight::Grams(10),
    }
}

/// Changes the unit of the scales. Guesses are converted; limits are the organiser's and stay as they were given.
pub fn weigh_in_unit(setup: &mut MatchSetup, unit: WeightUnit) {
    (setup.unit, setup.mark) = (unit, usual_mark(unit));
    for class in &mut setup.classes {
        class.guess = guess_in(class.guess, unit);
    }
}

/// An estimate in the unit of the match, as exact as an estimate can be: "12 lb", "7 lb 3 oz", "5.5 kg", "350 g".
pub(crate) fn estimate(words: &Wording, unit: WeightUnit, grams: f64) -> String {
    match rounded(unit, grams) {
        Weight::Grams(g) if g >= ROUGH_KG_G as i64 => {
            let halves = trimmed(g as f64 / 1_000.0, 1);
            format!("{} kg", words.decimals(&halves))
        }
        weight => short(words, weight),
    }
}

/// An estimate as it is said: to the ounce or to ten grams, from ten pounds or five kilos on to the pound or to half a kilo.
pub(super) fn rounded(unit: WeightUnit, grams: f64) -> Weight {
    let grams = grams.max(0.0);
    match unit {
        WeightUnit::Drams if grams >= ROUGH_LB * POUND_G => {
            Weight::Drams(256 * libm::round(grams / POUND_G) as i64)
        }
        WeightUnit::Grams if grams >= ROUGH_KG_G => Weight::Grams(500 * libm::round(grams / 500.0) as i64),
        WeightUnit::Drams => Weight::Drams(16 * libm::round(grams / OUNCE_G) as i64),
        WeightUnit::Grams => Weight::Grams((libm::round(grams / ROUND_G) * ROUND_G) as i64),
    }
}

/// To the dram or the gram.
pub(super) fn finest(unit: WeightUnit, grams: f64) -> Weight {
    match unit {
        WeightUnit::Drams => Weight::Drams(libm::round(grams / Weight::Drams(1).grams()) as i64),
        WeightUnit::Grams => Weight::Grams(libm::round(grams) as i64),
    }
}

/// A weight without the zero parts at either end: "50 lb", "8 oz", "1 lb 8 oz", "4 lb 0 oz 8 dr", "20 kg".
pub fn short(words: &Wording, weight: Weight) -> String {
    let Some((lb, oz, dr)) = weight.as_lb_oz_dr() else {
        return match weight {
            Weight::Grams(g) if g != 0 && g % 1_000 == 0 => format!("{} kg", g / 1_000),
            _ => words.decimals(&weight.to_string()),
        };
    };
    let parts = [(lb, "lb"), (oz, "oz"), (dr, "dr")];
    let (Some(first), Some(last)) =
        (parts.iter().position(|(n, _)| *n != 0), parts.iter().rposition(|(n, _)| *n != 0))
    else {
        return "0 lb".into();
    };
    let parts: Vec<String> = parts[first..=last].iter().map(|(n, unit)| format!("{n} {unit}")).collect();
    crate::wording::quantity(&parts)
}

/// The message of the key that goes to the next part of a weight being typed.
pub(crate) fn unit_id(typed: &TypedWeight) -> &'static str {
    match (typed.scales(), typed.part()) {
        _ if typed.is_at_last_part() => "fish-clear",
        (Scales::Imperial, 0) => "fish-next-lb",
        (Scales::Imperial, _) => "fish-next-oz",
        (Scales::Metric, _) => "fish-next-kg",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn estimates_are_rounded_to_the_ounce_or_ten_grams_and_large_ones_to_the_pound_or_half_a_kilo() {
        let drams =
            |lb: f64, oz: f64| estimate(&Wording::new(), WeightUnit::Drams, 453.592_37 * lb + OUNCE_G * oz);
        assert_eq!(drams(9.0, 7.4), "9 lb\u{a0}7 oz");
        assert_eq!(
            (drams(12.0, 7.4), drams(29.0, 14.0), drams(9.0, 15.6)),
            ("12 lb".into(), "30 lb".into(), "10 lb".into())
        );
        let grams = |grams| estimate(&Wording::new(), WeightUnit::Grams, grams);
        assert_eq!(
            (grams(4_637.0), grams(5_740.0), grams(23_770.0)),
            ("4.640 kg".into(), "5.5 kg".into(), "24 kg".into())
        );
        assert_eq!(estimate(&Wording::new(), WeightUnit::Drams, OUNCE_G * 15.6), "1 lb");
        assert_eq!(estimate(&Wording::new(), WeightUnit::Grams, -3.0), "0 g");
    }

    #[test]
    fn weights_are_worded_without_zero_parts() {
        assert_eq!(short(&Wording::new(), Weight::Drams(12_800)), "50 lb");
        assert_eq!(short(&Wording::new(), Weight::Drams(384)), "1 lb\u{a0}8 oz");
        assert_eq!(short(&Wording::new(), Weight::Drams(4)), "4 dr");
        assert_eq!(short(&Wording::new(), Weight::Drams(4 * 256 + 8)), "4 lb\u{a0}0 oz\u{a0}8 dr");
        assert_eq!(short(&Wording::new(), Weight::Drams(0)), "0 lb");
        assert_eq!(short(&Wording::new(), Weight::Grams(20_000)), "20 kg");
        assert_eq!(short(&Wording::new(), Weight::Grams(350)), "350 g");
    }
}
