//! The Waits screen of a written day.

use super::*;
use crate::{ChartKind, DotShape, LineStyle};
use restwater_log::{FeedAmount, FeedKind, FeedMeasure, FeedSaid, Payload, Reach, Rig, Spot};
use restwater_session::written::{SESSION, Written};
use restwater_session::{fold, habit_of, rhythm, rows_of};

/// Invented day: bites at about a quarter of an hour, every second cast without one for `left` minutes.
fn day(bites: i64, left: i64) -> Session {
    let mut day = Written::new(1);
    let reach = Reach::Metres { cm: 3_500 };
    let mut now = 60;
    for i in 0..bites {
        let spot = Spot { mark: None, bearing_cdeg: if i % 2 == 0 { 0 } else { 900 }, reach, clipped: true };
        day.log(now - 20, Payload::SpotSet { rod: 1, spot });
        let bait = if i % 3 == 0 { "corn" } else { "bread" };
        let rig = Rig { bait: Some(bait.into()), ..Rig::default() };
        day.log(now - 10, Payload::RigSet { rod: 1, rig });
        day.log(now, Payload::Cast { rod: 1 });
        day.log(now + 60 * left, Payload::WoundIn { rod: 1 });
        now += 60 * left + 120;
        day.log(now, Payload::Cast { rod: 1 });
        day.log(now + 840 + 11 * (i * 7 % 10), Payload::Bite { rod: 1 });
        day.log(now + 960, Payload::Landed { rod: 1, fish: None });
        now += 1_200;
    }
    fold(SESSION, &day.ops)
}

fn screen(
    session: &Session,
    earlier: &[EarlierRows],
    filter: &CastFilter,
) -> (WaitsView, Option<WaitPosterior>) {
    let words = Wording::new();
    let rows = rows_of(session);
    let habit = habit_of(session);
    waits(&WaitsInput {
        session,
        rows: &rows,
        earlier,
        filter,
        whose: None,
        rhythm: rhythm(session, 2.0, 3.0),
        habit: habit.as_ref(),
        in_fed_water: false,
        shapes: &Shapes::usual(),
        club: None,
        words: &words,
    })
}

fn chart(view: &WaitsView, kind: ChartKind) -> &ChartView {
    view.charts.iter().find(|chart| chart.kind == kind).unwrap()
}

/// Invented day: six casts after feed, with a bite at six minutes, and seven before it, every other one with
/// a bite at twelve.
fn fed_day() -> Session {
    let mut day = Written::new(1);
    let mut cast = |minute: i64, waits: i64, bite: bool| {
        day.log(minute * 60, Payload::Cast { rod: 1 });
        let end = (minute + waits) * 60;
        if bite {
            day.log(end, Payload::Bite { rod: 1 });
            day.log(end + 60, Payload::Lost { rod: 1 });
        } else {
            day.log(end, Payload::WoundIn { rod: 1 });
        }
    };
    (0..7).for_each(|i| cast(10 + 20 * i, 12 + i % 2, i % 2 == 0));
    let amount = FeedAmount::Measures { measure: FeedMeasure::Handful, count: 1, each_mg: 30_000 };
    let fed = FeedSaid { what: FeedKind::Loose, amount, rod: Some(1), place: None };
    for i in 0..6 {
        let minute = 160 + 10 * i;
        day.log(minute * 60, Payload::Fed(fed));
        day.log((minute + 1) * 60, Payload::Cast { rod: 1 });
        day.log((minute + 7) * 60, Payload::Bite { rod: 1 });
        day.log((minute + 8) * 60, Payload::Lost { rod: 1 });
    }
    fold(SESSION, &day.ops)
}

#[test]
fn figures_say_how_much_quicker_fed_casts_are_if_there_are_both_kinds() {
    let lines = |session: &Session| screen(session, &[], &CastFilter::default()).0.figures.unwrap().lines;
    let said = lines(&fed_day());
    let fed = said.last().unwrap();
    assert!(fed.starts_with("Casts fed in the 30 min before their splash: bites about 1."), "{fed}");
    assert!(fed.ends_with("Casts counted: 6 fed, 7 not."), "{fed}");
    assert!(!lines(&day(6, 20)).iter().any(|line| line.contains("fed")));
}

