//! The Book and the set-up through the app, tap by tap.

use super::*;
use restwater_log::{EndSaid, Rig, kit_of};
use restwater_screen::{BookSet, BookTap, FilesTap, FilterTap, MendTap, SetupView, Span, WaterChoice};
use restwater_session::NotNow;
use restwater_store::SnapshotRow;
use std::ops::ControlFlow;
use std::path::Path;

const DAY: i64 = 24 * 60 * MIN;

fn book(tap: BookTap) -> Action {
    Action::Book { tap }
}

pub(super) fn water(set: BookSet, name: &str) -> Action {
    let water = WaterChoice::Named { name: name.into() };
    book(BookTap::Filter { set, by: FilterTap::Water { water } })
}

impl Phone {
    fn set_up(&mut self, ms: i64, tap: SetupTap) {
        self.tap(ms, &Action::Setup { tap }).unwrap();
    }

    fn type_in(&mut self, ms: i64, into: TypedInto, text: &str) {
        self.tap(ms, &typed(into, text)).unwrap();
    }

    fn setup(&mut self, ms: i64) -> SetupView {
        match self.app().screen(Which::Setup, &at(ms)).unwrap() {
            Screen::Setup(setup) => setup,
            other => panic!("{other:?}"),
        }
    }

    /// A day of casts of a quarter of an hour, the first `bites` of them with a fish landed.
    pub(super) fn day(&mut self, day: i64, water: &str, casts: i64, bites: i64) {
        let zero = day * DAY;
        self.boots += 1;
        self.type_in(zero, TypedInto::Water, water);
        self.type_in(zero + 1_000, TypedInto::Peg, "14");
        self.tap(zero + 2_000, &START).unwrap();
        for i in 0..casts {
            let splash = zero + MIN + i * 20 * MIN;
            self.tap(splash, &CAST).unwrap();
            if i < bites {
                self.tap(splash + 15 * MIN, &BITE).unwrap();
                self.tap(splash + 16 * MIN, &LANDED).unwrap();
            } else {
                self.tap(splash + 15 * MIN, &WOUND_IN).unwrap();
            }
        }
        self.tap(zero + MIN + casts * 20 * MIN, &Action::EndSession).unwrap();
    }
}

#[test]
fn sessions_are_listed_filtered_and_counted() {
    let mut phone = Phone::new();
    for (day, water, bites) in [(0, "Mill pool", 1), (7, "Alder Pool", 2), (14, "Mill pool", 0)] {
        phone.day(day, water, 4, bites);
    }
    let now = 20 * DAY;
    let list = phone.leaf(Which::Book, now, "sessions");
    assert_eq!((list.says.as_str(), list.list.len()), ("3 sessions of 3.", 3));
    assert_eq!(list.list[1].label, "21 Nov 2023, Alder Pool, Peg\u{a0}14");
    assert_eq!(list.list[1].sub, "2 bites in 4 casts, 1 h 20 fished");
    let rates = phone.leaf(Which::Book, now, "rates");
    assert_eq!(
        rates.says,
        "All sessions: about a bite every 60 min for each rod that is out. That is 3 bites in 3 rod hours.",
        "3 bites in 12 quarters of an hour"
    );
    assert_eq!(rates.lines[0].detail, "3 in 3 h");
    // Garwood (1936): 3 events, 0.6187 to 8.7673, over 3 h out.
    let figures = phone.leaf(Which::Book, now, "rates-figures");
    assert_eq!(figures.lines[0].detail, "3 in 3 h: 0.2 to 2.9");
    for leaf in [&rates, &figures] {
        assert!(bench::ranges_are_on_their_axis(leaf) >= 4, "all days, and each");
        assert_eq!(leaf.axis.as_ref().unwrap().label, "bites in a rod hour");
    }
    assert!(figures.notes.iter().any(|note| note.contains("Garwood")), "{:?}", figures.notes);
    phone.tap(now, &water(BookSet::Shown, "Mill pool")).unwrap();
    assert_eq!(phone.leaf(Which::Book, now, "sessions").list.len(), 2);
    let rates = phone.leaf(Which::Book, now, "rates");
    assert_eq!(rates.says, "Can't tell yet for Mill pool: 1 bite.");
}

