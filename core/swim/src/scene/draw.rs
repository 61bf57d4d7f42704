//! Draws one frame: water, hatching, arcs, rays, kept-back water, marks, rings, labels, targets.

use super::ask::{Detail, SceneAsk, SceneWords};
use super::hatch;
use super::hit;
use super::labels::Placer;
use super::marks;
use super::names;
use super::pack::Pack;
use super::record::{FillRole, LineRole, MarkShape, SwimScene};
use super::view::{Rect, View};
use crate::cells::{CellId, Swim};
use crate::error::SwimError;
use crate::fished::SwimFigures;
use crate::frame::{Point, point_at};
use crate::input::KeptBack;
use crate::sector::{AnnularSector, CHORD_ERROR_M, arc};
use crate::water::Water;

/// What every part of the drawing needs.
pub(crate) struct Drawing<'a> {
    pub swim: &'a Swim,
    pub figures: &'a SwimFigures,
    pub ask: &'a SceneAsk,
    pub words: &'a SceneWords,
    pub view: View,
    /// The water's rings in pixels.
    pub outline: Vec<Vec<Point>>,
}

impl Swim {
    /// The picture of the swim for a canvas. `figures` must come from this swim; those of an earlier moment
    /// replay the day.
    pub fn scene(
        &self,
        figures: &SwimFigures,
        ask: &SceneAsk,
        words: &SceneWords,
    ) -> Result<SwimScene, SwimError> {
        ask.check()?;
        for id in [ask.next, ask.chosen].into_iter().flatten() {
            self.check_cell(id)?;
        }
        let view = View::fit(self, ask);
        let outline = self.water().rings().iter().map(|r| view.ring(r)).collect();
        let drawing = Drawing { swim: self, figures, ask, words, view, outline };
        Ok(drawing.draw())
    }
}

