//! What the angler sees after a restart, with a wrong clock, after an import and after a removal.

mod any_life;

use super::*;
use restwater_exchange::Progress;
use restwater_log::Hlc;
use restwater_screen::{BookSet, BookTap, FilterTap, LeavesView, Whose};
use restwater_screen::{FilesTap, SetupTap, Span, SwimTap, SwimThing, TypedInto};
use restwater_store::Store;
use std::fs;
use std::ops::ControlFlow;
use std::path::{Path, PathBuf};

const DAY: i64 = 24 * 60 * MIN;
const YEAR: i64 = 365 * DAY;

fn go(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

/// A moment at which the wall clock shows `wall_ms`, whatever the time is.
fn with_wall(ms: i64, wall_ms: i64) -> Moment {
    Moment { wall_ms, ..at(ms) }
}

fn remove(id: Uuid) -> Action {
    Action::Swim { tap: SwimTap::Remove { thing: SwimThing::Set { id } } }
}

fn typed(into: TypedInto, text: &str) -> Action {
    Action::Typed { into, text: text.into() }
}

fn water(name: &str) -> Action {
    typed(TypedInto::Water, name)
}

/// A phone whose ids differ from those of the test's other phones.
fn phone(entropy: u64) -> Phone {
    Phone::with_ids_from(entropy)
}

impl Phone {
    fn water(&mut self) -> Option<String> {
        self.app().session().and_then(|session| session.setup.water.clone())
    }

    pub(super) fn sent(&mut self, ms: i64) -> PathBuf {
        let everything = Action::Files { tap: FilesTap::Span { span: Span::Everything } };
        self.app().act(&everything, &at(ms)).unwrap();
        PathBuf::from(self.app().send(&at(ms), &mut go).unwrap().path)
    }

    pub(super) fn brought(&mut self, file: &Path, ms: i64) -> Uuid {
        self.app().take_in(file, "a friend", &at(ms), &mut go).unwrap();
        match self.app().screen(Which::Files, &at(ms)).unwrap() {
            Screen::Files(files) => files.imports[0].id,
            other => panic!("{other:?}"),
        }
    }

    fn the_book(&mut self, ms: i64) -> LeavesView {
        match self.app().screen(Which::Book, &at(ms)).unwrap() {
            Screen::Book(book) => book,
            other => panic!("{other:?}"),
        }
    }

    fn marks(&mut self) -> Vec<String> {
        self.app().session().unwrap().marks.iter().map(|mark| mark.name.clone()).collect()
    }

    /// Puts entries from elsewhere into the log while the app is closed.
    fn put(&mut self, ops: &[Op]) {
        drop(self.app.take());
        let mut store = Store::open(self.dir.path(), Uuid::nil()).unwrap();
        store.append(ops, None).unwrap();
        drop(store);
        self.open();
    }
}

#[test]
fn after_a_tap_with_the_clock_at_1970_todays_session_is_still_shown_after_a_restart() {
    let mut phone = started();
    phone.tap(60 * MIN, &Action::EndSession).unwrap();
    phone.tap(DAY, &water("Alder Pool")).unwrap();
    phone.tap(DAY + MIN, &START).unwrap();
    phone.tap(DAY + 2 * MIN, &CAST).unwrap();
    phone.app().act(&Action::Note { text: "flat battery".into() }, &with_wall(DAY + 3 * MIN, 0)).unwrap();
    phone.open();
    assert_eq!(phone.water().as_deref(), Some("Alder Pool"));
    let second = phone.tap(DAY + 10 * MIN, &START).unwrap_err();
    assert_eq!(second.kind(), ErrorKind::NotNow, "the session is still open");
}

#[test]
fn a_session_logged_under_next_years_date_does_not_stay_on_the_screen() {
    let mut phone = Phone::new();
    phone.tap(0, &water("Mill pool")).unwrap();
    phone.app().act(&START, &with_wall(MIN, at(0).wall_ms + YEAR)).unwrap();
    phone.app().act(&Action::EndSession, &with_wall(60 * MIN, at(60 * MIN).wall_ms + YEAR)).unwrap();
    phone.tap(DAY, &water("Alder Pool")).unwrap();
    phone.tap(DAY + MIN, &START).unwrap();
    phone.tap(DAY + 2 * MIN, &CAST).unwrap();
    phone.open();
    assert_eq!(phone.water().as_deref(), Some("Alder Pool"));
    assert_eq!(phone.bank(DAY + 12 * MIN).rods[0].digits, "10:00");
    let list = phone.the_book(DAY + 12 * MIN);
    let sessions = list.leaves.iter().find(|leaf| leaf.id == "sessions").unwrap();
    assert!(sessions.list[0].label.contains("Alder Pool"), "{:?}", sessions.list);
}

/// My session, and a partner's that began later and is in my log.
fn with_a_partners_later_session() -> (Phone, Uuid) {
    let mut theirs = phone(500);
    theirs.tap(0, &water("Alder Pool")).unwrap();
    theirs.tap(30 * MIN, &START).unwrap();
    theirs.tap(31 * MIN, &CAST).unwrap();
    let mut mine = started();
    mine.tap(MIN, &CAST).unwrap();
    let import = mine.brought(&theirs.sent(40 * MIN), 41 * MIN);
    (mine, import)
}

#[test]
fn a_partners_session_stays_the_partners_after_its_import_was_undone_and_redone() {
    let (mut mine, id) = with_a_partners_later_session();
    assert_eq!(mine.water().as_deref(), Some("Mill pool"));
    mine.tap(42 * MIN, &Action::UndoImport { id }).unwrap();
    mine.tap(43 * MIN, &Action::RedoImport { id }).unwrap();
    assert_eq!(mine.water().as_deref(), Some("Mill pool"));
    mine.open();
    assert_eq!(mine.water().as_deref(), Some("Mill pool"));
    mine.tap(44 * MIN, &WOUND_IN).unwrap();
    assert_eq!(mine.app().session().unwrap().casts.len(), 1);
}

#[test]
fn a_note_in_a_partners_session_does_not_make_it_mine_and_can_be_undone_after_a_restart() {
    let (mut mine, _) = with_a_partners_later_session();
    let both = FilterTap::Whose { whose: Whose::Both };
    mine.tap(42 * MIN, &Action::Book { tap: BookTap::Filter { set: BookSet::Shown, by: both } }).unwrap();
    let list = mine.the_book(42 * MIN).leaves.into_iter().find(|leaf| leaf.id == "sessions").unwrap().list;
    let key = list.iter().find(|key| key.label.contains("Alder Pool")).unwrap();
    let open = key.tap.action().unwrap().clone();
    mine.tap(43 * MIN, &open).unwrap();
    mine.tap(44 * MIN, &typed(TypedInto::Note, "herons all day")).unwrap();
    mine.open();
    assert_eq!(mine.water().as_deref(), Some("Mill pool"));
    let undone = mine.tap(45 * MIN, &Action::Undo).unwrap();
    assert!(undone.notice.contains("note"), "{}", undone.notice);
    mine.tap(46 * MIN, &open).unwrap();
    let session = mine.the_book(47 * MIN).leaves.into_iter().find(|leaf| leaf.id == "session").unwrap();
    assert!(!session.lines.iter().any(|line| line.value.contains("herons")), "{:?}", session.lines);
    let next = mine.tap(48 * MIN, &Action::Undo).unwrap();
    assert!(next.notice.contains("cast"), "{}", next.notice);
}

#[test]
fn undo_restores_what_was_removed_and_redo_removes_it_again() {
    let mut phone = started();
    phone.tap(1_000, &Action::SetMark { name: "Gate".into(), bearing_cdeg: 300 }).unwrap();
    let id = phone.app().session().unwrap().marks[0].id;
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(2 * MIN, &remove(id)).unwrap();
    assert!(phone.marks().is_empty());
    phone.open();
    phone.tap(3 * MIN, &Action::Undo).unwrap();
    assert_eq!(phone.marks(), ["Gate"], "UNDO brings it back");
    assert_eq!(phone.app().session().unwrap().casts.len(), 1, "and leaves the cast alone");
    assert_eq!(phone.undoes().as_deref(), Some("cast 22:14"));
    phone.tap(4 * MIN, &Action::Redo).unwrap();
    assert!(phone.marks().is_empty());
    phone.open();
    assert!(phone.marks().is_empty());
    for minute in 5..8 {
        phone.tap(minute * MIN, &Action::Undo).unwrap();
    }
    assert!(phone.marks().is_empty(), "the mark itself was taken back last");
    phone.tap(8 * MIN, &Action::Redo).unwrap();
    assert_eq!(phone.marks(), ["Gate"]);
}

#[test]
fn one_mark_of_a_map_can_be_removed_and_undo_still_removes_the_whole_map() {
    let mut phone = started();
    let map = phone.dir.path().join("map");
    let mark = |name: &str, bearing: i32| {
        format!(
            r#"{{"type":"Feature","geometry":null,"properties":{{"kind":"aiming mark","name":"{name}","bearing_deg":{bearing}}}}}"#
        )
    };
    let text =
        format!(r#"{{"type":"FeatureCollection","features":[{},{}]}}"#, mark("Gate", 3), mark("Hut", -8));
    fs::write(&map, text).unwrap();
    phone.app().take_in(&map, "", &at(MIN), &mut go).unwrap();
    assert_eq!(phone.marks().len(), 2);
    let id = phone.app().session().unwrap().marks[0].id;
    phone.tap(2 * MIN, &remove(id)).unwrap();
    assert_eq!(phone.marks().len(), 1);
    phone.tap(3 * MIN, &Action::Undo).unwrap();
    assert_eq!(phone.marks().len(), 2);
    phone.tap(4 * MIN, &Action::Undo).unwrap();
    assert!(phone.marks().is_empty());
    phone.tap(5 * MIN, &Action::Redo).unwrap();
    phone.tap(6 * MIN, &Action::Redo).unwrap();
    assert_eq!(phone.marks().len(), 1);
}

#[test]
fn undoing_an_import_of_my_own_entries_is_not_a_step_of_undo() {
    let mut before = started();
    before.tap(MIN, &CAST).unwrap();
    drop(before.app.take());
    let copy = TempDir::new().unwrap();
    fs::copy(
        before.dir.path().join(restwater_store::FILE_NAME),
        copy.path().join(restwater_store::FILE_NAME),
    )
    .unwrap();
    before.open();
    before.tap(15 * MIN, &BITE).unwrap();
    before.tap(16 * MIN, &LANDED).unwrap();
    let file = before.sent(17 * MIN);
    let mut restored = Phone { dir: copy, app: None, boots: 0, opens: 700 };
    restored.open();
    let id = restored.brought(&file, 20 * MIN);
    assert_eq!(
        restored.app().session().unwrap().casts[0].end.as_ref().map(|end| end.cause.clone()),
        Some(EndCause::Landed { fish: None })
    );
    restored.tap(21 * MIN, &Action::UndoImport { id }).unwrap();
    assert_eq!(restored.undoes().as_deref(), Some("cast 22:14"), "what is gone is not offered");
    assert!(matches!(restored.tap(22 * MIN, &Action::Redo), Err(AppError::NothingToRedo)));
    restored.tap(23 * MIN, &Action::RedoImport { id }).unwrap();
    assert_eq!(restored.undoes().as_deref(), Some("landed 22:29"));
    restored.open();
    assert!(restored.tap(24 * MIN, &Action::Undo).unwrap().notice.contains("landed"));
}

#[test]
fn an_entry_of_a_later_version_about_a_fish_does_not_revert_its_corrected_weight() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(15 * MIN, &BITE).unwrap();
    phone.tap(16 * MIN, &LANDED).unwrap();
    let landed = phone.app().ops().last().unwrap().clone();
    let fish =
        Some(restwater_log::FishWeight::Weighed { unit: restwater_log::WeightUnit::Drams, count: 1_100 });
    let amend = |n: u32, payload: Payload| Op {
        id: Uuid::from_u128(0xABC0 + u128::from(n)),
        hlc: Hlc { count: landed.hlc.count + n, ..landed.hlc },
        payload,
        amends: Some(landed.id),
        ..landed.clone()
    };
    let mended = amend(1, Payload::Landed { rod: 1, fish: fish.clone() });
    let later = amend(2, Payload::Unknown { kind: "fish_photographed".into(), payload: None });
    phone.put(&[mended, later]);
    let end = phone.app().session().unwrap().casts[0].end.clone().unwrap();
    assert_eq!(end.cause, EndCause::Landed { fish });
}

#[test]
fn an_import_of_older_entries_is_seen_by_the_book_and_makes_a_backup_due() {
    let mut theirs = phone(500);
    theirs.tap(-30 * DAY, &water("Alder Pool")).unwrap();
    for (minute, action) in [(0, START), (1, CAST), (15, BITE), (16, LANDED), (18, Action::EndSession)] {
        theirs.tap(-30 * DAY + minute * MIN, &action).unwrap();
    }
    let file = theirs.sent(-29 * DAY);
    let mut mine = started();
    mine.tap(MIN, &CAST).unwrap();
    assert!(mine.app().back_up_if_due(&at(2 * MIN)).unwrap().is_some());
    assert!(mine.app().back_up_if_due(&at(90 * MIN)).unwrap().is_none());
    let sessions = |phone: &mut Phone| {
        let book = phone.the_book(90 * MIN);
        book.leaves.into_iter().find(|leaf| leaf.id == "sessions").unwrap().says
    };
    assert_eq!(sessions(&mut mine), "1 session of 1.");
    mine.brought(&file, 90 * MIN);
    assert_eq!(sessions(&mut mine), "1 session of 2. 1 session of another angler isn't counted: see Which.");
    assert!(mine.app().back_up_if_due(&at(91 * MIN)).unwrap().is_some());
}

#[test]
fn copying_the_last_set_up_at_the_same_peg_keeps_the_outline() {
    let mut phone = Phone::new();
    phone.tap(0, &water("Mill pool")).unwrap();
    phone.tap(1_000, &typed(TypedInto::Peg, "14")).unwrap();
    phone.tap(2_000, &START).unwrap();
    let map = phone.dir.path().join("map");
    let text = r#"{"type":"FeatureCollection","features":[{"type":"Feature","geometry":null,"properties":
        {"kind":"boundary","peg_frame_m":[[-20,5],[20,5],[25,50],[-22,48]]}}]}"#;
    fs::write(&map, text).unwrap();
    phone.app().take_in(&map, "", &at(MIN), &mut go).unwrap();
    let outline = phone.app().session().unwrap().outline_cm.clone();
    assert!(outline.len() >= 4, "{outline:?}");
    phone.tap(60 * MIN, &Action::EndSession).unwrap();
    phone.tap(DAY, &Action::Setup { tap: SetupTap::CopyLast }).unwrap();
    phone.tap(DAY + MIN, &START).unwrap();
    assert_eq!(phone.app().session().unwrap().outline_cm, outline);
}

