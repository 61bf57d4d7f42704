//! The keys of the Bank.

use serde::{Deserialize, Serialize};

/// What a key does. The layout decides where it is on the screen.
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
    /// Gives the landed fish the class used last; once it has a class, shows that.
    FishClass,
    /// The landed fish went back into the water.
    PutBack,
    /// Open the number pad for the weight of the landed fish.
    Weigh,
    /// Open the details of the landed fish.
    Fish,
    /// Set the last time back by a minute.
    TimeBack,
    /// Set the last time back by five minutes.
    TimeBackFive,
    /// Undo the last entry.
    Undo,
    /// Redo what was undone.
    Redo,
    /// The bait was moved without a recast.
    Twitch,
    /// The tip moved without a pull.
    Indication,
    /// The angler goes away from the rods, or is back.
    Away,
    /// Feed the same as the last time; before the first feed, choose what to feed.
    Feed,
    /// Choose what to feed.
    FeedOther,
    /// Log fish that show themselves.
    Seen,
    /// A neighbour to the left landed a fish.
    NeighbourLeft,
    /// A neighbour to the right landed one.
    NeighbourRight,
    /// Somebody on the far bank landed one.
    NeighbourAcross,
    /// Open the tackle of the chosen rod.
    Tackle,
    /// Open the swim: where to cast next.
    Swim,
    /// Begin a session.
    Start,
    /// End the session.
    End,
}
