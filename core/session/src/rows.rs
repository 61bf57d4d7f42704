//! The casts of a session as rows for the comparisons, with each value in one fixed spelling.

use super::cast::Cast;
use super::feed_before;
use super::model::Session;
use super::waits::{Stretch, stretches};
use super::water::reach_cm;
use restwater_compare::CastRow;
use restwater_compare::Factor;
use restwater_log::{Rig, Spot};
use restwater_match_day::rules::same_name;
use std::collections::BTreeMap;

/// The waits of the finished casts of a session as rows, in the order of the log. Times are minutes from the
/// start of the session (from its first entry if the start is missing). Casts still out, casts whose times
/// run backwards, and ends that were not seen are left out.
pub fn rows_of(session: &Session) -> Vec<CastRow> {
    let feedings = session.feedings();
    let row = |cast: &Cast, stretch: Stretch| CastRow {
        rod: cast.rod,
        at_min: stretch.from.at_ms as f64 / 60_000.0,
        wait: stretch.wait,
        twitched: stretch.twitched,
        setup: setup_of(cast).into_iter().chain(feed_before::values(&feedings, cast)).collect(),
    };
    let rows = |cast| stretches(session, cast).into_iter().map(move |stretch| row(cast, stretch));
    let mut rows: Vec<CastRow> = session.casts.iter().flat_map(rows).collect();
    for factor in [Factor::Bait, Factor::Colour] {
        spell_alike(&mut rows, factor);
    }
    rows
}

/// Gives a name the spelling in which the session had it first: "Pink" after "pink" is no change of colour.
fn spell_alike(rows: &mut [CastRow], factor: Factor) {
    let mut spellings: Vec<String> = Vec::new();
    for name in rows.iter_mut().filter_map(|row| row.setup.get_mut(&factor)) {
        if spellings.contains(name) {
            continue;
        }
        match spellings.iter().find(|known| same_name(known, name)) {
            Some(known) => name.clone_from(known),
            None => spellings.push(name.clone()),
        }
    }
}

/// The values set on a cast, without what was fed before it, which is only in its row. The leader is not
/// logged yet, so it never occurs.
pub fn setup_of(cast: &Cast) -> BTreeMap<Factor, String> {
    const FACTORS: [Factor; 7] = [
        Factor::Spot,
        Factor::Bait,
        Factor::Colour,
        Factor::Height,
        Factor::Hooklength,
        Factor::HookSize,
        Factor::Lead,
    ];
    let value = |factor| Some((factor, value_of(factor, &cast.rig, cast.spot.as_ref())?));
    FACTORS.into_iter().filter_map(value).collect()
}

/// One value in its fixed spelling, or `None` if it was not entered.
pub fn value_of(factor: Factor, rig: &Rig, spot: Option<&Spot>) -> Option<String> {
    let figure = |value: u32, per: f64, unit: &str| format!("{}{unit}", f64::from(value) / per);
    match factor {
        Factor::Spot => spot.map(spot_value),
        Factor::Bait => rig.bait.clone(),
        Factor::Colour => rig.colour.clone(),
        Factor::Height => rig.popup_mm.map(|mm| figure(mm, 10.0, " cm")),
        Factor::Hooklength => rig.hooklength_mm.map(|mm| figure(mm, 10.0, " cm")),
        Factor::HookSize => rig.hook_size.map(|size| size.to_string()),
        Factor::Lead => rig.lead_mg.map(|mg| figure(mg, 1_000.0, " g")),
        Factor::Leader | Factor::Feed | Factor::FeedAmount => None,
    }
}

/// Reads the millimetres of a height or a hooklength from that spelling.
pub fn length_mm(value: &str) -> Option<u32> {
    let cm: f64 = value.strip_suffix(" cm")?.parse().ok()?;
    (0.0..=100_000.0).contains(&cm).then(|| libm::round(cm * 10.0) as u32)
}

/// Direction and range, in centimetres so that a range entered in another unit is the same spot. The clip
/// and the name of a mark don't move a spot.
fn spot_value(spot: &Spot) -> String {
    let cm = reach_cm(spot.reach);
    format!("{}° {:.0} cm", f64::from(spot.bearing_cdeg) / 100.0, libm::round(cm))
}

#[cfg(test)]
mod tests {
    use super::super::written::{SESSION, Written};
    use super::*;
    use crate::{casts_that_tell, fold, waits_of};
    use restwater_log::{Payload, Reach, SessionSetup};

    fn rig(colour: &str) -> Rig {
        Rig { colour: Some(colour.into()), popup_mm: Some(457), lead_mg: Some(28_350), ..Rig::default() }
    }

