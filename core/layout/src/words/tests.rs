use super::super::phones::PHONES;
use super::super::{BankLayout, bank_layout};
use super::sizes::{HAIR_MM, LINE};
use super::*;

fn all(scale: f64, left: bool) -> Vec<(&'static str, PadAsk, BankLayout)> {
    let mut found = Vec::new();
    for phone in &PHONES {
        for state in
            [BankState::NoSession, BankState::Ready, BankState::Out, BankState::FishOn, BankState::Landed]
        {
            for rods in 1..=3 {
                let ask = PadAsk { state, rods, page: 0 };
                let glass = phone.glass(scale, left);
                found.push((phone.name, ask, bank_layout(&glass, ask).unwrap()));
            }
        }
    }
    found
}

fn asks() -> Vec<PadAsk> {
    let states =
        [BankState::NoSession, BankState::Ready, BankState::Out, BankState::FishOn, BankState::Landed];
    states.into_iter().flat_map(|state| (1..=3).map(move |rods| PadAsk { state, rods, page: 0 })).collect()
}

fn shown(layout: &BankLayout) -> Vec<Rect> {
    let maybe = [layout.since, layout.fan, layout.spot, layout.rig, layout.latest];
    let always = [layout.header, layout.screens, layout.strip, layout.advice, layout.notice];
    let screen_keys = layout.screen_keys.iter().map(|key| key.rect);
    let keys =
        layout.keys.iter().map(|k| k.rect).chain(layout.more).chain(layout.next_rod).chain(screen_keys);
    always
        .into_iter()
        .chain(maybe.into_iter().flatten())
        .chain(layout.rods.iter().map(|r| r.target))
        .chain(keys)
        .collect()
}

#[test]
fn nothing_overlaps_and_nothing_leaves_the_glass() {
    let ways = [1.0, 1.3, 2.0].into_iter().flat_map(|scale| [(scale, false), (scale, true)]);
    for (phone, scale, left) in PHONES.iter().flat_map(|p| ways.clone().map(move |(s, l)| (p, s, l))) {
        for glass in phone.both_ways(scale, left) {
            for ask in asks() {
                let (phone, layout) = (phone.name, bank_layout(&glass, ask).unwrap());
                let rects = shown(&layout);
                for (i, rect) in rects.iter().enumerate() {
                    let inside = rect.left >= 0.0
                        && rect.right() <= glass.width_px + 1e-6
                        && rect.top >= glass.inset_top_px
                        && rect.bottom() <= glass.height_px - glass.inset_bottom_px + 1e-6;
                    assert!(inside && rect.width > 0.0 && rect.height > 0.0, "{phone} {ask:?} {rect:?}");
                    for other in &rects[i + 1..] {
                        assert!(!rect.overlaps(other), "{phone} {scale} {ask:?}: {rect:?} and {other:?}");
                    }
                }
            }
        }
    }
}

#[test]
fn spot_and_advice_are_on_every_glass_with_one_rod() {
    for (phone, ask, layout) in all(1.0, false).into_iter().filter(|(_, ask, _)| ask.rods == 1) {
        assert!(layout.spot.is_some(), "{phone} {ask:?}");
        let px = PHONES.iter().find(|p| p.name == phone).unwrap().px_per_mm();
        let (advice, strip) = (layout.advice.height / px, layout.strip.height / px);
        assert!(advice >= 4.0 && strip >= 6.6 - HAIR_MM, "{phone}: {advice}, {strip}");
    }
}

#[test]
fn nothing_above_the_pad_moves_from_one_state_to_the_next() {
    for scale in [1.0, 2.0] {
        for states in all(scale, false).chunks(15) {
            for (rods, first) in (1u8..=3).zip(&states[..3]) {
                for (phone, ask, layout) in states.iter().filter(|(_, ask, _)| ask.rods == rods) {
                    let same = layout.strip == first.2.strip
                        && layout.rods == first.2.rods
                        && layout.header == first.2.header
                        && layout.detail == first.2.detail
                        && layout.fan == first.2.fan;
                    // Where there is one place beside the clock, the spot is there until it is on the pad.
                    let turns = ask.rods == 1 && layout.fan.is_none();
                    assert!(same && (turns || layout.since == first.2.since), "{phone} {ask:?}");
                }
            }
        }
    }
}

