//! The picture of the swim, packed into one record.
//!
//! Each is the core's own type, declared again for uniffi: the compiler refuses one that differs.

use restwater_app::FanGlass;
use restwater_layout::{Rect, SwimKeyPlace, SwimLayout, SwimPadAsk};
use restwater_screen::{SwimKey, SwimPad};
use restwater_swim::{FillRole, KeyLine, LabelRole, LineRole, MarkShape, SwimScene};

/// What a filled polygon stands for.
#[uniffi::remote(Enum)]
pub enum FillRole {
    /// The water of the swim.
    Water,
    /// The peg, at the foot of the fan.
    Peg,
}

/// What a polyline stands for.
#[uniffi::remote(Enum)]
pub enum LineRole {
    /// Outline of the swim (thick, ink).
    Outline,
    /// Arc between two bands (thin, soft ink).
    Band,
    /// Ray to an aiming mark (thin, soft ink, dashed).
    Ray,
    /// Edge of a fished cell (hair, ink).
    CellEdge,
    /// Outer line of kept-back water (thickest, ink). A second one lies inside it.
    KeptBack,
    /// Inner line of kept-back water (ink); together they are the double outline.
    KeptBackInner,
    /// Ring round the next spot (accent).
    NextRing,
    /// Ring round a spot that the step keys are on, where it is not the next one (ink).
    ChosenRing,
    /// Round a hazard: the water to stay clear of (ink, dashed).
    HazardClear,
}

/// Shape of a mark. Shapes before colours: no two kinds share one.
#[uniffi::remote(Enum)]
pub enum MarkShape {
    /// A cast: a filled dot.
    CastDot,
    /// A bite: a filled diamond.
    BiteDiamond,
    /// A liner: an open triangle, point up.
    LinerTriangle,
    /// A lost fish: a cross.
    LostCross,
    /// A feature: an open square.
    FeatureSquare,
    /// A hazard: an open square standing on a corner with a cross in it.
    HazardCross,
    /// The next spot: a filled dot in accent.
    NextDot,
    /// A cast that is out now: an open circle with a dot in it.
    OutNow,
}

/// What a label says.
#[uniffi::remote(Enum)]
pub enum LabelRole {
    /// "kept back 2 h 26", boxed.
    KeptBack,
    /// Name of an aiming mark, plain.
    Mark,
    /// Rested minutes of a cell, boxed.
    Rested,
    /// How many marks of one shape, where they stand for more than can be drawn: on paper, without an edge.
    Count,
    /// Name of a hazard, boxed.
    Hazard,
    /// Name of a feature, plain.
    Feature,
    /// Range of a band edge in metres, plain, small.
    Range,
}

/// One frame of the swim, packed.
///
/// Polylines and polygons: points of part `i` are `xy[2*start[i]] .. xy[2*start[i+1]]`, and `start`
/// has one entry more than there are parts (or is empty where there are none).
#[uniffi::remote(Record)]
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
    /// Hatching: x1, y1, x2, y2 of each stroke in turn; denser where more fished.
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
    /// What numbers on the picture stand for, and what found no place, to be shown below it.
    pub key: Vec<KeyLine>,
    /// Centres of what a tap can choose, x and y in turn; at least 15 mm apart.
    pub target_xy: Vec<f32>,
    /// Column and band of each target in turn (see [`crate::swim::CellId`]).
    pub target_cell: Vec<u32>,
    /// How far from a centre a tap still counts, pixels.
    pub target_reach: f32,
}

/// A line of the key below the picture.
#[uniffi::remote(Record)]
pub struct KeyLine {
    /// The number on the picture; `None` where not even that found a place.
    pub number: Option<u32>,
    /// What the label would have said.
    pub text: String,
    /// What it is about.
    pub role: LabelRole,
}

/// A glass for the fan, as the shell has it.
#[uniffi::remote(Record)]
pub struct FanGlass {
    /// Width of the canvas in px.
    pub width_px: f64,
    /// Height of the canvas in px.
    pub height_px: f64,
    /// Px in a millimetre of the glass.
    pub px_per_mm: f64,
    /// Text scale of the system.
    pub text_scale: f64,
    /// The small fan of the Bank screen, without words.
    pub small: bool,
}

/// A key of the Swim screen and its place.
#[uniffi::remote(Record)]
pub struct SwimKeyPlace {
    /// Which.
    pub key: SwimKey,
    /// Where, in px.
    pub rect: Rect,
}

/// What the layout of the Swim screen is asked for.
#[uniffi::remote(Record)]
pub struct SwimPadAsk {
    /// What the keys do.
    pub pad: SwimPad,
    /// How many rays or cells there are to pick from.
    pub picks: u8,
}

/// Where the Swim screen's things lie, in px.
#[uniffi::remote(Record)]
pub struct SwimLayout {
    /// Title and area.
    pub head: Rect,
    /// The fan.
    pub canvas: Rect,
    /// Where next and its reasons.
    pub words: Rect,
    /// Keys that stand always.
    pub keys: Vec<SwimKeyPlace>,
    /// Places of the rays or cells to pick from, in their order.
    pub picks: Vec<Rect>,
    /// Further keys and rows are behind this one; none while a cell is picked.
    pub more: Option<Rect>,
    /// Back: to the rays, or to the Bank.
    pub back: Rect,
}
