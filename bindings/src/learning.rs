//! Records of the Waits screen and of "Did it matter?".
//!
//! Each is the core's own type, declared again for uniffi: the compiler refuses one that differs.

use restwater_compare::Factor;
use restwater_screen::{
    AlternationView, Axis, ChangeView, ChangesView, ChartBand, ChartBar, ChartDot, ChartKind, ChartLine,
    ChartSpan, ChartView, ChoiceRow, DotShape, ForecastLine, ForecastView, ForestPoint, LineStyle, SideView,
    StartTest, StepState, StepView, Tick, VerdictTone, WaitsView,
};

/// One figure on an axis.
#[uniffi::remote(Record)]
pub struct Tick {
    /// Where, in the units of the axis.
    pub at: f64,
    /// What it says.
    pub label: String,
}

/// One axis.
#[uniffi::remote(Record)]
pub struct Axis {
    /// What it counts, with its unit.
    pub label: String,
    /// Lower end.
    pub from: f64,
    /// Upper end.
    pub to: f64,
    /// The figures on it.
    pub ticks: Vec<Tick>,
}

/// How a line is drawn, so that lines are told apart without colour.
#[uniffi::remote(Enum)]
pub enum LineStyle {
    /// Thick and unbroken.
    Solid,
    /// Dashes.
    Dashed,
    /// Dots: the ends of an interval.
    Dotted,
}

/// A line through points.
#[uniffi::remote(Record)]
pub struct ChartLine {
    /// What it is, for the key below the picture; empty where another line says it.
    pub label: String,
    /// How it is drawn.
    pub style: LineStyle,
    /// Across.
    pub x: Vec<f64>,
    /// Up.
    pub y: Vec<f64>,
}

/// An interval drawn as an area between two lines, hatched.
#[uniffi::remote(Record)]
pub struct ChartBand {
    /// What it is.
    pub label: String,
    /// Across.
    pub x: Vec<f64>,
    /// Lower line.
    pub low: Vec<f64>,
    /// Upper line.
    pub high: Vec<f64>,
}

/// A stretch along the axis across, drawn as a bracket at the foot with its words.
#[uniffi::remote(Record)]
pub struct ChartSpan {
    /// What it is.
    pub label: String,
    /// From.
    pub from: f64,
    /// To.
    pub to: f64,
}

/// A bar of a count, outlined.
#[uniffi::remote(Record)]
pub struct ChartBar {
    /// From.
    pub from: f64,
    /// To.
    pub to: f64,
    /// Height.
    pub height: f64,
    /// The count behind it.
    pub label: String,
}

/// What a point is, told by its shape.
#[uniffi::remote(Enum)]
pub enum DotShape {
    /// A bite: filled.
    Bite,
    /// Without a bite: a ring with a stroke upward, since the wait is longer than this.
    WithoutBite,
    /// The best time: a diamond.
    Best,
    /// The angler's habit: a cross.
    Habit,
}

/// A point.
#[uniffi::remote(Record)]
pub struct ChartDot {
    /// Across.
    pub x: f64,
    /// Up.
    pub y: f64,
    /// What it is.
    pub shape: DotShape,
}

/// Which picture.
#[uniffi::remote(Enum)]
pub enum ChartKind {
    /// Share of casts still without a bite.
    Survival,
    /// Chance of a bite in the next minute.
    Hazard,
    /// Bites per hour by leave time.
    LeaveTime,
    /// Today against earlier sessions.
    Earlier,
    /// Waits over the day.
    Drift,
}

/// A picture with its message in words.
#[uniffi::remote(Record)]
pub struct ChartView {
    /// Which.
    pub kind: ChartKind,
    /// Its heading.
    pub title: String,
    /// What it says, in one sentence.
    pub says: String,
    /// How that was obtained: counts, levels, what is assumed.
    pub notes: Vec<String>,
    /// Across.
    pub x: Axis,
    /// Up.
    pub y: Axis,
    /// Intervals.
    pub bands: Vec<ChartBand>,
    /// Bars.
    pub bars: Vec<ChartBar>,
    /// Lines.
    pub lines: Vec<ChartLine>,
    /// Stretches.
    pub spans: Vec<ChartSpan>,
    /// Points.
    pub dots: Vec<ChartDot>,
}

/// One figure with its range.
#[uniffi::remote(Record)]
pub struct ForecastLine {
    /// What it is: "Bites to come".
    pub label: String,
    /// "2 to 5, most likely 3".
    pub value: String,
    /// One future in ten stays below this.
    pub low: f64,
    /// The middle one.
    pub likely: f64,
    /// One future in ten passes this.
    pub high: f64,
}

/// What is to come until all-out.
#[uniffi::remote(Record)]
pub struct ForecastView {
    /// Its heading.
    pub title: String,
    /// How much time is left, a choice by taps.
    pub left: ChoiceRow,
    /// What it says, in one sentence.
    pub says: String,
    /// Casts left, bites to come, fish to come, last useful cast.
    pub lines: Vec<ForecastLine>,
    /// How that was obtained.
    pub notes: Vec<String>,
}

