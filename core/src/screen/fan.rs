//! The small swim fan on the Bank screen: the session's casts as the swim sees them, packed for a small canvas.

use super::pad::Glass;
use super::place::reach_m;
use crate::log::{Moment, Spot as LoggedSpot};
use crate::session::{Cast, EndCause, Session};
use crate::swim::{
    AimingMark, Band, CastAt, Detail, Fan, Hand, KeptBack, SceneAsk, SceneWords, Spot, Swim, SwimError,
    SwimInput, SwimScene,
};

/// The fan of a session, or none before the first spot is known: there is nothing to draw then.
///
/// The ring is on the spot where the cast lies or the next one of this rod goes.
pub fn fan(
    session: &Session,
    aimed: Option<&LoggedSpot>,
    now: &Moment,
    glass: &Glass,
    (width_px, height_px): (f64, f64),
) -> Result<Option<SwimScene>, SwimError> {
    let input = swim_input(session);
    if input.casts.is_empty() {
        return Ok(None);
    }
    let swim = Swim::new(input)?;
    let ask = SceneAsk {
        hand: if glass.left_handed { Hand::Left } else { Hand::Right },
        detail: Detail::Small,
        next: aimed.and_then(|spot| swim.cell_of(spot_of(spot))),
        ..SceneAsk::new(width_px, height_px, glass.px_per_mm, glass.text_scale)?
    };
    swim.scene(&swim.figures(now.wall_ms), &ask, &SceneWords::default()).map(Some)
}

/// What the session tells the swim.
pub fn swim_input(session: &Session) -> SwimInput {
    let bounds = session.swim.as_ref();
    let edges: Vec<f64> =
        bounds.map_or_else(Vec::new, |b| b.band_edges_cm.iter().map(|cm| f64::from(*cm) / 100.0).collect());
    let defaults = SwimInput::default();
    SwimInput {
        marks: session
            .marks
            .iter()
            .map(|m| AimingMark {
                id: m.id.to_string(),
                name: m.name.clone(),
                bearing_deg: degrees(m.bearing_cdeg),
            })
            .collect(),
        bands: edges.windows(2).map(|e| Band { from_m: e[0], to_m: e[1] }).collect(),
        fan: bounds.map(|b| Fan { from_deg: degrees(b.left_cdeg), to_deg: degrees(b.right_cdeg) }),
        casts: session.casts.iter().filter_map(cast_at).collect(),
        kept_back: session.kept_back.iter().map(kept_back).collect(),
        rest_target_min: bounds.map_or(defaults.rest_target_min, |b| f64::from(b.rest_target_min)),
        ..defaults
    }
}

fn degrees(cdeg: i32) -> f64 {
    f64::from(cdeg) / 100.0
}

fn spot_of(spot: &LoggedSpot) -> Spot {
    Spot { bearing_deg: degrees(spot.bearing_cdeg), range_m: reach_m(spot.reach) }
}

fn kept_back(kept: &crate::session::KeptBack) -> KeptBack {
    KeptBack {
        fan: Fan { from_deg: degrees(kept.bearing_cdeg.0), to_deg: degrees(kept.bearing_cdeg.1) },
        band: Band { from_m: f64::from(kept.range_cm.0) / 100.0, to_m: f64::from(kept.range_cm.1) / 100.0 },
        since_ms: kept.since.wall_ms,
        released_ms: kept.released.as_ref().map(|at| at.wall_ms),
    }
}

