//! The next cast goes to a spot that is known, rather than to the middle of its square.

use super::*;
use restwater_log::{FeedKind, FeedMeasure};
use restwater_screen::{FeedTap, SwimView};

fn swim_at(phone: &mut Phone, ms: i64) -> SwimView {
    match phone.app().screen(Which::Swim, &at(ms)).unwrap() {
        Screen::Swim(view) => view,
        other => panic!("{other:?}"),
    }
}

fn clipped(hundredths: u32, bearing_cdeg: i32) -> Spot {
    let reach = Reach::Wraps { hundredths, span_tenth_mm: 20_000 };
    Spot { mark: None, bearing_cdeg, reach, clipped: true }
}

/// Rod 1 fished 17 wraps straight out and was wound in; then it went elsewhere.
fn fished() -> Phone {
    let mut phone = super::rods::with_rods(2);
    phone.tap(MIN, &Action::SetSpot { rod: 1, spot: clipped(1_700, 0) }).unwrap();
    phone.tap(2 * MIN, &Action::Cast { rod: 1 }).unwrap();
    phone.tap(20 * MIN, &Action::WoundIn { rod: 1 }).unwrap();
    phone.tap(21 * MIN, &Action::SetSpot { rod: 1, spot: clipped(1_200, 0) }).unwrap();
    phone.tap(22 * MIN, &Action::Cast { rod: 1 }).unwrap();
    phone
}

/// Aims at the square of 17 wraps.
fn aim(phone: &mut Phone) {
    let session = phone.app().session().unwrap();
    let swim = restwater_session::swim_of(session).unwrap();
    let there = restwater_swim::Spot { bearing_deg: 0.0, range_m: 34.0 };
    let cell = swim.cell_of(there).unwrap();
    phone.tap(23 * MIN, &Action::Swim { tap: SwimTap::Cell { cell } }).unwrap();
}

#[test]
fn a_square_that_was_fished_clipped_up_is_fished_at_the_same_range_again_by_any_rod() {
    for rod in [1, 2] {
        let mut phone = fished();
        phone.tap(22 * MIN + 30_000, &Action::ChooseRod { rod }).unwrap();
        aim(&mut phone);
        let headline = swim_at(&mut phone, 24 * MIN).headline;
        assert!(headline.ends_with("Straight out, 17 wraps of 2 m (34 m), as before"), "{headline}");
        phone.open();
        phone.tap(24 * MIN, &Action::ChooseRod { rod }).unwrap();
        aim(&mut phone);
        phone.tap(25 * MIN, &Action::CastHere).unwrap();
        let sent = phone.app().session().unwrap().rods[usize::from(rod) - 1].spot.clone();
        assert_eq!(sent, Some(clipped(1_700, 0)), "rod {rod}");
        let view = swim_at(&mut phone, 26 * MIN);
        assert_eq!(view.headline, "Next: Straight out, 17 wraps of 2 m (34 m), as before");
    }
}

#[test]
fn a_rod_that_is_clipped_up_for_its_first_cast_is_sent_to_its_clip() {
    let mut phone = started();
    phone.tap(MIN, &Action::SetSpot { rod: 1, spot: clipped(1_700, -200) }).unwrap();
    let view = swim_at(&mut phone, 2 * MIN);
    assert_eq!(view.headline, "Next: 2° left, 17 wraps of 2 m (34 m), clipped up");
    // What was fed there is a reason, and the first.
    let ball = Action::Feed { tap: FeedTap::Measure { what: FeedKind::Ball, measure: FeedMeasure::Ball } };
    phone.tap(3 * MIN, &ball).unwrap();
    let view = swim_at(&mut phone, 4 * MIN);
    assert!(view.why.starts_with("Fed 1 min ago; "), "{}", view.why);
}
