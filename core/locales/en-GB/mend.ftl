# Mending: doubtful entries.

mend-title = To mend
mend-title-of = To mend: { $day }
mend-says = { $count ->
    [0] Nothing doubtful in this session.
    [one] 1 entry to look at.
    *[other] { $count } entries to look at.
  }
mend-settled = Done. UNDO on the Bank brings it back.
mend-of-cast = { $entry }, { $minutes } min after the cast at { $time }
mend-keep = KEEP IT
mend-keep-it = it is right
mend-added = Forgotten
mend-added-it = a cast is missing
mend-away = Away
mend-away-it = I was away
mend-remove = REMOVE
mend-remove-it = it didn't happen
mend-end = What ended it
mend-not-seen = not seen
mend-after = After
mend-after-how = From the splash to the bite, otherwise to winding in.
mend-back = SET BACK BY
mend-back-how = From when it was tapped.
mend-back-last = to { $time }, the last entry
mend-minutes = { $minutes } min
doubt-end-not-seen = Its end was not seen: the next cast closed it.
doubt-outcome-not-seen = What came of the bite was not logged.
doubt-nothing-out = Nothing was out then.
doubt-no-fish-on = There was no bite before it.
doubt-second-bite = A second bite while a fish was on.
doubt-outside-session = Before the session began, or after it ended.
doubt-back-in-time = Its time is before that of the entry logged before it.
doubt-clock-moved = The phone's clock was moved before it.
doubt-approximate = Its time is approximate.
doubt-long-gap = A long gap before it: a cast may be missing.
doubt-still-out = Still out when the session ended, long after its last entry: the bait may have been in before that.
doubt-late-end = Long after the last entry: was END tapped late?
doubt-no-break = I'M BACK was tapped, but no break was logged before it.
doubt-no-landing = A weight or net was entered for a fish that is no longer landed.
doubt-newer = Written by a newer version: update to read it.