/// The Waits screen.
#[uniffi::remote(Record)]
pub struct WaitsView {
    /// Its heading.
    pub title: String,
    /// What counts: "9 bites in 15 casts, 3 h 32 in the water."
    pub counts: String,
    /// Which casts count, each row a choice by taps; hand the field and value back to choose.
    pub rows: Vec<ChoiceRow>,
    /// The pictures, most telling first; empty before the first cast is in.
    pub charts: Vec<ChartView>,
    /// What the rest of a day is likely to hold.
    pub forecast: Option<ForecastView>,
}

/// What may be said of a change, for drawing.
#[uniffi::remote(Enum)]
pub enum VerdictTone {
    /// Can't tell yet: an open ring.
    Unknown,
    /// Leans to one: half filled.
    Leans,
    /// Clearly better here today: filled.
    Clear,
}

/// One side of a change.
#[uniffi::remote(Record)]
pub struct SideView {
    /// The value, "pink".
    pub value: String,
    /// "4 bites in 6 casts, 85 min".
    pub counts: String,
    /// "2.8 an hour (0.8 to 7.2)".
    pub rate: String,
    /// Bites per hour.
    pub per_hour: f64,
    /// Exact 95 % limits of it.
    pub per_hour_low: f64,
    /// Upper limit.
    pub per_hour_high: f64,
}

/// One line of the forest plot, in log2 of the ratio, cut to the axis.
#[uniffi::remote(Record)]
pub struct ForestPoint {
    /// The ratio; none where one side has no bites.
    pub at: Option<f64>,
    /// Lower end of its 95 % limits.
    pub low: f64,
    /// Upper end.
    pub high: f64,
    /// Whether the lower end lies beyond the axis.
    pub low_beyond: bool,
    /// Whether the upper end does.
    pub high_beyond: bool,
}

/// The key that starts a test of this change.
#[uniffi::remote(Record)]
pub struct StartTest {
    /// What to hand back: which factor,
    pub factor: Factor,
    /// its value A
    pub a: String,
    /// and its value B.
    pub b: String,
    /// The word on the key.
    pub label: String,
    /// The smaller line.
    pub sub: String,
    /// What a screen reader says.
    pub spoken: String,
}

/// One change against what it replaced.
#[uniffi::remote(Record)]
pub struct ChangeView {
    /// "Colour: pink after white".
    pub title: String,
    /// What was there.
    pub old: SideView,
    /// What replaced it.
    pub new: SideView,
    /// For drawing.
    pub tone: VerdictTone,
    /// "can't tell yet", "leans to pink", "pink clearly better here today".
    pub verdict: String,
    /// "Better with pink: 71 in 100."
    pub probability: String,
    /// The same as a number: that the new one is better.
    pub new_better: f64,
    /// The ratio in words.
    pub ratio: String,
    /// Exact and block p, plain and raised for the number looked at.
    pub p: String,
    /// Why no more can be said.
    pub reasons: Vec<String>,
    /// How many more casts it would take.
    pub more: String,
    /// Its line of the forest plot.
    pub forest: ForestPoint,
    /// Starts an alternating test; none while one runs or no session is open.
    pub start: Option<StartTest>,
}

/// Where a step stands.
#[uniffi::remote(Enum)]
pub enum StepState {
    /// Cast and in: ticked.
    Done,
    /// Out now.
    Out,
    /// The next to cast: arrowed.
    Next,
    /// Later.
    Later,
}

/// One cast of the plan.
#[uniffi::remote(Record)]
pub struct StepView {
    /// "3. pink".
    pub label: String,
    /// A or B.
    pub side: String,
    /// Where it stands.
    pub state: StepState,
}

/// The alternating test that runs.
#[uniffi::remote(Record)]
pub struct AlternationView {
    /// "Test of colour: white and pink".
    pub title: String,
    /// What to cast next.
    pub says: String,
    /// How it is done, and casts that don't count.
    pub notes: Vec<String>,
    /// The casts planned, in order.
    pub steps: Vec<StepView>,
    /// The key that sets rig or spot for the next cast: its smaller line; none where it is set already or the
    /// plan is through.
    pub set_sub: Option<String>,
    /// Its word.
    pub set_label: String,
    /// The key that ends the test: its word.
    pub end_label: String,
    /// Its smaller line.
    pub end_sub: String,
}

/// "Did it matter?"
#[uniffi::remote(Record)]
pub struct ChangesView {
    /// Its heading.
    pub title: String,
    /// What it says, in one sentence.
    pub says: String,
    /// How many changes were looked at.
    pub looked_at: u32,
    /// What that means.
    pub warning: String,
    /// The axis of the forest plot: log2 of the ratio, new against old.
    pub axis: Axis,
    /// The changes, in the order they were made.
    pub changes: Vec<ChangeView>,
    /// The alternating test that runs.
    pub test: Option<AlternationView>,
}
