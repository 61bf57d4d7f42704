//! Kept-back water: its double outline, which no mark and no other label covers, and the word inside it.

use super::draw::Drawing;
use super::flag::led;
use super::labels::{Label, Over, Placer, lattice_in};
use super::pack::Pack;
use super::record::{KeyLine, LabelRole, LineRole};
use super::view::Rect;
use crate::cells::Swim;
use crate::fished::SwimFigures;
use crate::frame::Point;
use crate::input::KeptBack;
use crate::planar::{nearest_on_sides, ring_centroid, ring_contains};
use crate::sector::{AnnularSector, CHORD_ERROR_M};
use crate::water::Water;

/// Width of the outline on the Swim screen, design pixels.
pub(crate) const OUTLINE_DP: f64 = 6.0;
/// A distance, in degrees or metres, that is too small to see on the picture.
const HAIR: f64 = 0.03;

/// The cosine of the least turn, 30 degrees, of a corner of an outline.
const CORNER: f64 = 0.866;

/// Parts kept back within this many minutes have one time in their label.
const ALIKE_MIN: f64 = 2.0;

/// A connected piece of kept-back water.
pub(crate) struct Kept {
    water: Water,
    /// How long each part has been kept back.
    minutes: Vec<f64>,
    /// Its edges in pixels.
    pub rings: Vec<KeptRing>,
}

impl Kept {
    /// Whether two pieces share water or an edge.
    fn touches(&self, other: &Self) -> bool {
        let near = |a: &Self, b: &Self| a.water.rings().iter().flatten().any(|p| b.water.distance(*p) < 0.05);
        near(self, other) || near(other, self)
    }

    /// KEPT, and for how long if there is room for that.
    fn label(&self, d: &Drawing) -> Label {
        let times: Vec<String> = self.minutes.iter().map(|m| d.words.time(*m)).collect();
        // Parts that were kept back within a minute or two are one to the angler; the time is that of the last.
        let (first, last) =
            self.minutes.iter().fold((0.0_f64, f64::INFINITY), |(high, low), &m| (high.max(m), low.min(m)));
        let long = (first - last <= ALIKE_MIN).then(|| format!("{} {}", d.words.kept, d.words.time(last)));
        // Never the time alone, since it would read as minutes rested.
        let mut tries: Vec<(String, f64)> = long.map(|text| (text, d.view.text)).into_iter().collect();
        tries.extend(d.view.sizes().into_iter().map(|size| (d.words.kept.clone(), size)));
        Label {
            role: LabelRole::KeptBack,
            tries,
            numbered: false,
            key: Some(format!("{} {}", d.words.kept_back, times.join(", "))),
            boxed: true,
            over: Over::Outlines,
        }
    }

    /// The point of its edges that is nearest to a point; of several, the same in a mirrored swim.
    fn nearest(&self, from: Point, side: f64) -> Point {
        let part = |x: f64| (x * 16.0).round() as i64;
        let key = |p: &Point| (part(p.distance(from)), part(p.x * side), part(p.y));
        let near = self.rings.iter().flat_map(|edge| nearest_on_sides(&edge.ring, from));
        near.min_by_key(key).unwrap_or(from)
    }

    /// Whether the middle of a box is no higher and no lower than the water.
    fn is_level_with(&self, r: &Rect) -> bool {
        let y = r.middle().y;
        self.rings.iter().any(|edge| edge.bounds.y < y && y < edge.bounds.y + edge.bounds.h)
    }

    fn has(&self, p: Point) -> bool {
        self.rings.iter().any(|edge| ring_contains(&edge.ring, p))
    }
}

/// Kept-back water, with touching pieces joined, and how long each has been kept back.
pub(crate) fn kept_water(d: &Drawing) -> Vec<Kept> {
    let mut all = pieces(d.swim, d.figures);
    for kept in &mut all {
        kept.rings = kept.water.rings().iter().map(|ring| KeptRing::new(d.view.ring(ring))).collect();
    }
    all
}

fn pieces(swim: &Swim, figures: &SwimFigures) -> Vec<Kept> {
    let mut all: Vec<Kept> = Vec::new();
    for now in &figures.kept_back {
        let mut one =
            Kept { water: water_kept(swim, &now.water), minutes: vec![now.minutes], rings: Vec::new() };
        while let Some(i) = all.iter().position(|k| k.touches(&one)) {
            let other = all.remove(i);
            one = Kept {
                water: one.water.or(&other.water),
                minutes: [one.minutes, other.minutes].concat(),
                rings: Vec::new(),
            };
        }
        all.push(one);
    }
    all
}

