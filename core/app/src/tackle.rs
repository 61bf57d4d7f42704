//! What a choice on the tackle or the set-up screen does.

use super::settings::{save_draft, save_settings};
use super::{App, AppError};
use restwater_log::{LeadMaterial, Moment, Payload, Reach, Rig, RodNumber, SessionSetup, Spot};
use restwater_screen as screen;
use restwater_screen::{Hand, Scheme};
use restwater_screen::{TackleAround, TackleView};
use restwater_session::{MOST_RODS, NotNow, check, reach_m};
use restwater_swim::LONGEST_RANGE_M;

impl App {
    /// The tackle screen of the chosen rod.
    pub(super) fn tackle(&mut self) -> Result<TackleView, AppError> {
        let kit = self.kit()?;
        let around = TackleAround { wallet: kit.wallet.tied(), region: self.region };
        Ok(screen::tackle(&self.words, self.session(), self.chosen, &around))
    }

    /// Changes one thing on a rod; the rest carries over.
    pub(super) fn choose(
        &mut self,
        rod: RodNumber,
        field: &str,
        value: &str,
        at: &Moment,
    ) -> Result<String, AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let rods = session.rods.len() as RodNumber;
        let state = session.rod(rod).ok_or(NotNow::NoSuchRod { rod, rods })?;
        let unknown = || AppError::unknown(field, value);
        let payload = if field == "hooklength_lost" {
            Some(value).filter(|value| *value == "1").ok_or_else(unknown)?;
            Payload::HooklengthLost { rod }
        } else if matches!(field, "reach" | "bearing" | "clip") {
            let spot = state.spot.clone().unwrap_or_else(|| screen::first_spot(session));
            let marks: Vec<_> = session.marks.iter().map(|m| (m.id, m.bearing_cdeg)).collect();
            Payload::SpotSet { rod, spot: with_spot(spot, field, value, &marks).ok_or_else(unknown)? }
        } else {
            Payload::RigSet { rod, rig: with_rig(state.rig.clone(), field, value).ok_or_else(unknown)? }
        };
        check(Some(session), &payload)?;
        let (session, kind) = (session.id, payload.kind().to_owned());
        self.write(session, payload, None, at)?;
        Ok(self.say_what("notice-logged", &kind))
    }

    /// Changes one thing of the set-up to come.
    pub(super) fn choose_setup(&mut self, field: &str, value: &str) -> Result<String, AppError> {
        let unknown = || AppError::unknown(field, value);
        let draft = with_setup(self.draft.clone(), field, value).ok_or_else(unknown)?;
        save_draft(&mut self.store, &draft)?;
        self.draft = draft;
        Ok(String::new())
    }

    /// The keys act on this rod from now on.
    pub(super) fn choose_rod(&mut self, rod: RodNumber) -> Result<String, AppError> {
        let session = self.session().ok_or(NotNow::NoSession)?;
        let rods = session.rods.len() as RodNumber;
        if session.rod(rod).is_none() {
            return Err(NotNow::NoSuchRod { rod, rods }.into());
        }
        self.chosen = rod;
        Ok(String::new())
    }

    /// Hand and scheme.
    pub(super) fn set(&mut self, hand: Option<Hand>, scheme: Option<Scheme>) -> Result<String, AppError> {
        let mut settings = self.settings;
        settings.hand = hand.unwrap_or(settings.hand);
        settings.scheme = scheme.unwrap_or(settings.scheme);
        save_settings(&mut self.store, settings)?;
        self.settings = settings;
        Ok(String::new())
    }
}

fn with_spot(mut spot: Spot, field: &str, value: &str, marks: &[(uuid::Uuid, i32)]) -> Option<Spot> {
    match field {
        "reach" => {
            let reach: Reach = serde_json::from_str(value).ok()?;
            let metres = reach_m(reach);
            spot.reach = (metres > 0.0 && metres <= LONGEST_RANGE_M).then_some(reach)?;
        }
        "bearing" => (spot.mark, spot.bearing_cdeg) = direction(value, marks)?,
        "clip" => spot.clipped = value.parse().ok()?,
        _ => return None,
    }
    Some(spot)
}

/// "mark ID" or hundredths of a degree.
fn direction(value: &str, marks: &[(uuid::Uuid, i32)]) -> Option<(Option<uuid::Uuid>, i32)> {
    if let Some(id) = value.strip_prefix("mark ") {
        let id: uuid::Uuid = id.parse().ok()?;
        let (mark, cdeg) = *marks.iter().find(|(mark, _)| *mark == id)?;
        return Some((Some(mark), cdeg));
    }
    let cdeg = value.parse().ok().filter(|cdeg| (-9_000..=9_000).contains(cdeg))?;
    Some((None, cdeg))
}

