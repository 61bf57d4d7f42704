//! One namespace for the records of all crates.
//!
//! A record derives its bindings in the crate that owns it, and uniffi makes every crate a namespace: a
//! Kotlin package, a Swift file and a C header, each with a copy of the runtime. Only the metadata connects a
//! record to its crate, since no function of the library depends on where a record was declared. So the
//! crate's name is replaced in a copy of the metadata.

use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;

use anyhow::{Context, Result, bail, ensure};
use goblin::elf::Elf;
use uniffi_bindgen::macro_metadata::extract_from_bytes;
use uniffi_meta::Metadata;

/// A copy of the library with the moved metadata, for generating from.
pub struct Moved {
    pub library: Vec<u8>,
    pub checksums: Vec<Checksum>,
}

/// The checksum of a function before and after the move. The generated code would expect the one after it,
/// but the compiled library has the one before it.
pub struct Checksum {
    symbol: String,
    generated: u16,
    compiled: u16,
}

impl Checksum {
    /// The generated source with the checksum of the compiled library.
    pub fn restored(&self, source: &str) -> Result<String> {
        let call = format!("{}()", self.symbol);
        let mut lines = source.lines().filter(|line| line.contains(&call) && line.contains(" != "));
        let line = lines.next().with_context(|| format!("nothing compares the checksum of {call}"))?;
        ensure!(lines.next().is_none(), "the checksum of {call} is compared twice");
        let generated = format!(" != {})", self.generated);
        ensure!(line.contains(&generated), "not the checksum that was expected: {line}");
        let restored = line.replace(&generated, &format!(" != {})", self.compiled));
        Ok(source.replacen(line, &restored, 1))
    }
}

/// Moves everything of other crates in the library's metadata into the namespace of the crate `home`.
pub fn moved(library: &[u8], home: &str) -> Result<Moved> {
    let before = extract_from_bytes(library)?;
    let others = others(&before, home)?;
    let mut copy = library.to_vec();
    for place in places(library)? {
        let item = replaced(&library[place.clone()], home, &others);
        ensure!(item.len() <= place.len(), "the name of every crate must be at least as long as {home}");
        copy[place.start..][..item.len()].copy_from_slice(&item);
    }
    let after = extract_from_bytes(&copy)?;
    compare(&before, &after, home, &others)?;
    let checksums = before.iter().zip(&after).filter_map(|(before, after)| checksum(before, after)).collect();
    Ok(Moved { library: copy, checksums })
}

/// The other crates. They may only contain types, whose names must be unique over all crates.
fn others(items: &[Metadata], home: &str) -> Result<BTreeSet<String>> {
    let mut owners: BTreeMap<&str, &str> = BTreeMap::new();
    let mut others = BTreeSet::new();
    for item in items {
        let owner = crate_of(item.module_path());
        if owner != home {
            others.insert(owner.to_owned());
        }
        let name = match item {
            Metadata::Record(record) => &record.name,
            Metadata::Enum(one) => &one.name,
            Metadata::CustomType(custom) => &custom.name,
            Metadata::Object(object) if owner == home => &object.name,
            Metadata::Namespace(_) => continue,
            _ if owner == home => continue,
            other => bail!("{owner} exports more than types, which only {home} may: {other:?}"),
        };
        if let Some(first) = owners.insert(name, owner) {
            bail!(
                "both {first} and {owner} have a type {name}: rename one, since all types share one namespace"
            );
        }
    }
    Ok(others)
}

fn crate_of(module_path: &str) -> &str {
    module_path.split("::").next().unwrap_or(module_path)
}

/// The byte ranges of the metadata in the library file.
fn places(library: &[u8]) -> Result<Vec<Range<usize>>> {
    let elf = Elf::parse(library).context("the library must be one of Linux (ELF)")?;
    let mut places = BTreeMap::new();
    for symbol in &elf.syms {
        if !elf.strtab.get_at(symbol.st_name).is_some_and(|name| name.starts_with("UNIFFI_META")) {
            continue;
        }
        let section =
            elf.section_headers.get(symbol.st_shndx).context("a metadata symbol without a section")?;
        let start = usize::try_from(section.sh_offset + (symbol.st_value - section.sh_addr))?;
        let place = start..start + usize::try_from(symbol.st_size)?;
        ensure!(place.end <= library.len(), "a metadata symbol outside of the file");
        places.insert(start, place);
    }
    Ok(places.into_values().collect())
}

/// One item of metadata with `home` in place of every module path of another crate. A string is written as
/// its length, in one byte, and its letters.
fn replaced(item: &[u8], home: &str, others: &BTreeSet<String>) -> Vec<u8> {
    let mut out = Vec::with_capacity(item.len());
    let mut rest = item;
    while let Some((&length, tail)) = rest.split_first() {
        let path = tail.get(..usize::from(length)).filter(|letters| is_path_of(letters, others));
        if let Some(path) = path {
            out.extend(u8::try_from(home.len()));
            out.extend(home.as_bytes());
            rest = &tail[path.len()..];
        } else {
            out.push(length);
            rest = tail;
        }
    }
    out
}

