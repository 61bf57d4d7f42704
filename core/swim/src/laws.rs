//! Laws of the swim, tested on many random swims.

use super::scene::{Detail, FillRole, Hand, LineRole, SceneAsk, SceneWords, SwimScene};
use super::sector::{CHORD_ERROR_M, disc};
use super::water::Water;
use super::*;
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;

mod cases;
mod phones;

const MINUTE: i64 = 60_000;
const DAY_MIN: i64 = 360;

fn spot() -> impl Strategy<Value = Spot> {
    (-40.0..40.0f64, 4.0..75.0f64).prop_map(|(bearing_deg, range_m)| Spot { bearing_deg, range_m })
}

fn cast() -> impl Strategy<Value = CastAt> {
    let what = (0u32..2, 0u32..2, 0u32..2, any::<bool>(), option::of(5.0..60.0f64));
    (spot(), 0..DAY_MIN, option::of(1..40i64), what).prop_map(|(spot, start, long, what)| CastAt {
        spot,
        clipped: what.3,
        lead_g: what.4,
        start_ms: start * MINUTE,
        end_ms: long.map(|l| (start + l) * MINUTE),
        waits_from_ms: start * MINUTE,
        waits_to_ms: long.map(|l| (start + l) * MINUTE),
        end_seen: true,
        bites: what.0,
        bite_ms: None,
        liners: what.1,
        lost: what.2,
        landed: 0,
    })
}

/// Aiming marks on bearings of their own.
fn marks() -> impl Strategy<Value = Vec<AimingMark>> {
    let name = prop_oneof!["[A-Z][a-z]{2,9}", "[A-Z][a-z]{2,7} [a-z]{3,8}", "[A-Z][a-z]{8,18}"];
    vec((-40i32..40, name), 0..7).prop_map(|mut all| {
        all.sort();
        all.dedup_by_key(|m| m.0);
        let mark = |(b, name): (i32, String)| AimingMark {
            id: b.to_string(),
            name,
            bearing_deg: f64::from(b) + 0.25,
        };
        all.into_iter().map(mark).collect()
    })
}

fn bands() -> impl Strategy<Value = Vec<Band>> {
    (0.0..20.0f64, vec(2.0..15.0f64, 0..7)).prop_map(|(mut from_m, widths)| {
        let mut bands = Vec::new();
        for width in widths {
            bands.push(Band { from_m, to_m: from_m + width });
            from_m += width;
        }
        bands
    })
}

/// A star-shaped outline round the water: it can't cross itself.
fn boundary() -> impl Strategy<Value = Vec<Point>> {
    vec(8.0..60.0f64, 5..12).prop_map(|radii| {
        let step = 360.0 / radii.len() as f64;
        let corner = |(i, r): (usize, &f64)| {
            let p = point_at(-step * i as f64, *r);
            Point { x: p.x, y: p.y + 30.0 }
        };
        radii.iter().enumerate().map(corner).collect()
    })
}

fn kept() -> impl Strategy<Value = Vec<KeptBack>> {
    vec((-40.0..10.0f64, 5.0..40.0f64, 10.0..50.0f64, 5.0..20.0f64, 0..DAY_MIN), 0..2).prop_map(|all| {
        all.into_iter()
            .map(|(from_deg, w, from_m, d, since)| KeptBack {
                fan: Fan { from_deg, to_deg: from_deg + w },
                band: Band { from_m, to_m: from_m + d },
                since_ms: since * MINUTE,
                released_ms: None,
            })
            .collect()
    })
}

fn things() -> impl Strategy<Value = (Vec<Feature>, Vec<Hazard>)> {
    let feature =
        (spot(), "[a-z]{3,12}").prop_map(|(spot, name)| Feature { name, kind: FeatureKind::Bar, spot });
    let hazard = (spot(), "[a-z]{3,12}").prop_map(|(spot, name)| Hazard { name, spot, clear_m: 3.0 });
    (vec(feature, 0..3), vec(hazard, 0..2))
}

fn swim_input(most_casts: usize) -> impl Strategy<Value = SwimInput> {
    let day = (vec(cast(), 0..most_casts), kept(), things());
    (marks(), bands(), option::of(boundary()), day, 1.0..120.0f64).prop_map(
        |(marks, bands, boundary, (casts, kept_back, (features, hazards)), rest_target_min)| SwimInput {
            marks,
            bands,
            boundary,
            casts,
            kept_back,
            features,
            hazards,
            rest_target_min,
            ..SwimInput::default()
        },
    )
}

