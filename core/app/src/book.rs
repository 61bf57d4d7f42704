//! What a tap in the Book does, and what the Book is made from.

use super::advisor::weight;
use super::earlier::{earlier_of, same_water};
use super::error::within;
use super::{App, AppError};
use restwater_bench::ladder::{Rung, tried};
use restwater_compare::change_findings_without_power;
use restwater_log::{Moment, Payload};
use restwater_screen as screen;
use restwater_screen::{
    BookInput, BookSet, BookTap, ChangesView, LeavesView, LightInput, NextInput, SetFilter,
};
use restwater_session::{NotNow, Session, Summary, fold, habit_min, rhythm, rows_of};
use restwater_waits::{
    Advice, BITE_EXTRA_GUESS_MIN, EarlierDay, Record, Settings, TURN_ROUND_GUESS_MIN, WaitPosterior,
};
use uuid::Uuid;

/// Steers every draw of the comparisons: the same record says the same.
const SEED: u64 = 4;
/// Where the choice of a place begins, in 1e-7 degrees: the middle of England, a guess that is shown as one.
const START_PLACE: (i64, i64) = (525_000_000, -15_000_000);

/// What is chosen in the Book; not part of the log.
#[derive(Default)]
pub(super) struct BookState {
    filter: SetFilter,
    a: SetFilter,
    b: SetFilter,
    opened: Option<Session>,
    place: Option<(i64, i64)>,
    /// The last Book made, and what of: making it costs more than a second's refresh may.
    last: Option<(BookOf, LeavesView)>,
    /// What its slow part was made of, and came to: the minute changes the light, but not this.
    slow: Option<(Option<Uuid>, u64, Slow)>,
}

/// What the record of one session says for the next.
#[derive(Clone)]
struct Slow {
    changes: ChangesView,
    /// With how many sessions before it speak in it.
    advice: Option<(Advice, usize)>,
}

/// What a Book was made from.
#[derive(PartialEq, Clone)]
struct BookOf {
    filters: [SetFilter; 3],
    opened: Option<Uuid>,
    place: Option<(i64, i64)>,
    log: u64,
    minute: i64,
}

impl App {
    /// The Book.
    pub(super) fn book(&mut self, now: &Moment) -> Result<LeavesView, AppError> {
        let of = BookOf {
            filters: [self.book.filter.clone(), self.book.a.clone(), self.book.b.clone()],
            opened: self.book.opened.as_ref().map(|session| session.id),
            place: self.book.place,
            log: self.journal.version(),
            minute: now.wall_ms.div_euclid(60_000),
        };
        if let Some((_, view)) = self.book.last.as_ref().filter(|(before, _)| *before == of) {
            return Ok(view.clone());
        }
        if let Some(opened) = &self.book.opened {
            // What was written in it meanwhile, an undo or a note, stands in it.
            let id = opened.id;
            self.book.opened = Some(fold(id, &self.journal.store().ops_of(id)?));
        }
        let kit = self.kit()?;
        let slow = self.slow(of.opened, of.log);
        let days: Vec<(Uuid, &Summary)> = self.sessions.days().collect();
        let after = self.book.opened.as_ref().or_else(|| self.session());
        let day =
            after.and_then(|session| days.iter().find(|(id, _)| *id == session.id)).map(|(_, day)| *day);
        let like: Vec<(Uuid, &Summary)> = days
            .iter()
            .filter(|(id, other)| {
                let is_it = after.is_some_and(|session| session.id == *id);
                is_it || day.is_some_and(|day| same_water(day.water.as_deref(), other.water.as_deref()))
            })
            .copied()
            .collect();
        let next = NextInput {
            day,
            like: &like,
            advice: slow.advice.map(|(advice, _)| advice),
            earlier: slow.advice.map_or(0, |(_, earlier)| earlier),
            changes: &slow.changes,
            rungs: &rungs(&kit.ladder, &like),
        };
        let view = screen::book(&BookInput {
            days: &days,
            filter: &self.book.filter,
            a: &self.book.a,
            b: &self.book.b,
            opened: self.book.opened.as_ref(),
            next: &next,
            light: &self.light(&days, now),
            words: &self.words,
        });
        self.book.last = Some((of, view.clone()));
        Ok(view)
    }

