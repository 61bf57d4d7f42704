//! The Swim screen's own state and taps: the aimed cell, the moment shown, water kept back.

use super::error::within;
use super::feed::place_of;
use super::ring::NextCast;
use super::spots::{known_spot, spot_at};
use super::swim_typed::Typed;
use super::{App, AppError};
use restwater_log::{Moment, Payload, SwimSetup, WaterPlace};
use restwater_screen as screen;
use restwater_screen::{Arg, SwimPad, SwimScreen, SwimTap, SwimView};
use restwater_session::Logged;
use restwater_session::{
    NotNow, Session, Stamp, baits_of_others, check_swim, is_after_all_out, on_swim, planned_spot, point_of,
    swim_of, where_next,
};
use restwater_swim::{CellId, Detail, FeatureKind, SceneAsk, Spot, Step, Swim, SwimFigures, SwimScene};
use uuid::Uuid;
/// Minutes of one step of the replay.
const REPLAY_STEP_MIN: i64 = 10;
/// The distance to keep from a hazard set by a tap, in cm: a guess.
const CLEAR_CM: u32 = 300;

/// What the Swim screen remembers between taps; it is not part of the log.
#[derive(Debug, Clone, Default)]
pub(super) struct SwimState {
    /// The water aimed at. It is a place and not a cell, since bands, marks and casts change the cells; the cell is looked up
    /// when it is needed.
    pub(super) aimed: Option<Spot>,
    pub(super) pad: SwimPad,
    pub(super) steps_back: i64,
    pub(super) typed: Typed,
}

/// The canvas of the fan, as the shell has it.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct FanGlass {
    /// Width of the canvas in px.
    pub width_px: f64,
    /// Height of the canvas in px.
    pub height_px: f64,
    /// Px in a real millimetre.
    pub px_per_mm: f64,
    /// Text scale of the system.
    pub text_scale: f64,
    /// The small fan of the Bank screen, without words.
    pub small: bool,
}

impl FanGlass {
    fn ask(&self) -> Result<SceneAsk, AppError> {
        let mut ask = SceneAsk::new(self.width_px, self.height_px, self.px_per_mm, self.text_scale)?;
        ask.detail = if self.small { Detail::Small } else { Detail::Full };
        Ok(ask)
    }
}

/// The samples of the legend as a picture; their meanings are in the Swim screen's record.
pub fn swim_legend(glass: &FanGlass, words: &screen::Wording) -> Result<SwimScene, AppError> {
    Ok(restwater_swim::legend(&glass.ask()?, &screen::scene_words(words, false))?)
}

impl App {
    /// The picture of the swim.
    pub fn swim_scene(&mut self, now: &Moment, glass: &FanGlass) -> Result<SwimScene, AppError> {
        // Only the Swim screen says that it shows an earlier moment.
        let at = if glass.small { self.swim_now(now) } else { self.shown(now) };
        let (swim, figures, next) = self.next_at(&at)?;
        let session = self.session().ok_or(NotNow::NoSession)?;
        let mut ask = self.scene_ask(glass)?;
        ask.next = self.ring(session, &swim, &next, &at);
        ask.stay = self.stay(session, &swim, &next, ask.next).map(on_swim);
        let known = ask.next.and_then(|cell| known_spot(session, &swim, cell, self.chosen, &at));
        ask.spot = known.map(|known| on_swim(&known.spot));
        ask.chosen = self.aimed(&swim, ask.next);
        let words = screen::scene_words(self.words, screen::counts_in_yards(session, self.chosen));
        Ok(swim.scene(&figures, &ask, &words)?)
    }

    fn scene_ask(&self, glass: &FanGlass) -> Result<SceneAsk, AppError> {
        let mut ask = glass.ask()?;
        ask.hand = match self.settings.hand {
            super::Hand::Right => restwater_swim::Hand::Right,
            super::Hand::Left => restwater_swim::Hand::Left,
        };
        Ok(ask)
    }

