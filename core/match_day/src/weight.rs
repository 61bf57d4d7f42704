//! Weights as they are entered: whole drams or whole grams, never one turned into the other.
//!
//! 1 lb = 453.59237 g exactly (international yard and pound agreement, 1959; Weights and Measures
//! Act 1985), 1 lb = 16 oz = 256 dr, so 1 dr = 1.7718451953125 g exactly: a whole number of
//! 10^-13 g. A total in mixed units is kept in that unit and loses nothing.

use serde::{Deserialize, Serialize};
use std::fmt;

/// Drams in an ounce, and ounces in a pound.
const SIXTEEN: i64 = 16;
/// Drams in a pound.
const DRAMS_PER_LB: i64 = SIXTEEN * SIXTEEN;
/// 10^-13 g in a gram.
const PER_GRAM: i128 = 10_000_000_000_000;
/// 10^-13 g in a dram.
const PER_DRAM: i128 = 17_718_451_953_125;

/// A weight in the unit it was read in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Weight {
    /// Whole drams (scales in pounds and ounces).
    Drams(i64),
    /// Whole grams (metric scales).
    Grams(i64),
}

/// Why a weight can't be used.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum WeightError {
    /// Below zero.
    #[error("a weight of {0}, below 0")]
    Negative(String),
    /// Zero.
    #[error("a weight of 0")]
    Zero,
    /// More than any fish or net here.
    #[error("{weight} is more than {most}")]
    Absurd {
        /// What was entered.
        weight: String,
        /// The most that is taken.
        most: String,
    },
    /// Sixteen ounces are a pound, sixteen drams an ounce.
    #[error("{0} must be below 16 in pounds, ounces and drams")]
    SixteenOrMore(&'static str),
    /// No unit, so it could be pounds and ounces or pounds with a decimal.
    #[error("\"{0}\" has no unit")]
    NoUnit(String),
    /// Finer than whole drams or whole grams.
    #[error("\"{0}\" is finer than whole drams or whole grams")]
    TooFine(String),
    /// Not a weight.
    #[error("\"{0}\" is not a weight")]
    NotAWeight(String),
}

/// The most for one fish: 100 kg, well above any fish of these waters.
const MOST_FISH: Exact = Exact(100_000 * PER_GRAM);
/// The most for a net, a limit or a whole catch: 1 000 kg.
const MOST_NET: Exact = Exact(1_000_000 * PER_GRAM);

impl Weight {
    /// From pounds, ounces and drams.
    pub fn lb_oz_dr(lb: i64, oz: i64, dr: i64) -> Result<Self, WeightError> {
        if lb < 0 || oz < 0 || dr < 0 {
            return Err(WeightError::Negative(format!("{lb}-{oz}-{dr}")));
        }
        if oz >= SIXTEEN {
            return Err(WeightError::SixteenOrMore("ounces"));
        }
        if dr >= SIXTEEN {
            return Err(WeightError::SixteenOrMore("drams"));
        }
        let drams = lb.checked_mul(DRAMS_PER_LB).and_then(|d| d.checked_add(oz * SIXTEEN + dr));
        drams.map(Self::Drams).ok_or_else(|| WeightError::NotAWeight(format!("{lb}-{oz}-{dr}")))
    }

    /// Pounds, ounces and drams, if it was entered in that form.
    pub fn as_lb_oz_dr(self) -> Option<(i64, i64, i64)> {
        let Self::Drams(d) = self else { return None };
        Some((d / DRAMS_PER_LB, d / SIXTEEN % SIXTEEN, d % SIXTEEN))
    }

    /// The exact weight.
    pub const fn exact(self) -> Exact {
        match self {
            Self::Drams(d) => Exact(d as i128 * PER_DRAM),
            Self::Grams(g) => Exact(g as i128 * PER_GRAM),
        }
    }

    /// Grams, to the nearest double.
    pub fn grams(self) -> f64 {
        self.exact().grams()
    }

    /// This weight, if it can be one fish.
    pub fn of_a_fish(self) -> Result<Self, WeightError> {
        self.within(MOST_FISH)
    }

    /// This weight, or the heaviest that a fish may have where it is above that.
    #[must_use]
    pub fn at_most_a_fish(self) -> Self {
        if self.exact() <= MOST_FISH {
            return self;
        }
        match self {
            Self::Drams(_) => Self::Drams(MOST_FISH.0.div_euclid(PER_DRAM) as i64),
            Self::Grams(_) => Self::Grams(MOST_FISH.0.div_euclid(PER_GRAM) as i64),
        }
    }

