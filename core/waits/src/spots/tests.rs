use super::*;
use crate::{Record, Settings};
use proptest::prelude::*;

fn plan(casts: &[SpotEvent]) -> WaitPosterior {
    let waits: Vec<Wait> = casts
        .iter()
        .filter_map(|event| if let SpotEvent::Fished(cast) = event { Some(cast.wait) } else { None })
        .collect();
    WaitPosterior::new(&Record::of_today(&waits), &Settings::default()).unwrap()
}

fn cast(spot: usize, at_min: f64, minutes: f64, bite: bool) -> SpotEvent {
    SpotEvent::Fished(SpotCast { spot, at_min, wait: Wait::new(minutes, bite).unwrap() })
}

fn left(spot: usize, at_min: f64) -> SpotEvent {
    SpotEvent::Disturbed { spot, at_min }
}

/// A morning on two spots: bites on the first, none on the second.
fn morning() -> Vec<SpotEvent> {
    let list = [(0, 0.0, 6.0, true), (1, 12.0, 18.0, false), (0, 33.0, 4.0, true), (1, 42.0, 15.0, false)];
    list.iter().flat_map(|&(s, at, m, bite)| [cast(s, at, m, bite), left(s, at + m)]).collect()
}

fn beliefs(events: &[SpotEvent], spots: usize) -> SpotBeliefs {
    plan(events).spots(spots, events, 45.0)
}

/// Adds up every path of fish and no fish through the casts of one spot: those that end without fish, and those with.
fn paths(found: &SpotBeliefs, world: &World, shape: usize, casts: &[SpotCast]) -> [f64; 2] {
    let home = f64::from(found.home[shape]);
    let mut sums = [0.0, 0.0];
    for path in 0..1_u32 << casts.len() {
        let here = |i: usize| path >> i & 1 == 1;
        let (mut chance, mut disturbed) = (1.0, f64::NEG_INFINITY);
        for (i, cast) in casts.iter().enumerate() {
            let stays = match i.checked_sub(1).map(|before| casts[before]) {
                Some(b) if world.lasting_min > 0.0 => {
                    (-(cast.at_min - b.at_min - b.wait.minutes()) / world.lasting_min).exp()
                }
                _ => 0.0,
            };
            let last = i.checked_sub(1).is_some_and(here);
            let fish = stays * f64::from(u8::from(last)) + (1.0 - stays) * home;
            let (among, without) =
                found.followed.likely_of(cast, (disturbed + world.rest_min - cast.at_min).max(0.0));
            let likely = if here(i) { f64::from(among[shape]) } else { f64::from(without) };
            chance *= likely * if here(i) { fish } else { 1.0 - fish };
            disturbed = cast.at_min + cast.wait.minutes();
        }
        sums[usize::from(here(casts.len() - 1))] += chance;
    }
    sums
}

const CASTS: [(f64, f64, bool); 5] =
    [(0.0, 6.0, true), (20.0, 15.0, false), (38.0, 9.0, false), (90.0, 3.0, true), (97.0, 22.0, false)];

fn after_five_casts() -> ([SpotCast; 5], SpotBeliefs) {
    let of = |(at_min, m, bite)| SpotCast { spot: 0, at_min, wait: Wait::new(m, bite).unwrap() };
    let casts = CASTS.map(of);
    let events: Vec<SpotEvent> =
        casts.iter().flat_map(|c| [SpotEvent::Fished(*c), left(0, c.at_min + c.wait.minutes())]).collect();
    let found = beliefs(&events, 1);
    (casts, found)
}

/// The forward algorithm for two hidden states in NumPy 2.2.6, waits exponential of mean 3 x 1.25^4 min on half of the spots:
/// by minutes that a spot lasts and minutes until fish are back, the chance of fish after the five casts.
const NUMPY: [(f64, f64, f64); 6] = [
    (30.0, 0.0, 0.445_604),
    (30.0, 11.25, 0.670_679),
    (30.0, 22.5, 0.901_356),
    (90.0, 0.0, 0.688_675),
    (90.0, 11.25, 0.855_163),
    (90.0, 22.5, 0.964_391),
];

