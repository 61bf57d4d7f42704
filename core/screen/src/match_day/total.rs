//! The angler's weight in all: what the scales showed of the nets that were weighed in, the own count of the others.

use super::weights::{estimate, finest, short};
use crate::Wording;
use restwater_session::own_count::OwnCount;
use restwater_session::{MatchSetup, Session, at_scales, is_weighed_in};

/// Where the weight in all comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum TotalFrom {
    /// No net was weighed in.
    OwnCount,
    /// Some nets were weighed in, and others hold fish.
    Both,
    /// Every net that holds fish was weighed in.
    Scales,
}

impl TotalFrom {
    /// Where it comes from now.
    pub(crate) fn of(session: &Session, own: &OwnCount) -> Self {
        let nets = || own.running.nets.iter();
        let weighed = |net: &str| is_weighed_in(session, net);
        if !nets().any(|net| weighed(&net.name)) {
            Self::OwnCount
        } else if nets().all(|net| net.fish == 0 || weighed(&net.name)) {
            Self::Scales
        } else {
            Self::Both
        }
    }
}

/// The weight in all as it counts, "about" if any of it is an estimate; `None` while there is nothing to weigh.
pub(crate) fn total(
    words: &Wording,
    session: &Session,
    setup: &MatchSetup,
    own: &OwnCount,
) -> Option<(TotalFrom, String)> {
    let from = TotalFrom::of(session, own);
    let nets = at_scales(session, setup, own);
    if from == TotalFrom::OwnCount && nets.nets.iter().all(|net| net.fish == 0) {
        return None;
    }
    let estimated = nets.nets.iter().any(|net| net.estimated.mean_g > 0.0);
    let weight = if estimated {
        let about = estimate(words, setup.unit, nets.counts_g);
        words.say_with("match-about", &[("weight", crate::Arg::Text(&about))])
    } else {
        short(words, finest(setup.unit, nets.counts_g))
    };
    Some((from, weight))
}
