//! Laws that hold after any taps in any order.

use super::learning::screens;
use super::*;

pub(super) fn any_action() -> impl Strategy<Value = Action> {
    let rod = 0..4_u8;
    prop_oneof![
        1 => Just(START),
        1 => Just(Action::EndSession),
        6 => rod.clone().prop_map(|rod| Action::Cast { rod }),
        5 => rod.clone().prop_map(|rod| Action::Bite { rod }),
        4 => rod.clone().prop_map(|rod| Action::Landed { rod, fish: None }),
        2 => rod.clone().prop_map(|rod| Action::Lost { rod }),
        2 => rod.clone().prop_map(|rod| Action::Missed { rod }),
        3 => rod.clone().prop_map(|rod| Action::WoundIn { rod }),
        1 => rod.clone().prop_map(|rod| Action::Liner { rod }),
        1 => rod.clone().prop_map(|rod| Action::Twitch { rod }),
        2 => (0..700_u32).prop_map(|minutes| Action::TimeBack { minutes }),
        1 => rod.prop_map(|rod| Action::ChooseRod { rod }),
        1 => "\\PC{0,20}".prop_map(|text| Action::Note { text }),
        6 => match_day::any_match_tap(),
        4 => match_day::any_fish_tap(),
        6 => any_choice::any_choice(),
        1 => (0..4_u8).prop_map(|rod| Action::HooklengthLost { rod }),
        1 => Just(Action::Away),
        1 => Just(Action::Returned),
        3 => any_choice::any_feed(),
        2 => any_choice::any_seen(),
        1 => Just(Action::KeepBack),
        1 => Just(Action::CastHere),
        1 => Just(Action::Release),
        3 => Just(Action::Undo),
        2 => Just(Action::Redo),
    ]
}

/// The screens whose contents depend on what was chosen or typed.
const SHOWN: [Which; 12] = [
    Which::Setup,
    Which::Bank,
    Which::Waits,
    Which::Swim,
    Which::Tackle,
    Which::Fish,
    Which::Feed,
    Which::Seen,
    Which::Match,
    Which::Bench,
    Which::Book,
    Which::Files,
];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    /// No sequence of taps panics, a refusal doesn't change the log, and a restart shows the same screen.
    #[test]
    fn any_taps_leave_a_log_that_reopens_the_same(steps in proptest::collection::vec((any_action(), 0..600_000_i64), 1..40)) {
        let mut phone = started();
        let mut now = 1_000;
        for (action, gap) in steps {
            now += gap;
            let before = phone.app().ops().to_vec();
            if phone.tap(now, &action).is_err() {
                prop_assert_eq!(phone.app().ops(), before.as_slice());
            }
        }
        phone.tap(now + 1_000, &Action::ChooseRod { rod: 1 }).ok();
        let shown = phone.bank(now + 10_000);
        let nets = phone.app().screen(Which::Match, &at(now + 10_000)).unwrap();
        let learned = screens(&mut phone, now + 10_000);
        phone.open();
        prop_assert_eq!(phone.bank(now + 10_000), shown);
        prop_assert_eq!(screens(&mut phone, now + 10_000), learned);
        let Screen::Match(after) = phone.app().screen(Which::Match, &at(now + 10_000)).unwrap() else { panic!() };
        let Screen::Match(before) = nets else { panic!() };
        prop_assert_eq!((before.nets, before.coming, before.rows), (after.nets, after.coming, after.rows));
    }

    /// A new process that is told what the screens were about shows each of them as it was, and the next tap does the same.
    #[test]
    fn a_new_process_shows_every_screen_as_it_was(steps in proptest::collection::vec((any_action(), 0..600_000_i64), 1..40)) {
        let mut phone = started();
        let mut now = 1_000;
        for (action, gap) in steps {
            now += gap;
            phone.tap(now, &action).ok();
        }
        let seen = |phone: &mut Phone| {
            SHOWN.map(|which| format!("{:?}", phone.app().screen(which, &at(now + 10_000))))
        };
        // The first look may compute what later ones keep.
        seen(&mut phone);
        let before = seen(&mut phone);
        let subject = phone.app().subject().unwrap();
        phone.open();
        prop_assert!(phone.app().restore_subject(&subject).unwrap());
        for (before, after) in before.iter().zip(seen(&mut phone)) {
            let differs = before.bytes().zip(after.bytes()).position(|(one, other)| one != other);
            let part = |text: &str| text.get(differs.unwrap_or(0).saturating_sub(80)..).map(|rest| rest.chars().take(160).collect::<String>());
            prop_assert!(*before == after, "{:.20}: {:?} but {:?}", before, part(before), part(&after));
        }
    }
}
