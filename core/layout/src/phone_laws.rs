//! The rules of the layout on every phone of the table.

use super::phones::{PHONES, Phone, STATES};
use super::{BankLayout, PadAsk, PadRule, bank_layout};

/// What the small screens lack, in mm: only the row of small keys is a little too high. All other rules are kept everywhere.
const SHORT: [(&str, PadRule, f64); 3] = [
    ("4.7 in 326 ppi", PadRule::LowerPart, 2.3),
    ("5.0 in 294 ppi, buttons", PadRule::LowerPart, 6.6),
    ("5.2 in 424 ppi, buttons", PadRule::LowerPart, 4.3),
];

#[test]
fn the_table_spans_the_sizes_it_names() {
    let size = |p: &Phone| (p.width_px / p.px_per_mm(), p.height_px / p.px_per_mm());
    let (w, h) = size(&PHONES[0]);
    assert!((w - 58.5).abs() < 0.1 && (h - 104.1).abs() < 0.1, "{w} x {h}");
    let (w, h) = size(&PHONES[12]);
    assert!((w - 73.0).abs() < 0.2 && (h - 156.5).abs() < 0.2, "{w} x {h}");
    // The density printed in the name is the one that geometry gives, to 1 %.
    for p in &PHONES {
        let printed: f64 = p.name.split_whitespace().nth(2).unwrap().parse().unwrap();
        assert!((p.px_per_mm() * 25.4 / printed - 1.0).abs() < 0.011, "{}", p.name);
    }
}

#[test]
fn the_rules_hold_on_every_glass_in_every_state_for_both_hands_and_at_200_percent() {
    let mut seen: Vec<(&str, PadRule, f64)> = Vec::new();
    for p in &PHONES {
        for state in STATES {
            for (rods, page) in (1..=3).flat_map(|r| (0..5).map(move |p| (r, p))) {
                for (scale, left) in [(1.0, false), (1.0, true), (2.0, false), (2.0, true)] {
                    let layout = bank_layout(&p.glass(scale, left), PadAsk { state, rods, page }).unwrap();
                    for b in layout.broken {
                        let by = (b.by_mm * 10.0).round() / 10.0;
                        if !seen.contains(&(p.name, b.rule, by)) {
                            seen.push((p.name, b.rule, by));
                        }
                    }
                }
            }
        }
    }
    assert_eq!(seen, SHORT);
}

/// The rules of sizes, gaps, reach and digits are kept on its side as well. "The lower 60 %" is a rule for one thumb and a phone
/// held upright: on its side it can't be kept, and nothing else is too small.
#[test]
fn on_its_side_only_the_lower_part_is_short() {
    for p in &PHONES {
        for state in STATES {
            for (rods, page) in (1..=3).flat_map(|r| (0..5).map(move |p| (r, p))) {
                for (scale, left) in [(1.0, false), (1.0, true), (2.0, false), (2.0, true)] {
                    let glass = p.on_its_side(scale, left);
                    let layout = bank_layout(&glass, PadAsk { state, rods, page }).unwrap();
                    let short: Vec<PadRule> = layout.broken.iter().map(|b| b.rule).collect();
                    assert_eq!(short, [PadRule::LowerPart], "{} {state:?} {rods} {page}", p.name);
                }
            }
        }
    }
}

#[test]
fn the_left_hand_is_the_mirror_image() {
    for p in &PHONES {
        for state in STATES {
            let ask = PadAsk { state, rods: 2, page: 0 };
            for (right, left) in p.both_ways(1.0, false).into_iter().zip(p.both_ways(1.0, true)) {
                let width = right.width_px;
                let (right, left) = (bank_layout(&right, ask).unwrap(), bank_layout(&left, ask).unwrap());
                let keys = |l: &BankLayout| {
                    let top = l.screen_keys.iter().map(|key| key.rect).chain([l.screens, l.header]);
                    l.keys.iter().map(|k| k.rect).chain([l.back, l.start]).chain(top).collect::<Vec<_>>()
                };
                for (r, l) in keys(&right).iter().zip(&keys(&left)) {
                    assert!((r.left - (width - l.right())).abs() < 1e-6);
                    assert!((r.top - l.top).abs() < 1e-6 && (r.width - l.width).abs() < 1e-6);
                }
            }
        }
    }
}
