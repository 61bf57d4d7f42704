//! Files out of one phone and into another, through the app.

use super::*;
use restwater_exchange::Progress;
use restwater_screen::{FilesTap, FilesView, FormChoice, IncomingView, Span, Wording};
use std::fs;
use std::ops::ControlFlow;
use std::path::Path;

fn go(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

fn position(included: bool) -> Action {
    Action::Files { tap: FilesTap::Position { included } }
}

fn form(form: FormChoice) -> Action {
    Action::Files { tap: FilesTap::Form { form } }
}

impl Phone {
    pub(super) fn files(&mut self, ms: i64) -> FilesView {
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
    logged_from(entropy, 0)
}

/// The same begun this many minutes later.
fn logged_from(entropy: u64, minutes: i64) -> Phone {
    let mut phone = Phone::with_ids_from(entropy);
    for (minute, action) in [(0, START), (1, CAST), (15, BITE), (16, LANDED), (18, CAST), (30, WOUND_IN)] {
        phone.tap((minutes + minute) * MIN, &action).unwrap();
    }
    phone
}

#[test]
fn a_session_goes_to_another_phone_and_an_import_is_undone_as_a_whole() {
    // Our session began last, but it still isn't one of theirs.
    let mut ours = logged_from(10, 5);
    let sent = ours.send(40 * MIN);
    assert_eq!(
        (sent.name.as_str(), sent.says.as_str()),
        ("restwater-2023-11-14.restwater.json-seq", "6 entries: restwater-2023-11-14.restwater.json-seq")
    );
    let mut theirs = logged(20);
    let before = theirs.app().ops().to_vec();
    let seen = theirs.app().look_into(Path::new(&sent.path), &at(50 * MIN), &mut go).unwrap();
    assert_eq!((seen.new, seen.known, seen.brings, seen.whole), (6, 0, true, true));
    let empty = theirs.files(50 * MIN);
    assert_eq!(empty.imports, []);
    assert_eq!(empty.no_backups, "No backup yet. Tap BACK UP NOW.");
    assert_eq!(
        empty.none,
        "No file was imported yet. Tap BACK, then IMPORT: what a file brings is listed here and can be undone."
    );
    let took = theirs.take_in(&sent.path, 51 * MIN);
    assert_eq!(took.lines[0], "6 new entries in 1 session are in the log. UNDO IMPORT removes them.");
    assert_eq!(theirs.app().ops(), before, "the Bank stays with this phone's own session");
    let imports = theirs.files(52 * MIN).imports;
    assert_eq!(imports[0].says, "a friend, 14 Nov 2023 23:04: 6 entries");
    assert_eq!(theirs.take_in(&sent.path, 53 * MIN).lines[0], "Nothing new was in it.");

    let id = imports[0].id;
    theirs.tap(54 * MIN, &Action::UndoImport { id }).unwrap();
    assert!(theirs.files(55 * MIN).imports[0].undone);
    let again = theirs.tap(56 * MIN, &Action::UndoImport { id }).unwrap_err();
    assert_eq!(again.kind(), ErrorKind::NotNow);
    theirs.tap(57 * MIN, &Action::RedoImport { id }).unwrap();
    assert!(!theirs.files(58 * MIN).imports[0].undone);
    assert_eq!(label_of_the_latest(&theirs.bank(58 * MIN)), "wound in 22:43");
}

fn label_of_the_latest(bank: &BankView) -> &str {
    bank.latest.first().map_or("", String::as_str)
}

#[test]
fn taps_after_an_import_come_after_the_imported_entries() {
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
fn the_position_of_the_peg_is_exported_only_on_request() {
    let mut phone = logged(10);
    let place = Action::PlacePeg { lat_e7: 523_000_000, lon_e7: -11_000_000, straight_out_cdeg: 9_000 };
    phone.tap(35 * MIN, &place).unwrap();
    let text = |sent: &Outgoing| fs::read_to_string(&sent.path).unwrap();
    assert!(!text(&phone.send(40 * MIN)).contains("523000000"));
    phone.tap(41 * MIN, &position(true)).unwrap();
    assert!(text(&phone.send(42 * MIN)).contains("523000000"));
}

#[test]
fn every_form_of_every_span_is_made() {
    let mut phone = logged(10);
    let days = [1, 7, 31, 366].map(Span::Days);
    for (file, begins) in [
        (FormChoice::Casts, "session"),
        (FormChoice::Fish, "session"),
        (FormChoice::Sessions, "session"),
        (FormChoice::Report, "<!doctype html>"),
        (FormChoice::Entries, "\u{1e}"),
    ] {
        phone.tap(40 * MIN, &form(file)).unwrap();
        for span in [Span::This, Span::Everything].into_iter().chain(days) {
            phone.tap(40 * MIN, &Action::Files { tap: FilesTap::Span { span } }).unwrap();
            let sent = phone.send(40 * MIN);
            let text = fs::read_to_string(&sent.path).unwrap().to_lowercase();
            assert!(text.starts_with(begins), "{file:?} {span:?}: {}", &text[..40]);
            let rows = if file == FormChoice::Report { 1 } else { 3 };
            assert_eq!(phone.files(40 * MIN).rows.len(), rows, "{file:?}");
        }
    }
    let left = fs::read_dir(phone.dir.path().join("outgoing")).unwrap().count();
    assert!(left <= 5, "{left} files are kept for handing on");
}

#[test]
fn a_backup_is_due_every_hour_and_can_be_imported_like_any_file() {
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
    assert_eq!(phone.app().latest_backup().unwrap().as_ref(), Some(&backups[0].path));
    phone.open();
    assert_eq!(phone.app().latest_backup().unwrap().as_ref(), Some(&backups[0].path), "after a restart too");
    let mut fresh = Phone::new();
    let seen = fresh.app().look_into(Path::new(&backups[0].path), &at(210 * MIN), &mut go).unwrap();
    assert_eq!((seen.new, seen.whole), (7, true));
    assert_eq!(fresh.app().latest_backup().unwrap(), None);
    // The clock is back in 1970: the one made last is still the one to copy.
    phone.tap(206 * MIN, &Action::Undo).unwrap();
    let early = Moment { wall_ms: 60_000, ..at(207 * MIN) };
    let made = phone.app().back_up(&early, &mut go).unwrap().unwrap();
    assert_eq!(phone.app().latest_backup().unwrap(), Some(made.path));
    assert_eq!(fresh.take_in(&backups[0].path, 211 * MIN).new, 7);
}

#[test]
fn cancelled_work_changes_nothing_and_other_kinds_of_files_are_refused_by_name() {
    let mut phone = logged(10);
    let stop = &mut |_: Progress| ControlFlow::Break(());
    let path = phone.send(40 * MIN).path;
    let mut fresh = Phone::new();
    // A file this small may be finished before the cancel flag is read; one with many entries is not.
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
fn the_check_passes_and_a_damaged_log_is_salvaged() {
    let mut phone = logged(10);
    assert_eq!(phone.app().look_over().unwrap(), "All well: 6 entries, each as it was written.");
    drop(phone.app.take());
    let file = phone.dir.path().join(restwater_store::FILE_NAME);
    let mut bytes = fs::read(&file).unwrap();
    let page = 4_096;
    assert!(bytes.len() > 4 * page);
    // The page after the header page holds the first table's root.
    bytes[page..2 * page].fill(0xFF);
    fs::write(&file, &bytes).unwrap();
    let entropy = || Box::new(Counting(77_000_000));
    let refused = App::open(phone.dir.path(), entropy(), &at(0)).err().unwrap();
    assert_eq!(refused.kind(), ErrorKind::Damaged, "{refused}");
    let said = App::salvage(phone.dir.path(), entropy(), &at(41 * MIN), Wording::shared("en-GB")).unwrap();
    assert!(said.starts_with("6 entries saved"), "{said}");
    let app = App::open(phone.dir.path(), entropy(), &at(42 * MIN)).unwrap();
    assert_eq!(app.journal.store().count().unwrap(), 6);
}

#[test]
fn the_swim_is_exported_as_a_map_and_recognised_by_its_contents() {
    let mut ours = started();
    ours.tap(1_000, &Action::SetMark { name: "Gate".into(), bearing_cdeg: 300 }).unwrap();
    ours.tap(2_000, &Action::Swim { tap: SwimTap::FarBank { cm: Some(5_000) } }).unwrap();
    ours.tap(3_000, &form(FormChoice::Map)).unwrap();
    let fields: Vec<String> = ours.files(4_000).rows.into_iter().map(|r| r.tag).collect();
    assert_eq!(fields, ["form", "place"], "it is the swim of one session");
    let sent = ours.send(5_000);
    assert_eq!(sent.media_type, "application/geo+json");
    assert_eq!(
        (sent.name.as_str(), sent.says.as_str()),
        (
            "restwater-2023-11-14-swim.geojson",
            "The swim with 1 mark or feature: restwater-2023-11-14-swim.geojson"
        )
    );
    assert!(!fs::read_to_string(&sent.path).unwrap().contains("coordinates"), "positions stay here");

    // On request they are included, once the position of the peg is known.
    ours.tap(6_000, &position(true)).unwrap();
    let error = ours.app().send(&at(7_000), &mut go).unwrap_err();
    assert!(ours.app().message(&error).contains("set the peg's position"), "{error}");
    let peg = Action::PlacePeg { lat_e7: 521_000_000, lon_e7: -12_000_000, straight_out_cdeg: 9_000 };
    ours.tap(8_000, &peg).unwrap();
    let placed = ours.send(9_000);
    assert!(fs::read_to_string(&placed.path).unwrap().contains("coordinates"));
    ours.tap(10_000, &position(false)).unwrap();
    let sent = ours.send(11_000);

    // The name doesn't matter, looking changes nothing, and one UNDO removes what was imported.
    let (mut theirs, renamed) = (started(), ours.dir.path().join("from-a-friend.txt"));
    fs::rename(&sent.path, &renamed).unwrap();
    let before = theirs.app().ops().len();
    let seen = theirs.app().look_into(&renamed, &at(MIN), &mut go).unwrap();
    assert_eq!(seen.lines[0], "New from the file: 1 mark, an outline.");
    assert_eq!((seen.new, seen.known, seen.brings, seen.whole), (2, 0, true, true));
    assert_eq!(theirs.app().ops().len(), before);
    let took = theirs.take_in(renamed.to_str().unwrap(), MIN);
    assert!(took.lines.iter().any(|l| l == "One tap of UNDO removes it."), "{:?}", took.lines);
    assert_eq!(theirs.app().session().unwrap().marks[0].name, "Gate");
    let again = theirs.take_in(renamed.to_str().unwrap(), 2 * MIN);
    assert_eq!((again.lines[0].as_str(), again.known), ("Everything in this file is here already.", 2));
    theirs.tap(3 * MIN, &Action::Undo).unwrap();
    let session = theirs.app().session().unwrap();
    assert!(session.marks.is_empty() && session.outline_cm.is_empty());
}

#[test]
fn other_json_and_a_map_that_is_too_long_are_refused_by_name() {
    let mut phone = started();
    let file = phone.dir.path().join("some");
    let long = format!("{{\"type\": \"FeatureCollection\", \"features\": [{}", " ".repeat(2_100_000));
    for (text, says) in [("{\"a\": 1}", "JSON"), ("{", "JSON"), (long.as_str(), "more than one swim has")] {
        fs::write(&file, text).unwrap();
        let error = phone.app().look_into(&file, &at(MIN), &mut go).unwrap_err();
        assert_eq!(error.kind(), ErrorKind::BadFile, "{error}");
        let said = phone.app().message(&error);
        assert!(said.contains(says), "{said}");
    }
}

/// Damages a copy of a log with one session in two ways that keep its first bytes: in its header, and in its
/// first page.
#[test]
fn a_log_whose_first_page_is_broken_is_saved_and_stays_this_phones() {
    for damage in [16..56, 100..4_096] {
        let mut phone = logged(10);
        let device = phone.app().journal.store().device();
        drop(phone.app.take());
        let file = phone.dir.path().join("restwater.db");
        let mut bytes = fs::read(&file).unwrap();
        bytes[damage.clone()].fill(if damage.start == 16 { 0xFF } else { 0x5A });
        fs::write(&file, bytes).unwrap();
        let entropy = || Box::new(Counting(77_000_000));
        let Err(error) = App::open(phone.dir.path(), entropy(), &at(40 * MIN)) else {
            panic!("it is broken")
        };
        assert_eq!(error.kind(), ErrorKind::Damaged, "{damage:?}: {error}");
        let said =
            App::salvage(phone.dir.path(), entropy(), &at(40 * MIN), Wording::shared("en-GB")).unwrap();
        assert!(said.starts_with("6 entries saved"), "{damage:?}: {said}");
        phone.open();
        assert_eq!(phone.app().journal.store().device(), device, "{damage:?}");
        assert!(phone.app().session().is_some_and(Session::is_open), "{damage:?}: my session is on the Bank");
    }
}

#[test]
fn a_damaged_backup_is_reported_as_cut_off_and_not_as_a_damaged_log() {
    let mut phone = logged(10);
    let copy = phone.app().back_up_if_due(&at(40 * MIN)).unwrap().unwrap();
    let mut bytes = fs::read(&copy.path).unwrap();
    bytes[100..4_096].fill(0x5A);
    let broken = phone.dir.path().join("broken");
    fs::write(&broken, bytes).unwrap();
    let seen = phone.app().look_into(&broken, &at(41 * MIN), &mut go).unwrap();
    assert_eq!((seen.whole, seen.new), (false, 0));
    assert!(
        seen.lines.iter().any(|line| line.contains("The end of the file is missing")),
        "{:?}",
        seen.lines
    );
}

/// The file of the log is gone, as after an incomplete restore of a phone: what its write-ahead log still
/// holds is saved.
#[test]
fn a_write_ahead_log_without_its_file_is_salvaged_and_no_new_log_is_begun_beside_it() {
    let mut phone = logged(10);
    let log = phone.dir.path().join("restwater.db-wal");
    let alone = TempDir::new().unwrap();
    fs::copy(&log, alone.path().join("restwater.db-wal")).unwrap();
    assert!(phone.app().session().is_some(), "it is open, or its log would be empty");
    let entropy = || Box::new(Counting(77_000_000));
    let Err(error) = App::open(alone.path(), entropy(), &at(40 * MIN)) else { panic!("a new log was begun") };
    assert_eq!(error.kind(), ErrorKind::Damaged, "{error}");
    let said = App::salvage(alone.path(), entropy(), &at(40 * MIN), Wording::shared("en-GB")).unwrap();
    assert!(said.starts_with("6 entries saved"), "{said}");
}

/// Two hybrid clocks that met agree, whatever the wall clocks show: the later entries of the phone that was right show no step back.
#[test]
fn a_phone_whose_clock_is_right_is_not_said_to_have_been_set_back() {
    let mut ahead = Phone::with_ids_from(500);
    ahead.tap(10 * MIN, &START).unwrap();
    let theirs = ahead.send(11 * MIN);
    let mut right = logged(10);
    right.take_in(&theirs.path, 31 * MIN);
    let minutes_ahead = Phone::with_ids_from(900).app().look_into(Path::new(&theirs.path), &at(MIN), &mut go);
    assert!(minutes_ahead.unwrap().lines.iter().any(|line| line.contains("min ahead")), "that is still said");
    let mut far = Phone::with_ids_from(700);
    far.tap(400 * MIN, &START).unwrap();
    let file = far.send(401 * MIN);
    right.take_in(&file.path, 32 * MIN);
    right.tap(33 * MIN, &CAST).unwrap();
    let mine = right.send(35 * MIN);
    let seen = ahead.app().look_into(Path::new(&mine.path), &at(402 * MIN), &mut go).unwrap();
    assert!(seen.lines.iter().all(|line| !line.contains("set back")), "{:?}", seen.lines);
    // A clock that was set back is told, by all that it was: three minutes passed since the last entry.
    right.app().act(&WOUND_IN, &Moment { wall_ms: at(0).wall_ms, ..at(36 * MIN) }).unwrap();
    let mine = right.send(37 * MIN);
    let seen = ahead.app().look_into(Path::new(&mine.path), &at(402 * MIN), &mut go).unwrap();
    let told = "A phone's clock was set back by 36 min. Its times are kept as they are.";
    assert!(seen.lines.iter().any(|line| line == told), "{:?}", seen.lines);
}

/// START was tapped while the clock was an hour ahead.
#[test]
fn the_days_that_are_sent_include_the_one_that_runs_after_the_clock_was_set_back() {
    let mut phone = Phone::new();
    phone.tap(60 * MIN, &START).unwrap();
    let now = Moment { wall_ms: at(30 * MIN).wall_ms, ..at(90 * MIN) };
    let days = Action::Files { tap: FilesTap::Span { span: Span::Days(1) } };
    phone.app().act(&days, &now).unwrap();
    let sent = phone.app().send(&now, &mut go).unwrap();
    assert!(sent.says.starts_with("1 entry"), "{}", sent.says);
}

/// Plans, cautions that were read and the wallet are entries, but no session.
#[test]
fn what_belongs_to_no_day_is_not_counted_as_a_session() {
    let mut theirs = logged(500);
    theirs.tap(31 * MIN, &typed(TypedInto::PlanPeg, "14")).unwrap();
    theirs.tap(32 * MIN, &Action::Files { tap: FilesTap::Span { span: Span::Everything } }).unwrap();
    let sent = theirs.send(33 * MIN);
    let mut mine = Phone::with_ids_from(900);
    let seen = mine.app().look_into(Path::new(&sent.path), &at(40 * MIN), &mut go).unwrap();
    assert_eq!((seen.sessions, seen.lines[0].as_str()), (1, "7 new entries in 1 session."));
    mine.take_in(&sent.path, 41 * MIN);
    theirs.tap(42 * MIN, &typed(TypedInto::PlanPeg, "15")).unwrap();
    let sent = theirs.send(43 * MIN);
    let seen = mine.app().look_into(Path::new(&sent.path), &at(44 * MIN), &mut go).unwrap();
    assert_eq!(
        (seen.sessions, seen.lines[0].as_str()),
        (0, "1 new entry that belongs to no session, such as tackle or a plan.")
    );
}
