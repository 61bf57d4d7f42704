//! Compares computed and expected values field by field, within the tolerance of the case.

use super::Topic;
use serde_json::Value;
use std::fmt;

/// One compared field.
pub struct Field {
    path: String,
    computed: String,
    /// Whether the figure that it is compared with is expected or printed.
    origin: &'static str,
    expected: String,
    tolerance: String,
    /// Whether they agree.
    pub ok: bool,
}

impl fmt::Display for Field {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mark = if self.ok { "" } else { "   <-- differs" };
        write!(
            f,
            "{}: computed {} {} {} ({}){mark}",
            self.path, self.computed, self.origin, self.expected, self.tolerance
        )
    }
}

/// How two figures at a path are compared: whether they agree, and by which tolerance.
type Judge<'a> = dyn Fn(&str, f64, f64) -> (bool, String) + 'a;

/// Compares every leaf of `expected`; a leaf missing from `computed` is a difference.
pub fn fields(topic: &Topic, computed: &Value, expected: &Value, tolerance: &Value) -> Vec<Field> {
    let mut out = Vec::new();
    let judge = |path: &str, c, e| within(topic, path, c, e, tolerance);
    walk(&judge, "expected", String::new(), Some(computed), expected, &mut out);
    out
}

/// Compares with every figure that the source prints. The difference may be one unit of the last printed digit, since the source
/// may have rounded intermediate results or truncated, plus the tolerance of the case.
pub fn printed(topic: &Topic, computed: &Value, published: &Value, tolerance: &Value) -> Vec<Field> {
    let mut out = Vec::new();
    let judge = |path: &str, c: f64, e: f64| {
        let unit = last_digit(e) * (1.0 + 1e-9);
        let nearer = if (c - e).abs() <= unit { e } else { c - unit.copysign(c - e) };
        let (ok, words) = within(topic, path, nearer, e, tolerance);
        (ok, format!("last digit {:e} and {words}", last_digit(e)))
    };
    walk(&judge, "printed", String::new(), Some(computed), published, &mut out);
    out
}

/// One unit of the last digit of a figure as it is written.
fn last_digit(figure: f64) -> f64 {
    let text = format!("{figure}");
    let decimals = text.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    10_f64.powf(-(decimals as f64))
}

fn walk(
    judge: &Judge,
    origin: &'static str,
    path: String,
    computed: Option<&Value>,
    expected: &Value,
    out: &mut Vec<Field>,
) {
    let join = |key: &str| if path.is_empty() { key.to_owned() } else { format!("{path}.{key}") };
    match expected {
        Value::Object(map) => {
            for (key, value) in map {
                walk(judge, origin, join(key), computed.and_then(|c| c.get(key)), value, out);
            }
        }
        Value::Array(items) => {
            let length = computed.and_then(Value::as_array).map_or(0, Vec::len);
            if length != items.len() {
                let found = computed.map_or("nothing".to_owned(), |_| format!("{length} values"));
                out.push(Field {
                    path,
                    computed: found,
                    origin,
                    expected: format!("{} values", items.len()),
                    tolerance: "same length".into(),
                    ok: false,
                });
                return;
            }
            for (i, value) in items.iter().enumerate() {
                walk(judge, origin, join(&i.to_string()), computed.and_then(|c| c.get(i)), value, out);
            }
        }
        leaf => out.push(compare_leaf(judge, origin, path, computed, leaf)),
    }
}

fn compare_leaf(
    judge: &Judge,
    origin: &'static str,
    path: String,
    computed: Option<&Value>,
    expected: &Value,
) -> Field {
    let show = |v: Option<&Value>| v.map_or("nothing".to_owned(), ToString::to_string);
    let (ok, tolerance) = match (computed.and_then(Value::as_f64), expected.as_f64()) {
        (Some(c), Some(e)) => judge(&path, c, e),
        _ => match (computed.and_then(clock_seconds), clock_seconds(expected)) {
            (Some(c), Some(e)) => judge(&path, c, e),
            _ => (computed == Some(expected), "exact".to_owned()),
        },
    };
    Field { path, computed: show(computed), origin, expected: expected.to_string(), tolerance, ok }
}

