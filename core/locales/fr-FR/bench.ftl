# L'établi : le soir d'avant.

bench-parts-title = Établi
bench-hooklengths-title = Bas de ligne
bench-cut-down-title = Raccourcir
bench-tie-up-title = Monter
bench-spools-title = Bobines
bench-pop-up-title = Pop-up
bench-shot-title = Cendrée
bench-fall-title = Descente
bench-heights-title = Hauteurs
bench-no-plan = aucun plan

bench-row-kit = Stock de
bench-kit-own = ce téléphone
bench-kit-of = un autre téléphone, { $number }
bench-kit-how = Un import d'un partenaire ou d'un ancien téléphone apporte son propre stock. Ce que vous changez à l'établi change celui choisi ici.

# Un bas de ligne : sa longueur, le diamètre du fil, la taille de l'hameçon, son cheveu.
bench-hooklength = { $length }, { $mm } mm, n° { $size }
bench-hair = cheveu { $mm } mm
bench-no-hair = sans cheveu
bench-mm = { $mm } mm
bench-cm = { $cm } cm
bench-celsius = { $t } °C
bench-have = { $have ->
    [one] { $have } prêt
   *[other] { $have } prêts
}
bench-have-of = { $have } en pochette, { $want } à emporter
bench-row-kind = Lequel
bench-row-length = Longueur
bench-row-diameter = Fil
bench-row-hook = Hameçon
bench-row-hair = Cheveu
bench-hooklengths-says = { $which } : { $have ->
    [one] { $have } prêt
   *[other] { $have } prêts
}, { $want ->
    [0] aucun à emporter
   *[other] { $want } à emporter
}.
bench-hooklengths-sub = { $count ->
    [one] { $count } prêt
   *[other] { $count } prêts
}
bench-lost = { $count ->
    [one] { $count } a été perdu au lancer, il est déduit.
   *[other] { $count } ont été perdus au lancer, ils sont déduits.
}
bench-lost-unknown = { $count ->
    [one] { $count } bas de ligne perdu ne va avec aucun modèle ici, ou avec plusieurs : retirez-le à la main.
   *[other] { $count } bas de ligne perdus ne vont avec aucun modèle ici, ou avec plusieurs : retirez-les à la main.
}
bench-odd = { $count ->
    [one] { $count } note a retiré
   *[other] { $count } notes ont retiré
} plus qu'il n'y avait : recomptez la pochette.
bench-key-tied-1 = 1 PRÊT
bench-key-tied-5 = 5 PRÊTS
bench-key-tied-sub = dans la pochette
bench-key-taken_out-1 = ÔTER 1
bench-key-taken-out-sub = jeté ou perdu
bench-key-want-more = PRÉVU +1
bench-key-want-less = PRÉVU −1
bench-key-want-sub = pour le jour

bench-cut-down-none = Rien n'est encore prêt : notez vos bas de ligne sous Bas de ligne.
bench-cut-down-says = { $count ->
    [0] Rien à raccourcir : aucun bas de ligne en trop n'est assez long pour ce qui manque.
    [one] { $count } à raccourcir, { $waste } de chute.
   *[other] { $count } à raccourcir, { $waste } de chutes en tout.
}
bench-cut-down-sub = { $count ->
    [0] rien
    [one] { $count }, chute { $waste }
   *[other] { $count }, chutes { $waste }
}
bench-cut-to = à raccourcir à { $length } : { $count }
bench-cut-off = { $length } de moins chacun : gardez le fil de la boucle
bench-cut-down-how = De toutes les façons qui épargnent le plus de nœuds, celle-ci perd le moins de fil, puis demande le moins de coupes. Seuls même fil, même hameçon et même cheveu ; il reste du fil pour la nouvelle boucle.
bench-key-cut = COUPÉ
bench-key-cut-sub = tout ceci

bench-tie-up-says = { $count ->
    [0] Rien à monter : la pochette contient tout ce que vous voulez emporter.
   *[other] { $count } à monter.
}
bench-tie-up-none = Rien à monter pour l'instant. Indiquez sous Bas de ligne combien en emporter.
bench-tie-up-sub = { $count ->
    [0] rien
   *[other] { $count } à monter
}
bench-tie = en monter { $count }
bench-cut-for = couper { $length } chacun
bench-line-of = { $mm } mm
bench-spool-number = Bobine { $number }, { $line }
bench-pieces = { $count ->
    [one] { $count } brin
   *[other] { $count } brins
}
bench-left-on-it = { $metres } m y restent
bench-not-proved = Il existe peut-être un plan qui entame jusqu'à { $length } de fil en moins.
bench-allowances = Un bas de ligne demande { $length } de plus que sa longueur : nœud, deux fois la boucle, brin mort.
bench-allowances-none = Nœud, boucle et brin mort ne sont pas mesurés, donc rien ne s'ajoute aux longueurs. Mesurez-les sur trois bas de ligne.
bench-row-hook_knot = Nœud
bench-row-loop_length = Boucle
bench-row-tag = Brin mort
bench-key-tie = MONTÉ
bench-key-tie-sub = tout ceci

bench-spools-says = { $count ->
    [0] Aucune bobine.
    [one] { $count } bobine.
   *[other] { $count } bobines.
}
bench-spools-sub = { bench-spools-says }
bench-row-spool_diameter = Fil
bench-row-spool_length = Sur la bobine
bench-row-spool_gone = Vide
bench-spool-gone-how = La bobine choisie ici quitte l'établi.
bench-key-spool = AJOUTER
bench-key-spool-sub = { $mm } mm, { $metres } m

