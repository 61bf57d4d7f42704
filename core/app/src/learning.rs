//! What is learned from the day: the Waits screen, "Did it matter?" and the alternating tests.

use super::advisor::weight;
use super::club::StartOf;
use super::earlier::{Before, same_peg};
use super::error::within;
use super::spelling::rows_spelled_alike;
use super::{App, AppError};
use restwater_compare::{CastRow, ChangeFinding, Side, change_findings};
use restwater_compare::{Factor, FactorValue};
use restwater_log::{Moment, Payload, RodNumber};
use restwater_screen as screen;
use restwater_screen::{Arg, CastFilter, ChangesView, EarlierRows, WaitsInput, WaitsTap, WaitsView, Whose};
use restwater_session::{
    Mark, NotNow, Rhythm, Session, Stamp, check, factor_logged, habit_of, in_fed_water, rhythm,
    rods_waited_whole_min, setup_of, value_of, wait_settings,
};
use restwater_waits::{BITE_EXTRA_GUESS_MIN, Habit, Settings, TURN_ROUND_GUESS_MIN, WaitPosterior};
use uuid::Uuid;

/// The seed of all random draws in the comparisons, so that the same record always gives the same answer.
const SEED: u64 = 4;
/// Time left that the forecast starts with outside a match.
const LEFT_MIN: u32 = 60;
/// Limits of the number of casts planned for a test.
const TEST_CASTS: (usize, usize) = (8, 40);

/// The choices on these screens, and their last answers, which are kept because they are slow to compute.
#[derive(Default)]
pub(super) struct Learning {
    /// The session that the choices are about: another one begins without them.
    chosen_in: Option<Uuid>,
    filter: CastFilter,
    left_min: Option<u32>,
    /// The answers for the casts that are chosen and for all of them, each once.
    waits: Vec<WaitsAnswer>,
    findings: Option<(Uuid, Vec<CastRow>, Vec<ChangeFinding>)>,
}

/// The input of the Waits screen and the answer.
struct WaitsAnswer {
    of: WaitsOf,
    view: WaitsView,
    posterior: Option<WaitPosterior>,
}

#[derive(PartialEq, Clone)]
struct WaitsOf {
    session: Uuid,
    /// Whether the session is still running: its last hour counts only once it has ended.
    open: bool,
    settings: Settings,
    rows: Vec<CastRow>,
    filter: CastFilter,
    rhythm: Rhythm,
    /// How long casts are left by habit. Part of the input because it depends on what ended each cast, which
    /// rows don't contain.
    habit: Option<Habit>,
    /// The water, since the weight of earlier days depends on it.
    water: Option<String>,
    /// The peg, since a spot is the same only from there.
    peg: Option<String>,
    /// The marks, whose names the choices say.
    marks: Vec<Mark>,
    /// Whether the chosen rod's cast is in fed water.
    fed: bool,
    /// Which weights of a club advice begins with.
    start: StartOf,
}

impl Learning {
    /// Forgets the answers, because the earlier days have changed or another language is used.
    pub(super) fn forget_views(&mut self) {
        self.waits.clear();
    }

    /// Which casts are chosen, and the time left.
    pub(super) fn casts_chosen(&self) -> (CastFilter, Option<u32>) {
        (self.filter.clone(), self.left_min)
    }

    /// Chooses them again, in that session.
    pub(super) fn choose_casts(&mut self, session: Option<Uuid>, casts: (CastFilter, Option<u32>)) {
        self.chosen_in = session;
        (self.filter, self.left_min) = casts;
    }

    /// The choices are about casts of one session.
    fn choose_in(&mut self, session: Option<Uuid>) {
        if self.chosen_in != session {
            (self.chosen_in, self.filter, self.left_min) = (session, CastFilter::default(), None);
        }
    }
}

impl App {
    /// The Waits screen.
    pub(super) fn waits(&mut self, now: &Moment) -> WaitsView {
        self.learning.choose_in(self.session().map(|session| session.id));
        let mut view = self.waits_of_casts(self.learning.filter.clone(), now);
        // The answers are for the whole water. If the Bank's figure is for the spot, both figures are named together.
        if let Some(minutes) = self.leave_at_the_spot(now) {
            let args =
                [("rod", Arg::Text(&self.chosen.to_string())), ("minutes", Arg::Text(&minutes.to_string()))];
            let by_spot = self.words.say_with("waits-by-spot", &args);
            view.counts = self.words.sentences(&[&view.counts, &by_spot]);
        }
        view
    }

    /// How long the Bank says to leave the cast of the chosen rod, if its spot decides that.
    fn leave_at_the_spot(&mut self, now: &Moment) -> Option<u32> {
        let now = self.on_line(now);
        let session = &self.journal.recent().current()?.session;
        let reading = self.advisor.read(session, self.journal.in_memory(), self.chosen, &now)?;
        reading.spots.map(|spots| spots.leave.leave_min)
    }

