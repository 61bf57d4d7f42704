//! Labels and marks on the canvases that phones have.

use super::super::canvases::{PHONE_CANVASES, PhoneCanvas};
use super::super::covered::covered;
use super::super::scene::{FillRole, LabelRole, MarkShape};
use super::*;

/// The scene that the Swim screen requests on a phone.
fn on_phone(phone: &PhoneCanvas, left_handed: bool) -> SceneAsk {
    let (width, height) = phone.canvas_mm;
    let px = phone.px_per_mm;
    let mut ask = SceneAsk::new(width * px, height * px, px, phone.text_scale).unwrap();
    ask.hand = if left_handed { Hand::Left } else { Hand::Right };
    ask
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    /// Of labels, marks, ring, outlines and corners; the ring anywhere, the aim anywhere else.
    #[test]
    fn nothing_covers_anything_on_any_phone(
        input in swim_input(70), phone in 0..PHONE_CANVASES.len(), left in any::<bool>(),
        next in any::<prop::sample::Index>(), aim in any::<prop::sample::Index>()
    ) {
        let Some(swim) = swim(input) else { return Ok(()) };
        let figures = swim.figures(DAY_MIN * MINUTE);
        let mut ask = on_phone(&PHONE_CANVASES[phone], left);
        let cell = |index: prop::sample::Index| swim.cells()[index.index(swim.cells().len())].id;
        (ask.next, ask.chosen) = (Some(cell(next)), Some(cell(aim)));
        let scene = swim.scene(&figures, &ask, &SceneWords::default()).unwrap();
        prop_assert_eq!(faults(&scene), 0);
        prop_assert_eq!(covered(&scene), Vec::<String>::new());
        prop_assert!(all_finite(&scene));
    }
}

/// What the marks, their numbers and the key say together, in events; a mark without a number counts as one.
fn events_said(scene: &SwimScene) -> u64 {
    let is_event = |shape: &&MarkShape| {
        matches!(
            shape,
            MarkShape::BiteDiamond | MarkShape::LostCross | MarkShape::LinerTriangle | MarkShape::ShownRings
        )
    };
    let marks = scene.mark_shape.iter().filter(is_event).count() as u64;
    let said = scene.label_role.iter().zip(&scene.label_text).filter(|(role, _)| **role == LabelRole::Count);
    let (numbers, numbered) =
        said.fold((0, 0), |(sum, n), (_, text)| (sum + text.parse::<u64>().unwrap(), n + 1));
    let in_key = scene.key.iter().filter(|line| line.role == LabelRole::Count);
    let key: u64 = in_key.filter_map(|line| line.text.rsplit(' ').next()?.parse::<u64>().ok()).sum();
    marks - numbered + numbers + key
}

fn events(figures: &crate::fished::SwimFigures) -> u64 {
    figures.cells.iter().map(|cell| u64::from(cell.bites + cell.lost + cell.liners + cell.shown)).sum()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn no_event_is_lost_on_any_phone(
        input in swim_input(70), at in 20..DAY_MIN, phone in 0..PHONE_CANVASES.len(), left in any::<bool>()
    ) {
        let Some(swim) = swim(input) else { return Ok(()) };
        // In the middle of the day lines are out.
        let figures = swim.figures(at * MINUTE);
        let mut ask = on_phone(&PHONE_CANVASES[phone], left);
        ask.next = swim.where_next(&figures).ranked.first().map(|n| n.cell);
        let scene = swim.scene(&figures, &ask, &SceneWords::default()).unwrap();
        prop_assert_eq!(events_said(&scene), events(&figures), "{:?} {:?}", scene.label_text, scene.key);
    }
}

/// A rod is out in the square of all the bites: their number stays beside the diamond.
#[test]
fn the_number_of_bites_stays_while_a_rod_is_out_in_their_square() {
    let mut casts: Vec<CastAt> = (0..5).map(|i| a_cast(-6.0, 34.7, 25 * i)).collect();
    for (i, cast) in casts.iter_mut().enumerate() {
        (cast.bites, cast.lost) = (1, u32::from(i == 3));
    }
    let out = CastAt { end_ms: None, ..a_cast(-6.0, 34.7, 125) };
    let mark = AimingMark { id: "pump".into(), name: "Pump house".into(), bearing_deg: -6.0 };
    let input = |casts| SwimInput { marks: vec![mark.clone()], casts, ..SwimInput::default() };
    let with = [casts.clone(), vec![out]].concat();
    for (casts, which) in [(casts, "in"), (with, "out")] {
        let swim = Swim::new(input(casts)).unwrap();
        let figures = swim.figures(130 * MINUTE);
        // The squares of the smallest phone on its side are lower than a bait and a figure.
        let roomy = |phone: &&PhoneCanvas| phone.text_scale < 2.0 && phone.canvas_mm.0 > 50.0;
        for phone in PHONE_CANVASES.iter().filter(roomy) {
            for left in [false, true] {
                let mut ask = on_phone(phone, left);
                ask.next = swim.where_next(&figures).ranked.first().map(|n| n.cell);
                let scene = swim.scene(&figures, &ask, &SceneWords::default()).unwrap();
                let said = |n: &str| {
                    scene
                        .label_role
                        .iter()
                        .zip(&scene.label_text)
                        .any(|(role, text)| *role == LabelRole::Count && text == n)
                };
                assert!(said("5"), "{which}, {phone:?}, left {left}: {:?} {:?}", scene.label_text, scene.key);
                assert!(scene.mark_shape.contains(&MarkShape::BiteDiamond));
            }
        }
    }
}

