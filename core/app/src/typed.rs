//! Typed texts: each kind is parsed only here, and a text that can't be read is refused with advice on what
//! to type instead.

use super::error::within;
use super::plan::sound_move;
use super::setup::DEEPEST_CM;
use super::{App, AppError, WhatTyped};
use restwater_bench::units::{LineLength, OUNCE_G, POUND_KG};
use restwater_log::{Moment, MoveAt, Payload, PlanLine};
use restwater_screen::{PlanTap, TackleTap, TypedInto};

impl App {
    /// A text was typed.
    pub(super) fn typed(&mut self, into: TypedInto, text: &str, at: &Moment) -> Result<String, AppError> {
        let mm = || -> Result<u32, AppError> { Ok(length(text)?.tenths_mm().saturating_add(5) / 10) };
        match into {
            TypedInto::Water => self.type_water(name(text)),
            TypedInto::Peg => self.type_peg(name(text)),
            TypedInto::SessionWater => self.correct_setup(|setup| setup.water = name(text), at),
            TypedInto::SessionPeg => self.correct_setup(|setup| setup.peg = name(text), at),
            TypedInto::Depth => {
                // An empty text means unknown.
                let cm = match name(text) {
                    None => None,
                    Some(_) => Some(within("depth", (length(text)?.tenths_mm() + 50) / 100, 1, DEEPEST_CM)?),
                };
                self.change_draft(|draft| draft.depth_cm = cm)
            }
            TypedInto::SwimName => {
                text.clone_into(&mut self.swim.typed.name);
                Ok(String::new())
            }
            TypedInto::PegLatitude => Ok(keep(&mut self.swim.typed.lat, text)),
            TypedInto::PegLongitude => Ok(keep(&mut self.swim.typed.lon, text)),
            TypedInto::PegBearing => Ok(keep(&mut self.swim.typed.out, text)),
            TypedInto::Bait { rod } => self.tackle_tap(rod, &TackleTap::Bait { name: text.into() }, at),
            TypedInto::Colour { rod } => self.tackle_tap(rod, &TackleTap::Colour { name: text.into() }, at),
            TypedInto::PopUp { rod } => self.tackle_tap(rod, &TackleTap::PopUp { mm: mm()? }, at),
            TypedInto::Hooklength { rod } => self.tackle_tap(rod, &TackleTap::Hooklength { mm: mm()? }, at),
            TypedInto::Lead { rod } => self.tackle_tap(rod, &TackleTap::Lead { mg: weight_mg(text)? }, at),
            TypedInto::Note => {
                let text = name(text).ok_or(AppError::EmptyText)?;
                self.write_in_book(Payload::Noted { text }, at)
            }
            TypedInto::MatchRule => {
                self.log_here(Payload::MatchRuleSaid { text: text.trim().to_owned() }, at)
            }
            TypedInto::PlanPeg => self.plan_line(peg_note(text)?, at),
            TypedInto::PlanMark => self.plan_tap(&PlanTap::Mark { name: text.into() }, at),
            TypedInto::PlanMove => self.plan_line(PlanLine::Move { at: move_at(text)? }, at),
            TypedInto::Plan => {
                let text = name(text).ok_or(AppError::EmptyText)?;
                self.write_in_book(Payload::PlannedNext { text }, at)
            }
        }
    }
}

/// Keeps the text as it was typed, since the next letter may complete it; a key parses it later.
fn keep(line: &mut Option<String>, text: &str) -> String {
    *line = Some(text.to_owned());
    String::new()
}

/// A name or a sentence, or `None` if nothing but spaces was typed.
fn name(text: &str) -> Option<String> {
    Some(text.trim().to_owned()).filter(|text| !text.is_empty())
}

/// The error for a text that can't be read.
fn not_read(what: WhatTyped, text: &str) -> AppError {
    AppError::NotRead { what, text: text.trim().chars().take(40).collect() }
}

/// The most letters of a peg's name and of the note for it, which are read at a glance on the Bank.
const LONGEST_PEG: usize = 20;
const LONGEST_PEG_NOTE: usize = 80;

/// A peg and what to do there: "14: bread to the island". Without a colon the first word is the peg.
fn peg_note(text: &str) -> Result<PlanLine, AppError> {
    let text = text.trim();
    let (peg, note) = text.split_once(':').or_else(|| text.split_once(' ')).unwrap_or((text, ""));
    let (peg, note) = (peg.trim().to_owned(), note.trim().to_owned());
    if peg.is_empty() || peg.chars().count() > LONGEST_PEG {
        return Err(not_read(WhatTyped::PegNote, text));
    }
    let count = note.chars().count();
    if count > LONGEST_PEG_NOTE {
        return Err(AppError::TooLong { field: "note", count, most: LONGEST_PEG_NOTE });
    }
    Ok(PlanLine::Peg { peg, note })
}

