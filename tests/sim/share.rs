//! Bites per hour of each angler on each water, and its share of the oracle's.

use super::angler::{Angler, Habit, Oracle, TradeRule};
use super::day::{Bank, Cast, DAY, EXTRA, TURN, fish};
use super::luck::Luck;
use super::restwater::Restwater;
use super::water::{Kind, Water};

/// The fixed habits, minutes.
pub const HABITS: [f64; 7] = [5.0, 8.0, 10.0, 12.0, 15.0, 20.0, 30.0];
/// How long the usual rule leaves casts until three bites have come, minutes.
const TRADE_HABIT: f64 = 17.5;

/// How many times as many days are fished if bites are rare, to keep the errors as small.
const SLOW_TIMES: u64 = 3;

/// A ratio of two sums over days, with its standard error (linearised).
#[derive(Debug, Clone, Copy, Default)]
pub struct Share {
    days: f64,
    a: f64,
    b: f64,
    aa: f64,
    ab: f64,
    bb: f64,
}

impl Share {
    /// Adds one day: `a` over `b`.
    pub fn add(&mut self, a: f64, b: f64) {
        self.days += 1.0;
        self.a += a;
        self.b += b;
        self.aa += a * a;
        self.ab += a * b;
        self.bb += b * b;
    }

    /// Adds the days of another.
    pub fn join(&mut self, other: &Self) {
        self.days += other.days;
        self.a += other.a;
        self.b += other.b;
        self.aa += other.aa;
        self.ab += other.ab;
        self.bb += other.bb;
    }

    /// The ratio.
    pub fn value(&self) -> f64 {
        self.a / self.b
    }

    /// Its standard error.
    pub fn error(&self) -> f64 {
        let r = self.value();
        (self.aa - 2.0 * r * self.ab + r * r * self.bb).max(0.0).sqrt() / self.b
    }

    /// Days added.
    pub fn days(&self) -> f64 {
        self.days
    }
}

/// What one angler did on one water.
#[derive(Debug, Clone, Default)]
pub struct Line {
    /// Who.
    pub angler: String,
    /// Bites per hour over whole first days.
    pub per_hour: Share,
    /// Bites divided by the oracle's, over whole first days.
    pub whole: Share,
    /// The same from the sixth bite on: the oracle takes over the rod at that moment, so that both have the
    /// same time left and the same luck.
    pub after_sixth: Share,
    /// The same over whole days with five earlier days in the book, one value per book. Only for the advice,
    /// since the others keep no book; `None` if the water drifts.
    pub with_book: Option<Share>,
}

/// What all anglers did on one water.
#[derive(Debug, Clone)]
pub struct Catches {
    /// The water.
    pub water: Water,
    /// The oracle's leave time; the one at all-in if it changes over the day.
    pub best_leave: f64,
    /// The oracle's bites per hour.
    pub oracle: Share,
    /// The anglers, the advice first.
    pub lines: Vec<Line>,
}

/// How many days are fished.
#[derive(Debug, Clone, Copy)]
pub struct Days {
    /// Number of the run: another number gives other luck.
    pub run: u64,
    /// Days without a book.
    pub first: u64,
    /// Books of five days.
    pub books: u64,
    /// Days fished after each book.
    pub per_book: u64,
}

/// The oracle of a water. At a constant rate it is best to leave a cast in, since winding in costs a
/// turn-round and gains nothing. If the water drifts, it is the best leave time of every minute by renewal
/// reward on the truth of that minute; otherwise the best of 122 fixed leave times on separate days, which
/// includes what renewal reward leaves out (all-out, resting spots, hours that differ).
pub fn oracle(water: &Water, run: u64) -> Oracle {
    if water.kind == Kind::ConstantRate {
        return Oracle { leave_at: vec![DAY] };
    }
    if water.evening.is_some() {
        let best = |minute: usize| water.bites_at(minute as f64, DAY).best_leave(TURN, EXTRA);
        return Oracle { leave_at: (0..DAY as usize).map(best).collect() };
    }
    let days: Vec<Luck> = (0..1500).map(|day| Luck::of_day(water.seed(run) ^ 0x000A_C1E5, day)).collect();
    let bites = |leave: f64| -> usize {
        days.iter().map(|luck| fish(water, luck, &mut Habit(leave), Bank::all_in()).bites).sum()
    };
    let mut best = (0.0, 0);
    for leave in (2..=120).map(|i| f64::from(i) * 0.5).chain([75.0, 100.0, DAY]) {
        let bites = bites(leave);
        if bites > best.1 {
            best = (leave, bites);
        }
    }
    Oracle { leave_at: vec![best.0] }
}

