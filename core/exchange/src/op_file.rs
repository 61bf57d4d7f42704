//! The op file `*.restwater.json-seq`: its format, and writing it.
//!
//! A JSON text sequence (RFC 7464: each record is U+001E, a JSON text, U+000A) in the JSON
//! Canonicalization Scheme (RFC 8785):
//!
//! - the header `{"format":"restwater-ops","version":1}`,
//! - one record for each op, `{"op":{...},"sha256":"..."}`, with the hash of the canonical bytes of the op,
//!   in ascending order of the ids,
//! - the trailer `{"count":N,"ids":"..."}`, with the SHA-256 of the ids, 16 bytes each, sorted.
//!
//! The contents of the file depend only on the ops: the same ops give the same bytes on every phone.

use super::ExchangeError;
use restwater_log::sha256_hex;
use sha2::{Digest, Sha256};
use std::fmt::Write as _;
use std::io::Write;
use uuid::Uuid;

/// Name of the format in the header.
pub const FORMAT: &str = "restwater-ops";
/// Version of the form of the file.
pub const FORMAT_VERSION: u64 = 1;
/// Media type (RFC 7464, section 4).
pub const MEDIA_TYPE: &str = "application/json-seq";

/// Begins a record.
pub(super) const RS: u8 = 0x1e;
/// Ends one.
pub(super) const LF: u8 = b'\n';
/// The header of this version.
pub(super) const HEADER: &[u8] = br#"{"format":"restwater-ops","version":1}"#;
/// The longest record accepted, in bytes.
pub(super) const MAX_RECORD: usize = 1 << 20;

pub(super) const OP_START: &[u8] = br#"{"op":"#;
pub(super) const HASH_START: &[u8] = br#","sha256":""#;
pub(super) const HASH_END: &[u8] = br#""}"#;

/// Writes an op file.
pub struct OpFileWriter<W: Write> {
    out: W,
    count: u64,
    bytes: u64,
    ids: Sha256,
    last: Option<Uuid>,
}

impl<W: Write> OpFileWriter<W> {
    /// Writes the header.
    pub fn begin(out: W) -> Result<Self, ExchangeError> {
        let mut file = Self { out, count: 0, bytes: 0, ids: Sha256::new(), last: None };
        file.record(&[HEADER])?;
        Ok(file)
    }

    /// Writes one op, given as its canonical bytes. Ids must rise.
    pub fn op(&mut self, id: Uuid, body: &[u8]) -> Result<(), ExchangeError> {
        if self.last.is_some_and(|last| last >= id) {
            return Err(std::io::Error::other("ids out of order").into());
        }
        self.record(&[OP_START, body, HASH_START, sha256_hex(body).as_bytes(), HASH_END])?;
        self.ids.update(id.as_bytes());
        self.count += 1;
        self.last = Some(id);
        Ok(())
    }

    /// Writes the trailer and returns the writer, with the counts of ops and bytes.
    pub fn end(mut self) -> Result<(W, u64, u64), ExchangeError> {
        let trailer = trailer(self.count, self.ids.clone());
        self.record(&[trailer.as_bytes()])?;
        self.out.flush()?;
        Ok((self.out, self.count, self.bytes))
    }

    /// Bytes written so far.
    pub(super) fn bytes(&self) -> u64 {
        self.bytes
    }

    fn record(&mut self, parts: &[&[u8]]) -> Result<(), ExchangeError> {
        self.out.write_all(&[RS])?;
        for part in parts {
            self.out.write_all(part)?;
            self.bytes += part.len() as u64;
        }
        self.out.write_all(&[LF])?;
        self.bytes += 2;
        Ok(())
    }
}

/// The trailer of this many ops with these ids.
pub(super) fn trailer(count: u64, ids: Sha256) -> String {
    let mut hex = String::with_capacity(64);
    for byte in ids.finalize() {
        let _ = write!(hex, "{byte:02x}");
    }
    format!(r#"{{"count":{count},"ids":"{hex}"}}"#)
}