/// On a common phone each resting cell shows its minutes even beside marks.
#[test]
fn rested_minutes_have_room_beside_the_marks() {
    let at = |bearing: f64, range: f64, start: i64| a_cast(bearing, range, start);
    let mut casts: Vec<CastAt> = (0..5).map(|i| at(-14.0, 34.0, DAY_MIN - 44 + 3 * i)).collect();
    casts.extend((5..8).map(|i| at(18.0, 38.0, DAY_MIN - 44 + 3 * i)));
    for (i, cast) in casts.iter_mut().enumerate() {
        cast.end_ms = Some(cast.start_ms + 2 * MINUTE);
        cast.bites = u32::from(i % 2 == 0);
        cast.liners = u32::from(i == 3);
        cast.lost = u32::from(i == 4);
    }
    let swim = Swim::new(SwimInput { marks: three_marks(), casts, ..SwimInput::default() }).unwrap();
    let figures = swim.figures(DAY_MIN * MINUTE);
    let scene = swim.scene(&figures, &on_phone(&PHONE_CANVASES[6], false), &SceneWords::default()).unwrap();
    let resting = figures.cells.iter().filter(|c| c.state(45.0) != CellState::Free).count();
    assert!(resting >= 2);
    let said = scene.label_role.iter().filter(|role| **role == LabelRole::Rested).count();
    assert_eq!(said, resting, "{:?}", scene.key);
    for shape in [MarkShape::BiteDiamond, MarkShape::LostCross, MarkShape::LinerTriangle] {
        assert!(scene.mark_shape.contains(&shape), "{shape:?}");
    }
}

/// The parts of a packed pair of arrays that have a role, as rings.
fn rings_of<T: PartialEq>(xy: &[f32], start: &[u32], roles: &[T], wanted: &T) -> Vec<Vec<Point>> {
    let parts = start.windows(2).zip(roles).filter(|(_, role)| *role == wanted);
    let corner = |c: &[f32]| Point { x: f64::from(c[0]), y: f64::from(c[1]) };
    parts
        .map(|(w, _)| xy[2 * w[0] as usize..2 * w[1] as usize].chunks_exact(2).map(corner).collect())
        .collect()
}

/// Points all over the boxes of labels of a role.
fn points_under(scene: &SwimScene, role: LabelRole) -> Vec<Point> {
    let boxes = scene.label_box.chunks_exact(4).zip(&scene.label_role).filter(|(_, r)| **r == role);
    boxes
        .flat_map(|(b, _)| {
            let at = |i: u16, j: u16| Point {
                x: f64::from(b[0] + b[2] * f32::from(i) / 16.0),
                y: f64::from(b[1] + b[3] * f32::from(j) / 8.0),
            };
            (0..=16).flat_map(move |i| (0..=8).map(move |j| at(i, j)))
        })
        .collect()
}

/// A day of this many casts at three marks, with bites, liners and lost fish, and a far cell kept back.
fn a_long_day(casts: i64) -> Swim {
    let marks = three_marks();
    let cast = |i: i64| {
        let bearing = marks[(i / 2 % 3) as usize].bearing_deg;
        let mut cast = a_cast(bearing, 28.0 + 4.5 * (i % 5) as f64, 5 * i);
        cast.bites = u32::from(i % 3 == 1);
        cast.lost = u32::from(i % 6 == 1);
        cast.liners = u32::from(i % 7 == 2);
        cast
    };
    let kept = KeptBack {
        fan: Fan { from_deg: 6.5, to_deg: 25.0 },
        band: Band { from_m: 50.0, to_m: 60.0 },
        since_ms: 0,
        released_ms: None,
    };
    let casts = (0..casts).map(cast).collect();
    Swim::new(SwimInput { marks, casts, kept_back: vec![kept], ..SwimInput::default() }).unwrap()
}

