# The Waits screen. Each picture says its message; "can't tell yet" where that is the truth.

waits-title = Waits
waits-none = Start a session and make a cast. Waits appear when it ends.
waits-none-yet = Make a cast: tap BACK, then CAST. Waits appear when it ends.
waits-by-spot = The answers are over all spots. At the spot of rod { $rod }, leave a cast { $minutes } min.
# Said only from three bites and three casts wound in by choice.
habit-before-bites = Every bite this session came after { $after } min.
habit-of-the-day = Every bite came after { $after } min.
habit-all = Your { $all } wind-ins all came by { $by } min.
habit-some = { $early } of your { $all } wind-ins came by { $by } min.
waits-counts = { $bites ->
    [0] No bites
    [one] 1 bite
   *[other] { $bites } bites
} in { $casts ->
    [one] 1 cast
   *[other] { $casts } casts
}{ $sessions ->
    [0] {" "}this session
    [one] {" "}over 1 session
   *[other] {" "}over { $sessions } sessions
}, { $time } in the water.
waits-row-rod = Rod
waits-row-spot = Spot
waits-row-bait = Bait
waits-row-sessions = Sessions
waits-row-whose = Earlier days of
waits-all-rods = all rods
waits-all-spots = all spots
waits-all-baits = all baits
waits-today-only = this session only
waits-with-earlier = { $count ->
    [one] with the one before
   *[other] with the { $count } before
}

axis-wait = minutes from the splash
axis-wait-up = wait, min
axis-without = casts without a bite, %
axis-hazard = of 100 casts, bites in the next minute
axis-rate = bites in a rod hour
axis-clock = time of the cast
legend-band = 95 % band
legend-expected = expected
legend-seen = seen
legend-limits = 95 % limits of it
legend-today = this session
legend-earlier = earlier sessions
legend-not-tried = not tried
span-window = bite window
span-near-best = near-best
span-leave = to leave it
range = { $low } to { $high }
range-open = { $low } or more
p-tiny = p below 0.001
p-is = p { $p }

waits-cant-tell = Can't tell yet: { $bites ->
    [0] no bites
    [one] 1 bite
   *[other] { $bites } bites
} so far.
waits-survival = Still without a bite
waits-half = Leave casts { $median } min, and about half get a bite by then (estimated).
waits-half-limits = The time by which half get a bite could be { $limits } min (95 % limits).
waits-half-limits-open = The time by which half get a bite could be { $low } min or more (95 % limit).
waits-not-half = By { $longest } min, the longest wait, fewer than half of the casts get a bite (estimated).
waits-survival-how = Steps: what was seen, dots how far it may be off. Dashes: what is expected of the next cast.
waits-survival-figures = Steps by Kaplan and Meier, dots their log-log limits (95 %), wide enough for casts of one hour being alike.
waits-hazard = When bites come
waits-thickest = Best minute: about { $minute } min after the splash. Of 100 casts still out then, about { $percent } get a bite in that minute. With { $bites } bites it could be anything from { $limits }.
waits-rising = Bites still come quicker at { $minute } min, the longest wait. Of 100 casts still out then, about { $percent } get a bite in that minute. With { $bites } bites it could be anything from { $limits }.
waits-flat = No minute stands out: a bite is about as likely early as late.
waits-window = Bite window: half of the bites to come are expected between { $from } and { $to } min. Of the { $bites } seen, { $inside } came then.
waits-hazard-how = Bars: bites per 100 minutes out, as seen. Dashes: what is expected.
waits-hazard-figures = Expected: the mean over all shapes of the wait that the record leaves likely, with its 95 % band.
waits-bar = { $bites ->
    [one] 1 bite
   *[other] { $bites } bites
} in { $minutes } min
waits-figures = Figures
waits-leave = How long to leave it
waits-best-rate = At its best about { $rate } bites an hour for each rod (95 %: { $limits }).
waits-bites-between = { $sessions ->
    [0] { $bites ->
        [one] The only bite this session came at { $low } min.
       *[other] All { $bites } bites this session came between { $low } and { $high } min.
    }
    [one] { $bites ->
        [one] The only bite in 1 session came at { $low } min.
       *[other] All { $bites } bites in 1 session came between { $low } and { $high } min.
    }
   *[other] { $bites ->
        [one] The only bite in { $sessions } sessions came at { $low } min.
       *[other] All { $bites } bites in { $sessions } sessions came between { $low } and { $high } min.
    }
}
waits-near-best = By the casts so far, { $hold } to { $recast } min is near-best. Leaving a cast longer is to find out what comes later.
waits-not-tried = Past { $minutes } min: not tried.
waits-leave-how = Dot: the best time. Stroke: without a bite, you wind in half of your casts by then (estimated).
waits-leave-figures = Bites an hour by renewal reward. Near-best: within 5 % of the best, cut short where an empty cast is better wound in.
waits-fed = Casts fed in the { $minutes } min before their splash: bites about { $times } times as quick (95 %: { $limits }). Casts counted: { $fed } fed, { $other } not.
waits-earlier = This session against earlier ones
waits-earlier-counts = This session: { $bites ->
    [0] no bites
    [one] 1 bite
   *[other] { $bites } bites
} in { $casts ->
    [one] 1 cast
   *[other] { $casts } casts
}. Earlier: { $before } in { $beforecasts }, over { $sessions ->
    [one] 1 session
   *[other] { $sessions } sessions
}.
waits-weights = Earlier days count less: the chance that a session was a day like this is taken to be { $like } on the same water and { $other } on another. The steps count every cast in full.
waits-earlier-same = Can't tell this session from earlier ones.
waits-earlier-quicker = Bites come quicker this session than before.
waits-earlier-slower = Bites come slower this session than before.
waits-earlier-hours = { $hours ->
    [0] No hour of this session yet
    [one] 1 hour of this session
   *[other] { $hours } hours of this session
} against { $before ->
    [one] 1 hour
   *[other] { $before } hours
} before: { $p }, good at any look.
waits-earlier-log-rank = Cast by cast, for one look only and if casts didn't come in spells: log-rank { $p }.
waits-drift = Over the day
waits-drift-same = Bites aren't clearly quicker or slower as the day goes on.
waits-drift-quicker = Bites come quicker as the day goes on.
waits-drift-slower = Bites come slower as the day goes on.
waits-drift-hours = { $hours ->
    [0] No hour with casts yet
    [one] 1 hour with casts
   *[other] { $hours } hours with casts
} in their order: { $p }, good at any look. Five or six can show a strong trend only.
waits-drift-how = Diamond: a bite. Stroke: wound in without one.
waits-drift-figures = An hour counts by its bites less those expected of the same waits (log-rank scores), the hours by an order test that may be read at any moment.

