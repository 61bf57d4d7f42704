//! The Match screen: what a shell hands in and gets back.
//!
//! Each is the core's own type, declared again for uniffi: the compiler refuses one that differs.

use restwater_layout::{MatchLayout, PagePlace, Rect};
use restwater_log::WeightUnit;
use restwater_match_day::rules::{Counting, MatchRules, NetHolds, NetRule, OverLimit};
use restwater_match_day::weight::Weight;
use restwater_screen::{
    AlarmView, ChoiceRow, FishPage, MatchKey, MatchLine, MatchPhase, MatchTap, MatchView, NetView,
    NetWarning, PageKey, Signal, WeighInPage,
};
use restwater_session::{ClassGuess, MatchSetup};

/// A weight in the unit it was read in.
#[uniffi::remote(Enum)]
pub enum Weight {
    /// Whole drams (scales in pounds and ounces).
    Drams(i64),
    /// Whole grams (metric scales).
    Grams(i64),
}

/// What a net may hold.
#[uniffi::remote(Enum)]
pub enum NetHolds {
    /// Any fish.
    Anything,
    /// Only fish of these kinds (carp and silvers apart).
    Only(Vec<String>),
}

/// One keepnet.
#[uniffi::remote(Record)]
pub struct NetRule {
    /// As the angler calls it; no two alike.
    pub name: String,
    /// Most it may hold, if there is a limit.
    pub limit: Option<Weight>,
    /// What may go in.
    pub holds: NetHolds,
}

/// What becomes of a net over its limit.
#[uniffi::remote(Enum)]
pub enum OverLimit {
    /// Weighed in at the limit.
    CountsToTheLimit,
    /// Does not count at all.
    DoesNotCount,
}

/// Which kinds of fish count.
#[uniffi::remote(Enum)]
pub enum Counting {
    /// Every fish.
    Everything,
    /// Only these kinds.
    Only(Vec<String>),
    /// All but these kinds.
    AllBut(Vec<String>),
}

/// The rules of one match. An empty list of nets means that nothing is kept by net.
#[uniffi::remote(Record)]
pub struct MatchRules {
    /// The nets.
    pub nets: Vec<NetRule>,
    /// What becomes of a net over its limit.
    pub over_limit: OverLimit,
    /// Which kinds of fish count.
    pub counting: Counting,
    /// Minutes after all-out in which a fish hooked before it may be landed.
    pub landing_min: u16,
    /// Minutes before all-out at which to sound.
    pub alarms_min: Vec<u16>,
}

/// A size class as the angler set it.
#[uniffi::remote(Record)]
pub struct ClassGuess {
    /// As the angler calls it; it is the kind of fish, too, that the rules speak of.
    pub name: String,
    /// Guessed mean weight of one fish, until some are weighed.
    pub guess: Weight,
}

/// A match, whole: the last one in force is the one that counts. Times are UTC ms by the organiser's clock.
#[uniffi::remote(Record)]
pub struct MatchSetup {
    /// All-in.
    pub all_in_ms: i64,
    /// All-out.
    pub all_out_ms: i64,
    /// What to add to the phone's time to read the organiser's.
    pub offset_ms: i64,
    /// The unit of the scales.
    pub unit: WeightUnit,
    /// The finest mark of the scales at the weigh-in.
    pub mark: Weight,
    /// Nets, limits, kinds that count, landing after all-out, alarms.
    pub rules: MatchRules,
    /// The size classes, in the order of their keys.
    pub classes: Vec<ClassGuess>,
}

/// A signal of the organiser.
#[uniffi::remote(Enum)]
pub enum Signal {
    /// All-in.
    AllIn,
    /// All-out.
    AllOut,
}

