//! What a tap on the Bench does.

use super::error::within;
use super::kit::holds_a_wallet;
use super::{App, AppError};
use restwater_bench::BenchError;
use restwater_bench::fall::{Calibration, FallError, calibrate};
use restwater_bench::hooklength::{Hooklength, Tied, Wallet};
use restwater_bench::ladder::HeightCast;
use restwater_bench::tie_up::Allowances;
use restwater_bench::units::{LengthError, LineLength};
use restwater_compare::CastRow;
use restwater_compare::Factor;
use restwater_kit::Measured;
use restwater_kit::evening::{Evening, evening};
use restwater_kit::{Kit, logged_allowances, logged_hooklength, logged_measured};
use restwater_log::{Moment, Payload, ShotWeight, kit_of};
use restwater_screen as screen;
use restwater_screen::{BenchInput, BenchTap, LeavesView, REACTION_S};
use restwater_session::{casts_by_telling, length_mm, rows_of};
use std::collections::BTreeMap;
use uuid::Uuid;

impl App {
    /// The Bench screen.
    pub(super) fn bench(&mut self, now: &Moment) -> Result<LeavesView, AppError> {
        let plan = self.plan_on_page(now)?;
        let kit = self.kit()?;
        let mine = || self.sessions.days(&self.mine).filter(|day| day.mine);
        let all: Vec<HeightCast> = mine().flat_map(|day| heights(&day.gist.rows)).collect();
        let of_all = mine().map(|day| day.gist.made.saturating_sub(day.gist.casts) as usize).sum();
        let unseen = [of_all, self.session().map_or(0, |session| casts_by_telling(session).1)];
        let today = self.session().map(|session| heights(&rows_of(session))).unwrap_or_default();
        let water = self.session().and_then(|session| session.conditions_now().water);
        let own = kit_of(self.journal.store().device());
        let others =
            self.journal.recent().kits().iter().filter(|(id, ops)| *id != own && holds_a_wallet(ops));
        let mut kits: Vec<Uuid> = others.map(|(id, _)| *id).collect();
        kits.sort_unstable();
        Ok(screen::bench(&BenchInput {
            kit: &kit,
            choices: &self.bench,
            all: &all,
            today: &today,
            unseen,
            water,
            region: self.region.now(),
            others: &kits,
            own,
            kit_id: self.kit_id,
            plan: &self.plan_input(&plan),
            words: self.words,
        }))
    }

    /// One of the choices or keys of the Bench. An error changes nothing.
    pub(super) fn bench_tap(&mut self, tap: &BenchTap, at: &Moment) -> Result<String, AppError> {
        if let Some(payloads) = self.bench_entries(tap)? {
            let notice = self.log_kit(payloads, at)?;
            self.bench.fall_kept |= matches!(tap, BenchTap::Calibrate);
            return Ok(notice);
        }
        match tap {
            BenchTap::Splash => self.bench.falling = Some(at.clone()),
            BenchTap::Bottom => self.bottom(at)?,
            BenchTap::UseKit { kit } => {
                let own = *kit == kit_of(self.journal.store().device());
                if !own && !self.journal.recent().kits().iter().any(|(known, _)| known == kit) {
                    return Err(AppError::unknown("kit", kit));
                }
                self.choose_kit(*kit)?;
            }
            _ => self.select(tap)?,
        }
        Ok(String::new())
    }

