//! Records of the screens.
//!
//! Each is the core's own type, declared again for uniffi: the compiler refuses one that differs.

use restwater_app::{Screen, Update, Which};
use restwater_screen::{
    AdviceTone, AdviceView, BankState, BankView, ChangesView, Choice, ChoiceRow, FilesView, HeaderView, Key,
    KeyView, KeyWeight, LeafKey, LeavesView, MatchView, MendView, PegPlaceView, PhoneView, RodView,
    SetupView, StripMark, StripMarkShape, StripView, SwimKey, SwimKeyView, SwimPad, SwimPick, SwimView,
    TackleView, WaitsView,
};

/// What a key does. Its place on the glass is the layout's business.
#[uniffi::remote(Enum)]
pub enum Key {
    /// The lead hit the water.
    Cast,
    /// A pull worth striking.
    Bite,
    /// Wound in by choice.
    WoundIn,
    /// A fish swam into the line.
    Liner,
    /// The fish is in the net.
    Landed,
    /// The fish came off.
    Lost,
    /// The strike met nothing.
    Missed,
    /// Set the last time back by a minute.
    TimeBack,
    /// Set the last time back by five minutes.
    TimeBackFive,
    /// Take the last entry back.
    Undo,
    /// Bring back what undo took.
    Redo,
    /// Moved the bait without a recast.
    Twitch,
    /// The tip moved without a pull.
    Indication,
    /// Open the tackle of the chosen rod.
    Tackle,
    /// Begin a session.
    Start,
    /// End the session.
    End,
}

/// How a key is drawn.
#[uniffi::remote(Enum)]
pub enum KeyWeight {
    /// Solid ink: most likely the next one.
    Solid,
    /// Outlined.
    Outline,
}

/// One key, ready to draw.
#[uniffi::remote(Record)]
pub struct KeyView {
    /// What it does.
    pub key: Key,
    /// Its word.
    pub label: String,
    /// A smaller line below, which may go at large text.
    pub sub: Option<String>,
    /// What a screen reader says.
    pub spoken: String,
    /// Solid or outlined.
    pub weight: KeyWeight,
    /// Whether it can be tapped now.
    pub enabled: bool,
}

/// What the chosen rod is doing.
#[uniffi::remote(Enum)]
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
#[uniffi::remote(Record)]
pub struct HeaderView {
    /// "Peg 22", or the water, or nothing entered.
    pub place: String,
    /// Time of day, "12:46".
    pub clock: String,
    /// Time left in a match, or how long the session has run.
    pub length: String,
}

/// One rod's clock.
#[uniffi::remote(Record)]
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
#[uniffi::remote(Enum)]
pub enum StripMarkShape {
    /// A bite came after this wait: a diamond.
    Bite,
    /// The wait ended without one: a stroke.
    NoBite,
    /// A liner on the running cast: a triangle.
    Liner,
}

/// One mark on the strip.
#[uniffi::remote(Record)]
pub struct StripMark {
    /// Where, in minutes from the splash.
    pub minute: f64,
    /// Which of the marks that share a place, from 0, so that they can be stacked.
    pub stack: u32,
    /// Its shape.
    pub shape: StripMarkShape,
}

/// The wait strip: a tape of minutes.
#[uniffi::remote(Record)]
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
#[uniffi::remote(Enum)]
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
#[uniffi::remote(Record)]
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
#[uniffi::remote(Record)]
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

/// One value that can be tapped.
#[uniffi::remote(Record)]
pub struct Choice {
    /// What it says.
    pub label: String,
    /// What to hand back to choose it.
    pub value: String,
    /// Whether it is the present one.
    pub chosen: bool,
}

/// One thing that can be changed, with its present value and what it may become.
#[uniffi::remote(Record)]
pub struct ChoiceRow {
    /// The field to hand back, "popup", "span".
    pub field: String,
    /// What it is called.
    pub label: String,
    /// The present value in words.
    pub value: String,
    /// A step down and a step up first where the value is a figure, then recent and usual ones.
    pub choices: Vec<Choice>,
    /// Where the usual ones come from, "common practice, no source"; empty for the angler's own.
    pub source: String,
}

/// The tackle screen.
#[uniffi::remote(Record)]
pub struct TackleView {
    /// "Rod 1: next cast".
    pub title: String,
    /// Which rod.
    pub rod: u8,
    /// The rows.
    pub rows: Vec<ChoiceRow>,
    /// What the rule on lead weights says of what is on the line; empty where it says nothing. It forbids nothing.
    pub caution: String,
}

