//! Which sessions are earlier ones, and which were on the same water: one rule for all that learns from them.

use super::journal::Journal;
use super::summaries::summary;
use restwater_log::{OpOrder, is_kit};
use restwater_session::Summary;
use restwater_store::StoreError;
use uuid::Uuid;

/// How many earlier sessions speak.
const EARLIER_SESSIONS: usize = 5;

/// Whether two sessions were on the same water. A water without a name is one of its own.
pub(super) fn same_water(one: Option<&str>, other: Option<&str>) -> bool {
    one.is_some() && one == other
}

/// The latest sessions that began before one in the order of the log, newest first; the latest of all without one. A session whose
/// beginning is undone is none.
pub(super) fn earlier(journal: &Journal, before: Option<OpOrder>) -> Result<Vec<Summary>, StoreError> {
    let (mut earlier, mut place) = (Vec::new(), before);
    while earlier.len() < EARLIER_SESSIONS
        && let Some(row) = journal.store().session_before(place)?
    {
        place = Some(row.began.order);
        if !is_kit(row.id) {
            earlier.extend(Some(summary(journal, &row)?).filter(|day| day.started_ms.is_some()));
        }
    }
    Ok(earlier)
}

/// The same, out of all days that have begun, newest first.
pub(super) fn earlier_of<'a>(days: &[(Uuid, &'a Summary)], session: Uuid) -> Vec<&'a Summary> {
    let from_it = days.iter().skip_while(|(id, _)| *id != session);
    from_it.skip(1).take(EARLIER_SESSIONS).map(|(_, day)| *day).collect()
}
