//! Annular sectors: a stretch of bearings by a stretch of range.

use super::frame::{Point, point_at};
use serde::{Deserialize, Serialize};

/// Largest chord error of flattened arcs of cells, metres.
pub(crate) const CHORD_ERROR_M: f64 = 0.05;

/// A piece of a fan: from one bearing clockwise to another, from one range to another.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct AnnularSector {
    /// Anticlockwise edge, degrees.
    pub from_deg: f64,
    /// Clockwise edge, degrees; below `from_deg` if the sector runs through the back (or north).
    pub to_deg: f64,
    /// Near edge, metres.
    pub inner_m: f64,
    /// Far edge, metres.
    pub outer_m: f64,
}

impl AnnularSector {
    /// Width clockwise, degrees in 0..360.
    pub fn width_deg(&self) -> f64 {
        (self.to_deg - self.from_deg).rem_euclid(360.0)
    }

    /// Area in square metres: (theta / 2)(r2^2 - r1^2).
    pub fn area_m2(&self) -> f64 {
        self.width_deg().to_radians() / 2.0 * (self.outer_m * self.outer_m - self.inner_m * self.inner_m)
    }

    /// Centre of area: at radius (2/3)(r2^3 - r1^3)/(r2^2 - r1^2) sin(h)/h on the middle bearing, with h
    /// half the width in radians. A sector without area has its middle.
    pub fn centroid(&self) -> Point {
        let (a, b) = (self.inner_m, self.outer_m);
        let half = self.width_deg() / 2.0;
        let h = half.to_radians();
        let sinc = if h > 0.0 { libm::sin(h) / h } else { 1.0 };
        // (b^3 - a^3)/(b^2 - a^2) without the cancellation of a thin ring.
        let mean = if a + b > 0.0 { (a * a + a * b + b * b) / (a + b) } else { 0.0 };
        point_at(self.from_deg + half, 2.0 / 3.0 * mean * sinc)
    }

    /// The edge as a ring of points, anticlockwise, not closed; no point of it lies further than
    /// `chord_error_m` from the true edge, and its area is that of the sector.
    pub fn ring(&self, chord_error_m: f64) -> Vec<Point> {
        let to = self.from_deg + self.width_deg();
        let mut ring = arc(to, self.from_deg, self.outer_m, chord_error_m);
        if self.inner_m > 0.0 {
            ring.extend(arc(self.from_deg, to, self.inner_m, chord_error_m));
        } else {
            ring.push(Point { x: 0.0, y: 0.0 });
        }
        ring
    }
}

/// Points along an arc about the origin, both ends included.
///
/// They lie a little outside the circle, at r sqrt(t / sin t) for steps of t radians, so that the area
/// under the chords is that under the arc; the greatest distance between the two is then r t^2 / 12.
pub(crate) fn arc(from_deg: f64, to_deg: f64, r: f64, chord_error_m: f64) -> Vec<Point> {
    let span = (to_deg - from_deg).abs().to_radians();
    let n = steps(span, r, chord_error_m);
    let radius = equal_area_radius(span / n as f64, r);
    // Both ends are exact, and the middle is found from both, so that a mirrored arc has mirrored points.
    let at = |i: usize| {
        let t = i as f64 / n as f64;
        from_deg * (1.0 - t) + to_deg * t
    };
    (0..=n).map(|i| point_at(at(i), radius)).collect()
}

/// Points round a disc, anticlockwise, not closed, of the disc's own area and within the chord error.
pub(crate) fn disc(centre: Point, r: f64, chord_error_m: f64) -> Vec<Point> {
    let turn = 2.0 * std::f64::consts::PI;
    let n = steps(turn, r, chord_error_m).max(8);
    let radius = equal_area_radius(turn / n as f64, r);
    (0..n)
        .map(|i| {
            let p = point_at(-360.0 * i as f64 / n as f64, radius);
            Point { x: centre.x + p.x, y: centre.y + p.y }
        })
        .collect()
}

fn equal_area_radius(step: f64, r: f64) -> f64 {
    if step > 0.0 { r * (step / libm::sin(step)).sqrt() } else { r }
}

/// How many chords keep an arc of `span` radians within the error; 0.95 covers the higher terms.
fn steps(span: f64, r: f64, chord_error_m: f64) -> usize {
    let widest = (0.95 * (12.0 * chord_error_m / r.max(1e-9)).sqrt()).min(std::f64::consts::FRAC_PI_4);
    ((span / widest - 1e-9).ceil() as usize).max(1)
}

#[cfg(test)]
mod tests {
    use super::super::planar::ring_area_m2;
    use super::*;
    use proptest::prelude::*;

    fn distance_to_chords(ring: &[Point], p: Point) -> f64 {
        super::super::planar::distance_to_ring(ring, p)
    }

    proptest! {
        #[test]
        fn a_flattened_sector_keeps_its_area_and_its_edge(
            from in -90.0..80.0f64, width in 0.5..90.0f64, inner in 0.0..120.0f64, depth in 0.5..60.0f64, t in 0.0..1.0f64
        ) {
            let s = AnnularSector { from_deg: from, to_deg: from + width, inner_m: inner, outer_m: inner + depth };
            let ring = s.ring(CHORD_ERROR_M);
            prop_assert!((ring_area_m2(&ring) / s.area_m2() - 1.0).abs() < 1e-9);
            for r in [s.inner_m, s.outer_m] {
                let on_edge = point_at(from + t * width, r);
                prop_assert!(distance_to_chords(&ring, on_edge) <= CHORD_ERROR_M);
            }
            for p in &ring {
                let r = libm::hypot(p.x, p.y);
                prop_assert!((r - s.inner_m).abs() <= CHORD_ERROR_M || (r - s.outer_m).abs() <= CHORD_ERROR_M);
            }
        }

        #[test]
        fn a_flattened_disc_keeps_its_area(r in 0.2..20.0f64) {
            let area = ring_area_m2(&disc(Point { x: 3.0, y: 40.0 }, r, CHORD_ERROR_M));
            prop_assert!((area / (std::f64::consts::PI * r * r) - 1.0).abs() < 1e-9);
        }
    }
}
