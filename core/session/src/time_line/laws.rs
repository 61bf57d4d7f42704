//! Laws of the time line, tested on days of two phones whose clocks drift and are moved, and which are
//! restarted.

use super::super::fold;
use super::super::written::{SESSION, Written};
use super::*;
use proptest::prelude::*;
use restwater_log::{Op, effective, sorted};

const BEGIN_MS: i64 = 1_700_000_000_000;

/// What happens to a phone before its next entry.
#[derive(Debug, Clone, Copy)]
enum Fate {
    Nothing,
    /// Its wall clock is moved by this much.
    Moved(i64),
    To1970,
    ToNextYear,
    /// It was off for this long and starts again.
    Reboot(i64),
}

fn any_fate(clocks_are_moved: bool) -> BoxedStrategy<Fate> {
    let quiet = prop_oneof![
        6 => Just(Fate::Nothing),
        1 => (5_000..1_800_000_i64).prop_map(Fate::Reboot),
    ];
    if !clocks_are_moved {
        return quiet.boxed();
    }
    prop_oneof![
        7 => quiet,
        1 => (-86_400_000..86_400_000_i64).prop_map(Fate::Moved),
        1 => Just(Fate::To1970),
        1 => Just(Fate::ToNextYear),
    ]
    .boxed()
}

/// A phone of the day: its clocks beside the true time.
struct Clocks {
    day: Written,
    /// Monotonic and true time at the last start, the count of starts.
    boot_ms: i64,
    boots: u32,
    /// How far the wall clock is ahead of the true time.
    off_ms: i64,
    /// Parts per million by which both clocks run fast.
    drift_ppm: i64,
}

impl Clocks {
    fn new(day: Written, drift_ppm: i64) -> Self {
        Self { day, boot_ms: -3_600_000, boots: 0, off_ms: 0, drift_ppm }
    }

    fn suffer(&mut self, fate: Fate, now_ms: i64) {
        match fate {
            Fate::Nothing => {}
            Fate::Moved(by_ms) => self.off_ms += by_ms,
            Fate::To1970 => self.off_ms = -BEGIN_MS - now_ms,
            Fate::ToNextYear => self.off_ms += 365 * 86_400_000,
            Fate::Reboot(_) => {
                self.boot_ms = now_ms;
                self.boots += 1;
            }
        }
    }

    fn moment(&self, now_ms: i64) -> Moment {
        let fast = |ms: i64| ms + ms * self.drift_ppm / 1_000_000;
        Moment {
            wall_ms: BEGIN_MS + fast(now_ms) + self.off_ms,
            offset_min: 0,
            zone: String::new(),
            mono_ms: fast(now_ms - self.boot_ms),
            boot: format!("boot-{}", self.boots),
            approx_s: 0,
        }
    }
}

/// A day's entries with the true time of each.
#[derive(Debug, Clone)]
struct Day {
    ops: Vec<Op>,
    true_ms: HashMap<Uuid, i64>,
}

fn any_day(clocks_are_moved: bool) -> impl Strategy<Value = Day> {
    let step = (1_000..1_200_000_i64, any::<bool>(), any_fate(clocks_are_moved));
    (proptest::collection::vec(step, 1..40), -50..50_i64, -50..50_i64).prop_map(|(steps, first, second)| {
        let mut began = Written::new(2);
        began.ops.clear();
        let mut phones = [Clocks::new(began, first), Clocks::new(Written::by(0xD2), second)];
        let mut true_ms = HashMap::new();
        let mut now_ms = 0;
        let start = phones[0].moment(0);
        let id = phones[0].day.write(
            start,
            Payload::SessionStarted(restwater_log::SessionSetup::default()),
            None,
            None,
        );
        true_ms.insert(id, 0);
        for (gap_ms, second_phone, fate) in steps {
            now_ms += gap_ms;
            let phone = &mut phones[usize::from(second_phone)];
            if let Fate::Reboot(off_ms) = fate {
                now_ms += off_ms;
            }
            phone.suffer(fate, now_ms);
            now_ms += 500;
            let at = phone.moment(now_ms);
            let id = phone.day.write(at, Payload::Cast { rod: 1 + u8::from(second_phone) }, None, None);
            true_ms.insert(id, now_ms);
        }
        Day { ops: phones.into_iter().flat_map(|phone| phone.day.ops).collect(), true_ms }
    })
}

