//! The sessions in memory: this phone's latest, and older ones as far as undo has walked back.

use crate::log::{Entry, History, Op, history, sorted};
use crate::session::{Session, fold};
use crate::store::{Store, StoreError};
use uuid::Uuid;

/// One session with its ops.
pub(super) struct Loaded {
    pub(super) ops: Vec<Op>,
    pub(super) session: Session,
}

/// This phone's latest sessions, newest first.
pub(super) struct Recent {
    device: Uuid,
    loaded: Vec<Loaded>,
    older: Vec<Uuid>,
    history: History,
}

impl Recent {
    /// Loads the latest session this phone wrote in; older ones only where undo needs them.
    pub(super) fn load(store: &Store) -> Result<Self, StoreError> {
        let mut older: Vec<Uuid> = store.sessions()?.iter().map(|row| row.id).collect();
        older.reverse();
        let mut recent =
            Self { device: store.device(), loaded: Vec::new(), older, history: History::default() };
        recent.load_one(store)?;
        recent.settle(store)?;
        Ok(recent)
    }

    /// The session that screens are about: the latest that has begun and whose beginning isn't undone.
    pub(super) fn current(&self) -> Option<&Loaded> {
        self.loaded.iter().find(|l| l.session.started.is_some())
    }

    /// What undo takes back next.
    pub(super) fn undo(&self) -> Option<&Entry> {
        self.history.undo.last()
    }

    /// What redo brings back next, with the undo op it points at.
    pub(super) fn redo(&self) -> Option<&(Entry, Uuid)> {
        self.history.redo.last()
    }

    /// The latest entries of the session shown, latest first.
    pub(super) fn latest(&self, count: usize) -> Vec<&Entry> {
        let ops = self.current().map_or(&[][..], |loaded| &loaded.ops);
        let is_here = |entry: &&Entry| entry.ops.iter().all(|id| ops.iter().any(|op| op.id == *id));
        self.history.undo.iter().rev().filter(is_here).take(count).collect()
    }

    /// The session an op belongs to.
    pub(super) fn session_of(&self, op: Uuid) -> Option<Uuid> {
        self.loaded.iter().flat_map(|l| &l.ops).find(|o| o.id == op).map(|o| o.session)
    }

    /// Takes in ops just written.
    pub(super) fn take(&mut self, store: &Store, ops: Vec<Op>) -> Result<(), StoreError> {
        for op in ops {
            match self.loaded.iter_mut().find(|l| l.session.id == op.session) {
                Some(loaded) => loaded.ops.push(op),
                None => self.loaded.insert(0, Loaded { session: fold(op.session, &[]), ops: vec![op] }),
            }
        }
        for loaded in &mut self.loaded {
            loaded.session = fold(loaded.session.id, &loaded.ops);
        }
        self.settle(store)
    }

    /// Reads the next older session this phone wrote in.
    fn load_one(&mut self, store: &Store) -> Result<bool, StoreError> {
        while let Some(id) = self.older.pop() {
            let ops = store.ops_of(id)?;
            if ops.iter().any(|op| op.device == self.device) {
                self.loaded.push(Loaded { session: fold(id, &ops), ops });
                return Ok(true);
            }
        }
        Ok(false)
    }

    /// Walks back until there is something to undo and a session to show, or nothing older.
    fn settle(&mut self, store: &Store) -> Result<(), StoreError> {
        loop {
            self.history = history(&sorted(self.loaded.iter().flat_map(|l| &l.ops)), self.device);
            let settled = !self.history.undo.is_empty() && self.current().is_some();
            if settled || !self.load_one(store)? {
                return Ok(());
            }
        }
    }
}
