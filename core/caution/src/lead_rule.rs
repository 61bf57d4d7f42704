//! The rule on lead weights, shown where a weight is entered; nothing is forbidden here.
//!
//! England and Wales: lead weights above 0.06 g and below 28.35 g are not to be used (Natural Resources
//! Wales, and GOV.UK "0.06 g or less or more than 28.35 g", both as stored, read 2026-11; supply banned
//! by SI 1986/1992). The two differ at 28.35 g itself: it is treated as a caution.

use super::table::Region;
use restwater_bench::material::Material;
use restwater_bench::units::OUNCE_G;

/// Lead up to this may be used, grams.
const SMALLEST_G: f64 = 0.06;
/// Lead above this may be used, grams.
const LARGEST_G: f64 = 28.35;

/// What the rule says about a weight.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LeadRule {
    /// Nothing: not lead, or lead of a weight that may be used.
    Nothing,
    /// Lead between the two limits: not to be used there.
    NotToBeUsed,
    /// An ounce to two decimals of a gram, where the official pages differ.
    AtTheLimit,
    /// Lead in a region whose rule isn't known here: ask locally.
    CheckLocally,
}

/// Why the rule can't be applied.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum LeadRuleError {
    /// An impossible weight.
    #[error("{0} g is no weight")]
    NoWeight(f64),
}

impl LeadRule {
    /// The message for it, if there is something to show.
    pub const fn id(self) -> Option<&'static str> {
        match self {
            Self::Nothing => None,
            Self::NotToBeUsed => Some("lead-rule-not-to-be-used"),
            Self::AtTheLimit => Some("lead-rule-at-the-limit"),
            Self::CheckLocally => Some("lead-rule-check-locally"),
        }
    }
}

/// What the rule says about `grams` of `material` in `region`.
pub fn lead_rule(grams: f64, material: Material, region: Region) -> Result<LeadRule, LeadRuleError> {
    if !(grams.is_finite() && grams > 0.0) {
        return Err(LeadRuleError::NoWeight(grams));
    }
    if material != Material::Lead {
        return Ok(LeadRule::Nothing);
    }
    Ok(match region {
        Region::England | Region::Wales if grams <= SMALLEST_G || grams > LARGEST_G => LeadRule::Nothing,
        Region::England | Region::Wales if grams >= OUNCE_G => LeadRule::AtTheLimit,
        Region::England | Region::Wales => LeadRule::NotToBeUsed,
        Region::Scotland | Region::NorthernIreland | Region::Elsewhere => LeadRule::CheckLocally,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn england(grams: f64) -> LeadRule {
        lead_rule(grams, Material::Lead, Region::England).unwrap()
    }

    #[test]
    fn lead_between_the_limits_is_pointed_out() {
        assert_eq!(england(0.06), LeadRule::Nothing);
        assert_eq!(england(0.061), LeadRule::NotToBeUsed);
        assert_eq!(england(18.9), LeadRule::NotToBeUsed);
        assert_eq!(england(28.34), LeadRule::NotToBeUsed);
        assert_eq!(england(28.36), LeadRule::Nothing);
        assert_eq!(england(42.5), LeadRule::Nothing);
    }

    #[test]
    fn an_ounce_is_where_the_official_pages_differ() {
        assert_eq!(england(28.35), LeadRule::AtTheLimit);
        assert_eq!(england(OUNCE_G), LeadRule::AtTheLimit);
        assert!(england(28.35).id().is_some());
    }

    #[test]
    fn other_metals_and_other_countries() {
        assert_eq!(lead_rule(18.9, Material::Tungsten, Region::Wales), Ok(LeadRule::Nothing));
        assert_eq!(lead_rule(18.9, Material::Lead, Region::Scotland), Ok(LeadRule::CheckLocally));
    }

    #[test]
    fn impossible_weights_are_refused() {
        assert_eq!(lead_rule(-1.0, Material::Lead, Region::England), Err(LeadRuleError::NoWeight(-1.0)));
        assert!(lead_rule(f64::NAN, Material::Tin, Region::England).is_err());
    }
}
