//! Maps bearings and metres to pixels, with the whole swim over the whole canvas.

use super::ask::{Detail, SceneAsk};
use super::text::width;
use crate::cells::Swim;
use crate::frame::{Point, Spot, bearing_range};

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

    /// The rectangle with these two corners.
    pub fn between(a: Point, b: Point) -> Self {
        let (x, y) = (a.x.min(b.x), a.y.min(b.y));
        Self { x, y, w: (a.x - b.x).abs(), h: (a.y - b.y).abs() }
    }

    /// Whether two rectangles share any area.
    pub fn meets(&self, other: &Self) -> bool {
        self.x < other.x + other.w
            && other.x < self.x + self.w
            && self.y < other.y + other.h
            && other.y < self.y + self.h
    }

    /// The same with a margin on every side.
    pub fn grown(&self, by: f64) -> Self {
        Self { x: self.x - by, y: self.y - by, w: self.w + 2.0 * by, h: self.h + 2.0 * by }
    }

    /// Its middle.
    pub fn middle(&self) -> Point {
        Point { x: self.x + self.w / 2.0, y: self.y + self.h / 2.0 }
    }

    /// The point of it that is nearest to `p`.
    pub fn nearest(&self, p: Point) -> Point {
        Point { x: p.x.clamp(self.x, self.x + self.w), y: p.y.clamp(self.y, self.y + self.h) }
    }

    /// Whether a straight line from `a` to `b` runs through it (after Liang and Barsky, 1984).
    pub fn is_crossed_by(&self, a: Point, b: Point) -> bool {
        let (mut from, mut to) = (0.0f64, 1.0f64);
        let sides = [
            (a.x - b.x, a.x - self.x),
            (b.x - a.x, self.x + self.w - a.x),
            (a.y - b.y, a.y - self.y),
            (b.y - a.y, self.y + self.h - a.y),
        ];
        for (towards, room) in sides {
            if towards == 0.0 && room <= 0.0 {
                return false;
            } else if towards < 0.0 {
                from = from.max(room / towards);
            } else if towards > 0.0 {
                to = to.min(room / towards);
            }
        }
        from < to
    }
}

/// The width of the near edge of the picture as a share of the far edge. In reality it is much narrower, but
/// a fan drawn to scale would leave the near cells too small to read.
const NEAR_WIDTH: f64 = 0.62;
/// How far the ends of an arc are below its middle, as a share of the picture's height, so that ranges still
/// look like arcs.
const SAG: f64 = 0.07;
/// A straight edge of the water is cut into pieces no longer than this, metres, since it may become a curve
/// on the picture.
const PIECE_M: f64 = 1.5;
/// Size of label text at 100 %, design pixels (2.5 mm).
pub(crate) const TEXT_DP: f64 = 16.0;
/// Height of canvas for each 100 % of text, mm.
const HEIGHT_PER_SCALE_MM: f64 = 45.0;

/// The mapping of the swim to the canvas: pixels, x from the middle of the canvas to the right, y down.
///
/// The picture is not a plan. It begins at the nearest band and fills the canvas in both directions: range
/// increases straight up in equal steps, bearing increases across in equal steps, and rays stay straight. So
/// the widths of the cells of a band are proportional to their degrees, and the heights of bands to their
/// metres.
#[derive(Debug, Clone, Copy)]
pub(crate) struct View {
    /// Half the width of the canvas.
    pub half_width: f64,
    /// Height of the canvas.
    pub height: f64,
    /// The lower end of the names above the water.
    pub names_end: f64,
    /// The foot of the picture: the middle of the near edge.
    pub foot: Point,
    /// The size of a design pixel in pixels.
    pub dp: f64,
    /// Size of label text at the system's scale.
    pub text: f64,
    /// The least size of label text: that of 100 %, or the system's if that is smaller.
    pub least_text: f64,
    across: f64,
    up: f64,
    middle_deg: f64,
    half_deg: f64,
    near_m: f64,
    depth_m: f64,
    near_width: f64,
}

impl View {
    /// Fits the swim between the names above and the bank below.
    pub fn fit(swim: &Swim, ask: &SceneAsk) -> Self {
        let dp = ask.dp();
        // Text grows as far as the picture has room for it. All of it has one size, which is never below that
        // of 100 %.
        let room = (ask.height_px / ask.px_per_mm / HEIGHT_PER_SCALE_MM).max(1.0);
        let text = TEXT_DP * dp * ask.text_scale.min(room);
        let full = ask.detail == Detail::Full;
        let fan = swim.fan();
        let (near_m, far_m) =
            (swim.bands().first().map_or(0.0, |b| b.from_m), swim.bands().last().map_or(1.0, |b| b.to_m));
        let mut view = Self {
            half_width: ask.width_px / 2.0,
            height: ask.height_px,
            names_end: 0.0,
            foot: Point { x: 0.0, y: 0.0 },
            dp,
            text,
            least_text: text.min(TEXT_DP * dp),
            across: 1.0,
            up: 1.0,
            middle_deg: f64::midpoint(fan.from_deg, fan.to_deg),
            half_deg: (fan.to_deg - fan.from_deg) / 2.0,
            near_m,
            depth_m: far_m - near_m,
            // If the water begins at the peg, the picture begins in a point.
            near_width: if near_m > 0.0 { NEAR_WIDTH } else { 0.0 },
        };
        let (low, high) = view.bounds(swim);
        let side = if full { 3.0 * dp } else { 2.0 * dp };
        let top = if full { view.room_for_names(swim, side) } else { 3.0 * dp };
        view.names_end = top;
        let bottom = if full { 9.0 * dp } else { 7.0 * dp };
        view.across = (ask.width_px - 2.0 * side).max(1.0) / (high.x - low.x).max(1e-3);
        view.up = (ask.height_px - top - bottom).max(1.0) / (high.y - low.y).max(1e-3);
        let middle = f64::midpoint(low.x, high.x);
        view.foot = Point { x: -middle * view.across, y: ask.height_px - bottom - high.y * view.up };
        view
    }