bench-pop-up-sinks = Il coule sans plomb, avec { $over } de marge.
bench-pop-up-says = Tenu au fond par { $shot }, avec { $over } de marge.
bench-pop-up-barely = Tenu tout juste par { $shot } : essayez au bord.
bench-no-shot = aucun plomb
bench-lift = Portance de l'appât
bench-hook-under-water = Hameçon dans l'eau
bench-line-under-water = Fil dans l'eau
bench-net-lift = Portance nette
bench-shot-under-water = Cendrée dans l'eau
bench-shot-in-air = Cendrée à l'air
bench-pop-up-soaked = La portance baisse quand l'appât prend l'eau : ceci vaut { $minutes } min après la mise à l'eau.
bench-pop-up-guess = Pas encore mesuré : une valeur de départ. Coulez l'appât dans un bol d'eau froide avec de la cendrée, et entrez ce qu'elle pèse dans l'eau.
bench-pop-up-how = Le moins de plombs qui pèsent au moins la portance nette et au plus 0,05 g de plus. Densités de manuel, de mémoire ; l'hameçon est compté en acier.
bench-row-lift = Portance
bench-row-soaked = Trempé
bench-row-hook_weight = Poids hameçon
bench-row-height = Hauteur
bench-row-line_um = Fil
bench-row-line = Fil en
bench-row-shot_metal = Cendrée en
bench-row-water = Eau
bench-line-nylon = nylon
bench-line-fluorocarbon = fluorocarbone
bench-line-braid = tresse
bench-shot_metal-tungsten = tungstène
bench-shot_metal-tin = étain
bench-shot_metal-steel = acier
bench-shot_metal-lead = plomb

bench-shot-says = { $count ->
    [0] La boîte est vide. Ajoutez des tailles.
    [one] { $count } taille dans la boîte.
   *[other] { $count } tailles dans la boîte.
}
bench-shot-sub = { $count ->
    [one] { $count } taille
   *[other] { $count } tailles
}
bench-shot-how = Les poids sont de mémoire et varient de 5 à 10 % selon la marque : pesez-en dix de chaque et entrez les vôtres.
bench-shot-memory = de mémoire, non vérifié : pesez-en dix
bench-row-size = Taille
bench-row-shot = Un { $size }
bench-not-in-the-box = pas dans la boîte

bench-fall-says = Touchez IMPACT quand le plomb touche l'eau et FOND quand le fil mollit.
bench-falling = Descend depuis { $time }.
bench-fall-timed = { $seconds } s.
bench-fall-depth = { $seconds } s : { $metres } m de fond, entre { $low } et { $high } m.
bench-at-depth = Fond connu { $metres } m
bench-seconds = { $seconds } s
bench-fall-speed = Le plomb descend de { $speed } m par seconde ({ $low } à { $high }).
bench-fall-how = Suppose chaque appui juste à 0,3 s près. Vaut pour un plomb sur un fil : mesurez de nouveau pour un autre.
bench-fall-sub = { $speed } m/s, { $count ->
    [one] { $count } mesure
   *[other] { $count } mesures
}
bench-fall-none = pas mesuré
bench-row-plumbed = Fond connu
bench-key-splash = IMPACT
bench-key-splash-sub = il touche l'eau
bench-key-bottom = FOND
bench-key-bottom-sub = le fil mollit
bench-key-calibrate = NOTER
bench-key-calibrate-sub = au fond connu

bench-heights-none = Aucune hauteur essayée. Beaucoup commencent à { $first } (usage courant, sans source).
bench-heights-all = Toutes les hauteurs de l'échelle ont été essayées.
bench-heights-says = Le plus de minutes à { $most }. Les plus proches, non essayées : { $open }.
bench-heights-sub = { $tried } sur { $all } essayées
bench-heights-how = Un lancer compte à la hauteur la plus proche. Fourchettes : limites exactes à 95 % des touches par heure-canne ; les hauteurs n'étaient pas alternées, le jour peut donc expliquer une différence.
bench-untried = pas essayée
bench-tried = { $bites ->
    [0] aucune touche
    [one] { $bites } touche
   *[other] { $bites } touches
} en { $casts ->
    [one] { $casts } lancer
   *[other] { $casts } lancers
}, { $minutes } min
bench-rate = { $rate } par heure, { $low } à { $high }
bench-row-heights_of = Lancers de
bench-sessions-all = toutes les sorties
bench-sessions-this = cette sortie
bench-row-rung = Échelle
bench-rungs = { $count ->
    [one] { $count } hauteur
   *[other] { $count } hauteurs
}

# Ce que nomme Annuler.
entry-conditions_set = météo
entry-hooklength_lost = bas de ligne perdu
entry-planned_next = projet
entry-hooklengths_tied = montés
entry-hooklengths_counted = comptage
entry-hooklengths_taken_out = enlevés
entry-hooklengths_cut_down = raccourcis
entry-hooklengths_wanted = à emporter
entry-spool_added = bobine
entry-spool_left = bobine
entry-allowances_set = nœuds
entry-pop_up_set = pop-up
entry-shot_set = cendrée
entry-fall_timed = descente
entry-ladder_set = échelle
entry-cautions_seen = consignes
