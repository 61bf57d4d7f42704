//! The record of a screen as lines that a person can review, and the changes since an earlier one.
//!
//! A record has every choice with the action it sends, and every point of a curve: thousands of lines, of
//! which a change affects a few. So each value is a line with its place in the record, the choices of a row
//! share one line, long lists of numbers are thinned, and in a series of records only the first one is
//! complete.

use serde::Serialize;
use serde_json::{Map, Value};
use std::collections::BTreeMap;
use std::fmt::Write as _;

/// An object shorter than this is on one line.
const WIDTH: usize = 220;
/// A longer list of numbers is thinned to about this many.
const NUMBERS: usize = 10;

/// Every value of a record, by its place: `rows[2].label`.
pub fn lines(record: &impl Serialize) -> Result<BTreeMap<Place, String>, serde_json::Error> {
    let mut lines = BTreeMap::new();
    walk(&serde_json::to_value(record)?, Place::default(), &mut lines);
    Ok(lines)
}

/// The whole record.
pub fn whole(record: &impl Serialize) -> Result<String, serde_json::Error> {
    Ok(lines(record)?.into_iter().fold(String::new(), |mut text, (place, line)| {
        let _ = writeln!(text, "{place}: {line}");
        text
    }))
}

/// The whole of the first record of a series, or what changed since the previous one.
pub fn since<T: Serialize>(before: Option<&T>, record: &T) -> Result<String, serde_json::Error> {
    before.map_or_else(|| whole(record), |before| changes(before, record))
}

/// The differences of `after` from `before`.
pub fn changes(before: &impl Serialize, after: &impl Serialize) -> Result<String, serde_json::Error> {
    let (before, after) = (lines(before)?, lines(after)?);
    let places: std::collections::BTreeSet<&Place> = before.keys().chain(after.keys()).collect();
    let mut text = String::new();
    for place in places {
        let _ = match (before.get(place), after.get(place)) {
            (Some(was), Some(is)) if was == is => Ok(()),
            (Some(was), Some(is)) if was.len() + is.len() < WIDTH => {
                writeln!(text, "{place}: {is}   (was {was})")
            }
            (_, Some(is)) => writeln!(text, "{place}: {is}"),
            (_, None) => writeln!(text, "{place}: gone"),
        };
    }
    Ok(text)
}

/// The names and numbers that lead to a value. Ordered in reading order: the tenth of a list comes after the
/// second.
#[derive(Debug, Clone, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Place(Vec<Step>);

#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
enum Step {
    At(usize),
    Of(String),
}

impl Place {
    fn then(&self, step: Step) -> Self {
        Self(self.0.iter().cloned().chain([step]).collect())
    }
}

impl std::fmt::Display for Place {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        for (i, step) in self.0.iter().enumerate() {
            match step {
                Step::At(at) => write!(f, "[{at}]")?,
                Step::Of(name) if i == 0 => f.write_str(name)?,
                Step::Of(name) => write!(f, ".{name}")?,
            }
        }
        Ok(())
    }
}

fn walk(value: &Value, place: Place, lines: &mut BTreeMap<Place, String>) {
    match value {
        Value::Array(list) if choices(list).is_some() => {
            lines.insert(place, choices(list).unwrap_or_default());
        }
        Value::Array(list) if list.iter().all(Value::is_number) => {
            lines.insert(place, numbers(list));
        }
        Value::Array(list) if short(value).is_none() => {
            list.iter().enumerate().for_each(|(i, value)| walk(value, place.then(Step::At(i)), lines));
        }
        Value::Object(map) if short(value).is_none() => {
            map.iter().for_each(|(name, value)| walk(value, place.then(Step::Of(name.clone())), lines));
        }
        Value::Null => (),
        _ => {
            lines.insert(place, compact(value));
        }
    }
}

/// A small object or list on one line; one that contains a list is split, so that a change in it is alone.
fn short(value: &Value) -> Option<String> {
    let text = compact(value);
    (text.len() <= WIDTH).then_some(text)
}

