//! `bench_store`: the store beside bare SQLite with the same pragmas, in the same run.
//!
//! Each line: name, ours, peer, ratio, goal, held or missed; the last line counts them.
#![allow(clippy::print_stdout)] // a command line tool

use restwater_core::app::{App, Entropy, Which};
use restwater_core::exchange::{Incoming, OpFileWriter, Progress, import};
use restwater_core::log::canonical_bytes;
use restwater_core::store::{FILE_NAME, Store};
use restwater_tests::invented::{BEGIN_MS, Phone};
use rusqlite::{Connection, Statement};
use std::fs::File;
use std::hint::black_box;
use std::io::{BufWriter, Write};
use std::ops::ControlFlow;
use std::path::Path;
use std::time::{Duration, Instant};
use uuid::Uuid;

type Failed = Box<dyn std::error::Error>;

/// The store's table as bare SQLite would have it: the same rows, the same keys.
const BARE: &str = "
    CREATE TABLE op (
        seq INTEGER PRIMARY KEY, session INTEGER NOT NULL, id BLOB NOT NULL UNIQUE,
        sha256 BLOB NOT NULL, body BLOB NOT NULL
    ) STRICT;
    CREATE INDEX op_by_session ON op (session);";
const BARE_INSERT: &str = "INSERT INTO op (session, id, sha256, body) VALUES (?1, ?2, ?3, ?4)";

#[derive(Default)]
struct Board {
    held: u32,
    missed: u32,
}

impl Board {
    fn line(&mut self, name: &str, ours: Duration, peer: Option<Duration>, goal: &str, held: bool) {
        let ms = |d: Duration| format!("{:.3} ms", d.as_secs_f64() * 1e3);
        let ratio = peer.map_or("-".into(), |p| format!("{:.2}", ours.as_secs_f64() / p.as_secs_f64()));
        self.say(&format!("{name}: {} | {} | {ratio}", ms(ours), peer.map_or("-".into(), ms)), goal, held);
    }

    fn say(&mut self, what: &str, goal: &str, held: bool) {
        *(if held { &mut self.held } else { &mut self.missed }) += 1;
        println!("{what} | {goal} | {}", if held { "held" } else { "missed" });
    }
}

fn main() -> Result<(), Failed> {
    let mut board = Board::default();
    println!("name: ours | peer | ratio | goal | held or missed");
    append(&mut board)?;
    importing(&mut board, 10_000, Duration::from_secs(1))?;
    importing(&mut board, 1_000_000, Duration::from_mins(1))?;
    opening(&mut board)?;
    println!("{} held, {} missed", board.held, board.missed);
    Ok(())
}

fn bare(dir: &Path) -> Result<Connection, Failed> {
    let conn = Connection::open(dir.join("bare.db"))?;
    pragmas(&conn)?;
    conn.execute_batch(BARE)?;
    Ok(conn)
}

fn pragmas(conn: &Connection) -> Result<(), Failed> {
    conn.pragma_update(None, "locking_mode", "EXCLUSIVE")?;
    let _: String = conn.query_row("PRAGMA journal_mode = WAL", [], |row| row.get(0))?;
    for (name, value) in [("synchronous", "FULL"), ("foreign_keys", "ON"), ("temp_store", "MEMORY")] {
        conn.pragma_update(None, name, value)?;
    }
    conn.pragma_update(None, "cache_size", -8_192)?;
    Ok(())
}

/// One tap, durable: ours and a bare insert take turns, so that both see the same disk.
fn append(board: &mut Board) -> Result<(), Failed> {
    const TAPS: usize = 400;
    let dir = tempfile::tempdir()?;
    let mut phone = Phone::new(1);
    phone.begin();
    let mut store = Store::open(dir.path(), phone.device())?;
    store.append(phone.ops(), None)?;
    let conn = bare(dir.path())?;
    let (mut ours, mut peer) = (Vec::new(), Vec::new());
    for _ in 0..TAPS {
        let op = phone.tap();
        let body = canonical_bytes(&op)?;
        let start = Instant::now();
        store.append(std::slice::from_ref(&op), None)?;
        ours.push(start.elapsed());
        let start = Instant::now();
        conn.prepare_cached(BARE_INSERT)?.execute((1, op.id.as_bytes(), &body[..32], &body))?;
        peer.push(start.elapsed());
    }
    ours.sort();
    peer.sort();
    let (p50, bare50) = (ours[TAPS / 2], peer[TAPS / 2]);
    let held = p50 <= bare50.mul_f64(1.5) + Duration::from_millis(1);
    board.line("append p50", p50, Some(bare50), "<= 1.5 x bare + 1 ms", held);
    board.line("append p99", ours[TAPS * 99 / 100], Some(peer[TAPS * 99 / 100]), "printed", true);
    Ok(())
}

/// Writes an op file of so many ops, 250 a session.
fn write_file(path: &Path, count: usize) -> Result<(), Failed> {
    let mut file = OpFileWriter::begin(BufWriter::new(File::create(path)?))?;
    let mut phone = Phone::new(2);
    for n in 0..count {
        let op = if n % 250 == 0 {
            phone.forget();
            phone.begin();
            phone.ops()[0].clone()
        } else {
            phone.tap()
        };
        file.op(op.id, &canonical_bytes(&op)?)?;
    }
    file.end()?.0.flush()?;
    Ok(())
}

