//! Every refusal in every language. The lists below name each case of each error: the match that the macro makes of one
//! compiles only while it names them all.

use super::*;
use restwater_bench::BenchError;
use restwater_bench::balance::BalanceError;
use restwater_bench::cut_down::{CutDownError, Need};
use restwater_bench::fall::FallError;
use restwater_bench::hooklength::WalletError;
use restwater_bench::ladder::LadderError;
use restwater_bench::material::MaterialError;
use restwater_bench::shot::ShotError;
use restwater_bench::tie_up::TieUpError;
use restwater_bench::units::LengthError;
use restwater_bench::water::WaterError;
use restwater_exchange::{Fault, FaultKind};
use restwater_match_day::class::ClassError;
use restwater_match_day::clock::ClockError;
use restwater_match_day::rules::RulesError;
use restwater_match_day::running::RunningError;
use restwater_match_day::weight::{Weight, WeightError};
use restwater_session::every;
use restwater_session::match_setup::MatchError;
use restwater_sky::conditions::ConditionsError;
use restwater_sky::daylight::SkyError;
use restwater_swim::{EarthError, GeoJsonError, SwimError};
use std::collections::BTreeSet;
use uuid::Uuid;

fn boxed<E: Refused + 'static>(all: Vec<E>) -> Vec<Box<dyn Refused>> {
    all.into_iter().map(|error| Box::new(error) as Box<dyn Refused>).collect()
}

fn cm(cm: u32) -> LineLength {
    LineLength::from_tenths_mm(cm * 100 + 50)
}

fn need() -> Need {
    Need { length: cm(20), diameter_um: Some(120), hook_size: Some(16) }
}

fn text() -> String {
    "x".into()
}

fn of_the_bench() -> Vec<Box<dyn Refused>> {
    let all = [
        boxed(every!(BenchError {
            NotShorter: { from: cm(20), to: cm(30) },
            NothingToCutDown,
            NothingToTie,
            NoSuchSpool,
            NotFalling,
            NoFall,
            FallKept,
            Length: (LengthError::NotPositive),
            Wallet: (WalletError::NotAHooklength),
            CutDown: (CutDownError::NoTieOfThatKind { need: need() }),
            TieUp: (TieUpError::TooManyTies(501)),
            Balance: (BalanceError::BadLift),
            Fall: (FallError::NotCalibrated),
            Ladder: (LadderError::Empty),
        })),
        boxed(every!(LengthError { NotPositive, Absurd: (12_000.5) })),
        boxed(every!(WalletError {
            NotAHooklength,
            NotThatMany: { length: cm(20), have: 1, asked: 2 },
            Absurd: (70_000),
        })),
        boxed(every!(CutDownError {
            NoTieLongEnough: { need: need(), longest: cm(10) },
            NoTieOfThatKind: { need: need() },
            NotEnoughTies: { need: need(), ties: 1, needs: 2 },
            TooMany: { ties: 2_000, needs: 300 },
        })),
        boxed(every!(TieUpError {
            NoSpoolLongEnough: { cut: cm(90), longest: cm(50) },
            NotEnoughLine: { needed: cm(900), held: cm(500) },
            DoesNotFit: { cut: cm(90) },
            TooManyTies: (501),
            TooManySpools: (41),
        })),
        boxed(every!(BalanceError {
            BadLift,
            BadDiameter: (1.5),
            Sinks: { lift_g: 0.1, held_g: 0.25 },
            Material: (MaterialError::BadMass),
            Shot: (ShotError::NoTable),
        })),
        boxed(every!(MaterialError { BadMass, BadDensity, Water: (WaterError::NotANumber) })),
        boxed(every!(WaterError { NotANumber, OutOfRange: (40.5) })),
        boxed(every!(ShotError {
            NoTable,
            BadShot: (0.0001),
            BadTarget,
            NoneClose: { wanted: 0.5, tolerance: 0.05, most: 6 },
            Material: (MaterialError::BadDensity),
        })),
        boxed(every!(FallError {
            NoTime: (0.0),
            TooLong: (120.5),
            BadDepth: (0.05),
            BadReaction: (5.5),
            NotCalibrated,
            TooShort: (0.3),
        })),
        boxed(every!(LadderError { Empty, BadRung: (cm(20)), BadMinutes: (-1.5) })),
    ];
    all.into_iter().flatten().collect()
}

fn of_a_match() -> Vec<Box<dyn Refused>> {
    let all = [
        boxed(every!(MatchError {
            Clock: (ClockError::NoTime),
            Rules: (RulesError::NoName),
            Class: (ClassError::NoName),
            Weight: (WeightError::Zero),
            NoNet,
            DuplicateClass: (text()),
            NoSuchClass: (text()),
            WeighInBeforeAllIn,
        })),
        boxed(every!(ClockError {
            OutBeforeIn: (30),
            NoTime,
            TooLong: (400),
            OffsetTooLarge: (30),
            NotAMoment,
            LandingTooLong: (121),
            AlarmTooEarly: (600),
        })),
        boxed(every!(RulesError {
            DuplicateNet: (text()),
            NoName,
            HoldsNothing: (text()),
            NothingCounts,
            LandingTooLong: (121),
            Limit: { net: text(), source: WeightError::Zero },
            NoSuchNet: (text()),
            WrongNet: { kind: "Carp".into(), net: text() },
        })),
        boxed(every!(ClassError {
            NoName,
            BadSpread: { name: text(), spread: 2.5 },
            Weight: (WeightError::Zero),
        })),
        boxed(every!(WeightError {
            Negative: ("-1.250 kg".into()),
            Zero,
            Absurd: { weight: "1234.500 kg".into(), most: "1000.000 kg".into() },
            SixteenOrMore: ("ounces"),
            NoUnit: (text()),
            TooFine: (text()),
            NotAWeight: (text()),
        })),
        boxed(every!(RunningError {
            Rules: (RulesError::NoName),
            Weight: (WeightError::Zero),
            GuessBackwards: { low: Weight::Grams(2_500), high: Weight::Grams(1_500) },
            NoSuchClass: (3),
        })),
    ];
    all.into_iter().flatten().collect()
}

