//! Cutting tied hooklengths down to the lengths that the day needs.
//!
//! Each needed hooklength takes one tied length at least as long. Of all ways to do this the plan has the
//! least waste, and among those the fewest ties that are cut. It is an assignment problem, solved exactly by
//! shortest augmenting paths with potentials (Kuhn, Naval Res. Logist. Q. 2:83-97 (1955); Munkres, J. SIAM
//! 5:32-38 (1957)).

use super::hooklength::Hooklength;
use super::units::LineLength;
use serde::{Deserialize, Serialize};

/// A hooklength that the day needs; fields left open may be anything.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct Need {
    /// The finished length.
    pub length: LineLength,
    /// Line diameter in thousandths of a millimetre, if it matters.
    pub diameter_um: Option<u16>,
    /// Hook size, if it matters.
    pub hook_size: Option<u8>,
}

/// One need and the tie that serves it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cut {
    /// What was asked for.
    pub need: Need,
    /// What it is cut from.
    pub tie: Hooklength,
    /// Line cut off; zero if the tie is used as it is.
    pub waste: LineLength,
}

/// The plan, longest need first.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct CutDown {
    /// One for each need.
    pub cuts: Vec<Cut>,
    /// All line cut off.
    pub waste: LineLength,
    /// How many ties are cut.
    pub touched: usize,
}

/// Why there is no plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum CutDownError {
    /// Nothing in the wallet is long enough for this need.
    #[error(
        "no tie long enough: the {} hooklength can't be cut from a longest tie of {longest}",
        need.length
    )]
    NoTieLongEnough {
        /// The need that can't be met.
        need: Need,
        /// The longest tie of its kind.
        longest: LineLength,
    },
    /// Nothing in the wallet has this diameter and hook.
    #[error("no tie of that diameter and hook for the {} hooklength", need.length)]
    NoTieOfThatKind {
        /// The need that can't be met.
        need: Need,
    },
    /// Every suitable tie is needed for another hooklength that is at least as long.
    #[error("not enough ties for the {} hooklength: {ties} ties for {needs} needs", need.length)]
    NotEnoughTies {
        /// The need that can't be met.
        need: Need,
        /// How many ties there are.
        ties: usize,
        /// How many hooklengths are needed.
        needs: usize,
    },
    /// More than anyone cuts down in an evening.
    #[error(
        "{needs} cut-downs from {ties} ties are more than this plans at once ({MOST_NEEDS} from {MOST_TIES})"
    )]
    TooMany {
        /// How many ties there are.
        ties: usize,
        /// How many hooklengths are needed.
        needs: usize,
    },
}

/// Most cut-downs in one plan.
const MOST_NEEDS: usize = 200;
/// Most ties in one plan.
const MOST_TIES: usize = 1_000;

impl Need {
    fn kind_fits(self, tie: Hooklength) -> bool {
        self.diameter_um.is_none_or(|d| d == tie.diameter_um)
            && self.hook_size.is_none_or(|h| h == tie.hook_size)
    }

    /// Line cut off, if the tie is suitable: it is used as it is, or is long enough for a new loop.
    fn waste(self, tie: Hooklength, new_loop: LineLength) -> Option<u32> {
        let spare = tie.length.tenths_mm().checked_sub(self.length.tenths_mm())?;
        (self.kind_fits(tie) && (spare == 0 || spare >= new_loop.tenths_mm())).then_some(spare)
    }
}