/// A time of day, "HH:MM:SS" with or without a fraction, in seconds since midnight.
fn clock_seconds(value: &Value) -> Option<f64> {
    let mut parts = value.as_str()?.split(':');
    let (h, m) = (parts.next()?.parse::<u32>().ok()?, parts.next()?.parse::<u32>().ok()?);
    let s = parts.next()?.parse::<f64>().ok()?;
    let fits = parts.next().is_none() && h < 24 && m < 60 && (0.0..60.0).contains(&s);
    fits.then_some(f64::from(h) * 3600.0 + f64::from(m) * 60.0 + s)
}

/// A named tolerance replaces the plain ones; if both `rel` and `abs` are given, meeting one is enough.
fn within(topic: &Topic, path: &str, computed: f64, expected: f64, tolerance: &Value) -> (bool, String) {
    let named = (topic.tolerance)(path).filter(|name| tolerance.get(name).is_some());
    let names: Vec<&str> = named.map_or_else(|| vec!["rel", "abs"], |name| vec![name]);
    let mut words = Vec::new();
    let mut ok = computed == expected;
    let difference = (computed - expected).abs();
    for name in names {
        let Some(limit) = tolerance.get(name).and_then(Value::as_f64) else { continue };
        words.push(format!("{name} {limit:e}"));
        ok |=
            if name.starts_with("rel") { difference <= limit * expected.abs() } else { difference <= limit };
    }
    let words = if words.is_empty() { "exact".to_owned() } else { words.join(" or ") };
    (ok, words)
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    const PLAIN: Topic =
        Topic { name: "t", compute: |_| Ok(Value::Null), tolerance: |p| (p == "cov").then_some("rel_cov") };

    fn agrees(computed: &Value, expected: &Value, tolerance: &Value) -> bool {
        fields(&PLAIN, computed, expected, tolerance).iter().all(|f| f.ok)
    }

    #[test]
    fn a_key_not_computed_is_a_difference() {
        assert!(!agrees(&json!({"a": 1.0}), &json!({"a": 1.0, "b": 2.0}), &json!({"rel": 1.0})));
    }

    #[test]
    fn relative_absolute_and_named_tolerances_apply() {
        assert!(agrees(&json!({"a": 1.01}), &json!({"a": 1.0}), &json!({"rel": 0.02})));
        assert!(!agrees(&json!({"a": 1.03}), &json!({"a": 1.0}), &json!({"rel": 0.02})));
        assert!(agrees(&json!({"a": 1.03}), &json!({"a": 1.0}), &json!({"rel": 0.02, "abs": 0.05})));
        assert!(agrees(&json!({"cov": 1.03}), &json!({"cov": 1.0}), &json!({"rel": 1e-9, "rel_cov": 0.05})));
    }

    #[test]
    fn null_and_text_must_be_the_same() {
        assert!(agrees(&json!({"a": null}), &json!({"a": null}), &json!({})));
        assert!(!agrees(&json!({"a": 0.0}), &json!({"a": null}), &json!({"rel": 1.0})));
        assert!(!agrees(&json!({"a": "x"}), &json!({"a": "y"}), &json!({})));
    }

    #[test]
    fn times_of_day_are_compared_as_seconds() {
        let computed = json!({"a": "06:12:44.30"});
        assert!(agrees(&computed, &json!({"a": "06:12:43.46"}), &json!({"abs": 1.0})));
        assert!(!agrees(&computed, &json!({"a": "06:12:43"}), &json!({"abs": 1.0})));
        assert!(!agrees(&computed, &json!({"a": "06:12"}), &json!({"abs": 1e9})));
    }

    #[test]
    fn a_printed_figure_is_compared_to_its_last_digit() {
        let agrees = |computed: f64| {
            let none = json!({"rel": 1e-12});
            printed(&PLAIN, &json!({"a": computed}), &json!({"a": 3.689}), &none).iter().all(|f| f.ok)
        };
        assert!(agrees(3.688_88) && agrees(3.690) && !agrees(3.687_9) && !agrees(3.690_1));
        assert!(printed(&PLAIN, &json!({}), &json!({"a": 1.0}), &json!({})).iter().any(|f| !f.ok));
    }

    #[test]
    fn lists_of_other_lengths_differ() {
        assert!(!agrees(&json!({"a": [1.0]}), &json!({"a": [1.0, 2.0]}), &json!({"rel": 1.0})));
    }
}