    /// The entries that a tap writes, or `None` if it writes none.
    fn bench_entries(&mut self, tap: &BenchTap) -> Result<Option<Vec<Payload>>, AppError> {
        let kit = self.kit()?;
        Ok(Some(match tap {
            BenchTap::Tied { count }
            | BenchTap::Counted { count }
            | BenchTap::TakenOut { count }
            | BenchTap::Wanted { count } => {
                vec![self.counted(&kit, tap, *count)?]
            }
            BenchTap::CutDown { tenth_mm, count } => {
                vec![cut(&kit, self.bench.hooklength, length(*tenth_mm, 1)?, *count)?]
            }
            BenchTap::CutAll => cut_all(&plan(&kit)?)?,
            BenchTap::TieAll => tie_all(&plan(&kit)?)?,
            BenchTap::AddSpool => {
                let (diameter_um, length_tenth_mm) = (self.bench.spool_um, self.bench.spool.tenths_mm());
                vec![Payload::SpoolAdded { diameter_um, length_tenth_mm }]
            }
            BenchTap::SpoolGone { spool } => {
                let known =
                    kit.spools.iter().find(|known| known.id == *spool).ok_or(BenchError::NoSuchSpool)?;
                vec![Payload::SpoolLeft { spool: known.id, left_tenth_mm: 0 }]
            }
            BenchTap::HookKnot { .. } | BenchTap::LoopLength { .. } | BenchTap::Tags { .. } => {
                vec![Payload::AllowancesSet(logged_allowances(&allowances(kit.allowances, tap)?))]
            }
            BenchTap::Lift { .. }
            | BenchTap::Soaked { .. }
            | BenchTap::HookWeight { .. }
            | BenchTap::Height { .. }
            | BenchTap::LineDiameter { .. }
            | BenchTap::Line { .. }
            | BenchTap::Metal { .. } => vec![Payload::PopUpSet(logged_measured(&measured(kit.pop_up, tap)?))],
            BenchTap::ShotWeight { mg } => {
                let size = self.bench.size.clone().unwrap_or_else(|| "BB".into());
                vec![Payload::ShotSet(ShotWeight { size, mg: within("shot", *mg, 0, 100_000)? })]
            }
            BenchTap::Calibrate => vec![self.fall_timed(&kit)?],
            BenchTap::Rung { tenth_mm } => vec![rung(kit.ladder, length(*tenth_mm, 1)?)?],
            _ => return Ok(None),
        }))
    }

    /// The entry for a count of the selected hooklength.
    fn counted(&self, kit: &Kit, tap: &BenchTap, count: u16) -> Result<Payload, AppError> {
        let here = self.bench.hooklength;
        let hooklength = logged_hooklength(&here);
        let alone = || Wallet::default().add(here, count).map_err(BenchError::from);
        Ok(match tap {
            BenchTap::Counted { .. } => {
                alone()?;
                Payload::HooklengthsCounted { hooklength, count }
            }
            BenchTap::Wanted { .. } => {
                alone()?;
                Payload::HooklengthsWanted { hooklength, count }
            }
            BenchTap::TakenOut { .. } => {
                kit.wallet.clone().remove(here, count).map_err(BenchError::from)?;
                Payload::HooklengthsTakenOut { hooklength, count }
            }
            _ => {
                kit.wallet.clone().add(here, count).map_err(BenchError::from)?;
                Payload::HooklengthsTied { hooklength, count }
            }
        })
    }

    /// The entry for the fall that was timed, at the known depth.
    fn fall_timed(&self, kit: &Kit) -> Result<Payload, AppError> {
        let fall_ms = self.bench.fall_ms.ok_or(BenchError::NoFall)?;
        if self.bench.is_fall_kept(kit) {
            return Err(BenchError::FallKept.into());
        }
        let depth_cm = self.bench.plumbed_cm;
        let fall = Calibration { depth_m: f64::from(depth_cm) / 100.0, fall_s: f64::from(fall_ms) / 1_000.0 };
        calibrate(&[fall], REACTION_S).map_err(BenchError::from)?;
        Ok(Payload::FallTimed { depth_cm, fall_ms })
    }

