# The Bench screen: the evening before.

bench-parts-title = Bench
bench-hooklengths-title = Hooklengths
bench-cut-down-title = Cut down
bench-tie-up-title = Tie new
bench-spools-title = Spools
bench-pop-up-title = Pop-up
bench-shot-title = Shot box
bench-fall-title = Fall time
bench-heights-title = Heights
bench-no-plan = no plan

bench-row-kit = Whose kit
bench-kit-own = this phone's own
bench-kit-of = from another phone, { $number }
bench-kit-how = An import from a partner or an older phone brings its own kit. What you change on the Bench changes the kit chosen here.

# A hooklength: its length, the diameter of its line, the size of its hook, its hair.
bench-hooklength = { $length }, { $mm } mm, size { $size }
bench-hair = { $mm } mm hair
bench-no-hair = no hair
bench-mm = { $mm } mm
bench-cm = { $cm } cm
bench-celsius = { $t } °C
bench-have = { $have } tied
bench-have-of = { $have } tied, { $want } to carry
bench-row-kind = Which
bench-row-length = Length
bench-row-diameter = Line
bench-row-hook = Hook size
bench-row-hair = Hair
bench-hooklengths-says = { $which }: { $have } tied, { $want ->
    [0] none to carry
   *[other] { $want } to carry
}.
bench-hooklengths-sub = { $count } tied
bench-lost = { $count ->
    [one] 1 was lost on a cast and is
   *[other] { $count } were lost on casts and are
} taken out.
bench-lost-unknown = { $count ->
    [one] 1 lost hooklength fits no kind here, or several: take it out by hand.
   *[other] { $count } lost hooklengths fit no kind here, or several: take them out by hand.
}
bench-odd = { $count ->
    [one] 1 entry
   *[other] { $count } entries
} took out more than there were: count the wallet.
bench-key-tied-1 = TIED 1
bench-key-tied-5 = TIED 5
bench-key-tied-sub = into the wallet
bench-key-taken_out-1 = OUT 1
bench-key-taken-out-sub = binned or lost
bench-key-want-more = CARRY +1
bench-key-want-less = CARRY −1
bench-key-want-sub = for the day

bench-cut-down-none = Nothing is tied yet: log ties under Hooklengths.
bench-cut-down-says = { $count ->
    [0] Nothing to cut down: no spare tie is long enough for one that is missing.
    [one] 1 to cut down, { $waste } cut off.
   *[other] { $count } to cut down, { $waste } cut off in all.
}
bench-cut-down-sub = { $count ->
    [0] nothing
    [one] 1, waste { $waste }
   *[other] { $count }, waste { $waste }
}
bench-cut-to = cut down to { $length }: { $count }
bench-cut-off = { $length } shorter each: leave line for the loop
bench-cut-down-how = Of all ways that save the most tying, this one wastes the least line, then needs the fewest cuts. Only the same line, hook and hair are cut, and line is left for the new loop.
bench-key-cut = CUT
bench-key-cut-sub = all of these

bench-tie-up-says = { $count ->
    [0] Nothing to tie: the wallet holds all you want to carry.
    [one] 1 to tie.
   *[other] { $count } to tie.
}
bench-tie-up-none = Nothing to tie yet. Under Hooklengths, set how many to carry.
bench-tie-up-sub = { $count ->
    [0] nothing
   *[other] { $count } to tie
}
bench-tie = tie { $count }
bench-cut-for = cut { $length } each
bench-line-of = { $mm } mm
bench-spool-number = Spool { $number }, { $line }
bench-pieces = { $count ->
    [one] 1 piece
   *[other] { $count } pieces
}
bench-left-on-it = { $metres } m left on it
bench-not-proved = There may be a plan whose spools hold up to { $length } less line.
bench-allowances = A tie uses { $length } beyond its length: knot, twice the loop, tag.
bench-allowances-none = Knot, loop and tag are not measured yet, so nothing is added to the lengths. Measure them on three ties.
bench-row-hook_knot = Hook knot
bench-row-loop_length = Loop
bench-row-tag = Tag
bench-key-tie = TIED
bench-key-tie-sub = all of these

bench-spools-says = { $count ->
    [0] No spool yet.
    [one] 1 spool.
   *[other] { $count } spools.
}
bench-spools-sub = { bench-spools-says }
bench-row-spool_diameter = Line
bench-row-spool_length = On the spool
bench-row-spool_gone = Used up
bench-spool-gone-how = The spool chosen here is removed from the bench.
bench-key-spool = ADD
bench-key-spool-sub = { $mm } mm, { $metres } m

