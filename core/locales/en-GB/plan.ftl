# The plan for a day: written the evening before, shown on the Bank as it falls due, held against the day on its card.

bench-plan-title = Plan
bench-plan-pegs-title = Pegs you may draw
bench-plan-start-title = Start and move
bench-plan-rig-title = Rig
plan-rig-of = { $rod }: rig
plan-today = today
plan-tomorrow = tomorrow
# On the list of the Bench.
plan-sub = { $day }: { $count ->
    [0] nothing planned
    [one] 1 line
   *[other] { $count } lines
}
plan-says-none = Nothing planned for { $day }. Leave out what you like.
plan-says = For { $day }: the Bank shows each line when it is due.
plan-says-taken = Today goes by the plan as it stood at START. Changes here count for the next one.
# The same on the pages for pegs, start and rigs, which are each about one day.
plan-for = For { $day }: { $what }
plan-row-day = Day
plan-row-out = Take out
plan-row-aim = Mark or direction
plan-start = Where to start
plan-leave = Leave the first casts
plan-move = Into kept-back water
plan-open = left open
plan-minutes = { $minutes } min
plan-after-all-in = { $minutes } min after all-in
plan-pegs-says = For { $day }: pegs you would like, and what to do on each. The Bank shows the one you draw.
plan-type-peg = Peg: what to do there
plan-type-move = Time, or minutes after all-in
plan-start-says = For { $day }: where the first cast goes. Left open.
plan-key-no-start = LEAVE OPEN
plan-key-no-rig = NO RIG
plan-key-today = TODAY
plan-key-today-sub = go by this plan
plan-key-not-today = NOT TODAY
plan-key-not-today-sub = fish without it
setup-plan = Plan
setup-plan-of = for { $day }
setup-plan-none = not today
setup-plan-how = START adopts it as it is

# On the Bank, a line at a time.
plan-due-peg = Plan for peg { $peg }: { $note }.
plan-due-rig = Plan for rod { $rod }: { $rig }.
plan-due-start = Plan, first cast: { $spot }.
plan-due-leave = Plan: leave the first casts { $minutes } min.
plan-due-move = Plan, { $time }: fish kept-back water.

# On the card of the day, below the word Plan.
day-plan = Plan
report-plan = Plan: { $what }
plan-pegs-kept = { $count ->
    [one] peg { $pegs }
   *[other] one of pegs { $pegs }
}. You drew { $drawn }.
plan-pegs-other = { $count ->
    [one] peg { $pegs }
   *[other] one of pegs { $pegs }
}. You drew { $drawn } instead.
plan-pegs-none = { $count ->
    [one] peg { $pegs }
   *[other] one of pegs { $pegs }
}. No peg was entered.
plan-rig-kept = rod { $rod } with { $rig }: as planned.
plan-rig-other = rod { $rod } with { $rig }. You began with: { $first }.
plan-rig-none = rod { $rod } with { $rig }. It was not cast.
plan-start-kept = start at { $planned }: as planned.
plan-start-other = start at { $planned }. You started at { $first }.
plan-spot-none = a spot that was not set
plan-start-none = start at { $planned }. There was no cast.
plan-leave-left = leave the first casts { $minutes } min. { $count ->
    [one] The first was left { $left } min.
   *[other] The first { $count } were left { $left } min.
}
plan-leave-none = leave the first casts { $minutes } min. No end of one is known.
plan-move-cast = kept-back water at { $time }. First cast there { $first }.
plan-move-none = kept-back water at { $time }. No cast went there.

entry-plan_set = plan
entry-plan_cleared = line out of the plan
entry-plan_taken = plan for today
entry-plan_dropped = no plan today
