//! The contents of a file compared with the log: what is new, what is known, what can't be read and where.

use super::{Fault, FaultKind};
use restwater_log::{Op, Payload, is_kit};
use std::collections::{BTreeMap, BTreeSet};
use uuid::Uuid;

/// Whether the end of the file fits the records before it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Trailer {
    /// There is none: the file was cut off, or its end is damaged.
    #[default]
    Missing,
    /// Count and hash of the ids fit.
    Fits,
    /// They don't fit: records are missing or were added.
    Differs {
        /// How many records the last line of the file says there are.
        said: u64,
    },
}

/// How far a phone's clock is off, as its entries show.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct ClockDifference {
    /// Its latest entry is this far in the future, in ms.
    pub ahead_ms: i64,
    /// Its clock was set back by this much between entries, in ms.
    pub set_back_ms: i64,
}

/// How many faults are kept with their place; the others are only counted.
const FAULTS_KEPT: usize = 100;

/// The contents of a file compared with the log.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Tally {
    /// Intact records: entries with the right hash.
    pub whole: u64,
    /// Intact records that were not in the log before.
    pub new: u64,
    /// New entries that correct or undo another.
    pub amended: u64,
    /// New entries from a newer version, which are kept and passed on unread.
    pub newer: u64,
    /// Already in the log, byte for byte.
    pub known: u64,
    /// Known entries that were damaged in the log and are as they were written again.
    pub mended: u64,
    /// Known entries that were undone with an import and are restored.
    pub brought_back: u64,
    /// Entries left out because another entry has that id.
    pub clashes: u64,
    /// Records left out because they can't be read.
    pub damaged: u64,
    /// The first hundred faults, in the order of the file.
    pub faults: Vec<Fault>,
    /// Whether the end of the file fits.
    pub trailer: Trailer,
    /// Records followed by one with a smaller id: the file was shuffled, which loses nothing.
    pub shuffled: u64,
    /// Sessions with something new. A kit is none.
    pub sessions: BTreeSet<Uuid>,
    /// Phones whose clocks are a minute off or more.
    pub clocks: BTreeMap<Uuid, ClockDifference>,
}

impl Tally {
    /// Whether the file was whole: nothing damaged, nothing missing, no clash.
    pub fn is_whole(&self) -> bool {
        self.damaged == 0 && self.clashes == 0 && self.trailer == Trailer::Fits
    }

    /// How many entries of the file could not be read, if its end says how many there were.
    pub fn missing(&self) -> Option<u64> {
        match self.trailer {
            Trailer::Missing => None,
            Trailer::Fits => Some(0),
            Trailer::Differs { said } => Some(said.saturating_sub(self.whole)),
        }
    }

    pub(super) fn fault(&mut self, fault: Fault) {
        match fault.kind {
            FaultKind::Clash(_) => self.clashes += 1,
            _ => self.damaged += 1,
        }
        if self.faults.len() < FAULTS_KEPT {
            self.faults.push(fault);
        }
    }

    pub(super) fn added(&mut self, op: &Op) {
        self.new += 1;
        self.amended += u64::from(op.amends.is_some() || op.payload.voids().is_some());
        self.newer += u64::from(matches!(op.payload, Payload::Unknown { .. }));
        if !is_kit(op.session) {
            self.sessions.insert(op.session);
        }
    }
}
