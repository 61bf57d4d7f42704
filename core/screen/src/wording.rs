//! Text by Fluent: every sentence of every screen stands in `locales/`, and both shells show the same.

use fluent::{FluentArgs, FluentResource, FluentValue};
use fluent_bundle::concurrent::FluentBundle;
use std::borrow::Cow;
use unic_langid::LanguageIdentifier;

/// The files of the one language there is so far.
const EN_GB: &[(&str, &str)] = &[
    ("bank", include_str!("../../locales/en-GB/bank.ftl")),
    ("swim", include_str!("../../locales/en-GB/swim.ftl")),
    ("caution", include_str!("../../locales/en-GB/caution.ftl")),
    ("tackle", include_str!("../../locales/en-GB/tackle.ftl")),
    ("waits", include_str!("../../locales/en-GB/waits.ftl")),
    ("match", include_str!("../../locales/en-GB/match.ftl")),
    ("changes", include_str!("../../locales/en-GB/changes.ftl")),
    ("bench", include_str!("../../locales/en-GB/bench.ftl")),
    ("book", include_str!("../../locales/en-GB/book.ftl")),
    ("conditions", include_str!("../../locales/en-GB/conditions.ftl")),
    ("doors", include_str!("../../locales/en-GB/doors.ftl")),
    ("error", include_str!("../../locales/en-GB/error.ftl")),
    ("feed", include_str!("../../locales/en-GB/feed.ftl")),
    ("fish", include_str!("../../locales/en-GB/fish.ftl")),
    ("files", include_str!("../../locales/en-GB/files.ftl")),
    ("mend", include_str!("../../locales/en-GB/mend.ftl")),
    ("phone", include_str!("../../locales/en-GB/phone.ftl")),
    ("seen", include_str!("../../locales/en-GB/seen.ftl")),
    ("shell", include_str!("../../locales/en-GB/shell.ftl")),
    ("report", include_str!("../../locales/en-GB/report.ftl")),
    ("pad", include_str!("../../locales/en-GB/pad.ftl")),
];

/// The language whose plural rules apply; the root language should the tag ever be mistyped.
fn english() -> LanguageIdentifier {
    "en-GB".parse().unwrap_or_default()
}

/// The sentences of one language.
pub struct Wording {
    bundle: FluentBundle<FluentResource>,
}

impl Default for Wording {
    fn default() -> Self {
        Self::new()
    }
}

impl Wording {
    /// British English. A fault in a file costs the messages concerned, not the app; a test looks for faults.
    pub fn new() -> Self {
        let mut bundle = FluentBundle::new_concurrent(vec![english()]);
        // No isolating marks: they show as boxes in some faces and break the alignment of digits.
        bundle.set_use_isolating(false);
        for (_, text) in EN_GB {
            let resource = match FluentResource::try_new((*text).to_owned()) {
                Ok(resource) | Err((resource, _)) => resource,
            };
            bundle.add_resource_overriding(resource);
        }
        Self { bundle }
    }

    /// The message without arguments.
    pub fn say(&self, id: &str) -> String {
        self.say_with(id, &[])
    }

    /// The message with its arguments; the id itself where there is no such message.
    pub fn say_with(&self, id: &str, args: &[(&str, Arg)]) -> String {
        let Some(pattern) = self.bundle.get_message(id).and_then(|m| m.value()) else { return id.to_owned() };
        let mut fluent = FluentArgs::with_capacity(args.len());
        for (name, value) in args {
            fluent.set(*name, value.to_fluent());
        }
        let text = self.bundle.format_pattern(pattern, Some(&fluent), &mut Vec::new());
        match text {
            Cow::Borrowed(text) => text.to_owned(),
            Cow::Owned(text) => text,
        }
    }

    /// Whether there is such a message.
    pub fn has(&self, id: &str) -> bool {
        self.bundle.has_message(id)
    }
}

/// An argument of a message.
#[derive(Debug, Clone, Copy)]
pub enum Arg<'a> {
    /// Text, put in as it is.
    Text(&'a str),
    /// A count: chooses the plural.
    Count(usize),
}

impl Arg<'_> {
    fn to_fluent(self) -> FluentValue<'static> {
        match self {
            Arg::Text(text) => FluentValue::from(text.to_owned()),
            Arg::Count(count) => FluentValue::from(count),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_files_have_no_faults_and_no_id_twice() {
        let mut bundle = FluentBundle::new_concurrent(vec![english()]);
        for (name, text) in EN_GB {
            let resource = FluentResource::try_new((*text).to_owned())
                .unwrap_or_else(|(_, errors)| panic!("{name}: {errors:?}"));
            bundle.add_resource(resource).unwrap_or_else(|errors| panic!("{name}: {errors:?}"));
        }
    }

    #[test]
    fn plurals_and_text_are_put_in() {
        let wording = Wording::new();
        let count = |bites, casts| {
            wording.say_with("advice-early", &[("bites", Arg::Count(bites)), ("casts", Arg::Count(casts))])
        };
        assert_eq!(count(1, 8), "1 bite in 8 casts; too early to say.");
        assert_eq!(count(0, 1), "No bites in 1 cast; too early to say.");
        assert_eq!(wording.say_with("peg", &[("peg", Arg::Text("22"))]), "Peg 22");
        assert_eq!(wording.say("no-such-message"), "no-such-message");
    }
}
