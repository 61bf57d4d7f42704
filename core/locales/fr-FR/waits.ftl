# L'écran des attentes. Chaque image dit son message ; « pas encore clair » quand c'est la vérité.

waits-title = Attentes
waits-none = Commencez une sortie et lancez. Les attentes s'affichent quand un lancer finit.
waits-none-yet = Faites un lancer : touchez RETOUR, puis LANCER. Les attentes s'affichent quand il finit.
waits-by-spot = Les réponses valent pour tous les points. Sur celui de la canne { $rod } : laissez { $minutes } min.
habit-before-bites = Chaque touche de cette sortie est venue après { $after } min.
habit-of-the-day = Chaque touche est venue après { $after } min.
habit-all = Vos { $all } retours sont tous venus avant { $by } min.
habit-some = { $early } de vos { $all } retours sont venus avant { $by } min.
waits-counts = { $bites ->
    [0] Aucune touche
    [one] { $bites } touche
   *[other] { $bites } touches
} en { $casts ->
    [one] { $casts } lancer
   *[other] { $casts } lancers
}{ $sessions ->
    [0] {" "}de cette sortie
    [one] {" "}d'1 sortie
   *[other] {" "}sur { $sessions } sorties
}, { $time } à l'eau.
waits-row-rod = Canne
waits-row-spot = Point
waits-row-bait = Appât
waits-row-sessions = Sorties
waits-row-whose = Jours passés de
waits-all-rods = toutes
waits-all-spots = tous les points
waits-all-baits = tous
waits-today-only = cette sortie seule
waits-with-earlier = { $count ->
    [one] avec la précédente
   *[other] avec les { $count } précédentes
}

axis-wait = minutes depuis l'impact
axis-wait-up = attente, min
axis-without = lancers sans touche, %
axis-hazard = sur 100 lancers, touches dans la minute
axis-rate = touches par heure-canne
axis-clock = heure du lancer
legend-band = sa bande à 95 %
legend-expected = attendu
legend-seen = vu
legend-limits = ses limites à 95 %
legend-today = cette sortie
legend-earlier = sorties passées
legend-not-tried = pas essayé
span-window = fenêtre de touche
span-near-best = presque le mieux
span-leave = à laisser
range = { $low } à { $high }
range-open = { $low } ou plus
p-tiny = p sous 0,001
p-is = p { $p }

waits-cant-tell = Pas encore clair : { $bites ->
    [0] aucune touche
    [one] { $bites } touche
   *[other] { $bites } touches
} jusqu'ici.
waits-survival = Encore sans touche
waits-half = Laissez les lancers { $median } min : d'ici là, environ la moitié ont une touche (estimation).
waits-half-limits = Le temps au bout duquel la moitié ont une touche pourrait être de { $limits } min (limites à 95 %).
waits-half-limits-open = Le temps au bout duquel la moitié ont une touche pourrait être de { $low } min ou plus (limite à 95 %).
waits-not-half = D'ici { $longest } min, la plus longue attente, moins de la moitié des lancers ont une touche (estimation).
waits-survival-how = Marches : ce qu'on a vu ; points : l'erreur possible. Tirets : ce qu'on attend du prochain lancer.
waits-survival-figures = Marches de Kaplan et Meier, points leurs limites log-log (95 %), assez larges pour que les lancers d'une heure se ressemblent.
waits-hazard = Quand viennent les touches
waits-thickest = Meilleure minute : environ { $minute } min après l'impact. Sur 100 lancers encore à l'eau, environ { $percent } ont une touche dans cette minute. Avec { $bites } touches, ce pourrait être de { $limits }.
waits-rising = Les touches viennent encore plus vite à { $minute } min, la plus longue attente. Sur 100 lancers encore à l'eau, environ { $percent } ont une touche dans cette minute. Avec { $bites } touches, ce pourrait être de { $limits }.
waits-flat = Aucune minute ne ressort : une touche vient à peu près autant tôt que tard.
waits-window = Fenêtre de touche : la moitié des touches à venir est attendue entre { $from } et { $to } min. Des { $bites } vues, { $inside } y sont venues.
waits-hazard-how = Barres : touches pour 100 minutes à l'eau, vues. Tirets : ce qu'on attend.
waits-hazard-figures = Attendu : la moyenne de toutes les formes d'attente que le journal laisse probables, avec sa bande à 95 %.
waits-bar = { $bites ->
    [one] { $bites } touche
   *[other] { $bites } touches
} en { $minutes } min
waits-figures = Chiffres
waits-leave = Combien de temps laisser
waits-best-rate = Au mieux environ { $rate } touches par heure et par canne (95 % : { $limits }).
waits-bites-between = { $sessions ->
    [0] { $bites ->
        [one] La seule touche de cette sortie est venue à { $low } min.
       *[other] Les { $bites } touches de cette sortie sont venues entre { $low } et { $high } min.
    }
    [one] { $bites ->
        [one] La seule touche d'1 sortie est venue à { $low } min.
       *[other] Les { $bites } touches d'1 sortie sont venues entre { $low } et { $high } min.
    }
   *[other] { $bites ->
        [one] La seule touche de { $sessions } sorties est venue à { $low } min.
       *[other] Les { $bites } touches de { $sessions } sorties sont venues entre { $low } et { $high } min.
    }
}
waits-near-best = D'après les lancers faits, { $hold } à { $recast } min est presque le mieux : plus long, c'est pour apprendre la suite.
waits-not-tried = Plus de { $minutes } min : pas essayé.
waits-leave-how = Point : le meilleur moment. Trait : sans touche, vous ramenez la moitié de vos lancers avant (estimation).
waits-leave-figures = Touches par heure par renouvellement et gain (renewal reward). Presque le mieux : à 5 % du mieux, coupé là où un lancer vide gagne à être ramené.
waits-fed = Lancers amorcés dans les { $minutes } min avant l'impact : touches environ { $times } fois aussi rapides (95 % : { $limits }). Lancers comptés : { $fed } amorcés, { $other } non.
waits-earlier = Cette sortie contre les passées
waits-earlier-counts = Cette sortie : { $bites ->
    [0] aucune touche
    [one] { $bites } touche
   *[other] { $bites } touches
} en { $casts ->
    [one] { $casts } lancer
   *[other] { $casts } lancers
}. Avant : { $before } en { $beforecasts }, sur { $sessions ->
    [one] { $sessions } sortie
   *[other] { $sessions } sorties
}.
waits-weights = Les jours passés comptent moins : une sortie sur le même plan d'eau passe pour un jour semblable avec une chance de { $like }, sur un autre avec { $other }. Les marches comptent chaque lancer en entier.
waits-earlier-same = Cette sortie ne se distingue pas des précédentes.
waits-earlier-quicker = Les touches viennent plus vite pendant cette sortie qu'avant.
waits-earlier-slower = Les touches viennent moins vite pendant cette sortie qu'avant.
waits-earlier-hours = { $hours ->
    [0] Pas encore une heure de cette sortie
    [one] { $hours } heure de cette sortie
   *[other] { $hours } heures de cette sortie
} contre { $before ->
    [one] { $before } heure
   *[other] { $before } heures
} avant : { $p }, bon à tout moment.
waits-earlier-log-rank = Lancer par lancer, pour un seul regard et si les lancers ne sont pas venus par salves : log-rank { $p }.
waits-drift = Dans la journée
waits-drift-same = Les touches ne sont pas nettement plus ou moins rapides au fil du jour.
waits-drift-quicker = Les touches viennent plus vite au fil du jour.
waits-drift-slower = Les touches viennent moins vite au fil du jour.
waits-drift-hours = { $hours ->
    [0] Pas encore une heure avec des lancers
    [one] { $hours } heure avec des lancers
   *[other] { $hours } heures avec des lancers
} dans l'ordre : { $p }, bon à tout moment. Cinq ou six ne montrent qu'une forte tendance.
waits-drift-how = Losange : une touche. Trait : ramené sans touche.
waits-drift-figures = Une heure compte par ses touches moins celles attendues des mêmes attentes (scores log-rank), les heures par un test d'ordre lisible à tout moment.

