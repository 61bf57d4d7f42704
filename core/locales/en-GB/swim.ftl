# The Swim screen.

swim-title = Swim, { $place }
swim-title-plain = Swim
swim-peg = peg { $peg }
swim-squares = { $fished } of { $all } squares fished in { $minutes } min
swim-next = Next: { $where }, { $reach }
swim-stay = Stay: { $spot }
swim-go-in = Into kept-back water: { $where }, { $reach }
swim-go-in-dry = no bite in the last { $casts ->
    [one] cast
   *[other] { $casts } casts
}
swim-go-in-rest = nothing else has rested
swim-go-in-plan = as you planned
swim-as-before = as before
swim-moving = your last spot needs { $minutes } min more
swim-aimed = { $where }, { $reach }
swim-rests-on-guesses = Spread and disturbance are estimates. Resting may not help. An untried spot ranks above its bites an hour, for a bite there would show a place to come back to.
swim-leaving = Bites came at your last spot, but fish may stay away from it after casts; untried water may be as good.
swim-between = between { $markleft } and { $markright }
swim-between-nearer = between { $markleft } and { $markright }, nearer { $near }
swim-no-reason = No reason for or against.
swim-then = Then: { $where }
swim-bites = { $bites ->
    [0] No bites in this swim yet.
    [one] 1 bite so far: too few to be sure.
   *[other] { $bites } bites so far: too few to be sure.
}
swim-bites-no-spot = { $bites ->
    [one] 1 bite isn't on the map: its cast had no spot. Set the spot under Tackle.
   *[other] { $bites } bites aren't on the map: their casts had no spot. Set the spot under Tackle.
}

reason-never = not fished this session
reason-quiet = probably undisturbed for { $minutes } min
reason-rested = { $minutes } min since a lead landed here
reason-near-bites = { $bites ->
    [one] a bite { $distance } away, { ago }
   *[other] { $bites } recent bites near, the last { $distance } away, { ago }
}
reason-near-stay = { $bites ->
    [one] a bite here or near, { ago }
   *[other] { $bites } recent bites here or near, the last { ago }
}
reason-behind = behind the last bite, { ago }
reason-liners-here = { $liners ->
    [one] a liner here
   *[other] { $liners } liners here
}
reason-liners-beside = { $liners ->
    [one] a liner beside it
   *[other] { $liners } liners beside it
}
reason-shown-where = { $metres ->
    [0] here
   *[other] { $distance } away
}
reason-shown = { $times ->
    [one] fish showed { reason-shown-where }, { ago }
   *[other] fish showed { $times } times near, last { reason-shown-where }, { ago }
}
reason-fish-here = by the log { $here } of 100 such spots hold fish: expect { $rate } bites an hour here, { $other } in untried water
reason-not-tried = not tried: { $here } of 100 such spots hold fish, so expect { $rate } bites an hour
against-fish-away = disturbed: { $here } of 100 such spots hold fish, so expect { $rate } bites an hour now
against-nothing-yet = { $casts ->
    [one] nothing here in { $minutes } min
   *[other] nothing here in { $minutes } min over { $casts } casts
}
against-nothing-here = { $casts ->
    [one] nothing here in { $minutes } min: { $here } of 100 such spots still hold fish, so expect { $rate } bites an hour
   *[other] nothing here in { $minutes } min over { $casts } casts: { $here } of 100 such spots still hold fish, so expect { $rate } bites an hour
}
reason-fed = fed { ago }
reason-usual-start = a usual first range (common practice, no source)
against-bait-out = a bait is out there
# An objection that follows a reason.
swim-but = but { $against }
against-rested = only { $minutes } of { $target } min since a lead landed here
against-maybe = { $casts ->
    [one] a cast may have landed here lately
   *[other] about { $casts } casts may have landed here lately
}
against-boundary = { $distance } from the boundary
against-kept = kept back { $minutes } min
against-beyond = further than can be cast today
against-hazard = { $name } is { $distance } away
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
    }{ $lost ->
        [0] { "" }
       *[other] , { $lost } lost
    }{ $liners ->
        [0] { "" }
        [one] , 1 liner
       *[other] , { $liners } liners
    }, { $minutes } min fished.
}
cell-fed = Fed { ago }, { $weight } this session.
cell-shown = { $times ->
    [one] Fish showed { ago }.
   *[other] Fish showed { $times } times, last { ago }.
}
drift-out = Bites have moved out over the day.
drift-in = Bites have moved in over the day.
drift-right = Bites have moved to the right over the day.
drift-left = Bites have moved to the left over the day.
drift-figures = Over the day, { $way ->
    [out] out or in
   *[across] right or left
}: tau { $tau }, p { $p } at any look, { $n ->
    [one] 1 bite
   *[other] { $n } bites
}.
drift-with-casts = You moved, so this says little about the fish.
drift-cant-tell = Whether the fish move: can't tell yet.
replay-at = As it was at { $time }

