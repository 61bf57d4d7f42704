//! The pictures of the swim on whole days: on every glass nothing covers anything.

use restwater_app::{App, DayTap, FanGlass, Screen, Which};
use restwater_swim::canvases::{PHONE_CANVASES, PhoneCanvas};
use restwater_swim::{LabelRole, LineRole, MarkShape, SwimScene};
use restwater_tests::phone::play;
use std::error::Error;

const DAYS: [(&str, &str); 5] = [
    ("demo", include_str!("../../days/demo.jsonl")),
    ("match", include_str!("../../days/match.jsonl")),
    ("feeder", include_str!("../../days/feeder.jsonl")),
    ("neighbours", include_str!("../../days/neighbours.jsonl")),
    ("sixty", include_str!("../../days/sixty.jsonl")),
];

/// Left, top, right and bottom.
type Sides = [f32; 4];

fn meet(a: &Sides, b: &Sides) -> bool {
    let hair = 0.5;
    a[0] + hair < b[2] && b[0] + hair < a[2] && a[1] + hair < b[3] && b[1] + hair < a[3]
}

fn labels(scene: &SwimScene) -> Vec<(LabelRole, String, Sides)> {
    let boxes = scene.label_box.chunks_exact(4).zip(&scene.label_text).zip(&scene.label_role);
    boxes.map(|((b, text), role)| (*role, text.clone(), [b[0], b[1], b[0] + b[2], b[1] + b[3]])).collect()
}

fn marks(scene: &SwimScene) -> Vec<(String, Sides)> {
    let all = scene.mark_xy.chunks_exact(2).zip(&scene.mark_size).zip(&scene.mark_shape);
    let mark = |((at, size), shape): ((&[f32], &f32), &MarkShape)| {
        let size = 0.98 * size;
        (format!("{shape:?}"), [at[0] - size, at[1] - size, at[0] + size, at[1] + size])
    };
    all.map(mark).collect()
}

/// The pieces of the double outline of kept-back water, each as the box of its ends.
fn kept_edges(scene: &SwimScene) -> Vec<Sides> {
    let part = |i: usize| 2 * scene.line_start[i] as usize..2 * scene.line_start[i + 1] as usize;
    let kept = scene.line_role.iter().enumerate().filter(|(_, role)| **role == LineRole::KeptBack);
    let edges = kept.flat_map(|(i, _)| scene.line_xy[part(i)].windows(4).step_by(2).collect::<Vec<_>>());
    edges.map(|e| [e[0].min(e[2]), e[1].min(e[3]), e[0].max(e[2]) + 1.0, e[1].max(e[3]) + 1.0]).collect()
}

/// Text of this scale may cut the edge of kept-back water, since on the smallest glass a ring in a corner of it has no other place
/// for its flag.
const LARGEST_TEXT: f64 = 2.0;

fn faults(scene: &SwimScene, text_scale: f64) -> Vec<String> {
    let (labels, marks) = (labels(scene), marks(scene));
    let mut faults = Vec::new();
    for (i, (role, text, at)) in labels.iter().enumerate() {
        faults.extend(
            labels[i + 1..].iter().filter(|(.., b)| meet(at, b)).map(|b| format!("{text} on {}", b.1)),
        );
        faults.extend(marks.iter().filter(|(_, b)| meet(at, b)).map(|b| format!("{text} on {}", b.0)));
        let must_be_whole = *role == LabelRole::Next && text_scale < LARGEST_TEXT;
        if must_be_whole && kept_edges(scene).iter().any(|edge| meet(at, edge)) {
            faults.push(format!("{text} on the edge of kept-back water"));
        }
    }
    for (i, a) in marks.iter().enumerate() {
        faults.extend(
            marks[i + 1..].iter().filter(|b| meet(&a.1, &b.1)).map(|b| format!("{} on {}", a.0, b.0)),
        );
    }
    faults
}

fn glass(phone: &PhoneCanvas) -> FanGlass {
    let (width, height) = phone.canvas_mm;
    let px_per_mm = phone.px_per_mm;
    FanGlass {
        width_px: width * px_per_mm,
        height_px: height * px_per_mm,
        px_per_mm,
        text_scale: phone.text_scale,
        small: false,
    }
}

/// Every picture of the days, and every tenth moment of the day that has none.
#[test]
fn nothing_covers_anything_on_any_glass_on_any_day() -> Result<(), Box<dyn Error>> {
    let mut all = Vec::new();
    let mut seen = 0;
    for (day, taps) in DAYS {
        let mut n = 0;
        play(taps, |tap: &DayTap, app: &mut App| {
            n += 1;
            if app.session().is_none() || (tap.picture.is_none() && n % 10 != 0) {
                return Ok(());
            }
            for phone in &PHONE_CANVASES {
                let scene = app.swim_scene(&tap.at, &glass(phone))?;
                seen += 1;
                let at = tap.picture.clone().unwrap_or_else(|| n.to_string());
                let which = format!("{day} {at}, {} mm at {}", phone.screen_mm.1, phone.text_scale);
                all.extend(
                    faults(&scene, phone.text_scale).into_iter().map(|fault| format!("{which}: {fault}")),
                );
            }
            Ok(())
        })?;
    }
    assert!(seen > 500, "{seen} pictures");
    assert!(all.is_empty(), "{} faults in {seen} pictures:\n{}", all.len(), all.join("\n"));
    Ok(())
}

/// Who had better stay is sent to the spot of the last cast, and the flag at the ring says the same.
#[test]
fn the_flag_and_the_sentence_agree_where_the_angler_stays() -> Result<(), Box<dyn Error>> {
    let (mut stays, mut goes) = (0, 0);
    for (_, taps) in DAYS {
        play(taps, |tap: &DayTap, app: &mut App| {
            if app.session().is_none() || tap.picture.is_none() {
                return Ok(());
            }
            let Screen::Swim(view) = app.screen(Which::Swim, &tap.at)? else { return Ok(()) };
            let scene = app.swim_scene(&tap.at, &glass(&PHONE_CANVASES[6]))?;
            let flag = |word: &str| scene.label_text.iter().any(|text| text == word);
            if let Some(said) = view.headline.strip_prefix("Stay: ") {
                stays += 1;
                assert!(flag("STAY") && !flag("NEXT"), "{}", view.headline);
                let Screen::Bank(bank) = app.screen(Which::Bank, &tap.at)? else { return Ok(()) };
                assert!(bank.spot.starts_with(said), "{said}: {}", bank.spot);
            } else if view.headline.starts_with("Next: ") {
                goes += 1;
                assert!(flag("NEXT") && !flag("STAY"), "{}", view.headline);
            }
            Ok(())
        })?;
    }
    assert!(stays > 0 && goes > 0, "{stays} and {goes}");
    Ok(())
}