/// The plan for `needs` from `ties`; a tie that is cut must leave at least `new_loop` over for tying
/// the loop again (zero if it is tied within the finished length).
///
/// The plan doesn't depend on the order in which ties and needs were entered.
pub fn plan(ties: &[Hooklength], needs: &[Need], new_loop: LineLength) -> Result<CutDown, CutDownError> {
    if needs.len() > MOST_NEEDS || ties.len() > MOST_TIES {
        return Err(CutDownError::TooMany { ties: ties.len(), needs: needs.len() });
    }
    let mut ties = ties.to_vec();
    ties.sort_unstable();
    let mut needs = needs.to_vec();
    needs.sort_unstable_by(|a, b| b.cmp(a));
    let waste: Vec<Vec<Option<u32>>> =
        needs.iter().map(|n| ties.iter().map(|&t| n.waste(t, new_loop)).collect()).collect();
    if let Some(unmet) = first_unmet(&waste, ties.len()) {
        return Err(why(needs[unmet], &ties, needs.len()));
    }
    let cuts: Vec<Cut> = cheapest(&waste, ties.len())
        .into_iter()
        .zip(&needs)
        .map(|(tie, &need)| {
            let spare = ties[tie].length.tenths_mm() - need.length.tenths_mm();
            Cut { need, tie: ties[tie], waste: LineLength::from_tenths_mm(spare) }
        })
        .collect();
    let total: u32 = cuts.iter().map(|c| c.waste.tenths_mm()).fold(0, u32::saturating_add);
    let touched = cuts.iter().filter(|c| c.waste.tenths_mm() > 0).count();
    Ok(CutDown { cuts, waste: LineLength::from_tenths_mm(total), touched })
}

fn why(need: Need, ties: &[Hooklength], needs: usize) -> CutDownError {
    let longest = ties.iter().filter(|t| need.kind_fits(**t)).map(|t| t.length).max();
    match longest {
        None if !ties.is_empty() => CutDownError::NoTieOfThatKind { need },
        Some(longest) if longest < need.length => CutDownError::NoTieLongEnough { need, longest },
        _ => CutDownError::NotEnoughTies { need, ties: ties.len(), needs },
    }
}

/// The first need, longest first, that can't be served along with those before it (augmenting paths).
fn first_unmet(waste: &[Vec<Option<u32>>], ties: usize) -> Option<usize> {
    fn augment(
        need: usize,
        waste: &[Vec<Option<u32>>],
        seen: &mut [bool],
        taken: &mut [Option<usize>],
    ) -> bool {
        for tie in 0..seen.len() {
            if waste[need][tie].is_none() || std::mem::replace(&mut seen[tie], true) {
                continue;
            }
            if taken[tie].is_none_or(|other| augment(other, waste, seen, taken)) {
                taken[tie] = Some(need);
                return true;
            }
        }
        false
    }
    let mut taken = vec![None; ties];
    (0..waste.len()).find(|&need| !augment(need, waste, &mut vec![false; ties], &mut taken))
}

/// The tie of each need with the least total cost; every need is known to be servable.
///
/// Cost is waste first, then one for a tie that is cut; a pair that is not allowed costs more than
/// any plan made of allowed ones, so it is never taken.
fn cheapest(waste: &[Vec<Option<u32>>], ties: usize) -> Vec<usize> {
    let step = i64::from(waste.len() as u32) + 1;
    let most = waste.iter().flatten().flatten().copied().max().unwrap_or(0);
    let forbidden = (i64::from(most) * step + 1) * step;
    let cost = |need: usize, tie: usize| {
        waste[need][tie].map_or(forbidden, |spare| i64::from(spare) * step + i64::from(spare > 0))
    };
    Assignment::new(waste.len(), ties, &cost).solved()
}

/// Rows to columns (rows <= columns) at the least cost. Index 0 is the free end from which a path
/// starts, so rows and columns count from 1 inside.
struct Assignment<'a> {
    cost: &'a dyn Fn(usize, usize) -> i64,
    /// Potentials of rows and columns: no reduced cost is negative.
    u: Vec<i64>,
    v: Vec<i64>,
    /// The row each column serves, or 0.
    row_of: Vec<usize>,
}

/// How far each column is from the free end, and by which column it is reached.
struct Paths {
    least: Vec<i64>,
    used: Vec<bool>,
    way: Vec<usize>,
}

