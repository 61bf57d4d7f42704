//! What a shell can ask for: one for each tap.

use restwater_compare::Factor;
use restwater_log::{FishWeight, Payload, Rig, RodNumber, SessionSetup, Spot};
use restwater_screen::{Hand, Scheme};
use restwater_screen::{Key, MatchTap};
use restwater_swim::Step;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// One tap.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "do", rename_all = "snake_case", deny_unknown_fields)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Action {
    /// Begin a session.
    StartSession {
        /// How it is set up; as the set-up screen stands where it is left out.
        #[serde(default)]
        setup: Option<SessionSetup>,
    },
    /// End it; what is out is wound in.
    EndSession,
    /// The lead hit the water. A cast that is still out is closed and marked.
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
        #[serde(default)]
        fish: Option<FishWeight>,
    },
    /// The fish came off.
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
    /// Wound in by choice.
    WoundIn {
        /// Which rod.
        rod: RodNumber,
    },
    /// The bait was moved without a recast.
    Twitch {
        /// Which rod.
        rod: RodNumber,
    },
    /// What is on the line from the next cast on.
    SetRig {
        /// Which rod.
        rod: RodNumber,
        /// The whole rig.
        rig: Rig,
    },
    /// Where the next casts go.
    SetSpot {
        /// Which rod.
        rod: RodNumber,
        /// The spot.
        spot: Spot,
    },
    /// Set the last time back.
    TimeBack {
        /// By so many minutes.
        minutes: u32,
    },
    /// A note.
    Note {
        /// The text.
        text: String,
    },
    /// Something to aim at.
    SetMark {
        /// Its name.
        name: String,
        /// Degrees clockwise from straight out, in hundredths.
        bearing_cdeg: i32,
    },
    /// One of the choices of the tackle screen.
    Choose {
        /// Which rod.
        rod: RodNumber,
        /// The row's field.
        field: String,
        /// The choice's value.
        value: String,
    },
    /// One of the choices of the set-up screen, or a text typed there.
    ChooseSetup {
        /// The row's field.
        field: String,
        /// The choice's value.
        value: String,
    },
    /// The keys act on this rod from now on.
    ChooseRod {
        /// Which rod.
        rod: RodNumber,
    },
    /// Hand and scheme.
    Set {
        /// Which thumb, where that changes.
        #[serde(default)]
        hand: Option<Hand>,
        /// Day or night, where that changes.
        #[serde(default)]
        scheme: Option<Scheme>,
    },
    /// LEFT, RIGHT, IN, OUT on the Swim screen: the ring goes a cell further.
    StepAim {
        /// Which way.
        step: Step,
    },
    /// The Swim screen shows an earlier moment, so many steps of ten minutes back; 0 is now.
    Replay {
        /// Steps back.
        steps_back: u32,
    },
    /// The next casts of the chosen rod go to the ringed cell.
    CastHere,
    /// The ringed cell is kept back.
    KeepBack,
    /// The kept-back water under the ring may be fished again.
    Release,
    /// An aiming mark in the direction of the ring.
    MarkHere {
        /// Its name.
        name: String,
    },
    /// One of the choices of the Swim screen.
    ChooseSwim {
        /// The row's field.
        field: String,
        /// The choice's value.
        value: String,
    },
    /// The peg lies where it was typed on the Swim screen.
    PlacePegAsTyped,
    /// Where the peg lies on the earth; never needed.
    PlacePeg {
        /// Latitude in 1e-7 degrees.
        lat_e7: i64,
        /// Longitude in 1e-7 degrees.
        lon_e7: i64,
        /// Degrees clockwise from true north of straight out, in hundredths.
        straight_out_cdeg: i32,
    },
    /// Which casts count on the Waits screen, and how much time is left there.
    ChooseCasts {
        /// The row's field.
        field: String,
        /// The choice's value; empty for all.
        value: String,
    },
    /// Begin an alternating test of two values that were changed for one another.
    StartAlternation {
        /// What is alternated.
        factor: Factor,
        /// Value A, as the change spells it.
        a: String,
        /// Value B.
        b: String,
    },
    /// Set rig or spot for the next cast of the test.
    SetNextStep,
    /// End the test.
    EndAlternation,
    /// A tap on the Match screen.
    Match {
        /// Which.
        tap: MatchTap,
    },
    /// One of the choices of the Files screen.
    ChooseFiles {
        /// The row's field.
        field: String,
        /// The choice's value.
        value: String,
    },
    /// One of the choices or keys of the Bench.
    ChooseBench {
        /// Which.
        field: String,
        /// Its value.
        value: String,
    },
    /// One of the choices or keys of the Book.
    ChooseBook {
        /// Which.
        field: String,
        /// Its value.
        value: String,
    },
    /// One of the keys of the Conditions screen.
    ChooseConditions {
        /// What is said of.
        field: String,
        /// What.
        value: String,
    },
    /// One of the choices or keys of the Cautions screen.
    ChooseCautions {
        /// Which.
        field: String,
        /// Its value.
        value: String,
    },
    /// The hooklength of the rod's last cast was lost with it.
    HooklengthLost {
        /// Which rod.
        rod: RodNumber,
    },
    /// One of the choices of the Phone screen.
    ChoosePhone {
        /// The row's field.
        field: String,
        /// The choice's value.
        value: String,
    },
    /// Opens a doubtful entry on the Mend screen.
    OpenDoubt {
        /// Which; none goes back to the list.
        #[serde(default)]
        op: Option<Uuid>,
    },
    /// Says one thing of a doubtful entry.
    Mend {
        /// Which.
        op: Uuid,
        /// The row's field.
        field: String,
        /// The choice's value.
        value: String,
    },
    /// Take a whole import back.
    UndoImport {
        /// Which.
        id: Uuid,
    },
    /// Bring it back.
    RedoImport {
        /// Which.
        id: Uuid,
    },
    /// Take the last entry back.
    Undo,
    /// Bring back what undo took.
    Redo,
}

