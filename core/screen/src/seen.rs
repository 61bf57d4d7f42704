//! Fish that show themselves, logged in a tap or two at the rod's spot or at the aim on the map, and fish
//! that neighbours land, with what follows for the angler's own catch. The screen is drawn like that of a
//! landed fish.

use super::figures::{clock, whole};
use super::place::place_words;
use super::{Action, Arg, FishKey, FishView, KeyTap, KeyWeight, SeenTap, Which, Wording};
use restwater_compare::BesideVerdict;
use restwater_log::{FishSign, RodNumber, Side, WaterPlace};
use restwater_session::{Session, Stamp, beside};

/// The signs of fish, in the order in which they are offered.
pub const FISH_SIGNS: [FishSign; 3] = [FishSign::Rolled, FishSign::Bubbles, FishSign::Topping];
/// How many of the latest are listed.
const LISTED: usize = 2;

/// What the screen is made from.
pub struct SeenInput<'a> {
    /// The session that is open.
    pub session: Option<&'a Session>,
    /// The rod that the keys act on.
    pub rod: RodNumber,
    /// Whether they show at the aim on the map rather than at the rod's spot.
    pub at_aim: bool,
    /// Whether the rod's spot is known.
    pub has_spot: bool,
    /// Where the aim is, if the angler chose any.
    pub aim: Option<WaterPlace>,
    /// Now, on the time line of the session.
    pub now: &'a Stamp,
    /// The language.
    pub words: &'a Wording,
}

/// The name of a sign in messages and tests.
fn tag(sign: FishSign) -> &'static str {
    match sign {
        FishSign::Rolled => "rolled",
        FishSign::Bubbles => "bubbles",
        FishSign::Topping => "topping",
    }
}

/// "a fish rolled".
pub fn sign_words(words: &Wording, sign: FishSign) -> String {
    words.say(&format!("seen-{}-words", tag(sign)))
}

/// Where neighbours sit, in the order of their keys.
const SIDES: [Side; 3] = [Side::Left, Side::Right, Side::Across];

/// The part of a key's message id that names a neighbour's peg.
pub(crate) fn neighbour_id(side: Side) -> &'static str {
    match side {
        Side::Left => "neighbour-left",
        Side::Right => "neighbour-right",
        Side::Across => "neighbour-across",
    }
}

/// The message that says which neighbour landed a fish.
pub fn neighbour_words_id(side: Side) -> &'static str {
    match side {
        Side::Left => "neighbour-left-words",
        Side::Right => "neighbour-right-words",
        Side::Across => "neighbour-across-words",
    }
}

/// Makes the screen of fish that show.
pub fn seen_view(input: &SeenInput) -> FishView {
    let words = input.words;
    let title = match input.session {
        None => words.say("feed-no-session"),
        Some(_) if input.at_aim => words.say("seen-at-aim"),
        Some(_) => words.say("seen-at-spot"),
    };
    let mut says = input.session.map_or_else(Vec::new, |session| beside_words(words, session, input.now));
    if says.is_empty() {
        says.push(words.say("seen-what"));
    }
    says.extend(input.session.filter(|_| input.at_aim).map(|session| aim_words(input, session)));
    says.extend(input.session.into_iter().flat_map(|session| lately(words, session, input.now)));
    let key = |tag: &str, id: &str, tap: SeenTap| key(input, tag, id, tap);
    let mut classes = FISH_SIGNS
        .map(|sign| {
            let id = format!("seen-{}", tag(sign));
            key(tag(sign), &id, SeenTap::Sign { sign })
        })
        .to_vec();
    let place = if input.at_aim { "feed-to-aim" } else { "feed-to-spot" };
    classes.push(FishKey {
        weight: KeyWeight::chosen(input.at_aim),
        enabled: input.session.is_some() && input.has_spot,
        ..key("place", place, SeenTap::AtAim { aim: !input.at_aim })
    });
    let neighbour = |side| {
        let id = neighbour_id(side);
        key(id, &format!("key-{id}"), SeenTap::NeighbourHere { side })
    };
    FishView {
        title,
        says,
        classes,
        small: SIDES.map(neighbour).to_vec(),
        reads: true,
        weigh: FishKey {
            tap: KeyTap::Open { which: Which::Swim },
            ..key("map", "seen-map", SeenTap::AtAim { aim: true })
        },
    }
}

