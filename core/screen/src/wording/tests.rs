//! The same messages in every language.

use super::*;
use std::collections::{BTreeMap, BTreeSet};

/// Messages that are the same words in another language: names, units in words, and loan words of the trade.
const SAME_IN_GERMAN: [&str; 8] = [
    "bench-pop-up-title",
    "conditions-wind",
    "phone-alarm",
    "phone-hand",
    "region-england",
    "region-wales",
    "swim-name",
    "watch-app",
];
const SAME_IN_FRENCH: [&str; 13] = [
    "bait-pellet",
    "bench-line-nylon",
    "bench-pop-up-title",
    "club",
    "conditions-air",
    "conditions-in-air",
    "entry-pop_up_set",
    "light-row-lat",
    "light-row-lon",
    "peg-place-lat",
    "peg-place-lon",
    "tackle-bearing",
    "watch-app",
];
/// A message of nothing but units is the same everywhere.
const UNITS: [&str; 15] =
    ["min", "m", "s", "g", "kg", "mm", "cm", "c", "yd", "ft", "h", "lb", "oz", "dr", "p"];

fn all() -> impl Iterator<Item = &'static Language> {
    std::iter::once(&ENGLISH).chain(&OTHERS)
}

/// The messages of a language as they are in its files: by id, the file and the text.
fn messages(language: &Language) -> BTreeMap<&'static str, (&'static str, String)> {
    let mut found = BTreeMap::new();
    for (file, text) in language.files {
        let mut id = "";
        for line in text.lines().filter(|line| !line.starts_with('#')) {
            let starts = line.starts_with(|c: char| c.is_ascii_lowercase());
            let (first, rest) = if starts { line.split_once('=').unwrap() } else { ("", line) };
            if starts {
                id = first.trim();
                assert!(found.insert(id, (*file, String::new())).is_none(), "{}: {id} twice", language.tag);
            }
            if let Some((_, body)) = found.get_mut(id) {
                body.push_str(rest.trim());
                body.push('\n');
            }
        }
    }
    found
}

/// The names after a `$`.
fn variables(text: &str) -> BTreeSet<String> {
    let name = |after: &str| after.chars().take_while(char::is_ascii_alphanumeric).collect();
    text.split('$').skip(1).map(name).collect()
}

/// The words of a text outside its braces.
fn words_outside_braces(text: &str) -> Vec<String> {
    let mut depth = 0_u32;
    let kept: String = text
        .chars()
        .filter(|c| {
            depth = match c {
                '{' => depth + 1,
                '}' => depth - 1,
                _ => depth,
            };
            depth == 0
        })
        .collect();
    kept.split(|c: char| !c.is_alphabetic()).filter(|w| !w.is_empty()).map(str::to_owned).collect()
}

#[test]
fn the_files_have_no_faults_and_no_id_twice() {
    for language in all() {
        let mut bundle = FluentBundle::new_concurrent(vec![language.tag.parse().unwrap()]);
        for (name, text) in language.files {
            let resource = FluentResource::try_new((*text).to_owned())
                .unwrap_or_else(|(_, errors)| panic!("{} {name}: {errors:?}", language.tag));
            bundle
                .add_resource(resource)
                .unwrap_or_else(|errors| panic!("{} {name}: {errors:?}", language.tag));
        }
    }
}

#[test]
fn every_language_has_the_same_messages_with_the_same_variables() {
    let english = messages(&ENGLISH);
    assert!(english.len() > 1_500, "{}", english.len());
    for language in &OTHERS {
        let theirs = messages(language);
        let ids = |of: &BTreeMap<&'static str, (&'static str, String)>| -> BTreeSet<&str> {
            of.keys().copied().collect()
        };
        let apart: Vec<_> = ids(&english).symmetric_difference(&ids(&theirs)).copied().collect();
        assert!(apart.is_empty(), "not in both en-GB and {}: {apart:?}", language.tag);
        for (id, (file, text)) in &english {
            let (their_file, their_text) = &theirs[id];
            assert_eq!(file, their_file, "{} {id}", language.tag);
            assert_eq!(variables(text), variables(their_text), "{} {id}", language.tag);
        }
    }
}

