//! One sentence on how long to leave a cast, and one on wind-ins that came before every bite. Every
//! screen uses the same words.

use super::figures::whole;
use super::{Arg, Wording};
use restwater_session::{HabitBeforeBites, Rhythm};
use restwater_waits::{Advice, AdviceState, EARLY_BITES};

/// What to do, ending with the one figure that the advice names: the minute to recast by.
pub(crate) fn leave_words(words: &Wording, advice: &Advice) -> String {
    let hold = whole(advice.hold_until_min.unwrap_or(0.0));
    match advice.state {
        AdviceState::CantTellYet => leave(words, "advice-try", advice),
        AdviceState::LengthHardlyMatters => leave(words, "advice-length-hardly", advice),
        AdviceState::NoReasonToWindIn => leave(words, "advice-no-reason-to-wind-in", advice),
        AdviceState::HoldUntilRecastBy if advice.is_early => leave(words, "advice-try-about", advice),
        AdviceState::HoldUntilRecastBy => {
            let recast = advice.leave_min.to_string();
            if hold == recast {
                return leave(words, "advice-recast-by", advice);
            }
            words
                .say_with("advice-hold-recast", &[("hold", Arg::Text(&hold)), ("recast", Arg::Text(&recast))])
        }
    }
}

pub(crate) fn leave(words: &Wording, id: &str, advice: &Advice) -> String {
    words.say_with(id, &[("leave", Arg::Text(&advice.leave_min.to_string()))])
}

/// "By the casts so far, 19 to 23 min is near-best. Leaving a cast longer is to find out what comes later.", if the minute to
/// recast by is past the band that the picture draws.
pub(crate) fn near_best_words(words: &Wording, advice: &Advice) -> Option<String> {
    let (hold, recast) = advice.hold_until_min.zip(advice.recast_by_min)?;
    let (hold, recast) = (whole(hold), whole(recast));
    let args = [("hold", Arg::Text(&hold)), ("recast", Arg::Text(&recast))];
    (goes_on_looking(advice) && !advice.is_early).then(|| words.say_with("waits-near-best", &args))
}

/// Whether the minute to recast by is past what is near-best by the record, to find out what comes later.
pub(crate) fn goes_on_looking(advice: &Advice) -> bool {
    advice.recast_by_min.is_some_and(|until| f64::from(advice.leave_min) > until + 1.0)
}

/// "3 bites in 5 casts so far."
pub(crate) fn bites_in_casts(words: &Wording, bites: usize, casts: usize) -> String {
    let is_early = (1..EARLY_BITES as usize).contains(&bites);
    let id = if is_early { "advice-early" } else { "advice-so-far" };
    words.say_with(id, &[("bites", Arg::Count(bites)), ("casts", Arg::Count(casts))])
}

/// Counts of a day, where a figure also rests on earlier sessions: the angler's own and another's.
pub(crate) fn earlier_words(words: &Wording, own: usize, of_another: usize) -> Vec<String> {
    let with = [("advice-earlier", own), ("whose-counted", of_another)];
    let with = with.into_iter().filter(|(_, count)| *count > 0);
    with.map(|(id, count)| words.say_with(id, &[("count", Arg::Count(count))])).collect()
}

/// The band of the pictures, in minutes: from when to hold until the minute of the headline. `None` while the record says too little
/// for a band.
pub(crate) fn band(advice: &Advice) -> Option<(f64, f64)> {
    let to = f64::from(advice.leave_min);
    let known = advice.state != AdviceState::CantTellYet && !advice.is_early;
    advice.hold_until_min.filter(|_| known).map(|hold| (hold.min(to), to))
}

/// "Assumes 2 min between casts until three are timed.", or `None` once they are.
pub(crate) fn guess_words(words: &Wording, rhythm: &Rhythm) -> Option<String> {
    let minutes = whole(rhythm.turn_round_min);
    (rhythm.turn_rounds == 0).then(|| words.say_with("advice-guess", &[("minutes", Arg::Text(&minutes))]))
}

/// "The ends of 2 casts were not seen: their waits don't count.", or `None` if each was.
pub(crate) fn not_seen_words(words: &Wording, casts: usize) -> Option<String> {
    (casts > 0).then(|| words.say_with("casts-not-seen", &[("count", Arg::Count(casts))]))
}

/// "4 of your 7 wind-ins came by 12 min. Every bite this session came after 14 min."
pub(crate) fn habit_words(words: &Wording, habit: HabitBeforeBites) -> String {
    habit_said(words, "habit-before-bites", habit)
}

/// The same on the card of the day, whose heading says which session it is.
pub(crate) fn habit_of_the_day_words(words: &Wording, habit: HabitBeforeBites) -> String {
    habit_said(words, "habit-of-the-day", habit)
}

fn habit_said(words: &Wording, id: &str, habit: HabitBeforeBites) -> String {
    let HabitBeforeBites { early, all, by_min, after_min } = habit;
    let count = |count: u32| Arg::Count(count as usize);
    let wound_in = [("early", count(early)), ("all", count(all)), ("by", count(by_min))];
    let wound_in = words.say_with(if early == all { "habit-all" } else { "habit-some" }, &wound_in);
    words.sentences(&[&wound_in, &words.say_with(id, &[("after", count(after_min))])])
}
