//! Restwater's advice, asked before every cast.

use super::angler::Angler;
use super::day::{Cast, EXTRA, TURN};
use restwater_core::bite::{Accuracy, EarlierDay, LIKE_DAY_WEIGHT, Record, Settings, Wait, WaitPosterior};

/// An angler who leaves every cast as long as Restwater says.
pub struct Restwater {
    settings: Settings,
    start: Option<(usize, WaitPosterior)>,
    today: Option<WaitPosterior>,
}

impl Default for Restwater {
    fn default() -> Self {
        Self { settings: Settings { accuracy: Accuracy::Quick, ..Settings::default() }, start: None, today: None }
    }
}

/// A cast as the core sees it: an end that was not seen says nothing of the wait.
fn wait(cast: &Cast) -> Option<Wait> {
    if cast.end_seen { Wait::new(cast.minutes, cast.bite).ok() } else { None }
}

impl Angler for Restwater {
    fn begin(&mut self, book: &[Vec<Cast>]) {
        let days: Vec<Vec<Wait>> = book.iter().map(|day| day.iter().filter_map(wait).collect()).collect();
        let earlier: Vec<EarlierDay> =
            days.iter().map(|waits| EarlierDay { waits, weight: LIKE_DAY_WEIGHT }).collect();
        let record = Record { today: &[], earlier: &earlier, turn_round_min: TURN, bite_extra_min: EXTRA, habit_min: None };
        self.today = WaitPosterior::new(&record, &self.settings).ok();
        let _ = &self.start;
    }
    fn leave(&mut self, _clock: f64) -> f64 {
        self.today.as_ref().map_or(f64::NAN, |p| p.advice().next_leave_min)
    }
    fn learn(&mut self, cast: Cast) {
        if let (Some(posterior), Some(wait)) = (&mut self.today, wait(&cast)) {
            posterior.add(wait);
        }
    }
}
