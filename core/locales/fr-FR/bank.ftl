# L'écran du bord de l'eau. Les mots du métier, des phrases pour des doigts froids.

peg = Place { $peg }
peg-none = Sans place
length-session = { $time } depuis le début
length-none = Aucune sortie
rod = Canne { $rod }
rod-number = { $rod }
rod-fish-on = { $rod } : POISSON
rod-alert = POISSON
rod-due-first = { $rod } : due d'abord
rod-in = { $rod } : rentrée
rod-in-alone = rentrée

since-out = à l'eau depuis { $time }
since-ready = rentrée depuis { $time }
since-away = pause depuis { $time }
since-fish = poisson depuis { $time }
since-never = aucun lancer
since-none = aucune sortie ouverte
# The start was set back by hand, or the clock was moved since.
since-out-about = à l'eau depuis { $time } environ
since-ready-about = rentrée depuis { $time } environ
since-away-about = pause depuis { $time } environ
since-fish-about = poisson depuis { $time } environ

spoken-out = { $rod }, à l'eau depuis { $minutes ->
    [one] { $minutes } minute
   *[other] { $minutes } minutes
}
spoken-due-first = { $rod }, due d'abord
spoken-ready = { $rod }, rien à l'eau
spoken-fish = { $rod }, poisson au bout

# Touches. Le mot est ce que fait le pêcheur ; la petite ligne au-dessous reste à toute taille de texte.
key-cast = LANCER
key-cast-first = plomb à l'eau
key-cast-closes = clôt celui-ci, en ouvre un
key-cast-spoken = Lancer. Le plomb est à l'eau.
key-bite = TOUCHE
key-bite-sub = scion tiré
key-bite-spoken = Touche. Le scion a été tiré.
key-wound-in = RAMENÉ
key-wound-in-sub = sans touche
key-wound-in-spoken = Ramené sans touche.
key-liner = FRÔLÉ
key-liner-sub = poisson dans le fil
key-liner-spoken = Frôlement. Un poisson a nagé dans le fil.
key-landed = PRIS
key-landed-sub = à l'épuisette
key-landed-spoken = Pris. Le poisson est à l'épuisette.
key-lost = PERDU
key-lost-sub = décroché
key-lost-spoken = Perdu. Le poisson s'est décroché.
key-landed-late = PRIS
key-landed-late-sub = ajoute une touche { $back }
key-landed-late-spoken = Pris, et touche non notée. Ajoute une touche { $back }, à peu près.
key-lost-late = PERDU
key-lost-late-sub = ajoute une touche { $back }
key-lost-late-spoken = Perdu, et touche non notée. Ajoute une touche { $back }, à peu près.
# Avec plusieurs cannes.
key-late-rod-sub = { $rod } : touche { $back }
key-back-min = il y a { $minutes } min
key-back-s = il y a { $seconds } s
key-back-now = à l'instant
key-missed = RATÉ
key-missed-sub = ferré dans le vide
key-missed-spoken = Touche ratée.
# Le poisson pris, jusqu'au lancer suivant. Rien n'est obligatoire.
key-fish-class = { $label }
key-fish-class-sub = comme le dernier
key-fish-class-spoken = { $what }, comme le dernier.
key-fish-which = LEQUEL ?
key-fish-which-sub = gardon, carpe ...
key-fish-which-spoken = Dire quel poisson c'est.
key-fish-is = { $label }
key-fish-is-sub = toucher : changer
key-fish-is-spoken = Noté : { $what }. Changer.
key-fish-back = RELÂCHER
key-fish-back-sub = pas gardé
key-fish-back-spoken = Le poisson est retourné à l'eau.
key-fish-keep = RELÂCHER
key-fish-keep-sub = toucher : gardé
key-fish-keep-spoken = Noté comme relâché. Touchez s'il a été gardé.
key-fish-weigh = PESER
key-fish-weigh-sub = ou estimer
key-fish-weigh-spoken = Entrer le poids de ce poisson.
key-fish-weight = { $what }
key-fish-weight-sub = toucher : changer
key-fish-weight-spoken = Il pèse { $what }. Changer.
key-fish = Poisson
key-fish-sub = espèce, bourriche
key-fish-spoken = Ce qu'on peut dire de ce poisson : espèce, bourriche, poids.
key-time-back = IL Y A 1 MIN
key-time-back-sub = dernière note
key-time-back-spoken = Reculer la dernière heure d'une minute.
key-time-back-five = IL Y A 5 MIN
key-time-back-five-sub = dernière note
key-time-back-five-spoken = Reculer la dernière heure de cinq minutes.
key-undo = ANNULER
key-undo-sub = { $what }
key-undo-spoken = Annuler : { $what }.
key-undo-nothing = rien encore
key-redo = RÉTABLIR
key-redo-sub = { $what }
key-redo-spoken = Rétablir : { $what }.
key-twitch = TIRETTE
key-twitch-sub = appât déplacé
key-twitch-spoken = Tirette. L'appât a été déplacé.
key-indication = TOC
key-indication-sub = scion bougé
key-indication-spoken = Un toc. Le scion a bougé sans tirer.
key-away = PAUSE
key-away-sub = arrête le temps
key-away-spoken = Loin des cannes. Les horloges qui comptent la pêche s'arrêtent.
key-returned = REPRISE
key-returned-sub = en pêche
key-returned-spoken = De retour aux cannes. Les horloges repartent.
key-feed = AMORCE
key-feed-sub = { $what }
key-feed-first = quoi et combien
key-feed-spoken = Amorcer : { $what }.
key-feed-other = Amorcer avec
key-feed-other-sub = autre dose
key-feed-other-spoken = Choisir quoi, combien et où amorcer.
key-seen = Vu
key-seen-sub = saut, bulles
key-seen-spoken = Des poissons se montrent. Dire comment et où.
key-tackle = Matériel
key-tackle-sub = point et montage
key-tackle-spoken = Matériel. Changer le point ou le montage du prochain lancer.
key-swim = Carte
key-swim-sub = où ensuite
key-swim-spoken = Carte. Où lancer ensuite, et où sont allés les lancers.
key-start = DÉBUT
key-start-sub = une sortie ici
key-start-spoken = Commencer une sortie.
key-end = FIN
key-end-sub = de la sortie
key-end-spoken = Finir la sortie. Ce qui est à l'eau est ramené.

