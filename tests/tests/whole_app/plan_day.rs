//! A match that follows a plan from the evening before, through the real core and store: when the Bank shows
//! which part of it, and the card that compares it with the day.

use restwater_app::{App, DayTap, Screen, Which};
use restwater_tests::phone::play;
use std::error::Error;
use std::fmt::Write as _;

const DAY: &str = include_str!("../../days/plan.jsonl");

fn said(app: &mut App, tap: &DayTap) -> Result<String, Box<dyn Error>> {
    let mut said = String::new();
    if let Screen::Bank(bank) = app.screen(Which::Bank, &tap.at)? {
        let _ = writeln!(said, "  {:?}: {}", bank.state, bank.advice.headline);
        for text in std::iter::once(&bank.advice.detail).chain(&bank.advice.more) {
            let _ = writeln!(said, "    {text}");
        }
    }
    if let Screen::Bench(bench) = app.screen(Which::Bench, &tap.at)? {
        for leaf in bench.leaves.iter().filter(|leaf| leaf.id == "plan") {
            let _ = writeln!(said, "  {}", leaf.says);
            for line in &leaf.lines {
                let _ = writeln!(said, "    {}: {}", line.label, line.detail);
            }
            let keys: Vec<&str> = leaf.keys.iter().map(|key| key.label.as_str()).collect();
            let _ = writeln!(said, "    [{}]", keys.join("] ["));
        }
    }
    if let Screen::Day(day) = app.screen(Which::Day, &tap.at)? {
        for line in day.leaves[0].lines.iter().filter(|line| line.label == "Plan") {
            let _ = writeln!(said, "  card: {}", line.detail);
        }
    }
    Ok(said)
}

#[test]
fn the_plan_over_the_day() -> Result<(), Box<dyn Error>> {
    let mut all = String::new();
    play(DAY, |tap, app| {
        if let Some(name) = &tap.picture {
            let _ = writeln!(all, "{name}");
            all.push_str(&said(app, tap)?);
        }
        Ok(())
    })?;
    insta::assert_snapshot!("plan-day", all);
    Ok(())
}
