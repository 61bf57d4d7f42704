//! Where the ring of the next cast is, and whether it says to stay.

use super::App;
use restwater_session::{Session, Stamp, is_after_all_out, on_swim, planned_spot};
use restwater_swim::{CellId, Swim, WhereNext};

/// Where the next cast of the chosen rod could go.
pub(super) struct NextCast {
    pub(super) ranked: WhereNext,
    /// Where the Bank says to cast after the one that is out, if the spots decide how long that is left.
    pub(super) after_this: Option<CellId>,
    /// Where other rods have baits out.
    pub(super) baits: Vec<CellId>,
}

impl App {
    /// The cell with the ring: the one chosen for this rod's next cast, otherwise before the first cast the one planned, otherwise
    /// where the Bank says, otherwise kept-back water whose time has come, otherwise the best other cell without a bait of another
    /// rod. After all-out there is no next cast.
    pub(super) fn ring(&self, session: &Session, swim: &Swim, next: &NextCast, at: &Stamp) -> Option<CellId> {
        if is_after_all_out(session, at) {
            return None;
        }
        let sent = session.rod(self.chosen).and_then(|rod| rod.spot.as_ref());
        let last = session.casts.iter().rev().find(|cast| cast.rod == self.chosen);
        let sent = sent.filter(|spot| last.is_none_or(|cast| cast.spot.as_ref() != Some(*spot)));
        let cell = sent.and_then(|spot| swim.cell_of(on_swim(spot)));
        let planned = || planned_spot(session).and_then(|spot| swim.cell_of(on_swim(&spot)));
        let cell = cell.or_else(planned);
        let is_free = |cell: &CellId| !next.baits.contains(cell);
        let go_in = next.ranked.go_in.map(|go_in| go_in.cell).filter(is_free);
        let best = || next.ranked.ranked.iter().map(|n| n.cell).find(is_free);
        cell.or(next.after_this).or(go_in).or_else(best)
    }

    /// The spot of the rod's last cast, if the ring is in its cell: then the next cast goes to the same spot. Not where another spot
    /// was chosen for it since, and not in kept-back water into which it is time to go.
    pub(super) fn stay<'a>(
        &self,
        session: &'a Session,
        swim: &Swim,
        next: &NextCast,
        ring: Option<CellId>,
    ) -> Option<&'a restwater_log::Spot> {
        let last = session.casts.iter().rev().find(|cast| cast.rod == self.chosen)?.spot.as_ref()?;
        let sent = session.rod(self.chosen).and_then(|rod| rod.spot.as_ref());
        let goes_in = next.ranked.go_in.is_some_and(|go_in| Some(go_in.cell) == ring);
        let stays = ring.is_some() && swim.cell_of(on_swim(last)) == ring;
        (stays && !goes_in && sent.is_none_or(|sent| sent == last)).then_some(last)
    }
}
