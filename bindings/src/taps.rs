//! What a shell hands in: taps and moments.
//!
//! Each is the core's own type, declared again for uniffi: the compiler refuses one that differs.

use restwater_app::{Action, Hand, Scheme, Settings};
use restwater_compare::Factor;
use restwater_log::{FishWeight, LeadMaterial, Moment, Reach, Rig, SessionSetup, Spot, WeightUnit};
use restwater_screen::MatchTap;
use restwater_swim::Step;
use uuid::Uuid;

/// A point in time as the phone knew it.
///
/// The wall clock says what time of day it was but can jump; the monotonic clock can't jump but starts
/// anew at each boot. Durations are measured by the second where both ends were in the same boot.
#[uniffi::remote(Record)]
pub struct Moment {
    /// Milliseconds since 1970-01-01 UTC by the wall clock.
    pub wall_ms: i64,
    /// Minutes east of UTC of the phone's local time.
    pub offset_min: i16,
    /// Name of the time zone (IANA), empty where the phone doesn't say.
    pub zone: String,
    /// Milliseconds of the monotonic clock (it counts while the phone sleeps).
    pub mono_ms: i64,
    /// What tells one boot of the phone from another.
    pub boot: String,
    /// How far off the time may be, in seconds; 0 where it is as tapped.
    pub approx_s: u32,
}

/// What the weight on the line is made of.
#[uniffi::remote(Enum)]
pub enum LeadMaterial {
    /// The metal lead.
    Lead,
    /// Anything else: steel, tungsten, stone.
    NonToxic,
}

/// What may be changed between two casts of a rod.
#[uniffi::remote(Enum)]
pub enum Factor {
    /// Spot: where it was cast, range included.
    Spot,
    /// Bait.
    Bait,
    /// Colour of the bait.
    Colour,
    /// Height of the pop-up off the bottom.
    Height,
    /// Length of the hooklength.
    Hooklength,
    /// Hook size.
    HookSize,
    /// Lead or feeder weight.
    Lead,
    /// Leader.
    Leader,
}

/// What is on the end of the line. Every field may be left empty.
#[uniffi::remote(Record)]
pub struct Rig {
    /// Bait, in the angler's words.
    pub bait: Option<String>,
    /// Colour of the bait.
    pub colour: Option<String>,
    /// Length of the hooklength in mm.
    pub hooklength_mm: Option<u32>,
    /// Hook size: a bigger number is a smaller hook.
    pub hook_size: Option<u8>,
    /// Pop-up height, counterweight to hook, in mm.
    pub popup_mm: Option<u32>,
    /// Weight of the lead or loaded feeder in mg.
    pub lead_mg: Option<u32>,
    /// What that weight is made of.
    pub material: Option<LeadMaterial>,
}

/// How far out, in the unit it was entered in.
#[uniffi::remote(Enum)]
pub enum Reach {
    /// Turns round two sticks; the span between the sticks is stored with the figure.
    Wraps {
        /// Hundredths of a wrap.
        hundredths: u32,
        /// Span between the sticks in tenths of a millimetre (12 ft is 36 576, 2 m is 20 000).
        span_tenth_mm: u32,
    },
    /// Metres from the rod rest.
    Metres {
        /// Centimetres.
        cm: u32,
    },
    /// Yards from the rod rest.
    Yards {
        /// Hundredths of a yard.
        hundredths: u32,
    },
}

/// Where a cast is aimed.
#[uniffi::remote(Record)]
pub struct Spot {
    /// The aiming mark it is cast at, by the id of the op that set it.
    pub mark: Option<Uuid>,
    /// Degrees clockwise from straight out, in hundredths.
    pub bearing_cdeg: i32,
    /// How far out.
    pub reach: Reach,
    /// Whether the line is in the clip.
    pub clipped: bool,
}

