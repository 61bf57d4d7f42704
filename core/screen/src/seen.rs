//! Fish that show: said in a tap or two, at the rod's spot or at the aim on the map. The screen is drawn as that of a landed
//! fish is.

use super::figures::whole;
use super::{Action, Arg, FishKey, FishView, KeyTap, SeenTap, Which, Wording};
use restwater_log::{FishSign, RodNumber};
use restwater_session::{Session, Stamp};

/// How fish show, in the order it is offered.
pub const FISH_SIGNS: [FishSign; 3] = [FishSign::Rolled, FishSign::Bubbles, FishSign::Topping];
/// How many of the last are listed.
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

/// Makes the screen of fish that show.
pub fn seen_view(input: &SeenInput) -> FishView {
    let words = input.words;
    let title = match input.session {
        None => words.say("feed-no-session"),
        Some(_) if input.at_aim => words.say("seen-at-aim"),
        Some(_) => words.say("seen-at-spot"),
    };
    let mut says = vec![words.say("seen-what")];
    says.extend(input.session.into_iter().flat_map(|session| lately(words, session, input.now)));
    let place = if input.at_aim { "feed-to-aim" } else { "feed-to-spot" };
    let key = |tag: &str, id: &str, tap: SeenTap| key(input, tag, id, tap);
    FishView {
        title,
        says,
        classes: FISH_SIGNS
            .map(|sign| {
                let id = format!("seen-{}", tag(sign));
                FishKey { closes: true, ..key(tag(sign), &id, SeenTap::Sign { sign }) }
            })
            .to_vec(),
        small: vec![FishKey {
            solid: input.at_aim,
            enabled: input.session.is_some() && input.has_spot,
            ..key("place", place, SeenTap::AtAim { aim: !input.at_aim })
        }],
        weigh: FishKey {
            tap: KeyTap::Open { which: Which::Swim },
            ..key("map", "seen-map", SeenTap::AtAim { aim: true })
        },
    }
}

fn key(input: &SeenInput, tag: &str, id: &str, tap: SeenTap) -> FishKey {
    let rod = input.rod.to_string();
    let say = |id: &str| input.words.say_with(id, &[("rod", Arg::Text(&rod))]);
    FishKey {
        tag: tag.into(),
        label: say(id),
        sub: say(&format!("{id}-sub")),
        spoken: say(&format!("{id}-spoken")),
        solid: false,
        enabled: input.session.is_some(),
        tap: Action::Seen { tap }.into(),
        closes: false,
    }
}

/// "Bubbles 12 min ago.", the last first.
fn lately(words: &Wording, session: &Session, now: &Stamp) -> Vec<String> {
    let line = |shown: &restwater_session::FishShown| {
        let minutes = whole(libm::floor(now.minutes_since(&shown.at).max(0.0)));
        let what = super::sentence_case(&sign_words(words, shown.sign));
        words.say_with("seen-ago", &[("what", Arg::Text(&what)), ("minutes", Arg::Text(&minutes))])
    };
    session.shown.iter().rev().take(LISTED).map(line).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_sign_has_its_words() {
        let words = Wording::new();
        for sign in FISH_SIGNS {
            for part in ["", "-sub", "-spoken", "-words"] {
                assert!(words.has(&format!("seen-{}{part}", tag(sign))), "{sign:?}");
            }
        }
    }
}
