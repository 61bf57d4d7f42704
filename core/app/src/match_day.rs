//! The taps of the Match screen, and what the screen shows.

use super::error::within;
use super::{App, AppError, settings};
use restwater_log::{Moment, OtherPeg, Payload, Side, WeightUnit};
use restwater_match_day::clock::{MINUTE_MS, MatchClock, Phase};
use restwater_match_day::forecast::{Landing, TimeLeft};
use restwater_match_day::rules::{Counting, NetHolds, NetRule, RulesError, same_name};
use restwater_match_day::typed::{Scales, TypedWeight};
use restwater_match_day::weight::Weight;
use restwater_screen as screen;
use restwater_screen::{MatchInput, MatchTap, MatchView, OnScales, RestInput, RuleTap, Signal, UsualClass};
use restwater_session::Logged;
use restwater_session::match_setup::MatchError;
use restwater_session::own_count::{OwnCount, own_count};
use restwater_session::rest::{Leaves, Rest, landing, rest_of_match};
use restwater_session::{ClassGuess, MatchSetup};
use restwater_session::{NotNow, Rhythm, Session, Stamp, catch, rhythm, rods_waited_whole_min};
use restwater_store::Store;
use restwater_waits::{Advice, BITE_EXTRA_GUESS_MIN, TURN_ROUND_GUESS_MIN};
use uuid::Uuid;

/// The most pegs of a section on one side.
const MOST_PEGS: u8 = 20;
const SECTION_SIDE: &str = "section_side";
/// The seed of the simulated rest of the match.
const SEED: u64 = 9;

/// What the Match screen remembers between taps; it is not part of the log.
#[derive(Default)]
pub(super) struct MatchState {
    /// What is on the scales.
    on_scales: Option<OnScales>,
    /// The weight being typed for it.
    typed: Option<TypedWeight>,
    /// The side of the section that was entered first, with its pegs, and of which session. It is stored beside the log.
    section_side: Option<(Uuid, Side, u8)>,
    /// The rest of the match as last simulated, kept because that is too slow for the refresh each second.
    rest: Option<(RestOf, Option<Rest>)>,
}

impl MatchState {
    pub(super) fn load(store: &Store) -> Result<Self, AppError> {
        Ok(Self { section_side: settings::read(store, SECTION_SIDE)?, ..Self::default() })
    }

    /// What is on the scales, and the digits typed for it.
    pub(super) fn scales_kept(&self) -> (Option<OnScales>, Option<String>) {
        (self.on_scales.clone(), self.typed.as_ref().map(TypedWeight::digits))
    }

    /// Puts that back.
    pub(super) fn put_back(&mut self, on_scales: Option<OnScales>, typed: Option<TypedWeight>) {
        (self.on_scales, self.typed) = (on_scales, typed);
    }

    /// What is kept when a session begins: a section of which one side is known, in case that START is undone.
    pub(super) fn of_a_new_day(&self) -> Self {
        Self { section_side: self.section_side, ..Self::default() }
    }
}

/// The input of that simulation.
#[derive(PartialEq)]
struct RestOf {
    session: Uuid,
    advice: Advice,
    leaves: Leaves,
    rhythm: Rhythm,
    time: TimeLeft,
    landing: Landing,
}

impl App {
    /// The Match screen.
    pub(super) fn match_view(&mut self, now: &Moment) -> MatchView {
        let now = &self.on_line(now);
        let caught = self.session().map(catch).unwrap_or_default();
        let count = self.match_setup().map(|setup| own_count(setup, &caught));
        let guessed = caught.is_empty();
        let read = count.as_ref().and_then(|c| c.as_ref().ok()).and_then(|own| self.play_rest(own, now));
        let state = &self.match_day;
        let rest = read.as_ref().map(|(advice, leaves, rhythm)| RestInput {
            advice,
            leaves: *leaves,
            rhythm: *rhythm,
            earlier: self.advisor.earlier_sessions(),
            rest: state.rest.as_ref().and_then(|(_, rest)| rest.as_ref()),
            weights_guessed: guessed,
        });
        screen::match_view(&MatchInput {
            session: self.session(),
            now,
            peg: self.session().and_then(|session| self.peg_of(session)),
            count: count.as_ref(),
            rest,
            on_scales: state.on_scales.as_ref(),
            typed: &self.scales_typed(),
            section_side: self.section_said(),
            phone_unit: self.phone.weights,
            caught: &caught,
            words: self.words,
        })
    }

