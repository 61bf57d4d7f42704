//! The keys of the Bank screen: which there are in a state, and what they say.

use super::hours::{is_out_of_hours, is_to_be_ended};
use super::left_open::left_open;
use super::{BankInput, BankState};
use crate::feed::feed_words;
use crate::seen::neighbour_id;
use crate::{
    Action, Arg, FeedTap, FishTap, Key, KeyTap, KeyView, KeyWeight, LandedFish, SeenTap, Which, Wording,
    entry_words,
};
use restwater_log::{Entry, RodNumber, Side};
use restwater_session::{Played, Rod, RodState, bite_before_s, fish_is_on};

/// The keys in reading order: the ones in the middle, the wide one, then the small ones.
pub(super) fn keys(input: &BankInput, state: BankState) -> Vec<KeyView> {
    let fish_on = input.session.and_then(fish_is_on);
    let several = input.session.is_some_and(|session| session.rods.len() > 1);
    let fish_elsewhere = fish_on.filter(|_| state != BankState::FishOn);
    let pad = Pad { input, state, several, fish_elsewhere };
    let main: &[Key] = match state {
        BankState::NoSession => return vec![pad.key(Key::Start), pad.key(Key::Undo), pad.key(Key::Redo)],
        BankState::Ready | BankState::Away => &[Key::Cast, Key::Swim],
        BankState::Over => &[Key::End, Key::Swim],
        BankState::Landed => &[Key::FishClass, Key::PutBack, Key::Weigh, Key::Cast, Key::Fish],
        BankState::Out => &[Key::Bite, Key::WoundIn, Key::Cast, Key::LandedLate, Key::LostLate],
        BankState::FishOn => &[Key::Landed, Key::Lost, Key::Missed],
    };
    let small = [Key::Liner, Key::TimeBack, Key::Undo];
    let more = [
        Key::TimeBackFive,
        Key::Redo,
        Key::Twitch,
        Key::Indication,
        Key::Feed,
        Key::FeedOther,
        Key::NeighbourLeft,
        Key::NeighbourRight,
        Key::NeighbourAcross,
        Key::Seen,
        Key::Tackle,
        Key::Away,
        if state == BankState::Over { Key::Cast } else { Key::End },
    ];
    // While a bait is out, Tackle is under Screens alone: what it changes is for the next cast.
    let placed = more.iter().filter(|key| state != BankState::Out || **key != Key::Tackle);
    main.iter().chain(&small).chain(placed).map(|key| pad.key(*key)).collect()
}

/// The ids of a key's messages in one string, to save allocations: twenty keys are written each second.
struct Ids {
    sub: String,
}

impl Ids {
    const SUB: &str = "-sub";

    fn of(name: &str) -> Self {
        Self { sub: ["key-", name, Self::SUB].concat() }
    }

    fn label(&self) -> &str {
        self.sub.strip_suffix(Self::SUB).unwrap_or(&self.sub)
    }

    fn sub(&self) -> &str {
        &self.sub
    }

    fn spoken(&self) -> String {
        [self.label(), "-spoken"].concat()
    }
}

struct Pad<'a> {
    input: &'a BankInput<'a>,
    state: BankState,
    several: bool,
    /// A rod that has a fish on while the keys act on another, which has none.
    fish_elsewhere: Option<RodNumber>,
}

