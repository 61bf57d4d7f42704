//! Fish that show themselves.

use super::*;
use restwater_log::{FishSign, OtherPeg, Payload, Side};
use restwater_match_day::weight::Weight;
use restwater_screen::{FishTap, FishView, KeyTap, MendTap, SeenTap};
use restwater_session::Logged;

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
        (update.notice.as_str(), phone.undoes().as_deref()),
        ("Logged: bubbles.", Some("fish showing 22:15"))
    );
    assert_eq!(phone.seen_screen(14 * MIN).says[1], "Bubbles, 12 min ago.");
    let Screen::Swim(swim) = phone.app().screen(Which::Swim, &at(14 * MIN)).unwrap() else { panic!() };
    let reason = swim.reasons.iter().find(|reason| reason.starts_with("fish showed")).unwrap();
    assert!(reason.ends_with(", 12 min ago"), "{reason}");
    assert!(swim.cell.ends_with("Fish showed 12 min ago."), "{}", swim.cell);
}

#[test]
fn without_a_spot_fish_are_logged_at_the_aim_or_by_a_row_of_keys_on_the_map() {
    let mut phone = started();
    assert_eq!(phone.seen_screen(MIN).title, "Fish showing at the aim on the map");
    phone.tap(MIN, &Action::StepAim { step: Step::Right }).unwrap();
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

fn caught(side: Side) -> Action {
    Action::Seen { tap: SeenTap::Neighbour { side } }
}

#[test]
fn a_neighbours_fish_has_a_key_for_each_side_on_the_bank_and_on_its_screen() {
    let mut phone = started();
    let key = phone.bank_key(MIN, Key::NeighbourLeft);
    assert_eq!((key.label.as_str(), key.enabled), ("LEFT PEG", true));
    let update = phone.tap(2 * MIN, key.tap.action().unwrap()).unwrap();
    assert_eq!(
        (update.notice.as_str(), phone.undoes().as_deref()),
        ("Logged: a fish to the left.", Some("neighbour's fish 22:15"))
    );
    let view = phone.seen_screen(3 * MIN);
    let across = view.small.iter().find(|key| key.tag == "neighbour-across").unwrap();
    assert!(across.closes);
    phone.tap(4 * MIN, across.tap.action().unwrap()).unwrap();
    let keys = [Key::NeighbourLeft, Key::NeighbourRight, Key::NeighbourAcross];
    let labels = |phone: &mut Phone, ms| keys.map(|key| phone.bank_key(ms, key).label);
    assert_eq!(labels(&mut phone, 5 * MIN), ["LEFT PEG", "RIGHT PEG", "FAR BANK"], "whichever was last");
    let right = phone.bank_key(5 * MIN, Key::NeighbourRight);
    let logged = phone.tap(5 * MIN, right.tap.action().unwrap()).unwrap();
    assert_eq!(logged.notice, "Logged: a fish to the right.");
    phone.tap(5 * MIN + 2_000, &Action::Undo).unwrap();
    phone.tap(6 * MIN, &caught(Side::Left)).unwrap();
    assert_eq!(
        phone.seen_screen(14 * MIN).says,
        [
            "You or the lake? Can't tell yet.",
            "In 12 min, since 22:15: you landed 0 and saw 2 neighbours land 1.",
            "The first fish of each only starts the count. You don't see all they land, and no two pegs are alike.",
            "No square is chosen on the map yet.",
            "A fish to the left, 8 min ago.",
            "A fish across the water, 10 min ago.",
        ]
    );
    phone.tap(15 * MIN, &Action::Undo).unwrap();
    assert_eq!(phone.app().session().unwrap().neighbours.len(), 2);
    phone.tap(16 * MIN, &Action::EndSession).unwrap();
    let refused = phone.tap(17 * MIN, &caught(Side::Right)).unwrap_err();
    assert_eq!(phone.app().message(&refused), "No session is open. Start one first.");
}

#[test]
fn if_neighbours_catch_far_more_it_is_not_the_lake() {
    let mut phone = started();
    for i in 0..20 {
        phone.tap((1 + 7 * i) * MIN, &caught(Side::Right)).unwrap();
    }
    let says = phone.seen_screen(150 * MIN).says;
    assert_eq!(says[0], "They catch more than you: it isn't only the lake.");
    assert_eq!(says[1], "In 149 min, since 22:14: you landed 0 and saw the neighbour land 19.");
}

#[test]
fn a_doubtful_fish_of_a_neighbour_can_be_removed_in_mend_but_a_cast_can_not() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(10 * MIN, &caught(Side::Left)).unwrap();
    phone.tap(11 * MIN, &Action::TimeBack { minutes: 5 }).unwrap();
    let Screen::Mend(mend) = phone.app().screen(Which::Mend, &at(12 * MIN)).unwrap() else { panic!() };
    assert_eq!(mend.lines.len(), 1);
    let op = mend.lines[0].op;
    phone.tap(13 * MIN, &mend.lines[0].open).unwrap();
    let Screen::Mend(mend) = phone.app().screen(Which::Mend, &at(14 * MIN)).unwrap() else { panic!() };
    let rows = mend.open.unwrap().rows;
    let remove = rows.iter().find(|row| row.tag == "remove").unwrap();
    phone.tap(15 * MIN, &remove.choices[0].action).unwrap();
    let session = phone.app().session().unwrap();
    assert_eq!((session.neighbours.len(), session.doubts.len()), (0, 0));
    let cast = session.casts[0].op;
    let refused = phone.tap(16 * MIN, &Action::Mend { op: cast, tap: MendTap::Remove }).unwrap_err();
    assert_eq!(refused.kind(), ErrorKind::NotNow);
    phone.tap(17 * MIN, &Action::Undo).unwrap();
    assert_eq!(phone.app().session().unwrap().neighbours[0].op, op);
}

