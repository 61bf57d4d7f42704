# Le carnet.

book-sessions-title = Carnet
book-none = Aucune sortie. Touchez DÉBUT : chaque sortie s'inscrit ensuite ici.
book-says = { $shown ->
    [one] { $shown } sortie
   *[other] { $shown } sorties
} sur { $all }.
book-theirs = { $count ->
    [one] { $count } sortie d'un autre pêcheur ne compte pas
   *[other] { $count } sorties d'autres pêcheurs ne comptent pas
} : voir CHOISIR.
book-of-another = { $day }, autre pêcheur
book-row-whose = À qui
book-row-a_whose = A : à qui
book-row-b_whose = B : à qui
whose-me = mes sorties
whose-them = celles d'un autre
whose-both = les miennes et les siennes
whose-counted = { $count ->
    [one] { $count } sortie passée d'un autre pêcheur compte.
   *[other] { $count } sorties passées d'autres pêcheurs comptent.
}
book-doubts = À revoir : { $count ->
    [one] { $count } note
   *[other] { $count } notes
}.
hours-minutes = { $hours } h { $minutes }
minutes-short = { $minutes } min
book-date = { $day } { $month } { $year }
month-1 = janv.
month-2 = févr.
month-3 = mars
month-4 = avr.
month-5 = mai
month-6 = juin
month-7 = juil.
month-8 = août
month-9 = sept.
month-10 = oct.
month-11 = nov.
month-12 = déc.
book-gist = { $casts ->
    [0] aucun lancer terminé
   *[other] { $bites ->
        [0] aucune touche
        [one] { $bites } touche
       *[other] { $bites } touches
    } en { $casts ->
        [one] { $casts } lancer
       *[other] { $casts } lancers
    }
}, { $length }
book-fished = { $length } de pêche
book-open = en cours
book-opened = ouverte à la lecture
book-all = toutes les sorties
book-no-water = sans nom
book-row-water = Plan d'eau
book-row-season = Saison
book-row-temperature = Temp. de l'eau
book-all-water = tous
book-all-season = toute l'année
book-all-temperature = toutes
season-dec-feb = déc. à févr.
season-mar-may = mars à mai
season-jun-aug = juin à août
season-sep-nov = sept. à nov.
temperature-below-4 = moins de 4 °C
temperature-from-4 = 4 à 7 °C
temperature-from-7 = 7 à 10 °C
temperature-from-10 = 10 à 15 °C
temperature-from-15 = 15 °C et plus
temperature-not-logged = non notée
book-water-at = eau { $temperature }
book-filter-title = Quelles sorties
book-key-filter = Choisir
book-key-rates = Prises par heure
book-key-rates-sub = touches, poissons pris
book-key-sets = Deux lots
book-key-sets-sub = l'un contre l'autre
book-key-next = Prochaine fois
book-key-next-sub = conseils
book-key-peg = Cette place
book-key-peg-sub = ses derniers jours
book-key-light = Lumière
book-key-light-sub = à la place
book-key-questions = Mes questions
book-key-questions-sub = sur plusieurs sorties
book-open-files = Fichiers
book-open-files-sub = envoi, copies
book-open-mend = Revoir
book-open-mend-sub = notes douteuses
book-open-mend-count = { $count ->
    [one] { $count } note
   *[other] { $count } notes
}

book-rates-title = Prises par heure
book-rates-figures-title = Chiffres
book-figures-sub = fourchettes, méthode
book-rates-none = Rien n'était à l'eau dans ces sorties.
book-rates-cant-tell = { $which }, pas encore clair : { $bites ->
    [0] aucune touche
    [one] { $bites } touche
   *[other] { $bites } touches
}.
book-rates-says = { $which } : environ une touche toutes les { $minutes } min pour chaque canne à l'eau. Soit { $bites ->
    [one] { $bites } touche
   *[other] { $bites } touches
} en { $hours ->
    [one] { $hours } heure-canne
   *[other] { $hours } heures-cannes
}.
book-together = { $count ->
    [one] { $count } sortie
   *[other] { $count } sorties
}
book-bites-rate = Touches par heure-canne
book-landed-rate = Poissons pris par heure
book-nothing-out = rien à l'eau
book-per-hour = { $rate } par heure
book-counts = { $count } en { $hours } h
rod-hours-limits = { $count } en { $hours ->
    [one] { $hours } heure-canne
   *[other] { $hours } heures-cannes
} : { $low } à { $high }
book-limits = { $count } en { $hours } h : { $low } à { $high }
book-listed = Les { $count } dernières sont listées ; les taux ci-dessus les comptent toutes.
book-rates-how = Fourchettes : limites exactes à { $level } % (Garwood). Les jours diffèrent ; la fourchette peut être trop étroite. Une heure-canne compte de l'impact à la touche, ou à la fin du lancer ; deux cannes à l'eau une heure en font deux.

