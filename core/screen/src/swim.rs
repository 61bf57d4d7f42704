//! The Swim screen: where next with its reasons, the aimed cell in words, the keys round the fan.

mod keys;
mod reasons;
mod rows;
mod why;
mod words;

use super::figures::{clock, whole};
use super::place::{bearing_words, mark_of, reach_like, reach_words, spot_words};
use super::{Action, Arg, ChoiceRow, KeyTap, SwimTap, TypedField, TypedInto, Wording, peg_name};
use restwater_log::{Moment, Reach, RodNumber, Spot, WeightUnit};
use restwater_session::{Session, on_swim};
use restwater_swim::range::METRES_PER_YARD;
use restwater_swim::{
    CellId, CellState, ColumnName, Drift, LEGEND, LegendSample, NextSpot, SceneWords, Swim, SwimFigures,
    WhereNext,
};
use serde::{Deserialize, Serialize};

/// What the keys under the picture do now.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum SwimPad {
    /// They send the next cast, keep water back and open further keys.
    #[default]
    Plain,
    /// They move the aim from cell to cell.
    Steps,
}

/// A key of the Swim screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum SwimKey {
    /// One cell to the left.
    StepLeft,
    /// One cell to the right.
    StepRight,
    /// One band in.
    StepIn,
    /// One band out.
    StepOut,
    /// The keys that move the aim.
    Steps,
    /// Keep the aimed cell back.
    Keep,
    /// Release the kept-back water that is aimed at.
    Release,
    /// The next cast goes here.
    CastHere,
    /// The swim ten minutes earlier.
    Earlier,
    /// Ten minutes later.
    Later,
    /// As it is now.
    Now,
    /// Set an aiming mark in this direction.
    MarkHere,
    /// Set the position of the peg to the one typed.
    PlacePeg,
    /// Fill the fields of the peg's position from the phone's receiver.
    UsePhone,
}

/// One key, ready to draw.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SwimKeyView {
    /// What it does.
    pub key: SwimKey,
    /// Its word.
    pub label: String,
    /// What a screen reader says.
    pub spoken: String,
    /// Whether it can be tapped now.
    pub enabled: bool,
    /// Drawn solid: most likely next.
    pub solid: bool,
    /// Whether it names a moment, and so is read from left to right by either hand with the keys beside it that do too.
    pub reads: bool,
    /// What a tap on it does.
    pub tap: KeyTap,
}

/// The Swim screen; the fan itself is a scene of its own.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SwimView {
    /// "Swim, peg 22".
    pub title: String,
    /// "3 of 25 squares fished in 45 min", which is the rest target.
    pub area: String,
    /// The verdict: "Next: Dead tree, 14 wraps of 2 m (28 m)".
    pub headline: String,
    /// The reasons for it and against it, each with its figures.
    pub reasons: Vec<String>,
    /// The two reasons that count most, as a sentence, and how many bites they are based on.
    pub why: String,
    /// What is known of the aimed cell.
    pub cell: String,
    /// Whether the fish move over the day, with the evidence.
    pub drift: Vec<String>,
    /// The moment shown, if it is not now.
    pub replay: String,
    /// The next few cells after the first, each with its reasons.
    pub others: Vec<String>,
    /// Opens the list of everything that the picture is based on.
    pub list_label: String,
    /// That list: the ringed cell, the next few, the drift, what is a guess.
    pub list: Vec<String>,
    /// A name for the next mark, feature or hazard, or for an old one.
    pub name: TypedField,
    /// The geographic position of the peg.
    pub place: PegPlaceView,
    /// What the keys under the picture do now.
    pub pad: SwimPad,
    /// What BACK sends to hide the step keys, or `None` if BACK leaves the screen.
    pub back: Option<Action>,
    /// Opens the legend.
    pub legend_label: String,
    /// The meaning of each sample of the legend, in the order of [`restwater_swim::LEGEND`].
    pub legend: Vec<String>,
    /// The keys.
    pub keys: Vec<SwimKeyView>,
    /// Boundaries, bands, rest target, features and hazards, while the session is open.
    pub rows: Vec<ChoiceRow>,
    /// What is based on a guess.
    pub note: String,
}

/// The geographic position of the peg, as typed or as set. It is optional, and left out of files unless
/// included.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PegPlaceView {
    /// Opens these fields.
    pub label: String,
    /// "not set", or the place.
    pub value: String,
    /// Both for a screen reader.
    pub spoken: String,
    /// What it is for.
    pub note: String,
    /// The three fields, in order.
    pub fields: Vec<TypedField>,
}

