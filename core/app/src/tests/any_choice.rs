//! Generates any choice on any screen, sensible or not.

use super::*;
use restwater_bench::hooklength::Hooklength;
use restwater_bench::pack::Item;
use restwater_bench::units::LineLength;
use restwater_caution::table::Region;
use restwater_log::{
    EndSaid, FeedKind, FeedMeasure, LeadMaterial, LineMaterial, MoveAt, ShotMetal, Side, WeightUnit,
};
use restwater_screen::{
    BookSet, BookTap, CautionsTap, ConditionsTap, FISH_SIGNS, FeedTap, FilesTap, FilterTap, FormChoice,
    HazardKind, MendTap, PhoneTap, PlanTap, Season, SeenTap, Span, SwimThing, Temperature, WaterChoice,
    Whose,
};
use restwater_sky::conditions::{Answer, Question, WaterColour, WindFrom, WindStrength};
use restwater_swim::{CellId, FeatureKind};

fn one<T: Clone + std::fmt::Debug + 'static>(all: Vec<T>) -> impl Strategy<Value = T> {
    prop::sample::select(all)
}

/// An id that belongs to no entry.
const NOBODY: Uuid = Uuid::from_u128(5);

fn any_tackle() -> impl Strategy<Value = TackleTap> {
    prop_oneof![
        (0..20_000_u32).prop_map(|cm| TackleTap::Reach { reach: Reach::Metres { cm } }),
        (-10_000..10_000_i32).prop_map(|cdeg| TackleTap::Bearing { cdeg }),
        Just(TackleTap::Mark { mark: NOBODY }),
        any::<bool>().prop_map(|clipped| TackleTap::Clip { clipped }),
        "\\PC{0,6}".prop_map(|name| TackleTap::Bait { name }),
        "\\PC{0,6}".prop_map(|name| TackleTap::Colour { name }),
        (0..6_000_u32).prop_map(|mm| TackleTap::PopUp { mm }),
        (0..11_000_u32).prop_map(|mm| TackleTap::Hooklength { mm }),
        (0..50_u8).prop_map(|size| TackleTap::HookSize { size }),
        (0..2_000_000_u32).prop_map(|mg| TackleTap::Lead { mg }),
        proptest::option::of(0..200_000_000_u32).prop_map(|mg| TackleTap::Feeder { mg }),
        one(vec![LeadMaterial::Lead, LeadMaterial::NonToxic])
            .prop_map(|material| TackleTap::Material { material }),
    ]
}

fn any_setup() -> impl Strategy<Value = SetupTap> {
    prop_oneof![
        (0..12_u8).prop_map(|rods| SetupTap::Rods { rods }),
        (0..300_000_u32).prop_map(|tenth_mm| SetupTap::Span { tenth_mm }),
        proptest::option::of(0..20_000_u32).prop_map(|cm| SetupTap::Depth { cm }),
        (0..12_u8).prop_map(|digit| SetupTap::DrawDigit { digit }),
        Just(SetupTap::ClearDraw),
        Just(SetupTap::CopyLast),
        Just(SetupTap::CopyNothing),
        one(vec![Item::Mat, Item::Shot("BB".into())]).prop_map(|item| SetupTap::Pack { item }),
    ]
}

/// Any choice of the Swim screen.
pub(super) fn any_swim() -> impl Strategy<Value = SwimTap> {
    let cm = || proptest::option::of(0..30_000_u32);
    prop_oneof![
        (0..9_u32, 0..9_u32).prop_map(|(column, row)| SwimTap::Cell { cell: CellId { column, row } }),
        any::<bool>().prop_map(|open| SwimTap::Steps { open }),
        (0..200_u32).prop_map(|minutes| SwimTap::RestTarget { minutes }),
        cm().prop_map(|cm| SwimTap::LeftPeg { cm }),
        cm().prop_map(|cm| SwimTap::RightPeg { cm }),
        cm().prop_map(|cm| SwimTap::FarBank { cm }),
        any::<bool>().prop_map(|pegged| SwimTap::FarBankPegged { pegged }),
        cm().prop_map(|cm| SwimTap::Band { cm }),
        one(vec![FeatureKind::Bar, FeatureKind::Other]).prop_map(|feature| SwimTap::Feature { feature }),
        one(HazardKind::ALL.to_vec()).prop_map(|hazard| SwimTap::Hazard { hazard }),
        one(FISH_SIGNS.to_vec()).prop_map(|sign| SwimTap::Seen { sign }),
        Just(SwimTap::Feed { what: FeedKind::Ball, measure: FeedMeasure::Ball }),
        Just(SwimTap::Rename { id: NOBODY }),
        one(vec![SwimThing::Outline, SwimThing::Set { id: NOBODY }])
            .prop_map(|thing| SwimTap::Remove { thing }),
    ]
}

