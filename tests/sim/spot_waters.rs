//! Waters on which it may matter where one fishes.

use super::water::Bites::{self, Early, Two};
use super::water::Kind::{
    ConstantRate, Disturbance, EarlyOnly, NarrowWindow, NobodyHome, Overdispersed, TwoPeaked,
};
use super::water::{Kind, Water};

const fn constant(mean: f64) -> Bites {
    Bites::Constant { mean }
}

const fn window(centre: f64, sd: f64, share: f64) -> Bites {
    Bites::Window { centre, sd, share }
}

/// A water of six spots that don't differ.
const fn alike(name: &'static str, kind: Kind, bites: Bites) -> Water {
    Water { spots: 6, ..Water::plain(name, kind, bites) }
}

const fn away(minutes: f64) -> Option<[f64; 2]> {
    if minutes > 0.0 { Some([minutes, 0.25 * minutes]) } else { None }
}

/// Fish at some spots and not at others, drawn again each hour.
const fn home(name: &'static str, bites: Bites, spots: usize, home: f64, back: f64) -> Water {
    Water { spots, home, away: away(back), ..Water::plain(name, NobodyHome, bites) }
}

/// Keener fish at some spots, all day.
const fn uneven(name: &'static str, mean: f64, spots: usize, log_sd: f64, back: f64) -> Water {
    let water = Water::plain(name, Overdispersed, constant(mean));
    Water { spots, uneven: [0.0, log_sd, 0.0], away: away(back), ..water }
}

const fn rising(mean: f64) -> Bites {
    Bites::Rising { mean }
}

/// The same water, where fish stay away after a cast for that many minutes.
fn back(minutes: f64, water: Water) -> Water {
    Water { away: away(minutes), ..water }
}

/// Waters that were looked at while the belief was made.
pub fn looked_at() -> Vec<Water> {
    vec![
        home("nobody home, constant 8, 6 spots", constant(8.0), 6, 0.5, 0.0),
        home("nobody home, constant 8, 6 spots, back in 10", constant(8.0), 6, 0.5, 10.0),
        home("nobody home, constant 8, 6 spots, back in 20", constant(8.0), 6, 0.5, 20.0),
        home("nobody home, constant 8, 4 spots, back in 10", constant(8.0), 4, 0.5, 10.0),
        home("nobody home, rising 9, 6 spots, back in 10", rising(9.0), 6, 0.6, 10.0),
        home("nobody home, constant 12, 4 spots, back in 10", constant(12.0), 4, 0.6, 10.0),
        uneven("uneven spots, constant 10", 10.0, 6, 1.0, 0.0),
        uneven("uneven spots, constant 10, back in 10", 10.0, 6, 1.0, 10.0),
        uneven("uneven spots, constant 10, back in 20", 10.0, 6, 1.0, 20.0),
        alike("alike, constant 12", ConstantRate, constant(12.0)),
        alike("alike, constant 30", ConstantRate, constant(30.0)),
        alike("alike, window 15±0.7", NarrowWindow, window(15.0, 0.7, 0.7)),
        alike("alike, early 0-5", EarlyOnly, Early { from: 0.5, until: 5.0, share: 0.5 }),
        back(20.0, alike("alike, constant 12, back in 20", Disturbance, constant(12.0))),
        back(10.0, alike("alike, window 8±1, back in 10", Disturbance, window(8.0, 1.0, 0.7))),
    ]
}

/// Waters written down before the belief had fished anything through the screens, and not fished until it was done.
pub fn kept_back() -> Vec<Water> {
    vec![
        home("nobody home, constant 10, 5 spots, back in 15", constant(10.0), 5, 0.65, 15.0),
        home("nobody home, rising 12, 4 spots, back in 10", rising(12.0), 4, 0.5, 10.0),
        home("nobody home, constant 6, 6 spots, back in 20", constant(6.0), 6, 0.4, 20.0),
        uneven("uneven spots, constant 14, 5 spots, back in 15", 14.0, 5, 0.8, 15.0),
        alike("alike, constant 9", ConstantRate, constant(9.0)),
        alike("alike, window 20±1.5", NarrowWindow, window(20.0, 1.5, 0.7)),
        alike("alike, early 1-6", EarlyOnly, Early { from: 1.0, until: 6.0, share: 0.45 }),
        alike("alike, peaks 5, 18", TwoPeaked, Two { first: [5.0, 1.0, 0.35], second: [18.0, 1.5, 0.45] }),
        back(15.0, alike("alike, constant 20, back in 15", Disturbance, constant(20.0))),
    ]
}