/// One tap on the Match screen.
#[uniffi::remote(Enum)]
pub enum MatchTap {
    /// The whole match at once.
    Set {
        /// As it is to be.
        setup: MatchSetup,
    },
    /// One of the choices of the rules; the first one begins the match.
    Choose {
        /// The row's field.
        field: String,
        /// The choice's value.
        value: String,
    },
    /// The organiser's signal was heard now: the two clocks are set against each other.
    Heard {
        /// Which signal.
        signal: Signal,
    },
    /// Another of the landed fish is meant.
    Fish {
        /// How many landings before the latest; 0 is the latest.
        back: u32,
    },
    /// The figure of the fish's weight goes up or down.
    Step {
        /// By so many drams or grams, the unit of the match.
        by: i64,
    },
    /// The figure is what the scales show.
    Weighed,
    /// The figure is a guess by eye.
    Guessed,
    /// The weight of the fish, figure and all.
    Weight {
        /// The unit.
        unit: WeightUnit,
        /// How many of it.
        count: i64,
        /// Whether it is a guess by eye.
        guessed: bool,
    },
    /// The fish is one of this size class.
    Class {
        /// Its name.
        name: String,
    },
    /// The fish went into this net, and so do the next ones.
    Net {
        /// Its name.
        name: String,
    },
    /// The fish went back into the water, or it did not.
    PutBack {
        /// Whether it went back.
        back: bool,
    },
    /// This net hangs on the scales.
    ScalesNet {
        /// Its name.
        name: String,
    },
    /// The figure of the scales goes up or down.
    ScalesStep {
        /// By so many drams or grams, the unit of the match.
        by: i64,
    },
    /// The figure is what the net weighed.
    WeighIn,
    /// What a net weighed, figure and all.
    WeighedIn {
        /// Name of the net.
        net: String,
        /// The unit.
        unit: WeightUnit,
        /// How many of it.
        count: i64,
    },
}

/// Where the match stands.
#[uniffi::remote(Enum)]
pub enum MatchPhase {
    /// No session was ever begun.
    NoSession,
    /// No match is set.
    NoMatch,
    /// Before all-in.
    Before,
    /// Between all-in and all-out.
    Fishing,
    /// After all-out, while a hooked fish may be landed.
    Landing,
    /// Over.
    Over,
}

/// A figure of the Match screen.
#[uniffi::remote(Record)]
pub struct MatchLine {
    /// What it is, "Casts left".
    pub label: String,
    /// "3 to 5", or "can't tell yet".
    pub value: String,
}

/// How near a net is to its limit, by the upper end.
#[uniffi::remote(Enum)]
pub enum NetWarning {
    /// No limit, or under 80 % of it.
    Clear,
    /// At 80 % of the limit or more.
    Near,
    /// At the limit or over it.
    AtLimit,
}

/// One keepnet.
#[uniffi::remote(Record)]
pub struct NetView {
    /// Its name.
    pub name: String,
    /// "5 fish, about 23 lb 4 oz".
    pub holds: String,
    /// "of 50 lb", and the range where it is uncertain.
    pub limit: String,
    /// "NEAR THE LIMIT"; empty where it isn't.
    pub says: String,
    /// How near to the limit.
    pub warning: NetWarning,
    /// Lower end, expected weight and upper end as shares of the limit; empty without a limit.
    pub shares: Vec<f64>,
    /// Whether the next fish goes into it.
    pub in_use: bool,
    /// The whole for a screen reader.
    pub spoken: String,
}

/// A key that hands back a tap.
#[uniffi::remote(Record)]
pub struct MatchKey {
    /// Its word.
    pub label: String,
    /// A smaller line below.
    pub sub: String,
    /// What a screen reader says.
    pub spoken: String,
    /// Whether it is drawn in solid ink.
    pub solid: bool,
    /// Whether it can be tapped now.
    pub enabled: bool,
    /// What to hand back.
    pub tap: MatchTap,
}

/// A key that turns to another page of the screen.
#[uniffi::remote(Record)]
pub struct PageKey {
    /// Its word.
    pub label: String,
    /// A smaller line below.
    pub sub: String,
    /// What a screen reader says.
    pub spoken: String,
}

