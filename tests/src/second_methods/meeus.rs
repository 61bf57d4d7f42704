//! A second opinion on the sun: Meeus, Astronomical Algorithms, 2nd ed. (1998), chapters 12, 15, 22 and 25,
//! low accuracy (0.01 degrees). The light at the water comes from [`restwater_sky::daylight`]; this checks it
//! without sharing any code.

/// The sun by the low-accuracy method, degrees and astronomical units.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LowAccuracySun {
    /// Julian centuries from J2000.0 (dynamical time).
    pub t: f64,
    /// Geometric mean longitude.
    pub mean_longitude: f64,
    /// Mean anomaly.
    pub mean_anomaly: f64,
    /// Equation of the centre.
    pub centre: f64,
    /// True longitude.
    pub true_longitude: f64,
    /// Distance.
    pub distance_au: f64,
    /// Apparent longitude: corrected for nutation and aberration.
    pub apparent_longitude: f64,
    /// Obliquity of the ecliptic, corrected for apparent positions.
    pub obliquity: f64,
    /// Apparent right ascension.
    pub right_ascension: f64,
    /// Apparent declination.
    pub declination: f64,
}

/// Rise, transit and set as fractions of the day from 0 h universal time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RiseTransitSet {
    /// Rise.
    pub rise: f64,
    /// Transit.
    pub transit: f64,
    /// Set.
    pub set: f64,
}

/// A body on three days, 0 h dynamical time of the day before, the day and the day after, degrees.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ThreeDays {
    /// Right ascension.
    pub right_ascension: [f64; 3],
    /// Declination.
    pub declination: [f64; 3],
}

/// Why there is no rise or set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum MeeusError {
    /// It stays above or below the horizon.
    #[error("that body neither rises nor sets there on that day")]
    NeitherRisesNorSets,
    /// Not a number.
    #[error("a date and a place must be numbers: enter them again")]
    NotANumber,
}

fn sin(degrees: f64) -> f64 {
    libm::sin(degrees.to_radians())
}

fn cos(degrees: f64) -> f64 {
    libm::cos(degrees.to_radians())
}

/// Into 0 to 360.
fn turn(degrees: f64) -> f64 {
    degrees - 360.0 * libm::floor(degrees / 360.0)
}

/// The sun at a Julian ephemeris day, chapter 25.
pub fn low_accuracy_sun(jde: f64) -> LowAccuracySun {
    let t = (jde - 2_451_545.0) / 36_525.0;
    let mean_longitude = turn(280.466_46 + t * (36_000.769_83 + t * 0.000_303_2));
    let mean_anomaly = turn(357.529_11 + t * (35_999.050_29 - t * 0.000_153_7));
    let e = 0.016_708_634 - t * (0.000_042_037 + t * 0.000_000_126_7);
    let centre = (1.914_602 - t * (0.004_817 + t * 0.000_014)) * sin(mean_anomaly)
        + (0.019_993 - 0.000_101 * t) * sin(2.0 * mean_anomaly)
        + 0.000_289 * sin(3.0 * mean_anomaly);
    let true_longitude = mean_longitude + centre;
    let distance_au = 1.000_001_018 * (1.0 - e * e) / (1.0 + e * cos(mean_anomaly + centre));
    let node = 125.04 - 1_934.136 * t;
    let apparent_longitude = true_longitude - 0.005_69 - 0.004_78 * sin(node);
    let seconds = 21.448 - t * (46.815 + t * (0.000_59 - t * 0.001_813));
    let obliquity = 23.0 + (26.0 + seconds / 60.0) / 60.0 + 0.002_56 * cos(node);
    let right_ascension =
        libm::atan2(cos(obliquity) * sin(apparent_longitude), cos(apparent_longitude)).to_degrees();
    LowAccuracySun {
        t,
        mean_longitude,
        mean_anomaly,
        centre,
        true_longitude,
        distance_au,
        apparent_longitude,
        obliquity,
        right_ascension: turn(right_ascension),
        declination: libm::asin(sin(obliquity) * sin(apparent_longitude)).to_degrees(),
    }
}

/// Mean sidereal time at Greenwich in degrees, equation 12.4.
fn sidereal(jd: f64) -> f64 {
    let t = (jd - 2_451_545.0) / 36_525.0;
    turn(
        280.460_618_37 + 360.985_647_366_29 * (jd - 2_451_545.0) + t * t * (0.000_387_933 - t / 38_710_000.0),
    )
}

/// Interpolates three tabular values, equation 3.3.
fn interpolate(y: [f64; 3], n: f64) -> f64 {
    let (a, b) = (y[1] - y[0], y[2] - y[1]);
    y[1] + n / 2.0 * (a + b + n * (b - a))
}

