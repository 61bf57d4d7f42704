# The Book.

book-sessions-title = Book
book-none = No session yet. Tap START: each session is listed here from then on.
book-says = { $shown ->
    [one] 1 session
   *[other] { $shown } sessions
} of { $all }.
book-theirs = { $count ->
    [one] 1 session of another angler isn't counted
   *[other] { $count } sessions of other anglers aren't counted
}: see Which.
book-of-another = { $day }, another angler
book-row-whose = Whose
book-row-a_whose = A: whose
book-row-b_whose = B: whose
whose-me = my sessions
whose-them = another angler's
whose-both = mine and theirs
# After the counts of an answer.
whose-counted = { $count ->
    [one] 1 earlier session of another angler counts.
   *[other] { $count } earlier sessions of other anglers count.
}
book-doubts = To mend: { $count ->
    [one] 1 entry
   *[other] { $count } entries
}.
hours-minutes = { $hours } h { $minutes }
minutes-short = { $minutes } min
book-date = { $day } { $month } { $year }
month-1 = Jan
month-2 = Feb
month-3 = Mar
month-4 = Apr
month-5 = May
month-6 = Jun
month-7 = Jul
month-8 = Aug
month-9 = Sep
month-10 = Oct
month-11 = Nov
month-12 = Dec
book-gist = { $casts ->
    [0] no cast ended
   *[other] { $bites ->
        [0] no bites
        [one] 1 bite
       *[other] { $bites } bites
    } in { $casts ->
        [one] 1 cast
       *[other] { $casts } casts
    }
}, { $length }
book-fished = { $length } fished
book-open = still open
book-opened = open to read
book-all = all sessions
book-no-water = no name
book-row-water = Water
book-row-season = Season
book-row-temperature = Water temp.
book-all-water = all waters
book-all-season = all year
book-all-temperature = any
season-dec-feb = Dec to Feb
season-mar-may = Mar to May
season-jun-aug = Jun to Aug
season-sep-nov = Sep to Nov
temperature-below-4 = below 4 °C
temperature-from-4 = 4 to 7 °C
temperature-from-7 = 7 to 10 °C
temperature-from-10 = 10 to 15 °C
temperature-from-15 = 15 °C and over
temperature-not-logged = not logged
book-water-at = water { $temperature }
book-filter-title = Which sessions
book-key-filter = Which
book-key-rates = Catch per hour
book-key-rates-sub = bites, landed fish
book-key-sets = Two sets
book-key-sets-sub = one against another
book-key-next = Next time
book-key-next-sub = what to try
book-key-peg = This peg
book-key-peg-sub = its last days
book-key-light = Light
book-key-light-sub = at the peg
book-key-questions = Questions
book-key-questions-sub = over several sessions
book-open-files = Files
book-open-files-sub = send, back up
book-open-mend = Mend
book-open-mend-sub = doubtful entries
book-open-mend-count = { $count ->
    [one] 1 entry
   *[other] { $count } entries
}

book-rates-title = Catch per hour
book-rates-figures-title = Figures
book-figures-sub = ranges, method
book-rates-none = Nothing was out yet in these sessions.
book-rates-cant-tell = Can't tell yet for { $which }: { $bites ->
    [0] no bites
    [one] 1 bite
   *[other] { $bites } bites
}.
book-rates-says = { $which }: about a bite every { $minutes } min for each rod that is out. That is { $bites ->
    [one] 1 bite
   *[other] { $bites } bites
} in { $hours ->
    [one] 1 rod hour
   *[other] { $hours } rod hours
}.
book-together = { $count ->
    [one] 1 session
   *[other] { $count } sessions
}
book-bites-rate = Bites for each rod hour
book-landed-rate = Fish landed an hour
book-nothing-out = nothing out
book-per-hour = { $rate } an hour
book-counts = { $count } in { $hours } h
rod-hours-limits = { $count } in { $hours ->
    [one] 1 rod hour
   *[other] { $hours } rod hours
}: { $low } to { $high }
book-limits = { $count } in { $hours } h: { $low } to { $high }
book-listed = The latest { $count } are listed; the rates above count all.
book-rates-how = Ranges are exact { $level } % limits (Garwood). Days differ; the range may be too narrow. A rod hour counts from splash to bite, or to the end of the cast; two rods out for an hour make two.

