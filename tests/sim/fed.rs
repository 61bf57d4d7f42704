//! Feed in the model of waits: how many bites the advice brings with and without knowing about feed, and
//! whether the chance of a bite in the next five minutes is right for casts in fed water and for others.

use super::angler::Angler;
use super::day::{Bank, Cast, fish_and_feed};
use super::feeds::{Feeds, When};
use super::luck::Luck;
use super::restwater::Restwater;
use super::share::Share;
use super::water::Water;

/// The ways to feed, with their names.
pub const WAYS: [(When, &str); 2] = [(When::ByTheHour, "fed by the hour"), (When::Dry, "fed when dry")];
/// How many times as keen feed makes the fish.
pub const TIMES: [f64; 2] = [1.0, 2.0];
/// Minutes of a wait at which the chance of the next five is read.
const READ_AT: [f64; 4] = [0.0, 5.0, 10.0, 15.0];

/// The results of the days.
#[derive(Debug, Clone, Default)]
pub struct Found {
    /// Bites of the advice that knows about feed divided by those of the advice that doesn't.
    pub bites: Share,
    /// Bites per hour: with feed known, and not.
    pub per_hour: [Share; 2],
    /// Claimed and true, for casts in other water and in fed water; with feed known, and not.
    pub chances: [[[Share; 2]; 2]; 2],
    /// Days on which casts in fed water were distinguished from others.
    pub counted: Share,
}

/// An angler who reads the Bank before every cast and notes the stated chances.
struct Notes {
    restwater: Restwater,
    /// By cast: the chances at [`READ_AT`].
    read: Vec<[Option<f64>; 4]>,
}

impl Angler for Notes {
    fn begin(&mut self, book: &[Vec<Cast>]) {
        self.restwater.begin(book);
        self.read.clear();
    }

    fn casts_into(&mut self, fed: bool) {
        self.restwater.casts_into(fed);
    }

    fn leave(&mut self, clock: f64) -> f64 {
        self.read.push(READ_AT.map(|minutes| self.restwater.chance(minutes)));
        self.restwater.leave(clock)
    }

    fn learn(&mut self, cast: Cast) {
        self.restwater.learn(cast);
    }
}

/// Fishes the same days with the advice that knows about feed and with the one that doesn't.
pub fn found(water: &Water, when: When, times: f64, days: u64, run: u64) -> Found {
    let mut found = Found::default();
    let mut anglers = [Restwater::default(), Restwater::without_feed()]
        .map(|restwater| Notes { restwater, read: Vec::new() });
    for day in 0..days {
        let luck = Luck::of_day(water.seed(run) ^ 0x00FE_EDED, day);
        let mut bites = [0.0; 2];
        for (i, angler) in anglers.iter_mut().enumerate() {
            angler.begin(&[]);
            let catch = fish_and_feed(water, &luck, angler, Bank::all_in(), &mut Feeds::new(when, times));
            bites[i] = catch.bites as f64;
            found.per_hour[i].add(bites[i], super::day::DAY / 60.0);
            let tells = first_told(&catch.log);
            for (c, (cast, wait)) in catch.log.iter().zip(&catch.waits).enumerate().skip(tells) {
                note(&mut found.chances[i][usize::from(cast.fed)], &angler.read[c], *wait);
            }
        }
        found.bites.add(bites[0], bites[1]);
        found.counted.add(f64::from(u8::from(anglers[0].restwater.feed_counts())), 1.0);
    }
    found
}

/// The first cast before which both sides had three casts and there had been three bites: from then on the
/// two anglers may differ.
fn first_told(log: &[Cast]) -> usize {
    let seen = |cast: &&Cast| cast.end_seen;
    (0..log.len())
        .find(|&i| {
            let side = |fed: bool| log[..i].iter().filter(seen).filter(|cast| cast.fed == fed).count();
            let bites = log[..i].iter().filter(seen).filter(|cast| cast.bite).count();
            side(true) >= 3 && side(false) >= 3 && bites >= 3
        })
        .unwrap_or(log.len())
}

/// Adds what was claimed for a cast and what its wait would have been.
fn note([claimed, came]: &mut [Share; 2], read: &[Option<f64>; 4], wait: Option<f64>) {
    for (from, chance) in READ_AT.into_iter().zip(read) {
        let still_out = wait.is_none_or(|wait| wait > from);
        if let Some(chance) = chance.filter(|_| still_out) {
            claimed.add(chance, 1.0);
            came.add(f64::from(u8::from(wait.is_some_and(|wait| wait <= from + 5.0))), 1.0);
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::super::waters::tuned;
    use super::*;

    #[test]
    fn with_and_without_known_feed_the_days_are_the_same_until_both_sides_have_casts() {
        let water = tuned().into_iter().find(|water| water.name == "constant 12").unwrap();
        let luck = Luck::of_day(3, 3);
        let logs = [Restwater::default(), Restwater::without_feed()].map(|mut angler| {
            angler.begin(&[]);
            let mut feeds = Feeds::new(When::ByTheHour, 2.0);
            fish_and_feed(&water, &luck, &mut angler, Bank::all_in(), &mut feeds).log
        });
        let told = first_told(&logs[0]);
        assert!(told > 6 && told < logs[0].len());
        for (a, b) in logs[0].iter().zip(&logs[1]).take(told) {
            assert_eq!((a.minutes, a.bite, a.fed), (b.minutes, b.bite, b.fed));
        }
    }

    #[test]
    fn chances_are_noted_for_casts_that_are_still_out() {
        let mut shares = <[Share; 2]>::default();
        note(&mut shares, &[Some(0.4); 4], Some(8.0));
        assert_eq!((shares[0].days(), shares[1].days()), (2.0, 2.0));
        assert_eq!((shares[0].value(), shares[1].value()), (0.4, 0.5));
    }
}
