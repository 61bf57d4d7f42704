//! Conversions between the wire types of the log and the types of the domains. The log has types of its own
//! so that a change in a domain never changes the file format.

use restwater_compare::Factor;
use restwater_log as log;
use restwater_match_day::rules::{Counting, MatchRules, NetHolds, NetRule, OverLimit};
use restwater_match_day::weight::Weight;
use restwater_sky::conditions::{Conditions, WaterColour, WindFrom, WindStrength};
use restwater_swim::FeatureKind;

/// A domain type that has a wire type of its own in the log.
pub trait Logged: Sized {
    /// The wire type.
    type Wire;
    /// Converts it to the wire type.
    fn logged(&self) -> Self::Wire;
    /// Converts it back from the wire type.
    fn from_logged(wire: &Self::Wire) -> Self;
}

/// Enums whose variants have the same names on both sides.
macro_rules! same_variants {
    ($($domain:ident { $($variant:ident),+ $(,)? })+) => {$(
        impl Logged for $domain {
            type Wire = log::$domain;
            fn logged(&self) -> Self::Wire {
                match self { $(Self::$variant => log::$domain::$variant,)+ }
            }
            fn from_logged(wire: &Self::Wire) -> Self {
                match wire { $(log::$domain::$variant => Self::$variant,)+ }
            }
        }
    )+};
}

same_variants! {
    OverLimit { CountsToTheLimit, DoesNotCount }
    WindFrom { N, Ne, E, Se, S, Sw, W, Nw }
    WindStrength { Calm, Light, Moderate, Fresh, Strong, Gale }
    WaterColour { Clear, Tinged, Coloured, Muddy }
    FeatureKind { Bar, DropOff, Hole, Weed, Silt, Gravel, Clay, Island, FishSeen, Other }
}

/// The wire type of a factor in an alternating test, or `None` for a factor that no test alternates.
pub fn factor_logged(factor: Factor) -> Option<log::Factor> {
    Some(match factor {
        Factor::Spot => log::Factor::Spot,
        Factor::Bait => log::Factor::Bait,
        Factor::Colour => log::Factor::Colour,
        Factor::Height => log::Factor::Height,
        Factor::Hooklength => log::Factor::Hooklength,
        Factor::HookSize => log::Factor::HookSize,
        Factor::Lead => log::Factor::Lead,
        Factor::Leader => log::Factor::Leader,
        Factor::Feed | Factor::FeedAmount => return None,
    })
}

/// The factor of an alternating test in the log.
pub(super) fn factor_from_logged(wire: log::Factor) -> Factor {
    match wire {
        log::Factor::Spot => Factor::Spot,
        log::Factor::Bait => Factor::Bait,
        log::Factor::Colour => Factor::Colour,
        log::Factor::Height => Factor::Height,
        log::Factor::Hooklength => Factor::Hooklength,
        log::Factor::HookSize => Factor::HookSize,
        log::Factor::Lead => Factor::Lead,
        log::Factor::Leader => Factor::Leader,
    }
}

impl Logged for Weight {
    type Wire = log::Weight;

    fn logged(&self) -> log::Weight {
        match *self {
            Self::Drams(count) => log::Weight::Drams(count),
            Self::Grams(count) => log::Weight::Grams(count),
        }
    }

    fn from_logged(wire: &log::Weight) -> Self {
        match *wire {
            log::Weight::Drams(count) => Self::Drams(count),
            log::Weight::Grams(count) => Self::Grams(count),
        }
    }
}

impl Logged for NetHolds {
    type Wire = log::NetHolds;

    fn logged(&self) -> log::NetHolds {
        match self {
            Self::Anything => log::NetHolds::Anything,
            Self::Only(kinds) => log::NetHolds::Only(kinds.clone()),
        }
    }

    fn from_logged(wire: &log::NetHolds) -> Self {
        match wire {
            log::NetHolds::Anything => Self::Anything,
            log::NetHolds::Only(kinds) => Self::Only(kinds.clone()),
        }
    }
}

impl Logged for Counting {
    type Wire = log::Counting;

    fn logged(&self) -> log::Counting {
        match self {
            Self::Everything => log::Counting::Everything,
            Self::Only(kinds) => log::Counting::Only(kinds.clone()),
            Self::AllBut(kinds) => log::Counting::AllBut(kinds.clone()),
        }
    }

    fn from_logged(wire: &log::Counting) -> Self {
        match wire {
            log::Counting::Everything => Self::Everything,
            log::Counting::Only(kinds) => Self::Only(kinds.clone()),
            log::Counting::AllBut(kinds) => Self::AllBut(kinds.clone()),
        }
    }
}

impl Logged for NetRule {
    type Wire = log::NetRule;

    fn logged(&self) -> log::NetRule {
        let limit = self.limit.as_ref().map(Weight::logged);
        log::NetRule { name: self.name.clone(), limit, holds: self.holds.logged() }
    }

    fn from_logged(wire: &log::NetRule) -> Self {
        let limit = wire.limit.as_ref().map(Weight::from_logged);
        Self { name: wire.name.clone(), limit, holds: NetHolds::from_logged(&wire.holds) }
    }
}

impl Logged for MatchRules {
    type Wire = log::MatchRules;

    fn logged(&self) -> log::MatchRules {
        log::MatchRules {
            nets: self.nets.iter().map(NetRule::logged).collect(),
            over_limit: self.over_limit.logged(),
            counting: self.counting.logged(),
            landing_min: self.landing_min,
            alarms_min: self.alarms_min.clone(),
        }
    }

    fn from_logged(wire: &log::MatchRules) -> Self {
        Self {
            nets: wire.nets.iter().map(NetRule::from_logged).collect(),
            over_limit: OverLimit::from_logged(&wire.over_limit),
            counting: Counting::from_logged(&wire.counting),
            landing_min: wire.landing_min,
            alarms_min: wire.alarms_min.clone(),
        }
    }
}

impl Logged for Conditions {
    type Wire = log::Conditions;

    fn logged(&self) -> log::Conditions {
        log::Conditions {
            air_tenth_c: self.air,
            water_tenth_c: self.water,
            wind_from: self.wind_from.as_ref().map(WindFrom::logged),
            wind: self.wind.as_ref().map(WindStrength::logged),
            cloud: self.cloud,
            colour: self.colour.as_ref().map(WaterColour::logged),
        }
    }

    fn from_logged(wire: &log::Conditions) -> Self {
        Self {
            air: wire.air_tenth_c,
            water: wire.water_tenth_c,
            wind_from: wire.wind_from.as_ref().map(WindFrom::from_logged),
            wind: wire.wind.as_ref().map(WindStrength::from_logged),
            cloud: wire.cloud,
            colour: wire.colour.as_ref().map(WaterColour::from_logged),
        }
    }
}
