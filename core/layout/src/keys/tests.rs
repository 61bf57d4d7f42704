use super::super::phones::{PHONES, STATES};
use super::super::{BankLayout, bank_layout};
use super::*;
use std::collections::BTreeSet;

fn layouts(state: BankState, rods: u8, page: u8) -> Vec<BankLayout> {
    PHONES.iter().map(|p| bank_layout(&p.glass(1.0, false), PadAsk { state, rods, page }).unwrap()).collect()
}

fn place(layout: &BankLayout, key: Key) -> Rect {
    layout.keys.iter().find(|k| k.key == key).unwrap().rect
}

#[test]
fn every_key_of_a_state_is_on_the_pad_or_behind_more() {
    use Key::{
        Away, Bite, Cast, End, Feed, FeedOther, Fish, FishClass, Indication, Landed, LandedLate, Liner, Lost,
        LostLate, Missed, NeighbourAcross, NeighbourLeft, NeighbourRight, PutBack, Redo, Seen, Start, Swim,
        Tackle, TimeBack, TimeBackFive, Twitch, Undo, Weigh, WoundIn,
    };
    let wanted = |state| match state {
        BankState::NoSession => vec![Start, Undo, Redo],
        BankState::Landed => {
            vec![
                Away,
                Cast,
                Feed,
                FeedOther,
                Seen,
                NeighbourLeft,
                NeighbourRight,
                NeighbourAcross,
                FishClass,
                PutBack,
                Weigh,
                Fish,
                Tackle,
                TimeBack,
                TimeBackFive,
                Undo,
                Redo,
                End,
            ]
        }
        BankState::Ready | BankState::Away | BankState::Over => {
            vec![
                Away,
                Cast,
                Feed,
                FeedOther,
                NeighbourLeft,
                NeighbourRight,
                NeighbourAcross,
                Seen,
                Swim,
                Tackle,
                TimeBack,
                TimeBackFive,
                Undo,
                Redo,
                End,
            ]
        }
        BankState::Out => vec![
            Cast,
            Bite,
            WoundIn,
            LandedLate,
            LostLate,
            Liner,
            TimeBack,
            TimeBackFive,
            Undo,
            Redo,
            Twitch,
            Indication,
            Feed,
            FeedOther,
            Seen,
            NeighbourLeft,
            NeighbourRight,
            NeighbourAcross,
            End,
        ],
        BankState::FishOn => vec![Landed, Lost, Missed, TimeBack, TimeBackFive, Undo, Redo],
    };
    for state in STATES {
        for rods in 1..=3 {
            let first = &layouts(state, rods, 0)[0];
            let all: BTreeSet<Key> = (0..first.pages)
                .flat_map(|page| layouts(state, rods, page)[0].keys.iter().map(|k| k.key).collect::<Vec<_>>())
                .collect();
            assert_eq!(all, wanted(state).into_iter().collect(), "{state:?} with {rods} rods");
            assert_eq!(first.more.is_some(), state != BankState::NoSession);
            assert_eq!(first.next_rod.is_some(), rods > 1 && state != BankState::NoSession);
        }
    }
}

#[test]
fn an_accidental_second_tap_hits_no_harmful_key() {
    // (state, key tapped, state it leads to, keys that must not lie under the same thumb)
    let table: [(BankState, Key, BankState, &[Key]); 7] = [
        (BankState::NoSession, Key::Start, BankState::Ready, &[Key::Cast, Key::End]),
        (BankState::Out, Key::WoundIn, BankState::Ready, &[Key::Cast, Key::Undo, Key::End, Key::Swim]),
        (BankState::Out, Key::Bite, BankState::FishOn, &[Key::Landed, Key::Lost, Key::Missed, Key::Undo]),
        (BankState::FishOn, Key::Landed, BankState::Ready, &[Key::Cast, Key::Undo]),
        // The pad of numbers would cover the keys: WEIGH opens it.
        (BankState::FishOn, Key::Landed, BankState::Landed, &[Key::Cast, Key::Undo, Key::Weigh, Key::Fish]),
        (
            BankState::Out,
            Key::LandedLate,
            BankState::Landed,
            &[Key::Cast, Key::Undo, Key::TimeBack, Key::PutBack, Key::FishClass],
        ),
        (BankState::FishOn, Key::Lost, BankState::Ready, &[Key::Cast, Key::Undo]),
    ];
    for (from, tapped, to, harmful) in table {
        for rods in 1..=3 {
            for (before, after) in layouts(from, rods, 0).iter().zip(layouts(to, rods, 0)) {
                let thumb = place(before, tapped);
                for other in after.keys.iter().filter(|k| harmful.contains(&k.key)) {
                    assert!(!thumb.overlaps(&other.rect), "{:?} comes up under {tapped:?}", other.key);
                }
            }
        }
    }
}

#[test]
fn undo_cast_and_next_rod_never_move() {
    for rods in 1..=3 {
        let all: Vec<_> = STATES.iter().map(|s| layouts(*s, rods, 0)).collect();
        for phone in 0..PHONES.len() {
            let undo: Vec<_> = all.iter().map(|l| place(&l[phone], Key::Undo)).collect();
            assert!(undo.iter().all(|r| *r == undo[0]));
            assert_eq!(place(&all[1][phone], Key::Cast), place(&all[2][phone], Key::Cast));
            assert!(all[1..].iter().all(|l| l[phone].next_rod == all[1][phone].next_rod));
            let over = STATES.iter().position(|state| *state == BankState::Over).unwrap();
            assert_eq!(
                place(&all[over][phone], Key::End),
                place(&all[1][phone], Key::Cast),
                "END instead of CAST"
            );
        }
    }
}
