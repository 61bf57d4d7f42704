//! The kit in use, and what is written in it.

use super::{App, AppError, settings};
use restwater_caution::table::Region;
use restwater_kit::{Kit, fold};
use restwater_log::{Moment, Op, Payload, effective, is_kit, kit_of, sorted};
use restwater_session::Loss;
use restwater_store::Store;
use std::borrow::Cow;
use uuid::Uuid;

const KIT: &str = "kit";
const REGION: &str = "region";

/// The kit that this phone writes in: the one chosen, otherwise its own, otherwise the one last written in
/// (as after moving to a new phone), otherwise the one that it would begin.
pub(super) fn kit_in_use(store: &Store, kits: &[(Uuid, Vec<Op>)]) -> Result<Uuid, AppError> {
    let own = kit_of(store.device());
    let wallets: Vec<&(Uuid, Vec<Op>)> = kits.iter().filter(|(_, ops)| holds_a_wallet(ops)).collect();
    let chosen: Option<Uuid> = store.setting(KIT)?.and_then(|text| text.parse().ok());
    // A kit that came by a file and went with UNDO IMPORT is not used any more.
    let is_there = |id: &Uuid| is_kit(*id) && (*id == own || wallets.iter().any(|(kit, _)| kit == id));
    if let Some(id) = chosen.filter(is_there) {
        return Ok(id);
    }
    if wallets.iter().any(|(id, _)| *id == own) {
        return Ok(own);
    }
    let latest = |ops: &[Op]| ops.iter().map(Op::order).max();
    Ok(wallets.into_iter().max_by_key(|(_, ops)| latest(ops)).map_or(own, |(id, _)| *id))
}

/// A new phone of the angler goes on with the wallet of the one before.
pub(super) fn stay_with(store: &Store, before: Uuid) -> Result<(), AppError> {
    if store.setting(KIT)?.is_none() {
        store.set_setting(KIT, &kit_of(before).to_string())?;
    }
    Ok(())
}

/// Whether an entry in force is about the wallet itself. Plans, cautions that were read and a club's start are the
/// angler's own, whichever wallet is in use; and what a newer version wrote may be about anything.
pub(super) fn holds_a_wallet(ops: &[Op]) -> bool {
    effective(&sorted(ops)).iter().any(|step| {
        matches!(
            step.payload,
            Payload::HooklengthsTied { .. }
                | Payload::HooklengthsCounted { .. }
                | Payload::HooklengthsTakenOut { .. }
                | Payload::HooklengthsCutDown { .. }
                | Payload::HooklengthsWanted { .. }
                | Payload::SpoolAdded { .. }
                | Payload::SpoolLeft { .. }
                | Payload::AllowancesSet(_)
                | Payload::PopUpSet(_)
                | Payload::ShotSet(_)
                | Payload::FallTimed { .. }
                | Payload::LadderSet { .. }
        )
    })
}

/// The region of the water.
pub(super) struct WaterRegion {
    /// As last chosen.
    chosen: Option<Region>,
    /// Until one is chosen.
    usual: Region,
}

impl WaterRegion {
    pub(super) fn load(store: &Store) -> Result<Self, AppError> {
        Ok(Self { chosen: settings::read(store, REGION)?, usual: Region::England })
    }

    /// The languages of the phone, as BCP 47 tags, say whether its angler is likely to fish in Britain: the first of them names
    /// Britain, or is English without a country. Elsewhere British rules and numbers to ring would be wrong.
    pub(super) fn guess_by(&mut self, tags: &str) {
        let first = tags.split(',').next().unwrap_or_default().trim().replace('_', "-").to_ascii_lowercase();
        let british = first.is_empty() || first == "en" || first.split('-').any(|part| part == "gb");
        self.usual = if british { Region::England } else { Region::Elsewhere };
    }

    pub(super) fn now(&self) -> Region {
        self.chosen.unwrap_or(self.usual)
    }
}

impl App {
    /// The kit, folded from the log.
    pub(super) fn kit(&mut self) -> Result<Kit, AppError> {
        self.sessions.refresh(&self.journal)?;
        let losses: Vec<Loss> =
            self.sessions.days(&self.mine).flat_map(|day| day.gist.losses.iter().copied()).collect();
        Ok(fold(self.journal.recent().kit(self.kit_id), &losses, &self.mine))
    }

    /// Writes in the kit; several entries are undone together.
    pub(super) fn log_kit(&mut self, payloads: Vec<Payload>, at: &Moment) -> Result<String, AppError> {
        let kind = payloads.first().map(|p| p.kind().to_owned()).unwrap_or_default();
        // Once it has an entry the kit in use stays in use, even if a file brings a kit with a later entry.
        if self.journal.store().setting(KIT)?.as_deref() != Some(self.kit_id.to_string().as_str()) {
            self.choose_kit(self.kit_id)?;
        }
        self.write_all(self.kit_id, payloads, at)?;
        Ok(self.say_what("notice-logged", &kind))
    }

    /// Plans, cautions that were read and a club's start, of all phones of the angler.
    pub(super) fn own_things(&self) -> Cow<'_, [Op]> {
        self.journal.recent().own_things(&self.mine)
    }

    /// Writes one of these, in this phone's own kit.
    pub(super) fn log_own(&mut self, payload: Payload, at: &Moment) -> Result<String, AppError> {
        let kind = payload.kind().to_owned();
        self.write_all(kit_of(self.journal.store().device()), vec![payload], at)?;
        Ok(self.say_what("notice-logged", &kind))
    }

    /// Another kit is used from now on.
    pub(super) fn choose_kit(&mut self, id: Uuid) -> Result<(), AppError> {
        self.journal.store().set_setting(KIT, &id.to_string())?;
        self.kit_id = id;
        Ok(())
    }

    /// Chooses the region of the water.
    pub(super) fn choose_region(&mut self, region: Region) -> Result<(), AppError> {
        settings::write(self.journal.store(), REGION, &region)?;
        self.region.chosen = Some(region);
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use restwater_session::written::Written;

    /// On a phone without a wallet the kit of a file is the one in use if it holds one.
    #[test]
    fn only_entries_about_a_wallet_make_one() {
        let holds = |payload: Payload| {
            let mut kit = Written::by(0xD1);
            kit.log(0, payload);
            holds_a_wallet(&kit.ops)
        };
        assert!(holds(Payload::LadderSet { heights_tenth_mm: vec![80] }));
        assert!(!holds(Payload::ClubLeft));
        assert!(
            !holds(Payload::Unknown { kind: "rod_serviced".into(), payload: None }),
            "of a newer version"
        );
    }
}
