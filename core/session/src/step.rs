//! One entry of the log on its way into a session.

use super::Stamp;
use restwater_log::{Op, Payload, Said};

/// An entry in force, on the time line.
pub(super) struct Step<'a> {
    /// The op as it was written.
    pub(super) op: &'a Op,
    /// When it happened, as mended.
    pub(super) at: Stamp,
    /// When it was tapped.
    pub(super) tapped: Stamp,
    /// What it says, as mended.
    pub(super) payload: &'a Payload,
    /// What was entered about it afterwards.
    pub(super) said: Said,
    /// When the correction of its end was entered.
    pub(super) end_said_at: Option<Stamp>,
}
