//! What other anglers landed and weighed, and the match rule on dead fish.

use super::page::{Page, cut};
use super::times::Times;
use restwater_log::Side;
use restwater_screen::{Arg, Wording, neighbour_words_id, sentence_case, weight_words};
use restwater_session::{NeighbourFish, OtherNet, Session};

/// Entries listed of each, and characters of a rule.
const MOST: usize = 12;
const RULE_CHARS: usize = 200;

/// Fish that neighbours were seen to land, each with its time, and the angler's own beside them.
pub(super) fn neighbours(words: &Wording, session: &Session, page: &mut Page) {
    let mut times = Times::new(words, session);
    let line = |fish: &NeighbourFish| {
        let (time, what) = (times.say(&fish.at.shown), words.say(neighbour_words_id(fish.side)));
        let args = [("time", Arg::Text(&time)), ("what", Arg::Text(&what)), ("at", Arg::Text(""))];
        words.say_with("report-shown-line", &args)
    };
    let lines: Vec<String> = session.neighbours.iter().take(MOST).map(line).collect();
    if lines.is_empty() {
        return;
    }
    page.list(&lines);
    let more = session.neighbours.len().saturating_sub(MOST);
    if more > 0 {
        page.fine_print(&words.say_with("report-fed-more", &[("count", Arg::Count(more))]));
    }
    if let Some(end) = &session.ended {
        page.paragraph(&restwater_screen::beside_words(words, session, end).join(" "));
    }
}

/// The extent of the section, the nets of the others, and the rule on dead fish, as far as entered.
pub(super) fn section(words: &Wording, session: &Session, page: &mut Page) {
    let mut lines = Vec::new();
    if let Some(section) = session.section {
        let (left, right) = (usize::from(section.left), usize::from(section.right));
        lines.push(
            words.say_with("report-section", &[("left", Arg::Count(left)), ("right", Arg::Count(right))]),
        );
    }
    lines.extend(session.others.iter().take(MOST).map(|net| other_net(words, net)));
    if !session.match_rule.is_empty() {
        let rule = cut(&session.match_rule, RULE_CHARS);
        lines.push(words.say_with("report-rule", &[("rule", Arg::Text(&rule))]));
    }
    if !lines.is_empty() {
        page.heading(&words.say("report-others"));
        page.list(&lines);
    }
    let more = session.others.len().saturating_sub(MOST);
    if more > 0 {
        page.fine_print(&words.say_with("report-fed-more", &[("count", Arg::Count(more))]));
    }
}

fn other_net(words: &Wording, net: &OtherNet) -> String {
    let id = match net.peg.side {
        Side::Left => "match-peg-left",
        Side::Right => "match-peg-right",
        Side::Across => "match-peg-across",
    };
    let peg = sentence_case(&words.say_with(id, &[("place", Arg::Text(&net.peg.place.to_string()))]));
    let weight = weight_words(words, net.shown);
    let how = if net.guessed { "match-other-guessed" } else { "match-other-called" };
    let how = words.say_with(how, &[("weight", Arg::Text(&weight))]);
    words.say_with("report-other-net", &[("peg", Arg::Text(&peg)), ("weight", Arg::Text(&how))])
}
