//! The op file: what is written can be read, the same ops give the same bytes, and damage is always reported.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use restwater_exchange::{
    ExchangeError, FaultKind, Incoming, LooksLike, OpFileWriter, Place, Progress, Selection, Tally, Trailer,
    export, import, preview, read_op_file,
};
use restwater_log::{Op, canonical_bytes, sha256_hex};
use restwater_store::{Durability, Store};
use restwater_tests::importing::{imported_at, no_ids};
use restwater_tests::invented::{BEGIN_MS, log_of};
use std::ops::ControlFlow;
use uuid::Uuid;

fn go(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

fn file_of(ops: &[Op]) -> Vec<u8> {
    let mut sorted: Vec<&Op> = ops.iter().collect();
    sorted.sort_by_key(|op| op.id);
    let mut file = OpFileWriter::begin(Vec::new()).unwrap();
    for op in sorted {
        file.op(op.id, &canonical_bytes(op).unwrap()).unwrap();
    }
    file.end().unwrap().0
}

fn read(bytes: &[u8]) -> Result<(Vec<Op>, Tally), ExchangeError> {
    let mut ops = Vec::new();
    let tally = read_op_file(bytes, |op, _| ops.push(op.clone()), &mut go)?;
    Ok((ops, tally))
}

fn incoming(n: u128) -> Incoming {
    Incoming { id: Uuid::from_u128(n), source: "Robin".into(), at: imported_at(BEGIN_MS * 2) }
}

/// A record around an op's bytes, as in the file.
fn record(body: &str) -> Vec<u8> {
    format!("\u{1e}{{\"op\":{body},\"sha256\":\"{}\"}}\n", sha256_hex(body.as_bytes())).into_bytes()
}

const HEADER: &[u8] = b"\x1e{\"format\":\"restwater-ops\",\"version\":1}\n";

#[test]
fn export_import_export_gives_the_same_bytes() {
    let ops = log_of(1, 4, 60);
    let (one, other) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let mut first = Store::open(one.path(), ops[0].device).unwrap();
    first.append(&ops, None).unwrap();
    let all = |store: &Store, what: Selection<'_>| {
        let mut bytes = Vec::new();
        let exported = export(store, what, Place::Included, &mut bytes, &mut go).unwrap();
        assert_eq!(exported.bytes, bytes.len() as u64);
        bytes
    };
    let bytes = all(&first, Selection::Everything);
    assert_eq!(bytes, file_of(&ops));
    let mut second = Store::open(other.path(), Uuid::from_u128(2)).unwrap();
    let seen = preview(&second, &bytes[..], BEGIN_MS * 2, &mut go).unwrap();
    assert_eq!(second.sessions().unwrap(), vec![], "a preview changes nothing");
    let tally = import(&mut second, &bytes[..], &incoming(1), &mut no_ids, &mut go).unwrap();
    assert_eq!(seen, tally);
    assert_eq!((tally.whole, tally.new, tally.sessions.len()), (240, 240, 4));
    assert!(tally.is_whole() && tally.amended > 0 && tally.newer > 0);
    assert_eq!(all(&second, Selection::Everything), bytes);
    assert_eq!(second.last_hlc(), first.last_hlc());
    let again = import(&mut second, &bytes[..], &incoming(2), &mut no_ids, &mut go).unwrap();
    assert_eq!((again.new, again.known), (0, 240));
    assert_eq!(second.imports().unwrap().len(), 1, "an import that brought nothing leaves no trace");
    for row in first.sessions().unwrap() {
        let ids = [row.id];
        let one = Selection::Session(row.id);
        assert_eq!(all(&first, one), all(&second, Selection::Sessions(&ids)));
        assert_eq!(read(&all(&first, one)).unwrap().0.len(), 60);
    }
}

/// For ten thousand logs: exported, imported into a store and exported again, byte for byte; a second import
/// adds nothing. They all use one store, which needn't survive a power cut.
#[test]
fn export_import_export_gives_the_same_bytes_ten_thousand_times() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = Store::open_with(dir.path(), Uuid::from_u128(2), Durability::None).unwrap();
    for seed in 0..10_000_u64 {
        let ops = log_of(seed, 1, 1 + (seed % 23) as usize);
        let bytes = file_of(&ops);
        let (read, tally) = read(&bytes).unwrap();
        assert!(tally.is_whole() && file_of(&read) == bytes, "seed {seed}");
        let tally = import(&mut store, &bytes[..], &incoming(seed.into()), &mut no_ids, &mut go).unwrap();
        assert_eq!((tally.new, tally.known), (ops.len() as u64, 0), "seed {seed}");
        let mut out = Vec::new();
        let what = Selection::Session(ops[0].session);
        export(&store, what, Place::Included, &mut out, &mut go).unwrap();
        assert!(out == bytes, "seed {seed}");
        let again = preview(&store, &bytes[..], BEGIN_MS * 2, &mut go).unwrap();
        assert_eq!((again.new, again.known), (0, ops.len() as u64), "seed {seed}");
    }
}

