//! How far off the clocks are of the phones whose entries are in a file.

use super::ClockDifference;
use restwater_log::{Op, OpOrder};
use std::collections::BTreeMap;
use std::hash::{BuildHasher, BuildHasherDefault, DefaultHasher};
use uuid::Uuid;

/// Clocks that are off by this much, in ms, are reported; less may be drift or the time between two taps.
const CLOCK_TOLD_MS: i64 = 60_000;

/// How many entries are compared at most, so that no file takes up the phone's memory: many years of one angler.
const ENTRIES: usize = 200_000;

/// What the clock of each phone showed at its entries.
#[derive(Default)]
pub(super) struct Clocks {
    shown: BTreeMap<Uuid, Vec<Shown>>,
    entries: usize,
}

struct Shown {
    order: OpOrder,
    wall_ms: i64,
    mono_ms: i64,
    /// A short number for the boot, whose name is longer.
    boot: u64,
    /// Whether the entry is new here; only new entries have their difference reported.
    new: bool,
}

impl Clocks {
    pub(super) fn note(&mut self, op: &Op, new: bool) {
        let at = &op.at;
        let boot = BuildHasherDefault::<DefaultHasher>::default().hash_one(&at.boot);
        let shown = Shown { order: op.order(), wall_ms: at.wall_ms, mono_ms: at.mono_ms, boot, new };
        self.entries += 1;
        if self.entries > ENTRIES {
            return;
        }
        self.shown.entry(op.device).or_default().push(shown);
    }

    /// The differences at `now_ms` by this phone's clock. A step back is found between two entries of one phone by their wall
    /// clock, since the hybrid clock also follows those of other phones.
    pub(super) fn told(self, now_ms: i64) -> BTreeMap<Uuid, ClockDifference> {
        let differences = self.shown.into_iter().map(|(phone, shown)| (phone, difference(shown, now_ms)));
        differences.filter(|(_, difference)| *difference != ClockDifference::default()).collect()
    }
}

fn difference(mut shown: Vec<Shown>, now_ms: i64) -> ClockDifference {
    // A file is in the order of the ids, which follow the wall clock.
    shown.sort_unstable_by_key(|shown| shown.order);
    let mut found = ClockDifference::default();
    let told = |ms: i64| if ms < CLOCK_TOLD_MS { 0 } else { ms };
    let mut before: Option<Shown> = None;
    for entry in shown {
        let back_ms = before.map_or(0, |before| set_back_ms(&before, &entry));
        if entry.new {
            found.ahead_ms = found.ahead_ms.max(told(entry.wall_ms.saturating_sub(now_ms)));
            found.set_back_ms = found.set_back_ms.max(told(back_ms));
        }
        before = Some(entry);
    }
    found
}

/// By how much the clock was set back between two entries: exactly within one boot, whose monotonic clock says how long it was,
/// and at the least across two.
fn set_back_ms(before: &Shown, entry: &Shown) -> i64 {
    let passed_ms = if before.boot == entry.boot { entry.mono_ms.saturating_sub(before.mono_ms) } else { 0 };
    before.wall_ms.saturating_add(passed_ms).saturating_sub(entry.wall_ms)
}
