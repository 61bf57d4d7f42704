//! What to tie from which spool, and the spools.

use super::{BenchInput, Figures, Part, choice, hooklength_words, key, length_words, mm};
use crate::{Arg, BenchTap, ChoiceRow, Leaf, LeafKey, LeafLine, Refused, Wording};
use restwater_bench::cut_down::CutDownError;
use restwater_bench::tie_up::TieUp;
use restwater_kit::Kit;
use restwater_kit::evening::{Evening, OneLine};

/// Spools in tenths of a millimetre: 10 to 200 m.
const SPOOLS: &[u32] = &[100_000, 200_000, 250_000, 300_000, 500_000, 1_000_000, 2_000_000];
const SPOOL_STEPS: &[i32] = &[-10_000, 10_000];
const DIAMETERS: &[u16] = &[80, 90, 100, 110, 120, 130, 140, 160, 180, 200];
/// Allowances in tenths of a millimetre: none to 12 cm.
const ALLOWANCES: &[u32] = &[0, 100, 200, 250, 300, 400, 500, 600, 800, 1_000, 1_200];

/// The tie-up plan.
pub(super) fn tie_up(input: &BenchInput, plan: &Result<Evening, CutDownError>) -> Part {
    let words = input.words;
    let mut leaf = Leaf::new(words, "bench", "tie-up");
    let lines = plan.as_ref().map_or(&[][..], |evening| &evening.lines);
    let mut count = 0;
    for line in lines {
        count += line.to_tie.iter().map(|t| usize::from(t.count)).sum::<usize>();
        leaf.lines.extend(one_line(words, input.kit, line));
    }
    leaf.says = if input.kit.wanted.tied().is_empty() {
        words.say("bench-tie-up-none")
    } else {
        words.say_with("bench-tie-up-says", &[("count", Arg::Count(count))])
    };
    let allowances = input.kit.allowances;
    let beyond = allowances.cut_for(restwater_bench::units::LineLength::default()).to_string();
    let beyond = words.decimals(&beyond);
    let id = if input.kit.allowances_measured { "bench-allowances" } else { "bench-allowances-none" };
    leaf.notes.push(words.say_with(id, &[("length", Arg::Text(&beyond))]));
    let field = |tag, now: restwater_bench::units::LineLength, tap| Figures {
        tag,
        now: now.tenths_mm(),
        steps: &[-50, 50],
        usual: ALLOWANCES,
        least: 0,
        most: 5_000,
        common: false,
        tap,
    };
    leaf.rows = [
        field("hook_knot", allowances.hook_knot, |tenth_mm| BenchTap::HookKnot { tenth_mm }),
        field("loop_length", allowances.loop_length, |tenth_mm| BenchTap::LoopLength { tenth_mm }),
        field("tag", allowances.tag, |tenth_mm| BenchTap::Tags { tenth_mm }),
    ]
    .map(|row| row.row(words, &|tenths| cm_words(words, tenths)))
    .to_vec();
    let any = lines.iter().any(|line| line.plan.is_ok());
    let key = key("tie_all-", words.say("bench-key-tie"), BenchTap::TieAll);
    leaf.keys.push(LeafKey { sub: words.say("bench-key-tie-sub"), solid: any, enabled: any, ..key });
    let sub = words.say_with("bench-tie-up-sub", &[("count", Arg::Count(count))]);
    (leaf, sub)
}

fn cm_words(words: &Wording, tenths: i64) -> String {
    words.say_with("bench-cm", &[("cm", Arg::Text(&words.figure(tenths as f64 / 100.0, 1)))])
}

fn one_line(words: &Wording, kit: &Kit, line: &OneLine) -> Vec<LeafLine> {
    let each = line.to_tie.iter().map(|tied| {
        let cut = kit.allowances.cut_for(tied.hooklength.length);
        let mut text = LeafLine::new(
            hooklength_words(words, &tied.hooklength),
            words.say_with("bench-tie", &[("count", Arg::Count(tied.count.into()))]),
        );
        text.detail =
            words.say_with("bench-cut-for", &[("length", Arg::Text(&words.decimals(&cut.to_string())))]);
        text
    });
    let mut lines: Vec<LeafLine> = each.collect();
    let label = words.say_with("bench-line-of", &[("mm", Arg::Text(&mm(words, line.diameter_um)))]);
    match &line.plan {
        Ok(plan) => lines.extend(from_spools(words, kit, line, plan, &label)),
        Err(error) => {
            let mut none = LeafLine::new(label, words.say("bench-no-plan"));
            none.detail = error.said(words);
            lines.push(none);
        }
    }
    lines
}

