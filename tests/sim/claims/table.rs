//! Tables of the claims and of what happened.

use super::super::share::Share;
use super::goals::lost;
use super::weights::Weights;
use super::{AHEAD, Claims, MOMENTS, READ_AT};
use std::fmt::Write;

/// Chances of a bite in the next five minutes: claimed / observed, by minutes out, if there are enough casts.
pub fn five_minutes(rows: &[(String, Claims)]) -> String {
    let mut text = String::from("| water | moment |");
    text.extend(READ_AT.map(|from| format!(" {from:.0} min out |")));
    text.push_str(" nats lost |\n|---|---|");
    text.push_str(&"---|".repeat(READ_AT.len() + 1));
    text.push('\n');
    for (name, found) in rows {
        for (i, (moment, bins)) in MOMENTS.into_iter().zip(&found.five).enumerate() {
            let _ = write!(text, "| {name} | {moment} |");
            for bin in bins {
                let (claimed, came) = (100.0 * bin.claimed.value(), 100.0 * bin.came.value());
                let _ = if bin.came.days() < 100.0 {
                    write!(text, " - |")
                } else {
                    write!(text, " {claimed:.1} / {came:.1} ± {:.1} |", 100.0 * bin.came.error())
                };
            }
            let _ = if i == 0 { writeln!(text, " {:.3} |", lost(found)) } else { writeln!(text, " |") };
        }
    }
    text
}

/// The band of the rate at the advised leave time, and its mean divided by the truth.
pub fn rates(rows: &[(String, Claims)]) -> String {
    let mut text = String::from(
        "| water | held, at half | held, last hour | mean over truth, at half | last hour |\n|---|---|---|---|---|\n",
    );
    for (name, found) in rows {
        let [a, b] = found.rate_held.each_ref().map(percent);
        let [c, d] = found.rate.each_ref().map(percent);
        let _ = writeln!(text, "| {name} | {a} | {b} | {c} | {d} |");
    }
    text
}

/// Bites to come, halfway through the day.
pub fn coming(rows: &[(String, Claims)]) -> String {
    let mut text = String::from(
        "| water | ahead | in the range | nominal | mean over what came | score over gamma-Poisson's | ranks in each fifth |\n|---|---|---|---|---|---|---|\n",
    );
    for (name, found) in rows {
        for (coming, ahead) in found.coming.iter().zip(AHEAD) {
            let all: f64 = coming.parts.iter().sum();
            let parts = coming.parts.map(|part| format!("{:.0}", 100.0 * part / all)).join(" ");
            let _ = writeln!(
                text,
                "| {name} | {ahead} | {} | {:.1} % | {} | {} | {parts} |",
                percent(&coming.held),
                100.0 * coming.nominal.value(),
                percent(&coming.mean),
                percent(&coming.crps)
            );
        }
    }
    text
}

/// Weight to come.
pub fn weights(rows: &[Weights]) -> String {
    let mut text =
        String::from("| fish weighed | CV | in the 80 % range | mean over what came |\n|---|---|---|---|\n");
    for row in rows {
        let (held, mean) = (percent(&row.held), percent(&row.mean));
        let _ = writeln!(text, "| {} | {} | {held} | {mean} |", row.weighed, row.spread);
    }
    text
}

fn percent(share: &Share) -> String {
    format!("{:.1} ± {:.1} %", 100.0 * share.value(), 100.0 * share.error())
}
