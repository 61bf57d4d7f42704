//! The start for advice that a club gives: it comes from a file and is left by a tap. Which of its weights count for a day.

use super::{App, AppError};
use restwater_exchange::{club_in, month_of};
use restwater_log::{ClubDays, ClubStart, ClubWeights, Moment, Op, Payload, effective, sorted};
use restwater_screen::{ClubNow, ClubUsed, IncomingView, Stage, incoming_club};
use restwater_session::Session;
use restwater_waits::{CLUB_SHAPES, FittedTo, Shapes};
use std::path::Path;
use std::sync::Arc;
use uuid::Uuid;

/// The weights that count: the entry that took them, and their place in it. `None` for the usual ones.
pub(super) type StartOf = Option<(Uuid, usize)>;

/// The club's start in use.
#[derive(Default)]
pub(super) struct Club {
    taken: Option<(Uuid, ClubStart)>,
    /// The places of the weights that this version can use: an entry of another phone may hold anything.
    usable: Vec<usize>,
    /// The shapes of the weights that counted last.
    shapes: Option<(usize, Arc<Shapes>)>,
}

impl Club {
    /// The club by the angler's own entries: the last one that was taken and has not been left.
    pub(super) fn of(own_things: &[Op]) -> Self {
        let last = effective(&sorted(own_things)).into_iter().rev().find_map(|entry| match entry.payload {
            Payload::ClubTaken(start) => Some(Some((entry.op.id, start.clone()))),
            Payload::ClubLeft => Some(None),
            _ => None,
        });
        let taken = last.flatten();
        let start = taken.as_ref().map(|(_, start)| start).filter(|start| start.shapes == CLUB_SHAPES);
        let fitted = start.map_or(&[][..], |start| &start.fitted);
        let usable = (0..fitted.len()).filter(|place| is_usable(&fitted[*place])).collect();
        Self { taken, usable, shapes: None }
    }

    /// Whether it is the same as another.
    pub(super) fn is(&self, other: &Self) -> bool {
        let id = |club: &Self| club.taken.as_ref().map(|(id, _)| *id);
        id(self) == id(other)
    }

    /// Its start.
    pub(super) fn start(&self) -> Option<&ClubStart> {
        self.taken.as_ref().map(|(_, start)| start)
    }

    /// Whether this version can use it.
    pub(super) fn is_usable(&self) -> bool {
        !self.usable.is_empty()
    }

    /// Which of its weights count for a session, and the shapes weighed by them.
    pub(super) fn start_of(&mut self, session: &Session) -> (StartOf, Arc<Shapes>) {
        let place = self.place_of(session);
        let of = |place: usize| self.start_at(place).and_then(shapes);
        let Some((place, made)) = place.and_then(|place| {
            let kept = self.shapes.as_ref().filter(|(of, _)| *of == place).map(|(_, made)| Arc::clone(made));
            Some((place, kept.or_else(|| of(place))?))
        }) else {
            return (None, Shapes::usual());
        };
        self.shapes = Some((place, Arc::clone(&made)));
        (self.taken.as_ref().map(|(id, _)| (*id, place)), made)
    }

    /// Which days the weights that count for a session were fitted to.
    pub(super) fn fitted_to(&self, session: &Session) -> Option<FittedTo> {
        self.start_at(self.place_of(session)?).map(fitted_to)
    }

    /// What it says for a session.
    pub(super) fn used(&self, session: &Session) -> Option<ClubUsed<'_>> {
        let here = self.start_at(self.place_of(session)?)?;
        Some(ClubUsed { start: self.start()?, here, own: fitted_to(here).own_share() })
    }

    fn start_at(&self, place: usize) -> Option<&ClubWeights> {
        self.start()?.fitted.get(place)
    }

    /// The weights of its water; without them those of how cold the water is, then those of the month, then those of all
    /// days.
    fn place_of(&self, session: &Session) -> Option<usize> {
        let water = session.setup.water.as_deref();
        let celsius = session.conditions_now().water;
        let month = month_of(session);
        let rank = |fitted: &ClubWeights| match &fitted.days_of {
            ClubDays::Water { water: of } => restwater_session::same_water(Some(of), water).then_some(3),
            ClubDays::WaterTemperature { from, until } => {
                celsius.is_some_and(|tenths| (*from..*until).contains(&tenths)).then_some(2)
            }
            ClubDays::Month { month: of } => (Some(*of) == month).then_some(1),
            ClubDays::All => Some(0),
        };
        let ranked = self.usable.iter().filter_map(|&place| Some((rank(self.start_at(place)?)?, place)));
        ranked.max_by_key(|(rank, _)| *rank).map(|(_, place)| place)
    }
}

fn weights(millionths: &[u32]) -> Vec<f64> {
    millionths.iter().map(|weight| f64::from(*weight) / 1e6).collect()
}

fn is_usable(fitted: &ClubWeights) -> bool {
    Shapes::usual().check_club(&weights(&fitted.weights)).is_ok()
}

/// Weights of a water are used on that water alone ([`Club::place_of`]).
fn fitted_to(fitted: &ClubWeights) -> FittedTo {
    match fitted.days_of {
        ClubDays::Water { .. } => FittedTo::ThisWater,
        ClubDays::All | ClubDays::Month { .. } | ClubDays::WaterTemperature { .. } => FittedTo::AllWaters,
    }
}

fn shapes(fitted: &ClubWeights) -> Option<Arc<Shapes>> {
    Shapes::usual().of_club(&weights(&fitted.weights), fitted_to(fitted)).ok()
}

impl App {
    /// What a club's file would change; `None` for any other file.
    pub(super) fn look_at_club(&self, file: &Path) -> Result<Option<IncomingView>, AppError> {
        let Some(start) = club_in(file, "")? else { return Ok(None) };
        Ok(Some(incoming_club(self.words, &start, self.club_now(&start), Stage::Before)))
    }

    /// Takes a club's start from its file, under the name typed; `None` for any other file. The same file again changes
    /// nothing.
    pub(super) fn take_club(
        &mut self,
        file: &Path,
        name: &str,
        at: &Moment,
    ) -> Result<Option<IncomingView>, AppError> {
        let Some(start) = club_in(file, name)? else { return Ok(None) };
        let now = self.club_now(&start);
        let view = incoming_club(self.words, &start, now, Stage::After);
        if now != ClubNow::Same {
            self.log_own(Payload::ClubTaken(start), at)?;
            self.last_tap = None;
        }
        Ok(Some(view))
    }

    /// Leaves the club: advice begins with the usual weights again.
    pub(super) fn leave_club(&mut self, at: &Moment) -> Result<String, AppError> {
        if self.advisor.club().start().is_none() {
            return Err(AppError::NoClub);
        }
        self.log_own(Payload::ClubLeft, at)
    }

    fn club_now(&self, start: &ClubStart) -> ClubNow {
        match self.advisor.club().start() {
            None => ClubNow::None,
            Some(taken) if taken.sha256 == start.sha256 => ClubNow::Same,
            Some(_) => ClubNow::Another,
        }
    }

    /// Reads again which club's start is in use, after an entry of a kit. What was advised from another start is forgotten.
    pub(super) fn read_club(&mut self) {
        if self.advisor.take_club(Club::of(&self.own_things())) {
            self.learning.forget_views();
            self.book.forget();
        }
    }
}
