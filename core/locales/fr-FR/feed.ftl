# L'amorce mise à la main, et la cage qui amorce à chaque lancer. Les poids des mesures sont estimés par le pêcheur.

feed-no-session = Aucune sortie ouverte
feed-at-spot = Amorcer au point
feed-at-rod = Amorcer au point de la canne { $rod }
feed-at-aim = Amorcer à la visée, sur la carte
aim-none = Aucune case n'est encore choisie sur la carte.
# Depuis quand, partout où cela est dit.
ago = { $minutes ->
    [0] à l'instant
   *[other] il y a { $minutes } min
}
feed-here = Amorcé { ago }, { $weight } ici pendant cette sortie.
# Au bord, après le coup, là où la place manque.
feed-bank = Amorcé { ago }, { $weight } en tout.
feed-none-here = Rien d'amorcé ici.
feed-guesses = Les poids sont estimés : changez-les sous Mobile.
feed-way-handful = { $count ->
    [one] POIGNÉE
   *[other] { $count } POIGNÉES
}
feed-way-pinch = { $count ->
    [one] PINCÉE
   *[other] { $count } PINCÉES
}
feed-way-cup = { $count ->
    [one] COUPELLE
   *[other] { $count } COUPELLES
}
feed-way-ball = { $count ->
    [one] BOULE
   *[other] { $count } BOULES
}
feed-way-bag = { $count ->
    [one] SAC
   *[other] { $count } SACS
}
feed-way-feeder = { $count ->
    [one] CAGE
   *[other] { $count } CAGES
}
feed-way-spod = { $count ->
    [one] FUSÉE
   *[other] { $count } FUSÉES
}
feed-way-loose = en vrac, { $weight } chacun
feed-way-about = environ { $weight } chacun
feed-way-spoken = Amorcer : { $what }.
feed-words-handful = { $count ->
    [one] une poignée, en vrac
   *[other] { $count } poignées, en vrac
}
feed-words-pinch = { $count ->
    [one] une pincée, en vrac
   *[other] { $count } pincées, en vrac
}
feed-words-cup = { $count ->
    [one] une coupelle, en vrac
   *[other] { $count } coupelles, en vrac
}
feed-words-ball = { $count ->
    [one] une boule
   *[other] { $count } boules
}
feed-words-bag = { $count ->
    [one] un sac
   *[other] { $count } sacs
}
feed-words-feeder = { $count ->
    [one] une cage
   *[other] { $count } cages
}
feed-words-spod = { $count ->
    [one] une fusée
   *[other] { $count } fusées
}
feed-by-weight-words = { $weight }, { $kind }
feed-kind-loose = en vrac
feed-kind-ball = boules
feed-kind-bag = sacs
feed-kind-feeder = cage
feed-kind-spod = fusée
feed-kind = { $what }
feed-kind-sub = toucher : changer
feed-kind-spoken = Mis à l'eau : { $what }. Changer.
feed-count = { $count } ×
feed-count-sub = toucher : { $next }
feed-count-spoken = La touche suivante vaut { $count }. Passer à { $next }.
feed-to-spot = POINT
feed-to-spot-sub = toucher : visée
feed-to-spot-spoken = Va au point de la canne { $rod }. Passer à la visée sur la carte.
feed-to-aim = VISÉE
feed-to-aim-sub = toucher : point
feed-to-aim-spoken = Va à la visée sur la carte. Passer au point de la canne { $rod }.
feed-each-cast = CHAQUE LANCER
feed-each-cast-sub = cage montée
feed-each-cast-spoken = La canne { $rod } a une cage. Elle amorce désormais à chaque lancer.
feed-each-cast-on = CHAQUE LANCER
feed-each-cast-on-sub = toucher : plomb
feed-each-cast-on-spoken = La cage de la canne { $rod } amorce { $weight } à chaque lancer. Passer au plomb seul.
feed-by-weight = AU POIDS
feed-by-weight-sub = un nombre
feed-by-weight-spoken = Entrer le poids de l'amorce.
feed-clear = EFFACER
feed-clear-sub = refaire
feed-clear-spoken = Effacer le chiffre.
feed-grams = { $count } g
feed-ounces = { $count } oz
feed-weighed = AMORCE
feed-weighed-sub = { $weight }, { $what }
feed-weighed-spoken = Amorcer : { $weight }, { $what }.
notice-fed = Amorcé : { $what }.
notice-fed-at = Amorcé : { $what }. { $place }.
entry-fed = amorce
entry-feeder_set = cage
