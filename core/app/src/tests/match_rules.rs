//! What the rules of a match decide of fish and weights, wherever it is read.

use super::match_day::{FISHING, in_match, tap, weighed_in, weight};
use super::*;
use restwater_log::WeightUnit;
use restwater_match_day::rules::OverLimit;
use restwater_match_day::weight::Weight;
use restwater_screen::{FilesTap, FishTap, FormChoice, MatchTap, MatchView, RuleTap};

fn fish(tap: FishTap) -> Action {
    Action::Fish { cast: None, tap }
}

fn rule(rule: RuleTap) -> Action {
    tap(MatchTap::Rule { rule })
}

fn coming(view: &MatchView, label: &str) -> String {
    view.coming.iter().find(|line| line.label.starts_with(label)).unwrap().value.clone()
}

/// The last figure in pounds of a range, ounces left out.
fn most_lb(value: &str) -> u32 {
    let words: Vec<&str> = value.split([' ', ',']).collect();
    let pounds = words.windows(2).filter(|pair| pair[1] == "lb").map(|pair| pair[0].parse::<u32>().unwrap());
    pounds.max().unwrap_or(0)
}

#[test]
fn the_report_counts_the_fish_in_the_one_net_that_needs_no_naming() {
    let mut phone = in_match();
    phone.tap(10_000, &rule(RuleTap::Nets { count: 1 })).unwrap();
    phone.land(FISHING);
    phone.tap(FISHING + 12 * MIN, &weight(1_024)).unwrap();
    phone.tap(330 * MIN, &Action::EndSession).unwrap();
    phone.tap(331 * MIN, &Action::Files { tap: FilesTap::Form { form: FormChoice::Report } }).unwrap();
    let sent = phone.app().send(&at(332 * MIN), &mut |_| std::ops::ControlFlow::Continue(())).unwrap();
    let report = std::fs::read_to_string(sent.path).unwrap();
    assert!(report.contains("Net 1: 1 fish, 1.81 kg"), "{report}");
}

/// Rod 2's fish, hooked on the later cast, is landed first and goes into Net 2; the next fish landed follows it there.
#[test]
fn the_net_carries_over_in_the_order_in_which_fish_are_landed() {
    let mut phone = Phone::new();
    phone.tap(-5_000, &Action::Setup { tap: SetupTap::Rods { rods: 2 } }).unwrap();
    phone.tap(0, &START).unwrap();
    phone.tap(2_000, &rule(RuleTap::Begin)).unwrap();
    phone.tap(4_000, &rule(RuleTap::Nets { count: 2 })).unwrap();
    for (minute, action) in [
        (0, Action::Cast { rod: 1 }),
        (1, Action::Cast { rod: 2 }),
        (11, Action::Bite { rod: 2 }),
        (12, Action::Landed { rod: 2, fish: None }),
        (13, fish(FishTap::Net { name: "Net 2".into() })),
        (19, Action::Bite { rod: 1 }),
        (20, Action::Landed { rod: 1, fish: None }),
    ] {
        phone.tap(FISHING + 12 * MIN + minute * MIN, &action).unwrap();
    }
    let now = FISHING + 33 * MIN;
    let view = phone.view(now);
    assert!(view.nets[1].holds.starts_with("2 fish") && view.nets[1].in_use, "{:?}", view.nets);
    assert!(view.fish_waits, "nothing was said of the latest fish");
    assert!(phone.fish(now).title.starts_with("Fish 2, "), "{}", phone.fish(now).title);
}

#[test]
fn before_a_fish_is_landed_only_classes_that_count_weigh_anything() {
    let heaviest = |only_silvers: bool| {
        let mut phone = in_match();
        if only_silvers {
            let classes: Vec<String> =
                phone.app().match_setup().unwrap().classes.iter().map(|class| class.name.clone()).collect();
            for (i, class) in (10..).zip(classes.into_iter().filter(|name| name != "Silver")) {
                phone.tap(i * 2_000, &rule(RuleTap::Counting { class })).unwrap();
            }
        }
        for i in 0..3 {
            let cast = FISHING + i * 15 * MIN;
            phone.tap(cast, &CAST).unwrap();
            phone.tap(cast + 10 * MIN, &BITE).unwrap();
            phone.tap(cast + 11 * MIN, &Action::Lost { rod: 1 }).unwrap();
        }
        coming(&phone.view(FISHING + 46 * MIN), "Weight to come")
    };
    let (all, silvers) = (heaviest(false), heaviest(true));
    assert!(4 * most_lb(&silvers) <= most_lb(&all), "{silvers} against {all}");
}