/// Anything typed on any screen.
pub(super) fn any_typed() -> impl Strategy<Value = Action> {
    let rod = 0..4_u8;
    let into = prop_oneof![
        one(vec![TypedInto::Water, TypedInto::Peg, TypedInto::Depth, TypedInto::Note, TypedInto::Plan]),
        one(vec![
            TypedInto::SwimName,
            TypedInto::PegLatitude,
            TypedInto::PegLongitude,
            TypedInto::PegBearing,
            TypedInto::SessionPeg,
            TypedInto::SessionWater,
            TypedInto::MatchRule
        ]),
        rod.clone().prop_map(|rod| TypedInto::Bait { rod }),
        rod.clone().prop_map(|rod| TypedInto::Colour { rod }),
        rod.clone().prop_map(|rod| TypedInto::PopUp { rod }),
        rod.clone().prop_map(|rod| TypedInto::Hooklength { rod }),
        rod.prop_map(|rod| TypedInto::Lead { rod }),
    ];
    let text = prop_oneof!["\\PC{0,8}", "[0-9]{1,4} (in|cm|g|oz|m)", "[0-9]{1,3}"];
    (into, text).prop_map(|(into, text)| Action::Typed { into, text })
}

fn any_bench() -> impl Strategy<Value = BenchTap> {
    let count = || 0..300_u16;
    let tenth_mm = || prop_oneof![0..20_000_u32, Just(u32::MAX)];
    let um = || 0..1_200_u16;
    let counts = prop_oneof![
        count().prop_map(|count| BenchTap::Tied { count }),
        count().prop_map(|count| BenchTap::Counted { count }),
        count().prop_map(|count| BenchTap::TakenOut { count }),
        count().prop_map(|count| BenchTap::Wanted { count }),
        (tenth_mm(), count()).prop_map(|(tenth_mm, count)| BenchTap::CutDown { tenth_mm, count }),
    ];
    let plain = one(vec![
        BenchTap::CutAll,
        BenchTap::TieAll,
        BenchTap::AddSpool,
        BenchTap::Splash,
        BenchTap::Bottom,
        BenchTap::Calibrate,
        BenchTap::SpoolGone { spool: NOBODY },
        BenchTap::UseKit { kit: NOBODY },
        BenchTap::ShotSize { name: "BB".into() },
        BenchTap::ShotSize { name: " ".into() },
        BenchTap::HeightsOf { all: false },
        BenchTap::Line { material: LineMaterial::Braid },
        BenchTap::Metal { metal: ShotMetal::Lead },
        BenchTap::Kind {
            hooklength: Hooklength {
                length: LineLength::from_tenths_mm(4_572),
                diameter_um: 140,
                hook_size: 12,
                hair_mm: None,
            },
        },
    ]);
    let lengths = prop_oneof![
        tenth_mm().prop_map(|tenth_mm| BenchTap::Length { tenth_mm }),
        tenth_mm().prop_map(|tenth_mm| BenchTap::SpoolLength { tenth_mm }),
        tenth_mm().prop_map(|tenth_mm| BenchTap::HookKnot { tenth_mm }),
        tenth_mm().prop_map(|tenth_mm| BenchTap::LoopLength { tenth_mm }),
        tenth_mm().prop_map(|tenth_mm| BenchTap::Tags { tenth_mm }),
        tenth_mm().prop_map(|tenth_mm| BenchTap::Height { tenth_mm }),
        tenth_mm().prop_map(|tenth_mm| BenchTap::Rung { tenth_mm }),
    ];
    let figures = prop_oneof![
        um().prop_map(|um| BenchTap::Diameter { um }),
        um().prop_map(|um| BenchTap::SpoolDiameter { um }),
        um().prop_map(|um| BenchTap::LineDiameter { um }),
        (0..50_u8).prop_map(|size| BenchTap::HookSize { size }),
        proptest::option::of(0..200_u16).prop_map(|mm| BenchTap::Hair { mm }),
        (0..200_000_u32).prop_map(|mg| BenchTap::Lift { mg }),
        (0..200_000_u32).prop_map(|mg| BenchTap::HookWeight { mg }),
        (0..200_000_u32).prop_map(|mg| BenchTap::ShotWeight { mg }),
        (0..20_000_u16).prop_map(|minutes| BenchTap::Soaked { minutes }),
        (-100..500_i16).prop_map(|tenth_c| BenchTap::Water { tenth_c }),
        (0..20_000_u32).prop_map(|cm| BenchTap::Plumbed { cm }),
    ];
    prop_oneof![counts, plain, lengths, figures]
}