/// Random outlines may miss the fan, which is the only refusal to expect.
fn swim(input: SwimInput) -> Option<Swim> {
    match Swim::new(input) {
        Ok(swim) => Some(swim),
        Err(SwimError::NoWater) => None,
        Err(other) => panic!("{other}"),
    }
}

fn close(a: f64, b: f64, share: f64) -> bool {
    (a - b).abs() <= share * a.abs().max(b.abs()) + 1e-3
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn cells_tile_the_swim(input in swim_input(3)) {
        let Some(swim) = swim(input) else { return Ok(()) };
        let sum: f64 = swim.cells().iter().map(|c| c.area_m2).sum();
        prop_assert!(close(sum, swim.area_m2(), 1e-3), "{sum} of {}", swim.area_m2());
        if swim.input().boundary.is_none() {
            let (fan, first, last) = (swim.fan(), swim.bands()[0], *swim.bands().last().unwrap());
            let whole = AnnularSector {
                from_deg: fan.from_deg, to_deg: fan.to_deg, inner_m: first.from_m, outer_m: last.to_m,
            };
            prop_assert!(close(swim.area_m2(), whole.area_m2(), 1e-6));
        }
    }

    #[test]
    fn the_aim_of_a_cell_lies_in_that_cell(input in swim_input(3)) {
        let Some(swim) = swim(input) else { return Ok(()) };
        for (id, aim) in swim.cells().iter().filter_map(|cell| Some((cell.id, cell.aim?))) {
            prop_assert_eq!(swim.cell_of(aim), Some(id));
        }
    }

    #[test]
    fn cells_do_not_overlap(input in swim_input(1), a in any::<prop::sample::Index>(), b in any::<prop::sample::Index>()) {
        let Some(swim) = swim(input) else { return Ok(()) };
        let (i, j) = (a.index(swim.cells().len()), b.index(swim.cells().len()));
        if i != j {
            let (a, b) = (&swim.cells()[i], &swim.cells()[j]);
            prop_assert!(a.water.and(&b.water).area_m2() <= 1e-3 * a.area_m2.min(b.area_m2) + 1e-3);
        }
    }

    #[test]
    fn disturbed_and_fresh_water_add_up_to_the_swim(input in swim_input(40), at in 0..400i64) {
        let Some(swim) = swim(input) else { return Ok(()) };
        let f = swim.figures(at * MINUTE);
        // The areas of polygons, each from a separate operation, compared with the exact areas in the figures.
        let discs = swim.discs(at * MINUTE);
        let rings: Vec<Vec<Point>> = discs.iter().map(|&(p, r)| disc(p, r, CHORD_ERROR_M)).collect();
        let all = Water::of_any(rings.iter().map(Vec::as_slice));
        let (fresh, disturbed) = (swim.water().without(&all).area_m2(), swim.water().and(&all).area_m2());
        prop_assert!(close(fresh + disturbed, f.swim_m2, 1e-4), "{} + {} of {}", fresh, disturbed, f.swim_m2);
        prop_assert!((f.fresh_m2 - fresh).abs() < 1e-3 * f.swim_m2 + 0.05 * disturbed);
        prop_assert!((f.disturbed_m2 - disturbed).abs() < 1e-3 * f.swim_m2 + 0.05 * disturbed);
        prop_assert!(close(f.fresh_m2 + f.disturbed_m2, f.swim_m2, 1e-9));
    }

    #[test]
    fn rested_never_grows_faster_than_the_clock(input in swim_input(30), at in 0..400i64, later in 0..200i64) {
        let Some(swim) = swim(input) else { return Ok(()) };
        let (now, then) = (swim.figures(at * MINUTE), swim.figures((at + later) * MINUTE));
        for (a, b) in now.cells.iter().zip(&then.cells) {
            match (a.rested_min, b.rested_min) {
                (Some(a), Some(b)) => prop_assert!(b - a <= later as f64 + 1e-9),
                (None, Some(b)) => prop_assert!(b <= later as f64 + 1e-9),
                (Some(_), None) => prop_assert!(false, "a disturbance was forgotten"),
                (None, None) => {}
            }
        }
    }

    #[test]
    fn the_order_of_casts_does_not_matter(input in swim_input(25), turn in 0usize..25) {
        let mut other = input.clone();
        // Every cast at one moment or another of three: many times are equal.
        let mut first = input;
        for c in first.casts.iter_mut().chain(&mut other.casts) {
            c.start_ms = c.start_ms / (120 * MINUTE) * 120 * MINUTE;
            c.end_ms = c.end_ms.map(|_| c.start_ms + 10 * MINUTE);
        }
        let n = other.casts.len().max(1);
        other.casts.rotate_left(turn % n);
        other.casts.reverse();
        let (Some(a), Some(b)) = (swim(first), swim(other)) else { return Ok(()) };
        let at = DAY_MIN * MINUTE;
        let (fa, fb) = (a.figures(at), b.figures(at));
        prop_assert_eq!(&fa, &fb);
        prop_assert_eq!(a.where_next(&fa), b.where_next(&fb));
        prop_assert_eq!(a.drift(at), b.drift(at));
        let ask = SceneAsk::new(411.0, 500.0, 6.3, 1.0).unwrap();
        let words = SceneWords::default();
        prop_assert_eq!(a.scene(&fa, &ask, &words).unwrap(), b.scene(&fb, &ask, &words).unwrap());
    }

    #[test]
    fn a_mirrored_swim_gives_mirrored_figures(input in swim_input(20)) {
        let mirrored = input.mirrored();
        let (Some(a), Some(b)) = (swim(input), swim(mirrored)) else { return Ok(()) };
        let (fa, fb) = (a.figures(DAY_MIN * MINUTE), b.figures(DAY_MIN * MINUTE));
        prop_assert_eq!(fa.cells.len(), fb.cells.len());
        let last = a.columns().columns.len() as u32 - 1;
        for c in &fa.cells {
            let there = CellId { column: last - c.cell.column, row: c.cell.row };
            let m = fb.cells[b.place(there).unwrap()];
            prop_assert!(close(c.disturbances, m.disturbances, 1e-6));
            prop_assert!(close(c.wait_min, m.wait_min, 1e-6));
            prop_assert_eq!(c.rested_min.is_some(), m.rested_min.is_some());
        }
    }

    #[test]
    fn a_mirrored_swim_gives_a_mirrored_scene(input in swim_input(20)) {
        let mirrored = input.mirrored();
        let (Some(a), Some(b)) = (swim(input), swim(mirrored)) else { return Ok(()) };
        let words = SceneWords::default();
        let ask = SceneAsk::new(411.0, 500.0, 6.3, 1.0).unwrap();
        let right = a.scene(&a.figures(DAY_MIN * MINUTE), &ask, &words).unwrap();
        let left_ask = SceneAsk { hand: Hand::Left, ..ask };
        let left = b.scene(&b.figures(DAY_MIN * MINUTE), &left_ask, &words).unwrap();
        let flip = |x: f32| 411.0 - x;
        prop_assert!(same_lines(&right, &left));
        prop_assert!(same_points(&right.mark_xy, &left.mark_xy, flip));
        prop_assert!(same_points(&right.hatch_xy, &left.hatch_xy, flip));
    }

    #[test]
    fn a_tap_on_the_water_means_the_cell_under_the_finger(input in swim_input(10), mm in 4.0..20.0f64) {
        let Some(swim) = swim(input) else { return Ok(()) };
        let ask = SceneAsk::new(60.0 * mm, 40.0 * mm, mm, 1.0).unwrap();
        for cell in swim.cells() {
            let Some(aim) = cell.aim else { continue };
            // The ring of the scene is drawn round the aim, so a tap on the ring means this cell.
            let asked = SceneAsk { next: Some(cell.id), ..ask };
            let scene = swim.scene(&swim.figures(0), &asked, &SceneWords::default()).unwrap();
            let (x, y) = ring_of(&scene);
            let on_edge = cell.water.rings().iter().any(|r| planar::distance_to_ring(r, aim.point()) < 0.1);
            prop_assert!(on_edge || swim.tapped(&ask, x, y).unwrap() == Some(cell.id), "{:?}", cell.id);
        }
        prop_assert_eq!(swim.tapped(&ask, -1000.0, -1000.0).unwrap(), None);
    }

    #[test]
    fn the_water_has_the_width_of_the_canvas_and_rays_stay_straight(input in swim_input(3)) {
        let Some(swim) = swim(input) else { return Ok(()) };
        let ask = SceneAsk::new(540.0, 340.0, 10.0, 1.0).unwrap();
        let scene = swim.scene(&swim.figures(0), &ask, &SceneWords::default()).unwrap();
        let water = scene.fill_start.windows(2).zip(&scene.fill_role).filter(|(_, r)| **r == FillRole::Water);
        let xs = water.flat_map(|(w, _)| scene.fill_xy[2 * w[0] as usize..2 * w[1] as usize].chunks_exact(2));
        let (low, high) = xs.fold((f32::MAX, f32::MIN), |(a, b), p| (a.min(p[0]), b.max(p[0])));
        prop_assert!(high - low >= 0.95 * 540.0, "{} of 540", high - low);
    }

    #[test]
    fn every_cell_can_be_stepped_to(input in swim_input(1)) {
        let Some(swim) = swim(input) else { return Ok(()) };
        prop_assume!(swim.input().boundary.is_none());
        let mut seen = std::collections::BTreeSet::new();
        let mut todo: Vec<CellId> = swim.first_cell().into_iter().collect();
        while let Some(id) = todo.pop() {
            if seen.insert(id) {
                todo.extend([Step::Left, Step::Right, Step::In, Step::Out].map(|s| swim.step(id, s)));
            }
        }
        prop_assert_eq!(seen.len(), swim.cells().len());
    }
}

