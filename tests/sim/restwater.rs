//! Restwater's advice, asked before every cast.

use super::angler::Angler;
use super::day::{Cast, EXTRA, TURN};
use restwater_core::bite::{EarlierDay, LIKE_DAY_WEIGHT, LeavePlan, Record, Settings, Shapes, Wait};
use std::sync::Arc;

/// An angler who leaves every cast as long as Restwater says.
pub struct Restwater {
    pub settings: Settings,
    pub shapes: Arc<Shapes>,
    pub weight: f64,
    today: Option<LeavePlan>,
    /// The plan that the last book gave, and how many days and casts were in it.
    opened: Option<((usize, f64), LeavePlan)>,
}

impl Restwater {
    pub fn new(settings: Settings, shapes: Arc<Shapes>, weight: f64) -> Self {
        let _ = LIKE_DAY_WEIGHT;
        Self { settings, shapes, weight, today: None, opened: None }
    }
}

/// A cast as the core sees it: an end that was not seen says nothing of the wait.
fn wait(cast: &Cast) -> Option<Wait> {
    if cast.end_seen { Wait::new(cast.minutes, cast.bite).ok() } else { None }
}

/// Tells one book from another: days, and all minutes in it.
fn marker(book: &[Vec<Cast>]) -> (usize, f64) {
    (book.len(), book.iter().flatten().map(|c| c.minutes).sum())
}

impl Angler for Restwater {
    fn begin(&mut self, book: &[Vec<Cast>]) {
        if let Some((key, plan)) = &self.opened
            && *key == marker(book)
        {
            self.today = Some(plan.clone());
            return;
        }
        let days: Vec<Vec<Wait>> = book.iter().map(|day| day.iter().filter_map(wait).collect()).collect();
        let earlier: Vec<EarlierDay> =
            days.iter().map(|waits| EarlierDay { waits, weight: self.weight }).collect();
        let record =
            Record { today: &[], earlier: &earlier, turn_round_min: TURN, bite_extra_min: EXTRA, habit_min: None };
        self.today = LeavePlan::with_shapes(&record, &self.settings, Arc::clone(&self.shapes)).ok();
        self.opened = self.today.clone().map(|plan| (marker(book), plan));
    }
    fn leave(&mut self, _clock: f64) -> f64 {
        self.today.as_ref().map_or(f64::NAN, |plan| plan.next_leave().0)
    }
    fn learn(&mut self, cast: Cast) {
        if let (Some(plan), Some(wait)) = (&mut self.today, wait(&cast)) {
            plan.add(wait);
        }
    }
}
