# L'écran de la carte du poste.

swim-title = Carte, { $place }
swim-title-plain = Carte
swim-peg = place { $peg }
swim-squares = { $fished ->
    [one] { $fished } case pêchée
   *[other] { $fished } cases pêchées
} sur { $all } en { $minutes } min
swim-next = Ensuite : { $where }, { $reach }
swim-stay = Restez : { $spot }
swim-go-in = Dans l'eau gardée : { $where }, { $reach }
swim-go-in-dry = aucune touche { $casts ->
    [one] au dernier lancer
   *[other] aux { $casts } derniers lancers
}
swim-go-in-rest = rien d'autre n'est reposé
swim-go-in-plan = comme prévu
swim-as-before = comme avant
swim-moving = votre dernier point demande encore { $minutes } min
swim-aimed = { $where }, { $reach }
swim-rests-on-guesses = Dispersion et dérangement sont estimés. Le repos n'aide peut-être pas. Un point non essayé est classé au-dessus de ses touches par heure, car une touche y montrerait un endroit où revenir.
swim-leaving = Des touches sont venues au dernier point, mais après des lancers les poissons restent peut-être à l'écart ; une eau non essayée peut être aussi bonne.
swim-between = entre { $markleft } et { $markright }
swim-between-nearer = entre { $markleft } et { $markright }, plus près de { $near }
swim-no-reason = Aucune raison pour ou contre.
swim-then = Puis : { $where }
swim-bites = { $bites ->
    [0] Aucune touche sur ce poste.
    [one] { $bites } touche : trop peu pour être sûr.
   *[other] { $bites } touches : trop peu pour être sûr.
}
swim-bites-no-spot = { $bites ->
    [one] { $bites } touche n'est pas sur la carte : son lancer n'avait pas de point. Indiquez-le sous Matériel.
   *[other] { $bites } touches ne sont pas sur la carte : leurs lancers n'avaient pas de point. Indiquez-le sous Matériel.
}

reason-never = pas pêché pendant cette sortie
reason-quiet = sans doute tranquille depuis { $minutes } min
reason-rested = { $minutes } min depuis la chute d'un plomb ici
reason-near-bites = { $bites ->
    [one] une touche à { $distance }, { ago }
   *[other] { $bites } touches récentes tout près, la dernière à { $distance }, { ago }
}
reason-near-stay = { $bites ->
    [one] une touche ici ou tout près, { ago }
   *[other] { $bites } touches récentes ici ou tout près, la dernière { ago }
}
reason-behind = derrière la dernière touche, { ago }
reason-liners-here = { $liners ->
    [one] un frôlement ici
   *[other] { $liners } frôlements ici
}
reason-liners-beside = { $liners ->
    [one] un frôlement à côté
   *[other] { $liners } frôlements à côté
}
reason-shown-where = { $metres ->
    [0] ici
   *[other] à { $distance }
}
reason-shown = { $times ->
    [one] poisson vu { reason-shown-where }, { ago }
   *[other] poisson vu { $times } fois tout près, la dernière { reason-shown-where }, { ago }
}
reason-fish-here = { $here } points sur 100 de ce genre ont du poisson : comptez { $rate } touches par heure ici, { $other } à un point non essayé
reason-not-tried = non essayé, { $here } points sur 100 de ce genre ont du poisson : comptez { $rate } touches par heure
against-fish-away = dérangé, { $here } points sur 100 de ce genre ont du poisson : comptez maintenant { $rate } touches par heure
against-nothing-yet = { $casts ->
    [one] rien ici en { $minutes } min
   *[other] rien ici en { $minutes } min sur { $casts } lancers
}
against-nothing-here = { $casts ->
    [one] rien ici en { $minutes } min : { $here } points sur 100 de ce genre ont encore du poisson, comptez { $rate } touches par heure
   *[other] rien ici en { $minutes } min sur { $casts } lancers : { $here } points sur 100 de ce genre ont encore du poisson, comptez { $rate } touches par heure
}
reason-fed = amorcé { ago }
reason-usual-start = une première distance usuelle (sans source)
against-bait-out = un appât y est déjà
swim-but = mais { $against }
against-rested = { $minutes } min seulement sur { $target } depuis la chute d'un plomb ici
against-maybe = { $casts ->
    [one] un lancer a pu tomber ici récemment
   *[other] environ { $casts } lancers ont pu tomber ici récemment
}
against-boundary = à { $distance } de la limite
against-kept = gardé depuis { $minutes } min
against-beyond = plus loin qu'on ne lance aujourd'hui
against-hazard = { $name } à { $distance }
against-hazard-unnamed = un danger

cell-figures = { $casts ->
    [0] Aucun lancer ici.
    [one] { $casts } lancer ici
   *[other] { $casts } lancers ici
}{ $casts ->
    [0] { "" }
   *[other] , { $bites ->
        [0] aucune touche
        [one] { $bites } touche
       *[other] { $bites } touches
    }{ $lost ->
        [0] { "" }
        [one] , { $lost } perdu
       *[other] , { $lost } perdus
    }{ $liners ->
        [0] { "" }
        [one] , { $liners } frôlement
       *[other] , { $liners } frôlements
    }, { $minutes } min de pêche.
}
cell-fed = Amorcé { ago }, { $weight } pendant cette sortie.
cell-shown = { $times ->
    [one] Poisson vu { ago }.
   *[other] Poisson vu { $times } fois, la dernière { ago }.
}
drift-out = Les touches sont parties au large dans la journée.
drift-in = Les touches se sont rapprochées dans la journée.
drift-right = Les touches sont allées à droite dans la journée.
drift-left = Les touches sont allées à gauche dans la journée.
drift-figures = Dans la journée, { $way ->
    [out] au large ou au bord
   *[across] à droite ou à gauche
} : tau { $tau }, p { $p } à tout moment, { $n ->
    [one] { $n } touche
   *[other] { $n } touches
}.
drift-with-casts = Vous avez bougé, cela dit donc peu du poisson.
drift-cant-tell = Le poisson bouge-t-il ? Pas encore clair.
replay-at = Tel qu'à { $time }

