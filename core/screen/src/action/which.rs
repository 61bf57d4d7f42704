//! The screens there are.

use serde::{Deserialize, Serialize};

/// The screens there are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, strum::VariantArray)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Which {
    /// The running waits and the keys.
    Bank,
    /// Setting up a session.
    Setup,
    /// Spot and rig of the chosen rod.
    Tackle,
    /// The swim and where next; its picture is requested separately.
    Swim,
    /// What the record shows about waits.
    Waits,
    /// Did a change matter?
    Changes,
    /// Time left, nets, weigh-in.
    Match,
    /// A landed fish: its class, its net, whether it went back.
    Fish,
    /// The number pad for its weight.
    Weight,
    /// What is fed by hand, in measures.
    Feed,
    /// The number pad for feed by weight.
    FeedWeight,
    /// Fish that show themselves.
    Seen,
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
    /// The card of the day: what it brought and what to try next.
    Day,
    /// The three cards of the app's first start.
    Welcome,
    /// What each symbol on the pictures means.
    Legend,
}

impl Which {
    /// All of them.
    pub const ALL: &'static [Self] = <Self as strum::VariantArray>::VARIANTS;
}
