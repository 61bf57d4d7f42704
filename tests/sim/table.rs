//! The tables of a run, in Markdown.

use super::belief::{BINS, Believed, MoreCasts};
use super::book::Differing;
use super::change::Said;
use super::club::{Begun, CLUBS, ON};
use super::fed::Found;
use super::looks::{Looked, Round};
use super::questions::{Asked, BY_DAY, Promised};
use super::share::{Catches, HABITS, Share};
use super::spots::Caught;
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

/// First days with the start of a club that knows the water.
pub fn clubs(rows: &[(String, Begun)]) -> String {
    let mut text = String::from("| water | no club |");
    text.extend(CLUBS.map(|anglers| format!(" club of {anglers} |")));
    text += " gained with 50 |\n|---|---|---|---|---|---|\n";
    for (name, begun) in rows {
        let right = begun.right.each_ref().map(figure).join(" | ");
        let _ =
            writeln!(text, "| {name} | {} | {right} | {} |", figure(&begun.without), figure(&begun.gains));
    }
    text
}

/// What the start of a club costs that doesn't know the water, or knew it as it was once.
pub fn other_clubs(rows: &[(String, Begun)]) -> String {
    let mut text = String::from(
        "| water | one other water | the worst of those | several others | this water has changed |",
    );
    text.extend((2..=ON).map(|day| format!(" on day {day} |")));
    text += "\n|---|---|---|---|---|---|---|\n";
    for (name, begun) in rows {
        let (worst, of) = (figure(&begun.worst.0), begun.worst.1);
        let changed = begun.changed.each_ref().map(figure).join(" | ");
        let _ = writeln!(
            text,
            "| {name} | {} | {worst}: {of} | {} | {changed} |",
            figure(&begun.elsewhere),
            figure(&begun.several)
        );
    }
    text
}

/// Where and how long, decided together.
pub fn spots(rows: &[(String, Caught)]) -> String {
    let mut text = String::from(
        "| water | as told | in turn, by the advice | in turn, best leave time | one spot, by the advice | over the best in turn | over the advice in turn | casts told how long |\n|---|---|---|---|---|---|---|---|\n",
    );
    for (name, Caught { per_hour, over, told }) in rows {
        let _ = write!(text, "| {name} |");
        for share in per_hour {
            let _ = write!(text, " {:.2} ± {:.2} |", share.value(), share.error());
        }
        for share in over {
            let _ = write!(text, " {:.1} ± {:.1} % |", 100.0 * share.value(), 100.0 * share.error());
        }
        let _ = writeln!(text, " {:.0} % |", 100.0 * told.value());
    }
    text
}

/// Books of days that differ.
pub fn books(rows: &[(String, f64, Differing)]) -> String {
    let mut text = String::from(
        "| water | days differ by | share with the book | without | band holds the truth with the book | without |\n|---|---|---|---|---|---|\n",
    );
    for (name, sd, found) in rows {
        let [with, without, held, held_without] =
            [&found.shares[0], &found.shares[1], &found.covered[0], &found.covered[1]]
                .map(|s| format!("{:.1} ± {:.1} %", 100.0 * s.value(), 100.0 * s.error()));
        let _ = writeln!(text, "| {name} | {sd} | {with} | {without} | {held} | {held_without} |");
    }
    text
}

/// Claims that are read after every cast.
pub fn looks(rows: &[(String, f64, Looked)]) -> String {
    let mut text = String::from("| water | fish today | trend over the day | today against earlier days |");
    text.extend(Round::ALL.map(|(_, name)| format!(" moved, {name} |")));
    text += " the curve's 95 % limits hold | without clusters |";
    let _ = writeln!(text, "\n|---|---|---|---|{}", "---|".repeat(Round::ALL.len() + 2));
    for (name, keener, found) in rows {
        let _ = write!(text, "| {name} | x {keener} |");
        for [_, ever] in [&found.trend, &found.earlier].into_iter().chain(&found.moved) {
            let _ = write!(text, " {:.1} ± {:.1} % |", 100.0 * ever.value(), 100.0 * ever.error());
        }
        for held in &found.curve {
            let _ = write!(text, " {:.1} ± {:.1} % |", 100.0 * held.value(), 100.0 * held.error());
        }
        text.push('\n');
    }
    text
}

/// How often the verdicts were false.
pub fn false_claims(rows: &[(String, f64, Said)]) -> String {
    let mut text = String::from(
        "| water, changed | changes offered a day | false at all-out | false at any look |\n|---|---|---|---|\n",
    );
    for (name, _, said) in rows.iter().filter(|(_, effect, _)| *effect == 1.0) {
        let offered = said.offered / said.days;
        let (end, ever) = (percent(said, said.untrue), percent(said, said.untrue_ever));
        let _ = writeln!(text, "| {name} | {offered:.1} | {end} | {ever} |");
    }
    text
}

