//! Reading in the Book: a session opened, the peg it was fished on, the rates.

use super::*;
use restwater_log::Rig;
use restwater_screen::{BookTap, KeyTap, Leaf};

const DAY: i64 = 86_400_000;

impl Phone {
    /// A session on peg 14 of this many casts, each with a fish landed after fourteen minutes; returns when it is over.
    fn fished(&mut self, from: i64, casts: i64) -> i64 {
        self.tap(from - 20_000, &typed(TypedInto::Water, "Mill Pool")).unwrap();
        self.tap(from - 10_000, &typed(TypedInto::Peg, "14")).unwrap();
        self.tap(from, &START).unwrap();
        for i in 0..casts {
            let splash = from + (1 + 20 * i) * MIN;
            for (after, action) in [(0, CAST), (14, BITE), (15, LANDED)] {
                self.tap(splash + after * MIN, &action).unwrap();
            }
        }
        from + 20 * casts * MIN
    }

    fn ended(&mut self, from: i64, casts: i64) -> Uuid {
        let end = self.fished(from, casts);
        self.tap(end, &Action::EndSession).unwrap();
        self.app().session().unwrap().id
    }

    fn opened(&mut self, ms: i64, session: Uuid) -> Leaf {
        self.tap(ms, &Action::Book { tap: BookTap::Open { session } }).unwrap();
        self.book_leaf(ms + 1_000, "session")
    }
}

#[test]
fn the_peg_page_names_the_session_that_it_leaves_out() {
    let mut phone = Phone::new();
    let first = phone.ended(-20 * DAY, 2);
    phone.ended(-10 * DAY, 3);
    let peg = phone.book_leaf(0, "peg");
    assert_eq!(peg.says, "Peg\u{a0}14, Mill Pool: 5 bites in 5 casts over the last 2 sessions.");
    assert!(!peg.notes.iter().any(|note| note.starts_with("Not counted")), "{:?}", peg.notes);
    phone.opened(MIN, first);
    let peg = phone.book_leaf(2 * MIN, "peg");
    assert_eq!(peg.says, "Peg\u{a0}14, Mill Pool: 3 bites in 3 casts over 1 other session.");
    let day = restwater_screen::date_words(phone.app().words, at(-20 * DAY).wall_ms, at(0).offset_min);
    assert!(
        peg.notes.contains(&format!("Not counted: {day}, the session you look back from.")),
        "{:?}",
        peg.notes
    );
}

#[test]
fn the_empty_peg_page_says_what_to_do() {
    let mut phone = Phone::new();
    let only = phone.ended(-DAY, 1);
    phone.opened(0, only);
    let peg = phone.book_leaf(MIN, "peg");
    assert_eq!(
        peg.says,
        "Peg\u{a0}14, Mill Pool: no other session here yet. Each day you fish this peg is listed here, and so is a partner's once you import it."
    );
    let files = KeyTap::Open { which: Which::Files };
    assert!(
        peg.keys.iter().any(|key| key.tap == files && key.enabled && key.label == "Files"),
        "{:?}",
        peg.keys
    );
}

#[test]
fn a_note_is_listed_between_the_casts_where_it_was_made() {
    let mut phone = Phone::new();
    let after_two = phone.fished(-DAY, 2);
    let now = phone.app().session().unwrap().id;
    phone.opened(after_two, now);
    phone.tap(after_two + 3_000, &typed(TypedInto::Note, "wind dropped")).unwrap();
    for (after, action) in [(1, CAST), (9, WOUND_IN), (11, Action::EndSession)] {
        phone.tap(after_two + after * MIN, &action).unwrap();
    }
    let end = after_two + 11 * MIN;
    let leaf = phone.book_leaf(end + MIN, "session");
    let values: Vec<&str> = leaf.lines.iter().map(|line| line.value.as_str()).collect();
    let note = values.iter().position(|value| *value == "wind dropped").unwrap();
    assert_eq!(note, values.len() - 2, "after the second of three casts: {values:?}");
    let labels: Vec<&str> = leaf.lines.iter().map(|line| line.label.as_str()).collect();
    assert!(labels.is_sorted(), "{labels:?}");
}

/// CLOSE would be read as the end of a session that has ended.
#[test]
fn the_key_back_to_the_list_does_not_say_that_it_closes_the_session() {
    let mut phone = Phone::new();
    let day = phone.ended(-DAY, 1);
    let leaf = phone.opened(0, day);
    let key = leaf.keys.iter().find(|key| key.tag == "close-").unwrap();
    assert_eq!((key.label.as_str(), key.sub.as_str()), ("SESSIONS", "back to the list"));
}

/// A screen that is too small for the name of the axis still shows its unit.
#[test]
fn the_axis_of_the_rates_names_its_unit() {
    let mut phone = Phone::new();
    phone.ended(-DAY, 4);
    for leaf in ["rates", "peg"] {
        let axis = phone.book_leaf(0, leaf).axis;
        // Without a peg set up the page of the peg has no rates.
        let Some(axis) = axis else { continue };
        let last = axis.ticks.last().unwrap();
        assert!(last.label.ends_with(" an hour"), "{leaf}: {last:?}");
    }
    assert!(phone.book_leaf(0, "rates").axis.is_some());
}

/// Small screens show few casts on a page, so that what was said of the cast before isn't said again.
#[test]
fn the_rig_of_a_cast_is_written_where_it_changed() {
    let mut phone = Phone::new();
    let rig = |bait: &str| Action::SetRig { rod: 1, rig: Rig { bait: Some(bait.into()), ..Rig::default() } };
    phone.tap(0, &START).unwrap();
    for (i, bait) in (0_i64..).zip(["maggot", "maggot", "bread"]) {
        let splash = (1 + 20 * i) * MIN;
        phone.tap(splash - 10_000, &rig(bait)).unwrap();
        phone.tap(splash, &CAST).unwrap();
        phone.tap(splash + 10 * MIN, &WOUND_IN).unwrap();
    }
    let session = phone.app().session().unwrap().id;
    let details: Vec<String> =
        phone.opened(70 * MIN, session).lines.into_iter().map(|line| line.detail).collect();
    let says = |bait: &str| details.iter().map(|detail| detail.contains(bait)).collect::<Vec<_>>();
    assert_eq!(says("maggot"), [true, false, false], "{details:?}");
    assert_eq!(says("bread"), [false, false, true], "{details:?}");
}