swim-scene-kept = GARDÉ
swim-scene-kept-back = en réserve
swim-scene-next = SUIVANT
swim-scene-stay = RESTEZ
swim-scene-min = min
swim-scene-h = h
swim-scene-m = m
swim-scene-yd = yd
swim-scene-bites = touches
swim-scene-lost = perdus
swim-scene-liners = frôlés

swim-scene-fed = amorcé
swim-scene-shown = poisson vu

swim-legend = Légende
legend-just-fished = Pêché à l'instant. Le nombre : minutes depuis la chute du plomb.
legend-resting = Au repos. Les traits s'éclaircissent.
legend-free = Reposé, ou pas pêché pendant cette sortie.
legend-kept = Gardé. Non proposé avant d'être rendu.
legend-next = Le prochain lancer va ici.
legend-aimed = Visé. Un appui ou un pas le déplace.
legend-line-out = Une ligne à l'eau en ce moment.
legend-bites = Touches, avec leur nombre.
legend-liner = Un frôlement.
legend-lost = Un poisson perdu.
legend-fed = Eau amorcée.
legend-shown = Poisson vu, avec combien de fois.
legend-feature = Un relief que vous avez marqué.
legend-hazard = Un danger, avec l'eau à éviter.

key-step-left = GAUCHE
key-step-right = DROITE
key-step-in = PRÈS
key-step-out = LOIN
key-steps = VISER
key-steps-spoken = Montre les touches qui déplacent la visée.
key-keep = GARDER
key-keep-spoken = Garder cette eau.
key-release = RENDRE
key-release-spoken = Rendre l'eau gardée.
key-cast-here = LANCER ICI
key-cast-here-spoken = Le prochain lancer va ici.
key-cast-here-kept-spoken = Le prochain lancer va ici. L'eau n'est plus gardée.
key-earlier = AVANT
key-later = APRÈS
key-now = DIRECT
key-mark-here = REPÈRE
key-mark-here-spoken = Poser un repère dans cette direction.

key-place-peg = SITUER
key-place-peg-spoken = Situer la place à la position tapée.
key-use-phone = POSITION DU MOBILE
key-use-phone-spoken = Lit une fois la position de ce téléphone et remplit les deux lignes. Rien n'est encore noté.
key-earlier-spoken = Le poste dix minutes plus tôt.
key-later-spoken = Le poste dix minutes plus tard.
key-now-spoken = Le poste tel qu'il est maintenant.
key-step-left-spoken = La visée va d'une case à gauche.
key-step-right-spoken = La visée va d'une case à droite.
key-step-in-spoken = La visée vient d'une bande plus près.
key-step-out-spoken = La visée va d'une bande plus loin.

swim-list = Où ensuite, en détail
swim-name = Nom
swim-rename = Utiliser le nom pour
swim-remove = Retirer
swim-outline = le contour
swim-a-hazard = danger
notice-removed = Retiré. ANNULER le rétablit.
peg-place = La place sur la carte
peg-place-none = non située
peg-place-set = située
peg-place-note = Facultatif. Absent des fichiers sauf si vous l'ajoutez.
peg-place-lat = Latitude
peg-place-lon = Longitude
peg-place-out = Droit devant

geojson-mark = repère { $name }
geojson-feature = relief { $name }
geojson-hazard = danger { $name }
geojson-outline = { $corners ->
    [one] un contour de { $corners } coin
   *[other] un contour de { $corners } coins
}
geojson-marks = { $n ->
    [one] { $n } repère
   *[other] { $n } repères
}
geojson-features = { $n ->
    [one] { $n } relief
   *[other] { $n } reliefs
}
geojson-hazards = { $n ->
    [one] { $n } danger
   *[other] { $n } dangers
}
geojson-an-outline = un contour
geojson-adds = Nouveau dans le fichier : { $what }.
geojson-nothing = Tout ce fichier est déjà ici.

swim-left = Place voisine à gauche
swim-right = Place voisine à droite
swim-far = L'autre rive
swim-pegged = Occupée en face
swim-rest = Compte comme reposé après
swim-band = Largeur des bandes
swim-seen = Poisson vu ici
swim-feed = Amorcer ici
swim-feature = Marquer un relief
swim-hazard = Marquer un danger
swim-none = aucune
swim-usual = usuelle
swim-yes = oui
swim-no = non
swim-minutes = { $minutes } min
swim-metres = { $metres } m
swim-yards = { $yards } yd
feature-bar = barre
feature-drop_off = cassure
feature-hole = trou
feature-weed = herbier
feature-silt = vase
feature-gravel = gravier
feature-clay = argile
feature-island = île
feature-fish_seen = poisson vu
feature-other = autre
hazard-snag = obstacle
hazard-line = ligne aérienne
hazard-branch = branche
hazard-rope = corde, pieu
hazard-shallow = haut-fond
entry-feature_set = relief
entry-outline_set = contour
entry-hazard_set = danger
entry-peg_placed = lieu de la place
mark-numbered = Repère { $number }