fn on_every_phone(swim: &Swim, see: impl Fn(&SwimScene, &str)) {
    let figures = swim.figures(DAY_MIN * MINUTE);
    for phone in PHONE_CANVASES.iter().filter(|phone| phone.text_scale != 1.3) {
        for left in [false, true] {
            let mut ask = on_phone(phone, left);
            ask.next = swim.where_next(&figures).ranked.first().map(|n| n.cell);
            let scene = swim.scene(&figures, &ask, &SceneWords::default()).unwrap();
            see(&scene, &format!("{phone:?}, left {left}"));
        }
    }
}

/// After sixty casts no mark covers another, none is covered by a label, and no label is smaller than at 100 %.
#[test]
fn after_sixty_casts_nothing_covers_anything() {
    on_every_phone(&a_long_day(60), |scene, which| {
        let marks = scene.mark_xy.chunks_exact(2).zip(&scene.mark_size).zip(&scene.mark_shape);
        let all: Vec<(MarkShape, f32, f32, f32)> =
            marks.map(|((at, size), shape)| (*shape, at[0], at[1], *size)).collect();
        assert!(all.len() > 10, "{which}: {} marks", all.len());
        for (i, a) in all.iter().enumerate() {
            for b in &all[i + 1..] {
                let reach = 0.98 * (a.3 + b.3);
                let apart = (a.1 - b.1).abs() >= reach || (a.2 - b.2).abs() >= reach;
                assert!(apart, "{which}: {a:?} on {b:?}");
            }
            for (at, text) in scene.label_box.chunks_exact(4).zip(&scene.label_text) {
                let aside = a.1 + a.3 <= at[0] + 0.5 || a.1 - a.3 >= at[0] + at[2] - 0.5;
                let clear = aside || a.2 + a.3 <= at[1] + 0.5 || a.2 - a.3 >= at[1] + at[3] - 0.5;
                assert!(clear, "{which}: {text} on {a:?}");
            }
        }
    });
}

/// KEPT is inside its water, NEXT at its ring, and the text of the map has at least its size at 100 %: 2.5
/// mm, ranges 2.1 mm, numbers of marks 2.2 mm.
#[test]
fn labels_are_inside_or_at_what_they_name_and_large_enough() {
    for casts in [0, 12, 60] {
        let swim = a_long_day(casts);
        let figures = swim.figures(DAY_MIN * MINUTE);
        for phone in &PHONE_CANVASES {
            for left in [false, true] {
                let mut ask = on_phone(phone, left);
                ask.next = swim.where_next(&figures).ranked.first().map(|n| n.cell);
                let scene = swim.scene(&figures, &ask, &SceneWords::default()).unwrap();
                let which = format!("{phone:?}, left {left}, {casts} casts");
                for wanted in [LabelRole::KeptBack, LabelRole::Next] {
                    assert!(scene.label_role.contains(&wanted), "{which}: no {wanted:?}");
                }
                for (size, role) in scene.label_size.iter().zip(&scene.label_role) {
                    let least = match role {
                        LabelRole::Range => 2.1,
                        LabelRole::Count => 2.2,
                        _ => 2.5,
                    };
                    let mm = f64::from(*size) / phone.px_per_mm;
                    assert!(mm >= least, "{which}: {role:?} is {mm} mm");
                }
            }
        }
    }
}

/// The minutes rested of a cell are never drawn on kept-back water beside it, and the time kept back never on
/// other water.
#[test]
fn labels_are_on_the_water_they_are_about() {
    for casts in [1, 12, 60] {
        on_every_phone(&a_long_day(casts), |scene, which| {
            let kept =
                rings_of(&scene.line_xy, &scene.line_start, &scene.line_role, &LineRole::KeptBackInner);
            let water = rings_of(&scene.fill_xy, &scene.fill_start, &scene.fill_role, &FillRole::Water);
            let on = |rings: &[Vec<Point>], p: &Point| rings.iter().any(|r| planar::ring_contains(r, *p));
            assert!(!kept.is_empty() && !water.is_empty());
            let rested = points_under(scene, LabelRole::Rested);
            assert!(!rested.iter().any(|p| on(&kept, p)), "{which}, {casts} casts: rested on kept back");
            let time = points_under(scene, LabelRole::KeptBack);
            let beside = time.iter().filter(|p| !on(&kept, p)).collect::<Vec<_>>();
            assert!(
                !beside.iter().any(|p| on(&water, p)),
                "{which}, {casts} casts: kept back on other water"
            );
        });
    }
}

