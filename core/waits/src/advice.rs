//! How long to leave the next cast, in figures, and what the record allows to be said about it.

use super::leave_time::Means;
use super::leave_time::{Band, at, band};
use super::{BiteError, WaitPosterior};

/// How many bites are needed before the record is said to show anything.
pub const BITES_TO_TELL: f64 = 3.0;
/// With fewer bites than this a near-best band of a few minutes says more than the record does.
pub const EARLY_BITES: f64 = 6.0;
/// If the end of the band is this many times its start, the length is said to hardly matter.
const WIDE_BAND: f64 = 3.0;

/// What the record honestly says about leaving a cast.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AdviceState {
    /// Fewer than three bites: the figures are those of the prior.
    CantTellYet,
    /// Every leave time from hold-until on is about equally good.
    LengthHardlyMatters,
    /// Hold until one time and recast by another.
    HoldUntilRecastBy,
    /// Longer is better as far as the record shows, so there is no reason to wind in early.
    NoReasonToWindIn,
}

/// How long to leave the next cast.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Advice {
    /// What the record honestly says.
    pub state: AdviceState,
    /// Whether the whole record, earlier days by their weight, has too few bites for a narrow band: the curve is nearly flat then, and
    /// the minutes are only something to try.
    pub is_early: bool,
    /// Best leave time, minutes; `None` if no finite time is best.
    pub best_min: Option<f64>,
    /// Start of the near-best band; `None` only before there is any rate at all.
    pub hold_until_min: Option<f64>,
    /// End of the near-best band; `None` if it doesn't end within the horizon.
    pub recast_by_min: Option<f64>,
    /// Bites per hour at the best leave time.
    pub best_rate_per_hour: f64,
    /// Bites per hour at the angler's habit.
    pub rate_at_habit: Option<f64>,
    /// Bites per hour that the habit loses compared with the best.
    pub lost_at_habit: Option<f64>,
    /// Shortest interval of waiting time with half of all bites to come; `None` if it would reach past the
    /// horizon, and while the record is early.
    pub bite_window: Option<(f64, f64)>,
    /// Longest wait of the record, beyond which nothing is known.
    pub longest_wait_min: f64,
    /// Whether the band or the best time is beyond the longest wait so far.
    pub beyond_the_record: bool,
    /// Whether the next cast is to be left longer than any in the record, into minutes about which nothing is known yet.
    pub asks_for_longer: bool,
    /// Finished casts of today.
    pub casts: usize,
    /// Bites of today.
    pub bites: usize,
    /// The leave time to plan for the next cast, including the time added to explore.
    pub next_leave_min: f64,
    /// The same in whole minutes: the only figure that the screens show and that the simulation uses.
    pub leave_min: u32,
}

/// Whether to leave the running cast in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WaitingOn {
    /// Whether waiting on brings more bites an hour than a fresh cast.
    pub worth_it: bool,
    /// Until when waiting on is best, minutes after the splash.
    pub until_min: f64,
    /// Bites per hour of waiting on until then.
    pub rate_per_hour: f64,
    /// Bites per hour of fresh casts left for the best time.
    pub fresh_rate_per_hour: f64,
    /// Probability of a bite within the next five minutes.
    pub bite_in_five: f64,
}

impl WaitPosterior {
    /// Advice on the next cast.
    pub fn advice(&self) -> Advice {
        let means = self.means();
        let band = self.sequential_band(means);
        let per_hour = 60.0 * band.best_rate;
        let at_habit = self.habit.as_ref().map(|habit| 60.0 * habit.rate(means, &self.costs));
        let end = means.times[means.known - 1];
        let reach = band.until.unwrap_or(end);
        let next = self.next_leave();
        let is_early = self.all_bites < EARLY_BITES;
        Advice {
            state: self.state(&band, end),
            is_early,
            best_min: band.inside.then_some(band.best),
            hold_until_min: Some(band.from),
            recast_by_min: band.until,
            best_rate_per_hour: per_hour,
            rate_at_habit: at_habit,
            lost_at_habit: at_habit.map(|rate| (per_hour - rate).max(0.0)),
            bite_window: bite_window(means).filter(|_| !is_early),
            longest_wait_min: self.longest_min,
            beyond_the_record: reach.min(band.best) > self.longest_min,
            asks_for_longer: self.longest_min > 0.0 && next > self.longest_min,
            casts: self.casts,
            bites: self.bites,
            next_leave_min: next,
            leave_min: libm::round(next).max(1.0) as u32,
        }
    }

    /// The near-best band of leave times, which ends where a cast that has had no bite so far is better wound
    /// in. A band by R(t) alone stays wide if few casts are still waiting, although each of those then waits
    /// in vain.
    fn sequential_band(&self, means: &Means) -> Band {
        let mut found = band(means, self.settings.near_best);
        let stop =
            self.give_up(means, found.from).filter(|&stop| found.until.is_none_or(|until| stop < until));
        if let Some(stop) = stop {
            let stop = stop.max(found.from);
            found.until = Some(stop);
            found.best = found.best.min(stop);
            found.inside = true;
        }
        found
    }

    fn state(&self, band: &Band, end: f64) -> AdviceState {
        if self.all_bites < BITES_TO_TELL {
            AdviceState::CantTellYet
        } else if band.until.unwrap_or(end) >= WIDE_BAND * band.from {
            AdviceState::LengthHardlyMatters
        } else if band.until.is_none() {
            AdviceState::NoReasonToWindIn
        } else {
            AdviceState::HoldUntilRecastBy
        }
    }

