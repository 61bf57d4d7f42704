//! What is chosen and typed on the Swim screen: bounds, bands, features, hazards, names, the peg's place.

use super::figures::trimmed;
use super::place::bearing_words;
use super::swim::{FEATURES, PegPlaceView, SwimScreen, TypedField};
use super::{Arg, Choice, ChoiceRow};
use restwater_session::LandmarkKind;
use restwater_swim::FeatureKind;

/// The kinds of hazard, by the names they are handed back by.
pub(crate) const HAZARDS: &[&str] = &["snag", "line", "branch", "rope", "shallow"];

impl SwimScreen<'_> {
    pub(super) fn rows(&self) -> Vec<ChoiceRow> {
        let setup = &self.session.swim;
        let none = || self.words.say("swim-none");
        let metres = |cm: u32| {
            self.words.say_with("swim-metres", &[("metres", Arg::Text(&trimmed(f64::from(cm) / 100.0, 1)))])
        };
        let distance = |cm: u32| if cm == 0 { none() } else { metres(cm) };
        let band = |cm: u32| if cm == 0 { self.words.say("swim-usual") } else { metres(cm) };
        let minutes = |m: u32| self.words.say_with("swim-minutes", &[("minutes", Arg::Text(&m.to_string()))]);
        let yes = |n: u32| self.words.say(if n == 1 { "swim-yes" } else { "swim-no" });
        let pegs = [0, 800, 1_000, 1_500, 2_000, 3_000];
        let mut rows = vec![
            self.row("rest", setup.rest_target_min, &[15, 30, 45, 60, 90, 120], &minutes),
            self.row("left", setup.left_peg_cm.unwrap_or(0), &pegs, &distance),
            self.row("right", setup.right_peg_cm.unwrap_or(0), &pegs, &distance),
            self.row(
                "far",
                setup.far_bank_cm.unwrap_or(0),
                &[0, 3_000, 4_000, 5_000, 6_000, 8_000, 10_000],
                &distance,
            ),
            self.row("pegged", u32::from(setup.far_bank_pegged), &[0, 1], &yes),
            self.row("band", setup.band_cm.unwrap_or(0), &[0, 500, 750, 1_000], &band),
        ];
        rows.push(self.named("feature", FEATURES.iter().map(|(_, name)| *name)));
        rows.push(self.named("hazard", HAZARDS.iter().copied()));
        rows.extend(self.things());
        rows
    }

    fn row(&self, field: &str, now: u32, all: &[u32], say: &dyn Fn(u32) -> String) -> ChoiceRow {
        let choice = |n: &u32| Choice { label: say(*n), value: n.to_string(), chosen: *n == now };
        ChoiceRow {
            field: field.into(),
            label: self.words.say(&format!("swim-{field}")),
            value: say(now),
            choices: all.iter().map(choice).collect(),
            source: String::new(),
        }
    }

    fn named<'a>(&self, field: &str, names: impl Iterator<Item = &'a str>) -> ChoiceRow {
        let choice = |name: &str| Choice {
            label: self.words.say(&format!("{field}-{name}")),
            value: name.to_owned(),
            chosen: false,
        };
        ChoiceRow {
            field: field.into(),
            label: self.words.say(&format!("swim-{field}")),
            value: String::new(),
            choices: names.map(choice).collect(),
            source: String::new(),
        }
    }

    /// What was set and can be called otherwise or taken away: a row for each, where there is anything.
    fn things(&self) -> Vec<ChoiceRow> {
        let session = self.session;
        let marks = session.marks.iter().map(|m| {
            let bearing = bearing_words(self.words, m.bearing_cdeg);
            (m.id.to_string(), format!("{} ({bearing})", m.name))
        });
        let landmarks = session.landmarks.iter().map(|l| {
            let kind = match l.what {
                LandmarkKind::Feature(kind) => feature_name(kind).map(|name| format!("feature-{name}")),
                LandmarkKind::Hazard { .. } => Some("swim-a-hazard".to_owned()),
            };
            let kind = kind.map_or_else(String::new, |id| self.words.say(&id));
            let metres = trimmed(f64::from(l.range_cm) / 100.0, 1);
            let at = self.words.say_with("swim-metres", &[("metres", Arg::Text(&metres))]);
            let said = if l.name.is_empty() { kind } else { l.name.clone() };
            (l.id.to_string(), format!("{said} ({at})"))
        });
        let named: Vec<(String, String)> = marks.chain(landmarks).collect();
        let outline =
            (!session.outline_cm.is_empty()).then(|| ("outline".to_owned(), self.words.say("swim-outline")));
        let row = |field: &str, all: Vec<(String, String)>| ChoiceRow {
            field: field.into(),
            label: self.words.say(&format!("swim-{field}")),
            value: String::new(),
            choices: all.into_iter().map(|(value, label)| Choice { label, value, chosen: false }).collect(),
            source: String::new(),
        };
        let rows = [row("rename", named.clone()), row("remove", named.into_iter().chain(outline).collect())];
        rows.into_iter().filter(|row| !row.choices.is_empty()).collect()
    }

    /// Latitude, longitude and bearing, as typed or as set.
    pub(super) fn place_view(&self) -> PegPlaceView {
        let words = self.words;
        let fields = ["lat", "lon", "out"].into_iter().zip(&self.place);
        PegPlaceView {
            label: words.say("peg-place"),
            value: words.say(if self.session.peg_place.is_some() {
                "peg-place-set"
            } else {
                "peg-place-none"
            }),
            note: words.say("peg-place-note"),
            fields: fields
                .map(|(field, value)| TypedField {
                    field: field.into(),
                    label: words.say(&format!("peg-place-{field}")),
                    value: value.clone(),
                })
                .collect(),
        }
    }
}

fn feature_name(kind: FeatureKind) -> Option<&'static str> {
    FEATURES.iter().find(|(k, _)| *k == kind).map(|(_, name)| *name)
}
