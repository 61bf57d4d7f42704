//! What the system shows and sounds outside the app, and the settings of the phone.

use super::feed::feed_weight;
use super::feed_ways::{FEED_WAYS, FeedWay};
use super::match_day::{match_alarms, match_end};
use super::phone_settings::{Alarm, Hand, PhoneChoices, Scheme, Settings};
use super::{
    Action, Arg, BankState, BankView, Choice, ChoiceRow, Key, KeyView, KeyWeight, PhoneTap, RodLeave,
    RodView, Wording,
};
use restwater_log::{RodNumber, WeightUnit};
use restwater_session::{Session, Stamp, after_the_fish, is_after_all_out, is_all_out, running_wait_ms};
use serde::{Deserialize, Serialize};

/// A key on the lock screen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct WatchKey {
    /// What it does.
    pub key: Key,
    /// Its word.
    pub label: String,
    /// What a tap on it sends.
    pub action: Action,
}

/// An alarm.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct WatchAlarm {
    /// Stays the same for the same cast or the same minute of the match, so that a later version replaces the
    /// alarm.
    pub id: String,
    /// When, by the phone's wall clock as it is set now, ms since 1970 UTC.
    pub at_wall_ms: i64,
    /// What it says first.
    pub title: String,
    /// What it says below.
    pub text: String,
    /// The rod it rings for; `None` for the match.
    pub rod: Option<RodNumber>,
    /// Keys that answer it at once.
    pub keys: Vec<WatchKey>,
}

/// What a lock screen shows and when the phone rings.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct WatchView {
    /// Whether a session is open; without one nothing is shown and nothing rings.
    pub open: bool,
    /// Whether the screen is to stay on.
    pub keep_awake: bool,
    /// The rod the keys act on.
    pub rod: RodNumber,
    /// What that rod is doing, in words.
    pub title: String,
    /// The same after the app's name, for a screen reader.
    pub spoken: String,
    /// The advice for it.
    pub text: String,
    /// From when a clock counts up, or `None` if there is nothing to count.
    pub since_wall_ms: Option<i64>,
    /// At most three keys.
    pub keys: Vec<WatchKey>,
    /// The key that is due next, for one tap without a look; `None` if none is.
    pub next: Option<Key>,
    /// Alarms to come, soonest first.
    pub alarms: Vec<WatchAlarm>,
    /// Alarms whose time has come and which still apply: their cast is out, their match is running. A shell
    /// withdraws only alarms that are in neither list.
    pub due: Vec<WatchAlarm>,
}

/// The Phone screen: what belongs to this phone and not to the log.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PhoneView {
    /// What it is about.
    pub title: String,
    /// Alarm, screen, hand, scheme.
    pub rows: Vec<ChoiceRow>,
}

/// What the lock screen is made from.
pub struct WatchInput<'a> {
    /// The words of the locale.
    pub words: &'a Wording,
    /// The session that the screens are about, if one is open.
    pub session: Option<&'a Session>,
    /// The Bank screen now.
    pub bank: &'a BankView,
    /// How long to leave each rod that is out.
    pub leaves: &'a [RodLeave],
    /// What was chosen on the Phone screen.
    pub phone: PhoneChoices,
    /// Now, on the time line of the session.
    pub now: &'a Stamp,
}

/// Makes it.
pub fn watch_view(input: &WatchInput) -> WatchView {
    let chosen = input.bank.rods.iter().find(|rod| rod.chosen);
    let title = chosen.map_or_else(String::new, |rod| {
        let (name, since) = (Arg::Text(&rod.name), Arg::Text(&rod.since));
        input.words.say_with("watch-title", &[("rod", name), ("since", since)])
    });
    let counts = chosen.filter(|rod| !rod.digits.is_empty());
    let (due, alarms) =
        all_alarms(input).into_iter().partition(|alarm| alarm.at_wall_ms <= input.now.shown.wall_ms);
    WatchView {
        open: input.session.is_some(),
        keep_awake: input.phone.awake && input.session.is_some(),
        rod: chosen.map_or(1, |rod| rod.rod),
        spoken: input.words.labelled(&input.words.say("watch-app"), &title),
        title,
        text: input.bank.advice.headline.clone(),
        since_wall_ms: counts.map(|rod| input.now.shown.wall_ms - rod.elapsed_ms),
        keys: keys(input),
        next: next(input),
        alarms,
        due,
    }
}

