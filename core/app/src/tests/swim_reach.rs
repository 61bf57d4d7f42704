//! The map reaches as far as the angler does, whatever is chosen of it, and what it says of a square can be counted from the casts.

use super::match_day::in_match;
use super::swim_screen::{choose, scene, swim};
use super::*;
use restwater_log::{FeedKind, FeedMeasure, FishSign, MoveAt};
use restwater_screen::{FeedTap, PlanTap, SeenTap};
use restwater_session::{plan_outcomes, swim_of};
use restwater_swim::{CellFigures, MarkShape};

fn to(bearing_cdeg: i32, reach: Reach) -> Action {
    Action::SetSpot { rod: 1, spot: Spot { mark: None, bearing_cdeg, reach, clipped: true } }
}

fn wraps(hundredths: u32) -> Reach {
    Reach::Wraps { hundredths, span_tenth_mm: 36_576 }
}

fn is_out_on_map(phone: &mut Phone, ms: i64) -> bool {
    scene(phone, ms, false).mark_shape.contains(&MarkShape::OutNow)
}

/// The square of a spot and what is known of it.
fn square(phone: &mut Phone, ms: i64, bearing_deg: f64, range_m: f64) -> Option<CellFigures> {
    let swim = swim_of(phone.app().session().unwrap()).unwrap();
    let cell = swim.cell_of(restwater_swim::Spot { bearing_deg, range_m })?;
    swim.figures(ms).cells.into_iter().find(|figures| figures.cell == cell)
}

/// What the Swim screen says of the square of a spot.
fn says(phone: &mut Phone, ms: i64, bearing_deg: f64, range_m: f64) -> String {
    let cell = square(phone, ms, bearing_deg, range_m).unwrap().cell;
    phone.tap(ms, &choose(SwimTap::Cell { cell })).unwrap();
    swim(phone, ms).cell.replace('\u{a0}', " ")
}

#[test]
fn a_chosen_width_of_bands_takes_no_line_off_the_map() {
    let mut phone = started();
    phone.tap(1_000, &to(0, wraps(1_925))).unwrap();
    phone.tap(MIN, &CAST).unwrap();
    assert!(is_out_on_map(&mut phone, 2 * MIN), "with the usual bands");
    for (i, cm) in (1..).zip([500, 750, 1_000, 5_900, 6_000, 7_000]) {
        phone.tap((2 + i) * MIN, &choose(SwimTap::Band { cm: Some(cm) })).unwrap();
        assert!(is_out_on_map(&mut phone, (2 + i) * MIN), "{cm} cm");
        assert_eq!(
            square(&mut phone, (2 + i) * MIN, 0.0, 70.4).map(|square| square.casts),
            Some(1),
            "{cm} cm"
        );
    }
}

#[test]
fn the_distance_to_a_neighbour_takes_no_line_off_the_map() {
    let mut phone = started();
    phone.tap(1_000, &choose(SwimTap::LeftPeg { cm: Some(2_000) })).unwrap();
    phone.tap(2_000, &to(0, wraps(2_500))).unwrap();
    phone.tap(MIN, &CAST).unwrap();
    assert!(is_out_on_map(&mut phone, 2 * MIN), "100 yd straight out, no far bank given");
    phone.tap(3 * MIN, &to(7_000, wraps(2_700))).unwrap();
    phone.tap(4 * MIN, &CAST).unwrap();
    assert!(is_out_on_map(&mut phone, 5 * MIN), "along the bank on the side without a neighbour");
}

#[test]
fn half_of_a_distance_that_nobody_gave_does_not_end_the_swim() {
    let mut phone = started();
    phone.tap(1_000, &choose(SwimTap::LeftPeg { cm: Some(1_000) })).unwrap();
    phone.tap(2_000, &choose(SwimTap::FarBankPegged { pegged: true })).unwrap();
    phone.tap(3_000, &to(0, Reach::Metres { cm: 5_900 })).unwrap();
    phone.tap(MIN, &CAST).unwrap();
    assert!(is_out_on_map(&mut phone, 2 * MIN));
    phone.tap(3 * MIN, &choose(SwimTap::FarBank { cm: Some(9_000) })).unwrap();
    assert!(!is_out_on_map(&mut phone, 4 * MIN), "beyond half-way to a far bank that was given");
}