fn of_the_water() -> Vec<Box<dyn Refused>> {
    let all = [
        boxed(every!(SwimError {
            NotANumber: { what: "a range", value: f64::NAN },
            NotPositive: { what: "a range", value: -1.5 },
            BearingBehind: (-100.5),
            RangeTooLong: { range_m: 300.5, limit_m: 200.0 },
            BandWithoutWidth: { from_m: 10.5, to_m: 9.5 },
            BandsOverlap: { before_to_m: 10.5, from_m: 9.5 },
            SameMarkTwice: (text()),
            MarksOnOneBearing: (text(), text()),
            TooFewCorners: (1),
            OutlineCrosses: { side: 0, other: 2, x: 1.5, y: 2.5 },
            NoWater,
            OutsideSwim: { bearing_deg: -10.5, range_m: 20.5 },
            EndsBeforeStart: { start_ms: 2, end_ms: 1 },
            FanWithoutWidth: { from_deg: 10.5, to_deg: 9.5 },
            NoRoomToDraw: { what: "a width", value: 0.0 },
            NoSuchCell: { column: 1, row: 1 },
        })),
        boxed(every!(EarthError {
            Latitude: (91.5),
            Longitude: (181.5),
            Azimuth: (f64::NAN),
            AtPole: (89.95),
            TooFar: { what: text(), metres: 6_000.5, limit: 5_000.0 },
        })),
        boxed(every!(GeoJsonError {
            NotGeoJson: (text()),
            PegNeeded,
            TooMuch: { most: 1, of: "corners" },
            Earth: (EarthError::Latitude(91.5)),
            Swim: (SwimError::NoWater),
        })),
        boxed(every!(ConditionsError { Air: (465), Water: (-15), Cloud: (9), CalmFromSomewhere })),
        boxed(every!(SkyError {
            NoPlace: { lat: 91.5, lon: 1.5 },
            NoDate,
        })),
    ];
    all.into_iter().flatten().collect()
}

fn of_a_file() -> Vec<Box<dyn Refused>> {
    let mut all = boxed(every!(FaultKind {
        NotUtf8,
        NotJson: ("expected value at line 1".into()),
        DuplicateKey: (text()),
        LoneSurrogate,
        TooDeep,
        TooLong,
        NumberOutOfRange,
        NotCanonical,
        WrongHash,
        NotARecord,
        NotAnOp: ("missing field".into()),
        ClockAbsurd,
        Cut,
        AfterEnd,
        Clash: (Uuid::nil()),
    }));
    all.push(Box::new(Fault { record: 3, byte: 120, kind: FaultKind::Cut }));
    all
}

#[test]
fn every_refusal_is_in_the_language_of_the_phone() {
    let (english, german, french) = (Wording::new(), Wording::shared("de-DE"), Wording::shared("fr-FR"));
    let sentences = of_the_bench().into_iter().chain(of_a_match()).chain(of_the_water());
    let mut said = BTreeSet::new();
    for refused in sentences {
        let in_all = [&english, german, french].map(|words| refused.said(words));
        for text in &in_all {
            let ends = text.ends_with('.') && !text.ends_with("..");
            assert!(ends && !text.starts_with("refused-") && !text.contains("  "), "{text}");
            assert!(text.chars().next().is_some_and(|c| !c.is_lowercase()), "{text}");
        }
        let [english, german, french] = in_all;
        assert!(english != german && english != french && german != french, "{english} {german} {french}");
        for text in [&german, &french] {
            let chars: Vec<char> = text.chars().collect();
            let point = |c: &[char]| c[0].is_ascii_digit() && c[1] == '.' && c[2].is_ascii_digit();
            assert!(!chars.windows(3).any(point), "{text}");
        }
        said.insert(english);
    }
    assert!(said.len() > 85, "each case has a sentence of its own: {}", said.len());
    for fault in of_a_file() {
        let [english, german, french] = [&english, german, french].map(|words| fault.said(words));
        assert!(english != german && english != french && !english.starts_with("fault-"), "{english}");
    }
}

#[test]
fn a_refusal_names_its_figures_as_the_language_writes_them() {
    let german = Wording::shared("de-DE");
    let sinks = BenchError::from(BalanceError::Sinks { lift_g: 0.1, held_g: 0.254_4 });
    assert_eq!(
        sinks.said(german),
        "Der Köder hebt 0,1 g, aber Haken und Schnur wiegen im Wasser 0,254 g: er steigt nicht auf. Nimm einen kleineren Haken oder mehr Köder."
    );
    let cold = ConditionsError::Water(-15);
    assert_eq!(
        cold.said(&Wording::new()),
        "−1.5 °C can't be used for the water: enter 0 to 35. Below 0 it is ice."
    );
}
