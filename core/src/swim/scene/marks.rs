//! Marks: a dot for each cast, and what happened in a cell set side by side so that none hides another.

use super::draw::Drawing;
use super::labels::Placer;
use super::pack::Pack;
use super::record::{LineRole, MarkShape};
use super::view::Rect;
use crate::swim::cells::CellId;
use crate::swim::fished::{CellFigures, known_by};
use crate::swim::frame::{Point, point_at};
use std::collections::{BTreeMap, BTreeSet};

/// A number to write beside a mark that stands for several.
pub(crate) struct Count {
    pub of: u32,
    /// Middle of the mark.
    pub at: Point,
    /// Half its size.
    pub size: f64,
}

/// Draws all marks; returns the numbers still to be written.
pub(crate) fn draw(d: &Drawing, pack: &mut Pack, placer: &mut Placer) -> Vec<Count> {
    features(d, pack, placer);
    dots(d, pack, placer);
    let mut counts = Vec::new();
    let middles = middles_of_events(d);
    for (place, known) in d.figures.cells.iter().enumerate() {
        let Some(&middle) = middles.get(&known.cell) else { continue };
        counts.extend(cluster(d, pack, placer, place, known, middle));
    }
    counts
}

/// One dot a place: casts at the same spot share it.
fn dots(d: &Drawing, pack: &mut Pack, placer: &mut Placer) {
    let grid = d.dp(3.0).max(1e-9);
    let mut seen = BTreeSet::new();
    let at_ms = d.figures.at_ms;
    for cast in d.swim.casts_until(at_ms).filter(|c| d.swim.holds(c.spot)) {
        let at = d.view.spot(cast.spot);
        let out = cast.end_ms.is_none_or(|end| end > at_ms);
        // Rounded away from the peg on both sides alike, so that a mirrored swim keeps the same dots.
        let cell = ((at.x - d.view.peg.x).abs() / grid).floor() as i64;
        let right = at.x > d.view.peg.x;
        let fresh = seen.insert((cell, right, (at.y / grid).floor() as i64, out));
        if out {
            let size = d.dp(if d.full() { 6.0 } else { 3.5 });
            pack.mark(MarkShape::OutNow, size, at);
            placer.keep_clear(Rect::round(at.x, at.y, 2.0 * size, 2.0 * size));
        } else if fresh && d.full() && !(known_by(cast, at_ms) && cast.bites + cast.lost + cast.liners > 0) {
            pack.mark(MarkShape::CastDot, d.dp(3.2), at);
        }
    }
}

/// Mean place of the casts on which something happened, cell by cell.
fn middles_of_events(d: &Drawing) -> BTreeMap<CellId, Point> {
    let mut sums: BTreeMap<CellId, (f64, f64, f64)> = BTreeMap::new();
    let at_ms = d.figures.at_ms;
    for cast in d.swim.casts_until(at_ms) {
        if cast.bites + cast.lost + cast.liners == 0 || !known_by(cast, at_ms) {
            continue;
        }
        if let Some(id) = d.swim.cell_of(cast.spot) {
            let p = d.view.spot(cast.spot);
            let sum = sums.entry(id).or_default();
            *sum = (sum.0 + p.x, sum.1 + p.y, sum.2 + 1.0);
        }
    }
    sums.into_iter().map(|(id, (x, y, n))| (id, Point { x: x / n, y: y / n })).collect()
}

