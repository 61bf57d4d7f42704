//! Marks: a dot for each cast, and what happened in a cell set side by side so that none hides another.
//!
//! Where casts lie close only the last few stand on their own; the earlier ones are one mark a cell with their number, and
//! where fish came to them the mark says that instead.

use super::draw::Drawing;
use super::labels::Placer;
use super::names;
use super::pack::Pack;
use super::record::{KeyLine, LabelRole, LineRole, MarkShape};
use super::text::width;
use super::view::Rect;
use crate::cells::CellId;
use crate::frame::{Point, point_at};
use crate::input::CastAt;
use std::collections::BTreeSet;

/// A number to write beside a mark that stands for several.
pub(crate) struct Count {
    pub of: u32,
    /// Place of its cell.
    pub place: usize,
    /// Middle of the mark.
    pub at: Point,
    /// Half its size.
    pub size: f64,
    /// Middle of the room kept for the number.
    pub room: Point,
    /// Size of its figures.
    pub em: f64,
}

/// Casts that stand as dots of their own where casts lie close.
const LAST_CASTS: usize = 3;
/// Casts lie close where each has less room than a square of this side, mm.
const ROOM_MM: f64 = 9.0;

/// Which casts stand on their own, and how many earlier ones each cell has.
struct Casts<'a> {
    alone: Vec<&'a CastAt>,
    /// By place of the cell.
    counted: Vec<u32>,
}

impl<'a> Casts<'a> {
    fn of(d: &'a Drawing) -> Self {
        let all: Vec<&CastAt> =
            d.swim.casts_until(d.figures.at_ms).filter(|c| d.swim.holds(c.spot)).collect();
        let mut counted = vec![0; d.figures.cells.len()];
        let room = (ROOM_MM * d.ask.px_per_mm / d.view.scale).powi(2);
        if !d.full() || all.len() as f64 * room <= d.figures.swim_m2 {
            return Self { alone: all, counted };
        }
        // All those of one moment, so that a mirrored swim has the same.
        let from = all[all.len() - LAST_CASTS.min(all.len())].start_ms;
        let out = |c: &CastAt| c.end_ms.is_none_or(|end| end > d.figures.at_ms);
        let (alone, earlier): (Vec<&CastAt>, Vec<&CastAt>) =
            all.into_iter().partition(|c| c.start_ms >= from || out(c));
        for place in
            earlier.into_iter().filter_map(|c| d.swim.cell_of(c.spot).and_then(|id| d.swim.place(id)))
        {
            counted[place] += 1;
        }
        Self { alone, counted }
    }
}

/// Draws all marks; returns the numbers still to be written.
pub(crate) fn draw(d: &Drawing, pack: &mut Pack, placer: &mut Placer) -> Vec<Count> {
    features(d, pack, placer);
    let casts = Casts::of(d);
    dots(d, pack, placer, &casts);
    // One after the other, each clear of those before it: bites first, then what was fished last, then from the side
    // away from the thumb, so that a mirrored swim has them mirrored.
    let mut places: Vec<usize> =
        (0..d.figures.cells.len()).filter(|place| happened(d, &casts.counted, *place)).collect();
    let turn = |place: &usize| {
        let known = &d.figures.cells[*place];
        let across = d.swim.cells()[*place].sector.centroid().x * d.ask.side();
        let tenths = |x: f64| (x * 10.0).round() as i64;
        (known.bites == 0, known.rested_min.map_or(i64::MAX, tenths), known.cell.row, tenths(across))
    };
    restwater_sorting::by_key(&mut places, turn);
    let mut counts = Vec::new();
    for place in places {
        let mut row = Row::of(d, place, &casts.counted);
        let middle = row.settle(d, placer, place);
        counts.extend(cluster(d, pack, placer, place, &row, middle));
    }
    counts
}

/// Whether a cell has anything to mark.
fn happened(d: &Drawing, counted: &[u32], place: usize) -> bool {
    let known = &d.figures.cells[place];
    known.bites + known.lost + known.liners + counted[place] > 0
}

/// One dot a place: casts at the same spot share it.
fn dots(d: &Drawing, pack: &mut Pack, placer: &mut Placer, casts: &Casts) {
    let grid = d.dp(3.0).max(1e-9);
    let mut seen = BTreeSet::new();
    let at_ms = d.figures.at_ms;
    // The few that are left where casts lie close are the last, and nothing is to hide them.
    let last = casts.counted.iter().any(|n| *n > 0);
    for cast in &casts.alone {
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
        } else if fresh && d.full() {
            let size = d.dp(3.2);
            pack.mark(MarkShape::CastDot, size, at);
            if last {
                placer.keep_clear(Rect::round(at.x, at.y, 2.0 * size, 2.0 * size));
            }
        }
    }
}

