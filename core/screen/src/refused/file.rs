//! What is wrong with a record of a file: its place and the reason. What a parser said is left out: it is in English.

use super::Refused;
use crate::{Arg, Wording};
use restwater_exchange::{Fault, FaultKind};

impl Refused for Fault {
    fn said(&self, words: &Wording) -> String {
        let (record, byte) = (self.record.to_string(), self.byte.to_string());
        let what = self.kind.said(words);
        let args = [("record", Arg::Text(&record)), ("byte", Arg::Text(&byte)), ("what", Arg::Text(&what))];
        words.say_with("fault-at", &args)
    }
}

impl Refused for FaultKind {
    fn said(&self, words: &Wording) -> String {
        words.say(match self {
            Self::NotUtf8 => "fault-utf8",
            Self::NotJson(_) => "fault-json",
            Self::DuplicateKey(key) => return words.say_with("fault-key-twice", &[("key", Arg::Text(key))]),
            Self::LoneSurrogate => "fault-surrogate",
            Self::TooDeep => "fault-too-deep",
            Self::TooLong => "fault-too-long",
            Self::NumberOutOfRange => "fault-number",
            Self::NotCanonical => "fault-form",
            Self::WrongHash => "fault-hash",
            Self::NotARecord => "fault-no-record",
            Self::NotAnOp(_) => "fault-no-entry",
            Self::ClockAbsurd => "fault-clock",
            Self::Cut => "fault-cut",
            Self::AfterEnd => "fault-after-end",
            Self::Clash(_) => "fault-clash",
        })
    }
}
