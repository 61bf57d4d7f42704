//! Claims that are read after every cast: whether bites came faster or slower as the day went on, or than on
//! earlier days, and whether they moved across the swim. On the waters here none of that is true.

use super::change::{self, Habit};
use super::luck::Luck;
use super::share::Share;
use super::water::{Bites, Kind, Water};
use restwater_compare::{ByHours, CLEAR_BELOW, CastRow, DaySoFar, TimedWait, against_earlier, over_the_day};
use restwater_swim::{DriftLean, drift_along};
use restwater_waits::{Limits, SurvivalCurve, Wait};

/// Earlier days in the book.
const BOOK: u64 = 3;
/// Minutes by which sessions begin before the first cast, in turn, so that their hours don't match those of
/// the fish.
const BEGUN: [f64; 3] = [0.0, 25.0, 40.0];

/// How an angler goes over a swim whose six spots are alike.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Round {
    /// Another spot each cast, in turn.
    InTurn,
    /// Four casts on each spot.
    FourEach,
    /// An hour on each spot.
    AnHourEach,
    /// A step left or right, or none, each cast.
    Wandering,
}

impl Round {
    /// All of them, with their names.
    pub const ALL: [(Self, &'static str); 4] = [
        (Self::InTurn, "spots in turn"),
        (Self::FourEach, "four casts a spot"),
        (Self::AnHourEach, "an hour a spot"),
        (Self::Wandering, "wandering"),
    ];
}

/// How often something was claimed.
#[derive(Debug, Clone, Default)]
pub struct Looked {
    /// Bites faster or slower as the day went on: at all-out, and at any look.
    pub trend: [Share; 2],
    /// Today faster or slower than earlier days.
    pub earlier: [Share; 2],
    /// Whether the limits of a day's curve contain the share of casts still without a bite after 12 min: with
    /// hours as clusters, and by Greenwood.
    pub curve: [Share; 2],
    /// Bites moved across the swim, for each way to go over it.
    pub moved: [[Share; 2]; Round::ALL.len()],
}

/// Waters where none of it is true: bites come evenly, in runs, or in good and bad hours.
pub fn level() -> Vec<Water> {
    let plain = |name, bites| Water::plain(name, Kind::Overdispersed, bites);
    let constant = Bites::Constant { mean: 12.0 };
    let window = Bites::Window { centre: 15.0, sd: 1.5, share: 0.7 };
    vec![
        plain("even, constant 12", constant),
        plain("even, window 15±1.5", window),
        Water { runs: true, ..plain("runs, constant 12", constant) },
        Water { runs: true, ..plain("runs, window 15±1.5", window) },
        Water { uneven: [0.0, 0.0, 0.7], ..plain("uneven hours, constant 12", constant) },
        Water { uneven: [0.0, 0.0, 0.7], ..plain("uneven hours, window 15±1.5", window) },
    ]
}

/// The wait at which the curve is checked, minutes: on these waters half of the bites come before it.
const CURVE_AT: f64 = 12.0;

/// The limits of a day's curve: with hours as clusters, and by Greenwood. `None` before the first bite and at
/// 0.
fn limits(day: &[TimedWait]) -> Option<[(f64, f64); 2]> {
    let waits: Vec<Wait> = day.iter().map(|w| w.wait).collect();
    let hours: Vec<usize> = day.iter().map(|w| (w.at_min / 60.0) as usize).collect();
    let curves = [SurvivalCurve::in_clusters(&waits, &hours).ok()?, SurvivalCurve::new(&waits).ok()?];
    let at = |curve: &SurvivalCurve| {
        let step = curve.steps().iter().rposition(|step| step.minutes <= CURVE_AT)?;
        curve.limits(Limits::LogLog, 0.95).ok()?[step]
    };
    Some([at(&curves[0])?, at(&curves[1])?])
}

/// Fishes days on a water, fish `keener` times as keen on them as on the three days in the book of each.
pub fn looked(water: &Water, keener: f64, days: u64, run: u64) -> Looked {
    let mut found = Looked::default();
    let (mut bands, mut all) = (Vec::new(), Vec::new());
    for day in 0..days {
        let fish = |n: u64, keener: f64| {
            let luck = Luck::of_day(water.seed(run) ^ 0x0010_0C5D, day * 10 + n);
            let all_day = Water { bites: water.bites.on_a_keener_day(keener), ..*water };
            (change::fish(&all_day, &luck, Habit::Once, 1.0), luck)
        };
        let begun = BEGUN[(day % 3) as usize];
        let book: Vec<Vec<TimedWait>> = (1..=BOOK).map(|n| timed(&fish(n, 1.0).0, begun)).collect();
        let book: Vec<&[TimedWait]> = book.iter().map(Vec::as_slice).collect();
        let (rows, luck) = fish(0, keener);
        let today = timed(&rows, begun);
        let casts = today.len();
        bands.extend(limits(&today));
        all.extend(today.iter().map(|w| w.wait));
        let clear = |hours: Option<ByHours>| hours.is_some_and(|hours| hours.p < CLEAR_BELOW);
        let so_far = |over| if over { DaySoFar::Over } else { DaySoFar::Running };
        note(&mut found.trend, casts, |n, over| clear(over_the_day(&today[..n], so_far(over)).ok()));
        note(&mut found.earlier, casts, |n, over| {
            clear(against_earlier(&today[..n], &book, so_far(over)).ok())
        });
        for (found, (round, _)) in found.moved.iter_mut().zip(Round::ALL) {
            let places = places(round, &rows, &luck);
            note(found, casts, |n, _| moved(&rows[..n], &places[..n]));
        }
    }
    // The truth is the curve of all days together.
    let truth = SurvivalCurve::new(&all).map_or(f64::NAN, |curve| curve.survival_at(CURVE_AT));
    for band in bands {
        for (share, (low, high)) in found.curve.iter_mut().zip(band) {
            share.add(f64::from(u8::from((low..=high).contains(&truth))), 1.0);
        }
    }
    found
}

/// Asks after every cast, and at all-out.
fn note(found: &mut [Share; 2], casts: usize, claims: impl Fn(usize, bool) -> bool) {
    let end = claims(casts, true);
    let ever = end || (1..=casts).any(|n| claims(n, false));
    for (share, claimed) in found.iter_mut().zip([end, ever]) {
        share.add(f64::from(u8::from(claimed)), 1.0);
    }
}

fn timed(rows: &[CastRow], begun: f64) -> Vec<TimedWait> {
    rows.iter().map(|row| TimedWait { at_min: begun + row.at_min, wait: row.wait }).collect()
}

/// Where each cast goes.
fn places(round: Round, rows: &[CastRow], luck: &Luck) -> Vec<f64> {
    // An order of the six spots that differs every day.
    let mut spots = [0, 1, 2, 3, 4, 5];
    spots.sort_by(|&a, &b| luck.spots[a].total_cmp(&luck.spots[b]));
    let mut at = 0.0;
    let place = |(i, row): (usize, &CastRow)| match round {
        Round::InTurn => spots[i % 6] as f64,
        Round::FourEach => spots[i / 4 % 6] as f64,
        Round::AnHourEach => spots[(row.at_min / 60.0) as usize % 6] as f64,
        Round::Wandering => {
            at += (3.0 * luck.cast(i).u[8]).floor() - 1.0;
            at
        }
    };
    rows.iter().enumerate().map(place).collect()
}

fn moved(rows: &[CastRow], places: &[f64]) -> bool {
    let ms = |minutes: f64| (60_000.0 * minutes) as i64;
    let all = || rows.iter().zip(places);
    let casts: Vec<(i64, f64)> = all().map(|(row, &place)| (ms(row.at_min), place)).collect();
    let bite = |(row, &place): (&CastRow, &f64)| (ms(row.at_min + row.wait.minutes()), place);
    let bites: Vec<(i64, f64)> = all().filter(|(row, _)| row.wait.is_bite()).map(bite).collect();
    matches!(drift_along(&bites, &casts).lean, DriftLean::Up | DriftLean::Down)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Read cast by cast with an ordinary test, a trend was claimed at some look on 29 days in 100 on even
    /// waters and on 65 where bites come in runs. (A quick look with few days: `./dev sim` counts more.)
    #[test]
    fn where_nothing_changes_little_is_claimed_at_any_look() {
        for water in level() {
            let found = looked(&water, 1.0, 60, 3);
            let all = [&found.trend, &found.earlier].into_iter().chain(&found.moved);
            for [_, ever] in all {
                assert!(ever.value() <= 0.12, "{}: {:.2}", water.name, ever.value());
            }
        }
    }

    #[test]
    fn a_day_three_times_as_keen_is_often_distinguished_from_earlier_ones() {
        let found = looked(&level()[0], 3.0, 60, 3);
        assert!(found.earlier[1].value() > 0.6, "{}", found.earlier[1].value());
    }
}