swim-scene-kept = KEPT
swim-scene-kept-back = kept back
swim-scene-next = NEXT
swim-scene-stay = STAY
swim-scene-min = min
swim-scene-h = h
swim-scene-m = m
swim-scene-yd = yd
swim-scene-bites = bites
swim-scene-lost = lost
swim-scene-liners = liners

swim-scene-fed = fed
swim-scene-shown = fish showed

swim-legend = Legend
legend-just-fished = Just fished. The number: minutes since the lead landed.
legend-resting = Resting. The lines thin out as it rests.
legend-free = Rested, or not fished this session.
legend-kept = Kept back. Not offered until you release it.
legend-next = The next cast goes here.
legend-aimed = Aimed at. A tap or a step moves it.
legend-line-out = A line that is out now.
legend-bites = Bites, with how many.
legend-liner = A liner.
legend-lost = A lost fish.
legend-fed = Fed water.
legend-shown = Fish showed, with how often.
legend-feature = A feature you marked.
legend-hazard = A hazard, with the water to stay clear of.

key-step-left = LEFT
key-step-right = RIGHT
key-step-in = IN
key-step-out = OUT
key-steps = AIM
key-steps-spoken = Shows the keys that move the aim.
key-keep = KEEP BACK
key-keep-spoken = Keep this water back.
key-release = RELEASE
key-release-spoken = Release the kept-back water.
key-cast-here = NEXT CAST HERE
key-cast-here-spoken = The next cast goes here.
key-cast-here-kept-spoken = The next cast goes here. The water is no longer kept back.
key-earlier = EARLIER
key-later = LATER
key-now = NOW
key-mark-here = MARK
key-mark-here-spoken = Set an aiming mark in this direction.

key-place-peg = SET PLACE
key-place-peg-spoken = Set the peg at the position typed.
key-use-phone = USE THIS PHONE'S POSITION
key-use-phone-spoken = Reads this phone's position once and fills the two lines. Nothing is logged yet.
key-earlier-spoken = The swim ten minutes earlier.
key-later-spoken = The swim ten minutes later.
key-now-spoken = The swim as it is now.
key-step-left-spoken = The aim moves one square to the left.
key-step-right-spoken = The aim moves one square to the right.
key-step-in-spoken = The aim moves one band in.
key-step-out-spoken = The aim moves one band out.

swim-list = Where next, in full
swim-name = Name
swim-rename = Use the name for
swim-remove = Remove
swim-outline = the outline
swim-a-hazard = hazard
notice-removed = Removed. UNDO brings it back.
peg-place = Peg on the map
peg-place-none = not set
peg-place-set = set
peg-place-note = Optional. Left out of files unless you include it.
peg-place-lat = Latitude
peg-place-lon = Longitude
peg-place-out = Straight out

geojson-mark = mark { $name }
geojson-feature = feature { $name }
geojson-hazard = hazard { $name }
geojson-outline = { $corners ->
    [one] an outline of 1 corner
   *[other] an outline of { $corners } corners
}
geojson-marks = { $n ->
    [one] 1 mark
   *[other] { $n } marks
}
geojson-features = { $n ->
    [one] 1 feature
   *[other] { $n } features
}
geojson-hazards = { $n ->
    [one] 1 hazard
   *[other] { $n } hazards
}
geojson-an-outline = an outline
geojson-adds = New from the file: { $what }.
geojson-nothing = Everything in this file is here already.

swim-left = Next peg on the left
swim-right = Next peg on the right
swim-far = Far bank
swim-pegged = Far bank pegged
swim-rest = Counts as rested after
swim-band = Width of the bands
swim-seen = Fish showing here
swim-feed = Feed here
swim-feature = Mark a feature here
swim-hazard = Mark a hazard here
swim-none = none
swim-usual = usual
swim-yes = yes
swim-no = no
swim-minutes = { $minutes } min
swim-metres = { $metres } m
swim-yards = { $yards } yd
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
hazard-branch = branch
hazard-rope = rope or post
hazard-shallow = shallow
entry-feature_set = feature
entry-outline_set = outline
entry-hazard_set = hazard
entry-peg_placed = peg position
mark-numbered = Mark { $number }