impl Drawing<'_> {
    fn draw(&self) -> SwimScene {
        let mut pack = Pack::new(&self.view);
        pack.scene.hatch_width = (1.3 * self.view.dp) as f32;
        for ring in &self.outline {
            pack.fill(FillRole::Water, ring);
        }
        self.hatching(&mut pack);
        self.arcs(&mut pack);
        self.rays(&mut pack);
        for ring in &self.outline {
            pack.ring(LineRole::Outline, self.dp(if self.full() { 2.5 } else { 2.0 }), ring);
        }
        let kept: Vec<Water> = self.figures.kept_back.iter().map(|k| self.kept_water(&k.water)).collect();
        self.kept_outlines(&mut pack, &kept);
        self.peg(&mut pack);
        let mut placer = Placer::new(&self.view);
        self.rings(&mut pack, &mut placer);
        let counts = marks::draw(self, &mut pack, &mut placer);
        if self.full() {
            names::draw(self, &mut pack, &mut placer, &kept, counts);
        }
        hit::targets(&mut pack, self.swim, &self.view, self.ask);
        pack.scene
    }

    /// Pixels of design pixels.
    pub fn dp(&self, n: f64) -> f64 {
        n * self.view.dp
    }

    /// Whether everything is drawn.
    pub fn full(&self) -> bool {
        self.ask.detail == Detail::Full
    }

    /// Where the water begins and ends, left to right, level with `y`; none above and below it.
    pub fn span_at(&self, y: f64) -> Option<(f64, f64)> {
        let sides = self.outline.iter().flat_map(|ring| ring.iter().zip(ring.iter().cycle().skip(1)));
        let at = sides
            .filter(|(a, b)| (a.y > y) != (b.y > y))
            .map(|(a, b)| a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x));
        let span = at.fold((f64::INFINITY, f64::NEG_INFINITY), |s, x| (s.0.min(x), s.1.max(x)));
        (span.0 < span.1).then_some(span)
    }

    /// Rings of a cell in pixels.
    pub fn cell_rings(&self, place: usize) -> Vec<Vec<Point>> {
        self.swim.cells()[place].water.rings().iter().map(|r| self.view.ring(r)).collect()
    }

    fn hatching(&self, pack: &mut Pack) {
        // Closer on a small fan, so that its small cells show more than one stroke.
        let shrink = if self.full() { 1.0 } else { 0.6 };
        for (place, known) in self.figures.cells.iter().enumerate() {
            let Some(spacing) = hatch::spacing_dp(known.disturbances) else { continue };
            let rings = self.cell_rings(place);
            hatch::hatch(pack, &rings, self.view.peg, self.dp(spacing * shrink), self.ask.side());
            for ring in rings {
                pack.ring(LineRole::CellEdge, self.dp(0.8), &ring);
            }
        }
    }

    /// Arcs between bands, where they run through the swim.
    fn arcs(&self, pack: &mut Pack) {
        let fan = self.swim.fan();
        for band in self.swim.bands().iter().skip(1) {
            let clipped = self.swim.input().boundary.is_some();
            // Many short chords where the boundary cuts it, so that it ends at the boundary.
            let error = if clipped { CHORD_ERROR_M / 500.0 } else { CHORD_ERROR_M / 2.0 };
            let points = arc(fan.from_deg, fan.to_deg, band.from_m, error);
            let on = |p: &Point| self.swim.in_boundary(*p);
            for run in points.split(|p| !on(p)).filter(|run| run.len() > 1) {
                pack.line(LineRole::Band, self.dp(1.0), &self.view.ring(run));
            }
        }
    }

    /// Rays from the peg to each aiming mark's edge of the swim.
    fn rays(&self, pack: &mut Pack) {
        for mark in &self.swim.columns().marks {
            if let Some(end) = self.ray_end(mark.bearing_deg) {
                let near =
                    if self.full() { 0.0 } else { self.swim.bands().first().map_or(0.0, |b| b.from_m) };
                let start = point_at(mark.bearing_deg, near.max(self.dp(12.0) / self.view.scale));
                let line = [self.view.at(start), end];
                pack.line(LineRole::Ray, self.dp(1.0), &line);
            }
        }
    }

    /// Where a ray leaves the picture: a little beyond the water on that bearing.
    pub fn ray_end(&self, bearing_deg: f64) -> Option<Point> {
        let fan = self.swim.fan();
        if bearing_deg < fan.from_deg || bearing_deg > fan.to_deg {
            return None;
        }
        let far = self.swim.bands().last()?.to_m;
        let wet = |r: f64| self.swim.in_boundary(point_at(bearing_deg, r));
        let reach = if self.swim.input().boundary.is_none() {
            far
        } else {
            (1..=400).rev().map(|i| far * f64::from(i) / 400.0).find(|r| wet(*r)).unwrap_or(far / 2.0)
        };
        let beyond = if self.full() { self.dp(6.0) / self.view.scale } else { 0.0 };
        Some(self.view.at(point_at(bearing_deg, reach + beyond)))
    }

    fn kept_water(&self, kept: &KeptBack) -> Water {
        let sector = AnnularSector {
            from_deg: kept.fan.from_deg,
            to_deg: kept.fan.to_deg,
            inner_m: kept.band.from_m,
            outer_m: kept.band.to_m,
        };
        self.swim.water().and(&Water::of_ring(&sector.ring(CHORD_ERROR_M)))
    }

    fn kept_outlines(&self, pack: &mut Pack, kept: &[Water]) {
        let (outer, inner) = if self.full() { (6.0, 2.0) } else { (3.6, 1.2) };
        for ring in kept.iter().flat_map(Water::rings) {
            let ring = self.view.ring(&ring);
            pack.ring(LineRole::KeptBack, self.dp(outer), &ring);
            pack.ring(LineRole::KeptBackInner, self.dp(inner), &ring);
        }
    }

    fn peg(&self, pack: &mut Pack) {
        let p = self.view.peg;
        let s = self.dp(if self.full() { 9.0 } else { 5.0 });
        let corner = |x: f64, y: f64| Point { x: p.x + x * s, y: p.y + y * s };
        pack.fill(FillRole::Peg, &[corner(-1.0, 1.5), corner(1.0, 1.5), corner(0.0, 0.0)]);
    }

    /// The aim of a cell in pixels.
    pub fn aim(&self, id: CellId) -> Option<Point> {
        self.swim.cell(id).ok()?.aim.map(|a| self.view.spot(a))
    }

    fn rings(&self, pack: &mut Pack, placer: &mut Placer) {
        let (radius, width) = if self.full() { (12.5, 4.0) } else { (9.0, 2.6) };
        let chosen = self.ask.chosen.filter(|c| self.ask.next != Some(*c));
        let all = [(self.ask.next, LineRole::NextRing), (chosen, LineRole::ChosenRing)];
        for (id, role) in all {
            let Some(at) = id.and_then(|c| self.aim(c)) else { continue };
            pack.circle(role, self.dp(width), at, self.dp(radius));
            if role == LineRole::NextRing {
                pack.mark(MarkShape::NextDot, self.dp(if self.full() { 4.0 } else { 2.5 }), at);
            }
            let side = 2.0 * self.dp(radius + width / 2.0);
            placer.keep_clear(Rect::round(at.x, at.y, side, side));
        }
    }
}
