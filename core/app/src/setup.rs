//! Setting up: the draw, the last set-up taken over, the pack list, and the entries a session begins with.

use super::{App, AppError, settings};
use restwater_bench::pack::{DayPlan, Packed, list};
use restwater_log::{Moment, Payload, SessionSetup};
use restwater_screen as screen;
use restwater_screen::{SetupInput, SetupView};
use restwater_session::Logged;
use restwater_session::{LandmarkKind, Session, fold};
use restwater_sky::daylight::{Place, daylight};
use restwater_store::Store;
use uuid::Uuid;

const COPY: &str = "setup-copy";
const PACKED: &str = "packed";
/// A day shorter than this before sunset may end in the dark: a choice, on the careful side.
const LONG_DAY_MS: i64 = 9 * 3_600_000;
/// Air at or below this may freeze, tenths of a degree: as for the cautions.
const FROST_AIR: i16 = 30;
/// Of each lead, one and a spare.
const LEADS: u16 = 2;

/// What is chosen on the set-up screen beside the set-up itself; it belongs to the phone.
#[derive(Default)]
pub(super) struct SetupState {
    copy: Option<Uuid>,
    packed: Vec<String>,
}

impl SetupState {
    pub(super) fn load(store: &Store) -> Result<Self, AppError> {
        let copy = store.setting(COPY)?.and_then(|text| text.parse().ok());
        Ok(Self { copy, packed: settings::read(store, PACKED)? })
    }
}

impl App {
    /// The set-up screen.
    pub(super) fn setup(&mut self, now: &Moment) -> Result<SetupView, AppError> {
        let cautions = self.cautions_to_show()?.len();
        let pack = self.pack(now)?;
        let last = self.last_day().map(|(_, day)| screen::day_words(&self.words, day));
        Ok(screen::setup(&SetupInput {
            draft: &self.draft,
            last,
            copies: self.setup.copy.is_some(),
            pack: &pack,
            cautions,
            words: &self.words,
        }))
    }

    /// The last session this phone knows of.
    fn last_day(&self) -> Option<(Uuid, &restwater_session::Summary)> {
        self.sessions.days().next()
    }

    /// One of the choices of the set-up screen, or a text typed there.
    pub(super) fn choose_setup_row(&mut self, field: &str, value: &str) -> Result<String, AppError> {
        let unknown = || AppError::unknown(field, value);
        match (field, value) {
            ("copy", "none") => self.set_copy(None)?,
            ("copy", "last") => {
                self.sessions.refresh(&mut self.store)?;
                let id = self.last_day().ok_or_else(unknown)?.0;
                let session = fold(id, &self.store.ops_of(id)?);
                settings::save_draft(&mut self.store, &session.setup)?;
                self.draft = session.setup;
                self.set_copy(Some(id))?;
            }
            ("pack", item) => {
                // An item as the list spells it; what is no item is no choice.
                serde_json::from_str::<restwater_bench::pack::Item>(item).map_err(|_| unknown())?;
                match self.setup.packed.iter().position(|packed| packed == item) {
                    Some(i) => drop(self.setup.packed.remove(i)),
                    None => self.setup.packed.push(item.to_owned()),
                }
                self.save_packed()?;
            }
            _ => return self.choose_setup(field, value),
        }
        Ok(String::new())
    }

    fn set_copy(&mut self, copy: Option<Uuid>) -> Result<(), AppError> {
        self.store.set_setting(COPY, &copy.map_or_else(String::new, |id| id.to_string()))?;
        self.setup.copy = copy;
        Ok(())
    }

    fn save_packed(&mut self) -> Result<(), AppError> {
        settings::write(&mut self.store, PACKED, &self.setup.packed)
    }

    /// What a session begins with: its set-up, and where the last one is copied its rigs, and at the same peg its spots,
    /// marks, bounds and landmarks.
    pub(super) fn beginning(&self, setup: &SessionSetup) -> Result<Vec<Payload>, AppError> {
        let mut payloads = vec![Payload::SessionStarted(setup.clone())];
        if let Some(id) = self.setup.copy {
            payloads.extend(copied(&fold(id, &self.store.ops_of(id)?), setup));
        }
        Ok(payloads)
    }

