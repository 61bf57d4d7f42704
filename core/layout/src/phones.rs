//! A table of the sizes of real phones' screens, for the tests.
//!
//! Diagonal and pixels are what public specification sheets of common size classes print, written
//! down from memory and named by those figures alone; millimetres follow from them by geometry.
//! What the system keeps at the top and at the bottom is in its own units (1/160 in nominal or the
//! like), from the platforms' usual values, from memory.

use super::Glass;
use restwater_screen::BankState;

/// Every state of the Bank, each of which has keys of its own.
pub const STATES: [BankState; 7] = [
    BankState::NoSession,
    BankState::Ready,
    BankState::Away,
    BankState::Out,
    BankState::FishOn,
    BankState::Landed,
    BankState::Over,
];

/// A size class.
pub struct Phone {
    /// Diagonal and density, and how the system's bar is tapped.
    pub name: &'static str,
    pub(crate) diagonal_in: f64,
    pub(crate) width_px: f64,
    pub(crate) height_px: f64,
    /// Pixels in a unit of the system's own measure.
    scale: f64,
    top: f64,
    bottom: f64,
}

const fn phone(name: &'static str, diagonal_in: f64, px: (f64, f64), scale: f64, edges: (f64, f64)) -> Phone {
    Phone { name, diagonal_in, width_px: px.0, height_px: px.1, scale, top: edges.0, bottom: edges.1 }
}

/// From 58 x 104 mm to 72 x 155 mm; three-button bars (48) and gesture bars (24, 34) both.
pub const PHONES: [Phone; 13] = [
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
    /// Pixels in a millimetre.
    pub fn px_per_mm(&self) -> f64 {
        self.width_px.hypot(self.height_px) / (self.diagonal_in * 25.4)
    }

    /// The screen held upright.
    pub fn glass(&self, text_scale: f64, left_handed: bool) -> Glass {
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
    /// The same phone on its side, as the app shows it there: no status bar; the area of a camera (if the bar
    /// is higher than usual) or of three buttons at the sides is not used; a gesture bar stays at the bottom.
    pub fn on_its_side(&self, text_scale: f64, left_handed: bool) -> Glass {
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
    pub fn both_ways(&self, text_scale: f64, left_handed: bool) -> [Glass; 2] {
        [self.glass(text_scale, left_handed), self.on_its_side(text_scale, left_handed)]
    }
}
