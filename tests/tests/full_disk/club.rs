//! A club's start, taken and left with every amount of room.

use super::{CAST, START, at, entries, open};
use restwater_app::{Action, App, ErrorKind, Screen, Which};
use restwater_log::sha256_hex;
use restwater_screen::FilesTap;
use restwater_tests::powercut::{on_disk, set_room};
use restwater_waits::Shapes;
use std::ops::ControlFlow;
use std::path::Path;

/// The file of a club all of whose bites come late.
fn file() -> String {
    let late = |name: &String| name.starts_with("bunch 25-35");
    let shapes = Shapes::usual();
    let count = shapes.kind_names().iter().filter(|name| late(name)).count() as f64;
    let weights: Vec<f64> =
        shapes.kind_names().iter().map(|name| if late(name) { 1.0 / count } else { 0.0 }).collect();
    let weights = serde_json::to_string(&weights).unwrap();
    let club = format!(
        "{{\"anglers\":9,\"days\":90,\"fitted\":[{{\"anglers\":9,\"days\":90,\"of\":\"all\",\"weights\":{weights}}}],\
         \"shapes\":1,\"waters\":2}}"
    );
    let hash = sha256_hex(club.as_bytes());
    format!(
        "\u{1e}{{\"format\":\"restwater-club\",\"version\":1}}\n\u{1e}{{\"club\":{club},\"sha256\":\"{hash}\"}}\n"
    )
}

fn headline(app: &mut App) -> String {
    match app.screen(Which::Bank, &at(30)).unwrap() {
        Screen::Bank(bank) => bank.advice.headline,
        other => panic!("{other:?}"),
    }
}

/// Whether it was stored or refused.
fn take_or_leave(app: &mut App, file: Option<&Path>) -> Result<(), ErrorKind> {
    let done = match file {
        Some(file) => app.take_in(file, "Alder AC", &at(31), &mut |_| ControlFlow::Continue(())).map(|_| ()),
        None => app.act(&Action::Files { tap: FilesTap::LeaveClub }, &at(31)).map(|_| ()),
    };
    done.map_err(|error| error.kind())
}

pub fn a_clubs_start_is_taken_or_left_whole_or_not_at_all() {
    for leaves in [false, true] {
        let (mut stored, mut refused) = (0, 0);
        for room in (0..60_000).step_by(4_000) {
            let dir = tempfile::tempdir().unwrap();
            let path = dir.path().join("club");
            std::fs::write(&path, file()).unwrap();
            let mut app = open(dir.path(), 3);
            for (minute, tap) in [(0, START), (1, CAST), (6, Action::WoundIn { rod: 1 })] {
                app.act(&tap, &at(minute)).unwrap();
            }
            if leaves {
                take_or_leave(&mut app, Some(&path)).unwrap();
            }
            let was = headline(&mut app);
            drop(app);
            let before = entries(dir.path());
            on_disk(None, || {
                let mut app = open(dir.path(), 5);
                set_room(Some(room));
                let told = take_or_leave(&mut app, (!leaves).then_some(&*path));
                set_room(None);
                let now = headline(&mut app);
                drop(app);
                match told {
                    Ok(()) => stored += 1,
                    Err(kind) => {
                        assert_eq!(kind, ErrorKind::NotSaved, "{room} bytes");
                        refused += 1;
                    }
                }
                assert_eq!(entries(dir.path()) > before, told.is_ok(), "{room} bytes");
                assert_eq!(now != was, told.is_ok(), "{room} bytes: {was} {now}");
                assert_eq!(headline(&mut open(dir.path(), 4)), now, "{room} bytes, after a restart");
            });
        }
        assert!(stored > 0 && refused > 0, "{leaves}: {stored} stored, {refused} refused");
    }
}
