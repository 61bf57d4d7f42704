//! Clock set back, time zone changed, phone rebooted: nothing is lost, and waits are right or marked.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use restwater_app::{Action, App, Entropy, Screen, Which};
use restwater_log::{HybridClock, Moment, Op, Payload, SessionSetup};
use restwater_session::{DoubtKind, Session, fold, waits_of};
use restwater_store::Store;
use uuid::Uuid;

const T0: i64 = 1_768_032_000_000;

fn at(wall_s: i64, mono_s: i64, offset_min: i16, boot: &str) -> Moment {
    Moment {
        wall_ms: T0 + wall_s * 1_000,
        offset_min,
        zone: String::new(),
        mono_ms: mono_s * 1_000,
        boot: boot.into(),
        approx_s: 0,
    }
}

/// A session with one cast and its bite, each stored by a different process, read back after a restart.
fn one_wait(cast: Moment, bite: Moment) -> Session {
    let dir = tempfile::tempdir().unwrap();
    let session = Uuid::from_u128(5);
    let entries = [
        (at(0, 0, 0, "a"), Payload::SessionStarted(SessionSetup::default())),
        (cast, Payload::Cast { rod: 1 }),
        (bite, Payload::Bite { rod: 1 }),
    ];
    for (n, (at, payload)) in (1..).zip(entries) {
        let mut store = Store::open(dir.path(), Uuid::from_u128(1)).unwrap();
        let hlc = HybridClock::after(store.last_hlc()).tick(at.wall_ms);
        let (id, device) = (Uuid::from_u128(n), store.device());
        store
            .append(&[Op { id, device, hlc, at, session, payload, amends: None, group: None }], None)
            .unwrap();
    }
    let ops = Store::open(dir.path(), Uuid::from_u128(1)).unwrap().ops_of(session).unwrap();
    assert_eq!(
        ops.iter().map(|op| op.id.as_u128()).collect::<Vec<_>>(),
        [1, 2, 3],
        "in the order of the taps"
    );
    fold(session, &ops)
}

fn wait_min(session: &Session) -> f64 {
    let waits = waits_of(session);
    assert_eq!(waits.len(), 1);
    assert!(waits[0].is_bite());
    waits[0].minutes()
}

#[test]
fn a_clock_set_back_two_hours_leaves_the_wait_right_and_marked() {
    let session = one_wait(at(60, 60, 0, "a"), at(60 + 720 - 7_200, 60 + 720, 0, "a"));
    assert_eq!(wait_min(&session), 12.0);
    assert!(session.doubts.iter().any(|d| d.kind == DoubtKind::ClockMoved), "{:?}", session.doubts);
}

#[test]
fn a_change_of_time_zone_leaves_the_wait_right() {
    let session = one_wait(at(60, 60, 0, "a"), at(60 + 720, 60 + 720, 120, "a"));
    assert_eq!(wait_min(&session), 12.0);
    assert!(session.doubts.is_empty(), "{:?}", session.doubts);
}

#[test]
fn a_reboot_measures_by_the_wall_clock() {
    let session = one_wait(at(60, 60, 0, "a"), at(60 + 720, 5, 0, "b"));
    assert_eq!(wait_min(&session), 12.0);
}

/// Counts up: ids differ, and the same taps give the same log.
struct Counting(u64);

impl Entropy for Counting {
    fn fill(&mut self, bytes: &mut [u8]) {
        self.0 += 1;
        for (byte, n) in bytes.iter_mut().rev().zip(self.0.to_be_bytes().into_iter().rev()) {
            *byte = n;
        }
    }
}

/// A day with a new process for each tap, as on a phone that ends the app whenever it can. Returns what the
/// Bank and the Swim screen then show.
fn shown_after(taps: &[(Moment, Action)], now: &Moment) -> (String, bool, String, String) {
    let dir = tempfile::tempdir().unwrap();
    for (n, (moment, action)) in (1..).zip(taps) {
        let mut app = App::open(dir.path(), Box::new(Counting(n * 1_000)), moment).unwrap();
        app.act(action, moment).unwrap();
    }
    let mut app = App::open(dir.path(), Box::new(Counting(1_000_000)), now).unwrap();
    let Screen::Bank(bank) = app.screen(Which::Bank, now).unwrap() else { panic!("no Bank") };
    let Screen::Swim(swim) = app.screen(Which::Swim, now).unwrap() else { panic!("no Swim") };
    let rod = &bank.rods[0];
    (rod.digits.clone(), rod.since.contains("about"), bank.header.length, swim.area)
}

/// A cast that has been out since the first minute, seen twelve minutes later with these clocks.
fn cast_out_until(now: &Moment) -> (String, bool, String, String) {
    let taps = [
        (at(0, 0, 0, "a"), Action::StartSession { setup: None }),
        (at(30, 30, 0, "a"), Action::CastHere),
        (at(60, 60, 0, "a"), Action::Cast { rod: 1 }),
    ];
    shown_after(&taps, now)
}

#[test]
fn the_screens_of_a_phone_that_ends_the_app_between_taps_show_true_minutes_whatever_its_clock_says() {
    let true_day = cast_out_until(&at(780, 780, 0, "a"));
    assert_eq!(
        (true_day.0.as_str(), true_day.1, true_day.2.as_str()),
        ("12:00", false, "13 min since the start")
    );
    let moved = [-7_200, 3_600, 31_536_000, -T0 / 1_000].map(|by_s| at(780 + by_s, 780, 0, "a"));
    for now in moved {
        let day = cast_out_until(&now);
        assert_eq!((&day.0, &day.2, &day.3), (&true_day.0, &true_day.2, &true_day.3), "{now:?}");
        assert!(day.1, "a clock that was moved is marked");
    }
    let zone = cast_out_until(&at(780, 780, 60, "a"));
    assert_eq!(zone, true_day, "a change of zone moves no clock");
    let rebooted = cast_out_until(&at(780, 20, 0, "b"));
    assert_eq!((&rebooted.0, rebooted.1, &rebooted.3), (&true_day.0, true, &true_day.3));
}