    /// A tap on the picture, which aims at the cell there. Returns false for a tap beside the picture.
    pub fn swim_tap(&mut self, glass: &FanGlass, x: f64, y: f64) -> Result<bool, AppError> {
        let swim = swim_of(self.session().ok_or(NotNow::NoSession)?)?;
        let cell = swim.tapped(&self.scene_ask(glass)?, x, y)?;
        if let Some(cell) = cell {
            self.swim.aimed = swim.cell(cell)?.aim;
        }
        Ok(cell.is_some())
    }

    /// The Swim screen, or `None` if no session was ever begun.
    pub(super) fn swim_view(&mut self, now: &Moment) -> Result<SwimView, AppError> {
        let at = self.shown(now);
        let (swim, figures, next) = self.next_at(&at)?;
        let session = self.session().ok_or(NotNow::NoSession)?;
        let ring = self.ring(session, &swim, &next, &at);
        let aimed = self.aimed(&swim, ring);
        let known = aimed.and_then(|cell| known_spot(session, &swim, cell, self.chosen, &at));
        let planned = planned_spot(session).and_then(|spot| swim.cell_of(on_swim(&spot)));
        Ok(screen::swim_view(&SwimScreen {
            session,
            swim: &swim,
            figures: &figures,
            aimed,
            ring,
            known: known.as_ref().map(|known| (&known.spot, known.cast)),
            planned: planned.is_some() && planned == ring && planned == aimed,
            stay: self.stay(session, &swim, &next, ring),
            all_out: is_after_all_out(session, &at).then_some(self.chosen_cell(&swim).is_some()),
            next: &next.ranked,
            drift: swim.drift(at.at_ms),
            pad: self.swim.pad,
            rod: self.chosen,
            replay: (self.swim.steps_back > 0).then_some(&at.shown),
            steps_back: u32::try_from(self.swim.steps_back).unwrap_or(0),
            name: &self.swim.typed.name,
            place: self.swim.typed.place(session),
            weights: self.weights(),
            words: self.words,
        }))
    }

    /// The swim of the session, its figures and where next, as of a moment.
    fn next_at(&mut self, at: &Stamp) -> Result<(Swim, SwimFigures, NextCast), AppError> {
        let log = self.journal.in_memory();
        let session = self.journal.recent().current().map(|loaded| &loaded.session);
        let session = session.ok_or(NotNow::NoSession)?;
        let swim = swim_of(session)?;
        let figures = swim.figures(at.at_ms);
        let ranked = where_next(session, &swim, &figures, self.advisor.waits(session, log), at);
        // An earlier moment is shown as it was without what came after.
        let asked = self.swim.steps_back == 0 && session.running(self.chosen).is_some();
        let reading = asked.then(|| self.advisor.read(session, log, self.chosen, at)).flatten();
        let own = || swim.cell_of(on_swim(session.running(self.chosen)?.spot.as_ref()?));
        let spots = reading.and_then(|reading| reading.spots);
        let after_this = spots.and_then(|spots| spots.leave.move_to.or_else(own));
        let baits = baits_of_others(session, &swim, self.chosen);
        Ok((swim, figures, NextCast { ranked, after_this, baits }))
    }

    /// The cell with the corner marks: the one the angler chose, else the one proposed, else that of the last cast.
    fn aimed(&self, swim: &Swim, first: Option<CellId>) -> Option<CellId> {
        let last = || {
            let spot =
                self.session()?.casts.iter().rev().find(|cast| cast.rod == self.chosen)?.spot.as_ref()?;
            swim.cell_of(on_swim(spot))
        };
        self.chosen_cell(swim).or(first).or_else(last).or_else(|| swim.first_cell())
    }

    /// The cell that the angler chose, as long as it can be cast to.
    pub(super) fn chosen_cell(&self, swim: &Swim) -> Option<CellId> {
        let cell = swim.cell_of(self.swim.aimed?)?;
        swim.cell(cell).is_ok_and(|cell| cell.aim.is_some()).then_some(cell)
    }

