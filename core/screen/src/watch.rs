//! What is seen and heard while the app is not looked at, and the choices that belong to the phone.

use super::match_day::{match_alarms, match_end};
use super::phone_settings::{Alarm, Hand, PhoneChoices, Scheme, Settings};
use super::{Action, Arg, BankState, BankView, Choice, ChoiceRow, Key, PhoneTap, Wording};
use restwater_log::{Moment, RodNumber};
use restwater_session::Session;
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

/// Something that is to ring.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct WatchAlarm {
    /// The same for the same cast, or for the same minute of the match: a later answer replaces it.
    pub id: String,
    /// When, by the phone's wall clock, ms since 1970 UTC.
    pub at_wall_ms: i64,
    /// What it says first.
    pub title: String,
    /// What it says below.
    pub text: String,
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
    /// What the record says of it.
    pub text: String,
    /// From when a clock counts up; none where there is nothing to count.
    pub since_wall_ms: Option<i64>,
    /// At most three keys.
    pub keys: Vec<WatchKey>,
    /// What is to ring, soonest first.
    pub alarms: Vec<WatchAlarm>,
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
    /// What was chosen on the Phone screen.
    pub phone: PhoneChoices,
    /// Now.
    pub now: &'a Moment,
}

/// Makes it.
pub fn watch_view(input: &WatchInput) -> WatchView {
    let chosen = input.bank.rods.iter().find(|rod| rod.chosen);
    let title = chosen.map_or_else(String::new, |rod| {
        let (name, since) = (Arg::Text(&rod.name), Arg::Text(&rod.since));
        input.words.say_with("watch-title", &[("rod", name), ("since", since)])
    });
    let counts = chosen.filter(|rod| !rod.digits.is_empty());
    WatchView {
        open: input.session.is_some(),
        keep_awake: input.phone.awake && input.session.is_some(),
        rod: chosen.map_or(1, |rod| rod.rod),
        title,
        text: input.bank.advice.headline.clone(),
        since_wall_ms: counts.map(|rod| input.now.wall_ms - rod.elapsed_ms),
        keys: keys(input),
        alarms: all_alarms(input),
    }
}

/// The commonest keys of the state, as they stand on the pad.
fn keys(input: &WatchInput) -> Vec<WatchKey> {
    let wanted: &[Key] = match input.bank.state {
        BankState::NoSession => &[],
        BankState::Ready => &[Key::Cast, Key::Undo],
        BankState::Out => &[Key::Bite, Key::WoundIn, Key::Cast],
        BankState::FishOn => &[Key::Landed, Key::Lost, Key::Missed],
    };
    let key = |wanted: &Key| {
        let view = input.bank.keys.iter().find(|view| view.key == *wanted && view.enabled)?;
        Some(WatchKey { key: view.key, label: view.label.clone(), action: view.tap.action()?.clone() })
    };
    wanted.iter().filter_map(key).collect()
}

/// Those of the baits that are out and those of the match, soonest first.
fn all_alarms(input: &WatchInput) -> Vec<WatchAlarm> {
    let mut all = alarms(input);
    if let Some(setup) = input.session.and_then(|s| s.match_day.as_ref()).map(|m| &m.setup) {
        all.extend(match_alarms(input.words, setup, input.now).into_iter().map(|alarm| WatchAlarm {
            id: format!("match-{}", alarm.minutes),
            at_wall_ms: alarm.at_ms,
            title: alarm.says,
            text: match_end(input.words, setup, input.now),
        }));
    }
    restwater_sorting::by_key(&mut all, |alarm| alarm.at_wall_ms);
    all
}

/// One alarm for each bait that is out.
fn alarms(input: &WatchInput) -> Vec<WatchAlarm> {
    let strip = &input.bank.strip;
    let minute = match input.phone.alarm {
        Alarm::Off => None,
        Alarm::Hold => strip.hold_min,
        Alarm::Recast => strip.recast_min,
        Alarm::After(minutes) => Some(f64::from(minutes)),
    };
    let (Some(minute), Some(_)) = (minute, input.session) else { return Vec::new() };
    let id = match input.phone.alarm {
        Alarm::Hold => "watch-hold",
        Alarm::Recast => "watch-recast",
        Alarm::Off | Alarm::After(_) => "watch-after",
    };
    let minutes = Arg::Count(libm::round(minute) as usize);
    let out = input.bank.rods.iter().filter(|rod| rod.state == BankState::Out);
    let mut alarms: Vec<WatchAlarm> = out
        .map(|rod| WatchAlarm {
            id: format!("rod-{}", rod.rod),
            at_wall_ms: input.now.wall_ms - rod.elapsed_ms + (minute * 60_000.0) as i64,
            title: input.words.say_with(id, &[("rod", Arg::Text(&rod.name)), ("minutes", minutes)]),
            text: rod.since.clone(),
        })
        .filter(|alarm| alarm.at_wall_ms > input.now.wall_ms)
        .collect();
    restwater_sorting::by_key(&mut alarms, |alarm| alarm.at_wall_ms);
    alarms
}

/// Minutes to choose from for an alarm after the splash: usual leave times (common practice, no source).
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
    let hand = |tag: &str, hand| {
        named("hand", tag, settings.hand == hand, Action::Set { hand: Some(hand), scheme: None })
    };
    let scheme = |tag: &str, scheme| {
        named("scheme", tag, settings.scheme == scheme, Action::Set { hand: None, scheme: Some(scheme) })
    };
    let row = |tag: &str, choices| {
        let how = words.say(&format!("phone-{tag}-how"));
        ChoiceRow::of(tag, words.say(&format!("phone-{tag}")), choices, how)
    };
    PhoneView {
        title: words.say("phone-title"),
        rows: vec![
            row("alarm", alarms),
            row("awake", vec![awake("on", true), awake("off", false)]),
            row("hand", vec![hand("right", Hand::Right), hand("left", Hand::Left)]),
            row("scheme", vec![scheme("day", Scheme::Day), scheme("night", Scheme::Night)]),
        ],
    }
}
