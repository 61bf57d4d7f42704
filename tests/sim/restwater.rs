//! Restwater's advice, asked before every cast.

use super::angler::Angler;
use super::day::{Cast, EXTRA, TURN};
use restwater_waits::{EarlierDay, LIKE_DAY_WEIGHT, LeavePlan, Record, Settings, Wait};

/// An angler who leaves every cast as long as Restwater says.
#[derive(Default)]
pub struct Restwater {
    today: Option<LeavePlan>,
    /// The plan that the last book gave, with what tells that book from others.
    opened: Option<(Marker, LeavePlan)>,
}

/// Days and minutes of a book.
type Marker = (usize, f64);

/// A cast as the core sees it: an end that was not seen says nothing of the wait.
fn wait(cast: &Cast) -> Option<Wait> {
    if cast.end_seen { Wait::new(cast.minutes, cast.bite).ok() } else { None }
}

fn marker(book: &[Vec<Cast>]) -> Marker {
    (book.len(), book.iter().flatten().map(|cast| cast.minutes).sum())
}

fn open(book: &[Vec<Cast>]) -> Option<LeavePlan> {
    let days: Vec<Vec<Wait>> = book.iter().map(|day| day.iter().filter_map(wait).collect()).collect();
    let earlier: Vec<EarlierDay> =
        days.iter().map(|waits| EarlierDay { waits, weight: LIKE_DAY_WEIGHT }).collect();
    let record = Record {
        today: &[],
        earlier: &earlier,
        turn_round_min: TURN,
        bite_extra_min: EXTRA,
        habit_min: None,
    };
    LeavePlan::new(&record, &Settings::default()).ok()
}

impl Angler for Restwater {
    fn begin(&mut self, book: &[Vec<Cast>]) {
        let marker = marker(book);
        let known = self.opened.take().filter(|(of, _)| *of == marker);
        let plan = known.map(|(_, plan)| plan).or_else(|| open(book));
        self.today.clone_from(&plan);
        self.opened = plan.map(|plan| (marker, plan));
    }

    fn leave(&mut self, _clock: f64) -> f64 {
        self.today.as_ref().map_or(f64::NAN, LeavePlan::next_leave)
    }

    fn learn(&mut self, cast: Cast) {
        if let (Some(plan), Some(wait)) = (&mut self.today, wait(&cast)) {
            plan.add(wait);
        }
    }
}