book-sets-title = Two sets
book-row-a_water = A: water
book-row-a_season = A: season
book-row-a_temperature = A: temp.
book-row-b_water = B: water
book-row-b_season = B: season
book-row-b_temperature = B: temp.
sets-shared = { $count ->
    [one] 1 session is in both sets.
   *[other] { $count } sessions are in both sets.
} They can't be compared.
sets-choose = Choose waters, seasons or temperatures so that no session is in both.
sets-set = { $set }: { $which }, { $count ->
    [one] 1 session
   *[other] { $count } sessions
}
sets-nothing = Can't tell: in one of the sets no bait was out.
sets-leans = Leans to { $set }.
sets-clear = { $set } clearly better over these sessions.
sets-cant-tell = Can't tell: single sessions differ too much to say which set is better.
sets-few-bites = Can't tell yet: { $count ->
    [0] no bites
    [one] 1 bite
   *[other] { $count } bites
} in both sets together.
sets-few-days = Can't tell yet: { $count ->
    [one] 1 session
   *[other] { $count } sessions
} in the smaller set; { $least } are needed.
sets-ratio = A against B
sets-times = { $ratio } times
sets-no-ratio = no bites in B: no ratio
sets-no-end = no end
sets-limits = exact 95 % limits { $low } to { $high }
sets-better = Of 100 such pairs
sets-of-100 = A better in { $a }, B in { $b }, neither in { $same }
sets-of-100-how = half of all pairs are taken to be alike beforehand, and days to differ
sets-exact-p = Bites as one even flow
sets-exact-p-how = exact conditional test: too sure of itself where days differ
sets-days-p = Whole days reshuffled
sets-days-p-all = all { $count } ways
sets-days-p-drawn = { $count } draws
sets-how = Ranges are exact { $level } % limits. The verdict rests on reshuffling whole days, since one good day is one day's luck. Sets may differ in more than what they were chosen by: bait, company, time of day.

book-questions-title = Asked over several sessions
book-questions-figures-title = Figures
questions-says = { $count ->
    [one] 1 question was asked in two sessions or more
   *[other] { $count } questions were asked in two sessions or more
}. { $clear ->
    [0] None is clear yet.
    [one] 1 is clear.
   *[other] { $clear } are clear.
}
questions-how = The same two, compared in two sessions or more on one water, are a question; nothing has to be set up. A session counts if the two were changed back and forth four times or more, and nothing else with them each time. It says what was in these sessions, not what will be.
questions-own-rate = A session may be good or bad, even two on one day: only how the two compare within each session is added up. Waters are kept apart, since the fish of one may like what those of another don't. Sessions without the name of a water can't be put together.
questions-left-out = { $count ->
    [one] 1 more question, asked longer ago, is not listed.
   *[other] { $count } more questions, asked longer ago, are not listed.
}
questions-figures-how = If the two were alike, a stake would grow to 20 in one season of 20 at most, however often it is read (Ville). The error is spent over the questions as they come, 1 / (k (k + 1)) on the k-th, so the first needs 40. Half of the stake is on bites in minutes, half on comparisons at equal waits. The stake by casts is only shown. Each session, rod and spot has its own rate.

book-next-title = Next time
next-none = No session yet, so there is no record to plan from.
next-says = After { $day }.
next-own = Own plan
next-supports = The record supports
next-cannot = Still unknown
next-nothing = Nothing yet.
next-leave-why = { $bites ->
    [one] 1 bite
   *[other] { $bites } bites
} in { $casts ->
    [one] 1 cast
   *[other] { $casts } casts
} of that day{ $earlier ->
    [0] .
    [one] , and the session before it
   *[other] , and the { $earlier } sessions before it
}
next-cant-leave = how long to leave a cast
next-near-best = { $hold } to { $recast } min is near-best so far
next-about-best = about { $hold } min is best so far
next-hardly = up to { $longest } min, longer makes little difference
next-try-leave = whether longer is better: { $leave }
next-longer = what comes after { $minutes } min
next-longer-why = No cast was left longer: leave one or two.
next-supported = { $change }. { $verdict }.
next-one-day = { $why } Only one day: alternate the two again.
next-heights = heights { $open }
next-heights-why = not tried on this water
next-few-days = whether that day was usual: { $count ->
    [one] 1 session here
   *[other] { $count } sessions here
}
next-few-days-why = It takes three or more to tell.
next-cold-none = what cold does: no water temperature was logged
next-cold = what cold does: no water temperature on { $count } of { $all ->
    [one] 1 day
   *[other] { $all } days
}
next-cold-why = Log it in one tap under Weather.
next-how = This says what happened, not what will happen.
book-type-plan = Own plan for next time
book-type-note = A note on this session
type-send = KEEP

