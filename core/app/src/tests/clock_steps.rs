//! What the angler sees after the phone's clock was set or the phone was restarted.

use super::*;
use restwater_screen::MatchTap;
use restwater_screen::{MatchView, SwimView, WatchView};
use restwater_screen::{PhoneTap, RuleTap};
use restwater_session::DoubtKind;

/// What a wall clock shows after it was set, given what it would have shown.
pub(super) type WallStep = fn(i64) -> i64;

/// Changes to the wall clock of a phone whose monotonic clock runs on, each with what the wall clock shows
/// then.
pub(super) const STEPS: [(&str, WallStep); 4] = [
    ("reset to 1970", |wall| wall - 1_700_000_000_000),
    ("set to next year", |wall| wall + 365 * 86_400_000),
    ("set back two hours", |wall| wall - 120 * MIN),
    ("set forward an hour", |wall| wall + 60 * MIN),
];

pub(super) fn stepped(step: WallStep, ms: i64) -> Moment {
    Moment { wall_ms: step(at(ms).wall_ms), ..at(ms) }
}

/// A moment of a phone that was rebooted at `boot_ms`, so that its monotonic clock started again there.
pub(super) fn rebooted(ms: i64, boot_ms: i64) -> Moment {
    Moment { mono_ms: ms - boot_ms, boot: "boot-1".into(), ..at(ms) }
}

fn swim(phone: &mut Phone, now: &Moment) -> SwimView {
    match phone.app().screen(Which::Swim, now).unwrap() {
        Screen::Swim(swim) => swim,
        other => panic!("{other:?}"),
    }
}

fn bank(phone: &mut Phone, now: &Moment) -> BankView {
    match phone.app().screen(Which::Bank, now).unwrap() {
        Screen::Bank(bank) => bank,
        other => panic!("{other:?}"),
    }
}

fn match_view(phone: &mut Phone, now: &Moment) -> MatchView {
    match phone.app().screen(Which::Match, now).unwrap() {
        Screen::Match(view) => view,
        other => panic!("{other:?}"),
    }
}

fn watch(phone: &mut Phone, now: &Moment) -> WatchView {
    phone.app().watch(now)
}

fn rule(rule: RuleTap) -> Action {
    Action::Match { tap: MatchTap::Rule { rule } }
}

/// A spot, a cast of eight minutes to it and one that has been out since the twelfth minute; water was kept
/// back in the second minute.
fn fished() -> Phone {
    let mut phone = started();
    for (minute, action) in
        [(1, Action::KeepBack), (2, Action::CastHere), (3, CAST), (11, WOUND_IN), (12, CAST)]
    {
        phone.tap(minute * MIN, &action).unwrap();
    }
    aim_at_the_cast(&mut phone);
    phone
}

/// Aims at the cell that was cast to, past the kept-back water.
fn aim_at_the_cast(phone: &mut Phone) {
    for second in [0, 2] {
        phone.tap(13 * MIN + second * 1_000, &Action::StepAim { step: Step::Left }).unwrap();
    }
}

fn shown(view: &SwimView) -> (String, String, Vec<String>, Vec<String>) {
    (view.area.clone(), view.cell.clone(), view.reasons.clone(), view.list.clone())
}

#[test]
fn casts_stay_on_the_map_and_rests_stay_right_when_the_clock_is_set() {
    let mut phone = fished();
    let true_view = swim(&mut phone, &at(20 * MIN));
    assert!(true_view.cell.starts_with("2 casts"), "{}", true_view.cell);
    assert_ne!(shown(&true_view), shown(&swim(&mut phone, &at(30 * MIN))), "a rest goes on");
    for (what, step) in STEPS {
        let now = stepped(step, 20 * MIN);
        assert_eq!(shown(&swim(&mut phone, &now)), shown(&true_view), "{what}");
    }
}

#[test]
fn casts_made_after_the_clock_was_set_come_after_the_earlier_ones() {
    for (what, step) in STEPS {
        let (mut phone, mut other) = (fished(), fished());
        for (minute, action) in [(22, WOUND_IN), (23, CAST), (31, BITE)] {
            phone.app().act(&action, &stepped(step, minute * MIN)).unwrap();
            other.tap(minute * MIN, &action).unwrap();
        }
        let view = swim(&mut phone, &stepped(step, 40 * MIN));
        assert_eq!(shown(&view), shown(&swim(&mut other, &at(40 * MIN))), "{what}");
        let drift = |phone: &mut Phone| {
            let session = phone.app().session().unwrap().clone();
            restwater_session::rows_of(&session)
                .iter()
                .map(|r| (r.at_min, r.wait.minutes()))
                .collect::<Vec<_>>()
        };
        assert_eq!(drift(&mut phone), drift(&mut other), "{what}");
    }
}

