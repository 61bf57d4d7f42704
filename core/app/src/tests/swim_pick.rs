//! Aiming on the Swim screen: by a tap on the map, by step keys, and what the screen then says.

use super::*;
use restwater_layout::phones::PHONES;
use restwater_layout::{Glass, SwimPadAsk, swim_layout};
use restwater_screen::{SwimKey, SwimPad, SwimView};
use restwater_session::swim_of;
use restwater_swim::{CellId, LabelRole, MarkShape, Step, SwimScene};

/// A thumb on the Swim screen of an app, and its clock.
struct Thumb<'a> {
    app: &'a mut App,
    now: Moment,
    glass: Glass,
}

impl Thumb<'_> {
    fn view(&mut self) -> SwimView {
        match self.app.screen(Which::Swim, &self.now).unwrap() {
            Screen::Swim(view) => view,
            other => panic!("{other:?}"),
        }
    }

    fn map(&mut self) -> FanGlass {
        let pad = self.view().pad;
        let canvas = swim_layout(&self.glass, SwimPadAsk { pad }).canvas;
        let Glass { px_per_mm, text_scale, .. } = self.glass;
        FanGlass { width_px: canvas.width, height_px: canvas.height, px_per_mm, text_scale, small: false }
    }

    fn scene(&mut self) -> SwimScene {
        let map = self.map();
        self.app.swim_scene(&self.now, &map).unwrap()
    }

    /// The middle of the ring.
    fn ring(&mut self) -> (f64, f64) {
        let scene = self.scene();
        let at = scene.mark_shape.iter().position(|shape| *shape == MarkShape::NextDot).unwrap();
        (f64::from(scene.mark_xy[2 * at]), f64::from(scene.mark_xy[2 * at + 1]))
    }

    fn tap(&mut self, x: f64, y: f64) -> bool {
        let map = self.map();
        self.app.swim_tap(&map, x, y).unwrap()
    }

    fn act(&mut self, action: &Action) {
        self.now = Moment {
            wall_ms: self.now.wall_ms + 1_000,
            mono_ms: self.now.mono_ms + 1_000,
            ..self.now.clone()
        };
        self.app.act(action, &self.now).unwrap();
    }
}

fn thumb(phone: &mut Phone) -> Thumb<'_> {
    Thumb { app: phone.app(), now: at(1_000), glass: PHONES[0].glass(1.0, false) }
}

fn steps(open: bool) -> Action {
    Action::Swim { tap: SwimTap::Steps { open } }
}

#[test]
fn a_tap_on_the_map_and_next_cast_here_send_the_cast_there_and_the_ring_stays() {
    let mut phone = started();
    let mut thumb = thumb(&mut phone);
    let first = thumb.ring();
    let swim = swim_of(thumb.app.session().unwrap()).unwrap();
    let map = thumb.map();
    // Anywhere on the map a tap on the water aims at a cell, and the ring moves only with the key.
    let mut aimed = std::collections::BTreeSet::new();
    for i in 0..30 {
        for j in 0..30 {
            let (x, y) = (map.width_px * f64::from(i) / 30.0, map.height_px * f64::from(j) / 30.0);
            if thumb.tap(x, y) {
                aimed.insert(thumb.app.chosen_cell(&swim));
            }
        }
    }
    assert_eq!(aimed.len(), swim.cells().len(), "every cell can be tapped");
    assert_eq!(thumb.ring(), first);
    assert!(!thumb.view().headline.starts_with("Next"), "{}", thumb.view().headline);
    let far = Action::Swim { tap: SwimTap::Cell { cell: CellId { column: 0, row: 4 } } };
    thumb.act(&far);
    thumb.act(&Action::CastHere);
    let sent = thumb.ring();
    assert!(sent.0 < first.0 && sent.1 < first.1, "left and further out: {sent:?} from {first:?}");
    assert!(thumb.view().headline.starts_with("Next"), "{}", thumb.view().headline);
    assert!(thumb.scene().label_role.contains(&LabelRole::Next));
}

#[test]
fn step_keys_move_the_aim_by_one_cell_and_back_hides_them() {
    let mut phone = started();
    let mut thumb = thumb(&mut phone);
    let before = thumb.view();
    assert_eq!((before.pad, before.back), (SwimPad::Plain, None));
    thumb.act(&steps(true));
    assert_eq!((thumb.view().pad, thumb.view().back), (SwimPad::Steps, Some(steps(false))));
    let there = thumb.view().headline;
    thumb.act(&Action::StepAim { step: Step::Left });
    assert_ne!(thumb.view().headline, there);
    thumb.act(&Action::StepAim { step: Step::Right });
    assert_eq!(thumb.view().headline, there);
    thumb.act(&steps(false));
    assert_eq!(thumb.view().pad, SwimPad::Plain);
}

