//! The choices and texts of the Swim screen: bounds, bands, features, hazards, names, the peg's position.

use super::{PegPlaceView, SwimScreen};
use crate::feed::measures_words;
use crate::place::bearing_words;
use crate::{Action, Arg, Choice, ChoiceRow, HazardKind, SwimTap, SwimThing, TypedField, TypedInto};
use crate::{FEED_WAYS, FISH_SIGNS, FeedWay};
use restwater_log::FishSign;
use restwater_session::LandmarkKind;
use restwater_swim::FeatureKind;
use uuid::Uuid;

/// The kinds of feature, in the order they are offered.
const FEATURES: [FeatureKind; 10] = [
    FeatureKind::Bar,
    FeatureKind::DropOff,
    FeatureKind::Hole,
    FeatureKind::Weed,
    FeatureKind::Silt,
    FeatureKind::Gravel,
    FeatureKind::Clay,
    FeatureKind::Island,
    FeatureKind::FishSeen,
    FeatureKind::Other,
];

/// The message that names a kind of feature.
fn feature_id(kind: FeatureKind) -> &'static str {
    match kind {
        FeatureKind::Bar => "feature-bar",
        FeatureKind::DropOff => "feature-drop_off",
        FeatureKind::Hole => "feature-hole",
        FeatureKind::Weed => "feature-weed",
        FeatureKind::Silt => "feature-silt",
        FeatureKind::Gravel => "feature-gravel",
        FeatureKind::Clay => "feature-clay",
        FeatureKind::Island => "feature-island",
        FeatureKind::FishSeen => "feature-fish_seen",
        FeatureKind::Other => "feature-other",
    }
}

/// The message that names how fish showed.
fn seen_id(sign: FishSign) -> &'static str {
    match sign {
        FishSign::Rolled => "seen-rolled-words",
        FishSign::Bubbles => "seen-bubbles-words",
        FishSign::Topping => "seen-topping-words",
    }
}

/// A choice of the Swim screen.
fn choice(tag: impl Into<String>, label: String, chosen: bool, tap: SwimTap) -> Choice {
    Choice::new(tag, label, chosen, Action::Swim { tap })
}

