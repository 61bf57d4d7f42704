//! The Bank screen: the running waits, the wait strip, what they mean in words, and the keys.

use super::KeyView;
use serde::{Deserialize, Serialize};

/// What the chosen rod is doing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BankState {
    /// No session is open.
    NoSession,
    /// Nothing is out: the clock counts the turn-round.
    Ready,
    /// A bait is out: the clock counts the wait.
    Out,
    /// A fish is on: nothing has to be tapped.
    FishOn,
}

/// The line at the top.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct HeaderView {
    /// "Peg 22", or the water, or nothing entered.
    pub place: String,
    /// Time of day, "12:46".
    pub clock: String,
    /// Time left in a match, or how long the session has run.
    pub length: String,
}

/// One rod's clock.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct RodView {
    /// Which rod, from 1.
    pub rod: u8,
    /// "Rod 1".
    pub name: String,
    /// What it is doing.
    pub state: BankState,
    /// The clock in digits, "21:40" or "1:02:10"; empty before the first cast.
    pub digits: String,
    /// What the digits count, "out since 12:24".
    pub since: String,
    /// The same for a screen reader, to the minute.
    pub spoken: String,
    /// Whether the keys act on it.
    pub chosen: bool,
    /// Milliseconds the clock shows, for a shell that ticks between calls.
    pub elapsed_ms: i64,
    /// Marked where the start is approximate or the phone's clock was moved.
    pub approximate: bool,
}

/// The shape of a mark on the strip.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StripMarkShape {
    /// A bite came after this wait: a diamond.
    Bite,
    /// The wait ended without one: a stroke.
    NoBite,
    /// A liner on the running cast: a triangle.
    Liner,
}

/// One mark on the strip.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct StripMark {
    /// Where, in minutes from the splash.
    pub minute: f64,
    /// Which of the marks that share a place, from 0, so that they can be stacked.
    pub stack: u32,
    /// Its shape.
    pub shape: StripMarkShape,
}

/// The wait strip: a tape of minutes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct StripView {
    /// Minutes from end to end; a multiple of five.
    pub length_min: f64,
    /// A figure is printed each so many minutes.
    pub figure_every_min: u32,
    /// Minutes of the running wait; none where nothing is out.
    pub elapsed_min: Option<f64>,
    /// Hold until this minute.
    pub hold_min: Option<f64>,
    /// Recast by this minute.
    pub recast_min: Option<f64>,
    /// Half of the bites fall between these minutes.
    pub window_min: Option<Vec<f64>>,
    /// Nothing is known beyond this minute.
    pub known_to_min: Option<f64>,
    /// This session's waits on the rods that count.
    pub marks: Vec<StripMark>,
    /// The strip in words, for a screen reader.
    pub spoken: String,
}

/// How the advice is to be shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum AdviceTone {
    /// Nothing can be said yet.
    Unknown,
    /// Keep waiting.
    Hold,
    /// Inside the near-best band.
    Band,
    /// Past it.
    Past,
    /// There is nothing to advise now.
    Quiet,
}

/// What the record says, in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct AdviceView {
    /// "Hold until 22. Recast by 27."
    pub headline: String,
    /// "3 bites in 8 casts; early to say."
    pub detail: String,
    /// Further sentences, most telling first.
    pub more: Vec<String>,
    /// How it is to be shown.
    pub tone: AdviceTone,
}

/// The whole Bank screen.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct BankView {
    /// What the chosen rod is doing.
    pub state: BankState,
    /// The line at the top.
    pub header: HeaderView,
    /// The rods' clocks, in order.
    pub rods: Vec<RodView>,
    /// The wait strip.
    pub strip: StripView,
    /// What it means.
    pub advice: AdviceView,
    /// Where the cast lies or the next one goes.
    pub spot: String,
    /// What is on the line.
    pub rig: String,
    /// The keys on the pad, in reading order: the small ones, the two in the middle, the wide one.
    pub keys: Vec<KeyView>,
    /// The last taps in words, latest first, for whoever missed the moment.
    pub latest: Vec<String>,
}
