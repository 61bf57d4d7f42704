use super::super::drift::CHANGES;
use super::super::record::{EarlierDay, Record, Settings};
use super::super::{BiteError, Wait, WaitPosterior};
use super::*;
use crate::Habit;
use proptest::prelude::*;

fn waits(list: &[(f64, bool)]) -> Vec<Wait> {
    list.iter().map(|&(m, b)| Wait::new(m, b).unwrap()).collect()
}

fn quarter_hour() -> Vec<Wait> {
    let bites = [13.2, 13.9, 14.4, 14.8].map(|m| (m, true));
    waits(&[bites.as_slice(), &[(10.0, false); 4]].concat())
}

/// Shuffles a list so that it has no trend, since a sorted list would be a day that changes.
pub(crate) fn in_no_order<T>(list: impl IntoIterator<Item = T>) -> Vec<T> {
    let golden = |i: usize| (i as f64 * 0.618_033_988_749_895).fract();
    let mut keyed: Vec<(f64, T)> = list.into_iter().enumerate().map(|(i, item)| (golden(i), item)).collect();
    keyed.sort_by(|a, b| a.0.total_cmp(&b.0));
    keyed.into_iter().map(|(_, item)| item).collect()
}

fn advise(record: &Record, settings: &Settings) -> Result<Advice, BiteError> {
    Ok(WaitPosterior::new(record, settings)?.advice())
}

fn advice(waits: &[Wait]) -> Advice {
    advise(&Record::of_today(waits), &Settings::default()).unwrap()
}

#[test]
fn fewer_than_three_bites_cannot_tell() {
    assert_eq!(advice(&[]).state, AdviceState::CantTellYet);
    let two = waits(&[(4.0, true), (5.0, true), (15.0, false), (15.0, false)]);
    assert_eq!(advice(&two).state, AdviceState::CantTellYet);
}

// Common practice, no source: bites close together about a quarter of an hour after the splash.
#[test]
fn casts_are_left_for_a_window_at_a_quarter_of_an_hour_and_not_much_longer() {
    let found = advice(&quarter_hour());
    assert_eq!(found.state, AdviceState::HoldUntilRecastBy);
    assert!(found.hold_until_min.unwrap() >= 13.0);
    assert!(found.recast_by_min.unwrap() <= 19.0, "{found:?}");
    assert_eq!((found.is_early, found.bite_window), (true, None), "too few bites for a window");
    let twice = advice(&[quarter_hour(), quarter_hour()].concat());
    assert!(!twice.is_early);
    let (start, end) = twice.bite_window.unwrap();
    assert!(start > 12.0 && end < 16.5, "{twice:?}");
}

// Common practice, no source: later bites after one and a half and two windows.
#[test]
fn later_bites_widen_the_band() {
    let narrow = advice(&quarter_hour());
    let later = [quarter_hour(), waits(&[(21.0, true), (28.0, true)])].concat();
    let wide = advice(&later);
    let width = |a: &Advice| a.recast_by_min.unwrap() - a.hold_until_min.unwrap();
    assert!(width(&wide) > width(&narrow), "{narrow:?} {wide:?}");
}

#[test]
fn always_winding_in_at_ten_asks_for_longer_casts() {
    let found = advice(&waits(&[(10.0, false); 6]));
    assert_eq!(found.longest_wait_min, 10.0);
    assert!(found.beyond_the_record && found.asks_for_longer);
    assert!(found.next_leave_min > 15.0);
}

#[test]
fn with_early_bites_and_then_none_the_advice_is_to_wind_in_early() {
    let list: Vec<(f64, bool)> =
        (0..20).map(|i| if i % 3 == 0 { (2.0 + 0.2 * f64::from(i), true) } else { (15.0, false) }).collect();
    let found = advice(&waits(&list));
    assert!(found.recast_by_min.unwrap() < 10.0, "{found:?}");
}

