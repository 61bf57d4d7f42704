//! Sunrise, sunset and civil twilight at the peg.
//!
//! Positions of the sun are those of Reda and Andreas, "Solar Position Algorithm for Solar Radiation
//! Applications", NREL/TP-560-34302 (2003, revised 2008), from the crate `solar-positioning`.
//! Sunrise and sunset are the moments when the upper limb touches a flat horizon (centre of the sun
//! at -0.833 degrees); civil twilight ends with the centre at -6 degrees. Trees and hills are not known.

use serde::{Deserialize, Serialize};
use solar_positioning::time::JulianDate;
use solar_positioning::{Horizon, Location, SolarEvents, SolarPositions, delta_t};

const DAY_MS: i64 = 86_400_000;
const HOUR_MS: i64 = 3_600_000;
/// Julian date of 1970-01-01 00:00 UTC.
const EPOCH_JD: f64 = 2_440_587.5;

/// A point on the earth, WGS 84 degrees, north and east positive.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Place {
    /// Latitude.
    pub lat: f64,
    /// Longitude.
    pub lon: f64,
}

/// What the sun does on that day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum SunToday {
    /// It rises or sets.
    RisesOrSets,
    /// It never sets.
    UpAllDay,
    /// It never rises.
    DownAllDay,
}

/// Daylight of one day, in UTC milliseconds; `None` if the event doesn't happen that day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Daylight {
    /// Start of civil twilight.
    pub civil_dawn: Option<i64>,
    /// Sunrise.
    pub sunrise: Option<i64>,
    /// The sun due south (or north).
    pub noon: Option<i64>,
    /// Sunset.
    pub sunset: Option<i64>,
    /// End of civil twilight.
    pub civil_dusk: Option<i64>,
    /// What the sun does.
    pub sun: SunToday,
}

/// Light at a moment.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Light {
    /// Sun above the horizon.
    Day,
    /// Sun below it, but light enough to see by: civil twilight.
    Twilight,
    /// Darker than civil twilight.
    Dark,
}

/// All-out against sunset.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AllOutLight {
    /// Light at all-out.
    pub light: Light,
    /// That sunset, in UTC milliseconds; `None` if the sun doesn't set within a day of all-out.
    pub sunset: Option<i64>,
    /// Whole minutes from all-out to sunset, rounded towards zero; negative when all-out comes after it.
    pub minutes_to_sunset: Option<i64>,
}

/// Why the light can't be computed.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum SkyError {
    /// An impossible place.
    #[error("a latitude of {lat} and a longitude of {lon} are no place")]
    NoPlace {
        /// Latitude.
        lat: f64,
        /// Longitude.
        lon: f64,
    },
    /// A date for which the formulas don't hold.
    #[error("that date is outside the years for which the sun is known here")]
    NoDate,
}

impl Place {
    fn location(self) -> Result<Location, SkyError> {
        if (-90.0..=90.0).contains(&self.lat) && (-180.0..=180.0).contains(&self.lon) {
            Ok(Location { latitude: self.lat, longitude: self.lon })
        } else {
            Err(SkyError::NoPlace { lat: self.lat, lon: self.lon })
        }
    }
}

/// Julian day of a Unix time in milliseconds.
pub fn julian(ms: i64) -> f64 {
    EPOCH_JD + ms as f64 / DAY_MS as f64
}

fn from_julian(jd: f64) -> i64 {
    libm::round((jd - EPOCH_JD) * DAY_MS as f64) as i64
}

/// Terrestrial time less universal time, seconds, estimated from the date.
fn delta_t_at(ms: i64) -> Result<f64, SkyError> {
    let year = 1970.0 + ms as f64 / (365.2425 * DAY_MS as f64);
    delta_t::estimate(year).map_err(|_| SkyError::NoDate)
}

/// Daylight at `place` in the 24 hours from `day_start_ms` (midnight at the water, in UTC milliseconds).
pub fn daylight(day_start_ms: i64, place: Place) -> Result<Daylight, SkyError> {
    let location = place.location()?;
    let dt = delta_t_at(day_start_ms)?;
    let (start, end) = (julian(day_start_ms), julian(day_start_ms.saturating_add(DAY_MS)));
    let sun = SolarEvents::new();
    let rise = |h| sun.next_rise_from_julian(start, end, location, dt, h);
    let set = |h| sun.next_set_from_julian(start, end, location, dt, h);
    let when = |jd: Result<Option<f64>, solar_positioning::Error>| {
        jd.map(|jd| jd.map(from_julian)).map_err(|_| SkyError::NoDate)
    };
    let noon = when(sun.next_transit_from_julian(start, end, place.lon, dt))?;
    let (sunrise, sunset) = (when(rise(Horizon::SunriseSunset))?, when(set(Horizon::SunriseSunset))?);
    let today = if sunrise.is_some() || sunset.is_some() {
        SunToday::RisesOrSets
    } else if up_at(day_start_ms, location, dt)? {
        SunToday::UpAllDay
    } else {
        SunToday::DownAllDay
    };
    Ok(Daylight {
        civil_dawn: when(rise(Horizon::CivilTwilight))?,
        sunrise,
        noon,
        sunset,
        civil_dusk: when(set(Horizon::CivilTwilight))?,
        sun: today,
    })
}

