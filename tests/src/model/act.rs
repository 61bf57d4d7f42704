//! The only place where the model uses the core's types: day-file JSON becomes an action, and what the app
//! shows becomes plain values.

use super::clock::Reading;
use crate::phone::Seeded;
use restwater_app::{Action, App, AppError, ErrorKind, Screen, Which};
use restwater_exchange::Progress;
use restwater_log::Moment;
use restwater_screen::{BankState, Key, Wording};
use restwater_session::{Cast, EndCause, RodState};
use serde_json::{Map, Value, json};
use std::collections::BTreeMap;
use std::ops::ControlFlow;
use std::path::{Path, PathBuf};

/// The answer to a tap.
pub struct Tapped {
    /// The log grew.
    pub changed: bool,
    /// The notice about it.
    pub notice: String,
    /// The Bank screen after it.
    pub bank: Bank,
}

/// Why a call did nothing.
#[derive(Debug)]
pub struct Refused {
    /// Nothing could be saved: no room on the disk.
    pub not_saved: bool,
    /// A bug in the core, or a log reported as damaged.
    pub fault: bool,
    /// In words.
    pub why: String,
}

/// A cast as the app shows it.
#[derive(Debug, Clone, PartialEq)]
pub struct CastShown {
    /// Its rod.
    pub rod: u64,
    /// What ended it.
    pub end: Option<String>,
    /// Whether there was a bite.
    pub bitten: bool,
    /// Milliseconds from the splash to the bite or the end, if it has ended.
    pub wait_ms: Option<i64>,
    /// Where it was aimed.
    pub spot: Option<Value>,
}

/// The session shown.
#[derive(Debug, Clone, PartialEq)]
pub struct Shown {
    /// Its id.
    pub id: String,
    /// Whether taps go to it.
    pub open: bool,
    /// Its casts by their ids.
    pub casts: BTreeMap<String, CastShown>,
    /// Names of marks, features and hazards by their ids.
    pub things: BTreeMap<String, String>,
    /// What each rod does: "ready", "out" or "fish_on".
    pub rods: Vec<&'static str>,
    /// The lines of the plan that it follows, if any.
    pub plan: Option<Value>,
}

/// What the Bank screen shows.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Bank {
    /// What UNDO would undo.
    pub undo: String,
    /// What REDO would restore.
    pub redo: String,
    /// Milliseconds that each rod's clock shows, and whether its bait is out.
    pub clocks: Vec<(i64, bool)>,
}

/// Screens opened by one step: all of them would take half of the time of a day.
const AT_ONCE: usize = 4;

