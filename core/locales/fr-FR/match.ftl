# L'écran du concours. Les chiffres sont des fourchettes ; ce qu'on ne peut dire est dit tel.

match-title = Concours
match-no-session = Commencez une sortie, puis réglez le concours.
match-none = Aucun concours réglé. Vérifiez ces heures, puis RÉGLER CONCOURS.
match-none-over = Il n'y avait pas de concours. Commencez une sortie pour en régler un.
match-no-clock = Les heures de ce concours sont illisibles : réglez de nouveau début et fin.
match-no-count = Les bourriches ne peuvent pas être comptées. { $why } Rien n'est perdu : corrigez les règles du jour.
match-to-all-in = avant le début à { $time }.
match-to-all-out = avant la fin à { $time }.
match-to-land = pour sortir un poisson piqué. La fin était à { $time }.
match-uncertain = Le temps restant est peut-être faux de { $by } : l'horloge de ce téléphone a été changée. Demandez l'heure à l'organisateur.
match-unknown-time = Le temps restant est peut-être bien trop long : l'horloge de ce téléphone a été remise à zéro. Demandez l'heure à l'organisateur.
match-over = La fin était à { $time }.
match-spoken = { $left } { $says }
match-clock-ahead = L'horloge du concours avance de { $by } sur le téléphone.
match-clock-behind = L'horloge du concours retarde de { $by } sur le téléphone.
match-bank-before = { $time } avant le début
match-bank-fishing = { $time } avant la fin
match-bank-landing = { $time } pour le sortir
match-bank-over = concours terminé
match-alarm = { $minutes } min avant la fin.
match-alarm-text = Fin à { $time }.
match-cant-tell = pas encore clair

match-casts = { $out ->
    [0] Lancers restants
    [one] Lancers après celui-ci
   *[other] Lancers après ceux-ci
}
match-casts-least = au moins { $casts }
match-range = { $low } à { $high }
match-late = Ramener pour relancer
match-late-from = utile jusqu'à { $time }
match-late-now = plus utile
match-late-in = un lancer ne coûte rien avant la fin
match-late-how = Après { $time } ({ $from } à { $to }), un appât relancé a moins de la moitié des chances d'un lancer plein : ne ramenez pas pour cela. Une canne rentrée peut encore lancer : cela ne coûte rien avant la fin.

match-coming-says = Total probable : { $low } à { $high }.
match-coming-one = Total probable : { $low }.
match-coming-cant-tell = Pas encore clair : trop peu de touches pour dire ce qui vient.

match-result-weigh = Pesez sous Balance.
match-bites = Touches à venir
match-fish-to-come = Poissons à venir
match-weight-to-come = Poids à venir
match-finish = Total attendu
match-own-count = Votre compte
match-count-both = Pesé, le reste à votre compte
match-count-scales = Pesé
match-likely = { $low } à { $high }, environ { $likely }
match-light = Lumière à la fin
match-light-day = encore jour
match-light-twilight = crépuscule
match-light-dark = nuit
match-light-unknown = pas clair : la place n'est pas située
match-sunset-by-phone = { $time } au téléphone
match-sunset-after = coucher { $time }, { $by } après la fin : { $light }
match-sunset-before = coucher { $time }, { $by } avant la fin : { $light }
match-how = Au moins 8 jours semblables sur 10, le total tombe dans chaque fourchette ; « environ » en est le milieu. { $out ->
    [0] Le prochain lancer
   *[other] Ce lancer
} reste { $leave } min, les suivants { $then } min, { $turn } min entre eux.
match-cant-tell-why = Avant trois touches, le journal ne peut dire ce qui vient, et les lancers sont comptés sans touche, sur des durées supposées, { $leave } min puis { $then } min.
match-weights-guessed = Aucun poisson pris : les poids sont les estimations des espèces.
match-estimates = Les poids des espèces suivent les poissons pesés. Un poids à l'œil peut s'écarter d'un quart.

match-fish = { $count ->
    [one] { $count } poisson
   *[other] { $count } poissons
}
match-net = Bourriche { $number }
match-net-holds = { $fish }, { $weight }
match-net-weighed = { $fish }, { $weight } à la pesée
match-net-empty = vide
match-net-limit = sur { $limit }
match-net-range = { $low } à { $high }
match-about = environ { $weight }
match-near = limite proche
match-at-limit = peut-être à la limite
match-says-near-limit = { $net } est près de sa limite.
match-says-at-limit = { $net } est peut-être à sa limite.
match-says-over-limit = { $net } dépasse sa limite.
match-over-limit-counts = limite dépassée : compte { $limit }
match-over-limit-nothing = limite dépassée : ne compte pas
match-unknown = { $count ->
    [one] { $count } poisson n'a ni poids ni espèce : il est compté à la moyenne.
   *[other] { $count } poissons n'ont ni poids ni espèce : ils sont comptés à la moyenne.
}
match-not-counted = { $count ->
    [one] { $count } poisson est d'une espèce qui ne compte pas.
   *[other] { $count } poissons sont d'espèces qui ne comptent pas.
}
match-put-back = { $count ->
    [one] { $count } poisson a été relâché.
   *[other] { $count } poissons ont été relâchés.
}
match-no-net = { $count ->
    [one] { $count } poisson est d'une espèce qu'aucune bourriche n'admet : choisissez une autre bourriche ou une autre espèce.
   *[other] { $count } poissons sont d'espèces qu'aucune bourriche n'admet : choisissez une autre bourriche ou une autre espèce.
}

