//! A club's start for advice, through the whole app.

use super::*;
use restwater_exchange::Progress;
use restwater_log::sha256_hex;
use restwater_screen::{FilesTap, FilesView, FormChoice, IncomingView, Span};
use restwater_waits::Shapes;
use std::fmt::Write as _;
use std::fs;
use std::ops::ControlFlow;
use std::path::{Path, PathBuf};

const LEAVE: Action = Action::Files { tap: FilesTap::LeaveClub };
const HEADER: &str = "\u{1e}{\"format\":\"restwater-club\",\"version\":1}\n";

fn go(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

/// Weights of a club all of whose fish bite in the first minutes or late, by the names of the kinds.
fn weights(of: fn(&str) -> bool) -> String {
    let shapes = Shapes::usual();
    let count = shapes.kind_names().iter().filter(|name| of(name)).count() as f64;
    let each: Vec<String> = shapes
        .kind_names()
        .iter()
        .map(|name| if of(name) { format!("{:.6}", 1.0 / count) } else { "0".into() })
        .collect();
    format!("[{}]", each.join(","))
}

fn early(name: &str) -> bool {
    name.starts_with("even 2.5-4") || name.starts_with("bunch 2.5-4")
}

fn late(name: &str) -> bool {
    name.starts_with("bunch 25-35")
}

/// To which days, as the file says it, and which kinds have weight.
type Fitted<'a> = (&'a str, fn(&str) -> bool);

/// The file of a club with weights of all days, and others for some.
pub(super) fn file(others: &[Fitted]) -> String {
    let mut club = format!(
        "{{\"anglers\":52,\"days\":611,\"fitted\":[{{\"anglers\":52,\"days\":611,\"of\":\"all\",\"weights\":{}}}",
        weights(early)
    );
    for (of, weighs) in others {
        let _ = write!(club, ",{{\"anglers\":7,\"days\":80,{of},\"weights\":{}}}", weights(*weighs));
    }
    club += "],\"shapes\":1,\"waters\":9}";
    let hash = sha256_hex(club.as_bytes());
    format!("{HEADER}\u{1e}{{\"club\":{club},\"sha256\":\"{hash}\"}}\n")
}

impl Phone {
    pub(super) fn club_file(&self, text: &str) -> PathBuf {
        let path = self.dir.path().join("club.restwater-club.json-seq");
        fs::write(&path, text).unwrap();
        path
    }

    fn take_club(&mut self, path: &Path, minute: i64) -> Result<IncomingView, AppError> {
        self.app().take_in(path, " Alder AC ", &at(minute * MIN), &mut go)
    }

    fn files_now(&mut self, minute: i64) -> FilesView {
        match self.app().screen(Which::Files, &at(minute * MIN)).unwrap() {
            Screen::Files(files) => files,
            other => panic!("{other:?}"),
        }
    }

    /// What the Bank says first, and the page of figures of the Waits screen.
    fn advised(&mut self, minute: i64) -> (String, Vec<String>) {
        let headline = self.bank(minute * MIN).advice.headline;
        let waits = match self.app().screen(Which::Waits, &at(minute * MIN)).unwrap() {
            Screen::Waits(waits) => waits,
            other => panic!("{other:?}"),
        };
        (headline, waits.figures.map_or(Vec::new(), |page| page.lines))
    }
}

/// A day on the Mill pool with one cast that was wound in.
pub(super) fn one_cast() -> Phone {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(6 * MIN, &WOUND_IN).unwrap();
    phone
}

#[test]
fn the_advice_begins_with_the_club_until_it_is_undone_and_again_after_redo() {
    let mut phone = one_cast();
    let before = phone.advised(8);
    let path = phone.club_file(&file(&[]));
    let seen = phone.app().look_into(&path, &at(8 * MIN), &mut go).unwrap();
    assert!(seen.brings && seen.whole);
    assert_eq!(seen.lines[1], "Advice starts from 52 anglers' 611 days on 9 waters.");
    assert_eq!(phone.advised(8), before, "looking changes nothing");

    let took = phone.take_club(&path, 8).unwrap();
    assert!(took.lines.last().unwrap().contains("LEAVE THE CLUB"), "{took:?}");
    let with = phone.advised(9);
    assert_ne!(with.0, before.0);
    let said = with.1.last().unwrap();
    assert!(said.starts_with("Where advice starts. Advice starts from 52 anglers' 611 days"), "{said}");
    assert!(before.1.iter().all(|line| !line.contains("52 anglers")));

    phone.tap(10 * MIN, &Action::Undo).unwrap();
    assert_eq!(phone.advised(9), before);
    phone.tap(11 * MIN, &Action::Redo).unwrap();
    assert_eq!(phone.advised(9), with);
    phone.open();
    assert_eq!(phone.advised(9), with, "after a restart");
    phone.tap(12 * MIN, &Action::Undo).unwrap();
    phone.open();
    assert_eq!(phone.advised(9), before, "after another");
}

