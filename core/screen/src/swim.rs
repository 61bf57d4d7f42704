//! The Swim screen: where next with its reasons, the aimed cell in words, the keys round the fan.

mod keys;
mod pick;
mod rows;

pub use pick::{Picking, SwimPick};

use super::figures::{clock, trimmed, whole};
use super::place::{bearing_words, reach_words};
use super::{Action, Arg, ChoiceRow, KeyTap, SwimTap, TypedField, TypedInto, Wording, sentence_case};
use restwater_log::{Moment, Reach, RodNumber};
use restwater_session::{Session, reach_near};
use restwater_swim::{
    Against, CellFigures, CellId, ColumnName, Drift, DriftAlong, DriftLean, NextSpot, Reason, SceneWords,
    Swim, SwimFigures, WhereNext,
};
use serde::{Deserialize, Serialize};

/// What the keys under the picture do now.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum SwimPad {
    /// Each aims along a ray: the first tap of two.
    #[default]
    Rays,
    /// Each aims at a cell of that ray: the second.
    Cells,
    /// They move the ring a cell and keep its water back.
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
    /// Keep the aimed cell back.
    Keep,
    /// Release the kept-back water under the ring.
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
    /// The peg lies where it was typed.
    PlacePeg,
    /// The phone's receiver is asked where it is; the lines of the peg's place are filled with it.
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
    /// What a tap on it asks.
    pub tap: KeyTap,
}

/// The Swim screen; the fan itself is a scene of its own.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SwimView {
    /// "Swim, peg 22".
    pub title: String,
    /// "1 320 m² fresh of 2 050 m²".
    pub area: String,
    /// "Next: Dead tree, 14 wraps of 2 m, 28 m".
    pub headline: String,
    /// The reasons for it and against it, each with its figures.
    pub reasons: Vec<String>,
    /// The same as sentences, and how many bites they rest on.
    pub why: String,
    /// What is known of the aimed cell.
    pub cell: String,
    /// Whether the fish move over the day, with the evidence.
    pub drift: Vec<String>,
    /// The moment shown, where it is not now.
    pub replay: String,
    /// The next few cells after the first, each with its reasons.
    pub others: Vec<String>,
    /// Opens the list of everything the picture rests on.
    pub list_label: String,
    /// That list: the ringed cell, the next few, the drift, what is a guess.
    pub list: Vec<String>,
    /// A name for the next mark, feature or hazard, or for an old one.
    pub name: TypedField,
    /// Where the peg lies on the earth.
    pub place: PegPlaceView,
    /// What the keys under the picture do now.
    pub pad: SwimPad,
    /// The keys that pick a ray or a cell, in the order of their places.
    pub picks: Vec<SwimPick>,
    /// What BACK sends where it goes back to the rays; none where it leaves the screen.
    pub back: Option<Action>,
    /// The keys.
    pub keys: Vec<SwimKeyView>,
    /// Boundaries, bands, rest target, features and hazards.
    pub rows: Vec<ChoiceRow>,
    /// What rests on a guess.
    pub note: String,
}

/// Where the peg lies on the earth, as typed or as set: optional, and left out of files unless asked for.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PegPlaceView {
    /// Opens these fields.
    pub label: String,
    /// "not set", or the place.
    pub value: String,
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
    /// Which keys pick.
    pub picking: Picking,
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
    /// The language.
    pub words: &'a Wording,
}

/// How many further cells are named.
const OTHERS: usize = 3;

/// Makes the Swim screen.
pub fn swim_view(screen: &SwimScreen) -> SwimView {
    let words = screen.words;
    let aimed = screen.aimed.and_then(|id| screen.find(id));
    let areas = [whole(screen.figures.fresh_m2), whole(screen.figures.swim_m2)];
    let headline = aimed.map_or_else(String::new, |next| screen.headline(next));
    let why = aimed.map_or_else(String::new, |next| screen.why(next));
    let cell = aimed.map_or_else(String::new, |next| screen.cell(&next.figures));
    let (others, drift) = (screen.others(), screen.drift_words());
    let note = words.say("swim-rests-on-guesses");
    let list = [headline.clone(), why.clone(), cell.clone()]
        .into_iter()
        .chain(others.iter().map(|o| words.say_with("swim-then", &[("where", Arg::Text(o))])))
        .chain(drift.iter().cloned())
        .chain([note.clone()])
        .filter(|line| !line.is_empty())
        .collect();
    // While a band is asked for, nothing is said of the cell that was aimed at before.
    let (headline, why, cell) =
        screen.which_band().map_or((headline, why, cell), |asked| (asked, String::new(), String::new()));
    SwimView {
        title: screen.title(),
        area: words.say_with("swim-area", &[("fresh", Arg::Text(&areas[0])), ("all", Arg::Text(&areas[1]))]),
        headline,
        reasons: aimed.map_or_else(Vec::new, |next| screen.reasons(next)),
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
        pad: screen.pad(),
        picks: screen.picks(),
        back: (screen.pad() != SwimPad::Rays).then_some(Action::Swim { tap: SwimTap::Rays }),
        keys: screen.keys(aimed),
        rows: screen.rows(),
        note,
    }
}

