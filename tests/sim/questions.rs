//! One question asked over a season: the same two colours, alternated cast by cast on one spot, on six days.
//! How soon is the better one found, and how often is one called better at any look of the season if the
//! colour does nothing?

use super::change::{self, Habit};
use super::looks::level;
use super::luck::Luck;
use super::share::Share;
use super::water::{Bites, Kind, Water};
use restwater_compare::CLEAR_BELOW;
use restwater_compare::CastRow;
use restwater_compare::Side;
use restwater_compare::over_days::{
    Compared, DayOfQuestion, OverDays, compared, more_days, question, stakes,
};

/// Days of a season.
pub const SEASON: usize = 6;
/// Days at whose end the seasons that have an answer are counted.
pub const BY_DAY: [usize; 3] = [1, 3, 6];

/// The results of many seasons.
#[derive(Debug, Clone, Default)]
pub struct Asked {
    /// Seasons in which the better colour was called clearly better at some look by the end of each day.
    pub found: [Share; SEASON],
    /// Seasons in which the other one was, or either if they are alike.
    pub untrue: [Share; SEASON],
    /// Seasons in which the stake that decides had grown enough, by each way alone: minutes, waits, casts.
    pub by_way: [[Share; SEASON]; 3],
    /// Seasons that ended leaning to the right colour.
    pub leant: Share,
}

/// The waters of this part, on which only the colour matters: with even bites, with runs, and with hours that
/// differ.
pub fn waters() -> Vec<Water> {
    let window =
        |name, centre, sd| Water::plain(name, Kind::NarrowWindow, Bites::Window { centre, sd, share: 0.7 });
    let days = Water {
        between_days: 0.5,
        ..Water::plain("days differ, constant 12", Kind::Overdispersed, Bites::Constant { mean: 12.0 })
    };
    let mut all = level();
    all.extend([days, window("window 8±1", 8.0, 1.0), window("window 15±0.7", 15.0, 0.7)]);
    all
}

/// Ways to change that are checked only for false claims.
pub const OTHER_WAYS: [(Habit, &str); 3] =
    [(Habit::HalfHours, "by half hours"), (Habit::Once, "once a day"), (Habit::OnAWhim, "on a whim")];

/// The casts of each day of a season.
fn season(water: &Water, habit: Habit, effect: f64, number: u64, run: u64) -> Vec<Vec<CastRow>> {
    let day = |day| {
        let luck = Luck::of_day(water.seed(run) ^ 0x0051_DE5A, number * SEASON as u64 + day);
        change::fish(water, &luck, habit, effect)
    };
    (0..SEASON as u64).map(day).collect()
}

fn colour(rows: &[CastRow]) -> Option<DayOfQuestion> {
    let is = |asked: &Compared| asked.factor == restwater_compare::Factor::Colour;
    compared(rows).iter().find(|asked| is(asked)).map(|asked| asked.day(rows))
}

/// Fishes seasons in which colour B makes the fish `effect` times as keen, and reads the answer after every
/// cast. It is the first question asked.
pub fn asked(water: &Water, habit: Habit, effect: f64, seasons: u64, run: u64) -> Asked {
    let mut all = Asked::default();
    for number in 0..seasons {
        let (mut found, mut untrue, mut by_way) = ([false; SEASON], [false; SEASON], [[false; SEASON]; 3]);
        let mut days: Vec<DayOfQuestion> = Vec::new();
        for (n, rows) in season(water, habit, effect, number, run).iter().enumerate() {
            for casts in 1..=rows.len() {
                let Some(today) = colour(&rows[..casts]).filter(|day| day.counts) else { continue };
                days.push(today);
                let grown = stakes(&days);
                let enough = |stake: f64| 2.0 / stake < CLEAR_BELOW;
                for (way, stake) in by_way.iter_mut().zip([grown.minutes, grown.waits, grown.casts]) {
                    way[n] |= enough(stake);
                }
                // If the stake has not grown enough, the rest need not be computed.
                if enough(grown.decides)
                    && let OverDays::ClearlyBetter(side) = question(&days, 1, number).verdict
                {
                    let right = effect != 1.0 && side == Side::B;
                    found[n] |= right;
                    untrue[n] |= !right;
                }
                days.pop();
            }
            days.extend(colour(rows));
        }
        let note = |shares: &mut [Share; SEASON], days: [bool; SEASON]| {
            for (n, share) in shares.iter_mut().enumerate() {
                share.add(f64::from(u8::from(days[..=n].contains(&true))), 1.0);
            }
        };
        note(&mut all.found, found);
        note(&mut all.untrue, untrue);
        all.by_way.iter_mut().zip(by_way).for_each(|(shares, days)| note(shares, days));
        let leans = matches!(
            question(&days, 1, number).verdict,
            OverDays::LeansTo(Side::B) | OverDays::ClearlyBetter(Side::B)
        );
        all.leant.add(f64::from(u8::from(leans)), 1.0);
    }
    all
}

/// What was promised after two days for more days, and what happened: if a number of days was stated, and if
/// only the chance after six was.
#[derive(Debug, Clone, Default)]
pub struct Promised {
    /// Promised and settled, if a number was stated.
    pub named: [Share; 2],
    /// The same if it was not.
    pub chance: [Share; 2],
}

/// Days after which it asks how many more it would take.
const ASKED_AFTER: usize = 2;
/// Log-sds of the effects, with equally many seasons of each; half of the seasons have no effect.
const EFFECTS: [f64; 2] = [0.4, 1.2];

/// Alternates for two days on a constant water of mean 12, asks, and goes on for the stated number of days.
pub fn promised(seasons: u64, run: u64) -> Promised {
    let water = Water::plain("promised, constant 12", Kind::ConstantRate, Bites::Constant { mean: 12.0 });
    let mut all = Promised::default();
    for number in 0..seasons {
        let luck = Luck::of_day(run ^ 0x00A5_5E55, number);
        let ln_effect =
            if luck.home[0][0] < 0.5 { 0.0 } else { EFFECTS[(number % 2) as usize] * luck.spots[0] };
        let day = |day: usize| {
            let luck = Luck::of_day(water.seed(run) ^ 0x0002_0A1D, number * 16 + day as u64);
            colour(&change::fish(&water, &luck, Habit::Alternating, ln_effect.exp()))
        };
        let mut days: Vec<DayOfQuestion> = (0..ASKED_AFTER).filter_map(day).collect();
        let clear =
            |days: &[DayOfQuestion]| matches!(question(days, 1, number).verdict, OverDays::ClearlyBetter(_));
        if clear(&days) {
            continue;
        }
        let Some(more) = more_days(&days, 1, number) else { continue };
        let (shares, most) = match more.days {
            Some(days) => (&mut all.named, days),
            None => (&mut all.chance, restwater_compare::over_days::MOST_DAYS),
        };
        let settled = (0..most).any(|n| {
            days.extend(day(ASKED_AFTER + n));
            clear(&days)
        });
        shares[0].add(more.assurance, 1.0);
        shares[1].add(f64::from(u8::from(settled)), 1.0);
    }
    all
}