fn go(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

/// The phone's clocks in the form that the core takes.
pub fn moment(reading: &Reading) -> Moment {
    Moment {
        wall_ms: reading.wall_ms,
        offset_min: reading.offset_min,
        zone: String::new(),
        mono_ms: reading.mono_ms,
        boot: reading.boot.clone(),
        approx_s: 0,
    }
}

/// The action of a line of a day file.
pub fn action(line: &Map<String, Value>) -> Result<Action, String> {
    serde_json::from_value(Value::Object(line.clone()))
        .map_err(|e| format!("{}: {e}", Value::Object(line.clone())))
}

fn refused(app: &App, error: &AppError) -> Refused {
    let kind = error.kind();
    let fault =
        matches!(kind, ErrorKind::Internal | ErrorKind::Damaged | ErrorKind::Newer | ErrorKind::Foreign);
    Refused { not_saved: kind == ErrorKind::NotSaved, fault, why: app.message(error) }
}

/// An error of the model itself.
fn fault(error: &serde_json::Error) -> Refused {
    Refused { not_saved: false, fault: true, why: error.to_string() }
}

/// Opens the app.
pub fn open(dir: &Path, seed: u64, at: &Reading) -> Result<App, String> {
    App::open(dir, Box::new(Seeded::new(seed)), &moment(at)).map_err(|e| e.to_string())
}

/// One tap.
pub fn tap(app: &mut App, action: &Action, at: &Reading) -> Result<Tapped, Refused> {
    match app.act(action, &moment(at)) {
        Ok(update) => {
            let bank = bank_of(&update.screen);
            Ok(Tapped { changed: update.changed, notice: update.notice, bank })
        }
        Err(error) => Err(refused(app, &error)),
    }
}

/// Entries of the session shown that are not `known` yet, as JSON.
pub fn new_entries(app: &App, known: impl Fn(&str) -> bool) -> Vec<Value> {
    let new = app.ops().iter().filter(|op| !known(&op.id.to_string()));
    new.filter_map(|op| serde_json::to_value(op).ok()).collect()
}

/// The session shown.
pub fn shown(app: &App) -> Option<Shown> {
    let session = app.session()?;
    let marks = session.marks.iter().map(|m| (m.id.to_string(), m.name.clone()));
    let landmarks = session.landmarks.iter().map(|l| (l.id.to_string(), l.name.clone()));
    Some(Shown {
        id: session.id.to_string(),
        open: session.is_open(),
        casts: session.casts.iter().map(|cast| (cast.op.to_string(), cast_shown(cast))).collect(),
        things: marks.chain(landmarks).collect(),
        rods: session.rods.iter().map(|rod| state(&rod.state)).collect(),
        plan: session.plan.as_ref().and_then(|plan| serde_json::to_value(&plan.lines).ok()),
    })
}

fn cast_shown(cast: &Cast) -> CastShown {
    CastShown {
        rod: cast.rod.into(),
        end: cast.end.as_ref().map(|end| cause(&end.cause).to_owned()),
        bitten: cast.bite.is_some(),
        wait_ms: cast.wait_end().map(|until| until.since(&cast.start).ms),
        spot: cast.spot.as_ref().and_then(|spot| serde_json::to_value(spot).ok()),
    }
}

fn cause(cause: &EndCause) -> &'static str {
    match cause {
        EndCause::Landed { .. } => "landed",
        EndCause::Lost => "lost",
        EndCause::Missed => "missed",
        EndCause::OutcomeNotSeen => "outcome_not_seen",
        EndCause::WoundIn => "wound_in",
        EndCause::EndNotSeen => "end_not_seen",
        EndCause::SessionEnded => "session_ended",
    }
}

fn state(state: &RodState) -> &'static str {
    match state {
        RodState::Ready { .. } => "ready",
        RodState::Out { .. } => "out",
        RodState::FishOn { .. } => "fish_on",
    }
}

/// The Bank screen.
pub fn bank(app: &mut App, at: &Reading) -> Result<Bank, Refused> {
    match app.screen(Which::Bank, &moment(at)) {
        Ok(screen) => Ok(bank_of(&screen)),
        Err(error) => Err(refused(app, &error)),
    }
}

fn bank_of(screen: &Screen) -> Bank {
    let Screen::Bank(bank) = screen else { return Bank::default() };
    let key = |key: Key| bank.keys.iter().find(|view| view.key == key).and_then(|view| view.sub.clone());
    Bank {
        undo: key(Key::Undo).unwrap_or_default(),
        redo: key(Key::Redo).unwrap_or_default(),
        clocks: bank.rods.iter().map(|rod| (rod.elapsed_ms, rod.state == BankState::Out)).collect(),
    }
}

fn screen(app: &mut App, which: Which, at: &Reading) -> Result<Value, Refused> {
    match app.screen(which, &moment(at)) {
        Ok(screen) => serde_json::to_value(screen).map_err(|e| fault(&e)),
        Err(error) => Err(refused(app, &error)),
    }
}

/// Opens some screens, from this one on; fails with the first that fails with more than "not now". A full
/// disk is no excuse: a screen can do without what it stores for later.
pub fn open_screens(app: &mut App, from: usize, at: &Reading) -> Result<(), Refused> {
    for &which in Which::ALL.iter().cycle().skip(from % Which::ALL.len()).take(AT_ONCE) {
        if let Err(refused) = screen(app, which, at)
            && (refused.fault || refused.not_saved)
        {
            return Err(refused);
        }
    }
    Ok(())
}

