//! The figures of a session as tables and report give them.

use crate::log::{FishWeight, Reach, WeightUnit};

use crate::session::{Cast, EndCause, Session, reach_m, wait_of};

/// Grams in a dram: 453.59237 g (the international pound of 1959) over 256.
const DRAM_G: f64 = 453.592_37 / 256.0;

/// Counts over a session.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Counts {
    pub casts: usize,
    pub bites: usize,
    pub landed: usize,
    pub lost: usize,
    pub missed: usize,
    pub liners: usize,
    /// Weight of the fish whose weight is known, by scales or by eye, in grams.
    pub grams: f64,
    /// Landed fish without a weight.
    pub unweighed: usize,
}

impl Counts {
    pub fn of(session: &Session) -> Self {
        let mut counts = Self { casts: session.casts.len(), ..Self::default() };
        for cast in &session.casts {
            counts.bites += usize::from(cast.bite.is_some());
            counts.liners += cast.liners.len();
            match cast.end.as_ref().map(|end| &end.cause) {
                Some(EndCause::Landed { fish }) => {
                    counts.landed += 1;
                    match weight_parts(fish.as_ref()).1 {
                        Some((unit, count)) => counts.grams += grams(unit, count),
                        None => counts.unweighed += 1,
                    }
                }
                Some(EndCause::Lost) => counts.lost += 1,
                Some(EndCause::Missed) => counts.missed += 1,
                _ => {}
            }
        }
        counts
    }
}

/// How a weight is known, what was entered, and the class.
pub(super) fn weight_parts(
    fish: Option<&FishWeight>,
) -> (&'static str, Option<(WeightUnit, u32)>, Option<&str>) {
    match fish {
        None => ("", None, None),
        Some(FishWeight::Weighed { unit, count }) => ("scales", Some((*unit, *count)), None),
        Some(FishWeight::Guessed { unit, count }) => ("eye", Some((*unit, *count)), None),
        Some(FishWeight::Class { name }) => ("class", None, Some(name)),
    }
}

/// A weight in grams.
pub(super) fn grams(unit: WeightUnit, count: u32) -> f64 {
    match unit {
        WeightUnit::Drams => f64::from(count) * DRAM_G,
        WeightUnit::Grams => f64::from(count),
    }
}

/// Line out in metres.
pub(super) fn reach_metres(reach: Reach) -> f64 {
    reach_m(reach)
}

/// Minutes from splash to bite, or to what else ended the cast, as logged; none while it is out.
pub(super) fn wait_minutes(session: &Session, cast: &Cast) -> Option<f64> {
    wait_of(session, cast, 0.0).map(crate::bite::Wait::minutes)
}

/// What ended a cast, as the tables name it.
pub(super) fn end_name(cause: &EndCause) -> &'static str {
    match cause {
        EndCause::Landed { .. } => "landed",
        EndCause::Lost => "lost",
        EndCause::Missed => "missed",
        EndCause::OutcomeNotSeen => "outcome not seen",
        EndCause::WoundIn => "wound in",
        EndCause::EndNotSeen => "end not seen",
        EndCause::SessionEnded => "session ended",
    }
}
