//! Which sessions count: by water, season and temperature of the water.

use super::{Day, choice_row};
use crate::{Arg, ChoiceRow, Wording};
use chrono::{DateTime, Datelike};
use restwater_session::Summary;
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// Three months, by the local date a session began on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Season {
    /// December to February.
    DecToFeb,
    /// March to May.
    MarToMay,
    /// June to August.
    JunToAug,
    /// September to November.
    SepToNov,
}

/// How cold the water was, as last logged.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Temperature {
    /// Below 4 °C, where water is densest.
    Below4,
    /// 4 to below 7 °C.
    From4,
    /// 7 to below 10 °C.
    From7,
    /// 10 to below 15 °C.
    From10,
    /// 15 °C and above.
    From15,
    /// Nobody looked.
    NotLogged,
}

const SEASONS: [(Season, &str); 4] = [
    (Season::DecToFeb, "dec-feb"),
    (Season::MarToMay, "mar-may"),
    (Season::JunToAug, "jun-aug"),
    (Season::SepToNov, "sep-nov"),
];

const TEMPERATURES: [(Temperature, &str); 6] = [
    (Temperature::Below4, "below-4"),
    (Temperature::From4, "from-4"),
    (Temperature::From7, "from-7"),
    (Temperature::From10, "from-10"),
    (Temperature::From15, "from-15"),
    (Temperature::NotLogged, "not-logged"),
];

impl Season {
    fn of(day: &Summary) -> Option<Self> {
        let ms = day.started_ms?.checked_add(i64::from(day.offset_min) * 60_000)?;
        let month = DateTime::from_timestamp_millis(ms)?.month();
        Some(match month {
            12 | 1 | 2 => Self::DecToFeb,
            3..=5 => Self::MarToMay,
            6..=8 => Self::JunToAug,
            _ => Self::SepToNov,
        })
    }
}

impl Temperature {
    fn of(day: &Summary) -> Self {
        match day.conditions.water {
            None => Self::NotLogged,
            Some(..=39) => Self::Below4,
            Some(40..=69) => Self::From4,
            Some(70..=99) => Self::From7,
            Some(100..=149) => Self::From10,
            Some(150..) => Self::From15,
        }
    }
}

/// What is asked of a session for it to count; an empty filter takes all.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct SetFilter {
    /// Only this water; an empty name is no name.
    pub water: Option<String>,
    /// Only these months.
    pub season: Option<Season>,
    /// Only water this cold.
    pub temperature: Option<Temperature>,
}

impl SetFilter {
    /// Whether a session counts.
    pub fn takes(&self, day: &Summary) -> bool {
        self.water.as_deref().is_none_or(|water| day.water.as_deref().unwrap_or_default() == water)
            && self.season.is_none_or(|season| Season::of(day) == Some(season))
            && self.temperature.is_none_or(|t| Temperature::of(day) == t)
    }

    /// The filter with one thing changed; none where there is no such choice. An empty value takes all.
    #[must_use]
    pub fn with(mut self, field: &str, value: &str) -> Option<Self> {
        match field {
            "water" => {
                self.water = match value {
                    "" => None,
                    "-" => Some(String::new()),
                    name => Some(name.strip_prefix('=')?.to_owned()),
                }
            }
            "season" if value.is_empty() => self.season = None,
            "season" => self.season = Some(SEASONS.iter().find(|(_, name)| *name == value)?.0),
            "temperature" if value.is_empty() => self.temperature = None,
            "temperature" => {
                self.temperature = Some(TEMPERATURES.iter().find(|(_, name)| *name == value)?.0);
            }
            _ => return None,
        }
        Some(self)
    }

    /// The rows of choices, their fields with `prefix`; only what some session has can be chosen.
    pub(crate) fn rows(&self, words: &Wording, prefix: &str, days: &[Day]) -> Vec<ChoiceRow> {
        let waters: BTreeSet<&str> =
            days.iter().map(|(_, day)| day.water.as_deref().unwrap_or_default()).collect();
        let waters = waters.into_iter().map(|name| {
            let label = if name.is_empty() { words.say("book-no-water") } else { name.to_owned() };
            (water_value(name), label)
        });
        let seasons: BTreeSet<Season> = days.iter().filter_map(|(_, day)| Season::of(day)).collect();
        let seasons = SEASONS.iter().filter(|(season, _)| seasons.contains(season));
        let seasons = seasons.map(|(_, name)| ((*name).to_owned(), words.say(&format!("season-{name}"))));
        let cold: BTreeSet<Temperature> = days.iter().map(|(_, day)| Temperature::of(day)).collect();
        let cold = TEMPERATURES.iter().filter(|(t, _)| cold.contains(t));
        let cold = cold.map(|(_, name)| ((*name).to_owned(), words.say(&format!("temperature-{name}"))));
        let row = |field: &str, now: String, values: Vec<(String, String)>| {
            let all = (String::new(), words.say(&format!("book-all-{field}")));
            let choices = std::iter::once(all).chain(values).collect();
            let label = words.say(&format!("book-row-{prefix}{field}"));
            choice_row(&format!("{prefix}{field}"), label, &now, choices, String::new())
        };
        let season = self.season.and_then(|s| SEASONS.iter().find(|(season, _)| *season == s));
        let temperature = self.temperature.and_then(|t| TEMPERATURES.iter().find(|(cold, _)| *cold == t));
        vec![
            row("water", self.water.as_deref().map(water_value).unwrap_or_default(), waters.collect()),
            row("season", season.map_or_else(String::new, |(_, n)| (*n).to_owned()), seasons.collect()),
            row(
                "temperature",
                temperature.map_or_else(String::new, |(_, n)| (*n).to_owned()),
                cold.collect(),
            ),
        ]
    }

