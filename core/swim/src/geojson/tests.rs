use super::super::boundary::Neighbours;
use super::super::frame::Spot;
use super::super::input::{Band, Fan, SwimInput};
use super::*;

fn peg(lat: f64, lon: f64, out: f64) -> PegOnEarth {
    PegOnEarth::new(Place::new(lat, lon).unwrap(), out).unwrap()
}

fn swim() -> Swim {
    let n = Neighbours {
        left_peg_m: Some(24.0),
        right_peg_m: Some(30.0),
        far_bank_m: Some(55.0),
        far_bank_pegged: false,
    };
    let mark =
        |id: &str, bearing_deg: f64| AimingMark { id: id.into(), name: id.to_uppercase(), bearing_deg };
    let spot = Spot { bearing_deg: 12.0, range_m: 33.0 };
    Swim::new(SwimInput {
        marks: vec![mark("tree", -11.5), mark("hut", 14.0)],
        boundary: Some(n.outline().unwrap()),
        features: vec![Feature { name: "bar".into(), kind: FeatureKind::Bar, spot }],
        hazards: vec![Hazard { name: "snag".into(), spot, clear_m: 4.0 }],
        kept_back: vec![KeptBack {
            fan: Fan { from_deg: -20.0, to_deg: 0.0 },
            band: Band { from_m: 40.0, to_m: 50.0 },
            since_ms: 0,
            released_ms: None,
        }],
        ..SwimInput::default()
    })
    .unwrap()
}

fn collection(text: &str) -> FeatureCollection {
    match text.parse::<GeoJson>().unwrap() {
        GeoJson::FeatureCollection(c) => c,
        other => panic!("{other}"),
    }
}

/// Polygons as rings of positions.
type Polygons = Vec<Vec<Vec<Position>>>;

/// Every outer ring and hole of the file, with its kind, whether it is outer, and its stated area.
fn rings(c: &FeatureCollection) -> Vec<(String, f64, Polygons)> {
    let of = |f: &::geojson::Feature| match f.geometry.as_ref().map(|g| g.value.clone()) {
        Some(GeometryValue::Polygon { coordinates }) => vec![coordinates],
        Some(GeometryValue::MultiPolygon { coordinates }) => coordinates,
        _ => Vec::new(),
    };
    c.features
        .iter()
        .map(|f| {
            let area = f.property("area_m2").and_then(Value::as_f64).unwrap_or(0.0);
            (f.property("kind").unwrap().as_str().unwrap().to_owned(), area, of(f))
        })
        .filter(|r| !r.2.is_empty())
        .collect()
}

/// The swim without a day.
fn map(peg: Option<&PegOnEarth>) -> String {
    swim().day_to_geojson(peg, &DayOnMap::default()).unwrap()
}

fn area(polygon: &[Vec<Position>]) -> f64 {
    polygon
        .iter()
        .map(|ring| {
            let earth = geographiclib_rs::Geodesic::wgs84();
            let mut polygon =
                geographiclib_rs::PolygonArea::new(&earth, geographiclib_rs::Winding::CounterClockwise);
            for p in &ring[..ring.len() - 1] {
                polygon.add_point(p.as_slice()[1], p.as_slice()[0]);
            }
            polygon.compute(true).1
        })
        .sum()
}

#[test]
fn outer_rings_run_anticlockwise_and_have_the_right_area() {
    for at in [peg(52.0, -1.2, 200.0), peg(-44.0, 170.5, 10.0), peg(65.0, 20.0, 300.0), peg(0.0, 0.0, 45.0)] {
        let c = collection(&map(Some(&at)));
        let rings = rings(&c);
        assert_eq!(rings.iter().map(|r| r.0.as_str()).collect::<Vec<_>>(), ["swim", "boundary", "kept back"]);
        for (kind, stated, polygons) in rings {
            let on_earth: f64 = polygons.iter().map(|p| area(p)).sum();
            // Seven decimals are about a centimetre: some square metres in a few hundred metres of edge.
            assert!((on_earth / stated - 1.0).abs() < 2e-3, "{kind}: {on_earth} of {stated}");
            for ring in polygons.iter().flatten() {
                assert_eq!(ring.first(), ring.last());
            }
        }
    }
}

#[test]
fn numbers_have_at_most_seven_decimals() {
    let c = collection(&map(Some(&peg(52.123_456_789, -1.212_345_678_9, 200.0))));
    let text = json!(c.features.iter().map(|f| &f.geometry).collect::<Vec<_>>()).to_string();
    let longest = text
        .split(|ch: char| !ch.is_ascii_digit() && ch != '.')
        .filter_map(|n| n.split_once('.').map(|(_, d)| d.len()))
        .max();
    assert_eq!(longest, Some(7));
}

#[test]
fn positions_are_left_out_unless_asked_for() {
    let text = map(None);
    assert!(!text.contains("coordinates"));
    assert!(collection(&text).features.iter().all(|f| f.geometry.is_none()));
    let back = swim_from_geojson(&text, None).unwrap();
    assert_eq!(back.boundary, swim().input().boundary);
    assert_eq!(back.marks, swim().columns().marks);
    assert_eq!(
        (back.features.clone(), back.hazards.clone()),
        (swim().input().features.clone(), swim().input().hazards.clone())
    );
    assert!(back.skipped.is_empty());
}

