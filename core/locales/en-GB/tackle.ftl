# Setting up a session, and the tackle of a rod.

setup-title = New session
setup-water = Water
setup-water-how = Fished before, the latest first
setup-peg = Peg
setup-depth = Depth of the water
setup-span = Span of the sticks
setup-rods = Rods
setup-unknown = not known
setup-metres = { $metres } m

tackle-title = { $rod }: next cast
tackle-bait = Bait
tackle-colour = Colour
tackle-popup = Pop-up height
tackle-hooklength = Hooklength
tackle-hook = Hook size
tackle-lead = Lead
tackle-reach = Range
tackle-bearing = Direction
tackle-clip = Line clip
tackle-g = { $grams } g
tackle-wrap = 1 wrap
tackle-wraps = { $wraps } wraps
tackle-clip-on = clipped up
tackle-clip-off = free
tackle-none = none
tackle-less = less
tackle-more = more
tackle-left = left
tackle-right = right
source-common = common practice, no source
bait-bread = bread
bait-corn = corn
bait-maggot = maggot
bait-pellet = pellet
bait-worm = worm
colour-white = white
colour-yellow = yellow
colour-pink = pink
colour-red = red
colour-brown = brown
setup-settle = Settling
setup-settle-none = none
setup-settle-seconds = { $count } s
setup-settle-minutes = { $count } min
setup-twitch = A twitch restarts the wait
setup-twitch-on = yes
setup-twitch-off = no
setup-twitch-how = Each wait that a twitch ends then counts as one without a bite
setup-draw = Draw a peg
setup-draw-how = The number drawn, one tap for each digit
setup-draw-none = not drawn
setup-draw-clear = clear
setup-copy = Copy last session
setup-copy-none = no
setup-copy-how = Copies set-up and rigs; at the same peg also spots and marks
setup-pack = Pack
setup-packed = { $packed } of { $all } packed
setup-pack-how = Tap what's packed.
pack-rods = { $count ->
    [one] 1 rod
   *[other] { $count } rods
}
pack-named = { $count } × { $name }
pack-shot = shot: { $count } × { $name }
pack-leads = { $count } × { $name } lead
pack-bait = { $name }
pack-sticks = distance sticks
pack-landing-net = landing net
pack-mat = unhooking mat
pack-disgorger = forceps or disgorger
pack-keepnets = { $count ->
    [one] 1 keepnet
   *[other] { $count } keepnets
}
pack-licence = licence and ticket
pack-phone = phone, charged
pack-light = a light
pack-dry-clothes = dry clothes, gloves
pack-first-aid = first-aid kit
tackle-feeder = Feeder, a fill of
tackle-feeder-none = plain lead
tackle-material = Metal
tackle-material-lead = lead
tackle-material-non_toxic = other metal
tackle-hooklength_lost = Hooklength lost
tackle-lost-count = { $count ->
    [0] none this session
   *[other] { $count } this session
}
tackle-lost-now = with the last cast
tackle-lost-how = Taken out of the wallet on the bench
tackle-if-lead = If it is lead:
