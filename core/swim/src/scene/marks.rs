//! Marks: what happened in a cell, side by side so that none hides another, and the lines of casts that are
//! out.
//!
//! If a mark represents several events, their number is beside it. Casts have no mark, since the state of the
//! water shows where they went.

use super::beside;
use super::draw::Drawing;
use super::kept::{Kept, KeptRing, OUTLINE_DP};
use super::labels::{Label, Over, Placer};
use super::names;
use super::pack::Pack;
use super::record::{KeyLine, LabelRole, LineRole, MarkShape};
use super::text::width;
use super::view::Rect;
use crate::frame::{Point, Spot};
use crate::input::CastAt;
use crate::planar::ring_contains;
use crate::sector::{CHORD_ERROR_M, disc};

/// Draws the marks whose places are given: features, hazards and baits that are out. Labels and other marks keep clear of them.
pub(crate) fn draw_fixed(d: &Drawing, pack: &mut Pack, placer: &mut Placer) {
    features(d, pack, placer);
    lines_out(d, pack, placer);
}

/// Draws the marks of what happened with their numbers.
pub(crate) fn draw(d: &Drawing, pack: &mut Pack, placer: &mut Placer, kept: &[Kept]) {
    // Cells are drawn one after the other, each clear of the earlier ones: those with bites first, then those
    // fished last, then from the side away from the thumb, so that a mirrored swim gives a mirrored picture.
    let mut places: Vec<usize> = (0..d.figures.cells.len()).filter(|place| happened(d, *place)).collect();
    let turn = |place: &usize| {
        let known = &d.figures.cells[*place];
        let across = d.swim.cells()[*place].sector.centroid().x * d.ask.side();
        let tenths = |x: f64| (x * 10.0).round() as i64;
        (known.bites == 0, known.rested_min.map_or(i64::MAX, tenths), known.cell.row, tenths(across))
    };
    restwater_sorting::by_key(&mut places, turn);
    let mut without_room = Vec::new();
    for place in places {
        let mut row = Row::of(d, place);
        if let Some(middle) = row.settle(d, placer, place, kept) {
            cluster(d, pack, placer, &row, middle);
        } else if row.has_bites() {
            without_room.push((place, row));
            continue;
        } else {
            row.left_out.append(&mut row.marks);
        }
        explain(d, pack, place, &row);
    }
    // After all that have room in their cells.
    for (place, mut row) in without_room {
        if !beside::place(d, pack, placer, place, &row, kept) {
            row.left_out.append(&mut row.marks);
        }
        explain(d, pack, place, &row);
    }
}

/// Whether a cell has anything to mark.
pub(crate) fn happened(d: &Drawing, place: usize) -> bool {
    let known = &d.figures.cells[place];
    known.bites + known.lost + known.liners + known.shown > 0 || known.fed_min.is_some()
}

/// Where the baits are that are out.
pub(crate) fn baits_out<'a>(d: &'a Drawing) -> impl Iterator<Item = Spot> + 'a {
    let out = |c: &&CastAt| c.end_ms.is_none_or(|end| end > d.figures.at_ms) && d.swim.holds(c.spot);
    d.swim.casts_until(d.figures.at_ms).filter(out).map(|cast| cast.spot)
}

/// The line of each cast that is out, from the bank to its spot.
fn lines_out(d: &Drawing, pack: &mut Pack, placer: &mut Placer) {
    let near_m = d.swim.bands().first().map_or(0.0, |band| band.from_m);
    let (line, halo, dot) = if d.full() { (2.2, 5.0, 5.5) } else { (1.4, 3.2, 3.5) };
    for spot in baits_out(d) {
        let at = d.view.spot(spot);
        let bank = d.view.spot(Spot { range_m: near_m, ..spot });
        pack.line(LineRole::Halo, d.dp(halo), &[bank, at]);
        pack.line(LineRole::LineOut, d.dp(line), &[bank, at]);
        pack.mark(MarkShape::OutNow, d.dp(dot), at);
        placer.keep_clear(Rect::round(at.x, at.y, 2.2 * d.dp(dot), 2.2 * d.dp(dot)));
    }
}

