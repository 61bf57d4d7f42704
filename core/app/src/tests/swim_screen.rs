//! The Swim screen through the App: names, the position of the peg, GeoJSON, and bad input.

use super::swim_files::furnished;
use super::*;
use restwater_screen::{HazardKind, SwimThing, SwimView};
use restwater_swim::{FeatureKind, LineRole, MarkShape, SwimScene};

pub(super) fn swim(phone: &mut Phone, ms: i64) -> SwimView {
    match phone.app().screen(Which::Swim, &at(ms)).unwrap() {
        Screen::Swim(swim) => swim,
        other => panic!("{other:?}"),
    }
}

pub(super) fn choose(tap: SwimTap) -> Action {
    Action::Swim { tap }
}

fn named(text: &str) -> Action {
    typed(TypedInto::SwimName, text)
}

pub(super) fn glass(small: bool) -> FanGlass {
    FanGlass { width_px: 1_000.0, height_px: 700.0, px_per_mm: 16.0, text_scale: 1.0, small }
}

pub(super) fn scene(phone: &mut Phone, ms: i64, small: bool) -> SwimScene {
    phone.app().swim_scene(&at(ms), &glass(small)).unwrap()
}

/// Asserts that the action is refused with this kind and a whole sentence, and that nothing was logged.
pub(super) fn refused(phone: &mut Phone, ms: i64, action: &Action, kind: ErrorKind) -> String {
    let before = phone.app().ops().len();
    let error = phone.tap(ms, action).unwrap_err();
    assert_eq!(error.kind(), kind, "{error}");
    assert_eq!(phone.app().ops().len(), before);
    let said = phone.app().message(&error);
    assert!(
        said.ends_with('.') && said.starts_with(|c: char| c.is_uppercase() || "\"0123456789".contains(c)),
        "{said}"
    );
    swim(phone, ms);
    said
}

#[test]
fn the_title_names_the_peg() {
    let titled = |action: Action| {
        let mut phone = Phone::new();
        phone.tap(0, &action).unwrap();
        phone.tap(1_000, &START).unwrap();
        swim(&mut phone, 2_000).title
    };
    assert_eq!(titled(typed(TypedInto::Peg, "14")), "Swim, peg\u{a0}14");
    assert_eq!(titled(typed(TypedInto::Peg, "Peg 14")), "Swim, peg\u{a0}14");
    assert_eq!(titled(typed(TypedInto::Water, "Alder Pool")), "Swim, Alder Pool");
    assert_eq!(titled(typed(TypedInto::Depth, "3 m")), "Swim");
}

/// Back on the old peg in the afternoon: what one session doesn't know, the day may.
#[test]
fn a_second_session_of_a_day_says_nothing_of_the_whole_day() {
    let mut phone = started();
    phone.tap(MIN, &Action::CastHere).unwrap();
    for (minute, action) in [(2, CAST), (9, BITE), (10, LANDED), (11, Action::EndSession), (60, START)] {
        phone.tap(minute * MIN, &action).unwrap();
    }
    let view = swim(&mut phone, 61 * MIN);
    assert!(view.why.starts_with("Not fished this session;"), "{}", view.why);
    let said = format!("{view:?}");
    assert!(said.contains("Rested, or not fished this session.") && !said.contains("today"), "{said}");
}

#[test]
fn the_reasons_read_as_sentences() {
    let mut phone = started();
    let view = swim(&mut phone, MIN);
    assert_eq!(
        view.why,
        "Not fished this session; a usual first range (common practice, no source). No bites in this swim yet."
    );
    assert_eq!(view.cell, "Not cast here.");
    phone.tap(2 * MIN, &Action::CastHere).unwrap();
    phone.tap(3 * MIN, &CAST).unwrap();
    phone.tap(9 * MIN, &BITE).unwrap();
    phone.tap(10 * MIN, &LANDED).unwrap();
    let view = swim(&mut phone, 11 * MIN);
    assert!(view.why.ends_with(". 1 bite so far: too few to be sure."), "{}", view.why);
    for line in view.list.iter().chain(&view.drift) {
        assert!(line.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit()), "{line}");
        assert!(line == &view.headline || line.ends_with('.'), "{line}");
    }
}

