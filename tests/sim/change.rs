//! Did it matter? How often the words "clearly better" are said where nothing was changed that matters,
//! and how often where it did.

use super::day::{DAY, EXTRA, TURN};
use super::luck::Luck;
use super::water::Water;
use restwater_core::bite::Wait;
use restwater_core::compare::{
    AlternationPlan, CastRow, Factor, Side, Verdict, change_findings_without_power,
};
use std::collections::BTreeMap;

/// How the angler changes the colour of the bait.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Habit {
    /// By the alternation plan, cast by cast.
    Alternating,
    /// Once, halfway through the day.
    Once,
    /// After two casts in a row without a bite.
    OnAWhim,
}

impl Habit {
    /// All of them, with their names.
    pub const ALL: [(Self, &'static str); 3] =
        [(Self::Alternating, "alternating"), (Self::Once, "once"), (Self::OnAWhim, "on a whim")];
}

/// Minutes every cast is left.
const LEAVE: f64 = 20.0;

/// What was said over many days.
#[derive(Debug, Clone, Copy, Default)]
pub struct Said {
    /// Days.
    pub days: f64,
    /// "Clearly better" at all-out, of either side.
    pub clear: f64,
    /// At all-out, of the side that was better in truth.
    pub clear_of_better: f64,
    /// "Clearly better" at any of the looks of the day (every fourth cast, and all-out).
    pub ever: f64,
}

impl Said {
    /// A share of the days with its standard error.
    pub fn share(&self, count: f64) -> (f64, f64) {
        let p = count / self.days;
        (p, (p * (1.0 - p) / self.days).sqrt())
    }
}

/// Days on which colour B makes the fish `effect` times as keen; 1 = it does nothing.
pub fn said(water: &Water, habit: Habit, effect: f64, days: u64, run: u64) -> Said {
    let mut said = Said { days: days as f64, ..Said::default() };
    for day in 0..days {
        let rows = fish(water, &Luck::of_day(water.seed(run) ^ 0x00C0_1085, day), habit, effect);
        let looks = (4..rows.len()).step_by(4).chain([rows.len()]);
        let mut last = None;
        let mut ever = false;
        for casts in looks {
            last = clear(&rows[..casts], day);
            ever |= last.is_some();
        }
        said.clear += f64::from(u8::from(last.is_some()));
        said.clear_of_better += f64::from(u8::from(last.as_deref() == Some("B")));
        said.ever += f64::from(u8::from(ever));
    }
    said
}

/// Which colour is called clearly better, if one is.
fn clear(rows: &[CastRow], seed: u64) -> Option<String> {
    let findings = change_findings_without_power(rows, seed).ok()?;
    findings.into_iter().filter(|f| f.factor == Factor::Colour).find_map(|finding| match finding.verdict {
        Verdict::ClearlyBetterHereToday(Side::A) => Some(finding.a.value),
        Verdict::ClearlyBetterHereToday(Side::B) => Some(finding.b.value),
        _ => None,
    })
}

fn fish(water: &Water, luck: &Luck, habit: Habit, effect: f64) -> Vec<CastRow> {
    let plan = AlternationPlan::new(Side::A, usize::MAX);
    let mut rows: Vec<CastRow> = Vec::new();
    let (mut clock, mut blanks, mut on_b) = (0.0, 0, false);
    let mut disturbed = vec![-1e9; water.spots];
    while clock < DAY {
        let cast = rows.len();
        on_b = match habit {
            Habit::Alternating => plan.side(cast) == Some(Side::B),
            Habit::Once => clock >= DAY / 2.0,
            Habit::OnAWhim => on_b != (blanks == 2),
        };
        blanks %= 2;
        let spot = cast % water.spots;
        let keen = if on_b { effect } else { 1.0 };
        let wait = water.wait(luck, cast, clock, spot, disturbed[spot], keen).filter(|w| *w <= LEAVE);
        let out = wait.unwrap_or(LEAVE);
        let Ok(logged) = Wait::new(out, wait.is_some()) else { break };
        if clock + out > DAY {
            break;
        }
        let setup = BTreeMap::from([
            (Factor::Colour, if on_b { "B" } else { "A" }.to_owned()),
            (Factor::Spot, spot.to_string()),
        ]);
        rows.push(CastRow { rod: 1, at_min: clock, wait: logged, setup, outcome: None });
        clock += out;
        disturbed[spot] = clock;
        clock += TURN + if wait.is_some() { EXTRA } else { 0.0 };
        blanks = if wait.is_some() { 0 } else { blanks + 1 };
    }
    rows
}
