//! The rod that the keys act on. It is stored beside the log, since the keys of the lock screen act on it after the system has
//! ended the app, and the angler, who has not looked at a screen since, means the same rod.

use super::journal::Beside;
use super::{App, AppError, settings};
use restwater_log::RodNumber;
use restwater_session::{NotNow, Rod, RodState, Session};
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

/// The rods of a session that have a fish on.
pub(super) struct FishOn {
    session: Option<Uuid>,
    rods: Vec<RodNumber>,
}

impl FishOn {
    fn of(session: Option<&Session>) -> Self {
        let open = session.filter(|session| session.is_open());
        let is_on = |rod: &&Rod| matches!(rod.state, RodState::FishOn { .. });
        let on = |session: &Session| session.rods.iter().filter(is_on).map(|rod| rod.number).collect();
        Self { session: open.map(|session| session.id), rods: open.map_or_else(Vec::new, on) }
    }
}

/// The rod to begin with: the one chosen in this session, otherwise one with a fish on, otherwise the first.
pub(super) fn load(store: &Store, session: Option<&Session>) -> Result<RodNumber, AppError> {
    let Some(session) = session else { return Ok(1) };
    let kept: Option<ChosenRod> = settings::read(store, CHOSEN_ROD)?;
    let with_fish = || FishOn::of(Some(session)).rods.first().copied().unwrap_or(1);
    let kept = kept.filter(|kept| kept.session == session.id).map_or_else(with_fish, |kept| kept.rod);
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
        let session = session.id;
        self.keep_chosen(Some(session), rod);
        Ok(String::new())
    }

    fn keep_chosen(&mut self, session: Option<Uuid>, rod: RodNumber) {
        self.chosen = rod;
        let Some(session) = session else { return };
        let kept = settings::write(self.journal.store(), CHOSEN_ROD, &ChosenRod { session, rod });
        self.journal.beside(Beside::ChosenRod, kept);
    }

    /// Where a fish is on before a tap.
    pub(super) fn fish_on(&self) -> FishOn {
        FishOn::of(self.session())
    }

    /// After a tap: the keys act on the rod whose bite it logged, or what came of that, wherever it was tapped. Whoever nets a fish
    /// taps the LANDED that is shown, which must not end the cast of another rod. A rod that has a fish on is not left for one that
    /// has none any more: its LANDED would come up under the thumb that has just tapped LANDED.
    pub(super) fn follow_fish(&mut self, before: &FishOn) {
        let now = self.fish_on();
        let [old, new] = [&before.rods, &now.rods];
        let bitten = new.iter().find(|rod| !old.contains(rod) || before.session != now.session);
        let over = || {
            let over = old.iter().find(|rod| !new.contains(rod));
            over.filter(|_| before.session == now.session && !new.contains(&self.chosen))
        };
        if let Some(rod) = bitten.or_else(over).copied().filter(|rod| *rod != self.chosen) {
            self.keep_chosen(now.session, rod);
        }
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
