//! The journal: the log on disk, the clock and ids for new entries, and the part of the log that is in
//! memory. Taps are written by [`Journal::write`] alone, imports by [`Journal::exchange`] alone.

use super::entropy::{Entropy, new_id};
use super::recent::Recent;
use restwater_exchange::ExchangeError;
use restwater_log::{HybridClock, Moment, Op, Payload};
use restwater_store::{Store, StoreError};
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::path::Path;
use uuid::Uuid;

/// Nothing was stored.
#[derive(Debug, thiserror::Error)]
#[error(transparent)]
pub(super) struct JournalError(#[from] pub(super) StoreError);

/// The entries are on stable storage and in memory. Nothing that happens later can fail the write.
#[must_use]
pub(super) struct Committed {
    /// The session written in.
    pub(super) session: Uuid,
}

/// Data kept beside the log, either computed from it or chosen on the phone. If it can't be stored or read,
/// the app works without it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Beside {
    /// Summaries of sessions on disk.
    Summaries,
    /// The earlier sessions that count today.
    EarlierSessions,
    /// Older sessions, for the session to show and for UNDO.
    OlderSessions,
    /// The plan for the day, when a session begins.
    Plan,
    /// How far the latest backup goes.
    Backup,
    /// That the cards of the first opening were shown.
    Welcome,
    /// The rod that was chosen last.
    ChosenRod,
    /// Work after a tap: discarding a used choice, counting cautions.
    AfterTheTap,
}

/// Identifies the entries from which the sessions in memory are folded. A result computed from a session may be kept while
/// this is unchanged: if two values of one log are equal, so are the sessions.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct InMemory {
    /// Version of the log.
    log: u64,
    /// How often entries were read or added: a failed reading is repeated later without a new version of the log.
    read: u64,
}

/// The log, with the part of it that is in memory.
pub(super) struct Journal {
    store: Store,
    clock: HybridClock,
    entropy: Box<dyn Entropy>,
    recent: Recent,
    /// How often `recent` has changed.
    read: u64,
    /// Whether the log holds entries that are not in memory, because reading them failed.
    behind: bool,
    /// What the app works without at present, and why.
    without: RefCell<BTreeMap<Beside, String>>,
}

impl Journal {
    /// Opens the log in `dir`, or begins one there.
    pub(super) fn open(dir: &Path, mut entropy: Box<dyn Entropy>, now: &Moment) -> Result<Self, StoreError> {
        let store = Store::open(dir, new_id(entropy.as_mut(), now.wall_ms))?;
        let recent = Recent::load(&store)?;
        let clock = HybridClock::after(store.last_hlc());
        Ok(Self { store, clock, entropy, recent, read: 0, behind: false, without: RefCell::default() })
    }

    /// The log on disk, for reading and for storing choices and summaries beside it. Entries can't be added
    /// with it, since that needs a mutable store; see [`Journal::write`].
    pub(super) fn store(&self) -> &Store {
        &self.store
    }

    /// The sessions in memory, and the undo history.
    pub(super) fn recent(&self) -> &Recent {
        &self.recent
    }

    /// The version of the log, which grows with every entry, even with an old one that is imported.
    pub(super) fn version(&self) -> u64 {
        self.store.version()
    }

    /// The entries from which the sessions in memory are folded.
    pub(super) fn in_memory(&self) -> InMemory {
        InMemory { log: self.store.version(), read: self.read }
    }

    /// The moment with this phone named in its boot, so that it differs from those of other phones.
    pub(super) fn here(&self, at: &Moment) -> Moment {
        at.on_device(self.store.device())
    }

    /// An id for something new.
    pub(super) fn new_id(&mut self, at: &Moment) -> Uuid {
        new_id(self.entropy.as_mut(), at.wall_ms)
    }

    /// Writes entries of one session in one transaction, each with the op it amends; several entries form a
    /// group that is undone together. They go to stable storage first, then to memory; on an error nothing
    /// was stored.
    pub(super) fn write(
        &mut self,
        session: Uuid,
        said: Vec<(Payload, Option<Uuid>)>,
        at: &Moment,
    ) -> Result<Committed, JournalError> {
        let said = said.into_iter().map(|(payload, amends)| (self.new_id(at), payload, amends)).collect();
        self.write_as(session, said, at)
    }

