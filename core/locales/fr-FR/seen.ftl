# Des poissons qui se montrent, sans touche.

seen-at-spot = Poisson vu au point
seen-at-aim = Poisson vu à la visée, sur la carte
seen-what = Qu'avez-vous vu ?
seen-ago = { $what }, { ago }.
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
notice-seen-at = Noté : { $what }. { $place }.
entry-fish_shown = poisson vu

# Un poisson pris par un voisin.
key-neighbour-left = GAUCHE
key-neighbour-left-sub = en a pris un
key-neighbour-left-spoken = Le pêcheur de gauche a pris un poisson.
key-neighbour-right = DROITE
key-neighbour-right-sub = en a pris un
key-neighbour-right-spoken = Le pêcheur de droite a pris un poisson.
key-neighbour-across = EN FACE
key-neighbour-across-sub = en a pris un
key-neighbour-across-spoken = Le pêcheur d'en face a pris un poisson.
neighbour-left-words = un poisson à gauche
neighbour-right-words = un poisson à droite
neighbour-across-words = un poisson en face
entry-neighbour_caught = poisson du voisin
beside-cant-tell = Vous ou le plan d'eau ? Encore impossible à dire.
beside-they = Ils prennent plus que vous : l'eau n'explique pas tout.
beside-me = Vous prenez plus que ce que vous les voyez prendre.
beside-alike = Vous prenez à peu près comme eux : plutôt le plan d'eau.
beside-counts = En { $minutes } min, depuis { $since }{ $away ->
    [0] {""}
   *[other] {" "}sans les { $away } min d'absence
} : vous en avez pris { $mine } et vu { $neighbours ->
    [one] le voisin
   *[other] { $neighbours } voisins
} en prendre { $theirs }.
beside-caution = Le premier poisson de chacun ne fait que lancer le compte. Vous ne voyez pas tout ce qu'ils prennent, et deux places ne se valent jamais.
