//! What is corrected later: a slip that is undone, an import that is taken back, a day of last week that is opened again.

use super::whose::all_sessions;
use super::*;
use restwater_log::{Rig, kit_of};
use restwater_screen::{BookTap, MendTap, MendView};

const DAY: i64 = 24 * 60 * MIN;

fn book(tap: BookTap) -> Action {
    Action::Book { tap }
}

fn tied(phone: &mut Phone, ms: i64) -> String {
    phone.leaf(Which::Bench, ms, "hooklengths").lines[0].value.clone()
}

fn to_mend(phone: &mut Phone, ms: i64) -> MendView {
    match phone.app().screen(Which::Mend, &at(ms)).unwrap() {
        Screen::Mend(mend) => mend,
        other => panic!("{other:?}"),
    }
}

fn open_in_book(phone: &mut Phone, session: Uuid, ms: i64) {
    phone.tap(ms, &all_sessions()).unwrap();
    phone.tap(ms, &book(BookTap::Open { session })).unwrap();
}

#[test]
fn an_end_tapped_on_the_next_morning_is_set_back_to_the_last_entry() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(30 * MIN, &WOUND_IN).unwrap();
    phone.tap(15 * 60 * MIN, &Action::EndSession).unwrap();
    let line = to_mend(&mut phone, 901 * MIN).lines.remove(0);
    assert_eq!(line.why, "Long after the last entry: was END tapped late?");
    phone.tap(901 * MIN, &line.open).unwrap();
    let open = to_mend(&mut phone, 901 * MIN).open.unwrap();
    let back = open.rows.iter().find(|row| row.tag == "back").unwrap();
    assert_eq!(back.choices[0].label, "to 22:43, the last entry");
    phone.tap(902 * MIN, &back.choices[0].action).unwrap();
    let session = phone.app().session().unwrap();
    assert_eq!(session.ended.as_ref().map(|at| at.at_ms / MIN), Some(30));
    phone.tap(903 * MIN, &Action::Undo).unwrap();
    assert_eq!(phone.app().session().unwrap().ended.as_ref().map(|at| at.at_ms / MIN), Some(900));
    phone.tap(904 * MIN, &Action::Mend { op: line.op, tap: MendTap::Confirm }).unwrap();
    assert_eq!(to_mend(&mut phone, 905 * MIN).lines, [], "or it was a long evening");
}

/// The fish of 22:43 was landed and never logged, and END tapped on the next morning.
#[test]
fn the_hours_of_a_day_whose_last_fish_and_end_were_forgotten_end_with_its_bite() {
    let mut phone = started();
    phone.tap(10 * MIN, &CAST).unwrap();
    phone.tap(30 * MIN, &BITE).unwrap();
    phone.tap(15 * 60 * MIN, &Action::EndSession).unwrap();
    let whys: Vec<String> = to_mend(&mut phone, 901 * MIN).lines.into_iter().map(|line| line.why).collect();
    assert!(whys.iter().any(|why| why == "Long after the last entry: was END tapped late?"), "{whys:?}");
    let sessions = phone.leaf(Which::Book, 902 * MIN, "sessions");
    let said = format!("{:?}", sessions.list);
    assert!(said.contains("1 bite in 1 cast, 30 min"), "{said}");
}

#[test]
fn a_wallet_that_went_with_its_import_is_not_written_in() {
    let mut theirs = Phone::with_ids_from(500);
    theirs.bench(0, BenchTap::Tied { count: 8 }).unwrap();
    let file = theirs.all_of_it(MIN);
    for chosen in [false, true] {
        let mut mine = Phone::new();
        let import = mine.take(&file, 2 * MIN);
        assert_eq!(tied(&mut mine, 3 * MIN), "8 tied");
        if chosen {
            let kit = kit_of(theirs.app().journal.store().device());
            mine.bench(3 * MIN, BenchTap::UseKit { kit }).unwrap();
        }
        mine.tap(4 * MIN, &Action::UndoImport { id: import }).unwrap();
        mine.bench(5 * MIN, BenchTap::Tied { count: 5 }).unwrap();
        mine.open();
        assert_eq!(tied(&mut mine, 6 * MIN), "5 tied");
        mine.take(&file, 7 * MIN);
        assert_eq!(tied(&mut mine, 8 * MIN), "5 tied", "the partner's come beside, not among them");
    }
}