forecast-title = Ce qui est à venir
forecast-left = Temps restant
forecast-min = { $minutes } min
forecast-bites = Touches à venir
forecast-fish = Poissons à venir
forecast-last = Ramener pour relancer
forecast-last-value = utile jusqu'aux { $likely } dernières min ({ $low } à { $high })
forecast-one = { $likely }
forecast-range = { $low } à { $high }, environ { $likely }
forecast-says = { $percent ->
    [0] Moins de 1 jour semblable
    [100] Plus de 99 jours semblables
   *[other] Environ { $percent } jours semblables
} sur 100, une touche vient dans les { $minutes } min.
forecast-cant-tell = Trop peu de touches : ces fourchettes reposent surtout sur ce qui est habituel. { $percent ->
    [0] Moins de 1 jour semblable
    [100] Plus de 99 jours semblables
   *[other] Environ { $percent } jours semblables
} sur 100, une touche vient dans les { $minutes } min.
forecast-how = Au moins 8 jours semblables sur 10, le total tombe dans chaque fourchette ; « environ » en est le milieu. Supposé : { $out ->
    [0] le prochain lancer
   *[other] ce lancer
} reste { $leave } min, les suivants { $then } min, { $turn } min du retour à l'impact. Dans ces dernières minutes, un appât relancé a moins de la moitié des chances d'un lancer plein ; une canne rentrée peut encore lancer.

legend-signs-title = Légende
legend-signs-says = Un signe veut dire la même chose sur chaque image.
sign-diamond = Losange
sign-diamond-means = Une touche. Sur la bande et les courbes à son attente, sur la carte où était le lancer.
sign-stroke = Trait
sign-stroke-means = Un lancer ramené sans touche ; un long : quand la moitié sont ramenés (estimation).
sign-triangle = Triangle ouvert
sign-triangle-means = Un frôlement.
sign-cross = Croix
sign-cross-means = Un poisson perdu, sur la carte.
sign-accent = Couleur, avec point ou drapeau
sign-accent-means = Maintenant, ou la suite : cette minute, le prochain lancer, le meilleur moment.
sign-bracket = Crochet
sign-bracket-means = Les minutes où ramener vaut la peine, ou celles où la moitié des touches est attendue.
sign-tint = Teinté
sign-tint-means = De combien une courbe peut se tromper.
sign-dots = Pointillé
sign-dots-means = Inconnu : aucun lancer n'est resté si longtemps, ou les limites d'une courbe.
sign-hatching = Hachures
sign-hatching-means = Eau au repos, sur la carte : les traits s'éclaircissent. Plein : pêché à l'instant.
