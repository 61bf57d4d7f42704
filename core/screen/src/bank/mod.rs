//! The Bank screen: the running waits, the wait strip, what they mean in words, and the keys.

mod advice;
mod clock;
mod hours;
mod keys;
mod left_open;
mod strip;

use super::date::hours_minutes;
use super::feed::fed_in_short;
use super::figures::clock;
use super::leave_words::band;
use super::match_day::bank_line;
use super::place::{rig_words, spot_words};
use super::screen_list::top_screen_keys;
use super::{Action, Arg, KeyView, LandedFish, ScreenKey, Wording};
use restwater_log::{Entry, RodNumber, Spot, WeightUnit};
use restwater_session::{HabitBeforeBites, LeaveBySpots, Rhythm, Session, Stamp, fish_is_on};
use restwater_waits::{Advice, AdviceState, FittedTo, WaitingOn};
use serde::{Deserialize, Serialize};

/// What the chosen rod is doing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum BankState {
    /// No session is open.
    NoSession,
    /// Nothing is out: the clock counts the turn-round.
    Ready,
    /// A bait is out: the clock counts the wait.
    Out,
    /// A fish is on: nothing has to be tapped.
    FishOn,
    /// Nothing is out, and the last cast landed a fish: its details may be entered until the next cast.
    Landed,
    /// The angler is away from the rods: I'M BACK is what comes next.
    Away,
    /// The rod is in and is not to be cast any more: all-out has come, or the session is one of an earlier day. END is what comes
    /// next, once every bait is in.
    Over,
}

/// The line at the top.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct HeaderView {
    /// "Peg 22", or the water, or nothing entered.
    pub place: String,
    /// Time of day, "12:46".
    pub clock: String,
    /// Time left in a match, or how long the session has run.
    pub length: String,
    /// The three for a screen reader.
    pub spoken: String,
}

/// One rod's clock.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct RodView {
    /// Which rod, from 1.
    pub rod: u8,
    /// "Rod 1".
    pub name: String,
    /// Its number, where a small screen has no room for its name: "1".
    pub number: String,
    /// Its name if there are several, with what matters at a glance: "Rod 2: FISH ON", "Rod 1: due first".
    pub label: String,
    /// What the digits alone would not say where there are several rods: "FISH ON" while the keys act on another rod, "in" where
    /// there is no wait. It is shown in place of the digits where a small screen has no room for the name, and on the key that
    /// leads to the rod. Otherwise empty.
    pub alert: String,
    /// The word in place of the digits while the rod is in, "in": large digits say how long a bait has been out or a fish on.
    /// Otherwise empty.
    pub word: String,
    /// What it is doing.
    pub state: BankState,
    /// The clock in digits, "21:40" or "1:02:10"; empty before the first cast.
    pub digits: String,
    /// What the digits count, "out since 12:24"; "out since about 12:24" if the start is approximate or the phone's clock was moved.
    pub since: String,
    /// The same for a screen reader, to the minute.
    pub spoken: String,
    /// That, and since when the digits count.
    pub spoken_since: String,
    /// Whether it is the one to recast first of several that are out; a mark says so where its name has no room.
    pub first: bool,
    /// Whether the keys act on it.
    pub chosen: bool,
    /// What a tap on it sends: the keys act on it from then on.
    pub choose: Action,
    /// Milliseconds the clock shows, for a shell that ticks between calls.
    pub elapsed_ms: i64,
}

/// The shape of a mark on the strip.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum StripMarkShape {
    /// A bite came after this wait: a diamond.
    Bite,
    /// The wait ended without one: a stroke.
    NoBite,
    /// A liner on the running cast: a triangle.
    Liner,
}

/// One mark on the strip.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct StripMark {
    /// Where, in minutes from the splash.
    pub minute: f64,
    /// Which of the marks that share a place, from 0, so that they can be stacked.
    pub stack: u32,
    /// Its shape.
    pub shape: StripMarkShape,
}

/// The wait strip: a tape of minutes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct StripView {
    /// Minutes from end to end; a multiple of five.
    pub length_min: f64,
    /// Minutes between the figures printed along the axis.
    pub figure_every_min: u32,
    /// Minutes of the running wait, or `None` if nothing is out.
    pub elapsed_min: Option<f64>,
    /// Hold until this minute.
    pub hold_min: Option<f64>,
    /// Recast by this minute.
    pub recast_min: Option<f64>,
    /// Half of the bites fall between these minutes.
    pub window_min: Option<Vec<f64>>,
    /// Nothing is known beyond this minute.
    pub known_to_min: Option<f64>,
    /// This session's waits on the rods that count.
    pub marks: Vec<StripMark>,
    /// The strip in words, for a screen reader.
    pub spoken: String,
}

