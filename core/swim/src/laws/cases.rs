//! Named cases of the swim.

use super::*;

#[test]
fn one_cast_is_one_disturbance_where_it_was_meant() {
    let input =
        SwimInput { marks: three_marks(), casts: vec![a_cast(-3.0, 35.0, 10)], ..SwimInput::default() };
    let swim = Swim::new(input).unwrap();
    let figures = swim.figures(40 * MINUTE);
    let meant = swim.cell_of(Spot { bearing_deg: -3.0, range_m: 35.0 }).unwrap();
    let cell = figures.cells[swim.place(meant).unwrap()];
    assert!(cell.disturbances > 0.999 && cell.rested_min == Some(30.0) && cell.casts == 1);
    assert_eq!(cell.wait_min, 20.0);
    // A disc of 2 m in the middle of the swim.
    assert!((figures.disturbed_m2 - 4.0 * std::f64::consts::PI).abs() < 1e-3);
    // Before the cast nothing had happened.
    let before = swim.figures(9 * MINUTE);
    assert_eq!((before.casts, before.disturbed_m2), (0, 0.0));
    assert!(before.cells.iter().all(|c| c.rested_min.is_none()));
}

#[test]
fn clipped_and_whole_cells_are_counted_alike() {
    // A boundary that cuts every cell a little but leaves the one that was fished nearly whole.
    let cut = vec![
        Point { x: -60.0, y: 0.5 },
        Point { x: 60.0, y: 0.5 },
        Point { x: 60.0, y: 39.5 },
        Point { x: -60.0, y: 39.5 },
    ];
    let free =
        SwimInput { marks: three_marks(), casts: vec![a_cast(-3.0, 35.0, 10)], ..SwimInput::default() };
    let clipped = SwimInput { boundary: Some(cut), ..free.clone() };
    let (a, b) = (Swim::new(free).unwrap(), Swim::new(clipped).unwrap());
    let id = a.cell_of(Spot { bearing_deg: -3.0, range_m: 35.0 }).unwrap();
    assert!(!b.cell(id).unwrap().whole);
    let of = |s: &Swim| s.figures(40 * MINUTE).cells[s.place(id).unwrap()];
    assert!((of(&a).disturbances - of(&b).disturbances).abs() < 0.03);
    assert_eq!(of(&a).wait_min, of(&b).wait_min);
}

/// A cast a degree from the edge of its square, landed at 14 min after a bite at 10 min; one whose end was not seen; one that
/// still settles; and one that is out.
#[test]
fn the_minutes_of_a_cell_are_those_its_own_casts_waited() {
    let (from, to) = (|minute: i64| minute * MINUTE, |minute: i64| Some(minute * MINUTE));
    let landed = CastAt {
        end_ms: to(24),
        waits_to_ms: to(20),
        bites: 1,
        bite_ms: to(20),
        landed: 1,
        ..a_cast(-4.0, 35.0, 10)
    };
    let not_seen = CastAt { waits_to_ms: to(30), end_seen: false, ..a_cast(-4.0, 35.0, 30) };
    let out = CastAt { end_ms: None, waits_from_ms: from(52), waits_to_ms: None, ..a_cast(-4.0, 35.0, 50) };
    let swim = Swim::new(SwimInput { casts: vec![landed, not_seen, out], ..SwimInput::default() }).unwrap();
    let meant = swim.place(swim.cell_of(landed.spot).unwrap()).unwrap();
    let at = |minute: i64| swim.figures(minute * MINUTE).cells;
    let of = |minute: i64| (at(minute)[meant].casts, at(minute)[meant].wait_min);
    assert_eq!([of(15), of(24), of(49)], [(1, 5.0), (1, 10.0), (2, 10.0)]);
    assert_eq!([of(51), of(60)], [(3, 10.0), (3, 18.0)]);
    let elsewhere = |(place, cell): (usize, &CellFigures)| place != meant && cell.wait_min > 0.0;
    assert!(!at(60).iter().enumerate().any(elsewhere), "a square without a cast has no minutes");
}

