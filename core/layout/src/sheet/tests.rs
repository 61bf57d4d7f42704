use super::super::phones::{PHONES, STATES};
use super::super::{BankLayout, PadAsk, SECONDARY_MM, bank_layout};
use super::*;
use restwater_screen::BankState;
use std::collections::BTreeSet;

/// Where a session is open, MORE opens a sheet.
fn with_sheet() -> impl Iterator<Item = (BankState, u8)> {
    let states = STATES.into_iter().filter(|state| *state != BankState::NoSession);
    states.flat_map(|state| (1..=3).map(move |rods| (state, rods)))
}

fn all_keys(layout: &BankLayout) -> Vec<Rect> {
    layout.keys.iter().map(|key| key.rect).chain([layout.back]).chain(layout.more).collect()
}

#[test]
fn upright_every_further_key_is_on_one_sheet_two_taps_from_the_bank() {
    for phone in &PHONES {
        for (state, rods) in with_sheet() {
            let layout = |page| bank_layout(&phone.glass(1.0, false), PadAsk { state, rods, page }).unwrap();
            assert!(layout(0).more.is_some() && layout(0).sheet.is_none());
            let sheet = layout(1);
            assert_eq!((sheet.pages, sheet.more), (2, None), "{} {state:?} {rods}", phone.name);
            assert!(sheet.sheet.is_some() && sheet.next_rod.is_none());
            // Neither is a key of the pad on it.
            let pad: BTreeSet<Key> = layout(0).keys.iter().map(|key| key.key).collect();
            assert!(sheet.keys.iter().all(|key| !pad.contains(&key.key)));
            assert_eq!(sheet, layout(2), "another page would be the same");
        }
    }
}

#[test]
fn the_keys_of_the_sheet_are_large_enough_apart_and_on_the_screen_both_ways_for_both_hands() {
    for phone in &PHONES {
        for (scale, left) in [(1.0, false), (1.0, true), (2.0, false), (2.0, true)] {
            for glass in phone.both_ways(scale, left) {
                let px = glass.px_per_mm;
                for (state, rods) in with_sheet() {
                    let pages = bank_layout(&glass, PadAsk { state, rods, page: 1 }).unwrap().pages;
                    assert!(pages <= 3, "{} {state:?} has {pages} pages", phone.name);
                    for page in 1..pages {
                        let layout = bank_layout(&glass, PadAsk { state, rods, page }).unwrap();
                        let keys = all_keys(&layout);
                        let head = layout.sheet.unwrap();
                        assert!(head.title.height >= 5.9 * px && head.title.width >= 21.9 * px);
                        assert_eq!(layout.more.is_some(), pages > 2);
                        for (i, key) in keys.iter().enumerate() {
                            let least = key.width.min(key.height) / px;
                            assert!(least >= SECONDARY_MM - 1e-6, "{} {state:?}: {least}", phone.name);
                            assert!(key.left >= 0.0 && key.right() <= glass.width_px);
                            assert!(key.top >= glass.inset_top_px);
                            assert!(key.bottom() <= glass.height_px - glass.inset_bottom_px);
                            assert!(!key.overlaps(&head.title));
                            let apart = keys[i + 1..].iter().map(|other| key.gap_to(other) / px);
                            assert!(apart.fold(f64::INFINITY, f64::min) >= super::super::GAP_MM - 1e-6);
                        }
                    }
                }
            }
        }
    }
}

#[test]
fn back_is_at_the_thumb_and_the_pager_where_more_was() {
    for phone in &PHONES {
        for left in [false, true] {
            let glass = phone.glass(2.0, left);
            let layout = |page| bank_layout(&glass, PadAsk { state: BankState::Out, rods: 1, page }).unwrap();
            let (bank, sheet) = (layout(0), layout(1));
            assert!(sheet.back.overlaps(&bank.back), "BACK is in the corner of the thumb");
            let more = bank.more.unwrap();
            if let Some(pager) = sheet.more {
                assert!(pager.overlaps(&more), "MORE turns on where it was tapped");
            }
        }
    }
}

#[test]
fn pages_turn_round_and_hold_each_key_once() {
    for phone in &PHONES {
        for glass in phone.both_ways(2.0, false) {
            for (state, rods) in with_sheet() {
                let layout = |page| bank_layout(&glass, PadAsk { state, rods, page }).unwrap();
                let pages = layout(1).pages;
                assert_eq!(layout(pages), layout(1), "after the last page the first, never the pad");
                let all: Vec<Key> =
                    (1..pages).flat_map(|page| layout(page).keys.into_iter().map(|key| key.key)).collect();
                let once: BTreeSet<Key> = all.iter().copied().collect();
                assert_eq!(all.len(), once.len());
                let small = bank_layout(&phone.glass(1.0, false), PadAsk { state, rods, page: 1 }).unwrap();
                // On its side three keys about a landed fish don't fit beside each other, so Fish is behind MORE.
                let mut upright: BTreeSet<Key> = small.keys.iter().map(|key| key.key).collect();
                upright.extend(once.contains(&Key::Fish).then_some(Key::Fish));
                assert!(once.is_superset(&upright), "{} {state:?}", phone.name);
            }
        }
    }
}

#[test]
fn without_a_session_there_is_nothing_behind_more() {
    let glass = PHONES[0].glass(1.0, false);
    let layout = |page| bank_layout(&glass, PadAsk { state: BankState::NoSession, rods: 1, page }).unwrap();
    assert_eq!(layout(0), layout(1));
    assert_eq!((layout(0).more, layout(0).pages), (None, 1));
}

/// LEFT PEG is to the left of RIGHT PEG, in one row, on every page that has both.
#[test]
fn what_the_pegs_on_either_side_land_is_in_one_row_as_they_sit() {
    let mut pairs = 0;
    for phone in &PHONES {
        for (scale, left) in [(1.0, false), (1.0, true), (2.0, false), (2.0, true)] {
            for glass in phone.both_ways(scale, left) {
                for (state, rods) in with_sheet() {
                    let pages = bank_layout(&glass, PadAsk { state, rods, page: 1 }).unwrap().pages;
                    for page in 1..pages {
                        let layout = bank_layout(&glass, PadAsk { state, rods, page }).unwrap();
                        let of = |key| layout.keys.iter().find(|one| one.key == key).map(|one| one.rect);
                        let Some((one, other)) = of(Key::NeighbourLeft).zip(of(Key::NeighbourRight)) else {
                            continue;
                        };
                        let at = format!("{} {scale} {left} {state:?} {rods}", phone.name);
                        assert!(one.top == other.top && one.left < other.left, "{at}: {one:?} {other:?}");
                        // A cold thumb that taps MORE twice opens nothing.
                        let near = 4.0 * glass.px_per_mm;
                        let beside = of(Key::Feed).is_some_and(|feed| {
                            feed.top == layout.back.top && feed.gap_to(&layout.back) < near
                        });
                        assert!(!beside, "{at}: FEED is beside BACK");
                        pairs += 1;
                    }
                }
            }
        }
    }
    assert!(pairs > 1_000, "{pairs}");
}