/// Marks of one cell side by side along its far edge, so that its rested minutes have room below them; along its
/// near edge where something else stands in the way. Bites come first; what has no room is said in the key.
fn cluster(
    d: &Drawing,
    pack: &mut Pack,
    placer: &mut Placer,
    place: usize,
    row: &Row,
    middle: Option<Point>,
) -> Vec<Count> {
    for (shape, n) in row.left_out.iter().filter(|(shape, _)| *shape != MarkShape::CastDot) {
        let what = if *shape == MarkShape::LostCross { &d.words.lost } else { &d.words.liners };
        let text = format!("{}: {what} {n}", names::place_name(d, place));
        pack.scene.key.push(KeyLine { number: None, text, role: LabelRole::Count });
    }
    let Some(middle) = middle else { return Vec::new() };
    let mut counts = Vec::new();
    // Bites on the side away from the thumb, where a mirrored swim has them too.
    let at = |along: f64| Point { x: middle.x + along * d.ask.side(), y: middle.y };
    let mut along = -row.width() / 2.0;
    for &(shape, of) in &row.marks {
        let here = at(along + row.pitch / 2.0);
        let size = row.pitch / if shape == MarkShape::CastDot { 3.2 } else { 2.3 };
        pack.mark(shape, size, here);
        placer.keep_clear(Rect::round(here.x, here.y, 0.9 * row.pitch, 0.9 * row.pitch));
        let digits = row.digits(of);
        if digits > 0.0 {
            let room = at(along + row.pitch + digits / 2.0);
            counts.push(Count { of, place, at: here, size, room, em: row.em });
        }
        along += row.pitch + digits;
    }
    counts
}

/// The marks of one cell in a row.
struct Row {
    /// Shape and how many it stands for.
    marks: Vec<(MarkShape, u32)>,
    /// The same by kinds, each with its number.
    kinds: Vec<(MarkShape, u32)>,
    left_out: Vec<(MarkShape, u32)>,
    pitch: f64,
    /// Size of the numbers; 0 for none.
    em: f64,
}

impl Row {
    fn of(d: &Drawing, place: usize, counted: &[u32]) -> Self {
        let known = &d.figures.cells[place];
        // Casts are counted where nothing came to them: where something did, the hatching says they were there.
        let casts = if known.bites + known.lost + known.liners > 0 { 0 } else { counted[place] };
        let kinds = [
            (MarkShape::BiteDiamond, known.bites),
            (MarkShape::LostCross, known.lost),
            (MarkShape::LinerTriangle, known.liners),
            (MarkShape::CastDot, casts),
        ];
        if !d.full() {
            // The small fan has room for bites only.
            let marks = kinds.into_iter().take(1).filter(|k| k.1 > 0).collect();
            return Self { marks, kinds: Vec::new(), left_out: Vec::new(), pitch: 2.3 * d.dp(4.5), em: 0.0 };
        }
        let kinds: Vec<(MarkShape, u32)> = kinds.into_iter().filter(|k| k.1 > 0).collect();
        let sector = d.swim.cells()[place].sector;
        let (room, least) = (room_across(d, place, counted), d.dp(LEAST_PITCH_DP));
        // No higher than half of the band, so that something else has room in it.
        let depth = (sector.outer_m - sector.inner_m) * d.view.scale;
        let most = d.dp(PITCH_DP).min(0.5 * depth).max(least);
        let em = 0.9 * d.view.text.min(1.3 * d.view.least_text);
        let all: u32 = kinds.iter().map(|k| k.1).sum();
        let mut row = Self { marks: kinds.clone(), kinds, left_out: Vec::new(), pitch: least, em };
        if casts == 0 && all <= 4 && f64::from(all) * most <= room {
            // Each on its own where all of them fit.
            let single = row.marks.iter().flat_map(|&(shape, n)| (0..n).map(move |_| (shape, 1)));
            row.marks = single.collect();
        }
        while row.marks.len() > 1 && row.width() > room {
            row.left_out.extend(row.marks.pop());
        }
        let figures = row.width() - least * row.marks.len() as f64;
        row.pitch = ((room - figures) / row.marks.len() as f64).clamp(least, most);
        row
    }