# Ce que nomme Annuler : une note et son heure.
entry = { $what } { $time }
bank-logged = Noté : { $what }.
entry-session_started = début
entry-session_ended = fin
entry-cast = lancer
entry-bite = touche
entry-landed = prise
entry-lost = décroché
entry-missed = ratée
entry-liner = frôlement
entry-indication = toc
entry-wound_in = ramené
entry-twitch = tirette
entry-away = pause
entry-returned = reprise
entry-rig_set = montage
entry-spot_set = point
entry-noted = remarque
entry-time_set = heure reculée
entry-cast_end_set = fin d'un lancer
entry-cast_added = lancer ajouté
entry-confirmed = confirmé
entry-mark_set = repère
entry-removed = retrait
entry-kept_back = eau gardée
entry-released = eau rendue
entry-swim_set = poste
entry-alternation_started = essai
entry-alternation_ended = fin de l'essai
entry-other = note

# Le conseil.
# Chaque titre d'un lancer finit par le seul chiffre du conseil : la minute où relancer au plus tard.
advice-cant-tell = Pas encore clair.
advice-try = Pas encore clair. Essayez { $leave } min.
advice-try-past = Pas encore clair. Plus de { $leave } min.
advice-try-about = Essayez environ { $leave } min.
advice-plan = Votre plan : { $leave } min. Pas encore clair.
advice-plan-past = Au-delà des { $leave } min de votre plan. Pas encore clair.
advice-cant-tell-prior = Avant trois touches, les minutes reposent surtout sur les eaux en général.
advice-cant-tell-club = Avant trois touches, les minutes reposent surtout sur les journées du club.
advice-cant-tell-club-elsewhere = Avant trois touches, les minutes reposent surtout sur les eaux en général, et en partie sur les journées du club.
advice-elsewhere = Plus ici. Lancez à { $where }.
advice-recast-by = Relancez avant { $leave } min.
advice-hold-recast = Laissez jusqu'à { $hold } min. Relancez avant { $recast } min.
advice-length-hardly = Attendre plus change peu. Relancez avant { $leave } min.
advice-no-reason-to-wind-in = Aucune raison de ramener avant { $leave } min.
advice-past = Plus de { $leave } min : relancez.
advice-away = Loin des cannes.
advice-away-detail = Rien ne compte avant un lancer ou REPRISE.
advice-all-out = Fin de pêche.
advice-all-out-wind-in = Fin de pêche : ramenez.
advice-all-out-wind-in-rod = Fin de pêche : ramenez la canne { $rod }.
advice-all-out-fish-on = Fin de pêche : un poisson est au bout de la canne { $rod }.
advice-land-first = Sortez-le d'abord.
advice-before-wind-in = Avant le début : ramenez.
advice-before-wind-in-rod = Avant le début : ramenez la canne { $rod }.
advice-before-detail = Aucun appât ne doit être à l'eau avant le début.
advice-all-out-detail = Pesez sous Concours. FIN clôt la sortie.
advice-weighed-in-detail = La pesée est faite. FIN clôt la sortie.
advice-not-weighed-detail = Pas encore pesé : { $nets }. FIN clôt la sortie.
advice-left-open = Sortie encore ouverte depuis le { $date }.
advice-left-open-detail = FIN la clôt, puis DÉBUT en ouvre une autre.
advice-fish-on = Poisson au bout.
advice-fish-on-detail = Rien à toucher maintenant.
advice-look = { $leave } min, c'est plus long que les touches ne le suggèrent : pour apprendre la suite.
advice-as-good-from = Après { $hold } min, un moment en vaut à peu près un autre.
advice-none = Commencez une sortie pour noter les lancers.
advice-counts = { $casts ->
    [0] Aucun lancer terminé
   *[other] { $bites ->
        [0] Aucune touche
        [one] { $bites } touche
       *[other] { $bites } touches
    } en { $casts ->
        [one] { $casts } lancer
       *[other] { $casts } lancers
    }
}
advice-early = { advice-counts } jusqu'ici.
advice-so-far = { advice-counts }.
advice-not-tried = Plus de { $minutes } min : pas essayé.
advice-earlier = { $count ->
    [one] { $count } de vos sorties passées compte aussi.
   *[other] { $count } de vos sorties passées comptent aussi.
}
casts-not-seen = { $count ->
    [one] La fin de { $count } lancer n'a pas été vue : son attente ne compte pas.
   *[other] La fin de { $count } lancers n'a pas été vue : leurs attentes ne comptent pas.
}
advice-window = La moitié des touches est attendue entre { $from } et { $to } min.
advice-next-five = Chance d'une touche dans les cinq minutes : { $percent ->
    [0] moins de 1
    [100] plus de 99
   *[other] { $percent }
} %.
advice-longer = Aucun lancer n'est encore resté si longtemps : celui-ci doit l'apprendre.
advice-lost = Laisser vos lancers aussi longtemps que vous le faites coûte environ { $percent } % des touches.
advice-guess = Suppose { $minutes } min entre lancers tant que trois ne sont pas mesurés.