fn with_rig(mut rig: Rig, field: &str, value: &str) -> Option<Rig> {
    let text = || Some(value.trim().to_owned()).filter(|t| !t.is_empty());
    let figure = |most: u32| value.parse::<u32>().ok().filter(|n| (1..=most).contains(n));
    match field {
        "bait" => rig.bait = text(),
        "colour" => rig.colour = text(),
        "popup" => rig.popup_mm = Some(figure(5_000)?),
        "hooklength" => rig.hooklength_mm = Some(figure(10_000)?),
        "hook" => rig.hook_size = Some(figure(40)? as u8),
        "material" => {
            rig.material = Some(match value {
                "lead" => LeadMaterial::Lead,
                "non_toxic" => LeadMaterial::NonToxic,
                _ => return None,
            });
        }
        "lead" => rig.lead_mg = Some(figure(1_000_000)?),
        _ => return None,
    }
    Some(rig)
}

fn with_setup(mut draft: SessionSetup, field: &str, value: &str) -> Option<SessionSetup> {
    let text = || Some(value.trim().to_owned()).filter(|t| !t.is_empty());
    match field {
        "water" => draft.water = text(),
        "peg" => draft.peg = text(),
        "draw" if value == "clear" => draft.peg = None,
        "draw" => draft.peg = Some(drawn(draft.peg.as_deref(), value)?),
        "rods" => draft.rods = value.parse().ok().filter(|n| (1..=MOST_RODS).contains(n))?,
        "span" => draft.span_tenth_mm = value.parse().ok().filter(|n| (1_000..=200_000).contains(n))?,
        "depth" => draft.depth_cm = Some(value.parse().ok().filter(|cm| *cm <= 10_000)?).filter(|cm| *cm > 0),
        "settle" => draft.settle_s = value.parse().ok().filter(|s| *s <= LONGEST_SETTLE_S)?,
        "twitch" => draft.twitch_restarts = matches!(value, "on" | "off").then_some(value == "on")?,
        _ => return None,
    }
    Some(draft)
}

/// Longer than any bait takes to settle, seconds.
const LONGEST_SETTLE_S: u32 = 1_800;

/// Digits of the longest number drawn.
const MOST_DIGITS: usize = 4;

/// A number drawn so far with one more digit; a peg that is no number, or long enough, is drawn anew.
fn drawn(peg: Option<&str>, value: &str) -> Option<String> {
    let digit = value.parse::<u8>().ok().filter(|d| *d <= 9 && value.len() == 1)?;
    let so_far = peg.filter(|p| p.bytes().all(|b| b.is_ascii_digit()) && p.len() < MOST_DIGITS);
    Some(format!("{}{digit}", so_far.unwrap_or_default()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_thousand_yards_is_no_reach() {
        let spot = Spot { mark: None, bearing_cdeg: 0, reach: Reach::Metres { cm: 100 }, clipped: false };
        let set = |value| with_spot(spot.clone(), "reach", value, &[]);
        assert!(set(r#"{"unit":"yards","hundredths":100000}"#).is_none());
        assert!(set(r#"{"unit":"metres","cm":0}"#).is_none());
        assert!(set(r#"{"unit":"yards","hundredths":4000}"#).is_some());
        assert!(set("far").is_none());
    }

    #[test]
    fn figures_out_of_range_and_unknown_fields_are_refused() {
        assert!(with_rig(Rig::default(), "hook", "0").is_none());
        assert!(with_rig(Rig::default(), "float", "1").is_none());
        assert_eq!(with_rig(Rig::default(), "hook", "12").and_then(|r| r.hook_size), Some(12));
        assert!(with_setup(SessionSetup::default(), "rods", "0").is_none());
        assert_eq!(with_setup(SessionSetup::default(), "depth", "0").map(|s| s.depth_cm), Some(None));
        assert!(with_rig(Rig::default(), "material", "gold").is_none());
    }

    #[test]
    fn a_peg_is_drawn_a_digit_a_tap() {
        let draw = |peg: Option<&str>, digit| drawn(peg, digit).unwrap();
        assert_eq!(draw(None, "1"), "1");
        assert_eq!(draw(Some("1"), "4"), "14");
        assert_eq!(draw(Some("boathouse"), "7"), "7", "a name is drawn anew");
        assert_eq!(draw(Some("1234"), "5"), "5");
        let set = SessionSetup { peg: Some("14".into()), ..SessionSetup::default() };
        assert_eq!(with_setup(set, "draw", "clear").map(|s| s.peg), Some(None));
        assert!(drawn(None, "12").is_none() && drawn(None, "-1").is_none() && drawn(None, "x").is_none());
    }
}