#[test]
fn rests_are_right_after_a_restart_of_the_app_and_of_the_phone() {
    let mut phone = fished();
    let true_view = swim(&mut phone, &at(20 * MIN));
    phone.open();
    aim_at_the_cast(&mut phone);
    assert_eq!(shown(&swim(&mut phone, &at(20 * MIN))), shown(&true_view));
    assert_eq!(shown(&swim(&mut phone, &rebooted(20 * MIN, 18 * MIN))), shown(&true_view));
}

#[test]
fn match_time_left_is_right_when_the_clock_is_set_after_the_match_was_set() {
    let mut phone = fished();
    phone.tap(14 * MIN, &rule(RuleTap::Begin)).unwrap();
    for minute in [15, 40, 200] {
        let now = at(minute * MIN);
        let (true_view, header) = (match_view(&mut phone, &now), bank(&mut phone, &now).header.length);
        for (what, step) in STEPS {
            let now = stepped(step, minute * MIN);
            let view = match_view(&mut phone, &now);
            assert_eq!((view.phase, &view.digits), (true_view.phase, &true_view.digits), "{what}");
            assert_eq!(bank(&mut phone, &now).header.length, header, "{what}");
        }
    }
}

#[test]
fn a_rule_changed_after_the_clock_was_set_does_not_move_all_out() {
    for (what, step) in STEPS {
        let mut phone = fished();
        phone.tap(14 * MIN, &rule(RuleTap::Begin)).unwrap();
        let true_digits = match_view(&mut phone, &at(40 * MIN)).digits;
        phone.app().act(&rule(RuleTap::Landing { minutes: 20 }), &stepped(step, 39 * MIN)).unwrap();
        assert_eq!(match_view(&mut phone, &stepped(step, 40 * MIN)).digits, true_digits, "{what}");
        phone.app().act(&rule(RuleTap::MoveAllOut { minutes: 15 }), &stepped(step, 41 * MIN)).unwrap();
        let later = match_view(&mut phone, &stepped(step, 55 * MIN)).digits;
        assert_eq!(later, true_digits, "{what}: a quarter of an hour more, fifteen minutes later");
    }
}

#[test]
fn a_signal_heard_after_the_clock_was_set_counts_as_all_in() {
    for (what, step) in STEPS {
        let mut phone = fished();
        phone.tap(14 * MIN, &rule(RuleTap::Begin)).unwrap();
        // All-in is due at 22:30:00 and heard forty seconds after.
        let heard = 16 * MIN + 80_000;
        let signal = Action::Match { tap: MatchTap::Heard { signal: restwater_screen::Signal::AllIn } };
        phone.app().act(&signal, &stepped(step, heard)).unwrap();
        assert_eq!(match_view(&mut phone, &stepped(step, heard)).digits, "5:00:00", "{what}");
    }
}

#[test]
fn alarms_ring_after_the_right_number_of_minutes_when_the_clock_is_set() {
    let mut phone = fished();
    phone.tap(14 * MIN, &rule(RuleTap::Begin)).unwrap();
    phone.tap(15 * MIN, &Action::Phone { tap: PhoneTap::Alarm { alarm: Alarm::After(30) } }).unwrap();
    let rings_in = |phone: &mut Phone, now: &Moment| -> Vec<(String, i64)> {
        let alarms = watch(phone, now).alarms;
        alarms.iter().map(|a| (a.id.clone(), a.at_wall_ms - now.wall_ms)).collect()
    };
    let true_rings = rings_in(&mut phone, &at(20 * MIN));
    assert_eq!(true_rings[0], ("rod-1".into(), 22 * MIN));
    assert_eq!(true_rings.len(), 3, "{true_rings:?}");
    for (what, step) in STEPS {
        assert_eq!(rings_in(&mut phone, &stepped(step, 20 * MIN)), true_rings, "{what}");
    }
}

