//! What is seen and heard while the app is not looked at, and the choices that belong to the phone.

use super::match_day::{match_alarms, match_end};
use super::phone_settings::{Alarm, Hand, PhoneChoices, Scheme, Settings};
use super::{Arg, BankState, BankView, Choice, ChoiceRow, Key, RodView, Wording};
use restwater_log::RodNumber;
use restwater_session::{Session, Stamp, running_wait_ms};
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
    /// When, by the phone's wall clock as it is set now, ms since 1970 UTC.
    pub at_wall_ms: i64,
    /// Whether that time has come. Such an alarm stays in the list for as long as what it is about goes on: its cast is
    /// out, its match is fished. A shell sets those that have not rung, and takes back only what is no longer listed.
    pub rung: bool,
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
    /// What is to ring and what has rung, soonest first.
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
    WatchView {
        open: input.session.is_some(),
        keep_awake: input.phone.awake && input.session.is_some(),
        rod: chosen.map_or(1, |rod| rod.rod),
        title,
        text: input.bank.advice.headline.clone(),
        since_wall_ms: counts.map(|rod| input.now.shown.wall_ms - rod.elapsed_ms),
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
    if let Some(match_day) = input.session.and_then(|s| s.match_day.as_ref()) {
        all.extend(match_alarms(input.words, match_day, input.now).into_iter().map(|alarm| WatchAlarm {
            id: format!("match-{}", alarm.minutes),
            at_wall_ms: alarm.at_ms,
            rung: alarm.at_ms <= input.now.shown.wall_ms,
            title: alarm.says,
            text: match_end(input.words, &match_day.setup, input.now),
        }));
    }
    restwater_sorting::by_key(&mut all, |alarm| alarm.at_wall_ms);
    all
}

/// One alarm for each bait that is out, counted from where its wait counts.
fn alarms(input: &WatchInput) -> Vec<WatchAlarm> {
    let strip = &input.bank.strip;
    let minute = match input.phone.alarm {
        Alarm::Off => None,
        Alarm::Hold => strip.hold_min,
        Alarm::Recast => strip.recast_min,
        Alarm::After(minutes) => Some(f64::from(minutes)),
    };
    let (Some(minute), Some(session)) = (minute, input.session) else { return Vec::new() };
    let id = match input.phone.alarm {
        Alarm::Hold => "watch-hold",
        Alarm::Recast => "watch-recast",
        // What counts as waiting is less than the bait has been out.
        Alarm::After(_) if session.setup.settle_s > 0 || session.setup.twitch_restarts => "watch-waited",
        Alarm::Off | Alarm::After(_) => "watch-after",
    };
    let minutes = Arg::Count(libm::round(minute) as usize);
    let alarm = |rod: &RodView| {
        let waited_ms = running_wait_ms(session, session.running(rod.rod)?, input.now)?;
        let left_ms = (minute * 60_000.0) as i64 - waited_ms;
        Some(WatchAlarm {
            id: format!("rod-{}", rod.rod),
            at_wall_ms: input.now.shown.wall_ms.saturating_add(left_ms),
            rung: left_ms <= 0,
            title: input.words.say_with(id, &[("rod", Arg::Text(&rod.name)), ("minutes", minutes)]),
            text: rod.since.clone(),
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
