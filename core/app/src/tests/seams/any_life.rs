//! Whatever happens to a phone, no entry is lost, and REDO reverses UNDO.

use super::super::any_tap::any_action;
use super::*;

/// What happens in the two laws below: a phone's clock jumps, it is restarted and rebooted, and a partner's
/// file is imported.
#[derive(Debug, Clone)]
enum Happening {
    Tap(Action),
    /// Removes the nth existing mark.
    Remove(usize),
    /// The wall clock is off by this much from now on.
    Clock(i64),
    Restart,
    Boot,
    TakeIn,
    TakeBack,
    BringBack,
}

fn any_happening() -> impl Strategy<Value = Happening> {
    let clocks = prop::sample::select(vec![0, -at(0).wall_ms, YEAR, -2 * 60 * MIN, 60 * MIN]);
    prop_oneof![
        12 => any_action().prop_map(Happening::Tap),
        2 => (-6_000..6_000_i32).prop_map(|bearing_cdeg| {
            Happening::Tap(Action::SetMark { name: format!("at {bearing_cdeg}"), bearing_cdeg })
        }),
        1 => (0..3_usize).prop_map(Happening::Remove),
        1 => clocks.prop_map(Happening::Clock),
        2 => Just(Happening::Restart),
        1 => Just(Happening::Boot),
        1 => Just(Happening::TakeIn),
        1 => Just(Happening::TakeBack),
        1 => Just(Happening::BringBack),
    ]
}

/// A phone to which things happen.
struct Life {
    phone: Phone,
    now: i64,
    off: i64,
    file: PathBuf,
    import: Option<Uuid>,
}

impl Life {
    fn moment(&self) -> Moment {
        let true_time = at(self.now);
        Moment { wall_ms: true_time.wall_ms + self.off, boot: format!("{}", self.phone.boots), ..true_time }
    }

    /// Does it, and returns whether it was a tap that wrote an entry.
    fn happen(&mut self, happening: &Happening) -> bool {
        let moment = self.moment();
        let action = match happening {
            Happening::Clock(off) => {
                self.off = *off;
                return false;
            }
            Happening::Boot => {
                self.phone.boots += 1;
                self.phone.open();
                return false;
            }
            Happening::Restart => {
                self.phone.open();
                return false;
            }
            Happening::TakeIn => {
                self.phone.app().take_in(&self.file, "a friend", &moment, &mut go).unwrap();
                let Screen::Files(files) = self.phone.app().screen(Which::Files, &moment).unwrap() else {
                    panic!()
                };
                self.import = files.imports.first().map(|import| import.id);
                return false;
            }
            Happening::Tap(action) => Some(action.clone()),
            Happening::Remove(n) => {
                let marks =
                    self.phone.app().session().map(|session| session.marks.clone()).unwrap_or_default();
                marks.get(*n).map(|mark| remove(mark.id))
            }
            Happening::TakeBack => self.import.map(|id| Action::UndoImport { id }),
            Happening::BringBack => self.import.map(|id| Action::RedoImport { id }),
        };
        let told = action.and_then(|action| self.phone.app().act(&action, &moment).ok());
        told.is_some_and(|update| update.changed)
    }

    /// Every entry in the log, with how often it occurs.
    fn entries(&mut self) -> std::collections::BTreeMap<Uuid, usize> {
        let store = self.phone.app().journal.store();
        let mut entries = std::collections::BTreeMap::new();
        for row in store.sessions().unwrap() {
            for op in store.ops_of(row.id).unwrap() {
                *entries.entry(op.id).or_insert(0) += 1;
            }
        }
        entries
    }
}

fn any_life() -> impl Strategy<Value = Vec<(Happening, i64)>> {
    proptest::collection::vec((any_happening(), 701..600_000_i64), 1..40)
}

