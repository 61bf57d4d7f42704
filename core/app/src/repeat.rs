//! The 0.7 s rule: an accidental second tap of a cold thumb is ignored, and the angler sees that it was.

use super::Action;
use restwater_log::Moment;
use restwater_screen::Pad;

/// Two taps closer together than this count as one.
pub const REPEAT_MS: i64 = 700;

/// Steps of a figure may follow each other fast, since a step back corrects them. Only taps closer than any
/// thumb can make count as one.
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

    /// Whether `action` at `at` is the same tap again: the same action, or another key of the same pad, since
    /// the first tap may have put another key under the thumb.
    pub(super) fn is_repeated_by(&self, action: &Action, at: &Moment) -> bool {
        let gap = at.since(&self.at).ms;
        // An opened screen can't be undone, and looking at what it shows takes time. But MORE may come under the thumb where a key
        // of its sheet was.
        if *action == Action::Opened {
            return self.action.pad() == Some(Pad::Bank) && (0..REPEAT_MS).contains(&gap);
        }
        let same_pad = match (self.action.pad(), action.pad()) {
            (Some(Pad::Rod(before)), Some(Pad::Rod(now))) => before == now,
            // BACK, a choice on the Swim screen and a key that completes an entry open the Bank, which puts one of
            // its keys under the thumb; UNDO on the lock screen moves the keys beside it.
            (Some(Pad::Pick), Some(Pad::Pick | Pad::Aim))
            | (Some(Pad::Rod(_) | Pad::Back), Some(Pad::Fish))
            | (Some(Pad::Back | Pad::Aim | Pad::Fish | Pad::Undo), Some(Pad::Rod(_)))
            | (Some(Pad::Closing), Some(Pad::Rod(_) | Pad::Fish | Pad::Bank))
            // A key of the sheet behind MORE closes it, and any key of the pad may be under the thumb then, UNDO too.
            | (Some(Pad::Bank), Some(Pad::Fish | Pad::Bank | Pad::Rod(_) | Pad::Undo)) => true,
            // Any key can have come under the thumb but BACK and UNDO, which have places of their own.
            (Some(Pad::Opening), _) => !matches!(action, Action::Back | Action::Undo | Action::Typed { .. }),
            _ => self.action.replaces(action),
        };
        let rule = if same_pad || !action.steps() { REPEAT_MS } else { STEP_REPEAT_MS };
        (0..rule).contains(&gap) && (same_pad || self.action == *action)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use restwater_screen::{FishTap, MatchTap, SwimTap};
    use restwater_session::written::second;
    use restwater_swim::Step;

    fn after(ms: i64) -> Moment {
        let at = second(0);
        Moment { wall_ms: at.wall_ms + ms, mono_ms: at.mono_ms + ms, ..at }
    }

    #[test]
    fn within_the_time_of_the_rule_any_key_of_the_same_pad_is_a_repeat() {
        let last = LastTap::new(&Action::WoundIn { rod: 1 }, &second(0));
        assert!(last.is_repeated_by(&Action::WoundIn { rod: 1 }, &after(699)));
        assert!(last.is_repeated_by(&Action::Cast { rod: 1 }, &after(300)), "CAST came under the thumb");
        assert!(!last.is_repeated_by(&Action::WoundIn { rod: 1 }, &after(700)));
        assert!(!last.is_repeated_by(&Action::WoundIn { rod: 2 }, &after(300)), "another rod");
        assert!(!last.is_repeated_by(&Action::Undo, &after(300)), "UNDO has a place of its own");
    }

    #[test]
    fn a_double_tap_on_step_takes_no_step() {
        let steps = Action::Swim { tap: SwimTap::Steps { open: true } };
        let left = Action::StepAim { step: Step::Left };
        let last = LastTap::new(&steps, &second(0));
        assert!(last.is_repeated_by(&left, &after(300)), "a step, but it came under the thumb");
        assert!(!last.is_repeated_by(&left, &after(700)));
        let last = LastTap::new(&left, &second(0));
        assert!(!last.is_repeated_by(&Action::StepAim { step: Step::Out }, &after(300)));
        assert!(!last.is_repeated_by(&left, &after(300)), "steps of the aim follow fast");
        assert!(last.is_repeated_by(&left, &after(100)));
    }

    #[test]
    fn steps_of_a_figure_may_follow_fast() {
        let step = Action::Match { tap: MatchTap::ScalesDigit { digit: 1 } };
        let last = LastTap::new(&step, &second(0));
        assert!(last.is_repeated_by(&step, &after(100)) && !last.is_repeated_by(&step, &after(200)));
    }

    #[test]
    fn a_double_tap_on_landed_does_not_tap_a_key_about_the_fish() {
        let last = LastTap::new(&Action::Landed { rod: 1, fish: None }, &second(0));
        let fish = |tap| Action::Fish { cast: None, tap };
        assert!(last.is_repeated_by(&fish(FishTap::PutBack { back: true }), &after(300)));
        assert!(last.is_repeated_by(&fish(FishTap::Class { name: "Roach".into() }), &after(699)));
        assert!(!last.is_repeated_by(&fish(FishTap::PutBack { back: true }), &after(700)));
        let digit = fish(FishTap::Digit { digit: 1 });
        let last = LastTap::new(&digit, &second(0));
        assert!(!last.is_repeated_by(&digit, &after(200)), "eleven is typed fast");
    }

    #[test]
    fn a_double_tap_on_back_does_not_cast() {
        let last = LastTap::new(&Action::Back, &second(0));
        for rod in [1, 2] {
            assert!(last.is_repeated_by(&Action::Cast { rod }, &after(300)), "CAST came under the thumb");
            assert!(!last.is_repeated_by(&Action::Cast { rod }, &after(700)));
        }
        assert!(last.is_repeated_by(&Action::Missed { rod: 1 }, &after(300)));
        assert!(!last.is_repeated_by(&Action::Undo, &after(300)), "UNDO has a place of its own");
        let here = LastTap::new(&Action::CastHere, &second(0));
        assert!(
            here.is_repeated_by(&Action::Cast { rod: 1 }, &after(300)),
            "the Bank came up under the thumb"
        );
    }

    #[test]
    fn a_double_tap_on_a_key_that_closes_its_screen_taps_none_of_the_bank() {
        use restwater_log::{FeedKind, FeedMeasure, FishSign, Side};
        use restwater_screen::{FeedTap, SeenTap};
        let fish = |tap| Action::Fish { cast: None, tap };
        let handful = FeedTap::Measure { what: FeedKind::Loose, measure: FeedMeasure::Handful };
        let closing = [
            fish(FishTap::Weighed),
            fish(FishTap::Guessed),
            fish(FishTap::NoWeight),
            Action::Feed { tap: handful },
            Action::Feed { tap: FeedTap::Weighed },
            Action::Seen { tap: SeenTap::Sign { sign: FishSign::Bubbles } },
            Action::Seen { tap: SeenTap::NeighbourHere { side: Side::Left } },
        ];
        let neighbour = Action::Seen { tap: SeenTap::Neighbour { side: Side::Left } };
        let bank = [
            Action::Cast { rod: 1 },
            Action::Bite { rod: 2 },
            Action::WoundIn { rod: 1 },
            Action::Liner { rod: 1 },
            Action::EndSession,
            Action::Feed { tap: FeedTap::Again },
            neighbour.clone(),
            fish(FishTap::PutBack { back: true }),
        ];
        for close in &closing {
            let last = LastTap::new(close, &second(0));
            for key in &bank {
                assert!(
                    last.is_repeated_by(key, &after(300)),
                    "{key:?} came under the thumb after {close:?}"
                );
                assert!(!last.is_repeated_by(key, &after(700)), "{key:?} after {close:?}");
            }
            assert!(!last.is_repeated_by(&Action::Undo, &after(300)), "UNDO has a place of its own");
        }
        let last = LastTap::new(&neighbour, &second(0));
        assert!(last.is_repeated_by(&neighbour, &after(300)));
        let last = LastTap::new(&Action::Cast { rod: 1 }, &second(0));
        assert!(!last.is_repeated_by(&neighbour, &after(300)));
    }

    #[test]
    fn a_double_tap_on_a_key_that_opens_taps_nothing_of_what_has_opened() {
        use restwater_log::{FeedKind, FeedMeasure, FishSign};
        use restwater_screen::{FeedTap, SeenTap, TackleTap};
        let fish = |tap| Action::Fish { cast: None, tap };
        let handful = FeedTap::Measure { what: FeedKind::Loose, measure: FeedMeasure::Handful };
        let under_the_thumb = [
            Action::StartSession { setup: None },
            fish(FishTap::Class { name: "Roach".into() }),
            fish(FishTap::Digit { digit: 1 }),
            fish(FishTap::NextUnit),
            Action::Feed { tap: handful },
            Action::Seen { tap: SeenTap::Sign { sign: FishSign::Bubbles } },
            Action::Tackle { rod: 1, tap: TackleTap::Clip { clipped: true } },
        ];
        let opening = [Action::Opened, Action::OpenDoubt { op: Some(uuid::Uuid::nil()) }];
        for open in &opening {
            let last = LastTap::new(open, &second(0));
            for key in &under_the_thumb {
                assert!(last.is_repeated_by(key, &after(300)), "{key:?} came under the thumb after {open:?}");
                assert!(!last.is_repeated_by(key, &after(700)), "{key:?} after {open:?}");
            }
            for other in [Action::Back, Action::Undo, Action::Opened] {
                assert!(!last.is_repeated_by(&other, &after(300)), "{other:?} after {open:?}");
            }
            let typed = Action::Typed { into: restwater_screen::TypedInto::PegLatitude, text: "52".into() };
            assert!(!last.is_repeated_by(&typed, &after(300)), "no key is where a text is typed");
        }
    }

    #[test]
    fn a_double_tap_on_a_key_of_the_sheet_logs_nothing_of_the_pad_and_undoes_nothing() {
        let again = Action::Feed { tap: restwater_screen::FeedTap::Again };
        let landed = Action::Landed { rod: 1, fish: None };
        let bite = Action::Bite { rod: 1 };
        for first in [again, Action::Liner { rod: 1 }, Action::Twitch { rod: 1 }, Action::Away, Action::Redo]
        {
            let last = LastTap::new(&first, &second(0));
            let step = Action::TimeBack { minutes: 1 };
            for key in [&landed, &bite, &Action::Returned, &step, &Action::Undo, &Action::Opened] {
                assert!(last.is_repeated_by(key, &after(300)), "{key:?} after {first:?}");
                assert!(!last.is_repeated_by(key, &after(700)), "{key:?} after {first:?}");
            }
        }
    }

    #[test]
    fn a_double_tap_on_a_key_that_another_replaces_does_not_take_it_back() {
        let put_back = |back| Action::Fish { cast: None, tap: FishTap::PutBack { back } };
        let id = uuid::Uuid::nil();
        for (first, then) in [
            (put_back(true), put_back(false)),
            (Action::Release, Action::KeepBack),
            (Action::UndoImport { id }, Action::RedoImport { id }),
            (Action::Undo, Action::WoundIn { rod: 1 }),
        ] {
            let last = LastTap::new(&first, &second(0));
            assert!(last.is_repeated_by(&then, &after(300)), "{then:?} after {first:?}");
            assert!(!last.is_repeated_by(&then, &after(700)), "{then:?} after {first:?}");
        }
    }

    #[test]
    fn a_double_tap_on_start_does_not_cast() {
        let last = LastTap::new(&Action::StartSession { setup: None }, &second(0));
        assert!(
            last.is_repeated_by(&Action::Cast { rod: 1 }, &after(300)),
            "the Bank came up under the thumb"
        );
        assert!(!last.is_repeated_by(&Action::Cast { rod: 1 }, &after(700)));
        assert!(!last.is_repeated_by(&Action::Undo, &after(300)));
    }

    #[test]
    fn a_wall_clock_set_back_does_not_make_a_repeat() {
        let last = LastTap::new(&Action::Undo, &second(0));
        let moved = Moment { wall_ms: second(0).wall_ms - 7_200_000, ..after(5_000) };
        assert!(!last.is_repeated_by(&Action::Undo, &moved));
    }
}