    /// What that screen would say about all casts, whichever are chosen on it.
    pub(super) fn waits_of_all(&mut self, now: &Moment) -> WaitsView {
        self.waits_of_casts(CastFilter::default(), now)
    }

    fn waits_of_casts(&mut self, filter: CastFilter, now: &Moment) -> WaitsView {
        let now = self.on_line(now);
        let Some(session) = self.journal.recent().current().map(|loaded| &loaded.session) else {
            return WaitsView::without_session(self.words);
        };
        let (start, shapes) = self.advisor.start_of(session);
        let of = WaitsOf {
            session: session.id,
            open: session.is_open(),
            settings: wait_settings(session),
            rows: rows_spelled_alike(session),
            filter,
            rhythm: rhythm(session, TURN_ROUND_GUESS_MIN, BITE_EXTRA_GUESS_MIN),
            habit: habit_of(session),
            water: session.setup.water.clone(),
            peg: session.setup.peg.clone(),
            marks: session.marks.clone(),
            fed: in_fed_water(session, self.chosen, &now),
            start,
        };
        if self.learning.waits.iter().all(|answer| answer.of != of) {
            let water = of.water.as_deref();
            let asked = self.phone.whose != Whose::Me || self.advisor.any_of_another();
            let earlier: Vec<EarlierRows> = self
                .advisor
                .evidence()
                .map(|Before { day, of_another }| EarlierRows {
                    rows: &day.rows,
                    weight: weight(day, water),
                    unseen: day.made.saturating_sub(day.casts) as usize,
                    of_another: *of_another,
                    same_peg: same_peg(day, session),
                })
                .collect();
            let input = WaitsInput {
                session,
                rows: &of.rows,
                earlier: &earlier,
                filter: &of.filter,
                whose: asked.then_some(self.phone.whose),
                rhythm: of.rhythm,
                habit: of.habit.as_ref(),
                in_fed_water: of.fed,
                shapes: &shapes,
                club: self.advisor.club().used(session).filter(|_| of.start.is_some()),
                words: self.words,
            };
            let (view, posterior) = screen::waits(&input);
            // An answer for the same choice is out of date; one for an earlier choice is not needed any more.
            let kept = |answer: &WaitsAnswer| {
                answer.of.filter != of.filter && answer.of.filter == CastFilter::default()
            };
            self.learning.waits.retain(kept);
            self.learning.waits.push(WaitsAnswer { of: of.clone(), view, posterior });
        }
        let left = self.learning.left_min.unwrap_or_else(|| time_left(session, &now));
        let Some(answer) = self.learning.waits.iter().find(|answer| answer.of == of) else {
            return WaitsView::without_session(self.words);
        };
        let mut view = answer.view.clone();
        // A session that has ended has no remaining time to forecast, nor has a match after all-out.
        if let Some(posterior) = answer.posterior.as_ref().filter(|_| session.is_open() && left > 0) {
            let out = rods_waited_whole_min(session, &now);
            view.forecast =
                screen::forecast_view(self.words, session, posterior, answer.of.rhythm, &out, left);
        }
        view
    }

    /// "Did it matter?"
    pub(super) fn changes(&mut self) -> ChangesView {
        if self.session().is_none() {
            return screen::changes(self.words, None, &[], &[], self.phone.weights);
        }
        self.find_changes();
        self.bring_questions_up();
        let findings = self.learning.findings.as_ref().map_or(&[][..], |(_, _, findings)| findings);
        screen::changes(self.words, self.session(), findings, &self.questions_here(), self.weights())
    }

    /// Searches the session for changes again if entries were added.
    fn find_changes(&mut self) {
        let Some(session) = self.journal.recent().current().map(|loaded| &loaded.session) else { return };
        let rows = rows_spelled_alike(session);
        let kept = self.learning.findings.as_ref();
        if kept.is_none_or(|(id, before, _)| *id != session.id || *before != rows) {
            // The only possible error is an infinite time, and rows come from the fold, whose times are
            // finite.
            let findings = change_findings(&rows, SEED).unwrap_or_default();
            self.learning.findings = Some((session.id, rows, findings));
        }
    }

    /// Chooses which casts count, or how much time is left.
    pub(super) fn waits_tap(&mut self, tap: &WaitsTap) -> Result<String, AppError> {
        self.learning.choose_in(self.session().map(|session| session.id));
        let filter = &mut self.learning.filter;
        match tap {
            WaitsTap::Rod { rod } => filter.rod = rod.map(|rod| within("rod", rod, 1, 9)).transpose()?,
            WaitsTap::Spot { spot } => filter.spot.clone_from(spot),
            WaitsTap::Bait { bait } => filter.bait.clone_from(bait),
            WaitsTap::TodayOnly { only } => filter.today_only = *only,
            WaitsTap::Whose { whose } => self.count_sessions_of(*whose)?,
            WaitsTap::TimeLeft { minutes } => {
                self.learning.left_min = Some(within("left", *minutes, 1, 1_440)?);
            }
        }
        Ok(String::new())
    }

