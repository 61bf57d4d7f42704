//! The record of waits used by a computation, and its settings.

use super::drift::CHANGES;
use super::error::positive;
use super::evidence::WeighedWaits;
use super::fed::{FED_PRIOR, FedPrior};
use super::grid::Fineness;
use super::prior::{BITE_EXTRA_GUESS_MIN, PRIORS, Priors, TURN_ROUND_GUESS_MIN};
use super::renewal::Costs;
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
    /// Whether each of them lay in fed water; empty if nothing was fed.
    pub fed: &'a [bool],
    /// Earlier sessions.
    pub earlier: &'a [EarlierDay<'a>],
    /// Minutes from winding in to where the next wait counts, learned or guessed.
    pub turn_round_min: f64,
    /// Extra minutes a bite costs.
    pub bite_extra_min: f64,
    /// When this angler winds in by habit, minutes.
    pub habit_min: Option<f64>,
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
            habit_min: None,
        }
    }

    /// Today's casts, each with whether it lay in fed water.
    pub(crate) fn today_by_feed(&self) -> Result<impl Iterator<Item = (Wait, bool)>, BiteError> {
        let (waits, groups) = (self.today.len(), self.fed.len());
        if groups != 0 && groups != waits {
            return Err(BiteError::GroupsDontMatch { waits, groups });
        }
        let fed = self.fed.iter().copied().chain(std::iter::repeat(false));
        Ok(self.today.iter().copied().zip(fed))
    }

    pub(crate) fn costs(&self) -> Result<Costs, BiteError> {
        checked_pace(self.turn_round_min, self.bite_extra_min, self.habit_min)
    }

    pub(crate) fn weighed_waits(&self) -> Result<WeighedWaits, BiteError> {
        let mut waits = WeighedWaits::default();
        waits.add_session(self.today, 1.0)?;
        for day in self.earlier {
            waits.add_session(day.waits, day.weight)?;
        }
        Ok(waits)
    }
}

/// Checks the costs and the habit.
pub(crate) fn checked_pace(
    turn_round_min: f64,
    bite_extra_min: f64,
    habit_min: Option<f64>,
) -> Result<Costs, BiteError> {
    if let Some(habit) = habit_min {
        positive("the habit", habit)?;
    }
    Costs::new(turn_round_min, bite_extra_min)
}

/// How finely the posterior is worked out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Accuracy {
    /// For simulations of thousands of days: the best rate within 2 % and hold-until within 10 % of
    /// [`Accuracy::Reference`], most of it before the third bite (tested).
    Quick,
    /// For the screen: the best rate within 1 % and hold-until within 6 % (tested).
    #[default]
    Standard,
    /// Half the steps of `Standard` again.
    Fine,
    /// Finer than `Fine`.
    Finest,
    /// For checks only.
    Reference,
    /// `Standard`, then finer until the best rate and the ends of the band move by less than 0.5 %.
    Refined,
}

impl Accuracy {
    pub(crate) fn fineness(self) -> Fineness {
        match self {
            Self::Quick => Fineness { nodes: [7, 7, 5], reach: 2.9, table: 64 },
            Self::Standard | Self::Refined => Fineness { nodes: [9, 9, 7], reach: 3.4, table: 96 },
            Self::Fine => Fineness { nodes: [15, 15, 11], reach: 4.2, table: 128 },
            Self::Finest => Fineness { nodes: [25, 25, 17], reach: 5.0, table: 192 },
            Self::Reference => Fineness { nodes: [45, 45, 25], reach: 8.0, table: 256 },
        }
    }

    /// How many leave times are considered.
    pub(crate) fn times(self) -> usize {
        match self {
            Self::Quick => 64,
            Self::Standard | Self::Refined => 96,
            Self::Fine => 160,
            Self::Finest => 240,
            Self::Reference => 320,
        }
    }
}

/// Settings of a computation of waits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Settings {
    /// The priors before the first cast.
    pub priors: Priors,
    /// The prior of feed.
    pub fed: FedPrior,
    /// Probability that a day changes while it is fished; with 0 days never change.
    pub changing: f64,
    /// How finely the posterior is worked out.
    pub accuracy: Accuracy,
    /// Leave times are considered up to here, minutes, or up to one and a half times the longest wait.
    pub horizon_min: f64,
    /// Share of the best rate from which a leave time counts as near-best.
    pub near_best: f64,
    /// The share of the expected gain from exploring (one step ahead and over the fishing to come) that is
    /// credited when a cast is left longer than the best time. It is the only tuning parameter of the plan,
    /// set by simulation (docs/advice.md). With 0 there is no exploring.
    pub look_credit: f64,
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            priors: PRIORS,
            fed: FED_PRIOR,
            changing: CHANGES,
            accuracy: Accuracy::default(),
            horizon_min: 60.0,
            near_best: 0.95,
            look_credit: 0.3,
        }
    }
}

impl Settings {
    pub(crate) fn check(&self) -> Result<(), BiteError> {
        self.priors.check()?;
        self.fed.check()?;
        super::error::share("the chance that a day changes", self.changing)?;
        positive("the horizon", self.horizon_min)?;
        super::error::open_share("the near-best share", self.near_best)?;
        super::error::share("the credit of a look", self.look_credit)?;
        Ok(())
    }
}
