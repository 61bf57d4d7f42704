//! Sessions that are not in memory, folded for a screen. A screen is drawn several times a second, so each is folded once and
//! kept until the log has grown.

use super::{App, AppError};
use restwater_session::{Session, fold};
use std::cell::RefCell;
use std::collections::HashMap;
use std::sync::Arc;
use uuid::Uuid;

#[derive(Default)]
pub(super) struct Folded {
    kept: RefCell<Kept>,
    /// How many were folded.
    #[cfg(test)]
    pub(super) count: std::cell::Cell<usize>,
}

/// Sessions as they are in one version of the log.
#[derive(Default)]
struct Kept {
    version: u64,
    sessions: HashMap<Uuid, Arc<Session>>,
}

impl App {
    /// A session as it is in the log.
    pub(super) fn folded(&self, id: Uuid) -> Result<Arc<Session>, AppError> {
        let mut kept = self.folded.kept.borrow_mut();
        if kept.version != self.journal.version() {
            *kept = Kept { version: self.journal.version(), sessions: HashMap::new() };
        }
        if let Some(session) = kept.sessions.get(&id) {
            return Ok(session.clone());
        }
        #[cfg(test)]
        self.folded.count.set(self.folded.count.get() + 1);
        let session = Arc::new(fold(id, &self.journal.store().ops_of(id)?));
        kept.sessions.insert(id, session.clone());
        Ok(session)
    }
}
