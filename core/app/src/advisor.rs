//! Advice about the running cast. It is kept between taps, so that the refresh each second costs next to
//! nothing.

use super::club::{Club, StartOf};
use super::earlier::{Before, any_of_another, earlier};
use super::journal::{InMemory, Journal};
use super::recent::Loaded;
use super::spots::{SpotsAnswer, SpotsAsked};
use restwater_log::RodNumber;
use restwater_screen::{Reading, RodLeave, SpotsReading, Whose};
use restwater_session::rest::Leaves;
use restwater_session::{
    HabitBeforeBites, Rhythm, Rod, RodState, Session, Stamp, Summary, SwimKept, casts_by_telling,
    habit_before_bites, habit_of, in_fed_water, planned_leave, rhythm, rods_in_use, running_wait_min,
    wait_settings, waits_by_feed,
};
use restwater_store::StoreError;
use restwater_waits::{
    Advice, AdviceState, EarlierDay, Habit, Record, Settings, Shapes, Wait, WaitPosterior,
};
use restwater_waits::{BITE_EXTRA_GUESS_MIN, LIKE_DAY_WEIGHT, OTHER_DAY_WEIGHT, TURN_ROUND_GUESS_MIN};
use std::sync::Arc;
use uuid::Uuid;

/// The posterior of today's waits, with the sessions before it.
pub(super) struct Advisor {
    /// Today's session, which is not one of the earlier ones.
    today: Option<Uuid>,
    /// The sessions before it, or `None` if they could not be read.
    earlier: Option<Vec<Before>>,
    /// Whether there are earlier sessions of another angler, counted or not.
    any_of_another: bool,
    /// The club whose start advice begins with.
    club: Club,
    last: Option<Answer>,
    /// The answer of the spots for each rod, as of when it was last asked about.
    spots: Vec<SpotsAnswer>,
    /// The swim as it was then.
    swim: SwimKept,
}

/// The last answer, with the record that it was computed from.
struct Answer {
    /// The session, since the weight of earlier days depends on its water.
    session: Uuid,
    /// The entries that the session was folded from at the last computation; a running clock asks every second.
    log: InMemory,
    told: Told,
    /// Which weights of a club it began with.
    start: StartOf,
    water: Option<String>,
    settings: Settings,
    waits: Vec<Wait>,
    /// Whether the cast of each wait was in fed water.
    fed: Vec<bool>,
    rhythm: Rhythm,
    habit: Option<Habit>,
    posterior: WaitPosterior,
    /// The advice for a cast outside fed water and for one in it.
    advice: [Option<Advice>; 2],
}

/// What the Bank says about the record beside the advice.
#[derive(Clone, Copy)]
struct Told {
    /// How many casts count for the wait, and of how many the end was not seen.
    casts: (usize, usize),
    habit: Option<HabitBeforeBites>,
}

impl Told {
    fn of(session: &Session) -> Self {
        Self { casts: casts_by_telling(session), habit: habit_before_bites(session) }
    }
}

impl Answer {
    /// Whether it was computed from the session as it is now.
    fn is_of(&self, session: &Session, log: InMemory) -> bool {
        self.session == session.id && self.log == log
    }

    /// Extends the answer to a record that begins like this one. Usually that is one more cast, and the
    /// rhythm learned from it.
    fn go_on(
        &mut self,
        (waits, fed): (Vec<Wait>, Vec<bool>),
        rhythm: Rhythm,
        habit: Option<Habit>,
    ) -> Option<()> {
        let pace = |r: &Rhythm| (r.between_min(), r.bite_extra_min);
        let same_pace = pace(&self.rhythm) == pace(&rhythm) && self.habit == habit;
        if same_pace && self.waits.len() == waits.len() {
            self.rhythm = rhythm;
            return Some(());
        }
        if !same_pace {
            self.posterior.set_pace(rhythm.between_min(), rhythm.bite_extra_min, habit.clone()).ok()?;
        }
        for (&wait, &fed) in waits.iter().zip(&fed).skip(self.waits.len()) {
            self.posterior.add_by_feed(wait, fed);
        }
        self.advice = [None; 2];
        (self.waits, self.fed, self.rhythm, self.habit) = (waits, fed, rhythm, habit);
        Some(())
    }

    /// The posterior and its advice for the cast that a rod has out, or for one that would go out now. Fed
    /// water matters only if feed counts.
    fn of_cast(&mut self, session: &Session, rod: RodNumber, now: &Stamp) -> (&WaitPosterior, Advice) {
        let fed = self.posterior.feed_counts() && in_fed_water(session, rod, now);
        self.posterior.next_is_fed(fed);
        let advice = *self.advice[usize::from(fed)].get_or_insert_with(|| self.posterior.advice());
        (&self.posterior, advice)
    }
}

