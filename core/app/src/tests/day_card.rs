//! The first start of the app, the empty screens, and the card of the day after END.

use super::*;
use restwater_screen::{KeyTap, Leaf, LeafKey};

pub(super) fn leaf(phone: &mut Phone, which: Which, ms: i64) -> Leaf {
    leaf_at(phone, which, &at(ms))
}

pub(super) fn leaf_at(phone: &mut Phone, which: Which, now: &Moment) -> Leaf {
    let leaves = match phone.app().screen(which, now).unwrap() {
        Screen::Day(view) | Screen::Welcome(view) | Screen::Book(view) | Screen::Conditions(view) => {
            view.leaves
        }
        other => panic!("no leaves: {other:?}"),
    };
    leaves.into_iter().next().unwrap()
}

/// The taps of eight casts, four wound in at 12 minutes and four with a bite after 15 or more, and when the
/// last one is over.
pub(super) fn day_taps() -> (Vec<(i64, Action)>, i64) {
    let (mut taps, mut now) = (Vec::new(), MIN);
    for (minutes, bite) in
        [(12, false), (15, true), (12, false), (16, true), (12, false), (18, true), (12, false), (17, true)]
    {
        taps.push((now, CAST));
        now += minutes * MIN;
        if bite {
            taps.push((now, BITE));
            now += MIN;
            taps.push((now, LANDED));
        } else {
            taps.push((now, WOUND_IN));
        }
        now += 2 * MIN;
    }
    (taps, now)
}

pub(super) fn fish(phone: &mut Phone) -> i64 {
    let (taps, end) = day_taps();
    for (ms, action) in taps {
        phone.tap(ms, &action).unwrap();
    }
    end
}

#[test]
fn the_first_start_of_the_app_shows_three_cards_once() {
    let mut phone = Phone::new();
    assert_eq!(phone.app().first_screen().unwrap(), Which::Welcome);
    assert_eq!(phone.app().first_screen().unwrap(), Which::Bank, "shown once");
    phone.open();
    assert_eq!(phone.app().first_screen().unwrap(), Which::Bank, "and not after a restart");
    let mut other = Phone::new();
    other.tap(0, &START).unwrap();
    assert_eq!(other.app().first_screen().unwrap(), Which::Bank, "who has logged needs no welcome");
}

#[test]
fn a_screen_with_nothing_to_show_offers_start() {
    let mut phone = Phone::new();
    let start = KeyTap::Open { which: Which::Setup };
    let offers = |key: Option<&LeafKey>| key.is_some_and(|key| key.tap == start && key.enabled && key.solid);
    assert!(offers(leaf(&mut phone, Which::Conditions, 0).keys.first()));
    assert!(offers(leaf(&mut phone, Which::Day, 0).keys.first()));
    assert!(offers(leaf(&mut phone, Which::Book, 0).list.first()));
    let mut seen = |which| phone.app().screen(which, &at(0)).unwrap();
    let Screen::Waits(waits) = seen(Which::Waits) else { panic!() };
    let Screen::Changes(changes) = seen(Which::Changes) else { panic!() };
    let Screen::Match(the_match) = seen(Which::Match) else { panic!() };
    for offer in [waits.offer, changes.offer, the_match.offer] {
        assert!(offers(offer.as_ref()), "{offer:?}");
    }
    phone.tap(MIN, &START).unwrap();
    let Screen::Waits(waits) = phone.app().screen(Which::Waits, &at(2 * MIN)).unwrap() else { panic!() };
    assert!(waits.offer.is_none() && waits.counts.contains("CAST"), "{waits:?}");
}

