//! What the record says, in words: how little or how much is known comes with it.

use super::{AdviceTone, AdviceView, BankInput, BankState, Reading, SpotsReading, hours, left_open};
use crate::figures::whole;
use crate::leave_words::{bites_in_casts, earlier_words, goes_on_looking, guess_words, habit_words, leave};
use crate::leave_words::{leave_words, not_seen_words};
use crate::place::spot_words;
use crate::plan::due_words;
use crate::{Arg, Wording};
use restwater_log::Spot;
use restwater_session::Session;
use restwater_waits::{Advice, AdviceState, FittedTo};

/// A loss by habit below this share of the best rate is not worth a sentence.
const WORTH_SAYING: f64 = 0.05;

/// The words for the state of the chosen rod.
pub(super) fn advice(input: &BankInput, state: BankState) -> AdviceView {
    let advice = of_the_record(input, state);
    // In a session that is only to be ended no line of the plan is due.
    if state == BankState::Over { advice } else { with_plan(input, advice) }
}

/// The lines of the plan that are due come right after the headline, before what the headline rests on.
fn with_plan(input: &BankInput, mut advice: AdviceView) -> AdviceView {
    let leave_is_said = input.reading.is_some_and(|reading| reading.planned);
    let due = |session| due_words(input.words, session, input.now, leave_is_said);
    let due = input.session.map_or_else(Vec::new, due);
    let mut due = due.into_iter();
    if let Some(first) = due.next() {
        let counts = std::mem::replace(&mut advice.detail, first);
        advice.more.splice(0..0, due.chain([counts].into_iter().filter(|counts| !counts.is_empty())));
    }
    advice
}

fn of_the_record(input: &BankInput, state: BankState) -> AdviceView {
    let words = input.words;
    if let BankState::Ready | BankState::Landed | BankState::Over | BankState::Out = state
        && let Some(advice) = hours::advice(input, state)
    {
        return advice;
    }
    if state == BankState::Over
        && let Some(advice) = left_open::advice(input)
    {
        return advice;
    }
    match (state, input.reading) {
        (BankState::NoSession, _) => quiet(words.say("advice-none"), String::new()),
        (BankState::Away, _) => quiet(words.say("advice-away"), words.say("advice-away-detail")),
        (BankState::FishOn, _) => quiet(words.say("advice-fish-on"), words.say("advice-fish-on-detail")),
        (_, None) => quiet(words.say("advice-cant-tell"), words.say(prior(input))),
        (BankState::Ready | BankState::Landed | BankState::Over, Some(reading)) => {
            with_spots(input, with_habit(input, ready(input, reading), reading), reading)
        }
        (BankState::Out, Some(reading)) => {
            with_spots(input, with_habit(input, out(input, reading), reading), reading)
        }
    }
}

/// The habit that came before every bite is the first thing said after the counts, where it is earned.
fn with_habit(input: &BankInput, mut advice: AdviceView, reading: &Reading) -> AdviceView {
    if let Some(habit) = reading.habit {
        advice.more.insert(0, habit_words(input.words, habit));
    }
    advice
}

/// If the spots decide, what to do at the minute of the headline comes before all other sentences.
fn with_spots(input: &BankInput, mut advice: AdviceView, reading: &Reading) -> AdviceView {
    let said = input.session.zip(reading.spots.as_ref());
    advice.more.splice(0..0, said.map(|(session, spots)| spots_words(input, session, spots, reading)));
    advice
}

/// Where to cast instead, if nothing is out and a cast to this spot would be wound in before the next could be ready.
fn elsewhere<'r>(input: &BankInput, reading: &'r Reading) -> Option<&'r Spot> {
    let spots = reading.spots.as_ref().filter(|_| reading.waited_min.is_none())?;
    let too_short = f64::from(spots.leave.leave_min) <= reading.rhythm.turn_round_min.max(1.0);
    spots.move_to.as_ref().filter(|_| too_short && input.session.is_some())
}

