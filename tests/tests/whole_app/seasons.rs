//! Six invented days through the real core: what Bench, Book, Conditions, Cautions and set-up show at their
//! end.

use restwater_app::{Action, App, DayTap, Screen, Which, read_day};
use restwater_screen::LeavesView;
use restwater_tests::phone::{Seeded, play};
use restwater_tests::record;
use std::error::Error;
use std::fmt::Write as _;

const DAYS: &str = include_str!("../../days/seasons.jsonl");

fn leaves(app: &mut App, which: Which, tap: &DayTap) -> Result<LeavesView, Box<dyn Error>> {
    match app.screen(which, &tap.at)? {
        Screen::Bench(view) | Screen::Book(view) | Screen::Conditions(view) | Screen::Cautions(view) => {
            Ok(view)
        }
        other => Err(format!("no leaves: {other:?}").into()),
    }
}

/// The text of the leaves without the choices, which are long and change with each kind of line or hook.
fn said(view: &LeavesView) -> String {
    let mut text = String::new();
    for leaf in &view.leaves {
        let _ = writeln!(text, "## {} | {}", leaf.title, leaf.says);
        if !leaf.caution.is_empty() {
            let _ = writeln!(text, "! {}", leaf.caution);
        }
        for line in &leaf.lines {
            let _ = writeln!(text, "{} | {} | {}", line.label, line.value, line.detail);
        }
        for key in leaf.list.iter().chain(&leaf.keys) {
            let _ = writeln!(text, "[{}] {}{}", key.label, key.sub, if key.enabled { "" } else { " (off)" });
        }
        for row in &leaf.rows {
            let _ = writeln!(text, "{}: {} of {}", row.label, row.value, row.choices.len());
        }
        for note in &leaf.notes {
            let _ = writeln!(text, "{note}");
        }
    }
    text
}

#[test]
fn bench_book_conditions_and_cautions_after_six_days() -> Result<(), Box<dyn Error>> {
    let (mut setup, mut last) = (None, None);
    let mut app = play(DAYS, |tap, app| {
        if tap.picture.as_deref() == Some("01-set-up") {
            setup = Some(app.screen(Which::Setup, &tap.at)?);
        }
        last = Some(tap.clone());
        Ok(())
    })?;
    let last = last.ok_or("the days have taps")?;
    insta::assert_snapshot!("setup-of-the-last-day", record::whole(&setup)?);
    insta::assert_snapshot!("bench", said(&leaves(&mut app, Which::Bench, &last)?));
    insta::assert_snapshot!("book", said(&leaves(&mut app, Which::Book, &last)?));
    insta::assert_snapshot!("conditions", said(&leaves(&mut app, Which::Conditions, &last)?));
    insta::assert_snapshot!("cautions", said(&leaves(&mut app, Which::Cautions, &last)?));
    let Screen::Tackle(tackle) = app.screen(Which::Tackle, &last.at)? else { return Err("no tackle".into()) };
    assert!(tackle.caution.starts_with("Lead of this weight is not to be used"), "{}", tackle.caution);
    Ok(())
}

/// Looking at screens writes nothing, and the same log shows the same after a restart.
#[test]
fn a_look_writes_nothing_and_a_restart_says_the_same() -> Result<(), Box<dyn Error>> {
    let dir = tempfile::tempdir()?;
    let days = read_day(DAYS)?;
    let last = days.last().ok_or("the days have taps")?;
    let mut app = App::open(dir.path(), Box::new(Seeded::new(1)), &days[0].at)?;
    for tap in &days {
        // A choice in the Book only changes the view and is not stored.
        if let Some(action) = tap.action.as_ref().filter(|a| !matches!(a, Action::Book { .. })) {
            app.act(action, &tap.at)?;
        }
    }
    let look = |app: &mut App| -> Result<Vec<LeavesView>, Box<dyn Error>> {
        [Which::Book, Which::Conditions, Which::Cautions]
            .map(|which| leaves(app, which, last))
            .into_iter()
            .collect()
    };
    let before = app.ops().to_vec();
    let first = look(&mut app)?;
    assert_eq!(app.ops(), before.as_slice());
    drop(app);
    let mut again = App::open(dir.path(), Box::new(Seeded::new(2)), &last.at)?;
    assert_eq!(look(&mut again)?, first);
    Ok(())
}
