//! The day files name nets and kinds of fish in English, and a phone in any language can play them.

use restwater_app::{Screen, Which};
use restwater_tests::phone::{play, play_in};
use std::error::Error;

const DAYS: [(&str, &str); 3] = [
    ("demo", include_str!("../../days/demo.jsonl")),
    ("match", include_str!("../../days/match.jsonl")),
    ("section", include_str!("../../days/section.jsonl")),
];

/// Bites, and how many fish of each net, whatever it is called.
fn caught(app: &mut restwater_app::App, at: &restwater_log::Moment) -> Result<Vec<String>, Box<dyn Error>> {
    let Screen::Match(view) = app.screen(Which::Match, at)? else { return Err("no match".into()) };
    let numbers = |text: &str| text.chars().filter(char::is_ascii_digit).collect::<String>();
    let mut caught: Vec<String> = view.nets.iter().map(|net| numbers(&net.heading)).collect();
    let Screen::Bank(bank) = app.screen(Which::Bank, at)? else { return Err("no bank".into()) };
    caught.push(bank.strip.marks.len().to_string());
    Ok(caught)
}

#[test]
fn a_day_can_be_played_on_a_phone_in_any_language() -> Result<(), Box<dyn Error>> {
    for (name, day) in DAYS {
        let mut last = None;
        let mut remember = |tap: &restwater_app::DayTap, _: &mut restwater_app::App| {
            last = Some(tap.at.clone());
            Ok(())
        };
        let mut english = play(day, &mut remember)?;
        let at = last.clone().ok_or("a day has taps")?;
        let said = caught(&mut english, &at)?;
        for language in ["de-DE", "fr-FR"] {
            let mut app =
                play_in(language, day, |_, _| Ok(())).map_err(|e| format!("{name} in {language}: {e}"))?;
            assert_eq!(caught(&mut app, &at)?, said, "{name} in {language}");
        }
    }
    Ok(())
}
