//! The Book: sessions, catch per hour, comparing two sets, what to do next time, the light at the peg.

mod filter;
mod light;
mod next;
mod peg;
mod rates;
mod session;
mod sets;
mod waters;

pub use filter::SetFilter;
pub use light::LightInput;
pub use next::NextInput;
pub use peg::PegOf;
pub use waters::waters_fished;

use super::date::day_words;
use super::date::hours_minutes;
use super::{
    Action, Arg, BookSet, BookTap, KeyTap, Leaf, LeafKey, LeavesView, StandingQuestion, TypedField,
    TypedInto, Which, Whose, Wording, questions,
};
use restwater_compare::sets::DayTally;
use restwater_log::Moment;
use restwater_session::{Session, Summary};
use uuid::Uuid;

/// Level of every interval in the Book.
pub(crate) const LEVEL_PERCENT: usize = 95;

/// A day of the Book.
#[derive(Debug, Clone, Copy)]
pub struct Day<'a> {
    /// Its session.
    pub id: Uuid,
    /// Its summary.
    pub gist: &'a Summary,
    /// Whether it is the angler's own: begun on one of the angler's phones.
    pub mine: bool,
}

/// What the Book is made from.
pub struct BookInput<'a> {
    /// All days that have begun, newest first.
    pub days: &'a [Day<'a>],
    /// Which of them are shown.
    pub filter: &'a SetFilter,
    /// The first set of the comparison.
    pub a: &'a SetFilter,
    /// The second.
    pub b: &'a SetFilter,
    /// A session opened to read.
    pub opened: Option<&'a Session>,
    /// The opened session as a day of the Book.
    pub opened_day: Option<Day<'a>>,
    /// If another phone began the opened session: whether the angler has claimed that phone.
    pub phone_is_mine: Option<bool>,
    /// Whether the opened session was left open on another phone of the angler's and can be ended here.
    pub can_be_ended: bool,
    /// The input for what to do next time.
    pub next: &'a NextInput<'a>,
    /// The peg whose past sessions are listed, if water and peg have names.
    pub peg: Option<&'a PegOf>,
    /// Questions over days, latest first.
    pub standing: &'a [StandingQuestion],
    /// The place of the peg, and when.
    pub light: &'a LightInput,
    /// The sentences.
    pub words: &'a Wording,
}

/// Makes the Book.
pub fn book(input: &BookInput) -> LeavesView {
    let words = input.words;
    let shown: Vec<Day> = input.days.iter().filter(|day| input.filter.takes(day)).copied().collect();
    let [rates, rates_figures] = rates::rates(input, &shown);
    let sets = sets::sets(input);
    let next = next::next(words, input.next);
    let light = light::light(words, input.light);
    let peg = peg::peg(input);
    let asked = questions::leaves(words, input.standing);
    let mut filter = Leaf::new(words, "book", "filter");
    filter.says = says(input, &shown);
    filter.rows = input.filter.rows(words, BookSet::Shown, input.days);
    let opened = input.opened.map(|session| session::session(input, session));
    let mut first = Leaf::new(words, "book", "sessions");
    first.says = says(input, &shown);
    first.list = list(input, &shown, opened.as_ref());
    if input.days.is_empty() {
        first.list.push(LeafKey::start(words));
    }
    let opener = |leaf: &Leaf, sub: &str| LeafKey {
        label: words.say(&format!("book-key-{}", leaf.id)),
        ..leaf.opener(words.say(sub))
    };
    let which = LeafKey {
        label: words.say("book-key-filter"),
        ..filter.opener(input.filter.words(words, input.days))
    };
    first.keys = vec![
        which,
        opener(&rates, "book-key-rates-sub"),
        opener(&sets, "book-key-sets-sub"),
        opener(&next, "book-key-next-sub"),
        opener(&peg, "book-key-peg-sub"),
        opener(&light, "book-key-light-sub"),
    ];
    first.keys.extend(asked.iter().map(|[leaf, _]| opener(leaf, "book-key-questions-sub")));
    first.keys.extend(other_screens(words));
    // A job that the page names has its key in the first place.
    let doubts = doubts(&shown);
    if let Some(at) = first.keys.iter().position(|key| key.tag == "screen-mend").filter(|_| doubts > 0) {
        let mend = first.keys.remove(at);
        let sub = words.say_with("book-open-mend-count", &[("count", Arg::Count(doubts))]);
        first.keys.insert(0, LeafKey { sub, ..mend });
    }
    let rest = [filter, rates, rates_figures, sets, next, peg, light]
        .into_iter()
        .chain(asked.into_iter().flatten())
        .chain(opened);
    LeavesView { leaves: std::iter::once(first).chain(rest).collect() }
}

