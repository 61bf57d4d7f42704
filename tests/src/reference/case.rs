//! Reading the inputs of a check case.

use restwater_waits::Wait;
use serde_json::{Value, json};

/// A number of the case's input.
pub fn number(case: &Value, key: &str) -> Result<f64, String> {
    case["input"][key].as_f64().ok_or_else(|| format!("input {key} is not a number"))
}

/// A list of numbers.
pub fn numbers(value: &Value, key: &str) -> Result<Vec<f64>, String> {
    let list = value[key].as_array().ok_or_else(|| format!("{key} is not a list"))?;
    list.iter().map(|v| v.as_f64().ok_or_else(|| format!("{key} holds {v}, not a number"))).collect()
}

/// A text of the case's input.
pub fn text<'a>(case: &'a Value, key: &str) -> Result<&'a str, String> {
    case["input"][key].as_str().ok_or_else(|| format!("input {key} is not a text"))
}

/// The waits of inputs `time` and `event`.
pub fn waits(case: &Value) -> Result<Vec<Wait>, String> {
    let times = numbers(&case["input"], "time")?;
    let events = numbers(&case["input"], "event")?;
    if times.len() != events.len() {
        return Err("time and event differ in length".into());
    }
    times.iter().zip(events).map(|(&t, e)| Wait::new(t, e != 0.0).map_err(|e| e.to_string())).collect()
}

/// A number, or null if it is undefined or infinite.
pub fn or_null(value: Option<f64>) -> Value {
    value.filter(|v| v.is_finite()).map_or(Value::Null, |v| json!(v))
}
