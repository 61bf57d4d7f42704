//! Draws one frame: water and its states, arcs, rays, kept-back water, the next cast, marks, labels.

use super::ask::{Detail, SceneAsk, SceneWords};
use super::flag;
use super::hatch;
use super::kept;
use super::labels::Placer;
use super::marks;
use super::names;
use super::pack::Pack;
use super::record::{FillRole, LineRole, SwimScene};
use super::view::{Rect, View};
use crate::cells::{CellId, Swim};
use crate::error::SwimError;
use crate::fished::{CellState, SwimFigures};
use crate::frame::{Point, Spot};

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
        pack.scene.hatch_width = self.dp(1.5) as f32;
        for ring in &self.outline {
            pack.fill(FillRole::Water, ring);
        }
        self.states(&mut pack);
        self.arcs(&mut pack);
        self.rays(&mut pack);
        for ring in &self.outline {
            pack.ring(LineRole::Outline, self.dp(if self.full() { 2.2 } else { 1.6 }), ring);
        }
        let kept = kept::kept_water(self);
        kept::outlines(self, &mut pack, &kept);
        self.peg(&mut pack);
        let mut placer = Placer::new(&self.view, &kept);
        let aimed = self.aimed(&mut pack);
        for corner in kept::corners(self, &kept) {
            placer.keep_clear(corner);
        }
        marks::draw_fixed(self, &mut pack, &mut placer);
        let ring = flag::ring(self, &mut pack, &mut placer);
        self.keep_clear_of_aim(&aimed, &mut placer);
        marks::draw(self, &mut pack, &mut placer, &kept);
        if self.full() {
            names::draw(self, &mut pack, &mut placer, &kept, ring.as_ref());
        } else if let Some(ring) = ring {
            ring.dot(self, &mut pack);
        }
        pack.scene.key.iter_mut().for_each(|line| line.finish(&self.words.colon));
        pack.scene
    }

    /// Converts design pixels to pixels.
    pub fn dp(&self, n: f64) -> f64 {
        n * self.view.dp
    }

    /// Whether everything is drawn.
    pub fn full(&self) -> bool {
        self.ask.detail == Detail::Full
    }

    /// The left and right end of the water at height `y`; `None` above and below the water.
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

    /// Just fished, resting or free.
    pub fn state(&self, place: usize) -> CellState {
        self.figures.cells[place].state(self.swim.input().rest_target_min)
    }

    /// Draws just-fished water dark and resting water hatched, with less ink the longer it rests; free water
    /// stays blank.
    fn states(&self, pack: &mut Pack) {
        // Closer together on a small picture, so that its small cells show more than one line.
        let shrink = if self.full() { 1.0 } else { 0.5 };
        let target = self.swim.input().rest_target_min;
        for place in 0..self.figures.cells.len() {
            match self.state(place) {
                CellState::Free => {}
                CellState::JustFished => {
                    for ring in self.cell_rings(place) {
                        pack.fill(FillRole::JustFished, &ring);
                        pack.ring(LineRole::Halo, self.dp(0.8), &ring);
                    }
                }
                CellState::Resting => {
                    let rested = self.figures.cells[place].rested_min.unwrap_or(target);
                    let spacing = self.dp(hatch::spacing_dp(rested / target) * shrink);
                    let rings = self.cell_rings(place);
                    hatch::hatch(pack, &rings, self.view.foot, spacing, self.ask.side());
                    for ring in rings {
                        pack.ring(LineRole::CellEdge, self.dp(0.8), &ring);
                    }
                }
            }
        }
    }

    /// Arcs between bands, where they run through the swim.
    fn arcs(&self, pack: &mut Pack) {
        let fan = self.swim.fan();
        let step = (fan.to_deg - fan.from_deg) / ARC_STEPS;
        for band in self.swim.bands().iter().skip(1) {
            let at = |i: u32| Spot { bearing_deg: fan.from_deg + step * f64::from(i), range_m: band.from_m };
            let spots: Vec<Spot> = (0..=ARC_STEPS as u32).map(at).collect();
            for run in spots.split(|s| !self.swim.in_boundary(s.point())).filter(|run| run.len() > 1) {
                pack.line(LineRole::Band, self.dp(1.0), &self.view.line(run.iter().copied()));
            }
        }
    }

    /// Rays across the water to each aiming mark and on to its name.
    fn rays(&self, pack: &mut Pack) {
        for mark in &self.swim.columns().marks {
            let Some((near, end)) = self.ray(mark.bearing_deg) else { continue };
            pack.line(LineRole::Ray, self.dp(1.0), &[near, end]);
        }
    }

    /// Where a ray begins and where it meets the names above the water, or the side of the canvas.
    pub fn ray(&self, bearing_deg: f64) -> Option<(Point, Point)> {
        let fan = self.swim.fan();
        if bearing_deg < fan.from_deg || bearing_deg > fan.to_deg {
            return None;
        }
        let (near, far) = (self.swim.bands().first()?.from_m, self.swim.bands().last()?.to_m);
        let at = |range_m: f64| self.view.spot(Spot { bearing_deg, range_m });
        let (near, far) = (at(near), at(far));
        if !self.full() {
            return Some((near, far));
        }
        // Continues straight from the far edge.
        let run = (far.x - near.x) / (far.y - near.y);
        let side = self.view.half_width - self.dp(1.0);
        let x = (far.x + run * (self.view.names_end - far.y)).clamp(-side, side);
        Some((near, Point { x, y: self.view.names_end }))
    }

    fn peg(&self, pack: &mut Pack) {
        let p = self.view.foot;
        let s = self.dp(if self.full() { 5.0 } else { 4.0 });
        let corner = |x: f64, y: f64| Point { x: p.x + x * s, y: p.y + self.dp(1.5) + y * s };
        pack.fill(FillRole::Peg, &[corner(-1.2, 1.4), corner(1.2, 1.4), corner(0.0, 0.0)]);
    }

    /// The aim of a cell in pixels.
    pub fn aim(&self, id: CellId) -> Option<Point> {
        self.swim.cell(id).ok()?.aim.map(|a| self.view.spot(a))
    }

    /// Draws the corners of the cell that is aimed at, unless the next cast goes there anyway, and returns them.
    fn aimed(&self, pack: &mut Pack) -> Vec<Vec<Point>> {
        let Some(place) =
            self.ask.chosen.filter(|c| self.ask.next != Some(*c)).and_then(|c| self.swim.place(c))
        else {
            return Vec::new();
        };
        let sector = self.swim.cells()[place].sector;
        let mut corners = Vec::new();
        let (deep, wide) = (sector.outer_m - sector.inner_m, sector.to_deg - sector.from_deg);
        for (far, right) in [(false, false), (false, true), (true, false), (true, true)] {
            let (range_m, up) = if far { (sector.outer_m, -1.0) } else { (sector.inner_m, 1.0) };
            let (bearing_deg, along) = if right { (sector.to_deg, -1.0) } else { (sector.from_deg, 1.0) };
            let spots = [
                Spot { bearing_deg, range_m: range_m + up * deep * CORNER },
                Spot { bearing_deg, range_m },
                Spot { bearing_deg: bearing_deg + along * wide * CORNER, range_m },
            ];
            let corner = self.view.line(spots.into_iter());
            pack.line(LineRole::Halo, self.dp(8.0), &corner);
            pack.line(LineRole::Aimed, self.dp(4.0), &corner);
            corners.push(corner);
        }
        corners
    }

    /// Keeps other things off the corners of the cell that is aimed at, and off their sides as long as there is other room.
    fn keep_clear_of_aim(&self, corners: &[Vec<Point>], placer: &mut Placer) {
        let half = self.dp(2.0);
        for corner in corners {
            placer.keep_clear(Rect::round(corner[1].x, corner[1].y, 2.0 * half, 2.0 * half));
            for side in corner.windows(2) {
                placer.keep_clear_of_side(Rect::between(side[0], side[1]).grown(half));
            }
        }
    }
}

/// Chords of an arc.
const ARC_STEPS: f64 = 72.0;
/// How far the corners of the aimed cell run along its sides, as a share of them.
const CORNER: f64 = 0.3;