    /// Changes the selection that the keys act on.
    fn select(&mut self, tap: &BenchTap) -> Result<(), AppError> {
        let here = &mut self.bench;
        match tap {
            BenchTap::Kind { hooklength } => here.hooklength = *hooklength,
            BenchTap::Length { tenth_mm } => here.hooklength.length = length(*tenth_mm, 1)?,
            BenchTap::Diameter { um } => here.hooklength.diameter_um = within("diameter", *um, 40, 1_000)?,
            BenchTap::HookSize { size } => here.hooklength.hook_size = within("hook", *size, 1, 40)?,
            BenchTap::Hair { mm } => {
                here.hooklength.hair_mm = mm.map(|mm| within("hair", mm, 1, 100)).transpose()?;
            }
            BenchTap::SpoolDiameter { um } => here.spool_um = within("spool_diameter", *um, 40, 1_000)?,
            BenchTap::SpoolLength { tenth_mm } => here.spool = length(*tenth_mm, 1)?,
            BenchTap::Plumbed { cm } => here.plumbed_cm = within("plumbed", *cm, 10, 10_000)?,
            BenchTap::Water { tenth_c } => here.water = Some(within("water", *tenth_c, 0, 350)?),
            BenchTap::ShotSize { name } if name.trim().is_empty() => {
                return Err(AppError::unknown("size", name));
            }
            BenchTap::ShotSize { name } => here.size = Some(name.trim().to_owned()),
            BenchTap::HeightsOf { all } => here.all_sessions = *all,
            _ => {}
        }
        Ok(())
    }

    /// BOTTOM: the line fell slack, which stops the timing.
    fn bottom(&mut self, at: &Moment) -> Result<(), AppError> {
        let from = self.bench.falling.as_ref().ok_or(BenchError::NotFalling)?;
        let ms = at.since(from).ms;
        let seconds = ms as f64 / 1_000.0;
        let fall = if ms <= 0 {
            Err(FallError::NoTime(seconds))
        } else if ms > 120_000 {
            Err(FallError::TooLong(seconds))
        } else {
            Ok(u32::try_from(ms).unwrap_or(0))
        };
        match fall {
            Ok(ms) => {
                (self.bench.fall_ms, self.bench.falling, self.bench.fall_kept) = (Some(ms), None, false);
            }
            Err(error) => {
                // The timing was forgotten: the fall is discarded, since it can't be stopped any more.
                if matches!(error, FallError::TooLong(_)) {
                    self.bench.falling = None;
                }
                return Err(BenchError::from(error).into());
            }
        }
        Ok(())
    }
}

/// The longest line that any spool holds, in tenths of a millimetre.
const LONGEST_TENTHS: u32 = 100_000_000;

/// A length of at least `least`, and no longer than any spool of line.
fn length(tenth_mm: u32, least: u32) -> Result<LineLength, AppError> {
    if tenth_mm < least {
        return Err(BenchError::Length(LengthError::NotPositive).into());
    }
    if tenth_mm > LONGEST_TENTHS {
        return Err(BenchError::Length(LengthError::Absurd(f64::from(tenth_mm) / 10_000.0)).into());
    }
    Ok(LineLength::from_tenths_mm(tenth_mm))
}

fn allowances(mut now: Allowances, tap: &BenchTap) -> Result<Allowances, AppError> {
    match tap {
        BenchTap::HookKnot { tenth_mm } => now.hook_knot = length(*tenth_mm, 0)?,
        BenchTap::LoopLength { tenth_mm } => now.loop_length = length(*tenth_mm, 0)?,
        BenchTap::Tags { tenth_mm } => now.tag = length(*tenth_mm, 0)?,
        _ => {}
    }
    Ok(now)
}

/// The ladder with a height added, or removed if it was on it.
fn rung(mut heights: Vec<LineLength>, height: LineLength) -> Result<Payload, AppError> {
    match heights.iter().position(|h| *h == height) {
        Some(i) => drop(heights.remove(i)),
        None => heights.push(height),
    }
    heights.sort_unstable();
    restwater_bench::ladder::tried(&heights, &[]).map_err(BenchError::from)?;
    let heights_tenth_mm = heights.into_iter().map(LineLength::tenths_mm).collect();
    Ok(Payload::LadderSet { heights_tenth_mm })
}