/// Under three bites the Bank says where its minutes come from.
#[test]
fn the_bank_says_that_its_minutes_come_from_the_club() {
    let mut phone = one_cast();
    let said = |phone: &mut Phone, minute: i64| phone.bank(minute * MIN).advice.more.join(" ");
    let general = "Until three bites have come, the minutes rest mostly on waters in general.";
    let of_club = "Until three bites have come, the minutes rest mostly on the club's days.";
    let in_part = "the minutes rest mostly on waters in general, and partly on the club's days.";
    let which = |said: String| [general, of_club, in_part].map(|line| said.contains(line));
    assert_eq!(which(said(&mut phone, 8)), [true, false, false]);
    let path = phone.club_file(&file(&[("\"of\":\"water\",\"water\":\"Mill pool\"", early)]));
    phone.take_club(&path, 8).unwrap();
    assert_eq!(which(said(&mut phone, 9)), [false, true, false]);
    // Another club doesn't know this water.
    let path = phone.club_file(&file(&[]));
    phone.take_club(&path, 9).unwrap();
    assert_eq!(which(said(&mut phone, 10)), [false, false, true]);
    phone.tap(10 * MIN, &LEAVE).unwrap();
    assert_eq!(which(said(&mut phone, 11)), [true, false, false]);
}

#[test]
fn the_book_begins_with_the_club_too() {
    let mut phone = started();
    for minute in [1, 20, 40] {
        phone.tap(minute * MIN, &CAST).unwrap();
        phone.tap((minute + 3) * MIN, &BITE).unwrap();
        phone.tap((minute + 4) * MIN, &LANDED).unwrap();
    }
    phone.tap(60 * MIN, &Action::EndSession).unwrap();
    let said =
        |phone: &mut Phone, minute: i64| match phone.app().screen(Which::Book, &at(minute * MIN)).unwrap() {
            Screen::Book(book) => {
                format!("{:?}", book.leaves.iter().find(|leaf| leaf.id == "next").unwrap().lines)
            }
            other => panic!("{other:?}"),
        };
    let before = said(&mut phone, 61);
    let path = phone.club_file(&file(&[]));
    phone.take_club(&path, 61).unwrap();
    let with = said(&mut phone, 61);
    phone.tap(62 * MIN, &Action::Undo).unwrap();
    assert_eq!(said(&mut phone, 61), before);
    assert_ne!(before, with);
}

#[test]
fn the_club_is_shown_on_files_and_left_by_a_key() {
    let mut phone = one_cast();
    let before = phone.advised(8);
    assert!(phone.files_now(8).rows.iter().all(|row| row.tag != "club"));
    assert_eq!(phone.tap(8 * MIN, &LEAVE).unwrap_err().kind(), ErrorKind::NotNow);
    let path = phone.club_file(&file(&[]));
    phone.take_club(&path, 8).unwrap();
    let with = phone.advised(9);
    let row = phone.files_now(9).rows.into_iter().find(|row| row.tag == "club").unwrap();
    assert_eq!((row.value.as_str(), row.choices[0].action.clone()), ("Alder AC", LEAVE));
    assert_eq!(row.source, "Advice starts from 52 anglers' 611 days on 9 waters.");

    let update = phone.tap(10 * MIN, &LEAVE).unwrap();
    assert!(update.changed);
    assert_eq!(phone.advised(9), before);
    assert!(phone.files_now(10).rows.iter().all(|row| row.tag != "club"));
    phone.tap(11 * MIN, &Action::Undo).unwrap();
    assert_eq!(phone.advised(9), with, "leaving is taken back");
}

#[test]
fn the_same_file_again_changes_nothing_and_another_replaces_it() {
    let mut phone = one_cast();
    let path = phone.club_file(&file(&[]));
    phone.take_club(&path, 8).unwrap();
    let first = phone.advised(9);
    let version = phone.app().journal.version();
    let again = phone.app().look_into(&path, &at(9 * MIN), &mut go).unwrap();
    assert!(!again.brings && again.lines.iter().any(|line| line == "It is in use already."));
    phone.take_club(&path, 9).unwrap();
    assert_eq!(phone.app().journal.version(), version);
    let other = phone.club_file(&file(&[("\"of\":\"water\",\"water\":\"Mill pool\"", late)]));
    let replaces = phone.app().look_into(&other, &at(9 * MIN), &mut go).unwrap();
    assert!(replaces.lines.iter().any(|line| line == "It replaces the club's start that is in use now."));
    let taken = phone.take_club(&other, 9).unwrap();
    let back = "UNDO takes it back. To go on without a club, tap LEAVE THE CLUB under Files.";
    assert!(taken.lines.iter().any(|line| line == back), "leaving does not bring the first one back");
    assert_ne!(phone.advised(9), first);
    phone.tap(10 * MIN, &Action::Undo).unwrap();
    assert_eq!(phone.advised(9), first, "the one before is in use again");
}

