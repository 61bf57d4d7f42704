//! What an op says: one variant for each thing an angler can log.

mod kind;

use super::feed::{FeedSaid, FishSign, WaterPlace};
use super::fish::FishWeight;
use super::kit::{Measured, ShotWeight};
use super::match_day::{FishSaid, MatchSetup};
use super::neighbour::{OtherPeg, Side};
use super::plan::{PlanKey, PlanLine};
use super::setup::{RodNumber, SessionSetup, SwimSetup};
use super::tackle::{Factor, Rig, Spot};
use super::wire::{Allowances, Conditions, FeatureKind, Hooklength, Weight};
use serde::{Deserialize, Serialize};
use serde_json::Value;
use strum::{IntoStaticStr, VariantNames};
use uuid::Uuid;

/// What ended a cast, as remembered afterwards.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum EndSaid {
    /// Wound in by choice.
    WoundIn,
    /// A bite, and the fish in the net.
    Landed,
    /// A bite, and the fish came off.
    Lost,
    /// A bite that was missed.
    Missed,
}

/// What an op says. In an op's JSON its kind and what it holds stand side by side, as `kind` and `payload`
/// ([`super::op_from_bytes`], [`super::canonical_bytes`]).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, IntoStaticStr, VariantNames)]
#[serde(rename_all = "snake_case")]
#[strum(serialize_all = "snake_case")]
pub enum Payload {
    /// A session begins.
    SessionStarted(SessionSetup),
    /// It is over; what is still out is wound in.
    SessionEnded,
    /// The lead hit the water.
    Cast {
        /// Which rod.
        rod: RodNumber,
    },
    /// A pull worth striking.
    Bite {
        /// Which rod.
        rod: RodNumber,
    },
    /// The fish is in the net.
    Landed {
        /// Which rod.
        rod: RodNumber,
        /// What it weighs, where that is known.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        fish: Option<FishWeight>,
    },
    /// A hooked fish came off.
    Lost {
        /// Which rod.
        rod: RodNumber,
    },
    /// The bite was missed.
    Missed {
        /// Which rod.
        rod: RodNumber,
    },
    /// A fish swam into the line.
    Liner {
        /// Which rod.
        rod: RodNumber,
    },
    /// The tip moved without a pull.
    Indication {
        /// Which rod.
        rod: RodNumber,
    },
    /// Wound in by the angler's own choice.
    WoundIn {
        /// Which rod.
        rod: RodNumber,
    },
    /// The bait was moved without a recast.
    Twitch {
        /// Which rod.
        rod: RodNumber,
    },
    /// The angler goes away from the rods: nothing that counts fishing runs until it is said that the angler is back, a bait
    /// is cast, or the session is over.
    Away,
    /// The angler is back.
    Returned,
    /// Feed was put in by hand. What a feeder on the line puts in with each cast follows from the casts.
    Fed(FeedSaid),
    /// There is a feeder on the line from the next cast on, or a plain lead again.
    FeederSet {
        /// Which rod.
        rod: RodNumber,
        /// What one fill is taken to weigh, in mg; none for a plain lead.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        fill_mg: Option<u32>,
    },
    /// Fish showed.
    FishShown {
        /// How.
        sign: FishSign,
        /// Where.
        place: WaterPlace,
    },
    /// A neighbour was seen to land a fish.
    NeighbourCaught {
        /// On which side of the angler's own peg.
        side: Side,
    },
    /// What is on the line from the next cast on.
    RigSet {
        /// Which rod.
        rod: RodNumber,
        /// The whole rig.
        rig: Rig,
    },
    /// Where the next casts of a rod go.
    SpotSet {
        /// Which rod.
        rod: RodNumber,
        /// The spot.
        spot: Spot,
    },
    /// A note in the angler's words.
    Noted {
        /// The note.
        text: String,
    },
    /// Amends the time of another op: this many seconds before it was tapped, in all.
    TimeSet {
        /// Seconds back from the time as tapped.
        back_s: u32,
    },
    /// Amends a cast: what ended it, as remembered afterwards.
    CastEndSet {
        /// What ended it.
        end: EndSaid,
        /// The bite, or else the end, this many seconds after the splash; as it was where that is not said.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        after_s: Option<u32>,
    },
    /// A cast that was forgotten, told by the cast of the same rod before it.
    CastAdded {
        /// The op of that cast.
        after: Uuid,
        /// Seconds from the end of that cast to this splash.
        lag_s: u32,
        /// Seconds from the splash to the bite or the end.
        wait_s: u32,
        /// What ended it.
        end: EndSaid,
    },
    /// Amends an entry: it is right as it stands.
    Confirmed,
    /// UNDO was pressed: these ops no longer count. Undoing an undo is REDO. (Versions before the kinds below existed wrote it
    /// for a removal and for an import that was taken back, too; those keep what they meant then.)
    Undone {
        /// The ops that are undone together.
        targets: Vec<Uuid>,
    },
    /// The angler took these away: a mark, a feature, a hazard. An entry like any other: UNDO brings them back.
    Removed {
        /// The ops that no longer count.
        targets: Vec<Uuid>,
    },
    /// A whole import was taken back, by its own key and not by UNDO.
    ImportUndone {
        /// The import.
        import: Uuid,
        /// The ops that it brought, as many as one op may name.
        targets: Vec<Uuid>,
    },
    /// It was brought back by its own key.
    ImportRedone {
        /// The import.
        import: Uuid,
        /// The ops that took it back.
        targets: Vec<Uuid>,
    },
    /// Something to aim at on the far bank.
    MarkSet {
        /// Its name.
        name: String,
        /// Degrees clockwise from straight out, in hundredths.
        bearing_cdeg: i32,
    },
    /// Water the angler has decided to rest.
    KeptBack {
        /// From this bearing, in hundredths of a degree,
        from_cdeg: i32,
        /// clockwise to this one.
        to_cdeg: i32,
        /// From this range in cm
        from_cm: u32,
        /// out to this one.
        to_cm: u32,
    },
    /// Kept-back water may be fished again.
    Released {
        /// The op that kept it back.
        kept: Uuid,
    },
    /// The swim's bounds, bands and rest target.
    SwimSet(SwimSetup),
    /// The outline of the swim, where it is known better than by the pegs beside it.
    OutlineSet {
        /// Corners in order in the peg frame, in cm: right of straight out, then straight out. None: taken away again.
        corners_cm: Vec<(i32, i32)>,
    },
    /// Something on the bottom or seen on the water.
    FeatureSet {
        /// What kind.
        feature: FeatureKind,
        /// Its name; may be empty.
        name: String,
        /// Degrees clockwise from straight out, in hundredths.
        bearing_cdeg: i32,
        /// Range in cm.
        range_cm: u32,
    },
    /// Something to keep clear of: a snag, a line overhead.
    HazardSet {
        /// Its name; may be empty.
        name: String,
        /// Degrees clockwise from straight out, in hundredths.
        bearing_cdeg: i32,
        /// Range in cm.
        range_cm: u32,
        /// How far to keep clear of it, in cm.
        clear_cm: u32,
    },
    /// Where the peg lies on the earth (WGS 84). Never needed, and left out of exports unless asked for.
    PegPlaced {
        /// Latitude in 1e-7 degrees.
        lat_e7: i64,
        /// Longitude in 1e-7 degrees.
        lon_e7: i64,
        /// Degrees clockwise from true north of straight out, in hundredths.
        straight_out_cdeg: i32,
    },
    /// A test of two values of one thing begins: cast in turn, A B B A, on one spot.
    AlternationStarted {
        /// Which rod.
        rod: RodNumber,
        /// What is alternated.
        factor: Factor,
        /// Value A, spelled as the rows of casts spell it.
        a: String,
        /// Value B.
        b: String,
        /// Whether the first cast is with B.
        b_first: bool,
        /// Casts planned, a multiple of four.
        casts: u16,
    },
    /// It is over.
    AlternationEnded,
    /// A match and its rules.
    MatchSet(MatchSetup),
    /// It is no match after all.
    MatchOff,
    /// What a landed fish weighs, which net it went into, or that it was put back.
    FishSet(FishSaid),
    /// What the scales showed for a net at the weigh-in.
    NetWeighed {
        /// Name of the net.
        net: String,
        /// What they showed.
        shown: Weight,
    },
    /// What another angler's nets weigh in a match.
    OtherNetTold {
        /// Whose.
        peg: OtherPeg,
        /// How much.
        shown: Weight,
        /// Whether it is a guess by eye; it was called at the scales otherwise.
        guessed: bool,
    },
    /// How far the section of the match reaches.
    SectionSet {
        /// Pegs to the left of the angler's own.
        left: u8,
        /// Pegs to the right.
        right: u8,
    },
    /// What the match says of fish that die or go back, in the organiser's words; empty where nothing is said any more.
    MatchRuleSaid {
        /// The rule.
        text: String,
    },
    /// Air, water, wind, cloud and colour as they are now; what was known before stands in it again.
    ConditionsSet(Conditions),
    /// The hooklength of the rod's last cast was lost with it.
    HooklengthLost {
        /// Which rod.
        rod: RodNumber,
    },
    /// What the angler means to do next time.
    PlannedNext {
        /// The plan.
        text: String,
    },
    /// So many were tied. This and what follows down to the cautions belong to a kit ([`super::kit_of`]), not to a day.
    HooklengthsTied {
        /// Which.
        hooklength: Hooklength,
        /// How many.
        count: u16,
    },
    /// The wallet was counted: it holds this many of this kind.
    HooklengthsCounted {
        /// Which.
        hooklength: Hooklength,
        /// How many.
        count: u16,
    },
    /// So many were thrown or given away, or lost on a cast that is not in the log.
    HooklengthsTakenOut {
        /// Which.
        hooklength: Hooklength,
        /// How many.
        count: u16,
    },
    /// So many were cut down.
    HooklengthsCutDown {
        /// From which.
        from: Hooklength,
        /// To this length, in tenths of a millimetre.
        #[serde(rename = "to")]
        to_tenth_mm: u32,
        /// How many.
        count: u16,
    },
    /// So many of this kind are to be carried; 0 for none.
    HooklengthsWanted {
        /// Which.
        hooklength: Hooklength,
        /// How many.
        count: u16,
    },
    /// A spool of hooklength line.
    SpoolAdded {
        /// Its diameter in thousandths of a millimetre.
        diameter_um: u16,
        /// Line on it, in tenths of a millimetre.
        #[serde(rename = "length")]
        length_tenth_mm: u32,
    },
    /// Line left on a spool; none takes it off the bench.
    SpoolLeft {
        /// The op that added it.
        spool: Uuid,
        /// What is left, in tenths of a millimetre.
        #[serde(rename = "left")]
        left_tenth_mm: u32,
    },
    /// Line that a tie uses beyond its finished length.
    AllowancesSet(Allowances),
    /// A pop-up as measured.
    PopUpSet(Measured),
    /// What a size of shot weighs, or that it is not in the box.
    ShotSet(ShotWeight),
    /// A fall of the lead timed at a plumbed depth.
    FallTimed {
        /// Depth in cm.
        depth_cm: u32,
        /// Splash to bottom in milliseconds.
        fall_ms: u32,
    },
    /// The heights of the ladder.
    LadderSet {
        /// Counterweight to hook, in tenths of a millimetre.
        #[serde(rename = "heights")]
        heights_tenth_mm: Vec<u32>,
    },
    /// Cautions seen and put away at a peg.
    CautionsSeen {
        /// Water and peg.
        peg: String,
        /// Their ids.
        cautions: Vec<String>,
    },
    /// A line of the plan for a day; it stands in a kit, and replaces the same line of that day.
    PlanSet {
        /// The day, counted from 1 January 1970 in local time.
        day: i32,
        /// The line.
        line: PlanLine,
    },
    /// A line of the plan for a day is taken out; it stands in a kit.
    PlanCleared {
        /// The day, counted in the same way.
        day: i32,
        /// Which line.
        line: PlanKey,
    },
    /// The session goes by this plan, as it stood then: what is written at home afterwards changes nothing here.
    PlanTaken {
        /// The day it was written for.
        day: i32,
        /// Its lines.
        lines: Vec<PlanLine>,
    },
    /// The session goes by no plan.
    PlanDropped,
    /// Written by a newer version: kept and passed on unread.
    #[serde(skip)]
    Unknown {
        /// Its kind, as written.
        kind: String,
        /// Its payload, as written.
        payload: Option<Value>,
    },
}
