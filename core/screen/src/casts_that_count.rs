//! Which casts count for a picture: chosen by taps, one row a question.

use super::place::spot_words;
use super::{Arg, Choice, ChoiceRow, Wording};
use restwater_compare::CastRow;
use restwater_compare::Factor;
use restwater_session::{Session, value_of};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// What is asked of a cast for it to count. An empty filter takes all of today's casts and the earlier
/// sessions'.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct CastFilter {
    /// Only this rod.
    pub rod: Option<u8>,
    /// Only this spot, in its fixed spelling.
    pub spot: Option<String>,
    /// Only this bait.
    pub bait: Option<String>,
    /// Only today's session.
    pub today_only: bool,
}

impl CastFilter {
    /// Whether a cast counts.
    pub fn takes(&self, row: &CastRow) -> bool {
        let is = |wanted: &Option<String>, factor| {
            wanted.as_ref().is_none_or(|wanted| row.setup.get(&factor) == Some(wanted))
        };
        self.rod.is_none_or(|rod| row.rod == rod)
            && is(&self.spot, Factor::Spot)
            && is(&self.bait, Factor::Bait)
    }

    /// The filter with one thing changed; none where there is no such choice.
    #[must_use]
    pub fn with(mut self, field: &str, value: &str) -> Option<Self> {
        let text = || Some(value.to_owned()).filter(|v| !v.is_empty());
        match field {
            "rod" if value.is_empty() => self.rod = None,
            "rod" => self.rod = Some(value.parse().ok().filter(|n| (1..=9).contains(n))?),
            "spot" => self.spot = text(),
            "bait" => self.bait = text(),
            "sessions" => {
                self.today_only = match value {
                    "today" => true,
                    "" => false,
                    _ => return None,
                }
            }
            _ => return None,
        }
        Some(self)
    }

    /// The rows of choices: those with nothing to choose between are left out.
    pub(crate) fn rows(
        &self,
        words: &Wording,
        session: &Session,
        rows: &[CastRow],
        earlier: usize,
    ) -> Vec<ChoiceRow> {
        let mut out = Vec::new();
        let rods: BTreeSet<u8> = rows.iter().map(|row| row.rod).collect();
        let rods = rods.into_iter().map(|rod| {
            let label = words.say_with("rod", &[("rod", Arg::Text(&rod.to_string()))]);
            (label, rod.to_string())
        });
        let chosen = self.rod.map(|rod| rod.to_string());
        out.extend(row(words, "rod", chosen.as_deref(), "waits-all-rods", rods.collect()));
        let values = |factor| {
            let set: BTreeSet<&String> = rows.iter().filter_map(|row| row.setup.get(&factor)).collect();
            set.into_iter().cloned().collect::<Vec<String>>()
        };
        let spots = values(Factor::Spot).into_iter().map(|v| (spot_of(words, session, &v), v)).collect();
        out.extend(row(words, "spot", self.spot.as_deref(), "waits-all-spots", spots));
        let baits = values(Factor::Bait).into_iter().map(|v| (v.clone(), v)).collect();
        out.extend(row(words, "bait", self.bait.as_deref(), "waits-all-baits", baits));
        if earlier > 0 {
            let with = words.say_with("waits-with-earlier", &[("count", Arg::Count(earlier))]);
            let chosen = self.today_only.then_some("today");
            let mut sessions = choices(chosen, with, vec![(words.say("waits-today-only"), "today".into())]);
            let value = sessions.iter().find(|c| c.chosen).map(|c| c.label.clone()).unwrap_or_default();
            out.push(ChoiceRow {
                field: "sessions".into(),
                label: words.say("waits-row-sessions"),
                value,
                choices: std::mem::take(&mut sessions),
                source: String::new(),
            });
        }
        out
    }
}

fn row(
    words: &Wording,
    field: &str,
    chosen: Option<&str>,
    all: &str,
    values: Vec<(String, String)>,
) -> Option<ChoiceRow> {
    if values.len() < 2 && chosen.is_none() {
        return None;
    }
    let choices = choices(chosen, words.say(all), values);
    let value = choices.iter().find(|c| c.chosen).map(|c| c.label.clone()).unwrap_or_default();
    let label = words.say(&format!("waits-row-{field}"));
    Some(ChoiceRow { field: field.into(), label, value, choices, source: String::new() })
}

fn choices(chosen: Option<&str>, all: String, values: Vec<(String, String)>) -> Vec<Choice> {
    let first = Choice { label: all, value: String::new(), chosen: chosen.is_none() };
    let rest = values.into_iter().map(|(label, value)| Choice {
        label,
        chosen: chosen == Some(value.as_str()),
        value,
    });
    std::iter::once(first).chain(rest).collect()
}

/// A spot in its fixed spelling, in words: as it was last cast at, by the mark that stands in its direction.
pub(crate) fn spot_of(words: &Wording, session: &Session, value: &str) -> String {
    let is = |spot: &&restwater_log::Spot| {
        value_of(Factor::Spot, &restwater_log::Rig::default(), Some(spot)).as_deref() == Some(value)
    };
    let spot = session.casts.iter().rev().filter_map(|cast| cast.spot.as_ref()).find(is);
    spot.map_or_else(
        || value.to_owned(),
        |spot| {
            let mark =
                session.marks.iter().find(|mark| mark.bearing_cdeg == spot.bearing_cdeg).map(|mark| mark.id);
            let free = restwater_log::Spot { clipped: false, mark: spot.mark.or(mark), ..spot.clone() };
            spot_words(words, session, Some(&free))
        },
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_known_choices_change_the_filter() {
        let filter = CastFilter::default();
        assert_eq!(filter.clone().with("rod", "2").and_then(|f| f.rod), Some(2));
        assert!(filter.clone().with("rod", "0").is_none() && filter.clone().with("rod", "many").is_none());
        assert!(
            filter.clone().with("moon", "full").is_none() && filter.clone().with("sessions", "x").is_none()
        );
        let bread = filter.with("bait", "bread").and_then(|f| f.with("sessions", "today"));
        let bread = bread.unwrap();
        assert!(bread.today_only);
        assert_eq!(bread.with("bait", "").map(|f| f.bait), Some(None));
    }
}
