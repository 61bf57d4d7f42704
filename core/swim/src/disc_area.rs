//! The exact area of water that is covered by any of many discs.
//!
//! Green's theorem round the edge of what is shared: the arcs of each disc that no other disc covers and that
//! lie in the water, and the stretches of the water's edge that lie in a disc. When only the area is needed,
//! this is ten times as fast as uniting flattened discs, and has no chord error. A test compares the two.

use super::frame::Point;
use super::planar::{distance_to_ring, ring_area_m2};
use super::water::Water;
use std::f64::consts::PI;

/// A disc: its middle and radius, metres.
pub(crate) type Disc = (Point, f64);

/// Square metres of `water` that lie in any of the discs. Discs equal to another must be given once.
pub(crate) fn covered_m2(water: &Water, discs: &[Disc]) -> f64 {
    let rings = turned(water);
    let arcs: f64 = (0..discs.len()).map(|i| arcs_of(i, discs, &rings)).sum();
    let edges: f64 = rings.iter().map(|ring| edges_of(ring, discs)).sum();
    (arcs + edges).max(0.0)
}

/// Rings of the water: outer ones anticlockwise, holes clockwise.
fn turned(water: &Water) -> Vec<Vec<Point>> {
    let turn = |mut ring: Vec<Point>, outer: bool| {
        if (ring_area_m2(&ring) > 0.0) != outer {
            ring.reverse();
        }
        ring
    };
    water
        .polygons()
        .flat_map(|(outer, holes)| {
            std::iter::once(turn(outer, true)).chain(holes.into_iter().map(move |h| turn(h, false)))
        })
        .collect()
}

/// Contribution of the free arcs of one disc.
fn arcs_of(i: usize, discs: &[Disc], rings: &[Vec<Point>]) -> f64 {
    let (c, r) = discs[i];
    let mut covered: Vec<(f64, f64)> = Vec::new();
    for (j, &(o, s)) in discs.iter().enumerate() {
        let (dx, dy) = (o.x - c.x, o.y - c.y);
        let d2 = dx * dx + dy * dy;
        if j == i || d2 >= (r + s) * (r + s) {
            continue;
        }
        let d = d2.sqrt();
        if d <= s - r {
            return 0.0;
        }
        if d <= r - s {
            continue;
        }
        let half = libm::acos(((d2 + r * r - s * s) / (2.0 * d * r)).clamp(-1.0, 1.0));
        cover(&mut covered, libm::atan2(dy, dx), half);
    }
    let crossings = crossings(c, r, rings);
    // A circle that crosses no edge is wholly inside or wholly outside, so one of its points decides.
    if crossings.is_empty() && !inside(rings, Point { x: c.x + r, y: c.y }) {
        return 0.0;
    }
    let mut sum = 0.0;
    for (from, to) in gaps(covered) {
        let mut stops = vec![from];
        stops.extend(crossings.iter().copied().filter(|a| *a > from && *a < to));
        stops.push(to);
        for w in stops.windows(2) {
            let middle = f64::midpoint(w[0], w[1]);
            let at = Point { x: c.x + r * libm::cos(middle), y: c.y + r * libm::sin(middle) };
            if crossings.is_empty() || inside(rings, at) {
                sum += arc_term(c, r, w[0], w[1]);
            }
        }
    }
    sum
}

/// (1/2) integral of x dy - y dx along an arc.
fn arc_term(c: Point, r: f64, from: f64, to: f64) -> f64 {
    let turn = c.x * (libm::sin(to) - libm::sin(from)) - c.y * (libm::cos(to) - libm::cos(from));
    0.5 * r * (r * (to - from) + turn)
}

/// Adds the arc round `middle` to what is covered, cut at -pi and pi.
fn cover(covered: &mut Vec<(f64, f64)>, middle: f64, half: f64) {
    let (from, to) = (middle - half, middle + half);
    if from < -PI {
        covered.push((from + 2.0 * PI, PI));
    }
    if to > PI {
        covered.push((-PI, to - 2.0 * PI));
    }
    covered.push((from.max(-PI), to.min(PI)));
}

/// The parts of -pi to pi that are not covered.
fn gaps(mut covered: Vec<(f64, f64)>) -> Vec<(f64, f64)> {
    covered.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let mut free = Vec::new();
    let mut at = -PI;
    for (from, to) in covered {
        if from > at {
            free.push((at, from));
        }
        at = at.max(to);
    }
    if at < PI {
        free.push((at, PI));
    }
    free
}