    /// This weight, if it can be a net, a limit or a catch.
    pub fn of_a_net(self) -> Result<Self, WeightError> {
        self.within(MOST_NET)
    }

    fn within(self, most: Exact) -> Result<Self, WeightError> {
        if self.exact() < Exact(0) {
            return Err(WeightError::Negative(self.to_string()));
        }
        if self.exact() == Exact(0) {
            return Err(WeightError::Zero);
        }
        if self.exact() > most {
            let most = Self::Grams(most.0.div_euclid(PER_GRAM) as i64).to_string();
            return Err(WeightError::Absurd { weight: self.to_string(), most });
        }
        Ok(self)
    }
}

/// "12 lb 7 oz 8 dr" (drams left out where there are none), or "640 g", or "5.640 kg".
impl fmt::Display for Weight {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = match *self {
            Self::Drams(n) | Self::Grams(n) if n < 0 => "-",
            _ => "",
        };
        match *self {
            Self::Drams(d) => {
                let d = d.unsigned_abs();
                write!(f, "{sign}{} lb {} oz", d / 256, d / 16 % 16)?;
                if d.is_multiple_of(16) { Ok(()) } else { write!(f, " {} dr", d % 16) }
            }
            Self::Grams(g) if g.unsigned_abs() >= 1000 => {
                write!(f, "{sign}{}.{:03} kg", g.unsigned_abs() / 1000, g.unsigned_abs() % 1000)
            }
            Self::Grams(g) => write!(f, "{g} g"),
        }
    }
}

/// Reads "12 lb 7 oz 8 dr", "12lb 7oz", "7 oz", "12-7-8", "640 g", "5.64 kg". A bare number is
/// refused: "12.7" may be 12 lb 7 oz or 12.7 lb, the commonest slip at the scales.
impl std::str::FromStr for Weight {
    type Err = WeightError;

    fn from_str(text: &str) -> Result<Self, WeightError> {
        let clean = text.trim().to_ascii_lowercase();
        if clean.starts_with('-') {
            return Err(WeightError::Negative(text.to_owned()));
        }
        if clean.contains('-') {
            return dashed(&clean, text);
        }
        let parts = number_unit_pairs(&clean, text)?;
        match parts.as_slice() {
            [(number, "g")] => decimal(number, 0, text).map(Self::Grams),
            [(number, "kg")] => decimal(number, 3, text).map(Self::Grams),
            [(_, "")] => Err(WeightError::NoUnit(text.to_owned())),
            _ => imperial(&parts, text),
        }
    }
}

fn dashed(clean: &str, text: &str) -> Result<Weight, WeightError> {
    let numbers: Option<Vec<i64>> = clean.split('-').map(|p| p.trim().parse().ok()).collect();
    match numbers.as_deref() {
        Some([lb, oz]) => Weight::lb_oz_dr(*lb, *oz, 0),
        Some([lb, oz, dr]) => Weight::lb_oz_dr(*lb, *oz, *dr),
        _ => Err(WeightError::NotAWeight(text.to_owned())),
    }
}

/// "12lb 7 oz" as [("12", "lb"), ("7", "oz")].
fn number_unit_pairs<'a>(clean: &'a str, text: &str) -> Result<Vec<(&'a str, &'a str)>, WeightError> {
    let mut pairs = Vec::new();
    let mut rest = clean.trim();
    while !rest.is_empty() {
        let number_end = rest.find(|c: char| !(c.is_ascii_digit() || c == '.')).unwrap_or(rest.len());
        if number_end == 0 {
            return Err(WeightError::NotAWeight(text.to_owned()));
        }
        let after = rest[number_end..].trim_start();
        let unit_end = after.find(|c: char| !c.is_ascii_alphabetic()).unwrap_or(after.len());
        pairs.push((&rest[..number_end], &after[..unit_end]));
        rest = after[unit_end..].trim_start();
    }
    if pairs.is_empty() { Err(WeightError::NotAWeight(text.to_owned())) } else { Ok(pairs) }
}

fn imperial(parts: &[(&str, &str)], text: &str) -> Result<Weight, WeightError> {
    let mut seen: [Option<i64>; 3] = [None; 3];
    let mut last = None;
    for (number, unit) in parts {
        let at = match *unit {
            "lb" | "lbs" => 0,
            "oz" => 1,
            "dr" | "dram" | "drams" => 2,
            "" => return Err(WeightError::NoUnit(text.to_owned())),
            _ => return Err(WeightError::NotAWeight(text.to_owned())),
        };
        if last.is_some_and(|before| before >= at) {
            return Err(WeightError::NotAWeight(text.to_owned()));
        }
        if number.contains('.') {
            return Err(WeightError::TooFine(text.to_owned()));
        }
        last = Some(at);
        seen[at] = Some(number.parse().map_err(|_| WeightError::NotAWeight(text.to_owned()))?);
    }
    let [lb, oz, dr] = seen.map(|n| n.unwrap_or(0));
    Weight::lb_oz_dr(lb, oz, dr)
}

