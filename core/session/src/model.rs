//! The model of a session, as folded from the log.

use super::fed::{Fed, FishShown, NeighbourFish};
use super::match_record::Section;
use super::match_record::{MatchDay, NetScales, OtherNet, SaidFish};
use super::{Alternation, Cast};
use super::{Stamp, TimeLine};
use restwater_log::{OpOrder, Payload, PlanLine, Rig, RodNumber, SessionSetup, Spot, SwimSetup};
use restwater_sky::conditions::Conditions;
use restwater_swim::FeatureKind;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// What a rod is doing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "state", rename_all = "snake_case")]
pub enum RodState {
    /// Nothing is out.
    Ready {
        /// When the last cast ended, if there was one.
        since: Option<Stamp>,
    },
    /// A bait is out: this cast.
    Out {
        /// Index into the session's casts.
        cast: usize,
    },
    /// A fish is on.
    FishOn {
        /// Index into the session's casts.
        cast: usize,
    },
}

/// One rod: its state and what its next cast carries over.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Rod {
    /// From 1.
    pub number: RodNumber,
    /// What it is doing.
    pub state: RodState,
    /// What is on the line.
    pub rig: Rig,
    /// Where the next cast goes.
    pub spot: Option<Spot>,
    /// The fill of the feeder on the line, in mg; `None` for a plain lead.
    pub fill_mg: Option<u32>,
}

/// An aiming mark.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Mark {
    /// The op that set it.
    pub id: Uuid,
    /// Its name.
    pub name: String,
    /// Degrees clockwise from straight out, in hundredths.
    pub bearing_cdeg: i32,
}

/// Water kept back.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct KeptBack {
    /// The op that kept it back.
    pub id: Uuid,
    /// Since when.
    pub since: Stamp,
    /// Bearings in hundredths of a degree, from one clockwise to the other.
    pub bearing_cdeg: (i32, i32),
    /// Ranges in cm.
    pub range_cm: (u32, u32),
    /// When it was released again.
    pub released: Option<Stamp>,
}

/// Something on the bottom, seen on the water, or to keep clear of.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Landmark {
    /// The op that set it.
    pub id: Uuid,
    /// Its name; may be empty.
    pub name: String,
    /// What it is.
    pub what: LandmarkKind,
    /// Degrees clockwise from straight out, in hundredths.
    pub bearing_cdeg: i32,
    /// Range in cm.
    pub range_cm: u32,
}

/// What a landmark is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum LandmarkKind {
    /// A feature of this kind.
    Feature(FeatureKind),
    /// A hazard, with a distance to keep from it.
    Hazard {
        /// Distance to keep, in cm.
        clear_cm: u32,
    },
}

/// The geographic position of the peg.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct PegPlace {
    /// Latitude in 1e-7 degrees.
    pub lat_e7: i64,
    /// Longitude in 1e-7 degrees.
    pub lon_e7: i64,
    /// The direction straight out, in hundredths of a degree clockwise from true north.
    pub straight_out_cdeg: i32,
}

/// A note.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Note {
    /// The op.
    pub op: Uuid,
    /// When.
    pub at: Stamp,
    /// What.
    pub text: String,
}

/// Conditions as they were logged.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ConditionsAt {
    /// The op.
    pub op: Uuid,
    /// When.
    pub at: Stamp,
    /// What was known then.
    pub conditions: Conditions,
}

/// A hooklength lost with its cast, as far as the log shows which one it was.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Loss {
    /// Position in the log of the op that logged the loss.
    pub order: OpOrder,
    /// Its length in mm, if entered for the rig.
    pub length_mm: Option<u32>,
    /// Its hook size, if entered for the rig.
    pub hook_size: Option<u8>,
}

/// What makes an entry doubtful.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DoubtKind {
    /// The end of the cast was not seen.
    EndNotSeen,
    /// There was a bite whose outcome was not logged.
    OutcomeNotSeen,
    /// Logged for a rod with nothing out.
    NothingOut,
    /// An outcome with no bite before it.
    NoFishOn,
    /// A second bite while a fish was on.
    SecondBite,
    /// It is about a fish that has no landing in force.
    NoLanding,
    /// Before the session began or after it ended.
    OutsideSession,
    /// It ends before it starts.
    BackInTime,
    /// The phone's clock was moved meanwhile, so the duration is uncertain.
    ClockMoved,
    /// The time is approximate.
    Approximate,
    /// Nothing was logged for more than two cycles before this cast: one may have been forgotten.
    LongGap,
    /// Its bait still counted as out when the session ended, more than two cycles after anything else was logged about it (two
    /// hours where the cycles are not known): its wait is not known.
    StillOut,
    /// END was tapped long after everything else, with every rod in.
    LateEnd,
    /// The angler came back without a break before it.
    NoBreak,
    /// Written by a newer version and not read.
    Newer,
}

