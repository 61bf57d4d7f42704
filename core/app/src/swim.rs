//! The Swim screen's own state and taps: the aimed cell, the moment shown, water kept back.

use super::error::within;
use super::swim_typed::Typed;
use super::{App, AppError};
use restwater_log::{Moment, Payload, Spot, SwimSetup};
use restwater_screen as screen;
use restwater_screen::{Arg, Picking, SwimScreen, SwimTap, SwimView};
use restwater_session::Logged;
use restwater_session::{NotNow, Session, Stamp, check_swim, reach_near, swim_of};
use restwater_swim::{CellId, ColumnName, Detail, FeatureKind, SceneAsk, Step, Swim, SwimScene};
use uuid::Uuid;

/// Minutes of one step of the replay.
const REPLAY_STEP_MIN: i64 = 10;
/// How far to keep clear of a hazard set by a tap, in cm: a guess, changed by mending.
const CLEAR_CM: u32 = 300;

/// What the Swim screen remembers between taps; it is not part of the log.
#[derive(Debug, Clone, Default)]
pub(super) struct SwimState {
    aimed: Option<CellId>,
    picking: Picking,
    steps_back: i64,
    pub(super) typed: Typed,
}

/// A glass for the fan, as the shell has it.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct FanGlass {
    /// Width of the canvas in px.
    pub width_px: f64,
    /// Height of the canvas in px.
    pub height_px: f64,
    /// Px in a millimetre of the glass.
    pub px_per_mm: f64,
    /// Text scale of the system.
    pub text_scale: f64,
    /// The small fan of the Bank screen, without words.
    pub small: bool,
}

impl App {
    /// The picture of the swim.
    pub fn swim_scene(&self, now: &Moment, glass: &FanGlass) -> Result<SwimScene, AppError> {
        let session = self.session().ok_or(NotNow::NoSession)?;
        let swim = swim_of(session)?;
        let at = self.shown(now);
        let figures = swim.figures(at.at_ms);
        let next = swim.where_next(&figures);
        let aimed = self.aimed(&swim, next.ranked.first().map(|n| n.cell));
        let mut ask = SceneAsk::new(glass.width_px, glass.height_px, glass.px_per_mm, glass.text_scale)?;
        ask.hand = match self.settings.hand {
            super::Hand::Right => restwater_swim::Hand::Right,
            super::Hand::Left => restwater_swim::Hand::Left,
        };
        ask.detail = if glass.small { Detail::Small } else { Detail::Full };
        ask.next = aimed;
        Ok(swim.scene(&figures, &ask, &screen::scene_words(&self.words))?)
    }

    /// A tap on the picture: aims at the cell it means; false beside the picture.
    pub fn swim_tap(&mut self, now: &Moment, glass: &FanGlass, x: f64, y: f64) -> Result<bool, AppError> {
        let cell = self.swim_scene(now, glass)?.hit(x as f32, y as f32);
        if cell.is_some() {
            (self.swim.aimed, self.swim.picking) = (cell, Picking::Done);
        }
        Ok(cell.is_some())
    }

    /// The Swim screen; none where no session was ever begun.
    pub(super) fn swim_view(&self, now: &Moment) -> Result<SwimView, AppError> {
        let session = self.session().ok_or(NotNow::NoSession)?;
        let swim = swim_of(session)?;
        let at = self.shown(now);
        let figures = swim.figures(at.at_ms);
        let next = swim.where_next(&figures);
        Ok(screen::swim_view(&SwimScreen {
            session,
            swim: &swim,
            figures: &figures,
            aimed: self.aimed(&swim, next.ranked.first().map(|n| n.cell)),
            next: &next,
            drift: swim.drift(at.at_ms),
            picking: self.picking(&swim),
            rod: self.chosen,
            replay: (self.swim.steps_back > 0).then_some(&at.shown),
            steps_back: u32::try_from(self.swim.steps_back).unwrap_or(0),
            name: &self.swim.typed.name,
            place: self.swim.typed.place(session),
            words: &self.words,
        }))
    }

    fn aimed(&self, swim: &Swim, first: Option<CellId>) -> Option<CellId> {
        let chosen = self.swim.aimed.filter(|id| swim.cell(*id).is_ok_and(|cell| cell.aim.is_some()));
        chosen.or(first).or_else(|| swim.first_cell())
    }

    /// A ray that is no longer there, as after a mark was taken away, is asked for again.
    fn picking(&self, swim: &Swim) -> Picking {
        match self.swim.picking {
            Picking::Cell(ray) if swim.cells_of_ray(ray).is_empty() => Picking::Ray,
            as_it_is => as_it_is,
        }
    }

    /// A ray is picked. A ray with one band is picked already.
    fn pick_ray(&mut self, ray: u32) -> Result<String, AppError> {
        let swim = swim_of(self.session().ok_or(NotNow::NoSession)?)?;
        match swim.cells_of_ray(ray as usize).as_slice() {
            [] => return Err(AppError::unknown("ray", ray)),
            [only] => (self.swim.aimed, self.swim.picking) = (Some(*only), Picking::Done),
            _ => self.swim.picking = Picking::Cell(ray as usize),
        }
        Ok(String::new())
    }

    fn pick_cell(&mut self, cell: CellId) -> Result<String, AppError> {
        let swim = swim_of(self.session().ok_or(NotNow::NoSession)?)?;
        if !swim.cell(cell).is_ok_and(|cell| cell.aim.is_some()) {
            return Err(AppError::unknown("cell", format_args!("{}, {}", cell.column, cell.row)));
        }
        (self.swim.aimed, self.swim.picking) = (Some(cell), Picking::Done);
        Ok(String::new())
    }

