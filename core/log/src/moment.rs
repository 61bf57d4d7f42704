//! When something happened, told by two clocks.

use serde::{Deserialize, Serialize};

/// A point in time as the phone knew it.
///
/// The wall clock says what time of day it was but can jump; the monotonic clock can't jump but starts
/// anew at each boot. Durations are measured by the second where both ends were in the same boot.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Moment {
    /// Milliseconds since 1970-01-01 UTC by the wall clock.
    #[serde(rename = "wall")]
    pub wall_ms: i64,
    /// Minutes east of UTC of the phone's local time.
    #[serde(rename = "offset")]
    pub offset_min: i16,
    /// Name of the time zone (IANA), empty where the phone doesn't say.
    pub zone: String,
    /// Milliseconds of the monotonic clock (it counts while the phone sleeps).
    #[serde(rename = "mono")]
    pub mono_ms: i64,
    /// What tells one boot of the phone from another.
    pub boot: String,
    /// How far off the time may be, in seconds; 0 where it is as tapped.
    #[serde(rename = "approx", default, skip_serializing_if = "is_zero")]
    pub approx_s: u32,
}

#[allow(clippy::trivially_copy_pass_by_ref)] // the signature serde asks for
fn is_zero(n: &u32) -> bool {
    *n == 0
}

/// Which clock measured a span.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Yardstick {
    /// Both ends in one boot: the monotonic clock.
    Monotonic,
    /// The phone was rebooted between, or the ends come from two phones: the wall clock.
    Wall,
}

/// How long it was from one moment to another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Span {
    /// Milliseconds; negative where the later moment is before the earlier one.
    pub ms: i64,
    /// The clock that measured it.
    pub by: Yardstick,
    /// How far the wall clock was moved meanwhile, in ms; 0 where it can't be told.
    pub jump_ms: i64,
}

impl Moment {
    /// A difference between the clocks below this is drift, not a jump.
    pub const JUMP_MS: i64 = 2_000;

    /// The span from `earlier` to this moment.
    pub fn since(&self, earlier: &Moment) -> Span {
        let wall = self.wall_ms.saturating_sub(earlier.wall_ms);
        if self.boot.is_empty() || self.boot != earlier.boot {
            return Span { ms: wall, by: Yardstick::Wall, jump_ms: 0 };
        }
        let ms = self.mono_ms.saturating_sub(earlier.mono_ms);
        let off = wall.saturating_sub(ms);
        let jump_ms = if off.saturating_abs() > Self::JUMP_MS { off } else { 0 };
        Span { ms, by: Yardstick::Monotonic, jump_ms }
    }

    /// The same moment set back by whole seconds, marked as approximate.
    #[must_use]
    pub fn set_back(&self, seconds: u32) -> Moment {
        let ms = i64::from(seconds) * 1_000;
        Moment {
            wall_ms: self.wall_ms.saturating_sub(ms),
            mono_ms: self.mono_ms.saturating_sub(ms),
            // Set back by the minute: right to about half a minute at best.
            approx_s: self.approx_s.max(30),
            ..self.clone()
        }
    }

    /// The moment so many seconds later, remembered rather than tapped: marked as approximate.
    #[must_use]
    pub fn later(&self, seconds: u32) -> Moment {
        let ms = i64::from(seconds) * 1_000;
        Moment {
            wall_ms: self.wall_ms.saturating_add(ms),
            mono_ms: self.mono_ms.saturating_add(ms),
            approx_s: self.approx_s.max(30),
            ..self.clone()
        }
    }

    /// The local wall time in milliseconds, for clocks and days.
    pub fn local_ms(&self) -> i64 {
        local_ms(self.wall_ms, self.offset_min)
    }
}

/// Local wall time in milliseconds, of a wall time and its offset in minutes.
pub fn local_ms(wall_ms: i64, offset_min: i16) -> i64 {
    wall_ms.saturating_add(i64::from(offset_min) * 60_000)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(wall_s: i64, mono_s: i64, boot: &str) -> Moment {
        Moment {
            wall_ms: wall_s * 1_000,
            offset_min: 0,
            zone: "Etc/UTC".into(),
            mono_ms: mono_s * 1_000,
            boot: boot.into(),
            approx_s: 0,
        }
    }

    #[test]
    fn one_boot_measures_by_the_monotonic_clock_and_sees_a_jump() {
        let span = at(1_000 - 7_200, 160, "a").since(&at(1_000, 100, "a"));
        assert_eq!(span, Span { ms: 60_000, by: Yardstick::Monotonic, jump_ms: -7_260_000 });
    }

    #[test]
    fn drift_of_a_second_is_no_jump() {
        assert_eq!(at(1_061, 160, "a").since(&at(1_000, 100, "a")).jump_ms, 0);
    }

    #[test]
    fn a_reboot_measures_by_the_wall_clock() {
        let span = at(1_300, 5, "b").since(&at(1_000, 100, "a"));
        assert_eq!(span, Span { ms: 300_000, by: Yardstick::Wall, jump_ms: 0 });
    }

    #[test]
    fn set_back_is_marked_approximate() {
        let back = at(1_000, 100, "a").set_back(60);
        assert_eq!((back.wall_ms, back.mono_ms, back.approx_s), (940_000, 40_000, 30));
    }

    #[test]
    fn extreme_clocks_saturate() {
        let far = Moment { wall_ms: i64::MIN, mono_ms: i64::MIN, ..at(0, 0, "a") };
        assert!(far.since(&at(1, 1, "a")).ms < 0);
        assert_eq!(far.set_back(60).wall_ms, i64::MIN);
    }
}
