//! A question over days, both on "Did it matter?" beside today's result and as a page of the Book.

use super::compared::{factor_words, side_counts, value_of_factor};
use super::figures::sentence_case;
use super::usual_names::same_value;
use super::waits::p_words;
use super::{Arg, Leaf, LeafKey, LeafLine, Wording};
use restwater_compare::over_days::{MOST_DAYS, MoreDays, OverDays, Question, SideCount};
use restwater_compare::{Factor, Side};
use restwater_log::WeightUnit;

/// The most questions that are listed, latest first.
const LISTED: usize = 12;

/// Two values that were compared on two days or more of one water.
#[derive(Debug, Clone, PartialEq)]
pub struct StandingQuestion {
    /// The water.
    pub water: String,
    /// What was changed.
    pub factor: Factor,
    /// One value (side A).
    pub a: String,
    /// The other (side B).
    pub b: String,
    /// The result over the days.
    pub found: Question,
    /// How many more days it would take; `None` if that was not computed or can't be known.
    pub more: Option<MoreDays>,
}

impl StandingQuestion {
    /// Whether it is the question about these two values, in either order.
    pub(crate) fn is_about(&self, factor: Factor, one: &str, other: &str) -> bool {
        let same = |a: &str, b: &str| same_value(factor, &self.a, a) && same_value(factor, &self.b, b);
        self.factor == factor && (same(one, other) || same(other, one))
    }

    fn value(&self, words: &Wording, side: Side) -> String {
        let value = if side == Side::A { &self.a } else { &self.b };
        // No question over days is about feed, which is all that the unit is for.
        value_of_factor(words, self.factor, value, WeightUnit::Grams)
    }

    fn is_clear(&self) -> bool {
        matches!(self.found.verdict, OverDays::ClearlyBetter(_))
    }

    /// "Over 3 sessions, 41 casts: leans to pink." A day of a question is one session: two of the same day have rates of their own.
    pub(crate) fn says(&self, words: &Wording) -> String {
        let found = &self.found;
        if found.days == 0 {
            return words.say_with("question-none", &[("sessions", Arg::Count(found.other_days))]);
        }
        let verdict = match found.verdict {
            OverDays::CantTellYet => words.say("verdict-cant-tell"),
            OverDays::LeansTo(side) => {
                words.say_with("verdict-leans", &[("value", Arg::Text(&self.value(words, side)))])
            }
            OverDays::ClearlyBetter(side) => {
                words.say_with("question-clear", &[("value", Arg::Text(&self.value(words, side)))])
            }
        };
        let args = [
            ("sessions", Arg::Count(found.days)),
            ("casts", Arg::Count(found.casts())),
            ("verdict", Arg::Text(&verdict)),
        ];
        words.say_with("question-over", &args)
    }

    /// What each side brought in these sessions.
    fn counts(&self, words: &Wording) -> String {
        let of = |side: Side, count: &SideCount| {
            let counts = side_counts(words, count.bites, count.casts, count.minutes);
            let value = self.value(words, side);
            let args = [("value", Arg::Text(&value)), ("counts", Arg::Text(&counts))];
            sentence_case(&words.say_with("change-counts", &args))
        };
        let others = (self.found.days > 0 && self.found.other_days > 0)
            .then(|| words.say_with("question-others", &[("sessions", Arg::Count(self.found.other_days))]));
        let sides = [of(Side::A, &self.found.sides[0]), of(Side::B, &self.found.sides[1])];
        sides.into_iter().chain(others).collect::<Vec<_>>().join(" ")
    }

    /// "Over these sessions, of 100 questions that look like this, about 84 favour pink; 3 favour white; 13 make no difference."
    pub(crate) fn of_100(&self, words: &Wording) -> Option<String> {
        if self.found.days == 0 {
            return None;
        }
        let of_100 = |p: f64| libm::round(100.0 * p) as usize;
        let (a, b) = (of_100(self.found.belief.a), of_100(self.found.belief.b));
        let (first, second) = if b > a { (Side::B, Side::A) } else { (Side::A, Side::B) };
        let (value, other) = (self.value(words, first), self.value(words, second));
        let args = [
            ("value", Arg::Text(&value)),
            ("other", Arg::Text(&other)),
            ("better", Arg::Count(a.max(b))),
            ("worse", Arg::Count(a.min(b))),
            ("same", Arg::Count(100_usize.saturating_sub(a + b))),
        ];
        Some(words.say_with("question-of-100", &args))
    }

