//! Days on which no change mattered: how often the verdict still claims that one did. (Invented days, seeded:
//! constant rates, clumps, and clumps on a steep drift. The whole-app simulation has more of them.)

use super::Factor;
use super::cast_row::CastRow;
use super::chance::Chance;
use super::finding::change_findings_without_power;
use super::verdict::Verdict;
use restwater_waits::Wait;

#[derive(Clone, Copy)]
struct Water {
    /// Rate in a clump over the mean rate, and outside it.
    clumps: [f64; 2],
    /// Rate at the end of the day over that at its start.
    drift: f64,
    /// Rate of side B over that of side A.
    effect: f64,
}

const DAY_MIN: f64 = 360.0;
const LEAVE_MIN: f64 = 15.0;

/// Mean clump length 80 min, mean rate three bites an hour.
fn day(water: Water, is_b: impl Fn(usize, f64) -> bool, seed: u64) -> Vec<CastRow> {
    let mut chance = Chance::new(seed, 0);
    let mut clump = chance.happens(0.5);
    let states: Vec<f64> = (0..40)
        .map(|_| {
            clump ^= chance.happens(0.25);
            water.clumps[usize::from(clump)]
        })
        .collect();
    let rate = |t: f64| {
        let drift = 1.0 + (water.drift - 1.0) * t / DAY_MIN;
        0.05 * states[(t / 20.0) as usize] * drift / (0.5 * (1.0 + water.drift))
    };
    let (mut rows, mut now) = (Vec::new(), 0.0);
    while now < DAY_MIN {
        let b = is_b(rows.len(), now);
        let mut left = chance.exponential() / if b { water.effect } else { 1.0 };
        let mut minutes = 0.0;
        while minutes < LEAVE_MIN && left > 0.0 {
            left -= 0.25 * rate(now + minutes);
            minutes += 0.25;
        }
        let setup = [(Factor::Colour, if b { "white" } else { "pink" }.to_owned())].into();
        let wait = Wait::new(minutes, left <= 0.0).unwrap();
        rows.push(CastRow { rod: 1, at_min: now, wait, setup, twitched: false });
        now += minutes + 2.0;
    }
    rows
}

fn clear_share(water: Water, is_b: impl Fn(usize, f64) -> bool + Copy) -> f64 {
    let days = 160;
    let clear = |seed: &u64| {
        let findings = change_findings_without_power(&day(water, is_b, *seed), 1).unwrap();
        findings.iter().any(|f| matches!(f.verdict, Verdict::ClearlyBetterHereToday(_)))
    };
    (0..days).filter(clear).count() as f64 / days as f64
}

const EVEN: Water = Water { clumps: [1.0, 1.0], drift: 1.0, effect: 1.0 };
const CLUMPED: Water = Water { clumps: [0.1, 1.9], drift: 1.0, effect: 1.0 };
const CLUMPED_DRIFT: Water = Water { clumps: [0.1, 1.9], drift: 6.0, effect: 1.0 };

fn abba(cast: usize, _: f64) -> bool {
    matches!(cast % 4, 1 | 2)
}

fn every_half_hour(_: usize, now: f64) -> bool {
    (now / 30.0) as usize % 2 == 1
}

fn at_noon(_: usize, now: f64) -> bool {
    now > DAY_MIN / 2.0
}

#[test]
fn no_effect_is_called_clear_on_at_most_one_day_in_twenty() {
    for water in [EVEN, CLUMPED, CLUMPED_DRIFT] {
        for is_b in [abba, every_half_hour] {
            assert!(clear_share(water, is_b) <= 0.05);
        }
        assert_eq!(clear_share(water, at_noon), 0.0);
    }
}

/// An ordinary test would claim it on one such day in ten: sides change with every cast, and the verdict is
/// read after each.
#[test]
fn no_effect_is_seldom_called_clear_at_any_look_of_a_long_day() {
    let days = 50;
    let ever = |seed: &u64| {
        let mut rows = day(EVEN, |cast, _| cast % 2 == 1, *seed);
        let tomorrow = day(EVEN, |cast, _| cast % 2 == 1, seed + 1_000).into_iter();
        rows.extend(tomorrow.map(|row| CastRow { at_min: row.at_min + DAY_MIN, ..row }));
        (8..=rows.len()).any(|casts| {
            let findings = change_findings_without_power(&rows[..casts], 1).unwrap();
            findings.iter().any(|f| matches!(f.verdict, Verdict::ClearlyBetterHereToday(_)))
        })
    };
    assert!((0..days).filter(ever).count() as f64 <= 0.05 * days as f64);
}

/// A test that never calls anything clear would be useless.
#[test]
fn a_large_effect_is_called_clear_on_many_days() {
    let strong = Water { effect: 4.0, ..EVEN };
    assert!(clear_share(strong, abba) > 0.5);
    let clumped = clear_share(Water { effect: 4.0, ..CLUMPED_DRIFT }, abba);
    assert!(clumped > 0.1, "{clumped}");
}
