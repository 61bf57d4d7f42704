//! The words and figures on the picture, most wanted first.

use super::ask::SceneWords;
use super::draw::Drawing;
use super::labels::{Label, Placer, places_in};
use super::marks::Count;
use super::pack::Pack;
use super::record::LabelRole;
use super::view::Rect;
use crate::columns::ColumnName::{Between, LeftOf, On, Plain, RightOf};
use crate::frame::{Point, Spot, point_at};
use crate::planar::{ring_centroid, ring_contains};
use crate::water::Water;

/// Places every label of a full scene.
pub(crate) fn draw(d: &Drawing, pack: &mut Pack, placer: &mut Placer, kept: &[Water], counts: Vec<Count>) {
    kept_back(d, pack, placer, kept);
    let rings: Vec<KeptRing> =
        kept.iter().flat_map(Water::rings).map(|r| KeptRing::new(d.view.ring(&r))).collect();
    for count in counts {
        number_beside(d, pack, placer, &count, &rings);
    }
    rested(d, pack, placer, &rings);
    marks(d, pack, placer);
    things(d, pack, placer);
    ranges(d, pack, placer);
}

fn kept_back(d: &Drawing, pack: &mut Pack, placer: &mut Placer, kept: &[Water]) {
    let time = |minutes: f64| d.words.time(minutes);
    // Where all of it says the same, one label beside the water speaks for all.
    let alike = d.figures.kept_back.windows(2).all(|w| time(w[0].minutes) == time(w[1].minutes));
    let mut said = false;
    for (now, water) in d.figures.kept_back.iter().zip(kept) {
        let rings: Vec<Vec<Point>> = water.rings().iter().map(|r| d.view.ring(r)).collect();
        let Some(first) = rings.first() else { continue };
        let whole = format!("{} {}", d.words.kept_back, time(now.minutes));
        let short = format!("{} {}", d.words.kept_back, SceneWords::short_time(now.minutes));
        let label = Label {
            role: LabelRole::KeptBack,
            // Never the bare time: it would read as minutes rested.
            tries: by_size_then_length(d, &[whole.clone(), short]),
            numbered: false,
            key: Some(whole),
            boxed: true,
            over_marks: true,
        };
        let wish = ring_centroid(first);
        let held = |w: f64, h: f64| {
            // The whole box on the water where that can be.
            let all = places_in(&rings, wish, d.ask.side());
            let corner = |p: &Point, x: f64, y: f64| Point { x: p.x + x * w / 2.0, y: p.y + y * h / 2.0 };
            let on = |p: Point| rings.iter().any(|r| ring_contains(r, p));
            let corners = [(-1.0, -1.0), (1.0, -1.0), (-1.0, 1.0), (1.0, 1.0)];
            all.into_iter().filter(|p| corners.iter().all(|c| on(corner(p, c.0, c.1)))).collect()
        };
        if placer.fits(&label, &held) {
            placer.place(pack, &label, &held);
        } else if !(alike && said) {
            said = true;
            // Too small to hold it: beside the fan, level with the double outline, where it hides no water.
            let label = Label { over_marks: false, ..label };
            placer.place(pack, &label, &|w, h| {
                let mut places = beside_the_fan(d, wish, w);
                // The lower corners, where there is nothing else that it can speak of.
                if alike {
                    places.extend(lower_corners(d, w, h));
                }
                places
            });
        }
    }
}

/// Places left and right of all the water, level with a point and a little above and below; the nearer side first.
fn beside_the_fan(d: &Drawing, level: Point, w: f64) -> Vec<Point> {
    let near = (-4..=4).filter_map(|i| d.span_at(level.y + d.dp(6.0) * f64::from(i)));
    let (low, high) = near.fold((level.x, level.x), |s, at| (s.0.min(at.0), s.1.max(at.1)));
    let (low, high) = (low - w / 2.0 - d.dp(6.0), high + w / 2.0 + d.dp(6.0));
    let nearer = (level.x - low) - (high - level.x);
    // A tie goes to the side away from the thumb.
    let left_first = if nearer.abs() < 0.5 { d.ask.side() > 0.0 } else { nearer < 0.0 };
    let sides = if left_first { [low, high] } else { [high, low] };
    let lifts = [0.0, -14.0, 14.0, -28.0, 28.0];
    lifts.iter().flat_map(|lift| sides.map(|x| Point { x, y: level.y + d.dp(*lift) })).collect()
}

