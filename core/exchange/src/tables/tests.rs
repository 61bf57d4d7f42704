use super::*;
use restwater_log::{
    FeedAmount, FeedKind, FeedMeasure, FeedSaid, FishSaid, FishSign, FishWeight, LeadMaterial, MoveAt,
    OtherPeg, Payload, PlanLine, PlanSpot, Reach, Rig, SessionSetup, Side, Spot, WaterPlace, WeightUnit,
};
use restwater_match_day::weight::Weight;
use restwater_session::Logged;
use restwater_session::written::{SESSION, Written, second};
use restwater_sky::conditions::{Conditions, WaterColour, WindFrom, WindStrength};

const ORIGIN: Origin = Origin { phone: None, entries: 44 };

fn table(session: &Session, table: Table, neutralise_formulas: bool) -> Vec<Vec<String>> {
    let mut out = Vec::new();
    let rows =
        session_csv(session, table, CsvOptions { neutralise_formulas }, Origin::default(), &mut out).unwrap();
    let text = String::from_utf8(out).unwrap();
    assert!(text.ends_with("\r\n"));
    let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(text.as_bytes());
    let read: Vec<Vec<String>> =
        reader.records().map(|r| r.unwrap().iter().map(str::to_owned).collect()).collect();
    assert_eq!(read.len() as u64, rows + 1);
    read
}

fn cell<'a>(table: &'a [Vec<String>], row: usize, column: &str) -> &'a str {
    let at = table[0].iter().position(|name| name == column).unwrap();
    &table[row][at]
}

fn day() -> Session {
    let mut day = Written::new(1);
    let rig = Rig { bait: Some("=cmd|' /C calc'!A0".into()), popup_mm: Some(450), ..Rig::default() };
    day.log(1, Payload::RigSet { rod: 1, rig });
    let reach = Reach::Wraps { hundredths: 1_000, span_tenth_mm: 36_576 };
    day.log(
        2,
        Payload::SpotSet { rod: 1, spot: Spot { mark: None, bearing_cdeg: -550, reach, clipped: true } },
    );
    day.log(10, Payload::Cast { rod: 1 });
    day.log(730, Payload::Bite { rod: 1 });
    let fish = FishWeight::Weighed { unit: WeightUnit::Drams, count: 256 };
    day.log(760, Payload::Landed { rod: 1, fish: Some(fish) });
    day.log(800, Payload::Cast { rod: 1 });
    day.log(900, Payload::Noted { text: "wind, \"west\"\nthen calm".into() });
    day.log(1_000, Payload::WoundIn { rod: 1 });
    fold(SESSION, &day.ops)
}

#[test]
fn casts_have_their_waits_and_units() {
    let casts = table(&day(), Table::Casts, true);
    assert_eq!(casts.len(), 3);
    assert_eq!(cell(&casts, 1, "wait_min"), "12.00");
    assert_eq!(cell(&casts, 1, "bite"), "yes");
    assert_eq!(cell(&casts, 1, "end"), "landed");
    assert_eq!(cell(&casts, 1, "reach_m"), "36.58", "10 wraps of 12 ft");
    assert_eq!(cell(&casts, 1, "bearing_deg"), "-5.50", "a number keeps its sign");
    assert_eq!(cell(&casts, 1, "popup_cm"), "45.0");
    assert_eq!(cell(&casts, 1, "splash_time"), "2023-11-14T22:13:30+00:00");
    assert_eq!(cell(&casts, 2, "end"), "wound in");
    assert_eq!(cell(&casts, 2, "bite_time"), "");
}

/// Each stretch that a twitch ends is a wait of its own, as in the advice.
#[test]
fn a_cast_has_every_stretch_of_its_wait_when_a_twitch_restarts_it() {
    let mut day = Written::by(0xD1);
    let setup = SessionSetup { twitch_restarts: true, settle_s: 60, ..SessionSetup::default() };
    day.log(0, Payload::SessionStarted(setup));
    day.log(60, Payload::Cast { rod: 1 });
    for s in [360, 600] {
        day.log(s, Payload::Twitch { rod: 1 });
    }
    day.log(780, Payload::Bite { rod: 1 });
    day.log(800, Payload::Landed { rod: 1, fish: None });
    day.log(900, Payload::Cast { rod: 1 });
    let session = fold(SESSION, &day.ops);
    let casts = table(&session, Table::Casts, true);
    assert_eq!(
        cell(&casts, 1, "waits_s"),
        "240.000 | 240.000 | 180.000",
        "the first after a minute to settle"
    );
    assert_eq!(cell(&casts, 1, "wait_min"), "3.00", "the last of them");
    assert_eq!(cell(&casts, 2, "waits_s"), "", "still out");
    let sessions = table(&session, Table::Sessions, true);
    assert_eq!((cell(&sessions, 1, "settle_s"), cell(&sessions, 1, "twitch_restarts")), ("60", "yes"));
}

