//! The ring of the next cast and its flag: NEXT or STAY.

use super::draw::Drawing;
use super::labels::{Label, Over, Placer, anywhere, box_of};
use super::marks::{self, happened};
use super::names::by_size_then_length;
use super::pack::Pack;
use super::record::{LabelRole, LineRole, MarkShape};
use super::text::width;
use super::view::Rect;
use crate::fished::CellState;
use crate::frame::{Point, Spot};

/// The ring of the next cast.
pub(crate) struct Ring {
    /// Its middle.
    pub at: Point,
    /// The cell it is in.
    place: Option<usize>,
    radius: f64,
    width: f64,
}

/// Radius of the ring, design pixels, on the Swim screen and on the small fan.
const RADIUS_DP: (f64, f64) = (13.0, 7.5);
/// Width of its line.
const WIDTH_DP: (f64, f64) = (5.0, 3.0);
/// Other radii, where a bait, a feature, a hazard or a corner of kept-back water would be on the line.
const OTHER_RADII_DP: [f64; 7] = [11.0, 9.5, 8.0, 15.5, 18.0, 21.0, 25.5];
/// Width of its halo relative to that of the line.
const HALO: f64 = 1.9;

/// Draws the ring and keeps its space free.
pub(crate) fn ring(d: &Drawing, pack: &mut Pack, placer: &mut Placer) -> Option<Ring> {
    let aim = d.ask.next.and_then(|c| d.aim(c))?;
    // Whoever stays, or goes to where a cast went before, casts to that spot, not to the middle of its cell.
    let at = d.ask.stay.or(d.ask.spot).map_or(aim, |spot| d.view.spot(spot));
    let cell = d.ask.stay.map_or(d.ask.next, |spot| d.swim.cell_of(spot));
    let width = d.dp(if d.full() { WIDTH_DP.0 } else { WIDTH_DP.1 });
    let radius = d.dp(if d.full() { RADIUS_DP.0 } else { RADIUS_DP.1 });
    let crossed = |radius: f64| {
        let (inner, outer) = (radius - width / 2.0, radius + width / 2.0);
        placer.marks().iter().any(|mark| {
            let (far, half) = (mark.middle().distance(at), mark.w.min(mark.h) / 2.0);
            far + half > inner && far - half < outer
        })
    };
    let others = OTHER_RADII_DP.iter().map(|dp| d.dp(*dp)).filter(|_| d.full());
    let radius = std::iter::once(radius).chain(others).find(|r| !crossed(*r)).unwrap_or(radius);
    pack.circle(LineRole::Halo, HALO * width, at, radius);
    pack.circle(LineRole::NextRing, width, at, radius);
    let ring = Ring { at, place: cell.and_then(|id| d.swim.place(id)), radius, width };
    placer.keep_clear_of_disc(at, ring.reach());
    Some(ring)
}

impl Ring {
    /// How far it reaches with its halo.
    fn reach(&self) -> f64 {
        self.radius + HALO * self.width / 2.0
    }

    /// Whether a bait is out inside it; that has a dot of its own.
    fn holds_a_bait(&self, d: &Drawing) -> bool {
        let inner = self.radius + self.width / 2.0;
        marks::baits_out(d).any(|bait| d.view.spot(bait).distance(self.at) < inner)
    }

    /// Draws the dot in its middle.
    pub fn dot(&self, d: &Drawing, pack: &mut Pack) {
        if !self.holds_a_bait(d) {
            pack.mark(MarkShape::NextDot, d.dp(if d.full() { 4.5 } else { 2.5 }), self.at);
        }
    }

    /// Writes the minutes rested of its own cell inside it, in place of the dot; false where they are too wide or belong to
    /// another cell.
    pub fn minutes(&self, d: &Drawing, pack: &mut Pack, placer: &Placer, place: usize, said: &str) -> bool {
        let (size, inner) = (d.view.least_text, self.radius - self.width / 2.0);
        let (w, digits) = (width(said, size), DIGITS * size);
        let at = Rect::round(self.at.x, self.at.y, w, digits);
        let marked = placer.marks().iter().any(|mark| mark.nearest(self.at).distance(self.at) < inner);
        let clear = !marked && d.view.holds(&at);
        if self.place != Some(place) || !clear || w.hypot(digits) > ROUNDED * 2.0 * inner {
            return false;
        }
        // A ground of paper: hatching or ink would run through the figures.
        pack.circle(LineRole::Halo, inner, self.at, inner / 2.0);
        pack.label(said, size, LabelRole::Rested, false, at);
        true
    }
}

/// Height of a figure relative to the text size.
const DIGITS: f64 = 0.72;
/// Figures have no corners, so they fit into a circle that is this much smaller than the box round them.
const ROUNDED: f64 = 1.06;

/// Places NEXT so that it touches the ring: above it, otherwise below it, beside it, or at a corner. If none of these places is
/// free, it goes where there is room, with a line to the ring. It moves no mark and no state.
pub(crate) fn flag(d: &Drawing, pack: &mut Pack, placer: &mut Placer, ring: &Ring) {
    let word = if d.ask.stay.is_some() { &d.words.stay } else { &d.words.next };
    let label = Label {
        role: LabelRole::Next,
        tries: by_size_then_length(d, std::slice::from_ref(word)),
        numbered: false,
        key: None,
        boxed: true,
        over: Over::Marks,
    };
    let said = said_cells(d);
    let near = |w: f64, h: f64| at_the_ring(d, ring, &said, w, h);
    if placer.find_over(pack, &label, &near, &anywhere, Over::Nothing) {
        return;
    }
    let edge = |from: Point| {
        let share = ring.reach() / from.distance(ring.at).max(ring.reach());
        Point { x: ring.at.x + share * (from.x - ring.at.x), y: ring.at.y + share * (from.y - ring.at.y) }
    };
    if !led(d, pack, placer, &label, LineRole::NextRing, &edge, &|_| true) {
        placer.find(pack, &label, &near, &anywhere);
    }
}