/// "Then move to the gate, 30 yd. Nothing here in 38 min over 3 casts before this one. ..."
fn spots_words(input: &BankInput, session: &Session, spots: &SpotsReading, reading: &Reading) -> String {
    let words = input.words;
    let leave = &spots.leave;
    let place = spots.move_to.as_ref().map(|spot| spot_words(words, session, Some(spot)));
    let (casts, minutes) = leave.dry;
    let minutes = whole(minutes);
    let mut args = vec![
        ("casts", Arg::Count(casts as usize)),
        ("minutes", Arg::Text(&minutes)),
        ("here", Arg::Count(leave.here_of_100 as usize)),
        ("there", Arg::Count(leave.there_of_100 as usize)),
    ];
    args.extend(place.as_ref().map(|place| ("where", Arg::Text(place))));
    let id = match (&place, elsewhere(input, reading)) {
        (_, Some(_)) => "spots-elsewhere",
        (Some(_), None) => "spots-move",
        (None, None) => "spots-recast",
    };
    words.say_with(id, &args)
}

pub(super) fn quiet(headline: String, detail: String) -> AdviceView {
    AdviceView { headline, detail, more: Vec::new(), tone: AdviceTone::Quiet }
}

fn ready(input: &BankInput, reading: &Reading) -> AdviceView {
    let (words, advice) = (input.words, &reading.advice);
    if advice.state == AdviceState::CantTellYet {
        return AdviceView { tone: AdviceTone::Quiet, ..unknown(input, reading) };
    }
    let headline = match (input.session, elsewhere(input, reading)) {
        (Some(session), Some(spot)) => {
            let place = spot_words(words, session, Some(spot));
            words.say_with("advice-elsewhere", &[("where", Arg::Text(&place))])
        }
        _ => leave_words(words, advice),
    };
    AdviceView {
        headline,
        detail: counts(words, reading),
        more: more(words, reading),
        tone: AdviceTone::Quiet,
    }
}

fn out(input: &BankInput, reading: &Reading) -> AdviceView {
    let (words, advice) = (input.words, &reading.advice);
    if advice.state == AdviceState::CantTellYet {
        return unknown(input, reading);
    }
    let tone = tone(reading);
    let headline = if tone == AdviceTone::Past {
        leave(words, "advice-past", advice)
    } else {
        leave_words(words, advice)
    };
    AdviceView { headline, detail: counts(words, reading), more: more(words, reading), tone }
}

/// Where the minutes come from until the record has some of its own.
fn prior(input: &BankInput) -> &'static str {
    match input.club {
        None => "advice-cant-tell-prior",
        Some(FittedTo::ThisWater) => "advice-cant-tell-club",
        Some(FittedTo::AllWaters) => "advice-cant-tell-club-elsewhere",
    }
}

/// Under three bites: too little is known about this water, and the words say so. The figure is only something to try.
fn unknown(input: &BankInput, reading: &Reading) -> AdviceView {
    let (words, advice) = (input.words, &reading.advice);
    let past = reading.waited_min.is_some_and(|waited| is_past(advice, waited));
    let mut more = Vec::new();
    if !reading.planned {
        more.push(words.say(prior(input)));
        more.extend(longer(words, reading));
    }
    more.extend(not_seen_words(words, reading.unseen));
    let headline = match (reading.planned, past) {
        (false, false) => "advice-try",
        (false, true) => "advice-try-past",
        (true, false) => "advice-plan",
        (true, true) => "advice-plan-past",
    };
    AdviceView {
        headline: leave(words, headline, advice),
        detail: counts_by(words, reading, so_far(words, reading)),
        more,
        tone: AdviceTone::Unknown,
    }
}

/// Whether a cast that has waited so long is past the minute that the headline names.
fn is_past(advice: &Advice, waited_min: f64) -> bool {
    waited_min > f64::from(advice.leave_min)
}

