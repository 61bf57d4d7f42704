//! The set-up of the next day and START, with every amount of room.

use super::{CAST, START, at, open, two_sessions};
use restwater_app::{Action, App, ErrorKind, Screen, Which};
use restwater_bench::pack::Item;
use restwater_screen::{SetupTap, TackleTap, TypedInto};
use restwater_tests::powercut::{on_disk, set_room};
use tempfile::TempDir;

/// COPY LAST stores two settings, and what is packed is also ticked in memory.
pub fn what_is_chosen_for_the_next_day_is_kept_whole_or_not_at_all() {
    let taps = [SetupTap::CopyLast, SetupTap::Pack { item: Item::Bait("bread".into()) }];
    for tap in taps {
        let action = Action::Setup { tap };
        let (dir, _) = two_sessions();
        let (mut stored, mut refused) = (0, 0);
        for room in (0..60_000).step_by(1_000) {
            on_disk(None, || {
                let mut app = open(dir.path(), 2);
                // The state without it: nothing copied, another water, nothing packed.
                app.act(&Action::Setup { tap: SetupTap::CopyNothing }, &at(1_900)).unwrap();
                let water = Action::Typed { into: TypedInto::Water, text: "Alder Pool".into() };
                app.act(&water, &at(1_901)).unwrap();
                let was = app.screen(Which::Setup, &at(1_902)).unwrap();
                set_room(Some(room));
                let told = app.act(&action, &at(1_903));
                set_room(None);
                let now = app.screen(Which::Setup, &at(1_904)).unwrap();
                match &told {
                    Ok(_) => stored += 1,
                    Err(error) => {
                        assert_eq!(error.kind(), ErrorKind::NotSaved, "{action:?}, {room} bytes: {error}");
                        refused += 1;
                        assert!(now == was, "{action:?}, {room} bytes: refused, and the set-up is another");
                    }
                }
                drop(app);
                let mut app = open(dir.path(), 3);
                let again = app.screen(Which::Setup, &at(1_904)).unwrap();
                assert!(again == now, "{action:?}, {room} bytes: another set-up after a restart");
                if told.is_ok() && matches!(action, Action::Setup { tap: SetupTap::Pack { .. } }) {
                    app.act(&action, &at(1_905)).unwrap();
                }
            });
        }
        assert!(stored > 0 && refused > 0, "{action:?}: {stored} stored, {refused} refused");
    }
}

/// Yesterday two rods with the second one chosen, today one.
pub fn a_start_that_was_stored_shows_the_new_day_whatever_could_not_be_noted() {
    let rods = |rods| Action::Setup { tap: SetupTap::Rods { rods } };
    let (mut stored, mut refused) = (0, 0);
    for room in (0..60_000).step_by(2_000) {
        let dir = tempfile::tempdir().unwrap();
        let mut app = open(dir.path(), 1);
        for (minute, tap) in (1..).zip([rods(2), START, Action::ChooseRod { rod: 2 }]) {
            app.act(&tap, &at(minute)).unwrap();
        }
        app.act(&Action::EndSession, &at(30)).unwrap();
        app.act(&rods(1), &at(31)).unwrap();
        drop(app);
        on_disk(None, || {
            // A day's choices are lost with the running app: they are made again, as on the day before.
            let mut app = open(dir.path(), 2);
            app.act(&rods(2), &at(1_000)).unwrap();
            app.act(&START, &at(1_001)).unwrap();
            app.act(&Action::ChooseRod { rod: 2 }, &at(1_002)).unwrap();
            app.act(&Action::EndSession, &at(1_003)).unwrap();
            app.act(&rods(1), &at(1_004)).unwrap();
            set_room(Some(room));
            let told = app.act(&START, &at(2_000));
            set_room(None);
            if let Err(error) = told {
                assert_eq!(error.kind(), ErrorKind::NotSaved, "{room} bytes: {error}");
                refused += 1;
                return;
            }
            stored += 1;
            let Screen::Bank(bank) = app.screen(Which::Bank, &at(2_001)).unwrap() else { panic!() };
            let cast = bank.keys.iter().find(|key| key.tap.action() == Some(&CAST));
            assert!(cast.is_some_and(|key| key.enabled), "{room} bytes: no CAST on the Bank");
            app.act(&CAST, &at(2_002)).unwrap();
            let says = app.look_over().unwrap();
            assert!(!says.contains("could not be saved"), "{room} bytes, with room again: {says}");
        });
    }
    assert!(stored > 5 && refused > 0, "{stored} stored, {refused} refused");
}

/// COPY LAST and START: a START that was stored has used the copy up, over a restart too, and one that was refused has not.
pub fn a_copy_is_used_up_by_the_start_that_was_stored_and_by_no_other() {
    let (mut stored, mut refused) = (0, 0);
    for room in (0..60_000).step_by(1_000) {
        let dir = copied_day();
        on_disk(None, || {
            let mut app = open(dir.path(), 2);
            app.act(&Action::Setup { tap: SetupTap::CopyLast }, &at(1_900)).unwrap();
            set_room(Some(room));
            let told = app.act(&START, &at(1_901));
            set_room(None);
            drop(app);
            let mut app = open(dir.path(), 3);
            match told {
                Ok(_) => stored += 1,
                Err(error) => {
                    assert_eq!(error.kind(), ErrorKind::NotSaved, "{room} bytes: {error}");
                    refused += 1;
                    app.act(&START, &at(1_902)).unwrap();
                }
            }
            assert_eq!(bait(&app).as_deref(), Some("bread"), "{room} bytes: it is a copy");
            app.act(&Action::EndSession, &at(1_930)).unwrap();
            drop(app);
            let mut app = open(dir.path(), 4);
            app.act(&START, &at(3_000)).unwrap();
            assert_eq!(bait(&app), None, "{room} bytes: copied unasked");
        });
    }
    assert!(stored > 5 && refused > 0, "{stored} stored, {refused} refused");
}

/// An ended day with bread on the line.
fn copied_day() -> TempDir {
    let dir = tempfile::tempdir().unwrap();
    let mut app = open(dir.path(), 1);
    app.act(&START, &at(1)).unwrap();
    let bread = TackleTap::Bait { name: "bread".into() };
    app.act(&Action::Tackle { rod: 1, tap: bread }, &at(2)).unwrap();
    app.act(&Action::EndSession, &at(30)).unwrap();
    dir
}

fn bait(app: &App) -> Option<String> {
    app.session().unwrap().rods[0].rig.bait.clone()
}
