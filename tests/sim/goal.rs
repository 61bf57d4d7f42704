//! The goals for the advice and the verdicts, each met or missed.

use super::belief::{BINS, Believed, MoreCasts};
use super::book::Differing;
use super::change::Said;
use super::club::{Begun, ON};
use super::fed::Found;
use super::looks::{Looked, Round};
use super::questions::{Asked, BY_DAY, Promised};
use super::share::{Catches, Line, Share};
use super::spots::Caught;
use super::water::Kind;

/// One goal.
#[derive(Debug, Clone)]
pub struct Goal {
    /// The goal, with the value found.
    pub text: String,
    /// Whether it is met.
    pub held: bool,
}

impl Goal {
    fn at_least(what: &str, found: &Share, least: f64) -> Self {
        let (value, error) = (found.value(), found.error());
        let close =
            if (value - least).abs() < 2.0 * error { ", within two standard errors of it" } else { "" };
        let text = format!(
            "{what}: {:.1} ± {:.1} % of the oracle's (goal: at least {:.0} %{close})",
            100.0 * value,
            100.0 * error,
            100.0 * least
        );
        Self { text, held: value >= least }
    }
}

/// Where spots differ, at least so much of what one catches who goes round them and knows the best leave time.
const SPOTS_DIFFER: f64 = 1.2;
/// Where they don't, at least so much of what the advice catches in turn.
const SPOTS_ALIKE: f64 = 0.99;

/// The goals of where and how long.
pub fn of_spots(rows: &[(String, Caught)]) -> Vec<Goal> {
    let goal = |(name, caught): &(String, Caught)| {
        let (what, found, least) = if name.starts_with("alike") {
            ("the advice in turn", &caught.over[1], SPOTS_ALIKE)
        } else {
            ("the best in turn", &caught.over[0], SPOTS_DIFFER)
        };
        let (value, error, goal) = (100.0 * found.value(), 100.0 * found.error(), 100.0 * least);
        let text =
            format!("{name}, as told: {value:.1} ± {error:.1} % of {what} (goal: at least {goal:.0} %)");
        Goal { text, held: found.value() >= least }
    };
    rows.iter().map(goal).collect()
}

/// With a club of fifty, the least share of a first day on any water, and the mean over all waters.
const CLUB_LEAST: f64 = 0.88;
const CLUB_MEAN: f64 = 0.96;
/// What a club of another water may cost.
const WRONG_CLUB: f64 = 0.02;

/// The goals of a club's start: means over waters, each water as one.
pub fn of_clubs(rows: &[(String, Begun)]) -> Vec<Goal> {
    let mean = |of: &dyn Fn(&Begun) -> Share| Mean::of(rows.iter().map(|(_, begun)| of(begun)));
    let usual = mean(&|begun| begun.without);
    let right = mean(&|begun| begun.right[1]);
    let gains = mean(&|begun| begun.gains);
    let text = format!(
        "first days with a club of fifty, mean over waters: {right} (goal: at least {:.0} %; {usual} without, gained {gains})",
        100.0 * CLUB_MEAN
    );
    let mut goals = vec![Goal { text, held: right.value >= CLUB_MEAN }];
    let wrong: [(&str, Mean); 2 + ON] = [
        ("another, extreme water", mean(&|begun| begun.elsewhere)),
        ("several other waters", mean(&|begun| begun.several)),
        ("this water before it changed", mean(&|begun| begun.changed[0])),
        ("this water before it changed, second day", mean(&|begun| begun.changed[1])),
        ("this water before it changed, third day", mean(&|begun| begun.changed[2])),
    ];
    for (of, cost) in wrong {
        let goal = 100.0 * WRONG_CLUB;
        let close = if (cost.value - WRONG_CLUB).abs() < 2.0 * cost.error {
            ", within two standard errors of it"
        } else {
            ""
        };
        let text = format!(
            "days with a club of {of}, mean over waters: cost {cost} (goal: at most {goal:.0} %{close})"
        );
        goals.push(Goal { text, held: cost.value <= WRONG_CLUB });
    }
    for (name, begun) in rows {
        let goal = format!("{name}, first day with a club of fifty");
        goals.push(Goal::at_least(&goal, &begun.right[1], CLUB_LEAST));
    }
    goals
}

/// A mean of shares over waters, with its standard error.
struct Mean {
    value: f64,
    error: f64,
}

impl Mean {
    fn of(shares: impl Iterator<Item = Share>) -> Self {
        let (mut waters, mut sum, mut squares) = (0.0_f64, 0.0, 0.0);
        for share in shares {
            waters += 1.0;
            sum += share.value();
            squares += share.error().powi(2);
        }
        Self { value: sum / waters.max(1.0), error: squares.sqrt() / waters.max(1.0) }
    }
}

impl std::fmt::Display for Mean {
    fn fmt(&self, f: &mut std::fmt::Formatter) -> std::fmt::Result {
        write!(f, "{:.1} ± {:.1} %", 100.0 * self.value, 100.0 * self.error)
    }
}

