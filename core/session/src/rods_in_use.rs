//! Which rods are being fished: a rod that was put away while another is fished doesn't count in forecasts.

use super::Stamp;
use super::cast::Cast;
use super::model::{Rod, RodState, Session};
use super::rhythm::PAUSE_MIN;
use restwater_log::RodNumber;

/// The rods that are out, and those that are in for no longer than a pause. Only the time counts in which another rod had a bait
/// out: rods that are all in may all be cast again, so at least one is always in use.
pub fn rods_in_use(session: &Session, now: &Stamp) -> Vec<RodNumber> {
    session.rods.iter().filter(|rod| !is_put_away(session, rod, now)).map(|rod| rod.number).collect()
}

fn is_put_away(session: &Session, rod: &Rod, now: &Stamp) -> bool {
    let RodState::Ready { since } = &rod.state else { return false };
    let since_ms = since.as_ref().or(session.started.as_ref()).map_or(0, |since| since.at_ms);
    let others = session.casts.iter().filter(|cast| cast.rod != rod.number);
    out_min(others, since_ms, now.at_ms) > PAUSE_MIN
}

/// Minutes between two places on the time line in which at least one of these casts was out.
fn out_min<'a>(casts: impl Iterator<Item = &'a Cast>, from_ms: i64, to_ms: i64) -> f64 {
    let end_ms = |cast: &Cast| cast.end.as_ref().map_or(to_ms, |end| end.at.at_ms).min(to_ms);
    let mut spans: Vec<(i64, i64)> =
        casts.map(|cast| (cast.start.at_ms.max(from_ms), end_ms(cast))).collect();
    spans.sort_unstable();
    let (mut covered_ms, mut until_ms) = (0_i64, from_ms);
    for (from, to) in spans {
        covered_ms = covered_ms.saturating_add(to.saturating_sub(from.max(until_ms)).max(0));
        until_ms = until_ms.max(to);
    }
    covered_ms as f64 / 60_000.0
}

#[cfg(test)]
mod tests {
    use super::super::fold;
    use super::super::written::{SESSION, Written};
    use super::*;
    use restwater_log::Payload;

    #[test]
    fn a_rod_is_put_away_once_it_is_in_for_more_than_a_pause_of_the_other_fishing() {
        let mut day = Written::new(3);
        let cast = |day: &mut Written, rod, from_s, to_s| {
            day.log(from_s, Payload::Cast { rod });
            day.log(to_s, Payload::WoundIn { rod });
        };
        let at = |day: &Written, s: i64| {
            let session = fold(SESSION, &day.ops);
            let now = Stamp { at_ms: s * 1_000, ..session.started.clone().unwrap() };
            rods_in_use(&session, &now)
        };
        cast(&mut day, 2, 0, 1_200);
        // Half an hour on the bank, with every rod in.
        cast(&mut day, 1, 3_000, 4_000);
        assert_eq!(
            at(&day, 4_000),
            [1, 2],
            "by hand: rod 3 was in for 2,200 s of fishing, rod 2 for 1,000 s"
        );
        // Two rods out together count once: 800 s more make exactly a pause for rod 2.
        cast(&mut day, 1, 4_000, 4_800);
        cast(&mut day, 3, 4_100, 4_800);
        assert_eq!(at(&day, 4_800), [1, 2, 3]);
        day.log(4_800, Payload::Cast { rod: 1 });
        assert_eq!(at(&day, 4_801), [1, 3]);
        day.log(4_900, Payload::Cast { rod: 2 });
        assert_eq!(at(&day, 4_901), [1, 2, 3], "back with its cast");
    }
}