    /// The place that the angler chose: the cell aimed at, or else the spot the rod is sent to. The app's proposal is never used:
    /// on other screens the angler doesn't see it.
    pub(super) fn aimed_place(&self) -> Result<WaterPlace, AppError> {
        self.shows_now()?;
        let session = self.session().ok_or(NotNow::NoSession)?;
        let swim = swim_of(session)?;
        if let Some(cell) = self.chosen_cell(&swim) {
            return middle_of(&swim, cell);
        }
        let sent = session.rod(self.chosen).and_then(|rod| rod.spot.as_ref()).map(place_of);
        // A spot from a file may be impossible.
        sent.filter(|place| point_of(*place).is_some()).ok_or(AppError::NoCell)
    }

    /// The place of the cell with the corner marks, for whoever looks at the map.
    pub(super) fn place_on_map(&mut self, now: &Moment) -> Result<WaterPlace, AppError> {
        self.shows_now()?;
        let at = self.swim_now(now);
        let (swim, _, next) = self.next_at(&at)?;
        let session = self.session().ok_or(NotNow::NoSession)?;
        let cell = self.aimed(&swim, self.ring(session, &swim, &next, &at)).ok_or(AppError::NoCell)?;
        middle_of(&swim, cell)
    }

    fn aim_at(&mut self, cell: CellId) -> Result<String, AppError> {
        let swim = swim_of(self.session().ok_or(NotNow::NoSession)?)?;
        let aim = swim.cell(cell).ok().and_then(|cell| cell.aim);
        let unknown = || AppError::unknown("cell", format_args!("{}, {}", cell.column, cell.row));
        self.swim.aimed = Some(aim.ok_or_else(unknown)?);
        Ok(String::new())
    }

    /// Now, or for a day that has ended its end, since the water was left as it was then.
    fn swim_now(&self, now: &Moment) -> Stamp {
        let now = self.on_line(now);
        let ended = self.session().and_then(|session| session.ended.clone());
        ended.filter(|ended| ended.at_ms < now.at_ms).unwrap_or(now)
    }

    /// The moment that is shown: now, or this many steps before.
    fn shown(&self, now: &Moment) -> Stamp {
        self.swim_now(now).before(self.swim.steps_back * REPLAY_STEP_MIN * 60_000)
    }

    /// Nothing is logged at the aim while an earlier moment is shown: without a choice the aim is the ring, which may be
    /// elsewhere now.
    fn shows_now(&self) -> Result<(), AppError> {
        if self.swim.steps_back > 0 { Err(AppError::EarlierShown) } else { Ok(()) }
    }

    /// LEFT, RIGHT, IN, OUT.
    pub(super) fn step_aim(&mut self, step: Step, at: &Moment) -> Result<String, AppError> {
        let at = self.shown(at);
        let (swim, _, next) = self.next_at(&at)?;
        let from = self.aimed(&swim, self.ring(self.session().ok_or(NotNow::NoSession)?, &swim, &next, &at));
        self.swim.aimed = from.and_then(|cell| swim.cell(swim.step(cell, step)).ok()?.aim);
        Ok(String::new())
    }

    /// EARLIER and LATER; 0 is now.
    pub(super) fn replay(&mut self, steps_back: u32, at: &Moment) -> Result<String, AppError> {
        let session = self.session().ok_or(NotNow::NoSession)?;
        let begun = session.started.as_ref().map_or(0, |start| self.swim_now(at).ms_since(start));
        let most = (begun / (REPLAY_STEP_MIN * 60_000)).max(0);
        self.swim.steps_back = i64::from(steps_back).min(most);
        Ok(String::new())
    }

    /// The Swim screen was left: aiming from another screen refers to the present.
    pub(super) fn leave_swim(&mut self) {
        self.swim.steps_back = 0;
    }

