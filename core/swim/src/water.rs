//! Areas of water: polygons and their boolean operations, by `geo`.

use super::frame::Point;
use super::planar::{distance_to_ring, ring_area_m2, ring_contains, square_to_ring};
use geo::{BooleanOps, Coord, LineString, MultiPolygon, Polygon, unary_union};
use std::collections::BTreeMap;

/// A piece of water: any number of polygons, holes and all, in the peg frame.
#[derive(Debug, Clone, PartialEq)]
pub struct Water {
    shape: MultiPolygon<f64>,
}

impl Water {
    /// The water inside one ring.
    pub fn of_ring(ring: &[Point]) -> Self {
        Self { shape: MultiPolygon(vec![polygon(ring)]) }
    }

    /// No water.
    pub fn none() -> Self {
        Self { shape: MultiPolygon(Vec::new()) }
    }

    /// The water inside any of the rings.
    pub fn of_any<'a>(rings: impl IntoIterator<Item = &'a [Point]>) -> Self {
        let rings: Vec<&[Point]> = rings.into_iter().filter(|r| !r.is_empty()).collect();
        match rings.len() {
            0 => Self::none(),
            1..=64 => Self { shape: unite(&rings) },
            _ => Self { shape: unite_by_neighbourhood(&rings) },
        }
    }

    /// The part that both share.
    #[must_use]
    pub fn and(&self, other: &Self) -> Self {
        Self { shape: self.shape.intersection(&other.shape) }
    }

    /// The part that either covers.
    #[must_use]
    pub fn or(&self, other: &Self) -> Self {
        Self { shape: self.shape.union(&other.shape) }
    }

    /// The part that the other doesn't cover.
    #[must_use]
    pub fn without(&self, other: &Self) -> Self {
        if other.shape.0.is_empty() {
            return self.clone();
        }
        Self { shape: self.shape.difference(&other.shape) }
    }

    /// Area, square metres.
    pub fn area_m2(&self) -> f64 {
        self.polygons()
            .map(|(outer, holes)| {
                ring_area_m2(&outer).abs() - holes.iter().map(|h| ring_area_m2(h).abs()).sum::<f64>()
            })
            .sum()
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.shape.0.is_empty()
    }

    /// Each polygon as its outer ring and its holes, not closed.
    pub fn polygons(&self) -> impl Iterator<Item = (Vec<Point>, Vec<Vec<Point>>)> + '_ {
        self.shape.0.iter().map(|p| (points(p.exterior()), p.interiors().iter().map(points).collect()))
    }

    /// Every ring, outer ones and holes, not closed.
    pub fn rings(&self) -> Vec<Vec<Point>> {
        self.polygons().flat_map(|(outer, holes)| std::iter::once(outer).chain(holes)).collect()
    }

    /// Whether a point lies in it.
    pub fn contains(&self, p: Point) -> bool {
        self.rings().iter().filter(|ring| ring_contains(ring, p)).count() % 2 == 1
    }

    /// Distance of a point from it, metres; 0 inside, infinite if there is none.
    pub fn distance(&self, p: Point) -> f64 {
        if self.contains(p) {
            return 0.0;
        }
        self.rings().iter().map(|ring| distance_to_ring(ring, p)).fold(f64::INFINITY, f64::min)
    }
}

/// Whether points lie in a piece of water or near it: asked of many points at once.
pub(crate) struct Near {
    rings: Vec<Vec<Point>>,
    /// Its corners, farthest to the left and nearest, and farthest to the right and out.
    corners: (Point, Point),
    reach: f64,
}

/// Largest error of the rough distance, m.
const ROUGH_M: f64 = 1e-6;

impl Near {
    pub(crate) fn of(water: &Water, reach: f64) -> Self {
        let rings = water.rings();
        let end = |of: fn(f64, f64) -> f64, from: f64| {
            rings
                .iter()
                .flatten()
                .fold(Point { x: from, y: from }, |end, p| Point { x: of(end.x, p.x), y: of(end.y, p.y) })
        };
        let corners = (end(f64::min, f64::INFINITY), end(f64::max, f64::NEG_INFINITY));
        Self { rings, corners, reach }
    }

