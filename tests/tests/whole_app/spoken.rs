//! What screen readers say and what is drawn as a label with its value, on every screen of the played days, in every
//! language. A record is known by its fields, so that one which is added later is held to the same rule.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use restwater_app::{FanGlass, Screen, Which};
use restwater_tests::phone::play;
use serde_json::{Map, Value};
use std::error::Error;

/// What separates a label from its value: the Imprimerie nationale's "Lexique des règles typographiques" has a no-break space
/// before the colon in French; English and German have none.
const LANGUAGES: [(&str, &str); 3] = [("en-GB", ": "), ("de-DE", ": "), ("fr-FR", "\u{a0}: ")];

/// Texts that say all of others of the same record.
const WHOLE: [(&str, &[&str]); 9] = [
    ("spoken", &["place", "clock", "length"]),
    ("spoken_since", &["spoken", "since"]),
    ("spot_spoken", &["spot", "rig"]),
    ("spoken", &["title", "says", "x", "y"]),
    ("spoken", &["title", "verdict", "ratio"]),
    ("figure_spoken", &["label", "value"]),
    ("key_spoken", &["what", "why"]),
    ("key_spoken", &["key", "says"]),
    ("end_spoken", &["end_label", "end_sub"]),
];

/// Looks through a record and those in it, and counts those with such a text.
struct Reader<'a> {
    colon: &'a str,
    found: usize,
    faults: Vec<String>,
}

impl Reader<'_> {
    fn read(&mut self, value: &Value) {
        match value {
            Value::Array(all) => all.iter().for_each(|one| self.read(one)),
            // An action says nothing.
            Value::Object(fields) if !fields.contains_key("do") => {
                self.record(fields);
                fields.values().for_each(|one| self.read(one));
            }
            _ => {}
        }
    }

    fn record(&mut self, fields: &Map<String, Value>) {
        let text = |name: &str| fields.get(name).and_then(Value::as_str);
        let say = |name: &str| text(name).unwrap_or_default();
        // A field to type into has its own label for a screen reader; its key has the other text.
        if let Some(send) = text("send").filter(|_| fields.contains_key("into")) {
            let wanted = if send.is_empty() { String::new() } else { self.joined(send, say("label")) };
            return self.expect("send_spoken", &wanted, fields);
        }
        if let (Some(label), Some(value)) = (text("label"), text("value")) {
            let parts = [label, value, say("detail")].into_iter().filter(|part| !part.is_empty());
            let listed = parts.collect::<Vec<_>>().join(", ");
            let wanted = if fields.contains_key("detail") { listed } else { self.joined(label, value) };
            self.expect("spoken", &wanted, fields);
        }
        if let (Some(name), Some(holds)) = (text("name"), text("holds")) {
            self.expect("heading", &self.joined(name, holds), fields);
        }
        for choice in fields.get("choices").and_then(Value::as_array).into_iter().flatten() {
            let wanted = self.joined(say("label"), choice["label"].as_str().unwrap_or_default());
            self.expect("spoken", &wanted, choice.as_object().expect("a choice is a record"));
        }
        for key in ["list", "keys"].iter().filter_map(|keys| fields.get(*keys).and_then(Value::as_array)) {
            for key in key.iter().filter(|_| fields.contains_key("typing")).filter_map(Value::as_object) {
                let wanted = self.joined(
                    key["label"].as_str().unwrap_or_default(),
                    key["sub"].as_str().unwrap_or_default(),
                );
                self.expect("spoken", &wanted, key);
            }
        }
        for (whole, parts) in WHOLE {
            if !fields.contains_key(whole) || !parts.iter().all(|name| fields.contains_key(*name)) {
                continue;
            }
            if let Some(name) = parts.iter().find(|name| !say(whole).contains(say(name))) {
                self.faults.push(format!("{whole}: {:?} without {name}: {:?}", say(whole), say(name)));
            }
        }
        self.kept(fields);
    }

    /// Whatever a record offers to be said is there, and has no mark of a text that isn't.
    fn kept(&mut self, fields: &Map<String, Value>) {
        let has = |name: &str| fields.get(name).and_then(Value::as_str).is_some_and(|text| !text.is_empty());
        if has("label") && has("sub") && !fields.contains_key("spoken") {
            self.faults.push(format!("nothing is said: {fields:?}"));
        }
        for (name, said) in fields.iter().filter(|(name, _)| name.contains("spoken")) {
            let Some(said) = said.as_str() else { continue };
            self.found += 1;
            let blank = said.trim().is_empty() && (has("label") || has("key") || has("title") || has("what"));
            let ends = [":", ",", ";", ": .", "\u{a0}"].iter().any(|mark| said.trim_end().ends_with(mark));
            let bare = self.colon.starts_with('\u{a0}')
                && said.match_indices(": ").any(|(at, _)| !said[..at].ends_with('\u{a0}'));
            if blank || ends || bare || said.contains("..") || said.contains("join-") {
                self.faults.push(format!("{name}: {said:?} of {fields:?}"));
            }
        }
    }

    fn joined(&self, label: &str, value: &str) -> String {
        let both = !label.trim().is_empty() && !value.trim().is_empty();
        format!("{label}{}{value}", if both { self.colon } else { "" })
    }

    fn expect(&mut self, name: &str, wanted: &str, fields: &Map<String, Value>) {
        let said = fields.get(name).and_then(Value::as_str);
        if said != Some(wanted) {
            self.faults.push(format!("{name}: {said:?} instead of {wanted:?}"));
        }
    }
}