impl<'a> Assignment<'a> {
    fn new(rows: usize, columns: usize, cost: &'a dyn Fn(usize, usize) -> i64) -> Self {
        Self { cost, u: vec![0; rows + 1], v: vec![0; columns + 1], row_of: vec![0; columns + 1] }
    }

    /// The column of each row.
    fn solved(mut self) -> Vec<usize> {
        let rows = self.u.len() - 1;
        for row in 1..=rows {
            self.row_of[0] = row;
            let (mut column, way) = self.shortest_path();
            while column != 0 {
                self.row_of[column] = self.row_of[way[column]];
                column = way[column];
            }
        }
        let mut column_of = vec![0; rows];
        for (column, &row) in self.row_of.iter().enumerate().skip(1).filter(|(_, row)| **row > 0) {
            column_of[row - 1] = column - 1;
        }
        column_of
    }

    /// Dijkstra's path from the free end to the nearest unassigned column.
    fn shortest_path(&mut self) -> (usize, Vec<usize>) {
        let size = self.row_of.len();
        let mut paths = Paths { least: vec![i64::MAX; size], used: vec![false; size], way: vec![0; size] };
        let mut column = 0;
        loop {
            paths.used[column] = true;
            let (next, nearer) = self.relax(column, &mut paths);
            self.shift(nearer, &mut paths);
            column = next;
            if self.row_of[column] == 0 {
                return (column, paths.way);
            }
        }
    }

    /// Shortens paths by way of `column`; the nearest column not yet used and its distance.
    fn relax(&self, column: usize, paths: &mut Paths) -> (usize, i64) {
        let row = self.row_of[column];
        let (mut next, mut nearest) = (0, i64::MAX);
        for j in (1..self.row_of.len()).filter(|&j| !paths.used[j]) {
            let reduced = (self.cost)(row - 1, j - 1) - self.u[row] - self.v[j];
            if reduced < paths.least[j] {
                paths.least[j] = reduced;
                paths.way[j] = column;
            }
            if paths.least[j] < nearest {
                nearest = paths.least[j];
                next = j;
            }
        }
        (next, nearest)
    }

