//! The Match screen: time left, casts left, the nets, what is to come, the fish, the weigh-in, the rules of the day.

mod coming;
mod now;
mod rules;
mod section;
mod total;
mod weigh_in;
mod weights;

pub(crate) use now::bank_line;
pub(crate) use now::{alarms as match_alarms, end_words as match_end, net_weight};
pub use rules::{class_place, first_match, is_net_number, net_name, net_place, usual_class};
pub use section::{OnScales, hanging, scales_cycle};
pub(crate) use total::{TotalFrom, total};
pub(crate) use weights::{estimate, unit_id};
pub use weights::{guess_in, short as weight_words, units, weigh_in_unit};

use super::{Arg, ChoiceRow, FiguresView, LeafKey, MatchTap, Wording};
use restwater_log::{Side, WeightUnit};
use restwater_match_day::running::{Running, RunningError};
use restwater_match_day::typed::TypedWeight;
use restwater_session::MatchSetup;
use restwater_session::own_count::OwnCount;
use restwater_session::rest::{Leaves, Rest};
use restwater_session::{CaughtFish, MatchDay, PegPlace, Rhythm, Session, Stamp, at_scales, is_weighed_in};
use restwater_waits::Advice;
use serde::{Deserialize, Serialize};

/// The phase of the match.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
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
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct MatchLine {
    /// What it is, "Casts left".
    pub label: String,
    /// "3 to 5", or "can't tell yet".
    pub value: String,
    /// Both in one text, for a screen reader and where there is little room.
    pub spoken: String,
}

impl MatchLine {
    /// A figure with what it is.
    pub(crate) fn new(label: String, value: String) -> Self {
        Self { label, value, spoken: String::new() }
    }
}

/// How near a net is to its limit, by the upper end.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum NetWarning {
    /// No limit, or under 80 % of it.
    Clear,
    /// At 80 % of the limit or more.
    Near,
    /// At the limit or over it.
    AtLimit,
}

/// One keepnet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct NetView {
    /// Its name.
    pub name: String,
    /// "5 fish, about 23 lb 4 oz".
    pub holds: String,
    /// Both, as they are drawn above its bar: "Net 1: 5 fish, about 23 lb 4 oz".
    pub heading: String,
    /// "of 50 lb", and the range if it is uncertain.
    pub limit: String,
    /// "near the limit"; empty if it isn't.
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

/// A key that sends a tap.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct MatchKey {
    /// A name for tests.
    pub tag: String,
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
    /// The tap to send.
    pub tap: MatchTap,
}

/// A key that turns to another page of the screen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PageKey {
    /// Its word.
    pub label: String,
    /// A smaller line below.
    pub sub: String,
    /// What a screen reader says.
    pub spoken: String,
}

/// The page of the weigh-in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct WeighInPage {
    /// "Weigh-in: Net 1".
    pub title: String,
    /// Each net that was weighed, compared with the own count.
    pub lines: Vec<MatchLine>,
    /// What the differences mean.
    pub notes: Vec<String>,
    /// The figure typed so far.
    pub figure: String,
    /// Twelve keys of a number pad: the digits from 1 to 9, the next net, 0, and the unit.
    pub pad: Vec<MatchKey>,
    /// Confirms that the figure is the weight of the net.
    pub weighed: MatchKey,
}

/// An alarm that is still to come.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct AlarmView {
    /// Minutes before all-out.
    pub minutes: u16,
    /// Wall ms of the phone at which to ring.
    pub at_ms: i64,
    /// What to say then: "30 min to all-out."
    pub says: String,
}

/// The whole Match screen.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct MatchView {
    /// Its heading.
    pub title: String,
    /// The phase of the match.
    pub phase: MatchPhase,
    /// Time left in digits, "3:14:10"; empty if no time is running.
    pub digits: String,
    /// What they count: "to all-out at 15:00."
    pub says: String,
    /// The time left for a screen reader, to the minute.
    pub spoken: String,
    /// Which nets are near their limit or over it, a sentence each; empty if none is. It comes right after what the digits count.
    pub limit_says: String,
    /// Casts left and the last cast worth making; before a match is set, what would be set.
    pub lines: Vec<MatchLine>,
    /// The nets, in the order of the rules.
    pub nets: Vec<NetView>,
    /// The difference between the two clocks, what the weights are based on and what they leave out.
    pub notes: Vec<String>,
    /// What is to come, in one sentence.
    pub coming_says: String,
    /// Bites, fish, weight to come, finish, daylight.
    pub coming: Vec<MatchLine>,
    /// How that was obtained, on a page behind it.
    pub coming_figures: FiguresView,
    /// Whether no details of the latest fish were entered yet.
    pub fish_waits: bool,
    /// The weigh-in; none without a match.
    pub weigh_in: Option<WeighInPage>,
    /// The rules of the day, each a row of choices.
    pub rows: Vec<ChoiceRow>,
    /// Opens the latest fish.
    pub to_fish: PageKey,
    /// Opens the forecast; once nothing is to come, the result.
    pub to_coming: PageKey,
    /// Opens the rules; `None` once the session is over, when they can no longer be changed.
    pub to_rules: Option<PageKey>,
    /// Opens the weigh-in.
    pub to_weigh_in: PageKey,
    /// Sets a match if there is none.
    pub begin: Option<MatchKey>,
    /// What to do before a match can be set.
    pub offer: Option<LeafKey>,
    /// Alarms still to come, soonest first.
    pub alarms: Vec<AlarmView>,
}

