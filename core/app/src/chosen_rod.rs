//! The rod that the keys act on. It is stored beside the log, since the keys of the lock screen act on it after the system has
//! ended the app, and the angler, who has not looked at a screen since, means the same rod.

use super::journal::Beside;
use super::{App, AppError, settings};
use restwater_log::RodNumber;
use restwater_session::{NotNow, Session};
use restwater_store::Store;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

const CHOSEN_ROD: &str = "chosen_rod";

/// The rod that was chosen last, and in which session.
#[derive(Serialize, Deserialize)]
struct ChosenRod {
    session: Uuid,
    rod: RodNumber,
}

/// The rod to begin with: the one chosen in this session, otherwise the first.
pub(super) fn load(store: &Store, session: Option<&Session>) -> Result<RodNumber, AppError> {
    let Some(session) = session else { return Ok(1) };
    let kept: Option<ChosenRod> = settings::read(store, CHOSEN_ROD)?;
    let kept = kept.filter(|kept| kept.session == session.id).map_or(1, |kept| kept.rod);
    Ok(kept.clamp(1, rods(Some(session))))
}

fn rods(session: Option<&Session>) -> RodNumber {
    session.map_or(1, |session| session.rods.len().max(1) as RodNumber)
}

impl App {
    /// Makes the keys act on this rod from now on. If that can't be stored, they do so until the process ends.
    pub(super) fn choose_rod(&mut self, rod: RodNumber) -> Result<String, AppError> {
        let session = self.session().ok_or(NotNow::NoSession)?;
        if session.rod(rod).is_none() {
            return Err(NotNow::NoSuchRod { rod, rods: session.rods.len() as RodNumber }.into());
        }
        let chosen = ChosenRod { session: session.id, rod };
        self.chosen = rod;
        let kept = settings::write(self.journal.store(), CHOSEN_ROD, &chosen);
        self.journal.beside(Beside::ChosenRod, kept);
        Ok(String::new())
    }

    /// After an entry or a reading that may have changed the session shown, which was `before`, or its number of rods.
    pub(super) fn follow_session(&mut self, before: Option<Uuid>) {
        if before == self.session().map(|session| session.id) {
            self.chosen = self.chosen.clamp(1, rods(self.session()));
            return;
        }
        let chosen = load(self.journal.store(), self.session());
        self.chosen = self.journal.beside(Beside::ChosenRod, chosen).unwrap_or(1);
    }
}
