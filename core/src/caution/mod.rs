//! Cautions: what can hurt an angler, a fish or a licence, each with the authority it comes from, how
//! and when its text was read, and where it holds. Every card ends by deferring to local rules.

pub mod lead_rule;
pub mod shown;
pub mod table;
