//! What each screen shows, as one type.

use super::{
    BankView, ChangesView, FilesView, FishView, LeavesView, MatchView, MendView, PhoneView, SetupView,
    SwimView, TackleView, WaitsView, WeightView,
};
use serde::{Deserialize, Serialize};

/// What a screen shows.
#[allow(clippy::large_enum_variant)] // one is made at a time, for a shell that copies it field by field
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "screen", rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Screen {
    /// The running waits and the keys.
    Bank(BankView),
    /// Setting up a session.
    Setup(SetupView),
    /// Spot and rig of the chosen rod.
    Tackle(TackleView),
    /// The swim and where next.
    Swim(SwimView),
    /// What the record shows about waits.
    Waits(WaitsView),
    /// Did a change matter?
    Changes(ChangesView),
    /// Time left, nets, weigh-in.
    Match(MatchView),
    /// A landed fish.
    Fish(FishView),
    /// The number pad for its weight.
    Weight(WeightView),
    /// Feed by hand; drawn like a landed fish.
    Feed(FishView),
    /// The number pad for feed by weight; drawn like that of a fish.
    FeedWeight(WeightView),
    /// Fish that show themselves; drawn like a landed fish.
    Seen(FishView),
    /// Files in and out, backups.
    Files(FilesView),
    /// The evening before.
    Bench(LeavesView),
    /// Sessions and what they say.
    Book(LeavesView),
    /// Conditions in a few taps.
    Conditions(LeavesView),
    /// Cautions.
    Cautions(LeavesView),
    /// Doubtful entries.
    Mend(MendView),
    /// What belongs to the phone.
    Phone(PhoneView),
    /// The card of the day.
    Day(LeavesView),
    /// The three cards of the app's first start.
    Welcome(LeavesView),
    /// What each symbol on the pictures means.
    Legend(LeavesView),
}
