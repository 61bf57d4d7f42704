//! Checks whether bytes are canonical JSON (RFC 8785), in one pass and without building anything.
//!
//! It accepts only texts that the slow method (read strictly, write canonically, compare) accepts too; if it
//! refuses, the slow method finds the reason.

use super::strict::MAX_DEPTH;
use restwater_store::JSON_MAX;

/// Whether the text is one canonical JSON value, within the accepted depth and numbers.
pub(super) fn is_canonical(text: &str) -> bool {
    let mut scan = Scan { text, bytes: text.as_bytes(), at: 0 };
    scan.value(0).is_some() && scan.at == scan.bytes.len()
}

struct Scan<'a> {
    text: &'a str,
    bytes: &'a [u8],
    at: usize,
}

impl<'a> Scan<'a> {
    fn peek(&self) -> Option<u8> {
        self.bytes.get(self.at).copied()
    }

    fn take(&mut self, byte: u8) -> Option<()> {
        (self.peek()? == byte).then(|| self.at += 1)
    }

    fn value(&mut self, depth: usize) -> Option<()> {
        match self.peek()? {
            b'{' => self.object(depth + 1),
            b'[' => self.array(depth + 1),
            b'"' => self.string().map(drop),
            b't' => self.word("true"),
            b'f' => self.word("false"),
            b'n' => self.word("null"),
            _ => self.number(),
        }
    }

    fn word(&mut self, word: &str) -> Option<()> {
        self.text.get(self.at..)?.starts_with(word).then(|| self.at += word.len())
    }

    fn array(&mut self, depth: usize) -> Option<()> {
        self.open(depth)?;
        if self.take(b']').is_some() {
            return Some(());
        }
        loop {
            self.value(depth)?;
            if self.take(b']').is_some() {
                return Some(());
            }
            self.take(b',')?;
        }
    }

    fn object(&mut self, depth: usize) -> Option<()> {
        self.open(depth)?;
        if self.take(b'}').is_some() {
            return Some(());
        }
        let mut last: Option<&str> = None;
        loop {
            let key = self.string()?;
            // Keys with escapes, or beyond ASCII, where UTF-16 order isn't byte order, are left to the slow
            // method.
            if key.contains('\\') || !key.is_ascii() || last.is_some_and(|last| last >= key) {
                return None;
            }
            last = Some(key);
            self.take(b':')?;
            self.value(depth)?;
            if self.take(b'}').is_some() {
                return Some(());
            }
            self.take(b',')?;
        }
    }

    fn open(&mut self, depth: usize) -> Option<()> {
        self.at += 1;
        (depth <= MAX_DEPTH).then_some(())
    }

    /// The text between the quotes, unchanged.
    fn string(&mut self) -> Option<&'a str> {
        self.take(b'"')?;
        let from = self.at;
        loop {
            match self.peek()? {
                b'"' => break,
                b'\\' => self.escape()?,
                0..=0x1f => return None,
                _ => self.at += 1,
            }
        }
        let inside = self.text.get(from..self.at);
        self.at += 1;
        inside
    }

    /// An escape sequence: only those that are necessary are canonical, each in a single form.
    fn escape(&mut self) -> Option<()> {
        self.at += 1;
        match self.peek()? {
            b'"' | b'\\' | b'b' | b'f' | b'n' | b'r' | b't' => self.at += 1,
            b'u' => {
                let digits = self.text.get(self.at + 1..self.at + 5)?;
                let lower = digits.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'));
                let code = u32::from_str_radix(digits, 16).ok()?;
                if !lower || code > 0x1f || matches!(code, 0x8 | 0x9 | 0xa | 0xc | 0xd) {
                    return None;
                }
                self.at += 5;
            }
            _ => return None,
        }
        Some(())
    }

    /// A whole number; other numbers are rare and left to the slow method.
    fn number(&mut self) -> Option<()> {
        let from = self.at;
        let negative = self.take(b'-').is_some();
        let digits_from = self.at;
        let mut value: i64 = 0;
        while let Some(digit @ b'0'..=b'9') = self.peek() {
            value = value.checked_mul(10)?.checked_add(i64::from(digit - b'0'))?;
            self.at += 1;
        }
        let digits = self.at - digits_from;
        let leading_zero = self.bytes[digits_from..].first() == Some(&b'0') && (digits > 1 || negative);
        let goes_on = matches!(self.peek(), Some(b'.' | b'e' | b'E'));
        (digits > 0 && !leading_zero && !goes_on && value <= JSON_MAX && self.at > from).then_some(())
    }
}

#[cfg(test)]
mod tests {
    use super::super::strict::strict;
    use super::*;
    use proptest::prelude::*;

    /// The slow method.
    fn slow(text: &str) -> bool {
        strict(text.as_bytes())
            .is_ok_and(|value| serde_json_canonicalizer::to_vec(&value).is_ok_and(|b| b == text.as_bytes()))
    }

    #[test]
    fn canonical_by_hand() {
        for yes in
            [r#"{"a":[1,-2,0,true,null,"\u0001\n\"é🎣"],"b":{}}"#, "0", "\"\"", "[]", "9007199254740991"]
        {
            assert!(is_canonical(yes) && slow(yes), "{yes}");
        }
        for no in [
            r#"{"b":1,"a":1}"#,
            r#"{"a":1,"a":1}"#,
            " 1",
            "1 ",
            "[1, 2]",
            "-0",
            "01",
            "1.0",
            "1e2",
            r#""\u0041""#,
            r#""\u000a""#,
            r#""\/""#,
            r#""\u001F""#,
            "9007199254740992",
            "[1,]",
            "tru",
            "",
            "{",
            "\"\u{1}\"",
        ] {
            assert!(!is_canonical(no) && !slow(no), "{no}");
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(10_000))]
        #[test]
        fn it_accepts_only_what_the_slow_method_accepts(
            parts in proptest::collection::vec(prop_oneof![
                Just("{"), Just("}"), Just("["), Just("]"), Just(","), Just(":"), Just("\"a\""), Just("\"b\""), Just("1"),
                Just("-"), Just("0"), Just("\"\\u0001\""), Just("\"\\n\""), Just("\\"), Just("true"), Just(" "), Just("\"é\""),
            ], 0..12),
        ) {
            let text = parts.concat();
            prop_assert!(!is_canonical(&text) || slow(&text), "{}", text);
        }
    }
}
