//! Settings of this phone. They are not part of the log and are not shared.

use super::{Store, StoreError};
use rusqlite::{OptionalExtension, TransactionBehavior};

impl Store {
    /// The value of a setting, if it was ever set.
    pub fn setting(&self, key: &str) -> Result<Option<String>, StoreError> {
        let conn = self.conn()?;
        let value = conn
            .prepare_cached(include_str!("sql/setting.sql"))?
            .query_row([key], |row| row.get(0))
            .optional()?;
        Ok(value)
    }

    /// Sets a setting, durable when it returns.
    pub fn set_setting(&self, key: &str, value: &str) -> Result<(), StoreError> {
        self.set_settings(&[(key, value)])
    }

    /// Sets several, all of them or none, durable when it returns.
    pub fn set_settings(&self, settings: &[(&str, &str)]) -> Result<(), StoreError> {
        let mut conn = self.conn()?;
        let tx = conn.transaction_with_behavior(TransactionBehavior::Immediate)?;
        for (key, value) in settings {
            tx.prepare_cached(include_str!("sql/set_setting.sql"))?.execute([key, value])?;
        }
        tx.commit()?;
        Ok(())
    }
}