#[test]
fn two_sets_are_compared_by_days_and_never_share_a_day() {
    let mut phone = Phone::new();
    for day in 0..6 {
        let good = day % 2 == 0;
        phone.day(7 * day, if good { "Mill pool" } else { "Alder Pool" }, 6, if good { 5 } else { 0 });
    }
    let now = 50 * DAY;
    assert!(phone.leaf(Which::Book, now, "sets").says.starts_with("6 sessions are in both sets."));
    phone.tap(now, &water(BookSet::A, "Mill pool")).unwrap();
    phone.tap(now + 1_000, &water(BookSet::B, "Alder Pool")).unwrap();
    let sets = phone.leaf(Which::Book, now + 2_000, "sets");
    assert_eq!(bench::ranges_are_on_their_axis(&sets), 2, "the rate of each set");
    assert_eq!(sets.says, "Leans to A.", "three good days against three blanks: 2 of 20 ways to deal them");
    let dealt = sets.lines.iter().find(|line| line.label == "Whole days reshuffled").unwrap();
    assert_eq!((dealt.value.as_str(), dealt.detail.as_str()), ("p\u{a0}0.10", "all 20 ways"));
}

#[test]
fn an_earlier_session_can_be_opened_and_given_a_note_and_a_plan() {
    let mut phone = Phone::new();
    phone.day(0, "Mill pool", 3, 1);
    phone.day(7, "Mill pool", 2, 0);
    phone.open();
    let now = 8 * DAY;
    let first = phone.leaf(Which::Book, now, "sessions").list.last().unwrap().tap.clone();
    phone.tap(now, first.action().unwrap()).unwrap();
    let session = phone.leaf(Which::Book, now, "session");
    assert!(session.says.starts_with("22:13 to 23:14: 1 bite in 3 casts, 1 landed."), "{}", session.says);
    assert_eq!(session.lines[0].value, "15 min, landed");
    phone.tap(now + 1_000, &typed(TypedInto::Note, "ice in the margin")).unwrap();
    let update = phone.tap(now + 2_000, &typed(TypedInto::Plan, "begin at 2 ft")).unwrap();
    assert!(update.changed);
    let session = phone.leaf(Which::Book, now + 3_000, "session");
    assert!(session.lines.iter().any(|line| line.value == "ice in the margin"));
    let next = phone.leaf(Which::Book, now + 3_000, "next");
    assert_eq!(next.lines[0].value, "begin at 2 ft");
    assert!(next.lines.iter().any(|line| line.label == "How long to leave a cast"), "one bite can't tell");
    phone.tap(now + 4_000, &Action::Undo).unwrap();
    phone.tap(now + 5_000, &Action::Undo).unwrap();
    assert!(!phone.leaf(Which::Book, now + 6_000, "session").lines.iter().any(|l| l.value.contains("ice")));
    assert!(phone.tap(now + 7_000, &typed(TypedInto::Note, "  ")).is_err(), "an empty note is none");
    phone.tap(now + 8_000, &book(BookTap::Close)).unwrap();
    assert!(phone.leaves(Which::Book, now + 9_000).leaves.iter().all(|leaf| leaf.id != "session"));
    let nowhere = book(BookTap::Open { session: Uuid::from_u128(9) });
    assert!(matches!(phone.tap(now + 10_000, &nowhere), Err(AppError::NoSuchSession)));
    // The current session is still the one that began last.
    assert_eq!(phone.app().session().unwrap().casts.len(), 2);
}

