//! Which sessions count: by angler, water, season and water temperature.

use super::Day;
use crate::{
    Action, Arg, BookSet, BookTap, Choice, ChoiceRow, FilterTap, Season, Temperature, WaterChoice, Whose,
    Wording,
};
use chrono::{DateTime, Datelike};
use restwater_match_day::rules::{plain_name, same_name};
use restwater_session::Summary;
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

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

/// The conditions that a session has to meet to count; an empty filter includes all the angler's own
/// sessions.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct SetFilter {
    /// Only theirs.
    pub whose: Whose,
    /// Only this water.
    pub water: WaterChoice,
    /// Only these months.
    pub season: Option<Season>,
    /// Only water this cold.
    pub temperature: Option<Temperature>,
}

impl SetFilter {
    /// Whether a session counts.
    pub fn takes(&self, day: &Day) -> bool {
        self.whose.takes(day.mine) && self.takes_gist(day.gist)
    }

    /// The same for anybody's session.
    pub(super) fn takes_gist(&self, day: &Summary) -> bool {
        self.water.takes(day.water.as_deref())
            && self.season.is_none_or(|season| Season::of(day) == Some(season))
            && self.temperature.is_none_or(|t| Temperature::of(day) == t)
    }

    /// Changes one condition.
    pub fn set(&mut self, by: &FilterTap) {
        match by {
            FilterTap::Whose { whose } => self.whose = *whose,
            FilterTap::Water { water } => self.water.clone_from(water),
            FilterTap::Season { season } => self.season = *season,
            FilterTap::Temperature { temperature } => self.temperature = *temperature,
        }
    }

    /// The rows of choices for one set: the values that occur in some session, and what is chosen although the sessions that had
    /// it are gone, as after UNDO IMPORT, so that it can be changed.
    pub(crate) fn rows(&self, words: &Wording, set: BookSet, days: &[Day]) -> Vec<ChoiceRow> {
        let prefix = match set {
            BookSet::Shown => "",
            BookSet::A => "a_",
            BookSet::B => "b_",
        };
        let row = |name: &str, all: FilterTap, values: Vec<Value>| {
            let none = !values.iter().any(|(_, _, chosen, _)| *chosen);
            let all = (String::new(), words.say(&format!("book-all-{name}")), none, all);
            let choice = |(tag, label, chosen, by): Value| {
                Choice::new(tag, label, chosen, Action::Book { tap: BookTap::Filter { set, by } })
            };
            let choices = std::iter::once(all).chain(values).map(choice).collect();
            let label = words.say(&format!("book-row-{prefix}{name}"));
            ChoiceRow::of(format!("{prefix}{name}"), label, choices, String::new())
        };
        let whose = self.asks_whose(days).then(|| {
            let send = |whose| Action::Book { tap: BookTap::Filter { set, by: FilterTap::Whose { whose } } };
            let label = words.say(&format!("book-row-{prefix}whose"));
            self.whose.row(words, &format!("{prefix}whose"), label, send)
        });
        let rows = [
            row("water", FilterTap::Water { water: WaterChoice::Any }, self.waters(words, days)),
            row("season", FilterTap::Season { season: None }, self.seasons(words, days)),
            row("temperature", FilterTap::Temperature { temperature: None }, self.temperatures(words, days)),
        ];
        whose.into_iter().chain(rows).collect()
    }

    /// Whether to ask whose sessions count, which makes sense only if another angler's are here.
    fn asks_whose(&self, days: &[Day]) -> bool {
        self.whose != Whose::Me || days.iter().any(|day| !day.mine)
    }

