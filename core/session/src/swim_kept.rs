//! The swim of a session, kept between taps: most entries change neither its cells nor what the casts before them reached.

use super::model::Session;
use super::water::swim_input;
use restwater_log::RodNumber;
use restwater_swim::{CastAt, CellId, Spot, Swim, SwimError, SwimInput};
use restwater_waits::SpotsKept;

/// The swim as of the last question. For every session it gives the result of [`super::swim_of`].
#[derive(Debug, Default)]
pub struct SwimKept {
    swim: Option<Swim>,
    reached: Reached,
    /// The state of the filter for each rod, as of the last question about it.
    casts: Vec<(RodNumber, SpotsKept)>,
}

/// The cells that casts reached, by everything that decides this within one swim.
#[derive(Debug, Default)]
pub(super) struct Reached(Vec<(CastTo, Vec<CellId>)>);

/// Where a cast went and with what.
type CastTo = (Spot, bool, Option<f64>);

impl SwimKept {
    /// Updates it to a session.
    pub(super) fn bring_up_to(&mut self, session: &Session) -> Result<(), SwimError> {
        let input = swim_input(session);
        let (swim, same) = match Swim::renewed(self.swim.take(), input.clone()) {
            // Bounds that leave no water are ignored.
            Err(SwimError::NoWater) => Swim::renewed(None, SwimInput { boundary: None, ..input })?,
            other => other?,
        };
        if !same {
            self.reached = Reached::default();
        }
        self.swim = Some(swim);
        Ok(())
    }

    /// The swim of the session to which it was last updated.
    pub fn swim(&self) -> Option<&Swim> {
        self.swim.as_ref()
    }

    pub(super) fn parts(&mut self, rod: RodNumber) -> Option<(&Swim, &mut Reached, &mut SpotsKept)> {
        let place = self.casts.iter().position(|(of, _)| *of == rod).unwrap_or_else(|| {
            self.casts.push((rod, SpotsKept::default()));
            self.casts.len() - 1
        });
        Some((self.swim.as_ref()?, &mut self.reached, &mut self.casts[place].1))
    }
}

impl Reached {
    /// The cells that the lead of a cast reached with probability one half or more.
    pub(super) fn by(&mut self, swim: &Swim, cast: &CastAt) -> &[CellId] {
        let to = (cast.spot, cast.clipped, cast.lead_g);
        let place = self.0.iter().position(|(known, _)| *known == to).unwrap_or_else(|| {
            self.0.push((to, swim.reached_by(cast)));
            self.0.len() - 1
        });
        &self.0[place].1
    }
}
