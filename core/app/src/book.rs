//! The taps of the Book, and the data that the Book is made from.

use super::advisor::weight;
use super::error::within;
use super::spelling::rows_spelled_alike;
use super::{App, AppError};
use restwater_bench::ladder::{Rung, tried};
use restwater_compare::change_findings_without_power;
use restwater_log::{Moment, Payload, SessionSetup};
use restwater_screen as screen;
use restwater_screen::{
    BookInput, BookSet, BookTap, ChangesView, Day, LeavesView, LightInput, NextInput, PegOf, SetFilter, Whose,
};
use restwater_session::{NotNow, Session, Summary, fold, habit_of, rhythm};
use restwater_waits::{
    Advice, BITE_EXTRA_GUESS_MIN, EarlierDay, Record, Settings, Shapes, TURN_ROUND_GUESS_MIN, WaitPosterior,
};
use serde::{Deserialize, Serialize};
use std::sync::Arc;
use uuid::Uuid;

/// The seed of all random draws in the comparisons, so that the same record always gives the same answer.
const SEED: u64 = 4;
/// The place where the choice of a place starts, in 1e-7 degrees: the middle of England, a guess that is
/// shown as such.
const START_PLACE: (i64, i64) = (525_000_000, -15_000_000);

/// What is chosen in the Book; not part of the log.
#[derive(Default)]
pub(super) struct BookState {
    pub(super) chosen: BookChoices,
    pub(super) opened: Option<Session>,
    /// The version of the log at which it was read.
    read_at: Option<u64>,
    /// The last Book computed and its input, kept because computing it is too slow for the refresh each
    /// second.
    last: Option<(BookOf, LeavesView)>,
    /// The input and result of its slow part, which, unlike the light, doesn't change every minute.
    slow: Option<(Option<Uuid>, u64, Whose, Slow)>,
}

impl BookState {
    /// Forgets the Book because other days are the angler's own, or because other days count.
    pub(super) fn forget(&mut self) {
        (self.last, self.slow) = (None, None);
    }
}

/// What is chosen in the Book; it is not part of the log.
#[derive(Debug, Clone, Default, Serialize, Deserialize)]
pub(super) struct BookChoices {
    filter: SetFilter,
    a: SetFilter,
    b: SetFilter,
    place: Option<(i64, i64)>,
}

/// What one session teaches for the next.
#[derive(Clone)]
struct Slow {
    changes: ChangesView,
    advice: Option<EndAdvice>,
}

/// The advice on leaving a cast, as it was at the end of a session.
#[derive(Clone, Copy)]
struct EndAdvice {
    advice: Advice,
    /// How many earlier sessions it uses.
    earlier: usize,
    /// How many of these are another angler's.
    of_another: usize,
}

/// The input that a Book was computed from.
#[derive(PartialEq, Clone)]
struct BookOf {
    filters: [SetFilter; 3],
    opened: Option<Uuid>,
    place: Option<(i64, i64)>,
    log: u64,
    whose: Whose,
    peg: Option<PegOf>,
    minute: i64,
}

impl App {
    /// The Book.
    pub(super) fn book(&mut self, now: &Moment) -> Result<LeavesView, AppError> {
        let version = self.journal.version();
        if self.book.read_at != Some(version) {
            self.read_opened_again()?;
            self.book.read_at = Some(version);
        }
        let of = BookOf {
            filters: [
                self.book.chosen.filter.clone(),
                self.book.chosen.a.clone(),
                self.book.chosen.b.clone(),
            ],
            opened: self.book.opened.as_ref().map(|session| session.id),
            place: self.book.chosen.place,
            log: version,
            whose: self.phone.whose,
            peg: self.peg_looked_back_on(),
            minute: now.wall_ms.div_euclid(60_000),
        };
        if let Some((_, view)) = self.book.last.as_ref().filter(|(before, _)| *before == of) {
            return Ok(view.clone());
        }
        let kit = self.kit()?;
        let slow = self.slow(of.opened, of.log);
        let standing = self.questions();
        let days: Vec<Day> = self.sessions.days(&self.mine).collect();
        let after = self.book.opened.as_ref().or_else(|| self.session()).map(|session| session.id);
        let day = after.and_then(|after| days.iter().find(|day| day.id == after)).copied();
        let like: Vec<Day> = day.map_or_else(Vec::new, |day| self.like(&day, &days));
        let end = slow.advice;
        let next = NextInput {
            day: day.map(|day| day.gist),
            like: &like,
            advice: end.map(|end| end.advice),
            earlier: end.map_or(0, |end| end.earlier),
            of_another: end.map_or(0, |end| end.of_another),
            changes: &slow.changes,
            rungs: &rungs(&kit.ladder, &like),
        };
        let view = screen::book(&BookInput {
            days: &days,
            filter: &self.book.chosen.filter,
            a: &self.book.chosen.a,
            b: &self.book.chosen.b,
            opened: self.book.opened.as_ref(),
            opened_day: day.filter(|_| self.book.opened.is_some()),
            phone_is_mine: self.phone_is_mine()?,
            can_be_ended: self.opened_can_be_ended()?,
            next: &next,
            peg: of.peg.as_ref(),
            standing: &standing,
            light: &self.light(now),
            words: self.words,
        });
        self.book.last = Some((of, view.clone()));
        Ok(view)
    }

