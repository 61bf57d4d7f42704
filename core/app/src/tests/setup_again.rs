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

    /// The label of the choice that stands, of copying the last session or nothing.
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
    assert!(chosen.ends_with("Peg 14"), "{chosen}");
    // The tap on the choice that stands keeps it.
    mine.tap(2 * DAY + 5 * MIN, &setup(SetupTap::CopyLast)).unwrap();
    mine.tap(2 * DAY + 6 * MIN, &START).unwrap();
    assert_eq!((mine.peg().as_deref(), mine.bait().as_deref()), (Some("14"), Some("bread")));
    mine.tap(2 * DAY + 7 * MIN, &Action::Undo).unwrap();
    // With the copy taken back, the last session is the later one.
    mine.tap(2 * DAY + 8 * MIN, &setup(SetupTap::CopyNothing)).unwrap();
    let offered = mine.set_up_row(2 * DAY + 9 * MIN, "copy").choices[0].label.clone();
    assert!(offered.ends_with("Peg 22"), "{offered}");
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
    assert!(mine.copy_chosen(2 * DAY + 4 * MIN).ends_with("Peg 22"));
    mine.tap(2 * DAY + 5 * MIN, &Action::UndoImport { id: import }).unwrap();
    assert_eq!(mine.copy_chosen(2 * DAY + 6 * MIN), "no");
    mine.tap(2 * DAY + 7 * MIN, &START).unwrap();
    assert_eq!(mine.bait(), None);
}