    fn waters(&self, words: &Wording, days: &[Day]) -> Vec<Value> {
        let chosen = match &self.water {
            WaterChoice::Any => None,
            WaterChoice::Unnamed => Some(""),
            WaterChoice::Named { name } => Some(name.as_str()),
        };
        // Of the ways in which a name was typed, the latest.
        let mut names: BTreeMap<String, &str> = BTreeMap::new();
        for name in days.iter().map(|day| day.gist.water.as_deref().unwrap_or_default()).chain(chosen) {
            names.entry(plain_name(name)).or_insert(name);
        }
        let value = |(i, name): (usize, &str)| {
            let (label, water) = if name.is_empty() {
                (words.say("book-no-water"), WaterChoice::Unnamed)
            } else {
                (name.to_owned(), WaterChoice::Named { name: name.to_owned() })
            };
            let is_chosen = chosen.is_some_and(|chosen| same_name(chosen, name));
            (i.to_string(), label, is_chosen, FilterTap::Water { water })
        };
        names.into_values().enumerate().map(value).collect()
    }

    fn seasons(&self, words: &Wording, days: &[Day]) -> Vec<Value> {
        let there: BTreeSet<Season> =
            days.iter().filter_map(|day| Season::of(day.gist)).chain(self.season).collect();
        let value = |(season, name): (Season, &str)| {
            let season = Some(season);
            let label = words.say(&format!("season-{name}"));
            (name.to_owned(), label, self.season == season, FilterTap::Season { season })
        };
        SEASONS.into_iter().filter(|(season, _)| there.contains(season)).map(value).collect()
    }

    fn temperatures(&self, words: &Wording, days: &[Day]) -> Vec<Value> {
        let there: BTreeSet<Temperature> =
            days.iter().map(|day| Temperature::of(day.gist)).chain(self.temperature).collect();
        let value = |(t, name): (Temperature, &str)| {
            let temperature = Some(t);
            let label = words.say(&format!("temperature-{name}"));
            (name.to_owned(), label, self.temperature == temperature, FilterTap::Temperature { temperature })
        };
        TEMPERATURES.into_iter().filter(|(t, _)| there.contains(t)).map(value).collect()
    }

    /// The filter in words: "Alder Pool, Dec to Feb, water below 4 °C"; "all sessions" if it includes all. It
    /// names the angler if another angler's sessions are here.
    pub(crate) fn words(&self, words: &Wording, days: &[Day]) -> String {
        let whose = self.asks_whose(days).then(|| self.whose.words(words));
        let season = SEASONS.iter().find(|(season, _)| Some(*season) == self.season);
        let cold = TEMPERATURES.iter().find(|(t, _)| Some(*t) == self.temperature);
        let cold = cold.map(|(_, name)| {
            let t = words.say(&format!("temperature-{name}"));
            words.say_with("book-water-at", &[("temperature", Arg::Text(&t))])
        });
        let water = match &self.water {
            WaterChoice::Any => None,
            WaterChoice::Unnamed => Some(words.say("book-no-water")),
            WaterChoice::Named { name } => Some(name.clone()),
        };
        let season = season.map(|(_, name)| words.say(&format!("season-{name}")));
        let parts: Vec<String> = [whose, water, season, cold].into_iter().flatten().collect();
        if parts.is_empty() { words.say("book-all") } else { words.listed(&parts) }
    }
}

/// Tag, label, whether it is chosen, and the tap that chooses it.
type Value = (String, String, bool, FilterTap);

impl WaterChoice {
    fn takes(&self, water: Option<&str>) -> bool {
        let name = water.unwrap_or_default();
        match self {
            Self::Any => true,
            Self::Unnamed => name.is_empty(),
            Self::Named { name: wanted } => same_name(wanted, name),
        }
    }
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
    fn the_season_follows_the_local_date() {
        let utc = day(None, LATE_FEBRUARY, None);
        assert_eq!(Season::of(&utc), Some(Season::DecToFeb));
        assert_eq!(Season::of(&Summary { offset_min: 60, ..utc }), Some(Season::MarToMay));
    }

