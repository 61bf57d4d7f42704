//! The tackle of one rod: its rig and its spot, changed by taps.

use super::place::{bearing_words, length_words, reach_words};
use super::usual_names::{same_value, usual_names};
use super::{Action, Arg, TackleTap, TypedField, TypedInto, Wording};
use restwater_bench::hooklength::Tied;
use restwater_bench::material::Material;
use restwater_caution::lead_rule::lead_rule;
use restwater_caution::table::Region;
use restwater_compare::Factor;
use restwater_log::{LeadMaterial, Reach, Rig, RodNumber, Spot};
use restwater_session::Session;
use serde::{Deserialize, Serialize};

/// One value that can be tapped.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Choice {
    /// A name for tests.
    pub tag: String,
    /// What it says.
    pub label: String,
    /// The same with the label of its row, for a screen reader.
    pub spoken: String,
    /// Whether it is the present one.
    pub chosen: bool,
    /// What choosing it sends.
    pub action: Action,
}

/// One thing that can be changed, with its present value and what it may become.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ChoiceRow {
    /// A name for tests, and for a shell to remember which row is open: "popup", "span".
    pub tag: String,
    /// What it is called.
    pub label: String,
    /// The present value in words.
    pub value: String,
    /// Both, as they are drawn above the choices and said: "Depth: 2 m".
    pub spoken: String,
    /// If the value is a figure, a step down and a step up come first, then recent and usual values.
    pub choices: Vec<Choice>,
    /// Where the usual ones come from, "common practice, no source"; empty for the angler's own.
    pub source: String,
    /// A line to type a value into that is not among the choices.
    pub typing: Option<TypedField>,
    /// Whether it is of one side, and so is read from left to right by either hand with the rows beside it that are too.
    pub reads: bool,
}

/// The tackle screen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct TackleView {
    /// "Rod 1: next cast".
    pub title: String,
    /// Which rod.
    pub rod: u8,
    /// The rows.
    pub rows: Vec<ChoiceRow>,
    /// What the rule on lead weights says about this rig; empty if it doesn't apply. It forbids nothing. It is shown above the rows, and
    /// while one of [`Self::caution_on`] is open.
    pub caution: String,
    /// Tags of the rows that the caution is about: the weight and what it is made of.
    pub caution_on: Vec<String>,
}

/// What the tackle screen depends on besides the session.
pub struct TackleAround<'a> {
    /// Hooklengths tied.
    pub wallet: &'a [Tied],
    /// The country that the water is in.
    pub region: Region,
}

/// Pop-up heights in mm: from 2 in to 5 ft, starting at 18 in (common practice, no source).
const POPUPS_MM: &[u32] = &[51, 152, 305, 457, 610, 914, 1_524];
/// Hooklengths in mm (common practice, no source).
const HOOKLENGTHS_MM: &[u32] = &[100, 200, 300, 457, 762, 914, 1_219];
/// Hook sizes (common practice, no source).
const HOOKS: &[u32] = &[8, 10, 12, 14, 16, 18, 20];
/// Leads and feeders in mg: 20, 30, 40, 50, 60 g and the ounce (common practice, no source).
const LEADS_MG: &[u32] = &[20_000, 28_350, 30_000, 40_000, 50_000, 60_000];
/// Fills of a feeder in mg (common practice, no source).
const FILLS_MG: &[u32] = &[15_000, 30_000, 45_000, 60_000, 90_000];
/// Steps of a quarter of a wrap and of a whole one.
pub(crate) const WRAP_STEPS: &[i64] = &[-100, -25, 25, 100];
/// First range of a session in cm, 9.5 wraps of 12 ft: about 38 yd (common practice, no source).
const FIRST_RANGE_CM: u64 = 3_475;
/// Direction steps in hundredths of a degree.
pub(crate) const BEARING_STEPS: &[i32] = &[-1_000, -250, 250, 1_000];

