//! What a tap writes, and what is read again after it.

use super::advisor::Advisor;
use super::club::Club;
use super::journal::{Beside, Committed};
use super::{Action, App, AppError, action, late, swim_typed};
use restwater_log::{Moment, Payload, is_kit};
use restwater_session::{check, check_swim};
use uuid::Uuid;

impl App {
    pub(super) fn log(&mut self, action: &Action, at: &Moment) -> Result<String, AppError> {
        let Some(mut payload) = action::payload(action, &self.draft) else { return Ok(String::new()) };
        if let Some(late) = late::outcome(self.session(), &payload, &self.on_line(at)) {
            return self.with_its_bite(payload, late, at);
        }
        check(self.session(), &payload)?;
        if let Some(session) = self.session() {
            check_swim(session, &payload, None)?;
        }
        if let Payload::PegPlaced { lat_e7, lon_e7, straight_out_cdeg } = payload {
            let degrees = |e7: i64| e7 as f64 / 1e7;
            payload = swim_typed::peg_placed(
                degrees(lat_e7),
                degrees(lon_e7),
                f64::from(straight_out_cdeg) / 100.0,
            )?;
        }
        if let Payload::SessionStarted(setup) = payload {
            return self.begin(setup, matches!(action, Action::StartSession { setup: None }), at);
        }
        let kind = payload.kind().to_owned();
        let ends = matches!(payload, Payload::SessionEnded);
        let session = self.session().map(|s| s.id);
        let session = session.unwrap_or_else(|| self.journal.new_id(at));
        self.write(session, payload, None, at)?;
        if ends {
            self.plan_used(at);
        }
        Ok(self.say_what("notice-logged", &kind))
    }

    /// Writes one entry. On an error nothing was stored.
    pub(super) fn write(
        &mut self,
        session: Uuid,
        payload: Payload,
        amends: Option<Uuid>,
        at: &Moment,
    ) -> Result<(), AppError> {
        let committed = self.journal.write(session, vec![(payload, amends)], at)?;
        self.after(&committed);
        Ok(())
    }

    /// Writes several entries of one session in one transaction; several form a group that is undone
    /// together.
    pub(super) fn write_all(
        &mut self,
        session: Uuid,
        payloads: Vec<Payload>,
        at: &Moment,
    ) -> Result<(), AppError> {
        let said = payloads.into_iter().map(|payload| (payload, None)).collect();
        let committed = self.journal.write(session, said, at)?;
        self.after(&committed);
        Ok(())
    }

    /// Work after an entry, which can't make it fail. The entry may change which session is today's, because
    /// one has begun or because its beginning was undone or redone. The earlier days are read again then, and
    /// also if one of them changed.
    pub(super) fn after(&mut self, committed: &Committed) {
        // Who logs is looking at now.
        self.swim.steps_back = 0;
        self.follow_place_of(committed.session);
        let today = self.session().map(|s| s.id);
        let before_today = today != Some(committed.session) && !is_kit(committed.session);
        if before_today || !self.advisor.is_of(today) {
            self.load_advisor();
            self.learning.forget_views();
        } else if is_kit(committed.session) {
            self.read_club();
        }
    }

    /// Reads the days before today's; if that fails, the app works without them.
    pub(super) fn load_advisor(&mut self) {
        let loaded = Advisor::load(&self.journal, self.phone.whose, &self.mine);
        let loaded = self.journal.beside(Beside::EarlierSessions, loaded);
        let today = self.session().map(|s| s.id);
        let club = Club::of(&self.own_things());
        self.advisor = loaded.unwrap_or_else(|| Advisor::of_today_alone(today, club));
    }

    /// Reads again what could not be read when it was due. If it still can't be read, the check says so.
    pub(super) fn catch_up(&mut self) {
        let today = self.session().map(|s| s.id);
        if self.journal.catch_up().is_ok() && !self.advisor.is_of(self.session().map(|s| s.id)) {
            self.load_advisor();
            self.learning.forget_views();
        }
        self.follow_session(today);
    }
}
