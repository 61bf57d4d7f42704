//! The weigh-in compared with the angler's own count.

use super::class::Estimate;
use super::rules::{MatchRules, same_name};
use super::running::{NearLimit, Running, RunningNet};
use super::weight::{Total, Weight, WeightError};

/// The conclusion from the difference between scales and own count.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Agreement {
    /// The difference is within the uncertainty or within the finest mark of the scales.
    Agrees,
    /// The scales show more than the upper end of the own count: a fish not logged, or weights low.
    ScalesMore,
    /// The scales show less than the lower end: a fish logged twice or not counted, or weights high.
    ScalesLess,
}

/// One net at the scales.
#[derive(Debug, Clone, PartialEq)]
pub struct WeighedIn {
    /// Name of the net.
    pub net: String,
    /// What the scales showed.
    pub scales: Weight,
    /// Scales less own count, grams.
    pub difference_g: f64,
    /// Whether they agree.
    pub agreement: Agreement,
}

/// The weigh-in, net by net, and in all.
#[derive(Debug, Clone, PartialEq)]
pub struct WeighIn {
    /// Nets that were weighed.
    pub nets: Vec<WeighedIn>,
    /// Nets of the own count that were not weighed.
    pub not_weighed: Vec<String>,
    /// What the scales showed in all, in the units they showed.
    pub scales: Total,
}

/// Why the weigh-in can't be taken.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum WeighInError {
    /// A net that the own count doesn't have.
    #[error("there is no net \"{0}\" in your own count")]
    NoSuchNet(String),
    /// A net weighed twice.
    #[error("the net \"{0}\" is weighed twice")]
    Twice(String),
    /// An impossible weight.
    #[error(transparent)]
    Weight(#[from] WeightError),
}

/// Compares what the scales showed, net by net, with the running weight. `mark` is the finest mark of the
/// scales (one dram, half an ounce, ten grams): a difference that is no larger means nothing.
pub fn compare(scales: &[(String, Weight)], own: &Running, mark: Weight) -> Result<WeighIn, WeighInError> {
    let mark_g = mark.of_a_fish()?.grams();
    let mut nets: Vec<WeighedIn> = Vec::with_capacity(scales.len());
    let mut total = Total::default();
    for (name, shown) in scales {
        let Some(net) = own.nets.iter().find(|n| n.name == *name) else {
            return Err(WeighInError::NoSuchNet(name.clone()));
        };
        if nets.iter().any(|n| n.net == *name) {
            return Err(WeighInError::Twice(name.clone()));
        }
        let grams = shown.of_a_net()?.grams();
        let agreement = if grams > net.upper_g + mark_g {
            Agreement::ScalesMore
        } else if grams < net.lower_g - mark_g {
            Agreement::ScalesLess
        } else {
            Agreement::Agrees
        };
        nets.push(WeighedIn {
            net: name.clone(),
            scales: *shown,
            difference_g: grams - net.mean_g,
            agreement,
        });
        total = total.plus(*shown);
    }
    let weighed = |name: &str| nets.iter().any(|n| n.net == name);
    let not_weighed =
        own.nets.iter().filter(|n| n.fish > 0 && !weighed(&n.name)).map(|n| n.name.clone()).collect();
    Ok(WeighIn { nets, not_weighed, scales: total })
}

/// The running weight with what the scales showed in place of the estimate of each net that was weighed.
pub fn at_scales(scales: &[(String, Weight)], own: &Running, rules: &MatchRules) -> Running {
    let weighed = |net: &str| scales.iter().find(|(name, _)| same_name(name, net)).map(|(_, shown)| *shown);
    let mut nets = own.nets.clone();
    // The uncertainties of the nets that are left, as if all went the same way: no less than they are together.
    let mut apart_g = 0.0;
    for (net, rule) in nets.iter_mut().zip(&rules.nets) {
        let Some(shown) = weighed(&net.name) else {
            apart_g += net.upper_g - net.mean_g;
            continue;
        };
        let grams = shown.grams();
        let over = rule.limit.is_some_and(|limit| grams > limit.grams());
        *net = RunningNet {
            weighed: Total::default().plus(shown),
            estimated: Estimate::default(),
            mean_g: grams,
            lower_g: grams,
            upper_g: grams,
            near: if over { NearLimit::AtLimit } else { NearLimit::Clear },
            counts_g: rule.counts_g(rules.over_limit, grams),
            ..net.clone()
        };
    }
    let mean_g = |nets: &[RunningNet]| nets.iter().map(|net| net.mean_g).sum::<f64>();
    let together_g = (own.upper_g - mean_g(&own.nets)).max(0.0).min(apart_g);
    Running {
        not_counted: own.not_counted,
        counts_g: nets.iter().map(|net| net.counts_g).sum(),
        upper_g: mean_g(&nets) + together_g,
        nets,
    }
}