/// Each op of a 200-op file in a file of its own, with each byte of that file flipped or replaced by the mark
/// that begins or the mark that ends a record: an error, or a partial reading with exact counts.
#[test]
fn every_flip_of_every_byte_is_an_error_or_partial() {
    let ops = log_of(2, 1, 200);
    let (mut flip, mut tried) = (1_u8, 0_u64);
    for op in &ops {
        let whole = file_of(std::slice::from_ref(op));
        for at in 0..whole.len() {
            flip = flip.wrapping_mul(5).wrapping_add(1).max(1);
            for value in [whole[at] ^ flip, 0x1e, b'\n'] {
                if value == whole[at] {
                    continue;
                }
                tried += 1;
                let mut bytes = whole.clone();
                bytes[at] = value;
                let Ok((read, tally)) = read(&bytes) else { continue };
                assert!(!tally.is_whole(), "byte {at} as {value:#x} went unseen");
                assert_eq!(tally.whole, read.len() as u64);
                assert!(read.iter().all(|read| read == op), "byte {at}: an op that was never written");
                if let Some(missing) = tally.missing() {
                    assert_eq!(missing + tally.whole, 1, "byte {at} as {value:#x}");
                }
            }
        }
    }
    assert!(tried > 200 * 3 * 400, "{tried} flips");
}

#[test]
fn every_flip_within_a_record_is_named() {
    let ops = log_of(2, 1, 200);
    let mut flip = 1_u8;
    for op in &ops {
        let whole = record(std::str::from_utf8(&canonical_bytes(op).unwrap()).unwrap());
        for at in 1..whole.len() - 1 {
            let mut bytes = [HEADER, &whole].concat();
            flip = flip.wrapping_mul(5).wrapping_add(1).max(1);
            if bytes[HEADER.len() + at] ^ flip == 0x1e {
                continue; // one more record: the next test covers these
            }
            bytes[HEADER.len() + at] ^= flip;
            let (read, tally) = read(&bytes).unwrap();
            assert_eq!((read.len(), tally.whole, tally.damaged), (0, 0, 1), "byte {at} by {flip:#x}");
            assert_eq!(tally.faults[0].record, 1);
        }
    }
}

#[test]
fn flips_of_a_whole_file_are_an_error_or_a_partial_reading_with_exact_counts() {
    let ops = log_of(3, 1, 200);
    let whole = file_of(&ops);
    let marks = whole.iter().enumerate().filter(|(_, b)| matches!(b, 0x1e | b'\n')).map(|(i, _)| i);
    let trailer = whole.len() - 100..whole.len();
    let places: Vec<usize> =
        marks.chain(0..HEADER.len()).chain(trailer).chain((0..whole.len()).step_by(97)).collect();
    for at in places {
        for value in [whole[at] ^ 1, 0x1e, b'\n'] {
            if value == whole[at] {
                continue;
            }
            let mut bytes = whole.clone();
            bytes[at] = value;
            let Ok((read, tally)) = read(&bytes) else { continue };
            assert!(!tally.is_whole(), "byte {at} as {value:#x} went unseen");
            assert_eq!(tally.whole, read.len() as u64);
            assert!(read.iter().all(|op| ops.contains(op)), "byte {at}: an op that was never written");
            if let Some(missing) = tally.missing().filter(|n| *n > 0) {
                assert_eq!(missing + tally.whole, 200, "byte {at}");
            }
        }
    }
}

