//! The details of a landed fish, in a match or not: its class, its net, its weight and whether it went back.

use super::match_day::{no_such_class, scales_of, unit_and_count};
use super::{App, AppError};
use restwater_log::{FishSaid, FishWeight, Moment, Payload, RodNumber, WeightUnit};
use restwater_match_day::rules::same_name;
use restwater_match_day::typed::TypedWeight;
use restwater_match_day::weight::WeightError;
use restwater_screen as screen;
use restwater_screen::{FirstFish, FishInput, FishTap, FishView, LandedFish, UsualClass, WeightView};
use restwater_session::match_setup::MatchError;
use restwater_session::own_count::{OwnCount, net_in_use, own_count};
use restwater_session::{CaughtFish, EndCause, MatchSetup, NotNow, RodState, Session, catch, classes_used};
use uuid::Uuid;

/// The longest name of a class.
const LONGEST_CLASS: usize = 60;

/// What is remembered between taps; it is not part of the log.
#[derive(Default)]
pub(super) struct FishState {
    /// The fish chosen, by its cast, and how many fish were landed then: the choice ends with the next
    /// landing, and when the screens of the fish close, since the Bank and its keys are about the latest.
    pub(super) chosen: Option<(Uuid, usize)>,
    /// A weight that is being typed, and the fish it is for.
    pub(super) typed: Option<(Uuid, TypedWeight)>,
}

impl App {
    /// The screen of a fish.
    pub(super) fn fish_screen(&self) -> FishView {
        self.with_fish(screen::fish_view)
    }

    /// The number pad for its weight.
    pub(super) fn weight_screen(&self) -> WeightView {
        self.with_fish(screen::weight_view)
    }

    fn with_fish<T>(&self, make: impl Fn(&FishInput) -> T) -> T {
        let caught = self.session().map(catch).unwrap_or_default();
        let setup = self.match_setup();
        let count: Option<OwnCount> = setup.and_then(|setup| own_count(setup, &caught).ok());
        let chosen = self.meant(&caught);
        let typed = self.typed_weight(chosen.and_then(|i| caught.get(i)).map(|fish| fish.cast));
        make(&FishInput {
            first: self.first_fish(),
            chosen,
            caught: &caught,
            setup,
            rule: self.session().map_or("", |session| session.match_rule.as_str()),
            count: count.as_ref(),
            scales: self.session().map_or(&[], |session| session.scales.as_slice()),
            classes: &self.classes(),
            typed: &typed,
            words: self.words,
        })
    }

    /// The key that leads to a first fish if none is landed.
    fn first_fish(&self) -> FirstFish {
        let Some(session) = self.session().filter(|session| session.is_open()) else {
            return FirstFish::Start;
        };
        match session.rod(self.chosen).map(|rod| &rod.state) {
            Some(RodState::Out { .. } | RodState::FishOn { .. }) => FirstFish::Landed(self.chosen),
            _ => FirstFish::Cast(self.chosen),
        }
    }

    /// What the Bank asks about the fish that a rod landed last, until its next cast.
    pub(super) fn landed_fish(&self, rod: RodNumber) -> Option<LandedFish> {
        let session = self.session().filter(|session| session.is_open())?;
        let cast = landed_last(session, rod)?;
        let fish = catch(session).into_iter().find(|fish| fish.cast == cast)?;
        let offered = self.used_last();
        Some(LandedFish { cast, class: fish.class, weight: fish.weight, put_back: fish.put_back, offered })
    }

    /// Names of the classes to choose from, most recently used first; in a match those of its rules.
    fn classes(&self) -> Vec<String> {
        let in_a_match = self.match_setup().is_some();
        let same = |known: &String, name: &String| {
            same_name(known, name) || (!in_a_match && screen::same_usual_class(known, name))
        };
        let of_match: Option<Vec<String>> =
            self.match_setup().map(|setup| setup.classes.iter().map(|class| class.name.clone()).collect());
        let all = of_match.unwrap_or_else(|| {
            self.used().chain(UsualClass::ALL.map(|class| self.words.say(class.id()))).collect()
        });
        let mut names: Vec<String> = Vec::new();
        let used = self.used().filter(|name| all.iter().any(|known| same_name(known, name)));
        for name in used.chain(all.iter().cloned()) {
            if !names.iter().any(|known| same(known, &name)) {
                names.push(name);
            }
        }
        names
    }

    /// The classes of today's fish and of those of earlier days, most recently used first.
    fn used(&self) -> impl Iterator<Item = String> {
        let today = self.session().map(classes_used).unwrap_or_default();
        let before = self.advisor.earlier().iter().flat_map(|before| before.day.classes.clone());
        today.into_iter().chain(before.collect::<Vec<_>>())
    }

    /// The class used last, if the match has it.
    fn used_last(&self) -> Option<String> {
        let of_match = |name: &String| self.match_setup().is_none_or(|setup| setup.class(name).is_some());
        self.used().find(of_match)
    }

