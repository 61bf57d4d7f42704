//! A match on three rods through the real core and store: what each rod shows to an angler standing up, and the places
//! in the section.

use restwater_app::{Screen, Which};
use restwater_tests::phone::play;
use std::error::Error;
use std::fmt::Write as _;

const DAY: &str = include_str!("../../days/section.jsonl");

#[test]
fn rods_and_places_over_the_day() -> Result<(), Box<dyn Error>> {
    let mut said = String::new();
    play(DAY, |tap, app| {
        let Some(name) = &tap.picture else { return Ok(()) };
        let _ = writeln!(said, "{name}");
        if let Screen::Bank(bank) = app.screen(Which::Bank, &tap.at)? {
            let rods = bank.rods.iter().map(|rod| format!("{} {}", rod.label, rod.digits));
            let _ = writeln!(said, "  {}", rods.collect::<Vec<_>>().join(" | "));
        }
        if let Screen::Match(view) = app.screen(Which::Match, &tap.at)? {
            for line in view.coming.iter().filter(|line| line.label.starts_with("Place")) {
                let _ = writeln!(said, "  {}: {}", line.label, line.value);
            }
            for note in view.coming_figures.lines.iter().filter(|note| note.starts_with("Place")) {
                let _ = writeln!(said, "  {note}");
            }
            if let Some(page) = view.weigh_in {
                let lines = page.lines.iter().map(|line| format!("{}: {}", line.label, line.value));
                let lines = lines.collect::<Vec<_>>().join("; ");
                let _ =
                    writeln!(said, "  {} [{} {}] {lines}", page.title, page.weighed.label, page.weighed.sub);
            }
        }
        Ok(())
    })?;
    insta::assert_snapshot!(said);
    Ok(())
}
