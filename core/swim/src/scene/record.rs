//! The packed record of one frame: flat arrays that a shell draws in order on one canvas.
//!
//! Draw order: fills, hatching, lines, marks, label boxes, label texts. Coordinates are pixels from the upper
//! left corner. Roles are names, never colours: the shell's day and night schemes map them to colours.

use serde::{Deserialize, Serialize};

/// The meaning of a filled polygon.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[repr(u8)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum FillRole {
    /// The water of the swim.
    Water = 0,
    /// The peg, below the near edge.
    Peg = 1,
    /// Water just fished: as dark as it can be (ink).
    JustFished = 2,
}

/// The meaning of a polyline.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[repr(u8)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum LineRole {
    /// Outline of the swim (thick, ink).
    Outline = 0,
    /// Arc between two bands (thin, soft ink).
    Band = 1,
    /// Ray to an aiming mark (thin, soft ink, dashed).
    Ray = 2,
    /// Edge of a fished cell, and the frame of bites beside their cell with the line into it (hair, ink).
    CellEdge = 3,
    /// Kept-back water (thickest, ink). A second line runs along its middle.
    KeptBack = 4,
    /// The line along its middle (paper): together they are the double outline.
    KeptBackInner = 5,
    /// Ring round the next spot (accent).
    NextRing = 6,
    /// Corners of the cell that is aimed at (ink).
    Aimed = 7,
    /// The edge of the water to stay clear of, round a hazard (ink, dashed).
    HazardClear = 8,
    /// A halo that separates a ring, a line or corners from the water under it (paper).
    Halo = 9,
    /// The line of a cast that is out, from the bank to its spot (ink).
    LineOut = 10,
}

/// Shape of a mark. Every kind has its own shape, so that none depends on colour.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[repr(u8)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum MarkShape {
    /// A bite: a filled diamond.
    BiteDiamond = 0,
    /// A liner: an open triangle, point up.
    LinerTriangle = 1,
    /// A lost fish: a cross.
    LostCross = 2,
    /// A feature: an open square.
    FeatureSquare = 3,
    /// A hazard: an open square standing on a corner with a cross in it.
    HazardCross = 4,
    /// The next spot: a filled dot in accent.
    NextDot = 5,
    /// The end of a line that is out now: a filled dot.
    OutNow = 6,
    /// Fed water: three filled grains, one above two.
    FedGrains = 7,
    /// Fish that showed themselves: two rings, one in the other.
    ShownRings = 8,
}

/// What a label says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[repr(u8)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum LabelRole {
    /// "KEPT", boxed, inside the water it means.
    KeptBack = 0,
    /// Name of an aiming mark, plain.
    Mark = 1,
    /// Minutes rested of a cell that is not free yet, boxed.
    Rested = 2,
    /// How many events a mark stands for, if they can't be drawn one by one: on paper, without an edge.
    Count = 3,
    /// Name of a hazard, boxed.
    Hazard = 4,
    /// Name of a feature, plain.
    Feature = 5,
    /// Range of a band edge, on paper, small.
    Range = 6,
    /// "NEXT": paper on an accent box at the ring of the next spot.
    Next = 7,
}

/// One frame of the swim, packed.
///
/// Polylines and polygons: points of part `i` are `xy[2*start[i]] .. xy[2*start[i+1]]`, and `start`
/// has one entry more than there are parts (or is empty if there are none).
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SwimScene {
    /// Width of the canvas, pixels.
    pub width_px: f32,
    /// Height of the canvas, pixels.
    pub height_px: f32,
    /// Corners of filled polygons, x and y in turn (even-odd where a role's parts nest).
    pub fill_xy: Vec<f32>,
    /// Offsets of polygons in points.
    pub fill_start: Vec<u32>,
    /// Role of each polygon.
    pub fill_role: Vec<FillRole>,
    /// Hatching of resting water: x1, y1, x2, y2 of each stroke in turn; further apart the longer it has rested.
    pub hatch_xy: Vec<f32>,
    /// Width of hatching strokes, pixels.
    pub hatch_width: f32,
    /// Points of polylines, x and y in turn; closed lines repeat their first point.
    pub line_xy: Vec<f32>,
    /// Offsets of polylines in points.
    pub line_start: Vec<u32>,
    /// Role of each polyline.
    pub line_role: Vec<LineRole>,
    /// Width of each polyline, pixels.
    pub line_width: Vec<f32>,
    /// Centres of marks, x and y in turn.
    pub mark_xy: Vec<f32>,
    /// Half the size of each mark (centre to corner), pixels.
    pub mark_size: Vec<f32>,
    /// Shape of each mark.
    pub mark_shape: Vec<MarkShape>,
    /// Boxes of labels: left, top, width, height in turn. Boxes never overlap.
    pub label_box: Vec<f32>,
    /// Where each text is centred: x of the middle, y of the baseline, in turn.
    pub label_at: Vec<f32>,
    /// Size of each text, pixels.
    pub label_size: Vec<f32>,
    /// Role of each label.
    pub label_role: Vec<LabelRole>,
    /// Whether the box is drawn (paper with an ink edge) or only reserved.
    pub label_boxed: Vec<bool>,
    /// Text of each label.
    pub label_text: Vec<String>,
    /// The meaning of numbers on the picture, and labels that found no place, to be shown below it.
    pub key: Vec<KeyLine>,
}

/// A line of the key below the picture.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct KeyLine {
    /// The number on the picture; `None` if not even that found a place.
    pub number: Option<u32>,
    /// The text of the label.
    pub text: String,
    /// Both, as the key shows them.
    pub spoken: String,
    /// What it is about.
    pub role: LabelRole,
}

impl KeyLine {
    /// A line that has its number already; [`finish`](Self::finish) joins the two.
    pub(crate) fn new(number: Option<u32>, text: String, role: LabelRole) -> Self {
        Self { number, text, spoken: String::new(), role }
    }

    /// Joins its number and its text as the reader's language does.
    pub(crate) fn finish(&mut self, colon: &str) {
        self.spoken = self.number.map_or_else(|| self.text.clone(), |n| format!("{n}{colon}{}", self.text));
    }
}