    /// Finds a place clear of other marks, with fewer marks where it must be; bites stand in any case.
    fn settle(&mut self, d: &Drawing, placer: &Placer, place: usize) -> Option<Point> {
        let free = |row: &Self, p: &Point| {
            placer.has_no_mark_in(&Rect::round(p.x, p.y, row.width(), 0.9 * row.pitch))
        };
        loop {
            let places = self.places(d, place);
            if let Some(found) = places.iter().find(|p| free(self, p)) {
                return Some(*found);
            }
            if self.marks.len() > self.kinds.len() {
                // Counted, they take less room than each on its own.
                self.marks.clone_from(&self.kinds);
            } else if self.marks.len() > 1 {
                self.left_out.extend(self.marks.pop());
            } else if !d.full() || self.marks.first().is_some_and(|m| m.0 == MarkShape::BiteDiamond) {
                // Nowhere is it clear: where it hides least.
                let clear = |p: &&Point| (placer.clearance(**p) * 16.0).round() as i64;
                return places.iter().rev().max_by_key(clear).copied();
            } else {
                self.left_out.extend(self.marks.pop());
                return None;
            }
        }
    }

    /// Room for the number of a mark that stands for so many.
    fn digits(&self, of: u32) -> f64 {
        if of > 1 && self.em > 0.0 { width(&of.to_string(), self.em) + 0.25 * self.em } else { 0.0 }
    }

    fn width(&self) -> f64 {
        self.marks.iter().map(|m| self.pitch + self.digits(m.1)).sum()
    }

    /// Where it may stand, best first: on the aim of the cell along its far edge, its near edge, its middle; never over
    /// the edge of the water where it fits between.
    fn places(&self, d: &Drawing, place: usize) -> Vec<Point> {
        let cell = &d.swim.cells()[place];
        let centre = f64::midpoint(cell.sector.from_deg, cell.sector.to_deg);
        let bearing = cell.aim.map_or(centre, |a| a.bearing_deg);
        let at = |range_m: f64, lift: f64| {
            let p = d.view.at(point_at(bearing, range_m));
            Point { x: p.x, y: p.y + lift }
        };
        let (near, far) = (cell.sector.inner_m, cell.sector.outer_m);
        let mid = at(f64::midpoint(near, far), 0.0);
        let (high, low) = (at(far, 0.6 * self.pitch), at(near, -0.6 * self.pitch));
        if !d.full() {
            return vec![mid];
        }
        let half = self.width() / 2.0;
        let between = |p: Point| match d.span_at(p.y) {
            Some((from, to)) if to - from > 2.0 * half => {
                Point { x: p.x.clamp(from + half, to - half), y: p.y }
            }
            _ => p,
        };
        // Aside within the cell too, first away from the thumb.
        let wide = (cell.sector.to_deg - cell.sector.from_deg).to_radians() * f64::midpoint(near, far);
        let aside = (wide * d.view.scale / 2.0 - half).max(0.0) * d.ask.side();
        let levels = if low.y <= high.y { vec![mid] } else { vec![high, low, mid] };
        let shifted = [0.0, -aside, aside].into_iter();
        shifted.flat_map(|x| levels.iter().map(move |p| Point { x: p.x + x, y: p.y })).map(between).collect()
    }
}

/// Distance of two marks, design pixels.
const PITCH_DP: f64 = 16.0;
/// The least of it, where a cell is small.
const LEAST_PITCH_DP: f64 = 11.5;

/// Room for marks across a cell: its own width, and half of a neighbour's where nothing happened there.
fn room_across(d: &Drawing, place: usize, counted: &[u32]) -> f64 {
    let cell = &d.swim.cells()[place];
    let columns = &d.swim.columns().columns;
    let quiet = |column: u32| {
        let id = CellId { column, row: cell.id.row };
        d.swim.place(id).is_none_or(|i| !happened(d, counted, i))
    };
    let across = |column: usize| columns.get(column).map_or(0.0, |c| c.to_deg - c.from_deg);
    let own = cell.id.column;
    let mut degrees = across(own as usize);
    for beside in [own.checked_sub(1), own.checked_add(1)].into_iter().flatten() {
        if quiet(beside) {
            degrees += across(beside as usize) / 2.0;
        }
    }
    degrees.to_radians() * cell.sector.outer_m * d.view.scale
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
