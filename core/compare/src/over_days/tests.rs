use super::*;
use crate::any_look::any_look_p;
use crate::belief::{belief, belief_of_waits, spell_variance};
use crate::cast_row::CastRow;
use crate::chance::Chance;
use crate::changes::find_changes;
use crate::changes::tests::row;
use crate::factor::Factor::{self, Colour, Height, Spot};
use crate::poisson_rates::Tally;
use proptest::prelude::*;

/// A day of casts alternated by a plan, colours by name: exponential waits with these means, left for 20 min.
fn rows(plan: &str, means: [f64; 2], seed: u64) -> Vec<CastRow> {
    let mut chance = Chance::new(seed, 5);
    let mut now = 0.0;
    let cast = |letter: char| {
        let (colour, mean) = if letter == 'p' { ("pink", means[0]) } else { ("white", means[1]) };
        let bite_at = mean * chance.exponential();
        let row = row(1, now, bite_at.min(20.0), bite_at <= 20.0, &[(Colour, colour)]);
        now += bite_at.min(20.0) + 3.0;
        row
    };
    plan.chars().map(cast).collect()
}

const PLAN: &str = "pwwppwwppwwppwwppwwp";

/// The evidence of the only change of a day.
fn of(rows: &[CastRow]) -> DayOfQuestion {
    compared(rows)[0].day(rows)
}

fn day(plan: &str, means: [f64; 2], seed: u64) -> DayOfQuestion {
    of(&rows(plan, means, seed))
}

fn days(n: u64, means: [f64; 2], seed: u64) -> Vec<DayOfQuestion> {
    (0..n).map(|i| day(PLAN, means, 100 * seed + i)).collect()
}

#[test]
fn over_a_single_day_the_stake_is_that_days_own_figure() {
    for seed in 0..5 {
        let rows = rows(PLAN, [6.0, 15.0], seed);
        let change = &find_changes(&rows)[0];
        let tally = |side: usize| Tally {
            bites: change.places[side].iter().filter(|&&i| rows[i].wait.is_bite()).count() as u64,
            time: change.places[side].iter().map(|&i| rows[i].wait.minutes()).sum(),
        };
        let found = question(&[of(&rows)], 1, 1);
        let alone = any_look_p(tally(0), tally(1));
        assert!(
            alone == 1.0 || (found.stakes.minutes * alone - 1.0).abs() < 1e-4,
            "{} {alone}",
            found.stakes.minutes
        );
        let casts = change.sided(&rows);
        let scatter = spell_variance(&casts);
        let by_waits = belief_of_waits(&crate::finding::two_sided_strata(&casts), scatter);
        let believed = belief(tally(0), tally(1), scatter).more_cautious(by_waits);
        assert!((found.belief.a - believed.a).abs() < 2e-3 && (found.belief.b - believed.b).abs() < 2e-3);
    }
}

#[test]
fn evidence_over_days_multiplies_even_if_their_rates_differ() {
    let days: Vec<DayOfQuestion> =
        (0..6).map(|i| day(PLAN, if i % 2 == 0 { [4.0, 12.0] } else { [8.0, 24.0] }, 700 + i)).collect();
    let p: Vec<f64> = (1..=6).map(|n| question(&days[..n], 1, 1).any_look_p).collect();
    assert!(p[0] > 0.05 && p[5] < 1e-3, "{p:?}");
    let found = question(&days, 1, 1);
    assert_eq!(found.verdict, OverDays::ClearlyBetter(Side::A));
    assert_eq!((found.days, found.other_days, found.casts()), (6, 0, 120));
    // The third question has a sixth of the first one's share of the error.
    assert!((question(&days, 3, 1).any_look_p / found.any_look_p - 6.0).abs() < 1e-9);
}

#[test]
fn the_question_is_the_same_whichever_of_the_two_came_first() {
    let (first, second) = (rows("pwwppwwpww", [5.0, 12.0], 3), rows("wppwwppww", [5.0, 12.0], 3));
    let [one, other] = [compared(&first).remove(0), compared(&second).remove(0)];
    assert_eq!((one.a.as_str(), one.b.as_str()), ("pink", "white"));
    assert_eq!((one.factor, &one.a, &one.b), (other.factor, &other.a, &other.b));
    assert_eq!([one.day(&first), other.day(&second)].map(|day| day.sides.map(|s| s.casts)), [[4, 6], [4, 5]]);
    // The same day with the other value first gives the same evidence.
    let turned: Vec<CastRow> =
        first.iter().map(|row| CastRow { at_min: 500.0 - row.at_min, ..row.clone() }).collect();
    let [there, back] = [of(&first), of(&turned)];
    assert_eq!((there.sides, there.minutes, there.waits), (back.sides, back.minutes, back.waits));
}

