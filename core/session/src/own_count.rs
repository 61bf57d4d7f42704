//! The own count: the angler's estimate of the weight in each net of the match.

use crate::{CaughtFish, MatchSetup, Session, catch};
use restwater_log::{FishWeight, WeightUnit};
use restwater_match_day::class::{Learned, STARTING_SPREAD, SizeClass};
use restwater_match_day::forecast::FishKind;
use restwater_match_day::rules::NetRule;
use restwater_match_day::running::{NetFish, Running, RunningError, Weighed, running};
use restwater_match_day::weight::Weight;

/// A weight by eye is assumed to be right within this share either way, nine times in ten: the project's own
/// choice, no source, stated in the app.
pub(crate) const EYE: f64 = 0.25;
/// Spread of the weight of a fish about which nothing is known, as a share of the mean of the others: the
/// project's own choice, no source, stated in the app.
const UNKNOWN_SPREAD: f64 = 1.0;
/// The assumed weight of a fish if no class is set and no fish was weighed: the project's own choice,
/// no source, stated in the app.
const FIRST_GUESS: Weight = Weight::Drams(256);

/// The own count.
#[derive(Debug, Clone, PartialEq)]
pub struct OwnCount {
    /// Weight of each net, and of the catch.
    pub running: Running,
    /// What was learned about each class of the match, in the order of the classes.
    pub learned: Vec<Learned>,
    /// The kinds of the landed fish, in the grams that each adds at the weigh-in: 0 if it was put back or
    /// doesn't count. Before any fish is landed, one of each class.
    pub kinds: Vec<FishKind>,
    /// Fish in the nets for which neither weight nor class was entered; they are assumed to be like the
    /// others.
    pub unknown: u32,
    /// Fish put back.
    pub put_back: u32,
    /// Kinds of the fish that no net may hold under the rules; they are not in any weight.
    pub no_net: Vec<String>,
    /// The net the next fish goes into.
    pub using: Option<String>,
}

/// The weight of a log entry as a weight.
pub fn entered(unit: WeightUnit, count: u32) -> Weight {
    match unit {
        WeightUnit::Drams => Weight::Drams(i64::from(count)),
        WeightUnit::Grams => Weight::Grams(i64::from(count)),
    }
}

/// Counts the fish. The mean of a class is learned from its weighed fish; a fish without details is assumed
/// to be like the others.
pub fn own_count(setup: &MatchSetup, fish: &[CaughtFish]) -> Result<OwnCount, RunningError> {
    setup.rules.check()?;
    let learned = learn(setup, fish);
    let (nets, using) = placed(setup, fish);
    let mut count = OwnCount {
        running: Running { nets: Vec::new(), not_counted: 0, counts_g: 0.0, upper_g: 0.0 },
        learned,
        kinds: Vec::new(),
        unknown: 0,
        put_back: 0,
        no_net: Vec::new(),
        using,
    };
    let mut in_nets = Vec::with_capacity(fish.len());
    // One for each class, one for fish without a class, and one for fish that add no weight.
    let mut landed = vec![0; count.learned.len() + 1];
    for (one, net) in fish.iter().zip(nets) {
        let netted = count.count(setup, one, net);
        let counts = netted.as_ref().filter(|f| setup.rules.counts(&f.kind));
        let class = one.class.as_deref().and_then(|name| setup.class(name)).unwrap_or(setup.classes.len());
        landed[counts.map_or(count.learned.len(), |_| class)] += 1;
        in_nets.extend(netted);
    }
    if fish.is_empty() {
        landed = one_of_each(setup);
    }
    count.running = running(&in_nets, &count.learned, &setup.rules)?;
    count.kinds = kinds(landed, &count.learned);
    // The last one is the pool of all classes, which the angler didn't set.
    count.learned.truncate(setup.classes.len());
    Ok(count)
}

impl OwnCount {
    /// A fish and its net; no net if it was put back or no net may hold it.
    fn count(&mut self, setup: &MatchSetup, one: &CaughtFish, net: Option<String>) -> Option<NetFish> {
        if one.put_back {
            self.put_back += 1;
            return None;
        }
        let kind = one.class.clone().unwrap_or_default();
        let Some(net) = net else {
            self.no_net.push(kind);
            return None;
        };
        let weighed = self.weighed(setup, one);
        Some(NetFish { net, kind, weighed })
    }

