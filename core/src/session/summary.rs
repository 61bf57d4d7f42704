//! What an earlier session says today: small enough to keep beside the log and read in one go.

use super::model::Session;
use super::rows::rows_of;
use super::waits::waits_of;
use crate::bite::Wait;
use crate::compare::CastRow;
use serde::{Deserialize, Serialize};

/// The gist of a session.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Summary {
    /// Name of the water.
    pub water: Option<String>,
    /// Peg name or number.
    pub peg: Option<String>,
    /// When it began, wall ms.
    pub started_ms: Option<i64>,
    /// Minutes from its beginning to its end.
    pub length_min: Option<f64>,
    /// Its waits.
    pub waits: Vec<Wait>,
    /// Its casts with what was in force on each.
    pub rows: Vec<CastRow>,
}

impl Summary {
    /// The gist of a session, its unseen ends taken a turn-round before the next splash.
    pub fn of(session: &Session, turn_round_min: f64) -> Self {
        let span = session.started.as_ref().zip(session.ended.as_ref()).map(|(from, to)| to.since(from).ms);
        Self {
            water: session.setup.water.clone(),
            peg: session.setup.peg.clone(),
            started_ms: session.started.as_ref().map(|at| at.wall_ms),
            length_min: span.map(|ms| ms as f64 / 60_000.0),
            waits: waits_of(session, turn_round_min),
            rows: rows_of(session),
        }
    }
}
