//! Whether bites came quicker or slower as the day went on, or than on earlier days, judged by whole hours.
//!
//! Fish feed in spells, so consecutive casts are alike, and a test that permutes single casts would take any
//! spell for a trend. The units here are hours: the casts of an hour get one score, observed less expected
//! bites at equal waits, and the test is whether the hours are in random order ([`Order`]). The answer may be
//! read at any moment; it changes only when an hour is over.

use super::error::CompareError;
use super::order::Order;
use super::permutation::log_rank_scores;
use restwater_waits::Wait;

/// Minutes that make one unit.
const HOUR_MIN: f64 = 60.0;
/// Added to the expected bites under the square root, so that one bite can't give a high score to an hour in
/// which hardly any was expected.
const EXPECTED_AT_LEAST: f64 = 0.25;

/// A wait and when it began, in minutes of its day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TimedWait {
    /// Minutes into the day.
    pub at_min: f64,
    /// The wait.
    pub wait: Wait,
}

/// The result of the comparison by hours.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ByHours {
    /// Anytime-valid p.
    pub p: f64,
    /// Whether bites came quicker (later in the day, or today), rather than slower.
    pub quicker: bool,
    /// Hours of today that were counted.
    pub hours: usize,
    /// Hours of earlier days with which they were compared.
    pub earlier_hours: usize,
}

/// How much of a day can be counted: an hour that was counted must not change any more, or its result would not hold at any look.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum DaySoFar {
    /// All of it.
    Over,
    /// It goes on: its latest hour may still change.
    Running,
    /// It goes on, and the earliest of the casts still out began at this minute of the day: its hour may change, and so do those
    /// after it.
    OutSince(f64),
}

/// Whether bites came quicker or slower as the day went on.
pub fn over_the_day(today: &[TimedWait], so_far: DaySoFar) -> Result<ByHours, CompareError> {
    by_hours(today, &[], so_far)
}

/// Whether bites came quicker or slower today than on earlier days, and as the day went on: each hour of
/// today is compared with all earlier hours, on earlier days and today.
pub fn against_earlier(
    today: &[TimedWait],
    earlier: &[&[TimedWait]],
    so_far: DaySoFar,
) -> Result<ByHours, CompareError> {
    by_hours(today, earlier, so_far)
}

fn by_hours(
    today: &[TimedWait],
    earlier: &[&[TimedWait]],
    so_far: DaySoFar,
) -> Result<ByHours, CompareError> {
    let all = || earlier.iter().copied().flatten().chain(today);
    if let Some(bad) = all().find(|w| !w.at_min.is_finite()) {
        return Err(CompareError::NotATime(bad.at_min));
    }
    let mut waits: Vec<Wait> = Vec::new();
    let mut hour_of: Vec<usize> = Vec::new();
    let mut hours = 0;
    for day in earlier {
        for hour in hours_of(day) {
            waits.extend(hour.iter().map(|w| w.wait));
            hour_of.resize(waits.len(), hours);
            hours += 1;
        }
    }
    let earlier_hours = hours;
    let mut order = Order::default();
    let mut todays = hours_of(today);
    if so_far != DaySoFar::Over {
        todays.pop();
    }
    if let DaySoFar::OutSince(at_min) = so_far {
        todays.retain(|hour| hour.iter().all(|w| hour_of_day(w.at_min) < hour_of_day(at_min)));
    }
    for hour in &todays {
        waits.extend(hour.iter().map(|w| w.wait));
        hour_of.resize(waits.len(), hours);
        hours += 1;
        order.add(&scores(&waits, &hour_of, hours));
    }
    Ok(ByHours { p: order.p(), quicker: order.rises(), hours: hours - earlier_hours, earlier_hours })
}

/// The hour in which each cast began, numbered over all days, from its day and its minutes into it: casts of one hour are alike,
/// which the limits of a curve allow for.
pub fn hour_clusters(begun: impl Iterator<Item = (usize, f64)>) -> Vec<usize> {
    let mut known: Vec<(usize, i64)> = Vec::new();
    begun
        .map(|(day, at_min)| {
            let hour = (day, hour_of_day(at_min));
            known.iter().position(|other| *other == hour).unwrap_or_else(|| {
                known.push(hour);
                known.len() - 1
            })
        })
        .collect()
}

/// The casts of a day by the hour in which they began; hours without a cast are left out.
fn hours_of(day: &[TimedWait]) -> Vec<Vec<TimedWait>> {
    let mut sorted = day.to_vec();
    restwater_sorting::by(&mut sorted, |a, b| a.at_min.total_cmp(&b.at_min));
    let same = |a: &TimedWait, b: &TimedWait| hour_of_day(a.at_min) == hour_of_day(b.at_min);
    sorted.chunk_by(same).map(<[TimedWait]>::to_vec).collect()
}

fn hour_of_day(at_min: f64) -> i64 {
    libm::floor(at_min / HOUR_MIN) as i64
}