#[test]
fn marks_are_named_by_typing_or_numbered_and_renamed_later() {
    let mut phone = started();
    phone.tap(1_000, &Action::MarkHere { name: String::new() }).unwrap();
    phone.tap(2_000, &Action::StepAim { step: Step::Left }).unwrap();
    phone.tap(3_000, &named("Dead tree")).unwrap();
    assert_eq!(phone.app().ops().len(), 2, "typing logs nothing");
    phone.tap(4_000, &Action::MarkHere { name: String::new() }).unwrap();
    let names = |phone: &mut Phone| -> Vec<String> {
        phone.app().session().unwrap().marks.iter().map(|m| m.name.clone()).collect()
    };
    assert_eq!(names(&mut phone), ["Mark 1", "Dead tree"]);
    assert_eq!(swim(&mut phone, 5_000).name.value, "", "the name is used up");
    let id = phone.app().session().unwrap().marks[0].id;
    let said = refused(&mut phone, 6_000, &choose(SwimTap::Rename { id }), ErrorKind::NotNow);
    assert!(said.starts_with("Type a name first"), "{said}");
    phone.tap(7_000, &named(" Gate ")).unwrap();
    let nobody = choose(SwimTap::Rename { id: Uuid::from_u128(5) });
    refused(&mut phone, 8_000, &nobody, ErrorKind::NotNow);
    phone.tap(9_000, &choose(SwimTap::Rename { id })).unwrap();
    assert_eq!(names(&mut phone), ["Gate", "Dead tree"]);
    phone.open();
    assert_eq!(names(&mut phone), ["Gate", "Dead tree"]);
    phone.tap(10_000, &Action::Undo).unwrap();
    assert_eq!(names(&mut phone), ["Mark 1", "Dead tree"]);
    phone.tap(11_000, &choose(SwimTap::Remove { thing: SwimThing::Set { id } })).unwrap();
    assert_eq!(names(&mut phone), ["Dead tree"]);
    // The next free number, not one in use.
    phone.tap(12_000, &Action::StepAim { step: Step::Right }).unwrap();
    phone.tap(13_000, &Action::MarkHere { name: String::new() }).unwrap();
    assert_eq!(names(&mut phone), ["Dead tree", "Mark 2"]);
}

#[test]
fn features_and_hazards_take_the_typed_name_and_their_kind() {
    let mut phone = started();
    phone.tap(1_000, &choose(SwimTap::Feature { feature: FeatureKind::DropOff })).unwrap();
    phone.tap(2_000, &Action::StepAim { step: Step::Right }).unwrap();
    phone.tap(3_000, &named("old post")).unwrap();
    phone.tap(4_000, &choose(SwimTap::Hazard { hazard: HazardKind::Rope })).unwrap();
    phone.tap(5_000, &Action::StepAim { step: Step::Right }).unwrap();
    phone.tap(6_000, &choose(SwimTap::Hazard { hazard: HazardKind::Line })).unwrap();
    let things: Vec<_> = phone.app().session().unwrap().landmarks.iter().map(|l| l.name.clone()).collect();
    assert_eq!(things, ["", "old post", "line overhead"]);
    let remove = swim(&mut phone, 7_000).rows.into_iter().find(|r| r.tag == "remove").unwrap();
    assert!(remove.choices[0].label.starts_with("drop-off ("), "{:?}", remove.choices);
    phone.tap(8_000, &remove.choices[1].action).unwrap();
    assert_eq!(phone.app().session().unwrap().landmarks.len(), 2);
    phone.tap(9_000, &Action::Undo).unwrap_or_else(|e| panic!("{e}"));
}