    /// Simulates the rest of the match unless that has been done; `None` if no session is running.
    fn play_rest(&mut self, own: &OwnCount, now: &Stamp) -> Option<(Advice, Leaves, Rhythm)> {
        let session =
            self.journal.recent().current().map(|loaded| &loaded.session).filter(|s| s.is_open())?;
        let left_ms = session.match_day.as_ref()?.left_ms(now).ok()?;
        if left_ms <= 0 {
            return None;
        }
        let rhythm = rhythm(session, TURN_ROUND_GUESS_MIN, BITE_EXTRA_GUESS_MIN);
        let (posterior, advice, leaves) = self.advisor.of_all_rods(session, self.journal.in_memory(), now)?;
        let of = RestOf {
            session: session.id,
            advice,
            leaves,
            rhythm,
            time: time_left(session, left_ms, now),
            landing: landing(session, own.kinds.clone()),
        };
        if self.match_day.rest.as_ref().is_none_or(|(before, _)| *before != of) {
            let rest = rest_of_match(posterior, leaves, &rhythm, &of.time, &of.landing, SEED).ok();
            self.match_day.rest = Some((of, rest));
        }
        Some((advice, leaves, rhythm))
    }

    pub(super) fn match_setup(&self) -> Option<&MatchSetup> {
        self.session()?.match_day.as_ref().map(|m| &m.setup)
    }

    /// A tap on the Match screen.
    pub(super) fn match_tap(&mut self, tap: &MatchTap, at: &Moment) -> Result<String, AppError> {
        match tap {
            MatchTap::Set { setup } => self.set_match(setup, at),
            MatchTap::Rule { rule } => self.change_rule(rule, at),
            MatchTap::Off => {
                self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
                self.log_here(Payload::MatchOff, at)
            }
            MatchTap::Heard { signal } => self.heard(*signal, at),
            MatchTap::ScalesDigit { digit } => self.type_scales(|typed| typed.digit(*digit)),
            MatchTap::ScalesUnit => self.type_scales(TypedWeight::next_part),
            MatchTap::ScalesRubOut => self.type_scales(TypedWeight::rub_out),
            MatchTap::ScalesNet { name } => {
                self.hang(OnScales::Net(self.net_name(name)?));
                Ok(String::new())
            }
            MatchTap::ScalesPeg { peg } => {
                self.unit()?;
                let peg = OtherPeg { place: within("place", peg.place, 1, MOST_PEGS)?, ..*peg };
                self.hang(OnScales::Peg(peg));
                Ok(String::new())
            }
            MatchTap::Section { left, right } => {
                let left = within("section", *left, 0, MOST_PEGS)?;
                let right = within("section", *right, 0, MOST_PEGS)?;
                self.log_here(Payload::SectionSet { left, right }, at)
            }
            MatchTap::SectionSide { side, pegs } => {
                self.section_side(*side, within("section", *pegs, 0, MOST_PEGS)?, at)
            }
            MatchTap::WeighIn => {
                let on = self.on_scales().ok_or(NotNow::NoMatch)?;
                let (unit, count) = unit_and_count(self.scales_typed().weight());
                match on {
                    OnScales::Net(net) => self.weigh_in(&net, unit, count, at),
                    OnScales::Peg(peg) => self.tell_other(peg, unit, count, at),
                }
            }
            MatchTap::WeighedIn { net, unit, count } => self.weigh_in(net, *unit, *count, at),
        }
    }

