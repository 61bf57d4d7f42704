# Fish that show, without a bite.

seen-at-spot = Fish showing at the spot
seen-at-aim = Fish showing at the aim on the map
seen-what = What was seen?
seen-ago = { $what }, { $minutes } min ago.
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
entry-fish_shown = fish showing
