//! Questions over days: the same two values of one factor, compared on two or more days of one water. They
//! are computed from the days themselves. Each day is read once, and the result is kept until its entries
//! change.

use super::App;
use super::sessions::angler;
use super::spelling::plain_rows;
use restwater_compare::over_days::{Compared, DayOfQuestion, compared, more_days, question};
use restwater_compare::{CastRow, Factor};
use restwater_match_day::rules::plain_name;
use restwater_screen::{StandingQuestion, Whose, plain_value};
use restwater_store::SessionRow;
use std::collections::HashMap;
use uuid::Uuid;

/// The seed of the permutations and simulated futures, so that the same record always gives the same answer.
const SEED: u64 = 4;

/// The questions, and the input they were computed from.
#[derive(Default)]
pub(super) struct Questions {
    of: Option<Of>,
    days: HashMap<Uuid, Kept>,
    standing: Vec<Standing>,
}

/// Everything that the questions depend on.
#[derive(PartialEq)]
struct Of {
    log: u64,
    whose: Whose,
    mine: Vec<Uuid>,
    today: Option<Uuid>,
}

/// What was compared on a day, by the values as they are compared, and the parts of it computed so far.
struct Kept {
    row: SessionRow,
    asked: Vec<Compared>,
    made: HashMap<usize, DayOfQuestion>,
}

impl Kept {
    fn made(&mut self, which: usize, rows: &[CastRow]) -> DayOfQuestion {
        let asked = &self.asked[which];
        self.made.entry(which).or_insert_with(|| asked.day(rows)).clone()
    }
}

/// A question with its days, the oldest first.
struct Standing {
    view: StandingQuestion,
    /// The rows of its days when it was computed.
    of: Vec<SessionRow>,
    days: Vec<DayOfQuestion>,
    /// Whether the number of further days was computed.
    more_asked: bool,
}

/// A day with its row in the list of sessions.
type OfDay<'a> = (&'a SessionRow, &'a restwater_session::Summary);

/// The identity of a question over days.
#[derive(PartialEq, Eq, Hash, Clone)]
struct Key<'a> {
    /// Its name as `same_name` compares it.
    water: String,
    factor: Factor,
    a: &'a str,
    b: &'a str,
}

/// The days of a question, oldest first, each with the index of the change on that day, and the question's
/// place among all.
#[derive(Default)]
struct Asked {
    days: Vec<(usize, usize)>,
    place: Option<usize>,
}

impl App {
    /// The questions, latest first, with how many more days each would take.
    pub(super) fn questions(&mut self) -> Vec<StandingQuestion> {
        self.bring_questions_up();
        for standing in self.questions.standing.iter_mut().filter(|standing| !standing.more_asked) {
            standing.view.more = more_days(&standing.days, standing.view.found.place, SEED);
            standing.more_asked = true;
        }
        self.questions.standing.iter().map(|standing| standing.view.clone()).collect()
    }

    /// Computes the questions again if the log has grown or other days count. If the days can't be read there
    /// are no questions for now.
    pub(super) fn bring_questions_up(&mut self) {
        let of = Of {
            log: self.journal.version(),
            whose: self.phone.whose,
            mine: self.mine.clone(),
            today: self.session().map(|session| session.id),
        };
        if self.questions.of.as_ref() == Some(&of) {
            return;
        }
        if self.sessions.refresh(&self.journal).is_err() {
            self.questions = Questions::default();
            return;
        }
        let mut days = self.sessions.that_count(of.whose, &self.mine, of.today);
        days.reverse();
        self.questions.find(&days, &self.mine);
        self.questions.of = Some(of);
    }

    /// The questions on the water of today's session.
    pub(super) fn questions_here(&self) -> Vec<&StandingQuestion> {
        let water = self.session().and_then(|session| session.setup.water.as_deref());
        let here = |view: &&StandingQuestion| restwater_session::same_water(Some(&view.water), water);
        self.questions.standing.iter().map(|standing| &standing.view).filter(here).collect()
    }
}

