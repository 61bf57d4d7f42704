//! Simulates the rest of the day many times: casts, bites, fish and weight as ranges.

use super::fish::{Fish, FishKind};
use super::laws::systematic;
use super::{ForecastError, WaitSurvival, time, total_weight};
use restwater_compare::chance::Chance;

/// How the rest is fished. All times in minutes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Plan {
    /// The cast that is out, or goes out next, is left for this long without a bite.
    pub first: f64,
    /// Every cast after it.
    pub leave: f64,
    /// From winding in to the next splash.
    pub turn_round: f64,
    /// Whether that is a guess, which may really be half or twice as long: each future then draws its own.
    pub turn_round_guessed: bool,
    /// From a splash to where its wait counts.
    pub settle: f64,
    /// What a bite costs beyond that: playing, unhooking, rebaiting.
    pub bite_extra: f64,
    /// Time kept free before all-out, in which no cast goes out.
    pub reserve: f64,
}

/// The state of the day.
#[derive(Debug, Clone, PartialEq)]
pub struct TimeLeft {
    /// Minutes until all-out.
    pub minutes: f64,
    /// One entry for each rod: minutes its cast has been out, negative while it settles; `None` for a rod that is in and ready.
    pub rods: Vec<Option<f64>>,
}

/// Fish that bites turn into.
#[derive(Debug, Clone, PartialEq)]
pub struct Landing {
    /// Bites so far that were landed.
    pub landed: u64,
    /// Bites so far that were not: lost and missed.
    pub not_landed: u64,
    /// The kinds of fish, today's or those of a stated assumption, in any one unit.
    pub kinds: Vec<FishKind>,
}

/// A range that contains 80 % of the futures, with the median.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    /// One future in ten stays below this.
    pub low: f64,
    /// As many stay below as above.
    pub likely: f64,
    /// One future in ten passes this.
    pub high: f64,
}

/// What is to come until all-out, all rods together.
#[derive(Debug, Clone, PartialEq)]
pub struct Forecast {
    /// Casts that can still be made and left out for their time or until a bite.
    pub casts: Range,
    /// The same without any bite, with a guessed turn-round twice as long: for a rod that is in, floor of (time left - reserve) /
    /// (leave + turn-round).
    pub casts_without_bites: u64,
    /// Bites.
    pub bites: Range,
    /// Mean number of bites.
    pub mean_bites: f64,
    /// Chance of each number of bites, from none on; they sum to 1.
    pub bite_counts: Vec<f64>,
    /// Chance of at least one bite.
    pub any_bite: f64,
    /// Fish landed.
    pub fish: Range,
    /// Weight to come, in the unit of the weights given.
    pub weight: Range,
    /// Mean weight to come.
    pub mean_weight: f64,
    /// How many futures were simulated.
    pub futures: usize,
}

/// How many futures are simulated.
const FUTURES: usize = 4_000;
/// Steps in which a law is tabled between the splash and the leave time.
const STEPS: usize = 240;

/// Simulates the rest of the day 4,000 times. Each future draws one law of the wait, one landing probability
/// (uniform prior: Beta(landed + 1, not landed + 1)) and then casts, bites and fish; the weight of a fish is
/// drawn from its [`FishKind`]. Bites count until all-out; no cast starts within the reserve. With
/// exponential waits, no turn-round and no cost of a bite the bites are a Poisson count given the rate, so a
/// gamma posterior gives the negative binomial: checked in the tests.
pub fn forecast<L: WaitSurvival>(
    laws: &[(f64, L)],
    left: &TimeLeft,
    plan: &Plan,
    landing: &Landing,
    seed: u64,
) -> Result<Forecast, ForecastError> {
    total_weight(laws)?;
    check(left, plan, landing)?;
    let weights: Vec<f64> = laws.iter().map(|l| l.0).collect();
    let picked = systematic(&weights, FUTURES, &mut Chance::new(seed, 0));
    let mut chance = Chance::new(seed, 1);
    let mut futures = Vec::with_capacity(FUTURES);
    for (law, times) in picked {
        // Every rod continues from its present state; a cast that is already out longer than planned is wound
        // in now.
        let longest = left.rods.iter().flatten().copied().fold(plan.leave.max(plan.first), f64::max);
        let table = Table::new(&laws[law].1, longest);
        for _ in 0..times {
            futures.push(play(&table, left, plan, landing, &mut chance));
        }
    }
    Ok(sum_up(&futures, none_bites(left, plan, seed)))
}

