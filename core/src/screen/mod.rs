//! What each screen shows, as plain records, with its wording.