/// The Book reads stored snapshots while they match the log, and recomputes only the others.
#[test]
fn the_book_reads_snapshots_and_not_the_log() {
    let mut phone = Phone::new();
    phone.day(0, "Mill pool", 3, 1);
    phone.day(7, "Mill pool", 2, 0);
    let now = 8 * DAY;
    phone.leaves(Which::Book, now);
    let rows = phone.app().journal.store().sessions().unwrap();
    let kept: Vec<SnapshotRow> =
        rows.iter().map(|r| phone.app().journal.store().snapshot(r.id).unwrap().unwrap()).collect();
    let mut marked = kept[1].clone();
    let body = String::from_utf8(marked.body).unwrap();
    marked.body = body.replace("Mill pool", "Marked pool").into_bytes();
    phone.app().journal.store().put_snapshot(&marked).unwrap();
    phone.open();
    let labels = |phone: &mut Phone| -> Vec<String> {
        phone.leaf(Which::Book, now, "sessions").list.into_iter().map(|key| key.label).collect()
    };
    assert!(labels(&mut phone)[1].contains("Marked pool"), "the first session was not replayed");
    let first = phone.leaf(Which::Book, now, "sessions").list[1].tap.clone();
    phone.tap(now, first.action().unwrap()).unwrap();
    phone.tap(now + 1_000, &typed(TypedInto::Note, "robins on the rods")).unwrap();
    assert!(labels(&mut phone)[1].contains("Mill pool"), "a snapshot that no longer fits is rebuilt");
}

#[test]
fn the_light_is_computed_for_the_peg_or_for_a_place_that_was_chosen() {
    let mut phone = started();
    let guess = phone.leaf(Which::Book, MIN, "light");
    assert!(guess.notes[0].starts_with("The peg has no place yet") && guess.keys.is_empty());
    phone.tap(MIN, &book(BookTap::Latitude { e7: 521_000_000 })).unwrap();
    phone.tap(2 * MIN, &book(BookTap::Longitude { e7: -18_000_000 })).unwrap();
    let light = phone.leaf(Which::Book, 3 * MIN, "light");
    assert_eq!((light.lines.len(), light.keys[0].tag.as_str()), (5, "keep_place-"));
    phone.tap(4 * MIN, &book(BookTap::KeepPlace)).unwrap();
    assert_eq!(phone.app().session().unwrap().peg_place.map(|p| p.lat_e7), Some(521_000_000));
    assert!(phone.leaf(Which::Book, 5 * MIN, "light").notes[0].starts_with("For a flat horizon"));
    for tap in [BookTap::Latitude { e7: 900_000_001 }, BookTap::Longitude { e7: i64::MIN }] {
        assert_eq!(phone.tap(6 * MIN, &book(tap)).unwrap_err().kind(), ErrorKind::BadInput);
    }
    phone.tap(7 * MIN, &Action::EndSession).unwrap();
    assert!(matches!(
        phone.tap(8 * MIN, &book(BookTap::KeepPlace)),
        Err(AppError::NotNow(NotNow::NoSession))
    ));
}

#[test]
fn the_last_set_up_is_copied_and_one_undo_removes_it() {
    let mut phone = Phone::new();
    phone.type_in(0, TypedInto::Water, "Mill pool");
    phone.type_in(500, TypedInto::Peg, "14");
    phone.tap(1_000, &START).unwrap();
    let rig = Rig { bait: Some("bread".into()), popup_mm: Some(457), ..Rig::default() };
    let spot =
        Spot { mark: None, bearing_cdeg: 300, reach: Reach::Yards { hundredths: 3_800 }, clipped: true };
    phone.tap(2_000, &Action::SetMark { name: "Gate".into(), bearing_cdeg: 300 }).unwrap();
    phone.tap(3_000, &Action::SetRig { rod: 1, rig: rig.clone() }).unwrap();
    phone.tap(4_000, &Action::SetSpot { rod: 1, spot }).unwrap();
    phone.tap(5_000, &Action::EndSession).unwrap();

    phone.set_up(DAY, SetupTap::CopyLast);
    phone.open();
    let copy =
        |phone: &mut Phone| phone.setup(DAY).rows.into_iter().find(|row| row.tag == "copy").unwrap().value;
    assert_eq!(copy(&mut phone), "14 Nov 2023, Mill pool, Peg\u{a0}14", "over a restart");
    phone.tap(DAY + 1_000, &START).unwrap();
    let bank = phone.bank(DAY + 2_000);
    assert_eq!(
        (bank.rig.as_str(), bank.spot.as_str()),
        ("bread, 18 in pop-up", "Gate, 38 yd (34.7 m), clipped up")
    );
    phone.tap(DAY + 3_000, &Action::Undo).unwrap();
    assert!(phone.app().session().is_some_and(|s| !s.is_open()), "one undo takes all of it back");
    phone.tap(DAY + 4_000, &Action::Redo).unwrap();
    assert_eq!(phone.app().session().unwrap().rods[0].rig, rig);
    phone.tap(DAY + 5_000, &Action::EndSession).unwrap();

    phone.set_up(2 * DAY, SetupTap::CopyLast);
    phone.set_up(2 * DAY + 1_000, SetupTap::DrawDigit { digit: 7 });
    phone.tap(2 * DAY + 2_000, &START).unwrap();
    let session = phone.app().session().unwrap();
    assert_eq!(
        (session.marks.len(), session.rods[0].rig == rig, session.rods[0].spot.is_some()),
        (0, true, false)
    );
    assert_eq!(copy(&mut phone), "no", "used up");
}

