//! Files out of one phone and into another, through the app.

use super::*;
use crate::exchange::Progress;
use crate::screen::{FilesView, IncomingView};
use std::fs;
use std::ops::ControlFlow;
use std::path::Path;

fn go(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

fn choose(field: &str, value: &str) -> Action {
    Action::ChooseFiles { field: field.into(), value: value.into() }
}

impl Phone {
    fn files(&mut self, ms: i64) -> FilesView {
        match self.app().screen(Which::Files, &at(ms)).unwrap() {
            Screen::Files(files) => files,
            other => panic!("{other:?}"),
        }
    }

    fn send(&mut self, ms: i64) -> Outgoing {
        self.app().send(&at(ms), &mut go).unwrap()
    }

    fn take_in(&mut self, path: &str, ms: i64) -> IncomingView {
        self.app().take_in(Path::new(path), "a friend", &at(ms), &mut go).unwrap()
    }
}

/// A phone with one session of two casts and a bite.
fn logged(entropy: u64) -> Phone {
    let mut phone = Phone::new();
    phone.opens = entropy;
    phone.open();
    for (minute, action) in [(0, START), (1, CAST), (15, BITE), (16, LANDED), (18, CAST), (30, WOUND_IN)] {
        phone.tap(minute * MIN, &action).unwrap();
    }
    phone
}

#[test]
fn a_session_goes_to_another_phone_and_an_import_is_taken_back_whole() {
    let mut ours = logged(10);
    let sent = ours.send(40 * MIN);
    assert_eq!(
        (sent.name.as_str(), sent.says.as_str()),
        ("restwater-2023-11-14.restwater.json-seq", "6 entries")
    );
    let mut theirs = logged(20);
    let before = theirs.app().ops().to_vec();
    let seen = theirs.app().look_into(Path::new(&sent.path), &at(50 * MIN), &mut go).unwrap();
    assert_eq!((seen.new, seen.known, seen.brings, seen.whole), (6, 0, true, true));
    assert_eq!(theirs.files(50 * MIN).imports, []);
    let took = theirs.take_in(&sent.path, 51 * MIN);
    assert_eq!(took.lines[0], "6 new entries in 1 session are in the log. One tap takes them back.");
    assert_eq!(theirs.app().ops(), before, "the Bank stays with this phone's own session");
    let imports = theirs.files(52 * MIN).imports;
    assert_eq!(imports[0].says, "a friend, 2023-11-14 23:04: 6 entries");
    assert_eq!(theirs.take_in(&sent.path, 53 * MIN).lines[0], "Nothing new was in it.");

    let id = imports[0].id;
    theirs.tap(54 * MIN, &Action::UndoImport { id }).unwrap();
    assert!(theirs.files(55 * MIN).imports[0].undone);
    let again = theirs.tap(56 * MIN, &Action::UndoImport { id }).unwrap_err();
    assert_eq!(again.kind(), ErrorKind::NotNow);
    theirs.tap(57 * MIN, &Action::RedoImport { id }).unwrap();
    assert!(!theirs.files(58 * MIN).imports[0].undone);
    assert_eq!(theirs.bank(58 * MIN).undo_label_of_the_latest(), "wound in 22:43");
}

impl BankView {
    fn undo_label_of_the_latest(&self) -> &str {
        self.latest.first().map_or("", String::as_str)
    }
}

#[test]
fn taps_after_an_import_come_after_what_it_brought() {
    let mut ours = logged(10);
    // Their clock is two hours ahead.
    let mut theirs = Phone::new();
    theirs.tap(120 * MIN, &START).unwrap();
    theirs.tap(121 * MIN, &CAST).unwrap();
    let sent = theirs.send(122 * MIN);
    ours.app().look_into(Path::new(&sent.path), &at(40 * MIN), &mut go).unwrap();
    let took = ours.take_in(&sent.path, 40 * MIN);
    assert!(
        took.lines
            .iter()
            .any(|l| l == "A phone's clock is 81 min ahead of this one. Its times are kept as they are.")
    );
    ours.tap(41 * MIN, &CAST).unwrap();
    let last = ours.app().ops().last().unwrap().hlc;
    assert!(last.ms >= u64::try_from(at(121 * MIN).wall_ms).unwrap(), "{last}");
}

#[test]
fn the_position_of_the_peg_stays_unless_asked_for() {
    let mut phone = logged(10);
    let place = Action::PlacePeg { lat_e7: 523_000_000, lon_e7: -11_000_000, straight_out_cdeg: 9_000 };
    phone.tap(35 * MIN, &place).unwrap();
    let text = |sent: &Outgoing| fs::read_to_string(&sent.path).unwrap();
    assert!(!text(&phone.send(40 * MIN)).contains("523000000"));
    phone.tap(41 * MIN, &choose("place", "included")).unwrap();
    assert!(text(&phone.send(42 * MIN)).contains("523000000"));
}

#[test]
fn every_form_of_every_span_is_made() {
    let mut phone = logged(10);
    for (form, begins) in [
        ("casts", "session"),
        ("fish", "session"),
        ("sessions", "session"),
        ("report", "<!doctype html>"),
        ("entries", "\u{1e}"),
    ] {
        phone.tap(40 * MIN, &choose("form", form)).unwrap();
        for span in ["this", "1", "7", "31", "366", "all"] {
            phone.tap(40 * MIN, &choose("span", span)).unwrap();
            let sent = phone.send(40 * MIN);
            let text = fs::read_to_string(&sent.path).unwrap().to_lowercase();
            assert!(text.starts_with(begins), "{form} {span}: {}", &text[..40]);
            let rows = if form == "report" { 1 } else { 3 };
            assert_eq!(phone.files(40 * MIN).rows.len(), rows, "{form}");
        }
    }
    let left = fs::read_dir(phone.dir.path().join("outgoing")).unwrap().count();
    assert!(left <= 5, "{left} files are kept for handing on");
    let unknown = phone.tap(41 * MIN, &choose("form", "song")).unwrap_err();
    assert_eq!(unknown.kind(), ErrorKind::BadInput);
}

#[test]
fn a_backup_is_due_by_the_hour_and_is_taken_in_like_any_file() {
    let mut phone = logged(10);
    let made = phone.app().back_up_if_due(&at(40 * MIN)).unwrap().unwrap();
    assert!(Path::new(&made.path).is_file() && made.says.starts_with("Backed up"), "{made:?}");
    assert_eq!(phone.app().back_up_if_due(&at(200 * MIN)).unwrap(), None, "nothing was logged since");
    phone.tap(201 * MIN, &CAST).unwrap();
    assert!(phone.app().back_up_if_due(&at(202 * MIN)).unwrap().is_some());
    phone.tap(203 * MIN, &BITE).unwrap();
    assert_eq!(phone.app().back_up_if_due(&at(204 * MIN)).unwrap(), None, "the latest is two minutes old");
    let backups = phone.files(205 * MIN).backups;
    assert_eq!(backups.len(), 2);
    let mut fresh = Phone::new();
    let seen = fresh.app().look_into(Path::new(&backups[0].path), &at(210 * MIN), &mut go).unwrap();
    assert_eq!((seen.new, seen.whole), (7, true));
    assert_eq!(fresh.take_in(&backups[0].path, 211 * MIN).new, 7);
}

#[test]
fn cancelled_work_changes_nothing_and_files_of_other_kinds_are_named() {
    let mut phone = logged(10);
    let stop = &mut |_: Progress| ControlFlow::Break(());
    let path = phone.send(40 * MIN).path;
    let mut fresh = Phone::new();
    // A file this small may be through before anybody asks; one of many entries is not.
    for i in 0..600 {
        phone.tap((41 + i) * MIN, if i % 2 == 0 { &CAST } else { &WOUND_IN }).unwrap();
    }
    let cancelled = phone.app().send(&at(700 * MIN), stop).unwrap_err();
    assert_eq!(cancelled.kind(), ErrorKind::NotNow);
    let large = phone.send(701 * MIN).path;
    assert_eq!(large, path, "named for the session's day");
    let cancelled = fresh.app().take_in(Path::new(&large), "", &at(702 * MIN), stop).unwrap_err();
    assert_eq!(cancelled.kind(), ErrorKind::NotNow);
    assert_eq!(fresh.files(703 * MIN).imports, []);

    let other = fresh.dir.path().join("letter.txt");
    fs::write(&other, "Dear all").unwrap();
    let refused = fresh.app().look_into(&other, &at(704 * MIN), &mut go).unwrap_err();
    assert_eq!(refused.kind(), ErrorKind::BadFile);
    assert!(fresh.app().message(&refused).contains("it is text"));
    let missing = fresh.app().look_into(Path::new("/nowhere/at-all"), &at(705 * MIN), &mut go).unwrap_err();
    assert_eq!(missing.kind(), ErrorKind::NotSaved);
}

#[test]
fn looking_over_finds_all_well_and_a_damaged_log_is_salvaged() {
    let mut phone = logged(10);
    assert_eq!(phone.app().look_over().unwrap(), "All well: 6 entries, each as it was written.");
    drop(phone.app.take());
    let file = phone.dir.path().join(crate::store::FILE_NAME);
    let mut bytes = fs::read(&file).unwrap();
    let page = 4_096;
    assert!(bytes.len() > 4 * page);
    // The page after the header page holds the first table's root.
    bytes[page..2 * page].fill(0xFF);
    fs::write(&file, &bytes).unwrap();
    let entropy = || Box::new(Counting(77_000_000));
    let refused = App::open(phone.dir.path(), entropy(), &at(0)).err().unwrap();
    assert_eq!(refused.kind(), ErrorKind::Damaged, "{refused}");
    let said = App::salvage(phone.dir.path(), entropy(), &at(41 * MIN)).unwrap();
    assert!(said.starts_with("6 entries saved"), "{said}");
    let app = App::open(phone.dir.path(), entropy(), &at(42 * MIN)).unwrap();
    assert_eq!(app.store.count().unwrap(), 6);
}
