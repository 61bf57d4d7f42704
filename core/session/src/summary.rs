//! The summary of a session, which is small enough to keep beside the log, so that years of summaries are
//! read at once.

use super::cast::EndCause;
use super::catch::classes_used;
use super::model::{Loss, PegPlace, Session};
use super::rows::rows_of;
use super::waits::{casts_ended, casts_that_tell, waits_of};
use restwater_compare::CastRow;
use restwater_sky::conditions::Conditions;
use restwater_waits::Wait;
use serde::{Deserialize, Serialize};

/// The summary of a session.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Summary {
    /// Name of the water.
    pub water: Option<String>,
    /// Peg name or number.
    pub peg: Option<String>,
    /// When it began, wall ms.
    pub started_ms: Option<i64>,
    /// When it ended, wall ms by the clock of its beginning: END may have been tapped on another phone weeks later.
    pub ended_ms: Option<i64>,
    /// Minutes east of UTC at its beginning.
    pub offset_min: i16,
    /// Minutes fished, from its beginning to its end: without breaks, and in a match from all-in to all-out.
    pub length_min: Option<f64>,
    /// Its waits; a cast has more than one if a twitch restarts the wait.
    pub waits: Vec<Wait>,
    /// The number of its casts that have ended: the count of a day.
    pub made: u32,
    /// The number of its casts that are evidence about waits: what rates are made of.
    pub casts: u32,
    /// Its waits with the values in force for each.
    pub rows: Vec<CastRow>,
    /// Fish in the net.
    pub landed: u32,
    /// Conditions as last logged.
    pub conditions: Conditions,
    /// Hooklengths lost.
    pub losses: Vec<Loss>,
    /// Doubtful entries.
    pub doubts: u32,
    /// The position of the peg, if entered.
    pub peg_place: Option<PegPlace>,
    /// The latest note of what to do next time.
    pub next_time: Option<String>,
    /// Classes of its fish, most recently used first.
    pub classes: Vec<String>,
}

impl Summary {
    /// Summarises a session.
    pub fn of(session: &Session) -> Self {
        let landed = |cast: &&super::Cast| {
            cast.end.as_ref().is_some_and(|end| matches!(end.cause, EndCause::Landed { .. }))
        };
        Self {
            water: session.setup.water.clone(),
            peg: session.setup.peg.clone(),
            started_ms: session.started.as_ref().map(|at| at.shown.wall_ms),
            ended_ms: session
                .started
                .as_ref()
                .zip(session.ended.as_ref())
                .map(|(from, to)| from.wall_at(to.at_ms)),
            offset_min: session.started.as_ref().map_or(0, |at| at.shown.offset_min),
            length_min: session.fished_min(),
            waits: waits_of(session),
            made: casts_ended(session) as u32,
            casts: casts_that_tell(session) as u32,
            rows: rows_of(session),
            landed: session.casts.iter().filter(landed).count() as u32,
            conditions: session.conditions_now(),
            losses: session.losses.clone(),
            doubts: session.doubts.len() as u32,
            peg_place: session.peg_place,
            next_time: session.next_time.last().map(|note| note.text.clone()),
            classes: classes_used(session),
        }
    }

    /// Whether it is evidence about waits: the end of at least one cast was seen.
    pub fn tells(&self) -> bool {
        !self.waits.is_empty()
    }

    /// Bites.
    pub fn bites(&self) -> u64 {
        self.waits.iter().filter(|wait| wait.is_bite()).count() as u64
    }

    /// Minutes with a bait out, up to the bite.
    pub fn out_min(&self) -> f64 {
        self.waits.iter().map(|wait| wait.minutes()).sum::<f64>() + 0.0
    }
}
