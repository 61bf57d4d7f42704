//! Finishes the texts that a screen reader says of rows, keys and lines, and those that are drawn as a label with its value.
//!
//! The builders of the screens fill in labels and values; a finished screen passes through here once, so that no builder can
//! forget it and no shell joins texts.

use super::bank::{BankView, HeaderView, RodView};
use super::changes::{AlternationView, ChangeView, ChangesView};
use super::files::{BackupLine, FilesView, ImportLine};
use super::match_day::{MatchLine, MatchView, NetView, WeighInPage};
use super::mend::{MendLine, MendOpen, MendView};
use super::swim::{PegPlaceView, SwimView};
use super::waits::{ForecastLine, ForecastView, WaitsView};
use super::{
    ChartView, ChoiceRow, Leaf, LeafKey, LeafLine, LeavesView, PhoneView, Screen, SetupView, TackleView,
    TypedField, Wording,
};

impl Screen {
    /// The same with these texts.
    #[must_use]
    pub fn spoken(mut self, words: &Wording) -> Self {
        match &mut self {
            Self::Bank(view) => view.finish(words),
            Self::Setup(view) => view.finish(words),
            Self::Tackle(view) => view.finish(words),
            Self::Swim(view) => view.finish(words),
            Self::Waits(view) => view.finish(words),
            Self::Changes(view) => view.finish(words),
            Self::Match(view) => view.finish(words),
            // Their keys have texts from messages of their own.
            Self::Fish(_) | Self::Feed(_) | Self::Seen(_) | Self::Weight(_) | Self::FeedWeight(_) => {}
            Self::Files(view) => view.finish(words),
            Self::Bench(view)
            | Self::Book(view)
            | Self::Conditions(view)
            | Self::Cautions(view)
            | Self::Day(view)
            | Self::Welcome(view)
            | Self::Legend(view) => view.finish(words),
            Self::Mend(view) => view.finish(words),
            Self::Phone(view) => view.finish(words),
        }
        self
    }
}

/// A record with such a text, or that holds records with one.
trait Finish {
    fn finish(&mut self, words: &Wording);
}

impl<T: Finish> Finish for Vec<T> {
    fn finish(&mut self, words: &Wording) {
        for one in self {
            one.finish(words);
        }
    }
}

impl<T: Finish> Finish for Option<T> {
    fn finish(&mut self, words: &Wording) {
        if let Some(one) = self {
            one.finish(words);
        }
    }
}

/// Screens and pages: each passes on to what it holds.
macro_rules! holds {
    ($($view:ty: $($part:ident)*;)*) => {
        $(impl Finish for $view {
            fn finish(&mut self, words: &Wording) {
                $(self.$part.finish(words);)*
            }
        })*
    };
}

holds! {
    SetupView: fields rows cautions;
    TackleView: rows;
    SwimView: name place rows;
    WaitsView: rows charts forecast offer;
    ForecastView: left lines;
    ChangesView: changes test offer;
    MatchView: lines nets coming weigh_in rows offer;
    WeighInPage: lines;
    FilesView: rows imports backups;
    LeavesView: leaves;
    Leaf: lines list typing rows keys;
    MendView: lines open;
    MendOpen: rows;
    PhoneView: rows;
}

impl Finish for BankView {
    fn finish(&mut self, words: &Wording) {
        self.header.finish(words);
        self.rods.finish(words);
        self.spot_spoken = words.sentences(&[&self.spot, &self.rig]);
        let wait = self.rods.iter().find(|rod| rod.chosen).map_or("", |rod| rod.spoken.as_str());
        self.wait_spoken = words.sentences(&[wait, &self.advice.headline]);
    }
}

impl Finish for HeaderView {
    fn finish(&mut self, words: &Wording) {
        self.spoken = words.listed(&[&self.place, &self.clock, &self.length]);
    }
}

impl Finish for RodView {
    fn finish(&mut self, words: &Wording) {
        self.spoken_since = words.listed(&[&self.spoken, &self.since]);
    }
}

impl Finish for ChoiceRow {
    fn finish(&mut self, words: &Wording) {
        self.spoken = words.labelled(&self.label, &self.value);
        for choice in &mut self.choices {
            choice.spoken = words.labelled(&self.label, &choice.label);
        }
        self.typing.finish(words);
    }
}

impl Finish for TypedField {
    fn finish(&mut self, words: &Wording) {
        if !self.send.is_empty() {
            self.send_spoken = words.labelled(&self.send, &self.label);
        }
    }
}

impl Finish for PegPlaceView {
    fn finish(&mut self, words: &Wording) {
        self.spoken = words.labelled(&self.label, &self.value);
        self.fields.finish(words);
    }
}

impl Finish for LeafKey {
    fn finish(&mut self, words: &Wording) {
        self.spoken = words.labelled(&self.label, &self.sub);
    }
}

impl Finish for LeafLine {
    fn finish(&mut self, words: &Wording) {
        self.spoken = words.listed(&[&self.label, &self.value, &self.detail]);
        self.figure_spoken = words.listed(&[&self.label, &self.value]);
    }
}

impl Finish for ChartView {
    fn finish(&mut self, words: &Wording) {
        self.spoken = words.sentences(&[&self.title, &self.says]);
    }
}

impl Finish for ForecastLine {
    fn finish(&mut self, words: &Wording) {
        self.spoken = words.labelled(&self.label, &self.value);
    }
}

impl Finish for MatchLine {
    fn finish(&mut self, words: &Wording) {
        self.spoken = words.labelled(&self.label, &self.value);
    }
}

impl Finish for NetView {
    fn finish(&mut self, words: &Wording) {
        self.heading = words.labelled(&self.name, &self.holds);
    }
}

impl Finish for ChangeView {
    fn finish(&mut self, words: &Wording) {
        self.spoken = words.sentences(&[&self.title, &self.verdict, &self.ratio]);
    }
}

impl Finish for AlternationView {
    fn finish(&mut self, words: &Wording) {
        self.set_spoken = words.labelled(&self.set_label, self.set_sub.as_deref().unwrap_or_default());
        self.end_spoken = words.labelled(&self.end_label, &self.end_sub);
    }
}

impl Finish for MendLine {
    fn finish(&mut self, words: &Wording) {
        self.spoken = words.sentences(&[&self.what, &self.why]);
        self.key_spoken = words.labelled(&words.say("pad-mend"), &self.spoken);
    }
}

impl Finish for ImportLine {
    fn finish(&mut self, words: &Wording) {
        self.key_spoken = words.labelled(&self.key, &self.says);
    }
}

impl Finish for BackupLine {
    fn finish(&mut self, words: &Wording) {
        self.key_spoken = words.labelled(&self.key, &self.says);
    }
}
