//! `bench_store`: the store compared with bare SQLite with the same pragmas, in the same run.
#![allow(clippy::print_stdout)] // a command line tool

use restwater_app::{App, Which};
use restwater_exchange::{Incoming, OpFileWriter, Progress, import};
use restwater_log::{Moment, canonical_bytes};
use restwater_store::{FILE_NAME, Store};
use restwater_tests::bench_row::{Row, median, peak_mb, reset_peak, timed};
use restwater_tests::importing::{imported_at, no_ids};
use restwater_tests::invented::{BEGIN_MS, Phone};
use restwater_tests::phone::Seeded;
use rusqlite::{Connection, Statement};
use std::fs::File;
use std::hint::black_box;
use std::io::{BufWriter, Write};
use std::ops::ControlFlow;
use std::path::Path;
use std::process::Command;
use std::time::{Duration, Instant};
use uuid::Uuid;

type Failed = Box<dyn std::error::Error>;

/// The store's table in bare SQLite: the same rows, the same keys.
const BARE: &str = "
    CREATE TABLE op (
        seq INTEGER PRIMARY KEY, session INTEGER NOT NULL, id BLOB NOT NULL UNIQUE,
        sha256 BLOB NOT NULL, body BLOB NOT NULL
    ) STRICT;
    CREATE INDEX op_by_session ON op (session);";
const BARE_INSERT: &str = "INSERT INTO op (session, id, sha256, body) VALUES (?1, ?2, ?3, ?4)";

const BARE_NAME: &str = "bare SQLite";
/// How many times something is opened, to take the median.
const OPENINGS: usize = 21;

fn main() -> Result<(), Failed> {
    let args: Vec<String> = std::env::args().skip(1).collect();
    if let [word, what, dir] = &args[..]
        && word == "child"
    {
        return child(what, dir.as_ref());
    }
    append()?;
    importing(10_000, Duration::from_secs(1))?;
    importing(1_000_000, Duration::from_mins(1))?;
    opening()?;
    opening_nothing()
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

/// One durable tap: ours and a bare insert alternate, so that both see the same disk.
fn append() -> Result<(), Failed> {
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
        let (time, done) = timed(|| store.append(std::slice::from_ref(&op), None));
        done?;
        ours.push(time);
        let (time, done) = timed(|| insert(&conn, (1, op.id, &body[..32], &body)));
        done?;
        peer.push(time);
    }
    let (p50, bare50) = (median(&mut ours), median(&mut peer));
    let held = p50 <= bare50.mul_f64(1.5) + Duration::from_millis(1);
    let row = Row::time("store: append, p50", p50).against(BARE_NAME, p50, bare50);
    row.judged("<= 1.5 x and 1 ms", held);
    let (p99, bare99) = (ours[TAPS * 99 / 100], peer[TAPS * 99 / 100]);
    Row::time("store: append, p99", p99).against(BARE_NAME, p99, bare99).noted();
    Ok(())
}

fn insert(conn: &Connection, row: (i64, Uuid, &[u8], &[u8])) -> rusqlite::Result<usize> {
    conn.prepare_cached(BARE_INSERT)?.execute((row.0, row.1.as_bytes(), row.2, row.3))
}

/// Writes an op file of this many ops, 250 a session.
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

fn importing(count: usize, goal: Duration) -> Result<(), Failed> {
    const PEAK_MB: f64 = 128.0;
    let dir = tempfile::tempdir()?;
    let path = dir.path().join("all.restwater.json-seq");
    write_file(&path, count)?;
    let mut store = Store::open(dir.path(), Uuid::from_u128(1))?;
    let incoming = Incoming { id: Uuid::from_u128(1), source: "Robin".into(), at: imported_at(BEGIN_MS) };
    reset_peak();
    let start = Instant::now();
    let tally = import(&mut store, File::open(&path)?, &incoming, &mut no_ids, &mut |_: Progress| {
        ControlFlow::Continue(())
    })?;
    let ours = start.elapsed();
    let peak = peak_mb();
    if tally.new != count as u64 || !tally.is_whole() {
        return Err("the import did not bring all".into());
    }
    store.pause()?;
    let peer = bare_import(dir.path())?;
    let held = ours <= goal && ours <= peer * 4;
    let row = Row::time(format!("store: import of {count} ops"), ours).against(BARE_NAME, ours, peer);
    row.judged(&format!("<= {} s and <= 4 x", goal.as_secs()), held);
    if let Some(peak) = peak {
        let row = Row::new(format!("store: peak memory, import of {count} ops"), format!("{peak:.1} MB"));
        row.judged(&format!("<= {PEAK_MB} MB"), peak <= PEAK_MB);
    }
    Ok(())
}