/// The sessions shown, each as a key that opens it. The open one is highlighted and leads to its page; it
/// comes first if the filter leaves it out.
fn list(input: &BookInput, shown: &[Day], opened: Option<&Leaf>) -> Vec<LeafKey> {
    let words = input.words;
    let open = input.opened.map(|session| session.id);
    let to_page = |sub: String| opened.map(|leaf| LeafKey { solid: true, ..leaf.opener(sub) });
    let key = |day: &Day| {
        let gist = gist(words, day.gist);
        if open == Some(day.id) {
            return to_page(gist);
        }
        let open = Action::Book { tap: BookTap::Open { session: day.id } };
        let key = LeafKey::new(format!("open-{}", day.id), whose_day_words(words, day), open);
        Some(LeafKey { sub: gist, ..key })
    };
    let left_out = open.filter(|open| shown.iter().all(|day| day.id != *open));
    let apart = left_out.and_then(|_| to_page(words.say("book-opened")));
    apart.into_iter().chain(shown.iter().filter_map(key)).collect()
}

/// A text typed into the record.
fn typing(words: &Wording, tag: &str, into: TypedInto) -> TypedField {
    TypedField::sent(words, tag, words.say(&format!("book-type-{tag}")), into)
}

/// The keys that open the Files and Mend screens.
fn other_screens(words: &Wording) -> Vec<LeafKey> {
    [("files", Which::Files), ("mend", Which::Mend)]
        .map(|(name, which)| {
            let label = words.say(&format!("book-open-{name}"));
            let key = LeafKey::new(format!("screen-{name}"), label, KeyTap::Open { which });
            LeafKey { sub: words.say(&format!("book-open-{name}-sub")), ..key }
        })
        .to_vec()
}

fn says(input: &BookInput, shown: &[Day]) -> String {
    let words = input.words;
    if input.days.is_empty() {
        return words.say("book-none");
    }
    let doubts = doubts(shown);
    let counts = [("shown", Arg::Count(shown.len())), ("all", Arg::Count(input.days.len()))];
    let mut says = words.say_with("book-says", &counts);
    let theirs = input.days.iter().filter(|day| !day.mine).count();
    if theirs > 0 && input.filter.whose == Whose::Me {
        says = words.sentences(&[&says, &words.say_with("book-theirs", &[("count", Arg::Count(theirs))])]);
    }
    if doubts == 0 {
        return says;
    }
    words.sentences(&[&says, &words.say_with("book-doubts", &[("count", Arg::Count(doubts))])])
}

/// Doubtful entries of these sessions. Only the partner corrects what a partner logged.
fn doubts(shown: &[Day]) -> usize {
    shown.iter().filter(|day| day.mine).map(|day| day.gist.doubts as usize).sum()
}

/// "17 Jan 2026, Alder Pool, peg 14", with whose it is if it is another angler's.
pub(crate) fn whose_day_words(words: &Wording, day: &Day) -> String {
    let label = day_words(words, day.gist);
    if day.mine { label } else { words.say_with("book-of-another", &[("day", Arg::Text(&label))]) }
}

/// "7 bites in 15 casts, 5 h 05 fished".
fn gist(words: &Wording, day: &Summary) -> String {
    let bites = Arg::Count(day.bites() as usize);
    let length = match day.length_min.map(|min| hours_minutes(words, (min * 60_000.0) as i64)) {
        Some(length) => words.say_with("book-fished", &[("length", Arg::Text(&length))]),
        None => words.say("book-open"),
    };
    let args = [("bites", bites), ("casts", Arg::Count(day.made as usize)), ("length", Arg::Text(&length))];
    words.say_with("book-gist", &args)
}

/// The counts of a day for the comparisons.
pub(crate) fn tally(day: &Summary) -> DayTally {
    DayTally {
        casts: day.casts as usize,
        bites: day.bites(),
        hours_out: day.out_min() / 60.0,
        landed: day.landed.into(),
        hours: day.length_min.map(|min| min / 60.0),
    }
}

/// Local midnight of a moment, UTC ms.
pub fn midnight(now: &Moment) -> i64 {
    const DAY_MS: i64 = 86_400_000;
    let local = now.local_ms();
    local - local.rem_euclid(DAY_MS) - i64::from(now.offset_min) * 60_000
}
