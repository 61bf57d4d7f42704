//! The complete finding for each change of a session.

use super::Factor;
use super::alternation::Side;
use super::any_look::any_look_p_in_order;
use super::belief::{Belief, belief, belief_of_waits, spell_variance};
use super::binomial::Limits;
use super::blocks::{BlockTest, SidedCast, block_test};
use super::cast_row::CastRow;
use super::changes::{Change, find_changes};
use super::error::CompareError;
use super::holm::holm;
use super::more_casts::{Looks, MoreCasts, more_casts};
use super::poisson_rates::{Tally, conditional_test, garwood, rate_ratio};
use super::verdict::{
    CLEAR_BELOW, Evidence, FEWEST_BITES, FEWEST_CASTS, LEANS_FROM, Reason, Verdict, verdict,
};
use restwater_waits::Wait;

/// Level of every interval given with a finding.
pub const INTERVAL_LEVEL: f64 = 0.95;

/// One side of a change.
#[derive(Debug, Clone, PartialEq)]
pub struct SideRecord {
    /// Value of the factor on this side.
    pub value: String,
    /// Casts.
    pub casts: usize,
    /// Minutes out.
    pub minutes: f64,
    /// Bites.
    pub bites: u64,
    /// Bites per hour.
    pub per_hour: f64,
    /// Exact limits of the bites per hour (Garwood), 95 %.
    pub per_hour_limits: Limits,
}

/// One change compared with what it replaced. Side A is the old value, B the new one.
#[derive(Debug, Clone, PartialEq)]
pub struct ChangeFinding {
    /// What was changed.
    pub factor: Factor,
    /// What was there before.
    pub a: SideRecord,
    /// What replaced it.
    pub b: SideRecord,
    /// Switches made, back and forth, over all rods.
    pub switches: usize,
    /// Ratio of the rates A / B by the minutes; `None` when B has no bites.
    pub ratio: Option<f64>,
    /// Exact 95 % limits of that ratio (Clopper-Pearson on the condition).
    pub ratio_limits: Limits,
    /// Which side is better, by the minutes.
    pub belief_by_minutes: Belief,
    /// Which side is better at equal waits, so that being left longer counts for neither side.
    pub belief_by_waits: Belief,
    /// The smaller claim of the two, on which the verdict is based.
    pub belief: Belief,
    /// Exact conditional p, two-sided (doubled tail).
    pub exact_p: f64,
    /// Block permutation p, with its blocks.
    pub block: BlockTest,
    /// Exact conditional p after Holm.
    pub exact_p_adjusted: f64,
    /// Block p, held through the newest switches, after Holm.
    pub block_p_adjusted: f64,
    /// Anytime-valid p of equal rates, times k (k + 1) for the k-th change of the session, at most 1.
    pub any_look_p_adjusted: f64,
    /// Number of changes looked at in this session, for which the p-values are adjusted.
    pub looked_at: usize,
    /// How many more casts it would take; `None` if it was not computed.
    pub more_casts: Option<MoreCasts>,
    /// The verdict.
    pub verdict: Verdict,
    /// Why no stronger verdict is possible, in a fixed order; empty for "clearly better".
    pub reasons: Vec<Reason>,
}

/// Finds the changes of a session in its casts and evaluates each, in the order in which they could first
/// be seen. Pairs of values of which one was never out for any time are left out and not counted. `seed`
/// determines the random permutations and the simulated casts.
pub fn change_findings(rows: &[CastRow], seed: u64) -> Result<Vec<ChangeFinding>, CompareError> {
    findings(rows, seed, true)
}

/// The same without [`ChangeFinding::more_casts`], whose simulation takes most of the time.
pub fn change_findings_without_power(
    rows: &[CastRow],
    seed: u64,
) -> Result<Vec<ChangeFinding>, CompareError> {
    findings(rows, seed, false)
}

