//! The pop-up, its balance, and the shot in the box.

use super::{BenchInput, Figures, Part, choice, length_words, mm};
use crate::{Arg, BenchTap, ChoiceRow, Leaf, LeafLine, Refused, Wording};
use restwater_bench::balance::{Balance, PopUp, balance};
use restwater_bench::material::Material;
use restwater_bench::shot::{NOMINAL, ShotSize};
use restwater_caution::lead_rule::lead_rule;
use restwater_kit::Measured;
use restwater_log::{LineMaterial, ShotMetal};

/// The shot may be heavier than the lift by at most this, in grams: a guess, about a No. 9.
const TOLERANCE_G: f64 = 0.05;
/// Water temperature if none was logged, in tenths of a degree: a guess.
const WATER_GUESS: i16 = 60;
const LIFTS: &[u32] = &[100, 200, 300, 400, 500, 600, 800, 1_000, 1_500];
const HOOK_WEIGHTS: &[u32] = &[20, 40, 60, 80, 100, 150, 200];
const HEIGHTS: &[u32] = &[508, 1_524, 3_048, 4_572, 6_096, 9_144, 15_240];
const LINES: &[u16] = &[100, 120, 140, 160, 180, 200];
const SOAKS: &[u16] = &[0, 5, 10, 20, 40, 60, 120];
const WATERS: &[i16] = &[10, 20, 30, 40, 50, 60, 80, 100, 120, 150];

/// The material of a line for the physics.
fn material_of(line: LineMaterial) -> Material {
    match line {
        LineMaterial::Nylon => Material::Nylon,
        LineMaterial::Fluorocarbon => Material::Fluorocarbon,
        LineMaterial::Braid => Material::Braid,
    }
}

/// The material of a shot for the physics.
fn shot_material(shot: ShotMetal) -> Material {
    match shot {
        ShotMetal::Tungsten => Material::Tungsten,
        ShotMetal::Tin => Material::Tin,
        ShotMetal::Steel => Material::Steel,
        ShotMetal::Lead => Material::Lead,
    }
}

/// The pop-up and the shot that holds it.
pub(super) fn pop_up(input: &BenchInput) -> Part {
    let words = input.words;
    let m = input.kit.pop_up;
    let water = input.choices.water.or(input.water).unwrap_or(WATER_GUESS);
    let mut leaf = Leaf::new(words, "bench", "pop-up");
    let pop_up = PopUp {
        lift_g: grams(m.lift_mg),
        soaked_min: m.soaked_min,
        hook_g: grams(m.hook_mg),
        hook: Material::Steel,
        height: m.height,
        line_mm: f64::from(m.line_um) / 1_000.0,
        line: material_of(m.line),
    };
    let metal = shot_material(m.shot);
    let found = balance(&pop_up, f64::from(water) / 10.0, &input.kit.shot, metal, TOLERANCE_G);
    let sub = match &found {
        Ok(found) => {
            leaf.says = balance_words(words, found, &input.kit.shot);
            leaf.lines = lines(words, &pop_up, found);
            leaf.caution = caution_for(input, found);
            shot_words(words, found, &input.kit.shot)
        }
        Err(error) => {
            leaf.says = error.said(words);
            words.say("bench-no-plan")
        }
    };
    leaf.rows = rows(words, m, water);
    let soaked = m.soaked_min.to_string();
    leaf.notes.push(words.say_with("bench-pop-up-soaked", &[("minutes", Arg::Text(&soaked))]));
    if !input.kit.pop_up_measured {
        leaf.notes.push(words.say("bench-pop-up-guess"));
    }
    leaf.notes.push(words.say("bench-pop-up-how"));
    (leaf, sub)
}

fn grams(mg: u32) -> f64 {
    f64::from(mg) / 1_000.0
}

/// With less than this to spare a bait may float all the same: two shot of one size differ by more (common practice, no source).
const BARELY_G: f64 = 0.03;

fn g(words: &Wording, grams: f64) -> String {
    words.say_with("tackle-g", &[("grams", Arg::Text(&words.figure(grams, 3)))])
}

/// "BB and No. 8".
fn shot_words(words: &Wording, found: &Balance, table: &[ShotSize]) -> String {
    let name = |(i, n): &(usize, u16)| {
        let name = table.get(*i).map_or("", |size| size.name.as_str());
        if *n > 1 { format!("{n} × {name}") } else { name.to_owned() }
    };
    if found.shot.shot.is_empty() {
        return words.say("bench-no-shot");
    }
    found.shot.shot.iter().map(name).collect::<Vec<_>>().join(" + ")
}

