//! The section of a match: the other anglers' nets, called or guessed, and the match rule in words.

use super::match_day::{FISHING, in_match, tap, weighed_in, weight};
use super::*;
use restwater_log::{OtherPeg, Side};
use restwater_screen::MatchTap;

fn peg(side: Side, place: u8) -> Action {
    tap(MatchTap::ScalesPeg { peg: OtherPeg { side, place } })
}

impl Phone {
    /// Enters the weight that the scales show, in pounds, and confirms it.
    fn scales_show(&mut self, ms: i64, digits: &[u8]) -> Update {
        for (i, digit) in digits.iter().enumerate() {
            let at = ms + 200 * i64::try_from(i).unwrap();
            self.tap(at, &tap(MatchTap::ScalesDigit { digit: *digit })).unwrap();
        }
        self.tap(ms + 1_000, &tap(MatchTap::WeighIn)).unwrap()
    }

    fn coming(&mut self, ms: i64, label: &str) -> Option<String> {
        self.view(ms).coming.into_iter().find(|line| line.label == label).map(|line| line.value)
    }
}

/// A fish of 4 lb in the net, four pegs of the section to the left and one to the right; the next peg on the
/// left is estimated at 5 lb.
fn with_a_guess() -> (Phone, i64) {
    let mut phone = in_match();
    phone.land(FISHING);
    phone.tap(FISHING + 12 * MIN, &weight(1_024)).unwrap();
    phone.tap(FISHING + 13 * MIN, &tap(MatchTap::Section { left: 4, right: 1 })).unwrap();
    let now = FISHING + 14 * MIN;
    phone.tap(now, &peg(Side::Left, 1)).unwrap();
    let page = phone.view(now).weigh_in.unwrap();
    assert_eq!(
        (page.title.as_str(), page.lines[0].value.as_str()),
        ("Weigh-in: Next peg left", "not known yet")
    );
    assert_eq!((page.weighed.label.as_str(), page.weighed.sub.as_str()), ("GUESS", "Next peg left, by eye"));
    phone.scales_show(now + 1_000, &[5]);
    (phone, now + 3_000)
}

#[test]
fn a_wrong_digit_at_the_scales_is_rubbed_out_by_one_key_and_the_net_stays() {
    let mut phone = in_match();
    phone.land(FISHING);
    let mut now = 331 * MIN;
    let beside_0 = |phone: &mut Phone, now| phone.view(now).weigh_in.unwrap().pad[9].clone();
    let net = phone.view(now).weigh_in.unwrap().title;
    assert_eq!(beside_0(&mut phone, now).tag, "next-net");
    for digit in [8, 0] {
        now += 1_000;
        phone.tap(now, &tap(MatchTap::ScalesDigit { digit })).unwrap();
        assert_eq!(beside_0(&mut phone, now).tag, "rub-out", "as soon as a digit was typed");
    }
    for (ms, figure) in [(1_000, "8 lb"), (300, "0 lb")] {
        now += ms;
        let rub_out = beside_0(&mut phone, now).tap;
        phone.tap(now, &tap(rub_out)).unwrap();
        assert_eq!(phone.view(now).weigh_in.unwrap().figure, figure);
    }
    // The third of three quick taps does not put another net on the scales.
    let next = beside_0(&mut phone, now);
    assert_eq!(next.tag, "next-net");
    assert!(phone.tap(now + 300, &tap(next.tap.clone())).unwrap().repeated);
    assert_eq!(phone.view(now + 300).weigh_in.unwrap().title, net);
    phone.tap(now + 1_000, &tap(next.tap)).unwrap();
    assert_ne!(phone.view(now + 1_000).weigh_in.unwrap().title, net);
}

