//! When something happened, by two clocks.

use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// A point in time, as the phone recorded it.
///
/// The wall clock says what time of day it was but can jump; the monotonic clock can't jump but restarts at
/// each boot. Durations are measured by the monotonic clock if both ends were in the same boot.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Moment {
    /// Milliseconds since 1970-01-01 UTC by the wall clock.
    #[serde(rename = "wall")]
    pub wall_ms: i64,
    /// Minutes east of UTC of the phone's local time.
    #[serde(rename = "offset")]
    pub offset_min: i16,
    /// Name of the time zone (IANA), empty if the phone doesn't report it.
    pub zone: String,
    /// Milliseconds of the monotonic clock (it counts while the phone sleeps).
    #[serde(rename = "mono")]
    pub mono_ms: i64,
    /// Identifies the boot of the phone. It is prefixed with the phone ([`Moment::on_device`]); entries of
    /// earlier versions have only the phone's own name for the boot, which is often just a count.
    pub boot: String,
    /// How far off the time may be, in seconds; 0 if it is the time of the tap.
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
    /// The monotonic clock: both ends are in one boot.
    Monotonic,
    /// The wall clock: the phone was rebooted in between, or the ends come from two phones.
    Wall,
}

/// The time from one moment to another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Span {
    /// Milliseconds; negative if the later moment is before the earlier one.
    pub ms: i64,
    /// The clock that measured it.
    pub by: Yardstick,
    /// How far the wall clock was moved meanwhile, in ms; 0 if that can't be known.
    pub jump_ms: i64,
}

impl Moment {
    /// A difference between the clocks below this is drift, not a jump.
    pub const JUMP_MS: i64 = 2_000;

    /// The same moment with the phone named in its boot, so that no two phones share one. A boot that names a
    /// phone already is not changed, and neither is an empty one.
    #[must_use]
    pub fn on_device(&self, device: Uuid) -> Moment {
        if self.boot.is_empty() || device_and_boot(&self.boot).0.is_some() {
            return self.clone();
        }
        // The last digits of an id are random: enough to tell the few phones of a log apart.
        let device = device.as_u128() & DEVICE_DIGITS_MASK;
        Moment { boot: format!("{device:012x}/{}", self.boot), zone: self.zone.clone(), ..*self }
    }

    /// The phone's own name for its boot, without the prefix, which entries of earlier versions don't have.
    pub fn own_boot(&self) -> &str {
        device_and_boot(&self.boot).1
    }

    /// Whether both moments are in one boot of one phone. A moment that names no phone is assumed to be from
    /// the same phone.
    fn is_same_boot(&self, other: &Moment) -> bool {
        let ((device, boot), (other_device, other_boot)) =
            (device_and_boot(&self.boot), device_and_boot(&other.boot));
        let same_device = device.is_none() || other_device.is_none() || device == other_device;
        !boot.is_empty() && boot == other_boot && same_device
    }