#[test]
fn at_twice_the_text_a_large_glass_gives_twice_the_size() {
    let phone = PHONES.last().unwrap();
    let ask = PadAsk { state: BankState::Out, rods: 1, page: 0 };
    let once = bank_layout(&phone.glass(1.0, false), ask).unwrap();
    let twice = bank_layout(&phone.glass(2.0, false), ask).unwrap();
    assert_eq!(twice.text.headline, 2.0 * once.text.headline);
    assert!(!once.apart && twice.apart);
    assert_eq!(once.keys, twice.keys);
}

#[test]
fn with_two_rods_each_is_named_or_numbered_and_the_second_sentence_is_two_millimetres_high() {
    for phone in &PHONES {
        for (scale, left) in [(1.0, false), (2.0, false), (1.0, true), (2.0, true)] {
            for ask in asks().into_iter().filter(|ask| ask.rods == 2) {
                let glass = phone.glass(scale, left);
                let (layout, px) = (bank_layout(&glass, ask).unwrap(), phone.px_per_mm());
                let called = layout.rods.iter().all(|rod| rod.name.or(rod.number).is_some());
                assert!(called, "{} {ask:?}", phone.name);
                // Three buttons on the lowest screens leave less; there both sentences have one size.
                let least = if phone.name.ends_with("buttons") { 1.6 } else { 2.1 } * scale;
                let body = layout.text.body / px;
                assert!(body >= least - 1e-6, "{} {ask:?}: {body}", phone.name);
                if scale == 1.0 {
                    let both = (layout.text.headline + layout.text.body) * 1.2;
                    assert!(layout.advice.height >= both - 1e-6, "{} {ask:?}: both sentences", phone.name);
                }
            }
        }
    }
}

/// Which rod is due first is the question with three rods: it has its mark wherever its name has no room to say so.
#[test]
fn each_of_several_rods_has_room_for_what_says_that_it_is_due_first() {
    for phone in &PHONES {
        for (scale, left) in [(1.0, false), (1.0, true), (2.0, false), (2.0, true)] {
            for glass in phone.both_ways(scale, left) {
                for rods in 2..=3 {
                    let layout =
                        bank_layout(&glass, PadAsk { state: BankState::Out, rods, page: 0 }).unwrap();
                    let px = phone.px_per_mm();
                    for rod in &layout.rods {
                        let Some(first) = rod.first else {
                            let name = rod.name.unwrap();
                            assert!(name.width >= 15.0 * px - 1e-6, "{} {rods}: {rod:?}", phone.name);
                            continue;
                        };
                        let number = rod.number.unwrap();
                        let room = first.width.min(2.0 * first.height) / px;
                        assert!(room >= 3.0 && !first.overlaps(&number), "{} {rods}: {rod:?}", phone.name);
                        // The seconds take at most the lower half of the digits.
                        let half = rod.digits.bottom() - rod.digits.height / 2.0;
                        let clear = !first.overlaps(&rod.digits) || first.bottom() <= half + 1e-6;
                        assert!(clear, "{} {rods}: {rod:?}", phone.name);
                        for part in [first, number] {
                            let inside = part.left >= rod.target.left - 1e-6
                                && part.right() <= rod.target.right() + 1e-6
                                && part.top >= rod.target.top - 1e-6
                                && part.bottom() <= rod.target.bottom() + 1e-6;
                            assert!(inside, "{} {rods}: {rod:?}", phone.name);
                        }
                    }
                }
            }
        }
    }
}