/// Text longer than this is refused.
pub(super) const LONGEST_TEXT: usize = 2_000;

impl Action {
    /// What a key of the Bank does for a rod; none for a key that opens a screen.
    pub fn of_key(key: Key, rod: RodNumber) -> Option<Self> {
        Some(match key {
            Key::Cast => Self::Cast { rod },
            Key::Bite => Self::Bite { rod },
            Key::WoundIn => Self::WoundIn { rod },
            Key::Liner => Self::Liner { rod },
            Key::Landed => Self::Landed { rod, fish: None },
            Key::Lost => Self::Lost { rod },
            Key::Missed => Self::Missed { rod },
            Key::TimeBack => Self::TimeBack { minutes: 1 },
            Key::TimeBackFive => Self::TimeBack { minutes: 5 },
            Key::Undo => Self::Undo,
            Key::Redo => Self::Redo,
            Key::Twitch => Self::Twitch { rod },
            Key::Indication => Self::Indication { rod },
            Key::End => Self::EndSession,
            Key::Tackle | Key::Start => return None,
        })
    }

    /// What it writes to the log; none for those that act on earlier entries or write nothing.
    pub(super) fn payload(&self, draft: &SessionSetup) -> Option<Payload> {
        Some(match self.clone() {
            Self::StartSession { setup } => Payload::SessionStarted(setup.unwrap_or_else(|| draft.clone())),
            Self::EndSession => Payload::SessionEnded,
            Self::Cast { rod } => Payload::Cast { rod },
            Self::Bite { rod } => Payload::Bite { rod },
            Self::Landed { rod, fish } => Payload::Landed { rod, fish },
            Self::Lost { rod } => Payload::Lost { rod },
            Self::Missed { rod } => Payload::Missed { rod },
            Self::Liner { rod } => Payload::Liner { rod },
            Self::Indication { rod } => Payload::Indication { rod },
            Self::WoundIn { rod } => Payload::WoundIn { rod },
            Self::Twitch { rod } => Payload::Twitch { rod },
            Self::SetRig { rod, rig } => Payload::RigSet { rod, rig },
            Self::SetSpot { rod, spot } => Payload::SpotSet { rod, spot },
            Self::Note { text } => Payload::Noted { text },
            Self::SetMark { name, bearing_cdeg } => Payload::MarkSet { name, bearing_cdeg },
            Self::PlacePeg { lat_e7, lon_e7, straight_out_cdeg } => {
                Payload::PegPlaced { lat_e7, lon_e7, straight_out_cdeg }
            }
            Self::EndAlternation => Payload::AlternationEnded,
            Self::HooklengthLost { rod } => Payload::HooklengthLost { rod },
            Self::TimeBack { .. }
            | Self::ChooseCasts { .. }
            | Self::StartAlternation { .. }
            | Self::SetNextStep
            | Self::Match { .. }
            | Self::ChooseFiles { .. }
            | Self::ChooseBench { .. }
            | Self::ChooseBook { .. }
            | Self::ChooseConditions { .. }
            | Self::ChooseCautions { .. }
            | Self::ChoosePhone { .. }
            | Self::OpenDoubt { .. }
            | Self::Mend { .. }
            | Self::UndoImport { .. }
            | Self::RedoImport { .. }
            | Self::Undo
            | Self::Redo
            | Self::Choose { .. }
            | Self::ChooseSetup { .. }
            | Self::ChooseRod { .. }
            | Self::StepAim { .. }
            | Self::Replay { .. }
            | Self::CastHere
            | Self::KeepBack
            | Self::Release
            | Self::MarkHere { .. }
            | Self::ChooseSwim { .. }
            | Self::PlacePegAsTyped
            | Self::Set { .. } => return None,
        })
    }

    /// The texts in it with the field they are for.
    pub(super) fn texts(&self) -> Vec<(&'static str, &str)> {
        let mut texts: Vec<(&'static str, &str)> = Vec::new();
        match self {
            Self::StartSession { setup: Some(setup) } => {
                texts.extend(setup.water.as_deref().map(|t| ("water", t)));
                texts.extend(setup.peg.as_deref().map(|t| ("peg", t)));
            }
            Self::SetRig { rig, .. } => {
                texts.extend(rig.bait.as_deref().map(|t| ("bait", t)));
                texts.extend(rig.colour.as_deref().map(|t| ("colour", t)));
            }
            Self::StartAlternation { a, b, .. } => {
                texts.extend([("value", a.as_str()), ("value", b.as_str())]);
            }
            Self::Choose { value, .. }
            | Self::ChooseSetup { value, .. }
            | Self::ChooseCasts { value, .. }
            | Self::ChooseFiles { value, .. }
            | Self::ChooseBench { value, .. }
            | Self::ChooseBook { value, .. }
            | Self::ChooseConditions { value, .. }
            | Self::ChooseCautions { value, .. }
            | Self::ChoosePhone { value, .. }
            | Self::Mend { value, .. }
            | Self::ChooseSwim { value, .. } => texts.push(("value", value)),
            Self::Match { tap } => texts.extend(tap.texts()),
            Self::Note { text } => texts.push(("note", text)),
            Self::SetMark { name, .. } | Self::MarkHere { name } => texts.push(("mark", name)),
            _ => {}
        }
        texts
    }
}