/// How often the better of two colours was found.
pub fn power(rows: &[(String, f64, Said)]) -> String {
    let mut text = String::from(
        "| water, changed | effect | found at all-out | found at any look | the worse one at any look |\n|---|---|---|---|---|\n",
    );
    for (name, effect, said) in rows.iter().filter(|(_, effect, _)| *effect != 1.0) {
        let [end, ever, untrue] = [said.found, said.found_ever, said.untrue_ever].map(|n| percent(said, n));
        let _ = writeln!(text, "| {name} | x {effect} | {end} | {ever} | {untrue} |");
    }
    text
}

/// How many bites the advice brings if it knows about feed, and its claims for casts in fed water and for
/// others.
pub fn fed(rows: &[(String, f64, Found)]) -> String {
    let mut text = String::from(
        "| water, fed | effect | bites an hour, told of feed | not told | told / not told | days on which it counts | fed: claimed, came | other: claimed, came | fed, not told | other, not told |\n|---|---|---|---|---|---|---|---|---|---|\n",
    );
    for (name, times, found) in rows {
        let [told, not] = found.per_hour.map(|s| format!("{:.2}", s.value()));
        let chance = |[claimed, came]: &[Share; 2]| {
            if claimed.days() == 0.0 {
                return "-".into();
            }
            format!(
                "{:.1}, {:.1} ± {:.1} %",
                100.0 * claimed.value(),
                100.0 * came.value(),
                100.0 * came.error()
            )
        };
        let [[other, fed], [other_not, fed_not]] =
            found.chances.each_ref().map(|side| side.each_ref().map(chance));
        let _ = writeln!(
            text,
            "| {name} | x {times} | {told} | {not} | {:.1} ± {:.1} % | {:.0} % | {fed} | {other} | {fed_not} | {other_not} |",
            100.0 * found.bites.value(),
            100.0 * found.bites.error(),
            100.0 * found.counted.value(),
        );
    }
    text
}

/// What was claimed about changes, and how often it was right.
pub fn beliefs(rows: &[(String, Believed)]) -> String {
    let mut text = String::from(
        "| water, changed | leant without an effect: at all-out | at any look | leant rightly |",
    );
    text.extend(BINS.map(|from| format!(" claimed from {:.0} in 100: right |", 100.0 * from)));
    let _ = writeln!(text, "\n|---|---|---|---|{}", "---|".repeat(BINS.len()));
    for (name, found) in rows {
        let [end, ever] = &found.leant;
        let _ = write!(text, "| {name} | {} | {} | {} |", figure(end), figure(ever), figure(&found.found[0]));
        for [claimed, right] in &found.bins {
            let _ =
                write!(text, " {:.0} of {:.0}: {} |", 100.0 * claimed.value(), claimed.days(), figure(right));
        }
        text.push('\n');
    }
    text
}

/// How soon a question asked over days is answered, and how often falsely.
pub fn questions(rows: &[(String, f64, Asked)]) -> String {
    let mut text = String::from("| water, changed | effect |");
    text.extend(BY_DAY.map(|day| format!(" clear by day {day} |")));
    text += " leant rightly after day 6 | the stake alone by day 6: minutes | waits | casts | falsely clear by day 6 |";
    let _ = writeln!(text, "\n|---|---|{}", "---|".repeat(BY_DAY.len() + 5));
    for (name, effect, found) in rows {
        let _ = write!(text, "| {name} | x {effect} |");
        for day in BY_DAY {
            let _ = write!(
                text,
                " {} |",
                if *effect == 1.0 { "-".into() } else { figure(&found.found[day - 1]) }
            );
        }
        let leant = if *effect == 1.0 { "-".into() } else { figure(&found.leant) };
        let ways = found.by_way.each_ref().map(|days| figure(&days[days.len() - 1]));
        let untrue = figure(&found.untrue[found.untrue.len() - 1]);
        let _ = writeln!(text, " {leant} | {} | {untrue} |", ways.join(" | "));
    }
    text
}

/// What was promised for more days, and what happened.
pub fn more_days(found: &Promised) -> String {
    promises([("about N more days", &found.named), ("a chance after 6", &found.chance)])
}

/// What was promised for more casts, and what happened.
pub fn more_casts(found: &MoreCasts) -> String {
    promises([("about N more casts", &found.named), ("a chance after 40", &found.chance)])
}

fn promises(lines: [(&str, &[Share; 2]); 2]) -> String {
    let mut text = String::from("| said | times | settled, as promised | settled |\n|---|---|---|---|\n");
    for (what, [promised, reached]) in lines {
        let _ = writeln!(
            text,
            "| {what} | {:.0} | {:.1} % | {:.1} ± {:.1} % |",
            promised.days(),
            100.0 * promised.value(),
            100.0 * reached.value(),
            100.0 * reached.error()
        );
    }
    text
}

fn percent(said: &Said, count: f64) -> String {
    let (p, error) = said.share(count);
    format!("{:.1} ± {:.1} %", 100.0 * p, 100.0 * error)
}

/// "93.7 ± 0.4 %".
fn figure(share: &Share) -> String {
    format!("{:.1} ± {:.1} %", 100.0 * share.value(), 100.0 * share.error())
}
