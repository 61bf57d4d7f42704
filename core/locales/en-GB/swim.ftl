# The Swim screen.

swim-title = Swim, { $place }
swim-area = { $fresh } m² fresh of { $all } m²
swim-next = Next: { $where }, { $reach }
swim-aimed = { $where }, { $reach }
swim-rests-on-guesses = Scatter and disturbance are guesses; rest is your own idea, not a promise.
swim-no-reason = No reason for or against.
swim-then = Put aside: { $why }.
swim-bites = { $bites ->
    [0] No bites logged here yet: not proof of anything.
    [one] Not proof: 1 bite so far.
   *[other] Not proof: { $bites } bites so far.
}

reason-never = not likely disturbed today
reason-rested = rested { $minutes } min
reason-near-bites = { $bites ->
    [one] a bite { $metres } m away, { $minutes } min ago
   *[other] { $bites } bites within { $metres } m, the last { $minutes } min ago
}
reason-behind = behind the last bite, { $minutes } min ago
reason-liners-here = { $liners ->
    [one] a liner here
   *[other] { $liners } liners here
}
reason-liners-beside = { $liners ->
    [one] a liner beside it
   *[other] { $liners } liners beside it
}
reason-usual-start = a usual first range (common practice, no source)
against-rested = rested { $minutes } of { $target } min
against-boundary = { $metres } m from the boundary
against-kept = kept back { $minutes } min
against-beyond = further than can be cast today
against-hazard = { $name } is { $metres } m away
against-hazard-unnamed = a hazard

cell-figures = { $casts ->
    [0] Not cast here.
    [one] 1 cast here
   *[other] { $casts } casts here
}{ $casts ->
    [0] { "" }
   *[other] , { $bites ->
        [0] no bites
        [one] 1 bite
       *[other] { $bites } bites
    }, { $minutes } min of bait.
}
drift-out = Bites have moved out over the day (tau { $tau }, p { $p }, { $n } bites).
drift-in = Bites have moved in over the day (tau { $tau }, p { $p }, { $n } bites).
drift-right = Bites have moved to the right over the day (tau { $tau }, p { $p }, { $n } bites).
drift-left = Bites have moved to the left over the day (tau { $tau }, p { $p }, { $n } bites).
drift-with-casts = Bites moved, but so did the casts: it says little of the fish.
drift-cant-tell = Whether the fish move: can't tell yet.
replay-at = As it was at { $time }

swim-scene-kept = kept back
swim-scene-min = min
swim-scene-h = h
swim-scene-m = m

key-step-left = LEFT
key-step-right = RIGHT
key-step-in = IN
key-step-out = OUT
key-keep = KEEP
key-keep-sub = back
key-keep-spoken = Keep this water back.
key-release = RELEASE
key-release-sub = kept water
key-release-spoken = Release the kept-back water.
key-cast-here = CAST HERE NEXT
key-cast-here-spoken = The next cast goes here.
key-earlier = EARLIER
key-later = LATER
key-now = NOW
key-mark-here = MARK
key-mark-here-sub = name it
key-mark-here-spoken = Set an aiming mark in this direction.

swim-left = Next peg on the left
swim-right = Next peg on the right
swim-far = Far bank
swim-pegged = Far bank pegged
swim-rest = Counts as rested after
swim-band = Width of the bands
swim-feature = Mark a feature here
swim-hazard = Mark a hazard here
swim-none = none
swim-usual = usual
swim-yes = yes
swim-no = no
swim-minutes = { $minutes } min
swim-metres = { $metres } m
feature-bar = bar
feature-drop_off = drop-off
feature-hole = hole
feature-weed = weed
feature-silt = silt
feature-gravel = gravel
feature-clay = clay
feature-island = island
feature-fish_seen = fish seen
feature-other = other
hazard-snag = snag
hazard-line = line overhead
entry-feature_set = feature
entry-hazard_set = hazard
entry-peg_placed = peg place
mark-numbered = Mark { $number }
swim-mark-name = Name of the mark
