//! LANDED or LOST while the bait still counts as out: the angler's hands were full at the bite, so the bite
//! is logged now, set back by the usual playing time.

use super::{App, AppError};
use restwater_log::{Moment, Payload, RodNumber};
use restwater_screen as screen;
use restwater_screen::Arg;
use restwater_session::{Played, Session, Stamp, bite_before_s};

/// A bite that is logged only with its outcome.
#[derive(Debug, Clone, Copy)]
pub(super) struct LateBite {
    rod: RodNumber,
    /// How long before the outcome it came.
    back_s: u32,
}

/// The bite that has to be logged with an outcome, or `None` if it was logged, or nothing is out.
pub(super) fn outcome(session: Option<&Session>, payload: &Payload, now: &Stamp) -> Option<LateBite> {
    let played = match payload {
        Payload::Landed { .. } => Played::Landed,
        Payload::Lost { .. } => Played::Lost,
        _ => return None,
    };
    let (session, rod) = (session.filter(|session| session.is_open())?, payload.rod()?);
    Some(LateBite { rod, back_s: bite_before_s(session, rod, played, now)? })
}

impl App {
    /// Logs a bite and its outcome as one group, which is undone together.
    pub(super) fn with_its_bite(
        &mut self,
        outcome: Payload,
        late: LateBite,
        at: &Moment,
    ) -> Result<String, AppError> {
        let session = self.session().map(|session| session.id).ok_or(restwater_session::NotNow::NoSession)?;
        let what = screen::kind_words(self.words, outcome.kind());
        let bite = self.journal.new_id(at);
        let entries = vec![
            (bite, Payload::Bite { rod: late.rod }, None),
            (self.journal.new_id(at), Payload::TimeSet { back_s: late.back_s }, Some(bite)),
            (self.journal.new_id(at), outcome, None),
        ];
        let committed = self.journal.write_as(session, entries, at)?;
        self.after(&committed);
        let seconds = Arg::Count(late.back_s as usize);
        Ok(self.words.say_with("notice-late", &[("what", Arg::Text(&what)), ("seconds", seconds)]))
    }
}
