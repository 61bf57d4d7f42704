//! The wallet, and which hooklengths to cut down.

use super::{BenchInput, Figures, Part, choice, hooklength_words, key, length_words, mm};
use crate::{Arg, BenchTap, ChoiceRow, Leaf, LeafKey, LeafLine, Refused};
use restwater_bench::cut_down::CutDownError;
use restwater_bench::hooklength::Hooklength;
use restwater_kit::evening::Evening;
use std::collections::BTreeMap;
use std::collections::BTreeSet;

/// Lengths in tenths of a millimetre: 6 in to 5 ft, ties of 3 ft and 5 ft among them (common practice, no source).
const LENGTHS: &[u32] = &[1_524, 2_286, 3_048, 4_572, 6_096, 7_620, 9_144, 12_192, 15_240];
/// Steps of a centimetre and an inch in both directions.
const LENGTH_STEPS: &[i32] = &[-254, -100, 100, 254];
/// Diameters in thousandths of a millimetre (common practice, no source).
const DIAMETERS: &[u16] = &[80, 90, 100, 110, 120, 130, 140, 160, 180, 200];
/// Hook sizes (common practice, no source).
const HOOKS: &[u8] = &[8, 10, 12, 14, 16, 18, 20];
/// Hairs in mm; 0 is none.
const HAIRS: &[u16] = &[0, 5, 8, 10, 12, 15, 20];

/// The hooklengths that are tied, those to be carried, and those lost.
pub(super) fn wallet(input: &BenchInput) -> Part {
    let (words, kit) = (input.words, input.kit);
    let mut leaf = Leaf::new(words, "bench", "hooklengths");
    let kinds: BTreeSet<Hooklength> =
        kit.wallet.tied().iter().chain(kit.wanted.tied()).map(|tied| tied.hooklength).collect();
    leaf.lines = kinds
        .iter()
        .map(|kind| {
            let (have, want) = (kit.wallet.count(*kind).to_string(), kit.wanted.count(*kind).to_string());
            let id = if kit.wanted.count(*kind) > 0 { "bench-have-of" } else { "bench-have" };
            let value = words.say_with(id, &[("have", Arg::Text(&have)), ("want", Arg::Text(&want))]);
            LeafLine::new(hooklength_words(words, kind), value)
        })
        .collect();
    let here = &input.choices.hooklength;
    let here_words = hooklength_words(words, here);
    leaf.says = words.say_with(
        "bench-hooklengths-says",
        &[
            ("which", Arg::Text(&here_words)),
            ("have", Arg::Count(kit.wallet.count(*here).into())),
            ("want", Arg::Count(kit.wanted.count(*here).into())),
        ],
    );
    if kit.lost > 0 {
        leaf.notes.push(words.say_with("bench-lost", &[("count", Arg::Count(kit.lost))]));
    }
    if !kit.lost_unknown.is_empty() {
        leaf.notes
            .push(words.say_with("bench-lost-unknown", &[("count", Arg::Count(kit.lost_unknown.len()))]));
    }
    if !kit.odd.is_empty() {
        leaf.notes.push(words.say_with("bench-odd", &[("count", Arg::Count(kit.odd.len()))]));
    }
    leaf.rows = rows(input, &kinds);
    leaf.keys = keys(input);
    let total: u32 = kit.wallet.tied().iter().map(|t| u32::from(t.count)).sum();
    let sub = words.say_with("bench-hooklengths-sub", &[("count", Arg::Count(total as usize))]);
    (leaf, sub)
}