    /// The moment that is shown: now, or so many steps before.
    fn shown(&self, now: &Moment) -> Stamp {
        self.on_line(now).before(self.swim.steps_back * REPLAY_STEP_MIN * 60_000)
    }

    /// LEFT, RIGHT, IN, OUT.
    pub(super) fn step_aim(&mut self, step: Step, at: &Moment) -> Result<String, AppError> {
        let swim = swim_of(self.session().ok_or(NotNow::NoSession)?)?;
        let next = swim.where_next(&swim.figures(self.shown(at).at_ms));
        let from = self.aimed(&swim, next.ranked.first().map(|n| n.cell));
        self.swim.aimed = from.map(|cell| swim.step(cell, step));
        Ok(String::new())
    }

    /// EARLIER and LATER; 0 is now.
    pub(super) fn replay(&mut self, steps_back: u32, at: &Moment) -> Result<String, AppError> {
        let session = self.session().ok_or(NotNow::NoSession)?;
        let begun = session.started.as_ref().map_or(0, |start| self.on_line(at).ms_since(start));
        let most = (begun / (REPLAY_STEP_MIN * 60_000)).max(0);
        self.swim.steps_back = i64::from(steps_back).min(most);
        Ok(String::new())
    }

    /// What the aimed cell is kept back as, cast to, or marked as: one op.
    pub(super) fn at_aim(&mut self, what: &AtAim, at: &Moment) -> Result<String, AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let swim = swim_of(session)?;
        let next = swim.where_next(&swim.figures(self.on_line(at).at_ms));
        let cell = self.aimed(&swim, next.ranked.first().map(|n| n.cell)).ok_or(AppError::NoCell)?;
        let payload = self.payload_at(what, session, &swim, cell)?;
        check_swim(session, &payload, None)?;
        let (id, kind) = (session.id, payload.kind().to_owned());
        self.write(id, payload, None, at)?;
        match what {
            AtAim::Cast | AtAim::Keep => (self.swim.aimed, self.swim.picking) = (None, Picking::Ray),
            AtAim::Release => {}
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
    ) -> Result<Payload, AppError> {
        let cell = swim.cell(id)?;
        let spot = cell.aim.ok_or(AppError::NoCell)?;
        let cdeg = |deg: f64| libm::round(deg * 100.0) as i32;
        let cm = |m: f64| libm::round(m.max(0.0) * 100.0) as u32;
        let (bearing_cdeg, range_cm) = (cdeg(spot.bearing_deg), cm(spot.range_m));
        let typed = self.swim.typed.name.trim();
        Ok(match what {
            AtAim::Cast => {
                let present = session.rod(self.chosen).and_then(|rod| rod.spot.clone());
                let like = present.unwrap_or_else(|| screen::first_spot(session));
                let reach = reach_near(spot.range_m, like.reach);
                let mark = mark_of(swim, id);
                Payload::SpotSet {
                    rod: self.chosen,
                    spot: Spot { mark, bearing_cdeg, reach, clipped: like.clipped },
                }
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
                let holds = |kept: &&restwater_session::KeptBack| {
                    let (from, to) = kept.bearing_cdeg;
                    let (near, far) = kept.range_cm;
                    kept.released.is_none()
                        && (from..=to).contains(&bearing_cdeg)
                        && (near..=far).contains(&range_cm)
                };
                let kept = session.kept_back.iter().find(holds).ok_or(AppError::NoCell)?.id;
                Payload::Released { kept }
            }
            AtAim::Mark { name } => {
                // Nothing has to be typed while fishing: a mark without a name is numbered.
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
        // One more number than there are marks: one of them is free.
        let first = session.marks.len() + 1;
        (first..=2 * first).map(numbered).find(free).unwrap_or_default()
    }

    /// One of the choices of the Swim screen.
    pub(super) fn swim_choice(&mut self, tap: &SwimTap, at: &Moment) -> Result<String, AppError> {
        match tap {
            SwimTap::Ray { ray } => return self.pick_ray(*ray),
            SwimTap::Cell { cell } => return self.pick_cell(*cell),
            SwimTap::Rays => {
                self.session().ok_or(NotNow::NoSession)?;
                self.swim.picking = Picking::Ray;
                return Ok(String::new());
            }
            SwimTap::Feature { feature } => return self.at_aim(&AtAim::Feature { feature: *feature }, at),
            SwimTap::Hazard { hazard } => {
                let name = self.words.say(hazard.id());
                return self.at_aim(&AtAim::Hazard { name }, at);
            }
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

/// What is done with the aimed cell.
pub(super) enum AtAim {
    Cast,
    Keep,
    Release,
    Mark { name: String },
    Feature { feature: FeatureKind },
    Hazard { name: String },
}

fn mark_of(swim: &Swim, id: CellId) -> Option<Uuid> {
    match swim.columns().columns.get(id.column as usize)?.name {
        ColumnName::On(i) => swim.columns().marks.get(i as usize)?.id.parse().ok(),
        _ => None,
    }
}

/// No distance on a swim is longer, cm.
const FURTHEST_CM: u32 = 25_000;
/// Nobody rests water for longer, minutes.
const LONGEST_REST_MIN: u32 = 25_000;

/// The swim's setting with one thing changed; what is no part of it leaves it as it is.
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