#[test]
fn a_wait_over_a_reset_to_1970_is_never_negative_and_is_marked() {
    let mut phone = fished();
    // The battery went flat at 20 min, the phone started again at 25 min without a network: its clock shows 1970.
    let after = |ms: i64| Moment { wall_ms: ms - 25 * MIN, ..rebooted(ms, 25 * MIN) };
    let seen = bank(&mut phone, &after(30 * MIN));
    assert_eq!(seen.rods[0].digits, "5:00", "at least as long as the phone has been on");
    assert!(seen.rods[0].since.starts_with("out since about "), "{}", seen.rods[0].since);
    phone.app().act(&BITE, &after(30 * MIN)).unwrap();
    phone.app().act(&LANDED, &after(32 * MIN)).unwrap();
    let session = phone.app().session().unwrap().clone();
    let waits: Vec<f64> = restwater_session::waits_of(&session).iter().map(|w| w.minutes()).collect();
    assert_eq!(waits, [8.0], "it may have been anything from 5 min to a fortnight, so it says nothing");
    assert_eq!(restwater_session::casts_by_telling(&session), (1, 1), "counted, and said not to count");
    let moved = session.doubts.iter().filter(|d| d.kind == restwater_session::DoubtKind::ClockMoved);
    assert_eq!(moved.count(), 1, "{:?}", session.doubts);
    // The network sets the clock, so from the next entry on the day is known again.
    phone.app().act(&CAST, &rebooted(34 * MIN, 25 * MIN)).unwrap();
    let session = phone.app().session().unwrap().clone();
    assert_eq!(restwater_session::rows_of(&session)[1].wait.minutes(), 18.0, "12 to 30 min");
    assert_eq!(bank(&mut phone, &rebooted(40 * MIN, 25 * MIN)).rods[0].digits, "6:00");
}

/// Which of the two readings was right before the restart, nobody can know.
#[test]
fn a_wait_over_a_restart_after_the_clock_was_set_by_hours_says_nothing() {
    for (what, step) in [STEPS[2], STEPS[3]] {
        let mut phone = fished();
        phone.app().act(&Action::Liner { rod: 1 }, &stepped(step, 14 * MIN)).unwrap();
        phone.app().act(&BITE, &rebooted(80 * MIN, 15 * MIN)).unwrap();
        let session = phone.app().session().unwrap();
        assert_eq!(restwater_session::casts_by_telling(session), (1, 1), "{what}");
        let waits: Vec<f64> =
            restwater_session::waits_of(session).iter().map(|wait| wait.minutes()).collect();
        assert_eq!(waits, [8.0], "{what}");
        let bite = session.casts[1].bite.as_ref().map(|(_, op)| *op);
        assert!(
            session.doubts.iter().any(|doubt| Some(doubt.op) == bite && doubt.kind == DoubtKind::ClockMoved),
            "{what}: {:?}",
            session.doubts
        );
    }
}

/// A clock that a flat battery reset is not one that was set by hours: once it is right again, it measures to the second.
#[test]
fn a_wait_over_a_restart_whose_clock_was_reset_and_put_right_counts() {
    let mut phone = fished();
    let (_, reset) = STEPS[0];
    let wall = Moment { wall_ms: reset(at(30 * MIN).wall_ms), ..rebooted(30 * MIN, 15 * MIN) };
    phone.app().act(&Action::Liner { rod: 1 }, &wall).unwrap();
    phone.app().act(&BITE, &rebooted(32 * MIN, 15 * MIN)).unwrap();
    let waits: Vec<f64> = restwater_session::waits_of(phone.app().session().unwrap())
        .iter()
        .map(|wait| wait.minutes())
        .collect();
    assert_eq!(waits, [8.0, 20.0]);
}