/// The lower corners of the canvas, away from the thumb first, where they are clear of water and peg.
fn lower_corners(d: &Drawing, w: f64, h: f64) -> Vec<Point> {
    let (x, y) = (d.view.half_width - w / 2.0 - d.dp(1.0), d.view.height - h / 2.0 - d.dp(1.0));
    let levels = [-1.0, 0.0, 1.0].map(|side| y + side * h / 2.0);
    let peg = (d.view.peg.x - d.dp(16.0), d.view.peg.x + d.dp(16.0));
    let spans = levels.iter().filter_map(|y| d.span_at(*y));
    let (from, to) = spans.fold(peg, |s, at| (s.0.min(at.0), s.1.max(at.1)));
    let corners = [-x * d.ask.side(), x * d.ask.side()].into_iter().map(|x| Point { x, y });
    corners.filter(|p| p.x + w / 2.0 <= from || p.x - w / 2.0 >= to).collect()
}

/// Every text at the full size before any at a smaller one.
fn by_size_then_length(d: &Drawing, texts: &[String]) -> Vec<(String, f64)> {
    let sizes = d.view.sizes();
    sizes.into_iter().flat_map(|size| texts.iter().map(move |t| (t.clone(), size))).collect()
}

/// The number of a mark that stands for several: in the room kept for it, or round the mark where a label is in the way.
fn number_beside(d: &Drawing, pack: &mut Pack, placer: &mut Placer, count: &Count, kept: &[KeptRing]) {
    let own = d.figures.cells[count.place].kept_back_min.is_some();
    let label = Label {
        role: LabelRole::Count,
        tries: vec![(count.of.to_string(), count.em)],
        numbered: false,
        key: None,
        boxed: false,
        over_marks: false,
    };
    let places = |w: f64, h: f64| {
        let at = |x: f64, y: f64| Point { x: count.at.x + x * d.ask.side(), y: count.at.y + y };
        let (away, high) = (count.size * 1.1 + w / 2.0, count.size * 1.1 + h / 2.0);
        let mut places = vec![count.room, at(away, 0.0), at(-away, 0.0), at(0.0, -high), at(0.0, high)];
        places.retain(|p| own || kept.iter().all(|ring| ring.is_clear_of(*p, w, h)));
        places
    };
    placer.place(pack, &label, &places);
}

/// Minutes rested, in each disturbed cell: the last fished first.
fn rested(d: &Drawing, pack: &mut Pack, placer: &mut Placer, kept: &[KeptRing]) {
    let known = d.figures.cells.iter().enumerate();
    let mut all: Vec<(usize, f64)> = known.filter_map(|(i, c)| c.rested_min.map(|m| (i, m))).collect();
    let aim_x = |i: usize| d.swim.cells()[i].sector.centroid().x * d.ask.side();
    restwater_sorting::by(&mut all, |a, b| {
        let (x, y) = (aim_x(a.0), aim_x(b.0));
        a.1.total_cmp(&b.1).then_with(|| ((x * 1e3).round()).total_cmp(&((y * 1e3).round())))
    });
    for (place, minutes) in all {
        let rings = d.cell_rings(place);
        let cell = &d.swim.cells()[place];
        let Some(first) = rings.first() else { continue };
        let middle = cell.aim.map_or_else(|| ring_centroid(first), |a| d.view.spot(a));
        // Towards the peg, clear of what happened mid-band.
        let depth = (cell.sector.outer_m - cell.sector.inner_m) * d.view.scale;
        let wish = Point { x: middle.x, y: middle.y + 0.3 * depth };
        let time = d.words.time(minutes);
        let key = format!("{}: {time}", place_name(d, place));
        let label = Label {
            role: LabelRole::Rested,
            tries: by_size_then_length(d, &[time, SceneWords::short_time(minutes)]),
            numbered: false,
            key: Some(key),
            boxed: true,
            over_marks: false,
        };
        let own = d.figures.cells[place].kept_back_min.is_some();
        placer.place(pack, &label, &|w, h| {
            let mut places = places_in(&rings, wish, d.ask.side());
            places.retain(|p| own || kept.iter().all(|ring| ring.is_clear_of(*p, w, h)));
            places
        });
    }
}

/// The edge of kept-back water.
struct KeptRing {
    ring: Vec<Point>,
    bounds: Rect,
}

impl KeptRing {
    fn new(ring: Vec<Point>) -> Self {
        let low = |of: fn(&Point) -> f64| ring.iter().map(of).fold(f64::INFINITY, f64::min);
        let high = |of: fn(&Point) -> f64| ring.iter().map(of).fold(f64::NEG_INFINITY, f64::max);
        let (x, y) = (low(|p| p.x), low(|p| p.y));
        let bounds = Rect { x, y, w: high(|p| p.x) - x, h: high(|p| p.y) - y };
        Self { ring, bounds }
    }

    /// Whether a box keeps off it: no figure of one cell stands on kept-back water beside it.
    fn is_clear_of(&self, middle: Point, w: f64, h: f64) -> bool {
        if !self.bounds.meets(&Rect::round(middle.x, middle.y, w, h)) {
            return true;
        }
        let in_box = |p: &Point| (p.x - middle.x).abs() < w / 2.0 && (p.y - middle.y).abs() < h / 2.0;
        if self.ring.iter().any(in_box) {
            return false;
        }
        let steps = [-1.0, -0.5, 0.0, 0.5, 1.0];
        let at = |x: f64, y: f64| Point { x: middle.x + x * w / 2.0, y: middle.y + y * h / 2.0 };
        !steps.iter().any(|x| steps.iter().any(|y| ring_contains(&self.ring, at(*x, *y))))
    }
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
    format!("{across} {:.0}-{:.0} {}", cell.sector.inner_m, cell.sector.outer_m, d.words.metres)
}

