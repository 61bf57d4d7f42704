//! Feed by hand, in the angler's measures or by weight, and the number pad for that. Both screens are drawn
//! like those of a landed fish.

use super::feed_ways::{FEED_WAYS, FeedWay, feed_way};
use super::figures::whole;
use super::match_day::weight_words;
use super::phone_settings::FeedGuesses;
use super::place::{place_words, spot_words};
use super::{
    Action, Arg, FeedTap, FishKey, FishView, KeyTap, KeyWeight, TackleTap, WeightView, Which, Wording,
};
use restwater_bench::units::DRAM_G;
use restwater_log::{FeedAmount, FeedKind, FeedMeasure, RodNumber, Spot, WaterPlace, WeightUnit};
use restwater_match_day::weight::Weight;
use restwater_session::{FedHere, Session, Stamp, feed_mg};

/// The counts of a measure that a key goes through.
const COUNTS: [u16; 6] = [1, 2, 3, 5, 8, 12];
/// Kinds in the order the key of the number pad goes through them.
const KINDS: [FeedKind; 5] =
    [FeedKind::Loose, FeedKind::Ball, FeedKind::Bag, FeedKind::Feeder, FeedKind::Spod];
/// Digits that a weight of feed may have.
pub const FEED_DIGITS: usize = 4;

/// What both screens are made from.
pub struct FeedInput<'a> {
    /// The session that is open.
    pub session: Option<&'a Session>,
    /// The rod that the keys act on.
    pub rod: RodNumber,
    /// The spot of that rod's cast, or of its next one.
    pub spot: Option<&'a Spot>,
    /// Whether feed goes to the aim on the map.
    pub at_aim: bool,
    /// Where that is, if the angler chose any.
    pub aim: Option<WaterPlace>,
    /// Now, on the time line of the session.
    pub now: &'a Stamp,
    /// How many of a measure the next key means.
    pub count: u16,
    /// The assumed weights of measures.
    pub guesses: &'a FeedGuesses,
    /// What goes in by weight.
    pub kind: FeedKind,
    /// The weight as it is typed.
    pub typed: &'a str,
    /// What feed is weighed in.
    pub unit: WeightUnit,
    /// The language.
    pub words: &'a Wording,
}

impl FeedInput<'_> {
    fn say(&self, id: &str, args: &[(&str, &str)]) -> String {
        let args: Vec<(&str, Arg)> = args.iter().map(|(name, text)| (*name, Arg::Text(text))).collect();
        self.words.say_with(id, &args)
    }

    /// A key with the words of an id.
    fn key(&self, tag: &str, id: &str, args: &[(&str, &str)], tap: FeedTap) -> FishKey {
        FishKey {
            tag: tag.into(),
            label: self.say(id, args),
            sub: self.say(&format!("{id}-sub"), args),
            spoken: self.say(&format!("{id}-spoken"), args),
            weight: KeyWeight::Outline,
            enabled: self.session.is_some(),
            tap: Action::Feed { tap }.into(),
            closes: tap.closes(),
        }
    }

    fn here(&self) -> Option<FedHere> {
        let session = self.session?;
        if self.at_aim {
            session.fed_near(self.aim?, self.now)
        } else {
            session.fed_here(self.rod, self.spot, self.now)
        }
    }

    /// Where feed goes, and what is there already.
    fn place(&self) -> Vec<String> {
        let fed = match &self.here() {
            Some(here) => fed_words(self.words, here, self.unit),
            None => self.words.say("feed-none-here"),
        };
        match (self.session, self.aim) {
            (None, _) => vec![fed],
            (Some(_), None) if self.at_aim => vec![self.words.say("aim-none")],
            (Some(session), Some(aim)) if self.at_aim => {
                vec![fed, format!("{}.", place_words(self.words, session, self.rod, aim))]
            }
            (Some(session), _) => vec![fed, format!("{}.", spot_words(self.words, session, self.spot))],
        }
    }

    fn title(&self) -> String {
        match self.session {
            None => self.words.say("feed-no-session"),
            Some(_) if self.at_aim => self.words.say("feed-at-aim"),
            Some(session) if session.rods.len() < 2 => self.words.say("feed-at-spot"),
            Some(_) => self.say("feed-at-rod", &[("rod", &self.rod.to_string())]),
        }
    }
}

