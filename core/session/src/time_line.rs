//! The time line of a session: the place of each event, in milliseconds since the session's start.
//!
//! Within one boot of a device, time is measured by the monotonic clock, whatever is done to the wall clock. Between two boots of
//! a device, and between two devices, only the wall clock is left, and its possible error is recorded. Where it contradicts the
//! order of the log (a reset to 1970, a jump to next year) the order decides: an event is never placed before an earlier one of
//! its device, and the gap between them counts as uncertain.
//!
//! Everything that has a length (waits, rests, the match clock, alarms, forecasts, gaps) is measured on this
//! line. The wall clock is only for display.

mod put_right;

pub use put_right::may_be_reset;

use restwater_log::{Effective, Moment, Payload};
use serde::{Deserialize, Serialize};
use std::borrow::Cow;
use std::collections::HashMap;
use std::sync::Arc;
use uuid::Uuid;

/// No session is longer than this, in ms, so a longer gap means a wrong clock. (A match may last a
/// fortnight.)
const FORTNIGHT_MS: i64 = 14 * 86_400_000;

/// When something happened, on the time line of its session.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Stamp {
    /// What the phone's clocks showed: for display, never for measuring. The time of a clock that had been reset is put right.
    /// It is shared, since a session has most of its stamps more than once.
    #[serde(with = "super::shared")]
    pub shown: Arc<Moment>,
    /// Milliseconds since the session's start; negative before it.
    pub at_ms: i64,
    /// How far off that may be, in ms, because the wall clock was used between boots or devices; 0 within the
    /// boot in which the session began.
    pub uncertain_ms: i64,
    /// Which boot of which device measured it, or `None` if the wall clock alone did.
    pub run: Option<u32>,
}

/// The time from one stamp to another.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Elapsed {
    /// Milliseconds; negative if the later stamp is before the earlier one.
    pub ms: i64,
    /// How far off that may be, in ms; 0 within one boot of a device.
    pub uncertain_ms: i64,
    /// How far the wall clock was moved meanwhile, in ms; 0 if it agreed.
    pub jump_ms: i64,
}

impl Elapsed {
    /// Whether the clocks leave it open by more than a clock is adjusted without anybody noticing.
    pub(super) fn is_open(&self) -> bool {
        self.uncertain_ms > Moment::JUMP_MS
    }
}

impl Stamp {
    /// The time from `earlier` to this stamp.
    pub fn since(&self, earlier: &Stamp) -> Elapsed {
        let ms = self.at_ms.saturating_sub(earlier.at_ms);
        let one_run = self.run.is_some() && self.run == earlier.run;
        let uncertain_ms =
            if one_run { 0 } else { self.uncertain_ms.max(earlier.uncertain_ms).max(Moment::JUMP_MS) };
        let off = self.shown.wall_ms.saturating_sub(earlier.shown.wall_ms).saturating_sub(ms);
        let jump_ms = if off.saturating_abs() > Moment::JUMP_MS { off } else { 0 };
        Elapsed { ms, uncertain_ms, jump_ms }
    }

    /// Milliseconds from `earlier` to this stamp.
    pub fn ms_since(&self, earlier: &Stamp) -> i64 {
        self.at_ms.saturating_sub(earlier.at_ms)
    }

    /// Minutes from `earlier` to this stamp.
    pub fn minutes_since(&self, earlier: &Stamp) -> f64 {
        self.ms_since(earlier) as f64 / 60_000.0
    }

    /// Whether the time between this stamp and earlier ones is known. If not, the phone was restarted and its wall clock can't be
    /// right, or more than a fortnight has passed: the place of this stamp is only the earliest possible one.
    pub fn is_on_the_line(&self) -> bool {
        self.uncertain_ms < FORTNIGHT_MS
    }

    /// Whether it is more than some minutes after `earlier`, or even weeks after it.
    pub fn is_long_after(&self, earlier: &Stamp, minutes: f64) -> bool {
        self.minutes_since(earlier) > minutes || self.is_weeks_after(earlier)
    }

