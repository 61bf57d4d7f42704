# Keys that screens share, beside the keys of their records.
pad-keys = MORE
pad-keys-spoken = More keys

pad-screens = Screens
pad-screens-spoken = All screens.
# The pager, the same on every screen of several pages.
pad-more = MORE
pad-page = { $page } of { $pages }
pad-more-spoken = Page { $page } of { $pages }. Turns to the next one.
pad-swim = Swim
pad-swim-spoken = The swim. Where casts went and what came of them.
pad-further = Marks
pad-further-spoken = The swim's marks, bands, features, hazards, the list, the peg on the map.
pad-back = BACK
pad-back-spoken = Back to the bank.
pad-mend = MEND
pad-mend-spoken = Mend. Doubtful entries.
