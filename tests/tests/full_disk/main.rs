//! The app on a disk that fills up: an entry is stored or it is not, and the angler is told which. One test
//! per process: SQLite's default VFS is shared by all threads.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod club;
mod rod;
mod set_up;

use restwater_app::{Action, App, AppError, ErrorKind, Screen, Which};
use restwater_log::{FeedKind, FeedMeasure, FishSign, Moment, Op, Payload, Side};
use restwater_screen::{
    BookTap, FeedTap, FishTap, PhoneTap, PlanTap, Scheme, SeenTap, SetupTap, TackleTap, TypedInto,
};
use restwater_store::{FILE_NAME, Store, StoreError};
use restwater_tests::phone::Seeded;
use restwater_tests::powercut::{on_disk, set_room};
use std::fs;
use std::path::Path;
use tempfile::TempDir;
use uuid::Uuid;

const T0: i64 = 1_768_032_000_000;
const CAST: Action = Action::Cast { rod: 1 };
const START: Action = Action::StartSession { setup: None };

fn at(minute: i64) -> Moment {
    let ms = minute * 60_000;
    Moment {
        wall_ms: T0 + ms,
        offset_min: 0,
        zone: String::new(),
        mono_ms: ms,
        boot: "5".into(),
        approx_s: 0,
    }
}

fn open(dir: &Path, seed: u64) -> App {
    App::open(dir, Box::new(Seeded::new(seed)), &at(0)).unwrap()
}

/// A log of two ended sessions without a matching stored summary.
fn two_sessions() -> (TempDir, Uuid) {
    let dir = tempfile::tempdir().unwrap();
    let mut app = open(dir.path(), 1);
    let mut first = Uuid::nil();
    for start in [0, 1_000] {
        app.act(&START, &at(start)).unwrap();
        app.act(&CAST, &at(start + 1)).unwrap();
        app.act(&Action::EndSession, &at(start + 40)).unwrap();
        if start == 0 {
            first = app.session().unwrap().id;
        }
    }
    drop(app);
    // A note in the first session makes its stored summary out of date.
    let mut store = Store::open(dir.path(), Uuid::nil()).unwrap();
    let last = store.ops_of(first).unwrap().pop().unwrap();
    let payload = Payload::Noted { text: "written elsewhere".into() };
    store
        .append(&[Op { id: Uuid::from_u128(77), device: Uuid::from_u128(9), payload, ..last }], None)
        .unwrap();
    (dir, first)
}

fn entries(dir: &Path) -> u64 {
    Store::open(dir, Uuid::nil()).unwrap().count().unwrap()
}

#[test]
fn what_a_full_disk_prevents_is_reported_and_what_was_stored_is_never_withdrawn() {
    the_app_opens_on_a_full_disk_and_the_check_says_what_it_does_without();
    a_question_over_days_needs_no_room();
    a_tap_is_stored_or_refused_at_every_amount_of_room();
    what_is_logged_between_casts_is_stored_or_refused();
    a_salvage_on_a_full_disk_leaves_the_damaged_log_as_it_was();
    entries_about_a_section_are_stored_or_refused();
    a_plan_is_stored_or_refused_and_taken_up_with_the_start_or_not_at_all();
    club::a_clubs_start_is_taken_or_left_whole_or_not_at_all();
    the_welcome_needs_no_room();
    the_card_of_the_day_opens_only_when_the_day_is_over();
    night_at_dusk_is_chosen_whole_or_not_at_all();
    rod::a_rod_that_can_not_be_stored_is_chosen_all_the_same();
    rod::what_goes_with_a_tap_is_stored_with_it_or_not_at_all();
    set_up::what_is_chosen_for_the_next_day_is_kept_whole_or_not_at_all();
    set_up::a_start_that_was_stored_shows_the_new_day_whatever_could_not_be_noted();
    set_up::a_copy_is_used_up_by_the_start_that_was_stored_and_by_no_other();
}