/// Whether every corner of each line of one scene lies on a line of the same role of the other, mirrored.
/// (Clipping may leave or drop a corner in the middle of a straight side.)
fn same_lines(a: &SwimScene, b: &SwimScene) -> bool {
    let parts = |s: &SwimScene, flip: bool| -> Vec<(LineRole, Vec<Point>)> {
        let x = |x: f32| f64::from(if flip { s.width_px - x } else { x });
        let lines = s.line_start.windows(2).zip(&s.line_role);
        lines
            .map(|(w, role)| {
                let xy = &s.line_xy[2 * w[0] as usize..2 * w[1] as usize];
                (*role, xy.chunks_exact(2).map(|p| Point { x: x(p[0]), y: f64::from(p[1]) }).collect())
            })
            .collect()
    };
    let (a, b) = (parts(a, false), parts(b, true));
    let on = |p: Point, role: LineRole, of: &[(LineRole, Vec<Point>)]| {
        of.iter()
            .filter(|l| l.0 == role)
            .any(|l| l.1.windows(2).any(|w| planar::distance_to_ring(w, p) < 0.05))
    };
    let all_on = |a: &[(LineRole, Vec<Point>)], b: &[(LineRole, Vec<Point>)]| {
        a.iter().all(|(role, line)| line.iter().all(|p| on(*p, *role, b)))
    };
    all_on(&a, &b) && all_on(&b, &a)
}

