//! UNDO, REDO, and setting the last time back.

use super::{App, AppError};
use restwater_log::{Moment, Payload};
use restwater_screen as screen;
use restwater_session::LastTimed;
use uuid::Uuid;

impl App {
    /// UNDO.
    pub(super) fn undo(&mut self, at: &Moment) -> Result<String, AppError> {
        let entry = self.journal.recent().undo().cloned().ok_or(AppError::NothingToUndo)?;
        self.undone(entry.ops.clone(), at)?;
        Ok(self.say_entry("notice-undone", &entry))
    }

    /// REDO.
    pub(super) fn redo(&mut self, at: &Moment) -> Result<String, AppError> {
        let (entry, undo) = self.journal.recent().redo().cloned().ok_or(AppError::NothingToRedo)?;
        self.undone(vec![undo], at)?;
        Ok(self.say_entry("notice-redone", &entry))
    }

    fn undone(&mut self, targets: Vec<Uuid>, at: &Moment) -> Result<(), AppError> {
        let first = targets.first().copied().unwrap_or_default();
        let session = self.journal.recent().session_of(first).ok_or(AppError::NothingToUndo)?;
        let before = self.session().map(|session| session.id);
        self.write(session, Payload::Undone { targets }, None, at)?;
        self.follow_session(before);
        Ok(())
    }

    /// Sets the time of the last entry back.
    pub(super) fn time_back(&mut self, minutes: u32, at: &Moment) -> Result<String, AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(AppError::NothingToSetBack)?;
        let last = session.last_timed.clone().ok_or(AppError::NothingToSetBack)?;
        let session = session.id;
        let already = last.tapped.ms_since(&last.at).max(0) / 1_000;
        let back_s = (already as u32).saturating_add(minutes.saturating_mul(60));
        self.check_back(session, &last, back_s)?;
        self.write(session, Payload::TimeSet { back_s }, Some(last.op), at)?;
        Ok(self.say_what("notice-time", last.payload.kind()))
    }

    /// Refuses to set an entry of a session back beyond what came before it. A START comes after the session before on its
    /// phone, since two are never open there at once.
    pub(super) fn check_back(&self, session: Uuid, entry: &LastTimed, back_s: u32) -> Result<(), AppError> {
        if let Some(before) = entry.in_the_way(back_s) {
            return Err(AppError::BeforeEarlier(screen::clock(&before.shown)));
        }
        if !matches!(entry.payload, Payload::SessionStarted(_)) {
            return Ok(());
        }
        let Some(ended) = self.end_before(session)? else { return Ok(()) };
        let since_ms = entry.tapped.shown.since(&ended).ms;
        // A negative time means that the clock was reset meanwhile, so it is unknown how long ago the session ended.
        if (0..i64::from(back_s) * 1_000).contains(&since_ms) {
            return Err(AppError::BeforeSession(screen::clock(&ended)));
        }
        Ok(())
    }

    /// When the previous session of the phone that began this one ended, or had its last entry if there is no END.
    fn end_before(&self, session: Uuid) -> Result<Option<Moment>, AppError> {
        let store = self.journal.store();
        let Some(row) = store.session(session)? else { return Ok(None) };
        let Some(device) = row.began.device else { return Ok(None) };
        let mut before = store.session_of_before(device, Some(row.began.order))?;
        while let Some(row) = before {
            let session = self.folded(row.id)?;
            if session.started.is_some() {
                let last = session.last_timed.as_ref().map(|last| &last.at);
                return Ok(session.ended.as_ref().or(last).map(|stamp| Moment::clone(&stamp.shown)));
            }
            before = store.session_of_before(device, Some(row.began.order))?;
        }
        Ok(None)
    }
}