/// The place at which fish that are seen will be logged, or that none is chosen.
fn aim_words(input: &SeenInput, session: &Session) -> String {
    let place = input.aim.map(|aim| format!("{}.", place_words(input.words, session, input.rod, aim)));
    place.unwrap_or_else(|| input.words.say("aim-none"))
}

/// "You or the lake?": the verdict, its evidence, and what it can't see. Empty before a neighbour's
/// fish.
pub fn beside_words(words: &Wording, session: &Session, now: &Stamp) -> Vec<String> {
    let Some(beside) = beside(session, now) else { return Vec::new() };
    let verdict = match beside.found.verdict {
        BesideVerdict::CantTellYet => "beside-cant-tell",
        BesideVerdict::TheyCatchMore => "beside-they",
        BesideVerdict::ICatchMore => "beside-me",
        BesideVerdict::Alike => "beside-alike",
    };
    let (since, minutes, away) = (clock(&beside.since.shown), whole(beside.minutes), whole(beside.away_min));
    let args = [
        ("since", Arg::Text(&since)),
        ("minutes", Arg::Text(&minutes)),
        ("away", Arg::Text(&away)),
        ("mine", Arg::Count(beside.found.mine as usize)),
        ("theirs", Arg::Count(beside.found.theirs as usize)),
        ("neighbours", Arg::Count(beside.found.neighbours)),
    ];
    vec![words.say(verdict), words.say_with("beside-counts", &args), words.say("beside-caution")]
}

fn key(input: &SeenInput, tag: &str, id: &str, tap: SeenTap) -> FishKey {
    let rod = input.rod.to_string();
    let say = |id: &str| input.words.say_with(id, &[("rod", Arg::Text(&rod))]);
    FishKey {
        tag: tag.into(),
        label: say(id),
        sub: say(&format!("{id}-sub")),
        spoken: say(&format!("{id}-spoken")),
        weight: KeyWeight::Outline,
        enabled: input.session.is_some(),
        tap: Action::Seen { tap }.into(),
        closes: tap.closes(),
    }
}

/// "Bubbles, 12 min ago.", latest first.
fn lately(words: &Wording, session: &Session, now: &Stamp) -> Vec<String> {
    let shown = session.shown.iter().map(|shown| (&shown.at, sign_words(words, shown.sign)));
    let caught = session.neighbours.iter().map(|fish| (&fish.at, words.say(neighbour_words_id(fish.side))));
    let mut all: Vec<(&Stamp, String)> = shown.chain(caught).collect();
    restwater_sorting::by_key(&mut all, |(at, _)| std::cmp::Reverse(at.at_ms));
    let line = |(at, what): &(&Stamp, String)| {
        let minutes = whole(libm::floor(now.minutes_since(at).max(0.0)));
        let what = super::sentence_case(what);
        words.say_with("seen-ago", &[("what", Arg::Text(&what)), ("minutes", Arg::Text(&minutes))])
    };
    all.iter().take(LISTED).map(line).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_sign_and_every_neighbour_has_its_words() {
        let words = Wording::new();
        for sign in FISH_SIGNS {
            for part in ["", "-sub", "-spoken", "-words"] {
                assert!(words.has(&format!("seen-{}{part}", tag(sign))), "{sign:?}");
            }
        }
        for side in SIDES {
            assert!(words.has(neighbour_words_id(side)), "{side:?}");
            for part in ["", "-sub", "-spoken"] {
                assert!(words.has(&format!("key-{}{part}", neighbour_id(side))), "{side:?}");
            }
        }
    }
}