#[test]
fn the_pack_list_follows_the_plan_and_remembers_what_is_packed() {
    let mut phone = started();
    let rig = Rig { bait: Some("bread".into()), lead_mg: Some(28_500), ..Rig::default() };
    phone.tap(1_000, &Action::SetRig { rod: 1, rig }).unwrap();
    phone.tap(2_000, &Action::EndSession).unwrap();
    phone.bench(3_000, BenchTap::Wanted { count: 6 }).unwrap();
    let pack = |phone: &mut Phone| phone.setup(DAY).rows.into_iter().find(|row| row.tag == "pack").unwrap();
    let labels: Vec<String> = pack(&mut phone).choices.into_iter().map(|c| c.label).collect();
    for wanted in
        ["1 rod", "6 × 36 in, 0.12 mm, size\u{a0}16", "2 × 28.5 g lead", "bread", "a light", "landing net"]
    {
        assert!(labels.iter().any(|label| label == wanted), "{wanted}: {labels:?}");
    }
    let net = pack(&mut phone).choices.into_iter().find(|c| c.label == "landing net").unwrap();
    phone.tap(4_000, &net.action).unwrap();
    phone.open();
    assert!(pack(&mut phone).value.starts_with("1 of "));
    phone.tap(DAY, &START).unwrap();
    assert!(pack(&mut phone).value.starts_with("0 of "), "a new session is packed from the beginning");
}

/// A partner's kit is imported with everything else and is not mixed into the own one; on a new phone the
/// imported kit is used.
#[test]
fn kits_stay_apart_and_move_to_a_new_phone() {
    let tied = |count| Action::Bench { tap: BenchTap::Tied { count } };
    let phone = |opens| {
        let mut phone = Phone { dir: TempDir::new().unwrap(), app: None, boots: 0, opens };
        phone.open();
        phone
    };
    let (mut mine, mut theirs, mut fresh) = (phone(50), phone(70), phone(90));
    mine.tap(0, &tied(3)).unwrap();
    let all = Action::Files { tap: FilesTap::Span { span: Span::Everything } };
    mine.tap(1_000, &all).unwrap();
    let sent = mine.app().send(&at(2_000), &mut |_| ControlFlow::Continue(())).unwrap();
    assert_ne!(mine.app().journal.store().device(), theirs.app().journal.store().device());
    let taken = |phone: &mut Phone, ms| {
        phone
            .app()
            .take_in(Path::new(&sent.path), "a friend", &at(ms), &mut |_| ControlFlow::Continue(()))
            .unwrap()
    };
    taken(&mut fresh, 3_000);
    let have = |phone: &mut Phone| phone.leaf(Which::Bench, 9_000, "hooklengths").lines[0].value.clone();
    assert_eq!(have(&mut fresh), "3 tied", "a new phone goes on with the old one's kit");

    theirs.tap(3_000, &tied(5)).unwrap();
    taken(&mut theirs, 4_000);
    assert_eq!(have(&mut theirs), "5 tied", "a partner's three are not mixed in");
    let kit = kit_of(mine.app().journal.store().device());
    theirs.bench(5_000, BenchTap::UseKit { kit }).unwrap();
    assert_eq!(have(&mut theirs), "3 tied", "and can be looked at");
    let nobody = BenchTap::UseKit { kit: Uuid::from_u128(5) };
    assert_eq!(theirs.bench(6_000, nobody).unwrap_err().kind(), ErrorKind::BadInput);
}

