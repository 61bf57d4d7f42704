//! The match clock: the organiser's signals decide, the phone's clock follows.
//!
//! All times are UTC milliseconds. The organiser's clock may differ from the phone's; `offset_ms` is what to
//! add to the phone's time to read the organiser's. The phone's time here is what its clock would show if
//! nobody had moved it since the match was set; the session, which knows the elapsed time, computes it.

use serde::{Deserialize, Serialize};

/// Milliseconds in a minute.
pub const MINUTE_MS: i64 = 60_000;
/// Milliseconds in an hour.
pub const HOUR_MS: i64 = 60 * MINUTE_MS;
/// Milliseconds in a day.
pub const DAY_MS: i64 = 24 * HOUR_MS;

/// When the match starts and stops, by the organiser's clock.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct MatchClock {
    all_in_ms: i64,
    all_out_ms: i64,
    landing_min: u16,
    offset_ms: i64,
}

/// The phase of the match.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Phase {
    /// Before all-in.
    Before {
        /// Milliseconds to all-in.
        to_all_in_ms: i64,
    },
    /// Between all-in and all-out.
    Fishing {
        /// Milliseconds to all-out.
        left_ms: i64,
    },
    /// After all-out, while a fish hooked before it may be landed.
    Landing {
        /// Milliseconds left to land it.
        left_ms: i64,
    },
    /// Over.
    Over,
}

/// An alarm and when it is due by the phone's clock.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Alarm {
    /// Minutes before all-out.
    pub minutes: u16,
    /// Phone's time at which to sound.
    pub phone_ms: i64,
}

/// Why the clock can't be set in this way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum ClockError {
    /// Ends before it starts.
    #[error("all-out comes {0} min before all-in")]
    OutBeforeIn(i64),
    /// No time between.
    #[error("all-in and all-out are the same moment")]
    NoTime,
    /// Longer than a fortnight.
    #[error("{0} hours between all-in and all-out is more than a fortnight")]
    TooLong(i64),
    /// The two clocks differ by too much for a slow or fast watch.
    #[error("the organiser's clock and the phone's are {0} h apart")]
    OffsetTooLarge(i64),
    /// Times outside what a calendar holds.
    #[error("that moment is outside the calendar")]
    NotAMoment,
    /// Too long to land a fish after all-out.
    #[error("{0} minutes to land a fish after all-out is more than two hours")]
    LandingTooLong(u16),
    /// An alarm before all-in.
    #[error("an alarm {0} min before all-out would sound before all-in")]
    AlarmTooEarly(u16),
}

/// A fortnight.
const LONGEST_MS: i64 = 14 * DAY_MS;
/// Half a day: more is a wrong date, not a slow watch.
const OFFSET_MS: i64 = 12 * HOUR_MS;
/// About 100 years either side of 1970 keeps every sum far from the ends of an integer.
const MOMENT_MS: i64 = 100 * 366 * DAY_MS;

impl MatchClock {
    /// A match from all-in to all-out by the organiser's clock, with minutes to land a hooked fish after.
    pub fn new(
        all_in_ms: i64,
        all_out_ms: i64,
        landing_min: u16,
        offset_ms: i64,
    ) -> Result<Self, ClockError> {
        if !moment(all_in_ms) || !moment(all_out_ms) {
            return Err(ClockError::NotAMoment);
        }
        let length = all_out_ms - all_in_ms;
        if length < 0 {
            return Err(ClockError::OutBeforeIn(-length / MINUTE_MS));
        }
        if length == 0 {
            return Err(ClockError::NoTime);
        }
        if length > LONGEST_MS {
            return Err(ClockError::TooLong(length / HOUR_MS));
        }
        if landing_min > 120 {
            return Err(ClockError::LandingTooLong(landing_min));
        }
        Ok(Self { all_in_ms, all_out_ms, landing_min, offset_ms: checked_offset(offset_ms)? })
    }

    /// The offset learned from a signal: it was due at `announced_ms` and heard when the phone showed `phone_ms`.
    pub fn offset_from_signal(announced_ms: i64, phone_ms: i64) -> Result<i64, ClockError> {
        if !moment(announced_ms) || !moment(phone_ms) {
            return Err(ClockError::NotAMoment);
        }
        checked_offset(announced_ms - phone_ms)
    }

    /// All-in by the phone's clock.
    pub fn all_in_phone_ms(self) -> i64 {
        self.all_in_ms - self.offset_ms
    }

    /// All-out by the phone's clock.
    pub fn all_out_phone_ms(self) -> i64 {
        self.all_out_ms - self.offset_ms
    }

    /// The phase of the match when the phone shows `phone_ms`. Fishing begins exactly at all-in and has ended
    /// at all-out.
    pub fn phase(self, phone_ms: i64) -> Phase {
        let (start, stop) = (self.all_in_phone_ms(), self.all_out_phone_ms());
        let landed_by = stop + i64::from(self.landing_min) * MINUTE_MS;
        if phone_ms < start {
            Phase::Before { to_all_in_ms: start.saturating_sub(phone_ms) }
        } else if phone_ms < stop {
            Phase::Fishing { left_ms: stop - phone_ms }
        } else if phone_ms < landed_by {
            Phase::Landing { left_ms: landed_by - phone_ms }
        } else {
            Phase::Over
        }
    }

