//! The plan for a day: its taps, and which plan a session adopts.

use super::error::within;
use super::journal::Beside;
use super::tackle::{sound_reach, with_rig};
use super::{App, AppError, settings};
use restwater_kit::{Kit, nearest_plan};
use restwater_log::{Moment, MoveAt, Payload, PlanKey, PlanLine, PlanSpot, Rig, RodNumber};
use restwater_match_day::clock::{DAY_MS, HOUR_MS};
use restwater_match_day::rules::same_name;
use restwater_screen::{PlanInput, PlanTap};
use restwater_session::{MOST_RODS, NotNow, Plan, Session, Stamp, check, fold};
use restwater_session::{RodBefore, entries_of_plan, mark_bearing};
use restwater_store::Store;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use uuid::Uuid;

const ASIDE: &str = "plan_aside_of";
const PLANNED: &str = "plan_day";
/// From this time of day on, a plan is written for tomorrow: the project's own choice, no source.
const EVENING_MS: i64 = 17 * HOUR_MS;
/// For how long the page keeps the day that it shows while nobody looks at it. The project's own choice, no source.
const PAGE_KEEPS_MS: i64 = HOUR_MS;
/// How far ahead a day may be planned.
const DAYS_AHEAD: i32 = 400;
/// Nobody leaves a cast for longer, or moves later in a session, in minutes.
const LONGEST_MIN: u16 = 1_440;

/// Choices about the plan that belong to the phone, not to the plan itself.
#[derive(Default)]
pub(super) struct PlanState {
    /// The day that is planned, if one was chosen or a line was written for it. It counts until it is over.
    day: Option<i32>,
    /// The plan that was dropped before START.
    aside: Option<Aside>,
    /// What the page shows: a line that is typed there is for that day, even if the evening begins before it is sent.
    pub(super) shown: Option<DayShown>,
}

/// The day that the page with the plan shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct DayShown {
    day: i32,
    /// When the page was drawn last, in local time.
    at_ms: i64,
}

impl DayShown {
    /// The day, unless it is over or the page was left alone for long.
    fn still(self, now: &Moment) -> Option<i32> {
        let since_ms = now.local_ms().saturating_sub(self.at_ms);
        Some(self.day).filter(|day| *day >= day_of(now) && (0..PAGE_KEEPS_MS).contains(&since_ms))
    }
}

/// A plan that is not for today's session.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
struct Aside {
    /// The day on which it was dropped.
    on: i32,
    /// The day that it was written for.
    of: Option<i32>,
}

impl Aside {
    /// Whether a plan for that day is dropped today: on the day of the tap any plan is, and after midnight the same one.
    fn is_of(self, plan: Option<i32>, today: i32) -> bool {
        self.on == today || (self.on.saturating_add(1) == today && self.of.is_some() && self.of == plan)
    }
}

/// The state of the plan for the screens.
pub(super) struct PlanNow {
    day: i32,
    pub(super) today: i32,
    plan: Option<Plan>,
    /// The day of the plan that START would adopt if it hadn't been dropped.
    pub(super) nearest: Option<i32>,
    /// Whether it was dropped.
    pub(super) aside: bool,
    last: Session,
}

impl PlanState {
    pub(super) fn load(store: &Store) -> Result<Self, AppError> {
        Ok(Self { day: settings::read(store, PLANNED)?, aside: settings::read(store, ASIDE)?, shown: None })
    }
}

/// The day by the phone's calendar, counted from 1 January 1970.
fn day_of(at: &Moment) -> i32 {
    i32::try_from(at.local_ms().div_euclid(DAY_MS)).unwrap_or_default()
}

impl App {
    /// The current plan.
    pub(super) fn plan_now(&mut self, now: &Moment) -> Result<PlanNow, AppError> {
        let today = day_of(now);
        let plans = self.plans()?;
        let day = self.planned_day(now);
        let nearest = self.nearest(&plans, self.fished_day(now)).map(|(day, _)| day);
        let aside = self.plan.aside.is_some_and(|aside| aside.is_of(nearest, today));
        let last = self.session().cloned().unwrap_or_else(|| fold(Uuid::nil(), &[]));
        Ok(PlanNow { day, today, plan: plans.get(&day).cloned(), nearest, aside, last })
    }