#[test]
fn a_hooklength_lost_on_a_new_phone_leaves_the_wallet_that_came_with_the_log() {
    let mut old = Phone::with_ids_from(500);
    old.bench(0, BenchTap::Tied { count: 3 }).unwrap();
    let file = old.all_of_it(MIN);
    let mut new = Phone::new();
    new.take(&file, 2 * MIN);
    new.tap(3 * MIN, &START).unwrap();
    let rig = Rig { hooklength_mm: Some(914), hook_size: Some(16), ..Rig::default() };
    new.tap(4 * MIN, &Action::SetRig { rod: 1, rig }).unwrap();
    new.tap(5 * MIN, &CAST).unwrap();
    new.tap(6 * MIN, &WOUND_IN).unwrap();
    new.tap(7 * MIN, &Action::HooklengthLost { rod: 1 }).unwrap();
    assert_eq!(tied(&mut new, 8 * MIN), "2 tied");
    new.bench(9 * MIN, BenchTap::Tied { count: 1 }).unwrap();
    assert_eq!(tied(&mut new, 10 * MIN), "3 tied", "once");
}

#[test]
fn a_day_opened_in_the_book_closes_when_its_import_is_taken_back() {
    let mut theirs = Phone::with_ids_from(500);
    let end = theirs.day_with(-7 * DAY, "22", 3);
    let session = theirs.app().session().unwrap().id;
    let file = theirs.all_of_it(end + MIN);
    let mut mine = started();
    let import = mine.take(&file, MIN);
    open_in_book(&mut mine, session, 2 * MIN);
    let pages = |phone: &mut Phone, ms| -> Vec<String> {
        phone.leaves(Which::Book, ms).leaves.into_iter().map(|leaf| leaf.id).collect()
    };
    assert!(pages(&mut mine, 3 * MIN).contains(&"session".to_owned()));
    mine.tap(4 * MIN, &Action::UndoImport { id: import }).unwrap();
    assert!(!pages(&mut mine, 5 * MIN).contains(&"session".to_owned()));
    mine.tap(6 * MIN, &typed(TypedInto::Note, "a robin on the rods")).unwrap();
    assert_eq!(mine.app().session().unwrap().notes.len(), 1, "the note is on the own day");
}

#[test]
fn the_place_of_another_day_is_never_kept_for_today() {
    let mut phone = started();
    phone.tap(MIN, &Action::EndSession).unwrap();
    let first = phone.app().session().unwrap().id;
    phone.tap(DAY, &START).unwrap();
    phone.tap(DAY + MIN, &book(BookTap::Open { session: first })).unwrap();
    phone.tap(DAY + 2 * MIN, &book(BookTap::Latitude { e7: 521_000_000 })).unwrap();
    assert_eq!(phone.leaf(Which::Book, DAY + 3 * MIN, "light").keys, []);
    let refused = phone.tap(DAY + 3 * MIN, &book(BookTap::KeepPlace)).unwrap_err();
    assert_eq!(phone.app().message(&refused), "The Book shows another day. Tap SESSIONS in it first.");
    phone.tap(DAY + 4 * MIN, &book(BookTap::Close)).unwrap();
    assert_eq!(phone.leaf(Which::Book, DAY + 5 * MIN, "light").keys, [], "the choice is closed with its day");
    assert_eq!(phone.app().session().unwrap().peg_place, None);
}

#[test]
fn waits_call_a_mark_by_its_new_name_at_once() {
    let mut phone = started();
    phone.tap(500, &Action::SetMark { name: "Gate".into(), bearing_cdeg: 0 }).unwrap();
    for (i, bearing) in [(0, 0), (1, 2_000)] {
        let from = (1 + 20 * i) * MIN;
        phone.tap(from, &tackle(TackleTap::Bearing { cdeg: bearing })).unwrap();
        phone.tap(from + 1_000, &CAST).unwrap();
        phone.tap(from + 12 * MIN, &BITE).unwrap();
        phone.tap(from + 13 * MIN, &LANDED).unwrap();
    }
    let spots = |phone: &mut Phone, ms| -> Vec<String> {
        let rows = super::learning::screens(phone, ms).0.rows;
        let row = rows.into_iter().find(|row| row.tag == "spot").unwrap();
        row.choices.into_iter().map(|choice| choice.label).collect()
    };
    assert!(spots(&mut phone, 60 * MIN).iter().any(|spot| spot.contains("Gate")));
    let mark = phone.app().session().unwrap().marks[0].id;
    phone.tap(61 * MIN, &typed(TypedInto::SwimName, "Stile")).unwrap();
    phone
        .tap(61 * MIN + 1_000, &Action::Swim { tap: restwater_screen::SwimTap::Rename { id: mark } })
        .unwrap();
    let after = spots(&mut phone, 62 * MIN);
    assert!(after.iter().any(|spot| spot.contains("Stile")), "{after:?}");
}