/// Puts the marks of a cell that have no room into the key.
fn explain(d: &Drawing, pack: &mut Pack, place: usize, row: &Row) {
    for (shape, n) in &row.left_out {
        let what = match shape {
            MarkShape::LostCross => &d.words.lost,
            MarkShape::BiteDiamond => &d.words.bites,
            MarkShape::ShownRings => &d.words.shown,
            MarkShape::FedGrains => &d.words.fed,
            _ => &d.words.liners,
        };
        let place = names::place_name(d, place);
        let colon = &d.words.colon;
        // Water is fed or not; the number of feeds is not shown.
        let text = match shape {
            MarkShape::FedGrains => format!("{place}{colon}{what}"),
            _ => format!("{place}{colon}{what} {n}"),
        };
        pack.scene.key.push(KeyLine::new(None, text, LabelRole::Count));
    }
}

/// Draws the marks of one cell side by side, bites first.
pub(super) fn cluster(d: &Drawing, pack: &mut Pack, placer: &mut Placer, row: &Row, middle: Point) {
    // Bites are on the side away from the thumb, also in a mirrored swim.
    let at = |along: f64| Point { x: middle.x + along * d.ask.side(), y: middle.y };
    let mut along = -row.width() / 2.0;
    for &(shape, of) in &row.marks {
        let here = at(along + row.pitch / 2.0);
        let size = row.pitch / 2.3;
        pack.mark(shape, size, here);
        placer.keep_clear(Rect::round(here.x, here.y, 0.9 * row.pitch, 0.9 * row.pitch));
        let digits = row.digits(of);
        if digits > 0.0 {
            let room = at(along + row.pitch + digits / 2.0);
            let label = Label {
                role: LabelRole::Count,
                tries: vec![(of.to_string(), row.em)],
                numbered: false,
                key: None,
                boxed: false,
                over: Over::Nothing,
            };
            // The row was settled where its numbers have room too.
            placer.place(pack, &label, &|_, _| vec![room]);
        }
        along += row.pitch + digits;
    }
}

/// The marks of one cell in a row.
pub(super) struct Row {
    /// Shape and how many events it represents.
    marks: Vec<(MarkShape, u32)>,
    /// The same with one mark for each kind and its number.
    kinds: Vec<(MarkShape, u32)>,
    left_out: Vec<(MarkShape, u32)>,
    pitch: f64,
    /// Size of the numbers; 0 for none.
    em: f64,
}

