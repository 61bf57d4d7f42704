//! The bindings generator, pinned to the same uniffi as the library.
//!
//! `restwater-bindgen LIBRARY OUT` reads the metadata in the library's symbols and writes OUT/kotlin and
//! OUT/swift. Before uniffi generates, every record is moved into the namespace of the bindings crate
//! ([`namespace`]). Generated Kotlin that nothing can call is removed ([`returned`]).

#![cfg_attr(test, allow(clippy::unwrap_used))]

mod namespace;
mod returned;

use std::env;
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, bail, ensure};
use namespace::{Checksum, Moved};
use uniffi_bindgen::bindings::{GenerateOptions, TargetLanguage, generate};

/// The crate whose functions and objects are exported.
const HOME: &str = "restwater";

fn main() -> Result<()> {
    let arguments: Vec<String> = env::args().skip(1).collect();
    let [library, out] = arguments.as_slice() else {
        bail!("restwater-bindgen LIBRARY OUT");
    };
    let read = fs::read(library).with_context(|| format!("reading {library}"))?;
    let Moved { library, checksums } = namespace::moved(&read, HOME)?;
    fs::create_dir_all(out)?;
    // uniffi generates Kotlin only from a file.
    let copy = format!("{out}/lib{HOME}.so");
    fs::write(&copy, library)?;
    let kotlin = generated(TargetLanguage::Kotlin, &copy, &format!("{out}/kotlin"))?;
    let swift = generated(TargetLanguage::Swift, &copy, &format!("{out}/swift"))?;
    fs::remove_file(copy)?;
    change(&kotlin, |text| returned::without_writing(&restored(text, &checksums)?))?;
    change(&swift, |text| restored(text, &checksums))
}

/// Generates the bindings in a language and finds their one source file.
fn generated(language: TargetLanguage, library: &str, folder: &str) -> Result<PathBuf> {
    generate(GenerateOptions {
        languages: vec![language],
        source: library.into(),
        out_dir: folder.into(),
        metadata_no_deps: true,
        ..GenerateOptions::default()
    })?;
    the_source_in(Path::new(folder))
}

fn change(path: &Path, changed: impl Fn(&str) -> Result<String>) -> Result<()> {
    let text = changed(&fs::read_to_string(path)?).with_context(|| format!("in {}", path.display()))?;
    fs::write(path, text)?;
    Ok(())
}

/// The generated code compares the checksum of each function with the library's, which was compiled before the move.
fn restored(text: &str, checksums: &[Checksum]) -> Result<String> {
    checksums.iter().try_fold(text.to_owned(), |text, checksum| checksum.restored(&text))
}

/// The one file of Kotlin or Swift below a folder.
fn the_source_in(folder: &Path) -> Result<PathBuf> {
    let mut sources = vec![];
    let mut folders = vec![folder.to_path_buf()];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder)? {
            let path = entry?.path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|e| e == "kt" || e == "swift") {
                sources.push(path);
            }
        }
    }
    ensure!(sources.len() == 1, "one namespace makes one file, and these were generated: {sources:?}");
    Ok(sources.remove(0))
}