    /// Whether the phone was restarted in between and its wall clock shows that more than a fortnight has passed.
    pub fn is_weeks_after(&self, earlier: &Stamp) -> bool {
        let shown_ms = self.shown.wall_ms.saturating_sub(earlier.shown.wall_ms);
        self.since(earlier).uncertain_ms >= FORTNIGHT_MS && shown_ms > FORTNIGHT_MS
    }

    /// The same stamp set back by whole seconds, marked as approximate.
    #[must_use]
    pub fn set_back(&self, seconds: u32) -> Stamp {
        let at_ms = self.at_ms.saturating_sub(i64::from(seconds) * 1_000);
        Stamp { shown: Arc::new(self.shown.set_back(seconds)), at_ms, ..self.clone() }
    }

    /// The stamp this many seconds later, remembered rather than tapped: marked as approximate.
    #[must_use]
    pub fn later(&self, seconds: u32) -> Stamp {
        let at_ms = self.at_ms.saturating_add(i64::from(seconds) * 1_000);
        Stamp { shown: Arc::new(self.shown.later(seconds)), at_ms, ..self.clone() }
    }

    /// The stamp this many milliseconds earlier, with what the clocks showed then, for replaying the day.
    #[must_use]
    pub fn before(&self, ms: i64) -> Stamp {
        let shown = Moment {
            wall_ms: self.shown.wall_ms.saturating_sub(ms),
            mono_ms: self.shown.mono_ms.saturating_sub(ms),
            ..Moment::clone(&self.shown)
        };
        let shown = Arc::new(shown);
        Stamp { shown, at_ms: self.at_ms.saturating_sub(ms), ..self.clone() }
    }

    /// What the phone's wall clock will show at a place on the line, if nobody moves it from now on. This is
    /// for display, and for alarms that ring by that clock.
    pub fn wall_at(&self, at_ms: i64) -> i64 {
        self.shown.wall_ms.saturating_add(at_ms.saturating_sub(self.at_ms))
    }

    /// The wall time for everything that depends on the sun. A flat battery sets a clock back to 1970 but
    /// never forward, so if the wall clock and the time counted from `start` differ by more than any session
    /// lasts, the later of the two is used.
    pub fn wall_since(&self, start: &Stamp) -> i64 {
        let (shown, counted) = (self.shown.wall_ms, start.wall_at(self.at_ms));
        if shown.abs_diff(counted) > FORTNIGHT_MS.unsigned_abs() { shown.max(counted) } else { shown }
    }
}

/// The time line of one session. It is computed once, by the fold, from the entries in force; [`TimeLine::place`] puts
/// any other moment on it.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct TimeLine {
    /// One for each boot of a device, in the order of the log.
    runs: Vec<Run>,
    /// The last event of each device, in the order in which the devices came.
    last: Vec<Anchor>,
    /// Which of them is the last event of all.
    latest: usize,
}

/// One boot of a device: its monotonic clock set against the line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
struct Run {
    device: Uuid,
    /// The device's own name for the boot.
    boot: String,
    /// What to add to its monotonic clock.
    offset_ms: i64,
    uncertain_ms: i64,
}

/// An event from which later wall times can be measured.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
struct Anchor {
    device: Uuid,
    at_ms: i64,
    /// What the wall clock showed.
    shown: Reading,
    /// What it would have shown if it had not been moved by more than any session lasts, since a reset to
    /// 1970 is often corrected later.
    kept: Option<Reading>,
    /// The place and the wall time of the last event whose distance from those before it is known.
    known: (i64, i64),
    moved: Moved,
}

/// The largest differences between the readings of a device's wall clock within one boot, in ms.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
struct Moved {
    /// Of all of them.
    by_ms: i64,
    /// Of those that are no longer than a session may last: either reading may have been right. A reset to 1970 shows itself.
    unseen_ms: i64,
}

impl Moved {
    fn note(&mut self, by_ms: i64) {
        self.by_ms = self.by_ms.max(by_ms);
        if by_ms <= FORTNIGHT_MS {
            self.unseen_ms = self.unseen_ms.max(by_ms);
        }
    }

