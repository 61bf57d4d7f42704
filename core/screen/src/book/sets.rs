//! Comparing two sets of sessions.

use super::rates::{axis_of, rate_line};
use super::{BookInput, Day, LEVEL_PERCENT, SetFilter, tally};
use crate::waits::p_words;
use crate::{Arg, BookSet, Leaf, LeafLine, Wording};
use restwater_compare::FEWEST_BITES;
use restwater_compare::sets::{DayTally, FEWEST_DAYS, SetsFinding, compare_sets, set_rates};
use restwater_compare::{Side, Verdict};

/// The seed of the random permutations used when there are too many to enumerate, so that the same record
/// always gives the same answer.
const SEED: u64 = 9;

pub(super) fn sets(input: &BookInput) -> Leaf {
    let words = input.words;
    let mut leaf = Leaf::new(words, "book", "sets");
    leaf.rows = input.a.rows(words, BookSet::A, input.days);
    leaf.rows.extend(input.b.rows(words, BookSet::B, input.days));
    let of = |filter: &SetFilter| -> Vec<Day> {
        input.days.iter().filter(|day| filter.takes(day)).copied().collect()
    };
    let (a, b) = (of(input.a), of(input.b));
    let (a_words, b_words) = (input.a.words(words, input.days), input.b.words(words, input.days));
    let shared = a.iter().filter(|day| b.iter().any(|other| other.id == day.id)).count();
    if shared > 0 {
        leaf.says = words.say_with("sets-shared", &[("count", Arg::Count(shared))]);
        leaf.notes.push(words.say("sets-choose"));
        return leaf;
    }
    // A session without a cast is not a day of a set.
    let tallies = |days: &[Day]| -> Vec<DayTally> {
        days.iter().map(|day| tally(day.gist)).filter(DayTally::tells).collect()
    };
    let (a, b) = (tallies(&a), tallies(&b));
    let (rates_a, rates_b) = (set_rates(&a), set_rates(&b));
    let sets = [&rates_a, &rates_b].into_iter();
    let axis = axis_of(words, sets.filter_map(|set| set.bites.map(|r| r.per_hour)));
    for (name, set, which) in [("A", &rates_a, &a_words), ("B", &rates_b, &b_words)] {
        let args = [("set", Arg::Text(name)), ("which", Arg::Text(which)), ("count", Arg::Count(set.days))];
        let label = words.say_with("sets-set", &args);
        leaf.lines.push(match set.bites {
            Some(rate) => rate_line(words, label, &rate, &axis),
            None => LeafLine::new(label, words.say("book-nothing-out")),
        });
    }
    leaf.drawn_on(&axis);
    match compare_sets(&a, &b, SEED) {
        Err(_) => leaf.says = words.say("sets-nothing"),
        Ok(found) => {
            let bites = [rates_a.bites, rates_b.bites].into_iter().flatten().map(|rate| rate.count).sum();
            leaf.says = verdict_words(words, &found, bites, a.len().min(b.len()));
            leaf.lines.extend(lines(words, &found));
        }
    }
    leaf.notes.push(words.say_with("sets-how", &[("level", Arg::Count(LEVEL_PERCENT))]));
    leaf
}

fn verdict_words(words: &Wording, found: &SetsFinding, bites: u64, fewest: usize) -> String {
    let side = |side: Side| if side == Side::A { "A" } else { "B" };
    match found.verdict {
        Verdict::LeansTo(to) => words.say_with("sets-leans", &[("set", Arg::Text(side(to)))]),
        Verdict::ClearlyBetterHereToday(to) => words.say_with("sets-clear", &[("set", Arg::Text(side(to)))]),
        Verdict::CantTellYet if bites < FEWEST_BITES => {
            words.say_with("sets-few-bites", &[("count", Arg::Count(bites as usize))])
        }
        Verdict::CantTellYet if fewest < FEWEST_DAYS => {
            let args = [("count", Arg::Count(fewest)), ("least", Arg::Count(FEWEST_DAYS))];
            words.say_with("sets-few-days", &args)
        }
        Verdict::CantTellYet => words.say("sets-cant-tell"),
    }
}

fn lines(words: &Wording, found: &SetsFinding) -> Vec<LeafLine> {
    let limits = found.ratio.limits;
    let high = if limits.high.is_finite() { words.figure(limits.high, 1) } else { words.say("sets-no-end") };
    let low = words.figure(limits.low, 2);
    let ratio = found.ratio.ratio.map_or_else(|| words.say("sets-no-ratio"), |r| words.figure(r, 2));
    let mut first =
        LeafLine::new(words.say("sets-ratio"), words.say_with("sets-times", &[("ratio", Arg::Text(&ratio))]));
    first.detail = words.say_with("sets-limits", &[("low", Arg::Text(&low)), ("high", Arg::Text(&high))]);
    let of_100 = |p: f64| Arg::Count(libm::round(100.0 * p) as usize);
    let belief = found.belief;
    let counts = [("a", of_100(belief.a)), ("b", of_100(belief.b)), ("same", of_100(belief.same()))];
    let mut better = LeafLine::new(words.say("sets-better"), words.say_with("sets-of-100", &counts));
    better.detail = words.say("sets-of-100-how");
    let mut exact = LeafLine::new(words.say("sets-exact-p"), p_words(words, found.exact_p));
    exact.detail = words.say("sets-exact-p-how");
    let mut days = LeafLine::new(words.say("sets-days-p"), p_words(words, found.days_p.two_sided));
    let id = if found.days_p.all { "sets-days-p-all" } else { "sets-days-p-drawn" };
    days.detail = words.say_with(id, &[("count", Arg::Count(found.days_p.arrangements as usize))]);
    vec![first, better, exact, days]
}
