//! A session opened for reading in the Book.

use super::{BookInput, Day, gist, waters_fished};
use crate::conditions_words;
use crate::date::session_day_words;
use crate::figures::{clock, whole};
use crate::leave_words::not_seen_words;
use crate::place::{rig_words, spot_words};
use crate::place_row::place_row;
use crate::{Action, Arg, BookTap, ChoiceRow, Leaf, LeafKey, LeafLine, TypedInto, Wording};
use restwater_session::{
    Cast, EndCause, Session, Summary, casts_by_telling, casts_ended, same_water, wait_of,
};

/// The page of an opened session.
pub(super) fn session(input: &BookInput, session: &Session) -> Leaf {
    let words = input.words;
    let mut leaf = Leaf::new(words, "book", "session");
    leaf.title = session_day_words(words, session);
    let of_another = input.opened_day.is_some_and(|day| !day.mine);
    if of_another {
        leaf.title = words.say_with("book-of-another", &[("day", Arg::Text(&leaf.title))]);
    }
    leaf.says = says(words, session);
    leaf.typing = Some(super::typing(words, "note", TypedInto::Note));
    // Only the partner corrects what a partner logged.
    if !of_another {
        leaf.rows = place_rows(input, session);
    }
    if session.conditions.iter().any(|at| at.conditions != restwater_sky::conditions::Conditions::default()) {
        let text = conditions_words(words, &session.conditions_now());
        leaf.lines.push(LeafLine::new(words.say("session-conditions"), text));
    }
    for plan in &session.next_time {
        leaf.lines.push(LeafLine::new(words.say("next-own"), plan.text.clone()));
    }
    leaf.lines.extend(input.opened_day.into_iter().flat_map(|day| side_by_side(input, &day)));
    leaf.lines.extend(day_lines(words, session));
    if !session.doubts.is_empty() && !of_another {
        leaf.notes.push(words.say_with("book-doubts", &[("count", Arg::Count(session.doubts.len()))]));
    }
    leaf.notes.extend(not_seen_words(words, casts_by_telling(session).1));
    if input.can_be_ended {
        let key = LeafKey::new("end-", words.say("key-end"), Action::Book { tap: BookTap::End });
        leaf.keys.push(LeafKey { sub: words.say("key-end-sub"), ..key });
    }
    let close = Action::Book { tap: BookTap::Close };
    let key = LeafKey::new("close-", words.say("session-close"), close);
    leaf.keys.push(LeafKey { sub: words.say("session-close-sub"), ..key });
    leaf.keys.extend(input.phone_is_mine.map(|mine| {
        let tap = BookTap::PhoneIsMine { mine: !mine };
        let id = if mine { "session-not-mine" } else { "session-mine" };
        let key = LeafKey::new("mine-", words.say(id), Action::Book { tap });
        LeafKey { sub: words.say(&format!("{id}-sub")), ..key }
    }));
    leaf
}

/// The peg and the water of the session, which can be corrected.
fn place_rows(input: &BookInput, session: &Session) -> Vec<ChoiceRow> {
    let (peg, water) = (session.setup.peg.as_deref(), session.setup.water.as_deref());
    let waters = waters_fished(input.days);
    let row = |tag, now, known, into| ChoiceRow {
        source: input.words.say("session-place-how"),
        ..place_row(input.words, tag, now, known, into)
    };
    vec![row("peg", peg, &[], TypedInto::SessionPeg), row("water", water, &waters, TypedInto::SessionWater)]
}

/// The pegs of one water that different anglers fished at the same time, as in two files of one match: the
/// opened peg first, then the others. Empty if there are no others.
fn side_by_side(input: &BookInput, day: &Day) -> Vec<LeafLine> {
    let words = input.words;
    let beside = |other: &&Day| other.mine != day.mine && at_one_time(day.gist, other.gist);
    let others: Vec<&Day> = input.days.iter().filter(beside).collect();
    if others.is_empty() {
        return Vec::new();
    }
    let line = |day: &Day| {
        let peg = day.gist.peg.as_ref().map(|peg| crate::peg_words(words, peg));
        let peg = peg.unwrap_or_else(|| words.say("peg-none"));
        let id = if day.mine { "session-my-peg" } else { "session-their-peg" };
        let landed = words.say_with("session-landed", &[("count", Arg::Count(day.gist.landed as usize))]);
        let mut line = LeafLine::new(words.say_with(id, &[("peg", Arg::Text(&peg))]), landed);
        line.detail = gist(words, day.gist);
        line
    };
    let heading = LeafLine::heading(words.say("session-side-by-side"));
    std::iter::once(heading).chain(std::iter::once(line(day))).chain(others.into_iter().map(line)).collect()
}

/// Whether two sessions were on one named water at the same time, breaks included. A session without an end may last a day.
fn at_one_time(one: &Summary, other: &Summary) -> bool {
    const OPEN_MS: i64 = 86_400_000;
    let span = |day: &Summary| {
        let from = day.started_ms?;
        Some((from, day.ended_ms.unwrap_or_else(|| from.saturating_add(OPEN_MS))))
    };
    same_water(one.water.as_deref(), other.water.as_deref())
        && span(one).zip(span(other)).is_some_and(|((from, to), (begun, over))| from <= over && begun <= to)
}

