//! What is logged at the aim on the map: at the water that the angler chose, never at the app's own proposal.

use super::*;
use restwater_log::{FeedAmount, FeedKind, FeedMeasure, FishSign, WaterPlace};
use restwater_screen::{FeedTap, FishView, SeenTap};
use restwater_session::{reach_m, swim_of};
use restwater_swim::CellId;

const BALL: Action =
    Action::Feed { tap: FeedTap::Measure { what: FeedKind::Ball, measure: FeedMeasure::Ball } };
const TO_AIM: Action = Action::Feed { tap: FeedTap::AtAim { aim: true } };
const BUBBLES: Action = Action::Seen { tap: SeenTap::Sign { sign: FishSign::Bubbles } };

fn cell(column: u32, row: u32) -> Action {
    Action::Swim { tap: SwimTap::Cell { cell: CellId { column, row } } }
}

fn screen_of(phone: &mut Phone, which: Which, ms: i64) -> FishView {
    match phone.app().screen(which, &at(ms)).unwrap() {
        Screen::Feed(view) | Screen::Seen(view) => view,
        other => panic!("{other:?}"),
    }
}

/// Where the rod is sent to.
fn sent_to(phone: &mut Phone) -> WaterPlace {
    let spot = phone.app().session().unwrap().rods[0].spot.clone().unwrap();
    WaterPlace { bearing_cdeg: spot.bearing_cdeg, range_cm: (reach_m(spot.reach) * 100.0).round() as u32 }
}

#[test]
fn feed_at_the_aim_goes_to_the_square_that_was_chosen_before_and_after_the_cast_to_it() {
    let mut phone = started();
    phone.tap(1_000, &TO_AIM).unwrap();
    phone.tap(2_000, &cell(4, 4)).unwrap();
    phone.tap(3_000, &BALL).unwrap();
    for (ms, action) in [(4_000, Action::CastHere), (MIN, CAST), (2 * MIN, BALL)] {
        phone.tap(ms, &action).unwrap();
    }
    let there = sent_to(&mut phone);
    let fed = phone.app().session().unwrap().fed.clone();
    let apart = |place: WaterPlace| place.range_cm.abs_diff(there.range_cm);
    for fed in &fed {
        let place = fed.said.place.unwrap();
        assert_eq!(place.bearing_cdeg, there.bearing_cdeg);
        assert!(apart(place) < 500, "{place:?} is not {there:?}");
    }
    assert_eq!(fed.len(), 2);
}

#[test]
fn without_an_aim_nothing_is_logged_at_the_proposal_and_the_screens_say_so() {
    let mut phone = started();
    phone.tap(1_000, &TO_AIM).unwrap();
    let says = "No square is chosen for that. Choose one on the map first.";
    for (which, action) in [(Which::Feed, BALL), (Which::Seen, BUBBLES)] {
        let refused = phone.tap(2_000, &action).unwrap_err();
        assert!(matches!(refused, AppError::NoCell), "{refused}");
        assert_eq!(phone.app().message(&refused), says);
        let view = screen_of(&mut phone, which, 2_000);
        assert!(
            view.says.iter().any(|line| line == "No square is chosen on the map yet."),
            "{:?}",
            view.says
        );
    }
    assert_eq!(phone.app().ops().len(), 1, "START alone");
}

#[test]
fn the_place_at_the_aim_is_named_on_both_screens_and_in_what_was_logged() {
    let mut phone = started();
    phone.tap(1_000, &Action::SetMark { name: "Gate".into(), bearing_cdeg: 300 }).unwrap();
    let (on_gate, bands) = {
        let swim = swim_of(phone.app().session().unwrap()).unwrap();
        (swim.column_of(3.0).unwrap(), swim.bands().len())
    };
    assert!(bands > 2);
    phone.tap(2_000, &TO_AIM).unwrap();
    phone.tap(3_000, &cell(on_gate, 2)).unwrap();
    phone.tap(3_500, &Action::Seen { tap: SeenTap::AtAim { aim: true } }).unwrap();
    for (which, action, logged) in
        [(Which::Feed, BALL, "Fed: a ball. Gate, "), (Which::Seen, BUBBLES, "Logged: bubbles. Gate, ")]
    {
        let view = screen_of(&mut phone, which, 4_000);
        assert!(view.says.iter().any(|line| line.starts_with("Gate, ")), "{:?}", view.says);
        let notice = phone.tap(4_000, &action).unwrap().notice;
        assert!(notice.starts_with(logged), "{notice}");
        phone.look();
    }
}

/// A square is chosen, and then other bands and another mark make other squares.
#[test]
fn the_aim_stays_on_its_water_when_bands_and_marks_change() {
    let mut phone = started();
    let chosen = {
        let swim = swim_of(phone.app().session().unwrap()).unwrap();
        let at_30 = |cell: &&restwater_swim::Cell| cell.id.column == 4 && cell.sector.inner_m == 30.0;
        swim.cells().iter().find(at_30).unwrap().clone()
    };
    assert_eq!(chosen.sector.outer_m, 40.0);
    phone.tap(1_000, &cell(chosen.id.column, chosen.id.row)).unwrap();
    phone.tap(2_000, &Action::Swim { tap: SwimTap::Band { cm: Some(500) } }).unwrap();
    phone.tap(3_000, &Action::SetMark { name: "Gate".into(), bearing_cdeg: -2_000 }).unwrap();
    phone.tap(4_000, &Action::CastHere).unwrap();
    let there = sent_to(&mut phone);
    assert!((3_000..=4_000).contains(&there.range_cm), "{there:?}");
    let aim_deg = chosen.aim.unwrap().bearing_deg;
    assert!((f64::from(there.bearing_cdeg) / 100.0 - aim_deg).abs() < 10.0, "{there:?}, {aim_deg}");
}

/// On the screen of feed three times was chosen, and then nothing was fed from there.
#[test]
fn feed_on_the_map_is_as_much_as_its_row_says() {
    let mut phone = started();
    phone.tap(1_000, &Action::Feed { tap: FeedTap::Count { count: 3 } }).unwrap();
    phone.tap(2_000, &Action::Back).unwrap();
    phone.tap(3_000, &cell(2, 2)).unwrap();
    let Screen::Swim(view) = phone.app().screen(Which::Swim, &at(4_000)).unwrap() else { panic!() };
    let row = view.rows.into_iter().find(|row| row.tag == "feed").unwrap();
    assert_eq!(row.choices[0].label, "a handful, loose");
    phone.tap(4_000, &row.choices[0].action).unwrap();
    let amount = phone.app().session().unwrap().fed[0].said.amount;
    assert!(matches!(amount, FeedAmount::Measures { count: 1, .. }), "{amount:?}");
}
