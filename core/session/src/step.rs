//! One entry of the log as it is folded into a session.

use super::Stamp;
use super::end_corrected::Correction;
use super::model::{Landmark, LandmarkKind};
use restwater_log::{Op, OpOrder, Payload, SessionSetup};

/// An entry in force, on the time line.
pub(super) struct Step<'a> {
    /// The op as it was written.
    pub(super) op: &'a Op,
    /// When it happened, as corrected.
    pub(super) at: Stamp,
    /// When it was tapped.
    pub(super) tapped: Stamp,
    /// Its payload, as corrected.
    pub(super) payload: &'a Payload,
    /// The set-up of a START that was corrected.
    pub(super) setup: Option<&'a SessionSetup>,
    /// Where in the log it was confirmed to be right.
    pub(super) confirmed: Option<OpOrder>,
    /// What was entered about its end afterwards, in the order of the log.
    pub(super) ends: Vec<Correction>,
}

impl Step<'_> {
    /// A feature or a hazard that it puts on the map.
    pub(super) fn landmark(
        &self,
        name: &str,
        what: LandmarkKind,
        bearing_cdeg: i32,
        range_cm: u32,
    ) -> Landmark {
        Landmark { id: self.op.id, name: name.to_owned(), what, bearing_cdeg, range_cm }
    }
}