fn life(file: &Path) -> Life {
    Life { phone: started(), now: 1_000, off: 0, file: file.to_owned(), import: None }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// Whatever happens, a confirmed entry stays in the log exactly once, a tap that wrote nothing reported
    /// that, and a restart shows the same as before, which is this phone's own session.
    #[test]
    fn no_confirmed_entry_is_lost_or_doubled_whatever_the_clock_says(happenings in any_life()) {
        let mut theirs = phone(500);
        theirs.tap(30 * MIN, &START).unwrap();
        theirs.tap(31 * MIN, &CAST).unwrap();
        let file = theirs.sent(40 * MIN);
        let mut life = life(&file);
        let mut known = life.entries();
        for (happening, gap) in &happenings {
            life.now += gap;
            let wrote = life.happen(happening);
            let now = life.entries();
            prop_assert!(now.values().all(|count| *count == 1), "an entry is there twice");
            prop_assert!(known.keys().all(|id| now.contains_key(id)), "an entry is gone after {:?}", happening);
            if matches!(happening, Happening::Tap(_)) {
                prop_assert_eq!(wrote, now.len() > known.len(), "{:?} was told otherwise", happening);
            }
            let device = life.phone.app().journal.store().device();
            let began = life.phone.app().ops().iter().find(|op| matches!(op.payload, Payload::SessionStarted(_)));
            prop_assert!(began.is_none_or(|op| op.device == device), "a partner's session is shown");
            known = now;
        }
        life.now += MIN;
        let (moment, before) = (life.moment(), life.phone.app().ops().to_vec());
        let shown = life.phone.app().screen(Which::Bank, &moment).unwrap();
        life.phone.open();
        prop_assert_eq!(life.phone.app().ops(), before.as_slice());
        // The choice of the rod is lost when the app closes, and with it what is shown for that rod.
        let Screen::Bank(shown) = shown else { panic!() };
        let Screen::Bank(after) = life.phone.app().screen(Which::Bank, &moment).unwrap() else { panic!() };
        prop_assert_eq!((shown.header, shown.latest), (after.header, after.latest));
        let undo = |keys: &[restwater_screen::KeyView]| {
            let keys = keys.iter().filter(|key| matches!(key.key, Key::Undo | Key::Redo));
            keys.map(|key| key.sub.clone()).collect::<Vec<_>>()
        };
        prop_assert_eq!(undo(&shown.keys), undo(&after.keys));
        let checked = life.phone.app().look_over().unwrap();
        prop_assert!(checked.starts_with("All well"), "{}", checked);
    }

    /// UNDO followed by REDO shows the same as before, whatever is in the log, even with a restart in
    /// between.
    #[test]
    fn undo_and_then_redo_shows_the_same(happenings in any_life(), restart in any::<bool>()) {
        let mut theirs = phone(500);
        theirs.tap(30 * MIN, &START).unwrap();
        theirs.tap(31 * MIN, &CAST).unwrap();
        let file = theirs.sent(40 * MIN);
        let mut life = life(&file);
        for (happening, gap) in &happenings {
            life.now += gap;
            life.happen(happening);
        }
        life.phone.open();
        life.now += 2 * MIN;
        let moment = life.moment();
        let seen = |life: &mut Life| {
            let screens = [Which::Bank, Which::Waits, Which::Changes, Which::Match, Which::Bench, Which::Book];
            screens.map(|which| life.phone.app().screen(which, &moment).unwrap())
        };
        let before = seen(&mut life);
        life.now -= MIN;
        let at = life.moment();
        if life.phone.app().act(&Action::Undo, &at).is_ok() {
            if restart {
                life.phone.open();
            }
            let later = Moment { wall_ms: at.wall_ms + 1_000, mono_ms: at.mono_ms + 1_000, ..at };
            life.phone.app().act(&Action::Redo, &later).unwrap();
            let after = seen(&mut life);
            for (before, after) in before.iter().zip(&after) {
                prop_assert_eq!(before, after);
            }
        }
    }
}
