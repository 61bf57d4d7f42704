//! The keys of the Swim screen: which can be tapped now, and what each does.

use super::{SwimKey, SwimKeyView, SwimScreen};
use crate::{Action, KeyTap, SwimTap};
use restwater_swim::{NextSpot, Step};

impl SwimScreen<'_> {
    pub(super) fn keys(&self, aimed: Option<&NextSpot>) -> Vec<SwimKeyView> {
        let open = self.session.is_open() && self.replay.is_none();
        let kept = aimed.is_some_and(|next| next.figures.kept_back_min.is_some());
        let all = [
            (SwimKey::StepLeft, "key-step-left", aimed.is_some()),
            (SwimKey::StepRight, "key-step-right", aimed.is_some()),
            (SwimKey::StepIn, "key-step-in", aimed.is_some()),
            (SwimKey::StepOut, "key-step-out", aimed.is_some()),
            (SwimKey::Steps, "key-steps", aimed.is_some()),
            if kept {
                (SwimKey::Release, "key-release", open)
            } else {
                (SwimKey::Keep, "key-keep", open && aimed.is_some())
            },
            (SwimKey::CastHere, "key-cast-here", open && aimed.is_some()),
            (SwimKey::MarkHere, "key-mark-here", open && aimed.is_some()),
            (SwimKey::Earlier, "key-earlier", true),
            (SwimKey::Later, "key-later", self.replay.is_some()),
            (SwimKey::Now, "key-now", self.replay.is_some()),
            (
                SwimKey::PlacePeg,
                "key-place-peg",
                self.session.is_open() && self.place.iter().all(|t| !t.trim().is_empty()),
            ),
            (SwimKey::UsePhone, "key-use-phone", self.session.is_open()),
        ];
        let view = |(key, id, enabled): (SwimKey, &str, bool)| {
            let into_kept = kept && key == SwimKey::CastHere;
            let spoken = format!("{id}{}-spoken", if into_kept { "-kept" } else { "" });
            let label = self.words.say(id);
            let spoken = if self.words.has(&spoken) { self.words.say(&spoken) } else { label.clone() };
            SwimKeyView {
                key,
                label,
                spoken,
                enabled,
                reads: matches!(key, SwimKey::Earlier | SwimKey::Later | SwimKey::Now),
                // After all-out no key asks for a cast.
                solid: self.all_out.is_none() && key == SwimKey::CastHere,
                tap: self.tap(key),
            }
        };
        all.into_iter().map(view).collect()
    }

    fn tap(&self, key: SwimKey) -> KeyTap {
        let back = |steps_back| Action::Replay { steps_back };
        KeyTap::from(match key {
            SwimKey::StepLeft => Action::StepAim { step: Step::Left },
            SwimKey::StepRight => Action::StepAim { step: Step::Right },
            SwimKey::StepIn => Action::StepAim { step: Step::In },
            SwimKey::StepOut => Action::StepAim { step: Step::Out },
            SwimKey::Steps => Action::Swim { tap: SwimTap::Steps { open: true } },
            SwimKey::Keep => Action::KeepBack,
            SwimKey::Release => Action::Release,
            SwimKey::CastHere => Action::CastHere,
            SwimKey::MarkHere => Action::MarkHere { name: String::new() },
            SwimKey::Earlier => back(self.steps_back.saturating_add(1)),
            SwimKey::Later => back(self.steps_back.saturating_sub(1)),
            SwimKey::Now => back(0),
            SwimKey::PlacePeg => Action::PlacePegAsTyped,
            SwimKey::UsePhone => return KeyTap::AskReceiver,
        })
    }
}