/// The least share from the sixth bite on.
fn after_sixth(kind: Kind) -> Option<f64> {
    match kind {
        Kind::NarrowWindow => Some(0.98),
        Kind::ConstantRate => Some(0.97),
        Kind::EarlyOnly | Kind::TwoPeaked => Some(0.90),
        Kind::Drift => Some(0.89),
        _ => None,
    }
}

/// The smallest acceptable share over whole first days.
fn whole(kind: Kind) -> Option<f64> {
    match kind {
        Kind::NarrowWindow => Some(0.94),
        Kind::ConstantRate => Some(0.95),
        Kind::TwoPeaked => Some(0.93),
        Kind::NobodyHome => Some(0.84),
        Kind::EarlyOnly => Some(0.80),
        _ => None,
    }
}

/// The goals for the advice.
pub fn of_advice(all: &[Catches]) -> Vec<Goal> {
    let mut goals = Vec::new();
    for catches in all {
        let (water, advice) = (&catches.water, &catches.lines[0]);
        let name = water.name;
        if let Some(least) = after_sixth(water.kind) {
            goals.push(Goal::at_least(
                &format!("{name}, from the sixth bite on"),
                &advice.after_sixth,
                least,
            ));
        }
        if let Some(least) = whole(water.kind) {
            goals.push(Goal::at_least(&format!("{name}, first day"), &advice.whole, least));
        }
        if let Some(share) = &advice.with_book {
            goals.push(Goal::at_least(&format!("{name}, five days in the book"), share, 0.95));
        }
    }
    let worst = |angler: usize| {
        let whole = |line: &Line| line.whole.value();
        all.iter().map(|c| whole(&c.lines[angler])).fold(f64::INFINITY, f64::min)
    };
    let others = all.first().map_or(0, |c| c.lines.len());
    for other in 1..others {
        let (ours, theirs) = (worst(0), worst(other));
        let name = &all[0].lines[other].angler;
        let text = format!(
            "worst share over all waters, first days: {:.1} % against {:.1} % of {name}",
            100.0 * ours,
            100.0 * theirs
        );
        goals.push(Goal { text, held: ours > theirs });
    }
    goals
}

/// A book must cost no bites when days differ, and its band of the rate must contain the truth.
pub fn of_books(rows: &[(String, f64, Differing)]) -> Vec<Goal> {
    let mut goals = Vec::new();
    for (name, sd, found) in rows {
        let [with, without] = [&found.shares[0], &found.shares[1]].map(Share::value);
        let text = format!(
            "{name}, days differ by {sd}: {:.1} % of the oracle's with a book (goal: at most 1 below the {:.1} % without)",
            100.0 * with,
            100.0 * without
        );
        goals.push(Goal { text, held: with >= without - 0.01 });
        let (held, error) = (found.covered[0].value(), found.covered[0].error());
        let text = format!(
            "{name}, days differ by {sd}: the 95 % band of the rate holds the truth on {:.1} ± {:.1} % of days with a book (goal: 90 to 98 %)",
            100.0 * held,
            100.0 * error
        );
        goals.push(Goal { text, held: (0.90..=0.98).contains(&held) });
    }
    goals
}

/// A false "clearly better" on at most one day in twenty, over every change in the log, read after every
/// cast.
pub fn of_changes(rows: &[(String, f64, Said)]) -> Vec<Goal> {
    rows.iter()
        .map(|(name, effect, said)| {
            let (end, ever) = (said.share(said.untrue).0, said.share(said.untrue_ever).0);
            let effect = if *effect == 1.0 { String::new() } else { format!(" (x {effect})") };
            let text = format!(
                "{name}{effect}: false \"clearly better\" on {:.1} % of days at all-out, {:.1} % at any look (goal: at most 5 %)",
                100.0 * end,
                100.0 * ever
            );
            Goal { text, held: ever <= 0.05 }
        })
        .collect()
}

/// Knowing about feed costs nothing if feed does nothing, and the chances of casts in fed water and of others
/// are no further from the truth than without it, or near enough.
pub fn of_feed(rows: &[(String, f64, Found)]) -> Vec<Goal> {
    let mut goals = Vec::new();
    for (name, times, found) in rows {
        if *times == 1.0 {
            let (value, error) = (found.bites.value(), found.bites.error());
            let text = format!(
                "{name}: told of feed that does nothing, {:.1} ± {:.1} % of the bites without (goal: at least 99.5 %)",
                100.0 * value,
                100.0 * error
            );
            goals.push(Goal { text, held: value >= 0.995 });
        }
        let off = |[claimed, came]: &[Share; 2]| claimed.value() - came.value();
        for ((told, not_told), what) in found.chances[0].iter().zip(&found.chances[1]).zip(["other", "fed"]) {
            // With a few dozen casts, nobody can tell whether a chance is five points off.
            let error = told[1].error();
            if error.is_nan() || error > 0.03 || told[1].days() < 100.0 {
                continue;
            }
            let (here, without) = (off(told), off(not_told));
            let text = format!(
                "{name} (x {times}): five minutes of {what} casts claimed {:+.1} ± {:.1} points off, {:+.1} without being told (goal: within 5, or nearer than without)",
                100.0 * here,
                100.0 * error,
                100.0 * without
            );
            goals.push(Goal { text, held: here.abs() <= 0.05 || here.abs() <= without.abs() });
        }
    }
    goals
}

