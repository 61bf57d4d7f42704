//! The luck of one day, drawn before anybody fishes it, so that it is the same for every angler (common
//! random numbers): the n-th cast of a day gets the same fish whoever makes it.

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// Casts for which luck is drawn: more than a day of one-minute casts has.
const CASTS: usize = 320;
/// Hours of a day.
pub const HOURS: usize = 5;
/// Spots that an angler may fish in turn.
pub const SPOTS: usize = 6;

/// Minutes after which a spell may end.
pub const SPELL: f64 = 20.0;
/// Chance that it does.
const SPELL_ENDS: f64 = 0.25;
/// Spells of a day.
const SPELLS: usize = HOURS * 60 / SPELL as usize;

/// Random numbers of one cast: `u` uniform on (0, 1), `z` standard normal.
#[derive(Debug, Clone, Copy)]
pub struct CastLuck {
    /// Uniform numbers: 0 whether fish come, 1 which peak, 2 when, 3 turn-round, 4 playing the fish, 5 late
    /// tap at the splash, 6 late tap at the end, 7 forgotten end, 8 another bait, 9 another hooklength.
    pub u: [f64; 10],
    /// Normal numbers: 0 when, 1 how keen the fish are at this cast, 2 return of the fish.
    pub z: [f64; 3],
}

/// All luck of one day.
#[derive(Debug, Clone)]
pub struct Luck {
    casts: Vec<CastLuck>,
    /// How keen the fish are in each hour (standard normal).
    pub hours: [f64; HOURS],
    /// How keen the fish are at each spot (standard normal).
    pub spots: [f64; SPOTS],
    /// Whether fish are at each spot in each hour (uniform).
    pub home: [[f64; SPOTS]; HOURS],
    /// How keen the fish are on this day (standard normal).
    pub day: f64,
    /// Whether each 20 minutes of the day are in a good spell.
    pub spells: [bool; SPELLS],
}

impl Luck {
    /// The luck of day number `day` on a water, from a seed.
    pub fn of_day(seed: u64, day: u64) -> Self {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        rng.set_stream(day);
        let mut luck = Self {
            casts: Vec::new(),
            hours: [0.0; HOURS],
            spots: [0.0; SPOTS],
            home: [[0.0; SPOTS]; HOURS],
            day: 0.0,
            spells: [false; SPELLS],
        };
        luck.hours = std::array::from_fn(|_| normal(&mut rng));
        luck.spots = std::array::from_fn(|_| normal(&mut rng));
        luck.home = std::array::from_fn(|_| std::array::from_fn(|_| rng.random()));
        luck.casts = (0..CASTS)
            .map(|_| CastLuck {
                u: std::array::from_fn(|_| rng.random()),
                z: std::array::from_fn(|_| normal(&mut rng)),
            })
            .collect();
        // Drawn last, so that all other luck is the same whether days differ or not.
        luck.day = normal(&mut rng);
        let mut good = rng.random::<f64>() < 0.5;
        luck.spells = std::array::from_fn(|_| {
            good ^= rng.random::<f64>() < SPELL_ENDS;
            good
        });
        luck
    }

    /// The luck of cast number `cast`.
    pub fn cast(&self, cast: usize) -> &CastLuck {
        &self.casts[cast % CASTS]
    }
}

/// Standard normal by Box and Muller (1958).
pub(super) fn normal(rng: &mut ChaCha8Rng) -> f64 {
    let u: f64 = 1.0 - rng.random::<f64>();
    let v: f64 = rng.random();
    (-2.0 * u.ln()).sqrt() * (std::f64::consts::TAU * v).cos()
}
