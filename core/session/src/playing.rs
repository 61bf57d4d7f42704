//! How long a fish is played: from the bite to the landing, or to the loss.

use super::Stamp;
use super::cast::{Cast, EndCause};
use super::model::{RodState, Session};
use super::rhythm::median;
use restwater_log::RodNumber;

/// How many fish must have been played before their time is learned.
const ENOUGH: usize = 3;
/// A longer time was not playing, but an outcome that was logged late.
const LONGEST_MIN: f64 = 60.0;

/// How the playing of a hooked fish ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Played {
    /// It was landed.
    Landed,
    /// It came off.
    Lost,
}

impl Played {
    /// Seconds assumed until enough fish were played. A guess.
    fn guess_s(self) -> u32 {
        match self {
            Self::Landed => 120,
            Self::Lost => 60,
        }
    }

    fn is_of(self, cast: &Cast) -> bool {
        let cause = cast.end.as_ref().map(|end| &end.cause);
        match self {
            Self::Landed => matches!(cause, Some(EndCause::Landed { .. })),
            Self::Lost => cause == Some(&EndCause::Lost),
        }
    }
}

/// The usual time from a bite to its outcome.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct PlayingTime {
    /// In seconds.
    seconds: u32,
    /// How many fish it is learned from; 0 if it is a guess.
    fish: usize,
}

/// Learns the time from the bites of a session that were tapped when they came. It is the median, since some
/// fish take very long.
fn playing_time(session: &Session, played: Played) -> PlayingTime {
    let of = session.casts.iter().filter(|cast| played.is_of(cast));
    let mut minutes: Vec<f64> = of.filter_map(minutes).filter(|m| (0.0..=LONGEST_MIN).contains(m)).collect();
    let fish = minutes.len();
    match median(&mut minutes).filter(|_| fish >= ENOUGH) {
        Some(minutes) => PlayingTime { seconds: libm::round(minutes * 60.0) as u32, fish },
        None => PlayingTime { seconds: played.guess_s(), fish: 0 },
    }
}

/// How many seconds before an outcome at `now` a bite came that was not logged, or `None` if the rod has no bait out. It came
/// the usual time before it, but after the splash and after any liner, indication or twitch of its cast: if the last of these was
/// less than twice the usual time ago, the bite is put half-way between.
pub fn bite_before_s(session: &Session, rod: RodNumber, played: Played, now: &Stamp) -> Option<u32> {
    let RodState::Out { cast } = session.rod(rod)?.state else { return None };
    let out_s = now.ms_since(session.casts.get(cast)?.last_logged()).max(0) / 1_000;
    let half = u32::try_from(out_s / 2).unwrap_or(u32::MAX);
    Some(playing_time(session, played).seconds.min(half))
}

/// `None` if the bite was set back or entered afterwards, since such a time is no evidence.
fn minutes(cast: &Cast) -> Option<f64> {
    let (bite, _) = cast.bite.as_ref().filter(|(at, _)| at.shown.approx_s == 0)?;
    Some(cast.end.as_ref()?.at.minutes_since(bite))
}

#[cfg(test)]
mod tests {
    use super::super::fold;
    use super::super::written::{SESSION, Written};
    use super::*;
    use restwater_log::Payload;

    #[test]
    fn the_time_is_a_guess_until_three_fish_were_played_and_then_their_median() {
        let mut day = Written::new(1);
        let time = |day: &Written| playing_time(&fold(SESSION, &day.ops), Played::Landed);
        assert_eq!(time(&day), PlayingTime { seconds: 120, fish: 0 });
        for (i, played_s) in (0..).zip([40, 600, 50]) {
            let s = 3_000 * i;
            day.log(s, Payload::Cast { rod: 1 });
            day.log(s + 600, Payload::Bite { rod: 1 });
            day.log(s + 600 + played_s, Payload::Landed { rod: 1, fish: None });
        }
        assert_eq!(time(&day), PlayingTime { seconds: 50, fish: 3 });
        assert_eq!(playing_time(&fold(SESSION, &day.ops), Played::Lost).seconds, 60);
    }

    #[test]
    fn a_bite_that_was_set_back_does_not_count() {
        let mut day = Written::new(1);
        for i in 0..3 {
            day.log(3_000 * i, Payload::Cast { rod: 1 });
            let bite = day.log(3_000 * i + 600, Payload::Bite { rod: 1 });
            day.amend(3_000 * i + 600, bite, Payload::TimeSet { back_s: 120 });
            day.log(3_000 * i + 601, Payload::Landed { rod: 1, fish: None });
        }
        assert_eq!(playing_time(&fold(SESSION, &day.ops), Played::Landed).fish, 0);
    }
}