fn the_app_opens_on_a_full_disk_and_the_check_says_what_it_does_without() {
    let (dir, _) = two_sessions();
    on_disk(Some(0), || {
        let mut app = open(dir.path(), 2);
        assert_eq!(app.session().unwrap().casts.len(), 1);
        let refused = app.act(&START, &at(2_000)).unwrap_err();
        assert!(matches!(refused, AppError::Store(StoreError::NoSpace)), "{refused}");
        let says = app.look_over().unwrap();
        assert!(says.contains("7 entries") && says.contains("could not be saved or read"), "{says}");
        set_room(None);
        app.act(&START, &at(2_001)).unwrap();
        let says = app.look_over().unwrap();
        assert!(!says.contains("could not be saved"), "with space again all is kept: {says}");
    });
}

/// Two colours alternating on two days: reading what the days say about them needs no room.
fn a_question_over_days_needs_no_room() {
    let dir = tempfile::tempdir().unwrap();
    let mut app = open(dir.path(), 7);
    for day in 0..2 {
        let mut now = day * 1_440;
        let mut tap = |action: &Action, after: i64| {
            now += after;
            app.act(action, &at(now)).unwrap();
        };
        tap(&Action::Typed { into: TypedInto::Water, text: "Mill pool".into() }, 1);
        tap(&START, 1);
        for colour in ["pink", "white", "white", "pink"].into_iter().cycle().take(12) {
            let tackle = TackleTap::Colour { name: colour.into() };
            tap(&Action::Tackle { rod: 1, tap: tackle }, 1);
            tap(&CAST, 1);
            tap(&Action::WoundIn { rod: 1 }, 9);
        }
        tap(&Action::EndSession, 1);
    }
    drop(app);
    let shown = |app: &mut App| {
        let Screen::Changes(changes) = app.screen(Which::Changes, &at(3_000)).unwrap() else { panic!() };
        let Screen::Book(book) = app.screen(Which::Book, &at(3_000)).unwrap() else { panic!() };
        let leaf = book.leaves.into_iter().find(|leaf| leaf.id == "questions").unwrap();
        (changes.changes[0].says.clone(), leaf)
    };
    let with_room = shown(&mut open(dir.path(), 8));
    assert!(with_room.0.ends_with("Over 2 sessions, 24 casts: can't tell yet."), "{}", with_room.0);
    on_disk(Some(0), || assert_eq!(shown(&mut open(dir.path(), 9)), with_room));
}

/// Taps after which summaries, choices or older sessions are read and rewritten.
fn taps(first: Uuid) -> [Vec<Action>; 3] {
    let note = Action::Typed { into: TypedInto::Note, text: "herons".into() };
    [
        vec![START],
        vec![Action::Setup { tap: SetupTap::CopyLast }, START],
        vec![Action::Book { tap: BookTap::Open { session: first } }, note],
    ]
}

fn a_tap_is_stored_or_refused_at_every_amount_of_room() {
    let (dir, first) = two_sessions();
    let before = entries(dir.path());
    for (no, taps) in taps(first).iter().enumerate() {
        let (mut stored, mut refused) = (0, 0);
        for room in (0..90_000).step_by(2_000) {
            let ((), _) = on_disk(None, || {
                let mut app = open(dir.path(), 3);
                let (last, ready) = taps.split_last().unwrap();
                for tap in ready {
                    app.act(tap, &at(2_000)).unwrap();
                }
                set_room(Some(room));
                let told = app.act(last, &at(2_001));
                set_room(None);
                match &told {
                    Ok(update) => {
                        assert!(update.changed, "tap {no}, {room} bytes");
                        stored += 1;
                    }
                    Err(error) => {
                        assert_eq!(error.kind(), ErrorKind::NotSaved, "tap {no}, {room} bytes: {error}");
                        refused += 1;
                    }
                }
                drop(app);
                let after = entries(dir.path());
                assert_eq!(after > before, told.is_ok(), "tap {no}, {room} bytes: {told:?}");
                if told.is_err() {
                    let mut app = open(dir.path(), 4);
                    for tap in taps {
                        app.act(tap, &at(2_010)).unwrap();
                    }
                    drop(app);
                    assert!(entries(dir.path()) > before);
                }
            });
        }
        assert!(stored > 5 && refused > 0, "tap {no}: {stored} stored, {refused} refused");
    }
}

