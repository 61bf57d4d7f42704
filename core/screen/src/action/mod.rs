//! What an angler can do: one action for each tap. Every key, row and choice carries the action that it
//! sends, and a shell passes it back without reading it.

mod around;
mod bench;
mod book;
mod feed;
mod files;
mod fish;
mod key;
mod key_tap;
mod match_day;
mod pad;
mod plan;
mod seen;
mod setup;
mod swim;
mod typed;
mod which;

pub use around::{CautionsTap, ConditionsTap, FilesTap, MendTap, PhoneTap, WaitsTap};
pub use bench::BenchTap;
pub use book::{BookSet, BookTap, FilterTap, Season, Temperature, WaterChoice};
pub use feed::FeedTap;
pub use files::{FormChoice, Span};
pub use fish::FishTap;
pub use key::Key;
pub use key_tap::KeyTap;
pub use match_day::{MatchTap, RuleTap, Signal, UsualClass};
pub use pad::Pad;
pub use plan::PlanTap;
pub use seen::SeenTap;
pub use setup::{SetupTap, TackleTap};
pub use swim::{HazardKind, SwimTap, SwimThing};
pub use typed::{Keyboard, TypedField, TypedInto};
pub use which::Which;

use super::{Hand, Scheme};
use restwater_compare::FactorValue;
use restwater_log::{FishWeight, Rig, RodNumber, SessionSetup, Spot};
use restwater_swim::Step;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// One tap.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "do", rename_all = "snake_case", deny_unknown_fields)]
pub enum Action {
    /// Begin a session.
    StartSession {
        /// How it is set up; `None` for what the set-up screen shows.
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
        /// What it weighs, if that is known.
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
    /// The angler goes away from the rods, which are in.
    Away,
    /// The angler is back.
    Returned,
    /// The hooklength of the rod's last cast was lost with it.
    HooklengthLost {
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
        /// By this many minutes.
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
    /// The keys act on this rod from now on.
    ChooseRod {
        /// Which rod.
        rod: RodNumber,
    },
    /// Hand and scheme.
    Set {
        /// Which thumb, if that changes.
        #[serde(default)]
        hand: Option<Hand>,
        /// Day or night, if that changes.
        #[serde(default)]
        scheme: Option<Scheme>,
    },
    /// LEFT, RIGHT, IN, OUT on the Swim screen: the aim moves by one cell.
    StepAim {
        /// Which way.
        step: Step,
    },
    /// The Swim screen shows an earlier moment; 0 is now.
    Replay {
        /// How many steps of ten minutes back.
        steps_back: u32,
    },
    /// The next casts of the chosen rod go to the aimed cell.
    CastHere,
    /// The aimed cell is kept back.
    KeepBack,
    /// The kept-back water that is aimed at may be fished again.
    Release,
    /// An aiming mark in the direction of the aim.
    MarkHere {
        /// Its name; if empty, the one typed, otherwise a number.
        name: String,
    },
    /// Sets the position of the peg to the one typed on the Swim screen.
    PlacePegAsTyped,
    /// The geographic position of the peg, which is never required.
    PlacePeg {
        /// Latitude in 1e-7 degrees.
        lat_e7: i64,
        /// Longitude in 1e-7 degrees.
        lon_e7: i64,
        /// Degrees clockwise from true north of straight out, in hundredths.
        straight_out_cdeg: i32,
    },
    /// Begin an alternating test of two values, one of which replaced the other.
    StartAlternation {
        /// Value A.
        a: FactorValue,
        /// Value B, of the same factor.
        b: FactorValue,
    },
    /// Set rig or spot for the next cast of the test.
    SetNextStep,
    /// End the test.
    EndAlternation,
    /// One thing changed on a rod; the rest carries over.
    Tackle {
        /// Which rod.
        rod: RodNumber,
        /// Which.
        tap: TackleTap,
    },
    /// A choice on the set-up screen.
    Setup {
        /// Which.
        tap: SetupTap,
    },
    /// A choice on the Swim screen.
    Swim {
        /// Which.
        tap: SwimTap,
    },
    /// A choice on the Waits screen.
    Waits {
        /// Which.
        tap: WaitsTap,
    },
    /// A tap on the Match screen.
    Match {
        /// Which.
        tap: MatchTap,
    },
    /// A detail of a landed fish.
    Fish {
        /// The cast it was landed on; `None` for the fish chosen on the screen.
        #[serde(default)]
        cast: Option<Uuid>,
        /// What.
        tap: FishTap,
    },
    /// Feed by hand.
    Feed {
        /// Which.
        tap: FeedTap,
    },
    /// Fish that show themselves.
    Seen {
        /// What was seen, or where.
        tap: SeenTap,
    },
    /// A tap on the Bench.
    Bench {
        /// Which.
        tap: BenchTap,
    },
    /// A tap on the plan for a day.
    Plan {
        /// Which.
        tap: PlanTap,
    },
    /// A tap in the Book.
    Book {
        /// Which.
        tap: BookTap,
    },
    /// A key of the Conditions screen.
    Conditions {
        /// Which.
        tap: ConditionsTap,
    },
    /// A tap on the Cautions screen.
    Cautions {
        /// Which.
        tap: CautionsTap,
    },
    /// A choice on the Files screen.
    Files {
        /// Which.
        tap: FilesTap,
    },
    /// A choice on the Phone screen.
    Phone {
        /// Which.
        tap: PhoneTap,
    },
    /// Opens a doubtful entry on the Mend screen.
    OpenDoubt {
        /// Which; `None` goes back to the list.
        #[serde(default)]
        op: Option<Uuid>,
    },
    /// Corrects one thing of a doubtful entry.
    Mend {
        /// Which entry.
        op: Uuid,
        /// What of it.
        tap: MendTap,
    },
    /// Back to the Bank from another screen. It writes nothing; the core has to know of it so that an accidental second tap logs
    /// nothing, and so that the screens show the present again.
    Back,
    /// A key has opened a screen, a leaf or a row. It writes nothing; the core only has to know of it so that an accidental
    /// second tap does not hit what has appeared under the thumb.
    Opened,
    /// A text was typed by hand.
    Typed {
        /// What it is typed into.
        into: TypedInto,
        /// The text as it was typed.
        text: String,
    },
    /// Undo a whole import.
    UndoImport {
        /// Which.
        id: Uuid,
    },
    /// Redo it.
    RedoImport {
        /// Which.
        id: Uuid,
    },
    /// Undo the last entry.
    Undo,
    /// Redo what was undone.
    Redo,
}

impl Action {
    /// The texts in it, each with the name of its field.
    pub fn texts(&self) -> Vec<(&'static str, &str)> {
        match self {
            Self::StartSession { setup: Some(setup) } => {
                let water = setup.water.as_deref().map(|text| ("water", text));
                water.into_iter().chain(setup.peg.as_deref().map(|text| ("peg", text))).collect()
            }
            Self::Landed { fish: Some(FishWeight::Class { name }), .. } => vec![("class", name)],
            Self::SetRig { rig, .. } => {
                let bait = rig.bait.as_deref().map(|text| ("bait", text));
                bait.into_iter().chain(rig.colour.as_deref().map(|text| ("colour", text))).collect()
            }
            Self::Note { text } => vec![("note", text)],
            Self::SetMark { name, .. } | Self::MarkHere { name } => vec![("mark", name)],
            Self::StartAlternation { a, b } => {
                [a, b].into_iter().filter_map(|v| Some(("value", v.text()?))).collect()
            }
            Self::Tackle { tap, .. } => tap.texts(),
            Self::Setup { tap } => tap.texts(),
            Self::Waits { tap } => tap.texts(),
            Self::Match { tap } => tap.texts(),
            Self::Fish { tap, .. } => tap.texts(),
            Self::Bench { tap } => tap.texts(),
            Self::Plan { tap } => tap.texts(),
            Self::Book { tap } => tap.texts(),
            Self::Cautions { tap } => tap.texts(),
            Self::Typed { text, .. } => vec![("text", text)],
            _ => Vec::new(),
        }
    }
}
