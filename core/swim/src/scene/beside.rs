//! The bites of a cell that has no room for them, since a bait, the ring of the next cast or another mark is in it: they are
//! drawn beside it in a frame, with a line that leads into the cell.

use super::draw::Drawing;
use super::kept::Kept;
use super::labels::{Over, Placer};
use super::marks::{Row, cluster, edges};
use super::pack::Pack;
use super::record::LineRole;
use super::view::Rect;
use crate::frame::{Point, Spot};
use crate::planar::ring_contains;

/// Between the frame and what it holds, design pixels.
const PAD_DP: f64 = 1.5;
/// How far the line leads into the cell.
const INTO_DP: f64 = 5.0;
/// Steps in which its end is searched.
const STEP_DP: f64 = 0.5;
/// Where frames are tried: columns and rows over the canvas.
const LATTICE: (u32, u32) = (54, 40);

/// Draws the marks of a cell beside it, where the line crosses the fewest marks and is shortest; false if there is no room at all.
pub(super) fn place(
    d: &Drawing,
    pack: &mut Pack,
    placer: &mut Placer,
    place: usize,
    row: &Row,
    kept: &[Kept],
) -> bool {
    let pad = 2.0 * d.dp(PAD_DP);
    let (w, h) = (row.width() + pad, row.height() + pad);
    let rings = d.cell_rings(place);
    let own = d.figures.cells[place].kept_back_min.is_some();
    let may = |r: &Rect| {
        placer.is_free(r, Over::Nothing)
            && (own || edges(kept).all(|edge| edge.is_clear_of(r.middle(), w, h)))
    };
    let tenths = |x: f64| (x * 10.0).round() as i64;
    let all = everywhere(d, w, h).into_iter().filter(may);
    let led = all.filter_map(|r| Some((r, into(d, &rings, place, &r)?)));
    let best = led.min_by_key(|(r, (from, to))| {
        let (long, aside) = (tenths(from.distance(*to)), tenths(r.middle().x * d.ask.side()));
        (placer.crossed(*from, *to), long, aside, tenths(r.y))
    });
    let Some((frame, (from, to))) = best else { return false };
    pack.line(LineRole::Halo, d.dp(4.0), &[from, to]);
    pack.line(LineRole::CellEdge, d.dp(1.6), &[from, to]);
    pack.ring(LineRole::Halo, d.dp(3.0), &corners(&frame));
    pack.ring(LineRole::CellEdge, d.dp(1.2), &corners(&frame));
    cluster(d, pack, placer, row, frame.middle());
    placer.keep_clear(frame);
    true
}

/// Frames of a size all over the canvas, below the names.
fn everywhere(d: &Drawing, w: f64, h: f64) -> Vec<Rect> {
    // A hair inside, or rounding would leave out one edge of the canvas and not the other.
    let x = d.view.half_width - w / 2.0 - d.dp(0.5);
    let top = d.view.names_end + h / 2.0;
    let deep = d.view.height - h / 2.0 - d.dp(0.5) - top;
    let share = |i: u32, of: u32| f64::from(i) / f64::from(of);
    let at = |i: u32, j: u32| {
        Rect::round((2.0 * share(i, LATTICE.0) - 1.0) * x, top + share(j, LATTICE.1) * deep, w, h)
    };
    (0..=LATTICE.0).flat_map(|i| (0..=LATTICE.1).map(move |j| at(i, j))).collect()
}

/// The line from a frame into the cell, towards its middle.
fn into(d: &Drawing, rings: &[Vec<Point>], place: usize, frame: &Rect) -> Option<(Point, Point)> {
    let cell = &d.swim.cells()[place];
    let centre = Spot {
        bearing_deg: f64::midpoint(cell.sector.from_deg, cell.sector.to_deg),
        range_m: f64::midpoint(cell.sector.inner_m, cell.sector.outer_m),
    };
    let middle = d.view.spot(cell.aim.unwrap_or(centre));
    let from = frame.nearest(middle);
    let far = from.distance(middle);
    if far < d.dp(INTO_DP) {
        // It would hide what it is about.
        return None;
    }
    let at = |along: f64| {
        let t = (along / far.max(1e-9)).min(1.0);
        Point { x: from.x + t * (middle.x - from.x), y: from.y + t * (middle.y - from.y) }
    };
    let steps = (far / d.dp(STEP_DP)).ceil() as u32;
    let inside = |p: Point| rings.iter().any(|ring| ring_contains(ring, p));
    let entry = (0..=steps).map(|i| f64::from(i) * d.dp(STEP_DP)).find(|along| inside(at(*along)))?;
    Some((from, at(entry + d.dp(INTO_DP))))
}

fn corners(r: &Rect) -> Vec<Point> {
    let at = |x: f64, y: f64| Point { x: r.x + x * r.w, y: r.y + y * r.h };
    vec![at(0.0, 0.0), at(1.0, 0.0), at(1.0, 1.0), at(0.0, 1.0)]
}
