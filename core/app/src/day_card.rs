//! The card of the day, and the cards of the first opening.

use super::journal::Beside;
use super::{App, AppError, settings};
use restwater_log::Moment;
use restwater_screen as screen;
use restwater_screen::{DayInput, LeavesView, Which};
use restwater_session::Session;

/// The setting that says whether the cards of the first opening were shown.
const WELCOMED: &str = "welcomed";

impl App {
    /// The card of the session that the screens show.
    pub(super) fn day_card(&mut self, now: &Moment) -> LeavesView {
        let (waits, changes, placed) = (self.waits_of_all(now), self.changes(), self.on_line(now));
        let current = self.journal.recent().current();
        let reading = current.and_then(|loaded| {
            self.advisor.read(&loaded.session, self.journal.in_memory(), self.chosen, &placed)
        });
        screen::day(&DayInput {
            session: self.session(),
            waits: &waits,
            changes: &changes,
            advice: reading.map(|reading| reading.advice),
            words: self.words,
        })
    }

    /// The cards of the first opening.
    pub(super) fn welcome(&self) -> LeavesView {
        screen::welcome(self.words, self.session().is_some_and(Session::is_open))
    }

    /// The screen that the app opens with: the welcome cards if nothing has been logged and they have not
    /// been shown, otherwise the Bank. If it can't be stored that they were shown, they are shown again.
    pub fn first_screen(&mut self) -> Result<Which, AppError> {
        let store = self.journal.store();
        if self.session().is_some() || store.setting(WELCOMED)?.is_some() {
            return Ok(Which::Bank);
        }
        self.journal.beside(Beside::Welcome, settings::write(store, WELCOMED, &true));
        Ok(Which::Welcome)
    }
}
