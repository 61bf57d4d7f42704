# Every error says what to do next.

error-no-session = No session is open. Start one first.
error-session-open = A session is open already. End it first.
error-no-such-rod = There is no rod { $rod }. This session has { $rods }.
error-rod-count = A session has 1 to 9 rods, not { $rods }.
error-nothing-out = Nothing is out on rod { $rod }. Tap CAST when the lead hits the water.
error-fish-on = A fish is on rod { $rod }. Tap LANDED, LOST or MISSED first.
error-no-fish-on = No fish is on rod { $rod }. Tap BITE first.
error-rod-out = Rod { $rod } is out. Wind in before you go away.
error-rod-was-out = Rod { $rod } was out in that gap. During a break every rod is in.
error-away-already = You are away already. Tap I'M BACK first.
error-not-away = You are not away. Tap AWAY first.
error-nothing-fed = Nothing was fed yet. Choose what to feed first.
error-no-test = No test is running. Start one from a change under Changes.
error-test-complete = The test is finished. End it, or start another.
error-nothing-to-undo = There is nothing to undo.
error-nothing-to-redo = There is nothing to redo.
error-nothing-to-set-back = No time to set back yet. Log something first.
error-before-earlier = That would put it before the entry at { $time }. Undo that one first, or set back less.
error-before-session = The session before ended at { $time }. This one can be set back to then and no further.
error-unknown-choice = "{ $value }" can't be used here. Pick one of the choices.
error-too-long = That is too long: { $count } characters, at most { $most }.
error-damaged = The log on this phone is damaged. Nothing was changed. Restore a backup, or save what can be saved.
error-newer = This log was written by a newer version ({ $found }; this one reads up to { $known }). Update the app.
error-foreign = This file is not a Restwater log. Nothing was changed. Choose another folder.
error-read-only = Restwater can't write to this folder. Allow writing, or choose another.
error-busy = Another program has the log open. Close it and try again.
error-no-space = There is no space left on the phone. Free some and tap again: the last entry was not saved.
error-io = The phone could not write ({ $detail }). The last entry was not saved: tap again.
error-internal = Something went wrong in Restwater ({ $detail }). Nothing was lost. Tap again.
error-broken = A fault in Restwater. Nothing was lost: close the app and open it again.
error-clock-range = The clock of the phone is out of range. Set it, then tap again.
error-no-cell = No square is chosen for that. Choose one on the map first.
error-earlier-shown = This is the swim at an earlier moment. Tap NOW first.
error-nothing-typed = Type a name first, then choose what it is for.
error-no-such-caution = That caution was already marked as read. Open the list again.
error-another-day = The Book shows another day. Tap SESSIONS in it first.
error-not-of-that-entry = This entry has nothing of that kind to mend. Open it again from the list.
error-empty-text = Nothing is typed. Type a few words first.
error-no-peg-note = "{ $value }" doesn't give a peg and what to do there. Type, for example, 14: bread to the island.
error-no-time = "{ $value }" is not a time. Type it as 12:30, or minutes after all-in as 90.
error-no-plan = There is no plan for today. Write one on the Bench.
error-no-length = "{ $value }" is not a length. Type a figure and its unit, such as 18 in, 45 cm or 2.5 m.
error-no-weight = "{ $value }" is not a weight. Type a figure and its unit, such as 30 g or 1 oz.
error-no-latitude = { $typed ->
    [0] No latitude is typed. Type degrees north, such as 52.1234 or 52 7 24; S for south.
   *[other] "{ $value }" is not a latitude. Type degrees north, such as 52.1234 or 52 7 24; S for south.
}
error-no-longitude = { $typed ->
    [0] No longitude is typed. Type degrees east, such as 1.25 or 1 15 0; W for west.
   *[other] "{ $value }" is not a longitude. Type degrees east, such as 1.25 or 1 15 0; W for west.
}
error-no-bearing = { $typed ->
    [0] No bearing is typed. Type degrees clockwise from north, 0 to 360.
   *[other] "{ $value }" is not a bearing. Type degrees clockwise from north, 0 to 360.
}
error-not-op-file = This is not a file of Restwater entries: { $detail }. Choose one that ends in .restwater.json-seq, or a backup.
error-file-empty = it is empty
error-file-zip = it is a zip archive
error-file-database = it is a database
error-file-json = it is other JSON
error-file-text = it is text
error-file-other = it is something else
error-file-newer = The file was written by a newer version: update the app, then import it.
error-file-header = The file can't be read ({ $detail }): ask for it again. Nothing was changed.
error-file-too-many = The file has more than { $detail } records: ask for a part of it.
error-file-io = The file gave an error ({ $detail }): try another place. Nothing was changed.
error-cancelled = Cancelled. Nothing was changed.
error-no-such-import = That import is no longer there, or this was done already.
error-no-cast-yet = Nothing was cast on rod { $rod } yet, so no hooklength can be lost on it.
error-lost-already = The hooklength of the last cast on rod { $rod } is logged as lost already. Cast first, or undo.
error-no-such-session = That session is no longer in the book. Pick another.
error-no-such-entry = There is no such entry in this session: open it from the list.
