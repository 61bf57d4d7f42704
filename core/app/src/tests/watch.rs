//! The lock screen and alarms through the app.

use super::*;
use restwater_screen::SetupTap;
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
    phone.open();
    assert_eq!(phone.watch(4 * MIN).alarms.len(), 1, "kept over a restart");
    phone.tap(5 * MIN, &BITE).unwrap();
    assert_eq!(phone.watch(6 * MIN).alarms, []);
    for minutes in [0, 241] {
        assert_eq!(phone.tap(7 * MIN, &ring_after(minutes)).unwrap_err().kind(), ErrorKind::BadInput);
    }
}

#[test]
fn the_recast_alarm_does_not_ring_before_anything_is_known() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    phone.tap(MIN, &CAST).unwrap();
    assert_eq!(phone.watch(2 * MIN).alarms, []);
    assert_eq!(phone.bank(2 * MIN).strip.recast_min, None);
}

#[test]
fn an_alarm_that_has_rung_stays_while_its_cast_is_out() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    phone.tap(0, &ring_after(12)).unwrap();
    phone.tap(MIN, &CAST).unwrap();
    let seen = |phone: &mut Phone, ms| {
        let watch = phone.watch(ms);
        let of = |alarms: Vec<restwater_screen::WatchAlarm>, due| {
            alarms.into_iter().map(move |a| (a.at_wall_ms, due))
        };
        of(watch.alarms, false).chain(of(watch.due, true)).collect::<Vec<_>>()
    };
    assert_eq!(seen(&mut phone, 12 * MIN), [(at(13 * MIN).wall_ms, false)]);
    assert_eq!(seen(&mut phone, 13 * MIN), [(at(13 * MIN).wall_ms, true)], "no sound to stop in the shell");
    assert_eq!(seen(&mut phone, 40 * MIN), [(at(13 * MIN).wall_ms, true)]);
    phone.tap(41 * MIN, &WOUND_IN).unwrap();
    assert_eq!(seen(&mut phone, 42 * MIN), []);
}

#[test]
fn the_alarm_counts_from_the_same_moment_as_the_wait() {
    let mut phone = Phone::new();
    for tap in [SetupTap::Settle { seconds: 120 }, SetupTap::TwitchRestarts { restarts: true }] {
        phone.tap(0, &Action::Setup { tap }).unwrap();
    }
    phone.tap(0, &START).unwrap();
    phone.tap(0, &ring_after(12)).unwrap();
    phone.tap(MIN, &CAST).unwrap();
    let due = |phone: &mut Phone, ms| phone.watch(ms).alarms[0].at_wall_ms - at(0).wall_ms;
    assert_eq!(due(&mut phone, 2 * MIN), 15 * MIN, "two minutes to settle, then twelve");
    assert_eq!(phone.bank(9 * MIN).strip.elapsed_min, Some(6.0));
    phone.tap(9 * MIN, &Action::Twitch { rod: 1 }).unwrap();
    assert_eq!(
        phone.bank(10 * MIN).strip.elapsed_min,
        Some(1.0),
        "the bait is still where it settled: no second settling"
    );
    assert_eq!(due(&mut phone, 10 * MIN), 21 * MIN);
}

#[test]
fn settling_time_and_twitches_are_chosen_on_the_set_up_screen() {
    let mut phone = Phone::new();
    let rows = |phone: &mut Phone| match phone.app().screen(Which::Setup, &at(0)).unwrap() {
        Screen::Setup(setup) => setup.rows,
        other => panic!("{other:?}"),
    };
    let value = |phone: &mut Phone, field: &str| {
        rows(phone).into_iter().find(|r| r.tag == field).map(|r| r.value).unwrap()
    };
    assert_eq!((value(&mut phone, "settle").as_str(), value(&mut phone, "twitch").as_str()), ("none", "no"));
    for (second, (field, wanted, shows)) in (1..).zip([
        ("settle", "60", "1 min"),
        ("settle", "30", "30 s"),
        ("twitch", "on", "yes"),
        ("twitch", "off", "no"),
    ]) {
        let choices = rows(&mut phone).into_iter().find(|r| r.tag == field).unwrap().choices;
        let choice = choices.iter().find(|c| c.tag == wanted).unwrap();
        phone.tap(second * 1_000, &choice.action).unwrap();
        assert_eq!(value(&mut phone, field), shows);
    }
    phone.tap(60_000, &START).unwrap();
    let setup = phone.app().session().unwrap().setup.clone();
    assert_eq!((setup.settle_s, setup.twitch_restarts), (30, false));
    let refused = phone.tap(70_000, &Action::Setup { tap: SetupTap::Settle { seconds: 3_601 } });
    assert_eq!(refused.unwrap_err().kind(), ErrorKind::BadInput);
}