impl Pad<'_> {
    fn key(&self, key: Key) -> KeyView {
        if let Some(view) = self.input.landed.and_then(|fish| fish_key(self.input, fish, key)) {
            return view;
        }
        let words = self.input.words;
        let away = key == Key::Away && self.input.session.is_some_and(|session| session.away().is_some());
        let name = match key {
            Key::Away if away => "returned",
            key => side_of(key).map_or_else(|| name(key), neighbour_id),
        };
        let again = if key == Key::Feed { self.fed_last() } else { None };
        let what = match key {
            Key::Feed => again.clone().unwrap_or_else(|| words.say("key-feed-first")),
            Key::Undo => self.entry(self.input.undo),
            Key::Redo => self.entry(self.input.redo),
            _ => String::new(),
        };
        let back = self.set_back(key);
        let rod = self.named_rod(key).map(|rod| rod_words(words, rod));
        let said = [what.as_str(), back.as_deref().unwrap_or_default(), rod.as_deref().unwrap_or_default()];
        let args =
            [("what", said[0]), ("back", said[1]), ("rod", said[2])].map(|(id, text)| (id, Arg::Text(text)));
        let name = match key {
            // The fish of another rod has its bite.
            Key::LandedLate if back.is_none() => self::name(Key::Landed),
            Key::LostLate if back.is_none() => self::name(Key::Lost),
            _ => name,
        };
        let ids = Ids::of(name);
        let sub = match key {
            _ if rod.is_some() && back.is_some() => words.say_with("key-late-rod-sub", &args),
            _ if rod.is_some() => said[2].to_owned(),
            Key::Cast if self.state == BankState::Out => words.say("key-cast-closes"),
            Key::Cast => words.say("key-cast-first"),
            _ => words.say_with(ids.sub(), &args),
        };
        KeyView {
            key,
            label: words.say(ids.label()),
            sub: Some(sub),
            // Before anything was fed both keys of feed do the same.
            spoken: match (key, &rod) {
                (Key::Feed, _) if again.is_none() => words.say("key-feed-other-spoken"),
                (_, Some(rod)) => words.labelled(rod, &words.say_with(&ids.spoken(), &args)),
                _ => words.say_with(&ids.spoken(), &args),
            },
            weight: if self.is_next(key) { KeyWeight::Solid } else { KeyWeight::Outline },
            enabled: self.is_enabled(key),
            tap: match (key, again) {
                (Key::Away, _) if away => Action::Returned.into(),
                (_, Some(_)) => Action::Feed { tap: FeedTap::Again }.into(),
                _ => match side_of(key) {
                    Some(side) => Action::Seen { tap: SeenTap::Neighbour { side } }.into(),
                    None => Action::of_key(key, self.rod_of(key)),
                },
            },
        }
    }

    /// What was fed by hand last, in words.
    fn fed_last(&self) -> Option<String> {
        let said = self.input.session?.fed.last()?.said;
        Some(feed_words(self.input.words, said.what, &said.amount, self.input.weights))
    }

    /// Whether every rod is in, so that the angler can go away.
    fn all_in(&self) -> bool {
        let ready = |rod: &Rod| matches!(rod.state, RodState::Ready { .. });
        self.input.session.is_some_and(|session| session.rods.iter().all(ready))
    }

    /// The rod that a key acts on: LANDED and LOST are the fish's, wherever that is.
    fn rod_of(&self, key: Key) -> RodNumber {
        let outcome = matches!(key, Key::LandedLate | Key::LostLate);
        self.fish_elsewhere.filter(|_| outcome).unwrap_or(self.input.chosen)
    }

    /// The rod that a key names, if there are several: where a fish is on or may be, nobody looks for the clock of the chosen one.
    fn named_rod(&self, key: Key) -> Option<RodNumber> {
        let outcome = matches!(key, Key::Landed | Key::Lost | Key::Missed | Key::LandedLate | Key::LostLate);
        let of_a_rod = matches!(key, Key::Cast | Key::Bite | Key::WoundIn);
        let named = self.several && (outcome || of_a_rod && self.fish_elsewhere.is_some());
        named.then(|| self.rod_of(key))
    }

    /// How far an outcome that is tapped before its bite sets that back.
    fn set_back(&self, key: Key) -> Option<String> {
        if self.fish_elsewhere.is_some() {
            return None;
        }
        let played = match key {
            Key::LandedLate => Played::Landed,
            Key::LostLate => Played::Lost,
            _ => return None,
        };
        let seconds = bite_before_s(self.input.session?, self.input.chosen, played, self.input.now)?;
        let (id, arg, count) = if seconds < 60 {
            // In steps of ten, so that the key's words don't change with each second. A fish that takes on the drop has no
            // seconds to count.
            match seconds / 10 * 10 {
                0 => return Some(self.input.words.say("key-back-now")),
                seconds => ("key-back-s", "seconds", seconds),
            }
        } else {
            ("key-back-min", "minutes", (seconds + 30) / 60)
        };
        Some(self.input.words.say_with(id, &[(arg, Arg::Count(count as usize))]))
    }

    fn entry(&self, entry: Option<&Entry>) -> String {
        entry.map_or_else(|| self.input.words.say("key-undo-nothing"), |e| entry_words(self.input.words, e))
    }

    /// The one key that is most likely next. It is not a cast outside the hours of a match, or in a session of an earlier day that
    /// was left open.
    fn is_next(&self, key: Key) -> bool {
        let out_of_hours = is_out_of_hours(self.input);
        if self.fish_elsewhere.is_some() {
            return key == Key::LandedLate;
        }
        match (self.state, key) {
            // Every bait and the weigh-in come before END.
            (BankState::Over, Key::End) => left_open(self.input).is_some() || is_to_be_ended(self.input),
            (BankState::Ready | BankState::Landed, Key::Cast) | (BankState::Out, Key::Bite) => !out_of_hours,
            (BankState::Out, Key::WoundIn) => out_of_hours,
            (BankState::NoSession, Key::Start)
            | (BankState::FishOn, Key::Landed)
            | (BankState::Away, Key::Away) => true,
            _ => false,
        }
    }

    fn is_enabled(&self, key: Key) -> bool {
        let out = self.state == BankState::Out;
        match key {
            Key::Undo => self.input.undo.is_some(),
            Key::Redo => self.input.redo.is_some(),
            Key::Liner | Key::Indication => out || self.state == BankState::FishOn,
            Key::Twitch => out,
            Key::Feed
            | Key::FeedOther
            | Key::Seen
            | Key::NeighbourLeft
            | Key::NeighbourRight
            | Key::NeighbourAcross => self.state != BankState::FishOn,
            Key::Away => self.all_in(),
            Key::TimeBack | Key::TimeBackFive => self.input.session.is_some_and(|s| s.last_timed.is_some()),
            _ => true,
        }
    }
}

