//! Claims about bites on first days, compared with what happens: the chance in the next five minutes, the
//! band of the rate, the bites to come and their weight.
//!
//! The angler follows the Bank's headline. Chances, bands and forecasts come from the functions from which
//! the screens' records are made: [`restwater_waits::WaitPosterior::waiting_on`] (the Bank, which rounds to whole
//! hundredths), [`WaitPosterior::curve`] (Waits) and [`rest_of_match`] (Waits and Match).

pub mod goals;
pub mod scores;
pub mod table;
pub mod truth;
pub mod weights;

use super::angler::Angler;
use super::day::{Bank, Cast, Catch, DAY, EXTRA, TURN, fish};
use super::luck::Luck;
use super::restwater::{Restwater, posterior};
use super::share::Share;
use super::water::Water;
use restwater_match_day::forecast::{FishKind, Forecast, Landing, TimeLeft};
use restwater_session::Rhythm;
use restwater_session::rest::{Leaves, rest_of_match};
use restwater_waits::{CurveKind, WaitPosterior};
use scores::{Chances, Coming};
use truth::Truth;

/// When on a day the figures are read.
pub const MOMENTS: [&str; 3] = ["after 3 bites", "at half", "in the last hour"];
/// Casts of each moment whose chances are read.
const CASTS: usize = 3;
/// Minutes of a wait at which the chance of the next five is read.
pub const READ_AT: [f64; 6] = [0.0, 5.0, 10.0, 15.0, 20.0, 25.0];
/// How far ahead bites are forecast, halfway through the day; the last is to its end.
pub const AHEAD: [&str; 3] = ["1 h", "2 h", "half a day"];
/// Level of the band of the rate.
const LEVEL: f64 = 0.95;
/// Seed of the simulated futures, as on the Waits screen.
const SEED: u64 = 4;

/// What was claimed on one water, and what happened.
#[derive(Debug, Clone, Default)]
pub struct Claims {
    /// Chances in the next five minutes, by moment and by minutes of the wait.
    pub five: [[Chances; READ_AT.len()]; MOMENTS.len()],
    /// Whether the band of the rate contained the day's truth, halfway through the day and in its last hour.
    pub rate_held: [Share; 2],
    /// The mean of the rate divided by the truth, at the same moments.
    pub rate: [Share; 2],
    /// Bites to come, by [`AHEAD`].
    pub coming: [Coming; AHEAD.len()],
}

/// An angler who follows the Bank and notes the claims before every cast.
struct Notes {
    restwater: Restwater,
    /// For every cast: minutes since all-in at its splash, the minutes it was to be left, and the chances at
    /// [`READ_AT`].
    read: Vec<Noted>,
}

#[derive(Debug, Clone, Copy)]
struct Noted {
    clock: f64,
    leave: f64,
    chances: [Option<f64>; READ_AT.len()],
}

impl Angler for Notes {
    fn begin(&mut self, book: &[Vec<Cast>]) {
        self.restwater.begin(book);
        self.read.clear();
    }

    fn leave(&mut self, clock: f64) -> f64 {
        let leave = self.restwater.leave(clock);
        let chances = READ_AT.map(|minutes| self.restwater.chance(minutes));
        self.read.push(Noted { clock, leave, chances });
        leave
    }

    fn learn(&mut self, cast: Cast) {
        self.restwater.learn(cast);
    }
}

/// Fishes first days and notes the claims.
pub fn claims(water: &Water, days: u64, run: u64) -> Claims {
    let (mut found, mut truth) = (Claims::default(), Truth::new(water, run));
    let mut angler = Notes { restwater: Restwater::default(), read: Vec::new() };
    for day in 0..days {
        let luck = Luck::of_day(water.seed(run) ^ 0x00C1_A135, day);
        angler.begin(&[]);
        let catch = fish(water, &luck, &mut angler, Bank::all_in());
        let moments = moments(&catch, &angler.read);
        for (bins, first) in found.five.iter_mut().zip(moments) {
            for cast in first..(first + CASTS).min(catch.waits.len()) {
                note(bins, &angler.read[cast], catch.waits[cast]);
            }
        }
        for (i, cast) in moments[1..].iter().enumerate().filter(|(_, cast)| **cast < angler.read.len()) {
            let Some(posterior) = posterior(&[], &catch.log[..*cast]) else { continue };
            let noted = angler.read[*cast];
            found.note_rate(i, &posterior, noted.leave, truth.rate(&luck, noted));
            if i == 0 {
                found.note_coming(&posterior, &catch, &angler.read, *cast);
            }
        }
    }
    found
}

