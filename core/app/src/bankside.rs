//! The taps of the Conditions and Cautions screens.

use super::{App, AppError};
use restwater_caution::shown::{Occasion, Seen, to_show};
use restwater_log::{LeadMaterial, Moment, Payload};
use restwater_screen as screen;
use restwater_screen::{CautionsInput, CautionsTap, ConditionsTap, LeavesView};
use restwater_session::Logged;
use restwater_session::{NotNow, Session};
use restwater_sky::conditions::{Answer, Conditions, Question, next_question, with};

/// Which questions of this round were answered or skipped; not part of the log.
#[derive(Debug, Clone, Default)]
pub(super) struct Asking {
    /// All questions are asked again.
    again: bool,
    done: Vec<Question>,
}

impl Asking {
    fn question(&self, now: &Conditions) -> Option<Question> {
        if !self.again {
            return next_question(now, &self.done);
        }
        // When all is asked again, only a wind that was just answered is known. It matters here because a
        // calm has no direction.
        let wind = now.wind.filter(|_| self.done.contains(&Question::Wind));
        next_question(&Conditions { wind, ..Conditions::default() }, &self.done)
    }
}

impl App {
    /// The Conditions screen.
    pub(super) fn conditions(&self) -> LeavesView {
        let session = self.session().filter(|s| s.is_open());
        let question = session.and_then(|session| self.asking.question(&session.conditions_now()));
        screen::conditions(self.words, session, question)
    }

    /// A key of the Conditions screen: each answer is logged at once.
    pub(super) fn conditions_tap(&mut self, tap: ConditionsTap, at: &Moment) -> Result<String, AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let (id, now) = (session.id, session.conditions_now());
        match tap {
            ConditionsTap::Again => self.asking = Asking { again: true, done: Vec::new() },
            ConditionsTap::Skip { question } => self.asking.done.push(question),
            ConditionsTap::Answer { answer } => {
                let next = with(now, answer)?;
                self.write(id, Payload::ConditionsSet(next.logged()), None, at)?;
                self.asking.done.push(answered(answer));
                return Ok(self.say_what("notice-logged", "conditions_set"));
            }
        }
        Ok(String::new())
    }

    /// The Cautions screen.
    pub(super) fn cautions(&self) -> LeavesView {
        let seen = self.cautions_seen();
        let (peg, peg_words) = self.peg();
        screen::cautions(&CautionsInput {
            region: self.region.now(),
            occasion: self.occasion(),
            peg: &peg,
            peg_words: &peg_words,
            seen: &seen,
            words: self.words,
        })
    }

    /// A choice or a key of the Cautions screen.
    pub(super) fn cautions_tap(&mut self, tap: &CautionsTap, at: &Moment) -> Result<String, AppError> {
        let open = self.cautions_to_show();
        let seen: Vec<&'static str> = match tap {
            CautionsTap::Region { region } => {
                self.choose_region(*region)?;
                return Ok(String::new());
            }
            CautionsTap::Seen { caution } => open.into_iter().filter(|id| id == caution).collect(),
            CautionsTap::AllSeen => open,
        };
        if seen.is_empty() {
            return Err(AppError::NoSuchCaution);
        }
        let (peg, _) = self.peg();
        let cautions = seen.into_iter().map(str::to_owned).collect();
        self.log_own(Payload::CautionsSeen { peg, cautions }, at)
    }

    /// Ids of the cautions not yet dismissed at this peg.
    pub(super) fn cautions_to_show(&self) -> Vec<&'static str> {
        let seen = self.cautions_seen();
        let (peg, _) = self.peg();
        to_show(self.region.now(), &self.occasion(), &peg, &seen).into_iter().map(|c| c.id).collect()
    }

    /// What the angler has read, and at which peg.
    fn cautions_seen(&self) -> Vec<Seen> {
        restwater_kit::fold(&self.own_things(), &[], &[]).seen
    }

    /// The key under which cautions of the peg are stored, and its name: the peg of the open session, otherwise the one being set
    /// up.
    fn peg(&self) -> (String, String) {
        let session = self.session().filter(|s| s.is_open());
        let setup = session.map_or(&self.draft, |session| &session.setup);
        let names: Vec<&str> = [&setup.water, &setup.peg].into_iter().flatten().map(String::as_str).collect();
        let peg = |peg: &String| screen::peg_words(self.words, peg);
        let peg_words: Vec<String> =
            setup.water.clone().into_iter().chain(setup.peg.as_ref().map(peg)).collect();
        if setup.water.is_none() || setup.peg.is_none() {
            // Without the names of water and peg it may be any peg, so the cautions are new in each session, and before each
            // START.
            let id = match (session, self.session()) {
                (Some(open), _) => open.id.to_string(),
                (None, Some(last)) => format!("{} after {}", names.join(" / "), last.id),
                (None, None) => names.join(" / "),
            };
            return (id, self.words.listed(&peg_words));
        }
        (names.join(" / "), self.words.listed(&peg_words))
    }

    fn occasion(&self) -> Occasion {
        let session = self.session().filter(|s| s.is_open());
        let now = session.map(Session::conditions_now).unwrap_or_default();
        Occasion { air: now.air, water: now.water, lead: session.and_then(lead), ..Occasion::default() }
    }
}

/// The question that an answer belongs to.
fn answered(answer: Answer) -> Question {
    match answer {
        Answer::Water(_) => Question::Water,
        Answer::Air(_) => Question::Air,
        Answer::Wind(_) => Question::Wind,
        Answer::WindFrom(_) => Question::WindFrom,
        Answer::Cloud(_) => Question::Cloud,
        Answer::Colour(_) => Question::Colour,
    }
}

/// Whether there is lead on a line, as far as the rigs show.
fn lead(session: &Session) -> Option<bool> {
    let metals: Vec<LeadMaterial> = session.rods.iter().filter_map(|rod| rod.rig.material).collect();
    if metals.contains(&LeadMaterial::Lead) {
        return Some(true);
    }
    (metals.len() == session.rods.len() && !metals.is_empty()).then_some(false)
}
