//! What can be logged now. A refusal says what to do, and nothing is changed.

use super::fold::MOST_RODS;
use super::model::{RodState, Session};
use restwater_log::{FeedSaid, Payload, RodNumber};

/// Why an entry can't be logged now.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum NotNow {
    /// No session is open.
    #[error("no session is open")]
    NoSession,
    /// A session is open already.
    #[error("a session is open already")]
    SessionOpen,
    /// There is no such rod.
    #[error("there is no rod {rod}: this session has {rods}")]
    NoSuchRod {
        /// The rod.
        rod: RodNumber,
        /// How many there are.
        rods: RodNumber,
    },
    /// A session needs one to nine rods.
    #[error("a session has 1 to {MOST_RODS} rods, not {0}")]
    RodCount(RodNumber),
    /// Nothing is out on that rod.
    #[error("nothing is out on rod {0}")]
    NothingOut(RodNumber),
    /// A fish is on.
    #[error("a fish is on rod {0}")]
    FishOn(RodNumber),
    /// No alternating test runs.
    #[error("no alternating test runs")]
    NoTest,
    /// The alternating test is finished.
    #[error("the alternating test is complete")]
    TestIsComplete,
    /// No match is set.
    #[error("no match is set")]
    NoMatch,
    /// No fish has been landed that the entry could be about.
    #[error("no such fish is landed")]
    NoLanding,
    /// Nothing was cast on that rod yet.
    #[error("nothing was cast on rod {0} yet")]
    NoCastYet(RodNumber),
    /// The hooklength of that cast is lost already.
    #[error("the hooklength of the last cast on rod {0} is logged as lost already")]
    LostAlready(RodNumber),
    /// A rod is out.
    #[error("rod {0} is out")]
    RodOut(RodNumber),
    /// A rod was out in the time that was entered as a break.
    #[error("rod {0} was out in that gap")]
    RodWasOut(RodNumber),
    /// A break lasts already.
    #[error("you are away already")]
    AwayAlready,
    /// The angler is not on a break.
    #[error("you are not away")]
    NotAway,
    /// Nothing was fed that could be fed again.
    #[error("nothing was fed yet")]
    NothingFed,
    /// The session follows no plan.
    #[error("no plan was adopted")]
    NoPlan,
    /// No fish is on.
    #[error("no fish is on rod {0}")]
    NoFishOn(RodNumber),
}

/// Whether the session can take an entry now.
pub fn check(session: Option<&Session>, payload: &Payload) -> Result<(), NotNow> {
    let open = session.filter(|s| s.is_open());
    if let Payload::SessionStarted(setup) = payload {
        return match open {
            Some(_) => Err(NotNow::SessionOpen),
            None if !(1..=MOST_RODS).contains(&setup.rods) => Err(NotNow::RodCount(setup.rods)),
            None => Ok(()),
        };
    }
    match payload {
        // The weight of a fish, and the weigh-in, may be entered after the session has ended.
        Payload::FishSet(said) => {
            let session = session.ok_or(NotNow::NoSession)?;
            if session.has_landed(said.cast) { Ok(()) } else { Err(NotNow::NoLanding) }
        }
        Payload::NetWeighed { .. }
        | Payload::OtherNetTold { .. }
        | Payload::SectionSet { .. }
        | Payload::MatchRuleSaid { .. } => {
            let session = session.ok_or(NotNow::NoSession)?;
            session.match_day.as_ref().map(|_| ()).ok_or(NotNow::NoMatch)
        }
        _ => {
            let session = open.ok_or(NotNow::NoSession)?;
            check_open(session, payload)?;
            payload.rod().map_or(Ok(()), |rod| check_rod(session, rod, payload))
        }
    }
}

/// What concerns the whole of an open session.
fn check_open(session: &Session, payload: &Payload) -> Result<(), NotNow> {
    match payload {
        Payload::MatchOff if session.match_day.is_none() => Err(NotNow::NoMatch),
        Payload::AlternationEnded if session.alternation.is_none() => Err(NotNow::NoTest),
        Payload::Away if session.away().is_some() => Err(NotNow::AwayAlready),
        Payload::Away => {
            let out = session.rods.iter().find(|rod| !matches!(rod.state, RodState::Ready { .. }));
            out.map_or(Ok(()), |rod| Err(NotNow::RodOut(rod.number)))
        }
        Payload::PlanDropped if session.plan.is_none() => Err(NotNow::NoPlan),
        Payload::Returned if session.away().is_none() => Err(NotNow::NotAway),
        Payload::Fed(FeedSaid { rod: Some(rod), .. }) if session.rod(*rod).is_none() => {
            Err(NotNow::NoSuchRod { rod: *rod, rods: session.rods.len() as RodNumber })
        }
        _ => Ok(()),
    }
}

/// What concerns one rod.
fn check_rod(session: &Session, number: RodNumber, payload: &Payload) -> Result<(), NotNow> {
    let rods = session.rods.len() as RodNumber;
    let rod = session.rod(number).ok_or(NotNow::NoSuchRod { rod: number, rods })?;
    if matches!(payload, Payload::HooklengthLost { .. }) {
        let last = session.casts.iter().rev().find(|cast| cast.rod == number);
        let last = last.ok_or(NotNow::NoCastYet(number))?;
        return if last.hooklength_lost.is_some() { Err(NotNow::LostAlready(number)) } else { Ok(()) };
    }
    match (payload, &rod.state) {
        (Payload::Landed { .. } | Payload::Lost { .. } | Payload::Missed { .. }, state) => match state {
            RodState::FishOn { .. } => Ok(()),
            _ => Err(NotNow::NoFishOn(number)),
        },
        (Payload::Bite { .. } | Payload::WoundIn { .. }, RodState::FishOn { .. }) => {
            Err(NotNow::FishOn(number))
        }
        (
            Payload::Bite { .. }
            | Payload::WoundIn { .. }
            | Payload::Liner { .. }
            | Payload::Indication { .. }
            | Payload::Twitch { .. },
            RodState::Ready { .. },
        ) => Err(NotNow::NothingOut(number)),
        _ => Ok(()),
    }
}
