//! Generates arbitrary days, over which the laws of the fold are tested.

use crate::written::{Written, second};
use proptest::prelude::*;
use restwater_log::{
    ClassGuess, Conditions, EndSaid, FeedAmount, FeedKind, FeedMeasure, FeedSaid, FishSaid, FishSign,
    FishWeight, MatchRules, MatchSetup, Moment, MoveAt, Op, OtherPeg, Payload, PlanLine, PlanSpot, Reach,
    Rig, Side, Spot, SwimSetup, WaterPlace, Weight, WeightUnit,
};
use uuid::Uuid;

fn any_end() -> impl Strategy<Value = EndSaid> {
    prop_oneof![Just(EndSaid::WoundIn), Just(EndSaid::Landed), Just(EndSaid::Lost), Just(EndSaid::Missed)]
}

pub(super) fn any_payload() -> impl Strategy<Value = Payload> {
    let rod = 0..4_u8;
    let rod_again = rod.clone();
    prop_oneof![
        4 => rod.clone().prop_map(|rod| Payload::Cast { rod }),
        3 => rod.clone().prop_map(|rod| Payload::Bite { rod }),
        3 => rod.clone().prop_map(|rod| Payload::WoundIn { rod }),
        2 => rod.clone().prop_map(|rod| Payload::Landed { rod, fish: None }),
        1 => rod.clone().prop_map(|rod| Payload::Lost { rod }),
        1 => rod.clone().prop_map(|rod| Payload::Missed { rod }),
        1 => rod.clone().prop_map(|rod| Payload::Liner { rod }),
        1 => rod.clone().prop_map(|rod| Payload::Twitch { rod }),
        1 => rod.prop_map(|rod| Payload::RigSet { rod, rig: Rig { hook_size: Some(rod), ..Rig::default() } }),
        1 => any_match_payload(),
        1 => rod_again.clone().prop_map(|rod| Payload::HooklengthLost { rod }),
        1 => (0..350_i16).prop_map(|t| Payload::ConditionsSet(Conditions { water_tenth_c: Some(t), ..Conditions::default() })),
        1 => "[a-z]{0,8}".prop_map(|text| Payload::PlannedNext { text }),
        1 => Just(Payload::SessionEnded),
        1 => Just(Payload::Away),
        1 => Just(Payload::Returned),
        1 => any_feed(),
        1 => (-9_500..9_500_i32, 0..30_000_u32).prop_map(|(bearing_cdeg, range_cm)| Payload::FishShown {
            sign: FishSign::Rolled, place: WaterPlace { bearing_cdeg, range_cm },
        }),
        1 => any_peg().prop_map(|peg| Payload::NeighbourCaught { side: peg.side }),
        1 => (0..4_u8, proptest::option::of(0..90_000_u32)).prop_map(|(rod, fill_mg)| Payload::FeederSet { rod, fill_mg }),
        1 => (0..4_000_u32).prop_map(|back_s| Payload::TimeSet { back_s }),
        1 => (any_end(), proptest::option::of(0..4_000_u32)).prop_map(|(end, after_s)| Payload::CastEndSet { end, after_s }),
        1 => (any_end(), 0..300_u32, 0..4_000_u32, 1..20_u128).prop_map(|(end, lag_s, wait_s, n)| Payload::CastAdded {
            after: Uuid::from_u128(0xD1_u128 << 64 | n), lag_s, wait_s, end,
        }),
        1 => Just(Payload::Confirmed),
        1 => any_plan(),
    ]
}

/// A plan that is adopted or dropped; a line may occur twice.
fn any_plan() -> impl Strategy<Value = Payload> {
    let reach = (1..9_000_u32).prop_map(|cm| Reach::Metres { cm });
    let line = prop_oneof![
        ("1?[4 ]", "[a-z]{0,4}").prop_map(|(peg, note)| PlanLine::Peg { peg, note }),
        (0..4_u8, proptest::option::of(8..20_u8))
            .prop_map(|(rod, hook_size)| PlanLine::Rig { rod, rig: Rig { hook_size, ..Rig::default() } }),
        (
            proptest::option::of("[a-z]{1,2}"),
            proptest::option::of(-9_500..9_500_i32),
            proptest::option::of(reach)
        )
            .prop_map(|(mark, bearing_cdeg, reach)| PlanLine::Start {
                spot: PlanSpot { mark, bearing_cdeg, reach },
            }),
        (0..900_u16).prop_map(|minutes| PlanLine::Leave { minutes }),
        any::<u16>().prop_map(|minutes| PlanLine::Move { at: MoveAt::AllIn { minutes } }),
        any::<u16>().prop_map(|minute| PlanLine::Move { at: MoveAt::Clock { minute } }),
    ];
    prop_oneof![
        2 => proptest::collection::vec(line, 0..6).prop_map(|lines| Payload::PlanTaken { day: 20_470, lines }),
        1 => Just(Payload::PlanDropped),
    ]
}

