//! Fuzz targets as plain functions: libFuzzer (tests/fuzz), the mutation driver (`fuzz` binary) and the
//! ordinary tests, which replay corpus and crashers, all call these. A target panics if and only if a promise
//! is broken.

#![allow(clippy::missing_panics_doc)] // a panic is how a target reports

mod mutate;

pub use mutate::Mutator;

use crate::importing::{imported_at, no_ids};
use restwater_app::read_day;
use restwater_exchange::{
    CsvOptions, OpFileWriter, Origin, Place, Progress, Selection, Table, Tally, export, import, read_op_file,
    session_csv,
};
use restwater_exchange::{ExchangeError, Incoming};
use restwater_log::{Op, canonical_bytes, effective, sha256_hex, sorted};
use restwater_session::{Session, fold};
use restwater_store::Store;
use restwater_swim::{PegOnEarth, Place as OnEarth, swim_from_geojson};
use std::collections::BTreeSet;
use std::ops::ControlFlow;
use std::path::PathBuf;
use uuid::Uuid;

/// A target and the name of its corpus.
pub type Target = (&'static str, fn(&[u8]));

/// All targets.
pub const TARGETS: [Target; 5] = [
    ("op_file", fuzz_op_file),
    ("op_body", fuzz_op_body),
    ("day_file", fuzz_day_file),
    ("csv", fuzz_csv),
    ("geojson", fuzz_geojson),
];

/// Where corpus and crashers are.
pub fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("fuzz")
}

/// The stored inputs of a target: its corpus and every crasher ever found, in a fixed order.
pub fn kept_inputs(target: &str) -> std::io::Result<Vec<(PathBuf, Vec<u8>)>> {
    let mut inputs = Vec::new();
    for part in ["corpus", "crashers"] {
        let dir = folder().join(part).join(target);
        let Ok(entries) = std::fs::read_dir(&dir) else { continue };
        for entry in entries {
            let path = entry?.path();
            inputs.push((path.clone(), std::fs::read(path)?));
        }
    }
    inputs.sort();
    Ok(inputs)
}