fn findings(rows: &[CastRow], seed: u64, power: bool) -> Result<Vec<ChangeFinding>, CompareError> {
    if let Some(bad) = rows.iter().map(|r| r.at_min).find(|t| !t.is_finite()) {
        return Err(CompareError::NotATime(bad));
    }
    let mut drafts = Vec::new();
    for change in find_changes(rows) {
        let tallies = [0, 1].map(|side| tally(rows, &change.places[side]));
        if tallies.iter().all(|t| t.time > 0.0) {
            drafts.push(Draft::new(rows, change, tallies, seed)?);
        }
    }
    let exact = holm(&drafts.iter().map(|d| d.exact_p).collect::<Vec<_>>());
    let block = holm(&drafts.iter().map(|d| d.block.held_p).collect::<Vec<_>>());
    let looked_at = drafts.len();
    let finish = |(i, ((draft, exact), block)): (usize, ((Draft, f64), f64))| {
        let looks = Looks { looked_at, place: i + 1 };
        let more = power.then(|| draft.more_casts(looks, seed));
        Ok(ChangeFinding { more_casts: more, ..draft.finish(rows, exact, block, looks)? })
    };
    drafts.into_iter().zip(exact).zip(block).enumerate().map(finish).collect()
}

fn tally(rows: &[CastRow], places: &[usize]) -> Tally {
    let waits = || places.iter().map(|&i| rows[i].wait);
    Tally { bites: waits().filter(|w| w.is_bite()).count() as u64, time: waits().map(Wait::minutes).sum() }
}

/// A finding before the number of changes is known.
struct Draft {
    change: Change,
    casts: Vec<SidedCast>,
    tallies: [Tally; 2],
    exact_p: f64,
    block: BlockTest,
}

impl Draft {
    fn new(rows: &[CastRow], change: Change, tallies: [Tally; 2], seed: u64) -> Result<Self, CompareError> {
        let casts = change.sided(rows);
        let exact_p = conditional_test(tallies[0], tallies[1])?.two_sided;
        let block = block_test(&casts, seed)?;
        Ok(Self { change, casts, tallies, exact_p, block })
    }

    fn finish(
        self,
        rows: &[CastRow],
        exact_p_adjusted: f64,
        block_p_adjusted: f64,
        looks: Looks,
    ) -> Result<ChangeFinding, CompareError> {
        let [in_a, in_b] = self.tallies;
        let strata = two_sided_strata(&self.casts);
        let scatter = spell_variance(&self.casts);
        let by_minutes = belief(in_a, in_b, scatter);
        let by_waits = belief_of_waits(&strata, scatter);
        let ratio = rate_ratio(in_a, in_b, INTERVAL_LEVEL)?;
        let mut finding = ChangeFinding {
            factor: self.change.factor,
            a: self.side(rows, Side::A)?,
            b: self.side(rows, Side::B)?,
            switches: self.block.switches(),
            ratio: ratio.ratio,
            ratio_limits: ratio.limits,
            belief_by_minutes: by_minutes,
            belief_by_waits: by_waits,
            belief: by_minutes.more_cautious(by_waits),
            exact_p: self.exact_p,
            exact_p_adjusted,
            block_p_adjusted,
            any_look_p_adjusted: any_look_p_in_order(in_a, in_b, looks.place),
            looked_at: looks.looked_at,
            more_casts: None,
            verdict: Verdict::CantTellYet,
            reasons: Vec::new(),
            block: self.block,
        };
        finding.verdict = verdict(&finding.evidence(!self.change.changed_together.is_empty()));
        finding.reasons = finding.reasons(&self.change.changed_together);
        Ok(finding)
    }

    fn more_casts(&self, looks: Looks, seed: u64) -> MoreCasts {
        more_casts(&self.casts, self.tallies, habit(&self.casts), looks, seed)
    }

