//! The rules of the day, as the organiser gives them. Nothing here is built in: limits, lists and
//! signals differ from match to match.

use super::weight::{Weight, WeightError};
use serde::{Deserialize, Serialize};

/// What a net may hold.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum NetHolds {
    /// Any fish.
    Anything,
    /// Only fish of these kinds (carp and silvers apart).
    Only(Vec<String>),
}

/// One keepnet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct NetRule {
    /// The angler's name for it, which must be unique.
    pub name: String,
    /// Most it may hold, if there is a limit.
    pub limit: Option<Weight>,
    /// What may go in.
    pub holds: NetHolds,
}

/// How a net over its limit counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum OverLimit {
    /// Weighed in at the limit.
    #[default]
    CountsToTheLimit,
    /// Does not count at all.
    DoesNotCount,
}

/// Which kinds of fish count.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Counting {
    /// Every fish.
    #[default]
    Everything,
    /// Only these kinds.
    Only(Vec<String>),
    /// All but these kinds.
    AllBut(Vec<String>),
}

/// The rules of one match. An empty list of nets means that nothing is kept by net.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct MatchRules {
    /// The nets.
    pub nets: Vec<NetRule>,
    /// What becomes of a net over its limit.
    pub over_limit: OverLimit,
    /// Which kinds of fish count.
    pub counting: Counting,
    /// Minutes after all-out in which a fish hooked before it may be landed.
    pub landing_min: u16,
    /// Minutes before all-out at which to sound.
    pub alarms_min: Vec<u16>,
}

/// Why rules can't be used.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum RulesError {
    /// Two nets of one name.
    #[error("two nets are called \"{0}\"")]
    DuplicateNet(String),
    /// A net without a name.
    #[error("a net needs a name")]
    NoName,
    /// A net that may hold nothing.
    #[error("the net \"{0}\" may hold nothing")]
    HoldsNothing(String),
    /// No kind counts.
    #[error("no kind of fish counts")]
    NothingCounts,
    /// Too long after all-out.
    #[error("{0} minutes to land a fish after all-out is more than two hours")]
    LandingTooLong(u16),
    /// A limit that is not a weight.
    #[error("limit of the net \"{net}\": {source}")]
    Limit {
        /// Which net.
        net: String,
        /// What is wrong with it.
        source: WeightError,
    },
    /// A net that the rules don't have.
    #[error("there is no net \"{0}\" in the rules of the day")]
    NoSuchNet(String),
    /// A fish of a kind that the net may not hold.
    #[error("{kind} may not go into the net \"{net}\"")]
    WrongNet {
        /// The kind of fish.
        kind: String,
        /// The net.
        net: String,
    },
}

/// Whether two names are the same apart from their spelling.
pub fn same_name(a: &str, b: &str) -> bool {
    plain_name(a) == plain_name(b)
}

/// A name as [`same_name`] compares it.
pub fn plain_name(name: &str) -> String {
    name.trim().to_lowercase()
}

fn listed(list: &[String], kind: &str) -> bool {
    list.iter().any(|k| same_name(k, kind))
}

impl MatchRules {
    /// Checks the rules whole.
    pub fn check(&self) -> Result<(), RulesError> {
        for (i, net) in self.nets.iter().enumerate() {
            net.check()?;
            if self.nets[..i].iter().any(|other| same_name(&other.name, &net.name)) {
                return Err(RulesError::DuplicateNet(net.name.trim().to_owned()));
            }
        }
        if matches!(&self.counting, Counting::Only(kinds) if kinds.is_empty()) {
            return Err(RulesError::NothingCounts);
        }
        if self.landing_min > 120 { Err(RulesError::LandingTooLong(self.landing_min)) } else { Ok(()) }
    }

    /// Whether a fish of this kind counts. A fish without a kind (an empty name) counts until it has one.
    pub fn counts(&self, kind: &str) -> bool {
        match &self.counting {
            _ if kind.is_empty() => true,
            Counting::Everything => true,
            Counting::Only(kinds) => listed(kinds, kind),
            Counting::AllBut(kinds) => !listed(kinds, kind),
        }
    }

    /// The net of that name.
    pub fn net(&self, name: &str) -> Option<&NetRule> {
        self.nets.iter().find(|n| same_name(&n.name, name))
    }

    /// The net of that name, if a fish of this kind may go into it.
    pub fn net_for(&self, name: &str, kind: &str) -> Result<usize, RulesError> {
        let at = self.nets.iter().position(|n| same_name(&n.name, name));
        let at = at.ok_or_else(|| RulesError::NoSuchNet(name.to_owned()))?;
        if self.nets[at].may_hold(kind) {
            return Ok(at);
        }
        Err(RulesError::WrongNet { kind: kind.to_owned(), net: self.nets[at].name.clone() })
    }
}

