//! The demo day through the real core and store: what the Bank screen says during the day.

use restwater_app::{App, DayTap, Screen, Which};
use restwater_screen::{AdviceTone, BankView};
use restwater_tests::phone::play;
use restwater_tests::record;
use std::error::Error;
use std::fmt::Write as _;

const DAY: &str = include_str!("../../days/demo.jsonl");

fn bank(app: &mut App, tap: &DayTap) -> Result<BankView, Box<dyn Error>> {
    match app.screen(Which::Bank, &tap.at)? {
        Screen::Bank(bank) => Ok(bank),
        other => Err(format!("not the Bank screen: {other:?}").into()),
    }
}

#[test]
fn the_advice_over_the_day() -> Result<(), Box<dyn Error>> {
    let mut said = String::new();
    play(DAY, |tap, app| {
        let bank = bank(app, tap)?;
        let strip = &bank.strip;
        let _ = writeln!(
            said,
            "{} {:9} {} | {} | {} | marks {}",
            bank.header.clock,
            format!("{:?}", bank.state),
            bank.rods.first().map_or("-", |rod| rod.digits.as_str()),
            bank.advice.headline,
            bank.advice.detail,
            strip.marks.len()
        );
        Ok(())
    })?;
    insta::assert_snapshot!(said);
    Ok(())
}

#[test]
fn pictures_of_the_day_as_records() -> Result<(), Box<dyn Error>> {
    let mut records = Vec::new();
    play(DAY, |tap, app| {
        if let Some(name) = &tap.picture {
            records.push((name.clone(), bank(app, tap)?));
        }
        Ok(())
    })?;
    assert!(records.len() >= 10);
    let mut before: Option<&BankView> = None;
    for (name, view) in &records {
        insta::assert_snapshot!(name.clone(), record::since(before, view)?);
        before = Some(view);
    }
    Ok(())
}

/// It can't tell before there are three bites, and the lines change as bites come.
#[test]
fn no_advice_before_three_bites_and_other_advice_after_more() -> Result<(), Box<dyn Error>> {
    let mut headlines: Vec<String> = Vec::new();
    play(DAY, |tap, app| {
        let bank = bank(app, tap)?;
        let bites = app.session().map_or(0, |s| s.casts.iter().filter(|c| c.bite.is_some()).count());
        if bites < 3 {
            assert!(
                matches!(bank.advice.tone, AdviceTone::Unknown | AdviceTone::Quiet),
                "{bites}: {:?}",
                bank.advice
            );
            assert_eq!((bank.strip.hold_min, bank.strip.recast_min), (None, None));
        } else if bank.advice.headline.starts_with("Hold until")
            && headlines.last() != Some(&bank.advice.headline)
        {
            headlines.push(bank.advice.headline);
        }
        Ok(())
    })?;
    assert!(headlines.len() >= 3, "{headlines:?}");
    Ok(())
}

/// The day at its end, and once while the last cast is out, with the forecast of the rest.
#[test]
fn waits_and_changes_of_the_day() -> Result<(), Box<dyn Error>> {
    let mut late = None;
    let mut last = None;
    let mut app = play(DAY, |tap, app| {
        if tap.picture.as_deref() == Some("09-last-cast") {
            late = app.screen(Which::Waits, &tap.at).ok();
        }
        last = Some(tap.at.clone());
        Ok(())
    })?;
    let end = last.ok_or("the day has taps")?;
    let Some(Screen::Waits(late)) = late else { return Err("the last cast has its picture".into()) };
    insta::assert_snapshot!("forecast-late-in-the-day", record::whole(&late.forecast)?);
    insta::assert_snapshot!("waits-of-the-day", record::whole(&app.screen(Which::Waits, &end)?)?);
    insta::assert_snapshot!("changes-of-the-day", record::whole(&app.screen(Which::Changes, &end)?)?);
    Ok(())
}