/// Each action of the day between casts, with what has to happen before it.
fn between_casts() -> Vec<(Vec<Action>, Action)> {
    let (bite, landed) = (Action::Bite { rod: 1 }, Action::Landed { rod: 1, fish: None });
    let fish = |tap| Action::Fish { cast: None, tap };
    let handful = FeedTap::Measure { what: FeedKind::Loose, measure: FeedMeasure::Handful };
    vec![
        (vec![], Action::Away),
        (vec![Action::Away], Action::Returned),
        (vec![CAST], landed.clone()),
        (vec![CAST], Action::Lost { rod: 1 }),
        (vec![CAST, bite, landed], fish(FishTap::PutBack { back: true })),
        (vec![CAST], Action::Feed { tap: handful }),
        (vec![Action::Feed { tap: handful }], Action::Feed { tap: FeedTap::Again }),
        (vec![Action::CastHere], Action::Seen { tap: SeenTap::Sign { sign: FishSign::Rolled } }),
        (vec![], Action::Seen { tap: SeenTap::Neighbour { side: Side::Left } }),
        (vec![], Action::Tackle { rod: 1, tap: TackleTap::Feeder { mg: Some(30_000) } }),
    ]
}

fn what_is_logged_between_casts_is_stored_or_refused() {
    for (ready, action) in between_casts() {
        let (mut stored, mut refused) = (0, 0);
        for room in (0..60_000).step_by(4_000) {
            let dir = tempfile::tempdir().unwrap();
            let mut app = open(dir.path(), 3);
            for (minute, tap) in (1..).zip(std::iter::once(&START).chain(&ready)) {
                app.act(tap, &at(minute)).unwrap();
            }
            drop(app);
            let ((), _) = on_disk(None, || {
                let mut app = open(dir.path(), 5);
                let before = app.ops().len();
                set_room(Some(room));
                let told = app.act(&action, &at(20));
                set_room(None);
                match &told {
                    Ok(update) => stored += u32::from(update.changed),
                    Err(error) => {
                        assert_eq!(error.kind(), ErrorKind::NotSaved, "{action:?}, {room} bytes: {error}");
                        refused += 1;
                    }
                }
                drop(app);
                let mut app = open(dir.path(), 4);
                assert_eq!(app.ops().len() > before, told.is_ok(), "{action:?}, {room} bytes");
                if told.is_err() {
                    app.act(&action, &at(21)).unwrap();
                }
            });
        }
        assert!(stored > 0 && refused > 0, "{action:?}: {stored} stored, {refused} refused");
    }
}

/// A line of a plan, a START that takes over the plan, and NOT TODAY.
fn a_plan_is_stored_or_refused_and_taken_up_with_the_start_or_not_at_all() {
    let plan = |tap| Action::Plan { tap };
    let line = plan(PlanTap::Leave { minutes: Some(20) });
    let steps = [line, START, plan(PlanTap::Today { takes: false })];
    for (no, action) in (0..).zip(&steps) {
        let (mut stored, mut refused) = (0, 0);
        for room in (0..60_000).step_by(4_000) {
            let dir = tempfile::tempdir().unwrap();
            let mut app = open(dir.path(), 3);
            for (minute, step) in (1..).zip(&steps[..no]) {
                app.act(step, &at(minute)).unwrap();
            }
            drop(app);
            let before = entries(dir.path());
            let ((), _) = on_disk(None, || {
                let mut app = open(dir.path(), 5);
                set_room(Some(room));
                let told = app.act(action, &at(20));
                set_room(None);
                drop(app);
                match &told {
                    Ok(update) => stored += u32::from(update.changed),
                    Err(error) => {
                        assert_eq!(error.kind(), ErrorKind::NotSaved, "{action:?}, {room} bytes: {error}");
                        refused += 1;
                    }
                }
                assert_eq!(entries(dir.path()) > before, told.is_ok(), "{action:?}, {room} bytes");
                let app = open(dir.path(), 4);
                let goes_by_it = app.session().is_some_and(|session| session.plan.is_some());
                let expected = if no == 1 { told.is_ok() } else { no == 2 && told.is_err() };
                assert_eq!(goes_by_it, expected, "{action:?}, {room} bytes");
            });
        }
        assert!(stored > 0 && refused > 0, "{action:?}: {stored} stored, {refused} refused");
    }
}