    #[test]
    fn a_written_day_becomes_rows() {
        let mut day = Written::new(2);
        let reach = Reach::Wraps { hundredths: 1_700, span_tenth_mm: 20_000 };
        let spot = Spot { mark: None, bearing_cdeg: -1_450, reach, clipped: true };
        day.log(10, Payload::SpotSet { rod: 1, spot });
        day.log(20, Payload::RigSet { rod: 1, rig: rig("white") });
        day.log(60, Payload::Cast { rod: 1 });
        day.log(120, Payload::Cast { rod: 2 });
        day.log(660, Payload::Bite { rod: 1 });
        day.log(700, Payload::Lost { rod: 1 });
        day.log(710, Payload::RigSet { rod: 1, rig: rig("pink") });
        day.log(780, Payload::Cast { rod: 1 });
        day.log(1_020, Payload::WoundIn { rod: 2 });
        let rows = rows_of(&fold(SESSION, &day.ops));
        assert_eq!(rows.len(), 2, "the cast still out is no row");
        assert_eq!((rows[0].rod, rows[0].at_min, rows[0].wait.minutes()), (1, 1.0, 10.0));
        let values: Vec<(Factor, &str)> = rows[0].setup.iter().map(|(f, v)| (*f, v.as_str())).collect();
        assert_eq!(
            values,
            [
                (Factor::Spot, "-14.5° 3400 cm"),
                (Factor::Colour, "white"),
                (Factor::Height, "45.7 cm"),
                (Factor::Lead, "28.35 g")
            ]
        );
        assert!(!rows[1].wait.is_bite() && rows[1].setup.is_empty() && rows[1].wait.minutes() == 15.0);
    }

    #[test]
    fn a_colour_in_another_case_is_no_change() {
        let mut day = Written::new(1);
        for (n, colour) in (0..).zip(["pink", "Pink ", "white"]) {
            day.log(n * 1_000, Payload::RigSet { rod: 1, rig: rig(colour) });
            day.log(n * 1_000 + 10, Payload::Cast { rod: 1 });
            day.log(n * 1_000 + 900, Payload::WoundIn { rod: 1 });
        }
        let rows = rows_of(&fold(SESSION, &day.ops));
        let colours: Vec<&str> = rows.iter().map(|row| row.setup[&Factor::Colour].as_str()).collect();
        assert_eq!(colours, ["pink", "pink", "white"]);
    }

    #[test]
    fn a_cast_whose_end_was_not_seen_is_left_out() {
        let mut day = Written::new(1);
        day.log(0, Payload::Cast { rod: 1 });
        day.log(1_200, Payload::Cast { rod: 1 });
        day.log(1_800, Payload::WoundIn { rod: 1 });
        let session = fold(SESSION, &day.ops);
        let rows = rows_of(&session);
        assert_eq!(rows.iter().map(|r| (r.at_min, r.wait.minutes())).collect::<Vec<_>>(), [(20.0, 10.0)]);
        assert_eq!((waits_of(&session).len(), casts_that_tell(&session)), (1, 1));
        assert_eq!(crate::figures::wait_minutes(&session, &session.casts[0]), None);
    }

    /// Twelve minutes, twitched after five and after nine, then a bite: the bait was out for twelve minutes.
    #[test]
    fn each_stretch_that_a_twitch_ends_is_a_wait_without_a_bite() {
        let of = |twitch_restarts, settle_s| {
            let mut day = Written::new(1);
            let setup = SessionSetup { twitch_restarts, settle_s, ..SessionSetup::default() };
            day.ops.clear();
            day.log(0, Payload::SessionStarted(setup));
            day.log(60, Payload::Cast { rod: 1 });
            day.log(360, Payload::Twitch { rod: 1 });
            day.log(600, Payload::Twitch { rod: 1 });
            day.log(780, Payload::Bite { rod: 1 });
            day.log(800, Payload::Lost { rod: 1 });
            fold(SESSION, &day.ops)
        };
        let waits = |session: &Session| -> Vec<(f64, bool)> {
            waits_of(session).iter().map(|w| (w.minutes(), w.is_bite())).collect()
        };
        assert_eq!(waits(&of(false, 0)), [(12.0, true)]);
        assert_eq!(waits(&of(true, 0)), [(5.0, false), (4.0, false), (3.0, true)]);
        assert_eq!(
            waits(&of(true, 60)),
            [(4.0, false), (4.0, false), (3.0, true)],
            "it settles after the splash only"
        );
        let session = of(true, 0);
        let rows: Vec<_> = rows_of(&session).iter().map(|r| (r.at_min, r.twitched)).collect();
        assert_eq!(rows, [(1.0, true), (6.0, true), (10.0, false)]);
        assert_eq!(casts_that_tell(&session), 1);
    }

    #[test]
    fn the_same_spot_in_yards_and_metres_is_one_spot() {
        let at = |reach| spot_value(&Spot { mark: None, bearing_cdeg: 0, reach, clipped: false });
        // 1 yd = 0.9144 m exactly (international yard and pound agreement, 1959).
        assert_eq!(at(Reach::Yards { hundredths: 4_000 }), at(Reach::Metres { cm: 3_658 }));
    }
}
