//! An alternating test: two values are cast in turn.

use super::Stamp;
use restwater_compare::{Factor, Side};
use restwater_log::RodNumber;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// A running alternating test.
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
    /// When it began.
    pub began: Stamp,
    /// Casts of the session before it began.
    pub after_cast: usize,
    /// The spot it is fished on, in its fixed spelling, or `None` if the spot itself is alternated or was not
    /// entered.
    pub spot: Option<String>,
}

impl Alternation {
    /// The value of a side.
    pub fn value(&self, side: Side) -> &str {
        if side == Side::A { &self.a } else { &self.b }
    }
}
