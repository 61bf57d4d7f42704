//! The tables of a run, in Markdown.

use super::change::Said;
use super::share::{Catches, HABITS, Share};
use std::fmt::Write as _;

/// Bites per hour of every angler on every water.
pub fn bites_per_hour(all: &[Catches]) -> String {
    let mut text = String::from("| water | oracle leaves | oracle | advice |");
    for minutes in HABITS {
        let _ = write!(text, " {minutes} min |");
    }
    text += " trade's rule |\n|---|---|---|---|";
    text += &"---|".repeat(HABITS.len() + 1);
    text.push('\n');
    for catches in all {
        let leave = match catches.best_leave {
            _ if catches.water.evening.is_some() => "by the hour".into(),
            minutes if minutes >= 60.0 => "in".into(),
            minutes => format!("{minutes} min"),
        };
        let figure = |s: &Share| format!("{:.2} ± {:.2}", s.value(), s.error());
        let _ = write!(text, "| {} | {leave} | {} |", catches.water.name, figure(&catches.oracle));
        for line in &catches.lines {
            let _ = write!(text, " {} |", figure(&line.per_hour));
        }
        text.push('\n');
    }
    text
}

/// The advice as a share of the oracle's bites.
pub fn shares(all: &[Catches]) -> String {
    let mut text = String::from(
        "| water | first day | from the sixth bite on | five days in the book |\n|---|---|---|---|\n",
    );
    for catches in all {
        let advice = &catches.lines[0];
        let figure = |s: &Share| format!("{:.1} ± {:.1} %", 100.0 * s.value(), 100.0 * s.error());
        let book = advice.with_book.as_ref().map_or("drifts".into(), figure);
        let name = catches.water.name;
        let _ = writeln!(
            text,
            "| {name} | {} | {} | {book} |",
            figure(&advice.whole),
            figure(&advice.after_sixth)
        );
    }
    text
}

/// What was said of changes.
pub fn changes(rows: &[(String, f64, Said)]) -> String {
    let mut text = String::from(
        "| water, changed | effect | \"clearly better\" at all-out | of the better side | at any look |\n|---|---|---|---|---|\n",
    );
    for (name, effect, said) in rows {
        let figure = |count: f64| {
            let (p, error) = said.share(count);
            format!("{:.1} ± {:.1} %", 100.0 * p, 100.0 * error)
        };
        let (effect, better) = if *effect == 1.0 {
            ("none".into(), "none is".into())
        } else {
            (format!("x {effect}"), figure(said.clear_of_better))
        };
        let _ = writeln!(
            text,
            "| {name} | {effect} | {} | {better} | {} |",
            figure(said.clear),
            figure(said.ever)
        );
    }
    text
}