    /// The leave time to plan for the next cast, minutes: longer than the best time if exploring later
    /// minutes is worth it. A cast that is left longer shows all that a shorter one would have shown, and
    /// more: whether a slow water is steady or its bites are over, or a second bunch of bites.
    pub fn next_leave(&self) -> f64 {
        self.shapes.times[self.derived().leave]
    }

    /// Whether to leave a cast in that has waited `so_far` minutes without a bite and is where the next one will: see
    /// [`WaitPosterior::waiting_on_where`].
    pub fn waiting_on(&self, so_far: f64) -> Result<WaitingOn, BiteError> {
        self.waiting_on_where(self.fed, so_far)
    }

    /// Whether to leave a cast in, in fed water or not, that has waited `so_far` minutes without a bite. A
    /// fresh cast is assumed to be in water fed like that of this one.
    ///
    /// Waiting on until s earns F(s) - F(so far) bites for the integral of S over that stretch and d a bite;
    /// the turn-round is paid whenever the cast ends, so it doesn't count. It is compared with the rate of
    /// fresh casts left for the best time. Both take the wait so far into account: every law is weighted by
    /// its probability of that wait, so a slow day lowers both.
    pub fn waiting_on_where(&self, fed: bool, so_far: f64) -> Result<WaitingOn, BiteError> {
        let waited = super::error::not_negative("the wait so far", so_far)?;
        let means = &self.derived_of(fed).means;
        // Beyond the longest time of the shapes, their last minutes are the best guess.
        let u = waited.min(means.times[means.times.len() - 1] - LAST_KNOWN_MIN);
        let bitten = |t: f64| at(&means.times, &means.bitten, t);
        let still = (1.0 - bitten(u)).max(1e-12);
        // A cast that is out may be beyond the horizon.
        let end = means.times.partition_point(|&t| t <= 1.5 * u).max(means.known);
        let (until_min, rate, fresh) = self.rate_of_waiting_on(means, u, end);
        Ok(WaitingOn {
            worth_it: rate >= fresh,
            until_min: until_min + (waited - u),
            rate_per_hour: 60.0 * rate,
            fresh_rate_per_hour: 60.0 * fresh,
            bite_in_five: ((bitten(u + 5.0) - bitten(u)) / still).clamp(0.0, 1.0),
        })
    }

    /// Until when to wait on from `u`, at most to the point in time `end`, its rate, and the rate of fresh casts, in
    /// bites per minute.
    fn rate_of_waiting_on(&self, means: &Means, u: f64, end: usize) -> (f64, f64, f64) {
        let Means { times, bitten, waiting, fresh, .. } = means;
        let (b, w) = (at(times, bitten, u), at(times, waiting, u));
        let first = times.partition_point(|&t| t < u + 0.25);
        let (mut until, mut top) = (u, 0.0);
        for i in first..end {
            let gained = bitten[i] - b;
            let rate = gained / (waiting[i] - w + self.costs.bite_extra_min * gained).max(1e-9);
            if rate > top {
                (until, top) = (times[i], rate);
            }
        }
        let from_zero = fresh.first().copied().unwrap_or(0.0);
        let fresh = if u <= times[0] { from_zero } else { at(times, fresh, u) };
        (until, top, fresh / (1.0 - b).max(1e-12))
    }

    /// The first time from `from` on at which a cast without a bite is better wound in; `None` if there is
    /// none up to the horizon.
    fn give_up(&self, means: &Means, from: f64) -> Option<f64> {
        let times = &means.times[..means.known];
        let gain = |t: f64| {
            let (_, rate, fresh) = self.rate_of_waiting_on(means, t, means.known);
            rate - fresh
        };
        let first = times.partition_point(|&t| t < from);
        // There is too little time after the last few points to judge them.
        let stop = times.iter().skip(first).take_while(|&&t| t < 0.9 * times[times.len() - 1]);
        let mut last = (from, gain(from));
        if last.1 < 0.0 {
            return Some(from);
        }
        for &t in stop {
            let here = gain(t);
            if here < 0.0 {
                return Some(last.0 + (t - last.0) * last.1 / (last.1 - here));
            }
            last = (t, here);
        }
        None
    }
}

/// Shortest stretch with half of all bites to come. One that begins at the splash is no window: it only says that half of the
/// bites come by its end.
fn bite_window(means: &Means) -> Option<(f64, f64)> {
    let (times, bitten) = (&means.times[..means.known], &means.bitten[..means.known]);
    let half = 0.5 * means.ever;
    let share = |t: f64| at(times, bitten, t);
    let mut best: Option<(f64, f64)> = None;
    for start in std::iter::once(0.0).chain(times.iter().copied()) {
        let level = share(start) + half;
        let i = bitten.partition_point(|&b| b < level);
        if i >= times.len() {
            break;
        }
        let (a, fa) = if i == 0 { (0.0, 0.0) } else { (times[i - 1], bitten[i - 1]) };
        let stop = a + (times[i] - a) * (level - fa) / (bitten[i] - fa);
        if best.is_none_or(|(s, e)| stop - start < e - s) {
            best = Some((start, stop));
        }
    }
    best.filter(|(start, _)| *start > 0.0)
}

/// How long before the last time of the shapes a chance is still computed, in minutes.
const LAST_KNOWN_MIN: f64 = 10.0;

#[cfg(test)]
pub(crate) use tests::in_no_order;

#[cfg(test)]
mod tests;
