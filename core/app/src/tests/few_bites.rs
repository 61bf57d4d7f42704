//! Words and pictures claim no more than a few bites tell, and the strip, the chart and the headline say one thing.

use super::match_day::{FISHING, in_match, weight};
use super::*;
use restwater_screen::{Alarm, ChartKind, ChartView, PhoneTap};

/// A day of one rod with `casts` casts of 20 min each, but that the first of them end in bites after the minutes in `bites`.
fn fished(bites: &[i64], casts: usize) -> (Phone, i64) {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    let mut now = MIN;
    for i in 0..casts {
        phone.tap(now, &CAST).unwrap();
        match bites.get(i) {
            Some(minutes) => {
                phone.tap(now + minutes * MIN, &BITE).unwrap();
                phone.tap(now + minutes * MIN + MIN, &Action::Lost { rod: 1 }).unwrap();
            }
            None => {
                phone.tap(now + 20 * MIN, &WOUND_IN).unwrap();
            }
        }
        now += 23 * MIN;
    }
    (phone, now)
}

fn leave_time(phone: &mut Phone, ms: i64) -> ChartView {
    let Screen::Waits(view) = phone.app().screen(Which::Waits, &at(ms)).unwrap() else { panic!("no waits") };
    view.charts.into_iter().find(|chart| chart.kind == ChartKind::LeaveTime).unwrap()
}

fn last_number(text: &str) -> f64 {
    let digits = |c: char| !c.is_ascii_digit();
    text.split(digits).rfind(|n| !n.is_empty()).and_then(|n| n.parse().ok()).unwrap()
}

/// Three bites don't tell one minute from the next, however sharp the middle of the curve is.
#[test]
fn until_the_sixth_bite_one_round_figure_is_said_and_no_band() {
    for (bites, early) in [(3, true), (5, true), (6, false)] {
        let (mut phone, now) = fished(&[9, 11, 14, 10, 12, 13][..bites], 10);
        let bank = phone.bank(now);
        let headline = &bank.advice.headline;
        let chart = leave_time(&mut phone, now);
        assert_eq!(headline.starts_with("Try about "), early, "{bites} bites: {headline}");
        assert_eq!(!headline.contains("Hold until"), early, "{bites} bites: {headline}");
        assert_eq!(bank.strip.hold_min.is_none(), early, "{:?}", bank.strip);
        assert_eq!(chart.spans.is_empty(), early, "{:?}", chart.spans);
        assert!(chart.says.starts_with(headline.as_str()), "{} {headline}", chart.says);
        assert_eq!(bank.strip.recast_min, Some(last_number(headline)), "one figure");
    }
}

/// Ten bites, all by the fourteenth minute, in casts that were left for 16: the app asks for longer ones.
#[test]
fn what_was_not_tried_is_marked_and_strip_and_chart_have_one_band() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    let mut now = MIN;
    let (mut asked, mut bands) = (0, 0);
    for i in 0..16 {
        phone.tap(now, &CAST).unwrap();
        if i % 3 == 2 {
            phone.tap(now + 16 * MIN, &WOUND_IN).unwrap();
        } else {
            phone.tap(now + (10 + i % 5) * MIN, &BITE).unwrap();
            phone.tap(now + (11 + i % 5) * MIN, &Action::Lost { rod: 1 }).unwrap();
        }
        now += 20 * MIN;
        let bank = phone.bank(now);
        let chart = leave_time(&mut phone, now);
        if let (Some(hold), Some(recast)) = (bank.strip.hold_min, bank.strip.recast_min) {
            let [span] = &chart.spans[..] else { panic!("{:?}", chart.spans) };
            assert_eq!((span.from, span.to), (hold, recast.min(chart.x.to)), "{chart:?}");
            bands += 1;
        }
        let longest = bank.strip.known_to_min.unwrap();
        let not_tried = chart.not_tried.unwrap();
        assert_eq!((not_tried.from, not_tried.to), (longest, chart.x.to));
        let leave = last_number(&bank.advice.headline);
        let said = bank.advice.more.join(" ");
        if leave > longest && said.contains("longer than the bites suggest") {
            let of_it =
                format!("{leave} min is longer than the bites suggest: to find out what comes later.");
            assert!(said.contains(&of_it) && !said.contains("No cast was left that long yet"), "{said}");
            asked += 1;
        }
    }
    assert!(asked > 0 && bands > 0, "{asked} {bands}");
}

#[test]
fn the_finish_is_said_as_a_range_with_what_it_rests_on() {
    let mut phone = in_match();
    let mut now = FISHING;
    for i in 0..5 {
        if i < 3 {
            phone.land(now);
            phone.tap(now + 12 * MIN, &weight(1_024 + 77 * i)).unwrap();
        } else {
            phone.tap(now, &CAST).unwrap();
            phone.tap(now + 14 * MIN, &WOUND_IN).unwrap();
        }
        now += 17 * MIN;
    }
    let says = phone.view(now).coming_says;
    assert!(says.starts_with("Likely finish: ") && says.ends_with("3 bites in 5 casts so far."), "{says}");
    assert!(says.contains(" to "), "{says}");
    // Twelve pounds are in the net: an ounce more or less is nobody's to know.
    assert!(!says.contains("oz"), "{says}");
}

/// The alarm at "hold until" has no other minute to ring at than the one that is said.
#[test]
fn until_the_sixth_bite_the_alarm_at_hold_until_rings_at_the_minute_of_the_headline() {
    for (bites, rings_at_the_headline) in
        [(&[14, 15, 16][..], true), (&[13, 14, 15, 15, 16, 17, 14][..], false)]
    {
        let (mut phone, now) = fished(bites, bites.len() + 3);
        phone.tap(now, &Action::Phone { tap: PhoneTap::Alarm { alarm: Alarm::Hold } }).unwrap();
        phone.tap(now + 5_000, &CAST).unwrap();
        let headline = phone.bank(now + MIN).advice.headline;
        assert_eq!(headline.starts_with("Try about "), rings_at_the_headline, "{headline}");
        for restarted in [false, true] {
            if restarted {
                phone.open();
            }
            let alarms = phone.app().watch(&at(now + MIN)).alarms;
            let minutes = (alarms[0].at_wall_ms - at(now + 5_000).wall_ms) as f64 / 60_000.0;
            let figure = if rings_at_the_headline { last_number(&headline) } else { first_number(&headline) };
            assert!((minutes - figure).abs() < 1.0, "{minutes} min: {headline}");
        }
    }
}

fn first_number(text: &str) -> f64 {
    let digits = |c: char| !c.is_ascii_digit();
    text.split(digits).find(|n| !n.is_empty()).and_then(|n| n.parse().ok()).unwrap()
}
