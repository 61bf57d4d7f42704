//! Plans as the oracle reads them: for each day the latest entry of each line, in the order of the log.

use super::check::{Broken, broken};
use super::oracle::{Entry, Oracle};
use serde_json::Value;
use std::collections::BTreeMap;

/// Which line it is: the kind, and which peg or rod. A peg is the same peg however it is written.
fn line_of(line: &Value) -> String {
    let peg = line["peg"].as_str().unwrap_or_default().trim().to_lowercase();
    format!("{} {peg} {}", line["line"], line["rod"])
}

/// The plan of a kit for a day, each line as text.
fn planned(oracle: &Oracle, kit: &str, day: &Value) -> Vec<String> {
    let ordered = oracle.ordered(Some(kit));
    let void = Oracle::void(&ordered);
    let mut lines: BTreeMap<String, String> = BTreeMap::new();
    for entry in ordered.iter().filter(|entry| !void.contains(&entry.id) && entry.payload["day"] == *day) {
        let line = &entry.payload["line"];
        match entry.kind.as_str() {
            "plan_set" => drop(lines.insert(line_of(line), line.to_string())),
            "plan_cleared" => drop(lines.remove(&line_of(line))),
            _ => {}
        }
    }
    let mut lines: Vec<String> = lines.into_values().collect();
    lines.sort();
    lines
}

/// A session takes over the current plan from a kit that this phone wrote in: its own, or one that two phones
/// share.
pub fn taken(oracle: &Oracle, new: &[Entry]) -> Result<(), Broken> {
    for entry in new.iter().filter(|entry| entry.kind == "plan_taken") {
        let mut lines: Vec<String> =
            entry.payload["lines"].as_array().into_iter().flatten().map(Value::to_string).collect();
        lines.sort();
        let written = |kit: &&str| {
            oracle.log.values().any(|other| other.session == **kit && other.device == entry.device)
        };
        let found = oracle.kits().into_iter().filter(written);
        if lines.is_empty()
            || !found.into_iter().any(|kit| planned(oracle, kit, &entry.payload["day"]) == lines)
        {
            let why = format!("{} took up {lines:?}", entry.id);
            return broken("a session adopts the present plan, and never a partner's", why);
        }
    }
    Ok(())
}