/// Everybody's days on one water.
pub fn catches(water: &Water, days: Days) -> Catches {
    let mut knows = oracle(water, days.run);
    let first = if water.slow() { SLOW_TIMES * days.first } else { days.first };
    let lucks: Vec<Luck> = (0..first).map(|day| Luck::of_day(water.seed(days.run), day)).collect();
    let best: Vec<usize> =
        lucks.iter().map(|luck| fish(water, luck, &mut knows, Bank::all_in()).bites).collect();
    let mut per_hour = Share::default();
    for &bites in &best {
        per_hour.add(bites as f64, DAY / 60.0);
    }
    let mut advice = Restwater::default();
    let mut lines = vec![line("advice", &mut advice, water, &lucks, &best, &mut knows)];
    if water.kind != Kind::Drift {
        lines[0].with_book = Some(with_book(water, days, &mut advice, &mut knows));
    }
    for minutes in HABITS {
        lines.push(line(&format!("{minutes} min"), &mut Habit(minutes), water, &lucks, &best, &mut knows));
    }
    lines.push(line("trade's rule", &mut TradeRule::new(TRADE_HABIT), water, &lucks, &best, &mut knows));
    Catches { water: *water, best_leave: knows.leave_at[0], oracle: per_hour, lines }
}

fn line(
    name: &str,
    angler: &mut dyn Angler,
    water: &Water,
    lucks: &[Luck],
    best: &[usize],
    knows: &mut Oracle,
) -> Line {
    let mut line = Line { angler: name.into(), ..Line::default() };
    for (luck, &best) in lucks.iter().zip(best) {
        angler.begin(&[]);
        let catch = fish(water, luck, angler, Bank::all_in());
        line.per_hour.add(catch.bites as f64, DAY / 60.0);
        line.whole.add(catch.bites as f64, best as f64);
        if let Some(bank) = catch.after_sixth {
            let rest = fish(water, luck, knows, bank).bites;
            line.after_sixth.add((catch.bites - 6) as f64, rest as f64);
        }
    }
    line
}

/// Five days fished with the advice fill the book; the days after them are measured.
fn with_book(water: &Water, days: Days, angler: &mut dyn Angler, knows: &mut Oracle) -> Share {
    let mut share = Share::default();
    for book_no in 0..days.books {
        let luck = |day: u64| Luck::of_day(water.seed(days.run) ^ 0x000B_00C5, book_no * 100 + day);
        let mut book: Vec<Vec<Cast>> = Vec::new();
        for day in 0..5 {
            angler.begin(&book);
            book.push(fish(water, &luck(day), angler, Bank::all_in()).log);
        }
        let (mut ours, mut best) = (0, 0);
        for day in 0..days.per_book {
            let luck = luck(10 + day);
            angler.begin(&book);
            ours += fish(water, &luck, angler, Bank::all_in()).bites;
            best += fish(water, &luck, knows, Bank::all_in()).bites;
        }
        share.add(ours as f64, best as f64);
    }
    share
}

#[cfg(test)]
mod tests {
    use super::super::waters::tuned;
    use super::*;

    #[test]
    fn the_oracle_found_by_fishing_agrees_with_renewal_reward() {
        for water in tuned().iter().filter(|w| w.kind == Kind::NarrowWindow || w.kind == Kind::TwoPeaked) {
            let (fished, computed) = (oracle(water, 0).leave_at[0], water.bites.best_leave(TURN, EXTRA));
            assert!((fished - computed).abs() <= 1.0, "{}: {fished} {computed}", water.name);
        }
    }

    #[test]
    fn a_share_is_a_ratio_of_sums_with_its_error() {
        let mut share = Share::default();
        for (a, b) in [(1.0, 2.0), (2.0, 2.0), (0.0, 4.0)] {
            share.add(a, b);
        }
        assert_eq!(share.value(), 3.0 / 8.0);
        // Residuals 0.25, 1.25 and -1.5 over a sum of 8.
        assert!((share.error() - (0.0625_f64 + 1.5625 + 2.25).sqrt() / 8.0).abs() < 1e-12);
    }

    #[test]
    fn the_same_days_give_the_same_bites_and_the_oracle_is_a_fair_share_of_itself() {
        let water = tuned()[2];
        let mut knows = oracle(&water, 0);
        let lucks: Vec<Luck> = (0..20).map(|day| Luck::of_day(water.seed(0), day)).collect();
        let best: Vec<usize> =
            lucks.iter().map(|luck| fish(&water, luck, &mut knows, Bank::all_in()).bites).collect();
        let mut again = oracle(&water, 0);
        let line = line("oracle", &mut again, &water, &lucks, &best, &mut knows);
        assert_eq!((line.whole.value(), line.after_sixth.value()), (1.0, 1.0));
        assert!(line.whole.error() < 1e-9);
    }
}
