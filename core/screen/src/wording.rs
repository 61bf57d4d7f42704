//! Text by Fluent: every sentence of every screen is in `locales/`, and both shells show the same.

mod no_break;

pub(crate) use no_break::quantity;
pub use no_break::unbroken;

use crate::figures::trimmed;
use fluent::{FluentArgs, FluentResource, FluentValue};
use fluent_bundle::concurrent::FluentBundle;
use fluent_syntax::ast::{Pattern, PatternElement};
use std::sync::OnceLock;
use unic_langid::LanguageIdentifier;

/// Most messages are shorter than this, in bytes.
const USUAL_LENGTH: usize = 64;

/// The files of one language: the same for each. A file missing from a language's folder fails to compile.
macro_rules! files_of {
    ($tag:literal) => {
        files_of!($tag: "bank" "swim" "caution" "tackle" "waits" "match" "changes" "bench" "plan" "book" "club" "conditions"
            "error" "feed" "fish" "files" "mend" "phone" "refused" "screens" "seen" "shell" "report" "pad")
    };
    ($tag:literal: $($name:literal)*) => {
        Language {
            tag: $tag,
            read: OnceLock::new(),
            files: &[$(($name, include_str!(concat!("../../locales/", $tag, "/", $name, ".ftl")))),*],
        }
    };
}

/// A language: its tag, and its files by name.
struct Language {
    tag: &'static str,
    /// Its sentences, read when first asked for: to read a language takes longer than to draw a screen.
    read: OnceLock<Wording>,
    files: &'static [(&'static str, &'static str)],
}

/// What is shown where no other language is asked for, and what a message missing from another language falls back to.
static ENGLISH: Language = files_of!("en-GB");
/// The other languages. A language without a line here falls back to English as a whole.
static OTHERS: [Language; 2] = [files_of!("de-DE"), files_of!("fr-FR")];

/// The language that tags such as "nl, de-AT" ask for: the first that is here. Only the first part of a tag decides, since no
/// language is here twice.
fn asked_for(tags: &str) -> &'static Language {
    let first = |tag: &str| tag.trim().split(['-', '_']).next().unwrap_or_default().to_ascii_lowercase();
    let here = |tag: &str| {
        std::iter::once(&ENGLISH).chain(&OTHERS).find(|language| first(language.tag) == first(tag))
    };
    tags.split(',').find_map(here).unwrap_or(&ENGLISH)
}

/// The sentences of one language.
pub struct Wording {
    bundle: FluentBundle<FluentResource>,
    /// The decimal separator.
    decimal_mark: String,
    /// How texts are joined.
    joins: Joins,
}

impl Default for Wording {
    fn default() -> Self {
        Self::new()
    }
}

impl Wording {
    /// British English.
    pub fn new() -> Self {
        Self::with(&ENGLISH)
    }

