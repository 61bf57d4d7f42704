//! Ops, moments, clocks, canonical bytes, and what is in force after undo and corrections.
//!
//! The log is a set of [`Op`]s. An op is never changed and never deleted: corrections and undo are new ops
//! that point at old ones. Two logs are merged by the union of their ops. The meaning of a log is a pure
//! function of that set, read in the order of [`Op::order`].
// The code that uniffi generates is unsafe; builds without that feature forbid it for everything written by
// hand.
#![cfg_attr(not(feature = "uniffi"), forbid(unsafe_code))]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp))]

/// The type that uniffi's derives refer to. It is declared by hand because uniffi's scaffolding would also
/// export a runtime, which only the crate `bindings` needs.
#[cfg(feature = "uniffi")]
#[doc(hidden)]
pub struct UniFfiTag;
#[cfg(feature = "uniffi")]
pub use uuid::Uuid;
#[cfg(feature = "uniffi")]
uniffi::custom_type!(Uuid, String, {
    remote,
    lower: |id| id.to_string(),
    try_lift: |text| Ok(Uuid::parse_str(&text)?),
});

mod began;
mod canonical;
mod canonical_form;
mod canonical_op;
mod club;
mod effect;
mod feed;
mod fish;
mod history;
mod hlc;
mod kit;
mod match_day;
mod moment;
mod neighbour;
mod op;
mod payload;
mod plan;
mod setup;
mod setup_amended;
mod tackle;
#[cfg(test)]
mod testing;
mod wire;

pub use began::Began;
pub use canonical::{CanonicalError, canonical_bytes, sha256_hex};
pub use canonical_form::{JSON_MAX, MAX_DEPTH};
pub use canonical_op::{op_from_bytes, op_from_canonical};
pub use club::{ClubDays, ClubStart, ClubWeights};
pub use effect::{Effective, Said, effective, sorted, voided};
pub use feed::{FeedAmount, FeedKind, FeedMeasure, FeedSaid, FishSign, WaterPlace};
pub use fish::{FishWeight, WeightUnit};
pub use history::{Entry, History, history};
pub use hlc::{Hlc, HlcError, HybridClock, TAKEN_UNTIL_MS};
pub use kit::{LineMaterial, Measured, ShotMetal, ShotWeight, is_kit, kit_of};
pub use match_day::{ClassGuess, FishSaid, MatchSetup};
pub use moment::{CLOCKS_CHANGE_MIN, Moment, Span, Yardstick, clocks_forward_min, local_ms};
pub use neighbour::{OtherPeg, Side};
pub use op::{Op, OpOrder};
pub use payload::{EndSaid, Payload};
pub use plan::{MoveAt, PlanKey, PlanLine, PlanSpot};
pub use setup::{RodNumber, SessionSetup, SwimSetup};
pub use tackle::{Factor, LeadMaterial, Reach, Rig, Spot};
pub use wire::{
    Allowances, Conditions, Counting, FeatureKind, Hooklength, MatchRules, NetHolds, NetRule, OverLimit,
    WaterColour, Weight, WindFrom, WindStrength,
};