fn importing(board: &mut Board, count: usize, goal: Duration) -> Result<(), Failed> {
    const PEAK_MB: u64 = 128;
    let dir = tempfile::tempdir()?;
    let path = dir.path().join("all.restwater.json-seq");
    write_file(&path, count)?;
    let mut store = Store::open(dir.path(), Uuid::from_u128(1))?;
    let incoming =
        Incoming { id: Uuid::from_u128(1), source: "Robin".into(), wall_ms: BEGIN_MS, offset_min: 0 };
    reset_peak();
    let start = Instant::now();
    let tally =
        import(&mut store, File::open(&path)?, &incoming, &mut |_: Progress| ControlFlow::Continue(()))?;
    let ours = start.elapsed();
    let peak = peak_mb();
    if tally.new != count as u64 || !tally.is_whole() {
        return Err("the import did not bring all".into());
    }
    store.pause()?;
    let peer = bare_import(dir.path())?;
    let goal_text = format!("<= {} s and <= 4 x bare", goal.as_secs());
    let held = ours <= goal && ours <= peer * 4;
    board.line(&format!("import of {count} ops"), ours, Some(peer), &goal_text, held);
    if let Some(peak) = peak {
        let goal = format!("<= {PEAK_MB} MB");
        board.say(&format!("import of {count} ops, peak memory: {peak} MB | - | -"), &goal, peak <= PEAK_MB);
    }
    Ok(())
}

/// The same rows into bare SQLite, in one transaction; reading them is not timed.
fn bare_import(dir: &Path) -> Result<Duration, Failed> {
    let source = Connection::open(dir.join(FILE_NAME))?;
    let conn = bare(dir)?;
    let mut spent = Duration::ZERO;
    let start = Instant::now();
    conn.execute_batch("BEGIN IMMEDIATE")?;
    spent += start.elapsed();
    let mut from = 0;
    let mut insert = conn.prepare(BARE_INSERT)?;
    let mut select =
        source.prepare("SELECT session, id, sha256, body FROM op WHERE seq > ?1 ORDER BY seq LIMIT 5000")?;
    loop {
        let rows = chunk(&mut select, from)?;
        if rows.is_empty() {
            break;
        }
        from += i64::try_from(rows.len())?;
        let start = Instant::now();
        for (session, id, sha, body) in &rows {
            insert.execute((session, id, sha, body))?;
        }
        spent += start.elapsed();
    }
    let start = Instant::now();
    conn.execute_batch("COMMIT")?;
    Ok(spent + start.elapsed())
}

type RowParts = (i64, Vec<u8>, Vec<u8>, Vec<u8>);

fn chunk(select: &mut Statement<'_>, from: i64) -> Result<Vec<RowParts>, Failed> {
    let rows = select.query_map([from], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?)))?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// Opening a log of 2,000 sessions and 500,000 ops: to the latest session's ops, and to the first Bank
/// record of the whole app, beside bare SQLite that opens the same file and reads that session's rows.
fn opening(board: &mut Board) -> Result<(), Failed> {
    let dir = tempfile::tempdir()?;
    let mut phone = Phone::new(3);
    let mut store = Store::open(dir.path(), phone.device())?;
    for _ in 0..2_000 {
        phone.forget();
        phone.begin();
        for _ in 1..250 {
            phone.tap();
        }
        store.append(phone.ops(), None)?;
    }
    store.pause()?;
    drop(store);
    let now = phone.tick();
    let (mut ours, mut whole, mut peer) = (Vec::new(), Vec::new(), Vec::new());
    for _ in 0..21 {
        let start = Instant::now();
        let store = Store::open(dir.path(), Uuid::nil())?;
        let session = store.latest_session()?.ok_or("no session")?;
        black_box(store.ops_of(session)?);
        ours.push(start.elapsed());
        drop(store);
        let start = Instant::now();
        let mut app = App::open(dir.path(), Box::new(NoEntropy), &now)?;
        black_box(app.screen(Which::Bank, &now)?);
        whole.push(start.elapsed());
        drop(app);
        let start = Instant::now();
        let conn = Connection::open(dir.path().join(FILE_NAME))?;
        pragmas(&conn)?;
        black_box(bare_session(&conn, session)?);
        peer.push(start.elapsed());
    }
    for times in [&mut ours, &mut whole, &mut peer] {
        times.sort();
    }
    let (ours, whole, peer) = (ours[10], whole[10], peer[10]);
    board.line("opening 500000 ops, latest session read", ours, Some(peer), "<= 3 x bare", ours <= peer * 3);
    let held = whole <= Duration::from_millis(50);
    board.line("opening 500000 ops, first Bank record", whole, Some(peer), "<= 50 ms", held);
    Ok(())
}

/// Nothing is written here, so nothing random is needed.
struct NoEntropy;

impl Entropy for NoEntropy {
    fn fill(&mut self, bytes: &mut [u8]) {
        bytes.fill(7);
    }
}

fn bare_session(conn: &Connection, session: Uuid) -> Result<usize, Failed> {
    let mut statement = conn.prepare(
        "SELECT op.body FROM session JOIN op ON op.session = session.no WHERE session.id = ?1 ORDER BY op.seq",
    )?;
    let mut rows = statement.query([session.as_bytes()])?;
    let mut bytes = 0;
    while let Some(row) = rows.next()? {
        bytes += row.get_ref(0)?.as_blob()?.len();
    }
    Ok(bytes)
}

/// Linux: forget the highest resident size so far (proc(5), clear_refs).
fn reset_peak() {
    let _ = std::fs::write("/proc/self/clear_refs", "5");
}

/// Linux: the highest resident size since, in MB; none elsewhere.
fn peak_mb() -> Option<u64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|line| line.starts_with("VmHWM:"))?;
    let kb: u64 = line.split_whitespace().nth(1)?.parse().ok()?;
    Some(kb.div_ceil(1_024))
}