    #[test]
    fn filters_include_what_their_words_say() {
        let (cold, nameless) =
            (day(Some("Alder Pool"), LATE_FEBRUARY, Some(39)), day(None, LATE_FEBRUARY, None));
        let mine = |gist| Day { id: SESSION, gist, mine: true };
        let (cold, nameless) = (mine(&cold), mine(&nameless));
        let all = SetFilter::default();
        assert!(all.takes(&cold) && all.takes(&nameless));
        let of = |by: FilterTap| {
            let mut filter = all.clone();
            filter.set(&by);
            filter
        };
        let alder = of(FilterTap::Water { water: WaterChoice::Named { name: "Alder Pool".into() } });
        assert!(alder.takes(&cold) && !alder.takes(&nameless));
        let unnamed = of(FilterTap::Water { water: WaterChoice::Unnamed });
        assert!(unnamed.takes(&nameless) && !unnamed.takes(&cold));
        let at = |t| of(FilterTap::Temperature { temperature: Some(t) });
        assert!(at(Temperature::Below4).takes(&cold) && at(Temperature::NotLogged).takes(&nameless));
        assert!(!of(FilterTap::Season { season: Some(Season::JunToAug) }).takes(&cold));
        let theirs = Day { mine: false, ..cold };
        assert!(!all.takes(&theirs), "the angler's own where nothing else is asked for");
        let whose = |whose| of(FilterTap::Whose { whose });
        assert!(whose(Whose::Them).takes(&theirs) && !whose(Whose::Them).takes(&cold));
        assert!(whose(Whose::Both).takes(&theirs) && whose(Whose::Both).takes(&cold));
    }

    #[test]
    fn one_water_in_two_spellings_is_offered_once_as_it_was_typed_last() {
        let days =
            [day(Some("Alder Pool"), LATE_FEBRUARY, None), day(Some("alder pool"), LATE_FEBRUARY, None)];
        let days: Vec<Day> = days.iter().map(|gist| Day { id: SESSION, gist, mine: true }).collect();
        let rows = SetFilter::default().rows(&Wording::new(), BookSet::Shown, &days);
        let waters: Vec<&str> = rows[0].choices.iter().map(|choice| choice.label.as_str()).skip(1).collect();
        assert_eq!(waters, ["Alder Pool"], "the newest day is the first");
        let mut filter = SetFilter::default();
        filter.set(&FilterTap::Water { water: WaterChoice::Named { name: "Alder Pool".into() } });
        assert!(days.iter().all(|day| filter.takes(day)));
    }

    #[test]
    fn only_values_that_occur_can_be_chosen() {
        let days = [day(Some("Alder Pool"), LATE_FEBRUARY, Some(39)), day(None, LATE_FEBRUARY, None)];
        let days: Vec<Day> = days.iter().map(|gist| Day { id: SESSION, gist, mine: true }).collect();
        let rows = SetFilter::default().rows(&Wording::new(), BookSet::A, &days);
        let counts: Vec<usize> = rows.iter().map(|row| row.choices.len()).collect();
        assert_eq!(counts, [3, 2, 3], "all of them first");
        assert!(rows.iter().all(|row| row.choices[0].chosen && row.tag.starts_with("a_")));
        // What is chosen can be changed although its session has gone.
        let mut filter = SetFilter::default();
        for by in [
            FilterTap::Water { water: WaterChoice::Named { name: "Long lake".into() } },
            FilterTap::Season { season: Some(Season::JunToAug) },
            FilterTap::Temperature { temperature: Some(Temperature::Below4) },
        ] {
            filter.set(&by);
        }
        for row in filter.rows(&Wording::new(), BookSet::A, &days[1..]) {
            let chosen: Vec<&str> = row
                .choices
                .iter()
                .filter(|choice| choice.chosen)
                .map(|choice| choice.label.as_str())
                .collect();
            assert_eq!(chosen, [row.value.as_str()]);
            assert_ne!(row.value, row.choices[0].label, "not all of them");
        }
        // The angler can be chosen once another angler's sessions are here.
        let days = [days[0], Day { mine: false, ..days[1] }];
        let rows = SetFilter::default().rows(&Wording::new(), BookSet::A, &days);
        assert_eq!((rows.len(), rows[0].tag.as_str(), rows[0].value.as_str()), (4, "a_whose", "my sessions"));
    }
}