#[test]
fn every_message_of_every_language_takes_any_count() {
    for language in all() {
        let (wording, all) = (Wording::with(language), messages(language));
        // Every variable there is, since a message may refer to another that needs more.
        let names: BTreeSet<String> = all.values().flat_map(|(_, text)| variables(text)).collect();
        for count in [0_usize, 1, 2, 5, 21] {
            let args: FluentArgs =
                names.iter().map(|name| (name.as_str(), FluentValue::from(count))).collect();
            for id in all.keys() {
                let pattern = wording.bundle.get_message(id).and_then(|m| m.value()).unwrap();
                let mut errors = Vec::new();
                let text = wording.bundle.format_pattern(pattern, Some(&args), &mut errors);
                assert!(errors.is_empty() && !text.contains(['{', '$']), "{} {id}: {text}", language.tag);
            }
        }
    }
}

#[test]
fn nothing_is_left_in_english() {
    let english = messages(&ENGLISH);
    for (language, same) in OTHERS.iter().zip([&SAME_IN_GERMAN[..], &SAME_IN_FRENCH]) {
        let left: BTreeSet<&str> = messages(language)
            .into_iter()
            .filter(|(id, (_, text))| {
                english[id].1 == *text && !id.ends_with("-authority") && !is_units(text)
            })
            .map(|(id, _)| id)
            .collect();
        assert_eq!(left, same.iter().copied().collect(), "{}", language.tag);
    }
}

/// Whether a text has no words but units. One that chooses by a count always has others.
fn is_units(text: &str) -> bool {
    let is_unit = |word: &String| UNITS.contains(&word.to_lowercase().as_str());
    !text.contains("->") && words_outside_braces(text).iter().all(is_unit)
}

/// French sets off these marks by a space, at which a line must not break.
#[test]
fn french_marks_follow_a_space_that_does_not_break() {
    let french = OTHERS.iter().find(|language| language.tag == "fr-FR").unwrap();
    let breaks = |text: &str| {
        let chars: Vec<char> = text.chars().collect();
        chars.windows(2).any(|pair| matches!(pair, [' ', ':' | ';' | '!' | '?' | '»'] | ['«', ' ']))
    };
    let found: Vec<_> = messages(french)
        .into_iter()
        .filter(|(id, (_, text))| !id.ends_with("-authority") && breaks(text))
        .map(|(id, _)| id)
        .collect();
    assert!(found.is_empty(), "{} texts: {found:?}", found.len());
}

#[test]
fn capitals_mean_an_action_in_every_language() {
    let english = messages(&ENGLISH);
    let loud = |text: &str| {
        let words = words_outside_braces(text);
        let letters: usize = words.iter().map(String::len).sum();
        letters > 1 && words.iter().all(|word| *word == word.to_uppercase())
    };
    for language in &OTHERS {
        for (id, (_, text)) in messages(language) {
            assert_eq!(loud(&english[id].1), loud(&text), "{} {id}: {text}", language.tag);
        }
    }
}

#[test]
fn the_first_part_of_a_tag_chooses_the_language() {
    let undo = |tag: &str| Wording::shared(tag).say("key-undo");
    for tag in ["en-GB", "en-US", "en", "nl-NL", "deu", "", "-", "x-de", "frr-DE"] {
        assert_eq!(undo(tag), "UNDO", "{tag}");
    }
    for tag in ["de-DE", "de", "de-AT", "DE_ch", "de-Latn-DE"] {
        assert_eq!(undo(tag), "STORNO", "{tag}");
    }
    for tag in ["fr-FR", "fr", "fr-CA", "FR"] {
        assert_eq!(undo(tag), "ANNULER", "{tag}");
    }
}

#[test]
fn of_several_tags_the_first_language_that_is_here_is_chosen() {
    let language = |tags: &str| Wording::shared(tags).say("key-undo");
    assert_eq!(language("nl-BE, fr-BE,de-DE"), "ANNULER");
    assert_eq!(language("cy-GB,en-GB,de-DE"), "UNDO", "English is a language too");
    assert_eq!(language("nl,pl , de"), "STORNO");
    assert_eq!(language("nl,,pl"), "UNDO");
}

