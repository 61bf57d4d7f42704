//! What each screen shows, as plain records made from the session, with its wording.
//!
//! A shell draws these and passes on taps; it decides nothing. Texts are ready to show, and numbers that are
//! drawn (the strip, the fan) are passed as numbers too.
// The code that uniffi generates is unsafe; builds without that feature forbid it for everything written by
// hand.
#![cfg_attr(not(feature = "uniffi"), forbid(unsafe_code))]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp))]

/// The type that uniffi's derives refer to. It is declared by hand because uniffi's scaffolding would also
/// export a runtime, which only the crate `bindings` needs.
#[cfg(feature = "uniffi")]
#[doc(hidden)]
pub struct UniFfiTag;
#[cfg(feature = "uniffi")]
use restwater_log::Uuid;
#[cfg(feature = "uniffi")]
uniffi::use_remote_type!(restwater_log::Uuid);

mod action;
mod bank;
mod bench;
mod book;
mod casts_that_count;
mod cautions;
mod changes;
mod chart;
mod club;
mod compared;
mod conditions;
mod date;
mod day;
mod entry;
mod feed;
mod feed_ways;
mod figures;
mod files;
mod fish;
mod joined;
mod key;
mod leaf;
mod leave_words;
mod legend;
mod match_day;
mod mend;
mod peg;
mod phone_settings;
mod place;
mod place_row;
mod plan;
mod questions;
mod refused;
mod screen_list;
mod seen;
mod sentences;
mod setup;
mod shell;
mod spoken;
mod swim;
mod tackle;
mod usual_names;
mod waits;
mod watch;
mod welcome;
mod which;
mod whose;
mod whose_row;
mod wording;

pub use action::{
    Action, BenchTap, BookSet, BookTap, CautionsTap, ConditionsTap, FeedTap, FilesTap, FilterTap, FishTap,
    FormChoice, HazardKind, Key, KeyTap, Keyboard, MatchTap, MendTap, Pad, PhoneTap, PlanTap, RuleTap,
    Season, SeenTap, SetupTap, Signal, Span, SwimTap, SwimThing, TackleTap, Temperature, TypedField,
    TypedInto, UsualClass, WaitsTap, WaterChoice, Which,
};
pub use bank::{
    AdviceTone, AdviceView, BankInput, BankState, BankView, HeaderView, Reading, RodLeave, RodView,
    SpotsReading, StripMark, StripMarkShape, StripView, bank,
};
pub use bench::REACTION_S;
pub use bench::{BenchChoices, BenchInput, PlanInput, bench};
pub use book::midnight;
pub use book::{BookInput, Day, LightInput, NextInput, PegOf, SetFilter, book, waters_fished};
pub use casts_that_count::CastFilter;
pub use cautions::{CautionsInput, cautions};
pub use changes::{
    AlternationView, ChangeView, ChangesView, ForestPoint, SideView, StartTest, StepState, StepView,
    VerdictTone, changes,
};
pub use chart::{
    Axis, ChartBand, ChartBar, ChartDot, ChartKind, ChartLine, ChartSpan, ChartView, DotShape, LineStyle,
    Tick,
};
pub use club::ClubUsed;
pub use conditions::conditions;
pub use conditions::conditions_words;
pub use date::{date_words, day_words};
pub use day::{DayInput, day};
pub use entry::{entry_words, kind_words};
pub use feed::{FeedInput, feed_view, feed_weight, feed_weight_view, feed_words, takes_digit};
pub use feed_ways::{FEED_WAYS, FeedWay, feed_way};
pub use figures::{clock, iso_day, sentence_case, trimmed};
pub use files::{BackupLine, FilesView, ImportLine, IncomingView};
pub use files::{
    ClubNow, FilesInput, MapTally, Stage, backup_words, check_words, files_view, incoming_club, incoming_map,
    incoming_view, outgoing_words, salvage_words,
};
pub use fish::{FirstFish, FishInput, FishKey, FishView, LandedFish, WeightView, fish_view, weight_view};
pub use key::{KeyView, KeyWeight};
pub use leaf::{Leaf, LeafKey, LeafLine, LeafSpan, LeavesView};
pub use legend::legend;
pub use match_day::{
    AlarmView, MatchInput, MatchKey, MatchLine, MatchPhase, MatchView, NetView, NetWarning, PageKey,
    RestInput, WeighInPage, match_view,
};
pub use match_day::{
    OnScales, class_place, first_match, guess_in, hanging, is_net_number, net_name, net_place, scales_cycle,
    units, usual_class, weigh_in_unit, weight_words,
};
pub use mend::{MendInput, end_said, longest_back_min, mend_view, stands_alone, wait_to_mend_s};
pub use mend::{MendLine, MendOpen, MendView};
pub use peg::{peg_name, peg_words};
pub use phone_settings::{Alarm, FeedGuesses, Hand, PhoneChoices, Scheme, Settings};
pub use place::mark_of;
pub use place::{place_words, spot_words};
pub use plan::{plan_day_words, plan_words};
pub use questions::StandingQuestion;
pub use refused::Refused;
pub use screen_list::{ScreenGroup, ScreenKey, ScreenListView, TOP_SCREEN_KEYS, screen_list};
pub use seen::{FISH_SIGNS, SeenInput, beside_words, neighbour_words_id, seen_view, sign_words};
pub use sentences::{clauses_of, sentences_of};
pub use setup::{SetupInput, SetupView, setup};
pub use shell::{ShellWords, position_words};
pub use swim::{
    PegPlaceView, SwimKey, SwimKeyView, SwimPad, SwimScreen, SwimView, counts_in_yards, scene_words,
    swim_view,
};
pub use tackle::first_spot;
pub use tackle::{Choice, ChoiceRow, TackleAround, TackleView, tackle};
pub use usual_names::{plain_value, same_usual_class, same_value, usual_names};
pub use waits::{
    EarlierRows, FiguresView, ForecastLine, ForecastView, WaitsInput, WaitsView, forecast_view, waits,
};
pub use watch::{PhoneView, WatchAlarm, WatchKey, WatchView};
pub use watch::{WatchInput, phone_view, watch_view};
pub use welcome::welcome;
pub use which::Screen;
pub use whose::Whose;
pub use wording::{Arg, Wording, unbroken};
