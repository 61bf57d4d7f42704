//! The waters of the days in the Book.

use super::Day;
use restwater_match_day::rules::same_name;

/// How many waters are offered, so that they needn't be typed.
const MOST_WATERS: usize = 8;

/// The waters fished before, the latest first, those of the angler's own days before those of others; each once, as it was typed
/// last.
pub fn waters_fished(days: &[Day]) -> Vec<String> {
    let mine = |mine: bool| days.iter().filter(move |day| day.mine == mine);
    let mut waters: Vec<String> = Vec::new();
    for water in mine(true).chain(mine(false)).filter_map(|day| day.gist.water.as_ref()) {
        if waters.len() < MOST_WATERS && !waters.iter().any(|known| same_name(known, water)) {
            waters.push(water.clone());
        }
    }
    waters
}
