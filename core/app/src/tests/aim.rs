//! What is logged at the aim on the map: at the water that the angler chose, never at the app's own proposal.

use super::*;
use restwater_log::WaterPlace;
use restwater_session::{reach_m, swim_of};
use restwater_swim::CellId;

fn cell(column: u32, row: u32) -> Action {
    Action::Swim { tap: SwimTap::Cell { cell: CellId { column, row } } }
}

/// Where the rod is sent to.
fn sent_to(phone: &mut Phone) -> WaterPlace {
    let spot = phone.app().session().unwrap().rods[0].spot.clone().unwrap();
    WaterPlace { bearing_cdeg: spot.bearing_cdeg, range_cm: (reach_m(spot.reach) * 100.0).round() as u32 }
}

/// A square is chosen, and then other bands and another mark make other squares.
#[test]
fn the_aim_stays_on_its_water_when_bands_and_marks_change() {
    let mut phone = started();
    let chosen = {
        let swim = swim_of(phone.app().session().unwrap()).unwrap();
        let at_30 = |cell: &&restwater_swim::Cell| cell.id.column == 4 && cell.sector.inner_m == 30.0;
        swim.cells().iter().find(at_30).unwrap().clone()
    };
    assert_eq!(chosen.sector.outer_m, 40.0);
    phone.tap(1_000, &cell(chosen.id.column, chosen.id.row)).unwrap();
    phone.tap(2_000, &Action::Swim { tap: SwimTap::Band { cm: Some(500) } }).unwrap();
    phone.tap(3_000, &Action::SetMark { name: "Gate".into(), bearing_cdeg: -2_000 }).unwrap();
    phone.tap(4_000, &Action::CastHere).unwrap();
    let there = sent_to(&mut phone);
    assert!((3_000..=4_000).contains(&there.range_cm), "{there:?}");
    let aim_deg = chosen.aim.unwrap().bearing_deg;
    assert!((f64::from(there.bearing_cdeg) / 100.0 - aim_deg).abs() < 10.0, "{there:?}, {aim_deg}");
}
