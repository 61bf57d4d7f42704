//! A test of two values cast in turn, as the log tells it.

use super::logged::factor_from_logged;
use super::model::Rod;
use super::rows::value_of;
use super::step::Step;
use restwater_compare::{Factor, Side};
use restwater_log::{Payload, RodNumber};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// An alternating test that runs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Alternation {
    /// The op that began it.
    pub op: Uuid,
    /// Which rod.
    pub rod: RodNumber,
    /// What is alternated.
    pub factor: Factor,
    /// Value A.
    pub a: String,
    /// Value B.
    pub b: String,
    /// Whether the first cast is with B.
    pub b_first: bool,
    /// Casts planned.
    pub casts: u16,
    /// Casts of the session before it began.
    pub after_cast: usize,
    /// The spot it is fished on, in its fixed spelling, or `None` if the spot is what is alternated or was not
    /// entered.
    pub spot: Option<String>,
}

impl Alternation {
    /// The one that an entry begins, on a rod as it is then.
    pub(super) fn begun(step: &Step, state: &Rod, after_cast: usize) -> Option<Self> {
        let Payload::AlternationStarted { rod, factor, a, b, b_first, casts } = step.payload else {
            return None;
        };
        let factor = factor_from_logged(*factor);
        let spot = value_of(Factor::Spot, &state.rig, state.spot.as_ref());
        Some(Self {
            op: step.op.id,
            rod: *rod,
            factor,
            a: a.clone(),
            b: b.clone(),
            b_first: *b_first,
            casts: *casts,
            after_cast,
            spot: spot.filter(|_| factor != Factor::Spot),
        })
    }

    /// The value of a side.
    pub fn value(&self, side: Side) -> &str {
        if side == Side::A { &self.a } else { &self.b }
    }
}
