//! Running weight of each net, with a warning based on its upper limit.

use super::class::{Estimate, Learned};
use super::rules::{MatchRules, NetRule, OverLimit, RulesError};
use super::weight::{Total, Weight, WeightError};
use serde::{Deserialize, Serialize};

/// How a fish was weighed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Weighed {
    /// On the scales.
    Exactly(Weight),
    /// Logged as one of a size class, by its index in the list of classes.
    ByClass(usize),
    /// Guessed between two weights, which count as the ends of a 90 % range.
    Guessed {
        /// As little as it may weigh.
        low: Weight,
        /// As much as it may weigh.
        high: Weight,
    },
}

/// A fish in a net.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct NetFish {
    /// Name of the net.
    pub net: String,
    /// Kind of fish.
    pub kind: String,
    /// How it was weighed.
    pub weighed: Weighed,
}

/// How near a net is to its limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum NearLimit {
    /// No limit, or under 80 % of it.
    Clear,
    /// At 80 % of the limit or more, by the upper end.
    Near,
    /// At the limit or over it, by the upper end.
    AtLimit,
}

/// Share of a limit from which a net is near it.
pub const NEAR: f64 = 0.8;
/// 95 % point of the standard normal: the upper end is passed once in twenty.
pub const UPPER: f64 = 1.644_853_626_951_472_7;

/// A net and what is in it.
#[derive(Debug, Clone, PartialEq)]
pub struct RunningNet {
    /// Its name.
    pub name: String,
    /// Fish in it.
    pub fish: u32,
    /// What was weighed on the scales, exactly.
    pub weighed: Total,
    /// What was logged by class or guessed.
    pub estimated: Estimate,
    /// Expected weight, grams.
    pub mean_g: f64,
    /// Lower end, grams: what was weighed is certain, so never below that.
    pub lower_g: f64,
    /// Upper end, grams.
    pub upper_g: f64,
    /// How near to the limit.
    pub near: NearLimit,
    /// Expected weight that counts at the weigh-in, grams.
    pub counts_g: f64,
}

impl RunningNet {
    /// Whether it is over its limit for certain: what weighs least of what it may hold is.
    pub fn is_over(&self, rule: &NetRule) -> bool {
        rule.limit.is_some_and(|limit| self.lower_g > limit.grams())
    }
}

/// All nets, and the fish that don't count.
#[derive(Debug, Clone, PartialEq)]
pub struct Running {
    /// In the order of the rules.
    pub nets: Vec<RunningNet>,
    /// Fish of kinds that don't count; they are in no net's weight.
    pub not_counted: u32,
    /// Expected weight that counts, all nets together, grams.
    pub counts_g: f64,
    /// Upper end of all nets together before limits, grams; the uncertainty of a class mean is shared by all
    /// nets.
    pub upper_g: f64,
}