/// What the Swim screen is made from.
pub struct SwimScreen<'a> {
    /// The session.
    pub session: &'a Session,
    /// Its swim.
    pub swim: &'a Swim,
    /// The figures at the moment shown.
    pub figures: &'a SwimFigures,
    /// Where next, as of that moment.
    pub next: &'a WhereNext,
    /// The drift up to that moment.
    pub drift: Drift,
    /// The cell that is aimed at.
    pub aimed: Option<CellId>,
    /// The cell with the ring; `None` where no cast is proposed.
    pub ring: Option<CellId>,
    /// The spot to which a cast to the cell that is aimed at goes, if it isn't its middle, and whether a cast went there before.
    pub known: Option<(&'a Spot, bool)>,
    /// Whether the ring is where the angler planned the first cast.
    pub planned: bool,
    /// The spot of the last cast, if the ring says to stay there.
    pub stay: Option<&'a Spot>,
    /// After all-out, whether the angler chose the cell that is aimed at; before it `None`.
    pub all_out: Option<bool>,
    /// What the keys do.
    pub pad: SwimPad,
    /// The rod the next cast is for.
    pub rod: RodNumber,
    /// The earlier moment that is shown, if any.
    pub replay: Option<&'a Moment>,
    /// How many steps back it is.
    pub steps_back: u32,
    /// The name typed so far.
    pub name: &'a str,
    /// Latitude, longitude and bearing of straight out, as typed or as set.
    pub place: [String; 3],
    /// What feed is weighed in.
    pub weights: WeightUnit,
    /// The language.
    pub words: &'a Wording,
}

/// The message that explains a sample of the legend.
fn legend_id(sample: LegendSample) -> &'static str {
    match sample {
        LegendSample::JustFished => "legend-just-fished",
        LegendSample::Resting => "legend-resting",
        LegendSample::Free => "legend-free",
        LegendSample::Kept => "legend-kept",
        LegendSample::Next => "legend-next",
        LegendSample::Aimed => "legend-aimed",
        LegendSample::LineOut => "legend-line-out",
        LegendSample::Bites => "legend-bites",
        LegendSample::Liner => "legend-liner",
        LegendSample::Lost => "legend-lost",
        LegendSample::Fed => "legend-fed",
        LegendSample::Shown => "legend-shown",
        LegendSample::Feature => "legend-feature",
        LegendSample::Hazard => "legend-hazard",
    }
}

/// How many further cells are named.
const OTHERS: usize = 3;

/// Makes the Swim screen.
pub fn swim_view(screen: &SwimScreen) -> SwimView {
    let words = screen.words;
    let aimed = screen.aimed.and_then(|id| screen.find(id));
    let headline = aimed.map_or_else(String::new, |next| screen.headline(next));
    let said = aimed.filter(|_| !screen.is_over());
    let why = said.map_or_else(String::new, |next| screen.why(next));
    let cell = said.map_or_else(String::new, |next| screen.cell(&next.figures));
    let (others, drift) = (screen.others(), screen.drift_words());
    let note = words.say("swim-rests-on-guesses");
    let list = [headline.clone(), why.clone(), cell.clone()]
        .into_iter()
        .chain(others.iter().map(|o| words.say_with("swim-then", &[("where", Arg::Text(o))])))
        .chain(drift.iter().cloned())
        .chain(screen.drift_figures())
        .chain([note.clone()])
        .filter(|line| !line.is_empty())
        .collect();
    SwimView {
        title: screen.title(),
        area: screen.squares(),
        headline,
        reasons: said.map_or_else(Vec::new, |next| screen.reasons(next)),
        why,
        cell,
        drift,
        replay: screen
            .replay
            .map_or_else(String::new, |at| words.say_with("replay-at", &[("time", Arg::Text(&clock(at)))])),
        others,
        list_label: words.say("swim-list"),
        list,
        name: TypedField::new("name", words.say("swim-name"), screen.name.to_owned(), TypedInto::SwimName),
        place: screen.place_view(),
        pad: screen.pad,
        back: (screen.pad == SwimPad::Steps).then_some(Action::Swim { tap: SwimTap::Steps { open: false } }),
        legend_label: words.say("swim-legend"),
        legend: LEGEND.iter().map(|sample| words.say(legend_id(*sample))).collect(),
        keys: screen.keys(aimed),
        rows: screen.rows(),
        note,
    }
}

/// Whether a rod's reach is in yards; distances on its map are then too.
pub fn counts_in_yards(session: &Session, rod: RodNumber) -> bool {
    matches!(reach_like(session, rod, 1.0), Reach::Yards { .. })
}

/// The words in the picture, with ranges in metres or in yards.
pub fn scene_words(words: &Wording, yards: bool) -> SceneWords {
    let (unit, unit_m) = if yards { ("swim-scene-yd", METRES_PER_YARD) } else { ("swim-scene-m", 1.0) };
    SceneWords {
        unit: words.say(unit),
        unit_m,
        minutes: words.say("swim-scene-min"),
        hours: words.say("swim-scene-h"),
        kept: words.say("swim-scene-kept"),
        kept_back: words.say("swim-scene-kept-back"),
        next: words.say("swim-scene-next"),
        stay: words.say("swim-scene-stay"),
        bites: words.say("swim-scene-bites"),
        lost: words.say("swim-scene-lost"),
        liners: words.say("swim-scene-liners"),
        fed: words.say("swim-scene-fed"),
        shown: words.say("swim-scene-shown"),
        colon: words.colon(),
    }
}

