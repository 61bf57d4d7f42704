//! What is seen and heard while the app is not looked at, and the choices that belong to the phone.

use super::match_day::{match_alarms, match_end};
use super::phone_settings::{Alarm, Hand, PhoneChoices, Scheme, Settings};
use super::{Arg, BankState, BankView, Choice, ChoiceRow, Key, Wording};
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
        Some(WatchKey { key: view.key, label: view.label.clone() })
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
    let mut alarms: Vec<(String, String, bool)> =
        [("off", Alarm::Off), ("hold", Alarm::Hold), ("recast", Alarm::Recast)]
            .into_iter()
            .map(|(value, alarm)| {
                (value.into(), words.say(&format!("phone-alarm-{value}")), alarm == phone.alarm)
            })
            .collect();
    alarms.extend(AFTER_MIN.iter().map(|n| (n.to_string(), minutes(*n), phone.alarm == Alarm::After(*n))));
    if let Alarm::After(own) = phone.alarm
        && !AFTER_MIN.contains(&own)
    {
        alarms.push((own.to_string(), minutes(own), true));
    }
    let two = |field: &str, values: [(&str, bool); 2]| {
        let say =
            |(value, now): (&str, bool)| (value.into(), words.say(&format!("phone-{field}-{value}")), now);
        row(words, field, values.into_iter().map(say).collect())
    };
    let left = settings.hand == Hand::Left;
    let night = settings.scheme == Scheme::Night;
    PhoneView {
        title: words.say("phone-title"),
        rows: vec![
            row(words, "alarm", alarms),
            two("awake", [("on", phone.awake), ("off", !phone.awake)]),
            two("hand", [("right", !left), ("left", left)]),
            two("scheme", [("day", !night), ("night", night)]),
        ],
    }
}

fn row(words: &Wording, field: &str, choices: Vec<(String, String, bool)>) -> ChoiceRow {
    ChoiceRow {
        field: field.into(),
        label: words.say(&format!("phone-{field}")),
        value: choices.iter().find(|(.., now)| *now).map_or_else(String::new, |(_, label, _)| label.clone()),
        choices: choices.into_iter().map(|(value, label, chosen)| Choice { label, value, chosen }).collect(),
        source: words.say(&format!("phone-{field}-how")),
    }
}
