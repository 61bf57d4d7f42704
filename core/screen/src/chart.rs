//! A picture as plain numbers: what a shell draws without knowing what it means.

use super::wording::Wording;
use serde::{Deserialize, Serialize};

/// One figure on an axis.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Tick {
    /// Where, in the units of the axis.
    pub at: f64,
    /// What it says.
    pub label: String,
}

/// One axis.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
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

/// How a line is drawn, so that lines can be distinguished without colour.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum LineStyle {
    /// Thick and unbroken.
    Solid,
    /// Dashes.
    Dashed,
    /// Dots: the ends of an interval.
    Dotted,
}

/// A line through points.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ChartLine {
    /// What it is, for the legend below the picture; empty if another line says it.
    pub label: String,
    /// How it is drawn.
    pub style: LineStyle,
    /// Across.
    pub x: Vec<f64>,
    /// Up.
    pub y: Vec<f64>,
}

/// An interval drawn as an area between two lines, hatched.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
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

/// A stretch of the horizontal axis, drawn as a bracket at the foot with its words.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ChartSpan {
    /// What it is.
    pub label: String,
    /// From.
    pub from: f64,
    /// To.
    pub to: f64,
}

/// A bar of a count, outlined.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
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

/// What a point means, shown by its shape.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum DotShape {
    /// A bite: a diamond.
    Bite,
    /// Without a bite: a stroke.
    WithoutBite,
    /// The best time: a dot in the accent.
    Best,
    /// The angler's habit: a longer stroke.
    Habit,
}

/// A point.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ChartDot {
    /// Across.
    pub x: f64,
    /// Up.
    pub y: f64,
    /// What it is.
    pub shape: DotShape,
}

/// Which picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
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
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ChartView {
    /// Which.
    pub kind: ChartKind,
    /// Its heading.
    pub title: String,
    /// What it says, in one sentence.
    pub says: String,
    /// Both for a screen reader.
    pub spoken: String,
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
    /// Times for which no cast was left out, with dots behind what is drawn and their words in the key; the part of a stretch within
    /// them is dashed. `None` if all of the axis was tried.
    pub not_tried: Option<ChartSpan>,
    /// Points.
    pub dots: Vec<ChartDot>,
}

impl ChartView {
    /// A picture with nothing on it yet.
    pub(crate) fn new(kind: ChartKind, title: String, x: Axis, y: Axis) -> Self {
        Self {
            kind,
            title,
            says: String::new(),
            spoken: String::new(),
            notes: Vec::new(),
            x,
            y,
            bands: Vec::new(),
            bars: Vec::new(),
            lines: Vec::new(),
            spans: Vec::new(),
            not_tried: None,
            dots: Vec::new(),
        }
    }
}

impl Axis {
    /// From zero to at least `top`, with about four figures at round steps.
    pub(crate) fn up_to(words: &Wording, id: &str, top: f64) -> Self {
        let step = round_step(top / 4.0);
        let count = libm::ceil(top / step - 1e-9).max(1.0);
        let decimals = if step < 0.1 { 2 } else { usize::from(step < 1.0) };
        let tick = |i: u32| {
            let at = f64::from(i) * step;
            Tick { at, label: words.figure(at, decimals) }
        };
        Self {
            label: words.say(id),
            from: 0.0,
            to: count * step,
            ticks: (0..=count as u32).map(tick).collect(),
        }
    }
}

/// The next of 1, 2, 5 times a power of ten; beyond ten minutes 15 and 30 are used, as on a clock.
fn round_step(at_least: f64) -> f64 {
    let least = if at_least.is_finite() && at_least > 1e-3 { at_least } else { 1e-3 };
    let power = libm::pow(10.0, libm::floor(libm::log10(least)));
    let factor = [1.0, 2.0, 5.0].into_iter().find(|f| f * power >= least - 1e-9).unwrap_or(10.0);
    factor * power
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn axes_include_their_top_value_and_have_round_figures() {
        for (top, to, count) in
            [(23.0, 30.0, 4), (1.0, 1.0, 3), (40.0, 40.0, 5), (0.07, 0.08, 5), (0.0, 0.001, 2)]
        {
            let axis = Axis::up_to(&Wording::new(), "axis-wait", top);
            assert!((axis.to - to).abs() < 1e-9 && axis.ticks.len() == count, "{top} {axis:?}");
        }
    }
}