/// Whether two lists hold the same points, in any order, after a flip of x, to a fiftieth of a pixel.
fn same_points(a: &[f32], b: &[f32], flip: impl Fn(f32) -> f32) -> bool {
    let sorted = |xy: &[f32], f: &dyn Fn(f32) -> f32| {
        let mut all: Vec<(f32, f32)> = xy.chunks_exact(2).map(|p| (p[1], f(p[0]))).collect();
        all.sort_by(|p, q| p.0.total_cmp(&q.0).then(p.1.total_cmp(&q.1)));
        all
    };
    let (a, b) = (sorted(a, &flip), sorted(b, &|x| x));
    let near = |p: &(f32, f32), q: &(f32, f32)| (p.0 - q.0).abs() < 0.02 && (p.1 - q.1).abs() < 0.02;
    // Clipped outlines may start and end at another corner, so the neighbours in y are searched.
    let found = |p: &(f32, f32), of: &[(f32, f32)]| {
        let from = of.partition_point(|q| q.0 < p.0 - 0.02);
        of[from..].iter().take_while(|q| q.0 <= p.0 + 0.02).any(|q| near(p, q))
    };
    a.iter().all(|p| found(p, &b)) && b.iter().all(|p| found(p, &a))
}

/// The middle of the ring of the next cast.
fn ring_of(scene: &SwimScene) -> (f64, f64) {
    let ring = scene.line_role.iter().position(|role| *role == LineRole::NextRing).unwrap();
    let part = 2 * scene.line_start[ring] as usize..2 * scene.line_start[ring + 1] as usize;
    let middle = |of: Vec<f32>| {
        let low = of.iter().copied().fold(f32::INFINITY, f32::min);
        f64::from(f32::midpoint(low, of.iter().copied().fold(f32::NEG_INFINITY, f32::max)))
    };
    let points = scene.line_xy[part].chunks_exact(2);
    (middle(points.clone().map(|p| p[0]).collect()), middle(points.map(|p| p[1]).collect()))
}

