//! Cutting new hooklengths from the line left on spools.
//!
//! This is one-dimensional cutting stock with stock of mixed lengths: use spools with as little line in total
//! as possible, so that short remnants go first and long spools stay whole, and among equal plans the fewest
//! spools (the problem: Gilmore and Gomory, "A linear programming approach to the cutting-stock problem",
//! Oper. Res. 9:849-859 (1961)). Problems of the size of a bench are solved exactly: sets of spools are tried
//! from the shortest total up, each by branch and bound.

use super::hooklength::Tied;
use super::units::LineLength;
use serde::{Deserialize, Serialize};

/// Line that a tie uses beyond its finished length, as the angler measured it on three ties.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Allowances {
    /// Taken by the knot at the hook, hair and tag included.
    pub hook_knot: LineLength,
    /// Length of the loop; it takes twice that.
    pub loop_length: LineLength,
    /// Tag left at the loop knot.
    pub tag: LineLength,
}

impl Allowances {
    /// The length to cut for a finished length: finished + hook knot + 2 x loop + tag.
    pub fn cut_for(self, finished: LineLength) -> LineLength {
        let spare = self.hook_knot.tenths_mm() + 2 * self.loop_length.tenths_mm() + self.tag.tenths_mm();
        LineLength::from_tenths_mm(finished.tenths_mm().saturating_add(spare))
    }
}

/// Lengths to cut from one line (its diameter in thousandths of a millimetre) for all that is to be tied.
pub fn cuts(to_tie: &[Tied], diameter_um: u16, allowances: Allowances) -> Vec<LineLength> {
    let of_it = to_tie.iter().filter(|t| t.hooklength.diameter_um == diameter_um);
    of_it
        .flat_map(|t| std::iter::repeat_n(allowances.cut_for(t.hooklength.length), usize::from(t.count)))
        .collect()
}

/// What is cut from one spool.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FromSpool {
    /// Which spool, counted as they were given.
    pub spool: usize,
    /// Lengths to cut, allowances included, longest first.
    pub cuts: Vec<LineLength>,
    /// Line left on it.
    pub left: LineLength,
}

/// The plan for one line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TieUp {
    /// Spools to open, in the order given.
    pub from: Vec<FromSpool>,
    /// Line on the spools that are opened.
    pub opened: LineLength,
    /// No plan can open less line than this; equal to `opened` if the plan is proved to be the best.
    pub at_least: LineLength,
}

impl TieUp {
    /// Whether no better plan exists.
    pub fn is_best(&self) -> bool {
        self.opened == self.at_least
    }
}

/// Why there is no plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum TieUpError {
    /// One hooklength is longer than any spool.
    #[error("no spool holds the {cut} to cut for one hooklength; the longest holds {longest}")]
    NoSpoolLongEnough {
        /// Length to cut, allowances included.
        cut: LineLength,
        /// The fullest spool.
        longest: LineLength,
    },
    /// All spools together are too short.
    #[error("the ties need {needed} of line and the spools hold {held}")]
    NotEnoughLine {
        /// Line to cut in all.
        needed: LineLength,
        /// Line held in all.
        held: LineLength,
    },
    /// There is enough line in total, but no way was found to cut all pieces.
    #[error("the ties don't fit the spools piece by piece; the first that finds no room is {cut}")]
    DoesNotFit {
        /// The longest cut without room.
        cut: LineLength,
    },
    /// More than anyone ties in an evening.
    #[error("{0} ties are more than this plans at once ({MOST_TIES})")]
    TooManyTies(usize),
    /// More spools of one line than a bench holds.
    #[error("{0} spools of one line are more than this plans at once ({MOST_SPOOLS})")]
    TooManySpools(usize),
}

/// Most ties in one plan.
const MOST_TIES: usize = 500;
/// Most spools in one plan.
const MOST_SPOOLS: usize = 40;
/// Placements tried before the search stops looking for a proof and states by how much it may be off.
const PLACEMENTS: u32 = 300_000;
/// Up to this many spools every set is tried; with more, only those that take the shortest first.
const SETS_OF: usize = 12;