/// The page of one fish.
#[uniffi::remote(Record)]
pub struct FishPage {
    /// "Fish 7, landed 12:46".
    pub title: String,
    /// What is known of it, and the net it is in.
    pub says: Vec<String>,
    /// Whether the latest fish is one of which nothing was said yet.
    pub waits: bool,
    /// The size classes.
    pub classes: Vec<MatchKey>,
    /// The net in use; a tap is the next one.
    pub net: MatchKey,
    /// PUT BACK and EARLIER.
    pub more: Vec<MatchKey>,
    /// The figure that the steps change, "12 lb 7 oz".
    pub figure: String,
    /// The steps: up, left to right, then down.
    pub steps: Vec<MatchKey>,
    /// A large step down, GUESSED, a large step up.
    pub above: Vec<MatchKey>,
    /// The figure is what the scales show.
    pub weighed: MatchKey,
}

/// The page of the weigh-in.
#[uniffi::remote(Record)]
pub struct WeighInPage {
    /// "Weigh-in: Net 1".
    pub title: String,
    /// Each net that was weighed against the own count.
    pub lines: Vec<MatchLine>,
    /// What the differences mean.
    pub notes: Vec<String>,
    /// The figure that the steps change.
    pub figure: String,
    /// The steps: up, left to right, then down.
    pub steps: Vec<MatchKey>,
    /// A large step down, the next net, a large step up.
    pub above: Vec<MatchKey>,
    /// The figure is what the net weighed.
    pub weighed: MatchKey,
}

/// An alarm that is still to come.
#[uniffi::remote(Record)]
pub struct AlarmView {
    /// Minutes before all-out.
    pub minutes: u16,
    /// Wall ms of the phone at which to ring.
    pub at_ms: i64,
    /// What to say then: "30 min to all-out."
    pub says: String,
}

/// The whole Match screen.
#[uniffi::remote(Record)]
pub struct MatchView {
    /// Its heading.
    pub title: String,
    /// Where the match stands.
    pub phase: MatchPhase,
    /// Time left in digits, "3:14:10"; empty where nothing runs.
    pub digits: String,
    /// What they count: "to all-out at 15:00."
    pub says: String,
    /// The time left for a screen reader, to the minute.
    pub spoken: String,
    /// Casts left and the last cast worth making; before a match is set, what would be set.
    pub lines: Vec<MatchLine>,
    /// The nets, in the order of the rules.
    pub nets: Vec<NetView>,
    /// How far the two clocks are apart, what the weights rest on and what is left out of them.
    pub notes: Vec<String>,
    /// Bites, fish, weight to come, finish, daylight.
    pub coming: Vec<MatchLine>,
    /// How that was obtained.
    pub coming_notes: Vec<String>,
    /// The fish; none without a match.
    pub fish: Option<FishPage>,
    /// The weigh-in; none without a match.
    pub weigh_in: Option<WeighInPage>,
    /// The rules of the day, each a row of choices.
    pub rows: Vec<ChoiceRow>,
    /// To the fish.
    pub to_fish: PageKey,
    /// To entering a weight.
    pub to_weight: PageKey,
    /// To what is to come.
    pub to_coming: PageKey,
    /// To the rules.
    pub to_rules: PageKey,
    /// To the weigh-in.
    pub to_weigh_in: PageKey,
    /// Sets a match where there is none.
    pub begin: Option<MatchKey>,
    /// Alarms still to come, soonest first.
    pub alarms: Vec<AlarmView>,
}

/// Where the keys lie, in px.
#[uniffi::remote(Record)]
pub struct MatchLayout {
    /// The wide key beside BACK.
    pub wide: Rect,
    /// Three small keys above them, counted from the thumb.
    pub small: Vec<Rect>,
    /// The page beside those.
    pub now: PagePlace,
    /// Two or four large keys above BACK, counted from the thumb.
    pub classes: Vec<Rect>,
    /// Three small keys above those.
    pub above_classes: Vec<Rect>,
    /// The page beside classes and small keys.
    pub fish: PagePlace,
    /// Steps of a figure: three up, three down below them, from left to right.
    pub steps: Vec<Rect>,
    /// Three small keys above those, from left to right.
    pub above_steps: Vec<Rect>,
    /// The page beside steps and small keys.
    pub weight: PagePlace,
}