    /// Reads the opened session again, since an undo or a note may have changed it meanwhile. It is closed if its START or its
    /// import was undone.
    pub(super) fn read_opened_again(&mut self) -> Result<(), AppError> {
        let Some(id) = self.book.opened.as_ref().map(|session| session.id) else { return Ok(()) };
        let session = fold(id, &self.journal.store().ops_of(id)?);
        self.book.opened = Some(session).filter(|session| session.started.is_some());
        Ok(())
    }

    /// The peg of the session opened or running; before a session, the peg of the set-up.
    fn peg_looked_back_on(&self) -> Option<PegOf> {
        let running = self.session().filter(|session| session.is_open());
        let session = self.book.opened.as_ref().or(running);
        let setup = session.map_or(&self.draft, |session| &session.setup);
        let (water, peg) = setup.water.clone().zip(setup.peg.clone())?;
        Some(PegOf { water, peg, besides: session.map(|session| session.id) })
    }

    /// Changes and advice of the session opened, otherwise of the one shown.
    fn slow(&mut self, opened: Option<Uuid>, log: u64) -> Slow {
        let whose = self.phone.whose;
        if let Some((id, before, asked, slow)) = &self.book.slow
            && (*id, *before, *asked) == (opened, log, whose)
        {
            return slow.clone();
        }
        let changes = match &self.book.opened {
            // In an earlier session there are no casts to come.
            Some(session) => {
                let findings =
                    change_findings_without_power(&rows_spelled_alike(session), SEED).unwrap_or_default();
                screen::changes(self.words, Some(session), &findings, &[], self.weights())
            }
            None => self.changes(),
        };
        let shown = self.journal.recent().current().map(|loaded| &loaded.session);
        let after = self.book.opened.as_ref().or(shown);
        let start = after.map(|session| self.advisor.start_of(session).1);
        let advice = after.zip(start).and_then(|(session, shapes)| {
            advice(session, &self.sessions.earlier_of(session.id, whose, &self.mine), shapes)
        });
        let slow = Slow { changes, advice };
        self.book.slow = Some((opened, log, whose, slow.clone()));
        slow
    }

    /// A choice or a key of the Book. An error changes nothing.
    pub(super) fn book_tap(&mut self, tap: &BookTap, at: &Moment) -> Result<String, AppError> {
        match tap {
            BookTap::Open { session } => {
                let session = fold(*session, &self.journal.store().ops_of(*session)?);
                if session.started.is_none() {
                    return Err(AppError::NoSuchSession);
                }
                (self.book.opened, self.mending, self.book.chosen.place) = (Some(session), None, None);
            }
            BookTap::Close => (self.book.opened, self.mending, self.book.chosen.place) = (None, None, None),
            BookTap::Latitude { e7 } => {
                let lat = within("lat", *e7, -900_000_000, 900_000_000)?;
                self.book.chosen.place = Some((lat, self.place().1));
            }
            BookTap::Longitude { e7 } => {
                let lon = within("lon", *e7, -1_800_000_000, 1_800_000_000)?;
                self.book.chosen.place = Some((self.place().0, lon));
            }
            BookTap::KeepPlace => return self.keep_place(at),
            BookTap::PhoneIsMine { mine } => self.phone_of_opened_is(*mine)?,
            BookTap::End => return self.end_opened(at),
            BookTap::Filter { set, by } => match set {
                BookSet::Shown => self.book.chosen.filter.set(by),
                BookSet::A => self.book.chosen.a.set(by),
                BookSet::B => self.book.chosen.b.set(by),
            },
        }
        Ok(String::new())
    }

    /// Writes a note or a plan to the session opened, otherwise to the one shown, whether it is over or not.
    pub(super) fn write_in_book(&mut self, payload: Payload, at: &Moment) -> Result<String, AppError> {
        self.read_opened_again()?;
        let session = self.book.opened.as_ref().or_else(|| self.session()).ok_or(NotNow::NoSession)?.id;
        let kind = payload.kind().to_owned();
        self.write(session, payload, None, at)?;
        Ok(self.say_what("notice-logged", &kind))
    }