    /// Changes and advice of the session opened, else of the one shown.
    fn slow(&mut self, opened: Option<Uuid>, log: u64) -> Slow {
        if let Some((id, before, slow)) = &self.book.slow
            && *id == opened
            && *before == log
        {
            return slow.clone();
        }
        let changes = match &self.book.opened {
            // An earlier session needs no count of the casts still to come.
            Some(session) => {
                let findings = change_findings_without_power(&rows_of(session), SEED).unwrap_or_default();
                screen::changes(&self.words, Some(session), &findings)
            }
            None => self.changes(),
        };
        let days: Vec<(Uuid, &Summary)> = self.sessions.days().collect();
        let after = self.book.opened.as_ref().or_else(|| self.session());
        let slow = Slow { changes, advice: after.and_then(|session| advice(session, &days)) };
        self.book.slow = Some((opened, log, slow.clone()));
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
                self.book.opened = Some(session);
            }
            BookTap::Close => self.book.opened = None,
            BookTap::Latitude { e7 } => {
                let lat = within("lat", *e7, -900_000_000, 900_000_000)?;
                self.book.place = Some((lat, self.place().1));
            }
            BookTap::Longitude { e7 } => {
                let lon = within("lon", *e7, -1_800_000_000, 1_800_000_000)?;
                self.book.place = Some((self.place().0, lon));
            }
            BookTap::KeepPlace => return self.keep_place(at),
            BookTap::Filter { set, by } => match set {
                BookSet::Shown => self.book.filter.set(by),
                BookSet::A => self.book.a.set(by),
                BookSet::B => self.book.b.set(by),
            },
        }
        Ok(String::new())
    }

    /// A note or a plan goes to the session opened, else to the one shown, whether it is over or not.
    pub(super) fn write_in_book(&mut self, payload: Payload, at: &Moment) -> Result<String, AppError> {
        let session = self.book.opened.as_ref().or_else(|| self.session()).ok_or(NotNow::NoSession)?.id;
        let kind = payload.kind().to_owned();
        self.write(session, payload, None, at)?;
        Ok(self.say_what("notice-logged", &kind))
    }

    fn keep_place(&mut self, at: &Moment) -> Result<String, AppError> {
        let (lat_e7, lon_e7) = self.place();
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let straight_out_cdeg = session.peg_place.map_or(0, |place| place.straight_out_cdeg);
        let id = session.id;
        self.write(id, Payload::PegPlaced { lat_e7, lon_e7, straight_out_cdeg }, None, at)?;
        self.book.place = None;
        Ok(self.say_what("notice-logged", "peg_placed"))
    }

    /// The place under the thumb: as chosen, else where the peg was placed, else where a peg of the same water was, else
    /// where the choice begins.
    fn place(&self) -> (i64, i64) {
        self.book.place.or_else(|| self.placed()).unwrap_or(START_PLACE)
    }

    pub(super) fn placed(&self) -> Option<(i64, i64)> {
        let session = self.book.opened.as_ref().or_else(|| self.session());
        let here = session.and_then(|session| session.peg_place);
        let water = session.and_then(|session| session.setup.water.as_deref());
        let days = self.sessions.days().map(|(_, day)| day);
        let mut before = days.filter(|day| same_water(day.water.as_deref(), water));
        let place = here.or_else(|| before.find_map(|day| day.peg_place))?;
        Some((place.lat_e7, place.lon_e7))
    }

    fn light(&self, _days: &[(Uuid, &Summary)], now: &Moment) -> LightInput {
        let (lat_e7, lon_e7) = self.place();
        let placed = self.placed();
        let open = self.session().is_some_and(Session::is_open);
        LightInput {
            lat_e7,
            lon_e7,
            placed: placed == Some((lat_e7, lon_e7)),
            can_keep: open && self.book.place.is_some() && placed != Some((lat_e7, lon_e7)),
            now: now.clone(),
        }
    }
}

/// What the record said of leaving a cast at the end of a session, with the sessions before it.
fn advice(session: &Session, days: &[(Uuid, &Summary)]) -> Option<(Advice, usize)> {
    let rhythm = rhythm(session, TURN_ROUND_GUESS_MIN, BITE_EXTRA_GUESS_MIN);
    let today = restwater_session::waits_of(session);
    let water = session.setup.water.as_deref();
    let earlier: Vec<EarlierDay> = earlier_of(days, session.id)
        .into_iter()
        .map(|day| EarlierDay { waits: &day.waits, weight: weight(day, water) })
        .collect();
    let record = Record {
        today: &today,
        earlier: &earlier,
        turn_round_min: rhythm.turn_round_min,
        bite_extra_min: rhythm.bite_extra_min,
        habit_min: habit_min(session),
    };
    let posterior = WaitPosterior::new(&record, &Settings::default()).ok()?;
    Some((posterior.advice(), earlier.len()))
}

/// Heights tried over these days, or `None` if the ladder is empty.
fn rungs(ladder: &[restwater_bench::units::LineLength], days: &[(Uuid, &Summary)]) -> Vec<Rung> {
    let casts: Vec<_> = days.iter().flat_map(|(_, day)| super::bench::heights(&day.rows)).collect();
    tried(ladder, &casts).unwrap_or_default()
}