#[test]
fn the_filter_is_the_forward_algorithm_of_numpy() {
    let (_, found) = after_five_casts();
    let half = |t: f64| 0.5 * (1.0 - libm::exp(-t / (3.0 * libm::pow(1.25, 4.0))));
    let point = |t: f64| found.shapes.times.iter().position(|time| *time == t).unwrap();
    let near = |t: f64, shape: usize| (f64::from(found.row(point(t))[shape]) - half(t)).abs() < 1e-5;
    let is_it = |shape: &usize| found.home[*shape] == 0.5 && near(7.5, *shape) && near(20.0, *shape);
    let shape = (0..found.kinds.len()).find(is_it).unwrap();
    for (lasting, rest, wanted) in NUMPY {
        let is_it = |world: &World| world.lasting_min == lasting && world.rest_min == rest;
        let world = found.followed.worlds.iter().position(is_it).unwrap();
        let ours = f64::from(found.followed.spots[0].here[world][shape]);
        // Within half a minute bites are taken for even, and figures have 24 bits.
        assert!((ours - wanted).abs() < 2e-3, "{lasting} {rest}: {ours} {wanted}");
    }
}

#[test]
fn the_filter_is_the_sum_over_every_hidden_path() {
    let (casts, found) = after_five_casts();
    for (w, world) in found.followed.worlds.iter().enumerate() {
        for shape in (0..found.kinds.len()).step_by(7) {
            let [without, among] = paths(&found, world, shape, &casts);
            let (ours, wanted) =
                (f64::from(found.followed.spots[0].here[w][shape]), among / (without + among));
            assert!((ours - wanted).abs() < 2e-4, "{world:?}, shape {shape}: {ours} {wanted}");
        }
    }
}

#[test]
fn a_bite_raises_the_chance_of_fish_a_long_wait_lowers_it_and_an_untried_spot_is_in_between() {
    let found = beliefs(&morning(), 2);
    let (bitten, dry, untried) =
        (found.worth(Some(0), 60.0).here, found.worth(Some(1), 60.0).here, found.worth(None, 60.0).here);
    assert!(bitten > untried + 0.05 && untried > dry + 0.05, "{bitten} {untried} {dry}");
    assert!(found.differ() > 1.0, "the record supports that spots differ: {}", found.differ());
}

#[test]
fn in_the_end_a_spot_is_like_any_other() {
    let found = beliefs(&morning(), 2);
    let untried = found.worth(None, 5_000.0).here;
    for spot in 0..2 {
        assert!((found.worth(Some(spot), 5_000.0).here - untried).abs() < 1e-4);
        assert!((found.worth(Some(spot), 5_000.0).rank - found.worth(None, 5_000.0).rank).abs() < 1e-3);
    }
}

#[test]
fn water_just_disturbed_is_worth_less_than_the_same_water_rested() {
    let found = beliefs(&morning(), 2);
    let mut again = found.clone();
    Arc::make_mut(&mut again.followed).take(&left(0, 59.0));
    assert!(again.worth(Some(0), 60.0).per_hour < found.worth(Some(0), 60.0).per_hour - 0.05);
}

#[test]
fn a_cast_where_nothing_bites_is_left_sooner_where_there_is_better_water() {
    let mut events = morning();
    for (i, at) in [60.0, 90.0, 120.0, 150.0].into_iter().enumerate() {
        let (spot, bite) = (i % 2, i % 2 == 0);
        let minutes = if bite { 5.0 } else { 18.0 };
        events.extend([cast(spot, at, minutes, bite), left(spot, at + minutes)]);
    }
    let found = beliefs(&events, 2);
    let alone = found.leave(Some(1), 175.0, &[]).unwrap();
    let beside = found.leave(Some(1), 175.0, &[Some(0), Some(1)]).unwrap();
    assert_eq!((alone.then, beside.then), (Then::RecastHere, Then::MoveTo(Some(0))));
    assert!(beside.leave_min.unwrap() < alone.leave_min.unwrap_or(f64::INFINITY), "{beside:?} {alone:?}");
    assert!(beside.there > beside.here, "{beside:?}");
}

