//! "Did it matter?" for a day written by hand.

use super::*;
use crate::Action;
use restwater_compare::change_findings;
use restwater_compare::{Factor, FactorValue};
use restwater_log::{Payload, Rig, WeightUnit};
use restwater_session::written::{SESSION, Written};
use restwater_session::{fold, rows_of};

/// Invented: pink gets bites at five minutes and white none; the colour changes every cast or once.
fn written(order: &str) -> (Written, i64) {
    let mut day = Written::new(1);
    let mut now = 100;
    for letter in order.chars() {
        let colour = if letter == 'B' { "pink" } else { "white" };
        let rig = Rig { colour: Some(colour.into()), bait: Some("bread".into()), ..Rig::default() };
        day.log(now - 10, Payload::RigSet { rod: 1, rig });
        day.log(now, Payload::Cast { rod: 1 });
        if letter == 'B' {
            day.log(now + 300, Payload::Bite { rod: 1 });
            day.log(now + 330, Payload::Landed { rod: 1, fish: None });
        } else {
            day.log(now + 600, Payload::WoundIn { rod: 1 });
        }
        now += 800;
    }
    (day, now)
}

fn screen(day: &Written) -> ChangesView {
    let session = fold(SESSION, &day.ops);
    let findings = change_findings(&rows_of(&session), 4).unwrap();
    changes(&Wording::new(), Some(&session), &findings, &[], WeightUnit::Drams)
}

#[test]
fn without_a_change_it_says_that_nothing_was_changed() {
    let none = changes(&Wording::new(), None, &[], &[], WeightUnit::Drams);
    assert!(none.says.starts_with("Start a session") && none.changes.is_empty());
    let view = screen(&written("AAAA").0);
    assert!(view.says.starts_with("Nothing has been changed"));
    assert_eq!(view.warning, "");
}

#[test]
fn a_change_made_once_is_never_clear() {
    let view = screen(&written("AAAABBBB").0);
    let change = &view.changes[0];
    assert_eq!(change.title, "Colour: pink after white");
    assert_ne!(change.tone, VerdictTone::Clear);
    assert!(change.probability.starts_with("Changed once only"), "{}", change.probability);
    assert!(
        !change.reasons.iter().any(|r| r.contains("Changed") || r.contains("switches")),
        "said once: {change:?}"
    );
    assert_eq!(view.says, "Nothing clear yet.");
    assert_eq!(change.old.counts, "no bites in 4 casts, 40 min");
    assert_eq!(change.new.counts, "4 bites in 4 casts, 20 min");
    assert!(change.new.rate.starts_with("12 an hour for each rod (3.3 to "), "Garwood: {}", change.new.rate);
    assert_eq!(change.forest.at, None, "white had no bite, so there is no ratio");
    assert!(change.forest.high_beyond && change.forest.low > 0.0);
    assert_eq!(change.ratio, "Pink against white: no ratio, one side has no bites.");
}

#[test]
fn alternated_often_enough_it_becomes_clear_and_never_says_works() {
    let view = screen(&written("ABBAABBAABBAABBA").0);
    let change = &view.changes[0];
    assert_eq!(
        (change.tone, change.verdict.as_str()),
        (VerdictTone::Clear, "Pink clearly better here today")
    );
    assert!(change.reasons.is_empty());
    assert_eq!(view.says, "1 is clearer than chance.");
    assert_eq!(
        change.probability,
        "Of 100 changes that look like this, about 98 favour pink; 0 favour white; in about 2 the two are too alike to matter."
    );
    let json = serde_json::to_string(&view).unwrap();
    assert!(!json.contains("works"), "{json}");
}

#[test]
fn thin_evidence_cannot_tell_and_says_why_and_how_much_more() {
    let view = screen(&written("AAB").0);
    let change = &view.changes[0];
    assert_eq!((change.tone, change.verdict.as_str()), (VerdictTone::Unknown, "Can't tell yet"));
    assert_eq!(change.reasons[0], "Fewer than three bites on both sides together.");
    assert!(change.more.contains("more casts") || change.more.contains("further casts"), "{}", change.more);
    assert!(change.p.contains("Raised for 1 change:"), "{}", change.p);
    assert_eq!(change.says, "Pink or white? Can't tell yet.");
    assert!(change.counts.starts_with("White: "), "{}", change.counts);
    assert_eq!(change.find_out, "To find out: white, pink, pink, white on one spot, one rod.");
}

