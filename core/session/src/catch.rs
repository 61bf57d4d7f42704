//! The fish that were landed, in order, with the details entered for each.

use super::Stamp;
use super::cast::{Cast, CastEnd, EndCause};
use super::model::Session;
use restwater_log::{FishWeight, RodNumber};
use restwater_match_day::rules::same_name;
use uuid::Uuid;

/// A landed fish.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CaughtFish {
    /// The op of the cast it was landed on.
    pub cast: Uuid,
    /// When.
    pub at: Stamp,
    /// On which rod.
    pub rod: RodNumber,
    /// Its size class, if entered.
    pub class: Option<String>,
    /// Its weight, on the scales or by eye, if entered.
    pub weight: Option<FishWeight>,
    /// The net it went into, if entered for this fish.
    pub net: Option<String>,
    /// Whether it went back into the water.
    pub put_back: bool,
    /// Whether any detail was entered, even if only that it isn't weighed.
    pub is_said: bool,
}

/// All landed fish in the order in which they were landed.
pub fn catch(session: &Session) -> Vec<CaughtFish> {
    let mut fish = Vec::new();
    for (cast, end) in landings(session) {
        let EndCause::Landed { fish: weight } = &end.cause else { continue };
        let said = session.fish.iter().find(|f| f.said.cast == cast.op).map(|f| &f.said);
        let (class, weight) = match weight.clone() {
            Some(FishWeight::Class { name }) => (Some(name), None),
            weight => (None, weight),
        };
        fish.push(CaughtFish {
            is_said: said.is_some() || class.is_some() || weight.is_some(),
            cast: cast.op,
            at: end.at.clone(),
            rod: cast.rod,
            class: said.and_then(|s| s.class.clone()).or(class),
            weight,
            net: said.and_then(|s| s.net.clone()),
            put_back: said.is_some_and(|s| s.put_back),
        });
    }
    fish
}

/// The casts that ended with a fish, by when it was landed: with two rods a fish may be landed before one hooked on an
/// earlier cast.
fn landings(session: &Session) -> Vec<(&Cast, &CastEnd)> {
    let landed = |end: &&CastEnd| matches!(end.cause, EndCause::Landed { .. });
    let mut all: Vec<_> =
        session.casts.iter().filter_map(|cast| Some((cast, cast.end.as_ref().filter(landed)?))).collect();
    restwater_sorting::by_key(&mut all, |(_, end)| end.at.at_ms);
    all
}

/// Names of the classes that fish were given, last used first, each once.
pub fn classes_used(session: &Session) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for name in catch(session).into_iter().rev().filter_map(|fish| fish.class) {
        if !names.iter().any(|known| same_name(known, &name)) {
            names.push(name);
        }
    }
    names
}

#[cfg(test)]
mod tests {
    use super::super::fold;
    use super::super::written::{SESSION, Written};
    use super::*;
    use restwater_log::{FishSaid, Payload};

    #[test]
    fn a_net_is_that_of_the_fish_it_was_entered_for() {
        let mut day = Written::new(1);
        let mut casts = Vec::new();
        for s in [0, 2_000, 4_000] {
            casts.push(day.log(s, Payload::Cast { rod: 1 }));
            day.log(s + 600, Payload::Bite { rod: 1 });
            day.log(s + 660, Payload::Landed { rod: 1, fish: None });
        }
        let said = FishSaid {
            cast: casts[1],
            class: None,
            weight: None,
            net: Some("Net 2".into()),
            put_back: false,
        };
        day.log(5_000, Payload::FishSet(said));
        let fish = catch(&fold(SESSION, &day.ops));
        let nets: Vec<_> = fish.iter().map(|f| f.net.as_deref()).collect();
        assert_eq!(nets, [None, Some("Net 2"), None]);
    }
}
