//! The anglers: fixed habits, the usual rule, and the angler who knows the truth.

use super::day::Cast;

/// Somebody who decides how long to leave each cast.
pub trait Angler {
    /// A new day begins; `book` has the earlier days, the latest last.
    fn begin(&mut self, book: &[Vec<Cast>]);
    /// Says whether the next cast goes into fed water.
    fn casts_into(&mut self, _fed: bool) {}
    /// Minutes to leave the next cast.
    fn leave(&mut self, clock: f64) -> f64;
    /// A cast has ended.
    fn learn(&mut self, cast: Cast);
}

/// Leaves every cast for the same number of minutes.
pub struct Habit(pub f64);

impl Angler for Habit {
    fn begin(&mut self, _book: &[Vec<Cast>]) {}
    fn leave(&mut self, _clock: f64) -> f64 {
        self.0
    }
    fn learn(&mut self, _cast: Cast) {}
}

/// The usual rule (common practice, no source): a fixed habit until three bites have come, then wait for the
/// usual bite time and recast soon after.
pub struct TradeRule {
    habit: f64,
    bites: Vec<f64>,
}

impl TradeRule {
    /// With a habit for the first casts.
    pub fn new(habit: f64) -> Self {
        Self { habit, bites: Vec::new() }
    }
}

impl Angler for TradeRule {
    fn begin(&mut self, _book: &[Vec<Cast>]) {
        self.bites.clear();
    }
    fn leave(&mut self, _clock: f64) -> f64 {
        if self.bites.len() < 3 {
            return self.habit;
        }
        let last_four = &self.bites[self.bites.len().saturating_sub(4)..];
        last_four.iter().copied().fold(0.0, f64::max) + 1.0
    }
    fn learn(&mut self, cast: Cast) {
        if cast.bite {
            self.bites.push(cast.minutes);
        }
    }
}

/// Knows the best leave time at every moment of the day (a single value if the water is steady).
pub struct Oracle {
    /// Best leave time by minute of the day.
    pub leave_at: Vec<f64>,
}

impl Angler for Oracle {
    fn begin(&mut self, _book: &[Vec<Cast>]) {}
    fn leave(&mut self, clock: f64) -> f64 {
        self.leave_at[(clock as usize).min(self.leave_at.len() - 1)]
    }
    fn learn(&mut self, _cast: Cast) {}
}