#[test]
fn at_a_constant_rate_with_long_waits_the_length_hardly_matters() {
    let list: Vec<(f64, bool)> = (0..200)
        .map(|i| -20.0 * libm::log1p(-(f64::from(i) + 0.5) / 200.0))
        .map(|t| if t < 45.0 { (t, true) } else { (45.0, false) })
        .collect();
    let found = advice(&waits(&in_no_order(list)));
    assert_eq!(found.state, AdviceState::LengthHardlyMatters, "{found:?}");
}

#[test]
fn the_loss_by_the_habit_is_computed() {
    let waits = quarter_hour();
    let habit = Habit::of(&[Wait::new(10.0, true).unwrap()]).unwrap();
    let record = Record { habit: Some(&habit), ..Record::of_today(&waits) };
    let found = advise(&record, &Settings::default()).unwrap();
    let lost = found.lost_at_habit.unwrap();
    assert!(lost > 0.8 * found.best_rate_per_hour, "{found:?}");
    assert!((found.rate_at_habit.unwrap() + lost - found.best_rate_per_hour).abs() < 1e-9);
}

#[test]
fn waiting_on_is_worth_it_before_the_window_and_not_after() {
    let waits = quarter_hour();
    let posterior = WaitPosterior::new(&Record::of_today(&waits), &Settings::default()).unwrap();
    assert!(posterior.waiting_on(11.0).unwrap().worth_it);
    let after = posterior.waiting_on(25.0).unwrap();
    assert!(!after.worth_it && after.bite_in_five < 0.1, "{after:?}");
    assert!(posterior.waiting_on(-1.0).is_err());
}

/// At a steady rate the chance of a bite in the next five minutes is the same at every wait, past the horizon too.
#[test]
fn a_cast_left_for_more_than_an_hour_still_has_its_chance() {
    let list: Vec<Wait> = (0..60)
        .map(|i| -30.0 * libm::log1p(-(f64::from(i) + 0.5) / 60.0))
        .map(|t| Wait::new(t.min(40.0), t < 40.0).unwrap())
        .collect();
    let plan = WaitPosterior::new(&Record::of_today(&in_no_order(list)), &Settings::default()).unwrap();
    let truth = 1.0 - libm::exp(-5.0 / 30.0);
    for waited in [30.0, 59.0, 62.0, 90.0] {
        let on = plan.waiting_on(waited).unwrap();
        assert!((on.bite_in_five - truth).abs() < 0.05, "{waited}: {} for {truth}", on.bite_in_five);
        assert!(on.until_min > waited, "{waited}: {on:?}");
    }
    // After hours of waiting it is doubtful that all casts get a bite, but one is still possible.
    let (long, longer) = (plan.waiting_on(170.0).unwrap(), plan.waiting_on(300.0).unwrap());
    assert!(long.bite_in_five > 0.05, "{long:?}");
    assert_eq!(long.bite_in_five, longer.bite_in_five);
}

#[test]
fn earlier_days_count_before_the_first_bite_of_today() {
    let before = quarter_hour();
    let days = [EarlierDay { waits: &before, weight: 0.5 }, EarlierDay { waits: &before, weight: 0.5 }];
    let record = Record { earlier: &days, ..Record::of_today(&[]) };
    let found = advise(&record, &Settings::default()).unwrap();
    assert_eq!((found.bites, found.state), (0, AdviceState::HoldUntilRecastBy));
    let none = [EarlierDay { waits: &before, weight: 0.0 }];
    let record = Record { earlier: &none, ..Record::of_today(&[]) };
    assert_eq!(advise(&record, &Settings::default()).unwrap(), advice(&[]));
    let wrong = [EarlierDay { waits: &before, weight: 1.5 }];
    assert!(advise(&Record { earlier: &wrong, ..Record::of_today(&[]) }, &Settings::default()).is_err());
}

