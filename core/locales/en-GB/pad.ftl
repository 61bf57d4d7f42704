# What stands on the glass beside the keys of the record.

pad-screens = SCREENS
pad-screens-spoken = All screens.
pad-day = DAY
pad-day-spoken = Change to the day scheme, ink on paper.
pad-night = NIGHT
pad-night-spoken = Change to the night scheme, chalk on ink.
pad-left = LEFT
pad-left-spoken = Lay the keys out for the left hand.
pad-right = RIGHT
pad-right-spoken = Lay the keys out for the right hand.
pad-more = MORE
pad-more-spoken = More small keys.
pad-swim = SWIM
pad-swim-spoken = The swim. Where casts went and what came of them.
pad-waits = WAITS
pad-waits-spoken = Waits. How long from splash to bite.
pad-changes = CHANGES
pad-changes-spoken = Did it matter? Each change against what it replaced.
pad-back = BACK
pad-back-spoken = Back to the bank.
pad-files = FILES
pad-files-spoken = Files. Send, take in, back up.
pad-mend = MEND
pad-mend-spoken = Mend. Doubtful entries.
pad-phone = PHONE
pad-phone-spoken = This phone. Alarm, screen, hand and scheme.
