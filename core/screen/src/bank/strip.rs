//! The wait strip: a tape of minutes with this session's waits on it.

use super::hours::is_after_all_out;
use super::{BankInput, StripMark, StripMarkShape, StripView};
use crate::Arg;
use crate::leave_words::band;
use restwater_session::{Session, running_from_ms, running_wait_min, waits_of};
use restwater_waits::{AdviceState, Wait};
use std::collections::HashMap;

/// The shortest strip; it grows with the longest thing on it.
const SHORTEST_MIN: f64 = 30.0;
/// The longest: beyond it a mark sits on the edge.
const LONGEST_MIN: f64 = 120.0;
/// Marks closer than this share a place and are stacked.
const PLACE_MIN: f64 = 0.75;

/// Makes the strip.
pub(super) fn strip(input: &BankInput, open: Option<&Session>, headline: &str) -> StripView {
    let waits = open.map_or_else(Vec::new, waits_of);
    let cast = open.and_then(|session| session.running(input.chosen));
    let elapsed_min = open.zip(cast).and_then(|(session, cast)| running_wait_min(session, cast, input.now));
    // While the record says nothing no band is drawn, since it would only be that of the prior; while it says little, only the
    // minute of the headline is. Without a session, and after all-out, there is nothing to leave.
    let advice = open.and(input.reading).map(|r| &r.advice);
    let known_to_min = advice.map(|a| a.longest_wait_min).filter(|m| *m > 0.0);
    let leaves = !is_after_all_out(input);
    let advice = advice.filter(|a| leaves && a.state != AdviceState::CantTellYet);
    let recast_min = advice.map(|a| f64::from(a.leave_min));
    let hold_min = advice.and_then(band).map(|(hold, _)| hold);
    let longest = waits.iter().map(|w| w.minutes()).fold(SHORTEST_MIN - 5.0, f64::max);
    let longest = [elapsed_min, hold_min, recast_min].into_iter().flatten().fold(longest, f64::max);
    let length_min = (libm::ceil((longest + 2.0) / 5.0) * 5.0).min(LONGEST_MIN);
    let mut marks = stacked(&waits, length_min);
    let from_ms = open.zip(cast).and_then(|(session, cast)| running_from_ms(session, cast, input.now));
    if let Some((cast, from_ms)) = cast.zip(from_ms) {
        // Where the wait was then; one before it began has no place on it.
        let minutes = cast.liners.iter().map(|at| at.at_ms.saturating_sub(from_ms) as f64 / 60_000.0);
        let liners = minutes.filter(|minute| *minute >= 0.0).map(|minute| minute.min(length_min));
        marks.extend(liners.map(|minute| StripMark { minute, stack: 0, shape: StripMarkShape::Liner }));
    }
    StripView {
        length_min,
        figure_every_min: if length_min > 60.0 { 20 } else { 10 },
        elapsed_min,
        hold_min,
        recast_min,
        window_min: advice.and_then(|a| a.bite_window).map(|(from, to)| vec![from, to]),
        known_to_min,
        spoken: spoken(input, elapsed_min, headline, &waits),
        marks,
    }
}

/// Marks in the order of their minutes; those that share a place are stacked.
fn stacked(waits: &[Wait], length_min: f64) -> Vec<StripMark> {
    let mut sorted: Vec<&Wait> = waits.iter().collect();
    restwater_sorting::by(&mut sorted, |a, b| a.minutes().total_cmp(&b.minutes()));
    let mut taken: HashMap<i64, u32> = HashMap::new();
    let mark = |wait: &&Wait| {
        let minute = wait.minutes().min(length_min);
        let place = libm::floor(minute / PLACE_MIN) as i64;
        let count = taken.entry(place).or_insert(0);
        *count += 1;
        let shape = if wait.is_bite() { StripMarkShape::Bite } else { StripMarkShape::NoBite };
        StripMark { minute, stack: *count - 1, shape }
    };
    sorted.iter().map(mark).collect()
}

fn spoken(input: &BankInput, elapsed_min: Option<f64>, headline: &str, waits: &[Wait]) -> String {
    let elapsed = elapsed_min.map_or("none".to_owned(), |m| format!("{:.0}", libm::floor(m)));
    let bites = waits.iter().filter(|w| w.is_bite()).count();
    let args =
        [("elapsed", Arg::Text(&elapsed)), ("headline", Arg::Text(headline)), ("bites", Arg::Count(bites))];
    input.words.say_with("strip-spoken", &args)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn waits_at_one_place_are_stacked_and_long_ones_sit_on_the_edge() {
        let wait = |minutes, bite| Wait::new(minutes, bite).unwrap();
        let marks =
            stacked(&[wait(14.3, true), wait(200.0, false), wait(14.4, true), wait(9.0, false)], 120.0);
        let seen: Vec<_> = marks.iter().map(|m| (m.minute, m.stack, m.shape)).collect();
        assert_eq!(
            seen,
            [
                (9.0, 0, StripMarkShape::NoBite),
                (14.3, 0, StripMarkShape::Bite),
                (14.4, 1, StripMarkShape::Bite),
                (120.0, 0, StripMarkShape::NoBite)
            ]
        );
    }
}