    /// The larger of both.
    fn or(self, other: Self) -> Self {
        let Self { by_ms, unseen_ms } = other;
        Self { by_ms: self.by_ms.max(by_ms), unseen_ms: self.unseen_ms.max(unseen_ms) }
    }
}

/// A wall clock's time at an event, and how far off the event's place on the line may be.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
struct Reading {
    wall_ms: i64,
    uncertain_ms: i64,
}

impl TimeLine {
    /// Builds the line of these entries, and returns the place at which each was tapped.
    pub(super) fn of(steps: &[Effective]) -> (TimeLine, Vec<Stamp>) {
        let on_it: Vec<&Effective> = steps.iter().filter(|step| !may_be_missing(step)).collect();
        let mut builder = Builder::new(&on_it);
        let placed: Vec<Stamp> = on_it.iter().map(|step| builder.take(step)).collect();
        let mut line = builder.line;
        let begun = on_it.iter().position(|step| matches!(step.payload, Payload::SessionStarted(_)));
        let zero = on_it.iter().zip(&placed).nth(begun.unwrap_or(0));
        let zero_ms = zero.map_or(0, |(step, stamp)| stamp.at_ms.saturating_sub(set_back_ms(step)));
        line.shift(zero_ms);
        let mut placed = placed.into_iter();
        let stamp = |step: &Effective| {
            let known = if may_be_missing(step) { None } else { placed.next() };
            let mut stamp = match known {
                Some(stamp) => Stamp { at_ms: stamp.at_ms.saturating_sub(zero_ms), ..stamp },
                None => line.place(step.op.device, &step.op.at),
            };
            line.put_right(step.op, &mut stamp);
            stamp
        };
        let stamps = steps.iter().map(stamp).collect();
        (line, stamps)
    }

    /// The boot of a device in which a moment is, and its place among all.
    fn run_of(&self, device: Uuid, moment: &Moment) -> Option<(usize, &Run)> {
        let is_it = |(_, run): &(usize, &Run)| run.device == device && run.boot == moment.own_boot();
        self.runs.iter().enumerate().rev().find(is_it)
    }

    /// The place of a moment of a device, usually of the present.
    pub fn place(&self, device: Uuid, moment: &Moment) -> Stamp {
        if let Some((place, run)) = self.run_of(device, moment) {
            return Stamp {
                shown: Arc::new(moment.clone()),
                at_ms: moment.mono_ms.saturating_add(run.offset_ms),
                uncertain_ms: run.uncertain_ms,
                run: u32::try_from(place).ok(),
            };
        }
        let own = self.last.iter().find(|anchor| anchor.device == device);
        let (at_ms, uncertain_ms) = match own.or_else(|| self.last.get(self.latest)) {
            Some(anchor) => anchor
                .by_wall(device, moment.wall_ms, anchor.moved)
                .unwrap_or_else(|| anchor.at_least(device, moment.mono_ms)),
            None => (0, 0),
        };
        Stamp { shown: Arc::new(moment.clone()), at_ms, uncertain_ms, run: None }
    }

    fn shift(&mut self, zero_ms: i64) {
        for run in &mut self.runs {
            run.offset_ms = run.offset_ms.saturating_sub(zero_ms);
        }
        for anchor in &mut self.last {
            anchor.at_ms = anchor.at_ms.saturating_sub(zero_ms);
            anchor.known.0 = anchor.known.0.saturating_sub(zero_ms);
        }
    }
}

/// Whether files may leave an entry out, as they do with the position of the peg. The line doesn't depend on it, so that two phones
/// have the same line.
fn may_be_missing(step: &Effective) -> bool {
    matches!(step.payload, Payload::PegPlaced { .. })
}