/// The number of pairs of label boxes that overlap, plus the boxes that are not completely on the canvas.
fn faults(scene: &SwimScene) -> usize {
    let boxes: Vec<_> = scene.label_box.chunks_exact(4).collect();
    let mut faults = 0;
    for (i, a) in boxes.iter().enumerate() {
        let inside = a[0] >= -0.01
            && a[1] >= -0.01
            && a[0] + a[2] <= scene.width_px + 0.01
            && a[1] + a[3] <= scene.height_px + 0.01;
        faults += usize::from(!inside);
        for b in &boxes[i + 1..] {
            let apart =
                a[0] + a[2] <= b[0] || b[0] + b[2] <= a[0] || a[1] + a[3] <= b[1] || b[1] + b[3] <= a[1];
            faults += usize::from(!apart);
        }
    }
    faults
}

/// Sizes of canvas and text that phones have: width and height in mm, pixels a mm, text scale.
const CANVASES: [(f64, f64, f64, f64); 7] = [
    (65.0, 79.0, 6.3, 1.0),
    (65.0, 79.0, 6.3, 2.0),
    (50.0, 52.0, 12.6, 1.0),
    (50.0, 52.0, 12.6, 2.0),
    (71.0, 90.0, 18.1, 1.3),
    (71.0, 90.0, 18.1, 2.0),
    (21.0, 20.0, 6.3, 1.0),
];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(160))]

    #[test]
    fn labels_never_overlap(input in swim_input(70), canvas in 0usize..CANVASES.len(), left in any::<bool>()) {
        let Some(swim) = swim(input) else { return Ok(()) };
        let (w, h, mm, text) = CANVASES[canvas];
        let figures = swim.figures(DAY_MIN * MINUTE);
        let mut ask = SceneAsk::new(w * mm, h * mm, mm, text).unwrap();
        ask.hand = if left { Hand::Left } else { Hand::Right };
        ask.next = swim.where_next(&figures).ranked.first().map(|n| n.cell);
        let scene = swim.scene(&figures, &ask, &SceneWords::default()).unwrap();
        prop_assert_eq!(faults(&scene), 0);
        let n = scene.label_text.len();
        prop_assert_eq!(
            (scene.label_box.len(), scene.label_at.len(), scene.label_size.len(), scene.label_role.len(), scene.label_boxed.len()),
            (4 * n, 2 * n, n, n, n)
        );
        // Every aiming mark in the fan is named: on the picture or in the key.
        for mark in swim.columns().marks.iter().filter(|m| m.bearing_deg > swim.fan().from_deg) {
            let word = mark.name.split_whitespace().next().unwrap_or("");
            let said = scene.label_text.iter().any(|t| t.as_str() == word || *t == mark.name)
                || scene.key.iter().any(|k| k.text == mark.name);
            prop_assert!(said, "{}", mark.name);
        }
        let numbers = all_finite(&scene);
        prop_assert!(numbers);
    }
}

fn all_finite(s: &SwimScene) -> bool {
    [&s.fill_xy, &s.line_xy, &s.hatch_xy, &s.mark_xy, &s.label_box, &s.label_at]
        .iter()
        .all(|list| list.iter().all(|x| x.is_finite()))
}

fn a_cast(bearing_deg: f64, range_m: f64, start: i64) -> CastAt {
    CastAt {
        spot: Spot { bearing_deg, range_m },
        clipped: true,
        lead_g: Some(28.35),
        start_ms: start * MINUTE,
        end_ms: Some((start + 20) * MINUTE),
        waits_from_ms: start * MINUTE,
        waits_to_ms: Some((start + 20) * MINUTE),
        end_seen: true,
        bites: 0,
        bite_ms: None,
        liners: 0,
        lost: 0,
        landed: 0,
    }
}

fn three_marks() -> Vec<AimingMark> {
    let mark = |id: &str, bearing_deg: f64| AimingMark { id: id.into(), name: id.into(), bearing_deg };
    vec![mark("tree", -17.0), mark("gate", -3.0), mark("hut", 16.0)]
}
