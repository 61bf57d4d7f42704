//! The sessions in memory: this phone's latest, and older ones as far as undo has gone back.

use restwater_log::{Began, Entry, History, Op, OpOrder, history, is_kit, kit_of, sorted};
use restwater_session::{Session, fold, may_be_reset};
use restwater_store::{Store, StoreError};
use std::borrow::Cow;
use std::collections::HashSet;
use uuid::Uuid;

/// One session with its ops.
pub(super) struct Loaded {
    pub(super) ops: Vec<Op>,
    pub(super) session: Session,
    /// How it began; `None` as long as nothing is written in it.
    began: Option<Began>,
}

impl Loaded {
    fn new(id: Uuid, ops: Vec<Op>) -> Self {
        Self { session: fold(id, &ops), began: Began::of_all(&ops), ops }
    }

    /// Its position among the sessions.
    pub(super) fn place(&self) -> Option<OpOrder> {
        self.began.map(|began| began.order)
    }
}

/// Sessions in memory, in no particular order, and all kits, since a kit has both old and new entries.
pub(super) struct Recent {
    device: Uuid,
    loaded: Vec<Loaded>,
    kits: Vec<(Uuid, Vec<Op>)>,
    /// All sessions that this phone began from this point of the log on are in memory; `None` before the
    /// first step back.
    own_from: Option<OpOrder>,
    /// All sessions in which this phone wrote from this point of the log on are in memory; `None` before the
    /// first step back.
    written_from: Option<OpOrder>,
    history: History,
}

impl Recent {
    /// Loads the session that this phone began last, and older ones only if undo needs them.
    pub(super) fn load(store: &Store) -> Result<Self, StoreError> {
        let kits = store.kits()?.into_iter().map(|row| Ok((row.id, store.ops_of(row.id)?)));
        let mut recent = Self {
            device: store.device(),
            loaded: Vec::new(),
            kits: kits.collect::<Result<_, StoreError>>()?,
            own_from: None,
            written_from: None,
            history: History::default(),
        };
        recent.settle(store)?;
        Ok(recent)
    }

    /// The session shown on the screens: the latest one that this phone began and whose beginning isn't
    /// undone.
    pub(super) fn current(&self) -> Option<&Loaded> {
        let from = self.own_from?;
        let own = self.loaded.iter().filter(|l| {
            l.began.is_some_and(|began| began.device == Some(self.device) && began.order >= from)
        });
        own.filter(|l| l.session.started.is_some()).max_by_key(|l| l.place())
    }

    /// A session in memory.
    pub(super) fn of(&self, id: Uuid) -> Option<&Loaded> {
        self.loaded.iter().find(|loaded| loaded.session.id == id)
    }

    /// The ops of a kit.
    pub(super) fn kit(&self, id: Uuid) -> &[Op] {
        self.kits.iter().find(|(kit, _)| *kit == id).map_or(&[], |(_, ops)| ops)
    }

