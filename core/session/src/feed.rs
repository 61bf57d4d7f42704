//! Feed that was put in by hand or by a feeder with each cast, how much of it is at a spot, and fish that
//! showed themselves.

use super::Stamp;
use super::cast::Cast;
use super::fed::{Fed, Feeding, FishShown, feed_mg};
use super::model::{Doubt, DoubtKind, Session};
use super::step::Step;
use super::water::swim_spot;
use restwater_log::{FeedAmount, FeedKind, FeedMeasure, FeedSaid, FishSign, RodNumber, Spot, WaterPlace};
use restwater_swim::Point;

/// Feed within this many metres of a spot counts as fed there. A guess: a throw scatters by about this much.
const FED_HERE_M: f64 = 5.0;

/// What had been fed at a spot by a certain moment.
#[derive(Debug, Clone, PartialEq)]
pub struct FedHere {
    /// The latest of it.
    pub last: Feeding,
    /// Minutes since then.
    pub since_min: f64,
    /// All of it, in mg.
    pub mg: u64,
}

/// A logged place in the peg frame, or `None` if it can't exist.
pub fn point_of(place: WaterPlace) -> Option<Point> {
    let (deg, m) = (f64::from(place.bearing_cdeg) / 100.0, f64::from(place.range_cm) / 100.0);
    restwater_swim::Spot::new(deg, m).ok().map(restwater_swim::Spot::point)
}

impl Session {
    /// Adds feed that was put in by hand.
    pub(super) fn take_feed(&mut self, step: &Step, said: &FeedSaid) {
        if !self.is_open() {
            self.doubts.push(Doubt { op: step.op.id, kind: DoubtKind::OutsideSession });
        }
        self.fed.push(Fed { op: step.op.id, at: step.at.clone(), said: *said });
    }

    /// Adds fish that showed themselves.
    pub(super) fn take_shown(&mut self, step: &Step, sign: FishSign, place: WaterPlace) {
        if !self.is_open() {
            self.doubts.push(Doubt { op: step.op.id, kind: DoubtKind::OutsideSession });
        }
        self.shown.push(FishShown { op: step.op.id, at: step.at.clone(), sign, place });
    }

    /// All feed in chronological order.
    pub fn feedings(&self) -> Vec<Feeding> {
        let by_hand = self.fed.iter().map(|fed| Feeding {
            op: fed.op,
            at: fed.at.clone(),
            what: fed.said.what,
            amount: fed.said.amount,
            place: fed.said.place.and_then(point_of),
            rod: fed.said.rod,
            with_cast: false,
        });
        let mut all: Vec<Feeding> = by_hand.chain(self.casts.iter().filter_map(with_cast)).collect();
        all.sort_by_key(|feeding| feeding.at.at_ms);
        all
    }

    /// What was fed at a rod's spot up to `now`, including the cast made at that moment.
    pub fn fed_here(&self, rod: RodNumber, spot: Option<&Spot>, now: &Stamp) -> Option<FedHere> {
        fed_by(&self.feedings(), rod, spot, now)
    }

    /// What was fed at or near a place up to `now`.
    pub fn fed_near(&self, place: WaterPlace, now: &Stamp) -> Option<FedHere> {
        let here = point_of(place)?;
        fed_where(&self.feedings(), now, |feeding| feeding.place.is_some_and(|place| near(place, here)))
    }
}

/// The part of `feedings` that was fed at a rod's spot up to `now`, including the cast made at that moment.
pub fn fed_by(feedings: &[Feeding], rod: RodNumber, spot: Option<&Spot>, now: &Stamp) -> Option<FedHere> {
    let here = spot.and_then(swim_spot).map(restwater_swim::Spot::point);
    fed_where(feedings, now, |feeding| is_at(feeding, rod, here))
}

/// Whether it went in at a rod's spot. If either place is unknown, feed for a rod counts as being at that
/// rod's spot.
pub(super) fn is_at(feeding: &Feeding, rod: RodNumber, here: Option<Point>) -> bool {
    match (feeding.place, here) {
        (Some(place), Some(here)) => near(place, here),
        (None, None) => feeding.rod == Some(rod),
        _ => false,
    }
}

fn fed_where(feedings: &[Feeding], now: &Stamp, is_here: impl Fn(&Feeding) -> bool) -> Option<FedHere> {
    let here = || feedings.iter().filter(|feeding| now.ms_since(&feeding.at) >= 0 && is_here(feeding));
    let last = here().next_back()?.clone();
    let mg = here().map(|feeding| feed_mg(&feeding.amount)).sum();
    Some(FedHere { since_min: now.minutes_since(&last.at), last, mg })
}

fn near(a: Point, b: Point) -> bool {
    libm::hypot(a.x - b.x, a.y - b.y) <= FED_HERE_M
}

/// The feed that the feeder of a cast put in where it landed.
fn with_cast(cast: &Cast) -> Option<Feeding> {
    Some(Feeding {
        op: cast.op,
        at: cast.start.clone(),
        what: FeedKind::Feeder,
        amount: FeedAmount::Measures { measure: FeedMeasure::Fill, count: 1, each_mg: cast.fill_mg? },
        place: cast.spot.as_ref().and_then(swim_spot).map(restwater_swim::Spot::point),
        rod: Some(cast.rod),
        with_cast: true,
    })
}

