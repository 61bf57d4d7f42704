# Conditions in a few taps, and the Cautions screen around its cards.

conditions-now-title = Weather
conditions-no-session = Start a session to log conditions.
conditions-none = Nothing logged yet.
conditions-as-logged = As logged at { $time }.
conditions-how = Temperatures by thermometer where you have one. Everything can be left out.
conditions-skip = SKIP
conditions-again = AGAIN
conditions-again-sub = it has changed
conditions-ask-water = Water: how cold?
conditions-ask-air = Air: how cold?
conditions-ask-wind = How strong is the wind?
conditions-ask-wind-from = Wind from where?
conditions-ask-cloud = How much of the sky is cloud?
conditions-ask-colour = Colour of the water?
conditions-water = Water
conditions-air = Air
conditions-wind = Wind
conditions-wind-from = From
conditions-cloud = Cloud
conditions-colour = Colour
# The same in one sentence.
conditions-in-water = water { $value }
conditions-in-air = air { $value }
conditions-in-wind = wind { $value }
conditions-in-wind-from = from { $value }
conditions-in-cloud = cloud { $value }
conditions-in-colour = colour { $value }
wind-calm = calm
wind-light = light
wind-moderate = moderate
wind-fresh = fresh
wind-strong = strong
wind-gale = gale
from-n = north
from-ne = north-east
from-e = east
from-se = south-east
from-s = south
from-sw = south-west
from-w = west
from-nw = north-west
cloud-oktas = { $oktas ->
    [0] clear sky
    [8] all cloud
   *[other] { $oktas } eighths
}
water-clear = clear
water-tinged = tinged
water-coloured = coloured
water-muddy = muddy

cautions-list-title = Cautions
cautions-says = { $count ->
    [0] All read for { $peg }. They stay here.
    [one] 1 to read for { $peg }.
   *[other] { $count } to read for { $peg }.
}
cautions-says-no-peg = { $count ->
    [0] All read. They stay here, and are shown once for each peg.
    [one] 1 caution to read. It is shown once for each peg: name the peg.
   *[other] { $count } cautions to read. They are shown once for each peg: name the peg.
}
cautions-reviewed = All texts were last reviewed in { $month }.
cautions-key-all = ALL READ
cautions-key-all-sub = at this peg
cautions-key-seen = READ
cautions-key-seen-sub = at this peg
cautions-key-next = NEXT
cautions-new = to read
cautions-seen = read
cautions-to-read = for reference
cautions-authority = Authority
cautions-region = Region
cautions-text = The text
cautions-everywhere = everywhere
cautions-row-region = Where
cautions-region-how = The country the water is in
region-england = England
region-wales = Wales
region-scotland = Scotland
region-northern-ireland = Northern Ireland
region-elsewhere = elsewhere
notice-cautions = { $what } logged. { $count ->
    [one] 1 caution for this peg is new
   *[other] { $count } cautions for this peg are new
}: Screens, Cautions.
setup-cautions = Cautions
setup-cautions-sub = { $count ->
    [0] all seen here
    [one] 1 new here
   *[other] { $count } new here
}
