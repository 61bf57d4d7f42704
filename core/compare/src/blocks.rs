//! Whole blocks of casts in chronological order: a permutation test that allows for bites coming in clumps.
//!
//! Bites are not independent from cast to cast: a shoal moves in and out, the light goes. A test that
//! shuffles single casts treats one good half hour as thirty independent observations. Here the unit is the
//! block, all casts of a rod between two switches, and only whole blocks change sides.
//!
//! - A block's figure is the sum of its casts' log-rank scores (bite, less the hazard its wait used up), so
//!   that winding in later on one side does not count as more bites.
//! - Scores are computed within strata (rod and spot), blocks are permuted within a rod.
//! - Casts with a third value in between do not split a block. Otherwise a day that went from A to B once
//!   would count as many switches.
//! - Changed once, there are two blocks and two arrangements, both equally striking: p = 1. Then nothing can
//!   separate the change from the drift of the day. Alternating sides are spread evenly over a drift and
//!   random permutations are not, so drift makes p larger, not smaller.
//! - The screen is looked at all day long, and a p-value that may stop the day at any look is below 0.05 far
//!   more often than one time in twenty. So it also has to be as small without the two newest blocks.
//! - Rods fished side by side share the day's ups and downs, so their p-values are not multiplied: the
//!   smallest, times the number of rods (Bonferroni), is used.

use super::alternation::Side;
use super::error::CompareError;
use super::permutation::{Stratum, arrangements, log_rank_scores, permutation_p};
use restwater_waits::Wait;

/// Newest blocks without which the p-value must have been as small already.
pub const HELD_FOR: usize = 2;

/// A cast with its side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SidedCast {
    /// Rod.
    pub rod: u8,
    /// Splash, minutes into the day.
    pub at_min: f64,
    /// Wait.
    pub wait: Wait,
    /// Side of the change.
    pub side: Side,
    /// Stratum: casts are scored against those of the same stratum only.
    pub stratum: usize,
}

/// The casts of one rod between two switches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Block {
    /// Rod.
    pub rod: u8,
    /// Side.
    pub side: Side,
    /// Casts in it.
    pub casts: usize,
    /// Observed less expected bites.
    pub score: f64,
}

/// The block permutation test.
#[derive(Debug, Clone, PartialEq)]
pub struct BlockTest {
    /// Blocks, by rod and in time order.
    pub blocks: Vec<Block>,
    /// Observed less expected bites of side A over all rods.
    pub excess: f64,
    /// Two-sided p of all blocks so far.
    pub p: f64,
    /// The largest of the p-values now, without the newest block and without the two newest blocks. The
    /// verdict is based on it. It is 1 if one of these leaned the other way.
    pub held_p: f64,
    /// The smallest `held_p` that this number of switches could have given.
    pub smallest_p: f64,
}

impl BlockTest {
    /// Switches from one side to the other, over all rods.
    pub fn switches(&self) -> usize {
        self.blocks.windows(2).filter(|w| w[0].rod == w[1].rod).count()
    }
}

/// Log-rank score of each cast within its stratum, in the order given.
pub fn stratum_scores(casts: &[SidedCast]) -> Vec<f64> {
    let mut strata: Vec<usize> = casts.iter().map(|c| c.stratum).collect();
    strata.sort_unstable();
    strata.dedup();
    let mut scores = vec![0.0; casts.len()];
    for stratum in strata {
        let places: Vec<usize> = (0..casts.len()).filter(|&i| casts[i].stratum == stratum).collect();
        let waits: Vec<Wait> = places.iter().map(|&i| casts[i].wait).collect();
        for (place, score) in places.into_iter().zip(log_rank_scores(&waits)) {
            scores[place] = score;
        }
    }
    scores
}

/// Gathers casts into blocks, by rod and in time order.
pub fn blocks(casts: &[SidedCast]) -> Vec<Block> {
    let scores = stratum_scores(casts);
    let order = restwater_sorting::places(casts.len(), &|i, j| {
        casts[i].rod.cmp(&casts[j].rod).then(casts[i].at_min.total_cmp(&casts[j].at_min))
    });
    let mut blocks: Vec<Block> = Vec::new();
    for i in order {
        let cast = casts[i];
        match blocks.last_mut() {
            Some(last) if last.rod == cast.rod && last.side == cast.side => {
                last.casts += 1;
                last.score += scores[i];
            }
            _ => blocks.push(Block { rod: cast.rod, side: cast.side, casts: 1, score: scores[i] }),
        }
    }
    blocks
}