/// Flat battery: the match is set while the clock shows 1970, and the network sets it afterwards.
#[test]
fn a_match_set_under_a_reset_clock_goes_on_when_the_network_sets_the_clock() {
    let (_, reset) = STEPS[0];
    for first in [CAST, rule(RuleTap::Landing { minutes: 20 })] {
        let mut phone = Phone::new();
        phone.app().act(&START, &stepped(reset, 0)).unwrap();
        phone.app().act(&rule(RuleTap::Begin), &stepped(reset, 2 * MIN)).unwrap();
        phone.app().act(&rule(RuleTap::MoveAllIn { minutes: -15 }), &stepped(reset, 3 * MIN)).unwrap();
        let before = match_view(&mut phone, &stepped(reset, 7 * MIN));
        phone.tap(6 * MIN, &first).unwrap();
        let after = match_view(&mut phone, &at(7 * MIN));
        assert_eq!((after.phase, after.digits), (before.phase, before.digits), "{first:?}");
        let of_match = |a: &&restwater_screen::WatchAlarm| a.rod.is_none();
        assert_eq!(watch(&mut phone, &at(7 * MIN)).alarms.iter().filter(of_match).count(), 2, "{first:?}");
        // Its signal is heard, and later rules are of the same match.
        let heard = Action::Match { tap: MatchTap::Heard { signal: restwater_screen::Signal::AllIn } };
        phone.tap(8 * MIN, &heard).unwrap();
        phone.tap(9 * MIN, &rule(RuleTap::MoveAllOut { minutes: 60 })).unwrap();
        assert_eq!(match_view(&mut phone, &at(9 * MIN)).digits, "6:14:00", "{first:?}");
    }
}

/// A friend's file from a phone whose date is next year sets the hybrid clock ahead, but no clock of this phone was reset.
#[test]
fn a_note_written_weeks_later_does_not_move_the_day() {
    let (_, next_year) = STEPS[1];
    let mut friend = Phone::with_ids_from(500);
    friend.app().act(&START, &stepped(next_year, 0)).unwrap();
    let file = friend.all_of_it(MIN);
    let mut phone = Phone::new();
    phone.take(&file, 2 * MIN);
    for (minute, action) in [(10, START), (11, CAST), (40, WOUND_IN), (60, Action::EndSession)] {
        phone.tap(minute * MIN, &action).unwrap();
    }
    let later = 25 * 24 * 60 * MIN;
    phone.app().act(&typed(TypedInto::Note, "mist"), &rebooted(later, later - 60 * MIN)).unwrap();
    let started = phone.app().session().unwrap().started.clone().unwrap();
    assert_eq!(started.shown.wall_ms, at(10 * MIN).wall_ms);
}

/// A whole day under 1970, and a note weeks later under the right time: nobody knows when the day was.
#[test]
fn a_day_fished_wholly_under_a_reset_clock_is_not_dated_by_a_note_of_weeks_later() {
    let (_, reset) = STEPS[0];
    let mut phone = Phone::new();
    for (minute, action) in [(10, START), (11, CAST), (40, WOUND_IN), (60, Action::EndSession)] {
        phone.app().act(&action, &stepped(reset, minute * MIN)).unwrap();
    }
    let later = 25 * 24 * 60 * MIN;
    phone.app().act(&typed(TypedInto::Note, "mist"), &rebooted(later, later - 60 * MIN)).unwrap();
    let started = phone.app().session().unwrap().started.clone().unwrap();
    assert_eq!(started.shown.wall_ms, stepped(reset, 10 * MIN).wall_ms);
}

/// The clock was set forward by an hour before the phone was restarted, and nobody knows which of the two times was right.
#[test]
fn a_match_clock_that_may_be_an_hour_wrong_says_so() {
    let mut phone = fished();
    phone.tap(14 * MIN, &rule(RuleTap::Begin)).unwrap();
    let says = match_view(&mut phone, &at(15 * MIN)).says;
    assert_eq!(says, "to all-in at 22:30.");
    phone.app().act(&Action::Liner { rod: 1 }, &stepped(STEPS[3].1, 15 * MIN)).unwrap();
    let says = match_view(&mut phone, &rebooted(80 * MIN, 16 * MIN)).says;
    assert!(says.contains("The time left may be wrong by 1 h 00: this phone's clock was changed."), "{says}");
    // A flat battery: nobody knows how long the phone was off.
    let (_, reset) = STEPS[0];
    let dark = Moment {
        wall_ms: reset(at(80 * MIN).wall_ms),
        boot: "boot-2".into(),
        ..rebooted(80 * MIN, 16 * MIN)
    };
    let says = match_view(&mut phone, &dark).says;
    assert!(says.contains("The time left may be far too long: this phone's clock was reset."), "{says}");
}

