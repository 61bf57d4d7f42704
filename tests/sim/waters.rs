//! The waters of the tables.

use super::water::Bites::{self, Early, Two};
use super::water::Kind::{
    ConstantRate, Disturbance, Drift, EarlyOnly, Misreported, NarrowWindow, NobodyHome, Overdispersed,
    TwoPeaked,
};
use super::water::Water;

const fn window(centre: f64, sd: f64, share: f64) -> Bites {
    Bites::Window { centre, sd, share }
}

const fn constant(mean: f64) -> Bites {
    Bites::Constant { mean }
}

const fn plain(name: &'static str, kind: super::water::Kind, bites: Bites) -> Water {
    Water::plain(name, kind, bites)
}

/// The waters on which the advice was tuned.
pub fn tuned() -> Vec<Water> {
    vec![
        plain("window 8±1", NarrowWindow, window(8.0, 1.0, 0.7)),
        plain("window 12±1", NarrowWindow, window(12.0, 1.0, 0.7)),
        plain("window 15±0.7", NarrowWindow, window(15.0, 0.7, 0.7)),
        plain("window 15±2", NarrowWindow, window(15.0, 2.0, 0.8)),
        plain("window 20±1.5", NarrowWindow, window(20.0, 1.5, 0.7)),
        plain("window 25±2", NarrowWindow, window(25.0, 2.0, 0.8)),
        plain("constant 6", ConstantRate, constant(6.0)),
        plain("constant 12", ConstantRate, constant(12.0)),
        plain("constant 20", ConstantRate, constant(20.0)),
        plain("constant 30", ConstantRate, constant(30.0)),
        plain("early 0-5", EarlyOnly, Early { from: 0.5, until: 5.0, share: 0.5 }),
        plain("early 1-8", EarlyOnly, Early { from: 1.0, until: 8.0, share: 0.4 }),
        plain("peaks 4, 16", TwoPeaked, Two { first: [4.0, 1.0, 0.3], second: [16.0, 1.5, 0.5] }),
        plain("peaks 6, 22", TwoPeaked, Two { first: [6.0, 1.0, 0.4], second: [22.0, 2.0, 0.4] }),
        Water {
            spots: 6,
            home: 0.6,
            ..plain("nobody home, rising 9", NobodyHome, Bites::Rising { mean: 9.0 })
        },
        Water { spots: 6, home: 0.5, ..plain("nobody home, constant 8", NobodyHome, constant(8.0)) },
        Water {
            evening: Some(window(20.0, 1.5, 0.7)),
            ..plain("drift window 10 to 20", Drift, window(10.0, 1.5, 0.7))
        },
        Water { evening: Some(constant(25.0)), ..plain("drift constant 8 to 25", Drift, constant(8.0)) },
        Water { away: Some([10.0, 3.0]), ..plain("disturbed, back in 10", Disturbance, constant(6.0)) },
        Water {
            away: Some([20.0, 5.0]),
            spots: 2,
            ..plain("disturbed, back in 20, 2 spots", Disturbance, window(5.0, 2.0, 0.8))
        },
        Water {
            uneven: [0.5, 0.0, 0.7],
            ..plain("uneven window 15±1.5", Overdispersed, window(15.0, 1.5, 0.7))
        },
        Water {
            spots: 4,
            uneven: [0.5, 0.5, 0.5],
            ..plain("uneven constant 10", Overdispersed, constant(10.0))
        },
        Water { late: true, ..plain("late taps, window 15±1", Misreported, window(15.0, 1.0, 0.7)) },
        Water {
            forgotten: 0.15,
            ..plain("forgotten ends, window 15±1", Misreported, window(15.0, 1.0, 0.7))
        },
        Water {
            late: true,
            forgotten: 0.15,
            ..plain("late and forgotten, constant 12", Misreported, constant(12.0))
        },
        Water {
            late: true,
            looks: 4.0,
            ..plain("looks every 4 min, window 15±1", Misreported, window(15.0, 1.0, 0.7))
        },
        Water {
            late: true,
            looks: 4.0,
            ..plain("looks every 4 min, constant 12", Misreported, constant(12.0))
        },
    ]
}