/// A time of day as "12:30", or minutes after all-in as "90" or "90 min".
fn move_at(text: &str) -> Result<MoveAt, AppError> {
    let refused = || not_read(WhatTyped::Time, text);
    let part = |text: &str| {
        let digits = !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
        digits.then(|| text.parse::<u16>().ok()).flatten().ok_or_else(refused)
    };
    let plain = typed_plainly(text).trim().to_lowercase();
    let at = match plain.split_once([':', '.']) {
        Some((hour, minute)) => match (part(hour)?, part(minute)?) {
            (hour @ 0..24, minute @ 0..60) => MoveAt::Clock { minute: 60 * hour + minute },
            _ => return Err(refused()),
        },
        None => MoveAt::AllIn { minutes: part(plain.trim_end_matches("min").trim_end())? },
    };
    sound_move(at).map_err(|_| refused())
}

/// A figure and its unit: "18 in", "45,7cm".
fn figure(what: WhatTyped, text: &str) -> Result<(f64, String), AppError> {
    let plain = typed_plainly(text).trim().to_lowercase();
    let end = plain.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(plain.len());
    let (figure, unit) = plain.split_at(end);
    let figure = number(figure).ok_or_else(|| not_read(what, text))?;
    Ok((figure, unit.trim().trim_end_matches('.').to_owned()))
}

/// A length with its unit: inches, feet, centimetres, millimetres or metres.
fn length(text: &str) -> Result<LineLength, AppError> {
    let refused = || not_read(WhatTyped::Length, text);
    let (n, unit) = figure(WhatTyped::Length, text)?;
    let length = match unit.as_str() {
        "in" | "inch" | "inches" | "\"" => LineLength::from_inches(n),
        "ft" | "foot" | "feet" | "'" => LineLength::from_inches(12.0 * n),
        "mm" => LineLength::from_cm(n / 10.0),
        "cm" => LineLength::from_cm(n),
        "m" => LineLength::from_metres(n),
        _ => return Err(refused()),
    };
    length.map_err(|_| refused())
}

/// A weight with its unit, in milligrams: grams, kilograms, ounces or pounds.
fn weight_mg(text: &str) -> Result<u32, AppError> {
    let (n, unit) = figure(WhatTyped::Weight, text)?;
    let grams = match unit.as_str() {
        "g" => n,
        "kg" => 1_000.0 * n,
        "oz" => OUNCE_G * n,
        "lb" => 1_000.0 * POUND_KG * n,
        _ => return Err(not_read(WhatTyped::Weight, text)),
    };
    let mg = libm::round(grams * 1_000.0);
    if (1.0..=f64::from(u32::MAX)).contains(&mg) {
        Ok(mg as u32)
    } else {
        Err(not_read(WhatTyped::Weight, text))
    }
}

/// Degrees as people write them: `52.1234`, `-1,25`, `1.25 W`, `52 7 24 N`, `52° 7.4' N`.
pub(super) fn degrees(what: WhatTyped, text: &str) -> Result<f64, AppError> {
    let refused = || not_read(what, text);
    // The second of the two letters means negative degrees.
    let letters: &[char] = match what {
        WhatTyped::Latitude => &['N', 'S'],
        WhatTyped::Longitude => &['E', 'W'],
        _ => &[],
    };
    let upper = typed_plainly(text).trim().to_uppercase();
    let letter = upper.chars().find(|c| letters.contains(c));
    let bare: String = upper
        .chars()
        .filter(|c| Some(*c) != letter)
        .map(|c| if "°º'\":".contains(c) { ' ' } else { c })
        .collect();
    // A second letter is not a number, and is refused as such.
    let parts: Option<Vec<f64>> = bare.split_whitespace().map(number).collect();
    let parts = parts.filter(|p| (1..=3).contains(&p.len())).ok_or_else(refused)?;
    let minutes_fit = parts[1..].iter().all(|p| (0.0..60.0).contains(p));
    let turned = bare.trim_start().starts_with('-');
    if !minutes_fit || (turned && letter.is_some()) {
        return Err(refused());
    }
    let size = parts[0].abs()
        + parts.get(1).copied().unwrap_or(0.0) / 60.0
        + parts.get(2).copied().unwrap_or(0.0) / 3_600.0;
    Ok(if turned || (letter.is_some() && letter == letters.get(1).copied()) { -size } else { size })
}

/// What was typed, as the rules for figures read it: with a decimal point, a hyphen for the minus sign, straight quotation marks and
/// the digits 0 to 9. Keyboards put other characters in their place, and so does this app where it shows a figure.
fn typed_plainly(text: &str) -> String {
    text.chars().map(plain_char).collect()
}

fn plain_char(c: char) -> char {
    /// The digit 0 of the scripts whose keyboards type digits of their own: Arabic-Indic, its eastern form, and Devanagari.
    const ZEROS: [char; 3] = ['\u{660}', '\u{6f0}', '\u{966}'];
    match c {
        ',' | '\u{66b}' => '.',
        '−' | '–' => '-',
        '’' | '‘' | '′' => '\'',
        '”' | '“' | '„' | '″' => '"',
        _ => {
            let digit =
                ZEROS.iter().find_map(|&zero| (c as u32).checked_sub(zero as u32).filter(|n| *n < 10));
            digit.and_then(|n| char::from_digit(n, 10)).unwrap_or(c)
        }
    }
}

