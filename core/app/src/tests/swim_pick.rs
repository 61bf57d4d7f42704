//! Any cell of the swim in two taps, by a finger on the places of the layout.

use super::*;
use restwater_layout::phones::PHONES;
use restwater_layout::{Glass, Rect, SwimLayout, SwimPadAsk, swim_layout};
use restwater_screen::{SwimPad, SwimView};
use restwater_session::swim_of;
use restwater_swim::{LineRole, SwimScene};
use std::collections::BTreeSet;

/// Of the table of real glasses: 4.7, 5, 5.4, 6.1 and 6.7 in.
const GLASSES: [usize; 5] = [0, 1, 3, 6, 11];

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

    fn layout(&mut self) -> (SwimView, SwimLayout) {
        let view = self.view();
        let ask = SwimPadAsk { pad: view.pad, picks: view.picks.len() as u8 };
        (view, swim_layout(&self.glass, ask))
    }

    fn later(&mut self) {
        self.now = Moment {
            wall_ms: self.now.wall_ms + 1_000,
            mono_ms: self.now.mono_ms + 1_000,
            ..self.now.clone()
        };
    }

    /// A tap a second later: the key whose place holds it, if one does.
    fn tap(&mut self, x: f64, y: f64) {
        self.later();
        let (view, layout) = self.layout();
        let holds = |r: &Rect| x >= r.left && x < r.right() && y >= r.top && y < r.bottom();
        let Some(at) = layout.picks.iter().position(holds) else { return };
        let (field, value) = (view.picks[at].field.clone(), view.picks[at].value.clone());
        self.app.act(&Action::ChooseSwim { field, value }, &self.now).unwrap();
    }

    fn back_to_the_rays(&mut self) {
        self.later();
        let rays = Action::ChooseSwim { field: "rays".into(), value: String::new() };
        self.app.act(&rays, &self.now).unwrap();
    }

    fn scene(&mut self) -> SwimScene {
        let canvas = self.layout().1.canvas;
        let Glass { px_per_mm, text_scale, .. } = self.glass;
        let fan = FanGlass {
            width_px: canvas.width,
            height_px: canvas.height,
            px_per_mm,
            text_scale,
            small: false,
        };
        self.app.swim_scene(&self.now, &fan).unwrap()
    }

    /// The middle of the ring, in whole px; the core draws it round the cell that is aimed at.
    fn ring(&mut self) -> (i64, i64) {
        let scene = self.scene();
        let part = scene.line_role.iter().position(|r| *r == LineRole::NextRing).unwrap();
        let points =
            &scene.line_xy[2 * scene.line_start[part] as usize..2 * scene.line_start[part + 1] as usize];
        let n = (points.len() / 2 - 1) as f32;
        let sum = |from: usize| points[from..].iter().step_by(2).take(n as usize).sum::<f32>();
        ((sum(0) / n).round() as i64, (sum(1) / n).round() as i64)
    }

    /// Picks every cell that two taps reach, and says how many different ones the ring went to.
    fn pick_all(&mut self) -> usize {
        let least = 15.0 * self.glass.px_per_mm;
        let mut rung = BTreeSet::new();
        self.back_to_the_rays();
        for ray in self.layout().1.picks {
            assert!(ray.width >= least && ray.height >= least);
            self.back_to_the_rays();
            self.tap(ray.left + 1.0, ray.top + 1.0);
            let (view, layout) = self.layout();
            assert_eq!(view.pad, SwimPad::Cells);
            assert!(view.headline.ends_with(": which band?"), "{}", view.headline);
            for cell in layout.picks {
                assert!(cell.width >= least && cell.height >= least);
                self.back_to_the_rays();
                self.tap(ray.left + ray.width / 2.0, ray.top + ray.height / 2.0);
                self.tap(cell.right() - 1.0, cell.bottom() - 1.0);
                assert_eq!(self.view().pad, SwimPad::Steps, "the second tap has picked");
                rung.insert(self.ring());
            }
        }
        rung.len()
    }
}

