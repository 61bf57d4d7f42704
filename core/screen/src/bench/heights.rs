//! The ladder of heights, and what was tried on it.

use super::{BenchInput, Part, choice};
use crate::figures::whole;
use crate::leave_words::not_seen_words;
use crate::{Arg, Axis, BenchTap, ChoiceRow, Leaf, LeafLine, LeafSpan, Refused, Wording};
use restwater_bench::ladder::{FIRST_INCHES, Rung, STARTING_INCHES, tried, untried};
use restwater_bench::units::LineLength;
use restwater_compare::poisson_rates::garwood;
use std::collections::BTreeSet;

/// Level of every interval on this screen.
const LEVEL: f64 = 0.95;
/// The axis of the rates reaches at least this many times the highest rate seen.
const SCALE: f64 = 3.0;

/// The ladder.
pub(super) fn heights(input: &BenchInput) -> Part {
    let words = input.words;
    let mut leaf = Leaf::new(words, "bench", "heights");
    let [of_all, of_today] = input.unseen;
    let (casts, unseen) =
        if input.choices.all_sessions { (input.all, of_all) } else { (input.today, of_today) };
    leaf.rows = vec![which_row(words, input.choices.all_sessions), ladder_row(input)];
    let first = LineLength::from_tenths_mm(FIRST_INCHES * 254);
    match tried(&input.kit.ladder, casts) {
        Err(error) => {
            leaf.says = error.said(words);
            (leaf, words.say("bench-no-plan"))
        }
        Ok(rungs) => {
            let axis = axis(words, &rungs);
            leaf.lines = lines(words, &rungs, &axis);
            leaf.drawn_on(&axis);
            leaf.says = says(words, &rungs, first);
            leaf.notes.extend(not_seen_words(words, unseen));
            leaf.notes.push(words.say("bench-heights-how"));
            let count = rungs.iter().filter(|rung| rung.casts > 0).count();
            let args = [("tried", Arg::Count(count)), ("all", Arg::Count(rungs.len()))];
            let sub = words.say_with("bench-heights-sub", &args);
            (leaf, sub)
        }
    }
}

fn says(words: &Wording, rungs: &[Rung], first: LineLength) -> String {
    let fished = rungs.iter().max_by(|a, b| a.minutes.total_cmp(&b.minutes)).filter(|rung| rung.casts > 0);
    let from = fished.map_or(first, |rung| rung.height);
    let open: Vec<String> =
        untried(rungs, from).iter().take(4).map(|height| words.decimals(&height.to_string())).collect();
    match (fished, open.is_empty()) {
        (None, _) => {
            words.say_with("bench-heights-none", &[("first", Arg::Text(&words.decimals(&first.to_string())))])
        }
        (Some(_), true) => words.say("bench-heights-all"),
        (Some(rung), false) => words.say_with(
            "bench-heights-says",
            &[
                ("most", Arg::Text(&words.decimals(&rung.height.to_string()))),
                ("open", Arg::Text(&words.listed(&open))),
            ],
        ),
    }
}

fn hours(rung: &Rung) -> f64 {
    rung.minutes / 60.0
}

fn rate(rung: &Rung) -> f64 {
    if rung.minutes > 0.0 { f64::from(rung.bites) / hours(rung) } else { 0.0 }
}

/// Of all rates.
fn axis(words: &Wording, rungs: &[Rung]) -> Axis {
    let top = rungs.iter().map(rate).fold(0.0, f64::max);
    Axis::up_to(words, "axis-rate", if top > 0.0 { top * SCALE } else { 1.0 })
}

fn lines(words: &Wording, rungs: &[Rung], axis: &Axis) -> Vec<LeafLine> {
    let line = |rung: &Rung| {
        let minutes = whole(rung.minutes);
        let args = [
            ("casts", Arg::Count(rung.casts as usize)),
            ("bites", Arg::Count(rung.bites as usize)),
            ("minutes", Arg::Text(&minutes)),
        ];
        let tried = words.say_with("bench-tried", &args);
        let mut line = LeafLine::new(words.decimals(&rung.height.to_string()), tried);
        let limits = garwood(rung.bites.into(), LEVEL).ok().filter(|_| rung.minutes > 0.0);
        if let Some(limits) = limits {
            let (low, high) = (limits.low / hours(rung), limits.high / hours(rung));
            line.detail = words.say_with(
                "bench-rate",
                &[
                    ("rate", Arg::Text(&words.figure(rate(rung), 1))),
                    ("low", Arg::Text(&words.figure(low, 1))),
                    ("high", Arg::Text(&words.figure(high, 1))),
                ],
            );
            line.span = Some(LeafSpan::on(axis, low, rate(rung), high));
        }
        line
    };
    // Those that were tried come first; the others have nothing to say but that.
    let (tried, open): (Vec<&Rung>, Vec<&Rung>) = rungs.iter().partition(|rung| rung.casts > 0);
    let mut lines: Vec<LeafLine> = tried.into_iter().map(line).collect();
    if !open.is_empty() {
        let open: Vec<String> = open.iter().map(|rung| words.decimals(&rung.height.to_string())).collect();
        lines.push(LeafLine::new(words.listed(&open), words.say("bench-untried")));
    }
    lines
}

fn which_row(words: &Wording, now: bool) -> ChoiceRow {
    let which = |tag: &str, all| {
        choice(tag, words.say(&format!("bench-sessions-{tag}")), all == now, BenchTap::HeightsOf { all })
    };
    let choices = vec![which("all", true), which("this", false)];
    ChoiceRow::of("heights_of", words.say("bench-row-heights_of"), choices, String::new())
}

/// Heights on the ladder are solid; a tap adds or removes one.
fn ladder_row(input: &BenchInput) -> ChoiceRow {
    let words = input.words;
    let usual = STARTING_INCHES.iter().map(|inches| LineLength::from_tenths_mm(inches * 254));
    let all: BTreeSet<LineLength> = usual.chain(input.kit.ladder.iter().copied()).collect();
    let rung = |height: LineLength| {
        let (tenth_mm, on) = (height.tenths_mm(), input.kit.ladder.contains(&height));
        choice(
            tenth_mm.to_string(),
            input.words.decimals(&height.to_string()),
            on,
            BenchTap::Rung { tenth_mm },
        )
    };
    let choices = all.into_iter().map(rung).collect();
    let value = words.say_with("bench-rungs", &[("count", Arg::Count(input.kit.ladder.len()))]);
    let row = ChoiceRow::of("rung", words.say("bench-row-rung"), choices, words.say("source-common"));
    ChoiceRow { value, ..row }
}
