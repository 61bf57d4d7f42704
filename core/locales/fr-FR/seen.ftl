# Des poissons qui se montrent, sans touche.

seen-at-spot = Poisson vu au point
seen-at-aim = Poisson vu à la visée, sur la carte
seen-what = Qu'avez-vous vu ?
seen-ago = { $what }, il y a { $minutes } min.
seen-rolled = ROULÉ
seen-rolled-sub = ou sauté
seen-rolled-spoken = Un poisson a roulé ou sauté.
seen-rolled-words = un poisson a roulé
seen-bubbles = BULLES
seen-bubbles-sub = en surface
seen-bubbles-spoken = Des bulles sont montées.
seen-bubbles-words = bulles
seen-topping = GOBAGE
seen-topping-sub = en surface
seen-topping-spoken = Des poissons ont gobé en surface.
seen-topping-words = gobages
seen-map = Carte
seen-map-sub = viser ailleurs
seen-map-spoken = Ouvrir la carte pour viser ailleurs.
notice-seen = Noté : { $what }.
entry-fish_shown = poisson vu
