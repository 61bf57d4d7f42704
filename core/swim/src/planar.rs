//! Plane geometry of rings: area, centre, edge, whether they cross themselves.

use super::error::{SwimError, finite};
use super::frame::Point;

/// Signed area of a ring in square metres, anticlockwise positive (shoelace formula).
pub fn ring_area_m2(ring: &[Point]) -> f64 {
    // Computed relative to the first corner, so that small rings far from the origin keep their precision.
    let Some(&o) = ring.first() else { return 0.0 };
    sides(ring).map(|(a, b)| (a.x - o.x) * (b.y - o.y) - (b.x - o.x) * (a.y - o.y)).sum::<f64>() / 2.0
}

/// Centre of area of a ring; its first corner if it has no area, the origin if it has no corner.
pub fn ring_centroid(ring: &[Point]) -> Point {
    let Some(&o) = ring.first() else { return Point { x: 0.0, y: 0.0 } };
    let area = ring_area_m2(ring);
    if area == 0.0 {
        return o;
    }
    let (mut x, mut y) = (0.0, 0.0);
    for (a, b) in sides(ring) {
        let (ax, ay, bx, by) = (a.x - o.x, a.y - o.y, b.x - o.x, b.y - o.y);
        let cross = ax * by - bx * ay;
        x += (ax + bx) * cross;
        y += (ay + by) * cross;
    }
    Point { x: o.x + x / (6.0 * area), y: o.y + y / (6.0 * area) }
}

/// Whether a point lies inside a ring (even-odd).
pub fn ring_contains(ring: &[Point], p: Point) -> bool {
    let mut inside = false;
    for (a, b) in sides(ring) {
        if (a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x {
            inside = !inside;
        }
    }
    inside
}

/// Distance of a point from the edge of a ring, metres; infinite if the ring has no corner.
pub fn distance_to_ring(ring: &[Point], p: Point) -> f64 {
    sides(ring).map(|(a, b)| distance_to_side(a, b, p)).fold(f64::INFINITY, f64::min)
}

/// Of each side of a ring the point that is nearest to a point.
pub(crate) fn nearest_on_sides(ring: &[Point], p: Point) -> impl Iterator<Item = Point> + '_ {
    sides(ring).map(move |(a, b)| nearest_on_side(a, b, p))
}

/// The square of the distance of a point from the edge of a ring, which needs no root.
pub(crate) fn square_to_ring(ring: &[Point], p: Point) -> f64 {
    sides(ring)
        .map(|(a, b)| {
            let near = nearest_on_side(a, b, p);
            let (x, y) = (p.x - near.x, p.y - near.y);
            x * x + y * y
        })
        .fold(f64::INFINITY, f64::min)
}

/// Checks that an outline has three corners or more, numbers in them, an area, and doesn't cross itself.
/// A repeated last corner is dropped; the ring comes back anticlockwise.
pub fn check_outline(corners: &[Point]) -> Result<Vec<Point>, SwimError> {
    let mut ring = Vec::with_capacity(corners.len());
    for p in corners {
        finite("x of a corner", p.x)?;
        finite("y of a corner", p.y)?;
        if ring.last() != Some(p) {
            ring.push(*p);
        }
    }
    while ring.len() > 1 && ring.first() == ring.last() {
        ring.pop();
    }
    if ring.len() < 3 {
        return Err(SwimError::TooFewCorners(ring.len()));
    }
    if let Some(crossing) = crossing(&ring) {
        return Err(crossing);
    }
    let area = ring_area_m2(&ring);
    if area.abs() < 1e-6 {
        return Err(SwimError::NoWater);
    }
    if area < 0.0 {
        ring.reverse();
    }
    Ok(ring)
}

/// The first pair of sides that meet where they should not.
fn crossing(ring: &[Point]) -> Option<SwimError> {
    let n = ring.len();
    for i in 0..n {
        for j in i + 1..n {
            let (a, b, c, d) = (ring[i], ring[(i + 1) % n], ring[j], ring[(j + 1) % n]);
            let neighbours = j == i + 1 || (i == 0 && j == n - 1);
            let meets = if neighbours { folds_back(a, b, c, d) } else { meet(a, b, c, d) };
            if let Some(p) = meets {
                return Some(SwimError::OutlineCrosses { side: i, other: j, x: p.x, y: p.y });
            }
        }
    }
    None
}

fn cross(o: Point, a: Point, b: Point) -> f64 {
    (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x)
}