impl NetRule {
    fn check(&self) -> Result<(), RulesError> {
        if self.name.trim().is_empty() {
            return Err(RulesError::NoName);
        }
        if matches!(&self.holds, NetHolds::Only(kinds) if kinds.is_empty()) {
            return Err(RulesError::HoldsNothing(self.name.clone()));
        }
        match self.limit.map(Weight::of_a_net) {
            Some(Err(source)) => Err(RulesError::Limit { net: self.name.clone(), source }),
            _ => Ok(()),
        }
    }

    /// How much counts of a net that weighs this much, in grams: over its limit, what the organiser's rule gives it.
    pub fn counts_g(&self, over: OverLimit, grams: f64) -> f64 {
        match (self.limit.map(Weight::grams).filter(|limit| grams > *limit), over) {
            (None, _) => grams,
            (Some(limit), OverLimit::CountsToTheLimit) => limit,
            (Some(_), OverLimit::DoesNotCount) => 0.0,
        }
    }

    /// Whether a fish of this kind may go in; a fish without a kind may.
    pub fn may_hold(&self, kind: &str) -> bool {
        match &self.holds {
            _ if kind.is_empty() => true,
            NetHolds::Anything => true,
            NetHolds::Only(kinds) => listed(kinds, kind),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn net(name: &str) -> NetRule {
        NetRule { name: name.into(), limit: Weight::lb_oz_dr(50, 0, 0).ok(), holds: NetHolds::Anything }
    }

    fn rules(nets: Vec<NetRule>) -> MatchRules {
        MatchRules { nets, ..MatchRules::default() }
    }

    #[test]
    fn duplicate_nets_are_refused_however_they_are_written() {
        let twice = rules(vec![net("Net 1"), net(" net 1")]);
        assert_eq!(twice.check(), Err(RulesError::DuplicateNet("net 1".into())));
        assert_eq!(rules(vec![net("1"), net("2")]).check(), Ok(()));
    }

    #[test]
    fn limits_and_names_are_checked() {
        let limit = NetRule { limit: Some(Weight::Grams(-5)), ..net("1") };
        assert!(matches!(rules(vec![limit]).check(), Err(RulesError::Limit { .. })));
        assert_eq!(rules(vec![net("  ")]).check(), Err(RulesError::NoName));
        let none = NetRule { holds: NetHolds::Only(vec![]), ..net("1") };
        assert_eq!(rules(vec![none]).check(), Err(RulesError::HoldsNothing("1".into())));
        let long = MatchRules { landing_min: 600, ..rules(vec![]) };
        assert_eq!(long.check(), Err(RulesError::LandingTooLong(600)));
        let nothing = MatchRules { counting: Counting::Only(vec![]), ..rules(vec![]) };
        assert_eq!(nothing.check(), Err(RulesError::NothingCounts));
    }

    #[test]
    fn a_net_over_its_limit_counts_as_the_organiser_says() {
        let fifty = Weight::lb_oz_dr(50, 0, 0).unwrap().grams();
        let counts = |over, grams| net("1").counts_g(over, grams);
        for over in [OverLimit::CountsToTheLimit, OverLimit::DoesNotCount] {
            assert_eq!(
                (counts(over, 900.0), counts(over, fifty)),
                (900.0, fifty),
                "at the limit is not over it"
            );
            assert_eq!(NetRule { limit: None, ..net("1") }.counts_g(over, 2.0 * fifty), 2.0 * fifty);
        }
        assert_eq!(counts(OverLimit::CountsToTheLimit, fifty + 1.0), fifty);
        assert_eq!(counts(OverLimit::DoesNotCount, fifty + 1.0), 0.0);
    }

    #[test]
    fn carp_and_silvers_go_into_separate_nets() {
        let carp = NetRule { holds: NetHolds::Only(vec!["carp".into()]), ..net("carp net") };
        let rules = rules(vec![carp, net("silvers net")]);
        assert_eq!(rules.net_for("carp net", "Carp"), Ok(0));
        assert!(matches!(rules.net_for("carp net", "roach"), Err(RulesError::WrongNet { .. })));
        assert!(matches!(rules.net_for("third net", "roach"), Err(RulesError::NoSuchNet(_))));
    }

    #[test]
    fn kinds_count_as_the_organiser_says() {
        let all_but = MatchRules { counting: Counting::AllBut(vec!["pike".into()]), ..rules(vec![]) };
        assert!(all_but.counts("roach") && !all_but.counts("Pike"));
        let only = MatchRules { counting: Counting::Only(vec!["carp".into()]), ..rules(vec![]) };
        assert!(only.counts("carp") && !only.counts("roach") && only.counts(""));
    }
}