#[test]
fn every_truncation_gives_the_complete_part_and_says_so() {
    let ops = log_of(4, 1, 200);
    let whole = file_of(&ops);
    let ends: Vec<usize> = whole.iter().enumerate().filter(|(_, b)| **b == b'\n').map(|(i, _)| i).collect();
    // Each cut is read from the preceding record on: what comes before is the same for all.
    for cut in 0..whole.len() {
        let done = ends.iter().filter(|end| **end < cut).count();
        let from = if done < 3 { 0 } else { ends[done - 2] + 1 };
        let bytes = if from == 0 { whole[..cut].to_vec() } else { [HEADER, &whole[from..cut]].concat() };
        let kept = if from == 0 { done.saturating_sub(1) } else { 1 };
        match read(&bytes) {
            Err(error) => {
                assert!(done == 0, "cut at {cut}: {error}");
                assert!(matches!(error, ExchangeError::Header(_) | ExchangeError::NotOpFile(_)));
            }
            Ok((read, tally)) => {
                assert_eq!(read.len(), kept.min(200), "cut at {cut}");
                assert_eq!(tally.trailer, Trailer::Missing, "cut at {cut}");
                let in_record = !whole[..cut].ends_with(b"\n");
                assert_eq!(tally.damaged, u64::from(in_record), "cut at {cut}");
            }
        }
    }
}

#[test]
fn shuffled_and_repeated_records_lose_nothing() {
    let ops = log_of(5, 1, 40);
    let whole = file_of(&ops);
    let mut records: Vec<&[u8]> = whole.split_inclusive(|b| *b == b'\n').collect();
    records[1..41].reverse();
    let (read_back, tally) = read(&records.concat()).unwrap();
    assert_eq!((read_back.len(), tally.shuffled, tally.trailer), (40, 39, Trailer::Fits));
    records.insert(1, records[1]);
    let tally = read(&records.concat()).unwrap().1;
    assert_eq!(tally.trailer, Trailer::Differs { said: 40 });
    let dir = tempfile::tempdir().unwrap();
    let mut store = Store::open(dir.path(), Uuid::from_u128(1)).unwrap();
    let tally = import(&mut store, &records.concat()[..], &incoming(1), &mut no_ids, &mut go).unwrap();
    assert_eq!((tally.new, tally.known), (40, 1));
}

#[test]
fn hostile_records_are_named_by_kind_and_place() {
    let op = String::from_utf8(canonical_bytes(&log_of(6, 1, 1)[0]).unwrap()).unwrap();
    let absurd = op.replacen("\"hlc\":\"0017", "\"hlc\":\"9997", 1);
    let big = op.replacen("\"mono\":", "\"mono\":9007199254740992", 1);
    let deep =
        op.replacen("\"water\":", &format!("\"deep\":{}1{},\"water\":", "[".repeat(30), "]".repeat(30)), 1);
    let cases: Vec<(Vec<u8>, FaultKind)> = vec![
        (record(&absurd), FaultKind::ClockAbsurd),
        (record(&big), FaultKind::NumberOutOfRange),
        (record(&deep), FaultKind::TooDeep),
        (record(&op.replacen("Alder", "\\ud83c", 1)), FaultKind::LoneSurrogate),
        (record(&op.replacen('{', "{ ", 1)), FaultKind::NotCanonical),
        (record(&op.replacen("{\"at\"", "{\"at\":1,\"at\"", 1)), FaultKind::DuplicateKey("at".into())),
        (b"\x1e{\"x\":1}\n".to_vec(), FaultKind::NotARecord),
        ([b"\x1e{\"op\":\"".to_vec(), vec![b'a'; 2 << 20], b"\"}\n".to_vec()].concat(), FaultKind::TooLong),
        (b"\x1e\"\xff\"\n".to_vec(), FaultKind::NotUtf8),
        (record(&op).iter().map(|b| if *b == b'A' { b'B' } else { *b }).collect(), FaultKind::WrongHash),
    ];
    for (record, kind) in cases {
        let tally = read(&[HEADER, &record].concat()).unwrap().1;
        let fault = &tally.faults[0];
        assert_eq!((fault.record, &fault.kind), (1, &kind));
        let within = HEADER.len() as u64..(HEADER.len() + record.len()) as u64;
        assert!(within.contains(&fault.byte), "{fault}");
    }
    let known_kind_wrong = record(&op.replacen("\"rods\":2", "\"rods\":\"x\"", 1));
    let tally = read(&[HEADER, &known_kind_wrong].concat()).unwrap().1;
    assert!(matches!(tally.faults[0].kind, FaultKind::NotAnOp(_)));
}