    fn weighed(&mut self, setup: &MatchSetup, one: &CaughtFish) -> Weighed {
        match &one.weight {
            Some(FishWeight::Weighed { unit, count }) => Weighed::Exactly(entered(*unit, *count)),
            Some(FishWeight::Guessed { unit, count }) => by_eye(*unit, *count),
            _ => {
                let class = one.class.as_deref().and_then(|name| setup.class(name));
                self.unknown += u32::from(class.is_none());
                Weighed::ByClass(class.unwrap_or(setup.classes.len()))
            }
        }
    }
}

/// All landed fish, each with the net that it is in by the rules of the match, if a match is set; `None` for a fish that was put
/// back.
pub fn catch_by_net(session: &Session) -> Vec<CaughtFish> {
    let mut fish = catch(session);
    if let Some(match_day) = &session.match_day {
        let nets = nets_of(&match_day.setup, &fish);
        fish.iter_mut().zip(nets).for_each(|(fish, net)| fish.net = net);
    }
    fish
}

/// The net that each fish is in; none for a fish that was put back, or that no net may hold.
pub fn nets_of(setup: &MatchSetup, fish: &[CaughtFish]) -> Vec<Option<String>> {
    placed(setup, fish).0
}

/// The net in use after these fish: the one that the next fish goes into.
pub fn net_in_use(setup: &MatchSetup, fish: &[CaughtFish]) -> Option<String> {
    placed(setup, fish).1
}

/// The net of each fish, and the net that the next fish goes into. A net carries over from the fish for which it was entered
/// to those landed after it, so that nothing has to be tapped while one net is in use.
fn placed(setup: &MatchSetup, fish: &[CaughtFish]) -> (Vec<Option<String>>, Option<String>) {
    let mut using = setup.rules.nets.first();
    let mut place = |one: &CaughtFish| {
        using = one.net.as_ref().and_then(|name| setup.rules.net(name)).or(using);
        let kind = one.class.as_deref().unwrap_or_default();
        // The net in use comes first if the fish may go into it.
        let may = |net: &&NetRule| !one.put_back && net.may_hold(kind);
        let net = using.filter(may).or_else(|| setup.rules.nets.iter().find(may))?;
        Some(net.name.clone())
    };
    let nets = fish.iter().map(&mut place).collect();
    (nets, using.map(|net| net.name.clone()))
}

/// The upper end is cut at what a fish can weigh: one guess must not keep all others from being counted.
fn by_eye(unit: WeightUnit, count: u32) -> Weighed {
    let end =
        |share: f64| entered(unit, libm::round(f64::from(count) * share).max(1.0) as u32).at_most_a_fish();
    Weighed::Guessed { low: end(1.0 - EYE), high: end(1.0 + EYE) }
}

/// Fish to come are like those landed.
fn kinds(landed: Vec<u32>, learned: &[Learned]) -> Vec<FishKind> {
    let known =
        learned.iter().map(|l| FishKind { fish: 0, mean: l.mean_g, sd: l.sd_g, rests_on: l.rests_on });
    let all = known.chain([FishKind::alike(0.0)]).zip(landed).map(|(kind, fish)| FishKind { fish, ..kind });
    all.filter(|kind| kind.fish > 0).collect()
}

/// Before any is landed each class is as likely as another. Those that don't count, or that no net may hold, weigh nothing.
fn one_of_each(setup: &MatchSetup) -> Vec<u32> {
    let adds = |name: &str| setup.rules.counts(name) && setup.rules.nets.iter().any(|net| net.may_hold(name));
    let mut landed: Vec<u32> = setup.classes.iter().map(|class| u32::from(adds(&class.name))).collect();
    let nothing = setup.classes.len() - landed.iter().filter(|one| **one > 0).count();
    landed.extend([u32::from(setup.classes.is_empty()), nothing as u32]);
    landed
}

/// Each class, learned from its weighed fish; last, the pool of all fish that count, which is used for an unknown fish.
fn learn(setup: &MatchSetup, fish: &[CaughtFish]) -> Vec<Learned> {
    let exact = |f: &CaughtFish| match &f.weight {
        Some(FishWeight::Weighed { unit, count }) => entered(*unit, *count).of_a_fish().ok(),
        _ => None,
    };
    let mut learned: Vec<Learned> = Vec::with_capacity(setup.classes.len() + 1);
    for (place, class) in setup.classes.iter().enumerate() {
        let of = |f: &&CaughtFish| f.class.as_deref().and_then(|n| setup.class(n)) == Some(place);
        let weighed: Vec<Weight> = fish.iter().filter(of).filter_map(exact).collect();
        learned.push(class.size_class().learn(&weighed).unwrap_or_else(|_| plain(FIRST_GUESS)));
    }
    learned.push(pooled(setup, fish, &learned, &exact));
    learned
}

