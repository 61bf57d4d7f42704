# The report of a session, for paper and for friends.

# The language of this file, as a BCP 47 tag: that of the page.
report-language = en-GB
report-title = { $peg }, { $day }
report-title-water = { $water }, { $peg }, { $day }
report-peg = peg { $peg }
report-peg-none = a session
report-day-none = day not known
report-when = { $from } to { $to }
report-day-time = { $day } { $time }
report-when-open = from { $from }, not ended
report-casts = Casts
report-bites = Bites
report-landed = Landed
report-lost = Lost
report-missed = Missed
report-liners = Liners
report-weight = Weight known
report-weight-value = { $kg } kg
report-weight-eye = { $weight }; { $fish ->
    [one] 1 fish
   *[other] { $fish } fish
} by eye
report-weight-rest = { $kg } kg, and { $fish } fish not weighed
report-put-back = Put back
report-hooklengths-lost = Hooklengths lost
report-doubts = Doubtful entries
report-break = Away from the rods { $from } to { $to }.
report-break-open = Away from the rods since { $from }.
report-fed = Fed about { $weight }.
report-fed-feeder = Fed about { $weight }, { $feeder } of it by feeders with their casts.
report-fed-line = { $time } fed { $what }{ $at }
report-shown-line = { $time } { $what }{ $at }
report-at = {", "}{ $where }
report-fed-more = { $count ->
    [one] 1 more entry of this kind is in the log.
   *[other] { $count } more entries of this kind are in the log.
}
report-weather = { $time } { $what }

report-nets = Nets
report-net = { $fish ->
    [one] { $net }: 1 fish, { $kg } kg of it known
   *[other] { $net }: { $fish } fish, { $kg } kg of them known
}
report-net-scales = { $line }; the scales showed { $shown }

report-of-another = Another angler's day, imported from a file.
report-others = Section and other nets
report-section = Section: { $left ->
    [one] 1 peg
   *[other] { $left } pegs
} to the left, { $right ->
    [one] 1 peg
   *[other] { $right } pegs
} to the right.
report-other-net = { $peg }: { $weight }
report-rule = Dead and returned fish: { $rule }

report-strip = Waits
report-strip-twitch = A twitch ended one wait and began the next, so a cast can have more than one mark. The list of casts shows the last wait of each.
report-strip-read = Each mark is one wait: a filled diamond where a bite ended the wait, an upright stroke where something else did, so that the wait was longer than that.
report-strip-alt = { $bites ->
    [one] 1 wait
   *[other] { $bites } waits
} ended with a bite: { $list }. { $others } ended without one.
report-strip-wait = { $minutes } min
report-strip-none = No wait to show yet.
report-minutes = minutes waited

report-curve = Casts still without a bite
report-curve-read = Kaplan-Meier estimate from { $casts ->
    [one] 1 cast
   *[other] { $casts } casts
} with { $bites ->
    [0] no bites
    [one] 1 bite
   *[other] { $bites } bites
}; the shaded band holds the true share with 95 % confidence at each minute (log-log limits). Small numbers give wide bands.
report-curve-alt = Share of casts still without a bite: { $list }.
report-curve-at = { $share } % after { $minutes } min
report-curve-few = Can't tell yet: fewer than three bites.
report-share = still without a bite

report-swim = Where the casts went
report-swim-read = Seen from the peg, straight out is up. At each spot: casts / bites. A filled diamond had a bite, a dot had none.
report-swim-alt = { $list }.
report-swim-spot = { $where }: { $casts ->
    [one] 1 cast
   *[other] { $casts } casts
}, { $bites ->
    [0] no bites
    [one] 1 bite
   *[other] { $bites } bites
}
report-swim-none = No spot was logged.
report-where-mark = { $mark }, { $metres } m
report-where = { $metres } m, { $degrees }° { $side }
report-where-straight = { $metres } m straight out
report-left = left
report-right = right

report-list = Cast by cast
report-time = Splash
report-rod = Rod
report-spot = Spot
report-wait = Wait
report-wait-value = { $minutes } min
report-wait-longer = over { $minutes } min
report-end = Ended by
report-bait = Bait
report-more = { $count ->
    [one] 1 more cast is
   *[other] { $count } more casts are
} in the CSV file.
report-notes = Notes

report-end-landed = landed
report-end-lost = lost
report-end-missed = missed bite
report-end-outcome = bite, outcome not seen
report-end-wound-in = wound in
report-end-unseen = end not seen
report-end-session = session ended
report-end-out = still out
report-end-put-back = put back
report-end-hooklength = hooklength lost
report-from-splash = the splash
report-from-twitch = the splash or the last twitch
report-foot = Times are as logged on the phone. Waits run from { $from }{ $approximate ->
    [0] .
    [one] ; 1 cast has an approximate time.
   *[other] ; { $approximate } casts have an approximate time.
}