impl Row {
    fn of(d: &Drawing, place: usize) -> Self {
        let known = &d.figures.cells[place];
        let kinds = [
            (MarkShape::BiteDiamond, known.bites),
            (MarkShape::LostCross, known.lost),
            (MarkShape::LinerTriangle, known.liners),
            (MarkShape::ShownRings, known.shown),
            (MarkShape::FedGrains, u32::from(known.fed_min.is_some())),
        ];
        if !d.full() {
            // The small fan has room for bites only.
            let marks = kinds.into_iter().take(1).filter(|k| k.1 > 0).collect();
            return Self { marks, kinds: Vec::new(), left_out: Vec::new(), pitch: 2.3 * d.dp(4.5), em: 0.0 };
        }
        let kinds: Vec<(MarkShape, u32)> = kinds.into_iter().filter(|k| k.1 > 0).collect();
        let sector = d.swim.cells()[place].sector;
        let (room, least) = (room_across(d, place), d.dp(LEAST_PITCH_DP));
        // Low enough to leave room for a line of text below it in the band.
        let depth = d.view.depth(sector.outer_m - sector.inner_m);
        let most = d.dp(PITCH_DP).min(depth - 1.4 * d.view.least_text).max(least);
        let em = 0.9 * d.view.text.min(1.3 * d.view.least_text);
        let all: u32 = kinds.iter().map(|k| k.1).sum();
        let mut row = Self { marks: kinds.clone(), kinds, left_out: Vec::new(), pitch: least, em };
        if all <= 3 && f64::from(all) * most <= room {
            // Each event has its own mark if all of them fit.
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

    /// Finds a place in the cell that is clear of other marks, if necessary with fewer and smaller marks. `None` leaves the
    /// first of them without a place.
    fn settle(&mut self, d: &Drawing, placer: &Placer, place: usize, kept: &[Kept]) -> Option<Point> {
        let own = d.figures.cells[place].kept_back_min.is_some();
        let rings = if d.full() && self.has_bites() { d.cell_rings(place) } else { Vec::new() };
        let free = |row: &Self, p: &Point| {
            // Where the boundary cuts the cell, a bite would be drawn in other water or in none.
            let first = || row.first(*p, d.ask.side());
            if d.full() && row.has_bites() && !rings.iter().any(|ring| ring_contains(ring, first())) {
                return false;
            }
            let (w, h) = (row.width(), row.height());
            // Numbers are labels: they stay on the canvas, and are not on kept-back water that is another cell's.
            let may = !row.is_numbered() || own || edges(kept).all(|edge| edge.is_clear_of(*p, w, h));
            may && placer.has_room_for(&Rect::round(p.x, p.y, w, h), row.is_numbered())
        };
        loop {
            let places = self.places(d, place, !kept.is_empty());
            if let Some(found) = places.iter().find(|p| free(self, p)) {
                return Some(*found);
            }
            if self.marks.len() > self.kinds.len() {
                // One mark with a number takes less room than single marks.
                self.marks.clone_from(&self.kinds);
            } else if self.marks.len() > 1 {
                self.left_out.extend(self.marks.pop());
            } else if !d.full() {
                // No place is clear, so the one that hides the least is used.
                let clear = |p: &&Point| (placer.clearance(**p) * 16.0).round() as i64;
                return places.iter().rev().max_by_key(clear).copied();
            } else if self.pitch > d.dp(LEAST_PITCH_DP) {
                self.pitch = d.dp(LEAST_PITCH_DP);
            } else if self.em > d.view.least_text {
                self.em = d.view.least_text;
            } else {
                return None;
            }
        }
    }

    /// Whether it has bites, which come first.
    fn has_bites(&self) -> bool {
        self.marks.first().is_some_and(|mark| mark.0 == MarkShape::BiteDiamond)
    }

    /// Where its first mark is if its middle is there.
    fn first(&self, middle: Point, side: f64) -> Point {
        Point { x: middle.x + side * (self.pitch - self.width()) / 2.0, y: middle.y }
    }

    /// The width of the number beside a mark that represents this many events.
    fn digits(&self, of: u32) -> f64 {
        if of > 1 && self.em > 0.0 { width(&of.to_string(), self.em) + 0.25 * self.em } else { 0.0 }
    }

    pub(super) fn is_numbered(&self) -> bool {
        self.marks.iter().any(|mark| self.digits(mark.1) > 0.0)
    }

    /// The height of its marks, and of their numbers if there are any.
    pub(super) fn height(&self) -> f64 {
        let marks = 0.9 * self.pitch;
        if self.is_numbered() { marks.max(1.2 * self.em) } else { marks }
    }

    pub(super) fn width(&self) -> f64 {
        self.marks.iter().map(|m| self.pitch + self.digits(m.1)).sum()
    }

    /// Possible places, best first: on the aim of the cell along its far edge, its near edge, its middle; not
    /// across the edge of the water if it fits inside. Where water is kept back, they keep clear of an outline on any side.
    fn places(&self, d: &Drawing, place: usize, outlined: bool) -> Vec<Point> {
        let cell = &d.swim.cells()[place];
        let centre = f64::midpoint(cell.sector.from_deg, cell.sector.to_deg);
        let bearing = cell.aim.map_or(centre, |a| a.bearing_deg);
        let at = |range_m: f64, lift: f64| {
            let p = d.view.spot(Spot { bearing_deg: bearing, range_m });
            Point { x: p.x, y: p.y + lift }
        };
        let (near, far) = (cell.sector.inner_m, cell.sector.outer_m);
        let middle_m = f64::midpoint(near, far);
        let mid = at(middle_m, 0.0);
        let edge = d.dp(if outlined { OUTLINE_DP / 2.0 + 0.5 } else { 1.0 });
        // A number has blank above and below it.
        let blank = d.dp(if self.is_numbered() { 2.0 } else { 0.0 });
        let lift = (0.5 * self.height() - blank).max(0.5 * self.pitch) + edge;
        let (high, low) = (at(far, lift), at(near, -lift));
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
        // Within the cell, whose aim need not be in its middle.
        let ends = |range_m: f64| {
            let x = |deg: f64| d.view.spot(Spot { bearing_deg: deg, range_m }).x;
            let reach = half + if outlined { edge } else { 0.0 };
            let (left, right) = (x(cell.sector.from_deg) + reach, x(cell.sector.to_deg) - reach);
            if left < right {
                (left, right)
            } else {
                (f64::midpoint(left, right), f64::midpoint(left, right))
            }
        };
        let level = |p: Point, range_m: f64| {
            let (left, right) = ends(range_m);
            Level { at: Point { x: p.x.clamp(left, right), y: p.y }, left, right }
        };
        let middle = level(mid, middle_m);
        let levels =
            if low.y <= high.y { vec![middle] } else { vec![level(high, far), level(low, near), middle] };
        // Where a bait or the ring is in the way, places between these may still be clear.
        let between_levels = levels.windows(2).map(|two| two[0].halfway(&two[1])).collect::<Vec<_>>();
        // Aside too, first away from the thumb.
        let grid = |shares: &[f64], levels: &[Level]| {
            let all =
                shares.iter().flat_map(|share| levels.iter().map(move |l| l.aside(share * d.ask.side())));
            all.collect::<Vec<_>>()
        };
        let every = [levels.clone(), between_levels.clone()].concat();
        let places = [
            grid(&[0.0, -1.0, 1.0], &levels),
            grid(&[0.0, -1.0, 1.0], &between_levels),
            grid(&[-0.5, 0.5], &every),
        ];
        places.concat().into_iter().map(between).collect()
    }
}

/// A height in a cell at which marks may be drawn: at its aim, and to either side as far as the cell reaches.
#[derive(Clone, Copy)]
struct Level {
    at: Point,
    left: f64,
    right: f64,
}

impl Level {
    fn halfway(&self, other: &Self) -> Self {
        Self {
            at: at_middle(self.at, other.at),
            left: f64::midpoint(self.left, other.left),
            right: f64::midpoint(self.right, other.right),
        }
    }

    /// A share of the way from the aim to the left end (negative) or the right one.
    fn aside(&self, share: f64) -> Point {
        let end = if share < 0.0 { self.left } else { self.right };
        Point { x: self.at.x + share.abs() * (end - self.at.x), y: self.at.y }
    }
}

pub(super) fn edges(kept: &[Kept]) -> impl Iterator<Item = &KeptRing> {
    kept.iter().flat_map(|kept| &kept.rings)
}

fn at_middle(a: Point, b: Point) -> Point {
    Point { x: f64::midpoint(a.x, b.x), y: f64::midpoint(a.y, b.y) }
}

/// Distance of two marks, design pixels.
const PITCH_DP: f64 = 16.0;
/// The smallest distance, in small cells.
const LEAST_PITCH_DP: f64 = 11.5;

/// The width available for marks in a cell: nearly its own width, so that each mark visibly belongs to it.
fn room_across(d: &Drawing, place: usize) -> f64 {
    let sector = d.swim.cells()[place].sector;
    0.96 * d.view.breadth(sector.to_deg - sector.from_deg, f64::midpoint(sector.inner_m, sector.outer_m))
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
        let round = disc(hazard.spot.point(), hazard.clear_m, CHORD_ERROR_M);
        pack.ring(LineRole::HazardClear, d.dp(1.0), &d.view.ring(&round));
    }
}