#[test]
fn a_cell_that_is_not_there_is_refused() {
    let mut phone = started();
    let action = Action::Swim { tap: SwimTap::Cell { cell: CellId { column: 9, row: 9 } } };
    assert_eq!(phone.tap(1_000, &action).unwrap_err().kind(), ErrorKind::BadInput);
}

#[test]
fn kept_back_water_that_has_rested_is_offered_after_four_casts_without_a_bite() {
    let mut phone = started();
    let cell = Action::Swim { tap: SwimTap::Cell { cell: CellId { column: 4, row: 4 } } };
    phone.tap(1_000, &cell).unwrap();
    phone.tap(2_000, &Action::KeepBack).unwrap();
    phone.tap(3_000, &Action::CastHere).unwrap();
    for i in 0..4 {
        phone.tap((2 + 15 * i) * MIN, &CAST).unwrap();
        phone.tap((12 + 15 * i) * MIN, &WOUND_IN).unwrap();
    }
    let mut thumb = Thumb { now: at(60 * MIN), ..thumb(&mut phone) };
    let view = thumb.view();
    assert!(view.headline.starts_with("Into kept-back water: "), "{}", view.headline);
    assert!(view.why.contains("no bite in the last 4 casts"), "{}", view.why);
    let key = |key| view.keys.iter().find(|k| k.key == key).unwrap();
    assert!(key(SwimKey::Release).enabled && !key(SwimKey::Release).solid);
    assert!(key(SwimKey::CastHere).enabled && key(SwimKey::CastHere).solid, "one tap for one wish");
    let before = thumb.app.session().unwrap().clone();
    thumb.act(&Action::CastHere);
    assert!(thumb.app.session().unwrap().kept_back[0].released.is_some(), "it releases the square");
    thumb.act(&Action::Undo);
    let after = thumb.app.session().unwrap();
    assert_eq!(
        (&after.kept_back, &after.rods),
        (&before.kept_back, &before.rods),
        "one UNDO takes both back"
    );
    thumb.act(&Action::Redo);
    // The square that was offered is the one that NEXT CAST HERE sends to.
    assert!(thumb.view().headline.starts_with("Next: "), "{}", thumb.view().headline);
    let session = thumb.app.session().unwrap();
    assert!(session.kept_back[0].released.is_some());
    let spot = session.rods[0].spot.clone().unwrap();
    let (bearing_deg, range_m) =
        (f64::from(spot.bearing_cdeg) / 100.0, restwater_session::reach_m(spot.reach));
    let sent = swim_of(session).unwrap().cell_of(restwater_swim::Spot { bearing_deg, range_m });
    assert_eq!(sent, Some(CellId { column: 4, row: 4 }));
}

/// Ends that nobody saw are not counted, and a bite on any rod, with a known spot or not, restarts the count.
#[test]
fn casts_that_tell_nothing_or_a_bite_since_offer_no_kept_water() {
    let headline = |tail: &[(i64, Action)], rods: u8| {
        let mut phone = Phone::new();
        phone.tap(-5_000, &Action::Setup { tap: SetupTap::Rods { rods } }).unwrap();
        phone.tap(0, &START).unwrap();
        let cell = Action::Swim { tap: SwimTap::Cell { cell: CellId { column: 4, row: 4 } } };
        for (ms, action) in [(1_000, cell), (2_000, Action::KeepBack), (3_000, Action::CastHere)] {
            phone.tap(ms, &action).unwrap();
        }
        for (minute, action) in tail {
            phone.tap(minute * MIN, action).unwrap();
        }
        let mut thumb = Thumb { now: at(75 * MIN), ..thumb(&mut phone) };
        thumb.view().headline
    };
    let into_kept = |headline: String| headline.starts_with("Into kept-back water");
    let dry = |minute: i64| [(minute, CAST), (minute + 10, WOUND_IN)];
    let four: Vec<(i64, Action)> = [2, 17, 32, 47].into_iter().flat_map(dry).collect();
    assert!(into_kept(headline(&four, 1)), "the four alone offer it");
    let unseen: Vec<(i64, Action)> = [2, 17, 32, 47, 62].into_iter().map(|minute| (minute, CAST)).collect();
    assert!(!into_kept(headline(&unseen, 1)));
    // Rod 2 has no spot: its bite is known to no square, and still a bite.
    let with_a_bite: Vec<(i64, Action)> = [(1, Action::Cast { rod: 2 })]
        .into_iter()
        .chain(four)
        .chain([(60, Action::Bite { rod: 2 }), (61, Action::Landed { rod: 2, fish: None })])
        .collect();
    assert!(!into_kept(headline(&with_a_bite, 2)));
}
