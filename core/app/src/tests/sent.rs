//! The names of files that are sent, and which days are in them.

use super::clock_steps::{STEPS, stepped};
use super::whose::go;
use super::*;
use restwater_log::kit_of;
use restwater_screen::{BookTap, FilesTap, FormChoice, Span};
use std::fs;

const DAY: i64 = 24 * 60 * MIN;

impl Phone {
    /// Sends a form of a span at a moment of any clock: the name of the file and its text.
    fn sent_at(&mut self, now: &Moment, form: FormChoice, span: Span) -> (String, String) {
        for tap in [FilesTap::Form { form }, FilesTap::Span { span }] {
            self.app().act(&Action::Files { tap }, now).unwrap();
        }
        let sent = self.app().send(now, &mut go).unwrap();
        (sent.name, fs::read_to_string(&sent.path).unwrap())
    }

    fn form_sent(&mut self, ms: i64, form: FormChoice, span: Span) -> (String, String) {
        self.sent_at(&at(ms), form, span)
    }
}

/// A club puts the tables of its anglers into one folder: those of one day must not have one name.
#[test]
fn the_tables_of_two_phones_have_two_names_and_say_which_copy_is_the_later() {
    let (mut mine, mut theirs) = (Phone::with_ids_from(40), Phone::with_ids_from(500));
    mine.day_with(-DAY, "22", 2);
    theirs.day_with(-DAY, "23", 2);
    let forms = [
        (FormChoice::Casts, "casts"),
        (FormChoice::Fish, "fish"),
        (FormChoice::Sessions, "sessions"),
        (FormChoice::Club, "club-days"),
    ];
    for (form, table) in forms {
        for span in [Span::This, Span::Everything] {
            let names = [&mut mine, &mut theirs].map(|phone| phone.form_sent(MIN, form, span).0);
            assert_ne!(names[0], names[1]);
            assert!(names.iter().all(|name| name.contains(&format!("-{table}-"))), "{names:?}");
        }
    }
    let entries = |phone: &mut Phone, ms| -> u64 {
        let (_, text) = phone.form_sent(ms, FormChoice::Sessions, Span::This);
        let mut lines = text.lines().map(|line| line.split(',').collect::<Vec<_>>());
        let at = lines.next().unwrap().iter().position(|name| *name == "entries").unwrap();
        lines.next().unwrap()[at].parse().unwrap()
    };
    let before = entries(&mut mine, 2 * MIN);
    mine.tap(3 * MIN, &Action::Undo).unwrap();
    assert_eq!(entries(&mut mine, 4 * MIN), before + 1, "what is undone is in it too");
}

/// Saturday's report that is made on Sunday is Saturday's, whatever span another form was given.
#[test]
fn a_report_is_named_for_the_day_of_its_session() {
    let mut phone = Phone::with_ids_from(40);
    phone.day_with(-2 * DAY, "22", 1);
    for span in [Span::This, Span::Days(7), Span::Everything] {
        assert_eq!(phone.form_sent(0, FormChoice::Report, span).0, "restwater-2023-11-12-report.html");
    }
}

/// The kit began with the phone's first entry, and is not part of any day.
#[test]
fn the_entries_of_some_days_leave_the_kit_out() {
    let mut phone = Phone::with_ids_from(40);
    phone.bench(-5 * MIN, BenchTap::Tied { count: 8 }).unwrap();
    phone.day_with(-4 * MIN, "22", 1);
    let kit = kit_of(phone.app().journal.store().device()).to_string();
    let now = 60 * MIN;
    let (_, some) = phone.form_sent(now, FormChoice::Entries, Span::Days(7));
    assert!(some.contains("session_started") && !some.contains(&kit));
    assert!(phone.form_sent(now, FormChoice::Entries, Span::Everything).1.contains(&kit));
}

