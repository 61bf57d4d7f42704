//! Feed, and where fish showed themselves.

use super::fan::where_words;
use super::page::Page;
use super::times::Times;
use restwater_log::{WaterPlace, WeightUnit};
use restwater_screen::{Arg, Wording, feed_weight, feed_words, sentence_case, sign_words};
use restwater_session::{Fed, FishShown, Session, feed_mg};

/// Entries listed of each.
const MOST: usize = 12;

/// All feed in one line, then feed by hand and fish that showed themselves, each with time and place; nothing
/// if there was none.
pub(super) fn write(words: &Wording, session: &Session, page: &mut Page) {
    let feedings = session.feedings();
    let mut lines = Vec::new();
    if !feedings.is_empty() {
        let mg = |with_cast: bool| {
            feedings.iter().filter(|f| f.with_cast == with_cast).map(|f| feed_mg(&f.amount)).sum::<u64>()
        };
        let (all, feeder) = (mg(true) + mg(false), mg(true));
        let weight = |mg| feed_weight(words, WeightUnit::Grams, mg);
        let id = if feeder > 0 { "report-fed-feeder" } else { "report-fed" };
        let args = [("weight", weight(all)), ("feeder", weight(feeder))];
        lines.push(words.say_with(id, &args.each_ref().map(|(name, text)| (*name, Arg::Text(text)))));
    }
    let mut times = Times::new(words, session);
    lines.extend(session.fed.iter().take(MOST).map(|fed| by_hand(words, &mut times, fed)));
    lines.extend(session.shown.iter().take(MOST).map(|shown| showing(words, &mut times, shown)));
    let more = session.fed.len().saturating_sub(MOST) + session.shown.len().saturating_sub(MOST);
    if !lines.is_empty() {
        page.list(&lines);
    }
    if more > 0 {
        page.fine_print(&words.say_with("report-fed-more", &[("count", Arg::Count(more))]));
    }
}

fn by_hand(words: &Wording, times: &mut Times, fed: &Fed) -> String {
    let what = feed_words(words, fed.said.what, &fed.said.amount, WeightUnit::Grams);
    let place = fed.said.place.map(|place| at(words, place)).unwrap_or_default();
    line(words, "report-fed-line", &times.say(&fed.at.shown), &what, &place)
}

fn showing(words: &Wording, times: &mut Times, shown: &FishShown) -> String {
    let what = sentence_case(&sign_words(words, shown.sign));
    line(words, "report-shown-line", &times.say(&shown.at.shown), &what, &at(words, shown.place))
}

fn at(words: &Wording, place: WaterPlace) -> String {
    let place = where_words(words, None, place.bearing_cdeg, f64::from(place.range_cm) / 100.0);
    words.say_with("report-at", &[("where", Arg::Text(&place))])
}

fn line(words: &Wording, id: &str, time: &str, what: &str, place: &str) -> String {
    words.say_with(id, &[("time", Arg::Text(time)), ("what", Arg::Text(what)), ("at", Arg::Text(place))])
}