/// A cast as the swim sees it; none where its spot was not set.
fn cast_at(cast: &Cast) -> Option<CastAt> {
    let spot = cast.spot.as_ref()?;
    let ended_with =
        |wanted: fn(&EndCause) -> bool| u32::from(cast.end.as_ref().is_some_and(|end| wanted(&end.cause)));
    Some(CastAt {
        spot: spot_of(spot),
        clipped: spot.clipped,
        lead_g: cast.rig.lead_mg.map(|mg| f64::from(mg) / 1_000.0),
        start_ms: cast.start.wall_ms,
        end_ms: cast.end.as_ref().map(|end| end.at.wall_ms),
        bites: u32::from(cast.bite.is_some()),
        bite_ms: cast.bite.as_ref().map(|(at, _)| at.wall_ms),
        liners: u32::try_from(cast.liners.len()).unwrap_or(u32::MAX),
        lost: ended_with(|cause| matches!(cause, EndCause::Lost)),
        landed: ended_with(|cause| matches!(cause, EndCause::Landed { .. })),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::log::{Reach, Rig};
    use crate::session::{CastEnd, fold};
    use crate::swim::MarkShape;
    use uuid::Uuid;

    fn at(minute: i64) -> Moment {
        Moment {
            wall_ms: minute * 60_000,
            offset_min: 0,
            zone: String::new(),
            mono_ms: minute * 60_000,
            boot: "a".into(),
            approx_s: 0,
        }
    }

    fn wraps(bearing_cdeg: i32, hundredths: u32) -> LoggedSpot {
        LoggedSpot {
            mark: None,
            bearing_cdeg,
            reach: Reach::Wraps { hundredths, span_tenth_mm: 20_000 },
            clipped: true,
        }
    }

    fn cast(start: i64, spot: Option<LoggedSpot>, bite: Option<i64>, end: Option<(i64, EndCause)>) -> Cast {
        Cast {
            op: Uuid::from_u128(start.unsigned_abs().into()),
            rod: 1,
            start: at(start),
            rig: Rig { lead_mg: Some(30_000), ..Rig::default() },
            spot,
            bite: bite.map(|minute| (at(minute), Uuid::nil())),
            liners: Vec::new(),
            indications: Vec::new(),
            twitches: Vec::new(),
            end: end.map(|(minute, cause)| CastEnd { cause, at: at(minute), op: Uuid::nil() }),
        }
    }

    fn session(casts: Vec<Cast>) -> Session {
        let mut session = fold(Uuid::nil(), &[]);
        session.casts = casts;
        session
    }

    const GLASS: Glass = Glass {
        width_px: 1080.0,
        height_px: 2340.0,
        px_per_mm: 16.6,
        text_scale: 1.0,
        left_handed: false,
        inset_top_px: 0.0,
        inset_bottom_px: 0.0,
    };

    #[test]
    fn casts_come_over_with_their_spot_in_degrees_and_metres() {
        let landed =
            cast(10, Some(wraps(-1400, 1100)), Some(27), Some((30, EndCause::Landed { fish: None })));
        let input = swim_input(&session(vec![landed, cast(40, None, None, None)]));
        // 11 wraps of 2 m are 22 m; the cast without a spot can't be drawn.
        assert_eq!(input.casts.len(), 1);
        let only = input.casts[0];
        assert_eq!((only.spot.bearing_deg, only.spot.range_m), (-14.0, 22.0));
        assert_eq!((only.bites, only.landed, only.lost), (1, 1, 0));
        assert_eq!(
            (only.lead_g, only.bite_ms, only.end_ms),
            (Some(30.0), Some(27 * 60_000), Some(30 * 60_000))
        );
    }

    #[test]
    fn the_fan_shows_the_bite_and_rings_the_spot() {
        let spot = wraps(-1400, 1700);
        let casts = vec![
            cast(0, Some(spot), Some(17), Some((18, EndCause::Landed { fish: None }))),
            cast(20, Some(wraps(300, 1900)), None, None),
        ];
        let drawn = fan(&session(casts), Some(&spot), &at(25), &GLASS, (290.0, 290.0)).unwrap().unwrap();
        assert!(drawn.mark_shape.contains(&MarkShape::BiteDiamond));
        assert!(drawn.line_role.contains(&crate::swim::LineRole::NextRing));
        assert_eq!((drawn.width_px, drawn.height_px), (290.0, 290.0));
    }

    #[test]
    fn without_a_spot_there_is_no_fan() {
        let none = session(vec![cast(0, None, None, None)]);
        assert_eq!(fan(&none, None, &at(5), &GLASS, (290.0, 290.0)), Ok(None));
    }
}
