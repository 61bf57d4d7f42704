//! A disk whose power can be cut at any moment: every write and sync is recorded, and what a cut leaves is
//! worked out afterwards.
//!
//! The model is the one that SQLite describes for "atomic commit" (sqlite.org/atomiccommit.html): what was
//! synced stays; of what was not, any subset may be there, each write torn at sectors of 512 bytes; a new
//! name is permanent once its file was synced (SQLite then syncs the directory too), and a deletion may be
//! undone.

use rand::{Rng, RngExt};
use std::collections::{BTreeMap, HashMap};

/// Sector in bytes: written whole or not at all.
const SECTOR: usize = 512;

/// What happened, in the order it happened.
#[derive(Debug, Clone)]
enum Event {
    Create(usize),
    Write {
        file: usize,
        at: usize,
        bytes: Vec<u8>,
    },
    Truncate {
        file: usize,
        len: usize,
    },
    Sync(usize),
    Delete(usize),
    /// The program was told that the entry with this number is safe.
    Acknowledged(usize),
}

/// One file; if it is deleted and created again under the same name, that is another file.
#[derive(Debug)]
struct Held {
    name: String,
    /// Its content when it was loaded.
    loaded: Vec<u8>,
    /// Its content as read now.
    now: Vec<u8>,
}

/// The disk.
#[derive(Debug, Default)]
pub struct Disk {
    files: Vec<Held>,
    names: HashMap<String, Option<usize>>,
    events: Vec<Event>,
    /// Bytes that can still be written; `None`: no limit.
    room: Option<usize>,
}

/// The disk has no room for a write.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Full;

impl Disk {
    /// Sets how many bytes can still be written.
    pub fn set_room(&mut self, room: Option<usize>) {
        self.room = room;
    }

    /// The number of events so far.
    pub fn moments(&self) -> usize {
        self.events.len()
    }

    /// Records that the program was told an entry is safe.
    pub fn acknowledge(&mut self, entry: usize) {
        self.events.push(Event::Acknowledged(entry));
    }

    /// The file of a name: known already, or loaded from the real disk, or created.
    pub(super) fn open(&mut self, name: &str, create: bool) -> Option<usize> {
        if let Some(Some(file)) = self.names.get(name) {
            return Some(*file);
        }
        let real = if self.names.contains_key(name) { None } else { std::fs::read(name).ok() };
        if real.is_none() && !create {
            return None;
        }
        let file = self.files.len();
        let made = real.is_none();
        let loaded = real.unwrap_or_default();
        self.files.push(Held { name: name.to_owned(), now: loaded.clone(), loaded });
        self.names.insert(name.to_owned(), Some(file));
        if made {
            self.events.push(Event::Create(file));
        }
        Some(file)
    }

    pub(super) fn exists(&self, name: &str) -> bool {
        match self.names.get(name) {
            Some(file) => file.is_some(),
            None => std::fs::metadata(name).is_ok(),
        }
    }

    pub(super) fn delete(&mut self, name: &str) {
        if let Some(Some(file)) = self.names.insert(name.to_owned(), None) {
            self.events.push(Event::Delete(file));
        }
    }

    pub(super) fn contents(&self, file: usize) -> &[u8] {
        &self.files[file].now
    }

    pub(super) fn write(&mut self, file: usize, at: usize, bytes: &[u8]) -> Result<(), Full> {
        if let Some(room) = &mut self.room {
            *room = room.checked_sub(bytes.len()).ok_or(Full)?;
        }
        overwrite(&mut self.files[file].now, at, bytes);
        self.events.push(Event::Write { file, at, bytes: bytes.to_vec() });
        Ok(())
    }

    pub(super) fn truncate(&mut self, file: usize, len: usize) {
        self.files[file].now.truncate(len);
        self.events.push(Event::Truncate { file, len });
    }

    pub(super) fn sync(&mut self, file: usize) {
        self.events.push(Event::Sync(file));
    }

    /// What is on the disk after a power cut at `moment`, and the entries acknowledged before.
    pub fn cut(&self, moment: usize, rng: &mut impl Rng) -> (BTreeMap<String, Vec<u8>>, Vec<usize>) {
        let past = &self.events[..moment.min(self.events.len())];
        let acknowledged = past
            .iter()
            .filter_map(|e| if let Event::Acknowledged(n) = e { Some(*n) } else { None })
            .collect();
        let kindness = rng.random_range(0..4); // of the cut: 0 drops all that is unsynced, 3 keeps most
        let mut left = BTreeMap::new();
        for file in 0..self.files.len() {
            let there = self.there(file, past, rng);
            if let Some(bytes) = there.then(|| self.left_of(file, past, kindness, rng)) {
                left.insert(self.files[file].name.clone(), bytes);
            }
        }
        (left, acknowledged)
    }

