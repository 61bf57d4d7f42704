//! The words and figures on the picture, the most important first.

use super::draw::Drawing;
use super::flag::{self, Ring};
use super::kept::{self, Kept};
use super::labels::{Label, Over, Placer, lattice_in};
use super::pack::Pack;
use super::record::{KeyLine, LabelRole};
use super::text::width;
use crate::columns::ColumnName::{Between, LeftOf, On, Plain, RightOf};
use crate::fished::CellState;
use crate::frame::{Point, Spot, point_at};
use crate::planar::{ring_centroid, ring_contains};

/// Places every label of a full scene.
pub(crate) fn draw(d: &Drawing, pack: &mut Pack, placer: &mut Placer, kept: &[Kept], ring: Option<&Ring>) {
    let narrow = kept::words(d, pack, placer, kept);
    let in_ring = rested(d, pack, placer, kept, ring);
    kept::words_beside(d, pack, placer, &narrow);
    if let Some(ring) = ring {
        if !in_ring {
            ring.dot(d, pack);
        }
        // Placed after the states, which don't give way to it.
        flag::flag(d, pack, placer, ring);
    }
    ranges(d, pack, placer);
    marks(d, pack, placer);
    hazards_and_features(d, pack, placer);
}

/// Tries every text at the full size before any at a smaller one.
pub(crate) fn by_size_then_length(d: &Drawing, texts: &[String]) -> Vec<(String, f64)> {
    let sizes = d.view.sizes();
    sizes.into_iter().flat_map(|size| texts.iter().map(move |t| (t.clone(), size))).collect()
}

/// Places the minutes rested in each cell that is not free yet, the last fished first. All have the same
/// form, with the unit only if every cell has room for it. Returns whether the minutes of the ring's own cell are written inside
/// the ring.
fn rested(d: &Drawing, pack: &mut Pack, placer: &mut Placer, kept: &[Kept], ring: Option<&Ring>) -> bool {
    let known = d.figures.cells.iter().enumerate().filter(|(i, _)| d.state(*i) != CellState::Free);
    let mut all: Vec<(usize, f64)> = known.filter_map(|(i, c)| c.rested_min.map(|m| (i, m))).collect();
    let aim_x = |i: usize| d.swim.cells()[i].sector.centroid().x * d.ask.side();
    restwater_sorting::by(&mut all, |a, b| {
        let (x, y) = (aim_x(a.0), aim_x(b.0));
        a.1.total_cmp(&b.1).then_with(|| ((x * 1e3).round()).total_cmp(&((y * 1e3).round())))
    });
    let unit = all.iter().all(|(place, _)| has_room_for_the_unit(d, *place));
    let mut in_ring = false;
    for (place, minutes) in all {
        let rings = d.cell_rings(place);
        let cell = &d.swim.cells()[place];
        let Some(first) = rings.first() else { continue };
        let middle = cell.aim.map_or_else(|| ring_centroid(first), |a| d.view.spot(a));
        // Towards the peg, clear of what happened along the far edge.
        let depth = d.view.depth(cell.sector.outer_m - cell.sector.inner_m);
        let wish = Point { x: middle.x, y: middle.y + 0.22 * depth };
        let number = format!("{:.0}", minutes.floor());
        let said = if unit { format!("{number} {}", d.words.minutes) } else { number.clone() };
        let label = Label {
            role: LabelRole::Rested,
            tries: by_size_then_length(d, &[said]),
            numbered: false,
            key: Some(format!("{}{}{}", place_name(d, place), d.words.colon, d.words.time(minutes))),
            boxed: true,
            over: Over::Outlines,
        };
        let own = d.figures.cells[place].kept_back_min.is_some();
        let slices: Vec<&[Point]> = rings.iter().map(Vec::as_slice).collect();
        let lattice = lattice_in(&slices, wish, d.ask.side());
        let foot = {
            let bearing_deg = cell.aim.map_or(0.0, |a| a.bearing_deg);
            d.view.spot(Spot { bearing_deg, range_m: cell.sector.inner_m })
        };
        let places = |_: f64, h: f64| {
            // As close to the near edge as possible, if marks leave no other room.
            let last = Point { x: foot.x, y: foot.y - h / 2.0 - d.dp(0.5) };
            lattice.iter().copied().chain([last]).collect()
        };
        let inside = |p: Point, w: f64, h: f64| {
            let hair = d.dp(1.0);
            let (wide, high) = (w - 2.0 * hair, h - 2.0 * hair);
            let corner = |x: f64, y: f64| Point { x: p.x + x * wide / 2.0, y: p.y + y * high / 2.0 };
            let all = [corner(-1.0, -1.0), corner(1.0, -1.0), corner(-1.0, 1.0), corner(1.0, 1.0), p];
            all.iter().all(|c| rings.iter().any(|r| ring_contains(r, *c)))
                && (own || kept.iter().flat_map(|k| &k.rings).all(|edge| edge.is_clear_of(p, w, h)))
        };
        if placer.find(pack, &label, &places, &inside) {
            continue;
        }
        if ring.is_some_and(|ring| ring.minutes(d, pack, placer, place, &number)) {
            in_ring = true;
        } else {
            pack.scene.key.extend(label.key.map(|text| KeyLine::new(None, text, label.role)));
        }
    }
    in_ring
}

