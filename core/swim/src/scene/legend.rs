//! The legend: a sample of each symbol on the picture, one below the other, drawn by the same code.

use super::ask::{SceneAsk, SceneWords};
use super::hatch;
use super::pack::Pack;
use super::record::{FillRole, LabelRole, LineRole, MarkShape, SwimScene};
use super::view::{Rect, TEXT_DP};
use crate::error::SwimError;
use crate::frame::Point;

/// A symbol on the picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LegendSample {
    /// Water just fished.
    JustFished,
    /// Resting water with its minutes.
    Resting,
    /// Water that has rested or was never fished.
    Free,
    /// Kept-back water.
    Kept,
    /// Where the next cast goes.
    Next,
    /// The cell that is aimed at.
    Aimed,
    /// A line that is out.
    LineOut,
    /// Bites.
    Bites,
    /// A liner.
    Liner,
    /// A lost fish.
    Lost,
    /// Fed water.
    Fed,
    /// Fish that showed themselves.
    Shown,
    /// A feature.
    Feature,
    /// A hazard.
    Hazard,
}

/// The samples from the top down.
pub const LEGEND: [LegendSample; 14] = [
    LegendSample::JustFished,
    LegendSample::Resting,
    LegendSample::Free,
    LegendSample::Kept,
    LegendSample::Next,
    LegendSample::Aimed,
    LegendSample::LineOut,
    LegendSample::Bites,
    LegendSample::Liner,
    LegendSample::Lost,
    LegendSample::Fed,
    LegendSample::Shown,
    LegendSample::Feature,
    LegendSample::Hazard,
];

/// The samples of [`LEGEND`] as a picture for this canvas, each in a row of the same height; a shell writes
/// their meanings beside them.
pub fn legend(ask: &SceneAsk, words: &SceneWords) -> Result<SwimScene, SwimError> {
    ask.check()?;
    let row = ask.height_px / LEGEND.len() as f64;
    let mut sheet = Sheet { pack: Pack::sized(ask.width_px, ask.height_px), dp: ask.dp(), text: 0.0 };
    sheet.text = (TEXT_DP * sheet.dp).min(0.5 * row);
    sheet.pack.scene.hatch_width = (1.5 * sheet.dp) as f32;
    for (i, sample) in LEGEND.iter().enumerate() {
        let (high, wide) = (0.8 * row, 0.94 * ask.width_px);
        sheet.draw(*sample, Rect::round(0.0, row * (i as f64 + 0.5), wide, high), words);
    }
    Ok(sheet.pack.scene)
}

struct Sheet {
    pack: Pack,
    dp: f64,
    text: f64,
}

impl Sheet {
    fn draw(&mut self, sample: LegendSample, at: Rect, words: &SceneWords) {
        let middle = Point { x: at.x + at.w / 2.0, y: at.y + at.h / 2.0 };
        let ring = corners(&at);
        self.pack.fill(FillRole::Water, &ring);
        let mark = |shape| (shape, 0.3 * at.h);
        let (shape, size) = match sample {
            LegendSample::JustFished => {
                self.pack.fill(FillRole::JustFished, &ring);
                return self.write("4", LabelRole::Rested, middle);
            }
            LegendSample::Resting => {
                let spacing = hatch::spacing_dp(0.5) * self.dp;
                hatch::hatch(&mut self.pack, std::slice::from_ref(&ring), middle, spacing, 1.0);
                self.pack.ring(LineRole::CellEdge, 0.8 * self.dp, &ring);
                return self.write("20", LabelRole::Rested, middle);
            }
            LegendSample::Free => return self.pack.ring(LineRole::CellEdge, 0.8 * self.dp, &ring),
            LegendSample::Kept => {
                self.pack.ring(LineRole::KeptBack, 6.0 * self.dp, &ring);
                self.pack.ring(LineRole::KeptBackInner, 2.4 * self.dp, &ring);
                return self.write(&words.kept, LabelRole::KeptBack, middle);
            }
            LegendSample::Next => {
                self.pack.circle(LineRole::NextRing, 4.0 * self.dp, middle, 0.4 * at.h);
                mark(MarkShape::NextDot)
            }
            LegendSample::Aimed => return self.aimed(&ring),
            LegendSample::LineOut => {
                let bank = Point { x: at.x, y: at.y + at.h };
                self.pack.line(LineRole::LineOut, 2.2 * self.dp, &[bank, middle]);
                mark(MarkShape::OutNow)
            }
            LegendSample::Bites => mark(MarkShape::BiteDiamond),
            LegendSample::Liner => mark(MarkShape::LinerTriangle),
            LegendSample::Lost => mark(MarkShape::LostCross),
            LegendSample::Fed => mark(MarkShape::FedGrains),
            LegendSample::Shown => mark(MarkShape::ShownRings),
            LegendSample::Feature => mark(MarkShape::FeatureSquare),
            LegendSample::Hazard => mark(MarkShape::HazardCross),
        };
        let small = if shape == MarkShape::NextDot { 0.4 } else { 1.0 };
        self.pack.mark(shape, small * size, middle);
    }

    fn aimed(&mut self, ring: &[Point]) {
        let towards = |a: Point, b: Point| Point { x: a.x + 0.3 * (b.x - a.x), y: a.y + 0.3 * (b.y - a.y) };
        for (i, corner) in ring.iter().enumerate() {
            let (before, after) = (ring[(i + 3) % 4], ring[(i + 1) % 4]);
            let line = [towards(*corner, before), *corner, towards(*corner, after)];
            self.pack.line(LineRole::Aimed, 4.0 * self.dp, &line);
        }
    }

    fn write(&mut self, text: &str, role: LabelRole, middle: Point) {
        let width = super::text::width(text, self.text) + 0.5 * self.text;
        self.pack.label(text, self.text, role, true, Rect::round(middle.x, middle.y, width, 1.2 * self.text));
    }
}

fn corners(at: &Rect) -> Vec<Point> {
    let (right, bottom) = (at.x + at.w, at.y + at.h);
    vec![
        Point { x: at.x, y: at.y },
        Point { x: right, y: at.y },
        Point { x: right, y: bottom },
        Point { x: at.x, y: bottom },
    ]
}