#[test]
fn a_number_is_beside_the_digits_in_its_cell() {
    let ask = PadAsk { state: BankState::Out, rods: 2, page: 0 };
    let layout = bank_layout(&PHONES[0].glass(1.0, false), ask).unwrap();
    for rod in &layout.rods {
        let number = rod.number.unwrap();
        assert!(!number.overlaps(&rod.digits), "{rod:?}");
        let first = rod.first.unwrap();
        assert!(
            !first.overlaps(&number) && !first.overlaps(&rod.digits),
            "the mark of the rod due first: {rod:?}"
        );
        for part in [number, first, rod.digits] {
            let inside = part.left >= rod.target.left
                && part.right() <= rod.target.right()
                && part.top >= rod.target.top
                && part.bottom() <= rod.target.bottom();
            assert!(inside, "{rod:?}");
        }
    }
}

#[test]
fn pages_have_the_text_that_the_phone_is_set_to() {
    let ask = PadAsk { state: BankState::Out, rods: 1, page: 0 };
    for phone in &PHONES {
        let at = |scale| bank_layout(&phone.glass(scale, false), ask).unwrap().page_text.body;
        assert!((at(2.0) - 2.0 * at(1.0)).abs() < 1e-9, "{}", phone.name);
    }
}

/// What the second sentence may be at its most: its own place, or what the first leaves of the advice at one size with it.
fn second(layout: &BankLayout, px: f64) -> f64 {
    let share = layout.text.body / (layout.text.headline + layout.text.body);
    layout.detail.map_or(layout.advice.height * share, |place| place.height) / px / LINE
}

/// Text grows where there is room, and no place is smaller for large text than for small text.
#[test]
fn at_twice_the_text_the_second_sentence_grows_by_a_third_on_every_glass_both_ways() {
    for (phone, left) in PHONES.iter().flat_map(|p| [(p, false), (p, true)]) {
        for (once, twice) in phone.both_ways(1.0, left).into_iter().zip(phone.both_ways(2.0, left)) {
            for ask in asks() {
                let (once, twice) = (bank_layout(&once, ask).unwrap(), bank_layout(&twice, ask).unwrap());
                let (px, which) = (phone.px_per_mm(), format!("{} {ask:?}", phone.name));
                let (small, large) = (second(&once, px).min(once.text.body / px), second(&twice, px));
                assert!(large >= 1.3 * small, "{which}: {small} to {large}");
                // With nothing out the advice has the lines of spot and rig too, which change places with larger digits.
                if ask.state == BankState::Ready {
                    continue;
                }
                let rest =
                    if twice.detail.is_some() { once.text.headline * LINE } else { once.advice.height };
                assert!(twice.advice.height >= rest - 1e-6, "{which}");
                let area = |place: Option<Rect>| place.map_or(0.0, |r| r.width * r.height);
                assert!(area(twice.spot) >= area(once.spot) - 1e-6, "{which}");
                for (asked, was) in [
                    (twice.text.headline, once.text.headline),
                    (twice.text.body, once.text.body),
                    (twice.text.primary, once.text.primary),
                    (twice.text.secondary, once.text.secondary),
                    (twice.text.sub, once.text.sub),
                ] {
                    assert!((asked - 2.0 * was).abs() < 1e-6, "{which}: {was} to {asked}");
                }
            }
        }
    }
}

/// What is on the screen at 100 % is there at 200 % too, and no line of words is lower. Only beside the clock of the four lowest
/// screens there is room for one text of large letters: it is the spot, and UNDO says the time of the cast.
#[test]
fn at_twice_the_text_no_line_of_words_is_dropped() {
    let mut lost = Vec::new();
    for (phone, left) in PHONES.iter().flat_map(|p| [(p, false), (p, true)]) {
        for (once, twice) in phone.both_ways(1.0, left).into_iter().zip(phone.both_ways(2.0, left)) {
            let side = once.width_px > once.height_px;
            for ask in asks() {
                let (small, large) = (bank_layout(&once, ask).unwrap(), bank_layout(&twice, ask).unwrap());
                for (what, was, is) in [
                    ("since", small.since, large.since),
                    ("spot", small.spot, large.spot),
                    ("rig", small.rig, large.rig),
                    ("fan", small.fan, large.fan),
                ] {
                    let kept = was.is_none() || is.is_some();
                    let lower = was.zip(is).is_some_and(|(was, is)| is.height < was.height - 1e-6);
                    let beside_the_clock =
                        ask.rods == 1 && large.fan.is_none() && large.detail.is_some() && !side;
                    let given_up = beside_the_clock && what == "since";
                    if (!kept && !given_up) || (lower && what != "fan") {
                        lost.push(format!(
                            "{} on its side: {side} {ask:?} {what}: {was:?} {is:?}",
                            phone.name
                        ));
                    }
                }
            }
        }
    }
    assert!(lost.is_empty(), "{}\n{}", lost.len(), lost.join("\n"));
}

