use super::*;
use proptest::prelude::*;
use restwater_log::Hlc;
use restwater_session::written::Written;

fn tie(inches: u32, hair: Option<u16>) -> Hooklength {
    Hooklength {
        length: LineLength::from_tenths_mm(inches * 254),
        diameter_um: 120,
        hook_size: 16,
        hair_mm: hair,
    }
}

fn tied(inches: u32, count: u16) -> Payload {
    Payload::HooklengthsTied { hooklength: logged_hooklength(&tie(inches, None)), count }
}

fn loss(day: &Written, s: u64, length_mm: u32) -> Loss {
    let hlc = Hlc { ms: 1_700_000_000_000 + s * 1_000, count: 500 };
    Loss {
        order: (hlc, day.device, Uuid::from_u128(s.into())),
        length_mm: Some(length_mm),
        hook_size: Some(16),
    }
}

#[test]
fn tied_cut_down_lost_and_counted() {
    let mut kit = Written::by(0xD1);
    kit.log(0, tied(36, 6));
    let to = LineLength::from_inches(18.0).unwrap();
    kit.log(
        10,
        Payload::HooklengthsCutDown {
            from: logged_hooklength(&tie(36, None)),
            to_tenth_mm: to.tenths_mm(),
            count: 2,
        },
    );
    let losses = [loss(&kit, 20, 457), loss(&kit, 30, 914), loss(&kit, 40, 300)];
    let found = fold(&kit.ops, &losses, &[]);
    assert_eq!((found.wallet.count(tie(36, None)), found.wallet.count(tie(18, None))), (3, 1));
    assert_eq!((found.lost, found.lost_unknown.len()), (2, 1));
    kit.log(50, Payload::HooklengthsCounted { hooklength: logged_hooklength(&tie(36, None)), count: 5 });
    assert_eq!(
        fold(&kit.ops, &losses, &[]).wallet.count(tie(36, None)),
        5,
        "a count replaces earlier losses"
    );
}

#[test]
fn an_entry_of_a_newer_version_is_no_error_of_the_wallet() {
    let mut kit = Written::by(0xD1);
    kit.log(0, tied(36, 6));
    kit.log(1, Payload::Unknown { kind: "rod_serviced".into(), payload: None });
    let found = fold(&kit.ops, &[], &[]);
    assert!(found.odd.is_empty());
    assert_eq!(found.wallet.count(tie(36, None)), 6);
}

#[test]
fn a_loss_that_matches_two_kinds_is_asked_about() {
    let mut kit = Written::by(0xD1);
    kit.log(0, tied(36, 2));
    kit.log(1, Payload::HooklengthsTied { hooklength: logged_hooklength(&tie(36, Some(8))), count: 2 });
    let losses = [loss(&kit, 20, 914)];
    assert_eq!(fold(&kit.ops, &losses, &[]).lost_unknown.len(), 1);
    kit.log(30, Payload::HooklengthsTakenOut { hooklength: logged_hooklength(&tie(36, Some(8))), count: 1 });
    let found = fold(&kit.ops, &losses, &[]);
    assert_eq!((found.lost_unknown.len(), found.wallet.count(tie(36, Some(8)))), (0, 1));
}

#[test]
fn losses_before_there_was_a_kit_are_not_asked_about() {
    let mut kit = Written::by(0xD1);
    kit.log(1, Payload::CautionsSeen { peg: "14".into(), cautions: vec![] });
    kit.log(100, tied(36, 2));
    let found = fold(&kit.ops, &[loss(&kit, 20, 914)], &[]);
    assert_eq!((found.wallet.count(tie(36, None)), found.lost_unknown.len()), (2, 0));
}

#[test]
fn a_partners_losses_do_not_affect_my_wallet() {
    let (mut mine, other) = (Written::by(0xD1), Written::by(0xD2));
    mine.log(0, tied(36, 2));
    let found = fold(&mine.ops, &[loss(&other, 20, 914)], &[]);
    assert_eq!((found.wallet.count(tie(36, None)), found.lost_unknown.len()), (2, 0));
}

#[test]
fn cutting_down_more_than_there_are_is_applied_as_far_as_possible_and_listed() {
    let mut kit = Written::by(0xD1);
    kit.log(0, tied(36, 1));
    let to = LineLength::from_inches(18.0).unwrap();
    let op = kit.log(
        5,
        Payload::HooklengthsCutDown {
            from: logged_hooklength(&tie(36, None)),
            to_tenth_mm: to.tenths_mm(),
            count: 3,
        },
    );
    let longer = Payload::HooklengthsCutDown {
        from: logged_hooklength(&tie(18, None)),
        to_tenth_mm: tie(36, None).length.tenths_mm(),
        count: 1,
    };
    let no_cut = kit.log(6, longer);
    let found = fold(&kit.ops, &[], &[]);
    assert_eq!(found.wallet.each(), vec![tie(18, None)]);
    assert_eq!(found.odd, vec![op, no_cut]);
}

