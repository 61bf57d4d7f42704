//! The rhythm of a session: how long a turn-round takes and what a bite costs on top.

use super::cast::{Cast, EndCause};
use super::model::Session;

/// What a cast costs beside its wait, in minutes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rhythm {
    /// Wind-in to next splash.
    pub turn_round_min: f64,
    /// Extra time that a bite costs: playing, unhooking, rebaiting.
    pub bite_extra_min: f64,
    /// How many turn-rounds that is learned from; 0 where it is the default, a guess.
    pub turn_rounds: usize,
    /// How many bites the extra time is learned from; 0 where it is the default, a guess.
    pub bites: usize,
}

/// Until three are seen the defaults stand in.
const ENOUGH: usize = 3;
/// A gap over this long is a pause, not a turn-round.
const PAUSE_MIN: f64 = 30.0;

/// Learns the rhythm from the casts of a session: medians, since a long pause says nothing of a turn-round.
/// `default_turn_min` and `default_bite_min` stand where there are too few.
pub fn rhythm(session: &Session, default_turn_min: f64, default_bite_min: f64) -> Rhythm {
    let mut turns = Vec::new();
    let mut after_bites = Vec::new();
    for rod in &session.rods {
        let casts: Vec<&Cast> = session.casts.iter().filter(|cast| cast.rod == rod.number).collect();
        for pair in casts.windows(2) {
            let [last, next] = pair else { continue };
            gap(last, next, &mut turns, &mut after_bites);
        }
    }
    let turn = median(&mut turns).filter(|_| turns.len() >= ENOUGH);
    let turn_round_min = turn.unwrap_or(default_turn_min);
    let extra = median(&mut after_bites).filter(|_| after_bites.len() >= ENOUGH);
    Rhythm {
        turn_round_min,
        bite_extra_min: extra.map_or(default_bite_min, |gap| (gap - turn_round_min).max(0.0)),
        turn_rounds: turn.map_or(0, |_| turns.len()),
        bites: extra.map_or(0, |_| after_bites.len()),
    }
}

/// The time from one cast's end (or its bite) to the next splash, where both are known.
fn gap(last: &Cast, next: &Cast, turns: &mut Vec<f64>, after_bites: &mut Vec<f64>) {
    let minutes = |from| next.start.minutes_since(from);
    let Some(end) = &last.end else { return };
    let (gap, list) = match (&end.cause, &last.bite) {
        (EndCause::WoundIn, _) => (minutes(&end.at), turns),
        (EndCause::Landed { .. } | EndCause::Lost | EndCause::Missed, Some((bite, _))) => {
            (minutes(bite), after_bites)
        }
        _ => return,
    };
    if (0.0..=PAUSE_MIN).contains(&gap) {
        list.push(gap);
    }
}

pub(super) fn median(values: &mut [f64]) -> Option<f64> {
    values.sort_by(f64::total_cmp);
    let middle = values.len() / 2;
    let upper = *values.get(middle)?;
    Some(if values.len() % 2 == 1 { upper } else { f64::midpoint(upper, values[middle - 1]) })
}