/// The old phone's kit was taken over and written in: neither a plan nor a kit written later takes its place.
#[test]
fn the_kit_in_use_stays_over_a_plan_a_restart_and_a_partners_file() {
    let tied = |count| Action::Bench { tap: BenchTap::Tied { count } };
    let all = Action::Files { tap: FilesTap::Span { span: Span::Everything } };
    let sent = |phone: &mut Phone, ms| {
        phone.tap(ms, &all).unwrap();
        phone.app().send(&at(ms + 1_000), &mut |_| ControlFlow::Continue(())).unwrap().path
    };
    let taken = |phone: &mut Phone, path: &str, ms| {
        phone
            .app()
            .take_in(Path::new(path), "a friend", &at(ms), &mut |_| ControlFlow::Continue(()))
            .unwrap();
    };
    let have = |phone: &mut Phone| phone.leaf(Which::Bench, 90_000, "hooklengths").lines[0].value.clone();
    let (mut old, mut theirs) = (Phone::with_ids_from(50), Phone::with_ids_from(70));
    old.tap(0, &tied(3)).unwrap();
    let of_old = sent(&mut old, 1_000);

    let mut planning = Phone::with_ids_from(90);
    taken(&mut planning, &of_old, 3_000);
    let leave = restwater_screen::PlanTap::Leave { minutes: Some(20) };
    planning.tap(5_000, &Action::Plan { tap: leave }).unwrap();
    planning.open();
    assert_eq!(have(&mut planning), "3 tied", "a plan is no wallet");

    let mut tying = Phone::with_ids_from(110);
    taken(&mut tying, &of_old, 3_000);
    tying.tap(5_000, &tied(5)).unwrap();
    theirs.tap(16_000, &tied(7)).unwrap();
    let of_theirs = sent(&mut theirs, 17_000);
    taken(&mut tying, &of_theirs, 19_000);
    assert_eq!(have(&mut tying), "8 tied", "five more than the three taken over");

    // Who has planned and read cautions beside a partner's wallet still goes on with the own one when it comes.
    let mut newcomer = Phone::with_ids_from(130);
    taken(&mut newcomer, &of_theirs, 20_000);
    newcomer
        .tap(5_000, &Action::Plan { tap: restwater_screen::PlanTap::Leave { minutes: Some(20) } })
        .unwrap();
    old.tap(22_000, &tied(1)).unwrap();
    let of_old_later = sent(&mut old, 23_000);
    taken(&mut newcomer, &of_old_later, 25_000);
    assert_eq!(have(&mut newcomer), "4 tied", "the wallet that was written in last");
}