/// On a screen on its side they are in the row of the pair, beside the key of the swim.
#[test]
fn with_nothing_out_spot_and_rig_are_as_wide_as_the_row_leaves() {
    for phone in &PHONES {
        for (left, rods) in [(false, 1), (false, 2), (true, 3)] {
            let ask = PadAsk { state: BankState::Ready, rods, page: 0 };
            for glass in phone.both_ways(1.0, left) {
                let layout = bank_layout(&glass, ask).unwrap();
                let cast = layout.keys.iter().find(|place| place.key == restwater_screen::Key::Cast).unwrap();
                let row = cast.rect.width + layout.more.unwrap().width;
                let swim = layout.keys.iter().find(|place| place.key == restwater_screen::Key::Swim).unwrap();
                for line in [layout.spot.unwrap(), layout.rig.unwrap()] {
                    let width = line.width + swim.rect.width;
                    assert!((width - row).abs() < 1e-6, "{} {ask:?}: {width} of {row}", phone.name);
                }
            }
        }
    }
}

/// The second sentence is a plan that is due, or the counts, and the third is the other of the two: neither hides the other.
#[test]
fn at_the_usual_text_three_sentences_have_a_line_on_every_glass_both_ways() {
    for (phone, left) in PHONES.iter().flat_map(|p| [(p, false), (p, true)]) {
        for glass in phone.both_ways(1.0, left) {
            for ask in asks() {
                let layout = bank_layout(&glass, ask).unwrap();
                let text = layout.text;
                let lines = (layout.advice.height / LINE - text.headline) / text.body;
                let apart = [layout.detail, layout.further].into_iter().flatten();
                let all = (lines + 1e-6).floor().max(0.0) as usize + apart.clone().count();
                assert!(all >= 2, "{} {ask:?}: {lines} lines", phone.name);
                assert!(apart.clone().count() <= 1, "they are in one place");
                assert!(apart.clone().all(|place| place.height >= 0.8 * text.body * LINE), "{}", phone.name);
            }
        }
    }
}

/// The digits that count from a landed fish say so, which UNDO doesn't, with large text too.
#[test]
fn at_twice_the_text_digits_after_a_landed_fish_say_what_they_count() {
    for phone in &PHONES {
        let ask = PadAsk { state: BankState::Landed, rods: 1, page: 0 };
        let [usual, large] = [1.0, 2.0].map(|scale| bank_layout(&phone.glass(scale, false), ask).unwrap());
        assert!(usual.since.is_none() || large.since.is_some(), "{}", phone.name);
    }
}

/// The spot is read at arm's length: beside the clock it has room for nearly four lines of the size of other sentences.
#[test]
fn the_spot_of_a_cast_that_is_out_is_as_large_as_the_sentences_on_every_glass() {
    for phone in &PHONES {
        for scale in [1.0, 1.3, 2.0] {
            let ask = PadAsk { state: BankState::Out, rods: 1, page: 0 };
            let layout = bank_layout(&phone.glass(scale, false), ask).unwrap();
            let spot = layout.spot.unwrap();
            let body = layout.text.body.min(layout.text.body / scale);
            let beside = spot.top < layout.strip.top;
            let lines = if beside { 3.5 } else { 1.0 };
            assert!(spot.height >= lines * LINE * body - 1e-6, "{} {scale}: {spot:?}, {body}", phone.name);
        }
    }
}
