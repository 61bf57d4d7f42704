//! What an action writes to the log.

use restwater_log::{Payload, SessionSetup};
use restwater_screen::Action;

/// Text longer than this is refused.
pub(super) const LONGEST_TEXT: usize = 2_000;

/// The entry of an action, if it follows from the action alone; `None` for actions that change earlier
/// entries, need the session or write nothing.
pub(super) fn payload(action: &Action, draft: &SessionSetup) -> Option<Payload> {
    Some(match action.clone() {
        Action::StartSession { setup } => Payload::SessionStarted(setup.unwrap_or_else(|| draft.clone())),
        Action::EndSession => Payload::SessionEnded,
        Action::Cast { rod } => Payload::Cast { rod },
        Action::Bite { rod } => Payload::Bite { rod },
        Action::Landed { rod, fish } => Payload::Landed { rod, fish },
        Action::Lost { rod } => Payload::Lost { rod },
        Action::Missed { rod } => Payload::Missed { rod },
        Action::Liner { rod } => Payload::Liner { rod },
        Action::Indication { rod } => Payload::Indication { rod },
        Action::WoundIn { rod } => Payload::WoundIn { rod },
        Action::Twitch { rod } => Payload::Twitch { rod },
        Action::Away => Payload::Away,
        Action::Returned => Payload::Returned,
        Action::HooklengthLost { rod } => Payload::HooklengthLost { rod },
        Action::SetRig { rod, rig } => Payload::RigSet { rod, rig },
        Action::SetSpot { rod, spot } => Payload::SpotSet { rod, spot },
        Action::Note { text } => Payload::Noted { text },
        Action::SetMark { name, bearing_cdeg } => Payload::MarkSet { name, bearing_cdeg },
        Action::PlacePeg { lat_e7, lon_e7, straight_out_cdeg } => {
            Payload::PegPlaced { lat_e7, lon_e7, straight_out_cdeg }
        }
        Action::EndAlternation => Payload::AlternationEnded,
        Action::TimeBack { .. }
        | Action::ChooseRod { .. }
        | Action::Set { .. }
        | Action::StepAim { .. }
        | Action::Replay { .. }
        | Action::CastHere
        | Action::KeepBack
        | Action::Release
        | Action::MarkHere { .. }
        | Action::PlacePegAsTyped
        | Action::StartAlternation { .. }
        | Action::SetNextStep
        | Action::Tackle { .. }
        | Action::Setup { .. }
        | Action::Swim { .. }
        | Action::Waits { .. }
        | Action::Match { .. }
        | Action::Fish { .. }
        | Action::Feed { .. }
        | Action::Seen { .. }
        | Action::Bench { .. }
        | Action::Plan { .. }
        | Action::Book { .. }
        | Action::Conditions { .. }
        | Action::Cautions { .. }
        | Action::Files { .. }
        | Action::Phone { .. }
        | Action::Back
        | Action::Opened
        | Action::OpenDoubt { .. }
        | Action::Mend { .. }
        | Action::Typed { .. }
        | Action::UndoImport { .. }
        | Action::RedoImport { .. }
        | Action::Undo
        | Action::Redo => return None,
    })
}