/// When what an entry reports happened, given all entries and where each was tapped. An entry that was set back shows the time
/// that the clock of that day showed there, judged by the last entry before it. By the time it was tapped, the clock may have
/// been moved or the zone changed, or weeks may have passed whose length the line doesn't know.
pub(super) fn stamp_of(entry: &Effective, tapped: &Stamp, all: &[(&Effective, &Stamp)]) -> Stamp {
    let Cow::Owned(corrected) = &entry.at else { return tapped.clone() };
    let back_ms = set_back_ms(entry);
    let at_ms = tapped.at_ms.saturating_sub(back_ms);
    let put_right_ms = tapped.shown.wall_ms.saturating_sub(entry.op.at.wall_ms);
    let mut shown = corrected.clone();
    shown.wall_ms = shown.wall_ms.saturating_add(put_right_ms);
    let before =
        all.iter().filter(|(other, stamp)| stamp.at_ms <= at_ms && other.op.device == entry.op.device);
    if back_ms != 0
        && let Some((_, beside)) = before.max_by_key(|(_, stamp)| stamp.at_ms)
    {
        shown.wall_ms = beside.wall_at(at_ms);
        shown.offset_min = beside.shown.offset_min;
        shown.zone.clone_from(&beside.shown.zone);
    }
    Stamp { shown: Arc::new(shown), at_ms, ..tapped.clone() }
}

/// How far an entry was set back from where it was tapped, in ms.
pub(super) fn set_back_ms(step: &Effective) -> i64 {
    step.op.at.mono_ms.saturating_sub(step.at.mono_ms)
}

impl Anchor {
    /// The place of a moment by its wall clock relative to this event, and how far off it may be, or `None`
    /// if the wall clock can't be right. On one device time only goes forward, and by no more than any
    /// session lasts. Two devices may be in any order. The place may be off by as much as the clock of either was
    /// seen to be moved.
    fn by_wall(&self, device: Uuid, wall_ms: i64, moved: Moved) -> Option<(i64, i64)> {
        let same = device == self.device;
        let possible = if same { 0..=FORTNIGHT_MS } else { -FORTNIGHT_MS..=FORTNIGHT_MS };
        let moved_ms = if same { moved.unseen_ms } else { moved.by_ms };
        let off = moved_ms.clamp(Moment::JUMP_MS, FORTNIGHT_MS);
        let bridged = |from: Reading| {
            let gap = wall_ms.saturating_sub(from.wall_ms);
            let place = (self.at_ms.saturating_add(gap), from.uncertain_ms.max(off));
            possible.contains(&gap).then_some(place)
        };
        bridged(self.shown).or_else(|| self.kept.and_then(bridged))
    }

    /// The place of a moment whose wall clock is useless. It is only certain that the phone has since been on
    /// for as long as its monotonic clock has run.
    fn at_least(&self, device: Uuid, mono_ms: i64) -> (i64, i64) {
        let sure = if device == self.device { mono_ms.clamp(0, FORTNIGHT_MS) } else { 0 };
        (self.at_ms.saturating_add(sure), self.shown.uncertain_ms.saturating_add(FORTNIGHT_MS))
    }

    /// What the wall clock would show at a later event of the same device if it had not been moved since.
    fn carried(&self, reading: Reading, at_ms: i64) -> Reading {
        let gone = at_ms.saturating_sub(self.at_ms);
        Reading { wall_ms: reading.wall_ms.saturating_add(gone), ..reading }
    }
}

/// A device, and its own name for a boot.
type Boot<'a> = (Uuid, &'a str);

/// Puts the entries on the line one by one, in the order of the log.
struct Builder<'a> {
    line: TimeLine,
    /// The index of each device in the list of anchors.
    devices: HashMap<Uuid, usize>,
    /// The differences between wall clock and monotonic clock during a boot, one for each adjustment.
    skews: HashMap<Boot<'a>, Vec<i64>>,
    /// How each device's wall clock was moved.
    moved: HashMap<Uuid, Moved>,
}

