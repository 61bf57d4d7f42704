//! A day file: taps with their times, one JSON object per line (`tests/README.md` describes it).
//!
//! The first line says which day it is, `{"day": "2026-01-17", "offset_min": 0}`; a later line of this form
//! begins a later day. Each other line has a local time `"at": "07:45:10"` and either a tap, `"do": "cast",
//! "rod": 1`, or `"picture": "name"`, or both. Empty lines and lines that begin with `#` are ignored.

use super::Action;
use chrono::{NaiveDate, NaiveTime};
use restwater_log::Moment;
use serde::Deserialize;
use serde_json::{Map, Value};

/// One line of a day.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct DayTap {
    /// When.
    pub at: Moment,
    /// What is tapped.
    pub action: Option<Action>,
    /// The picture to take after it.
    pub picture: Option<String>,
}

/// Why a day file can't be played.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("line {line}, column {column}: {why}")]
pub struct DayError {
    /// From 1.
    pub line: usize,
    /// From 1.
    pub column: usize,
    /// What is wrong and what is expected.
    pub why: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Head {
    day: NaiveDate,
    #[serde(default)]
    offset_min: i16,
    #[serde(default)]
    zone: String,
}

/// Reads a whole day, or says what is wrong with the first faulty line.
pub fn read_day(text: &str) -> Result<Vec<DayTap>, DayError> {
    let mut head: Option<Head> = None;
    let mut taps: Vec<DayTap> = Vec::new();
    for (number, line) in text.lines().enumerate() {
        let at_line = |column, why: String| DayError { line: number + 1, column, why };
        if line.trim().is_empty() || line.trim_start().starts_with('#') {
            continue;
        }
        if head.is_none() || line.contains("\"day\":") {
            let next: Head =
                serde_json::from_str(line).map_err(|e| at_line(e.column().max(1), e.to_string()))?;
            if head.as_ref().is_some_and(|before| next.day <= before.day) {
                return Err(at_line(
                    column_of(line, "day"),
                    "this day is no later than the one before".into(),
                ));
            }
            head = Some(next);
            continue;
        }
        let Some(head) = &head else { continue };
        let tap = tap(head, line).map_err(|(column, why)| at_line(column, why))?;
        if taps.last().is_some_and(|last| tap.at.wall_ms < last.at.wall_ms) {
            return Err(at_line(column_of(line, "at"), "this is earlier than the line before".into()));
        }
        taps.push(tap);
    }
    if taps.is_empty() {
        let why = "there is nothing to play: the first line names the day, the others have times and taps";
        return Err(DayError { line: text.lines().count().max(1), column: 1, why: why.into() });
    }
    Ok(taps)
}

fn tap(head: &Head, line: &str) -> Result<DayTap, (usize, String)> {
    let mut fields: Map<String, Value> =
        serde_json::from_str(line).map_err(|e| (e.column().max(1), e.to_string()))?;
    let at = match fields.remove("at") {
        Some(Value::String(text)) => moment(head, &text).map_err(|why| (column_of(line, "at"), why))?,
        _ => return Err((1, "there is no time: \"at\": \"hh:mm:ss\" is expected".into())),
    };
    let picture = match fields.remove("picture") {
        None => None,
        Some(Value::String(name)) if is_a_name(&name) => Some(name),
        Some(_) => {
            let why = "a picture's name is made of letters, digits and hyphens";
            return Err((column_of(line, "picture"), why.into()));
        }
    };
    if fields.is_empty() {
        let nothing = picture.is_none();
        return if nothing {
            Err((1, "there is nothing to do on this line".into()))
        } else {
            Ok(DayTap { at, action: None, picture })
        };
    }
    let action =
        serde_json::from_value(Value::Object(fields)).map_err(|e| (column_of(line, "do"), e.to_string()))?;
    Ok(DayTap { at, action: Some(action), picture })
}

fn is_a_name(name: &str) -> bool {
    (1..=60).contains(&name.len()) && name.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'-')
}

/// The phone of a day file was booted at midnight.
fn moment(head: &Head, text: &str) -> Result<Moment, String> {
    let time = NaiveTime::parse_from_str(text, "%H:%M:%S%.f")
        .map_err(|e| format!("\"{text}\" is no time hh:mm:ss: {e}"))?;
    let mono_ms = time.signed_duration_since(NaiveTime::MIN).num_milliseconds();
    let local = head.day.and_time(time).and_utc().timestamp_millis();
    Ok(Moment {
        wall_ms: local - i64::from(head.offset_min) * 60_000,
        offset_min: head.offset_min,
        zone: head.zone.clone(),
        mono_ms,
        boot: head.day.to_string(),
        approx_s: 0,
    })
}

/// The column of a field in its line, from 1.
fn column_of(line: &str, field: &str) -> usize {
    line.find(&format!("\"{field}\"")).map_or(1, |byte| byte + 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    const HEAD: &str = "{\"day\": \"2026-01-17\", \"offset_min\": 60}\n";

    fn wrong(rest: &str) -> (usize, usize) {
        let error = read_day(&format!("{HEAD}{rest}")).unwrap_err();
        (error.line, error.column)
    }

    #[test]
    fn times_are_local_and_taps_are_actions() {
        let day = format!(
            "{HEAD}\n# dawn\n{{\"at\": \"07:45:10\", \"do\": \"cast\", \"rod\": 1, \"picture\": \"first\"}}"
        );
        let taps = read_day(&day).unwrap();
        assert_eq!(taps[0].action, Some(Action::Cast { rod: 1 }));
        assert_eq!(taps[0].picture.as_deref(), Some("first"));
        assert_eq!(taps[0].at.mono_ms, ((7 * 60 + 45) * 60 + 10) * 1_000);
        assert_eq!(taps[0].at.wall_ms, 1_768_632_310_000, "2026-01-17T06:45:10Z, by the date command");
    }

    #[test]
    fn several_days_follow_one_another() {
        let tap = "{\"at\": \"07:00:00\", \"do\": \"undo\"}\n";
        let taps = read_day(&format!("{HEAD}{tap}{{\"day\": \"2026-01-24\"}}\n{tap}")).unwrap();
        assert_eq!(taps[1].at.wall_ms - taps[0].at.wall_ms, (7 * 24 + 1) * 3_600_000, "another offset too");
        assert_ne!(taps[0].at.boot, taps[1].at.boot, "the phone slept at home");
    }

    #[test]
    fn a_wrong_line_is_named_by_line_and_column() {
        assert_eq!(wrong("{\"at\": \"07:00:00\", \"do\": \"cats\", \"rod\": 1}"), (2, 20));
        assert_eq!(wrong("{\"at\": \"27:00:00\", \"do\": \"undo\"}"), (2, 2));
        assert_eq!(wrong("{\"at\": \"07:00:00\", \"do\": \"cast\", \"rod\": 1, \"colour\": 2}"), (2, 20));
        assert_eq!(wrong("{\"at\": \"07:00:00\"}"), (2, 1));
        assert_eq!(
            wrong("{\"at\": \"07:00:00\", \"do\": \"undo\"}\n{\"at\": \"06:00:00\", \"do\": \"undo\"}"),
            (3, 2)
        );
        assert_eq!(wrong("{\"at\": \"07:00:00\" \"do\"}").0, 2);
        assert_eq!(wrong("{\"at\": \"07:00:00\", \"picture\": \"../up\"}"), (2, 20));
        assert_eq!(wrong("{\"day\": \"2026-01-17\"}"), (2, 2), "a second day must be a later one");
        assert_eq!(read_day("").unwrap_err().line, 1);
    }
}