    /// The first available language among these BCP 47 tags, separated by commas as in "nl, de-AT"; British English if none
    /// is available.
    pub fn shared(tags: &str) -> &'static Self {
        let language = asked_for(tags);
        language.read.get_or_init(|| Self::with(language))
    }

    /// A fault in a file costs the messages concerned, not the app; a test looks for faults.
    fn with(language: &Language) -> Self {
        // Plurals go by the rules of the language; of the root language should its tag ever be mistyped.
        let rules: LanguageIdentifier = language.tag.parse().unwrap_or_default();
        let mut bundle = FluentBundle::new_concurrent(vec![rules]);
        // No isolating marks: they show as boxes in some faces and break the alignment of digits.
        bundle.set_use_isolating(false);
        bundle.set_formatter(Some(whole_as_written));
        let beneath: &[(&str, &str)] = if language.tag == ENGLISH.tag { &[] } else { ENGLISH.files };
        for (_, text) in beneath.iter().chain(language.files) {
            let resource = match FluentResource::try_new(no_break::messages(text)) {
                Ok(resource) | Err((resource, _)) => resource,
            };
            bundle.add_resource_overriding(resource);
        }
        let mut wording = Self { bundle, decimal_mark: String::new(), joins: Joins::default() };
        wording.decimal_mark = wording.say("decimal-mark");
        wording.joins = Joins::of(|id, first, then| {
            wording.say_with(id, &[("first", Arg::Text(first)), ("then", Arg::Text(then))])
        });
        wording
    }

    /// A figure with at most this many decimals, without trailing zeros, as the language writes it: "9.5", "9,5".
    pub fn figure(&self, value: f64, decimals: usize) -> String {
        self.decimals(&trimmed(value, decimals))
    }

    /// A figure with just this many decimals, as the language writes it: "9.50", "9,50".
    pub fn decimal(&self, value: f64, decimals: usize) -> String {
        self.decimals(&format!("{value:.decimals$}"))
    }

    /// Figures that a domain wrote with a point, as in "1.250 kg", as the language writes them.
    pub fn decimals(&self, figures: &str) -> String {
        figures.replace('.', &self.decimal_mark)
    }

    /// The message without arguments.
    pub fn say(&self, id: &str) -> String {
        self.say_with(id, &[])
    }

    /// The message with its arguments; the id itself where there is no such message.
    pub fn say_with(&self, id: &str, args: &[(&str, Arg)]) -> String {
        let Some(pattern) = self.bundle.get_message(id).and_then(|m| m.value()) else { return id.to_owned() };
        if let Some(text) = without_placeables(pattern) {
            return text.to_owned();
        }
        let mut fluent = FluentArgs::with_capacity(args.len());
        for (name, value) in args {
            fluent.set(*name, value.to_fluent());
        }
        // Long enough for most: a screen says a hundred of them each second.
        let mut text = String::with_capacity(USUAL_LENGTH);
        let written = self.bundle.write_pattern(&mut text, pattern, Some(&fluent), &mut Vec::new());
        if written.is_ok() { text } else { id.to_owned() }
    }

    /// The message in every language: a name that was made from it stays in the log when another language is chosen.
    pub fn in_every_language(id: &str, args: &[(&str, Arg)]) -> Vec<String> {
        let all = std::iter::once(&ENGLISH).chain(&OTHERS);
        all.map(|language| Self::shared(language.tag).say_with(id, args)).collect()
    }

    pub(crate) fn joins(&self) -> &Joins {
        &self.joins
    }

    /// Whether there is such a message.
    pub fn has(&self, id: &str) -> bool {
        self.bundle.has_message(id)
    }
}

/// The text of a message that nothing is put into: most messages of a key are such, and need no arguments.
fn without_placeables<'a>(pattern: &'a Pattern<&str>) -> Option<&'a str> {
    match pattern.elements.as_slice() {
        [PatternElement::TextElement { value }] => Some(value),
        _ => None,
    }
}

/// What each language puts between two texts, taken from its messages once: a screen joins a hundred texts.
#[derive(Default)]
pub(crate) struct Joins {
    /// A label and its value.
    pub(crate) label: String,
    /// The parts of a line.
    pub(crate) list: String,
    /// Parts that have commas of their own.
    pub(crate) apart: String,
    /// Two sentences, the first without a mark at its end.
    pub(crate) sentences: String,
}

impl Joins {
    /// Those of a language. `say` gives the message of that id with the two texts in it; in each language the first comes first.
    pub(crate) fn of(say: impl Fn(&str, &str, &str) -> String) -> Self {
        let between = |id: &str| {
            let (first, then) = ("\u{1}", "\u{2}");
            say(id, first, then).trim_start_matches(first).trim_end_matches(then).to_owned()
        };
        Self {
            label: between("join-label"),
            list: between("join-list"),
            apart: between("join-apart"),
            sentences: between("join-sentences"),
        }
    }
}

/// An argument of a message.
#[derive(Debug, Clone, Copy)]
pub enum Arg<'a> {
    /// Text, put in as it is. A whole number chooses the plural also when it comes as text.
    Text(&'a str),
    /// A count: chooses the plural.
    Count(usize),
}

impl<'a> Arg<'a> {
    fn to_fluent(self) -> FluentValue<'a> {
        match self {
            Arg::Text(text) => whole_number(text).map_or_else(|| FluentValue::from(text), FluentValue::from),
            Arg::Count(count) => FluentValue::from(count),
        }
    }
}

/// A whole number as digits. The library would write it by way of a decimal fraction, which takes longer, and the Bank says many
/// of them each second.
fn whole_as_written<M>(value: &FluentValue, _: &M) -> Option<String> {
    match value {
        FluentValue::Number(number) if number.value == f64::from(number.value as u32) => {
            Some((number.value as u32).to_string())
        }
        _ => None,
    }
}

/// The number in a text of nothing but digits, if the number would be written the same way: "07" is a name.
fn whole_number(text: &str) -> Option<u32> {
    let digits = text.bytes().all(|b| b.is_ascii_digit()) && (text == "0" || !text.starts_with('0'));
    if digits { text.parse().ok() } else { None }
}

#[cfg(test)]
mod tests;
