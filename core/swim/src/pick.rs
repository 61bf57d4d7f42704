//! Any cell in two taps: a ray first, then a band of it.
//!
//! The lowest glass has room for five keys of 15 mm for the rays, and for eleven where they are cells. A swim of more
//! columns has several beside each other behind one key, as many as the second tap has room for; of one with more still,
//! evenly chosen ones are offered, aiming marks first, and the rest is a step key away.

use super::cells::{CellId, Swim};
use super::columns::ColumnName;

/// Keys of the first tap.
pub const RAY_KEYS: usize = 5;
/// Keys of the second.
pub const CELL_KEYS: usize = 11;

impl Swim {
    /// The columns behind each key of the first tap, left to right.
    pub fn rays(&self) -> Vec<Vec<u32>> {
        let all = 0..self.columns().columns.len() as u32;
        let open: Vec<u32> = all.filter(|c| !self.aimed_in(*c).is_empty()).collect();
        let bands = open.iter().map(|c| self.aimed_in(*c).len()).max().unwrap_or(0);
        let most = (CELL_KEYS / bands.max(1)).max(1) * RAY_KEYS;
        let on_mark = |c: &u32| matches!(self.columns().columns[*c as usize].name, ColumnName::On(_));
        let marks: Vec<u32> = open.iter().copied().filter(on_mark).collect();
        let offered = if open.len() > most { spread(&open, evenly(&marks, most), most) } else { open };
        let keys = offered.len().min(RAY_KEYS);
        let from = |key: usize| key * offered.len() / keys.max(1);
        (0..keys).map(|key| offered[from(key)..from(key + 1)].to_vec()).collect()
    }

    /// The cells behind a key of the first tap: ray by ray, each from the peg outwards.
    pub fn cells_of_ray(&self, ray: usize) -> Vec<CellId> {
        let columns = self.rays().into_iter().nth(ray).unwrap_or_default();
        let room = CELL_KEYS / columns.len().max(1);
        columns.into_iter().flat_map(|c| evenly(&self.aimed_in(c), room)).collect()
    }

    fn aimed_in(&self, column: u32) -> Vec<CellId> {
        let rows = 0..self.bands().len() as u32;
        let id = |row| CellId { column, row };
        rows.map(id).filter(|id| self.cell(*id).is_ok_and(|c| c.aim.is_some())).collect()
    }
}

/// At most so many of them, the first and the last among them.
fn evenly<T: Copy>(all: &[T], most: usize) -> Vec<T> {
    if all.len() <= most {
        return all.to_vec();
    }
    (0..most).map(|i| all[i * (all.len() - 1) / (most - 1).max(1)]).collect()
}

/// Fills `kept` up to `most` of `all` in order, each time with the one furthest from those kept.
fn spread(all: &[u32], mut kept: Vec<u32>, most: usize) -> Vec<u32> {
    while kept.len() < most {
        let gap = |c: &u32| kept.iter().map(|k| k.abs_diff(*c)).min().unwrap_or(u32::MAX);
        let Some(next) = all.iter().copied().max_by_key(gap).filter(|c| gap(c) > 0) else { break };
        kept.push(next);
    }
    kept.sort_unstable();
    kept
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{AimingMark, Band, Fan, SwimInput};
    use std::collections::BTreeSet;

    fn swim(half_deg: f64, bands: u32, marks: &[f64]) -> Swim {
        let band = |i: u32| Band { from_m: 10.0 * f64::from(i + 1), to_m: 10.0 * f64::from(i + 2) };
        let mark = |b: &f64| AimingMark { id: b.to_string(), name: b.to_string(), bearing_deg: *b };
        Swim::new(SwimInput {
            fan: Some(Fan { from_deg: -half_deg, to_deg: half_deg }),
            bands: (0..bands).map(band).collect(),
            marks: marks.iter().map(mark).collect(),
            ..SwimInput::default()
        })
        .unwrap()
    }

    fn offered(swim: &Swim) -> BTreeSet<CellId> {
        (0..swim.rays().len()).flat_map(|ray| swim.cells_of_ray(ray)).collect()
    }

    #[test]
    fn a_narrow_swim_has_a_key_for_each_ray_and_band() {
        let swim = swim(25.0, 5, &[]);
        assert_eq!(swim.rays(), [[0], [1], [2], [3], [4]]);
        let bands: Vec<u32> = swim.cells_of_ray(3).iter().map(|c| c.row).collect();
        assert_eq!(bands, [0, 1, 2, 3, 4]);
        assert!(swim.cells_of_ray(5).is_empty());
    }

    #[test]
    fn every_cell_of_a_wide_swim_is_behind_two_keys() {
        for (half_deg, bands) in [(50.0, 5), (25.0, 11), (75.0, 3), (90.0, 2), (40.0, 4)] {
            let swim = swim(half_deg, bands, &[]);
            let all: BTreeSet<CellId> = swim.cells().iter().map(|c| c.id).collect();
            assert_eq!(offered(&swim), all, "{half_deg} {bands}");
        }
    }

    #[test]
    fn never_more_keys_than_there_is_room_for_and_the_rest_is_one_step_away() {
        let marks = [-71.0, -32.0, -3.0, 1.0, 44.0, 63.0];
        for (half_deg, bands) in [(90.0, 5), (90.0, 11), (60.0, 20), (25.0, 24)] {
            let swim = swim(half_deg, bands, &marks);
            let rays = swim.rays();
            assert!(rays.len() <= RAY_KEYS);
            assert!((0..rays.len()).all(|ray| swim.cells_of_ray(ray).len() <= CELL_KEYS));
            let offered = offered(&swim);
            let far = |c: &CellId| {
                offered.iter().map(|o| o.column.abs_diff(c.column) + o.row.abs_diff(c.row)).min().unwrap()
            };
            let most = swim.cells().iter().map(|c| far(&c.id)).max().unwrap();
            assert!(most <= 4, "{half_deg} {bands}: {most} steps");
        }
    }

    #[test]
    fn aiming_marks_come_first() {
        let marks = [-71.0, -3.0, 44.0];
        let swim = swim(90.0, 8, &marks);
        let columns: BTreeSet<u32> = swim.rays().into_iter().flatten().collect();
        for bearing in marks {
            assert!(columns.contains(&swim.column_of(bearing).unwrap()), "{bearing}");
        }
    }
}