/// How a session was set up. Everything may be left empty.
#[uniffi::remote(Record)]
pub struct SessionSetup {
    /// Name of the water, in the angler's words.
    pub water: Option<String>,
    /// Peg name or number.
    pub peg: Option<String>,
    /// Water depth in cm.
    pub depth_cm: Option<u32>,
    /// Span of the distance sticks in tenths of a millimetre.
    pub span_tenth_mm: u32,
    /// How many rods.
    pub rods: u8,
    /// Seconds from the splash that don't count as waiting.
    pub settle_s: u32,
    /// Whether a twitch starts the wait anew.
    pub twitch_restarts: bool,
}

/// The unit a weight was entered in; it is never converted in the log.
#[uniffi::remote(Enum)]
pub enum WeightUnit {
    /// Drams, 1/256 lb.
    Drams,
    /// Grams.
    Grams,
}

/// What a fish weighs, by how it is known.
#[uniffi::remote(Enum)]
pub enum FishWeight {
    /// On the scales.
    Weighed {
        /// The unit it was read in.
        unit: WeightUnit,
        /// How many of it.
        count: u32,
    },
    /// By eye.
    Guessed {
        /// The unit it was guessed in.
        unit: WeightUnit,
        /// How many of it.
        count: u32,
    },
    /// One of a class with a learned mean.
    Class {
        /// Name of the class.
        name: String,
    },
}

/// A step key.
#[uniffi::remote(Enum)]
pub enum Step {
    /// One column to the left.
    Left,
    /// One column to the right.
    Right,
    /// One band nearer to the peg.
    In,
    /// One band further out.
    Out,
}

/// Which thumb taps.
#[uniffi::remote(Enum)]
pub enum Hand {
    /// The right one.
    Right,
    /// The left one: everything is mirrored.
    Left,
}

/// Ink on paper or chalk on ink.
#[uniffi::remote(Enum)]
pub enum Scheme {
    /// Ink on paper.
    Day,
    /// Chalk on ink.
    Night,
}

/// Hand and scheme.
#[uniffi::remote(Record)]
pub struct Settings {
    /// Which thumb taps.
    pub hand: Hand,
    /// Ink on paper or chalk on ink.
    pub scheme: Scheme,
}

/// One tap.
#[uniffi::remote(Enum)]
pub enum Action {
    /// Begin a session.
    StartSession {
        /// How it is set up; as the set-up screen stands where it is left out.
        setup: Option<SessionSetup>,
    },
    /// End it; what is out is wound in.
    EndSession,
    /// The lead hit the water. A cast that is still out is closed and marked.
    Cast {
        /// Which rod.
        rod: u8,
    },
    /// A pull worth striking.
    Bite {
        /// Which rod.
        rod: u8,
    },
    /// The fish is in the net.
    Landed {
        /// Which rod.
        rod: u8,
        /// What it weighs, where that is known.
        fish: Option<FishWeight>,
    },
    /// The fish came off.
    Lost {
        /// Which rod.
        rod: u8,
    },
    /// The bite was missed.
    Missed {
        /// Which rod.
        rod: u8,
    },
    /// A fish swam into the line.
    Liner {
        /// Which rod.
        rod: u8,
    },
    /// The tip moved without a pull.
    Indication {
        /// Which rod.
        rod: u8,
    },
    /// Wound in by choice.
    WoundIn {
        /// Which rod.
        rod: u8,
    },
    /// The bait was moved without a recast.
    Twitch {
        /// Which rod.
        rod: u8,
    },
    /// What is on the line from the next cast on.
    SetRig {
        /// Which rod.
        rod: u8,
        /// The whole rig.
        rig: Rig,
    },
    /// Where the next casts go.
    SetSpot {
        /// Which rod.
        rod: u8,
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
        rod: u8,
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
        rod: u8,
    },
    /// Hand and scheme.
    Set {
        /// Which thumb, where that changes.
        hand: Option<Hand>,
        /// Day or night, where that changes.
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
        rod: u8,
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
