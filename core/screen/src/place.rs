//! Spot and rig in words.

use super::{Arg, Wording};
use restwater_bench::units::{LineLength, OUNCE_G};
use restwater_log::{Reach, Rig, RodNumber, Spot, WaterPlace};
use restwater_session::{Mark, Session, reach_m, reach_near};

/// "Dead tree, 11 wraps of 2 m (22 m), clipped up".
pub fn spot_words(words: &Wording, session: &Session, spot: Option<&Spot>) -> String {
    let Some(spot) = spot else { return words.say("spot-none") };
    let aim = mark_of(session, spot)
        .map_or_else(|| bearing_words(words, spot.bearing_cdeg), |mark| mark.name.clone());
    let reach = reach_words(words, spot.reach);
    let text = words.say_with("spot-at", &[("where", Arg::Text(&aim)), ("reach", Arg::Text(&reach))]);
    if spot.clipped { words.listed(&[&text, &words.say("clipped")]) } else { text }
}

/// A place on the map in words, like a spot of this rod there: "Dead tree, 11 wraps of 2 m (22 m)".
pub fn place_words(words: &Wording, session: &Session, rod: RodNumber, place: WaterPlace) -> String {
    let reach = reach_like(session, rod, f64::from(place.range_cm) / 100.0);
    let spot = Spot { mark: None, bearing_cdeg: place.bearing_cdeg, reach, clipped: false };
    spot_words(words, session, Some(&spot))
}

/// A distance as the spot of this rod was measured, or before it has one in wraps.
pub(crate) fn reach_like(session: &Session, rod: RodNumber, range_m: f64) -> Reach {
    let wraps = Reach::Wraps { hundredths: 100, span_tenth_mm: session.setup.span_tenth_mm };
    let spot = session.rod(rod).and_then(|rod| rod.spot.as_ref());
    reach_near(range_m, spot.map_or(wraps, |spot| spot.reach))
}

/// The aiming mark that names a spot: the one it was cast to, or if only a direction was given, one exactly
/// in that direction.
pub fn mark_of<'a>(session: &'a Session, spot: &Spot) -> Option<&'a Mark> {
    let at = |m: &&Mark| spot.mark.map_or(m.bearing_cdeg == spot.bearing_cdeg, |id| m.id == id);
    session.marks.iter().find(at)
}

/// "12° left".
pub(crate) fn bearing_words(words: &Wording, cdeg: i32) -> String {
    // Nobody casts to half a degree.
    let whole = libm::round(f64::from(cdeg) / 100.0);
    let degrees = words.figure(whole.abs(), 0);
    let id = match whole as i32 {
        i32::MIN..=-1 => "spot-left",
        1.. => "spot-right",
        0 => "spot-straight",
    };
    words.say_with(id, &[("degrees", Arg::Text(&degrees))])
}

/// "11 wraps of 2 m (22 m)".
pub(crate) fn reach_words(words: &Wording, reach: Reach) -> String {
    let metres = words.figure(reach_m(reach), 1);
    match reach {
        Reach::Wraps { hundredths, span_tenth_mm } => {
            let wraps = words.figure(f64::from(hundredths) / 100.0, 2);
            let span = span_words(words, span_tenth_mm);
            let args =
                [("wraps", Arg::Text(&wraps)), ("span", Arg::Text(&span)), ("metres", Arg::Text(&metres))];
            words.say_with("spot-wraps", &args)
        }
        Reach::Metres { .. } => words.say_with("spot-metres", &[("metres", Arg::Text(&metres))]),
        Reach::Yards { hundredths } => {
            let yards = words.figure(f64::from(hundredths) / 100.0, 2);
            words.say_with("spot-yards", &[("yards", Arg::Text(&yards)), ("metres", Arg::Text(&metres))])
        }
    }
}

/// "12 ft" or "2 m".
pub(crate) fn span_words(words: &Wording, span_tenth_mm: u32) -> String {
    // A foot is 3 048 tenths of a millimetre, exactly.
    if span_tenth_mm > 0 && span_tenth_mm.is_multiple_of(1_524) {
        let feet = words.figure(f64::from(span_tenth_mm) / 3_048.0, 1);
        return words.say_with("span-ft", &[("feet", Arg::Text(&feet))]);
    }
    let metres = words.figure(f64::from(span_tenth_mm) / 10_000.0, 2);
    words.say_with("span-m", &[("metres", Arg::Text(&metres))])
}