/// The bite of a fish that was logged in the net is a guess, and the splash of its cast is not.
#[test]
fn each_time_says_how_far_off_it_may_be() {
    let mut day = Written::new(1);
    day.log(60, Payload::Cast { rod: 1 });
    day.write(second(600).set_back(60), Payload::Bite { rod: 1 }, None, None);
    day.log(600, Payload::Landed { rod: 1, fish: None });
    day.log(700, Payload::Cast { rod: 1 });
    day.write(second(900).set_back(120), Payload::WoundIn { rod: 1 }, None, None);
    let casts = table(&fold(SESSION, &day.ops), Table::Casts, true);
    let right =
        |row| ["time_right_to_s", "bite_right_to_s", "end_right_to_s"].map(|name| cell(&casts, row, name));
    assert_eq!(right(1), ["0", "30", "0"]);
    assert_eq!(right(2), ["0", "", "30"]);
}

#[test]
fn formulas_are_neutralised_unless_that_is_switched_off() {
    let bait = "=cmd|' /C calc'!A0";
    assert_eq!(cell(&table(&day(), Table::Casts, true), 1, "bait"), format!("'{bait}"));
    assert_eq!(cell(&table(&day(), Table::Casts, false), 1, "bait"), bait);
    assert!(CsvOptions::default().neutralise_formulas);
}

/// Where a comma is for decimals, a spreadsheet begins a new cell at each semicolon.
#[test]
fn a_formula_after_a_semicolon_or_a_line_break_is_neutralised_too() {
    for (note, cell) in [
        ("x;=HYPERLINK(1)", "x;'=HYPERLINK(1)"),
        ("a\n=1", "a\n'=1"),
        ("x;\"=1", "x;\"'=1"),
        ("x; -1", "x; '-1"),
        ("wind = west; 3-4", "wind = west; 3-4"),
    ] {
        assert_eq!(super::cells::neutral(note), cell);
    }
}

#[test]
fn fish_and_sessions_add_up() {
    let fish = table(&day(), Table::Fish, true);
    assert_eq!(fish.len(), 2);
    assert_eq!(
        (cell(&fish, 1, "weight_g"), cell(&fish, 1, "weight_unit")),
        ("453.6", "dr"),
        "256 dr is 1 lb"
    );
    let sessions = table(&day(), Table::Sessions, true);
    let row: Vec<&str> =
        ["casts", "bites", "landed", "weight_known_g"].map(|name| cell(&sessions, 1, name)).to_vec();
    assert_eq!(row, ["2", "1", "1", "453.6"]);
    assert_eq!(cell(&sessions, 1, "notes"), "wind, \"west\"\nthen calm", "quoted as RFC 4180 asks");
}

#[test]
fn the_earliest_session_comes_first_and_only_selected_ones_are_written() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = Store::open(dir.path(), uuid::Uuid::from_u128(1)).unwrap();
    let ops = Written::new(1).ops;
    store.append(&ops, None).unwrap();
    let mut later = ops.clone();
    later[0].id = uuid::Uuid::from_u128(2);
    later[0].session = uuid::Uuid::from_u128(3);
    later[0].at.wall_ms += 86_400_000;
    later[0].hlc.ms += 86_400_000;
    store.append(&later, None).unwrap();
    let ids = |what: Selection<'_>| {
        let mut out = Vec::new();
        let mut go = |_: Progress| std::ops::ControlFlow::Continue(());
        write_csv(&store, what, Table::Sessions, CsvOptions::default(), &[], &mut out, &mut go).unwrap();
        let text = String::from_utf8(out).unwrap();
        let begun = text.lines().skip(1).all(|line| line.ends_with(&format!(",1,{}", ops[0].device)));
        assert!(begun, "{text}");
        text.lines().skip(1).map(|line| line.split(',').next().unwrap().to_owned()).collect::<Vec<_>>()
    };
    assert_eq!(ids(Selection::Everything), [SESSION.to_string(), later[0].session.to_string()]);
    assert_eq!(ids(Selection::Session(SESSION)), [SESSION.to_string()]);
    assert_eq!(ids(Selection::Sessions(&[later[0].session])), [later[0].session.to_string()]);
    assert!(ids(Selection::Sessions(&[])).is_empty());
    let mut stop = |_: Progress| std::ops::ControlFlow::Break(());
    let cancelled = write_csv(
        &store,
        Selection::Everything,
        Table::Casts,
        CsvOptions::default(),
        &[],
        std::io::sink(),
        &mut stop,
    );
    assert!(matches!(cancelled, Err(ExchangeError::Cancelled)));
}