    /// Milliseconds left to fish when the phone shows `phone_ms`: before all-in the whole match, after
    /// all-out 0.
    pub fn left_ms(self, phone_ms: i64) -> i64 {
        match self.phase(phone_ms) {
            Phase::Before { .. } => self.all_out_ms - self.all_in_ms,
            Phase::Fishing { left_ms } => left_ms,
            Phase::Landing { .. } | Phase::Over => 0,
        }
    }

    /// The alarms still to come after `phone_ms`, soonest first, each minute once.
    pub fn alarms(self, minutes: &[u16], phone_ms: i64) -> Result<Vec<Alarm>, ClockError> {
        let mut sorted = minutes.to_vec();
        sorted.sort_unstable_by(|a, b| b.cmp(a));
        sorted.dedup();
        let mut alarms = Vec::with_capacity(sorted.len());
        for minutes in sorted {
            let at = self.all_out_phone_ms() - i64::from(minutes) * MINUTE_MS;
            if at < self.all_in_phone_ms() {
                return Err(ClockError::AlarmTooEarly(minutes));
            }
            if at > phone_ms {
                alarms.push(Alarm { minutes, phone_ms: at });
            }
        }
        Ok(alarms)
    }
}

fn moment(ms: i64) -> bool {
    (-MOMENT_MS..=MOMENT_MS).contains(&ms)
}

fn checked_offset(offset_ms: i64) -> Result<i64, ClockError> {
    if (-OFFSET_MS..=OFFSET_MS).contains(&offset_ms) {
        Ok(offset_ms)
    } else {
        Err(ClockError::OffsetTooLarge(offset_ms.saturating_abs() / HOUR_MS))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEN: i64 = 1_800_000_000_000;
    const HOUR: i64 = HOUR_MS;

    fn with_offset(offset_ms: i64) -> Result<MatchClock, ClockError> {
        MatchClock::new(TEN, TEN + 5 * HOUR, 15, offset_ms)
    }

    fn clock() -> MatchClock {
        with_offset(0).unwrap()
    }

    #[test]
    fn the_phases_follow_each_other() {
        assert_eq!(clock().phase(TEN - 1), Phase::Before { to_all_in_ms: 1 });
        assert_eq!(clock().phase(TEN), Phase::Fishing { left_ms: 5 * HOUR });
        assert_eq!(clock().phase(TEN + 5 * HOUR), Phase::Landing { left_ms: 15 * MINUTE_MS });
        assert_eq!(clock().phase(TEN + 5 * HOUR + 15 * MINUTE_MS), Phase::Over);
        assert_eq!(clock().left_ms(TEN - HOUR), 5 * HOUR);
    }

    #[test]
    fn the_signal_sets_the_offset() {
        // All-in was due at ten and heard when the phone showed a minute past.
        let offset = MatchClock::offset_from_signal(TEN, TEN + MINUTE_MS).unwrap();
        let clock = with_offset(offset).unwrap();
        assert_eq!(clock.phase(TEN + MINUTE_MS), Phase::Fishing { left_ms: 5 * HOUR });
        assert_eq!(clock.all_out_phone_ms(), TEN + 5 * HOUR + MINUTE_MS);
    }

    #[test]
    fn all_out_before_all_in_is_refused() {
        assert_eq!(MatchClock::new(TEN, TEN - HOUR, 0, 0), Err(ClockError::OutBeforeIn(60)));
        assert_eq!(MatchClock::new(TEN, TEN, 0, 0), Err(ClockError::NoTime));
        assert!(matches!(MatchClock::new(TEN, TEN + 400 * HOUR, 0, 0), Err(ClockError::TooLong(400))));
        assert!(matches!(with_offset(24 * HOUR), Err(ClockError::OffsetTooLarge(24))));
        assert_eq!(MatchClock::new(i64::MIN, TEN, 0, 0), Err(ClockError::NotAMoment));
        assert_eq!(MatchClock::new(TEN, TEN + HOUR, 999, 0), Err(ClockError::LandingTooLong(999)));
        assert!(matches!(with_offset(i64::MIN), Err(ClockError::OffsetTooLarge(_))));
    }

    #[test]
    fn alarms_still_to_come_sound_once_each() {
        let at = TEN + 5 * HOUR - 20 * MINUTE_MS;
        let minutes: Vec<u16> =
            clock().alarms(&[5, 30, 10, 5], at).unwrap().iter().map(|a| a.minutes).collect();
        assert_eq!(minutes, vec![10, 5]);
        assert_eq!(clock().alarms(&[301], at), Err(ClockError::AlarmTooEarly(301)));
    }

    #[test]
    fn any_phone_time_has_a_phase() {
        assert_eq!(clock().phase(i64::MAX), Phase::Over);
        assert!(matches!(clock().phase(i64::MIN), Phase::Before { .. }));
    }
}