#[test]
fn what_a_language_lacks_is_shown_in_english() {
    let files: &'static [(&str, &str)] = &[("bank", "rod = Rute { $rod }\n")];
    let wording = Wording::with(&Language { tag: "de-DE", read: OnceLock::new(), files });
    assert_eq!(wording.say_with("rod", &[("rod", Arg::Text("2"))]), "Rute 2");
    assert_eq!(wording.say("key-bite"), "BITE");
}

#[test]
fn plurals_and_text_are_put_in() {
    let wording = Wording::new();
    let count = |bites, casts| {
        wording.say_with("advice-so-far", &[("bites", Arg::Count(bites)), ("casts", Arg::Count(casts))])
    };
    assert_eq!(count(1, 8), "1 bite in 8 casts.");
    assert_eq!(count(0, 1), "No bites in 1 cast.");
    assert_eq!(wording.say_with("peg", &[("peg", Arg::Text("22"))]), "Peg\u{a0}22");
    assert_eq!(wording.say("no-such-message"), "no-such-message");
}

/// CLDR: French has the singular for zero and one, German for one only.
#[test]
fn each_language_counts_by_its_own_rules() {
    let entries = |tag: &str, count| {
        Wording::shared(tag).say_with("files-made-entries", &[("count", Arg::Count(count))])
    };
    assert_eq!([0, 1, 2].map(|n| entries("fr", n)), ["0 note", "1 note", "2 notes"]);
    assert_eq!([0, 1, 2].map(|n| entries("de", n)), ["0 Einträge", "1 Eintrag", "2 Einträge"]);
}

/// What is one thing stays on one line. The shells keep a figure and a short unit together; a sign, a name's number and the parts
/// of a weight they don't know.
#[test]
fn no_line_breaks_within_a_quantity_or_before_the_number_of_a_name() {
    let mut signs = 0;
    for language in all() {
        let (wording, all) = (Wording::with(language), messages(language));
        let names: BTreeSet<String> = all.values().flat_map(|(_, text)| variables(text)).collect();
        let args: Vec<(&str, Arg)> = names.iter().map(|name| (name.as_str(), Arg::Text("14"))).collect();
        for id in all.keys() {
            let text = wording.say_with(id, &args);
            let breaks = |pair: (char, char, char)| pair.1 == ' ' && pair.2 == '%' && pair.0.is_ascii_digit();
            let chars: Vec<char> = text.chars().collect();
            assert!(!chars.windows(3).any(|w| breaks((w[0], w[1], w[2]))), "{} {id}: {text}", language.tag);
            for name in ["Peg 1", "peg 1", "size 1", "Platz 1", "Place 1", "place 1"] {
                assert!(!text.contains(name), "{} {id}: {text}", language.tag);
            }
            signs += text.matches("\u{a0}%").count();
        }
        let peg = wording.say_with("peg", &[("peg", Arg::Text("14"))]);
        assert!(peg.ends_with("\u{a0}14"), "{peg}");
    }
    assert!(signs > 30, "{signs}");
    let weight = restwater_match_day::weight::Weight::Drams(6 * 256 + 12 * 16);
    assert_eq!(crate::match_day::weight_words(&Wording::new(), weight), "6 lb\u{a0}12 oz");
}

/// Words that may follow a "1" in any language, "x" being what a variable holds: no figure counts them, or they are written alike for one and for more.
const AFTER_A_FIGURE: [&str; 38] = [
    // English
    "x",
    "of",
    "to",
    "in",
    "new",
    "tied",
    "tried",
    "lost",
    "landed",
    "this",
    "fish",
    "more",
    "packed",
    "still",
    // German
    "von",
    "auf",
    "binden",
    "zu",
    "probiert",
    "gebunden",
    "verloren",
    "gelandet",
    "Std",
    "Sonne",
    "gepackt",
    "Zeichen",
    "Streifer",
    "Setzkescher",
    "anderen",
    "noch",
    // French
    "sur",
    "à",
    "en",
    "essayées",
    "pris",
    "pendant",
    "dans",
    "encore",
];
/// Messages that are never used for one thing, since the least number that they count is larger.
const NEVER_ONE: [&str; 11] = [
    // A ratio.
    "waits-fed",
    "book-listed",
    "change-more-day",
    "error-too-long",
    "sets-days-p-all",
    "sets-days-p-drawn",
    "swim-squares",
    "incoming-new-after",
    // Said from three on.
    "habit-all",
    "habit-some",
    "waits-window",
];