/// Makes the tackle screen of a rod.
pub fn tackle(
    words: &Wording,
    session: Option<&Session>,
    rod: RodNumber,
    around: &TackleAround,
) -> TackleView {
    let name = words.say_with("rod", &[("rod", Arg::Text(&rod.to_string()))]);
    let title = words.say_with("tackle-title", &[("rod", Arg::Text(&name))]);
    let Some((session, state)) = session.and_then(|s| Some((s, s.rod(rod)?))) else {
        let (rows, caution, caution_on) = (Vec::new(), String::new(), Vec::new());
        return TackleView { title, rod, rows, caution, caution_on };
    };
    let make = Rows { words, session, rod, send: |rod, tap| Action::Tackle { rod, tap } };
    let rig = &state.rig;
    let spot = state.spot.clone().unwrap_or_else(|| first_spot(session));
    let mut rows = vec![make.reach(&spot), make.bearing(&spot), make.clip(&spot)];
    rows.extend(make.rig(rig, around.wallet));
    rows.push(make.feeder(state.fill_mg));
    let typed = [
        ("bait", TypedInto::Bait { rod }),
        ("colour", TypedInto::Colour { rod }),
        ("popup", TypedInto::PopUp { rod }),
        ("hooklength", TypedInto::Hooklength { rod }),
        ("lead", TypedInto::Lead { rod }),
    ];
    for row in &mut rows {
        let into = typed.iter().find(|(tag, _)| *tag == row.tag);
        row.typing = into.map(|(tag, into)| TypedField::sent(words, tag, row.label.clone(), *into));
    }
    rows.extend(make.lost());
    let caution_on = ["lead", "material"].map(str::to_owned).to_vec();
    TackleView { title, rod, rows, caution: caution(words, rig, around.region), caution_on }
}

/// The rows of a rig alone, for any kind of tap; the baits of a session are offered.
pub(crate) fn rig_rows(
    words: &Wording,
    session: &Session,
    rod: RodNumber,
    rig: &Rig,
    wallet: &[Tied],
    send: fn(RodNumber, TackleTap) -> Action,
) -> Vec<ChoiceRow> {
    Rows { words, session, rod, send }.rig(rig, wallet)
}

/// The rule on lead weights, shown beside the weight. A weight without a material may be lead.
fn caution(words: &Wording, rig: &Rig, region: Region) -> String {
    if rig.material == Some(LeadMaterial::NonToxic) {
        return String::new();
    }
    let grams = rig.lead_mg.map(|mg| f64::from(mg) / 1_000.0);
    let rule = grams.and_then(|grams| lead_rule(grams, Material::Lead, region).ok()?.id());
    match (rule, rig.material) {
        (None, _) => String::new(),
        (Some(id), Some(_)) => words.say(id),
        (Some(id), None) => format!("{} {}", words.say("tackle-if-lead"), words.say(id)),
    }
}

/// Straight out at the usual first range.
pub fn first_spot(session: &Session) -> Spot {
    Spot { mark: None, bearing_cdeg: 0, reach: first_reach(session.setup.span_tenth_mm), clipped: true }
}

/// The usual first range, to the nearest quarter of a wrap of these sticks.
pub(crate) fn first_reach(span_tenth_mm: u32) -> Reach {
    const QUARTER: u64 = 25;
    let quarter_tenth_mm = u64::from(span_tenth_mm.max(1)) * QUARTER / 100;
    let quarters = (FIRST_RANGE_CM * 100 + quarter_tenth_mm / 2) / quarter_tenth_mm.max(1);
    let hundredths = u32::try_from(quarters * QUARTER).unwrap_or(u32::MAX);
    Reach::Wraps { hundredths, span_tenth_mm }
}

struct Rows<'a> {
    words: &'a Wording,
    session: &'a Session,
    rod: RodNumber,
    /// What a tap sends.
    send: fn(RodNumber, TackleTap) -> Action,
}

