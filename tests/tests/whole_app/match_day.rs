//! The demo match through the real core and store: what the Match screen says during the day.

use restwater_app::{App, DayTap, Screen, Which};
use restwater_screen::{MatchPhase, MatchView, NetWarning};
use restwater_tests::phone::play;
use restwater_tests::record;
use std::error::Error;
use std::fmt::Write as _;

const DAY: &str = include_str!("../../days/match.jsonl");

fn view(app: &mut App, tap: &DayTap) -> Result<MatchView, Box<dyn Error>> {
    match app.screen(Which::Match, &tap.at)? {
        Screen::Match(view) => Ok(view),
        other => Err(format!("not the Match screen: {other:?}").into()),
    }
}

#[test]
fn the_match_over_the_day() -> Result<(), Box<dyn Error>> {
    let mut said = String::new();
    play(DAY, |tap, app| {
        let Some(name) = &tap.picture else { return Ok(()) };
        let view = view(app, tap)?;
        let _ = writeln!(said, "{name}: {} {}", view.digits, view.says);
        for line in view.lines.iter().chain(&view.coming) {
            let _ = writeln!(said, "  {}: {}", line.label, line.value);
        }
        for net in &view.nets {
            let _ = writeln!(said, "  {}", net.spoken);
        }
        for note in view.notes.iter().chain(&view.coming_figures.lines) {
            let _ = writeln!(said, "  ({note})");
        }
        if let Screen::Fish(fish) = app.screen(Which::Fish, &tap.at)? {
            let _ = writeln!(said, "  {}: {}", fish.title, fish.says.join(" "));
        }
        for line in view.weigh_in.iter().flat_map(|page| &page.lines) {
            let _ = writeln!(said, "  {}: {}", line.label, line.value);
        }
        Ok(())
    })?;
    insta::assert_snapshot!(said);
    Ok(())
}

#[test]
fn pictures_of_the_match_as_records() -> Result<(), Box<dyn Error>> {
    let mut records = Vec::new();
    play(DAY, |tap, app| {
        if let Some(name) = &tap.picture {
            records.push((format!("match-{name}"), view(app, tap)?));
        }
        Ok(())
    })?;
    assert!(records.len() >= 10);
    let mut before: Option<&MatchView> = None;
    for (name, view) in &records {
        insta::assert_snapshot!(name.clone(), record::since(before, view)?);
        before = Some(view);
    }
    Ok(())
}

/// A net gets a warning before its expected weight reaches the limit, and the alarms come in order.
#[test]
fn warnings_come_by_the_upper_end_and_alarms_run_down() -> Result<(), Box<dyn Error>> {
    let mut warned_early = false;
    let mut last_due = 3;
    play(DAY, |tap, app| {
        let view = view(app, tap)?;
        warned_early |= view.nets.iter().any(|net| {
            net.warning == NetWarning::AtLimit && net.shares.get(1).is_some_and(|share| *share < 1.0)
        });
        if view.phase == MatchPhase::Fishing {
            assert!(view.alarms.len() <= last_due, "{:?}", view.alarms);
            last_due = view.alarms.len();
        }
        assert!(view.alarms.windows(2).all(|two| two[0].at_ms < two[1].at_ms));
        Ok(())
    })?;
    assert!(warned_early);
    assert_eq!(last_due, 0);
    Ok(())
}