#[test]
fn waters_without_a_name_do_not_count_as_one_water() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    let place = Action::PlacePeg { lat_e7: 560_000_000, lon_e7: -40_000_000, straight_out_cdeg: 0 };
    phone.tap(1_000, &place).unwrap();
    for (minute, action) in [(1, CAST), (15, BITE), (16, LANDED), (20, Action::EndSession)] {
        phone.tap(minute * MIN, &action).unwrap();
    }
    phone.tap(DAY, &START).unwrap();
    phone.tap(DAY + MIN, &CAST).unwrap();
    let book = phone.the_book(DAY + 2 * MIN);
    let next = book.leaves.iter().find(|leaf| leaf.id == "next").unwrap();
    assert!(phone.app().placed().is_none(), "a peg elsewhere is not the place of this one");
    let days = next.lines.iter().find(|line| line.label.contains("was usual")).unwrap();
    assert!(days.label.contains("1 session here"), "{days:?}");
}

#[test]
fn a_partners_phone_with_the_same_boot_count_is_measured_by_the_wall_clock() {
    let mut phone = Phone::new();
    phone.tap(-1_000, &Action::Setup { tap: SetupTap::Rods { rods: 2 } }).unwrap();
    phone.tap(0, &START).unwrap();
    let start = phone.app().ops()[0].clone();
    let theirs = Op {
        id: Uuid::from_u128(0xABC),
        device: Uuid::from_u128(0xD2),
        hlc: Hlc { ms: start.hlc.ms + 60_000, count: 0 },
        // Their phone was started long before mine, and has the same boot count.
        at: Moment { mono_ms: 900_000_000, ..at(MIN) },
        payload: Payload::Cast { rod: 1 },
        ..start
    };
    phone.put(&[theirs]);
    let rod = phone.bank(11 * MIN).rods[0].clone();
    assert_eq!(rod.digits, "10:00");
    assert_eq!(rod.since, "out since about 22:14", "two phones agree by the wall clock alone");
}

