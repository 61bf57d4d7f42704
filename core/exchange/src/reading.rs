//! Reads an op file record by record: intact records are passed on, faults are reported.

use super::op_file::{FORMAT, FORMAT_VERSION, HASH_END, HASH_START, HEADER, MAX_RECORD, OP_START, trailer};
use super::records::{Record, Records};
use super::strict::strict;
use super::{ExchangeError, Fault, FaultKind, OnProgress, PROGRESS_EVERY, Progress, Tally, Trailer};
use restwater_log::{Op, TAKEN_UNTIL_MS, op_from_bytes, op_from_canonical};
use restwater_store::{Hashed, MOST_OPS};
use serde_json::Value;
use sha2::{Digest, Sha256};
use std::io::Read;
use uuid::Uuid;

/// Clock readings from here on are a fault in a backup too (2300-01-01). Earlier ones are accepted from a backup: the clock of
/// its phone may have been moved to the latest reading that is accepted from other files.
const ABSURD_MS: u64 = 10_413_792_000_000;

/// Receives an op and its canonical bytes; returns its fault, if any.
pub(super) type Sink<'a> =
    dyn FnMut(&Op, Hashed<'_>, &mut Tally) -> Result<Option<FaultKind>, ExchangeError> + 'a;

/// Reads a whole file without a store, for tests: passes on every intact op with its canonical bytes.
#[cfg(any(test, feature = "testing"))]
pub fn read_op_file(
    input: impl Read,
    mut each: impl FnMut(&Op, &[u8]),
    progress: &mut OnProgress<'_>,
) -> Result<Tally, ExchangeError> {
    let mut sink = |op: &Op, body: Hashed<'_>, _: &mut Tally| {
        each(op, body.bytes);
        Ok(None)
    };
    read(input, &mut sink, progress)
}

/// Reads a file and passes its ops to the sink.
pub(super) fn read(
    input: impl Read,
    sink: &mut Sink<'_>,
    progress: &mut OnProgress<'_>,
) -> Result<Tally, ExchangeError> {
    let mut records = Records::begin(input)?;
    let first = records.next()?;
    header(first)?;
    let mut reading = Reading { tally: Tally::default(), ids: Vec::new(), ended: false };
    loop {
        let read = records.bytes();
        let Some(record) = records.next()? else { break };
        if record.number > MOST_OPS {
            return Err(ExchangeError::TooMany(MOST_OPS));
        }
        if record.number.is_multiple_of(PROGRESS_EVERY)
            && progress(Progress { ops: record.number, bytes: read }).is_break()
        {
            return Err(ExchangeError::Cancelled);
        }
        reading.record(&record, sink)?;
    }
    Ok(reading.tally)
}

/// The first record must be the header of a version known here.
fn header(record: Option<Record<'_>>) -> Result<(), ExchangeError> {
    let cut = Fault { record: 0, byte: 1, kind: FaultKind::Cut };
    let Some(record) = record else { return Err(ExchangeError::Header(cut)) };
    if record.text == HEADER && record.ended {
        return Ok(());
    }
    if record.text == HEADER || HEADER.starts_with(record.text) {
        return Err(ExchangeError::Header(cut));
    }
    let value = strict(record.text).map_err(|(at, kind)| {
        ExchangeError::Header(Fault { record: 0, byte: record.byte + at as u64, kind })
    })?;
    match (value.get("format").and_then(Value::as_str), value.get("version").and_then(Value::as_u64)) {
        (Some(FORMAT), Some(found)) if found > FORMAT_VERSION => {
            Err(ExchangeError::Newer { found, known: FORMAT_VERSION })
        }
        _ => Err(ExchangeError::Header(Fault { record: 0, byte: record.byte, kind: FaultKind::NotARecord })),
    }
}

struct Reading {
    tally: Tally,
    ids: Vec<Uuid>,
    ended: bool,
}

impl Reading {
    fn record(&mut self, record: &Record<'_>, sink: &mut Sink<'_>) -> Result<(), ExchangeError> {
        let outcome = if self.ended {
            Err((0, FaultKind::AfterEnd))
        } else if record.too_long {
            Err((0, FaultKind::TooLong))
        } else if let Some(said) = said_by_trailer(record.text) {
            self.trailer(record, said)
        } else {
            whole_op(record).map(|(op, body)| Some((op, body)))
        };
        let fault = match outcome {
            Ok(None) => None,
            Ok(Some((op, body))) => {
                self.tally.whole += 1;
                self.tally.shuffled += u64::from(self.ids.last().is_some_and(|last| *last > op.id));
                self.ids.push(op.id);
                sink(&op, body, &mut self.tally)?.map(|kind| (0, kind))
            }
            Err(fault) => Some(fault),
        };
        if let Some((at, kind)) = fault {
            self.tally.fault(Fault { record: record.number, byte: record.byte + at as u64, kind });
        }
        Ok(())
    }