/// A decimal number with at most `places` decimals, as a whole number of 10^-places, without rounding.
fn decimal(number: &str, places: usize, text: &str) -> Result<i64, WeightError> {
    let (whole, part) = number.split_once('.').unwrap_or((number, ""));
    if !number.contains(|c: char| c.is_ascii_digit()) || part.contains('.') {
        return Err(WeightError::NotAWeight(text.to_owned()));
    }
    let part = part.trim_end_matches('0');
    if part.len() > places {
        return Err(WeightError::TooFine(text.to_owned()));
    }
    let whole = if whole.is_empty() { "0" } else { whole };
    format!("{whole}{part:0<places$}").parse().map_err(|_| WeightError::NotAWeight(text.to_owned()))
}

/// An exact mass in 10^-13 g, the unit in which drams and grams are both whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Exact(i128);

impl Exact {
    /// Grams, to the nearest double.
    pub fn grams(self) -> f64 {
        let (whole, part) = (self.0.div_euclid(PER_GRAM), self.0.rem_euclid(PER_GRAM));
        whole as f64 + part as f64 / PER_GRAM as f64
    }

    /// The count of 10^-13 g.
    pub const fn units(self) -> i128 {
        self.0
    }

    /// The nearest whole drams (half goes up): for showing a mixed total, never for adding on.
    pub fn nearest_drams(self) -> Weight {
        Weight::Drams((self.0 + PER_DRAM / 2).div_euclid(PER_DRAM) as i64)
    }

    /// The nearest whole grams (half goes up): for showing a mixed total, never for adding on.
    pub fn nearest_grams(self) -> Weight {
        Weight::Grams((self.0 + PER_GRAM / 2).div_euclid(PER_GRAM) as i64)
    }
}

impl std::ops::Add for Exact {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl std::ops::Sub for Exact {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}

impl std::iter::Sum<Weight> for Exact {
    fn sum<I: Iterator<Item = Weight>>(weights: I) -> Self {
        weights.map(Weight::exact).fold(Self(0), |a, b| a + b)
    }
}

/// A total that remembers both units as they were entered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Total {
    /// Drams of the weights entered in pounds, ounces and drams.
    pub drams: i64,
    /// Grams of the weights entered in grams.
    pub grams: i64,
}

impl Total {
    /// Adds one weight.
    #[must_use]
    pub fn plus(mut self, weight: Weight) -> Self {
        match weight {
            Weight::Drams(d) => self.drams += d,
            Weight::Grams(g) => self.grams += g,
        }
        self
    }

