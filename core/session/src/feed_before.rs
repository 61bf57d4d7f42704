//! Feed as a factor that may matter: whether the water of a cast was fed shortly before it, and how much.
//!
//! Only feed that had gone in by the splash counts, including the fill of the cast's own feeder. Feed thrown
//! over a bait already in the water counts for later casts. So the value is fixed before the wait begins, and
//! a long wait doesn't become a fed one by being fed over.

use super::Stamp;
use super::cast::Cast;
use super::fed::{Feeding, feed_mg};
use super::feed::is_at;
use super::model::Session;
use super::waits::stretches;
use super::water::swim_spot;
use restwater_compare::{CastRow, Factor};
use restwater_log::{RodNumber, Spot};
use restwater_waits::Wait;

/// Feed counts for the casts of the next half hour: a guess.
pub const FED_WITHIN_MIN: i64 = 30;

/// How much was fed, in a fixed spelling for the comparisons.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FeedBand {
    /// A little.
    Little,
    /// More than that.
    Much,
    /// A bed of feed.
    Bed,
}

impl FeedBand {
    /// All, from the least.
    pub const ALL: [Self; 3] = [Self::Little, Self::Much, Self::Bed];

    /// The lower limits of "much" and of "a bed", g: guesses, about three handfuls and a bait box.
    pub const LIMITS_G: [u64; 2] = [100, 500];

    fn of(mg: u64) -> Self {
        match mg / 1_000 {
            grams if grams < Self::LIMITS_G[0] => Self::Little,
            grams if grams < Self::LIMITS_G[1] => Self::Much,
            _ => Self::Bed,
        }
    }

    /// Its spelling in a row.
    pub fn spelled(self) -> &'static str {
        match self {
            Self::Little => "under 100 g",
            Self::Much => "100 to 500 g",
            Self::Bed => "500 g and over",
        }
    }
}

/// The feed put in where a cast is, within [`FED_WITHIN_MIN`] before its splash: the latest of it, and the
/// total in mg.
pub(crate) fn fed_before<'a>(feedings: &'a [Feeding], cast: &Cast) -> Option<(&'a Feeding, u64)> {
    fed_before_at(feedings, cast.rod, cast.spot.as_ref(), &cast.start)
}

fn fed_before_at<'a>(
    feedings: &'a [Feeding],
    rod: RodNumber,
    spot: Option<&Spot>,
    splash: &Stamp,
) -> Option<(&'a Feeding, u64)> {
    let from_ms = splash.at_ms.saturating_sub(FED_WITHIN_MIN * 60_000);
    let first = feedings.partition_point(|feeding| feeding.at.at_ms < from_ms);
    let until = feedings.partition_point(|feeding| feeding.at.at_ms <= splash.at_ms);
    let here = spot.and_then(swim_spot).map(restwater_swim::Spot::point);
    let mut within = feedings.get(first..until)?.iter().filter(|feeding| is_at(feeding, rod, here));
    let mg = within.clone().map(|feeding| feed_mg(&feeding.amount)).sum();
    Some((within.next_back()?, mg))
}

/// Whether the cast that a rod has out is in fed water; if none is out, whether the next one would be if it
/// went out now.
pub fn in_fed_water(session: &Session, rod: RodNumber, now: &Stamp) -> bool {
    let feedings = session.feedings();
    if let Some(cast) = session.running(rod) {
        return fed_before(&feedings, cast).is_some();
    }
    let Some(state) = session.rod(rod) else { return false };
    // The feeder's own fill counts for its cast.
    state.fill_mg.is_some() || fed_before_at(&feedings, rod, state.spot.as_ref(), now).is_some()
}

/// The waits of all casts that have ended, in the order of the log, and for each wait whether its cast was in fed water.
pub fn waits_by_feed(session: &Session) -> (Vec<Wait>, Vec<bool>) {
    let feedings = session.feedings();
    let of = |cast| {
        let fed = !feedings.is_empty() && fed_before(&feedings, cast).is_some();
        stretches(session, cast).into_iter().map(move |stretch| (stretch.wait, fed))
    };
    session.casts.iter().flat_map(of).unzip()
}

/// Whether the row of a cast says that it was in fed water.
pub fn is_fed(row: &CastRow) -> bool {
    row.setup.get(&Factor::Feed).is_some_and(|value| value == FED)
}

/// Their spelling in a row.
const FED: &str = "fed";