book-peg-title = This peg
peg-history-which = Name the water and the peg when you set up: its last sessions are then listed here.
peg-history-none = { $place }: no session here yet.
peg-history-none-other = { $place }: no other session here yet.
peg-history-to-come = Each day you fish this peg is listed here, and so is a partner's once you import it.
peg-history-says = { $place }: { $bites ->
    [0] no bites
    [one] 1 bite
   *[other] { $bites } bites
} in { $casts ->
    [one] 1 cast
   *[other] { $casts } casts
} over { $count ->
    [one] 1 session
   *[other] the last { $count } sessions
}.
peg-history-says-other = { $place }: { $bites ->
    [0] no bites
    [one] 1 bite
   *[other] { $bites } bites
} in { $casts ->
    [one] 1 cast
   *[other] { $casts } casts
} over { $count ->
    [one] 1 other session
   *[other] the last { $count } other sessions
}.
peg-history-besides = Not counted: { $day }, the session you look back from.
peg-history-how = Yours and those that came in by files. Bites in a rod hour, with exact { $level } % limits. Days differ, and so do anglers: a few sessions can't tell a good peg from a good day.
book-light-title = Light
light-left = Sunset in { $left }.
light-day = The sun is up.
light-twilight = Civil twilight: light enough to see by.
light-dark = Dark.
light-up-all-day = The sun stays up all day.
light-down-all-day = The sun stays down all day.
light-dawn = First light (civil dawn)
light-sunrise = Sunrise
light-noon = Sun highest
light-sunset = Sunset
light-dusk = Last light (civil dusk)
light-row-lat = Latitude
light-row-lon = Longitude
light-north = { $degrees }° N
light-south = { $degrees }° S
light-east = { $degrees }° E
light-west = { $degrees }° W
light-how = For a flat horizon, to the minute; trees and hills are left out.
light-guess = The peg has no place yet: these times are for the latitude and longitude shown. Tap to change them; a degree is about 110 km.
light-private = The place stays on this phone and in any backup it makes, unless you send it.
light-keep = KEEP
light-keep-sub = the peg is here

book-session-title = Session
session-says = { $from } to { $to }: { $bites ->
    [0] no bites
    [one] 1 bite
   *[other] { $bites } bites
} in { $casts ->
    [one] 1 cast
   *[other] { $casts } casts
}, { $landed } landed.
session-conditions = Weather
session-side-by-side = Side by side on this water
session-my-peg = { $peg }, mine
session-their-peg = { $peg }, another angler
session-landed = { $count } landed
session-mine = IT'S MINE
session-mine-sub = my other phone
session-not-mine = NOT MINE
session-not-mine-sub = another angler's
# A peg or a water put right, as UNDO names it.
entry-session_corrected = peg or water
session-place-how = Put right what was wrong at START
session-close = SESSIONS
session-close-sub = back to the list
cast-after = { $minutes } min, { $end }
cast-on-rod = { $time }, rod { $rod }
cast-out = still out
cast-landed = landed
cast-lost = lost
cast-missed = missed
cast-outcome-not-seen = bite, outcome not seen
cast-wound-in = wound in
cast-end-not-seen = end not seen
cast-session-ended = in at the end
cast-hooklength-lost = Hooklength lost

# The card of the day, after END. It is shared as it is.
day-card-title = The day
day-none = No session yet. Tap START: each day has its card.
day-says = { $bites ->
    [0] No bites
    [one] 1 bite
   *[other] { $bites } bites
} in { $casts ->
    [one] 1 cast
   *[other] { $casts } casts
}{ $out ->
    [0] {""}
   *[other] , { $out } still out
}, { $landed ->
    [0] no fish landed
    [one] 1 fish landed
   *[other] { $landed } fish landed
}.
day-fish = Fish
day-class = { $name }: { $count }
day-class-none = class not entered: { $count }
day-best = best { $weight }
day-weight = Weight
day-weight-own = { $weight } by own count
day-weight-both = { $weight }, not every net weighed in
day-weight-scales = { $weight } weighed in
day-wait = Waits
day-place = Where
day-place-most = { $spot }: { $bites } of { $all ->
    [one] 1 bite
   *[other] { $all } bites
}, in { $casts } of { $made ->
    [one] 1 cast
   *[other] { $made } casts
}.
day-beside = Neighbours
day-next = Try next
day-next-cast = A cast: nothing was out long enough to tell.
day-next-none = Another spot, or a cast past { $minutes } min: nothing came up to then this session.
day-next-elsewhere = Another spot: nothing came up to { $minutes } min this session.
day-next-past = A cast or two past { $minutes } min, the longest so far.
day-share = SHARE
day-share-sub = as a text

# The three cards of the first opening.
welcome-log-title = 1 of 3: log
welcome-log-says = Tap CAST when the lead hits the water. Then tap what ended it: BITE, or WOUND IN.
welcome-log-more = After BITE: LANDED, LOST or MISSED, and nothing has to be tapped while a fish is on. UNDO takes the last entry back, however long ago it was. A second tap of a cold thumb is ignored.
welcome-wait-title = 2 of 3: wait
welcome-wait-says = The clock counts each wait. From three bites on, the Bank says how long to leave a cast.
welcome-wait-more = Every bite is a mark on the strip, at the minute it came. Until there are enough, the Bank says so: can't tell yet.
welcome-where-title = 3 of 3: where
welcome-where-says = Say where a cast goes under Tackle, and the Swim shows where to cast next.
welcome-where-more = It shows which water was just fished and which has rested, and keeps back what you want to leave. Everything stays on this phone and in any backup it makes: no account, no network.
welcome-next = NEXT
welcome-start-sub = a session, at once
welcome-skip = SKIP
welcome-skip-sub = to the Bank
