//! What the record tells of fish at the cells, as far as where next needs it: figures that come from outside, since the swim knows
//! no law of the wait.

use super::cells::{CellId, Swim};
use super::input::CastAt;
use super::reasons::{Against, Reason};
use serde::{Deserialize, Serialize};
use std::cmp::Ordering;

/// What is told of fish at one cell.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct CellTold {
    /// Which cell.
    pub cell: CellId,
    /// Chance that it holds fish now.
    pub here: f64,
    /// What a cast there is worth in bites an hour.
    pub worth: f64,
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
    /// What a cast there is worth in bites an hour.
    pub elsewhere_worth: f64,
}

impl SpotsTold {
    fn of(&self, cell: CellId) -> Option<&CellTold> {
        self.cells.iter().find(|told| told.cell == cell)
    }

    /// What a cast is worth in bites an hour, by which cells are ranked: the figure as it is shown, so that nothing decides that
    /// can't be read. Cells with one figure keep the order of their reasons.
    pub(crate) fn worth(&self, cell: CellId) -> f64 {
        shown(self.of(cell).map_or(self.elsewhere_worth, |told| told.worth))
    }

    /// A cell that was fished or disturbed, and how its figure lies to that of a cell that never was.
    fn beside_untried(&self, cell: CellId) -> Option<(&CellTold, Ordering)> {
        self.of(cell).map(|told| (told, self.lies(told)))
    }

    fn lies(&self, told: &CellTold) -> Ordering {
        shown(told.worth).total_cmp(&shown(self.elsewhere_worth))
    }

    /// What speaks for a cell: every figure above that of a cell that was never fished is said, and the latter where another
    /// cell's lies below it.
    pub(crate) fn reason(&self, cell: CellId) -> Option<Reason> {
        match self.beside_untried(cell) {
            Some((told, Ordering::Greater)) => Some(Reason::FishHere {
                of_100: of_100(told.here),
                worth: shown(told.worth),
                elsewhere_of_100: of_100(self.elsewhere),
                elsewhere_worth: shown(self.elsewhere_worth),
            }),
            Some(_) => None,
            None => {
                Some(Reason::NotTried { of_100: of_100(self.elsewhere), worth: shown(self.elsewhere_worth) })
                    .filter(|_| self.cells.iter().any(|told| self.lies(told).is_lt()))
            }
        }
    }

    /// What speaks against it: every figure below that of a cell that was never fished.
    pub(crate) fn objection(&self, cell: CellId) -> Option<Against> {
        let (told, _) = self.beside_untried(cell).filter(|(_, lies)| lies.is_lt())?;
        let (of_100, worth) = (of_100(told.here), shown(told.worth));
        Some(if told.dry_casts > 0 && told.here < self.elsewhere {
            Against::NothingHere { casts: told.dry_casts, minutes: told.dry_min, of_100, worth }
        } else {
            Against::FishAway { of_100, worth }
        })
    }
}

fn of_100(chance: f64) -> u32 {
    libm::round(100.0 * chance) as u32
}

/// To a tenth, as a figure is shown.
fn shown(per_hour: f64) -> f64 {
    libm::round(10.0 * per_hour) / 10.0
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
    use crate::{Band, Fan, KeptBack, NextSpot, Spot, SwimInput};
    use proptest::prelude::*;

    fn told(cell: CellId, here: f64, worth: f64) -> CellTold {
        CellTold { cell, here, worth, dry_casts: 2, dry_min: 31.0 }
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
            elsewhere_worth: 2.0,
        };
        let next = swim.where_next_told(&figures, Some(&all));
        assert_eq!((next.ranked[0].cell, next.ranked[next.ranked.len() - 1].cell), (worst, best));
        assert!(matches!(
            next.ranked[0].reasons[0],
            Reason::FishHere { of_100: 90, elsewhere_of_100: 50, .. }
        ));
        let last = &next.ranked[next.ranked.len() - 1];
        assert_eq!(last.against[0], Against::NothingHere { casts: 2, minutes: 31.0, of_100: 20, worth: 0.8 });
        // All the others are told alike: they keep the order of their reasons.
        let others = |list: &[NextSpot]| -> Vec<CellId> {
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
        let all = SpotsTold { cells: vec![told(aside, 0.99, 9.0)], elsewhere: 0.3, elsewhere_worth: 1.0 };
        let next = swim.where_next_told(&figures, Some(&all));
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
            let cells = vec![told(best, 0.5, first), told(worst, 0.5, last)];
            let all = SpotsTold { cells, elsewhere: 0.5, elsewhere_worth: 1.2 };
            swim.where_next_told(&figures, Some(&all))
        };
        // 1.16 and 1.24 are both said as 1.2, which is what a spot not tried is worth: nothing is told.
        assert_eq!(with(1.16, 1.24), plain);
        // 1.26 is said as 1.3, and decides.
        assert_ne!(with(1.16, 1.26).ranked[0].cell, plain.ranked[0].cell);
    }

    /// What a spot is said to be worth, as the angler reads it; one of which nothing is said is worth as much as one not tried.
    fn said(next: &NextSpot, all: &SpotsTold) -> String {
        let reason = next.reasons.iter().find_map(|reason| match reason {
            Reason::FishHere { worth, .. } | Reason::NotTried { worth, .. } => Some(*worth),
            _ => None,
        });
        let against = next.against.iter().find_map(|against| match against {
            Against::NothingHere { worth, .. } | Against::FishAway { worth, .. } => Some(*worth),
            _ => None,
        });
        format!("{:.1}", reason.or(against).unwrap_or(shown(all.elsewhere_worth)))
    }

    fn any_told() -> impl Strategy<Value = (usize, f64, f64, u32)> {
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
        /// One rule decides: the figure that is said; and among equals of it the order that there was before.
        #[test]
        fn every_change_of_rank_is_said_with_its_figure(
            list in proptest::collection::vec(any_told(), 1..8),
            casts in any_casts(),
            (elsewhere, elsewhere_worth) in (0.0..1.0_f64, 0.0..4.0_f64),
        ) {
            let swim = Swim::new(SwimInput { casts, ..SwimInput::default() }).unwrap();
            let figures = swim.figures(190 * 60_000);
            let plain = swim.where_next(&figures);
            let cells = list.into_iter().map(|(i, here, worth, dry_casts)| CellTold {
                cell: swim.cells()[i % swim.cells().len()].id,
                here,
                worth,
                dry_casts,
                dry_min: 20.0,
            });
            let all = SpotsTold { cells: cells.collect(), elsewhere, elsewhere_worth };
            let next = swim.where_next_told(&figures, Some(&all));
            let before = |n: &NextSpot| plain.ranked.iter().position(|p| p.cell == n.cell).unwrap();
            for pair in next.ranked.windows(2) {
                let [a, b] = [&pair[0], &pair[1]].map(|n| said(n, &all).parse::<f64>().unwrap());
                prop_assert!(a > b || (a == b && before(&pair[0]) < before(&pair[1])), "{:?}", pair);
            }
            prop_assert_eq!(next.ranked.len(), plain.ranked.len());
            prop_assert_eq!(next.go_in, plain.go_in);
        }
    }
}