    /// Whether a point is no farther from the water than `reach`: what [`Water::distance`] says.
    pub(crate) fn takes(&self, p: Point) -> bool {
        let (low, high) = self.corners;
        let beside = (low.x - p.x).max(p.x - high.x).max(low.y - p.y).max(p.y - high.y);
        if beside > self.reach + ROUGH_M {
            return false;
        }
        if self.rings.iter().filter(|ring| ring_contains(ring, p)).count() % 2 == 1 {
            return true;
        }
        let least = self.rings.iter().map(|ring| square_to_ring(ring, p)).fold(f64::INFINITY, f64::min);
        let (near, far) = (self.reach - ROUGH_M, self.reach + ROUGH_M);
        if least > far * far {
            false
        } else if least < near * near && least > ROUGH_M {
            true
        } else {
            let exact = self.rings.iter().map(|ring| distance_to_ring(ring, p)).fold(f64::INFINITY, f64::min);
            exact <= self.reach
        }
    }
}

fn unite(rings: &[&[Point]]) -> MultiPolygon<f64> {
    let polygons: Vec<_> = rings.iter().map(|r| polygon(r)).collect();
    unary_union(polygons.iter())
}

/// Unites neighbours first, which removes the edges inside them before everything is united. With hundreds of
/// overlapping rings this takes a third of the time.
fn unite_by_neighbourhood(rings: &[&[Point]]) -> MultiPolygon<f64> {
    let size = |r: &&[Point]| r.iter().map(|p| p.distance(r[0])).fold(0.0, f64::max);
    let pitch = (1.25 * rings.iter().map(size).fold(0.0, f64::max)).max(1e-6);
    let mut groups: BTreeMap<(i64, i64), Vec<&[Point]>> = BTreeMap::new();
    for ring in rings {
        let at = ((ring[0].x / pitch).floor() as i64, (ring[0].y / pitch).floor() as i64);
        groups.entry(at).or_default().push(ring);
    }
    let parts: Vec<MultiPolygon<f64>> = groups.values().map(|g| unite(g)).collect();
    unary_union(parts.iter())
}

fn polygon(ring: &[Point]) -> Polygon<f64> {
    Polygon::new(LineString(ring.iter().map(|p| Coord { x: p.x, y: p.y }).collect()), Vec::new())
}

fn points(line: &LineString<f64>) -> Vec<Point> {
    let open = line.0.len().saturating_sub(1);
    line.0[..open].iter().map(|c| Point { x: c.x, y: c.y }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(x: f64, y: f64, side: f64) -> Water {
        let corner = |dx: f64, dy: f64| Point { x: x + dx * side, y: y + dy * side };
        Water::of_ring(&[corner(0.0, 0.0), corner(1.0, 0.0), corner(1.0, 1.0), corner(0.0, 1.0)])
    }

    #[test]
    fn squares_add_up() {
        let (a, b) = (square(0.0, 0.0, 10.0), square(5.0, 5.0, 10.0));
        let close = |x: f64, y: f64| (x - y).abs() < 1e-6;
        assert!(close(a.and(&b).area_m2(), 25.0));
        assert!(close(a.or(&b).area_m2(), 175.0));
        assert!(close(a.without(&b).area_m2(), 75.0));
        assert!(close(a.without(&square(2.0, 2.0, 2.0)).area_m2(), 96.0));
        assert!(a.and(&square(20.0, 0.0, 1.0)).is_empty());
    }

    #[test]
    fn a_hole_is_not_water() {
        let ring = square(0.0, 0.0, 10.0).without(&square(2.0, 2.0, 2.0));
        assert!(!ring.contains(Point { x: 3.0, y: 3.0 }));
        assert!(ring.contains(Point { x: 1.0, y: 1.0 }));
        assert!((ring.distance(Point { x: 3.0, y: 3.0 }) - 1.0).abs() < 1e-6);
        assert_eq!(Water::none().distance(Point { x: 0.0, y: 0.0 }), f64::INFINITY);
    }
}
