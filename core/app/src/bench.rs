//! What a tap on the Bench does.

use super::{App, AppError};
use restwater_bench::BenchError;
use restwater_bench::fall::{Calibration, FallError, calibrate};
use restwater_bench::hooklength::{Hooklength, Tied, WalletError};
use restwater_bench::ladder::HeightCast;
use restwater_bench::units::{LengthError, LineLength};
use restwater_compare::CastRow;
use restwater_compare::Factor;
use restwater_kit::Measured;
use restwater_kit::evening::{Evening, evening};
use restwater_kit::{Kit, logged_allowances, logged_hooklength, logged_measured};
use restwater_log::{LineMaterial, Moment, Payload, ShotMetal, ShotWeight, kit_of};
use restwater_screen as screen;
use restwater_screen::{BenchInput, LeavesView, REACTION_S};
use restwater_session::{length_mm, rows_of};
use std::collections::BTreeMap;
use uuid::Uuid;

impl App {
    /// The Bench screen.
    pub(super) fn bench(&mut self) -> Result<LeavesView, AppError> {
        let kit = self.kit()?;
        let all: Vec<HeightCast> = self.sessions.days().flat_map(|(_, day)| heights(&day.rows)).collect();
        let today = self.session().map(|session| heights(&rows_of(session))).unwrap_or_default();
        let water = self.session().and_then(|session| session.conditions_now().water);
        let own = kit_of(self.store.device());
        let mut kits: Vec<Uuid> =
            self.recent.kits().iter().map(|(id, _)| *id).filter(|id| *id != own).collect();
        kits.sort_unstable();
        Ok(screen::bench(&BenchInput {
            kit: &kit,
            choices: &self.bench,
            all: &all,
            today: &today,
            water,
            region: self.region,
            others: &kits,
            own,
            kit_id: self.kit_id,
            words: &self.words,
        }))
    }

    /// One of the choices or keys of the Bench. An error changes nothing.
    pub(super) fn choose_bench(&mut self, field: &str, value: &str, at: &Moment) -> Result<String, AppError> {
        if let Some(payloads) = self.bench_entries(field, value)? {
            return self.log_kit(payloads, at);
        }
        match field {
            "splash" => self.bench.falling = Some(at.clone()),
            "bottom" => self.bottom(at)?,
            "kit" => {
                let own = kit_of(self.store.device());
                let is_one = |id: &Uuid| *id == own || self.recent.kits().iter().any(|(kit, _)| kit == id);
                let id = value.parse().ok().filter(is_one);
                self.choose_kit(id.ok_or_else(|| AppError::unknown(field, value))?)?;
            }
            _ => self.under_the_thumb(field, value)?,
        }
        Ok(String::new())
    }

