//! The Bank gives one figure for leaving a cast: before it, while it is out and after its time.

use super::learning::screens;
use super::*;
use restwater_screen::{ChartKind, MatchTap, RuleTap};

/// The minute that a headline ends with.
fn figure(headline: &str) -> f64 {
    let mut figures = headline.split(|c: char| !c.is_ascii_digit()).filter_map(|digits| digits.parse().ok());
    figures.next_back().unwrap_or_else(|| panic!("no figure in {headline:?}"))
}

#[test]
fn the_bank_gives_the_same_figure_before_a_cast_while_it_is_out_and_after_its_time() {
    for bites in 0..5 {
        let (mut phone, now) = with_bites(bites);
        phone.tap(now + 10 * MIN, &WOUND_IN).unwrap();
        let ready = phone.bank(now + 11 * MIN);
        let leave = figure(&ready.advice.headline);
        phone.tap(now + 12 * MIN, &CAST).unwrap();
        let minute = 60_000.0;
        for waited in [1.0, leave - 1.0, leave + 2.0] {
            let out = phone.bank(now + 12 * MIN + (waited * minute) as i64);
            assert_eq!(
                figure(&out.advice.headline),
                leave,
                "{bites} bites, {waited} min out: {:?}",
                out.advice
            );
            assert_eq!(out.advice.tone == AdviceTone::Past, bites >= 3 && waited > leave, "{:?}", out.advice);
            assert!(out.strip.recast_min.is_none_or(|recast| recast == leave), "{:?}", out.strip);
            // No other sentence names another time to wind in.
            let others =
                out.advice.more.iter().any(|text| text.contains("Leave") || text.contains("Leaving"));
            assert!(!others, "{:?}", out.advice.more);
        }
        assert_eq!(ready.strip.recast_min.is_some(), bites >= 3);
    }
}

/// The percentage in a sentence.
fn percent(sentences: &[String], says: &str) -> f64 {
    let sentence = sentences.iter().find(|text| text.contains(says)).unwrap();
    let digits: String = sentence.rsplit(':').next().unwrap().chars().filter(char::is_ascii_digit).collect();
    digits.parse().unwrap()
}

#[test]
fn a_cast_out_past_an_hour_still_has_a_chance_of_a_bite() {
    let mut phone = started();
    // Invented: a slow water with about one bite in half an hour, where every cast is left in for it.
    let mut now = MIN;
    for wait in [12, 41, 25, 8, 33, 50, 19, 28] {
        phone.tap(now, &CAST).unwrap();
        phone.tap(now + wait * MIN, &BITE).unwrap();
        phone.tap(now + (wait + 1) * MIN, &LANDED).unwrap();
        now += (wait + 4) * MIN;
    }
    phone.tap(now, &CAST).unwrap();
    let chance = |phone: &mut Phone, waited: i64| {
        percent(&phone.bank(now + waited * MIN).advice.more, "next five minutes")
    };
    let (within, past, long) = (chance(&mut phone, 55), chance(&mut phone, 77), chance(&mut phone, 100));
    assert!(within > 5.0 && past > 0.5 * within && long > 0.0, "{within} {past} {long}");
}

/// Both screens use one posterior: with five minutes left, a bite in the time left is a bite in the next five
/// minutes.
#[test]
fn the_forecast_and_the_bank_give_the_same_chance() {
    let (mut phone, now) = with_bites(4);
    let left = Action::Waits { tap: WaitsTap::TimeLeft { minutes: 5 } };
    phone.tap(now + 1_000, &left).unwrap();
    for waited in [2, 8, 11] {
        let at_ms = now + waited * MIN;
        let bank = percent(&phone.bank(at_ms).advice.more, "next five minutes");
        let (waits, _) = screens(&mut phone, at_ms);
        let says = waits.forecast.unwrap().says;
        let forecast: f64 =
            says.strip_prefix("On about ").unwrap().split(' ').next().unwrap().parse().unwrap();
        assert!((bank - forecast).abs() <= 3.0, "{waited} min out: {bank} % on the Bank, {says}");
    }
}

