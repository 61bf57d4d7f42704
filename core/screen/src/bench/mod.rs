//! The Bench screen, for the evening before: hooklengths to tie and to cut down, spools, the pop-up and its shot, the time to
//! sink to a depth, the ladder of heights. All of it is entered by taps.

mod fall;
mod heights;
mod hooklengths;
mod plan;
mod pop_up;
mod spools;

use super::{Action, Arg, BenchTap, Choice, ChoiceRow, Leaf, LeafKey, LeavesView, Wording};
use restwater_bench::hooklength::Hooklength;
use restwater_bench::ladder::HeightCast;
use restwater_bench::units::LineLength;
use restwater_caution::table::Region;
use restwater_kit::Kit;
use restwater_kit::evening::evening;
use restwater_log::Moment;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

pub use fall::REACTION_S;
pub use plan::PlanInput;

/// The current selection on the bench. It is not part of the log until a key says what was done with it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct BenchChoices {
    /// The hooklength that the keys act on.
    pub hooklength: Hooklength,
    /// Line of the spool to be added, thousandths of a millimetre.
    pub spool_um: u16,
    /// What is on it.
    pub spool: LineLength,
    /// When the lead hit the water, while a fall is timed.
    pub falling: Option<Moment>,
    /// The last fall timed, ms.
    pub fall_ms: Option<u32>,
    /// Whether KEEP has been pressed for it.
    pub fall_kept: bool,
    /// The depth it was timed at, in cm, if known.
    pub plumbed_cm: u32,
    /// Water temperature for the balance, in tenths of a degree; `None` for the logged one or a guess.
    pub water: Option<i16>,
    /// The size of shot whose weight is being entered.
    pub size: Option<String>,
    /// Whether the ladder counts all sessions or this one.
    pub all_sessions: bool,
}

impl Default for BenchChoices {
    /// 3 ft of 0.12 mm with a size 16 (ties of 3 ft and 5 ft: common practice, no source).
    fn default() -> Self {
        Self {
            hooklength: Hooklength {
                length: LineLength::from_tenths_mm(9_144),
                diameter_um: 120,
                hook_size: 16,
                hair_mm: None,
            },
            spool_um: 120,
            spool: LineLength::from_tenths_mm(500_000),
            falling: None,
            fall_ms: None,
            fall_kept: false,
            plumbed_cm: 300,
            water: None,
            size: None,
            all_sessions: true,
        }
    }
}

impl BenchChoices {
    /// Whether the last fall timed is among those kept: a copy of one measurement must not narrow the limits. After UNDO it
    /// can be kept again.
    pub fn is_fall_kept(&self, kit: &Kit) -> bool {
        let is_it = |s: f64| self.fall_ms.is_some_and(|ms| (s * 1_000.0 - f64::from(ms)).abs() < 0.5);
        self.fall_kept && kit.falls.iter().any(|timed| is_it(timed.fall.fall_s))
    }
}

/// What the screen is made from.
pub struct BenchInput<'a> {
    /// The kit.
    pub kit: &'a Kit,
    /// The current selection.
    pub choices: &'a BenchChoices,
    /// Casts with a pop-up on all days.
    pub all: &'a [HeightCast],
    /// Those of this session.
    pub today: &'a [HeightCast],
    /// How many casts of all days, and of this session, are in neither, since their end was not seen.
    pub unseen: [usize; 2],
    /// Water temperature as last logged, tenths of a degree.
    pub water: Option<i16>,
    /// Where the water lies.
    pub region: Region,
    /// The kit of this phone.
    pub own: Uuid,
    /// Kits of other phones, which come with a partner's log or an older phone's.
    pub others: &'a [Uuid],
    /// The kit in use.
    pub kit_id: Uuid,
    /// The plan for a day to come.
    pub plan: &'a PlanInput<'a>,
    /// The sentences.
    pub words: &'a Wording,
}

