//! Whose sessions count, and which phones are the angler's.

use super::{App, AppError, settings};
use restwater_log::{Moment, Payload};
use restwater_screen::{Day, Whose};
use restwater_session::{NotNow, check};
use uuid::Uuid;

impl App {
    /// Chooses whose earlier sessions the advice uses from now on.
    pub(super) fn count_sessions_of(&mut self, whose: Whose) -> Result<(), AppError> {
        let phone = restwater_screen::PhoneChoices { whose, ..self.phone };
        settings::save_phone(self.journal.store(), phone)?;
        self.phone = phone;
        self.whose_changed();
        Ok(())
    }

    /// Says whether the phone that began the opened session is also the angler's, for example one that was
    /// lost or replaced and whose sessions came from a backup.
    pub(super) fn phone_of_opened_is(&mut self, mine: bool) -> Result<(), AppError> {
        let device = self.phone_of_opened()?.ok_or(AppError::NoSuchSession)?;
        let mut phones = self.mine.clone();
        phones.retain(|phone| *phone != device);
        phones.extend(mine.then_some(device));
        settings::save_mine(self.journal.store(), &phones)?;
        self.mine = phones;
        self.whose_changed();
        Ok(())
    }

    /// Whether the angler claimed the phone that began the opened session as theirs; `None` if it was this phone.
    pub(super) fn phone_is_mine(&self) -> Result<Option<bool>, AppError> {
        Ok(self.phone_of_opened()?.map(|device| self.mine.contains(&device)))
    }

    /// Whether the opened session of the angler was left open and is not the one on the Bank, where that one is ended: it was begun
    /// by a phone that the angler no longer logs with, or a backup brought it back after another had been begun.
    pub(super) fn opened_can_be_ended(&self) -> Result<bool, AppError> {
        let Some(opened) = self.book.opened.as_ref().filter(|opened| opened.is_open()) else {
            return Ok(false);
        };
        let on_the_bank = self.session().is_some_and(|session| session.id == opened.id);
        Ok(!on_the_bank && !self.is_of_another(opened.id)?)
    }

    /// END of that session. If it comes late, Mend asks about it as about any other.
    pub(super) fn end_opened(&mut self, at: &Moment) -> Result<String, AppError> {
        self.read_opened_again()?;
        if !self.opened_can_be_ended()? {
            return Err(NotNow::NoSession.into());
        }
        let (opened, payload) = (self.book.opened.as_ref(), Payload::SessionEnded);
        check(opened, &payload)?;
        let (id, kind) = (opened.ok_or(NotNow::NoSession)?.id, payload.kind().to_owned());
        self.write(id, payload, None, at)?;
        Ok(self.say_what("notice-logged", &kind))
    }

    /// The other phone that began the opened session.
    fn phone_of_opened(&self) -> Result<Option<Uuid>, AppError> {
        let Some(session) = &self.book.opened else { return Ok(None) };
        let store = self.journal.store();
        let began = store.session(session.id)?.and_then(|row| row.began.device);
        Ok(began.filter(|device| *device != store.device()))
    }

    /// The days that count for `day` and were on the same water, including itself, newest first.
    pub(super) fn like<'a>(&self, day: &Day, days: &[Day<'a>]) -> Vec<Day<'a>> {
        let count = self.sessions.days_for(day.id, self.phone.whose, &self.mine);
        let counts = |other: &&Day| count.iter().any(|(id, _, _)| *id == other.id);
        let on_it = |other: &&Day| {
            restwater_session::same_water(day.gist.water.as_deref(), other.gist.water.as_deref())
        };
        days.iter().filter(|other| other.id == day.id || (counts(other) && on_it(other))).copied().collect()
    }

    /// Whether a session was begun by a phone that isn't the angler's.
    pub(super) fn is_of_another(&self, session: Uuid) -> Result<bool, AppError> {
        let store = self.journal.store();
        let began = store.session(session)?.and_then(|row| row.began.device);
        Ok(began.is_some_and(|device| device != store.device() && !self.mine.contains(&device)))
    }

    fn whose_changed(&mut self) {
        self.book.forget();
        self.load_advisor();
        self.learning.forget_views();
    }
}
