//! Mending: doubtful entries are corrected in a few taps each. Every tap is an entry of its own, so it can be
//! undone.

use super::error::within;
use super::{App, AppError};
use restwater_log::{EndSaid, Moment, Op, Payload};
use restwater_screen::{MendInput, MendTap, MendView, mend_view};
use restwater_session::{DoubtKind, NotNow, Session, Stamp, rhythm};
use restwater_waits::{BITE_EXTRA_GUESS_MIN, TURN_ROUND_GUESS_MIN};
use uuid::Uuid;

impl App {
    /// The Mend screen.
    pub(super) fn mend_screen(&self, now: &Moment) -> MendView {
        mend_view(&MendInput {
            words: &self.words,
            session: self.session(),
            ops: self.ops(),
            now: &self.on_line(now),
            open: self.mending,
        })
    }

    /// Opens a doubtful entry, or goes back to the list.
    pub(super) fn open_doubt(&mut self, op: Option<Uuid>) -> Result<String, AppError> {
        if let Some(op) = op {
            self.entry_to_mend(op)?;
        }
        self.mending = op;
        Ok(String::new())
    }

    /// Corrects one thing in a doubtful entry.
    pub(super) fn mend(&mut self, op: Uuid, tap: MendTap, at: &Moment) -> Result<String, AppError> {
        if tap == MendTap::WasAway {
            return self.was_away(op, at);
        }
        let (session, entry) = self.entry_to_mend(op)?;
        let (payload, amends) = match tap {
            MendTap::Confirm => (Payload::Confirmed, Some(op)),
            MendTap::End { end } => {
                (end_set(session, op, Some(end), None).ok_or(AppError::NotOfThatEntry)?, Some(op))
            }
            MendTap::After { minutes } => {
                let minutes = within("after", minutes, 0, 1_440)?;
                (end_set(session, op, None, Some(minutes)).ok_or(AppError::NotOfThatEntry)?, Some(op))
            }
            MendTap::Back { minutes } => {
                (Payload::TimeSet { back_s: within("back", minutes, 1, 1_440)? * 60 }, Some(op))
            }
            MendTap::Remove if restwater_screen::stands_alone(&entry.payload) => {
                (Payload::Removed { targets: vec![op] }, None)
            }
            MendTap::WasAway | MendTap::Remove => return Err(AppError::NotOfThatEntry),
            MendTap::AddCast => (forgotten(session, op).ok_or(AppError::NotOfThatEntry)?, None),
        };
        let session = entry.session;
        let kind = payload.kind().to_owned();
        self.write(session, payload, amends, at)?;
        self.mending = still_open(op, &kind);
        Ok(self.say_what("notice-logged", &kind))
    }

    /// Logs a break in the gap before a cast, from the end of the previous cast to a turn-round before the
    /// splash.
    fn was_away(&mut self, op: Uuid, at: &Moment) -> Result<String, AppError> {
        let now = self.on_line(at);
        let (session, _) = self.entry_to_mend(op)?;
        let (from, next) = gap_before(session, op).ok_or(AppError::NotOfThatEntry)?;
        if session.away().is_some() {
            return Err(NotNow::AwayAlready.into());
        }
        let turn_min = rhythm(session, TURN_ROUND_GUESS_MIN, BITE_EXTRA_GUESS_MIN).turn_round_min;
        let turn_s = ((turn_min * 60.0) as i64).min(next.ms_since(&from) / 3_000);
        let back_s = |stamp: &Stamp| u32::try_from(now.ms_since(stamp) / 1_000).ok();
        let (began_s, ended_s) = (back_s(&from), back_s(&next).and_then(|s| s.checked_add(turn_s as u32)));
        let (began_s, ended_s) = began_s.zip(ended_s).ok_or(AppError::NotOfThatEntry)?;
        let session = session.id;
        let [away, returned] = [self.journal.new_id(at), self.journal.new_id(at)];
        let entries = vec![
            (away, Payload::Away, None),
            (self.journal.new_id(at), Payload::TimeSet { back_s: began_s }, Some(away)),
            (returned, Payload::Returned, None),
            (self.journal.new_id(at), Payload::TimeSet { back_s: ended_s }, Some(returned)),
            // Times entered from memory won't get better, so the entry is confirmed at once.
            (self.journal.new_id(at), Payload::Confirmed, Some(away)),
            (self.journal.new_id(at), Payload::Confirmed, Some(returned)),
        ];
        let committed = self.journal.write_as(session, entries, at)?;
        self.after(&committed);
        self.mending = None;
        Ok(self.say_what("notice-logged", "away"))
    }