#[cfg(test)]
mod tests {
    use super::super::rules::{MatchRules, NetHolds, NetRule};
    use super::super::running::{NetFish, Weighed, running};
    use super::*;

    fn own() -> Running {
        let net = |name: &str| NetRule { name: name.into(), limit: None, holds: NetHolds::Anything };
        let rules = MatchRules { nets: vec![net("1"), net("2")], ..MatchRules::default() };
        let fish = |net: &str, weighed| NetFish { net: net.into(), kind: "carp".into(), weighed };
        let guess = Weighed::Guessed { low: Weight::Grams(1_000), high: Weight::Grams(2_000) };
        let exact = Weighed::Exactly(Weight::lb_oz_dr(10, 0, 0).unwrap());
        running(&[fish("1", exact), fish("2", guess)], &[], &rules).unwrap()
    }

    fn at(net: &str, weight: Weight) -> Vec<(String, Weight)> {
        vec![(net.to_owned(), weight)]
    }

    #[test]
    fn they_agree_within_a_mark_or_within_the_uncertainty() {
        let ounce = Weight::Drams(16);
        let found = compare(&at("1", Weight::Drams(2_576)), &own(), ounce).unwrap();
        assert_eq!(found.nets[0].agreement, Agreement::Agrees, "10 lb 1 oz against 10 lb on ounce scales");
        assert_eq!(found.not_weighed, vec!["2".to_owned()]);
        let found = compare(&at("2", Weight::Grams(1_950)), &own(), ounce).unwrap();
        assert_eq!(found.nets[0].agreement, Agreement::Agrees);
        assert!((found.nets[0].difference_g - 450.0).abs() < 1e-9);
    }

    #[test]
    fn a_missing_fish_shows_at_the_scales() {
        let mark = Weight::Drams(1);
        let more = compare(&at("1", Weight::Drams(2_816)), &own(), mark).unwrap();
        assert_eq!(more.nets[0].agreement, Agreement::ScalesMore);
        let less = compare(&at("1", Weight::Drams(2_304)), &own(), mark).unwrap();
        assert_eq!(less.nets[0].agreement, Agreement::ScalesLess);
    }

    #[test]
    fn the_scales_replace_the_estimate_of_their_own_net_only() {
        let net = |name: &str| NetRule {
            name: name.into(),
            limit: Some(Weight::Grams(5_000)),
            holds: NetHolds::Anything,
        };
        let rules = MatchRules { nets: vec![net("1"), net("2")], ..MatchRules::default() };
        let own = own();
        let one = at_scales(&at("2", Weight::Grams(1_900)), &own, &rules);
        assert_eq!(one.nets[0], own.nets[0]);
        assert_eq!((one.nets[1].lower_g, one.nets[1].upper_g, one.nets[1].fish), (1_900.0, 1_900.0, 1));
        assert!((one.upper_g - one.nets[0].mean_g - 1_900.0).abs() < 1e-9, "only the guess was uncertain");
        assert_eq!(one.nets[1].near, NearLimit::Clear);
        let over = at_scales(&at("2", Weight::Grams(5_001)), &own, &rules);
        assert_eq!((over.nets[1].near, over.nets[1].counts_g), (NearLimit::AtLimit, 5_000.0));
        let left = at_scales(&at("1", Weight::Grams(4_500)), &own, &rules);
        assert_eq!(left.nets[1], own.nets[1]);
        assert!((left.upper_g - 4_500.0 - own.nets[1].upper_g).abs() < 1e-9, "the guess stays uncertain");
    }

    #[test]
    fn unknown_or_repeated_nets_and_impossible_weights_are_refused() {
        let mark = Weight::Drams(1);
        let one = Weight::Drams(256);
        assert_eq!(compare(&at("3", one), &own(), mark), Err(WeighInError::NoSuchNet("3".into())));
        let twice = [at("1", one), at("1", one)].concat();
        assert_eq!(compare(&twice, &own(), mark), Err(WeighInError::Twice("1".into())));
        assert!(matches!(compare(&at("1", Weight::Grams(-4)), &own(), mark), Err(WeighInError::Weight(_))));
    }
}
