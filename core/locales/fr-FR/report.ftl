# Le rapport d'une sortie, pour le papier et les amis.

# La langue de ce fichier selon BCP 47 : celle de la page.
report-language = fr-FR
report-title = { $peg }, { $day }
report-title-water = { $water }, { $peg }, { $day }
report-peg = place { $peg }
report-peg-none = une sortie
report-day-none = jour inconnu
report-when = { $from } à { $to }
report-day-time = { $day } { $time }
report-when-open = depuis { $from }, non finie
report-casts = Lancers
report-bites = Touches
report-landed = Pris
report-lost = Perdus
report-missed = Ratées
report-liners = Frôlements
report-weight = Poids connu
report-weight-value = { $kg } kg
report-weight-eye = { $weight } ; { $fish ->
    [one] { $fish } poisson
   *[other] { $fish } poissons
} à l'œil
report-weight-rest = { $kg } kg, et { $fish ->
    [one] { $fish } poisson non pesé
   *[other] { $fish } poissons non pesés
}
report-put-back = Relâchés
report-hooklengths-lost = Bas de ligne perdus
report-doubts = Notes douteuses
report-break = Loin des cannes de { $from } à { $to }.
report-break-open = Loin des cannes depuis { $from }.
report-fed = Amorcé : environ { $weight }.
report-fed-feeder = Amorcé : environ { $weight }, dont { $feeder } par les cages à chaque lancer.
report-fed-line = { $time } amorcé : { $what }{ $at }
report-shown-line = { $time } { $what }{ $at }
report-at = {", "}{ $where }
report-fed-more = { $count ->
    [one] { $count } note de plus de ce genre est au journal.
   *[other] { $count } notes de plus de ce genre sont au journal.
}
report-weather = { $time } { $what }

report-nets = Bourriches
report-net = { $fish ->
    [one] { $net } : { $fish } poisson, { $kg } kg connus
   *[other] { $net } : { $fish } poissons, { $kg } kg connus
}
report-net-scales = { $line } ; la balance montrait { $shown }

report-of-another = La journée d'un autre pêcheur, reprise d'un fichier.
report-others = Secteur et autres bourriches
report-section = Secteur : { $left ->
    [one] 1 place
   *[other] { $left } places
} à gauche, { $right ->
    [one] 1 place
   *[other] { $right } places
} à droite.
report-other-net = { $peg } : { $weight }
report-rule = Poissons morts ou remis à l'eau : { $rule }

report-strip = Attentes
report-strip-twitch = Une tirette a fini une attente et en a commencé une autre : un lancer peut donc avoir plusieurs marques. La liste des lancers montre la dernière attente de chacun.
report-strip-read = Chaque marque est une attente : losange plein si une touche a fini l'attente, trait si c'est autre chose, l'attente étant alors plus longue que cela.
report-strip-alt = { $bites ->
    [one] { $bites } attente a fini
   *[other] { $bites } attentes ont fini
} par une touche : { $list }. { $others } sans.
report-strip-wait = { $minutes } min
report-strip-none = Aucune attente à montrer.
report-minutes = minutes d'attente

report-curve = Lancers encore sans touche
report-curve-read = Estimation de Kaplan-Meier sur { $casts ->
    [one] { $casts } lancer
   *[other] { $casts } lancers
} avec { $bites ->
    [one] { $bites } touche
   *[other] { $bites } touches
} ; la bande grisée contient la vraie part avec 95 % de confiance à chaque minute (limites log-log). Peu de données donnent des bandes larges.
report-curve-alt = Part des lancers encore sans touche : { $list }.
report-curve-at = { $share } % après { $minutes } min
report-curve-few = Pas encore clair : moins de trois touches.
report-share = encore sans touche

report-swim = Où sont allés les lancers
report-swim-read = Vu de la place, droit devant est en haut. À chaque point : lancers / touches. Un losange plein a eu une touche, un rond aucune.
report-swim-alt = { $list }.
report-swim-spot = { $where } : { $casts ->
    [one] { $casts } lancer
   *[other] { $casts } lancers
}, { $bites ->
    [one] { $bites } touche
   *[other] { $bites } touches
}
report-swim-none = Aucun point noté.
report-where-mark = { $mark }, { $metres } m
report-where = { $metres } m, { $degrees }° { $side }
report-where-straight = { $metres } m droit devant
report-left = à gauche
report-right = à droite

report-list = Lancer par lancer
report-time = Impact
report-rod = Canne
report-spot = Point
report-wait = Attente
report-wait-value = { $minutes } min
report-wait-longer = plus de { $minutes } min
report-end = Fini par
report-bait = Appât
report-more = { $count ->
    [one] { $count } lancer de plus est
   *[other] { $count } lancers de plus sont
} dans le fichier CSV.
report-notes = Remarques

report-end-landed = pris
report-end-lost = décroché
report-end-missed = touche ratée
report-end-outcome = touche, suite non vue
report-end-wound-in = ramené
report-end-unseen = fin non vue
report-end-session = sortie finie
report-end-out = encore à l'eau
report-end-put-back = relâché
report-end-hooklength = bas de ligne perdu
report-from-splash = de l'impact
report-from-twitch = de l'impact ou de la dernière tirette
report-foot = Heures notées au téléphone. Les attentes partent { $from }{ $approximate ->
    [0] .
    [one] ; { $approximate } lancer a une heure approximative.
   *[other] ; { $approximate } lancers ont une heure approximative.
}
