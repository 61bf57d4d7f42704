//! Which cell the next cast is sent to, given the ranking of all cells: the one that gives bites is not left without a reason.

use super::Stamp;
use super::cast::Cast;
use super::model::Session;
use super::water::swim_spot;
use restwater_log::RodNumber;
use restwater_swim::{CellId, NextSpot, Swim, WhereNext};

/// The cell for the next cast of a rod as of a moment: kept-back water whose time has come, the cell of its last cast if that is to be
/// fished again, otherwise the best cell.
pub fn next_cell(
    session: &Session,
    swim: &Swim,
    next: &WhereNext,
    rod: RodNumber,
    at: &Stamp,
) -> Option<CellId> {
    let best = || next.ranked.first().map(|n| n.cell);
    let go_in = next.go_in.map(|go_in| go_in.cell);
    go_in.or_else(|| same_again(session, swim, next, rod, at)).or_else(best)
}

/// The cell of the rod's last cast, if the latest bite of the session came there and nothing speaks for another cell: by the record
/// none is better, or as long as it can't compare them, at least every other cast there had a bite. To move costs the clip and the
/// eye for the spot. Not onto the bait of another rod.
fn same_again(
    session: &Session,
    swim: &Swim,
    next: &WhereNext,
    rod: RodNumber,
    at: &Stamp,
) -> Option<CellId> {
    let cell_of = |cast: &Cast| swim.cell_of(swim_spot(cast.spot.as_ref()?)?);
    let made = || session.casts.iter().filter(|cast| cast.start.at_ms <= at.at_ms);
    let bite_ms = |cast: &&Cast| cast.bite.as_ref().map(|(bite, _)| bite.at_ms).filter(|ms| *ms <= at.at_ms);
    let bitten = made().filter(|cast| bite_ms(cast).is_some()).max_by_key(bite_ms).and_then(cell_of)?;
    let last = made().rev().find(|cast| cast.rod == rod).and_then(cell_of).filter(|last| *last == bitten)?;
    let of_last = || made().filter(|cast| cell_of(cast) == Some(last));
    let is_over = |cast: &&Cast| cast.end.as_ref().is_some_and(|end| end.at.at_ms <= at.at_ms);
    if of_last().any(|cast| cast.rod != rod && !is_over(&cast)) {
        return None;
    }
    let here: &NextSpot = next.ranked.iter().find(|n| n.cell == last)?;
    let stays = if let (Some(here), Some(best)) = (here.rank, next.ranked.first()?.rank) {
        here >= best
    } else {
        let bites = of_last().filter(|cast| bite_ms(cast).is_some()).count();
        2 * bites >= of_last().filter(is_over).count()
    };
    stays.then_some(last)
}
