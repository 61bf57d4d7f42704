//! The ways of feeding that have a key, and the assumed weight of a measure of each.

use restwater_log::{FeedKind, FeedMeasure};

/// A way of feeding that has a key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FeedWay {
    /// Its name in messages and tests.
    pub tag: &'static str,
    /// How it goes in.
    pub what: FeedKind,
    /// The measure it is counted in.
    pub measure: FeedMeasure,
    /// The assumed weight of one in mg, until the angler changes it (common practice, no source).
    pub guess_mg: u32,
}

const fn way(tag: &'static str, what: FeedKind, measure: FeedMeasure, grams: u32) -> FeedWay {
    FeedWay { tag, what, measure, guess_mg: grams * 1_000 }
}

/// The ways of feeding, in the order they are offered before any was used.
pub const FEED_WAYS: [FeedWay; 7] = [
    way("handful", FeedKind::Loose, FeedMeasure::Handful, 30),
    way("pinch", FeedKind::Loose, FeedMeasure::Pinch, 3),
    way("cup", FeedKind::Loose, FeedMeasure::Cup, 150),
    way("ball", FeedKind::Ball, FeedMeasure::Ball, 80),
    way("bag", FeedKind::Bag, FeedMeasure::Bag, 25),
    way("feeder", FeedKind::Feeder, FeedMeasure::Fill, 30),
    way("spod", FeedKind::Spod, FeedMeasure::Fill, 150),
];

/// The index of a way in [`FEED_WAYS`].
pub fn feed_way(what: FeedKind, measure: FeedMeasure) -> Option<usize> {
    FEED_WAYS.iter().position(|way| way.what == what && way.measure == measure)
}
