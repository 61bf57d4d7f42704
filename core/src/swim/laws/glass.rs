//! Labels on the glasses phones have.

use super::super::scene::{LabelRole, MarkShape};
use super::*;

/// The canvas that the Swim screen's layout gives on a glass: width and height in mm, with what the system keeps.
fn on_glass(glass: (f64, f64, f64), text_scale: f64, left_handed: bool) -> SceneAsk {
    let (width, height, px_per_mm) = glass;
    let layout = crate::screen::swim_layout(
        &crate::screen::Glass {
            width_px: width * px_per_mm,
            height_px: height * px_per_mm,
            px_per_mm,
            text_scale,
            left_handed,
            inset_top_px: 4.0 * px_per_mm,
            inset_bottom_px: 3.0 * px_per_mm,
        },
        crate::screen::SwimPadAsk { pad: crate::screen::SwimPad::Rays, picks: 5 },
    );
    let mut ask = SceneAsk::new(layout.canvas.width, layout.canvas.height, px_per_mm, text_scale).unwrap();
    ask.hand = if left_handed { Hand::Left } else { Hand::Right };
    ask
}

/// 4.7, 5, 6.1 and 6.7 in: width, height, pixels a mm (public spec sheets, from memory).
const GLASSES: [(f64, f64, f64); 4] =
    [(58.4, 103.9, 12.84), (62.1, 110.4, 17.4), (64.9, 140.7, 16.634), (71.2, 154.4, 18.11)];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn labels_never_overlap_on_any_glass(
        input in swim_input(70), glass in 0usize..4, scale in prop_oneof![Just(1.0), Just(1.3), Just(2.0)], left in any::<bool>()
    ) {
        let Some(swim) = swim(input) else { return Ok(()) };
        let figures = swim.figures(DAY_MIN * MINUTE);
        let mut ask = on_glass(GLASSES[glass], scale, left);
        ask.next = swim.where_next(&figures).ranked.first().map(|n| n.cell);
        let scene = swim.scene(&figures, &ask, &SceneWords::default()).unwrap();
        prop_assert_eq!(faults(&scene), 0);
        prop_assert!(all_finite(&scene));
    }
}

/// On a common glass the minutes rested stand on the picture wherever a line of casts was fished, marks and all.
#[test]
fn rested_minutes_have_room_beside_what_happened() {
    let at = |bearing: f64, range: f64, start: i64| a_cast(bearing, range, start);
    let mut casts: Vec<CastAt> = (0..5).map(|i| at(-14.0, 34.0, 20 * i)).collect();
    casts.extend((5..8).map(|i| at(18.0, 38.0, 20 * i)));
    for (i, cast) in casts.iter_mut().enumerate() {
        cast.bites = u32::from(i % 2 == 0);
        cast.liners = u32::from(i == 3);
        cast.lost = u32::from(i == 4);
    }
    let swim = Swim::new(SwimInput { marks: three_marks(), casts, ..SwimInput::default() }).unwrap();
    let figures = swim.figures(DAY_MIN * MINUTE);
    let scene = swim.scene(&figures, &on_glass(GLASSES[2], 1.0, false), &SceneWords::default()).unwrap();
    let rested = |role: &LabelRole| *role == LabelRole::Rested;
    let fished = figures.cells.iter().filter(|c| c.rested_min.is_some()).count();
    assert!(fished >= 2);
    assert_eq!(scene.label_role.iter().filter(|r| rested(r)).count(), fished, "{:?}", scene.key);
    for shape in [MarkShape::BiteDiamond, MarkShape::LostCross, MarkShape::LinerTriangle] {
        assert!(scene.mark_shape.contains(&shape), "{shape:?}");
    }
}
