//! Splits a JSON text sequence into records, in bounded memory.

use super::op_file::{LF, MAX_RECORD, RS};
use super::{ExchangeError, LooksLike};
use std::io::{BufRead, BufReader, Read};

/// One record of the file.
pub(super) struct Record<'a> {
    /// Its number; the header is 0.
    pub number: u64,
    /// Offset of its text in the file.
    pub byte: u64,
    /// Its text, without the record separator and the line feed; cut off if `too_long`.
    pub text: &'a [u8],
    /// Whether it ends with a line feed; without one it was cut off.
    pub ended: bool,
    /// Whether it is longer than a record may be.
    pub too_long: bool,
}

/// The records of a file.
pub(super) struct Records<R: Read> {
    input: BufReader<R>,
    text: Vec<u8>,
    at: u64,
    number: u64,
    /// Whether a record has begun that has not been returned yet.
    begun: bool,
}

impl<R: Read> Records<R> {
    /// Begins to read; returns an error if the file doesn't begin with a record.
    pub fn begin(input: R) -> Result<Self, ExchangeError> {
        let mut input = BufReader::with_capacity(1 << 16, input);
        let head = input.fill_buf()?;
        if head.first() != Some(&RS) {
            return Err(ExchangeError::NotOpFile(LooksLike::of(&head[..head.len().min(64)])));
        }
        input.consume(1);
        Ok(Self { input, text: Vec::new(), at: 1, number: 0, begun: true })
    }

    /// Bytes read so far.
    pub fn bytes(&self) -> u64 {
        self.at
    }

    /// The next record; `None` at the end of the file.
    pub fn next(&mut self) -> Result<Option<Record<'_>>, ExchangeError> {
        if !self.begun {
            return Ok(None);
        }
        self.begun = false;
        self.text.clear();
        let (byte, mut too_long) = (self.at, false);
        loop {
            let part = self.input.fill_buf()?;
            if part.is_empty() {
                break;
            }
            let end = memchr::memchr(RS, part);
            let text = &part[..end.unwrap_or(part.len())];
            let room = (MAX_RECORD + 1).saturating_sub(self.text.len());
            too_long |= text.len() > room;
            self.text.extend_from_slice(&text[..text.len().min(room)]);
            let used = text.len() + usize::from(end.is_some());
            self.input.consume(used);
            self.at += used as u64;
            if end.is_some() {
                self.begun = true;
                break;
            }
        }
        let number = self.number;
        self.number += 1;
        let ended = self.text.last() == Some(&LF);
        let text = self.text.strip_suffix(&[LF]).unwrap_or(&self.text);
        Ok(Some(Record { number, byte, text, ended, too_long }))
    }
}