# Les poissons.
match-to-fish = Poisson
match-to-fish-sub = poids, espèce, bourriche
match-to-fish-spoken = Les poissons : poids, espèce et bourriche.
match-to-coming = À venir
match-to-coming-sub = touches, total
match-to-coming-spoken = Ce qui vient : touches, poissons, poids, total, lumière.
match-to-result = Résultat
match-to-result-sub = poids, place
match-to-result-spoken = Le résultat : poids, place, lumière.
match-to-rules = Règles
match-to-rules-sub = heures, bourriches
match-to-rules-spoken = Les règles du jour.
match-to-weigh-in = Balance
match-to-weigh-in-sub = pesée
match-to-weigh-in-spoken = La pesée.

# La pesée.
match-weigh-in-title = Pesée : { $net }
match-weigh-in-take = PESÉ
match-weigh-in-take-sub = { $net }
match-weigh-in-take-spoken = { $net } pesait { $weight }.
match-weigh-in-done-sub = { $net }, pesée
match-weigh-in-done-spoken = { $net } est pesée : { $weight }. Tapez un autre poids pour le changer.
match-weigh-in-known-sub = { $net }, déjà entrée
match-weigh-in-known-spoken = { $net } est entrée : { $weight }. Tapez un autre poids pour le changer.
match-weigh-in-next-sub = bourriche suivante
match-weigh-in-next-spoken = { $net } est sur la balance.
match-weigh-in-guess = ESTIMÉ
match-weigh-in-guess-sub = { $net }, à l'œil
match-weigh-in-guess-spoken = { $net } a environ { $weight }, à l'œil.
match-peg-left = { $place ->
    [1] Voisin de gauche
   *[other] { $place }e poste à gauche
}
match-peg-right = { $place ->
    [1] Voisin de droite
   *[other] { $place }e poste à droite
}
match-peg-across = En face { $place }
match-other-none = pas encore connu
match-other-called = { $weight }, annoncé
match-other-guessed = environ { $weight }, estimé
match-place = Rang du secteur
match-place-known = Rang parmi les bourriches connues
match-place-is = { $best } sur { $of }
match-place-between = { $best } à { $worst } sur { $of }
match-place-how = Rang : vos bourriches comptent { $mine }. Sur { $all ->
    [one] { $all } autre
   *[other] { $all } autres
}, connues : { $known }, dont estimées : { $guessed }. Une estimation peut s'écarter d'un quart ; une bourriche inconnue peut être devant.
match-own = votre compte { $weight }
match-weighed-in = { $weight }, { $differs }, { $agreement }
match-more-by = { $by } de plus que compté
match-less-by = { $by } de moins que compté
match-as-counted = comme compté
match-agrees = dans la fourchette
match-differs = hors de la fourchette
match-weigh-in-total = En tout
match-scales-more = Plus que noté : un poisson oublié, ou des poids trop bas ?
match-scales-less = Moins que noté : un poisson noté deux fois ou relâché, ou des poids trop hauts ?

# Les règles du jour.
match-begin = RÉGLER CONCOURS
match-begin-sub = avec ces règles
match-begin-spoken = Régler un concours ici, puis changer ses règles.
match-row-all-in = Début
match-row-all-out = Fin
match-row-clock = Horloges
match-row-nets = Bourriches
match-row-limit = Limite de { $net }
match-row-over = Au-delà
match-row-landing = Délai après la fin
match-row-alarms = Alarmes avant
match-row-classes = Espèces
match-row-counting = Ce qui compte
match-row-guess = Un poisson : { $class }
match-row-unit = Balance en
match-row-mark = Plus petit trait
match-row-section-left = Secteur : places à gauche
match-row-section-right = Secteur : places à droite
match-section-unknown = non saisi
match-section-half = Compte dès que l'autre côté est dit aussi.
match-row-said = Mort ou relâché
match-said-nothing = demandez à l'organisateur
match-row-off = Sans concours
match-off-yes = Retirer le concours
match-clock-same = comme le téléphone
match-clock-ahead-short = concours { $seconds } s en avance
match-clock-behind-short = concours { $seconds } s en retard
match-clock-heard-in = Début sonne
match-clock-heard-out = Fin sonne
match-clock-same-now = Comme le téléphone
match-clock-less = { $seconds } s en moins
match-clock-more = { $seconds } s en plus
match-minutes = { $minutes } min
match-no-minutes = interdit
match-no-limit = sans limite
match-over-to-limit = compte à la limite
match-over-nothing = bourriche non comptée
match-no-alarm = aucune
match-all-count = tout poisson
match-all-but = tous sauf { $classes }
match-guess-source = Une estimation avant les premières pesées.
match-unit-drams = lb, oz, dr
match-unit-grams = kg, g
kind-silver = Blanc
kind-roach = Gardon
kind-perch = Perche
kind-skimmer = Plaquette
kind-bream = Brème
kind-tench = Tanche
kind-stockie = Carpeau
kind-carp = Carpe
kind-pike = Brochet

entry-match_set = concours
entry-match_off = sans concours
entry-net_weighed = pesée
entry-other_net_told = autre bourriche
entry-section_set = secteur
entry-match_rule_said = règle

error-no-match = Aucun concours réglé. Réglez d'abord début et fin, sous CONCOURS.
error-no-landing = Aucun poisson de ce genre n'est pris. Touchez d'abord PRIS, puis entrez son poids.
