//! Every action in a screen's record can be sent back: it is accepted, or refused with an error that says
//! what to do first. Nothing that a shell sends back is ever unknown.

use restwater_app::{Action, App, ErrorKind, Which, read_day};
use restwater_log::Moment;
use restwater_screen::{MatchTap, TypedField};
use restwater_tests::phone::Seeded;
use serde_json::Value;
use std::error::Error;

/// Texts of every kind that an angler may type, and some of no kind.
const TEXTS: [&str; 6] = ["", "18 in", "30 g", "52 7 24", "Mill pool", "\u{1f41f} 1e9"];

/// All actions and typed lines in a record, found by their serialised form.
fn collect(value: &Value, actions: &mut Vec<Action>) -> Result<(), Box<dyn Error>> {
    match value {
        Value::Array(all) => all.iter().try_for_each(|one| collect(one, actions)),
        Value::Object(fields) if fields.contains_key("do") => {
            let action: Action = serde_json::from_value(value.clone())?;
            assert_eq!(serde_json::to_value(&action)?, *value, "what is read back is what was sent");
            if !actions.contains(&action) {
                actions.push(action);
            }
            Ok(())
        }
        Value::Object(fields) if fields.contains_key("into") => {
            let line: TypedField = serde_json::from_value(value.clone())?;
            actions.extend(TEXTS.map(|text| Action::Typed { into: line.into, text: text.into() }));
            Ok(())
        }
        Value::Object(fields) => {
            // A key of the Match screen has its tap without the action around it.
            if let Some(tap) = fields.get("tap").filter(|tap| tap.get("tap").is_some()) {
                actions.push(Action::Match { tap: serde_json::from_value::<MatchTap>(tap.clone())? });
            }
            fields.values().try_for_each(|one| collect(one, actions))
        }
        _ => Ok(()),
    }
}

/// The actions of all screens at this moment, each once.
fn shown(app: &mut App, now: &Moment) -> Result<Vec<Action>, Box<dyn Error>> {
    let mut actions = Vec::new();
    for &which in Which::ALL {
        if let Ok(screen) = app.screen(which, now) {
            collect(&serde_json::to_value(screen)?, &mut actions)?;
        }
    }
    collect(&serde_json::to_value(app.watch(now))?, &mut actions)?;
    Ok(actions)
}

/// Taps all of them and undoes each; returns how many were accepted and how many refused.
fn tap_all(app: &mut App, at: &Moment) -> Result<(usize, usize), Box<dyn Error>> {
    let (mut accepted, mut refused) = (0, 0);
    let mut now = at.clone();
    for action in shown(app, at)? {
        (now.wall_ms, now.mono_ms) = (now.wall_ms + 1_000, now.mono_ms + 1_000);
        match app.act(&action, &now) {
            Ok(update) => {
                accepted += 1;
                if update.changed && !matches!(action, Action::Undo | Action::Redo) {
                    (now.wall_ms, now.mono_ms) = (now.wall_ms + 1_000, now.mono_ms + 1_000);
                    app.act(&Action::Undo, &now).map_err(|e| format!("undo of {action:?}: {e}"))?;
                }
            }
            Err(error) => {
                refused += 1;
                let (kind, said) = (error.kind(), app.message(&error));
                assert!(matches!(kind, ErrorKind::NotNow | ErrorKind::BadInput), "{action:?}: {said}");
                assert!(said.ends_with('.') && !said.starts_with("error-"), "{action:?}: {said}");
            }
        }
    }
    Ok((accepted, refused))
}

fn every_tap(text: &str) -> Result<(), Box<dyn Error>> {
    let day = read_day(text)?;
    let dir = tempfile::tempdir()?;
    let mut app = App::open(dir.path(), Box::new(Seeded::new(1)), &day[0].at)?;
    let pictures = day.iter().filter(|tap| tap.picture.is_some()).count();
    let (mut seen, mut total) = (0, (0, 0));
    for tap in &day {
        if let Some(action) = &tap.action {
            app.act(action, &tap.at)?;
        }
        if tap.picture.is_none() {
            continue;
        }
        seen += 1;
        // The middle and the end of the day: the moments in between are similar.
        if ![pictures / 2, pictures].contains(&seen) {
            continue;
        }
        let copy = tempfile::tempdir()?;
        app.pause()?;
        for file in std::fs::read_dir(dir.path())? {
            let file = file?;
            if file.file_type()?.is_file() {
                std::fs::copy(file.path(), copy.path().join(file.file_name()))?;
            }
        }
        app.resume()?;
        let mut other = App::open(copy.path(), Box::new(Seeded::new(99)), &tap.at)?;
        let (accepted, refused) = tap_all(&mut other, &tap.at)?;
        total = (total.0 + accepted, total.1 + refused);
    }
    assert!(total.0 > 1_000, "{total:?}");
    assert!(total.1 * 3 < total.0, "most of what is shown can be tapped: {total:?}");
    Ok(())
}

#[test]
fn every_tap_of_the_demo_day_is_accepted_or_refused_in_words() -> Result<(), Box<dyn Error>> {
    every_tap(include_str!("../../days/demo.jsonl"))
}

#[test]
fn every_tap_of_the_match_day_is_accepted_or_refused_in_words() -> Result<(), Box<dyn Error>> {
    every_tap(include_str!("../../days/match.jsonl"))
}

#[test]
fn every_tap_of_the_day_of_neighbours_is_accepted_or_refused_in_words() -> Result<(), Box<dyn Error>> {
    every_tap(include_str!("../../days/neighbours.jsonl"))
}

#[test]
fn every_tap_of_the_feeder_day_is_accepted_or_refused_in_words() -> Result<(), Box<dyn Error>> {
    every_tap(include_str!("../../days/feeder.jsonl"))
}

#[test]
fn every_tap_of_the_planned_day_is_accepted_or_refused_in_words() -> Result<(), Box<dyn Error>> {
    every_tap(include_str!("../../days/plan.jsonl"))
}