    /// Begins an alternating test on the rod that fished one of the two values last.
    pub(super) fn start_alternation(
        &mut self,
        a: &FactorValue,
        b: &FactorValue,
        at: &Moment,
    ) -> Result<String, AppError> {
        let (factor, same_factor) = (a.factor(), a.factor() == b.factor());
        let (a, b) = (a.written(), b.written());
        let planned = self.planned(factor, &a, &b);
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let unknown = || AppError::unknown("test", format_args!("{a} / {b}"));
        let fished = |value: &String| {
            session
                .casts
                .iter()
                .rposition(|c| setup_of(c).get(&factor).is_some_and(|v| screen::same_value(factor, v, value)))
        };
        let (last_a, last_b) =
            fished(&a).zip(fished(&b)).filter(|_| a != b && same_factor).ok_or_else(unknown)?;
        let rod = session.casts[last_a.max(last_b)].rod;
        // It begins with the side that was not fished last.
        let b_first = last_a > last_b;
        let factor = factor_logged(factor).ok_or_else(unknown)?;
        let payload = Payload::AlternationStarted { rod, factor, a, b, b_first, casts: planned };
        self.log_here(payload, at)
    }

    fn planned(&mut self, factor: Factor, a: &str, b: &str) -> u16 {
        self.find_changes();
        let findings = self.learning.findings.as_ref().map_or(&[][..], |(_, _, findings)| findings);
        let is = |f: &&ChangeFinding| f.factor == factor && f.a.value == a && f.b.value == b;
        let more = findings.iter().find(is).and_then(|f| f.more_casts).and_then(|more| more.casts);
        more.unwrap_or(2 * TEST_CASTS.0).clamp(TEST_CASTS.0, TEST_CASTS.1) as u16
    }

    /// Sets rig or spot of the test's rod for its next cast.
    pub(super) fn set_next_step(&mut self, at: &Moment) -> Result<String, AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let test = session.alternation.as_ref().ok_or(NotNow::NoTest)?;
        let progress = test.progress(session);
        let side = progress.sides.get(progress.done).copied().ok_or(NotNow::TestIsComplete)?;
        let payload = next_payload(session, test.rod, test.factor, test.value(side), side)?;
        self.log_here(payload, at)
    }

    pub(super) fn log_here(&mut self, payload: Payload, at: &Moment) -> Result<String, AppError> {
        check(self.session(), &payload)?;
        let session = self.session().map(|s| s.id).ok_or(NotNow::NoSession)?;
        let kind = payload.kind().to_owned();
        self.write(session, payload, None, at)?;
        Ok(self.say_what("notice-logged", &kind))
    }
}

/// The time left that nobody has chosen, in minutes: that of the match.
fn time_left(session: &Session, now: &Stamp) -> u32 {
    let left_ms = session.match_day.as_ref().and_then(|match_day| match_day.left_ms(now).ok());
    left_ms.map_or(LEFT_MIN, |ms| u32::try_from(ms / 60_000).unwrap_or(0))
}

/// The rig or the spot with the value copied from the last cast that had it.
fn next_payload(
    session: &Session,
    rod: RodNumber,
    factor: Factor,
    value: &str,
    side: Side,
) -> Result<Payload, AppError> {
    let unknown = || AppError::unknown(if side == Side::A { "A" } else { "B" }, value);
    let has = |cast: &&restwater_session::Cast| {
        value_of(factor, &cast.rig, cast.spot.as_ref()).as_deref() == Some(value)
    };
    let like = session.casts.iter().rev().find(has).ok_or_else(unknown)?;
    let state = session.rod(rod).ok_or_else(unknown)?;
    let mut rig = state.rig.clone();
    match factor {
        Factor::Spot => {
            let spot = like.spot.clone().ok_or_else(unknown)?;
            return Ok(Payload::SpotSet { rod, spot });
        }
        Factor::Bait => rig.bait.clone_from(&like.rig.bait),
        Factor::Colour => rig.colour.clone_from(&like.rig.colour),
        Factor::Height => rig.popup_mm = like.rig.popup_mm,
        Factor::Hooklength => rig.hooklength_mm = like.rig.hooklength_mm,
        Factor::HookSize => rig.hook_size = like.rig.hook_size,
        Factor::Lead => (rig.lead_mg, rig.material) = (like.rig.lead_mg, like.rig.material),
        Factor::Leader | Factor::Feed | Factor::FeedAmount => return Err(unknown()),
    }
    Ok(Payload::RigSet { rod, rig })
}