/// Plans `cuts` (allowances included) from `spools` of the same line.
pub fn plan(spools: &[LineLength], cuts: &[LineLength]) -> Result<TieUp, TieUpError> {
    check(spools, cuts)?;
    let mut cuts: Vec<u32> = cuts.iter().map(|c| c.tenths_mm()).collect();
    cuts.sort_unstable_by(|a, b| b.cmp(a));
    let lengths: Vec<u32> = spools.iter().map(|s| s.tenths_mm()).collect();
    let needed: u64 = cuts.iter().map(|&c| u64::from(c)).sum();
    let mut placements = PLACEMENTS;
    // With too many spools to try every set, the only known bound is the total length of the cuts.
    let mut at_least = (lengths.len() > SETS_OF).then_some(needed);
    for set in sets(&lengths, needed) {
        let mut search = Packing::new(&lengths, &set, &cuts);
        // When the budget is used up, each set still gets one descent: longest cut first, first that fits.
        let mut patience = placements.max(cuts.len() as u32);
        let result = search.place(0, &mut patience);
        placements = placements.min(patience);
        match result {
            Search::Found => return Ok(search.into_plan(&lengths, at_least)),
            Search::Impossible => {}
            Search::GaveUp => at_least = at_least.or(Some(total(&lengths, &set))),
        }
    }
    Err(no_room(&lengths, &cuts))
}

fn check(spools: &[LineLength], cuts: &[LineLength]) -> Result<(), TieUpError> {
    if cuts.len() > MOST_TIES {
        return Err(TieUpError::TooManyTies(cuts.len()));
    }
    if spools.len() > MOST_SPOOLS {
        return Err(TieUpError::TooManySpools(spools.len()));
    }
    let sum = |all: &[LineLength]| all.iter().map(|l| l.tenths_mm()).fold(0, u32::saturating_add);
    let (needed, held) = (sum(cuts), sum(spools));
    if held < needed {
        let (needed, held) = (LineLength::from_tenths_mm(needed), LineLength::from_tenths_mm(held));
        return Err(TieUpError::NotEnoughLine { needed, held });
    }
    let (cut, longest) = (cuts.iter().max(), spools.iter().max());
    match (cut, longest) {
        (Some(&cut), Some(&longest)) if cut > longest => Err(TieUpError::NoSpoolLongEnough { cut, longest }),
        _ => Ok(()),
    }
}

fn total(lengths: &[u32], set: &[usize]) -> u64 {
    set.iter().map(|&i| u64::from(lengths[i])).sum()
}

/// Sets of spools that hold enough line, by total, then by number, then as given.
fn sets(lengths: &[u32], needed: u64) -> Vec<Vec<usize>> {
    let order = restwater_sorting::places(lengths.len(), &|i, j| (lengths[i], i).cmp(&(lengths[j], j)));
    let every = lengths.len() <= SETS_OF;
    let mut sets: Vec<Vec<usize>> = if every {
        (0_u32..1 << lengths.len())
            .map(|bits| order.iter().copied().filter(|i| bits >> i & 1 == 1).collect())
            .collect()
    } else {
        (0..=lengths.len()).map(|n| order[..n].to_vec()).collect()
    };
    sets.retain(|set| total(lengths, set) >= needed);
    restwater_sorting::by_key(&mut sets, |set| (total(lengths, set), set.len(), set.clone()));
    sets
}

enum Search {
    Found,
    Impossible,
    GaveUp,
}

/// Depth-first packing of the cuts, longest first, into one set of spools.
struct Packing<'a> {
    set: &'a [usize],
    cuts: &'a [u32],
    left: Vec<u32>,
    at: Vec<usize>,
}