    /// The filter in words: "Alder Pool, Dec to Feb, water below 4 °C"; "all sessions" where it takes all.
    pub(crate) fn words(&self, words: &Wording) -> String {
        let season = SEASONS.iter().find(|(season, _)| Some(*season) == self.season);
        let cold = TEMPERATURES.iter().find(|(t, _)| Some(*t) == self.temperature);
        let cold = cold.map(|(_, name)| {
            let t = words.say(&format!("temperature-{name}"));
            words.say_with("book-water-at", &[("temperature", Arg::Text(&t))])
        });
        let water =
            self.water.as_ref().map(|w| if w.is_empty() { words.say("book-no-water") } else { w.clone() });
        let season = season.map(|(_, name)| words.say(&format!("season-{name}")));
        let parts: Vec<String> = [water, season, cold].into_iter().flatten().collect();
        if parts.is_empty() { words.say("book-all") } else { parts.join(", ") }
    }
}

/// A name can be anything, so that "all" and "no name" are spelled apart from it.
fn water_value(name: &str) -> String {
    if name.is_empty() { "-".into() } else { format!("={name}") }
}

#[cfg(test)]
mod tests {
    use super::*;
    use restwater_session::fold;
    use restwater_session::written::{SESSION, Written};
    use restwater_sky::conditions::Conditions;

    fn day(water: Option<&str>, started_ms: i64, t: Option<i16>) -> Summary {
        let conditions = Conditions { water: t, ..Conditions::default() };
        let blank = Summary::of(&fold(SESSION, &Written::new(1).ops));
        Summary { water: water.map(str::to_owned), started_ms: Some(started_ms), conditions, ..blank }
    }

    /// 2026-02-28 23:30 UTC.
    const LATE_FEBRUARY: i64 = 1_772_321_400_000;

    #[test]
    fn a_season_goes_by_the_local_date() {
        let utc = day(None, LATE_FEBRUARY, None);
        assert_eq!(Season::of(&utc), Some(Season::DecToFeb));
        assert_eq!(Season::of(&Summary { offset_min: 60, ..utc }), Some(Season::MarToMay));
    }

    #[test]
    fn filters_take_what_they_say() {
        let cold = day(Some("Alder Pool"), LATE_FEBRUARY, Some(39));
        let nameless = day(None, LATE_FEBRUARY, None);
        let all = SetFilter::default();
        assert!(all.takes(&cold) && all.takes(&nameless));
        let of = |field, value| all.clone().with(field, value).unwrap();
        assert!(of("water", "=Alder Pool").takes(&cold) && !of("water", "=Alder Pool").takes(&nameless));
        assert!(of("water", "-").takes(&nameless) && !of("water", "-").takes(&cold));
        assert!(
            of("temperature", "below-4").takes(&cold) && of("temperature", "not-logged").takes(&nameless)
        );
        assert!(!of("season", "jun-aug").takes(&cold));
        for (field, value) in
            [("season", "monsoon"), ("temperature", "hot"), ("water", "Alder"), ("moon", "")]
        {
            assert_eq!(all.clone().with(field, value), None, "{field} {value}");
        }
    }

    #[test]
    fn only_what_is_there_can_be_chosen() {
        let days = [day(Some("Alder Pool"), LATE_FEBRUARY, Some(39)), day(None, LATE_FEBRUARY, None)];
        let days: Vec<Day> = days.iter().map(|day| (SESSION, day)).collect();
        let rows = SetFilter::default().rows(&Wording::new(), "a_", &days);
        let counts: Vec<usize> = rows.iter().map(|row| row.choices.len()).collect();
        assert_eq!(counts, [3, 2, 3], "all of them first");
        assert!(rows.iter().all(|row| row.choices[0].chosen && row.field.starts_with("a_")));
    }
}
