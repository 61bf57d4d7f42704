//! One phone of the model: its folder, its app, its clocks, and the files it made.

use super::act;
use super::clock::{Clock, Reading};
use super::oracle::Entry;
use crate::powercut::contents_now;
use restwater_app::App;
use rusqlite::{Connection, OpenFlags};
use serde_json::Value;
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// The files of the log.
const LOG: [&str; 2] = ["restwater.db", "restwater.db-wal"];

/// Bytes of a page of the log.
const PAGE: usize = 4_096;

/// A file made by a phone, with what must be in it.
pub struct Sent {
    /// Where it is kept.
    pub path: PathBuf,
    /// Its entries.
    pub entries: Vec<Entry>,
}

/// One phone.
pub struct Device {
    base: PathBuf,
    lives: u32,
    app: Option<App>,
    /// Its clocks.
    pub clock: Clock,
    seed: u64,
    opens: u64,
    /// Op files it made, oldest first.
    pub sent: Vec<Sent>,
    /// Backups it made.
    pub backups: Vec<PathBuf>,
    /// The session opened in the Book.
    pub opened: Option<String>,
    /// Minutes after which the alarm of a bait that is out rings, if the model knows.
    pub alarm_min: Option<i64>,
    /// Whether its log is on the disk that can be full and whose power can be cut.
    pub on_disk: bool,
}

impl Device {
    /// A phone without a log, with a folder of its own.
    pub fn new(base: PathBuf, seed: u64, clock: Clock) -> std::io::Result<Self> {
        fs::create_dir_all(&base)?;
        let (sent, backups) = (Vec::new(), Vec::new());
        let (opened, alarm_min) = (None, None);
        Ok(Self {
            base,
            lives: 0,
            app: None,
            clock,
            seed,
            opens: 0,
            sent,
            backups,
            opened,
            alarm_min,
            on_disk: false,
        })
    }

    /// Where its log is.
    pub fn dir(&self) -> PathBuf {
        self.base.join(format!("life-{}", self.lives))
    }

    /// A name for a file of its own.
    pub fn file(&self, name: &str) -> PathBuf {
        self.base.join(name)
    }

    /// What its clocks show.
    pub fn read(&self, now: i64) -> Reading {
        self.clock.read(now)
    }

    /// The app, which is opened if necessary.
    pub fn app(&mut self, now: i64) -> Result<&mut App, String> {
        if self.app.is_none() {
            self.opened = None;
            let seed = self.next_seed();
            self.app = Some(act::open(&self.dir(), seed, &self.read(now))?);
        }
        self.app.as_mut().ok_or_else(|| "the app is not there".into())
    }

    /// A seed for ids that is unique to this opening.
    pub fn next_seed(&mut self) -> u64 {
        self.opens += 1;
        self.seed.wrapping_mul(1_000_003).wrapping_add(self.opens)
    }

    /// Closes the app as the system does: without warning.
    pub fn close(&mut self) {
        self.app = None;
    }

    /// Kills the process: the next one finds only what is in its files now.
    pub fn kill(&mut self) -> std::io::Result<()> {
        let from = self.dir();
        self.lives += 1;
        copy_folder(&from, &self.dir())?;
        self.app = None;
        fs::remove_dir_all(from)
    }

    /// Puts the files of a disk into the folder of the log, as a kill or a power cut left them.
    pub fn put(&self, left: &BTreeMap<String, Vec<u8>>) -> std::io::Result<()> {
        let dir = self.dir();
        for name in LOG {
            let path = dir.join(name);
            match left.get(&*path.to_string_lossy()) {
                Some(bytes) => fs::write(&path, bytes)?,
                None => drop(fs::remove_file(&path)),
            }
        }
        Ok(())
    }

    /// Makes a page of the log without entries unreadable: the root of the nth table or index other than the
    /// entries.
    pub fn damage(&mut self, n: usize) -> Result<(), String> {
        self.close();
        self.stored()?;
        let roots = roots(&self.base.join("copy").join(LOG[0])).map_err(|e| e.to_string())?;
        let file = self.dir().join(LOG[0]);
        let mut bytes = fs::read(&file).map_err(|e| e.to_string())?;
        let Some(root) = n.checked_rem(roots.len()).map(|n| roots[n] as usize) else { return Ok(()) };
        if let Some(page) = bytes.get_mut((root - 1) * PAGE..root * PAGE) {
            page.fill(0xff);
        }
        fs::write(file, bytes).map_err(|e| e.to_string())
    }

    /// A tap was accepted: records a choice that is not an entry.
    pub fn chose(&mut self, verb: &str, tap: &Value) {
        match (verb, tap["tap"].as_str().unwrap_or_default()) {
            ("phone", "alarm") => self.alarm_min = tap["alarm"]["after"].as_i64(),
            ("book", "open") => self.opened = tap["session"].as_str().map(str::to_owned),
            ("book", "close") => self.opened = None,
            _ => {}
        }
    }

    /// Every entry in the files now: what a process that opened them after a kill would find.
    pub fn stored(&self) -> Result<Vec<Value>, String> {
        let copy = self.base.join("copy");
        fs::create_dir_all(&copy).map_err(|e| e.to_string())?;
        let held = if self.on_disk { contents_now() } else { BTreeMap::new() };
        for name in LOG {
            let (from, to) = (self.dir().join(name), copy.join(name));
            let _ = fs::remove_file(&to);
            let done = match held.get(&*from.to_string_lossy()) {
                Some(bytes) => fs::write(&to, bytes),
                None if !self.on_disk && from.exists() => fs::copy(&from, &to).map(drop),
                None => Ok(()),
            };
            done.map_err(|e| e.to_string())?;
        }
        read_log(&copy.join(LOG[0])).map_err(|e| e.to_string())
    }
}

fn copy_folder(from: &Path, to: &Path) -> std::io::Result<()> {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let entry = entry?;
        if entry.file_type()?.is_dir() {
            copy_folder(&entry.path(), &to.join(entry.file_name()))?;
        } else {
            fs::copy(entry.path(), to.join(entry.file_name()))?;
        }
    }
    Ok(())
}

fn read_log(file: &Path) -> rusqlite::Result<Vec<Value>> {
    if !file.exists() {
        return Ok(Vec::new());
    }
    let conn = real_file(file)?;
    let mut statement = conn.prepare("SELECT body FROM op ORDER BY seq")?;
    let rows = statement.query_map([], |row| {
        let body: Vec<u8> = row.get(0)?;
        Ok(serde_json::from_slice(&body).unwrap_or_default())
    })?;
    rows.collect()
}

/// The real file, whatever SQLite's default VFS is at the moment.
fn real_file(file: &Path) -> rusqlite::Result<Connection> {
    let conn = Connection::open_with_flags_and_vfs(file, OpenFlags::SQLITE_OPEN_READ_WRITE, "unix")?;
    conn.pragma_update(None, "locking_mode", "EXCLUSIVE")?;
    conn.pragma_update(None, "synchronous", "OFF")?;
    Ok(conn)
}

/// The root pages of everything but the entries.
fn roots(file: &Path) -> rusqlite::Result<Vec<u32>> {
    let conn = real_file(file)?;
    let mut statement =
        conn.prepare("SELECT rootpage FROM sqlite_schema WHERE rootpage > 1 AND name <> 'op'")?;
    let rows = statement.query_map([], |row| row.get(0))?;
    rows.collect()
}
