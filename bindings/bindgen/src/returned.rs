//! Reduces the Kotlin of types that the library only returns and never receives.
//!
//! uniffi's Kotlin can read and write every type, and because writing is a virtual function, R8 keeps it in
//! the app even if nothing calls it. Screens are only read, so the code that would write them is removed.

use std::collections::{BTreeMap, BTreeSet};

use anyhow::{Context, Result};

const HEAD: &str = "public object FfiConverter";
const WRITTEN: [&str; 2] = ["    override fun allocationSize(", "    override fun write("];

/// The base of converters of such types, in place of `FfiConverterRustBuffer`.
const ONLY_READ: &str = "
/**
 * Of a type that the library returns and never takes.
 *
 * @suppress
 */
public interface FfiConverterOnlyRead<KotlinType>: FfiConverterRustBuffer<KotlinType> {
    override fun allocationSize(value: KotlinType): ULong = onlyRead()
    override fun write(value: KotlinType, buf: ByteBuffer): Unit = onlyRead()
}

private fun onlyRead(): Nothing = throw UnsupportedOperationException(\"the library takes no such value\")
";

/// The generated Kotlin without the code that writes types which are never passed to the library.
pub fn without_writing(kotlin: &str) -> Result<String> {
    let taken = taken(kotlin);
    let mut out = String::with_capacity(kotlin.len());
    let mut inside: Option<(bool, bool)> = None; // of a converter: are its types only read, is a function of it left out
    for line in kotlin.split_inclusive('\n') {
        if let Some(name) = converter(line) {
            let only_read = line.contains(": FfiConverterRustBuffer<") && !taken.contains(name);
            inside = Some((only_read, false));
            out.push_str(&if only_read { line.replacen("RustBuffer<", "OnlyRead<", 1) } else { line.into() });
            continue;
        }
        if let Some((true, left_out)) = &mut inside {
            if line.starts_with("    override fun ") {
                *left_out = WRITTEN.iter().any(|function| line.starts_with(function));
            }
            if *left_out && !line.starts_with('}') {
                continue;
            }
        }
        if line.starts_with('}') {
            inside = None;
        }
        out.push_str(line);
    }
    let start = out
        .find("public interface FfiConverterRustBuffer<")
        .context("no FfiConverterRustBuffer in the Kotlin")?;
    let end =
        start + out[start..].find("\n}\n").context("FfiConverterRustBuffer does not end")? + "\n}\n".len();
    out.insert_str(end, ONLY_READ);
    Ok(out)
}

/// The name of the converter whose code begins with this line.
fn converter(line: &str) -> Option<&str> {
    line.strip_prefix(HEAD)?.split(|c: char| !c.is_alphanumeric()).next()
}

/// The converters that pass values to the library: those that lower a value, and those that write a part of it.
fn taken(kotlin: &str) -> BTreeSet<&str> {
    let mut parts: BTreeMap<&str, BTreeSet<&str>> = BTreeMap::new();
    let mut inside = None;
    for line in kotlin.lines() {
        if let Some(name) = converter(line) {
            inside = Some(name);
        } else if line.starts_with('}') {
            inside = None;
        } else if let Some(name) = inside {
            parts.entry(name).or_default().extend(called(line, ".write("));
        }
    }
    let mut taken: BTreeSet<&str> =
        [".lower(", ".lowerIntoRustBuffer("].iter().flat_map(|call| called(kotlin, call)).collect();
    let mut new: Vec<&str> = taken.iter().copied().collect();
    while let Some(name) = new.pop() {
        for part in parts.get(name).into_iter().flatten() {
            if taken.insert(part) {
                new.push(part);
            }
        }
    }
    taken
}

/// The names of the converters on which a function is called.
fn called<'a>(kotlin: &'a str, call: &str) -> impl Iterator<Item = &'a str> {
    kotlin.match_indices(call).filter_map(|(at, _)| {
        let before = &kotlin[..at];
        let start = before.rfind(|c: char| !c.is_alphanumeric()).map_or(0, |at| at + 1);
        before[start..].strip_prefix("FfiConverter")
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const KOTLIN: &str = "\
public interface FfiConverterRustBuffer<KotlinType>: FfiConverter<KotlinType, RustBuffer.ByValue> {
    override fun lower(value: KotlinType) = lowerIntoRustBuffer(value)
}
fun tap(action: Action) = call(FfiConverterTypeAction.lower(action))
public object FfiConverterTypeAction: FfiConverterRustBuffer<Action> {
    override fun read(buf: ByteBuffer) = Action(FfiConverterOptionalTypeRod.read(buf))

    override fun write(value: Action, buf: ByteBuffer) {
        FfiConverterOptionalTypeRod.write(value.rod, buf)
    }
}
public object FfiConverterOptionalTypeRod: FfiConverterRustBuffer<Rod?> {
    override fun write(value: Rod?, buf: ByteBuffer) {
        FfiConverterTypeRod.write(value, buf)
    }
}
public object FfiConverterTypeRod: FfiConverterRustBuffer<Rod> {
    override fun write(value: Rod, buf: ByteBuffer) {}
}
public object FfiConverterTypeScreen : FfiConverterRustBuffer<Screen>{
    override fun allocationSize(value: Screen): ULong = when(value) {
        is Screen.Bank -> 4UL
    }

    override fun write(value: Screen, buf: ByteBuffer) {
        FfiConverterTypeAction.write(value.action, buf)
    }

    override fun read(buf: ByteBuffer): Screen {
        return Screen()
    }
}
";

    #[test]
    fn types_passed_to_the_library_keep_their_writing_including_all_parts() {
        assert_eq!(taken(KOTLIN), BTreeSet::from(["TypeAction", "OptionalTypeRod", "TypeRod"]));
        let (passed, _) = KOTLIN.split_at(KOTLIN.find("public object FfiConverterTypeScreen").unwrap());
        assert_eq!(without_writing(passed).unwrap().replace(ONLY_READ, ""), passed);
    }

    #[test]
    fn types_that_are_only_returned_keep_only_their_reading() {
        let kotlin = without_writing(KOTLIN).unwrap();
        let screen = "\
public object FfiConverterTypeScreen : FfiConverterOnlyRead<Screen>{
    override fun read(buf: ByteBuffer): Screen {
        return Screen()
    }
}
";
        assert!(kotlin.ends_with(screen), "{kotlin}");
        assert_eq!(kotlin.matches(ONLY_READ).count(), 1);
    }
}
