//! The demo day as every language must see it: the resulting entries and the screens at its pictures. Kotlin
//! (`SharedDayTest`) and Swift (`SharedDayTests`) play the same day through the bindings and compare with the
//! snapshots kept here.
//!
//! Ids, the checksums over them and the phone's part of a boot are random and differ from run to run: ids are
//! numbered in the order in which they appear (`#1`, `#2`), a checksum is `sha256` and the phone `phone`.
//! Everything else must agree to the byte: kinds, payloads, moments, clocks, order, every word and every
//! figure of a screen.
//!
//! For a screen only its length and its hash (FNV-1a, 64 bits, which takes a few lines in each of the three
//! languages) are kept, one line for each picture. Every language writes the whole text to
//! `target/tmp/shared-day-LANGUAGE.txt`, where two of them can be compared.

use restwater_app::{Action, App, Which, read_day};
use restwater_screen::{FilesTap, FormChoice, Span};
use restwater_tests::phone::Seeded;
use std::error::Error;
use std::fmt::Write as _;
use std::ops::ControlFlow;
use std::path::Path;

const DAY: &str = include_str!("../../days/demo.jsonl");
/// Every screen, in the order of `Which`, with its name in the snapshot.
const SCREENS: &[(Which, &str)] = &[
    (Which::Bank, "bank"),
    (Which::Setup, "setup"),
    (Which::Tackle, "tackle"),
    (Which::Swim, "swim"),
    (Which::Waits, "waits"),
    (Which::Changes, "changes"),
    (Which::Match, "match"),
    (Which::Fish, "fish"),
    (Which::Weight, "weight"),
    (Which::Feed, "feed"),
    (Which::FeedWeight, "feed_weight"),
    (Which::Seen, "seen"),
    (Which::Files, "files"),
    (Which::Bench, "bench"),
    (Which::Book, "book"),
    (Which::Conditions, "conditions"),
    (Which::Cautions, "cautions"),
    (Which::Mend, "mend"),
    (Which::Phone, "phone"),
    (Which::Day, "day"),
    (Which::Welcome, "welcome"),
    (Which::Legend, "legend"),
];

#[test]
fn entries_and_screens_of_the_day() -> Result<(), Box<dyn Error>> {
    let dir = tempfile::tempdir()?;
    let day = read_day(DAY)?;
    let mut app = App::open(dir.path(), Box::new(Seeded::new(7)), &day[0].at)?;
    let (mut screens, mut whole) = (String::new(), String::new());
    for tap in &day {
        if let Some(action) = &tap.action {
            app.act(action, &tap.at)?;
        }
        let Some(picture) = &tap.picture else { continue };
        screens.push_str(picture);
        for (which, name) in SCREENS {
            // The swim has nothing to show without a session, and says so.
            let json = match app.screen(*which, &tap.at) {
                Ok(screen) => serde_json::to_string(&screen)?,
                Err(refused) => app.message(&refused),
            };
            let text = without_ids(&json);
            write!(screens, ", {name} {} {:016x}", text.len(), fnv1a(text.as_bytes()))?;
            writeln!(whole, "{picture} {name}\n{text}")?;
        }
        screens.push('\n');
    }
    let end = &day[day.len() - 1].at;
    let choices = [FilesTap::Form { form: FormChoice::Entries }, FilesTap::Span { span: Span::Everything }];
    for tap in choices {
        app.act(&Action::Files { tap }, end)?;
    }
    let file = app.send(end, &mut |_| ControlFlow::Continue(()))?;
    std::fs::write(Path::new(env!("CARGO_TARGET_TMPDIR")).join("shared-day-rust.txt"), whole)?;
    insta::assert_snapshot!("screens", screens);
    insta::assert_snapshot!(
        "entries",
        without_ids(&std::fs::read_to_string(file.path)?.replace('\u{1e}', ""))
    );
    Ok(())
}

/// FNV-1a of 64 bits (Fowler, Noll, Vo; RFC 9923).
fn fnv1a(bytes: &[u8]) -> u64 {
    bytes
        .iter()
        .fold(0xcbf2_9ce4_8422_2325, |hash, byte| (hash ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3))
}

/// Numbers ids in the order in which they appear, replaces checksums by a word, and removes the phone from
/// boots.
fn without_ids(text: &str) -> String {
    let text = without_phones(text);
    let mut seen: Vec<&str> = Vec::new();
    let mut out = String::new();
    let mut rest = text.as_str();
    while let Some(first) = rest.chars().next() {
        if let Some(id) = rest.get(..36).filter(|id| uuid::Uuid::try_parse(id).is_ok()) {
            let nth = seen.iter().position(|known| *known == id).unwrap_or_else(|| {
                seen.push(id);
                seen.len() - 1
            });
            let _ = write!(out, "#{}", nth + 1);
            rest = &rest[36..];
        } else if rest
            .get(..64)
            .is_some_and(|sum| sum.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f')))
        {
            out.push_str("sha256");
            rest = &rest[64..];
        } else {
            out.push(first);
            rest = &rest[first.len_utf8()..];
        }
    }
    out
}

/// Boots as `phone/boot`: the phone's part is drawn again with each install.
fn without_phones(text: &str) -> String {
    let mut parts = text.split("\"boot\":\"");
    let mut out = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        let rest = part.split_once('/').filter(|(phone, _)| phone.len() == 12).map(|(_, rest)| rest);
        let _ =
            write!(out, "\"boot\":\"{}{}", if rest.is_some() { "phone/" } else { "" }, rest.unwrap_or(part));
    }
    out
}

#[test]
fn an_id_is_its_place_and_a_checksum_a_word() {
    let (a, b) = ("01890a5d-ac96-774b-bcce-b302099a8057", "01890a5d-ac96-774b-bcce-b302099a8058");
    let sum = "0123456789abcdef".repeat(4);
    assert_eq!(without_ids(&format!("{a} {b} é {a} {sum}")), "#1 #2 é #1 sha256");
    assert_eq!(without_ids("{\"boot\":\"0123456789ab/b1\"}"), "{\"boot\":\"phone/b1\"}");
}

// The test vectors of the algorithm's authors, from memory.
#[test]
fn the_hash_is_that_of_its_authors() {
    assert_eq!(fnv1a(b""), 0xcbf2_9ce4_8422_2325);
    assert_eq!(fnv1a(b"a"), 0xaf63_dc4c_8601_ec8c);
    assert_eq!(fnv1a(b"foobar"), 0x8594_4171_f739_67e8);
}
