//! What the last sessions on one peg did, both the angler's and imported ones.

use super::rates::{axis_of, rate_line};
use super::{BookInput, Day, LEVEL_PERCENT, gist, tally, whose_day_words};
use crate::date::date_words;
use crate::{Arg, KeyTap, Leaf, LeafKey, LeafLine, Which, Wording, peg_words};
use restwater_compare::sets::set_rates;
use restwater_session::same_peg;
use uuid::Uuid;

/// How many sessions are listed.
const LISTED: usize = 5;

/// A peg of a water.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PegOf {
    /// Name of the water.
    pub water: String,
    /// The peg.
    pub peg: String,
    /// A session that isn't listed: the one from which the angler looks back.
    pub besides: Option<Uuid>,
}

pub(super) fn peg(input: &BookInput) -> Leaf {
    let words = input.words;
    let mut leaf = Leaf::new(words, "book", "peg");
    let Some(of) = input.peg else {
        leaf.says = words.say("peg-history-which");
        return leaf;
    };
    let place = place_words(words, of);
    let is_here = |day: &&Day| {
        let there = (day.gist.water.as_deref(), day.gist.peg.as_deref());
        same_peg(there, (Some(&of.water), Some(&of.peg))) && Some(day.id) != of.besides
    };
    let days: Vec<Day> = input.days.iter().filter(is_here).take(LISTED).copied().collect();
    if days.is_empty() {
        let none = if of.besides.is_some() { "peg-history-none-other" } else { "peg-history-none" };
        let none = words.say_with(none, &[("place", Arg::Text(&place))]);
        leaf.says = words.sentences(&[&none, &words.say("peg-history-to-come")]);
        let files = KeyTap::Open { which: Which::Files };
        let key = LeafKey::new("files-", words.say("open-files"), files);
        leaf.keys.push(LeafKey { sub: words.say("open-files-sub"), ..key });
        return leaf;
    }
    let tallies: Vec<_> = days.iter().map(|day| tally(day.gist)).collect();
    let bites = tallies.iter().map(|day| day.bites).sum::<u64>() as usize;
    let casts = days.iter().map(|day| day.gist.made as usize).sum::<usize>();
    // The session from which the angler looks back is often on the same peg: whoever counts must know that it is left out.
    let besides = input.days.iter().find(|day| {
        let there = (day.gist.water.as_deref(), day.gist.peg.as_deref());
        Some(day.id) == of.besides && same_peg(there, (Some(&of.water), Some(&of.peg)))
    });
    leaf.says = words.say_with(
        if besides.is_some() { "peg-history-says-other" } else { "peg-history-says" },
        &[
            ("place", Arg::Text(&place)),
            ("count", Arg::Count(days.len())),
            ("bites", Arg::Count(bites)),
            ("casts", Arg::Count(casts)),
        ],
    );
    let rates: Vec<_> = tallies.iter().map(|day| set_rates(std::slice::from_ref(day)).bites).collect();
    let axis = axis_of(words, rates.iter().flatten().map(|rate| rate.per_hour));
    for (day, rate) in days.iter().zip(&rates) {
        let label = whose_day_words(words, day);
        let line = match rate {
            Some(rate) => rate_line(words, label, rate, &axis),
            None => LeafLine::new(label, words.say("book-nothing-out")),
        };
        let detail = words.sentences(&[&gist(words, day.gist), &line.detail]);
        leaf.lines.push(LeafLine { detail, ..line });
    }
    leaf.drawn_on(&axis);
    leaf.notes.extend(besides.map(|day| {
        let day = date_words(words, day.gist.started_ms.unwrap_or_default(), day.gist.offset_min);
        words.say_with("peg-history-besides", &[("day", Arg::Text(&day))])
    }));
    leaf.notes.push(words.say_with("peg-history-how", &[("level", Arg::Count(LEVEL_PERCENT))]));
    leaf
}

/// "Peg 14, Alder Pool".
fn place_words(words: &Wording, of: &PegOf) -> String {
    words.listed(&[&peg_words(words, &of.peg), &of.water])
}
