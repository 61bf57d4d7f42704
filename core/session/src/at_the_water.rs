//! Which entries are made at the water: the one rule for an END of another phone, which doesn't count if the angler fished on, and
//! for an END that was tapped long after everything else.

use restwater_log::Payload;

/// Where an entry is made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Made {
    /// At the water, about a cast. Its time is that of the cast, which may be corrected later.
    OnACast,
    /// At the water, about anything else.
    AtTheWater,
    /// At the scales: at the water too, but it may be entered once the session has ended.
    AtTheScales,
    /// A choice for what comes next. It can be made only while the session is open, but at home as well if END was forgotten.
    Choice,
    /// Anywhere at any time: notes, corrections, the map.
    Anywhere,
}

impl Made {
    pub(super) fn of(payload: &Payload) -> Self {
        match payload {
            Payload::Away
            | Payload::Returned
            | Payload::Fed(_)
            | Payload::FishShown { .. }
            | Payload::NeighbourCaught { .. }
            | Payload::KeptBack { .. }
            | Payload::Released { .. }
            | Payload::ConditionsSet(_)
            | Payload::HooklengthLost { .. } => Self::AtTheWater,
            Payload::NetWeighed { .. } | Payload::OtherNetTold { .. } => Self::AtTheScales,
            Payload::MatchSet(_)
            | Payload::MatchOff
            | Payload::PlanTaken { .. }
            | Payload::PlanDropped
            | Payload::AlternationStarted { .. }
            | Payload::AlternationEnded
            | Payload::RigSet { .. }
            | Payload::SpotSet { .. }
            | Payload::FeederSet { .. } => Self::Choice,
            Payload::CastAdded { .. } => Self::Anywhere,
            other if other.rod().is_some() => Self::OnACast,
            _ => Self::Anywhere,
        }
    }

    /// Whether it shows that the session was open where it was made.
    pub(super) fn keeps_open(self) -> bool {
        matches!(self, Self::OnACast | Self::AtTheWater | Self::Choice)
    }

    /// Whether it shows by its own time that somebody was at the water.
    pub(super) fn is_there(self) -> bool {
        matches!(self, Self::AtTheWater | Self::AtTheScales)
    }
}

#[cfg(test)]
mod tests {
    use super::super::fold;
    use super::super::late_end::last_before_end;
    use super::super::written::{SESSION, Written};
    use super::*;

    #[test]
    fn what_is_done_at_the_water_is_later_than_the_last_cast_and_what_is_chosen_or_written_is_not() {
        let last_s = |payload: Payload| {
            let mut day = Written::new(1);
            day.log(60, Payload::Cast { rod: 1 });
            day.log(600, Payload::WoundIn { rod: 1 });
            day.log(1_200, payload);
            day.log(1_800, Payload::SessionEnded);
            last_before_end(&fold(SESSION, &day.ops)).map(|at| at.at_ms / 1_000)
        };
        for there in [
            Payload::KeptBack { from_cdeg: -500, to_cdeg: 500, from_cm: 2_000, to_cm: 4_000 },
            Payload::HooklengthLost { rod: 1 },
            Payload::Away,
        ] {
            assert_eq!(last_s(there.clone()), Some(1_200), "{there:?}");
        }
        let rig = restwater_log::Rig::default();
        for not in
            [Payload::RigSet { rod: 1, rig }, Payload::Noted { text: "mist".into() }, Payload::PlanDropped]
        {
            assert_eq!(last_s(not.clone()), Some(600), "{not:?}");
        }
    }
}
