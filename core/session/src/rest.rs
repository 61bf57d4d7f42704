//! The rest of a match: casts left, the last cast worth making, bites, fish and weight to come.

use crate::{EndCause, Rhythm, Session};
use restwater_match_day::forecast::{
    FishKind, Forecast, ForecastError, LAWS, Landing, LastCast, Plan, Range, TimeLeft, forecast,
    last_useful_cast,
};
use restwater_match_day::rules::{MatchRules, NetRule};
use restwater_match_day::running::{Running, UPPER};
use restwater_match_day::weight::Weight;
use restwater_waits::{Advice, WaitPosterior};

/// 90 % point of the standard normal: the ends of a range that holds eight futures in ten.
const TENTH: f64 = 1.281_551_565_544_600_4;

/// What the rest is likely to hold.
#[derive(Debug, Clone, PartialEq)]
pub struct Rest {
    /// Casts, bites, fish and weight (grams) to come.
    pub coming: Forecast,
    /// The last cast worth making, or `None` if no cast has a chance.
    pub last: Option<LastCast>,
}

/// How long casts are left, in minutes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leaves {
    /// The cast that is out, or goes out next.
    pub first: f64,
    /// The casts after it.
    pub then: f64,
}

impl Leaves {
    /// The first is the figure on the Bank, which may be longer in order to explore; after that, casts are left for the best time.
    pub fn of(advice: &Advice) -> Self {
        let first = f64::from(advice.leave_min);
        Self { first, then: advice.best_min.map_or(first, |best| best.min(first)) }
    }
}

/// How many hooked fish were landed and not landed so far, and the kinds of fish to draw from.
pub fn landing(session: &Session, kinds: Vec<FishKind>) -> Landing {
    let count = |is: fn(&EndCause) -> bool| {
        session.casts.iter().filter(|c| c.end.as_ref().is_some_and(|end| is(&end.cause))).count() as u64
    };
    Landing {
        landed: count(|end| matches!(end, EndCause::Landed { .. })),
        not_landed: count(|end| matches!(end, EndCause::Lost | EndCause::Missed)),
        kinds,
    }
}

/// Simulates the time that is left from the state of the rods. The futures depend only on the seed, so the
/// same record always gives the same answer.
pub fn rest_of_match(
    posterior: &WaitPosterior,
    leaves: Leaves,
    rhythm: &Rhythm,
    time: &TimeLeft,
    landing: &Landing,
    seed: u64,
) -> Result<Rest, ForecastError> {
    let laws: Vec<(f64, _)> = posterior
        .laws(LAWS)
        .into_iter()
        .map(|(weight, law)| (weight, move |t: f64| 1.0 - law.bitten_by(t)))
        .collect();
    let plan = Plan {
        first: leaves.first,
        leave: leaves.then,
        turn_round: rhythm.turn_round_min,
        turn_round_guessed: rhythm.turn_rounds == 0,
        settle: rhythm.settle_min,
        bite_extra: rhythm.bite_extra_min,
        reserve: 0.0,
    };
    let coming = forecast(&laws, time, &plan, landing, seed)?;
    // The laws count from when the bait has settled, the clock from the splash.
    let last = last_useful_cast(&laws, plan.leave)?.map(|last| LastCast {
        before_all_out: last.before_all_out + plan.settle,
        low: last.low + plan.settle,
        high: last.high + plan.settle,
        ..last
    });
    Ok(Rest { coming, last })
}

/// The most that can count, in grams, where every net has a limit. A net that is over it for certain counts no more than the rule
/// gives it.
fn most_g(rules: &MatchRules, running: &Running) -> Option<f64> {
    let most = |rule: &NetRule| {
        let over = running.nets.iter().find(|net| net.name == rule.name && net.is_over(rule));
        over.map_or(rule.limit.map(Weight::grams), |net| Some(rule.counts_g(rules.over_limit, net.lower_g)))
    };
    let all: Option<Vec<f64>> = rules.nets.iter().map(most).collect();
    all.map(|grams| grams.iter().sum())
}

/// Weight at the weigh-in in grams: what counts now plus what is to come. Their uncertainties are
/// independent, so the distances from the middle add in quadrature. Nets count no more than the rules give them.
pub fn finish(rules: &MatchRules, running: &Running, coming: Range) -> Range {
    let (now, most_g) = (running.counts_g, most_g(rules, running));
    let tenth =
        (running.upper_g - running.nets.iter().map(|n| n.mean_g).sum::<f64>()).max(0.0) * TENTH / UPPER;
    let likely = now + coming.likely;
    let low = likely - libm::hypot(tenth, coming.likely - coming.low);
    let high = likely + libm::hypot(tenth, coming.high - coming.likely);
    // Weighed fish are in the net already.
    let sure: f64 = running.nets.iter().map(|n| n.weighed.exact().grams()).sum::<f64>().min(now);
    let within = |grams: f64| most_g.map_or(grams, |most| grams.min(most));
    Range { low: within(low.max(sure)), likely: within(likely), high: within(high) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use restwater_match_day::class::Estimate;
    use restwater_match_day::rules::{NetHolds, OverLimit};
    use restwater_match_day::running::NearLimit;
    use restwater_match_day::running::RunningNet;
    use restwater_match_day::weight::Total;

    fn counted(mean_g: f64, upper_g: f64, grams: i64) -> Running {
        let net = RunningNet {
            name: "1".into(),
            fish: 1,
            weighed: Total { drams: 0, grams },
            estimated: Estimate::default(),
            mean_g,
            lower_g: mean_g,
            upper_g,
            near: NearLimit::Clear,
            counts_g: mean_g,
        };
        Running { nets: vec![net], not_counted: 0, counts_g: mean_g, upper_g }
    }

    fn rules(limit: Option<i64>, over_limit: OverLimit) -> MatchRules {
        let net = NetRule { name: "1".into(), limit: limit.map(Weight::Grams), holds: NetHolds::Anything };
        MatchRules { nets: vec![net], over_limit, ..MatchRules::default() }
    }

    #[test]
    fn weighed_fish_are_certain_and_net_limits_are_kept() {
        let coming = Range { low: 0.0, likely: 3_000.0, high: 7_000.0 };
        let of = |limit, over| finish(&rules(limit, over), &counted(5_000.0, 5_000.0, 5_000), coming);
        let end = of(None, OverLimit::CountsToTheLimit);
        assert_eq!((end.low, end.likely, end.high), (5_000.0, 8_000.0, 12_000.0));
        for over in [OverLimit::CountsToTheLimit, OverLimit::DoesNotCount] {
            assert_eq!(of(Some(10_000), over).high, 10_000.0);
        }
        assert_eq!(of(Some(4_000), OverLimit::CountsToTheLimit).high, 4_000.0, "over it for certain");
        assert_eq!(of(Some(4_000), OverLimit::DoesNotCount).high, 0.0, "and void");
    }

    /// By hand: 80 % ends of the count are 1.2816 / 1.6449 of its 90 % ends, 4 kg each way here; with 3 kg to come
    /// either way that makes 5 kg.
    #[test]
    fn doubts_add_up_in_quadrature() {
        let doubt = 4_000.0 * UPPER / TENTH;
        let coming = Range { low: 0.0, likely: 3_000.0, high: 6_000.0 };
        let rules = rules(None, OverLimit::CountsToTheLimit);
        let end = finish(&rules, &counted(20_000.0, 20_000.0 + doubt, 0), coming);
        assert!((end.low - 18_000.0).abs() < 1e-6 && (end.high - 28_000.0).abs() < 1e-6);
    }
}