book-sets-title = Deux lots
book-row-a_water = A : plan d'eau
book-row-a_season = A : saison
book-row-a_temperature = A : temp.
book-row-b_water = B : plan d'eau
book-row-b_season = B : saison
book-row-b_temperature = B : temp.
sets-shared = { $count ->
    [one] { $count } sortie est dans les deux lots.
   *[other] { $count } sorties sont dans les deux lots.
} On ne peut pas les comparer.
sets-choose = Choisissez plans d'eau, saisons ou températures pour qu'aucune sortie ne soit dans les deux.
sets-set = { $set } : { $which }, { $count ->
    [one] { $count } sortie
   *[other] { $count } sorties
}
sets-nothing = Pas clair : un des lots n'a rien à l'eau.
sets-leans = Penche vers { $set }.
sets-clear = { $set } nettement mieux sur ces sorties.
sets-cant-tell = Pas clair : les sorties diffèrent trop entre elles pour dire quel lot est le meilleur.
sets-few-bites = Pas encore clair : { $count ->
    [0] aucune touche
    [one] { $count } touche
   *[other] { $count } touches
} dans les deux lots ensemble.
sets-few-days = Pas encore clair : { $count ->
    [one] { $count } sortie
   *[other] { $count } sorties
} dans le plus petit lot, il en faut { $least }.
sets-ratio = A contre B
sets-times = { $ratio } fois
sets-no-ratio = aucune touche en B : pas de rapport
sets-no-end = sans fin
sets-limits = limites exactes à 95 % { $low } à { $high }
sets-better = Sur 100 paires de ce genre
sets-of-100 = A mieux dans { $a }, B dans { $b }, aucun dans { $same }
sets-of-100-how = d'avance, la moitié des paires est tenue pour égale, et les jours pour différents
sets-exact-p = Touches en un flux régulier
sets-exact-p-how = test exact conditionnel : trop sûr de lui quand les jours diffèrent
sets-days-p = Jours entiers redistribués
sets-days-p-all = les { $count } façons
sets-days-p-drawn = { $count } tirages
sets-how = Fourchettes : limites exactes à { $level } %. Le verdict tient à la redistribution de jours entiers, car un bon jour est la chance d'un jour. Les lots peuvent différer par autre chose que leur choix : appât, compagnie, heure du jour.

book-questions-title = Demandé sur plusieurs sorties
book-questions-figures-title = Chiffres
questions-says = { $count ->
    [one] 1 question a été posée sur deux sorties ou plus
   *[other] { $count } questions ont été posées sur deux sorties ou plus
}. { $clear ->
    [0] Aucune n'est encore claire.
    [one] 1 est claire.
   *[other] { $clear } sont claires.
}
questions-how = Les deux mêmes, comparés sur deux sorties ou plus d'une eau, font une question ; il n'y a rien à régler. Une sortie compte si les deux ont été alternés quatre fois ou plus, sans que rien d'autre ait changé chaque fois avec eux. Cela dit ce qui s'est passé lors de ces sorties, pas ce qui se passera.
questions-own-rate = Chaque sortie peut être bonne ou mauvaise, même deux d'un même jour : seul compte comment les deux se comparent dans chaque sortie. Les eaux restent séparées, car ce qu'aiment les poissons de l'une ne vaut pas forcément pour une autre ; les sorties sans nom d'eau ne peuvent être réunies.
questions-left-out = { $count ->
    [one] 1 autre question, plus ancienne, n'est pas listée.
   *[other] { $count } autres questions, plus anciennes, ne sont pas listées.
}
questions-figures-how = Si les deux se valaient, une mise n'atteindrait 20 que dans une saison sur 20 au plus, aussi souvent qu'on regarde (Ville). L'erreur est répartie sur les questions comme elles viennent, 1 / (k (k + 1)) pour la k-ième : la première demande donc 40. La mise est pour moitié sur les touches par minute, pour moitié sur des comparaisons à attentes égales. La mise par lancers est seulement montrée. Chaque sortie, canne et point a son propre rythme.