/// A minute to recast by that no cast has reached yet is never shown without saying so, and what the cast that is out has reached
/// itself is not called untried.
#[test]
fn a_minute_beyond_every_cast_is_said_to_be_untried() {
    let (mut phone, now) = with_bites(4);
    phone.tap(now + MIN, &CAST).unwrap();
    let waits = restwater_session::waits_of(phone.app().session().unwrap());
    let longest = waits.iter().map(|wait| wait.minutes()).fold(0.0, f64::max).round() as i64;
    let mut seen = [0, 0];
    for waited in [0, 5, longest - 1, longest + 2, longest + 20, longest + 60] {
        let advice = phone.bank(now + MIN + waited * MIN).advice;
        let mut minutes = advice
            .headline
            .trim_end_matches([':', '.'])
            .split(' ')
            .filter_map(|word| word.parse::<i64>().ok());
        let (leave, tried) = (minutes.next_back().unwrap(), longest.max(waited));
        let untried = format!("Past {tried} min: not tried.");
        assert_eq!(advice.detail.contains(&untried), leave > tried, "{waited} min out: {advice:?}");
        assert_eq!(advice.detail.contains("not tried"), leave > tried, "{waited} min out: {advice:?}");
        seen[usize::from(leave > tried)] += 1;
    }
    assert!(seen[0] > 0, "{seen:?}");
}

const DAY: i64 = 24 * 60 * MIN;

/// A session in which nothing was cast, at home or on a day called off, is not a day of the book.
#[test]
fn a_session_without_a_finished_cast_says_nothing_of_the_next() {
    let begun = |phone: &mut Phone, day: i64| {
        phone.boots += 1;
        phone.tap(day * DAY - 1_000, &typed(TypedInto::Water, "Mill pool")).unwrap();
        phone.tap(day * DAY, &START).unwrap();
    };
    let mut fresh = Phone::new();
    begun(&mut fresh, 9);
    let mut tried = Phone::new();
    begun(&mut tried, 1);
    tried.tap(DAY + MIN, &Action::EndSession).unwrap();
    begun(&mut tried, 9);
    let (fresh, bank) = (fresh.bank(9 * DAY + MIN), tried.bank(9 * DAY + MIN));
    assert_eq!(bank.advice, fresh.advice);
    assert_eq!(bank.strip, fresh.strip);
    tried.open();
    assert_eq!(tried.bank(9 * DAY + MIN).advice, fresh.advice);
}

/// Five such days, or five whose ends nobody saw, don't push the days that tell something out of the book.
#[test]
fn days_that_tell_nothing_leave_the_book_to_those_that_do() {
    let book = |empty: i64| {
        let (mut phone, now) = with_bites(6);
        phone.tap(now + 20 * MIN, &Action::EndSession).unwrap();
        for day in 1..=empty {
            phone.boots += 1;
            phone.tap(day * DAY, &START).unwrap();
            if day % 2 == 0 {
                phone.tap(day * DAY + MIN, &CAST).unwrap();
                phone.tap(day * DAY + 20 * MIN, &CAST).unwrap();
                phone.tap(day * DAY + 21 * MIN, &Action::Undo).unwrap();
                phone.tap(day * DAY + 22 * MIN, &Action::Undo).unwrap();
            }
            phone.tap(day * DAY + 30 * MIN, &Action::EndSession).unwrap();
        }
        phone.boots += 1;
        phone.tap(9 * DAY, &START).unwrap();
        phone.open();
        let next = phone.leaf(Which::Book, 9 * DAY + MIN, "next");
        let said = |line: &restwater_screen::LeafLine| line.label.contains("Try about ");
        let leave = next.lines.iter().find(|line| said(line)).cloned();
        assert!(leave.is_some(), "{:?}", next.lines);
        (phone.bank(9 * DAY + MIN).advice, leave, screens(&mut phone, 9 * DAY + MIN).0.counts)
    };
    let with = book(6);
    assert!(with.0.headline.starts_with("Try about "), "{}", with.0.headline);
    assert_eq!(with, book(0));
}

/// "The same words on each screen": the Book's next page says what the Bank and the card say.
#[test]
fn the_book_says_of_leaving_a_cast_what_the_bank_says() {
    let mut phone = started();
    let mut now = MIN;
    for wait in [12, 41, 25, 8, 33, 50, 19, 28] {
        for (after, action) in [(0, CAST), (wait, BITE), (wait + 1, LANDED)] {
            phone.tap(now + after * MIN, &action).unwrap();
        }
        now += (wait + 4) * MIN;
    }
    let bank = phone.bank(now).advice.headline;
    assert!(bank.starts_with("Longer makes little difference."), "{bank}");
    phone.tap(now + MIN, &Action::EndSession).unwrap();
    let next = phone.leaf(Which::Book, now + 2 * MIN, "next");
    let said = format!("Whether longer is better: {bank}");
    let place = |text: &str| next.lines.iter().position(|line| line.label == text);
    assert!(place(&said) > place("Still unknown"), "no cast was left that long: {:?}", next.lines);
    assert_eq!(next.lines[1].label, "Up to 50 min, longer makes little difference", "{:?}", next.lines);
}