/// Casts left if nothing bites any more.
fn none_bites(left: &TimeLeft, plan: &Plan, seed: u64) -> u64 {
    let factor = if plan.turn_round_guessed { 2.0 } else { 1.0 };
    let plan = &Plan { turn_round: factor * plan.turn_round, ..*plan };
    let never = Table::new(&|_: f64| 1.0, plan.leave.max(plan.first));
    let mut chance = Chance::new(seed, 2);
    left.rods.iter().map(|&out| play_rod(&never, left.minutes, out, plan, &mut chance).0).sum()
}

fn check(left: &TimeLeft, plan: &Plan, landing: &Landing) -> Result<(), ForecastError> {
    let turn = time(plan.turn_round)? + time(plan.settle)?;
    let (first, leave) = (time(plan.first)?, time(plan.leave)?);
    for minutes in [plan.bite_extra, plan.reserve, left.minutes] {
        time(minutes)?;
    }
    for &out in left.rods.iter().flatten() {
        time(out.abs())?;
    }
    if first + turn <= 0.0 || leave <= 0.0 {
        return Err(ForecastError::NoCastTime);
    }
    landing.kinds.iter().try_for_each(FishKind::check)?;
    if landing.kinds.iter().all(|kind| kind.fish == 0) { Err(ForecastError::NoFish) } else { Ok(()) }
}

/// A law as a table from the splash to the longest time a cast is left, for drawing waits by inversion.
struct Table {
    step: f64,
    survival: Vec<f64>,
}

impl Table {
    fn new(law: &impl WaitSurvival, longest: f64) -> Self {
        let step = longest / STEPS as f64;
        let mut survival: Vec<f64> = Vec::with_capacity(STEPS + 1);
        let mut floor = 1.0_f64;
        for i in 0..=STEPS {
            let s = law.survival(step * i as f64);
            // If a survival value is NaN or rises, the previous value is kept.
            floor = floor.min(if s.is_nan() { floor } else { s.clamp(0.0, 1.0) });
            survival.push(floor);
        }
        Self { step, survival }
    }

    fn at(&self, minutes: f64) -> f64 {
        let place = minutes / self.step;
        let i = (place as usize).min(STEPS - 1);
        let part = (place - i as f64).clamp(0.0, 1.0);
        self.survival[i] + part * (self.survival[i + 1] - self.survival[i])
    }

    /// A wait longer than `out`, or `None` if it is longer than the table.
    fn draw(&self, out: f64, chance: &mut Chance) -> Option<f64> {
        let target = self.at(out) * chance.uniform_above_zero();
        let after = self.survival.partition_point(|&s| s > target);
        if after > STEPS {
            return None;
        }
        let i = after.max(1) - 1;
        let fall = self.survival[i] - self.survival[i + 1];
        let part = if fall > 0.0 { ((self.survival[i] - target) / fall).clamp(0.0, 1.0) } else { 1.0 };
        Some((self.step * (i as f64 + part)).max(out))
    }
}

/// The result of one future.
#[derive(Debug, Clone, Copy)]
struct Played {
    casts: u64,
    bites: u64,
    fish: u64,
    weight: f64,
}

fn play(table: &Table, left: &TimeLeft, plan: &Plan, landing: &Landing, chance: &mut Chance) -> Played {
    let lands = chance.beta(landing.landed as f64 + 1.0, landing.not_landed as f64 + 1.0);
    let fish = Fish::draw(&landing.kinds, chance);
    let plan = &Plan { turn_round: turn_round(plan, chance), ..*plan };
    let mut played = Played { casts: 0, bites: 0, fish: 0, weight: 0.0 };
    for &out in &left.rods {
        let (casts, bites) = play_rod(table, left.minutes, out, plan, chance);
        played.casts += casts;
        played.bites += bites;
    }
    for _ in 0..played.bites {
        if chance.happens(lands) {
            played.fish += 1;
            played.weight += fish.weight(chance);
        }
    }
    played
}