book-next-title = Prochaine fois
next-none = Aucune sortie, donc rien sur quoi bâtir un projet.
next-says = Après { $day }.
next-own = Mon projet
next-supports = Le journal appuie
next-cannot = Encore inconnu
next-nothing = Rien encore.
next-leave-why = { $bites ->
    [one] { $bites } touche
   *[other] { $bites } touches
} en { $casts ->
    [one] { $casts } lancer
   *[other] { $casts } lancers
} ce jour-là{ $earlier ->
    [0] .
    [one] , et la sortie d'avant
   *[other] , et les { $earlier } sorties d'avant
}
next-cant-leave = combien de temps laisser un lancer
next-near-best = jusqu'ici, { $hold } à { $recast } min est presque le mieux
next-about-best = jusqu'ici, environ { $hold } min est le mieux
next-hardly = jusqu'à { $longest } min, plus long ne change guère
next-try-leave = si plus long vaut mieux : { $leave }
next-longer = ce qui vient après { $minutes } min
next-longer-why = Aucun lancer n'est resté plus longtemps : laissez-en un ou deux.
next-supported = { $change }. { $verdict }.
next-one-day = { $why } Un seul jour : refaites l'essai en alternant.
next-heights = hauteurs { $open }
next-heights-why = pas essayées sur ce plan d'eau
next-few-days = si ce jour était habituel : { $count ->
    [one] { $count } sortie ici
   *[other] { $count } sorties ici
}
next-few-days-why = Il en faut trois ou plus.
next-cold-none = l'effet du froid : aucune température de l'eau notée
next-cold = l'effet du froid : pas de température de l'eau pour { $count } sur { $all ->
    [one] { $all } jour
   *[other] { $all } jours
}
next-cold-why = Notez-la d'un appui sous Météo.
next-how = Cela dit ce qui s'est passé, pas ce qui se passera.
book-type-plan = Projet pour la prochaine fois
book-type-note = Une remarque sur cette sortie
type-send = NOTER

book-peg-title = Cette place
peg-history-which = Nommez le plan d'eau et la place en préparant : ses dernières sorties s'affichent ici.
peg-history-none = { $place } : aucune sortie ici.
peg-history-none-other = { $place } : aucune autre sortie ici.
peg-history-to-come = Chaque journée à cette place figure ici, comme celle d'un partenaire une fois importée.
peg-history-says = { $place } : { $bites ->
    [0] aucune touche
    [one] { $bites } touche
   *[other] { $bites } touches
} en { $casts ->
    [one] { $casts } lancer
   *[other] { $casts } lancers
} sur { $count ->
    [one] { $count } sortie
   *[other] les { $count } dernières sorties
}.
peg-history-says-other = { $place } : { $bites ->
    [0] aucune touche
    [one] { $bites } touche
   *[other] { $bites } touches
} en { $casts ->
    [one] { $casts } lancer
   *[other] { $casts } lancers
} sur { $count ->
    [one] { $count } autre sortie
   *[other] les { $count } dernières autres sorties
}.
peg-history-besides = Non comptée : { $day }, la sortie que vous regardez.
peg-history-how = Les vôtres et celles venues par fichiers. Touches par heure-canne, avec limites exactes à { $level } %. Les jours diffèrent, les pêcheurs aussi : quelques sorties ne séparent pas une bonne place d'un bon jour.

book-light-title = Lumière
light-left = Coucher du soleil dans { $left }.
light-day = Le soleil est levé.
light-twilight = Crépuscule civil : on y voit encore.
light-dark = Nuit.
light-up-all-day = Le soleil ne se couche pas.
light-down-all-day = Le soleil ne se lève pas.
light-dawn = Premières lueurs (aube civile)
light-sunrise = Lever
light-noon = Midi solaire
light-sunset = Coucher
light-dusk = Dernières lueurs (crépuscule civil)
light-row-lat = Latitude
light-row-lon = Longitude
light-north = { $degrees }° Nord
light-south = { $degrees }° Sud
light-east = { $degrees }° Est
light-west = { $degrees }° Ouest
light-how = Pour un horizon plat, à la minute ; sans arbres ni collines.
light-guess = La place n'est pas située : ces heures valent pour la latitude et la longitude affichées. Touchez pour les changer ; un degré fait environ 110 km.
light-private = Le lieu reste sur ce téléphone et dans les sauvegardes qu'il fait, sauf si vous l'envoyez.
light-keep = NOTER
light-keep-sub = la place est ici