#[test]
fn two_marks_never_share_a_bearing() {
    let mut phone = started();
    phone.tap(1_000, &Action::MarkHere { name: "Gate".into() }).unwrap();
    let bearing_cdeg = phone.app().session().unwrap().marks[0].bearing_cdeg;
    let said = refused(&mut phone, 2_000, &Action::MarkHere { name: "Hut".into() }, ErrorKind::BadInput);
    assert!(said.starts_with("Aiming marks Gate and Hut have the same bearing"), "{said}");
    refused(&mut phone, 3_000, &Action::SetMark { name: "Hut".into(), bearing_cdeg }, ErrorKind::BadInput);
    refused(
        &mut phone,
        4_000,
        &Action::SetMark { name: "Back".into(), bearing_cdeg: 9_001 },
        ErrorKind::BadInput,
    );
}

#[test]
fn bounds_that_leave_no_water_and_bands_without_width_are_refused() {
    let mut phone = started();
    let said = refused(&mut phone, 1_000, &choose(SwimTap::FarBank { cm: Some(100) }), ErrorKind::BadInput);
    assert!(said.contains("no water"), "{said}");
    refused(&mut phone, 2_000, &choose(SwimTap::RestTarget { minutes: 0 }), ErrorKind::BadInput);
    refused(&mut phone, 3_000, &choose(SwimTap::LeftPeg { cm: Some(91440) }), ErrorKind::BadInput);
    // A band too narrow to tell casts apart is drawn 2 m wide; `None` means the usual bands.
    phone.tap(5_000, &choose(SwimTap::Band { cm: Some(1) })).unwrap();
    assert!(!scene(&mut phone, 6_000, false).line_role.is_empty());
    phone.tap(7_000, &choose(SwimTap::Band { cm: None })).unwrap();
    assert!(phone.app().session().unwrap().swim.band_cm.is_none());
}

#[test]
fn a_range_of_a_thousand_yards_is_refused_but_a_spot_beyond_the_boundary_is_logged() {
    let mut phone = started();
    let to =
        |reach| Action::SetSpot { rod: 1, spot: Spot { mark: None, bearing_cdeg: 0, reach, clipped: true } };
    let said = refused(&mut phone, 1_000, &to(Reach::Yards { hundredths: 100_000 }), ErrorKind::BadInput);
    assert!(said.contains("beyond any cast"), "{said}");
    refused(&mut phone, 2_000, &to(Reach::Metres { cm: 0 }), ErrorKind::BadInput);
    refused(
        &mut phone,
        3_000,
        &to(Reach::Wraps { hundredths: u32::MAX, span_tenth_mm: u32::MAX }),
        ErrorKind::BadInput,
    );
    // A cast beyond the boundary can be logged, since it was made. The picture leaves it out, but the figures
    // count it.
    phone.tap(4_000, &choose(SwimTap::FarBank { cm: Some(3000) })).unwrap();
    phone.tap(5_000, &to(Reach::Metres { cm: 4_000 })).unwrap();
    phone.tap(6_000, &CAST).unwrap();
    let picture = scene(&mut phone, 7_000, false);
    assert!(picture.mark_shape.iter().all(|s| *s != restwater_swim::MarkShape::OutNow));
    swim(&mut phone, 8_000);
}

