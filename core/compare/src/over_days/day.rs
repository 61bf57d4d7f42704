//! One day of a question.

use super::by_casts::Pair;
use super::curve::Curve;
use crate::Factor;
use crate::alternation::Side;
use crate::belief::spell_variance;
use crate::blocks::{Block, SidedCast, blocks, of_rod};
use crate::cast_row::CastRow;
use crate::changes::{Change, find_changes};
use crate::finding::{habit, two_sided_strata};
use crate::permutation::Stratum;
use crate::poisson_rates::Tally;
use crate::verdict::FEWEST_SWITCHES;
use restwater_waits::Wait;
use std::iter::Sum;

/// What one side brought.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SideCount {
    /// Casts.
    pub casts: usize,
    /// Bites.
    pub bites: u64,
    /// Minutes out.
    pub minutes: f64,
}

impl Sum for SideCount {
    fn sum<I: Iterator<Item = Self>>(sides: I) -> Self {
        sides.fold(Self::default(), |all, one| Self {
            casts: all.casts + one.casts,
            bites: all.bites + one.bites,
            minutes: all.minutes + one.minutes,
        })
    }
}

/// A pair of values that was compared on a day. `a` is the first in alphabetical order, so that the question
/// is the same whichever of the two came first.
#[derive(Debug, Clone, PartialEq)]
pub struct Compared {
    /// What was changed.
    pub factor: Factor,
    /// One value (side A).
    pub a: String,
    /// The other (side B).
    pub b: String,
    /// Switches from one to the other, over all rods.
    pub switches: usize,
    /// Whether nothing else was changed with it each time.
    pub alone: bool,
    /// Indices of its casts in the rows of the day.
    places: [Vec<usize>; 2],
    /// Rod, spot and side of each.
    casts: Vec<SidedCast>,
}

impl Compared {
    /// Whether the day counts for it: changed back and forth often enough, and nothing else with it each time.
    pub fn counts(&self) -> bool {
        self.alone && self.switches >= FEWEST_SWITCHES
    }

    /// The evidence of the day. `rows` are those in which the pair was found.
    pub fn day(&self, rows: &[CastRow]) -> DayOfQuestion {
        let (casts, strata) = (&self.casts, two_sided_strata(&self.casts));
        let scatter = spell_variance(casts);
        let (mut minutes, mut waits) = (Curve::flat(), Curve::flat());
        for (a, b) in &strata {
            let (in_a, in_b) = (tally(a), tally(b));
            if in_a.time > 0.0 && in_b.time > 0.0 {
                minutes.add(&Curve::of_minutes(in_a, in_b));
            }
            waits.add(&Curve::of_waits(a, b));
        }
        let whole: Vec<bool> = self.places.iter().flatten().map(|&i| !rows[i].twitched).collect();
        DayOfQuestion {
            sides: self.places.each_ref().map(|places| count(rows, places)),
            counts: self.counts(),
            leave_min: habit(casts),
            scatter,
            minutes_blurred: minutes.blurred(scatter),
            waits_blurred: waits.blurred(scatter),
            minutes,
            waits,
            pairs: pairs(casts, &whole),
            blocks: of_most_switched(&blocks(casts)),
        }
    }

    fn of(change: Change, rows: &[CastRow]) -> Option<Self> {
        let mut casts = change.sided(rows);
        let Change { factor, before, after, mut places, changed_together } = change;
        let turn = before > after;
        let (a, b) = if turn { (after, before) } else { (before, after) };
        if turn {
            let on_a = places[0].len();
            casts.rotate_left(on_a);
            for cast in &mut casts {
                cast.side = cast.side.other();
            }
            places.swap(0, 1);
        }
        let fished = |side: Side| casts.iter().any(|cast| cast.side == side && cast.wait.minutes() > 0.0);
        if !(may_be_asked(factor) && fished(Side::A) && fished(Side::B)) {
            return None;
        }
        let (switches, alone) = (switches(&casts), changed_together.is_empty());
        Some(Self { factor, a, b, switches, alone, places, casts })
    }
}

