//! The smallest phone screen on which the app's screens fit, and the distances from which its size follows.

use super::{GAP_MM, OPPOSITE_GAP_MM, PRIMARY_MM, SECONDARY_MM};

/// Between the outer keys and the edge of the screen, mm.
pub(super) const MARGIN_MM: f64 = 2.0;
/// Under the lowest row, above what the system keeps, mm.
pub(super) const FOOT_MM: f64 = 0.7;
/// Room the words above the pad need, mm.
pub(super) const WORDS_MM: f64 = 31.5;
/// Least width of a screen, mm: three small keys.
pub(super) const LEAST_WIDTH_MM: f64 = 3.0 * SECONDARY_MM + 2.0 * GAP_MM + 2.0 * MARGIN_MM;
/// Least height of a screen between the system's edges, mm.
pub(super) const LEAST_HEIGHT_MM: f64 = PAD_MM + WORDS_MM;
/// Height of the pad at its least, mm.
const PAD_MM: f64 = FOOT_MM + 2.0 * PRIMARY_MM + OPPOSITE_GAP_MM + GAP_MM + SECONDARY_MM;
/// Least width of a screen on its side, mm: two large keys, a small one, the words.
pub(super) const LEAST_SIDE_WIDTH_MM: f64 =
    2.0 * MARGIN_MM + 2.0 * PRIMARY_MM + OPPOSITE_GAP_MM + 2.0 * GAP_MM + SECONDARY_MM + SIDE_WORDS_MM;
/// Least height of a screen on its side, mm: three small keys.
pub(super) const LEAST_SIDE_HEIGHT_MM: f64 = FOOT_MM + 3.0 * SECONDARY_MM + 2.0 * GAP_MM + HEAD_MM;
/// Room the words beside the pad need, mm.
const SIDE_WORDS_MM: f64 = 30.0;
/// Between the highest thing on a screen on its side and the top, mm.
pub(super) const HEAD_MM: f64 = 0.5;