fn has_room_for_the_unit(d: &Drawing, place: usize) -> bool {
    let sector = d.swim.cells()[place].sector;
    let room = d.view.breadth(sector.to_deg - sector.from_deg, sector.inner_m);
    room >= width(&format!("88 {}", d.words.minutes), d.view.text) + 0.7 * d.view.text
}

/// "Gate 30-40 m", for the key.
pub(crate) fn place_name(d: &Drawing, place: usize) -> String {
    let cell = &d.swim.cells()[place];
    let columns = d.swim.columns();
    let column = &columns.columns[cell.id.column as usize];
    let name = |i: u32| columns.marks[i as usize].name.as_str();
    let across = match column.name {
        On(i) => name(i).to_owned(),
        Between(i, j) => format!("{} / {}", name(i), name(j)),
        LeftOf(i) => format!("< {}", name(i)),
        RightOf(i) => format!("{} >", name(i)),
        Plain => format!("{:+.0}\u{b0}", column.aim_deg),
    };
    let (from, to) = (cell.sector.inner_m / d.words.unit_m, cell.sector.outer_m / d.words.unit_m);
    format!("{across} {from:.0}-{to:.0} {}", d.words.unit)
}

/// Places the names of aiming marks above the water where their rays end, in several rows if they would
/// overlap.
fn marks(d: &Drawing, pack: &mut Pack, placer: &mut Placer) {
    let mut marks: Vec<_> = d.swim.columns().marks.iter().collect();
    let from_middle = |b: f64| ((b.abs() * 1e6).round(), b * d.ask.side());
    restwater_sorting::by(&mut marks, |a, b| {
        let (x, y) = (from_middle(a.bearing_deg), from_middle(b.bearing_deg));
        x.0.total_cmp(&y.0).then(x.1.total_cmp(&y.1))
    });
    for mark in marks {
        let Some((_, end)) = d.ray(mark.bearing_deg) else { continue };
        let first_word = mark.name.split_whitespace().next().unwrap_or("");
        // A whole name in small letters says more than its first word in large ones.
        let mut tries: Vec<(String, f64)> =
            d.view.sizes().into_iter().map(|size| (mark.name.clone(), size)).collect();
        tries.push((first_word.to_owned(), d.view.text));
        tries.push((first_word.to_owned(), d.view.least_text));
        let label = plain(LabelRole::Mark, tries, &mark.name);
        placer.place(pack, &label, &|w, h| above(d, end.x, w, h));
    }
}

/// Places above the water at the end of a ray: right above it, shifted a little to either side, then a row higher.
fn above(d: &Drawing, x: f64, w: f64, h: f64) -> Vec<Point> {
    let limit = (d.view.half_width - w / 2.0).max(0.0);
    let rows = (0..3).map(|row| d.view.names_end - h * (0.5 + f64::from(row)));
    rows.flat_map(|y| {
        [0.0, -0.25, 0.25, -0.42, 0.42].map(|shift| {
            let x = x + shift * w * d.ask.side();
            Point { x: x.clamp(-limit, limit), y }
        })
    })
    .collect()
}

fn plain(role: LabelRole, mut tries: Vec<(String, f64)>, name: &str) -> Label {
    tries.retain(|t| !t.0.trim().is_empty());
    let key = Some(name.to_owned()).filter(|n| !n.trim().is_empty());
    Label { role, tries, numbered: true, key, boxed: false, over: Over::Nothing }
}