    /// The unit of weights: that of the match, otherwise that of the phone.
    pub(super) fn weights(&self) -> WeightUnit {
        self.match_setup().map_or(self.phone.weights, |setup| setup.unit)
    }

    /// The weight being typed for a fish.
    fn typed_weight(&self, fish: Option<Uuid>) -> TypedWeight {
        let scales = scales_of(self.weights());
        let typed =
            self.fish.typed.as_ref().filter(|(of, typed)| Some(*of) == fish && typed.scales() == scales);
        typed.map_or_else(|| TypedWeight::new(scales), |(_, typed)| typed.clone())
    }

    /// The index of the fish that taps refer to: the one chosen, otherwise that of the chosen rod's last
    /// cast, otherwise the latest.
    fn meant(&self, caught: &[CaughtFish]) -> Option<usize> {
        let place = |cast| caught.iter().position(|fish| fish.cast == cast);
        let chosen = self.fish.chosen.filter(|(_, count)| *count == caught.len());
        let waiting = || self.session().and_then(|session| landed_last(session, self.chosen)).and_then(place);
        chosen.and_then(|(cast, _)| place(cast)).or_else(waiting).or_else(|| caught.len().checked_sub(1))
    }

    /// A tap about a fish.
    pub(super) fn fish_tap(
        &mut self,
        cast: Option<Uuid>,
        tap: &FishTap,
        at: &Moment,
    ) -> Result<String, AppError> {
        let notice = self.fish_said(cast, tap, at)?;
        if tap.closes() {
            self.leave_fish();
        }
        Ok(notice)
    }

    /// The screens of a fish were closed.
    pub(super) fn leave_fish(&mut self) {
        self.fish.chosen = None;
    }

    fn fish_said(&mut self, cast: Option<Uuid>, tap: &FishTap, at: &Moment) -> Result<String, AppError> {
        match tap {
            FishTap::Meant { back } => self.choose_fish(*back),
            FishTap::Class { name } => self.class(cast, name, at),
            FishTap::Net { name } => self.net(cast, name, at),
            FishTap::PutBack { back } => self.say_fish(cast, at, |said| said.put_back = *back),
            FishTap::NoWeight => self.say_fish(cast, at, |said| said.weight = None),
            FishTap::Digit { digit } => self.type_weight(cast, |typed| typed.digit(*digit)),
            FishTap::NextUnit => self.type_weight(cast, TypedWeight::next_part),
            FishTap::RubOut => self.type_weight(cast, TypedWeight::rub_out),
            FishTap::Weighed => self.take_figure(cast, false, at),
            FishTap::Guessed => self.take_figure(cast, true, at),
            FishTap::Weight { unit, count, guessed } => self.weigh(cast, *unit, *count, *guessed, at),
        }
    }

    /// The landed fish of a cast; without a cast, the one that taps refer to.
    fn fish_of(&self, cast: Option<Uuid>) -> Result<CaughtFish, AppError> {
        let mut caught = self.session().map(catch).ok_or(NotNow::NoSession)?;
        let place = match cast {
            Some(cast) => caught.iter().position(|fish| fish.cast == cast),
            None => self.meant(&caught),
        };
        Ok(caught.swap_remove(place.ok_or(NotNow::NoLanding)?))
    }

    fn choose_fish(&mut self, back: u32) -> Result<String, AppError> {
        let caught = self.session().map(catch).ok_or(NotNow::NoSession)?;
        let place = caught.len().checked_sub(1 + back as usize).ok_or(NotNow::NoLanding)?;
        self.fish.chosen = Some((caught[place].cast, caught.len()));
        Ok(String::new())
    }

    /// Logs the details of a fish with one thing changed.
    fn say_fish(
        &mut self,
        cast: Option<Uuid>,
        at: &Moment,
        change: impl FnOnce(&mut FishSaid),
    ) -> Result<String, AppError> {
        let mut said = self.said_of(self.fish_of(cast)?.cast)?;
        change(&mut said);
        let notice = self.log_here(Payload::FishSet(said), at)?;
        self.fish.typed = None;
        Ok(notice)
    }

    /// What was entered about the fish of a cast.
    fn said_of(&self, cast: Uuid) -> Result<FishSaid, AppError> {
        let session = self.session().ok_or(NotNow::NoSession)?;
        let said = session.fish.iter().find(|f| f.said.cast == cast).map(|f| f.said.clone());
        Ok(said.unwrap_or(FishSaid { cast, class: None, weight: None, net: None, put_back: false }))
    }

    fn type_weight(
        &mut self,
        cast: Option<Uuid>,
        change: impl FnOnce(&mut TypedWeight),
    ) -> Result<String, AppError> {
        let cast = self.fish_of(cast)?.cast;
        let mut typed = self.typed_weight(Some(cast));
        change(&mut typed);
        self.fish.typed = Some((cast, typed));
        Ok(String::new())
    }