/// Rise, transit and set of a body, chapter 15: `theta0` is the apparent sidereal time at Greenwich at
/// 0 h in degrees, longitude is positive west, `h0` the altitude that counts as rising.
pub fn rise_transit_set(
    body: &ThreeDays,
    theta0: f64,
    lat: f64,
    lon_west: f64,
    h0: f64,
    delta_t_s: f64,
) -> Result<RiseTransitSet, MeeusError> {
    let middle = body.declination[1];
    let cos_hour = (sin(h0) - sin(lat) * sin(middle)) / (cos(lat) * cos(middle));
    if cos_hour.is_nan() || !theta0.is_finite() || !lon_west.is_finite() || !delta_t_s.is_finite() {
        return Err(MeeusError::NotANumber);
    }
    if cos_hour.abs() > 1.0 {
        return Err(MeeusError::NeitherRisesNorSets);
    }
    let hour = libm::acos(cos_hour).to_degrees();
    let body = ThreeDays { right_ascension: without_jump(body.right_ascension), ..*body };
    let place = Place { theta0, lat, lon_west, h0, delta_t_s };
    let transit = turn(body.right_ascension[1] + lon_west - theta0) / 360.0;
    Ok(RiseTransitSet {
        rise: place.corrected(&body, day(transit - hour / 360.0), true),
        transit: place.corrected(&body, day(transit), false),
        set: place.corrected(&body, day(transit + hour / 360.0), true),
    })
}

/// Into 0 to 1.
fn day(fraction: f64) -> f64 {
    fraction - libm::floor(fraction)
}

/// Right ascensions that continue beyond 360 degrees, so that they can be interpolated.
fn without_jump(mut ra: [f64; 3]) -> [f64; 3] {
    for i in 1..3 {
        ra[i] -= 360.0 * libm::round((ra[i] - ra[i - 1]) / 360.0);
    }
    ra
}

struct Place {
    theta0: f64,
    lat: f64,
    lon_west: f64,
    h0: f64,
    delta_t_s: f64,
}

impl Place {
    /// The fraction of a day with the book's correction added, twice for the digits.
    fn corrected(&self, body: &ThreeDays, mut m: f64, horizon: bool) -> f64 {
        for _ in 0..2 {
            let n = m + self.delta_t_s / 86_400.0;
            let ra = interpolate(body.right_ascension, n);
            let dec = interpolate(body.declination, n);
            let hour = turn(self.theta0 + 360.985_647 * m - self.lon_west - ra + 180.0) - 180.0;
            m += if horizon {
                let altitude = sin(self.lat) * sin(dec) + cos(self.lat) * cos(dec) * cos(hour);
                let altitude = libm::asin(altitude).to_degrees();
                (altitude - self.h0) / (360.0 * cos(dec) * cos(self.lat) * sin(hour))
            } else {
                -hour / 360.0
            };
        }
        m
    }
}

/// Sunrise, noon and sunset on the day that starts at `jd` (0 h universal time); longitude positive west.
pub fn sun_rise_transit_set(
    jd: f64,
    lat: f64,
    lon_west: f64,
    delta_t_s: f64,
) -> Result<RiseTransitSet, MeeusError> {
    let suns = [-1.0, 0.0, 1.0].map(|d| low_accuracy_sun(jd + d));
    let body = ThreeDays {
        right_ascension: suns.map(|s| s.right_ascension),
        declination: suns.map(|s| s.declination),
    };
    rise_transit_set(&body, sidereal(jd), lat, lon_west, -0.8333, delta_t_s)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use restwater_sky::daylight::{Place, daylight, julian};

    /// Example 12.a: 1987 April 10, 0 h: 13 h 10 m 46.3668 s.
    #[test]
    fn sidereal_time_of_the_book() {
        let hours = 13.0 + 10.0 / 60.0 + 46.3668 / 3600.0;
        assert!((sidereal(2_446_895.5) - 15.0 * hours).abs() < 1e-5);
    }

    #[test]
    fn no_rise_near_the_pole_and_none_without_a_number() {
        let midwinter = 2_461_395.5;
        assert_eq!(sun_rise_transit_set(midwinter, 80.0, 0.0, 70.0), Err(MeeusError::NeitherRisesNorSets));
        assert_eq!(sun_rise_transit_set(midwinter, f64::NAN, 0.0, 70.0), Err(MeeusError::NotANumber));
    }

    /// 2026-12-21 00:00 UTC.
    const MIDWINTER: i64 = 1_797_811_200_000;

    proptest! {
        /// Two independent methods: the crate's search over NREL's positions, and Meeus's low-accuracy sun
        /// with one interpolation (his chapters 15 and 25).
        #[test]
        fn agrees_with_meeus_within_a_minute(day in 0_i64..3650, lat in 49.0_f64..60.0, lon in -8.0_f64..2.0) {
            let start = MIDWINTER + day * 86_400_000;
            let place = Place { lat, lon };
            let found = daylight(start, place).unwrap();
            let other = sun_rise_transit_set(julian(start), lat, -lon, 70.0).unwrap();
            let off = |ms: Option<i64>, fraction: f64| {
                let apart = (ms.unwrap() - start) as f64 / 1000.0 - fraction * 86_400.0;
                apart - 86_400.0 * libm::round(apart / 86_400.0)
            };
            prop_assert!(off(found.sunrise, other.rise).abs() < 60.0);
            prop_assert!(off(found.noon, other.transit).abs() < 60.0);
            prop_assert!(off(found.sunset, other.set).abs() < 60.0);
        }
    }
}
