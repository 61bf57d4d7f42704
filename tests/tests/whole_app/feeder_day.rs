//! A pleasure day with the feeder through the real core and store: what is logged between casts, and what the
//! screens show.

use restwater_app::{App, DayTap, Screen, Which};
use restwater_screen::{BankView, KeyWeight};
use restwater_session::catch;
use restwater_tests::phone::play;
use std::error::Error;
use std::fmt::Write as _;

const DAY: &str = include_str!("../../days/feeder.jsonl");

fn bank(app: &mut App, tap: &DayTap) -> Result<BankView, Box<dyn Error>> {
    match app.screen(Which::Bank, &tap.at)? {
        Screen::Bank(bank) => Ok(bank),
        other => Err(format!("not the Bank screen: {other:?}").into()),
    }
}

/// The keys of the Bank as drawn: solid ones in brackets, chosen ones with a star, without those that can't be tapped.
fn keys(bank: &BankView) -> String {
    let live = bank.keys.iter().filter(|key| key.enabled);
    let name = |key: &restwater_screen::KeyView| match key.weight {
        KeyWeight::Solid => format!("[{}]", key.label),
        KeyWeight::Outline => key.label.clone(),
        KeyWeight::Chosen => format!("*{}", key.label),
    };
    live.map(name).collect::<Vec<_>>().join(", ")
}

#[test]
fn the_screens_over_the_day() -> Result<(), Box<dyn Error>> {
    let mut said = String::new();
    play(DAY, |tap, app| {
        let Some(name) = &tap.picture else { return Ok(()) };
        let bank = bank(app, tap)?;
        let _ = writeln!(said, "{name}: {:?}", bank.state);
        for rod in &bank.rods {
            let _ = writeln!(
                said,
                "  {}{} {} {}",
                rod.name,
                if rod.chosen { "*" } else { "" },
                rod.digits,
                rod.since
            );
        }
        let _ = writeln!(
            said,
            "  {} {} | {} | {}",
            bank.advice.headline, bank.advice.detail, bank.spot, bank.rig
        );
        let _ = writeln!(said, "  {}", keys(&bank));
        if let Screen::Fish(fish) = app.screen(Which::Fish, &tap.at)? {
            let _ = writeln!(said, "  {}: {}", fish.title, fish.says.join(" "));
        }
        if let Screen::Weight(weight) = app.screen(Which::Weight, &tap.at)? {
            let _ = writeln!(said, "  {} -> {}", weight.figure, weight.weighed.label);
        }
        if let Ok(Screen::Swim(swim)) = app.screen(Which::Swim, &tap.at) {
            let _ = writeln!(said, "  {} | {} | {}", swim.headline, swim.reasons.join("; "), swim.cell);
        }
        if let Screen::Feed(feed) = app.screen(Which::Feed, &tap.at)? {
            let ways: Vec<&str> = feed.classes.iter().map(|key| key.label.as_str()).collect();
            let _ = writeln!(said, "  {}: {} | {}", feed.title, feed.says.join(" "), ways.join(", "));
        }
        Ok(())
    })?;
    insta::assert_snapshot!(said);
    Ok(())
}

#[test]
fn the_catch_of_the_day() -> Result<(), Box<dyn Error>> {
    let app = play(DAY, |_, _| Ok(()))?;
    let session = app.session().ok_or("no session")?;
    let mut said = String::new();
    for fish in catch(session) {
        let back = if fish.put_back { ", put back" } else { "" };
        let _ = writeln!(said, "rod {}: {:?} {:?}{back}", fish.rod, fish.class, fish.weight);
    }
    insta::assert_snapshot!(said);
    Ok(())
}
