//! Files in and out: op file, CSV, report.
