//! The rods on a full disk: which one is chosen, and where the next cast goes.

use super::{START, at, on_disk, open, set_room};
use restwater_app::{Action, ErrorKind};
use restwater_log::Reach;
use restwater_screen::{PlanTap, SetupTap};

/// The keys act on the rod even so: a choice is no entry, and BITE must not go to another rod.
pub(super) fn a_rod_that_can_not_be_stored_is_chosen_all_the_same() {
    let dir = tempfile::tempdir().unwrap();
    let mut app = open(dir.path(), 1);
    app.act(&Action::Setup { tap: SetupTap::Rods { rods: 2 } }, &at(0)).unwrap();
    app.act(&START, &at(1)).unwrap();
    drop(app);
    on_disk(Some(0), || {
        let mut app = open(dir.path(), 2);
        app.act(&Action::ChooseRod { rod: 2 }, &at(2)).unwrap();
        assert_eq!(app.watch(&at(3)).rod, 2);
        let says = app.look_over().unwrap();
        assert!(says.contains("could not be saved or read"), "{says}");
        drop(app);
        assert_eq!(open(dir.path(), 3).watch(&at(4)).rod, 1);
        set_room(None);
        let mut app = open(dir.path(), 4);
        app.act(&Action::ChooseRod { rod: 2 }, &at(5)).unwrap();
        assert!(!app.look_over().unwrap().contains("could not be saved"));
        drop(app);
        assert_eq!(open(dir.path(), 5).watch(&at(6)).rod, 2);
    });
}

/// START with a planned range, and NEXT CAST HERE into kept-back water, which it releases: two entries each.
pub(super) fn what_goes_with_a_tap_is_stored_with_it_or_not_at_all() {
    let reach = Reach::Metres { cm: 3_000 };
    let planned = vec![Action::Plan { tap: PlanTap::Reach { reach } }];
    let kept = vec![START, Action::KeepBack];
    for (before, action) in [(planned, START), (kept, Action::CastHere)] {
        let (mut stored, mut refused) = (0, 0);
        for room in (0..60_000).step_by(2_000) {
            let dir = tempfile::tempdir().unwrap();
            let mut app = open(dir.path(), 1);
            for (minute, step) in (1..).zip(&before) {
                app.act(step, &at(minute)).unwrap();
            }
            // The water that was kept back is aimed at again.
            let aim = app.session().and_then(|session| session.kept_back.first().map(|kept| kept.id));
            drop(app);
            on_disk(None, || {
                let mut app = open(dir.path(), 2);
                if aim.is_some() {
                    aim_at_kept_water(&mut app);
                }
                set_room(Some(room));
                let told = app.act(&action, &at(20));
                set_room(None);
                drop(app);
                match &told {
                    Ok(_) => stored += 1,
                    Err(error) => {
                        assert_eq!(error.kind(), ErrorKind::NotSaved, "{action:?}, {room} bytes: {error}");
                        refused += 1;
                    }
                }
                let app = open(dir.path(), 3);
                let session = app.session();
                let spot = session.is_some_and(|session| session.rods[0].spot.is_some());
                assert_eq!(spot, told.is_ok(), "{action:?}, {room} bytes: the spot");
                let released = session
                    .is_some_and(|session| session.kept_back.iter().any(|kept| kept.released.is_some()));
                assert_eq!(
                    released,
                    told.is_ok() && aim.is_some(),
                    "{action:?}, {room} bytes: the kept-back water"
                );
            });
        }
        assert!(stored > 5 && refused > 0, "{action:?}: {stored} stored, {refused} refused");
    }
}

/// KEEP was tapped with the aim where a first cast goes, from where the aim has gone on to other water.
fn aim_at_kept_water(app: &mut restwater_app::App) {
    let session = app.session().unwrap();
    let swim = restwater_session::swim_of(session).unwrap();
    let figures = swim.figures(20 * 60_000);
    let cell = figures.cells.iter().find(|cell| cell.kept_back_min.is_some()).unwrap().cell;
    app.act(&Action::Swim { tap: restwater_screen::SwimTap::Cell { cell } }, &at(19)).unwrap();
}
