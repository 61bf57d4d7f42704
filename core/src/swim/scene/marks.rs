//! Marks: a dot for each cast, and what happened in a cell set side by side so that none hides another.

use super::draw::Drawing;
use super::labels::Placer;
use super::pack::Pack;
use super::record::{LineRole, MarkShape};
use super::view::Rect;
use crate::swim::cells::CellId;
use crate::swim::fished::{CellFigures, known_by};
use crate::swim::frame::Point;
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

/// Marks of one cell in rows round their middle.
fn cluster(
    d: &Drawing,
    pack: &mut Pack,
    placer: &mut Placer,
    place: usize,
    known: &CellFigures,
    middle: Point,
) -> Vec<Count> {
    let size = d.dp(if d.full() { 7.0 } else { 4.5 });
    let pitch = 2.3 * size;
    let room = (d.swim.cells()[place].area_m2.sqrt() * d.view.scale / pitch).floor().clamp(1.0, 4.0) as u32;
    let kinds = [
        (MarkShape::BiteDiamond, known.bites),
        (MarkShape::LostCross, known.lost),
        (MarkShape::LinerTriangle, known.liners),
    ];
    let mut rows: Vec<(MarkShape, u32, u32)> = Vec::new();
    // The small fan has room for bites only.
    let kinds = kinds.into_iter().take(if d.full() { 3 } else { 1 });
    for (shape, n) in kinds.filter(|k| k.1 > 0) {
        // More than a row holds: one mark with a number beside it.
        rows.push(if n <= room.min(3) && d.full() { (shape, n, 0) } else { (shape, 1, n) });
    }
    let mut counts = Vec::new();
    let shift = pitch * (rows.len() as f64 - 1.0) / 2.0;
    for (i, (shape, drawn, of)) in rows.into_iter().enumerate() {
        let y = middle.y - shift + pitch * i as f64;
        for k in 0..drawn {
            let at = Point { x: middle.x + pitch * (f64::from(k) - f64::from(drawn - 1) / 2.0), y };
            pack.mark(shape, size, at);
            if of > 1 && d.full() {
                counts.push(Count { of, at, size });
            }
        }
        let width = pitch * f64::from(drawn);
        placer.keep_clear(Rect::round(middle.x, y, width, pitch));
    }
    counts
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
