//! Reads canonical JSON (RFC 8785) in one pass and without building anything.
//!
//! It accepts only what a strict reader and a canonical writer would give back unchanged. What it refuses may still be
//! canonical: the slow method decides that, and finds the reason.

/// The largest whole number that JSON carries exactly everywhere (RFC 8259, section 6).
pub const JSON_MAX: i64 = (1 << 53) - 1;

/// Deepest nesting of arrays and objects taken from a file; ops of this version use 5.
pub const MAX_DEPTH: usize = 24;

/// A place in a text.
pub(super) struct Scan<'a> {
    text: &'a str,
    bytes: &'a [u8],
    at: usize,
}

impl<'a> Scan<'a> {
    pub(super) fn new(text: &'a str) -> Self {
        Self { text, bytes: text.as_bytes(), at: 0 }
    }

    pub(super) fn is_at_end(&self) -> bool {
        self.at == self.bytes.len()
    }

    /// Whether exactly this text is next, which is then passed over.
    pub(super) fn takes(&mut self, text: &str) -> bool {
        let found = self.bytes.get(self.at..).is_some_and(|rest| rest.starts_with(text.as_bytes()));
        self.at += if found { text.len() } else { 0 };
        found
    }

    pub(super) fn take(&mut self, text: &str) -> Option<()> {
        self.takes(text).then_some(())
    }

    /// The text of a string without escapes that is known to have this length.
    pub(super) fn string_of(&mut self, length: usize) -> Option<&'a str> {
        self.take("\"")?;
        let inside = self.text.get(self.at..self.at + length)?;
        self.at += length;
        self.take("\"")?;
        Some(inside)
    }

    /// The text of a string without escapes.
    pub(super) fn plain_string(&mut self) -> Option<&'a str> {
        self.string().filter(|text| !text.contains('\\'))
    }

    /// A value as it is written, in an object or an array of this depth.
    pub(super) fn value(&mut self, depth: usize) -> Option<&'a str> {
        let from = self.at;
        match self.peek()? {
            b'{' => self.object(depth + 1)?,
            b'[' => self.array(depth + 1)?,
            b'"' => self.string().map(drop)?,
            b't' => self.take("true")?,
            b'f' => self.take("false")?,
            b'n' => self.take("null")?,
            _ => self.number()?,
        }
        self.text.get(from..self.at)
    }

    /// A whole number.
    pub(super) fn whole(&mut self) -> Option<i64> {
        let negative = self.takes("-");
        let from = self.at;
        let mut value: i64 = 0;
        while let Some(digit @ b'0'..=b'9') = self.peek() {
            value = value.checked_mul(10)?.checked_add(i64::from(digit - b'0'))?;
            self.at += 1;
        }
        let digits = self.at - from;
        let leading_zero = self.bytes.get(from) == Some(&b'0') && (digits > 1 || negative);
        (digits > 0 && !leading_zero && value <= JSON_MAX).then_some(if negative { -value } else { value })
    }

    fn peek(&self) -> Option<u8> {
        self.bytes.get(self.at).copied()
    }

    fn array(&mut self, depth: usize) -> Option<()> {
        self.open(depth)?;
        if self.takes("]") {
            return Some(());
        }
        loop {
            self.value(depth)?;
            if self.takes("]") {
                return Some(());
            }
            self.take(",")?;
        }
    }

    fn object(&mut self, depth: usize) -> Option<()> {
        self.open(depth)?;
        if self.takes("}") {
            return Some(());
        }
        let mut last: Option<&str> = None;
        loop {
            // Keys with escapes, or beyond ASCII, where UTF-16 order isn't byte order, are left to the slow
            // method.
            let key = self.plain_string().filter(|key| key.is_ascii())?;
            if last.is_some_and(|last| last >= key) {
                return None;
            }
            last = Some(key);
            self.take(":")?;
            self.value(depth)?;
            if self.takes("}") {
                return Some(());
            }
            self.take(",")?;
        }
    }

    fn open(&mut self, depth: usize) -> Option<()> {
        self.at += 1;
        (depth <= MAX_DEPTH).then_some(())
    }

    /// The text between the quotes, unchanged.
    fn string(&mut self) -> Option<&'a str> {
        self.take("\"")?;
        let from = self.at;
        loop {
            let special = |byte: &u8| matches!(byte, b'"' | b'\\' | 0..=0x1f);
            self.at += self.bytes.get(self.at..)?.iter().position(special)?;
            match self.peek()? {
                b'"' => break,
                b'\\' => self.escape()?,
                _ => return None,
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

    /// Any number. Those that aren't whole are rare: they are written again and compared.
    fn number(&mut self) -> Option<()> {
        let from = self.at;
        self.whole()?;
        if !matches!(self.peek(), Some(b'.' | b'e' | b'E')) {
            return Some(());
        }
        let of_a_number = |byte: &u8| matches!(byte, b'0'..=b'9' | b'.' | b'e' | b'E' | b'+' | b'-');
        self.at += self.bytes.get(self.at..)?.iter().take_while(|byte| of_a_number(byte)).count();
        let text = self.text.get(from..self.at)?;
        let value: f64 = serde_json::from_str(text).ok()?;
        let written = serde_json_canonicalizer::to_vec(&value).ok()?;
        (written == text.as_bytes() && value.abs() <= JSON_MAX as f64).then_some(())
    }
}
