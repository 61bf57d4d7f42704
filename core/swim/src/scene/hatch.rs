//! Hatching: lines across resting water, further apart the longer it has rested.

use super::pack::Pack;
use crate::frame::Point;

/// Slant of the lines from vertical, degrees (to the right for the right thumb).
const LEAN_DEG: f64 = 35.0;

/// Distance between lines in design pixels for water that has rested this share of its target.
pub(crate) fn spacing_dp(share: f64) -> f64 {
    // In steps, so that neighbours with nearly the same rest share one lattice.
    let step = (share.clamp(0.0, 1.0) * 4.0).floor().min(3.0);
    5.0 + 3.0 * step
}

/// Hatches the inside of rings (even-odd) on one lattice through `origin`, so that lines of neighbours with
/// equal density join.
pub(crate) fn hatch(pack: &mut Pack, rings: &[Vec<Point>], origin: Point, spacing: f64, side: f64) {
    let lean = LEAN_DEG.to_radians();
    let (dx, dy) = (side * libm::sin(lean), -libm::cos(lean));
    // n counts across the strokes, t along them.
    let across = |p: Point| (p.x - origin.x) * -dy + (p.y - origin.y) * dx;
    let along = |p: Point| (p.x - origin.x) * dx + (p.y - origin.y) * dy;
    let at = |n: f64, t: f64| Point { x: origin.x - n * dy + t * dx, y: origin.y + n * dx + t * dy };
    let turned: Vec<Vec<(f64, f64)>> =
        rings.iter().map(|ring| ring.iter().map(|p| (across(*p), along(*p))).collect()).collect();
    let all = || turned.iter().flatten().map(|p| p.0);
    let (low, high) = (all().fold(f64::INFINITY, f64::min), all().fold(f64::NEG_INFINITY, f64::max));
    if !(low < high && spacing > 0.0) {
        return;
    }
    // Half a step off the peg, so that no line runs along the edge of a fan with the same slant.
    let mut k = (low / spacing - 0.5).ceil() + 0.5;
    while k * spacing < high {
        let n = k * spacing;
        let mut crossings: Vec<f64> = turned.iter().flat_map(|ring| crossings(ring, n)).collect();
        crossings.sort_by(f64::total_cmp);
        for pair in crossings.chunks_exact(2) {
            pack.stroke(at(n, pair[0]), at(n, pair[1]));
        }
        k += 1.0;
    }
}

fn crossings(ring: &[(f64, f64)], n: f64) -> Vec<f64> {
    let mut out = Vec::new();
    for (i, a) in ring.iter().enumerate() {
        let b = &ring[(i + 1) % ring.len()];
        if (a.0 > n) != (b.0 > n) {
            out.push(a.1 + (n - a.0) / (b.0 - a.0) * (b.1 - a.1));
        }
    }
    out
}