#[test]
fn a_file_of_another_kind_is_named_by_what_it_looks_like() {
    let cases: [(&[u8], LooksLike); 6] = [
        (b"", LooksLike::Empty),
        (b"PK\x03\x04....", LooksLike::Zip),
        (b"SQLite format 3\0...", LooksLike::Database),
        (b"[1,2]", LooksLike::Json),
        (b"Dear Robin,\n", LooksLike::Text),
        (b"\x00\x01\x02", LooksLike::Other),
    ];
    for (bytes, looks) in cases {
        assert!(matches!(read(bytes), Err(ExchangeError::NotOpFile(found)) if found == looks));
    }
    let newer = b"\x1e{\"format\":\"restwater-ops\",\"version\":2}\n";
    assert!(matches!(read(newer), Err(ExchangeError::Newer { found: 2, known: 1 })));
    for header in [
        &b"\x1e"[..],
        b"\x1e{\"format\":\"other\",\"version\":1}\n",
        b"\x1e{\"a\":1,\"a\":2}\n",
        &HEADER[..20],
    ] {
        assert!(matches!(read(header), Err(ExchangeError::Header(fault)) if fault.record == 0));
    }
}

#[test]
fn a_clash_is_reported_and_never_overwrites() {
    let ops = log_of(7, 1, 10);
    let mut other = ops.clone();
    other[3].at.wall_ms += 1;
    let dir = tempfile::tempdir().unwrap();
    let mut store = Store::open(dir.path(), ops[0].device).unwrap();
    store.append(&ops, None).unwrap();
    let tally = import(&mut store, &file_of(&other)[..], &incoming(1), &mut no_ids, &mut go).unwrap();
    assert_eq!((tally.known, tally.clashes, tally.new, tally.damaged), (9, 1, 0, 0));
    assert_eq!(tally.faults[0].kind, FaultKind::Clash(ops[3].id));
    assert_eq!(store.ops_of(ops[0].session).unwrap(), ops);
    let mut elsewhere = ops[4].clone();
    elsewhere.session = Uuid::from_u128(77);
    import(&mut store, &file_of(&[elsewhere])[..], &incoming(2), &mut no_ids, &mut go).unwrap();
    assert_eq!(store.sessions().unwrap().len(), 1, "a clash makes no session");
}

#[test]
fn cancelling_leaves_nothing_behind() {
    let ops = log_of(8, 3, 400);
    let dir = tempfile::tempdir().unwrap();
    let mut store = Store::open(dir.path(), Uuid::from_u128(1)).unwrap();
    let mut calls = 0;
    let mut stop = |_: Progress| {
        calls += 1;
        if calls == 2 { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
    };
    let file = file_of(&ops);
    assert!(matches!(
        import(&mut store, &file[..], &incoming(1), &mut no_ids, &mut stop),
        Err(ExchangeError::Cancelled)
    ));
    assert_eq!(calls, 2);
    assert_eq!(store.sessions().unwrap(), vec![]);
    assert_eq!(store.imports().unwrap(), vec![]);
    import(&mut store, &file[..], &incoming(1), &mut no_ids, &mut go).unwrap();
    let mut at_once = |_: Progress| ControlFlow::Break(());
    let cancelled = export(&store, Selection::Everything, Place::Included, std::io::sink(), &mut at_once);
    assert!(matches!(cancelled, Err(ExchangeError::Cancelled)));
}

#[test]
fn wrong_clocks_are_kept_and_reported() {
    let mut ops = log_of(9, 1, 10);
    ops[9].at.wall_ms -= 7_200_000;
    let dir = tempfile::tempdir().unwrap();
    let store = Store::open(dir.path(), Uuid::from_u128(1)).unwrap();
    let tally = preview(&store, &file_of(&ops)[..], ops[0].at.wall_ms - 3_600_000, &mut go).unwrap();
    let clock = tally.clocks[&ops[0].device];
    assert_eq!(clock.set_back_ms, 7_200_000);
    assert!(clock.ahead_ms >= 3_600_000);
    assert_eq!(tally.new, 10, "nothing is refused for its clock");
}

/// jq reads RFC 7464 with --seq.
#[test]
#[ignore = "needs jq: ./dev test runs it where that is installed"]
fn jq_reads_it() {
    let ops = log_of(10, 1, 50);
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join("day.restwater.json-seq");
    std::fs::write(&path, file_of(&ops)).unwrap();
    let mut jq = std::process::Command::new("jq");
    let out = jq.args(["--seq", "-c", ".op.kind // .count"]).arg(&path).output().unwrap();
    assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stderr));
    let text = String::from_utf8(out.stdout).unwrap();
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(lines.len(), 52);
    assert!(lines[1].ends_with("\"session_started\"") && lines[51].ends_with("50"), "{text}");
}