fn any_book() -> impl Strategy<Value = BookTap> {
    let set = one(vec![BookSet::Shown, BookSet::A, BookSet::B]);
    let by = one(vec![
        FilterTap::Water { water: WaterChoice::Any },
        FilterTap::Water { water: WaterChoice::Unnamed },
        FilterTap::Water { water: WaterChoice::Named { name: "Mill pool".into() } },
        FilterTap::Whose { whose: Whose::Both },
        FilterTap::Season { season: Some(Season::DecToFeb) },
        FilterTap::Temperature { temperature: Some(Temperature::NotLogged) },
    ]);
    let e7 = || -2_000_000_000..2_000_000_000_i64;
    prop_oneof![
        Just(BookTap::Open { session: NOBODY }),
        Just(BookTap::Close),
        Just(BookTap::KeepPlace),
        any::<bool>().prop_map(|mine| BookTap::PhoneIsMine { mine }),
        e7().prop_map(|e7| BookTap::Latitude { e7 }),
        e7().prop_map(|e7| BookTap::Longitude { e7 }),
        (set, by).prop_map(|(set, by)| BookTap::Filter { set, by }),
    ]
}

fn any_conditions() -> impl Strategy<Value = ConditionsTap> {
    let answer = prop_oneof![
        (-900..500_i16).prop_map(Answer::Water),
        (-900..500_i16).prop_map(Answer::Air),
        one(WindStrength::ALL.to_vec()).prop_map(Answer::Wind),
        one(WindFrom::ALL.to_vec()).prop_map(Answer::WindFrom),
        (0..12_u8).prop_map(Answer::Cloud),
        one(WaterColour::ALL.to_vec()).prop_map(Answer::Colour),
    ];
    prop_oneof![
        4 => answer.prop_map(|answer| ConditionsTap::Answer { answer }),
        1 => Just(ConditionsTap::Skip { question: Question::Air }),
        1 => Just(ConditionsTap::Again),
    ]
}

fn any_small() -> impl Strategy<Value = Action> {
    let caution = one(vec![
        CautionsTap::AllSeen,
        CautionsTap::Seen { caution: "caution-ice".into() },
        CautionsTap::Seen { caution: "dragon".into() },
        CautionsTap::Region { region: Region::Wales },
    ]);
    let mend = one(vec![
        MendTap::Confirm,
        MendTap::End { end: EndSaid::Lost },
        MendTap::After { minutes: 9 },
        MendTap::Back { minutes: 0 },
        MendTap::AddCast,
        MendTap::Remove,
    ]);
    let phone = one(vec![
        PhoneTap::Alarm { alarm: Alarm::After(12) },
        PhoneTap::Alarm { alarm: Alarm::After(0) },
        PhoneTap::Alarm { alarm: Alarm::Hold },
        PhoneTap::Awake { on: false },
        PhoneTap::NightAtDusk,
    ]);
    let files = one(vec![
        FilesTap::Span { span: Span::Days(7) },
        FilesTap::Form { form: FormChoice::Casts },
        FilesTap::Position { included: true },
        FilesTap::Formulas { as_typed: true },
    ]);
    prop_oneof![
        caution.prop_map(|tap| Action::Cautions { tap }),
        mend.prop_map(|tap| Action::Mend { op: NOBODY, tap }),
        phone.prop_map(|tap| Action::Phone { tap }),
        files.prop_map(|tap| Action::Files { tap }),
    ]
}

