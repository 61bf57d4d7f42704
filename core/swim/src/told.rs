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
}

/// Chances that lie nearer to one another than this are not told apart in words.
const APART: f64 = 0.05;

impl SpotsTold {
    fn of(&self, cell: CellId) -> Option<&CellTold> {
        self.cells.iter().find(|told| told.cell == cell)
    }

    /// Tenths of a bite an hour: spots are ranked by these, and equal ones by their reasons.
    pub(crate) fn tenths_per_hour(&self, cell: CellId) -> f64 {
        libm::round(10.0 * self.of(cell).map_or(self.elsewhere_per_hour, |told| told.per_hour))
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
