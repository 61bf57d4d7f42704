//! Mending in the evening: doubtful entries, each put right in a few taps. Every tap is an entry of its own, so
//! that it can be taken back.

use super::{App, AppError};
use restwater_log::{EndSaid, Moment, Op, Payload};
use restwater_screen::{MendInput, MendView, mend_view};
use restwater_session::{DoubtKind, Session, rhythm};
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

    /// One choice for a doubtful entry.
    pub(super) fn mend(
        &mut self,
        op: Uuid,
        field: &str,
        value: &str,
        at: &Moment,
    ) -> Result<String, AppError> {
        let (session, entry) = self.entry_to_mend(op)?;
        let unknown = || AppError::unknown(field, value);
        let (payload, amends) = match field {
            "stands" => (Payload::Confirmed, Some(op)),
            "end" => (end_set(session, op, Some(value), None).ok_or_else(unknown)?, Some(op)),
            "after" => (end_set(session, op, None, Some(value)).ok_or_else(unknown)?, Some(op)),
            "back" => {
                let minutes: u32 =
                    value.parse().ok().filter(|m| (1..=1_440).contains(m)).ok_or_else(unknown)?;
                (Payload::TimeSet { back_s: minutes * 60 }, Some(op))
            }
            "added" => (forgotten(session, op).ok_or_else(unknown)?, None),
            _ => return Err(unknown()),
        };
        let session = entry.session;
        let kind = payload.kind().to_owned();
        self.write(session, payload, amends, at)?;
        self.mending = still_open(op, &kind);
        Ok(self.say_what("notice-logged", &kind))
    }

    /// The session shown and one of its entries.
    fn entry_to_mend(&self, op: Uuid) -> Result<(&Session, &Op), AppError> {
        let entry = self.ops().iter().find(|entry| entry.id == op);
        self.session().zip(entry).ok_or(AppError::NoSuchEntry)
    }
}

/// What was settled goes off the glass; an end is left there, since its minutes may follow.
fn still_open(op: Uuid, kind: &str) -> Option<Uuid> {
    Some(op).filter(|_| matches!(kind, "cast_end_set" | "time_set"))
}

/// The end of a cast with one thing said anew, and the other as it stands.
fn end_set(session: &Session, op: Uuid, end: Option<&str>, minutes: Option<&str>) -> Option<Payload> {
    let cast = session.casts.iter().find(|cast| cast.op == op)?;
    cast.end.as_ref()?;
    let end = match end {
        Some("wound_in") => EndSaid::WoundIn,
        Some("landed") => EndSaid::Landed,
        Some("lost") => EndSaid::Lost,
        Some("missed") => EndSaid::Missed,
        Some(_) => return None,
        None => restwater_screen::end_said(cast).unwrap_or(EndSaid::WoundIn),
    };
    let after_s = match minutes {
        Some(text) => Some(60 * text.parse::<u32>().ok().filter(|m| *m <= 1_440)?),
        None => restwater_screen::wait_to_mend_s(session, cast),
    };
    Some(Payload::CastEndSet { end, after_s })
}

/// A cast in the gap before another: out a turn-round after the end before it, in a turn-round before the next.
fn forgotten(session: &Session, op: Uuid) -> Option<Payload> {
    let gapped = |d: &restwater_session::Doubt| d.op == op && d.kind == DoubtKind::LongGap;
    session.doubts.iter().find(|d| gapped(d))?;
    let next = session.casts.iter().find(|cast| cast.op == op)?;
    let before =
        session.casts.iter().filter(|cast| cast.rod == next.rod).take_while(|cast| cast.op != op).last()?;
    let gap_s = next.start.ms_since(&before.end.as_ref()?.at) / 1_000;
    let turn_min = rhythm(session, TURN_ROUND_GUESS_MIN, BITE_EXTRA_GUESS_MIN).turn_round_min;
    let turn_s = ((turn_min * 60.0) as i64).min(gap_s / 3);
    let seconds = |s: i64| u32::try_from(s).ok();
    Some(Payload::CastAdded {
        after: before.op,
        lag_s: seconds(turn_s)?,
        wait_s: seconds(gap_s - 2 * turn_s)?,
        end: EndSaid::WoundIn,
    })
}
