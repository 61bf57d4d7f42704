//! Which sessions are earlier, whose they are, and which were on the same water: one rule for everything that
//! learns from them.

use super::journal::Journal;
use super::summaries::summary;
use restwater_log::OpOrder;
use restwater_screen::Whose;
use restwater_session::{Session, Summary};
use restwater_store::{SessionRow, StoreError};
use uuid::Uuid;

/// How many earlier sessions that are evidence of waiting count.
pub(super) const EARLIER_SESSIONS: usize = 5;

/// An earlier session.
pub(super) struct Before {
    pub(super) day: Summary,
    /// Whether it is another angler's.
    pub(super) of_another: bool,
}

/// Whether an earlier session was on the peg of this one: the same water and the same peg, both named.
pub(super) fn same_peg(day: &Summary, session: &Session) -> bool {
    let here = (session.setup.water.as_deref(), session.setup.peg.as_deref());
    restwater_session::same_peg((day.water.as_deref(), day.peg.as_deref()), here)
}

/// The latest sessions that began earlier in the log than `before`, newest first; without it the latest of
/// all, back to the last that counts as evidence. `whose` says whose sessions count; `mine` are the angler's
/// phones. A session whose beginning is undone does not count.
pub(super) fn earlier(
    journal: &Journal,
    before: Option<OpOrder>,
    whose: Whose,
    mine: &[Uuid],
) -> Result<Vec<Before>, StoreError> {
    latest(journal, before, whose, mine, EARLIER_SESSIONS)
}

/// Whether there are earlier sessions of another angler.
pub(super) fn any_of_another(
    journal: &Journal,
    before: Option<OpOrder>,
    mine: &[Uuid],
) -> Result<bool, StoreError> {
    Ok(latest(journal, before, Whose::Them, mine, 1)?.iter().any(|before| before.day.tells()))
}

fn latest(
    journal: &Journal,
    before: Option<OpOrder>,
    whose: Whose,
    mine: &[Uuid],
    most: usize,
) -> Result<Vec<Before>, StoreError> {
    let store = journal.store();
    let mut walks: Vec<(Uuid, SessionRow)> = Vec::new();
    for device in store.devices()?.into_iter().filter(|device| whose.takes(mine.contains(device))) {
        walks.extend(store.session_of_before(device, before)?.map(|row| (device, row)));
    }
    // Days that say nothing about waits count only for the place of the peg and the classes of fish.
    let (mut earlier, mut telling) = (Vec::new(), 0);
    while telling < most
        && let Some(next) = (0..walks.len()).max_by_key(|&i| walks[i].1.began.order)
    {
        let (device, row) = walks.swap_remove(next);
        walks.extend(store.session_of_before(device, Some(row.began.order))?.map(|row| (device, row)));
        let day = summary(journal, &row)?;
        if day.started_ms.is_some() {
            telling += usize::from(day.tells());
            earlier.push(Before { day, of_another: !mine.contains(&device) });
        }
    }
    Ok(earlier)
}