    /// Corrects the peg or the water of the opened session, otherwise of the one shown, whether it is over or not. The correction
    /// amends its START, which keeps its place; if the START is undone, so is the correction.
    pub(super) fn correct_setup(
        &mut self,
        change: impl FnOnce(&mut SessionSetup),
        at: &Moment,
    ) -> Result<String, AppError> {
        self.read_opened_again()?;
        let session = self.book.opened.as_ref().or_else(|| self.session()).ok_or(NotNow::NoSession)?;
        let (id, before) = (session.id, session.setup.clone());
        // Only the partner corrects what a partner logged.
        if self.is_of_another(id)? {
            return Err(AppError::NoSuchSession);
        }
        let mut setup = before.clone();
        change(&mut setup);
        if setup == before {
            return Ok(String::new());
        }
        let ops = self.journal.store().ops_of(id)?;
        let in_force = restwater_log::effective(&restwater_log::sorted(&ops));
        let start = in_force.iter().rfind(|step| matches!(step.payload, Payload::SessionStarted(_)));
        let start = start.ok_or(AppError::NoSuchSession)?.op.id;
        self.write(id, Payload::SessionStarted(setup), Some(start), at)?;
        Ok(self.say_what("notice-logged", "session_corrected"))
    }

    fn keep_place(&mut self, at: &Moment) -> Result<String, AppError> {
        let (lat_e7, lon_e7) = self.place();
        if !self.is_about_today() {
            return Err(AppError::AnotherDay);
        }
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let straight_out_cdeg = session.peg_place.map_or(0, |place| place.straight_out_cdeg);
        let id = session.id;
        self.write(id, Payload::PegPlaced { lat_e7, lon_e7, straight_out_cdeg }, None, at)?;
        self.book.chosen.place = None;
        Ok(self.say_what("notice-logged", "peg_placed"))
    }

    /// Whether no other day than that of the session shown is opened in the Book.
    fn is_about_today(&self) -> bool {
        let today = self.session().map(|session| session.id);
        self.book.opened.as_ref().is_none_or(|opened| Some(opened.id) == today)
    }

    /// The place shown: the one chosen, otherwise the position of the peg, otherwise that of another peg on
    /// the same water, otherwise the default.
    fn place(&self) -> (i64, i64) {
        self.book.chosen.place.or_else(|| self.placed()).unwrap_or(START_PLACE)
    }

    pub(super) fn placed(&self) -> Option<(i64, i64)> {
        let session = self.book.opened.as_ref().or_else(|| self.session());
        let here = session.and_then(|session| session.peg_place);
        let water = session.and_then(|session| session.setup.water.as_deref());
        // Where a partner sat is the partner's.
        let days = self.sessions.days(&self.mine).filter(|day| day.mine).map(|day| day.gist);
        let mut before = days.filter(|day| restwater_session::same_water(day.water.as_deref(), water));
        let place = here.or_else(|| before.find_map(|day| day.peg_place))?;
        Some((place.lat_e7, place.lon_e7))
    }

    fn light(&self, now: &Moment) -> LightInput {
        let (lat_e7, lon_e7) = self.place();
        let placed = self.placed();
        let open = self.is_about_today() && self.session().is_some_and(Session::is_open);
        LightInput {
            lat_e7,
            lon_e7,
            placed: placed == Some((lat_e7, lon_e7)),
            can_keep: open && self.book.chosen.place.is_some() && placed != Some((lat_e7, lon_e7)),
            now: now.clone(),
        }
    }
}

/// The advice on leaving a cast at the end of a session, given the sessions before it.
fn advice(session: &Session, before: &[(&Summary, bool)], shapes: Arc<Shapes>) -> Option<EndAdvice> {
    let rhythm = rhythm(session, TURN_ROUND_GUESS_MIN, BITE_EXTRA_GUESS_MIN);
    let (today, fed) = restwater_session::waits_by_feed(session);
    let water = session.setup.water.as_deref();
    let earlier: Vec<EarlierDay> =
        before.iter().map(|(day, _)| EarlierDay { waits: &day.waits, weight: weight(day, water) }).collect();
    let habit = habit_of(session);
    let record = Record {
        today: &today,
        fed: &fed,
        earlier: &earlier,
        turn_round_min: rhythm.between_min(),
        bite_extra_min: rhythm.bite_extra_min,
        habit: habit.as_ref(),
    };
    // For another day, which need not be a match.
    let mut posterior = WaitPosterior::with_shapes(&record, &Settings::default(), shapes).ok()?;
    posterior.next_is_fed(fed.last().is_some_and(|fed| *fed));
    let of_another = before.iter().filter(|(_, of_another)| *of_another).count();
    Some(EndAdvice { advice: posterior.advice(), earlier: earlier.len(), of_another })
}

/// Heights tried over these days, or `None` if the ladder is empty.
fn rungs(ladder: &[restwater_bench::units::LineLength], days: &[Day]) -> Vec<Rung> {
    let casts: Vec<_> = days.iter().flat_map(|day| super::bench::heights(&day.gist.rows)).collect();
    tried(ladder, &casts).unwrap_or_default()
}
