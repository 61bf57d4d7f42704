//! The set-up of the next session: what is copied, and the peg that is typed for it.

use super::*;

const DAY: i64 = 24 * 60 * MIN;

fn setup(tap: SetupTap) -> Action {
    Action::Setup { tap }
}

impl Phone {
    fn set_up_row(&mut self, ms: i64, tag: &str) -> restwater_screen::ChoiceRow {
        self.set_up_rows(ms).into_iter().find(|row| row.tag == tag).unwrap()
    }

    /// The label of the current choice: to copy the last session, or nothing.
    fn copy_chosen(&mut self, ms: i64) -> String {
        let row = self.set_up_row(ms, "copy");
        row.choices.into_iter().find(|choice| choice.chosen).unwrap().label
    }

    /// A day with that bait on the line.
    fn day_on(&mut self, from: i64, peg: &str, bait: &str) -> Uuid {
        self.tap(from, &typed(TypedInto::Peg, peg)).unwrap();
        self.tap(from + 1_000, &START).unwrap();
        self.tap(from + 2_000, &tackle(TackleTap::Bait { name: bait.into() })).unwrap();
        self.tap(from + 3_000, &Action::EndSession).unwrap();
        self.app().session().unwrap().id
    }

    fn bait(&mut self) -> Option<String> {
        self.app().session().unwrap().rods[0].rig.bait.clone()
    }

    fn peg(&mut self) -> Option<String> {
        self.app().session().unwrap().setup.peg.clone()
    }
}

/// My other phone was fished with on Saturday, and its file came after COPY LAST.
#[test]
fn the_row_names_the_session_that_start_copies() {
    let mut other = Phone::with_ids_from(500);
    let later = other.day_on(DAY, "22", "maggot");
    let file = other.all_of_it(DAY + MIN);
    let mut mine = Phone::new();
    mine.day_on(0, "14", "bread");
    mine.tap(2 * DAY, &setup(SetupTap::CopyLast)).unwrap();
    mine.take(&file, 2 * DAY + MIN);
    mine.tap(2 * DAY + 2 * MIN, &Action::Book { tap: restwater_screen::BookTap::Open { session: later } })
        .unwrap();
    let is_mine = Action::Book { tap: restwater_screen::BookTap::PhoneIsMine { mine: true } };
    mine.tap(2 * DAY + 3 * MIN, &is_mine).unwrap();
    let chosen = mine.copy_chosen(2 * DAY + 4 * MIN);
    assert!(chosen.ends_with("Peg\u{a0}14"), "{chosen}");
    // A tap on the current choice keeps it.
    mine.tap(2 * DAY + 5 * MIN, &setup(SetupTap::CopyLast)).unwrap();
    mine.tap(2 * DAY + 6 * MIN, &START).unwrap();
    assert_eq!((mine.peg().as_deref(), mine.bait().as_deref()), (Some("14"), Some("bread")));
    mine.tap(2 * DAY + 7 * MIN, &Action::Undo).unwrap();
    // With the copy taken back, the last session is the later one.
    mine.tap(2 * DAY + 8 * MIN, &setup(SetupTap::CopyNothing)).unwrap();
    let offered = mine.set_up_row(2 * DAY + 9 * MIN, "copy").choices[0].label.clone();
    assert!(offered.ends_with("Peg\u{a0}22"), "{offered}");
    mine.tap(2 * DAY + 10 * MIN, &setup(SetupTap::CopyLast)).unwrap();
    mine.tap(2 * DAY + 11 * MIN, &START).unwrap();
    assert_eq!(mine.bait().as_deref(), Some("maggot"));
}

/// The session to copy came by an import that was then taken back.
#[test]
fn a_session_that_is_gone_is_no_longer_shown_as_copied() {
    let mut other = Phone::with_ids_from(500);
    let later = other.day_on(DAY, "22", "maggot");
    let file = other.all_of_it(DAY + MIN);
    let mut mine = Phone::new();
    mine.day_on(0, "14", "bread");
    let import = mine.take(&file, 2 * DAY);
    mine.tap(2 * DAY + MIN, &Action::Book { tap: restwater_screen::BookTap::Open { session: later } })
        .unwrap();
    let is_mine = Action::Book { tap: restwater_screen::BookTap::PhoneIsMine { mine: true } };
    mine.tap(2 * DAY + 2 * MIN, &is_mine).unwrap();
    mine.tap(2 * DAY + 3 * MIN, &setup(SetupTap::CopyLast)).unwrap();
    assert!(mine.copy_chosen(2 * DAY + 4 * MIN).ends_with("Peg\u{a0}22"));
    mine.tap(2 * DAY + 5 * MIN, &Action::UndoImport { id: import }).unwrap();
    assert_eq!(mine.copy_chosen(2 * DAY + 6 * MIN), "no");
    mine.tap(2 * DAY + 7 * MIN, &START).unwrap();
    assert_eq!(mine.bait(), None);
}