/// The set-up screen.
#[uniffi::remote(Record)]
pub struct SetupView {
    /// What it is about.
    pub title: String,
    /// Name of the water, as typed before.
    pub water: String,
    /// Label of that field.
    pub water_label: String,
    /// Peg, as typed.
    pub peg: String,
    /// Label of that field.
    pub peg_label: String,
    /// The draw, the last set-up, depth, span of the sticks, rods, the pack list: each a row of choices.
    pub rows: Vec<ChoiceRow>,
    /// Opens the cautions of this peg.
    pub cautions: LeafKey,
    /// START.
    pub start: KeyView,
}

/// A key of the Swim screen.
#[uniffi::remote(Enum)]
pub enum SwimKey {
    /// One cell to the left.
    StepLeft,
    /// One cell to the right.
    StepRight,
    /// One band in.
    StepIn,
    /// One band out.
    StepOut,
    /// Keep the aimed cell back.
    Keep,
    /// Release the kept-back water under the ring.
    Release,
    /// The next cast goes here.
    CastHere,
    /// The swim ten minutes earlier.
    Earlier,
    /// Ten minutes later.
    Later,
    /// As it is now.
    Now,
    /// Set an aiming mark in this direction.
    MarkHere,
    /// The peg lies where it was typed.
    PlacePeg,
    /// The phone's receiver is asked where it is; the lines of the peg's place are filled with it.
    UsePhone,
}

/// What the keys under the picture do now.
#[uniffi::remote(Enum)]
pub enum SwimPad {
    /// Each aims along a ray: the first tap of two.
    Rays,
    /// Each aims at a cell of that ray: the second.
    Cells,
    /// They move the ring a cell and keep its water back.
    Steps,
}

/// A key that picks a ray or a cell.
#[uniffi::remote(Record)]
pub struct SwimPick {
    /// What it is handed back by: "ray" or "cell".
    pub field: String,
    /// Which.
    pub value: String,
    /// "Dead tree", or "30-40 m".
    pub label: String,
    /// What else is known of it, small; may be empty.
    pub sub: String,
    /// What a screen reader says.
    pub spoken: String,
}

/// One key, ready to draw.
#[uniffi::remote(Record)]
pub struct SwimKeyView {
    /// What it does.
    pub key: SwimKey,
    /// Its word.
    pub label: String,
    /// What a screen reader says.
    pub spoken: String,
    /// Whether it can be tapped now.
    pub enabled: bool,
    /// Drawn solid: most likely next.
    pub solid: bool,
}

/// The Swim screen; the fan itself is a scene of its own.
#[uniffi::remote(Record)]
pub struct SwimView {
    /// "Swim, peg 22".
    pub title: String,
    /// "1 320 m² fresh of 2 050 m²".
    pub area: String,
    /// "Next: Dead tree, 14 wraps of 2 m, 28 m".
    pub headline: String,
    /// The reasons for it and against it, each with its figures.
    pub reasons: Vec<String>,
    /// The same as sentences, and how many bites they rest on.
    pub why: String,
    /// What is known of the aimed cell.
    pub cell: String,
    /// Whether the fish move over the day, with the evidence.
    pub drift: Vec<String>,
    /// The moment shown, where it is not now.
    pub replay: String,
    /// How many steps of ten minutes back that is: EARLIER asks for one more, LATER for one less.
    pub steps_back: u32,
    /// The next few cells after the first, each with its reasons.
    pub others: Vec<String>,
    /// Opens the list of everything the picture rests on.
    pub list_label: String,
    /// That list: the ringed cell, the next few, the drift, what is a guess.
    pub list: Vec<String>,
    /// The name typed for the next mark, feature or hazard, or for an old one; may be empty.
    pub name: String,
    /// Label of that field.
    pub name_label: String,
    /// Where the peg lies on the earth.
    pub place: PegPlaceView,
    /// What the keys under the picture do now.
    pub pad: SwimPad,
    /// The keys that pick a ray or a cell, in the order of their places.
    pub picks: Vec<SwimPick>,
    /// The keys.
    pub keys: Vec<SwimKeyView>,
    /// Boundaries, bands, rest target, features and hazards.
    pub rows: Vec<ChoiceRow>,
    /// What rests on a guess.
    pub note: String,
}

/// The screens there are.
#[uniffi::remote(Enum)]
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
#[uniffi::remote(Enum)]
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

/// What a tap gives back.
#[uniffi::remote(Record)]
pub struct Update {
    /// The Bank screen as it now stands.
    pub screen: Screen,
    /// Whether the log grew.
    pub changed: bool,
    /// Whether the tap was ignored as a second one.
    pub repeated: bool,
    /// What undo would now take back.
    pub undo_label: Option<String>,
    /// What to say of the tap.
    pub notice: String,
}