fn rows(input: &BenchInput, kinds: &BTreeSet<Hooklength>) -> Vec<ChoiceRow> {
    let (words, here) = (input.words, &input.choices.hooklength);
    let length = Figures {
        tag: "length",
        now: here.length.tenths_mm(),
        steps: LENGTH_STEPS,
        usual: LENGTHS,
        least: 100,
        most: 50_000,
        common: true,
        tap: |tenth_mm| BenchTap::Length { tenth_mm },
    };
    let small = |tag, now, usual, least, most, tap| Figures {
        tag,
        now,
        steps: &[],
        usual,
        least,
        most,
        common: true,
        tap,
    };
    let diameter = small("diameter", here.diameter_um, DIAMETERS, 40, 1_000, |um| BenchTap::Diameter { um });
    let hair = small("hair", here.hair_mm.unwrap_or(0), HAIRS, 0, 100, |mm| BenchTap::Hair {
        mm: Some(mm).filter(|mm| *mm > 0),
    });
    let hook = Figures {
        tag: "hook",
        now: here.hook_size,
        steps: &[],
        usual: HOOKS,
        least: 1,
        most: 40,
        common: true,
        tap: |size| BenchTap::HookSize { size },
    };
    let mut rows = vec![
        length.row(words, &|tenths| length_words(words, tenths)),
        diameter.row(words, &|um| words.say_with("bench-mm", &[("mm", Arg::Text(&mm(words, um as u16)))])),
        hook.row(words, &|size| size.to_string()),
        hair.row(words, &|hair| match hair {
            0 => words.say("bench-no-hair"),
            hair => words.say_with("bench-mm", &[("mm", Arg::Text(&hair.to_string()))]),
        }),
    ];
    if kinds.len() > 1 {
        let kind = |(i, h): (usize, &Hooklength)| {
            choice(i.to_string(), hooklength_words(words, h), h == here, BenchTap::Kind { hooklength: *h })
        };
        let kinds = kinds.iter().enumerate().map(kind).collect();
        rows.insert(0, ChoiceRow::of("kind", words.say("bench-row-kind"), kinds, String::new()));
    }
    rows
}

fn keys(input: &BenchInput) -> Vec<LeafKey> {
    let (words, kit, here) = (input.words, input.kit, input.choices.hooklength);
    let key = |tag: &str, id: &str, sub: &str, tap| LeafKey {
        sub: words.say(&format!("bench-key-{sub}-sub")),
        ..key(tag, words.say(&format!("bench-key-{id}")), tap)
    };
    let want = kit.wanted.count(here);
    let (more, less) = (want.saturating_add(1), want.saturating_sub(1));
    vec![
        LeafKey { solid: true, ..key("tied-1", "tied-1", "tied", BenchTap::Tied { count: 1 }) },
        key("tied-5", "tied-5", "tied", BenchTap::Tied { count: 5 }),
        LeafKey {
            enabled: kit.wallet.count(here) > 0,
            ..key("taken_out-1", "taken_out-1", "taken-out", BenchTap::TakenOut { count: 1 })
        },
        key("want-more", "want-more", "want", BenchTap::Wanted { count: more }),
        LeafKey {
            enabled: want > 0,
            ..key("want-less", "want-less", "want", BenchTap::Wanted { count: less })
        },
    ]
}

/// Which spare ties to cut down for the lengths that are to be carried.
pub(super) fn cut_down(input: &BenchInput, plan: &Result<Evening, CutDownError>) -> Part {
    let words = input.words;
    let mut leaf = Leaf::new(words, "bench", "cut-down");
    let evening = match plan {
        Ok(evening) => evening,
        Err(error) => {
            leaf.says = error.said(words);
            return (leaf, words.say("bench-no-plan"));
        }
    };
    let mut alike: BTreeMap<_, usize> = BTreeMap::new();
    for cut in &evening.cuts {
        *alike.entry((std::cmp::Reverse(cut.need.length), cut.tie)).or_default() += 1;
    }
    for ((length, tie), count) in alike {
        let waste = tie.length.tenths_mm().saturating_sub(length.0.tenths_mm());
        let mut line = LeafLine::new(
            hooklength_words(words, &tie),
            words.say_with(
                "bench-cut-to",
                &[
                    ("count", Arg::Count(count)),
                    ("length", Arg::Text(&words.decimals(&length.0.to_string()))),
                ],
            ),
        );
        line.detail =
            words.say_with("bench-cut-off", &[("length", Arg::Text(&length_words(words, waste.into())))]);
        leaf.lines.push(line);
    }
    let waste = words.decimals(&evening.waste.to_string());
    let args = [("count", Arg::Count(evening.cuts.len())), ("waste", Arg::Text(&waste))];
    let none_tied = input.kit.wallet.tied().iter().all(|tied| tied.count == 0);
    let id = if none_tied { "bench-cut-down-none" } else { "bench-cut-down-says" };
    leaf.says = words.say_with(id, &args);
    leaf.notes.push(words.say("bench-cut-down-how"));
    let key = key("cut_all-", words.say("bench-key-cut"), BenchTap::CutAll);
    let any = !evening.cuts.is_empty();
    leaf.keys.push(LeafKey { sub: words.say("bench-key-cut-sub"), solid: any, enabled: any, ..key });
    let sub = words.say_with("bench-cut-down-sub", &args);
    (leaf, sub)
}