    /// The session shown and one of its entries.
    fn entry_to_mend(&self, op: Uuid) -> Result<(&Session, &Op), AppError> {
        let entry = self.ops().iter().find(|entry| entry.id == op);
        self.session().zip(entry).ok_or(AppError::NoSuchEntry)
    }
}

/// A settled entry leaves the screen; an end stays, since its minutes may be entered next.
fn still_open(op: Uuid, kind: &str) -> Option<Uuid> {
    Some(op).filter(|_| matches!(kind, "cast_end_set" | "time_set"))
}

/// The end of a cast with one thing corrected and the other as before.
fn end_set(session: &Session, op: Uuid, end: Option<EndSaid>, minutes: Option<u32>) -> Option<Payload> {
    let cast = session.casts.iter().find(|cast| cast.op == op)?;
    cast.end.as_ref()?;
    let end = end.unwrap_or_else(|| restwater_screen::end_said(cast).unwrap_or(EndSaid::WoundIn));
    let after_s = match minutes {
        Some(minutes) => Some(60 * minutes),
        None => restwater_screen::wait_to_mend_s(session, cast),
    };
    Some(Payload::CastEndSet { end, after_s })
}

/// The gap before a cast in which something may be missing: from the end of the previous cast to the splash,
/// without logged breaks.
fn gap_before(session: &Session, op: Uuid) -> Option<(Stamp, Stamp)> {
    let gapped = |d: &restwater_session::Doubt| d.op == op && d.kind == DoubtKind::LongGap;
    session.doubts.iter().find(|d| gapped(d))?;
    let next = session.casts.iter().find(|cast| cast.op == op)?;
    let before =
        session.casts.iter().filter(|cast| cast.rod == next.rod).take_while(|cast| cast.op != op).last()?;
    Some(session.without_a_break(&before.end.as_ref()?.at, &next.start))
}

/// A forgotten cast in the gap before another: it starts a turn-round after the previous cast and ends a
/// turn-round before the next.
fn forgotten(session: &Session, op: Uuid) -> Option<Payload> {
    let gapped = |d: &restwater_session::Doubt| d.op == op && d.kind == DoubtKind::LongGap;
    session.doubts.iter().find(|d| gapped(d))?;
    let next = session.casts.iter().find(|cast| cast.op == op)?;
    let before =
        session.casts.iter().filter(|cast| cast.rod == next.rod).take_while(|cast| cast.op != op).last()?;
    let end = &before.end.as_ref()?.at;
    let (since, until) = session.without_a_break(end, &next.start);
    let gap_s = until.ms_since(&since) / 1_000;
    let turn_min = rhythm(session, TURN_ROUND_GUESS_MIN, BITE_EXTRA_GUESS_MIN).turn_round_min;
    let turn_s = ((turn_min * 60.0) as i64).min(gap_s / 3);
    let seconds = |s: i64| u32::try_from(s).ok();
    Some(Payload::CastAdded {
        after: before.op,
        lag_s: seconds(since.ms_since(end) / 1_000 + turn_s)?,
        wait_s: seconds(gap_s - 2 * turn_s)?,
        end: EndSaid::WoundIn,
    })
}
