//! The pictures of the swim on whole days: on every glass nothing covers anything.

use restwater_app::{App, DayTap, FanGlass, Screen, Which};
use restwater_swim::canvases::{PHONE_CANVASES, PhoneCanvas};
use restwater_swim::covered::covered;
use restwater_tests::phone::play;
use std::error::Error;

const DAYS: [(&str, &str); 8] = [
    ("demo", include_str!("../../days/demo.jsonl")),
    ("match", include_str!("../../days/match.jsonl")),
    ("feeder", include_str!("../../days/feeder.jsonl")),
    ("neighbours", include_str!("../../days/neighbours.jsonl")),
    ("plan", include_str!("../../days/plan.jsonl")),
    ("seasons", include_str!("../../days/seasons.jsonl")),
    ("section", include_str!("../../days/section.jsonl")),
    ("sixty", include_str!("../../days/sixty.jsonl")),
];

/// The day of sixty casts has no spots; here each cast goes to one of ten at three marks, and water is kept back.
fn sixty_on_the_map() -> String {
    let mut lines = Vec::new();
    let mut casts = 0;
    for line in include_str!("../../days/sixty.jsonl").lines() {
        if line.contains(r#""do": "cast""#) {
            let before = before_cast(casts);
            let at = seconds(line) - before.len();
            let clock = |s: usize| format!("{:02}:{:02}:{:02}", s / 3600, s / 60 % 60, s % 60);
            let put = |(i, what): (usize, &String)| format!(r#"{{"at": "{}", {what}}}"#, clock(at + i));
            lines.extend(before.iter().enumerate().map(put));
            casts += 1;
        }
        lines.push(line.to_owned());
    }
    lines.join("\n")
}

/// Seconds since midnight of a line that begins with its time.
fn seconds(line: &str) -> usize {
    let digits: Vec<usize> =
        line.chars().filter_map(|c| c.to_digit(10)).take(6).map(|d| d as usize).collect();
    let two = |i: usize| 10 * digits[i] + digits[i + 1];
    3600 * two(0) + 60 * two(2) + two(4)
}

/// What is done before a cast.
fn before_cast(cast: usize) -> Vec<String> {
    let mut all = Vec::new();
    if cast == 0 {
        let mark = |(name, cdeg)| format!(r#""do": "set_mark", "name": "{name}", "bearing_cdeg": {cdeg}"#);
        all.extend([("Dead tree", -1400), ("Gate", 300), ("Boathouse", 1800)].map(mark));
    }
    let (bearing, wraps) = ([-1400, 300, 1800, -600, 900][cast % 5], 1300 + 137 * (cast * 7 % 10));
    all.push(format!(
        r#""do": "set_spot", "rod": 1, "spot": {{"bearing_cdeg": {bearing}, "reach": {{"unit": "wraps", "hundredths": {wraps}, "span_tenth_mm": 20000}}, "clipped": true}}"#
    ));
    if cast == 5 {
        all.extend([r#""do": "step_aim", "step": "out""#, r#""do": "keep_back""#].map(str::to_owned));
    }
    all
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
    let sixty = sixty_on_the_map();
    for (day, taps) in DAYS.into_iter().chain([("sixty casts on the map", sixty.as_str())]) {
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
                all.extend(covered(&scene).into_iter().map(|fault| format!("{which}: {fault}")));
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
    let (mut stays, mut shown, mut goes) = (0, 0, 0);
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
                // In some states, as while a fish is on, the Bank has no room for the spot.
                assert!(bank.spot.is_empty() || bank.spot.starts_with(said), "{said}: {}", bank.spot);
                shown += usize::from(!bank.spot.is_empty());
            } else if view.headline.starts_with("Next: ") {
                goes += 1;
                assert!(flag("NEXT") && !flag("STAY"), "{}", view.headline);
            }
            Ok(())
        })?;
    }
    assert!(shown > 0 && goes > 0, "{stays}, {shown} and {goes}");
    Ok(())
}