#[test]
fn the_peg_is_placed_by_typing_and_bad_places_are_refused() {
    let mut phone = started();
    let set = |phone: &mut Phone, ms: i64, lat: &str, lon: &str, out: &str| {
        let lines =
            [(TypedInto::PegLatitude, lat), (TypedInto::PegLongitude, lon), (TypedInto::PegBearing, out)];
        for (i, (into, text)) in (0..).zip(lines) {
            phone.tap(ms + i, &typed(into, text)).unwrap();
        }
    };
    let said = refused(&mut phone, 500, &Action::PlacePegAsTyped, ErrorKind::BadInput);
    assert!(said.starts_with("No latitude is typed"), "{said}");
    let bad = [
        ("north", "1", "0", "\"north\" is not a latitude"),
        ("91", "1", "0", "A latitude of 91 isn't possible"),
        ("52", "1 W E", "0", "\"1 W E\" is not a longitude"),
        ("52", "181", "0", "A longitude of 181 isn't possible"),
        ("52", "1", "", "No bearing is typed"),
        ("52", "1", "400", "A bearing of 400 isn't possible"),
        ("90", "1", "0", "A peg at latitude 90 is too near the pole"),
        ("-89.95", "1", "0", "A peg at latitude −89.95 is too near the pole"),
    ];
    for (i, (lat, lon, out, says)) in (1_i64..).zip(bad) {
        let ms = 1_000 * i;
        set(&mut phone, ms, lat, lon, out);
        let said = refused(&mut phone, ms + 900, &Action::PlacePegAsTyped, ErrorKind::BadInput);
        assert!(said.starts_with(says), "{said}");
        assert_eq!(swim(&mut phone, ms).place.fields[0].value, lat, "what was typed stays");
    }
    set(&mut phone, 20_000, "17 0 0 S", "179 59 59.64", "90");
    assert!(swim(&mut phone, 21_000).keys.iter().any(|k| k.key == SwimKey::PlacePeg && k.enabled));
    phone.tap(22_000, &Action::PlacePegAsTyped).unwrap();
    let place = swim(&mut phone, 23_000).place;
    let values: Vec<&str> = place.fields.iter().map(|f| f.value.as_str()).collect();
    assert_eq!(values, ["-17", "179.9999", "90"]);
    // At the date line the polygon is cut in two, and is joined again on import.
    let (text, _) = phone.app().export_geojson(true).unwrap();
    assert!(text.contains("MultiPolygon"), "{text}");
    assert_eq!(phone.app().look_at_geojson(&text).unwrap().entries, 0);
    // The action with numbers is checked alike.
    let pole = Action::PlacePeg { lat_e7: 900_000_000, lon_e7: 0, straight_out_cdeg: 0 };
    refused(&mut phone, 30_000, &pole, ErrorKind::BadInput);
    let off = Action::PlacePeg { lat_e7: 0, lon_e7: i64::MAX, straight_out_cdeg: 0 };
    refused(&mut phone, 31_000, &off, ErrorKind::BadInput);
}

#[test]
fn the_small_fan_is_the_same_swim_without_words() {
    let mut phone = furnished();
    phone.tap(10_000, &Action::CastHere).unwrap();
    phone.tap(11_000, &CAST).unwrap();
    phone.tap(12_000, &Action::KeepBack).unwrap();
    let (full, small) = (scene(&mut phone, 20_000, false), scene(&mut phone, 20_000, true));
    for role in [LineRole::Outline, LineRole::KeptBack, LineRole::NextRing] {
        assert!(full.line_role.contains(&role) && small.line_role.contains(&role), "{role:?}");
    }
    assert!(!full.label_text.is_empty() && small.label_text.is_empty());
    let out =
        |s: &SwimScene| s.mark_shape.iter().filter(|m| **m == restwater_swim::MarkShape::OutNow).count();
    assert_eq!((out(&full), out(&small)), (1, 1));
}