#[test]
fn a_cast_outside_is_counted_and_not_drawn() {
    let input = SwimInput {
        fan: Some(Fan { from_deg: -20.0, to_deg: 20.0 }),
        casts: vec![a_cast(60.0, 30.0, 1)],
        ..SwimInput::default()
    };
    let swim = Swim::new(input).unwrap();
    let figures = swim.figures(30 * MINUTE);
    assert_eq!((figures.casts, figures.casts_outside), (1, 1));
    assert!(matches!(swim.spot_at(60.0, 30.0), Err(SwimError::OutsideSwim { .. })));
    let ask = SceneAsk::new(411.0, 500.0, 6.3, 1.0).unwrap();
    let scene = swim.scene(&figures, &ask, &SceneWords::default()).unwrap();
    assert!(scene.mark_shape.is_empty());
}

#[test]
fn where_next_gives_its_reasons() {
    let mut bitten = a_cast(-17.0, 35.0, 200);
    bitten.bites = 1;
    let mut liner = a_cast(-3.0, 45.0, 100);
    liner.liners = 1;
    let kept = KeptBack {
        fan: Fan { from_deg: -28.0, to_deg: 28.0 },
        band: Band { from_m: 50.0, to_m: 60.0 },
        since_ms: 0,
        released_ms: None,
    };
    let input = SwimInput {
        marks: three_marks(),
        casts: vec![bitten, liner],
        kept_back: vec![kept],
        castable_m: Some(48.0),
        ..SwimInput::default()
    };
    let swim = Swim::new(input).unwrap();
    let figures = swim.figures(230 * MINUTE);
    let next = swim.where_next(&figures);
    let best = &next.ranked[0];
    assert_eq!(swim.cell_of(Spot { bearing_deg: -17.0, range_m: 45.0 }), Some(best.cell));
    assert!(best.reasons.iter().any(|r| matches!(r, Reason::BehindLastBite { .. })));
    assert!(best.reasons.iter().any(|r| matches!(r, Reason::LinersBeside { liners: 1 })));
    assert!(best.reasons.iter().any(|r| matches!(r, Reason::NeverDisturbed)));
    assert_eq!(next.bites, 1);
    // Kept-back water and cells out of reach are set aside, with the reason.
    assert!(next.ranked.iter().all(|n| n.spot.range_m < 48.0));
    assert!(next.set_aside.iter().all(|n| n.against.iter().any(|a| matches!(a, Against::KeptBack { .. }))));
    // The spot of the bite itself has not rested.
    let there = swim.cell_of(Spot { bearing_deg: -17.0, range_m: 35.0 }).unwrap();
    let same = next.ranked.iter().find(|n| n.cell == there).unwrap();
    assert!(same.against.iter().any(|a| matches!(a, Against::RestedTooShort { .. })));
}

#[test]
fn many_casts_beside_a_cell_may_have_disturbed_it() {
    let beside = |count: usize| {
        let casts = (0..count).map(|i| a_cast(-3.0, 35.0, i64::try_from(i).unwrap())).collect();
        Swim::new(SwimInput { marks: three_marks(), casts, ..SwimInput::default() }).unwrap()
    };
    // The cell that one cast reaches with a probability above zero but below one half.
    let chance = |swim: &Swim| swim.figures(60 * MINUTE).cells;
    let (one, many) = (beside(1), beside(40));
    let place = (0..one.cells().len())
        .filter(|&i| one.cells()[i].aim.is_some() && chance(&one)[i].rested_min.is_none())
        .max_by(|&i, &j| chance(&one)[i].disturbances.total_cmp(&chance(&one)[j].disturbances))
        .unwrap();
    assert!(chance(&one)[place].disturbances < 0.5 && chance(&many)[place].disturbances > 0.5);
    let said = |swim: &Swim| {
        let id = swim.cells()[place].id;
        let next = swim.where_next(&swim.figures(60 * MINUTE));
        next.ranked.into_iter().find(|n| n.cell == id).unwrap()
    };
    assert!(said(&one).reasons.iter().any(|r| matches!(r, Reason::NeverDisturbed)));
    let (reasons, against) = (said(&many).reasons, said(&many).against);
    assert!(!reasons.iter().any(|r| matches!(r, Reason::NeverDisturbed)));
    assert!(against.iter().any(|a| matches!(a, Against::MaybeDisturbed { casts } if *casts > 0.5)));
    // Hours later these casts are longer ago than the rest target.
    let later = many.where_next(&many.figures(400 * MINUTE));
    let quiet = later.ranked.iter().find(|n| n.cell == many.cells()[place].id).unwrap();
    assert!(quiet.reasons.iter().any(|r| matches!(r, Reason::QuietLately { .. })), "{quiet:?}");
}