#[test]
fn a_match_begins_in_the_unit_that_the_phone_weighs_in() {
    for (unit, mark, guess) in
        [(WeightUnit::Grams, Weight::Grams(10), "110 g"), (WeightUnit::Drams, Weight::Drams(16), "4 oz")]
    {
        let mut phone = started();
        phone.tap(1_000, &Action::Phone { tap: restwater_screen::PhoneTap::Weights { unit } }).unwrap();
        let row = |phone: &mut Phone, ms, tag: &str| {
            phone.view(ms).rows.into_iter().find(|row| row.tag == tag).unwrap().value
        };
        let offered = ["unit", "mark"].map(|tag| row(&mut phone, 2_000, tag));
        phone.tap(2_000, &rule(RuleTap::Begin)).unwrap();
        let setup = phone.app().match_setup().unwrap().clone();
        assert_eq!((setup.unit, setup.mark), (unit, mark));
        assert_eq!(restwater_screen::weight_words(&Wording::new(), setup.classes[0].guess), guess);
        assert_eq!(["unit", "mark"].map(|tag| row(&mut phone, 4_000, tag)), offered);
    }
}

#[test]
fn one_guess_beyond_all_fish_leaves_the_others_counted() {
    let mut phone = in_match();
    phone.land(FISHING);
    let guess = FishTap::Weight { unit: WeightUnit::Grams, count: 90_000, guessed: true };
    phone.tap(FISHING + 12 * MIN, &fish(guess)).unwrap();
    let view = phone.view(FISHING + 13 * MIN);
    assert_eq!(view.nets.len(), 2, "{:?}", view.notes);
}

#[test]
fn a_match_that_ends_by_night_is_held_against_the_sunset_before_it() {
    let mut phone = in_match();
    let peg = Action::PlacePeg { lat_e7: 524_862_000, lon_e7: -18_904_000, straight_out_cdeg: 0 };
    phone.tap(20_000, &peg).unwrap();
    let light = coming(&phone.view(FISHING), "Light at all-out");
    assert!(light.contains("before all-out") && light.contains("dark"), "{light}");
    // The next match on the water knows the place from this one.
    phone.tap(330 * MIN, &Action::EndSession).unwrap();
    phone.tap(24 * 60 * MIN, &START).unwrap();
    phone.tap(24 * 60 * MIN + 2_000, &rule(RuleTap::Begin)).unwrap();
    let light = coming(&phone.view(24 * 60 * MIN + 20 * MIN), "Light at all-out");
    assert!(light.starts_with("sunset "), "{light}");
}

/// Fairbanks, 20 June 2020, UTC-8: the sun rises at 02:58 and sets at 00:48, after midnight, to the minute (NOAA Global
/// Monitoring Laboratory, Solar Calculator, its table for 64.83778 N 147.71639 W in 2020).
#[test]
fn where_the_sun_sets_after_midnight_all_out_is_held_against_the_sunset_beside_it() {
    let local = |minute: i64| {
        let wall_ms = 1_592_640_000_000 + minute * MIN;
        let mono_ms = minute * MIN;
        Moment { wall_ms, mono_ms, offset_min: -480, zone: "America/Anchorage".into(), ..at(0) }
    };
    let mut phone = Phone::new();
    let peg = Action::PlacePeg { lat_e7: 648_377_800, lon_e7: -1_477_163_900, straight_out_cdeg: 0 };
    for (minute, action) in (12 * 60..).zip([START, peg, rule(RuleTap::Begin)]) {
        phone.app().act(&action, &local(minute)).unwrap();
    }
    let day = 24 * 60;
    let cases = [
        (20 * 60, day + 48, "still daylight"),
        (day + 20, day + 48, "still daylight"),
        (day + 90, day + 48, "twilight"),
        (day + 4 * 60, 2 * day + 48, "still daylight"),
    ];
    for (minute, (all_out, sunset, light)) in (12 * 60 + 10..).zip(cases) {
        let mut setup = phone.app().match_setup().unwrap().clone();
        setup.all_out_ms = local(all_out).wall_ms;
        phone.app().act(&tap(MatchTap::Set { setup }), &local(minute)).unwrap();
        let Screen::Match(view) = phone.app().screen(Which::Match, &local(minute)).unwrap() else { panic!() };
        let says = coming(&view, "Light at all-out");
        // A minute either way: the table is rounded to the minute.
        let by = |minutes: i64| match (minutes / 60, minutes % 60) {
            (0, minutes) => format!("{minutes} min"),
            (hours, minutes) => format!("{hours} h {minutes:02}"),
        };
        let side = if sunset > all_out { "after" } else { "before" };
        let told = |at: i64, off: i64| {
            let by = by((at - all_out).abs() + off);
            format!("sunset 00:{:02}, {by} {side} all-out: {light}", at % 60)
        };
        let near = |at: i64| [-1, 0, 1].map(|off| told(at, off));
        assert!([-1, 0, 1].iter().any(|off| near(sunset + off).contains(&says)), "{all_out}: {says}");
    }
}