impl<'a> Packing<'a> {
    fn new(lengths: &[u32], set: &'a [usize], cuts: &'a [u32]) -> Self {
        let left = set.iter().map(|&i| lengths[i]).collect();
        Self { set, cuts, left, at: vec![0; cuts.len()] }
    }

    /// Places cut `k` and all after it. Of spools with the same line left only one is tried, and of equal
    /// cuts a later one never goes to an earlier spool.
    fn place(&mut self, k: usize, placements: &mut u32) -> Search {
        let Some(&cut) = self.cuts.get(k) else { return Search::Found };
        let from = if k > 0 && self.cuts[k - 1] == cut { self.at[k - 1] } else { 0 };
        let mut gave_up = false;
        for slot in from..self.left.len() {
            let room = self.left[slot];
            if room < cut || self.left[from..slot].contains(&room) {
                continue;
            }
            if *placements == 0 {
                return Search::GaveUp;
            }
            *placements -= 1;
            self.left[slot] -= cut;
            self.at[k] = slot;
            match self.place(k + 1, placements) {
                Search::Found => return Search::Found,
                Search::Impossible => {}
                Search::GaveUp => gave_up = true,
            }
            self.left[slot] += cut;
        }
        if gave_up { Search::GaveUp } else { Search::Impossible }
    }

    fn into_plan(self, lengths: &[u32], at_least: Option<u64>) -> TieUp {
        let mut from: Vec<FromSpool> = (0..self.set.len())
            .map(|slot| FromSpool {
                spool: self.set[slot],
                cuts: (0..self.cuts.len())
                    .filter(|&k| self.at[k] == slot)
                    .map(|k| LineLength::from_tenths_mm(self.cuts[k]))
                    .collect(),
                left: LineLength::from_tenths_mm(self.left[slot]),
            })
            .filter(|f| !f.cuts.is_empty())
            .collect();
        restwater_sorting::by_key(&mut from, |f| f.spool);
        let opened: u64 = from.iter().map(|f| u64::from(lengths[f.spool])).sum();
        let at_least = at_least.map_or(opened, |bound| bound.min(opened));
        let length = |sum: u64| LineLength::from_tenths_mm(u32::try_from(sum).unwrap_or(u32::MAX));
        TieUp { from, opened: length(opened), at_least: length(at_least) }
    }
}

