//! What the record says of the running cast, kept between taps so that a second costs next to nothing.

use restwater_log::{CanonicalError, Op, RodNumber, is_kit};
use restwater_screen::Reading;
use restwater_session::{
    Rhythm, Session, Stamp, Summary, casts_that_tell, fold, habit_min, rhythm, running_wait_min, waits_of,
};
use restwater_store::{SessionRow, SnapshotRow, Store, StoreError};
use restwater_waits::{Advice, EarlierDay, Record, Settings, Wait, WaitPosterior};
use restwater_waits::{BITE_EXTRA_GUESS_MIN, LIKE_DAY_WEIGHT, OTHER_DAY_WEIGHT, TURN_ROUND_GUESS_MIN};
use uuid::Uuid;

/// How many earlier sessions speak today.
const EARLIER_SESSIONS: usize = 5;
/// Changes when [`Summary`] does, so that older ones are made anew.
pub(super) const SUMMARY_VERSION: u32 = 4;

/// The posterior of today's waits, with the sessions before it.
pub(super) struct Advisor {
    /// The session that is today's, and so none of the earlier ones.
    today: Option<Uuid>,
    earlier: Vec<Summary>,
    last: Option<Answer>,
}

/// The answer to the record as it was last looked at.
struct Answer {
    /// Days count more or less by the session's water.
    session: Uuid,
    water: Option<String>,
    waits: Vec<Wait>,
    rhythm: Rhythm,
    habit: Option<f64>,
    posterior: WaitPosterior,
    advice: Advice,
}

impl Answer {
    /// Goes on to a record that begins as this one did: a cast more, most often, and the rhythm learned from it.
    fn go_on(&mut self, waits: Vec<Wait>, rhythm: Rhythm, habit: Option<f64>) -> Option<()> {
        let pace = |r: &Rhythm| (r.turn_round_min, r.bite_extra_min);
        let same_pace = pace(&self.rhythm) == pace(&rhythm) && self.habit == habit;
        if same_pace && self.waits.len() == waits.len() {
            self.rhythm = rhythm;
            return Some(());
        }
        if !same_pace {
            self.posterior.set_pace(rhythm.turn_round_min, rhythm.bite_extra_min, habit).ok()?;
        }
        waits[self.waits.len()..].iter().for_each(|&wait| self.posterior.add(wait));
        self.advice = self.posterior.advice();
        (self.waits, self.rhythm, self.habit) = (waits, rhythm, habit);
        Some(())
    }
}

impl Advisor {
    /// Reads the summaries of the latest sessions other than `today` and the so many kits; those that are missing or out of date
    /// are made from the log and kept.
    pub(super) fn load(store: &mut Store, today: Option<Uuid>, kits: usize) -> Result<Self, StoreError> {
        // Today's and the kits may be among the latest, and don't count.
        let passed_over = 1 + kits;
        let rows: Vec<SessionRow> = store
            .latest_sessions(EARLIER_SESSIONS + passed_over)?
            .into_iter()
            .filter(|row| Some(row.id) != today && !is_kit(row.id))
            .take(EARLIER_SESSIONS)
            .collect();
        let earlier = rows.iter().map(|row| summary(store, row)).collect::<Result<_, _>>()?;
        Ok(Self { today, earlier, last: None })
    }

    /// Whether that session is today's for it.
    pub(super) fn is_of(&self, today: Option<Uuid>) -> bool {
        self.today == today
    }

    /// The latest sessions before this one, newest first.
    pub(super) fn earlier(&self) -> &[Summary] {
        &self.earlier
    }

    /// What the record says of a rod now; none where the session has not begun or its figures can't be used.
    pub(super) fn read(&mut self, session: &Session, rod: RodNumber, now: &Stamp) -> Option<Reading> {
        session.started.as_ref()?;
        let rhythm = rhythm(session, TURN_ROUND_GUESS_MIN, BITE_EXTRA_GUESS_MIN);
        self.bring_up_to(session, rhythm)?;
        let answer = self.last.as_ref()?;
        let waited = session.running(rod).and_then(|cast| running_wait_min(session, cast, now));
        let waiting = waited.and_then(|minutes| answer.posterior.waiting_on(minutes).ok());
        let casts = casts_that_tell(session);
        Some(Reading { advice: answer.advice, waited_min: waited, waiting, rhythm, casts })
    }

    /// The posterior of today's waits and what it advises; none where its figures can't be used.
    pub(super) fn posterior(
        &mut self,
        session: &Session,
        rhythm: Rhythm,
    ) -> Option<(&WaitPosterior, Advice)> {
        self.bring_up_to(session, rhythm)?;
        self.last.as_ref().map(|answer| (&answer.posterior, answer.advice))
    }

    fn bring_up_to(&mut self, session: &Session, rhythm: Rhythm) -> Option<()> {
        let waits = waits_of(session);
        let habit = habit_min(session);
        let water = &session.setup.water;
        let is_same = |last: &&mut Answer| last.session == session.id && last.water == *water;
        if let Some(last) = self.last.as_mut().filter(is_same).filter(|last| waits.starts_with(&last.waits)) {
            return last.go_on(waits, rhythm, habit);
        }
        let earlier: Vec<EarlierDay> = self
            .earlier
            .iter()
            .map(|day| EarlierDay { waits: &day.waits, weight: weight(day, water.as_deref()) })
            .collect();
        let record = Record {
            today: &waits,
            earlier: &earlier,
            turn_round_min: rhythm.turn_round_min,
            bite_extra_min: rhythm.bite_extra_min,
            habit_min: habit,
        };
        let posterior = WaitPosterior::new(&record, &Settings::default()).ok()?;
        let advice = posterior.advice();
        let (session, water) = (session.id, water.clone());
        self.last = Some(Answer { session, water, waits, rhythm, habit, posterior, advice });
        Some(())
    }
}

/// The same water counts as a like day, any other less.
pub(super) fn weight(day: &Summary, water: Option<&str>) -> f64 {
    if water.is_some() && day.water.as_deref() == water { LIKE_DAY_WEIGHT } else { OTHER_DAY_WEIGHT }
}

/// What a snapshot of this version holds: what looking the log over compares with.
pub(super) fn snapshot_body(id: Uuid, ops: &[Op], version: u32) -> Option<Vec<u8>> {
    if version != SUMMARY_VERSION {
        return None;
    }
    serde_json::to_vec(&Summary::of(&fold(id, ops))).ok()
}

fn summary(store: &mut Store, row: &SessionRow) -> Result<Summary, StoreError> {
    let kept = store.snapshot(row.id)?.filter(|kept| kept.version == SUMMARY_VERSION);
    if let Some(summary) = kept.and_then(|kept| serde_json::from_slice(&kept.body).ok()) {
        return Ok(summary);
    }
    let (summary, kept) = made_anew(store, row)?;
    store.put_snapshots(&[kept])?;
    Ok(summary)
}

/// A summary made from the log, with the snapshot to keep of it.
pub(super) fn made_anew(store: &Store, row: &SessionRow) -> Result<(Summary, SnapshotRow), StoreError> {
    let session = fold(row.id, &store.ops_of(row.id)?);
    let summary = Summary::of(&session);
    let body = serde_json::to_vec(&summary).map_err(|e| CanonicalError::Unwritable(e.to_string()))?;
    let kept = SnapshotRow { session: row.id, ops: row.ops, last: row.last, version: SUMMARY_VERSION, body };
    Ok((summary, kept))
}
