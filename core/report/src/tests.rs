mod days;

use super::*;
use restwater_log::{
    FeedAmount, FeedKind, FeedMeasure, FeedSaid, FishSaid, FishSign, FishWeight, MoveAt, OtherPeg, Payload,
    PlanLine, Reach, Rig, Side, Spot, WaterPlace, WeightUnit,
};
use restwater_match_day::weight::Weight;
use restwater_session::Logged;
use restwater_session::fold;
use restwater_session::written::{SESSION, Written};
use restwater_sky::conditions::Conditions;

fn day(casts: i64) -> Session {
    let mut day = Written::new(2);
    let rig = Rig { bait: Some("<script>alert(1)</script> & \"bread\"".into()), ..Rig::default() };
    day.log(1, Payload::RigSet { rod: 1, rig });
    for n in 0..casts {
        let reach = Reach::Metres { cm: 2_000 + u32::try_from(n % 5).unwrap() * 400 };
        let bearing_cdeg = i32::try_from(n % 7).unwrap() * 600 - 1_800;
        day.log(
            n * 1_000 + 5,
            Payload::SpotSet { rod: 1, spot: Spot { mark: None, bearing_cdeg, reach, clipped: false } },
        );
        day.log(n * 1_000 + 10, Payload::Cast { rod: 1 });
        if n % 3 == 0 {
            day.log(n * 1_000 + 300 + n * 7, Payload::Bite { rod: 1 });
            day.log(n * 1_000 + 400 + n * 7, Payload::Landed { rod: 1, fish: None });
        } else {
            day.log(n * 1_000 + 900, Payload::WoundIn { rod: 1 });
        }
    }
    day.log(casts * 1_000 + 20, Payload::Noted { text: "ice <in> the margin\u{0}".into() });
    fold(SESSION, &day.ops)
}

#[test]
fn texts_from_the_log_are_escaped_and_nothing_is_fetched() {
    let html = report(&Wording::new(), &day(12), WhoseDay::Own);
    assert!(!html.contains("<script"));
    assert!(html.contains("&lt;script&gt;") && html.contains("ice &lt;in&gt; the margin"));
    for outside in ["http://", "https://", "src=", "href=", "url(", "@import"] {
        assert!(!html.contains(outside), "{outside}");
    }
    assert!(!html.contains("report-"), "every message is there");
}

#[test]
fn every_picture_has_a_name_and_says_in_words_what_it_shows() {
    let html = report(&Wording::new(), &day(12), WhoseDay::Own);
    assert_eq!(html.matches("role=\"img\"").count(), 3);
    assert_eq!((html.matches("<title id=").count(), html.matches("<desc id=").count()), (3, 3));
    assert!(html.contains("4 waits ended with a bite: "));
    assert!(
        html.contains("\u{a0}% after 10 min") || html.contains("\u{a0}% after 5 min"),
        "the curve in words"
    );
    assert!(html.contains("20.0 m, 18.0° left: "), "the swim in words");
}

#[test]
fn an_empty_and_an_endless_session_have_a_report_too() {
    let empty = report(&Wording::new(), &day(0), WhoseDay::Own);
    assert!(empty.contains("Can&#39;t tell yet") && empty.contains("No spot was logged"));
    let long = report(&Wording::new(), &day(700), WhoseDay::Own);
    assert!(long.contains("580 more casts"));
}

#[test]
fn a_guess_is_called_one_and_a_spot_by_its_mark() {
    let mut day = Written::new(1);
    day.log(1, Payload::MarkSet { bearing_cdeg: 300, name: "Gate".into() });
    let spot = Spot { mark: None, bearing_cdeg: 300, reach: Reach::Metres { cm: 3_800 }, clipped: false };
    day.log(2, Payload::SpotSet { rod: 1, spot });
    for (n, guessed) in [(0, true), (1, false)] {
        day.log(n * 1_000 + 10, Payload::Cast { rod: 1 });
        day.log(n * 1_000 + 500, Payload::Bite { rod: 1 });
        let (unit, count) = (WeightUnit::Drams, 384);
        let fish = Some(if guessed {
            FishWeight::Guessed { unit, count }
        } else {
            FishWeight::Weighed { unit, count }
        });
        day.log(n * 1_000 + 600, Payload::Landed { rod: 1, fish });
    }
    let html = report(&Wording::new(), &fold(SESSION, &day.ops), WhoseDay::Own);
    for text in [
        "<td>Gate, 38.0 m</td>",
        "Gate, 38.0 m: 2 casts, 2 bites",
        "landed, about 1 lb\u{a0}8 oz by eye</td>",
        "landed, 1 lb\u{a0}8 oz</td>",
        "1.36 kg; 1 fish by eye</dd>",
        "Waits run from the splash.</p>",
    ] {
        assert!(html.contains(text), "{text} in {html}");
    }
}