/// Marks of one cell side by side along its far edge, so that its rested minutes have room below them; along its
/// near edge where something else stands in the way.
fn cluster(
    d: &Drawing,
    pack: &mut Pack,
    placer: &mut Placer,
    place: usize,
    known: &CellFigures,
    middle: Point,
) -> Vec<Count> {
    // The small fan has room for bites only.
    let kinds = [
        (MarkShape::BiteDiamond, known.bites),
        (MarkShape::LostCross, known.lost),
        (MarkShape::LinerTriangle, known.liners),
    ];
    let kinds: Vec<(MarkShape, u32)> =
        kinds.into_iter().take(if d.full() { 3 } else { 1 }).filter(|k| k.1 > 0).collect();
    let room = room_across(d, place);
    let all: u32 = kinds.iter().map(|k| k.1).sum();
    let pitch_of = |n: u32| (room / f64::from(n.max(1))).min(d.dp(PITCH_DP));
    // Each on its own where all of them fit, else one of each kind with a number beside it.
    let single = d.full() && all <= 4 && pitch_of(all) >= d.dp(PITCH_DP);
    let shapes: Vec<(MarkShape, u32)> = if single {
        kinds.iter().flat_map(|&(shape, n)| (0..n).map(move |_| (shape, 1))).collect()
    } else {
        kinds
    };
    let n = shapes.len() as u32;
    let (pitch, size) = if d.full() {
        let pitch = pitch_of(n).max(d.dp(LEAST_PITCH_DP));
        (pitch, pitch / 2.3)
    } else {
        (2.3 * d.dp(4.5), d.dp(4.5))
    };
    let y = if d.full() { row_of_marks(d, placer, place, middle, pitch, n) } else { middle.y };
    let mut counts = Vec::new();
    for (i, (shape, of)) in shapes.into_iter().enumerate() {
        // Bites on the side away from the thumb, where a mirrored swim has them too.
        let along = pitch * (i as f64 - f64::from(n - 1) / 2.0);
        let at = Point { x: middle.x + along * d.ask.side(), y };
        pack.mark(shape, size, at);
        if of > 1 && d.full() {
            counts.push(Count { of, at, size });
        }
    }
    placer.keep_clear(Rect::round(middle.x, y, pitch * f64::from(n), pitch));
    counts
}

/// Distance of two marks, design pixels.
const PITCH_DP: f64 = 16.0;
/// The least of it, where a cell is small.
const LEAST_PITCH_DP: f64 = 11.5;

/// Room for marks across a cell: its own width, and half of a neighbour's where nothing happened there.
fn room_across(d: &Drawing, place: usize) -> f64 {
    let cell = &d.swim.cells()[place];
    let columns = &d.swim.columns().columns;
    let quiet = |column: u32| {
        let id = CellId { column, row: cell.id.row };
        d.swim.place(id).is_none_or(|i| {
            let known = &d.figures.cells[i];
            known.bites + known.lost + known.liners == 0
        })
    };
    let width = |column: usize| columns.get(column).map_or(0.0, |c| c.to_deg - c.from_deg);
    let own = cell.id.column;
    let mut degrees = width(own as usize);
    for beside in [own.checked_sub(1), own.checked_add(1)].into_iter().flatten() {
        if quiet(beside) {
            degrees += width(beside as usize) / 2.0;
        }
    }
    degrees.to_radians() * cell.sector.outer_m * d.view.scale
}

/// Height of the row of marks in a cell.
fn row_of_marks(d: &Drawing, placer: &Placer, place: usize, middle: Point, pitch: f64, n: u32) -> f64 {
    let sector = &d.swim.cells()[place].sector;
    let centre = f64::midpoint(sector.from_deg, sector.to_deg);
    let edge = |range_m: f64| d.view.at(point_at(centre, range_m)).y;
    let far = edge(sector.outer_m) + 0.6 * pitch;
    let near = edge(sector.inner_m) - 0.6 * pitch;
    if near <= far {
        return middle.y;
    }
    let free = |y: &f64| {
        let row = Rect::round(middle.x, *y, pitch * f64::from(n), pitch);
        placer.has_no_mark_in(&row)
    };
    [far, near].into_iter().find(free).unwrap_or(far)
}

/// Features and hazards.
fn features(d: &Drawing, pack: &mut Pack, placer: &mut Placer) {
    if !d.full() {
        return;
    }
    let size = d.dp(6.0);
    let features = d.swim.input().features.iter().map(|f| (f.spot, MarkShape::FeatureSquare));
    let hazards = d.swim.input().hazards.iter().map(|h| (h.spot, MarkShape::HazardCross));
    for (spot, shape) in features.chain(hazards).filter(|(s, _)| d.swim.holds(*s)) {
        let at = d.view.spot(spot);
        pack.mark(shape, size, at);
        placer.keep_clear(Rect::round(at.x, at.y, 2.0 * size, 2.0 * size));
    }
    for hazard in d.swim.input().hazards.iter().filter(|h| d.swim.holds(h.spot)) {
        pack.circle(
            LineRole::HazardClear,
            d.dp(1.0),
            d.view.spot(hazard.spot),
            hazard.clear_m * d.view.scale,
        );
    }
}