impl SwimScreen<'_> {
    pub(super) fn rows(&self) -> Vec<ChoiceRow> {
        // Each choice is written in the session, and nothing is once it has ended.
        if !self.session.is_open() {
            return Vec::new();
        }
        let setup = &self.session.swim;
        let none = || self.words.say("swim-none");
        let metres = |cm: u32| {
            self.words.say_with(
                "swim-metres",
                &[("metres", Arg::Text(&self.words.figure(f64::from(cm) / 100.0, 1)))],
            )
        };
        let distance = |cm: u32| if cm == 0 { none() } else { metres(cm) };
        let band = |cm: u32| if cm == 0 { self.words.say("swim-usual") } else { metres(cm) };
        let minutes = |m: u32| self.words.say_with("swim-minutes", &[("minutes", Arg::Text(&m.to_string()))]);
        let yes = |n: u32| self.words.say(if n == 1 { "swim-yes" } else { "swim-no" });
        let pegs = [0, 800, 1_000, 1_500, 2_000, 3_000];
        let some = |cm: u32| Some(cm).filter(|cm| *cm > 0);
        let far = [0, 3_000, 4_000, 5_000, 6_000, 8_000, 10_000];
        let mut rows = vec![
            self.row("rest", setup.rest_target_min, &[15, 30, 45, 60, 90, 120], &minutes, &|minutes| {
                SwimTap::RestTarget { minutes }
            }),
            self.row("left", setup.left_peg_cm.unwrap_or(0), &pegs, &distance, &|cm| SwimTap::LeftPeg {
                cm: some(cm),
            }),
            self.row("right", setup.right_peg_cm.unwrap_or(0), &pegs, &distance, &|cm| SwimTap::RightPeg {
                cm: some(cm),
            }),
            self.row("far", setup.far_bank_cm.unwrap_or(0), &far, &distance, &|cm| SwimTap::FarBank {
                cm: some(cm),
            }),
            self.row("pegged", u32::from(setup.far_bank_pegged), &[0, 1], &yes, &|n| {
                SwimTap::FarBankPegged { pegged: n == 1 }
            }),
            self.row("band", setup.band_cm.unwrap_or(0), &[0, 500, 750, 1_000], &band, &|cm| SwimTap::Band {
                cm: some(cm),
            }),
        ];
        // Nothing can be logged at the aim while an earlier moment is shown: without a choice the aim is the ring, which may be
        // elsewhere now.
        if self.replay.is_none() {
            rows.extend(self.at_the_ring());
        }
        rows.extend(self.things());
        rows
    }

    fn at_the_ring(&self) -> [ChoiceRow; 4] {
        let features = FEATURES.map(|feature| (feature_id(feature), SwimTap::Feature { feature }));
        let hazards = HazardKind::ALL.map(|hazard| (hazard.id(), SwimTap::Hazard { hazard }));
        let seen = FISH_SIGNS.map(|sign| (seen_id(sign), SwimTap::Seen { sign }));
        [
            self.named("seen", seen),
            self.feed(),
            self.named("feature", features),
            self.named("hazard", hazards),
        ]
    }

    fn row(
        &self,
        tag: &str,
        now: u32,
        all: &[u32],
        say: &dyn Fn(u32) -> String,
        tap: &dyn Fn(u32) -> SwimTap,
    ) -> ChoiceRow {
        let choices = all.iter().map(|n| choice(n.to_string(), say(*n), *n == now, tap(*n))).collect();
        let label = self.words.say(&format!("swim-{tag}"));
        let reads = matches!(tag, "left" | "right" | "far");
        ChoiceRow { value: say(now), reads, ..ChoiceRow::of(tag, label, choices, String::new()) }
    }

    fn named<const N: usize>(&self, tag: &str, all: [(&str, SwimTap); N]) -> ChoiceRow {
        let prefix = format!("{tag}-");
        let choices = all
            .into_iter()
            .map(|(id, tap)| choice(id.strip_prefix(&prefix).unwrap_or(id), self.words.say(id), false, tap));
        ChoiceRow::of(tag, self.words.say(&format!("swim-{tag}")), choices.collect(), String::new())
    }

    /// A measure of feed for the cell that is aimed at.
    fn feed(&self) -> ChoiceRow {
        let choice = |way: &FeedWay| {
            let label = measures_words(self.words, way, 1);
            choice(way.tag, label, false, SwimTap::Feed { what: way.what, measure: way.measure })
        };
        let choices = FEED_WAYS.iter().map(choice).collect();
        ChoiceRow::of("feed", self.words.say("swim-feed"), choices, String::new())
    }

    /// A row for each thing that was set and can be renamed or removed.
    fn things(&self) -> Vec<ChoiceRow> {
        let session = self.session;
        let marks = session.marks.iter().map(|m| {
            let bearing = bearing_words(self.words, m.bearing_cdeg);
            (m.id, format!("{} ({bearing})", m.name))
        });
        let landmarks = session.landmarks.iter().map(|l| {
            let kind = match l.what {
                LandmarkKind::Feature(kind) => feature_id(kind),
                LandmarkKind::Hazard { .. } => "swim-a-hazard",
            };
            let metres = self.words.figure(f64::from(l.range_cm) / 100.0, 1);
            let at = self.words.say_with("swim-metres", &[("metres", Arg::Text(&metres))]);
            let said = if l.name.is_empty() { self.words.say(kind) } else { l.name.clone() };
            (l.id, format!("{said} ({at})"))
        });
        let named: Vec<(Uuid, String)> = marks.chain(landmarks).collect();
        let renames = named
            .iter()
            .map(|(id, label)| choice(id.to_string(), label.clone(), false, SwimTap::Rename { id: *id }));
        let removes = named.iter().map(|(id, label)| {
            let tap = SwimTap::Remove { thing: SwimThing::Set { id: *id } };
            choice(id.to_string(), label.clone(), false, tap)
        });
        let outline = (!session.outline_cm.is_empty()).then(|| {
            let tap = SwimTap::Remove { thing: SwimThing::Outline };
            choice("outline", self.words.say("swim-outline"), false, tap)
        });
        let row = |tag: &str, choices: Vec<Choice>| {
            ChoiceRow::of(tag, self.words.say(&format!("swim-{tag}")), choices, String::new())
        };
        let rows = [row("rename", renames.collect()), row("remove", removes.chain(outline).collect())];
        rows.into_iter().filter(|row| !row.choices.is_empty()).collect()
    }

    /// Latitude, longitude and bearing, as typed or as set.
    pub(super) fn place_view(&self) -> PegPlaceView {
        let words = self.words;
        let into = [
            ("lat", TypedInto::PegLatitude),
            ("lon", TypedInto::PegLongitude),
            ("out", TypedInto::PegBearing),
        ];
        let fields = into.into_iter().zip(&self.place).map(|((tag, into), value)| {
            TypedField::new(tag, words.say(&format!("peg-place-{tag}")), value.clone(), into)
        });
        PegPlaceView {
            label: words.say("peg-place"),
            value: words.say(if self.session.peg_place.is_some() {
                "peg-place-set"
            } else {
                "peg-place-none"
            }),
            spoken: String::new(),
            note: words.say("peg-place-note"),
            fields: fields.collect(),
        }
    }
}
