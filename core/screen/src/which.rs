//! The screens there are, and what each shows.

use super::{
    BankView, ChangesView, FilesView, LeavesView, MatchView, MendView, PhoneView, SetupView, SwimView,
    TackleView, WaitsView,
};
use serde::{Deserialize, Serialize};

/// The screens there are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Which {
    /// The running waits and the keys.
    Bank,
    /// Setting up a session.
    Setup,
    /// Spot and rig of the chosen rod.
    Tackle,
    /// The swim and where next; its picture is asked for apart.
    Swim,
    /// What the record says of waiting.
    Waits,
    /// Did a change matter?
    Changes,
    /// Time left, nets, fish, weigh-in.
    Match,
    /// Files in and out, backups.
    Files,
    /// The evening before: hooklengths, spools, the pop-up and its shot, fall times, heights.
    Bench,
    /// Sessions, rates, comparisons, notes, the plan for next time.
    Book,
    /// Air and water, wind, cloud, colour, in a few taps.
    Conditions,
    /// What can hurt an angler, a fish or a licence.
    Cautions,
    /// Doubtful entries.
    Mend,
    /// What belongs to the phone.
    Phone,
}

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
    /// What the record says of waiting.
    Waits(WaitsView),
    /// Did a change matter?
    Changes(ChangesView),
    /// Time left, nets, fish, weigh-in.
    Match(MatchView),
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
}
