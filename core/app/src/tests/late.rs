//! LANDED and LOST while the bait still counts as out.

use super::*;
use restwater_session::{DoubtKind, EndCause, waits_of};

const LOST: Action = Action::Lost { rod: 1 };

#[test]
fn landed_while_out_also_logs_the_bite_and_one_undo_removes_both() {
    let mut phone = started();
    phone.tap(0, &CAST).unwrap();
    let update = phone.tap(15 * MIN, &LANDED).unwrap();
    assert_eq!(update.notice, "landed logged, and the bite 120 s before: approximate.");
    assert!(phone.undoes().unwrap().starts_with("landed"));
    let session = phone.app().session().unwrap();
    let wait = waits_of(session)[0];
    assert!(wait.is_bite() && wait.minutes() == 13.0);
    assert!(matches!(session.casts[0].end.as_ref().unwrap().cause, EndCause::Landed { .. }));
    assert_eq!(session.doubts.iter().map(|doubt| doubt.kind).collect::<Vec<_>>(), [DoubtKind::Approximate]);
    phone.open();
    phone.tap(16 * MIN, &Action::Undo).unwrap();
    assert_eq!(phone.bank(16 * MIN).state, BankState::Out);
    phone.tap(17 * MIN, &Action::Redo).unwrap();
    assert_eq!(phone.bank(17 * MIN).state, BankState::Landed);
}

#[test]
fn a_fish_landed_with_both_hands_full_and_slipped_back_takes_two_taps() {
    let mut phone = started();
    phone.tap(0, &CAST).unwrap();
    for key in [Key::LandedLate, Key::PutBack] {
        let keys = phone.bank(15 * MIN).keys;
        let tap = keys.into_iter().find(|view| view.key == key).unwrap().tap;
        let at = if key == Key::PutBack { 15 * MIN + 5_000 } else { 15 * MIN };
        assert!(phone.tap(at, tap.action().unwrap()).unwrap().changed);
    }
    let fish = restwater_session::catch(phone.app().session().unwrap());
    assert!(fish.len() == 1 && fish[0].put_back);
}

#[test]
fn the_bite_is_set_back_by_the_learned_playing_time_but_never_before_the_splash() {
    let mut phone = started();
    for i in 0..3 {
        let start = i * 20 * MIN;
        for (after, action) in [(0, CAST), (10 * MIN, BITE), (15 * MIN, LANDED)] {
            phone.tap(start + after, &action).unwrap();
        }
    }
    phone.tap(60 * MIN, &CAST).unwrap();
    let key = phone.bank(71 * MIN).keys.into_iter().find(|view| view.key == Key::LandedLate).unwrap();
    assert_eq!(key.sub.as_deref(), Some("adds a bite 5 min ago"));
    phone.tap(75 * MIN, &LANDED).unwrap();
    phone.tap(80 * MIN, &CAST).unwrap();
    phone.tap(82 * MIN, &LANDED).unwrap();
    let waits: Vec<f64> =
        waits_of(phone.app().session().unwrap()).iter().map(|wait| wait.minutes()).collect();
    assert_eq!(waits, [10.0, 10.0, 10.0, 10.0, 1.0]);
}

/// What the key says is what the tap logs, however short the bait has been out.
#[test]
fn the_key_promises_no_bite_before_the_splash() {
    for (played, outcome, out_s, says, back_s) in [
        (Key::LandedLate, LANDED, 60, "adds a bite 30 s ago", 30),
        (Key::LandedLate, LANDED, 200, "adds a bite 2 min ago", 100),
        (Key::LandedLate, LANDED, 3_600, "adds a bite 2 min ago", 120),
        (Key::LostLate, LOST, 20, "adds a bite 10 s ago", 10),
        (Key::LostLate, LOST, 3_600, "adds a bite 1 min ago", 60),
    ] {
        let mut phone = started();
        phone.tap(0, &CAST).unwrap();
        let keys = phone.bank(out_s * 1_000).keys;
        let key = keys.into_iter().find(|view| view.key == played).unwrap();
        assert_eq!(key.sub.as_deref(), Some(says), "{out_s} s out");
        phone.tap(out_s * 1_000, &outcome).unwrap();
        let cast = phone.app().session().unwrap().casts[0].clone();
        let (bite, _) = cast.bite.unwrap();
        assert_eq!(cast.end.unwrap().at.ms_since(&bite), back_s * 1_000);
    }
}

#[test]
fn lost_while_out_is_a_bite_too_and_with_nothing_out_it_is_refused() {
    let mut phone = started();
    assert!(phone.tap(0, &LOST).is_err());
    phone.tap(1_000, &CAST).unwrap();
    phone.tap(15 * MIN, &LOST).unwrap();
    let session = phone.app().session().unwrap();
    assert!(waits_of(session)[0].is_bite());
    assert_eq!(session.casts[0].end.as_ref().unwrap().cause, EndCause::Lost);
    assert!(phone.tap(16 * MIN, &LOST).is_err());
}

/// The bait had no bite yet when something else was logged of it.
#[test]
fn the_bite_before_a_landing_comes_after_what_was_logged_of_the_cast() {
    for action in [Action::Liner { rod: 1 }, Action::Indication { rod: 1 }, Action::Twitch { rod: 1 }] {
        let mut phone = started();
        phone.tap(0, &CAST).unwrap();
        phone.tap(20 * MIN, &action).unwrap();
        phone.tap(20 * MIN + 40_000, &LANDED).unwrap();
        let session = phone.app().session().unwrap();
        assert_eq!(
            session.doubts.iter().map(|doubt| doubt.kind).collect::<Vec<_>>(),
            [DoubtKind::Approximate],
            "{action:?}"
        );
        assert_eq!(session.casts[0].bite.as_ref().unwrap().0.at_ms, 20 * MIN + 20_000);
    }
}
