//! Which casts count for a picture, chosen by taps with one row for each condition.

use super::place::{mark_of, spot_words};
use super::usual_names::same_value;
use super::{Action, Arg, Choice, ChoiceRow, WaitsTap, Whose, Wording};
use restwater_compare::CastRow;
use restwater_compare::{Factor, FactorValue};
use restwater_session::{Session, value_of};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// The conditions that a cast has to meet to count. An empty filter includes all casts of today and of
/// earlier sessions.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct CastFilter {
    /// Only this rod.
    pub rod: Option<u8>,
    /// Only this spot.
    pub spot: Option<FactorValue>,
    /// Only this bait.
    pub bait: Option<String>,
    /// Only today's session.
    pub today_only: bool,
}

impl CastFilter {
    /// Whether a cast counts.
    pub fn takes(&self, row: &CastRow) -> bool {
        let of = |factor| row.setup.get(&factor);
        self.rod.is_none_or(|rod| row.rod == rod)
            && self.spot.as_ref().is_none_or(|spot| of(Factor::Spot) == Some(&spot.written()))
            && self
                .bait
                .as_ref()
                .is_none_or(|bait| of(Factor::Bait).is_some_and(|used| same_value(Factor::Bait, used, bait)))
    }

    /// Whether it leaves out no cast of a session.
    pub(crate) fn takes_every_cast(&self) -> bool {
        self.rod.is_none() && self.spot.is_none() && self.bait.is_none()
    }

    /// Whether the casts of an earlier session may count: a bearing and a range are the same spot only from the same peg.
    pub(crate) fn takes_day(&self, same_peg: bool) -> bool {
        same_peg || self.spot.is_none()
    }

    /// The rows of choices; rows with nothing to choose between are left out. The current choice is listed even if no cast of
    /// today has it any more, so that it can be changed.
    pub(crate) fn rows(
        &self,
        words: &Wording,
        session: &Session,
        rows: &[CastRow],
        earlier: usize,
        whose: Option<Whose>,
    ) -> Vec<ChoiceRow> {
        let mut out = Vec::new();
        let rods: BTreeSet<u8> = rows.iter().map(|row| row.rod).chain(self.rod).collect();
        let rods = rods.into_iter().map(|rod| {
            let label = words.say_with("rod", &[("rod", Arg::Text(&rod.to_string()))]);
            (rod.to_string(), label, self.rod == Some(rod), WaitsTap::Rod { rod: Some(rod) })
        });
        out.extend(row(words, "rod", WaitsTap::Rod { rod: None }, "waits-all-rods", rods.collect()));
        let values = |factor, chosen: Option<String>| -> BTreeSet<String> {
            rows.iter().filter_map(|row| row.setup.get(&factor).cloned()).chain(chosen).collect()
        };
        let spots = values(Factor::Spot, self.spot.as_ref().map(FactorValue::written));
        let spots = spots.iter().enumerate().filter_map(|(i, written)| {
            let spot = FactorValue::read(Factor::Spot, written)?;
            let chosen = self.spot.as_ref() == Some(&spot);
            Some((
                i.to_string(),
                spot_of(words, session, written),
                chosen,
                WaitsTap::Spot { spot: Some(spot) },
            ))
        });
        out.extend(row(words, "spot", WaitsTap::Spot { spot: None }, "waits-all-spots", spots.collect()));
        let baits = values(Factor::Bait, self.bait.clone());
        let baits = baits.iter().map(|bait| {
            let chosen = self.bait.as_ref() == Some(bait);
            (bait.clone(), bait.clone(), chosen, WaitsTap::Bait { bait: Some(bait.clone()) })
        });
        out.extend(row(words, "bait", WaitsTap::Bait { bait: None }, "waits-all-baits", baits.collect()));
        if earlier > 0 {
            let with = words.say_with("waits-with-earlier", &[("count", Arg::Count(earlier))]);
            let choices = vec![
                choice(String::new(), with, !self.today_only, WaitsTap::TodayOnly { only: false }),
                choice(
                    "today".into(),
                    words.say("waits-today-only"),
                    self.today_only,
                    WaitsTap::TodayOnly { only: true },
                ),
            ];
            out.push(ChoiceRow::of("sessions", words.say("waits-row-sessions"), choices, String::new()));
        }
        out.extend(whose.map(|whose| {
            let send = |whose| Action::Waits { tap: WaitsTap::Whose { whose } };
            whose.row(words, "whose", words.say("waits-row-whose"), send)
        }));
        out
    }
}