/// False claims of a trend, of a better day or of fish that moved: on at most one day in twenty at any look.
pub fn of_looks(rows: &[(String, f64, Looked)]) -> Vec<Goal> {
    let level = rows.iter().filter(|(name, keener, _)| *keener == 1.0 && !name.starts_with("drift"));
    let claims =
        |(name, _, found): &(String, f64, Looked)| {
            let mut all = vec![
                (format!("{name}: bites quicker or slower over the day"), found.trend[1]),
                (format!("{name}: today quicker or slower than earlier days"), found.earlier[1]),
            ];
            all.extend(found.moved.iter().zip(Round::ALL).map(|(moved, (_, round))| {
                (format!("{name}, {round}: bites moved over the swim"), moved[1])
            }));
            all
        };
    level
        .flat_map(claims)
        .map(|(what, ever)| Goal {
            text: format!(
                "{what}: falsely said at some look on {:.1} ± {:.1} % of days (goal: at most 5 %)",
                100.0 * ever.value(),
                100.0 * ever.error()
            ),
            held: ever.value() <= 0.05,
        })
        .collect()
}

/// Claims about a change are right as often as stated, and a change without an effect seldom leans.
pub fn of_beliefs(rows: &[(String, Believed)]) -> Vec<Goal> {
    let mut goals = Vec::new();
    for (name, found) in rows {
        let ever = found.leant[1].value();
        let text = format!(
            "{name}: without an effect it leans at some look on {:.1} % of days (goal: at most 10 %)",
            100.0 * ever
        );
        goals.push(Goal { text, held: ever <= 0.10 });
        for ([claimed, right], from) in found.bins.iter().zip(BINS) {
            // With a few dozen days in a bin, nobody can tell whether it is five points off.
            if right.error() > 0.03 || right.days() < 100.0 {
                continue;
            }
            let text = format!(
                "{name}, claimed from {:.0} in 100: right {:.1} ± {:.1} in 100 where {:.1} is claimed (goal: within 5)",
                100.0 * from,
                100.0 * right.value(),
                100.0 * right.error(),
                100.0 * claimed.value()
            );
            goals.push(Goal { text, held: (right.value() - claimed.value()).abs() <= 0.05 });
        }
    }
    goals
}

/// Seasons of a question: the better of two is found soon enough, and false answers are rare enough.
pub fn of_questions(rows: &[(String, f64, Asked)]) -> Vec<Goal> {
    let mut goals = Vec::new();
    for (name, effect, found) in rows {
        let share = |s: &Share| format!("{:.1} ± {:.1} %", 100.0 * s.value(), 100.0 * s.error());
        let wanted: &[(usize, f64)] = match (name.as_str(), *effect) {
            ("even, constant 12, alternating", 2.0) => {
                &[(BY_DAY[0], 0.06), (BY_DAY[1], 0.45), (BY_DAY[2], 0.85)]
            }
            (name, 4.0) if name.starts_with("window") => &[(BY_DAY[1], 0.90)],
            _ => &[],
        };
        for (day, least) in wanted {
            let by = &found.found[day - 1];
            let text = format!(
                "{name} (x {effect}): clear by day {day} in {} of seasons (goal: at least {:.0} %)",
                share(by),
                100.0 * least
            );
            goals.push(Goal { text, held: by.value() >= *least });
        }
        let ever = &found.untrue[found.untrue.len() - 1];
        let text = format!(
            "{name} (x {effect}): falsely clear at some look of {} of seasons (goal: at most 5 %)",
            share(ever)
        );
        goals.push(Goal { text, held: ever.value() <= 0.05 });
    }
    goals
}

/// The stated number of further days settles the question as often as promised.
pub fn of_more_days(found: &Promised) -> Goal {
    of_promise("more days", &found.named)
}

/// The stated number of further casts settles the question as often as promised.
pub fn of_more_casts(found: &MoreCasts) -> Goal {
    of_promise("more casts", &found.named)
}

fn of_promise(what: &str, [promised, reached]: &[Share; 2]) -> Goal {
    let text = format!(
        "{what}: named {:.0} times with {:.1} % promised, settled {:.1} ± {:.1} % (goal: 75 to 85 %)",
        promised.days(),
        100.0 * promised.value(),
        100.0 * reached.value(),
        100.0 * reached.error()
    );
    Goal { text, held: (0.75..=0.85).contains(&reached.value()) }
}
