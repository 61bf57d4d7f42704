//! Checks the rules of the pad by measuring the finished rectangles.

use super::{
    BankLayout, DIGITS_MM, GAP_MM, LOWER_PART, Millimetres, OPPOSITE_GAP_MM, PRIMARY_MM, REACH_MM, Rect,
    SECONDARY_MM,
};
use restwater_screen::Key;
use serde::{Deserialize, Serialize};

/// A rule of the pad.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum PadRule {
    /// Keys used while fishing are at least 20 mm each way.
    PrimarySize,
    /// Secondary keys are at least 15 mm each way.
    SecondarySize,
    /// Keys are at least 3 mm apart.
    Gap,
    /// Keys of opposite meaning are at least 6 mm apart.
    OppositeGap,
    /// Everything tapped while fishing is in the lower 60 % of the screen.
    LowerPart,
    /// The nearest point of each key is within 70 mm of the hand's bottom corner.
    Reach,
    /// Digits are at least 12 mm high.
    Digits,
}

/// A rule for which a screen is too small.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct BrokenRule {
    /// Which.
    pub rule: PadRule,
    /// By how much at the worst place, mm.
    pub by_mm: f64,
}

/// Rounding of pixels and sums stays below this, mm.
const HAIR_MM: f64 = 1e-6;

/// Whether a key is one of the large ones.
pub(super) fn is_primary(key: Key) -> bool {
    use Key::{Bite, Cast, Landed, Lost, Missed, Start, WoundIn};
    matches!(key, Cast | Bite | WoundIn | Landed | Lost | Missed | Start)
}

/// Whether two keys mean the opposite, so that taking one for the other spoils the record.
pub(super) fn are_opposite(a: Key, b: Key) -> bool {
    use Key::{Bite, Cast, Landed, Lost, Missed, WoundIn};
    let cast_against_the_row_above = |x, y| matches!((x, y), (Cast, Bite | WoundIn));
    let ends = |k| matches!(k, Landed | Lost | Missed);
    cast_against_the_row_above(a, b)
        || cast_against_the_row_above(b, a)
        || matches!((a, b), (Bite, WoundIn) | (WoundIn, Bite))
        || (a != b && ends(a) && ends(b))
}

/// Every place that is tapped while fishing, with its key, if it has one.
fn tapped(layout: &BankLayout) -> Vec<(Option<Key>, Rect)> {
    let keys = layout.keys.iter().map(|k| (Some(k.key), k.rect));
    keys.chain(layout.more.map(|r| (None, r))).chain(layout.next_rod.map(|r| (None, r))).collect()
}

/// Measures a layout in millimetres.
pub(super) fn broken(layout: &BankLayout, glass: &Millimetres) -> Vec<BrokenRule> {
    let places = tapped(layout);
    let mut short: Vec<(PadRule, f64)> = Vec::new();
    for (i, (key, rect)) in places.iter().enumerate() {
        let (rule, size) = match key {
            Some(k) if is_primary(*k) => (PadRule::PrimarySize, PRIMARY_MM),
            _ => (PadRule::SecondarySize, SECONDARY_MM),
        };
        short.push((rule, size - rect.width.min(rect.height)));
        short.push((PadRule::LowerPart, (1.0 - LOWER_PART) * glass.height - rect.top));
        short.push((PadRule::Reach, reach(rect, glass) - REACH_MM));
        for (other, there) in &places[i + 1..] {
            let opposite = key.zip(*other).is_some_and(|(a, b)| are_opposite(a, b));
            let (rule, gap) =
                if opposite { (PadRule::OppositeGap, OPPOSITE_GAP_MM) } else { (PadRule::Gap, GAP_MM) };
            short.push((rule, gap - rect.gap_to(there)));
        }
    }
    short.extend(layout.rods.iter().map(|rod| (PadRule::Digits, DIGITS_MM - rod.digits.height)));
    worst(&short)
}

/// The worst shortfall of each rule.
fn worst(short: &[(PadRule, f64)]) -> Vec<BrokenRule> {
    let mut worst: std::collections::BTreeMap<PadRule, f64> = std::collections::BTreeMap::new();
    for (rule, by) in short.iter().filter(|(_, by)| *by > HAIR_MM) {
        let so_far = worst.entry(*rule).or_insert(*by);
        *so_far = so_far.max(*by);
    }
    worst.into_iter().map(|(rule, by_mm)| BrokenRule { rule, by_mm }).collect()
}

/// From the hand's bottom corner to the nearest point of a rectangle, mm.
fn reach(rect: &Rect, glass: &Millimetres) -> f64 {
    let across = if glass.left_handed { rect.left } else { glass.width - rect.right() };
    libm::hypot(across.max(0.0), (glass.height - rect.bottom()).max(0.0))
}
