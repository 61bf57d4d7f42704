//! The payload of an op: one variant for each thing that an angler can log.

mod kind;

use super::club::ClubStart;
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

/// The content of an op. In an op's JSON its kind and its data are side by side, as `kind` and `payload`
/// ([`super::op_from_bytes`], [`super::canonical_bytes`]).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, IntoStaticStr, VariantNames)]
#[serde(rename_all = "snake_case")]
#[strum(serialize_all = "snake_case")]
pub enum Payload {
    /// A session begins.
    SessionStarted(SessionSetup),
    /// The session ends; casts that are still out are wound in.
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
        /// What it weighs, if that is known.
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
    /// The angler leaves the rods: no fishing time is counted until the angler is back, a bait is cast, or
    /// the session ends.
    Away,
    /// The angler is back.
    Returned,
    /// Feed was put in by hand. Feed from a feeder on the line is computed from the casts.
    Fed(FeedSaid),
    /// From the next cast on there is a feeder on the line, or a plain lead again.
    FeederSet {
        /// Which rod.
        rod: RodNumber,
        /// The estimated weight of one fill, in mg; `None` for a plain lead.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        fill_mg: Option<u32>,
    },
    /// Fish showed themselves.
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
    /// The rig on the line from the next cast on.
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
    /// Amends the time of another op. The seconds are counted from when that op was tapped, not added to an
    /// earlier amendment.
    TimeSet {
        /// Seconds back from the time as tapped.
        back_s: u32,
    },
    /// Amends a cast: what ended it, as remembered afterwards.
    CastEndSet {
        /// What ended it.
        end: EndSaid,
        /// Seconds from the splash to the bite, or without a bite to the end; unchanged if `None`.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        after_s: Option<u32>,
    },
    /// A forgotten cast, placed relative to the previous cast of the same rod.
    CastAdded {
        /// The op of the previous cast.
        after: Uuid,
        /// Seconds from the end of that cast to this splash.
        lag_s: u32,
        /// Seconds from the splash to the bite or the end.
        wait_s: u32,
        /// What ended it.
        end: EndSaid,
    },
    /// Confirms that the amended entry is right.
    Confirmed,
    /// UNDO was pressed: these ops no longer count. Undoing an undo is REDO. (Versions before the kinds below
    /// existed also wrote it for removals and undone imports; such entries keep that meaning.)
    Undone {
        /// The ops that are undone together.
        targets: Vec<Uuid>,
    },
    /// The angler removed these: a mark, a feature, a hazard. This is an ordinary entry, so UNDO restores
    /// them.
    Removed {
        /// The ops that no longer count.
        targets: Vec<Uuid>,
    },
    /// A whole import was undone, by its own key and not by UNDO.
    ImportUndone {
        /// The import.
        import: Uuid,
        /// The ops that it brought; if there are more than one op may name, others name the rest.
        targets: Vec<Uuid>,
    },
    /// An undone import was redone, by its own key.
    ImportRedone {
        /// The import.
        import: Uuid,
        /// The ops that undid it.
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
        /// Start bearing, in hundredths of a degree.
        from_cdeg: i32,
        /// End bearing, clockwise from the start, in hundredths of a degree.
        to_cdeg: i32,
        /// Nearest range in cm.
        from_cm: u32,
        /// Farthest range in cm.
        to_cm: u32,
    },
    /// Kept-back water may be fished again.
    Released {
        /// The op that kept it back.
        kept: Uuid,
    },
    /// The swim's bounds, bands and rest target.
    SwimSet(SwimSetup),
    /// The outline of the swim, if it is known better than from the neighbouring pegs.
    OutlineSet {
        /// Corners in order in the peg frame, in cm: first the distance to the right, then the distance
        /// straight out. Empty if the outline was removed again.
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
    /// The geographic position of the peg (WGS 84). It is never required, and left out of exports unless the
    /// angler includes it.
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
    /// The test of two values ends.
    AlternationEnded,
    /// A match and its rules.
    MatchSet(MatchSetup),
    /// The match is called off.
    MatchOff,
    /// The weight of a landed fish, the net it went into, or that it was put back.
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
        /// Whether it is a guess by eye; otherwise it was called at the scales.
        guessed: bool,
    },
    /// How far the section of the match reaches.
    SectionSet {
        /// Pegs to the left of the angler's own.
        left: u8,
        /// Pegs to the right.
        right: u8,
    },
    /// The match rule on fish that die or go back, in the organiser's words; empty if it was deleted.
    MatchRuleSaid {
        /// The rule.
        text: String,
    },
    /// Air, water, wind, cloud and colour as they are now, including everything that was known before and
    /// still holds.
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
    /// This many were tied. This kind and the following ones, down to the cautions, belong to a kit
    /// ([`super::kit_of`]), not to a day.
    HooklengthsTied {
        /// Which.
        hooklength: Hooklength,
        /// How many.
        count: u16,
    },
    /// The wallet was counted: there are this many of this kind in it.
    HooklengthsCounted {
        /// Which.
        hooklength: Hooklength,
        /// How many.
        count: u16,
    },
    /// This many were thrown or given away, or lost on a cast that is not in the log.
    HooklengthsTakenOut {
        /// Which.
        hooklength: Hooklength,
        /// How many.
        count: u16,
    },
    /// This many were cut down.
    HooklengthsCutDown {
        /// From which.
        from: Hooklength,
        /// To this length, in tenths of a millimetre.
        #[serde(rename = "to")]
        to_tenth_mm: u32,
        /// How many.
        count: u16,
    },
    /// How many of this kind the angler wants to carry; 0 for none.
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
    /// Line left on a spool; 0 removes the spool from the bench.
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
    /// The weight of a size of shot, or that it is not in the box.
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
    /// Cautions that were seen and dismissed at a peg.
    CautionsSeen {
        /// Water and peg.
        peg: String,
        /// Their ids.
        cautions: Vec<String>,
    },
    /// A line of the plan for a day. It belongs to a kit, and replaces the same line of that day.
    PlanSet {
        /// The day, counted from 1 January 1970 in local time.
        day: i32,
        /// The line.
        line: PlanLine,
    },
    /// A line of the plan for a day is removed. This belongs to a kit.
    PlanCleared {
        /// The day, counted in the same way.
        day: i32,
        /// Which line.
        line: PlanKey,
    },
    /// The session follows this copy of the plan, so that changes made at home afterwards have no effect
    /// here.
    PlanTaken {
        /// The day it was written for.
        day: i32,
        /// Its lines.
        lines: Vec<PlanLine>,
    },
    /// The session follows no plan any more.
    PlanDropped,
    /// Advice begins with what a club's anglers have found. This and the next kind belong to the angler's own kit.
    ClubTaken(ClubStart),
    /// Advice begins as usual again.
    ClubLeft,
    /// Written by a newer version: kept and passed on unread.
    #[serde(skip)]
    Unknown {
        /// Its kind, as written.
        kind: String,
        /// Its payload, as written.
        payload: Option<Value>,
    },
}
