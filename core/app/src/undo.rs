//! UNDO, REDO, and setting the last time back.

use super::{App, AppError};
use restwater_log::{Moment, Payload, RodNumber};
use restwater_screen as screen;
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
        self.write(session, Payload::Undone { targets }, None, at)?;
        self.chosen = self.chosen.min(self.session().map_or(1, |s| s.rods.len().max(1) as RodNumber));
        Ok(())
    }

    /// Sets the time of the last entry back.
    pub(super) fn time_back(&mut self, minutes: u32, at: &Moment) -> Result<String, AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(AppError::NothingToSetBack)?;
        let last = session.last_timed.clone().ok_or(AppError::NothingToSetBack)?;
        let session = session.id;
        let already = last.tapped.ms_since(&last.at).max(0) / 1_000;
        let back_s = (already as u32).saturating_add(minutes.saturating_mul(60));
        if let Some(before) = last.in_the_way(back_s) {
            return Err(AppError::BeforeEarlier(screen::clock(&before.shown)));
        }
        self.write(session, Payload::TimeSet { back_s }, Some(last.op), at)?;
        Ok(self.say_what("notice-time", last.payload.kind()))
    }
}
