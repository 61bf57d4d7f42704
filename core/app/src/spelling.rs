//! One spelling for a bait or a colour: "Pink" typed on one day and "pink" chosen on another are one value, and so is a usual name
//! in another language of the phone. Otherwise the comparisons would take them for a change of tackle.

use super::App;
use restwater_compare::Factor;
use restwater_match_day::rules::same_name;
use restwater_screen::{TackleTap, same_usual_name};
use restwater_session::Session;

impl App {
    /// The tap with the bait or colour as the angler wrote it before, or as it is offered; other taps are returned as they are.
    pub(super) fn in_known_spelling(&mut self, tap: &TackleTap) -> TackleTap {
        match tap {
            TackleTap::Bait { name } => TackleTap::Bait { name: self.known(Factor::Bait, name) },
            TackleTap::Colour { name } => TackleTap::Colour { name: self.known(Factor::Colour, name) },
            other => other.clone(),
        }
    }

    fn known(&mut self, factor: Factor, name: &str) -> String {
        // Without the earlier days the session's own spellings still apply, and the tap is logged in any case.
        let _ = self.sessions.refresh(&self.journal);
        let is = |known: &&str| same_name(known, name) || same_usual_name(factor, known, name);
        let today = self.session().into_iter().flat_map(|session| of_session(session, factor));
        let mine = self.sessions.days(&self.mine).filter(|day| day.mine);
        let rows = mine.flat_map(|day| day.gist.rows.iter().rev());
        let earlier = rows.filter_map(|row| row.setup.get(&factor).map(String::as_str));
        let written = today.chain(earlier).find(is).map(str::to_owned);
        let offered = || {
            restwater_screen::usual_names(self.words, factor).into_iter().find(|usual| same_name(usual, name))
        };
        written.or_else(offered).unwrap_or_else(|| name.to_owned())
    }
}

/// The names that a session already uses, those on the rods now first.
fn of_session(session: &Session, factor: Factor) -> impl Iterator<Item = &str> {
    let rigs = session.rods.iter().map(|rod| &rod.rig);
    let rigs = rigs.chain(session.casts.iter().rev().map(|cast| &cast.rig));
    rigs.filter_map(move |rig| match factor {
        Factor::Bait => rig.bait.as_deref(),
        Factor::Colour => rig.colour.as_deref(),
        _ => None,
    })
}