#[test]
fn curves_are_for_the_water_of_the_cast_that_the_screen_is_about() {
    let (session, words) = (fed_day(), Wording::new());
    let rows = rows_of(&session);
    let chance = |in_fed_water| {
        let filter = CastFilter::default();
        let input = WaitsInput {
            session: &session,
            rows: &rows,
            earlier: &[],
            filter: &filter,
            whose: None,
            rhythm: rhythm(&session, 2.0, 3.0),
            habit: None,
            in_fed_water,
            shapes: &Shapes::usual(),
            club: None,
            words: &words,
        };
        waits(&input).1.unwrap().waiting_on(3.0).unwrap().bite_in_five
    };
    assert!(chance(true) > 1.1 * chance(false), "{} {}", chance(true), chance(false));
}

#[test]
fn before_the_first_cast_is_in_there_are_no_pictures() {
    let (view, posterior) = screen(&day(0, 20), &[], &CastFilter::default());
    assert!(view.charts.is_empty() && posterior.is_some());
    assert!(view.counts.starts_with("Make a cast:"), "{}", view.counts);
}

#[test]
fn under_three_bites_every_picture_says_that_it_cannot_tell() {
    let (view, _) = screen(&day(2, 20), &[], &CastFilter::default());
    assert_eq!(view.charts.len(), 4, "no earlier sessions, so no picture of them");
    for chart in &view.charts {
        assert_eq!(chart.says, "Can't tell yet: 2 bites so far.", "{:?}", chart.kind);
    }
    assert!(chart(&view, ChartKind::LeaveTime).spans.is_empty(), "and shows no band");
}

#[test]
fn after_a_day_of_bites_the_pictures_say_what_they_show() {
    let session = day(8, 20);
    let (view, posterior) = screen(&session, &[], &CastFilter::default());
    assert_eq!(view.counts, "8 bites in 16 casts this session, 4 h 39 in the water.");
    let survival = chart(&view, ChartKind::Survival);
    // 8 of 16 casts bit within 16 min while none was wound in before 20: the curve meets one half at the last bite.
    assert_eq!(survival.says, "Leave casts 16 min, and about half get a bite by then (estimated).");
    let figures = view.figures.as_ref().unwrap();
    assert!(
        figures.lines[1]
            .ends_with("The time by which half get a bite could be 15 min or more (95\u{a0}% limit)."),
        "{figures:?}"
    );
    assert!(figures.lines[0].contains("bites an hour for each rod (95\u{a0}%: "), "{figures:?}");
    let seen = survival.lines.iter().find(|line| line.style == LineStyle::Solid).unwrap();
    assert_eq!((seen.y.first(), seen.y.last()), (Some(&100.0), Some(&50.0)));
    assert_eq!(survival.lines.iter().filter(|line| line.style == LineStyle::Dotted).count(), 2);
    let leave = chart(&view, ChartKind::LeaveTime);
    let advice = posterior.unwrap().advice();
    let span = &leave.spans[0];
    assert_eq!(
        (Some(span.from), span.to),
        (advice.hold_until_min, f64::from(advice.leave_min)),
        "as on the strip"
    );
    assert!(leave.says.starts_with("Hold until 1"), "{}", leave.says);
    let more = "All 8 bites this session came between 14 and 16 min. Past 20 min: not tried.";
    assert_eq!(leave.notes[0], more, "the verdict alone is the first sentence");
    assert!(leave.dots.iter().any(|d| d.shape == DotShape::Habit && (d.x - 20.0).abs() < 1e-9));
    let hazard = chart(&view, ChartKind::Hazard);
    assert!(hazard.says.starts_with("Best minute: about 1"), "{}", hazard.says);
    // 16 casts passed through the minutes 12 to 14; the first bite came at 14 sharp.
    assert_eq!(hazard.bars.iter().map(|b| b.label.as_str()).next(), Some("1 bite in 32 min"));
    assert_eq!(hazard.spans[0].label, "bite window");
    let drift = chart(&view, ChartKind::Drift);
    assert_eq!(drift.dots.len(), 16);
    assert_eq!(drift.says, "Bites aren't clearly quicker or slower as the day goes on.");
    assert!(figures.lines[3].contains("5 hours with casts in their order: p\u{a0}"), "{figures:?}");
}