#[test]
fn waits_of_seconds_and_of_hours_give_finite_answers() {
    let odd = advice(&waits(&[(0.0, true), (0.0, false), (1e-9, false), (400.0, false), (300.0, true)]));
    assert!(odd.best_rate_per_hour.is_finite() && odd.next_leave_min.is_finite());
    let empty = advice(&vec![Wait::new(90.0, false).unwrap(); 3000]);
    assert!(empty.best_rate_per_hour.is_finite() && empty.best_rate_per_hour < 0.5, "{empty:?}");
}

fn any_day() -> impl Strategy<Value = Vec<Wait>> {
    proptest::collection::vec((1u32..400, any::<bool>()), 0..30)
        .prop_map(|v| v.iter().map(|&(m, b)| Wait::new(f64::from(m) * 0.1, b).unwrap()).collect())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]
    #[test]
    fn the_band_contains_the_best_time_and_rates_are_possible(day in any_day()) {
        let found = WaitPosterior::new(&Record::of_today(&day), &Settings::default()).unwrap();
        let a = found.advice();
        let hold = a.hold_until_min.unwrap();
        if let Some(best) = a.best_min {
            prop_assert!(hold <= best);
            prop_assert!(a.recast_by_min.is_none_or(|r| best <= r));
        }
        prop_assert!(a.next_leave_min >= hold);
        let means = found.means();
        for i in 0..means.times.len() {
            // No more bites than one for every turn-round and extra time.
            prop_assert!(means.rate[i] > 0.0 && means.rate[i] <= 1.0 / 5.0);
            // No more than the share bitten by the turn-round.
            prop_assert!(means.rate[i] <= means.bitten[i] / 2.0 * (1.0 + 1e-9));
            prop_assert!(means.waiting[i] <= means.times[i] * (1.0 + 1e-6));
            if i > 0 {
                prop_assert!(means.bitten[i] >= means.bitten[i - 1] - 1e-6);
            }
        }
        let on = found.waiting_on(7.0).unwrap();
        prop_assert!((0.0..=1.0).contains(&on.bite_in_five));
    }

    #[test]
    fn a_pace_learned_later_gives_the_same_advice_as_one_known_from_the_start(
        day in any_day(), turn in 0.5f64..8.0, extra in 0.0f64..9.0, leave in 1.0f64..30.0,
    ) {
        let settings = Settings::default();
        let habit = Habit::of(&[Wait::new(leave, true).unwrap()]);
        let known = Record { turn_round_min: turn, bite_extra_min: extra, habit: habit.as_ref(), ..Record::of_today(&day) };
        let mut later = WaitPosterior::new(&Record::of_today(&day), &settings).unwrap();
        later.advice();
        later.set_pace(turn, extra, habit.clone()).unwrap();
        prop_assert_eq!(later.advice(), advise(&known, &settings).unwrap());
        prop_assert!(later.set_pace(0.0, extra, habit.clone()).is_err() && later.set_pace(turn, -1.0, habit).is_err());
    }

    #[test]
    fn adding_casts_one_by_one_gives_the_same_and_so_does_any_order_on_an_unchanging_day(day in any_day(), turn in any::<bool>()) {
        let changing = if turn { 0.0 } else { CHANGES };
        let settings = Settings { changing, ..Settings::default() };
        let whole = WaitPosterior::new(&Record::of_today(&day), &settings).unwrap();
        let mut turned = WaitPosterior::new(&Record::of_today(&[]), &settings).unwrap();
        let order: Vec<Wait> = if turn { day.iter().rev().copied().collect() } else { day.clone() };
        for wait in order {
            turned.add(wait);
        }
        let (a, b) = (whole.advice(), turned.advice());
        prop_assert!((a.best_rate_per_hour - b.best_rate_per_hour).abs() < 1e-9);
        prop_assert!((a.next_leave_min - b.next_leave_min).abs() < 1e-6);
        prop_assert_eq!((a.casts, a.bites, a.state), (b.casts, b.bites, b.state));
    }
}
