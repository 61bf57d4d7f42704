use super::*;
use serde_json::json;

/// A file of a club with these weights, its hash as it should be.
fn file_of(club: &Value) -> Vec<u8> {
    let club = serde_json::to_string(club).unwrap();
    let hash = sha256_hex(club.as_bytes());
    [HEADER, b"\x1e{\"club\":", club.as_bytes(), HASH_START, hash.as_bytes(), HASH_END, b"\n"].concat()
}

fn usual() -> Vec<f64> {
    Shapes::usual().kind_weights().iter().map(|w| (w * 1e6).round() / 1e6).collect()
}

fn club() -> Value {
    json!({"shapes": 1, "anglers": 52, "days": 611, "waters": 9, "fitted": [
        {"of": "all", "anglers": 52, "days": 611, "weights": usual()},
        {"of": "water", "water": "Alder Pool", "anglers": 7, "days": 80, "weights": usual()},
        {"of": "month", "month": 11, "anglers": 30, "days": 200, "weights": usual()},
        {"of": "water_temperature", "from": 40, "until": 80, "anglers": 12, "days": 90, "weights": usual()}]})
}

fn fault(club: &Value) -> ClubFault {
    read(&file_of(club), "").unwrap_err()
}

/// The file of that club with one thing in its place changed.
fn with(pointer: &str, value: Value) -> Value {
    let mut club = club();
    *club.pointer_mut(pointer).unwrap() = value;
    club
}

#[test]
fn a_file_is_read_with_its_counts_and_the_name_typed() {
    let start = read(&file_of(&club()), "Alder AC").unwrap();
    assert_eq!((start.name.as_str(), start.anglers, start.days, start.waters), ("Alder AC", 52, 611, 9));
    assert_eq!(start.fitted.len(), 4);
    assert_eq!(start.fitted[1].days_of, ClubDays::Water { water: "Alder Pool".into() });
    assert_eq!(start.fitted[3].days_of, ClubDays::WaterTemperature { from: 40, until: 80 });
    let sum: u32 = start.fitted[0].weights.iter().sum();
    assert!(sum.abs_diff(1_000_000) < 200, "{sum}");
    assert_eq!(start.sha256.len(), 64);
}

#[test]
fn every_byte_changed_and_every_cut_is_seen() {
    let whole = file_of(&club());
    for cut in 1..whole.len() {
        let found = read(&whole[..cut], "");
        assert!(matches!(found, Err(ClubFault::Damaged(_))), "{cut}: {found:?}");
    }
    for at in (0..whole.len()).step_by(7) {
        let mut bytes = whole.clone();
        bytes[at] ^= 0x04;
        assert!(read(&bytes, "").is_err(), "{at}");
    }
    let twice = [&whole[..], &whole[..]].concat();
    assert!(matches!(read(&twice, ""), Err(ClubFault::Damaged(_))));
}

#[test]
fn later_and_earlier_versions_are_distinguished() {
    let later = String::from_utf8(file_of(&club())).unwrap().replace("\"version\":1", "\"version\":2");
    assert_eq!(read(later.as_bytes(), ""), Err(ClubFault::Newer));
    assert_eq!(fault(&with("/shapes", json!(2))), ClubFault::Newer);
    assert_eq!(fault(&with("/shapes", json!(0))), ClubFault::Older);
}

#[test]
fn weights_that_are_none_are_refused() {
    let doubled: Vec<f64> = usual().iter().map(|w| 2.0 * w).collect();
    assert!(matches!(
        fault(&with("/fitted/1/weights", json!(doubled))),
        ClubFault::Weights(ClubError::Sum(sum)) if (sum - 2.0).abs() < 1e-3
    ));
    assert_eq!(fault(&with("/fitted/0/weights/3", json!(-0.5))), ClubFault::Weights(ClubError::NotAWeight));
    let fewer = ClubError::Count { found: 1, kinds: usual().len() };
    assert_eq!(fault(&with("/fitted/0/weights", json!([1.0]))), ClubFault::Weights(fewer));
    // JSON has no infinity; what rounds to it is none either.
    let text = serde_json::to_string(&with("/fitted/0/weights/3", json!("there"))).unwrap();
    let text = text.replace("\"there\"", "1e999");
    let hash = sha256_hex(text.as_bytes());
    let file =
        [HEADER, b"\x1e{\"club\":", text.as_bytes(), HASH_START, hash.as_bytes(), HASH_END, b"\n"].concat();
    assert_eq!(read(&file, ""), Err(ClubFault::Weights(ClubError::NotAWeight)));
}

#[test]
fn no_water_of_fewer_than_five_anglers_is_taken() {
    assert_eq!(fault(&with("/fitted/1/anglers", json!(4))), ClubFault::FewAnglers(4));
    assert_eq!(fault(&with("/anglers", json!(3))), ClubFault::FewAnglers(3));
}

#[test]
fn what_is_missing_or_there_twice_is_refused() {
    for fitted in [json!([]), json!([club()["fitted"][1]])] {
        assert!(matches!(fault(&with("/fitted", fitted)), ClubFault::Damaged(_)));
    }
    let twice = json!([club()["fitted"][0], club()["fitted"][1], club()["fitted"][1]]);
    assert!(matches!(fault(&with("/fitted", twice)), ClubFault::Damaged(_)));
    let spelt = json!([
        club()["fitted"][0],
        club()["fitted"][1],
        with("/fitted/1/water", json!("alder pool "))["fitted"][1]
    ]);
    assert!(matches!(fault(&with("/fitted", spelt)), ClubFault::Damaged(_)), "one water in two spellings");
    assert!(matches!(fault(&with("/days", json!("many"))), ClubFault::Damaged(_)));
}

#[test]
fn other_files_are_none_and_too_large_a_one_is_refused() {
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join("file");
    for other in ["\u{1e}{\"format\":\"restwater-ops\",\"version\":1}\n", "", "{}"] {
        std::fs::write(&path, other).unwrap();
        assert_eq!(club_in(&path, "").unwrap(), None);
    }
    let mut large = file_of(&club());
    large.resize(LARGEST_BYTES + 1, b' ');
    std::fs::write(&path, large).unwrap();
    let found = club_in(&path, "");
    assert!(matches!(found, Err(ExchangeError::Club(ClubFault::TooLarge(LARGEST_BYTES)))), "{found:?}");
}