/// The longest cut for which first fit, longest cut first, finds no room.
fn no_room(lengths: &[u32], cuts: &[u32]) -> TieUpError {
    let mut left = lengths.to_vec();
    left.sort_unstable();
    for &cut in cuts {
        match left.iter_mut().find(|room| **room >= cut) {
            Some(room) => *room -= cut,
            None => return TieUpError::DoesNotFit { cut: LineLength::from_tenths_mm(cut) },
        }
    }
    TieUpError::DoesNotFit { cut: LineLength::from_tenths_mm(cuts.last().copied().unwrap_or(0)) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn tenths(lengths: &[u32]) -> Vec<LineLength> {
        lengths.iter().map(|&l| LineLength::from_tenths_mm(l)).collect()
    }

    #[test]
    fn a_cut_is_the_finished_length_and_its_allowances() {
        let cm = |x| LineLength::from_cm(x).unwrap();
        let allowances = Allowances { hook_knot: cm(6.0), loop_length: cm(2.5), tag: cm(1.0) };
        assert_eq!(allowances.cut_for(cm(40.0)), cm(52.0), "40 + 6 + 2 x 2.5 + 1");
    }

    #[test]
    fn each_line_is_cut_separately() {
        let tied = |cm: f64, diameter_um, count| Tied {
            hooklength: super::super::hooklength::Hooklength {
                length: LineLength::from_cm(cm).unwrap(),
                diameter_um,
                hook_size: 16,
                hair_mm: None,
            },
            count,
        };
        let to_tie = [tied(40.0, 120, 2), tied(50.0, 140, 3), tied(60.0, 120, 1)];
        let lengths: Vec<f64> = cuts(&to_tie, 120, Allowances::default()).iter().map(|l| l.cm()).collect();
        assert_eq!(lengths, vec![40.0, 40.0, 60.0]);
    }

    #[test]
    fn remnants_go_before_the_full_spool() {
        let plan = plan(&tenths(&[5_000, 90, 60]), &tenths(&[50, 40, 45])).unwrap();
        assert_eq!((plan.opened.tenths_mm(), plan.is_best()), (150, true));
        let spools: Vec<usize> = plan.from.iter().map(|f| f.spool).collect();
        assert_eq!(spools, vec![1, 2]);
    }

    #[test]
    fn longest_first_alone_would_not_be_enough() {
        // First fit puts 4 and 4 on the first spool and three 3s on the second, and one 3 is left over.
        let plan = plan(&tenths(&[10, 10]), &tenths(&[4, 4, 3, 3, 3, 3])).unwrap();
        assert_eq!((plan.opened.tenths_mm(), plan.is_best()), (20, true));
        assert!(plan.from.iter().all(|f| f.left.tenths_mm() == 0));
    }

    #[test]
    fn what_cannot_be_cut_is_named() {
        let long = plan(&tenths(&[50]), &tenths(&[20, 51]));
        assert!(matches!(long, Err(TieUpError::NotEnoughLine { .. })));
        let long = plan(&tenths(&[50, 50]), &tenths(&[20, 51]));
        assert!(matches!(long, Err(TieUpError::NoSpoolLongEnough { cut, .. }) if cut.tenths_mm() == 51));
        let piecewise = plan(&tenths(&[50, 50]), &tenths(&[30, 30, 30]));
        assert!(matches!(piecewise, Err(TieUpError::DoesNotFit { cut }) if cut.tenths_mm() == 30));
        assert_eq!(plan(&tenths(&[50]), &tenths(&[1; 501])), Err(TieUpError::TooManyTies(501)));
        assert!(plan(&[], &[]).unwrap().from.is_empty());
    }

    #[test]
    fn many_spools_are_planned_with_a_bound() {
        let spools = tenths(&[97, 89, 83, 79, 73, 71, 67, 61, 59, 53, 47, 43, 41, 37]);
        let plan = plan(&spools, &tenths(&[31, 29, 23, 19, 17, 13, 11, 7])).unwrap();
        assert!(plan.at_least.tenths_mm() == 150 && plan.opened >= plan.at_least);
    }

    /// Least (line opened, spools opened) over every way of giving cuts[k..] a spool.
    fn brute(spools: &[u32], cuts: &[u32], left: &mut [u32]) -> Option<(u32, usize)> {
        let Some((&cut, rest)) = cuts.split_first() else {
            let opened: Vec<u32> =
                (0..spools.len()).filter(|&i| left[i] < spools[i]).map(|i| spools[i]).collect();
            return Some((opened.iter().sum(), opened.len()));
        };
        let mut best = None;
        for i in 0..spools.len() {
            if left[i] >= cut {
                left[i] -= cut;
                best = [best, brute(spools, rest, left)].into_iter().flatten().min();
                left[i] += cut;
            }
        }
        best
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(2_000))]

        #[test]
        fn no_plan_opens_less_line(
            spools in prop::collection::vec(1_u32..30, 0..5),
            cuts in prop::collection::vec(1_u32..12, 0..6),
        ) {
            let found = plan(&tenths(&spools), &tenths(&cuts));
            let best = brute(&spools, &cuts, &mut spools.clone());
            prop_assert_eq!(found.as_ref().ok().map(|p| (p.opened.tenths_mm(), p.from.len())), best);
            if let Ok(plan) = found {
                prop_assert!(plan.is_best());
                let mut cut: Vec<u32> = plan.from.iter().flat_map(|f| &f.cuts).map(|c| c.tenths_mm()).collect();
                cut.sort_unstable();
                let mut asked = cuts.clone();
                asked.sort_unstable();
                prop_assert_eq!(cut, asked);
            }
        }
    }
}
