//! The swim in files: what comes in by GeoJSON, what goes out, and what is refused.

use super::swim_screen::{choose, refused, scene, swim};
use super::*;
use restwater_log::SwimSetup;
use restwater_screen::{HazardKind, SwimThing};
use restwater_session::check_swim;
use restwater_swim::{FeatureKind, LineRole};

#[test]
fn impossible_things_from_a_file_are_left_out_of_the_picture() {
    let mut phone = started();
    let session = phone.app().session().unwrap().id;
    let bow = vec![(-900, 1_000), (900, 4_000), (900, 1_000), (-900, 4_000)];
    let behind = vec![(-500, -2_000), (500, -2_000), (0, -500)];
    let bad = [
        Payload::MarkSet { name: "a".into(), bearing_cdeg: 0 },
        Payload::MarkSet { name: "b".into(), bearing_cdeg: 0 },
        Payload::MarkSet { name: "behind".into(), bearing_cdeg: 18_000 },
        Payload::KeptBack { from_cdeg: 500, to_cdeg: 500, from_cm: 3_000, to_cm: 4_000 },
        Payload::KeptBack { from_cdeg: -500, to_cdeg: 500, from_cm: 4_000, to_cm: 4_000 },
        Payload::KeptBack { from_cdeg: -500, to_cdeg: 500, from_cm: 0, to_cm: 91_440 },
        Payload::FeatureSet {
            feature: restwater_log::FeatureKind::Bar,
            name: "far".into(),
            bearing_cdeg: 0,
            range_cm: 91_440,
        },
        Payload::HazardSet { name: "snag".into(), bearing_cdeg: 0, range_cm: 3_000, clear_cm: 0 },
        Payload::OutlineSet { corners_cm: bow.clone() },
        Payload::OutlineSet { corners_cm: behind.clone() },
        Payload::OutlineSet { corners_cm: vec![(0, 0)] },
        Payload::SwimSet(SwimSetup {
            far_bank_cm: Some(1),
            band_cm: Some(0),
            rest_target_min: 0,
            ..SwimSetup::default()
        }),
        Payload::SwimSet(SwimSetup {
            left_peg_cm: Some(u32::MAX),
            band_cm: Some(u32::MAX),
            ..SwimSetup::default()
        }),
        Payload::PegPlaced { lat_e7: i64::MAX, lon_e7: i64::MIN, straight_out_cdeg: i32::MIN },
    ];
    for (ms, payload) in (1..).zip(bad) {
        let said = format!("{payload:?}");
        phone.app().write(session, payload, None, &at(ms * 1_000)).unwrap();
        let picture = scene(&mut phone, ms * 1_000, false);
        assert!(picture.line_role.contains(&LineRole::Outline), "{said}");
        assert!(!picture.line_role.contains(&LineRole::KeptBack), "{said}");
        swim(&mut phone, ms * 1_000);
        assert!(phone.app().export_geojson(false).is_ok(), "{said}");
    }
    assert!(matches!(phone.app().export_geojson(true), Err(AppError::GeoJson(_))), "that place is none");
    assert!(matches!(
        check_swim(phone.app().session().unwrap(), &Payload::OutlineSet { corners_cm: bow }, None),
        Err(restwater_swim::SwimError::OutlineCrosses { .. })
    ));
    let view = swim(&mut phone, 60_000);
    assert_eq!(
        view.rows.iter().find(|r| r.tag == "rename").unwrap().choices.len(),
        5,
        "all can be taken away"
    );
}

/// A swim with a mark, a feature, a hazard and bounds.
pub(super) fn furnished() -> Phone {
    let mut phone = started();
    phone.tap(1_000, &Action::SetMark { name: "Gate".into(), bearing_cdeg: 300 }).unwrap();
    phone.tap(2_000, &choose(SwimTap::Feature { feature: FeatureKind::Bar })).unwrap();
    phone.tap(3_000, &choose(SwimTap::Hazard { hazard: HazardKind::Snag })).unwrap();
    phone.tap(4_000, &choose(SwimTap::LeftPeg { cm: Some(2000) })).unwrap();
    phone.tap(5_000, &choose(SwimTap::FarBank { cm: Some(5000) })).unwrap();
    phone
}