#[cfg(test)]
mod tests {
    use super::super::fold;
    use super::super::written::{SESSION, Written, stamp};
    use super::*;
    use restwater_log::{Payload, Reach, WeightUnit};

    const CAST: Payload = Payload::Cast { rod: 1 };

    fn spot(bearing_cdeg: i32, cm: u32) -> Spot {
        Spot { mark: None, bearing_cdeg, reach: Reach::Metres { cm }, clipped: true }
    }

    fn handfuls(count: u16, place: Option<WaterPlace>) -> Payload {
        let amount = FeedAmount::Measures { measure: FeedMeasure::Handful, count, each_mg: 30_000 };
        Payload::Fed(FeedSaid { what: FeedKind::Loose, amount, rod: Some(1), place })
    }

    const HERE: WaterPlace = WaterPlace { bearing_cdeg: 500, range_cm: 3_000 };

    /// 1 lb is 453.59237 g exactly (international yard and pound agreement of 1959), 16 oz, 256 drams.
    #[test]
    fn amounts_weigh_what_was_entered() {
        let of = |unit, count| feed_mg(&FeedAmount::Weight { unit, count });
        assert_eq!((of(WeightUnit::Drams, 256), of(WeightUnit::Grams, 250)), (453_592, 250_000));
        assert_eq!(of(WeightUnit::Drams, 16), 28_350);
        let balls = FeedAmount::Measures { measure: FeedMeasure::Ball, count: 3, each_mg: 80_000 };
        assert_eq!(feed_mg(&balls), 240_000);
    }

    #[test]
    fn feed_counts_at_the_spot_it_went_to_and_within_reach_of_it() {
        let mut day = Written::new(1);
        day.log(60, handfuls(2, Some(HERE)));
        day.log(600, handfuls(1, Some(HERE)));
        let session = fold(SESSION, &day.ops);
        let at = |bearing, cm| session.fed_here(1, Some(&spot(bearing, cm)), &stamp(1_200));
        let here = at(500, 3_000).unwrap();
        assert_eq!((here.mg, here.since_min), (90_000, 10.0));
        assert!(at(500, 3_490).is_some(), "4.9 m behind it");
        assert_eq!(at(500, 3_510), None, "5.1 m behind it");
        assert_eq!(session.fed_here(1, None, &stamp(1_200)), None, "a rod without a spot is not there");
        let earlier = session.fed_near(HERE, &stamp(300)).unwrap();
        assert_eq!((earlier.mg, earlier.since_min), (60_000, 4.0), "as it was then");
    }

    #[test]
    fn without_a_spot_feed_counts_for_the_rod_it_was_put_in_for() {
        let mut day = Written::new(2);
        day.log(60, handfuls(1, None));
        let session = fold(SESSION, &day.ops);
        assert!(session.fed_here(1, None, &stamp(120)).is_some());
        assert_eq!(session.fed_here(2, None, &stamp(120)), None);
    }

    #[test]
    fn a_feeder_feeds_with_each_cast_until_a_plain_lead_is_tied_on() {
        let mut day = Written::new(1);
        day.log(10, Payload::SpotSet { rod: 1, spot: spot(500, 3_000) });
        day.log(60, CAST);
        day.log(120, Payload::FeederSet { rod: 1, fill_mg: Some(30_000) });
        for s in [600, 1_200] {
            day.log(s, CAST);
        }
        day.log(1_300, Payload::FeederSet { rod: 1, fill_mg: None });
        let undone = day.log(1_800, CAST);
        let session = fold(SESSION, &day.ops);
        let here = session.fed_here(1, Some(&spot(500, 3_000)), &stamp(1_860)).unwrap();
        assert_eq!((here.mg, here.since_min, here.last.with_cast), (60_000, 11.0, true));
        // Undoing a cast also undoes what it fed.
        day.undo(1_900, &[undone]);
        let second = day.ops.iter().filter(|op| op.payload == CAST).nth(2).unwrap().id;
        day.undo(1_910, &[second]);
        let session = fold(SESSION, &day.ops);
        assert_eq!(session.fed_near(HERE, &stamp(2_000)).unwrap().mg, 30_000);
    }

    #[test]
    fn fish_that_showed_themselves_are_kept_with_their_time_and_place() {
        let mut day = Written::new(1);
        let shown = day.log(600, Payload::FishShown { sign: FishSign::Bubbles, place: HERE });
        day.amend(610, shown, Payload::TimeSet { back_s: 60 });
        let session = fold(SESSION, &day.ops);
        assert_eq!((session.shown[0].at.at_ms, session.shown[0].place), (540_000, HERE));
        day.undo(620, &[shown]);
        assert_eq!(fold(SESSION, &day.ops).shown, []);
    }

    #[test]
    fn feed_can_be_set_back_and_after_the_end_it_is_a_doubt() {
        let mut day = Written::new(1);
        let fed = day.log(600, handfuls(1, None));
        assert_eq!(fold(SESSION, &day.ops).last_timed.unwrap().op, fed);
        day.amend(610, fed, Payload::TimeSet { back_s: 300 });
        let session = fold(SESSION, &day.ops);
        assert_eq!(session.fed_here(1, None, &stamp(900)).unwrap().since_min, 10.0);
        day.log(1_000, Payload::SessionEnded);
        let late = day.log(1_100, handfuls(1, None));
        let doubts = fold(SESSION, &day.ops).doubts;
        assert!(doubts.contains(&Doubt { op: late, kind: DoubtKind::OutsideSession }));
    }
}
