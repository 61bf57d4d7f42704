//! One spelling for a bait or a colour: "Pink" typed on one day and "pink" chosen on another are one value, and so is a usual name
//! in another language of the phone. Otherwise the comparisons would take them for a change of tackle. What is logged takes the
//! spelling that is known. What is in the log already stays as it is, since earlier versions and other phones spelled it
//! otherwise: it is made alike where it is read.

use super::App;
use restwater_compare::{CastRow, Factor};
use restwater_match_day::rules::same_name;
use restwater_screen::{TackleTap, plain_value, same_value};
use restwater_session::{Session, rows_of};

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
        let is = |known: &&str| same_value(factor, known, name);
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

/// The rows of a session for its changes. A value that has several spellings has the one that came first.
pub(super) fn rows_spelled_alike(session: &Session) -> Vec<CastRow> {
    let mut rows = rows_of(session);
    let mut first: Vec<(Factor, String)> = Vec::new();
    for (factor, value) in rows.iter_mut().flat_map(|row| &mut row.setup) {
        match first.iter().find(|(known, spelled)| known == factor && same_value(*factor, spelled, value)) {
            Some((_, spelled)) if spelled != value => value.clone_from(spelled),
            Some(_) => {}
            None => first.push((*factor, value.clone())),
        }
    }
    rows
}

/// The rows of a day for questions over days, with every value as it is compared.
pub(super) fn plain_rows(rows: &[CastRow]) -> Vec<CastRow> {
    let mut rows = rows.to_vec();
    for (factor, value) in rows.iter_mut().flat_map(|row| &mut row.setup) {
        *value = plain_value(*factor, value);
    }
    rows
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