    /// The span from `earlier` to this moment.
    pub fn since(&self, earlier: &Moment) -> Span {
        let wall = self.wall_ms.saturating_sub(earlier.wall_ms);
        if !self.is_same_boot(earlier) {
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

    /// The moment this many seconds later, remembered rather than tapped: marked as approximate.
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

/// The number of digits of the device's id in the prefix, and a mask of their bits.
const DEVICE_DIGITS: usize = 12;
const DEVICE_DIGITS_MASK: u128 = (1 << (4 * DEVICE_DIGITS)) - 1;

/// The phone that a boot names, if any, and the phone's own name for the boot.
fn device_and_boot(boot: &str) -> (Option<&str>, &str) {
    let is_device = |text: &str| {
        text.len() == DEVICE_DIGITS && text.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'))
    };
    match boot.split_once('/') {
        Some((device, own)) if is_device(device) => (Some(device), own),
        _ => (None, boot),
    }
}

/// The most by which clocks are put forward or back in spring and autumn, in minutes: two hours at Troll station (IANA time zone
/// database, Antarctica/Troll), one or less elsewhere.
pub const CLOCKS_CHANGE_MIN: i64 = 120;

/// By how many minutes the clocks were put forward between two offsets from UTC; 0 if they are the same, or if they differ by so much
/// that it was a journey.
pub fn clocks_forward_min(before_min: i16, after_min: i16) -> i64 {
    let forward_min = i64::from(after_min) - i64::from(before_min);
    if forward_min.abs() <= CLOCKS_CHANGE_MIN { forward_min } else { 0 }
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
    fn within_one_boot_the_monotonic_clock_measures_and_a_jump_is_seen() {
        let span = at(1_000 - 7_200, 160, "a").since(&at(1_000, 100, "a"));
        assert_eq!(span, Span { ms: 60_000, by: Yardstick::Monotonic, jump_ms: -7_260_000 });
    }

    #[test]
    fn drift_of_a_second_is_no_jump() {
        assert_eq!(at(1_061, 160, "a").since(&at(1_000, 100, "a")).jump_ms, 0);
    }

    #[test]
    fn across_a_reboot_the_wall_clock_measures() {
        let span = at(1_300, 5, "b").since(&at(1_000, 100, "a"));
        assert_eq!(span, Span { ms: 300_000, by: Yardstick::Wall, jump_ms: 0 });
    }

    #[test]
    fn two_phones_never_share_a_boot_even_with_equal_counts() {
        let (mine, theirs) = (Uuid::from_u128(7), Uuid::from_u128(8));
        let (earlier, later) = (at(1_000, 100, "5"), at(1_300, 9_000, "5"));
        let by_wall = Span { ms: 300_000, by: Yardstick::Wall, jump_ms: 0 };
        assert_eq!(later.on_device(theirs).since(&earlier.on_device(mine)), by_wall);
        let there = earlier.on_device(theirs);
        assert_eq!(later.on_device(theirs).since(&there).ms, 8_900_000);
        assert_eq!(later.since(&there).ms, 8_900_000, "one that names no phone is of the same one");
        assert_eq!(there.on_device(mine), there, "named once");
        assert_eq!((there.boot.as_str(), there.own_boot(), later.own_boot()), ("000000000008/5", "5", "5"));
        let path = at(1, 1, "proc/sys/5");
        assert_eq!(path.on_device(mine).boot, "000000000007/proc/sys/5");
        // Neither a short prefix nor a long one that is not a number names a phone.
        for own in ["5/7", "notadevice00/7"] {
            assert_eq!(at(1, 1, own).on_device(mine).boot, format!("000000000007/{own}"));
        }
        let alike_at_the_end = Uuid::from_u128(7 << 40 | 7);
        assert_eq!(later.on_device(alike_at_the_end).since(&earlier.on_device(mine)), by_wall);
        assert_eq!(at(1, 1, "").on_device(mine).boot, "", "a boot that isn't told stays untold");
        assert_eq!(at(2, 50, "").since(&at(1, 1, "")).by, Yardstick::Wall);
    }

    #[test]
    fn set_back_is_marked_approximate() {
        let back = at(1_000, 100, "a").set_back(60);
        assert_eq!((back.wall_ms, back.mono_ms, back.approx_s), (940_000, 40_000, 30));
    }

    #[test]
    fn two_seconds_of_drift_are_no_jump_and_more_is_one() {
        let after = |drift_ms: i64| Moment { wall_ms: 1_060_000 + drift_ms, ..at(0, 160, "a") };
        let jump = |drift_ms: i64| after(drift_ms).since(&at(1_000, 100, "a")).jump_ms;
        assert_eq!([jump(2_000), jump(-2_000), jump(2_001), jump(-2_001)], [0, 0, 2_001, -2_001]);
    }

    #[test]
    fn a_time_entered_later_moves_both_clocks_and_is_marked_approximate() {
        let later = at(1_000, 100, "a").later(90);
        assert_eq!((later.wall_ms, later.mono_ms, later.approx_s), (1_090_000, 190_000, 30));
        let vague = Moment { approx_s: 120, ..at(1_000, 100, "a") };
        assert_eq!((vague.later(90).approx_s, vague.set_back(90).approx_s), (120, 120));
    }

    #[test]
    fn local_time_is_the_wall_time_plus_the_offset() {
        assert_eq!(Moment { offset_min: -90, ..at(10_000, 1, "a") }.local_ms(), 4_600_000);
    }

    #[test]
    fn extreme_clocks_saturate() {
        let far = Moment { wall_ms: i64::MIN, mono_ms: i64::MIN, ..at(0, 0, "a") };
        assert!(far.since(&at(1, 1, "a")).ms < 0);
        assert_eq!(far.set_back(60).wall_ms, i64::MIN);
    }
}