/// How the advice is to be shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum AdviceTone {
    /// Nothing can be said yet.
    Unknown,
    /// Keep waiting.
    Hold,
    /// Inside the near-best band.
    Band,
    /// Past it.
    Past,
    /// There is nothing to advise now.
    Quiet,
}

/// What the record says, in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct AdviceView {
    /// "Hold until 22 min. Recast by 27 min."
    pub headline: String,
    /// "3 bites in 8 casts so far."
    pub detail: String,
    /// Further sentences, the most important first.
    pub more: Vec<String>,
    /// How it is to be shown.
    pub tone: AdviceTone,
}

/// The whole Bank screen.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct BankView {
    /// What the chosen rod is doing.
    pub state: BankState,
    /// The line at the top.
    pub header: HeaderView,
    /// The screens whose keys are beside it, if there is something to see on them.
    pub screen_keys: Vec<ScreenKey>,
    /// The rods' clocks, in order.
    pub rods: Vec<RodView>,
    /// The wait strip.
    pub strip: StripView,
    /// What it means.
    pub advice: AdviceView,
    /// Where the cast is or the next one goes.
    pub spot: String,
    /// What is on the line.
    pub rig: String,
    /// Both for a screen reader.
    pub spot_spoken: String,
    /// How long the chosen rod has been out and what the record says about it, for anyone who asks without looking.
    pub wait_spoken: String,
    /// The keys on the pad, in reading order: the small ones, the two in the middle, the wide one.
    pub keys: Vec<KeyView>,
    /// The last taps in words, latest first, for whoever missed the moment.
    pub latest: Vec<String>,
    /// The last of them as a sentence, so that it isn't taken for a key.
    pub logged: String,
}

/// What the record says about the chosen rod at this moment.
#[derive(Debug, Clone)]
pub struct Reading {
    /// How long to leave the next cast.
    pub advice: Advice,
    /// Minutes the running cast has waited, or `None` if nothing is out.
    pub waited_min: Option<f64>,
    /// What waiting on would earn.
    pub waiting: Option<WaitingOn>,
    /// What a cast costs besides its wait.
    pub rhythm: Rhythm,
    /// Casts that the record rests on. One cast may have several waits if twitches restart the wait.
    pub casts: usize,
    /// Casts that have ended and count for no wait, since their end was not seen.
    pub unseen: usize,
    /// The angler's own earlier sessions in it.
    pub earlier: usize,
    /// Earlier sessions in it that are another angler's.
    pub of_another: usize,
    /// The angler's habit of winding in before every bite of the day, if there are enough casts to say so.
    pub habit: Option<HabitBeforeBites>,
    /// What the spots say of the cast that is out or goes out next, where they say anything.
    pub spots: Option<SpotsReading>,
    /// Whether the minutes are those of the angler's plan, since the record can't tell yet.
    pub planned: bool,
}

/// How long to leave a cast, given where else one could cast.
#[derive(Debug, Clone, PartialEq)]
pub struct SpotsReading {
    /// The figures.
    pub leave: LeaveBySpots,
    /// Where to go then; none for the same spot again.
    pub move_to: Option<Spot>,
}

/// How long to leave the cast of a rod that is out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RodLeave {
    /// The rod.
    pub rod: RodNumber,
    /// Until when it is to be held, in minutes of its wait, if that is known.
    pub hold_min: Option<f64>,
    /// By when it is to be recast.
    pub recast_min: f64,
}

impl RodLeave {
    /// The minute by the reading of that rod; `None` while the record says nothing. While it says little there is one minute alone.
    pub fn of(rod: RodNumber, reading: &Reading) -> Option<Self> {
        let advice = Some(&reading.advice).filter(|advice| advice.state != AdviceState::CantTellYet)?;
        let recast_min = f64::from(advice.leave_min);
        let one = advice.is_early.then_some(recast_min);
        Some(Self { rod, hold_min: band(advice).map(|(hold, _)| hold).or(one), recast_min })
    }
}

