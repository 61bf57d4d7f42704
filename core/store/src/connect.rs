//! Opening the file: pragmas, locks, and the refusals that leave it as it was.

use super::look::{Found, look};
use super::schema::{APPLICATION_ID, KNOWN_VERSION, expect_tables, migrate, version};
use super::{Durability, FILE_NAME, StoreError};
use rusqlite::config::DbConfig;
use rusqlite::{Connection, OpenFlags};
use std::fs::{self, File, TryLockError};
use std::path::{Path, PathBuf};
use std::time::Duration;
use uuid::Uuid;

/// How long to wait for a lock of another process: a phone may restart the app while the old process is still
/// ending.
const LOCK_WAIT: Duration = Duration::from_millis(300);

/// Statements kept prepared.
const STATEMENTS: usize = 48;

/// Opens the store in `dir`, which must exist, or creates one there that belongs to `new_device`.
pub(super) fn connect(
    dir: &Path,
    new_device: Uuid,
    durability: Durability,
) -> Result<Connection, StoreError> {
    let file = dir.join(FILE_NAME);
    if look(&file)? == Found::Nothing {
        if has_log(dir) {
            return Err(StoreError::Damaged("its file is gone and its write-ahead log is not".into()));
        }
        create(dir, &file, new_device)?;
        look(&file)?;
    }
    let log = log_of(dir);
    let had_log = log.exists();
    hold(&file, durability)
        .inspect_err(|_| {
            // SQLite creates an empty log before it reads the first page; it is removed again if the file is
            // refused.
            if !had_log && fs::metadata(&log).is_ok_and(|meta| meta.len() == 0) {
                let _ = fs::remove_file(&log);
            }
        })
        .map_err(|error| match error {
            // The header was that of a store, so if SQLite doesn't recognise a database, it is a damaged
            // store.
            StoreError::Foreign(what) => StoreError::Damaged(what),
            other => other,
        })
}

/// Whether the folder contains a write-ahead log that isn't empty, beside which no new store may be created.
pub(super) fn has_log(dir: &Path) -> bool {
    fs::metadata(log_of(dir)).is_ok_and(|meta| meta.len() > 0)
}

fn log_of(dir: &Path) -> PathBuf {
    dir.join(format!("{FILE_NAME}-wal"))
}

/// Opens a file that looks like a store, migrates it if necessary and locks it.
fn hold(file: &Path, durability: Durability) -> Result<Connection, StoreError> {
    let mut conn = open(file, OpenFlags::empty(), durability)?;
    if refuse(&conn)? < KNOWN_VERSION {
        migrate(&mut conn)?;
    }
    write_ahead(&conn)?;
    conn.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, false)?;
    Ok(conn)
}

/// Opens a damaged store for reading, with the transactions that its write-ahead log has completed: SQLite takes its frames up to
/// the last that ends a transaction and whose salts and checksums are right. Neither the file nor the log is changed.
pub(super) fn open_unchanged(file: &Path) -> Result<Connection, StoreError> {
    let conn = open(file, OpenFlags::empty(), Durability::PowerCut)?;
    conn.pragma_update(None, "query_only", true)?;
    Ok(conn)
}

fn open(file: &Path, also: OpenFlags, durability: Durability) -> Result<Connection, StoreError> {
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX | also;
    let conn = Connection::open_with_flags(file, flags)?;
    conn.busy_timeout(LOCK_WAIT)?;
    conn.set_prepared_statement_cache_capacity(STATEMENTS);
    conn.set_db_config(DbConfig::SQLITE_DBCONFIG_DEFENSIVE, true)?;
    // A refused file must stay unchanged, so there is no checkpoint on close until the file has been
    // accepted.
    conn.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, true)?;
    // No plan depends on the values bound to a statement, or it would be planned again when they change.
    conn.set_db_config(DbConfig::SQLITE_DBCONFIG_ENABLE_QPSG, true)?;
    // This has to come first: some of the other pragmas read the file, and the first read decides whether
    // others may lock it too.
    conn.pragma_update(None, "locking_mode", "EXCLUSIVE")?;
    pragmas(&conn, durability)?;
    Ok(conn)
}

/// Creates a store under another name and renames it when complete, so that a file with the name of the store
/// is always a complete store, whenever the battery dies.
fn create(dir: &Path, file: &Path, device: Uuid) -> Result<(), StoreError> {
    let _lock = lock(dir)?;
    if look(file)? == Found::Store {
        return Ok(()); // another process was faster
    }
    make_whole(dir, NEW, file, device, |_| Ok(()))
}

