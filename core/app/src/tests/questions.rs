//! Questions asked over days, tap by tap.

use super::learning::screens;
use super::*;
use restwater_exchange::Progress;
use restwater_log::Rig;
use restwater_screen::{ChangeView, FilesTap, Leaf, LeafLine, Span, Whose};
use std::ops::ControlFlow;
use std::path::PathBuf;

const DAY: i64 = 24 * 60 * MIN;
/// Pink and white in turn, nine switches.
const PLAN: &str = "pwwppwwppwwppwwppw";

fn go(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

impl Phone {
    fn tap_at(&mut self, moment: &Moment, action: &Action) {
        self.app().act(action, moment).unwrap();
    }

    /// A day that isn't ended: pink gets its bites after seven to ten minutes, white two in ten after twelve
    /// and otherwise none in fifteen. `moment` converts a minute of the day to a moment.
    fn alternates_by(&mut self, moment: &dyn Fn(i64) -> Moment, water: &str, plan: &str) -> i64 {
        let choose = |phone: &mut Self, at: &Moment, name: &str| {
            phone.tap_at(at, &tackle(TackleTap::Colour { name: name.into() }));
        };
        self.alternates_with(moment, water, plan, &choose)
    }

    /// The same, with how a colour is chosen.
    fn alternates_with(
        &mut self,
        moment: &dyn Fn(i64) -> Moment,
        water: &str,
        plan: &str,
        choose: &dyn Fn(&mut Self, &Moment, &str),
    ) -> i64 {
        self.tap_at(&moment(0), &typed(TypedInto::Water, water));
        self.tap_at(&moment(1), &START);
        let (mut now, mut on, mut whites) = (2, ' ', 0);
        for (n, letter) in (0_i64..).zip(plan.chars()) {
            if letter != on {
                let name = if letter == 'p' { "pink" } else { "white" };
                choose(self, &moment(now), name);
                on = letter;
            }
            whites += i64::from(letter == 'w');
            let bite_after = match letter {
                'p' => Some(7 + n % 4),
                _ if whites % 5 == 2 => Some(12),
                _ => None,
            };
            self.tap_at(&moment(now + 1), &CAST);
            if let Some(minutes) = bite_after {
                self.tap_at(&moment(now + 1 + minutes), &BITE);
                self.tap_at(&moment(now + 2 + minutes), &LANDED);
                now += 3 + minutes;
            } else {
                self.tap_at(&moment(now + 16), &WOUND_IN);
                now += 17;
            }
        }
        now
    }

    /// A whole day of it.
    fn alternates(&mut self, day: i64, water: &str, plan: &str) {
        let moment = self.on_day(day);
        let end = self.alternates_by(&moment, water, plan);
        self.tap_at(&moment(end), &Action::EndSession);
    }

    /// The moments of a day, since a start of the phone.
    fn on_day(&mut self, day: i64) -> impl Fn(i64) -> Moment + use<> {
        self.boots += 1;
        let boot = format!("boot-{}", self.boots);
        move |minute: i64| Moment { boot: boot.clone(), ..at(day * DAY + minute * MIN) }
    }

    /// A whole day of it with these spellings of pink and white in the log, as an earlier version wrote them.
    fn alternates_as_written(&mut self, day: i64, water: &str, [pink, white]: [&str; 2]) {
        let choose = |phone: &mut Self, at: &Moment, name: &str| {
            let session = phone.app().session().unwrap().id;
            let colour = Some(if name == "pink" { pink } else { white }.to_owned());
            let rig = Rig { colour, ..phone.app().session().unwrap().rod(1).unwrap().rig.clone() };
            phone.app().write(session, Payload::RigSet { rod: 1, rig }, None, at).unwrap();
        };
        let moment = self.on_day(day);
        let end = self.alternates_with(&moment, water, PLAN, &choose);
        self.tap_at(&moment(end), &Action::EndSession);
    }

    fn book_leaf_of(&mut self, ms: i64, id: &str) -> Option<Leaf> {
        match self.app().screen(Which::Book, &at(ms)).unwrap() {
            Screen::Book(book) => book.leaves.into_iter().find(|leaf| leaf.id == id),
            other => panic!("{other:?}"),
        }
    }

    fn asked(&mut self, ms: i64) -> Option<Vec<LeafLine>> {
        self.book_leaf_of(ms, "questions").map(|leaf| leaf.lines)
    }

    fn colour_change(&mut self, ms: i64) -> ChangeView {
        screens(self, ms).1.changes.into_iter().find(|change| change.title.starts_with("Colour")).unwrap()
    }

    fn everything(&mut self, ms: i64) -> PathBuf {
        self.tap(ms, &Action::Files { tap: FilesTap::Span { span: Span::Everything } }).unwrap();
        PathBuf::from(self.app().send(&at(ms), &mut go).unwrap().path)
    }
}

/// How many days and casts the only question has, and its verdict.
fn verdict(lines: Option<&Vec<LeafLine>>) -> String {
    lines.map_or_else(String::new, |lines| lines[1].label.clone())
}

#[test]
fn the_same_two_values_on_two_days_of_one_water_are_a_question_without_set_up() {
    let mut phone = Phone::new();
    phone.alternates(0, "Mill pool", PLAN);
    assert_eq!(phone.asked(DAY / 2), None, "one day is no question over days");
    assert!(!phone.colour_change(DAY / 2).says.contains("Over"));
    phone.alternates(1, "Mill pool", PLAN);
    let change = phone.colour_change(2 * DAY);
    let over = "Over 2 sessions, 36 casts: pink clearly better in these sessions.";
    assert!(change.says.ends_with(over), "{}", change.says);
    assert!(
        change.reasons[0].starts_with("Over these sessions, of 100 questions that look like this, about "),
        "{:?}",
        change.reasons
    );
    let lines = phone.asked(2 * DAY).unwrap();
    assert_eq!(lines[0].label, "Colour: pink or white, Mill pool");
    assert!(lines[0].heads);
    assert_eq!(lines[1].label, over);
    assert_eq!(lines[1].detail, "Pink: 18 bites in 18 casts, 150 min. White: 4 bites in 18 casts, 258 min.");
    assert_eq!(lines[3].detail, "No more sessions are needed to say so.");
    assert_eq!(lines[3].label, "Next time: pink, white, white, pink, and again, on one spot with one rod.");
    // The same after a restart.
    phone.open();
    assert_eq!(phone.asked(2 * DAY).as_ref(), Some(&lines));
    assert_eq!(phone.colour_change(2 * DAY), change);
    let figures = phone.book_leaf_of(2 * DAY, "questions-figures").unwrap();
    assert!(figures.lines[0].detail.contains("read at any moment") && figures.notes[0].contains("Ville"));
    let (_, changes) = screens(&mut phone, 2 * DAY);
    assert!(changes.figures.unwrap().lines.iter().any(|line| line.contains("A stake of 1")));
    for text in [lines, figures.lines].into_iter().flatten().flat_map(|line| [line.label, line.detail]) {
        assert!(!text.contains("works"), "{text}");
    }
}

#[test]
fn another_water_a_water_without_a_name_and_days_changed_too_seldom_add_nothing() {
    let mut phone = Phone::new();
    phone.alternates(0, "Mill pool", PLAN);
    phone.alternates(1, "Long lake", PLAN);
    phone.alternates(2, "", PLAN);
    phone.alternates(3, "", PLAN);
    assert_eq!(phone.asked(4 * DAY), None);
    phone.alternates(4, "Mill pool", "ppppwwwwpp");
    let lines = phone.asked(5 * DAY).unwrap();
    assert!(lines[1].label.starts_with("Over 1 session, 18 casts: "), "{}", lines[1].label);
    assert!(lines[1].detail.ends_with("1 more session doesn't count."), "{}", lines[1].detail);
    phone.alternates(5, "Long lake", "ppww");
    phone.alternates(6, "Low pond", "ppww");
    phone.alternates(7, "Low pond", "wwpp");
    let lines = phone.asked(8 * DAY).unwrap();
    let heads: Vec<&str> = lines.iter().filter(|line| line.heads).map(|line| line.label.as_str()).collect();
    let of = |water: &str| format!("Colour: pink or white, {water}");
    assert_eq!(heads, [of("Low pond"), of("Long lake"), of("Mill pool")], "those asked last first");
    assert_eq!(
        lines[1].label,
        "Compared in 2 sessions, but changed back and forth too few times, or together with something else: can't tell yet."
    );
    assert_eq!(lines[2].detail, "How many more sessions it would take can't be said yet.");
}

/// A morning and an evening, each with its own rate: the statistics take them apart, and so do the words.
#[test]
fn two_sessions_of_one_day_are_no_two_days() {
    let mut phone = Phone::new();
    for from in [-20 * 60, -12 * 60] {
        let moment = |minute: i64| at((from + minute) * MIN);
        let end = phone.alternates_by(&moment, "Mill pool", PLAN);
        phone.tap_at(&moment(end), &Action::EndSession);
    }
    let said = verdict(phone.asked(DAY).as_ref());
    assert_eq!(said, "Over 2 sessions, 36 casts: pink clearly better in these sessions.");
}

#[test]
fn the_name_of_a_water_typed_in_another_case_is_the_same_water() {
    let mut phone = Phone::new();
    phone.alternates(0, "Mill pool", PLAN);
    phone.alternates(1, "Mill Pool", PLAN);
    let lines = phone.asked(2 * DAY).unwrap();
    assert_eq!(lines[0].label, "Colour: pink or white, Mill pool");
    assert!(lines[1].label.starts_with("Over 2 sessions, 36 casts: "), "{}", lines[1].label);
    assert!(phone.colour_change(2 * DAY).says.contains("Over 2 sessions, 36 casts"));
}

/// The line opens with capitals, and a phone in another language offers the usual names in that language.
#[test]
fn a_colour_typed_in_another_case_or_chosen_in_another_language_is_the_same_colour() {
    let typed_in_capitals = |phone: &mut Phone, at: &Moment, name: &str| {
        phone
            .tap_at(at, &typed(TypedInto::Colour { rod: 1 }, if name == "pink" { "Pink " } else { "White" }));
    };
    let in_german = |phone: &mut Phone, at: &Moment, name: &str| {
        let name = if name == "pink" { "rosa" } else { "weiß" }.into();
        phone.tap_at(at, &tackle(TackleTap::Colour { name }));
    };
    for choose in [&typed_in_capitals as &dyn Fn(&mut Phone, &Moment, &str), &in_german] {
        let mut phone = Phone::new();
        phone.alternates(0, "Mill pool", PLAN);
        phone.open();
        let moment = phone.on_day(1);
        let end = phone.alternates_with(&moment, "Mill pool", PLAN, choose);
        phone.tap_at(&moment(end), &Action::EndSession);
        assert_one_question(&phone.asked(2 * DAY).unwrap());
    }
}

/// Two sessions of one question, in this phone's spelling.
fn assert_one_question(lines: &[LeafLine]) {
    assert_eq!(lines[0].label, "Colour: pink or white, Mill pool");
    assert!(
        lines[1].label.starts_with("Over 2 sessions, 36 casts: pink clearly better"),
        "{}",
        lines[1].label
    );
    assert_eq!(lines.iter().filter(|line| line.heads).count(), 1, "no question of a second spelling");
}

/// Earlier versions logged a colour as it was typed. The alphabetical order of two names, and so the sides, depend on the spelling.
#[test]
fn a_day_logged_by_an_earlier_version_in_another_spelling_or_language_is_of_the_same_question() {
    for spelled in [["PINK", "White"], ["Pink", "white "], ["rosa", "Weiß"], ["Rose", "blanc"]] {
        let mut phone = Phone::new();
        phone.alternates_as_written(0, "Mill pool", spelled);
        phone.alternates_as_written(1, "Mill pool", ["pink", "white"]);
        let lines = phone.asked(2 * DAY).unwrap();
        assert_one_question(&lines);
        // Today's comparison is about that question too.
        let says = phone.colour_change(2 * DAY).says;
        assert!(says.contains("Over 2 sessions, 36 casts: "), "{spelled:?}: {says}");
        phone.open();
        assert_eq!(phone.asked(2 * DAY).as_ref(), Some(&lines));
    }
}

/// The log stays as the partner wrote it.
#[test]
fn a_partners_day_in_another_spelling_is_of_this_phones_question_and_shown_as_this_phone_spells_it() {
    for spelled in [["PINK", "WHITE"], ["Rosa", "Weiß"]] {
        let mut theirs = Phone::with_ids_from(500);
        theirs.alternates_as_written(0, "Mill pool", spelled);
        let file = theirs.everything(DAY);
        let mut mine = Phone::new();
        mine.alternates(1, "Mill pool", PLAN);
        mine.app().take_in(&file, "a friend", &at(2 * DAY), &mut go).unwrap();
        mine.tap(2 * DAY, &Action::Waits { tap: WaitsTap::Whose { whose: Whose::Both } }).unwrap();
        assert_one_question(&mine.asked(2 * DAY).unwrap());
        let says = mine.colour_change(2 * DAY).says;
        assert!(says.contains("Over 2 sessions, 36 casts: pink clearly better"), "{says}");
    }
}

/// The phone was set to another language between two casts.
#[test]
fn a_usual_name_in_two_languages_on_one_day_is_no_change() {
    let mut phone = Phone::new();
    let moment = phone.on_day(0);
    let colours = std::cell::Cell::new(0);
    let choose = |phone: &mut Phone, at: &Moment, name: &str| {
        colours.set(colours.get() + 1);
        let name = if name == "white" {
            "white"
        } else if colours.get() % 4 == 1 {
            "pink"
        } else {
            "rosa"
        };
        let session = phone.app().session().unwrap().id;
        let rig = Rig { colour: Some(name.into()), ..Rig::default() };
        phone.app().write(session, Payload::RigSet { rod: 1, rig }, None, at).unwrap();
    };
    let now = phone.alternates_with(&moment, "Mill pool", PLAN, &choose);
    let (_, changes) = screens(&mut phone, now * MIN);
    let titles: Vec<String> = changes.changes.into_iter().map(|change| change.title).collect();
    assert_eq!(titles.len(), 1, "{titles:?}");
}

/// The running day is one of them, cast by cast, and the question is not recomputed if nothing has changed.
#[test]
fn today_counts_as_it_goes_on() {
    let mut phone = Phone::new();
    phone.alternates(0, "Mill pool", PLAN);
    let moment = phone.on_day(1);
    let now = phone.alternates_by(&moment, "Mill pool", "pwwppww");
    let change = phone.colour_change(DAY + now * MIN);
    assert!(change.says.contains("Over 1 session, 18 casts"), "three switches: {}", change.says);
    phone.tap_at(&moment(now), &tackle(TackleTap::Colour { name: "pink".into() }));
    phone.tap_at(&moment(now + 1), &CAST);
    phone.tap_at(&moment(now + 16), &WOUND_IN);
    let change = phone.colour_change(DAY + (now + 17) * MIN);
    assert!(change.says.contains("Over 2 sessions, 26 casts"), "{}", change.says);
}

/// A battery that went flat between two days: the clock shows 1970 on the second. Days come in the order of the log.
#[test]
fn a_clock_reset_to_1970_between_two_days_changes_nothing() {
    let ordinary = {
        let mut phone = Phone::new();
        phone.alternates(0, "Mill pool", PLAN);
        phone.alternates(1, "Mill pool", PLAN);
        phone.asked(2 * DAY).unwrap()
    };
    let mut phone = Phone::new();
    phone.alternates(0, "Mill pool", PLAN);
    let reset = |minute: i64| Moment {
        wall_ms: minute * MIN,
        mono_ms: minute * MIN,
        boot: "after the battery".into(),
        ..at(0)
    };
    let end = phone.alternates_by(&reset, "Mill pool", PLAN);
    phone.tap_at(&reset(end), &Action::EndSession);
    assert_eq!(phone.asked(2 * DAY).unwrap(), ordinary);
    phone.open();
    assert_eq!(phone.asked(2 * DAY).unwrap(), ordinary);
}

/// A session whose beginning is removed doesn't count, and counts again after UNDO.
#[test]
fn a_session_that_is_removed_and_restored_takes_its_evidence_along() {
    let mut phone = Phone::new();
    phone.alternates(0, "Mill pool", PLAN);
    let first = phone.app().session().unwrap().id;
    phone.alternates(1, "Mill pool", PLAN);
    let before = phone.asked(2 * DAY).unwrap();
    let start = phone.app().journal.store().ops_of(first).unwrap()[0].id;
    phone.app().write(first, Payload::Removed { targets: vec![start] }, None, &at(2 * DAY)).unwrap();
    assert_eq!(phone.asked(2 * DAY + MIN), None);
    phone.open();
    assert_eq!(phone.asked(2 * DAY + MIN), None);
    phone.tap(2 * DAY + 2 * MIN, &Action::Undo).unwrap();
    assert_eq!(phone.asked(2 * DAY + 3 * MIN).unwrap(), before);
}

#[test]
fn a_partners_days_count_only_where_they_are_chosen_and_those_of_my_other_phone_once_it_is_mine() {
    let mut theirs = Phone::with_ids_from(500);
    theirs.alternates(0, "Mill pool", PLAN);
    theirs.alternates(1, "Mill pool", PLAN);
    let file = theirs.everything(2 * DAY);
    let mut mine = Phone::new();
    mine.alternates(2, "Mill pool", PLAN);
    mine.app().take_in(&file, "a friend", &at(3 * DAY), &mut go).unwrap();
    assert_eq!(mine.asked(3 * DAY), None);
    let whose = |whose| Action::Waits { tap: WaitsTap::Whose { whose } };
    mine.tap(3 * DAY, &whose(Whose::Both)).unwrap();
    let all = mine.asked(3 * DAY);
    assert!(verdict(all.as_ref()).starts_with("Over 3 sessions, 54 casts"), "{all:?}");
    mine.tap(3 * DAY + MIN, &whose(Whose::Me)).unwrap();
    assert_eq!(mine.asked(3 * DAY + MIN), None);
    // The other phone is mine too.
    mine.tap(
        3 * DAY + 2 * MIN,
        &Action::Book {
            tap: restwater_screen::BookTap::Filter {
                set: restwater_screen::BookSet::Shown,
                by: restwater_screen::FilterTap::Whose { whose: Whose::Them },
            },
        },
    )
    .unwrap();
    let key = mine.book_leaf_of(3 * DAY + 3 * MIN, "sessions").unwrap().list[0].tap.action().unwrap().clone();
    mine.tap(3 * DAY + 3 * MIN, &key).unwrap();
    mine.tap(3 * DAY + 4 * MIN, &Action::Book { tap: restwater_screen::BookTap::PhoneIsMine { mine: true } })
        .unwrap();
    assert_eq!(mine.asked(3 * DAY + 5 * MIN), all);
}