/// An unknown fish is as heavy as the others on average: those that were weighed or estimated by eye at that weight, the rest at
/// the mean of their class.
fn pooled(
    setup: &MatchSetup,
    fish: &[CaughtFish],
    learned: &[Learned],
    exact: &dyn Fn(&CaughtFish) -> Option<Weight>,
) -> Learned {
    let counts = |name: &str| setup.rules.counts(name);
    let others: Vec<&CaughtFish> =
        fish.iter().filter(|f| !f.put_back && counts(f.class.as_deref().unwrap_or_default())).collect();
    let of_class =
        |f: &CaughtFish| f.class.as_deref().and_then(|n| setup.class(n)).and_then(|c| learned.get(c));
    let of_one = |f: &&CaughtFish| {
        by_weight(f).map(Weight::grams).or_else(|| of_class(f).map(|learned| learned.mean_g))
    };
    let mut means: Vec<f64> = others.iter().filter_map(of_one).collect();
    if means.is_empty() {
        let of_any = setup.classes.iter().zip(learned).filter(|(class, _)| counts(&class.name));
        means = of_any.map(|(_, l)| l.mean_g).collect();
    }
    let guess = match means.len() {
        0 => FIRST_GUESS,
        n => Weight::Grams(libm::round(means.iter().sum::<f64>() / n as f64).max(1.0) as i64),
    };
    let weighed: Vec<Weight> = others.into_iter().filter_map(exact).collect();
    let any = SizeClass { name: "any".into(), guess, spread: UNKNOWN_SPREAD };
    let learned = any.learn(&weighed).unwrap_or_else(|_| plain(guess));
    // The weighed fish are in the mean already; they only tell how far single fish are apart.
    Learned { mean_g: guess.grams(), ..learned }
}

/// The weight entered for a fish, on the scales or by eye, if it can be one fish's.
fn by_weight(fish: &CaughtFish) -> Option<Weight> {
    let Some(FishWeight::Weighed { unit, count } | FishWeight::Guessed { unit, count }) = &fish.weight else {
        return None;
    };
    entered(*unit, *count).of_a_fish().ok()
}