/// Names of aiming marks beyond the ends of their rays, in rows where they would meet.
fn marks(d: &Drawing, pack: &mut Pack, placer: &mut Placer) {
    let mut marks: Vec<_> = d.swim.columns().marks.iter().collect();
    let from_middle = |b: f64| ((b.abs() * 1e6).round(), b * d.ask.side());
    restwater_sorting::by(&mut marks, |a, b| {
        let (x, y) = (from_middle(a.bearing_deg), from_middle(b.bearing_deg));
        x.0.total_cmp(&y.0).then(x.1.total_cmp(&y.1))
    });
    for mark in marks {
        let Some(end) = d.ray_end(mark.bearing_deg) else { continue };
        let first_word = mark.name.split_whitespace().next().unwrap_or("");
        // A name smaller says more than its first word.
        let mut tries: Vec<(String, f64)> =
            d.view.sizes().into_iter().map(|size| (mark.name.clone(), size)).collect();
        tries.push((first_word.to_owned(), d.view.text));
        tries.push((first_word.to_owned(), d.view.least_text));
        let label = plain(LabelRole::Mark, tries, &mark.name);
        placer.place(pack, &label, &|w, h| beyond(d, end, mark.bearing_deg, w, h));
    }
}

/// Places beyond the end of a ray: outwards row by row, each shifted a little to either side, then
/// beside it; none over the water.
fn beyond(d: &Drawing, end: Point, bearing_deg: f64, w: f64, h: f64) -> Vec<Point> {
    let out = point_at(bearing_deg, 1.0);
    let limit = (d.view.half_width - w / 2.0 - d.dp(1.0)).max(0.0);
    let mut places = Vec::new();
    for row in 0..3 {
        let y = end.y - h * (0.55 + 0.5 * f64::from(row));
        for shift in [0.0, -0.25, 0.25, -0.5, 0.5] {
            let x = end.x + out.x * h * f64::from(row) * 0.5 + shift * w * d.ask.side();
            places.push(Point { x: x.clamp(-limit, limit), y });
        }
    }
    for y in [0.0, -0.5, 0.5] {
        let away = (w / 2.0 + d.dp(4.0)) * if out.x == 0.0 { -d.ask.side() } else { out.x.signum() };
        places.push(Point { x: end.x + away, y: end.y + y * h });
    }
    let water: Vec<Vec<Point>> = d.swim.water().rings().iter().map(|r| d.view.ring(r)).collect();
    let wet = |p: Point| water.iter().any(|r| ring_contains(r, p));
    let gap = d.dp(4.0);
    let dry = |p: &Point| {
        (0..=4).all(|i| {
            let x = p.x + (f64::from(i) / 4.0 - 0.5) * w;
            !wet(Point { x, y: p.y + h / 2.0 + gap }) && !wet(Point { x, y: p.y - h / 2.0 })
        })
    };
    places.retain(dry);
    places
}

fn plain(role: LabelRole, mut tries: Vec<(String, f64)>, name: &str) -> Label {
    tries.retain(|t| !t.0.trim().is_empty());
    let key = Some(name.to_owned()).filter(|n| !n.trim().is_empty());
    Label { role, tries, numbered: true, key, boxed: false, over_marks: false }
}

/// Names of hazards, then of features, beside their marks.
fn things(d: &Drawing, pack: &mut Pack, placer: &mut Placer) {
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

/// Ranges of band edges beside the fan, on the side away from the thumb.
fn ranges(d: &Drawing, pack: &mut Pack, placer: &mut Placer) {
    let fan = d.swim.fan();
    let edge = if d.ask.side() > 0.0 { fan.from_deg } else { fan.to_deg };
    for band in d.swim.bands() {
        let spot = Spot { bearing_deg: edge, range_m: band.from_m };
        if band.from_m <= 0.0 {
            continue;
        }
        let said = format!("{:.0} {}", band.from_m, d.words.metres);
        let label = Label {
            role: LabelRole::Range,
            tries: d.view.sizes().into_iter().map(|size| (said.clone(), 0.85 * size)).collect(),
            numbered: false,
            key: None,
            boxed: false,
            over_marks: false,
        };
        let at = d.view.spot(spot);
        let places = |w: f64, h: f64| {
            vec![Point { x: at.x - d.ask.side() * (w / 2.0 + d.dp(4.0)), y: at.y + h * 0.2 }]
        };
        placer.place(pack, &label, &places);
    }
}
