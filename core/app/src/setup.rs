//! Setting up: the draw, copying the last set-up, the pack list, and the entries that a session begins with.

use super::error::within;
use super::journal::Beside;
use super::{App, AppError, settings};
use restwater_bench::pack::{DayPlan, Item, Packed, list};
use restwater_log::{Moment, Payload, SessionSetup};
use restwater_screen as screen;
use restwater_screen::{SetupInput, SetupTap, SetupView};
use restwater_session::Logged;
use restwater_session::{LandmarkKind, MOST_RODS, Session, same_peg, same_water};
use restwater_sky::daylight::{Place, daylight};
use restwater_store::Store;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// No lake is deeper, in cm.
pub(super) const DEEPEST_CM: u32 = 10_000;
/// No bait takes longer to settle, in seconds.
const LONGEST_SETTLE_S: u32 = 1_800;
const COPY: &str = "setup-copy";
const PACKED: &str = "packed";
const USED_BY: &str = "setup-used-by";
const TYPED: &str = "setup-typed";
/// With less time than this before sunset the day may end in the dark: the project's own choice, no source, on
/// the careful side.
const LONG_DAY_MS: i64 = 9 * 3_600_000;
/// Air at or below this may freeze, in tenths of a degree: the same limit as for the cautions.
const FROST_AIR: i16 = 30;
/// How many of each lead to pack: one and a spare.
const LEADS: u16 = 2;

/// Choices on the set-up screen that belong to the phone, not to the set-up itself.
#[derive(Default)]
pub(super) struct SetupState {
    copy: Option<Uuid>,
    packed: Vec<Item>,
    /// The session that began with them. If its START is undone, they apply to the next session again.
    used_by: Option<Uuid>,
    typed: TypedPlace,
}

/// What was typed of the place since the last START. A copy of the last session keeps it, and digits of a draw are appended to
/// it.
#[derive(Default, Clone, Copy, Serialize, Deserialize)]
struct TypedPlace {
    peg: bool,
    water: bool,
}

impl TypedPlace {
    /// The set-up that is copied, at the place that was typed.
    fn keep(self, copied: &SessionSetup, draft: &SessionSetup) -> SessionSetup {
        let water = if self.water { &draft.water } else { &copied.water };
        let peg = if self.peg { &draft.peg } else { &copied.peg };
        // A peg of another water is none of this one.
        let peg = peg.clone().filter(|_| {
            self.peg || same_water(Some(named(water.as_deref())), Some(named(copied.water.as_deref())))
        });
        SessionSetup { peg, water: water.clone(), ..copied.clone() }
    }
}

/// A water without a name counts as having an empty one: the angler chose to copy that session, so two such waters are the
/// same.
fn named(water: Option<&str>) -> &str {
    water.unwrap_or_default()
}

/// Water and peg of a set-up.
fn place_of(setup: &SessionSetup) -> (Option<&str>, Option<&str>) {
    (Some(named(setup.water.as_deref())), setup.peg.as_deref())
}

/// An item as it is stored: in its own form or, by an older version, as a text.
#[derive(Deserialize)]
#[serde(untagged)]
enum StoredItem {
    Spelled(String),
    Item(Item),
}

impl StoredItem {
    fn item(self) -> Option<Item> {
        match self {
            Self::Item(item) => Some(item),
            Self::Spelled(text) if text.starts_with(['"', '{']) => serde_json::from_str(&text).ok(),
            Self::Spelled(name) => serde_json::from_value(name.into()).ok(),
        }
    }
}

impl SetupState {
    pub(super) fn load(store: &Store) -> Result<Self, AppError> {
        let copy = store.setting(COPY)?.and_then(|text| text.parse().ok());
        let packed: Vec<StoredItem> = settings::read(store, PACKED)?;
        let used_by = store.setting(USED_BY)?.and_then(|text| text.parse().ok());
        let packed = packed.into_iter().filter_map(StoredItem::item).collect();
        Ok(Self { copy, packed, used_by, typed: settings::read(store, TYPED)? })
    }
}

