//! Are statements about a change in the form "of 100" right that often? How seldom does the verdict lean for
//! a change that does nothing? And does the stated number of further casts settle the question as often as
//! promised?

use super::change::{Habit, fish};
use super::luck::Luck;
use super::share::Share;
use super::water::{Bites, Kind, Water};
use restwater_compare::poisson_rates::Tally;
use restwater_compare::{
    AlternationPlan, CastRow, ChangeFinding, DAY_CASTS, FEWEST_BITES, FEWEST_CASTS, FEWEST_SWITCHES, Factor,
    LEANS_FROM, Side, Verdict, belief, change_findings, change_findings_without_power, find_changes,
    spell_variance,
};
use restwater_waits::Wait;
use std::collections::BTreeMap;

/// Log-sd of the effect of changes that have one; half have none.
const EFFECT_SD: f64 = 0.5;
/// Lower ends of the bins of the claimed probability.
pub const BINS: [f64; 4] = [0.5, 0.65, 0.8, 0.9];
/// Ways to change one thing often enough for a verdict.
pub const HABITS: [Habit; 2] = [Habit::Alternating, Habit::HalfHours];

/// The results on one water.
#[derive(Debug, Clone, Default)]
pub struct Believed {
    /// Claimed and right, by bin of the claim.
    pub bins: [[Share; 2]; BINS.len()],
    /// Days without an effect on which the verdict leaned: at all-out, and at any look.
    pub leant: [Share; 2],
    /// The same for days with an effect, towards the better side.
    pub found: [Share; 2],
}

impl Believed {
    /// Combines two of them.
    #[must_use]
    pub fn with(&self, other: &Self) -> Self {
        let mut all = self.clone();
        let pairs = |x: &mut [Share], y: &[Share]| x.iter_mut().zip(y).for_each(|(x, y)| x.join(y));
        all.bins.iter_mut().zip(&other.bins).for_each(|(x, y)| pairs(x, y));
        pairs(&mut all.leant, &other.leant);
        pairs(&mut all.found, &other.found);
        all
    }
}

/// The waters, by what complicates them.
pub fn waters() -> Vec<Water> {
    let plain = |name| Water::plain(name, Kind::Overdispersed, Bites::Constant { mean: 12.0 });
    let evening = Some(Bites::Constant { mean: 25.0 });
    vec![
        plain("even, constant 12"),
        Water { runs: true, ..plain("runs, constant 12") },
        Water { uneven: [0.0, 0.0, 0.7], ..plain("uneven hours, constant 12") },
        Water { bites: Bites::Constant { mean: 8.0 }, evening, ..plain("drift constant 8 to 25") },
    ]
}

/// ln of the effect of the day's change.
fn effect(luck: &Luck, sd: f64) -> f64 {
    if luck.home[0][0] < 0.5 { 0.0 } else { sd * luck.spots[0] }
}

/// Fishes days on which the colour is changed; on half of them it has no effect.
pub fn believed(water: &Water, habit: Habit, days: u64, run: u64) -> Believed {
    let mut all = Believed::default();
    for day in 0..days {
        let luck = Luck::of_day(water.seed(run) ^ 0x00BE_11EF, day);
        let effect = effect(&luck, EFFECT_SD);
        let rows = fish(water, &luck, habit, effect.exp());
        let right = |side: Side| if side == Side::B { effect > 0.0 } else { effect < 0.0 };
        for look in [rows.len() / 2, rows.len()] {
            let Some(found) = colour(&rows[..look], day).filter(said) else { continue };
            let (side, claimed) = found.belief.better();
            if let Some(bin) = BINS.iter().rposition(|from| claimed >= *from) {
                all.bins[bin][0].add(claimed, 1.0);
                all.bins[bin][1].add(f64::from(u8::from(right(b_of(&found, side)))), 1.0);
            }
        }
        let leans = |look: usize| lean(&rows[..look], day);
        let end = leans(rows.len());
        let ever = end.or_else(|| (1..rows.len()).find_map(leans));
        for (i, side) in [end, ever].into_iter().enumerate() {
            let which = if effect == 0.0 { &mut all.leant } else { &mut all.found };
            let counts = side.is_some_and(|side| effect == 0.0 || right(side));
            which[i].add(f64::from(u8::from(counts)), 1.0);
        }
    }
    all
}

fn colour(rows: &[CastRow], seed: u64) -> Option<ChangeFinding> {
    change_findings_without_power(rows, seed).ok()?.into_iter().find(|f| f.factor == Factor::Colour)
}

/// Which side of the plan a side of a finding is, by its colour.
fn b_of(found: &ChangeFinding, side: Side) -> Side {
    let value = if side == Side::A { &found.a.value } else { &found.b.value };
    if value == "B" { Side::B } else { Side::A }
}