/// Any feed, with or without a place.
fn any_feed() -> impl Strategy<Value = Payload> {
    let place = (-9_500..9_500_i32, 0..30_000_u32);
    let place = place.prop_map(|(bearing_cdeg, range_cm)| WaterPlace { bearing_cdeg, range_cm });
    let measure = FeedMeasure::Handful;
    (0..9_u16, proptest::option::of(0..12_u8), proptest::option::of(place)).prop_map(
        move |(count, rod, place)| {
            let amount = FeedAmount::Measures { measure, count, each_mg: 30_000 };
            Payload::Fed(FeedSaid { what: FeedKind::Loose, amount, rod, place })
        },
    )
}

/// Any op of a match. It refers to one of the first ops of either phone, which may or may not be a landing.
fn any_match_payload() -> impl Strategy<Value = Payload> {
    let cast = (prop_oneof![Just(0xD1_u128), Just(0xD2)], 1..20_u128)
        .prop_map(|(device, n)| Uuid::from_u128(device << 64 | n));
    let weight = prop_oneof![
        Just(None),
        (1..5_000_u32).prop_map(|count| Some(FishWeight::Weighed { unit: WeightUnit::Drams, count })),
        (1..5_000_u32).prop_map(|count| Some(FishWeight::Guessed { unit: WeightUnit::Grams, count })),
    ];
    let class = prop_oneof![Just(None), Just(Some("Carp".to_owned()))];
    let net = prop_oneof![Just(None), "Net [12]".prop_map(Some)];
    let fish = (cast, class, weight, net, any::<bool>())
        .prop_map(|(cast, class, weight, net, put_back)| FishSaid { cast, class, weight, net, put_back });
    prop_oneof![
        1 => (0..9_i64, -60..60_i64).prop_map(|(hours, offset)| Payload::MatchSet(MatchSetup {
            all_in_ms: 0,
            all_out_ms: hours * 3_600_000,
            offset_ms: offset * 1_000,
            unit: WeightUnit::Drams,
            mark: Weight::Drams(16),
            rules: MatchRules::default(),
            classes: vec![ClassGuess { name: "Carp".into(), guess: Weight::Drams(1_280) }],
        })),
        1 => Just(Payload::MatchOff),
        4 => fish.prop_map(Payload::FishSet),
        1 => ("Net [12]", 1..9_999_i64).prop_map(|(net, g)| Payload::NetWeighed { net, shown: Weight::Grams(g) }),
        1 => (any_peg(), 1..9_999_i64, any::<bool>())
            .prop_map(|(peg, g, guessed)| Payload::OtherNetTold { peg, shown: Weight::Grams(g), guessed }),
        1 => (0..9_u8, 0..9_u8).prop_map(|(left, right)| Payload::SectionSet { left, right }),
        1 => "[a-z ]{0,5}".prop_map(|text| Payload::MatchRuleSaid { text }),
    ]
}

fn any_peg() -> impl Strategy<Value = OtherPeg> {
    let side = prop_oneof![Just(Side::Left), Just(Side::Right), Just(Side::Across)];
    (side, 0..4_u8).prop_map(|(side, place)| OtherPeg { side, place })
}

/// Any entry about the swim.
fn any_swim_payload() -> impl Strategy<Value = Payload> {
    let (cdeg, cm) = (-9_500..9_500_i32, 0..20_000_u32);
    let op = (prop_oneof![Just(0xD1_u128), Just(0xD2)], 1..20_u128)
        .prop_map(|(device, n)| Uuid::from_u128(device << 64 | n));
    prop_oneof![
        (cdeg.clone(), cdeg.clone(), cm.clone(), cm.clone()).prop_map(
            |(from_cdeg, to_cdeg, from_cm, to_cm)| Payload::KeptBack { from_cdeg, to_cdeg, from_cm, to_cm }
        ),
        op.prop_map(|kept| Payload::Released { kept }),
        ("[a-z]{1,4}", cdeg.clone()).prop_map(|(name, bearing_cdeg)| Payload::MarkSet { name, bearing_cdeg }),
        (1..200_u32).prop_map(|rest_target_min| Payload::SwimSet(SwimSetup {
            rest_target_min,
            ..SwimSetup::default()
        })),
        proptest::collection::vec((-5_000..5_000_i32, 0..9_000_i32), 0..5)
            .prop_map(|corners_cm| Payload::OutlineSet { corners_cm }),
        (0..4_u8, cdeg, cm).prop_map(|(rod, bearing_cdeg, cm)| Payload::SpotSet {
            rod,
            spot: Spot { mark: None, bearing_cdeg, reach: Reach::Metres { cm }, clipped: false },
        }),
    ]
}

