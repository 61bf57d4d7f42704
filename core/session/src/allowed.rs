//! What can be logged now. A refusal says what to do, and nothing is changed.

use super::fold::MOST_RODS;
use super::model::{RodState, Session};
use restwater_log::{FeedSaid, Payload, RodNumber};

/// Why an entry can't be logged now.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum NotNow {
    /// No session is open.
    #[error("no session is open: start one first")]
    NoSession,
    /// A session is open already.
    #[error("a session is open already: end it first")]
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
    #[error("nothing is out on rod {0}: tap CAST when the lead hits the water")]
    NothingOut(RodNumber),
    /// A fish is on.
    #[error("a fish is on rod {0}: say LANDED, LOST or MISSED first")]
    FishOn(RodNumber),
    /// No alternating test runs.
    #[error("no alternating test runs: start one from a change")]
    NoTest,
    /// The alternating test is finished.
    #[error("the alternating test is through: end it, or start another")]
    TestIsComplete,
    /// No match is set.
    #[error("no match is set: set all-in and all-out first")]
    NoMatch,
    /// No fish has been landed that the entry could be about.
    #[error("no such fish is landed: tap LANDED first, then say what it weighs")]
    NoLanding,
    /// Nothing was cast on that rod yet.
    #[error("nothing was cast on rod {0} yet: a hooklength is lost with a cast")]
    NoCastYet(RodNumber),
    /// The hooklength of that cast is lost already.
    #[error("the hooklength of the last cast on rod {0} is logged as lost already: cast first, or undo")]
    LostAlready(RodNumber),
    /// A rod is out.
    #[error("rod {0} is out: wind in before you go away")]
    RodOut(RodNumber),
    /// A rod was out in the time that was entered as a break.
    #[error("rod {0} was out in that gap: a break is a time when every rod is in")]
    RodWasOut(RodNumber),
    /// A break lasts already.
    #[error("you are away already: say that you are back first")]
    AwayAlready,
    /// The angler is not on a break.
    #[error("you are not away: tap AWAY first")]
    NotAway,
    /// Nothing was fed that could be fed again.
    #[error("nothing was fed yet: choose what to feed first")]
    NothingFed,
    /// The session follows no plan.
    #[error("no plan was adopted: there is none to drop")]
    NoPlan,
    /// No fish is on.
    #[error("no fish is on rod {0}: tap BITE first")]
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
            return if session.has_landed(said.cast) { Ok(()) } else { Err(NotNow::NoLanding) };
        }
        Payload::NetWeighed { .. }
        | Payload::OtherNetTold { .. }
        | Payload::SectionSet { .. }
        | Payload::MatchRuleSaid { .. } => {
            let session = session.ok_or(NotNow::NoSession)?;
            return session.match_day.as_ref().map(|_| ()).ok_or(NotNow::NoMatch);
        }
        _ => {}
    }
    let session = open.ok_or(NotNow::NoSession)?;
    if matches!(payload, Payload::MatchOff) && session.match_day.is_none() {
        return Err(NotNow::NoMatch);
    }
    if matches!(payload, Payload::AlternationEnded) && session.alternation.is_none() {
        return Err(NotNow::NoTest);
    }
    match payload {
        Payload::Away if session.away().is_some() => return Err(NotNow::AwayAlready),
        Payload::Away => {
            let out = session.rods.iter().find(|rod| !matches!(rod.state, RodState::Ready { .. }));
            return out.map_or(Ok(()), |rod| Err(NotNow::RodOut(rod.number)));
        }
        Payload::PlanDropped if session.plan.is_none() => return Err(NotNow::NoPlan),
        Payload::Returned if session.away().is_none() => return Err(NotNow::NotAway),
        Payload::Fed(FeedSaid { rod: Some(rod), .. }) if session.rod(*rod).is_none() => {
            return Err(NotNow::NoSuchRod { rod: *rod, rods: session.rods.len() as RodNumber });
        }
        _ => {}
    }
    let Some(number) = payload.rod() else { return Ok(()) };
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
