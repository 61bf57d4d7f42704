//! Two and three rods, which can be told apart while standing.

use super::*;
use restwater_screen::SetupTap;

pub(super) fn with_rods(rods: u8) -> Phone {
    let mut phone = Phone::new();
    phone.tap(-5_000, &Action::Setup { tap: SetupTap::Rods { rods } }).unwrap();
    phone.tap(0, &START).unwrap();
    phone.look();
    phone
}

fn labels(phone: &mut Phone, ms: i64) -> Vec<String> {
    phone.bank(ms).rods.into_iter().map(|rod| rod.label).collect()
}

#[test]
fn the_rod_that_is_due_first_and_the_one_with_a_fish_on_are_marked() {
    let mut phone = with_rods(3);
    assert_eq!(labels(&mut phone, 0), ["Rod 1: in", "Rod 2: in", "Rod 3: in"]);
    phone.tap(MIN, &Action::Cast { rod: 2 }).unwrap();
    assert_eq!(labels(&mut phone, MIN), ["Rod 1: in", "Rod 2", "Rod 3: in"], "one rod alone has no first");
    phone.tap(3 * MIN, &Action::Cast { rod: 1 }).unwrap();
    assert_eq!(labels(&mut phone, 4 * MIN), ["Rod 1", "Rod 2: due first", "Rod 3: in"]);
    let spoken = |phone: &mut Phone, ms| phone.bank(ms).rods[1].spoken.clone();
    assert_eq!(spoken(&mut phone, 4 * MIN), "Rod 2, out 3 minutes, due first");
    // A fish on a rod that isn't chosen is shown at that rod. Only one bait is left out, so none is due
    // first.
    phone.tap(9 * MIN, &Action::Bite { rod: 2 }).unwrap();
    assert_eq!(labels(&mut phone, 9 * MIN), ["Rod 1", "Rod 2: FISH ON", "Rod 3: in"]);
    assert_eq!(
        phone.bank(9 * MIN).rods.iter().filter(|rod| rod.chosen).map(|rod| rod.rod).collect::<Vec<_>>(),
        [1]
    );
    phone.open();
    assert_eq!(labels(&mut phone, 10 * MIN), ["Rod 1", "Rod 2: FISH ON", "Rod 3: in"]);
}

#[test]
fn a_fish_on_another_rod_is_an_alert_until_that_rod_is_chosen() {
    let mut phone = with_rods(2);
    for rod in [1, 2] {
        phone.tap(i64::from(rod) * MIN, &Action::Cast { rod }).unwrap();
    }
    let alerts = |phone: &mut Phone, ms| -> Vec<String> {
        phone.bank(ms).rods.into_iter().map(|rod| rod.alert).collect()
    };
    phone.tap(9 * MIN, &Action::Bite { rod: 2 }).unwrap();
    phone.tap(10 * MIN, &Action::ChooseRod { rod: 1 }).unwrap();
    assert_eq!(alerts(&mut phone, 10 * MIN), ["", "FISH ON"]);
    phone.tap(11 * MIN, &Action::ChooseRod { rod: 2 }).unwrap();
    assert_eq!(alerts(&mut phone, 11 * MIN), ["", ""], "its own keys ask what came of it");
}

#[test]
fn a_single_rod_shows_only_its_name() {
    let mut phone = with_rods(1);
    phone.tap(MIN, &CAST).unwrap();
    assert_eq!(labels(&mut phone, 2 * MIN), ["Rod 1"]);
    phone.tap(5 * MIN, &BITE).unwrap();
    assert_eq!(labels(&mut phone, 5 * MIN), ["Rod 1"]);
}

/// On a small screen the digits have no word beside them, and those of a rod that is in would be read as a wait.
#[test]
fn a_rod_that_is_in_says_so_in_place_of_digits() {
    let alerts = |phone: &mut Phone, ms| -> Vec<String> {
        phone.bank(ms).rods.into_iter().map(|rod| rod.alert).collect()
    };
    let mut phone = with_rods(2);
    assert_eq!(alerts(&mut phone, 0), ["in", "in"]);
    phone.tap(MIN, &CAST).unwrap();
    assert_eq!(alerts(&mut phone, 2 * MIN), ["", "in"]);
    phone.tap(3 * MIN, &WOUND_IN).unwrap();
    phone.tap(4 * MIN, &Action::Away).unwrap();
    assert_eq!(alerts(&mut phone, 5 * MIN), ["in", "in"]);
    phone.tap(6 * MIN, &Action::Returned).unwrap();
    assert_eq!(alerts(&mut phone, 6 * MIN), ["in", "in"]);
    let mut alone = with_rods(1);
    assert_eq!(alerts(&mut alone, 0), [""], "its clock says since when it is in");
}