/// Makes the screen.
pub fn bench(input: &BenchInput) -> LeavesView {
    let words = input.words;
    let evening = evening(input.kit);
    let (day_plan, of_plan) = plan::plan(input);
    let parts = vec![
        day_plan,
        hooklengths::wallet(input),
        hooklengths::cut_down(input, &evening),
        spools::tie_up(input, &evening),
        spools::spools(input),
        pop_up::pop_up(input),
        pop_up::shot(input),
        fall::fall(input),
        heights::heights(input),
    ];
    let mut first = Leaf::new(words, "bench", "parts");
    first.keys = parts.iter().map(|(leaf, sub)| leaf.opener(sub.clone())).collect();
    if !input.others.is_empty() {
        let kit = |tag: String, label, kit| choice(tag, label, kit == input.kit_id, BenchTap::UseKit { kit });
        let other = |(i, id): (usize, &Uuid)| {
            let number = (i + 1).to_string();
            kit(id.to_string(), words.say_with("bench-kit-of", &[("number", Arg::Text(&number))]), *id)
        };
        let own = kit(input.own.to_string(), words.say("bench-kit-own"), input.own);
        let kits = std::iter::once(own).chain(input.others.iter().enumerate().map(other)).collect();
        first.rows.push(ChoiceRow::of("kit", words.say("bench-row-kit"), kits, words.say("bench-kit-how")));
    }
    let parts = parts.into_iter().map(|(leaf, _)| leaf);
    LeavesView { leaves: std::iter::once(first).chain(parts).chain(of_plan).collect() }
}

/// A leaf with its line on the first one.
type Part = (Leaf, String);

/// "18 in, 0.12 mm, size 16, 8 mm hair".
pub(crate) fn hooklength_words(words: &Wording, h: &Hooklength) -> String {
    let diameter = mm(words, h.diameter_um);
    let size = h.hook_size.to_string();
    let text = words.say_with(
        "bench-hooklength",
        &[
            ("length", Arg::Text(&words.decimals(&h.length.to_string()))),
            ("mm", Arg::Text(&diameter)),
            ("size", Arg::Text(&size)),
        ],
    );
    match h.hair_mm {
        None => text,
        Some(hair) => {
            let hair = words.say_with("bench-hair", &[("mm", Arg::Text(&hair.to_string()))]);
            words.listed(&[&text, &hair])
        }
    }
}

/// A diameter as written on the spool: "0.12".
fn mm(words: &Wording, um: u16) -> String {
    words.figure(f64::from(um) / 1_000.0, 3)
}

/// A choice of the Bench.
fn choice(tag: impl Into<String>, label: String, chosen: bool, tap: BenchTap) -> Choice {
    Choice::new(tag, label, chosen, Action::Bench { tap })
}

/// An outlined key of the Bench.
fn key(tag: impl Into<String>, label: String, tap: BenchTap) -> LeafKey {
    LeafKey::new(tag, label, Action::Bench { tap })
}

/// A row of figures: steps first, if there are any, then the usual values.
struct Figures<'a, N> {
    tag: &'a str,
    now: N,
    steps: &'a [i32],
    usual: &'a [N],
    least: N,
    most: N,
    common: bool,
    tap: fn(N) -> BenchTap,
}

impl<N: Copy + Ord + ToString + Into<i64> + TryFrom<i64>> Figures<'_, N> {
    fn row(&self, words: &Wording, say: &dyn Fn(i64) -> String) -> ChoiceRow {
        let now: i64 = self.now.into();
        let step = |step: &i32| {
            let value = N::try_from(now + i64::from(*step)).ok()?;
            let within = (self.least..=self.most).contains(&value);
            let sign = if *step < 0 { "−" } else { "+" };
            let label = format!("{sign}{}", say(i64::from(step.abs())));
            within.then(|| choice(format!("{sign}{}", step.abs()), label, false, (self.tap)(value)))
        };
        let mut usual = self.usual.to_vec();
        if !usual.contains(&self.now) {
            usual.push(self.now);
            usual.sort_unstable();
        }
        let steps = self.steps.iter().filter_map(step);
        let usual =
            usual.into_iter().map(|n| choice(n.to_string(), say(n.into()), n == self.now, (self.tap)(n)));
        let source = if self.common { words.say("source-common") } else { String::new() };
        let label = words.say(&format!("bench-row-{}", self.tag));
        ChoiceRow { value: say(now), ..ChoiceRow::of(self.tag, label, steps.chain(usual).collect(), source) }
    }
}

/// A length in whole inches or whole centimetres, whichever fits.
fn length_words(words: &Wording, tenths: i64) -> String {
    words.decimals(&LineLength::from_tenths_mm(u32::try_from(tenths).unwrap_or(0)).to_string())
}