/// What the picture says of the water: the minutes rested and KEPT in the picture, and what it leaves to the key.
fn states_said(scene: &SwimScene) -> (Vec<&str>, Vec<&str>) {
    let is_state = |role: &LabelRole| matches!(role, LabelRole::Rested | LabelRole::KeptBack);
    let labels = scene.label_role.iter().zip(&scene.label_text).filter(|(role, _)| is_state(role));
    let mut shown: Vec<&str> = labels.map(|(_, text)| text.split(' ').next().unwrap_or("")).collect();
    let left = scene.key.iter().filter(|line| is_state(&line.role) || line.role == LabelRole::Count);
    let mut left: Vec<&str> = left.map(|line| line.text.as_str()).collect();
    shown.sort_unstable();
    left.sort_unstable();
    (shown, left)
}

/// The flag is moved, with a line to its ring if there is no room at it: whatever is next, no square loses its minutes, its
/// KEPT or its marks to it.
#[test]
fn the_flag_of_the_next_cast_makes_no_square_unreadable() {
    for casts in [3, 12, 30, 60] {
        let swim = a_long_day(casts);
        let figures = swim.figures(DAY_MIN * MINUTE);
        for phone in PHONE_CANVASES.iter().filter(|phone| phone.text_scale != 1.3) {
            for cell in swim.cells().iter().filter(|cell| cell.aim.is_some()) {
                let ask = SceneAsk { next: Some(cell.id), ..on_phone(phone, false) };
                let words = SceneWords::default();
                let silent = SceneWords { next: String::new(), ..words.clone() };
                let with = swim.scene(&figures, &ask, &words).unwrap();
                let without = swim.scene(&figures, &ask, &silent).unwrap();
                let which = format!("{phone:?}, {casts} casts, {:?}", cell.id);
                assert_eq!(states_said(&with), states_said(&without), "{which}");
                assert!(with.label_role.contains(&LabelRole::Next), "{which}");
                assert_eq!(covered(&with), Vec::<String>::new(), "{which}");
            }
        }
    }
}

/// Who stays at a square reads how long ago the last lead landed there, in the ring if there is no room beside it.
#[test]
fn the_square_to_stay_at_shows_its_minutes() {
    for (phone, left) in PHONE_CANVASES.iter().flat_map(|phone| [(phone, false), (phone, true)]) {
        let swim = a_long_day(12);
        let figures = swim.figures(DAY_MIN * MINUTE - 290 * MINUTE);
        let stay = Spot { bearing_deg: -3.0, range_m: 32.5 };
        let ask = SceneAsk { next: swim.cell_of(stay), stay: Some(stay), ..on_phone(phone, left) };
        let scene = swim.scene(&figures, &ask, &SceneWords::default()).unwrap();
        let minutes = figures.cells[swim.place(ask.next.unwrap()).unwrap()].rested_min.unwrap();
        let said = format!("{:.0}", minutes.floor());
        let (shown, _) = states_said(&scene);
        assert!(shown.contains(&said.as_str()), "{phone:?}, left {left}: {said} in {shown:?}");
    }
}