/// Makes the screen of feed.
pub fn feed_view(input: &FeedInput) -> FishView {
    let mut says = input.place();
    says.push(input.words.say("feed-guesses"));
    FishView {
        title: input.title(),
        says,
        classes: ways(input).into_iter().map(|way| way_key(input, way)).collect(),
        small: vec![count_key(input), place_key(input), feeder_key(input)],
        reads: false,
        weigh: FishKey {
            tap: KeyTap::Open { which: Which::FeedWeight },
            ..input.key("by-weight", "feed-by-weight", &[], FeedTap::Clear)
        },
    }
}

/// Makes the number pad.
pub fn feed_weight_view(input: &FeedInput) -> WeightView {
    let digit = |digit: u8| FishKey {
        label: digit.to_string(),
        sub: String::new(),
        spoken: digit.to_string(),
        enabled: input.session.is_some() && takes_digit(input.typed, digit),
        ..input.key(&format!("digit-{digit}"), "feed-clear", &[], FeedTap::Digit { digit })
    };
    let mut pad: Vec<FishKey> = (1..=9).map(digit).collect();
    pad.extend([kind_key(input), digit(0), input.key("clear", "feed-clear", &[], FeedTap::Clear)]);
    let kind = input.words.say(kind_id(input.kind));
    let figure = input.say(
        if input.unit == WeightUnit::Grams { "feed-grams" } else { "feed-ounces" },
        &[("count", if input.typed.is_empty() { "0" } else { input.typed })],
    );
    let take =
        input.key("weighed", "feed-weighed", &[("what", &kind), ("weight", &figure)], FeedTap::Weighed);
    WeightView {
        title: input.title(),
        says: kind.clone(),
        weighed: FishKey {
            weight: KeyWeight::Solid,
            enabled: take.enabled && !input.typed.is_empty(),
            ..take
        },
        figure,
        pad,
        guess: None,
    }
}

/// Whether a digit can follow what was typed: a weight doesn't begin with zero.
pub fn takes_digit(typed: &str, digit: u8) -> bool {
    digit <= 9 && typed.len() < FEED_DIGITS && !(typed.is_empty() && digit == 0)
}

/// The ways of feeding, with those used today first, the latest of them at the front.
fn ways(input: &FeedInput) -> Vec<&'static FeedWay> {
    let used = input.session.into_iter().flat_map(|session| session.fed.iter().rev());
    let used = used.filter_map(|fed| match fed.said.amount {
        FeedAmount::Measures { measure, .. } => feed_way(fed.said.what, measure),
        FeedAmount::Weight { .. } => None,
    });
    let mut order: Vec<usize> = Vec::new();
    for place in used.chain(0..FEED_WAYS.len()) {
        if !order.contains(&place) {
            order.push(place);
        }
    }
    order.into_iter().filter_map(|place| FEED_WAYS.get(place)).collect()
}

fn way_key(input: &FeedInput, way: &FeedWay) -> FishKey {
    let each = feed_weight(input.words, input.unit, u64::from(input.guesses.of(way)));
    let kind = input.words.say(kind_id(way.what));
    let id = format!("feed-way-{}", way.tag);
    let tap = FeedTap::Measure { what: way.what, measure: way.measure };
    let args = [("kind", kind.as_str()), ("weight", each.as_str())];
    FishKey {
        label: input.words.say_with(&id, &[("count", Arg::Count(usize::from(input.count)))]),
        sub: input.say(if way.what == FeedKind::Loose { "feed-way-loose" } else { "feed-way-about" }, &args),
        spoken: input.say("feed-way-spoken", &[("what", &measures_words(input.words, way, input.count))]),
        ..input.key(way.tag, "feed-clear", &args, tap)
    }
}

