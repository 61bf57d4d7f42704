//! Files that no app of this version made: truncated ones, junk, and those of a later version on a third
//! phone.

use super::oracle::Entry;
use restwater_exchange::OpFileWriter;
use restwater_log::{canonical_bytes, op_from_bytes};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// The third phone.
const STRANGER: &str = "01930000-0000-7000-8000-0000000000aa";

/// The complete entries of an op file, read naively: records between the marks, each with its end mark.
pub fn entries_in(bytes: &[u8]) -> Vec<Entry> {
    let records = bytes.split(|b| *b == 0x1e).filter(|record| record.last() == Some(&b'\n'));
    let ops = records.filter_map(|record| serde_json::from_slice::<Value>(record).ok());
    ops.filter_map(|mut value| Entry::of(value.get_mut("op")?.take())).collect()
}

/// What a file of a later version refers to.
pub struct Later<'a> {
    /// Makes its ids.
    pub number: u64,
    /// A session of the phone that imports it, if it has one.
    pub session: Option<&'a str>,
    /// An entry there.
    pub entry: Option<&'a str>,
    /// The stranger's wall clock.
    pub wall_ms: i64,
    /// The latest hybrid clock that the stranger has seen.
    pub seen: &'a str,
}

/// A stranger's file: a session of their own, an entry of a kind that this version does not know, and an
/// amendment of such a kind to one of the angler's entries.
pub fn later(ask: &Later) -> Result<(Vec<u8>, Vec<Entry>), String> {
    let own = id(ask.number, 0);
    let mut ops = vec![
        op(
            ask,
            1,
            &own,
            "session_started",
            &json!({"span_tenth_mm": 36_576, "rods": 1, "settle_s": 0,
            "twitch_restarts": false, "water": "Mill Pit"}),
            None,
        ),
        op(ask, 2, &own, "cast", &json!({"rod": 1}), None),
        op(ask, 3, &own, "thermocline_felt", &json!({"deep": [1, 2]}), None),
    ];
    if let Some(session) = ask.session {
        ops.push(op(ask, 4, session, "thermocline_felt", &json!({"deep": [3]}), None));
        if let Some(entry) = ask.entry {
            ops.push(op(ask, 5, session, "mark_seen_from", &json!({"name": "later"}), Some(entry)));
        }
    }
    let mut sorted = BTreeMap::new();
    for value in ops {
        let op = op_from_bytes(value.to_string().as_bytes()).map_err(|e| e.to_string())?;
        sorted.insert(op.id, canonical_bytes(&op).map_err(|e| e.to_string())?);
    }
    let mut file = OpFileWriter::begin(Vec::new()).map_err(|e| e.to_string())?;
    for (id, body) in &sorted {
        file.op(*id, body).map_err(|e| e.to_string())?;
    }
    let bytes = file.end().map_err(|e| e.to_string())?.0;
    let entries = entries_in(&bytes);
    Ok((bytes, entries))
}

fn id(number: u64, place: u64) -> String {
    format!("01930000-{:04x}-7000-8000-{:012x}", number % 0x1_0000, number / 0x1_0000 * 16 + place)
}

fn op(ask: &Later, place: u64, session: &str, kind: &str, payload: &Value, amends: Option<&str>) -> Value {
    // A stranger's clock has seen what it refers to, and continues from there.
    let seen: i64 = ask.seen.split('-').next().and_then(|ms| ms.parse().ok()).unwrap_or(0);
    let clock = format!("{:015}-{place:06}", seen.max(ask.wall_ms).max(0) + 1);
    let at = json!({"wall": ask.wall_ms, "offset": 0, "zone": "", "mono": place * 60_000, "boot": "boot-1"});
    let mut op = json!({"id": id(ask.number, place), "device": STRANGER, "hlc": clock, "at": at, "session": session,
        "kind": kind, "payload": payload});
    if let (Some(amends), Value::Object(fields)) = (amends, &mut op) {
        fields.insert("amends".into(), json!(amends));
    }
    op
}

/// Bytes that are not one of our files.
pub fn junk(which: i64) -> &'static [u8] {
    match which.rem_euclid(4) {
        0 => b"",
        1 => b"\x1e{\"format\":\"restwater-ops\",\"version\":9}\n",
        2 => b"date,species\n2026-01-17,roach\n",
        _ => b"SQLite format 3\0and nothing else",
    }
}

/// A map of the swim with two marks.
pub fn map(bearing: i64) -> Vec<u8> {
    let mark = |name: &str, bearing: i64| {
        json!({"type": "Feature", "geometry": null,
            "properties": {"kind": "aiming mark", "name": name, "bearing_deg": bearing}})
    };
    let all =
        json!({"type": "FeatureCollection", "features": [mark("Gate", bearing), mark("Hut", bearing - 9)]});
    all.to_string().into_bytes()
}
