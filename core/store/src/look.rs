//! Examines a file before it is opened: reads at most its first page, and writes nothing.
//!
//! SQLite file format, section 1.3 "The Database Header" (sqlite.org/fileformat2.html): 16 bytes of
//! magic, page size at 16, user version at 60, application id at 68, all big-endian.

use super::StoreError;
use super::schema::{APPLICATION_ID, KNOWN_VERSION};
use std::fs::{self, File};
use std::io::Read;
use std::path::Path;

const MAGIC: &[u8; 16] = b"SQLite format 3\0";
const HEADER_LEN: usize = 100;

/// What is in the place of the store.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Found {
    /// Nothing, or an empty file: a store can be created.
    Nothing,
    /// A store of a version known here, as far as its header tells.
    Store,
}

/// Examines the file without changing anything. Errors: foreign, newer, damaged, read-only.
pub(super) fn look(file: &Path) -> Result<Found, StoreError> {
    let found = look_only(file)?;
    if let Ok(meta) = fs::metadata(file) {
        writable(file, &meta)?;
    }
    Ok(found)
}

/// The same for a file that will only be read.
pub(super) fn look_only(file: &Path) -> Result<Found, StoreError> {
    let meta = match fs::metadata(file) {
        Ok(meta) => meta,
        Err(e) if e.kind() == std::io::ErrorKind::NotFound => return Ok(Found::Nothing),
        Err(e) => return Err(StoreError::from_io(e)),
    };
    let name = || file.file_name().map_or_else(String::new, |n| n.to_string_lossy().into_owned());
    if !meta.is_file() {
        return Err(StoreError::Foreign(name()));
    }
    if meta.len() == 0 {
        return Ok(Found::Nothing);
    }
    let mut head = Vec::with_capacity(HEADER_LEN);
    File::open(file)
        .and_then(|f| f.take(HEADER_LEN as u64).read_to_end(&mut head))
        .map_err(StoreError::from_io)?;
    header(&head, &name())?;
    Ok(Found::Store)
}

/// Judges the first bytes of a file.
fn header(head: &[u8], name: &str) -> Result<(), StoreError> {
    if !head.starts_with(MAGIC) {
        return Err(StoreError::Foreign(name.to_owned()));
    }
    let (Some(version), Some(application)) = (word(head, 60), word(head, 68)) else {
        return Err(StoreError::Damaged("the file ends within its header".into()));
    };
    if application != APPLICATION_ID {
        return Err(StoreError::Foreign(name.to_owned()));
    }
    if version > KNOWN_VERSION {
        return Err(StoreError::Newer { found: version, known: KNOWN_VERSION });
    }
    Ok(())
}

fn word(head: &[u8], at: usize) -> Option<u32> {
    let bytes = head.get(at..at + 4)?;
    bytes.try_into().ok().map(u32::from_be_bytes)
}

fn writable(file: &Path, meta: &fs::Metadata) -> Result<(), StoreError> {
    if meta.permissions().readonly() {
        return Err(StoreError::ReadOnly(file.to_string_lossy().into_owned()));
    }
    Ok(())
}

/// Creates the directory if it is missing; returns an error if it can't be written.
pub(super) fn directory(dir: &Path) -> Result<(), StoreError> {
    if !dir.is_dir() {
        fs::create_dir_all(dir).map_err(StoreError::from_io)?;
    }
    let meta = fs::metadata(dir).map_err(StoreError::from_io)?;
    writable(dir, &meta)
}