#[test]
fn a_day_counts_only_if_the_two_were_changed_back_and_forth_and_alone() {
    let plain = &compared(&rows("pwpwp", [5.0, 12.0], 1))[0];
    assert!(plain.counts() && plain.switches == 4);
    assert!(!day("ppppwwwwppp", [5.0, 12.0], 1).counts);
    let both: Vec<CastRow> = rows(PLAN, [5.0, 12.0], 1)
        .into_iter()
        .map(|mut row| {
            let height = if row.setup[&Colour] == "pink" { "20 cm" } else { "40 cm" };
            row.setup.insert(Height, height.into());
            row
        })
        .collect();
    assert!(compared(&both).iter().all(|asked| !asked.counts()));
    let nothing = question(&[of(&both)], 1, 1);
    assert_eq!((nothing.days, nothing.other_days, nothing.casts()), (0, 1, 20));
    assert_eq!((nothing.stakes.decides, nothing.block_p, nothing.verdict), (1.0, 1.0, OverDays::CantTellYet));
}

#[test]
fn there_are_no_questions_about_spots_or_feed() {
    let asked = |factor: Factor| {
        let rows: Vec<CastRow> = (0..6)
            .map(|i| row(1, 10.0 * f64::from(i), 5.0, true, &[(factor, if i % 2 == 0 { "a" } else { "b" })]))
            .collect();
        compared(&rows).len()
    };
    assert_eq!([Spot, Factor::Feed, Factor::FeedAmount, Factor::Bait, Height].map(asked), [0, 0, 0, 1, 1]);
}

/// Invented seasons, seeded: equal rates that differ from day to day, read after every third cast of six days.
#[test]
fn if_nothing_matters_a_stake_of_one_seldom_grows_to_twenty_over_a_season() {
    let seasons = 200;
    let ever = |seed: &u64| {
        let mut chance = Chance::new(9, *seed);
        let mut days: Vec<DayOfQuestion> = Vec::new();
        (0..6).any(|n| {
            let mean = 12.0 * libm::exp(0.5 * chance.normal());
            let rows = rows(PLAN, [mean, mean], 1_000 * seed + n);
            let grown = (6..=rows.len()).step_by(3).any(|casts| {
                let today = of(&rows[..casts]);
                let all: Vec<DayOfQuestion> = days.iter().cloned().chain([today]).collect();
                stakes(&all).decides >= 20.0
            });
            days.push(of(&rows));
            grown
        })
    };
    let share = (0..seasons).filter(ever).count() as f64 / seasons as f64;
    assert!(share <= 0.05, "{share}");
}

#[test]
fn only_the_blocks_of_the_rod_that_was_switched_most_are_used() {
    let one = rows(PLAN, [4.0, 20.0], 6);
    let mut both = one.clone();
    both.extend(one.iter().take(9).map(|row| CastRow { rod: 2, ..row.clone() }));
    let p = |rows: &[CastRow]| question(&[of(rows)], 1, 1).block_p;
    assert_eq!(p(&one), p(&both));
}

#[test]
fn fewer_further_days_are_needed_the_more_is_known() {
    let large = more_days(&days(1, [4.0, 14.0], 2), 1, 7).unwrap();
    let none = more_days(&days(4, [10.0, 10.0], 3), 1, 7).unwrap();
    assert!(large.days.is_some_and(|n| n <= 3) && large.assurance >= 0.8, "{large:?}");
    assert!(none.days.is_none() && none.assurance < 0.5, "{none:?}");
    assert_eq!(more_days(&days(1, [4.0, 14.0], 2), 1, 7), Some(large));
    assert_eq!(more_days(&[day("ppwwpp", [5.0, 12.0], 1)], 1, 7), None);
}

proptest! {
    #[test]
    fn sides_and_the_order_of_days_do_not_matter(seed in 0u64..500) {
        let all = days(3, [7.0, 12.0], seed);
        let mut turned = all.clone();
        turned.reverse();
        let (one, two) = (stakes(&all), stakes(&turned));
        prop_assert!((one.minutes / two.minutes - 1.0).abs() < 1e-9 && (one.waits / two.waits - 1.0).abs() < 1e-9);
        let found = question(&all, 1, 1);
        prop_assert!(found.belief.a >= 0.0 && found.belief.a + found.belief.b <= 1.0 + 1e-12);
        prop_assert!(found.any_look_p > 0.0 && found.any_look_p <= 1.0);
    }
}