strip-spoken = { $elapsed ->
    [none] Rien à l'eau.
   *[other] À l'eau depuis { $elapsed } min.
} { $headline } { $bites ->
    [0] Aucune touche encore.
    [one] Une touche jusqu'ici.
   *[other] { $bites } touches jusqu'ici.
}

spot-none = Point non défini
spot-wraps = { $wraps } tours de { $span } ({ $metres } m)
spot-metres = { $metres } m
spot-yards = { $yards } yd ({ $metres } m)
spot-at = { $where }, { $reach }
spot-straight = Droit devant
spot-left = { $degrees }° à gauche
spot-right = { $degrees }° à droite
span-ft = { $feet } ft
span-m = { $metres } m
clipped = au clip
rig-none = Sans montage
rig-hooklength = bas de ligne { $length }
rig-hook = n° { $size }
rig-popup = pop-up { $length }
rig-lead-oz = { $ounces } oz
rig-lead-g = { $grams } g

notice-late = Noté : { $what }, et la touche { $seconds ->
    [one] { $seconds } s
   *[other] { $seconds } s
} avant, environ.
notice-repeat = Deuxième appui ignoré.
notice-logged = Noté : { $what }.
notice-logged-alone = Noté. Un résumé ou une sauvegarde qui suit a échoué : touchez VÉRIFIER LE JOURNAL dans Fichiers.
notice-undone = Annulé : { $what }.
notice-redone = Rétabli : { $what }.
notice-time = Heure reculée : { $what }.

# Que faire quand la minute du titre est venue, là où les points le disent.
spots-here = { $casts ->
    [0] Si rien ne mord d'ici là, environ { $here } points sur 100 de ce genre ont du poisson
    [one] Rien ici en { $minutes } min avant ce lancer. Si rien ne mord d'ici là, environ { $here } points sur 100 de ce genre ont du poisson
   *[other] Rien ici en { $minutes } min sur { $casts } lancers avant celui-ci. Si rien ne mord d'ici là, environ { $here } points sur 100 de ce genre ont du poisson
}
spots-elsewhere = { $casts ->
    [0] Environ { $here } points sur 100 de ce genre ont du poisson. À l'autre point : environ { $there } sur 100.
    [one] Rien ici en { $minutes } min. Environ { $here } points sur 100 de ce genre ont du poisson. À l'autre point : environ { $there } sur 100.
   *[other] Rien ici en { $minutes } min sur { $casts } lancers. Environ { $here } points sur 100 de ce genre ont du poisson. À l'autre point : environ { $there } sur 100.
}
spots-recast = Ensuite, relancez ici. { spots-here }.
spots-move = Ensuite, allez à { $where }. { spots-here }. À l'autre point : environ { $there } sur 100.
