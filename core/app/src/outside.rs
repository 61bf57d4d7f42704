//! Keys that are tapped outside the app: on the lock screen, on an alarm, by a button of the phone. Such a key was shown some time
//! ago, perhaps by a process that has ended since, and nobody sees the screens.

use super::action::payload;
use super::{App, AppError, Update};
use restwater_log::{Moment, RodNumber};
use restwater_screen::{Action, Key};
use restwater_session::{NotNow, check};

/// Keys about what a rod or the angler does, and UNDO. To begin or end a session, the angler has to look at the screen.
const OFFERED: [Key; 11] = [
    Key::Cast,
    Key::Bite,
    Key::WoundIn,
    Key::Landed,
    Key::Lost,
    Key::Missed,
    Key::Liner,
    Key::Indication,
    Key::Twitch,
    Key::Away,
    Key::Undo,
];

impl App {
    /// Taps a key for the rod that it was shown for, whichever is chosen now; without a rod, for the chosen one. Only what the
    /// Bank would offer for that rod can be tapped, and what can't be is refused with the reason: never ignored in silence.
    pub fn act_outside(&mut self, key: Key, rod: Option<RodNumber>, at: &Moment) -> Result<Update, AppError> {
        if !OFFERED.contains(&key) {
            return Err(AppError::unknown("key", format!("{key:?}")));
        }
        let rod = rod.unwrap_or(self.chosen);
        let here = &self.journal.here(at);
        self.catch_up();
        let meant = Action::of_key(key, rod).action().cloned();
        // The first tap of a cold thumb may have changed what is offered.
        if let Some(action) = meant.as_ref().filter(|action| self.is_repeated_by(action, here)) {
            return self.act(action, at);
        }
        // Nothing outside the app offers AWAY: there this key always ends a break.
        if key == Key::Away && self.session().is_some_and(|session| session.away().is_none()) {
            return Err(NotNow::NotAway.into());
        }
        let bank = self.bank_of(rod, here);
        let offered = bank.keys.iter().find(|view| view.key == key && view.enabled);
        match offered.and_then(|view| view.tap.action()) {
            Some(action) => self.act(&action.clone(), at),
            None => Err(self.why_not(meant.as_ref(), rod)),
        }
    }

    /// Why the Bank does not offer a key for that rod: its entry can't be logged now, or a fish is on, which comes first.
    fn why_not(&self, action: Option<&Action>, rod: RodNumber) -> AppError {
        if action == Some(&Action::Undo) {
            return AppError::NothingToUndo;
        }
        let entry = action.and_then(|action| payload(action, &self.draft));
        let refused = entry.and_then(|entry| check(self.session(), &entry).err());
        refused.unwrap_or(NotNow::FishOn(rod)).into()
    }
}
