use super::super::changes::tests::row;
use super::*;
use crate::chance::Chance;

/// A day of casts from letters: side A is pink, B is white; the rest of the set-up is added.
fn day(letters: &str, more: &[(Factor, &str)], wait: impl Fn(usize, char) -> (f64, bool)) -> Vec<CastRow> {
    letters
        .chars()
        .enumerate()
        .map(|(i, letter)| {
            let (minutes, bite) = wait(i, letter);
            let mut setup = vec![(Factor::Colour, if letter == 'A' { "pink" } else { "white" })];
            setup.extend_from_slice(more);
            row(1, 15.0 * i as f64, minutes, bite, &setup)
        })
        .collect()
}

fn only(rows: &[CastRow]) -> ChangeFinding {
    let mut findings = change_findings(rows, 1).unwrap();
    assert_eq!(findings.len(), 1);
    findings.remove(0)
}

#[test]
fn bites_on_one_side_of_an_alternation_are_clear() {
    let f = only(&day("ABBAABBAABBAABBA", &[], |_, l| if l == 'A' { (6.0, true) } else { (12.0, false) }));
    assert_eq!(f.verdict, Verdict::ClearlyBetterHereToday(Side::A));
    assert_eq!((f.a.bites, f.b.bites, f.a.casts, f.b.casts, f.looked_at), (8, 0, 8, 8, 1));
    assert!(f.reasons.is_empty() && f.block_p_adjusted < 0.05);
    // Priors, spells and slabs by scipy 1.17 (integrate.quad), the waits by statsmodels 0.15's partial
    // likelihood (PHReg, Efron's ties); the more cautious of the two counts.
    let near = |found: f64, outside: f64| assert!((found - outside).abs() < 2e-3, "{found} {outside}");
    near(f.belief_by_minutes.a, 0.9819);
    near(f.belief_by_waits.a, 0.9866);
    near(f.belief.a, 0.9819);
    assert_eq!(f.a.per_hour, 10.0);
    assert_eq!(f.ratio, None);
}

#[test]
fn the_same_bites_after_a_single_switch_are_no_evidence() {
    let f = only(&day("AAAAAAAABBBBBBBB", &[], |_, l| if l == 'A' { (6.0, true) } else { (12.0, false) }));
    assert_eq!(f.verdict, Verdict::CantTellYet);
    assert!(f.reasons.contains(&Reason::ChangedOnce));
    assert!(f.exact_p < 0.001 && f.block_p_adjusted == 1.0);
    // scipy 1.17 (integrate.quad): strongly supported by itself, so only the single switch prevents a
    // verdict.
    assert!((f.belief_by_minutes.a - 0.9331).abs() < 2e-3, "{:?}", f.belief_by_minutes);
}

#[test]
fn few_bites_or_few_casts_are_no_evidence() {
    let f = only(&day("ABAB", &[], |i, _| (8.0, i == 0)));
    assert_eq!(f.verdict, Verdict::CantTellYet);
    assert_eq!(f.reasons, [Reason::TooFewBites, Reason::TooFewCasts, Reason::TooFewSwitches]);
}

/// Common practice, no source: later bites after longer waits must not be read as proof of the
/// change of colour made meanwhile.
#[test]
fn leaving_casts_longer_on_one_side_does_not_count_as_an_effect_of_the_colour() {
    // White was left for 20 minutes and all bites come after 14: pink was wound in at 10.
    let f = only(&day("ABBAABBAABBAABBA", &[], |_, l| if l == 'A' { (10.0, false) } else { (15.0, true) }));
    assert_eq!(f.verdict, Verdict::CantTellYet);
    assert!(f.reasons.contains(&Reason::LeftForDifferentTimes));
    // scipy 1.17 (integrate.quad).
    assert!((f.belief_by_minutes.b - 0.7470).abs() < 2e-3, "{:?}", f.belief_by_minutes);
    assert_eq!(f.belief_by_waits, Belief { a: 0.25, b: 0.25 });
}

#[test]
fn factors_always_changed_together_are_never_clear() {
    let mut rows = day("ABBAABBAABBAABBA", &[], |_, l| if l == 'A' { (6.0, true) } else { (12.0, false) });
    for row in &mut rows {
        let height = if row.setup[&Factor::Colour] == "pink" { "20" } else { "40" };
        row.setup.insert(Factor::Height, height.to_owned());
    }
    let findings = change_findings(&rows, 1).unwrap();
    assert_eq!(findings.len(), 2);
    for f in &findings {
        assert_eq!(f.verdict, Verdict::LeansTo(Side::A));
        assert_eq!(f.looked_at, 2);
    }
    assert!(findings[0].reasons.contains(&Reason::ChangedTogether(Factor::Height)));
    assert!(findings[1].reasons.contains(&Reason::ChangedTogether(Factor::Colour)));
}

#[test]
fn a_value_that_was_never_out_is_left_out_and_bad_times_are_refused() {
    let rows = day("ABAB", &[], |_, l| if l == 'A' { (0.0, false) } else { (9.0, true) });
    assert!(change_findings(&rows, 1).unwrap().is_empty());
    assert!(change_findings(&[], 1).unwrap().is_empty());
    let mut rows = day("AB", &[], |_, _| (5.0, true));
    rows[0].at_min = f64::NAN;
    assert!(matches!(change_findings(&rows, 1), Err(CompareError::NotATime(_))));
}

#[test]
fn swapping_the_values_swaps_the_finding() {
    let mut chance = Chance::new(4, 0);
    let waits: Vec<(f64, bool)> = (0..16).map(|_| (chance.uniform() * 14.0, chance.happens(0.4))).collect();
    let one = only(&day("ABBAABBAABBAABBA", &[], |i, _| waits[i]));
    let two = only(&day("BAABBAABBAABBAAB", &[], |i, _| waits[i]));
    // The first value fished is side A in both, so only the names differ.
    assert_eq!((one.a.bites, one.belief, one.block.p), (two.a.bites, two.belief, two.block.p));
    assert_eq!((one.a.value.as_str(), two.a.value.as_str()), ("pink", "white"));
    assert_eq!(one, only(&day("ABBAABBAABBAABBA", &[], |i, _| waits[i])));
}

// Common practice, no source: the same later bites, with another colour on by then.
#[test]
fn later_bites_are_no_proof_of_a_change_of_colour_made_meanwhile() {
    let bites = [13.2, 13.9, 14.4, 14.8].map(|minutes| (minutes, true));
    let list = [bites.as_slice(), &[(10.0, false); 4], &[(21.0, true), (28.0, true)]].concat();
    let list = list.iter().map(|&(minutes, bite)| Wait::new(minutes, bite).unwrap());
    let mut at_min = 0.0;
    let rows: Vec<CastRow> = list
        .enumerate()
        .map(|(i, wait)| {
            let colour = if i < 8 { "white" } else { "pink" };
            let setup = std::collections::BTreeMap::from([(Factor::Colour, colour.to_owned())]);
            let row = CastRow { rod: 1, at_min, wait, setup, twitched: false };
            at_min += wait.minutes() + 2.0;
            row
        })
        .collect();
    let findings = change_findings_without_power(&rows, 1).unwrap();
    assert_eq!(findings.len(), 1);
    assert!(!matches!(findings[0].verdict, Verdict::ClearlyBetterHereToday(_)), "{:?}", findings[0]);
}
