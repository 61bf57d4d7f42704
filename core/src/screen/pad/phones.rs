//! A table of real sizes of phone glass, for the tests.
//!
//! Diagonal and pixels are what public specification sheets of common size classes print, written
//! down from memory and named by those figures alone; millimetres follow from them by geometry.
//! What the system keeps at the top and at the bottom is in its own units (1/160 in nominal or the
//! like), from the platforms' usual values, from memory.

use super::{BankState, Glass, PadAsk, PadRule, bank_layout};

/// A size class.
pub(crate) struct Phone {
    pub(crate) name: &'static str,
    diagonal_in: f64,
    width_px: f64,
    height_px: f64,
    /// Pixels in a unit of the system's own measure.
    scale: f64,
    top: f64,
    bottom: f64,
}

const fn phone(name: &'static str, diagonal_in: f64, px: (f64, f64), scale: f64, edges: (f64, f64)) -> Phone {
    Phone { name, diagonal_in, width_px: px.0, height_px: px.1, scale, top: edges.0, bottom: edges.1 }
}

/// From 58 x 104 mm to 72 x 155 mm; three-button bars (48) and gesture bars (24, 34) both.
pub(crate) const PHONES: [Phone; 13] = [
    phone("4.7 in 326 ppi", 4.7, (750.0, 1334.0), 2.0, (20.0, 0.0)),
    phone("5.0 in 294 ppi, buttons", 5.0, (720.0, 1280.0), 2.0, (24.0, 48.0)),
    phone("5.2 in 424 ppi, buttons", 5.2, (1080.0, 1920.0), 3.0, (24.0, 48.0)),
    phone("5.4 in 476 ppi", 5.4, (1080.0, 2340.0), 2.88, (50.0, 34.0)),
    phone("5.5 in 401 ppi, buttons", 5.5, (1080.0, 1920.0), 2.625, (24.0, 48.0)),
    phone("5.8 in 458 ppi", 5.8, (1125.0, 2436.0), 3.0, (44.0, 34.0)),
    phone("6.1 in 460 ppi", 6.1, (1170.0, 2532.0), 3.0, (47.0, 34.0)),
    phone("6.1 in 423 ppi", 6.1, (1080.0, 2340.0), 2.625, (34.0, 24.0)),
    phone("6.4 in 411 ppi, buttons", 6.4, (1080.0, 2400.0), 2.625, (32.0, 48.0)),
    phone("6.5 in 270 ppi, buttons", 6.5, (720.0, 1600.0), 2.0, (28.0, 48.0)),
    phone("6.6 in 400 ppi", 6.6, (1080.0, 2408.0), 2.8125, (32.0, 24.0)),
    phone("6.7 in 460 ppi", 6.7, (1290.0, 2796.0), 3.0, (59.0, 34.0)),
    phone("6.8 in 501 ppi", 6.8, (1440.0, 3088.0), 3.5, (36.0, 24.0)),
];

impl Phone {
    pub(crate) fn px_per_mm(&self) -> f64 {
        self.width_px.hypot(self.height_px) / (self.diagonal_in * 25.4)
    }

    pub(crate) fn glass(&self, text_scale: f64, left_handed: bool) -> Glass {
        Glass {
            width_px: self.width_px,
            height_px: self.height_px,
            px_per_mm: self.px_per_mm(),
            text_scale,
            left_handed,
            inset_top_px: self.top * self.scale,
            inset_bottom_px: self.bottom * self.scale,
        }
    }
}

impl Phone {
    /// The same phone on its side, as the app shows it there: no status bar; what stands at the sides, a camera (where
    /// the bar is higher than usual) or three buttons, is no glass; a gesture bar stays at the bottom.
    pub(in crate::screen) fn on_its_side(&self, text_scale: f64, left_handed: bool) -> Glass {
        let buttons = self.bottom == 48.0;
        let camera = if self.top > 24.0 { self.top } else { 0.0 };
        let at_the_sides = camera + if buttons { self.bottom } else { 0.0 };
        let bottom = if buttons { 0.0 } else { self.bottom.min(24.0) };
        Glass {
            width_px: self.height_px - at_the_sides * self.scale,
            height_px: self.width_px,
            inset_top_px: 0.0,
            inset_bottom_px: bottom * self.scale,
            ..self.glass(text_scale, left_handed)
        }
    }

