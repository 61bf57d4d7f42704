//! The sessions in memory: this phone's latest, and older ones as far as undo has walked back.

use restwater_log::{Entry, History, Hlc, Op, history, is_kit, sorted};
use restwater_session::{Session, fold};
use restwater_store::{SessionPlace, SessionRow, Store, StoreError};
use std::collections::HashSet;
use uuid::Uuid;

/// One session with its ops.
pub(super) struct Loaded {
    pub(super) ops: Vec<Op>,
    pub(super) session: Session,
}

/// This phone's latest sessions, newest first, and all kits: a kit is old and new at once.
pub(super) struct Recent {
    device: Uuid,
    loaded: Vec<Loaded>,
    kits: Vec<(Uuid, Vec<Op>)>,
    /// How far back the list of sessions was walked; none before its first step, and all of it once `through`.
    walked: Option<SessionPlace>,
    through: bool,
    history: History,
}

impl Recent {
    /// Loads the latest session this phone wrote in; older ones only where undo needs them.
    pub(super) fn load(store: &Store, kits: &[SessionRow]) -> Result<Self, StoreError> {
        let kits =
            kits.iter().map(|row| Ok((row.id, store.ops_of(row.id)?))).collect::<Result<_, StoreError>>()?;
        let mut recent = Self {
            device: store.device(),
            loaded: Vec::new(),
            kits,
            walked: None,
            through: false,
            history: History::default(),
        };
        recent.load_one(store)?;
        recent.settle(store)?;
        Ok(recent)
    }

    /// The session that screens are about: the latest that has begun and whose beginning isn't undone.
    pub(super) fn current(&self) -> Option<&Loaded> {
        self.loaded.iter().find(|l| l.session.started.is_some())
    }

    /// The ops of a kit.
    pub(super) fn kit(&self, id: Uuid) -> &[Op] {
        self.kits.iter().find(|(kit, _)| *kit == id).map_or(&[], |(_, ops)| ops)
    }

    /// The kits there are.
    pub(super) fn kits(&self) -> &[(Uuid, Vec<Op>)] {
        &self.kits
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
        self.all_ops().find(|o| o.id == op).map(|o| o.session)
    }

    fn all_ops(&self) -> impl Iterator<Item = &Op> {
        self.loaded.iter().flat_map(|l| &l.ops).chain(self.kits.iter().flat_map(|(_, ops)| ops))
    }

    /// Takes in ops just written.
    pub(super) fn take(&mut self, store: &Store, ops: Vec<Op>) -> Result<(), StoreError> {
        let written: HashSet<Uuid> = ops.iter().map(|op| op.id).collect();
        let touched: HashSet<Uuid> = ops.iter().map(|op| op.session).collect();
        for op in ops {
            if is_kit(op.session) {
                match self.kits.iter_mut().find(|(id, _)| *id == op.session) {
                    Some((_, ops)) => ops.push(op),
                    None => self.kits.push((op.session, vec![op])),
                }
                continue;
            }
            match self.loaded.iter_mut().find(|l| l.session.id == op.session) {
                Some(loaded) if loaded.ops.iter().any(|known| known.id == op.id) => {}
                Some(loaded) => loaded.ops.push(op),
                None => self.load_written(store, op.session, &written)?,
            }
        }
        for loaded in self.loaded.iter_mut().filter(|l| touched.contains(&l.session.id)) {
            loaded.session = fold(loaded.session.id, &loaded.ops);
        }
        self.settle(store)
    }

    /// Loads a session that was just written in and is not in memory: a new one comes first, an older one, written in
    /// from the Book, last.
    fn load_written(&mut self, store: &Store, id: Uuid, written: &HashSet<Uuid>) -> Result<(), StoreError> {
        let ops = store.ops_of(id)?;
        let is_new = ops.iter().all(|op| written.contains(&op.id));
        let at = if is_new { 0 } else { self.loaded.len() };
        self.loaded.insert(at, Loaded { session: fold(id, &[]), ops });
        Ok(())
    }

    /// Reads the next older session this phone wrote in.
    fn load_one(&mut self, store: &Store) -> Result<bool, StoreError> {
        while !self.through {
            let Some((began, id)) = store.session_before(self.walked)? else {
                self.through = true;
                break;
            };
            self.walked = Some((began, id));
            // One of another phone is not read: a log that was taken over whole has nothing else.
            if is_kit(id) || self.is_loaded(id) || !store.may_have_written(id)? {
                continue;
            }
            let ops = store.ops_of(id)?;
            if ops.iter().any(|op| op.device == self.device) {
                self.loaded.push(Loaded { session: fold(id, &ops), ops });
                return Ok(true);
            }
        }
        Ok(false)
    }

    fn is_loaded(&self, id: Uuid) -> bool {
        self.loaded.iter().any(|loaded| loaded.session.id == id)
    }

    /// Whether a session not walked to yet has an entry that comes after a clock reading.
    fn is_behind(&self, store: &Store, hlc: Hlc) -> Result<bool, StoreError> {
        if self.through {
            return Ok(false);
        }
        let ahead = |place: &SessionPlace| self.walked.is_none_or(|walked| *place < walked);
        let after = store.sessions_after(hlc)?;
        Ok(after.iter().any(|place| ahead(place) && !is_kit(place.1) && !self.is_loaded(place.1)))
    }

    /// Walks back until there is something to undo that no session still on disk may come after, and a session to show,
    /// or nothing older.
    fn settle(&mut self, store: &Store) -> Result<(), StoreError> {
        loop {
            self.history = history(&sorted(self.all_ops()), self.device);
            let settled = match self.history.undo.last().map(|entry| entry.hlc) {
                Some(last) if self.current().is_some() => !self.is_behind(store, last)?,
                _ => false,
            };
            if settled || !self.load_one(store)? {
                return Ok(());
            }
        }
    }
}
