//! The schema of the file: migrations, one step for each version, all in one immediate transaction.

use super::StoreError;
use super::check::write_session_rows;
use rusqlite::{Connection, TransactionBehavior};

/// "Rstw" in ASCII: distinguishes our stores from other SQLite files.
pub const APPLICATION_ID: u32 = 0x5273_7477;

/// One step for each version: step n turns version n into version n + 1.
const STEPS: &[&str] = &[include_str!("sql/v1.sql"), include_str!("sql/v2.sql"), include_str!("sql/v3.sql")];

/// The highest version known here.
#[allow(clippy::cast_possible_truncation)] // a handful of steps
pub const KNOWN_VERSION: u32 = STEPS.len() as u32;

/// The version of an open file.
pub(super) fn version(conn: &Connection) -> Result<u32, StoreError> {
    let found: i64 = conn.query_row("PRAGMA user_version", [], |row| row.get(0))?;
    u32::try_from(found).map_err(|_| StoreError::Damaged(format!("its version is {found}")))
}

/// Brings the file to the known version. Refuses a newer or foreign one before it writes.
pub(super) fn migrate(conn: &mut Connection) -> Result<(), StoreError> {
    migrate_to(conn, KNOWN_VERSION)
}

/// Migration up to `target`, so that tests can stop at every step.
pub(super) fn migrate_to(conn: &mut Connection, target: u32) -> Result<(), StoreError> {
    let from = version(conn)?;
    if from > KNOWN_VERSION {
        return Err(StoreError::Newer { found: from, known: KNOWN_VERSION });
    }
    if from >= target {
        return Ok(());
    }
    let tx = conn.transaction_with_behavior(TransactionBehavior::Immediate)?;
    for step in &STEPS[from as usize..target as usize] {
        tx.execute_batch(step)?;
    }
    // Any step may add a column to a projection, so all of them are rebuilt once. Damaged entries are ignored
    // here and reported when they are read.
    if from > 0 && target == KNOWN_VERSION {
        write_session_rows(&tx)?;
    }
    tx.pragma_update(None, "application_id", APPLICATION_ID)?;
    tx.pragma_update(None, "user_version", target)?;
    tx.commit()?;
    Ok(())
}

/// The tables a store of the known version has; a file without one of them is damaged.
const TABLES: &[&str] = &["import", "meta", "op", "session", "setting", "snapshot"];

/// Checks that the file has the tables of the known version.
pub(super) fn expect_tables(conn: &Connection) -> Result<(), StoreError> {
    let mut there = conn.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'")?;
    let names: Vec<String> = there.query_map([], |row| row.get(0))?.collect::<Result<_, _>>()?;
    if let Some(missing) = TABLES.iter().find(|table| !names.iter().any(|name| name == *table)) {
        return Err(StoreError::Damaged(format!("the table {missing} is missing")));
    }
    Ok(())
}