/// Three of eight casts had a bite and three were wound in before: that half get one is the curve's estimate, and said as one.
#[test]
fn what_the_curve_estimates_is_not_said_as_a_count() {
    let mut day = Written::new(1);
    for (i, (minutes, bite)) in (0..).zip([
        (10, true),
        (14, true),
        (16, true),
        (5, false),
        (6, false),
        (7, false),
        (8, false),
        (20, false),
    ]) {
        let now = 60 + 1_800 * i;
        day.log(now, Payload::Cast { rod: 1 });
        day.log(
            now + 60 * minutes,
            if bite { Payload::Bite { rod: 1 } } else { Payload::WoundIn { rod: 1 } },
        );
        if bite {
            day.log(now + 60 * minutes + 30, Payload::Missed { rod: 1 });
        }
    }
    let (view, _) = screen(&fold(SESSION, &day.ops), &[], &CastFilter::default());
    let survival = chart(&view, ChartKind::Survival);
    assert_eq!(survival.says, "Leave casts 14 min, and about half get a bite by then (estimated).");
    assert!(survival.notes[0].starts_with("3 bites in 8 casts"), "{:?}", survival.notes);
}

#[test]
fn lines_and_bands_are_whole_and_on_their_axes() {
    let (view, _) = screen(&day(8, 20), &[], &CastFilter::default());
    for chart in &view.charts {
        for line in &chart.lines {
            assert_eq!(line.x.len(), line.y.len());
            assert!(
                line.x.iter().all(|x| (chart.x.from..=chart.x.to + 1e-9).contains(x)),
                "{:?}",
                chart.kind
            );
            assert!(line.y.iter().all(|y| y.is_finite() && *y >= 0.0));
        }
        for band in &chart.bands {
            assert!(band.low.iter().zip(&band.high).all(|(low, high)| low <= high), "{:?}", chart.kind);
        }
        assert!(!chart.says.is_empty() && !chart.notes.is_empty());
        assert!(
            ![&chart.says].into_iter().chain(&chart.notes).any(|text| text.contains(" p ")),
            "{}",
            chart.says
        );
        for text in chart.notes.iter().chain([&chart.says, &chart.title, &chart.x.label, &chart.y.label]) {
            assert!(!text.starts_with("waits-") && !text.contains('{'), "{text}");
        }
    }
}

#[test]
fn which_casts_count_is_chosen_by_taps() {
    let session = day(8, 20);
    let (all, _) = screen(&session, &[], &CastFilter::default());
    let fields: Vec<&str> = all.rows.iter().map(|row| row.tag.as_str()).collect();
    assert_eq!(fields, ["spot", "bait"], "one rod and no earlier sessions: nothing to choose there");
    let bait = &all.rows[1];
    assert_eq!(bait.value, "all baits");
    let corn = bait.choices.iter().find(|c| c.label == "corn").unwrap();
    let filter = CastFilter { bait: Some(corn.label.clone()), ..CastFilter::default() };
    let (some, _) = screen(&session, &[], &filter);
    assert_eq!(some.counts, "3 bites in 6 casts this session, 1 h 43 in the water.");
    assert_eq!(some.rows[1].value, "corn");
}

