# The Bank screen. Words of the trade, sentences a cold reader takes in at a glance.

peg = Peg { $peg }
peg-none = No peg
length-session = { $time } since the start
length-none = Nothing open
rod = Rod { $rod }
rod-number = { $rod }
# With several rods: what is to be seen from standing.
rod-fish-on = { $rod }: FISH ON
rod-alert = FISH ON
rod-due-first = { $rod }: due first
rod-in = { $rod }: in
rod-in-alone = in

since-out = out since { $time }
since-ready = in since { $time }
since-away = away since { $time }
since-fish = fish on since { $time }
since-never = nothing cast yet
since-none = no session open
# The start was set back by hand, or the clock was moved since.
since-out-about = out since about { $time }
since-ready-about = in since about { $time }
since-away-about = away since about { $time }
since-fish-about = fish on since about { $time }

spoken-out = { $rod }, out { $minutes ->
    [one] one minute
   *[other] { $minutes } minutes
}
spoken-due-first = { $rod }, due first
spoken-ready = { $rod }, nothing out
spoken-fish = { $rod }, fish on

# Keys. The word is what the angler does; the smaller line below it stays at every size of text.
key-cast = CAST
key-cast-first = lead in the water
key-cast-closes = ends this cast, starts the next
key-cast-spoken = Cast. The lead is in the water.
key-bite = BITE
key-bite-sub = tip pulled round
key-bite-spoken = Bite. The tip was pulled round.
key-wound-in = WOUND IN
key-wound-in-sub = no bite
key-wound-in-spoken = Wound in without a bite.
key-liner = LINER
key-liner-sub = fish touched the line
key-liner-spoken = Liner. A fish swam into the line.
key-landed = LANDED
key-landed-sub = in the net
key-landed-spoken = Landed. The fish is in the net.
key-lost = LOST
key-lost-sub = came off
key-lost-spoken = Lost. The fish came off.
key-landed-late = LANDED
key-landed-late-sub = adds a bite { $back }
key-landed-late-spoken = Landed, and the bite was not logged. Adds a bite { $back }, approximate.
key-lost-late = LOST
key-lost-late-sub = adds a bite { $back }
key-lost-late-spoken = Lost, and the bite was not logged. Adds a bite { $back }, approximate.
# With several rods.
key-late-rod-sub = { $rod }: bite { $back }
key-back-min = { $minutes } min ago
key-back-s = { $seconds } s ago
key-back-now = just now
key-missed = MISSED
key-missed-sub = struck at nothing
key-missed-spoken = Missed the bite.
# The landed fish, until the next cast. Nothing has to be entered.
key-fish-class = { $label }
key-fish-class-sub = as the last one
key-fish-class-spoken = A { $what }, as the last one.
key-fish-which = WHICH?
key-fish-which-sub = roach, carp ...
key-fish-which-spoken = Say what fish it is.
key-fish-is = { $label }
key-fish-is-sub = tap to change
key-fish-is-spoken = Logged as a { $what }. Change it.
key-fish-back = PUT BACK
key-fish-back-sub = not kept
key-fish-back-spoken = The fish went back into the water.
key-fish-keep = PUT BACK
key-fish-keep-sub = tap if kept
key-fish-keep-spoken = Logged as put back. Tap if it was kept after all.
key-fish-weigh = WEIGH
key-fish-weigh-sub = or guess it
key-fish-weigh-spoken = Enter the weight of this fish.
key-fish-weight = { $what }
key-fish-weight-sub = tap to change
key-fish-weight-spoken = It weighs { $what }. Change it.
key-fish = Fish
key-fish-sub = class, net
key-fish-spoken = Details of this fish: its class, its net, its weight.
key-time-back = 1 MIN AGO
key-time-back-sub = last entry
key-time-back-spoken = Set the last time back by one minute.
key-time-back-five = 5 MIN AGO
key-time-back-five-sub = last entry
key-time-back-five-spoken = Set the last time back by five minutes.
key-undo = UNDO
key-undo-sub = { $what }
key-undo-spoken = Undo { $what }.
key-undo-nothing = nothing yet
key-redo = REDO
key-redo-sub = { $what }
key-redo-spoken = Bring back { $what }.
key-twitch = TWITCH
key-twitch-sub = moved the bait
key-twitch-spoken = Twitched. The bait was moved.
key-indication = KNOCK
key-indication-sub = tip moved
key-indication-spoken = An indication. The tip moved without a pull.
key-away = AWAY
key-away-sub = stops the clocks
key-away-spoken = Away from the rods. The clocks that count fishing stop.
key-returned = I'M BACK
key-returned-sub = fishing again
key-returned-spoken = Back at the rods. The clocks go on.
key-feed = FEED
key-feed-sub = { $what }
key-feed-first = what and how much
key-feed-spoken = Feed { $what }.
key-feed-other = Feed with
key-feed-other-sub = another amount
key-feed-other-spoken = Choose what to feed, how much and where.
key-seen = Showing
key-seen-sub = roll, bubbles
key-seen-spoken = Fish are showing. Say how and where.
key-tackle = Tackle
key-tackle-sub = spot and rig
key-tackle-spoken = Tackle. Change spot or rig of the next cast.
key-swim = Swim
key-swim-sub = where next
key-swim-spoken = Swim. Where to cast next, and where the casts went.
key-start = START
key-start-sub = a session here
key-start-spoken = Start a session.
key-end = END
key-end-sub = the session
key-end-spoken = End the session. What is out is wound in.