fn from_spools(words: &Wording, kit: &Kit, line: &OneLine, plan: &TieUp, label: &str) -> Vec<LeafLine> {
    let mut lines = Vec::new();
    for from in &plan.from {
        let id = line.spools.get(from.spool);
        let number = kit.spools.iter().position(|spool| Some(&spool.id) == id).map_or(0, |i| i + 1);
        let number = number.to_string();
        let mut text = LeafLine::new(
            words.say_with(
                "bench-spool-number",
                &[("number", Arg::Text(&number)), ("line", Arg::Text(label))],
            ),
            words.say_with("bench-pieces", &[("count", Arg::Count(from.cuts.len()))]),
        );
        text.detail = words
            .say_with("bench-left-on-it", &[("metres", Arg::Text(&words.figure(from.left.metres(), 2)))]);
        lines.push(text);
    }
    if !plan.is_best() {
        let over = plan.opened.tenths_mm().saturating_sub(plan.at_least.tenths_mm());
        let text =
            words.say_with("bench-not-proved", &[("length", Arg::Text(&length_words(words, over.into())))]);
        lines.push(LeafLine::new(text, String::new()));
    }
    lines
}

/// The spools on the bench.
pub(super) fn spools(input: &BenchInput) -> Part {
    let (words, kit) = (input.words, input.kit);
    let mut leaf = Leaf::new(words, "bench", "spools");
    leaf.lines = kit
        .spools
        .iter()
        .enumerate()
        .map(|(i, spool)| {
            let line = words.say_with("bench-line-of", &[("mm", Arg::Text(&mm(words, spool.diameter_um)))]);
            let number = (i + 1).to_string();
            LeafLine::new(
                words.say_with(
                    "bench-spool-number",
                    &[("number", Arg::Text(&number)), ("line", Arg::Text(&line))],
                ),
                metres(words, spool.left.tenths_mm().into()),
            )
        })
        .collect();
    leaf.says = words.say_with("bench-spools-says", &[("count", Arg::Count(kit.spools.len()))]);
    leaf.rows = spool_rows(input);
    let key = key("spool_add-", words.say("bench-key-spool"), BenchTap::AddSpool);
    let sub = words.say_with(
        "bench-key-spool-sub",
        &[
            ("mm", Arg::Text(&mm(words, input.choices.spool_um))),
            ("metres", Arg::Text(&words.figure(input.choices.spool.metres(), 1))),
        ],
    );
    leaf.keys.push(LeafKey { sub, solid: kit.spools.is_empty(), ..key });
    let sub = words.say_with("bench-spools-sub", &[("count", Arg::Count(kit.spools.len()))]);
    (leaf, sub)
}

fn metres(words: &Wording, tenths: i64) -> String {
    words.say_with("setup-metres", &[("metres", Arg::Text(&words.figure(tenths as f64 / 10_000.0, 2)))])
}

fn spool_rows(input: &BenchInput) -> Vec<ChoiceRow> {
    let (words, kit, choices) = (input.words, input.kit, input.choices);
    let line = Figures {
        tag: "spool_diameter",
        now: choices.spool_um,
        steps: &[],
        usual: DIAMETERS,
        least: 40,
        most: 1_000,
        common: true,
        tap: |um| BenchTap::SpoolDiameter { um },
    };
    let length = Figures {
        tag: "spool_length",
        now: choices.spool.tenths_mm(),
        steps: SPOOL_STEPS,
        usual: SPOOLS,
        least: 1_000,
        most: 100_000_000,
        common: false,
        tap: |tenth_mm| BenchTap::SpoolLength { tenth_mm },
    };
    let mut rows = vec![
        line.row(words, &|um| words.say_with("bench-mm", &[("mm", Arg::Text(&mm(words, um as u16)))])),
        length.row(words, &|tenths| metres(words, tenths)),
    ];
    if !kit.spools.is_empty() {
        let gone = kit.spools.iter().enumerate().map(|(i, spool)| {
            let number = (i + 1).to_string();
            let line = mm(words, spool.diameter_um);
            let args = [("number", Arg::Text(&number)), ("line", Arg::Text(&line))];
            let label = words.say_with("bench-spool-number", &args);
            choice(spool.id.to_string(), label, false, BenchTap::SpoolGone { spool: spool.id })
        });
        let label = words.say("bench-row-spool_gone");
        rows.push(ChoiceRow::of("spool_gone", label, gone.collect(), words.say("bench-spool-gone-how")));
    }
    rows
}