    /// Pegs of the section on one side. Nothing is logged before the other side is known too, since a section with only one side
    /// given would have no end on the other.
    fn section_side(&mut self, side: Side, pegs: u8, at: &Moment) -> Result<String, AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        session.match_day.as_ref().ok_or(NotNow::NoMatch)?;
        let is_left = match side {
            Side::Left => true,
            Side::Right => false,
            Side::Across => return Err(AppError::unknown("section", "across")),
        };
        let known = session.section.map(|section| if is_left { section.right } else { section.left });
        let said = self.section_said().filter(|(said, _)| *said != side).map(|(_, pegs)| pegs);
        let Some(other) = known.or(said) else {
            let half = Some((session.id, side, pegs));
            settings::write(self.journal.store(), SECTION_SIDE, &half)?;
            self.match_day.section_side = half;
            return Ok(String::new());
        };
        let (left, right) = if is_left { (pegs, other) } else { (other, pegs) };
        self.log_here(Payload::SectionSet { left, right }, at)
    }

    /// The side of this session's section that was entered first.
    fn section_said(&self) -> Option<(Side, u8)> {
        let today = self.session().map(|session| session.id);
        self.match_day.section_side.filter(|(of, ..)| Some(*of) == today).map(|(_, side, pegs)| (side, pegs))
    }

    pub(super) fn unit(&self) -> Result<WeightUnit, NotNow> {
        Ok(self.match_setup().ok_or(NotNow::NoMatch)?.unit)
    }

    /// What is on the scales, as the screen names it.
    fn on_scales(&self) -> Option<OnScales> {
        screen::hanging(self.match_setup()?, self.session()?, self.match_day.on_scales.as_ref())
    }

    /// A net of the rules by its name.
    pub(super) fn net_name(&self, name: &str) -> Result<String, AppError> {
        let rules = &self.match_setup().ok_or(NotNow::NoMatch)?.rules;
        let place = screen::net_place(rules, name).ok_or_else(|| no_such_net(name))?;
        Ok(rules.nets[place].name.clone())
    }

    fn set_match(&mut self, setup: &MatchSetup, at: &Moment) -> Result<String, AppError> {
        setup.check()?;
        self.log_here(Payload::MatchSet(setup.logged()), at)
    }

    /// Changes one of the rules; the first change sets a match.
    fn change_rule(&mut self, rule: &RuleTap, at: &Moment) -> Result<String, AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let now = &self.on_line(at);
        let before = session.match_day.as_ref().map(|m| m.setup_at(now));
        let setup = before.unwrap_or_else(|| screen::first_match(self.words, self.phone.weights, now));
        let changed = self.with_rule(setup, rule)?;
        self.set_match(&changed, at)
    }

    fn with_rule(&self, mut setup: MatchSetup, rule: &RuleTap) -> Result<MatchSetup, AppError> {
        let minutes =
            |field, minutes: i32| Ok::<_, AppError>(i64::from(within(field, minutes, -1_440, 1_440)?));
        match rule {
            RuleTap::Begin => {}
            RuleTap::MoveAllIn { minutes: by } => setup.all_in_ms += minutes("all-in", *by)? * MINUTE_MS,
            RuleTap::MoveAllOut { minutes: by } => setup.all_out_ms += minutes("all-out", *by)? * MINUTE_MS,
            RuleTap::SameClock => setup.offset_ms = 0,
            RuleTap::MoveClock { seconds } => {
                setup.offset_ms += i64::from(within("clock", *seconds, -3_600, 3_600)?) * 1_000;
            }
            RuleTap::Nets { count } => self.nets(&mut setup, usize::from(within("nets", *count, 1, 9)?)),
            RuleTap::Limit { net, limit } => {
                let place = screen::net_place(&setup.rules, net).ok_or_else(|| no_such_net(net))?;
                setup.rules.nets[place].limit = *limit;
            }
            RuleTap::Over { over } => setup.rules.over_limit = *over,
            RuleTap::Landing { minutes } => setup.rules.landing_min = within("landing", *minutes, 0, 120)?,
            RuleTap::Alarm { minutes } => {
                toggle(&mut setup.rules.alarms_min, within("alarms", *minutes, 0, 1_440)?);
            }
            RuleTap::Class { class } => self.toggle_class(&mut setup, *class),
            RuleTap::Counting { class } => toggle_counting(&mut setup, class)?,
            RuleTap::Guess { class, weight } => {
                let place = screen::class_place(&setup, class).ok_or_else(|| no_such_class(class))?;
                setup.classes[place].guess = screen::guess_in(*weight, setup.unit);
            }
            RuleTap::Unit { unit } => screen::weigh_in_unit(&mut setup, *unit),
            RuleTap::Mark { mark } if unit_and_count(*mark).0 == setup.unit => setup.mark = *mark,
            RuleTap::Mark { mark } => return Err(AppError::unknown("mark", mark)),
        }
        Ok(setup)
    }

    /// Sets the number of nets; new ones get the limit of the last.
    fn nets(&self, setup: &mut MatchSetup, count: usize) {
        let nets = &mut setup.rules.nets;
        nets.truncate(count);
        let limit = nets.last().and_then(|net| net.limit);
        let mut number = nets.len();
        while nets.len() < count {
            number += 1;
            // The nets may have been named in another language.
            if !nets.iter().any(|net| screen::is_net_number(&net.name, number)) {
                let name = screen::net_name(self.words, number);
                nets.push(NetRule { name, limit, holds: NetHolds::Anything });
            }
        }
    }

    fn toggle_class(&self, setup: &mut MatchSetup, class: UsualClass) {
        if let Some(place) = screen::usual_class(setup, class) {
            setup.classes.remove(place);
        } else {
            let name = self.words.say(class.id());
            let guess = screen::guess_in(class.guess(), setup.unit);
            setup.classes.push(ClassGuess { name, guess });
        }
    }

    /// Notes that the organiser's signal was heard now.
    fn heard(&mut self, signal: Signal, at: &Moment) -> Result<String, AppError> {
        let now = &self.on_line(at);
        let match_day = self.session().and_then(|s| s.match_day.as_ref()).ok_or(NotNow::NoMatch)?;
        let mut setup = match_day.setup_at(now);
        let announced = match signal {
            Signal::AllIn => setup.all_in_ms,
            Signal::AllOut => setup.all_out_ms,
        };
        let phone_ms = match_day.phone_ms(now);
        setup.offset_ms = MatchClock::offset_from_signal(announced, phone_ms).map_err(MatchError::from)?;
        self.set_match(&setup, at)
    }

    fn weigh_in(&mut self, net: &str, unit: WeightUnit, count: i64, at: &Moment) -> Result<String, AppError> {
        let net = self.net_name(net)?;
        let shown = screen::units(unit, count).of_a_net().map_err(MatchError::from)?;
        let match_day = self.session().and_then(|s| s.match_day.as_ref()).ok_or(NotNow::NoMatch)?;
        if matches!(match_day.phase(&self.on_line(at)).map_err(MatchError::from)?, Phase::Before { .. }) {
            return Err(MatchError::WeighInBeforeAllIn.into());
        }
        let notice = self.log_here(Payload::NetWeighed { net, shown: shown.logged() }, at)?;
        self.match_day.typed = None;
        Ok(notice)
    }

    /// Logs the weight of another angler's nets: a guess while the match is being fished, otherwise called at
    /// the scales. The next peg is selected afterwards.
    fn tell_other(
        &mut self,
        peg: OtherPeg,
        unit: WeightUnit,
        count: i64,
        at: &Moment,
    ) -> Result<String, AppError> {
        let shown = screen::units(unit, count).of_a_net().map_err(MatchError::from)?;
        let session = self.session().ok_or(NotNow::NoSession)?;
        let match_day = session.match_day.as_ref().ok_or(NotNow::NoMatch)?;
        let guessed = match match_day.phase(&self.on_line(at)).map_err(MatchError::from)? {
            Phase::Before { .. } => return Err(MatchError::WeighInBeforeAllIn.into()),
            Phase::Fishing { .. } => true,
            Phase::Landing { .. } | Phase::Over => false,
        };
        let all = screen::scales_cycle(&match_day.setup, session);
        let here = all.iter().position(|on| *on == OnScales::Peg(peg));
        let next = here.and_then(|here| all.get((here + 1) % all.len()).cloned());
        let told = Payload::OtherNetTold { peg, shown: shown.logged(), guessed };
        let notice = self.log_here(told, at)?;
        self.match_day.typed = None;
        self.match_day.on_scales = next;
        Ok(notice)
    }

    /// Puts something else on the scales and forgets what was typed for the previous thing.
    fn hang(&mut self, on: OnScales) {
        self.match_day.on_scales = Some(on);
        self.match_day.typed = None;
    }

    /// The weight being typed, in the unit of the match.
    fn scales_typed(&self) -> TypedWeight {
        let scales = scales_of(self.unit().unwrap_or(self.phone.weights));
        let typed = self.match_day.typed.clone().filter(|typed| typed.scales() == scales);
        typed.unwrap_or_else(|| TypedWeight::new(scales))
    }

    fn type_scales(&mut self, change: impl FnOnce(&mut TypedWeight)) -> Result<String, AppError> {
        self.unit()?;
        let mut typed = self.scales_typed();
        change(&mut typed);
        self.match_day.typed = Some(typed);
        Ok(String::new())
    }
}

