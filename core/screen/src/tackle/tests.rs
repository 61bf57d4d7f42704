//! The rows of the tackle screen, and its caution.

use super::*;
use restwater_log::Payload;
use restwater_session::fold;
use restwater_session::written::{SESSION, Written};

const NOWHERE: TackleAround = TackleAround { wallet: &[], region: Region::England };

#[test]
fn the_caution_is_shown_for_lead_and_not_for_other_metals() {
    let words = Wording::new();
    let of =
        |lead_mg, material, region| caution(&words, &Rig { lead_mg, material, ..Rig::default() }, region);
    let lead = Some(LeadMaterial::Lead);
    assert!(of(Some(20_000), lead, Region::Wales).starts_with("Lead of this weight is not to be used"));
    assert!(of(Some(20_000), None, Region::England).starts_with("If it is lead: Lead of this weight"));
    assert!(of(Some(28_350), lead, Region::England).starts_with("One ounce of lead is exactly at the limit"));
    assert_eq!(of(Some(40_000), lead, Region::England), "");
    assert_eq!(of(Some(20_000), Some(LeadMaterial::NonToxic), Region::England), "");
    assert_eq!(of(None, lead, Region::England), "");
    assert!(of(Some(20_000), lead, Region::Elsewhere).contains("find out before you use it"));
}

/// 35 to 40 yd, the usual first range (common practice, no source), whatever the sticks are apart.
#[test]
fn the_first_range_is_the_usual_one_with_any_sticks() {
    for span_tenth_mm in [10_000, 20_000, 30_000, 36_576] {
        let metres = restwater_session::reach_m(first_reach(span_tenth_mm));
        assert!((32.0..=36.6).contains(&metres), "{span_tenth_mm}: {metres}");
    }
    assert_eq!(first_reach(36_576), Reach::Wraps { hundredths: 950, span_tenth_mm: 36_576 });
}

#[test]
fn recent_baits_come_first_and_the_present_one_is_marked() {
    let mut day = Written::new(1);
    let rig = Rig { bait: Some("dough".into()), ..Rig::default() };
    day.log(5, Payload::RigSet { rod: 1, rig });
    day.log(10, Payload::Cast { rod: 1 });
    let session = fold(SESSION, &day.ops);
    let view = tackle(&Wording::new(), Some(&session), 1, &NOWHERE);
    let bait = view.rows.iter().find(|row| row.tag == "bait").unwrap();
    assert_eq!(bait.value, "dough");
    assert!(bait.choices[0].chosen && bait.choices[0].label == "dough");
    assert_eq!(bait.choices[1].label, "bread");
    assert_eq!(bait.source, "common practice, no source");
}

#[test]
fn steps_never_reach_zero() {
    let reach = Reach::Wraps { hundredths: 50, span_tenth_mm: 20_000 };
    assert_eq!(stepped(reach, -100), Reach::Wraps { hundredths: 25, span_tenth_mm: 20_000 });
    assert_eq!(stepped(reach, 25), Reach::Wraps { hundredths: 75, span_tenth_mm: 20_000 });
}

#[test]
fn without_a_session_there_is_nothing_to_change() {
    assert!(tackle(&Wording::new(), None, 1, &NOWHERE).rows.is_empty());
}