/// Some of the hooklength that the keys act on are cut down.
fn cut(kit: &Kit, from: Hooklength, to: LineLength, count: u16) -> Result<Payload, AppError> {
    if to >= from.length {
        return Err(BenchError::NotShorter { from: from.length, to }.into());
    }
    kit.wallet.clone().remove(from, count).map_err(BenchError::from)?;
    Ok(cut_down(&from, to, count))
}

fn cut_down(from: &Hooklength, to: LineLength, count: u16) -> Payload {
    Payload::HooklengthsCutDown { from: logged_hooklength(from), to_tenth_mm: to.tenths_mm(), count }
}

fn plan(kit: &Kit) -> Result<Evening, AppError> {
    Ok(evening(kit).map_err(BenchError::from)?)
}

fn cut_all(plan: &Evening) -> Result<Vec<Payload>, AppError> {
    let mut alike: BTreeMap<(Hooklength, LineLength), u16> = BTreeMap::new();
    for cut in &plan.cuts {
        *alike.entry((cut.tie, cut.need.length)).or_default() += 1;
    }
    if alike.is_empty() {
        return Err(BenchError::NothingToCutDown.into());
    }
    Ok(alike.into_iter().map(|((from, to), count)| cut_down(&from, to, count)).collect())
}

/// Ties everything for which the spools hold enough line; the rest stays on the list.
fn tie_all(plan: &Evening) -> Result<Vec<Payload>, AppError> {
    let mut payloads = Vec::new();
    let mut why = None;
    for line in &plan.lines {
        let found = match &line.plan {
            Ok(found) => found,
            Err(error) => {
                why = Some(*error);
                continue;
            }
        };
        let tied = |t: &Tied| Payload::HooklengthsTied {
            hooklength: logged_hooklength(&t.hooklength),
            count: t.count,
        };
        payloads.extend(line.to_tie.iter().map(tied));
        let left = found.from.iter().filter_map(|from| {
            let spool = *line.spools.get(from.spool)?;
            Some(Payload::SpoolLeft { spool, left_tenth_mm: from.left.tenths_mm() })
        });
        payloads.extend(left);
    }
    match (payloads.is_empty(), why) {
        (true, Some(error)) => Err(BenchError::from(error).into()),
        (true, None) => Err(BenchError::NothingToTie.into()),
        (false, _) => Ok(payloads),
    }
}

fn measured(mut pop_up: Measured, tap: &BenchTap) -> Result<Measured, AppError> {
    match tap {
        BenchTap::Lift { mg } => pop_up.lift_mg = within("lift", *mg, 1, 100_000)?,
        BenchTap::Soaked { minutes } => pop_up.soaked_min = within("soaked", *minutes, 0, 10_000)?,
        BenchTap::HookWeight { mg } => pop_up.hook_mg = within("hook_weight", *mg, 1, 100_000)?,
        BenchTap::Height { tenth_mm } => pop_up.height = length(*tenth_mm, 1)?,
        BenchTap::LineDiameter { um } => pop_up.line_um = within("line_um", *um, 40, 1_000)?,
        BenchTap::Line { material } => pop_up.line = *material,
        BenchTap::Metal { metal } => pop_up.shot = *metal,
        _ => {}
    }
    Ok(pop_up)
}

/// The casts with a pop-up among the rows; a height is spelled in centimetres there.
pub(super) fn heights(rows: &[CastRow]) -> Vec<HeightCast> {
    let cast = |row: &CastRow| {
        let height =
            LineLength::from_rounded_mm(length_mm(row.setup.get(&Factor::Height)?).filter(|mm| *mm > 0)?);
        Some(HeightCast {
            begins: !row.twitched,
            height,
            minutes: row.wait.minutes(),
            bites: u16::from(row.wait.is_bite()),
        })
    };
    rows.iter().filter_map(cast).collect()
}