fn says(words: &Wording, session: &Session) -> String {
    let bites = session.casts.iter().filter(|cast| cast.bite.is_some()).count();
    let landed = session
        .casts
        .iter()
        .filter(|cast| cast.end.as_ref().is_some_and(|end| matches!(end.cause, EndCause::Landed { .. })));
    let from = session.started.as_ref().map(|at| clock(&at.shown)).unwrap_or_default();
    let to = session.ended.as_ref().map_or_else(|| words.say("book-open"), |at| clock(&at.shown));
    words.say_with(
        "session-says",
        &[
            ("from", Arg::Text(&from)),
            ("to", Arg::Text(&to)),
            ("bites", Arg::Count(bites)),
            ("casts", Arg::Count(casts_ended(session))),
            ("landed", Arg::Count(landed.count())),
        ],
    )
}

/// The casts and the notes, each where it was in the day.
fn day_lines(words: &Wording, session: &Session) -> Vec<LeafLine> {
    let casts = session.casts.iter().enumerate().map(|(place, cast)| {
        let before = session.casts[..place].iter().rev().find(|before| before.rod == cast.rod);
        (cast.start.at_ms, cast_line(words, session, cast, before))
    });
    let notes = session.notes.iter();
    let notes = notes.map(|note| (note.at.at_ms, LeafLine::new(clock(&note.at.shown), note.text.clone())));
    let mut lines: Vec<(i64, LeafLine)> = casts.chain(notes).collect();
    restwater_sorting::by_key(&mut lines, |(at_ms, _)| *at_ms);
    lines.into_iter().map(|(_, line)| line).collect()
}

/// A cast. Its rig is written only where it differs from that of the rod's cast before, so that a small screen has room for more
/// casts.
fn cast_line(words: &Wording, session: &Session, cast: &Cast, before: Option<&Cast>) -> LeafLine {
    let minutes = wait_of(session, cast).map(|wait| whole(wait.minutes()));
    let end = words.say(match cast.end.as_ref().map(|end| &end.cause) {
        None => "cast-out",
        Some(EndCause::Landed { .. }) => "cast-landed",
        Some(EndCause::Lost) => "cast-lost",
        Some(EndCause::Missed) => "cast-missed",
        Some(EndCause::OutcomeNotSeen) => "cast-outcome-not-seen",
        Some(EndCause::WoundIn) => "cast-wound-in",
        Some(EndCause::EndNotSeen) => "cast-end-not-seen",
        Some(EndCause::SessionEnded) => "cast-session-ended",
    });
    let start = clock(&cast.start.shown);
    let label = if session.rods.len() > 1 {
        let rod = cast.rod.to_string();
        words.say_with("cast-on-rod", &[("time", Arg::Text(&start)), ("rod", Arg::Text(&rod))])
    } else {
        start
    };
    // A cast whose end was not seen has no minutes.
    let after = minutes.as_ref().map(|minutes| [("minutes", Arg::Text(minutes)), ("end", Arg::Text(&end))]);
    let value = after.map_or_else(|| end.clone(), |args| words.say_with("cast-after", &args));
    let mut line = LeafLine::new(label, value);
    let spot = cast.spot.as_ref().map(|spot| spot_words(words, session, Some(spot)));
    let lost = cast.hooklength_lost.map(|_| words.say("cast-hooklength-lost"));
    let changed = before.map_or_else(restwater_log::Rig::default, |before| before.rig.clone()) != cast.rig;
    let rig = Some(rig_words(words, &cast.rig)).filter(|_| changed);
    let details: Vec<String> = [spot, rig, lost].into_iter().flatten().collect();
    line.detail = words.apart(&details);
    line
}

#[cfg(test)]
mod tests {
    use super::*;
    use restwater_session::fold;
    use restwater_session::written::{SESSION, Written};

    #[test]
    fn pegs_fished_at_the_same_time_are_side_by_side_despite_breaks_and_spellings() {
        const HOUR_MS: i64 = 3_600_000;
        let blank = Summary::of(&fold(SESSION, &Written::new(1).ops));
        let day = |water: &str, from: i64, to: Option<i64>, hours: f64| Summary {
            water: Some(water.to_owned()),
            started_ms: Some(from * HOUR_MS),
            ended_ms: to.map(|to| to * HOUR_MS),
            length_min: Some(60.0 * hours),
            ..blank.clone()
        };
        // Fourteen hours on the bank, five of them away from the rods.
        let mine = day("Alder pool", 6, Some(20), 9.0);
        assert!(at_one_time(&mine, &day("Alder Pool", 16, Some(20), 4.0)));
        assert!(!at_one_time(&mine, &day("Alder pool", 21, Some(23), 2.0)));
        assert!(!at_one_time(&mine, &day("Mill pool", 16, Some(20), 4.0)));
        assert!(at_one_time(&day("Alder pool", 0, None, 0.0), &mine), "still open");
    }
}
