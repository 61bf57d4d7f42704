//! Times that a clock showed after it had been reset, put right by what it showed later.

use super::{FORTNIGHT_MS, Stamp, TimeLine};
use restwater_log::{Hlc, Op};
use std::sync::Arc;

/// A phone that shows an earlier time, in ms since 1970, has lost it: there was no Restwater before 2020.
const NO_APP_BEFORE_MS: i64 = 1_577_836_800_000;

impl TimeLine {
    /// When an entry was tapped, with the time that the screens show.
    pub fn tapped(&self, op: &Op) -> Stamp {
        let mut stamp = self.place(op.device, &op.at);
        self.put_right(op, &mut stamp);
        stamp
    }

    /// Puts right what the clock of an entry showed if it had been reset: a flat battery sets a clock back to 1970, or to when the
    /// phone was made. It is judged by the latest entry of the phone whose distance is known, if the clock was right again by then.
    pub(super) fn put_right(&self, op: &Op, stamp: &mut Stamp) {
        let wall_ms = stamp.shown.wall_ms;
        let last = self.last.iter().find(|anchor| anchor.device == op.device);
        let last = last.filter(|_| may_be_reset(wall_ms, op.hlc));
        let later = last.map_or(wall_ms, |last| {
            let (at_ms, shown_ms) = last.known;
            shown_ms.saturating_sub(at_ms.saturating_sub(stamp.at_ms))
        });
        if later.saturating_sub(wall_ms) > FORTNIGHT_MS {
            Arc::make_mut(&mut stamp.shown).wall_ms = later;
        }
    }
}

/// Whether the wall clock may have been reset when it showed this: before the app existed, or long before the log.
pub fn may_be_reset(wall_ms: i64, hlc: Hlc) -> bool {
    let log_ms = i64::try_from(hlc.ms).unwrap_or(wall_ms);
    wall_ms < NO_APP_BEFORE_MS || log_ms.saturating_sub(wall_ms) > FORTNIGHT_MS
}
