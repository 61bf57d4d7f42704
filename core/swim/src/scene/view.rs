//! From metres to pixels: the whole swim fitted above the peg.

use super::ask::{Detail, SceneAsk};
use super::text::width;
use crate::cells::Swim;
use crate::frame::{Point, Spot, point_at};

/// A rectangle in pixels; x is counted from the middle of the canvas, so that a mirror image is a change
/// of sign.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Rect {
    pub x: f64,
    pub y: f64,
    pub w: f64,
    pub h: f64,
}

impl Rect {
    /// A rectangle round its middle.
    pub fn round(x: f64, y: f64, w: f64, h: f64) -> Self {
        Self { x: x - w / 2.0, y: y - h / 2.0, w, h }
    }

    /// Whether two rectangles share any area.
    pub fn meets(&self, other: &Self) -> bool {
        self.x < other.x + other.w
            && other.x < self.x + self.w
            && self.y < other.y + other.h
            && other.y < self.y + self.h
    }
}

/// Whether the names of the marks fit side by side above the fan, with a little to spare.
fn names_fit_one_row(swim: &Swim, ask: &SceneAsk, text: f64) -> bool {
    let fan = swim.fan();
    let far = swim.bands().last().map_or(1.0, |b| b.to_m);
    let half =
        [fan.from_deg, fan.to_deg].map(|deg| point_at(deg, far).x.abs()).into_iter().fold(1.0, f64::max);
    // The fan is about as high as the canvas and never wider than it.
    let scale = (0.8 * ask.height_px / far).min(0.5 * ask.width_px / half);
    let mut edge = f64::NEG_INFINITY;
    let inside = |b: f64| b >= fan.from_deg && b <= fan.to_deg;
    swim.columns().marks.iter().filter(|m| inside(m.bearing_deg)).all(|mark| {
        let (x, w) = (point_at(mark.bearing_deg, far).x * scale, width(&mark.name, text) + text);
        let free = x - w / 2.0 >= edge && x.abs() + w / 2.0 <= ask.width_px / 2.0;
        edge = x + w / 2.0;
        free
    })
}

/// Where the swim stands on the canvas. Pixels, x from the middle of the canvas to the right, y down.
#[derive(Debug, Clone, Copy)]
pub(crate) struct View {
    /// Half the width of the canvas.
    pub half_width: f64,
    /// Height of the canvas.
    pub height: f64,
    /// Pixels a metre.
    pub scale: f64,
    /// The peg.
    pub peg: Point,
    /// Pixels of a design pixel.
    pub dp: f64,
    /// Size of label text at the system's scale.
    pub text: f64,
    /// The least size of label text: that of 100 %, or the system's where that is smaller.
    pub least_text: f64,
}

impl View {
    /// Fits the swim between the room for names above and the peg below.
    pub fn fit(swim: &Swim, ask: &SceneAsk) -> Self {
        let dp = ask.dp();
        let text = 14.0 * dp * ask.text_scale;
        let full = ask.detail == Detail::Full;
        // Names take at most a third of the height, however large the text; one row of them where that does.
        let rows = if full && names_fit_one_row(swim, ask, text) { 1.9 } else { 3.6 };
        let top = if full { (rows * text).min(ask.height_px / 3.0) } else { 3.0 * dp };
        let bottom = if full { 17.0 * dp } else { 9.0 * dp };
        let side = if full { 8.0 * dp } else { 2.0 * dp };
        let (mut left, mut right, mut far) = (0.0f64, 0.0f64, 1.0f64);
        for ring in swim.water().rings() {
            for p in ring {
                left = left.min(p.x);
                right = right.max(p.x);
                far = far.max(p.y);
            }
        }
        let wide = (ask.width_px - 2.0 * side).max(1.0) / (right - left).max(0.1);
        let high = (ask.height_px - top - bottom).max(1.0) / far;
        let scale = wide.min(high);
        let spare = (ask.height_px - top - bottom - scale * far).max(0.0);
        let peg = Point { x: -(left + right) / 2.0 * scale, y: ask.height_px - bottom - spare / 2.0 };
        Self {
            half_width: ask.width_px / 2.0,
            height: ask.height_px,
            scale,
            peg,
            dp,
            text,
            least_text: text.min(14.0 * dp),
        }
    }

    /// Sizes to try for a label, largest first.
    pub fn sizes(&self) -> Vec<f64> {
        let mut sizes = vec![self.text, f64::midpoint(self.text, self.least_text), self.least_text];
        sizes.dedup();
        sizes
    }

    /// Pixels of a point of the peg frame.
    pub fn at(&self, p: Point) -> Point {
        Point { x: self.peg.x + self.scale * p.x, y: self.peg.y - self.scale * p.y }
    }

    /// Pixels of a spot.
    pub fn spot(&self, s: Spot) -> Point {
        self.at(s.point())
    }

    /// Pixels of a ring.
    pub fn ring(&self, ring: &[Point]) -> Vec<Point> {
        ring.iter().map(|p| self.at(*p)).collect()
    }

    /// Whether a rectangle lies on the canvas.
    pub fn holds(&self, r: &Rect) -> bool {
        r.x >= -self.half_width && r.x + r.w <= self.half_width && r.y >= 0.0 && r.y + r.h <= self.height
    }
}
