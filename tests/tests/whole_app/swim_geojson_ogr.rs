//! An exported swim as GDAL sees it: `ogrinfo` reads the file, `ogr2ogr` flattens it around the peg, and the
//! areas are those stated by the core.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use restwater_swim::{
    AimingMark, Band, DayOnMap, Fan, KeptBack, Neighbours, PegOnEarth, Place, Swim, SwimInput,
};
use std::path::Path;
use std::process::Command;

fn swim() -> Swim {
    let bounds = Neighbours {
        left_peg_m: Some(22.0),
        right_peg_m: Some(34.0),
        far_bank_m: Some(56.0),
        far_bank_pegged: false,
    };
    let kept = KeptBack {
        fan: Fan { from_deg: -20.0, to_deg: 4.0 },
        band: Band { from_m: 40.0, to_m: 50.0 },
        since_ms: 0,
        released_ms: None,
    };
    let mark = |id: &str, bearing_deg: f64| AimingMark { id: id.into(), name: id.into(), bearing_deg };
    Swim::new(SwimInput {
        marks: vec![mark("tree", -14.0), mark("hut", 9.0)],
        boundary: Some(bounds.outline().unwrap()),
        kept_back: vec![kept],
        ..SwimInput::default()
    })
    .unwrap()
}

fn run(command: &mut Command) -> String {
    let out = command.output().unwrap();
    assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stderr));
    String::from_utf8(out.stdout).unwrap()
}

/// Kinds and areas as OGR computes them, from the flattened file.
fn areas(file: &Path) -> Vec<(String, f64)> {
    let sql = "SELECT kind, area_m2, OGR_GEOM_AREA FROM swim WHERE area_m2 IS NOT NULL";
    let said = run(Command::new("ogrinfo").args(["-q", "-ro", "-geom=NO", "-sql", sql]).arg(file));
    let field = |line: &str, name: &str| {
        line.trim().strip_prefix(name).and_then(|l| l.split_once(" = ")).map(|(_, v)| v.to_owned())
    };
    let mut found = Vec::new();
    let mut kind = String::new();
    for line in said.lines() {
        if let Some(k) = field(line, "kind ") {
            kind = k;
        }
        if let Some(area) = field(line, "OGR_GEOM_AREA ") {
            found.push((kind.clone(), area.parse().unwrap()));
        }
    }
    found
}

#[test]
#[ignore = "needs ogrinfo and ogr2ogr of GDAL: ./dev test runs it where they are installed"]
fn ogr_reads_an_exported_swim_with_the_right_areas() {
    let swim = swim();
    // One peg inland, one whose swim crosses the 180th meridian.
    for (lat, lon, out) in [(52.0, -1.2, 210.0), (-17.0, 179.9999, 80.0)] {
        let folder = tempfile::tempdir().unwrap();
        let (file, flat) = (folder.path().join("swim.geojson"), folder.path().join("flat.geojson"));
        let peg = PegOnEarth::new(Place::new(lat, lon).unwrap(), out).unwrap();
        std::fs::write(&file, swim.day_to_geojson(Some(&peg), &DayOnMap::default()).unwrap()).unwrap();
        let summary = run(Command::new("ogrinfo").args(["-ro", "-al", "-so"]).arg(&file));
        // The peg, swim, boundary and kept-back outlines, two marks.
        assert!(summary.contains("Feature Count: 6"), "{summary}");
        let here = format!("+proj=aeqd +lat_0={lat} +lon_0={lon} +datum=WGS84 +units=m");
        run(Command::new("ogr2ogr")
            .args(["-f", "GeoJSON", "-lco", "RFC7946=NO", "-lco", "COORDINATE_PRECISION=6", "-nln", "swim"])
            .args(["-s_srs", "EPSG:4326", "-t_srs", &here])
            .args([&flat, &file]));
        let found = areas(&flat);
        let kinds: Vec<&str> = found.iter().map(|a| a.0.as_str()).collect();
        assert_eq!(kinds, ["swim", "boundary", "kept back"]);
        let kept = swim.figures(1).kept_back.len();
        assert_eq!(kept, 1);
        let boundary = 28.0 * 56.0;
        for (kind, area) in &found {
            let stated = match kind.as_str() {
                "swim" => swim.area_m2(),
                "boundary" => boundary,
                // 24 degrees of a ring from 40 to 50 m, minus what the boundary cuts off.
                _ => continue,
            };
            assert!((area / stated - 1.0).abs() < 1e-3, "{kind}: {area} of {stated}");
        }
        let ring = 24f64.to_radians() / 2.0 * (50.0 * 50.0 - 40.0 * 40.0);
        assert!(found[2].1 > 0.7 * ring && found[2].1 < ring, "{found:?}");
    }
}
