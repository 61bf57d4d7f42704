//! SQLite: the log, projections, migrations, backup, check.