/// The scales that show a unit.
pub(super) fn scales_of(unit: WeightUnit) -> Scales {
    match unit {
        WeightUnit::Drams => Scales::Imperial,
        WeightUnit::Grams => Scales::Metric,
    }
}

/// A weight as an entry holds it.
pub(super) fn unit_and_count(weight: Weight) -> (WeightUnit, i64) {
    match weight {
        Weight::Drams(count) => (WeightUnit::Drams, count),
        Weight::Grams(count) => (WeightUnit::Grams, count),
    }
}

/// The time left in whole minutes, so that the rest is not simulated each second.
fn time_left(session: &Session, left_ms: i64, now: &Stamp) -> TimeLeft {
    let minutes = libm::floor(left_ms as f64 / MINUTE_MS as f64);
    TimeLeft { minutes, rods: rods_waited_whole_min(session, now) }
}

pub(super) fn no_such_class(name: &str) -> AppError {
    MatchError::NoSuchClass(name.chars().take(60).collect()).into()
}

fn toggle(alarms: &mut Vec<u16>, minutes: u16) {
    if let Some(place) = alarms.iter().position(|m| *m == minutes) {
        alarms.remove(place);
    } else {
        alarms.push(minutes);
    }
}

fn no_such_net(name: &str) -> AppError {
    MatchError::from(RulesError::NoSuchNet(name.to_owned())).into()
}

/// Toggles whether a class counts; other kinds keep their rule.
fn toggle_counting(setup: &mut MatchSetup, name: &str) -> Result<(), AppError> {
    let place = screen::class_place(setup, name).ok_or_else(|| no_such_class(name))?;
    let name = setup.classes[place].name.clone();
    match &mut setup.rules.counting {
        Counting::Everything => setup.rules.counting = Counting::AllBut(vec![name]),
        // With either list, adding a kind or removing it toggles whether it counts.
        Counting::Only(kinds) | Counting::AllBut(kinds) => {
            if let Some(listed) = kinds.iter().position(|k| same_name(k, &name)) {
                kinds.remove(listed);
            } else {
                kinds.push(name);
            }
        }
    }
    if matches!(&setup.rules.counting, Counting::AllBut(kinds) if kinds.is_empty()) {
        setup.rules.counting = Counting::Everything;
    }
    Ok(())
}