#[test]
fn before_any_bite_the_usual_start_counts() {
    let swim = Swim::new(SwimInput { marks: three_marks(), ..SwimInput::default() }).unwrap();
    let next = swim.where_next(&swim.figures(0));
    let first = &next.ranked[0];
    assert!(first.reasons.iter().any(|r| matches!(r, Reason::UsualStart { .. })));
    assert_eq!((first.spot.range_m, first.spot.bearing_deg), (35.0, -3.0));
}

#[test]
fn kept_back_water_counts_casts_into_it() {
    let kept = KeptBack {
        fan: Fan { from_deg: -10.0, to_deg: 10.0 },
        band: Band { from_m: 30.0, to_m: 40.0 },
        since_ms: 60 * MINUTE,
        released_ms: Some(300 * MINUTE),
    };
    let casts = vec![a_cast(0.0, 35.0, 10), a_cast(0.0, 35.0, 90), a_cast(0.0, 45.0, 95)];
    let swim = Swim::new(SwimInput { kept_back: vec![kept], casts, ..SwimInput::default() }).unwrap();
    let now = swim.figures(120 * MINUTE).kept_back;
    assert_eq!((now.len(), now[0].minutes, now[0].casts_into), (1, 60.0, 1));
    assert!(swim.figures(30 * MINUTE).kept_back.is_empty());
    assert!(swim.figures(300 * MINUTE).kept_back.is_empty());
}

#[test]
fn the_small_fan_has_no_words() {
    let casts = (0..12i64).map(|i| a_cast(-17.0 + i as f64, 30.0 + i as f64, i * 20)).collect();
    let swim = Swim::new(SwimInput { marks: three_marks(), casts, ..SwimInput::default() }).unwrap();
    let ask = SceneAsk { detail: Detail::Small, ..SceneAsk::new(134.0, 124.0, 6.3, 2.0).unwrap() };
    let scene = swim.scene(&swim.figures(235 * MINUTE), &ask, &SceneWords::default()).unwrap();
    assert!(scene.label_text.is_empty() && scene.key.is_empty());
    assert!(scene.line_role.contains(&LineRole::Outline) && !scene.hatch_xy.is_empty());
    assert!(scene.fill_role.contains(&FillRole::JustFished));
}

#[test]
fn the_state_of_water_goes_from_just_fished_to_resting_to_free() {
    let swim = Swim::new(SwimInput { casts: vec![a_cast(0.0, 35.0, 10)], ..SwimInput::default() }).unwrap();
    let place = swim.place(swim.cell_of(Spot { bearing_deg: 0.0, range_m: 35.0 }).unwrap()).unwrap();
    let state = |minute: i64| swim.figures(minute * MINUTE).cells[place].state(45.0);
    // Cast at 10, wound in at 30; just fished while it is out and for a third of 45 minutes from the splash.
    assert_eq!(state(9), CellState::Free);
    assert_eq!(state(29), CellState::JustFished);
    assert_eq!(state(31), CellState::Resting);
    assert_eq!(state(54), CellState::Resting);
    assert_eq!(state(55), CellState::Free);
}