/// The turn-round of one future: a guess is as likely too long as too short.
fn turn_round(plan: &Plan, chance: &mut Chance) -> f64 {
    let factor = if plan.turn_round_guessed { libm::exp2(2.0 * chance.uniform() - 1.0) } else { 1.0 };
    factor * plan.turn_round
}

/// Complete casts and bites of one rod until all-out.
fn play_rod(table: &Table, minutes: f64, out: Option<f64>, plan: &Plan, chance: &mut Chance) -> (u64, u64) {
    let (mut now, mut casts, mut bites, mut leave) = (0.0, 0, 0, plan.first);
    // A cast that is out already is not one of the casts left, but its bite counts.
    let mut waited = out.map(|w| (w.max(0.0), (-w).max(0.0), false));
    loop {
        let (already, settles, counts) = waited.take().unwrap_or((0.0, plan.settle, true));
        // A tolerance, so that rounding doesn't turn five casts of 0.2 into four.
        if counts && now + 1e-9 >= minutes - plan.reserve {
            return (casts, bites);
        }
        let stays = (std::mem::replace(&mut leave, plan.leave) - already).max(0.0);
        let wait = table.draw(already, chance).map(|w| w - already).filter(|&w| w <= stays);
        let ends = now + settles + wait.unwrap_or(stays);
        if wait.is_some() && ends <= minutes {
            bites += 1;
        }
        let cost = plan.turn_round + if wait.is_some() { plan.bite_extra } else { 0.0 };
        now = ends + cost;
        let whole =
            wait.is_some_and(|_| ends <= minutes - plan.reserve) || now <= minutes - plan.reserve + 1e-9;
        casts += u64::from(counts && whole);
        if ends >= minutes {
            return (casts, bites);
        }
        // A cast of no length at all would never end the day.
        now = now.max(ends + 1e-6);
    }
}

fn sum_up(futures: &[Played], casts_without_bites: u64) -> Forecast {
    let n = futures.len().max(1) as f64;
    let range = |of: &dyn Fn(&Played) -> f64| range(futures.iter().map(of).collect());
    let most = futures.iter().map(|p| p.bites).max().unwrap_or(0);
    let mut bite_counts = vec![0.0; most as usize + 1];
    for played in futures {
        bite_counts[played.bites as usize] += 1.0 / n;
    }
    Forecast {
        casts: range(&|p| p.casts as f64),
        casts_without_bites,
        bites: range(&|p| p.bites as f64),
        mean_bites: futures.iter().map(|p| p.bites as f64).sum::<f64>() / n,
        any_bite: futures.iter().filter(|p| p.bites > 0).count() as f64 / n,
        bite_counts,
        fish: range(&|p| p.fish as f64),
        weight: range(&|p| p.weight),
        mean_weight: futures.iter().map(|p| p.weight).sum::<f64>() / n,
        futures: futures.len(),
    }
}