impl Rows<'_> {
    /// What is on the line.
    fn rig(&self, rig: &Rig, wallet: &[Tied]) -> Vec<ChoiceRow> {
        // Lengths in the wallet come first, so that a loss can be recognised by its length.
        let mut lengths: Vec<u32> =
            wallet.iter().map(|tied| (tied.hooklength.length.tenths_mm() + 5) / 10).collect();
        lengths.extend(HOOKLENGTHS_MM);
        lengths.sort_unstable();
        lengths.dedup();
        let hook = rig.hook_size.map(u32::from);
        vec![
            self.bait(rig),
            self.colour(rig),
            self.figure(
                "popup",
                rig.popup_mm,
                POPUPS_MM,
                |mm| length_words(self.words, mm),
                |mm| TackleTap::PopUp { mm },
            ),
            self.figure(
                "hooklength",
                rig.hooklength_mm,
                &lengths,
                |mm| length_words(self.words, mm),
                |mm| TackleTap::Hooklength { mm },
            ),
            self.figure(
                "hook",
                hook,
                HOOKS,
                |size| size.to_string(),
                |size| TackleTap::HookSize { size: size as u8 },
            ),
            self.figure("lead", rig.lead_mg, LEADS_MG, |mg| self.grams(mg), |mg| TackleTap::Lead { mg }),
            self.material(rig.material),
        ]
    }

    fn row(&self, tag: &str, value: String, choices: Vec<Choice>, usual: bool) -> ChoiceRow {
        let source = if usual { self.words.say("source-common") } else { String::new() };
        let label = self.words.say(&format!("tackle-{tag}"));
        ChoiceRow { value, ..ChoiceRow::of(tag, label, choices, source) }
    }

    fn choice(&self, tag: impl Into<String>, label: String, chosen: bool, tap: TackleTap) -> Choice {
        Choice::new(tag, label, chosen, (self.send)(self.rod, tap))
    }

    fn grams(&self, mg: u32) -> String {
        self.words
            .say_with("tackle-g", &[("grams", Arg::Text(&self.words.figure(f64::from(mg) / 1_000.0, 2)))])
    }

    fn material(&self, now: Option<LeadMaterial>) -> ChoiceRow {
        let choice = |tag: &str, material| {
            let label = self.words.say(&format!("tackle-material-{tag}"));
            self.choice(tag, label, now == Some(material), TackleTap::Material { material })
        };
        let choices = vec![choice("lead", LeadMaterial::Lead), choice("non_toxic", LeadMaterial::NonToxic)];
        let said = choices.iter().find(|c| c.chosen).map(|c| c.label.clone());
        self.row("material", said.unwrap_or_else(|| self.words.say("setup-unknown")), choices, false)
    }

    /// Whether the weight on the line is a feeder, and what its fill weighs.
    fn feeder(&self, now: Option<u32>) -> ChoiceRow {
        let plain = self.words.say("tackle-feeder-none");
        let none = self.choice("none", plain.clone(), now.is_none(), TackleTap::Feeder { mg: None });
        let fills = self.figure(
            "feeder",
            now,
            FILLS_MG,
            |mg| self.grams(mg),
            |mg| TackleTap::Feeder { mg: Some(mg) },
        );
        let choices = std::iter::once(none).chain(fills.choices.iter().cloned()).collect();
        let value = if now.is_none() { plain } else { fills.value.clone() };
        ChoiceRow { value, choices, ..fills }
    }

    /// The row for a hooklength lost with the rod's last cast, once there is such a cast.
    fn lost(&self) -> Option<ChoiceRow> {
        let casts = || self.session.casts.iter().filter(|cast| cast.rod == self.rod);
        let last = casts().next_back()?;
        let count = casts().filter(|cast| cast.hooklength_lost.is_some()).count();
        let label = self.words.say("tackle-lost-now");
        let action = Action::HooklengthLost { rod: self.rod };
        let choice = Choice::new("1", label, last.hooklength_lost.is_some(), action);
        let value = self.words.say_with("tackle-lost-count", &[("count", Arg::Count(count))]);
        let source = self.words.say("tackle-lost-how");
        Some(ChoiceRow { source, ..self.row("hooklength_lost", value, vec![choice], false) })
    }

    fn reach(&self, spot: &Spot) -> ChoiceRow {
        let step = |step: &i64| {
            let reach = stepped(spot.reach, *step);
            let label = step_words(self.words, *step);
            self.choice(step.to_string(), label, reach == spot.reach, TackleTap::Reach { reach })
        };
        let recent = self.recent_reaches().into_iter().enumerate().map(|(i, reach)| {
            let label = reach_words(self.words, reach);
            self.choice(format!("recent-{i}"), label, reach == spot.reach, TackleTap::Reach { reach })
        });
        let choices = WRAP_STEPS.iter().map(step).chain(recent).collect();
        self.row("reach", reach_words(self.words, spot.reach), choices, false)
    }

    fn recent_reaches(&self) -> Vec<Reach> {
        let mut reaches: Vec<Reach> = Vec::new();
        for spot in self.session.casts.iter().rev().filter_map(|c| c.spot.as_ref()) {
            if !reaches.contains(&spot.reach) && reaches.len() < 4 {
                reaches.push(spot.reach);
            }
        }
        reaches
    }

    fn bearing(&self, spot: &Spot) -> ChoiceRow {
        let step = |step: &i32| {
            let cdeg = spot.bearing_cdeg.saturating_add(*step).clamp(-8_500, 8_500);
            let side = self.words.say(if *step < 0 { "tackle-left" } else { "tackle-right" });
            let degrees = self.words.figure(f64::from(step.unsigned_abs()) / 100.0, 1);
            self.choice(step.to_string(), format!("{side} {degrees}°"), false, TackleTap::Bearing { cdeg })
        };
        let mut choices: Vec<Choice> = BEARING_STEPS.iter().map(step).collect();
        choices.extend(self.session.marks.iter().enumerate().map(|(i, mark)| {
            let chosen = spot.mark == Some(mark.id);
            self.choice(format!("mark-{i}"), mark.name.clone(), chosen, TackleTap::Mark { mark: mark.id })
        }));
        let mark = spot.mark.and_then(|id| self.session.marks.iter().find(|m| m.id == id));
        let value = mark.map_or_else(|| bearing_words(self.words, spot.bearing_cdeg), |m| m.name.clone());
        self.row("bearing", value, choices, false)
    }

    fn clip(&self, spot: &Spot) -> ChoiceRow {
        let choice = |clipped: bool| {
            let label = self.words.say(if clipped { "tackle-clip-on" } else { "tackle-clip-off" });
            self.choice(clipped.to_string(), label, spot.clipped == clipped, TackleTap::Clip { clipped })
        };
        let value = choice(spot.clipped).label;
        self.row("clip", value, vec![choice(true), choice(false)], false)
    }

    fn bait(&self, rig: &Rig) -> ChoiceRow {
        let used = self.session.casts.iter().rev().filter_map(|cast| cast.rig.bait.as_deref());
        self.names("bait", rig.bait.as_deref(), Factor::Bait, used, |name| TackleTap::Bait { name })
    }

    fn colour(&self, rig: &Rig) -> ChoiceRow {
        let used = self.session.casts.iter().rev().filter_map(|cast| cast.rig.colour.as_deref());
        self.names("colour", rig.colour.as_deref(), Factor::Colour, used, |name| TackleTap::Colour { name })
    }

    /// The angler's own names first, latest first, then the usual ones.
    fn names<'s>(
        &self,
        tag: &str,
        now: Option<&'s str>,
        factor: Factor,
        used: impl Iterator<Item = &'s str>,
        tap: fn(String) -> TackleTap,
    ) -> ChoiceRow {
        let mut names: Vec<String> = Vec::new();
        let usual = usual_names(self.words, factor);
        for name in now.into_iter().chain(used).map(str::to_owned).chain(usual) {
            if !names.iter().any(|known| same_value(factor, known, &name)) && names.len() < 8 {
                names.push(name);
            }
        }
        let choice =
            |name: String| self.choice(name.clone(), name.clone(), now == Some(name.as_str()), tap(name));
        let value = now.map_or_else(|| self.words.say("tackle-none"), str::to_owned);
        self.row(tag, value, names.into_iter().map(choice).collect(), true)
    }

    fn figure(
        &self,
        tag: &str,
        now: Option<u32>,
        usual: &[u32],
        say: impl Fn(u32) -> String,
        tap: fn(u32) -> TackleTap,
    ) -> ChoiceRow {
        let mut values = usual.to_vec();
        values.extend(now.filter(|n| !usual.contains(n)));
        values.sort_unstable();
        let choice = |n: &u32| self.choice(n.to_string(), say(*n), now == Some(*n), tap(*n));
        let choices = values.iter().map(choice).collect();
        self.row(tag, now.map_or_else(|| self.words.say("tackle-none"), say), choices, true)
    }
}

/// "more 0.25 wraps".
pub(crate) fn step_words(words: &Wording, step: i64) -> String {
    let size = words.figure(step.unsigned_abs() as f64 / 100.0, 2);
    let id = if size == "1" { "tackle-wrap" } else { "tackle-wraps" };
    let wraps = words.say_with(id, &[("wraps", Arg::Text(&size))]);
    let way = words.say(if step < 0 { "tackle-less" } else { "tackle-more" });
    format!("{way} {wraps}")
}

/// A reach one step further or nearer, in hundredths of a wrap or of a yard, or about as many centimetres.
pub(crate) fn stepped(reach: Reach, step: i64) -> Reach {
    let add = |n: u32, by: i64| u32::try_from((i64::from(n) + by).max(by.abs().min(25))).unwrap_or(n);
    match reach {
        Reach::Wraps { hundredths, span_tenth_mm } => {
            Reach::Wraps { hundredths: add(hundredths, step), span_tenth_mm }
        }
        Reach::Metres { cm } => Reach::Metres { cm: add(cm, step * 4) },
        Reach::Yards { hundredths } => Reach::Yards { hundredths: add(hundredths, step * 4) },
    }
}

#[cfg(test)]
mod tests;
