//! The tail of the standard normal from a table. It is read a hundred times for each node, so it must be
//! fast.
//!
//! Cubic Hermite interpolation at steps of 1/32; the tests check it to 1e-8.

use super::special::{ln_normal_upper, mills, normal_density, normal_upper};
use std::sync::OnceLock;

const PER_UNIT: f64 = 32.0;
const LOW: f64 = -9.0;
const HIGH: f64 = 38.0;

#[derive(Debug, Clone, Copy)]
struct Point {
    upper: f64,
    density: f64,
    ln_upper: f64,
    mills: f64,
}

static POINTS: OnceLock<Vec<Point>> = OnceLock::new();

fn points() -> &'static [Point] {
    POINTS.get_or_init(|| {
        let count = ((HIGH - LOW) * PER_UNIT) as usize;
        (0..=count)
            .map(|i| {
                let z = LOW + i as f64 / PER_UNIT;
                Point {
                    upper: normal_upper(z),
                    density: normal_density(z),
                    ln_upper: ln_normal_upper(z),
                    mills: mills(z),
                }
            })
            .collect()
    })
}

/// The two points around z, and weights of values and slopes.
#[inline]
fn around(z: f64) -> Option<(&'static Point, &'static Point, [f64; 4])> {
    let u = (z - LOW) * PER_UNIT;
    let i = u as usize;
    let points = points();
    if u < 0.0 || i + 1 >= points.len() {
        return None;
    }
    let f = u - i as f64;
    let g = 1.0 - f;
    let h1 = f * f * (3.0 - 2.0 * f);
    Some((&points[i], &points[i + 1], [1.0 - h1, h1, f * g * g / PER_UNIT, -f * f * g / PER_UNIT]))
}

/// The points of the table below and above z.
#[inline]
fn ends(z: f64) -> (f64, f64) {
    let i = f64::from(((z - LOW) * PER_UNIT) as u32);
    (LOW + i / PER_UNIT, LOW + (i + 1.0) / PER_UNIT)
}

/// Upper tail and density at z.
#[inline]
pub(crate) fn upper_and_density(z: f64) -> (f64, f64) {
    around(z).map_or_else(
        || (normal_upper(z), normal_density(z)),
        |(a, b, [h0, h1, k0, k1])| {
            let upper = a.upper * h0 + b.upper * h1 - a.density * k0 - b.density * k1;
            // Slope of the density is -z times it.
            let (za, zb) = ends(z);
            let density = a.density * h0 + b.density * h1 - za * a.density * k0 - zb * b.density * k1;
            (upper, density)
        },
    )
}

/// Upper tail at z.
#[inline]
pub(crate) fn upper(z: f64) -> f64 {
    around(z).map_or_else(
        || normal_upper(z),
        |(a, b, [h0, h1, k0, k1])| a.upper * h0 + b.upper * h1 - a.density * k0 - b.density * k1,
    )
}

/// ln of the upper tail at z and the inverse Mills ratio there.
#[inline]
pub(crate) fn ln_upper_and_mills(z: f64) -> (f64, f64) {
    around(z).map_or_else(
        || (ln_normal_upper(z), mills(z)),
        |(a, b, [h0, h1, k0, k1])| {
            let ln = a.ln_upper * h0 + b.ln_upper * h1 - a.mills * k0 - b.mills * k1;
            // The slope of the ratio m at z is m (m - z).
            let (za, zb) = ends(z);
            let (sa, sb) = (a.mills * (a.mills - za), b.mills * (b.mills - zb));
            (ln, a.mills * h0 + b.mills * h1 + sa * k0 + sb * k1)
        },
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_is_the_function() {
        for i in -1200..4500 {
            let z = f64::from(i) * 0.01 + 0.003;
            let (u, d) = upper_and_density(z);
            assert!((u - normal_upper(z)).abs() < 1e-8, "{z}");
            assert!((d - normal_density(z)).abs() < 1e-8, "{z}");
            assert!((upper(z) - u).abs() < 1e-15);
            let (ln, m) = ln_upper_and_mills(z);
            assert!((ln - ln_normal_upper(z)).abs() < 1e-8, "{z}");
            assert!((m - mills(z)).abs() < 1e-7, "{z}");
        }
    }
}