#[test]
fn the_verdict_comes_without_p_and_limits_which_are_on_the_page_of_figures() {
    let view = screen(&written("ABBAABBAABBAABBA").0);
    let change = &view.changes[0];
    assert_eq!(change.says, "Pink or white? Pink, clearly, here today.");
    assert_eq!(change.find_out, "", "it is known");
    let figures = view.figures.unwrap();
    assert_eq!(figures.lines.len(), 1);
    for figure in [&change.p, &change.ratio, &change.old.rate, &change.new.rate] {
        assert!(figures.lines[0].contains(figure.as_str()), "{:?}", figures.lines);
        assert!(!change.counts.contains(figure.as_str()));
    }
}

#[test]
fn a_running_test_shows_its_steps_and_hides_the_keys_that_start_one() {
    let (mut day, now) = written("AAB");
    let key = screen(&day).changes[0].start.clone().unwrap();
    let named = |name: &str| FactorValue::Colour { name: name.into() };
    let action = Action::StartAlternation { a: named("white"), b: named("pink") };
    assert_eq!(key.action, action);
    day.log(
        now,
        Payload::AlternationStarted {
            rod: 1,
            factor: restwater_log::Factor::Colour,
            a: "white".into(),
            b: "pink".into(),
            b_first: false,
            casts: 4,
        },
    );
    let view = screen(&day);
    let test = view.test.as_ref().unwrap();
    assert!(view.changes.iter().all(|change| change.start.is_none()));
    assert_eq!(test.says, "Next on rod 1: white.");
    assert_eq!(test.set_sub.as_deref(), Some("white for the next cast"), "pink is on the line");
    let labels: Vec<&str> = test.steps.iter().map(|s| s.label.as_str()).collect();
    assert_eq!(labels, ["1. white", "2. pink", "3. pink", "4. white"]);
    let rig = Rig { colour: Some("white".into()), ..Rig::default() };
    day.log(now + 5, Payload::RigSet { rod: 1, rig });
    day.log(now + 10, Payload::Cast { rod: 1 });
    let test = screen(&day).test.unwrap();
    assert_eq!(test.says, "Out now: white. Then pink.");
    let states: Vec<StepState> = test.steps.iter().map(|s| s.state).collect();
    assert_eq!(states, [StepState::Out, StepState::Next, StepState::Later, StepState::Later]);
    let spoken: Vec<&str> = test.steps.iter().map(|s| s.spoken.as_str()).collect();
    assert_eq!(spoken, ["1. white, out now", "2. pink, next", "3. pink, later", "4. white, later"]);
}

#[test]
fn every_sentence_is_there() {
    let words = Wording::new();
    for id in [
        "reason-few-bites",
        "reason-few-casts",
        "reason-once",
        "reason-few-switches",
        "reason-together",
        "reason-clumps",
        "reason-not-held",
        "reason-many",
        "reason-times",
        "test-complete",
        "change-more-day",
    ] {
        assert!(words.has(id), "{id}");
    }
    for factor in [
        Factor::Spot,
        Factor::Bait,
        Factor::Colour,
        Factor::Height,
        Factor::Hooklength,
        Factor::HookSize,
        Factor::Lead,
        Factor::Leader,
        Factor::Feed,
        Factor::FeedAmount,
    ] {
        assert!(!crate::compared::factor_words(&words, factor).starts_with("factor-"), "{factor:?}");
    }
}

/// What a day can't settle is not asked of a day.
#[test]
fn how_to_find_out_does_not_contradict_what_a_day_can_settle() {
    let mut seen = [0, 0];
    for order in ["AB", "ABAB", "AABB", "AAAABBBB", "ABBAABBA"] {
        for change in screen(&written(order).0).changes.iter().filter(|change| !change.find_out.is_empty()) {
            let beyond_a_day = change.more.starts_with("One day is too short");
            seen[usize::from(beyond_a_day)] += 1;
            let over_days = change.find_out.starts_with("To find out over several sessions: ");
            assert_eq!(over_days, beyond_a_day, "{order}: {} {}", change.find_out, change.more);
        }
    }
    assert!(seen[0] > 0, "{seen:?}");
}