#[test]
fn no_more_is_expected_than_the_nets_may_hold() {
    let mut phone = in_match();
    let mut now = FISHING;
    for _ in 0..5 {
        phone.land(now);
        phone.tap(now + 12 * MIN, &weight(1_024)).unwrap();
        now += 15 * MIN;
    }
    phone.tap(now, &rule(RuleTap::Nets { count: 1 })).unwrap();
    let limit = RuleTap::Limit { net: "Net 1".into(), limit: Some(Weight::Drams(22 * 256)) };
    phone.tap(now + 2_000, &rule(limit)).unwrap();
    phone.tap(now + 4_000, &rule(RuleTap::Over { over: OverLimit::DoesNotCount })).unwrap();
    let finish = coming(&phone.view(now + 6_000), "Expected finish");
    assert!(most_lb(&finish) <= 22, "{finish}");
}

/// Six weighed fish of 5 lb 5 oz make 31 lb 14 oz, in a net of 30 lb.
#[test]
fn a_net_that_is_certainly_over_its_limit_says_what_of_it_counts() {
    for (over, says, finish_lb, in_all) in [
        (OverLimit::CountsToTheLimit, "over the limit: counts 30 lb", None, "33 lb\u{a0}14 oz\u{a0}8 dr"),
        (OverLimit::DoesNotCount, "over the limit: doesn't count", Some(0), "3 lb\u{a0}14 oz\u{a0}8 dr"),
    ] {
        let mut phone = in_match();
        phone.tap(10_000, &rule(RuleTap::Nets { count: 1 })).unwrap();
        phone.tap(12_000, &rule(RuleTap::Over { over })).unwrap();
        let mut now = FISHING;
        for caught in 1..=6 {
            phone.land(now);
            phone.tap(now + 12 * MIN, &weight(1_360)).unwrap();
            now += 15 * MIN;
            let said = phone.view(now).nets[0].says.clone();
            assert_eq!(said == says, caught == 6, "{caught}: {said}");
        }
        let view = phone.view(now);
        assert!(view.nets[0].spoken.ends_with(says), "{}", view.nets[0].spoken);
        if let Some(lb) = finish_lb {
            assert_eq!(most_lb(&coming(&view, "Expected finish")), lb, "{:?}", view.coming);
        } else {
            assert!(coming(&view, "Expected finish").starts_with("30 lb"), "{:?}", view.coming);
        }
        phone.tap(now, &rule(RuleTap::Nets { count: 2 })).unwrap();
        for (second, net, drams) in [(1, "Net 1", 8_200), (2, "Net 2", 1_000)] {
            phone.tap(316 * MIN + 41_000 + second * 1_000, &weighed_in(net, drams)).unwrap();
        }
        let page = phone.view(317 * MIN).weigh_in.unwrap();
        assert_eq!(page.lines.last().unwrap().value, in_all, "{:?}", page.lines);
    }
}

#[test]
fn a_match_that_is_set_long_after_the_start_is_not_over() {
    let mut phone = started();
    phone.tap(367 * MIN, &rule(RuleTap::Begin)).unwrap();
    assert_eq!(phone.view(368 * MIN).phase, restwater_screen::MatchPhase::Before);
    // Set while it may have begun, it is that of the start.
    let mut phone = started();
    phone.tap(200 * MIN, &rule(RuleTap::Begin)).unwrap();
    assert_eq!(phone.view(201 * MIN).phase, restwater_screen::MatchPhase::Fishing);
}

#[test]
fn all_in_is_proposed_from_the_start_of_the_session() {
    let mut phone = started();
    // Begun at 22:13; set at 00:13, all-in is still proposed at 22:30.
    let all_in =
        |phone: &mut Phone, ms| phone.view(ms).rows.iter().find(|r| r.tag == "all-in").unwrap().value.clone();
    assert_eq!(all_in(&mut phone, MIN), "22:30");
    assert_eq!(all_in(&mut phone, 120 * MIN), "22:30");
    phone.tap(120 * MIN, &rule(RuleTap::Begin)).unwrap();
    assert_eq!(phone.view(120 * MIN).says, "to all-out at 03:30.");
}