    /// The entries that a tap makes; none where it makes none.
    fn bench_entries(&mut self, field: &str, value: &str) -> Result<Option<Vec<Payload>>, AppError> {
        let hooklength = self.bench.hooklength;
        let logged = logged_hooklength(&hooklength);
        let kit = self.kit()?;
        let one = |payload| Ok(Some(vec![payload]));
        match field {
            "tied" => {
                let count = count(field, value)?;
                kit.wallet.clone().add(hooklength, count).map_err(BenchError::from)?;
                one(Payload::HooklengthsTied { hooklength: logged, count })
            }
            "counted" => {
                let count = count(field, value)?;
                restwater_bench::hooklength::Wallet::default()
                    .add(hooklength, count)
                    .map_err(BenchError::from)?;
                one(Payload::HooklengthsCounted { hooklength: logged, count })
            }
            "taken_out" => {
                let count = count(field, value)?;
                kit.wallet.clone().remove(hooklength, count).map_err(BenchError::from)?;
                one(Payload::HooklengthsTakenOut { hooklength: logged, count })
            }
            "wanted" => {
                let count = count(field, value)?;
                restwater_bench::hooklength::Wallet::default()
                    .add(hooklength, count)
                    .map_err(BenchError::from)?;
                one(Payload::HooklengthsWanted { hooklength: logged, count })
            }
            "cut" => one(cut(&kit, hooklength, field, value)?),
            "cut_all" => Ok(Some(cut_all(&plan(&kit)?)?)),
            "tie_all" => Ok(Some(tie_all(&plan(&kit)?)?)),
            "spool_add" => {
                let (diameter_um, length_tenth_mm) = (self.bench.spool_um, self.bench.spool.tenths_mm());
                one(Payload::SpoolAdded { diameter_um, length_tenth_mm })
            }
            "spool_gone" => {
                let spool = kit.spools.iter().find(|spool| spool.id.to_string() == value);
                let spool = spool.ok_or(BenchError::NoSuchSpool)?.id;
                one(Payload::SpoolLeft { spool, left_tenth_mm: 0 })
            }
            "hook_knot" | "loop_length" | "tag" => {
                let mut allowances = kit.allowances;
                let length = tenths(field, value, 0)?;
                match field {
                    "hook_knot" => allowances.hook_knot = length,
                    "loop_length" => allowances.loop_length = length,
                    _ => allowances.tag = length,
                }
                one(Payload::AllowancesSet(logged_allowances(&allowances)))
            }
            "lift" | "soaked" | "hook_weight" | "height" | "line_um" | "line" | "shot_metal" => {
                one(Payload::PopUpSet(logged_measured(&measured(kit.pop_up, field, value)?)))
            }
            "shot" => {
                let size = self.bench.size.clone().unwrap_or_else(|| "BB".into());
                let mg = figure(field, value, 0, 100_000)? as u32;
                one(Payload::ShotSet(ShotWeight { size, mg }))
            }
            "calibrate" => {
                let fall_ms = self.bench.fall_ms.ok_or(BenchError::NoFall)?;
                let depth_cm = self.bench.plumbed_cm;
                let fall = Calibration {
                    depth_m: f64::from(depth_cm) / 100.0,
                    fall_s: f64::from(fall_ms) / 1_000.0,
                };
                calibrate(&[fall], REACTION_S).map_err(BenchError::from)?;
                one(Payload::FallTimed { depth_cm, fall_ms })
            }
            "rung" => {
                let height = tenths(field, value, 1)?;
                let mut heights = kit.ladder.clone();
                match heights.iter().position(|h| *h == height) {
                    Some(i) => drop(heights.remove(i)),
                    None => heights.push(height),
                }
                heights.sort_unstable();
                restwater_bench::ladder::tried(&heights, &[]).map_err(BenchError::from)?;
                let heights_tenth_mm = heights.into_iter().map(LineLength::tenths_mm).collect();
                one(Payload::LadderSet { heights_tenth_mm })
            }
            _ => Ok(None),
        }
    }

    /// Changes what the keys act on.
    fn under_the_thumb(&mut self, field: &str, value: &str) -> Result<(), AppError> {
        let here = &mut self.bench;
        match field {
            "kind" => {
                here.hooklength = serde_json::from_str(value).map_err(|_| AppError::unknown(field, value))?;
            }
            "length" => here.hooklength.length = tenths(field, value, 1)?,
            "diameter" => here.hooklength.diameter_um = figure(field, value, 40, 1_000)? as u16,
            "hook" => here.hooklength.hook_size = figure(field, value, 1, 40)? as u8,
            "hair" => {
                here.hooklength.hair_mm = Some(figure(field, value, 0, 100)? as u16).filter(|mm| *mm > 0);
            }
            "spool_diameter" => here.spool_um = figure(field, value, 40, 1_000)? as u16,
            "spool_length" => here.spool = tenths(field, value, 1)?,
            "plumbed" => here.plumbed_cm = figure(field, value, 10, 10_000)? as u32,
            "water" => here.water = Some(figure(field, value, 0, 350)? as i16),
            "size" if !value.trim().is_empty() => here.size = Some(value.trim().to_owned()),
            "heights_of" if matches!(value, "all" | "this") => here.all_sessions = value == "all",
            _ => return Err(AppError::unknown(field, value)),
        }
        Ok(())
    }

    /// The line fell slack.
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
            Ok(ms) => (self.bench.fall_ms, self.bench.falling) = (Some(ms), None),
            Err(error) => {
                // A fall that was forgotten can't be stopped any more: it is given up.
                if matches!(error, FallError::TooLong(_)) {
                    self.bench.falling = None;
                }
                return Err(BenchError::from(error).into());
            }
        }
        Ok(())
    }
}

