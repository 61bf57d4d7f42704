//! Fish that show.

use super::*;
use restwater_log::FishSign;
use restwater_screen::{FishView, KeyTap, SeenTap};

fn sign(sign: FishSign) -> Action {
    Action::Seen { tap: SeenTap::Sign { sign } }
}

impl Phone {
    fn seen_screen(&mut self, ms: i64) -> FishView {
        match self.app().screen(Which::Seen, &at(ms)).unwrap() {
            Screen::Seen(view) => view,
            other => panic!("{other:?}"),
        }
    }
}

#[test]
fn fish_that_show_are_two_taps_from_the_bank_and_a_reason_for_where_next() {
    let mut phone = started();
    phone.tap(1_000, &tackle(TackleTap::Reach { reach: Reach::Yards { hundredths: 3_000 } })).unwrap();
    let key = phone.bank(MIN).keys.into_iter().find(|view| view.key == Key::Seen).unwrap();
    assert_eq!(key.tap, KeyTap::Open { which: Which::Seen });
    let view = phone.seen_screen(MIN);
    assert_eq!(view.title, "Fish showing at the spot");
    let bubbles = view.classes.iter().find(|key| key.tag == "bubbles").unwrap();
    assert!(bubbles.closes);
    let update = phone.tap(2 * MIN, bubbles.tap.action().unwrap()).unwrap();
    assert_eq!(
        (update.notice.as_str(), update.undo_label.as_deref()),
        ("Logged: bubbles.", Some("fish showing 22:15"))
    );
    assert_eq!(phone.seen_screen(14 * MIN).says[1], "Bubbles, 12 min ago.");
    let Screen::Swim(swim) = phone.app().screen(Which::Swim, &at(14 * MIN)).unwrap() else { panic!() };
    let reason = swim.reasons.iter().find(|reason| reason.starts_with("fish showed")).unwrap();
    assert!(reason.ends_with(", 12 min ago"), "{reason}");
    assert!(swim.cell.ends_with("Fish showed 12 min ago."), "{}", swim.cell);
}

#[test]
fn without_a_spot_fish_show_at_the_aim_and_on_the_map_by_a_row_of_its_keys() {
    let mut phone = started();
    assert_eq!(phone.seen_screen(MIN).title, "Fish showing at the aim on the map");
    phone.tap(2 * MIN, &sign(FishSign::Rolled)).unwrap();
    phone.tap(3 * MIN, &Action::StepAim { step: Step::Left }).unwrap();
    phone.tap(4 * MIN, &Action::Swim { tap: SwimTap::Seen { sign: FishSign::Topping } }).unwrap();
    let session = phone.app().session().unwrap();
    assert_eq!(session.shown.len(), 2);
    assert!(session.shown[1].place.bearing_cdeg < session.shown[0].place.bearing_cdeg);
    phone.tap(5 * MIN, &Action::EndSession).unwrap();
    let refused = phone.tap(6 * MIN, &sign(FishSign::Rolled)).unwrap_err();
    assert_eq!(phone.app().message(&refused), "No session is open. Start one first.");
}