#[test]
fn the_name_of_a_fish_is_bounded_like_any_other_text() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(2 * MIN, &BITE).unwrap();
    let fish = Some(restwater_log::FishWeight::Class { name: "x".repeat(5_000) });
    let refused = phone.tap(3 * MIN, &Action::Landed { rod: 1, fish }).unwrap_err();
    assert!(matches!(refused, AppError::TooLong { .. }), "{refused}");
}

/// A salvage lost the running session, another one was begun, and the backup that was advised brings it back.
#[test]
fn an_own_day_that_a_backup_brings_back_open_can_be_ended_in_the_book() {
    let mut before = phone(40);
    drop(before.app.take());
    let copy = TempDir::new().unwrap();
    let name = restwater_store::FILE_NAME;
    fs::copy(before.dir.path().join(name), copy.path().join(name)).unwrap();
    before.open();
    before.tap(0, &START).unwrap();
    before.tap(MIN, &CAST).unwrap();
    let lost = before.app().session().unwrap().id;
    let file = before.sent(17 * MIN);
    let mut saved = Phone { dir: copy, app: None, boots: 0, opens: 700 };
    saved.open();
    saved.tap(30 * MIN, &START).unwrap();
    saved.brought(&file, 31 * MIN);
    let running = saved.app().session().unwrap().id;
    saved.tap(32 * MIN, &Action::Book { tap: BookTap::Open { session: lost } }).unwrap();
    let end =
        |phone: &mut Phone, ms| phone.book_leaf(ms, "session").keys.into_iter().find(|key| key.tag == "end-");
    let key = end(&mut saved, 33 * MIN).expect("a key that ends the day");
    saved.tap(34 * MIN, key.tap.action().unwrap()).unwrap();
    assert!(end(&mut saved, 35 * MIN).is_none(), "it has an end");
    assert_eq!(saved.app().session().map(|session| (session.id, session.is_open())), Some((running, true)));
}
