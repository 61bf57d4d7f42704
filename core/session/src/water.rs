//! The swim of a session, in metres and degrees.

use super::cast::{Cast, EndCause};
use super::fed::{Feeding, feed_mg};
use super::model::{LandmarkKind, Mark, Session};
use super::waits::all_waits_ms;
use restwater_log::{FeedSaid, Payload, Reach, Spot, SwimSetup};
use restwater_swim::planar::check_outline;
use restwater_swim::range::METRES_PER_YARD;
use restwater_swim::{
    AimingMark, Band, CastAt, Fan, Feature, FedAt, Hazard, KeptBack, LONGEST_RANGE_M, Neighbours, PegOnEarth,
    Place, Point, ShownAt, Swim, SwimError, SwimInput, bearing_range,
};
use std::collections::HashSet;
use uuid::Uuid;

/// The widest bearing in front of the peg, in hundredths of a degree.
const WIDEST_CDEG: i32 = 9_000;
/// Narrower bands than this are widened to it, in metres.
const NARROWEST_BAND_M: f64 = 2.0;

/// Line out in metres.
pub fn reach_m(reach: Reach) -> f64 {
    reach_cm(reach) / 100.0
}

/// Line out in centimetres.
pub(super) fn reach_cm(reach: Reach) -> f64 {
    match reach {
        Reach::Wraps { hundredths, span_tenth_mm } => {
            f64::from(hundredths) * f64::from(span_tenth_mm) / 10_000.0
        }
        Reach::Metres { cm } => f64::from(cm),
        Reach::Yards { hundredths } => f64::from(hundredths) * METRES_PER_YARD,
    }
}

/// Everything the swim is computed from. Casts without a spot are left out. So is everything impossible that
/// a file from elsewhere may contain: a mark behind the peg or on the bearing of another, kept-back water
/// without width, an outline that crosses itself. So there is always a swim to show.
pub fn swim_input(session: &Session) -> SwimInput {
    let setup = &session.swim;
    let mut input = SwimInput {
        marks: marks(session),
        boundary: boundary(session),
        casts: session.casts.iter().filter_map(|cast| cast_at(session, cast)).collect(),
        sent: session.rods.iter().filter_map(|rod| swim_spot(rod.spot.as_ref()?)).collect(),
        other_bites_ms: other_bites(session),
        kept_back: session.kept_back.iter().filter_map(kept_back).collect(),
        features: features(session),
        hazards: hazards(session),
        fed: fed(session),
        shown: shown(session),
        rest_target_min: f64::from(setup.rest_target_min.max(1)),
        ..SwimInput::default()
    };
    if let Some(cm) = setup.band_cm {
        input.bands = bands(metres_of(cm), input.spots());
    }
    input
}

/// The swim of a session. Bounds that leave no water in front of the peg are ignored.
pub fn swim_of(session: &Session) -> Result<Swim, SwimError> {
    let input = swim_input(session);
    match Swim::new(input.clone()) {
        Err(SwimError::NoWater) => Swim::new(SwimInput { boundary: None, ..input }),
        other => other,
    }
}

/// Checks before logging that an entry about the swim is possible; `amends` is the entry that it replaces.
pub fn check_swim(session: &Session, payload: &Payload, amends: Option<Uuid>) -> Result<(), SwimError> {
    let tried = match payload {
        Payload::SpotSet { spot, .. } => {
            return restwater_swim::Spot::new(degrees(spot.bearing_cdeg), reach_m(spot.reach)).map(|_| ());
        }
        Payload::FeatureSet { bearing_cdeg, range_cm, .. }
        | Payload::HazardSet { bearing_cdeg, range_cm, .. } => {
            return restwater_swim::Spot::new(degrees(*bearing_cdeg), metres_of(*range_cm)).map(|_| ());
        }
        Payload::Fed(FeedSaid { place: Some(place), .. }) | Payload::FishShown { place, .. } => {
            let (deg, m) = (degrees(place.bearing_cdeg), metres_of(place.range_cm));
            return restwater_swim::Spot::new(deg, m).map(|_| ());
        }
        Payload::KeptBack { from_cdeg, to_cdeg, from_cm, to_cm } => {
            let fan = Fan { from_deg: degrees(*from_cdeg), to_deg: degrees(*to_cdeg) };
            let band = Band { from_m: metres_of(*from_cm), to_m: metres_of(*to_cm) };
            return fan.check().and_then(|()| band.check());
        }
        Payload::MarkSet { name, bearing_cdeg } => {
            restwater_swim::Spot::new(degrees(*bearing_cdeg), 1.0)?;
            let same = |m: &&Mark| m.bearing_cdeg == *bearing_cdeg && Some(m.id) != amends;
            return match session.marks.iter().find(same) {
                Some(mark) => Err(SwimError::MarksOnOneBearing(mark.name.clone(), name.clone())),
                None => Ok(()),
            };
        }
        Payload::SwimSet(setup) => Session { swim: setup.clone(), ..session.clone() },
        Payload::OutlineSet { corners_cm } if !corners_cm.is_empty() => {
            check_outline(&outline(corners_cm))?;
            Session { outline_cm: corners_cm.clone(), ..session.clone() }
        }
        _ => return Ok(()),
    };
    Swim::new(swim_input(&tried)).map(|_| ())
}

