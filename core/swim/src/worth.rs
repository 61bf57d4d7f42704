//! The chance of fish in each cell and what a cast there is worth, as the ranking uses them. The figures come from outside,
//! since this crate knows nothing of waits.

use super::cells::{CellId, Swim};
use super::input::CastAt;
use super::reasons::{Against, Reason};
use serde::{Deserialize, Serialize};
use std::cmp::Ordering;

/// The figures of one cell.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct CellWorth {
    /// Which cell.
    pub cell: CellId,
    /// Chance that it has fish now.
    pub here: f64,
    /// Bites an hour that a cast there is expected to bring.
    pub per_hour: f64,
    /// The same for comparing cells: where fish aren't known a bite counts more, since it would show a place to come back to.
    pub rank: f64,
    /// Casts there in a row that ended without a bite, or wait for one, up to now.
    pub dry_casts: u32,
    /// Their minutes.
    pub dry_min: f64,
}

/// The figures of the swim.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SpotsWorth {
    /// The cells that were fished or disturbed.
    pub cells: Vec<CellWorth>,
    /// Chance that there are fish in a cell that was neither fished nor disturbed.
    pub elsewhere: f64,
    /// Bites an hour that a cast there is expected to bring.
    pub elsewhere_per_hour: f64,
    /// The same for comparing cells.
    pub elsewhere_rank: f64,
}

impl SpotsWorth {
    fn of(&self, cell: CellId) -> Option<&CellWorth> {
        self.cells.iter().find(|known| known.cell == cell)
    }

    /// What cells are ranked by, to a tenth of a bite an hour: a smaller difference says nothing. Cells with one figure keep the
    /// order of their reasons.
    pub(crate) fn of_cast(&self, cell: CellId) -> f64 {
        tenth(self.of(cell).map_or(self.elsewhere_rank, |known| known.rank))
    }

    /// A cell that was fished or disturbed, and whether its figure is above or below that of a cell that never was.
    fn beside_untried(&self, cell: CellId) -> Option<(&CellWorth, Ordering)> {
        self.of(cell).map(|known| (known, self.beside(known)))
    }

    fn beside(&self, known: &CellWorth) -> Ordering {
        tenth(known.rank).total_cmp(&tenth(self.elsewhere_rank))
    }

    /// A reason for the cell: its figure is above that of a cell never fished, or it was never fished and some other cell's
    /// figure is below its own.
    pub(crate) fn reason(&self, cell: CellId) -> Option<Reason> {
        match self.beside_untried(cell) {
            Some((known, Ordering::Greater)) => Some(Reason::FishHere {
                of_100: of_100(known.here),
                per_hour: tenth(known.per_hour),
                elsewhere_per_hour: tenth(self.elsewhere_per_hour),
            }),
            Some(_) => None,
            None => Some(Reason::NotTried {
                of_100: of_100(self.elsewhere),
                per_hour: tenth(self.elsewhere_per_hour),
            })
            .filter(|_| self.cells.iter().any(|known| self.beside(known).is_lt())),
        }
    }

    /// An objection: its figure is below that of a cell never fished.
    pub(crate) fn objection(&self, cell: CellId) -> Option<Against> {
        let (known, _) = self.beside_untried(cell).filter(|(_, order)| order.is_lt())?;
        let (of_100, per_hour) = (of_100(known.here), tenth(known.per_hour));
        Some(if known.dry_casts > 0 && known.here < self.elsewhere {
            Against::NothingHere { casts: known.dry_casts, minutes: known.dry_min, of_100, per_hour }
        } else {
            Against::FishAway { of_100, per_hour }
        })
    }
}

fn of_100(chance: f64) -> u32 {
    libm::round(100.0 * chance) as u32
}

/// To a tenth, as a figure is shown.
fn tenth(per_hour: f64) -> f64 {
    libm::round(10.0 * per_hour) / 10.0
}

impl Swim {
    /// The cells that the lead of a cast reached with probability one half or more.
    pub fn reached_by(&self, cast: &CastAt) -> Vec<CellId> {
        let chances = self.chances(cast).into_iter().zip(self.cells());
        chances.filter(|(reached, _)| *reached >= 0.5).map(|(_, cell)| cell.id).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Band, Fan, KeptBack, NextSpot, Spot, SwimInput, WhereNext};
    use proptest::prelude::*;

    fn worth(cell: CellId, here: f64, worth: f64) -> CellWorth {
        CellWorth { cell, here, per_hour: worth, rank: worth, dry_casts: 2, dry_min: 31.0 }
    }

    fn swim(kept_back: Vec<KeptBack>) -> Swim {
        Swim::new(SwimInput { kept_back, ..SwimInput::default() }).unwrap()
    }

    #[test]
    fn worth_decides_first_and_reasons_decide_between_equals() {
        let swim = swim(Vec::new());
        let figures = swim.figures(0);
        let plain = swim.where_next(&figures);
        let (best, worst) = (plain.ranked[0].cell, plain.ranked[plain.ranked.len() - 1].cell);
        let all = SpotsWorth {
            cells: vec![worth(best, 0.2, 0.8), worth(worst, 0.9, 3.04)],
            elsewhere: 0.5,
            elsewhere_per_hour: 2.0,
            elsewhere_rank: 2.0,
        };
        let next = swim.where_next_by_worth(&figures, Some(&all));
        assert_eq!((next.ranked[0].cell, next.ranked[next.ranked.len() - 1].cell), (worst, best));
        assert!(matches!(next.ranked[0].reasons[0], Reason::FishHere { of_100: 90, .. }));
        let last = &next.ranked[next.ranked.len() - 1];
        assert_eq!(
            last.against[0],
            Against::NothingHere { casts: 2, minutes: 31.0, of_100: 20, per_hour: 0.8 }
        );
        // All others are worth the same: they keep the order of their reasons.
        let others = |list: &[NextSpot]| -> Vec<CellId> {
            list.iter().map(|n| n.cell).filter(|id| ![best, worst].contains(id)).collect()
        };
        assert_eq!(others(&next.ranked), others(&plain.ranked));
        assert!(matches!(next.ranked[1].reasons[0], Reason::NotTried { of_100: 50, .. }));
    }