fn is_path_of(letters: &[u8], crates: &BTreeSet<String>) -> bool {
    let of_a_path = |b: &u8| b.is_ascii_alphanumeric() || matches!(b, b'_' | b':');
    letters.iter().all(of_a_path) && str::from_utf8(letters).is_ok_and(|path| crates.contains(crate_of(path)))
}

/// Checks that the move changed only module paths, and checksums because of them.
fn compare(before: &[Metadata], after: &[Metadata], home: &str, others: &BTreeSet<String>) -> Result<()> {
    ensure!(before.len() == after.len(), "{} items of metadata became {}", before.len(), after.len());
    for (before, after) in before.iter().zip(after) {
        let (said, found) = (said_of(before), said_of(after));
        let expected: Vec<&str> = said
            .split('"')
            .map(|part| if is_path_of(part.as_bytes(), others) { home } else { part })
            .collect();
        ensure!(expected.join("\"") == found, "the move changed more than module paths: {found}");
    }
    Ok(())
}

/// An item without its checksum.
fn said_of(item: &Metadata) -> String {
    let mut item = item.clone();
    match &mut item {
        Metadata::Func(function) => function.checksum = None,
        Metadata::Constructor(constructor) => constructor.checksum = None,
        Metadata::Method(method) => method.checksum = None,
        _ => (),
    }
    format!("{item:?}")
}

fn checksum(before: &Metadata, after: &Metadata) -> Option<Checksum> {
    let (symbol, generated, compiled) = match (before, after) {
        (Metadata::Func(before), Metadata::Func(after)) => {
            (after.checksum_symbol_name(), after.checksum, before.checksum)
        }
        (Metadata::Constructor(before), Metadata::Constructor(after)) => {
            (after.checksum_symbol_name(), after.checksum, before.checksum)
        }
        (Metadata::Method(before), Metadata::Method(after)) => {
            (after.checksum_symbol_name(), after.checksum, before.checksum)
        }
        _ => return None,
    };
    Some(Checksum { symbol, generated: generated?, compiled: compiled? })
}

#[cfg(test)]
mod tests {
    use super::*;
    use uniffi_meta::{FnMetadata, NamespaceMetadata, RecordMetadata};

    fn record(crate_name: &str, name: &str) -> Metadata {
        Metadata::Record(RecordMetadata {
            module_path: crate_name.into(),
            name: name.into(),
            orig_name: None,
            remote: false,
            fields: vec![],
            docstring: None,
        })
    }

    fn function(crate_name: &str) -> Metadata {
        Metadata::Func(FnMetadata {
            module_path: crate_name.into(),
            name: "cast".into(),
            orig_name: None,
            is_async: false,
            inputs: vec![],
            return_type: None,
            throws: None,
            checksum: Some(1),
            docstring: None,
        })
    }

    #[test]
    fn two_types_of_one_name_are_refused() {
        let items = [record("water_log", "Cast"), record("water", "Rod"), record("water_screen", "Cast")];
        let refused = others(&items, "water").unwrap_err().to_string();
        assert_eq!(
            refused,
            "both water_log and water_screen have a type Cast: rename one, since all types share one namespace"
        );
    }

    #[test]
    fn only_home_exports_functions() {
        let namespace = Metadata::Namespace(NamespaceMetadata {
            crate_name: "water_log".into(),
            name: "water_log".into(),
        });
        let crates = others(&[function("water"), record("water_log", "Cast"), namespace], "water").unwrap();
        assert_eq!(crates, BTreeSet::from(["water_log".into()]));
        let refused = others(&[function("water_log")], "water").unwrap_err().to_string();
        assert!(refused.starts_with("water_log exports more than types, which only water may"), "{refused}");
    }

    #[test]
    fn module_paths_are_replaced_and_other_strings_are_not() {
        let crates = BTreeSet::from(["water_log".to_owned()]);
        let item = b"\x02\x09water_log\x04Cast\x0ewater_log::out\x0dwater_logs::ab\x00\x0c\x00 water_log ok";
        assert_eq!(
            replaced(item, "water", &crates),
            b"\x02\x05water\x04Cast\x05water\x0dwater_logs::ab\x00\x0c\x00 water_log ok"
        );
    }

    #[test]
    fn a_checksum_is_restored_in_both_languages_or_refused() {
        let checksum = Checksum { symbol: "sum_of_cast".into(), generated: 12, compiled: 345 };
        let kotlin = "fun sum_of_cast(): Int\nif ((lib.sum_of_cast() and 0xFFFF) != 12) {\n";
        assert_eq!(checksum.restored(kotlin).unwrap(), kotlin.replace("!= 12)", "!= 345)"));
        let swift = "if (sum_of_cast() != 12) {\n";
        assert_eq!(checksum.restored(swift).unwrap(), "if (sum_of_cast() != 345) {\n");
        assert!(checksum.restored("if (sum_of_cast() != 13) {\n").is_err());
        assert!(checksum.restored("sum_of_cast()\n").is_err());
    }
}