/// A list of choices on one line: label and tag, a star for the chosen one, and the actions of the first and
/// the last.
fn choices(list: &[Value]) -> Option<String> {
    let choices: Vec<&Map<String, Value>> = list.iter().map(Value::as_object).collect::<Option<_>>()?;
    let of = |choice: &Map<String, Value>| {
        let [label, tag] = ["label", "tag"].map(|name| choice.get(name).and_then(Value::as_str));
        let star = if choice.get("chosen").and_then(Value::as_bool)? { "*" } else { "" };
        Some(format!("{} [{}]{star}", label?, tag?))
    };
    let words: Vec<String> = choices.iter().map(|choice| of(choice)).collect::<Option<_>>()?;
    let sends = |choice: Option<&&Map<String, Value>>| choice.and_then(|c| c.get("action")).map(compact);
    let (first, last) = (sends(choices.first())?, sends(choices.last())?);
    Some(format!("{}; the first sends {first}, the last {last}", words.join(" | ")))
}

/// A list of numbers, thinned if it is long; its sum still reflects each of them.
fn numbers(list: &[Value]) -> String {
    let each = list.len().div_ceil(NUMBERS).max(1);
    let shown: Vec<String> = list.iter().step_by(each).map(compact).collect();
    if each == 1 {
        return format!("[{}]", shown.join(", "));
    }
    let sum: f64 = list.iter().filter_map(Value::as_f64).sum();
    format!("{} numbers, sum {}, each {each}th: {}", list.len(), rounded(sum), shown.join(", "))
}

fn compact(value: &Value) -> String {
    match value {
        Value::String(text) => text.replace('\n', " ⏎ "),
        Value::Number(number) if number.is_f64() => rounded(number.as_f64().unwrap_or(f64::NAN)),
        Value::Array(list) => format!("[{}]", list.iter().map(compact).collect::<Vec<_>>().join(", ")),
        Value::Object(map) => {
            let said = map.iter().filter(|(_, value)| !value.is_null());
            let said: Vec<String> = said.map(|(name, value)| format!("{name} {}", compact(value))).collect();
            format!("{{{}}}", said.join(", "))
        }
        other => other.to_string(),
    }
}

/// Four significant figures: more say nothing about a screen.
fn rounded(number: f64) -> String {
    let text = format!("{number:.3e}");
    text.parse::<f64>().map_or(text, |n| n.to_string())
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn a_record_is_a_line_for_each_value_and_one_for_the_choices_of_a_row() {
        let long = "x".repeat(WIDTH);
        let choice = |tag: &str, chosen: bool| json!({"label": tag.to_uppercase(), "tag": tag, "chosen": chosen, "action": {"do": tag}});
        let record = json!({"title": long, "rows": [{"tag": long, "choices": [choice("a", false), choice("b", true)]}],
            "curve": (0..40).collect::<Vec<_>>(), "none": null, "third": 1.0 / 3.0});
        let text = whole(&record).unwrap();
        assert_eq!(
            text,
            format!(
                "curve: 40 numbers, sum 780, each 4th: 0, 4, 8, 12, 16, 20, 24, 28, 32, 36\n\
                 rows[0].choices: A [a] | B [b]*; the first sends {{do a}}, the last {{do b}}\n\
                 rows[0].tag: {long}\nthird: 0.3333\ntitle: {long}\n"
            )
        );
    }

    #[test]
    fn every_snapshot_can_be_read_in_one_go() {
        let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/whole_app/snapshots");
        let mut read = 0;
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            let lines = std::fs::read_to_string(&path).unwrap().lines().count();
            assert!(lines <= 200, "{}: {lines} lines", path.display());
            read += 1;
        }
        assert!(read > 20, "{read} snapshots");
    }

    #[test]
    fn only_changes_are_shown() {
        let (before, after) =
            (json!({"a": 1, "b": [1, 2], "c": "x"}), json!({"a": 1, "b": [1, 3], "d": "y"}));
        let wide = |value: &Value| json!({"long": "x".repeat(WIDTH), "of": value});
        assert_eq!(changes(&wide(&before), &wide(&before)).unwrap(), "");
        assert_eq!(
            changes(&wide(&before), &wide(&after)).unwrap(),
            "of: {a 1, b [1, 3], d y}   (was {a 1, b [1, 2], c x})\n"
        );
    }
}
