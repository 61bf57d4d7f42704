//! The swim as a fan from the peg: where the casts went and with what result.

use super::page::{Drawing, Page, cut, step};
use restwater_log::Spot;
use restwater_screen::{Arg, Wording, mark_of};

use restwater_session::{Mark, Session, reach_m};
use std::collections::BTreeMap;

const PEG: (f64, f64) = (340.0, 276.0);
const RADIUS: f64 = 258.0;
/// Spots drawn: the ones cast to most.
const MOST_SPOTS: usize = 24;

/// Characters of a mark's name.
const NAME_CHARS: usize = 20;

/// Casts to one spot.
#[derive(Default, Clone, Copy)]
struct At<'a> {
    /// The mark that names it.
    mark: Option<&'a Mark>,
    casts: usize,
    bites: usize,
}

pub(super) fn draw(words: &Wording, session: &Session, page: &mut Page) {
    page.heading(&words.say("report-swim"));
    let spots = spots(session);
    let farthest = spots.iter().map(|((_, cm), _)| f64::from(*cm) / 100.0).fold(0.0, f64::max);
    if spots.is_empty() {
        return page.paragraph(&words.say("report-swim-none"));
    }
    page.fine_print(&words.say("report-swim-read"));
    let mut drawing = Drawing::default();
    let ring = step(farthest.max(1.0), 5.0);
    let end = (farthest / ring).floor() * ring + ring;
    rings(end, ring, &mut drawing);
    for ((cdeg, cm), at) in &spots {
        let place = place(*cdeg, f64::from(*cm) / 100.0 / end);
        if at.bites > 0 {
            drawing.diamond(place);
        } else {
            drawing.dot(place);
        }
        drawing.text((place.0 + 8.0, place.1 + 4.0), "start", &format!("{} / {}", at.casts, at.bites));
    }
    let list: Vec<String> = spots.iter().map(|(spot, at)| spot_words(words, *spot, *at)).collect();
    let alternative = words.say_with("report-swim-alt", &[("list", Arg::Text(&words.apart(&list)))]);
    page.picture(680, 290, &words.say("report-swim"), &alternative, &drawing);
}

/// Spots by bearing and range in cm, with the results of the casts, the most used first.
fn spots(session: &Session) -> Vec<((i32, u32), At<'_>)> {
    let mut spots: BTreeMap<(i32, u32), At> = BTreeMap::new();
    for cast in &session.casts {
        let Some(spot) = &cast.spot else { continue };
        let at = spots.entry(key(spot)).or_default();
        at.mark = at.mark.or_else(|| mark_of(session, spot));
        at.casts += 1;
        at.bites += usize::from(cast.bite.is_some());
    }
    let mut spots: Vec<_> = spots.into_iter().collect();
    restwater_sorting::by_key(&mut spots, |(key, at)| (std::cmp::Reverse(at.casts), *key));
    spots.truncate(MOST_SPOTS);
    spots
}

/// Bearing to the tenth of a degree and range to the decimetre; nobody casts straighter.
fn key(spot: &Spot) -> (i32, u32) {
    let cm = (reach_m(spot.reach) * 10.0).clamp(0.0, 10_000.0) as u32 * 10;
    (spot.bearing_cdeg.clamp(-18_000, 18_000) / 10 * 10, cm)
}

/// Straight out is up; `share` of the radius.
fn place(cdeg: i32, share: f64) -> (f64, f64) {
    let angle = (f64::from(cdeg) / 100.0).to_radians();
    (PEG.0 + RADIUS * share * libm::sin(angle), PEG.1 - RADIUS * share * libm::cos(angle))
}

fn rings(end: f64, ring: f64, drawing: &mut Drawing) {
    let mut at = ring;
    while at <= end {
        let arc: Vec<(f64, f64)> = (-60..=60).map(|deg| place(deg * 100, at / end)).collect();
        drawing.path(&arc, "none", 0.6);
        let (x, y) = place(6_000, at / end);
        drawing.text((x + 6.0, y + 4.0), "start", &format!("{at:.0} m"));
        at += ring;
    }
    for deg in [-60, 0, 60] {
        drawing.line(PEG, place(deg * 100, 1.0), 0.6);
    }
}

fn spot_words(words: &Wording, (cdeg, cm): (i32, u32), at: At) -> String {
    let place = where_words(words, at.mark, cdeg, f64::from(cm) / 100.0);
    let args =
        [("where", Arg::Text(&place)), ("casts", Arg::Count(at.casts)), ("bites", Arg::Count(at.bites))];
    words.say_with("report-swim-spot", &args)
}

/// "Gate, 38.0 m" at an aiming mark, otherwise "36.6 m, 5.5° left".
pub(super) fn where_words(words: &Wording, mark: Option<&Mark>, cdeg: i32, metres: f64) -> String {
    let metres = words.decimal(metres, 1);
    if let Some(mark) = mark {
        let name = cut(&mark.name, NAME_CHARS);
        let args = [("mark", Arg::Text(&name)), ("metres", Arg::Text(&metres))];
        return words.say_with("report-where-mark", &args);
    }
    if cdeg == 0 {
        return words.say_with("report-where-straight", &[("metres", Arg::Text(&metres))]);
    }
    let degrees = words.decimal(f64::from(cdeg).abs() / 100.0, 1);
    let side = words.say(if cdeg < 0 { "report-left" } else { "report-right" });
    let args = [("metres", Arg::Text(&metres)), ("degrees", Arg::Text(&degrees)), ("side", Arg::Text(&side))];
    words.say_with("report-where", &args)
}