    /// Keeps the aimed cell back, casts to it or marks it, as one op.
    pub(super) fn at_aim(&mut self, what: &AtAim, at: &Moment) -> Result<String, AppError> {
        self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        self.shows_now()?;
        let shown = self.swim_now(at);
        let (swim, _, next) = self.next_at(&shown)?;
        let session = self.session().ok_or(NotNow::NoSession)?;
        let cell = self.aimed(&swim, self.ring(session, &swim, &next, &shown)).ok_or(AppError::NoCell)?;
        let payload = self.payload_at(what, session, &swim, cell, &shown)?;
        check_swim(session, &payload, None)?;
        let (id, kind) = (session.id, payload.kind().to_owned());
        // Who casts into kept-back water releases it by that.
        let released = if matches!(what, AtAim::Cast) { kept_at(session, &swim, cell) } else { Vec::new() };
        let released = released.into_iter().map(|kept| Payload::Released { kept });
        self.write_all(id, std::iter::once(payload).chain(released).collect(), at)?;
        match what {
            AtAim::Cast | AtAim::Keep => (self.swim.aimed, self.swim.pad) = (None, SwimPad::Plain),
            // The ring leaves water that is no longer kept back, and the angler stays with it.
            AtAim::Release => self.swim.aimed = swim.cell(cell)?.aim,
            AtAim::Mark { .. } | AtAim::Feature { .. } | AtAim::Hazard { .. } => self.swim.typed.name.clear(),
        }
        Ok(self.say_what("notice-logged", &kind))
    }

    fn payload_at(
        &self,
        what: &AtAim,
        session: &Session,
        swim: &Swim,
        id: CellId,
        at: &Stamp,
    ) -> Result<Payload, AppError> {
        let cell = swim.cell(id)?;
        let spot = cell.aim.ok_or(AppError::NoCell)?;
        let (bearing_cdeg, range_cm) = (cdeg(spot.bearing_deg), cm(spot.range_m));
        let typed = self.swim.typed.name.trim();
        Ok(match what {
            AtAim::Cast => {
                let spot = spot_at(session, swim, id, self.chosen, at).ok_or(AppError::NoCell)?;
                Payload::SpotSet { rod: self.chosen, spot }
            }
            AtAim::Keep => {
                let sector = &cell.sector;
                Payload::KeptBack {
                    from_cdeg: cdeg(sector.from_deg),
                    to_cdeg: cdeg(sector.to_deg),
                    from_cm: cm(sector.inner_m),
                    to_cm: cm(sector.outer_m),
                }
            }
            AtAim::Release => {
                let kept = kept_at(session, swim, id).first().copied().ok_or(AppError::NoCell)?;
                Payload::Released { kept }
            }
            AtAim::Mark { name } => {
                // A mark without a name gets a number, so that nothing has to be typed while fishing.
                let name = [name.trim(), typed].into_iter().find(|n| !n.is_empty());
                let name = name.map_or_else(|| self.next_mark(session), str::to_owned);
                Payload::MarkSet { name, bearing_cdeg }
            }
            AtAim::Feature { feature } => Payload::FeatureSet {
                feature: feature.logged(),
                name: typed.to_owned(),
                bearing_cdeg,
                range_cm,
            },
            AtAim::Hazard { name } => {
                let name = if typed.is_empty() { name.clone() } else { typed.to_owned() };
                Payload::HazardSet { name, bearing_cdeg, range_cm, clear_cm: CLEAR_CM }
            }
        })
    }

    /// "Mark 4": the first number that no mark has.
    fn next_mark(&self, session: &Session) -> String {
        let numbered =
            |n: usize| self.words.say_with("mark-numbered", &[("number", Arg::Text(&n.to_string()))]);
        let free = |name: &String| session.marks.iter().all(|m| m.name != *name);
        // With one more number than there are marks, at least one is free.
        let first = session.marks.len() + 1;
        (first..=2 * first).map(numbered).find(free).unwrap_or_default()
    }