/// A doubtful entry, to be corrected or confirmed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Doubt {
    /// The op it is about.
    pub op: Uuid,
    /// Why.
    pub kind: DoubtKind,
}

/// One break.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Break {
    /// The op that began it.
    pub op: Uuid,
    /// Since when.
    pub from: Stamp,
    /// Until when: the angler was back, a bait was cast, or the session ended. `None` during the break.
    pub to: Option<Stamp>,
}

/// The plan that a session follows, as it was when the session adopted it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct TakenPlan {
    /// The op that adopted it.
    pub op: Uuid,
    /// The day it was written for, counted from 1 January 1970.
    pub day: i32,
    /// Its lines, each once.
    pub lines: Vec<PlanLine>,
}

/// A whole session.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Session {
    /// Its id.
    pub id: Uuid,
    /// How it was set up.
    pub setup: SessionSetup,
    /// The time line of its entries.
    pub time_line: TimeLine,
    /// When it began, or `None` if only later ops are here.
    pub started: Option<Stamp>,
    /// When it ended.
    pub ended: Option<Stamp>,
    /// The rods, in order.
    pub rods: Vec<Rod>,
    /// The casts in the order of the log; a cast added afterwards is inserted where it was made.
    pub casts: Vec<Cast>,
    /// Aiming marks.
    pub marks: Vec<Mark>,
    /// Water kept back, released or not.
    pub kept_back: Vec<KeptBack>,
    /// Bounds, bands and rest target of the swim.
    pub swim: SwimSetup,
    /// Outline of the swim in the peg frame, corners in cm; empty if the neighbouring pegs define the swim
    /// well enough.
    #[serde(default)]
    pub outline_cm: Vec<(i32, i32)>,
    /// Features and hazards.
    pub landmarks: Vec<Landmark>,
    /// The position of the peg, if entered.
    pub peg_place: Option<PegPlace>,
    /// The running alternating test, if any.
    pub alternation: Option<Alternation>,
    /// The match, if it is one.
    pub match_day: Option<MatchDay>,
    /// The details of landed fish, each fish once.
    pub fish: Vec<SaidFish>,
    /// What the scales showed at the weigh-in, each net once.
    pub scales: Vec<NetScales>,
    /// Nets of other anglers, each peg once.
    pub others: Vec<OtherNet>,
    /// The extent of the section, if entered.
    pub section: Option<Section>,
    /// The match rule on fish that die or go back; empty if none was entered.
    pub match_rule: String,
    /// Breaks, in the order they were logged.
    pub breaks: Vec<Break>,
    /// Feed put in by hand, in the order it was logged.
    pub fed: Vec<Fed>,
    /// Fish that showed themselves, in the order they were logged.
    pub shown: Vec<FishShown>,
    /// Fish that neighbours were seen to land, in the order they were logged.
    pub neighbours: Vec<NeighbourFish>,
    /// Notes.
    pub notes: Vec<Note>,
    /// Conditions in the order they were logged; the last are in force.
    pub conditions: Vec<ConditionsAt>,
    /// Hooklengths lost with their casts.
    pub losses: Vec<Loss>,
    /// What the angler means to do next time.
    pub next_time: Vec<Note>,
    /// The plan that it follows, if any.
    #[serde(default)]
    pub plan: Option<TakenPlan>,
    /// Doubtful entries.
    pub doubts: Vec<Doubt>,
    /// When anything but casts was last logged at the water, up to END.
    pub(super) there_until: Option<Stamp>,
    /// The last timed entry in force, which is the one that setting the time back changes.
    pub last_timed: Option<LastTimed>,
}

/// The last timed entry of a session.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LastTimed {
    /// The op.
    pub op: Uuid,
    /// Its rod, if it has one.
    pub rod: Option<RodNumber>,
    /// When it happened, as corrected.
    pub at: Stamp,
    /// When it was tapped.
    pub tapped: Stamp,
    /// What it says.
    pub payload: Payload,
    /// The previous entry of the same rod: it can't be set back beyond this.
    pub not_before: Option<Stamp>,
}

impl Session {
    /// Whether it is still running.
    pub fn is_open(&self) -> bool {
        self.started.is_some() && self.ended.is_none()
    }

    /// The conditions in force.
    pub fn conditions_now(&self) -> Conditions {
        self.conditions.last().map_or_else(Conditions::default, |c| c.conditions)
    }

    /// A rod by its number.
    pub fn rod(&self, number: RodNumber) -> Option<&Rod> {
        self.rods.get(usize::from(number).checked_sub(1)?)
    }

    /// The running cast of a rod.
    pub fn running(&self, number: RodNumber) -> Option<&Cast> {
        match self.rod(number)?.state {
            RodState::Out { cast } | RodState::FishOn { cast } => self.casts.get(cast),
            RodState::Ready { .. } => None,
        }
    }
}