fn any_swim_tap() -> impl Strategy<Value = Action> {
    prop_oneof![
        5 => any_choice::any_swim().prop_map(choose),
        2 => any_choice::any_typed(),
        2 => "\\PC{0,4}".prop_map(|name| Action::MarkHere { name }),
        2 => (-10_000..10_000i32).prop_map(|bearing_cdeg| Action::SetMark { name: "m".into(), bearing_cdeg }),
        4 => prop_oneof![Just(Step::Left), Just(Step::Right), Just(Step::In), Just(Step::Out)]
            .prop_map(|step| Action::StepAim { step }),
        2 => Just(Action::KeepBack),
        1 => Just(Action::Release),
        2 => Just(Action::CastHere),
        1 => Just(CAST),
        1 => Just(Action::PlacePegAsTyped),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    /// Whatever is tapped and typed, there is a swim to show, and its labels don't overlap.
    #[test]
    fn any_taps_leave_a_swim_to_show(taps in proptest::collection::vec(any_swim_tap(), 1..25)) {
        let mut phone = started();
        for (i, tap) in (1..).zip(taps) {
            let _ = phone.tap(i * 1_000, &tap);
        }
        let picture = scene(&mut phone, 60_000, false);
        swim(&mut phone, 60_000);
        prop_assert!(phone.app().export_geojson(false).is_ok());
        let boxes: Vec<&[f32]> = picture.label_box.chunks_exact(4).collect();
        for (i, a) in boxes.iter().enumerate() {
            for b in &boxes[i + 1..] {
                let apart = a[0] + a[2] <= b[0] || b[0] + b[2] <= a[0] || a[1] + a[3] <= b[1] || b[1] + b[3] <= a[1];
                prop_assert!(apart, "{:?} {:?}", picture.label_text, picture.label_box);
            }
        }
    }
}

#[test]
fn an_earlier_moment_is_shown_on_the_swim_alone_and_nothing_is_logged_at_its_ring() {
    let mut phone = started();
    phone.tap(24 * MIN, &Action::CastHere).unwrap();
    phone.tap(25 * MIN, &CAST).unwrap();
    phone.tap(30 * MIN, &Action::Replay { steps_back: 3 }).unwrap();
    assert!(!swim(&mut phone, 31 * MIN).replay.is_empty());
    let small = scene(&mut phone, 31 * MIN, true);
    assert!(small.mark_shape.contains(&MarkShape::OutNow), "the Bank's fan shows what is out now");
    let tags = |phone: &mut Phone| -> Vec<String> {
        swim(phone, 31 * MIN).rows.into_iter().map(|row| row.tag).collect()
    };
    assert!(
        !tags(&mut phone).iter().any(|tag| ["seen", "feed", "feature", "hazard"].contains(&tag.as_str()))
    );
    for tap in [SwimTap::Hazard { hazard: HazardKind::Rope }, SwimTap::Feature { feature: FeatureKind::Bar }]
    {
        let said = refused(&mut phone, 31 * MIN, &choose(tap), ErrorKind::NotNow);
        assert_eq!(said, "This is the swim at an earlier moment. Tap NOW first.");
    }
    refused(&mut phone, 31 * MIN, &Action::CastHere, ErrorKind::NotNow);
    // Whoever logs is looking at now.
    phone.tap(32 * MIN, &WOUND_IN).unwrap();
    assert_eq!(swim(&mut phone, 33 * MIN).replay, "");
    assert!(tags(&mut phone).contains(&"hazard".into()));
}

#[test]
fn the_swim_of_a_day_that_has_ended_is_that_of_its_end() {
    let mut phone = started();
    phone.tap(5 * MIN, &CAST).unwrap();
    phone.tap(15 * MIN, &WOUND_IN).unwrap();
    phone.tap(20 * MIN, &Action::EndSession).unwrap();
    let evening = swim(&mut phone, 21 * MIN);
    let next_day = 20 * 60 * MIN;
    assert_eq!(swim(&mut phone, next_day), evening);
    phone.tap(next_day, &Action::Replay { steps_back: 1 }).unwrap();
    let earlier = swim(&mut phone, next_day).replay;
    assert!(earlier.contains("22:23"), "ten minutes before the end: {earlier}");
    // A choice could only be refused: no session is open.
    let tags = |phone: &mut Phone| -> Vec<String> {
        swim(phone, next_day).rows.into_iter().map(|row| row.tag).collect()
    };
    assert!(tags(&mut phone).is_empty(), "{:?}", tags(&mut phone));
    phone.tap(next_day + 1_000, &Action::Replay { steps_back: 0 }).unwrap();
    assert!(tags(&mut phone).is_empty(), "{:?}", tags(&mut phone));
}

#[test]
fn water_with_a_bait_in_it_does_not_rest() {
    let mut phone = started();
    phone.tap(1_000, &choose(SwimTap::RestTarget { minutes: 15 })).unwrap();
    phone.tap(2_000, &Action::CastHere).unwrap();
    let cell = phone.app().session().unwrap().rods[0].spot.clone().unwrap();
    phone.tap(MIN, &CAST).unwrap();
    let restwater_swim::WhereNext { ranked, .. } = {
        let swim = restwater_session::swim_of(phone.app().session().unwrap()).unwrap();
        let figures = swim.figures(21 * MIN);
        swim.where_next(&figures)
    };
    let bearing_deg = f64::from(cell.bearing_cdeg) / 100.0;
    let there =
        ranked.iter().find(|next| (next.spot.bearing_deg - bearing_deg).abs() < 0.1 && next.figures.out_now);
    let there = there.expect("the square of the bait");
    assert!(there.against.contains(&restwater_swim::Against::BaitOut), "{there:?}");
    let rests =
        |reason: &restwater_swim::Reason| matches!(reason, restwater_swim::Reason::RestedLongEnough { .. });
    assert!(!there.reasons.iter().any(rests), "{there:?}");
    let said = swim(&mut phone, 21 * MIN).list.join(" ");
    assert!(!said.contains("ested 20 min"), "{said}");
}

#[test]
fn a_bite_beyond_the_far_bank_counts_and_the_rest_is_named_without_the_ring() {
    let mut phone = started();
    phone.tap(1_000, &choose(SwimTap::FarBank { cm: Some(3_000) })).unwrap();
    let spot = Spot { mark: None, bearing_cdeg: 0, reach: Reach::Metres { cm: 3_500 }, clipped: true };
    phone.tap(2_000, &Action::SetSpot { rod: 1, spot }).unwrap();
    for (minute, action) in [(1, CAST), (10, BITE), (11, LANDED)] {
        phone.tap(minute * MIN, &action).unwrap();
    }
    assert!(!swim(&mut phone, 12 * MIN).why.contains("No bites"), "{}", swim(&mut phone, 12 * MIN).why);

    let mut phone = started();
    let view = swim(&mut phone, MIN);
    let best = view.headline.strip_prefix("Next: ").unwrap().to_owned();
    assert!(!view.others.iter().any(|other| other.starts_with(&best)));
    phone.tap(2 * MIN, &Action::StepAim { step: Step::Left }).unwrap();
    phone.tap(3 * MIN, &Action::CastHere).unwrap();
    let view = swim(&mut phone, 4 * MIN);
    assert!(view.others.iter().any(|other| other.starts_with(&best)), "{:?}", view.others);
}

#[test]
fn water_is_kept_back_released_and_the_past_replayed() {
    let mut phone = started();
    phone.tap(MIN, &Action::KeepBack).unwrap();
    assert!(phone.app().session().unwrap().kept_back[0].released.is_none());
    phone.tap(30 * MIN, &Action::Replay { steps_back: 99 }).unwrap();
    let Screen::Swim(past) = phone.app().screen(Which::Swim, &at(30 * MIN)).unwrap() else { panic!() };
    let earlier = past.keys.iter().find(|key| key.key == SwimKey::Earlier).unwrap();
    assert_eq!(earlier.tap.action(), Some(&Action::Replay { steps_back: 4 }));
    assert_eq!(past.replay, "As it was at 22:13");
    assert!(
        past.keys.iter().all(|k| k.key != SwimKey::CastHere || !k.enabled),
        "the past can't be cast into"
    );
    phone.tap(31 * MIN, &Action::Replay { steps_back: 0 }).unwrap();
    let glass =
        FanGlass { width_px: 1_000.0, height_px: 1_000.0, px_per_mm: 16.0, text_scale: 1.0, small: false };
    let scene = phone.app().swim_scene(&at(31 * MIN), &glass).unwrap();
    assert!(scene.line_role.contains(&restwater_swim::LineRole::KeptBack));
    // A tap aims straight out at the edge, two steps move the aim in onto the kept-back water.
    assert!(phone.app().swim_tap(&glass, 500.0, 150.0).unwrap());
    assert!(matches!(phone.tap(32 * MIN, &Action::Release), Err(AppError::NoCell)), "nothing is kept there");
    phone.tap(33 * MIN, &Action::StepAim { step: Step::In }).unwrap();
    phone.tap(34 * MIN, &Action::StepAim { step: Step::In }).unwrap();
    phone.tap(35 * MIN, &Action::Release).unwrap();
    assert!(phone.app().session().unwrap().kept_back[0].released.is_some());
}