fn a_salvage_on_a_full_disk_leaves_the_damaged_log_as_it_was() {
    let (dir, _) = two_sessions();
    let count = entries(dir.path());
    let file = dir.path().join(FILE_NAME);
    let mut bytes = fs::read(&file).unwrap();
    bytes[4_096..8_192].fill(0xff);
    fs::write(&file, &bytes).unwrap();
    for room in [0, 5_000, 20_000, 40_000, 60_000] {
        let (error, _) =
            on_disk(Some(room), || Store::salvage(dir.path(), Uuid::nil(), T0, &[]).unwrap_err());
        assert!(matches!(error, StoreError::NoSpace), "{room}: {error}");
        assert!(fs::read(&file).unwrap() == bytes, "{room}");
        let names: Vec<_> = fs::read_dir(dir.path()).unwrap().map(|e| e.unwrap().file_name()).collect();
        assert!(!names.iter().any(|n| n.to_string_lossy().contains("damaged")), "{names:?}");
    }
    let report = Store::salvage(dir.path(), Uuid::nil(), T0, &[]).unwrap();
    let store = Store::open(dir.path(), Uuid::nil()).unwrap();
    assert_eq!((store.count().unwrap(), report.saved), (count, count));
}

/// The others in a match: if the disk was full, what was typed about a net is kept for the next try.
fn entries_about_a_section_are_stored_or_refused() {
    use restwater_log::{OtherPeg, Side};
    use restwater_screen::{MatchTap, RuleTap};
    let tap = |tap| Action::Match { tap };
    let begin = tap(MatchTap::Rule { rule: RuleTap::Begin });
    let peg = tap(MatchTap::ScalesPeg { peg: OtherPeg { side: Side::Left, place: 1 } });
    let typed = [peg, tap(MatchTap::ScalesDigit { digit: 6 })];
    let rule = Action::Typed { into: TypedInto::MatchRule, text: "dead fish don't count".into() };
    let section = tap(MatchTap::Section { left: 4, right: 5 });
    let told = tap(MatchTap::WeighIn);
    for (ready, action) in [(&[][..], section), (&[][..], rule), (&typed[..], told)] {
        let (mut stored, mut refused) = (0, 0);
        for room in (0..60_000).step_by(4_000) {
            let dir = tempfile::tempdir().unwrap();
            let mut app = open(dir.path(), 3);
            app.act(&START, &at(1)).unwrap();
            app.act(&begin, &at(2)).unwrap();
            drop(app);
            let ((), _) = on_disk(None, || {
                let mut app = open(dir.path(), 5);
                for (minute, tap) in (3..).zip(ready) {
                    app.act(tap, &at(minute)).unwrap();
                }
                let before = app.ops().len();
                set_room(Some(room));
                // The proposed match begins at half past: an hour after the start it is in progress.
                let said = app.act(&action, &at(60));
                set_room(None);
                match &said {
                    Ok(update) => stored += u32::from(update.changed),
                    Err(error) => {
                        assert_eq!(error.kind(), ErrorKind::NotSaved, "{action:?}, {room} bytes: {error}");
                        refused += 1;
                        app.act(&action, &at(61)).unwrap();
                    }
                }
                drop(app);
                let app = open(dir.path(), 4);
                assert_eq!(app.ops().len(), before + 1, "{action:?}, {room} bytes");
            });
        }
        assert!(stored > 0 && refused > 0, "{action:?}: {stored} stored, {refused} refused");
    }
}