/// Neighbouring sides share a corner; they only cross where one runs back along the other.
fn folds_back(a: Point, b: Point, c: Point, d: Point) -> Option<Point> {
    let (shared, one, two) = if b == c { (b, a, d) } else { (a, b, c) };
    let straight = cross(shared, one, two) == 0.0;
    let ahead = (one.x - shared.x) * (two.x - shared.x) + (one.y - shared.y) * (two.y - shared.y) > 0.0;
    (straight && ahead).then_some(shared)
}

/// Where two sides without a common corner meet or touch.
fn meet(a: Point, b: Point, c: Point, d: Point) -> Option<Point> {
    let (d1, d2) = (cross(c, d, a), cross(c, d, b));
    let (d3, d4) = (cross(a, b, c), cross(a, b, d));
    if d1 * d2 < 0.0 && d3 * d4 < 0.0 {
        let t = d1 / (d1 - d2);
        return Some(Point { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) });
    }
    let touches = |o: f64, p: Point, from: Point, to: Point| {
        let within = p.x >= from.x.min(to.x)
            && p.x <= from.x.max(to.x)
            && p.y >= from.y.min(to.y)
            && p.y <= from.y.max(to.y);
        (o == 0.0 && within).then_some(p)
    };
    touches(d1, a, c, d).or(touches(d2, b, c, d)).or(touches(d3, c, a, b)).or(touches(d4, d, a, b))
}

/// Each corner with the next, and the last with the first.
fn sides(ring: &[Point]) -> impl Iterator<Item = (Point, Point)> + '_ {
    let back = ring.last().copied().zip(ring.first().copied());
    ring.windows(2).map(|side| (side[0], side[1])).chain(back)
}

fn distance_to_side(a: Point, b: Point, p: Point) -> f64 {
    p.distance(nearest_on_side(a, b, p))
}

fn nearest_on_side(a: Point, b: Point, p: Point) -> Point {
    let (dx, dy) = (b.x - a.x, b.y - a.y);
    let length2 = dx * dx + dy * dy;
    let t =
        if length2 > 0.0 { (((p.x - a.x) * dx + (p.y - a.y) * dy) / length2).clamp(0.0, 1.0) } else { 0.0 };
    Point { x: a.x + t * dx, y: a.y + t * dy }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ring(corners: &[(f64, f64)]) -> Vec<Point> {
        corners.iter().map(|&(x, y)| Point { x, y }).collect()
    }

    #[test]
    fn crossing_outlines_are_named_with_the_place() {
        let bow = ring(&[(-10.0, 10.0), (10.0, 40.0), (10.0, 10.0), (-10.0, 40.0)]);
        match check_outline(&bow) {
            Err(SwimError::OutlineCrosses { side: 0, other: 2, x, y }) => {
                assert!((x - 0.0).abs() < 1e-9 && (y - 25.0).abs() < 1e-9);
            }
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn touching_and_folded_outlines_cross() {
        let touching = ring(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (5.0, 0.0), (0.0, 10.0)]);
        assert!(matches!(check_outline(&touching), Err(SwimError::OutlineCrosses { .. })));
        let folded = ring(&[(0.0, 0.0), (10.0, 0.0), (5.0, 0.0), (5.0, 10.0)]);
        assert!(matches!(check_outline(&folded), Err(SwimError::OutlineCrosses { .. })));
    }

    #[test]
    fn lines_points_and_nans_are_not_outlines() {
        assert_eq!(check_outline(&ring(&[(0.0, 0.0), (1.0, 1.0)])), Err(SwimError::TooFewCorners(2)));
        assert_eq!(
            check_outline(&ring(&[(0.0, 0.0), (1.0, 0.0), (1.0, 0.0), (0.0, 0.0)])),
            Err(SwimError::TooFewCorners(2))
        );
        assert!(matches!(
            check_outline(&ring(&[(0.0, 0.0), (f64::NAN, 0.0), (1.0, 1.0)])),
            Err(SwimError::NotANumber { .. })
        ));
    }

    #[test]
    fn a_checked_outline_is_anticlockwise_and_not_closed() {
        let clockwise = ring(&[(0.0, 0.0), (0.0, 10.0), (10.0, 10.0), (10.0, 0.0), (0.0, 0.0)]);
        let good = check_outline(&clockwise).unwrap();
        assert_eq!(good.len(), 4);
        assert_eq!(ring_area_m2(&good), 100.0);
    }
}