impl App {
    /// The set-up screen.
    pub(super) fn setup(&mut self, now: &Moment) -> Result<SetupView, AppError> {
        let cautions = self.cautions_to_show().len();
        let pack = self.pack(now)?;
        let plan = self.plan_now(now)?;
        let last = self.day_to_copy().map(|day| screen::day_words(self.words, day.gist));
        let waters = screen::waters_fished(&self.sessions.days(&self.mine).collect::<Vec<_>>());
        Ok(screen::setup(&SetupInput {
            waters: &waters,
            draft: &self.draft,
            last,
            copies: self.copies().is_some(),
            pack: &pack,
            plan: plan.nearest.map(|day| screen::plan_day_words(self.words, day, plan.today)),
            plan_aside: plan.aside,
            cautions,
            words: self.words,
        }))
    }

    /// The session that is copied or, as long as none is, the angler's last one as far as this phone knows.
    fn day_to_copy(&self) -> Option<screen::Day<'_>> {
        let copied = self.copies();
        self.sessions.days(&self.mine).find(|day| copied.map_or(day.mine, |id| day.id == id))
    }

    /// One of the choices of the set-up screen.
    pub(super) fn setup_tap(&mut self, tap: &SetupTap) -> Result<String, AppError> {
        self.for_the_next_start()?;
        match tap {
            SetupTap::Rods { rods } => {
                let rods = within("rods", *rods, 1, MOST_RODS)?;
                return self.change_draft(|draft| draft.rods = rods);
            }
            SetupTap::Span { tenth_mm } => {
                let span = within("span", *tenth_mm, 1_000, 200_000)?;
                return self.change_draft(|draft| draft.span_tenth_mm = span);
            }
            SetupTap::Depth { cm } => {
                let cm = cm.map(|cm| within("depth", cm, 1, DEEPEST_CM)).transpose()?;
                return self.change_draft(|draft| draft.depth_cm = cm);
            }
            SetupTap::Settle { seconds } => {
                let seconds = within("settle", *seconds, 0, LONGEST_SETTLE_S)?;
                return self.change_draft(|draft| draft.settle_s = seconds);
            }
            SetupTap::TwitchRestarts { restarts } => {
                let restarts = *restarts;
                return self.change_draft(|draft| draft.twitch_restarts = restarts);
            }
            SetupTap::DrawDigit { digit } => {
                let digit = within("draw", *digit, 0, 9)?;
                let so_far = self.draft.peg.as_deref().filter(|_| self.setup.typed.peg);
                return self.type_peg(Some(drawn(so_far, digit)));
            }
            SetupTap::ClearDraw => return self.type_peg(None),
            SetupTap::CopyNothing => self.set_copy(None)?,
            SetupTap::CopyLast => {
                self.sessions.refresh(&self.journal)?;
                let id = self.day_to_copy().ok_or(AppError::NoSuchSession)?.id;
                let session = self.folded(id)?;
                let setup = self.setup.typed.keep(&session.setup, &self.draft);
                settings::save_copied(self.journal.store(), &setup, (COPY, &id.to_string()))?;
                (self.draft, self.setup.copy) = (setup, Some(id));
            }
            SetupTap::Pack { item } => {
                let mut packed = self.setup.packed.clone();
                match packed.iter().position(|known| known == item) {
                    Some(i) => drop(packed.remove(i)),
                    None => packed.push(item.clone()),
                }
                settings::write(self.journal.store(), PACKED, &packed)?;
                self.setup.packed = packed;
            }
        }
        Ok(String::new())
    }

    /// The first choice after a START is for the next one, so those that were used are discarded.
    fn for_the_next_start(&mut self) -> Result<(), AppError> {
        if self.setup_is_used() { self.forget_setup() } else { Ok(()) }
    }

    /// Sets the typed peg, or none.
    pub(super) fn type_peg(&mut self, peg: Option<String>) -> Result<String, AppError> {
        self.for_the_next_start()?;
        self.note_typed(TypedPlace { peg: peg.is_some(), ..self.setup.typed })?;
        self.change_draft(|draft| draft.peg = peg)
    }

    /// Sets the typed water, or none.
    pub(super) fn type_water(&mut self, water: Option<String>) -> Result<String, AppError> {
        self.for_the_next_start()?;
        self.note_typed(TypedPlace { water: water.is_some(), ..self.setup.typed })?;
        self.change_draft(|draft| draft.water = water)
    }

    fn note_typed(&mut self, typed: TypedPlace) -> Result<(), AppError> {
        settings::write(self.journal.store(), TYPED, &typed)?;
        self.setup.typed = typed;
        Ok(())
    }

    fn set_copy(&mut self, copy: Option<Uuid>) -> Result<(), AppError> {
        self.journal.store().set_setting(COPY, &copy.map_or_else(String::new, |id| id.to_string()))?;
        self.setup.copy = copy;
        Ok(())
    }

    /// The entries that a session begins with: its set-up; if the last one is copied, its rigs; and at the
    /// same peg also its spots, marks, bounds and landmarks.
    pub(super) fn beginning(&self, setup: &SessionSetup) -> Result<Vec<Payload>, AppError> {
        let mut payloads = vec![Payload::SessionStarted(setup.clone())];
        if let Some(id) = self.copies() {
            payloads.extend(copied(self.folded(id)?.as_ref(), setup));
        }
        Ok(payloads)
    }

    /// The session to be copied, if there is one and its START is in force (it may have gone with an undone import).
    fn copies(&self) -> Option<Uuid> {
        self.setup.copy.filter(|id| !self.setup_is_used() && self.stands(*id).unwrap_or(false))
    }

    /// Whether a session has begun with the choices, on whichever phone that was, and its START is in force. A session that can't
    /// be read is assumed to have begun, so that nothing is copied unasked and START still works.
    pub(super) fn setup_is_used(&self) -> bool {
        self.setup.used_by.is_some_and(|id| self.stands(id).unwrap_or(true))
    }

    /// Whether the log has this session, and its START is in force.
    fn stands(&self, id: Uuid) -> Result<bool, AppError> {
        if let Some(session) = self.session().filter(|session| session.id == id) {
            return Ok(session.started.is_some());
        }
        Ok(self.folded(id)?.started.is_some())
    }

    /// A session is about to begin with the choices. `used` says whether another session had begun with them before, so that this
    /// one has none. This is stored before START: after it, the next START would copy the day again if the phone died in between.
    /// If START can't be written then, the choices still stand, since no session with that id has begun.
    pub(super) fn setup_used(&mut self, by: Uuid, used: bool) -> Result<(), AppError> {
        if used {
            self.forget_setup()?;
        }
        self.journal.store().set_setting(USED_BY, &by.to_string())?;
        self.setup.used_by = Some(by);
        Ok(())
    }

    /// The set-up offers the place of the session that began with its choices, and so follows a correction of that place and
    /// its UNDO. This ends as soon as anything is chosen for the next session.
    pub(super) fn follow_place_of(&mut self, session: Uuid) {
        let begun = self.journal.recent().of(session).map(|loaded| &loaded.session);
        let begun = begun.filter(|begun| self.setup.used_by == Some(session) && begun.started.is_some());
        let Some(SessionSetup { water, peg, .. }) = begun.map(|begun| &begun.setup) else { return };
        if (water, peg) == (&self.draft.water, &self.draft.peg) {
            return;
        }
        let (water, peg) = (water.clone(), peg.clone());
        let followed = self.change_draft(|draft| (draft.water, draft.peg) = (water, peg));
        self.journal.beside(Beside::AfterTheTap, followed);
    }

    /// The same after an import, which may have brought a correction from the angler's other phone.
    pub(super) fn follow_place_of_its_session(&mut self) {
        if let Some(session) = self.setup.used_by {
            self.follow_place_of(session);
        }
    }

    /// Discards the choices.
    fn forget_setup(&mut self) -> Result<(), AppError> {
        self.setup = SetupState::default();
        let none = [(COPY, ""), (PACKED, "[]"), (USED_BY, ""), (TYPED, "")];
        Ok(self.journal.store().set_settings(&none)?)
    }

    /// What to pack, each item with whether it is packed.
    fn pack(&mut self, now: &Moment) -> Result<Vec<(Packed, bool)>, AppError> {
        let kit = self.kit()?;
        let last = self.day_to_copy().map(|day| day.id);
        let last = last.map(|id| self.folded(id)).transpose()?;
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
        let used = self.setup_is_used();
        let packed = |item: Packed| {
            let done = !used && self.setup.packed.contains(&item.item);
            (item, done)
        };
        Ok(list(&plan).into_iter().map(packed).collect())
    }

    /// Whether the day may end after sunset; true if the light isn't known.
    fn may_end_dark(&self, now: &Moment) -> bool {
        let Some((lat, lon)) = self.placed() else { return true };
        let place = Place { lat: lat as f64 / 1e7, lon: lon as f64 / 1e7 };
        let day = daylight(screen::midnight(now), place).ok();
        day.and_then(|day| day.sunset).is_none_or(|sunset| sunset - now.wall_ms < LONG_DAY_MS)
    }
}

