//! The weight to come, forecast after some of the fish were weighed.

use super::super::angler::Angler;
use super::super::day::{Bank, Catch, DAY, fish};
use super::super::luck::{Luck, normal};
use super::super::restwater::{Restwater, posterior};
use super::super::share::Share;
use super::super::water::{Bites, Kind, Water};
use super::{Noted, Notes, foretold};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use restwater_log::{FishWeight, WeightUnit};
use restwater_match_day::forecast::Landing;
use restwater_match_day::rules::{MatchRules, NetHolds, NetRule};
use restwater_match_day::weight::Weight;
use restwater_session::own_count::own_count;
use restwater_session::{CaughtFish, ClassGuess, MatchSetup, written};
use uuid::Uuid;

/// Fish weighed, and the spread of single fish (standard deviation over mean). The narrow spread is for fish
/// of one class, the wide one for fish without a class.
pub const CASES: [(usize, f64); 6] = [(1, 0.35), (3, 0.35), (8, 0.35), (1, 1.0), (3, 1.0), (8, 1.0)];
/// Fish landed before the weight to come is forecast.
const LANDED: usize = 8;
/// Smallest share of bites landed on a day; it is drawn uniformly between this and 1.
const LANDS: f64 = 0.5;
/// How many minutes ahead the weight is forecast; a day must have at least that many left.
const AHEAD: f64 = 120.0;
const LEAST: f64 = 60.0;
/// The guess for the class, which is also what the app assumes for a fish without a class: a pound.
const GUESS: Weight = Weight::Drams(256);
/// The number of fish that the guess counts as in the app, which determines how far the truth may be from it.
const GUESS_COUNTS_AS: f64 = 3.0;

/// The results of one case.
#[derive(Debug, Clone, Default)]
pub struct Weights {
    /// Fish weighed.
    pub weighed: usize,
    /// Spread of single fish.
    pub spread: f64,
    /// Whether the range contained the weight.
    pub held: Share,
    /// Forecast mean divided by the actual weight.
    pub mean: Share,
}

/// Fishes days at a constant rate whose fish have a mean and a spread, and forecasts the weight of the next
/// two hours.
pub fn weights((weighed, spread): (usize, f64), days: u64, run: u64) -> Weights {
    let water = Water::plain("weights, constant 12", Kind::ConstantRate, Bites::Constant { mean: 12.0 });
    let mut found = Weights { weighed, spread, ..Weights::default() };
    let mut angler = Notes { restwater: Restwater::default(), read: Vec::new() };
    for day in 0..days {
        let luck = Luck::of_day(water.seed(run), day);
        angler.begin(&[]);
        let catch = fish(&water, &luck, &mut angler, Bank::all_in());
        let fish = Fish::of_day(water.seed(run) ^ spread.to_bits(), day, spread);
        found.note(&catch, &angler.read, &fish);
    }
    found
}

/// The fish of a day, by bite: grams, or `None` for a bite that was not landed.
struct Fish(Vec<Option<f64>>);

impl Fish {
    /// Weights around a mean that varies around the guess by as much as the guess allows: log-normal on even
    /// days, gamma with the nearest whole shape (a sum of exponentials) on odd ones.
    fn of_day(seed: u64, day: u64, spread: f64) -> Self {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        rng.set_stream(day);
        let sd = |cv: f64| (1.0 + cv * cv).ln().sqrt();
        let (doubt, single) = (sd(spread / GUESS_COUNTS_AS.sqrt()), sd(spread));
        let mean = GUESS.grams().ln() + doubt * normal(&mut rng) - 0.5 * doubt * doubt;
        let shape = (spread * spread).recip().round().max(1.0);
        let mut one = || {
            if day.is_multiple_of(2) {
                return (mean + single * normal(&mut rng) - 0.5 * single * single).exp();
            }
            mean.exp() / shape * (0..shape as u64).map(|_| -(1.0 - rng.random::<f64>()).ln()).sum::<f64>()
        };
        let grams: Vec<f64> = (0..80).map(|_| one().max(1.0)).collect();
        let lands = LANDS + (1.0 - LANDS) * rng.random::<f64>();
        Self(grams.into_iter().map(|g| (rng.random::<f64>() < lands).then_some(g)).collect())
    }
}

impl Weights {
    fn note(&mut self, catch: &Catch, read: &[Noted], fish: &Fish) {
        let bites: Vec<usize> = (0..catch.log.len()).filter(|i| catch.log[*i].bite).collect();
        let landed: Vec<usize> = (0..bites.len()).filter(|i| fish.0[*i].is_some()).collect();
        let Some(now) = landed.get(LANDED - 1).map(|last| bites[*last] + 1) else { return };
        let Some(clock) = read.get(now).map(|noted| noted.clock) else { return };
        let ahead = AHEAD.min(DAY - clock);
        if ahead < LEAST {
            return;
        }
        let so_far = bites.iter().filter(|cast| **cast < now).count();
        let caught: Vec<CaughtFish> =
            landed[..LANDED].iter().enumerate().map(|(i, bite)| self.caught(i, fish.0[*bite])).collect();
        let Ok(own) = own_count(&setup(self.spread), &caught) else { return };
        let landing =
            Landing { landed: LANDED as u64, not_landed: (so_far - LANDED) as u64, kinds: own.kinds };
        let Some(coming) =
            posterior(&[], &catch.log[..now]).and_then(|posterior| foretold(&posterior, ahead, &landing))
        else {
            return;
        };
        let in_time = |bite: &&usize| {
            catch.waits[bites[**bite]].is_some_and(|wait| read[bites[**bite]].clock + wait <= clock + ahead)
        };
        let came: f64 = landed[LANDED..].iter().filter(in_time).filter_map(|bite| fish.0[*bite]).sum();
        self.held.add(f64::from(u8::from((coming.weight.low..=coming.weight.high).contains(&came))), 1.0);
        self.mean.add(coming.mean_weight, came);
    }

    /// A fish as logged: weighed, with its class, or without one.
    fn caught(&self, i: usize, grams: Option<f64>) -> CaughtFish {
        let count = grams.unwrap_or_default().round() as u32;
        let weight = (i < self.weighed).then_some(FishWeight::Weighed { unit: WeightUnit::Grams, count });
        CaughtFish {
            cast: Uuid::nil(),
            at: written::stamp(0),
            rod: 1,
            class: class(self.spread).map(|class| class.name),
            weight,
            net: None,
            put_back: false,
            is_said: true,
        }
    }
}

/// The class, for the spread that the app assumes within a class.
fn class(spread: f64) -> Option<ClassGuess> {
    (spread < 0.5).then(|| ClassGuess { name: "skimmer".into(), guess: GUESS })
}

fn setup(spread: f64) -> MatchSetup {
    let net = NetRule { name: "1".into(), limit: None, holds: NetHolds::Anything };
    MatchSetup {
        all_in_ms: 0,
        all_out_ms: 18_000_000,
        offset_ms: 0,
        unit: WeightUnit::Grams,
        mark: Weight::Grams(10),
        rules: MatchRules { nets: vec![net], ..MatchRules::default() },
        classes: class(spread).into_iter().collect(),
    }
}