fn figure(field: &str, value: &str, least: i64, most: i64) -> Result<i64, AppError> {
    let n: i64 = value.parse().map_err(|_| AppError::unknown(field, value))?;
    if n < 0 {
        return Err(BenchError::Negative(n).into());
    }
    if (least..=most).contains(&n) { Ok(n) } else { Err(AppError::unknown(field, value)) }
}

fn count(field: &str, value: &str) -> Result<u16, AppError> {
    let n: i64 = value.parse().map_err(|_| AppError::unknown(field, value))?;
    match u16::try_from(n) {
        Ok(count) => Ok(count),
        Err(_) if n < 0 => Err(BenchError::Negative(n).into()),
        Err(_) => Err(BenchError::Wallet(WalletError::Absurd(u32::try_from(n).unwrap_or(u32::MAX))).into()),
    }
}

fn tenths(field: &str, value: &str, least: i64) -> Result<LineLength, AppError> {
    let n: i64 = value.parse().map_err(|_| AppError::unknown(field, value))?;
    if n < least {
        return Err(if n < 0 {
            BenchError::Negative(n)
        } else {
            BenchError::Length(LengthError::NotPositive)
        }
        .into());
    }
    let length = u32::try_from(n).ok().filter(|n| *n <= 100_000_000);
    length
        .map(LineLength::from_tenths_mm)
        .ok_or_else(|| BenchError::Length(LengthError::Absurd(n as f64 / 10_000.0)).into())
}

/// "4572 2": two of the hooklength under the thumb to 18 in.
fn cut(kit: &Kit, from: Hooklength, field: &str, value: &str) -> Result<Payload, AppError> {
    let (to, number) = value.split_once(' ').ok_or_else(|| AppError::unknown(field, value))?;
    let (to, count) = (tenths(field, to, 1)?, count(field, number)?);
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
        return Err(BenchError::NothingTo("cut down").into());
    }
    Ok(alike.into_iter().map(|((from, to), count)| cut_down(&from, to, count)).collect())
}

/// Everything whose spools hold enough line; what can't be tied stays to be tied.
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
        (true, None) => Err(BenchError::NothingTo("tie").into()),
        (false, _) => Ok(payloads),
    }
}

fn measured(mut pop_up: Measured, field: &str, value: &str) -> Result<Measured, AppError> {
    match field {
        "lift" => pop_up.lift_mg = figure(field, value, 1, 100_000)? as u32,
        "soaked" => pop_up.soaked_min = figure(field, value, 0, 10_000)? as u16,
        "hook_weight" => pop_up.hook_mg = figure(field, value, 1, 100_000)? as u32,
        "height" => pop_up.height = tenths(field, value, 1)?,
        "line_um" => pop_up.line_um = figure(field, value, 40, 1_000)? as u16,
        "line" => {
            pop_up.line = match value {
                "nylon" => LineMaterial::Nylon,
                "fluorocarbon" => LineMaterial::Fluorocarbon,
                "braid" => LineMaterial::Braid,
                _ => return Err(AppError::unknown(field, value)),
            }
        }
        _ => {
            pop_up.shot = match value {
                "tungsten" => ShotMetal::Tungsten,
                "tin" => ShotMetal::Tin,
                "steel" => ShotMetal::Steel,
                "lead" => ShotMetal::Lead,
                _ => return Err(AppError::unknown(field, value)),
            }
        }
    }
    Ok(pop_up)
}

/// The casts with a pop-up among the rows; a height is spelled in centimetres there.
pub(super) fn heights(rows: &[CastRow]) -> Vec<HeightCast> {
    let cast = |row: &CastRow| {
        let height =
            LineLength::from_rounded_mm(length_mm(row.setup.get(&Factor::Height)?).filter(|mm| *mm > 0)?);
        Some(HeightCast { height, minutes: row.wait.minutes(), bites: u16::from(row.wait.is_bite()) })
    };
    rows.iter().filter_map(cast).collect()
}