    /// What a process killed at `moment` leaves, which is everything it wrote, synced or not; and the entries
    /// acknowledged before.
    pub fn killed(&self, moment: usize) -> (BTreeMap<String, Vec<u8>>, Vec<usize>) {
        let mut acknowledged = Vec::new();
        let made: Vec<usize> = self
            .events
            .iter()
            .filter_map(|e| if let Event::Create(f) = e { Some(*f) } else { None })
            .collect();
        let mut there: BTreeMap<usize, Vec<u8>> = (0..self.files.len())
            .filter(|f| !made.contains(f))
            .map(|f| (f, self.files[f].loaded.clone()))
            .collect();
        for event in &self.events[..moment.min(self.events.len())] {
            match event {
                Event::Create(file) => drop(there.insert(*file, Vec::new())),
                Event::Delete(file) => drop(there.remove(file)),
                Event::Write { file, at, bytes } => {
                    if let Some(held) = there.get_mut(file) {
                        overwrite(held, *at, bytes);
                    }
                }
                Event::Truncate { file, len } => {
                    if let Some(held) = there.get_mut(file) {
                        held.truncate(*len);
                    }
                }
                Event::Acknowledged(entry) => acknowledged.push(*entry),
                Event::Sync(_) => {}
            }
        }
        (
            there.into_iter().map(|(file, bytes)| (self.files[file].name.clone(), bytes)).collect(),
            acknowledged,
        )
    }

    /// Whether a file's name refers to it after the cut.
    fn there(&self, file: usize, past: &[Event], rng: &mut impl Rng) -> bool {
        let name = &self.files[file].name;
        let replaced =
            past.iter().any(|e| matches!(e, Event::Sync(f) if *f > file && self.files[*f].name == *name));
        if replaced {
            return false;
        }
        let synced = past.iter().any(|e| matches!(e, Event::Sync(f) if *f == file));
        let made_here = self.events.iter().any(|e| matches!(e, Event::Create(f) if *f == file));
        let made = !made_here || past.iter().any(|e| matches!(e, Event::Create(f) if *f == file));
        let deleted = past.iter().any(|e| matches!(e, Event::Delete(f) if *f == file));
        // A later file of the same name may be there although it isn't permanent: then it replaces this one.
        made && (synced || !made_here || rng.random()) && (!deleted || rng.random())
    }

    fn left_of(&self, file: usize, past: &[Event], kindness: u32, rng: &mut impl Rng) -> Vec<u8> {
        let last_sync = past.iter().rposition(|e| matches!(e, Event::Sync(f) if *f == file));
        let mut bytes = self.files[file].loaded.clone();
        for (i, event) in past.iter().enumerate() {
            let safe = last_sync.is_some_and(|sync| i < sync);
            match event {
                Event::Write { file: f, at, bytes: written } if *f == file => {
                    if safe {
                        overwrite(&mut bytes, *at, written);
                    } else {
                        tear(&mut bytes, *at, written, kindness, rng);
                    }
                }
                Event::Truncate { file: f, len }
                    if *f == file && (safe || rng.random_range(0..4) < kindness) =>
                {
                    bytes.truncate(*len);
                }
                _ => {}
            }
        }
        bytes
    }
}

/// Applies some sectors of a write that was never synced.
fn tear(bytes: &mut Vec<u8>, at: usize, written: &[u8], kindness: u32, rng: &mut impl Rng) {
    let whole = rng.random_range(0..4) < kindness;
    let torn = !whole && kindness > 0 && rng.random_range(0..3) == 0;
    let mut from = 0;
    while from < written.len() {
        // Sectors begin at multiples of 512 in the file, wherever the write begins.
        let to = (from + SECTOR - (at + from) % SECTOR).min(written.len());
        if whole || (torn && rng.random()) {
            overwrite(bytes, at + from, &written[from..to]);
        }
        from = to;
    }
}

fn overwrite(file: &mut Vec<u8>, at: usize, bytes: &[u8]) {
    let end = at + bytes.len();
    if file.len() < end {
        file.resize(end, 0);
    }
    file[at..end].copy_from_slice(bytes);
}