/// Why there is no running weight.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum RunningError {
    /// A net or a kind against the rules.
    #[error(transparent)]
    Rules(#[from] RulesError),
    /// An impossible weight.
    #[error(transparent)]
    Weight(#[from] WeightError),
    /// The ends of a guess are the wrong way round.
    #[error("the guess runs from {low} down to {high}")]
    GuessBackwards {
        /// Lower end as entered.
        low: Weight,
        /// Upper end as entered.
        high: Weight,
    },
    /// A class that is not in the list.
    #[error("there is no size class number {0}")]
    NoSuchClass(usize),
}

/// The fish of one net before they are summed up.
#[derive(Clone)]
struct Tally {
    fish: u32,
    weighed: Total,
    clicked: Vec<u32>,
    guessed: Estimate,
}

impl Tally {
    fn new(classes: usize) -> Self {
        Self { fish: 0, weighed: Total::default(), clicked: vec![0; classes], guessed: Estimate::default() }
    }

    fn add(&mut self, weighed: &Weighed) -> Result<(), RunningError> {
        match weighed {
            Weighed::Exactly(weight) => self.weighed = self.weighed.plus(weight.of_a_fish()?),
            Weighed::ByClass(class) => {
                *self.clicked.get_mut(*class).ok_or(RunningError::NoSuchClass(*class))? += 1;
            }
            Weighed::Guessed { low, high } => {
                let guess = guessed(*low, *high)?;
                self.guessed.mean_g += guess.mean_g;
                self.guessed.variance += guess.variance;
            }
        }
        self.fish += 1;
        Ok(())
    }

    fn estimate(&self, classes: &[Learned]) -> Estimate {
        classes.iter().zip(&self.clicked).fold(self.guessed, |sum, (class, &count)| {
            let part = class.times(count);
            Estimate { mean_g: sum.mean_g + part.mean_g, variance: sum.variance + part.variance }
        })
    }
}

fn guessed(low: Weight, high: Weight) -> Result<Estimate, RunningError> {
    let (l, h) = (low.of_a_fish()?, high.of_a_fish()?);
    if l.exact() > h.exact() {
        return Err(RunningError::GuessBackwards { low, high });
    }
    let sd = (h.grams() - l.grams()) / (2.0 * UPPER);
    Ok(Estimate { mean_g: 0.5 * (l.grams() + h.grams()), variance: sd * sd })
}

/// The running weight of every net of the rules.
pub fn running(fish: &[NetFish], classes: &[Learned], rules: &MatchRules) -> Result<Running, RunningError> {
    rules.check()?;
    let mut tallies = vec![Tally::new(classes.len()); rules.nets.len()];
    let mut not_counted = 0;
    for one in fish {
        let net = rules.net_for(&one.net, &one.kind)?;
        if rules.counts(&one.kind) {
            tallies[net].add(&one.weighed)?;
        } else {
            not_counted += 1;
        }
    }
    let nets: Vec<RunningNet> = tallies
        .iter()
        .zip(&rules.nets)
        .map(|(tally, rule)| sum_up(tally, rule, classes, rules.over_limit))
        .collect();
    let counts_g = nets.iter().map(|n| n.counts_g).sum();
    let upper_g = together(&tallies, classes);
    Ok(Running { nets, not_counted, counts_g, upper_g })
}

fn sum_up(tally: &Tally, rule: &NetRule, classes: &[Learned], over: OverLimit) -> RunningNet {
    let estimated = tally.estimate(classes);
    let weighed_g = tally.weighed.exact().grams();
    let mean_g = weighed_g + estimated.mean_g;
    let off = UPPER * estimated.variance.sqrt();
    let (lower_g, upper_g) = ((mean_g - off).max(weighed_g), mean_g + off);
    RunningNet {
        name: rule.name.clone(),
        fish: tally.fish,
        weighed: tally.weighed,
        estimated,
        mean_g,
        lower_g,
        upper_g,
        near: near(upper_g, rule.limit.map(Weight::grams)),
        counts_g: rule.counts_g(over, mean_g),
    }
}

fn near(upper_g: f64, limit_g: Option<f64>) -> NearLimit {
    match limit_g {
        Some(limit) if upper_g >= limit => NearLimit::AtLimit,
        Some(limit) if upper_g >= NEAR * limit => NearLimit::Near,
        _ => NearLimit::Clear,
    }
}

/// Upper end of the whole catch. A class in two nets has only one uncertain mean.
fn together(tallies: &[Tally], classes: &[Learned]) -> f64 {
    let mut all = Tally::new(classes.len());
    for tally in tallies {
        all.weighed.drams += tally.weighed.drams;
        all.weighed.grams += tally.weighed.grams;
        all.guessed.mean_g += tally.guessed.mean_g;
        all.guessed.variance += tally.guessed.variance;
        for (sum, count) in all.clicked.iter_mut().zip(&tally.clicked) {
            *sum += count;
        }
    }
    let estimate = all.estimate(classes);
    all.weighed.exact().grams() + estimate.mean_g + UPPER * estimate.variance.sqrt()
}

#[cfg(test)]
mod tests {
    use super::super::class::SizeClass;
    use super::super::rules::{Counting, NetHolds, NetRule};
    use super::*;

    fn rules() -> MatchRules {
        let net = |name: &str| NetRule {
            name: name.into(),
            limit: Weight::lb_oz_dr(50, 0, 0).ok(),
            holds: NetHolds::Anything,
        };
        MatchRules {
            nets: vec![net("1"), net("2")],
            counting: Counting::AllBut(vec!["pike".into()]),
            ..MatchRules::default()
        }
    }

    fn carp(net: &str, weighed: Weighed) -> NetFish {
        NetFish { net: net.into(), kind: "carp".into(), weighed }
    }

    fn exactly(lb: i64, oz: i64) -> Weighed {
        Weighed::Exactly(Weight::lb_oz_dr(lb, oz, 0).unwrap())
    }

    fn classes() -> Vec<Learned> {
        let class = SizeClass { name: "stockie".into(), guess: Weight::Grams(600), spread: 0.25 };
        vec![class.learn(&[]).unwrap()]
    }

    #[test]
    fn weighed_fish_add_up_exactly_without_uncertainty() {
        let fish = [carp("1", exactly(12, 7)), carp("1", Weighed::Exactly(Weight::Grams(640)))];
        let running = running(&fish, &[], &rules()).unwrap();
        let net = &running.nets[0];
        assert_eq!(net.weighed, Total { drams: 12 * 256 + 7 * 16, grams: 640 });
        assert!(net.lower_g == net.upper_g && net.near == NearLimit::Clear);
        assert_eq!(running.nets[1].fish, 0);
    }

    #[test]
    fn a_net_warns_at_four_fifths_and_at_the_limit() {
        let near = |lb, oz| running(&[carp("1", exactly(lb, oz))], &[], &rules()).unwrap().nets[0].near;
        assert_eq!(near(39, 15), NearLimit::Clear);
        assert_eq!(near(40, 0), NearLimit::Near);
        assert_eq!(near(50, 0), NearLimit::AtLimit);
    }

    #[test]
    fn the_upper_end_warns_before_the_mean_does() {
        // 27 clicks of 600 g: 16.2 kg expected is under 80 % of 22.68 kg, the upper end is over it.
        let fish: Vec<NetFish> = (0..27).map(|_| carp("1", Weighed::ByClass(0))).collect();
        let found = running(&fish, &classes(), &rules()).unwrap();
        let net = &found.nets[0];
        assert!(net.mean_g < NEAR * 22_679.0 && net.near == NearLimit::Near);
        let upper = 16_200.0 + 1.644_853_627 * ((27.0 + 729.0 / 3.0) * 22_500.0_f64).sqrt();
        assert!((net.upper_g - upper).abs() < 1e-3);
    }

    #[test]
    fn one_class_in_two_nets_has_one_uncertain_mean() {
        let fish: Vec<NetFish> =
            (0..10).map(|i| carp(if i < 5 { "1" } else { "2" }, Weighed::ByClass(0))).collect();
        let found = running(&fish, &classes(), &rules()).unwrap();
        let upper = 6_000.0 + 1.644_853_627 * ((10.0 + 100.0 / 3.0) * 22_500.0_f64).sqrt();
        assert!((found.upper_g - upper).abs() < 1e-3);
    }

    #[test]
    fn over_the_limit_counts_as_the_rules_say() {
        let fish = [carp("1", exactly(60, 0)), carp("2", exactly(10, 0))];
        let to_limit = running(&fish, &[], &rules()).unwrap();
        assert!((to_limit.counts_g - 60.0 * 453.592_37).abs() < 1e-6);
        let not = MatchRules { over_limit: OverLimit::DoesNotCount, ..rules() };
        assert!((running(&fish, &[], &not).unwrap().counts_g - 10.0 * 453.592_37).abs() < 1e-6);
    }

    #[test]
    fn kinds_that_do_not_count_weigh_nothing() {
        let pike = NetFish { kind: "pike".into(), ..carp("1", exactly(8, 0)) };
        let found = running(&[pike], &[], &rules()).unwrap();
        assert_eq!((found.not_counted, found.nets[0].fish), (1, 0));
    }

    #[test]
    fn a_guess_is_a_range() {
        let guess = Weighed::Guessed { low: Weight::Grams(1_000), high: Weight::Grams(2_000) };
        let found = running(&[carp("1", guess)], &[], &rules()).unwrap();
        let net = &found.nets[0];
        assert!((net.lower_g - 1_000.0).abs() < 1e-9 && (net.upper_g - 2_000.0).abs() < 1e-9);
    }

    #[test]
    fn impossible_values_are_refused() {
        let refused = |w: Weighed| running(&[carp("1", w)], &classes(), &rules()).unwrap_err();
        let backwards = Weighed::Guessed { low: Weight::Grams(2), high: Weight::Grams(1) };
        assert!(matches!(refused(backwards), RunningError::GuessBackwards { .. }));
        assert_eq!(refused(Weighed::ByClass(7)), RunningError::NoSuchClass(7));
        assert!(matches!(refused(Weighed::Exactly(Weight::Grams(-3))), RunningError::Weight(_)));
        let lost = running(&[carp("9", exactly(1, 0))], &[], &rules());
        assert!(matches!(lost, Err(RunningError::Rules(RulesError::NoSuchNet(_)))));
    }
}
