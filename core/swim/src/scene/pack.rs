//! Packs shapes into the flat arrays of a scene.

use super::record::{FillRole, LabelRole, LineRole, MarkShape, SwimScene};
use super::view::{Rect, View};
use crate::frame::Point;

/// A scene being filled. Takes pixels with x from the middle of the canvas.
pub(crate) struct Pack {
    pub scene: SwimScene,
    half_width: f64,
}

impl Pack {
    pub fn new(view: &View) -> Self {
        Self::sized(view.half_width * 2.0, view.height)
    }

    pub fn sized(width: f64, height: f64) -> Self {
        let scene = SwimScene { width_px: width as f32, height_px: height as f32, ..SwimScene::default() };
        Self { scene, half_width: width / 2.0 }
    }

    /// A text in its box.
    pub fn label(&mut self, said: &str, size: f64, role: LabelRole, boxed: bool, r: Rect) {
        let (left, middle) = (self.x(r.x), self.x(r.x + r.w / 2.0));
        let baseline = r.y + r.h / 2.0 + 0.36 * size;
        let scene = &mut self.scene;
        scene.label_box.extend([left, r.y as f32, r.w as f32, r.h as f32]);
        scene.label_at.extend([middle, baseline as f32]);
        scene.label_size.push(size as f32);
        scene.label_role.push(role);
        scene.label_boxed.push(boxed);
        scene.label_text.push(said.to_owned());
    }

    /// x from the left edge.
    pub fn x(&self, x: f64) -> f32 {
        (x + self.half_width) as f32
    }

    pub fn fill(&mut self, role: FillRole, ring: &[Point]) {
        let h = self.half_width;
        part(&mut self.scene.fill_xy, &mut self.scene.fill_start, h, ring.iter().copied());
        self.scene.fill_role.push(role);
    }

    /// An open polyline.
    pub fn line(&mut self, role: LineRole, width: f64, points: &[Point]) {
        let h = self.half_width;
        part(&mut self.scene.line_xy, &mut self.scene.line_start, h, points.iter().copied());
        self.scene.line_role.push(role);
        self.scene.line_width.push(width as f32);
    }

    /// A closed polyline: the first point comes again at the end.
    pub fn ring(&mut self, role: LineRole, width: f64, ring: &[Point]) {
        let h = self.half_width;
        let closed = ring.iter().chain(ring.first()).copied();
        part(&mut self.scene.line_xy, &mut self.scene.line_start, h, closed);
        self.scene.line_role.push(role);
        self.scene.line_width.push(width as f32);
    }

    /// A circle, flattened to about a fifth of a pixel.
    pub fn circle(&mut self, role: LineRole, width: f64, centre: Point, radius: f64) {
        let n = (4.0 * radius.max(1.0).sqrt()).ceil().max(16.0) as usize;
        let step = 360.0 / n as f64;
        let at = |i: usize| {
            let p = crate::frame::point_at(step * i as f64, radius);
            Point { x: centre.x + p.x, y: centre.y - p.y }
        };
        let ring: Vec<Point> = (0..n).map(at).collect();
        self.ring(role, width, &ring);
    }

    pub fn stroke(&mut self, a: Point, b: Point) {
        let (ax, bx) = (self.x(a.x), self.x(b.x));
        self.scene.hatch_xy.extend([ax, a.y as f32, bx, b.y as f32]);
    }

    pub fn mark(&mut self, shape: MarkShape, size: f64, at: Point) {
        let x = self.x(at.x);
        self.scene.mark_xy.extend([x, at.y as f32]);
        self.scene.mark_size.push(size as f32);
        self.scene.mark_shape.push(shape);
    }
}

fn part(xy: &mut Vec<f32>, start: &mut Vec<u32>, half_width: f64, points: impl Iterator<Item = Point>) {
    if start.is_empty() {
        start.push(0);
    }
    for p in points {
        xy.extend([(p.x + half_width) as f32, p.y as f32]);
    }
    start.push((xy.len() / 2) as u32);
}