    fn side(&self, rows: &[CastRow], side: Side) -> Result<SideRecord, CompareError> {
        let which = usize::from(side == Side::B);
        let value = if side == Side::A { &self.change.before } else { &self.change.after };
        let tally = self.tallies[which];
        let per_hour = |count: f64| 60.0 * count / tally.time;
        let limits = garwood(tally.bites, INTERVAL_LEVEL)?;
        Ok(SideRecord {
            value: value.clone(),
            casts: self.change.places[which].iter().filter(|&&i| !rows[i].twitched).count(),
            minutes: tally.time,
            bites: tally.bites,
            per_hour: per_hour(tally.bites as f64),
            per_hour_limits: Limits { low: per_hour(limits.low), high: per_hour(limits.high) },
        })
    }
}

impl ChangeFinding {
    fn evidence(&self, changed_together: bool) -> Evidence {
        Evidence {
            bites: self.a.bites + self.b.bites,
            fewest_casts: self.a.casts.min(self.b.casts),
            switches: self.switches,
            belief: self.belief,
            block_p: self.block_p_adjusted,
            any_look_p: self.any_look_p_adjusted,
            changed_together,
        }
    }

    fn reasons(&self, changed_together: &[Factor]) -> Vec<Reason> {
        if matches!(self.verdict, Verdict::ClearlyBetterHereToday(_)) {
            return Vec::new();
        }
        let leans = |belief: Belief| belief.better().1 >= LEANS_FROM;
        let likely = |belief: Belief| belief.better().1 >= 0.5;
        let switched_once_a_rod = self.block.blocks.len() <= self.switches + 1 && self.switches == 1;
        let clumped = self.exact_p < CLEAR_BELOW && self.block.p >= CLEAR_BELOW;
        let checks = [
            (Reason::TooFewBites, self.a.bites + self.b.bites < FEWEST_BITES),
            (Reason::TooFewCasts, self.a.casts.min(self.b.casts) < FEWEST_CASTS),
            (Reason::ChangedOnce, switched_once_a_rod),
            (Reason::TooFewSwitches, !switched_once_a_rod && self.block.smallest_p >= CLEAR_BELOW),
            (Reason::BitesInClumps, clumped && self.block.smallest_p < CLEAR_BELOW),
            (Reason::NotHeldYet, self.block.p < CLEAR_BELOW && self.block.held_p >= CLEAR_BELOW),
            (
                Reason::ManyLooks,
                self.block.held_p < CLEAR_BELOW && self.block_p_adjusted >= CLEAR_BELOW && leans(self.belief),
            ),
            (
                Reason::ReadAllDay,
                self.block_p_adjusted < CLEAR_BELOW
                    && self.any_look_p_adjusted >= CLEAR_BELOW
                    && leans(self.belief),
            ),
            (Reason::LeftForDifferentTimes, likely(self.belief_by_minutes) && !likely(self.belief)),
        ];
        let mut reasons: Vec<Reason> =
            checks.into_iter().filter(|(_, holds)| *holds).map(|(reason, _)| reason).collect();
        reasons.extend(changed_together.iter().map(|&f| Reason::ChangedTogether(f)));
        reasons
    }
}

/// The waits of each stratum that contains both sides, A and B.
pub(crate) fn two_sided_strata(casts: &[SidedCast]) -> Vec<(Vec<Wait>, Vec<Wait>)> {
    let strata = casts.iter().map(|c| c.stratum + 1).max().unwrap_or(0);
    let of = |stratum, side| -> Vec<Wait> {
        casts.iter().filter(|c| c.stratum == stratum && c.side == side).map(|c| c.wait).collect()
    };
    (0..strata)
        .map(|s| (of(s, Side::A), of(s, Side::B)))
        .filter(|(a, b)| !a.is_empty() && !b.is_empty())
        .collect()
}

/// How long casts without a bite were left: their median, or the longest wait if all had a bite.
pub(crate) fn habit(casts: &[SidedCast]) -> f64 {
    let mut left: Vec<f64> = casts.iter().filter(|c| !c.wait.is_bite()).map(|c| c.wait.minutes()).collect();
    left.sort_by(f64::total_cmp);
    let longest = casts.iter().map(|c| c.wait.minutes()).fold(0.0, f64::max);
    left.get(left.len() / 2).copied().filter(|&m| m > 0.0).unwrap_or(longest)
}

#[cfg(test)]
mod tests;
