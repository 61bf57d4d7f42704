//! The table of landed fish, one row for each.

use super::cells::Cells;
use super::{ExchangeError, Origin};
use restwater_log::WeightUnit;
use restwater_session::figures::{fish_by_cast, grams, weight_parts};
use restwater_session::{EndCause, Session};
use std::io::Write;

pub(super) const HEADER: &[&str] = &[
    "session_id",
    "peg",
    "cast",
    "rod",
    "landed_time",
    "weight_g",
    "weight_known_by",
    "weight_entered",
    "weight_unit",
    "class",
    "bait",
    "net",
    "put_back",
    "entries",
];

pub(super) fn rows<W: Write>(
    cells: &mut Cells<W>,
    session: &Session,
    origin: Origin,
) -> Result<(), ExchangeError> {
    let said = fish_by_cast(session);
    for (n, cast) in session.casts.iter().enumerate() {
        let Some(end) = &cast.end else { continue };
        let EndCause::Landed { fish } = &end.cause else { continue };
        let (known_by, entered) = weight_parts(fish.as_ref());
        let said = said.get(&cast.op);
        cells.plain(&session.id)?;
        cells.words(session.setup.peg.as_deref())?;
        cells.plain(&(n + 1))?;
        cells.plain(&cast.rod)?;
        cells.time(Some(&end.at))?;
        cells.number(entered.map(|(unit, count)| grams(unit, count)), 1)?;
        cells.plain(known_by)?;
        cells.plain(&entered.map_or_else(String::new, |(_, count)| count.to_string()))?;
        cells.plain(entered.map_or("", |(unit, _)| match unit {
            WeightUnit::Drams => "dr",
            WeightUnit::Grams => "g",
        }))?;
        cells.words(said.and_then(|fish| fish.class.as_deref()))?;
        cells.words(cast.rig.bait.as_deref())?;
        // A fish that was put back is in no net, whichever was in use.
        let kept = said.filter(|fish| !fish.put_back);
        cells.words(kept.and_then(|fish| fish.net.as_deref()))?;
        cells.yes_or_no(said.is_some_and(|fish| fish.put_back))?;
        cells.plain(&origin.entries)?;
        cells.end_row()?;
    }
    Ok(())
}