    /// The plan for its page, which shows the same day from now on until it is left.
    pub(super) fn plan_on_page(&mut self, now: &Moment) -> Result<PlanNow, AppError> {
        let plan = self.plan_now(now)?;
        self.plan.shown = Some(DayShown { day: plan.day, at_ms: now.local_ms() });
        Ok(plan)
    }

    /// The page with the plan is left.
    pub(super) fn leave_plan(&mut self) {
        self.plan.shown = None;
    }

    /// The plan as the Bench shows it.
    pub(super) fn plan_input<'a>(&self, now: &'a PlanNow) -> PlanInput<'a> {
        let open = now.last.is_open();
        PlanInput {
            day: now.day,
            today: now.today,
            plan: now.plan.as_ref(),
            nearest: now.nearest,
            put_aside: now.aside,
            taken: now.last.plan.as_ref().filter(|_| open),
            open,
            last: &now.last,
            rods: self.draft.rods,
            span_tenth_mm: self.draft.span_tenth_mm,
        }
    }

    /// A tap on the plan. An error changes nothing.
    pub(super) fn plan_tap(&mut self, tap: &PlanTap, at: &Moment) -> Result<String, AppError> {
        match tap {
            PlanTap::Day { day } => {
                let today = day_of(at);
                let (first, last) = (today.saturating_sub(DAYS_AHEAD), today.saturating_add(DAYS_AHEAD));
                let day = within("day", *day, first, last)?;
                settings::write(self.journal.store(), PLANNED, &Some(day))?;
                self.plan.day = Some(day);
                Ok(String::new())
            }
            PlanTap::Today { takes } => self.plan_today(*takes, at),
            PlanTap::Rig { rod, change } => {
                let change = self.in_known_spelling(change);
                self.change_line(&PlanTap::Rig { rod: *rod, change }, at)
            }
            line => self.change_line(line, at),
        }
    }

    /// Changes one line of the plan for the day that is planned.
    fn change_line(&mut self, tap: &PlanTap, at: &Moment) -> Result<String, AppError> {
        let day = self.planned_day(at);
        let plan = self.plans()?.remove(&day).unwrap_or_default();
        match changed(&plan, tap)? {
            Some(Changed::Set(line)) => self.plan_line(line, at),
            Some(Changed::Cleared(line)) if plan.has(&line) => {
                self.log_own(Payload::PlanCleared { day, line }, at)
            }
            _ => Ok(String::new()),
        }
    }

    /// Writes a line. Further lines are for the same day, even if midnight has passed.
    pub(super) fn plan_line(&mut self, line: PlanLine, at: &Moment) -> Result<String, AppError> {
        let day = self.planned_day(at);
        let notice = self.log_own(Payload::PlanSet { day, line }, at)?;
        self.plan_day_is(Some(day));
        Ok(notice)
    }

    /// A session has begun or ended: its day needs no more planning.
    pub(super) fn plan_used(&mut self, at: &Moment) {
        self.leave_plan();
        self.plan_day_is(self.plan.day.filter(|day| *day > day_of(at)));
    }

    /// Keeps the day that is planned, over a restart too. What was written before is kept, even if this can't be stored.
    fn plan_day_is(&mut self, day: Option<i32>) {
        if self.plan.day != day {
            self.plan.day = day;
            let stored = settings::write(self.journal.store(), PLANNED, &day);
            self.journal.beside(Beside::AfterTheTap, stored);
        }
    }

    /// A copy of the plan for a session that begins now. If the plan can't be read the session begins without
    /// one.
    pub(super) fn plan_to_take(&mut self, at: &Moment) -> Option<Payload> {
        let today = day_of(at);
        let plans = self.plans();
        let plans = self.journal.beside(Beside::Plan, plans)?;
        let (day, plan) = self.nearest(&plans, today)?;
        if self.plan.aside.is_some_and(|aside| aside.is_of(Some(day), today)) {
            return None;
        }
        Some(Payload::PlanTaken { day, lines: plan.lines().cloned().collect() })
    }

    /// Adopts or drops the plan for the running session, or before START for today's next one.
    fn plan_today(&mut self, takes: bool, at: &Moment) -> Result<String, AppError> {
        let Some(session) = self.session().filter(|session| session.is_open()).map(|session| session.id)
        else {
            let on = day_of(at);
            let plans = self.plans()?;
            let of = self.nearest(&plans, on).map(|(day, _)| day);
            let aside = (!takes).then_some(Aside { on, of });
            settings::write(self.journal.store(), ASIDE, &aside)?;
            self.plan.aside = aside;
            return Ok(String::new());
        };
        let payload = if takes {
            let plans = self.plans()?;
            let (day, plan) = self.nearest(&plans, self.fished_day(at)).ok_or(NotNow::NoPlan)?;
            Payload::PlanTaken { day, lines: plan.lines().cloned().collect() }
        } else {
            Payload::PlanDropped
        };
        check(self.session(), &payload)?;
        let kind = payload.kind().to_owned();
        let filled = self.session().map_or_else(Vec::new, |session| plan_on_rods_now(&payload, session));
        self.write_all(session, std::iter::once(payload).chain(filled).collect(), at)?;
        Ok(self.say_what("notice-logged", &kind))
    }

    /// The day that is fished: while a session runs, the day on which it began, even after midnight.
    fn fished_day(&self, now: &Moment) -> i32 {
        let running = self.session().filter(|session| session.is_open());
        running
            .and_then(|session| session.started.as_ref())
            .map_or_else(|| day_of(now), |at| day_of(&at.shown))
    }

    /// The day that was chosen, unless it is over, or the one that the page shows; otherwise today, or tomorrow if it is evening or
    /// a session of today has ended, unless one is still running.
    pub(super) fn planned_day(&self, now: &Moment) -> i32 {
        let today = day_of(now);
        let chosen = self.plan.day.filter(|day| *day >= today);
        let shown = || self.plan.shown.and_then(|shown| shown.still(now));
        chosen.or_else(shown).unwrap_or_else(|| {
            let evening = now.local_ms().rem_euclid(DAY_MS) >= EVENING_MS;
            let of_today = |at: &Stamp| day_of(&at.shown) == today;
            let tomorrow = self.session().map_or(evening, |session| {
                !session.is_open() && (evening || session.started.as_ref().is_some_and(of_today))
            });
            today.saturating_add(i32::from(tomorrow))
        })
    }

    pub(super) fn plans(&mut self) -> Result<BTreeMap<i32, Plan>, AppError> {
        self.sessions.refresh(&self.journal)?;
        let kit: Kit = restwater_kit::fold(&self.own_things(), &[], &[]);
        Ok(kit.plans)
    }

    /// The plan for today. An earlier session has used up the plan of its day, but a session that is still
    /// running hasn't.
    fn nearest<'p>(&self, plans: &'p BTreeMap<i32, Plan>, today: i32) -> Option<(i32, &'p Plan)> {
        let running = self.session().filter(|session| session.is_open()).map(|session| session.id);
        let fished = self.sessions.days(&self.mine).filter(|day| day.mine && Some(day.id) != running);
        let last = fished.filter_map(|day| {
            let local = restwater_log::local_ms(day.gist.started_ms?, day.gist.offset_min);
            i32::try_from(local.div_euclid(DAY_MS)).ok()
        });
        // A day after today was logged while the clock was ahead.
        nearest_plan(plans, today, last.filter(|day| *day <= today).max())
    }
}