#[test]
fn a_spot_the_rod_is_sent_to_is_on_the_map_before_the_first_cast_there() {
    for (bearing_cdeg, reach, says) in [
        (0, wraps(1_750), "Next: Straight out, 17.5 wraps"),
        (3_000, wraps(950), "Next: 30° right, 9.5 wraps"),
    ] {
        let mut phone = started();
        let proposed = swim(&mut phone, 1_000).headline;
        phone.tap(2_000, &to(bearing_cdeg, reach)).unwrap();
        let headline = swim(&mut phone, 3_000).headline.replace('\u{a0}', " ");
        assert!(headline.starts_with(says) && headline != proposed, "{headline}, after {proposed}");
        // The Bank's fan has the dot where the bait will be.
        let dot = |phone: &mut Phone, shape| {
            let small = scene(phone, 5_000, true);
            let at = small.mark_shape.iter().position(|known| *known == shape)?;
            Some((small.mark_xy[2 * at], small.mark_xy[2 * at + 1]))
        };
        let next = dot(&mut phone, MarkShape::NextDot).unwrap();
        phone.tap(4_000, &CAST).unwrap();
        let out = dot(&mut phone, MarkShape::OutNow).unwrap();
        let px = (next.0 - out.0).hypot(next.1 - out.1);
        assert!(px < 1.0, "{px} px apart");
    }
}

#[test]
fn feed_and_fish_beyond_the_usual_map_are_in_a_square_of_it() {
    let mut phone = started();
    phone.tap(1_000, &to(3_000, wraps(1_750))).unwrap();
    let ball = Action::Feed { tap: FeedTap::Measure { what: FeedKind::Ball, measure: FeedMeasure::Ball } };
    phone.tap(2_000, &Action::Feed { tap: FeedTap::AtAim { aim: true } }).unwrap();
    phone.tap(3_000, &ball).unwrap();
    phone.tap(4_000, &Action::Seen { tap: SeenTap::AtAim { aim: true } }).unwrap();
    phone.tap(5_000, &Action::Seen { tap: SeenTap::Sign { sign: FishSign::Bubbles } }).unwrap();
    // The rod goes elsewhere: what went in and what was seen stays where it was.
    phone.tap(MIN, &to(0, wraps(950))).unwrap();
    let there = square(&mut phone, 2 * MIN, 30.0, 64.0).expect("on the map");
    assert!(there.fed_mg > 0 && there.shown == 1, "{there:?}");
    let picture = scene(&mut phone, 2 * MIN, false);
    assert!(
        picture.mark_shape.contains(&MarkShape::FedGrains)
            && picture.mark_shape.contains(&MarkShape::ShownRings)
    );
}

#[test]
fn a_cast_on_the_border_of_kept_back_water_is_no_move_into_it() {
    let mut phone = Phone::new();
    let plan = Action::Plan { tap: PlanTap::Move { at: Some(MoveAt::AllIn { minutes: 90 }) } };
    phone.tap(-MIN, &plan).unwrap();
    phone.tap(0, &START).unwrap();
    let cell = square(&mut phone, 1_000, 0.0, 35.0).unwrap().cell;
    phone.tap(1_000, &choose(SwimTap::Cell { cell })).unwrap();
    phone.tap(2_000, &Action::KeepBack).unwrap();
    phone.tap(3_000, &to(0, Reach::Wraps { hundredths: 2_000, span_tenth_mm: 20_000 })).unwrap();
    phone.tap(10 * MIN, &CAST).unwrap();
    phone.tap(20 * MIN, &WOUND_IN).unwrap();
    assert_eq!(square(&mut phone, 30 * MIN, 0.0, 35.0).unwrap().casts, 0, "the map has it behind");
    let bank = phone.bank(91 * MIN);
    let said: Vec<String> = std::iter::once(bank.advice.detail).chain(bank.advice.more).collect();
    assert!(said.iter().any(|line| line.contains("fish kept-back water")), "{said:?}");
    let outcomes = plan_outcomes(phone.app().session().unwrap());
    let first = outcomes.iter().find_map(|outcome| match outcome {
        restwater_session::PlanOutcome::Move { first, .. } => Some(*first),
        _ => None,
    });
    assert_eq!(first, Some(None));
}