/// The first opening of an empty log: that the welcome was shown can't be stored, but no error is shown
/// instead.
fn the_welcome_needs_no_room() {
    let dir = tempfile::tempdir().unwrap();
    drop(open(dir.path(), 1));
    on_disk(Some(0), || {
        let mut app = open(dir.path(), 2);
        assert_eq!(app.first_screen().unwrap(), Which::Welcome);
        let says = app.look_over().unwrap();
        assert!(says.contains("could not be saved or read"), "{says}");
        set_room(None);
        drop(app);
        let mut app = open(dir.path(), 3);
        assert_eq!(app.first_screen().unwrap(), Which::Welcome, "it was not noted");
        assert_eq!(app.first_screen().unwrap(), Which::Bank);
        let says = app.look_over().unwrap();
        assert!(!says.contains("could not be saved"), "{says}");
    });
}

fn the_card_of_the_day_opens_only_when_the_day_is_over() {
    let dir = tempfile::tempdir().unwrap();
    let mut app = open(dir.path(), 1);
    app.act(&START, &at(0)).unwrap();
    app.act(&CAST, &at(1)).unwrap();
    drop(app);
    let (mut stored, mut refused) = (0, 0);
    for room in (0..60_000).step_by(4_000) {
        on_disk(None, || {
            let mut app = open(dir.path(), 2);
            set_room(Some(room));
            let told = app.act(&Action::EndSession, &at(30));
            set_room(None);
            match &told {
                Ok(update) => {
                    assert_eq!(update.opens, Some(Which::Day), "{room} bytes");
                    stored += 1;
                }
                Err(error) => {
                    assert_eq!(error.kind(), ErrorKind::NotSaved, "{room} bytes: {error}");
                    refused += 1;
                }
            }
            drop(app);
            let mut app = open(dir.path(), 3);
            assert_eq!(app.session().unwrap().is_open(), told.is_err(), "{room} bytes");
            if told.is_err() {
                assert_eq!(app.act(&Action::EndSession, &at(31)).unwrap().opens, Some(Which::Day));
            }
            let Screen::Day(card) = app.screen(Which::Day, &at(32)).unwrap() else { panic!() };
            assert_eq!(card.leaves[0].says, "No bites in 1 cast, no fish landed.", "{room} bytes");
        });
    }
    assert!(stored > 0 && refused > 0, "{stored} stored, {refused} refused");
}

/// The choice changes two stored settings: the scheme by day, and that night comes at dusk.
fn night_at_dusk_is_chosen_whole_or_not_at_all() {
    let dusk = Action::Phone { tap: PhoneTap::NightAtDusk };
    let night = Action::Set { hand: None, scheme: Some(Scheme::Night) };
    let dir = tempfile::tempdir().unwrap();
    drop(open(dir.path(), 1));
    for (before, after) in [(&night, &dusk), (&dusk, &night)] {
        let mut app = open(dir.path(), 1);
        app.act(before, &at(0)).unwrap();
        drop(app);
        let (mut stored, mut refused) = (0, 0);
        for room in (0..40_000).step_by(1_000) {
            on_disk(None, || {
                let mut app = open(dir.path(), 2);
                let was = app.screen(Which::Phone, &at(1)).unwrap();
                set_room(Some(room));
                let told = app.act(after, &at(2));
                set_room(None);
                let now = app.screen(Which::Phone, &at(3)).unwrap();
                match &told {
                    Ok(_) => stored += 1,
                    Err(error) => {
                        assert_eq!(error.kind(), ErrorKind::NotSaved, "{after:?}, {room} bytes: {error}");
                        refused += 1;
                    }
                }
                assert_eq!(now == was, told.is_err(), "{after:?}, {room} bytes");
                drop(app);
                let mut app = open(dir.path(), 3);
                assert_eq!(app.screen(Which::Phone, &at(4)).unwrap(), now, "{after:?}, {room} bytes");
            });
        }
        assert!(stored > 0 && refused > 0, "{after:?}: {stored} stored, {refused} refused");
    }
}