/// The morning was fished at peg 14, and the draw for the afternoon is peg 9.
#[test]
fn the_first_digit_after_a_start_begins_a_new_peg() {
    for depth_first in [false, true] {
        let mut phone = Phone::new();
        for (s, digit) in [(0, 1), (1, 4)] {
            phone.tap(s * 1_000, &setup(SetupTap::DrawDigit { digit })).unwrap();
        }
        phone.tap(MIN, &START).unwrap();
        assert_eq!(phone.peg().as_deref(), Some("14"));
        phone.tap(2 * MIN, &Action::EndSession).unwrap();
        if depth_first {
            phone.tap(3 * MIN, &setup(SetupTap::Depth { cm: Some(200) })).unwrap();
        }
        phone.tap(4 * MIN, &setup(SetupTap::DrawDigit { digit: 9 })).unwrap();
        assert_eq!(phone.set_up_row(5 * MIN, "draw").value, "9");
        phone.open();
        phone.tap(5 * MIN, &setup(SetupTap::DrawDigit { digit: 3 })).unwrap();
        phone.tap(6 * MIN, &START).unwrap();
        assert_eq!(phone.peg().as_deref(), Some("93"), "the second digit follows, over a restart too");
    }
}

#[test]
fn copying_the_last_session_keeps_a_peg_typed_before() {
    for by_digits in [false, true] {
        let mut phone = started();
        phone.tap(1_000, &Action::SetMark { name: "Gate".into(), bearing_cdeg: 300 }).unwrap();
        phone.tap(2_000, &tackle(TackleTap::Bait { name: "bread".into() })).unwrap();
        phone.tap(3_000, &Action::EndSession).unwrap();
        let peg =
            if by_digits { setup(SetupTap::DrawDigit { digit: 9 }) } else { typed(TypedInto::Peg, "9") };
        phone.tap(DAY, &peg).unwrap();
        phone.tap(DAY + 1_000, &setup(SetupTap::CopyLast)).unwrap();
        phone.tap(DAY + 2_000, &START).unwrap();
        let session = phone.app().session().unwrap();
        assert_eq!((session.setup.peg.as_deref(), session.marks.len()), (Some("9"), 0));
        assert_eq!(session.setup.water.as_deref(), Some("Mill pool"));
        assert_eq!(phone.bait().as_deref(), Some("bread"));
        // The peg was typed for that START: the next copy has the peg of what it copies.
        phone.tap(DAY + 3_000, &Action::EndSession).unwrap();
        phone.tap(DAY + 4_000, &setup(SetupTap::DrawDigit { digit: 5 })).unwrap();
        phone.tap(DAY + 5_000, &START).unwrap();
        phone.tap(DAY + 6_000, &Action::EndSession).unwrap();
        phone.tap(2 * DAY, &setup(SetupTap::CopyLast)).unwrap();
        phone.tap(2 * DAY + 1_000, &START).unwrap();
        assert_eq!(phone.peg().as_deref(), Some("5"));
    }
}