/// The first cast after the third bite, of the second half of the day, and of its last hour; past the last
/// cast if there is none.
fn moments(catch: &Catch, read: &[Noted]) -> [usize; MOMENTS.len()] {
    let from = |clock: f64| read.iter().position(|noted| noted.clock >= clock).unwrap_or(read.len());
    let third = catch.log.iter().enumerate().filter(|(_, cast)| cast.bite).nth(2);
    [third.map_or(read.len(), |(cast, _)| cast + 1), from(DAY / 2.0), from(DAY - 60.0)]
}

fn note(bins: &mut [Chances], noted: &Noted, wait: Option<f64>) {
    for ((bin, from), chance) in bins.iter_mut().zip(READ_AT).zip(noted.chances) {
        let still_out = wait.is_none_or(|wait| wait > from);
        if let Some(chance) = chance.filter(|_| still_out) {
            bin.add(chance, wait.is_some_and(|wait| wait <= from + 5.0));
        }
    }
}

impl Claims {
    fn note_rate(&mut self, moment: usize, posterior: &WaitPosterior, leave: f64, truth: f64) {
        let curve = posterior.curve(CurveKind::Rate, &[leave], LEVEL);
        let Some(point) = curve.ok().and_then(|points| points.first().copied()) else { return };
        let held = (point.low..=point.high).contains(&truth);
        self.rate_held[moment].add(f64::from(u8::from(held)), 1.0);
        self.rate[moment].add(point.mean, truth);
    }

    /// Bites forecast at the splash of that cast, and those that came.
    fn note_coming(&mut self, posterior: &WaitPosterior, catch: &Catch, read: &[Noted], cast: usize) {
        let now = read[cast].clock;
        let before = catch.log[..cast].iter().filter(|cast| cast.bite && cast.end_seen).count();
        let bite_at =
            |i: usize| catch.waits[i].filter(|wait| *wait <= read[i].leave).map(|wait| read[i].clock + wait);
        for (coming, ahead) in self.coming.iter_mut().zip([60.0, 120.0, DAY - now]) {
            let Some(foretold) = foretold(posterior, ahead, &landing(before)) else { continue };
            let came = (cast..read.len()).filter_map(bite_at).filter(|at| *at <= now + ahead).count();
            coming.add(&foretold, came, before, now, ahead);
        }
    }
}

/// What the screens forecast for the minutes ahead, with one rod that is in.
pub(super) fn foretold(posterior: &WaitPosterior, ahead: f64, landing: &Landing) -> Option<Forecast> {
    let rhythm =
        Rhythm { turn_round_min: TURN, settle_min: 0.0, bite_extra_min: EXTRA, turn_rounds: 3, bites: 3 };
    let left = TimeLeft { minutes: ahead, rods: vec![None] };
    let rest = rest_of_match(posterior, Leaves::of(&posterior.advice()), &rhythm, &left, landing, SEED);
    rest.ok().map(|rest| rest.coming)
}

fn landing(landed: usize) -> Landing {
    Landing { landed: landed as u64, not_landed: 0, kinds: vec![FishKind::alike(1.0)] }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::super::waters::tuned;
    use super::*;
    use restwater_screen::{Wording, forecast_view};
    use restwater_session::{fold, written};

    #[test]
    fn the_bites_forecast_are_those_of_the_waits_screen() {
        let cast = |minutes, bite| Cast { minutes, bite, end_seen: true, fed: false };
        let today = [cast(9.0, true), cast(20.0, false), cast(14.0, true), cast(11.0, true)];
        let posterior = posterior(&[], &today).unwrap();
        let session = fold(written::SESSION, &written::Written::new(1).ops);
        let rhythm =
            Rhythm { turn_round_min: TURN, settle_min: 0.0, bite_extra_min: EXTRA, turn_rounds: 3, bites: 3 };
        let shown = forecast_view(&Wording::new(), &session, &posterior, rhythm, &[None], 120).unwrap();
        let bites = foretold(&posterior, 120.0, &landing(0)).unwrap().bites;
        assert_eq!(shown.lines[1].label, "Bites to come");
        assert_eq!((shown.lines[1].low, shown.lines[1].high), (bites.low, bites.high));
        assert!(shown.lines[1].value.ends_with(&format!("about {:.0}", bites.likely)), "{shown:?}");
    }

    #[test]
    fn moments_of_a_day_follow_its_bites_and_its_clock() {
        let water = tuned().into_iter().find(|water| water.name == "constant 12").unwrap();
        let mut angler = Notes { restwater: Restwater::default(), read: Vec::new() };
        angler.begin(&[]);
        let catch = fish(&water, &Luck::of_day(5, 5), &mut angler, Bank::all_in());
        let [third, half, late] = moments(&catch, &angler.read);
        assert_eq!(catch.log[..third].iter().filter(|cast| cast.bite).count(), 3);
        assert!(catch.log[third - 1].bite);
        assert!(angler.read[half].clock >= 150.0 && angler.read[half - 1].clock < 150.0);
        assert!(late > half && angler.read.len() == catch.waits.len());
    }
}
