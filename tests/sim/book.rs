//! A book of five days when days differ: does it still help, and does the band of the rate still contain the
//! truth?

use super::angler::Angler;
use super::day::{Bank, Cast, fish};
use super::luck::Luck;
use super::restwater::{Restwater, posterior};
use super::share::{Share, oracle};
use super::water::Water;
use restwater_waits::CurveKind;

/// Log-sd of how keen the fish are between days.
pub const BETWEEN_DAYS: [f64; 4] = [0.0, 0.3, 0.5, 0.8];
/// Days in a book.
const BOOK: u64 = 5;
/// Days fished after each book.
const PER_BOOK: u64 = 4;
/// The leave time whose rate is checked, minutes.
const LEAVE: f64 = 20.0;
/// Level of the band.
const LEVEL: f64 = 0.95;

/// The results of days with a book and of the same days without one.
#[derive(Debug, Clone, Default)]
pub struct Differing {
    /// Bites relative to the oracle's: with the book, and without.
    pub shares: [Share; 2],
    /// Whether the band of the rate contained the truth halfway through the day's casts: with the book, and
    /// without.
    pub covered: [Share; 2],
}

/// Fishes `books` books of five days and four days after each, with a log-sd of `sd` between days.
pub fn differing(water: &Water, sd: f64, books: u64, run: u64) -> Differing {
    let water = Water { between_days: sd, ..*water };
    let mut knows = oracle(&water, run);
    let (mut with, mut without, mut found) =
        (Restwater::default(), Restwater::default(), Differing::default());
    for book_no in 0..books {
        let luck = |day: u64| Luck::of_day(water.seed(run) ^ 0x00DA_E5D1, book_no * 100 + day);
        let mut book: Vec<Vec<Cast>> = Vec::new();
        for day in 0..BOOK {
            with.begin(&book);
            book.push(fish(&water, &luck(day), &mut with, Bank::all_in()).log);
        }
        let mut bites = [0, 0, 0];
        for luck in (0..PER_BOOK).map(|day| luck(10 + day)) {
            with.begin(&book);
            without.begin(&[]);
            bites[2] += fish(&water, &luck, &mut knows, Bank::all_in()).bites;
            let truth = water.rate_on(&luck, LEAVE);
            for (i, (angler, book)) in
                [(&mut with, &book[..]), (&mut without, &[][..])].into_iter().enumerate()
            {
                let catch = fish(&water, &luck, angler, Bank::all_in());
                bites[i] += catch.bites;
                let held = band(book, &catch.log[..catch.log.len() / 2])
                    .is_some_and(|(low, high)| (low..=high).contains(&truth));
                found.covered[i].add(f64::from(u8::from(held)), 1.0);
            }
        }
        for (i, share) in found.shares.iter_mut().enumerate() {
            share.add(bites[i] as f64, bites[2] as f64);
        }
    }
    found
}

/// The band of the rate as the Waits screen draws it.
fn band(book: &[Vec<Cast>], today: &[Cast]) -> Option<(f64, f64)> {
    let posterior = posterior(book, today)?;
    let point = *posterior.curve(CurveKind::Rate, &[LEAVE], LEVEL).ok()?.first()?;
    Some((point.low, point.high))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::super::day::{EXTRA, TURN};
    use super::super::waters::tuned;
    use super::*;

    #[test]
    fn the_true_rate_of_a_constant_water_is_the_closed_form() {
        let water = tuned().into_iter().find(|w| w.name == "constant 12").unwrap();
        let bitten = 1.0 - (-LEAVE / 12.0_f64).exp();
        let closed = 60.0 * bitten / (12.0 * bitten + TURN + EXTRA * bitten);
        assert!((water.rate_on(&Luck::of_day(1, 1), LEAVE) - closed).abs() < 1e-4);
    }

    #[test]
    fn days_differ_only_if_asked_for() {
        let (same, other) = (tuned()[7], Water { between_days: 0.5, ..tuned()[7] });
        let luck = Luck::of_day(3, 7);
        assert!(same.rate_on(&luck, 30.0) != other.rate_on(&luck, 30.0));
        assert_eq!(same.rate_on(&luck, 30.0), same.rate_on(&Luck::of_day(3, 8), 30.0));
        // The fish of the day match its rate: waits at a constant rate are scaled by it.
        let wait = |water: &Water| water.wait(&luck, 0, 0.0, 0, -1e9, 1.0).unwrap();
        let keen = (0.5 * luck.day).exp();
        assert!((wait(&same) / wait(&other) - keen).abs() < 1e-9);
    }
}
