//! Hybrid logical clock: wall time that never runs backwards.
//!
//! Kulkarni, Demirbas, Madappa, Avva and Leone, "Logical Physical Clocks" (2014). Readings of a phone whose
//! clock is hours off are accepted here and flagged elsewhere.

use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::fmt;
use std::str::FromStr;

/// One reading: milliseconds and a counter for readings within the same millisecond.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Hlc {
    /// Wall milliseconds since 1970 UTC, at least as large as any seen before.
    pub ms: u64,
    /// Distinguishes readings of the same millisecond.
    pub count: u32,
}

/// The text is not a clock reading.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("\"{0}\" is no clock reading of the form milliseconds-count (15 and 6 digits)")]
pub struct HlcError(String);

/// Readings from here on (2200-01-01) are not taken from another phone's file, since one of them would stop every clock
/// that saw it. A phone whose own clock is set beyond it writes the last reading before it, and goes on from there.
pub const TAKEN_UNTIL_MS: u64 = 7_258_118_400_000;

const MAX_MS: u64 = 999_999_999_999_999;
const MAX_COUNT: u32 = 999_999;

impl fmt::Display for Hlc {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:015}-{:06}", self.ms, self.count)
    }
}

impl FromStr for Hlc {
    type Err = HlcError;

    fn from_str(text: &str) -> Result<Self, HlcError> {
        let wrong = || HlcError(text.chars().take(40).collect());
        let (ms, count) = text.split_once('-').ok_or_else(wrong)?;
        let digits = |s: &str, n: usize| s.len() == n && s.bytes().all(|b| b.is_ascii_digit());
        if !digits(ms, 15) || !digits(count, 6) {
            return Err(wrong());
        }
        Ok(Self { ms: ms.parse().map_err(|_| wrong())?, count: count.parse().map_err(|_| wrong())? })
    }
}

impl Serialize for Hlc {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Hlc {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_str(Text)
    }
}

/// Parses the text without copying it, since every entry of a log has one.
struct Text;

impl serde::de::Visitor<'_> for Text {
    type Value = Hlc;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a clock reading")
    }

    fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Hlc, E> {
        text.parse().map_err(E::custom)
    }
}

/// The clock of one device: each reading is later than every reading it has given or seen.
#[derive(Debug, Clone, Copy, Default)]
pub struct HybridClock {
    last: Hlc,
}

impl HybridClock {
    /// A clock that has already given or seen `last`.
    pub fn after(last: Hlc) -> Self {
        Self { last }
    }

    /// The next reading at this wall time.
    pub fn tick(&mut self, wall_ms: i64) -> Hlc {
        let wall = u64::try_from(wall_ms).unwrap_or(0).min(TAKEN_UNTIL_MS - 1);
        self.last = if wall > self.last.ms {
            Hlc { ms: wall, count: 0 }
        } else if self.last.count < MAX_COUNT {
            Hlc { ms: self.last.ms, count: self.last.count + 1 }
        } else {
            Hlc { ms: (self.last.ms + 1).min(MAX_MS), count: 0 }
        };
        self.last
    }

    /// Notes a reading from elsewhere, so that the next one comes after it.
    pub fn observe(&mut self, seen: Hlc) {
        self.last = self.last.max(seen);
    }

    /// The latest reading given or seen.
    pub fn last(&self) -> Hlc {
        self.last
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn readings_still_increase_when_the_clock_is_set_back() {
        let mut clock = HybridClock::default();
        let first = clock.tick(5_000);
        let second = clock.tick(1_000);
        assert!(second > first);
        assert_eq!(second, Hlc { ms: 5_000, count: 1 });
    }

    #[test]
    fn a_clock_continues_after_the_last_entry_and_past_a_millisecond_whose_counter_is_full() {
        let mut clock = HybridClock::after(Hlc { ms: 5_000, count: MAX_COUNT - 1 });
        assert_eq!(clock.tick(4_000), Hlc { ms: 5_000, count: MAX_COUNT });
        let next = clock.tick(4_000);
        assert_eq!(next, Hlc { ms: 5_001, count: 0 });
        assert_eq!(next.to_string().parse(), Ok(next));
    }

    #[test]
    fn entries_written_after_an_import_come_after_all_imported_entries() {
        let seen = Hlc { ms: 9_000, count: 3 };
        let mut clock = HybridClock::default();
        clock.observe(seen);
        clock.observe(Hlc { ms: 1_000, count: 8 });
        assert_eq!(clock.last(), seen);
        assert_eq!(clock.tick(5_000), Hlc { ms: 9_000, count: 4 });
    }

    #[test]
    fn a_value_that_is_no_text_is_refused_with_what_was_expected() {
        let refused = serde_json::from_str::<Hlc>("7").unwrap_err().to_string();
        assert!(refused.contains("expected a clock reading"), "{refused}");
    }

    #[test]
    fn the_text_form_sorts_like_the_reading_and_other_texts_are_refused() {
        assert_eq!(Hlc { ms: 12, count: 3 }.to_string(), "000000000000012-000003");
        for bad in ["", "1-1", "000000000000012-00000a", "000000000000012", "+00000000000012-000003"] {
            assert!(bad.parse::<Hlc>().is_err(), "{bad}");
        }
    }

    proptest! {
        #[test]
        fn readings_always_grow(walls in proptest::collection::vec(any::<i64>(), 1..50), seen in 0..=MAX_MS - 100) {
            let mut clock = HybridClock::default();
            clock.observe(Hlc { ms: seen, count: 0 });
            let mut last = clock.last();
            for wall in walls {
                let next = clock.tick(wall.min(1 << 45));
                prop_assert!(next > last);
                prop_assert_eq!(next.to_string().parse::<Hlc>(), Ok(next));
                last = next;
            }
        }
    }
}