/// The values of a cast for the comparisons; empty on a day on which no feed was logged.
pub(super) fn values(feedings: &[Feeding], cast: &Cast) -> Vec<(Factor, String)> {
    if feedings.is_empty() {
        return Vec::new();
    }
    match fed_before(feedings, cast) {
        None => vec![(Factor::Feed, "not fed".into())],
        Some((_, mg)) => {
            vec![(Factor::Feed, FED.into()), (Factor::FeedAmount, FeedBand::of(mg).spelled().into())]
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::written::{SESSION, Written, stamp};
    use super::super::{fold, rows_of, waits_by_feed};
    use super::*;
    use restwater_log::{FeedAmount, FeedKind, FeedMeasure, FeedSaid, Payload, Reach, Spot, WaterPlace};

    const CAST: Payload = Payload::Cast { rod: 1 };
    const IN: Payload = Payload::WoundIn { rod: 1 };

    fn fed(grams: u32, place: Option<WaterPlace>) -> Payload {
        let amount = FeedAmount::Measures { measure: FeedMeasure::Cup, count: 1, each_mg: grams * 1_000 };
        Payload::Fed(FeedSaid { what: FeedKind::Loose, amount, rod: Some(1), place })
    }

    fn values_of(day: &Written) -> Vec<(Option<String>, Option<String>)> {
        let rows = rows_of(&fold(SESSION, &day.ops));
        let of = |factor| move |row: &restwater_compare::CastRow| row.setup.get(&factor).cloned();
        rows.iter().map(|row| (of(Factor::Feed)(row), of(Factor::FeedAmount)(row))).collect()
    }

    fn said(feed: &str, amount: Option<&str>) -> (Option<String>, Option<String>) {
        (Some(feed.into()), amount.map(str::to_owned))
    }

    #[test]
    fn feed_counts_for_half_an_hour_and_only_if_it_went_in_before_the_splash() {
        let mut day = Written::new(1);
        let cast = |day: &mut Written, minute: i64| {
            day.log(minute * 60, CAST);
            day.log(minute * 60 + 300, IN);
        };
        cast(&mut day, 1);
        day.log(10 * 60, fed(60, None));
        cast(&mut day, 20);
        day.log(26 * 60, fed(60, None));
        cast(&mut day, 30);
        day.log(36 * 60, fed(400, None));
        // Fed over while the bait is out: this counts for the next cast.
        day.log(57 * 60, CAST);
        day.log(58 * 60, fed(60, None));
        day.log(59 * 60, IN);
        cast(&mut day, 89);
        let want = [
            said("not fed", None),
            said("fed", Some("under 100 g")),
            said("fed", Some("100 to 500 g")),
            said("fed", Some("100 to 500 g")),
            said("not fed", None),
        ];
        assert_eq!(values_of(&day), want);
    }

    #[test]
    fn feeding_over_a_cast_does_not_change_it_but_counts_for_the_next() {
        let mut day = Written::new(2);
        let now = |day: &Written, minute: i64| {
            let session = fold(SESSION, &day.ops);
            [1, 2].map(|rod| in_fed_water(&session, rod, &stamp(minute * 60)))
        };
        assert_eq!(now(&day, 1), [false, false]);
        day.log(120, CAST);
        day.log(180, fed(60, None));
        assert_eq!(
            now(&day, 4),
            [false, false],
            "fed over while it is there, and for the other rod's spot not at all"
        );
        day.log(600, IN);
        assert_eq!(now(&day, 11), [true, false]);
        assert_eq!(now(&day, 34), [false, false], "half an hour later");
        day.log(1_200, CAST);
        assert_eq!(now(&day, 60), [true, false], "by its splash");
        day.log(3_700, Payload::FeederSet { rod: 2, fill_mg: Some(30_000) });
        assert_eq!(now(&day, 62), [true, true], "a feeder feeds with its cast");
        assert_eq!(waits_by_feed(&fold(SESSION, &day.ops)).1, [false]);
        day.log(4_000, IN);
        let session = fold(SESSION, &day.ops);
        assert_eq!(waits_by_feed(&session).1, rows_of(&session).iter().map(is_fed).collect::<Vec<_>>());
    }

    #[test]
    fn a_day_without_feed_has_no_feed_values_and_another_spot_is_not_fed() {
        let mut day = Written::new(1);
        let spot = |cm| Spot { mark: None, bearing_cdeg: 0, reach: Reach::Metres { cm }, clipped: true };
        day.log(5, Payload::SpotSet { rod: 1, spot: spot(3_000) });
        day.log(60, CAST);
        day.log(300, IN);
        assert_eq!(values_of(&day), [(None, None)]);
        day.log(400, fed(900, Some(WaterPlace { bearing_cdeg: 0, range_cm: 4_000 })));
        day.log(500, CAST);
        day.log(700, IN);
        day.log(800, Payload::SpotSet { rod: 1, spot: spot(4_000) });
        day.log(900, CAST);
        day.log(1_100, IN);
        let want = [said("not fed", None), said("not fed", None), said("fed", Some("500 g and over"))];
        assert_eq!(values_of(&day), want);
    }
}