/// Waters on which nothing was tuned: written before any result on them was seen, and not changed since.
/// Results on them were seen before the last change of the advice.
pub fn seen_before() -> Vec<Water> {
    vec![
        plain("window 10±1.5", NarrowWindow, window(10.0, 1.5, 0.65)),
        plain("window 13±0.8", NarrowWindow, window(13.0, 0.8, 0.75)),
        plain("window 16±1.2", NarrowWindow, window(16.0, 1.2, 0.6)),
        plain("window 18±2", NarrowWindow, window(18.0, 2.0, 0.7)),
        plain("window 22±1", NarrowWindow, window(22.0, 1.0, 0.75)),
        plain("constant 9", ConstantRate, constant(9.0)),
        plain("constant 16", ConstantRate, constant(16.0)),
        plain("constant 25", ConstantRate, constant(25.0)),
        plain("early 0-4", EarlyOnly, Early { from: 0.3, until: 4.0, share: 0.6 }),
        plain("early 2-7", EarlyOnly, Early { from: 2.0, until: 7.0, share: 0.45 }),
        plain("peaks 5, 14", TwoPeaked, Two { first: [5.0, 1.2, 0.35], second: [14.0, 1.2, 0.45] }),
        plain("peaks 8, 25", TwoPeaked, Two { first: [8.0, 1.0, 0.4], second: [25.0, 2.5, 0.4] }),
        Water { spots: 4, home: 0.7, ..plain("nobody home, constant 12", NobodyHome, constant(12.0)) },
        Water {
            evening: Some(window(12.0, 1.5, 0.7)),
            ..plain("drift window 18 to 12", Drift, window(18.0, 1.5, 0.7))
        },
        Water {
            away: Some([15.0, 4.0]),
            spots: 3,
            ..plain("disturbed, back in 15, 3 spots", Disturbance, constant(10.0))
        },
        Water {
            uneven: [0.5, 0.0, 0.7],
            ..plain("uneven window 12±2", Overdispersed, window(12.0, 2.0, 0.7))
        },
        Water {
            late: true,
            forgotten: 0.15,
            ..plain("late and forgotten, window 18±1.5", Misreported, window(18.0, 1.5, 0.7))
        },
        plain("window 9±1.2", NarrowWindow, window(9.0, 1.2, 0.7)),
        plain("window 14±1", NarrowWindow, window(14.0, 1.0, 0.65)),
        plain("window 23±2", NarrowWindow, window(23.0, 2.0, 0.75)),
        plain("constant 8", ConstantRate, constant(8.0)),
        plain("constant 22", ConstantRate, constant(22.0)),
        plain("early 0-6", EarlyOnly, Early { from: 0.5, until: 6.0, share: 0.5 }),
        plain("peaks 5, 18", TwoPeaked, Two { first: [5.0, 1.0, 0.35], second: [18.0, 1.5, 0.45] }),
    ]
}

/// Waters on which nothing was tuned: written before anything was fished on them, and not changed since.
pub fn unseen() -> Vec<Water> {
    vec![
        plain("window 11±0.9", NarrowWindow, window(11.0, 0.9, 0.65)),
        plain("window 17±1.8", NarrowWindow, window(17.0, 1.8, 0.75)),
        plain("window 21±1.4", NarrowWindow, window(21.0, 1.4, 0.7)),
        plain("constant 14", ConstantRate, constant(14.0)),
        plain("constant 28", ConstantRate, constant(28.0)),
        plain("early 1-6", EarlyOnly, Early { from: 1.0, until: 6.0, share: 0.45 }),
        plain("peaks 7, 20", TwoPeaked, Two { first: [7.0, 1.2, 0.35], second: [20.0, 1.8, 0.45] }),
        Water { spots: 5, home: 0.65, ..plain("nobody home, constant 10", NobodyHome, constant(10.0)) },
    ]
}