/// What a plan puts on the rods of a session that begins with these entries.
pub(super) fn plan_on_rods(plan: &Payload, begins: &[Payload], rods: u8) -> Vec<Payload> {
    let Payload::PlanTaken { lines, .. } = plan else { return Vec::new() };
    let bare = Rig::default();
    let before = |rod: RodNumber| {
        let rig = begins.iter().rev().find_map(|entry| match entry {
            Payload::RigSet { rod: of, rig } if *of == rod => Some(rig),
            _ => None,
        });
        let spot = begins.iter().rev().find_map(|entry| match entry {
            Payload::SpotSet { rod: of, spot } if *of == rod => Some(spot),
            _ => None,
        });
        RodBefore { rod, rig: rig.unwrap_or(&bare), spot }
    };
    let all: Vec<RodBefore> = (1..=rods).map(before).collect();
    entries_of_plan(lines, &all, |mark| {
        begins.iter().find_map(|entry| match entry {
            Payload::MarkSet { name, bearing_cdeg } if same_name(name, mark) => Some(*bearing_cdeg),
            _ => None,
        })
    })
}

/// The same for a plan that is adopted later, before the first cast.
fn plan_on_rods_now(plan: &Payload, session: &Session) -> Vec<Payload> {
    let Payload::PlanTaken { lines, .. } = plan else { return Vec::new() };
    if !session.casts.is_empty() {
        return Vec::new();
    }
    let rods = session.rods.iter();
    let all: Vec<RodBefore> =
        rods.map(|rod| RodBefore { rod: rod.number, rig: &rod.rig, spot: rod.spot.as_ref() }).collect();
    entries_of_plan(lines, &all, |mark| mark_bearing(session, mark))
}

