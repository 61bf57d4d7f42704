//! Reads an op from its canonical text in one pass: every entry of a log, and nearly every entry of a file, is in this form.

use super::canonical::{CanonicalError, op_of_any_form, payload_of};
use super::canonical_form::Scan;
use super::{Moment, Op};
use uuid::Uuid;

/// Reads an op from its JSON; kinds of later versions come back as [`Payload::Unknown`](super::Payload::Unknown).
pub fn op_from_bytes(bytes: &[u8]) -> Result<Op, CanonicalError> {
    match std::str::from_utf8(bytes).ok().and_then(op_from_canonical) {
        Some(op) => Ok(op),
        None => op_of_any_form(bytes),
    }
}

/// The op of a text in canonical form. `None` for any other text, and for a few that are canonical but unusual, such as
/// with a field of a later version: [`op_from_bytes`] reads those.
pub fn op_from_canonical(text: &str) -> Option<Op> {
    let mut scan = Scan::new(text);
    scan.take("{")?;
    let amends = if scan.takes(r#""amends":"#) { Some(id_and_comma(&mut scan)?) } else { None };
    scan.take(r#""at":"#)?;
    let at = moment(&mut scan)?;
    scan.take(r#","device":"#)?;
    let device = id(&mut scan)?;
    let group = if scan.takes(r#","group":"#) { Some(id(&mut scan)?) } else { None };
    scan.take(r#","hlc":"#)?;
    let hlc = scan.string_of(22)?.parse().ok()?;
    scan.take(r#","id":"#)?;
    let own = id(&mut scan)?;
    scan.take(r#","kind":"#)?;
    let kind = scan.plain_string()?;
    let payload = if scan.takes(r#","payload":"#) { Some(scan.value(1)?) } else { None };
    scan.take(r#","session":"#)?;
    let session = id(&mut scan)?;
    scan.take("}")?;
    if !scan.is_at_end() || payload == Some("null") {
        return None;
    }
    Some(Op { id: own, device, hlc, at, session, payload: payload_of(kind, payload).ok()?, amends, group })
}

fn moment(scan: &mut Scan<'_>) -> Option<Moment> {
    scan.take("{")?;
    let approx_s = if scan.takes(r#""approx":"#) {
        let seconds = u32::try_from(scan.whole()?).ok()?;
        scan.take(",")?;
        seconds
    } else {
        0
    };
    scan.take(r#""boot":"#)?;
    let boot = scan.plain_string()?.to_owned();
    scan.take(r#","mono":"#)?;
    let mono_ms = scan.whole()?;
    scan.take(r#","offset":"#)?;
    let offset_min = i16::try_from(scan.whole()?).ok()?;
    scan.take(r#","wall":"#)?;
    let wall_ms = scan.whole()?;
    scan.take(r#","zone":"#)?;
    let zone = scan.plain_string()?.to_owned();
    scan.take("}")?;
    Some(Moment { wall_ms, offset_min, zone, mono_ms, boot, approx_s })
}

fn id(scan: &mut Scan<'_>) -> Option<Uuid> {
    Uuid::try_parse(scan.string_of(36)?).ok()
}

fn id_and_comma(scan: &mut Scan<'_>) -> Option<Uuid> {
    let id = id(scan)?;
    scan.take(",").map(|()| id)
}

#[cfg(test)]
mod tests {
    use super::super::testing::{amending, cast, id as some_id, op};
    use super::super::{Payload, canonical_bytes};
    use super::*;
    use proptest::prelude::*;
    use serde_json::Value;

    fn text_of(op: &Op) -> String {
        String::from_utf8(canonical_bytes(op).unwrap()).unwrap()
    }

    /// Ops of which each is written in another way.
    fn examples() -> Vec<Op> {
        let later = |payload| Payload::Unknown { kind: "thermocline_felt".into(), payload };
        let approximate = op(7, Payload::SessionEnded);
        vec![
            cast(1),
            amending(2, 1, Payload::TimeSet { back_s: 60 }),
            Op { group: Some(some_id(3)), ..op(3, Payload::Bite { rod: 2 }) },
            Op { group: Some(some_id(3)), ..amending(4, 3, Payload::Lost { rod: 2 }) },
            op(5, Payload::Noted { text: "wind \"west\", 2 °C\n= ice, é, 🎣, \u{1}".into() }),
            op(6, later(Some(serde_json::json!({"deep": [1, 2.5, {"of": null}], "a": 0.001})))),
            op(6, later(None)),
            op(6, later(Some(Value::Null))),
            Op { at: Moment { approx_s: 30, wall_ms: -5, ..approximate.at.clone() }, ..approximate },
        ]
    }

    /// What two public libraries, serde_json and serde_json_canonicalizer, say of a text.
    fn is_canonical(text: &str) -> bool {
        serde_json::from_str::<Value>(text)
            .is_ok_and(|value| serde_json_canonicalizer::to_vec(&value).is_ok_and(|b| b == text.as_bytes()))
    }

    /// An op of a later version with this payload.
    fn with_payload(payload: &str) -> String {
        let op = text_of(&op(1, Payload::Unknown { kind: "later".into(), payload: Some(Value::from(777)) }));
        op.replace(r#""payload":777"#, &format!(r#""payload":{payload}"#))
    }

    #[test]
    fn what_is_written_is_read_in_one_pass() {
        for op in examples() {
            let text = text_of(&op);
            let null = matches!(&op.payload, Payload::Unknown { payload: Some(Value::Null), .. });
            assert_eq!(op_from_canonical(&text).as_ref(), Some(&op).filter(|_| !null), "{text}");
        }
    }

    #[test]
    fn canonical_by_hand() {
        for yes in [
            r#"{"a":[1,-2,0,true,null,"\u0001\n\"é🎣"],"b":{}}"#,
            "0",
            "\"\"",
            "[]",
            "9007199254740991",
            "0.5",
            "1.5e-7",
        ] {
            let text = with_payload(yes);
            assert!(op_from_canonical(&text).is_some() && is_canonical(&text), "{yes}");
        }
        for no in [
            r#"{"b":1,"a":1}"#,
            r#"{"a":1,"a":1}"#,
            " 1",
            "1 ",
            "[1, 2]",
            "-0",
            "-0.0",
            "01",
            "1.0",
            "1e2",
            "1e+300",
            "1.",
            "1.5.5",
            "9007199254740992",
            r#""\u0041""#,
            r#""\u000a""#,
            r#""\/""#,
            r#""\u001F""#,
            "[1,]",
            "tru",
            "",
            "{",
            "\"\u{1}\"",
        ] {
            assert!(op_from_canonical(&with_payload(no)).is_none(), "{no}");
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(20_000))]
        #[test]
        fn what_is_read_of_a_changed_text_is_canonical_and_read_alike_by_the_slow_method(
            which in 0_usize..9, at in 0_usize..400, removed in 0_usize..3, added in "[\\x20-\\x7e]{0,2}",
        ) {
            let mut text = text_of(&examples()[which]);
            let at = text.floor_char_boundary(at.min(text.len()));
            let end = text.ceil_char_boundary((at + removed).min(text.len()));
            text.replace_range(at..end, &added);
            if let Some(op) = op_from_canonical(&text) {
                prop_assert!(is_canonical(&text), "{}", text);
                prop_assert_eq!(Some(op), op_of_any_form(text.as_bytes()).ok());
            }
        }
    }
}