#[test]
fn the_weights_of_the_own_water_count_before_those_of_the_month() {
    let of_month = ("\"of\":\"month\",\"month\":11", late as fn(&str) -> bool);
    let of_water = ("\"of\":\"water\",\"water\":\"Mill pool\"", early as fn(&str) -> bool);
    let elsewhere = ("\"of\":\"water\",\"water\":\"Alder Pool\"", late as fn(&str) -> bool);
    let in_june = ("\"of\":\"month\",\"month\":6", late as fn(&str) -> bool);
    let here = |others: &[Fitted]| {
        let mut phone = one_cast();
        let path = phone.club_file(&file(others));
        phone.take_club(&path, 8).unwrap();
        let (headline, figures) = phone.advised(9);
        (headline, figures.last().unwrap().clone())
    };
    let all = here(&[elsewhere, in_june]);
    assert!(all.1.contains("comes from all of them, since no water,"), "{}", all.1);
    let month = here(&[of_month, elsewhere]);
    assert!(month.1.contains("those in Nov"), "{}", month.1);
    assert_ne!(month.0, all.0);
    let water = here(&[of_month, of_water]);
    assert!(water.1.contains("those on Mill pool"), "{}", water.1);
    assert_ne!(water.0, month.0);
}

/// The same weights, once fitted to the days on this water and once to those on all waters of the club.
#[test]
fn a_club_that_does_not_know_the_water_leaves_more_of_the_start_as_it_is() {
    let advised = |others: &[Fitted]| {
        let mut phone = one_cast();
        let before = minutes(&phone.advised(8).0);
        let path = phone.club_file(&file(others));
        phone.take_club(&path, 8).unwrap();
        let (headline, figures) = phone.advised(9);
        (before, minutes(&headline), figures.last().unwrap().clone())
    };
    let (before, all, of_all) = advised(&[("\"of\":\"water\",\"water\":\"Alder Pool\"", early)]);
    assert!(of_all.contains("70\u{a0}% of the start stays as it is without a club."), "{of_all}");
    let (_, water, of_water) = advised(&[("\"of\":\"water\",\"water\":\"Mill pool\"", early)]);
    assert!(of_water.contains("30\u{a0}% of the start stays as it is without a club."), "{of_water}");
    assert!(water < all && all <= before, "{water} {all} {before}");
}

/// The minutes at the end of a headline.
fn minutes(headline: &str) -> u32 {
    headline.rsplit(|c: char| !c.is_ascii_digit()).find_map(|digits| digits.parse().ok()).unwrap()
}

#[test]
fn a_partner_who_imports_the_log_does_not_get_the_club() {
    let mut ours = one_cast();
    let path = ours.club_file(&file(&[]));
    ours.take_club(&path, 8).unwrap();
    ours.tap(9 * MIN, &Action::Files { tap: FilesTap::Span { span: Span::Everything } }).unwrap();
    let sent = ours.app().send(&at(9 * MIN), &mut go).unwrap();
    assert!(fs::read_to_string(&sent.path).unwrap().contains("\"club_taken\""));

    let mut theirs = Phone::with_ids_from(50);
    theirs.tap(0, &START).unwrap();
    theirs.tap(MIN, &CAST).unwrap();
    theirs.tap(6 * MIN, &WOUND_IN).unwrap();
    let before = theirs.advised(8);
    theirs.app().take_in(Path::new(&sent.path), "a friend", &at(9 * MIN), &mut go).unwrap();
    assert_eq!(theirs.advised(8), before);
    assert!(theirs.files_now(9).rows.iter().all(|row| row.tag != "club"));
    theirs.open();
    assert_eq!(theirs.advised(8), before);
}

#[test]
fn a_damaged_file_changes_nothing_and_says_why() {
    let mut phone = one_cast();
    let before = phone.advised(8);
    let whole = file(&[]);
    for (text, kind, says) in [
        (whole.replacen(",0,", ",1,", 1), ErrorKind::BadFile, "damaged"),
        (whole[..whole.len() / 2].to_owned(), ErrorKind::BadFile, "damaged"),
        (whole.replace("\"version\":1", "\"version\":2"), ErrorKind::Newer, "newer version"),
    ] {
        let path = phone.club_file(&text);
        for error in [
            phone.app().look_into(&path, &at(8 * MIN), &mut go).unwrap_err(),
            phone.take_club(&path, 8).unwrap_err(),
        ] {
            assert_eq!(error.kind(), kind);
            let message = phone.app().message(&error);
            assert!(message.contains(says), "{message}");
        }
        assert_eq!(phone.advised(8), before);
    }
}

#[test]
fn a_table_of_days_for_a_club_has_a_row_for_each_kind() {
    let mut phone = one_cast();
    phone.tap(8 * MIN, &Action::Files { tap: FilesTap::Form { form: FormChoice::Club } }).unwrap();
    let sent = phone.app().send(&at(8 * MIN), &mut go).unwrap();
    assert!(sent.name.starts_with("restwater-2023-11-14-club-days-"), "{}", sent.name);
    assert_eq!(sent.says, format!("1 day: {}", sent.name));
    let text = fs::read_to_string(&sent.path).unwrap();
    let shapes = Shapes::usual();
    assert_eq!(text.lines().count(), 1 + shapes.kind_names().len());
    assert!(text.lines().skip(1).all(|line| line.contains(",Mill pool,11,,1,")), "{text}");
}