/// Plays a day in English, since its taps name the nets, and reads every screen of each picture in every language.
fn every_screen(text: &str) -> Result<(), Box<dyn Error>> {
    let mut readers = LANGUAGES.map(|(tag, colon)| (tag, Reader { colon, found: 0, faults: Vec::new() }));
    play(text, |tap, app| {
        for (tag, reader) in readers.iter_mut().filter(|_| tap.picture.is_some()) {
            app.set_language(tag);
            let screens = Which::ALL.iter().filter_map(|which| app.screen(*which, &tap.at).ok());
            for screen in screens.collect::<Vec<_>>() {
                if let Screen::Bank(bank) = &screen {
                    let chosen =
                        bank.rods.iter().find(|rod| rod.chosen).map_or("", |rod| rod.spoken.as_str());
                    assert!(bank.wait_spoken.starts_with(chosen), "{}", bank.wait_spoken);
                    assert!(bank.wait_spoken.ends_with(&bank.advice.headline), "{}", bank.wait_spoken);
                }
                reader.read(&serde_json::to_value(screen)?);
            }
            let watch = app.watch(&tap.at);
            assert_eq!(watch.spoken, reader.joined("Restwater", &watch.title));
            // Large text on a small picture: numbers stand for the names.
            let glass =
                FanGlass { width_px: 300.0, height_px: 300.0, px_per_mm: 6.0, text_scale: 2.0, small: false };
            for line in app.swim_scene(&tap.at, &glass).into_iter().flat_map(|scene| scene.key) {
                let number =
                    line.number.map(|number| format!("{number}{}", reader.colon)).unwrap_or_default();
                assert_eq!(line.spoken, format!("{number}{}", line.text));
            }
        }
        app.set_language("en-GB");
        Ok(())
    })?;
    for (tag, mut reader) in readers {
        reader.faults.sort_unstable();
        reader.faults.dedup();
        reader.faults.truncate(20);
        assert!(reader.faults.is_empty(), "{tag}:\n{}", reader.faults.join("\n"));
        assert!(reader.found > 1_000, "{tag}: {}", reader.found);
    }
    Ok(())
}

#[test]
fn on_the_demo_day() -> Result<(), Box<dyn Error>> {
    every_screen(include_str!("../../days/demo.jsonl"))
}

#[test]
fn on_the_match_day() -> Result<(), Box<dyn Error>> {
    every_screen(include_str!("../../days/match.jsonl"))
}

#[test]
fn on_the_day_of_neighbours() -> Result<(), Box<dyn Error>> {
    every_screen(include_str!("../../days/neighbours.jsonl"))
}

#[test]
fn on_the_feeder_day() -> Result<(), Box<dyn Error>> {
    every_screen(include_str!("../../days/feeder.jsonl"))
}

#[test]
fn on_the_planned_day() -> Result<(), Box<dyn Error>> {
    every_screen(include_str!("../../days/plan.jsonl"))
}

#[test]
fn on_the_day_of_a_section() -> Result<(), Box<dyn Error>> {
    every_screen(include_str!("../../days/section.jsonl"))
}