/// The bar and the marks of the strip count from one moment.
#[test]
fn a_liner_is_on_the_strip_where_the_wait_was_then() {
    let mut phone = Phone::new();
    for tap in [SetupTap::Settle { seconds: 120 }, SetupTap::TwitchRestarts { restarts: true }] {
        phone.tap(0, &Action::Setup { tap }).unwrap();
    }
    phone.tap(0, &START).unwrap();
    phone.tap(MIN, &CAST).unwrap();
    let liners = |phone: &mut Phone, ms| -> Vec<f64> {
        let strip = phone.bank(ms).strip;
        let is = |mark: &&restwater_screen::StripMark| mark.shape == restwater_screen::StripMarkShape::Liner;
        let minutes: Vec<f64> = strip.marks.iter().filter(is).map(|mark| mark.minute).collect();
        let elapsed = strip.elapsed_min.unwrap();
        assert!(minutes.iter().all(|minute| *minute <= elapsed && *minute <= strip.length_min), "{strip:?}");
        minutes
    };
    phone.tap(7 * MIN, &Action::Liner { rod: 1 }).unwrap();
    assert_eq!(liners(&mut phone, 8 * MIN), [4.0], "two minutes to settle, then four");
    phone.tap(17 * MIN, &Action::Twitch { rod: 1 }).unwrap();
    phone.tap(18 * MIN, &Action::Liner { rod: 1 }).unwrap();
    assert_eq!(liners(&mut phone, 20 * MIN), [1.0]);
    assert_eq!(liners(&mut phone, 200 * MIN), [1.0]);
    let mut plain = started();
    plain.tap(0, &CAST).unwrap();
    plain.tap(150 * MIN, &Action::Liner { rod: 1 }).unwrap();
    assert_eq!(liners(&mut plain, 160 * MIN), [120.0], "on the edge");
}

/// Two rods out since 1 min; an alarm after 12 min each.
fn two_out() -> Phone {
    let mut phone = super::rods::with_rods(2);
    phone.tap(0, &ring_after(12)).unwrap();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(MIN + 1_000, &Action::Cast { rod: 2 }).unwrap();
    phone
}

fn of_rod_1(watch: WatchView) -> Vec<(i64, bool)> {
    let of = |alarms: Vec<restwater_screen::WatchAlarm>, due| {
        let rod_1 = alarms.into_iter().filter(|alarm| alarm.rod == Some(1));
        rod_1.map(move |alarm| (alarm.at_wall_ms - at(0).wall_ms, due)).collect::<Vec<_>>()
    };
    [of(watch.alarms, false), of(watch.due, true)].concat()
}

/// Nothing asks for a tap while a fish is on. A shell rings only what it was told of before its time, so the alarm comes back as
/// one that is still to come.
#[test]
fn an_alarm_of_another_rod_waits_for_the_fish_that_is_on() {
    let mut phone = two_out();
    assert_eq!(of_rod_1(phone.watch(10 * MIN)), [(13 * MIN, false)]);
    phone.tap(11 * MIN, &Action::Bite { rod: 2 }).unwrap();
    assert_eq!(of_rod_1(phone.watch(11 * MIN)), []);
    assert_eq!(of_rod_1(phone.watch(14 * MIN)), []);
    phone.tap(15 * MIN, &Action::Landed { rod: 2, fish: None }).unwrap();
    let [(back, due)] = of_rod_1(phone.watch(15 * MIN + 500))[..] else { panic!("it is lost") };
    assert!(!due && back > 15 * MIN && back <= 15 * MIN + 15_000, "{back}");
    assert_eq!(of_rod_1(phone.watch(20 * MIN)), [(back, true)], "and stays");
    phone.tap(21 * MIN, &WOUND_IN).unwrap();
    assert_eq!(of_rod_1(phone.watch(21 * MIN)), []);
}

#[test]
fn an_alarm_that_rang_before_the_bite_is_silent_until_the_fish_is_off_and_one_to_come_keeps_its_minute() {
    let mut phone = two_out();
    assert_eq!(of_rod_1(phone.watch(13 * MIN)), [(13 * MIN, true)]);
    phone.tap(14 * MIN, &Action::Bite { rod: 2 }).unwrap();
    assert_eq!(of_rod_1(phone.watch(14 * MIN)), [], "silenced");
    phone.tap(16 * MIN, &Action::Lost { rod: 2 }).unwrap();
    let [(back, false)] = of_rod_1(phone.watch(16 * MIN + 500))[..] else { panic!("it is lost") };
    assert!(back > 16 * MIN && back <= 16 * MIN + 15_000, "{back}");
    let mut phone = two_out();
    phone.tap(5 * MIN, &Action::Bite { rod: 2 }).unwrap();
    phone.tap(8 * MIN, &Action::Missed { rod: 2 }).unwrap();
    assert_eq!(of_rod_1(phone.watch(9 * MIN)), [(13 * MIN, false)]);
}