/// Own waters first, the latest at the front, each once, then those of a friend's file.
#[test]
fn a_water_fished_before_is_chosen_by_one_tap() {
    let mut theirs = Phone::with_ids_from(500);
    theirs.tap(9 * DAY, &typed(TypedInto::Water, "Reed pit")).unwrap();
    theirs.day_on(9 * DAY + 1_000, "22", "maggot");
    let file = theirs.all_of_it(9 * DAY + MIN);
    let mut phone = Phone::new();
    assert!(phone.set_up_rows(0).iter().all(|row| row.tag != "water"), "none was fished yet");
    for (n, water) in (0..).zip(["Mill pool", "Long lake", "Mill pool "]) {
        phone.tap(n * DAY, &typed(TypedInto::Water, water)).unwrap();
        phone.day_on(n * DAY + 1_000, "14", "bread");
    }
    phone.take(&file, 10 * DAY);
    let row = phone.set_up_row(10 * DAY + MIN, "water");
    let labels = |row: &restwater_screen::ChoiceRow| -> Vec<String> {
        row.choices.iter().map(|choice| choice.label.clone()).collect()
    };
    assert_eq!(labels(&row), ["Mill pool", "Long lake", "Reed pit", "not known"]);
    assert_eq!((row.value.as_str(), row.choices[0].chosen), ("Mill pool", true));
    let into = row.typing.as_ref().unwrap().into;
    phone.tap(10 * DAY + 2 * MIN, &row.choices[1].action).unwrap();
    assert_eq!(phone.set_up_row(10 * DAY + 3 * MIN, "water").value, "Long lake");
    phone.tap(10 * DAY + 4 * MIN, &START).unwrap();
    assert_eq!(phone.app().session().unwrap().setup.water.as_deref(), Some("Long lake"));
    phone.tap(10 * DAY + 5 * MIN, &Action::EndSession).unwrap();
    // Another one is still typed, and is offered once it was fished.
    phone.tap(11 * DAY, &typed(into, "North pit")).unwrap();
    let row = phone.set_up_row(11 * DAY + MIN, "water");
    assert_eq!((row.value.as_str(), row.choices.iter().any(|choice| choice.chosen)), ("North pit", false));
    for n in 0..9 {
        phone.tap((12 + n) * DAY, &typed(into, &format!("Pit {n}"))).unwrap();
        phone.tap((12 + n) * DAY + 1_000, &START).unwrap();
        phone.tap((12 + n) * DAY + 2_000, &Action::EndSession).unwrap();
    }
    let row = phone.set_up_row(30 * DAY, "water");
    assert_eq!((row.choices.len(), labels(&row)[0].as_str()), (9, "Pit 8"), "at most eight, and none");
    phone.tap(30 * DAY, &row.choices[8].action).unwrap();
    assert_eq!(phone.set_up_row(30 * DAY + MIN, "water").value, "not known");
}

/// START was tapped with the peg of the morning.
#[test]
fn the_peg_and_the_water_of_a_session_that_has_begun_are_put_right_in_the_book() {
    for ended in [false, true] {
        let mut phone = Phone::new();
        phone.tap(-2 * DAY, &typed(TypedInto::Water, "Long lake")).unwrap();
        phone.day_on(-2 * DAY + 1_000, "22", "corn");
        phone.tap(-5_000, &typed(TypedInto::Water, "Mill pool")).unwrap();
        phone.tap(-4_000, &typed(TypedInto::Peg, "14")).unwrap();
        phone.tap(0, &START).unwrap();
        phone.tap(MIN, &CAST).unwrap();
        if ended {
            phone.tap(10 * MIN, &Action::EndSession).unwrap();
        }
        let before = phone.app().session().unwrap().clone();
        phone
            .tap(20 * MIN, &Action::Book { tap: restwater_screen::BookTap::Open { session: before.id } })
            .unwrap();
        let row = |phone: &mut Phone, ms, tag: &str| {
            phone.book_leaf(ms, "session").rows.into_iter().find(|row| row.tag == tag).unwrap()
        };
        let peg = row(&mut phone, 20 * MIN, "peg");
        assert_eq!((peg.label.as_str(), peg.value.as_str()), ("Peg", "14"));
        let corrected = phone.tap(21 * MIN, &typed(peg.typing.unwrap().into, "9")).unwrap();
        assert_eq!(corrected.notice, "peg or water logged.");
        assert_eq!(phone.undoes().as_deref(), Some("peg or water 22:34"), "UNDO takes back that alone");
        let water = row(&mut phone, 22 * MIN, "water");
        let lake = water.choices.iter().find(|choice| choice.label == "Long lake").unwrap().action.clone();
        phone.tap(22 * MIN, &lake).unwrap();
        phone.open();
        let session = phone.app().session().unwrap().clone();
        assert_eq!(
            (session.setup.peg.as_deref(), session.setup.water.as_deref()),
            (Some("9"), Some("Long lake"))
        );
        assert_eq!(
            (&session.started, &session.ended, &session.casts),
            (&before.started, &before.ended, &before.casts)
        );
        if !ended {
            assert_eq!(phone.bank(23 * MIN).header.place, "Peg\u{a0}9");
        }
        assert_eq!(phone.set_up_row(23 * MIN, "water").value, "Long lake", "the next START has it right too");
        phone.tap(24 * MIN, &Action::Undo).unwrap();
        phone.tap(25 * MIN, &Action::Undo).unwrap();
        assert_eq!(phone.app().session().unwrap().setup, before.setup);
        assert_eq!(phone.app().session().unwrap().is_open(), !ended, "START is still in force");
    }
}

