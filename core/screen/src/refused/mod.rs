//! What the domains refuse, as a sentence in the user's language. The domains know no words of a screen: their errors
//! name a case and its figures, and each case has a message here, so that a case without one doesn't compile.

mod bench;
mod file;
mod match_day;
mod water;

use crate::{Arg, Wording};
use restwater_bench::units::LineLength;

/// A refusal that can be shown.
pub trait Refused {
    /// The sentence: what can't be done or used, and what to do next.
    fn said(&self, words: &Wording) -> String;
}

/// The message of a case with what it names.
fn say(words: &Wording, case: &str, args: &[(&str, &str)]) -> String {
    let args: Vec<(&str, Arg)> = args.iter().map(|(name, text)| (*name, Arg::Text(text))).collect();
    words.say_with(&format!("refused-{case}"), &args)
}

/// A figure as the language writes it, with at most three decimals and the minus sign of print.
fn figure(words: &Wording, value: f64) -> String {
    words.figure(value, 3).replace('-', "−")
}

fn length(words: &Wording, length: LineLength) -> String {
    words.decimals(&length.to_string())
}

#[cfg(test)]
mod tests;
