//! Taps that follow each other under one thumb: which keys share a pad, and which of them step a figure.

use super::{Action, FeedTap, FishTap, MatchTap, SeenTap, SwimTap};
use restwater_log::RodNumber;

/// Keys that appear under the same thumb, so that an accidental second tap may hit another key of the same
/// pad.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pad {
    /// The keys of a rod that change what its pad shows.
    Rod(RodNumber),
    /// The keys of the Swim screen that pick a ray or a cell.
    Pick,
    /// The keys that replace those.
    Aim,
    /// The keys about a landed fish, which replace LANDED.
    Fish,
    /// BACK to the Bank, whose CAST replaces it.
    Back,
    /// A key that completes an entry on a screen of its own: the Bank opens, and one of its keys replaces it.
    Closing,
    /// A key that opens a screen, a leaf or a row, of which one key replaces it.
    Opening,
    /// The other keys of the Bank that log. After one of those behind MORE the pad is shown again.
    Bank,
    /// UNDO. On the lock screen the keys move when it is answered.
    Undo,
}

impl Action {
    /// Whether it steps a figure or the aim: such taps follow each other fast, and a step too many can be
    /// stepped back.
    pub fn steps(&self) -> bool {
        match self {
            Self::StepAim { .. } => true,
            Self::Match { tap } => tap.steps(),
            Self::Fish { tap, .. } => tap.steps(),
            Self::Feed { tap } => tap.steps(),
            Self::Setup { tap } => tap.steps(),
            _ => false,
        }
    }

    /// Whether the key of this action and that of the other one replace each other in one place.
    pub fn replaces(&self, other: &Self) -> bool {
        let back = |action: &Self| match action {
            Self::Fish { cast, tap: FishTap::PutBack { .. } } => Some(*cast),
            _ => None,
        };
        match (self, other) {
            // With the last digit rubbed out, the key is that of the next net.
            (Self::KeepBack, Self::Release)
            | (Self::Release, Self::KeepBack)
            | (
                Self::Match { tap: MatchTap::ScalesRubOut },
                Self::Match { tap: MatchTap::ScalesNet { .. } | MatchTap::ScalesPeg { .. } },
            ) => true,
            (Self::UndoImport { id }, Self::RedoImport { id: other })
            | (Self::RedoImport { id }, Self::UndoImport { id: other }) => id == other,
            _ => back(self).zip(back(other)).is_some_and(|(cast, other)| cast == other),
        }
    }

    /// The pad of its key, if a second tap may hit another key of that pad.
    pub fn pad(&self) -> Option<Pad> {
        match self {
            Self::Cast { rod }
            | Self::Bite { rod }
            | Self::Landed { rod, .. }
            | Self::Lost { rod }
            | Self::Missed { rod }
            | Self::WoundIn { rod } => Some(Pad::Rod(*rod)),
            Self::Swim { tap: SwimTap::Steps { .. } } => Some(Pad::Pick),
            Self::StepAim { .. } | Self::CastHere | Self::KeepBack | Self::Release => Some(Pad::Aim),
            Self::Fish { tap: FishTap::Class { .. } | FishTap::PutBack { .. }, .. } => Some(Pad::Fish),
            Self::Fish { tap, .. } if tap.closes() => Some(Pad::Closing),
            Self::Feed { tap } if tap.closes() => Some(Pad::Closing),
            Self::Seen { tap } if tap.closes() => Some(Pad::Closing),
            Self::StartSession { .. } => Some(Pad::Closing),
            Self::Undo => Some(Pad::Undo),
            Self::Liner { .. }
            | Self::Indication { .. }
            | Self::TimeBack { .. }
            | Self::Redo
            | Self::Twitch { .. }
            | Self::Away
            | Self::Returned
            | Self::EndSession
            | Self::Feed { tap: FeedTap::Again }
            | Self::Seen { tap: SeenTap::Neighbour { .. } } => Some(Pad::Bank),
            Self::Back => Some(Pad::Back),
            Self::Opened | Self::OpenDoubt { op: Some(_) } => Some(Pad::Opening),
            _ => None,
        }
    }
}