#[test]
fn a_foreign_file_is_read_by_its_geometry() {
    let at = peg(52.0, -1.2, 90.0);
    let tree = at.place_of(point_at(-15.0, 80.0));
    let corners = [(-20.0, 5.0), (20.0, 5.0), (25.0, 50.0), (-22.0, 48.0), (-20.0, 5.0)];
    let ring: Vec<[f64; 2]> =
        corners.iter().map(|&(x, y)| at.place_of(Point { x, y })).map(|p| [p.lon_deg, p.lat_deg]).collect();
    let text = json!({"type": "FeatureCollection", "features": [
        {"type": "Feature", "properties": {"name": "tree"}, "geometry": {"type": "Point", "coordinates": [tree.lon_deg, tree.lat_deg]}},
        {"type": "Feature", "properties": null, "geometry": {"type": "Polygon", "coordinates": [ring]}},
        {"type": "Feature", "properties": {"name": "path"}, "geometry": {"type": "MultiPoint", "coordinates": []}},
    ]})
    .to_string();
    let got = swim_from_geojson(&text, Some(&at)).unwrap();
    assert!((got.marks[0].bearing_deg + 15.0).abs() < 1e-6 && got.marks[0].name == "tree");
    let boundary = got.boundary.unwrap();
    assert!(boundary.iter().zip(corners).all(|(p, (x, y))| p.distance(Point { x, y }) < 1e-5));
    assert_eq!(got.skipped, ["path"]);
    assert_eq!(swim_from_geojson(&text, None), Err(GeoJsonError::PegNeeded));
    let far = peg(53.0, -1.2, 90.0);
    assert!(matches!(
        swim_from_geojson(&text, Some(&far)),
        Err(GeoJsonError::Earth(EarthError::TooFar { .. }))
    ));
}

#[test]
fn what_crosses_the_date_line_is_cut_there() {
    for (lon, out) in [(179.9999, 90.0), (-179.9999, 270.0), (179.9999, 30.0)] {
        let at = peg(-17.0, lon, out);
        let text = map(Some(&at));
        let c = collection(&text);
        let (_, stated, polygons) = rings(&c).remove(0);
        assert_eq!(polygons.len(), 2, "{text}");
        assert!((polygons.iter().map(|p| area(p)).sum::<f64>() / stated - 1.0).abs() < 2e-3);
        for polygon in &polygons {
            let lons: Vec<f64> = polygon[0].iter().map(|p| p.as_slice()[0]).collect();
            assert!(lons.iter().all(|l| *l > 179.0) || lons.iter().all(|l| *l < -179.0));
        }
        let cut = |f: &::geojson::Feature| {
            matches!(f.geometry.as_ref().map(|g| &g.value), Some(GeometryValue::MultiLineString { .. }))
        };
        assert!(c.features.iter().any(cut));
        assert_eq!(swim_from_geojson(&text, Some(&at)).unwrap().marks, swim().columns().marks);
    }
}

#[test]
fn bad_files_are_refused_with_words() {
    let at = peg(52.0, -1.2, 90.0);
    let read = |text: &str| swim_from_geojson(text, Some(&at));
    assert!(matches!(read("{"), Err(GeoJsonError::NotGeoJson(_))));
    assert!(matches!(read(r#"{"type":"Point","coordinates":[1,2]}"#), Err(GeoJsonError::NotGeoJson(_))));
    let one =
        |geometry: &str| format!(r#"{{"type":"Feature","properties":{{"name":"x"}},"geometry":{geometry}}}"#);
    let lat = read(&one(r#"{"type":"Point","coordinates":[0,91]}"#));
    assert!(matches!(lat, Err(GeoJsonError::Earth(EarthError::Latitude(_)))));
    let lon = read(&one(r#"{"type":"Point","coordinates":[181,1]}"#));
    assert!(matches!(lon, Err(GeoJsonError::Earth(EarthError::Longitude(_)))));
    let bow = one(
        r#"{"type":"Polygon","coordinates":[[[-1.2,52.0],[-1.199,52.001],[-1.199,52.0],[-1.2,52.001],[-1.2,52.0]]]}"#,
    );
    assert!(matches!(read(&bow), Err(GeoJsonError::Swim(SwimError::OutlineCrosses { .. }))));
    assert!(read(&one(r#"{"type":"Point","coordinates":[1]}"#)).is_err());
}

#[test]
fn what_happened_on_the_day_goes_out_and_is_not_read_back() {
    let spot = Spot::new(12.0, 30.0).unwrap();
    let said = |kind: &str| json!({"kind": kind, "grams": 60}).as_object().unwrap().clone();
    let session = json!({"breaks": [{"away": "a", "returned": "b"}]}).as_object().unwrap().clone();
    let day = DayOnMap {
        session,
        seen: vec![(spot, said(FED)), (spot, said(FISH_SHOWING)), (spot, said(FISH_LANDED))],
    };
    for at in [None, Some(peg(52.0, -1.2, 200.0))] {
        let text = swim().day_to_geojson(at.as_ref(), &day).unwrap();
        let c = collection(&text);
        let of = |kind: &str| {
            c.features.iter().find(|f| f.property("kind") == Some(&json!(kind))).unwrap().clone()
        };
        assert_eq!(of("peg").property("breaks"), Some(&json!([{"away": "a", "returned": "b"}])));
        let fed = of(FED);
        assert_eq!(
            (fed.property("bearing_deg"), fed.property("grams")),
            (Some(&json!(12.0)), Some(&json!(60)))
        );
        assert_eq!(fed.geometry.is_some(), at.is_some());
        assert_eq!(
            swim_from_geojson(&text, at.as_ref()).unwrap(),
            swim_from_geojson(&map(at.as_ref()), at.as_ref()).unwrap()
        );
    }
}