fn balance_words(words: &Wording, found: &Balance, table: &[ShotSize]) -> String {
    let shot = shot_words(words, found, table);
    let over_g = found.shot.under_water - found.net_lift_g;
    let over = words.say_with("tackle-g", &[("grams", Arg::Text(&words.figure(over_g, 2)))]);
    let id = match over_g {
        _ if found.shot.shot.is_empty() => "bench-pop-up-sinks",
        _ if over_g >= BARELY_G => "bench-pop-up-says",
        _ => "bench-pop-up-barely",
    };
    words.say_with(id, &[("shot", Arg::Text(&shot)), ("over", Arg::Text(&over))])
}

fn lines(words: &Wording, pop_up: &PopUp, found: &Balance) -> Vec<LeafLine> {
    let line = |id: &str, grams: f64| LeafLine::new(words.say(id), g(words, grams));
    vec![
        line("bench-lift", pop_up.lift_g),
        line("bench-hook-under-water", found.hook_g),
        line("bench-line-under-water", found.line_g),
        line("bench-net-lift", found.net_lift_g),
        line("bench-shot-under-water", found.shot.under_water),
        line("bench-shot-in-air", found.shot.grams),
    ]
}

/// The rule on lead weights, shown when a weight of lead is entered; it forbids nothing.
fn caution_for(input: &BenchInput, found: &Balance) -> String {
    let metal = shot_material(input.kit.pop_up.shot);
    let weights = found.shot.shot.iter().filter_map(|(i, _)| input.kit.shot.get(*i)).map(|size| size.grams);
    rule_words(input, metal, weights)
}

fn rule_words(input: &BenchInput, metal: Material, weights: impl Iterator<Item = f64>) -> String {
    weights
        .filter_map(|grams| lead_rule(grams, metal, input.region).ok()?.id())
        .map(|id| input.words.say(id))
        .next()
        .unwrap_or_default()
}

fn rows(words: &Wording, m: Measured, water: i16) -> Vec<ChoiceRow> {
    let mg = |mg: i64| g(words, mg as f64 / 1_000.0);
    let celsius =
        |t: i64| words.say_with("bench-celsius", &[("t", Arg::Text(&words.figure(t as f64 / 10.0, 1)))]);
    let minutes = |n: i64| words.say_with("forecast-min", &[("minutes", Arg::Text(&n.to_string()))]);
    let um = |um: i64| words.say_with("bench-mm", &[("mm", Arg::Text(&mm(words, um as u16)))]);
    let large = |tag, now: u32, steps, usual, (least, most), tap| Figures {
        tag,
        now,
        steps,
        usual,
        least,
        most,
        common: false,
        tap,
    };
    let small = |tag, now: u16, usual, (least, most), tap| Figures {
        tag,
        now,
        steps: &[],
        usual,
        least,
        most,
        common: false,
        tap,
    };
    let lift = large("lift", m.lift_mg, &[-50, -10, 10, 50], LIFTS, (10, 20_000), |mg| BenchTap::Lift { mg });
    let soaked = small("soaked", m.soaked_min, SOAKS, (0, 600), |minutes| BenchTap::Soaked { minutes });
    let hook = large("hook_weight", m.hook_mg, &[-10, 10], HOOK_WEIGHTS, (1, 5_000), |mg| {
        BenchTap::HookWeight { mg }
    });
    let height = large("height", m.height.tenths_mm(), &[-254, 254], HEIGHTS, (100, 30_000), |tenth_mm| {
        BenchTap::Height { tenth_mm }
    });
    let line = small("line_um", m.line_um, LINES, (40, 1_000), |um| BenchTap::LineDiameter { um });
    let water = Figures {
        tag: "water",
        now: water,
        steps: &[-10, 10],
        usual: WATERS,
        least: 0,
        most: 350,
        common: false,
        tap: |tenth_c| BenchTap::Water { tenth_c },
    };
    vec![
        lift.row(words, &mg),
        soaked.row(words, &minutes),
        hook.row(words, &mg),
        height.row(words, &|tenths| length_words(words, tenths)),
        line.row(words, &um),
        line_row(words, m.line),
        metal_row(words, m.shot),
        water.row(words, &celsius),
    ]
}

fn line_row(words: &Wording, now: LineMaterial) -> ChoiceRow {
    let line = |(tag, material): (&str, LineMaterial)| {
        choice(tag, words.say(&format!("bench-line-{tag}")), material == now, BenchTap::Line { material })
    };
    let all = [
        ("nylon", LineMaterial::Nylon),
        ("fluorocarbon", LineMaterial::Fluorocarbon),
        ("braid", LineMaterial::Braid),
    ];
    ChoiceRow::of("line", words.say("bench-row-line"), all.map(line).to_vec(), String::new())
}