    /// Moves the potentials so that the nearest column is at distance zero.
    fn shift(&mut self, by: i64, paths: &mut Paths) {
        for j in 0..self.row_of.len() {
            if paths.used[j] {
                self.u[self.row_of[j]] += by;
                self.v[j] -= by;
            } else if paths.least[j] < i64::MAX {
                paths.least[j] -= by;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn tie(length: u32, hook_size: u8) -> Hooklength {
        Hooklength { length: LineLength::from_tenths_mm(length), diameter_um: 120, hook_size, hair_mm: None }
    }

    fn need(length: u32, hook_size: Option<u8>) -> Need {
        Need { length: LineLength::from_tenths_mm(length), diameter_um: None, hook_size }
    }

    const NO_LOOP: LineLength = LineLength::from_tenths_mm(0);

    #[test]
    fn a_tie_of_the_right_length_stays_whole() {
        let plan = plan(&[tie(10, 16), tie(12, 16)], &[need(10, None), need(12, None)], NO_LOOP).unwrap();
        assert_eq!((plan.waste.tenths_mm(), plan.touched), (0, 0));
        assert_eq!(plan.cuts[0].tie.length.tenths_mm(), 12, "longest need first");
    }

    #[test]
    fn with_equal_waste_fewer_cuts_are_preferred() {
        // 12 -> 10 and 10 -> 8 waste 4 with two cuts; 10 -> 10 and 12 -> 8 waste 4 with one.
        let plan = plan(&[tie(12, 16), tie(10, 16)], &[need(10, None), need(8, None)], NO_LOOP).unwrap();
        assert_eq!((plan.waste.tenths_mm(), plan.touched), (4, 1));
    }

    #[test]
    fn the_need_that_cannot_be_met_is_named() {
        let short = plan(&[tie(36, 16), tie(36, 16)], &[need(18, None), need(48, None)], NO_LOOP);
        assert!(
            matches!(short, Err(CutDownError::NoTieLongEnough { need, .. }) if need.length.tenths_mm() == 48)
        );
        let hook = plan(&[tie(36, 16)], &[need(18, Some(10))], NO_LOOP);
        assert!(matches!(hook, Err(CutDownError::NoTieOfThatKind { .. })));
    }

    #[test]
    fn more_cut_downs_than_ties() {
        let many = plan(&[tie(36, 16)], &[need(18, None), need(20, None)], NO_LOOP);
        assert!(
            matches!(many, Err(CutDownError::NotEnoughTies { need, ties: 1, needs: 2 }) if need.length.tenths_mm() == 18)
        );
        assert!(matches!(
            plan(&[], &[need(18, None)], NO_LOOP),
            Err(CutDownError::NotEnoughTies { ties: 0, .. })
        ));
        assert_eq!(plan(&[], &[], NO_LOOP), Ok(CutDown::default()));
        let far_too_many = plan(&[tie(36, 16)], &[need(18, None); 201], NO_LOOP);
        assert_eq!(far_too_many, Err(CutDownError::TooMany { ties: 1, needs: 201 }));
    }

    #[test]
    fn a_cut_tie_must_leave_line_for_its_loop() {
        let new_loop = LineLength::from_tenths_mm(30);
        let plan = plan(&[tie(110, 16), tie(140, 16)], &[need(100, None)], new_loop).unwrap();
        assert_eq!(plan.cuts[0].tie.length.tenths_mm(), 140);
    }

    /// Least (waste, cut) over every way of giving needs[0..] a free tie.
    fn brute(ties: &[Hooklength], needs: &[Need], new_loop: LineLength, used: u32) -> Option<(u32, usize)> {
        let Some((first, rest)) = needs.split_first() else { return Some((0, 0)) };
        (0..ties.len())
            .filter(|i| used & (1 << i) == 0)
            .filter_map(|i| {
                let spare = first.waste(ties[i], new_loop)?;
                let (waste, cut) = brute(ties, rest, new_loop, used | (1 << i))?;
                Some((waste + spare, cut + usize::from(spare > 0)))
            })
            .min()
    }

    fn ties() -> impl Strategy<Value = Vec<Hooklength>> {
        prop::collection::vec((1_u32..14, 10_u8..12).prop_map(|(l, h)| tie(l, h)), 0..7)
    }

    fn needs() -> impl Strategy<Value = Vec<Need>> {
        let hook = prop::option::weighted(0.4, 10_u8..12);
        prop::collection::vec((1_u32..12, hook).prop_map(|(l, h)| need(l, h)), 0..6)
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(10_000))]

        #[test]
        fn no_other_plan_is_better(ties in ties(), needs in needs(), new_loop in prop::sample::select(vec![0, 0, 1, 3])) {
            let new_loop = LineLength::from_tenths_mm(new_loop);
            let found = plan(&ties, &needs, new_loop).ok().map(|p| (p.waste.tenths_mm(), p.touched));
            prop_assert_eq!(found, brute(&ties, &needs, new_loop, 0));
        }
    }

    proptest! {
        #[test]
        fn the_order_of_entry_does_not_matter(ties in ties(), needs in needs()) {
            let (mut backwards, mut last_first) = (ties.clone(), needs.clone());
            backwards.reverse();
            last_first.reverse();
            prop_assert_eq!(plan(&ties, &needs, NO_LOOP), plan(&backwards, &last_first, NO_LOOP));
        }

        #[test]
        fn every_need_is_served_by_its_own_tie(ties in ties(), needs in needs()) {
            if let Ok(plan) = plan(&ties, &needs, NO_LOOP) {
                prop_assert_eq!(plan.cuts.len(), needs.len());
                let mut left = ties.clone();
                for cut in plan.cuts {
                    let at = left.iter().position(|t| *t == cut.tie);
                    prop_assert!(at.is_some());
                    left.swap_remove(at.unwrap());
                    prop_assert!(cut.tie.length >= cut.need.length);
                }
            }
        }
    }
}