/// The words that stand in the picture.
pub fn scene_words(words: &Wording) -> SceneWords {
    SceneWords {
        minutes: words.say("swim-scene-min"),
        hours: words.say("swim-scene-h"),
        kept_back: words.say("swim-scene-kept"),
        metres: words.say("swim-scene-m"),
        lost: words.say("swim-scene-lost"),
        liners: words.say("swim-scene-liners"),
    }
}

impl SwimScreen<'_> {
    fn find(&self, id: CellId) -> Option<&NextSpot> {
        self.next.ranked.iter().chain(&self.next.set_aside).find(|next| next.cell == id)
    }

    /// "Swim, peg 14"; the water where there is no peg.
    fn title(&self) -> String {
        let setup = &self.session.setup;
        let words = self.words;
        let place = match (&setup.peg, &setup.water) {
            // "Peg 14" typed in full is not "peg Peg 14".
            (Some(peg), _) if peg.to_lowercase().starts_with("peg") => peg.clone(),
            (Some(peg), _) => words.say_with("swim-peg", &[("peg", Arg::Text(peg))]),
            (None, Some(water)) => water.clone(),
            (None, None) => return words.say("swim-title-plain"),
        };
        words.say_with("swim-title", &[("place", Arg::Text(&place))])
    }

    /// The reach of a cell in the unit this rod counts in.
    fn reach(&self, next: &NextSpot) -> Reach {
        let spot = self.session.rod(self.rod).and_then(|rod| rod.spot.as_ref());
        let like = spot.map_or(
            Reach::Wraps { hundredths: 100, span_tenth_mm: self.session.setup.span_tenth_mm },
            |spot| spot.reach,
        );
        reach_near(next.spot.range_m, like)
    }

    fn direction(&self, next: &NextSpot) -> String {
        self.mark_of(next.cell.column).unwrap_or_else(|| self.bearing(next.spot.bearing_deg))
    }

    /// The name of the mark a column is called after, or where it is aimed.
    pub(super) fn column_name(&self, column: u32) -> String {
        let aim = self.swim.columns().columns.get(column as usize).map_or(0.0, |c| c.aim_deg);
        self.mark_of(column).unwrap_or_else(|| self.bearing(aim))
    }

    /// The name of the mark a column is called after, where there is one.
    pub(super) fn mark_of(&self, column: u32) -> Option<String> {
        let columns = self.swim.columns();
        match columns.columns.get(column as usize)?.name {
            ColumnName::On(i) => columns.marks.get(i as usize).map(|mark| mark.name.clone()),
            _ => None,
        }
    }

    fn bearing(&self, deg: f64) -> String {
        bearing_words(self.words, libm::round(deg * 100.0) as i32)
    }

    fn headline(&self, next: &NextSpot) -> String {
        let first = self.next.ranked.first().is_some_and(|n| n.cell == next.cell);
        let (direction, reach) = (self.direction(next), reach_words(self.words, self.reach(next)));
        let id = if first { "swim-next" } else { "swim-aimed" };
        self.words.say_with(id, &[("where", Arg::Text(&direction)), ("reach", Arg::Text(&reach))])
    }

    fn reasons(&self, next: &NextSpot) -> Vec<String> {
        let mut lines: Vec<String> = next.reasons.iter().map(|r| self.reason(r)).collect();
        lines.extend(next.against.iter().map(|a| self.against(a)));
        lines
    }

    /// "Rested 48 min; a liner beside it. 3 bites so far: too few to be sure."
    fn why(&self, next: &NextSpot) -> String {
        let reasons = self.reasons(next).join("; ");
        let first = if reasons.is_empty() {
            self.words.say("swim-no-reason")
        } else {
            format!("{}.", sentence_case(&reasons))
        };
        let bites = self.words.say_with("swim-bites", &[("bites", Arg::Count(self.next.bites as usize))]);
        format!("{first} {bites}")
    }

    fn reason(&self, reason: &Reason) -> String {
        let say = |id: &str, args: &[(&str, Arg)]| self.words.say_with(id, args);
        match reason {
            Reason::NeverDisturbed => say("reason-never", &[]),
            Reason::QuietLately { target_min } => {
                say("reason-quiet", &[("minutes", Arg::Text(&whole(*target_min)))])
            }
            Reason::RestedLongEnough { minutes, .. } => {
                say("reason-rested", &[("minutes", Arg::Text(&whole(*minutes)))])
            }
            Reason::NearLastBites { bites, metres, minutes_ago } => say(
                "reason-near-bites",
                &[
                    ("bites", Arg::Count(*bites as usize)),
                    ("metres", Arg::Text(&whole(*metres))),
                    ("minutes", Arg::Text(&whole(*minutes_ago))),
                ],
            ),
            Reason::BehindLastBite { minutes_ago } => {
                say("reason-behind", &[("minutes", Arg::Text(&whole(*minutes_ago)))])
            }
            Reason::LinersHere { liners } => {
                say("reason-liners-here", &[("liners", Arg::Count(*liners as usize))])
            }
            Reason::LinersBeside { liners } => {
                say("reason-liners-beside", &[("liners", Arg::Count(*liners as usize))])
            }
            Reason::UsualStart { .. } => say("reason-usual-start", &[]),
        }
    }

    fn against(&self, against: &Against) -> String {
        let say = |id: &str, args: &[(&str, Arg)]| self.words.say_with(id, args);
        match against {
            Against::RestedTooShort { minutes, target_min } => say(
                "against-rested",
                &[("minutes", Arg::Text(&whole(*minutes))), ("target", Arg::Text(&whole(*target_min)))],
            ),
            Against::MaybeDisturbed { casts } => {
                say("against-maybe", &[("casts", Arg::Count((*casts).round().max(1.0) as usize))])
            }
            Against::NearBoundary { metres } => {
                say("against-boundary", &[("metres", Arg::Text(&trimmed(*metres, 1)))])
            }
            Against::KeptBack { minutes } => say("against-kept", &[("minutes", Arg::Text(&whole(*minutes)))]),
            Against::BeyondCast { .. } => say("against-beyond", &[]),
            Against::NearHazard { name, metres } => {
                let unnamed = self.words.say("against-hazard-unnamed");
                let name = if name.is_empty() { &unnamed } else { name };
                say(
                    "against-hazard",
                    &[("name", Arg::Text(name)), ("metres", Arg::Text(&trimmed(*metres, 1)))],
                )
            }
        }
    }

    fn cell(&self, figures: &CellFigures) -> String {
        self.words.say_with(
            "cell-figures",
            &[
                ("casts", Arg::Count(figures.casts as usize)),
                ("bites", Arg::Count(figures.bites as usize)),
                ("minutes", Arg::Text(&whole(figures.bait_min))),
                ("lost", Arg::Count(figures.lost as usize)),
                ("liners", Arg::Count(figures.liners as usize)),
            ],
        )
    }

    fn others(&self) -> Vec<String> {
        let line = |next: &NextSpot| {
            let reasons: Vec<String> = next.reasons.iter().map(|r| self.reason(r)).collect();
            let aimed = [self.direction(next), reach_words(self.words, self.reach(next))].join(", ");
            if reasons.is_empty() { format!("{aimed}.") } else { format!("{aimed}: {}.", reasons.join("; ")) }
        };
        self.next.ranked.iter().skip(1).take(OTHERS).map(line).collect()
    }

    fn drift_words(&self) -> Vec<String> {
        let along = |along: &DriftAlong, up: &str, down: &str| -> Option<String> {
            let trend = along.bites.as_ref()?;
            let (tau, p) = (trimmed(trend.tau_b, 2), trimmed(along.any_look_p, 3));
            let args = [("tau", Arg::Text(&tau)), ("p", Arg::Text(&p)), ("n", Arg::Count(trend.n as usize))];
            match along.lean {
                DriftLean::Up => Some(self.words.say_with(up, &args)),
                DriftLean::Down => Some(self.words.say_with(down, &args)),
                DriftLean::WithTheCasts => Some(self.words.say("drift-with-casts")),
                DriftLean::CantTellYet => None,
            }
        };
        let mut lines: Vec<String> = Vec::new();
        lines.extend(along(&self.drift.out, "drift-out", "drift-in"));
        lines.extend(along(&self.drift.across, "drift-right", "drift-left"));
        if lines.is_empty() {
            lines.push(self.words.say("drift-cant-tell"));
        }
        lines
    }
}