/// The most common keys in this state, in the order of the pad. After all-out none casts: nobody looks at what it says.
fn keys(input: &WatchInput) -> Vec<WatchKey> {
    let wanted: &[Key] = match input.bank.state {
        BankState::NoSession => &[],
        BankState::Ready | BankState::Landed => &[Key::Cast, Key::Undo],
        BankState::Away => &[Key::Away, Key::Cast, Key::Undo],
        BankState::Over => &[Key::Undo],
        BankState::Out => &[Key::Bite, Key::WoundIn, Key::Cast],
        BankState::FishOn => &[Key::Landed, Key::Lost, Key::Missed],
    };
    let all_out = input.session.is_some_and(|session| is_after_all_out(session, input.now));
    let key = |wanted: &Key| {
        let offered = |view: &&KeyView| view.key == *wanted && view.enabled;
        let view = input.bank.keys.iter().find(offered).filter(|view| !(all_out && view.key == Key::Cast))?;
        Some(WatchKey { key: view.key, label: view.label.clone(), action: view.tap.action()?.clone() })
    };
    wanted.iter().filter_map(key).collect()
}

/// The solid key of the Bank, if it logs what a rod or the angler does: outside the hours of a match that is not a cast.
fn next(input: &WatchInput) -> Option<Key> {
    let keys = [Key::Cast, Key::Bite, Key::Landed, Key::WoundIn, Key::Away];
    let due = |view: &&KeyView| view.weight == KeyWeight::Solid && view.enabled && keys.contains(&view.key);
    input.bank.keys.iter().find(due).map(|view| view.key)
}

/// The alarms of the baits that are out and of the match, including past ones, soonest first.
fn all_alarms(input: &WatchInput) -> Vec<WatchAlarm> {
    let mut all = alarms(input);
    if let Some(match_day) = input.session.and_then(|s| s.match_day.as_ref()) {
        all.extend(match_alarms(input.words, match_day, input.now).into_iter().map(|alarm| WatchAlarm {
            id: format!("match-{}", alarm.minutes),
            at_wall_ms: alarm.at_ms,
            title: alarm.says,
            text: match_end(input.words, match_day, input.now),
            rod: None,
            keys: Vec::new(),
        }));
    }
    restwater_sorting::by_key(&mut all, |alarm| alarm.at_wall_ms);
    all
}

/// One alarm for each bait that is out, counted from the moment from which its wait counts.
fn alarms(input: &WatchInput) -> Vec<WatchAlarm> {
    let Some(session) = input.session else { return Vec::new() };
    let minute = |rod: RodNumber| {
        let leave = input.leaves.iter().find(|leave| leave.rod == rod);
        match input.phone.alarm {
            Alarm::Off => None,
            Alarm::Hold => leave?.hold_min,
            Alarm::Recast => Some(leave?.recast_min),
            Alarm::After(minutes) => Some(f64::from(minutes)),
        }
    };
    let id = match input.phone.alarm {
        Alarm::Hold => "watch-hold",
        Alarm::Recast => "watch-recast",
        // The wait that counts is shorter than the time the bait has been out.
        Alarm::After(_) if session.setup.settle_s > 0 || session.setup.twitch_restarts => "watch-waited",
        Alarm::Off | Alarm::After(_) => "watch-after",
    };
    let key = |key, label, action| WatchKey { key, label: input.words.say(label), action };
    let alarm = |rod: &RodView| {
        let minute = minute(rod.rod)?;
        let minutes = Arg::Count(libm::round(minute) as usize);
        let cast = session.running(rod.rod)?;
        let waited_ms = running_wait_ms(session, cast, input.now)?;
        let left_ms = (minute * 60_000.0) as i64 - waited_ms;
        let at_ms = after_the_fish(session, input.now.at_ms.saturating_add(left_ms))?;
        // In a match the bait comes in at all-out.
        if is_all_out(session, cast, input.now.at_ms.max(at_ms), Some(input.now)) {
            return None;
        }
        let keys = vec![
            key(Key::WoundIn, "key-wound-in", Action::WoundIn { rod: rod.rod }),
            key(Key::Cast, "key-cast", Action::Cast { rod: rod.rod }),
        ];
        Some(WatchAlarm {
            id: format!("rod-{}", rod.rod),
            at_wall_ms: input.now.wall_at(at_ms),
            title: input.words.say_with(id, &[("rod", Arg::Text(&rod.name)), ("minutes", minutes)]),
            text: rod.since.clone(),
            rod: Some(rod.rod),
            keys,
        })
    };
    let out = input.bank.rods.iter().filter(|rod| rod.state == BankState::Out);
    out.filter_map(alarm).collect()
}