impl Questions {
    /// `days` are in the order of the log, the oldest first.
    fn find(&mut self, days: &[OfDay], mine: &[Uuid]) {
        let mut kept: Vec<Kept> = Vec::new();
        for (row, day) in days {
            let known = self.days.remove(&row.id).filter(|kept| kept.row == **row);
            kept.push(known.unwrap_or_else(|| {
                // Days on a water without a name are never combined.
                let asked = if day.water.is_some() { compared(&plain_rows(&day.rows)) } else { Vec::new() };
                Kept { row: (*row).clone(), asked, made: HashMap::new() }
            }));
        }
        let (order, placed) = {
            let (mut found, mut order, mut placed): (HashMap<Key, usize>, Vec<Asked>, usize) =
                Default::default();
            for (n, (kept, (_, day))) in kept.iter().zip(days).enumerate() {
                for (which, asked) in kept.asked.iter().enumerate() {
                    let water = plain_name(day.water.as_deref().unwrap_or_default());
                    let key = Key { water, factor: asked.factor, a: &asked.a, b: &asked.b };
                    let at = *found.entry(key).or_insert_with(|| {
                        order.push(Asked::default());
                        order.len() - 1
                    });
                    order[at].days.push((n, which));
                    if asked.counts() && order[at].place.is_none() {
                        placed += 1;
                        order[at].place = Some(placed);
                    }
                }
            }
            (order, placed)
        };
        let mut before = std::mem::take(&mut self.standing);
        let mut standing: Vec<(usize, Standing)> = Vec::new();
        for asked in order.into_iter().filter(|asked| asked.days.len() >= 2) {
            let last = asked.days.last().map_or(0, |(n, _)| *n);
            standing.push((last, stand(&asked, placed, &mut kept, days, mine, &mut before)));
        }
        standing.sort_by_key(|(last, _)| std::cmp::Reverse(*last));
        self.standing = standing.into_iter().map(|(_, standing)| standing).collect();
        self.days = kept.into_iter().map(|kept| (kept.row.id, kept)).collect();
    }
}

/// A value as this angler spelled it last on the days of a question, otherwise as another angler did.
fn as_written(asked: &Asked, days: &[OfDay], mine: &[Uuid], factor: Factor, plain: &str) -> String {
    let mut latest: Vec<OfDay> = asked.days.iter().rev().map(|(n, _)| days[*n]).collect();
    latest.sort_by_key(|(row, _)| angler(row, mine).is_some());
    let rows = latest.into_iter().flat_map(|(_, day)| day.rows.iter().rev());
    let mut values = rows.filter_map(|row| row.setup.get(&factor));
    values.find(|value| plain_value(factor, value) == plain).map_or_else(|| plain.to_owned(), Clone::clone)
}

/// The previous result for a question if none of its days has changed, otherwise a new one.
fn stand(
    asked: &Asked,
    placed: usize,
    kept: &mut [Kept],
    days: &[OfDay],
    mine: &[Uuid],
    before: &mut Vec<Standing>,
) -> Standing {
    let (first, which) = asked.days[0];
    let (water, of_day) = (days[first].1.water.clone().unwrap_or_default(), &kept[first].asked[which]);
    let factor = of_day.factor;
    let [a, b] = [&of_day.a, &of_day.b].map(|value| as_written(asked, days, mine, factor, value));
    // A question without a counting day has no share of the error yet. It is judged as the next in order.
    let place = asked.place.unwrap_or(placed + 1);
    let of: Vec<SessionRow> = asked.days.iter().map(|(n, _)| days[*n].0.clone()).collect();
    let same = |standing: &Standing| {
        let view = &standing.view;
        (&view.water, view.factor, &view.a, &view.b, view.found.place) == (&water, factor, &a, &b, place)
            && standing.of == of
    };
    if let Some(at) = before.iter().position(same) {
        return before.swap_remove(at);
    }
    let each: Vec<DayOfQuestion> =
        asked.days.iter().map(|(n, which)| kept[*n].made(*which, &days[*n].1.rows)).collect();
    let found = question(&each, place, SEED);
    let view = StandingQuestion { water, factor, a, b, found, more: None };
    Standing { view, of, days: each, more_asked: false }
}
