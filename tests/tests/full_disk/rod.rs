//! The chosen rod on a full disk.

use super::{START, at, on_disk, open, set_room};
use restwater_app::Action;
use restwater_screen::SetupTap;

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
