//! The record of waits used by a computation, and its settings.

use super::costs::Costs;
use super::drift::CHANGES;
use super::error::positive;
use super::fed::{FED_PRIOR, FedPrior};
use super::guesses::{BITE_EXTRA_GUESS_MIN, TURN_ROUND_GUESS_MIN};
use super::habit::Habit;
use super::{BiteError, Wait};

/// Waits of an earlier session.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EarlierDay<'a> {
    /// Its waits.
    pub waits: &'a [Wait],
    /// Probability that it was a day of today's kind. 0 leaves it out.
    pub weight: f64,
}

/// The record behind an advice. It does not contain the running cast; for that, see
/// [`super::WaitPosterior::waiting_on`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Record<'a> {
    /// Today's finished casts.
    pub today: &'a [Wait],
    /// Whether each of them was in fed water; empty if nothing was fed.
    pub fed: &'a [bool],
    /// Earlier sessions.
    pub earlier: &'a [EarlierDay<'a>],
    /// Minutes from winding in to where the next wait counts, learned or guessed.
    pub turn_round_min: f64,
    /// Extra minutes a bite costs.
    pub bite_extra_min: f64,
    /// How long this angler leaves casts.
    pub habit: Option<&'a Habit>,
}

impl<'a> Record<'a> {
    /// A record of today alone, with guessed costs and no habit.
    pub fn of_today(today: &'a [Wait]) -> Self {
        Self {
            today,
            fed: &[],
            earlier: &[],
            turn_round_min: TURN_ROUND_GUESS_MIN,
            bite_extra_min: BITE_EXTRA_GUESS_MIN,
            habit: None,
        }
    }

    /// Today's casts, each with whether it was in fed water.
    pub(crate) fn today_by_feed(&self) -> Result<impl Iterator<Item = (Wait, bool)>, BiteError> {
        let (waits, groups) = (self.today.len(), self.fed.len());
        if groups != 0 && groups != waits {
            return Err(BiteError::GroupsDontMatch { waits, groups });
        }
        let fed = self.fed.iter().copied().chain(std::iter::repeat(false));
        Ok(self.today.iter().copied().zip(fed))
    }

    pub(crate) fn costs(&self) -> Result<Costs, BiteError> {
        Costs::new(self.turn_round_min, self.bite_extra_min)
    }
}

/// Settings of a computation of waits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Settings {
    /// The prior of feed.
    pub fed: FedPrior,
    /// Probability that a day changes while it is fished; with 0 days never change.
    pub changing: f64,
    /// Leave times are considered up to here, minutes, or up to one and a half times the longest wait.
    pub horizon_min: f64,
    /// Share of the best rate from which a leave time counts as near-best.
    pub near_best: f64,
    /// The share of the expected gain from exploring (one step ahead and over the fishing to come) that is
    /// credited when a cast is left longer than the best time. Set by simulation (docs/advice.md), as are the
    /// weights of the shapes. With 0 there is no exploring.
    pub exploring_credit: f64,
    /// How many future days exploring pays for at the beginning of a book, fewer the more days it contains, since what several days
    /// have not shown is less likely to appear. Set by simulation (docs/advice.md).
    pub days_to_come: f64,
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            fed: FED_PRIOR,
            changing: CHANGES,
            horizon_min: 60.0,
            near_best: 0.95,
            exploring_credit: 0.3,
            days_to_come: 32.0,
        }
    }
}

impl Settings {
    /// For a match, which is fished for its own bites and not for what they would teach for other days.
    pub fn of_a_match() -> Self {
        Self { days_to_come: 0.0, ..Self::default() }
    }

    pub(crate) fn check(&self) -> Result<(), BiteError> {
        self.fed.check()?;
        super::error::share("the chance that a day changes", self.changing)?;
        positive("the horizon", self.horizon_min)?;
        super::error::open_share("the near-best share", self.near_best)?;
        super::error::share("the exploring credit", self.exploring_credit)?;
        super::error::not_negative("the days to come", self.days_to_come)?;
        Ok(())
    }
}