    /// Checks whether the end of the file fits the records before it.
    fn trailer<T>(&mut self, record: &Record<'_>, said: u64) -> Result<Option<T>, (usize, FaultKind)> {
        self.ended = true;
        if !record.ended {
            return Err((record.text.len(), FaultKind::Cut));
        }
        self.ids.sort_unstable();
        let mut ids = Sha256::new();
        for id in &self.ids {
            ids.update(id.as_bytes());
        }
        let expected = trailer(self.ids.len() as u64, ids);
        let hash = |text: &[u8]| text.iter().rposition(|b| *b == b':').map(|at| text[at..].to_vec());
        self.tally.trailer = if expected.as_bytes() == record.text {
            Trailer::Fits
        } else if hash(expected.as_bytes()) == hash(record.text) {
            // The ids are right, so the count itself is damaged.
            return Err((0, FaultKind::WrongHash));
        } else {
            Trailer::Differs { said }
        };
        Ok(None)
    }
}

/// The count in a trailer, if the record is one.
fn said_by_trailer(text: &[u8]) -> Option<u64> {
    let rest = text.strip_prefix(br#"{"count":"#)?;
    let (count, rest) = std::str::from_utf8(rest).ok()?.split_once(r#","ids":""#)?;
    let hash = rest.strip_suffix(r#""}"#)?;
    let hex = hash.len() == 64 && hash.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'));
    if !hex || count.is_empty() || count.len() > 15 || !count.bytes().all(|b| b.is_ascii_digit()) {
        return None;
    }
    count.parse().ok()
}

/// The op of a record, its canonical bytes and their hash, or what is wrong and at which byte of the record.
fn whole_op<'a>(record: &Record<'a>) -> Result<(Op, Hashed<'a>), (usize, FaultKind)> {
    let Some((bytes, said)) = parts(record.text) else {
        return Err(why_not(record));
    };
    if !record.ended {
        return Err((record.text.len(), FaultKind::Cut));
    }
    let body = Hashed { bytes, sha256: Sha256::digest(bytes).into() };
    if !is_hex_of(said, &body.sha256) {
        // Damage that broke the JSON is reported as that, other damage as a wrong hash.
        strict(bytes).map_err(|(at, kind)| (OP_START.len() + at, kind))?;
        return Err((OP_START.len(), FaultKind::WrongHash));
    }
    op_of(bytes).map_err(|(at, kind)| (OP_START.len() + at, kind)).map(|op| (op, body))
}

fn is_hex_of(text: &[u8], sha256: &[u8; 32]) -> bool {
    const DIGITS: &[u8; 16] = b"0123456789abcdef";
    let mut hex = [0; 64];
    for (pair, byte) in hex.as_chunks_mut().0.iter_mut().zip(sha256) {
        *pair = [DIGITS[usize::from(byte >> 4)], DIGITS[usize::from(byte & 15)]];
    }
    text == hex
}

/// Reads an op of another phone's file from bytes whose hash is right: they must be strict JSON, canonical, readable, and
/// have a possible clock reading.
fn op_of(body: &[u8]) -> Result<Op, (usize, FaultKind)> {
    op_until(TAKEN_UNTIL_MS, body)
}

/// Reads an op of a backup in the same way.
pub(super) fn op_of_backup(body: &[u8]) -> Result<Op, (usize, FaultKind)> {
    if body.len() > MAX_RECORD {
        return Err((0, FaultKind::TooLong));
    }
    op_until(ABSURD_MS, body)
}

fn op_until(until_ms: u64, body: &[u8]) -> Result<Op, (usize, FaultKind)> {
    let text = std::str::from_utf8(body).map_err(|e| (e.valid_up_to(), FaultKind::NotUtf8))?;
    let op = match op_from_canonical(text) {
        Some(op) => op,
        None => op_read_slowly(body)?,
    };
    if op.hlc.ms >= until_ms {
        return Err((0, FaultKind::ClockAbsurd));
    }
    Ok(op)
}

/// Reads what is not canonical, to say so, and what is canonical but unusual, such as an op with a field of a later version.
fn op_read_slowly(body: &[u8]) -> Result<Op, (usize, FaultKind)> {
    let canonical = serde_json_canonicalizer::to_vec(&strict(body)?);
    if !canonical.is_ok_and(|bytes| bytes == body) {
        return Err((0, FaultKind::NotCanonical));
    }
    op_from_bytes(body).map_err(|e| (0, FaultKind::NotAnOp(e.to_string())))
}

/// Body and hash of a record in the form that we write.
fn parts(text: &[u8]) -> Option<(&[u8], &[u8])> {
    let rest = text.strip_prefix(OP_START)?.strip_suffix(HASH_END)?;
    let (rest, hash) = rest.split_at_checked(rest.len().checked_sub(64)?)?;
    Some((rest.strip_suffix(HASH_START)?, hash))
}

/// The fault of a record that isn't in the form that we write.
fn why_not(record: &Record<'_>) -> (usize, FaultKind) {
    match strict(record.text) {
        Err((at, FaultKind::NotJson(_))) if !record.ended && at + 1 >= record.text.len() => {
            (record.text.len(), FaultKind::Cut)
        }
        Err(fault) => fault,
        Ok(value) if value.get("op").is_some() && value.get("sha256").is_some() => {
            (0, FaultKind::NotCanonical)
        }
        Ok(_) => (0, FaultKind::NotARecord),
    }
}