/// Minutes of waiting to choose from for an alarm: usual leave times (common practice, no source).
const AFTER_MIN: &[u16] = &[5, 10, 12, 15, 20, 25, 30];

/// Makes the Phone screen.
pub fn phone_view(words: &Wording, phone: PhoneChoices, settings: Settings) -> PhoneView {
    let minutes = |n: u16| words.say_with("phone-after", &[("minutes", Arg::Count(usize::from(n)))]);
    let named = |row: &str, tag: &str, chosen, action| {
        Choice::new(tag, words.say(&format!("phone-{row}-{tag}")), chosen, action)
    };
    let ring = |alarm| Action::Phone { tap: PhoneTap::Alarm { alarm } };
    let mut alarms: Vec<Choice> = [("off", Alarm::Off), ("hold", Alarm::Hold), ("recast", Alarm::Recast)]
        .map(|(tag, alarm)| named("alarm", tag, alarm == phone.alarm, ring(alarm)))
        .to_vec();
    let mut after = AFTER_MIN.to_vec();
    if let Alarm::After(own) = phone.alarm
        && !after.contains(&own)
    {
        after.push(own);
    }
    alarms.extend(after.into_iter().map(|n| {
        let alarm = Alarm::After(n);
        Choice::new(n.to_string(), minutes(n), phone.alarm == alarm, ring(alarm))
    }));
    let awake =
        |tag: &str, on| named("awake", tag, phone.awake == on, Action::Phone { tap: PhoneTap::Awake { on } });
    let weights = |tag: &str, unit| {
        named("weights", tag, phone.weights == unit, Action::Phone { tap: PhoneTap::Weights { unit } })
    };
    let hand = |tag: &str, hand| {
        named("hand", tag, settings.hand == hand, Action::Set { hand: Some(hand), scheme: None })
    };
    let scheme = |tag: &str, scheme| {
        let chosen = settings.scheme == scheme && !phone.night_at_dusk;
        named("scheme", tag, chosen, Action::Set { hand: None, scheme: Some(scheme) })
    };
    let feed = FEED_WAYS.iter().map(|way| feed_row(words, &phone, way));
    let dusk = named("scheme", "dusk", phone.night_at_dusk, Action::Phone { tap: PhoneTap::NightAtDusk });
    let row = |tag: &str, choices| {
        let how = words.say(&format!("phone-{tag}-how"));
        ChoiceRow::of(tag, words.say(&format!("phone-{tag}")), choices, how)
    };
    PhoneView {
        title: words.say("phone-title"),
        rows: vec![
            row("alarm", alarms),
            row("awake", vec![awake("on", true), awake("off", false)]),
            row("weights", vec![weights("lb", WeightUnit::Drams), weights("kg", WeightUnit::Grams)]),
            row("hand", vec![hand("right", Hand::Right), hand("left", Hand::Left)]),
            row("scheme", vec![scheme("day", Scheme::Day), scheme("night", Scheme::Night), dusk]),
        ]
        .into_iter()
        .chain(feed)
        .collect(),
    }
}

/// The assumed weight of a measure of feed: from half to three times the usual weight.
fn feed_row(words: &Wording, phone: &PhoneChoices, way: &FeedWay) -> ChoiceRow {
    let now = phone.feed.of(way);
    let mut all: Vec<u32> = [50, 75, 100, 150, 200, 300].map(|percent| way.guess_mg / 100 * percent).to_vec();
    if !all.contains(&now) {
        all.push(now);
    }
    let choices = all.into_iter().map(|mg| {
        let action = Action::Phone { tap: PhoneTap::Feed { what: way.what, measure: way.measure, mg } };
        let label = feed_weight(words, phone.weights, u64::from(mg));
        Choice::new(mg.to_string(), label, mg == now, action)
    });
    let label = words.say(&format!("phone-feed-{}", way.tag));
    ChoiceRow::of(format!("feed-{}", way.tag), label, choices.collect(), words.say("source-common"))
}
