//! The one way to write an op: JSON Canonicalization Scheme (RFC 8785).

use super::{Hlc, Moment, Op, Payload, RodNumber};
use serde::Deserialize;
use serde_json::value::RawValue;
use sha2::{Digest, Sha256};
use std::borrow::Cow;
use std::fmt::Write as _;
use uuid::Uuid;

/// Why an op can't be written or read.
#[derive(Debug, thiserror::Error)]
pub enum CanonicalError {
    /// The text is not an op.
    #[error("not an op: {0}")]
    NotAnOp(String),
    /// The kind is known, but its payload can't be read.
    #[error("an op of kind \"{0}\" whose payload can't be read")]
    Payload(String),
    /// The op can't be written, which would be a fault in this program.
    #[error("an op that can't be written: {0}")]
    Unwritable(String),
}

/// The canonical bytes of an op.
pub fn canonical_bytes(op: &Op) -> Result<Vec<u8>, CanonicalError> {
    serde_json_canonicalizer::to_vec(op).map_err(|e| CanonicalError::Unwritable(e.to_string()))
}

/// An op whose payload is still text, so that it is parsed only once, by its kind. This lets a million ops be
/// read in seconds.
#[derive(Deserialize)]
struct Envelope<'a> {
    id: Uuid,
    device: Uuid,
    hlc: Hlc,
    at: Moment,
    session: Uuid,
    #[serde(borrow)]
    kind: Cow<'a, str>,
    #[serde(borrow, default)]
    payload: Option<&'a RawValue>,
    #[serde(default)]
    amends: Option<Uuid>,
    #[serde(default)]
    group: Option<Uuid>,
}

/// Reads an op from JSON with its fields in any order, with spaces, and beside fields of a later version.
pub(super) fn op_of_any_form(bytes: &[u8]) -> Result<Op, CanonicalError> {
    let read: Envelope<'_> =
        serde_json::from_slice(bytes).map_err(|e| CanonicalError::NotAnOp(e.to_string()))?;
    let payload = payload_of(&read.kind, read.payload.map(RawValue::get))?;
    Ok(Op {
        id: read.id,
        device: read.device,
        hlc: read.hlc,
        at: read.at,
        session: read.session,
        payload,
        amends: read.amends,
        group: read.group,
    })
}

/// Reads a payload from its kind and its text.
pub(super) fn payload_of(kind: &str, text: Option<&str>) -> Result<Payload, CanonicalError> {
    if let (Some(payload), Some(text)) = (of_a_rod(kind), text)
        && let Some(rod) = rod_of(text)
    {
        return Ok(payload(rod));
    }
    if !Payload::kind_is_known(kind) {
        let payload = text.map(serde_json::from_str).transpose();
        let payload = payload.map_err(|e| CanonicalError::NotAnOp(e.to_string()))?;
        return Ok(Payload::Unknown { kind: kind.to_owned(), payload });
    }
    // A known kind consists of letters and underscores, so nothing has to be escaped.
    let whole = match text {
        None => ["\"", kind, "\""].concat(),
        Some(text) => ["{\"", kind, "\":", text, "}"].concat(),
    };
    serde_json::from_str(&whole).map_err(|_| CanonicalError::Payload(kind.to_owned()))
}

/// The rod of a payload that holds nothing else.
fn rod_of(text: &str) -> Option<RodNumber> {
    text.strip_prefix("{\"rod\":")?.strip_suffix('}')?.parse().ok()
}

/// The kinds of nearly all entries of a day. They are read without building a new text; a test checks that
/// both ways agree.
fn of_a_rod(kind: &str) -> Option<fn(RodNumber) -> Payload> {
    Some(match kind {
        "cast" => |rod| Payload::Cast { rod },
        "bite" => |rod| Payload::Bite { rod },
        "lost" => |rod| Payload::Lost { rod },
        "missed" => |rod| Payload::Missed { rod },
        "liner" => |rod| Payload::Liner { rod },
        "indication" => |rod| Payload::Indication { rod },
        "wound_in" => |rod| Payload::WoundIn { rod },
        "twitch" => |rod| Payload::Twitch { rod },
        _ => return None,
    })
}

/// SHA-256 in lower-case hexadecimal.
pub fn sha256_hex(bytes: &[u8]) -> String {
    let mut out = String::with_capacity(64);
    for byte in Sha256::digest(bytes) {
        let _ = write!(out, "{byte:02x}");
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Hlc, Moment, op_from_bytes};
    use uuid::Uuid;

    fn op() -> Op {
        Op {
            id: Uuid::from_u128(7),
            device: Uuid::from_u128(8),
            hlc: Hlc { ms: 5, count: 0 },
            at: Moment {
                wall_ms: 5,
                offset_min: 60,
                zone: "Europe/Paris".into(),
                mono_ms: 1,
                boot: "b".into(),
                approx_s: 0,
            },
            session: Uuid::from_u128(9),
            payload: Payload::Cast { rod: 1 },
            amends: None,
            group: None,
        }
    }

    #[test]
    fn keys_are_sorted_and_nothing_is_padded() {
        let text = String::from_utf8(canonical_bytes(&op()).unwrap()).unwrap();
        assert_eq!(
            text,
            concat!(
                r#"{"at":{"boot":"b","mono":1,"offset":60,"wall":5,"zone":"Europe/Paris"},"#,
                r#""device":"00000000-0000-0000-0000-000000000008","hlc":"000000000000005-000000","#,
                r#""id":"00000000-0000-0000-0000-000000000007","kind":"cast","payload":{"rod":1},"#,
                r#""session":"00000000-0000-0000-0000-000000000009"}"#
            )
        );
        assert_eq!(op_from_bytes(text.as_bytes()).unwrap(), op());
    }

    #[test]
    fn the_uncertainty_of_a_time_is_written_only_if_there_is_any() {
        let off = Op { at: Moment { approx_s: 30, ..op().at }, ..op() };
        let bytes = canonical_bytes(&off).unwrap();
        assert!(String::from_utf8_lossy(&bytes).starts_with(r#"{"at":{"approx":30,"boot":"b","#));
        assert_eq!(op_from_bytes(&bytes).unwrap(), off);
    }

    #[test]
    fn the_fast_reader_gives_the_same_result_as_the_derived_one() {
        let kinds = ["cast", "bite", "lost", "missed", "liner", "indication", "wound_in", "twitch"];
        for kind in kinds {
            let payload = of_a_rod(kind).unwrap()(2);
            assert_eq!(payload.kind(), kind);
            let written = serde_json::to_value(&payload).unwrap();
            assert_eq!(written, serde_json::json!({kind: {"rod": 2}}));
            assert_eq!(serde_json::from_value::<Payload>(written).unwrap(), payload);
        }
        assert!(of_a_rod("landed").is_none() && of_a_rod("session_ended").is_none());
    }

    #[test]
    fn a_known_kind_with_a_wrong_payload_is_an_error() {
        let text = String::from_utf8(canonical_bytes(&op()).unwrap()).unwrap();
        let wrong = text.replace(r#"{"rod":1}"#, r#"{"rod":"x"}"#);
        assert!(
            matches!(op_from_bytes(wrong.as_bytes()), Err(CanonicalError::Payload(kind)) if kind == "cast")
        );
        assert!(matches!(op_from_bytes(b"{}"), Err(CanonicalError::NotAnOp(_))));
    }

    /// FIPS 180-4 example: SHA-256 of "abc".
    #[test]
    fn sha256_of_the_standard_example() {
        assert_eq!(sha256_hex(b"abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }
}