#[test]
fn spools_shot_ladder_and_undo() {
    let mut kit = Written::by(0xD1);
    let length = LineLength::from_metres(50.0).unwrap();
    let spool = kit.log(0, Payload::SpoolAdded { diameter_um: 120, length_tenth_mm: length.tenths_mm() });
    kit.log(1, Payload::SpoolLeft { spool, left_tenth_mm: 900 });
    kit.log(2, Payload::ShotSet(ShotWeight { size: "BB".into(), mg: 0 }));
    let own = kit.log(3, Payload::ShotSet(ShotWeight { size: "putty".into(), mg: 250 }));
    kit.log(
        4,
        Payload::LadderSet {
            heights_tenth_mm: [5, 2, 5].map(|inches| tie(inches, None).length.tenths_mm()).to_vec(),
        },
    );
    let found = fold(&kit.ops, &[], &[]);
    assert_eq!(found.spools[0].left.tenths_mm(), 900);
    assert!(found.shot.iter().all(|s| s.name != "BB") && found.shot.iter().any(|s| s.name == "putty"));
    assert_eq!(found.ladder.len(), 2);
    kit.undo(5, &[own]);
    kit.log(6, Payload::SpoolLeft { spool, left_tenth_mm: 0 });
    let after = fold(&kit.ops, &[], &[]);
    assert!(after.spools.is_empty() && after.shot.iter().all(|s| s.name != "putty"));
}

fn any_entry() -> impl Strategy<Value = Payload> {
    let kind = (1..6_u32, prop::option::of(5..7_u16)).prop_map(|(ft, hair)| tie(12 * ft, hair));
    let count = 0..1_200_u16;
    prop_oneof![
        4 => (kind.clone(), count.clone()).prop_map(|(hooklength, count)| Payload::HooklengthsTied { hooklength: logged_hooklength(&hooklength), count }),
        2 => (kind.clone(), count.clone()).prop_map(|(hooklength, count)| Payload::HooklengthsCounted { hooklength: logged_hooklength(&hooklength), count }),
        2 => (kind.clone(), count.clone()).prop_map(|(hooklength, count)| Payload::HooklengthsTakenOut { hooklength: logged_hooklength(&hooklength), count }),
        2 => (kind.clone(), 0..20_000_u32, count.clone()).prop_map(|(from, to, count)| Payload::HooklengthsCutDown { from: logged_hooklength(&from), to_tenth_mm: to, count }),
        1 => (kind, count).prop_map(|(hooklength, count)| Payload::HooklengthsWanted { hooklength: logged_hooklength(&hooklength), count }),
        1 => (0..90_u16, 0..9_000_u32).prop_map(|(um, l)| Payload::SpoolAdded { diameter_um: um, length_tenth_mm: l }),
        1 => prop::collection::vec(0..9_000_u32, 0..5).prop_map(|heights_tenth_mm| Payload::LadderSet { heights_tenth_mm }),
        1 => Just(Payload::Cast { rod: 1 }),
    ]
}

proptest! {
    #[test]
    fn any_order_of_arrival_gives_the_same_kit(
        entries in prop::collection::vec((any_entry(), any::<bool>(), any::<prop::sample::Index>(), 0..6_u8), 1..40),
        at in prop::collection::vec((0..400_u64, 1..6_u32), 0..10),
        seed in any::<u64>(),
    ) {
        let mut phones = [Written::by(0xD1), Written::by(0xD2)];
        let mut ids = Vec::new();
        for (s, (entry, second, which, how)) in (0_i64..).step_by(10).zip(entries) {
            let phone = &mut phones[usize::from(second)];
            ids.push(match how {
                0 if !ids.is_empty() => phone.undo(s, &[ids[which.index(ids.len())]]),
                _ => phone.log(s, entry),
            });
        }
        // No two ops have the same place in the log.
        let times = at.iter().zip(0_u64..).map(|((s, ft), i)| (s * 10 + i, ft * 305));
        let losses: Vec<Loss> = times.map(|(s, mm)| loss(&phones[0], s, mm)).collect();
        let ops: Vec<Op> = phones.into_iter().flat_map(|phone| phone.ops).collect();
        let (mut shuffled, mut other_way) = (ops.clone(), losses.clone());
        shuffled.sort_by_key(|op| op.id.as_u128().wrapping_mul(u128::from(seed) | 1));
        other_way.reverse();
        let kit = fold(&ops, &losses, &[]);
        prop_assert!(kit.wallet.tied().iter().all(|t| (1..=1_000).contains(&t.count)));
        prop_assert_eq!(fold(&shuffled, &other_way, &[]), kit);
    }
}
