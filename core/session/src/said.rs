//! What a session takes from entries about the day and about the swim.

use super::Logged;
use super::model::{ConditionsAt, KeptBack, LandmarkKind, Mark, Note, PegPlace, Session};
use super::step::Step;
use super::water::same_bounds;
use restwater_log::Payload;
use restwater_sky::conditions::Conditions;
use restwater_swim::FeatureKind;

impl Session {
    /// Notes, and the conditions.
    pub(super) fn take_said(&mut self, step: &Step) {
        match step.payload {
            Payload::Noted { text } => {
                self.notes.push(Note { op: step.op.id, at: step.at.clone(), text: text.clone() });
            }
            Payload::PlannedNext { text } => {
                self.next_time.push(Note { op: step.op.id, at: step.at.clone(), text: text.clone() });
            }
            Payload::ConditionsSet(conditions) => {
                let (op, at, conditions) = (step.op.id, step.at.clone(), Conditions::from_logged(conditions));
                self.conditions.push(ConditionsAt { op, at, conditions });
            }
            _ => {}
        }
    }

    /// The swim: aiming marks, water kept back, bounds, features, hazards and the place of the peg.
    pub(super) fn take_swim(&mut self, step: &Step) {
        match step.payload {
            Payload::MarkSet { name, bearing_cdeg } => {
                let mark = Mark { id: step.op.id, name: name.clone(), bearing_cdeg: *bearing_cdeg };
                self.marks.push(mark);
            }
            Payload::KeptBack { from_cdeg, to_cdeg, from_cm, to_cm } => self.kept_back.push(KeptBack {
                id: step.op.id,
                since: step.at.clone(),
                bearing_cdeg: (*from_cdeg, *to_cdeg),
                range_cm: (*from_cm, *to_cm),
                released: None,
            }),
            Payload::Released { kept } => {
                if let Some(water) = self.kept_back.iter_mut().find(|water| water.id == *kept) {
                    water.released = Some(step.at.clone());
                }
            }
            Payload::SwimSet(setup) => {
                // The latest statement about the bounds counts: pegs and far bank replace an outline.
                if !same_bounds(&self.swim, setup) {
                    self.outline_cm.clear();
                }
                self.swim = setup.clone();
            }
            Payload::OutlineSet { corners_cm } => self.outline_cm.clone_from(corners_cm),
            Payload::FeatureSet { feature, name, bearing_cdeg, range_cm } => {
                let what = LandmarkKind::Feature(FeatureKind::from_logged(feature));
                self.landmarks.push(step.landmark(name, what, *bearing_cdeg, *range_cm));
            }
            Payload::HazardSet { name, bearing_cdeg, range_cm, clear_cm } => {
                let what = LandmarkKind::Hazard { clear_cm: *clear_cm };
                self.landmarks.push(step.landmark(name, what, *bearing_cdeg, *range_cm));
            }
            Payload::PegPlaced { lat_e7, lon_e7, straight_out_cdeg } => {
                let (lat_e7, lon_e7, straight_out_cdeg) = (*lat_e7, *lon_e7, *straight_out_cdeg);
                self.peg_place = Some(PegPlace { lat_e7, lon_e7, straight_out_cdeg });
            }
            _ => {}
        }
    }
}