fn line_of(ops: &[Op]) -> (TimeLine, Vec<(Op, Stamp)>) {
    let ordered = sorted(ops);
    let steps = effective(&ordered);
    let (line, stamps) = TimeLine::of(&steps);
    let placed = steps.iter().map(|step| step.op.clone()).zip(stamps).collect();
    (line, placed)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn within_a_boot_durations_are_exact(day in any_day(true)) {
        let (line, placed) = line_of(&day.ops);
        for (op, stamp) in &placed {
            // A clock that had been reset is put right for entries; the clock of now is shown as it is.
            let now = Stamp { shown: stamp.shown.clone(), ..line.place(op.device, &op.at) };
            prop_assert_eq!(&now, stamp, "now is placed as the entries are");
            for (other, at) in &placed {
                if op.device == other.device && op.at.boot == other.at.boot {
                    prop_assert_eq!(stamp.ms_since(at), op.at.mono_ms - other.at.mono_ms);
                    prop_assert_eq!(stamp.since(at).uncertain_ms, 0);
                }
            }
        }
    }

    #[test]
    fn entries_of_one_device_never_go_back_in_time(day in any_day(true)) {
        let (_, placed) = line_of(&day.ops);
        let mut last: HashMap<Uuid, i64> = HashMap::new();
        for (op, stamp) in placed {
            let before = last.insert(op.device, stamp.at_ms);
            prop_assert!(before.is_none_or(|before| before <= stamp.at_ms));
        }
    }

    #[test]
    fn the_line_is_the_same_in_any_order_of_arrival(day in any_day(true), seed in any::<u64>()) {
        let mut shuffled = day.ops.clone();
        shuffled.sort_by_key(|op| op.id.as_u128().wrapping_mul(u128::from(seed) | 1));
        shuffled.extend(day.ops.iter().take(3).cloned());
        prop_assert_eq!(line_of(&shuffled), line_of(&day.ops));
        prop_assert_eq!(fold(SESSION, &shuffled), fold(SESSION, &day.ops));
    }

    /// While nobody moves a wall clock, every span is right within its stated uncertainty plus the drift of
    /// both clocks, whatever was restarted and whichever phone wrote it.
    #[test]
    fn spans_are_right_within_their_stated_uncertainty(day in any_day(false)) {
        let (_, placed) = line_of(&day.ops);
        for (op, stamp) in &placed {
            for (other, at) in &placed {
                let (span, truth) = (stamp.since(at), day.true_ms[&op.id] - day.true_ms[&other.id]);
                // 50 parts per million of the longest day here, in both directions, and one tick of a clock.
                let drift_ms = 2 * 86_400_000 * 50 / 1_000_000 + 2;
                prop_assert!((span.ms - truth).abs() <= span.uncertain_ms + drift_ms, "{span:?} {truth}");
            }
        }
    }

    /// However the clocks are moved, a span of one device is right within its stated uncertainty.
    #[test]
    fn with_a_reset_clock_spans_are_right_within_their_stated_uncertainty(day in any_day(false), pick in any::<prop::sample::Index>(), next_year: bool) {
        let mut ops: Vec<Op> = day.ops.iter().filter(|op| op.device == Uuid::from_u128(0xD1)).cloned().collect();
        // Through one of its boots, not the first, the phone's wall clock is wrong.
        let later: Vec<String> = ops.iter().map(|op| op.at.boot.clone()).filter(|boot| boot != "boot-0").collect();
        if later.is_empty() {
            return Ok(());
        }
        let boot = later[pick.index(later.len())].clone();
        let by_ms = if next_year { 365 * 86_400_000 } else { -BEGIN_MS };
        ops.iter_mut().filter(|op| op.at.boot == boot).for_each(|op| op.at.wall_ms += by_ms);
        let (_, placed) = line_of(&ops);
        for (op, stamp) in &placed {
            for (other, at) in &placed {
                let (span, truth) = (stamp.since(at), day.true_ms[&op.id] - day.true_ms[&other.id]);
                prop_assert!((span.ms - truth).abs() <= span.uncertain_ms + 10_000, "{span:?} {truth}");
            }
        }
    }

    /// A clock is moved several times while the phone is on, and shows what it likes after a restart: that was seen, so the span
    /// over the restart is right within its stated uncertainty.
    #[test]
    fn after_a_clock_was_seen_to_move_a_span_over_a_restart_is_right_within_its_stated_uncertainty(
        moves in proptest::collection::vec(-86_400_000..86_400_000_i64, 0..5), corrected: bool,
    ) {
        let mut phone = Clocks::new(Written::new(2), 0);
        phone.day.ops.clear();
        let start = Payload::SessionStarted(restwater_log::SessionSetup::default());
        phone.day.write(phone.moment(0), start, None, None);
        let mut now_ms = 0;
        for by_ms in moves {
            now_ms += 600_000;
            phone.suffer(Fate::Moved(by_ms), now_ms);
            let at = phone.moment(now_ms + 500);
            phone.day.write(at, Payload::Cast { rod: 1 }, None, None);
        }
        now_ms += 600_000;
        phone.suffer(Fate::Reboot(0), now_ms);
        phone.off_ms *= i64::from(!corrected);
        now_ms += 60_000;
        phone.day.write(phone.moment(now_ms), Payload::Bite { rod: 1 }, None, None);
        let (_, placed) = line_of(&phone.day.ops);
        let span = placed[placed.len() - 1].1.since(&placed[0].1);
        prop_assert!((span.ms - now_ms).abs() <= span.uncertain_ms, "{span:?} {now_ms}");
    }
}
