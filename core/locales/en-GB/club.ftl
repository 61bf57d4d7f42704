# A club's start for advice. $own, $percent: the share of the start that is as it would be without a club.

club = Club
club-leave = LEAVE THE CLUB
club-says = Advice starts from { $anglers ->
    [one] 1 angler's
    *[other] { $anglers } anglers'
  } { $days ->
    [one] day
    *[other] { $days } days
  } on { $waters ->
    [one] 1 water
    *[other] { $waters } waters
  }.
club-unused = This club's start is for another version of the app and isn't used.
club-made-of = A club's start for advice, made from its anglers' days. It holds no casts and no anglers' names.
club-waters = Waters with a start of their own: { $waters }.
club-casts = Your own casts count as before, and the more there are, the less the start matters. If your water is unlike the club's, a few casts show it.
club-known = It is in use already.
club-replaces = It replaces the club's start that is in use now.
club-back = UNDO takes it back. To go on without a club, tap LEAVE THE CLUB under Files.
club-figures = Where advice starts
club-here-all = Today's start comes from all of them, since no water, temperature or month among them fits today.
club-here-water = Today's start comes from { $days } of them, those on { $water }.
club-here-month = Today's start comes from { $days } of them, those in { $month }.
club-here-temperature = Today's start comes from { $days } of them, those with the water at { $from } to { $until } °C.
club-own = { $percent } % of the start stays as it is without a club.
entry-club_taken = the club's start
entry-club_left = leaving the club
error-no-club = No club's start is in use: import a club's file first.
error-club-older = This club's file is for an older version of the app. Ask for a new one.
error-club-damaged = This club's file is damaged. Ask for it again. Nothing was changed.
error-club-weights = The weights in this club's file can't be used. Ask for a new one. Nothing was changed.
error-club-few = This club's file has weights from fewer than five anglers ({ $detail }). Ask for one with at least five on every water. Nothing was changed.
error-club-large = This club's file is larger than such a file can be. Ask for a new one. Nothing was changed.
files-form-club = table of days for a club
files-says-club = A table (.csv) with, for each day, how well each pattern of bites fits its casts. A club makes a start for advice from many anglers' tables. It holds the names of waters and no casts.
files-made-club = { $count ->
    [one] 1 day
    *[other] { $count } days
  }