impl SwimScreen<'_> {
    fn find(&self, id: CellId) -> Option<&NextSpot> {
        self.next.ranked.iter().chain(&self.next.set_aside).find(|next| next.cell == id)
    }

    /// "Swim, peg 14"; without a peg the water.
    fn title(&self) -> String {
        let setup = &self.session.setup;
        let words = self.words;
        let place = match (&setup.peg, &setup.water) {
            (Some(peg), _) => words.say_with("swim-peg", &[("peg", Arg::Text(peg_name(words, peg)))]),
            (None, Some(water)) => water.clone(),
            (None, None) => return words.say("swim-title-plain"),
        };
        words.say_with("swim-title", &[("place", Arg::Text(&place))])
    }

    /// "3 of 25 squares fished in 45 min".
    fn squares(&self) -> String {
        let target = self.swim.input().rest_target_min;
        let fished = self.figures.cells.iter().filter(|c| c.state(target) != CellState::Free).count();
        let all = self.figures.cells.len();
        self.words.say_with(
            "swim-squares",
            &[
                ("fished", Arg::Count(fished)),
                ("all", Arg::Count(all)),
                ("minutes", Arg::Text(&whole(target))),
            ],
        )
    }

    /// The reach of a cell in the unit this rod counts in.
    fn reach(&self, next: &NextSpot) -> Reach {
        reach_like(self.session, self.rod, next.spot.range_m)
    }

    fn direction(&self, next: &NextSpot) -> String {
        self.mark_of(next.cell.column).unwrap_or_else(|| self.towards(next.spot.bearing_deg))
    }

    /// "between Dead tree and Gate, nearer Gate", or without a mark on both sides "12° left".
    fn towards(&self, deg: f64) -> String {
        let marks = &self.swim.columns().marks;
        let left = marks
            .iter()
            .filter(|m| m.bearing_deg < deg)
            .max_by(|a, b| a.bearing_deg.total_cmp(&b.bearing_deg));
        let right = marks
            .iter()
            .filter(|m| m.bearing_deg > deg)
            .min_by(|a, b| a.bearing_deg.total_cmp(&b.bearing_deg));
        let Some((left, right)) = left.zip(right) else { return self.bearing(deg) };
        let (to_left, to_right) = (deg - left.bearing_deg, right.bearing_deg - deg);
        let near = if to_left < to_right { &left.name } else { &right.name };
        let id = if (to_left - to_right).abs() < 1.0 { "swim-between" } else { "swim-between-nearer" };
        let args = [
            ("markleft", Arg::Text(&left.name)),
            ("markright", Arg::Text(&right.name)),
            ("near", Arg::Text(near)),
        ];
        self.words.say_with(id, &args)
    }

    /// The name of the mark that a column is named after, if there is one.
    fn mark_of(&self, column: u32) -> Option<String> {
        let columns = self.swim.columns();
        match columns.columns.get(column as usize)?.name {
            ColumnName::On(i) => columns.marks.get(i as usize).map(|mark| mark.name.clone()),
            _ => None,
        }
    }

    fn bearing(&self, deg: f64) -> String {
        bearing_words(self.words, libm::round(deg * 100.0) as i32)
    }

    /// Whether nothing is said of where to cast: after all-out, unless the angler asks about a cell.
    fn is_over(&self) -> bool {
        self.all_out == Some(false)
    }

    fn headline(&self, next: &NextSpot) -> String {
        if self.is_over() {
            return self.words.say("advice-all-out");
        }
        let (direction, reach) = self.place_and_reach(next);
        let id = match self.next.go_in {
            Some(go_in) if go_in.cell == next.cell => "swim-go-in",
            _ if self.ring != Some(next.cell) => "swim-aimed",
            _ if self.stay.is_some() => {
                // Whoever stays casts to the same spot, which need not be the middle of its cell.
                let spot = spot_words(self.words, self.session, self.stay);
                return self.words.say_with("swim-stay", &[("spot", Arg::Text(&spot))]);
            }
            _ => "swim-next",
        };
        self.words.say_with(id, &[("where", Arg::Text(&direction)), ("reach", Arg::Text(&reach))])
    }

    /// Where a cast to the cell that is aimed at goes: to a spot that is known, or else to its middle.
    fn place_and_reach(&self, next: &NextSpot) -> (String, String) {
        let Some((spot, cast)) = self.known else {
            return (self.direction(next), reach_words(self.words, self.reach(next)));
        };
        let aim = mark_of(self.session, spot);
        let aim =
            aim.map_or_else(|| self.towards(f64::from(spot.bearing_cdeg) / 100.0), |mark| mark.name.clone());
        let reach = reach_words(self.words, spot.reach);
        let id = if cast { Some("swim-as-before") } else { spot.clipped.then_some("clipped") };
        (aim, id.map_or(reach.clone(), |id| self.words.listed(&[reach, self.words.say(id)])))
    }

    /// The cell of this rod's last cast.
    fn last_cell(&self) -> Option<CellId> {
        let last = self.session.casts.iter().rev().find(|c| c.rod == self.rod)?.spot.as_ref()?;
        self.swim.cell_of(on_swim(last))
    }
}