/// The keys of the landed fish: its class, until it is set the one used last; PUT BACK; its weight.
fn fish_key(input: &BankInput, fish: &LandedFish, key: Key) -> Option<KeyView> {
    let words = input.words;
    let said = |tap| KeyTap::from(Action::Fish { cast: Some(fish.cast), tap });
    let (id, what, chosen, tap) = match key {
        Key::FishClass => match (&fish.class, &fish.offered) {
            (Some(class), _) => ("is", class.clone(), true, KeyTap::Open { which: Which::Fish }),
            (None, Some(offered)) => {
                ("class", offered.clone(), false, said(FishTap::Class { name: offered.clone() }))
            }
            (None, None) => ("which", String::new(), false, KeyTap::Open { which: Which::Fish }),
        },
        Key::PutBack if fish.put_back => {
            ("keep", String::new(), true, said(FishTap::PutBack { back: false }))
        }
        Key::PutBack => ("back", String::new(), false, said(FishTap::PutBack { back: true })),
        Key::Weigh => {
            let weight = fish.weight_words(words);
            let id = if weight.is_some() { "weight" } else { "weigh" };
            (id, weight.unwrap_or_default(), false, KeyTap::Open { which: Which::Weight })
        }
        _ => return None,
    };
    let args = [("what", Arg::Text(&what)), ("label", Arg::Text(&what.to_uppercase()))];
    Some(KeyView {
        key,
        label: words.say_with(&format!("key-fish-{id}"), &args),
        sub: Some(words.say_with(&format!("key-fish-{id}-sub"), &args)),
        spoken: words.say_with(&format!("key-fish-{id}-spoken"), &args),
        weight: KeyWeight::chosen(chosen),
        enabled: true,
        tap,
    })
}

/// The neighbour whose fish a key logs.
fn side_of(key: Key) -> Option<Side> {
    match key {
        Key::NeighbourLeft => Some(Side::Left),
        Key::NeighbourRight => Some(Side::Right),
        Key::NeighbourAcross => Some(Side::Across),
        _ => None,
    }
}

/// "Rod 2".
fn rod_words(words: &Wording, rod: RodNumber) -> String {
    words.say_with("rod", &[("rod", Arg::Text(&rod.to_string()))])
}

/// The part of a message id that names the key.
fn name(key: Key) -> &'static str {
    match key {
        Key::Cast => "cast",
        Key::Bite => "bite",
        Key::WoundIn => "wound-in",
        Key::Liner => "liner",
        Key::Landed => "landed",
        Key::Lost => "lost",
        Key::Missed => "missed",
        Key::LandedLate => "landed-late",
        Key::LostLate => "lost-late",
        Key::FishClass => "fish-class",
        Key::PutBack => "fish-back",
        Key::Weigh => "fish-weigh",
        Key::Fish => "fish",
        Key::TimeBack => "time-back",
        Key::TimeBackFive => "time-back-five",
        Key::Undo => "undo",
        Key::Redo => "redo",
        Key::Twitch => "twitch",
        Key::Indication => "indication",
        Key::Away => "away",
        Key::Feed => "feed",
        Key::FeedOther => "feed-other",
        Key::Seen => "seen",
        Key::NeighbourLeft => "neighbour-left",
        Key::NeighbourRight => "neighbour-right",
        Key::NeighbourAcross => "neighbour-across",
        Key::Tackle => "tackle",
        Key::Swim => "swim",
        Key::Start => "start",
        Key::End => "end",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_key_has_its_words() {
        let words = Wording::new();
        let all = [
            Key::Cast,
            Key::Bite,
            Key::WoundIn,
            Key::Liner,
            Key::Landed,
            Key::Lost,
            Key::Missed,
            Key::LandedLate,
            Key::LostLate,
            Key::FishClass,
            Key::PutBack,
            Key::Weigh,
            Key::Fish,
            Key::TimeBack,
            Key::TimeBackFive,
            Key::Undo,
            Key::Redo,
            Key::Twitch,
            Key::Indication,
            Key::Away,
            Key::Feed,
            Key::FeedOther,
            Key::Seen,
            Key::NeighbourLeft,
            Key::NeighbourRight,
            Key::NeighbourAcross,
            Key::Tackle,
            Key::Swim,
            Key::Start,
            Key::End,
        ];
        for key in all {
            assert!(words.has(&format!("key-{}", name(key))), "{key:?}");
            assert!(words.has(&format!("key-{}-spoken", name(key))), "{key:?}");
            assert!(key == Key::Cast || words.has(&format!("key-{}-sub", name(key))), "{key:?}");
        }
    }
}