/// Runs the block permutation test; see the top of this file.
pub fn block_test(casts: &[SidedCast], seed: u64) -> Result<BlockTest, CompareError> {
    let now = one_look(casts, seed)?;
    let (mut held_p, mut smallest_p) = (now.p, now.smallest_p);
    let mut earlier = casts.to_vec();
    for _ in 0..HELD_FOR {
        earlier = without_newest(&earlier);
        let (p, smallest) = match one_look(&earlier, seed) {
            Ok(then) if then.excess * now.excess > 0.0 => (then.p, then.smallest_p),
            Ok(then) => (1.0, then.smallest_p),
            Err(_) => (1.0, 1.0),
        };
        held_p = held_p.max(p);
        smallest_p = smallest_p.max(smallest);
    }
    Ok(BlockTest { held_p, smallest_p, ..now })
}

/// The casts before each rod's newest block, in chronological order for each rod.
fn without_newest(casts: &[SidedCast]) -> Vec<SidedCast> {
    let mut order = casts.to_vec();
    restwater_sorting::by(&mut order, |x, y| x.rod.cmp(&y.rod).then(x.at_min.total_cmp(&y.at_min)));
    let kept = |rod: &[SidedCast]| -> Vec<SidedCast> {
        let newest = rod.iter().rev().take_while(|c| Some(c.side) == rod.last().map(|l| l.side)).count();
        rod[..rod.len() - newest].to_vec()
    };
    order.chunk_by(|x, y| x.rod == y.rod).flat_map(kept).collect()
}

fn one_look(casts: &[SidedCast], seed: u64) -> Result<BlockTest, CompareError> {
    let blocks = blocks(casts);
    if !blocks.iter().any(|b| b.side == Side::A) || !blocks.iter().any(|b| b.side == Side::B) {
        return Err(CompareError::EmptyGroup);
    }
    let excess = blocks.iter().filter(|b| b.side == Side::A).map(|b| b.score).sum::<f64>();
    let mut rods: Vec<u8> = blocks.iter().map(|b| b.rod).collect();
    rods.dedup();
    let strata: Vec<Stratum> = rods.into_iter().filter_map(|rod| of_rod(&blocks, rod)).collect();
    // A rod on which nothing was switched is no evidence, but does not count against the others.
    let rods = strata.len() as f64;
    let (mut p, mut smallest_p) = (1.0_f64, 1.0_f64);
    for stratum in strata {
        smallest_p = smallest_p.min(smallest(&stratum) * rods);
        let test = permutation_p(&[stratum], seed)?;
        // Rods that lean the other way, or not at all beyond rounding, are no evidence for it.
        if test.observed * excess > 1e-12 {
            p = p.min(test.two_sided * rods);
        }
    }
    Ok(BlockTest { blocks, excess, p, held_p: p, smallest_p })
}

/// The blocks of one rod, centred, side A first; `None` if a side is missing.
pub(crate) fn of_rod(blocks: &[Block], rod: u8) -> Option<Stratum> {
    let of = |side| blocks.iter().filter(move |b| b.rod == rod && b.side == side).map(|b| b.score);
    let on_a = of(Side::A).count();
    let mut scores: Vec<f64> = of(Side::A).chain(of(Side::B)).collect();
    if on_a == 0 || on_a == scores.len() {
        return None;
    }
    // A stratum may include several rods, and each rod has to be centred for its distance from zero.
    let mean = scores.iter().sum::<f64>() / scores.len() as f64;
    for score in &mut scores {
        *score -= mean;
    }
    Some(Stratum { scores, on_a })
}