#[test]
fn a_swim_goes_to_another_phone_and_one_undo_removes_it() {
    let mut phone = furnished();
    let (text, _) = phone.app().export_geojson(false).unwrap();
    assert!(!text.contains("coordinates"), "positions are left out unless asked for");
    let mut other = started();
    let bare_before = other.app().session().unwrap().swim.clone();
    let look = other.app().look_at_geojson(&text).unwrap();
    assert_eq!(look.says, "New from the file: 1 mark, 1 feature, 1 hazard, an outline.");
    assert_eq!((look.entries, look.adds.len(), look.already.len(), look.skipped.len()), (4, 4, 0, 0));
    assert_eq!(other.app().ops().len(), 1, "looking changes nothing");
    assert_eq!(other.app().import_geojson(&text, &at(10_000)).unwrap(), look);
    let (here, there) = (phone.app().session().unwrap().clone(), other.app().session().unwrap().clone());
    let bare = |s: &Session| -> Vec<(String, i32)> {
        s.marks.iter().map(|m| (m.name.clone(), m.bearing_cdeg)).collect()
    };
    assert_eq!(bare(&here), bare(&there));
    assert_eq!(there.landmarks.len(), 2);
    let area = |s: &Session| restwater_session::swim_of(s).unwrap().area_m2();
    assert!((area(&here) / area(&there) - 1.0).abs() < 1e-6);
    assert_eq!(other.app().look_at_geojson(&text).unwrap().says, "Everything in this file is here already.");
    let before = other.app().ops().len();
    assert_eq!(other.app().import_geojson(&text, &at(11_000)).unwrap().entries, 0);
    assert_eq!(other.app().ops().len(), before);
    other.tap(12_000, &Action::Undo).unwrap();
    let after = other.app().session().unwrap();
    assert_eq!((after.marks.len(), after.landmarks.len(), after.outline_cm.len()), (0, 0, 0));
    assert_eq!(after.swim, bare_before);
    other.tap(14_000, &Action::Redo).unwrap();
    assert_eq!(other.app().session().unwrap().outline_cm.len(), 4);
    // Bounds entered later replace the outline.
    other.tap(15_000, &choose(SwimTap::FarBank { cm: Some(4000) })).unwrap();
    assert!(other.app().session().unwrap().outline_cm.is_empty());
}

#[test]
fn an_outline_is_removed_by_a_tap() {
    let mut phone = furnished();
    let (text, _) = phone.app().export_geojson(false).unwrap();
    let mut other = started();
    other.app().import_geojson(&text, &at(10_000)).unwrap();
    other.tap(11_000, &choose(SwimTap::Remove { thing: SwimThing::Outline })).unwrap();
    assert!(other.app().session().unwrap().outline_cm.is_empty());
    refused(&mut other, 12_000, &choose(SwimTap::Remove { thing: SwimThing::Outline }), ErrorKind::NotNow);
}

#[test]
fn bad_files_are_refused_and_change_nothing() {
    let mut phone = started();
    let before = phone.app().ops().len();
    let bow = r#"{"type":"FeatureCollection","features":[{"type":"Feature","geometry":null,
        "properties":{"kind":"boundary","peg_frame_m":[[-9,10],[9,40],[9,10],[-9,40]]}}]}"#;
    let behind = r#"{"type":"Feature","geometry":null,"properties":{"kind":"boundary","peg_frame_m":[[-9,-10],[9,-10],[0,-40]]}}"#;
    let far = r#"{"type":"Feature","geometry":null,"properties":{"kind":"hazard","name":"x","bearing_deg":3,"range_m":914.4}}"#;
    let placed =
        r#"{"type":"Feature","geometry":{"type":"Point","coordinates":[1,2]},"properties":{"name":"tree"}}"#;
    let cases = [
        ("{", ErrorKind::BadFile, "This is not a GeoJSON feature collection"),
        (bow, ErrorKind::BadFile, "The outline crosses itself"),
        (behind, ErrorKind::BadInput, "The outline leaves no water"),
        (far, ErrorKind::BadFile, "A range of 914 m is beyond any cast"),
        (placed, ErrorKind::NotNow, "This file holds positions: set the peg's position"),
    ];
    for (text, kind, says) in cases {
        let error = phone.app().look_at_geojson(text).unwrap_err();
        assert_eq!(error.kind(), kind, "{error}");
        let said = phone.app().message(&error);
        assert!(said.starts_with(says) && said.ends_with('.'), "{said}");
        assert!(phone.app().import_geojson(text, &at(2_000)).is_err());
    }
    let many: Vec<String> = (0..500)
        .map(|i| format!(r#"{{"type":"Feature","geometry":null,"properties":{{"kind":"aiming mark","name":"m","bearing_deg":{}}}}}"#, f64::from(i) / 10.0))
        .collect();
    let many = format!(r#"{{"type":"FeatureCollection","features":[{}]}}"#, many.join(","));
    assert!(matches!(phone.app().look_at_geojson(&many), Err(AppError::GeoJson(_))));
    assert!(phone.app().look_at_geojson(&" ".repeat(3_000_000)).is_err());
    assert_eq!(phone.app().ops().len(), before);
    phone.tap(3_000, &Action::EndSession).unwrap();
    assert_eq!(phone.app().look_at_geojson(bow).unwrap_err().kind(), ErrorKind::NotNow);
}