/// What is known about the rest of the match.
pub struct RestInput<'a> {
    /// The advice on leaving a cast.
    pub advice: &'a Advice,
    /// How long the casts to come are left.
    pub leaves: Leaves,
    /// What a cast costs besides its wait.
    pub rhythm: Rhythm,
    /// Earlier sessions in it: the angler's own and another's.
    pub earlier: [usize; 2],
    /// The simulated rest, or `None` if nothing can be forecast.
    pub rest: Option<&'a Rest>,
    /// Whether the weights of fish are guesses because none was landed.
    pub weights_guessed: bool,
}

/// What the screen is made from.
pub struct MatchInput<'a> {
    /// The session, if any was begun.
    pub session: Option<&'a Session>,
    /// Now, on the time line of the session.
    pub now: &'a Stamp,
    /// The place of the peg: this session's, otherwise that of an earlier day on the same water.
    pub peg: Option<PegPlace>,
    /// The landed fish.
    pub caught: &'a [CaughtFish],
    /// The own count; none without a match.
    pub count: Option<&'a Result<OwnCount, RunningError>>,
    /// The rest of the match, or `None` if no session is running.
    pub rest: Option<RestInput<'a>>,
    /// What is on the scales; the first net if nothing was chosen.
    pub on_scales: Option<&'a OnScales>,
    /// The weight being typed for it.
    pub typed: &'a TypedWeight,
    /// The side of the section that was entered first, with its pegs, while the other isn't known.
    pub section_side: Option<(Side, u8)>,
    /// The phone's unit of weight, for sessions without a match.
    pub phone_unit: WeightUnit,
    /// The language.
    pub words: &'a Wording,
}

impl MatchInput<'_> {
    fn match_day(&self) -> Option<&MatchDay> {
        self.session?.match_day.as_ref()
    }

    fn setup(&self) -> Option<&MatchSetup> {
        self.match_day().map(|m| &m.setup)
    }

    fn say(&self, id: &str, args: &[(&str, &str)]) -> String {
        let args: Vec<(&str, Arg)> = args.iter().map(|(name, text)| (*name, Arg::Text(text))).collect();
        self.words.say_with(id, &args)
    }

    fn counted(&self) -> Option<&OwnCount> {
        self.count?.as_ref().ok()
    }

    /// The running weight, with what the scales showed of the nets that were weighed in.
    fn at_scales(&self) -> Option<Running> {
        Some(at_scales(self.session?, self.setup()?, self.counted()?))
    }

    fn is_weighed_in(&self, net: &str) -> bool {
        self.session.is_some_and(|session| is_weighed_in(session, net))
    }
}

/// Makes the Match screen.
pub fn match_view(input: &MatchInput) -> MatchView {
    let setup = input.setup();
    let now = now::Clocks::of(input, input.match_day());
    let page = |name: &str| PageKey {
        label: input.say(&format!("match-to-{name}"), &[]),
        sub: input.say(&format!("match-to-{name}-sub"), &[]),
        spoken: input.say(&format!("match-to-{name}-spoken"), &[]),
    };
    let open = input.session.is_some_and(Session::is_open);
    let begin = (open && setup.is_none()).then(|| rules::begin_key(input));
    let shown = input.match_day().map(|day| day.setup_shown(input.now));
    let rows = if open { rules::rows(input, shown) } else { Vec::new() };
    let nothing_to_come = input.match_day().is_some() && input.rest.is_none();
    MatchView {
        title: input.say("match-title", &[]),
        phase: now.phase,
        digits: now.digits.clone(),
        says: now.says.clone(),
        spoken: now.spoken.clone(),
        limit_says: setup.map_or_else(String::new, |setup| now::limit_says(input, setup)),
        lines: input.match_day().map_or_else(|| rules::first_lines(&rows), |m| coming::casts(input, m)),
        nets: setup.map_or_else(Vec::new, |setup| now::nets(input, setup)),
        notes: now::notes(input),
        coming: input.match_day().map_or_else(Vec::new, |m| coming::coming(input, m)),
        coming_says: input.match_day().map_or_else(String::new, |m| coming::says(input, m)),
        coming_figures: FiguresView { title: input.say("waits-figures", &[]), lines: coming::notes(input) },
        fish_waits: setup.is_some() && input.caught.last().is_some_and(|fish| !fish.is_said),
        weigh_in: setup.map(|setup| weigh_in::page(input, setup)),
        rows,
        to_fish: page("fish"),
        to_coming: page(if nothing_to_come { "result" } else { "coming" }),
        to_rules: open.then(|| page("rules")),
        to_weigh_in: page("weigh-in"),
        begin,
        offer: (!open && setup.is_none()).then(|| LeafKey::start(input.words)),
        alarms: input.match_day().map_or_else(Vec::new, |m| now::alarms_to_come(input.words, m, input.now)),
    }
}
