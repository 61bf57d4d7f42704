//! What of a day goes onto its map as GeoJSON: feed, fish that showed, breaks.

use restwater_exchange::rfc3339;
use restwater_log::FeedAmount;
use restwater_session::figures::{feed_kind_name, fish_sign_name};
use restwater_session::{Break, Feeding, FishShown, Session, feed_mg, point_of};
use restwater_swim::{DayOnMap, FED, FISH_SHOWING, Point, Spot, bearing_range};
use serde_json::{Map, Value, json};

/// Feed and fish that showed at their places, breaks with the session.
pub(super) fn day_on_map(session: &Session) -> DayOnMap {
    let feed =
        session.feedings().into_iter().filter_map(|feeding| Some((spot(feeding.place?)?, fed(&feeding))));
    let shown = session.shown.iter().filter_map(|seen| Some((spot(point_of(seen.place)?)?, showing(seen))));
    let mut said = Map::new();
    if !session.breaks.is_empty() {
        said.insert("breaks".into(), session.breaks.iter().map(a_break).collect());
    }
    DayOnMap { session: said, seen: feed.chain(shown).collect() }
}

fn spot(place: Point) -> Option<Spot> {
    let (bearing_deg, range_m) = bearing_range(place);
    Spot::new(bearing_deg, range_m).ok()
}

fn object(value: Value) -> Map<String, Value> {
    match value {
        Value::Object(map) => map,
        _ => Map::new(),
    }
}

fn fed(feeding: &Feeding) -> Map<String, Value> {
    let mut said = object(json!({
        "kind": FED,
        "what": feed_kind_name(feeding.what),
        "grams": feed_mg(&feeding.amount) as f64 / 1_000.0,
        "time": rfc3339(&feeding.at.shown),
        "with_cast": feeding.with_cast,
    }));
    if let FeedAmount::Measures { measure, count, .. } = feeding.amount {
        said.insert("measure".into(), json!(measure));
        said.insert("count".into(), json!(count));
    }
    said
}

fn showing(seen: &FishShown) -> Map<String, Value> {
    object(json!({
        "kind": FISH_SHOWING,
        "sign": fish_sign_name(seen.sign),
        "time": rfc3339(&seen.at.shown),
    }))
}

fn a_break(rest: &Break) -> Value {
    let returned = rest.to.as_ref().map(|to| rfc3339(&to.shown));
    json!({"away": rfc3339(&rest.from.shown), "returned": returned})
}