#[test]
fn after_end_the_card_of_the_day_shows_the_habit_and_what_to_try() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    let end = fish(&mut phone);
    let bank = phone.bank(end);
    let habit = "Your 4 wind-ins all came by 12 min. Every bite this session came after 14 min.";
    assert_eq!(bank.advice.more.first().map(String::as_str), Some(habit));
    let update = phone.tap(end + MIN, &Action::EndSession).unwrap();
    assert_eq!(update.opens, Some(Which::Day));
    let card = leaf(&mut phone, Which::Day, end + 2 * MIN);
    assert_eq!(card.says, "4 bites in 8 casts, 4 fish landed.");
    let said: Vec<(&str, &str)> =
        card.lines.iter().map(|line| (line.label.as_str(), line.detail.as_str())).collect();
    let next = bank.advice.headline.as_str();
    assert!(next.starts_with("Try about "), "as the Bank says it: {next}");
    let habit = "Your 4 wind-ins all came by 12 min. Every bite came after 14 min.";
    assert_eq!(said, [("Waits", habit), ("Try next", next)], "the heading says which session");
    let KeyTap::Share { text } = &card.keys[0].tap else { panic!("{:?}", card.keys) };
    assert_eq!(text, &format!("{}\n{}\nWaits: {habit}\nTry next: {next}", card.title, card.says));
    assert_eq!(phone.tap(end + 3 * MIN, &Action::Undo).unwrap().opens, None);
}

/// The card is about the whole day, whichever casts Waits is asked about.
#[test]
fn the_card_of_the_day_counts_every_cast() {
    let mut phone = rods::with_rods(2);
    for i in 0..6 {
        let from = (1 + 40 * i) * MIN;
        for (after, action) in [
            (0, CAST),
            (14, BITE),
            (15, LANDED),
            (16, Action::Cast { rod: 2 }),
            (36, Action::WoundIn { rod: 2 }),
        ] {
            phone.tap(from + after * MIN, &action).unwrap();
        }
    }
    phone.tap(245 * MIN, &Action::Waits { tap: WaitsTap::Rod { rod: Some(2) } }).unwrap();
    phone.tap(250 * MIN, &Action::EndSession).unwrap();
    let card = leaf(&mut phone, Which::Day, 251 * MIN);
    let (waits, _) = learning::screens(&mut phone, 251 * MIN);
    assert!(waits.counts.starts_with("No bites in 6 casts"), "the choice is kept: {}", waits.counts);
    phone.open();
    assert_eq!(leaf(&mut phone, Which::Day, 251 * MIN), card);
}

/// Every screen says the same number of casts that have ended; how many of them ended unseen, and how many are out, is said beside
/// it.
#[test]
fn a_day_has_one_count_of_its_casts() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    let mut now = MIN;
    for (minutes, end) in [(15, Some(BITE)), (20, None), (15, Some(BITE)), (20, None), (20, Some(WOUND_IN))] {
        phone.tap(now, &CAST).unwrap();
        now += minutes * MIN;
        if let Some(end) = end {
            phone.tap(now, &end).unwrap();
        }
        if minutes == 15 {
            phone.tap(now + MIN, &LANDED).unwrap();
        }
        now += 2 * MIN;
    }
    let bank = phone.bank(now).advice;
    let not_seen = "The ends of 2 casts were not seen: their waits don't count.";
    assert!(bank.detail.starts_with("2 bites in 5 casts."), "{}", bank.detail);
    assert!(bank.more.iter().any(|more| more == not_seen), "{:?}", bank.more);
    let (waits, _) = learning::screens(&mut phone, now);
    assert!(waits.counts.starts_with("2 bites in 5 casts this session, "), "{}", waits.counts);
    assert!(waits.counts.ends_with(not_seen), "{}", waits.counts);
    assert_eq!(waits.charts[0].notes[1], not_seen);
    phone.tap(now, &CAST).unwrap();
    let card = leaf(&mut phone, Which::Day, now + MIN);
    assert_eq!(card.says, "2 bites in 5 casts, 1 still out, 2 fish landed.");
    phone.tap(now + MIN, &Action::Undo).unwrap();
    phone.tap(now, &Action::EndSession).unwrap();
    let id = phone.app().session().unwrap().id;
    let card = leaf(&mut phone, Which::Day, now + MIN);
    assert_eq!(card.says, "2 bites in 5 casts, 2 fish landed.");
    let list = phone.leaf(Which::Book, now + MIN, "sessions");
    assert!(list.list[0].sub.starts_with("2 bites in 5 casts,"), "{}", list.list[0].sub);
    phone.tap(now + MIN, &Action::Book { tap: restwater_screen::BookTap::Open { session: id } }).unwrap();
    let opened = phone.leaf(Which::Book, now + 2 * MIN, "session");
    assert!(opened.says.contains("2 bites in 5 casts"), "{}", opened.says);
    assert!(opened.notes.iter().any(|note| note == not_seen), "{:?}", opened.notes);
}