#[test]
fn rested_kept_back_water_is_proposed_when_nothing_else_brings_a_bite() {
    let kept = KeptBack {
        fan: Fan { from_deg: -5.0, to_deg: 5.0 },
        band: Band { from_m: 40.0, to_m: 50.0 },
        since_ms: 0,
        released_ms: None,
    };
    let day = |casts: i64, bite: Option<usize>, kept_back: Vec<KeptBack>| {
        let mut casts: Vec<CastAt> = (0..casts).map(|i| a_cast(-15.0, 25.0, 20 * i)).collect();
        if let Some(cast) = bite.and_then(|i| casts.get_mut(i)) {
            cast.bites = 1;
        }
        let swim = Swim::new(SwimInput { casts, kept_back, ..SwimInput::default() }).unwrap();
        swim.where_next(&swim.figures(100 * MINUTE)).go_in
    };
    let go_in = day(5, None, vec![kept]).unwrap();
    assert_eq!((go_in.minutes, go_in.because), (100.0, GoInBecause::NoBites { casts: 5 }));
    assert_eq!(go_in.cell, CellId { column: 2, row: 3 });
    assert!(day(5, Some(0), vec![kept]).is_some(), "four without a bite since the first");
    assert_eq!(day(5, Some(2), vec![kept]), None, "a bite two casts ago");
    assert_eq!(day(3, None, vec![kept]), None, "too few casts to say");
    assert_eq!(day(5, None, Vec::new()), None, "nothing is kept back");
    assert_eq!(day(5, None, vec![KeptBack { since_ms: 80 * MINUTE, ..kept }]), None, "not rested yet");
}

#[test]
fn bad_input_is_refused_with_words() {
    let refused = |change: fn(&mut SwimInput)| {
        let mut input = SwimInput { marks: three_marks(), ..SwimInput::default() };
        input.casts.push(a_cast(0.0, 30.0, 0));
        change(&mut input);
        Swim::new(input).unwrap_err()
    };
    let corner = |x: f64, y: f64| Point { x, y };
    let bow = refused(|i| {
        let corner = |x: f64, y: f64| Point { x, y };
        i.boundary = Some(vec![corner(-9.0, 10.0), corner(9.0, 40.0), corner(9.0, 10.0), corner(-9.0, 40.0)]);
    });
    assert!(matches!(bow, SwimError::OutlineCrosses { .. }));
    assert!(matches!(
        refused(|i| i.bands = vec![Band { from_m: 9.0, to_m: 9.0 }]),
        SwimError::BandWithoutWidth { .. }
    ));
    assert!(matches!(refused(|i| i.casts[0].spot.range_m = 914.4), SwimError::RangeTooLong { .. }));
    assert!(matches!(refused(|i| i.casts[0].end_ms = Some(-5)), SwimError::EndsBeforeStart { .. }));
    assert!(matches!(refused(|i| i.rest_target_min = f64::NAN), SwimError::NotANumber { .. }));
    assert!(matches!(refused(|i| i.rest_target_min = -1.0), SwimError::NotPositive { .. }));
    assert!(matches!(refused(|i| i.near_m = 0.0), SwimError::NotPositive { .. }));
    // Water behind the peg only.
    let behind = vec![corner(-5.0, -20.0), corner(5.0, -20.0), corner(0.0, -5.0)];
    let input = SwimInput { boundary: Some(behind), ..SwimInput::default() };
    assert_eq!(Swim::new(input).unwrap_err(), SwimError::NoWater);
    assert!(matches!(SceneAsk::new(0.0, 500.0, 6.3, 1.0), Err(SwimError::NoRoomToDraw { .. })));
    assert!(matches!(SceneAsk::new(411.0, f64::NAN, 6.3, 1.0), Err(SwimError::NoRoomToDraw { .. })));
    assert!(SceneAsk::new(411.0, 500.0, 0.0, 1.0).is_err());
    let swim = Swim::new(SwimInput::default()).unwrap();
    let far = Some(CellId { column: 99, row: 0 });
    let ask = SceneAsk { next: far, ..SceneAsk::new(411.0, 500.0, 6.3, 1.0).unwrap() };
    let refused = swim.scene(&swim.figures(0), &ask, &SceneWords::default());
    assert!(matches!(refused, Err(SwimError::NoSuchCell { .. })));
}