/// Whether there is a verdict on it.
fn said(found: &ChangeFinding) -> bool {
    found.switches >= FEWEST_SWITCHES
        && found.a.bites + found.b.bites >= FEWEST_BITES
        && found.a.casts.min(found.b.casts) >= FEWEST_CASTS
}

/// The colour that the verdict leans to or calls clearly better.
fn lean(rows: &[CastRow], seed: u64) -> Option<Side> {
    // If the minutes alone don't lean, the rest need not be computed.
    let change = find_changes(rows).into_iter().find(|c| c.factor == Factor::Colour)?;
    let casts = change.sided(rows);
    let tally = |side: Side| {
        let waits = || casts.iter().filter(|c| c.side == side).map(|c| c.wait);
        Tally {
            bites: waits().filter(|w| w.is_bite()).count() as u64,
            time: waits().map(Wait::minutes).sum(),
        }
    };
    if belief(tally(Side::A), tally(Side::B), spell_variance(&casts)).better().1 < LEANS_FROM {
        return None;
    }
    let found = colour(rows, seed)?;
    match found.verdict {
        Verdict::CantTellYet => None,
        Verdict::LeansTo(side) | Verdict::ClearlyBetterHereToday(side) => Some(b_of(&found, side)),
    }
}

/// What was promised for more casts, and what happened.
#[derive(Debug, Clone, Default)]
pub struct MoreCasts {
    /// If a number of casts was stated: promised, and settled after them.
    pub named: [Share; 2],
    /// If only the chance after a day's casts was stated.
    pub chance: [Share; 2],
}

impl MoreCasts {
    /// Adds another.
    pub fn join(&mut self, other: &Self) {
        let pairs =
            self.named.iter_mut().chain(&mut self.chance).zip(other.named.iter().chain(&other.chance));
        pairs.for_each(|(x, y)| x.join(y));
    }
}

/// Casts after which the stated number is read; they alternate on a constant water of mean 12.
const ASKED_AFTER: [usize; 3] = [16, 24, 32];
/// Log-sds of the effects, with equally many days of each; half of the days have no effect.
const EFFECTS: [f64; 2] = [0.4, 1.2];

/// From this chance on, a number of casts may be stated.
const LIKELY: f64 = 0.8;

/// Alternates, asks, and goes on for the stated number of casts.
pub fn more_casts(days: u64, run: u64) -> MoreCasts {
    let mut all = MoreCasts::default();
    for day in 0..days {
        let luck = Luck::of_day(run ^ 0x000A_550E, day);
        let effect = effect(&luck, EFFECTS[(day % 2) as usize]);
        let asked_after = ASKED_AFTER[(day / 2 % 3) as usize];
        let rows = alternated(&luck, asked_after, effect);
        // If the belief is weak, no number is ever stated: one in sixty such days is counted for the chance.
        let first = change_findings_without_power(&rows, day).unwrap_or_default();
        let Some(first) = first.first().filter(|f| said(f) && !clear(f)) else { continue };
        if first.belief.better().1 < LIKELY && day % 60 != 0 {
            continue;
        }
        let found = change_findings(&rows, day).unwrap_or_default();
        let Some(found) = found.first() else { continue };
        let Some(more) = found.more_casts else { continue };
        let (shares, casts) = match more.casts {
            Some(casts) => (&mut all.named, casts),
            None => (&mut all.chance, DAY_CASTS),
        };
        let after = alternated(&luck, asked_after + casts, effect);
        let settled =
            change_findings_without_power(&after, day).unwrap_or_default().first().is_some_and(clear);
        shares[0].add(more.assurance, 1.0);
        shares[1].add(f64::from(u8::from(settled)), 1.0);
    }
    all
}

fn clear(found: &ChangeFinding) -> bool {
    matches!(found.verdict, Verdict::ClearlyBetterHereToday(_))
}

/// This many casts, however long they take.
fn alternated(luck: &Luck, casts: usize, effect: f64) -> Vec<CastRow> {
    let mut at_min = 0.0;
    let row = |(i, side): (usize, Side)| {
        let mean = 12.0 / if side == Side::B { effect.exp() } else { 1.0 };
        let bite_at = -mean * (1.0 - luck.cast(i).u[2]).ln();
        let wait = Wait::new(bite_at.min(20.0), bite_at <= 20.0).ok()?;
        let value = if side == Side::B { "B" } else { "A" };
        let setup = BTreeMap::from([(Factor::Colour, value.to_owned())]);
        let row = CastRow { rod: 1, at_min, wait, setup, twitched: false };
        at_min += wait.minutes() + 2.0;
        Some(row)
    };
    AlternationPlan::new(Side::A, casts).sides().take(casts).enumerate().filter_map(row).collect()
}
