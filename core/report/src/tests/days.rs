//! Sessions that are not one day of waits from the splash: over nights, with a break that goes on, and with twitches.

use super::*;
use restwater_log::SessionSetup;

const HOUR: i64 = 3_600;

/// The first evening is 14 November 2023, 22:13.
#[test]
fn a_session_of_two_nights_has_the_date_where_the_day_changes() {
    let mut day = Written::new(1);
    for s in [60, HOUR, 2 * HOUR, 3 * HOUR] {
        day.log(s, Payload::Cast { rod: 1 });
        day.log(s + 600, Payload::WoundIn { rod: 1 });
    }
    day.log(26 * HOUR, Payload::Noted { text: "frost".into() });
    day.log(34 * HOUR, Payload::SessionEnded);
    let html = report(&Wording::new(), &fold(SESSION, &day.ops), WhoseDay::Own);
    for text in [
        "<p>14 Nov 2023 22:13 to 16 Nov 2023 08:13</p>",
        "<td>22:14</td>",
        "<td>23:13</td>",
        "<td>15 Nov 2023 00:13</td>",
        "<td>01:13</td>",
        "<li>16 Nov 2023 00:13 frost</li>",
    ] {
        assert!(html.contains(text), "{text} in {html}");
    }
    let mut short = Written::new(1);
    short.log(HOUR, Payload::SessionEnded);
    let html = report(&Wording::new(), &fold(SESSION, &short.ops), WhoseDay::Own);
    assert!(html.contains("<p>22:13 to 23:13</p>"), "the day is in the title");
}

#[test]
fn a_break_that_goes_on_has_its_beginning_alone() {
    let mut day = Written::new(1);
    day.log(HOUR / 2, Payload::Away);
    day.log(HOUR, Payload::Returned);
    day.log(HOUR + 600, Payload::Away);
    let html = report(&Wording::new(), &fold(SESSION, &day.ops), WhoseDay::Own);
    for text in ["<li>Away from the rods 22:43 to 23:13.</li>", "<li>Away from the rods since 23:23.</li>"] {
        assert!(html.contains(text), "{text} in {html}");
    }
}

#[test]
fn the_page_is_in_the_language_of_its_words() {
    for tag in ["en-GB", "de-DE", "fr-FR"] {
        let html = report(Wording::shared(tag), &day(1), WhoseDay::Own);
        assert!(html.contains(&format!("<html lang=\"{tag}\">")), "{tag}");
    }
}

/// A mark of the strip is a wait, of which a cast with a twitch can have two.
#[test]
fn where_a_twitch_restarts_the_wait_the_report_says_so() {
    for twitch_restarts in [true, false] {
        let mut day = Written::by(0xD1);
        let setup = SessionSetup { twitch_restarts, ..SessionSetup::default() };
        day.log(0, Payload::SessionStarted(setup));
        day.log(60, Payload::Cast { rod: 1 });
        day.log(360, Payload::Twitch { rod: 1 });
        day.log(600, Payload::Bite { rod: 1 });
        day.log(660, Payload::Landed { rod: 1, fish: None });
        let html = report(&Wording::new(), &fold(SESSION, &day.ops), WhoseDay::Own);
        assert!(html.contains("Each mark is one wait:"), "{html}");
        assert!(
            html.contains(if twitch_restarts { "4.0 min. 1 ended" } else { "9.0 min. 0 ended" }),
            "{html}"
        );
        for text in
            ["A twitch ended one wait and began the next", "Waits run from the splash or the last twitch"]
        {
            assert_eq!(html.contains(text), twitch_restarts, "{text} in {html}");
        }
    }
}
