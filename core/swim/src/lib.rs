//! The swim: peg frame, spots, cells, fished and rested, kept-back water, where next.
//!
//! The session fills [`SwimInput`], and [`Swim::new`] checks it and cuts the cells. [`Swim::figures`]
//! computes what is fished, rested, fresh and kept back at a moment (an earlier moment replays the day),
//! [`Swim::where_next`] ranks cells by reasons, [`Swim::drift`] examines the bites, and [`Swim::scene`] packs
//! the picture.
// The code that uniffi generates is unsafe; builds without that feature forbid it for everything written by
// hand.
#![cfg_attr(not(feature = "uniffi"), forbid(unsafe_code))]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp))]

/// The type that uniffi's derives refer to. It is declared by hand because uniffi's scaffolding would also
/// export a runtime, which only the crate `bindings` needs.
#[cfg(feature = "uniffi")]
#[doc(hidden)]
pub struct UniFfiTag;

mod boundary;
#[cfg(any(test, feature = "testing"))]
pub mod canvases;
mod cells;
mod columns;
#[cfg(any(test, feature = "testing"))]
pub mod covered;
mod disc_area;
mod drift;
mod earth;
mod error;
mod fished;
mod frame;
mod geojson;
mod input;
#[cfg(test)]
mod laws;
mod next_spot;
pub mod planar;
pub mod range;
mod reasons;
mod scatter;
mod scene;
mod sector;
mod seen;
mod water;
mod worth;

pub use boundary::Neighbours;
pub use cells::{Cell, CellId, Swim};
pub use columns::{Column, ColumnName, Columns};
pub use drift::{Drift, DriftAlong, DriftLean, PMethod, RankTrend, drift_along};
pub use earth::{Course, EarthError, PegOnEarth, Place, course, place_from};
pub use error::SwimError;
pub use fished::{CellFigures, CellState, KeptBackNow, SwimFigures};
pub use frame::{LONGEST_RANGE_M, Point, Spot, bearing_range, point_at};
pub use geojson::{DayOnMap, FED, FISH_LANDED, FISH_SHOWING, GeoJsonError, ImportedSwim, swim_from_geojson};
pub use input::{
    AimingMark, Band, CastAt, Fan, Feature, FeatureKind, FedAt, Hazard, KeptBack, ShownAt, SwimInput,
};
pub use next_spot::{GoIn, GoInBecause, NextSpot, WhereNext};
pub use reasons::{Against, Reason};
pub use scatter::{Disturbance, DisturbanceRow, Scatter};
pub use scene::{
    ClockCut, Detail, FaceWidths, FillRole, Hand, KeyLine, LEGEND, LabelRole, LegendSample, LetterWidth,
    LineRole, MarkShape, SceneAsk, SceneWords, Step, SwimScene, face_widths, legend,
};
pub use sector::AnnularSector;
pub use water::Water;
pub use worth::{CellWorth, SpotsWorth};