/// Observed less expected bites of each hour, divided by the square root of the expected ones, with the
/// hazard of all hours together.
fn scores(waits: &[Wait], hour_of: &[usize], hours: usize) -> Vec<f64> {
    let mut excess = vec![0.0; hours];
    let mut expected = vec![EXPECTED_AT_LEAST; hours];
    for ((wait, &hour), score) in waits.iter().zip(hour_of).zip(log_rank_scores(waits)) {
        excess[hour] += score;
        expected[hour] += f64::from(u8::from(wait.is_bite())) - score;
    }
    excess.iter().zip(&expected).map(|(x, e)| x / e.sqrt()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cast(at_min: f64, minutes: f64, bite: bool) -> TimedWait {
        TimedWait { at_min, wait: Wait::new(minutes, bite).unwrap() }
    }

    /// Six hours of three casts; in hour h all wait `waits[h]` minutes for a bite.
    fn day(waits: &[f64]) -> Vec<TimedWait> {
        let hour = |(h, minutes): (usize, &f64)| {
            [0.0, 20.0, 40.0].map(|at| cast(60.0 * h as f64 + at, *minutes, true))
        };
        waits.iter().enumerate().flat_map(hour).collect()
    }

    #[test]
    fn if_waits_shorten_by_the_hour_bites_come_quicker_later() {
        let shorter = over_the_day(&day(&[18.0, 15.0, 12.0, 9.0, 6.0, 3.0]), DaySoFar::Over).unwrap();
        assert!(shorter.p < 0.05 && shorter.quicker && shorter.hours == 6, "{shorter:?}");
        let longer = over_the_day(&day(&[3.0, 6.0, 9.0, 12.0, 15.0, 18.0]), DaySoFar::Over).unwrap();
        assert!(longer.p < 0.05 && !longer.quicker);
        let neither = over_the_day(&day(&[9.0, 12.0, 8.0, 11.0, 7.0, 10.0]), DaySoFar::Over).unwrap();
        assert!(neither.p > 0.2, "{neither:?}");
    }

    #[test]
    fn the_running_hour_is_not_counted() {
        let casts = day(&[18.0, 15.0, 12.0, 9.0, 6.0, 3.0]);
        assert_eq!(over_the_day(&casts, DaySoFar::Running).unwrap().hours, 5);
        assert_eq!(over_the_day(&casts[..16], DaySoFar::Over).unwrap().hours, 6);
        assert_eq!(
            over_the_day(&casts[..1], DaySoFar::Running).unwrap(),
            over_the_day(&[], DaySoFar::Over).unwrap()
        );
    }

    /// With a second rod out since the first hour, that hour is not counted until the rod is in, so that what was said of it
    /// stays.
    #[test]
    fn an_hour_with_a_cast_still_out_is_not_counted_and_neither_are_those_after_it() {
        let casts = day(&[18.0, 15.0, 12.0, 9.0, 6.0, 3.0]);
        let hours = |out_since| over_the_day(&casts, DaySoFar::OutSince(out_since)).unwrap().hours;
        assert_eq!((hours(55.0), hours(130.0), hours(359.0)), (0, 2, 5));
        let mut settled = casts.clone();
        settled.push(cast(131.0, 100.0, false));
        let before = over_the_day(&casts[..6], DaySoFar::Over).unwrap();
        assert_eq!(over_the_day(&settled, DaySoFar::OutSince(130.0)).unwrap(), before);
    }

    #[test]
    fn a_day_of_short_waits_is_quicker_than_earlier_ones() {
        let usual = day(&[9.0, 12.0, 8.0, 11.0, 7.0, 10.0]);
        let earlier: [&[TimedWait]; 3] = [&usual, &usual, &usual];
        let good = against_earlier(&day(&[3.0, 4.0, 2.0, 3.5, 2.5]), &earlier, DaySoFar::Over).unwrap();
        assert!(good.p < 0.05 && good.quicker && good.hours == 5 && good.earlier_hours == 18, "{good:?}");
        let same = against_earlier(&usual, &earlier, DaySoFar::Over).unwrap();
        assert!(same.p > 0.2, "{same:?}");
    }

    #[test]
    fn the_score_of_an_hour_is_observed_less_expected_bites() {
        // By hand: two hours of one cast, a bite at 5 and none in 10. Of both, one had a bite at 5: a hazard of 1/2.
        let waits = [Wait::new(5.0, true).unwrap(), Wait::new(10.0, false).unwrap()];
        let found = scores(&waits, &[0, 1], 2);
        let root = 0.75_f64.sqrt();
        assert!((found[0] - 0.5 / root).abs() < 1e-12 && (found[1] + 0.5 / root).abs() < 1e-12);
    }

    #[test]
    fn an_impossible_time_is_refused() {
        assert!(over_the_day(&[cast(f64::NAN, 3.0, true)], DaySoFar::Over).is_err());
    }
}