/// The cells with a bite that have no diamond on the map: none in the cell, and none beside it in a frame whose line leads into it.
fn bites_not_on_the_map(swim: &Swim, ask: &SceneAsk, at_ms: i64, scene: &SwimScene) -> Vec<CellId> {
    let diamonds = scene.mark_xy.chunks_exact(2).zip(&scene.mark_shape);
    let diamonds: Vec<[f64; 2]> = diamonds
        .filter(|(_, shape)| **shape == MarkShape::BiteDiamond)
        .map(|(at, _)| [f64::from(at[0]), f64::from(at[1])])
        .collect();
    // In a small cell a diamond may be across the edge.
    let reach = 6.0 * ask.dp();
    let corners = [(0.0, 0.0), (1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0)];
    let round = |at: [f64; 2]| corners.map(|(x, y)| [at[0] + x * reach, at[1] + y * reach]);
    let frames = rings_of(&scene.line_xy, &scene.line_start, &scene.line_role, &LineRole::CellEdge);
    let holds_one = |frame: &Vec<Point>| {
        diamonds.iter().any(|d| planar::ring_contains(frame, Point { x: d[0], y: d[1] }))
    };
    let (lines, frames): (Vec<_>, Vec<_>) = frames.into_iter().partition(|line| line.len() == 2);
    let frames: Vec<_> = frames.into_iter().filter(|frame| frame.len() == 5 && holds_one(frame)).collect();
    let from_a_frame =
        |line: &&Vec<Point>| frames.iter().any(|frame| planar::distance_to_ring(frame, line[0]) < 0.1);
    let led = lines.iter().filter(from_a_frame).map(|line| [line[1].x, line[1].y]);
    let shown: Vec<Option<CellId>> = diamonds
        .iter()
        .copied()
        .flat_map(round)
        .chain(led)
        .map(|at| swim.tapped(ask, at[0], at[1]).unwrap())
        .collect();
    assert!(
        !scene.key.iter().any(|line| line.text.contains(&SceneWords::default().bites)),
        "{:?}",
        scene.key
    );
    let figures = swim.figures(at_ms);
    let bitten =
        figures.cells.iter().zip(swim.cells()).filter(|(known, cell)| known.bites > 0 && cell.aim.is_some());
    bitten.map(|(_, cell)| cell.id).filter(|id| !shown.contains(&Some(*id))).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// Whatever is out, wherever the ring and the corners of the aim are.
    #[test]
    fn no_bite_leaves_the_map_on_any_phone(
        input in swim_input(70), at in 20..DAY_MIN, phone in 0..PHONE_CANVASES.len(), left in any::<bool>(),
        next in any::<prop::sample::Index>(), aim in any::<prop::sample::Index>()
    ) {
        let Some(swim) = swim(input) else { return Ok(()) };
        let figures = swim.figures(at * MINUTE);
        let mut ask = on_phone(&PHONE_CANVASES[phone], left);
        let cell = |index: prop::sample::Index| swim.cells()[index.index(swim.cells().len())].id;
        (ask.next, ask.chosen) = (Some(cell(next)), Some(cell(aim)));
        let scene = swim.scene(&figures, &ask, &SceneWords::default()).unwrap();
        prop_assert_eq!(bites_not_on_the_map(&swim, &ask, at * MINUTE, &scene), vec![], "{:?}", scene.key);
    }
}

/// A square with every bite of the day, a bait in it and the ring round that, after sixty casts: its bites are on the map.
#[test]
fn the_bites_under_a_line_and_the_ring_stay_on_the_map() {
    for casts in [3, 12, 30, 60] {
        let swim = a_long_day(casts);
        let at_ms = (5 * casts - 1) * MINUTE;
        let figures = swim.figures(at_ms);
        for (phone, left) in PHONE_CANVASES.iter().flat_map(|phone| [(phone, false), (phone, true)]) {
            for cell in swim.cells().iter().filter(|cell| cell.aim.is_some()) {
                let ask = SceneAsk { next: Some(cell.id), stay: cell.aim, ..on_phone(phone, left) };
                let scene = swim.scene(&figures, &ask, &SceneWords::default()).unwrap();
                let which = format!("{phone:?}, left {left}, {casts} casts, {:?}", cell.id);
                assert_eq!(
                    bites_not_on_the_map(&swim, &ask, at_ms, &scene),
                    vec![],
                    "{which}: {:?}",
                    scene.key
                );
                assert_eq!(covered(&scene), Vec::<String>::new(), "{which}");
            }
        }
    }
}

/// The ring in a kept-back square: KEPT is level with it, and NEXT isn't at its side.
#[test]
fn kept_and_next_are_not_side_by_side_where_the_ring_is_in_kept_back_water() {
    let kept = KeptBack {
        fan: Fan { from_deg: -15.0, to_deg: -5.0 },
        band: Band { from_m: 50.0, to_m: 60.0 },
        since_ms: 0,
        released_ms: None,
    };
    let input =
        SwimInput { kept_back: vec![kept], casts: vec![a_cast(0.0, 57.0, 5)], ..SwimInput::default() };
    let swim = Swim::new(input).unwrap();
    let figures = swim.figures(60 * MINUTE);
    let next = swim.cell_of(Spot { bearing_deg: -10.0, range_m: 55.0 });
    for left in [false, true] {
        let ask = SceneAsk { next, ..on_phone(&PHONE_CANVASES[0], left) };
        let scene = swim.scene(&figures, &ask, &SceneWords::default()).unwrap();
        let top_of = |wanted: LabelRole| {
            let at = scene.label_role.iter().position(|role| *role == wanted).unwrap();
            (scene.label_box[4 * at + 1], scene.label_box[4 * at + 3])
        };
        let ((kept_y, kept_h), (next_y, next_h)) = (top_of(LabelRole::KeptBack), top_of(LabelRole::Next));
        assert!(kept_y + kept_h <= next_y || next_y + next_h <= kept_y, "left {left}: {kept_y}, {next_y}");
        assert_eq!(covered(&scene), Vec::<String>::new());
    }
}