#[test]
fn what_the_check_repaired_is_what_the_book_says() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(13 * MIN, &WOUND_IN).unwrap();
    phone.tap(14 * MIN, &Action::EndSession).unwrap();
    let id = phone.app().session().unwrap().id;
    phone.leaves(Which::Book, 15 * MIN);
    let mut kept = phone.app().journal.store().snapshot(id).unwrap().unwrap();
    kept.body = String::from_utf8(kept.body).unwrap().replace("Mill pool", "Other pool").into_bytes();
    phone.app().journal.store().put_snapshot(&kept).unwrap();
    phone.open();
    let label = |phone: &mut Phone| phone.leaf(Which::Book, 16 * MIN, "sessions").list[0].label.clone();
    assert!(label(&mut phone).contains("Other pool"));
    phone.app().look_over().unwrap();
    assert!(label(&mut phone).contains("Mill pool"), "{}", label(&mut phone));
}

/// A break said on Monday, after the clocks went back on Sunday, shows Saturday's hour.
#[test]
fn a_break_added_after_the_clocks_changed_shows_the_hour_of_its_day() {
    let mut phone = Phone::new();
    let summer = |ms| Moment { offset_min: 60, ..at(ms) };
    phone.app().act(&START, &summer(0)).unwrap();
    phone.look();
    for start in [0, 15, 30, 45, 110] {
        phone.app().act(&CAST, &summer(start * MIN)).unwrap();
        phone.app().act(&WOUND_IN, &summer((start + 13) * MIN)).unwrap();
    }
    phone.app().act(&Action::EndSession, &summer(125 * MIN)).unwrap();
    let session = phone.app().session().unwrap().clone();
    let op = session.doubts[0].op;
    for boots in [0, 1] {
        let mut later = Phone { boots, ..phone };
        later.tap(2 * DAY, &book(BookTap::Open { session: session.id })).unwrap();
        later.tap(2 * DAY + MIN, &Action::Mend { op, tap: MendTap::WasAway }).unwrap();
        let mended = later.app().session().unwrap();
        let shown = |stamp: &restwater_session::Stamp| (stamp.at_ms / MIN, stamp.shown.offset_min);
        let rest = &mended.breaks[0];
        assert_eq!((shown(&rest.from), rest.to.as_ref().map(shown)), ((58, 60), Some((108, 60))));
        later.tap(2 * DAY + 2 * MIN, &Action::Undo).unwrap();
        phone = later;
    }
}

#[test]
fn a_start_that_is_undone_keeps_what_was_to_be_copied_and_what_was_packed() {
    let mut phone = started();
    let rig = Rig { bait: Some("bread".into()), ..Rig::default() };
    phone.tap(1_000, &Action::SetRig { rod: 1, rig: rig.clone() }).unwrap();
    phone.tap(2_000, &Action::EndSession).unwrap();
    let setup = |tap| Action::Setup { tap };
    let row = |phone: &mut Phone, ms, tag: &str| match phone.app().screen(Which::Setup, &at(ms)).unwrap() {
        Screen::Setup(setup) => setup.rows.into_iter().find(|row| row.tag == tag).unwrap(),
        other => panic!("{other:?}"),
    };
    phone.tap(DAY, &setup(SetupTap::CopyLast)).unwrap();
    let net = row(&mut phone, DAY, "pack").choices[0].action.clone();
    phone.tap(DAY + 1_000, &net).unwrap();
    phone.tap(DAY + 2_000, &START).unwrap();
    assert!(row(&mut phone, DAY + 3_000, "pack").value.starts_with("0 of "));
    phone.tap(DAY + 4_000, &Action::Undo).unwrap();
    phone.open();
    assert!(row(&mut phone, DAY + 5_000, "pack").value.starts_with("1 of "));
    phone.tap(DAY + 5_000, &setup(SetupTap::DrawDigit { digit: 7 })).unwrap();
    phone.tap(DAY + 6_000, &START).unwrap();
    assert_eq!(phone.app().session().unwrap().rods[0].rig, rig);
    assert_eq!(row(&mut phone, DAY + 7_000, "copy").value, "no", "used");
    phone.tap(DAY + 8_000, &Action::EndSession).unwrap();
    // The next day begins without, and so it does if its own START is undone.
    phone.tap(2 * DAY, &START).unwrap();
    phone.tap(2 * DAY + 1_000, &Action::Undo).unwrap();
    phone.tap(2 * DAY + 2_000, &START).unwrap();
    assert_eq!(phone.app().session().unwrap().rods[0].rig, Rig::default());
}