/// The geographic position of the peg, if it was entered and is valid.
pub fn peg_on_earth(session: &Session) -> Option<PegOnEarth> {
    let peg = session.peg_place?;
    let degrees = |e7: i64| e7 as f64 / 1e7;
    let place = Place::new(degrees(peg.lat_e7), degrees(peg.lon_e7)).ok()?;
    PegOnEarth::new(place, f64::from(peg.straight_out_cdeg) / 100.0).ok()
}

/// Marks in front of the peg; if two have the same bearing, the first.
fn marks(session: &Session) -> Vec<AimingMark> {
    let mut seen = HashSet::new();
    let of = |m: &Mark| AimingMark {
        id: m.id.to_string(),
        name: m.name.clone(),
        bearing_deg: degrees(m.bearing_cdeg),
    };
    let usable = |m: &&Mark| m.bearing_cdeg.abs() <= WIDEST_CDEG && seen.insert(m.bearing_cdeg);
    session.marks.iter().filter(usable).map(of).collect()
}

pub(super) fn degrees(cdeg: i32) -> f64 {
    f64::from(cdeg) / 100.0
}

fn metres_of(cm: u32) -> f64 {
    f64::from(cm) / 100.0
}

/// Bands of one width to 60 m, or as far as the farthest spot. A cast on a border belongs to the band behind it.
fn bands(width_m: f64, spots: impl Iterator<Item = restwater_swim::Spot>) -> Vec<Band> {
    let width_m = width_m.clamp(NARROWEST_BAND_M, LONGEST_RANGE_M);
    // A millimetre for rounding.
    let farthest_m = spots.map(|spot| spot.range_m + 0.001).fold(0.0, f64::max);
    let count = libm::ceil(60.0 / width_m).max(libm::floor(farthest_m / width_m) + 1.0) as u32;
    let edge_m = |i: u32| (f64::from(i) * width_m).min(LONGEST_RANGE_M);
    let all = (0..count).map(|i| Band { from_m: edge_m(i), to_m: edge_m(i + 1) });
    // What is left before the longest range may have no width.
    all.filter(|band| band.check().is_ok()).collect()
}

/// The outline given by the neighbouring pegs and the far bank, once any of them is known.
fn boundary(session: &Session) -> Option<Vec<Point>> {
    let setup = &session.swim;
    let outline = (!session.outline_cm.is_empty()).then(|| outline(&session.outline_cm));
    if let Some(ring) = outline.and_then(|ring| check_outline(&ring).ok()) {
        return Some(ring);
    }
    let known = [setup.left_peg_cm, setup.right_peg_cm, setup.far_bank_cm].iter().any(Option::is_some);
    let neighbours = Neighbours {
        left_peg_m: setup.left_peg_cm.map(metres_of),
        right_peg_m: setup.right_peg_cm.map(metres_of),
        far_bank_m: setup.far_bank_cm.map(metres_of),
        far_bank_pegged: setup.far_bank_pegged,
    };
    known.then(|| neighbours.outline().ok()).flatten()
}

/// Corners in metres.
pub(crate) fn outline(corners_cm: &[(i32, i32)]) -> Vec<Point> {
    let m = |cm: i32| f64::from(cm) / 100.0;
    corners_cm.iter().map(|&(x, y)| Point { x: m(x), y: m(y) }).collect()
}

/// Whether two set-ups give the swim the same bounds.
pub(super) fn same_bounds(a: &SwimSetup, b: &SwimSetup) -> bool {
    let bounds = |s: &SwimSetup| (s.left_peg_cm, s.right_peg_cm, s.far_bank_cm, s.far_bank_pegged);
    bounds(a) == bounds(b)
}

/// A logged spot in the peg frame.
pub fn on_swim(spot: &Spot) -> restwater_swim::Spot {
    restwater_swim::Spot { bearing_deg: degrees(spot.bearing_cdeg), range_m: reach_m(spot.reach) }
}

/// The same, or `None` if no cast can land there.
pub(crate) fn swim_spot(spot: &Spot) -> Option<restwater_swim::Spot> {
    let at = on_swim(spot);
    restwater_swim::Spot::new(at.bearing_deg, at.range_m).ok()
}