#[test]
fn a_place_in_the_section_is_a_range_that_narrows_as_nets_are_called() {
    let (mut phone, now) = with_a_guess();
    // 5 lb by eye may be 3 lb 12 oz, so the 4 lb may be ahead of it, or behind it and the four unknown nets.
    assert_eq!(phone.coming(now, "Place in the section").as_deref(), Some("1 to 6 of 6"));
    let how =
        phone.view(now).coming_figures.lines.into_iter().find(|note| note.starts_with("Place:")).unwrap();
    assert!(
        how.starts_with("Place: your nets count 4 lb, and 1 of 5 others are known, 1 of them guessed."),
        "{how}"
    );
    // The pad selects the next peg by itself.
    assert_eq!(phone.view(now).weigh_in.unwrap().title, "Weigh-in: Next peg right");
    let over = 331 * MIN;
    phone.tap(over, &weighed_in("Net 1", 1_024)).unwrap();
    phone.tap(over + MIN, &peg(Side::Left, 4)).unwrap();
    assert_eq!(phone.view(over + MIN).weigh_in.unwrap().weighed.sub, "4th peg left");
    for (i, pounds) in [9, 3, 3, 5, 2].into_iter().enumerate() {
        phone.scales_show(over + 2 * MIN + i64::try_from(i).unwrap() * 2_000, &[pounds]);
    }
    // Called from the left: 9, 3, 3, 5 and, on the right, 2 lb. The own 4 lb is third.
    assert_eq!(phone.coming(over + 3 * MIN, "Place in the section").as_deref(), Some("3 of 6"));
    phone.tap(over + 4 * MIN, &peg(Side::Left, 4)).unwrap();
    let lines = phone.view(over + 4 * MIN).weigh_in.unwrap().lines;
    let said = |line: &restwater_screen::MatchLine| format!("{}: {}", line.label, line.value);
    assert_eq!(said(&lines[0]), "4th peg left: 9 lb, called");
    assert_eq!(said(&lines[1]), "Place in the section: 3 of 6");
}

#[test]
fn another_anglers_net_survives_a_restart_and_can_be_undone_and_redone() {
    let (mut phone, now) = with_a_guess();
    phone.open();
    assert_eq!(phone.coming(now, "Place in the section").as_deref(), Some("1 to 6 of 6"));
    let undone = phone.tap(now + 1_000, &Action::Undo).unwrap();
    assert!(undone.notice.contains("other net"), "{}", undone.notice);
    assert_eq!(phone.coming(now + 2_000, "Place in the section"), None);
    phone.tap(now + 3_000, &Action::Redo).unwrap();
    assert_eq!(phone.coming(now + 4_000, "Place in the section").as_deref(), Some("1 to 6 of 6"));
    phone.tap(now + 5_000, &Action::Undo).unwrap();
    phone.tap(now + 6_000, &Action::Undo).unwrap();
    assert_eq!(phone.app().session().unwrap().section, None);
}

/// Whether a weight is a guess depends on the match clock, not on a wall clock that was moved.
#[test]
fn moving_the_wall_clock_does_not_turn_a_guess_into_a_called_weight() {
    let (mut phone, now) = with_a_guess();
    let moved = |ms: i64| Moment { wall_ms: at(ms).wall_ms + 600 * MIN, ..at(ms) };
    let taps = [peg(Side::Right, 1), tap(MatchTap::ScalesDigit { digit: 7 }), tap(MatchTap::WeighIn)];
    for (i, action) in taps.iter().enumerate() {
        phone.app().act(action, &moved(now + 1_000 * i64::try_from(i).unwrap())).unwrap();
    }
    let others = &phone.app().session().unwrap().others;
    assert_eq!(others.iter().map(|net| net.guessed).collect::<Vec<_>>(), [true, true]);
}