    /// One of the choices of the Swim screen.
    pub(super) fn swim_choice(&mut self, tap: &SwimTap, at: &Moment) -> Result<String, AppError> {
        match tap {
            SwimTap::Cell { cell } => return self.aim_at(*cell),
            SwimTap::Steps { open } => {
                self.session().ok_or(NotNow::NoSession)?;
                self.swim.pad = if *open { SwimPad::Steps } else { SwimPad::Plain };
                return Ok(String::new());
            }
            SwimTap::Feature { feature } => return self.at_aim(&AtAim::Feature { feature: *feature }, at),
            SwimTap::Hazard { hazard } => {
                let name = self.words.say(hazard.id());
                return self.at_aim(&AtAim::Hazard { name }, at);
            }
            SwimTap::Seen { sign } => {
                self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
                let place = self.place_on_map(at)?;
                return self.fish_shown(*sign, place, true, at);
            }
            SwimTap::Feed { what, measure } => return self.feed_on_map(*what, *measure, at),
            SwimTap::Rename { id } => return self.rename(*id, at),
            SwimTap::Remove { thing } => return self.remove(*thing, at),
            _ => {}
        }
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let setup = with_swim(session.swim.clone(), tap)?;
        // A boundary that can't be drawn is refused before it is logged.
        let (id, payload) = (session.id, Payload::SwimSet(setup));
        check_swim(session, &payload, None)?;
        self.write(id, payload, None, at)?;
        Ok(self.say_what("notice-logged", "swim_set"))
    }
}

fn cdeg(deg: f64) -> i32 {
    libm::round(deg * 100.0) as i32
}

fn cm(m: f64) -> u32 {
    libm::round(m.max(0.0) * 100.0) as u32
}

/// The kept-back water that holds the middle of a cell.
fn kept_at(session: &Session, swim: &Swim, cell: CellId) -> Vec<Uuid> {
    let Some(aim) = swim.cell(cell).ok().and_then(|cell| cell.aim) else { return Vec::new() };
    let (bearing_cdeg, range_cm) = (cdeg(aim.bearing_deg), cm(aim.range_m));
    let holds = |kept: &&restwater_session::KeptBack| {
        let ((from, to), (near, far)) = (kept.bearing_cdeg, kept.range_cm);
        kept.released.is_none() && (from..to).contains(&bearing_cdeg) && (near..far).contains(&range_cm)
    };
    session.kept_back.iter().filter(holds).map(|kept| kept.id).collect()
}

/// The place in a cell at which casts to it are aimed.
fn middle_of(swim: &Swim, cell: CellId) -> Result<WaterPlace, AppError> {
    let spot = swim.cell(cell)?.aim.ok_or(AppError::NoCell)?;
    Ok(WaterPlace { bearing_cdeg: cdeg(spot.bearing_deg), range_cm: cm(spot.range_m) })
}

/// What is done with the aimed cell.
pub(super) enum AtAim {
    Cast,
    Keep,
    Release,
    Mark { name: String },
    Feature { feature: FeatureKind },
    Hazard { name: String },
}

/// No distance on a swim is longer, cm.
const FURTHEST_CM: u32 = 25_000;
/// Nobody rests water for longer, minutes.
const LONGEST_REST_MIN: u32 = 25_000;

/// The swim's set-up with one thing changed; other taps leave it as it is.
fn with_swim(mut setup: SwimSetup, tap: &SwimTap) -> Result<SwimSetup, AppError> {
    let distance = |field, cm: Option<u32>| cm.map(|cm| within(field, cm, 1, FURTHEST_CM)).transpose();
    match tap {
        SwimTap::LeftPeg { cm } => setup.left_peg_cm = distance("left", *cm)?,
        SwimTap::RightPeg { cm } => setup.right_peg_cm = distance("right", *cm)?,
        SwimTap::FarBank { cm } => setup.far_bank_cm = distance("far", *cm)?,
        SwimTap::FarBankPegged { pegged } => setup.far_bank_pegged = *pegged,
        SwimTap::RestTarget { minutes } => {
            setup.rest_target_min = within("rest", *minutes, 1, LONGEST_REST_MIN)?;
        }
        SwimTap::Band { cm } => setup.band_cm = distance("band", *cm)?,
        _ => {}
    }
    Ok(setup)
}
