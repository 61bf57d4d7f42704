//! A pleasure day on two rods through the real core and store, with feed, a break and the neighbours' fish:
//! what the Bank, the screen of what is seen, and the report say about it.

use restwater_app::{Action, Screen, Which};
use restwater_screen::{FilesTap, FormChoice, Key};
use restwater_tests::phone::play;
use std::error::Error;
use std::fmt::Write as _;
use std::ops::ControlFlow;

const DAY: &str = include_str!("../../days/neighbours.jsonl");

#[test]
fn the_screens_over_the_day() -> Result<(), Box<dyn Error>> {
    let mut said = String::new();
    play(DAY, |tap, app| {
        let Some(name) = &tap.picture else { return Ok(()) };
        let _ = writeln!(said, "{name}");
        if let Screen::Bank(bank) = app.screen(Which::Bank, &tap.at)? {
            let rods = bank.rods.iter().map(|rod| format!("{} {} {}", rod.label, rod.digits, rod.since));
            let _ = writeln!(said, "  {}", rods.collect::<Vec<_>>().join(" | "));
            let key = bank.keys.iter().find(|key| key.key == Key::NeighbourRight);
            let words = key.map(|key| format!("{} / {}", key.label, key.sub.clone().unwrap_or_default()));
            let _ = writeln!(said, "  {}", words.unwrap_or_default());
        }
        if let (Some("09-ended"), Screen::Day(card)) =
            (tap.picture.as_deref(), app.screen(Which::Day, &tap.at)?)
        {
            for line in &card.leaves[0].lines {
                let _ = writeln!(said, "  {}: {}", line.label, line.detail);
            }
        }
        if let Screen::Seen(view) = app.screen(Which::Seen, &tap.at)? {
            let _ = writeln!(said, "  {}: {}", view.title, view.says.join(" "));
        }
        Ok(())
    })?;
    insta::assert_snapshot!(said);
    Ok(())
}

#[test]
fn the_report_of_the_day() -> Result<(), Box<dyn Error>> {
    let mut report = String::new();
    play(DAY, |tap, app| {
        if tap.picture.as_deref() == Some("09-ended") {
            app.act(&Action::Files { tap: FilesTap::Form { form: FormChoice::Report } }, &tap.at)?;
            let sent = app.send(&tap.at, &mut |_| ControlFlow::Continue(()))?;
            report = std::fs::read_to_string(sent.path)?;
        }
        Ok(())
    })?;
    let lines: Vec<&str> =
        report.lines().filter(|line| line.contains("<li>") || line.contains("<p>")).collect();
    insta::assert_snapshot!(lines.join("\n"));
    Ok(())
}