/// The session came by an import and was put right here: with the import all of it goes.
#[test]
fn a_peg_put_right_is_gone_with_the_import_of_its_session() {
    let mut other = Phone::with_ids_from(500);
    let day = other.day_on(0, "22", "maggot");
    let file = other.all_of_it(MIN);
    let mut mine = started();
    let import = mine.take(&file, 2 * MIN);
    mine.tap(3 * MIN, &Action::Book { tap: restwater_screen::BookTap::Open { session: day } }).unwrap();
    mine.tap(4 * MIN, &Action::Book { tap: restwater_screen::BookTap::PhoneIsMine { mine: true } }).unwrap();
    mine.tap(5 * MIN, &typed(TypedInto::SessionPeg, "9")).unwrap();
    assert!(mine.book_leaf(6 * MIN, "session").title.ends_with("Peg\u{a0}9"));
    let sessions = |phone: &mut Phone, ms| phone.book_leaf(ms, "sessions").says;
    assert_eq!(sessions(&mut mine, 6 * MIN), "2 sessions of 2.");
    mine.tap(7 * MIN, &Action::UndoImport { id: import }).unwrap();
    assert_eq!(sessions(&mut mine, 8 * MIN), "1 session of 1.");
}

#[test]
fn the_peg_of_a_partners_session_is_the_partners_to_put_right() {
    let mut theirs = Phone::with_ids_from(500);
    let theirs_day = theirs.day_on(0, "22", "maggot");
    let file = theirs.all_of_it(MIN);
    let mut mine = started();
    mine.take(&file, 2 * MIN);
    mine.tap(3 * MIN, &Action::Book { tap: restwater_screen::BookTap::Open { session: theirs_day } })
        .unwrap();
    assert!(mine.book_leaf(4 * MIN, "session").rows.is_empty());
    let refused = mine.tap(5 * MIN, &typed(TypedInto::SessionPeg, "9")).unwrap_err();
    assert!(matches!(refused, AppError::NoSuchSession));
}

/// The screen is drawn several times a second. After a move to a new phone the day that the choices were made for is none of
/// its own and not in memory: it is folded once, and again when the log has grown.
#[test]
fn the_screen_folds_no_day_twice_while_the_log_does_not_change() {
    let mut phone = started();
    phone.tap(MIN, &tackle(TackleTap::Bait { name: "bread".into() })).unwrap();
    phone.tap(2 * MIN, &Action::EndSession).unwrap();
    phone.tap(3 * MIN, &Action::Setup { tap: SetupTap::CopyLast }).unwrap();
    phone.tap(4 * MIN, &START).unwrap();
    phone.tap(5 * MIN, &Action::EndSession).unwrap();
    phone.app().pause().unwrap();
    drop(phone.app.take());
    let mark = phone.dir.path().join("this-phone");
    App::after_transfer(phone.dir.path(), &mark, Box::new(Counting(77_000)), &at(6 * MIN)).unwrap();
    phone.open();
    let folds = |phone: &mut Phone, ms: i64| {
        let before = phone.app().folded.count.get();
        for frame in 0..10 {
            phone.set_up_rows(ms + frame * 100);
        }
        phone.app().folded.count.get() - before
    };
    let first = folds(&mut phone, 7 * MIN);
    assert!((1..=2).contains(&first), "{first} folds");
    assert_eq!(folds(&mut phone, 8 * MIN), 0);
    phone.tap(9 * MIN, &START).unwrap();
    phone.tap(10 * MIN, &Action::EndSession).unwrap();
    let again = folds(&mut phone, 11 * MIN);
    assert!((1..=2).contains(&again), "{again} folds");
}

fn opened(session: Uuid) -> Action {
    Action::Book { tap: restwater_screen::BookTap::Open { session } }
}