/// 4° left of straight out is a degree from the edge of its square: part of such casts may have landed beside it.
const ASIDE: i32 = -400;

#[test]
fn the_minutes_of_a_square_are_those_its_casts_waited() {
    let mut phone = started();
    phone.tap(1_000, &to(ASIDE, Reach::Metres { cm: 3_500 })).unwrap();
    for (minute, action) in [(1, CAST), (11, BITE), (15, LANDED), (20, CAST), (26, WOUND_IN), (30, CAST)] {
        phone.tap(minute * MIN, &action).unwrap();
    }
    assert_eq!(says(&mut phone, 27 * MIN, -4.0, 35.0).split(" min").next(), Some("2 casts here, 1 bite, 16"));
    assert_eq!(says(&mut phone, 33 * MIN, -4.0, 35.0), "3 casts here, 1 bite, 19 min fished.");
    // The end of the third is forgotten, and the next cast closes it: how long it fished is not known.
    phone.tap(50 * MIN, &CAST).unwrap();
    assert_eq!(says(&mut phone, 52 * MIN, -4.0, 35.0), "4 casts here, 1 bite, 18 min fished.");
}

#[test]
fn a_bait_that_settles_or_is_moved_waits_on_the_map_as_everywhere() {
    let mut phone = Phone::new();
    for tap in [SetupTap::Settle { seconds: 120 }, SetupTap::TwitchRestarts { restarts: true }] {
        phone.tap(-5_000, &Action::Setup { tap }).unwrap();
        phone.look();
    }
    phone.tap(0, &START).unwrap();
    phone.tap(1_000, &to(ASIDE, Reach::Metres { cm: 3_500 })).unwrap();
    phone.tap(MIN, &CAST).unwrap();
    assert_eq!(says(&mut phone, 2 * MIN, -4.0, 35.0), "1 cast here, no bites, 0 min fished.");
    phone.tap(13 * MIN, &WOUND_IN).unwrap();
    assert_eq!(says(&mut phone, 14 * MIN, -4.0, 35.0), "1 cast here, no bites, 10 min fished.");
    // Moved at 25 min, and then its end is forgotten: the stretch before that is known.
    for (minute, action) in [(17, CAST), (25, Action::Twitch { rod: 1 }), (40, CAST), (41, WOUND_IN)] {
        phone.tap(minute * MIN, &action).unwrap();
    }
    assert_eq!(says(&mut phone, 42 * MIN, -4.0, 35.0), "3 casts here, no bites, 16 min fished.");
    let waits = restwater_session::waits_of(phone.app().session().unwrap());
    assert_eq!(waits.iter().map(|wait| wait.minutes()).sum::<f64>(), 16.0);
}

#[test]
fn no_bait_fishes_in_its_square_after_all_out() {
    let mut phone = in_match();
    phone.tap(30_000, &to(ASIDE, Reach::Metres { cm: 3_500 })).unwrap();
    phone.tap(300 * MIN, &CAST).unwrap();
    assert_eq!(says(&mut phone, 310 * MIN, -4.0, 35.0), "1 cast here, no bites, 10 min fished.");
    assert_eq!(says(&mut phone, 340 * MIN, -4.0, 35.0), "1 cast here, no bites, 17 min fished.");
    phone.tap(350 * MIN, &WOUND_IN).unwrap();
    assert_eq!(says(&mut phone, 351 * MIN, -4.0, 35.0), "1 cast here, no bites, 17 min fished.");
}
