//! Summaries of all days, kept in memory. They are read from stored snapshots at once, and recomputed only
//! for days whose log has grown.

use super::AppError;
use super::earlier::EARLIER_SESSIONS;
use super::journal::{Beside, Journal};
use super::summaries::{SUMMARY_VERSION, rebuilt};
use restwater_log::is_kit;
use restwater_screen::{Day, Whose};
use restwater_session::Summary;
use restwater_store::{SessionRow, SnapshotRow};
use std::collections::HashMap;
use uuid::Uuid;

/// Up to this many snapshots are read one by one, more than that at once.
const FEW: usize = 8;

/// All days, newest first.
#[derive(Default)]
pub(super) struct Sessions {
    days: Vec<(SessionRow, Summary)>,
}

impl Sessions {
    /// Brings the list up to date with the log.
    pub(super) fn refresh(&mut self, journal: &Journal) -> Result<(), AppError> {
        let store = journal.store();
        let mut rows = store.sessions()?;
        rows.retain(|row| !is_kit(row.id));
        if rows.iter().eq(self.days.iter().map(|(row, _)| row)) {
            return Ok(());
        }
        let mut known: HashMap<Uuid, (SessionRow, Summary)> =
            self.days.drain(..).map(|day| (day.0.id, day)).collect();
        let now: HashMap<Uuid, &SessionRow> = rows.iter().map(|row| (row.id, row)).collect();
        known.retain(|id, day| now.get(id).is_some_and(|row| **row == day.0));
        let missing: Vec<&SessionRow> = rows.iter().filter(|row| !known.contains_key(&row.id)).collect();
        let kept: HashMap<Uuid, SnapshotRow> = if missing.len() > FEW {
            store.recent_snapshots(usize::MAX)?.into_iter().map(|kept| (kept.session, kept)).collect()
        } else {
            let each = missing.iter().map(|row| store.snapshot(row.id)).collect::<Result<Vec<_>, _>>()?;
            each.into_iter().flatten().map(|kept| (kept.session, kept)).collect()
        };
        for row in missing {
            if let Some(summary) = kept.get(&row.id).and_then(summary_of) {
                known.insert(row.id, (row.clone(), summary));
            }
        }
        let mut made: Vec<SnapshotRow> = Vec::new();
        for row in rows {
            let day = if let Some(day) = known.remove(&row.id) {
                day
            } else {
                let (summary, kept) = rebuilt(store, &row)?;
                // The summary of a day that is still running isn't stored, since it would be rewritten with
                // each tap.
                made.extend(Some(kept).filter(|_| summary.length_min.is_some()));
                (row, summary)
            };
            self.days.push(day);
        }
        if !made.is_empty() {
            journal.beside(Beside::Summaries, store.put_snapshots(&made));
        }
        Ok(())
    }

    /// The days that have begun, newest first, each with its angler; `mine` are the angler's phones.
    pub(super) fn days(&self, mine: &[Uuid]) -> impl Iterator<Item = Day<'_>> {
        let begun = self.days.iter().filter(|(_, day)| day.started_ms.is_some());
        begun.map(|(row, day)| Day { id: row.id, gist: day, mine: angler(row, mine).is_none() })
    }

    /// The sessions that were fished at that time or later: begun, ended or still open then. The row of a session has the time of its
    /// first entry, by whatever clock; the summary has the time of START, put right if that clock had been reset.
    pub(super) fn fished_from(&self, from_ms: i64, open: Option<Uuid>) -> Vec<Uuid> {
        let fished = |(row, day): &&(SessionRow, Summary)| {
            let begun = day.started_ms.unwrap_or(row.began.wall_ms);
            begun >= from_ms || day.ended_ms.is_some_and(|ended| ended >= from_ms) || Some(row.id) == open
        };
        self.days.iter().filter(fished).map(|(row, _)| row.id).collect()
    }

    /// The days that count for one session, without that session, newest first, each with whether it is
    /// another angler's. If only the own days count, a partner's session is compared with that partner's
    /// days.
    pub(super) fn days_for(&self, session: Uuid, whose: Whose, mine: &[Uuid]) -> Vec<(Uuid, &Summary, bool)> {
        let of = self.days.iter().find(|(row, _)| row.id == session).and_then(|(row, _)| angler(row, mine));
        let others = self.days.iter().filter(|(row, day)| row.id != session && day.started_ms.is_some());
        others
            .map(|(row, day)| (row.id, day, angler(row, mine) != of))
            .filter(|(_, _, of_another)| whose.takes(!of_another))
            .collect()
    }

    /// The days that have begun and count, newest first: those of the chosen anglers, and today's in any
    /// case.
    pub(super) fn that_count(
        &self,
        whose: Whose,
        mine: &[Uuid],
        today: Option<Uuid>,
    ) -> Vec<(&SessionRow, &Summary)> {
        let counts = |row: &SessionRow| Some(row.id) == today || whose.takes(angler(row, mine).is_none());
        let begun = self.days.iter().filter(|(row, day)| day.started_ms.is_some() && counts(row));
        begun.map(|(row, day)| (row, day)).collect()
    }

    /// The latest of those days that are earlier than the session and are evidence about waits.
    pub(super) fn earlier_of(&self, session: Uuid, whose: Whose, mine: &[Uuid]) -> Vec<(&Summary, bool)> {
        let from_it = self.days.iter().skip_while(|(row, _)| row.id != session);
        let before: Vec<Uuid> = from_it.skip(1).map(|(row, _)| row.id).collect();
        let days = self.days_for(session, whose, mine).into_iter();
        let days = days.filter(|(id, day, _)| before.contains(id) && day.tells());
        days.take(EARLIER_SESSIONS).map(|(_, day, of_another)| (day, of_another)).collect()
    }
}

/// The phone that began a session if it is another angler's; `None` for all phones of the angler.
pub(super) fn angler(row: &SessionRow, mine: &[Uuid]) -> Option<Uuid> {
    row.began.device.filter(|device| !mine.contains(device))
}

fn summary_of(kept: &SnapshotRow) -> Option<Summary> {
    (kept.version == SUMMARY_VERSION).then(|| serde_json::from_slice(&kept.body).ok()).flatten()
}