impl Advisor {
    /// Reads the summaries of the sessions before today's; those that are missing or out of date are computed
    /// from the log and stored. `whose` says whose sessions count; `mine` are the angler's phones.
    pub(super) fn load(journal: &Journal, whose: Whose, mine: &[Uuid]) -> Result<Self, StoreError> {
        let today = journal.recent().current();
        let place = today.and_then(Loaded::place);
        Ok(Self {
            today: today.map(|loaded| loaded.session.id),
            earlier: Some(earlier(journal, place, whose, mine)?),
            any_of_another: any_of_another(journal, place, mine)?,
            club: Club::of(&journal.recent().own_things(mine)),
            last: None,
            spots: Vec::new(),
            swim: SwimKept::default(),
        })
    }

    /// An advisor without earlier sessions, used while they can't be read.
    pub(super) fn of_today_alone(today: Option<Uuid>, club: Club) -> Self {
        let (last, spots, swim) = (None, Vec::new(), SwimKept::default());
        Self { today, earlier: None, any_of_another: false, club, last, spots, swim }
    }

    /// The club whose start advice begins with.
    pub(super) fn club(&self) -> &Club {
        &self.club
    }

    /// Which weights of the club count for a session, and the shapes weighed by them.
    pub(super) fn start_of(&mut self, session: &Session) -> (StartOf, Arc<Shapes>) {
        self.club.start_of(session)
    }

    /// Begins with another club's start, or with none; returns whether that is a change.
    pub(super) fn take_club(&mut self, club: Club) -> bool {
        if self.club.is(&club) {
            return false;
        }
        (self.club, self.last, self.spots) = (club, None, Vec::new());
        true
    }

    /// Whether it was loaded for this session and knows the earlier ones.
    pub(super) fn is_of(&self, today: Option<Uuid>) -> bool {
        self.today == today && self.earlier.is_some()
    }

    /// The latest sessions before this one, newest first.
    pub(super) fn earlier(&self) -> &[Before] {
        self.earlier.as_deref().unwrap_or_default()
    }

    /// Those of them that are evidence of waiting.
    pub(super) fn evidence(&self) -> impl Iterator<Item = &Before> {
        self.earlier().iter().filter(|before| before.day.tells())
    }

    /// How many of them there are: the angler's own and another's.
    pub(super) fn earlier_sessions(&self) -> [usize; 2] {
        let of_another = self.evidence().filter(|before| before.of_another).count();
        [self.evidence().count() - of_another, of_another]
    }

    /// Whether there are earlier sessions of another angler, counted or not.
    pub(super) fn any_of_another(&self) -> bool {
        self.any_of_another
    }

    /// The reading of a rod now, or `None` if the session has not begun or its figures can't be used.
    pub(super) fn read(
        &mut self,
        session: &Session,
        log: InMemory,
        rod: RodNumber,
        now: &Stamp,
    ) -> Option<Reading> {
        session.started.as_ref()?;
        self.bring_up_to(session, log)?;
        let waited = session.running(rod).and_then(|cast| running_wait_min(session, cast, now));
        let spots = self.spots_of(session, log, rod, now);
        let last = self.last.as_mut()?;
        let (rhythm, Told { casts: (casts, unseen), habit }) = (last.rhythm, last.told);
        let (posterior, advice) = last.of_cast(session, rod, now);
        let (advice, spots) = by_spots(advice, spots);
        let (advice, planned) = by_plan(advice, session);
        let waiting = waited.and_then(|minutes| posterior.waiting_on(minutes).ok());
        let [earlier, of_another] = self.earlier_sessions();
        Some(Reading {
            advice,
            waited_min: waited,
            waiting,
            rhythm,
            casts,
            unseen,
            earlier,
            of_another,
            habit,
            spots,
            planned,
        })
    }

    /// How long to leave the cast of each rod that is out.
    pub(super) fn leaves(&mut self, session: &Session, log: InMemory, now: &Stamp) -> Vec<RodLeave> {
        let out = |rod: &&Rod| matches!(rod.state, RodState::Out { .. });
        let rods = session.rods.iter().filter(out).map(|rod| rod.number);
        rods.filter_map(|rod| RodLeave::of(rod, &self.read(session, log, rod, now)?)).collect()
    }

    /// The posterior of today's waits, what it advises for the casts to come of all rods, and how long they are left; `None` if its
    /// figures can't be used. With several rods it is the same whichever of them is chosen: no spot is asked about, and the casts
    /// count as in fed water if most rods fish there. The only rod's spot says when its bait is wound in, and nothing of the casts
    /// after that, which go elsewhere.
    pub(super) fn of_all_rods(
        &mut self,
        session: &Session,
        log: InMemory,
        now: &Stamp,
    ) -> Option<(&WaitPosterior, Advice, Leaves)> {
        self.bring_up_to(session, log)?;
        let rods = rods_in_use(session, now);
        let fed = |rod: &&RodNumber| in_fed_water(session, **rod, now);
        let most = 2 * rods.iter().filter(fed).count() > rods.len();
        let rod = *rods.iter().find(|rod| fed(rod) == most)?;
        let is_out = session.rod(rod).is_some_and(|rod| matches!(rod.state, RodState::Out { .. }));
        let spots = if is_out && rods.len() == 1 { self.spots_of(session, log, rod, now) } else { None };
        let (posterior, advice) = self.last.as_mut()?.of_cast(session, rod, now);
        let (advice, _) = by_plan(advice, session);
        let mut leaves = Leaves::of(&advice);
        if let Some(spots) = spots.filter(|_| advice.state != AdviceState::CantTellYet) {
            leaves.first = f64::from(spots.leave.leave_min);
        }
        Some((posterior, advice, leaves))
    }