/// Tag, label, whether it is chosen, and what choosing it sends.
type Value = (String, String, bool, WaitsTap);

/// A row of values with "all" before them, or `None` if there is nothing to choose between.
fn row(words: &Wording, tag: &str, all: WaitsTap, all_id: &str, values: Vec<Value>) -> Option<ChoiceRow> {
    let any = values.iter().any(|(_, _, chosen, _)| *chosen);
    if values.len() < 2 && !any {
        return None;
    }
    let first = choice(String::new(), words.say(all_id), !any, all);
    let rest = values.into_iter().map(|(tag, label, chosen, tap)| choice(tag, label, chosen, tap));
    let choices = std::iter::once(first).chain(rest).collect();
    Some(ChoiceRow::of(tag, words.say(&format!("waits-row-{tag}")), choices, String::new()))
}

fn choice(tag: String, label: String, chosen: bool, tap: WaitsTap) -> Choice {
    Choice::new(tag, label, chosen, Action::Waits { tap })
}

fn spot_in<'a>(session: &'a Session, value: &str) -> Option<&'a restwater_log::Spot> {
    let is = |spot: &&restwater_log::Spot| {
        value_of(Factor::Spot, &restwater_log::Rig::default(), Some(spot)).as_deref() == Some(value)
    };
    let cast_at = session.casts.iter().rev().filter_map(|cast| cast.spot.as_ref());
    cast_at.chain(session.rods.iter().filter_map(|rod| rod.spot.as_ref())).find(is)
}

/// The name of the mark of a spot in its fixed spelling: "Dead tree".
pub(crate) fn mark_name(session: &Session, value: &str) -> Option<String> {
    mark_of(session, spot_in(session, value)?).map(|mark| mark.name.clone())
}

/// A spot in its fixed spelling, in words: as it was last cast to or is set for a rod, by the mark in its direction.
pub(crate) fn spot_of(words: &Wording, session: &Session, value: &str) -> String {
    spot_in(session, value).map_or_else(
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
    use restwater_log::{Reach, Rig, Spot};

    /// An earlier version and another phone spell a bait otherwise.
    #[test]
    fn a_bait_chosen_takes_the_casts_with_it_in_another_spelling_or_language() {
        let takes = |chosen: &str, used: &str| {
            let filter = CastFilter { bait: Some(chosen.into()), ..CastFilter::default() };
            let wait = restwater_waits::Wait::new(5.0, true).unwrap();
            let setup = std::collections::BTreeMap::from([(Factor::Bait, used.to_owned())]);
            filter.takes(&CastRow { rod: 1, at_min: 0.0, wait, twitched: false, setup })
        };
        assert!(takes("bread", "Bread") && takes("bread", "Brot") && takes("Zuckmücke", "zuckmücke"));
        assert!(!takes("bread", "corn") && !takes("bread", "Mais"));
    }

    /// The spelling of a value in a cast's row is the form in which a `FactorValue` is written.
    #[test]
    fn a_value_of_a_cast_is_read_and_written_the_same() {
        let reaches = [
            Reach::Wraps { hundredths: 1_275, span_tenth_mm: 36_576 },
            Reach::Metres { cm: 4_211 },
            Reach::Yards { hundredths: 3_833 },
        ];
        let rig = Rig {
            bait: Some("bread".into()),
            colour: Some("pink".into()),
            hooklength_mm: Some(914),
            hook_size: Some(12),
            popup_mm: Some(457),
            lead_mg: Some(28_350),
            material: None,
        };
        let factors = [
            Factor::Spot,
            Factor::Bait,
            Factor::Colour,
            Factor::Height,
            Factor::Hooklength,
            Factor::HookSize,
            Factor::Lead,
        ];
        for reach in reaches {
            for bearing_cdeg in [-8_999, -1_250, 0, 7] {
                let spot = Spot { mark: None, bearing_cdeg, reach, clipped: true };
                for factor in factors {
                    let written = value_of(factor, &rig, Some(&spot)).unwrap();
                    let read = FactorValue::read(factor, &written).unwrap();
                    assert_eq!((read.factor(), read.written()), (factor, written));
                }
            }
        }
    }
}
