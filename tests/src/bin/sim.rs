//! `./dev sim [--days=N] [--seed=N] [--water=NAME] [--part=NAME]`: the simulated bank. Prints bites per hour,
//! shares of the oracle's, verdicts on changes, and every goal as held or missed. Fails if one is missed.
//! Fewer days than the usual 2,000 per water are for a quick look: their goals mean little. Another seed
//! fishes other days; a name selects the waters whose names contain it; a part is one of the tables.
#![allow(clippy::print_stdout)]

use restwater_tests::sim::belief::{self, Believed, MoreCasts};
use restwater_tests::sim::book::{BETWEEN_DAYS, Differing, differing};
use restwater_tests::sim::change::{Habit, Said, said};
use restwater_tests::sim::claims::weights::{CASES, Weights, weights};
use restwater_tests::sim::claims::{self, Claims};
use restwater_tests::sim::club::{self, Begun};
use restwater_tests::sim::fed::{self, Found};
use restwater_tests::sim::feeds::When;
use restwater_tests::sim::goal::{self, Goal};
use restwater_tests::sim::looks::{Looked, level, looked};
use restwater_tests::sim::questions;
use restwater_tests::sim::sbc;
use restwater_tests::sim::share::{Catches, Days, catches};
use restwater_tests::sim::spot_waters;
use restwater_tests::sim::spots::{Caught, caught};
use restwater_tests::sim::water::Water;
use restwater_tests::sim::waters::{seen_before, tuned, unseen};
use restwater_tests::sim::{on_two_threads, table};
use std::process::ExitCode;

/// Days per water.
const DAYS: u64 = 2000;
/// Waters on which the days of a book differ.
const DIFFERING: [&str; 3] = ["constant 12", "constant 30", "window 15±0.7"];
/// Days fished after each book of five.
const PER_BOOK: u64 = 8;
/// The run of the tables in docs/advice-figures.md: no setting was chosen from its days.
const SEED: u64 = 20_261_128;
/// The questions over days fish one season for every four days of the other parts.
const DAYS_A_SEASON: u64 = 4;
/// The calibration of claims fishes one day for every five of the other parts: each day has many claims to check.
const CLAIMS: u64 = 5;
/// How many times as many days for the stated number of casts, which is rarely stated.
const MORE_CASTS: u64 = 16;
/// How many times as keen the better colour makes the fish, if there is one.
const EFFECTS: [f64; 2] = [2.0, 4.0];
/// How many times as keen the fish are on a day that differs from those in the book.
const KEENER: [f64; 3] = [0.5, 2.0, 3.0];

