use super::*;
use restwater_compare::CastRow;
use restwater_compare::over_days::{compared, question};
use restwater_waits::Wait;

/// Days on which pink and white alternate, and each gets its bites after these minutes, or no bite in
/// fifteen.
fn standing(days: usize, pink: Option<f64>, white: Option<f64>, place: usize) -> StandingQuestion {
    let rows: Vec<CastRow> = "pwwppwwppwwp"
        .chars()
        .enumerate()
        .map(|(n, letter)| {
            let (colour, bite) = if letter == 'p' { ("pink", pink) } else { ("white", white) };
            let wait = Wait::new(bite.unwrap_or(15.0), bite.is_some()).unwrap();
            let setup = [(Factor::Colour, colour.to_owned())].into();
            CastRow { rod: 1, at_min: 20.0 * n as f64, wait, twitched: false, setup }
        })
        .collect();
    let each = vec![compared(&rows)[0].day(&rows); days];
    StandingQuestion {
        water: "Mill pool".into(),
        factor: Factor::Colour,
        a: "pink".into(),
        b: "white".into(),
        found: question(&each, place, 4),
        more: None,
    }
}

#[test]
fn without_a_question_there_is_no_page() {
    assert!(leaves(&Wording::new(), &[]).is_none());
}

#[test]
fn progress_is_worded_in_natural_frequencies_and_stakes_are_on_the_page_of_figures() {
    let words = Wording::new();
    let mut alike = standing(2, Some(9.0), Some(9.0), 1);
    alike.more = Some(MoreDays { days: None, assurance: 0.31 });
    let clear = standing(3, Some(6.0), None, 2);
    let [leaf, figures] = leaves(&words, &[alike, clear]).unwrap();
    assert_eq!(leaf.says, "2 questions were asked in two sessions or more. 1 is clear.");
    let labels: Vec<&str> = leaf.lines.iter().map(|line| line.label.as_str()).collect();
    assert_eq!(labels[1], "Over 2 sessions, 24 casts: can't tell yet.");
    assert!(
        labels[2].starts_with("Over these sessions, of 100 questions that look like this, about "),
        "{}",
        labels[2]
    );
    assert_eq!(leaf.lines[3].detail, "6 more sessions like the last would settle it about 3 times in 10.");
    assert_eq!(labels[5], "Over 3 sessions, 36 casts: pink clearly better in these sessions.");
    assert_eq!(leaf.lines[7].detail, "No more sessions are needed to say so.");
    assert!(figures.lines[1].detail.contains("Question 2 of those asked: p "), "{}", figures.lines[1].detail);
    assert!(leaf.lines.iter().all(|line| !line.detail.contains("stake")), "stakes are on the page behind");
}

#[test]
fn the_side_with_fewer_casts_begins_next_time() {
    let words = Wording::new();
    let mut asked = standing(2, Some(9.0), None, 1);
    assert!(asked.next(&words).starts_with("Next time: pink, white, white, pink"));
    asked.found.sides[1].casts -= 1;
    assert!(asked.next(&words).starts_with("Next time: white, pink, pink, white"));
}

#[test]
fn a_question_is_about_its_two_values_in_either_order() {
    let asked = standing(2, Some(9.0), None, 1);
    assert!(
        asked.is_about(Factor::Colour, "pink", "white") && asked.is_about(Factor::Colour, "white", "pink")
    );
    assert!(!asked.is_about(Factor::Bait, "pink", "white") && !asked.is_about(Factor::Colour, "pink", "red"));
}
