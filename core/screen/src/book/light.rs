//! The light at the peg.

use super::midnight;
use crate::date::hours_minutes;
use crate::figures::clock;
use crate::{Action, Arg, BookTap, Choice, ChoiceRow, Leaf, LeafKey, LeafLine, Refused, Wording};
use restwater_log::Moment;
use restwater_sky::daylight::{Daylight, Light, Place, SunToday, daylight};

/// Steps of a degree in 1e-7 degrees: one, a tenth, a hundredth (about a kilometre).
const STEPS: [i64; 6] = [-10_000_000, -1_000_000, -100_000, 100_000, 1_000_000, 10_000_000];

/// Where and when.
#[derive(Debug, Clone, PartialEq)]
pub struct LightInput {
    /// Latitude and longitude in 1e-7 degrees.
    pub lat_e7: i64,
    /// Longitude.
    pub lon_e7: i64,
    /// Whether the peg was placed there; otherwise it is the default place.
    pub placed: bool,
    /// Whether this place differs from the peg's position and a session is open that could store it.
    pub can_keep: bool,
    /// Now.
    pub now: Moment,
}

pub(super) fn light(words: &Wording, input: &LightInput) -> Leaf {
    let mut leaf = Leaf::new(words, "book", "light");
    leaf.rows = vec![
        row(words, "lat", input.lat_e7, |e7| BookTap::Latitude { e7 }),
        row(words, "lon", input.lon_e7, |e7| BookTap::Longitude { e7 }),
    ];
    let place = Place { lat: input.lat_e7 as f64 / 1e7, lon: input.lon_e7 as f64 / 1e7 };
    match daylight(midnight(&input.now), place) {
        Err(error) => leaf.says = error.said(words),
        Ok(day) => {
            leaf.says = says(words, &day, &input.now);
            leaf.lines = lines(words, &day, &input.now);
        }
    }
    leaf.notes.push(words.say(if input.placed { "light-how" } else { "light-guess" }));
    if input.placed {
        leaf.notes.push(words.say("light-private"));
    }
    if input.can_keep {
        let keep = Action::Book { tap: BookTap::KeepPlace };
        let key = LeafKey::new("keep_place-", words.say("light-keep"), keep);
        leaf.keys.push(LeafKey { sub: words.say("light-keep-sub"), solid: true, ..key });
    }
    leaf
}

fn says(words: &Wording, day: &Daylight, now: &Moment) -> String {
    match day.sun {
        SunToday::UpAllDay => return words.say("light-up-all-day"),
        SunToday::DownAllDay => return words.say("light-down-all-day"),
        SunToday::RisesOrSets => {}
    }
    let left = day.sunset.map(|sunset| sunset - now.wall_ms).filter(|ms| *ms > 0);
    match (day.light_at(now.wall_ms), left) {
        (Light::Day, Some(ms)) => {
            let left = hours_minutes(words, ms);
            words.say_with("light-left", &[("left", Arg::Text(&left))])
        }
        (Light::Day, None) => words.say("light-day"),
        (Light::Twilight, _) => words.say("light-twilight"),
        (Light::Dark, _) => words.say("light-dark"),
    }
}

fn lines(words: &Wording, day: &Daylight, now: &Moment) -> Vec<LeafLine> {
    // By the time shown it is as light as said: mornings are rounded up to the minute, evenings down.
    const NEXT_MINUTE: i64 = 59_999;
    let at = |ms: i64| clock(&Moment { wall_ms: ms, ..now.clone() });
    let all = [
        ("light-dawn", day.civil_dawn, NEXT_MINUTE),
        ("light-sunrise", day.sunrise, NEXT_MINUTE),
        ("light-noon", day.noon, 30_000),
        ("light-sunset", day.sunset, 0),
        ("light-dusk", day.civil_dusk, 0),
    ];
    let line = |(id, ms, up): (&str, Option<i64>, i64)| Some(LeafLine::new(words.say(id), at(ms? + up)));
    all.into_iter().filter_map(line).collect()
}

fn row(words: &Wording, tag: &str, now: i64, tap: fn(i64) -> BookTap) -> ChoiceRow {
    let most = if tag == "lat" { 900_000_000 } else { 1_800_000_000 };
    let degrees = |e7: i64| words.figure(e7.unsigned_abs() as f64 / 1e7, 2);
    let say = |e7: i64| {
        let side = match (tag, e7 < 0) {
            ("lat", false) => "light-north",
            ("lat", true) => "light-south",
            (_, false) => "light-east",
            (_, true) => "light-west",
        };
        words.say_with(side, &[("degrees", Arg::Text(&degrees(e7)))])
    };
    let choices = STEPS.iter().filter(|step| (now + **step).abs() <= most).map(|step| {
        let sign = if *step < 0 { "−" } else { "+" };
        let label = format!("{sign}{}°", degrees(*step));
        Choice::new(step.to_string(), label, false, Action::Book { tap: tap(now + step) })
    });
    let label = words.say(&format!("light-row-{tag}"));
    ChoiceRow { value: say(now), ..ChoiceRow::of(tag, label, choices.collect(), String::new()) }
}
