//! Conditions and cautions: what the Conditions and Cautions screens do.

use super::{App, AppError};
use restwater_caution::shown::{Occasion, to_show};
use restwater_log::{LeadMaterial, Moment, Payload};
use restwater_screen as screen;
use restwater_screen::{CautionsInput, LeavesView, choice_of, region_of, step_of};
use restwater_session::Logged;
use restwater_session::{NotNow, Session};
use restwater_sky::conditions::{Conditions, Step, next_step, with};

/// What was answered or passed over of this round of questions; not part of the log.
#[derive(Debug, Clone, Default)]
pub(super) struct Asking {
    /// Everything is asked again.
    again: bool,
    done: Vec<Step>,
}

impl Asking {
    fn step(&self, now: &Conditions) -> Option<Step> {
        if !self.again {
            return next_step(now, &self.done);
        }
        // Asked again, nothing is known but the wind that was just answered: a calm has no direction.
        let wind = now.wind.filter(|_| self.done.contains(&Step::Wind));
        next_step(&Conditions { wind, ..Conditions::default() }, &self.done)
    }
}

impl App {
    /// The Conditions screen.
    pub(super) fn conditions(&self) -> LeavesView {
        let session = self.session().filter(|s| s.is_open());
        let step = session.and_then(|session| self.asking.step(&session.conditions_now()));
        screen::conditions(&self.words, session, step)
    }

    /// A key of the Conditions screen: each answer is logged at once.
    pub(super) fn choose_conditions(
        &mut self,
        field: &str,
        value: &str,
        at: &Moment,
    ) -> Result<String, AppError> {
        let unknown = || AppError::unknown(field, value);
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let (id, now) = (session.id, session.conditions_now());
        match field {
            "again" => self.asking = Asking { again: true, done: Vec::new() },
            "skip" => self.asking.done.push(step_of(value).ok_or_else(unknown)?),
            _ => {
                let step = step_of(field).ok_or_else(unknown)?;
                let next = with(now, choice_of(step, value).ok_or_else(unknown)?)?;
                self.write(id, Payload::ConditionsSet(next.logged()), None, at)?;
                self.asking.done.push(step);
                return Ok(self.say_what("notice-logged", "conditions_set"));
            }
        }
        Ok(String::new())
    }

    /// The Cautions screen.
    pub(super) fn cautions(&mut self) -> Result<LeavesView, AppError> {
        let kit = self.kit()?;
        let (peg, peg_words) = self.peg();
        Ok(screen::cautions(&CautionsInput {
            region: self.region,
            occasion: self.occasion(),
            peg: &peg,
            peg_words: &peg_words,
            seen: &kit.seen,
            words: &self.words,
        }))
    }

    /// A choice or a key of the Cautions screen.
    pub(super) fn choose_cautions(
        &mut self,
        field: &str,
        value: &str,
        at: &Moment,
    ) -> Result<String, AppError> {
        let unknown = || AppError::unknown(field, value);
        match field {
            "region" => {
                self.choose_region(region_of(value).ok_or_else(unknown)?)?;
                Ok(String::new())
            }
            "seen" => {
                let open = self.cautions_to_show()?;
                let cautions: Vec<String> =
                    open.into_iter().filter(|id| value == "all" || value == *id).map(str::to_owned).collect();
                if cautions.is_empty() {
                    return Err(unknown());
                }
                let (peg, _) = self.peg();
                self.log_kit(vec![Payload::CautionsSeen { peg, cautions }], at)
            }
            _ => Err(unknown()),
        }
    }

    /// Ids of the cautions not yet put away at this peg.
    pub(super) fn cautions_to_show(&mut self) -> Result<Vec<&'static str>, AppError> {
        let seen = self.kit()?.seen;
        let (peg, _) = self.peg();
        Ok(to_show(self.region, &self.occasion(), &peg, &seen).into_iter().map(|c| c.id).collect())
    }

    /// The peg as its cautions are keyed, and in words: that of the open session, else the one being set up.
    fn peg(&self) -> (String, String) {
        let session = self.session().filter(|s| s.is_open());
        let setup = session.map_or(&self.draft, |session| &session.setup);
        let names: Vec<&str> = [&setup.water, &setup.peg].into_iter().flatten().map(String::as_str).collect();
        if setup.peg.is_none() {
            // A peg without a name is asked at each session.
            let id = session.map(|session| session.id.to_string()).unwrap_or_default();
            return (id, String::new());
        }
        (names.join(" / "), names.join(", "))
    }

    fn occasion(&self) -> Occasion {
        let session = self.session().filter(|s| s.is_open());
        let now = session.map(Session::conditions_now).unwrap_or_default();
        Occasion { air: now.air, water: now.water, lead: session.and_then(lead), ..Occasion::default() }
    }
}

/// Whether lead is on a line, as far as the rigs say.
fn lead(session: &Session) -> Option<bool> {
    let metals: Vec<LeadMaterial> = session.rods.iter().filter_map(|rod| rod.rig.material).collect();
    if metals.contains(&LeadMaterial::Lead) {
        return Some(true);
    }
    (metals.len() == session.rods.len() && !metals.is_empty()).then_some(false)
}