fn main() -> ExitCode {
    let Some(asked) = asked() else {
        eprintln!(
            "usage: sim [--days=N] [--seed=N] [--water=NAME] [--part=NAME], N at least {PER_BOOK} days"
        );
        eprintln!("parts: {}", PARTS.map(|(name, _)| name).join(", "));
        return ExitCode::from(2);
    };
    println!("Run {}, {} first days of five hours a water\n", asked.days.run, asked.days.first);
    let parts = PARTS.iter().filter(|(name, _)| name.contains(&asked.part));
    let goals: Vec<Goal> = parts.flat_map(|(_, part)| part(&asked)).collect();
    for goal in &goals {
        println!("{} {}", if goal.held { "held  " } else { "MISSED" }, goal.text);
    }
    let held = goals.iter().filter(|goal| goal.held).count();
    println!("{held} held, {} missed", goals.len() - held);
    if held == goals.len() { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}

/// Prints a part's tables and returns its goals.
type Part = fn(&Asked) -> Vec<Goal>;
/// The parts of a run, in their order.
const PARTS: [(&str, Part); 13] = [
    ("advice", advice),
    ("claims", claimed),
    ("sbc", calibrated),
    ("books", books),
    ("changes", changes),
    ("feed", feed),
    ("fed", fed),
    ("beliefs", beliefs),
    ("casts", more_casts),
    ("looks", looks),
    ("questions", questions),
    ("spots", spots),
    ("club", clubs),
];

fn advice(asked: &Asked) -> Vec<Goal> {
    let tables = [
        ("Waters the settings were tuned on, other days", asked.named(tuned())),
        ("Waters seen before the last change", asked.named(seen_before())),
        ("Waters not seen before", asked.named(unseen())),
    ];
    let mut goals = Vec::new();
    for (name, waters) in tables.into_iter().filter(|(_, waters)| !waters.is_empty()) {
        let all: Vec<Catches> = on_two_threads(&waters, |water| catches(water, asked.days));
        println!("{name}: bites per hour\n\n{}", table::bites_per_hour(&all));
        println!("{name}: Restwater's advice as a share of the oracle's bites\n\n{}", table::shares(&all));
        goals.extend(goal::of_advice(&all));
    }
    goals
}

/// Claims about bites and their weight on first days.
fn claimed(asked: &Asked) -> Vec<Goal> {
    let Days { first, run, .. } = asked.days;
    let days = first.div_ceil(CLAIMS);
    let rows: Vec<(String, Claims)> = on_two_threads(&asked.named(tuned()), |water| {
        (water.name.to_owned(), claims::claims(water, days, run))
    });
    println!("A bite in the next five minutes, claimed / came (%)\n\n{}", claims::table::five_minutes(&rows));
    println!("The 95 % band of bites an hour at the leave advised\n\n{}", claims::table::rates(&rows));
    println!("Bites to come, foretold at half of the day\n\n{}", claims::table::coming(&rows));
    let weights: Vec<Weights> = on_two_threads(&CASES, |case| weights(*case, days, run));
    println!("Weight to come, foretold after eight fish\n\n{}", claims::table::weights(&weights));
    let of = [claims::goals::of_five_minutes, claims::goals::of_rates, claims::goals::of_coming];
    of.iter().flat_map(|goals| goals(&rows)).chain(claims::goals::of_weights(&weights)).collect()
}

/// Truths drawn from the prior, and their ranks in the posterior after a day.
fn calibrated(asked: &Asked) -> Vec<Goal> {
    let Days { first, run, .. } = asked.days;
    let rows = on_two_threads(&sbc::OF, |of| sbc::ranks(of, first, run));
    println!("Ranks of truths drawn from what is believed\n\n{}", sbc::table(&rows));
    sbc::goals(&rows)
}

fn books(asked: &Asked) -> Vec<Goal> {
    let books: Vec<(Water, f64)> = asked
        .named(tuned())
        .into_iter()
        .filter(|water| DIFFERING.contains(&water.name))
        .flat_map(|water| BETWEEN_DAYS.map(|sd| (water, sd)))
        .collect();
    let books: Vec<(String, f64, Differing)> = on_two_threads(&books, |(water, sd)| {
        (water.name.to_owned(), *sd, differing(water, *sd, asked.days.books, asked.days.run))
    });
    println!("A book of five days that differ (log-sd of how keen the fish are)\n\n{}", table::books(&books));
    goal::of_books(&books)
}

fn changes(asked: &Asked) -> Vec<Goal> {
    let Days { first, run, .. } = asked.days;
    let rows: Vec<(String, f64, Said)> =
        on_two_threads(&comparisons(&asked.named(tuned())), |&(water, habit, name, effect)| {
            (format!("{}, {name}", water.name), effect, said(&water, habit, effect, first, run))
        });
    println!("False \"clearly better\", read after every cast\n\n{}", table::false_claims(&rows));
    println!("\"Clearly better\" of the better of two colours\n\n{}", table::power(&rows));
    goal::of_changes(&rows)
}

/// Waters on which feed does nothing, and on which it makes the fish keener for as long as it counts.
fn feed(asked: &Asked) -> Vec<Goal> {
    let Days { first, run, .. } = asked.days;
    let mut list: Vec<(Water, Habit, &'static str, f64)> = Vec::new();
    for water in asked.named(tuned()) {
        for (habit, name) in Habit::FEEDING {
            list.extend([1.0].into_iter().chain(EFFECTS).map(|effect| (water, habit, name, effect)));
        }
    }
    let rows: Vec<(String, f64, Said)> = on_two_threads(&list, |&(water, habit, name, effect)| {
        (format!("{}, {name}", water.name), effect, said(&water, habit, effect, first, run))
    });
    println!("False \"clearly better\" of feed, read after every cast\n\n{}", table::false_claims(&rows));
    println!("\"Clearly better\" of fed water, where feed matters\n\n{}", table::power(&rows));
    goal::of_changes(&rows)
}

/// Feed in the model of waits, when it does nothing and when it makes the fish twice as keen.
fn fed(asked: &Asked) -> Vec<Goal> {
    let Days { first, run, .. } = asked.days;
    let mut list: Vec<(Water, When, &'static str, f64)> = Vec::new();
    for water in asked.named(tuned()) {
        list.extend(
            fed::WAYS.into_iter().flat_map(|(when, name)| fed::TIMES.map(|times| (water, when, name, times))),
        );
    }
    let rows: Vec<(String, f64, Found)> = on_two_threads(&list, |&(water, when, name, times)| {
        (format!("{}, {name}", water.name), times, fed::found(&water, when, times, first, run))
    });
    println!("Feed in the model of waits\n\n{}", table::fed(&rows));
    goal::of_feed(&rows)
}

fn beliefs(asked: &Asked) -> Vec<Goal> {
    let Days { first, run, .. } = asked.days;
    let rows: Vec<(String, Believed)> = on_two_threads(&asked.named(belief::waters()), |water| {
        let [alternating, half_hours] =
            belief::HABITS.map(|habit| belief::believed(water, habit, first, run));
        (water.name.to_owned(), alternating.with(&half_hours))
    });
    println!(
        "Changes of which half do nothing: what was claimed, and how often it was right\n\n{}",
        table::beliefs(&rows)
    );
    goal::of_beliefs(&rows)
}

fn more_casts(asked: &Asked) -> Vec<Goal> {
    let halves = [0, 1].map(|half| asked.days.run + half);
    let [mut found, other]: [MoreCasts; 2] =
        on_two_threads(&halves, |run| belief::more_casts(MORE_CASTS / 2 * asked.days.first, *run))
            .try_into()
            .unwrap_or_default();
    found.join(&other);
    println!("More casts, alternated: what was promised, and what they did\n\n{}", table::more_casts(&found));
    vec![goal::of_more_casts(&found)]
}

fn looks(asked: &Asked) -> Vec<Goal> {
    let Days { first, run, .. } = asked.days;
    let rows: Vec<(String, f64, Looked)> = on_two_threads(&to_look_at(asked), |&(water, keener)| {
        (water.name.to_owned(), keener, looked(&water, keener, first, run))
    });
    println!("Claimed at some look of the day, read after every cast\n\n{}", table::looks(&rows));
    goal::of_looks(&rows)
}

/// Where and how long, decided together; on a tenth of the days, since every cast of them is read from the screens.
fn spots(asked: &Asked) -> Vec<Goal> {
    let Days { first, run, .. } = asked.days;
    let lists =
        [("looked at", spot_waters::looked_at()), ("kept back until the end", spot_waters::kept_back())];
    let mut goals = Vec::new();
    for (name, waters) in lists {
        let rows: Vec<(String, Caught)> = on_two_threads(&asked.named(waters), |water| {
            (water.name.to_owned(), caught(water, (first / 10).max(PER_BOOK), run))
        });
        if !rows.is_empty() {
            println!("Where and how long, waters {name}: bites an hour\n\n{}", table::spots(&rows));
        }
        goals.extend(goal::of_spots(&rows));
    }
    goals
}

/// Days with the start of a club, on a tenth of the days: each is fished with many clubs.
fn clubs(asked: &Asked) -> Vec<Goal> {
    let Days { first, run, .. } = asked.days;
    let days = (first / 10).max(PER_BOOK);
    let waters: Vec<Water> = asked.named(tuned()).into_iter().chain(asked.named(unseen())).collect();
    let others = club::Others::new(run);
    let rows: Vec<(String, Begun)> =
        on_two_threads(&waters, |water| (water.name.to_owned(), club::begun(water, &others, days, run)));
    println!("First days with a club's start, as a share of the oracle's bites\n\n{}", table::clubs(&rows));
    println!(
        "What the start of another club costs, in % of the oracle's bites\n\n{}",
        table::other_clubs(&rows)
    );
    goal::of_clubs(&rows)
}

/// Two colours alternated over seasons of six days; and what is promised of more days.
fn questions(asked: &Asked) -> Vec<Goal> {
    let seasons = (asked.days.first / DAYS_A_SEASON).max(1);
    let waters = asked.named(questions::waters());
    let mut list: Vec<(Water, Habit, &'static str, f64)> = Vec::new();
    for water in &waters {
        list.extend(
            [1.0].into_iter().chain(EFFECTS).map(|times| (*water, Habit::Alternating, "alternating", times)),
        );
        list.extend(questions::OTHER_WAYS.map(|(habit, name)| (*water, habit, name, 1.0)));
    }
    let rows: Vec<(String, f64, questions::Asked)> = on_two_threads(&list, |&(water, habit, name, times)| {
        let found = questions::asked(&water, habit, times, seasons, asked.days.run);
        (format!("{}, {name}", water.name), times, found)
    });
    println!(
        "Two colours over {seasons} seasons of six days, read after every cast\n\n{}",
        table::questions(&rows)
    );
    let mut goals = goal::of_questions(&rows);
    if asked.water.is_empty() {
        let found = questions::promised(4 * seasons, asked.days.run);
        println!(
            "More days, alternated: what was promised, and what they did\n\n{}",
            table::more_days(&found)
        );
        goals.push(goal::of_more_days(&found));
    }
    goals
}

/// What the command line asks for.
struct Asked {
    days: Days,
    /// Only waters with this in their name.
    water: String,
    /// Only parts with this in their name.
    part: String,
}

impl Asked {
    fn named(&self, waters: Vec<Water>) -> Vec<Water> {
        waters.into_iter().filter(|w| w.name.contains(&self.water)).collect()
    }
}

fn asked() -> Option<Asked> {
    let (mut first, mut run, mut water, mut part) = (DAYS, SEED, String::new(), String::new());
    for argument in std::env::args().skip(1) {
        match argument.split_once('=')? {
            ("--days", days) => first = days.parse().ok().filter(|&days| days >= PER_BOOK)?,
            ("--seed", seed) => run = seed.parse().ok()?,
            ("--water", name) => name.clone_into(&mut water),
            ("--part", name) => name.clone_into(&mut part),
            _ => return None,
        }
    }
    let days = Days { run, first, books: first / PER_BOOK, per_book: PER_BOOK };
    Some(Asked { days, water, part })
}

/// Waters on which nothing changes, and days on which the fish are twice, three times or half as keen as on
/// those in the book.
fn to_look_at(asked: &Asked) -> Vec<(Water, f64)> {
    let level = asked.named(level());
    let even = level.iter().filter(|water| water.name.starts_with("even"));
    let keener = even.flat_map(|water| KEENER.map(|keener| (*water, keener)));
    let drifting = asked.named(tuned()).into_iter().filter(|water| water.evening.is_some());
    level.iter().map(|water| (*water, 1.0)).chain(keener).chain(drifting.map(|water| (water, 1.0))).collect()
}

/// Every way to change without an effect, and alternating with one, on every water.
fn comparisons(waters: &[Water]) -> Vec<(Water, Habit, &'static str, f64)> {
    let mut list = Vec::new();
    for water in waters {
        list.extend(Habit::ALL.map(|(habit, name)| (*water, habit, name, 1.0)));
        list.extend(EFFECTS.map(|effect| (*water, Habit::Alternating, "alternating", effect)));
    }
    list
}