/// How many of a measure the next key means; a tap changes to the next number.
fn count_key(input: &FeedInput) -> FishKey {
    let next = COUNTS.iter().copied().find(|n| *n > input.count).unwrap_or(COUNTS[0]);
    let args = [("count", input.count.to_string()), ("next", next.to_string())];
    let args = [("count", args[0].1.as_str()), ("next", args[1].1.as_str())];
    FishKey {
        weight: KeyWeight::chosen(input.count > 1),
        ..input.key("count", "feed-count", &args, FeedTap::Count { count: next })
    }
}

/// Where it goes: the rod's spot or the cell that is aimed at.
fn place_key(input: &FeedInput) -> FishKey {
    let aim = input.at_aim;
    let id = if aim { "feed-to-aim" } else { "feed-to-spot" };
    FishKey {
        weight: KeyWeight::chosen(aim),
        ..input.key("place", id, &[("rod", &input.rod.to_string())], FeedTap::AtAim { aim: !aim })
    }
}

/// Whether a feeder on the rod feeds with each cast.
fn feeder_key(input: &FeedInput) -> FishKey {
    let rod = input.session.and_then(|session| session.rod(input.rod));
    let fill = rod.and_then(|rod| rod.fill_mg);
    let usual = feed_way(FeedKind::Feeder, FeedMeasure::Fill).and_then(|place| FEED_WAYS.get(place));
    let mg = if fill.is_some() { None } else { usual.map(|way| input.guesses.of(way)) };
    let id = if fill.is_some() { "feed-each-cast-on" } else { "feed-each-cast" };
    let weight = feed_weight(input.words, input.unit, u64::from(fill.unwrap_or_default()));
    let args = [("rod", input.rod.to_string()), ("weight", weight)];
    let args = [("rod", args[0].1.as_str()), ("weight", args[1].1.as_str())];
    FishKey {
        weight: KeyWeight::chosen(fill.is_some()),
        tap: Action::Tackle { rod: input.rod, tap: TackleTap::Feeder { mg } }.into(),
        ..input.key("feeder", id, &args, FeedTap::Clear)
    }
}

/// What goes in by weight; a tap is the next kind.
fn kind_key(input: &FeedInput) -> FishKey {
    let place = KINDS.iter().position(|kind| *kind == input.kind).unwrap_or(0);
    let next = KINDS[(place + 1) % KINDS.len()];
    let kind = input.words.say(kind_id(input.kind));
    let key = input.key("kind", "feed-kind", &[("what", &kind)], FeedTap::Kind { what: next });
    FishKey { label: kind.to_uppercase(), ..key }
}

/// The message that names a kind.
pub(crate) fn kind_id(kind: FeedKind) -> &'static str {
    match kind {
        FeedKind::Loose => "feed-kind-loose",
        FeedKind::Ball => "feed-kind-ball",
        FeedKind::Bag => "feed-kind-bag",
        FeedKind::Feeder => "feed-kind-feeder",
        FeedKind::Spod => "feed-kind-spod",
    }
}

/// "Fed 12 min ago, 340 g here this session."
pub(crate) fn fed_words(words: &Wording, here: &FedHere, unit: WeightUnit) -> String {
    fed("feed-here", words, here, unit)
}

/// The same on the Bank, where room is short: "Fed 12 min ago, 340 g in all."
pub(crate) fn fed_in_short(words: &Wording, here: &FedHere, unit: WeightUnit) -> String {
    fed("feed-bank", words, here, unit)
}

fn fed(id: &str, words: &Wording, here: &FedHere, unit: WeightUnit) -> String {
    let minutes = whole(libm::floor(here.since_min.max(0.0)));
    let weight = feed_weight(words, unit, here.mg);
    words.say_with(id, &[("minutes", Arg::Text(&minutes)), ("weight", Arg::Text(&weight))])
}