#[test]
fn weather_nets_fish_put_back_and_hooklengths_lost_are_in_it() {
    let mut day = Written::new(1);
    let cold = Conditions { water: Some(52), cloud: Some(8), ..Conditions::default() };
    day.log(1, Payload::ConditionsSet(cold.logged()));
    for (n, put_back) in [(0, false), (1, true)] {
        let cast = day.log(n * 1_000 + 10, Payload::Cast { rod: 1 });
        day.log(n * 1_000 + 500, Payload::Bite { rod: 1 });
        day.log(n * 1_000 + 600, Payload::Landed { rod: 1, fish: None });
        let weight = Some(FishWeight::Weighed { unit: WeightUnit::Drams, count: 384 });
        let net = Some("Net <2>".to_owned());
        day.log(
            n * 1_000 + 610,
            Payload::FishSet(FishSaid { cast, class: Some("Carp".into()), weight, net, put_back }),
        );
    }
    day.log(2_100, Payload::Cast { rod: 1 });
    day.log(2_200, Payload::HooklengthLost { rod: 1 });
    day.log(2_300, Payload::WoundIn { rod: 1 });
    day.log(2_400, Payload::NetWeighed { net: "net <2>".into(), shown: Weight::Drams(400).logged() });
    let html = report(&Wording::new(), &fold(SESSION, &day.ops), WhoseDay::Own);
    for text in [
        "22:13 water 5.2 °C, cloud all cloud",
        "<dt>Put back</dt><dd>1</dd>",
        "<dt>Hooklengths lost</dt><dd>1</dd>",
        "Net &lt;2&gt;: 1 fish, 0.68 kg of it known; the scales showed 1 lb\u{a0}9 oz",
        "landed, Carp, 1 lb\u{a0}8 oz, Net &lt;2&gt;</td>",
        "landed, Carp, 1 lb\u{a0}8 oz, put back</td>",
        "wound in, hooklength lost</td>",
    ] {
        assert!(html.contains(text), "{text} in {html}");
    }
}

#[test]
fn feed_and_fish_that_showed_themselves_are_in_it_with_their_times_and_places() {
    let mut day = Written::new(1);
    let place = WaterPlace { bearing_cdeg: -550, range_cm: 3_660 };
    let amount = FeedAmount::Measures { measure: FeedMeasure::Ball, count: 3, each_mg: 80_000 };
    day.log(60, Payload::Fed(FeedSaid { what: FeedKind::Ball, amount, rod: None, place: Some(place) }));
    day.log(120, Payload::FishShown { sign: FishSign::Bubbles, place });
    let before = report(&Wording::new(), &fold(SESSION, &day.ops), WhoseDay::Own);
    assert!(before.contains("Fed about 240 g.</li>"), "{before}");
    day.log(180, Payload::FeederSet { rod: 1, fill_mg: Some(30_000) });
    day.log(240, Payload::Cast { rod: 1 });
    let html = report(&Wording::new(), &fold(SESSION, &day.ops), WhoseDay::Own);
    for text in [
        "Fed about 270 g, 30 g of it by feeders with their casts.</li>",
        "22:14 fed 3 balls, 36.6 m, 5.5° left</li>",
        "22:15 Bubbles, 36.6 m, 5.5° left</li>",
    ] {
        assert!(html.contains(text), "{text} in {html}");
    }
}

#[test]
fn a_plan_is_compared_with_what_happened_and_without_one_nothing_of_it_is_shown() {
    let mut day = Written::new(1);
    assert!(!report(&Wording::new(), &fold(SESSION, &day.ops), WhoseDay::Own).contains("Plan"));
    let lines = vec![
        PlanLine::Peg { peg: "<14>".into(), note: String::new() },
        PlanLine::Leave { minutes: 20 },
        PlanLine::Move { at: MoveAt::AllIn { minutes: 90 } },
    ];
    day.log(10, Payload::PlanTaken { day: 19_675, lines });
    day.log(60, Payload::Cast { rod: 1 });
    day.log(60 + 12 * 60, Payload::WoundIn { rod: 1 });
    let html = report(&Wording::new(), &fold(SESSION, &day.ops), WhoseDay::Own);
    for text in [
        "Plan: peg\u{a0}&lt;14&gt;. No peg was entered.</li>",
        "Plan: leave the first casts 20 min. The first was left 12 min.</li>",
        "Plan: kept-back water at 23:43. No cast went there.</li>",
    ] {
        assert!(html.contains(text), "{text} in {html}");
    }
}

#[test]
fn neighbours_section_other_nets_the_rule_and_whose_day_it_is_are_in_it() {
    let mut day = Written::new(1);
    for (s, side) in [(600, Side::Left), (1_200, Side::Left), (1_800, Side::Across)] {
        day.log(s, Payload::NeighbourCaught { side });
    }
    day.log(3_600, Payload::SessionEnded);
    day.log(3_700, Payload::SectionSet { left: 1, right: 5 });
    for (place, guessed) in [(1, false), (2, true)] {
        let (peg, shown) = (OtherPeg { side: Side::Right, place }, Weight::Drams(400).logged());
        day.log(3_710, Payload::OtherNetTold { peg, shown, guessed });
    }
    day.log(3_720, Payload::MatchRuleSaid { text: "dead <fish> don't count".into() });
    let session = fold(SESSION, &day.ops);
    let html = report(&Wording::new(), &session, WhoseDay::Other);
    for text in [
        "Another angler&#39;s day, imported from a file.",
        "22:23 a fish to the left</li>",
        " yet. In 50 min, since 22:23: you landed 0 and saw 2 neighbours land 1.",
        "Section: 1 peg to the left, 5 pegs to the right.",
        "Next peg right: 1 lb\u{a0}9 oz, called",
        "2nd peg right: about 1 lb\u{a0}9 oz, guessed",
        "Dead and returned fish: dead &lt;fish&gt; don",
    ] {
        assert!(html.contains(text), "{text} in {html}");
    }
    assert!(!report(&Wording::new(), &session, WhoseDay::Own).contains("imported from a file"));
}