#[test]
fn today_is_compared_with_earlier_sessions() {
    let (today, before) = (day(6, 20), day(7, 20));
    let rows = rows_of(&before);
    let earlier = [EarlierRows { rows: &rows, weight: 0.5, unseen: 0, of_another: false, same_peg: true }];
    let (view, _) = screen(&today, &earlier, &CastFilter::default());
    let picture = chart(&view, ChartKind::Earlier);
    assert_eq!(picture.says, "Can't tell this session from earlier ones.");
    let figures = &view.figures.as_ref().unwrap().lines;
    assert!(figures[3].contains("3 hours of this session against 5 hours before: p\u{a0}"), "{figures:?}");
    assert_eq!(picture.notes[0], "This session: 6 bites in 12 casts. Earlier: 7 in 14, over 1 session.");
    let styles: Vec<LineStyle> = picture.lines.iter().map(|l| l.style).collect();
    assert_eq!(styles, [LineStyle::Solid, LineStyle::Dashed]);
    assert_eq!(view.rows.last().map(|r| r.value.as_str()), Some("with the one before"));
    let only = CastFilter { today_only: true, ..CastFilter::default() };
    let (view, _) = screen(&today, &earlier, &only);
    assert!(view.charts.iter().all(|c| c.kind != ChartKind::Earlier));
}

#[test]
fn the_rest_of_the_day_comes_as_ranges() {
    let session = day(8, 20);
    let (_, posterior) = screen(&session, &[], &CastFilter::default());
    let (words, rhythm) = (Wording::new(), rhythm(&session, 2.0, 3.0));
    let posterior = posterior.unwrap();
    let of = |left| forecast_view(&words, &session, &posterior, rhythm, &[None], left).unwrap();
    let hour = of(60);
    assert_eq!(hour.lines.len(), 4);
    for line in &hour.lines {
        assert!(line.low <= line.high, "{line:?}");
    }
    assert!(of(240).lines[1].high > hour.lines[1].high, "more time, more bites");
    let last = &hour.lines[3];
    assert!(
        last.value.starts_with("worth it until the last ") && last.low < 16.0 && last.high > 10.0,
        "{last:?}"
    );
    assert_eq!(hour.left.choices.iter().filter(|c| c.chosen).count(), 1);
    assert!(
        forecast_view(&words, &session, &posterior, rhythm, &[], 0).is_some(),
        "no time left is no error"
    );
}

/// Bites within half a minute of one another have a rate of more than one a minute, but no more than all
/// casts can get one.
#[test]
fn of_a_hundred_casts_no_more_than_a_hundred_get_a_bite() {
    let mut day = Written::new(1);
    for i in 0..24 {
        let now = 60 + 1_200 * i;
        day.log(now, Payload::Cast { rod: 1 });
        day.log(now + 840 + i % 4, Payload::Bite { rod: 1 });
        day.log(now + 900, Payload::Landed { rod: 1, fish: None });
    }
    let (view, _) = screen(&fold(SESSION, &day.ops), &[], &CastFilter::default());
    let hazard = chart(&view, ChartKind::Hazard);
    let figures: Vec<f64> =
        hazard.says.split(|c: char| !c.is_ascii_digit()).filter_map(|digits| digits.parse().ok()).collect();
    assert!(figures.len() >= 3 && figures.iter().all(|figure| *figure <= 100.0), "{}", hazard.says);
    let highest = hazard
        .lines
        .iter()
        .flat_map(|line| &line.y)
        .chain(&hazard.bands[0].high)
        .copied()
        .fold(0.0, f64::max);
    assert!(highest <= 100.0 + 1e-9 && highest > 50.0, "{highest}");
}

/// Somebody usually winds in at 10 and by chance left two casts longer: only these two brought bites.
#[test]
fn a_habit_that_ends_casts_before_every_bite_is_pointed_out() {
    let mut day = Written::new(1);
    let mut now = 60;
    for i in 0..16 {
        day.log(now, Payload::Cast { rod: 1 });
        if i % 4 == 3 {
            day.log(now + 840 + 30 * i, Payload::Bite { rod: 1 });
            day.log(now + 1_400, Payload::Landed { rod: 1, fish: None });
            now += 1_500;
        } else {
            day.log(now + 600, Payload::WoundIn { rod: 1 });
            now += 700;
        }
    }
    let (view, _) = screen(&fold(SESSION, &day.ops), &[], &CastFilter::default());
    let says = &chart(&view, ChartKind::LeaveTime).notes[0];
    assert!(
        says.contains("Your 12 wind-ins all came by 10 min. Every bite this session came after 15 min."),
        "{says}"
    );
    assert!(says.contains("All 4 bites this session came between 15 and 22 min."), "{says}");
}