/// Inserts the same rows into bare SQLite in one transaction; reading them is not timed.
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

/// Opening a log of 2,000 sessions and 500,000 ops: until the latest session's ops are read, which is the
/// log's part, and until the whole app's first Bank record, including statistics and words; compared with
/// bare SQLite that opens the same file and reads that session's rows.
fn opening() -> Result<(), Failed> {
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
    let session = latest(&store, phone.device())?;
    store.pause()?;
    drop(store);
    let now = phone.tick();
    let (mut ours, mut whole, mut peer) = (Vec::new(), Vec::new(), Vec::new());
    for _ in 0..OPENINGS {
        let (time, opened) = timed(|| opened_at_latest(dir.path(), phone.device()));
        opened?;
        ours.push(time);
        let (time, opened) = timed(|| first_record(dir.path(), &now));
        drop(opened?);
        whole.push(time);
        let (time, opened) = timed(|| bare_opening(dir.path(), session));
        drop(opened?);
        peer.push(time);
    }
    let (ours, whole, peer) = (median(&mut ours), median(&mut whole), median(&mut peer));
    let row = Row::time("store: open 500000 ops, latest session", ours).against(BARE_NAME, ours, peer);
    row.judged("<= 3 x", ours <= peer * 3);
    let row = Row::time("store: open 500000 ops, first Bank record", whole).against(BARE_NAME, whole, peer);
    row.judged("<= 50 ms", whole <= Duration::from_millis(50));
    let (_, peak) = in_a_process("record", dir.path())?;
    let row = Row::new("store: peak memory, open 500000 ops", format!("{peak:.1} MB"));
    row.judged("<= 64 MB", peak <= 64.0);
    Ok(())
}

/// As the app looks for it when it opens.
fn latest(store: &Store, device: Uuid) -> Result<Uuid, Failed> {
    Ok(store.session_of_before(device, None)?.ok_or("no session")?.id)
}

fn opened_at_latest(dir: &Path, device: Uuid) -> Result<Store, Failed> {
    let store = Store::open(dir, device)?;
    let session = latest(&store, device)?;
    black_box(store.ops_of(session)?);
    Ok(store)
}

fn first_record(dir: &Path, now: &Moment) -> Result<App, Failed> {
    let mut app = App::open(dir, Box::new(Seeded::new(1)), now)?;
    black_box(app.screen(Which::Bank, now)?);
    Ok(app)
}

fn bare_opening(dir: &Path, session: Uuid) -> Result<Connection, Failed> {
    let conn = Connection::open(dir.join(FILE_NAME))?;
    pragmas(&conn)?;
    black_box(bare_session(&conn, session)?);
    Ok(conn)
}

/// An empty store, opened by a new process each time, as when the app starts.
fn opening_nothing() -> Result<(), Failed> {
    let dir = tempfile::tempdir()?;
    drop(first_record(dir.path(), &Phone::new(4).tick())?);
    let (mut ours, mut peer) = (Vec::new(), Vec::new());
    for _ in 0..OPENINGS {
        ours.push(in_a_process("record", dir.path())?.0);
        peer.push(in_a_process("bare", dir.path())?.0);
    }
    let (ours, peer) = (median(&mut ours), median(&mut peer));
    let row = Row::time("store: cold open of nothing, first Bank record", ours);
    row.against(BARE_NAME, ours, peer).judged("<= 10 ms", ours <= Duration::from_millis(10));
    Ok(())
}

/// Runs this program as a child; returns how long the child says it took, and its peak memory in MB.
fn in_a_process(what: &str, dir: &Path) -> Result<(Duration, f64), Failed> {
    let out = Command::new(std::env::current_exe()?).args(["child", what]).arg(dir).output()?;
    let text = String::from_utf8(out.stdout)?;
    let mut parts = text.split_whitespace();
    let mut next = || parts.next().ok_or_else(|| String::from_utf8_lossy(&out.stderr).into_owned());
    Ok((Duration::from_nanos(next()?.parse()?), next()?.parse()?))
}

fn child(what: &str, dir: &Path) -> Result<(), Failed> {
    let now = Phone::new(3).tick();
    let time = if what == "record" {
        let (time, opened) = timed(|| first_record(dir, &now));
        drop(opened?);
        time
    } else {
        let (time, opened) = timed(|| bare_opening(dir, Uuid::nil()));
        drop(opened?);
        time
    };
    println!("{} {}", time.as_nanos(), peak_mb().unwrap_or_default());
    Ok(())
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