    /// The corners of all the water before it is fitted.
    fn bounds(&self, swim: &Swim) -> (Point, Point) {
        let (mut low, mut high) = (
            Point { x: f64::INFINITY, y: f64::INFINITY },
            Point { x: f64::NEG_INFINITY, y: f64::NEG_INFINITY },
        );
        for p in swim.water().rings().iter().flat_map(|ring| self.ring(ring)) {
            low = Point { x: low.x.min(p.x), y: low.y.min(p.y) };
            high = Point { x: high.x.max(p.x), y: high.y.max(p.y) };
        }
        (low, high)
    }

    /// Height of the names above the picture: none without marks, a row where they fit side by side, two where they do
    /// not; a third of the canvas at most.
    fn room_for_names(&self, swim: &Swim, side: f64) -> f64 {
        let fan = swim.fan();
        let marks: Vec<_> = swim
            .columns()
            .marks
            .iter()
            .filter(|m| m.bearing_deg >= fan.from_deg && m.bearing_deg <= fan.to_deg)
            .collect();
        let mut edge = f64::NEG_INFINITY;
        let one_row = marks.iter().all(|mark| {
            let x = (mark.bearing_deg - self.middle_deg) / self.half_deg * (self.half_width - side);
            let half = width(&mark.name, self.text) / 2.0 + 0.3 * self.text;
            let limit = (self.half_width - half).max(0.0);
            let x = x.clamp(-limit, limit);
            let free = x - half >= edge;
            edge = x + half;
            free
        });
        let rows = match marks.len() {
            0 => 0.4,
            _ if one_row => 1.5,
            _ => 2.7,
        };
        (rows * self.text).min(self.height / 3.0)
    }

    /// Sizes to try for a label, largest first.
    pub fn sizes(&self) -> Vec<f64> {
        let mut sizes = vec![self.text, f64::midpoint(self.text, self.least_text), self.least_text];
        sizes.dedup();
        sizes
    }

    /// Pixels of a spot.
    pub fn spot(&self, s: Spot) -> Point {
        let u = (s.bearing_deg - self.middle_deg) / self.half_deg;
        let v = (s.range_m - self.near_m) / self.depth_m;
        let wide = self.near_width + (1.0 - self.near_width) * v;
        Point { x: self.foot.x + self.across * u * wide, y: self.foot.y + self.up * (SAG * u * u * wide - v) }
    }

    /// Pixels of a point of the peg frame.
    pub fn at(&self, p: Point) -> Point {
        let (bearing_deg, range_m) = bearing_range(p);
        self.spot(Spot { bearing_deg, range_m })
    }

    /// Pixels of a ring, its long edges cut into pieces.
    pub fn ring(&self, ring: &[Point]) -> Vec<Point> {
        let edges = ring.iter().zip(ring.iter().cycle().skip(1));
        edges
            .flat_map(|(a, b)| {
                let pieces = (a.distance(*b) / PIECE_M).ceil().max(1.0);
                (0..pieces as u32).map(move |i| {
                    let t = f64::from(i) / pieces;
                    Point { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) }
                })
            })
            .map(|p| self.at(p))
            .collect()
    }

    /// Pixels of a line of spots.
    pub fn line(&self, spots: impl Iterator<Item = Spot>) -> Vec<Point> {
        spots.map(|s| self.spot(s)).collect()
    }

    /// Height in pixels of this many metres of range.
    pub fn depth(&self, metres: f64) -> f64 {
        self.up / self.depth_m * metres
    }

    /// Width in pixels of this many degrees at a range.
    pub fn breadth(&self, degrees: f64, range_m: f64) -> f64 {
        let v = (range_m - self.near_m) / self.depth_m;
        self.across * (self.near_width + (1.0 - self.near_width) * v) * degrees / self.half_deg
    }

    /// Whether a rectangle lies on the canvas.
    pub fn holds(&self, r: &Rect) -> bool {
        r.x >= -self.half_width && r.x + r.w <= self.half_width && r.y >= 0.0 && r.y + r.h <= self.height
    }
}
