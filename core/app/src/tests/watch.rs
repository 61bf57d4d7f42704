//! The lock screen and alarms through the app.

use super::*;
use restwater_screen::{PhoneTap, WatchView};

impl Phone {
    fn watch(&mut self, ms: i64) -> WatchView {
        self.app().watch(&at(ms))
    }
}

fn ring_after(minutes: u16) -> Action {
    Action::Phone { tap: PhoneTap::Alarm { alarm: Alarm::After(minutes) } }
}

#[test]
fn the_lock_screen_follows_the_rod() {
    let mut phone = Phone::new();
    let before = phone.watch(0);
    assert!(!before.open && !before.keep_awake && before.keys.is_empty() && before.alarms.is_empty());
    phone.tap(0, &START).unwrap();
    let labels = |watch: &WatchView| watch.keys.iter().map(|k| k.key).collect::<Vec<_>>();
    assert_eq!(labels(&phone.watch(MIN)), [Key::Cast, Key::Undo]);
    phone.tap(MIN, &CAST).unwrap();
    let out = phone.watch(4 * MIN);
    assert_eq!(labels(&out), [Key::Bite, Key::WoundIn, Key::Cast]);
    assert_eq!(out.since_wall_ms, Some(at(MIN).wall_ms));
    assert!(out.keep_awake);
    phone.tap(5 * MIN, &BITE).unwrap();
    assert_eq!(labels(&phone.watch(6 * MIN)), [Key::Landed, Key::Lost, Key::Missed]);
    phone.tap(7 * MIN, &LANDED).unwrap();
    phone.tap(8 * MIN, &Action::EndSession).unwrap();
    assert!(!phone.watch(9 * MIN).open);
}

#[test]
fn an_alarm_is_counted_from_the_splash_and_stops_with_the_cast() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    phone.tap(0, &ring_after(12)).unwrap();
    phone.tap(MIN, &CAST).unwrap();
    let alarms = phone.watch(3 * MIN).alarms;
    assert_eq!(alarms.iter().map(|a| a.at_wall_ms).collect::<Vec<_>>(), [at(13 * MIN).wall_ms]);
    assert!(alarms[0].title.contains("12 min out"), "{}", alarms[0].title);
    assert_eq!(phone.watch(13 * MIN).alarms, [], "it has rung");
    phone.open();
    assert_eq!(phone.watch(4 * MIN).alarms.len(), 1, "kept over a restart");
    phone.tap(5 * MIN, &BITE).unwrap();
    assert_eq!(phone.watch(6 * MIN).alarms, []);
    for minutes in [0, 241] {
        assert_eq!(phone.tap(7 * MIN, &ring_after(minutes)).unwrap_err().kind(), ErrorKind::BadInput);
    }
}

#[test]
fn before_anything_is_known_recast_by_does_not_ring() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    phone.tap(MIN, &CAST).unwrap();
    assert_eq!(phone.watch(2 * MIN).alarms, []);
    assert_eq!(phone.bank(2 * MIN).strip.recast_min, None);
}
