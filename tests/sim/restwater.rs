//! Restwater's advice, read from the Bank before every cast.

use super::angler::Angler;
use super::day::{Cast, EXTRA, TURN};
use restwater_log::WeightUnit;
use restwater_screen::{BankInput, Reading, Wording, bank};
use restwater_session::{Rhythm, Session, Stamp, fold, written};
use restwater_waits::{Advice, EarlierDay, LIKE_DAY_WEIGHT, Record, Settings, Shapes, Wait, WaitPosterior};
use std::sync::Arc;

/// An angler who leaves every cast for as long as the Bank says, in the whole minutes shown there.
pub struct Restwater {
    today: Option<WaitPosterior>,
    /// The plan from the last book, with a marker that distinguishes that book.
    opened: Option<(Marker, WaitPosterior)>,
    screen: Screen,
    /// Whether it knows which casts are in fed water.
    told_of_feed: bool,
    /// What it believes of shapes before the first cast.
    shapes: Arc<Shapes>,
}

/// Days and minutes of a book.
type Marker = (usize, f64);

/// The Bank of an open session with no rod out: what is on the screen just before a cast.
struct Screen {
    session: Session,
    now: Stamp,
    words: Wording,
}

impl Screen {
    fn new() -> Self {
        let day = written::Written::new(1);
        let session = fold(written::SESSION, &day.ops);
        let now = session.time_line.place(day.device, &written::second(60));
        Self { session, now, words: Wording::new() }
    }

    /// The minutes at the end of the Bank's headline.
    fn minutes(&self, advice: Advice) -> Option<f64> {
        minutes_shown(&self.words, &self.session, &self.now, &just_before_a_cast(advice))
    }
}

/// What the Bank gets to show before a cast, without spots.
pub(super) fn just_before_a_cast(advice: Advice) -> Reading {
    Reading {
        advice,
        waited_min: None,
        waiting: None,
        rhythm: Rhythm {
            turn_round_min: TURN,
            settle_min: 0.0,
            bite_extra_min: EXTRA,
            turn_rounds: 3,
            bites: 3,
        },
        casts: advice.casts,
        unseen: 0,
        earlier: 0,
        of_another: 0,
        habit: None,
        spots: None,
        planned: false,
    }
}

/// The minutes at the end of the headline that the Bank shows.
pub(super) fn minutes_shown(
    words: &Wording,
    session: &Session,
    now: &Stamp,
    reading: &Reading,
) -> Option<f64> {
    let shown = bank(&BankInput {
        session: Some(session),
        chosen: 1,
        now,
        reading: Some(reading),
        leaves: &[],
        club: None,
        landed: None,
        undo: None,
        redo: None,
        latest: Vec::new(),
        weights: WeightUnit::Grams,
        words,
    });
    last_number(&shown.advice.headline)
}

fn last_number(text: &str) -> Option<f64> {
    text.rsplit(|c: char| !c.is_ascii_digit()).find_map(|digits| digits.parse().ok())
}

impl Default for Restwater {
    fn default() -> Self {
        Self { today: None, opened: None, screen: Screen::new(), told_of_feed: true, shapes: Shapes::usual() }
    }
}

impl Restwater {
    /// An angler who feeds and doesn't log it.
    pub fn without_feed() -> Self {
        Self { told_of_feed: false, ..Self::default() }
    }

    /// An angler who has taken a club's start.
    pub fn of_club(shapes: Arc<Shapes>) -> Self {
        Self { shapes, ..Self::default() }
    }

    /// Whether casts in fed water are distinguished from others.
    pub fn feed_counts(&self) -> bool {
        self.today.as_ref().is_some_and(WaitPosterior::feed_counts)
    }

    /// The chance of a bite within the next five minutes as shown on the Bank, after `minutes` without one.
    pub fn chance(&self, minutes: f64) -> Option<f64> {
        self.today.as_ref()?.waiting_on(minutes).ok().map(|on| on.bite_in_five)
    }
}

/// A cast as the core sees it: an end that was not seen says nothing about the wait.
pub(super) fn wait(cast: &Cast) -> Option<Wait> {
    if cast.end_seen { Wait::new(cast.minutes, cast.bite).ok() } else { None }
}

fn marker(book: &[Vec<Cast>]) -> Marker {
    (book.len(), book.iter().flatten().map(|cast| cast.minutes).sum())
}

fn open(book: &[Vec<Cast>], shapes: &Arc<Shapes>) -> Option<WaitPosterior> {
    with_record(book, &[], |record| {
        WaitPosterior::with_shapes(record, &Settings::default(), Arc::clone(shapes)).ok()
    })
}

/// The posterior behind the screens after a book and these casts of today.
pub(super) fn posterior(book: &[Vec<Cast>], today: &[Cast]) -> Option<WaitPosterior> {
    with_record(book, today, |record| WaitPosterior::new(record, &Settings::default()).ok())
}

fn with_record<T>(book: &[Vec<Cast>], today: &[Cast], use_it: impl FnOnce(&Record) -> T) -> T {
    let days: Vec<Vec<Wait>> = book.iter().map(|day| day.iter().filter_map(wait).collect()).collect();
    let earlier: Vec<EarlierDay> =
        days.iter().map(|waits| EarlierDay { waits, weight: LIKE_DAY_WEIGHT }).collect();
    let today: Vec<Wait> = today.iter().filter_map(wait).collect();
    use_it(&Record {
        today: &today,
        fed: &[],
        earlier: &earlier,
        turn_round_min: TURN,
        bite_extra_min: EXTRA,
        habit: None,
    })
}

impl Angler for Restwater {
    fn begin(&mut self, book: &[Vec<Cast>]) {
        let marker = marker(book);
        let known = self.opened.take().filter(|(of, _)| *of == marker);
        let plan = known.map(|(_, plan)| plan).or_else(|| open(book, &self.shapes));
        self.today.clone_from(&plan);
        self.opened = plan.map(|plan| (marker, plan));
    }

    fn casts_into(&mut self, fed: bool) {
        if let Some(plan) = &mut self.today {
            plan.next_is_fed(fed && self.told_of_feed);
        }
    }

    fn leave(&mut self, _clock: f64) -> f64 {
        self.today.as_ref().and_then(|plan| self.screen.minutes(plan.advice())).unwrap_or(f64::NAN)
    }

    fn learn(&mut self, cast: Cast) {
        if let (Some(plan), Some(wait)) = (&mut self.today, wait(&cast)) {
            plan.add_by_feed(wait, cast.fed && self.told_of_feed);
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn the_number_that_a_headline_ends_with_is_read() {
        assert_eq!(last_number("Hold until 14. Recast by 17."), Some(17.0));
        assert_eq!(last_number("Nothing to read"), None);
    }

    /// The Bank states a leave time before every cast of a day, including the first, and it is the plan's to
    /// the minute.
    #[test]
    fn the_bank_says_how_long_to_leave_every_cast_of_a_day() {
        let mut angler = Restwater::default();
        angler.begin(&[]);
        let ends = [
            (20.0, false),
            (35.0, false),
            (14.0, true),
            (30.0, false),
            (14.6, true),
            (16.2, true),
            (17.0, false),
        ];
        for (minutes, bite) in ends {
            let planned = angler.today.as_ref().map(WaitPosterior::next_leave).unwrap();
            let read = angler.leave(0.0);
            assert!((read - planned).abs() <= 0.5, "the Bank says {read}, the plan {planned}");
            angler.learn(Cast { minutes, bite, end_seen: true, fed: false });
        }
    }
}