/// Entries that no tap of a session writes: those of a kit and those of a later version.
fn any_stray_payload() -> impl Strategy<Value = Payload> {
    prop_oneof![
        proptest::collection::vec(0..9_000_u32, 0..4)
            .prop_map(|heights_tenth_mm| Payload::LadderSet { heights_tenth_mm }),
        (1..900_u32, 1..9_000_u32).prop_map(|(depth_cm, fall_ms)| Payload::FallTimed { depth_cm, fall_ms }),
        ("later_[a-z]{1,4}", proptest::option::of(0..9_i64)).prop_map(|(kind, n)| Payload::Unknown {
            kind,
            payload: n.map(|n| serde_json::json!({ "n": n, "rod": 1 }))
        }),
    ]
}

fn any_entry() -> impl Strategy<Value = Payload> {
    prop_oneof![8 => any_payload(), 1 => any_swim_payload(), 1 => any_stray_payload()]
}

/// What happens to a phone's clocks before an entry.
#[derive(Debug, Clone, Copy)]
enum Clocks {
    RunOn,
    /// The wall clock shows this many seconds more than the true time.
    Set(i64),
    /// The phone is restarted.
    Reboot,
}

fn any_clocks() -> impl Strategy<Value = Clocks> {
    prop_oneof![
        20 => Just(Clocks::RunOn),
        1 => (-90_000..90_000_i64).prop_map(Clocks::Set),
        1 => prop_oneof![Just(-1_700_000_000), Just(31_536_000), Just(0)].prop_map(Clocks::Set),
        2 => Just(Clocks::Reboot),
    ]
}

/// A phone that writes the day, with clocks of its own.
struct Writing {
    day: Written,
    off_s: i64,
    boot_s: i64,
    boots: u32,
}

impl Writing {
    fn new(day: Written) -> Self {
        Self { day, off_s: 0, boot_s: -1_000, boots: 0 }
    }

    fn moment(&mut self, s: i64, clocks: Clocks) -> Moment {
        match clocks {
            Clocks::RunOn => {}
            Clocks::Set(off_s) => self.off_s = off_s,
            Clocks::Reboot => (self.boot_s, self.boots) = (s, self.boots + 1),
        }
        let boot = if self.boots == 0 { "first".into() } else { format!("{}", self.boots) };
        Moment { mono_ms: (s - self.boot_s) * 1_000, boot, ..second(s + self.off_s) }
    }
}

/// Any day: entries of any kind by two phones whose clocks are changed and which are restarted. Some entries
/// amend or undo earlier ones or form a group.
pub(super) fn any_day() -> impl Strategy<Value = Vec<Op>> {
    let step = (any_entry(), 0..90_i64, any::<bool>(), 0..12_u8, any::<prop::sample::Index>(), any_clocks());
    proptest::collection::vec(step, 1..60).prop_map(|steps| {
        let mut phones = [Writing::new(Written::new(2)), Writing::new(Written::by(0xD2))];
        let mut s = 0;
        let mut ids = vec![phones[0].day.ops[0].id];
        for (payload, gap, second_phone, how, which, clocks) in steps {
            s += gap;
            let phone = &mut phones[usize::from(second_phone)];
            let at = phone.moment(s, clocks);
            let target = ids[which.index(ids.len())];
            let (payload, amends, group) = match how {
                0 | 1 => (Payload::Undone { targets: vec![target] }, None, None),
                2 => (payload, Some(target), None),
                3 | 4 => (payload, None, Some(Uuid::from_u128(0x6600 + u128::from(s.unsigned_abs()) / 300))),
                _ => (payload, None, None),
            };
            ids.push(phone.day.write(at, payload, amends, group));
        }
        phones.into_iter().flat_map(|phone| phone.day.ops).collect()
    })
}