/// Digits of the longest number drawn.
const MOST_DIGITS: usize = 4;

/// Appends a digit to the number typed for the draw. A peg that is not a number, or already has all digits, is
/// replaced.
fn drawn(peg: Option<&str>, digit: u8) -> String {
    let so_far = peg.filter(|p| p.bytes().all(|b| b.is_ascii_digit()) && p.len() < MOST_DIGITS);
    format!("{}{digit}", so_far.unwrap_or_default())
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
    payloads.extend(
        rods().filter_map(|rod| Some(Payload::FeederSet { rod: rod.number, fill_mg: Some(rod.fill_mg?) })),
    );
    if !same_peg(place_of(setup), place_of(&last.setup)) {
        return payloads;
    }
    payloads.extend(
        last.marks.iter().map(|m| Payload::MarkSet { name: m.name.clone(), bearing_cdeg: m.bearing_cdeg }),
    );
    payloads.push(Payload::SwimSet(last.swim.clone()));
    if !last.outline_cm.is_empty() {
        payloads.push(Payload::OutlineSet { corners_cm: last.outline_cm.clone() });
    }
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
    // The marks are new entries: a spot finds the one in its direction.
    payloads.extend(rods().filter_map(|rod| {
        let spot = restwater_log::Spot { mark: None, ..rod.spot.clone()? };
        Some(Payload::SpotSet { rod: rod.number, spot })
    }));
    payloads
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_peg_is_drawn_a_digit_a_tap() {
        assert_eq!(drawn(None, 1), "1");
        assert_eq!(drawn(Some("1"), 4), "14");
        assert_eq!(drawn(Some("boathouse"), 7), "7", "a name is drawn anew");
        assert_eq!(drawn(Some("1234"), 5), "5");
    }

    #[test]
    fn what_an_older_version_stored_as_packed_stays_packed() {
        let stored = r#"["\"LandingNet\"", "{\"Shot\":\"BB\"}", "Mat", {"Bait": "bread"}, "Nonsense"]"#;
        let stored: Vec<StoredItem> = serde_json::from_str(stored).unwrap();
        let items: Vec<Item> = stored.into_iter().filter_map(StoredItem::item).collect();
        assert_eq!(items, [Item::LandingNet, Item::Shot("BB".into()), Item::Mat, Item::Bait("bread".into())]);
    }
}