#[test]
fn section_and_nets_are_exported_and_disappear_when_the_import_is_undone() {
    let (mut mine, now) = with_a_guess();
    let all =
        Action::Files { tap: restwater_screen::FilesTap::Span { span: restwater_screen::Span::Everything } };
    mine.tap(now, &all).unwrap();
    let go = &mut |_: restwater_exchange::Progress| std::ops::ControlFlow::Continue(());
    let path = mine.app().send(&at(now), go).unwrap().path;
    let mut theirs = Phone::with_ids_from(500);
    theirs.app().take_in(std::path::Path::new(&path), "a friend", &at(now + MIN), go).unwrap();
    let id = mine.app().session().unwrap().id;
    let of = |phone: &mut Phone| {
        let session = restwater_session::fold(id, &phone.app().journal.store().ops_of(id).unwrap());
        (session.others, session.section)
    };
    assert_eq!(of(&mut theirs), of(&mut mine));
    let Screen::Files(files) = theirs.app().screen(Which::Files, &at(now + MIN)).unwrap() else { panic!() };
    theirs.tap(now + 2 * MIN, &Action::UndoImport { id: files.imports[0].id }).unwrap();
    assert_eq!(of(&mut theirs), (Vec::new(), None));
}

#[test]
fn the_rule_on_dead_fish_is_kept_in_the_organisers_words() {
    let mut phone = in_match();
    let row = |phone: &mut Phone, ms| phone.view(ms).rows.into_iter().find(|row| row.tag == "said").unwrap();
    assert_eq!(row(&mut phone, 20_000).value, "ask the organiser");
    let into = row(&mut phone, 20_000).typing.unwrap().into;
    phone.tap(20_000, &typed(into, " dead fish don't count ")).unwrap();
    phone.open();
    assert_eq!(row(&mut phone, 21_000).value, "dead fish don't count");
    let none = row(&mut phone, 21_000).choices[0].action.clone();
    phone.tap(22_000, &none).unwrap();
    assert_eq!(row(&mut phone, 23_000).value, "ask the organiser");
    phone.tap(24_000, &Action::Undo).unwrap();
    assert_eq!(row(&mut phone, 25_000).value, "dead fish don't count");
    let mut phone = started();
    let refused = phone.tap(1_000, &typed(TypedInto::MatchRule, "dead fish count")).unwrap_err();
    assert!(phone.app().message(&refused).starts_with("No match is set."));
    let refused = phone.tap(2_000, &tap(MatchTap::Section { left: 1, right: 1 })).unwrap_err();
    assert!(phone.app().message(&refused).starts_with("No match is set."));
}

/// The section was shortened, or undone, while the nets of a peg beyond it were on the scales.
#[test]
fn what_was_typed_goes_to_the_net_that_the_page_names() {
    let mut phone = in_match();
    phone.tap(FISHING, &tap(MatchTap::Section { left: 4, right: 1 })).unwrap();
    let over = 331 * MIN;
    phone.tap(over, &peg(Side::Left, 4)).unwrap();
    phone.tap(over + MIN, &tap(MatchTap::Section { left: 2, right: 1 })).unwrap();
    assert_eq!(phone.view(over + 2 * MIN).weigh_in.unwrap().title, "Weigh-in: Net 1");
    phone.scales_show(over + 3 * MIN, &[9]);
    let session = phone.app().session().unwrap();
    assert_eq!(session.scales.iter().map(|scales| scales.net.as_str()).collect::<Vec<_>>(), ["Net 1"]);
    assert!(session.others.is_empty());
}

#[test]
fn a_net_that_the_rules_no_longer_have_leaves_the_scales() {
    let mut phone = in_match();
    let over = 331 * MIN;
    phone.tap(over, &tap(MatchTap::ScalesNet { name: "Net 2".into() })).unwrap();
    let one = restwater_screen::RuleTap::Nets { count: 1 };
    phone.tap(over + MIN, &tap(MatchTap::Rule { rule: one })).unwrap();
    assert_eq!(phone.view(over + 2 * MIN).weigh_in.unwrap().title, "Weigh-in: Net 1");
    phone.scales_show(over + 3 * MIN, &[9]);
    assert_eq!(phone.app().session().unwrap().scales[0].net, "Net 1");
}