forecast-title = What is still to come
forecast-left = Time left
forecast-min = { $minutes } min
forecast-bites = Bites to come
forecast-fish = Fish to come
forecast-last = Winding in to recast
forecast-last-value = worth it until the last { $likely } min ({ $low } to { $high })
forecast-one = { $likely }
forecast-range = { $low } to { $high }, about { $likely }
forecast-says = On { $percent ->
    [0] fewer than 1
    [100] more than 99
   *[other] about { $percent }
} of 100 days like this, a bite comes in the next { $minutes } min.
forecast-cant-tell = Too few bites yet: these ranges rest mostly on what is usual. On { $percent ->
    [0] fewer than 1
    [100] more than 99
   *[other] about { $percent }
} of 100 days, a bite comes in the next { $minutes } min.
forecast-how = On at least 8 days in 10 like this, the total falls in each range; "about" is its middle. Assumed: { $out ->
    [0] the next cast
   *[other] this cast
} left { $leave } min, later ones { $then } min, { $turn } min from wind-in to splash. In those last minutes a new cast has less than half of a full cast's chance; a rod that is in may still be cast.

# The legend. A sign means the same on the strip, the map and the charts.
legend-signs-title = Legend
legend-signs-says = A sign means the same on every picture.
sign-diamond = Diamond
sign-diamond-means = A bite. On the strip and the charts at its wait, on the map where the cast landed.
sign-stroke = Stroke
sign-stroke-means = A cast wound in without a bite; a long one: by when you wind in half of them (estimated).
sign-triangle = Open triangle
sign-triangle-means = A liner.
sign-cross = Cross
sign-cross-means = A lost fish, on the map.
sign-accent = Colour, with a dot or a flag
sign-accent-means = Now, or what comes next: this minute, the next cast, the best time.
sign-bracket = Bracket
sign-bracket-means = The minutes in which it pays to wind in, or in which half of the bites are expected.
sign-tint = Tinted
sign-tint-means = How far a curve may be off.
sign-dots = Dots
sign-dots-means = Not known: no cast was out so long, or the limits of a curve.
sign-hatching = Hatching
sign-hatching-means = Water that rests, on the map: the lines thin out as it does. Solid was just fished.