# What undo names: an entry and the time it was made.
entry = { $what } { $time }
bank-logged = Logged: { $what }.
entry-session_started = start
entry-session_ended = end
entry-cast = cast
entry-bite = bite
entry-landed = landed
entry-lost = lost
entry-missed = missed
entry-liner = liner
entry-indication = knock
entry-wound_in = wound in
entry-twitch = twitch
entry-away = away
entry-returned = back
entry-rig_set = rig
entry-spot_set = spot
entry-noted = note
entry-time_set = time back
entry-cast_end_set = end of a cast
entry-cast_added = cast added
entry-confirmed = as it is
entry-mark_set = mark
entry-removed = removal
entry-kept_back = kept back
entry-released = released
entry-swim_set = swim
entry-alternation_started = test
entry-alternation_ended = end of test
entry-other = entry

# The advice.
# Every headline of a cast ends with the one figure of the advice: the minute to recast by.
advice-cant-tell = Can't tell yet.
advice-try = Can't tell yet. Try { $leave } min.
advice-try-past = Can't tell yet. Past { $leave } min.
advice-try-about = Try about { $leave } min.
advice-plan = Your plan: { $leave } min. Can't tell yet.
advice-plan-past = Past the { $leave } min of your plan. Can't tell yet.
advice-cant-tell-prior = Until three bites have come, the minutes rest mostly on waters in general.
advice-cant-tell-club = Until three bites have come, the minutes rest mostly on the club's days.
advice-cant-tell-club-elsewhere = Until three bites have come, the minutes rest mostly on waters in general, and partly on the club's days.
advice-elsewhere = Not here again. Cast to { $where }.
advice-recast-by = Recast by { $leave } min.
advice-hold-recast = Hold until { $hold } min. Recast by { $recast } min.
advice-length-hardly = Longer makes little difference. Recast by { $leave } min.
advice-no-reason-to-wind-in = No reason to wind in before { $leave } min.
advice-past = Past { $leave } min: recast.
advice-away = Away from the rods.
advice-away-detail = Nothing counts until you cast or tap I'M BACK.
advice-all-out = All out.
advice-all-out-wind-in = All out: wind in.
advice-all-out-wind-in-rod = All out: wind in rod { $rod }.
advice-all-out-fish-on = All out: a fish is on rod { $rod }.
advice-land-first = Land it first.
advice-before-wind-in = Before all-in: wind in.
advice-before-wind-in-rod = Before all-in: wind in rod { $rod }.
advice-before-detail = No bait may be in the water before all-in.
advice-all-out-detail = Weigh in under Match. END closes the session.
advice-weighed-in-detail = Weighed in. END closes the session.
advice-not-weighed-detail = Not weighed yet: { $nets }. END closes the session.
advice-left-open = Still open since { $date }.
advice-left-open-detail = END closes it, then START begins a new one.
advice-fish-on = Fish on.
advice-fish-on-detail = No need to tap anything now.
advice-look = { $leave } min is longer than the bites suggest: to find out what comes later.
advice-as-good-from = After { $hold } min, one time is about as good as another.
advice-none = Start a session to log casts.
advice-counts = { $casts ->
    [0] No cast has ended yet
   *[other] { $bites ->
        [0] No bites
        [one] 1 bite
       *[other] { $bites } bites
    } in { $casts ->
        [one] 1 cast
       *[other] { $casts } casts
    }
}
advice-early = { advice-counts } so far.
advice-so-far = { advice-counts }.
advice-not-tried = Past { $minutes } min: not tried.
advice-earlier = { $count ->
    [one] 1 earlier session of yours counts too.
   *[other] { $count } earlier sessions of yours count too.
}
casts-not-seen = { $count ->
    [one] The end of 1 cast was not seen: its wait doesn't count.
   *[other] The ends of { $count } casts were not seen: their waits don't count.
}
advice-window = Half of the bites are expected between { $from } and { $to } min.
advice-next-five = Chance of a bite in the next five minutes: { $percent ->
    [0] below 1
    [100] above 99
   *[other] { $percent }
} %.
advice-longer = No cast was left that long yet: this one is to find out.
advice-lost = Your usual leave times cost about { $percent } % of the bites.
advice-guess = Assumes { $minutes } min between casts until three are timed.