/// Angles at which a circle crosses the edge of the water, in order.
fn crossings(c: Point, r: f64, rings: &[Vec<Point>]) -> Vec<f64> {
    let mut angles = Vec::new();
    if rings.iter().all(|ring| distance_to_ring(ring, c) > r) {
        return angles;
    }
    for ring in rings {
        for (k, a) in ring.iter().enumerate() {
            let b = ring[(k + 1) % ring.len()];
            for t in cuts(*a, b, c, r).into_iter().flatten().filter(|t| (0.0..=1.0).contains(t)) {
                angles.push(libm::atan2(a.y + t * (b.y - a.y) - c.y, a.x + t * (b.x - a.x) - c.x));
            }
        }
    }
    angles.sort_by(f64::total_cmp);
    angles
}

/// Where the line through a and b enters and leaves a circle, as shares of the way from a to b.
fn cuts(a: Point, b: Point, c: Point, r: f64) -> Option<[f64; 2]> {
    let (dx, dy, fx, fy) = (b.x - a.x, b.y - a.y, a.x - c.x, a.y - c.y);
    let (p, q, s) = (dx * dx + dy * dy, fx * dx + fy * dy, fx * fx + fy * fy - r * r);
    let root = q * q - p * s;
    (p > 0.0 && root > 0.0).then(|| {
        let root = root.sqrt();
        [(-q - root) / p, (-q + root) / p]
    })
}

/// Contribution of the stretches of a ring that lie in a disc.
fn edges_of(ring: &[Point], discs: &[Disc]) -> f64 {
    let mut sum = 0.0;
    for (k, a) in ring.iter().enumerate() {
        let b = ring[(k + 1) % ring.len()];
        let mut inside: Vec<(f64, f64)> = discs
            .iter()
            .filter_map(|&(c, r)| cuts(*a, b, c, r))
            .map(|[from, to]| (from.max(0.0), to.min(1.0)))
            .filter(|(from, to)| from < to)
            .collect();
        inside.sort_by(|x, y| x.0.total_cmp(&y.0).then(x.1.total_cmp(&y.1)));
        let mut at = 0.0;
        let mut share = 0.0;
        for (from, to) in inside {
            share += (to - from.max(at)).max(0.0);
            at = at.max(to);
        }
        // x dy - y dx is the same all along a straight side.
        sum += share * (a.x * b.y - b.x * a.y) / 2.0;
    }
    sum
}

fn inside(rings: &[Vec<Point>], p: Point) -> bool {
    rings.iter().filter(|ring| super::planar::ring_contains(ring, p)).count() % 2 == 1
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn square(half: f64) -> Water {
        let corner = |x: f64, y: f64| Point { x: x * half, y: y * half };
        Water::of_ring(&[corner(-1.0, -1.0), corner(1.0, -1.0), corner(1.0, 1.0), corner(-1.0, 1.0)])
    }

    #[test]
    fn two_discs_share_a_lens() {
        let at = |x: f64| Point { x, y: 0.0 };
        let two = covered_m2(&square(50.0), &[(at(0.0), 3.0), (at(5.0), 4.0)]);
        // The lens of radii 3 and 4 five apart: closed form (MathWorld, "Circle-Circle Intersection"), and shapely.
        assert!((two - (25.0 * PI - 6.641_674_702_707_057)).abs() < 1e-9);
        let within = covered_m2(&square(50.0), &[(at(0.0), 6.0), (at(3.0), 2.0)]);
        assert!((within - 36.0 * PI).abs() < 1e-9);
        let over_the_edge = covered_m2(&square(50.0), &[(at(50.0), 4.0)]);
        assert!((over_the_edge - 8.0 * PI).abs() < 1e-9);
        assert!((covered_m2(&square(1.0), &[(at(0.0), 9.0)]) - 4.0).abs() < 1e-9);
        assert_eq!(covered_m2(&square(1.0), &[(at(40.0), 9.0)]), 0.0);
        assert_eq!(covered_m2(&square(1.0), &[]), 0.0);
    }

    proptest! {
        #[test]
        fn it_agrees_with_united_polygons(
            discs in proptest::collection::vec((-12.0..12.0f64, -12.0..12.0f64, 0.5..4.0f64), 0..40), hole in any::<bool>()
        ) {
            let water = if hole { square(9.0).without(&square(4.0)) } else { square(9.0) };
            let discs: Vec<Disc> = discs.into_iter().map(|(x, y, r)| (Point { x, y }, r)).collect();
            let rings: Vec<_> = discs.iter().map(|d| crate::sector::disc(d.0, d.1, 1e-5)).collect();
            let united = water.and(&Water::of_any(rings.iter().map(Vec::as_slice))).area_m2();
            let exact = covered_m2(&water, &discs);
            prop_assert!((exact - united).abs() < 2e-3 + 1e-4 * united, "{} and {}", exact, united);
        }
    }
}