    /// A session has begun: what was chosen for it is used up.
    pub(super) fn setup_used(&mut self) -> Result<(), AppError> {
        self.set_copy(None)?;
        self.setup.packed.clear();
        self.save_packed()
    }

    /// What to pack, with what is packed.
    fn pack(&mut self, now: &Moment) -> Result<Vec<(Packed, bool)>, AppError> {
        let kit = self.kit()?;
        let last = self.last_day().map(|(id, _)| id);
        let last = last.map(|id| Ok::<_, AppError>(fold(id, &self.store.ops_of(id)?))).transpose()?;
        let wanted = if kit.wanted.tied().is_empty() { kit.wallet.tied() } else { kit.wanted.tied() };
        let mut plan = DayPlan {
            rods: self.draft.rods.into(),
            hooklengths: wanted.to_vec(),
            dark: self.may_end_dark(now),
            frost: true,
            ..DayPlan::default()
        };
        if let Some(last) = &last {
            plan.frost = last.conditions_now().air.is_none_or(|air| air <= FROST_AIR);
            tackle_of(last, &mut plan);
        }
        let packed = |item: Packed| {
            let text = serde_json::to_string(&item.item).unwrap_or_default();
            let done = self.setup.packed.contains(&text);
            (item, done)
        };
        Ok(list(&plan).into_iter().map(packed).collect())
    }

    /// Whether the day may end after sunset; where the light isn't known, it may.
    fn may_end_dark(&self, now: &Moment) -> bool {
        let Some((lat, lon)) = self.placed() else { return true };
        let place = Place { lat: lat as f64 / 1e7, lon: lon as f64 / 1e7 };
        let day = daylight(screen::midnight(now), place).ok();
        day.and_then(|day| day.sunset).is_none_or(|sunset| sunset - now.wall_ms < LONG_DAY_MS)
    }
}

/// Leads and baits of the last rigs.
fn tackle_of(last: &Session, plan: &mut DayPlan) {
    for rod in &last.rods {
        if let Some(mg) = rod.rig.lead_mg {
            let name = format!("{} g", f64::from(mg) / 1_000.0);
            if !plan.leads.iter().any(|(known, _)| *known == name) {
                plan.leads.push((name, LEADS));
            }
        }
        if let Some(bait) = &rod.rig.bait
            && !plan.baits.iter().any(|(known, _)| known == bait)
        {
            plan.baits.push((bait.clone(), 1));
        }
    }
}

fn copied(last: &Session, setup: &SessionSetup) -> Vec<Payload> {
    let rods = usize::from(setup.rods);
    let rods = || last.rods.iter().take(rods);
    let rigged = rods().filter(|rod| rod.rig != restwater_log::Rig::default());
    let mut payloads: Vec<Payload> =
        rigged.map(|rod| Payload::RigSet { rod: rod.number, rig: rod.rig.clone() }).collect();
    let same_peg = setup.peg.is_some() && setup.peg == last.setup.peg && setup.water == last.setup.water;
    if !same_peg {
        return payloads;
    }
    payloads.extend(
        last.marks.iter().map(|m| Payload::MarkSet { name: m.name.clone(), bearing_cdeg: m.bearing_cdeg }),
    );
    payloads.push(Payload::SwimSet(last.swim.clone()));
    payloads.extend(last.landmarks.iter().map(|l| {
        let (name, bearing_cdeg, range_cm) = (l.name.clone(), l.bearing_cdeg, l.range_cm);
        match l.what {
            LandmarkKind::Feature(feature) => {
                Payload::FeatureSet { feature: feature.logged(), name, bearing_cdeg, range_cm }
            }
            LandmarkKind::Hazard { clear_cm } => {
                Payload::HazardSet { name, bearing_cdeg, range_cm, clear_cm }
            }
        }
    }));
    payloads.extend(last.peg_place.map(|p| Payload::PegPlaced {
        lat_e7: p.lat_e7,
        lon_e7: p.lon_e7,
        straight_out_cdeg: p.straight_out_cdeg,
    }));
    // The marks are new entries: a spot finds the one that stands in its direction.
    payloads.extend(rods().filter_map(|rod| {
        let spot = restwater_log::Spot { mark: None, ..rod.spot.clone()? };
        Some(Payload::SpotSet { rod: rod.number, spot })
    }));
    payloads
}
