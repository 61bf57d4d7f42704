//! JSON read strictly: no key twice, no number beyond 2^53, bounded depth (RFC 8259, RFC 7493 I-JSON).

use super::FaultKind;
use restwater_log::{JSON_MAX, MAX_DEPTH};
use serde::de::{DeserializeSeed, Deserializer, Error, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Value};
use std::cell::Cell;
use std::fmt;

/// The value, or the fault and its byte.
pub(super) fn strict(bytes: &[u8]) -> Result<Value, (usize, FaultKind)> {
    let text = std::str::from_utf8(bytes).map_err(|e| (e.valid_up_to(), FaultKind::NotUtf8))?;
    let found = Cell::new(None);
    let mut reader = serde_json::Deserializer::from_str(text);
    let value = Strict { depth: 0, found: &found }.deserialize(&mut reader);
    value
        .and_then(|value| reader.end().map(|()| value))
        .map_err(|e| (byte_of(text, &e), found.take().unwrap_or_else(|| kind_of(&e))))
}

/// Converts serde_json's line and column to a byte offset.
fn byte_of(text: &str, error: &serde_json::Error) -> usize {
    let before: usize = text.split_inclusive('\n').take(error.line().saturating_sub(1)).map(str::len).sum();
    (before + error.column().saturating_sub(1)).min(text.len())
}

fn kind_of(error: &serde_json::Error) -> FaultKind {
    let text = error.to_string();
    if text.contains("surrogate") || text.contains("unexpected end of hex escape") {
        FaultKind::LoneSurrogate
    } else if text.contains("number out of range") {
        FaultKind::NumberOutOfRange
    } else if text.contains("recursion limit") {
        FaultKind::TooDeep
    } else {
        FaultKind::NotJson(text.chars().take(120).collect())
    }
}

#[derive(Clone, Copy)]
struct Strict<'a> {
    depth: usize,
    found: &'a Cell<Option<FaultKind>>,
}

impl Strict<'_> {
    fn fail<T, E: Error>(self, kind: FaultKind) -> Result<T, E> {
        let error = E::custom(&kind);
        self.found.set(Some(kind));
        Err(error)
    }

    fn deeper<E: Error>(self) -> Result<Self, E> {
        if self.depth >= MAX_DEPTH {
            return self.fail(FaultKind::TooDeep);
        }
        Ok(Self { depth: self.depth + 1, ..self })
    }
}

impl<'de> DeserializeSeed<'de> for Strict<'_> {
    type Value = Value;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Value, D::Error> {
        deserializer.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Strict<'_> {
    type Value = Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("JSON")
    }

    fn visit_unit<E: Error>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }

    fn visit_bool<E: Error>(self, value: bool) -> Result<Value, E> {
        Ok(Value::Bool(value))
    }

    fn visit_i64<E: Error>(self, value: i64) -> Result<Value, E> {
        if value < -JSON_MAX { self.fail(FaultKind::NumberOutOfRange) } else { Ok(Value::from(value)) }
    }

    fn visit_u64<E: Error>(self, value: u64) -> Result<Value, E> {
        if value > JSON_MAX as u64 { self.fail(FaultKind::NumberOutOfRange) } else { Ok(Value::from(value)) }
    }

    fn visit_f64<E: Error>(self, value: f64) -> Result<Value, E> {
        if value.abs() > JSON_MAX as f64 {
            self.fail(FaultKind::NumberOutOfRange)
        } else {
            Ok(Value::from(value))
        }
    }

    fn visit_str<E: Error>(self, value: &str) -> Result<Value, E> {
        Ok(Value::from(value))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut seq: A) -> Result<Value, A::Error> {
        let inner = self.deeper()?;
        let mut values = Vec::new();
        while let Some(value) = seq.next_element_seed(inner)? {
            values.push(value);
        }
        Ok(Value::Array(values))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Value, A::Error> {
        let inner = self.deeper()?;
        let mut values = Map::new();
        while let Some(key) = map.next_key::<String>()? {
            if values.contains_key(&key) {
                return self.fail(FaultKind::DuplicateKey(key.chars().take(60).collect()));
            }
            values.insert(key, map.next_value_seed(inner)?);
        }
        Ok(Value::Object(values))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use restwater_log::op_from_canonical;

    #[test]
    fn ambiguities_of_json_are_refused_by_name() {
        let deep = "[".repeat(MAX_DEPTH + 1) + &"]".repeat(MAX_DEPTH + 1);
        let cases: [(&[u8], FaultKind); 9] = [
            (br#"{"a":1,"a":1}"#, FaultKind::DuplicateKey("a".into())),
            (b"\"\xff\"", FaultKind::NotUtf8),
            (br#""\ud800""#, FaultKind::LoneSurrogate),
            (br#""\udc00""#, FaultKind::LoneSurrogate),
            (b"9007199254740992", FaultKind::NumberOutOfRange),
            (b"-9007199254740992", FaultKind::NumberOutOfRange),
            (b"1e400", FaultKind::NumberOutOfRange),
            (b"123456789012345678901234567890", FaultKind::NumberOutOfRange),
            (deep.as_bytes(), FaultKind::TooDeep),
        ];
        for (bytes, kind) in cases {
            assert_eq!(strict(bytes).unwrap_err().1, kind, "{}", String::from_utf8_lossy(bytes));
        }
        assert!(matches!(strict(b"{\"a\":1}x"), Err((7, FaultKind::NotJson(_)))));
        assert_eq!(strict(b"[9007199254740991]").unwrap(), serde_json::json!([9_007_199_254_740_991_i64]));
    }
    proptest! {
        #![proptest_config(ProptestConfig::with_cases(10_000))]
        #[test]
        fn what_is_read_in_one_pass_is_strict_and_canonical(
            parts in proptest::collection::vec(prop_oneof![
                Just("{"), Just("}"), Just("["), Just("]"), Just(","), Just(":"), Just("\"a\""), Just("\"b\""), Just("1"),
                Just("-"), Just("0"), Just(".5"), Just("e-7"), Just("\"\\u0001\""), Just("\"\\n\""), Just("\\"), Just("true"),
                Just(" "), Just("\"é\""),
            ], 1..12),
        ) {
            let text = format!(
                r#"{{"at":{{"boot":"b","mono":1,"offset":60,"wall":5,"zone":"Etc/UTC"}},"device":"{0}","hlc":"{1}","id":"{0}","kind":"later","payload":{2},"session":"{0}"}}"#,
                "00000000-0000-0000-0000-000000000008", "000000000000005-000000", parts.concat(),
            );
            if op_from_canonical(&text).is_some() {
                let written = strict(text.as_bytes()).map(|value| serde_json_canonicalizer::to_vec(&value).unwrap());
                prop_assert_eq!(written.ok(), Some(text.into_bytes()));
            }
        }
    }
}