/// A day on which something was logged for every column of the tables.
fn whole_day() -> Session {
    let mut day = Written::by(0xD1);
    let setup = SessionSetup {
        water: Some("Alder Pit".into()),
        peg: Some("14".into()),
        depth_cm: Some(310),
        rods: 2,
        ..SessionSetup::default()
    };
    day.log(0, Payload::SessionStarted(setup));
    let cold = Conditions {
        water: Some(52),
        air: Some(-5),
        wind: Some(WindStrength::Light),
        wind_from: Some(WindFrom::Ne),
        cloud: Some(6),
        colour: Some(WaterColour::Tinged),
    };
    day.log(1, Payload::ConditionsSet(cold.logged()));
    let rig = Rig {
        bait: Some("bread".into()),
        colour: Some("white".into()),
        popup_mm: Some(450),
        hooklength_mm: Some(300),
        hook_size: Some(12),
        lead_mg: Some(28_350),
        material: Some(LeadMaterial::NonToxic),
    };
    day.log(2, Payload::RigSet { rod: 1, rig });
    let reach = Reach::Metres { cm: 3_550 };
    day.log(
        3,
        Payload::SpotSet { rod: 1, spot: Spot { mark: None, bearing_cdeg: 1_250, reach, clipped: false } },
    );
    let first = day.log(60, Payload::Cast { rod: 1 });
    day.log(600, Payload::Liner { rod: 1 });
    day.log(900, Payload::Bite { rod: 1 });
    let weighed = FishWeight::Weighed { unit: WeightUnit::Grams, count: 2_350 };
    day.log(960, Payload::Landed { rod: 1, fish: None });
    let said = |cast, net: &str| FishSaid {
        cast,
        class: None,
        weight: None,
        net: Some(net.into()),
        put_back: false,
    };
    let first = FishSaid { class: Some("Carp".into()), weight: Some(weighed), ..said(first, "Net 1") };
    day.log(990, Payload::FishSet(first));
    day.log(1_000, Payload::ConditionsSet(Conditions { water: Some(48), ..cold }.logged()));
    let second = day.log(1_200, Payload::Cast { rod: 1 });
    day.log(1_500, Payload::Bite { rod: 1 });
    let class = FishWeight::Class { name: "Skimmer".into() };
    day.log(1_560, Payload::Landed { rod: 1, fish: Some(class) });
    day.log(1_570, Payload::FishSet(FishSaid { put_back: true, ..said(second, "Net 1") }));
    day.log(1_700, Payload::Cast { rod: 1 });
    day.log(2_000, Payload::Bite { rod: 1 });
    day.log(2_010, Payload::Lost { rod: 1 });
    day.log(2_020, Payload::HooklengthLost { rod: 1 });
    day.log(2_100, Payload::Cast { rod: 2 });
    let amount = FeedAmount::Measures { measure: FeedMeasure::Ball, count: 2, each_mg: 80_000 };
    day.log(2_150, Payload::Fed(FeedSaid { what: FeedKind::Ball, amount, rod: Some(2), place: None }));
    day.log(
        2_160,
        Payload::FishShown {
            sign: FishSign::Bubbles,
            place: WaterPlace { bearing_cdeg: 0, range_cm: 3_000 },
        },
    );
    for (s, side) in [(2_170, Side::Left), (2_180, Side::Across), (2_190, Side::Left)] {
        day.log(s, Payload::NeighbourCaught { side });
    }
    day.log(2_195, plan());
    day.log(2_200, Payload::WoundIn { rod: 2 });
    day.log(2_210, Payload::FeederSet { rod: 2, fill_mg: Some(30_000) });
    day.log(2_300, Payload::Cast { rod: 2 });
    day.log(2_400, Payload::Noted { text: "ice in the \"margin\",\nthen gone".into() });
    day.log(2_500, Payload::PlannedNext { text: "begin at 2 ft".into() });
    day.log(2_600, Payload::SessionEnded);
    day.log(2_700, Payload::NetWeighed { net: "Net 1".into(), shown: Weight::Grams(2_350).logged() });
    day.log(2_710, Payload::SectionSet { left: 4, right: 5 });
    for (place, grams, guessed) in [(1, 3_100, false), (2, 1_200, true)] {
        let (peg, shown) = (OtherPeg { side: Side::Left, place }, Weight::Grams(grams).logged());
        day.log(2_720, Payload::OtherNetTold { peg, shown, guessed });
    }
    day.log(2_730, Payload::MatchRuleSaid { text: "=dead fish don't count".into() });
    fold(SESSION, &day.ops)
}

/// A plan with a figure in each line that has one.
fn plan() -> Payload {
    let reach = Some(Reach::Metres { cm: 3_500 });
    let lines = vec![
        PlanLine::Start { spot: PlanSpot { reach, ..PlanSpot::default() } },
        PlanLine::Leave { minutes: 20 },
        PlanLine::Move { at: MoveAt::AllIn { minutes: 30 } },
    ];
    Payload::PlanTaken { day: 19_675, lines }
}

/// The exact tables: every column, every unit, every line end (`\r` shows as `␍`).
#[test]
fn the_tables_of_a_whole_day() {
    for (name, table) in [("sessions", Table::Sessions), ("casts", Table::Casts), ("fish", Table::Fish)] {
        let mut out = Vec::new();
        session_csv(&whole_day(), table, CsvOptions::default(), ORIGIN, &mut out).unwrap();
        insta::assert_snapshot!(name, String::from_utf8(out).unwrap().replace('\r', "␍"));
    }
}