fn metal_row(words: &Wording, now: ShotMetal) -> ChoiceRow {
    let shot = |(tag, metal): (&str, ShotMetal)| {
        choice(tag, words.say(&format!("bench-shot_metal-{tag}")), metal == now, BenchTap::Metal { metal })
    };
    let all = [
        ("tungsten", ShotMetal::Tungsten),
        ("tin", ShotMetal::Tin),
        ("steel", ShotMetal::Steel),
        ("lead", ShotMetal::Lead),
    ];
    ChoiceRow::of("shot_metal", words.say("bench-row-shot_metal"), all.map(shot).to_vec(), String::new())
}

/// The shot in the box, and what each weighs.
pub(super) fn shot(input: &BenchInput) -> Part {
    let (words, table) = (input.words, &input.kit.shot);
    let mut leaf = Leaf::new(words, "bench", "shot");
    leaf.lines = table.iter().map(|size| LeafLine::new(size.name.clone(), g(words, size.grams))).collect();
    leaf.says = words.say_with("bench-shot-says", &[("count", Arg::Count(table.len()))]);
    leaf.notes.push(words.say("bench-shot-how"));
    let size = input.choices.size.clone().unwrap_or_else(|| "BB".into());
    let mut names: Vec<&str> = NOMINAL.iter().map(|(name, _)| *name).collect();
    names
        .extend(table.iter().map(|s| s.name.as_str()).filter(|n| !NOMINAL.iter().any(|(name, _)| name == n)));
    let named = |name: &str| {
        choice(name, name.to_owned(), name == size, BenchTap::ShotSize { name: name.to_owned() })
    };
    let sizes = names.into_iter().map(named).collect();
    leaf.rows.push(ChoiceRow::of("size", words.say("bench-row-size"), sizes, String::new()));
    leaf.rows.push(weight_row(words, table, &size));
    let weighed = table.iter().filter(|s| s.name == size).map(|s| s.grams);
    leaf.caution = rule_words(input, shot_material(input.kit.pop_up.shot), weighed);
    let sub = words.say_with("bench-shot-sub", &[("count", Arg::Count(table.len()))]);
    (leaf, sub)
}

/// The weight of one shot of the size: steps of 5 mg and of a twentieth, its usual weight, or "not in the
/// box".
fn weight_row(words: &Wording, table: &[ShotSize], size: &str) -> ChoiceRow {
    let usual = NOMINAL.iter().find(|(name, _)| *name == size).map_or(400, |(_, g)| mg_of(*g));
    let now = table.iter().find(|s| s.name == size).map(|s| mg_of(s.grams));
    let about = now.unwrap_or(usual);
    let step = (about / 20).max(1);
    let down = |steps: u32| about.saturating_sub(steps * step);
    let mut weights = vec![down(2), down(1), about + step, about + 2 * step, usual, about];
    weights.retain(|mg| *mg > 0);
    weights.sort_unstable();
    weights.dedup();
    let weigh =
        |mg: u32, label| choice(mg.to_string(), label, mg == now.unwrap_or(0), BenchTap::ShotWeight { mg });
    let mut choices = vec![weigh(0, words.say("bench-not-in-the-box"))];
    choices.extend(weights.into_iter().map(|mg| weigh(mg, g(words, f64::from(mg) / 1_000.0))));
    let label = words.say_with("bench-row-shot", &[("size", Arg::Text(size))]);
    ChoiceRow::of("shot", label, choices, words.say("bench-shot-memory"))
}

fn mg_of(grams: f64) -> u32 {
    libm::round(grams.max(0.0) * 1_000.0) as u32
}

#[cfg(test)]
mod tests {
    use super::*;
    use restwater_bench::shot::ShotChoice;

    #[test]
    fn a_bait_that_sinks_by_its_hook_is_not_held_down_by_no_shot() {
        let says = |language: &str, shot: &[(usize, u16)], under_water| {
            let shot = ShotChoice { shot: shot.to_vec(), count: 1, grams: under_water, under_water };
            let found = Balance { net_lift_g: -0.1, hook_g: 0.3, line_g: 0.0, shot };
            let table = [ShotSize { name: "BB".to_owned(), grams: 0.4 }];
            balance_words(Wording::shared(language), &found, &table)
        };
        assert_eq!(says("en-GB", &[], 0.0), "It sinks without shot, with 0.1 g to spare.");
        assert_eq!(says("en-GB", &[(0, 1)], 0.4), "BB holds it down, with 0.5 g to spare.");
        assert!(says("fr-FR", &[], 0.0).starts_with("Il coule sans plomb"));
        assert!(says("de-DE", &[], 0.0).starts_with("Er sinkt ohne Schrot"));
    }
}