impl<'a> Builder<'a> {
    fn new(steps: &[&Effective<'a>]) -> Self {
        let mut skews: HashMap<Boot, Vec<i64>> = HashMap::new();
        let mut moved: HashMap<Uuid, Moved> = HashMap::new();
        for op in steps.iter().map(|step| step.op) {
            let skew = op.at.wall_ms.saturating_sub(op.at.mono_ms);
            let known = skews.entry((op.device, op.at.own_boot())).or_default();
            let Some(before) = known.last() else {
                known.push(skew);
                continue;
            };
            let by_ms = skew.saturating_sub(*before).saturating_abs();
            if by_ms > Moment::JUMP_MS && !op.at.boot.is_empty() {
                // Several moves may add up, so each reading is compared with all before it.
                let device = moved.entry(op.device).or_default();
                for other in known.iter() {
                    device.note(skew.saturating_sub(*other).saturating_abs());
                }
                known.push(skew);
            }
        }
        Self { line: TimeLine::default(), devices: HashMap::new(), skews, moved }
    }

    fn take(&mut self, step: &Effective<'a>) -> Stamp {
        let (device, moment) = (step.op.device, &step.op.at);
        let mut stamp = self.place(device, moment);
        // Entries of one device never go back in time in the order of the log, whatever its clocks say.
        let before = self.devices.get(&device).and_then(|&place| self.line.last.get(place));
        if let Some(back_ms) = before.map(|b| b.at_ms.saturating_sub(stamp.at_ms)).filter(|ms| *ms > 0) {
            stamp.at_ms = stamp.at_ms.saturating_add(back_ms);
            stamp.uncertain_ms = stamp.uncertain_ms.saturating_add(back_ms);
            stamp.run = None;
        }
        self.remember(device, &stamp);
        stamp
    }

    /// The place of a moment, whose boot begins on the line if it is new.
    fn place(&mut self, device: Uuid, moment: &Moment) -> Stamp {
        if moment.boot.is_empty() {
            return Stamp { run: None, ..self.line.place(device, moment) };
        }
        if self.line.run_of(device, moment).is_none() {
            let (at_ms, uncertain_ms) = self.bridge((device, moment.own_boot()), moment);
            let offset_ms = at_ms.saturating_sub(moment.mono_ms);
            self.line.runs.push(Run { device, boot: moment.own_boot().to_owned(), offset_ms, uncertain_ms });
        }
        self.line.place(device, moment)
    }

    /// Where a boot begins on the line. After a flat battery the network often corrects the clock later, so
    /// the first plausible reading of the boot counts.
    fn bridge(&self, boot: Boot, moment: &Moment) -> (i64, i64) {
        let own = self.devices.get(&boot.0).copied();
        let Some(anchor) = self.line.last.get(own.unwrap_or(self.line.latest)) else { return (0, 0) };
        let moved = self.moved.get(&boot.0).copied().unwrap_or_default().or(anchor.moved);
        let readings = self.skews.get(&boot).into_iter().flatten();
        let mut walls = readings.map(|skew| moment.mono_ms.saturating_add(*skew));
        let by_wall = walls.find_map(|wall_ms| anchor.by_wall(boot.0, wall_ms, moved));
        by_wall.unwrap_or_else(|| anchor.at_least(boot.0, moment.mono_ms))
    }

    fn remember(&mut self, device: Uuid, stamp: &Stamp) {
        let place = *self.devices.entry(device).or_insert(self.line.last.len());
        let shown = Reading { wall_ms: stamp.shown.wall_ms, uncertain_ms: stamp.uncertain_ms };
        let kept = self.line.last.get(place).and_then(|before| {
            let expected = before.carried(before.shown, stamp.at_ms);
            let moved = shown.wall_ms.saturating_sub(expected.wall_ms).saturating_abs() > FORTNIGHT_MS;
            if moved { Some(expected) } else { before.kept.map(|kept| before.carried(kept, stamp.at_ms)) }
        });
        let moved = self.moved.get(&device).copied().unwrap_or_default();
        let before = self.line.last.get(place).filter(|_| !stamp.is_on_the_line());
        let known = before.map_or((stamp.at_ms, shown.wall_ms), |before| before.known);
        let anchor = Anchor { device, at_ms: stamp.at_ms, shown, kept, known, moved };
        match self.line.last.get_mut(place) {
            Some(known) => *known = anchor,
            None => self.line.last.push(anchor),
        }
        self.line.latest = place;
    }
}

#[cfg(test)]
mod laws;
#[cfg(test)]
mod tests;