strip-spoken = { $elapsed ->
    [none] Nothing out.
    [one] 1 minute out.
   *[other] { $elapsed } minutes out.
} { $headline } { $bites ->
    [0] No bites yet.
    [one] One bite so far.
   *[other] { $bites } bites so far.
}

spot-none = Spot not set
spot-wraps = { $wraps } wraps of { $span } ({ $metres } m)
spot-metres = { $metres } m
spot-yards = { $yards } yd ({ $metres } m)
spot-at = { $where }, { $reach }
spot-straight = Straight out
spot-left = { $degrees }° left
spot-right = { $degrees }° right
span-ft = { $feet } ft
span-m = { $metres } m
clipped = clipped up
rig-none = Rig not set
rig-hooklength = { $length } hooklength
rig-hook = size { $size }
rig-popup = { $length } pop-up
rig-lead-oz = { $ounces } oz
rig-lead-g = { $grams } g

notice-late = { $what } logged, and the bite { $seconds ->
    [one] 1 s
   *[other] { $seconds } s
} before: approximate.
notice-repeat = Second tap ignored.
notice-logged = { $what } logged.
notice-logged-alone = Logged, but a summary or backup after it failed: tap CHECK THE LOG on Files.
notice-undone = { $what } undone.
notice-redone = { $what } is back.
notice-time = Time of { $what } set back.

# What to do when the minute of the headline has come, where the spots tell.
spots-here = { $casts ->
    [0] If nothing bites by then, about { $here } of 100 such spots hold fish
    [one] Nothing here in { $minutes } min before this cast. If nothing bites by then, about { $here } of 100 such spots hold fish
   *[other] Nothing here in { $minutes } min over { $casts } casts before this one. If nothing bites by then, about { $here } of 100 such spots hold fish
}
spots-elsewhere = { $casts ->
    [0] About { $here } of 100 such spots hold fish. At the other spot it is about { $there } of 100.
    [one] Nothing here in { $minutes } min. About { $here } of 100 such spots hold fish. At the other spot it is about { $there } of 100.
   *[other] Nothing here in { $minutes } min over { $casts } casts. About { $here } of 100 such spots hold fish. At the other spot it is about { $there } of 100.
}
spots-recast = Then recast here. { spots-here }.
spots-move = Then move to { $where }. { spots-here }. At the other spot it is about { $there } of 100.
