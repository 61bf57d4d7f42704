# Fish that show, without a bite.

seen-at-spot = Fish showing at the spot
seen-at-aim = Fish showing at the aim on the map
seen-what = What was seen?
seen-ago = { $what }, { ago }.
seen-rolled = ROLLED
seen-rolled-sub = or jumped
seen-rolled-spoken = A fish rolled or jumped.
seen-rolled-words = a fish rolled
seen-bubbles = BUBBLES
seen-bubbles-sub = came up
seen-bubbles-spoken = Bubbles came up.
seen-bubbles-words = bubbles
seen-topping = TOPPING
seen-topping-sub = off the surface
seen-topping-spoken = Fish took something off the surface.
seen-topping-words = fish topping
seen-map = Map
seen-map-sub = aim elsewhere
seen-map-spoken = Open the map to aim at another place.
notice-seen = Logged: { $what }.
notice-seen-at = Logged: { $what }. { $place }.
entry-fish_shown = fish showing

# A fish that a neighbour was seen to land.
key-neighbour-left = LEFT PEG
key-neighbour-left-sub = landed one
key-neighbour-left-spoken = The angler to the left landed a fish.
key-neighbour-right = RIGHT PEG
key-neighbour-right-sub = landed one
key-neighbour-right-spoken = The angler to the right landed a fish.
key-neighbour-across = FAR BANK
key-neighbour-across-sub = landed one
key-neighbour-across-spoken = The angler across the water landed a fish.
neighbour-left-words = a fish to the left
neighbour-right-words = a fish to the right
neighbour-across-words = a fish across the water
entry-neighbour_caught = neighbour's fish
beside-cant-tell = You or the lake? Can't tell yet.
beside-they = They catch more than you: it isn't only the lake.
beside-me = You catch more than you see them catch.
beside-alike = You catch about as they do: more likely the lake.
beside-counts = In { $minutes } min, since { $since }{ $away ->
    [0] {""}
   *[other] {" "}without the { $away } min away
}: you landed { $mine } and saw { $neighbours ->
    [one] the neighbour
   *[other] { $neighbours } neighbours
} land { $theirs }.
beside-caution = The first fish of each only starts the count. You don't see all they land, and no two pegs are alike.