/// The smallest values that at least 10, 50 and 90 % of the futures don't pass.
fn range(mut values: Vec<f64>) -> Range {
    values.sort_by(f64::total_cmp);
    let at = |p: f64| {
        let rank = (p * values.len() as f64).ceil() as usize;
        values.get(rank.max(1) - 1).copied().unwrap_or(0.0)
    };
    Range { low: at(0.1), likely: at(0.5), high: at(0.9) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const PLAN: Plan = Plan {
        first: 15.0,
        leave: 15.0,
        turn_round: 2.0,
        turn_round_guessed: false,
        settle: 0.0,
        bite_extra: 3.0,
        reserve: 0.0,
    };

    fn left(minutes: f64) -> TimeLeft {
        TimeLeft { minutes, rods: vec![None] }
    }

    fn fish(weights: &[f64]) -> Landing {
        Landing { landed: 8, not_landed: 2, kinds: weights.iter().copied().map(FishKind::alike).collect() }
    }

    type Bare = fn(f64) -> f64;

    fn never(_: f64) -> f64 {
        1.0
    }

    /// A cast of 15 min that settles for three costs what one costs that goes out three minutes later: the first of a rod that is
    /// in, and the rest of the settling of one that is out.
    #[test]
    fn a_bait_settles_before_its_wait_counts() {
        let law = |t: f64| libm::exp(-t / 12.0);
        let play = |minutes, out, plan: &Plan| {
            let time = TimeLeft { minutes, rods: vec![out] };
            forecast(&[(1.0, law)], &time, plan, &fish(&[1.0]), 7).unwrap()
        };
        let settles = Plan { settle: 3.0, ..PLAN };
        let later = Plan { turn_round: 5.0, ..PLAN };
        let first = play(120.0, None, &settles);
        let same = play(117.0, Some(0.0), &later);
        assert!((first.mean_bites - same.mean_bites).abs() < 0.1, "{} {}", first.mean_bites, same.mean_bites);
        assert_eq!(first.bite_counts, play(120.0, Some(-3.0), &settles).bite_counts);
        assert!(first.mean_bites + 0.5 < play(120.0, None, &PLAN).mean_bites);
        let ten = play(60.0, None, &Plan { first: 10.0, leave: 10.0, ..settles });
        assert_eq!(ten.casts_without_bites, 4, "60 / 15");
    }

    #[test]
    fn without_bites_the_casts_are_the_plain_quotient() {
        let f = forecast(&[(1.0, never)], &left(90.0), &PLAN, &fish(&[100.0]), 1).unwrap();
        assert_eq!(f.casts_without_bites, 5);
        assert_eq!((f.casts.low, f.casts.likely, f.casts.high), (5.0, 5.0, 5.0));
        assert_eq!((f.bites.high, f.weight.high, f.any_bite), (0.0, 0.0, 0.0));
        let casts = |minutes, plan: &Plan| {
            let f = forecast(&[(1.0, never)], &left(minutes), plan, &fish(&[1.0]), 1).unwrap();
            assert_eq!(f.casts.high, f.casts_without_bites as f64);
            f.casts_without_bites
        };
        let plan = Plan { reserve: 6.0, ..PLAN };
        assert_eq!((casts(90.0, &plan), casts(3.0, &plan)), (4, 0));
        // A first cast of 40 min leaves time for two more of 15.
        assert_eq!(casts(90.0, &Plan { first: 40.0, ..PLAN }), 3);
    }

    /// By hand: 240 min hold 14 casts of 15 + 2 min, 15 of 15 + 1 and 12 of 15 + 4. Of the factors of a guess, one in ten is below
    /// 2^-0.8 = 0.574, which makes 14.9 casts, and one in ten above 1.741, which makes 13.0.
    #[test]
    fn a_guessed_turn_round_widens_the_range_of_casts() {
        let of = |turn_round_guessed| {
            let plan = Plan { turn_round_guessed, ..PLAN };
            let casts = forecast(&[(1.0, never)], &left(240.0), &plan, &fish(&[1.0]), 1).unwrap().casts;
            (casts.low, casts.likely, casts.high)
        };
        assert_eq!(of(false), (14.0, 14.0, 14.0));
        assert_eq!(of(true), (12.0, 14.0, 14.0));
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(24))]
        /// A cast ends with its bite. `out`: rods whose bait is in the water.
        #[test]
        fn each_bite_takes_a_cast(rate in 0.0f64..0.5, minutes in 0.0f64..240.0, out in 0..3usize, guessed: bool) {
            let law = [(0.4, 0.3 * rate), (0.6, rate)].map(|(w, rate)| (w, move |t: f64| libm::exp(-rate * t)));
            let rods = [vec![Some(4.0); out], vec![None; 3 - out]].concat();
            let plan = Plan { turn_round_guessed: guessed, ..PLAN };
            let f = forecast(&law, &TimeLeft { minutes, rods }, &plan, &fish(&[1.0]), 1).unwrap();
            for (bites, casts) in
                [(f.bites.low, f.casts.low), (f.bites.likely, f.casts.likely), (f.bites.high, f.casts.high)]
            {
                prop_assert!(bites <= casts + out as f64);
            }
        }
    }

    #[test]
    fn bad_input_is_refused() {
        let run = |laws: &[(f64, Bare)], left: &TimeLeft, plan: &Plan, landing: &Landing| {
            forecast(laws, left, plan, landing, 1).map(|f| f.futures)
        };
        let law: [(f64, Bare); 1] = [(1.0, never)];
        assert_eq!(run(&[], &left(9.0), &PLAN, &fish(&[1.0])), Err(ForecastError::NoLaw));
        assert_eq!(run(&law, &left(9.0), &PLAN, &fish(&[])), Err(ForecastError::NoFish));
        assert_eq!(run(&law, &left(-1.0), &PLAN, &fish(&[1.0])), Err(ForecastError::NotATime(-1.0)));
        let plan = Plan { leave: 0.0, ..PLAN };
        assert_eq!(run(&law, &left(9.0), &plan, &fish(&[1.0])), Err(ForecastError::NoCastTime));
        assert!(run(&law, &left(9.0), &PLAN, &fish(&[f64::NAN])).is_err());
        assert_eq!(run(&law, &left(9.0), &PLAN, &fish(&[1.0])), Ok(FUTURES));
    }

    #[test]
    fn a_bite_due_on_the_running_cast_counts() {
        // Everything bites between 14 and 15 minutes; the cast has been out for 10 with 6 left.
        let window = |t: f64| 1.0 - (t - 14.0).clamp(0.0, 1.0);
        let running = TimeLeft { minutes: 6.0, rods: vec![Some(10.0)] };
        let f = forecast(&[(1.0, window)], &running, &PLAN, &fish(&[1.0]), 1).unwrap();
        assert_eq!((f.mean_bites, f.casts.high), (1.0, 0.0));
        let fresh = forecast(&[(1.0, window)], &left(6.0), &PLAN, &fish(&[1.0]), 1).unwrap();
        assert_eq!(fresh.mean_bites, 0.0);
    }

    #[test]
    fn weight_is_bites_times_landing_times_a_fish() {
        let law = |t: f64| libm::exp(-0.08 * t);
        let f = forecast(&[(1.0, law)], &left(180.0), &PLAN, &fish(&[200.0, 400.0, 900.0]), 5).unwrap();
        // Landing: Beta(9, 3), mean 3/4; a fish: mean 500.
        let mean = f.mean_bites * 0.75 * 500.0;
        assert!((f.mean_weight / mean - 1.0).abs() < 0.05, "{} {mean}", f.mean_weight);
        assert!(f.weight.low <= f.weight.likely && f.weight.likely <= f.weight.high);
        assert!(f.fish.high <= f.bites.high);
    }

    #[test]
    fn the_same_seed_repeats() {
        let law = |t: f64| libm::exp(-0.05 * t);
        let run = |seed| forecast(&[(1.0, law)], &left(100.0), &PLAN, &fish(&[1.0, 2.0]), seed).unwrap();
        assert_eq!(run(1), run(1));
        assert_ne!(run(1).mean_weight, run(2).mean_weight);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(24))]
        #[test]
        fn more_time_or_rods_never_means_fewer(rate in 0.0f64..0.3, minutes in 0.0f64..240.0) {
            let law = [(1.0, move |t: f64| libm::exp(-rate * t))];
            let one = forecast(&law, &left(minutes), &PLAN, &fish(&[1.0]), 1).unwrap();
            let longer = forecast(&law, &left(minutes + 60.0), &PLAN, &fish(&[1.0]), 1).unwrap();
            let two = TimeLeft { minutes, rods: vec![None, None] };
            let two = forecast(&law, &two, &PLAN, &fish(&[1.0]), 1).unwrap();
            prop_assert!(longer.mean_bites + 0.1 >= one.mean_bites && two.mean_bites + 0.1 >= one.mean_bites);
            prop_assert!(longer.casts.likely >= one.casts.likely);
            // A bite may end a cast early or cost time, but the number of complete casts stays near the
            // quotient.
            prop_assert!(one.bites.low <= one.bites.likely && one.bites.likely <= one.bites.high);
        }
    }
}
