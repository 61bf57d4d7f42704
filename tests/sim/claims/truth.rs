//! The true bites per hour on one day for casts left for a given time.

use super::super::angler::{Angler, Habit};
use super::super::day::{Bank, Cast, DAY, EXTRA, TURN, fish};
use super::super::luck::Luck;
use super::super::water::Water;
use super::Noted;

/// How many times a day is fished again with other casts.
const AGAIN: u64 = 60;

/// The truth of the days of one water.
pub struct Truth<'a> {
    water: &'a Water,
    /// The luck of the casts with which a day is fished again.
    casts: Vec<Luck>,
}

/// The same leave time all day, and when the last cast went out.
struct Watched(Habit, f64);

impl Angler for Watched {
    fn begin(&mut self, _book: &[Vec<Cast>]) {}

    fn leave(&mut self, clock: f64) -> f64 {
        self.1 = clock;
        self.0.leave(clock)
    }

    fn learn(&mut self, _cast: Cast) {}
}

impl<'a> Truth<'a> {
    /// For a water.
    pub fn new(water: &'a Water, run: u64) -> Self {
        let again = if even(water) { 0 } else { AGAIN };
        let casts = (0..again).map(|i| Luck::of_day(water.seed(run) ^ 0x0A6A_1117, i)).collect();
        Self { water, casts }
    }

    /// Bites per hour of that day for casts left as long as the noted one: by renewal reward on the truth of
    /// the moment, or, if its hours, spots or casts differ, by fishing the day again with other casts.
    pub(super) fn rate(&mut self, day: &Luck, noted: Noted) -> f64 {
        let (water, leave) = (self.water, noted.leave);
        if self.casts.is_empty() {
            return 60.0 * water.bites_at(noted.clock, DAY).rate_at(leave, TURN, EXTRA);
        }
        let (mut bites, mut minutes) = (0, 0.0);
        for luck in &mut self.casts {
            (luck.hours, luck.spots, luck.home) = (day.hours, day.spots, day.home);
            (luck.day, luck.spells) = (day.day, day.spells);
            let mut angler = Watched(Habit(leave), 0.0);
            let catch = fish(water, luck, &mut angler, Bank::all_in());
            // The cast that is out at all-out is fished to its end: otherwise short casts would count too
            // much.
            let last = catch.waits.last().copied().flatten().filter(|wait| *wait <= leave);
            let unfinished = catch.waits.len() > catch.log.len();
            bites += catch.bites + usize::from(unfinished && last.is_some());
            minutes += angler.1 + last.map_or(leave, |wait| wait + EXTRA) + TURN;
        }
        60.0 * bites as f64 / minutes
    }
}

/// Whether every cast of a day meets the same fish, apart from a drift common to all.
fn even(water: &Water) -> bool {
    water.home == 1.0 && water.away.is_none() && water.uneven == [0.0; 3] && !water.runs
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::super::super::waters::tuned;
    use super::*;

    #[test]
    fn a_day_fished_again_and_again_gives_its_closed_form() {
        let water = tuned().into_iter().find(|water| water.name == "window 15±2").unwrap();
        let noted = Noted { clock: 0.0, leave: 18.0, chances: [None; 6] };
        let mut truth = Truth::new(&water, 3);
        let closed = truth.rate(&Luck::of_day(1, 1), noted);
        truth.casts = (0..2000).map(|i| Luck::of_day(9, i)).collect();
        let fished = truth.rate(&Luck::of_day(1, 1), noted);
        assert!((fished / closed - 1.0).abs() < 0.01, "{fished} {closed}");
    }
}
