//! The rhythm of a session: how long a turn-round takes and what a bite costs on top.

use super::cast::{Cast, EndCause};
use super::model::Session;

/// What a cast costs besides its wait, in minutes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rhythm {
    /// Wind-in to next splash.
    pub turn_round_min: f64,
    /// How long the bait settles after the splash, before its wait counts: as it was set up.
    pub settle_min: f64,
    /// Extra time that a bite costs: playing, unhooking, rebaiting.
    pub bite_extra_min: f64,
    /// How many turn-rounds that is learned from; 0 if it is the default, which is a guess.
    pub turn_rounds: usize,
    /// How many bites the extra time is learned from; 0 if it is the default, which is a guess.
    pub bites: usize,
}

impl Rhythm {
    /// From winding in to where the next wait counts: what a cast costs besides its wait.
    pub fn between_min(&self) -> f64 {
        self.turn_round_min + self.settle_min
    }
}

/// How many must be seen before they replace the defaults.
const ENOUGH: usize = 3;
/// A gap longer than this is a pause, not a turn-round.
pub(super) const PAUSE_MIN: f64 = 30.0;
/// A gap of more than this many times the median is a pause, too. A guess.
const PAUSE_TIMES: f64 = 4.0;

/// Learns the rhythm from the casts of a session. It uses means, since by renewal reward the bites per hour
/// depend on the mean time that a cast costs. Pauses are left out. Where there are too few gaps,
/// `default_turn_min` and `default_bite_min` are used.
pub fn rhythm(session: &Session, default_turn_min: f64, default_bite_min: f64) -> Rhythm {
    let mut turns = Vec::new();
    let mut after_bites = Vec::new();
    for rod in &session.rods {
        let casts: Vec<&Cast> = session.casts.iter().filter(|cast| cast.rod == rod.number).collect();
        for pair in casts.windows(2) {
            let [last, next] = pair else { continue };
            // A gap with a break in it is not a turn-round.
            let away = last.end.as_ref().is_some_and(|end| session.break_min(&end.at, &next.start) > 0.0);
            if !away {
                gap(last, next, &mut turns, &mut after_bites);
            }
        }
    }
    let turn = mean_without_pauses(&mut turns).filter(|_| turns.len() >= ENOUGH);
    let turn_round_min = turn.unwrap_or(default_turn_min);
    let extra = mean_without_pauses(&mut after_bites).filter(|_| after_bites.len() >= ENOUGH);
    Rhythm {
        turn_round_min,
        settle_min: f64::from(session.setup.settle_s) / 60.0,
        bite_extra_min: extra.map_or(default_bite_min, |gap| (gap - turn_round_min).max(0.0)),
        turn_rounds: turn.map_or(0, |_| turns.len()),
        bites: extra.map_or(0, |_| after_bites.len()),
    }
}

/// Adds the time from one cast's end (or its bite) to the next splash, if both are known. An approximate time may itself be what
/// was proposed by the rhythm, so it teaches none.
fn gap(last: &Cast, next: &Cast, turns: &mut Vec<f64>, after_bites: &mut Vec<f64>) {
    let Some(end) = &last.end else { return };
    let (from, list) = match (&end.cause, &last.bite) {
        (EndCause::WoundIn, _) => (&end.at, turns),
        (EndCause::Landed { .. } | EndCause::Lost | EndCause::Missed, Some((bite, _))) => (bite, after_bites),
        _ => return,
    };
    let gap = next.start.minutes_since(from);
    let timed = [from, &next.start].iter().all(|at| at.shown.approx_s == 0);
    if timed && (0.0..=PAUSE_MIN).contains(&gap) {
        list.push(gap);
    }
}

/// The mean of the gaps that are not far longer than the median.
fn mean_without_pauses(gaps: &mut [f64]) -> Option<f64> {
    let longest = PAUSE_TIMES * median(gaps)?;
    let usual = gaps.iter().filter(|gap| **gap <= longest);
    Some(usual.clone().sum::<f64>() / usual.count() as f64)
}

pub(super) fn median(values: &mut [f64]) -> Option<f64> {
    values.sort_by(f64::total_cmp);
    let middle = values.len() / 2;
    let upper = *values.get(middle)?;
    Some(if values.len() % 2 == 1 { upper } else { f64::midpoint(upper, values[middle - 1]) })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_mean_turn_round_counts_and_a_pause_does_not() {
        assert_eq!(mean_without_pauses(&mut [1.0, 2.0, 6.0]), Some(3.0));
        assert_eq!(mean_without_pauses(&mut [1.0, 2.0, 6.0, 25.0, 1.0]), Some(2.5));
        assert_eq!(mean_without_pauses(&mut []), None);
    }
}