#[test]
fn the_map_file_has_fish_neighbours_nets_and_the_match_and_reads_none_of_it_back() {
    let mut phone = started();
    phone.tap(1_000, &tackle(TackleTap::Reach { reach: Reach::Yards { hundredths: 3_000 } })).unwrap();
    for (minute, action) in [(1, CAST), (10, BITE), (12, LANDED)] {
        phone.tap(minute * MIN, &action).unwrap();
    }
    phone.tap(13 * MIN, &Action::Fish { cast: None, tap: FishTap::Class { name: "Roach".into() } }).unwrap();
    phone.tap(14 * MIN, &Action::Fish { cast: None, tap: FishTap::PutBack { back: true } }).unwrap();
    phone.tap(15 * MIN, &caught(Side::Right)).unwrap();
    let id = phone.app().session().unwrap().id;
    let said = vec![
        Payload::NetWeighed { net: "Net 1".into(), shown: Weight::Grams(2_000).logged() },
        Payload::SectionSet { left: 2, right: 3 },
        Payload::OtherNetTold {
            peg: OtherPeg { side: Side::Left, place: 2 },
            shown: Weight::Grams(900).logged(),
            guessed: true,
        },
        Payload::MatchRuleSaid { text: "dead fish don't count".into() },
    ];
    phone.app().write_all(id, said, &at(16 * MIN)).unwrap();
    let (text, _) = phone.app().export_geojson(false).unwrap();
    let map: serde_json::Value = serde_json::from_str(&text).unwrap();
    let of = |kind: &str| {
        let all = map["features"].as_array().unwrap();
        all.iter().find(|f| f["properties"]["kind"] == kind).unwrap()["properties"].clone()
    };
    let fish = of("fish landed");
    assert_eq!((&fish["class"], &fish["put_back"]), (&"Roach".into(), &true.into()));
    assert!(fish["range_m"].as_f64().unwrap() > 27.0 && fish.get("grams").is_none());
    let day = of("peg");
    assert_eq!(day["neighbours_fish"][0]["side"], "right");
    assert_eq!(day["nets"][0]["grams"], 2_000.0);
    assert_eq!((&day["section"]["pegs_left"], &day["section"]["pegs_right"]), (&2.into(), &3.into()));
    assert_eq!(
        (&day["other_nets"][0]["grams"], &day["other_nets"][0]["by_eye"]),
        (&900.0.into(), &true.into())
    );
    assert_eq!(day["dead_fish_rule"], "dead fish don't count");
    let device = phone.app().journal.store().device().to_string();
    assert_eq!(day["phone_id"], device.as_str());
    assert_eq!(phone.app().look_at_geojson(&text).unwrap().skipped, [] as [String; 0]);
}

/// END came the next morning, or long after all-out: no minute of that was fished.
#[test]
fn you_and_the_neighbours_are_compared_over_the_minutes_that_were_fished() {
    let minutes = |phone: &mut Phone, end: i64| {
        phone.tap(20 * MIN, &caught(Side::Right)).unwrap();
        phone.tap(21 * MIN, &CAST).unwrap();
        phone.tap(60 * MIN, &Action::WoundIn { rod: 1 }).unwrap();
        phone.tap(end * MIN, &Action::EndSession).unwrap();
        let session = phone.app().session().unwrap().clone();
        let now = phone.app().on_line(&at((end + 5) * MIN));
        restwater_session::beside(&session, &now).unwrap().minutes
    };
    assert_eq!(minutes(&mut started(), 70), 50.0);
    assert_eq!(minutes(&mut started(), 15 * 60), 40.0, "up to the last entry");
    // All-in at 22:30, which is 16 min 40 s after START, all-out five hours later.
    let all_out_min = 316.0 + 40.0 / 60.0;
    let in_a_match = minutes(&mut super::match_day::in_match(), 316 + 90);
    assert!((in_a_match - (all_out_min - 20.0)).abs() < 1e-9, "{in_a_match}");
}

/// What was seen there just now is read first, before what the log says of such spots.
#[test]
fn the_swim_says_first_what_has_just_shown() {
    let mut phone = started();
    phone.tap(1_000, &tackle(TackleTap::Reach { reach: Reach::Yards { hundredths: 3_000 } })).unwrap();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(21 * MIN, &BITE).unwrap();
    phone.tap(22 * MIN, &Action::Lost { rod: 1 }).unwrap();
    phone.tap(23 * MIN, &Action::Swim { tap: SwimTap::Seen { sign: FishSign::Rolled } }).unwrap();
    let Screen::Swim(swim) = phone.app().screen(Which::Swim, &at(24 * MIN)).unwrap() else { panic!() };
    assert!(swim.reasons.len() > 1 && swim.why.starts_with("Fish showed"), "{:?}", swim.reasons);
}