    /// The same with ids chosen by the caller, for entries that amend others of their group.
    pub(super) fn write_as(
        &mut self,
        session: Uuid,
        said: Vec<(Uuid, Payload, Option<Uuid>)>,
        at: &Moment,
    ) -> Result<Committed, JournalError> {
        // Everything that has to be read is read before anything is written.
        self.catch_up()?;
        self.recent.make_room_for(&self.store, session)?;
        let group = (said.len() > 1).then(|| self.new_id(at));
        let at = self.here(at);
        let mut ops = Vec::with_capacity(said.len());
        for (id, payload, amends) in said {
            let hlc = self.clock.tick(at.wall_ms);
            let device = self.store.device();
            ops.push(Op { id, device, hlc, at: at.clone(), session, payload, amends, group });
        }
        self.store.append(&ops, None)?;
        self.read += 1;
        self.recent.add(ops);
        self.settle();
        Ok(Committed { session })
    }

    /// Reads a session into memory unless it is there.
    pub(super) fn bring(&mut self, session: Uuid) -> Result<(), StoreError> {
        self.catch_up()?;
        self.read += 1;
        self.recent.make_room_for(&self.store, session)
    }

    /// Imports entries as a whole, or undoes or redoes an import. On an error nothing was stored.
    pub(super) fn exchange<T>(
        &mut self,
        at: &Moment,
        exchange: impl FnOnce(&mut Store, &Moment, &mut dyn FnMut() -> Uuid) -> Result<T, ExchangeError>,
    ) -> Result<T, ExchangeError> {
        let at = self.here(at);
        let (store, entropy) = (&mut self.store, &mut self.entropy);
        let done = exchange(store, &at, &mut || new_id(entropy.as_mut(), at.wall_ms))?;
        self.reload();
        Ok(done)
    }

    /// Rebuilds the indexes of the file.
    pub(super) fn reindex(&mut self) -> Result<(), StoreError> {
        self.store.reindex()
    }

    /// Rebuilds the projections on disk and reloads the sessions in memory.
    pub(super) fn rebuild(&mut self) -> Result<(), StoreError> {
        self.store.rebuild()?;
        self.reload();
        Ok(())
    }

    /// Writes everything into the one file and closes it.
    pub(super) fn pause(&mut self) -> Result<(), StoreError> {
        self.store.pause()
    }

    /// Opens the file again.
    pub(super) fn resume(&mut self) -> Result<(), StoreError> {
        self.store.resume()
    }

    /// Reads again what could not be read when it was due.
    pub(super) fn catch_up(&mut self) -> Result<(), StoreError> {
        if self.behind {
            self.recent = Recent::load(&self.store)?;
            self.read += 1;
            self.behind = false;
            self.without.get_mut().remove(&Beside::OlderSessions);
        }
        Ok(())
    }

    /// Handles the outcome of work beside the log. A failure is noted until the work succeeds, and the app
    /// works without it.
    pub(super) fn beside<T, E: std::fmt::Display>(&self, what: Beside, outcome: Result<T, E>) -> Option<T> {
        let Ok(mut without) = self.without.try_borrow_mut() else { return outcome.ok() };
        match outcome {
            Ok(done) => {
                without.remove(&what);
                Some(done)
            }
            Err(error) => {
                without.insert(what, error.to_string());
                None
            }
        }
    }

    /// Why the app works without something beside the log at present, or `None` if everything works.
    pub(super) fn done_without(&self) -> Option<String> {
        self.without.borrow().values().next().cloned()
    }

    /// Reloads the sessions in memory, because entries were added that were not written here.
    fn reload(&mut self) {
        self.clock.observe(self.store.last_hlc());
        self.behind = true;
        let read = self.catch_up();
        self.beside(Beside::OlderSessions, read);
    }

    fn settle(&mut self) {
        let settled = self.recent.settle(&self.store);
        self.behind = self.beside(Beside::OlderSessions, settled).is_none();
    }
}
