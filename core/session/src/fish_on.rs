//! A fish on: nothing asks for a tap until it is landed, lost or missed.

use super::Session;
use super::model::{Rod, RodState};
use restwater_log::RodNumber;

/// How long after a fish an alarm that waited for it rings, in ms. A shell can ring only an alarm that it knows of before its
/// time, and it learns of this one after the tap that says how the bite ended. The project's own choice, no source.
const AFTER_FISH_MS: i64 = 10_000;

/// The first rod with a fish on.
pub fn fish_is_on(session: &Session) -> Option<RodNumber> {
    let on = |rod: &&Rod| matches!(rod.state, RodState::FishOn { .. });
    session.rods.iter().find(on).map(|rod| rod.number)
}

/// When an alarm for this minute may ring, in ms on the time line, or `None` while a fish is on. If its minute came before the
/// last bite had ended, it rings after that, even if it had rung before the bite, since the bite silenced it.
pub fn after_the_fish(session: &Session, at_ms: i64) -> Option<i64> {
    if fish_is_on(session).is_some() {
        return None;
    }
    let fish = session.casts.iter().filter(|cast| cast.bite.is_some());
    let off_ms = fish.filter_map(|cast| Some(cast.end.as_ref()?.at.at_ms)).max();
    Some(
        off_ms.filter(|off_ms| *off_ms >= at_ms).map_or(at_ms, |off_ms| off_ms.saturating_add(AFTER_FISH_MS)),
    )
}

#[cfg(test)]
mod tests {
    use super::super::fold;
    use super::super::written::{SESSION, Written};
    use super::*;
    use restwater_log::Payload;

    #[test]
    fn an_alarm_waits_for_the_last_fish_that_was_on_at_its_minute_or_after_it() {
        let mut day = Written::new(2);
        day.log(0, Payload::Cast { rod: 1 });
        day.log(60, Payload::Cast { rod: 2 });
        let may = |day: &Written, at_s: i64| after_the_fish(&fold(SESSION, &day.ops), at_s * 1_000);
        assert_eq!(may(&day, 600), Some(600_000));
        day.log(500, Payload::Bite { rod: 2 });
        assert_eq!((may(&day, 600), fish_is_on(&fold(SESSION, &day.ops))), (None, Some(2)));
        day.log(700, Payload::Missed { rod: 2 });
        assert_eq!(
            (may(&day, 400), may(&day, 600), may(&day, 701)),
            (Some(710_000), Some(710_000), Some(701_000))
        );
        day.log(800, Payload::Cast { rod: 2 });
        day.log(900, Payload::Bite { rod: 2 });
        day.log(960, Payload::Cast { rod: 2 });
        assert_eq!(
            may(&day, 920),
            Some(970_000),
            "its outcome was not seen: the next cast shows that it is off"
        );
    }
}
