//! Safety texts, each with authority, date and whom to defer to.