/// The smallest possible p. With as many blocks on A as on B each arrangement has a mirror image equally far
/// from zero.
fn smallest(stratum: &Stratum) -> f64 {
    let mirrored = stratum.scores.len() == 2 * stratum.on_a;
    let all = arrangements(stratum.scores.len(), stratum.on_a).map_or(f64::INFINITY, |n| n as f64);
    if mirrored { 2.0 / all } else { 1.0 / all }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chance::Chance;
    use proptest::prelude::*;

    fn cast(rod: u8, at: usize, minutes: f64, bite: bool, side: Side) -> SidedCast {
        SidedCast {
            rod,
            at_min: 15.0 * at as f64,
            wait: Wait::new(minutes, bite).unwrap(),
            side,
            stratum: usize::from(rod),
        }
    }

    fn day(letters: &str, bite: impl Fn(usize, Side) -> bool) -> Vec<SidedCast> {
        letters
            .chars()
            .enumerate()
            .map(|(i, letter)| {
                let side = if letter == 'A' { Side::A } else { Side::B };
                let bite = bite(i, side);
                cast(1, i, if bite { 6.0 } else { 12.0 }, bite, side)
            })
            .collect()
    }

    #[test]
    fn a_single_switch_is_no_evidence_however_striking() {
        let casts = day("AAAAAAAAAABBBBBBBBBB", |_, side| side == Side::B);
        let test = block_test(&casts, 1).unwrap();
        assert_eq!((test.p, test.switches(), test.blocks.len()), (1.0, 1, 2));
        assert_eq!(test.smallest_p, 1.0);
    }

    #[test]
    fn a_third_value_in_between_does_not_make_switches() {
        // The casts with the third value are left out: what remains went from A to B once.
        let all = day("AAAAAAAABBBBBBBB", |_, side| side == Side::B);
        let kept: Vec<SidedCast> = all.into_iter().step_by(2).collect();
        assert_eq!(block_test(&kept, 1).unwrap().p, 1.0);
    }

    #[test]
    fn eight_switches_with_bites_on_one_side_only_give_a_small_p() {
        let casts = day("ABBAABBAABBAABBA", |_, side| side == Side::A);
        let test = block_test(&casts, 1).unwrap();
        assert_eq!(test.blocks.len(), 9);
        assert!(test.p < 0.02, "{test:?}");
        // Held: with seven blocks, 4 of A and 3 of B, 1 arrangement of 35 is as striking.
        assert!((test.smallest_p - 1.0 / 35.0).abs() < 1e-12);
        assert!(test.held_p >= test.smallest_p && test.held_p < 0.05);
    }

    #[test]
    fn a_pure_drift_does_not_count_as_an_effect() {
        for letters in ["ABABABABABABABAB", "AABBAABBAABBAABB", "ABBAABBAABBAABBA"] {
            let casts = day(letters, |i, _| i >= 8);
            assert!(block_test(&casts, 1).unwrap().p > 0.2, "{letters}");
        }
    }

    #[test]
    fn a_missing_side_is_refused() {
        assert_eq!(block_test(&day("AAA", |_, _| true), 1), Err(CompareError::EmptyGroup));
    }

    #[test]
    fn two_rods_do_not_multiply_their_evidence() {
        let one = day("ABBAABBAABBAABBA", |_, side| side == Side::A);
        let mut both = one.clone();
        both.extend(one.iter().map(|c| SidedCast { rod: 2, stratum: 2, ..*c }));
        let (single, double) = (block_test(&one, 1).unwrap(), block_test(&both, 1).unwrap());
        assert!((double.p - 2.0 * single.p).abs() < 1e-12);
    }

    /// Directly from the definition: all ways of choosing which blocks are on A.
    fn brute(blocks: &[Block]) -> f64 {
        let mean = blocks.iter().map(|b| b.score).sum::<f64>() / blocks.len() as f64;
        let on_a = blocks.iter().filter(|b| b.side == Side::A).count();
        let sum = |mask: u32| -> f64 {
            (0..blocks.len()).filter(|i| mask >> i & 1 == 1).map(|i| blocks[i].score - mean).sum()
        };
        let observed =
            (0..blocks.len()).filter(|&i| blocks[i].side == Side::A).fold(0u32, |mask, i| mask | 1 << i);
        let limit = sum(observed).abs() - 1e-9;
        let masks: Vec<u32> = (0u32..1 << blocks.len()).filter(|m| m.count_ones() as usize == on_a).collect();
        masks.iter().filter(|&&m| sum(m).abs() >= limit).count() as f64 / masks.len() as f64
    }

    proptest! {
        #[test]
        fn p_agrees_with_brute_force(seed in 0u64..5_000) {
            let mut chance = Chance::new(seed, 0);
            let casts: Vec<SidedCast> = (0..14)
                .map(|i| {
                    let side = if chance.happens(0.5) { Side::A } else { Side::B };
                    cast(1, i, (chance.uniform() * 30.0).round() / 2.0, chance.happens(0.4), side)
                })
                .collect();
            let Ok(test) = block_test(&casts, 1) else { return Ok(()) };
            if test.excess.abs() > 1e-5 {
                prop_assert!((test.p - brute(&test.blocks)).abs() < 1e-12);
            }
            prop_assert!(test.held_p >= test.p && test.held_p >= test.smallest_p - 1e-12);
        }

        #[test]
        fn swapping_names_changes_nothing(seed in 0u64..5_000) {
            let mut chance = Chance::new(seed, 1);
            let casts: Vec<SidedCast> = (0..20)
                .map(|i| {
                    let side = if chance.happens(0.5) { Side::A } else { Side::B };
                    cast(1 + (i % 2) as u8, i, chance.uniform() * 15.0, chance.happens(0.4), side)
                })
                .collect();
            let turned: Vec<SidedCast> =
                casts.iter().map(|c| SidedCast { side: c.side.other(), ..*c }).collect();
            if let (Ok(one), Ok(two)) = (block_test(&casts, 3), block_test(&turned, 3)) {
                prop_assert!((one.p - two.p).abs() < 1e-12 && (one.held_p - two.held_p).abs() < 1e-12);
                prop_assert!((one.excess + two.excess).abs() < 1e-9);
            }
        }
    }
}
