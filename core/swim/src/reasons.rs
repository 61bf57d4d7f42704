//! The reasons for a spot and those against it, each with its figures.

use super::input::Band;
use serde::{Deserialize, Serialize};

/// A reason to choose a spot.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Reason {
    /// The chance that any cast of today reached it is below one half.
    NeverDisturbed,
    /// Casts came near it today; the chance that any within the rest target reached it is below one half.
    QuietLately {
        /// The target.
        target_min: f64,
    },
    /// Rested at least as long as the target.
    RestedLongEnough {
        /// Minutes rested.
        minutes: f64,
        /// The target.
        target_min: f64,
    },
    /// Near one of the last bites.
    NearLastBites {
        /// Bites within the memory that are near.
        bites: u32,
        /// Distance to the latest of them, metres.
        metres: f64,
        /// How long ago it came, minutes.
        minutes_ago: f64,
    },
    /// In the column of the latest bite, one band further out.
    BehindLastBite {
        /// How long ago it came, minutes.
        minutes_ago: f64,
    },
    /// Liners on casts meant for it.
    LinersHere {
        /// How many.
        liners: u32,
    },
    /// Liners on casts meant for the cells beside it.
    LinersBeside {
        /// How many.
        liners: u32,
    },
    /// Fish showed near it.
    ShownNear {
        /// How often within the memory.
        times: u32,
        /// Distance to where they did so last, metres.
        metres: f64,
        /// How long ago that was, minutes.
        minutes_ago: f64,
    },
    /// Fed this session. It ranks no cell above another.
    Fed {
        /// How long ago, minutes.
        minutes_ago: f64,
    },
    /// A cast here is worth more than one to a spot not tried, by how long casts waited here.
    FishHere {
        /// Of a hundred such spots, how many have fish.
        of_100: u32,
        /// Bites an hour that a cast here is expected to bring.
        per_hour: f64,
        /// Those of a cast to one of those.
        elsewhere_per_hour: f64,
    },
    /// Not tried, where a cast to a spot that was is worth less.
    NotTried {
        /// Of a hundred such spots, how many have fish.
        of_100: u32,
        /// Bites an hour that a cast here is expected to bring.
        per_hour: f64,
    },
    /// Holds the range at which it is usual to start, while nothing has bitten (common practice, no source).
    UsualStart {
        /// The usual stretch.
        band: Band,
    },
}

/// A reason not to choose a spot.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Against {
    /// A bait is there, on this rod or another.
    BaitOut,
    /// Disturbed less than the rest target ago.
    RestedTooShort {
        /// Minutes rested.
        minutes: f64,
        /// The target.
        target_min: f64,
    },
    /// No single cast within the rest target reached it with probability one half, yet enough came near that one may
    /// well have.
    MaybeDisturbed {
        /// How many of them are expected to have reached it.
        casts: f64,
    },
    /// Casts here waited without a bite, so that one is worth less than on an untried spot.
    NothingHere {
        /// How many in a row.
        casts: u32,
        /// Their minutes.
        minutes: f64,
        /// Of a hundred such spots, how many have fish.
        of_100: u32,
        /// Bites an hour that a cast here is expected to bring.
        per_hour: f64,
    },
    /// Disturbed, so that a cast here is worth less than on a spot not tried: fish may not be back.
    FishAway {
        /// Of a hundred such spots, how many have fish.
        of_100: u32,
        /// Bites an hour that a cast here is expected to bring.
        per_hour: f64,
    },
    /// So near the boundary that the lead may disturb water beyond it.
    NearBoundary {
        /// How near, metres.
        metres: f64,
    },
    /// Kept back: not proposed until released.
    KeptBack {
        /// For how long, minutes.
        minutes: f64,
    },
    /// Out of reach today: not proposed.
    BeyondCast {
        /// Its range, metres.
        range_m: f64,
        /// The longest cast of today, metres.
        castable_m: f64,
    },
    /// Too near a hazard: not proposed.
    NearHazard {
        /// Which.
        name: String,
        /// How near, metres.
        metres: f64,
    },
}
