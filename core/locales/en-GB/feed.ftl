# Feed put in by hand, and the feeder that feeds with each cast. Weights of measures are the angler's guesses.

feed-no-session = No session is open
feed-at-spot = Feed at the spot
feed-at-rod = Feed at rod { $rod }'s spot
feed-at-aim = Feed at the aim on the map
aim-none = No square is chosen on the map yet.
# How long ago, wherever it is said.
ago = { $minutes ->
    [0] just now
   *[other] { $minutes } min ago
}
feed-here = Fed { ago }, { $weight } here this session.
# On the Bank, after the spot, where room is short.
feed-bank = Fed { ago }, { $weight } in all.
feed-none-here = Nothing fed here yet.
feed-guesses = Weights are estimates: change them under Phone.
feed-way-handful = { $count ->
    [one] HANDFUL
   *[other] { $count } HANDFULS
}
feed-way-pinch = { $count ->
    [one] PINCH
   *[other] { $count } PINCHES
}
feed-way-cup = { $count ->
    [one] CUP
   *[other] { $count } CUPS
}
feed-way-ball = { $count ->
    [one] BALL
   *[other] { $count } BALLS
}
feed-way-bag = { $count ->
    [one] BAG
   *[other] { $count } BAGS
}
feed-way-feeder = { $count ->
    [one] FEEDER
   *[other] { $count } FEEDERS
}
feed-way-spod = { $count ->
    [one] SPOD
   *[other] { $count } SPODS
}
feed-way-loose = loose, { $weight } each
feed-way-about = about { $weight } each
feed-way-spoken = Feed { $what }.
feed-words-handful = { $count ->
    [one] a handful, loose
   *[other] { $count } handfuls, loose
}
feed-words-pinch = { $count ->
    [one] a pinch, loose
   *[other] { $count } pinches, loose
}
feed-words-cup = { $count ->
    [one] a cup, loose
   *[other] { $count } cups, loose
}
feed-words-ball = { $count ->
    [one] a ball
   *[other] { $count } balls
}
feed-words-bag = { $count ->
    [one] a bag
   *[other] { $count } bags
}
feed-words-feeder = { $count ->
    [one] a feeder
   *[other] { $count } feeders
}
feed-words-spod = { $count ->
    [one] a spod
   *[other] { $count } spods
}
feed-by-weight-words = { $weight }, { $kind }
feed-kind-loose = loose
feed-kind-ball = balls
feed-kind-bag = bags
feed-kind-feeder = feeder
feed-kind-spod = spod
feed-kind = { $what }
feed-kind-sub = tap to change
feed-kind-spoken = It goes in as { $what }. Change it.
feed-count = { $count } ×
feed-count-sub = tap: { $next }
feed-count-spoken = The next key means { $count }. Change it to { $next }.
feed-to-spot = SPOT
feed-to-spot-sub = tap: the aim
feed-to-spot-spoken = It goes to the spot of rod { $rod }. Change it to the aim on the map.
feed-to-aim = AIM
feed-to-aim-sub = tap: the spot
feed-to-aim-spoken = It goes to the aim on the map. Change it to the spot of rod { $rod }.
feed-each-cast = EACH CAST
feed-each-cast-sub = feeder on
feed-each-cast-spoken = There is a feeder on rod { $rod }. It feeds with each cast from now on.
feed-each-cast-on = EACH CAST
feed-each-cast-on-sub = tap: plain lead
feed-each-cast-on-spoken = The feeder on rod { $rod } feeds { $weight } with each cast. Change it to a plain lead.
feed-by-weight = BY WEIGHT
feed-by-weight-sub = a number
feed-by-weight-spoken = Enter the weight of what you feed.
feed-clear = CLEAR
feed-clear-sub = start again
feed-clear-spoken = Clear the figure.
feed-grams = { $count } g
feed-ounces = { $count } oz
feed-weighed = FEED
feed-weighed-sub = { $weight }, { $what }
feed-weighed-spoken = Feed { $weight }, { $what }.
notice-fed = Fed: { $what }.
notice-fed-at = Fed: { $what }. { $place }.
entry-fed = feed
entry-feeder_set = feeder