    /// The exact total.
    pub fn exact(self) -> Exact {
        Weight::Drams(self.drams).exact() + Weight::Grams(self.grams).exact()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_pound_is_exact() {
        let pound = Weight::lb_oz_dr(1, 0, 0).unwrap();
        assert_eq!(pound.exact().units(), 4_535_923_700_000_000, "453.59237 g, act of 1985");
        assert_eq!(pound.grams(), 453.592_37);
    }

    #[test]
    fn weights_are_read_in_the_forms_used_at_the_scales() {
        let read = |text: &str| text.parse::<Weight>();
        assert_eq!(read("12 lb 7 oz 8 dr"), Ok(Weight::Drams(12 * 256 + 7 * 16 + 8)));
        assert_eq!(read("12lb7oz"), Ok(Weight::Drams(12 * 256 + 7 * 16)));
        assert_eq!(read("12-7-8"), read("12 lb 7 oz 8 dr"));
        assert_eq!(read("7 oz"), Ok(Weight::Drams(112)));
        assert_eq!(read("5.64 kg"), Ok(Weight::Grams(5640)));
        assert_eq!(read(".5kg"), Ok(Weight::Grams(500)));
        assert_eq!(read("640 g"), Ok(Weight::Grams(640)));
    }

    #[test]
    fn ambiguous_weights_are_refused() {
        let refused = |text: &str| text.parse::<Weight>().unwrap_err();
        assert_eq!(refused("12.7"), WeightError::NoUnit("12.7".into()));
        assert_eq!(refused("12 lb 7"), WeightError::NoUnit("12 lb 7".into()));
        assert_eq!(refused("12.5 lb"), WeightError::TooFine("12.5 lb".into()));
        assert_eq!(refused("5.6405 kg"), WeightError::TooFine("5.6405 kg".into()));
        assert_eq!(refused("12-16-0"), WeightError::SixteenOrMore("ounces"));
        assert_eq!(refused("12-7-16"), WeightError::SixteenOrMore("drams"));
        assert_eq!(refused("-3 lb"), WeightError::Negative("-3 lb".into()));
        for nonsense in
            ["", "fish", "7 oz 12 lb", "1-2-3-4", "1 lb 2 lb", "1..2 g", ". g", "99999999999999999999 g"]
        {
            assert!(matches!(refused(nonsense), WeightError::NotAWeight(_)), "{nonsense}");
        }
    }

    #[test]
    fn negative_and_absurd_weights_are_refused() {
        assert!(matches!(Weight::Grams(-1).of_a_fish(), Err(WeightError::Negative(_))));
        assert_eq!(Weight::Drams(0).of_a_fish(), Err(WeightError::Zero));
        assert!(matches!(Weight::Grams(200_000).of_a_fish(), Err(WeightError::Absurd { .. })));
        assert_eq!(Weight::Grams(200_000).of_a_net(), Ok(Weight::Grams(200_000)));
        assert!(matches!(Weight::lb_oz_dr(1, -2, 0), Err(WeightError::Negative(_))));
        assert!(Weight::lb_oz_dr(i64::MAX, 0, 0).is_err());
        assert!(Weight::Drams(i64::MAX).of_a_net().is_err());
    }

    #[test]
    fn a_weight_is_shown_as_it_was_entered() {
        assert_eq!(Weight::Drams(12 * 256 + 7 * 16 + 8).to_string(), "12 lb 7 oz 8 dr");
        assert_eq!(Weight::Drams(256).to_string(), "1 lb 0 oz");
        assert_eq!(Weight::Grams(640).to_string(), "640 g");
        assert_eq!(Weight::Grams(5_064).to_string(), "5.064 kg");
        assert_eq!(Weight::Drams(-8).to_string(), "-0 lb 0 oz 8 dr");
    }

    fn weights() -> impl Strategy<Value = Vec<Weight>> {
        let one =
            prop_oneof![(1_i64..500_000).prop_map(Weight::Drams), (1_i64..1_000_000).prop_map(Weight::Grams)];
        prop::collection::vec(one, 1..200)
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(10_000))]

        /// Against whole-number arithmetic done another way: 1 lb is 45 359 237 of 10^-5 g, so 256
        /// times the total is a whole number of 10^-5 g.
        #[test]
        fn sums_are_exact_in_any_order(weights in weights()) {
            let total = weights.iter().fold(Total::default(), |t, &w| t.plus(w));
            let backwards = weights.iter().rev().fold(Total::default(), |t, &w| t.plus(w));
            prop_assert_eq!(total, backwards);
            let exact: Exact = weights.iter().copied().sum();
            prop_assert_eq!(exact, total.exact());
            let drams: i128 = weights.iter().map(|w| if let Weight::Drams(d) = w { i128::from(*d) } else { 0 }).sum();
            let grams: i128 = weights.iter().map(|w| if let Weight::Grams(g) = w { i128::from(*g) } else { 0 }).sum();
            let elsewhere = drams * 45_359_237 + grams * 256 * 100_000;
            prop_assert_eq!(exact.units() * 256, elsewhere * 100_000_000);
        }
    }

    proptest! {
        #[test]
        fn a_shown_weight_reads_back_as_the_same_weight(drams in 1_i64..10_000_000, grams in 1_i64..10_000_000) {
            for weight in [Weight::Drams(drams), Weight::Grams(grams)] {
                prop_assert_eq!(weight.to_string().parse::<Weight>(), Ok(weight));
            }
        }

        #[test]
        fn a_shown_total_is_within_half_a_unit(drams in 0_i64..10_000_000, grams in 0_i64..10_000_000) {
            let exact = Total { drams, grams }.exact();
            let shown = exact.nearest_drams().exact();
            prop_assert!((shown - exact).units().abs() * 2 <= PER_DRAM);
            prop_assert!((exact.nearest_grams().exact() - exact).units().abs() * 2 <= PER_GRAM);
        }

        #[test]
        fn a_text_that_is_read_is_shown_as_the_same_weight(
            text in "[0-9]{1,4}([ .,-][0-9]{1,2}){0,2} ?(lb|oz|dr|kg|g)?( [0-9]{1,2} oz)?|.{0,24}",
        ) {
            if let Ok(weight) = text.parse::<Weight>() {
                prop_assert_eq!(weight.to_string().parse::<Weight>(), Ok(weight));
            }
        }
    }
}