/// What the Swim screen says about the water, without its keys, or `None` if there is no session.
pub fn swim_words(app: &mut App, at: &Reading) -> Option<Value> {
    let screen = screen(app, Which::Swim, at).ok()?;
    Some(json!([screen["area"], screen["headline"], screen["reasons"], screen["cell"], screen["others"]]))
}

/// Milliseconds until the alarm of each bait that is out, by its rod; negative if it is overdue.
pub fn rings(app: &mut App, at: &Reading) -> BTreeMap<u64, i64> {
    let watch = app.watch(&moment(at));
    let all = watch.alarms.iter().chain(&watch.due);
    all.filter_map(|alarm| Some((alarm.rod?.into(), alarm.at_wall_ms - at.wall_ms))).collect()
}

/// Opens a session in the Book; returns what is on its page besides the labels, or `None` if it can't be
/// opened.
pub fn page(app: &mut App, session: &str, at: &Reading) -> Result<Option<Vec<String>>, Refused> {
    let open = json!({"do": "book", "tap": {"tap": "open", "session": session}});
    let open = serde_json::from_value(open).map_err(|e| fault(&e))?;
    if tap(app, &open, at).is_err() {
        return Ok(None);
    }
    let book = screen(app, Which::Book, at)?;
    let leaves = book["leaves"].as_array().into_iter().flatten();
    let lines = leaves.filter(|leaf| leaf["id"] == "session").filter_map(|leaf| leaf["lines"].as_array());
    Ok(Some(lines.flatten().filter_map(|line| Some(line["value"].as_str()?.to_owned())).collect()))
}

/// Sets a damaged log aside and begins a new one with all that can be saved.
pub fn salvage(dir: &Path, seed: u64, at: &Reading) -> Result<String, String> {
    App::salvage(dir, Box::new(Seeded::new(seed)), &moment(at), Wording::shared("en-GB"))
        .map_err(|e| e.to_string())
}

/// Imports by their ids, latest first.
pub fn imports(app: &mut App, at: &Reading) -> Vec<String> {
    let screen = screen(app, Which::Files, at).unwrap_or_default();
    let imports = screen["imports"].as_array();
    imports.into_iter().flatten().filter_map(|line| Some(line["id"].as_str()?.to_owned())).collect()
}

/// The export of a form ("entries", "casts", "sessions") with everything in it, including positions.
pub fn send(app: &mut App, form: &str, at: &Reading) -> Result<PathBuf, Refused> {
    let choices = [
        json!({"tap": "span", "span": "everything"}),
        json!({"tap": "position", "included": true}),
        json!({"tap": "form", "form": form}),
    ];
    for choice in choices {
        let choice = serde_json::from_value(json!({"do": "files", "tap": choice})).map_err(|e| fault(&e))?;
        tap(app, &choice, at)?;
    }
    match app.send(&moment(at), &mut go) {
        Ok(sent) => Ok(sent.path.into()),
        Err(error) => Err(refused(app, &error)),
    }
}

/// Imports a file.
pub fn take_in(app: &mut App, file: &Path, at: &Reading) -> Result<(), Refused> {
    match app.take_in(file, "a partner", &moment(at), &mut go) {
        Ok(_) => Ok(()),
        Err(error) => Err(refused(app, &error)),
    }
}

/// Makes a backup; returns its path.
pub fn back_up(app: &mut App, at: &Reading) -> Result<Option<PathBuf>, Refused> {
    match app.back_up(&moment(at), &mut go) {
        Ok(made) => Ok(made.map(|made| made.path.into())),
        Err(error) => Err(refused(app, &error)),
    }
}

/// Checks the log; returns the message.
pub fn look_over(app: &mut App) -> Result<String, Refused> {
    app.look_over().map_err(|error| refused(app, &error))
}