pub(super) fn cast_at(session: &Session, cast: &Cast) -> Option<CastAt> {
    let spot = cast.spot.as_ref()?;
    let cause = cast.end.as_ref().map(|end| &end.cause);
    let (waits_from_ms, waits_to_ms) = all_waits_ms(session, cast);
    Some(CastAt {
        spot: swim_spot(spot)?,
        clipped: spot.clipped,
        lead_g: cast.rig.lead_mg.filter(|mg| *mg > 0).map(|mg| f64::from(mg) / 1_000.0),
        start_ms: cast.start.at_ms,
        end_ms: cast.end.as_ref().map(|end| end.at.at_ms.max(cast.start.at_ms)),
        waits_from_ms,
        waits_to_ms,
        end_seen: !cast.end_not_seen(),
        bites: u32::from(cast.bite.is_some()),
        bite_ms: cast.bite.as_ref().map(|(at, _)| at.at_ms.max(cast.start.at_ms)),
        liners: cast.liners.len() as u32,
        lost: u32::from(matches!(cause, Some(EndCause::Lost))),
        landed: u32::from(matches!(cause, Some(EndCause::Landed { .. }))),
    })
}

/// Bites on casts without a spot.
fn other_bites(session: &Session) -> Vec<i64> {
    let placed = |cast: &&Cast| cast.spot.as_ref().is_some_and(|spot| swim_spot(spot).is_some());
    session
        .casts
        .iter()
        .filter(|cast| !placed(cast))
        .filter_map(|cast| Some(cast.bite.as_ref()?.0.at_ms))
        .collect()
}

pub(super) fn kept_back(water: &super::model::KeptBack) -> Option<KeptBack> {
    let (bearing, range) = (water.bearing_cdeg, water.range_cm);
    let wide = bearing.0 < bearing.1 && bearing.0 >= -WIDEST_CDEG && bearing.1 <= WIDEST_CDEG;
    let deep = range.0 < range.1 && metres_of(range.1) <= LONGEST_RANGE_M;
    (wide && deep).then(|| KeptBack {
        fan: Fan { from_deg: degrees(bearing.0), to_deg: degrees(bearing.1) },
        band: Band { from_m: metres_of(range.0), to_m: metres_of(range.1) },
        since_ms: water.since.at_ms,
        released_ms: water.released.as_ref().map(|at| at.at_ms.max(water.since.at_ms)),
    })
}

fn features(session: &Session) -> Vec<Feature> {
    let feature = |l: &super::model::Landmark| match l.what {
        LandmarkKind::Feature(kind) => {
            let spot = restwater_swim::Spot::new(degrees(l.bearing_cdeg), metres_of(l.range_cm)).ok()?;
            Some(Feature { name: l.name.clone(), kind, spot })
        }
        LandmarkKind::Hazard { .. } => None,
    };
    session.landmarks.iter().filter_map(feature).collect()
}

fn hazards(session: &Session) -> Vec<Hazard> {
    let hazard = |l: &super::model::Landmark| match l.what {
        LandmarkKind::Hazard { clear_cm } => {
            let spot = restwater_swim::Spot::new(degrees(l.bearing_cdeg), metres_of(l.range_cm)).ok()?;
            Some(Hazard { name: l.name.clone(), spot, clear_m: metres_of(clear_cm.max(1)) })
        }
        LandmarkKind::Feature(_) => None,
    };
    session.landmarks.iter().filter_map(hazard).collect()
}

/// Feed and fish that showed themselves, as far as their place is valid.
fn fed(session: &Session) -> Vec<FedAt> {
    let at = |feeding: Feeding| {
        let (bearing_deg, range_m) = bearing_range(feeding.place?);
        let spot = restwater_swim::Spot::new(bearing_deg, range_m).ok()?;
        Some(FedAt { spot, at_ms: feeding.at.at_ms, mg: feed_mg(&feeding.amount) })
    };
    session.feedings().into_iter().filter_map(at).collect()
}

fn shown(session: &Session) -> Vec<ShownAt> {
    let at = |shown: &super::FishShown| {
        let (deg, m) = (degrees(shown.place.bearing_cdeg), metres_of(shown.place.range_cm));
        Some(ShownAt { spot: restwater_swim::Spot::new(deg, m).ok()?, at_ms: shown.at.at_ms })
    };
    session.shown.iter().filter_map(at).collect()
}