/// A change to a line.
enum Changed {
    Set(PlanLine),
    Cleared(PlanKey),
}

/// The line after the tap, or `None` if the tap changes no line.
fn changed(plan: &Plan, tap: &PlanTap) -> Result<Option<Changed>, AppError> {
    Ok(Some(match tap {
        PlanTap::NoPeg { peg } => Changed::Cleared(PlanKey::Peg { peg: peg.clone() }),
        PlanTap::NoRig { rod } => Changed::Cleared(PlanKey::Rig { rod: *rod }),
        PlanTap::NoStart => Changed::Cleared(PlanKey::Start),
        PlanTap::Leave { minutes: None } => Changed::Cleared(PlanKey::Leave),
        PlanTap::Move { at: None } => Changed::Cleared(PlanKey::Move),
        PlanTap::Leave { minutes: Some(minutes) } => {
            Changed::Set(PlanLine::Leave { minutes: within("leave", *minutes, 1, LONGEST_MIN)? })
        }
        PlanTap::Move { at: Some(at) } => Changed::Set(PlanLine::Move { at: sound_move(*at)? }),
        PlanTap::Rig { rod, change } => {
            let rod = within("rods", *rod, 1, MOST_RODS)?;
            let rig = with_rig(planned_rig(plan, rod), change)?;
            let rig = rig.ok_or_else(|| AppError::unknown("rig", rod))?;
            Changed::Set(PlanLine::Rig { rod, rig })
        }
        PlanTap::Reach { reach } => {
            let reach = Some(sound_reach(*reach)?);
            start(PlanSpot { reach, ..planned_start(plan) })
        }
        PlanTap::Bearing { cdeg } => {
            let bearing_cdeg = Some(within("bearing", *cdeg, -9_000, 9_000)?);
            start(PlanSpot { bearing_cdeg, mark: None, ..planned_start(plan) })
        }
        PlanTap::Mark { name } => {
            let mark = Some(mark_name(name)?);
            start(PlanSpot { mark, bearing_cdeg: None, ..planned_start(plan) })
        }
        PlanTap::Day { .. } | PlanTap::Today { .. } => return Ok(None),
    }))
}

fn start(spot: PlanSpot) -> Changed {
    Changed::Set(PlanLine::Start { spot })
}

fn mark_name(name: &str) -> Result<String, AppError> {
    let name = Some(name.trim()).filter(|name| !name.is_empty());
    Ok(name.ok_or(AppError::NothingTyped)?.to_owned())
}

fn planned_start(plan: &Plan) -> PlanSpot {
    let spot = plan.lines().find_map(|line| match line {
        PlanLine::Start { spot } => Some(spot.clone()),
        _ => None,
    });
    spot.unwrap_or_default()
}

fn planned_rig(plan: &Plan, rod: RodNumber) -> Rig {
    let rig = plan.lines().find_map(|line| match line {
        PlanLine::Rig { rod: of, rig } if *of == rod => Some(rig.clone()),
        _ => None,
    });
    rig.unwrap_or_default()
}

/// Checks the time of a move.
pub(super) fn sound_move(at: MoveAt) -> Result<MoveAt, AppError> {
    Ok(match at {
        MoveAt::AllIn { minutes } => MoveAt::AllIn { minutes: within("move", minutes, 0, LONGEST_MIN)? },
        MoveAt::Clock { minute } => MoveAt::Clock { minute: within("move", minute, 0, LONGEST_MIN - 1)? },
    })
}
