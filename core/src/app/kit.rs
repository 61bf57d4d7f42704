//! The kit in use, and what is written in it.

use super::{App, AppError, entropy};
use crate::bench::kit::{Kit, fold};
use crate::caution::table::Region;
use crate::log::{Moment, Op, Payload, is_kit, kit_of};
use crate::session::Loss;
use crate::store::Store;
use uuid::Uuid;

const KIT: &str = "kit";
const REGION: &str = "region";

/// The kit this phone writes in: the one chosen, else its own, else the one written in last, as after moving to a new
/// phone; else the one it would begin.
pub(super) fn kit_in_use(store: &Store) -> Result<Uuid, AppError> {
    let chosen = store.setting(KIT)?.and_then(|text| text.parse().ok()).filter(|id| is_kit(*id));
    if let Some(id) = chosen {
        return Ok(id);
    }
    let own = kit_of(store.device());
    let kits: Vec<_> = store.sessions()?.into_iter().filter(|row| is_kit(row.id)).collect();
    if kits.iter().any(|row| row.id == own) {
        return Ok(own);
    }
    Ok(kits.iter().max_by_key(|row| row.last).map_or(own, |row| row.id))
}

/// Where the water lies, as last chosen.
pub(super) fn region(store: &Store) -> Result<Region, AppError> {
    let kept = store.setting(REGION)?;
    Ok(kept.and_then(|text| serde_json::from_str(&text).ok()).unwrap_or(Region::England))
}

impl App {
    /// The kit as the log tells it.
    pub(super) fn kit(&mut self) -> Result<Kit, AppError> {
        self.sessions.refresh(&mut self.store)?;
        let losses: Vec<Loss> =
            self.sessions.days().flat_map(|(_, day)| day.losses.iter().copied()).collect();
        Ok(fold(self.recent.kit(self.kit_id), &losses))
    }

    /// Writes in the kit; several entries are undone together.
    pub(super) fn log_kit(&mut self, payloads: Vec<Payload>, at: &Moment) -> Result<String, AppError> {
        let kind = payloads.first().map(|p| p.kind().to_owned()).unwrap_or_default();
        // What is written stays this phone's choice, also when a partner's kit comes in later.
        if self.recent.kits().is_empty() {
            self.store.set_setting(KIT, &self.kit_id.to_string())?;
        }
        self.write_all(self.kit_id, payloads, at)?;
        Ok(self.say_what("notice-logged", &kind))
    }

    /// Another kit is used from now on.
    pub(super) fn choose_kit(&mut self, id: Uuid) -> Result<(), AppError> {
        self.store.set_setting(KIT, &id.to_string())?;
        self.kit_id = id;
        Ok(())
    }

    /// Where the water lies.
    pub(super) fn choose_region(&mut self, region: Region) -> Result<(), AppError> {
        let text = serde_json::to_string(&region)
            .map_err(|e| crate::log::CanonicalError::Unwritable(e.to_string()))?;
        self.store.set_setting(REGION, &text)?;
        self.region = region;
        Ok(())
    }

    /// Writes several ops of one session in one transaction; more than one make a group, undone together.
    pub(super) fn write_all(
        &mut self,
        session: Uuid,
        payloads: Vec<Payload>,
        at: &Moment,
    ) -> Result<(), AppError> {
        let group = (payloads.len() > 1).then(|| entropy::new_id(self.entropy.as_mut(), at.wall_ms));
        let mut ops = Vec::with_capacity(payloads.len());
        for payload in payloads {
            ops.push(Op {
                id: entropy::new_id(self.entropy.as_mut(), at.wall_ms),
                device: self.store.device(),
                hlc: self.clock.tick(at.wall_ms),
                at: at.clone(),
                session,
                payload,
                amends: None,
                group,
            });
        }
        self.store.append(&ops, None)?;
        Ok(self.recent.take(&self.store, ops)?)
    }
}