fn up_at(ms: i64, location: Location, dt: f64) -> Result<bool, SkyError> {
    let time = JulianDate::new(julian(ms), dt).map_err(|_| SkyError::NoDate)?;
    let position =
        SolarPositions::new().at_from_julian(time, location, 0.0, None).map_err(|_| SkyError::NoDate)?;
    Ok(position.elevation_angle() > Horizon::SunriseSunset.elevation_angle())
}

impl Daylight {
    /// Light at `ms`, a moment of that day.
    pub fn light_at(&self, ms: i64) -> Light {
        let between = |from: Option<i64>, to: Option<i64>| match (from, to) {
            (Some(from), Some(to)) if from > to => ms >= from || ms < to, // the night falls inside the day's bounds
            (None, None) => false,
            (from, to) => from.is_none_or(|f| ms >= f) && to.is_none_or(|t| ms < t),
        };
        if self.sun == SunToday::UpAllDay || between(self.sunrise, self.sunset) {
            Light::Day
        } else if between(self.civil_dawn, self.civil_dusk)
            || (self.civil_dawn.is_none() && self.civil_dusk.is_none() && self.sun == SunToday::RisesOrSets)
        {
            // With neither dawn nor dusk the sun stays within six degrees of the horizon all night.
            Light::Twilight
        } else {
            Light::Dark
        }
    }
}

/// All-out against the sunset beside it: while the sun is up the next one, otherwise the last one. In the far north that may
/// lie after midnight, so the calendar doesn't tell which one it is.
pub fn at_all_out(all_out_ms: i64, place: Place) -> Result<AllOutLight, SkyError> {
    let day = |start: i64| daylight(start, place);
    let light = day(all_out_ms.saturating_sub(DAY_MS / 2))?.light_at(all_out_ms);
    let sunset = if light == Light::Day {
        day(all_out_ms)?.sunset
    } else {
        let first = day(all_out_ms.saturating_sub(DAY_MS))?.sunset;
        // Sunsets come a few minutes less than a day apart while the days grow shorter.
        let second = first.map(|first| day(first + HOUR_MS)).transpose()?.and_then(|day| day.sunset);
        second.filter(|second| *second <= all_out_ms).or(first)
    };
    let minutes_to_sunset = sunset.map(|sunset| (sunset - all_out_ms) / 60_000);
    Ok(AllOutLight { light, sunset, minutes_to_sunset })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 2026-12-21 00:00 UTC.
    const MIDWINTER: i64 = 1_797_811_200_000;
    const WATER: Place = Place { lat: 52.4862, lon: -1.8904 };

    #[test]
    fn all_out_against_sunset() {
        let day = daylight(MIDWINTER, WATER).unwrap();
        let sunset = day.sunset.unwrap();
        let at = |all_out: i64| at_all_out(all_out, WATER).unwrap();
        let before = at(sunset - 25 * 60_000);
        assert_eq!((before.light, before.minutes_to_sunset), (Light::Day, Some(25)));
        let after = at(sunset + 10 * 60_000);
        assert_eq!((after.light, after.minutes_to_sunset), (Light::Twilight, Some(-10)));
        assert_eq!(at(sunset + 3 * HOUR_MS).light, Light::Dark);
        assert_eq!(day.light_at(MIDWINTER), Light::Dark);
    }

    /// While the days grow shorter, a minute after a sunset there were two within a day.
    #[test]
    fn the_last_of_two_sunsets_counts() {
        let autumn = MIDWINTER - 90 * DAY_MS;
        let sunset = daylight(autumn, WATER).unwrap().sunset.unwrap();
        let found = at_all_out(sunset + 60_000, WATER).unwrap();
        assert!(daylight(autumn - DAY_MS, WATER).unwrap().sunset.unwrap() > sunset + 60_000 - DAY_MS);
        assert_eq!((found.sunset, found.minutes_to_sunset), (Some(sunset), Some(-1)));
    }

    #[test]
    fn far_north_the_sun_may_stay_up_or_down() {
        let north = Place { lat: 70.0, lon: 25.0 };
        let dark = at_all_out(MIDWINTER, north).unwrap();
        assert_eq!((dark.light, dark.sunset), (Light::Dark, None));
        assert_eq!(daylight(MIDWINTER, north).unwrap().sun, SunToday::DownAllDay);
        let midsummer = MIDWINTER + 182 * DAY_MS;
        let day = daylight(midsummer, north).unwrap();
        assert_eq!((day.sun, day.light_at(midsummer)), (SunToday::UpAllDay, Light::Day));
    }

    #[test]
    fn impossible_places_and_dates_are_refused() {
        let nowhere = Place { lat: 91.0, lon: 0.0 };
        assert!(matches!(daylight(MIDWINTER, nowhere), Err(SkyError::NoPlace { .. })));
        assert!(daylight(MIDWINTER, Place { lat: f64::NAN, lon: 0.0 }).is_err());
        assert_eq!(daylight(i64::MAX, WATER), Err(SkyError::NoDate));
        assert_eq!(daylight(i64::MIN, WATER), Err(SkyError::NoDate));
    }
}
