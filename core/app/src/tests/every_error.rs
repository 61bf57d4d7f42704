//! Every error of the app in every language. Each list names all cases of its error: the match that the macro makes of one
//! compiles only while it does.

use super::*;
use restwater_bench::BenchError;
use restwater_exchange::{ClubFault, ExchangeError, Fault, FaultKind, LooksLike};
use restwater_log::CanonicalError;
use restwater_screen::Wording;
use restwater_session::match_setup::MatchError;
use restwater_session::{NotNow, every};
use restwater_sky::conditions::ConditionsError;
use restwater_sky::daylight::SkyError;
use restwater_store::StoreError;
use restwater_swim::{EarthError, GeoJsonError, SwimError};
use restwater_waits::BiteError;

fn text() -> String {
    "x".into()
}

fn of_the_app() -> Vec<AppError> {
    every!(AppError {
        NotNow: (NotNow::NoSession),
        NothingToUndo,
        NothingToRedo,
        NothingToSetBack,
        BeforeEarlier: ("12:46".into()),
        BeforeSession: ("12:46".into()),
        TooLong: { field: "note", count: 500, most: 80 },
        UnknownChoice: { field: "popup", value: "99".into() },
        NoCell,
        EarlierShown,
        NotRead: { what: WhatTyped::Length, text: text() },
        NothingTyped,
        EmptyText,
        Earth: (EarthError::Latitude(91.5)),
        GeoJson: (GeoJsonError::PegNeeded),
        NoSuchEntry,
        NotOfThatEntry,
        Swim: (SwimError::NoWater),
        Match: (MatchError::NoNet),
        Bench: (BenchError::NoFall),
        Conditions: (ConditionsError::CalmFromSomewhere),
        Sky: (SkyError::NoDate),
        NoSuchCaution,
        AnotherDay,
        NoSuchSession,
        NoClub,
        Store: (StoreError::Busy),
        Exchange: (ExchangeError::Cancelled),
        Canonical: (CanonicalError::NotAnOp(text())),
        Bite: (BiteError::NoWaits),
    })
}

fn of_the_moment() -> Vec<NotNow> {
    every!(NotNow {
        NoSession,
        SessionOpen,
        NoSuchRod: { rod: 3, rods: 1 },
        RodCount: (12),
        NoTest,
        TestIsComplete,
        NoMatch,
        NoLanding,
        NothingOut: (1),
        FishOn: (1),
        NoCastYet: (1),
        LostAlready: (1),
        RodOut: (1),
        RodWasOut: (1),
        AwayAlready,
        NotAway,
        NoPlan,
        NothingFed,
        NoFishOn: (1),
    })
}

fn of_what_is_typed() -> Vec<AppError> {
    let all = every!(WhatTyped { Latitude, Longitude, Bearing, Length, Weight, PegNote, Time });
    let not_read = |what| ["", "x"].map(|text| AppError::NotRead { what, text: text.into() });
    all.into_iter().flat_map(not_read).collect()
}

fn of_files() -> Vec<ExchangeError> {
    let fault = || Fault { record: 1, byte: 2, kind: FaultKind::Cut };
    let mut all = every!(ExchangeError {
        NotOpFile: (LooksLike::Empty),
        Newer: { found: 9, known: 1 },
        Header: (fault()),
        TooMany: (10),
        Cancelled,
        NoSuchImport: (Uuid::nil()),
        Io: (std::io::Error::other("x")),
        Club: (ClubFault::Older),
        Store: (StoreError::NoSpace),
    });
    let clubs = every!(ClubFault {
        Newer,
        Older,
        Damaged: (text()),
        Weights: (restwater_waits::ClubError::NotAWeight),
        FewAnglers: (3),
        TooLarge: (10),
    });
    all.extend(clubs.into_iter().map(ExchangeError::Club));
    all
}

fn of_the_store() -> Vec<StoreError> {
    every!(StoreError {
        Damaged: (text()),
        Newer: { found: 9, known: 1 },
        Foreign: (text()),
        ReadOnly: (text()),
        Busy,
        NoSpace,
        Clash: (Uuid::nil()),
        Op: (CanonicalError::NotAnOp(text())),
        OutOfRange: (Uuid::nil()),
        Io: (std::io::Error::other("x")),
        Sqlite: (text()),
    })
}

#[test]
fn every_error_is_in_the_language_of_the_phone() {
    let all = of_the_app()
        .into_iter()
        .chain(of_the_moment().into_iter().map(AppError::NotNow))
        .chain(of_what_is_typed())
        .chain(of_files().into_iter().map(AppError::from))
        .chain(of_the_store().into_iter().map(AppError::Store));
    let languages = ["en-GB", "de-DE", "fr-FR"].map(Wording::shared);
    for error in all {
        let [english, german, french] = languages.map(|words| error.message(words));
        for (said, other) in [(&german, &english), (&french, &english), (&german, &french)] {
            assert_ne!(said, other, "{error:?}");
        }
        for said in [&english, &german, &french] {
            let plain = said.chars().next().is_some_and(|c| !c.is_lowercase())
                && said.ends_with(['.', '?', '“', '»']);
            assert!(plain && !said.contains("error-") && !said.contains("refused-"), "{said}");
        }
        // No sentence contains a name that the program has for a field.
        assert!(![&german, &french].iter().any(|said| said.contains("popup")), "{german}");
    }
}
