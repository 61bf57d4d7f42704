//! Writes files atomically: they are complete or not there at all.

use super::ExchangeError;
use restwater_store::sync_directory;
use std::fs::{self, File};
use std::io::{BufWriter, Write};
use std::path::Path;

/// How many bytes are buffered before they are written.
const BUFFER: usize = 1 << 16;

/// Writes a file under another name and renames it once it is on stable storage; if that fails nothing is
/// left behind.
pub fn write_atomically<T>(
    path: &Path,
    write: impl FnOnce(&mut BufWriter<File>) -> Result<T, ExchangeError>,
) -> Result<T, ExchangeError> {
    let mut name = path.file_name().unwrap_or_default().to_owned();
    name.push(".part");
    let part = path.with_file_name(name);
    let made = make(path, &part, write);
    made.inspect_err(|_| {
        let _ = fs::remove_file(&part);
    })
}

fn make<T>(
    path: &Path,
    part: &Path,
    write: impl FnOnce(&mut BufWriter<File>) -> Result<T, ExchangeError>,
) -> Result<T, ExchangeError> {
    let mut out = BufWriter::with_capacity(BUFFER, File::create(part)?);
    let done = write(&mut out)?;
    out.flush()?;
    out.get_ref().sync_all()?;
    fs::rename(part, path)?;
    sync_directory(path.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or(Path::new(".")))?;
    Ok(done)
}
