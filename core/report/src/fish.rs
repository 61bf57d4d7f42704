//! The fish: their class, weight and net, and the total of each net.

use super::page::{Page, cut};
use restwater_log::FishWeight;
use restwater_match_day::rules::same_name;
use restwater_screen::{Arg, Wording, weight_words};
use restwater_session::figures::grams;
use restwater_session::own_count::{catch_by_net, entered};
use restwater_session::{CaughtFish, NetScales, Session};

/// Nets listed, and characters of a name.
const MOST_NETS: usize = 12;
const NAME_CHARS: usize = 20;

/// The details of a fish, as far as entered: class, weight, net, put back.
pub(super) fn fish_words(words: &Wording, fish: &CaughtFish) -> Vec<String> {
    let weight = match &fish.weight {
        Some(FishWeight::Weighed { unit, count }) => Some(weight_words(words, entered(*unit, *count))),
        Some(FishWeight::Guessed { unit, count }) => {
            let weight = weight_words(words, entered(*unit, *count));
            Some(words.say_with("fish-by-eye", &[("weight", Arg::Text(&weight))]))
        }
        _ => None,
    };
    let name = |name: &Option<String>| name.as_deref().map(|name| cut(name, NAME_CHARS));
    let net = name(&fish.net).filter(|_| !fish.put_back);
    let back = fish.put_back.then(|| words.say("report-end-put-back"));
    [name(&fish.class), weight, net, back].into_iter().flatten().collect()
}

/// One line for each net, if fish went into nets or nets were weighed.
pub(super) fn nets(words: &Wording, session: &Session, page: &mut Page) {
    let caught = catch_by_net(session);
    let mut names: Vec<&str> = Vec::new();
    let kept = caught.iter().filter(|fish| !fish.put_back).filter_map(|fish| fish.net.as_deref());
    for name in kept.chain(session.scales.iter().map(|scales| scales.net.as_str())) {
        if !names.iter().any(|known| same_name(known, name)) {
            names.push(name);
        }
    }
    if names.is_empty() {
        return;
    }
    page.heading(&words.say("report-nets"));
    let lines = names.iter().take(MOST_NETS).map(|name| net(words, name, &caught, &session.scales));
    page.list(&lines.collect::<Vec<_>>());
}

fn net(words: &Wording, name: &str, caught: &[CaughtFish], scales: &[NetScales]) -> String {
    let is_here =
        |fish: &&CaughtFish| !fish.put_back && fish.net.as_deref().is_some_and(|net| same_name(net, name));
    let here: Vec<&CaughtFish> = caught.iter().filter(is_here).collect();
    let known = here.iter().filter_map(|fish| match &fish.weight {
        Some(FishWeight::Weighed { unit, count } | FishWeight::Guessed { unit, count }) => {
            Some(grams(*unit, *count))
        }
        _ => None,
    });
    let kg = words.decimal(known.sum::<f64>() / 1_000.0, 2);
    let short = cut(name, NAME_CHARS);
    let args = [("net", Arg::Text(&short)), ("fish", Arg::Count(here.len())), ("kg", Arg::Text(&kg))];
    let line = words.say_with("report-net", &args);
    match scales.iter().find(|scales| same_name(&scales.net, name)) {
        None => line,
        Some(scales) => {
            let shown = weight_words(words, scales.shown);
            words.say_with("report-net-scales", &[("line", Arg::Text(&line)), ("shown", Arg::Text(&shown))])
        }
    }
}