/// An overnight match "to ten o'clock" over the night on which the clocks are put back or forward.
#[test]
fn all_out_over_a_change_of_the_clocks_is_that_of_the_new_time() {
    for (before, after) in [(60, 0), (0, 60)] {
        let with = |ms: i64, offset_min: i16| Moment { offset_min, zone: "Europe/London".into(), ..at(ms) };
        let mut phone = Phone::new();
        phone.app().act(&START, &with(0, before)).unwrap();
        phone.app().act(&rule(RuleTap::Begin), &with(MIN, before)).unwrap();
        let says = match_view(&mut phone, &with(20 * MIN, before)).says;
        let left = |phone: &mut Phone, ms, offset| match_view(phone, &with(ms, offset)).digits;
        let old = left(&mut phone, 200 * MIN, before);
        let new = left(&mut phone, 200 * MIN, after);
        assert_eq!(match_view(&mut phone, &with(200 * MIN, after)).says, says, "{before} to {after}");
        let seconds =
            |digits: &str| digits.split(':').fold(0, |sum, part| 60 * sum + part.parse::<i64>().unwrap());
        assert_eq!(seconds(&new) - seconds(&old), 60 * i64::from(before - after), "{old} and {new}");
        // An entry by the new time, a rule that is changed then, and a restart leave it there.
        phone.app().act(&CAST, &with(205 * MIN, after)).unwrap();
        phone.app().act(&rule(RuleTap::Landing { minutes: 20 }), &with(206 * MIN, after)).unwrap();
        phone.open();
        assert_eq!(match_view(&mut phone, &with(207 * MIN, after)).says, says, "{before} to {after}");
        let alarms = phone.app().watch(&with(207 * MIN, after)).alarms;
        let first = alarms.iter().filter(|alarm| alarm.rod.is_none()).map(|alarm| alarm.at_wall_ms).min();
        assert!(says.ends_with(&time_of_day(first.unwrap() + 30 * MIN, after)), "{says}");
        // On a journey to another zone nothing changes.
        let abroad = Moment { zone: "Europe/Paris".into(), ..with(208 * MIN, after) };
        assert_eq!(match_view(&mut phone, &abroad).says, says);
    }
}

/// Nothing was logged since the clocks changed: waits and alarms end with all-out as the Match screen shows it.
#[test]
fn a_bait_that_is_out_while_the_clocks_change_waits_until_all_out_by_the_new_time() {
    // All-out is due 316 min 40 s after START by the old time.
    for (before, after, cast, now) in [(60, 0, 310, 340), (0, 60, 240, 250)] {
        let with = |minute: i64, offset_min: i16| Moment {
            offset_min,
            zone: "Europe/London".into(),
            ..at(minute * MIN)
        };
        let mut phone = Phone::new();
        phone.app().act(&START, &with(0, before)).unwrap();
        phone.app().act(&rule(RuleTap::Begin), &with(1, before)).unwrap();
        let alarm = Action::Phone { tap: PhoneTap::Alarm { alarm: Alarm::After(35) } };
        phone.app().act(&alarm, &with(2, before)).unwrap();
        phone.app().act(&CAST, &with(cast, before)).unwrap();
        let rods = |phone: &mut Phone, now: &Moment| {
            let watch = watch(phone, now);
            watch.alarms.into_iter().filter(|alarm| alarm.rod.is_some()).count()
        };
        let elapsed =
            |phone: &mut Phone, minute| bank(phone, &with(minute, after)).strip.elapsed_min.unwrap();
        for restarted in [false, true] {
            if restarted {
                phone.open();
            }
            let waited = elapsed(&mut phone, now);
            assert!((waited - (now - cast) as f64).abs() < 0.01, "{before} to {after}: {waited}");
            // It would ring 345 or 275 min after START; all-out is then 376 or 256 min after it.
            let rings = usize::from(after == 0);
            assert_eq!(rods(&mut phone, &with(now, after)), rings, "{before} to {after}");
            // After all-out the wait has ended with it.
            let all_out = if after == 0 { 376.0 } else { 256.0 } + 2.0 / 3.0;
            let waited = elapsed(&mut phone, 380);
            assert!((waited - (all_out - cast as f64)).abs() < 0.01, "{before} to {after}: {waited}");
        }
    }
}

/// "03:30." by an offset from UTC.
fn time_of_day(wall_ms: i64, offset_min: i16) -> String {
    let minute = (restwater_log::local_ms(wall_ms, offset_min) / MIN).rem_euclid(24 * 60);
    format!("{:02}:{:02}.", minute / 60, minute % 60)
}
