//! The child: works until it is killed, and reports what is safe as soon as that is acknowledged.

use super::{Failed, Work};
use crate::importing::{imported_at, no_ids};
use crate::invented::{BEGIN_MS, Phone, log_of};
use restwater_exchange::{Incoming, OpFileWriter, Place, Progress, Selection, export_to, import};
use restwater_log::{Op, canonical_bytes};
use restwater_store::{FILE_NAME, Store};
use std::collections::BTreeMap;
use std::io::Write;
use std::ops::ControlFlow;
use std::path::Path;
use uuid::Uuid;

/// A store file of the first schema, as shipped.
pub(super) const FIRST_SCHEMA: &[u8] = include_bytes!("../../../core/store/src/fixtures/store-1.db");

/// Rounds of work, far more than any child lives to see.
const ROUNDS: u64 = 20_000;

/// Ops of one import.
const IMPORTED: usize = 150;

/// Does the work of the child. The log of a seed is the same in the parent, so ids are reported by number.
pub fn child(work: Work, seed: u64, dir: &Path) -> Result<(), Failed> {
    let mut phone = Phone::new(seed);
    phone.begin();
    match work {
        Work::Migration => migrate(dir),
        Work::Import => import_on(dir, &phone, seed),
        Work::Taps => {
            let mut store = begin(dir, &phone)?;
            for n in 1..ROUNDS {
                tap(&mut store, &mut phone, n)?;
            }
            Ok(())
        }
        Work::Export => {
            let mut store = begin(dir, &phone)?;
            for n in 1..ROUNDS {
                tap(&mut store, &mut phone, n)?;
                export_to(&store, Selection::Everything, Place::Included, &export_path(dir), &mut go)?;
                say(&format!("exported {n}"))?;
            }
            Ok(())
        }
        Work::Backup => {
            let mut store = begin(dir, &phone)?;
            for n in 1..ROUNDS {
                tap(&mut store, &mut phone, n)?;
                let at = BEGIN_MS + i64::try_from(n)? * 1_000;
                store.backup(&dir.join("backups"), at, &mut |_, _| ControlFlow::Continue(()))?;
                say(&format!("backed up {n}"))?;
            }
            Ok(())
        }
    }
}

/// Where the child exports to.
pub(super) fn export_path(dir: &Path) -> std::path::PathBuf {
    dir.join("day.restwater.json-seq")
}

/// The ops of import number `n`.
pub(super) fn imported(seed: u64, n: u64) -> Vec<Op> {
    log_of(seed.wrapping_mul(1_000).wrapping_add(n), 1, IMPORTED)
}

fn go(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

fn say(line: &str) -> Result<(), Failed> {
    let mut out = std::io::stdout().lock();
    writeln!(out, "{line}")?;
    out.flush()?;
    Ok(())
}

fn begin(dir: &Path, phone: &Phone) -> Result<Store, Failed> {
    let mut store = Store::open(dir, phone.device())?;
    store.append(phone.ops(), None)?;
    say("ready")?;
    Ok(store)
}

fn tap(store: &mut Store, phone: &mut Phone, n: u64) -> Result<(), Failed> {
    let op = phone.tap();
    store.append(&[op], None)?;
    say(&format!("tap {n}"))
}

fn import_on(dir: &Path, phone: &Phone, seed: u64) -> Result<(), Failed> {
    let mut store = begin(dir, phone)?;
    for n in 1..ROUNDS {
        let ops: BTreeMap<Uuid, Op> = imported(seed, n).into_iter().map(|op| (op.id, op)).collect();
        let mut file = OpFileWriter::begin(Vec::new())?;
        for (id, op) in &ops {
            file.op(*id, &canonical_bytes(op)?)?;
        }
        let bytes = file.end()?.0;
        let incoming = Incoming {
            id: Uuid::from_u128(u128::from(n)),
            source: "Robin".into(),
            at: imported_at(BEGIN_MS),
        };
        import(&mut store, &bytes[..], &incoming, &mut no_ids, &mut go)?;
        say(&format!("imported {n}"))?;
    }
    Ok(())
}

fn migrate(dir: &Path) -> Result<(), Failed> {
    say("ready")?;
    for n in 0..ROUNDS {
        let one = dir.join(n.to_string());
        std::fs::create_dir(&one)?;
        // The complete file is in place before it is opened, like a shipped file.
        std::fs::write(one.join("whole"), FIRST_SCHEMA)?;
        std::fs::rename(one.join("whole"), one.join(FILE_NAME))?;
        let store = Store::open(&one, Uuid::nil())?;
        say(&format!("migrated {n}"))?;
        drop(store);
    }
    Ok(())
}