/// One takes the singular, so "1 minutes" and "1 casts" are wrong. A variable that chooses a plural in one message is a count in
/// every other, and what follows it there must choose too.
#[test]
fn nothing_says_one_in_the_plural() {
    let mut found = Vec::new();
    for language in all() {
        let (wording, all) = (Wording::with(language), messages(language));
        let mut counts = BTreeSet::new();
        for (_, text) in all.values() {
            counts.extend(text.split("->").filter_map(|before| {
                let name = before.rsplit_once('$')?.1.trim();
                (text.contains("[one]") && name.chars().all(char::is_alphanumeric)).then(|| name.to_owned())
            }));
        }
        let names: BTreeSet<String> = all.values().flat_map(|(_, text)| variables(text)).collect();
        for (id, (_, text)) in all.iter().filter(|(id, _)| !NEVER_ONE.contains(id)) {
            for count in variables(text).intersection(&counts) {
                let said = |n: &str| {
                    let args: Vec<(&str, Arg)> = names
                        .iter()
                        .map(|name| (name.as_str(), Arg::Text(if name == count { n } else { "x" })))
                        .collect();
                    wording.say_with(id, &args)
                };
                let (one, two) = (said("1"), said("2"));
                for (at, _) in one.match_indices('1') {
                    let after: String =
                        one[at + 1..].chars().take_while(|c| *c == ' ' || c.is_alphabetic()).collect();
                    let word = after.split(' ').find(|word| !word.is_empty()).unwrap_or_default();
                    let counted = after.starts_with(' ') && !word.is_empty();
                    if counted
                        && two == one.replace('1', "2")
                        && !AFTER_A_FIGURE.contains(&word)
                        && !UNITS.contains(&word)
                    {
                        found.push(format!("{} {id}: {one}", language.tag));
                    }
                }
            }
        }
    }
    assert!(found.is_empty(), "{} texts:\n{}", found.len(), found.join("\n"));
}

/// Decimals have the mark of the language, and a whole number that comes as text chooses the plural.
#[test]
fn figures_are_written_as_the_language_writes_them() {
    for (tag, figure, weight) in
        [("en", "9.5", "5.640 kg"), ("de", "9,5", "5,640 kg"), ("fr", "9,5", "5,640 kg")]
    {
        let words = Wording::shared(tag);
        assert_eq!(words.figure(9.50, 2), figure, "{tag}");
        assert_eq!(words.figure(12.0, 2), "12", "{tag}");
        assert_eq!(words.decimals("5.640 kg"), weight, "{tag}");
    }
    let german = Wording::shared("de-DE");
    let p = |p| crate::waits::p_words(german, p);
    assert!(p(0.034).contains("0,034") && p(0.34).contains("0,34"), "{} {}", p(0.034), p(0.34));
    let lead = crate::compared::value_of_factor(
        german,
        restwater_compare::Factor::Lead,
        "28.35 g",
        restwater_log::WeightUnit::Grams,
    );
    assert_eq!(lead, "28,35 g");
    let bait = crate::compared::value_of_factor(
        german,
        restwater_compare::Factor::Bait,
        "No. 5",
        restwater_log::WeightUnit::Grams,
    );
    assert_eq!(bait, "No. 5", "a name is no figure");
    let heights = |count| Wording::new().say_with("bench-rungs", &[("count", Arg::Text(count))]);
    assert_eq!(["1", "2", "01"].map(heights), ["1 height", "2 heights", "01 heights"]);
}
