//! The Mend screen: doubtful entries, each corrected in a few taps. Every tap is an entry of its own, so that it can be undone.
//! It is about the session opened in the Book, otherwise about the one that the screens show.

use super::error::within;
use super::recent::Loaded;
use super::{App, AppError};
use restwater_log::{EndSaid, Moment, Payload};
use restwater_screen as screen;
use restwater_screen::{MendInput, MendTap, MendView, mend_view};
use restwater_session::{Cast, NotNow, Session, Stamp, gap_before, rhythm, timed, wait_end_ms};
use restwater_waits::{BITE_EXTRA_GUESS_MIN, TURN_ROUND_GUESS_MIN};
use uuid::Uuid;

impl App {
    /// The Mend screen.
    pub(super) fn mend_screen(&mut self, now: &Moment) -> Result<MendView, AppError> {
        let of = self.session_to_mend()?;
        let current = self.session().map(|session| session.id);
        let loaded = of.and_then(|id| self.journal.recent().of(id));
        let device = self.journal.store().device();
        Ok(mend_view(&MendInput {
            words: self.words,
            session: loaded.map(|loaded| &loaded.session),
            earlier: of != current,
            ops: loaded.map_or(&[], |loaded| &loaded.ops),
            now: &match loaded {
                Some(loaded) => loaded.session.time_line.place(device, now),
                None => self.on_line(now),
            },
            open: self.mending,
        }))
    }

    /// The session opened in the Book if it is the angler's own, otherwise the one that the screens show. Only the partner
    /// corrects what a partner logged.
    fn session_to_mend(&mut self) -> Result<Option<Uuid>, AppError> {
        let opened = self.book.opened.as_ref().map(|session| session.id);
        match opened {
            Some(id) if !self.is_of_another(id)? => {
                self.journal.bring(id)?;
                Ok(Some(id))
            }
            _ => Ok(self.session().map(|session| session.id)),
        }
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
        if let MendTap::Back { minutes } = tap {
            return self.mend_back(op, minutes, at);
        }
        let Loaded { session, ops, .. } = self.entry_to_mend(op)?;
        let (payload, amends) = match tap {
            MendTap::Confirm => (Payload::Confirmed, Some(op)),
            MendTap::End { end } => {
                (end_set(session, op, Some(end), None).ok_or(AppError::NotOfThatEntry)?, Some(op))
            }
            MendTap::After { minutes } => {
                let minutes = within("after", minutes, 0, 1_440)?;
                (end_set(session, op, None, Some(minutes)).ok_or(AppError::NotOfThatEntry)?, Some(op))
            }
            MendTap::Remove if ops.iter().any(|o| o.id == op && screen::stands_alone(&o.payload)) => {
                (Payload::Removed { targets: vec![op] }, None)
            }
            MendTap::WasAway | MendTap::Back { .. } | MendTap::Remove => {
                return Err(AppError::NotOfThatEntry);
            }
            MendTap::AddCast => (forgotten(session, op).ok_or(AppError::NotOfThatEntry)?, None),
        };
        let session = session.id;
        self.mended(session, op, (payload, amends), at)
    }

    /// Sets the time of an entry back from its tap.
    fn mend_back(&mut self, op: Uuid, minutes: u32, at: &Moment) -> Result<String, AppError> {
        let Loaded { session, ops, .. } = self.entry_to_mend(op)?;
        let payload = ops.iter().find(|logged| logged.id == op).map(|logged| &logged.payload);
        let most = payload.map_or(0, screen::longest_back_min);
        let back_s = within("back", minutes, 1, most)? * 60;
        let (session, entry) = (session.id, timed(session, ops, op));
        if let Some(entry) = entry {
            self.check_back(session, &entry, back_s)?;
        }
        self.mended(session, op, (Payload::TimeSet { back_s }, Some(op)), at)
    }

    fn mended(
        &mut self,
        session: Uuid,
        op: Uuid,
        (payload, amends): (Payload, Option<Uuid>),
        at: &Moment,
    ) -> Result<String, AppError> {
        let kind = payload.kind().to_owned();
        self.write(session, payload, amends, at)?;
        self.mending = still_open(op, &kind);
        Ok(self.say_what("notice-logged", &kind))
    }

    /// A break in the gap before a cast: from where the rods were in, up to a turn-round before one went out again.
    fn was_away(&mut self, op: Uuid, at: &Moment) -> Result<String, AppError> {
        let device = self.journal.store().device();
        let Loaded { session, .. } = self.entry_to_mend(op)?;
        let now = session.time_line.place(device, at);
        let gap = gap_before(session, op).ok_or(AppError::NotOfThatEntry)?;
        if session.away().is_some() {
            return Err(NotNow::AwayAlready.into());
        }
        let (from, next) = gap.of_a_break(session).map_err(NotNow::RodWasOut)?;
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

    /// The session to correct, if the entry belongs to it.
    fn entry_to_mend(&mut self, op: Uuid) -> Result<&Loaded, AppError> {
        let of = self.session_to_mend()?;
        let loaded = of.and_then(|id| self.journal.recent().of(id));
        loaded.filter(|loaded| loaded.ops.iter().any(|o| o.id == op)).ok_or(AppError::NoSuchEntry)
    }
}

/// An entry that is settled is closed; the end of a cast stays open, since its minutes may follow.
fn still_open(op: Uuid, kind: &str) -> Option<Uuid> {
    Some(op).filter(|_| matches!(kind, "cast_end_set" | "time_set"))
}

/// The end of a cast with one of kind and minutes corrected and the other unchanged.
fn end_set(session: &Session, op: Uuid, end: Option<EndSaid>, minutes: Option<u32>) -> Option<Payload> {
    let cast = session.casts.iter().find(|cast| cast.op == op)?;
    cast.end.as_ref()?;
    let end = end.unwrap_or_else(|| screen::end_said(cast).unwrap_or(EndSaid::WoundIn));
    let after_s = match minutes {
        Some(minutes) => Some(60 * minutes),
        None => remembered_s(session, cast, end),
    };
    Some(Payload::CastEndSet { end, after_s })
}

/// The seconds to enter with the kind of an end. A time that was tapped is better than any figure, so it stays.
fn remembered_s(session: &Session, cast: &Cast, end: EndSaid) -> Option<u32> {
    let tapped = |at: &Stamp| at.shown.approx_s == 0 && wait_end_ms(session, cast) == Some(at.at_ms);
    let stays = !cast.end_not_seen() && cast.wait_end().is_some_and(tapped);
    if stays { None } else { screen::wait_to_mend_s(session, cast, end) }
}

/// A cast in the gap before another: out a turn-round after what came before it, in a turn-round before what comes next.
fn forgotten(session: &Session, op: Uuid) -> Option<Payload> {
    let gap = gap_before(session, op)?;
    let (since, until) = gap.of_a_cast(session);
    let gap_s = until.ms_since(&since) / 1_000;
    let turn_min = rhythm(session, TURN_ROUND_GUESS_MIN, BITE_EXTRA_GUESS_MIN).turn_round_min;
    let turn_s = ((turn_min * 60.0) as i64).min(gap_s / 3);
    let seconds = |s: i64| u32::try_from(s).ok();
    Some(Payload::CastAdded {
        after: gap.before.op,
        lag_s: seconds(since.ms_since(gap.end) / 1_000 + turn_s)?,
        wait_s: seconds(gap_s - 2 * turn_s)?,
        end: EndSaid::WoundIn,
    })
}
