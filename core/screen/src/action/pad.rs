//! Taps that follow each other under one thumb: which keys share a pad, and which step a figure.

use super::{Action, FishTap, SwimTap};
use restwater_log::RodNumber;

/// Which keys come under the same thumb: a second tap on another key of the same pad may be the same tap.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pad {
    /// The keys of a rod that change what its pad shows.
    Rod(RodNumber),
    /// The keys of the Swim screen that pick a ray or a cell.
    Pick,
    /// The keys that stand where those stood.
    Aim,
    /// The keys of a landed fish, which stand where LANDED stood.
    Fish,
    /// BACK to the Bank, whose CAST lies where it stood.
    Back,
}

impl Action {
    /// Whether it steps a figure or the ring: such taps follow each other fast, and a step too many is stepped back.
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

    /// The pad that its key stands on, where a second tap may land on another key of it.
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
            Self::Back => Some(Pad::Back),
            _ => None,
        }
    }
}