/// A plain decimal number: no exponent, no name of infinity.
fn number(text: &str) -> Option<f64> {
    let plain = text.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | '-' | '+'));
    plain.then(|| text.parse().ok()).flatten()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn degrees_are_read_as_people_write_them() {
        let lat = |text: &str| degrees(WhatTyped::Latitude, text).ok();
        assert_eq!(lat("52.5"), Some(52.5));
        assert_eq!(lat(" 52,5 N "), Some(52.5));
        assert_eq!(lat("n 52.5"), Some(52.5));
        assert_eq!(lat("52 30 s"), Some(-52.5));
        assert_eq!(lat("52° 7' 12\" N"), Some(52.12));
        assert_eq!((lat("-0 30"), lat("−0 30")), (Some(-0.5), Some(-0.5)));
        assert_eq!(lat("52° 7’ 12” N"), Some(52.12));
        for bad in ["", "north", "52.5 W", "52 61", "1 2 3 4", "1e9", "inf", "NaN", "-5 S", "5 N S", "52 -3"]
        {
            assert_eq!(lat(bad), None, "{bad}");
        }
        assert_eq!(degrees(WhatTyped::Bearing, "270").ok(), Some(270.0));
        assert!(degrees(WhatTyped::Bearing, "270 W").is_err());
    }

    #[test]
    fn a_peg_and_what_to_do_there_are_read_at_one_place() {
        let read = |text: &str| match peg_note(text) {
            Ok(PlanLine::Peg { peg, note }) => Some((peg, note)),
            _ => None,
        };
        let said = |peg: &str, note: &str| Some((peg.to_owned(), note.to_owned()));
        assert_eq!(read(" 14: bread to the island "), said("14", "bread to the island"));
        assert_eq!(read("boathouse bay: margins"), said("boathouse bay", "margins"));
        assert_eq!(read("14 feeder"), said("14", "feeder"));
        assert_eq!(read("14"), said("14", ""));
        assert_eq!(read("  "), None);
        assert_eq!(read(": bread"), None);
        assert_eq!(read("a name of a peg longer than any: x"), None);
        assert!(matches!(
            peg_note(&format!("14: {}", "x".repeat(81))),
            Err(AppError::TooLong { most: 80, .. })
        ));
    }

    #[test]
    fn a_time_to_move_is_a_time_of_day_or_minutes() {
        let clock = |minute| Some(MoveAt::Clock { minute });
        let after = |minutes| Some(MoveAt::AllIn { minutes });
        let read = |text: &str| move_at(text).ok();
        assert_eq!((read("12:30"), read(" 9.05 ")), (clock(750), clock(545)));
        assert_eq!((read("90"), read("90 min"), read("0MIN")), (after(90), after(90), after(0)));
        for bad in ["", "noon", "24:00", "12:60", "12:3x", "1441", "-5", "99999999", "12:", ":30"] {
            assert_eq!(read(bad), None, "{bad}");
        }
    }

    /// An inch is 25.4 mm and an ounce 28.349523125 g, exactly (international yard and pound agreement of 1959).
    #[test]
    fn figures_are_read_with_their_unit() {
        let tenths = |text: &str| length(text).ok().map(LineLength::tenths_mm);
        assert_eq!(tenths("18 in"), Some(4_572));
        assert_eq!(tenths("1.5ft"), Some(4_572));
        assert_eq!(tenths("45,7 cm"), Some(4_570));
        assert_eq!(tenths("8 MM"), Some(80));
        assert_eq!(tenths("2.5 m"), Some(25_000));
        // Curly quotation marks, a decimal comma and other digits, as keyboards type them.
        assert_eq!((tenths("18”"), tenths("1.5’"), tenths("1,5′")), (Some(4_572), Some(4_572), Some(4_572)));
        assert_eq!(
            (tenths("٤٥ cm"), tenths("४५ cm"), tenths("۴۵٫۷ cm")),
            (Some(4_500), Some(4_500), Some(4_570))
        );
        for bad in ["", "18", "in", "18 g", "-3 cm", "0 cm", "1e3 cm", "18 in 2", "99999 m"] {
            assert_eq!(tenths(bad), None, "{bad}");
        }
        assert_eq!(weight_mg("1 oz").ok(), Some(28_350));
        assert_eq!(weight_mg("30g").ok(), Some(30_000));
        assert_eq!(weight_mg("0.5 lb").ok(), Some(226_796));
        for bad in ["", "30", "30 cm", "0 g", "-1 g", "9999999 kg"] {
            assert!(weight_mg(bad).is_err(), "{bad}");
        }
    }
}