bench-pop-up-sinks = It sinks without shot, with { $over } to spare.
bench-pop-up-says = { $shot } holds it down, with { $over } to spare.
bench-pop-up-barely = { $shot } only just holds it down: try it in the margin.
bench-no-shot = no shot
bench-lift = Lift of the bait
bench-hook-under-water = Hook under water
bench-line-under-water = Line under water
bench-net-lift = Net lift
bench-shot-under-water = Shot under water
bench-shot-in-air = Shot in air
bench-pop-up-soaked = The lift falls as the bait takes in water: this is for { $minutes } min after it went in.
bench-pop-up-guess = Not measured yet: a starting point. Sink the bait in a bowl of cold water with shot, and enter what that weighs under water.
bench-pop-up-how = The fewest shot that weigh at least the net lift and at most 0.05 g more. Densities are handbook values from memory; the hook is taken as steel.
bench-row-lift = Lift
bench-row-soaked = Soaked
bench-row-hook_weight = Hook weight
bench-row-height = Height
bench-row-line_um = Line
bench-row-line = Line of
bench-row-shot_metal = Shot of
bench-row-water = Water
bench-line-nylon = nylon
bench-line-fluorocarbon = fluorocarbon
bench-line-braid = braid
bench-shot_metal-tungsten = tungsten
bench-shot_metal-tin = tin
bench-shot_metal-steel = steel
bench-shot_metal-lead = lead

bench-shot-says = { $count ->
    [0] The box is empty. Add sizes.
    [one] 1 size in the box.
   *[other] { $count } sizes in the box.
}
bench-shot-sub = { $count ->
    [one] 1 size
   *[other] { $count } sizes
}
bench-shot-how = These are usual weights, without a source, and makers differ by 5 to 10 %: weigh ten of each and enter your own.
bench-shot-memory = from memory, unverified: weigh ten
bench-row-size = Size
bench-row-shot = One { $size }
bench-not-in-the-box = not in the box

bench-fall-says = Tap SPLASH when the lead hits the water and BOTTOM when the line falls slack.
bench-falling = Falling since { $time }.
bench-fall-timed = { $seconds } s.
bench-fall-depth = { $seconds } s: { $metres } m deep, between { $low } and { $high } m.
bench-at-depth = Known depth { $metres } m
bench-seconds = { $seconds } s
bench-fall-speed = The lead sinks { $speed } m a second ({ $low } to { $high }).
bench-fall-how = Assumes each tap is within 0.3 s. Valid for this lead on this line only.
bench-fall-sub = { $speed } m/s, { $count ->
    [one] 1 fall
   *[other] { $count } falls
}
bench-fall-none = not timed yet
bench-row-plumbed = Known depth
bench-key-splash = SPLASH
bench-key-splash-sub = it hits the water
bench-key-bottom = BOTTOM
bench-key-bottom-sub = the line is slack
bench-key-calibrate = KEEP
bench-key-calibrate-sub = at the known depth

bench-heights-none = No height tried yet. { $first } is where many begin (common practice, no source).
bench-heights-all = Every height of the ladder was tried.
bench-heights-says = Most minutes at { $most }. Nearest to it and not tried: { $open }.
bench-heights-sub = { $tried } of { $all } tried
bench-heights-how = A cast counts at the height nearest to its own. Ranges are exact 95 % limits of bites in a rod hour; heights were not alternated, so the day may be the reason for a difference.
bench-untried = not tried
bench-tried = { $bites ->
    [0] no bites
    [one] 1 bite
   *[other] { $bites } bites
} in { $casts ->
    [one] 1 cast
   *[other] { $casts } casts
}, { $minutes } min
bench-rate = { $rate } an hour, { $low } to { $high }
bench-row-heights_of = Casts of
bench-sessions-all = all sessions
bench-sessions-this = this session
bench-row-rung = Ladder
bench-rungs = { $count ->
    [one] 1 height
   *[other] { $count } heights
}

# What undo names.
entry-conditions_set = weather
entry-hooklength_lost = hooklength lost
entry-planned_next = plan
entry-hooklengths_tied = tied
entry-hooklengths_counted = count
entry-hooklengths_taken_out = taken out
entry-hooklengths_cut_down = cut down
entry-hooklengths_wanted = to carry
entry-spool_added = spool
entry-spool_left = spool
entry-allowances_set = knots
entry-pop_up_set = pop-up
entry-shot_set = shot
entry-fall_timed = fall
entry-ladder_set = ladder
entry-cautions_seen = cautions
