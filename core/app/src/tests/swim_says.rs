//! What the Swim says in words: bites that have no spot, where it proposes to leave a spot that gives bites, places between marks,
//! distances in the rod's unit.

use super::*;
use restwater_screen::SwimView;
use restwater_swim::LabelRole;

fn swim_at(phone: &mut Phone, ms: i64) -> SwimView {
    match phone.app().screen(Which::Swim, &at(ms)).unwrap() {
        Screen::Swim(view) => view,
        other => panic!("{other:?}"),
    }
}

fn spot(bearing_cdeg: i32, reach: Reach) -> Action {
    Action::SetSpot { rod: 1, spot: Spot { mark: None, bearing_cdeg, reach, clipped: true } }
}

fn mark(name: &str, bearing_cdeg: i32) -> Action {
    Action::SetMark { name: name.into(), bearing_cdeg }
}

#[test]
fn a_bite_whose_cast_had_no_spot_is_said_with_the_next_step() {
    let mut phone = started();
    for (minute, action) in [(1, CAST), (12, BITE), (14, LANDED), (16, CAST)] {
        phone.tap(minute * MIN, &action).unwrap();
    }
    let why = swim_at(&mut phone, 17 * MIN).why;
    let says = "1 bite isn't on the map: its cast had no spot. Set the spot under Tackle.";
    assert!(why.ends_with(says) && !why.contains("No bites"), "{why}");
    assert!(!why.contains("usual first range"), "{why}");
    phone.tap(18 * MIN, &WOUND_IN).unwrap();
    phone.tap(19 * MIN, &spot(0, Reach::Metres { cm: 3_000 })).unwrap();
    for (minute, action) in [(20, CAST), (30, BITE), (31, LANDED)] {
        phone.tap(minute * MIN, &action).unwrap();
    }
    let why = swim_at(&mut phone, 32 * MIN).why;
    assert!(why.contains("1 bite so far") && why.ends_with(says), "{why}");
}

/// Four casts at one spot, three with a bite; the record knows no other spot.
fn catching(reach: Reach) -> (Phone, i64) {
    let mut phone = started();
    phone.tap(1_000, &spot(0, reach)).unwrap();
    for i in 0..4 {
        let minute = 1 + 20 * i;
        let then = if i == 2 { vec![(12, WOUND_IN)] } else { vec![(12, BITE), (13, LANDED)] };
        for (after, action) in std::iter::once((0, CAST)).chain(then) {
            phone.tap((minute + after) * MIN, &action).unwrap();
        }
    }
    (phone, 76 * MIN)
}

#[test]
fn who_is_sent_off_a_spot_that_gives_bites_is_told_why_in_one_plain_sentence() {
    let (mut phone, now) = catching(Reach::Yards { hundredths: 3_800 });
    let view = swim_at(&mut phone, now);
    assert!(view.headline.starts_with("Next: "), "{}", view.headline);
    let says = "Bites came at your last spot, but fish may stay away from it after casts; untried water may be as good.";
    assert!(view.why.contains(says), "{}", view.why);
    // Nothing to explain where the angler chose the water, or before any bite.
    phone.tap(now + 1_000, &Action::CastHere).unwrap();
    assert!(!swim_at(&mut phone, now + 2_000).why.contains(says));
    assert!(!swim_at(&mut started(), MIN).why.contains("stay away"));
}

#[test]
fn distances_on_the_map_are_in_the_unit_of_the_rods_reach() {
    for (reach, unit, other) in
        [(Reach::Yards { hundredths: 3_800 }, " yd", " m"), (Reach::Metres { cm: 3_500 }, " m", " yd")]
    {
        let (mut phone, now) = catching(reach);
        let glass = FanGlass {
            width_px: 1_000.0,
            height_px: 1_000.0,
            px_per_mm: 16.0,
            text_scale: 1.0,
            small: false,
        };
        let scene = phone.app().swim_scene(&at(now), &glass).unwrap();
        let ranges =
            scene.label_role.iter().zip(&scene.label_text).filter(|(role, _)| **role == LabelRole::Range);
        let ranges: Vec<&str> = ranges.map(|(_, text)| text.as_str()).collect();
        assert!(!ranges.is_empty() && ranges.iter().all(|range| range.ends_with(unit)), "{ranges:?}");
        let reasons = swim_at(&mut phone, now).reasons.join("; ").replace('\u{a0}', " ");
        assert!(reasons.contains(&format!("{unit} away")), "{reasons}");
        assert!(!reasons.contains(&format!("{other} away")), "{reasons}");
    }
}

#[test]
fn a_square_between_two_marks_is_named_by_them_and_no_direction_has_half_degrees() {
    let mut phone = started();
    for (s, action) in [(1, mark("Dead tree", -2_000)), (2, mark("Gate", 500))] {
        phone.tap(s * 1_000, &action).unwrap();
    }
    let mut said = std::collections::BTreeSet::new();
    let swim = restwater_session::swim_of(phone.app().session().unwrap()).unwrap();
    for (i, cell) in (0..).zip(swim.cells().iter().filter(|cell| cell.aim.is_some())) {
        let choose = Action::Swim { tap: SwimTap::Cell { cell: cell.id } };
        phone.tap(10_000 + 1_000 * i, &choose).unwrap();
        let headline = swim_at(&mut phone, 10_500 + 1_000 * i).headline;
        assert!(!headline.contains(".5°"), "{headline}");
        said.insert(headline);
    }
    assert!(said.iter().any(|says| says.contains("between Dead tree and Gate, ")), "{said:?}");
    // A spot that is nearer to one of them.
    phone.tap(90_000, &spot(-1_200, Reach::Metres { cm: 3_500 })).unwrap();
    phone.tap(91_000, &Action::Swim { tap: SwimTap::Cell { cell: swim.cell_of(west()).unwrap() } }).unwrap();
    let headline = swim_at(&mut phone, 92_000).headline;
    assert_eq!(headline, "Next: between Dead tree and Gate, nearer Dead tree, 35 m, clipped up");
}

fn west() -> restwater_swim::Spot {
    restwater_swim::Spot { bearing_deg: -12.0, range_m: 35.0 }
}

#[test]
fn the_title_counts_the_squares_that_were_fished_within_the_rest_target() {
    let (mut phone, now) = catching(Reach::Metres { cm: 3_500 });
    let area = swim_at(&mut phone, now).area;
    assert!(area.starts_with("1 of ") && area.ends_with(" squares fished in 45 min"), "{area}");
}