/// Where the clocks went back within the week, its first day began an hour earlier than by today's clock; where they went
/// forward, an hour later.
#[test]
fn the_first_of_some_days_is_a_whole_day_by_its_own_clock() {
    // 14 November 2023, 00:30 by its own clock, and six days later.
    let midnight = 1_699_920_000_000 - at(0).wall_ms;
    for (then_min, now_min, local_min, sent) in [(60, 0, 30, true), (60, 0, -30, false), (0, 60, -30, false)]
    {
        let began = Moment { offset_min: then_min, ..at(midnight + (local_min - i64::from(then_min)) * MIN) };
        let mut phone = Phone::with_ids_from(40);
        phone.app().act(&START, &began).unwrap();
        let ended =
            Moment { offset_min: then_min, ..at(midnight + (local_min + 10 - i64::from(then_min)) * MIN) };
        phone.app().act(&Action::EndSession, &ended).unwrap();
        let now = Moment { offset_min: now_min, ..at(midnight + 6 * DAY + 12 * 60 * MIN) };
        for form in [FormChoice::Entries, FormChoice::Sessions] {
            let text = phone.sent_at(&now, form, Span::Days(7)).1;
            let has = text.contains(&phone.app().session().unwrap().id.to_string());
            assert_eq!(has, sent, "{form:?}: {then_min} {now_min} {local_min}");
        }
    }
}

/// A backup that was made before the clocks went back shows the time that the phone showed then, also after a restart.
#[test]
fn a_backup_shows_the_time_of_day_at_which_it_was_made() {
    let mut phone = started();
    let summer = Moment { offset_min: 60, ..at(MIN) };
    let made = phone.app().back_up(&summer, &mut go).unwrap().unwrap();
    phone.open();
    phone.tap(DAY, &CAST).unwrap();
    phone.app().back_up(&at(DAY), &mut go).unwrap().unwrap();
    let backups = phone.files(DAY + MIN).backups;
    let says: Vec<&str> = backups.iter().map(|backup| backup.says.as_str()).collect();
    assert_eq!(says, ["15 Nov 2023 22:13", "14 Nov 2023 23:14"]);
    assert!(made.says.contains(says[1]), "as when it was made: {}", made.says);
}

/// The phone was started with a flat battery and without a network; the clock was right again before the first cast ended.
#[test]
fn a_day_begun_under_a_clock_reset_to_1970_is_in_the_file_of_its_day() {
    let (_, reset) = STEPS[0];
    let mut phone = Phone::with_ids_from(40);
    phone.app().act(&START, &stepped(reset, 0)).unwrap();
    phone.app().act(&CAST, &stepped(reset, MIN)).unwrap();
    phone.tap(20 * MIN, &WOUND_IN).unwrap();
    phone.tap(30 * MIN, &Action::EndSession).unwrap();
    let id = phone.app().session().unwrap().id.to_string();
    for form in [FormChoice::Entries, FormChoice::Sessions] {
        let (_, text) = phone.sent_at(&at(40 * MIN), form, Span::Days(1));
        assert!(text.contains(&id), "{form:?}");
    }
    let (name, report) = phone.sent_at(&at(50 * MIN), FormChoice::Report, Span::This);
    assert!(name.contains("2023-11-14"), "{name}");
    assert!(!report.contains("1970"), "{report}");
    let session = phone.app().session().unwrap().id;
    phone.tap(51 * MIN, &Action::Book { tap: BookTap::Open { session } }).unwrap();
    let said = format!("{:?}", phone.book_leaf(52 * MIN, "session"));
    assert!(said.contains("14 Nov") && !said.contains("1970"), "{said}");
}

/// The tests begin at 22:13.
#[test]
fn a_session_over_midnight_is_sent_on_both_its_days() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(90 * MIN, &WOUND_IN).unwrap();
    let has_it = |phone: &mut Phone, ms: i64| {
        phone.form_sent(ms, FormChoice::Entries, Span::Days(1)).1.contains("session_started")
    };
    assert!(has_it(&mut phone, 120 * MIN), "while it is open");
    phone.tap(130 * MIN, &Action::EndSession).unwrap();
    assert!(has_it(&mut phone, 131 * MIN));
    phone.open();
    assert!(has_it(&mut phone, 132 * MIN), "after a restart");
    assert!(!has_it(&mut phone, 131 * MIN + DAY), "the day after");
}