/// The name of a new store until it is complete.
const NEW: &str = "restwater.db.new";

/// Keeps other processes from creating or replacing the store in `dir` as long as the lock is held.
pub(super) fn lock(dir: &Path) -> Result<File, StoreError> {
    let lock = File::create(dir.join("restwater.lock")).map_err(StoreError::from_io)?;
    match lock.try_lock() {
        Ok(()) => Ok(lock),
        Err(TryLockError::WouldBlock) => Err(StoreError::Busy),
        Err(TryLockError::Error(e)) => Err(StoreError::from_io(e)),
    }
}

/// Creates a store that belongs to `device` under the name `making`, fills it, and only then renames it to
/// `whole`.
pub(super) fn make_whole(
    dir: &Path,
    making: &str,
    whole: &Path,
    device: Uuid,
    fill: impl FnOnce(&mut Connection) -> Result<(), StoreError>,
) -> Result<(), StoreError> {
    let clear = || {
        for left in ["", "-journal", "-wal", "-shm"] {
            let _ = fs::remove_file(dir.join(format!("{making}{left}")));
        }
    };
    clear();
    // The remains of a failed attempt take up space, which may be what was missing.
    make(&dir.join(making), device, fill).inspect_err(|_| clear())?;
    fs::rename(dir.join(making), whole).map_err(StoreError::from_io)?;
    sync_directory(dir)
}

fn make(
    file: &Path,
    device: Uuid,
    fill: impl FnOnce(&mut Connection) -> Result<(), StoreError>,
) -> Result<(), StoreError> {
    let mut conn = open(file, OpenFlags::SQLITE_OPEN_CREATE, Durability::PowerCut)?;
    migrate(&mut conn)?;
    conn.execute(include_str!("sql/set_device.sql"), [device.as_bytes()])?;
    fill(&mut conn)?;
    write_ahead(&conn)?;
    conn.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, false)?;
    conn.close().map_err(|(_, error)| StoreError::from(error))
}

/// Makes a rename survive a power cut.
pub fn sync_directory(dir: &Path) -> Result<(), StoreError> {
    if cfg!(unix) {
        File::open(dir).and_then(|d| d.sync_all()).map_err(StoreError::from_io)?;
    }
    Ok(())
}

/// Settings of the connection; none of them writes to the file.
fn pragmas(conn: &Connection, durability: Durability) -> Result<(), StoreError> {
    let synchronous = match durability {
        Durability::PowerCut => "FULL",
        Durability::None => "OFF",
    };
    conn.pragma_update(None, "synchronous", synchronous)?;
    // Apple's fsync doesn't reach the flash; F_FULLFSYNC does. Elsewhere these do nothing.
    if cfg!(target_vendor = "apple") {
        conn.pragma_update(None, "fullfsync", true)?;
        conn.pragma_update(None, "checkpoint_fullfsync", true)?;
    }
    conn.pragma_update(None, "foreign_keys", true)?;
    // Android has no directory for temporary files.
    conn.pragma_update(None, "temp_store", "MEMORY")?;
    conn.pragma_update(None, "trusted_schema", false)?;
    // A negative number is in KiB: enough for the index of a long import, little enough for a phone.
    conn.pragma_update(None, "cache_size", -8_192)?;
    Ok(())
}

/// The version of a file, if it is known here. It is read through SQLite, since the write-ahead log may
/// contain a newer version than the header.
fn refuse(conn: &Connection) -> Result<u32, StoreError> {
    if conn.is_readonly("main")? {
        return Err(StoreError::ReadOnly("opened for reading only".into()));
    }
    let application: i64 = conn.query_row("PRAGMA application_id", [], |row| row.get(0))?;
    if application != i64::from(APPLICATION_ID) {
        return Err(StoreError::Foreign("the file".into()));
    }
    let found = version(conn)?;
    if found > KNOWN_VERSION {
        return Err(StoreError::Newer { found, known: KNOWN_VERSION });
    }
    if found == KNOWN_VERSION {
        expect_tables(conn)?;
    }
    Ok(found)
}

fn write_ahead(conn: &Connection) -> Result<(), StoreError> {
    let mode: String = conn.query_row("PRAGMA journal_mode = WAL", [], |row| row.get(0))?;
    if mode != "wal" {
        return Err(StoreError::Sqlite(format!("journal mode is {mode}, not wal")));
    }
    Ok(())
}