    #[test]
    fn water_that_is_kept_back_is_not_proposed_however_much_it_is_worth() {
        let kept = KeptBack {
            fan: Fan { from_deg: -60.0, to_deg: 60.0 },
            band: Band { from_m: 40.0, to_m: 60.0 },
            since_ms: 0,
            released_ms: None,
        };
        let swim = swim(vec![kept]);
        let figures = swim.figures(60_000);
        let aside = swim.where_next(&figures).set_aside[0].cell;
        let all = SpotsWorth {
            cells: vec![worth(aside, 0.99, 9.0)],
            elsewhere: 0.3,
            elsewhere_per_hour: 1.0,
            elsewhere_rank: 1.0,
        };
        let next = swim.where_next_by_worth(&figures, Some(&all));
        assert!(next.ranked.iter().all(|n| n.cell != aside));
        assert!(next.set_aside.iter().any(|n| n.cell == aside));
    }

    #[test]
    fn figures_that_read_alike_are_equals() {
        let swim = swim(Vec::new());
        let figures = swim.figures(0);
        let plain = swim.where_next(&figures);
        let with = |first: f64, last: f64| {
            let (best, worst) = (plain.ranked[0].cell, plain.ranked[plain.ranked.len() - 1].cell);
            let cells = vec![worth(best, 0.5, first), worth(worst, 0.5, last)];
            let all = SpotsWorth { cells, elsewhere: 0.5, elsewhere_per_hour: 1.2, elsewhere_rank: 1.2 };
            swim.where_next_by_worth(&figures, Some(&all))
        };
        // 1.16 and 1.24 are both 1.2 to a tenth, as much as an untried spot: nothing is said.
        let ranked = |next: &WhereNext| next.ranked.iter().map(|n| n.cell).collect::<Vec<_>>();
        let alike = with(1.16, 1.24);
        assert_eq!(ranked(&alike), ranked(&plain));
        assert!(alike.ranked.iter().zip(&plain.ranked).all(|(a, b)| a.reasons == b.reasons));
        // 1.26 is 1.3 to a tenth, and decides.
        assert_ne!(with(1.16, 1.26).ranked[0].cell, plain.ranked[0].cell);
    }

    fn any_worth() -> impl Strategy<Value = (usize, f64, f64, u32)> {
        (0usize..100, 0.0..1.0_f64, 0.0..4.0_f64, 0u32..4)
    }

    fn any_casts() -> impl Strategy<Value = Vec<CastAt>> {
        let one = (-40.0..40.0_f64, 20.0..60.0_f64, 0..180i64, 0u32..2);
        proptest::collection::vec(one, 0..8).prop_map(|list| {
            let cast = |(bearing_deg, range_m, start, bites)| CastAt {
                spot: Spot { bearing_deg, range_m },
                clipped: true,
                lead_g: Some(40.0),
                start_ms: start * 60_000,
                end_ms: Some((start + 9) * 60_000),
                waits_from_ms: start * 60_000,
                waits_to_ms: Some((start + 9) * 60_000),
                end_seen: true,
                bites,
                bite_ms: None,
                liners: 0,
                lost: 0,
                landed: 0,
            };
            list.into_iter().map(cast).collect()
        })
    }

    proptest! {
        /// One rule decides: the figure to a tenth; among equal figures the order is that without them. What is said of a cell is
        /// what it is expected to bring, which is never more than what it is ranked by.
        #[test]
        fn cells_rank_by_their_figure_and_equal_ones_as_before(
            list in proptest::collection::vec(any_worth(), 1..8),
            casts in any_casts(),
            (elsewhere, elsewhere_rank) in (0.0..1.0_f64, 0.0..4.0_f64),
        ) {
            let swim = Swim::new(SwimInput { casts, ..SwimInput::default() }).unwrap();
            let figures = swim.figures(190 * 60_000);
            let plain = swim.where_next(&figures);
            let cells = list.into_iter().map(|(i, here, worth, dry_casts)| CellWorth {
                cell: swim.cells()[i % swim.cells().len()].id,
                here,
                per_hour: worth / (2.0 - here),
                rank: worth,
                dry_casts,
                dry_min: 20.0,
            });
            let elsewhere_per_hour = elsewhere_rank / (2.0 - elsewhere);
            let all = SpotsWorth { cells: cells.collect(), elsewhere, elsewhere_per_hour, elsewhere_rank };
            let next = swim.where_next_by_worth(&figures, Some(&all));
            let before = |n: &NextSpot| plain.ranked.iter().position(|p| p.cell == n.cell).unwrap();
            for pair in next.ranked.windows(2) {
                let [a, b] = [&pair[0], &pair[1]].map(|n| all.of_cast(n.cell));
                prop_assert!(a > b || (a == b && before(&pair[0]) < before(&pair[1])), "{:?}", pair);
            }
            for next in &next.ranked {
                let said = next.reasons.iter().find_map(|reason| match reason {
                    Reason::FishHere { per_hour, .. } | Reason::NotTried { per_hour, .. } => Some(*per_hour),
                    _ => None,
                });
                prop_assert!(said.is_none_or(|said| said <= all.of_cast(next.cell)), "{:?}", next);
            }
            prop_assert_eq!(next.ranked.len(), plain.ranked.len());
            prop_assert_eq!(next.go_in, plain.go_in);
        }
    }
}
