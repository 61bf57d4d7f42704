//! The keys of the Bank.

use serde::{Deserialize, Serialize};

/// What a key does. Its place on the glass is the layout's business.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Key {
    /// The lead hit the water.
    Cast,
    /// A pull worth striking.
    Bite,
    /// Wound in by choice.
    WoundIn,
    /// A fish swam into the line.
    Liner,
    /// The fish is in the net.
    Landed,
    /// The fish came off.
    Lost,
    /// The strike met nothing.
    Missed,
    /// The fish is in the net, and the bite was not logged.
    LandedLate,
    /// The fish came off, and the bite was not logged.
    LostLate,
    /// The landed fish is of the class used last; its class once that is said.
    FishClass,
    /// The landed fish went back into the water.
    PutBack,
    /// Open the number pad for the weight of the landed fish.
    Weigh,
    /// Open what can be said of the landed fish.
    Fish,
    /// Set the last time back by a minute.
    TimeBack,
    /// Set the last time back by five minutes.
    TimeBackFive,
    /// Take the last entry back.
    Undo,
    /// Bring back what undo took.
    Redo,
    /// Moved the bait without a recast.
    Twitch,
    /// The tip moved without a pull.
    Indication,
    /// The angler goes away from the rods, or is back.
    Away,
    /// Feed the same as the last time; what to feed where nothing was yet.
    Feed,
    /// Choose what to feed.
    FeedOther,
    /// Say how fish show.
    Seen,
    /// A neighbour landed a fish, on the side last said.
    Neighbour,
    /// One landed a fish on another side: the one said before that, or the next in the order of the keys.
    NeighbourSecond,
    /// One landed a fish on the third side.
    NeighbourThird,
    /// Open the tackle of the chosen rod.
    Tackle,
    /// Begin a session.
    Start,
    /// End the session.
    End,
}