/// Places that touch the ring, those that hide no cell with a mark or a state first.
fn at_the_ring(d: &Drawing, ring: &Ring, said: &[[Rect; 2]], w: f64, h: f64) -> Vec<Point> {
    let (at, reach) = (ring.at, ring.reach() + d.dp(0.3));
    let (away, high) = (reach + w / 2.0, reach + h / 2.0);
    let limit = (d.view.half_width - w / 2.0).max(0.0);
    let x = at.x.clamp(-limit, limit);
    let mut places = vec![
        Point { x, y: at.y - high },
        Point { x, y: at.y + high },
        Point { x: at.x - away * d.ask.side(), y: at.y },
        Point { x: at.x + away * d.ask.side(), y: at.y },
    ];
    let corner = |x: f64, y: f64| Point { x: at.x + x * away * d.ask.side(), y: at.y + y * high };
    places.extend([corner(-1.0, -1.0), corner(-1.0, 1.0), corner(1.0, -1.0), corner(1.0, 1.0)]);
    // Along a side of the ring, where none of these is free.
    for part in [-0.75, -0.5, -0.25, 0.25, 0.5, 0.75] {
        places.extend([corner(part, -1.0), corner(part, 1.0), corner(-1.0, part), corner(1.0, part)]);
    }
    places.sort_by_cached_key(|p| hidden(said, &Rect::round(p.x, p.y, w, h)));
    places
}

fn hidden(said: &[[Rect; 2]], label: &Rect) -> usize {
    said.iter().filter(|cell| cell.iter().any(|half| label.meets(half))).count()
}

/// The cells that have a mark or a state, each by the middles of its far and near halves.
fn said_cells(d: &Drawing) -> Vec<[Rect; 2]> {
    let said = |place: &usize| d.state(*place) != CellState::Free || happened(d, *place);
    let halves = |place: usize| {
        let sector = d.swim.cells()[place].sector;
        let bearing_deg = f64::midpoint(sector.from_deg, sector.to_deg);
        let deep = sector.outer_m - sector.inner_m;
        let wide = 0.8 * d.view.breadth(sector.to_deg - sector.from_deg, sector.inner_m);
        [0.25, 0.75].map(|share| {
            let at = d.view.spot(Spot { bearing_deg, range_m: sector.inner_m + share * deep });
            Rect::round(at.x, at.y, wide, 0.4 * d.view.depth(deep))
        })
    };
    (0..d.figures.cells.len()).filter(said).map(halves).collect()
}

/// Where labels with a line are tried: columns and rows over the water.
const LATTICE: (u32, u32) = (16, 12);

/// Places a label where there is room for it, with a line to what it names: where its line runs through the fewest labels and
/// marks, then where it `prefers`, then nearest. `end` says where a line from a point ends.
pub(crate) fn led(
    d: &Drawing,
    pack: &mut Pack,
    placer: &mut Placer,
    label: &Label,
    role: LineRole,
    end: &dyn Fn(Point) -> Point,
    prefers: &dyn Fn(&Rect) -> bool,
) -> bool {
    for (said, size) in &label.tries {
        let (w, h) = box_of(label, said, *size);
        // A hair inside, or rounding would leave out one edge of the canvas and not the other.
        let x = d.view.half_width - w / 2.0 - d.dp(0.5);
        let top = d.view.names_end + h / 2.0;
        let deep = d.view.height - h / 2.0 - d.dp(0.5) - top;
        let share = |i: u32, of: u32| f64::from(i) / f64::from(of);
        let at = |i: u32, j: u32| Point {
            x: (2.0 * share(i, LATTICE.0) - 1.0) * x,
            y: top + share(j, LATTICE.1) * deep,
        };
        let all = (0..=LATTICE.0).flat_map(|i| (0..=LATTICE.1).map(move |j| at(i, j)));
        let boxes = all.map(|p| Rect::round(p.x, p.y, w, h)).filter(|r| placer.is_free(r, Over::Nothing));
        let best = boxes.min_by_key(|r| {
            let (from, to) = leader(r, end);
            let tenths = |x: f64| (x * 10.0).round() as i64;
            let aside = tenths(r.middle().x * d.ask.side());
            (placer.crossed(from, to), !prefers(r), tenths(from.distance(to)), aside)
        });
        if let Some(r) = best {
            let (from, to) = leader(&r, end);
            pack.line(LineRole::Halo, d.dp(4.0), &[from, to]);
            pack.line(role, d.dp(2.0), &[from, to]);
            placer.put(pack, label, said, *size, r);
            return true;
        }
    }
    false
}

/// From the edge of a label to what it names.
fn leader(label: &Rect, end: &dyn Fn(Point) -> Point) -> (Point, Point) {
    let to = end(label.middle());
    let from = label.nearest(to);
    (from, to)
}