/// The evidence of a day for a question, computed once from the day's casts.
#[derive(Debug, Clone, PartialEq)]
pub struct DayOfQuestion {
    /// What each side brought.
    pub sides: [SideCount; 2],
    /// Whether it counts.
    pub counts: bool,
    /// How long casts without a bite were left, minutes.
    pub(super) leave_min: f64,
    /// Variance by which spells alone may have pulled ln r.
    pub(super) scatter: f64,
    pub(super) minutes: Curve,
    pub(super) waits: Curve,
    pub(super) minutes_blurred: Curve,
    pub(super) waits_blurred: Curve,
    pub(super) pairs: Vec<Pair>,
    pub(super) blocks: Option<Stratum>,
}

fn tally(waits: &[Wait]) -> Tally {
    let bites = waits.iter().filter(|wait| wait.is_bite()).count() as u64;
    Tally { bites, time: waits.iter().map(|wait| wait.minutes()).sum() }
}

fn switches(casts: &[SidedCast]) -> usize {
    let mut order: Vec<&SidedCast> = casts.iter().collect();
    restwater_sorting::by(&mut order, |x, y| x.rod.cmp(&y.rod).then(x.at_min.total_cmp(&y.at_min)));
    order.windows(2).filter(|pair| pair[0].rod == pair[1].rod && pair[0].side != pair[1].side).count()
}

fn count(rows: &[CastRow], places: &[usize]) -> SideCount {
    let of = || places.iter().map(|&i| &rows[i]);
    SideCount {
        casts: of().filter(|row| !row.twitched).count(),
        bites: of().filter(|row| row.wait.is_bite()).count() as u64,
        minutes: of().map(|row| row.wait.minutes()).sum(),
    }
}

/// Rods fished side by side share the ups and downs of a day, so only the one that was switched most is used.
fn of_most_switched(blocks: &[Block]) -> Option<Stratum> {
    let rods = blocks.chunk_by(|x, y| x.rod == y.rod);
    let most = rods.rev().max_by_key(|rod| rod.len())?;
    of_rod(blocks, most[0].rod)
}

/// Pairs of casts of a stratum, the first of A with the first of B and so on, in the order in which the pairs
/// were completed.
fn pairs(casts: &[SidedCast], whole: &[bool]) -> Vec<Pair> {
    let mut order: Vec<&SidedCast> =
        casts.iter().zip(whole).filter(|(_, whole)| **whole).map(|(c, _)| c).collect();
    restwater_sorting::by(&mut order, |x, y| x.at_min.total_cmp(&y.at_min).then(x.rod.cmp(&y.rod)));
    let strata = order.iter().map(|cast| cast.stratum + 1).max().unwrap_or(0);
    let mut waiting: Vec<[Vec<bool>; 2]> = vec![[Vec::new(), Vec::new()]; strata];
    let mut pairs = Vec::new();
    for cast in order {
        let here = &mut waiting[cast.stratum];
        let side = usize::from(cast.side == Side::B);
        if here[1 - side].is_empty() {
            here[side].push(cast.wait.is_bite());
            continue;
        }
        let other = here[1 - side].remove(0);
        let bite = cast.wait.is_bite();
        pairs.push(if side == 0 { [bite, other] } else { [other, bite] });
    }
    pairs
}

/// Whether a question over days is possible for a factor: only if it can be alternated on one spot. Feed
/// can't, since it is still there for the next cast.
pub fn may_be_asked(factor: Factor) -> bool {
    !matches!(factor, Factor::Spot | Factor::Feed | Factor::FeedAmount)
}

/// The pairs of values compared on a day, in the order in which each was first changed.
pub fn compared(rows: &[CastRow]) -> Vec<Compared> {
    find_changes(rows).into_iter().filter_map(|change| Compared::of(change, rows)).collect()
}
