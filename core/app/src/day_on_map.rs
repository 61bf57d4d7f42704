//! The parts of a day that its GeoJSON map includes: feed, fish that showed themselves, fish landed, breaks,
//! nets, and what others landed.

use restwater_exchange::rfc3339;
use restwater_log::FeedAmount;
use restwater_session::figures::{feed_kind_name, fish_sign_name, grams, side_name, weight_parts};
use restwater_session::own_count::catch_by_net;
use restwater_session::{
    Break, CaughtFish, Feeding, FishShown, NeighbourFish, OtherNet, Session, feed_mg, point_of, reach_m,
};
use restwater_swim::{DayOnMap, FED, FISH_LANDED, FISH_SHOWING, Point, Spot, bearing_range};
use serde_json::{Map, Value, json};
use uuid::Uuid;

/// Feed, fish that showed themselves and fish landed are given at their places; breaks, nets, the match and
/// the neighbours with the session. The phone that began the session identifies whose day it is, without a
/// name.
pub(super) fn day_on_map(session: &Session, phone: Option<Uuid>) -> DayOnMap {
    let feed =
        session.feedings().into_iter().filter_map(|feeding| Some((spot(feeding.place?)?, fed(&feeding))));
    let shown = session.shown.iter().filter_map(|seen| Some((spot(point_of(seen.place)?)?, showing(seen))));
    let fish = catch_by_net(session)
        .into_iter()
        .filter_map(|fish| Some((where_landed(session, &fish)?, landed(&fish))));
    DayOnMap { session: of_session(session, phone), seen: feed.chain(shown).chain(fish).collect() }
}

/// Everything without a place on the water, as far as it was entered.
fn of_session(session: &Session, phone: Option<Uuid>) -> Map<String, Value> {
    let mut said = Map::new();
    let mut say = |name: &str, all: Vec<Value>| {
        if !all.is_empty() {
            said.insert(name.into(), all.into());
        }
    };
    say("breaks", session.breaks.iter().map(a_break).collect());
    say(
        "nets",
        session.scales.iter().map(|net| json!({"net": net.net, "grams": net.shown.grams()})).collect(),
    );
    say("other_nets", session.others.iter().map(other_net).collect());
    say("neighbours_fish", session.neighbours.iter().map(neighbour).collect());
    if let Some(section) = session.section {
        said.insert("section".into(), json!({"pegs_left": section.left, "pegs_right": section.right}));
    }
    if !session.match_rule.is_empty() {
        said.insert("dead_fish_rule".into(), json!(session.match_rule));
    }
    if let Some(phone) = phone {
        said.insert("phone_id".into(), json!(phone));
    }
    said
}

fn where_landed(session: &Session, fish: &CaughtFish) -> Option<Spot> {
    let cast = session.casts.iter().find(|cast| cast.op == fish.cast)?;
    let at = cast.spot.as_ref()?;
    Spot::new(f64::from(at.bearing_cdeg) / 100.0, reach_m(at.reach)).ok()
}

fn landed(fish: &CaughtFish) -> Map<String, Value> {
    let (known_by, entered) = weight_parts(fish.weight.as_ref());
    let mut said = object(json!({
        "kind": FISH_LANDED,
        "time": rfc3339(&fish.at.shown),
        "put_back": fish.put_back,
    }));
    let net = fish.net.as_ref().filter(|_| !fish.put_back);
    let grams = entered.map(|(unit, count)| grams(unit, count));
    let parts = [("class", json!(fish.class)), ("net", json!(net)), ("grams", json!(grams))];
    said.extend(
        parts.into_iter().filter(|(_, part)| !part.is_null()).map(|(name, part)| (name.into(), part)),
    );
    if grams.is_some() {
        said.insert("weight_known_by".into(), json!(known_by));
    }
    said
}

fn other_net(net: &OtherNet) -> Value {
    let (side, place) = (side_name(net.peg.side), net.peg.place);
    json!({"side": side, "place": place, "grams": net.shown.grams(), "by_eye": net.guessed})
}

fn neighbour(fish: &NeighbourFish) -> Value {
    json!({"side": side_name(fish.side), "time": rfc3339(&fish.at.shown)})
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