/// Any choice on any screen except the Match and Waits, whose choice of casts is lost when the app closes.
pub(super) fn any_choice() -> impl Strategy<Value = Action> {
    prop_oneof![
        2 => (0..4_u8, any_tackle()).prop_map(|(rod, tap)| Action::Tackle { rod, tap }),
        1 => any_setup().prop_map(|tap| Action::Setup { tap }),
        1 => any_swim().prop_map(|tap| Action::Swim { tap }),
        1 => any_typed(),
        2 => any_bench().prop_map(|tap| Action::Bench { tap }),
        1 => any_book().prop_map(|tap| Action::Book { tap }),
        1 => any_conditions().prop_map(|tap| Action::Conditions { tap }),
        1 => any_small(),
        2 => any_plan(),
    ]
}

/// Any tap on the plan.
fn any_plan() -> impl Strategy<Value = Action> {
    let minutes = || any::<u16>().prop_map(|n| n % 2_000);
    let tap = prop_oneof![
        1 => (-9..900_i32).prop_map(|ahead| PlanTap::Day { day: 19_675 + ahead }),
        1 => "[ab]".prop_map(|peg| PlanTap::NoPeg { peg }),
        2 => (0..4_u8, any_tackle()).prop_map(|(rod, change)| PlanTap::Rig { rod, change }),
        1 => (0..4_u8).prop_map(|rod| PlanTap::NoRig { rod }),
        1 => any::<u32>().prop_map(|cm| PlanTap::Reach { reach: Reach::Metres { cm: cm % 20_000 } }),
        1 => (-9_500..9_500_i32).prop_map(|cdeg| PlanTap::Bearing { cdeg }),
        1 => "[a ]{0,2}".prop_map(|name| PlanTap::Mark { name }),
        1 => Just(PlanTap::NoStart),
        1 => prop::option::of(minutes()).prop_map(|minutes| PlanTap::Leave { minutes }),
        1 => prop::option::of(minutes()).prop_map(|n| PlanTap::Move { at: n.map(|minutes| MoveAt::AllIn { minutes }) }),
        1 => prop::option::of(minutes()).prop_map(|n| PlanTap::Move { at: n.map(|minute| MoveAt::Clock { minute }) }),
        3 => any::<bool>().prop_map(|takes| PlanTap::Today { takes }),
    ];
    let line = (one(vec![TypedInto::PlanPeg, TypedInto::PlanMark, TypedInto::PlanMove]), "[ab:0-9 ]{0,6}");
    prop_oneof![
        3 => tap.prop_map(|tap| Action::Plan { tap }),
        1 => line.prop_map(|(into, text)| Action::Typed { into, text }),
    ]
}

/// Any tap about feed.
pub(super) fn any_feed() -> impl Strategy<Value = Action> {
    let kind = || one(vec![FeedKind::Loose, FeedKind::Ball, FeedKind::Bag, FeedKind::Feeder, FeedKind::Spod]);
    let measure = one(vec![FeedMeasure::Pinch, FeedMeasure::Handful, FeedMeasure::Ball, FeedMeasure::Fill]);
    let unit = one(vec![WeightUnit::Drams, WeightUnit::Grams]);
    let tap = prop_oneof![
        3 => Just(FeedTap::Again),
        3 => (kind(), measure).prop_map(|(what, measure)| FeedTap::Measure { what, measure }),
        1 => (0..2_000_u16).prop_map(|count| FeedTap::Count { count }),
        1 => any::<bool>().prop_map(|aim| FeedTap::AtAim { aim }),
        1 => kind().prop_map(|what| FeedTap::Kind { what }),
        1 => (0..12_u8).prop_map(|digit| FeedTap::Digit { digit }),
        1 => Just(FeedTap::Clear),
        1 => Just(FeedTap::Weighed),
        1 => (kind(), unit, any::<u32>()).prop_map(|(what, unit, count)| FeedTap::Weight { what, unit, count }),
    ];
    tap.prop_map(|tap| Action::Feed { tap })
}

/// Any tap about fish that show.
pub(super) fn any_seen() -> impl Strategy<Value = Action> {
    let tap = prop_oneof![
        one(FISH_SIGNS.to_vec()).prop_map(|sign| SeenTap::Sign { sign }),
        one(vec![Side::Left, Side::Right, Side::Across]).prop_map(|side| SeenTap::Neighbour { side }),
        one(vec![Side::Left, Side::Right, Side::Across]).prop_map(|side| SeenTap::NeighbourHere { side }),
        any::<bool>().prop_map(|aim| SeenTap::AtAim { aim }),
    ];
    tap.prop_map(|tap| Action::Seen { tap })
}
