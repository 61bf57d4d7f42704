//! Bites per hour of each angler on each water, and its share of the oracle's.

use super::angler::{Angler, Habit, Oracle, TradeRule};
use super::day::{Bank, Cast, DAY, EXTRA, TURN, fish};
use super::luck::Luck;
use super::water::{Kind, Water};
use std::sync::atomic::{AtomicUsize, Ordering};

/// A ratio of two sums over days, with its standard error (linearised).
#[derive(Debug, Clone, Copy, Default)]
pub struct Share {
    n: f64,
    a: f64,
    b: f64,
    aa: f64,
    ab: f64,
    bb: f64,
}

impl Share {
    /// Adds one day: `a` over `b`.
    pub fn add(&mut self, a: f64, b: f64) {
        self.n += 1.0;
        self.a += a;
        self.b += b;
        self.aa += a * a;
        self.ab += a * b;
        self.bb += b * b;
    }
    /// The ratio.
    pub fn value(&self) -> f64 {
        self.a / self.b
    }
    /// Its standard error.
    pub fn error(&self) -> f64 {
        let r = self.value();
        let spread = (self.aa - 2.0 * r * self.ab + r * r * self.bb).max(0.0);
        spread.sqrt() / self.b
    }
}

/// What one angler did on one water.
#[derive(Debug, Clone, Default)]
pub struct Line {
    pub angler: String,
    /// Bites per hour over whole first days.
    pub per_hour: Share,
    /// Share of the oracle's over whole first days.
    pub whole: Share,
    /// From the sixth bite on, against an oracle who takes the rod over at that moment.
    pub after_sixth: Share,
    /// Whole days with five earlier days in the book.
    pub with_book: Share,
}

/// One water's table.
#[derive(Debug, Clone)]
pub struct Table {
    pub water: Water,
    pub best_leave: f64,
    pub lines: Vec<Line>,
}

/// The oracle of a water.
pub fn oracle(water: &Water, seed: u64) -> Oracle {
    if water.evening.is_some() {
        let leave_at = (0..DAY as usize).map(|m| water.bites_at(m as f64, DAY).best_leave(TURN, EXTRA)).collect();
        return Oracle { leave_at };
    }
    let mut best = (0.0, 0);
    let grid = (2..=120).map(|i| f64::from(i) * 0.5).chain([75.0, 100.0, 300.0]);
    let lucks: Vec<Luck> = (0..1500).map(|d| Luck::of_day(seed ^ 0x0AC1E, d)).collect();
    for leave in grid {
        let bites = lucks.iter().map(|l| fish(water, l, &mut Habit(leave), Bank::all_in()).bites).sum::<usize>();
        if bites > best.1 {
            best = (leave, bites);
        }
    }
    Oracle { leave_at: vec![best.0] }
}

/// How many days.
#[derive(Debug, Clone, Copy)]
pub struct Days {
    pub first: u64,
    pub books: u64,
    pub per_book: u64,
}

/// Makes Restwater's angler.
pub type Maker<'a> = &'a (dyn Fn() -> Box<dyn Angler> + Sync);

/// Runs all waters on two threads.
pub fn run(waters: &[Water], days: Days, advice: Maker, only_advice: bool) -> Vec<Table> {
    let next = AtomicUsize::new(0);
    let mut tables: Vec<(usize, Table)> = std::thread::scope(|scope| {
        let work = || {
            let mut done = Vec::new();
            loop {
                let i = next.fetch_add(1, Ordering::Relaxed);
                let Some(water) = waters.get(i) else { return done };
                done.push((i, table(water, water.seed(), days, advice, only_advice)));
            }
        };
        let handles = [scope.spawn(work), scope.spawn(work)];
        handles.into_iter().flat_map(|h| h.join().unwrap_or_default()).collect()
    });
    tables.sort_by_key(|(i, _)| *i);
    tables.into_iter().map(|(_, t)| t).collect()
}

fn table(water: &Water, seed: u64, days: Days, advice: Maker, only_advice: bool) -> Table {
    let mut knows = oracle(water, seed);
    let mut lines = Vec::new();
    let mut anglers: Vec<(String, Box<dyn Angler>)> = vec![("advice".into(), advice())];
    if !only_advice {
        for minutes in [5.0, 8.0, 10.0, 12.0, 15.0, 20.0, 30.0] {
            anglers.push((format!("fixed {minutes}"), Box::new(Habit(minutes))));
        }
        anglers.push(("trade's rule".into(), Box::new(TradeRule::new(17.5))));
    }
    let lucks: Vec<Luck> = (0..days.first).map(|d| Luck::of_day(seed, d)).collect();
    let best: Vec<f64> = lucks.iter().map(|l| fish(water, l, &mut knows, Bank::all_in()).bites as f64).collect();
    for (name, angler) in &mut anglers {
        let mut line = Line { angler: name.clone(), ..Line::default() };
        for (luck, best) in lucks.iter().zip(&best) {
            angler.begin(&[]);
            let catch = fish(water, luck, angler.as_mut(), Bank::all_in());
            line.per_hour.add(catch.bites as f64, DAY / 60.0);
            line.whole.add(catch.bites as f64, *best);
            if let Some(bank) = catch.after_sixth {
                let rest = fish(water, luck, &mut knows, bank).bites;
                line.after_sixth.add((catch.bites - 6) as f64, rest as f64);
            }
        }
        if name == "advice" && water.kind != Kind::Drift {
            line.with_book = with_book(water, seed, days, angler.as_mut(), &mut knows);
        }
        lines.push(line);
    }
    Table { water: *water, best_leave: knows.leave_at[0], lines }
}

/// Five days fished with the advice fill the book; the days after them are measured.
fn with_book(water: &Water, seed: u64, days: Days, angler: &mut dyn Angler, knows: &mut Oracle) -> Share {
    let mut share = Share::default();
    for book_no in 0..days.books {
        let luck = |d: u64| Luck::of_day(seed ^ 0xB00C, book_no * 100 + d);
        let mut book: Vec<Vec<Cast>> = Vec::new();
        for d in 0..5 {
            angler.begin(&book);
            book.push(fish(water, &luck(d), angler, Bank::all_in()).log);
        }
        let (mut ours, mut best) = (0, 0);
        for d in 0..days.per_book {
            let luck = luck(10 + d);
            angler.begin(&book);
            ours += fish(water, &luck, angler, Bank::all_in()).bites;
            best += fish(water, &luck, knows, Bank::all_in()).bites;
        }
        share.add(ours as f64, best as f64);
    }
    share
}