/// The marginal likelihoods of the four casts of [`morning`], summed over shapes, worlds and hidden paths one by one.
#[test]
fn the_bayes_factor_is_the_ratio_of_sums_over_every_shape_world_and_hidden_path() {
    let events = morning();
    let (found, opened) = (beliefs(&events, 2), plan(&events).spots(2, &[], 45.0));
    let mut sums = [[0.0, 0.0]; 3];
    for (w, world) in opened.followed.worlds.iter().enumerate() {
        for (shape, (weight, home)) in opened.weights[w].iter().zip(&opened.home).enumerate() {
            let part = if f64::from(*home) > EVERYWHERE { 2 } else { usize::from(world.lasting_min == 0.0) };
            let likely: f64 = (0..2)
                .map(|spot| {
                    let of = |event: &SpotEvent| match event {
                        SpotEvent::Fished(cast) if cast.spot == spot => Some(*cast),
                        _ => None,
                    };
                    let casts: Vec<SpotCast> = events.iter().filter_map(of).collect();
                    paths(&opened, world, shape, &casts).iter().sum::<f64>()
                })
                .product();
            sums[part][0] += f64::from(*weight) * likely;
            sums[part][1] += f64::from(*weight);
        }
    }
    // Shapes that the record rules out are left out here; the prior includes them.
    let left: f64 = opened.before[2] / (1.0 - opened.before[2]) * (sums[0][1] + sums[1][1]) / sums[2][1];
    let [differ, anew, everywhere] = sums.map(|[likely, before]| likely / before);
    let wanted = differ / anew.max(everywhere / left);
    assert!((found.differ() / wanted - 1.0).abs() < 1e-3, "{} {wanted}", found.differ());
}

#[test]
fn spots_tell_how_long_once_the_record_strongly_supports_that_they_differ() {
    let mut events = Vec::new();
    let mut told = Vec::new();
    for round in 0..8 {
        for (spot, minutes, bite) in [(0, 5.0, true), (1, 18.0, false)] {
            let at = 50.0 * f64::from(round) + 25.0 * spot as f64;
            events.extend([cast(spot, at, minutes, bite), left(spot, at + minutes)]);
        }
        let found = beliefs(&events, 2);
        assert_eq!(found.tell(), found.differ() >= 20.0);
        told.push(found.tell());
    }
    assert_eq!((told[0], told[7]), (false, true), "{told:?}");
}

#[test]
fn bites_that_come_alike_on_all_spots_say_that_they_do_not_differ() {
    let mut events = Vec::new();
    for i in 0..24 {
        let (spot, at) = (i % 3, 14.0 * i as f64);
        let minutes = [3.0, 9.0, 5.0, 12.0, 7.0][i % 5];
        events.extend([cast(spot, at, minutes, true), left(spot, at + minutes)]);
    }
    let found = beliefs(&events, 3);
    assert!(found.differ() < 1.0 && !found.tell(), "{}", found.differ());
}

