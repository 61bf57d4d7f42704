//! The taps of the tackle screen.

use super::error::within;
use super::feed::HEAVIEST_FEED_MG;
use super::settings::save_draft;
use super::{App, AppError};
use restwater_log::{Moment, Payload, Reach, Rig, RodNumber, SessionSetup, Spot};
use restwater_screen as screen;
use restwater_screen::{Hand, PhoneChoices, Scheme};
use restwater_screen::{TackleAround, TackleTap, TackleView};
use restwater_session::{NotNow, Session, check, reach_m};
use restwater_swim::LONGEST_RANGE_M;

impl App {
    /// The tackle screen of the chosen rod.
    pub(super) fn tackle(&mut self) -> Result<TackleView, AppError> {
        let kit = self.kit()?;
        let around = TackleAround { wallet: kit.wallet.tied(), region: self.region.now() };
        Ok(screen::tackle(self.words, self.session(), self.chosen, &around))
    }

    /// Changes one thing on a rod; the rest carries over.
    pub(super) fn tackle_tap(
        &mut self,
        rod: RodNumber,
        tap: &TackleTap,
        at: &Moment,
    ) -> Result<String, AppError> {
        let tap = &self.in_known_spelling(tap);
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let rods = session.rods.len() as RodNumber;
        let state = session.rod(rod).ok_or(NotNow::NoSuchRod { rod, rods })?;
        let payload = if let TackleTap::Feeder { mg } = *tap {
            let fill_mg = mg.map(|mg| within("feeder", mg, 1, HEAVIEST_FEED_MG)).transpose()?;
            Payload::FeederSet { rod, fill_mg }
        } else if let Some(rig) = with_rig(state.rig.clone(), tap)? {
            Payload::RigSet { rod, rig }
        } else {
            let spot = state.spot.clone().unwrap_or_else(|| screen::first_spot(session));
            Payload::SpotSet { rod, spot: with_spot(spot, tap, session)? }
        };
        check(Some(session), &payload)?;
        let (session, kind) = (session.id, payload.kind().to_owned());
        self.write(session, payload, None, at)?;
        Ok(self.say_what("notice-logged", &kind))
    }

    /// Changes one thing in the next session's set-up.
    pub(super) fn change_draft(
        &mut self,
        change: impl FnOnce(&mut SessionSetup),
    ) -> Result<String, AppError> {
        let mut draft = self.draft.clone();
        change(&mut draft);
        save_draft(self.journal.store(), &draft)?;
        self.draft = draft;
        Ok(String::new())
    }

    /// Hand and scheme.
    pub(super) fn set(&mut self, hand: Option<Hand>, scheme: Option<Scheme>) -> Result<String, AppError> {
        let mut settings = self.settings;
        settings.hand = hand.unwrap_or(settings.hand);
        settings.scheme = scheme.unwrap_or(settings.scheme);
        let night_at_dusk = self.phone.night_at_dusk && scheme.is_none();
        self.keep_looks(settings, PhoneChoices { night_at_dusk, ..self.phone })?;
        Ok(String::new())
    }
}

/// Checks that a cast can have this reach.
pub(super) fn sound_reach(reach: Reach) -> Result<Reach, AppError> {
    let metres = reach_m(reach);
    if metres > 0.0 && metres <= LONGEST_RANGE_M {
        Ok(reach)
    } else {
        Err(AppError::unknown("reach", screen::trimmed(metres, 1)))
    }
}

/// The spot with one thing changed; other taps leave it as it is.
fn with_spot(mut spot: Spot, tap: &TackleTap, session: &Session) -> Result<Spot, AppError> {
    match tap {
        TackleTap::Reach { reach } => {
            spot.reach = sound_reach(*reach)?;
        }
        TackleTap::Bearing { cdeg } => {
            (spot.mark, spot.bearing_cdeg) = (None, within("bearing", *cdeg, -9_000, 9_000)?);
        }
        TackleTap::Mark { mark } => {
            let set = session.marks.iter().find(|known| known.id == *mark);
            let set = set.ok_or_else(|| AppError::unknown("bearing", mark))?;
            (spot.mark, spot.bearing_cdeg) = (Some(set.id), set.bearing_cdeg);
        }
        TackleTap::Clip { clipped } => spot.clipped = *clipped,
        _ => {}
    }
    Ok(spot)
}

/// The rig with one thing changed, or `None` if it is the spot that changes.
pub(super) fn with_rig(mut rig: Rig, tap: &TackleTap) -> Result<Option<Rig>, AppError> {
    let name = |name: &str| Some(name.trim().to_owned()).filter(|name| !name.is_empty());
    match tap {
        TackleTap::Bait { name: bait } => rig.bait = name(bait),
        TackleTap::Colour { name: colour } => rig.colour = name(colour),
        TackleTap::PopUp { mm } => rig.popup_mm = Some(within("popup", *mm, 1, 5_000)?),
        TackleTap::Hooklength { mm } => rig.hooklength_mm = Some(within("hooklength", *mm, 1, 10_000)?),
        TackleTap::HookSize { size } => rig.hook_size = Some(within("hook", *size, 1, 40)?),
        TackleTap::Lead { mg } => rig.lead_mg = Some(within("lead", *mg, 1, 1_000_000)?),
        TackleTap::Material { material } => rig.material = Some(*material),
        TackleTap::Reach { .. }
        | TackleTap::Bearing { .. }
        | TackleTap::Mark { .. }
        | TackleTap::Feeder { .. }
        | TackleTap::Clip { .. } => {
            return Ok(None);
        }
    }
    Ok(Some(rig))
}

#[cfg(test)]
mod tests {
    use super::*;
    use restwater_session::fold;
    use restwater_session::written::{SESSION, Written};

    #[test]
    fn a_reach_of_a_thousand_yards_is_refused() {
        let spot = Spot { mark: None, bearing_cdeg: 0, reach: Reach::Metres { cm: 100 }, clipped: false };
        let session = fold(SESSION, &Written::new(1).ops);
        let set = |reach| with_spot(spot.clone(), &TackleTap::Reach { reach }, &session);
        assert!(set(Reach::Yards { hundredths: 100_000 }).is_err());
        assert!(set(Reach::Metres { cm: 0 }).is_err());
        assert!(set(Reach::Yards { hundredths: 4_000 }).is_ok());
        assert!(with_spot(spot.clone(), &TackleTap::Bearing { cdeg: 9_100 }, &session).is_err());
        assert!(with_spot(spot.clone(), &TackleTap::Mark { mark: SESSION }, &session).is_err());
    }

    #[test]
    fn figures_out_of_range_are_refused() {
        let with = |tap: TackleTap| with_rig(Rig::default(), &tap);
        assert!(with(TackleTap::HookSize { size: 0 }).is_err());
        assert!(with(TackleTap::PopUp { mm: 5_001 }).is_err());
        let hook = with(TackleTap::HookSize { size: 12 }).unwrap();
        assert_eq!(hook.and_then(|rig| rig.hook_size), Some(12));
        assert_eq!(with(TackleTap::Clip { clipped: true }).unwrap(), None);
    }
}