book-session-title = Sortie
session-says = { $from } à { $to } : { $bites ->
    [0] aucune touche
    [one] { $bites } touche
   *[other] { $bites } touches
} en { $casts ->
    [one] { $casts } lancer
   *[other] { $casts } lancers
}, { $landed ->
    [one] { $landed } pris
   *[other] { $landed } pris
}.
session-conditions = Météo
session-side-by-side = Côte à côte sur ce plan d'eau
session-my-peg = { $peg }, la mienne
session-their-peg = { $peg }, autre pêcheur
session-landed = { $count ->
    [one] { $count } pris
   *[other] { $count } pris
}
session-mine = À MOI
session-mine-sub = mon autre téléphone
session-not-mine = PAS À MOI
session-not-mine-sub = autre pêcheur
# A peg or a water put right, as UNDO names it.
entry-session_corrected = place ou plan d'eau
session-place-how = Corrige ce qui était faux au DÉBUT
session-close = SORTIES
session-close-sub = retour à la liste
cast-after = { $minutes } min, { $end }
cast-on-rod = { $time }, canne { $rod }
cast-out = encore à l'eau
cast-landed = pris
cast-lost = décroché
cast-missed = touche ratée
cast-outcome-not-seen = touche, suite non vue
cast-wound-in = ramené
cast-end-not-seen = fin non vue
cast-session-ended = ramené à la fin
cast-hooklength-lost = Bas de ligne perdu

day-card-title = Le jour
day-none = Aucune sortie. Touchez DÉBUT : chaque jour a sa carte.
day-says = { $bites ->
    [0] Aucune touche
    [one] { $bites } touche
   *[other] { $bites } touches
} en { $casts ->
    [one] { $casts } lancer
   *[other] { $casts } lancers
}{ $out ->
    [0] {""}
   *[other] , { $out } encore à l'eau
}, { $landed ->
    [0] aucun poisson pris
    [one] { $landed } poisson pris
   *[other] { $landed } poissons pris
}.
day-fish = Poissons
day-class = { $name } : { $count }
day-class-none = espèce non saisie : { $count }
day-best = meilleur { $weight }
day-weight = Poids
day-weight-own = { $weight } à votre compte
day-weight-both = { $weight }, toutes les bourriches ne sont pas pesées
day-weight-scales = { $weight } à la pesée
day-wait = Attentes
day-place = Où
day-place-most = { $spot } : { $bites } sur { $all ->
    [one] { $all } touche
   *[other] { $all } touches
}, en { $casts } sur { $made ->
    [one] { $made } lancer
   *[other] { $made } lancers
}.
day-beside = Voisins
day-next = À essayer
day-next-cast = Un lancer : rien n'est resté assez longtemps pour dire.
day-next-none = Un autre point, ou un lancer de plus de { $minutes } min : rien jusque-là dans cette sortie.
day-next-elsewhere = Un autre point : rien jusqu'à { $minutes } min dans cette sortie.
day-next-past = Un ou deux lancers de plus de { $minutes } min, le plus long jusqu'ici.
day-share = PARTAGER
day-share-sub = en texte

welcome-log-title = 1 sur 3 : noter
welcome-log-says = Touchez LANCER quand le plomb touche l'eau. Puis touchez ce qui y a mis fin : TOUCHE ou RAMENÉ.
welcome-log-more = Après TOUCHE : PRIS, PERDU ou RATÉ ; rien n'est à toucher tant qu'un poisson est au bout. ANNULER reprend la dernière note, si ancienne soit-elle. Le second appui d'un pouce froid est ignoré.
welcome-wait-title = 2 sur 3 : attendre
welcome-wait-says = L'horloge compte chaque attente. Dès trois touches, le bord de l'eau dit combien de temps laisser un lancer.
welcome-wait-more = Chaque touche est une marque sur la bande, à la minute où elle est venue. Tant qu'il n'y en a pas assez, c'est dit : pas encore clair.
welcome-where-title = 3 sur 3 : où
welcome-where-says = Dites où va un lancer sous Matériel, et la carte montre où lancer ensuite.
welcome-where-more = Elle distingue l'eau tout juste pêchée de l'eau au repos, et garde celle que vous voulez laisser. Tout reste sur ce téléphone et dans les sauvegardes qu'il fait : ni compte, ni réseau.
welcome-next = SUITE
welcome-start-sub = une sortie, de suite
welcome-skip = PASSER
welcome-skip-sub = au bord de l'eau