    /// The angler's own things in the kits, such as plans, cautions that were read and a club's start: the entries of the kits of
    /// the `mine` phones, in no particular order. A partner's wallet may be shared; what a partner planned and read stays the
    /// partner's.
    pub(super) fn own_things(&self, mine: &[Uuid]) -> Cow<'_, [Op]> {
        let mut kits = mine.iter().map(|phone| self.kit(kit_of(*phone))).filter(|ops| !ops.is_empty());
        let Some(first) = kits.next() else { return Cow::Borrowed(&[]) };
        kits.fold(Cow::Borrowed(first), |all, ops| Cow::Owned([&*all, ops].concat()))
    }

    /// The kits there are.
    pub(super) fn kits(&self) -> &[(Uuid, Vec<Op>)] {
        &self.kits
    }

    /// What undo would undo next.
    pub(super) fn undo(&self) -> Option<&Entry> {
        self.history.undo.last()
    }

    /// What redo would restore next, with the undo op that it points at.
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

    /// The steps of undo and redo, with the times that the screens show.
    fn read_history(&self) -> History {
        let mut history = history(&sorted(self.all_ops()), self.device);
        let redo = history.redo.iter_mut().map(|(entry, _)| entry);
        history.undo.iter_mut().chain(redo).for_each(|entry| self.put_right(entry));
        history
    }

    /// Puts the time of an entry right if the clock may have been reset when it was tapped.
    fn put_right(&self, entry: &mut Entry) {
        let is_it = |op: &&Op| op.at.wall_ms == entry.wall_ms && entry.ops.contains(&op.id);
        let tapped = || {
            let found = self.loaded.iter().find_map(|l| Some((l, l.ops.iter().find(is_it)?)));
            found.map(|(loaded, op)| loaded.session.time_line.tapped(op))
        };
        if may_be_reset(entry.wall_ms, entry.hlc)
            && let Some(at) = tapped()
        {
            entry.wall_ms = at.shown.wall_ms;
        }
    }

    fn all_ops(&self) -> impl Iterator<Item = &Op> {
        self.loaded.iter().flat_map(|l| &l.ops).chain(self.kits.iter().flat_map(|(_, ops)| ops))
    }

    /// Reads what is needed before a session is corrected or added to: its entries, if it is an older one that is not in memory.
    pub(super) fn make_room_for(&mut self, store: &Store, session: Uuid) -> Result<(), StoreError> {
        if !is_kit(session) && !self.is_loaded(session) {
            let ops = store.ops_of(session)?;
            if !ops.is_empty() {
                self.loaded.push(Loaded::new(session, ops));
            }
        }
        Ok(())
    }

    /// Adds ops just written. This can't fail; the rest is left to [`Recent::settle`].
    pub(super) fn add(&mut self, ops: Vec<Op>) {
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
                Some(loaded) => {
                    loaded.began = Began::and_of(loaded.began, &op);
                    loaded.ops.push(op);
                }
                None => self.loaded.push(Loaded::new(op.session, vec![op])),
            }
        }
        for loaded in self.loaded.iter_mut().filter(|l| touched.contains(&l.session.id)) {
            loaded.session = fold(loaded.session.id, &loaded.ops);
        }
    }

    /// Goes back until there is a session to show (or no older one), and until no entry on disk can be newer
    /// than the next step of undo. An error leaves memory unchanged.
    pub(super) fn settle(&mut self, store: &Store) -> Result<(), StoreError> {
        self.history = self.read_history();
        let mut more = false;
        while self.current().is_none() {
            let Some(row) = store.session_of_before(self.device, self.own_from)? else { break };
            more |= self.load_one(store, row.id)?;
            self.own_from = Some(row.began.order);
        }
        loop {
            if more {
                self.history = self.read_history();
            }
            let last = self.history.undo.last().map(|entry| entry.hlc);
            more = false;
            while let Some(row) = store.written_before(self.written_from)? {
                // Sessions last written in before that entry don't matter.
                if row.own.is_none_or(|own| last.is_some_and(|last| own.0 <= last)) {
                    break;
                }
                more |= self.load_one(store, row.id)?;
                self.written_from = row.own;
                if more && last.is_none() {
                    break;
                }
            }
            if !more {
                return Ok(());
            }
        }
    }

    /// Loads a session unless it is in memory; returns whether it was loaded.
    fn load_one(&mut self, store: &Store, id: Uuid) -> Result<bool, StoreError> {
        if is_kit(id) || self.is_loaded(id) {
            return Ok(false);
        }
        let ops = store.ops_of(id)?;
        self.loaded.push(Loaded::new(id, ops));
        Ok(true)
    }

    /// How many sessions are held in memory.
    #[cfg(test)]
    pub(super) fn in_memory(&self) -> usize {
        self.loaded.len()
    }

    fn is_loaded(&self, id: Uuid) -> bool {
        self.loaded.iter().any(|loaded| loaded.session.id == id)
    }
}
