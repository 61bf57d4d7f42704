//! A club's start for advice, in words.

use super::{Action, Arg, Choice, ChoiceRow, FilesTap, Wording};
use restwater_log::{ClubDays, ClubStart, ClubWeights};

/// The club whose start is in use, with the weights that count for a session.
#[derive(Debug, Clone, Copy)]
pub struct ClubUsed<'a> {
    /// The club's start.
    pub start: &'a ClubStart,
    /// What counts here.
    pub here: &'a ClubWeights,
    /// The share of the usual start that stays.
    pub own: f64,
}

/// "Advice starts from 52 anglers' 611 days on 9 waters."
fn says(words: &Wording, start: &ClubStart) -> String {
    let count = |n: u32| Arg::Count(n as usize);
    let args =
        [("anglers", count(start.anglers)), ("days", count(start.days)), ("waters", count(start.waters))];
    words.say_with("club-says", &args)
}

/// The row of the club on the Files screen, with the key to leave it.
pub(crate) fn club_row(words: &Wording, start: &ClubStart, usable: bool) -> ChoiceRow {
    let tap = Action::Files { tap: FilesTap::LeaveClub };
    let leave = Choice::new("leave", words.say("club-leave"), false, tap);
    let says = if usable { says(words, start) } else { words.say("club-unused") };
    let value = if start.name.is_empty() { words.say("files-unnamed") } else { start.name.clone() };
    ChoiceRow { value, ..ChoiceRow::of("club", words.say("club"), vec![leave], says) }
}

/// What a club's file is made of, in sentences.
pub(crate) fn made_of(words: &Wording, start: &ClubStart) -> Vec<String> {
    let waters: Vec<&str> = start
        .fitted
        .iter()
        .filter_map(|fitted| match &fitted.days_of {
            ClubDays::Water { water } => Some(water.as_str()),
            _ => None,
        })
        .collect();
    let own = (!waters.is_empty())
        .then(|| words.say_with("club-waters", &[("waters", Arg::Text(&words.listed(&waters)))]));
    let all = [Some(words.say("club-made-of")), Some(says(words, start)), own, Some(words.say("club-casts"))];
    all.into_iter().flatten().collect()
}

/// Where the start of advice comes from, for the page of figures.
pub(crate) fn figures(words: &Wording, used: &ClubUsed) -> String {
    let here = used.here;
    let days = ("days", Arg::Count(here.days as usize));
    let here = match &here.days_of {
        ClubDays::All => words.say("club-here-all"),
        ClubDays::Water { water } => words.say_with("club-here-water", &[days, ("water", Arg::Text(water))]),
        ClubDays::Month { month } => {
            let month = words.say(&format!("month-{month}"));
            words.say_with("club-here-month", &[days, ("month", Arg::Text(&month))])
        }
        ClubDays::WaterTemperature { from, until } => {
            let [from, until] = [from, until].map(|tenths| words.figure(f64::from(*tenths) / 10.0, 0));
            words.say_with(
                "club-here-temperature",
                &[days, ("from", Arg::Text(&from)), ("until", Arg::Text(&until))],
            )
        }
    };
    let percent = super::figures::whole(100.0 * used.own);
    let own = words.say_with("club-own", &[("percent", Arg::Text(&percent))]);
    words.sentences(&[&words.say("club-figures"), &says(words, used.start), &here, &own])
}

#[cfg(test)]
mod tests {
    use super::*;

    fn start(days_of: ClubDays) -> ClubStart {
        let fitted = vec![ClubWeights { days_of, anglers: 7, days: 80, weights: Vec::new() }];
        ClubStart {
            name: "Alder AC".into(),
            shapes: 1,
            anglers: 52,
            days: 611,
            waters: 9,
            fitted,
            sha256: String::new(),
        }
    }

    #[test]
    fn the_figures_say_from_which_days_the_start_comes() {
        let words = Wording::new();
        let of = |days_of| {
            let start = start(days_of);
            figures(&words, &ClubUsed { start: &start, here: &start.fitted[0], own: 0.25 })
        };
        assert_eq!(
            of(ClubDays::Water { water: "Alder Pool".into() }),
            "Where advice starts. Advice starts from 52 anglers' 611 days on 9 waters. Today's start comes from \
             80 of them, those on Alder Pool. 25\u{a0}% of the start stays as it is without a club."
        );
        assert!(of(ClubDays::Month { month: 11 }).contains("those in Nov."));
        let cold = of(ClubDays::WaterTemperature { from: 40, until: 70 });
        assert!(cold.contains("with the water at 4 to 7 °C."), "{cold}");
        assert!(of(ClubDays::All).contains("comes from all of them, since"));
    }

    #[test]
    fn the_row_names_the_club_and_has_the_key_to_leave_it() {
        let words = Wording::new();
        let row = club_row(&words, &start(ClubDays::All), true);
        assert_eq!((row.value.as_str(), row.choices[0].label.as_str()), ("Alder AC", "LEAVE THE CLUB"));
        assert_eq!(row.source, "Advice starts from 52 anglers' 611 days on 9 waters.");
        let unnamed = ClubStart { name: String::new(), ..start(ClubDays::All) };
        let row = club_row(&words, &unnamed, false);
        assert_eq!(row.value, "no name");
        assert_ne!(row.source, "Advice starts from 52 anglers' 611 days on 9 waters.");
    }
}