/// A rig's length as it was meant, "18 in" or "45 cm".
pub(crate) fn length_words(words: &Wording, mm: u32) -> String {
    words.decimals(&LineLength::from_rounded_mm(mm).to_string())
}

/// A quarter of an ounce, in mg.
const QUARTER_OZ_MG: f64 = OUNCE_G * 250.0;

/// A lead in the unit it is sold in: one that is a whole number of quarter ounces to the 0.01 g that tackle has is said in ounces.
fn lead_words(words: &Wording, mg: u32) -> String {
    let quarters = libm::round(f64::from(mg) / QUARTER_OZ_MG);
    if quarters >= 1.0 && (f64::from(mg) - quarters * QUARTER_OZ_MG).abs() <= 5.0 {
        let ounces = words.figure(quarters / 4.0, 2);
        return words.say_with("rig-lead-oz", &[("ounces", Arg::Text(&ounces))]);
    }
    let grams = words.figure(f64::from(mg) / 1_000.0, 2);
    words.say_with("rig-lead-g", &[("grams", Arg::Text(&grams))])
}

/// "bread, white, 18 in pop-up, size 12, 30 cm hooklength, 1 oz".
pub(crate) fn rig_words(words: &Wording, rig: &Rig) -> String {
    let mut parts: Vec<String> = [&rig.bait, &rig.colour].into_iter().flatten().cloned().collect();
    if let Some(mm) = rig.popup_mm {
        parts.push(words.say_with("rig-popup", &[("length", Arg::Text(&length_words(words, mm)))]));
    }
    if let Some(size) = rig.hook_size {
        parts.push(words.say_with("rig-hook", &[("size", Arg::Text(&size.to_string()))]));
    }
    if let Some(mm) = rig.hooklength_mm {
        parts.push(words.say_with("rig-hooklength", &[("length", Arg::Text(&length_words(words, mm)))]));
    }
    if let Some(mg) = rig.lead_mg {
        parts.push(lead_words(words, mg));
    }
    if parts.is_empty() { words.say("rig-none") } else { words.listed(&parts) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_reach_keeps_the_span_with_which_it_was_measured() {
        let words = Wording::new();
        let of = |hundredths, span_tenth_mm| reach_words(&words, Reach::Wraps { hundredths, span_tenth_mm });
        assert_eq!(of(950, 36_576), "9.5 wraps of 12 ft (34.7 m)");
        assert_eq!(of(1_100, 20_000), "11 wraps of 2 m (22 m)");
        assert_eq!(reach_words(&words, Reach::Yards { hundredths: 4_000 }), "40 yd (36.6 m)");
    }

    #[test]
    fn a_lead_of_quarter_ounces_is_said_in_ounces() {
        let of = |mg| lead_words(&Wording::new(), mg);
        assert_eq!(
            (of(28_350).as_str(), of(42_524).as_str(), of(7_090).as_str()),
            ("1 oz", "1.5 oz", "0.25 oz")
        );
        assert_eq!((of(28_000).as_str(), of(30_000).as_str(), of(20_000).as_str()), ("28 g", "30 g", "20 g"));
    }

    #[test]
    fn a_rig_in_words_names_only_what_is_set() {
        let words = Wording::new();
        assert_eq!(rig_words(&words, &Rig::default()), "Rig not set");
        let rig =
            Rig { bait: Some("bread".into()), popup_mm: Some(457), hook_size: Some(12), ..Rig::default() };
        assert_eq!(rig_words(&words, &rig), "bread, 18 in pop-up, size\u{a0}12");
    }

    #[test]
    fn directions_are_left_right_or_straight() {
        let words = Wording::new();
        assert_eq!(bearing_words(&words, -1_210), "12° left");
        assert_eq!(bearing_words(&words, 550), "6° right");
        assert_eq!(bearing_words(&words, -40), "Straight out");
        assert_eq!(bearing_words(&words, 0), "Straight out");
    }
}
