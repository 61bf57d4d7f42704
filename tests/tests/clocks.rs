//! Clock set back, time zone changed, phone rebooted: nothing is lost, waits are right or marked.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

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

/// A session with one cast and its bite, each stored by a process of its own, read back after a restart.
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