/// Names of hazards, then of features, beside their marks.
fn hazards_and_features(d: &Drawing, pack: &mut Pack, placer: &mut Placer) {
    let input = d.swim.input();
    let hazards = input.hazards.iter().map(|h| (h.spot, &h.name, LabelRole::Hazard));
    let features = input.features.iter().map(|f| (f.spot, &f.name, LabelRole::Feature));
    for (spot, name, role) in hazards.chain(features) {
        if !d.swim.holds(spot) || name.trim().is_empty() {
            continue;
        }
        let at = d.view.spot(spot);
        let tries = by_size_then_length(d, std::slice::from_ref(name));
        let label = Label { boxed: true, ..plain(role, tries, name) };
        placer.place(pack, &label, &|w, h| round_a_mark(d, at, w, h));
    }
}

fn round_a_mark(d: &Drawing, at: Point, w: f64, h: f64) -> Vec<Point> {
    let gap = d.dp(9.0);
    let side = d.ask.side();
    let place = |x: f64, y: f64| Point { x: at.x + x * side, y: at.y + y };
    let (away, high) = (gap + w / 2.0, gap + h / 2.0);
    vec![
        place(-away, 0.0),
        place(away, 0.0),
        place(0.0, -high),
        place(0.0, high),
        place(-away, -high),
        place(away, -high),
        place(-away, high),
        place(away, high),
    ]
}

/// Places the ranges of band edges at the end of each arc on the side away from the thumb: beside the water if it is narrow
/// enough, otherwise in its corner just above the arc; or else beside the water at the other end.
fn ranges(d: &Drawing, pack: &mut Pack, placer: &mut Placer) {
    for band in d.swim.bands().iter().filter(|band| band.from_m > 0.0) {
        let said = format!("{:.0} {}", band.from_m / d.words.unit_m, d.words.unit);
        let label = Label {
            role: LabelRole::Range,
            tries: d.view.sizes().into_iter().map(|size| (said.clone(), 0.85 * size)).collect(),
            numbered: false,
            key: None,
            boxed: false,
            over: Over::Nothing,
        };
        let sides = [d.ask.side(), -d.ask.side()];
        let ends: Vec<(f64, Point)> =
            sides.into_iter().filter_map(|side| Some((side, arc_end(d, band.from_m, side)?))).collect();
        placer.place(pack, &label, &|w, h| {
            let places = ends.iter().map(|&(side, end)| (side, at_an_end(d, side, end, w, h)));
            // At the other end only beside the water: inside it a range could be read as minutes of a square.
            places
                .flat_map(|(side, two)| two.into_iter().take(if side == sides[0] { 2 } else { 1 }))
                .collect()
        });
    }
}

/// Beside the water and inside it, at the end of an arc.
fn at_an_end(d: &Drawing, side: f64, end: Point, w: f64, h: f64) -> [Point; 2] {
    // Neither may cover the edge of the water, which is not upright beside it.
    let edge = |y: f64| {
        let rows = [y - h / 2.0, y, y + h / 2.0].into_iter().filter_map(|y| d.span_at(y));
        rows.map(|(from, to)| if side > 0.0 { from } else { -to }).collect::<Vec<_>>()
    };
    let (out, up) = (end.y - h * 0.1, end.y - h * 0.55);
    let outer = edge(out).into_iter().fold(side * end.x, f64::min) - w / 2.0 - d.dp(2.0);
    let inner = edge(up).into_iter().fold(side * end.x, f64::max) + w / 2.0 + d.dp(3.5);
    [Point { x: side * outer, y: out }, Point { x: side * inner, y: up }]
}

/// Where the arc at a range ends, on the left for the side 1.
fn arc_end(d: &Drawing, range_m: f64, side: f64) -> Option<Point> {
    let fan = d.swim.fan();
    let (from, to) = if side > 0.0 { (fan.from_deg, fan.to_deg) } else { (fan.to_deg, fan.from_deg) };
    let bearings = (0..=200).map(|i| from + (to - from) * f64::from(i) / 200.0);
    // Slightly inside, since the near edge is also the edge of the boundary.
    let wet = |deg: &f64| d.swim.in_boundary(point_at(*deg, range_m + 0.05));
    bearings.into_iter().find(wet).map(|bearing_deg| d.view.spot(Spot { bearing_deg, range_m }))
}