/// Every cell a cast can be aimed at is rung by two taps, on each glass and for either hand.
fn every_cell_is_two_taps_away(app: &mut App, now: &Moment, least: usize) {
    let swim = swim_of(app.session().unwrap()).unwrap();
    let cells = swim.cells().iter().filter(|c| c.aim.is_some()).count();
    assert!(cells >= least, "{cells} cells");
    for (phone, left) in GLASSES.iter().flat_map(|i| [(&PHONES[*i], false), (&PHONES[*i], true)]) {
        let hand = if left { Hand::Left } else { Hand::Right };
        app.act(&Action::Set { hand: Some(hand), scheme: None }, now).unwrap();
        let mut thumb = Thumb { app, now: now.clone(), glass: phone.glass(1.0, left) };
        assert_eq!(thumb.pick_all(), cells, "{} left {left}", phone.name);
    }
}

#[test]
fn every_cell_of_the_demo_day_is_two_taps_away() {
    let day = read_day(include_str!("../../../../tests/days/demo.jsonl")).unwrap();
    let mut phone = Phone::new();
    for tap in &day {
        tap.action.as_ref().map(|action| phone.app().act(action, &tap.at).unwrap());
    }
    let last = day.last().unwrap().at.clone();
    every_cell_is_two_taps_away(phone.app(), &last, 20);
}

#[test]
fn every_cell_of_a_wide_swim_is_two_taps_away() {
    let mut phone = started();
    // Ten columns of about 10 degrees: marks to both sides.
    for (ms, bearing_cdeg) in (1_i64..).zip([-4_300, -2_500, -500, 1_400, 4_200]) {
        let name = format!("Post {ms}");
        phone.tap(ms * 1_000, &Action::SetMark { name, bearing_cdeg }).unwrap();
    }
    every_cell_is_two_taps_away(phone.app(), &at(10_000), 45);
}

#[test]
fn a_double_tap_on_a_ray_is_one_tap() {
    let mut phone = started();
    let ray = Action::ChooseSwim { field: "ray".into(), value: "2".into() };
    phone.tap(1_000, &ray).unwrap();
    let cell = Action::ChooseSwim { field: "cell".into(), value: "2-1".into() };
    assert!(phone.tap(1_300, &cell).unwrap().repeated);
    assert!(!phone.tap(1_800, &cell).unwrap().repeated);
}

#[test]
fn a_key_that_is_no_ray_and_no_cell_is_refused() {
    let mut phone = started();
    for (field, value) in [("ray", "9"), ("ray", "x"), ("cell", "9-9"), ("cell", "3"), ("cell", "-1-2")] {
        let action = Action::ChooseSwim { field: field.into(), value: value.into() };
        assert_eq!(phone.tap(1_000, &action).unwrap_err().kind(), ErrorKind::BadInput, "{field} {value}");
    }
}

#[test]
fn a_tap_on_the_picture_picks_too_and_a_cast_to_it_begins_anew() {
    let mut phone = started();
    let glass = PHONES[6].glass(1.0, false);
    let mut thumb = Thumb { app: phone.app(), now: at(1_000), glass };
    let scene = thumb.scene();
    let canvas = thumb.layout().1.canvas;
    let fan = FanGlass {
        width_px: canvas.width,
        height_px: canvas.height,
        px_per_mm: glass.px_per_mm,
        text_scale: 1.0,
        small: false,
    };
    let (x, y) = (f64::from(scene.target_xy[0]), f64::from(scene.target_xy[1]));
    assert!(thumb.app.swim_tap(&at(2_000), &fan, x, y).unwrap());
    assert_eq!(thumb.view().pad, SwimPad::Steps);
    phone.tap(3_000, &Action::CastHere).unwrap();
    let mut thumb = Thumb { app: phone.app(), now: at(4_000), glass };
    assert_eq!(thumb.view().pad, SwimPad::Rays);
}