    /// How many more sessions it would take.
    fn more(&self, words: &Wording) -> String {
        if self.is_clear() {
            return words.say("question-more-clear");
        }
        let Some(more) = self.more else { return words.say("question-more-unknown") };
        match (more.days, libm::round(10.0 * more.assurance) as usize) {
            (Some(days), _) => words.say_with("question-more", &[("sessions", Arg::Count(days))]),
            (None, 0) => words.say_with("question-more-no", &[("sessions", Arg::Count(MOST_DAYS))]),
            (None, times) => words.say_with(
                "question-more-maybe",
                &[("sessions", Arg::Count(MOST_DAYS)), ("times", Arg::Count(times))],
            ),
        }
    }

    /// What to alternate next time, the side with fewer casts first.
    fn next(&self, words: &Wording) -> String {
        let first = self.found.first_next_time();
        let (a, b) = (self.value(words, first), self.value(words, first.other()));
        words.say_with("question-next", &[("a", Arg::Text(&a)), ("b", Arg::Text(&b))])
    }

    /// "Colour: pink or white, Alder Pool"
    fn title(&self, words: &Wording) -> String {
        let (factor, a, b) =
            (factor_words(words, self.factor), self.value(words, Side::A), self.value(words, Side::B));
        let args = [
            ("factor", Arg::Text(&factor)),
            ("a", Arg::Text(&a)),
            ("b", Arg::Text(&b)),
            ("water", Arg::Text(&self.water)),
        ];
        words.say_with("question-title", &args)
    }

    /// Stakes, p-values and the ratio, for the page of figures; `None` before a day counts.
    pub(crate) fn figures(&self, words: &Wording) -> Option<String> {
        let found = &self.found;
        if found.days == 0 {
            return None;
        }
        let stake = |stake: f64| words.figure(stake, if stake < 10.0 { 2 } else { 0 });
        let [minutes, waits, casts, decides] =
            [found.stakes.minutes, found.stakes.waits, found.stakes.casts, found.stakes.decides].map(stake);
        let (any_look, block) = (p_words(words, found.any_look_p), p_words(words, found.block_p));
        let [low, at, high] = found.ratio.map(|ratio| words.figure(ratio, 2));
        let (a, b) = (self.value(words, Side::A), self.value(words, Side::B));
        let args = [
            ("a", Arg::Text(&a)),
            ("b", Arg::Text(&b)),
            ("ratio", Arg::Text(&at)),
            ("low", Arg::Text(&low)),
            ("high", Arg::Text(&high)),
            ("minutes", Arg::Text(&minutes)),
            ("waits", Arg::Text(&waits)),
            ("casts", Arg::Text(&casts)),
            ("decides", Arg::Text(&decides)),
            ("place", Arg::Count(found.place)),
            ("anylook", Arg::Text(&any_look)),
            ("block", Arg::Text(&block)),
        ];
        Some(words.say_with("question-figures", &args))
    }
}

/// The page of the questions, and the page of their figures behind it. Without a question there is neither.
pub(crate) fn leaves(words: &Wording, standing: &[StandingQuestion]) -> Option<[Leaf; 2]> {
    if standing.is_empty() {
        return None;
    }
    let mut leaf = Leaf::new(words, "book", "questions");
    let mut figures = Leaf::new(words, "book", "questions-figures");
    let clear = standing.iter().filter(|question| question.is_clear()).count();
    let args = [("count", Arg::Count(standing.len())), ("clear", Arg::Count(clear))];
    leaf.says = words.say_with("questions-says", &args);
    figures.says.clone_from(&leaf.says);
    for question in standing.iter().take(LISTED) {
        let title = question.title(words);
        leaf.lines.push(LeafLine::heading(title.clone()));
        let with = |label: String, detail: String| LeafLine { detail, ..LeafLine::new(label, String::new()) };
        leaf.lines.push(with(question.says(words), question.counts(words)));
        leaf.lines.extend(question.of_100(words).map(|of_100| LeafLine::new(of_100, String::new())));
        leaf.lines.push(with(question.next(words), question.more(words)));
        figures.lines.extend(question.figures(words).map(|figures| with(title, figures)));
    }
    leaf.notes = ["questions-how", "questions-own-rate"].map(|id| words.say(id)).to_vec();
    let left_out = standing.len().saturating_sub(LISTED);
    leaf.notes.extend(
        (left_out > 0).then(|| words.say_with("questions-left-out", &[("count", Arg::Count(left_out))])),
    );
    figures.notes.push(words.say("questions-figures-how"));
    leaf.keys
        .push(LeafKey { label: words.say("waits-figures"), ..figures.opener(words.say("book-figures-sub")) });
    Some([leaf, figures])
}

#[cfg(test)]
mod tests;
