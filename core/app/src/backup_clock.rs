//! The offset from UTC at which each backup was made. Its name has the moment alone, and the phone's offset may have changed
//! since, by summer time or by a journey.

use super::journal::Beside;
use super::{App, AppError, settings};
use restwater_log::Moment;
use restwater_store::BackupFile;
use std::collections::BTreeMap;

/// Minutes east of UTC, by the name of the backup.
const OFFSETS: &str = "backup-offsets";

type Offsets = BTreeMap<String, i16>;

fn name_of(backup: &BackupFile) -> String {
    backup.path.file_name().unwrap_or_default().to_string_lossy().into_owned()
}

impl App {
    /// Notes the offset of a backup that was just made, and forgets those of backups that are gone.
    pub(super) fn note_backup(&self, made: &BackupFile, now: &Moment) {
        let noted = self.with_it(made, now.offset_min);
        self.journal.beside(Beside::Backup, noted);
    }

    fn with_it(&self, made: &BackupFile, offset_min: i16) -> Result<(), AppError> {
        let store = self.journal.store();
        let mut offsets: Offsets = settings::read(store, OFFSETS)?;
        let there: Vec<String> = self.backups()?.iter().map(name_of).collect();
        offsets.retain(|name, _| there.contains(name));
        offsets.insert(name_of(made), offset_min);
        settings::write(store, OFFSETS, &offsets)
    }

    /// The backups, each with its offset. Backups of earlier versions have none and are shown by the present one.
    pub(super) fn dated_backups(&self, now: &Moment) -> Result<Vec<(BackupFile, i16)>, AppError> {
        let offsets: Offsets = settings::read(self.journal.store(), OFFSETS)?;
        let dated = |backup: BackupFile| {
            let offset = offsets.get(&name_of(&backup)).copied();
            (backup, offset.unwrap_or(now.offset_min))
        };
        Ok(self.backups()?.into_iter().map(dated).collect())
    }
}