/// The reach nearest to a range in metres, in the unit and steps that the angler counts in: quarter wraps, whole yards,
/// half metres.
pub fn reach_near(range_m: f64, like: Reach) -> Reach {
    let steps = |unit_m: f64, step: f64| (libm::round(range_m / unit_m / step) * step).max(step);
    match like {
        Reach::Wraps { span_tenth_mm, .. } if span_tenth_mm > 0 => {
            let wraps = steps(f64::from(span_tenth_mm) / 10_000.0, 0.25);
            Reach::Wraps { hundredths: libm::round(wraps * 100.0) as u32, span_tenth_mm }
        }
        Reach::Yards { .. } => {
            Reach::Yards { hundredths: libm::round(steps(METRES_PER_YARD, 1.0) * 100.0) as u32 }
        }
        _ => Reach::Metres { cm: libm::round(steps(1.0, 0.5).min(LONGEST_RANGE_M) * 100.0) as u32 },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fold;
    use crate::written::{SESSION, Written};

    const WRAPS: Reach = Reach::Wraps { hundredths: 950, span_tenth_mm: 36_576 };

    #[test]
    fn a_reach_is_the_line_out() {
        assert!((reach_m(WRAPS) - 34.7472).abs() < 1e-12);
        assert!((reach_m(Reach::Yards { hundredths: 4_000 }) - 36.576).abs() < 1e-12);
    }

    #[test]
    fn a_range_comes_back_in_the_anglers_own_steps() {
        assert_eq!(reach_near(34.9, WRAPS), WRAPS);
        assert_eq!(reach_near(36.4, Reach::Yards { hundredths: 100 }), Reach::Yards { hundredths: 4_000 });
        assert_eq!(reach_near(30.2, Reach::Metres { cm: 1 }), Reach::Metres { cm: 3_000 });
    }

    #[test]
    fn the_swim_of_a_session_is_built_from_its_entries() {
        let mut day = Written::new(1);
        let mark = day.log(5, Payload::MarkSet { name: "gate".into(), bearing_cdeg: 300 });
        let spot = Spot { mark: Some(mark), bearing_cdeg: 300, reach: WRAPS, clipped: true };
        day.log(6, Payload::SpotSet { rod: 1, spot });
        day.log(60, Payload::Cast { rod: 1 });
        day.log(900, Payload::Bite { rod: 1 });
        day.log(950, Payload::Lost { rod: 1 });
        let session = fold(SESSION, &day.ops);
        let swim = Swim::new(swim_input(&session)).unwrap();
        let figures = swim.figures(1_000_000);
        assert_eq!((figures.casts, figures.casts_outside), (1, 0));
        let cell = figures.cells.iter().find(|c| c.casts == 1).unwrap();
        assert_eq!((cell.bites, cell.lost), (1, 1));
    }

    /// A day whose swim is set up like this, with a cast straight out.
    fn cast_at_cm(setup: SwimSetup, cm: u32) -> Session {
        let mut day = Written::new(1);
        day.log(5, Payload::SwimSet(setup));
        let spot = Spot { mark: None, bearing_cdeg: 0, reach: Reach::Metres { cm }, clipped: true };
        day.log(6, Payload::SpotSet { rod: 1, spot });
        day.log(60, Payload::Cast { rod: 1 });
        fold(SESSION, &day.ops)
    }

    fn is_inside(session: &Session) -> bool {
        let figures = swim_of(session).unwrap().figures(1_000_000);
        assert_eq!(figures.cells.iter().map(|cell| cell.casts).sum::<u32>() + figures.casts_outside, 1);
        figures.casts_outside == 0
    }

    #[test]
    fn the_swim_reaches_to_every_cast_with_any_width_of_bands() {
        for band_cm in [1, 200, 227, 500, 750, 1_000, 5_900, 6_000, 7_040, 25_000, u32::MAX] {
            for cm in [1_000, 6_000, 7_040, 12_500, 24_998] {
                let setup = SwimSetup { band_cm: Some(band_cm), ..SwimSetup::default() };
                assert!(is_inside(&cast_at_cm(setup, cm)), "bands of {band_cm} cm, a cast at {cm} cm");
            }
        }
        let setup = SwimSetup { band_cm: Some(1_000), ..SwimSetup::default() };
        let near = swim_of(&cast_at_cm(setup.clone(), 5_999)).unwrap();
        assert_eq!((near.bands().len(), swim_of(&cast_at_cm(setup, 6_000)).unwrap().bands().len()), (6, 7));
    }

    #[test]
    fn the_swim_reaches_as_far_out_as_no_far_bank_forbids() {
        let left = SwimSetup { left_peg_cm: Some(2_000), ..SwimSetup::default() };
        assert!(is_inside(&cast_at_cm(left.clone(), 9_144)));
        let pegged = SwimSetup { far_bank_pegged: true, ..left };
        assert!(is_inside(&cast_at_cm(pegged.clone(), 5_900)));
        let half_way = SwimSetup { far_bank_cm: Some(9_000), ..pegged };
        assert!(is_inside(&cast_at_cm(half_way.clone(), 4_400)) && !is_inside(&cast_at_cm(half_way, 4_600)));
    }
}
