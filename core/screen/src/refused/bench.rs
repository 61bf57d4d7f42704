//! What the bench refuses.

use super::{Refused, figure, length, say};
use crate::Wording;
use restwater_bench::BenchError;
use restwater_bench::balance::BalanceError;
use restwater_bench::cut_down::CutDownError;
use restwater_bench::fall::FallError;
use restwater_bench::hooklength::WalletError;
use restwater_bench::ladder::LadderError;
use restwater_bench::material::MaterialError;
use restwater_bench::shot::ShotError;
use restwater_bench::tie_up::TieUpError;
use restwater_bench::units::LengthError;
use restwater_bench::water::WaterError;

/// The thinnest line, in mm.
const THINNEST_MM: f64 = 0.04;
/// The lightest shot, in grams.
const LIGHTEST_G: f64 = 0.001;
/// The shallowest depth that is plumbed, in metres.
const SHALLOWEST_M: f64 = 0.1;

impl Refused for BenchError {
    fn said(&self, words: &Wording) -> String {
        match self {
            Self::NotShorter { from, to } => {
                let args = [("from", &*length(words, *from)), ("to", &length(words, *to))];
                say(words, "not-shorter", &args)
            }
            Self::NothingToCutDown => say(words, "nothing-to-cut", &[]),
            Self::NothingToTie => say(words, "nothing-to-tie", &[]),
            Self::NoSuchSpool => say(words, "no-spool", &[]),
            Self::NotFalling => say(words, "not-falling", &[]),
            Self::NoFall => say(words, "no-fall", &[]),
            Self::FallKept => say(words, "fall-kept", &[]),
            Self::Length(error) => error.said(words),
            Self::Wallet(error) => error.said(words),
            Self::CutDown(error) => error.said(words),
            Self::TieUp(error) => error.said(words),
            Self::Balance(error) => error.said(words),
            Self::Fall(error) => error.said(words),
            Self::Ladder(error) => error.said(words),
        }
    }
}

impl Refused for LengthError {
    fn said(&self, words: &Wording) -> String {
        match self {
            Self::NotPositive => say(words, "no-length", &[]),
            Self::Absurd(metres) => say(words, "length-absurd", &[("metres", &figure(words, *metres))]),
        }
    }
}

impl Refused for WalletError {
    fn said(&self, words: &Wording) -> String {
        match self {
            Self::NotAHooklength => say(words, "no-hooklength", &[("least", &figure(words, THINNEST_MM))]),
            Self::NotThatMany { length: of, have, asked } => {
                let (of, have, asked) = (length(words, *of), have.to_string(), asked.to_string());
                say(words, "not-that-many", &[("length", &of), ("have", &have), ("asked", &asked)])
            }
            Self::Absurd(asked) => say(words, "wallet-absurd", &[("asked", &asked.to_string())]),
        }
    }
}

impl Refused for CutDownError {
    fn said(&self, words: &Wording) -> String {
        match self {
            Self::NoTieLongEnough { need, longest } => {
                let args = [("length", &*length(words, need.length)), ("longest", &length(words, *longest))];
                say(words, "no-tie-long-enough", &args)
            }
            Self::NoTieOfThatKind { need } => {
                say(words, "no-tie-of-that-kind", &[("length", &length(words, need.length))])
            }
            Self::NotEnoughTies { need, ties, needs } => {
                let (ties, needs) = (ties.to_string(), needs.to_string());
                let args = [("length", &*length(words, need.length)), ("found", &ties), ("needs", &needs)];
                say(words, "not-enough-ties", &args)
            }
            Self::TooMany { .. } => say(words, "too-many-cuts", &[]),
        }
    }
}

impl Refused for TieUpError {
    fn said(&self, words: &Wording) -> String {
        match self {
            Self::NoSpoolLongEnough { cut, longest } => {
                let args = [("cut", &*length(words, *cut)), ("longest", &length(words, *longest))];
                say(words, "no-spool-long-enough", &args)
            }
            Self::NotEnoughLine { needed, held } => {
                let args = [("needed", &*length(words, *needed)), ("held", &length(words, *held))];
                say(words, "not-enough-line", &args)
            }
            Self::DoesNotFit { cut } => say(words, "does-not-fit", &[("cut", &length(words, *cut))]),
            Self::TooManyTies(_) => say(words, "too-many-ties", &[]),
            Self::TooManySpools(_) => say(words, "too-many-spools", &[]),
        }
    }
}

impl Refused for BalanceError {
    fn said(&self, words: &Wording) -> String {
        match self {
            Self::BadLift => say(words, "bad-lift", &[]),
            Self::BadDiameter(mm) => {
                let args = [("mm", &*figure(words, *mm)), ("least", &figure(words, THINNEST_MM))];
                say(words, "bad-diameter", &args)
            }
            Self::Sinks { lift_g, held_g } => {
                let args = [("lift", &*figure(words, *lift_g)), ("held", &figure(words, *held_g))];
                say(words, "sinks", &args)
            }
            Self::Material(error) => error.said(words),
            Self::Shot(error) => error.said(words),
        }
    }
}

impl Refused for MaterialError {
    fn said(&self, words: &Wording) -> String {
        match self {
            Self::BadMass => say(words, "bad-mass", &[]),
            Self::BadDensity => say(words, "bad-density", &[]),
            Self::Water(error) => error.said(words),
        }
    }
}

impl Refused for WaterError {
    fn said(&self, words: &Wording) -> String {
        match self {
            Self::NotANumber => say(words, "no-temperature", &[]),
            Self::OutOfRange(t) => say(words, "temperature-outside", &[("t", &figure(words, *t))]),
        }
    }
}

impl Refused for ShotError {
    fn said(&self, words: &Wording) -> String {
        match self {
            Self::NoTable => say(words, "no-shot-table", &[]),
            Self::BadShot(grams) => {
                let args = [("grams", &*figure(words, *grams)), ("least", &figure(words, LIGHTEST_G))];
                say(words, "bad-shot", &args)
            }
            Self::BadTarget => say(words, "bad-target", &[]),
            Self::NoneClose { wanted, tolerance, most } => {
                let (wanted, tolerance) = (figure(words, *wanted), figure(words, *tolerance));
                let most = most.to_string();
                let args = [("wanted", &*wanted), ("tolerance", &tolerance), ("most", &most)];
                say(words, "no-shot-close", &args)
            }
            Self::Material(error) => error.said(words),
        }
    }
}

impl Refused for FallError {
    fn said(&self, words: &Wording) -> String {
        let seconds = |case, s: f64| say(words, case, &[("seconds", &figure(words, s))]);
        match self {
            Self::NoTime(s) => seconds("fall-no-time", *s),
            Self::TooLong(s) => seconds("fall-too-long", *s),
            Self::BadDepth(metres) => {
                let args = [("metres", &*figure(words, *metres)), ("least", &figure(words, SHALLOWEST_M))];
                say(words, "bad-depth", &args)
            }
            Self::BadReaction(s) => seconds("bad-reaction", *s),
            Self::NotCalibrated => say(words, "not-calibrated", &[]),
            Self::TooShort(s) => seconds("falls-too-short", *s),
        }
    }
}

impl Refused for LadderError {
    fn said(&self, words: &Wording) -> String {
        match self {
            Self::Empty => say(words, "ladder-empty", &[]),
            Self::BadRung(height) => say(words, "bad-rung", &[("height", &length(words, *height))]),
            Self::BadMinutes(minutes) => say(words, "bad-minutes", &[("n", &figure(words, *minutes))]),
        }
    }
}