    /// Upright and on its side.
    pub(in crate::screen) fn both_ways(&self, text_scale: f64, left_handed: bool) -> [Glass; 2] {
        [self.glass(text_scale, left_handed), self.on_its_side(text_scale, left_handed)]
    }
}

/// What the small glasses can't hold, in mm: only that the row of small keys stands a little high.
/// Everything else holds everywhere.
const SHORT: [(&str, PadRule, f64); 3] = [
    ("4.7 in 326 ppi", PadRule::LowerPart, 2.3),
    ("5.0 in 294 ppi, buttons", PadRule::LowerPart, 6.6),
    ("5.2 in 424 ppi, buttons", PadRule::LowerPart, 4.3),
];

#[test]
fn the_table_spans_the_sizes_it_names() {
    let size = |p: &Phone| (p.width_px / p.px_per_mm(), p.height_px / p.px_per_mm());
    let (w, h) = size(&PHONES[0]);
    assert!((w - 58.5).abs() < 0.1 && (h - 104.1).abs() < 0.1, "{w} x {h}");
    let (w, h) = size(&PHONES[12]);
    assert!((w - 73.0).abs() < 0.2 && (h - 156.5).abs() < 0.2, "{w} x {h}");
    // The density printed in the name is the one that geometry gives, to 1 %.
    for p in &PHONES {
        let printed: f64 = p.name.split_whitespace().nth(2).unwrap().parse().unwrap();
        assert!((p.px_per_mm() * 25.4 / printed - 1.0).abs() < 0.011, "{}", p.name);
    }
}

#[test]
fn the_rules_hold_on_every_glass_in_every_state_for_both_hands_and_at_200_percent() {
    let mut seen: Vec<(&str, PadRule, f64)> = Vec::new();
    for p in &PHONES {
        for state in [BankState::NoSession, BankState::Ready, BankState::Out, BankState::FishOn] {
            for (rods, page) in (1..=3).flat_map(|r| (0..5).map(move |p| (r, p))) {
                for (scale, left) in [(1.0, false), (1.0, true), (2.0, false), (2.0, true)] {
                    let layout = bank_layout(&p.glass(scale, left), PadAsk { state, rods, page }).unwrap();
                    for b in layout.broken {
                        let by = (b.by_mm * 10.0).round() / 10.0;
                        if !seen.contains(&(p.name, b.rule, by)) {
                            seen.push((p.name, b.rule, by));
                        }
                    }
                }
            }
        }
    }
    assert_eq!(seen, SHORT);
}

/// Sizes, gaps, reach and digits hold on its side as well. "The lower 60 %" is a rule for one thumb and a phone held
/// upright: on its side it can't hold, and nothing else is short.
#[test]
fn on_its_side_only_the_lower_part_is_short() {
    for p in &PHONES {
        for state in [BankState::NoSession, BankState::Ready, BankState::Out, BankState::FishOn] {
            for (rods, page) in (1..=3).flat_map(|r| (0..5).map(move |p| (r, p))) {
                for (scale, left) in [(1.0, false), (1.0, true), (2.0, false), (2.0, true)] {
                    let glass = p.on_its_side(scale, left);
                    let layout = bank_layout(&glass, PadAsk { state, rods, page }).unwrap();
                    let short: Vec<PadRule> = layout.broken.iter().map(|b| b.rule).collect();
                    assert_eq!(short, [PadRule::LowerPart], "{} {state:?} {rods} {page}", p.name);
                }
            }
        }
    }
}

#[test]
fn the_left_hand_is_the_mirror_image() {
    for p in &PHONES {
        for state in [BankState::NoSession, BankState::Ready, BankState::Out, BankState::FishOn] {
            let ask = PadAsk { state, rods: 2, page: 0 };
            for (right, left) in p.both_ways(1.0, false).into_iter().zip(p.both_ways(1.0, true)) {
                let width = right.width_px;
                let (right, left) = (bank_layout(&right, ask).unwrap(), bank_layout(&left, ask).unwrap());
                let keys = |l: &crate::screen::BankLayout| {
                    l.keys.iter().map(|k| k.rect).chain([l.back, l.start]).collect::<Vec<_>>()
                };
                for (r, l) in keys(&right).iter().zip(&keys(&left)) {
                    assert!((r.left - (width - l.right())).abs() < 1e-6);
                    assert!((r.top - l.top).abs() < 1e-6 && (r.width - l.width).abs() < 1e-6);
                }
            }
        }
    }
}
