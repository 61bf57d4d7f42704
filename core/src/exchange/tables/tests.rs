use super::*;
use crate::log::{FishWeight, Payload, Reach, Rig, Spot, WeightUnit};
use crate::session::written::{SESSION, Written};

fn table(session: &Session, table: Table, neutralise_formulas: bool) -> Vec<Vec<String>> {
    let mut out = Vec::new();
    let rows = session_csv(session, table, CsvOptions { neutralise_formulas }, &mut out).unwrap();
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

#[test]
fn formulas_are_neutralised_unless_that_is_switched_off() {
    let bait = "=cmd|' /C calc'!A0";
    assert_eq!(cell(&table(&day(), Table::Casts, true), 1, "bait"), format!("'{bait}"));
    assert_eq!(cell(&table(&day(), Table::Casts, false), 1, "bait"), bait);
    assert!(CsvOptions::default().neutralise_formulas);
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
fn the_earliest_session_comes_first_and_selection_holds() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = Store::open(dir.path(), uuid::Uuid::from_u128(1)).unwrap();
    let ops = Written::new(1).ops;
    store.append(&ops, None).unwrap();
    let mut later = ops.clone();
    later[0].id = uuid::Uuid::from_u128(2);
    later[0].session = uuid::Uuid::from_u128(3);
    later[0].at.wall_ms += 86_400_000;
    store.append(&later, None).unwrap();
    let ids = |what| {
        let mut out = Vec::new();
        let mut go = |_: Progress| std::ops::ControlFlow::Continue(());
        write_csv(&store, what, Table::Sessions, CsvOptions::default(), &mut out, &mut go).unwrap();
        let text = String::from_utf8(out).unwrap();
        text.lines().skip(1).map(|line| line.split(',').next().unwrap().to_owned()).collect::<Vec<_>>()
    };
    assert_eq!(ids(Selection::Everything), [SESSION.to_string(), later[0].session.to_string()]);
    assert_eq!(ids(Selection::Session(SESSION)), [SESSION.to_string()]);
    let from_ms = later[0].at.wall_ms;
    assert_eq!(ids(Selection::Began { from_ms, to_ms: from_ms }), [later[0].session.to_string()]);
    let mut stop = |_: Progress| std::ops::ControlFlow::Break(());
    let cancelled = write_csv(
        &store,
        Selection::Everything,
        Table::Casts,
        CsvOptions::default(),
        std::io::sink(),
        &mut stop,
    );
    assert!(matches!(cancelled, Err(ExchangeError::Cancelled)));
}