/// A cast of Saturday whose end nobody saw is corrected on Sunday, with that day opened in the Book.
#[test]
fn a_day_opened_in_the_book_is_the_one_that_is_corrected() {
    let mut phone = Phone::new();
    for (minute, action) in [(0, START), (1, CAST), (31, CAST), (46, WOUND_IN), (50, Action::EndSession)] {
        phone.tap(minute * MIN, &action).unwrap();
    }
    let first = phone.app().session().unwrap().id;
    phone.boots = 1;
    phone.tap(DAY, &START).unwrap();
    phone.open();
    let says = |phone: &mut Phone, ms| phone.leaf(Which::Book, ms, "sessions").says;
    assert!(says(&mut phone, DAY + MIN).contains("To mend: 1 entry"));
    let mend = |phone: &mut Phone, ms| match phone.app().screen(Which::Mend, &at(ms)).unwrap() {
        Screen::Mend(mend) => mend,
        other => panic!("{other:?}"),
    };
    assert_eq!(mend(&mut phone, DAY + MIN).lines, []);
    phone.tap(DAY + 2 * MIN, &book(BookTap::Open { session: first })).unwrap();
    let view = mend(&mut phone, DAY + 3 * MIN);
    assert_eq!(view.title, "To mend: 14 Nov 2023");
    assert_eq!((view.says.as_str(), view.lines.len()), ("1 entry to look at.", 1));
    let op = view.lines[0].op;
    phone.tap(DAY + 4 * MIN, &view.lines[0].open).unwrap();
    let rows = mend(&mut phone, DAY + 4 * MIN).open.unwrap().rows;
    let after = rows.iter().find(|row| row.tag == "after").unwrap();
    assert_eq!(after.choices.last().unwrap().tag, "30", "up to the next splash of that day");
    let mended = |tap| Action::Mend { op, tap };
    phone.tap(DAY + 5 * MIN, &mended(MendTap::End { end: EndSaid::Lost })).unwrap();
    phone.tap(DAY + 6 * MIN, &mended(MendTap::After { minutes: 14 })).unwrap();
    assert_eq!(mend(&mut phone, DAY + 7 * MIN).lines, []);
    assert!(!says(&mut phone, DAY + 7 * MIN).contains("To mend"));
    assert!(
        phone.leaf(Which::Book, DAY + 7 * MIN, "session").lines.iter().any(|l| l.value == "14 min, lost")
    );
    // Each tap is undone on the screen where the angler is; an entry can be confirmed as well as corrected.
    phone.tap(DAY + 8 * MIN, &Action::Undo).unwrap();
    phone.tap(DAY + 9 * MIN, &Action::Undo).unwrap();
    assert!(says(&mut phone, DAY + 9 * MIN).contains("To mend: 1 entry"));
    phone.tap(DAY + 10 * MIN, &mended(MendTap::Confirm)).unwrap();
    assert!(!says(&mut phone, DAY + 11 * MIN).contains("To mend"));
    phone.tap(DAY + 12 * MIN, &book(BookTap::Close)).unwrap();
    assert!(matches!(phone.tap(DAY + 13 * MIN, &mended(MendTap::Confirm)), Err(AppError::NoSuchEntry)));
    assert_eq!(phone.app().session().unwrap().casts.len(), 0, "today is as it was");
}

/// A break of Saturday that is added later has the place that it would have if it had been logged on Saturday, and shows
/// Saturday's time.
#[test]
fn a_break_added_to_a_day_opened_in_the_book_is_on_that_day() {
    for days in [1, 20, 400] {
        a_break_added_later(days);
    }
}

fn a_break_added_later(days: i64) {
    let later = days * DAY;
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    phone.look();
    for start in [0, 15, 30, 45, 110] {
        phone.tap(start * MIN, &CAST).unwrap();
        phone.tap((start + 13) * MIN, &WOUND_IN).unwrap();
    }
    phone.tap(125 * MIN, &Action::EndSession).unwrap();
    let first = phone.app().session().unwrap().clone();
    let op = first.doubts[0].op;
    phone.boots = 1;
    phone.tap(later, &START).unwrap();
    phone.tap(later + MIN, &book(BookTap::Open { session: first.id })).unwrap();
    phone.tap(later + 2 * MIN, &Action::Mend { op, tap: MendTap::WasAway }).unwrap();
    let ops = phone.app().journal.store().ops_of(first.id).unwrap();
    let mended = restwater_session::fold(first.id, &ops);
    let (from, to) = (&mended.breaks[0].from, mended.breaks[0].to.as_ref().unwrap());
    assert_eq!((from.at_ms / MIN, to.at_ms / MIN), (58, 108), "{days} days later");
    let shown = |stamp: &restwater_session::Stamp| (stamp.shown.wall_ms - at(0).wall_ms) / MIN;
    assert_eq!((shown(from), shown(to)), (58, 108), "{days} days later");
    assert_eq!(mended.doubts, []);
}
