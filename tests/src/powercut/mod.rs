//! Power cuts: the store runs on a disk that forgets, and what is left must contain every acknowledged entry.

mod disk;
mod vfs;

pub use disk::{Disk, Full};

use crate::importing::{imported_at, no_ids};
use crate::invented::{BEGIN_MS, Phone};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use restwater_exchange::{Incoming, OpFileWriter, Progress, import};
use restwater_log::{Op, Payload, canonical_bytes};
use restwater_store::{Durability, Store, StoreError};
use std::collections::BTreeMap;
use std::ops::ControlFlow;
use std::path::Path;
use uuid::Uuid;

/// The results of the cuts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Outcome {
    /// Cuts made.
    pub cuts: u64,
    /// Acknowledged entries looked for.
    pub entries: u64,
    /// Of these, missing or changed.
    pub lost: u64,
    /// Stores that did not open, or whose check was not clean.
    pub broken: u64,
    /// Cuts with either.
    pub harmed: u64,
}

/// Anything that prevents the test itself from running.
pub type Failed = Box<dyn std::error::Error>;

/// Removes and returns the disk in use, after the store on it was dropped.
fn take_disk() -> Disk {
    vfs::make_default(false);
    vfs::disk().take().unwrap_or_default()
}

/// Runs `f` with SQLite on a disk with `room` bytes left, if given, and records everything.
pub fn on_disk<T>(room: Option<usize>, f: impl FnOnce() -> T) -> (T, Disk) {
    let mut disk = Disk::default();
    disk.set_room(room);
    *vfs::disk() = Some(disk);
    vfs::make_default(true);
    let result = f();
    (result, take_disk())
}

/// Sets the room on the disk in use.
pub fn set_room(room: Option<usize>) {
    if let Some(disk) = vfs::disk().as_mut() {
        disk.set_room(room);
    }
}

/// Records on the disk in use that the program was told an entry is safe.
pub fn acknowledge(entry: usize) {
    if let Some(disk) = vfs::disk().as_mut() {
        disk.acknowledge(entry);
    }
}

/// What is on the disk in use now, which a kill of the process would leave.
pub fn contents_now() -> BTreeMap<String, Vec<u8>> {
    vfs::disk().as_ref().map(|disk| disk.killed(disk.moments()).0).unwrap_or_default()
}

/// Drives a store through `taps` and cuts the power at `cuts` random moments.
pub fn run(seed: u64, taps: usize, cuts: u64, durability: Durability) -> Result<Outcome, Failed> {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let base = tempfile::tempdir()?;
    let mut phone = Phone::new(seed);
    phone.begin();
    Store::open(base.path(), phone.device())?.append(phone.ops(), None)?;
    let mut told: Vec<Vec<Op>> = vec![phone.ops().to_vec()];
    let (driven, disk) =
        on_disk(None, || drive(base.path(), &mut phone, &mut rng, taps, durability, &mut told));
    driven?;
    let mut outcome = Outcome::default();
    for _ in 0..cuts {
        let (left, mut safe) = disk.cut(rng.random_range(0..=disk.moments()), &mut rng);
        safe.push(0);
        outcome.cuts += 1;
        let before = outcome;
        judge(&left, base.path(), safe.iter().flat_map(|n| &told[*n]), &mut outcome)?;
        outcome.harmed += u64::from(before.lost < outcome.lost || before.broken < outcome.broken);
    }
    Ok(outcome)
}

/// Appends, imports, pauses; each acknowledged entry is recorded on the disk.
fn drive(
    dir: &Path,
    phone: &mut Phone,
    rng: &mut ChaCha8Rng,
    taps: usize,
    durability: Durability,
    told: &mut Vec<Vec<Op>>,
) -> Result<(), Failed> {
    let mut store = Store::open_with(dir, phone.device(), durability)?;
    for _ in 0..taps {
        let ops = match rng.random_range(0..20) {
            0 => {
                store.pause()?;
                continue;
            }
            1 => import_some(&mut store, rng.random())?,
            2 => append(&mut store, phone, 120)?,
            _ => append(&mut store, phone, 1)?,
        };
        told.push(ops);
        acknowledge(told.len() - 1);
    }
    Ok(())
}

fn append(store: &mut Store, phone: &mut Phone, count: usize) -> Result<Vec<Op>, StoreError> {
    let ops: Vec<Op> = (0..count).map(|_| phone.log(Payload::Cast { rod: 1 }, None)).collect();
    store.append(&ops, None)?;
    Ok(ops)
}

fn import_some(store: &mut Store, seed: u64) -> Result<Vec<Op>, Failed> {
    let ops = crate::invented::log_of(seed, 1, 40);
    let sorted: BTreeMap<Uuid, &Op> = ops.iter().map(|op| (op.id, op)).collect();
    let mut file = OpFileWriter::begin(Vec::new())?;
    for (id, op) in sorted {
        file.op(id, &canonical_bytes(op)?)?;
    }
    let incoming =
        Incoming { id: Uuid::from_u128(u128::from(seed)), source: "Robin".into(), at: imported_at(BEGIN_MS) };
    let mut go = |_: Progress| ControlFlow::Continue(());
    import(store, &file.end()?.0[..], &incoming, &mut no_ids, &mut go)?;
    Ok(ops)
}

/// Writes what was left to the real disk, opens it and looks for every acknowledged entry.
fn judge<'a>(
    left: &BTreeMap<String, Vec<u8>>,
    base: &Path,
    told: impl Iterator<Item = &'a Op>,
    outcome: &mut Outcome,
) -> Result<(), Failed> {
    let dir = tempfile::tempdir()?;
    for (name, bytes) in left {
        std::fs::write(dir.path().join(Path::new(name).strip_prefix(base)?), bytes)?;
    }
    let told: Vec<&Op> = told.collect();
    outcome.entries += told.len() as u64;
    match found(dir.path()) {
        Err(_) => {
            outcome.broken += 1;
            outcome.lost += told.len() as u64;
        }
        Ok((clean, there)) => {
            outcome.broken += u64::from(!clean);
            outcome.lost += told.iter().filter(|op| there.get(&op.id) != Some(op)).count() as u64;
        }
    }
    Ok(())
}

/// Whether the check of a store is clean, and its ops.
fn found(dir: &Path) -> Result<(bool, BTreeMap<Uuid, Op>), StoreError> {
    let store = Store::open(dir, Uuid::nil())?;
    let clean = store.check(&mut |_, _, _| None)?.is_clean();
    let mut ops = BTreeMap::new();
    for row in store.sessions()? {
        ops.extend(store.ops_of(row.id)?.into_iter().map(|op| (op.id, op)));
    }
    Ok((clean, ops))
}
