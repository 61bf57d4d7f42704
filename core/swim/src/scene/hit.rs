//! Taps and step keys: which cell they select.

use super::ask::SceneAsk;
use super::view::View;
use crate::cells::{Cell, CellId, Swim};
use crate::error::SwimError;
use crate::frame::Point;
use crate::planar::ring_contains;
use serde::{Deserialize, Serialize};

/// How far beside the water a tap still means the nearest cell, millimetres: half of a key's width.
const TAP_REACH_MM: f64 = 7.5;

/// A step key.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Step {
    /// One column to the left.
    Left,
    /// One column to the right.
    Right,
    /// One band nearer to the peg.
    In,
    /// One band further out.
    Out,
}

impl Swim {
    /// The next cell in this direction at which a cast can be aimed; at the edge of the swim the same cell.
    pub fn step(&self, from: CellId, step: Step) -> CellId {
        let mut id = from;
        loop {
            let moved = match step {
                Step::Left => id.column.checked_sub(1).map(|column| CellId { column, ..id }),
                Step::Right => id.column.checked_add(1).map(|column| CellId { column, ..id }),
                Step::In => id.row.checked_sub(1).map(|row| CellId { row, ..id }),
                Step::Out => id.row.checked_add(1).map(|row| CellId { row, ..id }),
            };
            let inside = |c: &CellId| {
                (c.column as usize) < self.columns().columns.len() && (c.row as usize) < self.bands().len()
            };
            let Some(next) = moved.filter(inside) else { return from };
            if self.cell(next).is_ok_and(|c| c.aim.is_some()) {
                return next;
            }
            id = next;
        }
    }

    /// The cell from which step keys start if nothing is chosen: the one whose aim is straightest out, and of
    /// these the nearest to the peg.
    pub fn first_cell(&self) -> Option<CellId> {
        let aimed = self.cells().iter().filter_map(|c| c.aim.map(|a| (c.id, a)));
        aimed
            .min_by(|a, b| {
                let wide = |s: &(CellId, crate::Spot)| s.1.bearing_deg.abs();
                wide(a).total_cmp(&wide(b)).then_with(|| (a.0.row, a.0.column).cmp(&(b.0.row, b.0.column)))
            })
            .map(|(id, _)| id)
    }
}

impl Swim {
    /// The cell selected by a tap at `x`, `y` (pixels) on this canvas: the one under the finger, or the
    /// nearest one whose aim is within reach. `None` beside the picture.
    pub fn tapped(&self, ask: &SceneAsk, x: f64, y: f64) -> Result<Option<CellId>, SwimError> {
        ask.check()?;
        let view = View::fit(self, ask);
        let tap = Point { x: x - view.half_width, y };
        let aimed = || self.cells().iter().filter_map(|c| c.aim.map(|aim| (c, view.spot(aim).distance(tap))));
        let under = |c: &Cell| {
            c.water.rings().iter().filter(|ring| ring_contains(&view.ring(ring), tap)).count() % 2 == 1
        };
        let found = aimed().find(|(c, _)| under(c)).or_else(|| {
            let near = aimed().filter(|(_, far)| *far <= TAP_REACH_MM * ask.px_per_mm);
            near.min_by(|a, b| a.1.total_cmp(&b.1).then_with(|| a.0.id.cmp(&b.0.id)))
        });
        Ok(found.map(|(cell, _)| cell.id))
    }
}
