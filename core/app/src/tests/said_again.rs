//! What the screens say of spots, of the match and of the next cast stays said: over a restart, an import, its UNDO and a step of the
//! clock.

use super::all_out::ALL_OUT;
use super::clock_steps::{STEPS, stepped};
use super::match_day::in_match;
use super::spots::{BITES, DRY, aimed};
use super::whose::a_partners_day;
use super::*;
use restwater_screen::{MatchTap, RuleTap};

/// What an angler would act on: the advice and its reasons, where the next cast goes, what is to come, and which keys there are.
fn said(phone: &mut Phone, now: &Moment) -> String {
    let mut look = |which| phone.app().screen(which, now).unwrap();
    let (Screen::Bank(bank), Screen::Swim(swim), Screen::Match(view)) =
        (look(Which::Bank), look(Which::Swim), look(Which::Match))
    else {
        panic!("other screens")
    };
    let keys: Vec<_> = bank.keys.iter().map(|key| (key.key, &key.label, key.enabled, key.weight)).collect();
    let coming: Vec<_> = view.coming.iter().map(|line| (&line.label, &line.value)).take(3).collect();
    format!(
        "{:?} {:?} {:?}\n{} {:?}\n{} {coming:?} {:?}\n{keys:?}",
        bank.advice.headline,
        bank.advice.detail,
        bank.advice.more,
        swim.headline,
        swim.reasons,
        view.coming_says,
        view.lines.first().map(|line| &line.value),
    )
}

#[test]
fn over_a_restart_an_import_and_a_step_of_the_clock_the_screens_say_the_same() {
    for out in [false, true] {
        let mut phone = started();
        phone.tap(2_000, &Action::Match { tap: MatchTap::Rule { rule: RuleTap::Begin } }).unwrap();
        let now = (0..6).fold(17 * MIN, |now, _| {
            let now = phone.fish_at(now, BITES);
            phone.fish_at(now, DRY)
        });
        phone.tap(now, &aimed(DRY)).unwrap();
        if out {
            phone.tap(now + 10_000, &CAST).unwrap();
        }
        let later = now + 50_000;
        let before = said(&mut phone, &at(later));
        let first = if out { "Recast by " } else { "Not here again. Cast to " };
        assert!(before.contains(first), "{before}");
        is_said_again(&mut phone, later, &before);
    }
}

/// All-out comes while the angler is away from the rods: nothing is to be cast any more.
#[test]
fn what_is_said_at_all_out_to_whoever_is_away_is_said_again() {
    let mut phone = in_match();
    for (at_ms, action) in [(300 * MIN, CAST), (310 * MIN, WOUND_IN), (311 * MIN, Action::Away)] {
        phone.tap(at_ms, &action).unwrap();
    }
    let later = ALL_OUT + 5 * MIN;
    let before = said(&mut phone, &at(later));
    assert!(
        before.starts_with("\"All out.\"") && before.contains("\n[(End, "),
        "END is in the place of CAST: {before}"
    );
    is_said_again(&mut phone, later, &before);
}

/// Over a restart, a partner's session that comes in and is taken out again, and every step of the clock.
fn is_said_again(phone: &mut Phone, later: i64, before: &str) {
    phone.open();
    assert_eq!(said(phone, &at(later)), before, "a restart");
    let (_theirs, file) = a_partners_day();
    let import = phone.take(&file, later - 2_000);
    assert_eq!(said(phone, &at(later)), before, "a partner's day, which doesn't count");
    phone.tap(later - 1_000, &Action::UndoImport { id: import }).unwrap();
    assert_eq!(said(phone, &at(later)), before, "its UNDO");
    for (step, wall) in STEPS {
        assert_eq!(said(phone, &stepped(wall, later)), before, "{step}");
    }
}
