//! The 0.7 s rule: a second tap of a cold thumb is ignored, and seen to be.

use super::Action;
use restwater_log::{Moment, RodNumber};

/// Two taps closer than this are one.
pub const REPEAT_MS: i64 = 700;

/// Steps of a figure follow each other fast and are undone by a step back: only what no thumb can do is one tap.
pub(super) const STEP_REPEAT_MS: i64 = 150;

/// The last accepted tap.
#[derive(Debug, Clone)]
pub(super) struct LastTap {
    action: Action,
    at: Moment,
}

impl LastTap {
    pub(super) fn new(action: &Action, at: &Moment) -> Self {
        Self { action: action.clone(), at: at.clone() }
    }

    /// Whether `action` at `at` is the same tap again: the same action, or another key of the same rod's
    /// pad, since the first tap may have put another key under the thumb.
    pub(super) fn is_repeated_by(&self, action: &Action, at: &Moment) -> bool {
        let gap = at.since(&self.at).ms;
        let steps = matches!(action, Action::Match { tap } if tap.steps());
        if !(0..if steps { STEP_REPEAT_MS } else { REPEAT_MS }).contains(&gap) {
            return false;
        }
        let same_pad = pad_rod(&self.action).is_some() && pad_rod(&self.action) == pad_rod(action);
        let same_pick = picks(&self.action) && (picks(action) || aims(action));
        same_pad || same_pick || &self.action == action
    }
}

/// A key that picks a ray or a cell: the next keys come under the same thumb.
fn picks(action: &Action) -> bool {
    matches!(action, Action::ChooseSwim { field, .. } if field == "ray" || field == "cell")
}

/// A key that stands where those stood.
fn aims(action: &Action) -> bool {
    matches!(action, Action::StepAim { .. } | Action::CastHere | Action::KeepBack | Action::Release)
}

/// The rod whose pad the key stands on, for the keys that change what the pad shows.
fn pad_rod(action: &Action) -> Option<RodNumber> {
    match action {
        Action::Cast { rod }
        | Action::Bite { rod }
        | Action::Landed { rod, .. }
        | Action::Lost { rod }
        | Action::Missed { rod }
        | Action::WoundIn { rod } => Some(*rod),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use restwater_screen::MatchTap;
    use restwater_session::written::second;

    fn after(ms: i64) -> Moment {
        let at = second(0);
        Moment { wall_ms: at.wall_ms + ms, mono_ms: at.mono_ms + ms, ..at }
    }

    #[test]
    fn within_the_rule_the_same_pad_is_the_same_tap() {
        let last = LastTap::new(&Action::WoundIn { rod: 1 }, &second(0));
        assert!(last.is_repeated_by(&Action::WoundIn { rod: 1 }, &after(699)));
        assert!(last.is_repeated_by(&Action::Cast { rod: 1 }, &after(300)), "CAST came under the thumb");
        assert!(!last.is_repeated_by(&Action::WoundIn { rod: 1 }, &after(700)));
        assert!(!last.is_repeated_by(&Action::WoundIn { rod: 2 }, &after(300)), "another rod");
        assert!(!last.is_repeated_by(&Action::Undo, &after(300)), "UNDO stands in a place of its own");
    }

    #[test]
    fn a_double_tap_on_a_ray_picks_no_band_and_one_on_a_band_takes_no_step() {
        let pick = |field: &str| Action::ChooseSwim { field: field.into(), value: "1".into() };
        let ray = LastTap::new(&pick("ray"), &second(0));
        assert!(ray.is_repeated_by(&pick("cell"), &after(300)));
        assert!(!ray.is_repeated_by(&pick("cell"), &after(700)));
        assert!(!ray.is_repeated_by(&pick("rays"), &after(300)), "BACK stands in a place of its own");
        let cell = LastTap::new(&pick("cell"), &second(0));
        assert!(cell.is_repeated_by(&Action::CastHere, &after(300)));
        let step = LastTap::new(&Action::StepAim { step: restwater_swim::Step::Left }, &second(0));
        assert!(!step.is_repeated_by(&Action::StepAim { step: restwater_swim::Step::Out }, &after(300)));
    }

    #[test]
    fn steps_of_a_figure_may_follow_fast() {
        let step = Action::Match { tap: MatchTap::Step { by: 256 } };
        let last = LastTap::new(&step, &second(0));
        assert!(last.is_repeated_by(&step, &after(100)) && !last.is_repeated_by(&step, &after(200)));
    }

    #[test]
    fn a_wall_clock_set_back_does_not_make_a_repeat() {
        let last = LastTap::new(&Action::Undo, &second(0));
        let moved = Moment { wall_ms: second(0).wall_ms - 7_200_000, ..after(5_000) };
        assert!(!last.is_repeated_by(&Action::Undo, &moved));
    }
}