/// "2 handfuls, loose" or "250 g, loose".
pub fn feed_words(words: &Wording, what: FeedKind, amount: &FeedAmount, unit: WeightUnit) -> String {
    let way = match *amount {
        FeedAmount::Measures { measure, count, .. } => {
            feed_way(what, measure).and_then(|place| FEED_WAYS.get(place)).map(|way| (way, count))
        }
        FeedAmount::Weight { .. } => None,
    };
    if let Some((way, count)) = way {
        return measures_words(words, way, count);
    }
    let unit = if let FeedAmount::Weight { unit, .. } = amount { *unit } else { unit };
    let (kind, weight) = (words.say(kind_id(what)), feed_weight(words, unit, feed_mg(amount)));
    words.say_with("feed-by-weight-words", &[("kind", Arg::Text(&kind)), ("weight", Arg::Text(&weight))])
}

/// "2 handfuls, loose".
pub(crate) fn measures_words(words: &Wording, way: &FeedWay, count: u16) -> String {
    words.say_with(&format!("feed-words-{}", way.tag), &[("count", Arg::Count(usize::from(count)))])
}

/// A weight of feed: whole grams, from a kilogram on with two decimals; or ounces, below one ounce drams.
pub fn feed_weight(words: &Wording, unit: WeightUnit, mg: u64) -> String {
    let grams = mg as f64 / 1_000.0;
    match unit {
        WeightUnit::Grams if grams >= 1_000.0 => format!("{} kg", words.figure(grams / 1_000.0, 2)),
        WeightUnit::Grams => format!("{} g", whole(grams)),
        WeightUnit::Drams => {
            let drams = grams / DRAM_G;
            let step = if drams >= 16.0 { 16.0 } else { 1.0 };
            weight_words(words, Weight::Drams((libm::round(drams / step) * step) as i64))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_way_has_its_words() {
        let words = Wording::new();
        for way in FEED_WAYS {
            for id in [format!("feed-way-{}", way.tag), format!("feed-words-{}", way.tag)] {
                assert!(words.has(&id), "{id}");
            }
            assert_eq!(feed_way(way.what, way.measure).map(|i| FEED_WAYS[i].tag), Some(way.tag));
        }
        assert_eq!(feed_way(FeedKind::Spod, FeedMeasure::Pinch), None);
    }

    #[test]
    fn feed_is_worded_as_it_was_measured() {
        let words = Wording::new();
        let of = |what, amount| feed_words(&words, what, &amount, WeightUnit::Grams);
        let measures = |measure, count| FeedAmount::Measures { measure, count, each_mg: 30_000 };
        assert_eq!(of(FeedKind::Loose, measures(FeedMeasure::Handful, 1)), "a handful, loose");
        assert_eq!(of(FeedKind::Loose, measures(FeedMeasure::Handful, 3)), "3 handfuls, loose");
        assert_eq!(of(FeedKind::Spod, measures(FeedMeasure::Fill, 2)), "2 spods");
        let weight = FeedAmount::Weight { unit: WeightUnit::Grams, count: 250 };
        assert_eq!(of(FeedKind::Ball, weight), "250 g, balls");
        // A file from elsewhere may contain measures for which there is no key.
        assert_eq!(of(FeedKind::Spod, measures(FeedMeasure::Pinch, 1)), "30 g, spod");
    }

    /// An ounce is 28.349523125 g exactly (international yard and pound agreement of 1959).
    #[test]
    fn weights_of_feed_are_worded_briefly() {
        assert_eq!(feed_weight(&Wording::new(), WeightUnit::Grams, 340_400), "340 g");
        assert_eq!(feed_weight(&Wording::new(), WeightUnit::Grams, 1_250_000), "1.25 kg");
        assert_eq!(feed_weight(&Wording::new(), WeightUnit::Drams, 340_194), "12 oz");
        assert_eq!(feed_weight(&Wording::new(), WeightUnit::Drams, 3_544), "2 dr");
    }
}