/// A class for which only a guess is known.
fn plain(guess: Weight) -> Learned {
    let mean_g = guess.grams();
    Learned {
        mean_g,
        sd_g: STARTING_SPREAD * mean_g,
        rests_on: restwater_match_day::class::GUESS_COUNTS_AS,
        weighed: 0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ClassGuess;
    use crate::written::stamp;
    use restwater_match_day::rules::{Counting, MatchRules, NetHolds};
    use restwater_match_day::running::NearLimit;
    use uuid::Uuid;

    fn setup() -> MatchSetup {
        let net =
            |name: &str, holds| NetRule { name: name.into(), limit: Some(Weight::Drams(12_800)), holds };
        MatchSetup {
            all_in_ms: 0,
            all_out_ms: 18_000_000,
            offset_ms: 0,
            unit: WeightUnit::Drams,
            mark: Weight::Drams(16),
            rules: MatchRules {
                nets: vec![net("1", NetHolds::Anything), net("2", NetHolds::Only(vec!["Carp".into()]))],
                counting: Counting::AllBut(vec!["Pike".into()]),
                ..MatchRules::default()
            },
            classes: vec![
                ClassGuess { name: "Carp".into(), guess: Weight::Drams(1_280) },
                ClassGuess { name: "Skimmer".into(), guess: Weight::Drams(192) },
                ClassGuess { name: "Pike".into(), guess: Weight::Drams(1_536) },
            ],
        }
    }

    fn fish(class: Option<&str>, weight: Option<FishWeight>, net: Option<&str>) -> CaughtFish {
        CaughtFish {
            cast: Uuid::nil(),
            at: stamp(0),
            rod: 1,
            class: class.map(str::to_owned),
            weight,
            net: net.map(str::to_owned),
            put_back: false,
            is_said: true,
        }
    }

    fn weighed(count: u32) -> FishWeight {
        FishWeight::Weighed { unit: WeightUnit::Drams, count }
    }

    #[test]
    fn a_net_carries_over_to_the_fish_landed_after_it() {
        let carp = |net| fish(Some("Carp"), None, net);
        let nets = nets_of(&setup(), &[carp(None), carp(Some("2")), carp(None)]);
        assert_eq!(nets, ["1", "2", "2"].map(|net| Some(net.to_owned())));
    }

    #[test]
    fn fish_go_into_the_net_in_use_if_it_may_hold_them() {
        let caught = [
            fish(Some("Carp"), Some(weighed(1_200)), None),
            fish(Some("Carp"), None, Some("2")),
            fish(Some("Skimmer"), None, Some("2")),
        ];
        let count = own_count(&setup(), &caught).unwrap();
        let nets: Vec<u32> = count.running.nets.iter().map(|n| n.fish).collect();
        assert_eq!(nets, [2, 1], "a skimmer may not go into the carp net");
        assert_eq!(count.using.as_deref(), Some("2"));
    }

    #[test]
    fn weighed_fish_change_the_mean_of_their_own_class_only() {
        // (3 x 1280 + 3 x 1600) / 6 drams by the conjugate mean of `class`.
        let caught = [
            fish(Some("Carp"), Some(weighed(1_600)), None),
            fish(Some("Carp"), Some(weighed(1_600)), None),
            fish(Some("Carp"), Some(weighed(1_600)), None),
        ];
        let learned = own_count(&setup(), &caught).unwrap().learned;
        assert!((learned[0].mean_g - Weight::Drams(1_440).grams()).abs() < 1e-9);
        assert!((learned[1].mean_g - Weight::Drams(192).grams()).abs() < 1e-9);
        assert_eq!(learned.len(), 3);
    }

    #[test]
    fn an_unknown_fish_is_like_the_others_but_more_uncertain() {
        let caught = [fish(Some("Carp"), Some(weighed(1_280)), None), fish(None, None, None)];
        let count = own_count(&setup(), &caught).unwrap();
        let net = &count.running.nets[0];
        assert_eq!((count.unknown, net.fish), (1, 2));
        assert!((net.mean_g - 2.0 * Weight::Drams(1_280).grams()).abs() < 1.0);
        assert!(net.upper_g > 3.0 * Weight::Drams(1_280).grams(), "{}", net.upper_g);
    }

    /// Two fish on the scales, one of a class by its mean and one unknown: the unknown one weighs as much as the three do on
    /// average, so it doesn't change what a fish weighs on average.
    #[test]
    fn an_unknown_fish_weighs_what_the_others_weigh_on_average() {
        let mut caught = vec![
            fish(Some("Carp"), Some(weighed(1_600)), None),
            fish(Some("Carp"), Some(weighed(800)), None),
            fish(Some("Skimmer"), None, None),
        ];
        let mean = |caught: &[CaughtFish]| {
            let net = own_count(&setup(), caught).unwrap().running.nets[0].clone();
            net.mean_g / f64::from(net.fish)
        };
        let known = mean(&caught);
        caught.push(fish(None, None, None));
        assert!((mean(&caught) - known).abs() < 1.0, "{} and {known}", mean(&caught));
    }

    #[test]
    fn fish_that_were_put_back_or_do_not_count_add_no_weight() {
        let back = CaughtFish { put_back: true, ..fish(Some("Carp"), Some(weighed(1_280)), None) };
        let count = own_count(&setup(), &[back, fish(Some("Pike"), Some(weighed(2_000)), None)]).unwrap();
        assert_eq!((count.put_back, count.running.not_counted), (1, 1));
        assert_eq!(count.kinds, [FishKind { fish: 2, ..FishKind::alike(0.0) }]);
        assert_eq!(count.running.counts_g, 0.0);
    }

    #[test]
    fn a_weight_by_eye_is_uncertain_by_a_quarter_either_way() {
        let guess = FishWeight::Guessed { unit: WeightUnit::Drams, count: 10_240 };
        let net = own_count(&setup(), &[fish(None, Some(guess), None)]).unwrap().running.nets[0].clone();
        assert!((net.upper_g - Weight::Drams(12_800).grams()).abs() < 1e-6);
        assert_eq!(net.near, NearLimit::AtLimit, "by the upper end");
    }

    #[test]
    fn fish_are_not_lost_with_a_net_that_the_rules_no_longer_have() {
        let count = own_count(&setup(), &[fish(Some("Skimmer"), None, Some("3"))]).unwrap();
        assert_eq!(count.running.nets[0].fish, 1);
        let mut only = setup();
        only.rules.nets.remove(0);
        let lost = own_count(&only, &[fish(Some("Skimmer"), None, None)]).unwrap();
        assert_eq!(lost.no_net, ["Skimmer"]);
    }
}