    fn take_figure(&mut self, cast: Option<Uuid>, guessed: bool, at: &Moment) -> Result<String, AppError> {
        let cast = self.fish_of(cast)?.cast;
        let (unit, count) = unit_and_count(self.typed_weight(Some(cast)).weight());
        self.weigh(Some(cast), unit, count, guessed, at)
    }

    fn weigh(
        &mut self,
        cast: Option<Uuid>,
        unit: WeightUnit,
        count: i64,
        guessed: bool,
        at: &Moment,
    ) -> Result<String, AppError> {
        screen::units(unit, count).of_a_fish().map_err(MatchError::from)?;
        let count =
            u32::try_from(count).map_err(|_| MatchError::from(WeightError::Negative(count.to_string())))?;
        let weight =
            if guessed { FishWeight::Guessed { unit, count } } else { FishWeight::Weighed { unit, count } };
        self.say_fish(cast, at, |said| said.weight = Some(weight))
    }

    /// Sets the class. A weight from the scales stays, and in a match the class then learns from it.
    fn class(&mut self, cast: Option<Uuid>, name: &str, at: &Moment) -> Result<String, AppError> {
        let class = match self.match_setup() {
            Some(setup) => named(setup, name).ok_or_else(|| no_such_class(name))?,
            None => self.in_known_words(own_name(name).ok_or_else(|| no_such_class(name))?),
        };
        self.say_fish(cast, at, |said| said.class = Some(class))
    }

    /// The name of a class as the angler has it already, in whatever language that was.
    fn in_known_words(&self, name: String) -> String {
        let is = |known: &String| same_name(known, &name) || screen::same_usual_class(known, &name);
        self.used().find(is).unwrap_or(name)
    }

    /// Sets the net of a fish. A net applies to the following fish too, so the next one is given the net that was in use,
    /// unless it has a net of its own. Otherwise every later fish would change nets as well.
    fn net(&mut self, cast: Option<Uuid>, name: &str, at: &Moment) -> Result<String, AppError> {
        let net = self.net_name(name)?;
        let fish = self.fish_of(cast)?;
        let rules = &self.match_setup().ok_or(NotNow::NoMatch)?.rules;
        rules.net_for(&net, &fish.class.unwrap_or_default()).map_err(MatchError::from)?;
        let after = self.next_in_its_net(fish.cast, &net)?;
        let said = FishSaid { net: Some(net), put_back: false, ..self.said_of(fish.cast)? };
        let session = self.session().ok_or(NotNow::NoSession)?.id;
        let payloads: Vec<Payload> = [said].into_iter().chain(after).map(Payload::FishSet).collect();
        let kind = payloads.first().map_or("", Payload::kind).to_owned();
        self.write_all(session, payloads, at)?;
        self.fish.typed = None;
        Ok(self.say_what("notice-logged", &kind))
    }

    /// What has to be logged so that later fish stay in their nets when the fish of a cast is put into `net`: the present net
    /// of the next fish. `None` if no fish would move.
    fn next_in_its_net(&self, cast: Uuid, net: &str) -> Result<Option<FishSaid>, AppError> {
        let caught = self.session().map(catch).ok_or(NotNow::NoSession)?;
        let setup = self.match_setup().ok_or(NotNow::NoMatch)?;
        let until = caught.iter().position(|fish| fish.cast == cast).map_or(caught.len(), |place| place + 1);
        let own = |fish: &CaughtFish| fish.net.as_ref().is_some_and(|net| setup.rules.net(net).is_some());
        let in_use = net_in_use(setup, &caught[..until]).filter(|in_use| !same_name(in_use, net));
        match (caught.get(until).filter(|next| !own(next)), in_use) {
            (Some(next), Some(in_use)) => {
                Ok(Some(FishSaid { net: Some(in_use), ..self.said_of(next.cast)? }))
            }
            _ => Ok(None),
        }
    }
}

/// The last cast of a rod, if it landed a fish and the rod has not been cast since.
fn landed_last(session: &Session, rod: u8) -> Option<Uuid> {
    if !matches!(session.rod(rod)?.state, RodState::Ready { .. }) {
        return None;
    }
    let last = session.casts.iter().rev().find(|cast| cast.rod == rod)?;
    let landed = last.end.as_ref().is_some_and(|end| matches!(end.cause, EndCause::Landed { .. }));
    landed.then_some(last.op)
}

/// The name of a class as the match's rules spell it.
fn named(setup: &MatchSetup, name: &str) -> Option<String> {
    Some(setup.classes.get(screen::class_place(setup, name)?)?.name.clone())
}

/// Normalises a name given by the angler.
fn own_name(name: &str) -> Option<String> {
    let name = name.trim();
    (!name.is_empty() && name.chars().count() <= LONGEST_CLASS).then(|| name.to_owned())
}