/// Casts without a bite and earlier days move the minutes too, so before three bites they are not only those of waters in general.
#[test]
fn before_three_bites_the_minutes_are_not_claimed_to_be_only_those_of_waters_in_general() {
    let says = |phone: &mut Phone, ms: i64| {
        let advice = phone.bank(ms).advice;
        assert!(advice.headline.starts_with("Can't tell yet."), "{}", advice.headline);
        [advice.detail, advice.more.join(" ")].concat()
    };
    let one = "Until three bites have come, the minutes rest mostly on waters in general.";
    let check = |said: &str| assert!(said.contains(one), "{said}");
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    let first = phone.bank(2 * MIN).advice.headline;
    phone.tap(40 * MIN, &WOUND_IN).unwrap();
    phone.tap(41 * MIN, &CAST).unwrap();
    check(&says(&mut phone, 42 * MIN));
    phone.tap(120 * MIN, &WOUND_IN).unwrap();
    assert_ne!(phone.bank(121 * MIN).advice.headline, first, "the casts count");
    phone.tap(122 * MIN, &Action::EndSession).unwrap();
    phone.tap(1_500 * MIN, &START).unwrap();
    let said = says(&mut phone, 1_501 * MIN);
    assert!(said.contains("1 earlier session of yours counts too."), "{said}");
    check(&said);
}

/// Six casts with four bites from a minute on; gives the minute after them.
fn six_casts(phone: &mut Phone, mut now: i64) -> i64 {
    for (wait, bites) in [(6, true), (10, false), (8, true), (10, false), (7, true), (9, true)] {
        phone.tap(now, &CAST).unwrap();
        now += wait * MIN;
        phone.tap(now, if bites { &BITE } else { &WOUND_IN }).unwrap();
        if bites {
            now += MIN;
            phone.tap(now, &Action::Missed { rod: 1 }).unwrap();
        }
        now += 2 * MIN;
    }
    now
}

/// A match is fished for its own bites, and the day after it for what comes.
#[test]
fn in_a_match_waits_says_what_the_bank_says_and_after_it_the_card_and_the_book_agree() {
    let mut phone = started();
    let now = six_casts(&mut phone, MIN);
    phone.tap(now, &Action::EndSession).unwrap();
    let day = 24 * 60 * MIN;
    phone.tap(day, &START).unwrap();
    phone.tap(day + 2_000, &rule_begin()).unwrap();
    let now = six_casts(&mut phone, day + 20 * MIN);
    let leave_time = |phone: &mut Phone, ms: i64| {
        let charts = screens(phone, ms).0.charts;
        charts.into_iter().find(|chart| chart.kind == ChartKind::LeaveTime).unwrap().says
    };
    let in_match = phone.bank(now).advice.headline;
    assert!(leave_time(&mut phone, now).starts_with(&in_match), "{in_match}");
    phone.open();
    assert!(leave_time(&mut phone, now).starts_with(&in_match), "after a restart");
    // Without the match the same casts are worth exploring, on both screens.
    phone.tap(now + 1_000, &Action::Match { tap: MatchTap::Off }).unwrap();
    let without = phone.bank(now + 2_000).advice.headline;
    assert_ne!(without, in_match, "otherwise this shows nothing");
    assert!(leave_time(&mut phone, now + 2_000).starts_with(&without), "{without}");
    phone.tap(now + 3_000, &Action::Undo).unwrap();
    assert_eq!(phone.bank(now + 4_000).advice.headline, in_match);
    // After END nothing is a match any more.
    phone.tap(now + MIN, &Action::EndSession).unwrap();
    let waits = leave_time(&mut phone, now + 2 * MIN);
    let card = super::day_card::leaf(&mut phone, Which::Day, now + 2 * MIN);
    let next = card.lines.iter().find(|line| line.label == "Try next").unwrap().detail.clone();
    assert!(waits.starts_with(&next), "Waits: {waits}, the card: {next}");
}

fn rule_begin() -> Action {
    Action::Match { tap: MatchTap::Rule { rule: RuleTap::Begin } }
}