fn tone(reading: &Reading) -> AdviceTone {
    let Some(waited) = reading.waited_min else { return AdviceTone::Quiet };
    let advice = &reading.advice;
    if is_past(advice, waited) {
        AdviceTone::Past
    } else if advice.hold_until_min.is_some_and(|hold| waited < hold) {
        AdviceTone::Hold
    } else {
        AdviceTone::Band
    }
}

fn counts(words: &Wording, reading: &Reading) -> String {
    counts_by(words, reading, bites_in_casts(words, reading.advice.bites, reading.casts + reading.unseen))
}

/// The same of a record that says nothing yet, where "so far" would be a promise.
fn so_far(words: &Wording, reading: &Reading) -> String {
    let (bites, casts) = (reading.advice.bites, reading.casts + reading.unseen);
    words.say_with("advice-so-far", &[("bites", Arg::Count(bites)), ("casts", Arg::Count(casts))])
}

fn counts_by(words: &Wording, reading: &Reading, counts: String) -> String {
    // A small screen has one line for this. Without the earlier sessions the counts would not bear the figure; that it was not
    // tried is said below too.
    let with = earlier_words(words, reading.earlier, reading.of_another);
    let not_tried = not_tried_words(words, reading).filter(|_| with.is_empty());
    std::iter::once(counts).chain(not_tried).chain(with).collect::<Vec<_>>().join(" ")
}

/// "Past 24 min: not tried.", if the minute of the headline is past every cast so far and past the one that is out.
fn not_tried_words(words: &Wording, reading: &Reading) -> Option<String> {
    let advice = &reading.advice;
    let ended = advice.longest_wait_min;
    let tried = libm::ceil(reading.waited_min.unwrap_or(0.0).max(ended));
    (ended > 0.0 && f64::from(advice.leave_min) > tried)
        .then(|| minutes(words, "advice-not-tried", "minutes", tried))
}

/// Further sentences, the most important first: why the figure is beyond what is near-best by the record, then the chances.
fn more(words: &Wording, reading: &Reading) -> Vec<String> {
    let advice = &reading.advice;
    let mut more = Vec::new();
    if goes_on_looking(advice) {
        more.push(leave(words, "advice-look", advice));
    } else if advice.state == AdviceState::LengthHardlyMatters {
        more.extend(advice.hold_until_min.map(|hold| minutes(words, "advice-as-good-from", "hold", hold)));
    }
    if let Some(on) = &reading.waiting {
        let percent = whole(100.0 * on.bite_in_five);
        more.push(words.say_with("advice-next-five", &[("percent", Arg::Text(&percent))]));
    }
    if let Some((from, to)) = advice.bite_window {
        let (from, to) = (whole(from), whole(to));
        more.push(words.say_with("advice-window", &[("from", Arg::Text(&from)), ("to", Arg::Text(&to))]));
    }
    more.extend(longer(words, reading));
    more.extend(not_seen_words(words, reading.unseen));
    more.extend(lost(words, advice));
    more.extend(guess_words(words, &reading.rhythm));
    more
}

/// If the figure is beyond every cast so far: that this is to find out what comes then, unless that was said of the figure.
fn longer(words: &Wording, reading: &Reading) -> Option<String> {
    let tells = reading.advice.state != AdviceState::CantTellYet;
    let said = tells && goes_on_looking(&reading.advice);
    not_tried_words(words, reading).filter(|_| !said).map(|_| words.say("advice-longer"))
}

fn lost(words: &Wording, advice: &Advice) -> Option<String> {
    let share = advice.lost_at_habit? / advice.best_rate_per_hour;
    let rate = advice.rate_at_habit?;
    (share >= WORTH_SAYING && rate > 0.0).then(|| {
        let percent = whole(100.0 * share);
        words.say_with("advice-lost", &[("percent", Arg::Text(&percent))])
    })
}

fn minutes(words: &Wording, id: &str, name: &str, minutes: f64) -> String {
    words.say_with(id, &[(name, Arg::Text(&whole(minutes)))])
}