/// What the Bank screen is made from.
pub struct BankInput<'a> {
    /// The latest session, if there is any.
    pub session: Option<&'a Session>,
    /// The rod the keys act on.
    pub chosen: RodNumber,
    /// Now, on the time line of the session.
    pub now: &'a Stamp,
    /// What the record says; none before the first session.
    pub reading: Option<&'a Reading>,
    /// How long to leave each rod that is out.
    pub leaves: &'a [RodLeave],
    /// Which days the club's start was fitted to that its minutes begin with, if they do.
    pub club: Option<FittedTo>,
    /// What undo would take back.
    pub undo: Option<&'a Entry>,
    /// The fish of the chosen rod's last cast, if it landed one and nothing is out.
    pub landed: Option<&'a LandedFish>,
    /// What redo would bring back.
    pub redo: Option<&'a Entry>,
    /// The latest entries, latest first.
    pub latest: Vec<&'a Entry>,
    /// What feed is weighed in.
    pub weights: WeightUnit,
    /// The language.
    pub words: &'a Wording,
}

/// Makes the Bank screen.
pub fn bank(input: &BankInput) -> BankView {
    let open = input.session.filter(|s| s.is_open());
    let rods: Vec<RodView> = open.map_or_else(Vec::new, |session| clock::rods(input, session));
    let state = rods.iter().find(|rod| rod.chosen).map_or(BankState::NoSession, |rod| rod.state);
    let state = match state {
        BankState::Ready if left_open::left_open(input).is_some() || hours::is_over(input) => BankState::Over,
        BankState::Ready if open.is_some_and(|session| session.away().is_some()) => {
            // Whether or not the angler is back, nothing is to be cast after all-out.
            if hours::is_cast_no_more(input) { BankState::Over } else { BankState::Away }
        }
        BankState::Ready if input.landed.is_some() => BankState::Landed,
        BankState::Ready if hours::is_cast_no_more(input) => BankState::Over,
        state => state,
    };
    let rod = open.and_then(|session| session.rod(input.chosen));
    let cast = open.and_then(|session| session.running(input.chosen));
    let spot = cast.map_or_else(|| rod.and_then(|r| r.spot.as_ref()), |c| c.spot.as_ref());
    let rig = cast.map_or_else(|| rod.map(|r| &r.rig), |c| Some(&c.rig));
    let advice = advice::advice(input, state);
    let latest: Vec<String> =
        input.latest.iter().map(|entry| super::entry_words(input.words, entry)).collect();
    BankView {
        state,
        header: header(input, open),
        screen_keys: top_screen_keys(input.words, input.session.is_some(), open.is_some()),
        rods,
        strip: strip::strip(input, open, &advice.headline),
        advice,
        spot: open.map_or_else(String::new, |session| spot_and_feed(input, session, spot)),
        rig: rig.map_or_else(String::new, |rig| rig_words(input.words, rig)),
        spot_spoken: String::new(),
        wait_spoken: String::new(),
        keys: keys::keys(input, state),
        logged: latest.first().map_or_else(String::new, |what| {
            input.words.say_with("bank-logged", &[("what", Arg::Text(what))])
        }),
        latest,
    }
}

/// "Gate, 30 yd (27.4 m), clipped up. Fed 12 min ago, 340 g in all."
fn spot_and_feed(input: &BankInput, session: &Session, spot: Option<&Spot>) -> String {
    let words = spot_words(input.words, session, spot);
    match session.fed_here(input.chosen, spot, input.now) {
        Some(here) => input.words.sentences(&[&words, &fed_in_short(input.words, &here, input.weights)]),
        None => words,
    }
}

fn header(input: &BankInput, open: Option<&Session>) -> HeaderView {
    let words = input.words;
    let in_match = open.and_then(|session| session.match_day.as_ref());
    let fish_on = open.is_some_and(|session| fish_is_on(session).is_some());
    let left = in_match.and_then(|m| bank_line(words, m, fish_on, input.now));
    let length = open.and_then(|session| session.started.as_ref()).map_or_else(
        || words.say("length-none"),
        |start| {
            words.say_with(
                "length-session",
                &[("time", Arg::Text(&hours_minutes(words, input.now.ms_since(start))))],
            )
        },
    );
    let setup = open.map(|session| &session.setup);
    let place = setup.and_then(|setup| {
        let peg = setup.peg.as_ref().map(|peg| crate::peg_words(words, peg));
        peg.or_else(|| setup.water.clone())
    });
    HeaderView {
        place: place.unwrap_or_else(|| words.say("peg-none")),
        clock: clock(&input.now.shown),
        length: left.unwrap_or(length),
        spoken: String::new(),
    }
}
