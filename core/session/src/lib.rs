//! Ops folded into a session: rods, casts, ends, bites, rigs, peg.
//!
//! [`fold`] is a pure function of the set of ops: any order of arrival gives the same session. An entry that
//! makes no sense in its place (such as a bite with nothing out, after a merge) is kept as a [`Doubt`] to be
//! corrected; it is never silently dropped and never an error.
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

mod allowed;
mod alternation;
mod alternation_begun;
mod at_the_water;
mod breaks;
mod cast;
mod catch;
mod end_corrected;
mod ends;
mod fed;
mod feed;
mod feed_before;
pub mod figures;
mod fish_on;
mod fold;
mod habit;
mod late_end;
mod logged;
mod match_day;
mod match_record;
pub mod match_setup;
mod mending;
mod model;
mod neighbours;
pub mod own_count;
mod plan;
mod plan_day;
mod plan_start;
mod playing;
mod progress;
pub mod rest;
mod rhythm;
mod rods_in_use;
mod rows;
mod said;
mod same_place;
mod section;
mod shared;
mod spots;
mod step;
mod summary;
mod swim_kept;
mod time_line;
mod timed;
mod waits;
mod water;

pub use allowed::{NotNow, check};
pub use alternation::Alternation;
pub use cast::{Cast, CastEnd, EndCause};
pub use catch::{CaughtFish, catch, classes_used};
pub use end_corrected::end_said;
pub use fed::{Fed, Feeding, FishShown, NeighbourFish, feed_mg};
pub use feed::{FedHere, fed_by, point_of};
pub use feed_before::{FED_WITHIN_MIN, FeedBand, in_fed_water, is_fed, waits_by_feed};
pub use fish_on::{after_the_fish, fish_is_on};
pub use fold::{MOST_RODS, fold};
pub use habit::{HabitBeforeBites, habit_before_bites, habit_of};
pub use late_end::{in_overnight, last_before_end};
pub use logged::{Logged, factor_logged};
pub use match_record::{MatchDay, NetScales, OtherNet, SaidFish, Section};
pub use match_setup::{ClassGuess, MatchSetup};
pub use mending::{Gap, gap_before};
pub use model::{
    Break, ConditionsAt, Doubt, DoubtKind, KeptBack, Landmark, LandmarkKind, LastTimed, Loss, Mark, Note,
    PegPlace, Rod, RodState, Session, TakenPlan,
};
pub use neighbours::{Beside, beside};
pub use plan::Plan;
pub use plan_day::{PlanDue, PlanOutcome, plan_due, plan_outcomes};
pub use plan_start::{RodBefore, entries_of_plan, mark_bearing, planned_leave, planned_spot};
pub use playing::{Played, bite_before_s};
pub use progress::Progress;
pub use rhythm::{Rhythm, rhythm};
pub use rods_in_use::rods_in_use;
pub use rows::{length_mm, rows_of, setup_of, value_of};
pub use same_place::{same_peg, same_water};
pub use section::{Standing, at_scales, is_after_all_out, is_weighed_in, standing};
pub use spots::{LeaveBySpots, baits_of_others, leave_by_spots, where_next};
pub use summary::Summary;
pub use swim_kept::SwimKept;
pub use time_line::{Elapsed, Stamp, TimeLine, may_be_reset};
pub use timed::{stamps_of, timed};
pub use waits::{
    casts_by_telling, casts_ended, casts_that_tell, is_all_out, wait_end_ms, wait_of, wait_settings,
    waits_of, waits_of_cast,
};
pub use waits::{rods_waited_min, rods_waited_whole_min, running_from_ms, running_wait_min, running_wait_ms};
pub use water::{check_swim, on_swim, reach_near};
pub use water::{peg_on_earth, reach_m, swim_input, swim_of};

#[cfg(any(test, feature = "testing"))]
mod every;
#[cfg(test)]
mod fold_laws;
#[cfg(any(test, feature = "testing"))]
pub mod written;
