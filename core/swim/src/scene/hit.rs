//! Taps and step keys: which cell is meant.

use super::ask::SceneAsk;
use super::pack::Pack;
use super::record::{FillRole, SwimScene};
use super::view::View;
use crate::cells::{Cell, CellId, Swim};
use crate::columns::ColumnName;
use crate::frame::Point;
use crate::planar::ring_contains;
use serde::{Deserialize, Serialize};

/// Least distance of two targets, millimetres.
pub const TARGET_MM: f64 = 15.0;

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
    /// The cell one step away that a cast can be aimed at; the same one at the edge of the swim.
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

    /// The cell for step keys to start from where nothing is chosen: the one whose aim lies straightest out,
    /// nearest to the peg of these.
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

impl SwimScene {
    /// The cell that a tap at `x`, `y` (pixels) means: the nearest target, where the tap falls on the
    /// water or within reach of a target. `None` beside the picture.
    pub fn hit(&self, x: f32, y: f32) -> Option<CellId> {
        let tap = Point { x: f64::from(x), y: f64::from(y) };
        let targets = self.target_xy.chunks_exact(2).zip(self.target_cell.chunks_exact(2));
        let nearest = targets
            .map(|(at, id)| {
                let centre = Point { x: f64::from(at[0]), y: f64::from(at[1]) };
                (centre.distance(tap), CellId { column: id[0], row: id[1] })
            })
            .min_by(|a, b| a.0.total_cmp(&b.0).then_with(|| a.1.cmp(&b.1)))?;
        let meant = nearest.0 <= f64::from(self.target_reach) || self.on_water(tap);
        meant.then_some(nearest.1)
    }

    fn on_water(&self, tap: Point) -> bool {
        let rings = self.fill_start.windows(2).zip(&self.fill_role);
        let water = rings.filter(|(_, role)| **role == FillRole::Water).map(|(w, _)| {
            let corners = self.fill_xy[2 * w[0] as usize..2 * w[1] as usize].chunks_exact(2);
            corners.map(|c| Point { x: f64::from(c[0]), y: f64::from(c[1]) }).collect::<Vec<_>>()
        });
        water.filter(|ring| ring_contains(ring, tap)).count() % 2 == 1
    }
}

/// Chooses the cells that taps can choose: the proposed one, then those on aiming marks, then the rest from
/// the middle of the swim outwards, each at least [`TARGET_MM`] from those before it. The others are
/// reached by step keys.
pub(crate) fn targets(pack: &mut Pack, swim: &Swim, view: &View, ask: &SceneAsk) {
    let middle_row = (swim.bands().len() as u32).saturating_sub(1) / 2;
    let on_mark = |c: &Cell| {
        matches!(swim.columns().columns[c.id.column as usize].name, ColumnName::On(_) | ColumnName::Plain)
    };
    let rank = |c: &Cell, bearing: f64| {
        let from_middle = c.id.row.abs_diff(middle_row);
        let wide = (bearing.abs() * 1000.0).round() as i64;
        let to_side = (ask.side() * bearing * 1000.0).round() as i64;
        (ask.next != Some(c.id), !on_mark(c), from_middle, wide, to_side, c.id.row)
    };
    let mut all: Vec<_> = swim.cells().iter().filter_map(|c| c.aim.map(|a| (c, a))).collect();
    restwater_sorting::by_key(&mut all, |(c, a)| rank(c, a.bearing_deg));
    let apart = TARGET_MM * ask.px_per_mm;
    let mut kept: Vec<Point> = Vec::new();
    for (cell, aim) in all {
        let at = view.spot(aim);
        if kept.iter().all(|k| k.distance(at) >= apart) {
            kept.push(at);
            let x = pack.x(at.x);
            pack.scene.target_xy.extend([x, at.y as f32]);
            pack.scene.target_cell.extend([cell.id.column, cell.id.row]);
        }
    }
    pack.scene.target_reach = (apart / 2.0) as f32;
}