fn any_events() -> impl Strategy<Value = Vec<SpotEvent>> {
    let one = (0usize..4, 0.0..300.0_f64, 0.0..50.0_f64, any::<bool>());
    proptest::collection::vec(one, 0..14).prop_map(|list| {
        list.into_iter().flat_map(|(s, at, m, bite)| [cast(s, at, m, bite), left(s, at + m)]).collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn beliefs_are_chances(events in any_events(), at in 0.0..400.0_f64) {
        let found = beliefs(&events, 4);
        for spot in [None, Some(0), Some(1), Some(2), Some(3)] {
            let worth = found.worth(spot, at);
            prop_assert!((0.0..=1.0).contains(&found.worth(spot, at).here) && worth.rank.is_finite());
            prop_assert!((0.5..=1.0).contains(&(worth.per_hour / worth.rank.max(1e-12))) || worth.rank == 0.0, "{worth:?}");
            let leave = found.leave(spot, at, &[None, Some(0), Some(1)]).unwrap();
            prop_assert!((-1e-6..=1.000_01).contains(&leave.here) && (-1e-6..=1.000_01).contains(&leave.there));
        }
        prop_assert!(found.differ() >= 0.0 && found.differ().is_finite());
    }

    #[test]
    fn more_minutes_in_vain_never_raise_the_belief(minutes in 0.0..60.0_f64, more in 0.0..40.0_f64) {
        // One plan for both, so that the same shapes are weighed.
        let (plan, begun) = (plan(&morning()), morning());
        let after = |minutes: f64| {
            let events: Vec<SpotEvent> = begun.iter().copied().chain([cast(1, 70.0, minutes, false)]).collect();
            plan.spots(2, &events, 45.0)
        };
        let (short, long) = (after(minutes), after(minutes + more));
        for (w, world) in short.followed.worlds.iter().enumerate().filter(|(_, world)| world.lasting_min > 0.0) {
            for (a, b) in short.followed.spots[1].here[w].iter().zip(&long.followed.spots[1].here[w]) {
                prop_assert!(*b <= a + 1e-5, "{world:?}: {a} {b}");
            }
        }
    }

    /// Whatever was kept before: another moment of the record, other spots, other weights, other baits out.
    #[test]
    fn what_is_kept_changes_no_bit(
        days in proptest::collection::vec((any_events(), 0usize..6, 0.0..300.0_f64, 0.0..350.0_f64), 1..5),
        on in any::<bool>(),
    ) {
        let mut kept = SpotsKept::default();
        let mut day: Vec<SpotEvent> = Vec::new();
        for (events, gone, now, settled) in days {
            // A few more events, a few fewer, and one of them changed.
            day.truncate(day.len() - gone.min(day.len()));
            if on { day.extend(events) } else { day = events }
            let of: Vec<SpotEvent> = day.iter().filter(|event| event.at_min() <= now).copied().collect();
            let plan = plan(&of);
            let fresh = plan.spots(4, &of, 45.0);
            let gone_on = plan.spots_kept(&mut kept, 4, &of, settled, 45.0);
            prop_assert_eq!(&gone_on.weights, &fresh.weights);
            prop_assert_eq!(gone_on.differ().to_bits(), fresh.differ().to_bits());
            for spot in [None, Some(0), Some(1), Some(2), Some(3)] {
                prop_assert_eq!(gone_on.worth(spot, now), fresh.worth(spot, now));
            }
            let open = [None, Some(0), Some(1)];
            prop_assert_eq!(gone_on.leave(Some(2), now, &open), fresh.leave(Some(2), now, &open));
        }
    }

    #[test]
    fn what_the_spots_are_called_changes_nothing(events in any_events(), turn in 1usize..4) {
        let called = |spot: usize| (spot + turn) % 4;
        let renamed: Vec<SpotEvent> = events.iter().map(|event| match *event {
            SpotEvent::Fished(c) => SpotEvent::Fished(SpotCast { spot: called(c.spot), ..c }),
            SpotEvent::Disturbed { spot, at_min } => left(called(spot), at_min),
        }).collect();
        let (a, b) = (beliefs(&events, 4), beliefs(&renamed, 4));
        for spot in 0..4 {
            prop_assert_eq!(a.worth(Some(spot), 310.0), b.worth(Some(called(spot)), 310.0));
        }
        prop_assert_eq!(a.differ(), b.differ());
    }
}
