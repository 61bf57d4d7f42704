//! What the record tells of fish at the cells, as far as where next needs it: figures that come from outside, since the swim knows
//! no law of the wait.

use super::cells::{CellId, Swim};
use super::input::CastAt;
use super::next_spot::{Against, Reason};
use serde::{Deserialize, Serialize};

/// What is told of fish at one cell.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct CellTold {
    /// Which cell.
    pub cell: CellId,
    /// Chance that it holds fish now.
    pub here: f64,
    /// Bites an hour of a cast there.
    pub per_hour: f64,
    /// Bites an hour by which it is ranked: a bite where fish weren't known counts more.
    pub rank: f64,
    /// Casts there in a row that ended without a bite, or wait for one, up to now.
    pub dry_casts: u32,
    /// Their minutes.
    pub dry_min: f64,
}

/// What is told of the swim.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SpotsTold {
    /// The cells that were fished or disturbed.
    pub cells: Vec<CellTold>,
    /// Chance that a cell that never was holds fish.
    pub elsewhere: f64,
    /// Bites an hour of a cast there.
    pub elsewhere_per_hour: f64,
    /// The same by which such cells are ranked.
    pub elsewhere_rank: f64,
}

/// Chances that lie nearer to one another than this are not told apart in words.
const APART: f64 = 0.05;

impl SpotsTold {
    fn of(&self, cell: CellId) -> Option<&CellTold> {
        self.cells.iter().find(|told| told.cell == cell)
    }

    /// Hundredths of a bite an hour: cells are ranked by these, and equal ones by their reasons.
    pub(crate) fn hundredths(&self, cell: CellId) -> f64 {
        libm::round(100.0 * self.of(cell).map_or(self.elsewhere_rank, |told| told.rank))
    }

    /// What speaks for a cell, where it is told from others.
    pub(crate) fn reason(&self, cell: CellId) -> Option<Reason> {
        let of_100 = |chance: f64| libm::round(100.0 * chance) as u32;
        match self.of(cell).filter(|told| told.here > self.elsewhere + APART) {
            Some(told) => Some(Reason::FishHere {
                of_100: of_100(told.here),
                elsewhere_of_100: of_100(self.elsewhere),
                per_hour: told.per_hour,
            }),
            None if self.of(cell).is_none() => {
                Some(Reason::NotTried { of_100: of_100(self.elsewhere), per_hour: self.elsewhere_per_hour })
                    .filter(|_| self.cells.iter().any(|told| told.here < self.elsewhere - APART))
            }
            None => None,
        }
    }

    /// What speaks against it.
    pub(crate) fn objection(&self, cell: CellId) -> Option<Against> {
        let told = self.of(cell).filter(|told| told.here < self.elsewhere - APART && told.dry_casts > 0)?;
        let (casts, minutes) = (told.dry_casts, told.dry_min);
        Some(Against::NothingHere { casts, minutes, of_100: libm::round(100.0 * told.here) as u32 })
    }
}

impl Swim {
    /// The cells that the lead of a cast reached with probability one half or more.
    pub fn reached_by(&self, cast: &CastAt) -> Vec<CellId> {
        let chances = self.chances(cast).into_iter().zip(self.cells());
        chances.filter(|((reached, _), _)| *reached >= 0.5).map(|(_, cell)| cell.id).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Band, Fan, KeptBack, SwimInput};

    fn told(cell: CellId, here: f64, rank: f64) -> CellTold {
        CellTold { cell, here, per_hour: rank, rank, dry_casts: 2, dry_min: 31.0 }
    }

    fn swim(kept_back: Vec<KeptBack>) -> Swim {
        Swim::new(SwimInput { kept_back, ..SwimInput::default() }).unwrap()
    }

    #[test]
    fn what_is_told_comes_first_and_reasons_part_equals() {
        let swim = swim(Vec::new());
        let figures = swim.figures(0);
        let plain = swim.where_next(&figures);
        let (best, worst) = (plain.ranked[0].cell, plain.ranked[plain.ranked.len() - 1].cell);
        let all = SpotsTold {
            cells: vec![told(best, 0.2, 0.8), told(worst, 0.9, 3.04)],
            elsewhere: 0.5,
            elsewhere_per_hour: 2.0,
            elsewhere_rank: 2.0,
        };
        let next = swim.where_next_told(&figures, Some(&all));
        assert_eq!((next.ranked[0].cell, next.ranked[next.ranked.len() - 1].cell), (worst, best));
        assert!(matches!(
            next.ranked[0].reasons[0],
            Reason::FishHere { of_100: 90, elsewhere_of_100: 50, .. }
        ));
        let last = &next.ranked[next.ranked.len() - 1];
        assert_eq!(last.against[0], Against::NothingHere { casts: 2, minutes: 31.0, of_100: 20 });
        // All the others are told alike: they keep the order of their reasons.
        let others = |list: &[crate::NextSpot]| -> Vec<CellId> {
            list.iter().map(|n| n.cell).filter(|id| ![best, worst].contains(id)).collect()
        };
        assert_eq!(others(&next.ranked), others(&plain.ranked));
        assert!(matches!(next.ranked[1].reasons[0], Reason::NotTried { of_100: 50, .. }));
    }

    #[test]
    fn water_that_is_kept_back_is_not_proposed_however_good_it_is_told_to_be() {
        let kept = KeptBack {
            fan: Fan { from_deg: -60.0, to_deg: 60.0 },
            band: Band { from_m: 40.0, to_m: 60.0 },
            since_ms: 0,
            released_ms: None,
        };
        let swim = swim(vec![kept]);
        let figures = swim.figures(60_000);
        let aside = swim.where_next(&figures).set_aside[0].cell;
        let all = SpotsTold {
            cells: vec![told(aside, 0.99, 9.0)],
            elsewhere: 0.3,
            elsewhere_per_hour: 1.0,
            elsewhere_rank: 1.0,
        };
        let next = swim.where_next_told(&figures, Some(&all));
        assert!(next.ranked.iter().all(|n| n.cell != aside));
        assert!(next.set_aside.iter().any(|n| n.cell == aside));
    }
}