    /// The posterior of today's waits alone.
    pub(super) fn waits(&mut self, session: &Session, log: InMemory) -> Option<&WaitPosterior> {
        self.bring_up_to(session, log)?;
        self.last.as_ref().map(|answer| &answer.posterior)
    }

    /// What the spots say, of a day that is being fished; the answer is up to the session.
    fn spots_of(
        &mut self,
        session: &Session,
        log: InMemory,
        rod: RodNumber,
        now: &Stamp,
    ) -> Option<SpotsReading> {
        if !session.is_open() {
            return None;
        }
        let asked = SpotsAsked::new(session, log, rod, now);
        if let Some(answer) = self.spots.iter().find(|answer| answer.asked == asked) {
            return answer.says.clone();
        }
        let says = self
            .last
            .as_ref()
            .and_then(|answer| asked.answer(session, &answer.posterior, now, &mut self.swim));
        self.spots.retain(|answer| answer.asked.is_about_another_rod(&asked));
        self.spots.push(SpotsAnswer { asked, says: says.clone() });
        says
    }

    /// Brings the last answer up to the session.
    fn bring_up_to(&mut self, session: &Session, log: InMemory) -> Option<()> {
        if self.last.as_ref().is_some_and(|last| last.is_of(session, log)) {
            return Some(());
        }
        let rhythm = rhythm(session, TURN_ROUND_GUESS_MIN, BITE_EXTRA_GUESS_MIN);
        let (waits, fed) = waits_by_feed(session);
        let habit = habit_of(session);
        let water = &session.setup.water;
        let (start, shapes) = self.club.start_of(session);
        let settings = wait_settings(session);
        let is_same = |last: &&mut Answer| {
            (last.session, &last.water, last.settings) == (session.id, water, settings) && last.start == start
        };
        let goes_on = |last: &&mut Answer| waits.starts_with(&last.waits) && fed.starts_with(&last.fed);
        if let Some(last) = self.last.as_mut().filter(is_same).filter(goes_on) {
            last.go_on((waits, fed), rhythm, habit)?;
            (last.log, last.told) = (log, Told::of(session));
            return Some(());
        }
        let earlier: Vec<EarlierDay> = self
            .evidence()
            .map(|Before { day, .. }| EarlierDay { waits: &day.waits, weight: weight(day, water.as_deref()) })
            .collect();
        let record = Record {
            today: &waits,
            fed: &fed,
            earlier: &earlier,
            turn_round_min: rhythm.between_min(),
            bite_extra_min: rhythm.bite_extra_min,
            habit: habit.as_ref(),
        };
        let posterior = WaitPosterior::with_shapes(&record, &settings, shapes).ok()?;
        let (told, water, advice) = (Told::of(session), water.clone(), [None; 2]);
        let session = session.id;
        let answer = Answer {
            session,
            log,
            told,
            start,
            water,
            settings,
            waits,
            fed,
            rhythm,
            habit,
            posterior,
            advice,
        };
        self.last = Some(answer);
        Some(())
    }
}

/// The advice as the spots change it. They say nothing while nothing is known about the waits.
fn by_spots(advice: Advice, spots: Option<SpotsReading>) -> (Advice, Option<SpotsReading>) {
    match spots {
        Some(spots) if advice.state != AdviceState::CantTellYet => (spots.leave.over(advice), Some(spots)),
        _ => (advice, None),
    }
}

/// While the record can't tell, casts are left as the angler planned it, if that was planned; whether it was.
fn by_plan(advice: Advice, session: &Session) -> (Advice, bool) {
    match planned_leave(session).filter(|_| advice.state == AdviceState::CantTellYet) {
        None => (advice, false),
        Some(minutes) => {
            let next_leave_min = f64::from(minutes);
            (Advice { best_min: None, next_leave_min, leave_min: u32::from(minutes), ..advice }, true)
        }
    }
}

/// The weight of an earlier day: one on the same water counts fully, any other less.
pub(super) fn weight(day: &Summary, water: Option<&str>) -> f64 {
    if restwater_session::same_water(day.water.as_deref(), water) {
        LIKE_DAY_WEIGHT
    } else {
        OTHER_DAY_WEIGHT
    }
}
