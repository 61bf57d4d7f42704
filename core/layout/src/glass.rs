//! The area that a shell draws on, and its size in millimetres.

use super::least;
use serde::{Deserialize, Serialize};

/// The area that a shell draws on.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Glass {
    /// Width, pixels.
    pub width_px: f64,
    /// Height, pixels.
    pub height_px: f64,
    /// Pixels in a real millimetre.
    pub px_per_mm: f64,
    /// Text size the phone is set to; 1 is the usual one, 2 is 200 %.
    pub text_scale: f64,
    /// Whether the pad is for the left thumb.
    pub left_handed: bool,
    /// Pixels at the top that belong to the system.
    pub inset_top_px: f64,
    /// Pixels at the bottom that belong to the system.
    pub inset_bottom_px: f64,
}

/// Why nothing can be placed.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum GlassError {
    /// A figure is not a number, or not above zero.
    #[error(
        "the size of the screen was not given: give width, height, pixels per mm and text scale above zero"
    )]
    NoSize,
    /// The area is too small.
    #[error(
        "the window is {width_mm:.0} x {height_mm:.0} mm; it takes {needed_width_mm:.0} x {needed_height_mm:.0} mm upright or {side_width_mm:.0} x {side_height_mm:.0} mm on its side: make it larger or leave split screen"
    )]
    TooSmall {
        /// Width without the system's edges, mm.
        width_mm: f64,
        /// Height without the system's edges, mm.
        height_mm: f64,
        /// Least width upright, mm.
        needed_width_mm: f64,
        /// Least height upright, mm.
        needed_height_mm: f64,
        /// Least width on its side, mm.
        side_width_mm: f64,
        /// Least height on its side, mm.
        side_height_mm: f64,
    },
}

/// The area in millimetres.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Millimetres {
    pub(crate) width: f64,
    pub(crate) height: f64,
    pub(crate) top: f64,
    pub(crate) bottom: f64,
    pub(crate) text: f64,
    pub(crate) left_handed: bool,
}

impl Millimetres {
    pub(crate) fn of(glass: &Glass) -> Result<Self, GlassError> {
        let above_zero = [glass.width_px, glass.height_px, glass.px_per_mm, glass.text_scale];
        let insets = [glass.inset_top_px, glass.inset_bottom_px];
        if above_zero.iter().any(|v| !v.is_finite() || *v <= 0.0)
            || insets.iter().any(|v| !v.is_finite() || *v < 0.0)
        {
            return Err(GlassError::NoSize);
        }
        let mm = Self {
            width: glass.width_px / glass.px_per_mm,
            height: glass.height_px / glass.px_per_mm,
            top: glass.inset_top_px / glass.px_per_mm,
            bottom: glass.inset_bottom_px / glass.px_per_mm,
            text: glass.text_scale.clamp(0.8, 3.0),
            left_handed: glass.left_handed,
        };
        let (needed_width_mm, needed_height_mm) = (least::LEAST_WIDTH_MM, least::LEAST_HEIGHT_MM);
        let (side_width_mm, side_height_mm) = (least::LEAST_SIDE_WIDTH_MM, least::LEAST_SIDE_HEIGHT_MM);
        let (width_mm, height_mm) = (mm.width, mm.free_height());
        let upright = width_mm >= needed_width_mm && height_mm >= needed_height_mm;
        let on_its_side = width_mm >= side_width_mm && height_mm >= side_height_mm;
        if upright || on_its_side {
            return Ok(mm);
        }
        Err(GlassError::TooSmall {
            width_mm,
            height_mm,
            needed_width_mm,
            needed_height_mm,
            side_width_mm,
            side_height_mm,
        })
    }

    /// Height without the system's edges.
    pub(crate) fn free_height(&self) -> f64 {
        self.height - self.top - self.bottom
    }

    /// Whether the screen is too low for words above the pad.
    pub(crate) fn on_its_side(&self) -> bool {
        self.free_height() < least::LEAST_HEIGHT_MM
    }
}

/// Whether a screen is too low for words above keys, so that they are side by side.
pub(crate) fn on_its_side(glass: &Glass) -> Result<bool, GlassError> {
    Ok(Millimetres::of(glass)?.on_its_side())
}
