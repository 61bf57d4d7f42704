//! The file with which a club gives its anglers a start for advice, `*.restwater-club.json-seq`, and reading it.
//!
//! A JSON text sequence (RFC 7464) of two records:
//!
//! - the header `{"format":"restwater-club","version":1}`,
//! - `{"club":{...},"sha256":"..."}`, with the SHA-256 of the bytes of the club: `anglers`, `days`, `waters`, the version of
//!   the `shapes`, and `fitted`, each with what it was fitted to, the `anglers` and `days` of that, and the `weights` of the
//!   kinds of shapes, which sum to 1.
//!
//! docs/pooling.md shows how it is made. It contains no cast, no day and no angler, and no water with fewer than five anglers.

use super::op_file::{HASH_END, HASH_START, LF, RS};
use super::strict::strict;
use super::{ClubFault, ExchangeError, FaultKind};
use restwater_log::{ClubDays, ClubStart, ClubWeights, sha256_hex};
use restwater_session::same_water;
use restwater_waits::{CLUB_SHAPES, ClubError, Shapes};
use serde::Deserialize;
use serde_json::Value;
use std::fs::File;
use std::io::Read;
use std::path::Path;

/// Version of the form of the file.
const VERSION: u64 = 1;
/// What the header of every version begins with.
const BEGINS: &[u8] = b"\x1e{\"format\":\"restwater-club\"";
const HEADER: &[u8] = b"\x1e{\"format\":\"restwater-club\",\"version\":1}\n";
const CLUB_START: &[u8] = br#"{"club":"#;
/// A larger file is none.
const LARGEST_BYTES: usize = 1 << 19;
/// A file with more lists of weights than this is not a club's.
const MOST_FITTED: usize = 200;
/// Weights fitted to the days of fewer anglers would describe these anglers and not a club.
const LEAST_ANGLERS: u32 = 5;

/// What the file says.
#[derive(Deserialize)]
struct Club {
    shapes: u32,
    anglers: u32,
    days: u32,
    waters: u32,
    fitted: Vec<Fitted>,
}

#[derive(Deserialize)]
struct Fitted {
    #[serde(flatten)]
    days_of: ClubDays,
    anglers: u32,
    days: u32,
    weights: Vec<f64>,
}

/// The club's start in a file that is one by its contents, under the name typed for the club; `None` for any other file.
pub fn club_in(file: &Path, name: &str) -> Result<Option<ClubStart>, ExchangeError> {
    let mut bytes = Vec::new();
    File::open(file)?.take(LARGEST_BYTES as u64 + 1).read_to_end(&mut bytes)?;
    if !bytes.starts_with(BEGINS) {
        return Ok(None);
    }
    if bytes.len() > LARGEST_BYTES {
        return Err(ClubFault::TooLarge(LARGEST_BYTES).into());
    }
    Ok(Some(read(&bytes, name)?))
}

fn read(bytes: &[u8], name: &str) -> Result<ClubStart, ClubFault> {
    let damaged = |why: &dyn std::fmt::Display| ClubFault::Damaged(why.to_string());
    let Some(record) = bytes.strip_prefix(HEADER) else { return Err(of_header(bytes)) };
    let record = record.strip_prefix(&[RS]).and_then(|record| record.strip_suffix(&[LF]));
    let (club, said) = record.and_then(parts).ok_or_else(|| damaged(&FaultKind::Cut))?;
    let sha256 = sha256_hex(club);
    if said != sha256.as_bytes() {
        return Err(damaged(&FaultKind::WrongHash));
    }
    let club = strict(club).map_err(|(_, kind)| match kind {
        FaultKind::NumberOutOfRange => ClubFault::Weights(ClubError::NotAWeight),
        other => damaged(&other),
    })?;
    // The shapes come first: those of another version have other lists.
    match club.get("shapes").and_then(Value::as_u64) {
        Some(shapes) if shapes > u64::from(CLUB_SHAPES) => return Err(ClubFault::Newer),
        Some(shapes) if shapes < u64::from(CLUB_SHAPES) => return Err(ClubFault::Older),
        _ => {}
    }
    let club: Club = serde_json::from_value(club).map_err(|e| damaged(&e))?;
    check(&club)?;
    Ok(ClubStart {
        name: name.to_owned(),
        shapes: club.shapes,
        anglers: club.anglers,
        days: club.days,
        waters: club.waters,
        fitted: club.fitted.into_iter().map(in_millionths).collect(),
        sha256,
    })
}

/// The error for a header that isn't that of this version: of a later version, or damaged.
fn of_header(bytes: &[u8]) -> ClubFault {
    let end = bytes.iter().position(|b| *b == LF).unwrap_or(bytes.len());
    let header = strict(&bytes[1..end]).ok();
    match header.as_ref().and_then(|header| header.get("version")).and_then(Value::as_u64) {
        Some(version) if version > VERSION => ClubFault::Newer,
        _ => ClubFault::Damaged(FaultKind::NotARecord.to_string()),
    }
}

/// The club and its hash.
fn parts(record: &[u8]) -> Option<(&[u8], &[u8])> {
    let rest = record.strip_prefix(CLUB_START)?.strip_suffix(HASH_END)?;
    let (rest, hash) = rest.split_at_checked(rest.len().checked_sub(64)?)?;
    Some((rest.strip_suffix(HASH_START)?, hash))
}

fn check(club: &Club) -> Result<(), ClubFault> {
    if club.fitted.len() > MOST_FITTED {
        return Err(ClubFault::TooLarge(LARGEST_BYTES));
    }
    let of_all = club.fitted.iter().filter(|fitted| fitted.days_of == ClubDays::All);
    let twice = |(i, fitted): (usize, &Fitted)| {
        club.fitted[..i].iter().any(|before| same_days(&before.days_of, &fitted.days_of))
    };
    if of_all.count() != 1 || club.fitted.iter().enumerate().any(twice) {
        return Err(ClubFault::Damaged("weights are missing or there twice".into()));
    }
    let fewest = club.fitted.iter().map(|fitted| fitted.anglers).chain([club.anglers]).min().unwrap_or(0);
    if fewest < LEAST_ANGLERS {
        return Err(ClubFault::FewAnglers(fewest));
    }
    let shapes = Shapes::usual();
    club.fitted.iter().try_for_each(|fitted| shapes.check_club(&fitted.weights)).map_err(ClubFault::Weights)
}

/// Whether two lists of weights are of the same days. A water may be spelt in two ways.
fn same_days(one: &ClubDays, other: &ClubDays) -> bool {
    match (one, other) {
        (ClubDays::Water { water: one }, ClubDays::Water { water: other }) => {
            same_water(Some(one), Some(other))
        }
        _ => one == other,
    }
}

fn in_millionths(fitted: Fitted) -> ClubWeights {
    let Fitted { days_of, anglers, days, weights } = fitted;
    let weights = weights.into_iter().map(|weight| (weight * 1e6).round() as u32).collect();
    ClubWeights { days_of, anglers, days, weights }
}

#[cfg(test)]
mod tests;