#[test]
fn a_peg_put_right_by_mistake_and_taken_back_is_not_offered_to_the_next_start() {
    let mut phone = Phone::new();
    phone.tap(-1_000, &typed(TypedInto::Peg, "14")).unwrap();
    phone.tap(0, &START).unwrap();
    phone.tap(MIN, &typed(TypedInto::SessionPeg, "41")).unwrap();
    assert_eq!(phone.set_up_row(MIN, "draw").value, "41");
    phone.tap(2 * MIN, &Action::Undo).unwrap();
    assert_eq!(phone.set_up_row(3 * MIN, "draw").value, "14");
    phone.tap(3 * MIN, &Action::Redo).unwrap();
    assert_eq!(phone.set_up_row(4 * MIN, "draw").value, "41");
    phone.tap(4 * MIN, &Action::Undo).unwrap();
    phone.tap(5 * MIN, &Action::EndSession).unwrap();
    phone.open();
    phone.tap(DAY, &START).unwrap();
    assert_eq!(phone.peg().as_deref(), Some("14"));
}

/// What was typed for the next START stays, whatever becomes of the last one.
#[test]
fn a_correction_taken_back_changes_no_peg_typed_since() {
    let mut phone = Phone::new();
    phone.tap(-1_000, &typed(TypedInto::Peg, "14")).unwrap();
    phone.tap(0, &START).unwrap();
    phone.tap(MIN, &typed(TypedInto::SessionPeg, "41")).unwrap();
    phone.tap(2 * MIN, &Action::EndSession).unwrap();
    phone.tap(3 * MIN, &typed(TypedInto::Peg, "7")).unwrap();
    for ms in [4 * MIN, 5 * MIN] {
        phone.tap(ms, &Action::Undo).unwrap();
    }
    assert_eq!(phone.peg().as_deref(), Some("14"));
    assert_eq!(phone.set_up_row(6 * MIN, "draw").value, "7");
}

/// The match of the afternoon was on the same peg, by the set-up of the morning, which was wrong for the morning alone.
#[test]
fn the_peg_of_an_earlier_session_put_right_leaves_the_next_start_as_it_is() {
    let mut phone = Phone::new();
    let morning = phone.day_on(0, "14", "bread");
    phone.tap(300 * MIN, &START).unwrap();
    phone.tap(301 * MIN, &Action::EndSession).unwrap();
    assert_eq!(phone.peg().as_deref(), Some("14"));
    phone.tap(310 * MIN, &opened(morning)).unwrap();
    phone.tap(311 * MIN, &typed(TypedInto::SessionPeg, "12")).unwrap();
    phone.tap(312 * MIN, &Action::Book { tap: restwater_screen::BookTap::Close }).unwrap();
    assert_eq!(phone.set_up_row(313 * MIN, "draw").value, "14");
    phone.tap(DAY, &START).unwrap();
    assert_eq!(phone.peg().as_deref(), Some("14"));
}

#[test]
fn a_copy_at_the_same_peg_in_another_case_of_letters_has_its_marks() {
    for (water, again) in [(None, None), (Some("Mill pool"), Some("mill Pool"))] {
        let mut phone = Phone::new();
        if let Some(water) = water {
            phone.tap(-2_000, &typed(TypedInto::Water, water)).unwrap();
        }
        phone.tap(-1_000, &typed(TypedInto::Peg, "14a")).unwrap();
        phone.tap(0, &START).unwrap();
        phone.tap(1_000, &Action::SetMark { name: "Gate".into(), bearing_cdeg: 300 }).unwrap();
        phone.tap(2_000, &Action::EndSession).unwrap();
        if let Some(again) = again {
            // The water alone: its peg is still that of the session copied.
            phone.tap(DAY, &typed(TypedInto::Water, again)).unwrap();
            phone.tap(DAY + 500, &setup(SetupTap::CopyLast)).unwrap();
            assert_eq!(phone.set_up_row(DAY + 600, "draw").value, "14a");
        }
        phone.tap(DAY + 1_000, &typed(TypedInto::Peg, "14A")).unwrap();
        phone.tap(DAY + 2_000, &setup(SetupTap::CopyLast)).unwrap();
        phone.tap(DAY + 3_000, &START).unwrap();
        let session = phone.app().session().unwrap();
        assert_eq!((session.setup.peg.as_deref(), session.marks.len()), (Some("14A"), 1), "{water:?}");
    }
}