fn water_kept(swim: &Swim, kept: &KeptBack) -> Water {
    // Slightly larger, so that two neighbouring cells become one piece.
    let sector = AnnularSector {
        from_deg: kept.fan.from_deg - HAIR,
        to_deg: kept.fan.to_deg + HAIR,
        inner_m: (kept.band.from_m - HAIR).max(0.0),
        outer_m: kept.band.to_m + HAIR,
    };
    swim.water().and(&Water::of_ring(&sector.ring(CHORD_ERROR_M)))
}

/// The double outline.
pub(crate) fn outlines(d: &Drawing, pack: &mut Pack, kept: &[Kept]) {
    let (outer, inner) = if d.full() { (OUTLINE_DP, 2.4) } else { (3.6, 1.4) };
    for edge in kept.iter().flat_map(|k| &k.rings) {
        pack.ring(LineRole::KeptBack, d.dp(outer), &edge.ring);
        pack.ring(LineRole::KeptBackInner, d.dp(inner), &edge.ring);
    }
}

/// The corners of the outlines.
pub(crate) fn corners(d: &Drawing, kept: &[Kept]) -> Vec<Rect> {
    let half = d.dp(OUTLINE_DP / 2.0);
    let all = kept.iter().flat_map(|k| &k.rings).flat_map(KeptRing::corners);
    all.map(|p| Rect::round(p.x, p.y, 2.0 * half, 2.0 * half)).collect()
}

/// Places KEPT inside each piece of kept-back water, with the time if there is room for it; returns the pieces without room.
pub(crate) fn words<'k>(
    d: &Drawing,
    pack: &mut Pack,
    placer: &mut Placer,
    kept: &'k [Kept],
) -> Vec<&'k Kept> {
    let mut narrow = Vec::new();
    for piece in kept {
        let Some(first) = piece.rings.first() else { continue };
        let rings: Vec<&[Point]> = piece.rings.iter().map(|edge| edge.ring.as_slice()).collect();
        let lattice = lattice_in(&rings, ring_centroid(&first.ring), d.ask.side());
        let inside = |p: Point, w: f64, h: f64| {
            let corners = [(-1.0, -1.0), (1.0, -1.0), (-1.0, 1.0), (1.0, 1.0), (0.0, -1.0), (0.0, 1.0)];
            piece.has(p)
                && corners.iter().all(|c| piece.has(Point { x: p.x + c.0 * w / 2.0, y: p.y + c.1 * h / 2.0 }))
        };
        if !placer.find(pack, &piece.label(d), &|_, _| lattice.clone(), &inside) {
            narrow.push(piece);
        }
    }
    narrow
}

/// Places KEPT beside water that is too narrow for the word, or has the ring of the next cast in it, with a line that leads to its
/// outline.
pub(crate) fn words_beside(d: &Drawing, pack: &mut Pack, placer: &mut Placer, narrow: &[&Kept]) {
    for piece in narrow {
        let mut label = piece.label(d);
        // On other water the word alone, which is shorter.
        label.tries.retain(|(said, _)| *said == d.words.kept);
        let outline = |from: Point| piece.nearest(from, d.ask.side());
        // Level with its water: above or below it is the flag of the ring, and another word at its side would be read with it.
        let level = |r: &Rect| piece.is_level_with(r);
        if !led(d, pack, placer, &label, LineRole::KeptBack, &outline, &level) {
            pack.scene.key.extend(label.key.map(|text| KeyLine::new(None, text, label.role)));
        }
    }
}

/// An edge of kept-back water in pixels.
pub(crate) struct KeptRing {
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

    /// Where the outline turns sharply.
    fn corners(&self) -> impl Iterator<Item = Point> + '_ {
        let n = self.ring.len();
        (0..n).filter_map(move |i| {
            let (a, b, c) = (self.ring[(i + n - 1) % n], self.ring[i], self.ring[(i + 1) % n]);
            let (ux, uy, vx, vy) = (b.x - a.x, b.y - a.y, c.x - b.x, c.y - b.y);
            let along = ux * vx + uy * vy;
            (along < CORNER * libm::hypot(ux, uy) * libm::hypot(vx, vy)).then_some(b)
        })
    }

    /// Whether the outline, which reaches this far to either side of the edge, runs through a box.
    pub fn runs_through(&self, r: &Rect, half: f64) -> bool {
        let wide = r.grown(half);
        let sides = self.ring.iter().zip(self.ring.iter().cycle().skip(1));
        self.bounds.meets(&wide) && sides.into_iter().any(|(a, b)| wide.is_crossed_by(*a, *b))
    }

    /// Whether a box keeps clear of the water, so that a cell's figure isn't drawn on kept-back water beside it.
    pub fn is_clear_of(&self, middle: Point, w: f64, h: f64) -> bool {
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