fn go(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

fn read(data: &[u8]) -> Result<(Vec<Op>, Tally), ExchangeError> {
    let mut ops = Vec::new();
    let tally = read_op_file(data, |op, _| ops.push(op.clone()), &mut go)?;
    Ok((ops, tally))
}

/// Any bytes as an op file, as they are and behind a valid header.
pub fn fuzz_op_file(data: &[u8]) {
    const HEADER: &[u8] = b"\x1e{\"format\":\"restwater-ops\",\"version\":1}\n";
    for bytes in [data.to_vec(), [HEADER, data].concat()] {
        if let Ok((ops, tally)) = read(&bytes) {
            assert_eq!(ops.len() as u64, tally.whole, "the tally counts what was handed on");
            fold_all(&ops);
        }
    }
}

/// Any bytes as the body of an op with the right hash: this passes the hash check, as a hostile writer would.
pub fn fuzz_op_body(data: &[u8]) {
    let mut bytes = b"\x1e{\"format\":\"restwater-ops\",\"version\":1}\n".to_vec();
    bytes.extend(b"\x1e{\"op\":");
    bytes.extend(data);
    bytes.extend(format!(",\"sha256\":\"{}\"}}\n", sha256_hex(data)).bytes());
    let Ok((ops, _)) = read(&bytes) else { return };
    fold_all(&ops);
    for op in &ops {
        // What this version understands of an op, it can write and read again.
        let again = canonical_bytes(op).unwrap_or_default();
        assert_eq!(restwater_log::op_from_bytes(&again).ok().as_ref(), Some(op));
    }
    if ops.len() == 1 && data.first() == Some(&b'{') {
        keep(&bytes, data);
    }
}

/// A store imports it and exports it byte for byte.
fn keep(file: &[u8], body: &[u8]) {
    let Ok(dir) = tempfile::tempdir() else { return };
    let Ok(mut store) = Store::open(dir.path(), Uuid::from_u128(1)) else { return };
    let incoming = Incoming { id: Uuid::from_u128(2), source: String::new(), at: imported_at(0) };
    let tally = import(&mut store, file, &incoming, &mut no_ids, &mut go).map(|tally| tally.new);
    assert!(matches!(tally, Ok(1)), "{tally:?}");
    let mut out = Vec::new();
    let exported = export(&store, Selection::Everything, Place::Included, &mut out, &mut go);
    assert!(exported.is_ok_and(|e| e.ops == 1));
    assert!(out.windows(body.len()).any(|part| part == body), "the body came out changed");
}

fn fold_all(ops: &[Op]) {
    let sessions: BTreeSet<Uuid> = ops.iter().map(|op| op.session).collect();
    for id in sessions {
        let own: Vec<Op> = ops.iter().filter(|op| op.session == id).cloned().collect();
        let session = fold(id, &own);
        assert!(effective(&sorted(&own)).len() <= own.len());
        for table in [Table::Sessions, Table::Casts, Table::Fish] {
            assert!(csv_of(&session, table).is_some(), "every session has its tables");
        }
    }
}

fn csv_of(session: &Session, table: Table) -> Option<Vec<u8>> {
    let mut out = Vec::new();
    session_csv(session, table, CsvOptions::default(), Origin::default(), &mut out).ok()?;
    Some(out)
}

/// Any text as a day file: it is played, or refused with the place of the error.
pub fn fuzz_day_file(data: &[u8]) {
    let Ok(text) = std::str::from_utf8(data) else { return };
    match read_day(text) {
        Ok(taps) => assert!(!taps.is_empty()),
        Err(error) => {
            assert!(error.line >= 1 && error.column >= 1 && !error.why.is_empty());
            assert!(error.line <= text.lines().count().max(1), "{error}");
        }
    }
}

/// Any text as an angler's words: the table reads back as one row with the same words, and no part of a cell
/// that a spreadsheet may take for a cell begins like a formula.
pub fn fuzz_csv(data: &[u8]) {
    let text = String::from_utf8_lossy(data).into_owned();
    let id = Uuid::from_u128(1);
    let mut session = fold(id, &[]);
    session.setup.water = Some(text.clone());
    let Some(csv) = csv_of(&session, Table::Sessions) else { return };
    let rows = rows_of(&String::from_utf8_lossy(&csv));
    assert_eq!(rows.len(), 2, "one row under the header");
    let cell = &rows[1][1];
    let mut words = text.chars().peekable();
    let only_marked = cell.chars().all(|c| words.next_if_eq(&c).is_some() || c == '\'');
    assert!(only_marked && words.next().is_none(), "{cell:?} of {text:?}");
    assert!(!cell.starts_with(['\t', '\r', '\n']));
    for part in cell.split([';', '\t', '\r', '\n']) {
        assert!(!part.trim_start_matches(['"', ' ']).starts_with(['=', '+', '-', '@']), "{cell:?}");
    }
}

/// Any text as GeoJSON, with and without a peg on the earth: it is read, or refused with a message, and what
/// was read can be drawn.
pub fn fuzz_geojson(data: &[u8]) {
    let Ok(text) = std::str::from_utf8(data) else { return };
    let place = OnEarth { lat_deg: 51.0, lon_deg: 0.5 };
    let peg = PegOnEarth::new(place, 30.0).ok();
    for peg in [None, peg.as_ref()] {
        match swim_from_geojson(text, peg) {
            Err(error) => assert!(!error.to_string().is_empty()),
            Ok(swim) => {
                let outline = swim.boundary.unwrap_or_default();
                assert!(outline.iter().all(|p| p.x.is_finite() && p.y.is_finite()));
            }
        }
    }
}

/// A separate reader of RFC 4180, so that writer and reader don't share their bugs.
fn rows_of(text: &str) -> Vec<Vec<String>> {
    let (mut rows, mut row, mut cell, mut quoted) = (vec![], vec![], String::new(), false);
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        match c {
            '"' if quoted && chars.peek() == Some(&'"') => {
                chars.next();
                cell.push('"');
            }
            '"' => quoted = !quoted,
            ',' if !quoted => row.push(std::mem::take(&mut cell)),
            '\r' if !quoted && chars.peek() == Some(&'\n') => {
                chars.next();
                row.push(std::mem::take(&mut cell));
                rows.push(std::mem::take(&mut row));
            }
            c => cell.push(c),
        }
    }
    rows
}

/// An op file of a small invented log, for seeding.
pub fn seed_op_file(seed: u64) -> Vec<u8> {
    let mut ops = crate::invented::log_of(seed, 2, 12);
    ops.sort_by_key(|op| op.id);
    let Ok(mut file) = OpFileWriter::begin(Vec::new()) else { return vec![] };
    for op in &ops {
        let Ok(body) = canonical_bytes(op) else { continue };
        if file.op(op.id, &body).is_err() {
            return vec![];
        }
    }
    file.end().map_or_else(|_| vec![], |(bytes, _, _)| bytes)
}
